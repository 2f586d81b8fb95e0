/* em-drawing: fitting a feature's outline into a box, and stroking its metal.
 *
 * Conventions: ISO 128-3 (line kinds, hatching at 45°, interrupted views), ISO 5455 (scales, with whole steps
 * between for a better fit), ISO 129-1 (dimensions; texts upright as ASME Y14.5 reads them).
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-drawing-private.h"

#include <math.h>

/* Plans that would be longer than this many times their room, drawn as wide as can be seen well, are interrupted. */
#define INTERRUPT_FROM 3.0

void
em_drawing_style_paper (EmDrawingStyle *out_style)
{
  *out_style = (EmDrawingStyle) {
    .ink = { 0.10, 0.11, 0.12, 1 }, .quiet = { 0.42, 0.43, 0.45, 1 }, .base = { 0.55, 0.56, 0.58, 1 },
    .metal = { 0.925, 0.800, 0.665, 1 }, .accent = { EM_ACCENT_RED, EM_ACCENT_GREEN, EM_ACCENT_BLUE, 1 }, .paper = { 1, 1, 1, 1 },
    .font_px = 6.5, .has_hatch = TRUE, .mm_per_unit = 25.4 / 72,
  };
}

void
em_drawing_style_screen (EmDrawingStyle *out_style, gboolean is_dark)
{
  em_drawing_style_paper (out_style);
  out_style->font_px = 11;
  out_style->mm_per_unit = 0;
  if (!is_dark)
    return;
  out_style->ink = (EmColour) { 0.92, 0.92, 0.91, 1 };
  out_style->quiet = (EmColour) { 0.66, 0.66, 0.67, 1 };
  out_style->base = (EmColour) { 0.50, 0.51, 0.53, 1 };
  out_style->metal = (EmColour) { 0.46, 0.29, 0.15, 1 };
  out_style->accent = (EmColour) { 0.890, 0.604, 0.357, 1 };
  out_style->paper = (EmColour) { 0.14, 0.14, 0.15, 1 };
}

void
em_canvas_set_colour (EmCanvas *canvas, const EmColour *colour, double alpha)
{
  cairo_set_source_rgba (canvas->cr, colour->red, colour->green, colour->blue, colour->alpha * alpha);
}

double
em_canvas_x (const EmCanvas *canvas, double x_mm)
{
  const EmBreak *cut = &canvas->cut;

  if (!cut->is_made)
    return canvas->origin_x + x_mm * canvas->scale;
  x_mm = CLAMP (x_mm, canvas->left_mm, canvas->right_mm);
  if (x_mm <= cut->from_mm)
    return canvas->origin_x + x_mm * canvas->scale;
  if (x_mm >= cut->to_mm)
    return canvas->origin_x + cut->gap + (x_mm - (cut->to_mm - cut->from_mm)) * canvas->scale;
  return canvas->origin_x + cut->from_mm * canvas->scale + cut->gap * (x_mm - cut->from_mm) / (cut->to_mm - cut->from_mm);
}

double em_canvas_y (const EmCanvas *canvas, double y_mm) { return canvas->origin_y - y_mm * canvas->scale; }

void
em_canvas_extend (EmCanvas *canvas, double x_mm, double y_mm)
{
  if (!isfinite (x_mm) || !isfinite (y_mm))
    return;
  canvas->left_mm = fmin (canvas->left_mm, x_mm);
  canvas->right_mm = fmax (canvas->right_mm, x_mm);
  canvas->bottom_mm = fmin (canvas->bottom_mm, y_mm);
  canvas->top_mm = fmax (canvas->top_mm, y_mm);
}

static void
measure (EmCanvas *canvas)
{
  canvas->left_mm = canvas->bottom_mm = INFINITY;
  canvas->right_mm = canvas->top_mm = -INFINITY;
  for (int i = 0; i < canvas->outline.n_points; i++)
    em_canvas_extend (canvas, canvas->outline.point[i].x_mm, canvas->outline.point[i].y_mm);
  em_drawing_extend_weld (canvas);
  em_drawing_extend_dims (canvas);
  em_drawing_extend_near (canvas);
}

