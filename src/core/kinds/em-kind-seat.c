/* em-kind-seat: a conical or spherical seat coated evenly.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-kind-parts.h"

enum { FORM, DIAMETER, DIAMETER_SMALL, DEPTH, RADIUS, THICKNESS };
enum { CONE, SPHERE };
enum { P_SPHERE, P_MOUTH, P_SMALL, P_DEPTH, P_SLANT, P_R, P_ALPHA };

static const char *const form_ids[] = { "cone", "sphere", NULL };
static const char *const form_names[] = { EM_N ("Cone"), EM_N ("Sphere"), NULL };

static const EmField fields[] =
{
  EM_FIELD_CHOICE ("form", EM_N ("Form"), form_ids, form_names),
  EM_FIELD_SIZE ("diameter", "D", EM_N ("Mouth diameter"), 2000.0),
  EM_FIELD_SIZE_WHEN ("diameter_small", "d", EM_N ("Small diameter"), 2000.0, "form", 1u << CONE),
  EM_FIELD_SIZE_WHEN ("depth", "h", EM_N ("Depth"), 1000.0, "form", 1u << CONE),
  EM_FIELD_SIZE_WHEN ("radius", "R", EM_N ("Radius of the sphere"), 2000.0, "form", 1u << SPHERE),
  EM_FIELD_SIZE ("thickness", "t", EM_N ("Thickness to add"), 100.0),
};

/* Cone: the frusta before and after differ in radius by t·s/h, s the slant: V = π·t·s·(R1 + R2 − t·s/h). */
static EmStatus
solve_cone (const double *value, EmShape *shape, EmFault *out_fault)
{
  double mouth = value[DIAMETER] / 2.0, small = value[DIAMETER_SMALL] / 2.0, h = value[DEPTH], t = value[THICKNESS];
  double slant = hypot (h, mouth - small);

  if (small > mouth)
    return em_fault_set_conflict (out_fault, "diameter_small", "diameter", 2.0 * small, 0.0, 2.0 * mouth);
  if (t * slant / h > small)
    return em_fault_set_conflict (out_fault, "thickness", "diameter_small", t, 0.0, small * h / slant);
  shape->net_volume_mm3 = EM_PI * t * slant * (mouth + small - t * slant / h);
  shape->coated_area_mm2 = EM_PI * slant * (mouth + small);
  shape->p[P_SMALL] = small;
  shape->p[P_DEPTH] = h;
  shape->p[P_SLANT] = slant;
  return EM_OK;
}

/* Sphere: V = (2π/3)(1 − cos α)(R³ − (R − t)³), sin α = mouth/2R; 1 − cos α written to keep its digits where the seat is flat. */
static EmStatus
solve_sphere (const double *value, EmShape *shape, EmFault *out_fault)
{
  double r = value[RADIUS], sine = value[DIAMETER] / (2.0 * r), t = value[THICKNESS];

  if (sine > 1.0)
    return em_fault_set_conflict (out_fault, "diameter", "radius", value[DIAMETER], 0.0, 2.0 * r);
  if (t > r)
    return em_fault_set_conflict (out_fault, "thickness", "radius", t, 0.0, r);

  double rise = sine * sine / (1.0 + sqrt ((1.0 - sine) * (1.0 + sine)));

  shape->net_volume_mm3 = 2.0 * EM_PI / 3.0 * rise * t * (3.0 * r * r - 3.0 * r * t + t * t);
  shape->coated_area_mm2 = 2.0 * EM_PI * rise * r * r;
  shape->p[P_SPHERE] = 1.0;
  shape->p[P_R] = r;
  shape->p[P_ALPHA] = asin (sine);
  shape->p[P_DEPTH] = rise * r;
  return EM_OK;
}

static EmStatus
solve (const double *value, EmShape *out_shape, EmFault *out_fault)
{
  out_shape->height_mm = value[THICKNESS];
  out_shape->cap_edge_mm = 0.0;
  out_shape->reach_extent_mm = value[DIAMETER];
  out_shape->p[P_MOUTH] = value[DIAMETER] / 2.0;
  return value[FORM] > 0.5 ? solve_sphere (value, out_shape, out_fault) : solve_cone (value, out_shape, out_fault);
}

/* Tracks run round; the width is the slant or the meridian, so that w·l is the area of the offset surface. */
static double
width_mm (const EmShape *shape, double z_mm)
{
  return shape->p[P_SPHERE] > 0.5 ? shape->p[P_ALPHA] * fmax (0.0, shape->p[P_R] - z_mm) : shape->p[P_SLANT];
}

static double
length_mm (const EmShape *shape, double z_mm)
{
  double r = shape->p[P_R], alpha = shape->p[P_ALPHA];

  if (shape->p[P_SPHERE] > 0.5)
    return shape->coated_area_mm2 / (r * r) * fmax (0.0, r - z_mm) / alpha;
  return EM_PI * (shape->p[P_MOUTH] + shape->p[P_SMALL] - 2.0 * fmin (z_mm, shape->height_mm) * shape->p[P_SLANT] / shape->p[P_DEPTH]);
}

