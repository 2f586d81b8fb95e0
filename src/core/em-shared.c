/* em-shared: work and wire that belong to no single feature.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-cost-internal.h"

#define EXTRA_MINOR_HIGH INT64_C (1000000000000)

static int32_t
n_wires (const EmCatalogue *catalogue)
{
  return catalogue->n_fillers * EM_SIZE_MAX;
}

/* Sticks of one wire that use_mm takes, whole and as a share. */
static double
whole_sticks (const EmRates *rates, const EmFiller *filler, double use_mm, double *out_share)
{
  double share = use_mm / (em_cost_stick_mm (filler, rates) - rates->stub_mm);

  *out_share = share;
  return em_ceil (share);
}

int64_t
em_cost_sticks (const EmRates *rates, const EmCatalogue *catalogue, const double *use_mm, int32_t n_tools)
{
  double sum = 0.0, share;

  for (int32_t i = 0; i < n_wires (catalogue); i++)
    if (use_mm[i] > 0.0)
      sum += whole_sticks (rates, &catalogue->filler[i / EM_SIZE_MAX], use_mm[i] * n_tools, &share);
  return sum < 9e15 ? (int64_t) sum : INT64_C (9000000000000000);
}

/* Each feature pays its share of the sticks; where whole ones are bought, what is left of the last of each wire is
 * bought for the order: (⌈share⌉ − share) sticks at the wire's price. Pooled, since the next feature takes up the stick
 * the last one left. */
static EmStatus
add_rest_of_sticks (const EmPriceRule *rule, const EmRates *rates, const EmCatalogue *catalogue, const double *use_mm,
                    int32_t n_tools, EmExact direct[EM_N_DIRECT])
{
  for (int32_t i = 0; i < n_wires (catalogue); i++)
    {
      const EmFiller *filler = &catalogue->filler[i / EM_SIZE_MAX];
      EmExact rest[EM_N_DIRECT];
      double share, whole;
      EmStatus status;

      if (!(use_mm[i] > 0.0))
        continue;
      whole = whole_sticks (rates, filler, use_mm[i] * n_tools, &share);
      if (whole <= share)
        continue;

      const EmWireSize *size = &filler->size[i % EM_SIZE_MAX];
      double rest_mm = (whole - share) * (em_cost_stick_mm (filler, rates) - rates->stub_mm);
      EmWork work = { .filler_units = rest_mm * em_cost_units_per_mm (filler, size, rates), .filler_minor = size->price_minor };

      status = em_price_direct (rule, &work, 1, 1.0, rest);
      if (status != EM_OK)
        return status;
      direct[EM_MONEY_FILLER] += rest[EM_MONEY_FILLER];
    }
  return EM_OK;
}

EmStatus
em_cost_shared_direct (const EmPriceRule *rule, const EmRates *rates, const EmCatalogue *catalogue, const double task_s[EM_N_TASK],
                       const double *use_mm, int32_t n_tools, double learning_factor,
                       EmExact out_set_up[EM_N_DIRECT], EmExact out_order[EM_N_DIRECT])
{
  EmWork set_up, order;
  EmStatus status;

  em_cost_set_up_work (task_s, &set_up);
  em_cost_order_work (task_s, &order);
  status = em_price_direct (rule, &set_up, n_tools, learning_factor, out_set_up);
  if (status == EM_OK)
    status = em_price_direct (rule, &order, 1, 1.0, out_order);
  if (status == EM_OK && rates->buys_whole_sticks)
    status = add_rest_of_sticks (rule, rates, catalogue, use_mm, n_tools, out_order);
  return status;
}

EmStatus
em_cost_extra_direct (const EmPriceRule *rule, const EmExtra *extra, int32_t n_tools, EmExact out_direct[EM_N_DIRECT])
{
  EmWork work = { .bought_minor = extra->cost_minor };

  return em_price_direct (rule, &work, extra->is_per_tool ? n_tools : 1, 1.0, out_direct);
}

EmStatus
em_cost_check_extras (const EmQuote *quote, EmFault *out_fault)
{
  for (int32_t i = 0; i < quote->n_extras; i++)
    if (quote->extra[i].cost_minor < 0 || quote->extra[i].cost_minor > EXTRA_MINOR_HIGH)
      return em_fault_set (out_fault, EM_FAULT_RANGE, "extra", (double) quote->extra[i].cost_minor, 0, (double) EXTRA_MINOR_HIGH);
  return EM_OK;
}
