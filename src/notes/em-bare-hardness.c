/* em-bare-hardness: numbers without a scale beside a metal that are its hardness.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-govern-parts.h"

enum
{
  HRC_MIN = 25, HRC_MAX = 68,  /* of mold steels (common practice, no source) */
  HRC_APART = 40,              /* the least of one told apart from its metal: a smaller number may count or measure */
  BETWEEN = 3                  /* items from the metal to its number */
};

/* What may stand between a metal and its hardness. */
static gboolean
joins (const Governor *g, guint i)
{
  static const gunichar signs[] = { ',', '/', '@', '(' };

  for (gsize k = 0; k < G_N_ELEMENTS (signs); k++)
    if (em_item_is_sign (g->c->items, i, signs[k]))
      return TRUE;
  return says (g, i, EM_SAYS_PREPOSITION) != NULL || says (g, i, EM_SAYS_APPROXIMATE) != NULL;
}

/* The item that ends what stands behind the metal, or more words behind the number: "58.", "52ish", "58)". */
static gboolean
ends_behind (const Governor *g, guint i)
{
  i += i < g->c->end && says (g, i, EM_SAYS_APPROXIMATE) != NULL;
  return i >= g->c->end || em_item_is_soft_break (g->c->items, i) || em_item_is_sign (g->c->items, i, '.') || em_item_is_sign (g->c->items, i, ')') ||
         em_item_is_sign (g->c->items, i, ':');
}

/* "H13 46.", "D2 at 60", "D2/58", "1.2363, about 58": a whole number behind a metal and alone there. */
static gboolean
is_bare_behind (const Governor *g, guint base, guint i)
{
  const EmSize *size = is_size (g, i) ? em_item_size (g->c->items, i) : NULL;
  gboolean is_apart = FALSE;

  for (guint k = base + 1; k < i; k++)
    {
      if (k > base + BETWEEN || !joins (g, k))
        return FALSE;
      is_apart |= em_item_is_sign (g->c->items, k, ',');
    }
  return i > base && size != NULL && size->is_whole && size->unit == EM_UNIT_NONE && size->chain == 0 && (size->roles & ~(guint32) EM_ROLE_REFERENCE) == 0 &&
         size->value.n >= (is_apart ? HRC_APART : HRC_MIN) && size->value.n <= HRC_MAX && ends_behind (g, i + 1);
}

/* A bare range of whole numbers that may be a hardness. */
static gboolean
is_bare_range (const Governor *g, guint i)
{
  const EmSize *size = is_size (g, i) ? em_item_size (g->c->items, i) : NULL;

  return size != NULL && size->low.d != 0 && size->unit == EM_UNIT_NONE && size->chain == 0 && (size->roles & ~(guint32) EM_ROLE_REFERENCE) == 0 &&
         size->n_decimals == 0 &&
         em_fraction_plain (size->low) >= HRC_MIN && em_fraction_plain (size->high) <= HRC_MAX;
}

void
em_governor_read_bare_hardness (Governor *g, guint base)
{
  /* "60-62, A2" */
  for (guint i = base > g->c->first + 2 ? base - 2 : g->c->first; i < g->c->end && i <= base + BETWEEN + 1; i++)
    if ((i <= base + 2 && is_bare_range (g, i)) || is_bare_behind (g, base, i))
      em_item_size (g->c->items, i)->roles = (em_item_size (g->c->items, i)->roles & ~(guint32) EM_ROLE_REFERENCE) | EM_ROLE_HARDNESS;
}
