/* em-screen: rates of one feature's quick look, and its slots.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-screen.h"

#include <math.h>

#define S_PER_H   3600.0
#define L_PER_M3  1000.0
#define S_PER_MIN 60.0

/* Quantities up to these are made whole by em_price_direct with room to spare. */
#define S_HIGH     1e11
#define UNITS_HIGH 1e8
#define MINOR_HIGH 1e12

/* What labour costs with its overhead, by the second. */
static double
labour_minor_per_s (const EmPriceRule *rule, EmRole role)
{
  return (double) rule->role_minor_per_h[role] * (1.0 + (double) rule->overhead_ppm / (double) EM_PPM) / S_PER_H;
}

static double
machine_minor_per_s (const EmMachine *machine)
{
  return ((double) machine->machine_minor_per_h + (double) machine->consumable_minor_per_h) / S_PER_H;
}

static void
set_machine (EmStudy *study, const EmPriceRule *rule, int32_t index)
{
  const EmMachine *machine = &study->rates->machine[index];
  EmScreen *screen = &study->screen;
  double bench_s_per_arc_s = 1.0 / machine->operating_ratio[study->feature->access];
  double gas_l_per_s = machine->gas_l_per_min / S_PER_MIN, gas_minor_per_l = (double) rule->gas_minor_per_m3 / L_PER_M3;
  double rates_minor_per_s = labour_minor_per_s (rule, EM_ROLE_BENCH) + labour_minor_per_s (rule, EM_ROLE_FINISH) + machine_minor_per_s (machine);

  screen->machine[index] = (EmScreenMachine) {
    .minor_per_arc_s = bench_s_per_arc_s * labour_minor_per_s (rule, EM_ROLE_BENCH) + machine_minor_per_s (machine) + gas_l_per_s * gas_minor_per_l,
    .minor_per_start = gas_l_per_s * machine->gas_pre_post_s * gas_minor_per_l,
  };
  screen->bench_s_per_arc_s_high = fmax (screen->bench_s_per_arc_s_high, bench_s_per_arc_s);
  screen->gas_l_per_s_high = fmax (screen->gas_l_per_s_high, gas_l_per_s);
  screen->gas_l_per_start_high = fmax (screen->gas_l_per_start_high, gas_l_per_s * machine->gas_pre_post_s);
  /* Half a ms of bench, finishing and machine, half a µl of gas, half a millionth of the wire's unit, twice over. */
  screen->slack_minor = fmax (screen->slack_minor, 1e-3 * rates_minor_per_s + 1e-6 * gas_minor_per_l + 1e-6 * study->options->unit_minor_high);
}

void
em_screen_set (EmStudy *study, const EmPriceRule *rule)
{
  EmScreen *screen = &study->screen;
  const EmFeature *feature = study->feature;
  double n = feature->count, bench_s, finish_s;

  if (screen->rule == rule)
    return;
  bench_s = n * (study->strip_s + study->mask_s + study->inspect_s);
  finish_s = n * study->finish_area_s;
  screen->rule = rule;
  screen->finish_minor_per_s = labour_minor_per_s (rule, EM_ROLE_FINISH);
  screen->common_minor = bench_s * labour_minor_per_s (rule, EM_ROLE_BENCH) + finish_s * screen->finish_minor_per_s
                         + n * (study->finish_cm2 * (double) rule->finish_minor_per_cm2 + study->finish_cm * (double) rule->finish_minor_per_cm);
  screen->is_sure = bench_s < S_HIGH && finish_s < S_HIGH && n * study->finish_cm2 < UNITS_HIGH && n * study->finish_cm < UNITS_HIGH
                    && screen->common_minor < MINOR_HIGH;
  /* Halving is exact: as em_arc_clears decides. */
  screen->spot_high_mm = em_is_absent (feature->clearance_mm) ? INFINITY : 2.0 * (feature->clearance_mm * (1.0 + 1e-9));
  if (!em_is_absent (feature->slot_width_mm))
    screen->spot_high_mm = -INFINITY;
  screen->slack_minor = screen->bench_s_per_arc_s_high = screen->gas_l_per_s_high = screen->gas_l_per_start_high = 0.0;
  for (int32_t i = 0; i < study->rates->n_machines; i++)
    set_machine (study, rule, i);
  screen->slack_minor += EM_SCREEN_RELATIVE * screen->common_minor;
  for (int32_t i = 0; i < study->options->n_pairs; i++)
    study->look[i].is_known = study->look[i].is_fine = false;
}

/* Whether exact pricing has room for a slot with any wire on any machine. */
static bool
is_small (const EmStudy *study, const EmPairLook *look, double arc_mm, double starts, double finish_s)
{
  const EmScreen *screen = &study->screen;
  const EmOptions *options = study->options;
  double arc_s = arc_mm * options->s_per_mm_high;

  return arc_s < S_HIGH && arc_s * screen->bench_s_per_arc_s_high < S_HIGH && finish_s < S_HIGH
         && arc_s * screen->gas_l_per_s_high + starts * screen->gas_l_per_start_high < UNITS_HIGH
         && look->wire_mm * options->units_per_mm_high < UNITS_HIGH
         && look->arc_minor_mm_per_s * options->s_per_mm_high + look->wire_mm * options->minor_per_mm_high + look->rest_minor < MINOR_HIGH;
}

void
em_screen_look (EmStudy *study, int32_t pair)
{
  int32_t slot = study->options->pair[pair].slot;
  const EmScreenMachine *on = &study->screen.machine[study->options->pair[pair].machine];
  const EmPlan *plan = em_study_plan (study, slot, NULL);
  EmPairLook *look = &study->look[pair];
  double n = study->feature->count, arc_mm, starts, finish_s;

  *look = (EmPairLook) { .is_known = true };
  if (plan == NULL)
    return;
  arc_mm = n * (plan->welded_length_mm + plan->melt_out_length_mm);
  starts = n * (plan->layers + (plan->cap_tracks > 0) + (plan->melt_out_tracks > 0));
  finish_s = n * study->finish_s_per_mm3 * fmax (0.0, plan->excess_volume_mm3);
  look->arc_minor_mm_per_s = arc_mm * on->minor_per_arc_s;
  look->wire_mm = n * plan->welded_length_mm;
  look->rest_minor = starts * on->minor_per_start + finish_s * study->screen.finish_minor_per_s;
  look->rank_mm = em_study_overfills (study, plan) ? study->options->slot_wire_mm[slot] : 0.0;
  look->is_fine = study->screen.is_sure && is_small (study, look, arc_mm, starts, finish_s);
}
