/* em-clause: what the items of one sentence say of each other.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-clause.h"

#include "em-name.h"

#include <math.h>

#define MM_PER_INCH 25.4 /* NIST SP 811 */

/* The size told once more is rounded. */
static const double DUAL_SHARE = 0.03;

enum { EACH_MAX = 48 /* of one repair, counted by "each" */ };
enum { COUNT_MAX = 999, NOUN_WINDOW = 4, GLUE_WINDOW = 6, ROW_WINDOW = 16, DUAL_MAX = 4,
       ALIKE_RATIO = 20 /* two sizes of one thing differ by less */, ROUND_NOUN = 4 /* a bore or a pin by name */ };

/* Roles of sizes that no angle has. */
static const guint32 lengths = EM_ROLE_LENGTH | EM_ROLE_WIDTH | EM_ROLE_HEIGHT | EM_ROLE_DEPTH | EM_ROLE_THICKNESS |
                               EM_ROLE_DIAMETER | EM_ROLE_RADIUS;

/* Roles of what a repair measures across, as against how much is added. */
static const guint32 plan_roles = EM_ROLE_LENGTH | EM_ROLE_WIDTH | EM_ROLE_HEIGHT | EM_ROLE_DIAMETER;

gboolean
em_item_is_sign (const EmItems *items, guint index, gunichar sign)
{
  const EmItem *item = em_item (items, index);

  return item->type == EM_ITEM_SIGN && item->sign == sign;
}

gboolean
em_item_is_soft_break (const EmItems *items, guint index)
{
  const EmItem *item = em_item (items, index);
  const EmSense *glue;

  /* "(B) NICK" */
  if (item->type == EM_ITEM_SIGN && item->sign == '(' && index + 2 < items->items->len)
    return em_item (items, index + 1)->type != EM_ITEM_SIZE && em_item (items, index + 1)->type != EM_ITEM_SIGN &&
           em_item (items, index + 1)->length == 1 && em_item_is_sign (items, index + 2, ')');
  if (item->type == EM_ITEM_SIGN)
    return item->sign == ',' || (item->sign == '-' && (item->flags & EM_TOKEN_GLUED) == 0) || item->sign == '&' ||
           (item->sign == '+' && index + 1 < items->items->len && em_item (items, index + 1)->type != EM_ITEM_SIZE) ||
           (item->sign == '/' && (item->flags & EM_TOKEN_GLUED) == 0) || item->sign == 0x2022;
  glue = em_item_says (items, index, EM_SAYS_GLUE);
  return glue != NULL && g_strcmp0 (glue->value, "and") == 0;
}

gboolean
em_item_is_measure (const EmItems *items, guint index)
{
  return em_item (items, index)->type == EM_ITEM_SIZE &&
         (em_item_size (items, index)->roles & (EM_ROLE_COUNT | EM_ROLE_REFERENCE)) == 0;
}

static gboolean
is_glued (const EmItems *items, guint index)
{
  return (em_item (items, index)->flags & EM_TOKEN_GLUED) != 0;
}

guint
em_clause_before (const EmClause *c, guint i)
{
  for (guint limit = i; i-- > c->first && i + GLUE_WINDOW > limit;)
    if (!em_item_is_sign (c->items, i, ':') && !em_item_is_sign (c->items, i, '=') && !em_item_is_sign (c->items, i, '.') &&
        !em_item_is_sign (c->items, i, '#') &&
          !(em_item_is_sign (c->items, i, '-') && is_glued (c->items, i) && i + 1 < c->end && is_glued (c->items, i + 1)))
      return i;
  return c->end;
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
  is_tight = is_glued (items, x);
  is_head = i == c->first || em_item_is_soft_break (items, i - 1) || em_item_is_sign (items, i - 1, ':') ||
            em_clause_says (c, i - 1, EM_SAYS_VERB);
  if (next >= c->end)
    return is_tight;
  /* "edge 4 x damaged", "2 x ditto" */
  if (em_clause_says (c, next, EM_SAYS_SET) || em_clause_says (c, next, EM_SAYS_SAME))
    return TRUE;
  if (em_clause_is_size (c, next))
    return (is_tight && !is_glued (items, next) && em_item_size (items, next)->unit != EM_UNIT_DEGREE) ||
           (is_head && is_times_edge (c, i));
  return is_tight || is_head;
}

