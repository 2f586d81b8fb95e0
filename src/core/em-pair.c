/* em-pair: base and wire judged together: suited or not, how hard, how warm, and the reasons for and against.
 *
 * Where a figure below has no source beside it, it is common practice.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-constitution.h"

#include <stddef.h>

#define SECTION_PRESET_MM    25.0
#define HARDNESS_NEAR_HRC    3.0     /* counts as equal */
#define HARDNESS_NEAR_RATIO  0.10    /* of HV, off the HRC scale */
#define MARTENSITE_SPREAD_HRC 2.0    /* of the carbon relation */
#define CARBON_HIGH_PCT      0.60    /* D2, A2, O1, M2: carbides, preheat even under a beam, austenite kept */
#define CARBON_CRACKS_PCT    0.50
#define HARD_TO_MACHINE_HRC  50.0
#define STAINLESS_CR_PCT     10.5    /* EN 10088-1 */
#define SULPHUR_PCT          0.05
#define COPPER_PCT           5.0
#define FIELD_MARGIN_PCT     0.7     /* of the diagram's boundaries; see em-constitution.c */
#define MS_RETAINED_DEGC     200.0   /* Koistinen and Marburger 1959: 15 % austenite kept at room temperature */
#define BELOW_TEMPER_DEGC    25.0
#define ARC_HYDROGEN_ML      5.0     /* EN 1011-2 scale D: bare wire, argon, clean metal */
#define ARC_HEAT_KJ_PER_MM   0.15    /* fine wire; below EN 1011-2's limit, so its preheat says "outside" */

const char *const em_reason_ids[EM_N_REASON] =
{
  [EM_REASON_USUAL] = "usual",
  [EM_REASON_MATCHES_BASE] = "matches-base",
  [EM_REASON_HARDNESS_MATCHES] = "hardness-matches",
  [EM_REASON_POLISHES] = "polishes",
  [EM_REASON_TEXTURES] = "textures",
  [EM_REASON_NITRIDES] = "nitrides",
  [EM_REASON_MACHINES] = "machines",
  [EM_REASON_RESISTS_CORROSION] = "resists-corrosion",
  [EM_REASON_RESISTS_WEAR] = "resists-wear",
  [EM_REASON_NO_PREHEAT] = "no-preheat",
  [EM_REASON_TOUGH_CUSHION] = "tough-cushion",
  [EM_REASON_AGES_AFTER] = "ages-after",
  [EM_REASON_LASER_HARDER] = "laser-harder",
  [EM_REASON_LASER_ABOVE_TOOL] = "laser-above-tool",
  [EM_REASON_ABRASIVE_PLASTIC] = "abrasive-plastic",
  [EM_REASON_JOINS_UNLIKE] = "joins-unlike",
  [EM_REASON_CHEAPEST] = "cheapest",
  [EM_REASON_SOFTER] = "softer",
  [EM_REASON_HARDER] = "harder",
  [EM_REASON_CRACKS] = "cracks",
  [EM_REASON_NEEDS_PREHEAT] = "needs-preheat",
  [EM_REASON_HOT_CRACKS] = "hot-cracks",
  [EM_REASON_POLISH_DIFFERS] = "polish-differs",
  [EM_REASON_TEXTURE_DIFFERS] = "texture-differs",
  [EM_REASON_NO_NITRIDE] = "no-nitride",
  [EM_REASON_HARD_TO_MACHINE] = "hard-to-machine",
  [EM_REASON_RUSTS] = "rusts",
  [EM_REASON_DISSIMILAR] = "dissimilar",
  [EM_REASON_AUSTENITIC_ON_TOOL] = "austenitic-on-tool",
  [EM_REASON_COPPER_CONTENT] = "copper-content",
  [EM_REASON_RETAINED_AUSTENITE] = "retained-austenite",
  [EM_REASON_SULPHUR] = "sulfur",
  [EM_REASON_WRONG_PROCESS] = "wrong-process",
  [EM_REASON_WRONG_FAMILY] = "wrong-family",
  [EM_REASON_NOT_STOCKED] = "not-stocked",
  [EM_REASON_NO_SIZE_FITS] = "no-size-fits",
  [EM_REASON_RETIRED] = "retired",
};

/* ---- families ---- */

/* How a wire's family (column) goes with a base's (row): '=' alike, '+' unlike but workable, '-' not: brittle compounds, no
 * solubility, or melting points too far apart. Common practice. */
