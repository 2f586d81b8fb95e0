/* em-compare: every wire of the catalogue tried on the whole quote at once.
 *
 * Features run outside and wires inside, so that a feature's shape and plans are solved once for all wires. What the office
 * fixed apart from the alloy (machine, size) is kept: a row's price is what choosing that wire makes of the quote.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-compare.h"
#include "em-cost-internal.h"

#include <stdlib.h>

/* What is gathered for one wire. */
typedef struct
{
  EmScenario scenario;
  int32_t    features_on[EM_MACHINE_MAX];
  EmReasons  reasons;        /* of ruling out */
  EmFault    fault;
  bool       is_priced;
} Trial;

typedef struct
{
  const EmQuote     *quote;
  const EmRates     *rates;
  const EmCatalogue *catalogue;
  int32_t            feature;    /* the one changed, −1: all */
  int32_t            base;       /* −1: not told */
  int32_t            present;    /* filler, −1 */
  EmPriceRule        rule;
  EmOptions          options;
  EmStudy            study;
  Trial             *trial;      /* by filler */
} Work;

void
em_compare_init (EmCompare *out_compare)
{
  *out_compare = (EmCompare) { .present = -1 };
}

void
em_compare_clear (EmCompare *compare)
{
  free (compare->row);
  em_compare_init (compare);
}

static void
clear_work (Work *work)
{
  for (int32_t i = 0; work->trial != NULL && i < work->catalogue->n_fillers; i++)
    em_scenario_clear (&work->trial[i].scenario);
  free (work->trial);
  em_study_clear (&work->study);
  em_options_clear (&work->options);
}

/* ---- before prices ---- */

/* Ruled out by the records alone. */
static EmReasons
judge_record (const EmFiller *filler)
{
  bool is_stocked = false;

  for (int32_t i = 0; i < filler->n_sizes; i++)
    is_stocked |= filler->size[i].is_stocked;
  return (filler->is_retired ? EM_REASON_BIT (EM_REASON_RETIRED) : 0) | (is_stocked ? 0 : EM_REASON_BIT (EM_REASON_NOT_STOCKED));
}

/* The present choice is priced whatever speaks against it, so that there is something to compare with. */
static EmStatus
begin_trials (Work *work, EmFault *out_fault)
{
  int32_t n = work->catalogue->n_fillers;

  work->trial = calloc ((size_t) n + 1, sizeof *work->trial);
  if (work->trial == NULL)
    return em_fault_set (out_fault, EM_FAULT_MEMORY, "compare", EM_ABSENT, EM_ABSENT, EM_ABSENT);
  for (int32_t i = 0; i < n; i++)
    em_scenario_init (&work->trial[i].scenario);
  for (int32_t i = 0; i < n; i++)
    {
      Trial *trial = &work->trial[i];

      trial->reasons = judge_record (&work->catalogue->filler[i]);
      trial->is_priced = trial->reasons == 0 || i == work->present;
      if (trial->is_priced && em_scenario_begin (&trial->scenario, work->quote, work->rates, work->catalogue, &work->rule) != EM_OK)
        return em_fault_set (out_fault, EM_FAULT_MEMORY, "compare", EM_ABSENT, EM_ABSENT, EM_ABSENT);
    }
  return EM_OK;
}

static EmStatus
begin (Work *work, EmFault *out_fault)
{
  const char *id = work->quote->text[EM_QUOTE_FILLER];
  EmStatus status = em_quote_check (work->quote, out_fault);

  if (status == EM_OK)
    status = em_rates_check (work->rates, out_fault);
  if (status == EM_OK)
    status = em_cost_check_extras (work->quote, out_fault);
  if (status == EM_OK)
    status = em_cost_find_base (work->quote, work->catalogue, &work->base, out_fault);
  if (status == EM_OK)
    status = em_options_solve (&work->options, work->rates, work->catalogue, -1, out_fault);
  if (status != EM_OK)
    return status;
  if (work->feature >= 0 && work->quote->feature[work->feature].text[EM_FEATURE_FILLER] != NULL)
    id = work->quote->feature[work->feature].text[EM_FEATURE_FILLER];
  work->present = em_catalogue_find_filler (work->catalogue, id);
  em_price_rule_set (work->quote, work->rates, &work->rule);
  return begin_trials (work, out_fault);
}

