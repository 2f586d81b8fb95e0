/* Checks of the constitution diagrams.
 *
 * Equivalents of 304L and 309L by Schaeffler are a published worked example (gewc.ahlamontada.com/t98-topic). Boundaries are
 * from memory and approximate, so only points well inside a field are told which.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-constitution.h"
#include "em-test-chemistry.h"
#include "em-test-main.h"

/* Cr_eq 18.2 + 1.5·0.4; Ni_eq 10.1 + 30·0.02 + 0.5·1.2. Séférian: 3·(18.8 − 0.93·11.3 − 6.7) = 4.77 %. */
START_TEST (test_304l)
{
  EmChemistry c;

  em_test_steel (&em_test_304l, c);

  EmConstitution field = em_steel_schaeffler (c);

  ck_assert_double_eq_tol (field.cr_eq, 18.8, 1e-9);
  ck_assert_double_eq_tol (field.ni_eq, 11.3, 1e-9);
  ck_assert (field.is_inside);
  ck_assert_int_eq ((int) field.phase, EM_PHASE_AUSTENITE_FERRITE);
  ck_assert_double_eq_tol (field.ferrite_pct, 4.77, 0.01);
}
END_TEST

/* The example prints 24.9 and 14.35. Of our 309L: 24 + 0.2 + 1.5·0.5 = 24.95; 13 + 0.6 + 0.9 = 14.5;
 * 3·(24.95 − 13.485 − 6.7) = 14.3 % (the example's point: 14.6). WRC-1992: 24 + 0.2 = 24.2; 13 + 35·0.02 = 13.7. */
START_TEST (test_309l)
{
  EmChemistry c;

  em_test_steel (&em_test_309l, c);

  EmConstitution field = em_steel_schaeffler (c), wrc = em_steel_wrc1992 (c);

  ck_assert_double_eq_tol (field.cr_eq, 24.9, 0.2);
  ck_assert_double_eq_tol (field.ni_eq, 14.35, 0.2);
  ck_assert_int_eq ((int) field.phase, EM_PHASE_AUSTENITE_FERRITE);
  ck_assert_double_eq_tol (field.ferrite_pct, 14.3, 0.05);
  ck_assert_double_eq_tol (wrc.cr_eq, 24.2, 1e-9);
  ck_assert_double_eq_tol (wrc.ni_eq, 13.7, 1e-9);
  ck_assert (wrc.is_inside);
  ck_assert_int_eq ((int) wrc.phase, EM_PHASE_AUSTENITE_FERRITE);
}
END_TEST

/* 30 % of P20 in 309L: 0.3·(1.70 + 0.43 + 0.75) + 0.7·24.95 = 18.33; 0.3·(10.2 + 0.4) + 0.7·14.5 = 13.33.
 * WRC-1992: 0.3·2.13 + 0.7·24.2 = 17.58; 0.3·11.9 + 0.7·13.7 = 13.16. */
START_TEST (test_309l_on_p20)
{
  EmChemistry base, filler, deposit;

  em_test_steel (&em_test_p20, base);
  em_test_steel (&em_test_309l, filler);
  em_steel_deposit (base, filler, 0.3, deposit);
  ck_assert_double_eq_tol (em_steel_schaeffler (deposit).cr_eq, 18.33, 0.005);
  ck_assert_double_eq_tol (em_steel_schaeffler (deposit).ni_eq, 13.33, 0.005);
  ck_assert_double_eq_tol (em_steel_wrc1992 (deposit).cr_eq, 17.58, 0.005);
  ck_assert_double_eq_tol (em_steel_wrc1992 (deposit).ni_eq, 13.16, 0.005);
}
END_TEST

/* Weman, Welding Processes Handbook: EN 1.0401 to 1.4301 with 23 12 2 L, diluted 20–40 %: austenite with about 10 % ferrite.
 * Nominal compositions from memory: 0.15 C 0.45 Mn 0.25 Si; 0.04 C 1.5 Mn 0.5 Si 18 Cr 9 Ni; 0.02 C 1.5 Mn 0.4 Si 23 Cr
 * 12.5 Ni 2.7 Mo. */
