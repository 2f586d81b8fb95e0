/* Checks of core/em-arc against published pulse relations, melting energies and EN 1011-1.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-arc.h"
#include "em-test-book.h"
#include "em-test-main.h"

/* A laser strong enough that only the pulses bound it, melting what it touches. */
static EmMachine
strong_laser (double spot, double frequency, double overlap, double pulse)
{
  EmMachine machine = { .process = EM_PROCESS_LASER, .wire_low_mm = 0.1, .wire_high_mm = 2, .power_w = 1e6, .pulse_energy_j = 1e6,
                        .peak_w = 1e9, .overlap_ratio = overlap, .spot_ratio = 1.2, .coupling_ratio = 1, .dilution_ratio = 0,
                        .cone_half_deg = 10, .head_width_mm = EM_ABSENT, .n_settings = 1 };

  machine.setting[0] = (EmSetting) { 0.5, spot, pulse, frequency, EM_ABSENT, EM_ABSENT, EM_ABSENT };
  return machine;
}

/* v = f·d·(1 − O). First row: published worked example, Process Fundamentals of Industrial Laser Welding and Cutting, p. 81:
 * 100 mm/s, spot 1.5 mm, overlap 80 %, where the simple form (travel during the pulse left out) asks 100/(1.5·0.2) = 333.3 Hz.
 * The rest by the same relation. */
START_TEST (test_pulse_speed)
{
  static const struct { double spot, frequency, overlap, speed; } rows[] =
  {
    { 1.5, 1000.0 / 3.0, 0.80, 100.0 }, { 0.4, 10, 0.70, 1.2 }, { 0.6, 8, 0.75, 1.2 }, { 0.8, 6, 0.60, 1.92 },
    { 0.5, 5, 0.80, 0.5 }, { 1.2, 4, 0.70, 1.44 },
  };

  for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++)
    {
      EmMachine machine = strong_laser (rows[i].spot, rows[i].frequency, rows[i].overlap, 1);
      EmArc arc;

      ck_assert_int_eq (em_arc_solve (&machine, 0.5, 0.00785, 1296, &arc, NULL), EM_OK);
      ck_assert_double_eq_tol (arc.speed_mm_per_s, rows[i].speed, 1e-9);
      ck_assert_int_eq (arc.bound, EM_BOUND_PULSE);
      ck_assert (!arc.was_slowed);
    }
}
END_TEST

/* Iron, liquid at 1809 K against 298 K: 72.4 kJ/mol = 1296 J/g (thermochemical tables). Energy to melt 1 mm of wire
 * ρ·A·1296 at 7.85 g/cm³: 0.320 J (0.20 mm), 0.499 (0.25), 1.278 (0.40), 1.998 (0.50), 6.472 (0.90).
 * With no dilution and all power used, v2 = P divided by it. */
START_TEST (test_energy_to_melt)
{
  static const struct { double wire, joule_per_mm; } rows[] = { { 0.20, 0.320 }, { 0.25, 0.499 }, { 0.40, 1.278 }, { 0.50, 1.998 }, { 0.90, 6.472 } };

  for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++)
    {
      EmMachine machine = strong_laser (0.6, 10, 0.5, 1);
      EmArc arc;

      machine.power_w = 100;
      ck_assert_int_eq (em_arc_solve (&machine, rows[i].wire, 0.00785, 1296, &arc, NULL), EM_OK);
      ck_assert_double_eq_tol (100 / arc.power_speed_mm_per_s, rows[i].joule_per_mm, 0.0006);
    }
}
END_TEST

/* Ceiling on the rate of melting, ṁ = ηm·P/hm. Absorbed 0.35 × melting 0.30 at 60 W: 4.861 mg/s. With D = 0.2 the filler
 * is 0.8 of what is melted: 3.889 mg/s. */
START_TEST (test_melting_rate)
{
  EmMachine machine = strong_laser (0.8, 50, 0.1, 1);
  double section = 3.14159265358979 * 0.25 / 4;
  EmArc arc;

  machine.power_w = 60;
  machine.coupling_ratio = 0.35 * 0.30;
  ck_assert_int_eq (em_arc_solve (&machine, 0.5, 0.00785, 1296, &arc, NULL), EM_OK);
  ck_assert_int_eq (arc.bound, EM_BOUND_POWER);
  ck_assert (arc.was_slowed);
  ck_assert_double_eq_tol (arc.speed_mm_per_s * section * 0.00785 * 1000, 4.861, 0.0005);
  ck_assert_double_eq_tol (arc.needed_w, 60, 1e-9);
  machine.dilution_ratio = 0.2;
  ck_assert_int_eq (em_arc_solve (&machine, 0.5, 0.00785, 1296, &arc, NULL), EM_OK);
  ck_assert_double_eq_tol (arc.speed_mm_per_s * section * 0.00785 * 1000, 3.889, 0.0005);
}
END_TEST

