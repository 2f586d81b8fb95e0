/* em-clause-counts: which numbers of a sentence count, and which only name something.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-clause.h"

#include "em-list.h"
#include "em-name.h"

#include <string.h>

enum
{
  EACH_MAX = 48,         /* of one repair, counted by "each" */
  ENGLISH = 1,           /* bit of the first lexicon */
  SAME_ALONE = 4,        /* bytes of "same", "dto." without what it is as */
  COUNT_MAX = 999,
  CODE_DIGITS = 3,       /* of a number that a tool has */
  NOUN_WINDOW = 4, ROW_WINDOW = 16,
  DONE_WINDOW = 5        /* words round how often it was welded */
};

/* "holes 6 x ⌀3": so many of what was named as several right before it. */
static gboolean
is_times_after_noun (const EmClause *c, guint i)
{
  const EmItem *noun = i > c->first ? em_item (c->items, i - 1) : NULL;
  const EmSense *label = i + 2 < c->end ? em_clause_label_at (c, i + 2, EM_LABEL_BEFORE) : NULL;
  char last;

  if (noun == NULL || !em_clause_says (c, i - 1, EM_SAYS_KIND) || label == NULL ||
      (label->roles & (EM_ROLE_DIAMETER | EM_ROLE_RADIUS)) == 0)
    return FALSE;
  last = g_ascii_tolower (c->items->text[noun->start + noun->length - 1]);
  return last == 's' || last == 'n';
}

/* "R0.25, 2 x 75 mm long": where a radius is given, a row needs no second size. */
static gboolean
is_times_edge (const EmClause *c, guint i)
{
  const EmSense *label = i + 3 < c->end ? em_item_says (c->items, i + 3, EM_SAYS_LABEL) : NULL;

  if (em_item_size (c->items, i + 2)->unit == EM_UNIT_NONE || label == NULL || (label->roles & EM_ROLE_LENGTH) == 0)
    return FALSE;
  for (guint k = i; k-- > c->first && k + ROW_WINDOW > i;)
    {
      label = em_item_says (c->items, k, EM_SAYS_LABEL);
      if (label != NULL && (label->roles & EM_ROLE_RADIUS) != 0)
        return TRUE;
    }
  return FALSE;
}

/* "4X ⌀.25", "4X .25": X glued to the number and a blank after it is a number of places (ASME Y14.5). "4 x R.03" at the
 * head of a part is one too; "4 x 5" is a row of sizes. */
static gboolean
is_times_count (const EmClause *c, guint i)
{
  const EmItems *items = c->items;
  guint x = i + 1, next = i + 2;
  gboolean is_tight, is_head;

  if (!em_clause_says (c, x, EM_SAYS_TIMES) || (i > c->first && em_clause_says (c, i - 1, EM_SAYS_TIMES)))
    return FALSE;
  if (em_item (items, x)->length > 2)
    return FALSE;
  if (is_times_after_noun (c, i))
    return TRUE;
  is_tight = em_item_is_glued (items, x);
  is_head = i == c->first || em_item_is_soft_break (items, i - 1) || em_item_is_sign (items, i - 1, ':') ||
            (em_item_is_sign (items, i - 1, '(') && next < c->end && !em_clause_is_size (c, next)) || em_clause_says (c, i - 1, EM_SAYS_VERB);
  /* ", 55 long, 2 x" */
  if (next >= c->end)
    return is_tight || (is_head && i > c->first);
  /* "edge 4 x damaged", "2 x ditto" */
  if (em_clause_says (c, next, EM_SAYS_SET) || em_clause_says (c, next, EM_SAYS_SAME))
    return TRUE;
  if (em_clause_is_size (c, next))
    return (is_tight && !em_item_is_glued (items, next) && em_item_size (items, next)->unit != EM_UNIT_DEGREE) ||
           (is_head && is_times_edge (c, i));
  return is_tight || is_head;
}

/* "2 small nicks", "4 no. nicks": a little word that joins nothing. */
static gboolean
is_filler (const EmClause *c, guint i)
{
  const EmSense *glue = em_item_says (c->items, i, EM_SAYS_GLUE);

  if (em_clause_says (c, i, EM_SAYS_NOISE))
    return TRUE;
  return (glue != NULL && (glue->value == NULL || g_strcmp0 (glue->value, "number") == 0) &&
          !em_clause_says (c, i, EM_SAYS_PREPOSITION)) || em_item_is_sign (c->items, i, '.');
}

/* "6 #10-32 holes": neither counts nor measures. */
static gboolean
is_thread_name (const EmClause *c, guint i)
{
  const EmItem *item = em_item (c->items, i);

  /* "M8" */
  if (i > c->first && item->type == EM_ITEM_SIZE && em_item_is_glued (c->items, i) && em_item (c->items, i - 1)->length == 1 &&
      g_ascii_toupper (c->items->text[em_item (c->items, i - 1)->start]) == 'M')
    return TRUE;
  if (item->length == 1 && g_ascii_toupper (c->items->text[item->start]) == 'M' && i + 1 < c->end &&
      em_item (c->items, i + 1)->type == EM_ITEM_SIZE && em_item_is_glued (c->items, i + 1))
    return TRUE;
  return em_item_is_sign (c->items, i, '#') ||
         (em_item (c->items, i)->type == EM_ITEM_SIZE && (em_item_size (c->items, i)->roles & EM_ROLE_REFERENCE) != 0);
}

/* "l'insert 4 a l'arête mangée", "el inserto 4 viene con el canto comido": which part, when it has what follows. */
static gboolean
is_number_of_bearer (const EmClause *c, guint i)
{
  static const char *const has[] = { "has", "comes", "came", "shows", "hat", "zeigt", "kommt", "tiene", "trae", "viene", "vino", "lleva", "muestra", "presenta", "viene con", "a", "a l'", "a un", "a une",
                                     "présente", "présente une", "présente un", "montre", "arrive" };

  return i > c->first && i + 1 < c->end && em_clause_says (c, i - 1, EM_SAYS_PLACE) && em_item (c->items, i)->length <= 2 &&
         em_item_is_any_word_of (c->items, i + 1, has, G_N_ELEMENTS (has));
}

/* "CAV 6 EDGE", against "CAV 6 NICKS": which cavity, when one thing follows. */
static gboolean
is_number_of_place (const EmClause *c, guint i)
{
  static const char *const numbered[] = { "cav", "cavity", "station", "stn", "impression", "nest", "cavidad", "empreinte", "zona", "zone", "dim", "dim.", "char", "char.",
                                          "characteristic", "dimension", "balloon", "maß", "merkmal", "cota", "cote" };
  static const char *const of[] = { "of", "of the", "of our", "from", "from the", "vom", "von", "von der", "des", "der", "aus", "del", "de", "de la", "du", "is", "ist", "hat", "has", "tiene", "a" };
  const EmItem *next = i + 1 < c->end ? em_item (c->items, i + 1) : NULL;

  /* "zone 25 mm", "zone 25 long" */
  if (em_item_size (c->items, i)->unit != EM_UNIT_NONE || (next != NULL && em_clause_label_at (c, i + 1, EM_LABEL_AFTER) != NULL))
    return FALSE;
  if (is_number_of_bearer (c, i))
    return TRUE;
  /* "corredera 1: cara gastada" */
  if (i > c->first && next != NULL && em_item (c->items, i)->length <= 2 && em_item_is_sign (c->items, i + 1, ':') && em_clause_says (c, i - 1, EM_SAYS_PLACE))
    return TRUE;
  /* "Einsatz 3 vom Werkzeug", "slide 2 of tool 4471" */
  if (i > c->first && next != NULL && em_item (c->items, i)->length <= 2 && em_clause_says (c, i - 1, EM_SAYS_PLACE) && !em_clause_says (c, i - 1, EM_SAYS_KIND) &&
      em_item_is_any_word_of (c->items, i + 1, of, G_N_ELEMENTS (of)))
    return TRUE;
  return i > c->first && em_item_is_any_word_of (c->items, i - 1, numbered, G_N_ELEMENTS (numbered)) && !em_clause_says (c, i + 1, EM_SAYS_TIMES) &&
         (next == NULL || g_ascii_tolower (c->items->text[next->start + next->length - 1]) != 's');
}

