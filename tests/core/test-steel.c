/* Checks of the relations for steel against worked examples published elsewhere.
 *
 * "Preheat sheet" is a worked calculation of CE, CET, EN 1011-2 and Séférian preheat in French (scribd.com/document/723706121).
 * Its Séférian step dropped two terms and prints 0.3564 and 154.8 °C; the right figures stand here.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-steel.h"
#include "em-test-chemistry.h"
#include "em-test-main.h"

static void
check_valid (const char *name, EmEstimate got, double value, double tolerance)
{
  ck_assert_msg (got.validity == EM_VALID, "%s: not valid (%s)", name, got.limited_by != NULL ? got.limited_by : "-");
  ck_assert_msg (fabs (got.value - value) <= tolerance, "%s: %.5f, not %.5f", name, got.value, value);
}

static void
check_outside (const char *name, EmEstimate got, const char *limited_by)
{
  ck_assert_msg (got.validity == EM_VALID_OUTSIDE, "%s: validity %d", name, (int) got.validity);
  ck_assert_msg (isnan (got.value), "%s: %f instead of no number", name, got.value);
  ck_assert_msg (got.limited_by != NULL && strcmp (got.limited_by, limited_by) == 0, "%s: limited by %s", name, got.limited_by);
}

static void
check_not_applicable (const char *name, EmEstimate got)
{
  ck_assert_msg (got.validity == EM_VALID_NOT_APPLICABLE && isnan (got.value), "%s: validity %d", name, (int) got.validity);
}

START_TEST (test_deposit)
{
  EmChemistry base, filler, deposit;

  em_test_steel (&em_test_p20, base);
  em_test_steel (&em_test_309l, filler);
  em_steel_deposit (base, filler, 0.3, deposit);
  /* 0.3·0.34 + 0.7·0.02 = 0.116; 0.3·1.70 + 0.7·24 = 17.31; 0.3·0 + 0.7·13 = 9.1; 0.3·0.43 + 0.7·0.2 = 0.269 */
  ck_assert_double_eq_tol (deposit[EM_EL_C], 0.116, 1e-12);
  ck_assert_double_eq_tol (deposit[EM_EL_CR], 17.31, 1e-12);
  ck_assert_double_eq_tol (deposit[EM_EL_NI], 9.1, 1e-12);
  ck_assert_double_eq_tol (deposit[EM_EL_MO], 0.269, 1e-12);

  double sum = 0.0;

  for (int i = 0; i < EM_N_ELEMENT; i++)
    sum += deposit[i];
  ck_assert_double_eq_tol (sum, 100.0, 1e-9);
  em_steel_deposit (base, filler, 0.0, deposit);
  ck_assert_mem_eq (deposit, filler, sizeof (EmChemistry));
  em_steel_deposit (base, filler, 1.0, deposit);
  ck_assert_mem_eq (deposit, base, sizeof (EmChemistry));
}
END_TEST

/* Preheat sheet: CE 0.4578. By hand 0.2 + 1.213/6 + (0.195 + 0.009 + 0.035)/5 + 0.118/15 = 0.2 + 0.20217 + 0.0478 + 0.00787. */
START_TEST (test_ce_of_the_preheat_sheet)
{
  EmChemistry c;

  em_test_steel (&(EmTestSteel) { .c = 0.200, .mn = 1.213, .cr = 0.195, .v = 0.035, .mo = 0.009, .ni = 0.118 }, c);
  check_valid ("CE", em_steel_ce_iiw (c), 0.4578, 0.00005);
}
END_TEST

/* Preheat sheet: CET 0.2840; d 31.5 mm, HD 5, Q 1.30 kJ/mm → 71 °C. By hand 0.110 + 0.137 + 0.014 + 0.023 = 0.284;
 * 697·0.284 + 160·tanh 0.9 + 62·5^0.35 + (15.052 − 32)·1.3 − 328 = 197.95 + 114.61 + 108.90 − 22.03 − 328 = 71.4. */
START_TEST (test_cet_of_the_preheat_sheet)
{
  EmChemistry c;

  em_test_steel (&(EmTestSteel) { .c = 0.110, .mn = 1.150, .cr = 0.140, .mo = 0.220, .ni = 0.920, .cu = 0.140 }, c);
  check_valid ("CET", em_steel_cet (c), 0.2840, 0.00005);
  check_valid ("preheat", em_steel_preheat_en1011 (c, 31.5, 5, 1.30), 71.0, 0.5);
}
END_TEST

