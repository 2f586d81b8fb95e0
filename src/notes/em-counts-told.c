/* em-counts-told: how many of a repair there are, by words that count without a number beside them.
 *
 * "Two of the sliding cores", "two bosses …, each has a dent", "add 0.2 to both flanks". All of them only let guess.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-counts.h"

#include "em-list.h"

#include <string.h>

enum
{
  HEAD_NOUN = 3,      /* a noun of this weight stands for its kind */
  PART_WINDOW = 5,    /* items from "of the" to the part */
  BACK_WINDOW = 16,   /* items from "each has" back to the number */
  SIDES_WINDOW = 48,  /* items of a repair looked over for "both flanks" */
  THERE_MAX = 100     /* more than that are no places */
};

/* "of", "of the", "der", "von den", "de los", "des" */
static gboolean
is_of (const EmReader *r, guint i)
{
  static const char *const words[] = { "of", "of the", "of our", "of these", "of those", "of its", "der", "von", "von den", "unserer", "de", "de los", "de las", "des", "de nos", "de estos" };

  return i < r->end && em_item_is_any_word_of (r->items, i, words, G_N_ELEMENTS (words));
}

gboolean
em_counts_is_some_of (const EmItems *items, guint first, guint end, guint i)
{
  static const char *const words[] = { "of", "of the", "of our", "of these", "of those", "der", "von", "von den", "unserer", "de los", "de las", "des", "de nos", "de estos" };

  if (i + 2 >= end || !em_item_is_any_word_of (items, i + 1, words, G_N_ELEMENTS (words)) ||
      (i > first && em_item_says (items, i - 1, EM_SAYS_LABEL) != NULL && em_item_says (items, i - 1, EM_SAYS_PREPOSITION) == NULL))
    return FALSE;
  for (guint k = i + 2; k < end && k <= i + PART_WINDOW && em_item (items, k)->type != EM_ITEM_SIZE && !em_item_is_soft_break (items, k); k++)
    if (em_item_says (items, k, EM_SAYS_PLACE) != NULL)
      return em_item_says (items, k, EM_SAYS_KIND) == NULL;
  return FALSE;
}

/* "Two of the sliding cores got a dimple": at the head of the sentence, or behind "on". */
static void
count_some_of (const EmReader *r, EmProto *proto, guint i)
{
  double n = em_counts_number_at (r, i);

  if (n > 1 && is_of (r, i + 1) && (i == r->first || em_item_says (r->items, i - 1, EM_SAYS_PREPOSITION) != NULL || em_item_is_soft_break (r->items, i - 1)) &&
      em_counts_is_some_of (r->items, r->first, r->end, i))
    em_counts_guess (r, proto, i, n);
}

/* "8 core tips, and on 3 of them …", "vier Kerne, davon zwei …": fewer than were named before. */
static void
count_of_them (const EmReader *r, EmProto *proto, guint i)
{
  static const char *const them[] = { "of them", "of these", "of those", "of which", "von ihnen", "de ellos", "de ellas", "d'entre eux", "d'entre elles" };
  static const char *const pronouns[] = { "them", "these", "those", "which", "ihnen", "denen", "ellos", "ellas" };
  gboolean is_behind = em_item_is_word (r->items, i, "davon"), is_before = em_item_is_any_word_of (r->items, i, them, G_N_ELEMENTS (them)) ||
                       (i + 1 < r->end && is_of (r, i) && em_item_is_any_word_of (r->items, i + 1, pronouns, G_N_ELEMENTS (pronouns)));
  guint number = is_behind ? i + 1 : i - 1;
  double n;

  if (!(is_behind || is_before) || number < r->first || number >= r->end || proto->count_item == EM_NO_ITEM || em_item (r->items, number)->is_used)
    return;
  n = em_list_is_bare_whole (r->items, number) && em_item_size (r->items, number)->chain == 0 ? (double) em_item_size (r->items, number)->value.n : em_counts_number_at (r, number);
  if (!(n >= 1 && n < proto->count))
    return;
  if (em_item (r->items, number)->type == EM_ITEM_SIZE)
    em_item_size (r->items, number)->roles |= EM_ROLE_REFERENCE;
  proto->count = n;
  proto->count_item = number;
  proto->is_count_loose = TRUE;
  em_item (r->items, number)->is_used = TRUE;
}