/* The item is that word or ends in it. */
static gboolean
ends_in_word (const EmClause *c, guint i, const char *word)
{
  const EmItem *item = em_item (c->items, i);
  gsize length = strlen (word);
  const char *end = c->items->text + item->start + item->length;

  return item->length >= length && g_ascii_strncasecmp (end - length, word, length) == 0 &&
         (item->length == length || end[-(gssize) length - 1] == ' ');
}

/* "between the 2 pockets": where it is. */
static gboolean
counts_neighbours (const EmClause *c, guint i)
{
  static const char *const between[] = { "between", "between the", "entre", "entre les", "entre los", "entre las", "zwischen", "zwischen den" };

  return i > c->first && (em_item_is_any_word_of (c->items, i - 1, between, G_N_ELEMENTS (between)) ||
                          (i > c->first + 1 && em_item_is_any_word_of (c->items, i - 2, between, G_N_ELEMENTS (between)) &&
                           em_clause_says (c, i - 1, EM_SAYS_GLUE))) &&
         (em_clause_says (c, i + 1, EM_SAYS_KIND) || em_clause_says (c, i + 1, EM_SAYS_PLACE));
}

/* "on the 4 cores", "sur les 4 noyaux", but not "between the 2 pockets" */
static gboolean
is_of_the_parts (const EmClause *c, guint i)
{
  static const char *const the[] = { "the", "les", "des", "los", "las", "die", "den", "der" };
  gboolean is_the = FALSE;

  if (i == c->first || em_clause_says (c, i + 1, EM_SAYS_LABEL) ||
      !(em_clause_says (c, i + 1, EM_SAYS_PLACE) || em_clause_says (c, i + 1, EM_SAYS_KIND)))
    return FALSE;
  for (gsize k = 0; k < G_N_ELEMENTS (the); k++)
    is_the |= ends_in_word (c, i - 1, the[k]);
  return is_the && !counts_neighbours (c, i);
}

/* A noun stands behind the number at i, and before it nothing but words of a thing. */
static gboolean
leads_to_noun (const EmClause *c, guint i)
{
  static const char *const opposite[] = { "opposite", "opposing", "adjacent", "parallel", "gegenüberliegende", "gegenüberliegenden", "opposées", "opposés", "opuestas", "opuestos" };

  for (guint k = i + 1; k < c->end && k <= i + NOUN_WINDOW; k++)
    {
      const EmSense *label = em_item_says (c->items, k, EM_SAYS_LABEL);

      /* "12 ID" is the bore's size. */
      if (k == i + 1 && em_clause_says (c, k, EM_SAYS_KIND) && em_clause_label_at (c, k, EM_LABEL_AFTER) != NULL)
        return FALSE;
      /* "60 down the hole" */
      if (k == i + 1 && label != NULL && (label->roles & EM_ROLE_DEPTH) != 0 && em_clause_says (c, k, EM_SAYS_GLUE))
        return FALSE;
      if (em_clause_says (c, k, EM_SAYS_KIND) || em_clause_says (c, k, EM_SAYS_TOOLS))
        return TRUE;
      /* "2 opposite faces" */
      if (em_item_is_any_word_of (c->items, k, opposite, G_N_ELEMENTS (opposite)))
        continue;
      if (em_clause_says (c, k, EM_SAYS_THING) || em_clause_says (c, k, EM_SAYS_PLACE) ||
          (label != NULL && (label->roles & ~(EM_ROLE_WORN | EM_ROLE_BUILD)) == 0))
        continue;
      if (em_item (c->items, k)->type != EM_ITEM_UNKNOWN && !is_filler (c, k) && !is_thread_name (c, k))
        return FALSE;
    }
  return FALSE;
}

/* "item", "Pos", right before its number. */
static gboolean
is_item_word (const EmClause *c, guint word, guint number)
{
  const EmSense *glue = word + 1 == number ? em_item_says (c->items, word, EM_SAYS_GLUE) : NULL;

  return glue != NULL && g_strcmp0 (glue->value, "item") == 0;
}

/* "Pos 10 lip corner": the word heads the line, and the sentence begins behind it. */
static gboolean
is_head_number (const EmClause *c, guint i)
{
  return i == c->first && i > 0 && is_item_word (c, i - 1, i) && i + 1 < c->end &&
         (em_clause_says (c, i + 1, EM_SAYS_KIND) || em_clause_says (c, i + 1, EM_SAYS_PLACE)) && !em_clause_says (c, i + 1, EM_SAYS_TIMES);
}

/* "2 cores of 12 mm": how large each is follows. */
static gboolean
is_of_parts_so_large (const EmClause *c, guint i)
{
  return em_item_size (c->items, i)->value.n > 1 && !em_clause_says (c, i - 1, EM_SAYS_TIMES) && !em_clause_says (c, i - 1, EM_SAYS_PLACE) && em_clause_says (c, i + 1, EM_SAYS_PLACE) &&
         em_clause_says (c, i + 2, EM_SAYS_PREPOSITION) && em_clause_is_size (c, i + 3) && em_item_size (c->items, i + 3)->unit != EM_UNIT_NONE;
}

/* "0.6 deep, in 8 cavities", "en 8 cavidades": at the end of a part; "en" leads to a length otherwise. */
static gboolean
is_in_parts (const EmClause *c, guint i)
{
  return i > c->first && em_item_size (c->items, i)->value.n > 1 && em_clause_says (c, i - 1, EM_SAYS_PREPOSITION) &&
         em_clause_says (c, i + 1, EM_SAYS_PLACE) && !em_clause_says (c, i + 1, EM_SAYS_LABEL) &&
         (i + 2 >= c->end || em_item_is_soft_break (c->items, i + 2) || em_item_is_sign (c->items, i + 2, '.'));
}

