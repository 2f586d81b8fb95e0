/* test-number: figures, money, dates and times in the four languages, under the plain C locale.
 *
 * Expected forms: Unicode CLDR 42, main locales of en, de, es, fr (numbers: decimal, group, minimumGroupingDigits;
 * percentFormat; medium dates). Thousands in French are parted by U+202F, percent by U+202F, German and Spanish percent
 * by U+00A0. ISO 4217 digits.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-words.h"

#include "../core/em-test-main.h"

#include <locale.h>
#include <time.h>

#define NB "\302\240"
#define NN "\342\200\257"
#define MINUS "\342\210\222"

enum { N_LANGUAGES = 4 };
static const char *const languages[N_LANGUAGES] = { "en", "de", "es", "fr" };

#define CHECK_ALL(call, expected) \
  for (int i = 0; i < N_LANGUAGES; i++) \
    { \
      em_words_push (languages[i]); \
      g_autofree char *text = call; \
      em_words_pop (); \
      ck_assert_msg (g_str_equal (text, (expected)[i]), "%s: “%s” instead of “%s”", languages[i], text, (expected)[i]); \
    }

START_TEST (test_money)
{
  static const struct { int64_t minor; const char *code; const char *expected[N_LANGUAGES]; } rows[] = {
    { 1234567, "EUR", { "12,345.67" NB "EUR", "12.345,67" NB "EUR", "12.345,67" NB "EUR", "12" NN "345,67" NB "EUR" } },
    { 123456, "EUR", { "1,234.56" NB "EUR", "1.234,56" NB "EUR", "1234,56" NB "EUR", "1" NN "234,56" NB "EUR" } },
    { -5, "USD", { MINUS "0.05" NB "USD", MINUS "0,05" NB "USD", MINUS "0,05" NB "USD", MINUS "0,05" NB "USD" } },
    { 1234567, "JPY", { "1,234,567" NB "JPY", "1.234.567" NB "JPY", "1.234.567" NB "JPY", "1" NN "234" NN "567" NB "JPY" } },
    { 1234567, "KWD", { "1,234.567" NB "KWD", "1.234,567" NB "KWD", "1234,567" NB "KWD", "1" NN "234,567" NB "KWD" } },
    { INT64_MIN, "JPY", { MINUS "9,223,372,036,854,775,808" NB "JPY", MINUS "9.223.372.036.854.775.808" NB "JPY",
                          MINUS "9.223.372.036.854.775.808" NB "JPY", MINUS "9" NN "223" NN "372" NN "036" NN "854" NN "775" NN "808" NB "JPY" } },
  };

  for (gsize r = 0; r < G_N_ELEMENTS (rows); r++)
    {
      EmCurrency currency;

      ck_assert (em_currency_find (rows[r].code, &currency));
      CHECK_ALL (em_words_money (rows[r].minor, &currency), rows[r].expected);
    }
}
END_TEST

/* 0.508 mm is 0.020 in, 0.8 mm 0.0315 in: by 25.4 mm to the inch, thousandths in full, and no nought before the point, as US drawings have them. */
/* Rounded by hand; an estimate has no more than three figures. */
START_TEST (test_rough_money)
{
  static const struct { int64_t minor, price_minor; const char *code, *expected; } rows[] = {
    { 1012345, 1150000, "USD", "10,100" NB "USD" },
    { 95548, 95553, "EUR", "955" NB "EUR" },
    { 95550, 95553, "EUR", "956" NB "EUR" },
    { 1234, 1200, "EUR", "12.30" NB "EUR" },
    { 123456, 123456, "JPY", "123,000" NB "JPY" },
    { -1250, 1200, "EUR", MINUS "12.50" NB "EUR" },
    { 7, 0, "EUR", "0.07" NB "EUR" },
  };

  em_words_push ("en");
  for (size_t r = 0; r < G_N_ELEMENTS (rows); r++)
    {
      EmCurrency currency;

      ck_assert (em_currency_find (rows[r].code, &currency));
      g_autofree char *got = em_words_money_rough (rows[r].minor, rows[r].price_minor, &currency);
      ck_assert_str_eq (got, rows[r].expected);
    }
  em_words_pop ();
}
END_TEST