/* The largest round ratio not above ratio: 1, 1.5, 2, 2.5, 3, 4, 5, 6, 8 times a power of ten, or one over it. */
static double
round_ratio (double ratio)
{
  static const double steps[] = { 8, 6, 5, 4, 3, 2.5, 2, 1.5, 1 };
  double power, best;

  if (ratio < 1)
    {
      power = pow (10, floor (log10 (1 / ratio)));
      best = power * 10;
      for (gsize i = 0; i < G_N_ELEMENTS (steps); i++)
        if (steps[i] * power >= 1 / ratio)
          best = steps[i] * power;
      return 1 / best;
    }
  power = pow (10, floor (log10 (ratio)));
  for (gsize i = 0; i < G_N_ELEMENTS (steps); i++)
    if (steps[i] * power <= ratio)
      return steps[i] * power;
  return power;
}

/* Whether nothing but straight lines along x crosses x0 … x1, and none ends between. */
static gboolean
is_plain_between (const EmCanvas *canvas, double x0_mm, double x1_mm)
{
  const EmOutlinePoint *first = NULL;

  for (int i = 0; i < canvas->outline.n_points; i++)
    {
      const EmOutlinePoint *point = &canvas->outline.point[i];
      gboolean is_last = i + 1 == canvas->outline.n_points || point[1].is_start;
      const EmOutlinePoint *next = is_last ? (first != NULL && !point->is_start ? first : point) : point + 1;

      first = point->is_start ? point : first;
      if (point->x_mm > x0_mm && point->x_mm < x1_mm)
        return FALSE;
      if (fmin (point->x_mm, next->x_mm) <= x0_mm && fmax (point->x_mm, next->x_mm) >= x1_mm && fabs (point->y_mm - next->y_mm) > 1e-9)
        return FALSE;
    }
  return TRUE;
}

/* A plan much longer than wide is drawn interrupted (ISO 128-3), so that its width can be seen: both ends, and of the base beside
 * them a little. */
static void
interrupt (EmCanvas *canvas, double width, double height)
{
  double span_y = canvas->top_mm - canvas->bottom_mm, scale = 0.6 * height / span_y, metal_left = INFINITY, metal_right = -INFINITY;
  EmBreak cut = { .is_made = TRUE, .gap = canvas->style->font_px * 1.6 };

  if (canvas->view != EM_VIEW_PLAN || !(span_y > 0) || !(scale * (canvas->right_mm - canvas->left_mm) > INTERRUPT_FROM * width))
    return;
  for (int i = 0; i < canvas->outline.n_points; i++)
    if (canvas->outline.point[i].ink == EM_INK_METAL)
      {
        metal_left = fmin (metal_left, canvas->outline.point[i].x_mm);
        metal_right = fmax (metal_right, canvas->outline.point[i].x_mm);
      }
  double kept = (width - cut.gap) / scale, beside = 0.15 * kept, end = 0.35 * kept;
  double near_right = metal_right + (em_is_absent (canvas->feature->clearance_mm) ? 0 : canvas->feature->clearance_mm * 1.3);
  cut.from_mm = metal_left + end;
  cut.to_mm = metal_right - end;
  if (!(cut.to_mm > cut.from_mm) || near_right > metal_right + beside || !is_plain_between (canvas, cut.from_mm, cut.to_mm))
    return;
  canvas->left_mm = fmax (canvas->left_mm, metal_left - beside);
  canvas->right_mm = fmin (canvas->right_mm, metal_right + beside);
  canvas->cut = cut;
}

