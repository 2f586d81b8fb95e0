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

/* ---- every step of a feature done over from what it states alone ---- */

#define REDO(name, expression) static double name (const double *x) { return expression; }

REDO (product_of_two, x[0] * x[1])
REDO (product_of_three, x[0] * x[1] * x[2])
REDO (quotient, x[0] / x[1])
REDO (required, x[0] * (x[1] + x[2] * x[3]))
REDO (layers, ceil ((x[0] + x[1]) / x[2] - 1e-9) + x[3])
REDO (pitch, x[0] * x[1] / x[2])
REDO (cap, fmax (1, ceil ((x[0] + x[1]) / x[2] - 1e-9)) * x[3])
REDO (welded, x[0] * (x[1] + x[2]))
REDO (sticks, ceil (x[0] / (x[1] - x[2]) - 1e-9))
REDO (energy, x[0] * x[1] / (1 - x[2]) * x[3] / x[4])
REDO (pulse_speed, x[0] * x[1] * (1 - x[2]))
REDO (laser_speed, fmin (fmin (x[0], x[1]), fmin (x[2] * x[5] / x[6], x[3] * x[4] * x[5] / x[6])))
REDO (arc_speed, fmin (x[0] * x[1], x[2]))
REDO (pulse_energy, x[0] * x[1] / x[2])
REDO (arc_power_speed, x[0] * x[1] / x[2])
REDO (heat_input, 0.6 * x[0] * x[1] / (1000 * x[2]))
REDO (arc_on, (x[0] + x[1] * x[2]) / x[3])
REDO (gas, x[0] / 60 * (x[1] + x[2] * x[3]))
REDO (strip, 60 * x[0] * x[1] * x[2])
REDO (melt_out, x[0] * x[1] / x[2])
REDO (mask, 60 * x[0] * (x[1] + x[2] * x[3]))
REDO (handling, x[0] * (1 / x[1] - 1))
REDO (finish, 60 * x[0] * (x[1] * x[2] + x[3] * x[4]))
REDO (labour, x[0] + x[1] + x[2] + x[3] + x[4] + x[5])
REDO (per_hour, x[0] * x[1] / 3600)
REDO (per_m3, x[0] * x[1] / 1000)
REDO (contingency, x[0] * (x[1] + x[2]))
REDO (price, x[0] / (1 - x[1]))
REDO (margin, x[0] - x[1])
REDO (half, x[0] / 2)
REDO (same, x[0])

/* Money is told rounded, and what it is worked from too: so many halves of a minor unit it may be off. */
static const struct { const char *quantity, *symbol; double (*redo) (const double *x); double halves; } redos[] =
{
  { "wire_diameter", "d", NULL, 0 }, { "clearance", "s/2", half, 0 }, { "tilt", "τ", same, 0 },
  { "net_volume", "V", product_of_two, 0 }, { "required_volume", "Vr", required, 0 },
  { "layers", "tL", product_of_two, 0 }, { "layers", "N", layers, 0 }, { "tracks", "p", pitch, 0 }, { "tracks", "T", NULL, 0 },
  { "welded_length", "Lc", cap, 0 }, { "melt_out_length", "Lm", NULL, 0 }, { "welded_length", "L", welded, 0 },
  { "deposited_volume", "Vd", product_of_three, 0 }, { "wire_length", "Lw", quotient, 0 }, { "sticks", "S", sticks, 0 },
  { "filler_mass", "m", product_of_three, 0 }, { "filler_cost", "Cw", product_of_two, 1 }, { "speed", "q", energy, 0 },
  { "speed", "v1", pulse_speed, 0 }, { "speed", "v2", NULL, 0 }, { "speed", "v", NULL, 0 }, { "pulse_energy", "Ep", pulse_energy, 0 },
  { "peak_power", "Pk", quotient, 0 }, { "heat_input", "Q", heat_input, 0 }, { "arc_on", "t", arc_on, 0 }, { "gas", "G", gas, 0 },
  { "strip", "t", strip, 0 }, { "mask", "t", mask, 0 }, { "melt_out", "t", melt_out, 0 }, { "handling", "t", handling, 0 },
  { "inspect", "t", mask, 0 }, { "finish", "t", finish, 0 }, { "labour", "t", labour, 0 }, { "office_cost", "C", per_hour, 1 },
  { "bench_cost", "C", per_hour, 1.01 }, { "finish_cost", "C", per_hour, 1.01 }, { "machine_cost", "C", per_hour, 1.01 },
  { "consumable_cost", "C", per_hour, 1.01 }, { "gas_cost", "C", per_m3, 1.01 }, { "bought_cost", "C", same, 0 },
  { "overhead", "Co", product_of_two, 2 }, { "contingency", "Cc", contingency, 4 }, { "price", "P", price, 14 }, { "margin", "M", margin, 0 },
};

