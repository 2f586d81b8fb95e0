/* Checks of the working: every figure has steps, their numbers are the costing's, and simple ones can be done over.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-test-job.h"

#include <math.h>
#include <string.h>

static EmTestJob job;

static void
setup (void)
{
  EmFeature *f;

  em_test_job_init (&job);
  f = em_test_job_sidewall (&job, 20, 4, 0.5);
  f->cap = f->melt_out = EM_YES;
  f->count = 3;
  em_quote_set_text (&job.quote, EM_QUOTE_MACHINE, "laser");
  f = em_test_job_sidewall (&job, 10, 3, 0.4);
  em_feature_set_text (f, EM_FEATURE_MACHINE, "tig");
  em_quote_set_text (&job.quote, EM_QUOTE_COATING, "nitride");
  job.quote.finish = EM_FINISH_SHOP;
  job.quote.n_tools = 2;
}

static void
teardown (void)
{
  em_test_job_clear (&job);
}

/* The last step of a quantity is the figure itself. */
static const EmTraceStep *
find_last (const EmTrace *trace, int row, const char *quantity)
{
  const EmTraceStep *found = NULL;

  for (int i = 0; i < trace->n_steps; i++)
    if (trace->step[i].row == row && strcmp (trace->step[i].quantity, quantity) == 0)
      found = &trace->step[i];
  return found;
}

static void
expect (const EmTrace *trace, int row, const char *quantity, double value)
{
  const EmTraceStep *step = find_last (trace, row, quantity);

  ck_assert_msg (step != NULL, "no working for %s of row %d", quantity, row);
  ck_assert_msg (fabs (step->result.value - value) <= 1e-9 * fabs (value), "%s of row %d: %g, costed %g", quantity, row, step->result.value, value);
}

START_TEST (test_every_figure_has_its_working)
{
  EmCost cost;
  EmTrace trace;

  em_cost_init (&cost);
  em_trace_init (&trace);
  ck_assert_int_eq (em_cost_quote (&cost, &job.quote, &job.rates, &job.catalogue, &trace, NULL), EM_OK);
  ck_assert_int_eq (cost.n_faults, 0);
  for (int i = 0; i < 2; i++)
    {
      const EmFeatureCost *f = &cost.feature[i];

      expect (&trace, i, "net_volume", f->net_volume_mm3);
      expect (&trace, i, "required_volume", f->required_volume_mm3);
      expect (&trace, i, "deposited_volume", f->deposited_volume_mm3);
      expect (&trace, i, "layers", f->plan.layers);
      expect (&trace, i, "tracks", (double) f->plan.tracks);
      expect (&trace, i, "welded_length", f->welded_length_mm);
      expect (&trace, i, "wire_length", f->wire_length_mm);
      expect (&trace, i, "sticks", (double) f->sticks);
      expect (&trace, i, "filler_mass", f->filler_mass_g);
      expect (&trace, i, "arc_on", f->arc_on_s);
      expect (&trace, i, "labour", f->labour_s);
      expect (&trace, i, "filler_cost", (double) f->money_minor[EM_MONEY_FILLER]);
      expect (&trace, i, "machine_cost", (double) f->money_minor[EM_MONEY_MACHINE]);
      expect (&trace, i, "gas_cost", (double) f->money_minor[EM_MONEY_GAS]);
      expect (&trace, i, "bench_cost", (double) f->money_minor[EM_MONEY_BENCH]);
      expect (&trace, i, "price", (double) f->price_minor);
      expect (&trace, i, "strip", f->task_s[EM_TASK_STRIP]);
      expect (&trace, i, "mask", f->task_s[EM_TASK_MASK]);
      expect (&trace, i, "handling", f->task_s[EM_TASK_HANDLING]);
      expect (&trace, i, "inspect", f->task_s[EM_TASK_INSPECT]);
    }
  expect (&trace, 0, "melt_out", cost.feature[0].task_s[EM_TASK_MELT_OUT]);
  expect (&trace, 1, "heat_input", cost.feature[1].arc.heat_input_kj_per_mm);
  for (int t = 0; t < EM_N_TASK; t++)
    expect (&trace, EM_ROW_QUOTE, t == EM_TASK_ARC_ON ? "arc_on_attended" : em_tasks[t].id, cost.task_s[t]);
  expect (&trace, EM_ROW_QUOTE, "arc_on", cost.arc_on_s);
  expect (&trace, EM_ROW_QUOTE, "labour", cost.labour_s);
  expect (&trace, EM_ROW_QUOTE, "sticks", (double) cost.sticks);
  expect (&trace, EM_ROW_QUOTE, "filler_cost", (double) cost.money_minor[EM_MONEY_FILLER]);
  expect (&trace, EM_ROW_QUOTE, "net", (double) cost.totals.net_minor);
  expect (&trace, EM_ROW_QUOTE, "total", (double) cost.totals.total_minor);
  em_trace_clear (&trace);
  em_cost_clear (&cost);
}
END_TEST

