/* em-labels-told: what is told of a size otherwise than by a label beside it: twice and differently, so much under or over, in a part of its own.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-labels-parts.h"

#include "em-report.h"

#include <string.h>

/* Wear makes nothing wider than this many times (common practice, no source). */
static const double TWIN_FAR = 1.25;

enum
{
  PAPER_WINDOW = 8,      /* items from "but" to the size and the paper that tells it */
  ROW_WINDOW = 16,
  ROUND_NOUN = 4,        /* a bore or a pin by name */
  NEAR_WINDOW = 5,
  ROW_MAX = 3            /* sizes of a row */
};

static void
leave_open (EmSize *a, EmSize *b)
{
  if (a->chain == 0 && b->chain == 0 && !em_unit_is_hardness (b->unit) && b->unit != EM_UNIT_DEGREE)
    a->is_either = b->is_either = TRUE;
}

/* The size within a few items of i in that direction, which a paper or a sketch tells as its words say; G_MAXUINT: none. */
static guint
size_by_paper (const EmClause *c, guint i, int step)
{
  guint size = G_MAXUINT;
  gboolean has_paper = FALSE;

  for (guint k = i + step, n = 0; k >= c->first && k < c->end && n < PAPER_WINDOW && !em_item_is_sign (c->items, k, '.'); k += step, n++)
    {
      if (em_clause_is_size (c, k) && size != G_MAXUINT)
        break;
      if (em_clause_is_size (c, k))
        size = k;
      has_paper |= em_report_is (c->items, k);
    }
  return has_paper ? size : G_MAXUINT;
}

/* "LENGTH .08 ON TAG BUT .12 ON SKETCH": told twice, and otherwise. */
static void
mark_contradiction (const EmClause *c, guint but)
{
  static const char *const words[] = { "but", "vs", "versus", "and", ",", "while", "aber", "mais", "pero", "und", "y", "et" };
  guint first, second;

  if (!em_item_is_any_word_of (c->items, but, words, G_N_ELEMENTS (words)))
    return;
  first = size_by_paper (c, but, -1);
  second = size_by_paper (c, but, 1);
  if (first == G_MAXUINT || second == G_MAXUINT)
    return;
  leave_open (em_item_size (c->items, first), em_item_size (c->items, second));
  em_item_size (c->items, second)->roles |= em_item_size (c->items, first)->roles & em_dimension_roles;
}

/* "NICK .18 LG X .03 X .03 (.22 LG ON SKETCH)": told otherwise on paper. */
static void
mark_bracket (const EmClause *c, guint bracket)
{
  guint size = bracket + 1, label = bracket + 2, end = label;
  gboolean has_paper = FALSE;

  if (!em_item_is_sign (c->items, bracket, '(') || !em_clause_is_size (c, size) || !em_clause_says (c, label, EM_SAYS_LABEL))
    return;
  for (; end < c->end && end < bracket + PAPER_WINDOW && !em_item_is_sign (c->items, end, ')'); end++)
    has_paper |= em_report_is (c->items, end);
  for (guint k = bracket; has_paper && k-- > c->first && k + ROW_WINDOW > bracket;)
    if (em_clause_is_size (c, k) && em_item_size (c->items, k)->label_item != G_MAXUINT32 &&
        em_item (c->items, em_item_size (c->items, k)->label_item)->phrase == em_item (c->items, label)->phrase)
      {
        /* The label names it, also within a row. */
        em_item_size (c->items, k)->is_either = em_item_size (c->items, size)->is_either = TRUE;
        for (guint i = label; i < end; i++)
          em_item (c->items, i)->is_used = TRUE;
        return;
      }
}

/* "R0.4 OR R0.6": two sizes of which one is meant. */
static void
mark_either (const EmClause *c, guint or)
{
  static const char *const words[] = { "or", "oder", "ou" };
  guint first = or - 1, second = or + 1 + em_clause_says (c, or + 1, EM_SAYS_LABEL);
  EmSize *a, *b;

  if (or == c->first || !em_item_is_any_word_of (c->items, or, words, G_N_ELEMENTS (words)) ||
      !em_clause_is_size (c, first) || !em_clause_is_size (c, second))
    return;
  a = em_item_size (c->items, first);
  b = em_item_size (c->items, second);
  leave_open (a, b);
}

/* "worn .004 over", where nothing follows that it may be over: "worn 0.1 over 12" */
static gboolean
is_over (const EmClause *c, guint i)
{
  static const char *const over[] = { "over", "over size", "over nominal", "too big", "too large", "zu groß", "trop grand", "demasiado grande" };

  return em_item_is_any_word_of (c->items, i, over, G_N_ELEMENTS (over)) &&
         (i + 1 >= c->end || em_item_is_soft_break (c->items, i + 1) || em_item_is_sign (c->items, i + 1, '.') ||
          em_item_is_sign (c->items, i + 1, ')'));
}