static const char suits[EM_N_FAMILY][EM_N_FAMILY + 1] =
{
  /* wire:                          L  T  M  A  P  G  F  I  N  C  U  Al */
  [EM_FAMILY_LOW_ALLOY]             = "=++++++-+++-",
  [EM_FAMILY_TOOL_STEEL]            = "+=++++--+++-",
  [EM_FAMILY_STAINLESS_MARTENSITIC] = "++=+++--+++-",
  [EM_FAMILY_STAINLESS_AUSTENITIC]  = "+++=++--+++-",
  [EM_FAMILY_STAINLESS_PH]          = "++++=+--+++-",
  [EM_FAMILY_MARAGING]              = "+++++=--+++-",
  [EM_FAMILY_FREE_MACHINING]        = "=+++++=-+++-",
  [EM_FAMILY_CAST_IRON]             = "+--+---==-+-",
  [EM_FAMILY_NICKEL]                = "---+----=++-",
  [EM_FAMILY_COBALT]                = "---+----+=--",
  [EM_FAMILY_COPPER]                = "--------+-=-",
  [EM_FAMILY_ALUMINIUM]             = "-----------=",
};

#define FAMILY(which) (1u << (which))

/* Iron with carbon enough to harden, or plated on such. */
static const unsigned hardening_families = FAMILY (EM_FAMILY_LOW_ALLOY) | FAMILY (EM_FAMILY_TOOL_STEEL) | FAMILY (EM_FAMILY_STAINLESS_MARTENSITIC)
                                           | FAMILY (EM_FAMILY_FREE_MACHINING);
static const unsigned stainless_families = FAMILY (EM_FAMILY_STAINLESS_MARTENSITIC) | FAMILY (EM_FAMILY_STAINLESS_AUSTENITIC)
                                           | FAMILY (EM_FAMILY_STAINLESS_PH);
static const unsigned iron_families = FAMILY (EM_FAMILY_LOW_ALLOY) | FAMILY (EM_FAMILY_TOOL_STEEL) | FAMILY (EM_FAMILY_STAINLESS_MARTENSITIC)
                                      | FAMILY (EM_FAMILY_STAINLESS_AUSTENITIC) | FAMILY (EM_FAMILY_STAINLESS_PH) | FAMILY (EM_FAMILY_MARAGING)
                                      | FAMILY (EM_FAMILY_FREE_MACHINING) | FAMILY (EM_FAMILY_CAST_IRON);
/* Carbon equivalents and the preheats built on them are of these. */
static const unsigned equivalent_families = FAMILY (EM_FAMILY_LOW_ALLOY) | FAMILY (EM_FAMILY_FREE_MACHINING);

static bool
is_of (EmFamily family, unsigned families)
{
  return (families & FAMILY (family)) != 0;
}

/* ---- estimates ---- */

/* Outside the limits of a relation that was never for this family is better told as not applicable. */
static void
narrow (EmEstimate *estimate, bool is_of_family)
{
  if (!is_of_family && estimate->validity == EM_VALID_OUTSIDE)
    estimate->validity = EM_VALID_NOT_APPLICABLE;
}

static bool
has_martensite (EmPhase phase)
{
  return phase != EM_PHASE_AUSTENITE && phase != EM_PHASE_AUSTENITE_FERRITE && phase != EM_PHASE_FERRITE;
}

