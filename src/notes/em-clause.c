/* em-clause: what the items of one sentence say of each other.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-clause.h"

#include <math.h>
#include <string.h>

#define MM_PER_INCH 25.4 /* NIST SP 811 */

/* The size told once more is rounded. */
static const double DUAL_SHARE = 0.03;

enum { GLUE_WINDOW = 6, ROW_WINDOW = 16, DUAL_MAX = 4, FACE_WINDOW = 5, ROW_RATIO = 4 };

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

gboolean
em_item_is_part_number (const EmItems *items, guint index)
{
  const EmItem *item = em_item (items, index);
  guint part = index;

  if (item->type != EM_ITEM_SIZE || item->length > 2 || index == 0 || index + 1 >= items->items->len || em_item_says (items, index + 1, EM_SAYS_KIND) == NULL)
    return FALSE;
  do
    {
      const EmSize *size = em_item_size (items, part);

      if (!size->is_whole || size->unit != EM_UNIT_NONE || size->chain != 0)
        return FALSE;
      part -= part >= 2 && em_item_is_sign (items, part - 1, '/') && em_item (items, part - 2)->type == EM_ITEM_SIZE ? 2 : 1;
    }
  while (part > 0 && em_item (items, part)->type == EM_ITEM_SIZE);
  return em_item_says (items, part, EM_SAYS_PLACE) != NULL && em_item_says (items, part, EM_SAYS_LABEL) == NULL;
}

gboolean
em_item_is_few_of (const EmItems *items, guint index)
{
  enum { FEW = 9 };
  const EmItem *item = em_item (items, index), *before = index > 0 ? em_item (items, index - 1) : NULL;
  const EmSize *size;

  if (item->type != EM_ITEM_SIZE || index + 1 >= items->items->len || em_item_says (items, index + 1, EM_SAYS_KIND) == NULL)
    return FALSE;
  size = em_item_size (items, index);
  if (!size->is_whole || size->n_decimals > 0 || size->unit != EM_UNIT_NONE || size->chain != 0 || size->value.n > FEW)
    return FALSE;
  return before == NULL || before->type == EM_ITEM_LINE || em_item_is_sign (items, index - 1, ':') || em_item_is_sign (items, index - 1, ';') ||
         em_item_is_sign (items, index - 1, '.') || em_item_is_soft_break (items, index - 1);
}

guint
em_clause_before (const EmClause *c, guint i)
{
  for (guint limit = i; i-- > c->first && i + GLUE_WINDOW > limit;)
    if (!em_item_is_sign (c->items, i, ':') && !em_item_is_sign (c->items, i, '=') && !em_item_is_sign (c->items, i, '.') &&
        !em_item_is_sign (c->items, i, '#') &&
          !(em_item_is_sign (c->items, i, '-') && em_item_is_glued (c->items, i) && i + 1 < c->end && em_item_is_glued (c->items, i + 1)))
      return i;
  return c->end;
}

const EmSense *
em_clause_label_at (const EmClause *c, guint i, EmLabelPlace place)
{
  const EmItem *item = em_item (c->items, i);

  if (i >= c->end || item->type != EM_ITEM_PHRASE)
    return NULL;
  if (em_clause_is_times_of_row (c, i))
    return NULL;
  for (guint k = 0; k < item->phrase->n_senses; k++)
    {
      const EmSense *sense = item->phrase->sense[k];

      if (sense->says == EM_SAYS_LABEL && (sense->place == place || sense->place == EM_LABEL_EITHER))
        return sense;
    }
  return NULL;
}

gboolean
em_clause_is_after_name (const EmClause *c, guint i)
{
  const EmSense *label = i >= c->first + 2 && em_item_is_sign (c->items, i - 1, '(') && em_clause_says (c, i - 2, EM_SAYS_LABEL)
                         ? em_item_says (c->items, i - 2, EM_SAYS_LABEL) : NULL;

  return label != NULL && i + 1 < c->end && em_item_is_sign (c->items, i + 1, ')') && (label->roles & em_length_roles) != 0 &&
         !em_clause_is_size (c, i - 3);
}

