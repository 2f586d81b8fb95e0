/* em-kind-bore: a bore closed to its finished diameter.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-kind-parts.h"

enum { DIAMETER, WORN, BUILD, LENGTH, ARC };
enum { P_BASE_R, P_LENGTH, P_ARC };

static const EmField fields[] =
{
  EM_FIELD_SIZE ("diameter", "Df", EM_N ("Finished diameter"), 5000.0),
  EM_FIELD_OPTIONAL ("worn", "Dw", EM_N ("Worn diameter"), 5000.0),
  EM_FIELD_OPTIONAL ("build", "t", EM_N ("Build-up per side"), 100.0),
  EM_FIELD_SIZE ("length", "L", EM_N ("Length"), 2000.0),
  { .id = "arc", .symbol = "φ", .name = EM_N ("Arc to weld"), .quantity = EM_QUANTITY_ANGLE, .high = 360.0, .preset = 360.0 },
};

/* The worn diameter, or the build per side it stands for: exactly one of them. */
static EmStatus
check (const double *value, EmFault *out_fault)
{
  if (em_is_absent (value[WORN]) && em_is_absent (value[BUILD]))
    return em_fault_open (out_fault, true, false, em_fault_set (out_fault, EM_FAULT_MISSING, "worn", EM_ABSENT, value[DIAMETER], 5000.0));
  if (!em_is_absent (value[WORN]) && !em_is_absent (value[BUILD]))
    return em_fault_set_conflict (out_fault, "build", "worn", value[BUILD], EM_ABSENT, EM_ABSENT);
  if (value[WORN] <= value[DIAMETER])
    return em_fault_open (out_fault, true, false, em_fault_set_conflict (out_fault, "worn", "diameter", value[WORN], value[DIAMETER], 5000.0));
  if (value[BUILD] > value[DIAMETER] / 2.0)
    return em_fault_set_conflict (out_fault, "build", "diameter", value[BUILD], 0.0, value[DIAMETER] / 2.0);
  return EM_OK;
}

/* V = (φ/2)·(Rw² − Rf²)·L, written t·(Rw + Rf) to keep its digits where the build is thin. A build above the finished radius
 * is refused as a slip of the decimal mark. */
static EmStatus
solve (const double *value, EmShape *out_shape, EmFault *out_fault)
{
  EmStatus status = check (value, out_fault);

  if (status != EM_OK)
    return status;

  double arc = EM_RADIANS (value[ARC]), finished = value[DIAMETER] / 2.0;
  double t = em_is_absent (value[BUILD]) ? (value[WORN] - value[DIAMETER]) / 2.0 : value[BUILD], base = finished + t;

  out_shape->height_mm = t;
  out_shape->net_volume_mm3 = arc / 2.0 * t * (base + finished) * value[LENGTH];
  out_shape->coated_area_mm2 = arc * base * value[LENGTH];
  out_shape->cap_edge_mm = 0.0;
  out_shape->reach_extent_mm = fmax (2.0 * base, value[LENGTH]);
  out_shape->p[P_BASE_R] = base;
  out_shape->p[P_LENGTH] = value[LENGTH];
  out_shape->p[P_ARC] = arc;
  return EM_OK;
}

/* Tracks run round or along, whichever is longer halfway through the weld. */
static bool
runs_round (const EmShape *shape)
{
  return shape->p[P_ARC] * (shape->p[P_BASE_R] - shape->height_mm / 2.0) >= shape->p[P_LENGTH];
}

/* Layers are cylinders of radius base - z. */
static double
turn_mm (const EmShape *shape, double z_mm)
{
  return shape->p[P_ARC] * fmax (0.0, shape->p[P_BASE_R] - z_mm);
}

static double
width_mm (const EmShape *shape, double z_mm)
{
  return runs_round (shape) ? shape->p[P_LENGTH] : turn_mm (shape, z_mm);
}

static double
length_mm (const EmShape *shape, double z_mm)
{
  return runs_round (shape) ? turn_mm (shape, z_mm) : shape->p[P_LENGTH];
}

static int
layer (const EmShape *shape, double z_mm, int max, double *out_xy_mm)
{
  double r = fmax (0.0, shape->p[P_BASE_R] - z_mm);

  return em_layer_arc (max, out_xy_mm, 0, 0, r, r, EM_PI / 2 + shape->p[P_ARC] / 2, EM_PI / 2 - shape->p[P_ARC] / 2);
}

/* Section: square to the axis, rings and holes turned against each other. Plan: along it, in half. */
static void
outline (const EmShape *shape, EmView view, EmOutline *out)
{
  double base = shape->p[P_BASE_R], end = base - shape->height_mm, l = shape->p[P_LENGTH], arc = shape->p[P_ARC];
  double from = EM_PI / 2 + arc / 2, to = EM_PI / 2 - arc / 2, block = 1.6 * base;
  bool is_whole = arc > 2 * EM_PI * (1 - 1e-9);

  *out = (EmOutline) { 0 };
  if (view == EM_VIEW_SECTION)
    {
      em_outline_arc (out, EM_INK_BASE, true, 0, 0, block, block, 0, 2 * EM_PI);
      em_outline_arc (out, EM_INK_BASE, true, 0, 0, base, base, 2 * EM_PI, 0);
      em_outline_arc (out, EM_INK_METAL, true, 0, 0, end, end, from, to);
      em_outline_arc (out, EM_INK_METAL, is_whole, 0, 0, base, base, to, from);
      em_outline_dim (out, -end, 0, end, 0, 0, DIAMETER, 2 * end);
      em_outline_dim (out, -base, 0, base, 0, -0.3 * base, WORN, 2 * base);
      if (!is_whole)
        em_outline_angle (out, 0, 0, 0.6 * end, to, arc, 2, ARC);
      return;
    }
  em_outline_box (out, EM_INK_BASE, 0, base, l, block);
  em_outline_box (out, EM_INK_BASE, 0, -block, l, -base);
  em_outline_box (out, EM_INK_METAL, 0, end, l, base);
  if (arc > 1.5 * EM_PI)
    em_outline_box (out, EM_INK_METAL, 0, -base, l, -end);
  em_outline_run (out, EM_INK_CENTRE, 2, (const double[]) { -0.35 * l, 0, 1.35 * l, 0 });
  em_outline_dim (out, 0, block, l, block, 0.3 * base, LENGTH, l);
}

const EmKind em_kind_bore =
{
  .id = "bore", .name = EM_N ("Bore restoration"), .summary = EM_N ("A worn bore closed to its finished diameter, all round or in part"),
  .fields = fields, .n_fields = EM_N_OF (fields), .sits_in_slot = false,
  .solve = solve, .width_mm = width_mm, .length_mm = length_mm, .outline = outline, .layer = layer,
};
