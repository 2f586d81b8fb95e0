/* em-drawing: fitting a feature's outline into a box, and stroking its metal.
 *
 * Conventions: ISO 128-3 (line kinds, hatching at 45°), ISO 5455 (scales, with whole steps
 * between for a better fit), ISO 129-1 (dimensions; texts upright as ASME Y14.5 reads them).
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-drawing-private.h"

#include <math.h>
#include <string.h>

enum { LAYER_POINTS = 128, BEADS_MAX = 4000 };

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

double em_canvas_x (const EmCanvas *canvas, double x_mm) { return canvas->origin_x + x_mm * canvas->scale; }
double em_canvas_y (const EmCanvas *canvas, double y_mm) { return canvas->origin_y - y_mm * canvas->scale; }

static void
extend (EmCanvas *canvas, double x_mm, double y_mm)
{
  if (!isfinite (x_mm) || !isfinite (y_mm))
    return;
  canvas->left_mm = fmin (canvas->left_mm, x_mm);
  canvas->right_mm = fmax (canvas->right_mm, x_mm);
  canvas->bottom_mm = fmin (canvas->bottom_mm, y_mm);
  canvas->top_mm = fmax (canvas->top_mm, y_mm);
}

/* Height of the weld's crest as it comes off the bench, all layers on. */
static double
crest_mm (const EmCanvas *canvas)
{
  return canvas->plan != NULL ? fmax (canvas->plan->layers * canvas->plan->layer_mm, canvas->shape.height_mm) : canvas->shape.height_mm;
}

static int
layer_points (const EmCanvas *canvas, double z_mm, double *out_xy_mm)
{
  return canvas->view == EM_VIEW_SECTION && canvas->shape.kind->layer != NULL
         ? canvas->shape.kind->layer (&canvas->shape, z_mm, LAYER_POINTS, out_xy_mm) : 0;
}

/* Room for the beads along capped edges, a layer thick beyond the foot of the weld. */
static void
extend_caps (EmCanvas *canvas)
{
  double xy[2 * LAYER_POINTS];
  int n = canvas->plan != NULL && canvas->rules->is_capped && canvas->plan->cap_tracks > 0 ? layer_points (canvas, 0, xy) : 0;

  for (int i = 0; n == 2 && i < n; i++)
    {
      extend (canvas, xy[2 * i] - canvas->plan->layer_mm, xy[2 * i + 1]);
      extend (canvas, xy[2 * i] + canvas->plan->layer_mm, xy[2 * i + 1]);
    }
}

