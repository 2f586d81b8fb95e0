/* em-arc: travel speed, power and time under beam or arc, and whether it can get there.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-rates.h"

typedef enum { EM_BOUND_PULSE, EM_BOUND_POWER, EM_BOUND_SET_SPEED, EM_BOUND_PULSE_ENERGY, EM_BOUND_PEAK_POWER, EM_BOUND_CURRENT, EM_N_BOUND } EmBound;

extern const char *const em_bound_ids[EM_N_BOUND];

/* Starting values for one machine, wire size and alloy. */
typedef struct
{
  double  speed_mm_per_s;       /* v */
  double  pulse_speed_mm_per_s; /* v1 (laser) or the set speed (GTAW) */
  double  power_speed_mm_per_s; /* v2 */
  EmBound bound;                /* which holds */
  double  spot_mm;
  double  needed_w;             /* at v, from the machine */
  double  frequency_hz, pulse_ms, pulse_energy_j, peak_w;   /* laser; NaN GTAW */
  double  current_a, voltage_v, heat_input_kj_per_mm;       /* GTAW, EN 1011-1 k 0.6; NaN laser */
  double  current_share;        /* of the set current that the ratings leave, with it of the set speed; 1 laser */
  bool    was_slowed;           /* to keep within a rating */
} EmArc;

/* Needs: density and enthalpy of the filler. Returns EM_FAULT_RANGE on "wire" when the machine does not melt
 * the size, EM_FAULT_RATING when no speed keeps the ratings. */
EmStatus em_arc_solve (const EmMachine *machine, double wire_mm, double density_g_per_mm3, double melt_j_per_g,
                       EmArc *out_arc, EmFault *out_fault);

/* Spot next to a near thing: s/2 ≤ clearance. clearance NaN: always true. */
bool em_arc_clears (double spot_mm, double clearance_mm);

/* Z·tan(τ + α) + s/2 ≤ W with the smallest τ ≥ α. False: not reachable without dismantling. NaN width or depth:
 * true with τ = 0. */
bool em_arc_reaches (const EmMachine *machine, double spot_mm, double slot_width_mm, double slot_depth_mm,
                     double *out_tilt_deg);
