/* em-labour: who spends how long on what.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-cost-internal.h"

#include <math.h>

#define MINUTE_S   60.0
#define MM2_PER_CM2 100.0
#define MM3_PER_CM3 1000.0
#define MM_PER_CM   10.0

const EmTaskRow em_tasks[EM_N_TASK] =
{
  { "paperwork",   EM_N ("Paperwork"),                       EM_PER_ORDER,    EM_ROLE_OFFICE },
  { "program",     EM_N ("Settings and a trial bead"),       EM_PER_ORDER,    EM_ROLE_BENCH },
  { "receive",     EM_N ("Receive and clean"),               EM_PER_TOOL,     EM_ROLE_BENCH },
  { "strip",       EM_N ("Strip the coating"),               EM_PER_INSTANCE, EM_ROLE_BENCH },
  { "preheat",     EM_N ("Attend the preheat"),              EM_PER_TOOL,     EM_ROLE_BENCH },
  { "true",        EM_N ("Set up and true"),                 EM_PER_SETTING,  EM_ROLE_BENCH },
  { "mask",        EM_N ("Find and mask"),                   EM_PER_INSTANCE, EM_ROLE_BENCH },
  { "melt_out",    EM_N ("Fuse clean, beam or arc on"),      EM_PER_INSTANCE, EM_ROLE_BENCH },
  { "arc_on",      EM_N ("Weld, beam or arc on"),            EM_PER_INSTANCE, EM_ROLE_BENCH },
  { "handling",    EM_N ("Handling between tracks"),         EM_PER_INSTANCE, EM_ROLE_BENCH },
  { "wire_change", EM_N ("Change wire"),                     EM_PER_CHANGE,   EM_ROLE_BENCH },
  { "inspect",     EM_N ("Inspect"),                         EM_PER_INSTANCE, EM_ROLE_BENCH },
  { "finish",      EM_N ("Finish"),                          EM_PER_INSTANCE, EM_ROLE_FINISH },
  { "pack",        EM_N ("Pack"),                            EM_PER_TOOL,     EM_ROLE_BENCH },
};

/* The customer finishes unless it was settled that the shop does (common practice). */
bool
em_cost_finishes (const EmFeature *feature, const EmQuote *quote)
{
  EmFinish finish = feature->finish != EM_FINISH_DEFAULT ? feature->finish : quote->finish;

  return finish == EM_FINISH_SHOP;
}

void
em_cost_fixed_times (EmStudy *study, const EmQuote *quote)
{
  const EmRates *rates = study->rates;
  const EmShape *shape = &study->shape;
  double area_cm2 = shape->coated_area_mm2 / MM2_PER_CM2;
  bool finishes = em_cost_finishes (study->feature, quote);

  study->strip_s = quote->text[EM_QUOTE_COATING] != NULL ? MINUTE_S * rates->strip_coating_min_per_cm2 * area_cm2 : 0.0;
  study->mask_s = MINUTE_S * (rates->mask_min + rates->mask_min_per_cm2 * area_cm2);
  study->inspect_s = MINUTE_S * (rates->inspect_min + rates->inspect_min_per_cm * shape->reach_extent_mm / MM_PER_CM);
  study->finish_cm2 = finishes ? area_cm2 : 0.0;
  study->finish_cm = finishes ? shape->cap_edge_mm / MM_PER_CM : 0.0;
  study->finish_area_s = finishes ? MINUTE_S * rates->finish_min_per_cm2 * area_cm2 : 0.0;
  study->finish_s_per_mm3 = finishes ? MINUTE_S * rates->finish_min_per_cm3 / MM3_PER_CM3 : 0.0;
}

static double
finish_s (const EmStudy *study, const EmPlan *plan)
{
  return study->finish_area_s + study->finish_s_per_mm3 * fmax (0.0, plan->excess_volume_mm3);
}

/* Beam or arc on, all instances of one tool: (welded + melt-out length)/v. */
static double
arc_on_s (const EmStudy *study, const EmPick *pick)
{
  return study->feature->count * (pick->plan->welded_length_mm + pick->plan->melt_out_length_mm) * pick->option->s_per_mm;
}

/* Starts of the gas: one for each layer, and one each for capping and melting out. */
static double
gas_starts (const EmPlan *plan)
{
  return plan->layers + (plan->cap_tracks > 0) + (plan->melt_out_tracks > 0);
}