/* CET 0.30, d 20, HD 5, Q 1: 209.1 + 160·tanh 0.57143 (0.51645 → 82.63) + 108.90 − 16.1 − 328 = 56.5.
 * CET 0.40, d 50: 278.8 + 160·tanh 1.42857 (0.89136 → 142.62) + 108.90 − 10.8 − 328 = 191.5. */
START_TEST (test_en1011_by_hand)
{
  EmChemistry c;

  em_test_steel (&(EmTestSteel) { .c = 0.25, .mn = 0.50 }, c);
  check_valid ("CET 0.30", em_steel_preheat_en1011 (c, 20, 5, 1), 56.5, 0.1);
  em_test_steel (&(EmTestSteel) { .c = 0.30, .mn = 1.00 }, c);
  check_valid ("CET 0.40", em_steel_preheat_en1011 (c, 50, 5, 1), 191.5, 0.1);
}
END_TEST

START_TEST (test_en1011_limits)
{
  EmChemistry c;

  em_test_steel (&(EmTestSteel) { .c = 0.25, .mn = 0.50 }, c);
  check_outside ("thin", em_steel_preheat_en1011 (c, 9.9, 5, 1), "section");
  check_outside ("thick", em_steel_preheat_en1011 (c, 90.1, 5, 1), "section");
  check_outside ("dry", em_steel_preheat_en1011 (c, 20, 0.9, 1), "hydrogen");
  check_outside ("wet", em_steel_preheat_en1011 (c, 20, 20.1, 1), "hydrogen");
  /* 20 A, 10.8 V, 1 mm/s, k 0.6: 0.1296 kJ/mm, as fine wire is welded */
  check_outside ("fine wire", em_steel_preheat_en1011 (c, 20, 5, 0.1296), "heat");
  check_outside ("no section", em_steel_preheat_en1011 (c, NAN, 5, 1), "section");
  em_test_steel (&(EmTestSteel) { .c = 0.10, .mn = 0.90 }, c);   /* CET 0.19 */
  check_outside ("lean", em_steel_preheat_en1011 (c, 20, 5, 1), "CET");
}
END_TEST

/* Preheat sheet, put right: Cc = 0.200 + 40·1.408/360 + 20·0.118/360 + 28·0.009/360 = 0.200 + 0.15644 + 0.00656 + 0.0007 =
 * 0.36370; Ct = 1.25·Cc = 0.45463; 350·√0.20463 = 158.3 °C. */
START_TEST (test_seferian_of_the_preheat_sheet)
{
  EmChemistry c;

  em_test_steel (&(EmTestSteel) { .c = 0.200, .mn = 1.213, .cr = 0.195, .ni = 0.118, .mo = 0.009 }, c);
  check_valid ("preheat", em_steel_preheat_seferian (c, 50), 158.3, 0.05);
  ck_assert_double_gt (fabs (em_steel_preheat_seferian (c, 50).value - 154.8), 3.0);
  /* 0.10 + 40·0.5/360 = 0.15556; 1.05 of it lies under 0.25 */
  em_test_steel (&(EmTestSteel) { .c = 0.10, .mn = 0.50 }, c);
  check_valid ("none needed", em_steel_preheat_seferian (c, 10), 0.0, 0.0);
  check_outside ("no section", em_steel_preheat_seferian (c, 0), "section");
}
END_TEST

static const struct { const char *name; const EmTestSteel *steel; double seferian_degc; } seferian_rows[] =
{
  { "4140", &em_test_4140, 233.6 },       /* Cc 0.4 + 0.20278 + 0.01556 = 0.61833; Ct 0.69563; 350·√0.44563 */
  { "P20", &em_test_p20, 243.1 },         /* 0.34 + 0.27778 + 0.03344 = 0.65122; 0.73263; 350·√0.48263 */
  { "P20 with nickel", &em_test_p20_ni, 294.5 },  /* 0.4 + 0.37778 + 0.05833 + 0.01556 = 0.85167; 0.95813; 350·√0.70813 */
  { "ER80S-D2", &em_test_er80s_d2, 127.1 },       /* 0.095 + 0.20556 + 0.03889 = 0.33944; 0.38188; 350·√0.13188 */
};

