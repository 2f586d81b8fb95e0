/* em-kind-recess: a pit, pocket or detent filled flush.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-kind-parts.h"

enum { FORM, LENGTH, WIDTH, DIAMETER, DEPTH };
enum { BOX, CYLINDER, CONE, ELLIPSOID, CAP };
enum { P_FORM, P_LENGTH, P_WIDTH, P_IS_TURNED };

static const char *const form_ids[] = { "box", "cylinder", "cone", "ellipsoid", "cap", NULL };
static const char *const form_names[] = { EM_N ("Box"), EM_N ("Cylinder"), EM_N ("Cone"), EM_N ("Half ellipsoid"), EM_N ("Spherical cap"), NULL };

#define SIDED ((1u << BOX) | (1u << ELLIPSOID))
#define ROUND ((1u << CYLINDER) | (1u << CONE) | (1u << CAP))

static const EmField fields[] =
{
  EM_FIELD_CHOICE ("form", EM_N ("Form"), form_ids, form_names),
  EM_FIELD_SIZE_WHEN ("length", "l", EM_N ("Length at the mouth"), 5000.0, "form", SIDED),
  EM_FIELD_SIZE_WHEN ("width", "w", EM_N ("Width at the mouth"), 5000.0, "form", SIDED),
  EM_FIELD_SIZE_WHEN ("diameter", "D", EM_N ("Mouth diameter"), 2000.0, "form", ROUND),
  EM_FIELD_SIZE ("depth", "d", EM_N ("Depth"), 500.0),
};

/* Share of its mouth a recess is wide at z above its floor; cap: radius² = z·(2R − z), R = (r² + d²)/2d. */
static double
spread (const EmShape *shape, double z_mm)
{
  double d = shape->height_mm, r = shape->p[P_WIDTH] / 2.0, z = fmax (0.0, fmin (z_mm, d)), u = z / d;

  switch ((int) shape->p[P_FORM])
    {
    case CONE:
      return u;
    case ELLIPSOID:
      return sqrt (u * (2.0 - u));
    case CAP:
      return sqrt (z * ((r * r + d * d) / d - z)) / r;
    default:
      return 1.0;
    }
}

/* Wall and floor. Ellipsoid: by Thomsen's mean, p = 1.6075, within 1.2 % of the true surface. */
static double
inner_area (int form, double l, double w, double d)
{
  double a = l / 2.0, b = w / 2.0, p = 1.6075;

  switch (form)
    {
    case BOX:
      return l * w + 2.0 * (l + w) * d;
    case CYLINDER:
      return EM_PI * b * b + 2.0 * EM_PI * b * d;
    case CONE:
      return EM_PI * b * hypot (b, d);
    case ELLIPSOID:
      return 2.0 * EM_PI * pow ((pow (a * b, p) + pow (a * d, p) + pow (b * d, p)) / 3.0, 1.0 / p);
    default:
      return EM_PI * (b * b + d * d);
    }
}

/* Box l·w·d, cylinder π/4·D²·d, cone a third of that, half ellipsoid ⅔·π·a·b·d, cap (π·d/6)(3r² + d²) for d ≤ r. */
static EmStatus
solve (const double *value, EmShape *out_shape, EmFault *out_fault)
{
  static const double share[] = { 1.0, EM_PI / 4.0, EM_PI / 12.0, EM_PI / 6.0 };
  int form = (int) value[FORM];
  bool is_sided = form == BOX || form == ELLIPSOID;
  double l = is_sided ? value[LENGTH] : value[DIAMETER], w = is_sided ? value[WIDTH] : l, d = value[DEPTH];

  if (form == CAP && d > w / 2.0)
    return em_fault_set_conflict (out_fault, "depth", "diameter", d, 0.0, w / 2.0);
  out_shape->height_mm = d;
  out_shape->net_volume_mm3 = form == CAP ? EM_PI * d / 6.0 * (0.75 * w * w + d * d) : share[form] * l * w * d;
  out_shape->coated_area_mm2 = inner_area (form, l, w, d);
  out_shape->cap_edge_mm = 0.0;
  out_shape->reach_extent_mm = fmax (l, w);
  out_shape->p[P_FORM] = form;
  out_shape->p[P_LENGTH] = fmax (l, w);
  out_shape->p[P_WIDTH] = fmin (l, w);
  out_shape->p[P_IS_TURNED] = w > l;
  return EM_OK;
}

