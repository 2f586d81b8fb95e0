/* em-counts: how many of a repair there are.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-counts.h"

#include "em-list.h"
#include "em-parts.h"

#include <math.h>
#include <string.h>

enum
{
  COUNTED_MAX = 100,     /* more of one repair are hardly told in parts */
  RANGE_MAX = 64,        /* parts from the first number to the last */
  PARTS_WINDOW = 12, EACH_WINDOW = 3, COUNT_WINDOW = 12, TOLD_WINDOW = 32,
  BOTH_LEAST = 19,       /* what an edge or a nick weighs that the sentence is of */
  ALONE_WINDOW = 4,
  NOUN_WINDOW = 4        /* and from a number word to what it counts */
};

static gboolean
is_word (const EmReader *r, guint i, const char *word)
{
  return i >= r->first && i < r->end && em_item_is_word (r->items, i, word);
}

/* Ends a part that may hold nothing but a number. */
static gboolean
is_part_end (const EmReader *r, guint i)
{
  return i < r->first || i >= r->end || em_item_is_soft_break (r->items, i) || em_item_is_sign (r->items, i, '(') ||
         em_item_is_sign (r->items, i, ')') ||
         em_item_is_sign (r->items, i, '.');
}

/* "of the mold" */
static gboolean
is_of_tool (const EmReader *r, guint i)
{
  guint tool = i + 1;

  if (i + 1 >= r->end || em_item_says (r->items, i, EM_SAYS_PREPOSITION) == NULL ||
      g_ascii_strncasecmp (r->items->text + em_item (r->items, i)->start, "of", 2) != 0)
    return FALSE;
  tool += em_item_says (r->items, tool, EM_SAYS_GLUE) != NULL && em_item_says (r->items, tool, EM_SAYS_PLACE) == NULL;
  return tool < r->end && em_item_says (r->items, tool, EM_SAYS_PLACE) != NULL && em_item_says (r->items, tool, EM_SAYS_KIND) == NULL &&
         is_part_end (r, tool + 1);
}

/* "both flanks of keyway", where "of" may be in one phrase with what is before it */
static gboolean
is_of_slot (const EmReader *r, guint i)
{
  guint slot = i < r->end && em_item_says (r->items, i, EM_SAYS_PREPOSITION) != NULL ? i + 1 : i;
  const EmSense *noun = slot < r->end ? em_item_says (r->items, slot, EM_SAYS_KIND) : NULL;

  return noun != NULL && g_strcmp0 (noun->set_value, "box") == 0;
}

/* "BOTH SIDES" in a part of its own, or a sentence: twice. */
gboolean
em_counts_is_both (const EmReader *r, guint i)
{
  static const char *const both[] = { "auf beiden Seiten", "an beiden Seiten", "an beiden Enden", "beidseits", "en ambos lados", "por ambos lados", "de ambos lados", "ambos lados", "en los dos lados",
                                      "des deux côtés", "sur les deux côtés", "aux deux bouts", "les deux côtés" };
  const EmItem *item = em_item (r->items, i);

  if (item->type != EM_ITEM_PHRASE || em_item_says (r->items, i, EM_SAYS_SET) != NULL || item->length <= 5 ||
      (g_ascii_strncasecmp (r->items->text + item->start, "both ", 5) != 0 && !em_item_is_any_word_of (r->items, i, both, G_N_ELEMENTS (both))))
    return FALSE;
  /* "on both sides (each 45 x 20)" */
  if (i + 2 < r->end && em_item_is_sign (r->items, i + 1, '(') && is_word (r, i + 2, "each"))
    return TRUE;
  return (is_part_end (r, i + 1) || is_of_tool (r, i + 1) || is_of_slot (r, i + 1)) &&
         (i == r->first || is_part_end (r, i - 1) || em_item_says (r->items, i - 1, EM_SAYS_PREPOSITION) != NULL /* "at both sides" */ ||
          em_item_says (r->items, i - 1, EM_SAYS_VERB) != NULL /* "build up both flanks of the slot" */);
}

/* "Kratzer zwischen zwei Stiften": where it is. */
static gboolean
is_behind_between (const EmReader *r, guint i)
{
  return i > r->first && em_item_says (r->items, i - 1, EM_SAYS_BETWEEN) != NULL;
}

