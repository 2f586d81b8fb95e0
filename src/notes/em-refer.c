/* em-refer: what refers to a repair told before, and what does not though it stands behind it.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-refer.h"

#include "em-list.h"

#include <string.h>

enum
{
  NAMED_WINDOW = 64,     /* repairs looked back over for the one a number names */
  JOTTED_MAX = 8,        /* sizes of a repair that is told point by point */
  NEAR_WINDOW = 16,      /* items round what is said of a repair to its number */
  CODE_WINDOW = 24,      /* items looked over for the letter of a repair */
  REFER_WINDOW = 3       /* items from "same as" to the number it refers to */
};

/* "- bore is oval", "- should be 12, measures 12.2", "- 20 deep": jotted point by point. What has no noun is more of a repair without
 * sizes, or tells those that it lacks. */
gboolean
em_refer_continues_jotted (const EmReader *r, const EmContent *content, guint first)
{
  const guint32 told = em_once_roles | EM_ROLE_RADIUS | EM_ROLE_DIAMETER | EM_ROLE_WORN | EM_ROLE_FINISHED | EM_ROLE_BUILD;
  guint32 others = 0;

  if (!r->is_dash || !r->was_dash || r->heading != NULL || content->has_noun || content->n_sizes == 0 || r->current->noun == EM_NO_ITEM ||
      em_reader_line_of (r, first) != em_reader_line_of (r, r->current->last) + 1)
    return FALSE;
  for (guint i = 0; i < r->current->sizes->len && i < JOTTED_MAX; i++)
    {
      guint32 roles = em_item_size (r->items, g_array_index (r->current->sizes, guint, i))->roles;

      others |= (roles & EM_ROLE_SLOT) != 0 ? 0 : roles == 0 ? told : roles;
    }
  return others == 0 || (content->n_sizes == content->n_labelled && content->n_other == 0 && (others & content->roles & told) == 0);
}

/* "Die A  ⌀10" */
gboolean
em_refer_names_other_part (const EmReader *r, guint first)
{
  return first + 1 < r->end && em_item_says (r->items, first, EM_SAYS_PLACE) != NULL && em_list_head_at (r->items, first + 1) != 0;
}

gboolean
em_refer_counts_tools (const EmReader *r, guint first, guint end)
{
  for (guint i = first; i < end; i++)
    if (em_item_says (r->items, i, EM_SAYS_TOOLS) != NULL && em_item (r->items, i)->is_used)
      return TRUE;
  return FALSE;
}

/* "same as a)", and no article. */
static gboolean
is_letter_alone (const EmReader *r, guint i, guint end)
{
  return i + 1 >= end || em_item_is_sign (r->items, i + 1, ')') || em_item_is_sign (r->items, i + 1, '.') ||
         em_item_is_soft_break (r->items, i + 1);
}

/* "as item 1": the number or letter behind the words for "same", or in them; 0: none. */
guint64
em_refer_head (const EmReader *r, guint first, guint end)
{
  for (guint i = first; i < end; i++)
    if (em_item_says (r->items, i, EM_SAYS_SAME) != NULL)
      {
        const EmItem *item = em_item (r->items, i);
        char last = r->items->text[item->start + item->length - 1];

        if (g_ascii_isdigit (last))
          return (guint64) (last - '0');
        for (guint k = i + 1; k < end && k <= i + REFER_WINDOW; k++)
          if (em_list_head_at (r->items, k) != 0 &&
              (em_item (r->items, k)->type == EM_ITEM_SIZE ? em_item (r->items, k)->is_used : is_letter_alone (r, k, end)))
            return em_list_head_at (r->items, k);
      }
  return 0;
}

EmProto *
em_refer_with (const EmReader *r, guint64 head)
{
  const GPtrArray *protos = r->grammar->protos;

  for (guint i = protos->len; head != 0 && i-- > 0 && i + NAMED_WINDOW > protos->len;)
    if (((EmProto *) g_ptr_array_index (protos, i))->head == head)
      return g_ptr_array_index (protos, i);
  return NULL;
}

