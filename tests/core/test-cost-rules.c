/* Checks of core/em-cost on the rules of the whole quote: shared work, lines below the subtotal, repeat tools, the order
 * of work, the working, and what must hold for any quote.
 *
 * The job is two faces of 10 × 2 mm to build 0.381 mm (0.015 in) with 0.508 mm (0.020 in) wire on the laser, worked by hand:
 *   A = π·0.508²/4 = 0.2026830 mm², tL = 0.254, p = 0.95·A/tL = 0.758066; N = ⌈1.5⌉ + 1 = 3 (two passes and one for safety:
 *   common practice, no source); ⌈2/0.758⌉ = 3 tracks a layer, 9 of 10 mm. Both: welded 180 mm, wire 180/0.9 = 200 mm.
 *   v1 = 10·1.2·0.508·0.5 = 3.048 mm/s holds; arc on 180/3.048 = 59.05512 s, handling ·(1/0.4 − 1) = 88.58268 s,
 *   mask 2·(5 + 0.5·0.2) min = 612 s, inspect 2·(4 + 0.2·1) min = 504 s: 1263.6378 s.
 *   Bench 1263.638/0.6 = 2106.0633; machine 59.055·30/36 = 49.2125; consumables 9.8425; gas 10/60·(59.05512 + 2·3·1) =
 *   10.84252 l = 10.8425; filler 0.2·333/308 m at 400 = 86.4935. Overhead 20 % of 2106.0633 = 421.2127.
 *   (2262.4544 + 421.2127)·1.05/0.75 = 3757.134 → 3757.
 * Set-up: receive 20, setting 12, pack 8 minutes = 4000, ·1.2·1.05/0.75 = 6720. Order: 15 office minutes = 900 and 10 of
 *   bench = 1000, ·1.68 = 3192. Subtotal 13669.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-cost.h"
#include "em-order.h"
#include "em-price.h"
#include "em-test-book.h"
#include "em-test-main.h"

#include <math.h>

static EmRates rates;
static EmCatalogue catalogue;
static EmQuote quote;
static EmCost cost;

static void
setup (void)
{
  em_test_rates (&rates);
  em_test_catalogue (&catalogue);
  em_quote_init (&quote);
  em_cost_init (&cost);
  em_quote_set_text (&quote, EM_QUOTE_BASE, "p20");
  em_quote_set_text (&quote, EM_QUOTE_FILLER, "h13");
  em_quote_set_text (&quote, EM_QUOTE_MACHINE, "laser");
}

static void
teardown (void)
{
  em_cost_clear (&cost);
  em_quote_clear (&quote);
  em_catalogue_clear (&catalogue);
  em_rates_clear (&rates);
}

/* A feature of kind with the named dimensions, NULL at the end of the names. */
static EmFeature *
add (const char *kind, const char *const *names, const double *values)
{
  EmFeature feature;

  em_feature_init (&feature, em_kind_find (kind));
  for (int i = 0; names[i] != NULL; i++)
    {
      int field = em_kind_field (feature.kind, names[i]);

      ck_assert_msg (field >= 0, "%s has no %s", kind, names[i]);
      feature.value[field] = values[i];
    }
  ck_assert_int_eq (em_quote_insert_take (&quote, quote.n_features, &feature), EM_OK);
  return &quote.feature[quote.n_features - 1];
}

static EmFeature *
add_face (int32_t count)
{
  EmFeature *feature = add ("face", (const char *[]) { "length", "width", "thickness", NULL }, (double[]) { 10, 2, 0.381 });

  feature->count = count;
  feature->cap = feature->melt_out = EM_NO;
  feature->wire_mm = 0.508;
  return feature;
}

static void
solve (void)
{
  EmFault fault = { .field = "none" };

  ck_assert_msg (em_cost_quote (&cost, &quote, &rates, &catalogue, NULL, &fault) == EM_OK, "fault %d on %s", fault.code, fault.field);
}

static int64_t
line_of (EmLineType type, int32_t row)
{
  for (int32_t i = 0; i < cost.n_lines; i++)
    if (cost.line[i].type == type && cost.line[i].row == row)
      return cost.line[i].amount_minor;
  return INT64_MIN;
}

