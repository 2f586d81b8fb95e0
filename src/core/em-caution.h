/* em-caution: cautions derived from process, composition and tool, never typed per material.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-cost.h"

typedef enum
{
  EM_CAUTION_LASER_CLASS_4, EM_CAUTION_ARC_RADIATION, EM_CAUTION_CHROMIUM_VI, EM_CAUTION_BERYLLIUM, EM_CAUTION_NICKEL, EM_CAUTION_COBALT,
  EM_CAUTION_MANGANESE, EM_CAUTION_COPPER, EM_CAUTION_LEAD_SULPHUR, EM_CAUTION_ARGON, EM_CAUTION_PREHEAT_BURNS, EM_CAUTION_COATING_CHROME,
  EM_CAUTION_COATING_NITRIDE, EM_CAUTION_COATING_UNKNOWN, EM_CAUTION_FIRE, EM_CAUTION_WELD_DUST, EM_CAUTION_LOCAL_CODES,
  EM_N_CAUTION
} EmCaution;

enum { EM_CAUTION_ON_QUOTE = 1, EM_CAUTION_ON_BENCH = 2 };

typedef struct
{
  const char *id;
  const char *name;     /* EM_N, two or three words, for where there is no room for more */
  const char *text;     /* EM_N sentence; always ends in deferring where the matter is regulated */
  const char *source;   /* "29 CFR 1910.1026", "IEC 60825-1" */
  unsigned    papers;   /* EM_CAUTION_ON_* */
} EmCautionRow;

extern const EmCautionRow em_cautions[EM_N_CAUTION];

/* Set of (1u << EmCaution) for the whole quote as costed. LOCAL_CODES is always in it. */
uint32_t em_caution_quote (const EmQuote *quote, const EmCost *cost, const EmRates *rates, const EmCatalogue *catalogue);
uint32_t em_caution_pair (const EmBase *base, const EmFiller *filler, EmProcess process);