static gboolean
is_item_word (const EmReader *r, guint i)
{
  static const char *const words[] = { "items", "pos", "pos.", "positions", "positionen", "points", "point", "punkt", "punkte", "posiciones", "postes", "zona", "zone", "zonas", "zones", "detail", "detalle", "puntos", "défauts", "nos" };

  return em_list_is_item_word (r, i) || em_item_is_any_word_of (r->items, i, words, G_N_ELEMENTS (words));
}

/* "zu 1) Aufmaß 0,3", "for 2): stock 0.1": a little word before a number with its mark. */
static gboolean
is_word_before_mark (const EmReader *r, guint i)
{
  static const char *const words[] = { "zu", "for", "to", "re", "on", "für", "bei", "an", "pour", "à", "para", "en", "ad" };

  return i + 2 < r->end && em_item_is_any_word_of (r->items, i, words, G_N_ELEMENTS (words)) && em_list_is_bare_whole (r->items, i + 1) &&
         (em_item_is_sign (r->items, i + 2, ')') || (i == r->first && em_item_is_sign (r->items, i + 2, ':')));
}

/* "repère B" */
static gboolean
is_capital_letter (const EmReader *r, guint i)
{
  const EmItem *item = em_item (r->items, i);

  return item->type != EM_ITEM_SIGN && item->length == 1 && g_ascii_isupper (r->items->text[item->start]);
}

/* The repairs whose numbers stand from item number on, "1, 2 and 4". */
static guint
read_numbers (const EmReader *r, guint number, EmProto **out_protos, guint max)
{
  guint n = 0;

  for (; number < r->end && n < max && (em_item (r->items, number)->type == EM_ITEM_SIZE || is_capital_letter (r, number)); number += 2)
    {
      guint64 section = r->section != 0 ? em_list_section_at (r->items, number) : 0;
      EmProto *proto = em_refer_with (r, section != 0 ? section : em_list_head_at (r->items, number));

      if (proto == NULL)
        break;
      out_protos[n++] = proto;
      em_item (r->items, number)->is_used = TRUE;
      if (number + 1 >= r->end || !em_item_is_soft_break (r->items, number + 1))
        break;
    }
  return n;
}

/* Bare numbers right behind who does it, "you machine 1 and 2", that end the part. 0: they are none. */
static guint
number_behind (const EmReader *r, guint at)
{
  guint number = at + 1, end;

  if (em_item_says (r->items, at, EM_SAYS_AGENT) == NULL && em_item_says (r->items, at, EM_SAYS_FINISH) == NULL)
    return 0;
  while (number < r->end && number <= at + REFER_WINDOW && em_item (r->items, number)->type == EM_ITEM_PHRASE && !em_item_is_soft_break (r->items, number))
    number++;
  for (end = number; end < r->end && em_list_is_bare_whole (r->items, end); end += 2)
    if (end + 1 >= r->end || !em_item_is_soft_break (r->items, end + 1))
      return end + 1 >= r->end || em_item (r->items, end + 1)->type == EM_ITEM_SIGN ? number : 0;
  return end > number ? number : 0;
}

/* Where the part between commas begins that item i is in: "we grind item 1, item 2 you finish". */
static guint
part_begin (const EmReader *r, guint i)
{
  guint limit = MAX (r->first, i > NEAR_WINDOW ? i - NEAR_WINDOW : 0);

  while (i > limit && !em_item_is_sign (r->items, i - 1, ','))
    i--;
  return i;
}

static guint
part_end (const EmReader *r, guint i)
{
  guint limit = MIN (r->end, i + NEAR_WINDOW);

  while (i < limit && !em_item_is_sign (r->items, i, ','))
    i++;
  return i;
}

static gboolean
has_item_word (const EmReader *r, guint first, guint end)
{
  for (guint i = first; i + 1 < end; i++)
    if ((is_item_word (r, i) && em_item (r->items, i + 1)->type == EM_ITEM_SIZE) || is_word_before_mark (r, i))
      return TRUE;
  return FALSE;
}

