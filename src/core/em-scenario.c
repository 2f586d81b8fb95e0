/* em-scenario: a what-if over the whole quote, gathered feature by feature.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-cost-internal.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

void
em_scenario_init (EmScenario *out_scenario)
{
  *out_scenario = (EmScenario) { 0 };
  em_order_room_init (&out_scenario->room);
  em_preheats_init (&out_scenario->preheats);
}

void
em_scenario_clear (EmScenario *scenario)
{
  free (scenario->item);
  free (scenario->item_wire_mm);
  em_order_room_clear (&scenario->room);
  em_preheats_clear (&scenario->preheats);
  em_scenario_init (scenario);
}

static bool
make_room (EmScenario *scenario, int32_t n)
{
  size_t cap = (size_t) n + 1;
  EmOrderItem *item;
  double *wire_mm;

  if (scenario->item != NULL && scenario->cap_items >= n)
    return true;
  item = malloc (cap * sizeof *item);
  wire_mm = malloc (cap * sizeof *wire_mm);
  if (item == NULL || wire_mm == NULL)
    {
      free (item);
      free (wire_mm);
      return false;
    }
  free (scenario->item);
  free (scenario->item_wire_mm);
  scenario->item = item;
  scenario->item_wire_mm = wire_mm;
  scenario->cap_items = (int32_t) cap;
  return true;
}

EmStatus
em_scenario_begin (EmScenario *scenario, const EmQuote *quote, const EmRates *rates, const EmCatalogue *catalogue,
                   const EmPriceRule *rule)
{
  const char *base_id = quote->text[EM_QUOTE_BASE];
  int32_t base = base_id == NULL ? -1 : em_catalogue_find_base (catalogue, base_id);

  if (!make_room (scenario, quote->n_features) || em_preheats_begin (&scenario->preheats, quote, rates, catalogue, base) != EM_OK)
    return EM_FAULT_MEMORY;
  scenario->quote = quote;
  scenario->rates = rates;
  scenario->catalogue = catalogue;
  scenario->rule = rule;
  scenario->learning_factor = em_price_learning (quote->learning_ppm >= 0 ? quote->learning_ppm : rates->learning_ppm, quote->n_tools);
  scenario->subtotal_minor = scenario->calculated_minor = 0;
  memset (scenario->direct, 0, sizeof scenario->direct);
  memset (scenario->features_by_process, 0, sizeof scenario->features_by_process);
  scenario->arc_on_s = scenario->labour_s = 0.0;
  scenario->wire_low_mm = scenario->wire_high_mm = EM_ABSENT;
  scenario->preheat = (EmPreheat) { .degc = EM_ABSENT };
  scenario->n_items = 0;
  return EM_OK;
}

static EmStatus
overflow (EmFault *out_fault)
{
  return em_fault_set (out_fault, EM_FAULT_OVERFLOW, "price", EM_ABSENT, EM_ABSENT, EM_ABSENT);
}

/* A line joins the scenario: its exact parts, its rounded amount, and the override that is printed instead. */
static EmStatus
add_line (EmScenario *scenario, const EmExact direct[EM_N_DIRECT], int64_t calculated_minor, const EmFeature *feature)
{
  int64_t amount = calculated_minor;
  EmStatus status = EM_OK;

  if (feature != NULL && feature->has_override)
    status = em_money_mul_div (feature->override_minor, scenario->quote->n_tools, 1, &amount);
  if (status == EM_OK)
    status = em_money_add (scenario->subtotal_minor, amount, &scenario->subtotal_minor);
  if (status == EM_OK)
    status = em_money_add (scenario->calculated_minor, calculated_minor, &scenario->calculated_minor);
  for (int i = 0; i < EM_N_DIRECT && status == EM_OK; i++)
    scenario->direct[i] += direct[i];
  return status;
}

/* A line that is not a feature's. */
static EmStatus
add_other_line (EmScenario *scenario, const EmExact direct[EM_N_DIRECT])
{
  int64_t calculated;
  EmStatus status = em_price_amount (scenario->rule, direct, &calculated);

  return status == EM_OK ? add_line (scenario, direct, calculated, NULL) : status;
}

/* The pick was priced for one tool, which needs no learning: what was found then serves. */
static EmStatus
add_pick (EmScenario *scenario, const EmFeature *feature, const EmPick *pick)
{
  EmExact direct[EM_N_DIRECT];
  int64_t calculated;
  bool is_priced = scenario->quote->n_tools == 1;
  EmStatus status = EM_OK;

  if (!is_priced)
    status = em_price_direct (scenario->rule, &pick->work, scenario->quote->n_tools, scenario->learning_factor, direct);
  if (status == EM_OK)
    status = is_priced ? em_price_amount_of_cost (scenario->rule, pick->cost, &calculated) : em_price_amount (scenario->rule, direct, &calculated);
  return status == EM_OK ? add_line (scenario, is_priced ? pick->direct : direct, calculated, feature) : status;
}

