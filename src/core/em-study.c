/* em-study: options, studies and picks.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-study.h"
#include "em-cost-internal.h"

#include <math.h>
#include <stdlib.h>

#define PI 3.14159265358979323846
#define UNIT_MINOR_HIGH INT64_C (1000000000000)

/* ---- options ---- */

void
em_options_init (EmOptions *out_options)
{
  *out_options = (EmOptions) { 0 };
}

void
em_options_clear (EmOptions *options)
{
  free (options->slot_wire_mm);
  free (options->slot_efficiency);
  free (options->option);
  free (options->look);
  free (options->pair);
  free (options->first);
  em_options_init (options);
}

/* Slot of a wire and an efficiency, found or added; there is room for one per option. */
static int32_t
slot_of (EmOptions *options, double wire_mm, double efficiency_ratio)
{
  for (int32_t i = 0; i < options->n_slots; i++)
    /* NOLINTNEXTLINE(clang-analyzer-core.UndefinedBinaryOperatorResult): filled up to n_slots. */
    if (options->slot_wire_mm[i] == wire_mm && options->slot_efficiency[i] == efficiency_ratio)
      return i;
  options->slot_wire_mm[options->n_slots] = wire_mm;
  options->slot_efficiency[options->n_slots] = efficiency_ratio;
  return options->n_slots++;
}

double
em_cost_stick_mm (const EmFiller *filler, const EmRates *rates)
{
  return em_is_absent (filler->stick_mm) ? rates->stick_mm : filler->stick_mm;
}

/* Priced units for each mm of wire used. A stick of Ls gives Ls − stub; the stub is paid for:
 * per stick 1/(Ls − stub); per metre Ls/(Ls − stub)/1000; per gram A·ρ·Ls/(Ls − stub). */
double
em_cost_units_per_mm (const EmFiller *filler, const EmWireSize *size, const EmRates *rates)
{
  double stick = em_cost_stick_mm (filler, rates), used = stick - rates->stub_mm;
  double section_mm2 = PI * size->wire_mm * size->wire_mm / 4.0;

  switch (size->basis)
    {
    case EM_PER_METRE:
      return stick / used / 1000.0;
    case EM_PER_GRAM:
      return section_mm2 * filler->density_g_per_mm3 * stick / used;
    default:
      return 1.0 / used;
    }
}

static EmStatus
option_fault (EmOption *option, EmStatus status, const char *field, double value, double low, double high)
{
  option->status = em_fault_set (&option->fault, status, field, value, low, high);
  option->fault.row = EM_ROW_CATALOGUE;
  return option->status;
}

static EmStatus
solve_option (EmOption *option, const EmFiller *filler, const EmRates *rates)
{
  const EmMachine *machine = &rates->machine[option->machine];
  const EmWireSize *size = &filler->size[option->size];
  double stick = em_cost_stick_mm (filler, rates);

  if (!(filler->processes & (1u << machine->process)))
    return option_fault (option, EM_FAULT_UNSUITED, "filler", EM_ABSENT, EM_ABSENT, EM_ABSENT);
  if (size->price_minor < 0 || size->price_minor > UNIT_MINOR_HIGH)
    return option_fault (option, EM_FAULT_RANGE, "wire_price", (double) size->price_minor, 0, (double) UNIT_MINOR_HIGH);
  if (!isfinite (stick) || stick <= rates->stub_mm)
    return option_fault (option, EM_FAULT_RANGE, "stick", stick, rates->stub_mm, EM_ABSENT);
  option->status = em_arc_solve (machine, size->wire_mm, filler->density_g_per_mm3, filler->melt_j_per_g, &option->arc, &option->fault);
  if (option->status != EM_OK)
    return option->status;
  option->s_per_mm = 1.0 / option->arc.speed_mm_per_s;
  option->wire_per_track = 1.0 / machine->usable_ratio;
  option->units_per_mm = em_cost_units_per_mm (filler, size, rates);
  option->unit_minor = size->price_minor;
  return EM_OK;
}