/* "item 1: stock 0.2" below what item 1 is: the repair whose number heads the line, for what is told in its first part; NULL: none. */
static EmProto *
of_head (const EmReader *r, guint at)
{
  gboolean is_led = r->first + 2 < r->end && is_item_word (r, r->first); /* "; item 2: stock 0.1" */
  guint number = r->first + 1 + (is_led && em_item_is_sign (r->items, r->first + 1, '.'));
  guint64 head = is_led ? em_list_head_at (r->items, number) : r->head;
  EmProto *proto = head != 0 && part_begin (r, at) == r->first && !has_item_word (r, r->first + is_led, part_end (r, at)) ? em_refer_with (r, head) : NULL;

  if (proto == NULL || proto->last >= r->first || (!is_led && em_reader_line_of (r, proto->last) >= em_reader_line_of (r, r->first)))
    return NULL;
  if (is_led)
    em_item (r->items, number)->is_used = TRUE;
  return proto;
}

guint
em_refer_items (const EmReader *r, guint at, EmProto **out_protos, guint max)
{
  guint first = MAX (r->first, at > NEAR_WINDOW ? at - NEAR_WINDOW : 0), end = MIN (r->end, at + NEAR_WINDOW), n = 0;

  if (max > 0 && (out_protos[0] = of_head (r, at)) != NULL)
    return 1;
  if (has_item_word (r, part_begin (r, at), part_end (r, at)))
    {
      first = part_begin (r, at);
      end = part_end (r, at);
    }
  /* What begins the sentence heads a repair. */
  for (guint i = is_word_before_mark (r, first) ? first : MAX (first, r->first + 1); i < end && n == 0; i++)
    {
      /* "restricted access on 1.2" */
      if (r->section != 0 && em_item_says (r->items, i, EM_SAYS_PREPOSITION) != NULL && i + 1 < r->end && em_list_section_at (r->items, i + 1) != 0 &&
          (out_protos[0] = em_refer_with (r, em_list_section_at (r->items, i + 1))) != NULL)
        {
          em_item (r->items, i + 1)->is_used = TRUE;
          return 1;
        }
      if (is_item_word (r, i) || is_word_before_mark (r, i))
        n = read_numbers (r, i + 1 + (i + 1 < r->end && em_item_is_sign (r->items, i + 1, '.')), out_protos, max);
    }
  if (n == 0 && r->grammar->protos->len > 1 && number_behind (r, at) != 0)
    n = read_numbers (r, number_behind (r, at), out_protos, max);
  return n;
}

/* "A by us", "A is near …": no article stands there. */
static gboolean
joins (const EmReader *r, guint i)
{
  static const EmSays joining[] = { EM_SAYS_TIMES, EM_SAYS_PREPOSITION, EM_SAYS_AGENT, EM_SAYS_NEAR, EM_SAYS_TO };

  for (gsize k = 0; k < G_N_ELEMENTS (joining); k++)
    if (em_item_says (r->items, i, joining[k]) != NULL)
      return TRUE;
  return em_item_says (r->items, i, EM_SAYS_GLUE) != NULL;
}

/* "B" of "next to B", "b)" of "near b)", quoted or in brackets: no article, and no word of its own. */
static gboolean
is_code_word (const EmReader *r, guint i)
{
  const EmItem *item = em_item (r->items, i);
  gboolean is_wrapped = i > r->first && (em_item_is_sign (r->items, i - 1, '"') || em_item_is_sign (r->items, i - 1, '('));
  gboolean is_marked = i + 1 < r->end && em_item_is_sign (r->items, i + 1, ')');
  gboolean is_last = i + 1 >= r->end || em_item (r->items, i + 1)->type == EM_ITEM_SIGN || em_item_is_soft_break (r->items, i + 1);
  gboolean is_before_size = i > r->first && i + 1 < r->end && em_item (r->items, i + 1)->type == EM_ITEM_SIZE &&
                            (em_item_says (r->items, i - 1, EM_SAYS_LABEL) != NULL || em_item_is_soft_break (r->items, i - 1) || em_item (r->items, i - 1)->type == EM_ITEM_SIGN);

  if (item->length != 1 || item->type == EM_ITEM_SIZE || item->type == EM_ITEM_SIGN || !g_ascii_isalpha (r->items->text[item->start]))
    return FALSE;
  if (is_wrapped || is_marked)
    return TRUE;
  return is_capital_letter (r, i) && (is_last || is_before_size || r->items->text[item->start] != 'A' || joins (r, i + 1));
}