/* "3 nicks", "2 worn shut-off corners": a whole number before the noun. */
static gboolean
is_before_noun (const EmClause *c, guint i)
{
  guint prior = em_clause_before (c, i);
  const EmSense *before = prior != c->end ? em_item_says (c->items, prior, EM_SAYS_LABEL) : NULL;

  if (is_number_of_place (c, i))
    return FALSE;
  /* "ring is 14 outside dia" */
  if (em_clause_says (c, i + 1, EM_SAYS_KIND) && em_clause_label_at (c, i + 1, EM_LABEL_AFTER) != NULL &&
      (em_clause_label_at (c, i + 1, EM_LABEL_AFTER)->roles & EM_ROLE_DIAMETER) != 0)
    return FALSE;
  /* "MOULD 663 CORE" */
  if (i > c->first && em_item (c->items, i)->length >= CODE_DIGITS && em_clause_says (c, i - 1, EM_SAYS_REFERENCE))
    return FALSE;
  /* "DET 12 CORE BLADE" */
  if (prior != c->end && is_item_word (c, prior, i))
    return FALSE;
  /* "EJ SIDE: 3 PIN HOLES" */
  if (before != NULL && (before->roles & em_dimension_roles) == 0 && em_item_is_sign (c->items, i - 1, ':') &&
      em_clause_says (c, i + 1, EM_SAYS_KIND))
    return TRUE;
  /* "There are 16 cores.", "tenemos 4 punzones de D2" */
  if (prior != c->end && prior + 1 == i && !em_clause_is_size (c, prior) && !em_clause_says (c, prior, EM_SAYS_TIMES) &&
      !em_clause_says (c, prior, EM_SAYS_PREPOSITION) && em_item (c->items, prior)->type == EM_ITEM_PHRASE &&
      (before == NULL || (before->roles & (em_dimension_roles | EM_ROLE_BUILD | EM_ROLE_FINISHED)) == 0) &&
      (em_clause_says (c, i + 1, EM_SAYS_KIND) || em_clause_says (c, i + 1, EM_SAYS_PLACE)) &&
      (i + 2 == c->end || em_item_is_soft_break (c->items, i + 2) || em_clause_says (c, i + 2, EM_SAYS_PREPOSITION) ||
       (i + 3 == c->end && em_clause_says (c, i + 2, EM_SAYS_GLUE)) /* "of the same type" */))
    return TRUE;
  if (is_of_parts_so_large (c, i) || is_in_parts (c, i))
    return TRUE;
  if (prior != c->end && !em_item_is_sign (c->items, i - 1, '.') &&
      !(em_item_is_sign (c->items, i - 1, ':') && em_clause_says (c, i + 1, EM_SAYS_KIND)) /* "2 mm away: 3 pits" */ &&
      (em_clause_says (c, prior, EM_SAYS_TIMES) || em_clause_is_size (c, prior) ||
       (em_clause_says (c, prior, EM_SAYS_LABEL) && !em_clause_says (c, prior, EM_SAYS_GLUE) &&
        !em_clause_says (c, prior, EM_SAYS_VERB))))
    return FALSE;
  /* ", 4 cores." */
  if ((i == c->first || em_item_is_soft_break (c->items, i - 1) || em_item_is_sign (c->items, i - 1, '.') ||
       em_item_is_sign (c->items, i - 1, '(') || em_item_is_sign (c->items, i - 1, ':')) &&
      em_clause_says (c, i + 1, EM_SAYS_PLACE) &&
      (i + 2 == c->end || em_item_is_soft_break (c->items, i + 2) || em_item_is_sign (c->items, i + 2, ')') ||
       em_clause_says (c, i + 2, EM_SAYS_SAME) || em_item_is_all (c->items, i + 2) ||
       (em_clause_says (c, i + 2, EM_SAYS_GLUE) && em_clause_says (c, i + 3, EM_SAYS_SAME)) /* "8 cores the same" */))
    return TRUE;
  /* "on all 16 impressions" */
  if (i > c->first && (em_clause_says (c, i - 1, EM_SAYS_ALL) || em_item_is_all (c->items, i - 1)) &&
      em_clause_says (c, i + 1, EM_SAYS_PLACE))
    return TRUE;
  /* "sur les 4 noyaux", "an den 4 Kernen" */
  if (is_of_the_parts (c, i))
    return TRUE;
  return leads_to_noun (c, i);
}

/* "(x 4 cavities)" */
static gboolean
is_times_in_brackets (const EmClause *c, guint i)
{
  return i >= c->first + 2 && em_clause_says (c, i - 1, EM_SAYS_TIMES) && em_item_is_sign (c->items, i - 2, '(') &&
         (em_clause_says (c, i + 1, EM_SAYS_PLACE) || em_clause_says (c, i + 1, EM_SAYS_KIND));
}

/* "NECK RINGS x 6": all of the sentence. */
static gboolean
ends_title (const EmClause *c, guint i)
{
  return i > c->first + 1 && i + 1 == c->end && em_clause_says (c, i - 1, EM_SAYS_TIMES) &&
         (em_clause_says (c, i - 2, EM_SAYS_KIND) || em_clause_says (c, i - 2, EM_SAYS_PLACE));
}

/* "(x5)", "x5" at the head of a part, "pins x5". */
static gboolean
is_times_before (const EmClause *c, guint i)
{
  return i > c->first && em_clause_says (c, i - 1, EM_SAYS_TIMES) && em_item_is_glued (c->items, i) &&
         (i - 1 == c->first || em_item_is_sign (c->items, i - 2, '(') || em_item_is_soft_break (c->items, i - 2) ||
          (em_clause_says (c, i - 2, EM_SAYS_KIND) && !em_item_is_glued (c->items, i - 1)) ||
          (!em_clause_is_size (c, i - 2) && !em_item_is_glued (c->items, i - 1) &&
           (i + 1 == c->end || em_item_is_soft_break (c->items, i + 1))));
}

/* "3 Stück: 12 lang", "4 pcs: 3 x 1 x 1": behind the count comes what each measures. */
static gboolean
is_before_measures (const EmClause *c, guint word)
{
  const EmItem *item = word < c->end ? em_item (c->items, word) : NULL;
  const EmSense *before, *after;
  guint size = word + 1;

  if (item == NULL || word == c->first || !em_clause_says (c, word, EM_SAYS_QUANTITY) || !em_list_is_bare_whole (c->items, word - 1) || size >= c->end)
    return FALSE;
  size += em_item_is_sign (c->items, size, '.');
  /* The colon may be the word's own. */
  if (c->items->text[item->start + item->length - 1] != ':' && em_item_is_sign (c->items, size, ':'))
    size++;
  else if (c->items->text[item->start + item->length - 1] != ':' && !em_clause_says (c, word, EM_SAYS_PLACES) /* "4 Stk. 3 x 1" */)
    return FALSE;
  before = size < c->end ? em_clause_label_at (c, size, EM_LABEL_BEFORE) : NULL;
  if (before != NULL && (before->roles & em_dimension_roles) != 0)
    return em_clause_is_size (c, size + 1);
  after = em_clause_is_size (c, size) ? em_clause_label_at (c, size + 1, EM_LABEL_AFTER) : NULL;
  return (after != NULL && (after->roles & em_dimension_roles) != 0) || (em_clause_says (c, size + 1, EM_SAYS_TIMES) && em_clause_is_size (c, size + 2));
}

/* "Stück: 2", "ITEM 2 QTY 1 EA": the number follows the word, so the one before it is no count. */
static gboolean
is_before_its_number (const EmClause *c, guint i)
{
  if (is_before_measures (c, i))
    return FALSE;
  if (em_clause_says (c, i, EM_SAYS_QUANTITY) && em_list_is_bare_whole (c->items, i + 1) &&
      (em_clause_says (c, i + 2, EM_SAYS_PLACES) || (i + 2 < c->end && (em_item_is_sign (c->items, i + 2, '-') || em_item_is_sign (c->items, i + 2, ':')))))
    return TRUE;
  return em_clause_says (c, i, EM_SAYS_QUANTITY) && i + 2 < c->end &&
         (em_item_is_sign (c->items, i + 1, ':') || em_item_is_sign (c->items, i + 1, '=')) && em_clause_is_size (c, i + 2);
}

