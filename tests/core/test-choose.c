/* Checks of core/em-choose. The choice is held against trying every option exactly, one by one, by the rule its header states:
 * sizes whose layer fits the job before those that overfill it, of the first the cheapest, ties to the thicker wire, of the
 * second the finest; on seeded random features, shops and rates, those among them at which prices run over or all tie.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-cost-internal.h"
#include "em-screen.h"
#include "em-test-job.h"

#include <math.h>

enum { ROUNDS = 4000 };

static EmTestJob job;
static EmOptions options;
static EmStudy study;
static EmPriceRule rule;
static uint64_t state;

static void
setup (void)
{
  em_test_job_init (&job);
  em_options_init (&options);
  em_study_init (&study);
  state = 20260301;
}

static void
teardown (void)
{
  em_study_clear (&study);
  em_options_clear (&options);
  em_test_job_clear (&job);
}

static double
draw (double low, double high)
{
  state = state * UINT64_C (6364136223846793005) + UINT64_C (1442695040888963407);
  return low + (high - low) * (double) (state >> 11) / 9007199254740992.0;
}

static bool
chance (double p)
{
  return draw (0, 1) < p;
}

static double
draw_value (const EmField *field)
{
  int n_options = 0;

  /* One or the other of two sizes that mean the same: without this no bore and no pin is ever drawn. */
  if (!field->is_required && em_is_absent (field->preset) && draw (0, 1) < 0.5)
    return EM_ABSENT;
  switch (field->quantity)
    {
    case EM_QUANTITY_LENGTH:
      return exp (draw (log (0.05), log (chance (0.02) ? 2000 : 40)));
    case EM_QUANTITY_AREA:
      return draw (1, 400);
    case EM_QUANTITY_ANGLE:
      return draw (fmax (field->low, 5), fmin (field->high, 170));
    case EM_QUANTITY_COUNT:
      return floor (draw (0, 3));
    case EM_QUANTITY_CHOICE:
      while (field->options[n_options] != NULL)
        n_options++;
      return floor (draw (0, n_options));
    }
  return EM_ABSENT;
}

static void
draw_feature (void)
{
  EmFeature feature;

  if (job.quote.n_features > 0)
    em_quote_remove (&job.quote, 0, NULL);
  em_feature_init (&feature, em_kinds[(int) draw (0, em_n_kinds)]);
  for (int i = 0; i < feature.kind->n_fields; i++)
    feature.value[i] = draw_value (&feature.kind->fields[i]);
  feature.count = chance (0.02) ? 10000 : 1 + (int32_t) draw (0, 4);
  feature.access = (EmAccess) draw (0, EM_N_ACCESS);
  feature.melt_out = (EmChoice) draw (0, 3);
  feature.cap = (EmChoice) draw (0, 3);
  if (chance (0.2))
    feature.clearance_mm = draw (0.1, 1.5);
  if (chance (0.2))
    {
      feature.slot_width_mm = draw (1, 20);
      feature.slot_depth_mm = draw (0, 30);
    }
  ck_assert_int_eq (em_quote_insert_take (&job.quote, 0, &feature), EM_OK);
}

/* Free wire, no charge for time, the highest rates the book allows: many ties, and prices beyond what is held. */
static void
draw_shop (void)
{
  static const int64_t rates_minor[] = { 0, 1, 6000, INT64_C (1000000000000) };
  EmMachine *machine = job.rates.machine;

  job.rates.bench_minor_per_h = rates_minor[chance (0.7) ? 2 : (int) draw (0, 4)];
  machine[0].machine_minor_per_h = machine[1].machine_minor_per_h = rates_minor[chance (0.7) ? 2 : (int) draw (0, 4)];
  machine[0].consumable_minor_per_h = machine[1].consumable_minor_per_h = rates_minor[(int) draw (0, 3)];
  machine[1].efficiency_ratio = chance (0.5) ? machine[0].efficiency_ratio : 0.9;
  machine[1].is_retired = chance (0.1);
  job.rates.stock_mm = draw (0, 0.4);
  job.quote.finish = chance (0.5) ? EM_FINISH_SHOP : EM_FINISH_CUSTOMER;
  for (int s = 0; s < 5; s++)
    {
      EmWireSize *size = &job.catalogue.filler[0].size[s];

      size->price_minor = rates_minor[(int) draw (0, 3)];
      size->basis = (EmPriceBasis) draw (0, EM_N_PRICE_BASIS);
      size->is_stocked = chance (0.8);
    }
  ck_assert_int_eq (em_options_solve (&options, &job.rates, &job.catalogue, -1, NULL), EM_OK);
  em_price_rule_set (&job.quote, &job.rates, &rule);
}

static EmFixed
draw_fixed (void)
{
  EmFixed fixed = { -1, -1, EM_ABSENT };

  if (chance (0.2))
    fixed.machine = (int32_t) draw (0, 2);
  else if (chance (0.2))
    fixed.process = (int32_t) draw (0, EM_N_PROCESS);
  if (chance (0.2))
    fixed.wire_mm = job.catalogue.filler[0].size[(int) draw (0, 5)].wire_mm;
  return fixed;
}

