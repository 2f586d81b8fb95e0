/* em-proto: what the items of a stretch add to a proposal.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-proto.h"

#include "em-list.h"

#include <math.h>
#include <string.h>

enum
{
  COUNTED_MAX = 100,     /* more of one repair are hardly told in parts */
  PARTS_WINDOW = 6, COUNT_WINDOW = 12, TOLD_WINDOW = 32,
  AGAIN_WINDOW = 4, /* items from "the same" to "the other" */
  ALONE_WINDOW = 4, PREPOSITION_WINDOW = 3,
  OWN_PER_DEMOTED = 5,   /* weights count fivefold, of nouns after a preposition twofold */
  DEMOTED = 2,
  STRONG_ONLY = 6,       /* a noun of this weight stands for itself where no other does */
  STATE_NOUN = 4         /* a noun of this weight is a thing that "washed out" says something of */
};

/* Sizes that are no slot's, even where a slot was just named. */
static const guint32 never_slot = EM_ROLE_BUILD | EM_ROLE_ADD | EM_ROLE_PER_SIDE | EM_ROLE_STOCK | EM_ROLE_CLEARANCE |
                                  EM_ROLE_COUNT;

EmGiven
em_given_new (const char *field, const char *text, const EmItem *item)
{
  EmGiven given = { .field = { .field = field, .value = (double) NAN, .low = (double) NAN, .high = (double) NAN, .text = text,
                               .start = item->start, .length = item->length, .line = item->line },
                    .size_item = EM_NO_ITEM };

  return given;
}

EmProto *
em_proto_new (void)
{
  EmProto *proto = g_new0 (EmProto, 1);

  proto->sizes = g_array_new (FALSE, FALSE, sizeof (guint));
  proto->given = g_array_new (FALSE, FALSE, sizeof (EmGiven));
  proto->noun = proto->fill = proto->count_item = proto->typical_item = proto->chamfer_item = EM_NO_ITEM;
  proto->count = (double) NAN;
  return proto;
}

void
em_proto_free (gpointer data)
{
  EmProto *proto = data;

  g_array_unref (proto->sizes);
  g_array_unref (proto->given);
  g_free (proto);
}

guint32
em_reader_line_of (const EmReader *r, guint i)
{
  return em_item (r->items, i)->line;
}

/* "2 SETTINGS", "SEE SHT 2": a bare whole number beside a word that is not known measures nothing. */
static gboolean
is_stray (const EmReader *r, guint i)
{
  const EmSize *size = em_item_size (r->items, i);

  if (!size->is_whole || size->unit != EM_UNIT_NONE || size->label_item != G_MAXUINT32 || size->chain != 0 || size->roles != 0)
    return FALSE;
  if (i + 1 < r->end && em_item (r->items, i + 1)->type == EM_ITEM_UNKNOWN)
    return TRUE;
  return i > r->first && (em_item (r->items, i - 1)->type == EM_ITEM_UNKNOWN ||
                          em_item_says (r->items, i - 1, EM_SAYS_NOISE) != NULL) &&
         (i + 1 >= r->end || em_item_is_soft_break (r->items, i + 1));
}

gboolean
em_reader_is_sized (const EmReader *r, guint i)
{
  const guint32 apart = EM_ROLE_STOCK | EM_ROLE_CLEARANCE | EM_ROLE_HARDNESS;

  return em_item_is_measure (r->items, i) && !em_item (r->items, i)->is_used &&
         (em_item_size (r->items, i)->roles & apart) == 0 && !is_stray (r, i);
}

/* "two of the holes", "one of the pins": those that are meant, not where they are. */
static gboolean
is_some_of (const EmReader *r, guint preposition)
{
  const EmSense *number = preposition > r->first ? em_item_says (r->items, preposition - 1, EM_SAYS_NUMBER) : NULL;

  return g_ascii_strncasecmp (r->items->text + em_item (r->items, preposition)->start, "of", 2) == 0 &&
         ((number != NULL && strchr (number->value, '/') == NULL) ||
          (preposition > r->first && em_item (r->items, preposition - 1)->type == EM_ITEM_SIZE &&
                                                                      em_item_size (r->items, preposition - 1)->is_whole));
}

