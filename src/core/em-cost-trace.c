/* em-cost-trace: the working of a costing, told from its finished figures.
 *
 * Steps are written after the fact, so that a costing nobody asks about pays nothing.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-cost-internal.h"

#include <math.h>

#define PI 3.14159265358979323846
#define N_TERMS(...) ((int) (sizeof (EmTraceTerm[]) { __VA_ARGS__ } / sizeof (EmTraceTerm)))
#define STEP(trace, row, quantity, symbol, value, unit, formula, source, ...) \
  em_trace_add (trace, row, quantity, (EmTraceTerm) { symbol, value, unit }, formula, source, N_TERMS (__VA_ARGS__), (EmTraceTerm[]) { __VA_ARGS__ })

static const char *const rate_book = EM_N ("rate book");
static const char *const practice = EM_N ("common practice");
static const char *const geometry = EM_N ("mensuration");
static const char *const by_definition = EM_N ("by definition");

static const char *
choice_formula (EmWhy why)
{
  switch (why)
    {
    case EM_WHY_OFFICE:
      return EM_N ("d as the office chose wire or machine");
    case EM_WHY_ONLY:
      return EM_N ("d of the only wire and machine that fit");
    case EM_WHY_CHEAPEST:
    case EM_N_WHY:
    default:
      return EM_N ("d of the cheapest wire and machine that fit, no layer thicker than the metal wanted");
    }
}

/* Which wire, and that it gets there: half the spot clear of what is near, the beam's cone through the mouth of the slot. */
static void
trace_choice (EmTrace *trace, int32_t row, const EmFeature *feature, const EmMachine *machine, const EmFeatureCost *cost)
{
  double half_spot = cost->arc.spot_mm / 2.0;

  STEP (trace, row, "wire_diameter", "d", cost->rules.wire_mm, "mm", choice_formula (cost->why), practice,
        { EM_N ("fitting"), cost->n_fitting, "" }, { "tL", cost->plan.layer_mm, "mm" },
        { EM_N ("metal wanted"), cost->shape.height_mm + cost->rules.stock_mm, "mm" });
  if (!em_is_absent (feature->clearance_mm))
    STEP (trace, row, "clearance", "s/2", half_spot, "mm", EM_N ("s/2 ≤ clearance"), practice,
          { "s", cost->arc.spot_mm, "mm" }, { EM_N ("clearance"), feature->clearance_mm, "mm" });
  if (!em_is_absent (feature->slot_width_mm))
    STEP (trace, row, "tilt", "τ", cost->tilt_deg, "°", EM_N ("τ = α, so that Z·tan(τ + α) + s/2 ≤ W"), geometry,
          { "α", machine->cone_half_deg, "°" }, { "Z", feature->slot_depth_mm, "mm" }, { "s/2", half_spot, "mm" },
          { "W", feature->slot_width_mm, "mm" });
}