/* "the guide shaft 16 mm is 0.08 under": of a pin or shaft told before. */
static gboolean
is_pin_under (const EmClause *c, guint size)
{
  const EmSense *is = em_clause_says (c, size - 1, EM_SAYS_LABEL) ? em_item_says (c->items, size - 1, EM_SAYS_LABEL) : NULL;

  if (is == NULL || (is->roles & EM_ROLE_WORN) == 0)
    return FALSE;
  for (guint k = size; k-- > c->first && k + NEAR_WINDOW > size && !em_item_is_soft_break (c->items, k);)
    {
      const EmSense *noun = em_item_says (c->items, k, EM_SAYS_KIND);

      if (noun != NULL)
        return noun->weight[PIN] > 0 && noun->weight[FACE] + noun->weight[SIDEWALL] == 0;
    }
  return FALSE;
}

/* "worn .004 under": machinists tell wear so of the diameter (common practice, no source), unless it is per side. */
static void
mark_under (const EmClause *c, guint i)
{
  static const char *const under[] = { "under", "untermaßig", "untermassig", "Untermaß", "Untermass", "unter Maß", "unter Nennmaß",
                                       "sous cote", "bajo medida" };
  EmSize *size = i > c->first && em_item_is_measure (c->items, i - 1) ? em_item_size (c->items, i - 1) : NULL;

  /* "0,06 untermaßig" needs no other word of wear. */
  if (size == NULL || (size->roles & EM_ROLE_PER_SIDE) != 0 || (!(size->roles & EM_ROLE_WORN) && !is_pin_under (c, i - 1) && (em_item_is_word (c->items, i, "under") || is_over (c, i))) ||
      size->chain != 0 ||
      !(em_item_is_any_word_of (c->items, i, under, G_N_ELEMENTS (under)) || is_over (c, i)) ||
      (em_clause_label_at (c, i + 1, EM_LABEL_AFTER) != NULL && !em_clause_is_size (c, i + 2)))
    return;
  size->roles |= EM_ROLE_ON_DIAMETER | EM_ROLE_WORN;
  em_item (c->items, i)->is_used = TRUE;
}

/* "needs 0.2, on the dia", "build up 0.1, per side": in a part of its own, said of what is to be added before it. */
static void
mark_side_behind (const EmClause *c, guint i)
{
  const EmSense *label = em_item_says (c->items, i, EM_SAYS_LABEL);

  if (label == NULL || (label->roles != EM_ROLE_ON_DIAMETER && label->roles != EM_ROLE_PER_SIDE) || i < c->first + 2 ||
      !em_item_is_sign (c->items, i - 1, ',') || (i + 1 < c->end && !em_item_is_soft_break (c->items, i + 1) && !em_item_is_sign (c->items, i + 1, '.')))
    return;
  for (guint k = i - 1; k-- > c->first && k + NEAR_WINDOW > i;)
    if (em_item (c->items, k)->type == EM_ITEM_SIZE)
      {
        EmSize *size = em_item_size (c->items, k);

        if ((size->roles & (EM_ROLE_BUILD | EM_ROLE_ADD)) != 0 && (size->roles & (EM_ROLE_PER_SIDE | EM_ROLE_ON_DIAMETER | em_dimension_roles)) == 0)
          {
            size->roles |= label->roles;
            em_item (c->items, i)->is_used = TRUE;
          }
        return;
      }
    else if (em_item_is_soft_break (c->items, k))
      return;
}

/* "height of rib is 0.4 too low", "Höhe 0,4 zu niedrig": by how much it is, and no height. */
static void
mark_too_low (const EmClause *c, guint i)
{
  static const char *const words[] = { "too low", "too short", "low", "short", "zu niedrig", "zu tief", "zu kurz", "trop bas", "trop court", "demasiado bajo", "demasiado corto" };
  EmSize *size = i > c->first && em_item_is_measure (c->items, i - 1) ? em_item_size (c->items, i - 1) : NULL;

  if (size == NULL || size->roles == 0 || (size->roles & ~(guint32) (EM_ROLE_HEIGHT | EM_ROLE_WORN)) != 0 || (size->roles & EM_ROLE_HEIGHT) == 0 || size->chain != 0 ||
      !em_item_is_any_word_of (c->items, i, words, G_N_ELEMENTS (words)))
    return;
  size->roles = EM_ROLE_BUILD;
  em_item (c->items, i)->is_used = TRUE;
}

