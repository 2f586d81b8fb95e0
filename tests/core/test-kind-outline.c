/* Checks of the kinds' drawings: the metal drawn has the area it has, holes are holes, dimensions measure what they say.
 *
 * Areas by the surveyor's formula over the drawn rings, a ring turned against the one around it taken off. Expected areas by
 * elementary mensuration, worked beside each row; arcs are drawn by chords, a full turn by 72, which take 0.13 % off a disc.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-kind.h"
#include "em-test-main.h"

#include <string.h>

#define X EM_ABSENT
#define PI 3.14159265358979323846

static const struct { const char *name, *kind; double value[EM_FIELD_MAX]; EmView view; EmInk ink; double area_mm2, tolerance; } rows[] =
{
  { "nick ½·2·1", "edge-nick", { 10, 2, 1, 0, X, X }, EM_VIEW_SECTION, EM_INK_METAL, 1.0, 1e-9 },
  { "tapered nick from above ½·10·2", "edge-nick", { 10, 2, 1, 1, X, X }, EM_VIEW_PLAN, EM_INK_METAL, 10.0, 1e-9 },
  { "corner 1 − π/4", "worn-corner", { 20, 1, X, 90, X, X }, EM_VIEW_SECTION, EM_INK_METAL, 0.2146018, 0.01 },
  { "60° corner 0.6848533·(1.5² − 0.5²)", "worn-corner", { 20, 1.5, 0.5, 60, X, X }, EM_VIEW_SECTION, EM_INK_METAL, 1.3697066, 0.01 },
  { "shaft end ring π·(10² − 8.5²)", "worn-corner", { X, 1.5, X, 90, 20, 0 }, EM_VIEW_PLAN, EM_INK_METAL, 87.179196, 2e-3 },
  { "half of it, 60°: ½·π·(10² − 7.75²)", "worn-corner", { 10 * PI, 1.5, X, 60, 20, 0 }, EM_VIEW_PLAN, EM_INK_METAL, 62.733669, 2e-3 },
  { "a third of a bore's edge: ⅓·π·(11.5² − 10²)", "worn-corner", { 20 * PI / 3, 1.5, X, 90, 20, 1 }, EM_VIEW_PLAN, EM_INK_METAL, 33.772121, 2e-3 },
  { "bore ring π·(11.5² − 10²)", "worn-corner", { X, 1.5, X, 90, 20, 1 }, EM_VIEW_PLAN, EM_INK_METAL, 101.316364, 2e-3 },
  { "the metal round it has a hole: π·((1.3·11.5)² − 10²)", "worn-corner", { X, 1.5, X, 90, 20, 1 }, EM_VIEW_PLAN, EM_INK_BASE, 387.994546, 2e-3 },
  { "wall 5·0.6", "sidewall", { 20, 5, 0.6, X, X, X }, EM_VIEW_SECTION, EM_INK_METAL, 3.0, 1e-9 },
  { "face 8·0.8", "face", { 0, 20, 8, X, X, 0.8 }, EM_VIEW_SECTION, EM_INK_METAL, 6.4, 1e-9 },
  { "disc π·6²", "face", { 1, X, X, 12, X, 0.8 }, EM_VIEW_PLAN, EM_INK_METAL, 113.097336, 2e-3 },
  { "rib 0.5·(2 + 6) + 2·0.5²", "rib", { 10, 2, 0.5, 3, 0, 0 }, EM_VIEW_SECTION, EM_INK_METAL, 4.5, 1e-9 },
  { "rounded rib 0.5·(2 + 6) + ½·π·0.5²", "rib", { 10, 2, 0.5, 3, 1, 0 }, EM_VIEW_SECTION, EM_INK_METAL, 4.3926991, 2e-3 },
  { "rib from above 10·3", "rib", { 10, 2, 0.5, 3, 0, 0 }, EM_VIEW_PLAN, EM_INK_METAL, 30.0, 1e-9 },
  { "one end wrapped: + ½·π·1.5²", "rib", { 10, 2, 0.5, 3, 0, 1 }, EM_VIEW_PLAN, EM_INK_METAL, 33.534292, 2e-3 },
  { "both: + π·1.5²", "rib", { 10, 2, 0.5, 3, 0, 2 }, EM_VIEW_PLAN, EM_INK_METAL, 37.068583, 2e-3 },
  { "bore ring ¼·π·(13² − 12²)", "bore", { 12, 13, X, 8, X, X }, EM_VIEW_SECTION, EM_INK_METAL, 19.634954, 2e-3 },
  { "a third of it", "bore", { 12, 13, X, 8, 120, X }, EM_VIEW_SECTION, EM_INK_METAL, 6.544985, 2e-3 },
  { "the block is bored: π·6.5²·(1.6² − 1)", "bore", { 12, 13, X, 8, X, X }, EM_VIEW_SECTION, EM_INK_BASE, 207.061009, 2e-3 },
  { "cone seat, both sides 2·3·(0.6·√(3² + 2.5²)/3)", "seat", { 0, 10, 5, 3, X, 0.6 }, EM_VIEW_SECTION, EM_INK_METAL, 4.6861498, 1e-7 },
  { "sphere seat a quarter turn each side ½·π·(4² − 3.4²)", "seat", { 1, 8, X, X, 4, 0.6 }, EM_VIEW_SECTION, EM_INK_METAL, 6.974336, 2e-3 },
  { "pin ring ¼·π·(13² − 12²)", "pin", { 13, 12, X, 20, X, X }, EM_VIEW_SECTION, EM_INK_METAL, 19.634954, 2e-3 },
  { "dam 2·2.5, tan β = ½", "dam", { 12, 3.5, 2, 26.56505118, 0, X }, EM_VIEW_SECTION, EM_INK_METAL, 5.0, 1e-7 },
  { "its foot and its crest: 12·3.5 + 12·1.5", "dam", { 12, 3.5, 2, 26.56505118, 0, X }, EM_VIEW_PLAN, EM_INK_METAL, 60.0, 1e-7 },
  { "drafted: 12·3.5 + 10·1.5", "dam", { 12, 3.5, 2, 26.56505118, 1, X }, EM_VIEW_PLAN, EM_INK_METAL, 57.0, 1e-7 },
  { "tapered over 4: 12·3 + 4·3", "dam", { 12, 3, 2, 0, 3, 4 }, EM_VIEW_PLAN, EM_INK_METAL, 48.0, 1e-7 },
  { "rounded, upright: 9·3 + ¼·π·3²", "dam", { 12, 3, 2, 0, 2, X }, EM_VIEW_PLAN, EM_INK_METAL, 34.068583, 2e-3 },
  { "box 4·2", "recess", { 0, 10, 4, X, 2, X }, EM_VIEW_SECTION, EM_INK_METAL, 8.0, 1e-9 },
  { "box wider than long, across its short side 4·2", "recess", { 0, 4, 10, X, 2, X }, EM_VIEW_SECTION, EM_INK_METAL, 8.0, 1e-9 },
  { "cylinder 4·2", "recess", { 1, X, X, 4, 2, X }, EM_VIEW_SECTION, EM_INK_METAL, 8.0, 1e-9 },
  { "cone ½·4·2", "recess", { 2, X, X, 4, 2, X }, EM_VIEW_SECTION, EM_INK_METAL, 4.0, 1e-9 },
  { "half ellipse ½·π·2·1.5", "recess", { 3, 10, 4, X, 1.5, X }, EM_VIEW_SECTION, EM_INK_METAL, 4.712389, 2e-3 },
  { "its mouth π·5·2", "recess", { 3, 10, 4, X, 1.5, X }, EM_VIEW_PLAN, EM_INK_METAL, 31.415927, 2e-3 },
  { "segment of R 2.5: 2.5²·acos(1.5/2.5) − 1.5·2", "recess", { 4, X, X, 4, 1, X }, EM_VIEW_SECTION, EM_INK_METAL, 2.795595, 2e-3 },
  { "groove 2·0.5 + 2²·tan 30°", "groove", { 15, 2, 0.5, 60, X, X }, EM_VIEW_SECTION, EM_INK_METAL, 3.3094011, 1e-7 },
};

enum { N_ROWS = (int) (sizeof rows / sizeof rows[0]) };

/* Twice the area of the rings in ink, counter-clockwise ones positive. */
static double
area_of (const EmOutline *outline, EmInk ink)
{
  double sum = 0.0;

  for (int i = 0; i < outline->n_points;)
    {
      int first = i;

      for (i++; i < outline->n_points && !outline->point[i].is_start; i++)
        ck_assert_int_eq (outline->point[i].ink, outline->point[first].ink);
      for (int k = first; k < i && outline->point[first].ink == ink; k++)
        {
          const EmOutlinePoint *a = &outline->point[k], *b = &outline->point[k + 1 < i ? k + 1 : first];

          sum += a->x_mm * b->y_mm - b->x_mm * a->y_mm;
        }
    }
  return fabs (sum) / 2.0;
}