void
em_clause_use_name (const EmClause *c, guint i)
{
  em_item (c->items, i)->is_used = TRUE;
  if (em_item (c->items, i)->type == EM_ITEM_SIZE)
    em_item_size (c->items, i)->roles |= EM_ROLE_REFERENCE;
}

/* The size after it is the one at index once more, in the other unit and rounded. */
static gboolean
is_same_size (const EmClause *c, guint index, guint other)
{
  const EmSize *first = em_item_size (c->items, index), *second = em_item_size (c->items, other);
  double ratio = em_fraction_plain (second->value) / em_fraction_plain (first->value);
  /* ".03 [0.8]": rounded to its last place. */
  double rounding = 0.5 * pow (10, -(int) second->n_decimals);

  if (second->n_decimals > 0 && fabs (em_fraction_plain (first->value) * MM_PER_INCH - em_fraction_plain (second->value)) <= rounding)
    return TRUE;
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
    em_clause_use_name (c, i);
}

gboolean
em_item_is_per (const EmItems *items, guint index)
{
  static const char *const per[] = { "per", "each", "each one", "every", "jede", "jeder", "jedem", "jedes", "je", "jeweils", "pro", "par", "por", "cada", "chaque", "chacun", "chacune", "cada uno", "cada una", "par empreinte", "par cavité", "por cavidad", "pro Nest", "je Nest", "pro Kavität", "per cavity" };

  /* "2 corners/insert" */
  if (index > 1 && index + 1 < items->items->len && em_item_is_sign (items, index, '/') && em_item_says (items, index + 1, EM_SAYS_PLACE) != NULL &&
      (em_item_says (items, index - 1, EM_SAYS_KIND) != NULL || em_item_says (items, index - 1, EM_SAYS_PLACES) != NULL) &&
      (em_item (items, index - 2)->type == EM_ITEM_SIZE || em_item_says (items, index - 2, EM_SAYS_NUMBER) != NULL))
    return TRUE;
  /* "2 Schieber à 3 Stifte" */
  if (index > 1 && index + 1 < items->items->len && em_item_is_word (items, index, "à") && em_item_says (items, index - 1, EM_SAYS_PLACE) != NULL &&
      em_item (items, index - 2)->type == EM_ITEM_SIZE && em_item (items, index + 1)->type == EM_ITEM_SIZE)
    return TRUE;
  return em_item_is_any_word_of (items, index, per, G_N_ELEMENTS (per));
}

gboolean
em_item_is_each_alone (const EmItems *items, guint index)
{
  static const char *const each[] = { "each", "each one", "ea", "apiece", "jeweils", "chacun", "chacune", "sur chacun", "sur chacune", "cada uno", "cada una", "en cada uno", "en cada una", "c/u" };

  return em_item_is_any_word_of (items, index, each, G_N_ELEMENTS (each));
}

gboolean
em_item_is_all (const EmItems *items, guint index)
{
  static const char *const all[] = { "all", "alle", "allen", "aller", "todos los", "todas las", "todos", "todas", "tous les", "toutes les", "tous", "toutes" };

  return em_item_is_any_word_of (items, index, all, G_N_ELEMENTS (all));
}

