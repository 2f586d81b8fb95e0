/* em-kind-worn-corner: a shut-off or parting edge worn round, straight or around a circle.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-kind-parts.h"

enum { LENGTH, RADIUS, RADIUS_TO, ANGLE, DIAMETER, SIDE };
enum { P_LENGTH, P_R, P_TO, P_THETA, P_TURN, P_EDGE_R, P_SIGN };

static const char *const side_ids[] = { "outer", "bore", NULL };
static const char *const side_names[] = { EM_N ("Outside diameter"), EM_N ("Bore"), NULL };

static const EmField fields[] =
{
  EM_FIELD_OPTIONAL ("length", "l", EM_N ("Length along the edge"), 20000.0),
  EM_FIELD_SIZE ("radius", "r", EM_N ("Worn radius"), 200.0),
  { .id = "radius_to", .symbol = "r₁", .name = EM_N ("Radius to leave"), .high = 200.0, .low_allowed = true, .preset = 0.0 },
  { .id = "angle", .symbol = "θ", .name = EM_N ("Angle of the solid corner"), .quantity = EM_QUANTITY_ANGLE, .low = 1.0, .high = 179.0,
    .low_allowed = true, .preset = 90.0 },
  EM_FIELD_OPTIONAL ("diameter", "D", EM_N ("Diameter of a circular edge"), 5000.0),
  EM_FIELD_CHOICE ("side", EM_N ("Circular edge on"), side_ids, side_names),
};

/* Half the angle the arc at rho about the centre of the worn radius r has within the new metal. To sharp: up to the faces,
 * (π − θ)/2 − acos(r/ρ). To a radius r1: the same as far as the faces reach, then up to the arc r1, whose centre lies
 * d = (r − r1)/sin(θ/2) nearer the tip. */
static double
half_angle (const EmShape *shape, double rho)
{
  double r = shape->p[P_R], to = shape->p[P_TO], half = shape->p[P_THETA] / 2.0;
  double d = (r - to) / sin (half), flat = (r - to) / tan (half);

  if (to > 0.0 && rho > hypot (r, flat))
    return acos (fmin (1.0, (rho * rho + d * d - to * to) / (2.0 * rho * d)));
  return fmax (0.0, EM_PI / 2.0 - half - acos (fmin (1.0, r / rho)));
}

/* Distance of the spandrel's centroid from either face, over r: kite of tip, tangent points and centre less the sector;
 * 0.223368 at 90° (Pappus; mensuration tables). */
static double
centroid_ratio (double theta)
{
  double half = theta / 2.0, gamma = EM_PI / 2.0 - half, tip = 1.0 / sin (half), tangent = 1.0 / tan (half);
  double kite = tangent * (tangent * cos (half) + tip) / 3.0, sector = gamma * tip - 2.0 * sin (gamma) / 3.0;

  return (kite - sector) / (tangent - gamma) * sin (half);
}

static EmStatus
check (const double *value, EmFault *out_fault)
{
  double r = value[RADIUS], theta = EM_RADIANS (value[ANGLE]);

  if (value[RADIUS_TO] >= r)
    return em_fault_open (out_fault, false, true, em_fault_set_conflict (out_fault, "radius_to", "radius", value[RADIUS_TO], 0.0, r));
  if (em_is_absent (value[DIAMETER]))
    return em_is_absent (value[LENGTH]) ? em_fault_set (out_fault, EM_FAULT_MISSING, "length", EM_ABSENT, 0.0, 20000.0) : EM_OK;
  /* The worn arc may not cross the axis: it leaves the end face r·(1 + cos θ) in from the diameter. */
  if (value[SIDE] < 0.5 && value[DIAMETER] < 2.0 * r * (1.0 + cos (theta)))
    return em_fault_set_conflict (out_fault, "diameter", "radius", value[DIAMETER], 2.0 * r * (1.0 + cos (theta)), EM_ABSENT);
  if (value[LENGTH] > EM_PI * value[DIAMETER] * (1.0 + 1e-9))
    return em_fault_set_conflict (out_fault, "length", "diameter", value[LENGTH], 0.0, EM_PI * value[DIAMETER]);
  return EM_OK;
}