/* ---- features ---- */

/* A wire that one feature cannot take is out; the first such feature is told. */
static void
rule_out (Trial *trial, const EmFault *fault)
{
  trial->is_priced = false;
  trial->reasons |= EM_REASON_BIT (fault->code == EM_FAULT_UNSUITED ? EM_REASON_WRONG_PROCESS : EM_REASON_NO_SIZE_FITS);
  trial->fault = *fault;
}

static void
add_pick (Work *work, Trial *trial, int32_t filler, const EmPick *pick)
{
  EmFault fault = { 0 };

  if (em_scenario_add (&trial->scenario, &work->study, filler, pick, &fault) != EM_OK)
    rule_out (trial, &fault);
  else
    trial->features_on[pick->option->machine]++;
}

/* The studied feature with every wire in turn. */
static EmStatus
try_wires (Work *work, const EmFixed *fixed, EmFault *out_fault)
{
  for (int32_t i = 0; i < work->catalogue->n_fillers; i++)
    {
      EmPick pick;
      EmFault fault = { 0 };
      EmStatus status;

      if (!work->trial[i].is_priced)
        continue;
      status = em_study_pick (&work->study, i, fixed, &work->rule, &pick, NULL, &fault);
      if (status == EM_FAULT_MEMORY)
        return em_fault_set (out_fault, status, "compare", EM_ABSENT, EM_ABSENT, EM_ABSENT);
      if (status == EM_OK)
        add_pick (work, &work->trial[i], i, &pick);
      else
        rule_out (&work->trial[i], &fault);
    }
  return EM_OK;
}

/* The studied feature with its own wire, the same in every trial. One without a price is left out, as the costing does. */
static EmStatus
keep_wire (Work *work, int32_t index, const EmFixed *fixed, EmFault *out_fault)
{
  EmPick pick;
  int32_t filler;
  EmStatus status = em_cost_find_filler (work->quote, index, work->catalogue, &filler, NULL);

  if (status == EM_OK)
    status = em_study_pick (&work->study, filler, fixed, &work->rule, &pick, NULL, NULL);
  if (status == EM_FAULT_MEMORY)
    return em_fault_set (out_fault, status, "compare", EM_ABSENT, EM_ABSENT, EM_ABSENT);
  for (int32_t i = 0; status == EM_OK && i < work->catalogue->n_fillers; i++)
    if (work->trial[i].is_priced)
      {
        EmFault fault = { 0 };

        if (em_scenario_add (&work->trial[i].scenario, &work->study, filler, &pick, &fault) != EM_OK)
          rule_out (&work->trial[i], &fault);
      }
  return EM_OK;
}

/* A feature that no wire could mend, its shape or machine being at fault, speaks against none. */
static EmStatus
try_features (Work *work, EmFault *out_fault)
{
  EmStatus status = EM_OK;

  for (int32_t i = 0; i < work->quote->n_features && status == EM_OK; i++)
    {
      EmFixed fixed;
      EmStatus studied = em_study_solve (&work->study, work->quote, i, work->rates, &work->options, NULL);

      if (studied == EM_FAULT_MEMORY)
        return em_fault_set (out_fault, studied, "compare", EM_ABSENT, EM_ABSENT, EM_ABSENT);
      if (studied != EM_OK || em_cost_find_fixed (work->quote, i, work->rates, &fixed, NULL) != EM_OK)
        continue;
      status = work->feature < 0 || work->feature == i ? try_wires (work, &fixed, out_fault) : keep_wire (work, i, &fixed, out_fault);
    }
  return status;
}

/* ---- rows ---- */

/* Of the process of most features the machine of most; where none was priced what the office named, else the first in use,
 * one that suits the wire's process before others. */