START_TEST (test_the_job)
{
  add_face (2);
  solve ();

  const EmFeatureCost *one = &cost.feature[0];

  ck_assert_int_eq (one->plan.layers, 3);
  ck_assert_double_eq_tol (one->deposited_volume_mm3, 34.65879, 1e-4);   /* 0.95·A·180 */
  ck_assert_double_eq_tol (one->wire_length_mm, 200, 1e-9);
  ck_assert_int_eq (one->sticks, 1);                                     /* ⌈200/308⌉ */
  ck_assert_double_eq_tol (one->filler_mass_g, 0.316185, 1e-5);          /* A·0.0078·200 */
  ck_assert_int_eq (one->pulses, 591);                                   /* ⌈59.05512·10⌉ */
  ck_assert_double_eq_tol (one->labour_s, 1263.6378, 1e-3);
  ck_assert_double_eq_tol (one->gas_l, 10.84252, 1e-4);
  ck_assert_int_eq (one->money_minor[EM_MONEY_BENCH], 2106);
  ck_assert_int_eq (one->money_minor[EM_MONEY_FILLER], 86);
  ck_assert_int_eq (one->money_minor[EM_MONEY_OVERHEAD], 421);
  ck_assert_int_eq (one->price_minor, 3757);
  ck_assert_int_eq (line_of (EM_LINE_FEATURE, 0), 3757);
  ck_assert_int_eq (line_of (EM_LINE_SET_UP, 0), 6720);
  ck_assert_int_eq (line_of (EM_LINE_ORDER, 0), 3192);
  ck_assert_int_eq (cost.totals.total_minor, 13669);
  ck_assert_int_eq (cost.markup_ppm, 333333);                            /* 25 % of the price is 1/3 on cost */
}
END_TEST

/* Raised to 200.00 by 63.31; rush 25 % of that 50.00; discount 10 % of 250.00 −25.00; 22500 to steps of 700 is 32·700 =
 * 22400, −1.00. Tax 8.25 % of 22400 = 1848; 5 % on net and tax, 24248 · 0.05 = 1212.4 → 1212. */
START_TEST (test_lines_below_the_subtotal)
{
  EmTax taxes[] = { { em_text_dup ("State"), 82500, false }, { em_text_dup ("Surtax"), 50000, true } };

  add_face (2);
  rates.minimum_minor = 20000;
  rates.rounding_minor = 700;
  quote.rush_ppm = 250000;
  quote.discount_ppm = 100000;
  for (int i = 0; i < 2; i++)
    ck_assert_int_eq (em_rates_add_tax_take (&rates, &taxes[i]), EM_OK);
  solve ();
  ck_assert_int_eq (line_of (EM_LINE_MINIMUM, 0), 6331);
  ck_assert_int_eq (line_of (EM_LINE_RUSH, 0), 5000);
  ck_assert_int_eq (line_of (EM_LINE_DISCOUNT, 0), -2500);
  ck_assert_int_eq (line_of (EM_LINE_ROUNDING, 0), -100);
  ck_assert_int_eq (line_of (EM_LINE_TAX, 0), 1848);
  ck_assert_int_eq (line_of (EM_LINE_TAX, 1), 1212);
  ck_assert_int_eq (cost.totals.subtotal_minor, 13669);
  ck_assert_int_eq (cost.totals.net_minor, 22400);
  ck_assert_int_eq (cost.totals.tax_minor, 3060);
  ck_assert_int_eq (cost.totals.total_minor, 25460);
}
END_TEST

/* T. P. Wright, 1936: the average of n tools is n^log2(rate) of the first. */
START_TEST (test_learning_is_the_cumulative_average)
{
  static const struct { int64_t ppm; int32_t n; double factor; } rows[] =
  {
    { 1000000, 50, 1 }, { 800000, 1, 1 }, { 800000, 2, 0.8 }, { 800000, 4, 0.64 }, { 800000, 8, 0.512 }, { 900000, 4, 0.81 },
  };

  for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++)
    ck_assert_double_eq_tol (em_price_learning (rows[i].ppm, rows[i].n), rows[i].factor, 1e-12);
}
END_TEST