/* "5 x 2 x 2 each": each of them measures so. */
static gboolean
is_row_each (const EmClause *c, guint i, guint next)
{
  return i > c->first + 1 && em_clause_says (c, i - 1, EM_SAYS_TIMES) && em_clause_is_size (c, i - 2) &&
         g_ascii_strncasecmp (c->items->text + em_item (c->items, next)->start, "ea", 2) == 0;
}

static gboolean
has_count_before (const EmClause *c, guint i)
{
  for (guint k = i; k-- > c->first && k + ROW_WINDOW > i;)
    if (em_clause_is_size (c, k) && (em_item_size (c->items, k)->roles & EM_ROLE_COUNT) != 0)
      return TRUE;
  return FALSE;
}

/* "4 corners on the A side and 4 on the B side", "6 holes each in 2 plates = 12": behind a count. */
static gboolean
is_more_of_it (const EmClause *c, guint i)
{
  gboolean is_part = i > c->first && em_item_is_soft_break (c->items, i - 1) && em_clause_says (c, i + 1, EM_SAYS_PREPOSITION);
  gboolean is_in = i > c->first && em_clause_says (c, i - 1, EM_SAYS_PREPOSITION) && em_clause_says (c, i + 1, EM_SAYS_PLACE);
  gboolean is_total = i > c->first && em_item_is_sign (c->items, i - 1, '=') &&
                      (i + 1 == c->end || em_item_is_soft_break (c->items, i + 1));

  gboolean is_are = i > c->first && em_item_is_soft_break (c->items, i - 1) && i + 1 < c->end &&
                    em_item_is_word (c->items, i + 1, "are");

  return (is_part || is_in || is_total || is_are) && has_count_before (c, i);
}

/* "and 2 more of 2 x 1 x 1" */
static gboolean
is_so_many_more (const EmClause *c, guint i)
{
  return i > c->first && em_item_is_soft_break (c->items, i - 1) && i + 1 < c->end && em_item_is_word (c->items, i + 1, "more");
}

/* "pits: 3 of ⌀0.8 x 0.5 and 1 of ⌀2 x 1": so many of that size. */
static gboolean
is_so_many_of (const EmClause *c, guint i)
{
  static const char *const of[] = { "of", "de", "à", "a", "von" };
  gboolean is_head = i == c->first || em_item_is_soft_break (c->items, i - 1) || em_item_is_sign (c->items, i - 1, ':') || em_item_is_sign (c->items, i - 1, '(') ||
                     em_item_says (c->items, i - 1, EM_SAYS_GLUE) != NULL;
  /* "3 small ones of 2 x 1 x 1", "3 petits de" */
  guint word = i + 1 + (i + 2 < c->end && em_clause_says (c, i + 1, EM_SAYS_GLUE) && !em_item_is_any_word_of (c->items, i + 1, of, G_N_ELEMENTS (of)));
  const EmSense *label = em_clause_label_at (c, word + 1, EM_LABEL_BEFORE);
  guint size = word + 1 + (label != NULL);

  return is_head && word < c->end && em_item_is_any_word_of (c->items, word, of, G_N_ELEMENTS (of)) && em_clause_is_size (c, size) &&
         (label != NULL ? (label->roles & EM_ROLE_DIAMETER) != 0 : em_clause_says (c, size + 1, EM_SAYS_TIMES));
}

/* "boucher 3 trous taraudés M8", "3 barrenos roscados a rellenar": things that are filled, or several at the head. */
static gboolean
is_of_filled_things (const EmClause *c, guint i)
{
  const EmSense *verb = i > c->first ? em_item_says (c->items, i - 1, EM_SAYS_VERB) : NULL;
  const EmItem *thing = i + 1 < c->end ? em_item (c->items, i + 1) : NULL;

  if (thing == NULL || !em_clause_says (c, i + 1, EM_SAYS_THING))
    return FALSE;
  return verb != NULL ? g_strcmp0 (verb->value, "fill") == 0
                      : i == c->first && g_ascii_tolower (c->items->text[thing->start + thing->length - 1]) == 's';
}

/* ", 1 side, 95 mm": one of them. */
static gboolean
is_one_side (const EmClause *c, guint i)
{
  return i > c->first && em_item_is_soft_break (c->items, i - 1) && em_item_size (c->items, i)->value.n == 1 && i + 1 < c->end &&
         em_item_is_word (c->items, i + 1, "side") && (i + 2 == c->end || em_item_is_soft_break (c->items, i + 2));
}

/* "12-off core tips" */
static gboolean
is_dashed_off (const EmClause *c, guint i)
{
  return i + 2 < c->end && em_item_is_sign (c->items, i + 1, '-') && em_item_is_glued (c->items, i + 1) &&
         em_item_is_glued (c->items, i + 2) && em_clause_says (c, i + 2, EM_SAYS_PLACES);
}

/* "(4 per plate)", "2 chips per blade", "avec 2 éclats chacun": a noun may stand between the number and what has so many each. */
static gboolean
is_per_part (const EmClause *c, guint i)
{
  gboolean has_noun = em_clause_says (c, i + 1, EM_SAYS_KIND);
  guint per = i + 1 + has_noun, part = per + 1;

  if (has_noun && em_item_is_each_alone (c->items, per + em_clause_says (c, per, EM_SAYS_PREPOSITION)))
    return TRUE;
  if (part >= c->end || !em_item_is_per (c->items, per) || em_clause_says (c, part, EM_SAYS_LABEL))
    return FALSE;
  if (has_noun && (em_clause_says (c, part, EM_SAYS_PLACE) || em_clause_says (c, part, EM_SAYS_KIND)))
    return TRUE;
  return em_clause_says (c, part, EM_SAYS_PLACE) && !has_noun && (i == c->first || em_item_is_sign (c->items, i - 1, '(') || em_item_is_soft_break (c->items, i - 1));
}

/* "8 noyaux usés, Ø9,5", "3 noyaux abîmés :": at the head of a part so many parts are worn, which measures none of them. */
static gboolean
is_of_worn_parts (const EmClause *c, guint i)
{
  const EmSense *label = i + 2 < c->end ? em_item_says (c->items, i + 2, EM_SAYS_LABEL) : NULL;
  const EmSense *set = i + 2 < c->end ? em_item_says (c->items, i + 2, EM_SAYS_SET) : NULL;

  return ((label != NULL && (label->roles & EM_ROLE_WORN) != 0) || (set != NULL && set->set_field == NULL)) && em_item_size (c->items, i)->value.n > 1 &&
         em_clause_says (c, i + 1, EM_SAYS_PLACE) && !em_clause_says (c, i + 1, EM_SAYS_LABEL) && !em_item_is_glued (c->items, i + 1) &&
         !em_clause_is_size (c, i + 3) && (i == c->first || em_item_is_soft_break (c->items, i - 1));
}

/* "3 per cavity x 8 cav": how many parts, behind the part that each has so many. */
static gboolean
is_times_parts (const EmClause *c, guint i)
{
  return i >= c->first + 3 && em_clause_says (c, i - 1, EM_SAYS_TIMES) && em_clause_says (c, i + 1, EM_SAYS_PLACE) &&
         (em_clause_says (c, i - 2, EM_SAYS_PLACE) || em_clause_says (c, i - 2, EM_SAYS_KIND)) &&
         (em_item_is_per (c->items, i - 3) || em_list_is_bare_whole (c->items, i - 3) /* "4 corners x 2 inserts" */);
}