/* Speeds are told the laser's way and the arc's. */
static double
redo_speed (const EmTraceStep *step, const double *x)
{
  bool is_laser = step->n_inputs == 7;

  if (strcmp (step->result.symbol, "v2") == 0)
    return step->n_inputs == 2 ? quotient (x) : arc_power_speed (x);
  return is_laser ? laser_speed (x) : arc_speed (x);
}

static bool
redo_step (const EmTraceStep *step, double *out_value, double *out_slack)
{
  double x[EM_TRACE_INPUT_MAX];

  for (int i = 0; i < step->n_inputs; i++)
    x[i] = step->input[i].value;
  for (size_t r = 0; r < sizeof redos / sizeof redos[0]; r++)
    if (strcmp (redos[r].quantity, step->quantity) == 0 && strcmp (redos[r].symbol, step->result.symbol) == 0)
      {
        bool is_speed = strcmp (step->quantity, "speed") == 0 && redos[r].redo == NULL;

        *out_slack = redos[r].halves * 0.5;
        *out_value = is_speed ? redo_speed (step, x) : redos[r].redo != NULL ? redos[r].redo (x) : step->result.value;
        return true;
      }
  return false;
}

/* Near a texture, in a slot, on a torch of less current than its table asks for, on a laser of little power; everything finished by the shop. */
START_TEST (test_every_step_of_a_feature_can_be_done_over)
{
  EmTrace trace;

  job.quote.feature[0].clearance_mm = 3;
  job.quote.feature[0].slot_width_mm = 20;
  job.quote.feature[0].slot_depth_mm = 5;
  job.quote.feature[1].wire_mm = 0.889;
  job.rates.machine[1].current_high_a = 40;   /* 49.32 A asked at 0.889 mm */
  job.rates.machine[0].power_w = 20;
  for (int row = 0; row < 2; row++)
    {
      EmFeatureCost cost;

      em_trace_init (&trace);
      ck_assert_int_eq (em_cost_feature (&job.quote, row, &job.rates, &job.catalogue, &cost, &trace), EM_OK);
      ck_assert_int_eq (cost.arc.bound, row == 0 ? EM_BOUND_POWER : EM_BOUND_CURRENT);
      ck_assert_int_gt (trace.n_steps, 30);
      for (int i = 0; i < trace.n_steps; i++)
        {
          const EmTraceStep *step = &trace.step[i];
          double value = 0, slack = 0;

          ck_assert_msg (redo_step (step, &value, &slack), "%s, %s: a step this test does not know", step->quantity, step->result.symbol);
          ck_assert_msg (fabs (value - step->result.value) <= slack + 1e-9 * fabs (value), "feature %d, %s, %s = %s: %.9g, done over %.9g", row,
                         step->quantity, step->result.symbol, step->formula, step->result.value, value);
        }
      em_trace_clear (&trace);
    }
}
END_TEST

/* ---- the order ---- */

static const EmTraceStep *
find_step (const EmTrace *trace, const char *quantity, const char *formula)
{
  for (int i = 0; i < trace->n_steps; i++)
    if (trace->step[i].row == EM_ROW_QUOTE && strcmp (trace->step[i].quantity, quantity) == 0 && strstr (trace->step[i].formula, formula) != NULL)
      return &trace->step[i];
  ck_abort_msg ("no step of %s with %s", quantity, formula);
  return NULL;
}

