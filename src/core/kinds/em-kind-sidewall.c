/* em-kind-sidewall: a wall built up by an even thickness.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-kind-parts.h"

enum { LENGTH, HEIGHT, THICKNESS };

static const EmField fields[] =
{
  EM_FIELD_SIZE ("length", "l", EM_N ("Length"), 5000.0),
  EM_FIELD_SIZE ("height", "h", EM_N ("Height of the wall"), 2000.0),
  EM_FIELD_SIZE ("thickness", "t", EM_N ("Thickness to add"), 100.0),
};

/* V = l·h·t. One long edge, where wall meets face, comes up sharp. */
static EmStatus
solve (const double *value, EmShape *out_shape, EmFault *out_fault)
{
  (void) out_fault;
  out_shape->height_mm = value[THICKNESS];
  out_shape->coated_area_mm2 = value[LENGTH] * value[HEIGHT];
  out_shape->net_volume_mm3 = out_shape->coated_area_mm2 * value[THICKNESS];
  out_shape->cap_edge_mm = value[LENGTH];
  out_shape->reach_extent_mm = fmax (value[LENGTH], value[HEIGHT]);
  for (int i = 0; i < EM_N_OF (fields); i++)
    out_shape->p[i] = value[i];
  return EM_OK;
}

static double
width_mm (const EmShape *shape, double z_mm)
{
  (void) z_mm;
  return fmin (shape->p[LENGTH], shape->p[HEIGHT]);
}

static double
length_mm (const EmShape *shape, double z_mm)
{
  (void) z_mm;
  return fmax (shape->p[LENGTH], shape->p[HEIGHT]);
}

static void
outline (const EmShape *shape, EmView view, EmOutline *out)
{
  double l = shape->p[LENGTH], h = shape->p[HEIGHT], t = shape->p[THICKNESS], m = fmax (h, 4 * t), e = 0.2 * l;

  *out = (EmOutline) { 0 };
  if (view == EM_VIEW_SECTION)
    {
      em_outline_run (out, EM_INK_BASE, 6, (const double[]) { -m, h, -m, -0.6 * m, m, -0.6 * m, m, 0, 0, 0, 0, h });
      em_outline_box (out, EM_INK_METAL, 0, 0, t, h);
      em_outline_dim (out, t, h, t, 0, 0.4 * m, HEIGHT, h);
      em_outline_dim (out, 0, h, t, h, 0.3 * m, THICKNESS, t);
      return;
    }
  em_outline_box (out, EM_INK_BASE, -e, 0, l + e, m);
  em_outline_box (out, EM_INK_METAL, 0, -t, l, 0);
  em_outline_dim (out, l, -t, 0, -t, 0.4 * m, LENGTH, l);
}

static int
layer (const EmShape *shape, double z_mm, int max, double *out_xy_mm)
{
  return em_layer_line (max, out_xy_mm, z_mm, 0, z_mm, shape->p[HEIGHT]);
}

const EmKind em_kind_sidewall =
{
  .id = "sidewall", .name = EM_N ("Sidewall build-up"), .summary = EM_N ("A wall that lost its size, built up by an even thickness"),
  .fields = fields, .n_fields = EM_N_OF (fields), .caps_edges = true, .sits_in_slot = true,
  .solve = solve, .width_mm = width_mm, .length_mm = length_mm, .outline = outline, .layer = layer,
};