/* A noun after a preposition names the place: "nick IN SIDEWALL". */
gboolean
em_reader_is_demoted (const EmReader *r, guint i)
{
  const EmSense *noun = em_item_says (r->items, i, EM_SAYS_KIND);

  /* "on the lip chipped": what became of it is no place. */
  if (noun != NULL && (g_strcmp0 (noun->value, "state") == 0 || g_strcmp0 (noun->value, "damage") == 0))
    return FALSE;
  for (guint k = i; k-- > r->first && k + PREPOSITION_WINDOW >= i;)
    {
      const EmItem *item = em_item (r->items, k);
      const EmSense *glue = em_item_says (r->items, k, EM_SAYS_GLUE);

      /* "the face of the plate has a score": what it has is no place. */
      if (glue != NULL && g_strcmp0 (glue->value, "has") == 0)
        return FALSE;
      if (em_item_says (r->items, k, EM_SAYS_PREPOSITION) != NULL)
        return !is_some_of (r, k);
      /* "mirror polish near the pit" */
      if (em_item_says (r->items, k, EM_SAYS_NEAR) != NULL && em_item_says (r->items, k, EM_SAYS_LABEL) == NULL)
        return TRUE;
      /* "on end of ⌀.50 pin" */
      if (item->type == EM_ITEM_SIZE && (em_item_size (r->items, k)->roles & EM_ROLE_DIAMETER) != 0)
        continue;
      /* "wall of rib slot" */
      if (k + 1 == i && em_item_says (r->items, k, EM_SAYS_KIND) != NULL)
        continue;
      if (item->type == EM_ITEM_SIZE || em_item_is_soft_break (r->items, k) || em_item_is_sign (r->items, k, ':') ||
          (em_item_says (r->items, k, EM_SAYS_KIND) != NULL && em_item_says (r->items, k, EM_SAYS_PLACE) == NULL))
        return FALSE;
    }
  return FALSE;
}

/* "Lifter pocket: sidewall 2.0 LG": a noun before a colon names the place when another noun follows. */
static gboolean
is_before_colon (const EmReader *r, guint i)
{
  if (i + 1 >= r->end || !em_item_is_sign (r->items, i + 1, ':'))
    return FALSE;
  for (guint k = i + 2; k < r->end && k <= i + 2 + PREPOSITION_WINDOW; k++)
    if (em_item_says (r->items, k, EM_SAYS_KIND) != NULL)
      return TRUE;
  return FALSE;
}

/* "Groove it out": what is to be done with the thing, not another one. */
static gboolean
is_done_to_it (const EmReader *r, guint i)
{
  const EmSense *glue = i + 1 < r->items->items->len ? em_item_says (r->items, i + 1, EM_SAYS_GLUE) : NULL;

  return glue != NULL && g_strcmp0 (glue->value, "it") == 0;
}

/* A noun of a repair; "3.0 OD" is a size's label instead. */
gboolean
em_reader_is_noun (const EmReader *r, guint i)
{
  if (em_item_says (r->items, i, EM_SAYS_KIND) == NULL || is_done_to_it (r, i) || em_item_is_of_face (r->items, i))
    return FALSE;
  /* "flanks 10°": the draft of what was told before. */
  if (i + 1 < r->items->items->len && em_item (r->items, i + 1)->type == EM_ITEM_SIZE &&
      em_item_size (r->items, i + 1)->unit == EM_UNIT_DEGREE &&
      em_item_says (r->items, i, EM_SAYS_LABEL) != NULL &&
        (em_item_says (r->items, i, EM_SAYS_LABEL)->roles & EM_ROLE_DRAFT) != 0)
    return FALSE;
  /* "ID 62" names the bore and its size. */
  if (em_item (r->items, i)->is_used && em_item_says (r->items, i, EM_SAYS_LABEL) == NULL)
    return FALSE;
  return em_item_says (r->items, i, EM_SAYS_LABEL) == NULL || i == 0 || em_item (r->items, i - 1)->type != EM_ITEM_SIZE ||
         (em_item_size (r->items, i - 1)->roles & EM_ROLE_COUNT) != 0;
}

gboolean
em_reader_is_verb (const EmReader *r, guint i)
{
  return em_item_says (r->items, i, EM_SAYS_VERB) != NULL &&
         (!em_item (r->items, i)->is_used || em_item_says (r->items, i, EM_SAYS_LABEL) != NULL);
}