static void
estimate (const EmBase *base, const EmFiller *filler, EmProcess process, double section_mm, EmPairing *pairing)
{
  const double *deposit = pairing->deposit;
  bool is_equivalent = is_of (base->family, equivalent_families) && is_of (filler->family, equivalent_families);

  pairing->ce_iiw = em_steel_ce_iiw (deposit);
  pairing->cet = em_steel_cet (deposit);
  pairing->ms_degc = em_steel_ms_andrews (deposit);
  pairing->preheat_seferian_degc = em_steel_preheat_seferian (deposit, section_mm);
  pairing->preheat_en1011_degc = em_steel_preheat_en1011 (deposit, section_mm, ARC_HYDROGEN_ML, ARC_HEAT_KJ_PER_MM);
  pairing->martensite_hrc = em_steel_martensite_hrc (deposit);
  pairing->schaeffler = em_steel_schaeffler (deposit);
  pairing->wrc = em_steel_wrc1992 (deposit);
  narrow (&pairing->ce_iiw, is_equivalent);
  narrow (&pairing->cet, is_equivalent);
  narrow (&pairing->preheat_seferian_degc, is_equivalent);
  narrow (&pairing->preheat_en1011_degc, is_equivalent);
  /* The standard is of arc welding. */
  if (process != EM_PROCESS_GTAW)
    pairing->preheat_en1011_degc = (EmEstimate) { EM_ABSENT, EM_VALID_NOT_APPLICABLE, "process" };
  /* Carbon alone makes the hardness only of a deposit that is martensite, and not of one that nickel made so. */
  if (!is_of (filler->family, hardening_families))
    pairing->martensite_hrc = (EmEstimate) { EM_ABSENT, EM_VALID_NOT_APPLICABLE, "filler" };
  else if (pairing->schaeffler.is_inside && !has_martensite (pairing->schaeffler.phase))
    pairing->martensite_hrc = (EmEstimate) { EM_ABSENT, EM_VALID_NOT_APPLICABLE, "phase" };
}

static void
add_step (EmTrace *trace, const char *quantity, const char *symbol, EmEstimate result, const char *unit, const char *formula,
          const char *source, int n_inputs, const EmTraceTerm *inputs)
{
  if (result.validity == EM_VALID)
    em_trace_add (trace, EM_ROW_QUOTE, quantity, (EmTraceTerm) { symbol, result.value, unit }, formula, source, n_inputs, inputs);
}

static void
trace_pairing (const EmPairing *pairing, double section_mm, EmTrace *trace)
{
  const double *c = pairing->deposit;
  const EmTraceTerm inputs[] =
    {
      { "C", c[EM_EL_C], "%" }, { "Mn", c[EM_EL_MN], "%" }, { "Cr", c[EM_EL_CR], "%" }, { "Ni", c[EM_EL_NI], "%" },
      { "Mo", c[EM_EL_MO], "%" }, { "V", c[EM_EL_V], "%" }, { "Cu", c[EM_EL_CU], "%" },
    };
  const EmTraceTerm seferian_inputs[] = { inputs[0], inputs[1], inputs[2], inputs[3], inputs[4], { "t", section_mm, "mm" } };
  const EmTraceTerm cr_inputs[] = { inputs[2], inputs[4], { "Si", c[EM_EL_SI], "%" }, { "Nb", c[EM_EL_NB], "%" } };
  const EmTraceTerm ni_inputs[] = { inputs[3], inputs[0], inputs[1] };

  const EmTraceTerm en1011_inputs[] = { { "CET", pairing->cet.value, "%" }, { "d", section_mm, "mm" }, { "HD", ARC_HYDROGEN_ML, "ml/100 g" },
                                        { "Q", ARC_HEAT_KJ_PER_MM, "kJ/mm" } };
  const EmTraceTerm wrc_cr_inputs[] = { inputs[2], inputs[4], { "Nb", c[EM_EL_NB], "%" } };
  const EmTraceTerm wrc_ni_inputs[] = { inputs[3], inputs[0], { "N", c[EM_EL_N], "%" }, inputs[6] };

  if (trace == NULL)
    return;
  add_step (trace, "carbon_equivalent", "CE", pairing->ce_iiw, "%", "CE = C + Mn/6 + (Cr + Mo + V)/5 + (Ni + Cu)/15", "EN 1011-2", 7, inputs);
  add_step (trace, "cet", "CET", pairing->cet, "%", "CET = C + (Mn + Mo)/10 + (Cr + Cu)/20 + Ni/40", "EN 1011-2", 7, inputs);
  add_step (trace, "preheat_en1011", "Tp", pairing->preheat_en1011_degc, "°C",
            "Tp = 697 CET + 160·tanh(d/35) + 62·HD^0.35 + (53 CET − 32)·Q − 328", "EN 1011-2", 4, en1011_inputs);
  add_step (trace, "martensite_start", "Ms", pairing->ms_degc, "°C", "Ms = 539 − 423 C − 30.4 Mn − 17.7 Ni − 12.1 Cr − 7.5 Mo", "Andrews 1965", 5, inputs);
  add_step (trace, "preheat", "Tp", pairing->preheat_seferian_degc, "°C",
            "Tp = 350·√(Cc·(1 + 0.005·t) − 0.25), Cc = C + (40 (Mn + Cr) + 20 Ni + 28 Mo)/360", "Séférian 1959", 6, seferian_inputs);
  add_step (trace, "martensite_hardness", "HRC", pairing->martensite_hrc, "HRC", "HRC = 35 + 50 C", "DIN 17021-1", 1, inputs);
  em_trace_add (trace, EM_ROW_QUOTE, "chromium_equivalent", (EmTraceTerm) { "Cr_eq", pairing->schaeffler.cr_eq, "%" },
                "Cr_eq = Cr + Mo + 1.5 Si + 0.5 Nb", "Schaeffler 1949", 4, cr_inputs);
  em_trace_add (trace, EM_ROW_QUOTE, "nickel_equivalent", (EmTraceTerm) { "Ni_eq", pairing->schaeffler.ni_eq, "%" },
                "Ni_eq = Ni + 30 C + 0.5 Mn", "Schaeffler 1949", 3, ni_inputs);
  em_trace_add (trace, EM_ROW_QUOTE, "wrc_chromium_equivalent", (EmTraceTerm) { "Cr_eq", pairing->wrc.cr_eq, "%" },
                "Cr_eq = Cr + Mo + 0.7 Nb", "WRC-1992", 3, wrc_cr_inputs);
  em_trace_add (trace, EM_ROW_QUOTE, "wrc_nickel_equivalent", (EmTraceTerm) { "Ni_eq", pairing->wrc.ni_eq, "%" },
                "Ni_eq = Ni + 35 C + 20 N + 0.25 Cu", "WRC-1992", 4, wrc_ni_inputs);
}

