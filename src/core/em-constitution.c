/* em-constitution: chromium and nickel equivalents and the field they fall in.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-constitution.h"

/* Names for the machine: command line and files. */
const char *const em_phase_ids[EM_N_PHASE] =
{
  [EM_PHASE_MARTENSITE] = "martensite",
  [EM_PHASE_AUSTENITE_MARTENSITE] = "austenite-martensite",
  [EM_PHASE_AUSTENITE] = "austenite",
  [EM_PHASE_AUSTENITE_FERRITE] = "austenite-ferrite",
  [EM_PHASE_FERRITE] = "ferrite",
  [EM_PHASE_MARTENSITE_FERRITE] = "martensite-ferrite",
  [EM_PHASE_AUSTENITE_MARTENSITE_FERRITE] = "austenite-martensite-ferrite",
  [EM_PHASE_FERRITE_MARTENSITE] = "ferrite-martensite",
  [EM_PHASE_UNKNOWN] = "unknown",
};

/* Corners shared by neighbouring fields. The ferrite line from (18, 12.15) up is Séférian's 0 %, Cr_eq = 0.93 Ni_eq + 6.7;
 * the others are from memory of Schaeffler's figure. */
#define AUSTENITE_LEFT   { 0.0, 24.5 }
#define AUSTENITE_TIP    { 18.0, 12.15 }
#define AUSTENITE_TOP    { 36.46, 32.0 }
#define MARTENSITE_LEFT  { 0.0, 18.0 }
#define MARTENSITE_TIP   { 12.0, 8.0 }
#define MARTENSITE_FOOT  { 7.5, 0.0 }
#define SOFT_LEFT        { 0.0, 3.0 }
#define SOFT_FOOT        { 7.0, 0.0 }
#define FERRITE_FOOT     { 13.0, 0.0 }
#define FERRITE_LOW      { 17.0, 3.8 }
#define FERRITE_MIDDLE   { 23.5, 5.9 }
#define FERRITE_RIGHT    { 40.0, 13.5 }

static const EmRegion schaeffler_regions[] =
{
  { EM_PHASE_AUSTENITE, 4, { { 0.0, 32.0 }, AUSTENITE_TOP, AUSTENITE_TIP, AUSTENITE_LEFT } },
  { EM_PHASE_AUSTENITE_MARTENSITE, 4, { AUSTENITE_LEFT, AUSTENITE_TIP, MARTENSITE_TIP, MARTENSITE_LEFT } },
  { EM_PHASE_MARTENSITE, 5, { MARTENSITE_LEFT, MARTENSITE_TIP, MARTENSITE_FOOT, SOFT_FOOT, SOFT_LEFT } },
  { EM_PHASE_FERRITE_MARTENSITE, 3, { SOFT_LEFT, SOFT_FOOT, { 0.0, 0.0 } } },
  { EM_PHASE_MARTENSITE_FERRITE, 4, { MARTENSITE_TIP, FERRITE_LOW, FERRITE_FOOT, MARTENSITE_FOOT } },
  { EM_PHASE_AUSTENITE_MARTENSITE_FERRITE, 4, { AUSTENITE_TIP, FERRITE_MIDDLE, FERRITE_LOW, MARTENSITE_TIP } },
  { EM_PHASE_AUSTENITE_FERRITE, 5, { AUSTENITE_TIP, AUSTENITE_TOP, { 40.0, 32.0 }, FERRITE_RIGHT, FERRITE_MIDDLE } },
  { EM_PHASE_FERRITE, 5, { FERRITE_LOW, FERRITE_MIDDLE, FERRITE_RIGHT, { 40.0, 0.0 }, FERRITE_FOOT } },
};

const EmDiagram em_diagram_schaeffler =
{
  "schaeffler", EM_N ("Schaeffler diagram, boundaries approximate"), "Schaeffler 1949", 0.0, 40.0, 0.0, 32.0,
  sizeof schaeffler_regions / sizeof schaeffler_regions[0], schaeffler_regions,
};

/* Ferrite number 0 from about (17, 11.7) to (23.3, 18), from memory of the WRC-1992 figure. */
#define FN_0_LEFT { 17.0, 11.7 }
#define FN_0_TOP  { 23.3, 18.0 }

static const EmRegion wrc1992_regions[] =
{
  { EM_PHASE_AUSTENITE, 3, { { 17.0, 18.0 }, FN_0_TOP, FN_0_LEFT } },
  { EM_PHASE_AUSTENITE_FERRITE, 5, { FN_0_LEFT, FN_0_TOP, { 31.0, 18.0 }, { 31.0, 9.0 }, { 17.0, 9.0 } } },
};

const EmDiagram em_diagram_wrc1992 =
{
  "wrc-1992", EM_N ("WRC-1992 diagram, boundaries approximate"), "Kotecki and Siewert, Welding Journal 71 (1992) 171-s", 17.0, 31.0, 9.0, 18.0,
  sizeof wrc1992_regions / sizeof wrc1992_regions[0], wrc1992_regions,
};

/* Whether the ring holds the point: a ray to the right crosses it an odd number of times. Half-open, so a point on a shared
 * edge belongs to one field only. */