static void
draw (int row, EmView view, EmShape *out_shape, EmOutline *out_outline)
{
  const EmKind *kind = em_kind_find (rows[row].kind);

  ck_assert_msg (em_shape_solve (kind, rows[row].value, out_shape, NULL) == EM_OK, "%s", rows[row].name);
  kind->outline (out_shape, view, out_outline);
}

/* Rings that lie side by side are all turned one way, mirror images too. */
START_TEST (test_areas)
{
  EmShape shape;
  EmOutline outline;
  double area;

  draw (_i, rows[_i].view, &shape, &outline);
  area = area_of (&outline, rows[_i].ink);
  ck_assert_msg (fabs (area / rows[_i].area_mm2 - 1.0) <= rows[_i].tolerance, "%s: %.8g, not %.8g", rows[_i].name, area, rows[_i].area_mm2);
}
END_TEST

/* Nothing dropped for want of room, nothing infinite, the first point of all starts a ring. */
START_TEST (test_outlines_are_whole)
{
  for (int view = EM_VIEW_SECTION; view <= EM_VIEW_PLAN; view++)
    {
      EmShape shape;
      EmOutline outline;

      draw (_i, (EmView) view, &shape, &outline);
      ck_assert_int_gt (outline.n_points, 4);
      ck_assert_msg (outline.n_points < EM_OUTLINE_MAX, "%s, view %d: full", rows[_i].name, view);
      ck_assert (outline.point[0].is_start);
      for (int i = 0; i < outline.n_points; i++)
        ck_assert (isfinite (outline.point[i].x_mm) && isfinite (outline.point[i].y_mm));
    }
}
END_TEST