/* Room for dimensions first, the rest for the outline. */
static gboolean
fit (EmCanvas *canvas, double width, double height)
{
  double margin[4], span_x, span_y, scale;

  measure (canvas);
  if (!(canvas->right_mm >= canvas->left_mm) || !(canvas->top_mm >= canvas->bottom_mm))
    return FALSE;
  em_drawing_margins (canvas, margin);
  interrupt (canvas, width - margin[0] - margin[1], height - margin[2] - margin[3]);
  span_x = fmax (canvas->right_mm - canvas->left_mm - (canvas->cut.to_mm - canvas->cut.from_mm), 1e-9);
  span_y = fmax (canvas->top_mm - canvas->bottom_mm, 1e-9);
  scale = fmin (fmax (width - margin[0] - margin[1] - canvas->cut.gap, width * 0.2) / span_x, fmax (height - margin[2] - margin[3], height * 0.2) / span_y);
  canvas->ratio = 0;
  if (canvas->style->mm_per_unit > 0)
    {
      canvas->ratio = round_ratio (scale * canvas->style->mm_per_unit);
      scale = canvas->ratio / canvas->style->mm_per_unit;
    }
  canvas->scale = scale;
  canvas->origin_x = margin[0] + (width - margin[0] - margin[1] - canvas->cut.gap - span_x * scale) / 2 - canvas->left_mm * scale;
  canvas->origin_y = height - margin[3] - (height - margin[2] - margin[3] - span_y * scale) / 2 + canvas->bottom_mm * scale;
  return TRUE;
}

/* Path of all runs in ink. */
gboolean
em_canvas_trace (EmCanvas *canvas, EmInk ink, gboolean is_closed)
{
  gboolean has_any = FALSE;

  cairo_new_path (canvas->cr);
  for (int i = 0; i < canvas->outline.n_points; i++)
    {
      const EmOutlinePoint *point = &canvas->outline.point[i];
      gboolean is_last = i + 1 == canvas->outline.n_points || canvas->outline.point[i + 1].is_start;
      double x = em_canvas_x (canvas, point->x_mm), y = em_canvas_y (canvas, point->y_mm);

      if (point->ink != ink)
        continue;
      if (point->is_start)
        cairo_move_to (canvas->cr, x, y);
      else
        cairo_line_to (canvas->cr, x, y);
      if (is_last && is_closed)
        cairo_close_path (canvas->cr);
      has_any = TRUE;
    }
  return has_any;
}

/* Lines only where there is metal to hatch: x + y is one step more from each to the next, the same in every drawing. */
static void
hatch (EmCanvas *canvas)
{
  double step = canvas->style->font_px * 0.55, left, top, right, bottom;

  cairo_save (canvas->cr);
  cairo_clip (canvas->cr);
  cairo_clip_extents (canvas->cr, &left, &top, &right, &bottom);
  em_canvas_set_colour (canvas, &canvas->style->base, 0.75);
  cairo_set_line_width (canvas->cr, canvas->style->font_px * 0.05);
  for (double sum = ceil ((left + top) / step) * step; sum < right + bottom; sum += step)
    {
      cairo_move_to (canvas->cr, fmax (sum - bottom, left), fmin (sum - left, bottom));
      cairo_line_to (canvas->cr, fmin (sum - top, right), fmax (sum - right, top));
    }
  cairo_stroke (canvas->cr);
  cairo_restore (canvas->cr);
}

static void
draw_base (EmCanvas *canvas)
{
  if (!em_canvas_trace (canvas, EM_INK_BASE, TRUE))
    return;
  /* Hides what lies behind. */
  em_canvas_set_colour (canvas, &canvas->style->paper, 1);
  cairo_fill_preserve (canvas->cr);
  em_canvas_set_colour (canvas, &canvas->style->base, 0.12);
  cairo_fill_preserve (canvas->cr);
  if (canvas->style->has_hatch && canvas->view == EM_VIEW_SECTION)
    hatch (canvas);
  em_canvas_trace (canvas, EM_INK_BASE, TRUE);
  em_canvas_set_colour (canvas, &canvas->style->ink, 1);
  cairo_set_line_width (canvas->cr, canvas->style->font_px * 0.11);
  cairo_stroke (canvas->cr);
}

