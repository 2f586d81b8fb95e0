/* em-rates-table: the rows of the rate book.
 *
 * Limits are wide enough for any shop and any currency, and narrow enough that no
 * product of two of them leaves 128 bits.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-rates.h"

#define MINOR_HIGH 1e12
#define PPM_HIGH   1e7
#define BOTH       ((1u << EM_PROCESS_LASER) | (1u << EM_PROCESS_GTAW))
#define LASER      (1u << EM_PROCESS_LASER)
#define GTAW       (1u << EM_PROCESS_GTAW)

#define BOOK(id, name, group, unit, type, member, low, high) \
  { id, EM_N (name), group, unit, type, offsetof (EmRates, member), low, high, BOTH }

const EmRateField em_rate_fields[] =
{
  BOOK ("bench", "Bench hour", "money", "/h", EM_RATE_MINOR, bench_minor_per_h, 0, MINOR_HIGH),
  BOOK ("finishing", "Finishing hour", "money", "/h", EM_RATE_MINOR, finish_minor_per_h, 0, MINOR_HIGH),
  BOOK ("office", "Office hour", "money", "/h", EM_RATE_MINOR, office_minor_per_h, 0, MINOR_HIGH),
  BOOK ("gas", "Shielding gas", "money", "/m³", EM_RATE_MINOR, gas_minor_per_m3, 0, MINOR_HIGH),
  BOOK ("minimum", "Minimum charge", "money", "", EM_RATE_MINOR, minimum_minor, 0, MINOR_HIGH),
  BOOK ("rounding", "Rounding step", "money", "", EM_RATE_MINOR, rounding_minor, 1, MINOR_HIGH),
  BOOK ("overhead", "Overhead on labor", "money", "%", EM_RATE_PPM, overhead_ppm, 0, PPM_HIGH),
  BOOK ("contingency", "Contingency on cost", "money", "%", EM_RATE_PPM, contingency_ppm, 0, PPM_HIGH),
  BOOK ("margin", "Margin, share of price", "money", "%", EM_RATE_PPM, margin_ppm, 0, 950000),
  BOOK ("rush", "Rush surcharge", "money", "%", EM_RATE_PPM, rush_ppm, 0, PPM_HIGH),
  BOOK ("finish_area_cost", "Finishing, wear and bought-out cost by area", "money", "/cm²", EM_RATE_MINOR, finish_minor_per_cm2, 0, MINOR_HIGH),
  BOOK ("finish_edge_cost", "Finishing, wear and bought-out cost by edge", "money", "/cm", EM_RATE_MINOR, finish_minor_per_cm, 0, MINOR_HIGH),

  BOOK ("layer_ratio", "Layer height, share of wire diameter", "deposit", "", EM_RATE_REAL, layer_ratio, 0.1, 1.0),
  BOOK ("stock_allowance", "Machining allowance", "deposit", "mm", EM_RATE_REAL, stock_mm, 0, 10),
  BOOK ("safety_passes", "Layers for safety", "deposit", "", EM_RATE_WHOLE, safety_layers, 0, 20),
  BOOK ("stick", "Stick length", "deposit", "mm", EM_RATE_REAL, stick_mm, 20, 5000),
  BOOK ("stub", "Stub lost of each stick", "deposit", "mm", EM_RATE_REAL, stub_mm, 0, 1000),
  BOOK ("whole_sticks", "Whole sticks are bought", "deposit", "", EM_RATE_BOOL, buys_whole_sticks, 0, 1),

  BOOK ("receive", "Receive and clean, each tool", "minutes", "min", EM_RATE_REAL, receive_min, 0, 10000),
  BOOK ("paperwork", "Paperwork, each order", "minutes", "min", EM_RATE_REAL, paperwork_min, 0, 10000),
  BOOK ("true_setting", "Set up and true, each setting", "minutes", "min", EM_RATE_REAL, true_setting_min, 0, 10000),
  BOOK ("mask", "Find and mask, each place", "minutes", "min", EM_RATE_REAL, mask_min, 0, 10000),
  BOOK ("mask_area", "Find and mask, by area", "minutes", "min/cm²", EM_RATE_REAL, mask_min_per_cm2, 0, 10000),
  BOOK ("wire_change", "Change wire", "minutes", "min", EM_RATE_REAL, wire_change_min, 0, 10000),
  BOOK ("program", "Settings and a trial bead, each order", "minutes", "min", EM_RATE_REAL, program_min, 0, 10000),
  BOOK ("preheat_attend", "Attend the preheat, each tool", "minutes", "min", EM_RATE_REAL, preheat_attend_min, 0, 10000),
  BOOK ("inspect", "Inspect, each place", "minutes", "min", EM_RATE_REAL, inspect_min, 0, 10000),
  BOOK ("inspect_length", "Inspect, by length", "minutes", "min/cm", EM_RATE_REAL, inspect_min_per_cm, 0, 10000),
  BOOK ("pack", "Pack, each tool", "minutes", "min", EM_RATE_REAL, pack_min, 0, 10000),
  BOOK ("strip_area", "Strip a coating, by area", "minutes", "min/cm²", EM_RATE_REAL, strip_coating_min_per_cm2, 0, 10000),
  BOOK ("finish_area", "Finish, by area", "minutes", "min/cm²", EM_RATE_REAL, finish_min_per_cm2, 0, 10000),
  BOOK ("finish_volume", "Finish, by metal to take off", "minutes", "min/cm³", EM_RATE_REAL, finish_min_per_cm3, 0, 10000),
  BOOK ("learning_rate", "Learning rate of repeat tools", "minutes", "%", EM_RATE_PPM, learning_ppm, 500000, 1000000),
  BOOK ("valid_days", "Quote holds for", "minutes", "d", EM_RATE_WHOLE, validity_days, 0, 3650),
};
const int em_n_rate_fields = sizeof em_rate_fields / sizeof em_rate_fields[0];

#define MACHINE(id, name, unit, type, member, low, high, needed_by) \
  { id, EM_N (name), "machine", unit, type, offsetof (EmMachine, member), low, high, needed_by }

const EmRateField em_machine_fields[] =
{
  MACHINE ("wire_low", "Finest wire it melts", "mm", EM_RATE_REAL, wire_low_mm, 0.01, 10, BOTH),
  MACHINE ("wire_high", "Thickest wire it melts", "mm", EM_RATE_REAL, wire_high_mm, 0.01, 10, BOTH),
  MACHINE ("power", "Rated power", "W", EM_RATE_REAL, power_w, 1, 100000, BOTH),
  MACHINE ("pulse_energy", "Rated pulse energy", "J", EM_RATE_REAL, pulse_energy_j, 0.01, 10000, LASER),
  MACHINE ("peak", "Rated peak power", "W", EM_RATE_REAL, peak_w, 1, 1e7, LASER),
  MACHINE ("current_high", "Rated current", "A", EM_RATE_REAL, current_high_a, 0.5, 2000, GTAW),
  MACHINE ("overlap", "Pulse overlap, share of the spot", "", EM_RATE_REAL, overlap_ratio, 0, 0.95, LASER),
  MACHINE ("spot_ratio", "Spot diameter, times the wire's", "", EM_RATE_REAL, spot_ratio, 0.2, 20, BOTH),
  MACHINE ("coupling", "Coupling and melting efficiency", "", EM_RATE_REAL, coupling_ratio, 0.01, 1, BOTH),
  MACHINE ("dilution", "Dilution of the first layer", "", EM_RATE_REAL, dilution_ratio, 0, 0.9, BOTH),
  MACHINE ("cone_half", "Half angle of the clear cone", "°", EM_RATE_REAL, cone_half_deg, 0, 60, BOTH),
  MACHINE ("head_width", "Width of the head at the mouth", "mm", EM_RATE_REAL, head_width_mm, 0, 1000, 0),
  MACHINE ("gas_flow", "Shielding gas flow", "l/min", EM_RATE_REAL, gas_l_per_min, 0, 200, BOTH),
  MACHINE ("gas_pre_post", "Gas before and after, each start", "s", EM_RATE_REAL, gas_pre_post_s, 0, 600, BOTH),
  MACHINE ("machine_rate", "Machine hour, beam or arc on", "/h", EM_RATE_MINOR, machine_minor_per_h, 0, MINOR_HIGH, BOTH),
  MACHINE ("consumable_rate", "Consumables, beam or arc on", "/h", EM_RATE_MINOR, consumable_minor_per_h, 0, MINOR_HIGH, BOTH),
  MACHINE ("operating_open", "Operating factor, open", "", EM_RATE_REAL, operating_ratio[EM_ACCESS_OPEN], 0.01, 1, BOTH),
  MACHINE ("operating_restricted", "Operating factor, restricted", "", EM_RATE_REAL, operating_ratio[EM_ACCESS_RESTRICTED], 0.01, 1, BOTH),
  MACHINE ("operating_deep", "Operating factor, deep", "", EM_RATE_REAL, operating_ratio[EM_ACCESS_DEEP], 0.01, 1, BOTH),
  MACHINE ("usable", "Usable share of the wire", "", EM_RATE_REAL, usable_ratio, 0.05, 1, BOTH),
  MACHINE ("efficiency", "Deposition efficiency", "", EM_RATE_REAL, efficiency_ratio, 0.05, 1, BOTH),
};
const int em_n_machine_fields = sizeof em_machine_fields / sizeof em_machine_fields[0];

#define SETTING(id, name, unit, member, low, high, needed_by) \
  { id, EM_N (name), "setting", unit, EM_RATE_REAL, offsetof (EmSetting, member), low, high, needed_by }

const EmRateField em_setting_fields[] =
{
  SETTING ("setting_wire", "Wire diameter", "mm", wire_mm, 0.01, 10, BOTH),
  SETTING ("spot", "Spot diameter", "mm", spot_mm, 0.01, 20, 0),
  SETTING ("pulse", "Pulse duration", "ms", pulse_ms, 0.01, 1000, LASER),
  SETTING ("frequency", "Pulse rate", "Hz", frequency_hz, 0.1, 10000, LASER),
  SETTING ("current", "Arc current", "A", current_a, 0.5, 2000, GTAW),
  SETTING ("voltage", "Arc voltage", "V", voltage_v, 1, 100, GTAW),
  SETTING ("speed", "Travel speed", "mm/s", speed_mm_per_s, 0.01, 100, GTAW),
};
const int em_n_setting_fields = sizeof em_setting_fields / sizeof em_setting_fields[0];