/* ", 2 of." for "2 off" */
static gboolean
is_misspelt_off (const EmClause *c, guint i)
{
  /* "dents (2 of)" */
  if (i > c->first && i + 2 < c->end && em_item_is_sign (c->items, i - 1, '(') && em_item_is_word (c->items, i + 1, "of") && em_item_is_sign (c->items, i + 2, ')'))
    return TRUE;
  return i > c->first && em_item_is_soft_break (c->items, i - 1) && i + 2 == c->end && em_item_is_word (c->items, i + 1, "of");
}

/* "4 no. M6 tapped holes", "2 no. 8mm dia dowel holes": so many, as British lists have it. */
static gboolean
is_so_many_no (const EmClause *c, guint i)
{
  static const char *const words[] = { "no", "no.", "nos", "nos." };
  guint next = i + 1;

  if (next >= c->end || !em_item_is_any_word_of (c->items, next, words, G_N_ELEMENTS (words)) || em_item_is_glued (c->items, next) ||
      em_clause_says (c, i - 1, EM_SAYS_PLACE) || em_clause_says (c, i - 1, EM_SAYS_KIND) || em_clause_says (c, i - 1, EM_SAYS_REFERENCE) ||
      em_clause_says (c, i - 1, EM_SAYS_TIMES) || em_clause_is_size (c, i - 1))
    return FALSE;
  next += 1 + (next + 1 < c->end && em_item_is_sign (c->items, next + 1, '.') && em_item_is_glued (c->items, next + 1));
  return em_clause_says (c, next, EM_SAYS_KIND) || em_clause_says (c, next, EM_SAYS_THING) || em_clause_is_size (c, next) || em_clause_says (c, next, EM_SAYS_PLACE);
}

/* "length 150 each", "R0.2, 150 each": so long is each, with a label before the number, or when nobody counts as many. */
static gboolean
is_measured_each (const EmClause *c, guint i, guint prior, guint next)
{
  const EmItem *each = next < c->end ? em_item (c->items, next) : NULL;
  const EmSense *label = prior != c->end ? em_item_says (c->items, prior, EM_SAYS_LABEL) : NULL;

  if (each == NULL || each->length < 2 || each->length > 4 || g_ascii_strncasecmp (c->items->text + each->start, "each", 2) != 0)
    return FALSE;
  return em_item_size (c->items, i)->value.n > EACH_MAX ||
         (label != NULL && (label->roles & (em_length_roles | EM_ROLE_RADIUS)) != 0 && !em_clause_says (c, prior, EM_SAYS_QUANTITY));
}

/* ", DIA .625, ALL 6", ", alle 4": so many as there are, in a part of its own. */
static gboolean
is_all_of_them (const EmClause *c, guint i)
{
  static const char *const all[] = { "all", "on all", "all of the", "alle", "an allen", "bei allen", "auf allen", "allen", "todos los", "todas las", "en los", "en las", "los", "las", "tous les", "toutes les", "les" };
  guint word = i - 1;

  if (i < c->first + 2 || em_item_size (c->items, i)->value.n < 2 || (i + 1 < c->end && !em_item_is_soft_break (c->items, i + 1) && !em_item_is_sign (c->items, i + 1, '.')))
    return FALSE;
  if (!em_item_is_any_word_of (c->items, word, all, G_N_ELEMENTS (all)))
    return FALSE;
  /* "auf | allen 4", "tous | les 4" */
  if (word > c->first && (em_clause_says (c, word - 1, EM_SAYS_PREPOSITION) || em_item_is_all (c->items, word - 1)))
    word--;
  return word > c->first && (em_item_is_soft_break (c->items, word - 1) || em_item_is_sign (c->items, word - 1, '.') || em_item_is_sign (c->items, word - 1, '-'));
}

static gboolean
is_bare_whole (const EmClause *c, guint i)
{
  const EmSize *size = em_item_size (c->items, i);

  return size->is_whole && size->unit == EM_UNIT_NONE && size->chain == 0;
}

/* "all 8 the same", "los 4 iguales": as many are alike. */
static gboolean
are_so_many_alike (const EmClause *c, guint i)
{
  guint same = i + 1;

  if (!is_bare_whole (c, i) || em_item_size (c->items, i)->value.n < 2 || i == c->first)
    return FALSE;
  same += same < c->end && (em_clause_says (c, same, EM_SAYS_GLUE) || em_clause_says (c, same, EM_SAYS_PLACES));
  return em_clause_says (c, same, EM_SAYS_SAME) && (em_clause_says (c, i - 1, EM_SAYS_ALL) || em_item_is_all (c->items, i - 1) || i == c->first + 1);
}

static gboolean
is_count (const EmClause *c, guint i)
{
  const EmItems *items = c->items;
  guint prior = em_clause_before (c, i);
  gboolean is_bracketed = i > c->first && i + 1 < c->end && em_item_is_sign (items, i - 1, '(') &&
                          em_item_is_sign (items, i + 1, ')');
  guint next = is_bracketed ? i + 2 : i + 1;
  const EmSense *label = i > c->first && em_item_is_glued (items, i) ? em_item_says (items, i - 1, EM_SAYS_LABEL) : NULL;

  /* "Ø6 mal taladrado" */
  if (label != NULL && (label->roles & (EM_ROLE_DIAMETER | EM_ROLE_RADIUS)) != 0)
    return FALSE;

  if (is_measured_each (c, i, prior, next) || (is_bracketed && em_clause_is_after_name (c, i)))
    return FALSE;
  /* "der 8er Stift" */
  if (next < c->end && em_item_is_word (items, next, "er") && em_item_is_glued (items, next))
    return FALSE;
  if ((em_clause_says (c, next, EM_SAYS_PLACES) && !is_before_its_number (c, next) && !is_row_each (c, i, next)) || is_before_measures (c, next) ||
      (next < c->end && em_item_is_sign (c->items, next, '@')))
    return TRUE;
  /* "new dams, 2 Stück:" at the end */
  if (next + 1 == c->end && em_clause_says (c, next, EM_SAYS_QUANTITY) && is_bare_whole (c, i))
    return TRUE;
  if (prior != c->end && ((em_clause_says (c, prior, EM_SAYS_QUANTITY) && !is_before_measures (c, prior)) ||
                          (em_clause_says (c, prior, EM_SAYS_PLACES) && is_before_its_number (c, prior)) ||
                            (em_clause_says (c, prior, EM_SAYS_TYPICAL) && !em_clause_says (c, next, EM_SAYS_LABEL) &&
                             !(em_clause_says (c, next, EM_SAYS_TIMES) && em_clause_says (c, next + 2, EM_SAYS_TIMES)) /* "typ 2 x 0.5 x 0.3" */)))
    return TRUE;
  if (is_bracketed || is_times_before (c, i) || ends_title (c, i) || is_times_in_brackets (c, i) || is_misspelt_off (c, i) || is_so_many_no (c, i) || is_more_of_it (c, i) || is_per_part (c, i) || is_of_worn_parts (c, i) || is_times_parts (c, i) || is_so_many_more (c, i) || is_so_many_of (c, i) || is_of_filled_things (c, i) ||
      is_dashed_off (c, i) || is_one_side (c, i) || is_all_of_them (c, i) || are_so_many_alike (c, i) || em_clause_counts_some (c, i))
    return TRUE;
  /* "(6 x)" */
  if (i > c->first && i + 2 < c->end && em_item_is_sign (c->items, i - 1, '(') && em_clause_says (c, i + 1, EM_SAYS_TIMES) &&
      em_item_is_sign (c->items, i + 2, ')'))
    return TRUE;
  /* "No. of bores: 4" */
  if (prior != c->end && prior > c->first && prior + 1 < i &&
      (em_clause_says (c, prior, EM_SAYS_KIND) || em_clause_says (c, prior, EM_SAYS_PLACE)) &&
        em_clause_says (c, prior - 1, EM_SAYS_QUANTITY))
    return TRUE;
  if (em_clause_says (c, next, EM_SAYS_TYPICAL) && (prior == c->end || !em_clause_says (c, prior, EM_SAYS_LABEL)) &&
      i == c->first)
    return TRUE;
  /* "1 Kante R0,2", where the noun may name a length, too */
  return is_times_count (c, i) || is_before_noun (c, i) || (em_clause_says (c, i + 1, EM_SAYS_LABEL) && em_item_is_few_of (items, i));
}

