/* Checks of labour: every task with its scope, repeat tools, settings shared, finish.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-price.h"
#include "em-test-job.h"

static EmTestJob job;

static void
setup (void)
{
  em_test_job_init (&job);
  job.quote.has_preheat = true;
  job.quote.preheat = EM_NO;
  em_quote_set_text (&job.quote, EM_QUOTE_MACHINE, "laser");
}

static void
teardown (void)
{
  em_test_job_clear (&job);
}

/* T. P. Wright, Factors affecting the cost of airplanes, 1936: cumulative average a·n^b, b = log2(rate).
 * 80 %: average of 2 is 80 %, of 4 is 64 % (total of 100 s four times 256.000); 10: 47.651 %, 16: 40.960 %, 100: 22.706 %.
 * 90 %: eight of 60 total 349.920, so the average is 72.900 %. The unit-time curve would give 314.210 and 394.424. */
START_TEST (test_wright)
{
  static const struct { int64_t ppm; int32_t n; double average; } rows[] =
  {
    { 800000, 1, 1.0 }, { 800000, 2, 0.8 }, { 800000, 4, 0.64 }, { 800000, 10, 0.47651 }, { 800000, 16, 0.4096 },
    { 800000, 100, 0.22706 }, { 900000, 8, 349.920 / (8 * 60) }, { 1000000, 50, 1.0 },
  };

  for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++)
    ck_assert_double_eq_tol (em_price_learning (rows[i].ppm, rows[i].n), rows[i].average, 0.000006);
}
END_TEST

/* Order of one feature on one tool, minutes as in the invented book: paperwork 15, programme 10, receive 20, true 12, pack 8.
 * Four tools at 80 %: per-tool tasks 4·0.64 = 2.56 times, once tasks once. What the machine and the wire do is four times. */
START_TEST (test_repeat_tools)
{
  EmCost one, four;

  em_test_job_sidewall (&job, 20, 4, 0.5)->wire_mm = 0.508;
  em_test_job_solve (&job, &one);
  job.quote.n_tools = 4;
  job.quote.learning_ppm = 800000;
  em_test_job_solve (&job, &four);
  ck_assert_double_eq_tol (one.task_s[EM_TASK_PAPERWORK], 900, 1e-9);
  ck_assert_double_eq_tol (one.task_s[EM_TASK_PROGRAM], 600, 1e-9);
  ck_assert_double_eq_tol (one.task_s[EM_TASK_RECEIVE], 1200, 1e-9);
  ck_assert_double_eq_tol (one.task_s[EM_TASK_TRUE], 720, 1e-9);
  ck_assert_double_eq_tol (one.task_s[EM_TASK_PACK], 480, 1e-9);
  ck_assert_double_eq (one.task_s[EM_TASK_PREHEAT], 0);
  for (int i = 0; i < EM_N_TASK; i++)
    ck_assert_double_eq_tol (four.task_s[i], one.task_s[i] * (em_tasks[i].scope == EM_PER_ORDER ? 1.0 : 2.56), 1e-6);
  ck_assert_double_eq_tol (four.arc_on_s, 4 * one.arc_on_s, 1e-6);
  ck_assert_double_eq_tol (four.wire_length_mm, 4 * one.wire_length_mm, 1e-6);
  ck_assert_double_eq_tol (four.filler_mass_g, 4 * one.filler_mass_g, 1e-6);
  ck_assert_double_eq_tol (four.learning_factor, 0.64, 1e-12);
  em_cost_clear (&one);
  em_cost_clear (&four);
}
END_TEST

/* A price break is what an order of that many would cost. */
START_TEST (test_breaks_are_orders_of_that_many)
{
  EmCost cost, alone;

  em_test_job_sidewall (&job, 20, 4, 0.5);
  em_test_job_sidewall (&job, 8, 2, 0.25)->count = 3;
  job.quote.learning_ppm = 850000;
  job.quote.n_breaks = 3;
  job.quote.break_tools[0] = 2;
  job.quote.break_tools[1] = 5;
  job.quote.break_tools[2] = 10;
  em_test_job_solve (&job, &cost);
  ck_assert_int_eq (cost.n_breaks, 3);
  job.quote.n_breaks = 0;
  for (int i = 0; i < 3; i++)
    {
      job.quote.n_tools = job.quote.break_tools[i];
      em_test_job_solve (&job, &alone);
      ck_assert_int_eq (cost.breaks[i].n_tools, alone.totals.n_tools);
      ck_assert_int_eq (cost.breaks[i].net_minor, alone.totals.net_minor);
      ck_assert_int_eq (cost.breaks[i].total_minor, alone.totals.total_minor);
      em_cost_clear (&alone);
    }
  em_cost_clear (&cost);
}
END_TEST

/* Three features: two share setting 1, one stands alone: 2 settings of 12 min. Capping the two of setting 1 takes one more,
 * shared; capping the third too takes another. */