/* E = P/f and Pp = E/t: 120 W at 8 Hz is 15 J; in 6 ms that is 2.5 kW. */
START_TEST (test_pulse_energy_and_peak)
{
  EmMachine machine = strong_laser (0.6, 8, 0, 6);
  EmArc arc;

  machine.power_w = 120;
  machine.coupling_ratio = 0.01;      /* so that power holds */
  ck_assert_int_eq (em_arc_solve (&machine, 0.5, 0.00785, 1296, &arc, NULL), EM_OK);
  ck_assert_int_eq (arc.bound, EM_BOUND_POWER);
  ck_assert_double_eq_tol (arc.pulse_energy_j, 15, 1e-9);
  ck_assert_double_eq_tol (arc.peak_w, 2500, 1e-6);
}
END_TEST

/* The same laser rated 10 J, or 1 kW peak (6 J in 6 ms): slowed to 10/15 and 6/15 of its speed, and it says which rating. */
START_TEST (test_slowed_by_each_rating)
{
  EmMachine machine = strong_laser (0.6, 8, 0, 6);
  EmArc free_arc, arc;

  machine.power_w = 120;
  machine.coupling_ratio = 0.01;
  ck_assert_int_eq (em_arc_solve (&machine, 0.5, 0.00785, 1296, &free_arc, NULL), EM_OK);
  machine.pulse_energy_j = 10;
  ck_assert_int_eq (em_arc_solve (&machine, 0.5, 0.00785, 1296, &arc, NULL), EM_OK);
  ck_assert_int_eq (arc.bound, EM_BOUND_PULSE_ENERGY);
  ck_assert_double_eq_tol (arc.speed_mm_per_s / free_arc.speed_mm_per_s, 10.0 / 15.0, 1e-9);
  ck_assert_double_eq_tol (arc.pulse_energy_j, 10, 1e-9);
  machine.peak_w = 1000;
  ck_assert_int_eq (em_arc_solve (&machine, 0.5, 0.00785, 1296, &arc, NULL), EM_OK);
  ck_assert_int_eq (arc.bound, EM_BOUND_PEAK_POWER);
  ck_assert_double_eq_tol (arc.speed_mm_per_s / free_arc.speed_mm_per_s, 6.0 / 15.0, 1e-9);
  ck_assert_double_eq_tol (arc.peak_w, 1000, 1e-6);
}
END_TEST

START_TEST (test_rating_that_cannot_be_kept)
{
  EmMachine machine = strong_laser (0.6, 8, 0.5, 6);
  EmArc arc = { .speed_mm_per_s = -3 };
  EmFault fault;

  machine.coupling_ratio = 0.2;
  machine.pulse_energy_j = 0.01;
  ck_assert_int_eq (em_arc_solve (&machine, 0.5, 0.00785, 1296, &arc, &fault), EM_FAULT_RATING);
  ck_assert_str_eq (fault.field, "pulse_energy");
  machine.power_w = 0.01;
  ck_assert_int_eq (em_arc_solve (&machine, 0.5, 0.00785, 1296, &arc, &fault), EM_FAULT_RATING);
  ck_assert_str_eq (fault.field, "power");
  ck_assert_double_eq (arc.speed_mm_per_s, -3);
}
END_TEST

/* Each rating in turn too small for any speed: a pulse would have to overlap the last by more than 98 %, or the arc get less than half its
 * current. The fault names the rating and the wire, and nothing is written. */
START_TEST (test_each_rating_may_be_too_small)
{
  static const struct { const char *field; size_t offset; bool is_laser; } rows[] =
  {
    { "power", offsetof (EmMachine, power_w), true }, { "pulse_energy", offsetof (EmMachine, pulse_energy_j), true },
    { "peak", offsetof (EmMachine, peak_w), true }, { "power", offsetof (EmMachine, power_w), false },
    { "current_high", offsetof (EmMachine, current_high_a), false },
  };

  for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++)
    {
      EmMachine machine;
      EmArc arc = { .speed_mm_per_s = -3 };
      EmFault fault = { 0 };

      if (rows[i].is_laser)
        em_test_laser (&machine);
      else
        em_test_tig (&machine);
      *(double *) (void *) ((char *) &machine + rows[i].offset) *= 0.001;
      ck_assert_msg (em_arc_solve (&machine, 0.508, 0.0078, 1300, &arc, &fault) == EM_FAULT_RATING, "%s", rows[i].field);
      ck_assert_str_eq (fault.field, rows[i].field);
      ck_assert_double_eq (fault.value, 0.508);
      ck_assert_double_eq (arc.speed_mm_per_s, -3);
      em_machine_clear (&machine);
    }
}
END_TEST

