/* Checks of core/em-cost: a small job worked by hand, and what cannot be priced.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-cost.h"
#include "em-test-book.h"
#include "em-test-main.h"

#include "em-quote.h"

#include <math.h>
#include <string.h>

static EmRates rates;
static EmCatalogue catalogue;
static EmQuote quote;

static void
setup (void)
{
  em_test_rates (&rates);
  em_test_catalogue (&catalogue);
  em_quote_init (&quote);
  em_quote_set_text (&quote, EM_QUOTE_BASE, "h13");
  em_quote_set_text (&quote, EM_QUOTE_FILLER, "h13");
}

static void
teardown (void)
{
  em_quote_clear (&quote);
  em_catalogue_clear (&catalogue);
  em_rates_clear (&rates);
}

/* A sidewall of length × height × thickness, plain: not capped, nothing near. */
static EmFeature *
add_sidewall (double length, double height, double thickness)
{
  const EmKind *kind = em_kind_find ("sidewall");
  EmFeature feature;

  ck_assert_ptr_nonnull (kind);
  em_feature_init (&feature, kind);
  feature.value[em_kind_field (kind, "length")] = length;
  feature.value[em_kind_field (kind, "height")] = height;
  feature.value[em_kind_field (kind, "thickness")] = thickness;
  feature.cap = EM_NO;
  feature.melt_out = EM_NO;
  ck_assert_int_eq (em_quote_insert_take (&quote, quote.n_features, &feature), EM_OK);
  return &quote.feature[quote.n_features - 1];
}

static void
solve (EmCost *cost)
{
  EmFault fault;

  em_cost_init (cost);
  ck_assert_int_eq (em_cost_quote (cost, &quote, &rates, &catalogue, NULL, &fault), EM_OK);
}

/* Fails naming the fault of the only feature. */
static void
expect_fault (EmStatus code, const char *field)
{
  EmCost cost;

  solve (&cost);
  ck_assert_int_eq (cost.n_faults, 1);
  ck_assert_msg (cost.first_fault.code == code && strcmp (cost.first_fault.field, field) == 0, "wanted %d %s, got %d %s", code, field,
                 cost.first_fault.code, cost.first_fault.field);
  ck_assert_int_eq (cost.first_fault.row, 0);
  ck_assert_int_eq (cost.feature[0].price_minor, 0);
  em_cost_clear (&cost);
}

static void
expect_lines_add_up (const EmCost *cost)
{
  int64_t subtotal = 0, net = 0, total = 0, money = 0, calculated = 0;

  for (int32_t i = 0; i < cost->n_lines; i++)
    {
      const EmLine *line = &cost->line[i];

      subtotal += line->type <= EM_LINE_EXTRA ? line->amount_minor : 0;
      calculated += line->type <= EM_LINE_EXTRA ? line->calculated_minor : 0;
      net += line->type < EM_LINE_TAX ? line->amount_minor : 0;
      total += line->amount_minor;
    }
  for (int i = 0; i < EM_N_MONEY; i++)
    money += cost->money_minor[i];
  ck_assert_int_eq (cost->totals.subtotal_minor, subtotal);
  ck_assert_int_eq (cost->totals.net_minor, net);
  ck_assert_int_eq (cost->totals.total_minor, total);
  ck_assert_int_eq (money, calculated);
  ck_assert_int_eq (cost->cost_minor, money - cost->money_minor[EM_MONEY_MARGIN]);
}

/* One sidewall 20 × 4 × 0.5 mm, 0.508 mm wire on the laser, both fixed; 60.00 an hour is 1 minor unit each 0.6 s.
 *
 * Plan: A = π·0.508²/4 = 0.2026829916 mm², tL = 0.254 mm, p = 0.95·A/tL = 0.758066307 mm, N = ⌈0.5/0.254 = 1.9685⌉ + 1 = 3.
 *   The kind lays tracks along l = 20 over w = 4: ⌈4/0.758066⌉ = ⌈5.2766⌉ = 6 tracks; 18 in all, 360 mm.
 *   Deposited 0.95·A·360 = 69.317583 mm³; net 20·4·0.5 = 40.
 * Wire 360/0.9 = 400 mm; sticks 400/308 → 2; mass A·0.0078·400 = 0.632371 g.
 * Speed: s = 0.6096, v1 = 10·0.6096·0.5 = 3.048 mm/s; q = 0.0078·A/0.8·1300/0.2 = 12.845034 J/mm; v2 = 300/q = 23.36: v1 holds.
 *   Arc-on 360/3.048 = 118.110236 s; with OF 0.4, bench 295.275591 s.
 * Area 20·4 = 0.8 cm²: mask 60·(5 + 0.5·0.8) = 324 s. */