START_TEST (test_dissimilar_joint_of_the_handbook)
{
  EmChemistry carbon, stainless, both, filler, deposit;

  em_test_steel (&(EmTestSteel) { .c = 0.15, .mn = 0.45, .si = 0.25 }, carbon);
  em_test_steel (&(EmTestSteel) { .c = 0.04, .mn = 1.5, .si = 0.5, .cr = 18, .ni = 9 }, stainless);
  em_test_steel (&(EmTestSteel) { .c = 0.02, .mn = 1.5, .si = 0.4, .cr = 23, .ni = 12.5, .mo = 2.7 }, filler);
  em_steel_deposit (carbon, stainless, 0.5, both);
  em_steel_deposit (both, filler, 0.3, deposit);

  EmConstitution field = em_steel_schaeffler (deposit);

  ck_assert_int_eq ((int) field.phase, EM_PHASE_AUSTENITE_FERRITE);
  ck_assert_double_eq_tol (field.ferrite_pct, 10.0, 3.0);
}
END_TEST

/* 30 % of P20 in 316L lands at about 16.44 and 12.98, among austenite and martensite. */
START_TEST (test_points_well_inside)
{
  ck_assert_int_eq ((int) em_diagram_find (&em_diagram_schaeffler, 16.44, 12.98), EM_PHASE_AUSTENITE_MARTENSITE);
  ck_assert_int_eq ((int) em_diagram_find (&em_diagram_schaeffler, 20, 25), EM_PHASE_AUSTENITE);   /* 310: fully austenitic */
  ck_assert_int_eq ((int) em_diagram_find (&em_diagram_schaeffler, 5, 6), EM_PHASE_MARTENSITE);
  ck_assert_int_eq ((int) em_diagram_find (&em_diagram_schaeffler, 30, 3), EM_PHASE_FERRITE);
  ck_assert_int_eq ((int) em_diagram_find (&em_diagram_schaeffler, 13, 3), EM_PHASE_MARTENSITE_FERRITE);   /* 410 */
  ck_assert_int_eq ((int) em_diagram_find (&em_diagram_wrc1992, 20, 11.7), EM_PHASE_AUSTENITE_FERRITE);   /* 308L, FN about 10 */
}
END_TEST

START_TEST (test_limits)
{
  EmChemistry c;

  em_test_steel (&em_test_h13, c);   /* 0.39 C: Schaeffler's steels had less than 0.2 */
  ck_assert (!em_steel_schaeffler (c).is_inside);
  ck_assert_int_eq ((int) em_steel_schaeffler (c).phase, EM_PHASE_UNKNOWN);
  ck_assert (isnan (em_steel_schaeffler (c).ferrite_pct));
  ck_assert (!em_steel_wrc1992 (c).is_inside);
  ck_assert_int_eq ((int) em_diagram_find (&em_diagram_schaeffler, 41, 10), EM_PHASE_UNKNOWN);
  ck_assert_int_eq ((int) em_diagram_find (&em_diagram_schaeffler, -1, 10), EM_PHASE_UNKNOWN);
  ck_assert_int_eq ((int) em_diagram_find (&em_diagram_schaeffler, NAN, 10), EM_PHASE_UNKNOWN);
  ck_assert_int_eq ((int) em_diagram_find (&em_diagram_wrc1992, 16, 10), EM_PHASE_UNKNOWN);
}
END_TEST

static double
ring_area (const EmRegion *region)
{
  double twice = 0.0;

  for (int i = 0, j = region->n_points - 1; i < region->n_points; j = i++)
    twice += region->point[j].cr_eq * region->point[i].ni_eq - region->point[i].cr_eq * region->point[j].ni_eq;
  return fabs (twice) / 2.0;
}

