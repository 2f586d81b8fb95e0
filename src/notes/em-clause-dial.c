/* em-clause-dial: "worn between 10 and 2 o'clock": where on a round edge, and no size.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-clause.h"

enum { HOURS = 12, DIAL_WINDOW = 3 /* items from one hour to the next */ };

/* "10", "2": an hour alone. */
static gboolean
is_hour (const EmClause *c, guint i)
{
  const EmSize *size = em_clause_is_size (c, i) ? em_item_size (c->items, i) : NULL;

  return size != NULL && size->is_whole && size->unit == EM_UNIT_NONE && size->chain == 0 && size->value.n >= 1 && size->value.n <= HOURS;
}

/* "o'clock", "Uhr" right behind an hour. */
static gboolean
is_on_clock (const EmClause *c, guint i)
{
  static const char *const words[] = { "o'clock", "o’clock", "oclock", "o clock", "uhr", "heures" };

  return i + 1 < c->end && is_hour (c, i) && em_item_is_any_word_of (c->items, i + 1, words, G_N_ELEMENTS (words));
}

gboolean
em_clause_is_on_dial (const EmClause *c, guint i)
{
  if (!is_hour (c, i))
    return FALSE;
  if (is_on_clock (c, i))
    return TRUE;
  /* "between 10 and | 2 o'clock", "from 10 o'clock to | 2" */
  for (guint k = i + 1; k < c->end && k <= i + DIAL_WINDOW && !em_item_is_sign (c->items, k, ',') && !em_item_is_sign (c->items, k, '.'); k++)
    if (is_on_clock (c, k))
      return TRUE;
    else if (em_clause_is_size (c, k) || em_clause_says (c, k, EM_SAYS_TIMES) || em_clause_says (c, k, EM_SAYS_LABEL))
      return FALSE;
  return FALSE;
}