/* "on 1 and 3", "1 & 3 are in a textured area": bare numbers that nothing else is told of. */
static gboolean
is_code_number (const EmReader *r, guint i)
{
  guint end = i;

  if (!em_list_is_bare_whole (r->items, i) || em_item (r->items, i)->length > 2 || !(em_item_says (r->items, i - (i > r->first), EM_SAYS_PREPOSITION) != NULL || i == r->first))
    return FALSE;
  while (end + 2 < r->end && em_item_is_soft_break (r->items, end + 1) && em_list_is_bare_whole (r->items, end + 2))
    end += 2;
  if (i == r->first)
    return end > i && end + 1 < r->end && em_item_says (r->items, end + 1, EM_SAYS_GLUE) != NULL;
  return end + 1 >= r->end || em_item_is_soft_break (r->items, end + 1) || em_item_is_sign (r->items, end + 1, '.');
}

/* Those that the words from first to end name. */
static guint
read_codes (const EmReader *r, guint first, guint end, EmProto **out_protos, guint max)
{
  guint n = 0;

  for (guint i = first; i < end && i < first + CODE_WINDOW && n < max; i++)
    {
      EmProto *proto = is_code_word (r, i) ? em_refer_with (r, em_list_head_at (r->items, i)) : NULL;

      if (n == 0 && is_code_number (r, i))
        return read_numbers (r, i, out_protos, max);
      if (proto == NULL || proto->last >= r->first)
        continue;
      out_protos[n++] = proto;
      em_item (r->items, i)->is_used = TRUE;
    }
  return n;
}

/* "A 0.4, B and C 0.2", "0.4 on A, 0.2 on B and C": the codes of one of several sizes stand on its one side. */
static guint
read_codes_of_size (const EmReader *r, guint at, EmProto **out_protos, guint max)
{
  guint first = at, end = at + 1, n;

  while (first > r->first && !em_item_is_measure (r->items, first - 1))
    first--;
  while (end < r->end && !em_item_is_measure (r->items, end))
    end++;
  n = read_codes (r, first, at, out_protos, max);
  return n > 0 ? n : read_codes (r, at + 1, end, out_protos, max);
}

guint
em_refer_codes (const EmReader *r, guint at, EmProto **out_protos, guint max)
{
  guint n;

  if (r->grammar->protos->len < 2)
    return 0;
  if (em_item_is_measure (r->items, at) && (em_item_size (r->items, at)->roles & EM_ROLE_STOCK) != 0)
    return read_codes_of_size (r, at, out_protos, max);
  n = read_codes (r, part_begin (r, at), part_end (r, at), out_protos, max);
  return n > 0 ? n : read_codes (r, r->first, r->end, out_protos, max);
}

/* The repair that the segment refers to; before where none has that number. */
const EmProto *
em_refer_repair (const EmReader *r, const EmProto *before, guint64 head)
{
  const GPtrArray *protos = r->grammar->protos;

  for (guint i = protos->len; head != 0 && i-- > 0 && i + NAMED_WINDOW > protos->len;)
    if (((const EmProto *) g_ptr_array_index (protos, i))->head == head)
      return g_ptr_array_index (protos, i);
  return before;
}

EmProto *
em_refer_named (const EmReader *r, EmProto *before, guint first, guint end)
{
  const GPtrArray *protos = r->grammar->protos;
  const EmSense *noun = NULL;
  EmProto *named = NULL;

  for (guint i = first; i < end && noun == NULL; i++)
    noun = em_item_says (r->items, i, EM_SAYS_KIND);
  for (guint i = protos->len; noun != NULL && i-- > 0 && i + NAMED_WINDOW > protos->len;)
    {
      EmProto *proto = g_ptr_array_index (protos, i);
      const EmSense *its = proto->noun != EM_NO_ITEM ? em_item_says (r->items, proto->noun, EM_SAYS_KIND) : NULL;

      if (its == NULL || memcmp (its->weight, noun->weight, sizeof its->weight) != 0)
        continue;
      if (named != NULL)
        return before;
      named = proto;
    }
  return named != NULL ? named : before;
}
