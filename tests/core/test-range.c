/* Checks of core/em-range.
 *
 * A price that grows with one dimension has that dimension's percentiles, which are known in closed form.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-range.h"
#include "em-test-book.h"
#include "em-test-main.h"

static EmRates rates;
static EmCatalogue catalogue;
static EmQuote quote;

static int
field_of (const char *id)
{
  return em_kind_field (quote.feature[0].kind, id);
}

/* One sidewall 40 × 4 × 0.5 mm. */
static void
setup (void)
{
  EmFeature feature;

  em_test_rates (&rates);
  em_test_catalogue (&catalogue);
  em_quote_init (&quote);
  em_quote_set_text (&quote, EM_QUOTE_BASE, "p20");
  em_quote_set_text (&quote, EM_QUOTE_FILLER, "h13");
  em_feature_init (&feature, em_kind_find ("sidewall"));
  feature.value[em_kind_field (feature.kind, "length")] = 40;
  feature.value[em_kind_field (feature.kind, "height")] = 4;
  feature.value[em_kind_field (feature.kind, "thickness")] = 0.5;
  ck_assert_int_eq (em_quote_insert_take (&quote, 0, &feature), EM_OK);
}

static void
teardown (void)
{
  em_quote_clear (&quote);
  em_catalogue_clear (&catalogue);
  em_rates_clear (&rates);
}

static EmRange
solve (int32_t n_samples, uint64_t seed)
{
  EmRange range;
  EmFault fault;

  ck_assert_msg (em_range_quote (&quote, &rates, &catalogue, n_samples, seed, &range, &fault) == EM_OK, "%s: %g, %g … %g", fault.field, fault.value,
                 fault.low, fault.high);
  return range;
}

static int64_t
price_at (const char *field, double value)
{
  double kept = quote.feature[0].value[field_of (field)];
  EmCost cost;
  EmFault fault;

  em_cost_init (&cost);
  quote.feature[0].value[field_of (field)] = value;
  ck_assert_int_eq (em_cost_quote (&cost, &quote, &rates, &catalogue, NULL, &fault), EM_OK);
  quote.feature[0].value[field_of (field)] = kept;
  int64_t net = cost.totals.net_minor;
  em_cost_clear (&cost);
  return net;
}

START_TEST (test_no_range_is_said)
{
  setup ();
  EmRange range = solve (1000, 1);
  ck_assert (!range.has_range);
  ck_assert_int_eq (range.price_minor, price_at ("length", 40));
  ck_assert_int_eq (range.p90_minor, 0);
  teardown ();
}
END_TEST

/* The price grows with the length, so its percentiles are the prices at the length's own. Triangular 30, 40, 60:
 * F⁻¹(0.9) = 60 − √(0.1·30·20) = 52.254; F⁻¹(0.5) = 60 − √(0.5·30·20) = 42.679; F⁻¹(0.1) = 30 + √(0.1·30·10) = 35.477
 * (textbook inverse of the triangular distribution). Length moves in no steps here; sampling and the table's strata
 * leave 1 % of the spread. */
START_TEST (test_percentiles_of_a_monotone_price)
{
  setup ();
  quote.feature[0].wire_mm = 0.508;
  quote.feature[0].low[field_of ("length")] = 30;
  quote.feature[0].high[field_of ("length")] = 60;
  EmRange range = solve (20000, 42);
  double slack = 0.01 * (double) (price_at ("length", 60) - price_at ("length", 30));

  ck_assert (range.has_range);
  ck_assert_double_eq_tol ((double) range.p10_minor, (double) price_at ("length", 35.477), slack);
  ck_assert_double_eq_tol ((double) range.p50_minor, (double) price_at ("length", 42.679), slack);
  ck_assert_double_eq_tol ((double) range.p90_minor, (double) price_at ("length", 52.254), slack);
  ck_assert (range.bin_low_minor >= price_at ("length", 30) && range.bin_high_minor <= price_at ("length", 60));
  ck_assert_int_eq (range.n_inputs, 1);
  ck_assert_double_eq_tol (range.input[0].share_ratio, 1.0, 1e-12);
  teardown ();
}
END_TEST

START_TEST (test_wide_from_a_hundredth_on)
{
  EmRange range = { .has_range = true, .p10_minor = 99500, .p50_minor = 100000, .p90_minor = 100499 };

  ck_assert (!em_range_is_wide (&range));
  range.p90_minor++;
  ck_assert (em_range_is_wide (&range));
  range.has_range = false;
  ck_assert (!em_range_is_wide (&range));
}
END_TEST