static double
count_at (const EmReader *r, guint i, gboolean words_too)
{
  const EmSense *number = em_item_says (r->items, i, EM_SAYS_NUMBER);

  if (em_item (r->items, i)->type == EM_ITEM_SIZE)
    return (em_item_size (r->items, i)->roles & EM_ROLE_COUNT) != 0 ? (double) em_item_size (r->items, i)->value.n : (double) NAN;
  if (is_behind_between (r, i))
    return (double) NAN;
  return words_too && number != NULL && strcmp (number->value, EM_ARTICLE) != 0 &&
         strchr (number->value, '/') == NULL ? g_ascii_strtod (number->value, NULL) : (double) NAN;
}

double
em_counts_number_at (const EmReader *r, guint i)
{
  return count_at (r, i, TRUE);
}

gboolean
em_counts_is_per_part (const EmReader *r, guint i)
{
  guint next = i + 1;

  static const char *const with_part[] = { "par empreinte", "par cavité", "por cavidad", "pro Nest", "je Nest", "pro Kavität", "per cavity" };

  /* "4 cav tool, all cavs" */
  if ((em_item_says (r->items, i, EM_SAYS_ALL) != NULL || em_item_is_all (r->items, i)) && next < r->end && em_item_says (r->items, next, EM_SAYS_PLACE) != NULL &&
      g_strcmp0 (em_item_says (r->items, next, EM_SAYS_PLACE)->value, "counted") == 0)
    return TRUE;
  if (!em_item_is_per (r->items, i) && !is_word (r, i, "ea"))
    return FALSE;
  if (em_item_is_any_word_of (r->items, i, with_part, G_N_ELEMENTS (with_part)))
    return TRUE;
  /* "Kav. 1-4: je 2 Ausbrüche", "cav 1-4: 2 chips each" */
  if (em_parts_is_range (r, &r->parts) && (r->is_parts_line || r->parts.item >= r->first) &&
      ((next < r->end && count_at (r, next, TRUE) > 0) || (i > r->first + 1 && count_at (r, i - 2, TRUE) > 0)))
    return TRUE;
  if (i > r->first && em_item_says (r->items, i - 1, EM_SAYS_PREPOSITION) != NULL)
    return TRUE;
  /* "and each has a hole" */
  if (is_word (r, next, "has") || is_word (r, next, "have"))
    return TRUE;
  /* "EACH: EDGE DENTED" */
  if (i == r->first && next < r->end && em_item_is_sign (r->items, next, ':'))
    return TRUE;
  return next < r->end && em_item_says (r->items, next, EM_SAYS_PLACE) != NULL;
}

/* "2 nicks each", "2 nicks in each", "2 éclats par lame" */
static gboolean
is_each_of (const EmReader *r, guint count)
{
  guint each = count + 2;

  each += each < r->end && em_item_says (r->items, each, EM_SAYS_PREPOSITION) != NULL && !em_item_is_each_alone (r->items, each);
  if (each >= r->end)
    return FALSE;
  return em_item_is_each_alone (r->items, each) ||
         (em_item_is_per (r->items, each) && each + 1 < r->end && em_item_says (r->items, count + 1, EM_SAYS_KIND) != NULL &&
          (em_item_says (r->items, each + 1, EM_SAYS_PLACE) != NULL || em_item_says (r->items, each + 1, EM_SAYS_KIND) != NULL));
}

/* "four inserts, and each one has two dings" */
static gboolean
is_each_before (const EmReader *r, guint count)
{
  for (guint i = count; i-- > r->first && i + EACH_WINDOW >= count && em_item (r->items, i)->type != EM_ITEM_SIZE;)
    if (em_item_is_per (r->items, i))
      return TRUE;
  return FALSE;
}