START_TEST (test_seferian_by_hand)
{
  EmChemistry c;

  em_test_steel (seferian_rows[_i].steel, c);
  check_valid (seferian_rows[_i].name, em_steel_preheat_seferian (c, 25), seferian_rows[_i].seferian_degc, 0.1);
}
END_TEST

/* Andrews 1965, coefficients as published (phase-trans.msm.cam.ac.uk, ms-empirical2014). */
static const struct { const char *name; const EmTestSteel *steel; double ms_degc; } ms_rows[] =
{
  { "4140", &em_test_4140, 330.2 },       /* 539 − 169.2 − 26.6 − 11.495 − 1.5 */
  { "P20", &em_test_p20, 347.1 },         /* 539 − 143.82 − 24.32 − 20.57 − 3.225 */
  { "P20 with nickel", &em_test_p20_ni, 282.0 },  /* 539 − 169.2 − 44.08 − 18.585 − 23.595 − 1.5 */
  { "S7", &em_test_s7, 259.8 },           /* 539 − 211.5 − 16.72 − 39.325 − 11.625 */
};

START_TEST (test_ms_by_hand)
{
  EmChemistry c;

  em_test_steel (ms_rows[_i].steel, c);
  check_valid (ms_rows[_i].name, em_steel_ms_andrews (c), ms_rows[_i].ms_degc, 0.1);
}
END_TEST

/* Limits of EN 1011-2 methods A and B and of Andrews' steels. Method A's and Andrews' are from memory. */
START_TEST (test_limits_name_the_element)
{
  EmChemistry c;

  em_test_steel (&em_test_p20, c);
  check_outside ("CE of P20", em_steel_ce_iiw (c), "C");
  check_outside ("CET of P20", em_steel_cet (c), "C");
  em_test_steel (&(EmTestSteel) { .c = 0.20, .mn = 1.80 }, c);
  check_outside ("CE at 1.8 Mn", em_steel_ce_iiw (c), "Mn");
  em_test_steel (&(EmTestSteel) { .c = 0.20, .mn = 0.40 }, c);
  check_outside ("CET at 0.4 Mn", em_steel_cet (c), "Mn");
  em_test_steel (&em_test_h13, c);
  check_outside ("Ms of H13", em_steel_ms_andrews (c), "Cr");
  check_outside ("CE of H13", em_steel_ce_iiw (c), "C");
  ck_assert_int_ne ((int) em_steel_preheat_seferian (c, 25).validity, EM_VALID);
  em_test_steel (&em_test_d2, c);
  ck_assert_int_ne ((int) em_steel_ms_andrews (c).validity, EM_VALID);
  ck_assert_int_ne ((int) em_steel_martensite_hrc (c).validity, EM_VALID);
}
END_TEST

/* Every limit of chemistry from both sides: at the figure valid, a hair beyond not, with the element's name. The sources are beside
 * the limits in em-steel.c; the figures are written here anew. */
typedef EmEstimate (*Relation) (const EmChemistry);

static const struct { const char *name; Relation relation; EmElement element; double low_pct, high_pct; } limit_rows[] =
{
  { "CE", em_steel_ce_iiw, EM_EL_C, 0.05, 0.25 },      { "CE", em_steel_ce_iiw, EM_EL_SI, NAN, 0.8 },
  { "CE", em_steel_ce_iiw, EM_EL_MN, NAN, 1.7 },       { "CE", em_steel_ce_iiw, EM_EL_CR, NAN, 0.9 },
  { "CE", em_steel_ce_iiw, EM_EL_CU, NAN, 1.0 },       { "CE", em_steel_ce_iiw, EM_EL_NI, NAN, 2.5 },
  { "CE", em_steel_ce_iiw, EM_EL_MO, NAN, 0.75 },      { "CE", em_steel_ce_iiw, EM_EL_V, NAN, 0.20 },
  { "CET", em_steel_cet, EM_EL_C, 0.05, 0.32 },        { "CET", em_steel_cet, EM_EL_SI, NAN, 0.8 },
  { "CET", em_steel_cet, EM_EL_MN, 0.5, 1.9 },         { "CET", em_steel_cet, EM_EL_CR, NAN, 1.5 },
  { "CET", em_steel_cet, EM_EL_CU, NAN, 0.7 },         { "CET", em_steel_cet, EM_EL_MO, NAN, 0.75 },
  { "CET", em_steel_cet, EM_EL_NB, NAN, 0.06 },        { "CET", em_steel_cet, EM_EL_NI, NAN, 2.5 },
  { "CET", em_steel_cet, EM_EL_TI, NAN, 0.12 },        { "CET", em_steel_cet, EM_EL_V, NAN, 0.18 },
  { "CET", em_steel_cet, EM_EL_B, NAN, 0.005 },
  { "Ms", em_steel_ms_andrews, EM_EL_C, 0.11, 0.60 },  { "Ms", em_steel_ms_andrews, EM_EL_MN, 0.04, 4.9 },
  { "Ms", em_steel_ms_andrews, EM_EL_SI, 0.1, 1.9 },   { "Ms", em_steel_ms_andrews, EM_EL_NI, NAN, 5.0 },
  { "Ms", em_steel_ms_andrews, EM_EL_CR, NAN, 4.6 },   { "Ms", em_steel_ms_andrews, EM_EL_MO, NAN, 5.4 },
  { "martensite", em_steel_martensite_hrc, EM_EL_C, 0.15, 0.60 },
};