static int32_t
typical_machine (const Work *work, const Trial *trial, const EmFiller *filler)
{
  const EmRates *rates = work->rates;
  int32_t by_process[EM_N_PROCESS] = { 0 }, best = -1;
  EmProcess process = EM_PROCESS_LASER;

  for (int32_t i = 0; i < rates->n_machines; i++)
    by_process[rates->machine[i].process] += trial->features_on[i];
  for (int i = 0; i < EM_N_PROCESS; i++)
    if (by_process[i] > by_process[process])
      process = (EmProcess) i;
  for (int32_t i = 0; i < rates->n_machines; i++)
    if (trial->features_on[i] > 0 && rates->machine[i].process == process && (best < 0 || trial->features_on[i] > trial->features_on[best]))
      best = i;
  if (best < 0 && work->quote->text[EM_QUOTE_MACHINE] != NULL)
    best = em_rates_find_machine (rates, work->quote->text[EM_QUOTE_MACHINE]);
  for (int32_t i = 0; best < 0 && i < rates->n_machines; i++)
    if (!rates->machine[i].is_retired && (int32_t) rates->machine[i].process == em_process_find (work->quote->text[EM_QUOTE_PROCESS]))
      best = i;
  for (int32_t i = 0; best < 0 && i < rates->n_machines; i++)
    if (!rates->machine[i].is_retired && (filler->processes & (1u << rates->machine[i].process)) != 0)
      best = i;
  for (int32_t i = 0; best < 0 && i < rates->n_machines; i++)
    if (!rates->machine[i].is_retired)
      best = i;
  return best;
}

static EmEstimate
no_base (void)
{
  return (EmEstimate) { EM_ABSENT, EM_VALID_NOT_APPLICABLE, "base" };
}

/* With no base told there is nothing to judge by but the wire's own record. */
static void
pair_with_nothing (const EmFiller *filler, EmPairing *out_pairing)
{
  EmConstitution nowhere = { EM_ABSENT, EM_ABSENT, EM_PHASE_UNKNOWN, EM_ABSENT, EM_ABSENT, false, NULL };

  *out_pairing = (EmPairing) {
    .ce_iiw = no_base (), .cet = no_base (), .ms_degc = no_base (), .preheat_seferian_degc = no_base (),
    .preheat_en1011_degc = no_base (), .martensite_hrc = no_base (), .schaeffler = nowhere, .wrc = nowhere,
    .hardness_low_hrc = filler->hardness_low_hrc, .hardness_high_hrc = filler->hardness_high_hrc,
    .hardness_low_hv = filler->hardness_low_hv, .hardness_high_hv = filler->hardness_high_hv, .is_hardness_from_catalogue = true,
    .base_hrc = EM_ABSENT, .base_hv = EM_ABSENT, .preheat_degc = EM_ABSENT, .preheat_ceiling_degc = EM_ABSENT, .is_suited = true,
  };
  em_composition_middle (&filler->composition, out_pairing->deposit);
}

static void
pair (const Work *work, int32_t filler, EmCompareRow *row)
{
  const EmFiller *record = &work->catalogue->filler[filler];
  int32_t machine = typical_machine (work, &work->trial[filler], record);

  if (work->base < 0 || machine < 0)
    pair_with_nothing (record, &row->pairing);
  else
    em_steel_pair (&work->catalogue->base[work->base], record, work->rates->machine[machine].process,
                   work->rates->machine[machine].dilution_ratio, work->quote->hardness_hrc, work->quote->section_mm, &row->pairing, NULL);
  row->reasons |= row->pairing.reasons;
}

static EmStatus
price (Trial *trial, EmCompareRow *row, EmFault *out_fault)
{
  EmScenarioFigures figures;
  EmFault fault = { 0 };
  EmStatus status = em_scenario_finish (&trial->scenario, &figures, &fault);

  if (status == EM_FAULT_MEMORY)
    {
      if (out_fault != NULL)
        *out_fault = fault;
      return status;
    }
  if (status != EM_OK)
    {
      rule_out (trial, &fault);
      return EM_OK;
    }
  row->net_minor = figures.totals.net_minor;
  row->total_minor = figures.totals.total_minor;
  row->filler_cost_minor = figures.money_minor[EM_MONEY_FILLER];
  for (int i = 0; i < EM_N_MONEY; i++)
    row->money_minor[i] = figures.money_minor[i];
  row->arc_on_s = figures.arc_on_s;
  row->labour_s = figures.labour_s;
  row->wire_low_mm = trial->scenario.wire_low_mm;
  row->wire_high_mm = trial->scenario.wire_high_mm;
  return EM_OK;
}