START_TEST (test_wires)
{
  static const struct { double mm; EmUnits units; const char *expected[N_LANGUAGES]; } rows[] = {
    { 0.508, EM_UNITS_METRIC, { "0.51" NB "mm", "0,51" NB "mm", "0,51" NB "mm", "0,51" NB "mm" } },
    { 0.8, EM_UNITS_METRIC, { "0.8" NB "mm", "0,8" NB "mm", "0,8" NB "mm", "0,8" NB "mm" } },
    { 0.508, EM_UNITS_INCH, { ".020" NB "in", "0,020" NB "in", "0,020" NB "in", "0,020" NB "in" } },
    { 0.8, EM_UNITS_INCH, { ".031" NB "in", "0,031" NB "in", "0,031" NB "in", "0,031" NB "in" } },
  };

  for (gsize r = 0; r < G_N_ELEMENTS (rows); r++)
    CHECK_ALL (em_words_wire (rows[r].mm, rows[r].units), rows[r].expected);
}
END_TEST

START_TEST (test_numbers)
{
  static const struct { double value; int decimals; const char *expected[N_LANGUAGES]; } rows[] = {
    { 0.5, 2, { "0.50", "0,50", "0,50", "0,50" } },
    { -1234.5, 1, { MINUS "1,234.5", MINUS "1.234,5", MINUS "1234,5", MINUS "1" NN "234,5" } },
    { -0.001, 2, { "0.00", "0,00", "0,00", "0,00" } },
    { 999.5, 0, { "1,000", "1.000", "1000", "1" NN "000" } },
    { NAN, 2, { "–", "–", "–", "–" } },
  };

  for (gsize r = 0; r < G_N_ELEMENTS (rows); r++)
    CHECK_ALL (em_words_number (rows[r].value, rows[r].decimals), rows[r].expected);
}
END_TEST

START_TEST (test_figures)
{
  static const struct { double value; int digits; const char *expected[N_LANGUAGES]; } rows[] = {
    { 2.5, 3, { "2.5", "2,5", "2,5", "2,5" } },
    { 0.0123456, 3, { "0.0123", "0,0123", "0,0123", "0,0123" } },
    { 1250.4, 3, { "1,250", "1.250", "1250", "1" NN "250" } },
    { 100, 3, { "100", "100", "100", "100" } },
    { 0, 3, { "0", "0", "0", "0" } },
  };

  for (gsize r = 0; r < G_N_ELEMENTS (rows); r++)
    CHECK_ALL (em_words_figure (rows[r].value, rows[r].digits), rows[r].expected);
}
END_TEST

START_TEST (test_percent)
{
  static const struct { int64_t ppm; const char *expected[N_LANGUAGES]; } rows[] = {
    { 82500, { "8.25%", "8,25" NB "%", "8,25" NB "%", "8,25" NN "%" } },
    { 190000, { "19%", "19" NB "%", "19" NB "%", "19" NN "%" } },
    { 1, { "0.0001%", "0,0001" NB "%", "0,0001" NB "%", "0,0001" NN "%" } },
    { 0, { "0%", "0" NB "%", "0" NB "%", "0" NN "%" } },
    { -50000, { MINUS "5%", MINUS "5" NB "%", MINUS "5" NB "%", MINUS "5" NN "%" } },
  };

  for (gsize r = 0; r < G_N_ELEMENTS (rows); r++)
    CHECK_ALL (em_words_percent (rows[r].ppm), rows[r].expected);
}
END_TEST

START_TEST (test_dates)
{
  static const struct { const char *iso; const char *expected[N_LANGUAGES]; } rows[] = {
    { "2026-11-05", { "5" NB "Nov" NB "2026", "05.11.2026", "5" NB "nov" NB "2026", "5" NB "nov." NB "2026" } },
    { "2024-02-29", { "29" NB "Feb" NB "2024", "29.02.2024", "29" NB "feb" NB "2024", "29" NB "févr." NB "2024" } },
    { "2026-09-30", { "30" NB "Sep" NB "2026", "30.09.2026", "30" NB "sept" NB "2026", "30" NB "sept." NB "2026" } },
    { "2026-02-29", { "2026-02-29", "2026-02-29", "2026-02-29", "2026-02-29" } },
    { "soon", { "soon", "soon", "soon", "soon" } },
    { NULL, { "", "", "", "" } },
  };

  for (gsize r = 0; r < G_N_ELEMENTS (rows); r++)
    CHECK_ALL (em_words_date (rows[r].iso), rows[r].expected);
}
END_TEST

