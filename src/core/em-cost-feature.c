/* em-cost-feature: one feature by itself, from shape to its share of the price.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-cost-internal.h"

#include <math.h>

#define PI 3.14159265358979323846

/* A stated price above this is a slip of the keyboard. */
#define OVERRIDE_MINOR_HIGH INT64_C (1000000000000)

static void
set_faulty (EmFeatureCost *out_cost, const EmFault *fault)
{
  *out_cost = (EmFeatureCost) { .status = fault->code, .fault = *fault, .base = -1, .filler = -1, .machine = -1, .size = -1,
                                .tilt_deg = EM_ABSENT };
}

/* A whole number of sticks, guarded as every count is. */
static int64_t
sticks_of (double wire_mm, double usable_stick_mm)
{
  return (int64_t) em_ceil (wire_mm / usable_stick_mm);
}

/* Figures of all instances of one tool from the pick. */
static void
fill_figures (const EmStudy *study, const EmPick *pick, const EmFiller *filler, EmFeatureCost *cost)
{
  const EmPlan *plan = pick->plan;
  double n = study->feature->count, wire_mm = pick->option->wire_mm;

  cost->net_volume_mm3 = n * plan->net_volume_mm3;
  cost->required_volume_mm3 = n * plan->required_volume_mm3;
  cost->deposited_volume_mm3 = n * plan->deposited_volume_mm3;
  cost->excess_volume_mm3 = n * plan->excess_volume_mm3;
  cost->welded_length_mm = n * plan->welded_length_mm;
  cost->wire_length_mm = cost->welded_length_mm * pick->option->wire_per_track;
  cost->sticks = sticks_of (cost->wire_length_mm, em_cost_stick_mm (filler, study->rates) - study->rates->stub_mm);
  cost->filler_mass_g = PI * wire_mm * wire_mm / 4.0 * filler->density_g_per_mm3 * cost->wire_length_mm;
  em_study_tasks (study, pick, cost->task_s);
  for (int i = 0; i < EM_N_TASK; i++)
    cost->labour_s += cost->task_s[i];
  cost->arc_on_s = cost->task_s[EM_TASK_ARC_ON] + cost->task_s[EM_TASK_MELT_OUT];
  cost->gas_l = pick->work.gas_l;
  cost->pulses = em_is_absent (pick->option->arc.frequency_hz) ? 0 : (int64_t) ceil (cost->arc_on_s * pick->option->arc.frequency_hz);
}

static EmStatus
price_of (const EmPriceRule *rule, const EmWork *work, EmExact direct[EM_N_DIRECT], int64_t *out_minor)
{
  EmStatus status = em_price_direct (rule, work, 1, 1.0, direct);

  return status == EM_OK ? em_price_amount (rule, direct, out_minor) : status;
}

static EmStatus
fill_money (const EmStudy *study, const EmPick *pick, const EmPick *cheapest, const EmPriceRule *rule, EmFeatureCost *cost)
{
  EmExact direct[EM_N_DIRECT], other[EM_N_DIRECT];
  int64_t cheapest_minor = 0;
  EmStatus status = price_of (rule, &pick->work, direct, &cost->calculated_minor);

  if (status == EM_OK)
    status = em_price_split (rule, direct, cost->calculated_minor, cost->money_minor, &cost->cost_minor);
  if (status == EM_OK && cost->why == EM_WHY_OFFICE)
    {
      status = price_of (rule, &cheapest->work, other, &cheapest_minor);
      cost->office_choice_minor = cost->calculated_minor - cheapest_minor;
    }
  cost->price_minor = study->feature->has_override ? study->feature->override_minor : cost->calculated_minor;
  return status;
}

static EmWhy
why_of (const EmFixed *fixed, const EmPick *pick)
{
  if (fixed->machine >= 0 || fixed->process >= 0 || !em_is_absent (fixed->wire_mm))
    return EM_WHY_OFFICE;
  return pick->n_fitting == 1 ? EM_WHY_ONLY : EM_WHY_CHEAPEST;
}

static EmStatus
check_override (const EmFeature *feature, EmFault *out_fault)
{
  if (!feature->has_override || (feature->override_minor >= 0 && feature->override_minor <= OVERRIDE_MINOR_HIGH))
    return EM_OK;
  return em_fault_set (out_fault, EM_FAULT_RANGE, "override", (double) feature->override_minor, 0, (double) OVERRIDE_MINOR_HIGH);
}