static const EmSense *
label_at (const EmClause *c, guint i, EmLabelPlace place)
{
  const EmItem *item = em_item (c->items, i);

  if (i >= c->end || item->type != EM_ITEM_PHRASE)
    return NULL;
  for (guint k = 0; k < item->phrase->n_senses; k++)
    {
      const EmSense *sense = item->phrase->sense[k];

      if (sense->says == EM_SAYS_LABEL && (sense->place == place || sense->place == EM_LABEL_EITHER))
        return sense;
    }
  return NULL;
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

/* "3 nicks", "2 worn shut-off corners": a whole number before the noun. */
static gboolean
is_before_noun (const EmClause *c, guint i)
{
  guint prior = em_clause_before (c, i);
  const EmSense *before = prior != c->end ? em_item_says (c->items, prior, EM_SAYS_LABEL) : NULL;

  /* "EJ SIDE: 3 PIN HOLES" */
  if (before != NULL && (before->roles & em_dimension_roles) == 0 && em_item_is_sign (c->items, i - 1, ':') &&
      em_clause_says (c, i + 1, EM_SAYS_KIND))
    return TRUE;
  if (prior != c->end && !em_item_is_sign (c->items, i - 1, '.') &&
      (em_clause_says (c, prior, EM_SAYS_TIMES) || em_clause_is_size (c, prior) ||
       (em_clause_says (c, prior, EM_SAYS_LABEL) && !em_clause_says (c, prior, EM_SAYS_GLUE) &&
        !em_clause_says (c, prior, EM_SAYS_VERB))))
    return FALSE;
  /* ", 4 cores." */
  if ((i == c->first || em_item_is_soft_break (c->items, i - 1) || em_item_is_sign (c->items, i - 1, '.')) &&
      em_clause_says (c, i + 1, EM_SAYS_PLACE) &&
      (i + 2 == c->end || em_item_is_soft_break (c->items, i + 2)))
    return TRUE;
  /* "on all 16 impressions" */
  if (i > c->first && em_clause_says (c, i - 1, EM_SAYS_ALL) && em_clause_says (c, i + 1, EM_SAYS_PLACE))
    return TRUE;
  for (guint k = i + 1; k < c->end && k <= i + NOUN_WINDOW; k++)
    {
      const EmSense *label = em_item_says (c->items, k, EM_SAYS_LABEL);

      /* "12 ID" is the bore's size. */
      if (k == i + 1 && em_clause_says (c, k, EM_SAYS_KIND) && label_at (c, k, EM_LABEL_AFTER) != NULL)
        return FALSE;
      if (em_clause_says (c, k, EM_SAYS_KIND) || em_clause_says (c, k, EM_SAYS_TOOLS))
        return TRUE;
      if (em_clause_says (c, k, EM_SAYS_THING) || em_clause_says (c, k, EM_SAYS_PLACE) ||
          (label != NULL && (label->roles & ~(EM_ROLE_WORN | EM_ROLE_BUILD)) == 0))
        continue;
      if (em_item (c->items, k)->type != EM_ITEM_UNKNOWN && !is_filler (c, k))
        return FALSE;
    }
  return FALSE;
}

/* "(x5)", "x5" at the head of a part, "pins x5". */
static gboolean
is_times_before (const EmClause *c, guint i)
{
  return i > c->first && em_clause_says (c, i - 1, EM_SAYS_TIMES) && is_glued (c->items, i) &&
         (i - 1 == c->first || em_item_is_sign (c->items, i - 2, '(') || em_item_is_soft_break (c->items, i - 2) ||
          (em_clause_says (c, i - 2, EM_SAYS_KIND) && !is_glued (c->items, i - 1)) ||
          (!em_clause_is_size (c, i - 2) && !is_glued (c->items, i - 1) &&
           (i + 1 == c->end || em_item_is_soft_break (c->items, i + 1))));
}

/* "Stück: 2": the number follows the word, so the one before it is no count. */
static gboolean
is_before_its_number (const EmClause *c, guint i)
{
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
                    em_item (c->items, i + 1)->length == 3 &&
                    g_ascii_strncasecmp (c->items->text + em_item (c->items, i + 1)->start, "are", 3) == 0;

  return (is_part || is_in || is_total || is_are) && has_count_before (c, i);
}

/* ", 2 of." for "2 off" */
static gboolean
is_misspelt_off (const EmClause *c, guint i)
{
  return i > c->first && em_item_is_soft_break (c->items, i - 1) && i + 2 == c->end && em_item (c->items, i + 1)->length == 2 &&
         g_ascii_strncasecmp (c->items->text + em_item (c->items, i + 1)->start, "of", 2) == 0;
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
         (label != NULL && (label->roles & (lengths | EM_ROLE_RADIUS)) != 0 && !em_clause_says (c, prior, EM_SAYS_QUANTITY));
}

static gboolean
is_count (const EmClause *c, guint i)
{
  const EmItems *items = c->items;
  guint prior = em_clause_before (c, i);
  gboolean is_bracketed = i > c->first && i + 1 < c->end && em_item_is_sign (items, i - 1, '(') &&
                          em_item_is_sign (items, i + 1, ')');
  guint next = is_bracketed ? i + 2 : i + 1;
  const EmSense *label = i > c->first && is_glued (items, i) ? em_item_says (items, i - 1, EM_SAYS_LABEL) : NULL;

  /* "Ø6 mal taladrado" */
  if (label != NULL && (label->roles & (EM_ROLE_DIAMETER | EM_ROLE_RADIUS)) != 0)
    return FALSE;

  if (is_measured_each (c, i, prior, next))
    return FALSE;
  if ((em_clause_says (c, next, EM_SAYS_PLACES) && !is_before_its_number (c, next) && !is_row_each (c, i, next)) ||
      (next < c->end && em_item_is_sign (c->items, next, '@')))
    return TRUE;
  if (prior != c->end && (em_clause_says (c, prior, EM_SAYS_QUANTITY) ||
                          (em_clause_says (c, prior, EM_SAYS_PLACES) && is_before_its_number (c, prior)) ||
                            (em_clause_says (c, prior, EM_SAYS_TYPICAL) && !em_clause_says (c, next, EM_SAYS_LABEL))))
    return TRUE;
  if (is_bracketed || is_times_before (c, i) || is_misspelt_off (c, i) || is_more_of_it (c, i))
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
  return is_times_count (c, i) || is_before_noun (c, i);
}

static gboolean
is_area (EmUnit unit)
{
  return unit == EM_UNIT_MM2 || unit == EM_UNIT_CM2 || unit == EM_UNIT_INCH2;
}

/* "(12.5)" is a reference size: for information only, never used (ASME Y14.5). */
static gboolean
is_reference (const EmClause *c, guint i)
{
  /* "texture right beside (1.5 mm)" */
  if (i > c->first + 1 && em_item_size (c->items, i)->unit != EM_UNIT_NONE &&
      (em_clause_says (c, i - 2, EM_SAYS_NEAR) || em_clause_says (c, i - 2, EM_SAYS_THING)))
    return FALSE;
  /* "0.500 (+.0005)" */
  if (i > c->first + 1 && i + 1 < c->end && em_item_is_sign (c->items, i - 2, '(') && em_item_is_sign (c->items, i + 1, ')') &&
      (em_item_is_sign (c->items, i - 1, '+') || em_item_is_sign (c->items, i - 1, '-')))
    return TRUE;
  return i > c->first && i + 1 < c->end && em_item_is_sign (c->items, i - 1, '(') && em_item_is_sign (c->items, i + 1, ')') &&
         !em_unit_is_hardness (em_item_size (c->items, i)->unit) && !is_area (em_item_size (c->items, i)->unit);
}

static void
use_name (const EmClause *c, guint i)
{
  em_item (c->items, i)->is_used = TRUE;
  if (em_item (c->items, i)->type == EM_ITEM_SIZE)
    em_item_size (c->items, i)->roles |= EM_ROLE_REFERENCE;
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
  use_name (c, all);
  return TRUE;
}

/* The size after it is the one at index once more, in the other unit and rounded. */
static gboolean
is_same_size (const EmClause *c, guint index, guint other)
{
  const EmSize *first = em_item_size (c->items, index), *second = em_item_size (c->items, other);
  double ratio = em_fraction_plain (second->value) / em_fraction_plain (first->value);

  return fabs (ratio / MM_PER_INCH - 1) < DUAL_SHARE || fabs (ratio * MM_PER_INCH - 1) < DUAL_SHARE;
}

/* ".200 LG [5.08], .040 X .040 [1.02 X 1.02]": sizes in brackets that say those before them once more, in the other unit. */
static void
mark_dual (const EmClause *c, guint open)
{
  guint inner[DUAL_MAX], outer[DUAL_MAX], n = 0, n_before = 0, close = open + 1;

  for (; close < c->end && !em_item_is_sign (c->items, close, ']'); close++)
    if (em_item (c->items, close)->type != EM_ITEM_SIZE && !em_clause_says (c, close, EM_SAYS_TIMES) &&
        !em_clause_says (c, close, EM_SAYS_UNIT) && !em_clause_says (c, close, EM_SAYS_LABEL))
      return;
    else if (em_item (c->items, close)->type == EM_ITEM_SIZE && n < DUAL_MAX)
      inner[n++] = close;
  for (guint i = open; i-- > c->first && n_before < n && i + ROW_WINDOW > open;)
    if (em_item_is_measure (c->items, i))
      outer[n_before++] = i;
  if (close == c->end || n == 0 || n_before != n)
    return;
  for (guint k = 0; k < n; k++)
    if (!is_same_size (c, outer[n - 1 - k], inner[k]))
      return;
  for (guint i = open; i < close; i++)
    use_name (c, i);
}

void
em_clause_mark_dual (const EmClause *c)
{
  for (guint i = c->first; i < c->end; i++)
    if (em_item_is_sign (c->items, i, '['))
      mark_dual (c, i);
}

static gboolean
is_bare_whole (const EmClause *c, guint i)
{
  const EmSize *size = em_item_size (c->items, i);

  return size->is_whole && size->unit == EM_UNIT_NONE && size->chain == 0;
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
                                                              em_item (c->items, i + 1)->type != EM_ITEM_SIZE) &&
         em_item_size (c->items, i)->value.n > em_item_size (c->items, i - 2)->value.n;
}