START_TEST (test_settings)
{
  EmCost cost;
  EmFeature *f;

  for (int i = 0; i < 3; i++)
    {
      f = em_test_job_sidewall (&job, 20, 4, 0.5);
      f->wire_mm = 0.508;
      f->setting = i < 2 ? 1 : 0;
    }
  em_test_job_solve (&job, &cost);
  ck_assert_int_eq (cost.settings, 2);
  ck_assert_double_eq_tol (cost.task_s[EM_TASK_TRUE], 2 * 720, 1e-9);
  em_cost_clear (&cost);
  job.quote.feature[0].cap = job.quote.feature[1].cap = EM_YES;
  em_test_job_solve (&job, &cost);
  ck_assert_int_eq (cost.settings, 3);
  em_cost_clear (&cost);
  job.quote.feature[2].cap = EM_YES;
  em_test_job_solve (&job, &cost);
  ck_assert_int_eq (cost.settings, 4);
  em_cost_clear (&cost);
}
END_TEST

/* Two wires in one setting: one change of 3 min, for each tool. */
START_TEST (test_wire_changes)
{
  EmCost cost;

  em_test_job_sidewall (&job, 20, 4, 0.5)->wire_mm = 0.508;
  em_test_job_sidewall (&job, 20, 4, 0.5)->wire_mm = 0.254;
  em_test_job_sidewall (&job, 20, 4, 0.5)->wire_mm = 0.508;
  for (int i = 0; i < 3; i++)
    job.quote.feature[i].setting = 7;
  em_test_job_solve (&job, &cost);
  ck_assert_int_eq (cost.wire_changes, 1);
  ck_assert_double_eq_tol (cost.task_s[EM_TASK_WIRE_CHANGE], 180, 1e-9);
  em_cost_clear (&cost);
}
END_TEST

/* The customer finishes unless the shop is asked to (common practice, no source). By the shop: 10 min/cm² · 0.8 cm² and
 * 30 min/cm³ of excess, 69.317583 − 40 = 29.317583 mm³: 60·(8 + 30·0.029317583) = 532.77165 s. */
START_TEST (test_finish)
{
  EmFeature *f = em_test_job_sidewall (&job, 20, 4, 0.5);
  EmCost cost;

  f->wire_mm = 0.508;
  em_test_job_solve (&job, &cost);
  ck_assert_double_eq (cost.task_s[EM_TASK_FINISH], 0);
  em_cost_clear (&cost);
  job.quote.finish = EM_FINISH_SHOP;
  em_test_job_solve (&job, &cost);
  ck_assert_double_eq_tol (cost.task_s[EM_TASK_FINISH], 532.77165, 1e-4);
  ck_assert_int_gt (cost.money_minor[EM_MONEY_FINISH], 0);
  em_cost_clear (&cost);
  f->finish = EM_FINISH_CUSTOMER;       /* the feature's own word goes before the quote's */
  em_test_job_solve (&job, &cost);
  ck_assert_double_eq (cost.task_s[EM_TASK_FINISH], 0);
  em_cost_clear (&cost);
}
END_TEST

/* A coating is stripped at 6 min/cm²: 0.8 cm² take 288 s. Preheat decided by the office: 25 min a tool. */
START_TEST (test_strip_and_preheat)
{
  EmCost cost;

  em_test_job_sidewall (&job, 20, 4, 0.5);
  em_quote_set_text (&job.quote, EM_QUOTE_COATING, "chrome");
  job.quote.preheat = EM_YES;
  job.quote.n_tools = 2;
  em_test_job_solve (&job, &cost);
  ck_assert_double_eq_tol (cost.task_s[EM_TASK_STRIP], 2 * 288, 1e-9);
  ck_assert (cost.is_preheated);
  ck_assert_double_eq_tol (cost.task_s[EM_TASK_PREHEAT], 2 * 1500, 1e-9);
  em_cost_clear (&cost);
}
END_TEST

/* Operating factor: arc time / total labour time at the weld (welding cost handbooks). Deep access in the invented
 * book is 0.2: handling is four times arc-on. */
START_TEST (test_operating_factor)
{
  static const double factors[EM_N_ACCESS] = { 0.4, 0.25, 0.2 };

  for (int access = 0; access < EM_N_ACCESS; access++)
    {
      EmFeatureCost cost;

      if (access == 0)
        em_test_job_sidewall (&job, 20, 4, 0.5);
      job.quote.feature[0].access = (EmAccess) access;
      ck_assert_int_eq (em_cost_feature (&job.quote, 0, &job.rates, &job.catalogue, &cost, NULL), EM_OK);
      ck_assert_double_eq_tol (cost.arc_on_s / (cost.arc_on_s + cost.task_s[EM_TASK_HANDLING]), factors[access], 1e-9);
    }
}
END_TEST

int
main (void)
{
  const TTest *const tests[] = { test_wright, test_repeat_tools, test_breaks_are_orders_of_that_many, test_settings, test_wire_changes,
                                 test_finish, test_strip_and_preheat, test_operating_factor };

  return em_test_main_with ("core: labour", setup, teardown, tests, (int) (sizeof tests / sizeof tests[0]));
}