/* What people type; NULL: refused. 2024 is a leap year, 2026 none. In English nobody knows which of 5/10 is the month. */
START_TEST (test_dates_are_read)
{
  static const struct { const char *text; gboolean is_last; const char *expected[N_LANGUAGES]; } rows[] = {
    { "2026-03-31", FALSE, { "2026-03-31", "2026-03-31", "2026-03-31", "2026-03-31" } },
    { "2026-3-5", TRUE, { "2026-03-05", "2026-03-05", "2026-03-05", "2026-03-05" } },
    { "5.3.2026", FALSE, { "2026-03-05", "2026-03-05", "2026-03-05", "2026-03-05" } },
    { "05/10/2026", FALSE, { NULL, "2026-10-05", "2026-10-05", "2026-10-05" } },
    { "5" NB "Nov" NB "2026", FALSE, { "2026-11-05", NULL, "2026-11-05", "2026-11-05" } },
    { "5 november 2026", FALSE, { "2026-11-05", NULL, "2026-11-05", "2026-11-05" } },
    { "2024-02", FALSE, { "2024-02-01", "2024-02-01", "2024-02-01", "2024-02-01" } },
    { "2024-02", TRUE, { "2024-02-29", "2024-02-29", "2024-02-29", "2024-02-29" } },
    { "2.2026", TRUE, { "2026-02-28", "2026-02-28", "2026-02-28", "2026-02-28" } },
    { "2026", FALSE, { "2026-01-01", "2026-01-01", "2026-01-01", "2026-01-01" } },
    { " 2026 ", TRUE, { "2026-12-31", "2026-12-31", "2026-12-31", "2026-12-31" } },
    { "2026-13-45", FALSE, { NULL, NULL, NULL, NULL } },
    { "2026-00", FALSE, { NULL, NULL, NULL, NULL } },
    { "31.4.2026", FALSE, { NULL, NULL, NULL, NULL } },
    { "2026-02-29", FALSE, { NULL, NULL, NULL, NULL } },
    { "soon", FALSE, { NULL, NULL, NULL, NULL } },
    { "31", FALSE, { NULL, NULL, NULL, NULL } },
    { "1.2.26", FALSE, { NULL, NULL, NULL, NULL } },
    { "1.2.3.2026", FALSE, { NULL, NULL, NULL, NULL } },
    { "", FALSE, { NULL, NULL, NULL, NULL } },
    { "\377", FALSE, { NULL, NULL, NULL, NULL } },
  };

  for (gsize r = 0; r < G_N_ELEMENTS (rows); r++)
    for (int i = 0; i < N_LANGUAGES; i++)
      {
        g_autofree char *iso = NULL;
        em_words_push (languages[i]);
        gboolean is_read = em_words_read_date (rows[r].text, rows[r].is_last, &iso);
        em_words_pop ();
        ck_assert_msg (g_strcmp0 (iso, rows[r].expected[i]) == 0, "%s: “%s” is “%s” instead of “%s”", languages[i], rows[r].text, iso,
                       rows[r].expected[i]);
        ck_assert (is_read == (iso != NULL));
      }
}
END_TEST

/* 1 Nov 2026, 13:05 where the test runs, worked out by mktime. */
START_TEST (test_moments)
{
  static const char *const expected[N_LANGUAGES] = { "1" NB "Nov" NB "2026 13:05", "01.11.2026 13:05", "1" NB "nov" NB "2026 13:05", "1" NB "nov." NB "2026 13:05" };
  struct tm local = { .tm_year = 126, .tm_mon = 10, .tm_mday = 1, .tm_hour = 13, .tm_min = 5, .tm_isdst = -1 };
  gint64 moment_s = mktime (&local);

  CHECK_ALL (em_words_moment (moment_s), expected);
}
END_TEST