void
em_clause_mark_counts (const EmClause *c)
{
  for (guint i = c->first; i < c->end; i++)
    {
      EmSize *size;

      if (em_name_is (c, i))
        {
          /* "4R:" */
          if (i + 2 < c->end && is_glued (c->items, i + 1) && em_item (c->items, i + 1)->length == 1 &&
              em_item_is_sign (c->items, i + 2, ':'))
            em_item (c->items, i + 1)->is_used = TRUE;
          /* "R4:" */
          if (i > c->first && is_glued (c->items, i) && em_item (c->items, i - 1)->length == 1)
            em_item (c->items, i - 1)->is_used = TRUE;
          use_name (c, i);
        }
      /* "A=1.2" */
      if (em_item (c->items, i)->length == 1 && em_item (c->items, i)->type == EM_ITEM_UNKNOWN &&
          em_clause_is_size (c, i + 2) && em_item_is_sign (c->items, i + 1, '='))
        em_item (c->items, i)->is_used = TRUE;
      if (em_item (c->items, i)->type != EM_ITEM_SIZE || em_item (c->items, i)->is_used || mark_share (c, i))
        continue;
      if (em_name_is_clock (c, i))
        em_item (c->items, i)->is_talk = em_item (c->items, i + 2)->is_talk = TRUE;
      if (ends_range_of_parts (c, i))
        {
          use_name (c, i);
          use_name (c, i - 2);
        }
      size = em_item_size (c->items, i);
      if ((size->roles & (EM_ROLE_COUNT | EM_ROLE_REFERENCE | em_dimension_roles)) != 0)
        continue;
      if (size->is_whole && size->unit == EM_UNIT_NONE && size->value.n >= 1 && size->value.n <= COUNT_MAX && is_count (c, i))
        size->roles |= EM_ROLE_COUNT;
      else if (is_reference (c, i) || em_name_is_code (c, i))
        size->roles |= EM_ROLE_REFERENCE;
    }
}