/* How far x, y lies from the nearest edge drawn, rings closed. */
static double
edge_distance (const EmOutline *outline, double x, double y)
{
  double nearest = INFINITY;

  for (int i = 0, first = 0; i < outline->n_points; i++)
    {
      first = outline->point[i].is_start ? i : first;
      int next = i + 1 < outline->n_points && !outline->point[i + 1].is_start ? i + 1 : first;
      double dx = outline->point[next].x_mm - outline->point[i].x_mm, dy = outline->point[next].y_mm - outline->point[i].y_mm, length = hypot (dx, dy);
      double along = length > 0 ? ((x - outline->point[i].x_mm) * dx + (y - outline->point[i].y_mm) * dy) / length : 0, t = fmin (fmax (along, 0), length);

      if (length > 0)
        nearest = fmin (nearest, hypot (outline->point[i].x_mm + t * dx / length - x, outline->point[i].y_mm + t * dy / length - y));
    }
  return nearest;
}

/* An angle's arc turns as far as the number says, and goes from edge to edge of what is drawn, but where a leg is drawn for it. */
static void
check_angle (const char *name, const EmOutline *outline, const EmOutlineDim *dim)
{
  double dx = dim->x1_mm - dim->x0_mm, dy = dim->y1_mm - dim->y0_mm, to = atan2 (dy, dx) + dim->turn, radius = hypot (dx, dy);

  ck_assert_double_gt (radius, 0);
  ck_assert_msg (fabs (dim->turn * 180.0 / PI / dim->value - 1.0) < 1e-9, "%s: turns %g rad for %g°", name, dim->turn, dim->value);
  if (dim->legs < 2)
    ck_assert_msg (edge_distance (outline, dim->x1_mm, dim->y1_mm) < 1e-6 * radius, "%s: begins off the edge", name);
  if (dim->legs < 1)
    ck_assert_msg (edge_distance (outline, dim->x0_mm + radius * cos (to), dim->y0_mm + radius * sin (to)) < 1e-6 * radius, "%s: ends off the edge", name);
}

