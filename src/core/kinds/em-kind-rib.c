/* em-kind-rib: a rib coated on its crest and down its sides.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-kind-parts.h"

enum { LENGTH, THICKNESS, COAT, DEPTH, CORNERS, WRAPS };

static const char *const corner_ids[] = { "square", "rounded", NULL };
static const char *const corner_names[] = { EM_N ("Square"), EM_N ("Rounded"), NULL };

static const EmField fields[] =
{
  EM_FIELD_SIZE ("length", "l", EM_N ("Length between the ends"), 5000.0),
  EM_FIELD_SIZE ("thickness", "b", EM_N ("Thickness of the rib"), 500.0),
  EM_FIELD_SIZE ("coat", "t", EM_N ("Coat to add"), 100.0),
  { .id = "depth", .symbol = "h", .name = EM_N ("Depth down each side"), .high = 2000.0, .low_allowed = true, .preset = 0.0 },
  EM_FIELD_CHOICE ("corners", EM_N ("Outer corners"), corner_ids, corner_names),
  { .id = "wraps", .symbol = "n", .name = EM_N ("Round ends wrapped"), .quantity = EM_QUANTITY_COUNT, .high = 2.0, .low_allowed = true, .preset = 0.0 },
};

/* Area of one wrapped half-round end at distance z from the rib: side, crest, and the corner between them by Pappus. */
static double
end_area (const EmShape *shape, double z)
{
  double half = shape->p[THICKNESS] / 2.0, h = shape->p[DEPTH];

  if (shape->p[CORNERS] > 0.5)
    return EM_PI * (half + z) * h + EM_PI / 2.0 * half * half + EM_PI * EM_PI / 2.0 * z * half + EM_PI * z * z;
  return EM_PI * (half + z) * (h + z) + EM_PI / 2.0 * (half + z) * (half + z);
}

/* Volume of one wrapped end: (π/2)·((b/2 + t)² − (b/2)²)·h and its crest, which is a half disc with square or rounded rim. */
static double
end_volume (double half, double t, double h, bool is_rounded)
{
  double side = EM_PI / 2.0 * t * (2.0 * half + t) * h;

  if (is_rounded)
    return side + EM_PI / 2.0 * half * half * t + EM_PI * EM_PI / 4.0 * t * t * half + EM_PI / 3.0 * t * t * t;
  return side + EM_PI / 2.0 * (half + t) * (half + t) * t;
}

/* V = l·(t·(b + 2h) + 2c·t²), c = 1 square, π/4 rounded; crest only l·b·t. The depth and corners do not matter to a crest. */
static EmStatus
solve (const double *value, EmShape *out_shape, EmFault *out_fault)
{
  double l = value[LENGTH], b = value[THICKNESS], t = value[COAT], h = value[DEPTH], wraps = value[WRAPS];
  bool is_rounded = value[CORNERS] > 0.5;

  if (wraps > 0.0 && h <= 0.0)
    return em_fault_set_conflict (out_fault, "wraps", "depth", wraps, 0.0, 0.0);
  for (int i = 0; i < EM_N_OF (fields); i++)
    out_shape->p[i] = value[i];
  out_shape->height_mm = t;
  out_shape->net_volume_mm3 = l * b * t;
  if (h > 0.0)
    out_shape->net_volume_mm3 = l * (t * (b + 2.0 * h) + 2.0 * (is_rounded ? EM_PI / 4.0 : 1.0) * t * t)
                                + wraps * end_volume (b / 2.0, t, h, is_rounded);
  out_shape->coated_area_mm2 = l * (b + 2.0 * h) + (wraps > 0.0 ? wraps * end_area (out_shape, 0.0) : 0.0);
  out_shape->cap_edge_mm = h > 0.0 && is_rounded ? 0.0 : 2.0 * l + wraps * EM_PI * (b / 2.0 + t);
  out_shape->reach_extent_mm = fmax (l + wraps * (b / 2.0 + t), b + 2.0 * h);
  return EM_OK;
}

/* Developed round the section: b + 2h and two corners, each a quarter turn or a square of side z. */
static double
width_mm (const EmShape *shape, double z_mm)
{
  double h = shape->p[DEPTH];

  if (h <= 0.0)
    return shape->p[THICKNESS];
  return shape->p[THICKNESS] + 2.0 * h + (shape->p[CORNERS] > 0.5 ? EM_PI : 4.0) * fmin (z_mm, shape->height_mm);
}