static EmStatus
cost_feature (EmStudy *study, const EmOptions *options, const EmQuote *quote, int32_t index, const EmRates *rates,
              const EmCatalogue *catalogue, const EmPriceRule *rule, EmFeatureCost *out_cost, EmWork *out_work, EmFault *out_fault)
{
  EmFeatureCost cost = { .status = EM_OK, .tilt_deg = EM_ABSENT };
  EmPick pick, cheapest;
  EmFixed fixed;
  EmStatus status = em_cost_find_base (quote, catalogue, &cost.base, out_fault);

  if (status == EM_OK)
    status = em_study_solve (study, quote, index, rates, options, out_fault);
  if (status == EM_OK)
    status = check_override (&quote->feature[index], out_fault);
  if (status == EM_OK)
    status = em_cost_find_filler (quote, index, catalogue, &cost.filler, out_fault);
  if (status == EM_OK)
    status = em_cost_find_fixed (quote, index, rates, &fixed, out_fault);
  if (status == EM_OK)
    status = em_study_pick (study, cost.filler, &fixed, rule, &pick, &cheapest, out_fault);
  if (status != EM_OK)
    return status;
  cost.shape = study->shape;
  cost.rules = study->rules;
  cost.rules.wire_mm = pick.option->wire_mm;
  cost.rules.efficiency_ratio = rates->machine[pick.option->machine].efficiency_ratio;
  cost.plan = *pick.plan;
  cost.arc = pick.option->arc;
  cost.machine = pick.option->machine;
  cost.size = pick.option->size;
  cost.tilt_deg = pick.tilt_deg;
  cost.why = why_of (&fixed, &pick);
  cost.n_fitting = pick.n_fitting;
  fill_figures (study, &pick, &catalogue->filler[cost.filler], &cost);
  status = fill_money (study, &pick, &cheapest, rule, &cost);
  if (status != EM_OK)
    return em_fault_set (out_fault, status, "price", EM_ABSENT, EM_ABSENT, EM_ABSENT);
  *out_cost = cost;
  *out_work = pick.work;
  return EM_OK;
}

EmStatus
em_cost_feature_with (EmStudy *study, const EmOptions *options, const EmQuote *quote, int32_t index, const EmRates *rates,
                      const EmCatalogue *catalogue, const EmPriceRule *rule, EmFeatureCost *out_cost, EmWork *out_work)
{
  EmFault fault;
  EmStatus status = cost_feature (study, options, quote, index, rates, catalogue, rule, out_cost, out_work, &fault);

  if (status != EM_OK)
    {
      fault.row = index;
      set_faulty (out_cost, &fault);
      *out_work = (EmWork) { 0 };
    }
  return status;
}

/* What a single feature needs around it: checks, rule and the options of its filler. */
static EmStatus
prepare_one (const EmQuote *quote, int32_t index, const EmRates *rates, const EmCatalogue *catalogue, EmOptions *options,
             EmPriceRule *rule, EmFault *out_fault)
{
  int32_t filler;
  EmStatus status = em_quote_check (quote, out_fault);

  if (status == EM_OK)
    status = em_rates_check (rates, out_fault);
  if (status == EM_OK)
    status = em_cost_find_filler (quote, index, catalogue, &filler, out_fault);
  if (status == EM_OK)
    status = em_options_solve (options, rates, catalogue, filler, out_fault);
  if (status == EM_OK)
    em_price_rule_set (quote, rates, rule);
  return status;
}

/**
 * em_cost_feature:
 * One feature on one tool, nothing of the quote shared in it. On a fault *out_cost holds it and no figures.
 */
EmStatus
em_cost_feature (const EmQuote *quote, int32_t index, const EmRates *rates, const EmCatalogue *catalogue,
                 EmFeatureCost *out_cost, EmTrace *trace)
{
  EmOptions options;
  EmPriceRule rule;
  EmStudy study;
  EmWork work;
  EmFault fault;
  EmStatus status;

  em_options_init (&options);
  em_study_init (&study);
  status = prepare_one (quote, index, rates, catalogue, &options, &rule, &fault);
  if (status != EM_OK)
    set_faulty (out_cost, &fault);
  else
    status = em_cost_feature_with (&study, &options, quote, index, rates, catalogue, &rule, out_cost, &work);
  if (status == EM_OK)
    em_cost_trace_feature (trace, quote, index, rates, catalogue, out_cost);
  em_study_clear (&study);
  em_options_clear (&options);
  return status;
}

/* Cost told to the minor unit: what em_price_cost counts in, rounded. */
static int64_t
minor_of (EmExact cost)
{
  int64_t minor = 0;

  em_exact_round (cost, (EmExact) EM_EXACT_PER_MINOR * EM_PPM * EM_PPM, &minor);
  return minor;
}

static EmSizeTried
try_size (EmStudy *study, const EmOption *option, const EmPriceRule *rule)
{
  EmSizeTried tried = { .wire_mm = option->wire_mm, .machine = option->machine };
  EmPick pick;

  tried.status = em_study_try (study, option, rule, &pick, &tried.fault);
  if (tried.status != EM_OK)
    return tried;
  tried.fault = (EmFault) { 0 };
  tried.overfills = em_study_overfills (study, pick.plan);
  tried.cost_minor = minor_of (pick.cost);
  /* Can't run over: the direct cost it comes from is bounded. */
  em_price_amount_of_cost (rule, pick.cost, &tried.price_minor);
  return tried;
}

EmStatus
em_cost_tried (const EmQuote *quote, int32_t index, const EmRates *rates, const EmCatalogue *catalogue,
               EmSizeTried *out_tried, int32_t *out_n_tried, EmFault *out_fault)
{
  EmOptions options;
  EmPriceRule rule;
  EmStudy study;
  EmStatus status;
  int32_t n = 0;

  em_options_init (&options);
  em_study_init (&study);
  status = prepare_one (quote, index, rates, catalogue, &options, &rule, out_fault);
  if (status == EM_OK)
    status = em_study_solve (&study, quote, index, rates, &options, out_fault);
  if (status == EM_OK)
    {
      for (int32_t i = 0; i < options.n_options && n < EM_TRIED_MAX; i++)
        if (options.option[i].is_offered)
          out_tried[n++] = try_size (&study, &options.option[i], &rule);
      *out_n_tried = n;
    }
  em_study_clear (&study);
  em_options_clear (&options);
  return status;
}