gboolean
em_item_is_of_face (const EmItems *items, guint index)
{
  const EmSense *face = NULL, *label = em_item_says (items, index, EM_SAYS_LABEL);

  if (label == NULL || (label->roles & EM_ROLE_DIAMETER) == 0 || em_item_says (items, index, EM_SAYS_KIND) == NULL ||
      index + 1 >= items->items->len || !em_item_is_measure (items, index + 1))
    return FALSE;
  /* "seal land: OD 1.25, ID 1.00" */
  for (guint i = index; i-- > 0 && i + FACE_WINDOW >= index && face == NULL;)
    {
      const EmSense *other = em_item_says (items, i, EM_SAYS_LABEL);

      if (em_item (items, i)->type == EM_ITEM_SIGN || em_item (items, i)->type == EM_ITEM_SIZE ||
          (em_item_says (items, i, EM_SAYS_KIND) == NULL &&
           (em_item_says (items, i, EM_SAYS_PLACE) != NULL || em_item_says (items, i, EM_SAYS_PREPOSITION) != NULL)) ||
          (other != NULL && (other->roles & EM_ROLE_DIAMETER) != 0 && em_item_says (items, i, EM_SAYS_KIND) != NULL) ||
          (other != NULL && other->roles == EM_ROLE_BUILD && em_item_says (items, i, EM_SAYS_KIND) == NULL) /* "face 0.3 low, OD 40" */)
        continue;
      face = em_item_says (items, i, EM_SAYS_KIND);
      if (face == NULL)
        return FALSE;
    }
  return face != NULL && face->weight[FACE] + face->weight[WORN_CORNER] > 0 && face->weight[PIN] + face->weight[BORE] == 0;
}

void
em_clause_mark_dual (const EmClause *c)
{
  for (guint i = c->first; i < c->end; i++)
    if (em_item_is_sign (c->items, i, '['))
      mark_dual (c, i);
}

/* "60 ID by 0.15 per side": by how much, and no row. */
static gboolean
is_by_how_much (const EmClause *c, guint times, guint size)
{
  const EmSense *label = em_clause_label_at (c, size + 1, EM_LABEL_AFTER);

  return em_item_is_word (c->items, times, "by") && label != NULL && (label->roles & (EM_ROLE_PER_SIDE | EM_ROLE_ON_DIAMETER)) != 0;
}

/* French "2,5 sur 0,8 sur 0,6", "3 mm sur 0,5 et 0,4": a row of three; i: "sur" or the "et". */
static gboolean
is_sur_of_three (const EmClause *c, guint i)
{
  guint sur = i;

  if (i < c->first + 1 || i + 1 >= c->end || !em_clause_is_size (c, i - 1) || !em_clause_is_size (c, i + 1))
    return FALSE;
  if (i >= c->first + 3 && em_item_is_word (c->items, i - 2, "sur") && em_clause_is_size (c, i - 3))
    sur = i - 2;
  if (!em_item_is_word (c->items, sur, "sur") || sur + 3 >= c->end || !em_clause_is_size (c, sur + 3) || em_clause_says (c, sur + 4, EM_SAYS_LABEL) ||
      em_clause_says (c, sur - 2, EM_SAYS_LABEL) || em_item_size (c->items, sur - 1)->unit == EM_UNIT_DEGREE)
    return FALSE;
  return em_item_is_word (c->items, sur + 2, "sur") ||
         (em_item_is_word (c->items, sur + 2, "et") &&
          em_fraction_plain (em_item_size (c->items, sur - 1)->value) >= 2 * em_fraction_plain (em_item_size (c->items, sur + 1)->value));
}

/* French ", 0,2 sur 0,3": two sizes of one order, of which nothing else is told. */
static gboolean
is_sur_of_row (const EmClause *c, guint i)
{
  double ratio;

  if (i < c->first + 2 || !em_item_is_word (c->items, i, "sur") || !em_clause_is_size (c, i - 1) || !em_clause_is_size (c, i + 1) ||
      em_clause_says (c, i + 2, EM_SAYS_TIMES) || em_clause_says (c, i + 2, EM_SAYS_LABEL) ||
      !(em_item_is_sign (c->items, i - 2, ',') || em_item_is_sign (c->items, i - 2, ':') || em_item_is_sign (c->items, i - 2, '(')))
    return FALSE;
  ratio = em_fraction_plain (em_item_size (c->items, i + 1)->value) / em_fraction_plain (em_item_size (c->items, i - 1)->value);
  return ratio < ROW_RATIO && ratio * ROW_RATIO > 1;
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

          if (last != G_MAXUINT && times != G_MAXUINT && !is_by_how_much (c, times, i))
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
      else if ((em_clause_says (c, i, EM_SAYS_TIMES) || is_sur_of_row (c, i) || is_sur_of_three (c, i)) && last != G_MAXUINT && times == G_MAXUINT)
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