START_TEST (test_one_sidewall)
{
  EmFeature *feature = add_sidewall (20, 4, 0.5);
  EmCost cost;

  feature->wire_mm = 0.508;
  em_feature_set_text (feature, EM_FEATURE_MACHINE, "laser");
  solve (&cost);
  ck_assert_int_eq (cost.n_faults, 0);

  const EmFeatureCost *f = &cost.feature[0];

  ck_assert_int_eq (f->plan.layers, 3);
  ck_assert_int_eq (f->plan.tracks, 18);
  ck_assert_double_eq_tol (f->welded_length_mm, 360, 1e-9);
  ck_assert_double_eq_tol (f->net_volume_mm3, 40, 1e-9);
  ck_assert_double_eq_tol (f->deposited_volume_mm3, 69.317583, 1e-6);
  ck_assert_double_eq_tol (f->wire_length_mm, 400, 1e-9);
  ck_assert_int_eq (f->sticks, 2);
  ck_assert_double_eq_tol (f->filler_mass_g, 0.632371, 1e-6);
  ck_assert_double_eq_tol (f->arc.speed_mm_per_s, 3.048, 1e-12);
  ck_assert_int_eq (f->arc.bound, EM_BOUND_PULSE);
  ck_assert_double_eq_tol (f->arc_on_s, 118.110236, 1e-6);
  ck_assert_double_eq_tol (f->task_s[EM_TASK_HANDLING], 295.275591 - 118.110236, 1e-6);
  ck_assert_double_eq_tol (f->task_s[EM_TASK_MASK], 324, 1e-9);
  ck_assert_int_eq (f->why, EM_WHY_OFFICE);
  /* Machine 3000·118.110/3600 = 98.425 → 98; consumables 600·118.110/3600 = 19.685 → 20. Wire: bought 400·333/308 = 432.467532 mm
   * at 4.00 a metre = 172.99 → 173. Gas 10/60·(118.110236 + 1·3) = 20.185039 l at 10.00/m³ = 20.185 → 20. */
  ck_assert_int_eq (f->money_minor[EM_MONEY_MACHINE], 98);
  ck_assert_int_eq (f->money_minor[EM_MONEY_CONSUMABLE], 20);
  ck_assert_int_eq (f->money_minor[EM_MONEY_FILLER], 173);
  ck_assert_int_eq (f->money_minor[EM_MONEY_GAS], 20);
  expect_lines_add_up (&cost);
  em_cost_clear (&cost);
}
END_TEST

START_TEST (test_cheapest_is_chosen)
{
  EmSizeTried tried[EM_TRIED_MAX];
  EmCost cost;
  int32_t n;
  int fitting = 0;
  int64_t least = INT64_MAX;

  add_sidewall (20, 4, 0.5);
  solve (&cost);
  ck_assert_int_eq (em_cost_tried (&quote, 0, &rates, &catalogue, tried, &n, NULL), EM_OK);
  ck_assert_int_eq (n, 10);
  for (int i = 0; i < n; i++)
    if (tried[i].status == EM_OK && !tried[i].overfills)
      {
        fitting++;
        least = tried[i].cost_minor < least ? tried[i].cost_minor : least;
      }
  ck_assert_int_gt (fitting, 1);
  ck_assert_int_eq (cost.feature[0].why, EM_WHY_CHEAPEST);
  /* Parts of a cost are rounded apart from their sum: one minor unit for each of eleven at most. */
  ck_assert_int_le (llabs (cost.feature[0].cost_minor - least), 6);
  em_cost_clear (&cost);
}
END_TEST

/* Each size tried says what naming it would cost, or why it is not to be had. Layers are half the wire: a wall of 0.3 mm is overfilled
 * by 0.635 (0.3175) and 0.889 mm (0.4445) and by no other. */