/* "four cavities with 2 nicks each": how many parts have as many. */
static double
parts_before (const EmReader *r, guint count)
{
  for (guint i = count; (is_each_of (r, count) || is_each_before (r, count)) && i-- > r->first && i + PARTS_WINDOW > count;)
    {
      double n = em_item_says (r->items, i + 1, EM_SAYS_PLACE) != NULL ? count_at (r, i, TRUE) : (double) NAN;

      /* "Mandamos 3 postizos, cada uno con 2 mellas" */
      if (isnan (n) && em_list_is_bare_whole (r->items, i) && em_item_says (r->items, i + 1, EM_SAYS_PLACE) != NULL &&
          em_item_size (r->items, i)->roles == 0 && em_item_size (r->items, i)->chain == 0 && em_item_size (r->items, i)->value.n <= COUNTED_MAX)
        {
          em_item_size (r->items, i)->roles |= EM_ROLE_COUNT;
          em_item (r->items, i)->is_used = TRUE;
          return (double) em_item_size (r->items, i)->value.n;
        }
      if (n > 1)
        return n;
    }
  return 1;
}

/* "8 places total", "8 en total" */
static gboolean
is_total (const EmReader *r, guint count)
{
  static const char *const words[] = { "total", "in total", "in all", "altogether", "overall", "insgesamt", "gesamt", "in Summe", "en total", "en todo", "au total", "en tout" };

  for (guint k = count + 1; k < r->end && k <= count + 2; k++)
    {
      const EmItem *item = em_item (r->items, k);

      /* "places total" may be one phrase. */
      if (em_item_is_any_word_of (r->items, k, words, G_N_ELEMENTS (words)) ||
          (em_item_says (r->items, k, EM_SAYS_PLACES) != NULL && item->length > 6 &&
           g_ascii_strncasecmp (r->items->text + item->start + item->length - 6, " total", 6) == 0))
        return TRUE;
    }
  return FALSE;
}

/* "12 edges (2 per cav)": the first number counts all of them, and the second says only how they lie; "6 cavities (2 per cavity)" multiplies. */
static gboolean
is_spread_over_parts (const EmReader *r, const EmProto *proto, guint i, double count)
{
  guint noun = proto->count_item + 1;

  if (i <= noun || !em_item_is_sign (r->items, i - 1, '(') || i + 1 >= r->end || !em_item_is_per (r->items, i + 1) || proto->count <= count || fmod (proto->count, count) != 0)
    return FALSE;
  for (; noun < i - 1; noun++)
    if (em_item_says (r->items, noun, EM_SAYS_KIND) != NULL)
      return TRUE;
  return FALSE;
}

/* "= 12" is the count of all, "4 on the A side, 2 on the B side" makes six, "4 places per slide, 3 slides" twelve. TRUE: taken. */
static gboolean
combine_counts (const EmReader *r, EmProto *proto, guint i, double count)
{
  gboolean is_each = is_each_of (r, i) || is_each_of (r, proto->count_item), is_per = FALSE;

  if (i > proto->count_item + TOLD_WINDOW)
    return FALSE;
  /* "je Kern 2, 3 Kerne" */
  for (guint k = MAX (proto->count_item, 2) - 2; k < i; k++)
    is_per |= k >= r->first && em_item_is_per (r->items, k);
  /* "4 corners x 2 inserts" */
  is_per |= i > r->first + 1 && em_item_says (r->items, i - 1, EM_SAYS_TIMES) != NULL && i <= proto->count_item + 3;
  /* "32 cavities, 2 per cavity" */
  is_per |= i + 1 < r->end && em_counts_is_per_part (r, i + 1);
  if (is_spread_over_parts (r, proto, i, count))
    proto->is_multiplied = TRUE;
  else if ((i > r->first && em_item_is_sign (r->items, i - 1, '=')) || is_total (r, i))
    {
      proto->count = count;
      proto->is_multiplied = TRUE;
    }
  else if (is_each || is_per)
    {
      proto->count *= count;
      proto->is_multiplied = TRUE;
    }
  else if (i + 1 < r->end && em_item_says (r->items, i + 1, EM_SAYS_PREPOSITION) != NULL && count < COUNTED_MAX)
    proto->count += count;
  else
    return FALSE;
  em_item (r->items, i)->is_used = TRUE;
  return TRUE;
}

/* "4 places on each core, 4 cores": the second counts what each has of the first, or is added to it. */
static gboolean
is_with_parts (const EmReader *r, guint first, guint second)
{
  if (is_each_of (r, first) || is_each_of (r, second) ||
      (second + 1 < r->end && em_item_says (r->items, second + 1, EM_SAYS_PREPOSITION) != NULL))
    return TRUE;
  for (guint i = first + 1; i < second && i <= first + COUNT_WINDOW; i++)
    if (em_item_is_per (r->items, i) || is_word (r, i, "ea") || em_item_says (r->items, i, EM_SAYS_PREPOSITION) != NULL)
      return TRUE;
  return FALSE;
}

