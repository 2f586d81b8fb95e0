/* em-money: integer money and checked arithmetic.
 *
 * Products go through a 128-bit intermediate, so that nothing is lost before the
 * one rounding at the end.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-money.h"
#include "em-exact.h"

#include <math.h>

EmStatus
em_exact_round (EmExact numerator, EmExact denominator, int64_t *out_value)
{
  bool is_negative = numerator < 0;
  EmExactUnsigned n = is_negative ? 0 - (EmExactUnsigned) numerator : (EmExactUnsigned) numerator;
  EmExactUnsigned d = (EmExactUnsigned) denominator;
  /* Most amounts fit 64 bits, where dividing is several times quicker. */
  EmExactUnsigned quotient, rest;

  if (n <= UINT64_MAX && d <= UINT64_MAX)
    {
      quotient = (uint64_t) n / (uint64_t) d;
      rest = (uint64_t) n % (uint64_t) d;
    }
  else
    {
      quotient = n / d;
      rest = n - quotient * d;
    }
  if (rest >= d - rest)
    quotient++;
  if (quotient > (EmExactUnsigned) INT64_MAX)
    return EM_FAULT_OVERFLOW;
  *out_value = is_negative ? -(int64_t) quotient : (int64_t) quotient;
  return EM_OK;
}

EmStatus
em_money_add (int64_t a, int64_t b, int64_t *out_sum)
{
  int64_t sum;

  if (__builtin_add_overflow (a, b, &sum))
    return EM_FAULT_OVERFLOW;
  *out_sum = sum;
  return EM_OK;
}

EmStatus
em_money_sub (int64_t a, int64_t b, int64_t *out_difference)
{
  int64_t difference;

  if (__builtin_sub_overflow (a, b, &difference))
    return EM_FAULT_OVERFLOW;
  *out_difference = difference;
  return EM_OK;
}

EmStatus
em_money_mul_div (int64_t a, int64_t b, int64_t c, int64_t *out_value)
{
  if (c <= 0)
    return EM_FAULT_RANGE;
  return em_exact_round ((EmExact) a * b, c, out_value);
}

EmStatus
em_money_with_margin (int64_t cost_minor, int64_t margin_ppm, int64_t *out_price_minor)
{
  if (margin_ppm < 0 || margin_ppm >= EM_PPM)
    return EM_FAULT_RANGE;
  return em_money_mul_div (cost_minor, EM_PPM, EM_PPM - margin_ppm, out_price_minor);
}

EmStatus
em_money_round_step (int64_t amount_minor, int64_t step_minor, int64_t *out_minor)
{
  int64_t steps, rounded;
  EmStatus status = em_money_mul_div (amount_minor, 1, step_minor, &steps);

  if (status != EM_OK)
    return status;
  if (__builtin_mul_overflow (steps, step_minor, &rounded))
    return EM_FAULT_OVERFLOW;
  *out_minor = rounded;
  return EM_OK;
}

EmStatus
em_money_scale (double value, double scale, int64_t *out_whole)
{
  double scaled = value * scale;

  if (!isfinite (value) || !isfinite (scale))
    return EM_FAULT_NOT_FINITE;
  /* Also refuses a product that ran to infinity. Below 2^63 a double converts exactly. */
  if (!(fabs (scaled) < 9223372036854775808.0))
    return EM_FAULT_OVERFLOW;
  int64_t whole = (int64_t) scaled;
  double rest = scaled - (double) whole;   /* exact */

  *out_whole = whole + (rest >= 0.5) - (rest <= -0.5);
  return EM_OK;
}
