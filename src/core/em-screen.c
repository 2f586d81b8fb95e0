/* em-screen: rates of one feature's quick look, by machine.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-screen.h"

#define S_PER_H   3600.0
#define L_PER_M3  1000.0
#define S_PER_MIN 60.0

/* What an hour of labour costs with its overhead, by the second. */
static double
labour_minor_per_s (const EmPriceRule *rule, EmRole role)
{
  return (double) rule->role_minor_per_h[role] * (1.0 + (double) rule->overhead_ppm / (double) EM_PPM) / S_PER_H;
}

/* Twice the half units that exact pricing may round away: ms of bench, finishing and machine, and µl of gas. */
static double
slack_of (const EmPriceRule *rule, const EmMachine *machine)
{
  double per_s = labour_minor_per_s (rule, EM_ROLE_BENCH) + labour_minor_per_s (rule, EM_ROLE_FINISH)
                 + (double) machine->machine_minor_per_h / S_PER_H + (double) machine->consumable_minor_per_h / S_PER_H;

  return 1e-3 * per_s + 1e-6 * (double) rule->gas_minor_per_m3 / L_PER_M3;
}

static EmScreenMachine
screen_machine (const EmStudy *study, const EmPriceRule *rule, const EmMachine *machine)
{
  double bench_s_per_arc_s = 1.0 / machine->operating_ratio[study->feature->access];

  return (EmScreenMachine) {
    .bench_s_per_arc_s = bench_s_per_arc_s,
    .minor_per_arc_s = bench_s_per_arc_s * labour_minor_per_s (rule, EM_ROLE_BENCH)
                       + ((double) machine->machine_minor_per_h + (double) machine->consumable_minor_per_h) / S_PER_H,
    .gas_l_per_s = machine->gas_l_per_min / S_PER_MIN,
    .gas_l_per_start = machine->gas_l_per_min / S_PER_MIN * machine->gas_pre_post_s,
    .slack_minor = slack_of (rule, machine),
  };
}

void
em_screen_set (EmStudy *study, const EmPriceRule *rule)
{
  EmScreen *screen = &study->screen;
  double n = study->feature->count, bench_s, finish_s, finish_minor;

  if (screen->rule == rule)
    return;
  bench_s = n * (study->strip_s + study->mask_s + study->inspect_s);
  finish_s = n * study->finish_area_s;
  finish_minor = n * (study->finish_cm2 * (double) rule->finish_minor_per_cm2 + study->finish_cm * (double) rule->finish_minor_per_cm);
  screen->rule = rule;
  screen->gas_minor_per_l = (double) rule->gas_minor_per_m3 / L_PER_M3;
  screen->finish_minor_per_s = labour_minor_per_s (rule, EM_ROLE_FINISH);
  screen->common_minor = bench_s * labour_minor_per_s (rule, EM_ROLE_BENCH) + finish_s * screen->finish_minor_per_s + finish_minor;
  screen->is_sure = bench_s < EM_SCREEN_S_HIGH && finish_s < EM_SCREEN_S_HIGH && n * study->finish_cm2 < EM_SCREEN_UNITS_HIGH
                    && n * study->finish_cm < EM_SCREEN_UNITS_HIGH && screen->common_minor < EM_SCREEN_MINOR_HIGH;
  for (int32_t i = 0; i < study->rates->n_machines; i++)
    screen->machine[i] = screen_machine (study, rule, &study->rates->machine[i]);
}