/* "(12.5)" is a reference size: for information only, never used (ASME Y14.5). */
static gboolean
is_reference (const EmClause *c, guint i)
{
  static const char *const at[] = { "at", "bei" };

  /* "on its full length (85)" */
  if (em_clause_is_after_name (c, i))
    return FALSE;
  /* "second nick at 820: 1.5 long": where it is. */
  if (i > c->first && em_item_is_any_word_of (c->items, i - 1, at, G_N_ELEMENTS (at)) && i + 1 < c->end && em_item_is_sign (c->items, i + 1, ':'))
    return TRUE;
  /* "over a quarter (90°)": no angle is told for information only. */
  if (em_item_size (c->items, i)->unit == EM_UNIT_DEGREE)
    return FALSE;
  /* "texture right beside (1.5 mm)" */
  if (i > c->first + 1 && em_item_size (c->items, i)->unit != EM_UNIT_NONE &&
      (em_clause_says (c, i - 2, EM_SAYS_NEAR) || em_clause_says (c, i - 2, EM_SAYS_THING)))
    return FALSE;
  /* "0.500 (+.0005)" */
  if (i > c->first + 1 && i + 1 < c->end && em_item_is_sign (c->items, i - 2, '(') && em_item_is_sign (c->items, i + 1, ')') &&
      (em_item_is_sign (c->items, i - 1, '+') || em_item_is_sign (c->items, i - 1, '-')))
    return TRUE;
  /* "shaft (35k6)": no fit is told of what is only for information. */
  return i > c->first && i + 1 < c->end && em_item_is_sign (c->items, i - 1, '(') && em_item_is_sign (c->items, i + 1, ')') &&
         !em_item_size (c->items, i)->has_fit && !em_unit_is_hardness (em_item_size (c->items, i)->unit) && !em_unit_is_area (em_item_size (c->items, i)->unit);
}

/* "2 of the 4 lifters": the number of all after the number of those meant. Marks both. */
static gboolean
mark_share (const EmClause *c, guint i)
{
  guint all = i + 2;
  const EmSize *part, *whole;

  if (i + 3 >= c->end || !em_clause_is_size (c, i) || !em_clause_says (c, i + 1, EM_SAYS_PREPOSITION))
    return FALSE;
  all += em_clause_says (c, all, EM_SAYS_GLUE);
  if (!em_clause_is_size (c, all) || !(em_clause_says (c, all + 1, EM_SAYS_PLACE) || em_clause_says (c, all + 1, EM_SAYS_KIND)))
    return FALSE;
  part = em_item_size (c->items, i);
  whole = em_item_size (c->items, all);
  if (!part->is_whole || !whole->is_whole || part->value.n >= whole->value.n || part->unit != EM_UNIT_NONE ||
      whole->unit != EM_UNIT_NONE)
    return FALSE;
  em_item_size (c->items, i)->roles |= EM_ROLE_COUNT;
  em_clause_use_name (c, all);
  return TRUE;
}

/* "Kante Schieber 3 abgebrochen", "slide 3 broken": which one, before what became of it. */
static gboolean
is_part_that_broke (const EmClause *c, guint i)
{
  const EmSense *set = em_item_says (c->items, MIN (i + 1, c->end - 1), EM_SAYS_SET);

  return i > c->first && i + 1 < c->end && em_item (c->items, i)->length <= 2 && set != NULL && set->set_field == NULL &&
         em_clause_says (c, i - 1, EM_SAYS_PLACE) && !em_clause_says (c, i - 1, EM_SAYS_KIND) && !em_clause_says (c, i - 1, EM_SAYS_LABEL);
}

/* "Cav 1 thru 4:": the numbers of the parts. */
static gboolean
ends_range_of_parts (const EmClause *c, guint i)
{
  const EmItem *part = i >= c->first + 3 ? em_item (c->items, i - 3) : NULL;

  if (part == NULL || !em_clause_says (c, i - 3, EM_SAYS_PLACE) || em_clause_says (c, i - 3, EM_SAYS_KIND) ||
      !em_clause_is_size (c, i - 2) || !(em_clause_says (c, i - 1, EM_SAYS_TO) || em_item_is_sign (c->items, i - 1, '-') ||
        g_ascii_strncasecmp (c->items->text + em_item (c->items, i - 1)->start, "thr", 3) == 0 /* "thru" */))
    return FALSE;
  return is_bare_whole (c, i - 2) && is_bare_whole (c, i) && (i + 1 == c->end ||
                                                              (em_item (c->items, i + 1)->type != EM_ITEM_SIZE &&
                                                               !em_clause_says (c, i + 1, EM_SAYS_TIMES))) &&
         em_item_size (c->items, i)->value.n > em_item_size (c->items, i - 2)->value.n;
}

/* "ribs 3-6 on the core": which of them, behind the name of several; what measures has its name or a unit. */
static gboolean
is_range_of_things (const EmClause *c, guint i)
{
  enum { MOST_THINGS = 40 };
  const EmSize *size = em_item_size (c->items, i);
  const EmItem *noun = i > c->first ? em_item (c->items, i - 1) : NULL;
  const EmSense *kind = noun != NULL ? em_item_says (c->items, i - 1, EM_SAYS_KIND) : NULL;

  if (size->low.d != 1 || size->high.d != 1 || size->low.n >= size->high.n || size->high.n > MOST_THINGS || size->unit != EM_UNIT_NONE || size->chain != 0 || kind == NULL ||
      kind->value != NULL || g_ascii_tolower (c->items->text[noun->start + noun->length - 1]) != 's')
    return FALSE;
  return i + 1 >= c->end || em_item_is_sign (c->items, i + 1, ':') || em_item_is_soft_break (c->items, i + 1) || em_clause_says (c, i + 1, EM_SAYS_PREPOSITION) ||
         em_clause_says (c, i + 1, EM_SAYS_GLUE) || em_clause_says (c, i + 1, EM_SAYS_SET);
}