/* The mouth lies at y = 0; the right half of the section. */
static int
layer (const EmShape *shape, double z_mm, int max, double *out_xy_mm)
{
  double e = z_mm * shape->p[P_SLANT] / shape->p[P_DEPTH], mouth = shape->p[P_MOUTH] - e, small = shape->p[P_SMALL] - e;
  double r = shape->p[P_R], a = shape->p[P_ALPHA], inner = fmax (0.0, r - z_mm);

  if (shape->p[P_SPHERE] > 0.5)
    return em_layer_arc (max, out_xy_mm, 0, r - shape->p[P_DEPTH], inner, inner, -EM_PI / 2, -EM_PI / 2 + a);
  return small < 0 ? 0 : em_layer_line (max, out_xy_mm, small, -shape->p[P_DEPTH], mouth, 0);
}

/* A ring of four corners right of the axis, and its mirror image turned the same way round. */
static void
draw_both (EmOutline *out, EmInk ink, const double *xy_mm)
{
  em_outline_run (out, ink, 4, xy_mm);
  for (int i = 3; i >= 0; i--)
    em_outline_point (out, ink, i == 3, -xy_mm[2 * i], xy_mm[2 * i + 1]);
}

static void
outline (const EmShape *shape, EmView view, EmOutline *out)
{
  double m = shape->p[P_MOUTH], s = shape->p[P_SMALL], h = shape->p[P_DEPTH], t = shape->height_mm, x = 1.6 * m, r = shape->p[P_R];
  double a = shape->p[P_ALPHA], e = h > 0 ? t * shape->p[P_SLANT] / h : 0, foot = h + 0.6 * m, up = r - h;

  *out = (EmOutline) { 0 };
  if (view == EM_VIEW_PLAN)
    {
      em_outline_arc (out, EM_INK_BASE, true, 0, 0, x, x, 0, 2 * EM_PI);
      if (s > 0)
        em_outline_arc (out, EM_INK_BASE, true, 0, 0, s, s, 2 * EM_PI, 0);
      em_outline_arc (out, EM_INK_METAL, true, 0, 0, m, m, 0, 2 * EM_PI);
      if (s > 0)
        em_outline_arc (out, EM_INK_METAL, true, 0, 0, s - e, s - e, 2 * EM_PI, 0);
    }
  else if (shape->p[P_SPHERE] > 0.5)
    {
      double aim = -EM_PI / 2 + 0.4 * a, back = -EM_PI / 2 - 0.6 * a, from = up / -sin (aim);

      em_outline_run (out, EM_INK_BASE, 4, (const double[]) { x, 0, x, -foot, -x, -foot, -x, 0 });
      em_outline_arc (out, EM_INK_BASE, false, 0, up, r, r, -EM_PI / 2 - a, -EM_PI / 2 + a);
      em_outline_arc (out, EM_INK_METAL, true, 0, up, r, r, -EM_PI / 2 - a, -EM_PI / 2 + a);
      em_outline_arc (out, EM_INK_METAL, false, 0, up, r - t, r - t, -EM_PI / 2 + a, -EM_PI / 2 - a);
      em_outline_dim (out, from * cos (aim), up + from * sin (aim), r * cos (aim), up + r * sin (aim), 0, RADIUS, r);
      em_outline_dim (out, (r - t) * cos (back), up + (r - t) * sin (back), r * cos (back), up + r * sin (back), 0, THICKNESS, t);
    }
  else
    {
      draw_both (out, EM_INK_BASE, (const double[]) { m, 0, s, -h, x, -h, x, 0 });
      draw_both (out, EM_INK_METAL, (const double[]) { m, 0, m - e, 0, s - e, -h, s, -h });
      em_outline_run (out, EM_INK_CENTRE, 2, (const double[]) { 0, -1.2 * h, 0, 0.2 * h });
      em_outline_dim (out, s, -h, -s, -h, 0.4 * m, DIAMETER_SMALL, 2 * s);
      em_outline_dim (out, x, 0, x, -h, 0.4 * m, DEPTH, h);
      em_outline_dim (out, -(m + s) / 2 + t * t / e, -h / 2 + t * sqrt (fmax (0, 1 - t * t / (e * e))), -(m + s) / 2, -h / 2, 0, THICKNESS, t);
    }
  em_outline_dim (out, -m, 0, m, 0, 0.4 * m, DIAMETER, 2 * m);
}

static bool
is_round (const EmShape *shape)
{
  (void) shape;
  return true;
}

const EmKind em_kind_seat =
{
  .id = "seat", .name = EM_N ("Seat restoration"), .summary = EM_N ("A conical or spherical seat coated by an even thickness"),
  .fields = fields, .n_fields = EM_N_OF (fields), .is_mirrored = true, .is_round = is_round,
  .solve = solve, .width_mm = width_mm, .length_mm = length_mm, .outline = outline, .layer = layer,
};