/* Minimum charge, rush, discount, rounding step and two taxes, one on the other: every line of it is told from what stands above it and its
 * rate, and is what the price holds. A stated price is told beside what was calculated. */
START_TEST (test_lines_below_the_subtotal_are_told)
{
  EmCost cost;
  EmTrace trace;
  const struct { const char *quantity, *formula; EmLineType type; int32_t row; double sign; } rows[] =
  {
    { "net", "minimum charge", EM_LINE_MINIMUM, 0, 0 }, { "net", "rush,", EM_LINE_RUSH, 0, 1 }, { "net", "discount,", EM_LINE_DISCOUNT, 0, -1 },
    { "net", "rounding step", EM_LINE_ROUNDING, 0, 0 }, { "tax", "tax on", EM_LINE_TAX, 0, 1 },
  };

  job.rates.minimum_minor = 500000;
  job.rates.rounding_minor = 700;
  job.quote.rush_ppm = 250000;
  job.quote.discount_ppm = 100000;
  job.quote.feature[0].has_override = true;
  job.quote.feature[0].override_minor = 4321;
  ck_assert_int_eq (em_rates_add_tax_take (&job.rates, &(EmTax) { em_text_dup ("Tax"), 190000, false }), EM_OK);
  em_cost_init (&cost);
  em_trace_init (&trace);
  ck_assert_int_eq (em_cost_quote (&cost, &job.quote, &job.rates, &job.catalogue, &trace, NULL), EM_OK);
  for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++)
    {
      const EmTraceStep *step = find_step (&trace, rows[i].quantity, rows[i].formula);
      const EmLine *line = em_test_job_line (&cost, rows[i].type);

      ck_assert_msg (step->result.value == (double) line->amount_minor, "%s: %g", rows[i].formula, step->result.value);
      if (rows[i].sign != 0)
        ck_assert_double_eq_tol (rows[i].sign * step->input[0].value * step->input[1].value, step->result.value, 0.5);
    }
  ck_assert_double_eq (find_step (&trace, "total", "net")->result.value, (double) cost.totals.total_minor);
  ck_assert_double_eq (find_last (&trace, 0, "price")->result.value, 4321);
  ck_assert_double_eq (find_last (&trace, 0, "price")->input[0].value, (double) cost.feature[0].calculated_minor);
  em_trace_clear (&trace);
  em_cost_clear (&cost);
}
END_TEST

/* The choice of wire is told by why it was made. */
START_TEST (test_choice_is_told)
{
  static const char *const told[EM_N_WHY] = { "d of the cheapest", "d of the only", "d as the office" };

  for (int why = 0; why < EM_N_WHY; why++)
    {
      EmFeatureCost cost;
      EmTrace trace;

      em_feature_set_text (&job.quote.feature[1], EM_FEATURE_MACHINE, why == EM_WHY_OFFICE ? "tig" : NULL);
      em_quote_set_text (&job.quote, EM_QUOTE_MACHINE, NULL);
      for (int i = 0; i < 5; i++)
        job.catalogue.filler[0].size[i].is_stocked = why != EM_WHY_ONLY || i == 2;
      job.rates.machine[1].is_retired = why == EM_WHY_ONLY;
      em_trace_init (&trace);
      ck_assert_int_eq (em_cost_feature (&job.quote, 1, &job.rates, &job.catalogue, &cost, &trace), EM_OK);
      ck_assert_int_eq (cost.why, why);
      ck_assert_msg (strncmp (trace.step[0].formula, told[why], strlen (told[why])) == 0, "%d: %s", why, trace.step[0].formula);
      ck_assert_double_eq (trace.step[0].result.value, cost.rules.wire_mm);
      ck_assert_double_eq (trace.step[0].input[0].value, cost.n_fitting);
      em_trace_clear (&trace);
    }
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
  const TTest *const tests[] = { test_every_figure_has_its_working, test_a_heading_has_one_unit, test_steps_can_be_done_over,
                                 test_every_step_of_a_feature_can_be_done_over, test_lines_below_the_subtotal_are_told,
                                 test_choice_is_told, test_working_changes_nothing };

  return em_test_main_with ("core: cost trace", setup, teardown, tests, (int) (sizeof tests / sizeof tests[0]));
}