static double
length_mm (const EmShape *shape, double z_mm)
{
  double wraps = shape->p[WRAPS];

  return shape->p[LENGTH] + (wraps > 0.0 ? wraps * end_area (shape, fmin (z_mm, shape->height_mm)) / width_mm (shape, z_mm) : 0.0);
}

/* The boundary at distance z from the rib, with square or rounded shoulders. */
static int
layer (const EmShape *shape, double z_mm, int max, double *out_xy_mm)
{
  double b = shape->p[THICKNESS] / 2.0, h = shape->p[DEPTH], x = b + z_mm;
  bool is_rounded = shape->p[CORNERS] > 0.5;
  int n = 0;

  if (h <= 0.0)
    return em_layer_line (max, out_xy_mm, -b, z_mm, b, z_mm);
  if (max < 16)
    return 0;
  out_xy_mm[n++] = -x;
  out_xy_mm[n++] = -h;
  for (int i = 0; i < 12; i++)
    {
      bool is_right = i >= 6;
      double turn = EM_PI / 2.0 * (is_right ? 11 - i : i) / 5.0, out = is_rounded ? cos (turn) : 1.0, up = is_rounded ? sin (turn) : 1.0;

      out_xy_mm[n++] = (is_right ? 1.0 : -1.0) * (b + z_mm * out);
      out_xy_mm[n++] = z_mm * up;
    }
  out_xy_mm[n++] = x;
  out_xy_mm[n++] = -h;
  return n / 2;
}

/* From above, half wide on each side; a wrapped end is round, the right one first. */
static void
draw_round (const EmShape *shape, EmInk ink, double half_mm, EmOutline *out)
{
  double l = shape->p[LENGTH], wraps = shape->p[WRAPS];

  if (wraps > 0)
    em_outline_arc (out, ink, true, l, 0, half_mm, half_mm, -EM_PI / 2, EM_PI / 2);
  else
    em_outline_run (out, ink, 2, (const double[]) { l, -half_mm, l, half_mm });
  if (wraps > 1)
    em_outline_arc (out, ink, false, 0, 0, half_mm, half_mm, EM_PI / 2, 1.5 * EM_PI);
  else
    {
      em_outline_point (out, ink, false, 0, half_mm);
      em_outline_point (out, ink, false, 0, -half_mm);
    }
  em_outline_point (out, ink, false, l, -half_mm);
}

static void
outline (const EmShape *shape, EmView view, EmOutline *out)
{
  double l = shape->p[LENGTH], b = shape->p[THICKNESS] / 2, t = shape->p[COAT], h = shape->p[DEPTH], m = fmax (2 * b, h) + 2 * t, xy[64];
  double side = h > 0 ? t : 0, right = shape->p[WRAPS] > 0 ? b + t : 0, left = shape->p[WRAPS] > 1 ? b + t : 0;

  *out = (EmOutline) { 0 };
  if (view == EM_VIEW_SECTION)
    {
      int n = layer (shape, t, 32, xy);

      em_outline_run (out, EM_INK_BASE, 8, (const double[]) { -b, 0, -b, -h - m, -b - m, -h - m, -b - m, -h - 1.5 * m, b + m, -h - 1.5 * m,
                                                              b + m, -h - m, b, -h - m, b, 0 });
      em_outline_run (out, EM_INK_METAL, n, xy);
      for (int i = 0; i < 4; i++)
        em_outline_point (out, EM_INK_METAL, false, i < 2 ? b : -b, i == 0 || i == 3 ? -h : 0);
      em_outline_dim (out, b, -h - m / 2, -b, -h - m / 2, 0, THICKNESS, 2 * b);
      em_outline_dim (out, b + side, t, b + side, 0, 0.4 * m, COAT, t);
      if (h > 0)
        em_outline_dim (out, -b - t, -h, -b - t, 0, 0.4 * m, DEPTH, h);
      return;
    }
  em_outline_box (out, EM_INK_BASE, -left - m, -b - t - m, l + right + m, b + t + m);
  draw_round (shape, EM_INK_METAL, b + side, out);
  if (side > 0)
    draw_round (shape, EM_INK_HIDDEN, b, out);
  em_outline_dim (out, 0, b + side, l, b + side, m, LENGTH, l);
}

const EmKind em_kind_rib =
{
  .id = "rib", .name = EM_N ("Rib build-up"), .summary = EM_N ("A rib or blade coated on its crest, and down its sides if wanted"),
  .fields = fields, .n_fields = EM_N_OF (fields), .caps_edges = true, .sits_in_slot = true,
  .solve = solve, .width_mm = width_mm, .length_mm = length_mm, .outline = outline, .layer = layer,
};
