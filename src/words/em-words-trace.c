/* em-words-trace: the figures of a working as a reader of the quote writes them.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-words.h"

#include <math.h>
#include <string.h>

/* The engine counts money in minor units, and rates in minor units of something ("minor/h"); nobody reads either. */
static const char minor[] = "minor";

/* Beyond this a double no longer tells neighbouring minor units apart (2⁵³ is 9.007e15). */
#define MINOR_HIGH 9e15

/** A term of a working with its unit: lengths and volumes in units, money in its currency, a rate as "56.00 EUR/h"; all else to
 * six figures as the engine has it. Money is rounded to its minor unit for reading; a working's own figures stay unrounded. */
char *
em_words_term (const EmTraceTerm *term, EmUnits units, const EmCurrency *currency)
{
  g_autofree char *number = NULL;

  if (g_str_has_prefix (term->unit, minor) && fabs (term->value) < MINOR_HIGH)
    {
      number = em_words_money ((int64_t) llround (term->value), currency);
      return g_strconcat (number, term->unit + strlen (minor), NULL);
    }
  if (g_str_equal (term->unit, "mm"))
    return em_words_length (term->value, units, 3);
  if (g_str_equal (term->unit, "mm³"))
    return em_words_volume (term->value, units);
  number = em_words_figure (term->value, 6);
  return term->unit[0] == '\0' ? g_steal_pointer (&number) : g_strdup_printf ("%s\302\240%s", number, term->unit);
}