/* Fields tile their box: no point of a fine grid in none of them, and areas (shoelace) that add up to the box. */
START_TEST (test_fields_fill_the_box)
{
  const EmDiagram *const diagrams[] = { &em_diagram_schaeffler, &em_diagram_wrc1992 };
  const EmDiagram *diagram = diagrams[_i];
  double area = 0.0, width = diagram->cr_eq_high - diagram->cr_eq_low, height = diagram->ni_eq_high - diagram->ni_eq_low;

  for (int i = 0; i < diagram->n_regions; i++)
    area += ring_area (&diagram->region[i]);
  ck_assert_double_eq_tol (area, width * height, 1e-6 * width * height);
  for (int x = 0; x < 199; x++)
    for (int y = 0; y < 199; y++)
      {
        double cr_eq = diagram->cr_eq_low + width * (x + 0.5) / 199.0, ni_eq = diagram->ni_eq_low + height * (y + 0.5) / 199.0;

        ck_assert_msg (em_diagram_find (diagram, cr_eq, ni_eq) != EM_PHASE_UNKNOWN, "%s: no field at %.2f, %.2f", diagram->id, cr_eq, ni_eq);
      }
}
END_TEST

/* Whole and halved numbers hit corners and edges shared by fields exactly: they too belong to one field. */
START_TEST (test_points_on_shared_edges)
{
  const EmDiagram *const diagrams[] = { &em_diagram_schaeffler, &em_diagram_wrc1992 };
  const EmDiagram *diagram = diagrams[_i];

  for (double cr_eq = diagram->cr_eq_low; cr_eq < diagram->cr_eq_high; cr_eq += 0.1)
    for (double ni_eq = diagram->ni_eq_low; ni_eq < diagram->ni_eq_high; ni_eq += 0.08)
      ck_assert_msg (em_diagram_find (diagram, cr_eq, ni_eq) != EM_PHASE_UNKNOWN, "%s: no field at %.2f, %.2f", diagram->id, cr_eq, ni_eq);
  for (int i = 0; i < diagram->n_regions; i++)
    for (int j = 0, k = diagram->region[i].n_points - 1; j < diagram->region[i].n_points; k = j++)
      for (int part = 0; part < 64; part++)
        {
          EmConstitutionPoint a = diagram->region[i].point[j], b = diagram->region[i].point[k];
          double cr_eq = a.cr_eq + (b.cr_eq - a.cr_eq) * part / 64.0, ni_eq = a.ni_eq + (b.ni_eq - a.ni_eq) * part / 64.0;

          if (cr_eq >= diagram->cr_eq_low && ni_eq >= diagram->ni_eq_low && cr_eq < diagram->cr_eq_high && ni_eq < diagram->ni_eq_high)
            ck_assert_msg (em_diagram_find (diagram, cr_eq, ni_eq) != EM_PHASE_UNKNOWN, "%s: no field at %.17g, %.17g", diagram->id, cr_eq, ni_eq);
        }
}
END_TEST

/* The line of no ferrite is Séférian's, Cr_eq = 0.93 Ni_eq + 6.7. */
START_TEST (test_ferrite_line)
{
  for (double ni_eq = 13.0; ni_eq < 31.5; ni_eq += 0.5)
    {
      double cr_eq = 0.93 * ni_eq + 6.7;

      ck_assert_int_eq ((int) em_diagram_find (&em_diagram_schaeffler, cr_eq - 0.05, ni_eq), EM_PHASE_AUSTENITE);
      ck_assert_int_eq ((int) em_diagram_find (&em_diagram_schaeffler, cr_eq + 0.05, ni_eq), EM_PHASE_AUSTENITE_FERRITE);
    }
}
END_TEST

int
main (void)
{
  const TTest *const tests[] =
    { test_304l, test_309l, test_309l_on_p20, test_dissimilar_joint_of_the_handbook, test_points_well_inside, test_limits, test_ferrite_line };
  Suite *suite = suite_create ("core: constitution");
  TCase *tcase = tcase_create ("constitution");

  for (size_t i = 0; i < sizeof tests / sizeof tests[0]; i++)
    tcase_add_test (tcase, tests[i]);
  tcase_add_loop_test (tcase, test_fields_fill_the_box, 0, 2);
  tcase_add_loop_test (tcase, test_points_on_shared_edges, 0, 2);
  suite_add_tcase (suite, tcase);

  SRunner *runner = srunner_create (suite);

  srunner_run_all (runner, CK_ENV);

  int n_failed = srunner_ntests_failed (runner);

  srunner_free (runner);
  return n_failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