START_TEST (test_every_size_tried_is_what_naming_it_costs)
{
  EmFeature *feature = add_sidewall (20, 4, 0.3);
  EmSizeTried tried[EM_TRIED_MAX];
  int32_t n;

  catalogue.filler[0].size[1].is_stocked = false;
  rates.machine[1].wire_low_mm = 0.3;
  ck_assert_int_eq (em_cost_tried (&quote, 0, &rates, &catalogue, tried, &n, NULL), EM_OK);
  ck_assert_int_eq (n, 8);   /* four sizes on two machines */
  for (int32_t i = 0; i < n; i++)
    {
      EmFeatureCost cost;

      feature->wire_mm = tried[i].wire_mm;
      em_feature_set_text (feature, EM_FEATURE_MACHINE, rates.machine[tried[i].machine].id);
      ck_assert_int_eq (em_cost_feature (&quote, 0, &rates, &catalogue, &cost, NULL), tried[i].status);
      ck_assert_int_eq (tried[i].status == EM_OK, !(tried[i].machine == 1 && tried[i].wire_mm < 0.3));
      ck_assert_int_eq (cost.price_minor, tried[i].price_minor);
      ck_assert_int_eq (tried[i].overfills, tried[i].status == EM_OK && tried[i].wire_mm > 0.6);
      if (tried[i].status == EM_OK)
        continue;
      ck_assert_int_eq (tried[i].fault.code, EM_FAULT_RANGE);
      ck_assert_str_eq (tried[i].fault.field, "wire");
      ck_assert_double_eq (tried[i].fault.low, 0.3);
    }
}
END_TEST

/* What no size can mend is told once, and nothing is written. */
START_TEST (test_nothing_to_try)
{
  EmFeature *feature = add_sidewall (20, 4, 0.5);
  EmSizeTried tried[EM_TRIED_MAX], before[EM_TRIED_MAX];
  int32_t n = -7;
  EmFault fault;

  memset (tried, 0x5a, sizeof tried);
  memcpy (before, tried, sizeof before);
  feature->count = 0;
  ck_assert_int_eq (em_cost_tried (&quote, 0, &rates, &catalogue, tried, &n, &fault), EM_FAULT_RANGE);
  ck_assert_str_eq (fault.field, "count");
  feature->count = 1;
  em_feature_set_text (feature, EM_FEATURE_FILLER, "unobtainium");
  ck_assert_int_eq (em_cost_tried (&quote, 0, &rates, &catalogue, tried, &n, &fault), EM_FAULT_UNKNOWN);
  ck_assert_str_eq (fault.field, "filler");
  ck_assert_int_eq (fault.row, 0);
  ck_assert_int_eq (n, -7);
  ck_assert_mem_eq (tried, before, sizeof tried);
}
END_TEST

/* The office's choice costs what the two prices differ by, each costed alone. */
START_TEST (test_overruling_tells_its_price)
{
  EmFeature *feature = add_sidewall (20, 4, 0.5);
  EmCost cheapest, fixed;

  solve (&cheapest);
  feature->wire_mm = 0.254;
  solve (&fixed);
  ck_assert_int_eq (fixed.feature[0].why, EM_WHY_OFFICE);
  ck_assert_int_eq (fixed.feature[0].office_choice_minor, fixed.feature[0].calculated_minor - cheapest.feature[0].calculated_minor);
  ck_assert_int_gt (fixed.feature[0].office_choice_minor, 0);
  em_cost_clear (&cheapest);
  em_cost_clear (&fixed);
}
END_TEST

START_TEST (test_what_cannot_be_priced)
{
  EmFeature *feature = add_sidewall (20, 4, 0.5);

  feature->clearance_mm = 0.05;           /* less than half of 1.2·0.254 */
  expect_fault (EM_FAULT_NO_WIRE, "clearance");
  feature->clearance_mm = EM_ABSENT;
  feature->slot_width_mm = 1;             /* 40·tan 20° = 14.6 mm needed */
  feature->slot_depth_mm = 40;
  expect_fault (EM_FAULT_UNREACHABLE, "slot_width");
  feature->slot_width_mm = feature->slot_depth_mm = EM_ABSENT;
  feature->wire_mm = 4.9;                 /* thicker than any machine melts */
  expect_fault (EM_FAULT_RANGE, "wire");
  feature->wire_mm = 0.3;                 /* no such size */
  expect_fault (EM_FAULT_NO_WIRE, "wire");
  feature->wire_mm = EM_ABSENT;
  em_feature_set_text (feature, EM_FEATURE_FILLER, "unobtainium");
  expect_fault (EM_FAULT_UNKNOWN, "filler");
  em_feature_set_text (feature, EM_FEATURE_FILLER, "p20");
  em_feature_set_text (feature, EM_FEATURE_MACHINE, "laser");   /* p20 wire is for the torch only */
  expect_fault (EM_FAULT_UNSUITED, "filler");
  em_feature_set_text (feature, EM_FEATURE_MACHINE, "plasma");
  expect_fault (EM_FAULT_UNKNOWN, "machine");
  em_feature_set_text (feature, EM_FEATURE_MACHINE, NULL);
  feature->count = 0;
  expect_fault (EM_FAULT_RANGE, "count");
}
END_TEST