static void
add_count (const EmReader *r, EmProto *proto, guint i, double count)
{
  /* "4 inserts, 1 per insert" */
  if (proto->count_item != EM_NO_ITEM && i > proto->count_item && count == 1 && i + 1 < r->end && em_item_is_per (r->items, i + 1))
    {
      em_item (r->items, i)->is_used = TRUE;
      return;
    }
  /* "same chip on mirror side (2 total)" */
  if (proto->count_item != EM_NO_ITEM && proto->count == count && i > proto->count_item && !is_with_parts (r, proto->count_item, i))
    {
      em_item (r->items, i)->is_used = TRUE;
      return;
    }
  /* A second count: there may be more of it than the first says. */
  proto->is_count_loose |= proto->count_item != EM_NO_ITEM;
  if (proto->count_item != EM_NO_ITEM && combine_counts (r, proto, i, count))
    return;
  /* "1 off ring: two dents": one of the part, and two on it. */
  if (proto->count_item != EM_NO_ITEM && (proto->count != 1 || count <= 1))
    return;
  proto->is_count_loose |= proto->count_item != EM_NO_ITEM;
  proto->count = count;
  proto->count_item = i;
  em_item (r->items, i)->is_used = TRUE;
}

/* Marks what stands round a count as used with it: brackets, "X", "PLCS", "QTY". */
static void
use_count_words (const EmReader *r, guint i)
{
  for (guint k = i > r->first + 2 ? i - 2 : r->first; k < r->end && k <= i + 2; k++)
    if (k < i ? em_item_says (r->items, k, EM_SAYS_QUANTITY) != NULL || em_item_says (r->items, k, EM_SAYS_TYPICAL) != NULL
              : em_item_says (r->items, k, EM_SAYS_PLACES) != NULL || em_item_says (r->items, k, EM_SAYS_TYPICAL) != NULL ||
                  em_item_says (r->items, k, EM_SAYS_TIMES) != NULL)
      em_item (r->items, k)->is_used = TRUE;
}

static gboolean
has_count_word (const EmReader *r, guint i)
{
  for (guint k = i > r->first + 2 ? i - 2 : r->first; k < r->end && k <= i + 2; k++)
    if (em_item_says (r->items, k, EM_SAYS_QUANTITY) != NULL || em_item_says (r->items, k, EM_SAYS_TYPICAL) != NULL ||
        em_item_says (r->items, k, EM_SAYS_PLACES) != NULL || em_item_says (r->items, k, EM_SAYS_TIMES) != NULL)
      return TRUE;
  return FALSE;
}

/* "3 OFF PLATES": as many parts may have more than one repair each. */
static gboolean
is_of_parts (const EmReader *r, guint count)
{
  return count + 2 < r->end && em_item_says (r->items, count + 2, EM_SAYS_PLACE) != NULL &&
         em_item_says (r->items, count + 2, EM_SAYS_KIND) == NULL;
}

/* "2 nicks on each of four cavities": another number counts parts beside it. */
static gboolean
has_other_count (const EmReader *r, guint count)
{
  for (guint i = count > r->first + COUNT_WINDOW ? count - COUNT_WINDOW : r->first; i + 1 < r->end &&
       i <= count + COUNT_WINDOW; i++)
    if (i != count && (em_item_says (r->items, i + 1, EM_SAYS_PLACE) != NULL ||
                       em_item_says (r->items, i + 1, EM_SAYS_TOOLS) != NULL) &&
        count_at (r, i, TRUE) > 1)
      return TRUE;
  return FALSE;
}

/* "nitrided 3 times": of the coating. */
static gboolean
is_of_coating (const EmReader *r, guint i)
{
  return i > r->first && em_item_says (r->items, i - 1, EM_SAYS_COATING) != NULL && i + 1 < r->end &&
         em_item_says (r->items, i + 1, EM_SAYS_PLACES) != NULL;
}

