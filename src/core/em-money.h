/* em-money: integer money and checked arithmetic.
 *
 * Money is int64_t in the currency's ISO 4217 minor unit. Ratios that touch money
 * are int64_t parts per million (_ppm). Durations and masses enter as whole
 * milliseconds (_ms) and micrograms (_ug), so no price passes through floating
 * point. Every function returns EM_FAULT_OVERFLOW rather than wrap.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-fault.h"

#include <stdint.h>

#define EM_PPM INT64_C (1000000)

EmStatus em_money_add (int64_t a, int64_t b, int64_t *out_sum);
EmStatus em_money_sub (int64_t a, int64_t b, int64_t *out_difference);

/* a·b/c rounded once, half away from zero, with a 128-bit intermediate. c > 0. */
EmStatus em_money_mul_div (int64_t a, int64_t b, int64_t c, int64_t *out_value);

/* cost/(1 − margin): margin_ppm in [0, 999999]. */
EmStatus em_money_with_margin (int64_t cost_minor, int64_t margin_ppm, int64_t *out_price_minor);

/* Nearest multiple of step (> 0), half away from zero. */
EmStatus em_money_round_step (int64_t amount_minor, int64_t step_minor, int64_t *out_minor);

/* Whole units of a positive double quantity (seconds → ms: scale 1000), half away
 * from zero; EM_FAULT_NOT_FINITE or EM_FAULT_OVERFLOW when it cannot be held. */
EmStatus em_money_scale (double value, double scale, int64_t *out_whole);

typedef struct
{
  char code[4];   /* ISO 4217 alphabetic */
  int  digits;    /* minor-unit digits: 0, 2, 3 (or 4) */
} EmCurrency;

/* Looks code up in the ISO 4217 table (core/em-currency-table.h); false when unknown. */
bool em_currency_find (const char *code, EmCurrency *out_currency);
int  em_currency_count (void);
void em_currency_at (int index, EmCurrency *out_currency);