static void
trace_plan (EmTrace *trace, int32_t row, double n, const EmFeatureCost *cost)
{
  const EmPlan *plan = &cost->plan;
  double section = PI * cost->rules.wire_mm * cost->rules.wire_mm / 4.0;

  STEP (trace, row, "net_volume", "V", cost->net_volume_mm3, "mm³", EM_N ("V = n·V1, V1 in closed form"), geometry,
        { "n", n, "" }, { "V1", cost->shape.net_volume_mm3, "mm³" });
  STEP (trace, row, "required_volume", "Vr", cost->required_volume_mm3, "mm³", EM_N ("Vr = n·(V1 + stock·area)"), geometry,
        { "n", n, "" }, { "V1", cost->shape.net_volume_mm3, "mm³" }, { EM_N ("stock"), cost->rules.stock_mm, "mm" },
        { EM_N ("area"), cost->shape.coated_area_mm2, "mm²" });
  STEP (trace, row, "layers", "tL", plan->layer_mm, "mm", "tL = κ·d", practice,
        { "κ", cost->rules.layer_ratio, "" }, { "d", cost->rules.wire_mm, "mm" });
  STEP (trace, row, "layers", "N", plan->layers, "", EM_N ("N = ⌈(H + stock)/tL⌉ + safety"), practice,
        { "H", cost->shape.height_mm, "mm" }, { EM_N ("stock"), cost->rules.stock_mm, "mm" }, { "tL", plan->layer_mm, "mm" },
        { EM_N ("safety"), plan->safety_layers, "" });
  STEP (trace, row, "tracks", "p", plan->pitch_mm, "mm", EM_N ("p = η·A/tL, A = π·d²/4"), EM_N ("volume is conserved"),
        { "η", cost->rules.efficiency_ratio, "" }, { "A", section, "mm²" }, { "tL", plan->layer_mm, "mm" });
  STEP (trace, row, "tracks", "T", (double) plan->tracks, "", EM_N ("T = Σ max(1, ⌈w(z)/p⌉) over the layers"), practice,
        { "N", plan->layers, "" }, { "p", plan->pitch_mm, "mm" }, { "w(0)", cost->shape.kind->width_mm (&cost->shape, 0.0), "mm" },
        { "w(H)", cost->shape.kind->width_mm (&cost->shape, cost->shape.height_mm), "mm" });
  if (plan->cap_tracks > 0)
    STEP (trace, row, "welded_length", "Lc", plan->cap_length_mm, "mm", EM_N ("Lc = max(1, ⌈(H + stock)/p⌉)·edge"), practice,
          { "H", cost->shape.height_mm, "mm" }, { EM_N ("stock"), cost->rules.stock_mm, "mm" }, { "p", plan->pitch_mm, "mm" },
          { EM_N ("edge"), cost->shape.cap_edge_mm, "mm" });
  if (plan->melt_out_tracks > 0)
    STEP (trace, row, "melt_out_length", "Lm", plan->melt_out_length_mm, "mm", EM_N ("Lm = area/p, in whole tracks on a flat footing; no filler"),
          practice, { EM_N ("area"), cost->shape.coated_area_mm2, "mm²" }, { "p", plan->pitch_mm, "mm" },
          { "l(0)", cost->shape.kind->length_mm (&cost->shape, 0.0), "mm" });
  STEP (trace, row, "welded_length", "L", cost->welded_length_mm, "mm", EM_N ("L = n·(Lb + Lc), Lb = Σ tracks·l(z), at least V1/(η·A)"), by_definition,
        { "n", n, "" }, { "Lb", plan->build_length_mm, "mm" }, { "Lc", plan->cap_length_mm, "mm" });
  STEP (trace, row, "deposited_volume", "Vd", cost->deposited_volume_mm3, "mm³", "Vd = η·A·L", EM_N ("volume is conserved"),
        { "η", cost->rules.efficiency_ratio, "" }, { "A", section, "mm²" }, { "L", cost->welded_length_mm, "mm" });
}

static void
trace_filler (EmTrace *trace, int32_t row, const EmRates *rates, const EmFiller *filler, const EmFeatureCost *cost)
{
  const EmMachine *machine = &rates->machine[cost->machine];
  const EmWireSize *size = &filler->size[cost->size];
  double stick = em_cost_stick_mm (filler, rates), section = PI * size->wire_mm * size->wire_mm / 4.0;
  double units = cost->wire_length_mm * em_cost_units_per_mm (filler, size, rates);

  STEP (trace, row, "wire_length", "Lw", cost->wire_length_mm, "mm", "Lw = L/u", rate_book,
        { "L", cost->welded_length_mm, "mm" }, { "u", machine->usable_ratio, "" });
  STEP (trace, row, "sticks", "S", (double) cost->sticks, "", EM_N ("S = ⌈Lw/(Ls − stub)⌉"), rate_book,
        { "Lw", cost->wire_length_mm, "mm" }, { "Ls", stick, "mm" }, { EM_N ("stub"), rates->stub_mm, "mm" });
  STEP (trace, row, "filler_mass", "m", cost->filler_mass_g, "g", "m = A·ρ·Lw", by_definition,
        { "A", section, "mm²" }, { "ρ", filler->density_g_per_mm3, "g/mm³" }, { "Lw", cost->wire_length_mm, "mm" });
  STEP (trace, row, "filler_cost", "Cw", (double) cost->money_minor[EM_MONEY_FILLER], "minor",
        size->basis == EM_PER_METRE ? EM_N ("Cw = price·q, q = Lw·Ls/(Ls − stub) in meters")
        : size->basis == EM_PER_GRAM ? EM_N ("Cw = price·q, q = m·Ls/(Ls − stub) in grams")
        : EM_N ("Cw = price·q, q = Lw/(Ls − stub) in sticks"), rate_book,
        { EM_N ("price"), (double) size->price_minor, "minor" }, { "q", units, "" });
}