/* "our 2\" pipe die", "4 in. blown film die": which tool, by what comes out of it. */
static gboolean
is_of_tool (const EmClause *c, guint i)
{
  static const char *const products[] = { "pipe", "tube", "tubing", "hose", "film", "blown film", "sheet", "profile", "conduit", "cap", "bottle", "jar", "can", "lid", "closure", "preform",
                                          "rohr", "schlauch", "folien", "profil", "tubo", "tuyau" };
  static const char *const tools[] = { "die", "tool", "mould", "mold", "head", "die head", "line", "werkzeug", "düse", "kopf", "hilera", "molde", "filière", "moule", "tête", "film die" };
  static const char *const whole[] = { "film die", "pipe die", "tube die", "profile die", "sheet die", "hose die", "blow mould", "blow mold" };
  guint next = i + 1;

  next += next < c->end && em_item_is_sign (c->items, next, '.');
  next += next < c->end && em_item_is_word (c->items, next, "blown");
  if (next >= c->end || em_item_size (c->items, i)->unit == EM_UNIT_NONE || em_item_size (c->items, i)->chain != 0)
    return FALSE;
  return em_item_is_any_word_of (c->items, next, whole, G_N_ELEMENTS (whole)) ||
         (em_item_is_any_word_of (c->items, next, products, G_N_ELEMENTS (products)) && next + 1 < c->end &&
          em_item_is_any_word_of (c->items, next + 1, tools, G_N_ELEMENTS (tools)));
}

/* "the core for the 38 mm cap", "Düse Rohr Ø63: …": how large what is moulded is. */
static gboolean
is_of_product (const EmClause *c, guint i)
{
  static const char *const products[] = { "cap", "caps", "closure", "closures", "bottle", "bottles", "jar", "jars", "pipe", "tube", "lid", "lids", "hose",
                                          "profile", "preform", "preforms", "Rohr", "Rohre", "Schlauch", "Flasche", "Flaschen", "Verschluss", "Kappe", "Deckel", "Profil",
                                          "Becher", "tubo", "tubería", "botella", "tapa", "tapón", "tuyau", "bouteille", "bouchon" };
  static const char *const measures[] = { "l", "ml", "cl", "oz", "gal", "ltr" };
  guint before = i > c->first + 1 && em_clause_label_at (c, i - 1, EM_LABEL_BEFORE) != NULL ? i - 2 : i - 1;

  if (i > c->first && before >= c->first && em_item_is_any_word_of (c->items, before, products, G_N_ELEMENTS (products)) && i + 1 < c->end &&
      (em_item_is_sign (c->items, i + 1, ':') || em_item_is_any_word_of (c->items, i + 1, measures, G_N_ELEMENTS (measures)) /* "Flasche 1,5 l" */))
    return TRUE;
  return i > c->first && em_clause_says (c, i - 1, EM_SAYS_PREPOSITION) && em_item_size (c->items, i)->unit != EM_UNIT_NONE &&
         em_item_is_any_word_of (c->items, i + 1, products, G_N_ELEMENTS (products));
}

static gboolean
is_wire (const EmClause *c, guint i)
{
  return em_clause_says (c, i, EM_SAYS_NOISE) && g_strcmp0 (em_item_says (c->items, i, EM_SAYS_NOISE)->value, "wire") == 0;
}

/* ".015 wire", "0,3er Draht", "alambre de 0.3 mm": how thick what is welded with is. */
static gboolean
is_of_wire (const EmClause *c, guint i)
{
  guint next = i + 1 + (i + 1 < c->end && em_item_is_glued (c->items, i + 1) && em_item (c->items, i + 1)->type != EM_ITEM_SIZE);
  guint before = em_clause_says (c, i - 1, EM_SAYS_PREPOSITION) || em_clause_says (c, i - 1, EM_SAYS_TO) ? i - 2 : i - 1;

  return is_wire (c, i + 1) || is_wire (c, next) || is_wire (c, before);
}

static gboolean
is_part_letter (const EmClause *c, guint i)
{
  const EmItem *item = em_item (c->items, i);

  return item->length == 1 && item->type != EM_ITEM_SIZE && item->type != EM_ITEM_SIGN && g_ascii_isupper (c->items->text[item->start]) &&
         (item->flags & EM_TOKEN_GLUED) == 0 && (i + 1 >= c->end || !em_item_is_glued (c->items, i + 1));
}

/* "cavs 1,3,5 -", "cav 2,4:": commas between the numbers of parts, and no decimals. */
static gboolean
is_comma_list (const EmClause *c, guint i)
{
  const EmSize *size = em_item (c->items, i)->type == EM_ITEM_SIZE ? em_item_size (c->items, i) : NULL;
  const EmSense *place = i > c->first ? em_item_says (c->items, i - 1, EM_SAYS_PLACE) : NULL;

  if (size == NULL || place == NULL || (size->flags & EM_TOKEN_COMMA) == 0 || size->n_decimals != 1 || size->unit != EM_UNIT_NONE ||
      size->value.n == 0 || (size->flags & EM_TOKEN_LEADING_ZERO) != 0 || (c->items->text[em_item (c->items, i)->start] == '0'))
    return FALSE;
  /* "insert 28,0 H7": such numbers rise, and none is nought. */
  if (size->has_fit || size->value.d != 10 || size->value.n / 10 >= size->value.n % 10)
    return FALSE;
  /* Where commas are decimal marks only a third number tells. */
  if ((em_item (c->items, i - 1)->phrase->languages & ENGLISH) == 0 &&
      !(i + 2 < c->end && em_item_is_sign (c->items, i + 1, ',') && em_item_is_glued (c->items, i + 1) && em_item_is_glued (c->items, i + 2)))
    return FALSE;
  return i + 1 == c->end || em_item_is_soft_break (c->items, i + 1) || em_item_is_sign (c->items, i + 1, ':');
}

/* Marks the numbers of such a list as names. */
static void
use_comma_list (const EmClause *c, guint i)
{
  em_item_size (c->items, i)->flags &= ~(guint) (EM_TOKEN_COMMA | EM_TOKEN_DECIMAL);
  em_clause_use_name (c, i);
  while (i + 2 < c->end && em_item_is_sign (c->items, i + 1, ',') && em_item_is_glued (c->items, i + 1) &&
         em_item (c->items, i + 2)->type == EM_ITEM_SIZE && em_item_is_glued (c->items, i + 2) && em_item_size (c->items, i + 2)->unit == EM_UNIT_NONE)
    {
      i += 2;
      em_item_size (c->items, i)->flags &= ~(guint) (EM_TOKEN_COMMA | EM_TOKEN_DECIMAL);
      em_clause_use_name (c, i);
    }
}

/* "same as item 2", "wie Pos. 3, aber …": the number of another repair. */
static gboolean
is_referred_to (const EmClause *c, guint i)
{
  static const char *const but[] = { "but", "aber", "jedoch", "nur", "mais", "pero", "except", "only", "however" };
  guint same = i - 1;

  if (i < c->first + 1 || em_item (c->items, i)->length > 2 || !is_bare_whole (c, i))
    return FALSE;
  while (same > c->first && (em_item_is_sign (c->items, same, '.') || em_item_is_sign (c->items, same, '#')))
    same--;
  /* "same as note 2" */
  if (same > c->first && em_item_says (c->items, same, EM_SAYS_GLUE) != NULL &&
      g_strcmp0 (em_item_says (c->items, same, EM_SAYS_GLUE)->value, "item") == 0 && !em_clause_says (c, same, EM_SAYS_SAME))
    same--;
  if (!em_clause_says (c, same, EM_SAYS_SAME) || em_item (c->items, same)->length <= SAME_ALONE)
    return FALSE;
  return i + 1 == c->end || em_item_is_soft_break (c->items, i + 1) || em_item_is_sign (c->items, i + 1, ')') ||
         em_item_is_sign (c->items, i + 1, '.') || em_clause_says (c, i + 1, EM_SAYS_PREPOSITION) || em_item_is_any_word_of (c->items, i + 1, but, G_N_ELEMENTS (but));
}