void
em_clause_mark_chains (const EmClause *c)
{
  guint last = G_MAXUINT, times = G_MAXUINT;

  for (guint i = c->first; i < c->end; i++)
    {
      if (em_item_is_measure (c->items, i))
        {
          EmSize *size = em_item_size (c->items, i);

          if (last != G_MAXUINT && times != G_MAXUINT)
            {
              EmSize *before_size = em_item_size (c->items, last);

              if (before_size->chain == 0)
                before_size->chain = ++*c->n_chains;
              size->chain = before_size->chain;
              em_item (c->items, times)->is_used = TRUE;
            }
          last = i;
          times = G_MAXUINT;
        }
      else if (em_clause_says (c, i, EM_SAYS_TIMES) && last != G_MAXUINT && times == G_MAXUINT)
        times = i;
      else if (!em_clause_says (c, i, EM_SAYS_LABEL) && !em_clause_says (c, i, EM_SAYS_GLUE) &&
               !em_clause_says (c, i, EM_SAYS_APPROXIMATE) &&
               !em_clause_says (c, i, EM_SAYS_MINIMUM) && !em_clause_says (c, i, EM_SAYS_MAXIMUM) &&
                 !em_item_is_sign (c->items, i, '.'))
        last = times = G_MAXUINT;
      else if (em_item_is_soft_break (c->items, i))
        last = times = G_MAXUINT;
    }
}

/* State while labels of a clause are handed out. */
typedef struct
{
  const EmClause *c;
  guint           open;         /* size that a label right here would follow; G_MAXUINT: none */
  guint32         pending;      /* roles waiting for the next size */
  guint           pending_item;
  gboolean        has_finished; /* a word like "should be" was met */
} Labels;

static void
give (Labels *l, guint i, guint32 roles, guint label)
{
  EmSize *size = em_item_size (l->c->items, i);

  size->roles |= roles;
  if (label != G_MAXUINT)
    {
      size->label_item = size->label_item == G_MAXUINT32 ? label : size->label_item;
      em_item (l->c->items, label)->is_used = TRUE;
    }
}

/* "R0.4 OR R0.6": two sizes of which one is meant. */
static void
mark_either (const EmClause *c, guint or)
{
  guint first = or - 1, second = or + 1 + em_clause_says (c, or + 1, EM_SAYS_LABEL);
  EmSize *a, *b;

  if (or == c->first || em_item (c->items, or)->length != 2 ||
      g_ascii_strncasecmp (c->items->text + em_item (c->items, or)->start, "or", 2) != 0 ||
      !em_clause_is_size (c, first) || !em_clause_is_size (c, second))
    return;
  a = em_item_size (c->items, first);
  b = em_item_size (c->items, second);
  if (a->chain == 0 && b->chain == 0 && !em_unit_is_hardness (b->unit) && b->unit != EM_UNIT_DEGREE)
    a->is_either = b->is_either = TRUE;
}

/* The next size when only glue stands between; the clause's end otherwise. */
static guint
next_size (const EmClause *c, guint i)
{
  for (guint limit = i + GLUE_WINDOW; ++i < c->end && i <= limit;)
    {
      if (em_item_is_measure (c->items, i))
        return i;
      if (!em_clause_says (c, i, EM_SAYS_GLUE) && !em_clause_says (c, i, EM_SAYS_APPROXIMATE))
        return c->end;
    }
  return c->end;
}

/* More than is left to be machined, in whatever unit (common practice, no source). */
static gboolean
is_long (const EmSize *size)
{
  return em_fraction_plain (size->value) > (size->unit == EM_UNIT_INCH || (size->flags & EM_TOKEN_LEADING_DOT) != 0 ? 0.1 : 2);
}

/* Nothing of the row that the size at i is in comes behind it, and another size of it right before. */
static gboolean
is_last_of_row (const EmClause *c, guint i)
{
  return i >= c->first + 2 && em_clause_is_size (c, i - 2) &&
         em_item_size (c->items, i - 2)->chain == em_item_size (c->items, i)->chain &&
         (em_item_size (c->items, i - 2)->roles | em_item_size (c->items, i)->roles) == 0;
}

