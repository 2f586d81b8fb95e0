/* em-item-range: "1 to 3 mm deep", "gemessen 34,86 bis 34,90": limits of one size told in words.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-item-parts.h"

#include <string.h>

enum { VAGUE_WORDS = 3 /* between a word for wear and the range it is of */ };

/* A worn diameter is nearer to the finished one than this. */
static const double far_ratio = 1.3;

/* The bounds of what to add are no farther apart. */
static const double close_ratio = 2;

/* "low by about": what only says that it is no exact size. */
static gboolean
is_vague (const EmItem *item)
{
  return item->type == EM_ITEM_PHRASE && em_phrase_find (item->phrase, EM_SAYS_LABEL) == NULL &&
         em_phrase_find (item->phrase, EM_SAYS_VERB) == NULL &&
         (em_phrase_find (item->phrase, EM_SAYS_APPROXIMATE) != NULL || em_phrase_find (item->phrase, EM_SAYS_GLUE) != NULL);
}

/* The item that leads to the size being read, or NULL. */
static const EmItem *
leading_item (const EmItemBuilder *b)
{
  const GArray *items = b->items->items;
  guint n = items->len, last = n > VAGUE_WORDS ? n - VAGUE_WORDS : 0;

  while (n > last && is_vague (&g_array_index (items, EmItem, n - 1)))
    n--;
  return n > 0 ? &g_array_index (items, EmItem, n - 1) : NULL;
}

/* The item before is a word for wear or build-up: "low .010 to .015", or for a diameter: no two of one thing are as far apart as
 * "dia 0.3 to 0.5 mm", and none becomes another as in "worn .004 to .006". */
static gboolean
is_after_wear (const EmItemBuilder *b, const EmSize *range)
{
  const EmItem *last = leading_item (b);
  const EmSense *label = last != NULL && last->type == EM_ITEM_PHRASE ? em_phrase_find (last->phrase, EM_SAYS_LABEL) : NULL;
  gboolean is_close = range->low.d == range->high.d && em_fraction_plain (range->high) <= close_ratio * em_fraction_plain (range->low);

  /* "add 0.2 to 0.3", against "add .010 to .375 dia" */
  if (last != NULL && last->type == EM_ITEM_PHRASE && em_phrase_find (last->phrase, EM_SAYS_VERB) != NULL &&
      g_strcmp0 (em_phrase_find (last->phrase, EM_SAYS_VERB)->value, "build") == 0)
    return is_close;
  if (label != NULL && label->roles == EM_ROLE_DIAMETER)
    return range->unit != EM_UNIT_NONE && em_fraction_plain (range->high) > far_ratio * em_fraction_plain (range->low);
  if (label != NULL && label->roles == EM_ROLE_WORN)
    return range->n_decimals > 0 && is_close && em_fraction_plain (range->high) > far_ratio * em_fraction_plain (range->low);
  /* "RC 46 to 48", "depth 6 to 8" */
  return label != NULL && (label->roles == EM_ROLE_BUILD || label->roles == EM_ROLE_HARDNESS || label->roles == EM_ROLE_DEPTH);
}

/* ".004 to .006 low", "0.1 to 0.2 per side" */
static gboolean
is_before_wear (const EmItemBuilder *b, guint at, const EmSize *range)
{
  guint n;
  const EmSense *label = em_phrase_find (em_builder_match (b, at, &n), EM_SAYS_LABEL);

  return label != NULL && label->place != EM_LABEL_BEFORE && (label->roles == EM_ROLE_BUILD || label->roles == EM_ROLE_PER_SIDE) &&
         range->low.d == range->high.d && em_fraction_plain (range->high) <= close_ratio * em_fraction_plain (range->low);
}

/* "0,2 bis 0,4 auftragen" */
static gboolean
is_before_building (const EmItemBuilder *b, guint at)
{
  guint n;
  const EmSense *verb = em_phrase_find (em_builder_match (b, at, &n), EM_SAYS_VERB);

  return verb != NULL && g_strcmp0 (verb->value, "build") == 0;
}

/* The token is that word, in letters of ASCII. */
static gboolean
is_token_word (const EmItemBuilder *b, guint at, const char *word)
{
  const EmToken *token = em_builder_token (b, at);

  return token->type == EM_TOKEN_WORD && token->length == strlen (word) && g_ascii_strncasecmp (b->items->text + token->start, word, token->length) == 0;
}

/* "R0,3 bis R0,5", "Ø20,08 bis Ø20,12": the sign of the first once more behind the word; how many tokens it has. */
static guint
sign_again (const EmItemBuilder *b, guint at)
{
  enum { DIAMETER_SIGN = 0x2300 };

  return em_builder_is_number (b, at + 1) && (is_token_word (b, at, "r") || em_builder_is_sign (b, at, DIAMETER_SIGN)) ? 1 : 0;
}

/* "gemessen 34,86 bis 34,90", "measures 34.86 to 34.90", "R0,3 bis 0,5": German says "bis" of a range alone; what is measured lies close together. */
static gboolean
is_measured_range (const EmItemBuilder *b, guint at, const EmSize *first, const EmSize *range)
{
  static const char *const words[] = { "measures", "measured", "measuring", "reads", "gauges", "gages", "checks", "mesuré", "mesurée", "mesurés", "mesurées", "mesure", "mide", "miden", "medido", "medidos",
                                      "now", "is now", "are now", "now at", "now about", "jetzt", "aktuell", "ist jetzt", "sind jetzt", "ahora", "maintenant" };
  const double close = 1.05;
  const EmItem *last = leading_item (b);
  double ratio = range->low.d != 0 ? em_fraction_plain (range->high) / em_fraction_plain (range->low) : 0;
  gboolean is_told = is_token_word (b, at, "bis");

  if (first->n_decimals == 0 || ratio <= 1)
    return FALSE;
  for (gsize k = 0; last != NULL && last->type == EM_ITEM_PHRASE && k < G_N_ELEMENTS (words); k++)
    is_told |= last->length == strlen (words[k]) && g_ascii_strncasecmp (b->items->text + last->start, words[k], last->length) == 0;
  if (is_told && ratio < close)
    return TRUE;
  return is_token_word (b, at, "bis") && last != NULL && last->length == 1 && g_ascii_tolower (b->items->text[last->start]) == 'r' && ratio <= close_ratio;
}

/* "1 to 3 mm deep", "wear 0.1 to 0.15": a range in words; "worn from 1.000 to 1.010" is none. Returns the token after it, or at. */
guint
em_builder_read_range (const EmItemBuilder *b, guint at, EmSize *size)
{
  EmSize range = *size;
  guint n, next, number;
  const EmSense *to = em_phrase_find (em_builder_match (b, at, &n), EM_SAYS_TO);

  if (to == NULL || g_strcmp0 (to->value, "range") != 0)
    return at;
  number = at + n + (is_token_word (b, at, "bis") ? sign_again (b, at + n) : 0);
  next = em_builder_read_second (b, number, &range);
  if (next == number || !(is_measured_range (b, at, size, &range) || em_builder_is_ranged_after (b, next) || em_unit_is_hardness (range.unit) ||
                          is_after_wear (b, &range) || is_before_wear (b, next, &range) || is_before_building (b, next)))
    return at;
  *size = range;
  return next;
}
