/* em-screen: what an option costs, roughly and quickly, with bounds that are certain.
 *
 * Private to the core room. Pricing an option exactly takes a few hundred steps; most options of a wire lie far from the
 * cheapest. The screen brackets the part of the cost in which options of one feature differ, in doubles; only
 * options whose brackets overlap the cheapest's are priced exactly, so that the choice is the exact one.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-study.h"

#include <math.h>

/* Where a cost lies, minor units before contingency, less what all options of the feature have in common. */
typedef struct
{
  double low_minor, high_minor;
  bool   is_sure;      /* false: too large to say; only exact pricing tells, and may refuse it */
} EmBracket;

/* Fills study->screen for rule, unless it is there already. */
void em_screen_set (EmStudy *study, const EmPriceRule *rule);

/* Quantities up to these are whole in em_price_direct with room to spare, and so are sums of money. */
#define EM_SCREEN_S_HIGH     1e11
#define EM_SCREEN_UNITS_HIGH 1e8
#define EM_SCREEN_MINOR_HIGH 1e12

/* Doubles of a dozen steps are good to 2·10⁻¹⁵; this is far more. */
#define EM_SCREEN_RELATIVE 1e-11

/*
 * em_screen_bracket:
 * As em_cost_fill_work and em_price_cost take it, in the parts that wire and machine change: beam or arc on at its rates,
 * gas, wire, finishing of the excess. The exact cost rounds each quantity to a whole ms, µl or millionth: slack holds
 * what those half units are worth, twice over.
 */
static inline EmBracket
em_screen_bracket (const EmStudy *study, const EmOption *option, const EmPlan *plan)
{
  const EmScreen *screen = &study->screen;
  const EmScreenMachine *on = &screen->machine[option->machine];
  double n = study->feature->count;
  double arc_s = n * (plan->welded_length_mm + plan->melt_out_length_mm) * option->s_per_mm;
  double starts = n * (plan->layers + (plan->cap_tracks > 0) + (plan->melt_out_tracks > 0));
  double gas_l = arc_s * on->gas_l_per_s + starts * on->gas_l_per_start;
  double units = n * plan->welded_length_mm * option->wire_per_track * option->units_per_mm;
  double finish_s = n * study->finish_s_per_mm3 * fmax (0.0, plan->excess_volume_mm3);
  double minor = arc_s * on->minor_per_arc_s + gas_l * screen->gas_minor_per_l + units * (double) option->unit_minor
                 + finish_s * screen->finish_minor_per_s;
  double slack = on->slack_minor + 1e-6 * (double) option->unit_minor + EM_SCREEN_RELATIVE * (minor + screen->common_minor);

  return (EmBracket) {
    .low_minor = minor - slack, .high_minor = minor + slack,
    .is_sure = screen->is_sure && arc_s * on->bench_s_per_arc_s < EM_SCREEN_S_HIGH && arc_s < EM_SCREEN_S_HIGH && finish_s < EM_SCREEN_S_HIGH
               && gas_l < EM_SCREEN_UNITS_HIGH && units < EM_SCREEN_UNITS_HIGH && minor < EM_SCREEN_MINOR_HIGH,
  };
}