/* "5 or 6 pits": how many is open. */
static gboolean
take_either_number (const EmReader *r, EmProto *proto, guint i)
{
  static const char *const or[] = { "or", "oder", "o", "ou", "u" };

  if (i < r->first + 2 || proto->count_item != EM_NO_ITEM || !em_item_is_any_word_of (r->items, i - 1, or, G_N_ELEMENTS (or)) || !em_list_is_bare_whole (r->items, i - 2) ||
      em_item_size (r->items, i - 2)->chain != 0)
    return FALSE;
  em_item_size (r->items, i - 2)->roles |= EM_ROLE_REFERENCE;
  em_item (r->items, i - 2)->is_used = em_item (r->items, i)->is_used = TRUE;
  proto->typical_item = i;
  return TRUE;
}

void
em_counts_add_number (const EmReader *r, EmProto *proto, guint i)
{
  guint64 n = em_item_size (r->items, i)->value.n;

  if (is_of_coating (r, i))
    return;
  if (take_either_number (r, proto, i))
    return;
  if (proto->count_item == EM_NO_ITEM)
    proto->is_count_loose = !has_count_word (r, i) || n == 1 || is_of_parts (r, i) || has_other_count (r, i);
  /* What the parts were counted by is multiplied with it there. */
  add_count (r, proto, i, (double) n * (proto->count_item == EM_NO_ITEM ? parts_before (r, i) : 1));
  proto->is_count_loose |= parts_before (r, i) > 1;
  use_count_words (r, i);
}

/* ---- number words ---- */

/* "three of the six core pins": the number of those meant; *out_all: the number of all. */
static gboolean
is_share (const EmReader *r, guint i, guint *out_all)
{
  guint all = i + 2;

  if (all + 1 >= r->end || (em_item_says (r->items, i + 1, EM_SAYS_PREPOSITION) == NULL &&
                            em_item_says (r->items, i + 1, EM_SAYS_TO) == NULL))
    return FALSE;
  all += em_item_says (r->items, all, EM_SAYS_GLUE) != NULL && em_item_says (r->items, all, EM_SAYS_NUMBER) == NULL;
  *out_all = all;
  return all + 1 < r->end && em_item_says (r->items, all, EM_SAYS_NUMBER) != NULL &&
         (em_item_says (r->items, all + 1, EM_SAYS_KIND) != NULL || em_item_says (r->items, all + 1, EM_SAYS_PLACE) != NULL);
}

/* "on both sliders", "is beat up on both:" */
static gboolean
is_both (const EmReader *r, guint i)
{
  /* "is low on all four," */
  if (i > r->first && em_item_says (r->items, i - 1, EM_SAYS_ALL) != NULL)
    return is_part_end (r, i + 1);
  if (!em_item_is_word (r->items, i, "both") || i == r->first || em_item_says (r->items, i - 1, EM_SAYS_PREPOSITION) == NULL)
    return FALSE;
  return i + 1 == r->end || em_item_is_sign (r->items, i + 1, ':') || em_item_is_soft_break (r->items, i + 1) ||
         (em_item_says (r->items, i + 1, EM_SAYS_PLACE) != NULL && em_item_says (r->items, i + 1, EM_SAYS_KIND) == NULL);
}

/* "on all four cavities" */
static gboolean
is_all_of (const EmReader *r, guint number, guint part)
{
  return part == number + 1 && number > r->first && em_item_says (r->items, number - 1, EM_SAYS_ALL) != NULL &&
         (em_item_says (r->items, part, EM_SAYS_PLACE) != NULL || em_item_says (r->items, part, EM_SAYS_KIND) != NULL /* "corners" */);
}

/* Says nothing by itself beside a number that stands alone. */
static gboolean
is_beside_alone (const EmReader *r, guint i)
{
  static const EmSays little[] = { EM_SAYS_GLUE, EM_SAYS_TALK, EM_SAYS_APPROXIMATE, EM_SAYS_ALL };

  for (gsize k = 0; k < G_N_ELEMENTS (little); k++)
    if (em_item_says (r->items, i, little[k]) != NULL)
      return TRUE;
  return FALSE;
}

