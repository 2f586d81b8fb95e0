/* em-compare: every wire the shop stocks, priced over the whole quote.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-cost.h"
#include "em-steel.h"

typedef struct
{
  int32_t   filler;             /* catalogue index */
  bool      is_ruled_out;
  bool      is_present;         /* the quote's present choice */
  EmReasons reasons;
  EmFault   fault;              /* first feature that cannot take it, when no size fits */
  int64_t   net_minor, total_minor;
  int64_t   difference_minor;   /* net against the present choice's; 0 when there is none */
  int64_t   filler_cost_minor;  /* whole order */
  int64_t   money_minor[EM_N_MONEY];
  double    arc_on_s, labour_s; /* whole order */
  double    wire_low_mm, wire_high_mm;   /* sizes chosen */
  EmPairing pairing;            /* by the process of most features */
} EmCompareRow;

typedef struct
{
  int32_t       n_rows, cap_rows;
  EmCompareRow *row;            /* suited ones by price, cheapest first; then the ruled out by catalogue order */
  int32_t       present;        /* row index of the present choice, −1 */
} EmCompare;

void     em_compare_init (EmCompare *out_compare);
void     em_compare_clear (EmCompare *compare);
/* feature −1: over the whole quote, each feature's own wire choice set aside; else only that feature is changed. */
EmStatus em_compare_quote (EmCompare *compare, const EmQuote *quote, int32_t feature, const EmRates *rates, const EmCatalogue *catalogue,
                           EmFault *out_fault);