static void
draw_lines (EmCanvas *canvas)
{
  static const double hidden[] = { 3, 2 }, centre[] = { 8, 2, 1.5, 2 };

  em_canvas_set_colour (canvas, &canvas->style->quiet, 1);
  cairo_set_line_width (canvas->cr, canvas->style->font_px * 0.07);
  if (em_canvas_trace (canvas, EM_INK_HIDDEN, FALSE))
    {
      cairo_set_dash (canvas->cr, hidden, 2, 0);
      cairo_stroke (canvas->cr);
    }
  if (em_canvas_trace (canvas, EM_INK_CENTRE, FALSE))
    {
      cairo_set_dash (canvas->cr, centre, 4, 0);
      cairo_stroke (canvas->cr);
    }
  cairo_set_dash (canvas->cr, NULL, 0, 0);
}

/* One edge of the gap, freehand as break lines are. */
static void
break_edge (EmCanvas *canvas, double x, double y0, double y1)
{
  double wave = canvas->style->font_px * 0.35, third = (y1 - y0) / 3;

  cairo_curve_to (canvas->cr, x + wave, y0 + third, x - wave, y1 - third, x, y1);
}

static void
draw_break (EmCanvas *canvas)
{
  double over = canvas->style->font_px * 0.4, x0, x1, top, bottom;

  if (!canvas->cut.is_made)
    return;
  x0 = em_canvas_x (canvas, canvas->cut.from_mm);
  x1 = em_canvas_x (canvas, canvas->cut.to_mm);
  top = em_canvas_y (canvas, canvas->top_mm) - over;
  bottom = em_canvas_y (canvas, canvas->bottom_mm) + over;
  cairo_move_to (canvas->cr, x0, top);
  break_edge (canvas, x0, top, bottom);
  cairo_line_to (canvas->cr, x1, bottom);
  break_edge (canvas, x1, bottom, top);
  cairo_close_path (canvas->cr);
  em_canvas_set_colour (canvas, &canvas->style->paper, 1);
  cairo_fill (canvas->cr);
  cairo_move_to (canvas->cr, x0, top);
  break_edge (canvas, x0, top, bottom);
  cairo_move_to (canvas->cr, x1, bottom);
  break_edge (canvas, x1, bottom, top);
  em_canvas_set_colour (canvas, &canvas->style->ink, 1);
  cairo_set_line_width (canvas->cr, canvas->style->font_px * 0.06);
  cairo_stroke (canvas->cr);
}

/** Draws feature into width × height of cr's user space, to scale.
 *
 * cost: NULL or faulty draws the shape without layers. field: dimension to stand out; −1: none.
 * Returns FALSE where something of it could not be drawn; nothing is drawn when its sizes make no shape. */
gboolean
em_drawing_draw (cairo_t *cr, double width, double height, const EmFeature *feature, const EmFeatureCost *cost,
                 EmView view, EmUnits units, const EmDrawingStyle *style, int field)
{
  EmCanvas canvas = { .cr = cr, .style = style, .feature = feature, .view = view, .units = units, .field = field, .width = width, .height = height };
  gboolean is_costed = cost != NULL && cost->status == EM_OK;

  if (feature->kind == NULL || !(width > 8) || !(height > 8) || em_feature_solve (feature, &canvas.shape, NULL) != EM_OK)
    return FALSE;
  canvas.plan = is_costed ? &cost->plan : NULL;
  canvas.rules = is_costed ? &cost->rules : NULL;
  canvas.shape.kind = feature->kind;
  feature->kind->outline (&canvas.shape, view, &canvas.outline);
  if (!fit (&canvas, width, height))
    return FALSE;
  cairo_save (cr);
  cairo_rectangle (cr, 0, 0, width, height);
  cairo_clip (cr);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
  em_drawing_draw_proud (&canvas);
  draw_base (&canvas);
  em_drawing_draw_excess (&canvas);
  em_drawing_draw_metal (&canvas);
  em_drawing_draw_caps (&canvas);
  draw_lines (&canvas);
  draw_break (&canvas);
  em_drawing_draw_dims (&canvas);
  em_drawing_draw_near (&canvas);
  em_drawing_draw_scale (&canvas, width, height);
  cairo_restore (cr);
  return is_costed;
}
