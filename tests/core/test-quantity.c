/* Checks of core/em-quantity. 1 in = 25.4 mm, 1 mil = 0.0254 mm exactly: NIST SP 811, appendix B.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-quantity.h"
#include "em-test-main.h"

#include <stdio.h>
#include <string.h>

#define X EM_ABSENT

static const struct { const char *text; EmQuantityType type; EmUnits units; double value, count, low, high; } rows[] =
{
  { ".020", EM_QUANTITY_LENGTH, EM_UNITS_INCH, 0.508, X, X, X },
  { ".020\"", EM_QUANTITY_LENGTH, EM_UNITS_METRIC, 0.508, X, X, X },
  { "20 thou", EM_QUANTITY_LENGTH, EM_UNITS_METRIC, 0.508, X, X, X },
  { "20 mil", EM_QUANTITY_LENGTH, EM_UNITS_METRIC, 0.508, X, X, X },
  { "0,5 mm", EM_QUANTITY_LENGTH, EM_UNITS_INCH, 0.5, X, X, X },
  { "1/2", EM_QUANTITY_LENGTH, EM_UNITS_INCH, 12.7, X, X, X },
  { "1 1/2 in", EM_QUANTITY_LENGTH, EM_UNITS_METRIC, 38.1, X, X, X },
  { "1-1/2\"", EM_QUANTITY_LENGTH, EM_UNITS_METRIC, 38.1, X, X, X },
  { "1½", EM_QUANTITY_LENGTH, EM_UNITS_INCH, 38.1, X, X, X },
  { "2 x 0.4", EM_QUANTITY_LENGTH, EM_UNITS_METRIC, 0.4, 2, X, X },
  { "0.4 ±0.1", EM_QUANTITY_LENGTH, EM_UNITS_METRIC, 0.4, X, 0.3, 0.5 },
  { "0.3-0.5", EM_QUANTITY_LENGTH, EM_UNITS_METRIC, 0.4, X, 0.3, 0.5 },
  { "0.3…0.5", EM_QUANTITY_LENGTH, EM_UNITS_METRIC, 0.4, X, 0.3, 0.5 },
  { "0.3/0.4/0.5", EM_QUANTITY_LENGTH, EM_UNITS_METRIC, 0.4, X, 0.3, 0.5 },
  { "ø12", EM_QUANTITY_LENGTH, EM_UNITS_METRIC, 12, X, X, X },
  { "45°", EM_QUANTITY_ANGLE, EM_UNITS_INCH, 45, X, X, X },
  { "90 deg", EM_QUANTITY_ANGLE, EM_UNITS_METRIC, 90, X, X, X },
  { "12 cm", EM_QUANTITY_LENGTH, EM_UNITS_METRIC, 120, X, X, X },
  { "3 mm2", EM_QUANTITY_AREA, EM_UNITS_INCH, 3, X, X, X },
  { "0.5 in²", EM_QUANTITY_AREA, EM_UNITS_METRIC, 322.58, X, X, X },
};

static bool
near_to (double a, double b)
{
  return (isnan (a) && isnan (b)) || fabs (a - b) < 1e-12;
}

START_TEST (test_reading)
{
  for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++)
    {
      EmReading r;

      ck_assert_msg (em_quantity_read (rows[i].text, rows[i].type, rows[i].units, "f", &r, NULL) == EM_OK, "%s", rows[i].text);
      ck_assert_msg (near_to (r.value, rows[i].value) && near_to (r.count, rows[i].count) && near_to (r.low, rows[i].low)
                     && near_to (r.high, rows[i].high), "%s: %.17g", rows[i].text, r.value);
    }
}
END_TEST

START_TEST (test_refusals)
{
  static const char *const wrong[] = { "abc", "1/0", "1..2.3", "5 kg", "0.5-0.3", "1 2", "--1", "0x10", "nan", "inf" };
  EmReading r;
  double value;

  ck_assert_int_eq (em_quantity_read ("  ", EM_QUANTITY_LENGTH, EM_UNITS_METRIC, "f", &r, NULL), EM_FAULT_MISSING);
  for (size_t i = 0; i < sizeof wrong / sizeof wrong[0]; i++)
    ck_assert_msg (em_quantity_read (wrong[i], EM_QUANTITY_LENGTH, EM_UNITS_METRIC, "f", &r, NULL) == EM_FAULT_RANGE, "%s", wrong[i]);
  ck_assert (!em_number_read ("1,5", &value) && !em_number_read ("inf", &value) && !em_number_read ("1e999", &value));
  ck_assert (!em_number_read ("", &value) && !em_number_read (".", &value) && !em_number_read ("-.", &value) && !em_number_read ("1.2.3", &value));
  ck_assert (!em_number_read ("+-1", &value) && !em_number_read ("1 ", &value) && !em_number_read (NULL, &value));
  ck_assert (em_number_read ("5.", &value) && value == 5.0 && em_number_read ("-.5", &value) && value == -0.5);
  ck_assert (em_number_read ("0000000000000000000000000000000000000000000000000007.5", &value) && value == 7.5);
}
END_TEST

START_TEST (test_writing)
{
  char text[64];
  double back;

  em_quantity_write (0.508, EM_QUANTITY_LENGTH, EM_UNITS_INCH, '.', text, sizeof text);
  ck_assert_str_eq (text, ".02");
  /* SI Brochure, 9th edition, 5.4.4: a zero goes before the decimal marker; only US inch drawings leave it out (ASME Y14.5). */
  em_quantity_write (0.508, EM_QUANTITY_LENGTH, EM_UNITS_INCH, ',', text, sizeof text);
  ck_assert_str_eq (text, "0,02");
  em_quantity_write (0.5, EM_QUANTITY_LENGTH, EM_UNITS_METRIC, ',', text, sizeof text);
  ck_assert_str_eq (text, "0,5");
  em_number_write (0.1, text, sizeof text);
  ck_assert_str_eq (text, "0.1");
  em_number_write (1.0 / 3.0, text, sizeof text);
  ck_assert (em_number_read (text, &back) && back == 1.0 / 3.0);
}
END_TEST