static gboolean
ends_in_point (const EmClause *c, guint i)
{
  const EmItem *item = em_item (c->items, i);

  return c->items->text[item->start + item->length - 1] == '.';
}

/* Whether the label at i names the size before it rather than the one after. */
static gboolean
follows (const Labels *l, guint i, const EmSense *sense)
{
  const EmClause *c = l->c;
  const EmSize *size;
  guint next;

  if (l->open == G_MAXUINT)
    return FALSE;
  size = em_item_size (c->items, l->open);
  if (i + 1 < c->end && (em_item_is_sign (c->items, i + 1, '=') ||
                         (em_item_is_sign (c->items, i + 1, ':') && sense->place != EM_LABEL_AFTER)))
    return FALSE;
  /* "1.5 mm draft 10 deg", "90° dia 8": no length is an angle. */
  if ((sense->roles & (EM_ROLE_DRAFT | EM_ROLE_ANGLE)) != 0 && size->unit != EM_UNIT_NONE && size->unit != EM_UNIT_DEGREE)
    return FALSE;
  if ((sense->roles & lengths) != 0 && size->unit == EM_UNIT_DEGREE)
    return FALSE;
  /* "35 x 10 low, 0.2 to add": a row is not what it is low by. */
  if (sense->roles == EM_ROLE_BUILD && size->chain != 0)
    return FALSE;
  /* "24 x 16 worn, 0.3 to add" */
  if (sense->roles == EM_ROLE_WORN && size->chain != 0 && is_last_of_row (c, l->open))
    return FALSE;
  /* "18 mm high to be built up 0.25 mm" */
  if (sense->roles == EM_ROLE_BUILD && (size->roles & plan_roles) != 0)
    return FALSE;
  /* "5 deep must go away" */
  if (sense->roles == EM_ROLE_CLEARANCE && (size->roles & em_dimension_roles) != 0)
    return FALSE;
  /* "weld over 0.1 for grinding": the little word led to no length. */
  if (sense->roles == EM_ROLE_STOCK && size->roles == EM_ROLE_LENGTH && i == l->open + 1 && size->label_item + 1 == l->open &&
      !is_long (size))
    return TRUE;
  /* "turned down to 2.340 for cleanup": what it is now is no stock. */
  if (sense->roles == EM_ROLE_STOCK && (size->roles & (EM_ROLE_WORN | EM_ROLE_DIAMETER)) != 0)
    return FALSE;
  /* "1/2 long, few thou deep": the deep one is another, which could not be read. */
  if (sense->place == EM_LABEL_AFTER && (sense->roles & em_dimension_roles) != 0 &&
      (size->roles & em_dimension_roles & ~sense->roles) != 0 && i > l->open + 2 &&
      size->label_item != G_MAXUINT32 && size->label_item > l->open)
    return FALSE;
  if (sense->place == EM_LABEL_AFTER)
    return TRUE;
  /* "40 mm. depth unknown": behind the unit's point another is told. */
  if (sense->place == EM_LABEL_BEFORE || ends_in_point (c, l->open))
    return FALSE;
  if ((sense->roles & em_dimension_roles) != 0 && (size->roles & em_dimension_roles & ~sense->roles) != 0)
    return FALSE;
  next = next_size (c, i);
  /* "back to R.010" */
  if (next == c->end && i + 2 < c->end && em_item_is_measure (c->items, i + 2) && label_at (c, i + 1, EM_LABEL_BEFORE) != NULL &&
      (sense->roles & em_dimension_roles) == 0)
    return FALSE;
  if (next == c->end || (next != i + 1 && (sense->roles & em_dimension_roles) != 0))
    return TRUE;
  if ((sense->roles & (EM_ROLE_WORN | EM_ROLE_FINISHED | EM_ROLE_BUILD)) != 0)
    return FALSE;
  if ((sense->roles & (EM_ROLE_DIAMETER | EM_ROLE_PER_SIDE | EM_ROLE_ON_DIAMETER)) != 0)
    return TRUE;
  /* "1.5 LENGTH .25 WIDTH": the next size has a label of its own behind it. */
  return next + 1 < c->end && label_at (c, next + 1, EM_LABEL_AFTER) != NULL;
}

static void
give_row (Labels *l, guint at, guint32 roles)
{
  guint32 chain = em_item_size (l->c->items, at)->chain;

  for (guint i = at + 1; chain != 0 && i-- > l->c->first && i + ROW_WINDOW > at;)
    if (em_item (l->c->items, i)->type == EM_ITEM_SIZE)
      {
        EmSize *size = em_item_size (l->c->items, i);

        if (size->chain != chain)
          break;
        if ((size->roles & em_dimension_roles) == 0)
          size->roles |= roles;
      }
}

static gboolean
is_building (const EmClause *c, guint i)
{
  const EmSense *verb = em_item_says (c->items, i, EM_SAYS_VERB);

  return verb != NULL && g_strcmp0 (verb->value, "build") == 0;
}

/* "auf 3,42 abgenutzt": the little word led to what it is now, not to a length. */
static void
drop_weak_length (const Labels *l, const EmSense *after)
{
  EmSize *size = em_item_size (l->c->items, l->open);

  if ((after->roles == EM_ROLE_WORN || after->roles == EM_ROLE_STOCK) && size->roles == EM_ROLE_LENGTH &&
      size->label_item != G_MAXUINT32 && em_clause_says (l->c, size->label_item, EM_SAYS_PREPOSITION))
    size->roles = 0;
}

