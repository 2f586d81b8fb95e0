/* em-steel: chemistry of a deposit, and published estimates from it with their limits.
 *
 * Limits are of two kinds: elements, by the tables below, and the other inputs, checked in each function. Where a source
 * gives no limits of its own that is said beside the table.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-steel.h"

#include <stddef.h>

/* Stainless from here up (EN 10088-1). */
#define STAINLESS_CR_PCT 10.5

typedef struct { EmElement element; double low_pct, high_pct; } EmLimit;

/* EN 1011-2 method A, from memory. */
static const EmLimit ce_limits[] =
{
  { EM_EL_C, 0.05, 0.25 }, { EM_EL_SI, 0.0, 0.8 }, { EM_EL_MN, 0.0, 1.7 }, { EM_EL_CR, 0.0, 0.9 }, { EM_EL_CU, 0.0, 1.0 },
  { EM_EL_NI, 0.0, 2.5 }, { EM_EL_MO, 0.0, 0.75 }, { EM_EL_V, 0.0, 0.20 },
};

/* EN 1011-2 annex C, method B. */
static const EmLimit cet_limits[] =
{
  { EM_EL_C, 0.05, 0.32 }, { EM_EL_SI, 0.0, 0.8 }, { EM_EL_MN, 0.5, 1.9 }, { EM_EL_CR, 0.0, 1.5 }, { EM_EL_CU, 0.0, 0.7 },
  { EM_EL_MO, 0.0, 0.75 }, { EM_EL_NB, 0.0, 0.06 }, { EM_EL_NI, 0.0, 2.5 }, { EM_EL_TI, 0.0, 0.12 }, { EM_EL_V, 0.0, 0.18 },
  { EM_EL_B, 0.0, 0.005 },
};

/* Andrews 1965, range of his steels, from memory. */
static const EmLimit andrews_limits[] =
{
  { EM_EL_C, 0.11, 0.60 }, { EM_EL_MN, 0.04, 4.9 }, { EM_EL_SI, 0.1, 1.9 }, { EM_EL_NI, 0.0, 5.0 }, { EM_EL_CR, 0.0, 4.6 },
  { EM_EL_MO, 0.0, 5.4 },
};

#define N_LIMITS(table) ((int) (sizeof (table) / sizeof (table)[0]))

static EmEstimate
outside (const char *name)
{
  return (EmEstimate) { EM_ABSENT, EM_VALID_OUTSIDE, name };
}

/* The first element outside its limits, NULL when none is. Written so that NaN is outside. A hair's breadth is let pass, since
 * deposits are sums. */
static const char *
element_outside (const EmChemistry c, const EmLimit *limits, int n_limits)
{
  const double hair_pct = 1e-9;

  for (int i = 0; i < n_limits; i++)
    if (!(c[limits[i].element] >= limits[i].low_pct - hair_pct && c[limits[i].element] <= limits[i].high_pct + hair_pct))
      return em_element_ids[limits[i].element];
  return NULL;
}

/* The relations are of steels: iron at least half, and below stainless where is_unalloyed. */
static bool
is_of_steel (const EmChemistry c, bool is_unalloyed)
{
  return c[EM_EL_FE] >= 50.0 && !(is_unalloyed && c[EM_EL_CR] >= STAINLESS_CR_PCT);
}

static EmEstimate
not_applicable (const EmChemistry c)
{
  return (EmEstimate) { EM_ABSENT, EM_VALID_NOT_APPLICABLE, em_element_ids[c[EM_EL_FE] >= 50.0 ? EM_EL_CR : EM_EL_FE] };
}

/*
 * em_steel_deposit:
 * @dilution_ratio: share of base metal in the weld, 0 … 1
 *
 * D·base + (1 − D)·filler, by element. out_deposit may be either input.
 */
void
em_steel_deposit (const EmChemistry base, const EmChemistry filler, double dilution_ratio, EmChemistry out_deposit)
{
  for (int i = 0; i < EM_N_ELEMENT; i++)
    out_deposit[i] = dilution_ratio * base[i] + (1.0 - dilution_ratio) * filler[i];
}

static double
cet_pct (const EmChemistry c)
{
  return c[EM_EL_C] + (c[EM_EL_MN] + c[EM_EL_MO]) / 10.0 + (c[EM_EL_CR] + c[EM_EL_CU]) / 20.0 + c[EM_EL_NI] / 40.0;
}

/*
 * em_steel_ce_iiw:
 *
 * CE = C + Mn/6 + (Cr + Mo + V)/5 + (Ni + Cu)/15, percent (EN 1011-2 method A). The elements' limits and CE 0.30 … 0.70;
 * limited_by "CE" for the latter. Not applicable to stainless and to metals that are not mostly iron.
 */
EmEstimate
em_steel_ce_iiw (const EmChemistry c)
{
  const char *limited_by = element_outside (c, ce_limits, N_LIMITS (ce_limits));
  double ce_pct = c[EM_EL_C] + c[EM_EL_MN] / 6.0 + (c[EM_EL_CR] + c[EM_EL_MO] + c[EM_EL_V]) / 5.0 + (c[EM_EL_NI] + c[EM_EL_CU]) / 15.0;

  if (!is_of_steel (c, true))
    return not_applicable (c);
  if (limited_by != NULL)
    return outside (limited_by);
  return ce_pct >= 0.30 && ce_pct <= 0.70 ? (EmEstimate) { ce_pct, EM_VALID, NULL } : outside ("CE");
}

