/* em-constitution: chromium and nickel equivalents and the field they fall in.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-constitution.h"

#include <stddef.h>

#define N_OF(table) ((int) (sizeof (table) / sizeof (table)[0]))

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

/* Corners shared by neighbouring fields of the 1949 sheet (Metal Progress 56, page 680-B): crossings of straight lines fitted to a
 * scan of it, as a published digitization gives them, fit within 0.02 equivalents. Two other digitizations, of later
 * reproductions, lie within 0.7 of these: that is what "approximate" means here. */
#define AUSTENITE_LEFT   { 0.0, 25.52 }
#define AUSTENITE_TIP    { 17.68, 11.29 }
#define AUSTENITE_TOP    { 34.73, 30.0 }
#define MARTENSITE_LEFT  { 0.0, 19.35 }
#define MARTENSITE_TIP   { 14.43, 7.72 }
#define MARTENSITE_FOOT  { 7.4, 0.0 }
#define SOFT_LEFT        { 0.0, 7.39 }
#define SOFT_FOOT        { 2.42, 0.0 }
#define FERRITE_FOOT     { 12.15, 0.0 }
#define FERRITE_LOW      { 20.58, 2.75 }
#define FERRITE_MIDDLE   { 26.07, 4.55 }
#define FERRITE_RIGHT    { 40.0, 9.1 }

static const EmRegion schaeffler_regions[] =
{
  { EM_PHASE_AUSTENITE, 4, { { 0.0, 30.0 }, AUSTENITE_TOP, AUSTENITE_TIP, AUSTENITE_LEFT } },
  { EM_PHASE_AUSTENITE_MARTENSITE, 4, { AUSTENITE_LEFT, AUSTENITE_TIP, MARTENSITE_TIP, MARTENSITE_LEFT } },
  { EM_PHASE_MARTENSITE, 5, { MARTENSITE_LEFT, MARTENSITE_TIP, MARTENSITE_FOOT, SOFT_FOOT, SOFT_LEFT } },
  { EM_PHASE_FERRITE_MARTENSITE, 3, { SOFT_LEFT, SOFT_FOOT, { 0.0, 0.0 } } },
  { EM_PHASE_MARTENSITE_FERRITE, 4, { MARTENSITE_TIP, FERRITE_LOW, FERRITE_FOOT, MARTENSITE_FOOT } },
  { EM_PHASE_AUSTENITE_MARTENSITE_FERRITE, 4, { AUSTENITE_TIP, FERRITE_MIDDLE, FERRITE_LOW, MARTENSITE_TIP } },
  { EM_PHASE_AUSTENITE_FERRITE, 5, { AUSTENITE_TIP, AUSTENITE_TOP, { 40.0, 30.0 }, FERRITE_RIGHT, FERRITE_MIDDLE } },
  { EM_PHASE_FERRITE, 5, { FERRITE_LOW, FERRITE_MIDDLE, FERRITE_RIGHT, { 40.0, 0.0 }, FERRITE_FOOT } },
};

/* Percent of ferrite; of the same sheet and digitization. The outer two bound the field and are drawn by it. */
static const EmContour schaeffler_contours[] =
{
  { 0.0, { 7.4, 0.0 }, AUSTENITE_TOP, false },
  { 5.0, { 14.92, 7.32 }, { 37.37, 30.0 }, true },
  { 10.0, { 15.59, 6.77 }, { 40.0, 28.37 }, true },
  { 20.0, { 16.51, 6.03 }, { 40.0, 23.07 }, true },
  { 40.0, { 17.41, 5.3 }, { 40.0, 19.66 }, true },
  { 80.0, { 18.63, 4.32 }, { 40.0, 14.9 }, true },
  { 100.0, FERRITE_FOOT, FERRITE_RIGHT, false },
};

const EmDiagram em_diagram_schaeffler =
{
  "schaeffler", EM_N ("Schaeffler diagram, boundaries approximate"), "Schaeffler, Metal Progress 56 (1949) 680-B", "%", 0.0, 40.0, 0.0, 30.0,
  N_OF (schaeffler_regions), schaeffler_regions, N_OF (schaeffler_contours), schaeffler_contours,
};

