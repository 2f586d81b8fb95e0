/* em-kind-dam: a flow dam with draft.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-kind-parts.h"

enum { LENGTH, WIDTH, HEIGHT, DRAFT, ENDS, RUNOUT };
enum { SQUARE, DRAFTED, ROUNDED, TAPERED };
enum { P_LENGTH, P_WIDTH, P_TAN, P_ENDS, P_END_TAN };

static const char *const end_ids[] = { "square", "drafted", "rounded", "tapered", NULL };
static const char *const end_names[] = { EM_N ("Square"), EM_N ("Drafted"), EM_N ("Rounded"), EM_N ("Tapered to nothing"), NULL };

static const EmField fields[] =
{
  EM_FIELD_SIZE ("length", "l", EM_N ("Length at the base"), 5000.0),
  EM_FIELD_SIZE ("width", "w", EM_N ("Width at the base"), 500.0),
  EM_FIELD_SIZE ("height", "h", EM_N ("Height"), 200.0),
  { .id = "draft", .symbol = "β", .name = EM_N ("Draft per side"), .quantity = EM_QUANTITY_ANGLE, .high = 89.0, .low_allowed = true, .preset = 0.0 },
  EM_FIELD_CHOICE ("ends", EM_N ("Ends"), end_ids, end_names),
  EM_FIELD_SIZE_WHEN ("runout", "t", EM_N ("Length of each tapered end"), 2500.0, "ends", 1u << TAPERED),
};

static double
width_mm (const EmShape *shape, double z_mm)
{
  return fmax (0.0, shape->p[P_WIDTH] - 2.0 * fmin (z_mm, shape->height_mm) * shape->p[P_TAN]);
}

/* How far an end is in from the foot's. */
static double
end_in_mm (const EmShape *shape, double z_mm)
{
  return fmin (z_mm, shape->height_mm) * shape->p[P_END_TAN];
}

/* Rounded ends are half circles of the width, so the straight part stays and the mean track is longer by π·w/4. */
static double
length_mm (const EmShape *shape, double z_mm)
{
  double l = shape->p[P_LENGTH];

  if ((int) shape->p[P_ENDS] == ROUNDED)
    return l - shape->p[P_WIDTH] + EM_PI / 4.0 * width_mm (shape, z_mm);
  return fmax (0.0, l - 2.0 * end_in_mm (shape, z_mm));
}

static double
area_at (const EmShape *shape, double z_mm)
{
  return width_mm (shape, z_mm) * length_mm (shape, z_mm);
}

/* V = h/6·(A0 + 4Am + A1), exact since no area is more than quadratic in z. */
static EmStatus
solve (const double *value, EmShape *out_shape, EmFault *out_fault)
{
  double l = value[LENGTH], w = value[WIDTH], h = value[HEIGHT], slope = tan (EM_RADIANS (value[DRAFT]));
  int ends = (int) value[ENDS];
  double narrow = ends == DRAFTED ? fmin (l, w) : w;

  if (ends == ROUNDED && l < w)
    return em_fault_set_conflict (out_fault, "length", "width", l, w, EM_ABSENT);
  if (2.0 * h * slope > narrow)
    return em_fault_set_conflict (out_fault, "draft", "height", value[DRAFT], 0.0, EM_DEGREES (atan (narrow / (2.0 * h))));
  if (ends == TAPERED && 2.0 * value[RUNOUT] > l)
    return em_fault_set_conflict (out_fault, "runout", "length", value[RUNOUT], 0.0, l / 2.0);
  out_shape->height_mm = h;
  out_shape->p[P_LENGTH] = l;
  out_shape->p[P_WIDTH] = w;
  out_shape->p[P_TAN] = slope;
  out_shape->p[P_ENDS] = ends;
  out_shape->p[P_END_TAN] = ends == DRAFTED ? slope : ends == TAPERED ? value[RUNOUT] / h : 0.0;

  double top = width_mm (out_shape, h);

  out_shape->net_volume_mm3 = h / 6.0 * (area_at (out_shape, 0.0) + 4.0 * area_at (out_shape, h / 2.0) + area_at (out_shape, h));
  out_shape->coated_area_mm2 = area_at (out_shape, 0.0);
  out_shape->cap_edge_mm = ends == SQUARE ? 2.0 * l : ends == ROUNDED ? 2.0 * (l - w) + EM_PI * top : 2.0 * (length_mm (out_shape, h) + top);
  out_shape->reach_extent_mm = fmax (l, w);
  return EM_OK;
}

/* The dam seen from above at a height: its foot, or its crest. */
static void
draw_level (const EmShape *shape, double z_mm, EmOutline *out)
{
  double l = shape->p[P_LENGTH], w = shape->p[P_WIDTH] / 2, half = width_mm (shape, z_mm) / 2, in = end_in_mm (shape, z_mm);

  if ((int) shape->p[P_ENDS] != ROUNDED)
    {
      em_outline_box (out, EM_INK_METAL, in, -half, l - in, half);
      return;
    }
  em_outline_arc (out, EM_INK_METAL, true, l - w, 0, half, half, -EM_PI / 2, EM_PI / 2);
  em_outline_arc (out, EM_INK_METAL, false, w, 0, half, half, EM_PI / 2, 1.5 * EM_PI);
}

static void
outline (const EmShape *shape, EmView view, EmOutline *out)
{
  double l = shape->p[P_LENGTH], w = shape->p[P_WIDTH] / 2, h = shape->height_mm, top = width_mm (shape, h) / 2, m = fmax (2 * w, h);
  double in = end_in_mm (shape, h);

  *out = (EmOutline) { 0 };
  if (view == EM_VIEW_SECTION)
    {
      em_outline_box (out, EM_INK_BASE, -w - m, -m, w + m, 0);
      em_outline_run (out, EM_INK_METAL, 4, (const double[]) { -w, 0, w, 0, top, h, -top, h });
      em_outline_dim (out, w, 0, -w, 0, 0.4 * m, WIDTH, 2 * w);
      em_outline_dim (out, w, h, w, 0, 0.2 * m, HEIGHT, h);
      if (shape->p[P_TAN] > 0.0)
        em_outline_angle (out, -w, 0, 0.9 * h, EM_PI / 2 - atan (shape->p[P_TAN]), atan (shape->p[P_TAN]), 1, DRAFT);
      return;
    }
  em_outline_box (out, EM_INK_BASE, -m, -w - m, l + m, w + m);
  draw_level (shape, 0, out);
  if (top > 0 && 2 * in < l && (top < w || in > 0))
    draw_level (shape, h, out);
  em_outline_dim (out, 0, w, l, w, 0.6 * m, LENGTH, l);
  if ((int) shape->p[P_ENDS] == TAPERED)
    em_outline_dim (out, in, -w, 0, -w, 0.4 * m, RUNOUT, in);
}

static int
layer (const EmShape *shape, double z_mm, int max, double *out_xy_mm)
{
  double w = width_mm (shape, z_mm) / 2;

  return em_layer_line (max, out_xy_mm, -w, z_mm, w, z_mm);
}

const EmKind em_kind_dam =
{
  .id = "dam", .name = EM_N ("Flow dam"), .summary = EM_N ("A ridge built on a flat to steer or stop the flow"),
  .fields = fields, .n_fields = EM_N_OF (fields), .caps_edges = true,
  .solve = solve, .width_mm = width_mm, .length_mm = length_mm, .outline = outline, .layer = layer,
};