EmStatus
em_scenario_add (EmScenario *scenario, const EmStudy *study, int32_t filler, const EmPick *pick, EmFault *out_fault)
{
  const EmOption *option = pick->option;
  const EmMachine *machine = &scenario->rates->machine[option->machine];
  EmPreheat preheat = em_preheats_get (&scenario->preheats, filler, option->machine);
  double n = scenario->quote->n_tools;

  if (add_pick (scenario, study->feature, pick) != EM_OK)
    return overflow (out_fault);
  scenario->arc_on_s += n * pick->work.machine_s;
  scenario->labour_s += n * scenario->learning_factor * (pick->work.role_s[EM_ROLE_BENCH] + pick->work.role_s[EM_ROLE_FINISH]);
  scenario->wire_low_mm = fmin (scenario->wire_low_mm, option->wire_mm);
  scenario->wire_high_mm = fmax (scenario->wire_high_mm, option->wire_mm);
  scenario->features_by_process[machine->process]++;
  em_preheat_add (&scenario->preheat, &preheat);
  scenario->item_wire_mm[scenario->n_items] = study->feature->count * pick->plan->welded_length_mm * option->wire_per_track;
  scenario->item[scenario->n_items++] = (EmOrderItem) {
    .feature = study->row, .setting = study->feature->setting, .machine = option->machine,
    .wire = em_cost_wire (filler, option->size), .is_capped = pick->plan->cap_tracks > 0,
  };
  return EM_OK;
}

static EmStatus
add_shared (EmScenario *scenario, const double task_s[EM_N_TASK])
{
  size_t n_wires = (size_t) scenario->catalogue->n_fillers * EM_SIZE_MAX;
  double *use_mm = calloc (n_wires + 1, sizeof *use_mm);
  EmExact set_up[EM_N_DIRECT], order[EM_N_DIRECT];
  EmStatus status;

  if (use_mm == NULL)
    return EM_FAULT_MEMORY;
  for (int32_t i = 0; i < scenario->n_items; i++)
    use_mm[scenario->item[i].wire] += scenario->item_wire_mm[i];
  status = em_cost_shared_direct (scenario->rule, scenario->rates, scenario->catalogue, task_s, use_mm, scenario->quote->n_tools,
                                  scenario->learning_factor, set_up, order);
  if (status == EM_OK)
    status = add_other_line (scenario, set_up);
  if (status == EM_OK)
    status = add_other_line (scenario, order);
  free (use_mm);
  return status;
}

static EmStatus
add_extras (EmScenario *scenario)
{
  EmStatus status = EM_OK;

  for (int32_t i = 0; i < scenario->quote->n_extras && status == EM_OK; i++)
    {
      EmExact direct[EM_N_DIRECT];

      status = em_cost_extra_direct (scenario->rule, &scenario->quote->extra[i], scenario->quote->n_tools, direct);
      if (status == EM_OK)
        status = add_other_line (scenario, direct);
    }
  return status;
}

EmStatus
em_scenario_finish (EmScenario *scenario, EmScenarioFigures *out_figures, EmFault *out_fault)
{
  EmScenarioFigures figures = { .totals.n_tools = scenario->quote->n_tools, .arc_on_s = scenario->arc_on_s, .labour_s = scenario->labour_s };
  double task_s[EM_N_TASK], learned = scenario->quote->n_tools * scenario->learning_factor;
  double preheat_degc;
  int64_t cost_minor;
  EmStatus status = em_order_solve (&scenario->room, scenario->item, scenario->n_items, NULL, &figures.settings, &figures.wire_changes);

  if (status == EM_OK && scenario->n_items > 0)
    {
      em_cost_shared_times (scenario->rates, figures.settings, figures.wire_changes,
                            em_preheat_decide (scenario->quote, &scenario->preheat, &preheat_degc), task_s);
      for (int i = 0; i < EM_N_TASK; i++)
        figures.labour_s += task_s[i] * (em_tasks[i].scope == EM_PER_ORDER ? 1.0 : learned);
      status = add_shared (scenario, task_s);
    }
  if (status == EM_OK)
    status = add_extras (scenario);
  if (status == EM_OK)
    status = em_price_split (scenario->rule, scenario->direct, scenario->calculated_minor, figures.money_minor, &cost_minor);
  if (status != EM_OK)
    return em_fault_set (out_fault, status, status == EM_FAULT_MEMORY ? "quote" : "price", EM_ABSENT, EM_ABSENT, EM_ABSENT);
  if (scenario->n_items > 0 || scenario->quote->n_extras > 0)
    status = em_price_totals (scenario->quote, scenario->rates, scenario->subtotal_minor, scenario->quote->n_tools, &figures.totals, NULL, NULL, out_fault);
  if (status == EM_OK)
    *out_figures = figures;
  return status;
}