static void
trace_laser (EmTrace *trace, int32_t row, const EmMachine *machine, double q, const EmArc *arc)
{
  double pulse_s = arc->pulse_ms / 1000.0;

  STEP (trace, row, "speed", "v1", arc->pulse_speed_mm_per_s, "mm/s", "v1 = f·s·(1 − o)", EM_N ("pulse overlap, by definition"),
        { "f", arc->frequency_hz, "Hz" }, { "s", arc->spot_mm, "mm" }, { "o", machine->overlap_ratio, "" });
  STEP (trace, row, "speed", "v2", arc->power_speed_mm_per_s, "mm/s", "v2 = P/q", EM_N ("energy balance"),
        { "P", machine->power_w, "W" }, { "q", q, "J/mm" });
  STEP (trace, row, "speed", "v", arc->speed_mm_per_s, "mm/s", EM_N ("v = min(v1, v2, E·f/q, Pp·t·f/q)"), EM_N ("ratings of the machine"),
        { "v1", arc->pulse_speed_mm_per_s, "mm/s" }, { "v2", arc->power_speed_mm_per_s, "mm/s" }, { "E", machine->pulse_energy_j, "J" },
        { "Pp", machine->peak_w, "W" }, { "t", pulse_s, "s" }, { "f", arc->frequency_hz, "Hz" }, { "q", q, "J/mm" });
  STEP (trace, row, "pulse_energy", "Ep", arc->pulse_energy_j, "J", "Ep = v·q/f", by_definition,
        { "v", arc->speed_mm_per_s, "mm/s" }, { "q", q, "J/mm" }, { "f", arc->frequency_hz, "Hz" });
  STEP (trace, row, "peak_power", "Pk", arc->peak_w, "W", "Pk = Ep/t", by_definition,
        { "Ep", arc->pulse_energy_j, "J" }, { "t", pulse_s, "s" });
}

static void
trace_gtaw (EmTrace *trace, int32_t row, double q, const EmArc *arc)
{
  STEP (trace, row, "speed", "v2", arc->power_speed_mm_per_s, "mm/s", "v2 = U·I/q", EM_N ("energy balance"),
        { "U", arc->voltage_v, "V" }, { "I", arc->current_a, "A" }, { "q", q, "J/mm" });
  STEP (trace, row, "speed", "v", arc->speed_mm_per_s, "mm/s", EM_N ("v = min(c·v1, v2), v1 the set speed, c the share of the set current that the ratings leave"),
        rate_book, { "c", arc->current_share, "" }, { "v1", arc->pulse_speed_mm_per_s, "mm/s" }, { "v2", arc->power_speed_mm_per_s, "mm/s" });
  STEP (trace, row, "heat_input", "Q", arc->heat_input_kj_per_mm, "kJ/mm", "Q = k·U·I/(1000·v), k = 0.6", "EN 1011-1",
        { "U", arc->voltage_v, "V" }, { "I", arc->current_a, "A" }, { "v", arc->speed_mm_per_s, "mm/s" });
}