/* Common practice, no source: wire of 0.010 to 0.035 in suits a 300 W pulsed laser. */
START_TEST (test_300_w_laser_melts_fine_wire)
{
  static const double inches[] = { 0.010, 0.015, 0.020, 0.025, 0.030, 0.035 };
  EmMachine machine;

  em_test_laser (&machine);
  for (int i = 0; i < 6; i++)
    {
      EmArc arc;

      ck_assert_int_eq (em_arc_solve (&machine, inches[i] * 25.4, 0.0078, 1300, &arc, NULL), EM_OK);
      ck_assert_double_le (arc.needed_w, 300 * (1 + 1e-12));
      ck_assert_double_le (arc.pulse_energy_j, machine.pulse_energy_j * (1 + 1e-12));
      ck_assert_double_le (arc.peak_w, machine.peak_w * (1 + 1e-12));
      ck_assert_double_gt (arc.speed_mm_per_s, 0.5);
    }
  em_machine_clear (&machine);
}
END_TEST

static EmMachine
torch (double current, double voltage, double speed)
{
  EmMachine machine = { .process = EM_PROCESS_GTAW, .wire_low_mm = 0.1, .wire_high_mm = 2, .power_w = 1e5, .current_high_a = 500,
                        .spot_ratio = 3, .coupling_ratio = 1, .dilution_ratio = 0, .cone_half_deg = 20, .head_width_mm = EM_ABSENT, .n_settings = 1 };

  machine.setting[0] = (EmSetting) { 0.5, EM_ABSENT, EM_ABSENT, EM_ABSENT, current, voltage, speed };
  return machine;
}

/* EN 1011-1: Q = k·U·I/(1000·v) kJ/mm, k = 0.6 for process 141. */
START_TEST (test_heat_input)
{
  static const struct { double current, voltage, speed, heat; } rows[] =
  {
    { 10, 10.4, 0.8, 0.0780 }, { 20, 10.8, 1.0, 0.1296 }, { 40, 11.6, 1.5, 0.1856 }, { 100, 10, 2, 0.3000 },
  };

  for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++)
    {
      EmMachine machine = torch (rows[i].current, rows[i].voltage, rows[i].speed);
      EmArc arc;

      ck_assert_int_eq (em_arc_solve (&machine, 0.5, 0.00785, 1296, &arc, NULL), EM_OK);
      ck_assert_int_eq (arc.bound, EM_BOUND_SET_SPEED);
      ck_assert_double_eq_tol (arc.heat_input_kj_per_mm, rows[i].heat, 0.00005);
      ck_assert (isnan (arc.pulse_energy_j));
    }
}
END_TEST

/* Set for 40 A, 12 V, 1 mm/s; rated 30 A: 30/40 of the speed. Arc power limit 240 W of 480: half the speed.
 * Rated 15 A: less than half, refused. 0.9 mm wire at ηm 0.01: 480·0.01/6.472 = 0.742 mm/s by power. */
START_TEST (test_gtaw_bounds)
{
  EmMachine machine = torch (40, 12, 1);
  EmArc arc;
  EmFault fault;

  machine.current_high_a = 30;
  ck_assert_int_eq (em_arc_solve (&machine, 0.5, 0.00785, 1296, &arc, NULL), EM_OK);
  ck_assert_int_eq (arc.bound, EM_BOUND_CURRENT);
  ck_assert_double_eq_tol (arc.speed_mm_per_s, 0.75, 1e-12);
  ck_assert_double_eq_tol (arc.current_a, 30, 1e-12);
  machine.current_high_a = 500;
  machine.power_w = 240;
  ck_assert_int_eq (em_arc_solve (&machine, 0.5, 0.00785, 1296, &arc, NULL), EM_OK);
  ck_assert_int_eq (arc.bound, EM_BOUND_POWER);
  ck_assert_double_eq_tol (arc.speed_mm_per_s, 0.5, 1e-12);
  machine.current_high_a = 15;
  ck_assert_int_eq (em_arc_solve (&machine, 0.5, 0.00785, 1296, &arc, &fault), EM_FAULT_RATING);
  ck_assert_str_eq (fault.field, "current_high");
  machine = torch (40, 12, 1);
  machine.coupling_ratio = 0.01;
  ck_assert_int_eq (em_arc_solve (&machine, 0.9, 0.00785, 1296, &arc, NULL), EM_OK);
  ck_assert_int_eq (arc.bound, EM_BOUND_POWER);
  ck_assert_double_eq_tol (arc.speed_mm_per_s, 0.742, 0.0005);
}
END_TEST