/* Ferrite number 0 of WRC-1992, a curve, by its corners; below (17.23, 12.47) drawn on straight to the edge, and above
 * (21.53, 17.74) too. From a published digitization of figure 6, grid residuals below 0.02, checked there against the paper's own
 * worked examples and table 1. */
#define FN_0_LEFT  { 17.0, 12.18 }
#define FN_0_A     { 17.6, 12.94 }
#define FN_0_B     { 18.57, 14.15 }
#define FN_0_C     { 19.61, 15.41 }
#define FN_0_D     { 20.52, 16.55 }
#define FN_0_E     { 21.17, 17.36 }
#define FN_0_TOP   { 21.78, 18.0 }

static const EmRegion wrc1992_regions[] =
{
  { EM_PHASE_AUSTENITE, 8, { { 17.0, 18.0 }, FN_0_TOP, FN_0_E, FN_0_D, FN_0_C, FN_0_B, FN_0_A, FN_0_LEFT } },
  { EM_PHASE_AUSTENITE_FERRITE, 10,
    { FN_0_LEFT, FN_0_A, FN_0_B, FN_0_C, FN_0_D, FN_0_E, FN_0_TOP, { 31.0, 18.0 }, { 31.0, 9.0 }, { 17.0, 9.0 } } },
};

/* Ferrite numbers, straight from lower left to upper right, as drawn; same digitization. Where a lower end lies on the left edge
 * the line would go on below the box's corner. */
static const EmContour wrc1992_contours[] =
{
  { 2.0, { 17.04, 10.9 }, { 22.15, 17.08 }, false },   { 4.0, { 17.04, 9.94 }, { 23.07, 17.05 }, false },
  { 6.0, { 17.04, 9.52 }, { 23.64, 17.01 }, false },   { 8.0, { 17.1, 9.06 }, { 24.31, 17.01 }, false },
  { 10.0, { 17.52, 9.05 }, { 24.93, 17.06 }, true },   { 12.0, { 18.05, 9.05 }, { 25.39, 17.03 }, false },
  { 14.0, { 18.33, 9.05 }, { 25.88, 17.02 }, false },  { 16.0, { 18.66, 9.05 }, { 26.32, 17.04 }, false },
  { 18.0, { 19.04, 9.05 }, { 26.57, 16.91 }, false },  { 20.0, { 19.42, 9.05 }, { 26.78, 16.75 }, true },
  { 22.0, { 19.75, 9.05 }, { 27.07, 16.59 }, false },  { 24.0, { 20.07, 9.05 }, { 27.3, 16.37 }, false },
  { 26.0, { 20.32, 9.05 }, { 27.48, 16.19 }, false },  { 28.0, { 20.58, 9.05 }, { 27.74, 16.01 }, false },
  { 30.0, { 20.85, 9.05 }, { 27.87, 15.88 }, true },   { 35.0, { 21.19, 9.05 }, { 28.2, 15.72 }, false },
  { 40.0, { 21.42, 9.05 }, { 28.43, 15.39 }, false },  { 45.0, { 21.63, 9.05 }, { 28.65, 15.15 }, false },
  { 50.0, { 21.84, 9.05 }, { 28.95, 14.86 }, true },   { 55.0, { 22.11, 9.05 }, { 29.13, 14.65 }, false },
  { 60.0, { 22.42, 9.05 }, { 29.34, 14.4 }, false },   { 65.0, { 22.72, 9.06 }, { 29.53, 14.13 }, false },
  { 70.0, { 22.95, 9.06 }, { 29.74, 13.81 }, true },   { 75.0, { 23.2, 9.06 }, { 30.0, 13.5 }, false },
  { 80.0, { 23.47, 9.06 }, { 30.15, 13.25 }, false },  { 85.0, { 23.79, 9.06 }, { 30.3, 12.98 }, false },
  { 90.0, { 24.16, 9.05 }, { 30.47, 12.63 }, false },  { 95.0, { 24.47, 9.05 }, { 30.61, 12.25 }, false },
  { 100.0, { 24.89, 9.05 }, { 30.7, 11.8 }, true },
};