/* Any machine of a process costs what the one of it costs, as there is one of each; what is named nearer to the feature goes first, and
 * a machine before a process. */
START_TEST (test_a_process_is_any_machine_of_it)
{
  static const struct { const char *own_machine, *own_process, *machine, *process; int32_t index; } rows[] =
  {
    { NULL, NULL, NULL, "laser", 0 },
    { NULL, NULL, NULL, "gtaw", 1 },
    { NULL, "gtaw", NULL, "laser", 1 },
    { NULL, "gtaw", "laser", NULL, 1 },
    { "laser", NULL, NULL, "gtaw", 0 },
    { "laser", "gtaw", NULL, NULL, 0 },
    { NULL, NULL, "laser", "gtaw", 0 },
  };
  EmFeature *feature = add_sidewall (20, 4, 0.5);
  EmFeatureCost named, cost;

  for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++)
    {
      em_quote_set_text (&quote, EM_QUOTE_MACHINE, NULL);
      em_quote_set_text (&quote, EM_QUOTE_PROCESS, NULL);
      em_feature_set_text (feature, EM_FEATURE_PROCESS, NULL);
      em_feature_set_text (feature, EM_FEATURE_MACHINE, rates.machine[rows[i].index].id);
      ck_assert_int_eq (em_cost_feature (&quote, 0, &rates, &catalogue, &named, NULL), EM_OK);
      em_feature_set_text (feature, EM_FEATURE_MACHINE, rows[i].own_machine);
      em_feature_set_text (feature, EM_FEATURE_PROCESS, rows[i].own_process);
      em_quote_set_text (&quote, EM_QUOTE_MACHINE, rows[i].machine);
      em_quote_set_text (&quote, EM_QUOTE_PROCESS, rows[i].process);
      ck_assert_int_eq (em_cost_feature (&quote, 0, &rates, &catalogue, &cost, NULL), EM_OK);
      ck_assert_msg (cost.machine == rows[i].index, "row %d: machine %d", (int) i, (int) cost.machine);
      ck_assert_int_eq (cost.price_minor, named.price_minor);
      ck_assert_int_eq (cost.office_choice_minor, named.office_choice_minor);
      ck_assert_int_eq (cost.why, EM_WHY_OFFICE);
    }
  em_quote_set_text (&quote, EM_QUOTE_MACHINE, NULL);
  em_feature_set_text (feature, EM_FEATURE_MACHINE, NULL);
  em_feature_set_text (feature, EM_FEATURE_PROCESS, "plasma");
  expect_fault (EM_FAULT_UNKNOWN, "process");
  /* None in use is of it; one that is retired is offered no more. */
  em_feature_set_text (feature, EM_FEATURE_PROCESS, "gtaw");
  rates.machine[1].is_retired = true;
  expect_fault (EM_FAULT_UNKNOWN, "process");
}
END_TEST

/* ---- what stands in the way of every wire, told by what came furthest ---- */

static void bad_price (void) { for (int i = 0; i < 5; i++) catalogue.filler[0].size[i].price_minor = -1; }
static void bad_high_price (void) { for (int i = 0; i < 5; i++) catalogue.filler[0].size[i].price_minor = INT64_C (1000000000001); }
static void bad_stick (void) { catalogue.filler[0].stick_mm = 25; }
static void bad_density (void) { catalogue.filler[0].density_g_per_mm3 = 0; }
static void bad_enthalpy (void) { catalogue.filler[0].melt_j_per_g = EM_ABSENT; }
static void bad_rating (void) { rates.machine[0].peak_w = 1; rates.machine[1].current_high_a = 0.5; }
static void bad_stock (void) { for (int i = 0; i < 5; i++) catalogue.filler[0].size[i].is_stocked = false; }
static void bad_machines (void) { rates.machine[0].is_retired = rates.machine[1].is_retired = true; }
static void bad_process (void) { catalogue.filler[0].processes = 0; }
static void bad_melts (void) { rates.machine[0].wire_low_mm = rates.machine[0].wire_high_mm = 0.2; rates.machine[1].wire_low_mm = 1.5; }
static void bad_height (void) { quote.feature[0].value[2] = 100; rates.layer_ratio = 0.1; catalogue.filler[0].n_sizes = 1; catalogue.filler[0].size[0].wire_mm = 0.05;
                                rates.machine[0].wire_low_mm = rates.machine[1].wire_low_mm = 0.01; }
