/* em-price: work into money, lines into totals.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-price.h"

#include <assert.h>
#include <math.h>

/* Parts of EM_EXACT_PER_MINOR in one minor unit per hour and millisecond, and so on. */
#define EXACT_PER_MS_H     (EM_EXACT_PER_MINOR / 3600000)
#define EXACT_PER_UL_M3    (EM_EXACT_PER_MINOR / 1000000000)
#define EXACT_PER_MILLIONTH (EM_EXACT_PER_MINOR / EM_PPM)

/* No quantity of a line reaches this (30,000 years in ms), nor any direct cost in minor units the next; between them every
 * product below stays within 128 bits (1.7·10³⁸), overhead and contingency at most 1000 %: 10¹² · 10¹⁵ · 9000 < 10³², and
 * 10¹⁴ · 9·10⁹ · 1.1·10⁷ · 1.1·10⁷ < 1.1·10³⁸. */
#define WHOLE_HIGH INT64_C (1000000000000000)
#define MINOR_HIGH INT64_C (100000000000000)

static int64_t
given (int64_t own_ppm, int64_t book_ppm)
{
  return own_ppm >= 0 ? own_ppm : book_ppm;
}

void
em_price_rule_set (const EmQuote *quote, const EmRates *rates, EmPriceRule *out_rule)
{
  *out_rule = (EmPriceRule) {
    .role_minor_per_h = { rates->office_minor_per_h, rates->bench_minor_per_h, rates->finish_minor_per_h },
    .gas_minor_per_m3 = rates->gas_minor_per_m3,
    .finish_minor_per_cm2 = rates->finish_minor_per_cm2,
    .finish_minor_per_cm = rates->finish_minor_per_cm,
    .overhead_ppm = rates->overhead_ppm,
    .contingency_ppm = given (quote->contingency_ppm, rates->contingency_ppm),
    .margin_ppm = given (quote->margin_ppm, rates->margin_ppm),
  };
}

/* quantity·scale made whole, 0 … WHOLE_HIGH. */
static inline bool
make_whole (double quantity, double scale, int64_t *out_whole)
{
  double scaled = quantity * scale;

  /* Also false for NaN. */
  if (!(scaled >= 0.0 && scaled <= (double) WHOLE_HIGH))
    return false;
  *out_whole = (int64_t) (scaled + 0.5);
  return true;
}

/* A rate is at most 10¹² by the rate book's limits, so that its multiple still fits 64 bits and one wide product does. */
static inline EmExact
times (int64_t rate, int64_t whole)
{
  return (EmExact) rate * whole;
}

EmStatus
em_price_direct (const EmPriceRule *rule, const EmWork *work, int32_t n_tools, double learning_factor,
                 EmExact out_direct[EM_N_DIRECT])
{
  double n = n_tools, learned = n * learning_factor;
  int64_t office_ms, bench_ms, finish_ms, machine_ms, gas_ul, filler, area, edge;
  EmExact direct[EM_N_DIRECT], sum = 0;

  if (!make_whole (work->role_s[EM_ROLE_OFFICE], learned * 1e3, &office_ms)
      || !make_whole (work->role_s[EM_ROLE_BENCH], learned * 1e3, &bench_ms)
      || !make_whole (work->role_s[EM_ROLE_FINISH], learned * 1e3, &finish_ms)
      || !make_whole (work->machine_s, n * 1e3, &machine_ms) || !make_whole (work->gas_l, n * 1e6, &gas_ul)
      || !make_whole (work->filler_units, n * 1e6, &filler) || !make_whole (work->finish_cm2, n * 1e6, &area)
      || !make_whole (work->finish_cm, n * 1e6, &edge))
    return EM_FAULT_OVERFLOW;
  direct[EM_MONEY_OFFICE] = times (rule->role_minor_per_h[EM_ROLE_OFFICE] * EXACT_PER_MS_H, office_ms);
  direct[EM_MONEY_BENCH] = times (rule->role_minor_per_h[EM_ROLE_BENCH] * EXACT_PER_MS_H, bench_ms);
  direct[EM_MONEY_FINISH] = times (rule->role_minor_per_h[EM_ROLE_FINISH] * EXACT_PER_MS_H, finish_ms);
  direct[EM_MONEY_MACHINE] = times (work->machine_minor_per_h * EXACT_PER_MS_H, machine_ms);
  direct[EM_MONEY_FILLER] = times (work->filler_minor * EXACT_PER_MILLIONTH, filler);
  direct[EM_MONEY_GAS] = times (rule->gas_minor_per_m3 * EXACT_PER_UL_M3, gas_ul);
  direct[EM_MONEY_CONSUMABLE] = times (work->consumable_minor_per_h * EXACT_PER_MS_H, machine_ms);
  direct[EM_MONEY_BOUGHT] = times (work->bought_minor, n_tools) * EM_EXACT_PER_MINOR
                            + times (rule->finish_minor_per_cm2 * EXACT_PER_MILLIONTH, area)
                            + times (rule->finish_minor_per_cm * EXACT_PER_MILLIONTH, edge);
  for (int i = 0; i < EM_N_DIRECT; i++)
    sum += direct[i];
  if (sum < 0 || sum > (EmExact) MINOR_HIGH * EM_EXACT_PER_MINOR)
    return EM_FAULT_OVERFLOW;
  for (int i = 0; i < EM_N_DIRECT; i++)
    out_direct[i] = direct[i];
  return EM_OK;
}

