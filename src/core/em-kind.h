/* em-kind: a feature kind reduced to one small interface.
 *
 * A kind is one file, kinds/em-kind-<id>.c, and one row of em_kinds[]. All later
 * stages see only EmShape: height H, width w(z) across the tracks, track length
 * l(z) along them for z in [0, H], net volume in closed form, coated area, edge
 * to cap. The closed form and the integral of w(z)·l(z) agree for every kind.
 * Window, paper, file and notes read the field table, so a new kind appears in
 * all of them without a change there.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-fault.h"

#include <stdint.h>

enum
{
  EM_FIELD_MAX = 6,      /* fields of one kind; each more takes 25 bytes of every feature */
  EM_SHAPE_MAX = 12,     /* private numbers of one shape */
  EM_OUTLINE_MAX = 400,  /* points of one drawing */
  EM_OUTLINE_DIM_MAX = 6
};

typedef enum
{
  EM_QUANTITY_LENGTH,  /* mm */
  EM_QUANTITY_ANGLE,   /* degrees */
  EM_QUANTITY_AREA,    /* mm² */
  EM_QUANTITY_COUNT,   /* whole number */
  EM_QUANTITY_CHOICE   /* index into options */
} EmQuantityType;

typedef struct EmField EmField;
typedef struct EmKind  EmKind;
typedef struct EmShape EmShape;

struct EmField
{
  const char        *id;          /* stable: file attribute, TSV name, fault field */
  const char        *symbol;      /* as in formulas and drawings: "l", "a", "θ" */
  const char        *name;        /* EM_N English label, sentence case, no unit */
  EmQuantityType     quantity;
  double             low;         /* limits in SI-metric; low itself is allowed only if low_allowed */
  double             high;        /* high itself is always allowed */
  bool               low_allowed;
  double             preset;      /* used when absent; NaN: no preset */
  bool               is_required; /* absent and no preset is EM_FAULT_MISSING (when shown) */
  const char *const *options;     /* choice: NULL-terminated stable option ids */
  const char *const *option_names;/* choice: EM_N labels, same order */
  const char        *shown_when;  /* id of a choice field of the same kind, or NULL: always shown */
  uint32_t           shown_mask;  /* bit i set: shown when that choice is option i */
};

struct EmShape
{
  const EmKind *kind;
  double height_mm;        /* H: thickness of weld, normal to the base metal */
  double net_volume_mm3;   /* closed form, one instance */
  double coated_area_mm2;  /* base metal covered */
  double cap_edge_mm;      /* length of sharp edge to cap */
  double reach_extent_mm;  /* largest extent, for masking and settings */
  double p[EM_SHAPE_MAX];  /* the kind's own solved numbers */
};

/* A drawing of one instance, in mm, x to the right and y up, as core numbers:
 * the paper room's drawing code strokes it. Runs of points form closed rings or open lines. */
typedef enum
{
  EM_INK_BASE,     /* sound metal: hatched ring */
  EM_INK_METAL,    /* metal to add: filled ring */
  EM_INK_HIDDEN,   /* dashed line */
  EM_INK_CENTRE    /* chain line */
} EmInk;

typedef struct
{
  double x_mm, y_mm;
  EmInk  ink;
  bool   is_start;  /* first point of a ring or line */
} EmOutlinePoint;

typedef struct
{
  double x0_mm, y0_mm, x1_mm, y1_mm; /* what is measured */
  double offset_mm;                  /* dimension line drawn this far to the left of 0→1 */
  int    field;                      /* index in the kind's field table; -1: derived */
  double value;                      /* mm or degrees, as shown */
  double turn;                       /* not 0: the length of an arc, so many radians counter-clockwise about the origin from 0 to 1;
                                        of an angle: 0 is its apex, 1 where its arc begins on one leg, and turn goes to the other */
  int    legs;                       /* of an angle, those that are no edge of the drawing: 0, 1 the second, 2 both */
} EmOutlineDim;

typedef struct
{
  int            n_points;
  EmOutlinePoint point[EM_OUTLINE_MAX];
  int            n_dims;
  EmOutlineDim   dim[EM_OUTLINE_DIM_MAX];
} EmOutline;

typedef enum { EM_VIEW_SECTION, EM_VIEW_PLAN } EmView;

struct EmKind
{
  const char    *id;       /* "edge-nick"; stable */
  const char    *name;     /* EM_N "Edge nick" */
  const char    *summary;  /* EM_N one line: what it is, for pickers and empty states */
  const EmField *fields;
  int            n_fields;
  bool           melts_out;    /* by default fused clean before filler goes on */
  bool           caps_edges;   /* by default its sharp edges are capped */
  bool           sits_in_slot; /* slot width and depth make sense */
  bool           is_mirrored;  /* layer gives the right half of a section whose left is its image in x = 0 */
  bool         (*is_round) (const EmShape *shape);   /* tracks run round the origin of the plan; NULL: they run along it */

  /* value[i] belongs to fields[i], presets already filled in, NaN where absent or
   * not shown. Single-field limits are already checked; solve checks how fields
   * fit together. Fills every member of *out_shape but kind. */
  EmStatus (*solve)     (const double *value, EmShape *out_shape, EmFault *out_fault);
  double   (*width_mm)  (const EmShape *shape, double z_mm);   /* w(z), 0 ≤ z ≤ H */
  double   (*length_mm) (const EmShape *shape, double z_mm);   /* l(z) */
  /* The section across the tracks, or the plan. */
  void     (*outline)   (const EmShape *shape, EmView view, EmOutline *out_outline);
  /* Points of the layer boundary at height z in the section view, left to right;
   * writes at most max points (x, y pairs) and returns how many; z may exceed H by stock. */
  int      (*layer)     (const EmShape *shape, double z_mm, int max, double *out_xy_mm);
};

extern const EmKind *const em_kinds[];
extern const int           em_n_kinds;

/* NULL when there is none. */
const EmKind *em_kind_find (const char *id);

/* Index of the field, or -1. */
int em_kind_field (const EmKind *kind, const char *field_id);

/* Whether field is shown given the choices in value[]. */
bool em_field_is_shown (const EmKind *kind, int field, const double *value);

/* Fills presets, checks each shown field's limits, then the kind's own rules.
 * value: EM_FIELD_MAX numbers, NaN where absent. Returns EM_FAULT_MISSING, _NOT_FINITE,
 * _RANGE or _CONFLICT naming the field; *out_shape untouched then. */
EmStatus em_shape_solve (const EmKind *kind, const double *value,
                         EmShape *out_shape, EmFault *out_fault);
