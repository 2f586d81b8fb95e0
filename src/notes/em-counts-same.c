/* em-counts-same: how many of a repair there are, by the numbers of their parts and by "the same".
 *
 * "Cavities 2 and 5", "ribs 3-6", "the same on insert 8 and insert 9". All of them only let guess.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-counts.h"

#include "em-list.h"

#include <string.h>

enum
{
  COUNT_WINDOW = 12,  /* items of a row of numbers */
  AGAIN_WINDOW = 4    /* items from "the same" to "the other" */
};

static gboolean
is_word (const EmReader *r, guint i, const char *word)
{
  return i >= r->first && i < r->end && em_item_is_word (r->items, i, word);
}

/* ", and the same again on the other half": once more. */
void
em_counts_add_same_again (const EmReader *r, EmProto *proto, guint i)
{
  if (em_item_says (r->items, i, EM_SAYS_SAME) == NULL || proto->count_item != EM_NO_ITEM || proto->sizes->len == 0)
    return;
  for (guint k = i + 1; k < r->end && k <= i + AGAIN_WINDOW && !em_item_is_soft_break (r->items, k); k++)
    if (em_item_says (r->items, k, EM_SAYS_ONE_OF) != NULL)
      {
        em_counts_guess (r, proto, i, 2);
        em_item (r->items, k)->is_used = TRUE;
        return;
      }
  /* ", gegenüber nochmal das Gleiche" */
  for (guint k = i; k-- > r->first && k + AGAIN_WINDOW > i && !em_item_is_soft_break (r->items, k);)
    if (em_item_says (r->items, k, EM_SAYS_ONE_OF) != NULL)
      {
        em_counts_guess (r, proto, i, 2);
        em_item (r->items, k)->is_used = TRUE;
        return;
      }
  /* ", also cav 6 same size" */
  for (guint k = i; k-- > r->first + 1 && k + AGAIN_WINDOW > i && !em_item_is_soft_break (r->items, k);)
    if (is_word (r, k - 1, "also") && em_item_says (r->items, k, EM_SAYS_PLACE) != NULL)
      {
        em_counts_guess (r, proto, i, 2);
        return;
      }
}

/* "A" of "lands A & B" */
static gboolean
is_part_letter (const EmReader *r, guint i)
{
  const EmItem *item = em_item (r->items, i);

  return item->length == 1 && item->type != EM_ITEM_SIZE && item->type != EM_ITEM_SIGN && g_ascii_isupper (r->items->text[item->start]) &&
         (i + 1 >= r->items->items->len || !em_item_is_glued (r->items, i + 1) || em_item (r->items, i + 1)->type == EM_ITEM_SIGN);
}

/* One of the numbers or letters of parts: "2", "#3", "B". */
static gboolean
is_part_name (const EmReader *r, guint i, gboolean is_place)
{
  i += em_item_is_sign (r->items, i, '#');
  return i < r->end && (is_part_letter (r, i) ||
                        ((is_place || em_item_is_sign (r->items, i - 1, '#')) && em_list_is_bare_whole (r->items, i) &&
                         (em_item_size (r->items, i)->roles & (em_length_roles | EM_ROLE_RADIUS)) == 0 &&
                         em_item_size (r->items, i)->chain == 0));
}

/* "1,3" of "cavs 1,3,5": read as one number, and marked as a name. */
static gboolean
names_two (const EmReader *r, guint i)
{
  const EmSize *size = em_item (r->items, i)->type == EM_ITEM_SIZE ? em_item_size (r->items, i) : NULL;

  return size != NULL && size->n_decimals == 1 && (size->roles & EM_ROLE_REFERENCE) != 0 && (size->flags & EM_TOKEN_DECIMAL) == 0;
}

/* "no." of "rib no. 3 and 7" */
static guint
skip_number_word (const EmReader *r, guint i)
{
  static const char *const words[] = { "no", "no.", "nos", "nos.", "number", "numbers", "nr", "nr.", "nummer", "nummern", "núm.", "números", "n°", "nº" };

  if (i + 1 >= r->end || !em_item_is_any_word_of (r->items, i, words, G_N_ELEMENTS (words)))
    return i;
  return i + 1 + em_item_is_sign (r->items, i + 1, '.');
}

/* "cavity 1/3/5:", "Nest 1 + 3:" */
static gboolean
is_sign_between (const EmReader *r, guint i)
{
  return (em_item_is_sign (r->items, i, '/') || em_item_is_sign (r->items, i, '+')) && em_list_is_bare_whole (r->items, i - 1) && i + 1 < r->end && em_list_is_bare_whole (r->items, i + 1);
}