static void
measure (EmCanvas *canvas)
{
  double xy[2 * LAYER_POINTS];
  int n = layer_points (canvas, crest_mm (canvas), xy);

  canvas->left_mm = canvas->bottom_mm = INFINITY;
  canvas->right_mm = canvas->top_mm = -INFINITY;
  for (int i = 0; i < canvas->outline.n_points; i++)
    extend (canvas, canvas->outline.point[i].x_mm, canvas->outline.point[i].y_mm);
  for (int i = 0; i < n; i++)
    extend (canvas, xy[2 * i], xy[2 * i + 1]);
  extend_caps (canvas);
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

void
em_canvas_extend (EmCanvas *canvas, double x_mm, double y_mm)
{
  extend (canvas, x_mm, y_mm);
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
  span_x = fmax (canvas->right_mm - canvas->left_mm, 1e-9);
  span_y = fmax (canvas->top_mm - canvas->bottom_mm, 1e-9);
  scale = fmin (fmax (width - margin[0] - margin[1], width * 0.2) / span_x, fmax (height - margin[2] - margin[3], height * 0.2) / span_y);
  canvas->ratio = 0;
  if (canvas->style->mm_per_unit > 0)
    {
      canvas->ratio = round_ratio (scale * canvas->style->mm_per_unit);
      scale = canvas->ratio / canvas->style->mm_per_unit;
    }
  canvas->scale = scale;
  canvas->origin_x = margin[0] + (width - margin[0] - margin[1] - span_x * scale) / 2 - canvas->left_mm * scale;
  canvas->origin_y = height - margin[3] - (height - margin[2] - margin[3] - span_y * scale) / 2 + canvas->bottom_mm * scale;
  return TRUE;
}

/* Path of all runs in ink. */
static gboolean
trace_runs (EmCanvas *canvas, EmInk ink, gboolean is_closed)
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

static void
hatch (EmCanvas *canvas, double width, double height)
{
  double step = canvas->style->font_px * 0.55;

  cairo_save (canvas->cr);
  cairo_clip (canvas->cr);
  em_canvas_set_colour (canvas, &canvas->style->base, 0.75);
  cairo_set_line_width (canvas->cr, canvas->style->font_px * 0.05);
  for (double x = -height; x < width; x += step)
    {
      cairo_move_to (canvas->cr, x, height);
      cairo_line_to (canvas->cr, x + height, 0);
    }
  cairo_stroke (canvas->cr);
  cairo_restore (canvas->cr);
}

static void
draw_base (EmCanvas *canvas, double width, double height)
{
  if (!trace_runs (canvas, EM_INK_BASE, TRUE))
    return;
  em_canvas_set_colour (canvas, &canvas->style->base, 0.12);
  cairo_fill_preserve (canvas->cr);
  if (canvas->style->has_hatch && canvas->view == EM_VIEW_SECTION)
    hatch (canvas, width, height);
  trace_runs (canvas, EM_INK_BASE, TRUE);
  em_canvas_set_colour (canvas, &canvas->style->ink, 1);
  cairo_set_line_width (canvas->cr, canvas->style->font_px * 0.11);
  cairo_stroke (canvas->cr);
}

static void
line_through (EmCanvas *canvas, const double *xy_mm, int n, gboolean is_backward, gboolean is_start)
{
  for (int k = 0; k < n; k++)
    {
      int i = is_backward ? n - 1 - k : k;
      double x = em_canvas_x (canvas, xy_mm[2 * i]), y = em_canvas_y (canvas, xy_mm[2 * i + 1]);

      if (k == 0 && is_start)
        cairo_move_to (canvas->cr, x, y);
      else
        cairo_line_to (canvas->cr, x, y);
    }
}

/* What is welded on beyond the finished size: stock and safety layers. */
static void
draw_excess (EmCanvas *canvas)
{
  static const double dashes[] = { 3, 2 };
  double low[2 * LAYER_POINTS], high[2 * LAYER_POINTS];
  int n_low, n_high;

  if (canvas->plan == NULL)
    return;
  n_low = layer_points (canvas, canvas->shape.height_mm, low);
  n_high = layer_points (canvas, crest_mm (canvas), high);
  if (n_low < 2 || n_high < 2)
    return;
  cairo_new_path (canvas->cr);
  line_through (canvas, low, n_low, FALSE, TRUE);
  line_through (canvas, high, n_high, TRUE, FALSE);
  cairo_close_path (canvas->cr);
  em_canvas_set_colour (canvas, &canvas->style->metal, 0.35);
  cairo_fill_preserve (canvas->cr);
  em_canvas_set_colour (canvas, &canvas->style->accent, 0.9);
  cairo_set_line_width (canvas->cr, canvas->style->font_px * 0.07);
  cairo_set_dash (canvas->cr, dashes, 2, 0);
  cairo_stroke (canvas->cr);
  cairo_set_dash (canvas->cr, NULL, 0, 0);
}

static double
length_of (const double *xy_mm, int n)
{
  double length = 0;

  for (int i = 1; i < n; i++)
    length += hypot (xy_mm[2 * i] - xy_mm[2 * i - 2], xy_mm[2 * i + 1] - xy_mm[2 * i - 1]);
  return length;
}

/* Beads of one layer, evenly along its middle line; each as wide as a track and as high as a layer. */
static void
draw_beads (EmCanvas *canvas, const double *xy_mm, int n, int64_t tracks)
{
  double step = length_of (xy_mm, n) / (double) tracks, next = step / 2, run = 0;

  for (int i = 1; i < n; i++)
    {
      double dx = xy_mm[2 * i] - xy_mm[2 * i - 2], dy = xy_mm[2 * i + 1] - xy_mm[2 * i - 1], length = hypot (dx, dy);

      for (; length > 0 && next <= run + length + 1e-12; next += step)
        {
          double t = (next - run) / length;

          cairo_save (canvas->cr);
          cairo_translate (canvas->cr, em_canvas_x (canvas, xy_mm[2 * i - 2] + t * dx), em_canvas_y (canvas, xy_mm[2 * i - 1] + t * dy));
          cairo_rotate (canvas->cr, atan2 (-dy, dx));
          cairo_scale (canvas->cr, step * canvas->scale / 2, canvas->plan->layer_mm * canvas->scale / 2);
          cairo_new_sub_path (canvas->cr);
          cairo_arc (canvas->cr, 0, 0, 1, 0, 2 * G_PI);
          cairo_restore (canvas->cr);
        }
      run += length;
    }
}

static void
draw_layer (EmCanvas *canvas, int32_t i, int *beads_left)
{
  double xy[2 * LAYER_POINTS], thick = canvas->plan->layer_mm * canvas->scale;
  EmPlanLayer layer;
  int n;

  em_plan_layer (&canvas->shape, canvas->rules, canvas->plan, i, &layer);
  n = layer_points (canvas, layer.z_mm, xy);
  if (n >= 2 && layer.tracks > 0 && layer.tracks <= *beads_left && length_of (xy, n) * canvas->scale / (double) layer.tracks > 2 && thick > 2)
    {
      draw_beads (canvas, xy, n, layer.tracks);
      *beads_left -= (int) layer.tracks;
      return;
    }
  n = layer_points (canvas, (i + 1) * canvas->plan->layer_mm, xy);
  if (n >= 2 && (thick > 1.5 || i % (1 + (int) (1.5 / fmax (thick, 1e-3))) == 0))
    line_through (canvas, xy, n, FALSE, TRUE);
}

static void
draw_layers (EmCanvas *canvas)
{
  int beads_left = BEADS_MAX;

  if (canvas->plan == NULL || canvas->view != EM_VIEW_SECTION)
    return;
  cairo_new_path (canvas->cr);
  for (int32_t i = 0; i < MIN (canvas->plan->layers, 400); i++)
    draw_layer (canvas, i, &beads_left);
  em_canvas_set_colour (canvas, &canvas->style->accent, 0.75);
  cairo_set_line_width (canvas->cr, canvas->style->font_px * 0.06);
  cairo_stroke (canvas->cr);
}

/* Tracks seen from above, along the feature. */
static void
draw_tracks (EmCanvas *canvas)
{
  double pitch;

  if (canvas->plan == NULL || canvas->view != EM_VIEW_PLAN || !trace_runs (canvas, EM_INK_METAL, TRUE))
    return;
  pitch = canvas->plan->pitch_mm * canvas->scale;
  if (pitch < 1.5)
    return;
  cairo_save (canvas->cr);
  cairo_clip (canvas->cr);
  for (double y = canvas->bottom_mm; y <= canvas->top_mm; y += canvas->plan->pitch_mm)
    {
      cairo_move_to (canvas->cr, em_canvas_x (canvas, canvas->left_mm), em_canvas_y (canvas, y));
      cairo_line_to (canvas->cr, em_canvas_x (canvas, canvas->right_mm), em_canvas_y (canvas, y));
    }
  em_canvas_set_colour (canvas, &canvas->style->accent, 0.55);
  cairo_set_line_width (canvas->cr, canvas->style->font_px * 0.05);
  cairo_stroke (canvas->cr);
  cairo_restore (canvas->cr);
}

static void
draw_metal (EmCanvas *canvas)
{
  if (!trace_runs (canvas, EM_INK_METAL, TRUE))
    return;
  em_canvas_set_colour (canvas, &canvas->style->metal, 1);
  cairo_fill (canvas->cr);
  draw_layers (canvas);
  draw_tracks (canvas);
  trace_runs (canvas, EM_INK_METAL, TRUE);
  em_canvas_set_colour (canvas, &canvas->style->accent, 1);
  cairo_set_line_width (canvas->cr, canvas->style->font_px * 0.14);
  cairo_stroke (canvas->cr);
}

/* Tracks along each sharp edge on its other face: beads down the ends of the built-up height. */
static void
draw_caps (EmCanvas *canvas)
{
  double xy[2 * LAYER_POINTS], radius;
  int64_t tracks = canvas->plan != NULL && canvas->rules->is_capped ? canvas->plan->cap_tracks : 0;
  gboolean is_both = tracks > 0 && canvas->shape.cap_edge_mm > 1.5 * canvas->shape.kind->length_mm (&canvas->shape, canvas->shape.height_mm);

  if (tracks <= 0 || tracks > 200)
    return;
  radius = canvas->plan->layer_mm * canvas->scale / 2;
  cairo_new_path (canvas->cr);
  for (int64_t i = 0; i < tracks; i++)
    {
      double z_mm = canvas->shape.height_mm * ((double) i + 0.5) / (double) tracks;
      int n = layer_points (canvas, z_mm, xy);

      /* Only a straight layer ends at the edges it is capped along. */
      for (int end = 0; n == 2 && end < (is_both ? 2 : 1); end++)
        {
          double length = fmax (hypot (xy[2] - xy[0], xy[3] - xy[1]), 1e-9), out = (end == 0 ? radius : -radius) / length;
          int at = end == 0 ? 2 : 0;

          cairo_new_sub_path (canvas->cr);
          cairo_arc (canvas->cr, em_canvas_x (canvas, xy[at]) + (xy[2] - xy[0]) * out, em_canvas_y (canvas, xy[at + 1]) - (xy[3] - xy[1]) * out,
                     radius, 0, 2 * G_PI);
        }
    }
  em_canvas_set_colour (canvas, &canvas->style->metal, 0.7);
  cairo_fill_preserve (canvas->cr);
  em_canvas_set_colour (canvas, &canvas->style->accent, 0.9);
  cairo_set_line_width (canvas->cr, canvas->style->font_px * 0.06);
  cairo_stroke (canvas->cr);
}

static void
draw_lines (EmCanvas *canvas)
{
  static const double hidden[] = { 3, 2 }, centre[] = { 8, 2, 1.5, 2 };

  em_canvas_set_colour (canvas, &canvas->style->quiet, 1);
  cairo_set_line_width (canvas->cr, canvas->style->font_px * 0.07);
  if (trace_runs (canvas, EM_INK_HIDDEN, FALSE))
    {
      cairo_set_dash (canvas->cr, hidden, 2, 0);
      cairo_stroke (canvas->cr);
    }
  if (trace_runs (canvas, EM_INK_CENTRE, FALSE))
    {
      cairo_set_dash (canvas->cr, centre, 4, 0);
      cairo_stroke (canvas->cr);
    }
  cairo_set_dash (canvas->cr, NULL, 0, 0);
}

/** Draws feature into width × height of cr's user space, to scale.
 *
 * cost: NULL or faulty draws the shape without layers. field: dimension to stand out; −1: none.
 * Returns FALSE where something of it could not be drawn; nothing is drawn when its sizes make no shape. */
gboolean
em_drawing_draw (cairo_t *cr, double width, double height, const EmFeature *feature, const EmFeatureCost *cost,
                 EmView view, EmUnits units, const EmDrawingStyle *style, int field)
{
  EmCanvas canvas = { .cr = cr, .style = style, .feature = feature, .view = view, .units = units, .field = field };
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
  draw_base (&canvas, width, height);
  draw_excess (&canvas);
  draw_metal (&canvas);
  draw_caps (&canvas);
  draw_lines (&canvas);
  em_drawing_draw_dims (&canvas);
  em_drawing_draw_near (&canvas);
  em_drawing_draw_scale (&canvas, width, height);
  cairo_restore (cr);
  return is_costed;
}