/* "PIN BORE": the last noun of a row is the thing, those before it say which. */
static gboolean
is_compound (const EmReader *r, guint i)
{
  guint next = i + 1;

  while (next + 1 < r->end && next <= i + 2 && em_item_says (r->items, next, EM_SAYS_PLACE) != NULL &&
         em_item_says (r->items, next, EM_SAYS_KIND) == NULL)
    next++;
  return next < r->end && em_reader_is_noun (r, next) &&
         g_strcmp0 (em_item_says (r->items, next, EM_SAYS_KIND)->value, "state") != 0;
}

static void
add_noun (const EmReader *r, EmProto *proto, guint i)
{
  const EmSense *sense = em_item_says (r->items, i, EM_SAYS_KIND);
  gboolean is_state = g_strcmp0 (sense->value, "state") == 0;
  /* "bore washed out": what became of the bore. */
  gboolean demoted = em_reader_is_demoted (r, i) || is_before_colon (r, i) || is_compound (r, i) ||
                     (is_state && proto->noun_weight >= STATE_NOUN);
  int best = 0, kind = 0;

  for (int k = 0; k < EM_N_NOTE_KINDS; k++)
    {
      proto->weight[k] += sense->weight[k] * (demoted ? DEMOTED : OWN_PER_DEMOTED);
      kind = sense->weight[k] > best ? k : kind;
      best = MAX (best, sense->weight[k]);
    }
  if (!demoted && sense->value == NULL)
    proto->kinds |= 1u << kind;
  best = demoted ? 1 : best;
  if (best > proto->noun_weight)
    {
      proto->noun_weight = best;
      proto->noun = i;
      proto->is_slip = (em_item (r->items, i)->flags & (EM_TOKEN_SLIP | EM_TOKEN_COMPOUND)) != 0;
      proto->is_part = i + 1 < r->end && em_item_says (r->items, i + 1, EM_SAYS_PLACE) != NULL;
    }
  em_item (r->items, i)->is_used = TRUE;
}

static void
give_text (const EmReader *r, EmProto *proto, const char *field, const char *text, guint i, EmReadState state, const char *reason)
{
  const EmItem *item = em_item (r->items, i);
  EmGiven given = em_given_new (field, text, item);

  given.field.state = state;
  given.field.reason = reason;
  if (g_ascii_isdigit (text[0]) && strlen (text) <= 4)
    {
      given.field.value = (double) g_ascii_strtoll (text, NULL, 10);
      given.field.text = NULL;
    }
  g_array_append_val (proto->given, given);
}

/* Ends a part that may hold nothing but a number. */
static gboolean
is_part_end (const EmReader *r, guint i)
{
  return i < r->first || i >= r->end || em_item_is_soft_break (r->items, i) || em_item_is_sign (r->items, i, '(') ||
         em_item_is_sign (r->items, i, ')') ||
         em_item_is_sign (r->items, i, '.');
}

/* "BOTH SIDES" in a part of its own, or a sentence: twice. */
gboolean
em_reader_is_both (const EmReader *r, guint i)
{
  const EmItem *item = em_item (r->items, i);

  return item->type == EM_ITEM_PHRASE && em_item_says (r->items, i, EM_SAYS_SET) == NULL && item->length > 5 &&
         g_ascii_strncasecmp (r->items->text + item->start, "both ", 5) == 0 && is_part_end (r, i + 1) &&
         (i == r->first || is_part_end (r, i - 1));
}

/* Labels that also mean something without a size beside them. */
static const guint32 modifiers = EM_ROLE_BUILD | EM_ROLE_WORN | EM_ROLE_FINISHED | EM_ROLE_PER_SIDE | EM_ROLE_ON_DIAMETER;

/* What a verb, a wear or a damage says of the kind. "Broken at the end, 6 missing": damage told twice is no more damage. */
static void
add_said (EmProto *proto, const EmSense *sense)
{
  gboolean is_damage = sense->says == EM_SAYS_SET && sense->set_field == NULL;

  for (int w = 0; w < EM_N_NOTE_KINDS; w++)
    {
      int before = is_damage ? proto->damage[w] : 0;

      proto->weight[w] += MAX (0, sense->weight[w] - before) * OWN_PER_DEMOTED;
      if (is_damage)
        proto->damage[w] = MAX (before, sense->weight[w]);
    }
}

static gboolean
is_all_parts (const EmReader *r, guint i)
{
  return i + 1 < r->end && em_item_says (r->items, i + 1, EM_SAYS_PLACE) != NULL &&
         em_item_says (r->items, i + 1, EM_SAYS_KIND) == NULL &&
         g_ascii_tolower (r->items->text[em_item (r->items, i + 1)->start + em_item (r->items, i + 1)->length - 1]) == 's';
}