static void
take_label (Labels *l, guint i)
{
  const EmSense *after = label_at (l->c, i, EM_LABEL_AFTER);
  const EmSense *prior = label_at (l->c, i, EM_LABEL_BEFORE);

  /* "EJ SIDE:" */
  if (i + 1 < l->c->end && em_item_is_sign (l->c->items, i + 1, ':') &&
      ((prior != NULL ? prior : after)->roles & ~(guint32) EM_ROLE_PER_SIDE) == 0)
    return;
  l->has_finished |= prior != NULL && (prior->roles & EM_ROLE_FINISHED) != 0;
  /* "R.03": glued to the size after it. */
  if (prior != NULL && i + 1 < l->c->end && em_item (l->c->items, i + 1)->type == EM_ITEM_SIZE &&
      (is_glued (l->c->items, i + 1) || (prior->place == EM_LABEL_BEFORE && after != NULL && after->place == EM_LABEL_AFTER)))
    after = NULL;
  if (after != NULL && follows (l, i, after))
    {
      drop_weak_length (l, after);
      give (l, l->open, after->roles & ~(guint32) EM_ROLE_LEGS, i);
      if ((after->roles & EM_ROLE_LEGS) != 0)
        give_row (l, l->open, EM_ROLE_LEG);
      return;
    }
  /* "should be 5.00, is 4.85": a little word says what is now only behind what shall be, and right before its size. */
  if (prior != NULL && prior->roles == EM_ROLE_WORN && em_clause_says (l->c, i, EM_SAYS_GLUE) &&
      (!l->has_finished || next_size (l->c, i) != i + 1))
    return;
  /* "hole for core pin", "the top edge": "for", "over" and "the top" lead to a length only right before it. */
  if (prior != NULL && prior->roles == EM_ROLE_LENGTH &&
      (prior->place == EM_LABEL_BEFORE || em_clause_says (l->c, i, EM_SAYS_PREPOSITION)) &&
      next_size (l->c, i) == l->c->end)
    return;
  /* "a deep pit": a word that follows its size and has none. */
  if (prior == NULL && next_size (l->c, i) == l->c->end)
    {
      em_item (l->c->items, i)->is_used |= l->c->end - l->c->first > 1 && i + 1 < l->c->end &&
        em_clause_says (l->c, i + 1, EM_SAYS_KIND);
      return;
    }
  /* "Kante 0,3 mm Radius", against "20 mm Kante": in front of its size the noun is only the noun. */
  if (prior == NULL && after->roles == EM_ROLE_LENGTH && em_clause_says (l->c, i, EM_SAYS_KIND))
    return;
  /* "thickness of rib 1.5": what the size is was told. */
  if (prior == NULL && (l->pending & em_dimension_roles) != 0)
    return;
  /* "takes away 1.5 mm", "worn round .04 R": what is away or round has its size before it. */
  if (prior == NULL && (after->roles == EM_ROLE_CLEARANCE ||
                        (after->roles & ~(guint32) (EM_ROLE_LARGE | EM_ROLE_SMALL)) == EM_ROLE_DIAMETER))
    return;
  if (prior == NULL)
    prior = after;
  if (l->pending != 0 && l->pending_item != G_MAXUINT)
    em_item (l->c->items, l->pending_item)->is_used = TRUE;
  /* NOLINTNEXTLINE(clang-analyzer-core.NullDereference): a label stands before its size or after it. */
  l->pending |= prior->roles | (is_building (l->c, i) && prior->roles == EM_ROLE_BUILD ? EM_ROLE_ADD : 0);
  l->pending_item = i;
  l->open = G_MAXUINT;
}

/* "over 1.5 wide": "over" leads to a length only where the size has no name of its own. */
static gboolean
is_weak (const Labels *l, guint i)
{
  const EmSense *after = label_at (l->c, i + 1, EM_LABEL_AFTER);

  return l->pending == EM_ROLE_LENGTH &&
         (em_clause_says (l->c, l->pending_item, EM_SAYS_PREPOSITION) ||
          em_clause_says (l->c, l->pending_item, EM_SAYS_ONE_OF)) && after != NULL &&
         (after->roles & em_dimension_roles) != 0;
}

/* "RIB CREST LOW: 1.200 LG": a size that says itself that it is a length or a width is no build-up or wear, whatever stands
 * before it. */
static gboolean
denies_build (const Labels *l, guint i)
{
  const EmSense *after = label_at (l->c, i + 1, EM_LABEL_AFTER);

  return after != NULL && (after->roles & (EM_ROLE_LENGTH | EM_ROLE_WIDTH)) != 0;
}