/* "has a", "with one": what each of several has. */
static gboolean
is_has_one (const EmReader *r, guint i)
{
  static const char *const words[] = { "has", "has a", "has one", "have a", "got a", "with a", "with one", "hat", "hat eine", "hat einen", "mit einer", "mit einem", "tiene", "tiene una", "con una", "con un",
                                       "a un", "a une", "avec un", "avec une", "présente", "présente une", "presenta" };

  return i < r->end && em_item_is_any_word_of (r->items, i, words, G_N_ELEMENTS (words));
}

/* "two bosses got banged up, each has a dent" */
static void
count_each_has (const EmReader *r, EmProto *proto, guint i)
{
  if (!em_item_is_per (r->items, i) || !is_has_one (r, i + 1))
    return;
  for (guint k = i; k-- > r->first && k + BACK_WINDOW > i;)
    {
      double n = em_counts_number_at (r, k);

      if (!(n > 1))
        continue;
      em_counts_guess (r, proto, k, n);
      return;
    }
}

/* "Four vents ground too deep, each .5 x .25": so many were named, and each measures what follows. */
static void
count_each_measures (const EmReader *r, EmProto *proto, guint i)
{
  if (!em_item_is_per (r->items, i) || i + 1 >= r->end || !(em_item_is_measure (r->items, i + 1) || em_item_says (r->items, i + 1, EM_SAYS_LABEL) != NULL))
    return;
  for (guint k = MAX (r->first, proto->first); k + 1 < i && k < proto->first + BACK_WINDOW; k++)
    {
      const EmItem *thing = em_item (r->items, k + 1);
      double n = em_counts_number_at (r, k);

      if (!(n > 1 && n < THERE_MAX) || em_item_is_measure (r->items, k + 1) || em_item_says (r->items, k + 1, EM_SAYS_LABEL) != NULL || thing->type == EM_ITEM_SIGN ||
          (k + 2 < r->end && em_item_is_sign (r->items, k + 2, ',')) ||
          (k > r->first && em_item_says (r->items, k - 1, EM_SAYS_PREPOSITION) != NULL && em_item_says (r->items, k + 1, EM_SAYS_KIND) != NULL))
        continue;
      em_counts_guess (r, proto, k, n);
      return;
    }
}

/* "DIE PLATE, 24 HOLES" and in the line below "ALL HOLES WORN": as many as were named. */
static void
count_all_named (const EmReader *r, EmProto *proto, guint i)
{
  const EmItem *noun = i + 1 < r->end ? em_item (r->items, i + 1) : NULL;

  if (noun == NULL || (em_item_says (r->items, i, EM_SAYS_ALL) == NULL && !em_item_is_all (r->items, i)) || noun->type != EM_ITEM_PHRASE ||
      em_item_says (r->items, i + 1, EM_SAYS_KIND) == NULL)
    return;
  for (guint k = r->first; k-- > 0 && k + BACK_WINDOW > r->first;)
    if (em_item (r->items, k + 1)->phrase == noun->phrase && em_list_is_bare_whole (r->items, k) && em_item_size (r->items, k)->value.n > 1 &&
        em_item_size (r->items, k)->value.n < THERE_MAX)
      {
        em_counts_guess (r, proto, k, (double) em_item_size (r->items, k)->value.n);
        return;
      }
}

