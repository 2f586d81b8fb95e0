/* em-arc: starting values of beam and arc, within the machine's ratings.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-arc.h"

#include <math.h>

#define PI 3.14159265358979323846

/* Relative factor of process 141 in EN 1011-1; not a measured efficiency. */
#define HEAT_FACTOR_GTAW 0.6

/* A pulse that moves on by less than a fiftieth of the spot drills rather than builds; an arc that has
 * less than half the current it was set for no longer melts its wire. Engineering estimates. */
#define OVERLAP_MOST  0.98
#define CURRENT_LEAST 0.5

const char *const em_bound_ids[EM_N_BOUND] = { "pulse", "power", "set_speed", "pulse_energy", "peak_power", "current" };

/* Value of one column at wire d, straight between the neighbours; past either end the end's own value. */
static double
between (const EmSetting *low, const EmSetting *high, double share, size_t offset)
{
  double a = *(const double *) (const void *) ((const char *) low + offset);
  double b = *(const double *) (const void *) ((const char *) high + offset);

  return low == high ? a : a + share * (b - a);
}

/* The machine's starting values for wire d. A spot not stated is spot_ratio·d; one stated for an end
 * of the table grows with the wire beyond it. */
static EmSetting
setting_at (const EmMachine *machine, double wire_mm)
{
  const EmSetting *low = &machine->setting[0], *high = low;
  EmSetting result;
  double share = 0.0;

  for (int i = 0; i < machine->n_settings && machine->setting[i].wire_mm <= wire_mm; i++)
    {
      low = &machine->setting[i];
      high = i + 1 < machine->n_settings ? low + 1 : low;
    }
  if (high != low)
    share = (wire_mm - low->wire_mm) / (high->wire_mm - low->wire_mm);
  result = (EmSetting) {
    .wire_mm = wire_mm,
    .spot_mm = between (low, high, share, offsetof (EmSetting, spot_mm)),
    .pulse_ms = between (low, high, share, offsetof (EmSetting, pulse_ms)),
    .frequency_hz = between (low, high, share, offsetof (EmSetting, frequency_hz)),
    .current_a = between (low, high, share, offsetof (EmSetting, current_a)),
    .voltage_v = between (low, high, share, offsetof (EmSetting, voltage_v)),
    .speed_mm_per_s = between (low, high, share, offsetof (EmSetting, speed_mm_per_s)),
  };
  if (em_is_absent (result.spot_mm))
    result.spot_mm = machine->spot_ratio * wire_mm;
  else if (low == high)
    result.spot_mm *= wire_mm / low->wire_mm;
  return result;
}

/* J per mm of track that must leave the machine: q = ρ·(A + Ab)·hm/ηm, Ab = A·D/(1 − D). */
static double
energy_per_mm (const EmMachine *machine, double wire_mm, double density_g_per_mm3, double melt_j_per_g)
{
  double section_mm2 = PI * wire_mm * wire_mm / 4.0;

  return density_g_per_mm3 * section_mm2 / (1.0 - machine->dilution_ratio) * melt_j_per_g / machine->coupling_ratio;
}

static void
bound_speed (EmArc *arc, double speed_mm_per_s, EmBound bound)
{
  if (speed_mm_per_s < arc->speed_mm_per_s)
    {
      arc->speed_mm_per_s = speed_mm_per_s;
      arc->bound = bound;
      arc->was_slowed = true;
    }
}

static const char *
rating_field (EmBound bound)
{
  switch (bound)
    {
    case EM_BOUND_PULSE_ENERGY:
      return "pulse_energy";
    case EM_BOUND_PEAK_POWER:
      return "peak";
    case EM_BOUND_CURRENT:
      return "current_high";
    default:
      return "power";
    }
}

/* Pulsed laser: v1 = f·s·(1 − o); the ratings of average power, pulse energy and peak power each
 * allow a speed at which the pulses still melt the wire: P/q, E·f/q, Pp·t·f/q. */
static EmStatus
solve_laser (const EmMachine *machine, const EmSetting *setting, double q, EmArc *arc, EmFault *out_fault)
{
  double f = setting->frequency_hz, pulse_s = setting->pulse_ms / 1000.0;

  arc->spot_mm = setting->spot_mm;
  arc->current_share = 1.0;
  arc->frequency_hz = f;
  arc->pulse_ms = setting->pulse_ms;
  arc->pulse_speed_mm_per_s = f * setting->spot_mm * (1.0 - machine->overlap_ratio);
  arc->power_speed_mm_per_s = machine->power_w / q;
  arc->speed_mm_per_s = arc->pulse_speed_mm_per_s;
  arc->bound = EM_BOUND_PULSE;
  bound_speed (arc, arc->power_speed_mm_per_s, EM_BOUND_POWER);
  bound_speed (arc, machine->pulse_energy_j * f / q, EM_BOUND_PULSE_ENERGY);
  bound_speed (arc, machine->peak_w * pulse_s * f / q, EM_BOUND_PEAK_POWER);
  if (arc->speed_mm_per_s < (1.0 - OVERLAP_MOST) * f * setting->spot_mm)
    return em_fault_set (out_fault, EM_FAULT_RATING, rating_field (arc->bound), setting->wire_mm, EM_ABSENT, EM_ABSENT);
  arc->needed_w = arc->speed_mm_per_s * q;
  arc->pulse_energy_j = arc->needed_w / f;
  arc->peak_w = arc->pulse_energy_j / pulse_s;
  arc->current_a = arc->voltage_v = arc->heat_input_kj_per_mm = EM_ABSENT;
  return EM_OK;
}

/* GTAW: the set speed, or as much of it as the rated current and arc power give, or v2 = U·I/q.
 * Heat input Q = k·U·I/v, k = 0.6 (EN 1011-1). */
