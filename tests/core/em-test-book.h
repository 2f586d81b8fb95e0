/* em-test-book: a small rate book and catalogue, invented, for tests of any room.
 *
 * Round numbers, so that sums can be done by hand:
 *   bench 60.00/h = 1.00 a minute, finishing 48.00/h, office 36.00/h, gas 10.00/m³, machine 30.00/h, consumables 6.00/h;
 *   two machines, "laser" (300 W) and "tig"; wires "h13" and "er420" in 0.254, 0.381, 0.508, 0.635, 0.889 mm, "p20" on
 *   TIG only; bases "p20", "h13", "s420".
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-catalogue.h"
#include "em-rates.h"

#include <assert.h>
#include <string.h>

/* The laser: 10 Hz, 5 ms, spot 1.2·d, overlap 0.5 of the spot, no pre or post gas but 1 s. */
static inline void
em_test_laser (EmMachine *out_machine)
{
  em_machine_init (out_machine);
  out_machine->id = em_text_dup ("laser");
  out_machine->name = em_text_dup ("Pulsed laser");
  out_machine->process = EM_PROCESS_LASER;
  out_machine->wire_low_mm = 0.2;
  out_machine->wire_high_mm = 0.9;
  out_machine->power_w = 300;
  out_machine->pulse_energy_j = 80;
  out_machine->peak_w = 9000;
  out_machine->overlap_ratio = 0.5;
  out_machine->spot_ratio = 1.2;
  out_machine->coupling_ratio = 0.2;
  out_machine->dilution_ratio = 0.2;
  out_machine->cone_half_deg = 10;
  out_machine->gas_l_per_min = 10;
  out_machine->gas_pre_post_s = 1;
  out_machine->machine_minor_per_h = 3000;
  out_machine->consumable_minor_per_h = 600;
  out_machine->operating_ratio[EM_ACCESS_OPEN] = 0.4;
  out_machine->operating_ratio[EM_ACCESS_RESTRICTED] = 0.25;
  out_machine->operating_ratio[EM_ACCESS_DEEP] = 0.2;
  out_machine->usable_ratio = 0.9;
  out_machine->efficiency_ratio = 0.95;
  out_machine->n_settings = 2;
  out_machine->setting[0] = (EmSetting) { 0.2, EM_ABSENT, 5, 10, EM_ABSENT, EM_ABSENT, EM_ABSENT };
  out_machine->setting[1] = (EmSetting) { 0.9, EM_ABSENT, 5, 10, EM_ABSENT, EM_ABSENT, EM_ABSENT };
}

/* The torch: 10 A at 0.25 mm to 50 A at 0.9 mm, 12 V, 1 mm/s. */
static inline void
em_test_tig (EmMachine *out_machine)
{
  em_machine_init (out_machine);
  out_machine->id = em_text_dup ("tig");
  out_machine->name = em_text_dup ("Micro TIG");
  out_machine->process = EM_PROCESS_GTAW;
  out_machine->wire_low_mm = 0.25;
  out_machine->wire_high_mm = 1.7;
  out_machine->power_w = 2000;
  out_machine->current_high_a = 120;
  out_machine->spot_ratio = 3;
  out_machine->coupling_ratio = 0.15;
  out_machine->dilution_ratio = 0.3;
  out_machine->cone_half_deg = 20;
  out_machine->head_width_mm = 10;
  out_machine->gas_l_per_min = 6;
  out_machine->gas_pre_post_s = 6;
  out_machine->machine_minor_per_h = 800;
  out_machine->consumable_minor_per_h = 200;
  out_machine->operating_ratio[EM_ACCESS_OPEN] = 0.3;
  out_machine->operating_ratio[EM_ACCESS_RESTRICTED] = 0.2;
  out_machine->operating_ratio[EM_ACCESS_DEEP] = 0.15;
  out_machine->usable_ratio = 0.9;
  out_machine->efficiency_ratio = 0.95;
  out_machine->n_settings = 2;
  out_machine->setting[0] = (EmSetting) { 0.25, EM_ABSENT, EM_ABSENT, EM_ABSENT, 10, 12, 1 };
  out_machine->setting[1] = (EmSetting) { 0.9, EM_ABSENT, EM_ABSENT, EM_ABSENT, 50, 12, 1 };
}