/*
 * em_steel_cet:
 *
 * CET = C + (Mn + Mo)/10 + (Cr + Cu)/20 + Ni/40, percent (EN 1011-2 annex C, method B).
 */
EmEstimate
em_steel_cet (const EmChemistry c)
{
  const char *limited_by = element_outside (c, cet_limits, N_LIMITS (cet_limits));

  if (!is_of_steel (c, true))
    return not_applicable (c);
  return limited_by != NULL ? outside (limited_by) : (EmEstimate) { cet_pct (c), EM_VALID, NULL };
}

/*
 * em_steel_ms_andrews:
 *
 * Ms = 539 − 423 C − 30.4 Mn − 17.7 Ni − 12.1 Cr − 7.5 Mo, °C (Andrews 1965, linear).
 */
EmEstimate
em_steel_ms_andrews (const EmChemistry c)
{
  const char *limited_by = element_outside (c, andrews_limits, N_LIMITS (andrews_limits));

  if (!is_of_steel (c, false))
    return not_applicable (c);
  if (limited_by != NULL)
    return outside (limited_by);
  return (EmEstimate)
    {
      539.0 - 423.0 * c[EM_EL_C] - 30.4 * c[EM_EL_MN] - 17.7 * c[EM_EL_NI] - 12.1 * c[EM_EL_CR] - 7.5 * c[EM_EL_MO], EM_VALID, NULL,
    };
}

/*
 * em_steel_preheat_seferian:
 * @section_mm: thickness of steel at the weld, > 0
 *
 * Tp = 350·√(Ct − 0.25) °C, Ct = Cc·(1 + 0.005·t), Cc = (360 C + 40 (Mn + Cr) + 20 Ni + 28 Mo)/360 (Séférian 1959); 0 when
 * Ct ≤ 0.25: none needed. For low and medium alloy steels, here read as C ≤ 0.50 and alloying elements no more than 5 % in
 * all, which is ours for want of published figures; limited_by "C", "alloy" or "section". For heavy sections: for micro welding an
 * upper bound.
 */
EmEstimate
em_steel_preheat_seferian (const EmChemistry c, double section_mm)
{
  double alloy_pct = c[EM_EL_MN] + c[EM_EL_SI] + c[EM_EL_CR] + c[EM_EL_NI] + c[EM_EL_MO] + c[EM_EL_V] + c[EM_EL_W] + c[EM_EL_CO] + c[EM_EL_CU];
  double cc_pct = (360.0 * c[EM_EL_C] + 40.0 * (c[EM_EL_MN] + c[EM_EL_CR]) + 20.0 * c[EM_EL_NI] + 28.0 * c[EM_EL_MO]) / 360.0;
  double ct_pct = cc_pct * (1.0 + 0.005 * section_mm);

  if (!is_of_steel (c, true))
    return not_applicable (c);
  if (!(c[EM_EL_C] <= 0.50))
    return outside (em_element_ids[EM_EL_C]);
  if (!(alloy_pct <= 5.0))
    return outside ("alloy");
  if (!(section_mm > 0.0 && isfinite (section_mm)))
    return outside ("section");
  return (EmEstimate) { ct_pct <= 0.25 ? 0.0 : 350.0 * sqrt (ct_pct - 0.25), EM_VALID, NULL };
}

/*
 * em_steel_preheat_en1011:
 * @section_mm: 10 … 90
 * @hydrogen_ml_per_100g: diffusible, of the deposit, 1 … 20
 * @heat_kj_per_mm: heat input, 0.5 … 4.0
 *
 * Tp = 697 CET + 160 tanh(d/35) + 62 HD^0.35 + (53 CET − 32)·Q − 328 °C (EN 1011-2 annex C), CET 0.2 … 0.5; 0 when that is
 * below a room's 20 °C. limited_by an element, "CET", "section", "hydrogen" or "heat"; fine wire's heat input lies below.
 */
EmEstimate
em_steel_preheat_en1011 (const EmChemistry c, double section_mm, double hydrogen_ml_per_100g, double heat_kj_per_mm)
{
  EmEstimate cet = em_steel_cet (c);

  if (cet.validity != EM_VALID)
    return cet;
  if (!(cet.value >= 0.2 && cet.value <= 0.5))
    return outside ("CET");
  if (!(section_mm >= 10.0 && section_mm <= 90.0))
    return outside ("section");
  if (!(hydrogen_ml_per_100g >= 1.0 && hydrogen_ml_per_100g <= 20.0))
    return outside ("hydrogen");
  if (!(heat_kj_per_mm >= 0.5 && heat_kj_per_mm <= 4.0))
    return outside ("heat");

  double preheat_degc = 697.0 * cet.value + 160.0 * tanh (section_mm / 35.0) + 62.0 * pow (hydrogen_ml_per_100g, 0.35)
                        + (53.0 * cet.value - 32.0) * heat_kj_per_mm - 328.0;

  return (EmEstimate) { preheat_degc > 20.0 ? preheat_degc : 0.0, EM_VALID, NULL };
}
