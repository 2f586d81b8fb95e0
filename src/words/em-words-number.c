/* em-words-number: figures, money, dates and times as the language in force writes them.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-words.h"

#include "em-language.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

#define NBSP  "\302\240"
#define MINUS "\342\210\222"   /* U+2212 */

/* digits: whole and fraction run together, n_decimals of them fraction. */
static char *
write_digits (gboolean is_negative, const char *digits, int n_decimals)
{
  const EmLanguage *language = em_language_get ();
  gsize n_whole = strlen (digits) - (gsize) n_decimals;
  GString *text = g_string_new (is_negative ? MINUS : "");

  em_language_append_grouped (language, text, digits, n_whole);
  if (n_decimals > 0)
    {
      g_string_append_c (text, language->decimal_mark);
      g_string_append (text, digits + n_whole);
    }
  return g_string_free (text, FALSE);
}

/** Amount without its currency.
 *
 * minor: in the currency's minor unit; exact, no floating point. */
char *
em_words_money_bare (int64_t minor, const EmCurrency *currency)
{
  /* The most negative amount has no positive one in 64 bits. */
  uint64_t size = minor < 0 ? (uint64_t) 0 - (uint64_t) minor : (uint64_t) minor;
  g_autofree char *digits = g_strdup_printf ("%0*" G_GUINT64_FORMAT, currency->digits + 1, (guint64) size);

  return write_digits (minor < 0, digits, currency->digits);
}

/** Amount with its ISO 4217 code behind it, which never parts from it at a line's end. */
char *
em_words_money (int64_t minor, const EmCurrency *currency)
{
  g_autofree char *bare = em_words_money_bare (minor, currency);

  return g_strconcat (bare, NBSP, currency->code, NULL);
}

/** minor to three figures of price_minor, as many as an estimate can have, and no minor units where they would all be noughts. */
char *
em_words_money_rough (int64_t minor, int64_t price_minor, const EmCurrency *currency)
{
  EmCurrency whole = *currency;
  int64_t step = 1, major = 1, half, rounded;

  while (step <= price_minor / 1000)
    step *= 10;
  half = minor < 0 ? -(step / 2) : step / 2;
  rounded = (minor + half) / step * step;
  for (int i = 0; i < currency->digits; i++)
    major *= 10;
  if (rounded % major != 0)
    return em_words_money (rounded, currency);
  whole.digits = 0;
  return em_words_money (rounded / major, &whole);
}

/** value rounded to decimals (0 … 15) places; "–" for no number.
 *
 * printf rounds the double's exact binary value; its decimal mark, whatever the locale, is dropped and ours put in. */
char *
em_words_number (double value, int decimals)
{
  char plain[400];
  GString *digits;
  gboolean is_zero = TRUE;

  if (!isfinite (value))
    return g_strdup ("–");
  snprintf (plain, sizeof plain, "%.*f", CLAMP (decimals, 0, 15), fabs (value));
  digits = g_string_new (NULL);
  for (const char *c = plain; *c != '\0'; c++)
    if (g_ascii_isdigit (*c))
      {
        g_string_append_c (digits, *c);
        is_zero = is_zero && *c == '0';
      }
  char *text = write_digits (value < 0 && !is_zero, digits->str, CLAMP (decimals, 0, 15));

  g_string_free (digits, TRUE);
  return text;
}

/* value with as many decimals as give n significant figures, at most high, trailing zeros dropped. */
static char *
write_significant (double value, int n, int high)
{
  int whole = value == 0 || !isfinite (value) ? 1 : (int) floor (log10 (fabs (value))) + 1;
  char *text = em_words_number (value, CLAMP (n - whole, 0, high));
  char mark = em_language_get ()->decimal_mark;
  char *at = strchr (text, mark);

  /* The decimal mark is last of its kind; a group mark is a different character. */
  if (at != NULL && n - whole > 0)
    {
      char *end = text + strlen (text);

      while (end[-1] == '0')
        end--;
      if (end[-1] == mark)
        end--;
      *end = '\0';
    }
  return text;
}

static char *
join (char *take_number, const char *space, const char *unit)
{
  char *text = g_strconcat (take_number, unit[0] != '\0' ? space : "", unit, NULL);

  g_free (take_number);
  return text;
}

/** value to digits significant ones, at most six decimals, trailing zeros dropped; "–" for no number. */
char *
em_words_figure (double value, int digits)
{
  return write_significant (value, digits, 6);
}

/* value with its unit; degrees stand close to their figure. n_inch: decimals a broken inch is filled up to. */
static char *
write_quantity (double value, EmQuantityType type, EmUnits units, int n_inch)
{
  char buffer[64];
  char mark = em_language_get ()->decimal_mark;
  GString *text;
  const char *at;

  if (em_is_absent (value))
    return g_strdup ("–");
  em_quantity_write (value, type, units, mark, buffer, sizeof buffer);
  text = g_string_new (buffer);
  at = strchr (text->str, mark);
  if (at != NULL && type == EM_QUANTITY_LENGTH && units == EM_UNITS_INCH)
    for (gsize n = text->len - (gsize) (at - text->str) - 1; n < (gsize) n_inch; n++)
      g_string_append_c (text, '0');
  return join (g_string_free (text, FALSE), type == EM_QUANTITY_ANGLE ? "" : NBSP, em_quantity_unit (type, units));
}

/** value as entered, all its digits, with its unit; broken inches in thousandths at least, as US drawings have them. */
char *
em_words_quantity (double value, EmQuantityType type, EmUnits units)
{
  return write_quantity (value, type, units, 3);
}

