/* em-code-alone: "T-204 CORE INSERT", "die ring D-118, H13": a number that no word says of what it is.
 *
 * At the head of a note such a number is the tool's (of 71 in the corpus that a person gave to a field, all but those behind a word
 * for a drawing or an order). It is a guess from where it stands, and marked as one.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-code.h"

#include <string.h>

enum { HEAD_LINES = 3, MOST_LETTERS = 3, LEAST_DIGITS = 3, LEAST_GLUED_DIGITS = 4 /* without a dash */, MOST_DIGITS = 5, MOST_ITEMS = 4 };

/* Where the code that begins at text[at] ends, or at: capitals, a dash or none, digits. */
static guint32
end_of_code (const char *text, guint32 at)
{
  guint32 end = at, dash, digits;

  while (g_ascii_isupper (text[end]))
    end++;
  if (end == at || end > at + MOST_LETTERS)
    return at;
  dash = text[end] == '-';
  for (digits = end + dash; g_ascii_isdigit (text[digits]);)
    digits++;
  if (digits - end - dash < (dash ? LEAST_DIGITS : LEAST_GLUED_DIGITS) || digits - end - dash > MOST_DIGITS)
    return at;
  /* "A-77.2", "SR15,5", "17-4PH H1025", "X-12/3", "B-12\"" */
  return text[digits] == '\0' || strchr (" \t\r\n,;:)", text[digits]) != NULL || (text[digits] == '.' && !g_ascii_isalnum (text[digits + 1])) ? digits : at;
}

/* "H1025" is how a steel was aged, "UNS S17400" and "EN AW-7075" are steels. */
static gboolean
is_of_metal (const EmItems *items, guint i)
{
  static const char *const before[] = { "uns", "aisi", "en", "cond", "cond.", "condition", "report", "card", "ticket" };

  return em_phrase_find (em_item (items, i)->phrase, EM_SAYS_BASE) != NULL || em_phrase_find (em_item (items, i)->phrase, EM_SAYS_MATERIAL) != NULL ||
         items->text[em_item (items, i)->start] == 'H' || (i > 0 && em_item_is_any_word_of (items, i - 1, before, G_N_ELEMENTS (before))) ||
         (i > 0 && em_phrase_find (em_item (items, i - 1)->phrase, EM_SAYS_BASE) != NULL);
}

/* How many items the code at i has, none of which anything has used; 0: it is none. */
static guint
code_items (const EmItems *items, guint i)
{
  guint32 start = em_item (items, i)->start, end = end_of_code (items->text, start);
  guint n = 0;

  if (end == start || (start > 0 && strchr (" \t\n(", items->text[start - 1]) == NULL) || is_of_metal (items, i))
    return 0;
  while (n < MOST_ITEMS && i + n < items->items->len && em_item (items, i + n)->start < end)
    {
      const EmItem *item = em_item (items, i + n);

      /* The letter alone may have been taken for the label of a thickness. */
      if ((item->is_used && n > 0) || item->start + item->length > end || (item->type == EM_ITEM_SIZE && em_item_size (items, i + n)->chain != 0))
        return 0;
      n++;
    }
  return n;
}

static gboolean
is_of_repair (const EmGrammar *grammar, guint first, guint end)
{
  for (guint p = 0; p < grammar->protos->len; p++)
    {
      const EmProto *proto = grammar->protos->pdata[p];

      for (guint k = 0; k < proto->sizes->len; k++)
        if (g_array_index (proto->sizes, guint, k) >= first && g_array_index (proto->sizes, guint, k) < end)
          return TRUE;
    }
  return FALSE;
}

/* The only code among the note's first lines; *out_n: its items, 0 where there is none or several. */
static guint
find_code (const EmItems *items, guint *out_n)
{
  guint found = 0, n_lines = 0;

  *out_n = 0;
  for (guint i = 0; i < items->items->len && n_lines < HEAD_LINES; i++)
    if (em_item (items, i)->type == EM_ITEM_LINE)
      n_lines += i > 0 && em_item (items, i - 1)->type != EM_ITEM_LINE;
    else if (code_items (items, i) > 0)
      {
        if (*out_n > 0)
          {
            *out_n = 0;
            return 0;
          }
        found = i;
        *out_n = code_items (items, i);
        i += *out_n - 1;
      }
  return found;
}

void
em_code_read_alone (EmGrammar *grammar)
{
  EmItems *items = grammar->items;
  guint n, first = find_code (items, &n);
  EmGiven given;

  if (n == 0 || is_of_repair (grammar, first, first + n))
    return;
  for (guint k = 0; k < grammar->general->len; k++)
    if (strcmp (g_array_index (grammar->general, EmGiven, k).field.field, "tool_number") == 0)
      return;
  given = em_given_new ("tool_number", NULL, em_item (items, first));
  given.field.length = em_item (items, first + n - 1)->start + em_item (items, first + n - 1)->length - em_item (items, first)->start;
  given.field.state = EM_READ_INFERRED;
  given.field.reason = "from-words";
  g_array_append_val (grammar->general, given);
  for (guint k = first; k < first + n; k++)
    {
      em_item (items, k)->is_used = TRUE;
      if (em_item (items, k)->type == EM_ITEM_SIZE)
        em_item_size (items, k)->roles |= EM_ROLE_REFERENCE;
    }
}