static int32_t
pair_of (EmOptions *options, const EmOption *option)
{
  for (int32_t i = 0; i < options->n_pairs; i++)
    /* NOLINTNEXTLINE(clang-analyzer-core.UndefinedBinaryOperatorResult): filled up to n_pairs. */
    if (options->pair[i].slot == option->slot && options->pair[i].machine == option->machine)
      return i;
  options->pair[options->n_pairs] = (EmPair) { option->slot, option->machine };
  return options->n_pairs++;
}

static void
note_look (EmOptions *options, const EmOption *option, EmOptionLook *out_look)
{
  double units_per_mm = option->wire_per_track * option->units_per_mm;

  *out_look = (EmOptionLook) { .pair = pair_of (options, option), .is_offered = option->is_offered };
  if (option->status != EM_OK)
    return;
  out_look->is_fine = true;
  out_look->spot_mm = option->arc.spot_mm;
  out_look->s_per_mm = option->s_per_mm;
  out_look->minor_per_mm = units_per_mm * (double) option->unit_minor;
  options->s_per_mm_high = fmax (options->s_per_mm_high, option->s_per_mm);
  options->units_per_mm_high = fmax (options->units_per_mm_high, units_per_mm);
  options->minor_per_mm_high = fmax (options->minor_per_mm_high, out_look->minor_per_mm);
  options->unit_minor_high = fmax (options->unit_minor_high, (double) option->unit_minor);
}

static void
solve_filler_options (EmOptions *options, int32_t filler_index)
{
  const EmRates *rates = options->rates;
  const EmFiller *filler = &options->catalogue->filler[filler_index];

  for (int32_t s = 0; s < filler->n_sizes; s++)
    for (int32_t m = 0; m < rates->n_machines; m++)
      {
        EmOption *option = &options->option[options->n_options++];

        *option = (EmOption) {
          .filler = filler_index, .size = s, .machine = m, .wire_mm = filler->size[s].wire_mm,
          .is_offered = filler->size[s].is_stocked && !rates->machine[m].is_retired,
          .slot = slot_of (options, filler->size[s].wire_mm, rates->machine[m].efficiency_ratio),
        };
        solve_option (option, filler, rates);
        note_look (options, option, &options->look[options->n_options - 1]);
      }
}

EmStatus
em_options_solve (EmOptions *options, const EmRates *rates, const EmCatalogue *catalogue, int32_t filler, EmFault *out_fault)
{
  size_t n = 0;

  em_options_clear (options);
  for (int32_t i = 0; i < catalogue->n_fillers; i++)
    if (filler < 0 || filler == i)
      n += (size_t) catalogue->filler[i].n_sizes * (size_t) rates->n_machines;
  /* One more than needed, so that nothing found is not taken for no memory. */
  options->option = malloc ((n + 1) * sizeof *options->option);
  options->look = malloc ((n + 1) * sizeof *options->look);
  options->pair = malloc ((n + 1) * sizeof *options->pair);
  options->slot_wire_mm = malloc ((n + 1) * sizeof *options->slot_wire_mm);
  options->slot_efficiency = malloc ((n + 1) * sizeof *options->slot_efficiency);
  options->first = malloc ((size_t) (catalogue->n_fillers + 1) * sizeof *options->first);
  if (options->option == NULL || options->look == NULL || options->pair == NULL || options->slot_wire_mm == NULL || options->slot_efficiency == NULL || options->first == NULL)
    {
      em_options_clear (options);
      return em_fault_set (out_fault, EM_FAULT_MEMORY, "quote", EM_ABSENT, EM_ABSENT, EM_ABSENT);
    }
  options->rates = rates;
  options->catalogue = catalogue;
  for (int32_t i = 0; i < catalogue->n_fillers; i++)
    {
      options->first[i] = options->n_options;
      if (filler < 0 || filler == i)
        solve_filler_options (options, i);
    }
  options->first[catalogue->n_fillers] = options->n_options;
  return EM_OK;
}