/* "edge of a 25 mm bore", "round the 1/2 hole": the size in front of what is round is how large it is. */
static gboolean
is_of_round (const EmClause *c, guint i)
{
  const EmSense *noun = i + 1 < c->end ? em_item_says (c->items, i + 1, EM_SAYS_KIND) : NULL;
  const EmSize *size = em_item_size (c->items, i);

  if (noun == NULL || noun->weight[BORE] + noun->weight[PIN] < ROUND_NOUN || em_clause_says (c, i + 1, EM_SAYS_LABEL))
    return FALSE;
  if (size->chain != 0 || size->unit == EM_UNIT_DEGREE || (size->unit == EM_UNIT_NONE && size->is_whole))
    return FALSE;
  /* "of the", "of a" may be one phrase or two. */
  return em_clause_says (c, i - 1, EM_SAYS_PREPOSITION) ||
         (i > c->first && em_item (c->items, i - 1)->type == EM_ITEM_PHRASE && em_clause_says (c, i - 2, EM_SAYS_PREPOSITION));
}

static void
take_size (Labels *l, guint i)
{
  EmSize *size = em_item_size (l->c->items, i);
  guint32 roles = l->pending & ~(guint32) (denies_build (l, i) ? EM_ROLE_BUILD | EM_ROLE_WORN | EM_ROLE_ADD | EM_ROLE_PER_SIDE
                                           : 0);
  gboolean keeps_legs = (roles & EM_ROLE_LEGS) != 0;

  /* "crack at rib root 22 long" */
  if ((roles & em_dimension_roles) == EM_ROLE_GAP && label_at (l->c, i + 1, EM_LABEL_AFTER) != NULL &&
      (label_at (l->c, i + 1, EM_LABEL_AFTER)->roles & plan_roles) != 0)
    {
      em_item (l->c->items, l->pending_item)->is_used = TRUE;
      roles = 0;
    }
  if (is_weak (l, i))
    roles = 0;
  /* "0.2 over 6 x 40": the row tells both. */
  if (size->chain != 0 && roles == EM_ROLE_LENGTH && em_clause_says (l->c, l->pending_item, EM_SAYS_PREPOSITION))
    roles = 0;
  /* "leave R.005": what radius is left, no stock. */
  if ((roles & EM_ROLE_STOCK) != 0 && (roles & EM_ROLE_RADIUS) != 0)
    roles = (roles & ~(guint32) EM_ROLE_STOCK) | EM_ROLE_FINISHED;
  /* "worn land 180 x 3": a row measures the thing, not its wear. */
  if (size->chain != 0 && (roles & (EM_ROLE_WORN | EM_ROLE_DIAMETER | EM_ROLE_RADIUS)) == EM_ROLE_WORN)
    roles &= ~(guint32) EM_ROLE_WORN;
  /* "build up 20 x 10", but "low .018 x .062 wide" */
  if (size->chain != 0 && !(em_clause_says (l->c, i + 1, EM_SAYS_TIMES) && i + 3 < l->c->end &&
                            label_at (l->c, i + 3, EM_LABEL_AFTER) != NULL))
    roles &= ~(guint32) (EM_ROLE_BUILD | EM_ROLE_ADD);

  /* "an area of 20 by 35 mm": a row, or a size of a length's unit, is none. */
  if (size->chain != 0 || (size->unit != EM_UNIT_NONE && !is_area (size->unit)))
    roles &= ~(guint32) EM_ROLE_AREA;
  if (keeps_legs)
    roles = (roles & ~(guint32) EM_ROLE_LEGS) | EM_ROLE_LEG;
  if (roles != 0)
    give (l, i, roles, l->pending_item);
  else if (is_of_round (l->c, i))
    size->roles |= EM_ROLE_DIAMETER;
  l->pending = keeps_legs ? EM_ROLE_LEGS : 0;
  l->open = i;
  if (em_unit_is_hardness (size->unit))
    size->roles |= EM_ROLE_HARDNESS;
  if (is_area (size->unit))
    size->roles |= EM_ROLE_AREA;
}

static void
take_bound (Labels *l, guint i)
{
  static const struct { EmSays says; const char *reason; } bounds[] = {
    { EM_SAYS_APPROXIMATE, "approximate" }, { EM_SAYS_MINIMUM, "minimum" }, { EM_SAYS_MAXIMUM, "maximum" },
  };
  guint next = next_size (l->c, i), at = l->open != G_MAXUINT ? l->open : next;

  for (gsize k = 0; k < G_N_ELEMENTS (bounds); k++)
    if (em_clause_says (l->c, i, bounds[k].says))
      {
        if (k == 0 && next != l->c->end)
          at = next;
        em_item (l->c->items, i)->is_used = TRUE;
        if (at != l->c->end && at != G_MAXUINT && em_item_size (l->c->items, at)->reason == NULL)
          em_item_size (l->c->items, at)->reason = bounds[k].reason;
      }
}

/* "weld .4 mm", but not "weld 6 mm edge", "weld 10 mm long" or "weld 20 x 10". */
static void
take_weld (const EmClause *c, guint i)
{
  guint next = next_size (c, i);

  if (next != i + 1 || next == c->end || em_item_size (c->items, next)->chain != 0 ||
      em_item_size (c->items, next)->unit == EM_UNIT_DEGREE ||
      em_clause_says (c, next + 1, EM_SAYS_LABEL) || em_clause_says (c, next + 1, EM_SAYS_KIND) ||
        em_clause_says (c, next + 1, EM_SAYS_PLACE) || em_clause_says (c, next + 1, EM_SAYS_THING))
    return;
  em_item_size (c->items, next)->roles |= EM_ROLE_WELD;
}