/* ---- hardness ---- */

/* Catalogue first; else what its Vickers says on a scale that holds for it; else the carbon relation with its spread. */
static void
find_hardness (const EmFiller *filler, EmPairing *pairing)
{
  pairing->hardness_low_hrc = filler->hardness_low_hrc;
  pairing->hardness_high_hrc = filler->hardness_high_hrc;
  if (em_is_absent (pairing->hardness_low_hrc) && is_of (filler->family, hardening_families | FAMILY (EM_FAMILY_MARAGING)))
    {
      EmEstimate low = em_steel_hv_to_hrc (filler->hardness_low_hv), high = em_steel_hv_to_hrc (filler->hardness_high_hv);

      if (low.validity == EM_VALID && high.validity == EM_VALID)
        {
          pairing->hardness_low_hrc = low.value;
          pairing->hardness_high_hrc = high.value;
        }
    }
  pairing->hardness_low_hv = filler->hardness_low_hv;
  pairing->hardness_high_hv = filler->hardness_high_hv;
  pairing->is_hardness_from_catalogue = !em_is_absent (pairing->hardness_low_hrc) || !em_is_absent (filler->hardness_low_hv);
  if (pairing->is_hardness_from_catalogue || pairing->martensite_hrc.validity != EM_VALID)
    return;
  pairing->hardness_low_hrc = pairing->martensite_hrc.value - MARTENSITE_SPREAD_HRC;
  pairing->hardness_high_hrc = fmin (pairing->martensite_hrc.value + MARTENSITE_SPREAD_HRC, 67.0);
}

/* SOFTER, HARDER or HARDNESS_MATCHES, nominally: the middle of a deposit's range against the base's one figure. */
static EmReasons
compare_nominal (double low, double high, double base, double near)
{
  double difference = (low + high) / 2.0 - base;

  if (em_is_absent (difference))
    return 0;
  if (fabs (difference) <= near)
    return EM_REASON_BIT (EM_REASON_HARDNESS_MATCHES);
  return EM_REASON_BIT (difference < 0.0 ? EM_REASON_SOFTER : EM_REASON_HARDER);
}

/* On HRC where both are, else on HV. */
static EmReasons
judge_nominal (const EmFiller *filler, const EmPairing *pairing)
{
  bool is_off_scale = !em_is_absent (filler->hardness_low_hv);

  if (!em_is_absent (pairing->hardness_low_hrc) && !em_is_absent (pairing->base_hrc))
    return compare_nominal (pairing->hardness_low_hrc, pairing->hardness_high_hrc, pairing->base_hrc, HARDNESS_NEAR_HRC);
  return compare_nominal (is_off_scale ? filler->hardness_low_hv : em_steel_hrc_to_hv (filler->hardness_low_hrc).value,
                          is_off_scale ? filler->hardness_high_hv : em_steel_hrc_to_hv (filler->hardness_high_hrc).value,
                          pairing->base_hv, HARDNESS_NEAR_RATIO * pairing->base_hv);
}