/* "cavities 2 and 5", "Schieber 1 und 2": how many parts are numbered behind part; *out_end is the item after them. */
static guint
numbered_parts (const EmReader *r, guint part, gboolean is_place, gboolean is_plural, guint *out_end)
{
  guint n = 0, i = skip_number_word (r, part + 1);
  gboolean has_and = FALSE;

  *out_end = i;
  while (i < r->end && i < part + COUNT_WINDOW && (is_part_name (r, i, is_place) || names_two (r, i)))
    {
      has_and |= names_two (r, i);
      n += 1 + names_two (r, i);
      i += 1 + em_item_is_sign (r->items, i, '#');
      *out_end = i;
      if (i >= r->end || em_item_is_sign (r->items, i, '-'))
        break;
      /* "cav 2 5 and 7" */
      if (!em_item_is_soft_break (r->items, i) && !is_sign_between (r, i))
        continue;
      has_and |= em_item (r->items, i)->type != EM_ITEM_SIGN || em_item_is_sign (r->items, i, '&') || em_item_is_sign (r->items, i, '+') ||
                 em_item_is_sign (r->items, i, '/');
      i++;
      /* "cav 1 and cav 3" */
      i += i + 1 < r->end && em_item (r->items, i)->type == EM_ITEM_PHRASE && em_item (r->items, i)->phrase == em_item (r->items, part)->phrase;
      /* ", #7, and #9" */
      if (i < r->end && em_item_says (r->items, i, EM_SAYS_GLUE) != NULL && em_item_is_soft_break (r->items, i))
        {
          has_and = TRUE;
          i++;
        }
    }
  return is_plural || has_and ? n : 0;
}

guint
em_counts_numbered (const EmReader *r, guint part, guint *out_end)
{
  return numbered_parts (r, part, TRUE, TRUE, out_end);
}

/* "pocket 7 and 8: …": the number was found to be a name. */
static gboolean
is_name_behind (const EmReader *r, guint part)
{
  return part == r->first && part + 1 < r->end && em_item (r->items, part + 1)->type == EM_ITEM_SIZE && em_item (r->items, part + 1)->is_used &&
         (em_item_size (r->items, part + 1)->roles & EM_ROLE_REFERENCE) != 0;
}

/* Their number, as each may have the repair. */
void
em_counts_add_numbered (const EmReader *r, EmProto *proto, guint part)
{
  const EmItem *item = em_item (r->items, part);
  const EmSense *place = em_item_says (r->items, part, EM_SAYS_PLACE);
  gboolean is_plural = g_ascii_tolower (r->items->text[item->start + item->length - 1]) == 's' ||
                       (place != NULL && em_phrase_tells (item->phrase, EM_SAYS_PLACE, "counted"));
  guint n, end;

  /* "zwischen Kammer 2 und 3": where it is. */
  if (part > r->first && em_item_says (r->items, part - 1, EM_SAYS_BETWEEN) != NULL)
    return;
  if (proto->count_item != EM_NO_ITEM || (place == NULL && em_item_says (r->items, part, EM_SAYS_KIND) == NULL))
    return;
  /* "ribs 3-6" */
  if (part + 1 < r->end && em_item (r->items, part + 1)->type == EM_ITEM_SIZE && em_item (r->items, part + 1)->is_used &&
      em_item_size (r->items, part + 1)->low.d == 1 && em_item_size (r->items, part + 1)->high.d == 1 &&
      (em_item_size (r->items, part + 1)->roles & EM_ROLE_REFERENCE) != 0)
    {
      em_counts_guess (r, proto, part, (double) (em_item_size (r->items, part + 1)->high.n - em_item_size (r->items, part + 1)->low.n + 1));
      return;
    }
  n = numbered_parts (r, part, place != NULL || skip_number_word (r, part + 1) != part + 1 || is_name_behind (r, part), is_plural, &end);
  if (n < 2)
    return;
  for (guint i = part + 1; i < end; i++)
    {
      if (em_item (r->items, i)->type == EM_ITEM_SIZE)
        em_item_size (r->items, i)->roles = EM_ROLE_REFERENCE;
      em_item (r->items, i)->is_used = TRUE;
    }
  em_counts_guess (r, proto, part, n);
}

void
em_counts_add_same (const EmReader *r, EmProto *proto, guint first, guint end)
{
  guint n_places = 0;

  /* "Same on insert 8 and insert 9." */
  for (guint i = first; i + 1 < end; i++)
    if (em_item_says (r->items, i, EM_SAYS_PLACE) != NULL && em_item (r->items, i + 1)->type == EM_ITEM_SIZE)
      {
        guint behind, n = numbered_parts (r, i, TRUE, FALSE, &behind);

        n_places += MAX (1, n);
        i = behind - 1;
      }
  for (guint i = first; i < end && proto->count_item == EM_NO_ITEM; i++)
    if (em_item_says (r->items, i, EM_SAYS_SAME) != NULL)
      {
        em_counts_guess (r, proto, i, 1 + MAX (1, n_places));
      }
}
