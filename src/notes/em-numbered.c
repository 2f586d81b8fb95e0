/* em-numbered: lines, and parts of them, that begin with the same word and a number that goes up.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-numbered.h"

#include "em-clause.h"

enum { NUMBER_MAX = 99, LINES_APART = 4 };

/* The beginning of a line: its word, and the number behind that. */
typedef struct
{
  guint   word, number;  /* items */
  guint64 value;
  guint32 line;
  gboolean is_parted;    /* a wide gap or a sign parts it from what follows */
} Head;

static gboolean
is_whole (const EmItems *items, guint i)
{
  const EmSize *size = i < items->items->len && em_item (items, i)->type == EM_ITEM_SIZE ? em_item_size (items, i) : NULL;

  return size != NULL && size->is_whole && size->unit == EM_UNIT_NONE && size->chain == 0 && !size->has_fit && size->low.d == 0 &&
         size->value.n >= 1 && size->value.n <= NUMBER_MAX;
}

/* "EDGE 2 PLCS", "RIB 2 THK", "FACE 20 X 10": the number counts or measures. */
static gboolean
is_of_number (const EmItems *items, guint i)
{
  static const EmSays said[] = { EM_SAYS_PLACES, EM_SAYS_TIMES, EM_SAYS_LABEL, EM_SAYS_UNIT, EM_SAYS_TO };

  /* "PIN 3 dia 4 worn" */
  if (em_item_says (items, i, EM_SAYS_LABEL) != NULL && i + 1 < items->items->len && em_item (items, i + 1)->type == EM_ITEM_SIZE)
    return FALSE;
  /* "EDGE 1 worn R0.3": what became of it. */
  if (em_item_says (items, i, EM_SAYS_LABEL) != NULL && em_item_says (items, i, EM_SAYS_LABEL)->roles == EM_ROLE_WORN && em_item_says (items, i, EM_SAYS_GLUE) == NULL)
    return FALSE;
  for (gsize k = 0; k < G_N_ELEMENTS (said); k++)
    if (em_item_says (items, i, said[k]) != NULL)
      return TRUE;
  return em_item_is_glued (items, i) || em_item_is_sign (items, i, 0xd7 /* × */);
}

static gboolean
is_after_gap (const EmItems *items, guint i)
{
  guint32 at = em_item (items, i)->start;

  return at >= 2 && (items->text[at - 1] == '\t' || (items->text[at - 1] == ' ' && items->text[at - 2] == ' '));
}

/* "Kav. 7  Anguss", "EDGE 2: worn", "- PIN 3 - bent" from item i on; FALSE: the line begins otherwise. */
static gboolean
read_head (const EmItems *items, guint i, Head *head)
{
  guint number, next, n = items->items->len;

  i += em_item_is_sign (items, i, '-') || em_item_is_sign (items, i, 0x2022 /* • */);
  if (i + 2 >= n || em_item (items, i)->is_row || (em_item (items, i)->type != EM_ITEM_PHRASE && em_item (items, i)->type != EM_ITEM_UNKNOWN) ||
      !g_ascii_isalpha (items->text[em_item (items, i)->start]) || em_item (items, i)->length < 2 || em_item_says (items, i, EM_SAYS_QUANTITY) != NULL)
    return FALSE;
  number = i + 1 + (em_item_is_sign (items, i + 1, '.') || em_item_is_sign (items, i + 1, '#'));
  next = number + 1;
  if (!is_whole (items, number) || next >= n || em_item (items, next)->type == EM_ITEM_LINE || em_item_is_glued (items, number))
    return FALSE;
  *head = (Head) { .word = i, .number = number, .value = em_item_size (items, number)->value.n, .line = em_item (items, i)->line };
  head->is_parted = is_after_gap (items, next) || em_item_is_sign (items, next, ':') || em_item_is_sign (items, next, '-') || em_item_is_sign (items, next, '=');
  return head->is_parted || !is_of_number (items, next);
}

static gboolean
is_same_word (const EmItems *items, guint a, guint b)
{
  const EmItem *p = em_item (items, a), *q = em_item (items, b);

  return p->length == q->length && g_ascii_strncasecmp (items->text + p->start, items->text + q->start, p->length) == 0;
}

/* "Pin 1 dia 4 worn to 3.9, pin 2 dia 5 worn to 4.9" */
static gboolean
is_break (const EmItems *items, guint i)
{
  return em_item_is_sign (items, i, ',') || em_item_is_sign (items, i, ';') || em_item_is_sign (items, i, '.') || em_item_is_word (items, i, "and");
}

/* A part or a repair by its name, and no label: "length 2". */
static gboolean
is_thing (const EmItems *items, guint i)
{
  return (em_item_says (items, i, EM_SAYS_KIND) != NULL || em_item_says (items, i, EM_SAYS_PLACE) != NULL) && em_item_says (items, i, EM_SAYS_LABEL) == NULL;
}

static void
use_head (const EmItems *items, const Head *head)
{
  /* Of a repair's own word only the number is used up. */
  for (guint i = head->word; i <= head->number; i++)
    em_item (items, i)->is_used |= i > head->word || em_item_says (items, i, EM_SAYS_KIND) == NULL;
  em_item_size (items, head->number)->roles |= EM_ROLE_REFERENCE;
}

void
em_numbered_read (EmItems *items)
{
  Head before = { .line = 0 }, head;
  gboolean has_before = FALSE;

  for (guint i = 0; i < items->items->len; i++)
    {
      if ((i > 0 && em_item (items, i - 1)->type != EM_ITEM_LINE && !(is_break (items, i - 1) && is_thing (items, i))) || em_item (items, i)->type == EM_ITEM_LINE || !read_head (items, i, &head))
        continue;
      /* With one blank behind it only the next number is sure to go on: "NICK 2 long", "NICK 3 long" are told by labels, "PIN 2 bent" is not. */
      if (has_before && is_same_word (items, before.word, head.word) && head.line <= before.line + LINES_APART &&
          ((before.is_parted && head.is_parted && head.value > before.value) || head.value == before.value + 1))
        {
          use_head (items, &before);
          use_head (items, &head);
        }
      before = head;
      has_before = TRUE;
    }
}
