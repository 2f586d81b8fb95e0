/* Checks of hardness: ASTM E140 table 1 and fresh martensite.
 *
 * E140 rows from 35 HRC up as reproduced in a published hardness tester's manual (353 HBW = 38 HRC is its own example);
 * rows 20, 25 and 30 from memory.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-steel.h"
#include "em-test-chemistry.h"
#include "em-test-main.h"

static const struct { double hrc, hv; } rows[] =
{
  { 20, 238 }, { 25, 266 }, { 30, 302 }, { 35, 345 }, { 36, 354 }, { 38, 372 }, { 40, 392 }, { 42, 412 }, { 44, 434 }, { 45, 446 },
  { 46, 458 }, { 48, 484 }, { 50, 513 }, { 52, 544 }, { 54, 577 }, { 55, 595 }, { 56, 613 }, { 58, 653 }, { 60, 697 },
  { 64, 800 }, { 65, 832 }, { 68, 940 },
};

enum { N_ROWS = (int) (sizeof rows / sizeof rows[0]) };

START_TEST (test_e140_rows)
{
  for (int i = 0; i < N_ROWS; i++)
    {
      EmEstimate hv = em_steel_hrc_to_hv (rows[i].hrc), hrc = em_steel_hv_to_hrc (rows[i].hv);

      ck_assert_msg (hv.validity == EM_VALID && fabs (hv.value - rows[i].hv) < 1e-9, "%.0f HRC: %f HV", rows[i].hrc, hv.value);
      ck_assert_msg (hrc.validity == EM_VALID && fabs (hrc.value - rows[i].hrc) < 1e-9, "%.0f HV: %f HRC", rows[i].hv, hrc.value);
    }
}
END_TEST

/* Reproductions differ at 62 HRC: one prints 745 HV, others as remembered 746. Either is let pass until the standard is in hand. */
START_TEST (test_row_told_in_two_ways)
{
  ck_assert_double_eq_tol (em_steel_hrc_to_hv (62).value, 745.5, 0.6);
}
END_TEST

START_TEST (test_never_beyond_the_table)
{
  static const double bad_hrc[] = { 19.99, 68.01, -1, NAN, INFINITY }, bad_hv[] = { 237.9, 940.1, 0, NAN, -INFINITY };

  for (size_t i = 0; i < sizeof bad_hrc / sizeof bad_hrc[0]; i++)
    {
      EmEstimate hv = em_steel_hrc_to_hv (bad_hrc[i]), hrc = em_steel_hv_to_hrc (bad_hv[i]);

      ck_assert_msg (hv.validity == EM_VALID_OUTSIDE && isnan (hv.value), "%f HRC was converted", bad_hrc[i]);
      ck_assert_msg (hrc.validity == EM_VALID_OUTSIDE && isnan (hrc.value), "%f HV was converted", bad_hv[i]);
    }
}
END_TEST

START_TEST (test_there_and_back)
{
  double last = 0.0;

  for (int i = 0; i <= 480; i++)
    {
      double hrc = 20.0 + i / 10.0, hv = em_steel_hrc_to_hv (hrc).value;

      ck_assert_msg (hv > last, "%.1f HRC is no harder than %.1f", hrc, hrc - 0.1);
      ck_assert_double_eq_tol (em_steel_hv_to_hrc (hv).value, hrc, 1e-9);
      last = hv;
    }
}
END_TEST

/* ASTM A255 and SAE J406, fully martensitic: from memory, ± 1; the relation's own ± 2 on top. */
static const struct { double carbon_pct, hrc; } quenched[] =
{
  { 0.15, 41 }, { 0.20, 44 }, { 0.25, 47 }, { 0.30, 50 }, { 0.35, 53 }, { 0.40, 56 }, { 0.45, 59 }, { 0.50, 60 },
};

START_TEST (test_martensite)
{
  EmChemistry c;

  for (size_t i = 0; i < sizeof quenched / sizeof quenched[0]; i++)
    {
      em_test_steel (&(EmTestSteel) { .c = quenched[i].carbon_pct, .mn = 0.8, .si = 0.3 }, c);

      EmEstimate hrc = em_steel_martensite_hrc (c);

      ck_assert_msg (hrc.validity == EM_VALID && fabs (hrc.value - quenched[i].hrc) <= 3.0, "%.2f C: %f", quenched[i].carbon_pct, hrc.value);
    }
  em_test_steel (&(EmTestSteel) { .c = 0.61 }, c);
  ck_assert_int_eq ((int) em_steel_martensite_hrc (c).validity, EM_VALID_OUTSIDE);
  ck_assert_str_eq (em_steel_martensite_hrc (c).limited_by, "C");
  em_test_steel (&(EmTestSteel) { .c = 0.14 }, c);
  ck_assert (isnan (em_steel_martensite_hrc (c).value));
}
END_TEST

EM_TEST_MAIN ("core: hardness", test_e140_rows, test_row_told_in_two_ways, test_never_beyond_the_table, test_there_and_back, test_martensite)