static void
trace_arc (EmTrace *trace, int32_t row, double n, const EmRates *rates, const EmFiller *filler, const EmFeatureCost *cost)
{
  const EmMachine *machine = &rates->machine[cost->machine];
  double section = PI * cost->rules.wire_mm * cost->rules.wire_mm / 4.0;
  double q = cost->arc.needed_w / cost->arc.speed_mm_per_s;

  STEP (trace, row, "speed", "q", q, "J/mm", "q = ρ·A/(1 − D)·hm/ηm", EM_N ("energy balance"),
        { "ρ", filler->density_g_per_mm3, "g/mm³" }, { "A", section, "mm²" }, { "D", machine->dilution_ratio, "" },
        { "hm", filler->melt_j_per_g, "J/g" }, { "ηm", machine->coupling_ratio, "" });
  if (machine->process == EM_PROCESS_LASER)
    trace_laser (trace, row, machine, q, &cost->arc);
  else
    trace_gtaw (trace, row, q, &cost->arc);
  STEP (trace, row, "arc_on", "t", cost->arc_on_s, "s", EM_N ("t = (L + n·Lm)/v"), by_definition,
        { "L", cost->welded_length_mm, "mm" }, { "n", n, "" }, { "Lm", cost->plan.melt_out_length_mm, "mm" },
        { "v", cost->arc.speed_mm_per_s, "mm/s" });
  STEP (trace, row, "gas", "G", cost->gas_l, "l", EM_N ("G = flow/60·(t + pre and post·starts)"), rate_book,
        { EM_N ("flow"), machine->gas_l_per_min, "l/min" }, { "t", cost->arc_on_s, "s" }, { EM_N ("pre, post"), machine->gas_pre_post_s, "s" },
        { EM_N ("starts"), n * (cost->plan.layers + (cost->plan.cap_tracks > 0) + (cost->plan.melt_out_tracks > 0)), "" });
}

static void
trace_tasks (EmTrace *trace, int32_t row, double n, EmAccess access, const EmRates *rates, const EmFeatureCost *cost)
{
  double area_cm2 = cost->shape.coated_area_mm2 / 100.0, of = rates->machine[cost->machine].operating_ratio[access];

  if (cost->task_s[EM_TASK_STRIP] > 0.0)
    STEP (trace, row, "strip", "t", cost->task_s[EM_TASK_STRIP], "s", EM_N ("t = 60·n·r·area"), rate_book,
          { "n", n, "" }, { "r", rates->strip_coating_min_per_cm2, "min/cm²" }, { EM_N ("area"), area_cm2, "cm²" });
  STEP (trace, row, "mask", "t", cost->task_s[EM_TASK_MASK], "s", EM_N ("t = 60·n·(each + r·area)"), rate_book,
        { "n", n, "" }, { EM_N ("each"), rates->mask_min, "min" }, { "r", rates->mask_min_per_cm2, "min/cm²" }, { EM_N ("area"), area_cm2, "cm²" });
  if (cost->task_s[EM_TASK_MELT_OUT] > 0.0)
    STEP (trace, row, "melt_out", "t", cost->task_s[EM_TASK_MELT_OUT], "s", "t = n·Lm/v", by_definition,
          { "n", n, "" }, { "Lm", cost->plan.melt_out_length_mm, "mm" }, { "v", cost->arc.speed_mm_per_s, "mm/s" });
  STEP (trace, row, "handling", "t", cost->task_s[EM_TASK_HANDLING], "s", EM_N ("t = arc-on·(1/OF − 1)"), EM_N ("operating factor: arc-on time / weld handling time"),
        { EM_N ("arc-on"), cost->arc_on_s, "s" }, { "OF", of, "" });
  STEP (trace, row, "inspect", "t", cost->task_s[EM_TASK_INSPECT], "s", EM_N ("t = 60·n·(each + r·extent)"), rate_book,
        { "n", n, "" }, { EM_N ("each"), rates->inspect_min, "min" }, { "r", rates->inspect_min_per_cm, "min/cm" },
        { EM_N ("extent"), cost->shape.reach_extent_mm / 10.0, "cm" });
  if (cost->task_s[EM_TASK_FINISH] > 0.0)
    STEP (trace, row, "finish", "t", cost->task_s[EM_TASK_FINISH], "s", EM_N ("t = 60·n·(ra·area + rv·excess)"), rate_book,
          { "n", n, "" }, { "ra", rates->finish_min_per_cm2, "min/cm²" }, { EM_N ("area"), area_cm2, "cm²" },
          { "rv", rates->finish_min_per_cm3, "min/cm³" }, { EM_N ("excess"), fmax (0.0, cost->plan.excess_volume_mm3) / 1000.0, "cm³" });
  STEP (trace, row, "labour", "t", cost->labour_s, "s", EM_N ("t = sum of the feature's tasks"), by_definition,
        { EM_N ("strip"), cost->task_s[EM_TASK_STRIP], "s" }, { EM_N ("mask"), cost->task_s[EM_TASK_MASK], "s" },
        { EM_N ("arc-on"), cost->arc_on_s, "s" }, { EM_N ("handling"), cost->task_s[EM_TASK_HANDLING], "s" },
        { EM_N ("inspect"), cost->task_s[EM_TASK_INSPECT], "s" }, { EM_N ("finish"), cost->task_s[EM_TASK_FINISH], "s" });
}