static EmStatus
solve_gtaw (const EmMachine *machine, const EmSetting *setting, double q, EmArc *arc, EmFault *out_fault)
{
  double by_current = machine->current_high_a / setting->current_a;
  double by_power = machine->power_w / (setting->current_a * setting->voltage_v);
  double share = fmin (1.0, fmin (by_current, by_power));

  arc->spot_mm = setting->spot_mm;
  arc->current_share = share;
  arc->current_a = setting->current_a * share;
  arc->voltage_v = setting->voltage_v;
  arc->pulse_speed_mm_per_s = setting->speed_mm_per_s;
  arc->power_speed_mm_per_s = arc->current_a * arc->voltage_v / q;
  arc->speed_mm_per_s = setting->speed_mm_per_s;
  arc->bound = EM_BOUND_SET_SPEED;
  bound_speed (arc, setting->speed_mm_per_s * share, by_current < by_power ? EM_BOUND_CURRENT : EM_BOUND_POWER);
  if (share < CURRENT_LEAST)
    return em_fault_set (out_fault, EM_FAULT_RATING, rating_field (arc->bound), setting->wire_mm, EM_ABSENT, EM_ABSENT);
  bound_speed (arc, arc->power_speed_mm_per_s, EM_BOUND_POWER);
  arc->needed_w = arc->speed_mm_per_s * q;
  arc->heat_input_kj_per_mm = HEAT_FACTOR_GTAW * arc->voltage_v * arc->current_a / arc->speed_mm_per_s / 1000.0;
  arc->frequency_hz = arc->pulse_ms = arc->pulse_energy_j = arc->peak_w = EM_ABSENT;
  return EM_OK;
}

/**
 * em_arc_solve:
 * Speed, power and pulse or arc values for one machine (as em_machine_check passes it), wire (mm) and alloy
 * (density g/mm³, enthalpy from room temperature to liquid J/g).
 * Returns EM_FAULT_RANGE on "wire" outside what the machine melts, EM_FAULT_RANGE on "density" or
 * "melt_enthalpy" that are not positive, EM_FAULT_RATING naming the rating that cannot be kept at any speed
 * (value: the wire). *out_arc untouched then.
 */
EmStatus
em_arc_solve (const EmMachine *machine, double wire_mm, double density_g_per_mm3, double melt_j_per_g,
              EmArc *out_arc, EmFault *out_fault)
{
  EmArc arc = { 0 };
  EmSetting setting;
  double q;
  EmStatus status;

  /* Wire sizes are nominal: one that is 1 µm past the limit is that limit written in other units. */
  if (!(wire_mm >= machine->wire_low_mm - 1e-3 && wire_mm <= machine->wire_high_mm + 1e-3))
    return em_fault_set (out_fault, EM_FAULT_RANGE, "wire", wire_mm, machine->wire_low_mm, machine->wire_high_mm);
  if (!(isfinite (density_g_per_mm3) && density_g_per_mm3 > 0.0))
    return em_fault_set (out_fault, EM_FAULT_RANGE, "density", density_g_per_mm3, 0.0, EM_ABSENT);
  if (!(isfinite (melt_j_per_g) && melt_j_per_g > 0.0))
    return em_fault_set (out_fault, EM_FAULT_RANGE, "melt_enthalpy", melt_j_per_g, 0.0, EM_ABSENT);
  setting = setting_at (machine, wire_mm);
  q = energy_per_mm (machine, wire_mm, density_g_per_mm3, melt_j_per_g);
  status = machine->process == EM_PROCESS_LASER ? solve_laser (machine, &setting, q, &arc, out_fault)
                                                : solve_gtaw (machine, &setting, q, &arc, out_fault);
  if (status != EM_OK)
    return status;
  if (!(isfinite (arc.speed_mm_per_s) && arc.speed_mm_per_s > 0.0))
    return em_fault_set (out_fault, EM_FAULT_RANGE, "speed", arc.speed_mm_per_s, 0.0, EM_ABSENT);
  *out_arc = arc;
  return EM_OK;
}

/**
 * em_arc_clears:
 * Common practice: half the spot must lie clear of a hole, texture or polished face.
 */
bool
em_arc_clears (double spot_mm, double clearance_mm)
{
  return em_is_absent (clearance_mm) || spot_mm / 2.0 <= clearance_mm * (1.0 + 1e-9);
}

/**
 * em_arc_reaches:
 * A cone of half angle α, leaned from the wall by τ, must clear the mouth: Z·tan(τ + α) + s/2 ≤ W, and τ ≥ α
 * so that its other side clears the wall. The left side grows with τ, so τ = α decides; it is what out_tilt_deg
 * (may be NULL) receives. A head wider than the mouth does not go in either.
 */
bool
em_arc_reaches (const EmMachine *machine, double spot_mm, double slot_width_mm, double slot_depth_mm, double *out_tilt_deg)
{
  bool is_in_slot = !em_is_absent (slot_width_mm) && !em_is_absent (slot_depth_mm);
  double tilt_deg = is_in_slot ? machine->cone_half_deg : 0.0, opening_deg = 2.0 * machine->cone_half_deg;

  if (is_in_slot)
    {
      if (opening_deg >= 90.0 && slot_depth_mm > 0.0)
        return false;
      if (slot_depth_mm * tan (opening_deg * PI / 180.0) + spot_mm / 2.0 > slot_width_mm * (1.0 + 1e-9))
        return false;
      if (!em_is_absent (machine->head_width_mm) && machine->head_width_mm > slot_width_mm)
        return false;
    }
  if (out_tilt_deg != NULL)
    *out_tilt_deg = tilt_deg;
  return true;
}