/** A worked-out length, rounded: decimals of a millimetre, or one place more of an inch, trailing zeros dropped. */
char *
em_words_length (double mm, EmUnits units, int decimals)
{
  double scale = pow (10, units == EM_UNITS_INCH ? decimals + 1 : decimals);
  double value = units == EM_UNITS_INCH ? mm / EM_MM_PER_INCH : mm;
  double rounded = round (value * scale) / scale;

  return write_quantity (units == EM_UNITS_INCH ? rounded * EM_MM_PER_INCH : rounded, EM_QUANTITY_LENGTH, units, MIN (3, decimals));
}

/** A wire's diameter as the trade says it: "0.8 mm", ".020 in". */
char *
em_words_wire (double mm, EmUnits units)
{
  double unit_mm = units == EM_UNITS_INCH ? EM_MM_PER_INCH : 1, scale = units == EM_UNITS_INCH ? 1000 : 100;

  return write_quantity (round (mm / unit_mm * scale) / scale * unit_mm, EM_QUANTITY_LENGTH, units, 3);
}

/** ppm as a percentage, exact, trailing zeros dropped: 82,500 is 8.25 %. */
char *
em_words_percent (int64_t ppm)
{
  uint64_t size = ppm < 0 ? (uint64_t) 0 - (uint64_t) ppm : (uint64_t) ppm;
  g_autofree char *digits = g_strdup_printf ("%05" G_GUINT64_FORMAT, (guint64) size);
  int n_decimals = 4;

  for (; n_decimals > 0 && digits[strlen (digits) - 1] == '0'; n_decimals--)
    digits[strlen (digits) - 1] = '\0';
  return join (write_digits (ppm < 0, digits, n_decimals), em_language_get ()->percent_space, "%");
}

/** Seconds as people say them: "0.4 s", "38 s", "2 min 30 s", "45 min", "2 h 05 min". */
char *
em_words_duration (double seconds)
{
  int64_t whole;

  if (!isfinite (seconds) || seconds < 0 || seconds > 1e15)
    return g_strdup ("–");
  if (seconds < 9.95)
    return join (write_significant (seconds, 2, 1), NBSP, "s");
  whole = (int64_t) (seconds + 0.5);
  if (whole < 60)
    return g_strdup_printf ("%d" NBSP "s", (int) whole);
  if (whole < 600 && whole % 60 != 0)
    return g_strdup_printf ("%d" NBSP "min %02d" NBSP "s", (int) (whole / 60), (int) (whole % 60));
  whole = (whole + 30) / 60;
  if (whole < 60)
    return g_strdup_printf ("%d" NBSP "min", (int) whole);
  return g_strdup_printf ("%" G_GINT64_FORMAT NBSP "h %02d" NBSP "min", whole / 60, (int) (whole % 60));
}

/** "2026-11-25" as the language's people write it; anything else comes back as it is. */
char *
em_words_date (const char *iso)
{
  const EmLanguage *language = em_language_get ();
  int year, month, day, used = 0;
  GString *text;

  if (iso == NULL || sscanf (iso, "%4d-%2d-%2d%n", &year, &month, &day, &used) != 3 || used != 10
      || !g_date_valid_dmy ((GDateDay) day, (GDateMonth) month, (GDateYear) year))
    return g_strdup (iso != NULL ? iso : "");
  text = g_string_new (NULL);
  for (const char *c = language->date_order; *c != '\0'; c++)
    if (*c == 'd')
      g_string_append_printf (text, language->month_names[0] != NULL ? "%d" : "%02d", day);
    else if (*c == 'm' && language->month_names[0] != NULL)
      g_string_append (text, language->month_names[month - 1]);
    else if (*c == 'm')
      g_string_append_printf (text, "%02d", month);
    else if (*c == 'y')
      g_string_append_printf (text, "%04d", year);
    else
      g_string_append (text, *c == ' ' ? NBSP : (char[]) { *c, '\0' });
  return g_string_free (text, FALSE);
}

char *
em_words_moment (gint64 unix_s)
{
  g_autoptr (GDateTime) moment = g_date_time_new_from_unix_local (unix_s);
  g_autofree char *iso = moment != NULL ? g_date_time_format (moment, "%Y-%m-%d") : NULL, *hour = moment != NULL ? g_date_time_format (moment, "%H:%M") : NULL;
  g_autofree char *day = em_words_date (iso);

  return moment != NULL ? g_strdup_printf ("%s %s", day, hour) : g_strdup ("");
}

/** Grams to two figures below 10 g, else three; kilograms from 1000 g on. */
char *
em_words_mass (double grams)
{
  return grams >= 1000 ? join (write_significant (grams / 1000, 3, 3), NBSP, "kg") : join (write_significant (grams, 2 + (grams >= 10), 3), NBSP, "g");
}

/** mm³ below a cubic centimetre, else cm³; in³ in inches. Three figures. */
char *
em_words_volume (double mm3, EmUnits units)
{
  if (units == EM_UNITS_INCH)
    return join (write_significant (mm3 / (EM_MM_PER_INCH * EM_MM_PER_INCH * EM_MM_PER_INCH), 3, 7), NBSP, "in³");
  if (mm3 >= 1000)
    return join (write_significant (mm3 / 1000, 3, 3), NBSP, "cm³");
  return join (write_significant (mm3, 3, 3), NBSP, "mm³");
}
