/* em-constitution: fields of the Schaeffler and WRC-1992 diagrams, as data to classify by and to draw.
 *
 * The boundaries were measured from the published figures by others (see the tables) and are approximate, Schaeffler's by up to 0.7
 * equivalents: whoever draws or tells them says so. The fields of a diagram fill its box without gaps and do not overlap.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-steel.h"

enum { EM_REGION_POINT_MAX = 10 };

typedef struct { double cr_eq, ni_eq; } EmConstitutionPoint;

/* A closed ring of n_points corners. */
typedef struct
{
  EmPhase             phase;
  int                 n_points;
  EmConstitutionPoint point[EM_REGION_POINT_MAX];
} EmRegion;

/* A straight line of equal ferrite, from its lower end to its upper. */
typedef struct
{
  double              value;      /* percent, or ferrite number */
  EmConstitutionPoint start, end;
  bool                is_drawn;   /* among the few that a small picture has room for */
} EmContour;

typedef struct
{
  const char     *id;             /* "schaeffler" */
  const char     *name;           /* EM_N title */
  const char     *source;
  const char     *contour_unit;   /* "%", "FN" */
  double          cr_eq_low, cr_eq_high, ni_eq_low, ni_eq_high;   /* the box drawn */
  int             n_regions;
  const EmRegion *region;
  int             n_contours;
  const EmContour *contour;       /* rising */
} EmDiagram;

extern const EmDiagram em_diagram_schaeffler;
extern const EmDiagram em_diagram_wrc1992;

extern const char *const em_phase_ids[EM_N_PHASE];

/* The field a point lies in; EM_PHASE_UNKNOWN outside the box. */
EmPhase em_diagram_find (const EmDiagram *diagram, double cr_eq, double ni_eq);