/* A = K·(r² − r1²), K = cot(θ/2) − (π − θ)/2; times l, or by Pappus round a circular edge, or the share of it that length is. */
static EmStatus
solve (const double *value, EmShape *out_shape, EmFault *out_fault)
{
  EmStatus status = check (value, out_fault);

  if (status != EM_OK)
    return status;

  double r = value[RADIUS], to = value[RADIUS_TO], theta = EM_RADIANS (value[ANGLE]), gamma = (EM_PI - theta) / 2.0;
  double k = 1.0 / tan (theta / 2.0) - gamma, area = k * (r * r - to * to), arc = 2.0 * gamma * r;
  bool is_round = !em_is_absent (value[DIAMETER]);
  double edge = is_round ? value[DIAMETER] / 2.0 : 0.0, sign = value[SIDE] > 0.5 ? 1.0 : -1.0;
  double turn = !is_round ? 0.0 : em_is_absent (value[LENGTH]) ? 2.0 * EM_PI : fmin (2.0 * EM_PI, value[LENGTH] / edge);
  double e = centroid_ratio (theta) * k * (r * r * r - to * to * to);
  double arc_in = r * (1.0 - sin (gamma) / gamma * sin (theta / 2.0));

  out_shape->height_mm = (r - to) * (1.0 / sin (theta / 2.0) - 1.0);
  out_shape->net_volume_mm3 = is_round ? turn * (edge * area + sign * e) : area * value[LENGTH];
  out_shape->coated_area_mm2 = is_round ? arc * turn * (edge + sign * arc_in) : arc * value[LENGTH];
  out_shape->cap_edge_mm = 0.0;
  out_shape->reach_extent_mm = is_round ? 2.0 * edge * sin (fmin (turn, EM_PI) / 2.0) : value[LENGTH];
  out_shape->p[P_LENGTH] = is_round ? turn * edge : value[LENGTH];
  out_shape->p[P_R] = r;
  out_shape->p[P_TO] = to;
  out_shape->p[P_THETA] = theta;
  out_shape->p[P_TURN] = turn;
  out_shape->p[P_EDGE_R] = edge;
  out_shape->p[P_SIGN] = sign;
  return EM_OK;
}

/* Layers follow the worn arc: w = 2·ρ·φ at ρ = r + z. */
static double
width_mm (const EmShape *shape, double z_mm)
{
  double rho = shape->p[P_R] + fmax (0.0, fmin (z_mm, shape->height_mm));

  return 2.0 * rho * half_angle (shape, rho);
}

/* Round a circular edge by Pappus, layer by layer: an arc ±φ has its centroid sin φ/φ of its radius out along the bisector. */
static double
length_mm (const EmShape *shape, double z_mm)
{
  double rho = shape->p[P_R] + fmax (0.0, fmin (z_mm, shape->height_mm)), phi = half_angle (shape, rho);
  double half = shape->p[P_THETA] / 2.0, mean = phi > 1e-8 ? sin (phi) / phi : 1.0;

  if (shape->p[P_TURN] <= 0.0)
    return shape->p[P_LENGTH];
  return shape->p[P_TURN] * (shape->p[P_EDGE_R] + shape->p[P_SIGN] * (shape->p[P_R] - rho * mean * sin (half)));
}