/* Half way between 10 A at 0.25 mm and 50 A at 0.9 mm, 0.575 mm, is 30 A; outside the table the end's own value. */
START_TEST (test_settings_between)
{
  EmMachine machine;
  EmArc arc;

  em_test_tig (&machine);
  ck_assert_int_eq (em_arc_solve (&machine, 0.575, 0.0078, 1300, &arc, NULL), EM_OK);
  ck_assert_double_eq_tol (arc.current_a, 30, 1e-9);
  ck_assert_double_eq_tol (arc.spot_mm, 3 * 0.575, 1e-12);
  ck_assert_int_eq (em_arc_solve (&machine, 1.6, 0.0078, 1300, &arc, NULL), EM_OK);
  ck_assert_double_eq_tol (arc.current_a, 50, 1e-9);
  machine.setting[1].spot_mm = 2.7;
  machine.setting[0].spot_mm = 1.0;
  ck_assert_int_eq (em_arc_solve (&machine, 1.6, 0.0078, 1300, &arc, NULL), EM_OK);
  ck_assert_double_eq_tol (arc.spot_mm, 2.7 * 1.6 / 0.9, 1e-9);
  em_machine_clear (&machine);
}
END_TEST

START_TEST (test_wire_no_machine_melts)
{
  EmMachine machine = strong_laser (0.6, 8, 0.5, 6);
  EmArc arc = { .speed_mm_per_s = -3 };
  EmFault fault;
  static const double wires[] = { 2.1, 0.09, NAN, INFINITY, -1, 0 };

  for (int i = 0; i < 6; i++)
    {
      ck_assert_int_eq (em_arc_solve (&machine, wires[i], 0.00785, 1296, &arc, &fault), EM_FAULT_RANGE);
      ck_assert_str_eq (fault.field, "wire");
      ck_assert_double_eq (fault.low, 0.1);
      ck_assert_double_eq (fault.high, 2);
    }
  ck_assert_int_eq (em_arc_solve (&machine, 0.5, 0, 1296, &arc, &fault), EM_FAULT_RANGE);
  ck_assert_str_eq (fault.field, "density");
  ck_assert_int_eq (em_arc_solve (&machine, 0.5, 0.00785, NAN, &arc, &fault), EM_FAULT_RANGE);
  ck_assert_str_eq (fault.field, "melt_enthalpy");
  ck_assert_double_eq (arc.speed_mm_per_s, -3);
}
END_TEST

/* Common practice, no source: 0.010 to 0.015 in is workable beside a hole, by half the spot. 0.020 in wire, spot
 * 0.6096 mm, half 0.3048: clears 0.015 in (0.381), not 0.010 in (0.254); 0.015 in wire, half 0.2286, clears both. */
START_TEST (test_clearance)
{
  ck_assert (em_arc_clears (1.2 * 0.508, 0.381));
  ck_assert (!em_arc_clears (1.2 * 0.508, 0.254));
  ck_assert (em_arc_clears (1.2 * 0.381, 0.254));
  ck_assert (em_arc_clears (0.6, 0.3));     /* exactly at the limit */
  ck_assert (em_arc_clears (5, EM_ABSENT));
}
END_TEST

/* α = 10°, Z = 20 mm, s = 0.6: 20·tan 20° + 0.3 = 7.27940 + 0.3 = 7.57940 mm of mouth at the least. */
START_TEST (test_reach)
{
  EmMachine machine = strong_laser (0.6, 8, 0.5, 6);
  double tilt = -1;

  ck_assert (em_arc_reaches (&machine, 0.6, 7.58, 20, &tilt));
  ck_assert_double_eq_tol (tilt, 10, 1e-12);
  tilt = -1;
  ck_assert (!em_arc_reaches (&machine, 0.6, 7.57, 20, &tilt));
  ck_assert_double_eq (tilt, -1);
  ck_assert (em_arc_reaches (&machine, 0.6, EM_ABSENT, 20, &tilt));
  ck_assert_double_eq (tilt, 0);
  ck_assert (em_arc_reaches (&machine, 0.6, 0.3, 0, NULL));
  machine.head_width_mm = 12;
  ck_assert (!em_arc_reaches (&machine, 0.6, 7.58, 20, NULL));
  machine.head_width_mm = EM_ABSENT;
  machine.cone_half_deg = 45;
  ck_assert (!em_arc_reaches (&machine, 0.6, 1e6, 20, NULL));
}
END_TEST

EM_TEST_MAIN ("core: arc", test_pulse_speed, test_energy_to_melt, test_melting_rate, test_pulse_energy_and_peak, test_slowed_by_each_rating,
              test_rating_that_cannot_be_kept, test_each_rating_may_be_too_small, test_300_w_laser_melts_fine_wire, test_heat_input, test_gtaw_bounds, test_settings_between,
              test_wire_no_machine_melts, test_clearance, test_reach)