static double
seconds_of (EmRole role, const double task_s[EM_N_TASK])
{
  double sum = 0.0;

  for (int i = 0; i < EM_N_TASK; i++)
    if (em_tasks[i].role == role)
      sum += task_s[i];
  return sum;
}

/* Money is told under names of its own, since a task and its money may share an id ("finish"). Money of labour, machine and gas, the same for a feature and for the order. */
static void
trace_direct (EmTrace *trace, int32_t row, const EmRates *rates, const double task_s[EM_N_TASK], const int64_t money_minor[EM_N_MONEY])
{
  const struct { const char *quantity; EmMoney money; EmRole role; int64_t rate; } roles[] =
  {
    { "office_cost", EM_MONEY_OFFICE, EM_ROLE_OFFICE, rates->office_minor_per_h },
    { "bench_cost", EM_MONEY_BENCH, EM_ROLE_BENCH, rates->bench_minor_per_h },
    { "finish_cost", EM_MONEY_FINISH, EM_ROLE_FINISH, rates->finish_minor_per_h },
  };

  for (int i = 0; i < EM_N_ROLE; i++)
    STEP (trace, row, roles[i].quantity, "C", (double) money_minor[roles[i].money], "minor", EM_N ("C = rate·t/3600"), rate_book,
          { EM_N ("rate"), (double) roles[i].rate, "minor/h" }, { "t", seconds_of (roles[i].role, task_s), "s" });
}

static void
trace_additions (EmTrace *trace, int32_t row, const EmPriceRule *rule, const int64_t money[EM_N_MONEY], int64_t cost_minor, int64_t price_minor,
                 const char *price_formula)
{
  double labour = (double) (money[EM_MONEY_OFFICE] + money[EM_MONEY_BENCH] + money[EM_MONEY_FINISH]), direct = 0.0;

  for (int i = 0; i < EM_N_DIRECT; i++)
    direct += (double) money[i];
  STEP (trace, row, "bought_cost", "C", (double) money[EM_MONEY_BOUGHT], "minor", EM_N ("C = bought-out work + finishing wear by area and edge"), rate_book,
        { "C", (double) money[EM_MONEY_BOUGHT], "minor" });
  STEP (trace, row, "overhead", "Co", (double) money[EM_MONEY_OVERHEAD], "minor", EM_N ("Co = o·labor"), rate_book,
        { "o", (double) rule->overhead_ppm / 1e6, "" }, { EM_N ("labor"), labour, "minor" });
  STEP (trace, row, "contingency", "Cc", (double) money[EM_MONEY_CONTINGENCY], "minor", EM_N ("Cc = c·(direct + Co)"), rate_book,
        { "c", (double) rule->contingency_ppm / 1e6, "" }, { EM_N ("direct"), direct, "minor" }, { "Co", (double) money[EM_MONEY_OVERHEAD], "minor" });
  STEP (trace, row, "price", "P", (double) price_minor, "minor", price_formula, EM_N ("margin is a share of the price"),
        { EM_N ("cost"), (double) cost_minor, "minor" }, { "m", (double) rule->margin_ppm / 1e6, "" });
  STEP (trace, row, "margin", "M", (double) money[EM_MONEY_MARGIN], "minor", EM_N ("M = P − cost, so that the parts sum to the price"), by_definition,
        { "P", (double) price_minor, "minor" }, { EM_N ("cost"), (double) cost_minor, "minor" });
}