static EmExact
labour_of (const EmExact direct[EM_N_DIRECT])
{
  return direct[EM_MONEY_OFFICE] + direct[EM_MONEY_BENCH] + direct[EM_MONEY_FINISH];
}

static EmExact
sum_of (const EmExact direct[EM_N_DIRECT])
{
  EmExact sum = 0;

  for (int i = 0; i < EM_N_DIRECT; i++)
    sum += direct[i];
  return sum;
}

EmExact
em_price_cost (const EmPriceRule *rule, const EmExact direct[EM_N_DIRECT])
{
  EmExact with_overhead = sum_of (direct) * EM_PPM + labour_of (direct) * rule->overhead_ppm;

  return with_overhead * (EM_PPM + rule->contingency_ppm);
}

EmStatus
em_price_amount_of_cost (const EmPriceRule *rule, EmExact cost, int64_t *out_minor)
{
  /* cost/(P·10¹²) ÷ ((10⁶ − m)/10⁶), the sixes cancelled. */
  return em_exact_round (cost, (EmExact) EM_EXACT_PER_MINOR * EM_PPM * (EM_PPM - rule->margin_ppm), out_minor);
}

EmStatus
em_price_amount (const EmPriceRule *rule, const EmExact direct[EM_N_DIRECT], int64_t *out_minor)
{
  /* Sums over many lines may exceed one line's bound: checked again. */
  if (sum_of (direct) > (EmExact) MINOR_HIGH * EM_EXACT_PER_MINOR)
    return EM_FAULT_OVERFLOW;
  return em_price_amount_of_cost (rule, em_price_cost (rule, direct), out_minor);
}

EmStatus
em_price_split (const EmPriceRule *rule, const EmExact direct[EM_N_DIRECT], int64_t amount_minor,
                int64_t out_money_minor[EM_N_MONEY], int64_t *out_cost_minor)
{
  EmExact labour = labour_of (direct), with_overhead = sum_of (direct) * EM_PPM + labour * rule->overhead_ppm;
  int64_t money[EM_N_MONEY], cost = 0;

  if (sum_of (direct) > (EmExact) MINOR_HIGH * EM_EXACT_PER_MINOR)
    return EM_FAULT_OVERFLOW;
  for (int i = 0; i < EM_N_DIRECT; i++)
    if (em_exact_round (direct[i], EM_EXACT_PER_MINOR, &money[i]) != EM_OK)
      return EM_FAULT_OVERFLOW;
  if (em_exact_round (labour * rule->overhead_ppm, (EmExact) EM_EXACT_PER_MINOR * EM_PPM, &money[EM_MONEY_OVERHEAD]) != EM_OK
      || em_exact_round (with_overhead * rule->contingency_ppm, (EmExact) EM_EXACT_PER_MINOR * EM_PPM * EM_PPM,
                         &money[EM_MONEY_CONTINGENCY]) != EM_OK)
    return EM_FAULT_OVERFLOW;
  for (int i = 0; i < EM_MONEY_MARGIN; i++)
    if (em_money_add (cost, money[i], &cost) != EM_OK)
      return EM_FAULT_OVERFLOW;
  if (em_money_sub (amount_minor, cost, &money[EM_MONEY_MARGIN]) != EM_OK)
    return EM_FAULT_OVERFLOW;
  for (int i = 0; i < EM_N_MONEY; i++)
    out_money_minor[i] = money[i];
  *out_cost_minor = cost;
  return EM_OK;
}