static inline void
em_test_rates (EmRates *out_rates)
{
  EmMachine machine;

  em_rates_init (out_rates);
  assert (em_currency_find ("USD", &out_rates->currency));
  out_rates->bench_minor_per_h = 6000;
  out_rates->finish_minor_per_h = 4800;
  out_rates->office_minor_per_h = 3600;
  out_rates->gas_minor_per_m3 = 1000;
  out_rates->overhead_ppm = 200000;
  out_rates->contingency_ppm = 50000;
  out_rates->margin_ppm = 250000;
  out_rates->layer_ratio = 0.5;
  out_rates->stock_mm = 0;
  out_rates->safety_layers = 1;
  out_rates->stick_mm = 333;
  out_rates->stub_mm = 25;
  out_rates->receive_min = 20;
  out_rates->paperwork_min = 15;
  out_rates->true_setting_min = 12;
  out_rates->mask_min = 5;
  out_rates->mask_min_per_cm2 = 0.5;
  out_rates->wire_change_min = 3;
  out_rates->program_min = 10;
  out_rates->preheat_attend_min = 25;
  out_rates->inspect_min = 4;
  out_rates->inspect_min_per_cm = 0.2;
  out_rates->pack_min = 8;
  out_rates->strip_coating_min_per_cm2 = 6;
  out_rates->finish_min_per_cm2 = 10;
  out_rates->finish_min_per_cm3 = 30;
  out_rates->validity_days = 30;
  em_test_laser (&machine);
  em_rates_add_machine_take (out_rates, &machine);
  em_test_tig (&machine);
  em_rates_add_machine_take (out_rates, &machine);
}

static inline void
em_test_composition (EmComposition *out_composition, double carbon_pct, double chromium_pct)
{
  memset (out_composition, 0, sizeof *out_composition);
  out_composition->balance = EM_EL_FE;
  out_composition->low_pct[EM_EL_C] = out_composition->high_pct[EM_EL_C] = carbon_pct;
  out_composition->low_pct[EM_EL_CR] = out_composition->high_pct[EM_EL_CR] = chromium_pct;
  out_composition->low_pct[EM_EL_MN] = out_composition->high_pct[EM_EL_MN] = 0.6;
  out_composition->low_pct[EM_EL_SI] = out_composition->high_pct[EM_EL_SI] = 0.4;
}

static inline void
em_test_add_base (EmCatalogue *catalogue, const char *id, EmFamily family, double carbon_pct, double chromium_pct)
{
  EmBase base;

  em_base_init (&base);
  base.id = em_text_dup (id);
  base.designation = em_text_dup (id);
  base.source = em_text_dup ("invented for tests");
  base.family = family;
  em_test_composition (&base.composition, carbon_pct, chromium_pct);
  base.density_g_per_mm3 = 0.0078;
  base.hardness_low_hrc = 28;
  base.hardness_high_hrc = 32;
  em_catalogue_add_base_take (catalogue, &base);
}

/* Price per metre 2.00 for 0.254 up to 6.00 for 0.889. Density 0.0078 g/mm³, 1300 J/g. */
static inline void
em_test_add_filler (EmCatalogue *catalogue, const char *id, EmFamily family, double carbon_pct, double chromium_pct, uint32_t processes)
{
  static const double wires_mm[] = { 0.254, 0.381, 0.508, 0.635, 0.889 };
  EmFiller filler;

  em_filler_init (&filler);
  filler.id = em_text_dup (id);
  filler.designation = em_text_dup (id);
  filler.source = em_text_dup ("invented for tests");
  filler.family = family;
  em_test_composition (&filler.composition, carbon_pct, chromium_pct);
  filler.density_g_per_mm3 = 0.0078;
  filler.melt_j_per_g = 1300;
  filler.processes = processes;
  filler.n_sizes = 5;
  for (int i = 0; i < 5; i++)
    filler.size[i] = (EmWireSize) { .wire_mm = wires_mm[i], .price_minor = 200 + 100 * i, .basis = EM_PER_METRE, .is_stocked = true };
  em_catalogue_add_filler_take (catalogue, &filler);
}

static inline void
em_test_catalogue (EmCatalogue *out_catalogue)
{
  const uint32_t both = (1u << EM_PROCESS_LASER) | (1u << EM_PROCESS_GTAW);

  em_catalogue_init (out_catalogue);
  em_test_add_base (out_catalogue, "p20", EM_FAMILY_LOW_ALLOY, 0.35, 1.7);
  em_test_add_base (out_catalogue, "h13", EM_FAMILY_TOOL_STEEL, 0.40, 5.2);
  em_test_add_base (out_catalogue, "s420", EM_FAMILY_STAINLESS_MARTENSITIC, 0.38, 13.5);
  em_test_add_filler (out_catalogue, "h13", EM_FAMILY_TOOL_STEEL, 0.40, 5.2, both);
  em_test_add_filler (out_catalogue, "er420", EM_FAMILY_STAINLESS_MARTENSITIC, 0.32, 13.0, both);
  em_test_add_filler (out_catalogue, "p20", EM_FAMILY_LOW_ALLOY, 0.30, 1.8, 1u << EM_PROCESS_GTAW);
}
