/* em-kind-edge-nick: a chip out of an edge, fused clean and built back to sharp.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-kind-parts.h"

enum { LENGTH, LEG_A, LEG_B, ENDS };
enum { P_LENGTH, P_A, P_B, P_BASE, P_TAPERED };

static const char *const end_ids[] = { "square", "tapered", NULL };
static const char *const end_names[] = { EM_N ("Square"), EM_N ("Tapered to both ends"), NULL };

static const EmField fields[] =
{
  EM_FIELD_SIZE ("length", "l", EM_N ("Length along the edge"), 5000.0),
  EM_FIELD_SIZE ("leg_a", "a", EM_N ("Missing on one face"), 200.0),
  EM_FIELD_SIZE ("leg_b", "b", EM_N ("Missing on the other face"), 200.0),
  EM_FIELD_CHOICE ("ends", EM_N ("Ends"), end_ids, end_names),
};

/* V = ½·a·b·l; with both legs tapering linearly to both ends a third of it, ½·a·b·∫(1 − 2|x|/l)²dx. The weld rises from the
 * slope c = √(a² + b²): H = a·b/c. Two flat triangles with their foot on the slope are covered where it tapers. */
static EmStatus
solve (const double *value, EmShape *out_shape, EmFault *out_fault)
{
  double l = value[LENGTH], a = value[LEG_A], b = value[LEG_B], c = hypot (a, b);
  bool is_tapered = value[ENDS] > 0.5;

  (void) out_fault;
  out_shape->height_mm = a * b / c;
  out_shape->net_volume_mm3 = a * b * l / (is_tapered ? 6.0 : 2.0);
  out_shape->coated_area_mm2 = is_tapered ? hypot (a * b, c * l / 2.0) : c * l;
  out_shape->cap_edge_mm = 0.0;
  out_shape->reach_extent_mm = fmax (l, c);
  out_shape->p[P_LENGTH] = l;
  out_shape->p[P_A] = a;
  out_shape->p[P_B] = b;
  out_shape->p[P_BASE] = c;
  out_shape->p[P_TAPERED] = is_tapered;
  return EM_OK;
}

static double
width_mm (const EmShape *shape, double z_mm)
{
  return shape->p[P_BASE] * fmax (0.0, 1.0 - z_mm / shape->height_mm);
}

/* A layer of a tapered nick is a rhombus: its mean track is half its length. */
static double
length_mm (const EmShape *shape, double z_mm)
{
  double l = shape->p[P_LENGTH];

  return shape->p[P_TAPERED] > 0.5 ? l / 2.0 * fmax (0.0, 1.0 - z_mm / shape->height_mm) : l;
}

static void
outline (const EmShape *shape, EmView view, EmOutline *out)
{
  double a = shape->p[P_A], b = shape->p[P_B], l = shape->p[P_LENGTH], m = 2.5 * fmax (a, b);

  *out = (EmOutline) { 0 };
  if (view == EM_VIEW_SECTION)
    {
      em_outline_run (out, EM_INK_BASE, 5, (const double[]) { -m, 0, -m, -m, 0, -m, 0, -b, -a, 0 });
      em_outline_run (out, EM_INK_METAL, 3, (const double[]) { -a, 0, 0, -b, 0, 0 });
      em_outline_dim (out, 0, 0, -a, 0, -0.6 * m, LEG_A, a);
      em_outline_dim (out, 0, -b, 0, 0, -0.6 * m, LEG_B, b);
      return;
    }
  double e = 0.25 * l + a;
  em_outline_box (out, EM_INK_BASE, -e, -m - a, l + e, 0);
  if (shape->p[P_TAPERED] > 0.5)
    em_outline_run (out, EM_INK_METAL, 3, (const double[]) { 0, 0, l / 2, -a, l, 0 });
  else
    em_outline_box (out, EM_INK_METAL, 0, -a, l, 0);
  em_outline_dim (out, 0, 0, l, 0, 0.6 * m, LENGTH, l);
}

static int
layer (const EmShape *shape, double z_mm, int max, double *out_xy_mm)
{
  double s = fmin (1.0, z_mm / shape->height_mm), a = shape->p[P_A] * (1 - s), b = shape->p[P_B] * (1 - s);

  return em_layer_line (max, out_xy_mm, -a, 0, 0, -b);
}

const EmKind em_kind_edge_nick =
{
  .id = "edge-nick", .name = EM_N ("Edge nick"), .summary = EM_N ("A chip or dent in an edge, built back to a sharp corner"),
  .fields = fields, .n_fields = EM_N_OF (fields), .melts_out = true,
  .solve = solve, .width_mm = width_mm, .length_mm = length_mm, .outline = outline, .layer = layer,
};