/* Four tools at 90 %: factor 0.81. Feature: bench 1263.63780·4·0.81 = 4094.186 s = 6823.6433; machine, consumables, gas and
 * filler 4 times: 196.8504 + 39.3701 + 43.3701 + 345.9740 = 625.5646. (7449.2079 + 1364.7287)·1.4 = 12339.51 → 12340.
 * Set-up 40·4·0.81 = 129.6 min = 12960·1.68 = 21772.8 → 21773. Order 3192, once. 37305, each 9326.25 → 9326. */
START_TEST (test_breaks_and_learning)
{
  add_face (2);
  quote.learning_ppm = 900000;
  quote.n_breaks = 2;
  quote.break_tools[0] = 1;
  quote.break_tools[1] = 4;
  solve ();
  ck_assert_int_eq (cost.totals.net_minor, 13669);
  ck_assert_int_eq (cost.n_breaks, 2);
  ck_assert_int_eq (cost.breaks[0].net_minor, 13669);
  ck_assert_int_eq (cost.breaks[1].n_tools, 4);
  ck_assert_int_eq (cost.breaks[1].net_minor, 37305);
  ck_assert_int_eq (cost.breaks[1].each_minor, 9326);
  quote.n_tools = 4;
  solve ();
  ck_assert_int_eq (line_of (EM_LINE_FEATURE, 0), 12340);
  ck_assert_int_eq (line_of (EM_LINE_SET_UP, 0), 21773);
  ck_assert_int_eq (line_of (EM_LINE_ORDER, 0), 3192);
  ck_assert_double_eq_tol (cost.learning_factor, 0.81, 1e-12);
  ck_assert_double_eq_tol (cost.arc_on_s, 4 * 59.05512, 1e-3);
  ck_assert_double_eq_tol (cost.wire_length_mm, 800, 1e-9);
  ck_assert_int_eq (cost.sticks, 3);   /* ⌈800/308⌉ */
}
END_TEST

/* A stated 25.00 a tool: 75.00 for three, shown as stated; what it would be stays beside it. */
START_TEST (test_stated_price)
{
  EmFeature *feature = add_face (2);
  int64_t calculated;

  quote.n_tools = 3;
  solve ();
  calculated = cost.line[0].amount_minor;
  feature->has_override = true;
  feature->override_minor = 2500;
  solve ();
  ck_assert_int_eq (cost.line[0].amount_minor, 7500);
  ck_assert_int_eq (cost.line[0].calculated_minor, calculated);
  ck_assert (cost.line[0].is_override);
  ck_assert_int_eq (cost.feature[0].price_minor, 2500);
  ck_assert_int_eq (cost.feature[0].calculated_minor, 3757);
  feature->override_minor = -1;
  solve ();
  ck_assert_int_eq (cost.n_faults, 1);
  ck_assert_str_eq (cost.first_fault.field, "override");
  ck_assert_int_eq (cost.first_fault.code, EM_FAULT_RANGE);
}
END_TEST

/* Finishing: 10 min/cm²·0.4 cm² = 240 s and 30 min/cm³ of 34.65879 − 15.24 mm³ = 34.954 s: 274.954 s at 48.00/h = 366.6.
 * Stripping 6 min/cm²·0.4 = 144 s. Preheating attended 25 min: set-up 65 min = 6500·1.68 = 10920. */
START_TEST (test_work_asked_for)
{
  EmFeature *feature = add_face (2);

  feature->finish = EM_FINISH_SHOP;
  em_quote_set_text (&quote, EM_QUOTE_COATING, "chrome");
  catalogue.base[em_catalogue_find_base (&catalogue, "p20")].laser_preheat_degc = 200;
  solve ();
  ck_assert_double_eq_tol (cost.feature[0].task_s[EM_TASK_FINISH], 274.9538, 1e-3);
  ck_assert_int_eq (cost.feature[0].money_minor[EM_MONEY_FINISH], 367);
  ck_assert_double_eq_tol (cost.feature[0].task_s[EM_TASK_STRIP], 144, 1e-9);
  ck_assert (cost.is_preheated);
  ck_assert_double_eq_tol (cost.preheat_degc, 200, 1e-12);
  ck_assert_int_eq (line_of (EM_LINE_SET_UP, 0), 10920);
  quote.has_preheat = true;
  quote.preheat = EM_NO;
  solve ();
  ck_assert (!cost.is_preheated && isnan (cost.preheat_degc));
  ck_assert_int_eq (line_of (EM_LINE_SET_UP, 0), 6720);
}
END_TEST

