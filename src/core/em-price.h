/* em-price: from hours, grams and litres to money, exactly, and rounded once.
 *
 * Private to the core room. A line's work is a handful of quantities. Each is made whole
 * once (ms, µl, millionths of a priced unit) for all tools together; from there to the
 * printed amount everything is 128-bit whole numbers, in parts of EM_EXACT_PER_MINOR to
 * the minor unit, the common denominator of hours, cubic metres and millionths.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-cost.h"
#include "em-exact.h"

/* lcm (3,600,000 ms/h, 10⁹ µl/m³, 10⁶) */
#define EM_EXACT_PER_MINOR INT64_C (9000000000)

/* Direct money: EM_MONEY_OFFICE … EM_MONEY_BOUGHT. */
enum { EM_N_DIRECT = EM_MONEY_OVERHEAD };

/* Rates that turn work into money, the quote's own before the book's. */
typedef struct
{
  int64_t role_minor_per_h[EM_N_ROLE];
  int64_t gas_minor_per_m3, finish_minor_per_cm2, finish_minor_per_cm;
  int64_t overhead_ppm, contingency_ppm, margin_ppm;
} EmPriceRule;

/* What one line takes, for one tool. */
typedef struct
{
  double  role_s[EM_N_ROLE];     /* labour; learning shortens it on repeat tools */
  double  machine_s;             /* beam or arc on */
  int64_t machine_minor_per_h, consumable_minor_per_h;
  double  gas_l;
  double  filler_units;          /* metres, grams or sticks, as the price is */
  int64_t filler_minor;          /* per unit */
  double  finish_cm2, finish_cm; /* finished by the shop */
  int64_t bought_minor;
} EmWork;

void em_price_rule_set (const EmQuote *quote, const EmRates *rates, EmPriceRule *out_rule);

/* Direct money of work for n_tools (≥ 1), labour shortened by learning_factor (≤ 1, cumulative average), in exact parts.
 * EM_FAULT_OVERFLOW or EM_FAULT_NOT_FINITE leave out_direct untouched. */
EmStatus em_price_direct (const EmPriceRule *rule, const EmWork *work, int32_t n_tools, double learning_factor,
                          EmExact out_direct[EM_N_DIRECT]);

/* Cost with overhead on labour and contingency, in parts of EM_EXACT_PER_MINOR · 10¹²: what choices are compared by. */
EmExact  em_price_cost (const EmPriceRule *rule, const EmExact direct[EM_N_DIRECT]);

/* The printed amount: cost/(1 − margin), rounded once, half away from zero. */
EmStatus em_price_amount (const EmPriceRule *rule, const EmExact direct[EM_N_DIRECT], int64_t *out_minor);

/* The same from the cost of a line, em_price_cost of what em_price_direct gave. */
EmStatus em_price_amount_of_cost (const EmPriceRule *rule, EmExact cost, int64_t *out_minor);

/* amount told by where it goes: every part rounded, the margin being what is left, so that they sum to amount. *out_cost is
 * the sum of all but the margin. */
EmStatus em_price_split (const EmPriceRule *rule, const EmExact direct[EM_N_DIRECT], int64_t amount_minor,
                         int64_t out_money_minor[EM_N_MONEY], int64_t *out_cost_minor);

/* Printed lines of the order below the subtotal, and the totals; lines may be NULL, else room for EM_N_LINE + EM_TAX_MAX.
 * subtotal_minor: sum of the printed lines so far. */
EmStatus em_price_totals (const EmQuote *quote, const EmRates *rates, int64_t subtotal_minor, int32_t n_tools,
                          EmTotals *out_totals, EmLine *out_lines, int32_t *out_n_lines, EmFault *out_fault);

/* Wright 1936: cumulative average of n tools against the first, n^log2(rate). */
double   em_price_learning (int64_t learning_ppm, int32_t n_tools);