/* "…, maybe a dozen, …", "(all four)", "…, son dos": a number word in a part of its own counts what the part before it named. */
static gboolean
stands_alone (const EmReader *r, const EmProto *proto, guint i)
{
  guint first = i, last = i;

  while (first > r->first && i - first < ALONE_WINDOW && !is_part_end (r, first - 1) && is_beside_alone (r, first - 1))
    first--;
  while (last + 1 < r->end && last - i < ALONE_WINDOW && is_beside_alone (r, last + 1) && !is_part_end (r, last + 1))
    last++;
  return proto->kinds != 0 && first > r->first && is_part_end (r, first - 1) && is_part_end (r, last + 1);
}

/* "…, two slides": in a part of its own behind the noun or the sizes, so many parts have it. */
static gboolean
counts_parts_aside (const EmReader *r, const EmProto *proto, guint i)
{
  return (proto->sizes->len > 0 || proto->kinds != 0) && i + 1 < r->end && em_item_says (r->items, i + 1, EM_SAYS_PLACE) != NULL &&
         em_item_says (r->items, i + 1, EM_SAYS_KIND) == NULL && i > r->first && (is_part_end (r, i - 1) || em_counts_is_led (r, i)) && is_part_end (r, i + 2);
}

/* "Three cores, each with a chip", "two cavities, same defect": every one of those parts has it. */
static gboolean
counts_parts (const EmReader *r, guint i)
{
  return i + 3 < r->end && em_item_says (r->items, i + 1, EM_SAYS_PLACE) != NULL &&
         em_item_says (r->items, i + 1, EM_SAYS_KIND) == NULL &&
         em_item_is_sign (r->items, i + 2, ',') &&
         (em_item_says (r->items, i + 3, EM_SAYS_SAME) != NULL || is_word (r, i + 3, "each") || is_word (r, i + 3, "both"));
}

/* "On two rods the corner is bruised": at the head of the sentence so many parts have what is told next. */
static gboolean
counts_parts_first (const EmReader *r, guint i)
{
  const EmItem *part = i + 2 < r->end ? em_item (r->items, i + 1) : NULL;

  return part != NULL && i == r->first + 1 && em_item_says (r->items, r->first, EM_SAYS_PREPOSITION) != NULL &&
         (em_item_says (r->items, i + 1, EM_SAYS_PLACE) != NULL || em_item_says (r->items, i + 1, EM_SAYS_KIND) != NULL) &&
         g_ascii_tolower (r->items->text[part->start + part->length - 1]) == 's' &&
         em_item_says (r->items, i + 2, EM_SAYS_GLUE) != NULL;
}

/* "Both cavities have a nick", "Les deux coquilles ont le même défaut": all of those parts. */
static gboolean
counts_both_first (const EmReader *r, guint i)
{
  const EmItem *word = em_item (r->items, i);
  static const char *const both[] = { "both", "les deux", "beide", "beiden", "ambos", "ambas", "los dos", "las dos", "all three", "les trois", "alle drei" };

  return i == r->first && i + 2 < r->end && word->type == EM_ITEM_PHRASE && em_item_is_any_word_of (r->items, i, both, G_N_ELEMENTS (both)) &&
         em_item_says (r->items, i + 1, EM_SAYS_PLACE) != NULL && em_item_says (r->items, i + 1, EM_SAYS_KIND) == NULL;
}

/* "on cavity two the edge is worn": which one. */
static gboolean
names_part (const EmReader *r, guint i)
{
  const EmSense *part = i > r->first ? em_item_says (r->items, i - 1, EM_SAYS_PLACE) : NULL;
  const EmItem *item = part != NULL ? em_item (r->items, i - 1) : NULL;

  return part != NULL && g_strcmp0 (part->value, "counted") == 0 &&
         g_ascii_tolower (r->items->text[item->start + item->length - 1]) != 's';
}

/* "three or all eight of them": how many is open. */
static gboolean
is_either_count (const EmReader *r, guint i)
{
  if (i + 1 >= r->end || !em_item_is_word (r->items, i + 1, "or"))
    return FALSE;
  for (guint k = i + 2; k < r->end && k <= i + 3; k++)
    if (em_item_says (r->items, k, EM_SAYS_NUMBER) != NULL)
      {
        em_item (r->items, k)->is_used = TRUE;
        return TRUE;
      }
  return FALSE;
}

static double
number_of (const EmReader *r, guint i)
{
  return g_ascii_strtod (em_item_says (r->items, i, EM_SAYS_NUMBER)->value, NULL);
}