/* A length's dimension spans that length, and shows the field's own value where the office gave one. */
START_TEST (test_dimensions)
{
  for (int view = EM_VIEW_SECTION; view <= EM_VIEW_PLAN; view++)
    {
      EmShape shape;
      EmOutline outline;

      draw (_i, (EmView) view, &shape, &outline);
      ck_assert_int_gt (outline.n_dims, 0);
      int n_arcs = 0;
      for (int i = 0; i < outline.n_dims; i++)
        {
          const EmOutlineDim *dim = &outline.dim[i];
          const EmField *field = dim->field >= 0 ? &shape.kind->fields[dim->field] : NULL;
          double span = hypot (dim->x1_mm - dim->x0_mm, dim->y1_mm - dim->y0_mm), given = field != NULL ? rows[_i].value[dim->field] : X;
          /* A radius line may start short of its centre. */
          bool is_angle = field != NULL && field->quantity == EM_QUANTITY_ANGLE, is_free = is_angle || (field != NULL && strcmp (field->id, "radius") == 0);

          if (is_angle)
            check_angle (rows[_i].name, &outline, dim);
          /* An arc's length is that of the edge, ½·D·turn; its line stands inside, from one end of it to the other. */
          if (dim->turn != 0 && !is_angle)
            {
              double turned = atan2 (dim->y1_mm, dim->x1_mm) - atan2 (dim->y0_mm, dim->x0_mm);

              ck_assert_str_eq (field->id, "length");
              ck_assert_double_eq_tol (dim->value, rows[_i].value[4] / 2 * dim->turn, 1e-9);
              ck_assert_double_eq_tol (cos (turned), cos (dim->turn), 1e-9);
              ck_assert_double_eq_tol (sin (turned), sin (dim->turn), 1e-9);
              n_arcs++;
              continue;
            }
          ck_assert_msg (is_free || fabs (span / dim->value - 1.0) < 1e-6, "%s, %s: %g drawn for %g", rows[_i].name, field != NULL ? field->id : "derived",
                         span, dim->value);
          ck_assert_msg (isnan (given) || fabs (dim->value / given - 1.0) < 1e-6, "%s, %s: shows %g", rows[_i].name, field->id, dim->value);
        }
      /* A corner round part of a circle shows how far. */
      ck_assert_int_eq (n_arcs, view == EM_VIEW_PLAN && strcmp (shape.kind->id, "worn-corner") == 0 && !isnan (rows[_i].value[0]) && !isnan (rows[_i].value[4]));
    }
}
END_TEST

/* The boundary at the finished height of the weld lies on the edge of the metal drawn: no layer floats. */
START_TEST (test_layers_fit)
{
  EmShape shape;
  EmOutline outline;
  double xy[256];
  int n;

  draw (_i, EM_VIEW_SECTION, &shape, &outline);
  n = shape.kind->layer (&shape, shape.height_mm, 128, xy);
  ck_assert_msg (n >= 2, "%s has no layer at its finished height", rows[_i].name);
  for (int end = 0; end < 2; end++)
    {
      double x = xy[end == 0 ? 0 : 2 * n - 2], y = xy[end == 0 ? 1 : 2 * n - 1], nearest = INFINITY;

      for (int i = 0; i < outline.n_points; i++)
        if (outline.point[i].ink == EM_INK_METAL)
          nearest = fmin (nearest, hypot (outline.point[i].x_mm - x, outline.point[i].y_mm - y));
      ck_assert_msg (nearest < 0.02 * shape.reach_extent_mm, "%s: the last layer ends %g from the metal", rows[_i].name, nearest);
    }
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("core: outlines of kinds");
  TCase *tcase = tcase_create ("outline");
  SRunner *runner = srunner_create (suite);

  tcase_add_loop_test (tcase, test_areas, 0, N_ROWS);
  tcase_add_loop_test (tcase, test_outlines_are_whole, 0, N_ROWS);
  tcase_add_loop_test (tcase, test_dimensions, 0, N_ROWS);
  tcase_add_loop_test (tcase, test_layers_fit, 0, N_ROWS);
  suite_add_tcase (suite, tcase);
  srunner_run_all (runner, CK_ENV);

  int n_failed = srunner_ntests_failed (runner);

  srunner_free (runner);
  return n_failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