/* A beam's fast quench leaves a hardening wire as quenched rather than at its nominal. One nominally softer that its carbon makes
 * as hard as the tool is told so in one sentence, not called softer and harder. */
static EmReasons
judge_hardness (const EmFiller *filler, EmProcess process, const EmPairing *pairing)
{
  double quenched_hrc = pairing->martensite_hrc.value - MARTENSITE_SPREAD_HRC;
  EmReasons reasons = judge_nominal (filler, pairing);

  if (process != EM_PROCESS_LASER || !is_of (filler->family, hardening_families) || pairing->martensite_hrc.validity != EM_VALID
      || !pairing->is_hardness_from_catalogue || !(quenched_hrc > pairing->hardness_high_hrc))
    return reasons;
  if ((reasons & EM_REASON_BIT (EM_REASON_SOFTER)) != 0 && quenched_hrc >= pairing->base_hrc)
    return EM_REASON_BIT (EM_REASON_LASER_ABOVE_TOOL);
  return reasons | EM_REASON_BIT (EM_REASON_LASER_HARDER);
}

/* ---- preheat ---- */

/* The metal's own practice, its lower end as the costing has it; for an arc without one, Séférian of deposit or base, whichever is warmer. Under a beam none but for
 * much carbon. NaN: none. */
static double
advise_degc (const EmBase *base, EmProcess process, const EmChemistry base_chemistry, double section_mm, const EmPairing *pairing)
{
  EmEstimate of_base = em_steel_preheat_seferian (base_chemistry, section_mm);

  if (process == EM_PROCESS_LASER)
    {
      if (!em_is_absent (base->laser_preheat_degc))
        return base->laser_preheat_degc;
      return base_chemistry[EM_EL_C] > CARBON_HIGH_PCT && is_of (base->family, hardening_families) ? base->preheat_low_degc : EM_ABSENT;
    }
  if (!em_is_absent (base->preheat_low_degc))
    return base->preheat_low_degc;
  if (!is_of (base->family, hardening_families))
    return EM_ABSENT;

  /* fmax passes over NaN */
  double estimated_degc = fmax (of_base.value, pairing->preheat_seferian_degc.value);

  return estimated_degc > 0.0 ? estimated_degc : EM_ABSENT;
}

static void
judge_preheat (const EmBase *base, EmProcess process, const EmChemistry base_chemistry, double section_mm, EmPairing *pairing)
{
  double advised_degc = advise_degc (base, process, base_chemistry, section_mm, pairing);
  bool is_carbon_high = base_chemistry[EM_EL_C] > CARBON_HIGH_PCT && is_of (base->family, hardening_families);

  pairing->preheat_ceiling_degc = base->temper_degc;
  /* Advised even where nobody says how warm. */
  pairing->is_preheat_advised = is_carbon_high || !em_is_absent (advised_degc);
  pairing->preheat_degc = advised_degc;
  if (!em_is_absent (advised_degc) && !em_is_absent (base->temper_degc))
    pairing->preheat_degc = fmax (0.0, fmin (advised_degc, base->temper_degc - BELOW_TEMPER_DEGC));
  pairing->reasons |= EM_REASON_BIT (pairing->is_preheat_advised ? EM_REASON_NEEDS_PREHEAT : EM_REASON_NO_PREHEAT);
}

/* ---- reasons ---- */

static EmReasons
reason_if (bool holds, EmReason reason)
{
  return holds ? EM_REASON_BIT (reason) : 0;
}