/* What names the item at i, with the letter glued to its number. */
static void
mark_name (const EmClause *c, guint i)
{
  /* "faces C & D 10 x 10" */
  if (i > c->first + 1 && is_part_letter (c, i) && em_item_is_soft_break (c->items, i - 1) && is_part_letter (c, i - 2))
    em_item (c->items, i)->is_used = em_item (c->items, i - 2)->is_used = TRUE;
  if (em_name_is (c, i))
    {
      /* "4R:" */
      if (i + 2 < c->end && em_item_is_glued (c->items, i + 1) && em_item (c->items, i + 1)->length == 1 &&
          em_item_is_sign (c->items, i + 2, ':'))
        em_item (c->items, i + 1)->is_used = TRUE;
      /* "R4:" */
      if (i > c->first && em_item_is_glued (c->items, i) && em_item (c->items, i - 1)->length == 1)
        em_item (c->items, i - 1)->is_used = TRUE;
      em_clause_use_name (c, i);
    }
  /* "A=1.2" */
  if (em_item (c->items, i)->length == 1 && em_item (c->items, i)->type == EM_ITEM_UNKNOWN &&
      em_clause_is_size (c, i + 2) && em_item_is_sign (c->items, i + 1, '='))
    em_item (c->items, i)->is_used = TRUE;
}

/* "war schon 2x geschweißt", "has been welded 3 times before": how often it was done before, and not how many there are. */
static gboolean
is_times_done (const EmClause *c, guint i)
{
  static const char *const done[] = { "welded", "repaired", "rewelded", "geschweißt", "nachgeschweißt", "aufgeschweißt", "repariert", "soldado", "soldada", "reparado",
                                      "reparada", "soudé", "soudée", "réparé", "réparée", "rechargé", "rechargée" };
  static const char *const before[] = { "already", "before", "been", "previously", "was", "were", "schon", "bereits", "wurde", "war", "war schon", "wurde schon", "wurde bereits",
                                        "war bereits", "ya", "ya fue", "fue", "ha sido", "déjà", "a été", "a déjà été" };
  static const char *const times[] = { "times", "mal", "veces", "fois" };
  guint behind = i + 2;
  gboolean is_before = FALSE;

  if (i + 1 >= c->end || !(em_clause_says (c, i + 1, EM_SAYS_TIMES) || em_item_is_any_word_of (c->items, i + 1, times, G_N_ELEMENTS (times))) ||
      !((behind < c->end && em_item_is_any_word_of (c->items, behind, done, G_N_ELEMENTS (done))) ||
        (i > c->first && em_item_is_any_word_of (c->items, i - 1, done, G_N_ELEMENTS (done)))))
    return FALSE;
  for (guint k = i > c->first + DONE_WINDOW ? i - DONE_WINDOW : c->first; k < c->end && k <= i + DONE_WINDOW; k++)
    is_before |= em_item_is_any_word_of (c->items, k, before, G_N_ELEMENTS (before));
  return is_before;
}

/* "Schieber 2 Fläche 0,1 zu tief", "slide 2 face low": at the head of a part the number names it, as the noun behind is no plural. */
static gboolean
names_part_at_head (const EmClause *c, guint i)
{
  const EmItem *noun = i + 1 < c->end ? em_item (c->items, i + 1) : NULL;
  char last = noun != NULL ? g_ascii_tolower (c->items->text[noun->start + noun->length - 1]) : '\0';

  return i > c->first && (i == c->first + 1 || em_item_is_soft_break (c->items, i - 2) || em_item_is_sign (c->items, i - 2, ':')) && noun != NULL && last != 's' &&
         last != 'n' && last != 'x' && em_item_is_part_number (c->items, i);
}

/* "Pocket 7 and 8: …", "Tasche 7 u. 8: …": which ones, at the head of the sentence; the item behind the numbers, 0: none. */
static guint
end_of_numbers_at_head (const EmClause *c, guint i)
{
  guint next = i + 2;

  if (i != c->first + 1 || !em_clause_says (c, c->first, EM_SAYS_KIND) || !em_item_is_soft_break (c->items, i + 1) || em_item_is_sign (c->items, i + 1, ','))
    return 0;
  next += em_item_is_sign (c->items, next, '.');
  return next + 1 < c->end && em_clause_is_size (c, next) && is_bare_whole (c, next) && em_item_is_sign (c->items, next + 1, ':') ? next + 1 : 0;
}

void
em_clause_mark_counts (const EmClause *c)
{
  for (guint i = c->first; i < c->end; i++)
    {
      EmSize *size;

      if (is_comma_list (c, i))
        use_comma_list (c, i);
      if (em_item (c->items, i)->type == EM_ITEM_SIZE && is_bare_whole (c, i) && (counts_neighbours (c, i) || is_head_number (c, i) || is_part_that_broke (c, i) ||
          names_part_at_head (c, i) || (em_item_is_part_number (c->items, i) && em_clause_says (c, i + 1, EM_SAYS_LABEL)) /* "Kern 3 Kante R0,3" */))
        em_clause_use_name (c, i);
      if (em_item (c->items, i)->type == EM_ITEM_SIZE && is_bare_whole (c, i) && end_of_numbers_at_head (c, i) != 0)
        {
          em_clause_use_name (c, end_of_numbers_at_head (c, i) - 1);
          em_clause_use_name (c, i);
        }
      if (em_item (c->items, i)->type == EM_ITEM_SIZE && (is_referred_to (c, i) || (i > c->first && em_list_pointed_number (c->items, i) != 0)))
        {
          em_clause_use_name (c, i);
          em_item_size (c->items, i)->flags &= ~(guint) EM_TOKEN_LEADING_DOT;
        }
      mark_name (c, i);
      if (em_item (c->items, i)->type != EM_ITEM_SIZE || em_item (c->items, i)->is_used || mark_share (c, i))
        continue;
      if (em_name_is_ordinal (c, i))
        {
          em_clause_use_name (c, i);
          em_item (c->items, i + 1)->is_used = TRUE;
          continue;
        }
      if (em_clause_is_on_dial (c, i))
        {
          em_item_size (c->items, i)->roles |= EM_ROLE_REFERENCE;
          continue;
        }
      if (em_name_is_clock (c, i))
        em_item (c->items, i)->is_talk = em_item (c->items, i + 2)->is_talk = TRUE;
      if (ends_range_of_parts (c, i))
        {
          em_clause_use_name (c, i);
          em_clause_use_name (c, i - 2);
        }
      size = em_item_size (c->items, i);
      if (size->roles == 0 && is_range_of_things (c, i))
        {
          em_clause_use_name (c, i);
          continue;
        }
      if ((size->roles & (EM_ROLE_COUNT | EM_ROLE_REFERENCE | em_dimension_roles)) != 0)
        continue;
      if ((size->is_whole && is_number_of_place (c, i)) || is_of_tool (c, i))
        em_clause_use_name (c, i);
      if ((em_name_is_code (c, i) && em_item_is_glued (c->items, i)) || (is_bare_whole (c, i) && is_times_done (c, i)))
        size->roles |= EM_ROLE_REFERENCE;
      else if (size->is_whole && !size->has_fit && size->unit == EM_UNIT_NONE && size->value.n >= 1 && size->value.n <= COUNT_MAX &&
          is_count (c, i))
        size->roles |= EM_ROLE_COUNT;
      else if (is_reference (c, i) || em_name_is_code (c, i) || is_of_wire (c, i) || is_of_product (c, i))
        size->roles |= EM_ROLE_REFERENCE;
    }
}
