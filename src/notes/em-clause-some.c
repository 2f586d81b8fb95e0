/* em-clause-some: whole numbers that count by what stands round them in their part.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-clause.h"

#include "em-counts.h"

/* "je 2 pro Einsatz", "je Kern 2": so many each. */
static gboolean
is_behind_each (const EmClause *c, guint i)
{
  gboolean is_end = i + 1 >= c->end || em_item_is_soft_break (c->items, i + 1) || em_item_is_sign (c->items, i + 1, ')') || em_item_is_per (c->items, i + 1);

  if (!is_end || i == c->first || em_clause_says (c, i - 1, EM_SAYS_TIMES))
    return FALSE;
  return em_item_is_per (c->items, i - 1) ||
         (i > c->first + 1 && em_item_is_per (c->items, i - 2) && em_clause_says (c, i - 1, EM_SAYS_PLACE) && !em_clause_says (c, i - 1, EM_SAYS_KIND));
}

/* "pits (about 8)", "(ALL 6)" */
static gboolean
is_bracketed_with_word (const EmClause *c, guint i)
{
  return i > c->first + 1 && i + 1 < c->end && em_item_is_sign (c->items, i + 1, ')') && em_item_is_sign (c->items, i - 2, '(') &&
         (em_clause_says (c, i - 1, EM_SAYS_APPROXIMATE) || em_clause_says (c, i - 1, EM_SAYS_ALL) || em_item_is_all (c->items, i - 1));
}

/* ", 6 no." at the end */
static gboolean
is_last_no (const EmClause *c, guint i)
{
  return i > c->first + 1 && em_item_is_soft_break (c->items, i - 1) && i + 2 == c->end && em_item_is_word (c->items, i + 1, "no");
}

/* "ON 3 PLATES": all of the sentence. */
static gboolean
is_on_parts_alone (const EmClause *c, guint i)
{
  return i == c->first + 1 && i + 2 == c->end && em_clause_says (c, c->first, EM_SAYS_PREPOSITION) && em_clause_says (c, i + 1, EM_SAYS_PLACE);
}

/* "NICKS, ABOUT 6, .06 X .02": behind the name of several, and before the row of their sizes. */
static gboolean
is_about_alone (const EmClause *c, guint i)
{
  const EmItem *noun = i > c->first + 2 ? em_item (c->items, i - 3) : NULL;

  return noun != NULL && em_clause_says (c, i - 1, EM_SAYS_APPROXIMATE) && em_item_is_soft_break (c->items, i - 2) && em_clause_says (c, i - 3, EM_SAYS_KIND) &&
         g_ascii_tolower (c->items->text[noun->start + noun->length - 1]) == 's' && i + 3 < c->end && em_item_is_soft_break (c->items, i + 1) &&
         em_clause_is_size (c, i + 2) && em_clause_says (c, i + 3, EM_SAYS_TIMES);
}

gboolean
em_clause_counts_some (const EmClause *c, guint i)
{
  return is_behind_each (c, i) ||
         is_bracketed_with_word (c, i) ||
         is_last_no (c, i) ||
         is_on_parts_alone (c, i) ||
         is_about_alone (c, i) ||
         (em_item_size (c->items, i)->value.n > 1 && em_counts_is_some_of (c->items, c->first, c->end, i));
}