static void
add_phrase (const EmReader *r, EmProto *proto, guint i)
{
  EmItem *item = em_item (r->items, i);
  const EmSense *sense;
  gboolean is_behind, is_little = em_phrase_find (item->phrase, EM_SAYS_GLUE) != NULL; /* "is" */

  for (guint k = 0; k < item->phrase->n_senses; k++)
    {
      sense = item->phrase->sense[k];
      /* "dia 64 outside": behind a diameter it says on which side an edge runs, and else only where. */
      is_behind = g_strcmp0 (sense->value, "behind") == 0;
      if (sense->set_field != NULL && !(is_behind && (proto->roles & EM_ROLE_DIAMETER) == 0))
        {
          gboolean is_plain = sense->says == EM_SAYS_SET && !is_behind;

          give_text (r, proto, sense->set_field, sense->set_value, i, is_plain ? EM_READ_READ : EM_READ_INFERRED, is_plain
                     ? NULL : "shape-from-word");
          item->is_used = TRUE;
        }
      if (sense->says == EM_SAYS_VERB || sense->says == EM_SAYS_SET ||
          (sense->says == EM_SAYS_LABEL && (sense->roles & EM_ROLE_WORN) != 0 && !is_little))
        {
          add_said (proto, sense);
          item->is_used = TRUE;
        }
      if (sense->says == EM_SAYS_LABEL && (sense->roles & ~modifiers) == 0)
        item->is_used = TRUE;
      proto->has_worn |= sense->says == EM_SAYS_LABEL && (sense->roles & EM_ROLE_WORN) != 0 && !is_little;
      if (sense->says == EM_SAYS_SET && sense->set_field == NULL)
        proto->has_damage = TRUE;
      proto->is_equal |= sense->says == EM_SAYS_EQUAL;
      item->is_used |= sense->says == EM_SAYS_ONE_OF && i + 1 < r->end && em_item_says (r->items, i + 1, EM_SAYS_KIND) != NULL;
      item->is_used |= sense->says == EM_SAYS_SAME || sense->says == EM_SAYS_EQUAL || sense->says == EM_SAYS_PLACE;
      if (sense->says == EM_SAYS_ACCESS && (i == r->first || em_item (r->items, i - 1)->type != EM_ITEM_SIZE))
        {
          give_text (r, proto, "access", sense->value, i, EM_READ_READ, NULL);
          item->is_used = TRUE;
        }
      if (sense->says == EM_SAYS_VERB)
        {
          proto->has_verb = TRUE;
          proto->has_build |= g_strcmp0 (sense->value, "build") == 0;
          if (g_strcmp0 (sense->value, "fill") == 0)
            {
              proto->has_fill = TRUE;
              proto->fill = i;
            }
        }
      /* "ON ALL INSERTS" */
      if ((sense->says == EM_SAYS_TYPICAL || sense->says == EM_SAYS_MANY ||
           (sense->says == EM_SAYS_ALL && is_all_parts (r, i))) && proto->typical_item == EM_NO_ITEM)
        {
          proto->typical_item = i;
          item->is_used = TRUE;
        }
    }
}

static gboolean
is_word (const EmReader *r, guint i, const char *word)
{
  return i >= r->first && i < r->end && em_item (r->items, i)->length == strlen (word) &&
         g_ascii_strncasecmp (r->items->text + em_item (r->items, i)->start, word, strlen (word)) == 0;
}

static double
count_at (const EmReader *r, guint i, gboolean words_too)
{
  const EmSense *number = em_item_says (r->items, i, EM_SAYS_NUMBER);

  if (em_item (r->items, i)->type == EM_ITEM_SIZE)
    return (em_item_size (r->items, i)->roles & EM_ROLE_COUNT) != 0 ? (double) em_item_size (r->items, i)->value.n : (double) NAN;
  return words_too && number != NULL && strcmp (number->value, EM_ARTICLE) != 0 &&
         strchr (number->value, '/') == NULL ? g_ascii_strtod (number->value, NULL) : (double) NAN;
}

/* "2 nicks each" */
static gboolean
is_each_of (const EmReader *r, guint count)
{
  return is_word (r, count + 2, "each") || is_word (r, count + 2, "ea") || is_word (r, count + 2, "apiece");
}