START_TEST (test_durations)
{
  static const struct { double seconds; const char *expected; } rows[] = {
    { 0.42, "0.4" NB "s" }, { 38.4, "38" NB "s" }, { 59.6, "1" NB "min" }, { 150, "2" NB "min 30" NB "s" }, { 180, "3" NB "min" },
    { 2730, "46" NB "min" }, { 3599, "1" NB "h 00" NB "min" }, { 7500, "2" NB "h 05" NB "min" }, { -1, "–" },
  };

  em_words_push ("en");
  for (gsize r = 0; r < G_N_ELEMENTS (rows); r++)
    {
      g_autofree char *text = em_words_duration (rows[r].seconds);

      ck_assert_str_eq (text, rows[r].expected);
    }
  em_words_pop ();
}
END_TEST

/* 0.254 mm is 0.01 in, 0.61 mm is 0.02402 in, 78.74 mm is 3.1 in; a broken inch has three decimals, as US drawings do, but a comma
 * has a zero before it (SI Brochure 5.4.4): one inch is 25.4 mm (NIST SP 811). */
START_TEST (test_lengths)
{
  static const struct { double mm; EmUnits units; int decimals; const char *expected[N_LANGUAGES]; } rows[] = {
    { 0.60960001, EM_UNITS_METRIC, 3, { "0.61" NB "mm", "0,61" NB "mm", "0,61" NB "mm", "0,61" NB "mm" } },
    { 0.254, EM_UNITS_INCH, 3, { ".010" NB "in", "0,010" NB "in", "0,010" NB "in", "0,010" NB "in" } },
    { 25.4, EM_UNITS_INCH, 3, { "1" NB "in", "1" NB "in", "1" NB "in", "1" NB "in" } },
    { 78.74, EM_UNITS_INCH, 0, { "3.1" NB "in", "3,1" NB "in", "3,1" NB "in", "3,1" NB "in" } },
    { 0.61, EM_UNITS_INCH, 3, { ".024" NB "in", "0,024" NB "in", "0,024" NB "in", "0,024" NB "in" } },
  };

  for (gsize r = 0; r < G_N_ELEMENTS (rows); r++)
    CHECK_ALL (em_words_length (rows[r].mm, rows[r].units, rows[r].decimals), rows[r].expected);
}
END_TEST

/* 16,387.064 mm³ is one cubic inch: 25.4³. */
START_TEST (test_masses_and_volumes)
{
  em_words_push ("de");
  g_autofree char *gram = em_words_mass (0.425);
  g_autofree char *kilo = em_words_mass (1250);
  g_autofree char *small = em_words_volume (4.25, EM_UNITS_METRIC);
  g_autofree char *large = em_words_volume (12345, EM_UNITS_METRIC);
  g_autofree char *inch = em_words_volume (16387.064, EM_UNITS_INCH);

  ck_assert_str_eq (gram, "0,42" NB "g");
  ck_assert_str_eq (kilo, "1,25" NB "kg");
  ck_assert_str_eq (small, "4,25" NB "mm³");
  ck_assert_str_eq (large, "12,3" NB "cm³");
  ck_assert_str_eq (inch, "1" NB "in³");
  em_words_pop ();
}
END_TEST