/**
 * em_cost_fill_work:
 * Bench time is strip + mask + inspect + arc-on/OF: handling, arc-on·(1/OF − 1), and arc-on itself, which is attended.
 * Wire used is welded length/usable share; gas is flow·(arc-on + pre and post flow of every start).
 */
void
em_cost_fill_work (const EmStudy *study, EmPick *pick)
{
  const EmOption *option = pick->option;
  const EmMachine *machine = &study->rates->machine[option->machine];
  double n = study->feature->count, arc_s = arc_on_s (study, pick);
  double wire_mm = n * pick->plan->welded_length_mm * option->wire_per_track;

  pick->work = (EmWork) {
    .role_s[EM_ROLE_BENCH] = n * (study->strip_s + study->mask_s + study->inspect_s) + arc_s / machine->operating_ratio[study->feature->access],
    .role_s[EM_ROLE_FINISH] = n * finish_s (study, pick->plan),
    .machine_s = arc_s,
    .machine_minor_per_h = machine->machine_minor_per_h,
    .consumable_minor_per_h = machine->consumable_minor_per_h,
    .gas_l = machine->gas_l_per_min / MINUTE_S * (arc_s + machine->gas_pre_post_s * gas_starts (pick->plan) * n),
    .filler_units = wire_mm * option->units_per_mm,
    .filler_minor = option->unit_minor,
    .finish_cm2 = n * study->finish_cm2,
    .finish_cm = n * study->finish_cm,
  };
}

void
em_study_tasks (const EmStudy *study, const EmPick *pick, double out_task_s[EM_N_TASK])
{
  const EmMachine *machine = &study->rates->machine[pick->option->machine];
  double n = study->feature->count, s_per_mm = pick->option->s_per_mm;

  for (int i = 0; i < EM_N_TASK; i++)
    out_task_s[i] = 0.0;
  out_task_s[EM_TASK_STRIP] = n * study->strip_s;
  out_task_s[EM_TASK_MASK] = n * study->mask_s;
  out_task_s[EM_TASK_MELT_OUT] = n * pick->plan->melt_out_length_mm * s_per_mm;
  out_task_s[EM_TASK_ARC_ON] = n * pick->plan->welded_length_mm * s_per_mm;
  out_task_s[EM_TASK_HANDLING] = arc_on_s (study, pick) * (1.0 / machine->operating_ratio[study->feature->access] - 1.0);
  out_task_s[EM_TASK_INSPECT] = n * study->inspect_s;
  out_task_s[EM_TASK_FINISH] = n * finish_s (study, pick->plan);
}

void
em_cost_shared_times (const EmRates *rates, int32_t settings, int32_t wire_changes, bool is_preheated, double out_task_s[EM_N_TASK])
{
  for (int i = 0; i < EM_N_TASK; i++)
    out_task_s[i] = 0.0;
  out_task_s[EM_TASK_PAPERWORK] = MINUTE_S * rates->paperwork_min;
  out_task_s[EM_TASK_PROGRAM] = MINUTE_S * rates->program_min;
  out_task_s[EM_TASK_RECEIVE] = MINUTE_S * rates->receive_min;
  out_task_s[EM_TASK_TRUE] = MINUTE_S * rates->true_setting_min * settings;
  out_task_s[EM_TASK_WIRE_CHANGE] = MINUTE_S * rates->wire_change_min * wire_changes;
  out_task_s[EM_TASK_PREHEAT] = is_preheated ? MINUTE_S * rates->preheat_attend_min : 0.0;
  out_task_s[EM_TASK_PACK] = MINUTE_S * rates->pack_min;
}

static void
gather_work (const double task_s[EM_N_TASK], bool once, EmWork *out_work)
{
  *out_work = (EmWork) { 0 };
  for (int i = 0; i < EM_N_TASK; i++)
    if (em_tasks[i].scope != EM_PER_INSTANCE && (em_tasks[i].scope == EM_PER_ORDER) == once)
      out_work->role_s[em_tasks[i].role] += task_s[i];
}

void
em_cost_set_up_work (const double task_s[EM_N_TASK], EmWork *out_work)
{
  gather_work (task_s, false, out_work);
}

void
em_cost_order_work (const double task_s[EM_N_TASK], EmWork *out_work)
{
  gather_work (task_s, true, out_work);
}