/* "32 in all", "ten altogether", "insgesamt 6": at the end, or the head, of its part. */
static void
count_in_all (const EmReader *r, EmProto *proto, guint i)
{
  static const char *const words[] = { "in all", "in total", "altogether", "all told", "total", "all together", "insgesamt", "in Summe", "gesamt", "zusammen", "en total", "en todo", "au total",
                                       "en tout", "together" };
  guint number = EM_NO_ITEM;
  double n;

  if (!em_item_is_any_word_of (r->items, i, words, G_N_ELEMENTS (words)))
    return;
  for (guint k = i > r->first + 2 ? i - 2 : r->first; k < i; k++)
    if (em_list_is_bare_whole (r->items, k) || em_counts_number_at (r, k) > 1)
      number = k;
  if (number == EM_NO_ITEM && i + 1 < r->end && (em_list_is_bare_whole (r->items, i + 1) || em_counts_number_at (r, i + 1) > 1))
    number = i + 1;
  if (number == EM_NO_ITEM || em_item (r->items, number)->is_used || (number + 1 < r->end && em_item_says (r->items, number + 1, EM_SAYS_UNIT) != NULL))
    return;
  n = em_item (r->items, number)->type == EM_ITEM_SIZE ? (double) em_item_size (r->items, number)->value.n : em_counts_number_at (r, number);
  if (!(n > 1 && n < THERE_MAX))
    return;
  if (em_item (r->items, number)->type == EM_ITEM_SIZE)
    em_item_size (r->items, number)->roles |= EM_ROLE_REFERENCE;
  em_counts_guess (r, proto, number, n);
}

/* "steps either side of the gate", "Kante li. und re.": one on each. */
static void
count_either_side (const EmReader *r, EmProto *proto, guint i)
{
  static const char *const sides[] = { "either side", "on either side", "at either side", "either end", "at either end", "left and right", "left & right", "lh & rh", "lh and rh", "l and r", "l & r",
                                       "links und rechts", "li. und re.", "li. u. re.", "links u. rechts", "rechts und links", "li + re", "li. + re.", "re. und li.", "links + rechts", "links/rechts", "li/re",
                                       "izquierda y derecha", "a izquierda y derecha", "a ambos lados", "en ambos lados", "en los dos lados", "à gauche et à droite", "gauche et droite", "de part et d'autre" };

  if (em_item_is_any_word_of (r->items, i, sides, G_N_ELEMENTS (sides)) && em_item_says (r->items, i, EM_SAYS_SET) == NULL && proto->weight[RIB] + proto->weight[BORE] + proto->weight[PIN] == 0)
    em_counts_guess (r, proto, i, 2);
}

/* "bad ones", "of them", "such": says only that they are like those told. */
static gboolean
is_bad_ones (const EmReader *r, guint i)
{
  static const char *const words[] = { "bad ones", "bad", "of them", "of these", "of those", "ones", "like that", "like this", "such", "davon", "solche", "Stück", "stk", "de ellos", "de ellas", "así", "comme ça", "iguales" };

  return em_item_is_any_word_of (r->items, i, words, G_N_ELEMENTS (words));
}

/* "25 de long, il y en a 4": how many there are, at the end of its part. */
static void
count_there_are (const EmReader *r, EmProto *proto, guint i)
{
  static const char *const words[] = { "il y en a", "y en a", "on en compte", "on en a", "nous en avons", "j'en ai", "hay", "son", "tenemos", "tengo", "ce sont", "there are", "we have", "es gibt", "es sind", "sind es",
                                       "wir haben", "theres", "there's", "there is", "son los", "son las", "hay unos", "hay unas", "there are about", "there are some" };
  double n;

  if (i + 1 >= r->end || !em_item_is_any_word_of (r->items, i, words, G_N_ELEMENTS (words)) ||
      (i + 2 < r->end && em_item (r->items, i + 2)->type != EM_ITEM_SIGN && !is_bad_ones (r, i + 2)))
    return;
  if (em_item (r->items, i + 1)->is_used)
    return;
  n = em_list_is_bare_whole (r->items, i + 1) ? (double) em_item_size (r->items, i + 1)->value.n : em_counts_number_at (r, i + 1);
  if (!(n > 1 && n < THERE_MAX))
    return;
  if (em_item (r->items, i + 1)->type == EM_ITEM_SIZE)
    em_item_size (r->items, i + 1)->roles |= EM_ROLE_REFERENCE;
  em_counts_guess (r, proto, i + 1, n);
}