static void bad_override (void) { quote.feature[0].has_override = true; quote.feature[0].override_minor = INT64_C (1000000000001); }

static const struct { const char *name; void (*spoil) (void); EmStatus code; const char *field; double low, high; } obstacles[] =
{
  { "a wire of a negative price", bad_price, EM_FAULT_RANGE, "wire_price", 0, 1e12 },
  { "a wire of a price beyond counting", bad_high_price, EM_FAULT_RANGE, "wire_price", 0, 1e12 },
  { "a stick no longer than its stub", bad_stick, EM_FAULT_RANGE, "stick", 25, EM_ABSENT },
  { "a wire that weighs nothing", bad_density, EM_FAULT_RANGE, "density", 0, EM_ABSENT },
  { "a wire of unknown heat", bad_enthalpy, EM_FAULT_RANGE, "melt_enthalpy", 0, EM_ABSENT },
  { "machines too weak for any size", bad_rating, EM_FAULT_RATING, "peak", EM_ABSENT, EM_ABSENT },
  { "none of it stocked", bad_stock, EM_FAULT_NO_WIRE, "wire", 0.254, 0.889 },
  { "no machine in use", bad_machines, EM_FAULT_NO_WIRE, "wire", 0.254, 0.889 },
  { "neither for beam nor arc", bad_process, EM_FAULT_UNSUITED, "filler", EM_ABSENT, EM_ABSENT },
  { "machines that melt none of it: between them 0.2 to 1.7 mm", bad_melts, EM_FAULT_NO_WIRE, "wire", 0.2, 1.7 },
  { "finer than 10,000 layers allow: 100/(0.1·9999) mm", bad_height, EM_FAULT_RANGE, "wire", 0.10001000, EM_ABSENT },
  { "a stated price beyond counting", bad_override, EM_FAULT_RANGE, "override", 0, 1e12 },
};

START_TEST (test_what_stands_in_the_way)
{
  EmFeatureCost one;
  EmCost cost;
  bool has_low = !isnan (obstacles[_i].low), has_high = !isnan (obstacles[_i].high);

  add_sidewall (20, 4, 0.5);
  obstacles[_i].spoil ();
  ck_assert_int_eq (em_cost_feature (&quote, 0, &rates, &catalogue, &one, NULL), obstacles[_i].code);
  ck_assert_msg (strcmp (one.fault.field, obstacles[_i].field) == 0, "%s: %s", obstacles[_i].name, one.fault.field);
  ck_assert_msg ((!has_low || fabs (one.fault.low / fmax (obstacles[_i].low, 1e-300) - 1) < 1e-6 || one.fault.low == obstacles[_i].low)
                 && (!has_high || one.fault.high == obstacles[_i].high), "%s: %.9g … %.9g", obstacles[_i].name, one.fault.low, one.fault.high);
  ck_assert_int_eq (one.price_minor, 0);
  ck_assert_int_eq (one.machine, -1);
  solve (&cost);
  ck_assert_int_eq (cost.n_faults, 1);
  ck_assert_int_eq (cost.first_fault.code, obstacles[_i].code);
  ck_assert_str_eq (cost.first_fault.field, obstacles[_i].field);
  ck_assert_int_eq (cost.totals.total_minor, 0);
  em_cost_clear (&cost);
}
END_TEST

/* Books a single feature cannot be priced with. */
START_TEST (test_one_feature_with_bad_books)
{
  EmFeatureCost one;

  add_sidewall (20, 4, 0.5);
  rates.layer_ratio = 0;
  ck_assert_int_eq (em_cost_feature (&quote, 0, &rates, &catalogue, &one, NULL), EM_FAULT_RANGE);
  ck_assert_str_eq (one.fault.field, "layer_ratio");
  ck_assert_int_eq (one.status, EM_FAULT_RANGE);
  rates.layer_ratio = 0.5;
  quote.n_tools = 0;
  ck_assert_int_eq (em_cost_feature (&quote, 0, &rates, &catalogue, &one, NULL), EM_FAULT_RANGE);
  ck_assert_str_eq (one.fault.field, "tools");
  quote.n_tools = 1;
  quote.feature[0].count = 10000;
  rates.bench_minor_per_h = rates.machine[0].machine_minor_per_h = rates.machine[1].machine_minor_per_h = INT64_C (1000000000000);
  ck_assert_int_eq (em_cost_feature (&quote, 0, &rates, &catalogue, &one, NULL), EM_FAULT_OVERFLOW);
  ck_assert_str_eq (one.fault.field, "price");
}
END_TEST