double
em_price_learning (int64_t learning_ppm, int32_t n_tools)
{
  if (learning_ppm >= EM_PPM || n_tools <= 1)
    return 1.0;
  return pow (n_tools, log2 ((double) learning_ppm / (double) EM_PPM));
}

/* ---- totals ---- */

typedef struct
{
  EmLine  *line;       /* or NULL */
  int32_t  n;
  int64_t  running_minor;
  EmStatus status;
} Tail;

static void
add_line (Tail *tail, EmLineType type, int32_t row, int64_t amount_minor, int64_t rate_ppm)
{
  if (tail->status != EM_OK || (amount_minor == 0 && type != EM_LINE_TAX))
    return;
  tail->status = em_money_add (tail->running_minor, amount_minor, &tail->running_minor);
  if (tail->line != NULL)
    tail->line[tail->n] = (EmLine) { .type = type, .row = row, .quantity = 1, .amount_minor = amount_minor,
                                     .calculated_minor = amount_minor, .rate_ppm = rate_ppm };
  tail->n++;
}

static void
add_share (Tail *tail, EmLineType type, int32_t row, int64_t of_minor, int64_t rate_ppm, int sign)
{
  int64_t amount = 0;

  if (tail->status == EM_OK)
    tail->status = em_money_mul_div (of_minor, sign * rate_ppm, EM_PPM, &amount);
  add_line (tail, type, row, amount, rate_ppm);
}

static void
add_rounding (Tail *tail, int64_t step_minor)
{
  int64_t rounded = 0;

  if (step_minor <= 1 || tail->status != EM_OK)
    return;
  tail->status = em_money_round_step (tail->running_minor, step_minor, &rounded);
  if (tail->status == EM_OK)
    add_line (tail, EM_LINE_ROUNDING, 0, rounded - tail->running_minor, 0);
}

/* Each tax on the net, or on the net and the taxes above it; each rounded once. */
static void
add_taxes (Tail *tail, const EmRates *rates)
{
  int64_t net = tail->running_minor;

  for (int32_t i = 0; i < rates->n_taxes; i++)
    add_share (tail, EM_LINE_TAX, i, rates->tax[i].on_taxes ? tail->running_minor : net, rates->tax[i].rate_ppm, 1);
}

/**
 * em_price_totals:
 * Subtotal raised to the minimum charge; rush on that; discount on that and the rush; the rounding step; taxes.
 * Every line is rounded once, half away from zero, and every total is a sum of lines. A discount may go below the
 * minimum charge: it is the office's own decision and stands on its own line.
 * EM_FAULT_OVERFLOW on "price" leaves the outputs untouched but for the lines' room.
 */
EmStatus
em_price_totals (const EmQuote *quote, const EmRates *rates, int64_t subtotal_minor, int32_t n_tools,
                 EmTotals *out_totals, EmLine *out_lines, int32_t *out_n_lines, EmFault *out_fault)
{
  Tail tail = { .line = out_lines, .running_minor = subtotal_minor };
  EmTotals totals = { .n_tools = n_tools, .subtotal_minor = subtotal_minor };

  if (subtotal_minor < rates->minimum_minor)
    add_line (&tail, EM_LINE_MINIMUM, 0, rates->minimum_minor - subtotal_minor, 0);
  if (quote->rush_ppm > 0)
    add_share (&tail, EM_LINE_RUSH, 0, tail.running_minor, quote->rush_ppm, 1);
  if (quote->discount_ppm > 0)
    add_share (&tail, EM_LINE_DISCOUNT, 0, tail.running_minor, quote->discount_ppm, -1);
  add_rounding (&tail, rates->rounding_minor);
  totals.net_minor = tail.running_minor;
  add_taxes (&tail, rates);
  totals.total_minor = tail.running_minor;
  totals.tax_minor = totals.total_minor - totals.net_minor;
  if (tail.status == EM_OK)
    tail.status = em_money_mul_div (totals.net_minor, 1, n_tools, &totals.each_minor);
  if (tail.status != EM_OK)
    return em_fault_set (out_fault, EM_FAULT_OVERFLOW, "price", EM_ABSENT, EM_ABSENT, EM_ABSENT);
  *out_totals = totals;
  if (out_n_lines != NULL)
    *out_n_lines = tail.n;
  return EM_OK;
}
