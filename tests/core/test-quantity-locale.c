/* Checks of core/em-quantity where the C library writes a comma for a point: what it reads and writes stays the same.
 *
 * Skipped where no such locale is installed.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-quantity.h"
#include "em-test-main.h"

#include <locale.h>
#include <stdio.h>
#include <string.h>

static const char *const with_comma[] = { "de_DE.UTF-8", "fr_FR.UTF-8", "es_ES.UTF-8", "it_IT.UTF-8", "pl_PL.UTF-8" };

START_TEST (test_numbers_of_files)
{
  static const double values[] = { 0.1, 1.0 / 3.0, -2.5, 1e-300, 1.7976931348623157e308, 12345678.9, 0.0, 4.0 };
  double value = 0.0;
  char text[64];

  for (size_t i = 0; i < sizeof values / sizeof values[0]; i++)
    {
      ck_assert_int_lt (em_number_write (values[i], text, sizeof text), (int) sizeof text);
      ck_assert_msg (strchr (text, ',') == NULL, "%s", text);
      ck_assert_msg (em_number_read (text, &value) && value == values[i], "%s", text);
    }
  em_number_write (0.1, text, sizeof text);
  ck_assert_str_eq (text, "0.1");
  ck_assert (em_number_read ("12.75", &value) && value == 12.75);
  ck_assert (em_number_read ("-1.5e-3", &value) && value == -0.0015);
  ck_assert (!em_number_read ("12,75", &value));
}
END_TEST

/* 1 in = 25.4 mm: NIST SP 811, appendix B. */
START_TEST (test_entries)
{
  static const struct { const char *text; EmUnits units; double value; } rows[] =
  {
    { "0.5", EM_UNITS_METRIC, 0.5 }, { "0,5", EM_UNITS_METRIC, 0.5 }, { ".020", EM_UNITS_INCH, 0.508 }, { ",020", EM_UNITS_INCH, 0.508 },
    { "1 1/2", EM_UNITS_INCH, 38.1 }, { "0,75 mm", EM_UNITS_INCH, 0.75 }, { "20 thou", EM_UNITS_METRIC, 0.508 },
  };
  EmReading reading;

  for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++)
    {
      ck_assert_int_eq (em_quantity_read (rows[i].text, EM_QUANTITY_LENGTH, rows[i].units, "f", &reading, NULL), EM_OK);
      ck_assert_msg (fabs (reading.value - rows[i].value) < 1e-12, "%s: %.17g", rows[i].text, reading.value);
    }
}
END_TEST

START_TEST (test_writing)
{
  static const struct { double mm; EmUnits units; char mark; const char *text; } rows[] =
  {
    { 0.508, EM_UNITS_INCH, '.', ".02" }, { 0.508, EM_UNITS_METRIC, '.', "0.508" }, { 0.5, EM_UNITS_METRIC, ',', "0,5" },
    { 38.1, EM_UNITS_INCH, ',', "1,5" }, { 12.0, EM_UNITS_METRIC, '.', "12" }, { -0.25, EM_UNITS_METRIC, '.', "-0.25" },
  };
  char text[64];

  for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++)
    {
      em_quantity_write (rows[i].mm, EM_QUANTITY_LENGTH, rows[i].units, rows[i].mark, text, sizeof text);
      ck_assert_str_eq (text, rows[i].text);
    }
}
END_TEST

int
main (void)
{
  const TTest *const tests[] = { test_numbers_of_files, test_entries, test_writing };
  const char *found = NULL;

  for (size_t i = 0; found == NULL && i < sizeof with_comma / sizeof with_comma[0]; i++)
    found = setlocale (LC_ALL, with_comma[i]);
  if (found == NULL)
    {
      printf ("no locale with a decimal comma is installed\n");
      return 77;
    }
  if (strcmp (localeconv ()->decimal_point, ",") != 0)
    {
      fprintf (stderr, "%s has no decimal comma\n", found);
      return EXIT_FAILURE;
    }
  return em_test_main ("core: quantity with a comma", tests, (int) (sizeof tests / sizeof tests[0]));
}