/* A costing kept up to date with other books than it was made with begins afresh. */
START_TEST (test_update_with_other_books)
{
  EmRates others;
  EmCost cost, fresh;

  add_sidewall (20, 4, 0.5);
  solve (&cost);
  ck_assert_int_eq (em_rates_copy (&rates, &others), EM_OK);
  others.bench_minor_per_h *= 2;
  ck_assert_int_eq (em_cost_update (&cost, 0, &quote, &others, &catalogue, NULL), EM_OK);
  em_cost_init (&fresh);
  ck_assert_int_eq (em_cost_quote (&fresh, &quote, &others, &catalogue, NULL, NULL), EM_OK);
  ck_assert_mem_eq (&cost.totals, &fresh.totals, sizeof cost.totals);
  ck_assert_int_eq (em_cost_update (&cost, 5, &quote, &others, &catalogue, NULL), EM_OK);   /* no such feature: all of it */
  ck_assert_mem_eq (&cost.totals, &fresh.totals, sizeof cost.totals);
  em_cost_clear (&cost);
  em_cost_clear (&fresh);
  em_rates_clear (&others);
}
END_TEST

/* A faulty quote, rate book or metal leaves the last good figures. */
START_TEST (test_last_good_figures_stay)
{
  EmCost cost;
  EmFault fault;
  EmTotals totals;

  add_sidewall (20, 4, 0.5);
  solve (&cost);
  totals = cost.totals;
  quote.n_tools = 0;
  ck_assert_int_eq (em_cost_quote (&cost, &quote, &rates, &catalogue, NULL, &fault), EM_FAULT_RANGE);
  ck_assert_str_eq (fault.field, "tools");
  quote.n_tools = 1;
  rates.layer_ratio = 0;
  ck_assert_int_eq (em_cost_quote (&cost, &quote, &rates, &catalogue, NULL, &fault), EM_FAULT_RANGE);
  ck_assert_str_eq (fault.field, "layer_ratio");
  rates.layer_ratio = 0.5;
  em_quote_set_text (&quote, EM_QUOTE_BASE, "mithril");
  ck_assert_int_eq (em_cost_quote (&cost, &quote, &rates, &catalogue, NULL, &fault), EM_FAULT_UNKNOWN);
  ck_assert_str_eq (fault.field, "base");
  ck_assert_mem_eq (&cost.totals, &totals, sizeof totals);
  ck_assert_int_eq (cost.n_lines, 3);
  em_cost_clear (&cost);
}
END_TEST

START_TEST (test_empty_quote_costs_nothing)
{
  EmCost cost;

  rates.minimum_minor = 5000;
  solve (&cost);
  ck_assert_int_eq (cost.totals.total_minor, 0);
  ck_assert_int_eq (cost.n_lines, 0);
  em_cost_clear (&cost);
}
END_TEST

int
main (void)
{
  const TTest *const tests[] = { test_one_sidewall, test_cheapest_is_chosen, test_every_size_tried_is_what_naming_it_costs,
                                 test_a_process_is_any_machine_of_it, test_nothing_to_try, test_overruling_tells_its_price, test_what_cannot_be_priced, test_one_feature_with_bad_books,
                                 test_update_with_other_books, test_last_good_figures_stay, test_empty_quote_costs_nothing };
  Suite *suite = suite_create ("core: cost");
  TCase *tcase = tcase_create ("cost");
  SRunner *runner = srunner_create (suite);

  tcase_add_checked_fixture (tcase, setup, teardown);
  for (size_t i = 0; i < sizeof tests / sizeof tests[0]; i++)
    tcase_add_test (tcase, tests[i]);
  tcase_add_loop_test (tcase, test_what_stands_in_the_way, 0, (int) (sizeof obstacles / sizeof obstacles[0]));
  suite_add_tcase (suite, tcase);
  srunner_run_all (runner, CK_ENV);

  int n_failed = srunner_ntests_failed (runner);

  srunner_free (runner);
  return n_failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