static bool
region_holds (const EmRegion *region, double cr_eq, double ni_eq)
{
  bool is_inside = false;

  for (int i = 0, j = region->n_points - 1; i < region->n_points; j = i++)
    {
      /* From the lower corner up, so that two fields reckon their shared edge alike to the last bit. */
      bool is_upward = region->point[i].ni_eq < region->point[j].ni_eq;
      EmConstitutionPoint a = region->point[is_upward ? i : j], b = region->point[is_upward ? j : i];

      if ((a.ni_eq > ni_eq) != (b.ni_eq > ni_eq)
          && cr_eq < a.cr_eq + (b.cr_eq - a.cr_eq) * (ni_eq - a.ni_eq) / (b.ni_eq - a.ni_eq))
        is_inside = !is_inside;
    }
  return is_inside;
}

/*
 * em_diagram_find:
 * @cr_eq, @ni_eq: equivalents, percent; anything, NaN too
 *
 * Returns the field. The box is closed below and left, open above and right.
 */
EmPhase
em_diagram_find (const EmDiagram *diagram, double cr_eq, double ni_eq)
{
  for (int i = 0; i < diagram->n_regions; i++)
    if (region_holds (&diagram->region[i], cr_eq, ni_eq))
      return diagram->region[i].phase;
  return EM_PHASE_UNKNOWN;
}

/* At least half iron: what both diagrams are about. Finite too. */
static bool
is_iron_based (const EmChemistry c)
{
  for (int i = 0; i < EM_N_ELEMENT; i++)
    if (!isfinite (c[i]))
      return false;
  return c[EM_EL_FE] >= 50.0;
}

/*
 * em_steel_schaeffler:
 *
 * Cr_eq = Cr + Mo + 1.5 Si + 0.5 Nb; Ni_eq = Ni + 30 C + 0.5 Mn (Schaeffler 1949). Quoted limits C < 0.2, Si ≤ 1, Mn < 4,
 * Mo ≤ 3, Nb < 1.5: outside them is_inside is false, the equivalents still stand, the field is EM_PHASE_UNKNOWN and the ferrite
 * NaN. Ferrite by Séférian, 3·(Cr_eq − 0.93 Ni_eq − 6.7), only where austenite is, and up to 20 %; else NaN.
 */
EmConstitution
em_steel_schaeffler (const EmChemistry c)
{
  EmConstitution result =
    {
      .cr_eq = c[EM_EL_CR] + c[EM_EL_MO] + 1.5 * c[EM_EL_SI] + 0.5 * c[EM_EL_NB],
      .ni_eq = c[EM_EL_NI] + 30.0 * c[EM_EL_C] + 0.5 * c[EM_EL_MN],
      .phase = EM_PHASE_UNKNOWN, .ferrite_pct = EM_ABSENT,
    };

  if (!is_iron_based (c) || c[EM_EL_C] >= 0.2 || c[EM_EL_SI] > 1.0 || c[EM_EL_MN] >= 4.0 || c[EM_EL_MO] > 3.0 || c[EM_EL_NB] >= 1.5)
    return result;
  result.phase = em_diagram_find (&em_diagram_schaeffler, result.cr_eq, result.ni_eq);
  result.is_inside = result.phase != EM_PHASE_UNKNOWN;
  if (result.phase == EM_PHASE_AUSTENITE)
    result.ferrite_pct = 0.0;
  else if (result.phase == EM_PHASE_AUSTENITE_FERRITE)
    {
      double ferrite_pct = 3.0 * (result.cr_eq - 0.93 * result.ni_eq - 6.7);

      result.ferrite_pct = ferrite_pct <= 20.0 ? fmax (ferrite_pct, 0.0) : EM_ABSENT;
    }
  return result;
}

/*
 * em_steel_wrc1992:
 *
 * Cr_eq = Cr + Mo + 0.7 Nb; Ni_eq = Ni + 35 C + 20 N + 0.25 Cu (Kotecki and Siewert 1992). Limits from memory: Mn ≤ 10, Mo ≤ 3,
 * N ≤ 0.2, Si ≤ 1. The diagram tells a ferrite number and not a percentage, so ferrite_pct stays NaN. Martensite is not on it.
 */
EmConstitution
em_steel_wrc1992 (const EmChemistry c)
{
  EmConstitution result =
    {
      .cr_eq = c[EM_EL_CR] + c[EM_EL_MO] + 0.7 * c[EM_EL_NB],
      .ni_eq = c[EM_EL_NI] + 35.0 * c[EM_EL_C] + 20.0 * c[EM_EL_N] + 0.25 * c[EM_EL_CU],
      .phase = EM_PHASE_UNKNOWN, .ferrite_pct = EM_ABSENT,
    };

  if (!is_iron_based (c) || c[EM_EL_MN] > 10.0 || c[EM_EL_MO] > 3.0 || c[EM_EL_N] > 0.2 || c[EM_EL_SI] > 1.0)
    return result;
  result.phase = em_diagram_find (&em_diagram_wrc1992, result.cr_eq, result.ni_eq);
  result.is_inside = result.phase != EM_PHASE_UNKNOWN;
  return result;
}