void
em_cost_trace_feature (EmTrace *trace, const EmQuote *quote, int32_t index, const EmRates *rates, const EmCatalogue *catalogue,
                       const EmFeatureCost *cost)
{
  const EmFeature *feature = &quote->feature[index];
  const EmMachine *machine = &rates->machine[cost->machine];
  const EmFiller *filler = &catalogue->filler[cost->filler];
  EmPriceRule rule;

  if (trace == NULL)
    return;
  em_price_rule_set (quote, rates, &rule);
  trace_choice (trace, index, feature, machine, cost);
  trace_plan (trace, index, feature->count, cost);
  trace_filler (trace, index, rates, filler, cost);
  trace_arc (trace, index, feature->count, rates, filler, cost);
  trace_tasks (trace, index, feature->count, feature->access, rates, cost);
  trace_direct (trace, index, rates, cost->task_s, cost->money_minor);
  STEP (trace, index, "machine_cost", "C", (double) cost->money_minor[EM_MONEY_MACHINE], "minor", EM_N ("C = rate·t/3600"), rate_book,
        { EM_N ("rate"), (double) machine->machine_minor_per_h, "minor/h" }, { "t", cost->arc_on_s, "s" });
  STEP (trace, index, "consumable_cost", "C", (double) cost->money_minor[EM_MONEY_CONSUMABLE], "minor", EM_N ("C = rate·t/3600"), rate_book,
        { EM_N ("rate"), (double) machine->consumable_minor_per_h, "minor/h" }, { "t", cost->arc_on_s, "s" });
  STEP (trace, index, "gas_cost", "C", (double) cost->money_minor[EM_MONEY_GAS], "minor", EM_N ("C = rate·G/1000"), rate_book,
        { EM_N ("rate"), (double) rates->gas_minor_per_m3, "minor/m³" }, { "G", cost->gas_l, "l" });
  trace_additions (trace, index, &rule, cost->money_minor, cost->cost_minor, cost->calculated_minor,
                   EM_N ("P = (direct + Co)·(1 + c)/(1 − m), rounded once"));
  if (feature->has_override)
    STEP (trace, index, "price", "P", (double) cost->price_minor, "minor", EM_N ("P as stated by the office"), EM_N ("override"),
          { EM_N ("calculated"), (double) cost->calculated_minor, "minor" });
}

/* ---- the order ---- */

static double
sum_machine_s (const EmQuote *quote, const EmCost *cost, int32_t machine)
{
  double sum = 0.0;

  for (int32_t i = 0; i < cost->n_features; i++)
    if (cost->feature[i].status == EM_OK && cost->feature[i].machine == machine)
      sum += cost->feature[i].arc_on_s;
  return sum * quote->n_tools;
}

static void
trace_sums (EmTrace *trace, const EmQuote *quote, const EmCost *cost)
{
  const struct { const char *quantity, *unit; double value; } sums[] =
  {
    { "net_volume", "mm³", cost->net_volume_mm3 }, { "required_volume", "mm³", cost->required_volume_mm3 },
    { "deposited_volume", "mm³", cost->deposited_volume_mm3 }, { "layers", "", (double) cost->layers }, { "tracks", "", (double) cost->tracks },
    { "welded_length", "mm", cost->welded_length_mm }, { "wire_length", "mm", cost->wire_length_mm }, { "filler_mass", "g", cost->filler_mass_g },
    { "arc_on", "s", cost->arc_on_s }, { "gas", "l", cost->gas_l },
  };

  for (size_t i = 0; i < sizeof sums / sizeof sums[0]; i++)
    STEP (trace, EM_ROW_QUOTE, sums[i].quantity, "Σ", sums[i].value, sums[i].unit, EM_N ("tools · sum over the features"), by_definition,
          { EM_N ("tools"), quote->n_tools, "" }, { EM_N ("features"), cost->n_visits, "" });
  STEP (trace, EM_ROW_QUOTE, "sticks", "S", (double) cost->sticks, "", EM_N ("S = Σ ⌈wire used/(Ls − stub)⌉ over the wires, pooled"), rate_book,
        { "Lw", cost->wire_length_mm, "mm" });
}