static EmStatus
fill_row (const Work *work, int32_t filler, EmCompareRow *out_row, EmFault *out_fault)
{
  Trial *trial = &work->trial[filler];
  EmCompareRow row = { .filler = filler, .is_present = filler == work->present, .wire_low_mm = EM_ABSENT, .wire_high_mm = EM_ABSENT };
  EmStatus status = trial->is_priced ? price (trial, &row, out_fault) : EM_OK;

  if (status != EM_OK)
    return status;
  row.reasons = trial->reasons;
  row.fault = trial->fault;
  pair (work, filler, &row);
  row.is_ruled_out = (row.reasons & EM_REASONS_RULE_OUT) != 0;
  *out_row = row;
  return EM_OK;
}

/* Suited by price, then the ruled out; by catalogue where they tie. */
static int
by_rank (const void *first, const void *second)
{
  const EmCompareRow *a = first, *b = second;

  if (a->is_ruled_out != b->is_ruled_out)
    return a->is_ruled_out ? 1 : -1;
  if (!a->is_ruled_out && a->net_minor != b->net_minor)
    return a->net_minor < b->net_minor ? -1 : 1;
  return a->filler < b->filler ? -1 : a->filler > b->filler;
}

/* Order, the cheapest named, and the differences. Nets are far within int64. */
static void
rank (EmCompare *compare, bool is_present_priced)
{
  qsort (compare->row, (size_t) compare->n_rows, sizeof *compare->row, by_rank);
  for (int32_t i = 0; i < compare->n_rows; i++)
    {
      EmCompareRow *row = &compare->row[i];

      if (row->is_present)
        compare->present = i;
      if (!row->is_ruled_out && row->net_minor == compare->row[0].net_minor)
        row->reasons |= EM_REASON_BIT (EM_REASON_CHEAPEST);
    }
  for (int32_t i = 0; is_present_priced && i < compare->n_rows; i++)
    if (!compare->row[i].is_ruled_out)
      compare->row[i].difference_minor = compare->row[i].net_minor - compare->row[compare->present].net_minor;
}

static EmStatus
compare_all (Work *work, EmCompare *next, EmFault *out_fault)
{
  int32_t n = work->catalogue->n_fillers;
  EmStatus status = begin (work, out_fault);

  if (status == EM_OK)
    status = try_features (work, out_fault);
  if (status != EM_OK)
    return status;
  next->row = calloc ((size_t) n + 1, sizeof *next->row);
  if (next->row == NULL)
    return em_fault_set (out_fault, EM_FAULT_MEMORY, "compare", EM_ABSENT, EM_ABSENT, EM_ABSENT);
  next->cap_rows = n + 1;
  for (; next->n_rows < n && status == EM_OK; next->n_rows++)
    status = fill_row (work, next->n_rows, &next->row[next->n_rows], out_fault);
  if (status == EM_OK)
    rank (next, work->present >= 0 && work->trial[work->present].is_priced);
  return status;
}

/*
 * em_compare_quote:
 * @compare: initialised; keeps its last good rows on failure
 * @feature: −1, or the index of the only feature whose wire changes
 *
 * Every row's figures are those of em_cost_quote on the quote with that wire. Features at fault whatever the wire are left out,
 * as the costing leaves them out. A present choice that is ruled out is still priced where it can be. Faults as em_cost_quote.
 */
EmStatus
em_compare_quote (EmCompare *compare, const EmQuote *quote, int32_t feature, const EmRates *rates, const EmCatalogue *catalogue,
                  EmFault *out_fault)
{
  Work work = { .quote = quote, .rates = rates, .catalogue = catalogue, .feature = feature, .base = -1, .present = -1 };
  EmCompare next;
  EmStatus status;

  if (feature < -1 || feature >= quote->n_features)
    return em_fault_set (out_fault, EM_FAULT_RANGE, "feature", feature, -1, quote->n_features - 1);
  em_compare_init (&next);
  em_options_init (&work.options);
  em_study_init (&work.study);
  status = compare_all (&work, &next, out_fault);
  clear_work (&work);
  if (status != EM_OK)
    {
      em_compare_clear (&next);
      return status;
    }
  em_compare_clear (compare);
  *compare = next;
  return EM_OK;
}