/* Thousandths of an inch up to five inches are the doubles nearest the exact decimals: n·254/10,000 mm in whole numbers. */
START_TEST (test_thousandths_are_exact)
{
  for (int n = 1; n <= 5000; n++)
    {
      char inch[16], mm[24];
      double exact;
      EmReading reading;

      snprintf (inch, sizeof inch, "%d.%03d in", n / 1000, n % 1000);
      snprintf (mm, sizeof mm, "%d.%04d", n * 254 / 10000, n * 254 % 10000);
      ck_assert (em_number_read (mm, &exact));
      ck_assert_int_eq (em_quantity_read (inch, EM_QUANTITY_LENGTH, EM_UNITS_METRIC, "length", &reading, NULL), EM_OK);
      ck_assert_msg (reading.value == exact, "%s: %.17g, not %.17g", inch, reading.value, exact);
    }
}
END_TEST

/* No number is endless: 400 nines are more than a double holds, as a size or as a count. Found by the fuzz target. */
START_TEST (test_too_large)
{
  static const struct { const char *before, *behind; } texts[] = { { "", "" }, { "", " x 5" }, { "1-", "" }, { "-", "" } };
  char nines[400];

  memset (nines, '9', 380);
  nines[380] = '\0';
  for (size_t i = 0; i < sizeof texts / sizeof texts[0]; i++)
    {
      char text[450];
      EmReading r = { .value = 1.0 };
      EmFault fault;

      snprintf (text, sizeof text, "%s%s%s", texts[i].before, nines, texts[i].behind);
      ck_assert_int_eq (em_quantity_read (text, EM_QUANTITY_LENGTH, EM_UNITS_METRIC, "leg_a", &r, &fault), EM_FAULT_NOT_FINITE);
      ck_assert (fault.code == EM_FAULT_NOT_FINITE && strcmp (fault.field, "leg_a") == 0 && r.value == 1.0);
    }
}
END_TEST

/* Whole numbers as files hold them: all of the text, in 64 bits, and nothing else. */
START_TEST (test_integers)
{
  static const struct { const char *text; bool is_one; int64_t value; } cases[] =
  {
    { "0", true, 0 }, { "-7", true, -7 }, { "+7", true, 7 }, { "-999999999999999999", true, -999999999999999999 },
    { "1000000000000000000", true, 1000000000000000000 }, { "0000000000000000000000012", true, 12 },
    { "9223372036854775807", true, INT64_MAX }, { "-9223372036854775808", true, INT64_MIN },
    { "9223372036854775808", false, 0 }, { "-9223372036854775809", false, 0 }, { "", false, 0 }, { "-", false, 0 }, { "1.0", false, 0 },
    { "1 ", false, 0 }, { " 1", false, 0 }, { "0x10", false, 0 }, { "1e3", false, 0 }, { NULL, false, 0 },
  };

  for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++)
    {
      int64_t value = 42;

      ck_assert_msg (em_integer_read (cases[i].text, &value) == cases[i].is_one, "%s", cases[i].text != NULL ? cases[i].text : "NULL");
      ck_assert_int_eq (value, cases[i].is_one ? cases[i].value : 42);
    }
}
END_TEST

START_TEST (test_units_of_quantities)
{
  static const struct { EmQuantityType type; const char *metric, *inch; } cases[] =
  {
    { EM_QUANTITY_LENGTH, "mm", "in" }, { EM_QUANTITY_AREA, "mm²", "in²" }, { EM_QUANTITY_ANGLE, "°", "°" }, { EM_QUANTITY_COUNT, "", "" },
    { EM_QUANTITY_CHOICE, "", "" },
  };

  for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++)
    {
      ck_assert_str_eq (em_quantity_unit (cases[i].type, EM_UNITS_METRIC), cases[i].metric);
      ck_assert_str_eq (em_quantity_unit (cases[i].type, EM_UNITS_INCH), cases[i].inch);
    }
}
END_TEST

EM_TEST_MAIN ("core: quantity", test_reading, test_refusals, test_writing, test_thousandths_are_exact, test_too_large, test_integers,
              test_units_of_quantities)