void
em_counts_guess (const EmReader *r, EmProto *proto, guint i, double count)
{
  proto->is_count_loose = TRUE;
  add_count (r, proto, i, count);
}

static gboolean
take_either (const EmReader *r, EmProto *proto, guint i)
{
  if (!is_either_count (r, i) || proto->count_item != EM_NO_ITEM)
    return FALSE;
  proto->typical_item = i;
  em_item (r->items, i)->is_used = TRUE;
  return TRUE;
}

static gboolean
take_share (const EmReader *r, EmProto *proto, guint i)
{
  guint all;

  if (!is_share (r, i, &all))
    return FALSE;
  proto->is_count_loose |= proto->count_item == EM_NO_ITEM;
  add_count (r, proto, i, number_of (r, i));
  em_item (r->items, all)->is_used = TRUE;
  return TRUE;
}

/* "qty sixteen", "Qty: two" */
static gboolean
take_quantity (const EmReader *r, EmProto *proto, guint i)
{
  guint word = i;

  while (word > r->first && (em_item_is_sign (r->items, word - 1, ':') || em_item_is_sign (r->items, word - 1, '=')))
    word--;
  /* "QTY: A DOZEN DIES": of the tools. */
  if (word == r->first || em_item_says (r->items, word - 1, EM_SAYS_QUANTITY) == NULL ||
      (!is_part_end (r, i + 1) && em_item_says (r->items, i + 1, EM_SAYS_KIND) == NULL))
    return FALSE;
  proto->is_count_loose |= proto->count_item == EM_NO_ITEM && number_of (r, i) == 1;
  add_count (r, proto, i, number_of (r, i));
  em_item (r->items, word - 1)->is_used = TRUE;
  return TRUE;
}

/* Told of the parts, or apart from what it counts. */
static gboolean
take_apart (const EmReader *r, EmProto *proto, guint i)
{
  if (number_of (r, i) == 1 || proto->count_item != EM_NO_ITEM ||
      !(stands_alone (r, proto, i) || is_both (r, i) || counts_parts (r, i) || counts_parts_aside (r, proto, i) ||
        counts_parts_first (r, i) || counts_both_first (r, i)))
    return FALSE;
  em_counts_guess (r, proto, i, number_of (r, i));
  return TRUE;
}

/* "three small pits", "five places" */
static gboolean
take_before_noun (const EmReader *r, EmProto *proto, guint i)
{
  for (guint k = i + 1; k < r->end && k <= i + NOUN_WINDOW && !em_item_is_soft_break (r->items, k) &&
                        em_item (r->items, k)->type != EM_ITEM_SIZE; k++)
    {
      gboolean is_places = em_item_says (r->items, k, EM_SAYS_PLACES) != NULL, is_all = is_all_of (r, i, k);

      if (!is_places && !is_all && em_item_says (r->items, k, EM_SAYS_KIND) == NULL)
        continue;
      /* "on the two faces": says where. */
      if (!is_places && !is_all && em_reader_is_demoted (r, k))
        return TRUE;
      proto->is_count_loose |= proto->count_item == EM_NO_ITEM;
      /* What the parts were counted by is multiplied with it there. */
      add_count (r, proto, i, number_of (r, i) * (proto->count_item == EM_NO_ITEM ? parts_before (r, i) : 1));
      use_count_words (r, i);
      return TRUE;
    }
  return FALSE;
}

static void
add_number_word (const EmReader *r, EmProto *proto, guint i)
{
  /* What the word may count, in order of rank. */
  static gboolean (*const takers[]) (const EmReader *r, EmProto *proto, guint i) = { take_quantity, take_either, take_share, take_apart,
                                                                                    take_before_noun };
  const char *value = em_item_says (r->items, i, EM_SAYS_NUMBER)->value;

  /* "One of our core pins has run dry" */
  proto->is_one_of |= number_of (r, i) == 1 && i + 1 < r->end && em_item_says (r->items, i + 1, EM_SAYS_PREPOSITION) != NULL;
  /* An article counts nothing, and a part of one thing neither. */
  if (strcmp (value, EM_ARTICLE) == 0 || strchr (value, '/') != NULL || em_item (r->items, i)->is_used || is_behind_between (r, i))
    return;
  if (names_part (r, i))
    {
      em_item (r->items, i)->is_used = TRUE;
      return;
    }
  for (gsize k = 0; k < G_N_ELEMENTS (takers); k++)
    if (takers[k] (r, proto, i))
      return;
}