/* 5600 cents are 56.00 EUR, the yen has no minor unit, the dinar a thousand fils (ISO 4217); 25.4 mm is an inch (NIST SP 811). */
START_TEST (test_terms)
{
  static const struct { EmTraceTerm term; const char *code; EmUnits units; const char *expected[N_LANGUAGES]; } rows[] = {
    { { "C", 5600, "minor" }, "EUR", EM_UNITS_METRIC, { "56.00" NB "EUR", "56,00" NB "EUR", "56,00" NB "EUR", "56,00" NB "EUR" } },
    { { "rate", 5600, "minor/h" }, "EUR", EM_UNITS_METRIC, { "56.00" NB "EUR/h", "56,00" NB "EUR/h", "56,00" NB "EUR/h", "56,00" NB "EUR/h" } },
    { { "rate", 560, "minor/m³" }, "JPY", EM_UNITS_METRIC, { "560" NB "JPY/m³", "560" NB "JPY/m³", "560" NB "JPY/m³", "560" NB "JPY/m³" } },
    { { "C", 1250, "minor" }, "KWD", EM_UNITS_METRIC, { "1.250" NB "KWD", "1,250" NB "KWD", "1,250" NB "KWD", "1,250" NB "KWD" } },
    { { "L", 25.4, "mm" }, "USD", EM_UNITS_INCH, { "1" NB "in", "1" NB "in", "1" NB "in", "1" NB "in" } },
    { { "A", 645.16, "mm²" }, "USD", EM_UNITS_INCH, { "1" NB "in²", "1" NB "in²", "1" NB "in²", "1" NB "in²" } },
    { { "A", 645.16, "mm²" }, "USD", EM_UNITS_METRIC, { "645.16" NB "mm²", "645,16" NB "mm²", "645,16" NB "mm²", "645,16" NB "mm²" } },
    { { "t", 12.5, "s" }, "USD", EM_UNITS_METRIC, { "12.5" NB "s", "12,5" NB "s", "12,5" NB "s", "12,5" NB "s" } },
    /* One square inch is 645.16 mm², 6.4516 cm², one cubic inch 16.387064 cm³. */
    { { "r", 2, "min/cm²" }, "USD", EM_UNITS_INCH, { "12.903" NB "min/in²", "12,903" NB "min/in²", "12,903" NB "min/in²", "12,903" NB "min/in²" } },
    { { "V", 16.387064, "cm³" }, "USD", EM_UNITS_INCH, { "1" NB "in³", "1" NB "in³", "1" NB "in³", "1" NB "in³" } },
    { { "v", 12.7, "mm/s" }, "USD", EM_UNITS_INCH, { "0.5" NB "in/s", "0,5" NB "in/s", "0,5" NB "in/s", "0,5" NB "in/s" } },
    { { "q", 2, "J/mm" }, "USD", EM_UNITS_INCH, { "50.8" NB "J/in", "50,8" NB "J/in", "50,8" NB "J/in", "50,8" NB "J/in" } },
    { { "ρ", 0.0075, "g/mm³" }, "USD", EM_UNITS_INCH, { "122.9" NB "g/in³", "122,9" NB "g/in³", "122,9" NB "g/in³", "122,9" NB "g/in³" } },
    { { "m", 0.25, "" }, "USD", EM_UNITS_METRIC, { "0.25", "0,25", "0,25", "0,25" } },
  };

  for (gsize r = 0; r < G_N_ELEMENTS (rows); r++)
    {
      EmCurrency currency;

      ck_assert (em_currency_find (rows[r].code, &currency));
      CHECK_ALL (em_words_term (&rows[r].term, rows[r].units, &currency), rows[r].expected);
    }
}
END_TEST

/* A push leaves no trace: language, environment and locale are as before. */
START_TEST (test_push_and_pop)
{
  g_setenv ("LANGUAGE", "es", TRUE);
  setlocale (LC_MESSAGES, "C");
  em_words_push ("de");
  ck_assert_str_eq (em_words_language (), "de");
  em_words_push ("fr_CA.UTF-8");
  ck_assert_str_eq (em_words_language (), "fr");
  em_words_push (NULL);
  ck_assert_str_eq (em_words_language (), "fr");
  em_words_push ("xx");
  ck_assert_str_eq (em_words_language (), "fr");
  for (int i = 0; i < 3; i++)
    em_words_pop ();
  ck_assert_str_eq (em_words_language (), "de");
  em_words_pop ();
  ck_assert_str_eq (g_getenv ("LANGUAGE"), "es");
  ck_assert_str_eq (setlocale (LC_MESSAGES, NULL), "C");
}
END_TEST

EM_TEST_MAIN ("number", test_money, test_rough_money, test_wires, test_numbers, test_figures, test_percent, test_dates, test_dates_are_read, test_moments, test_durations, test_lengths, test_masses_and_volumes,
              test_terms, test_push_and_pop)
