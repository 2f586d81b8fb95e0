/* em-words-date: days as people type them.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-words.h"

#include "em-language.h"

#include <string.h>

enum { N_PART = 3, YEAR_DIGITS = 4, MONTH_LETTERS = 3 };

/* 0: no number. */
static int
number_of (const char *part)
{
  gsize n = strspn (part, "0123456789");

  return n > 0 && n <= YEAR_DIGITS && part[n] == '\0' ? (int) g_ascii_strtoll (part, NULL, 10) : 0;
}

static gboolean
is_year (const char *part)
{
  return strlen (part) == YEAR_DIGITS && number_of (part) > 0;
}

/* "11", "nov", "Nov." and "november" are the same; 0: no month. */
static int
month_of (const char *part, const EmLanguage *language)
{
  g_autofree char *folded = g_utf8_casefold (part, -1);

  for (int i = 0; i < 12 && language->month_names[i] != NULL && g_utf8_strlen (part, -1) >= MONTH_LETTERS; i++)
    {
      g_autofree char *name = g_utf8_casefold (language->month_names[i], -1);
      if (g_str_has_suffix (name, "."))
        name[strlen (name) - 1] = '\0';
      if (g_str_has_prefix (name, folded) || g_str_has_prefix (folded, name))
        return i + 1;
    }
  return number_of (part);
}

/* Years first, or days first; without a day, or a month, the whole of it. Whether 5/10 is of May or October no one knows in English. */
static gboolean
take_apart (char *const *part, guint n, gboolean is_clear, const EmLanguage *language, int *out_year, int *out_month, int *out_day)
{
  gboolean is_year_first = is_year (part[0]);
  const char *year = part[is_year_first ? 0 : n - 1], *month = n < 2 ? NULL : is_year_first ? part[1] : part[n - 2];
  const char *day = n < N_PART ? NULL : is_year_first ? part[2] : part[0];

  *out_year = is_year (year) ? number_of (year) : 0;
  *out_month = month != NULL ? month_of (month, language) : 0;
  *out_day = day != NULL ? number_of (day) : 0;
  if (!is_year_first && day != NULL && month != NULL && number_of (month) > 0 && !is_clear)
    return FALSE;
  return *out_year > 0 && (month == NULL || (*out_month > 0 && *out_month <= 12)) && (day == NULL || *out_day > 0);
}

gboolean
em_words_read_date (const char *text, gboolean is_last, char **out_iso)
{
  const EmLanguage *language = em_language_get ();
  g_auto (GStrv) pieces = g_strsplit_set (text, " .-/", -1);
  g_autoptr (GPtrArray) parts = g_ptr_array_new ();
  int year, month, day;

  *out_iso = NULL;
  if (!g_utf8_validate (text, -1, NULL))
    return FALSE;
  for (guint i = 0; pieces[i] != NULL; i++)
    for (char *piece = g_strstrip (pieces[i]), *next = piece; next != NULL; piece = next)
      {
        /* The space that no line breaks at. */
        next = strstr (piece, "\302\240");
        if (next != NULL)
          {
            *next = '\0';
            next += strlen ("\302\240");
          }
        if (*piece != '\0')
          g_ptr_array_add (parts, piece);
      }
  if (parts->len == 0 || parts->len > N_PART
      || !take_apart ((char *const *) parts->pdata, parts->len, strchr (text, '.') != NULL || !g_str_equal (language->code, "en"), language,
                      &year, &month, &day))
    return FALSE;
  if (month == 0)
    month = is_last ? 12 : 1;
  if (day == 0)
    day = is_last ? g_date_get_days_in_month ((GDateMonth) month, (GDateYear) year) : 1;
  if (!g_date_valid_dmy ((GDateDay) day, (GDateMonth) month, (GDateYear) year))
    return FALSE;
  *out_iso = g_strdup_printf ("%04d-%02d-%02d", year, month, day);
  return TRUE;
}