START_TEST (test_each_element_from_both_sides)
{
  const char *name = limit_rows[_i].name, *id = em_element_ids[limit_rows[_i].element];
  EmElement element = limit_rows[_i].element;
  EmChemistry c;

  em_test_steel (&(EmTestSteel) { .c = 0.15, .mn = 1.6, .si = 0.3 }, c);
  ck_assert_msg (limit_rows[_i].relation (c).validity == EM_VALID, "%s of the plain steel", name);
  c[element] = limit_rows[_i].high_pct;
  ck_assert_msg (limit_rows[_i].relation (c).validity == EM_VALID, "%s at %g %s", name, c[element], id);
  c[element] = limit_rows[_i].high_pct + 0.0001;
  check_outside (name, limit_rows[_i].relation (c), id);
  c[element] = NAN;
  check_outside (name, limit_rows[_i].relation (c), id);
  if (isnan (limit_rows[_i].low_pct))
    return;
  c[element] = limit_rows[_i].low_pct;
  ck_assert_msg (limit_rows[_i].relation (c).validity == EM_VALID, "%s at %g %s", name, c[element], id);
  c[element] = limit_rows[_i].low_pct - 0.0001;
  check_outside (name, limit_rows[_i].relation (c), id);
}
END_TEST

/* The equivalents' own ends: CE 0.30 … 0.70, CET 0.2 … 0.5 for a preheat. */
START_TEST (test_equivalents_from_both_sides)
{
  EmChemistry c;

  em_test_steel (&(EmTestSteel) { .c = 0.06, .mn = 1.45 }, c);   /* 0.06 + 0.24167 */
  check_valid ("CE", em_steel_ce_iiw (c), 0.30167, 1e-4);
  em_test_steel (&(EmTestSteel) { .c = 0.06, .mn = 1.43 }, c);   /* 0.06 + 0.23833 */
  check_outside ("CE", em_steel_ce_iiw (c), "CE");
  em_test_steel (&(EmTestSteel) { .c = 0.25, .mn = 1.20, .cr = 0.50, .mo = 0.74 }, c);   /* 0.25 + 0.2 + 0.248 */
  check_valid ("CE", em_steel_ce_iiw (c), 0.698, 1e-6);
  em_test_steel (&(EmTestSteel) { .c = 0.25, .mn = 1.20, .cr = 0.52, .mo = 0.74 }, c);   /* 0.25 + 0.2 + 0.252 */
  check_outside ("CE", em_steel_ce_iiw (c), "CE");

  em_test_steel (&(EmTestSteel) { .c = 0.10, .mn = 1.01 }, c);   /* CET 0.201 */
  ck_assert_int_eq ((int) em_steel_preheat_en1011 (c, 20, 5, 1).validity, EM_VALID);
  em_test_steel (&(EmTestSteel) { .c = 0.10, .mn = 0.99 }, c);   /* 0.199 */
  check_outside ("CET", em_steel_preheat_en1011 (c, 20, 5, 1), "CET");
  em_test_steel (&(EmTestSteel) { .c = 0.32, .mn = 1.79 }, c);   /* 0.499 */
  ck_assert_int_eq ((int) em_steel_preheat_en1011 (c, 20, 5, 1).validity, EM_VALID);
  em_test_steel (&(EmTestSteel) { .c = 0.32, .mn = 1.81 }, c);   /* 0.501 */
  check_outside ("CET", em_steel_preheat_en1011 (c, 20, 5, 1), "CET");
}
END_TEST

