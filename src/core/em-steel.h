/* em-steel: what base, wire and dilution make: deposit chemistry and published estimates of it.
 *
 * Every estimate says whether its inputs lie within the published limits; outside them the
 * value is NaN and the window says so in words. All are estimates.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-catalogue.h"
#include "em-trace.h"

typedef enum { EM_VALID, EM_VALID_OUTSIDE /* published limits */, EM_VALID_NOT_APPLICABLE /* the relation is not for this family */ } EmValidity;

typedef struct
{
  double      value;        /* NaN unless valid */
  EmValidity  validity;
  const char *limited_by;   /* element id or other static name outside its limits, or NULL */
} EmEstimate;

typedef enum
{
  EM_PHASE_MARTENSITE, EM_PHASE_AUSTENITE_MARTENSITE, EM_PHASE_AUSTENITE, EM_PHASE_AUSTENITE_FERRITE, EM_PHASE_FERRITE,
  EM_PHASE_MARTENSITE_FERRITE, EM_PHASE_AUSTENITE_MARTENSITE_FERRITE, EM_PHASE_FERRITE_MARTENSITE, EM_PHASE_UNKNOWN, EM_N_PHASE
} EmPhase;

/* D·base + (1 − D)·filler, by element. dilution_ratio in [0, 1]. */
void em_steel_deposit (const EmChemistry base, const EmChemistry filler, double dilution_ratio, EmChemistry out_deposit);

EmEstimate em_steel_ce_iiw (const EmChemistry c);
EmEstimate em_steel_cet (const EmChemistry c);
EmEstimate em_steel_ms_andrews (const EmChemistry c);                      /* °C */
EmEstimate em_steel_preheat_seferian (const EmChemistry c, double section_mm);  /* °C; 0 when none needed */
EmEstimate em_steel_preheat_en1011 (const EmChemistry c, double section_mm, double hydrogen_ml_per_100g, double heat_kj_per_mm);
EmEstimate em_steel_martensite_hrc (const EmChemistry c);                  /* capped at 67 */
EmEstimate em_steel_hrc_to_hv (double hrc);                                /* ASTM E140 table 1, 20 … 68 */
EmEstimate em_steel_hv_to_hrc (double hv);
EmEstimate em_steel_hb_to_hrc (double hb);                                 /* ASTM E140 table 1, 226 … 739 HBW */

typedef struct
{
  double      cr_eq, ni_eq;
  EmPhase     phase;            /* UNKNOWN unless is_inside */
  double      ferrite_pct;      /* Schaeffler's only; NaN where the diagram tells none */
  double      ferrite_number;   /* WRC-1992's only; NaN likewise */
  bool        is_inside;        /* chemistry and point both */
  const char *limited_by;       /* element id outside the published limits, or NULL: inside, or the point outside the box */
} EmConstitution;

EmConstitution em_steel_schaeffler (const EmChemistry c);
EmConstitution em_steel_wrc1992 (const EmChemistry c);

/* Plain-words advice as codes; the words room has the sentences. */
typedef enum
{
  /* for */
  EM_REASON_USUAL, /* what the trade would take first (common practice): alike, about as hard, nothing that cracks */
  EM_REASON_MATCHES_BASE, EM_REASON_HARDNESS_MATCHES, EM_REASON_POLISHES, EM_REASON_TEXTURES, EM_REASON_NITRIDES, EM_REASON_MACHINES,
  EM_REASON_RESISTS_CORROSION, EM_REASON_RESISTS_WEAR, EM_REASON_NO_PREHEAT, EM_REASON_TOUGH_CUSHION, EM_REASON_AGES_AFTER,
  EM_REASON_LASER_HARDER, /* fast quench leaves it harder than nominal (common practice) */
  EM_REASON_LASER_ABOVE_TOOL, /* and so harder than the tool, though nominally softer; instead of SOFTER and LASER_HARDER */
  EM_REASON_ABRASIVE_PLASTIC, /* stainless on stainless mold steel (common practice) */
  EM_REASON_JOINS_UNLIKE,
  EM_REASON_CHEAPEST,
  /* against */
  EM_REASON_SOFTER, EM_REASON_HARDER, EM_REASON_CRACKS, EM_REASON_NEEDS_PREHEAT, EM_REASON_HOT_CRACKS, EM_REASON_POLISH_DIFFERS,
  EM_REASON_TEXTURE_DIFFERS, EM_REASON_NO_NITRIDE, EM_REASON_HARD_TO_MACHINE, EM_REASON_RUSTS, EM_REASON_DISSIMILAR, EM_REASON_AUSTENITIC_ON_TOOL,
  EM_REASON_COPPER_CONTENT, EM_REASON_RETAINED_AUSTENITE, EM_REASON_SULPHUR,
  /* ruled out */
  EM_REASON_WRONG_PROCESS, EM_REASON_WRONG_FAMILY, EM_REASON_NOT_STOCKED, EM_REASON_NO_SIZE_FITS, EM_REASON_RETIRED,
  EM_N_REASON
} EmReason;

extern const char *const em_reason_ids[EM_N_REASON];
/* 64 bits: set of reasons. */
typedef uint64_t EmReasons;
#define EM_REASON_BIT(reason) (UINT64_C (1) << (reason))
#define EM_REASONS_FOR      (EM_REASON_BIT (EM_REASON_SOFTER) - 1)
#define EM_REASONS_RULE_OUT (~(EM_REASON_BIT (EM_REASON_WRONG_PROCESS) - 1))

typedef struct
{
  EmChemistry    deposit;
  EmEstimate     ce_iiw, cet, ms_degc, preheat_seferian_degc, preheat_en1011_degc, martensite_hrc;
  EmConstitution schaeffler, wrc;
  double         hardness_low_hrc, hardness_high_hrc;   /* of the deposit, catalogue first; NaN: not on the scale */
  double         hardness_low_hv, hardness_high_hv;     /* the catalogue's, for deposits off the HRC scale; NaN */
  bool           is_hardness_from_catalogue;
  double         base_hrc;                              /* compared with; NaN: not on the scale */
  double         base_hv;                               /* NaN: not known */
  bool           is_preheat_advised;
  double         preheat_degc;                          /* NaN: none */
  double         preheat_ceiling_degc;                  /* last tempering temperature; NaN */
  bool           is_suited;                             /* family pairing, process */
  EmReasons      reasons;
} EmPairing;

/* The whole judgement of base and wire by one process. base_hrc NaN: catalogue middle; section_mm NaN: 25. */
void em_steel_pair (const EmBase *base, const EmFiller *filler, EmProcess process, double dilution_ratio, double base_hrc, double section_mm,
                    EmPairing *out_pairing, EmTrace *trace);
