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

/* Fills study->screen for rule and forgets study->look, unless that is done already. */
void em_screen_set (EmStudy *study, const EmPriceRule *rule);

/* Fills study->look[pair], its slot's plan solved, after em_screen_set. */
void em_screen_look (EmStudy *study, int32_t pair);

/* Doubles of a dozen steps are good to 2·10⁻¹⁵; this is far more. */
#define EM_SCREEN_RELATIVE 1e-11

/*
 * em_screen_minor:
 * Minor units before contingency, as em_cost_fill_work and em_price_cost take them, in the parts that wire and machine change:
 * beam or arc on at its rates, gas, wire, finishing of the excess. look: of option's pair, fine, as option is.
 */
static inline double
em_screen_minor (const EmOptionLook *option, const EmPairLook *look)
{
  return look->arc_minor_mm_per_s * option->s_per_mm + look->wire_mm * option->minor_per_mm + look->rest_minor;
}

/* The exact cost lies within this of it. */
static inline double
em_screen_slack (const EmScreen *screen, double minor)
{
  return screen->slack_minor + EM_SCREEN_RELATIVE * minor;
}
