/* Checks of core/em-price: published cost identities, margin, and the lines below the subtotal.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-price.h"
#include "em-test-job.h"

static EmTestJob job;

static void
setup (void)
{
  em_test_job_init (&job);
}

static void
teardown (void)
{
  em_test_job_clear (&job);
}

/* Published worksheet of weld cost per pound (worked example for a wire process): 45.00 an hour, 10.2 lb/h, operating factor 0.45,
 * wire 1.78 a pound at 0.87 efficiency: labour and overhead 45/(10.2·0.45) = 9.80; filler 1.78/0.87 = 2.05. The stick
 * electrode beside it: 45/(5.4·0.30) = 27.78 and 0.85/0.64 = 1.33; together 29.11. Here one pound is the priced unit of filler. */
START_TEST (test_published_cost_per_pound)
{
  static const struct { double lb_per_h, factor, efficiency; int64_t wire, labour, filler; } rows[] =
  {
    { 10.2, 0.45, 0.87, 178, 980, 205 },
    { 5.4, 0.30, 0.64, 85, 2778, 133 },
  };
  EmPriceRule rule = { .role_minor_per_h = { 0, 4500, 0 } };

  for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++)
    {
      EmWork work = { .role_s[EM_ROLE_BENCH] = 3600.0 / rows[i].lb_per_h / rows[i].factor,
                      .filler_units = 1.0 / rows[i].efficiency, .filler_minor = rows[i].wire };
      EmExact direct[EM_N_DIRECT];
      int64_t money[EM_N_MONEY], cost, amount;

      ck_assert_int_eq (em_price_direct (&rule, &work, 1, 1.0, direct), EM_OK);
      ck_assert_int_eq (em_price_amount (&rule, direct, &amount), EM_OK);
      ck_assert_int_eq (em_price_split (&rule, direct, amount, money, &cost), EM_OK);
      ck_assert_int_eq (money[EM_MONEY_BENCH], rows[i].labour);
      ck_assert_int_eq (money[EM_MONEY_FILLER], rows[i].filler);
    }
}
END_TEST

/* Argon, 10 l/min for 22 min at 14.00/m³: 0.22 m³, 3.08. */
START_TEST (test_gas)
{
  EmPriceRule rule = { .gas_minor_per_m3 = 1400 };
  EmWork work = { .gas_l = 10 * 22 };
  EmExact direct[EM_N_DIRECT];
  int64_t amount;

  ck_assert_int_eq (em_price_direct (&rule, &work, 1, 1.0, direct), EM_OK);
  ck_assert_int_eq (em_price_amount (&rule, direct, &amount), EM_OK);
  ck_assert_int_eq (amount, 308);
}
END_TEST

/* One hour of bench at 100.00, wire for 40.00: overhead 20 % of labour 20.00, contingency 5 % of 160.00 = 8.00, cost 168.00,
 * margin 25 %: 168/0.75 = 224.00, margin 56.00. */
START_TEST (test_from_cost_to_price)
{
  EmPriceRule rule = { .role_minor_per_h = { 0, 10000, 0 }, .overhead_ppm = 200000, .contingency_ppm = 50000, .margin_ppm = 250000 };
  EmWork work = { .role_s[EM_ROLE_BENCH] = 3600, .filler_units = 1, .filler_minor = 4000 };
  EmExact direct[EM_N_DIRECT];
  int64_t money[EM_N_MONEY], cost, amount;

  ck_assert_int_eq (em_price_direct (&rule, &work, 1, 1.0, direct), EM_OK);
  ck_assert_int_eq (em_price_amount (&rule, direct, &amount), EM_OK);
  ck_assert_int_eq (amount, 22400);
  ck_assert_int_eq (em_price_split (&rule, direct, amount, money, &cost), EM_OK);
  ck_assert_int_eq (money[EM_MONEY_OVERHEAD], 2000);
  ck_assert_int_eq (money[EM_MONEY_CONTINGENCY], 800);
  ck_assert_int_eq (money[EM_MONEY_MARGIN], 5600);
  ck_assert_int_eq (cost, 16800);
}
END_TEST