void
em_counts_add_told (const EmReader *r, EmProto *proto, guint i)
{
  count_of_them (r, proto, i);
  if (proto->count_item != EM_NO_ITEM)
    return;
  count_there_are (r, proto, i);
  count_some_of (r, proto, i);
  count_each_has (r, proto, i);
  if (proto->count_item != EM_NO_ITEM)
    return;
  count_each_measures (r, proto, i);
  count_all_named (r, proto, i);
  count_in_all (r, proto, i);
  if (proto->count_item == EM_NO_ITEM)
    count_either_side (r, proto, i);
}

gboolean
em_counts_is_led (const EmReader *r, guint i)
{
  static const char *const led[] = { "on", "on the", "on all", "in", "in the", "at", "at the", "an", "an den", "auf", "auf den", "bei", "in den", "bei den", "sur", "sur les", "dans", "dans les", "aux", "en", "en las",
                                     "en los" };
  static const char *const articles[] = { "the", "den", "les", "las", "los" };

  if (i == r->first)
    return FALSE;
  if (em_item_is_any_word_of (r->items, i - 1, led, G_N_ELEMENTS (led)))
    return TRUE;
  return i > r->first + 1 && em_item_is_any_word_of (r->items, i - 1, articles, G_N_ELEMENTS (articles)) &&
         em_item_is_any_word_of (r->items, i - 2, led, G_N_ELEMENTS (led));
}

gboolean
em_counts_says_more (const EmReader *r, guint i)
{
  static const char *const more[] = { "more", "further", "other", "others", "additional", "weitere", "weiteren", "andere", "anderen", "más", "otros", "otras", "autres", "de plus" };

  return i < r->end && em_item_is_any_word_of (r->items, i, more, G_N_ELEMENTS (more));
}

/* "both flanks", "beidseitig", and not "per side". */
static gboolean
says_both_sides (const EmReader *r, guint i)
{
  static const char *const both[] = { "both ", "on both ", "at both ", "to both ", "beide ", "beiden ", "beidseit", "an beiden ", "auf beiden ", "les deux ", "des deux ", "aux deux ", "sur les deux ",
                                      "ambos ", "ambas ", "en ambos ", "en ambas ", "por ambos ", "los dos lados", "a ambos " };
  const EmSense *label = em_item_says (r->items, i, EM_SAYS_LABEL);

  if (label == NULL || (label->roles & EM_ROLE_PER_SIDE) == 0)
    return FALSE;
  for (gsize k = 0; k < G_N_ELEMENTS (both); k++)
    if (g_ascii_strncasecmp (r->items->text + em_item (r->items, i)->start, both[k], strlen (both[k])) == 0)
      return TRUE;
  return FALSE;
}

void
em_counts_add_sides (const EmReader *r, EmProto *proto, guint first, guint end)
{
  const EmSense *noun = proto->noun != EM_NO_ITEM ? em_item_says (r->items, proto->noun, EM_SAYS_KIND) : NULL;

  if (proto->count_item != EM_NO_ITEM || noun == NULL || noun->weight[SIDEWALL] < HEAD_NOUN || noun->weight[RIB] + noun->weight[FACE] > 0)
    return;
  for (int k = 0; k < EM_N_NOTE_KINDS; k++)
    if (k != SIDEWALL && proto->weight[k] > proto->weight[SIDEWALL])
      return;
  for (guint i = first; i < end && i < first + SIDES_WINDOW; i++)
    if (says_both_sides (r, i))
      {
        em_counts_guess (r, proto, i, 2);
        return;
      }
}
