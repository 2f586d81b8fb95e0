/* em-language: which language the words are in now, and how it writes figures.
 *
 * Private to the words room. Conventions are those of the Unicode CLDR (release 42) for
 * the languages' main locales; they are our own table, so that no installed locale is needed.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef struct
{
  const char *code;            /* ISO 639-1 */
  char        decimal_mark;
  const char *group_mark;      /* between thousands */
  int         group_digits;    /* whole digits from which thousands are parted: Spanish leaves 1234 whole */
  const char *percent_space;   /* between number and % */
  const char *month_names[12]; /* NULL first: dates are all figures */
  const char *date_order;      /* of d, m, y and the marks between */
} EmLanguage;

/* The language in force: the innermost push, else the program's. Never NULL. */
const EmLanguage *em_language_get (void);

/* Appends whole (decimal digits only) with its thousands parted. */
void em_language_append_grouped (const EmLanguage *language, GString *out_text, const char *digits, gsize n_digits);

G_END_DECLS