/* Rounded once: three parts of 0.4 minor units (1.44 s at 1000/h) are 1.2, printed 1; rounded each they would be 0. */
START_TEST (test_rounded_once)
{
  EmPriceRule rule = { .role_minor_per_h = { 1000, 1000, 1000 } };
  EmWork work = { .role_s = { 1.44, 1.44, 1.44 } };
  EmExact direct[EM_N_DIRECT];
  int64_t money[EM_N_MONEY], cost, amount, sum = 0;

  ck_assert_int_eq (em_price_direct (&rule, &work, 1, 1.0, direct), EM_OK);
  ck_assert_int_eq (em_price_amount (&rule, direct, &amount), EM_OK);
  ck_assert_int_eq (amount, 1);
  ck_assert_int_eq (em_price_split (&rule, direct, amount, money, &cost), EM_OK);
  for (int i = 0; i < EM_N_MONEY; i++)
    sum += money[i];
  ck_assert_int_eq (sum, 1);
}
END_TEST

/* Subtotal 812.34; minimum 900.00 adds 87.66; rush 25 % of 900.00 = 225.00; discount 10 % of 1125.00 = −112.50 → 1012.50; to 5.00:
 * 1012.50/5 = 202.5, half away from zero 203 → 1015.00, + 2.50. Taxes: 19 % of 1015.00 = 192.85; 2 % on the net = 20.30;
 * 1 % on net and taxes (1228.15) = 12.2815 → 12.28. Total 1240.43. */
START_TEST (test_lines_below_the_subtotal)
{
  static const struct { EmLineType type; int64_t amount; } expected[] =
  {
    { EM_LINE_MINIMUM, 8766 }, { EM_LINE_RUSH, 22500 }, { EM_LINE_DISCOUNT, -11250 }, { EM_LINE_ROUNDING, 250 },
    { EM_LINE_TAX, 19285 }, { EM_LINE_TAX, 2030 }, { EM_LINE_TAX, 1228 },
  };
  EmLine lines[EM_N_LINE + EM_TAX_MAX];
  EmTotals totals;
  int32_t n;

  job.rates.minimum_minor = 90000;
  job.rates.rounding_minor = 500;
  job.quote.rush_ppm = 250000;
  job.quote.discount_ppm = 100000;
  job.rates.n_taxes = 3;
  job.rates.tax[0] = (EmTax) { NULL, 190000, false };
  job.rates.tax[1] = (EmTax) { NULL, 20000, false };
  job.rates.tax[2] = (EmTax) { NULL, 10000, true };
  ck_assert_int_eq (em_price_totals (&job.quote, &job.rates, 81234, 3, &totals, lines, &n, NULL), EM_OK);
  ck_assert_int_eq (n, 7);
  for (int i = 0; i < 7; i++)
    {
      ck_assert_int_eq (lines[i].type, expected[i].type);
      ck_assert_int_eq (lines[i].amount_minor, expected[i].amount);
    }
  ck_assert_int_eq (totals.subtotal_minor, 81234);
  ck_assert_int_eq (totals.net_minor, 101500);
  ck_assert_int_eq (totals.tax_minor, 22543);
  ck_assert_int_eq (totals.total_minor, 124043);
  ck_assert_int_eq (totals.each_minor, 33833);       /* 1015.00/3 = 338.333… */
}
END_TEST

/* Margin told as markup: 25 % of price is 33.333 % of cost, 40 % is 66.667 %. */
START_TEST (test_margin_told_as_markup)
{
  EmCost cost;

  em_test_job_sidewall (&job, 20, 4, 0.5);
  em_test_job_solve (&job, &cost);
  ck_assert_int_eq (cost.markup_ppm, 333333);
  em_cost_clear (&cost);
  job.quote.margin_ppm = 400000;
  em_test_job_solve (&job, &cost);
  ck_assert_int_eq (cost.markup_ppm, 666667);
  em_cost_clear (&cost);
}
END_TEST