/* "four cavities with 2 nicks each": how many parts have as many. */
static double
parts_before (const EmReader *r, guint count)
{
  for (guint i = count; is_each_of (r, count) && i-- > r->first && i + PARTS_WINDOW > count;)
    {
      double n = em_item_says (r->items, i + 1, EM_SAYS_PLACE) != NULL ? count_at (r, i, TRUE) : (double) NAN;

      if (n > 1)
        return n;
    }
  return 1;
}

/* "= 12" is the count of all, "4 on the A side, 2 on the B side" makes six, "4 places per slide, 3 slides" twelve. TRUE: taken. */
static gboolean
combine_counts (const EmReader *r, EmProto *proto, guint i, double count)
{
  gboolean is_each = is_each_of (r, i) || is_each_of (r, proto->count_item), is_per = FALSE;

  if (i > proto->count_item + TOLD_WINDOW)
    return FALSE;
  for (guint k = proto->count_item + 1; k < i; k++)
    is_per |= is_word (r, k, "per");
  if (i > r->first && em_item_is_sign (r->items, i - 1, '='))
    proto->count = count;
  else if (is_each || is_per)
    proto->count *= count;
  else if (i + 1 < r->end && em_item_says (r->items, i + 1, EM_SAYS_PREPOSITION) != NULL && count < COUNTED_MAX)
    proto->count += count;
  else
    return FALSE;
  em_item (r->items, i)->is_used = TRUE;
  return TRUE;
}