/* Top face along y = 0 to the left of the tip at the origin, the other face down from it. */
static void
draw_section (const EmShape *shape, EmOutline *out)
{
  double r = shape->p[P_R], to = shape->p[P_TO], theta = shape->p[P_THETA], t = r / tan (theta / 2.0), m = t + 2.0 * r;
  double from = theta - EM_PI / 2.0, end_x = -m * cos (theta), end_y = -m * sin (theta);

  em_outline_point (out, EM_INK_BASE, true, end_x, end_y);
  em_outline_arc (out, EM_INK_BASE, false, -t, -r, r, r, from, EM_PI / 2.0);
  em_outline_run (out, EM_INK_BASE, 1, (const double[]) { -m, 0 });
  out->point[out->n_points - 1].is_start = false;
  em_outline_point (out, EM_INK_BASE, false, -m + 0.5 * end_x, end_y);
  em_outline_arc (out, EM_INK_METAL, true, -t, -r, r, r, from, EM_PI / 2.0);
  if (to > 0.0)
    em_outline_arc (out, EM_INK_METAL, false, -to / tan (theta / 2.0), -to, to, to, EM_PI / 2.0, from);
  else
    em_outline_point (out, EM_INK_METAL, false, 0, 0);
  em_outline_dim (out, -t, -r, -t + r * cos (theta / 2.0), -r + r * sin (theta / 2.0), 0, RADIUS, r);
  if (fabs (theta - EM_PI / 2.0) > 1e-9)
    em_outline_angle (out, 0, 0, t + r, EM_PI, theta, 0, ANGLE);
}

static void
outline (const EmShape *shape, EmView view, EmOutline *out)
{
  double l = shape->p[P_LENGTH], edge = shape->p[P_EDGE_R], t = shape->p[P_R] / tan (shape->p[P_THETA] / 2.0), m = 3.0 * t;

  *out = (EmOutline) { 0 };
  if (view == EM_VIEW_SECTION)
    draw_section (shape, out);
  else if (shape->p[P_TURN] > 0.0)
    {
      /* Along the axis the end face shows the worn metal as a ring r·(1 + cos θ) wide. */
      double sign = shape->p[P_SIGN], turn = shape->p[P_TURN], in = fmax (0, edge + sign * shape->p[P_R] * (1 + cos (shape->p[P_THETA])));
      bool is_whole = turn > 2 * EM_PI * (1 - 1e-9);

      if (sign > 0)
        em_outline_arc (out, EM_INK_BASE, true, 0, 0, 1.3 * in, 1.3 * in, 0, 2 * EM_PI);
      em_outline_arc (out, EM_INK_BASE, true, 0, 0, edge, edge, sign > 0 ? 2 * EM_PI : 0, sign > 0 ? 0 : 2 * EM_PI);
      em_outline_arc (out, EM_INK_METAL, true, 0, 0, edge, edge, 0, turn);
      em_outline_arc (out, EM_INK_METAL, is_whole, 0, 0, in, in, turn, 0);
      em_outline_dim (out, -edge, 0, edge, 0, edge, DIAMETER, 2 * edge);
      /* Along the edge itself, drawn where there is room: inside it. */
      if (!is_whole)
        em_outline_arc_dim (out, fmax (0.75 * fmin (in, edge), 0.4 * edge), turn, LENGTH, l);
    }
  else
    {
      em_outline_box (out, EM_INK_BASE, -m, -m - t, l + m, 0);
      em_outline_box (out, EM_INK_METAL, 0, -t, l, 0);
      em_outline_dim (out, 0, 0, l, 0, m / 2, LENGTH, l);
    }
}

static bool
is_round (const EmShape *shape)
{
  return shape->p[P_TURN] > 0.0;
}

static int
layer (const EmShape *shape, double z_mm, int max, double *out_xy_mm)
{
  double r = shape->p[P_R], rho = r + fmin (z_mm, shape->height_mm), phi = half_angle (shape, rho), half = shape->p[P_THETA] / 2.0;

  return em_layer_arc (max, out_xy_mm, -r / tan (half), -r, rho, rho, half + phi, half - phi);
}

const EmKind em_kind_worn_corner =
{
  .id = "worn-corner", .name = EM_N ("Worn corner"), .summary = EM_N ("A shut-off or parting edge worn round, built back to sharp or to a smaller radius"),
  .fields = fields, .n_fields = EM_N_OF (fields), .sits_in_slot = true, .is_round = is_round,
  .solve = solve, .width_mm = width_mm, .length_mm = length_mm, .outline = outline, .layer = layer,
};