/* ---- one feature ---- */

void
em_study_init (EmStudy *out_study)
{
  *out_study = (EmStudy) { 0 };
}

void
em_study_clear (EmStudy *study)
{
  free (study->plan);
  free (study->plan_status);
  free (study->look);
  em_study_init (study);
}

static bool
make_room (EmStudy *study, const EmOptions *options)
{
  if (options->n_slots > study->cap_slots || options->n_pairs > study->cap_pairs || study->plan == NULL)
    {
      size_t n_slots = (size_t) options->n_slots + 8, n_pairs = (size_t) options->n_pairs + 8;
      EmPlan *plan = malloc (n_slots * sizeof *plan);
      EmStatus *status = malloc (n_slots * sizeof *status);
      EmPairLook *look = malloc (n_pairs * sizeof *look);

      if (plan == NULL || status == NULL || look == NULL)
        {
          free (plan);
          free (status);
          free (look);
          return false;
        }
      free (study->plan);
      free (study->plan_status);
      free (study->look);
      study->plan = plan;
      study->plan_status = status;
      study->look = look;
      study->cap_slots = (int32_t) n_slots;
      study->cap_pairs = (int32_t) n_pairs;
    }
  for (int32_t i = 0; i < options->n_slots; i++)
    study->plan_status[i] = EM_N_STATUS;
  return true;
}

static bool
decide (EmChoice choice, bool by_kind)
{
  return choice == EM_AUTO ? by_kind : choice == EM_YES;
}

static void
set_rules (EmStudy *study)
{
  const EmFeature *feature = study->feature;
  const EmRates *rates = study->rates;

  study->rules = (EmPlanRules) {
    .layer_ratio = rates->layer_ratio,
    .stock_mm = em_is_absent (feature->stock_mm) ? rates->stock_mm : feature->stock_mm,
    .safety_layers = feature->safety_layers < 0 ? rates->safety_layers : feature->safety_layers,
    .is_melted_out = decide (feature->melt_out, feature->kind->melts_out),
    .is_capped = decide (feature->cap, feature->kind->caps_edges) && study->shape.cap_edge_mm > 0.0,
  };
}

EmStatus
em_study_solve (EmStudy *study, const EmQuote *quote, int32_t index, const EmRates *rates, const EmOptions *options,
                EmFault *out_fault)
{
  const EmFeature *feature = &quote->feature[index];
  EmFault fault;
  EmStatus status = em_feature_solve (feature, &study->shape, &fault);

  if (status == EM_OK && !make_room (study, options))
    status = em_fault_set (&fault, EM_FAULT_MEMORY, "quote", EM_ABSENT, EM_ABSENT, EM_ABSENT);
  if (status != EM_OK)
    {
      fault.row = index;
      if (out_fault != NULL)
        *out_fault = fault;
      return status;
    }
  study->feature = feature;
  study->rates = rates;
  study->options = options;
  study->row = index;
  study->screen.rule = NULL;
  set_rules (study);
  em_cost_fixed_times (study, quote);
  return EM_OK;
}

const EmPlan *
em_study_plan (EmStudy *study, int32_t slot, EmFault *out_fault)
{
  if (study->plan_status[slot] == EM_OK)
    return &study->plan[slot];

  study->rules.wire_mm = study->options->slot_wire_mm[slot];
  study->rules.efficiency_ratio = study->options->slot_efficiency[slot];
  study->plan_status[slot] = em_plan_solve (&study->shape, &study->rules, &study->plan[slot], out_fault);
  if (out_fault != NULL)
    out_fault->row = study->row;
  return study->plan_status[slot] == EM_OK ? &study->plan[slot] : NULL;
}

bool
em_study_overfills (const EmStudy *study, const EmPlan *plan)
{
  return plan->layer_mm > (study->shape.height_mm + study->rules.stock_mm) * (1.0 + 1e-9);
}
