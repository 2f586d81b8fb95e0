/* em-kind-groove: a crack opened into a groove and filled.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-kind-parts.h"

enum { LENGTH, DEPTH, GAP, ANGLE };
enum { P_LENGTH, P_GAP, P_TAN };

static const EmField fields[] =
{
  EM_FIELD_SIZE ("length", "l", EM_N ("Length"), 5000.0),
  EM_FIELD_SIZE ("depth", "d", EM_N ("Depth"), 200.0),
  { .id = "gap", .symbol = "g", .name = EM_N ("Gap at the root"), .high = 200.0, .low_allowed = true, .preset = 0.0 },
  { .id = "angle", .symbol = "β", .name = EM_N ("Included angle"), .quantity = EM_QUANTITY_ANGLE, .high = 170.0, .low_allowed = true, .preset = 60.0 },
};

/* V = l·(g·d + d²·tan(β/2)); 60° is common practice for a crack opened by hand. */
static EmStatus
solve (const double *value, EmShape *out_shape, EmFault *out_fault)
{
  double l = value[LENGTH], d = value[DEPTH], g = value[GAP], slope = tan (EM_RADIANS (value[ANGLE]) / 2.0);

  if (g <= 0.0 && slope <= 0.0)
    return em_fault_open (out_fault, true, false, em_fault_set_conflict (out_fault, "gap", "angle", g, 0.0, 200.0));
  out_shape->height_mm = d;
  out_shape->net_volume_mm3 = l * d * (g + d * slope);
  out_shape->coated_area_mm2 = l * (g + 2.0 * d * hypot (1.0, slope));
  out_shape->cap_edge_mm = 0.0;
  out_shape->reach_extent_mm = fmax (l, g + 2.0 * d * slope);
  out_shape->p[P_LENGTH] = l;
  out_shape->p[P_GAP] = g;
  out_shape->p[P_TAN] = slope;
  return EM_OK;
}

static double
width_mm (const EmShape *shape, double z_mm)
{
  return shape->p[P_GAP] + 2.0 * fmin (z_mm, shape->height_mm) * shape->p[P_TAN];
}

static double
length_mm (const EmShape *shape, double z_mm)
{
  (void) z_mm;
  return shape->p[P_LENGTH];
}

/* The flanks meet below the root. The arc is within the groove where it is on them and where it is highest. */
static void
draw_angle (const EmShape *shape, EmOutline *out)
{
  double d = shape->height_mm, half = atan (shape->p[P_TAN]), below = shape->p[P_GAP] / 2 / shape->p[P_TAN];
  double radius = fmin ((below + 0.6 * d) / cos (half), fmax (below + 0.9 * d, (below + 0.2 * d) / cos (half)));

  em_outline_angle (out, 0, -d - below, radius, EM_PI / 2 - half, 2 * half, 0, ANGLE);
}

static void
outline (const EmShape *shape, EmView view, EmOutline *out)
{
  double l = shape->p[P_LENGTH], d = shape->height_mm, g = shape->p[P_GAP] / 2, w = width_mm (shape, d) / 2, m = fmax (w, d), e = 0.15 * l;

  *out = (EmOutline) { 0 };
  if (view == EM_VIEW_SECTION)
    {
      em_outline_run (out, EM_INK_BASE, 8, (const double[]) { w, 0, w + m, 0, w + m, -d - m, -w - m, -d - m, -w - m, 0, -w, 0, -g, -d, g, -d });
      em_outline_run (out, EM_INK_METAL, 4, (const double[]) { -w, 0, -g, -d, g, -d, w, 0 });
      em_outline_dim (out, w, -d, w, 0, -0.5 * m, DEPTH, d);
      if (g > 0)
        em_outline_dim (out, -g, -d, g, -d, -0.4 * m, GAP, 2 * g);
      if (w <= g)
        return;
      em_outline_dim (out, -w, 0, w, 0, 0.4 * m, -1, 2 * w);
      draw_angle (shape, out);
      return;
    }
  em_outline_box (out, EM_INK_BASE, -e, -w - m, l + e, w + m);
  em_outline_box (out, EM_INK_METAL, 0, -w, l, w);
  em_outline_dim (out, 0, w, l, w, 0.6 * m, LENGTH, l);
}

static int
layer (const EmShape *shape, double z_mm, int max, double *out_xy_mm)
{
  double w = width_mm (shape, z_mm) / 2, y = z_mm - shape->height_mm;

  return em_layer_line (max, out_xy_mm, -w, y, w, y);
}

const EmKind em_kind_groove =
{
  .id = "groove", .name = EM_N ("Groove"), .summary = EM_N ("A crack opened into a groove and filled"),
  .fields = fields, .n_fields = EM_N_OF (fields), .melts_out = true, .sits_in_slot = true,
  .solve = solve, .width_mm = width_mm, .length_mm = length_mm, .outline = outline, .layer = layer,
};