/* Thickness, hydrogen and heat input of EN 1011-2; carbon and alloy as Séférian's relation is read here. */
START_TEST (test_other_inputs_from_both_sides)
{
  static const struct { double section_mm, hydrogen, heat; const char *limited_by; } rows[] =
  {
    { 10, 5, 1, NULL }, { 9.99, 5, 1, "section" }, { 90, 5, 1, NULL }, { 90.01, 5, 1, "section" }, { 20, 1, 1, NULL }, { 20, 0.99, 1, "hydrogen" },
    { 20, 20, 1, NULL }, { 20, 20.01, 1, "hydrogen" }, { 20, 5, 0.5, NULL }, { 20, 5, 0.49, "heat" }, { 20, 5, 4, NULL }, { 20, 5, 4.01, "heat" },
  };
  EmChemistry c;

  em_test_steel (&(EmTestSteel) { .c = 0.25, .mn = 0.50 }, c);
  for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++)
    {
      EmEstimate got = em_steel_preheat_en1011 (c, rows[i].section_mm, rows[i].hydrogen, rows[i].heat);

      if (rows[i].limited_by == NULL)
        ck_assert_msg (got.validity == EM_VALID, "row %zu", i);
      else
        check_outside ("EN 1011-2", got, rows[i].limited_by);
    }
  em_test_steel (&(EmTestSteel) { .c = 0.50, .mn = 1.0, .cr = 2.0, .ni = 2.0 }, c);   /* alloy 5.0 */
  ck_assert_int_eq ((int) em_steel_preheat_seferian (c, 25).validity, EM_VALID);
  c[EM_EL_C] = 0.501;
  check_outside ("Séférian", em_steel_preheat_seferian (c, 25), "C");
  c[EM_EL_C] = 0.50;
  c[EM_EL_NI] = 2.01;
  check_outside ("Séférian", em_steel_preheat_seferian (c, 25), "alloy");
  c[EM_EL_NI] = 2.0;
  check_outside ("Séférian", em_steel_preheat_seferian (c, INFINITY), "section");
}
END_TEST

/* A relation made for alloy steel says nothing of stainless, nickel, copper or aluminium. */
START_TEST (test_other_metals)
{
  EmChemistry c;

  em_test_steel (&em_test_309l, c);
  check_not_applicable ("CE of 309L", em_steel_ce_iiw (c));
  check_not_applicable ("CET of 309L", em_steel_cet (c));
  check_not_applicable ("EN 1011-2 of 309L", em_steel_preheat_en1011 (c, 25, 5, 1));
  check_not_applicable ("Séférian of 309L", em_steel_preheat_seferian (c, 25));
  memset (c, 0, sizeof c);
  c[EM_EL_CU] = 98.0;
  c[EM_EL_BE] = 1.9;
  check_not_applicable ("CE of C17200", em_steel_ce_iiw (c));
  check_not_applicable ("Ms of C17200", em_steel_ms_andrews (c));
  check_not_applicable ("martensite of C17200", em_steel_martensite_hrc (c));
}
END_TEST

int
main (void)
{
  const TTest *const tests[] =
    {
      test_deposit, test_ce_of_the_preheat_sheet, test_cet_of_the_preheat_sheet, test_en1011_by_hand, test_en1011_limits,
      test_seferian_of_the_preheat_sheet, test_limits_name_the_element, test_other_metals,
      test_equivalents_from_both_sides, test_other_inputs_from_both_sides,
    };
  Suite *suite = suite_create ("core: steel");
  TCase *tcase = tcase_create ("steel");

  for (size_t i = 0; i < sizeof tests / sizeof tests[0]; i++)
    tcase_add_test (tcase, tests[i]);
  tcase_add_loop_test (tcase, test_seferian_by_hand, 0, (int) (sizeof seferian_rows / sizeof seferian_rows[0]));
  tcase_add_loop_test (tcase, test_ms_by_hand, 0, (int) (sizeof ms_rows / sizeof ms_rows[0]));
  tcase_add_loop_test (tcase, test_each_element_from_both_sides, 0, (int) (sizeof limit_rows / sizeof limit_rows[0]));
  suite_add_tcase (suite, tcase);

  SRunner *runner = srunner_create (suite);

  srunner_run_all (runner, CK_ENV);

  int n_failed = srunner_ntests_failed (runner);

  srunner_free (runner);
  return n_failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