START_TEST (test_same_seed_same_figures)
{
  setup ();
  quote.feature[0].low[field_of ("length")] = 30;
  quote.feature[0].high[field_of ("height")] = 6;
  EmRange first = solve (5000, 7), second = solve (5000, 7), other = solve (5000, 8);
  int32_t in_bins = 0;

  ck_assert_int_eq (first.p90_minor, second.p90_minor);
  ck_assert_int_eq (memcmp (first.bin, second.bin, sizeof first.bin), 0);
  ck_assert (memcmp (first.bin, other.bin, sizeof first.bin) != 0);
  for (int i = 0; i < EM_RANGE_BIN; i++)
    in_bins += first.bin[i];
  ck_assert_int_eq (in_bins, 5000);
  teardown ();
}
END_TEST

/* A length vague by half moves the price more than a height vague by a fiftieth. */
START_TEST (test_largest_input_first)
{
  setup ();
  quote.feature[0].low[field_of ("length")] = 20;
  quote.feature[0].high[field_of ("length")] = 60;
  quote.feature[0].low[field_of ("height")] = 3.96;
  quote.feature[0].high[field_of ("height")] = 4.04;
  EmRange range = solve (1000, 3);

  ck_assert_int_eq (range.n_inputs, 2);
  ck_assert_int_eq (range.input[0].field, field_of ("length"));
  ck_assert (range.input[0].share_ratio > 0.9);
  ck_assert_double_eq_tol (range.input[0].share_ratio + range.input[1].share_ratio, 1.0, 1e-12);
  teardown ();
}
END_TEST

/* Under a minimum charge that nothing reaches, vagueness costs nothing. */
START_TEST (test_minimum_charge_holds_the_price)
{
  setup ();
  rates.minimum_minor = 100000000;
  quote.feature[0].high[field_of ("length")] = 60;
  EmRange range = solve (1000, 3);

  ck_assert_int_eq (range.p10_minor, 100000000);
  ck_assert_int_eq (range.p90_minor, 100000000);
  teardown ();
}
END_TEST

START_TEST (test_stated_price_does_not_move)
{
  setup ();
  quote.feature[0].high[field_of ("length")] = 60;
  quote.feature[0].has_override = true;
  quote.feature[0].override_minor = 12300;
  ck_assert (!solve (1000, 3).has_range);
  teardown ();
}
END_TEST

START_TEST (test_faults_leave_the_result)
{
  EmRange range = { .n_samples = 77 };
  EmFault fault;

  setup ();
  ck_assert_int_eq (em_range_quote (&quote, &rates, &catalogue, 0, 1, &range, &fault), EM_FAULT_RANGE);
  ck_assert_str_eq (fault.field, "samples");
  quote.feature[0].low[field_of ("length")] = 41;
  ck_assert_int_eq (em_range_quote (&quote, &rates, &catalogue, 100, 1, &range, &fault), EM_FAULT_RANGE);
  ck_assert_str_eq (fault.field, "length");
  ck_assert_int_eq (fault.row, 0);
  ck_assert_int_eq (range.n_samples, 77);
  teardown ();
}
END_TEST

/* A cap may be as deep as its mouth's radius and no deeper. Likely 2 mm of a mouth of 4, at the least that and up to 3: not one draw can be welded,
 * which is told; the price stays. From 1 to 3, likely 2, half of them: draws below 2 are half of the triangle. */
START_TEST (test_draws_refused)
{
  EmFeature feature;
  EmRange range;
  int depth;

  setup ();
  em_feature_init (&feature, em_kind_find ("recess"));
  depth = em_kind_field (feature.kind, "depth");
  feature.value[em_kind_field (feature.kind, "form")] = 4;
  feature.value[em_kind_field (feature.kind, "diameter")] = 4;
  feature.value[depth] = feature.low[depth] = 2;
  feature.high[depth] = 3;
  em_quote_remove (&quote, 0, NULL);
  ck_assert_int_eq (em_quote_insert_take (&quote, 0, &feature), EM_OK);
  range = solve (1000, 1);
  ck_assert (range.has_range);
  ck_assert_int_gt (range.n_refused, 900);
  ck_assert_int_eq (range.p10_minor, range.price_minor);
  ck_assert_int_eq (range.p90_minor, range.price_minor);
  ck_assert_double_eq (range.input[0].share_ratio, 0);

  int32_t all = range.n_refused;

  quote.feature[0].low[depth] = 1;
  range = solve (1000, 1);
  ck_assert_double_eq_tol ((double) range.n_refused / all, 0.5, 0.01);
  ck_assert_int_lt (range.p10_minor, range.p90_minor);
  teardown ();
}
END_TEST

EM_TEST_MAIN ("core: range",
              test_no_range_is_said, test_percentiles_of_a_monotone_price, test_wide_from_a_hundredth_on, test_same_seed_same_figures, test_largest_input_first,
              test_minimum_charge_holds_the_price, test_stated_price_does_not_move, test_draws_refused,
              test_faults_leave_the_result)
