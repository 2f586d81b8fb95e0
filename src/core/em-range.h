/* em-range: the price when dimensions are only known as low, likely, high.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-cost.h"

enum { EM_RANGE_INPUT_MAX = 32, EM_RANGE_BIN = 32 };

/* What window, paper and command line ask for, so that they tell the same figures. */
enum { EM_RANGE_SAMPLES = 10000, EM_RANGE_SEED = 20 };

typedef struct
{
  int32_t feature, field;
  double  share_ratio;      /* of the spread, 0 … 1; largest first */
} EmRangeInput;

typedef struct
{
  bool     has_range;           /* false: no dimension carries one; the rest but price_minor and seed is 0 */
  int32_t  n_samples;
  int32_t  n_refused;           /* drawn shapes the engine would not price, left out */
  uint64_t seed;
  int64_t  price_minor;         /* net at the likely values */
  int64_t  p10_minor, p50_minor, p90_minor; /* p90: likely to be exceeded one time in ten */
  int32_t  n_inputs;
  EmRangeInput input[EM_RANGE_INPUT_MAX];
  int32_t  bin[EM_RANGE_BIN];   /* histogram between bin_low and bin_high */
  int64_t  bin_low_minor, bin_high_minor;
} EmRange;

EmStatus em_range_quote (const EmQuote *quote, const EmRates *rates, const EmCatalogue *catalogue,
                         int32_t n_samples, uint64_t seed, EmRange *out_range, EmFault *out_fault);
/* Whether p10 to p90 is a hundredth of the price or more: less is below what an estimate can tell. */
bool em_range_is_wide (const EmRange *range);