/* Money and time of one name would be two figures under one heading. */
START_TEST (test_a_heading_has_one_unit)
{
  EmCost cost;
  EmTrace trace;

  em_cost_init (&cost);
  em_trace_init (&trace);
  ck_assert_int_eq (em_cost_quote (&cost, &job.quote, &job.rates, &job.catalogue, &trace, NULL), EM_OK);
  for (int i = 0; i < trace.n_steps; i++)
    for (int j = 0; j < i; j++)
      {
        const EmTraceStep *a = &trace.step[i], *b = &trace.step[j];

        if (a->row == b->row && strcmp (a->quantity, b->quantity) == 0)
          ck_assert_msg ((strcmp (a->result.unit, "minor") == 0) == (strcmp (b->result.unit, "minor") == 0), "%s in %s and in %s", a->quantity,
                         a->result.unit, b->result.unit);
      }
  em_trace_clear (&trace);
  em_cost_clear (&cost);
}
END_TEST

/* A ratio or product is done over from its own inputs: wire = welded/usable, mass = A·ρ·wire, handling = arc-on·(1/OF − 1). */
START_TEST (test_steps_can_be_done_over)
{
  EmFeatureCost cost;
  EmTrace trace;
  const EmTraceStep *step;

  em_trace_init (&trace);
  ck_assert_int_eq (em_cost_feature (&job.quote, 0, &job.rates, &job.catalogue, &cost, &trace), EM_OK);
  step = find_last (&trace, 0, "wire_length");
  ck_assert_double_eq_tol (step->result.value, step->input[0].value / step->input[1].value, 1e-9);
  step = find_last (&trace, 0, "filler_mass");
  ck_assert_double_eq_tol (step->result.value, step->input[0].value * step->input[1].value * step->input[2].value, 1e-9);
  step = find_last (&trace, 0, "handling");
  ck_assert_double_eq_tol (step->result.value, step->input[0].value * (1 / step->input[1].value - 1), 1e-9);
  step = find_last (&trace, 0, "deposited_volume");
  ck_assert_double_eq_tol (step->result.value, step->input[0].value * step->input[1].value * step->input[2].value, 1e-9);
  for (int i = 0; i < trace.n_steps; i++)
    ck_assert_msg (trace.step[i].formula[0] != '\0' && trace.step[i].source[0] != '\0', "%s has no formula or source", trace.step[i].quantity);
  em_trace_clear (&trace);
}
END_TEST

/* With the working or without it, the figures are the same. */
START_TEST (test_working_changes_nothing)
{
  EmCost plain, told;
  EmTrace trace;

  em_trace_init (&trace);
  em_test_job_solve (&job, &plain);
  em_cost_init (&told);
  ck_assert_int_eq (em_cost_quote (&told, &job.quote, &job.rates, &job.catalogue, &trace, NULL), EM_OK);
  ck_assert_mem_eq (&plain.totals, &told.totals, sizeof plain.totals);
  ck_assert_double_eq (plain.labour_s, told.labour_s);
  em_trace_clear (&trace);
  em_cost_clear (&plain);
  em_cost_clear (&told);
}
END_TEST

int
main (void)
{
  const TTest *const tests[] = { test_every_figure_has_its_working, test_a_heading_has_one_unit, test_steps_can_be_done_over, test_working_changes_nothing };

  return em_test_main_with ("core: cost trace", setup, teardown, tests, (int) (sizeof tests / sizeof tests[0]));
}