static void
add_count (const EmReader *r, EmProto *proto, guint i, double count)
{
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

static gboolean
is_chamfer (const EmReader *r, guint i)
{
  const EmSize *size = em_item_size (r->items, i), *next;

  if (i + 2 >= r->end || !size->is_whole || size->unit != EM_UNIT_NONE || em_item_says (r->items, i + 1, EM_SAYS_TIMES) == NULL ||
      em_item (r->items, i + 2)->type != EM_ITEM_SIZE)
    return FALSE;
  next = em_item_size (r->items, i + 2);
  return next->unit == EM_UNIT_DEGREE && (em_item (r->items, i + 1)->flags & EM_TOKEN_GLUED) == 0;
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

static void
add_size (const EmReader *r, EmProto *proto, guint i)
{
  EmSize *size = em_item_size (r->items, i);

  if ((size->roles & EM_ROLE_COUNT) != 0)
    {
      if (proto->count_item == EM_NO_ITEM)
        proto->is_count_loose = !has_count_word (r, i) || size->value.n == 1 || is_of_parts (r, i) ||
                                has_other_count (r, i);
      add_count (r, proto, i, (double) size->value.n * parts_before (r, i));
      proto->is_count_loose |= parts_before (r, i) > 1;
      use_count_words (r, i);
      return;
    }
  /* A hardness that the table does not hold stays unused. */
  if ((size->roles & (EM_ROLE_REFERENCE | EM_ROLE_HARDNESS)) != 0 || em_unit_is_hardness (size->unit))
    return;
  if (is_chamfer (r, i))
    {
      proto->chamfer_item = i;
      em_item (r->items, i)->is_used = TRUE;
      return;
    }
  if (proto->chamfer_item != EM_NO_ITEM && i == proto->chamfer_item + 2)
    {
      em_item (r->items, i)->is_used = TRUE;
      return;
    }
  if (is_stray (r, i))
    return;
  g_array_append_val (proto->sizes, i);
  proto->roles |= size->roles;
}

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
  const EmItem *item = em_item (r->items, i);
  gboolean is_word = item->length == 4 && g_ascii_strncasecmp (r->items->text + item->start, "both", 4) == 0;

  if (!is_word || i == r->first || em_item_says (r->items, i - 1, EM_SAYS_PREPOSITION) == NULL)
    return FALSE;
  return i + 1 == r->end || em_item_is_sign (r->items, i + 1, ':') || em_item_is_soft_break (r->items, i + 1) ||
         (em_item_says (r->items, i + 1, EM_SAYS_PLACE) != NULL && em_item_says (r->items, i + 1, EM_SAYS_KIND) == NULL);
}

/* "on all four cavities" */
static gboolean
is_all_of (const EmReader *r, guint number, guint part)
{
  return part == number + 1 && number > r->first && em_item_says (r->items, number - 1, EM_SAYS_ALL) != NULL &&
         em_item_says (r->items, part, EM_SAYS_PLACE) != NULL;
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

/* "…, two slides": in a part of its own behind the sizes, so many parts have it. */
static gboolean
counts_parts_aside (const EmReader *r, const EmProto *proto, guint i)
{
  return proto->sizes->len > 0 && i + 1 < r->end && em_item_says (r->items, i + 1, EM_SAYS_PLACE) != NULL &&
         em_item_says (r->items, i + 1, EM_SAYS_KIND) == NULL && i > r->first && is_part_end (r, i - 1) && is_part_end (r, i + 2);
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

/* ", and the same again on the other half": once more. */
static void
add_same_again (const EmReader *r, EmProto *proto, guint i)
{
  if (em_item_says (r->items, i, EM_SAYS_SAME) == NULL || proto->count_item != EM_NO_ITEM || proto->sizes->len == 0)
    return;
  for (guint k = i + 1; k < r->end && k <= i + AGAIN_WINDOW && !em_item_is_soft_break (r->items, k); k++)
    if (em_item_says (r->items, k, EM_SAYS_ONE_OF) != NULL)
      {
        proto->is_count_loose = TRUE;
        add_count (r, proto, i, 2);
        em_item (r->items, k)->is_used = TRUE;
        return;
      }
}

/* "cavities 2 and 5": as many parts as are numbered, which may have the repair each. */
static void
count_numbered (const EmReader *r, EmProto *proto, guint part)
{
  const EmItem *item = em_item (r->items, part);
  const EmSense *place = em_item_says (r->items, part, EM_SAYS_PLACE);
  guint n = 0, i = part + 1, end = part + 1;

  if (proto->count_item != EM_NO_ITEM || place == NULL ||
      (g_ascii_tolower (r->items->text[item->start + item->length - 1]) != 's' && g_strcmp0 (place->value, "counted") != 0))
    return;
  while (i < r->end && i < part + COUNT_WINDOW && em_list_is_bare_whole (r->items, i) &&
         (em_item_size (r->items, i)->roles & (em_length_roles | EM_ROLE_RADIUS)) == 0 && em_item_size (r->items, i)->chain == 0)
    {
      n++;
      end = ++i;
      i += i < r->end && em_item_is_soft_break (r->items, i) && !em_item_is_sign (r->items, i, '-');
    }
  for (i = part + 1; n > 1 && i < end; i++)
    {
      if (em_item (r->items, i)->type == EM_ITEM_SIZE)
        em_item_size (r->items, i)->roles = EM_ROLE_REFERENCE;
      em_item (r->items, i)->is_used = TRUE;
    }
  if (n < 2)
    return;
  proto->is_count_loose = TRUE;
  add_count (r, proto, part, n);
}

/* "On two rods the corner is bruised": at the head of the sentence so many parts have what is told next. */
static gboolean
counts_parts_first (const EmReader *r, guint i)
{
  const EmItem *part = i + 2 < r->end ? em_item (r->items, i + 1) : NULL;

  return part != NULL && i == r->first + 1 && em_item_says (r->items, r->first, EM_SAYS_PREPOSITION) != NULL &&
         (em_item_says (r->items, i + 1, EM_SAYS_PLACE) != NULL || em_item_says (r->items, i + 1, EM_SAYS_KIND) != NULL) &&
         g_ascii_tolower (r->items->text[part->start + part->length - 1]) == 's' && em_item_says (r->items, i + 2, EM_SAYS_GLUE) != NULL;
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
  const EmItem *word = i + 1 < r->end ? em_item (r->items, i + 1) : NULL;

  if (word == NULL || word->length != 2 || g_ascii_strncasecmp (r->items->text + word->start, "or", 2) != 0)
    return FALSE;
  for (guint k = i + 2; k < r->end && k <= i + 3; k++)
    if (em_item_says (r->items, k, EM_SAYS_NUMBER) != NULL)
      {
        em_item (r->items, k)->is_used = TRUE;
        return TRUE;
      }
  return FALSE;
}

static void
add_number_word (const EmReader *r, EmProto *proto, guint i)
{
  const EmSense *number = em_item_says (r->items, i, EM_SAYS_NUMBER);
  guint all;

  /* An article counts nothing. */
  if (strcmp (number->value, EM_ARTICLE) == 0 || em_item (r->items, i)->is_used)
    return;
  if (names_part (r, i))
    {
      em_item (r->items, i)->is_used = TRUE;
      return;
    }
  if (is_either_count (r, i) && proto->count_item == EM_NO_ITEM)
    {
      proto->typical_item = i;
      em_item (r->items, i)->is_used = TRUE;
      return;
    }
  if (strchr (number->value, '/') == NULL && is_share (r, i, &all))
    {
      proto->is_count_loose |= proto->count_item == EM_NO_ITEM;
      add_count (r, proto, i, g_ascii_strtod (number->value, NULL));
      em_item (r->items, all)->is_used = TRUE;
      return;
    }
  if (strchr (number->value, '/') == NULL && strcmp (number->value, "1") != 0 && proto->count_item == EM_NO_ITEM &&
      (stands_alone (r, proto, i) || is_both (r, i)))
    {
      proto->is_count_loose = TRUE;
      add_count (r, proto, i, g_ascii_strtod (number->value, NULL));
      return;
    }
  if (strchr (number->value, '/') == NULL && proto->count_item == EM_NO_ITEM && strcmp (number->value, "1") != 0 &&
      (counts_parts (r, i) || counts_parts_aside (r, proto, i) || counts_parts_first (r, i)))
    {
      proto->is_count_loose = TRUE;
      add_count (r, proto, i, g_ascii_strtod (number->value, NULL));
      return;
    }
  for (guint k = i + 1; strchr (number->value, '/') == NULL && k < r->end && k <= i + 3 && !em_item_is_soft_break (r->items, k) &&
                        em_item (r->items, k)->type != EM_ITEM_SIZE; k++)
    if (em_item_says (r->items, k, EM_SAYS_KIND) != NULL || em_item_says (r->items, k, EM_SAYS_PLACES) != NULL ||
        is_all_of (r, i, k))
      {
        /* "on the two faces": says where. */
        if (em_item_says (r->items, k, EM_SAYS_PLACES) == NULL && !is_all_of (r, i, k) && em_reader_is_demoted (r, k))
          return;
        proto->is_count_loose |= proto->count_item == EM_NO_ITEM;
        add_count (r, proto, i, g_ascii_strtod (number->value, NULL) * parts_before (r, i));
        use_count_words (r, i);
        return;
      }
}

static void
use_connectives (const EmReader *r, guint i)
{
  EmItem *item = em_item (r->items, i);
  static const EmSays used[] = { EM_SAYS_TO, EM_SAYS_UNIT, EM_SAYS_SLOT, EM_SAYS_PLACES, EM_SAYS_MATERIAL };

  for (gsize k = 0; k < G_N_ELEMENTS (used); k++)
    item->is_used |= em_item_says (r->items, i, used[k]) != NULL;
}

void
em_reader_take_aside (const EmReader *r, EmProto *proto, guint first, guint end, gboolean words_too)
{
  for (guint i = first; i < end; i++)
    {
      const EmSense *access = em_item_says (r->items, i, EM_SAYS_ACCESS);
      double count = count_at (r, i, words_too);

      if (access != NULL && !em_item (r->items, i)->is_used)
        {
          give_text (r, proto, "access", access->value, i, EM_READ_READ, NULL);
          em_item (r->items, i)->is_used = TRUE;
        }
      if (em_item_says (r->items, i, EM_SAYS_KIND) != NULL &&
          g_strcmp0 (em_item_says (r->items, i, EM_SAYS_KIND)->set_field, "side") == 0)
        give_text (r, proto, "side", em_item_says (r->items, i, EM_SAYS_KIND)->set_value, i, EM_READ_INFERRED, "shape-from-word");
      if (isnan (count) || proto->count_item != EM_NO_ITEM)
        continue;
      proto->is_count_loose = TRUE;
      add_count (r, proto, i, count);
    }
}

/* "two of them are 3 x 1 x 1, the other two …": how many, told before the first size. */
void
em_reader_count_those (const EmReader *r, EmProto *proto, guint first, guint end)
{
  for (guint i = first; i < end && !em_reader_is_sized (r, i) && proto->count_item == EM_NO_ITEM; i++)
    {
      double count = count_at (r, i, TRUE);

      if (!(count > 1))
        continue;
      proto->is_count_loose = TRUE;
      add_count (r, proto, i, count);
    }
}

void
em_reader_add_same (const EmReader *r, EmProto *proto, guint first, guint end)
{
  guint n_places = 0;

  /* "Same on insert 8 and insert 9." */
  for (guint i = first; i + 1 < end; i++)
    n_places += em_item_says (r->items, i, EM_SAYS_PLACE) != NULL && em_item (r->items, i + 1)->type == EM_ITEM_SIZE;
  for (guint i = first; i < end && proto->count_item == EM_NO_ITEM; i++)
    if (em_item_says (r->items, i, EM_SAYS_SAME) != NULL)
      {
        proto->is_count_loose = TRUE;
        add_count (r, proto, i, 1 + MAX (1, n_places));
      }
}

/* "Top of the flow dam broke off": where no other noun stands, the dam is what the sizes are of. */
static void
raise_only_noun (const EmReader *r, EmProto *proto)
{
  const EmSense *sense = proto->noun != EM_NO_ITEM &&
                         proto->kinds == 0 ? em_item_says (r->items, proto->noun, EM_SAYS_KIND) : NULL;

  for (int k = 0; sense != NULL && sense->value == NULL && k < EM_N_NOTE_KINDS; k++)
    if (sense->weight[k] >= STRONG_ONLY)
      {
        proto->weight[k] += sense->weight[k] * (OWN_PER_DEMOTED - DEMOTED);
        proto->kinds |= 1u << k;
      }
}

/* "Weld shut 6 holes ⌀.25 and 2 holes ⌀.31": what is to be done with the first is to be done with the next, too. */
void
em_reader_share_fill (const EmReader *r, EmProto *proto, const EmProto *before)
{
  if (before == NULL || before == proto || before->fill == EM_NO_ITEM || before->fill < r->first || proto->has_verb ||
      proto->has_worn ||
      proto->has_damage)
    return;
  add_phrase (r, proto, before->fill);
}

/* "slot is 4 wide, 19 deep": the depth behind the comma is the slot's, whose width stands before it. */
static gboolean
is_depth_of_slot (const EmReader *r, guint slot, guint comma)
{
  const guint32 told = EM_ROLE_DEPTH | EM_ROLE_LENGTH | EM_ROLE_BUILD;

  return slot != EM_NO_ITEM && em_item_is_sign (r->items, comma, ',') && comma + 1 < r->end && comma > slot + 1 &&
         comma <= slot + 4 &&
         em_item (r->items, comma + 1)->type == EM_ITEM_SIZE &&
         (em_item_size (r->items, comma + 1)->roles & told) == EM_ROLE_DEPTH;
}

/* Adds the items from first to end; nouns that name things near were used before. */
void
em_reader_add_items (EmReader *r, EmProto *proto, guint first, guint end)
{
  guint in_slot = EM_NO_ITEM;

  if (proto->last == 0 && proto->first == 0)
    proto->first = first;
  proto->last = end - 1;
  for (guint i = first; i < end; i++)
    {
      EmItem *item = em_item (r->items, i);

      if (item->is_used && item->type != EM_ITEM_PHRASE)
        continue;
      if (item->type == EM_ITEM_SIZE)
        {
          if (in_slot != EM_NO_ITEM && (em_item_size (r->items, i)->roles & never_slot) == 0)
            em_item_size (r->items, i)->roles |= EM_ROLE_SLOT;
          add_size (r, proto, i);
        }
      if (((em_item_is_soft_break (r->items, i) && item->type == EM_ITEM_SIGN) || em_item_is_sign (r->items, i, ':')) &&
          !is_depth_of_slot (r, in_slot, i))
        in_slot = EM_NO_ITEM;
      if (item->type != EM_ITEM_PHRASE)
        continue;
      if (em_item_says (r->items, i, EM_SAYS_SLOT) != NULL)
        in_slot = i;
      if (em_reader_is_noun (r, i))
        add_noun (r, proto, i);
      else if (em_item_says (r->items, i, EM_SAYS_VERB) == NULL && is_done_to_it (r, i))
        item->is_used = TRUE;
      if (em_item_says (r->items, i, EM_SAYS_NUMBER) != NULL)
        add_number_word (r, proto, i);
      add_same_again (r, proto, i);
      count_numbered (r, proto, i);
      if (proto->count_item == EM_NO_ITEM && em_reader_is_both (r, i))
        {
          proto->is_count_loose = TRUE;
          add_count (r, proto, i, 2);
        }
      if (!item->is_used || em_item_says (r->items, i, EM_SAYS_KIND) != NULL || em_item_says (r->items, i, EM_SAYS_LABEL) != NULL)
        add_phrase (r, proto, i);
      use_connectives (r, i);
    }
  raise_only_noun (r, proto);
  for (guint k = 0; k < r->waiting->len; k++)
    g_array_append_val (proto->given, g_array_index (r->waiting, EmGiven, k));
  g_array_set_size (r->waiting, 0);
}