static void
trace_shared_tasks (EmTrace *trace, const EmQuote *quote, const EmRates *rates, const EmCost *cost)
{
  const struct { EmTask task; double each_min, times; } tasks[] =
  {
    { EM_TASK_PAPERWORK, rates->paperwork_min, 1 }, { EM_TASK_PROGRAM, rates->program_min, 1 },
    { EM_TASK_RECEIVE, rates->receive_min, 1 }, { EM_TASK_TRUE, rates->true_setting_min, cost->settings },
    { EM_TASK_WIRE_CHANGE, rates->wire_change_min, cost->wire_changes }, { EM_TASK_PREHEAT, rates->preheat_attend_min, cost->is_preheated },
    { EM_TASK_PACK, rates->pack_min, 1 },
  };
  double learned = quote->n_tools * cost->learning_factor;

  STEP (trace, EM_ROW_QUOTE, "learning", "F", cost->learning_factor, "", EM_N ("F = n^log2(rate), cumulative average of n tools"), "T. P. Wright, 1936",
        { "n", quote->n_tools, "" }, { EM_N ("rate"), (double) (quote->learning_ppm >= 0 ? quote->learning_ppm : rates->learning_ppm) / 1e6, "" });
  for (size_t i = 0; i < sizeof tasks / sizeof tasks[0]; i++)
    STEP (trace, EM_ROW_QUOTE, em_tasks[tasks[i].task].id, "t", cost->task_s[tasks[i].task], "s",
          em_tasks[tasks[i].task].scope == EM_PER_ORDER ? EM_N ("t = 60·each·times, once") : EM_N ("t = 60·each·times·n·F"), rate_book,
          { EM_N ("each"), tasks[i].each_min, "min" }, { EM_N ("times"), tasks[i].times, "" }, { "n·F", learned, "" });
  for (int i = 0; i < EM_N_TASK; i++)
    if (em_tasks[i].scope == EM_PER_INSTANCE)
      STEP (trace, EM_ROW_QUOTE, i == EM_TASK_ARC_ON ? "arc_on_attended" : em_tasks[i].id, "t", cost->task_s[i], "s",
            EM_N ("t = n·F · sum over the features"), by_definition,
            { "n·F", learned, "" });
  STEP (trace, EM_ROW_QUOTE, "labour", "t", cost->labour_s, "s", EM_N ("t = sum of all tasks"), by_definition,
        { EM_N ("office"), seconds_of (EM_ROLE_OFFICE, cost->task_s), "s" }, { EM_N ("bench"), seconds_of (EM_ROLE_BENCH, cost->task_s), "s" },
        { EM_N ("finishing"), seconds_of (EM_ROLE_FINISH, cost->task_s), "s" });
}