static double
width_mm (const EmShape *shape, double z_mm)
{
  return shape->p[P_WIDTH] * spread (shape, z_mm);
}

static double
length_mm (const EmShape *shape, double z_mm)
{
  return shape->p[P_LENGTH] * spread (shape, z_mm) * (shape->p[P_FORM] > 0.5 ? EM_PI / 4.0 : 1.0);
}

/* The hollow in section, from the left of its mouth at y = 0 down to the floor and up on the right: straight flanks by their
 * corners, bent ones by chords that are shorter where they bend more. */
static void
draw_hollow (const EmShape *shape, EmInk ink, bool is_start, EmOutline *out)
{
  double w = shape->p[P_WIDTH] / 2, d = shape->height_mm;
  int form = (int) shape->p[P_FORM], half = form == ELLIPSOID || form == CAP ? 24 : 1;

  for (int i = -half; i <= half; i++)
    {
      double u = fabs ((double) i) / half, z = d * u * u, side = i < 0 ? -1 : 1;

      if (i == 0 && (form == BOX || form == CYLINDER))
        em_outline_point (out, ink, false, -w, -d);
      em_outline_point (out, ink, is_start && i == -half, side * w * spread (shape, z), z - d);
    }
}

static void
outline (const EmShape *shape, EmView view, EmOutline *out)
{
  double l = shape->p[P_LENGTH] / 2, w = shape->p[P_WIDTH] / 2, d = shape->height_mm, x = 2 * w;
  int form = (int) shape->p[P_FORM];
  bool is_sided = form == BOX || form == ELLIPSOID, is_turned = shape->p[P_IS_TURNED] > 0.5;
  int longer = !is_sided ? DIAMETER : is_turned ? WIDTH : LENGTH, shorter = !is_sided ? DIAMETER : is_turned ? LENGTH : WIDTH;

  *out = (EmOutline) { 0 };
  if (view == EM_VIEW_PLAN)
    {
      em_outline_box (out, EM_INK_BASE, -l - w, -x, l + w, x);
      if (form != BOX)
        em_outline_arc (out, EM_INK_METAL, true, 0, 0, l, w, 0, 2 * EM_PI);
      else
        em_outline_box (out, EM_INK_METAL, -l, -w, l, w);
      em_outline_dim (out, -l, w, l, w, w, longer, 2 * l);
      return;
    }
  em_outline_run (out, EM_INK_BASE, 4, (const double[]) { x, 0, x, -d - w, -x, -d - w, -x, 0 });
  draw_hollow (shape, EM_INK_BASE, false, out);
  draw_hollow (shape, EM_INK_METAL, true, out);
  em_outline_dim (out, w, -d, w, 0, -0.5 * w, DEPTH, d);
  em_outline_dim (out, -w, 0, w, 0, 0.5 * w, shorter, 2 * w);
}

static int
layer (const EmShape *shape, double z_mm, int max, double *out_xy_mm)
{
  double w = width_mm (shape, z_mm) / 2;

  return em_layer_line (max, out_xy_mm, -w, z_mm - shape->height_mm, w, z_mm - shape->height_mm);
}

const EmKind em_kind_recess =
{
  .id = "recess", .name = EM_N ("Recess fill"), .summary = EM_N ("A pit, pocket or detent filled flush"),
  .fields = fields, .n_fields = EM_N_OF (fields), .melts_out = true,
  .solve = solve, .width_mm = width_mm, .length_mm = length_mm, .outline = outline, .layer = layer,
};