/* "6 Stk.: 10,00": a word of counting beside its count is no label. */
static gboolean
is_count_word (const EmClause *c, guint i)
{
  return em_clause_says (c, i, EM_SAYS_PLACES) && i > c->first && em_clause_is_size (c, i - 1) &&
         (em_item_size (c->items, i - 1)->roles & EM_ROLE_COUNT) != 0;
}

/* "auf 35 mm Länge": right behind the size stands what it measures. */
static gboolean
names_itself (const EmClause *c, guint size)
{
  const EmSense *after = label_at (c, size + 1, EM_LABEL_AFTER);

  return after != NULL && (after->roles & (EM_ROLE_LENGTH | EM_ROLE_WIDTH | EM_ROLE_DEPTH | EM_ROLE_HEIGHT)) != 0;
}

void
em_clause_mark_labels (const EmClause *c)
{
  Labels l = { c, G_MAXUINT, 0, G_MAXUINT, FALSE };

  for (guint i = c->first; i < c->end; i++)
    {
      const EmItem *item = em_item (c->items, i);

      mark_either (c, i);
      if (em_item_is_measure (c->items, i))
        take_size (&l, i);
      else if (item->type == EM_ITEM_SIZE)
        l.open = G_MAXUINT;
      else if (em_item_is_soft_break (c->items, i))
        {
          l.open = G_MAXUINT;
          l.pending = 0;
        }
      /* "worn to 3.42 (length 6)" */
      else if (em_item_is_sign (c->items, i, '(') && em_clause_says (c, i + 1, EM_SAYS_LABEL) && em_clause_is_size (c, i + 2))
        l.open = G_MAXUINT;
      else if (em_clause_says (c, i, EM_SAYS_LABEL) && item->is_used && item->length == 1)
        l.open = G_MAXUINT;
      else if (em_clause_says (c, i, EM_SAYS_LABEL) && !is_count_word (c, i))
        take_label (&l, i);
      else if (em_clause_says (c, i, EM_SAYS_APPROXIMATE) || em_clause_says (c, i, EM_SAYS_MINIMUM) ||
               em_clause_says (c, i, EM_SAYS_MAXIMUM))
        take_bound (&l, i);
      else if (is_building (c, i))
        {
          /* "Metal to add: 0.4" */
          guint next = next_size (c, i + 1 < c->end && em_item_is_sign (c->items, i + 1, ':') ? i + 1 : i);

          /* "ADD .030": the size right after the verb is metal to add, unless it begins a row of sizes. */
          if (next != c->end && (em_item_size (c->items, next)->chain == 0))
            em_item_size (c->items, next)->roles |= EM_ROLE_BUILD | EM_ROLE_ADD;
          /* "0,3 auftragen", ".010 buildup": the verb behind its size. */
          if (next == c->end && l.open != G_MAXUINT && em_item_size (c->items, l.open)->chain == 0 &&
              (em_item_size (c->items, l.open)->roles & em_dimension_roles) == 0)
            em_item_size (c->items, l.open)->roles |= EM_ROLE_BUILD | EM_ROLE_ADD;
          else if (next == c->end && l.open != G_MAXUINT && em_item_size (c->items, l.open)->roles == EM_ROLE_HEIGHT)
            em_item_size (c->items, l.open)->roles |= EM_ROLE_ADD;
          else
            l.open = G_MAXUINT;
        }
      else if (em_clause_says (c, i, EM_SAYS_VERB) && !em_clause_says (c, i, EM_SAYS_PLACES))
        take_weld (c, i);
      else if (em_clause_says (c, i, EM_SAYS_TO) && l.open != G_MAXUINT && i + 1 < c->end && em_item_is_measure (c->items, i + 1))
        {
          /* "⌀1.25 TO 1.00": two of the same, unless far apart, "Radius 0,2 auf 55 mm", or the second says what it is. */
          if (!names_itself (c, i + 1) && em_fraction_plain (em_item_size (c->items, i + 1)->value) <
              ALIKE_RATIO * em_fraction_plain (em_item_size (c->items, l.open)->value))
            {
              l.pending |= em_item_size (c->items, l.open)->roles & (EM_ROLE_DIAMETER | EM_ROLE_RADIUS);
              l.pending_item = i;
            }
          l.open = G_MAXUINT;
        }
      /* "dia 20 to dia 16" */
      else if (em_clause_says (c, i, EM_SAYS_TO) && em_clause_says (c, i + 1, EM_SAYS_LABEL) && em_clause_is_size (c, i + 2) &&
               l.open != G_MAXUINT && em_clause_says (c, l.open - 1, EM_SAYS_LABEL))
        l.open = G_MAXUINT;
      else if (em_clause_says (c, i, EM_SAYS_TIMES))
        l.open = G_MAXUINT;
      else if (em_clause_says (c, i, EM_SAYS_KIND) || em_clause_says (c, i, EM_SAYS_PREPOSITION) || item->type == EM_ITEM_UNKNOWN)
        {
          l.open = G_MAXUINT;
          l.pending &= ~(guint32) (EM_ROLE_BUILD | EM_ROLE_STOCK);
        }
    }
}