/* 200 mm of a 308 mm stick used; the whole stick is bought: 0.333 m at 4.00 = 133.2 in all. */
START_TEST (test_whole_sticks)
{
  add_face (2);
  rates.buys_whole_sticks = true;
  solve ();
  ck_assert_int_eq (cost.money_minor[EM_MONEY_FILLER], 133);
  rates.buys_whole_sticks = false;
  solve ();
  ck_assert_int_eq (cost.money_minor[EM_MONEY_FILLER], 86);
}
END_TEST

/* Each feature its own setting, or one shared; a cap takes the tool turned once more (common practice, no source). */
START_TEST (test_settings)
{
  add_face (1);
  add_face (1);
  solve ();
  ck_assert_int_eq (cost.settings, 2);
  quote.feature[0].setting = quote.feature[1].setting = 7;
  solve ();
  ck_assert_int_eq (cost.settings, 1);
  quote.feature[1].cap = EM_YES;
  solve ();
  ck_assert_int_eq (cost.settings, 2);
  quote.feature[0].cap = EM_YES;
  solve ();
  ck_assert_int_eq (cost.settings, 2);
  em_feature_set_text (&quote.feature[1], EM_FEATURE_MACHINE, "tig");
  solve ();
  ck_assert_int_eq (cost.settings, 4);
}
END_TEST

/* Wires a, b, a, b in settings of their own: done by wire, one change. */
START_TEST (test_wire_changes)
{
  for (int i = 0; i < 4; i++)
    em_feature_set_text (add_face (1), EM_FEATURE_FILLER, i % 2 == 0 ? "h13" : "er420");
  solve ();
  ck_assert_int_eq (cost.wire_changes, 1);
  ck_assert_double_eq_tol (cost.task_s[EM_TASK_WIRE_CHANGE], 180, 1e-9);
  ck_assert_int_eq (cost.n_visits, 4);
}
END_TEST

/* Any order: every item once, settings together, as many changes as the visits show, never fewer than wires less one. */
START_TEST (test_order_holds_together)
{
  uint32_t seed = 1;
  EmOrderRoom room;

  em_order_room_init (&room);
  for (int round = 0; round < 500; round++)
    {
      EmOrderItem item[12];
      EmVisit visit[12];
      int32_t settings, changes, seen_changes = 0, n_wires = 0, n = 1 + round % 12;
      bool is_seen[12] = { false }, has_wire[4] = { false };

      for (int32_t i = 0; i < n; i++)
        {
          seed = seed * 1664525u + 1013904223u;
          item[i] = (EmOrderItem) { .feature = i, .setting = (int32_t) (seed >> 8 & 3u), .machine = (int32_t) (seed >> 12 & 1u),
                                    .wire = (int32_t) (seed >> 16 & 3u), .is_capped = (seed >> 20 & 7u) == 0 };
          n_wires += !has_wire[item[i].wire];
          has_wire[item[i].wire] = true;
        }
      ck_assert_int_eq (em_order_solve (&room, item, n, visit, &settings, &changes), EM_OK);
      for (int32_t i = 0; i < n; i++)
        {
          ck_assert (!is_seen[visit[i].feature]);
          is_seen[visit[i].feature] = true;
          seen_changes += i > 0 && item[visit[i].feature].wire != item[visit[i - 1].feature].wire;
          if (i > 0)
            ck_assert_int_eq (visit[i].is_new_wire, item[visit[i].feature].wire != item[visit[i - 1].feature].wire);
          for (int32_t j = 0; j < i; j++)
            if (visit[j].setting == visit[i].setting)
              ck_assert_int_eq (visit[i - 1].setting, visit[i].setting);
        }
      ck_assert_int_eq (changes, seen_changes);
      ck_assert_int_ge (changes, n_wires - 1);
    }
  em_order_room_clear (&room);
}
END_TEST

