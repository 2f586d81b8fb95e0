/* em-preheat: whether a wire on a machine asks for a warm tool, found once for each pair.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-cost-internal.h"
#include "em-steel.h"

#include <math.h>
#include <stdlib.h>

void
em_preheats_init (EmPreheats *out_preheats)
{
  *out_preheats = (EmPreheats) { 0 };
}

void
em_preheats_clear (EmPreheats *preheats)
{
  free (preheats->at);
  em_preheats_init (preheats);
}

EmStatus
em_preheats_begin (EmPreheats *preheats, const EmQuote *quote, const EmRates *rates, const EmCatalogue *catalogue, int32_t base)
{
  size_t n = (size_t) catalogue->n_fillers * EM_MACHINE_MAX + 1;
  EmPreheat *at = realloc (preheats->at, n * sizeof *at);

  if (at == NULL)
    return EM_FAULT_MEMORY;
  *preheats = (EmPreheats) { .rates = rates, .catalogue = catalogue, .base = base, .hardness_hrc = quote->hardness_hrc,
                             .section_mm = quote->section_mm, .at = at };
  for (size_t i = 0; i < n; i++)
    at[i] = (EmPreheat) { .degc = EM_ABSENT };
  return EM_OK;
}

EmPreheat
em_preheats_get (EmPreheats *preheats, int32_t filler, int32_t machine)
{
  EmPreheat *entry = &preheats->at[filler * EM_MACHINE_MAX + machine];

  if (!entry->is_known && preheats->base >= 0)
    {
      const EmMachine *on = &preheats->rates->machine[machine];
      EmPairing pairing;

      em_steel_pair (&preheats->catalogue->base[preheats->base], &preheats->catalogue->filler[filler], on->process, on->dilution_ratio,
                     preheats->hardness_hrc, preheats->section_mm, &pairing, NULL);
      entry->is_advised = pairing.is_preheat_advised;
      entry->degc = pairing.is_preheat_advised ? pairing.preheat_degc : EM_ABSENT;
    }
  entry->is_known = true;
  return *entry;
}

void
em_preheat_add (EmPreheat *sum, const EmPreheat *other)
{
  sum->is_advised = sum->is_advised || other->is_advised;
  sum->degc = fmax (sum->degc, other->degc);   /* passes over NaN */
}

bool
em_preheat_decide (const EmQuote *quote, const EmPreheat *advised, double *out_degc)
{
  bool is_decided = quote->has_preheat && quote->preheat != EM_AUTO;
  bool is_preheated = is_decided ? quote->preheat == EM_YES : advised->is_advised;

  *out_degc = is_preheated ? advised->degc : EM_ABSENT;
  return is_preheated;
}