static EmReasons
judge_finish (const EmBase *base, const EmFiller *filler, bool is_alike, const EmPairing *pairing)
{
  EmReasons reasons = EM_REASON_BIT (is_alike && filler->polishes ? EM_REASON_POLISHES : EM_REASON_POLISH_DIFFERS)
                      | EM_REASON_BIT (is_alike && filler->textures ? EM_REASON_TEXTURES : EM_REASON_TEXTURE_DIFFERS);

  if (is_of (base->family, iron_families))
    reasons |= EM_REASON_BIT (filler->nitrides ? EM_REASON_NITRIDES : EM_REASON_NO_NITRIDE);
  return reasons
         | reason_if (filler->machines_easily, EM_REASON_MACHINES)
         | reason_if (!filler->machines_easily && pairing->hardness_high_hrc >= HARD_TO_MACHINE_HRC, EM_REASON_HARD_TO_MACHINE)
         | reason_if (filler->resists_corrosion, EM_REASON_RESISTS_CORROSION)
         | reason_if (filler->resists_wear, EM_REASON_RESISTS_WEAR)
         | reason_if (is_alike && base->family == EM_FAMILY_STAINLESS_MARTENSITIC && filler->resists_wear && filler->resists_corrosion,
                      EM_REASON_ABRASIVE_PLASTIC)
         | reason_if (!em_is_absent (filler->aged_low_hrc), EM_REASON_AGES_AFTER)
         | reason_if (is_of (base->family, stainless_families) && is_of (filler->family, iron_families)
                      && pairing->deposit[EM_EL_CR] < STAINLESS_CR_PCT, EM_REASON_RUSTS);
}

/* Among martensite, or so near its boundary that the diagram can't tell. */
static bool
is_near_martensite (const EmConstitution *field)
{
  return field->is_inside
         && (has_martensite (field->phase)
             || has_martensite (em_diagram_find (&em_diagram_schaeffler, field->cr_eq, fmax (field->ni_eq - FIELD_MARGIN_PCT, 0.0))));
}

static EmReasons
judge_soundness (const EmBase *base, const EmFiller *filler, const EmChemistry base_chemistry, const EmChemistry filler_chemistry,
                 const EmPairing *pairing)
{
  const double *deposit = pairing->deposit;
  bool is_iron = is_of (base->family, iron_families);
  bool is_hardening = is_of (base->family, hardening_families), is_deposit_hardening = is_of (filler->family, hardening_families);
  bool is_cast_risky = base->family == EM_FAMILY_CAST_IRON && filler->family != EM_FAMILY_NICKEL && filler->family != EM_FAMILY_COPPER;
  bool has_sulphur = base->family == EM_FAMILY_FREE_MACHINING || base_chemistry[EM_EL_S] >= SULPHUR_PCT;
  /* Copper and magnesium with zinc widen the freezing range of an aluminium alloy: 7075. */
  bool is_hot_short = base->family == EM_FAMILY_ALUMINIUM && base_chemistry[EM_EL_ZN] >= 4.0 && base_chemistry[EM_EL_CU] >= 1.0;
  bool is_austenite = pairing->schaeffler.phase == EM_PHASE_AUSTENITE && filler->family == EM_FAMILY_STAINLESS_AUSTENITIC;
  /* Hard martensite in a deposit from a soft wire: too much of the tool melted in. */
  bool is_mixed = filler->family == EM_FAMILY_STAINLESS_AUSTENITIC && is_near_martensite (&pairing->schaeffler);

  return reason_if ((is_hardening && base_chemistry[EM_EL_C] > CARBON_HIGH_PCT) || (is_deposit_hardening && deposit[EM_EL_C] >= CARBON_CRACKS_PCT)
                    || is_cast_risky || is_mixed, EM_REASON_CRACKS)
         | reason_if (is_austenite || has_sulphur || is_hot_short || (is_iron && deposit[EM_EL_C] >= 1.0), EM_REASON_HOT_CRACKS)
         | reason_if (filler->family == EM_FAMILY_STAINLESS_AUSTENITIC && (is_hardening || base->family == EM_FAMILY_MARAGING),
                      EM_REASON_AUSTENITIC_ON_TOOL)
         | reason_if ((filler->family == EM_FAMILY_STAINLESS_AUSTENITIC || filler->family == EM_FAMILY_NICKEL) && is_hardening,
                      EM_REASON_TOUGH_CUSHION)
         | reason_if (filler->family == EM_FAMILY_STAINLESS_AUSTENITIC && is_iron && base->family != EM_FAMILY_STAINLESS_AUSTENITIC
                      && base->family != EM_FAMILY_CAST_IRON && pairing->schaeffler.phase == EM_PHASE_AUSTENITE_FERRITE && !is_mixed,
                      EM_REASON_JOINS_UNLIKE)
         | reason_if (is_iron && filler_chemistry[EM_EL_CU] >= COPPER_PCT, EM_REASON_COPPER_CONTENT)
         | reason_if (is_iron && is_deposit_hardening && (pairing->ms_degc.value < MS_RETAINED_DEGC || deposit[EM_EL_C] > CARBON_HIGH_PCT),
                      EM_REASON_RETAINED_AUSTENITE)
         | reason_if (has_sulphur, EM_REASON_SULPHUR);
}