/* A stated price is for one tool; it stands, and what was calculated stands beside it. */
START_TEST (test_override)
{
  EmFeature *f = em_test_job_sidewall (&job, 20, 4, 0.5);
  EmCost plain, stated;

  job.quote.n_tools = 3;
  em_test_job_solve (&job, &plain);
  f->has_override = true;
  f->override_minor = 12345;
  em_test_job_solve (&job, &stated);
  ck_assert (stated.line[0].is_override);
  ck_assert_int_eq (stated.line[0].amount_minor, 3 * 12345);
  ck_assert_int_eq (stated.line[0].calculated_minor, plain.line[0].amount_minor);
  ck_assert_int_eq (stated.totals.net_minor - plain.totals.net_minor, 3 * 12345 - plain.line[0].amount_minor);
  ck_assert_int_eq (stated.feature[0].price_minor, 12345);
  em_cost_clear (&plain);
  em_cost_clear (&stated);
}
END_TEST

/* Bought-out work of 100.00 for each of 2 tools, contingency 5 %, margin 25 %: 200·1.05/0.75 = 280.00; once for the order 140.00. */
START_TEST (test_extras)
{
  EmExtra each = { em_text_dup ("Ream the ejector bores"), 10000, true }, once = { em_text_dup ("Freight"), 10000, false };
  EmCost cost;
  EmFault fault;

  ck_assert_int_eq (em_quote_add_extra_take (&job.quote, &each), EM_OK);
  ck_assert_int_eq (em_quote_add_extra_take (&job.quote, &once), EM_OK);
  job.quote.n_tools = 2;
  em_test_job_solve (&job, &cost);
  ck_assert_int_eq (cost.n_lines, 2);
  ck_assert_int_eq (cost.line[0].amount_minor, 28000);
  ck_assert_int_eq (cost.line[0].quantity, 2);
  ck_assert_int_eq (cost.line[1].amount_minor, 14000);
  job.quote.extra[0].cost_minor = -1;
  ck_assert_int_eq (em_cost_quote (&cost, &job.quote, &job.rates, &job.catalogue, NULL, &fault), EM_FAULT_RANGE);
  ck_assert_str_eq (fault.field, "extra");
  ck_assert_int_eq (cost.totals.net_minor, 42000);
  em_cost_clear (&cost);
}
END_TEST

/* Whole sticks: 400 mm of wire from sticks that give 308 are 1.2987 sticks; two are bought. At 5.00 a stick the feature bears
 * 6.49 and the order the rest, 3.51, together 10.00. Five such features use 2000 mm, 6.49 sticks: 7, not 5 times 2. */
START_TEST (test_whole_sticks)
{
  EmCost cost;

  job.rates.buys_whole_sticks = true;
  for (int i = 0; i < job.catalogue.filler[0].n_sizes; i++)
    {
      job.catalogue.filler[0].size[i].basis = EM_PER_STICK;
      job.catalogue.filler[0].size[i].price_minor = 500;
    }
  em_quote_set_text (&job.quote, EM_QUOTE_MACHINE, "laser");
  em_test_job_sidewall (&job, 20, 4, 0.5)->wire_mm = 0.508;
  em_test_job_solve (&job, &cost);
  ck_assert_int_eq (cost.sticks, 2);
  ck_assert_int_eq (cost.feature[0].money_minor[EM_MONEY_FILLER], 649);
  ck_assert_int_eq (cost.money_minor[EM_MONEY_FILLER], 1000);
  em_cost_clear (&cost);
  for (int i = 1; i < 5; i++)
    em_test_job_sidewall (&job, 20, 4, 0.5)->wire_mm = 0.508;
  em_test_job_solve (&job, &cost);
  ck_assert_int_eq (cost.sticks, 7);
  ck_assert_int_eq (cost.money_minor[EM_MONEY_FILLER], 3500);
  em_cost_clear (&cost);
  job.rates.buys_whole_sticks = false;      /* a share: 2000/308 · 5.00 = 32.4675 */
  em_test_job_solve (&job, &cost);
  ck_assert_int_eq (cost.money_minor[EM_MONEY_FILLER], 3247);
  em_cost_clear (&cost);
}
END_TEST

/* Prices by metre, gram and stick that mean the same money cost the same. 0.508 mm wire: a metre weighs 0.2026829916·0.0078·1000
 * = 1.580927 g; a stick is 0.333 m. At 3,000.00 a metre: a stick 999.00; a gram 300000/1.580927 = 189762 (rounded, so within 3 ppm). */