static void
trace_order_money (EmTrace *trace, const EmQuote *quote, const EmRates *rates, const EmPriceRule *rule, const EmCost *cost)
{
  int64_t calculated = cost->cost_minor + cost->money_minor[EM_MONEY_MARGIN];

  trace_direct (trace, EM_ROW_QUOTE, rates, cost->task_s, cost->money_minor);
  for (int32_t m = 0; m < rates->n_machines; m++)
    {
      double on_s = sum_machine_s (quote, cost, m);

      if (on_s > 0.0)
        {
          STEP (trace, EM_ROW_QUOTE, "machine_cost", "C", (double) rates->machine[m].machine_minor_per_h * on_s / 3600.0, "minor",
                EM_N ("C = rate·t/3600, one machine's part"), rate_book,
                { EM_N ("rate"), (double) rates->machine[m].machine_minor_per_h, "minor/h" }, { "t", on_s, "s" });
          STEP (trace, EM_ROW_QUOTE, "consumable_cost", "C", (double) rates->machine[m].consumable_minor_per_h * on_s / 3600.0, "minor",
                EM_N ("C = rate·t/3600, one machine's part"), rate_book,
                { EM_N ("rate"), (double) rates->machine[m].consumable_minor_per_h, "minor/h" }, { "t", on_s, "s" });
        }
    }
  STEP (trace, EM_ROW_QUOTE, "filler_cost", "Cw", (double) cost->money_minor[EM_MONEY_FILLER], "minor",
        rates->buys_whole_sticks ? EM_N ("Cw = sum over the features + rest of the last stick of each wire") : EM_N ("Cw = sum over the features"),
        rate_book, { "S", (double) cost->sticks, "" });
  STEP (trace, EM_ROW_QUOTE, "gas_cost", "C", (double) cost->money_minor[EM_MONEY_GAS], "minor", EM_N ("C = rate·G/1000"), rate_book,
        { EM_N ("rate"), (double) rates->gas_minor_per_m3, "minor/m³" }, { "G", cost->gas_l, "l" });
  trace_additions (trace, EM_ROW_QUOTE, rule, cost->money_minor, cost->cost_minor, calculated,
                   EM_N ("P = sum of the lines, each (direct + Co)·(1 + c)/(1 − m) rounded once"));
  STEP (trace, EM_ROW_QUOTE, "markup", "k", (double) cost->markup_ppm / 1e6, "", "k = m/(1 − m)", EM_N ("markup is a share of the cost"),
        { "m", (double) rule->margin_ppm / 1e6, "" });
}

static const char *
tail_formula (EmLineType type)
{
  switch (type)
    {
    case EM_LINE_MINIMUM:
      return EM_N ("up to the minimum charge");
    case EM_LINE_RUSH:
      return EM_N ("rush, a share of what stands above");
    case EM_LINE_DISCOUNT:
      return EM_N ("discount, a share of what stands above");
    case EM_LINE_ROUNDING:
      return EM_N ("to the rounding step");
    case EM_LINE_TAX:
      return EM_N ("tax on the net, or on the net and the taxes above");
    default:
      return EM_N ("printed line");
    }
}

static void
trace_totals (EmTrace *trace, const EmCost *cost)
{
  double running = 0.0;

  for (int32_t i = 0; i < cost->n_lines; i++)
    {
      const EmLine *line = &cost->line[i];

      if (line->type >= EM_LINE_MINIMUM)
        STEP (trace, EM_ROW_QUOTE, line->type == EM_LINE_TAX ? "tax" : "net", "P", (double) line->amount_minor, "minor", tail_formula (line->type), rate_book,
              { EM_N ("above"), running, "minor" }, { EM_N ("rate"), (double) line->rate_ppm / 1e6, "" });
      running += (double) line->amount_minor;
    }
  STEP (trace, EM_ROW_QUOTE, "subtotal", "P", (double) cost->totals.subtotal_minor, "minor", EM_N ("sum of the printed lines"), by_definition,
        { EM_N ("lines"), cost->n_lines, "" });
  STEP (trace, EM_ROW_QUOTE, "net", "P", (double) cost->totals.net_minor, "minor", EM_N ("subtotal + minimum + rush − discount + rounding"), by_definition,
        { EM_N ("subtotal"), (double) cost->totals.subtotal_minor, "minor" });
  STEP (trace, EM_ROW_QUOTE, "total", "P", (double) cost->totals.total_minor, "minor", EM_N ("net + taxes"), by_definition,
        { EM_N ("net"), (double) cost->totals.net_minor, "minor" }, { EM_N ("tax"), (double) cost->totals.tax_minor, "minor" });
}

void
em_cost_trace_quote (EmTrace *trace, const EmQuote *quote, const EmRates *rates, const EmCatalogue *catalogue, const EmCost *cost)
{
  EmPriceRule rule;

  (void) catalogue;
  if (trace == NULL)
    return;
  em_price_rule_set (quote, rates, &rule);
  trace_sums (trace, quote, cost);
  if (cost->n_visits > 0)
    trace_shared_tasks (trace, quote, rates, cost);
  trace_order_money (trace, quote, rates, &rule, cost);
  trace_totals (trace, cost);
}