/* ---- other words ---- */

/* "beidseitig verrundet": what became of both edges. */
static gboolean
is_on_both (const EmReader *r, const EmProto *proto, guint i)
{
  const EmSense *label = em_item_says (r->items, i, EM_SAYS_LABEL);
  const EmSense *state = i + 1 < r->end ? em_item_says (r->items, i + 1, EM_SAYS_KIND) : NULL;

  /* "nicks on both sides, 3 x 1 x 1" */
  if (label != NULL && label->roles == EM_ROLE_PER_SIDE && proto->noun != EM_NO_ITEM && proto->noun + 1 == i && is_part_end (r, i + 1) &&
      proto->weight[EDGE_NICK] + proto->weight[WORN_CORNER] > BOTH_LEAST)
    return TRUE;
  return label != NULL && label->roles == EM_ROLE_PER_SIDE && state != NULL && g_strcmp0 (state->value, "state") == 0 &&
         (i == r->first || em_item (r->items, i - 1)->type != EM_ITEM_SIZE);
}

/* "2 nicks on each of 4 cores": so many parts have as many. */
static void
take_each_of (const EmReader *r, EmProto *proto, guint i)
{
  static const char *const each_of[] = { "each of", "on each of", "in each of", "each of the", "on each of the", "in each of the" };
  gboolean is_whole = em_item_is_any_word_of (r->items, i, each_of, G_N_ELEMENTS (each_of));
  guint number = i + 1;
  double n;

  if ((!is_whole && !em_item_is_per (r->items, i)) || proto->is_multiplied)
    return;
  while (number < r->end && number < i + EACH_WINDOW && em_item (r->items, number)->type == EM_ITEM_PHRASE &&
         em_item_says (r->items, number, EM_SAYS_NUMBER) == NULL)
    number++;
  if ((number == i + 1 && !is_whole) || number + 1 >= r->end || em_item_says (r->items, number + 1, EM_SAYS_PLACE) == NULL || em_item (r->items, number)->is_used)
    return;
  n = em_list_is_bare_whole (r->items, number) ? (double) em_item_size (r->items, number)->value.n : count_at (r, number, TRUE);
  if (!(n > 1 && n < COUNTED_MAX))
    return;
  if (em_item (r->items, number)->type == EM_ITEM_SIZE)
    em_item_size (r->items, number)->roles |= EM_ROLE_REFERENCE;
  /* "nick in each of the four cavities" */
  if (proto->count_item == EM_NO_ITEM)
    {
      em_counts_guess (r, proto, number, n);
      return;
    }
  proto->count *= n;
  proto->is_multiplied = proto->is_count_loose = TRUE;
  em_item (r->items, number)->is_used = TRUE;
}

void
em_counts_add_word (const EmReader *r, EmProto *proto, guint i)
{
  take_each_of (r, proto, i);
  em_counts_add_told (r, proto, i);
  if (em_item_says (r->items, i, EM_SAYS_NUMBER) != NULL)
    add_number_word (r, proto, i);
  em_counts_add_same_again (r, proto, i);
  em_counts_add_numbered (r, proto, i);
  if (proto->count_item == EM_NO_ITEM && (em_counts_is_both (r, i) || is_on_both (r, proto, i)))
    em_counts_guess (r, proto, i, 2);
}

void
em_counts_add_loose (const EmReader *r, EmProto *proto, guint i, gboolean words_too)
{
  /* "five of these tools" */
  double count = em_item (r->items, i)->is_used ? (double) NAN : count_at (r, i, words_too);

  /* "Three more just like it." */
  if (!isnan (count))
    em_counts_guess (r, proto, i, count + em_counts_says_more (r, i + 1));
}

/* "two of them are 3 x 1 x 1, the other two …": how many, told before the first size. */
void
em_counts_add_those (const EmReader *r, EmProto *proto, guint first, guint end)
{
  for (guint i = first; i < end && !em_reader_is_sized (r, i) && proto->count_item == EM_NO_ITEM; i++)
    {
      double count = count_at (r, i, TRUE);

      if (!(count > 1))
        continue;
      em_counts_guess (r, proto, i, count);
    }
}