START_TEST (test_price_bases_convert)
{
  static const struct { EmPriceBasis basis; int64_t price; } rows[] = { { EM_PER_METRE, 300000 }, { EM_PER_STICK, 99900 }, { EM_PER_GRAM, 189762 } };
  double money[3];

  em_quote_set_text (&job.quote, EM_QUOTE_MACHINE, "laser");
  em_test_job_sidewall (&job, 20, 4, 0.5)->wire_mm = 0.508;
  for (int i = 0; i < 3; i++)
    {
      EmCost cost;

      job.catalogue.filler[0].size[2].basis = rows[i].basis;
      job.catalogue.filler[0].size[2].price_minor = rows[i].price;
      em_test_job_solve (&job, &cost);
      money[i] = (double) cost.money_minor[EM_MONEY_FILLER];
      em_cost_clear (&cost);
    }
  /* 400·333/308 mm at 300 minor units each: 129740.26 → 129740 */
  ck_assert_double_eq (money[0], 129740);
  ck_assert_double_eq (money[1], 129740);
  ck_assert_double_eq_tol (money[2], 129740, 129740 * 3e-6 + 1);
}
END_TEST

START_TEST (test_overflow)
{
  EmPriceRule rule = { .role_minor_per_h = { 0, INT64_C (1000000000000), 0 } };
  EmExact direct[EM_N_DIRECT] = { 7 };
  EmTotals totals = { .net_minor = 5 };
  EmFault fault;
  static const double bad[] = { 1e16, INFINITY, NAN, -1 };

  for (int i = 0; i < 4; i++)
    {
      EmWork work = { .role_s[EM_ROLE_BENCH] = bad[i] };

      ck_assert_int_eq (em_price_direct (&rule, &work, 1, 1.0, direct), EM_FAULT_OVERFLOW);
    }
  ck_assert (direct[0] == 7);
  job.quote.rush_ppm = 5000000;
  ck_assert_int_eq (em_price_totals (&job.quote, &job.rates, INT64_MAX - 1, 1, &totals, NULL, NULL, &fault), EM_FAULT_OVERFLOW);
  ck_assert_str_eq (fault.field, "price");
  ck_assert_int_eq (totals.net_minor, 5);
}
END_TEST

/* The dearest bench the limits allow, 10¹² an hour, and 50 tools. One wall is some 0.3 h a tool: 1.5·10¹³ with set-up 3.3·10¹³.
 * Ten of it, 1.5·10¹⁴, pass the 10¹⁴ a line may cost: a fault, and the figures before it stay. */
START_TEST (test_overflow_of_a_quote)
{
  EmFeature *f = em_test_job_sidewall (&job, 20, 4, 0.5);
  EmCost cost;
  EmTotals before;
  EmFault fault;

  f->wire_mm = 0.508;
  job.quote.n_tools = 50;
  job.rates.bench_minor_per_h = INT64_C (1000000000000);
  em_test_job_solve (&job, &cost);
  ck_assert_int_eq (cost.n_faults, 0);
  before = cost.totals;
  f->count = 10;
  ck_assert_int_eq (em_cost_update (&cost, 0, &job.quote, &job.rates, &job.catalogue, &fault), EM_FAULT_OVERFLOW);
  ck_assert_str_eq (fault.field, "price");
  ck_assert_mem_eq (&cost.totals, &before, sizeof before);
  ck_assert_int_eq (cost.feature[0].plan.layers, 3);
  f->count = 1;
  ck_assert_int_eq (em_cost_update (&cost, 0, &job.quote, &job.rates, &job.catalogue, &fault), EM_OK);
  ck_assert_mem_eq (&cost.totals, &before, sizeof before);
  em_cost_clear (&cost);
}
END_TEST

int
main (void)
{
  const TTest *const tests[] = { test_published_cost_per_pound, test_gas, test_from_cost_to_price, test_rounded_once, test_lines_below_the_subtotal,
                                 test_margin_told_as_markup, test_override, test_extras, test_whole_sticks, test_price_bases_convert, test_overflow,
                                 test_overflow_of_a_quote };

  return em_test_main_with ("core: price", setup, teardown, tests, (int) (sizeof tests / sizeof tests[0]));
}