static void
expect_same (const EmCost *a, const EmCost *b)
{
  ck_assert_mem_eq (&a->totals, &b->totals, sizeof a->totals);
  ck_assert_mem_eq (a->money_minor, b->money_minor, sizeof a->money_minor);
  ck_assert_mem_eq (a->task_s, b->task_s, sizeof a->task_s);
  ck_assert_int_eq (a->n_lines, b->n_lines);
  for (int32_t i = 0; i < a->n_lines; i++)
    ck_assert_int_eq (a->line[i].amount_minor, b->line[i].amount_minor);
  ck_assert_int_eq (a->settings, b->settings);
  ck_assert_int_eq (a->wire_changes, b->wire_changes);
  ck_assert_int_eq (a->n_faults, b->n_faults);
  ck_assert_int_eq (a->sticks, b->sticks);
  ck_assert_double_eq (a->wire_length_mm, b->wire_length_mm);
}

/* One feature changed at a time, to good and bad, gives what everything costed afresh gives. */
START_TEST (test_update_is_the_same)
{
  uint32_t seed = 7;
  EmCost fresh;
  EmFault fault;

  for (int i = 0; i < 70; i++)
    add_face (1 + i % 5);
  em_cost_init (&fresh);
  solve ();
  for (int round = 0; round < 200; round++)
    {
      EmFeature *feature;
      int32_t index;

      seed = seed * 1664525u + 1013904223u;
      index = (int32_t) (seed >> 8) % quote.n_features;
      index = index < 0 ? -index : index;
      feature = &quote.feature[index];
      feature->count = (int32_t) (seed >> 16 & 7u);                /* 0 is a fault */
      feature->setting = (int32_t) (seed >> 20 & 3u);
      feature->wire_mm = (seed >> 24 & 1u) != 0 ? 0.508 : EM_ABSENT;
      feature->has_override = (seed >> 25 & 7u) == 0;
      ck_assert_int_eq (em_cost_update (&cost, index, &quote, &rates, &catalogue, &fault), EM_OK);
      ck_assert_int_eq (em_cost_quote (&fresh, &quote, &rates, &catalogue, NULL, &fault), EM_OK);
      expect_same (&cost, &fresh);
    }
  em_cost_clear (&fresh);
}
END_TEST

/* The wire fixed, no larger dimension and no larger number makes anything cheaper. */
START_TEST (test_more_never_costs_less)
{
  static const struct { const char *kind, *names[5]; double values[4]; } rows[] =
  {
    { "face", { "length", "width", "thickness", NULL }, { 9, 2, 0.4 } },
    { "sidewall", { "length", "height", "thickness", NULL }, { 9, 2, 0.4 } },
    { "edge-nick", { "length", "leg_a", "leg_b", NULL }, { 6, 1, 0.8 } },
    { "groove", { "length", "depth", "gap", NULL }, { 12, 1.1, 0.4 } },
    { "dam", { "length", "width", "height", NULL }, { 12, 3, 0.9 } },
    { "rib", { "length", "thickness", "coat", NULL }, { 12, 2, 0.5 } },
  };

  for (size_t r = 0; r < sizeof rows / sizeof rows[0]; r++)
    for (int d = 0; rows[r].names[d] != NULL; d++)
      {
        EmFeature *feature = add (rows[r].kind, rows[r].names, rows[r].values);
        int field = em_kind_field (feature->kind, rows[r].names[d]);
        int64_t before = 0;

        feature->wire_mm = 0.381;
        for (int step = 0; step < 120; step++)
          {
            EmFeatureCost one;
            double value = rows[r].values[d] * (1 + 0.013 * step);

            feature->value[field] = value;
            ck_assert_msg (em_cost_feature (&quote, 0, &rates, &catalogue, &one, NULL) == EM_OK, "%s %s %g: %s", rows[r].kind,
                           rows[r].names[d], value, one.fault.field);
            ck_assert_msg (one.price_minor >= before, "%s: %s %g costs %lld after %lld", rows[r].kind, rows[r].names[d], value,
                           (long long) one.price_minor, (long long) before);
            before = one.price_minor;
          }
        em_quote_remove (&quote, 0, NULL);
      }
  for (int64_t count = 1, before = 0; count <= 40; count++)
    {
      EmFeatureCost one;

      add_face ((int32_t) count);
      ck_assert_int_eq (em_cost_feature (&quote, 0, &rates, &catalogue, &one, NULL), EM_OK);
      ck_assert_int_gt (one.price_minor, before);
      before = one.price_minor;
      em_quote_remove (&quote, 0, NULL);
    }
}
END_TEST

