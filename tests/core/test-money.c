/* Checks of core/em-money: rounding, margins and the edges of 64 bits.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-money.h"
#include "em-test-main.h"

typedef struct { const char *name; int64_t a, b, c, expected; } MulDiv;

/* a·b/c by hand. */
static const MulDiv mul_divs[] =
{
  { "exact",              10,  6,  4,   15 },
  { "below half",         10,  1,  3,    3 },
  { "half goes up",        5,  1,  2,    3 },   /* 2.5 → 3 */
  { "half goes away",     -5,  1,  2,   -3 },   /* −2.5 → −3, away from zero */
  { "two halves even",     7,  1,  2,    4 },   /* 3.5 → 4: not to even by accident */
  { "zero",                0, 99,  7,    0 },
  { "both negative",      -5, -1,  2,    3 },
  /* 95.00 an hour for 1.150 min = 69,000 ms: 9500·69000/3600000 = 182.083… */
  { "95 an hour, 69 s", 9500, 69000, 3600000, 182 },
  /* (2^63−1)·(2^63−1)/(2^63−1): only a 128-bit middle holds it. */
  { "widest", INT64_MAX, INT64_MAX, INT64_MAX, INT64_MAX },
};

START_TEST (test_mul_div)
{
  for (size_t i = 0; i < sizeof mul_divs / sizeof mul_divs[0]; i++)
    {
      const MulDiv *row = &mul_divs[i];
      int64_t value = -77;

      ck_assert_msg (em_money_mul_div (row->a, row->b, row->c, &value) == EM_OK, "%s: refused", row->name);
      ck_assert_msg (value == row->expected, "%s: %lld", row->name, (long long) value);
    }
}
END_TEST

START_TEST (test_overflow_leaves_output)
{
  int64_t value = 42;

  ck_assert_int_eq (em_money_add (INT64_MAX, 1, &value), EM_FAULT_OVERFLOW);
  ck_assert_int_eq (em_money_sub (INT64_MIN, 1, &value), EM_FAULT_OVERFLOW);
  ck_assert_int_eq (em_money_mul_div (INT64_MAX, 3, 2, &value), EM_FAULT_OVERFLOW);
  ck_assert_int_eq (em_money_mul_div (1, 1, 0, &value), EM_FAULT_RANGE);
  ck_assert_int_eq (em_money_round_step (INT64_MAX, 1000, &value), EM_FAULT_OVERFLOW);
  ck_assert_int_eq (em_money_scale (NAN, 1000, &value), EM_FAULT_NOT_FINITE);
  ck_assert_int_eq (em_money_scale (INFINITY, 1000, &value), EM_FAULT_NOT_FINITE);
  ck_assert_int_eq (em_money_scale (1e300, 1e300, &value), EM_FAULT_OVERFLOW);
  ck_assert_int_eq (em_money_scale (9223372036854775807.0, 1, &value), EM_FAULT_OVERFLOW);  /* rounds to 2^63 */
  ck_assert_int_eq (em_money_with_margin (100, EM_PPM, &value), EM_FAULT_RANGE);
  ck_assert_int_eq (em_money_with_margin (100, -1, &value), EM_FAULT_RANGE);
  ck_assert_int_eq (value, 42);
}
END_TEST

/* price = cost/(1 − m), the margin formula of any book on pricing. Cost 640.00 at 30 %: 914.2857… → 914.29;
 * as a markup the same figure is 30/70 = 42.857 %, and 30 % markup would be 832.00, a different price. */
START_TEST (test_margin_is_not_markup)
{
  int64_t price, marked_up;

  ck_assert_int_eq (em_money_with_margin (64000, 300000, &price), EM_OK);
  ck_assert_int_eq (price, 91429);
  ck_assert_int_eq (em_money_mul_div (64000, EM_PPM + 300000, EM_PPM, &marked_up), EM_OK);
  ck_assert_int_eq (marked_up, 83200);
  ck_assert_int_eq (em_money_with_margin (75, 250000, &price), EM_OK);   /* 25 % margin = 33.333 % markup */
  ck_assert_int_eq (price, 100);
}
END_TEST

/* The franc's 0.05 step is common practice in Switzerland, no source; the sums are by hand. */
START_TEST (test_round_step)
{
  static const struct { int64_t amount, step, expected; } rows[] =
  {
    { 1232, 5, 1230 }, { 1233, 5, 1235 }, { -1233, 5, -1235 }, { 1250, 100, 1300 }, { 1249, 100, 1200 }, { 7, 1, 7 }, { 0, 500, 0 },
  };

  for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++)
    {
      int64_t value;

      ck_assert_int_eq (em_money_round_step (rows[i].amount, rows[i].step, &value), EM_OK);
      ck_assert_int_eq (value, rows[i].expected);
    }
}
END_TEST

START_TEST (test_scale)
{
  static const struct { double value, scale; int64_t expected; } rows[] =
  {
    { 1.2345, 1000, 1235 },   /* 1234.5: half away from zero (1.2345 · 1000 is exactly 1234.5 in binary64) */
    { 0.0004999, 1000, 0 }, { 2.5, 1, 3 }, { -2.5, 1, -3 }, { 0.0, 1000, 0 },
    { 0.49999999999999994, 1, 0 },   /* the largest double below a half: adding a half first would make 1 */
    { 4503599627370497.0, 1, INT64_C (4503599627370497) },
  };

  for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++)
    {
      int64_t value;

      ck_assert_int_eq (em_money_scale (rows[i].value, rows[i].scale, &value), EM_OK);
      ck_assert_msg (value == rows[i].expected, "%g·%g: %lld", rows[i].value, rows[i].scale, (long long) value);
    }
}
END_TEST

EM_TEST_MAIN ("core: money", test_mul_div, test_overflow_leaves_output, test_margin_is_not_markup, test_round_step, test_scale)