/* "Nut 4,0 ist 4,25", "slot 8 now 8.2": of two sizes almost alike the one before the word is what it should be. */
static void
mark_was (const EmClause *c, guint i)
{
  static const char *const words[] = { "is", "ist", "now", "is now", "jetzt", "ist jetzt", "misst", "measures", "est", "es", "mide", "ahora", "maintenant" };
  const EmSense *noun = i > c->first + 1 ? em_item_says (c->items, i - 2, EM_SAYS_KIND) : NULL;
  EmSize *was, *is;
  double ratio;

  if (noun == NULL || noun->weight[RECESS] + noun->weight[GROOVE] == 0 || !em_item_is_any_word_of (c->items, i, words, G_N_ELEMENTS (words)) ||
      !em_item_is_measure (c->items, i - 1) || i + 1 >= c->end || !em_item_is_measure (c->items, i + 1))
    return;
  was = em_item_size (c->items, i - 1);
  is = em_item_size (c->items, i + 1);
  ratio = em_fraction_plain (is->value) / em_fraction_plain (was->value);
  if (was->roles != 0 || was->chain != 0 || is->chain != 0 || ratio <= 1 || ratio > TWIN_FAR)
    return;
  was->roles = EM_ROLE_WIDTH | EM_ROLE_FINISHED;
  was->reason = "from-words";
}

/* "hole for 1/4 dowel": as wide as what it is for. */
static void
mark_partner (const EmClause *c, guint i)
{
  static const char *const words[] = { "for", "for a", "for the", "für", "für einen", "für den", "para", "para un", "pour", "pour un" };
  const EmSense *pin = em_clause_says (c, i, EM_SAYS_KIND) ? em_item_says (c->items, i, EM_SAYS_KIND) : NULL;
  EmSize *size = i > c->first + 1 && em_item_is_measure (c->items, i - 1) ? em_item_size (c->items, i - 1) : NULL;

  if (pin == NULL || size == NULL || pin->weight[PIN] < ROUND_NOUN || (size->roles & ~(guint32) EM_ROLE_LENGTH) != 0 || size->chain != 0 ||
      !em_item_is_any_word_of (c->items, i - 2, words, G_N_ELEMENTS (words)))
    return;
  /* "for" may name a length, too. */
  size->roles = EM_ROLE_DIAMETER;
  size->reason = "from-words";
}

/* "Kernstift, 10er", "der 8er Stift": a bore or pin is called by its diameter. */
static void
mark_so_wide (const EmClause *c, guint i)
{
  EmSize *size = i > c->first && em_item_is_measure (c->items, i - 1) ? em_item_size (c->items, i - 1) : NULL;
  const EmSense *before, *after;

  if (size == NULL || size->unit != EM_UNIT_NONE || size->chain != 0 || !em_item_is_word (c->items, i, "er") || !em_item_is_glued (c->items, i))
    return;
  after = i + 1 < c->end ? em_item_says (c->items, i + 1, EM_SAYS_KIND) : NULL;
  before = i > c->first + 1 ? em_item_says (c->items, i - 2 - (i > c->first + 2 && em_item_is_sign (c->items, i - 2, ',')), EM_SAYS_KIND) : NULL;
  if ((after == NULL || after->weight[BORE] + after->weight[PIN] < ROUND_NOUN) &&
      (before == NULL || before->weight[BORE] + before->weight[PIN] < ROUND_NOUN))
    return;
  size->roles |= EM_ROLE_DIAMETER;
  em_item (c->items, i)->is_used = TRUE;
}

/* "30 x 12 (length x height)": what the sizes of the row are, in its order. */
static void
mark_row_names (const EmClause *c, guint bracket)
{
  guint n = 0, end = bracket + 1, first = bracket;

  if (!em_item_is_sign (c->items, bracket, '(') || bracket == c->first || !em_clause_is_size (c, bracket - 1))
    return;
  while (end < c->end && n < ROW_MAX && em_clause_says (c, end, EM_SAYS_LABEL))
    {
      n++;
      end++;
      if (end < c->end && (em_clause_says (c, end, EM_SAYS_TIMES) || em_item_is_sign (c->items, end, '/')))
        end++;
    }
  if (n < 2 || end >= c->end || !em_item_is_sign (c->items, end, ')'))
    return;
  for (guint k = n, at = end - 1; k > 0 && first > c->first; k--, at -= 2)
    {
      EmSize *size = em_clause_is_size (c, first - 1) ? em_item_size (c->items, first - 1) : NULL;
      guint32 roles = em_item_says (c->items, at, EM_SAYS_LABEL) != NULL ? em_item_says (c->items, at, EM_SAYS_LABEL)->roles & em_dimension_roles : 0;

      if (size == NULL || size->chain == 0 || roles == 0)
        return;
      size->roles = (size->roles & ~em_dimension_roles) | roles;
      size->label_item = at;
      em_item (c->items, at)->is_used = TRUE;
      first -= 2;
    }
}

void
em_labels_mark_told (const EmClause *c, guint i)
{
  mark_row_names (c, i);
  mark_either (c, i);
  mark_contradiction (c, i);
  mark_bracket (c, i);
  mark_under (c, i);
  mark_side_behind (c, i);
  mark_too_low (c, i);
  mark_so_wide (c, i);
  mark_partner (c, i);
  mark_was (c, i);
}