const EmDiagram em_diagram_wrc1992 =
{
  "wrc-1992", EM_N ("WRC-1992 diagram"), "Kotecki and Siewert, Welding Journal 71 (1992) 171-s, figure 6", "FN", 17.0, 31.0, 9.0, 18.0,
  N_OF (wrc1992_regions), wrc1992_regions, N_OF (wrc1992_contours), wrc1992_contours,
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

/* ---- ferrite ---- */

static double
interpolate (double x, double x0, double y0, double x1, double y1)
{
  return y0 + (y1 - y0) * (x - x0) / (x1 - x0);
}

static double
contour_ni_eq (const EmContour *contour, double cr_eq)
{
  return interpolate (cr_eq, contour->start.cr_eq, contour->start.ni_eq, contour->end.cr_eq, contour->end.ni_eq);
}

static double
contour_cr_eq (const EmContour *contour, double ni_eq)
{
  return interpolate (ni_eq, contour->start.ni_eq, contour->start.cr_eq, contour->end.ni_eq, contour->end.cr_eq);
}

/* Percent, between the lines above and below the point; the point lies among austenite and ferrite. */
static double
schaeffler_ferrite (double cr_eq, double ni_eq)
{
  for (int i = 0; i + 1 < N_OF (schaeffler_contours); i++)
    {
      const EmContour *above = &schaeffler_contours[i], *below = above + 1;
      double high = contour_ni_eq (above, cr_eq), low = contour_ni_eq (below, cr_eq);

      if (ni_eq <= high && ni_eq >= low)
        return interpolate (ni_eq, high, above->value, low, below->value);
    }
  return EM_ABSENT;
}

/* Cr_eq of ferrite number 0 at this Ni_eq: the austenite's edge, corner by corner. NaN beyond them. */
static double
no_ferrite_cr_eq (double ni_eq)
{
  const EmConstitutionPoint edge[] = { FN_0_LEFT, FN_0_A, FN_0_B, FN_0_C, FN_0_D, FN_0_E, FN_0_TOP };

  for (int i = 0; i + 1 < N_OF (edge); i++)
    if (ni_eq <= edge[i + 1].ni_eq)   /* the first stretch is drawn on below its corner */
      return interpolate (ni_eq, edge[i].ni_eq, edge[i].cr_eq, edge[i + 1].ni_eq, edge[i + 1].cr_eq);
  return EM_ABSENT;
}

/* Between the two lines left and right of the point; NaN where figure 6 draws none: its caption forbids to draw them on.
 * Lines end at the top short of the box, so the space between two reaches as far as a line from end to end. */
static double
wrc1992_ferrite_number (double cr_eq, double ni_eq)
{
  double left = no_ferrite_cr_eq (ni_eq), left_value = 0.0, left_top = wrc1992_contours[0].end.ni_eq;

  if (cr_eq <= left)
    return 0.0;
  for (int i = 0; i < N_OF (wrc1992_contours); i++)
    {
      const EmContour *contour = &wrc1992_contours[i];
      double right = contour_cr_eq (contour, ni_eq);

      if (cr_eq <= right)
        {
          double top = interpolate (cr_eq, left, left_top, right, contour->end.ni_eq);

          return ni_eq <= top ? interpolate (cr_eq, left, left_value, right, contour->value) : EM_ABSENT;
        }
      left = right;
      left_value = contour->value;
      left_top = contour->end.ni_eq;
    }
  return EM_ABSENT;
}

/* ---- from chemistry ---- */

/* Above it, or at it where is_below, a diagram was not published for. */
typedef struct { EmElement element; double high_pct; bool is_below; } EmDiagramLimit;

/* As quoted by later handbooks; Schaeffler's own paper wasn't read. */
static const EmDiagramLimit schaeffler_limits[] =
  { { EM_EL_C, 0.2, true }, { EM_EL_SI, 1.0, false }, { EM_EL_MN, 4.0, true }, { EM_EL_MO, 3.0, false }, { EM_EL_NB, 1.5, true } };

/* Siewert, McCowan and Olson, Welding Journal 67 (1988) 289-s, conclusion 2; the 1992 paper keeps that one's welds. */
static const EmDiagramLimit wrc1992_limits[] =
  { { EM_EL_MN, 10.0, false }, { EM_EL_MO, 3.0, false }, { EM_EL_N, 0.2, false }, { EM_EL_SI, 1.0, false } };

/* The first element that is outside; NULL: none. Iron counts, at least half: what both diagrams are about. Written so that
 * NaN is outside. */
static const char *
element_outside (const EmChemistry c, const EmDiagramLimit *limits, int n_limits)
{
  if (!(c[EM_EL_FE] >= 50.0))
    return em_element_ids[EM_EL_FE];
  for (int i = 0; i < n_limits; i++)
    if (!(c[limits[i].element] < limits[i].high_pct || (!limits[i].is_below && c[limits[i].element] == limits[i].high_pct)))
      return em_element_ids[limits[i].element];
  return NULL;
}

/*
 * em_steel_schaeffler:
 *
 * Cr_eq = Cr + Mo + 1.5 Si + 0.5 Nb; Ni_eq = Ni + 30 C + 0.5 Mn (Schaeffler 1949). Quoted limits C < 0.2, Si ≤ 1, Mn < 4,
 * Mo ≤ 3, Nb < 1.5: outside them is_inside is false, the equivalents still stand, the field is EM_PHASE_UNKNOWN and the ferrite
 * NaN. Ferrite in percent by the sheet's own lines, only where austenite is without martensite; else NaN.
 */
EmConstitution
em_steel_schaeffler (const EmChemistry c)
{
  EmConstitution result =
    {
      .cr_eq = c[EM_EL_CR] + c[EM_EL_MO] + 1.5 * c[EM_EL_SI] + 0.5 * c[EM_EL_NB],
      .ni_eq = c[EM_EL_NI] + 30.0 * c[EM_EL_C] + 0.5 * c[EM_EL_MN],
      .phase = EM_PHASE_UNKNOWN, .ferrite_pct = EM_ABSENT, .ferrite_number = EM_ABSENT,
    };

  result.limited_by = element_outside (c, schaeffler_limits, N_OF (schaeffler_limits));
  if (result.limited_by != NULL)
    return result;
  result.phase = em_diagram_find (&em_diagram_schaeffler, result.cr_eq, result.ni_eq);
  result.is_inside = result.phase != EM_PHASE_UNKNOWN;
  if (result.phase == EM_PHASE_AUSTENITE)
    result.ferrite_pct = 0.0;
  else if (result.phase == EM_PHASE_AUSTENITE_FERRITE)
    result.ferrite_pct = schaeffler_ferrite (result.cr_eq, result.ni_eq);
  return result;
}

/*
 * em_steel_wrc1992:
 *
 * Cr_eq = Cr + Mo + 0.7 Nb; Ni_eq = Ni + 35 C + 20 N + 0.25 Cu (Kotecki and Siewert 1992). Limits Mn ≤ 10, Mo ≤ 3, N ≤ 0.2,
 * Si ≤ 1 (Siewert, McCowan and Olson 1988, conclusion 2). The diagram tells a ferrite number, which is no percentage, so
 * ferrite_pct stays NaN; the number is NaN where no lines are drawn. Of the welds it was drawn from, 84 % below 18 FN lay within
 * 2.5 FN and 70 % above within 9 FN (same paper, table 4). It has no martensite: that may lie beyond its lower left.
 */
EmConstitution
em_steel_wrc1992 (const EmChemistry c)
{
  EmConstitution result =
    {
      .cr_eq = c[EM_EL_CR] + c[EM_EL_MO] + 0.7 * c[EM_EL_NB],
      .ni_eq = c[EM_EL_NI] + 35.0 * c[EM_EL_C] + 20.0 * c[EM_EL_N] + 0.25 * c[EM_EL_CU],
      .phase = EM_PHASE_UNKNOWN, .ferrite_pct = EM_ABSENT, .ferrite_number = EM_ABSENT,
    };

  result.limited_by = element_outside (c, wrc1992_limits, N_OF (wrc1992_limits));
  if (result.limited_by != NULL)
    return result;
  result.phase = em_diagram_find (&em_diagram_wrc1992, result.cr_eq, result.ni_eq);
  result.is_inside = result.phase != EM_PHASE_UNKNOWN;
  if (result.is_inside)
    result.ferrite_number = wrc1992_ferrite_number (result.cr_eq, result.ni_eq);
  return result;
}
