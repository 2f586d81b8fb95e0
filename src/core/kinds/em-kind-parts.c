/* em-kind-parts: runs, arcs and dimensions of the kinds' drawings.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-kind-parts.h"

void
em_outline_point (EmOutline *outline, EmInk ink, bool is_start, double x_mm, double y_mm)
{
  if (outline->n_points < EM_OUTLINE_MAX)
    outline->point[outline->n_points++] = (EmOutlinePoint) { x_mm, y_mm, ink, is_start };
}

/* n points as x, y pairs: one ring or line. */
void
em_outline_run (EmOutline *outline, EmInk ink, int n, const double *xy_mm)
{
  for (int i = 0; i < n; i++)
    em_outline_point (outline, ink, i == 0, xy_mm[2 * i], xy_mm[2 * i + 1]);
}

void
em_outline_box (EmOutline *outline, EmInk ink, double x0_mm, double y0_mm, double x1_mm, double y1_mm)
{
  em_outline_run (outline, ink, 4, (const double[]) { x0_mm, y0_mm, x1_mm, y0_mm, x1_mm, y1_mm, x0_mm, y1_mm });
}

/* Chords of an arc: a full turn's by its share, but enough for a short one to bend. */
static int
arc_steps (double from, double to)
{
  int n = (int) ceil (fabs (to - from) / (2.0 * EM_PI) * EM_ARC_STEPS);

  return n < 8 ? 8 : n > EM_ARC_STEPS ? EM_ARC_STEPS : n;
}

void
em_outline_arc (EmOutline *outline, EmInk ink, bool is_start, double x_mm, double y_mm, double radius_x_mm, double radius_y_mm,
                double from, double to)
{
  int n = arc_steps (from, to);

  for (int i = 0; i <= n; i++)
    {
      double angle = from + (to - from) * i / n;

      em_outline_point (outline, ink, is_start && i == 0, x_mm + radius_x_mm * cos (angle), y_mm + radius_y_mm * sin (angle));
    }
}

void
em_outline_dim (EmOutline *outline, double x0_mm, double y0_mm, double x1_mm, double y1_mm, double offset_mm, int field, double value)
{
  if (outline->n_dims < EM_OUTLINE_DIM_MAX)
    outline->dim[outline->n_dims++] = (EmOutlineDim) { x0_mm, y0_mm, x1_mm, y1_mm, offset_mm, field, value, 0, 0 };
}

void
em_outline_arc_dim (EmOutline *outline, double radius_mm, double turn, int field, double value)
{
  em_outline_dim (outline, radius_mm, 0, radius_mm * cos (turn), radius_mm * sin (turn), 0, field, value);
  outline->dim[outline->n_dims - 1].turn = turn;
}

void
em_outline_angle (EmOutline *outline, double x_mm, double y_mm, double radius_mm, double from, double turn, int legs, int field)
{
  if (outline->n_dims < EM_OUTLINE_DIM_MAX)
    outline->dim[outline->n_dims++] = (EmOutlineDim) { x_mm, y_mm, x_mm + radius_mm * cos (from), y_mm + radius_mm * sin (from), 0, field,
                                                       EM_DEGREES (turn), turn, legs };
}

int
em_layer_arc (int max, double *out_xy_mm, double x_mm, double y_mm, double radius_x_mm, double radius_y_mm, double from, double to)
{
  int steps = arc_steps (from, to), n = max < steps + 1 ? max : steps + 1;

  if (n < 2)
    return 0;
  for (int i = 0; i < n; i++)
    {
      double angle = from + (to - from) * i / (n - 1);

      out_xy_mm[2 * i] = x_mm + radius_x_mm * cos (angle);
      out_xy_mm[2 * i + 1] = y_mm + radius_y_mm * sin (angle);
    }
  return n;
}

int
em_layer_line (int max, double *out_xy_mm, double x0_mm, double y0_mm, double x1_mm, double y1_mm)
{
  if (max < 2)
    return 0;
  out_xy_mm[0] = x0_mm;
  out_xy_mm[1] = y0_mm;
  out_xy_mm[2] = x1_mm;
  out_xy_mm[3] = y1_mm;
  return 2;
}