/* Alike, nominally about as hard or made so by the beam, for this process, and with no crack or dirt to fear. */
static bool
is_usual (const EmPairing *pairing)
{
  const EmReasons hard_enough = EM_REASON_BIT (EM_REASON_HARDNESS_MATCHES) | EM_REASON_BIT (EM_REASON_LASER_ABOVE_TOOL);
  const EmReasons troubles = EM_REASON_BIT (EM_REASON_CRACKS) | EM_REASON_BIT (EM_REASON_HOT_CRACKS) | EM_REASON_BIT (EM_REASON_RUSTS)
                             | EM_REASON_BIT (EM_REASON_RETAINED_AUSTENITE);

  return pairing->is_suited && (pairing->reasons & EM_REASON_BIT (EM_REASON_MATCHES_BASE)) != 0 && (pairing->reasons & hard_enough) != 0
         && (pairing->reasons & troubles) == 0;
}

/* A wire of beryllium copper is for tools of it: for any other metal there are wires that do without its fume. 0.1 % is where
 * safety data sheets name a carcinogen as an ingredient (29 CFR 1910.1200, appendix A, from memory). */
static bool
brings_beryllium (const EmChemistry base, const EmChemistry filler)
{
  return filler[EM_EL_BE] >= 0.1 && base[EM_EL_BE] < 0.1;
}

/*
 * em_steel_pair:
 * @dilution_ratio: share of base in the weld, 0 … 1
 * @base_hrc: hardness of this tool; NaN: the catalogue's middle
 * @section_mm: thickness of steel at the weld; NaN: 25
 * @trace: or NULL
 *
 * Compositions are the middle of their ranges. Preheat advised stays 25 °C below the last temper. Ruling out for stock, sizes
 * and price is the comparison's.
 */
void
em_steel_pair (const EmBase *base, const EmFiller *filler, EmProcess process, double dilution_ratio, double base_hrc, double section_mm,
               EmPairing *out_pairing, EmTrace *trace)
{
  EmChemistry base_chemistry, filler_chemistry;
  char suit;
  bool has_process = (filler->processes & (1u << process)) != 0;
  EmPairing pairing = { .base_hrc = em_is_absent (base_hrc) ? (base->hardness_low_hrc + base->hardness_high_hrc) / 2.0 : base_hrc };

  if (em_is_absent (section_mm))
    section_mm = SECTION_PRESET_MM;
  em_composition_middle (&base->composition, base_chemistry);
  em_composition_middle (&filler->composition, filler_chemistry);
  suit = brings_beryllium (base_chemistry, filler_chemistry) ? '-' : suits[base->family][filler->family];
  em_steel_deposit (base_chemistry, filler_chemistry, dilution_ratio, pairing.deposit);
  estimate (base, filler, process, section_mm, &pairing);
  pairing.base_hv = em_is_absent (pairing.base_hrc) ? (base->hardness_low_hv + base->hardness_high_hv) / 2.0
                                                    : em_steel_hrc_to_hv (pairing.base_hrc).value;
  find_hardness (filler, &pairing);
  pairing.is_suited = suit != '-' && has_process;
  pairing.reasons = EM_REASON_BIT (suit == '=' ? EM_REASON_MATCHES_BASE : EM_REASON_DISSIMILAR);
  pairing.reasons |= judge_hardness (filler, process, &pairing);
  judge_preheat (base, process, base_chemistry, section_mm, &pairing);
  pairing.reasons |= judge_finish (base, filler, suit == '=', &pairing);
  pairing.reasons |= judge_soundness (base, filler, base_chemistry, filler_chemistry, &pairing);
  pairing.reasons |= reason_if (suit == '-', EM_REASON_WRONG_FAMILY) | reason_if (!has_process, EM_REASON_WRONG_PROCESS);
  pairing.reasons |= reason_if (is_usual (&pairing), EM_REASON_USUAL);
  trace_pairing (&pairing, section_mm, trace);
  *out_pairing = pairing;
}