static bool
is_within (const EmOption *option, const EmFixed *fixed)
{
  const EmWireSize *size = &job.catalogue.filler[option->filler].size[option->size];

  const EmMachine *machine = &job.rates.machine[option->machine];
  bool is_process = fixed->process < 0 || machine->process == (EmProcess) fixed->process;

  return (fixed->machine < 0 ? !machine->is_retired && is_process : fixed->machine == option->machine)
         && (em_is_absent (fixed->wire_mm) ? size->is_stocked : fabs (size->wire_mm - fixed->wire_mm) < 1e-3);
}

static double
overfilling_wire_mm (const EmPick *pick)
{
  return pick->plan->layer_mm > (study.shape.height_mm + study.rules.stock_mm) * (1 + 1e-9) ? pick->option->wire_mm : 0;
}

static bool
goes_before (const EmPick *a, const EmPick *b)
{
  if (overfilling_wire_mm (a) != overfilling_wire_mm (b))
    return overfilling_wire_mm (a) < overfilling_wire_mm (b);
  return a->cost != b->cost ? a->cost < b->cost : a->option->wire_mm > b->option->wire_mm;
}

/* Every option tried; how many do. */
static int
try_all (const EmFixed *fixed, EmPick *out_best)
{
  int n = 0;

  for (int32_t i = options.first[0]; i < options.first[1]; i++)
    {
      EmPick pick;

      if (!is_within (&options.option[i], fixed) || em_study_try (&study, &options.option[i], &rule, &pick, NULL) != EM_OK)
        continue;
      if (n++ == 0 || goes_before (&pick, out_best))
        *out_best = pick;
    }
  return n;
}

START_TEST (test_choice_is_that_of_trying_all)
{
  const EmFixed none = { -1, -1, EM_ABSENT };
  int n_chosen = 0, n_refused = 0, n_overfilling = 0;

  for (int round = 0; round < ROUNDS; round++)
    {
      EmPick pick, cheapest, best, best_of_all;
      EmFault fault;
      EmFixed fixed = draw_fixed ();

      draw_feature ();
      draw_shop ();
      if (em_study_solve (&study, &job.quote, 0, &job.rates, &options, NULL) != EM_OK)
        continue;

      EmStatus status = em_study_pick (&study, 0, &fixed, &rule, &pick, &cheapest, &fault);
      int n = try_all (&fixed, &best), n_all = try_all (&none, &best_of_all);

      ck_assert_msg ((status == EM_OK) == (n > 0), "round %d: %d options do", round, n);
      if (n == 0)
        {
          n_refused++;
          continue;
        }
      ck_assert_msg (pick.option == best.option, "round %d: %g mm on machine %d, not %g mm on %d", round, pick.option->wire_mm,
                     pick.option->machine, best.option->wire_mm, best.option->machine);
      ck_assert_int_eq (pick.n_fitting, n);
      ck_assert (pick.cost == best.cost && memcmp (&pick.work, &best.work, sizeof pick.work) == 0);
      ck_assert_ptr_eq (cheapest.option, n_all > 0 ? best_of_all.option : best.option);
      n_chosen++;
      n_overfilling += overfilling_wire_mm (&best) > 0;
    }
  /* The draws reach every branch, or the check is none. */
  ck_assert_int_gt (n_chosen, ROUNDS / 4);
  ck_assert_int_gt (n_refused, ROUNDS / 40);
  ck_assert_int_gt (n_overfilling, ROUNDS / 50);
}
END_TEST

/* The quick look's bracket holds the exact cost: with no contingency in the rule the exact cost is parts of
 * 9·10⁹ · 10¹² to the minor unit, common part and all. */
START_TEST (test_bracket_holds_exact_cost)
{
  int n = 0;

  for (int round = 0; round < ROUNDS; round++)
    {
      draw_feature ();
      draw_shop ();
      rule.contingency_ppm = 0;
      if (em_study_solve (&study, &job.quote, 0, &job.rates, &options, NULL) != EM_OK)
        continue;
      em_screen_set (&study, &rule);
      for (int32_t i = options.first[0]; i < options.first[1]; i++)
        {
          const EmOptionLook *option = &options.look[i];
          const EmPairLook *look = &study.look[option->pair];
          EmPick pick;

          em_screen_look (&study, option->pair);
          if (!option->is_fine || !look->is_fine || em_study_try (&study, &options.option[i], &rule, &pick, NULL) != EM_OK)
            continue;

          double minor = em_screen_minor (option, look), slack = em_screen_slack (&study.screen, minor);
          double exact = (double) pick.cost / 9e9 / 1e12 - study.screen.common_minor;

          ck_assert_msg (fabs (exact - minor) <= slack, "round %d: %.9g, not %.9g ± %.3g", round, exact, minor, slack);
          n++;
        }
    }
  ck_assert_int_gt (n, ROUNDS);
}
END_TEST

int
main (void)
{
  const TTest *const tests[] = { test_choice_is_that_of_trying_all, test_bracket_holds_exact_cost };

  return em_test_main_with ("choose", setup, teardown, tests, (int) (sizeof tests / sizeof tests[0]));
}