/* Six places in one line or as two and four in one setting: the same metal, wire and time. */
START_TEST (test_splitting_a_count)
{
  EmCost split;
  EmFault fault;

  add_face (6)->setting = 1;
  solve ();
  em_quote_remove (&quote, 0, NULL);
  add_face (2)->setting = 1;
  add_face (4)->setting = 1;
  em_cost_init (&split);
  ck_assert_int_eq (em_cost_quote (&split, &quote, &rates, &catalogue, NULL, &fault), EM_OK);
  ck_assert_double_eq_tol (split.net_volume_mm3, cost.net_volume_mm3, 1e-9);
  ck_assert_double_eq_tol (split.deposited_volume_mm3, cost.deposited_volume_mm3, 1e-9);
  ck_assert_double_eq_tol (split.wire_length_mm, cost.wire_length_mm, 1e-9);
  ck_assert_double_eq_tol (split.labour_s, cost.labour_s, 1e-6);
  ck_assert_double_eq_tol (split.arc_on_s, cost.arc_on_s, 1e-9);
  ck_assert_int_eq (split.layers, cost.layers);
  ck_assert_int_eq (split.tracks, cost.tracks);
  ck_assert_int_le (llabs (split.totals.subtotal_minor - cost.totals.subtotal_minor), 2);   /* one more line, rounded once */
  em_cost_clear (&split);
}
END_TEST

/* The last step of a figure's working ends on that figure. */
START_TEST (test_every_figure_shows_its_working)
{
  EmFeature *feature = add ("edge-nick", (const char *[]) { "length", "leg_a", "leg_b", NULL }, (double[]) { 6, 1, 0.8 });
  EmTrace trace;
  EmFeatureCost one;

  feature->count = 3;
  em_trace_init (&trace);
  ck_assert_int_eq (em_cost_feature (&quote, 0, &rates, &catalogue, &one, &trace), EM_OK);

  const struct { const char *quantity; double value; } rows[] =
  {
    { "net_volume", one.net_volume_mm3 }, { "required_volume", one.required_volume_mm3 }, { "deposited_volume", one.deposited_volume_mm3 },
    { "layers", one.plan.layers }, { "tracks", (double) one.plan.tracks }, { "welded_length", one.welded_length_mm },
    { "wire_length", one.wire_length_mm }, { "sticks", (double) one.sticks }, { "filler_mass", one.filler_mass_g },
    { "arc_on", one.arc_on_s }, { "labour", one.labour_s }, { "filler_cost", (double) one.money_minor[EM_MONEY_FILLER] },
    { "price", (double) one.price_minor },
  };

  for (size_t r = 0; r < sizeof rows / sizeof rows[0]; r++)
    {
      const EmTraceStep *last = NULL;

      for (int i = 0; i < trace.n_steps; i++)
        if (strcmp (trace.step[i].quantity, rows[r].quantity) == 0)
          last = &trace.step[i];
      ck_assert_msg (last != NULL, "%s has no working", rows[r].quantity);
      ck_assert_msg (fabs (last->result.value - rows[r].value) <= 1e-9 * fabs (rows[r].value), "%s: %g, working ends on %g",
                     rows[r].quantity, rows[r].value, last->result.value);
      ck_assert_int_eq (last->row, 0);
      ck_assert_msg (last->formula != NULL && last->source != NULL && last->n_inputs > 0, "%s", rows[r].quantity);
    }
  em_trace_clear (&trace);
}
END_TEST

int
main (void)
{
  const TTest *const tests[] = { test_the_job, test_lines_below_the_subtotal, test_learning_is_the_cumulative_average, test_breaks_and_learning,
                                 test_stated_price, test_work_asked_for, test_whole_sticks, test_settings, test_wire_changes,
                                 test_order_holds_together, test_update_is_the_same, test_more_never_costs_less, test_splitting_a_count,
                                 test_every_figure_shows_its_working };

  return em_test_main_with ("core: cost rules", setup, teardown, tests, (int) (sizeof tests / sizeof tests[0]));
}
