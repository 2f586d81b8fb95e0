/* em-drawing-weld: the metal put on: its layers, tracks and beads, caps, and what stands proud.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-drawing-private.h"

#include <math.h>

enum { LAYER_POINTS = 128, BEADS_MAX = 4000, LAYERS_MOST = 400 };

/* Tracks nearer to each other than so many units are not told apart. */
#define TRACK_LEAST 1.5

/* Of a layer that is one track wide. */
typedef struct { double x_mm, y_mm, along_x, along_y; } EmLoneBead;

/* Height of the weld's crest as it comes off the bench, all layers on. */
static double
crest_mm (const EmCanvas *canvas)
{
  return canvas->plan != NULL ? fmax (canvas->plan->layers * canvas->plan->layer_mm, canvas->shape.height_mm) : canvas->shape.height_mm;
}

/* Of a section that is its own image, the half at hand. */
static int
layer_points (const EmCanvas *canvas, double z_mm, double *out_xy_mm)
{
  int n = canvas->view == EM_VIEW_SECTION && canvas->shape.kind->layer != NULL
          ? canvas->shape.kind->layer (&canvas->shape, z_mm, LAYER_POINTS, out_xy_mm) : 0;

  for (int i = 0; canvas->half > 0 && i < n; i++)
    out_xy_mm[2 * i] = -out_xy_mm[2 * i];
  return n;
}

/* Goes on to the other half; FALSE: there is none, the first is at hand again. */
static gboolean
next_half (EmCanvas *canvas)
{
  canvas->half = canvas->half == 0 && canvas->shape.kind->is_mirrored ? 1 : 0;
  return canvas->half > 0;
}

static double
length_of (const double *xy_mm, int n)
{
  double length = 0;

  for (int i = 1; i < n; i++)
    length += hypot (xy_mm[2 * i] - xy_mm[2 * i - 2], xy_mm[2 * i + 1] - xy_mm[2 * i - 1]);
  return length;
}

/* Where the one track of a layer at z goes, and along what: the middle of the layer, or, past a tip where the layers end, as much further out. */
static gboolean
find_lone_bead (const EmCanvas *canvas, double z_mm, EmLoneBead *out_bead)
{
  double foot[2 * LAYER_POINTS], xy[2 * LAYER_POINTS], out_x, out_y, far;
  int n_foot = layer_points (canvas, 0, foot), n = layer_points (canvas, z_mm, xy), middle = n / 2;

  if (n < 2 || n_foot < 2)
    return FALSE;
  *out_bead = (EmLoneBead) { xy[2 * middle], xy[2 * middle + 1], xy[2 * n - 2] - xy[0], xy[2 * n - 1] - xy[1] };
  if (n == 2)
    {
      out_bead->x_mm = (xy[0] + xy[2]) / 2;
      out_bead->y_mm = (xy[1] + xy[3]) / 2;
    }
  if (hypot (out_bead->along_x, out_bead->along_y) > 1e-3 * canvas->plan->layer_mm)
    return TRUE;
  out_x = out_bead->x_mm - (foot[0] + foot[2 * n_foot - 2]) / 2;
  out_y = out_bead->y_mm - (foot[1] + foot[2 * n_foot - 1]) / 2;
  far = hypot (out_x, out_y);
  if (!(far > 0))
    return FALSE;
  out_bead->x_mm += out_x / far * fmax (z_mm - canvas->shape.height_mm, 0);
  out_bead->y_mm += out_y / far * fmax (z_mm - canvas->shape.height_mm, 0);
  out_bead->along_x = -out_y;
  out_bead->along_y = out_x;
  return TRUE;
}

/* One that lies in the layer; its width is the pitch at least, since that is what the wire brings. */
static void
add_lone_bead (EmCanvas *canvas, const EmLoneBead *bead)
{
  cairo_save (canvas->cr);
  cairo_translate (canvas->cr, em_canvas_x (canvas, bead->x_mm), em_canvas_y (canvas, bead->y_mm));
  cairo_rotate (canvas->cr, atan2 (-bead->along_y, bead->along_x));
  cairo_scale (canvas->cr, canvas->plan->pitch_mm * canvas->scale / 2, canvas->plan->layer_mm * canvas->scale / 2);
  cairo_new_sub_path (canvas->cr);
  cairo_arc (canvas->cr, 0, 0, 1, 0, 2 * G_PI);
  cairo_restore (canvas->cr);
}

/* Whether layer i is one track. */
static gboolean
lone_bead_of (const EmCanvas *canvas, int32_t i, EmLoneBead *out_bead)
{
  EmPlanLayer layer;

  em_plan_layer (&canvas->shape, canvas->rules, canvas->plan, i, &layer);
  return layer.tracks == 1 && find_lone_bead (canvas, layer.z_mm, out_bead);
}

static int32_t
layers_drawn (const EmCanvas *canvas)
{
  return canvas->plan != NULL && canvas->view == EM_VIEW_SECTION ? MIN (canvas->plan->layers, LAYERS_MOST) : 0;
}

/* Beads wider than the metal they make stand proud of it: they lie behind the base, which shows what is ground off. */
void
em_drawing_draw_proud (EmCanvas *canvas)
{
  double left = em_canvas_x (canvas, canvas->left_mm), top = em_canvas_y (canvas, canvas->top_mm);
  EmLoneBead bead;

  cairo_save (canvas->cr);
  cairo_rectangle (canvas->cr, left, top, em_canvas_x (canvas, canvas->right_mm) - left, em_canvas_y (canvas, canvas->bottom_mm) - top);
  cairo_clip (canvas->cr);
  do
    for (int32_t i = 0; i < layers_drawn (canvas); i++)
      if (lone_bead_of (canvas, i, &bead))
        add_lone_bead (canvas, &bead);
  while (next_half (canvas));
  em_canvas_set_colour (canvas, &canvas->style->metal, 0.35);
  cairo_fill_preserve (canvas->cr);
  em_canvas_set_colour (canvas, &canvas->style->accent, 0.75);
  cairo_set_line_width (canvas->cr, canvas->style->font_px * 0.06);
  cairo_stroke (canvas->cr);
  cairo_restore (canvas->cr);
}

/* Of beads standing proud only so much widens the view, as a share of what else is drawn: the metal that is missing is what it is about. */
#define PROUD_SHARE 0.15

static void
extend_beads (EmCanvas *canvas)
{
  double reach = PROUD_SHARE * fmax (canvas->right_mm - canvas->left_mm, canvas->top_mm - canvas->bottom_mm);
  double left = canvas->left_mm - reach, right = canvas->right_mm + reach, bottom = canvas->bottom_mm - reach, top = canvas->top_mm + reach;
  EmLoneBead bead;

  for (int32_t i = 0; i < layers_drawn (canvas); i++)
    if (lone_bead_of (canvas, i, &bead))
      {
        double length = hypot (bead.along_x, bead.along_y), wide = canvas->plan->pitch_mm / 2, high = canvas->plan->layer_mm / 2;
        double x = fmax (wide * fabs (bead.along_x), high * fabs (bead.along_y)) / length;
        double y = fmax (wide * fabs (bead.along_y), high * fabs (bead.along_x)) / length;
        em_canvas_extend (canvas, fmax (bead.x_mm - x, left), fmax (bead.y_mm - y, bottom));
        em_canvas_extend (canvas, fmin (bead.x_mm + x, right), fmin (bead.y_mm + y, top));
      }
}

/* Room for the beads along capped edges, a layer thick beyond the foot of the weld. */
static void
extend_caps (EmCanvas *canvas)
{
  double xy[2 * LAYER_POINTS];
  int n = canvas->plan != NULL && canvas->rules->is_capped && canvas->plan->cap_tracks > 0 ? layer_points (canvas, 0, xy) : 0;

  for (int i = 0; n == 2 && i < n; i++)
    {
      em_canvas_extend (canvas, xy[2 * i] - canvas->plan->layer_mm, xy[2 * i + 1]);
      em_canvas_extend (canvas, xy[2 * i] + canvas->plan->layer_mm, xy[2 * i + 1]);
    }
}

void
em_drawing_extend_weld (EmCanvas *canvas)
{
  double xy[2 * LAYER_POINTS];

  do
    {
      for (int i = 0, n = layer_points (canvas, crest_mm (canvas), xy); i < n; i++)
        em_canvas_extend (canvas, xy[2 * i], xy[2 * i + 1]);
      extend_caps (canvas);
      extend_beads (canvas);
    }
  while (next_half (canvas));
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

static void
trace_excess (EmCanvas *canvas)
{
  double low[2 * LAYER_POINTS], high[2 * LAYER_POINTS];
  int n_low = layer_points (canvas, canvas->shape.height_mm, low), n_high = layer_points (canvas, crest_mm (canvas), high);

  if (n_low < 2 || n_high < 2 || length_of (high, n_high) * canvas->scale < 1)
    return;
  line_through (canvas, low, n_low, FALSE, TRUE);
  line_through (canvas, high, n_high, TRUE, FALSE);
  cairo_close_path (canvas->cr);
}

/* What is welded on beyond the finished size: stock and safety layers. */
void
em_drawing_draw_excess (EmCanvas *canvas)
{
  static const double dashes[] = { 3, 2 };

  if (canvas->plan == NULL)
    return;
  cairo_new_path (canvas->cr);
  do
    trace_excess (canvas);
  while (next_half (canvas));
  em_canvas_set_colour (canvas, &canvas->style->metal, 0.35);
  cairo_fill_preserve (canvas->cr);
  em_canvas_set_colour (canvas, &canvas->style->accent, 0.9);
  cairo_set_line_width (canvas->cr, canvas->style->font_px * 0.07);
  cairo_set_dash (canvas->cr, dashes, 2, 0);
  cairo_stroke (canvas->cr);
  cairo_set_dash (canvas->cr, NULL, 0, 0);
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
  EmLoneBead bead;
  int n;

  em_plan_layer (&canvas->shape, canvas->rules, canvas->plan, i, &layer);
  n = layer_points (canvas, layer.z_mm, xy);
  if (layer.tracks == 1 && thick > 2 && find_lone_bead (canvas, layer.z_mm, &bead))
    {
      add_lone_bead (canvas, &bead);
      return;
    }
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
stroke_layers (EmCanvas *canvas, gboolean has_lone)
{
  int beads_left = BEADS_MAX;
  EmLoneBead bead;

  cairo_new_path (canvas->cr);
  do
    for (int32_t i = 0; i < layers_drawn (canvas); i++)
      if (lone_bead_of (canvas, i, &bead) == has_lone)
        draw_layer (canvas, i, &beads_left);
  while (next_half (canvas));
  em_canvas_set_colour (canvas, &canvas->style->accent, 0.75);
  cairo_set_line_width (canvas->cr, canvas->style->font_px * 0.06);
  cairo_stroke (canvas->cr);
}

/* Lone beads only within the metal: what is proud of it lies behind. */
static void
draw_layers (EmCanvas *canvas)
{
  stroke_layers (canvas, FALSE);
  if (!em_canvas_trace (canvas, EM_INK_METAL, TRUE))
    return;
  cairo_save (canvas->cr);
  cairo_clip (canvas->cr);
  stroke_layers (canvas, TRUE);
  cairo_restore (canvas->cr);
}

static void
add_ring (EmCanvas *canvas, double radius_mm)
{
  cairo_new_sub_path (canvas->cr);
  cairo_arc (canvas->cr, em_canvas_x (canvas, 0), em_canvas_y (canvas, 0), fabs (radius_mm) * canvas->scale, 0, 2 * G_PI);
}

/* Round a seat the tracks lie beside each other along its slope, so that from above those on a steep one are close together. */
static void
add_rings_along (EmCanvas *canvas, const double *xy_mm, int n)
{
  double run = 0, next = canvas->plan->pitch_mm, last_mm = -INFINITY;

  for (int i = 1; i < n; i++)
    {
      double length = hypot (xy_mm[2 * i] - xy_mm[2 * i - 2], xy_mm[2 * i + 1] - xy_mm[2 * i - 1]);

      for (; length > 0 && next < run + length; next += canvas->plan->pitch_mm)
        {
          double x_mm = xy_mm[2 * i - 2] + (xy_mm[2 * i] - xy_mm[2 * i - 2]) * (next - run) / length;

          if (fabs (x_mm - last_mm) * canvas->scale >= TRACK_LEAST)
            add_ring (canvas, last_mm = x_mm);
        }
      run += length;
    }
}

static void
add_rings (EmCanvas *canvas)
{
  double xy[2 * LAYER_POINTS], far = fmax (fabs (canvas->left_mm), fabs (canvas->right_mm));
  int n = canvas->shape.kind->is_mirrored && canvas->shape.kind->layer != NULL
          ? canvas->shape.kind->layer (&canvas->shape, canvas->shape.height_mm, LAYER_POINTS, xy) : 0;

  if (n >= 2)
    add_rings_along (canvas, xy, n);
  else
    for (double radius = canvas->plan->pitch_mm; radius < far && canvas->plan->pitch_mm * canvas->scale >= TRACK_LEAST; radius += canvas->plan->pitch_mm)
      add_ring (canvas, radius);
}

static void
add_lines (EmCanvas *canvas)
{
  for (double y = canvas->bottom_mm; y <= canvas->top_mm && canvas->plan->pitch_mm * canvas->scale >= TRACK_LEAST; y += canvas->plan->pitch_mm)
    {
      cairo_move_to (canvas->cr, em_canvas_x (canvas, canvas->left_mm), em_canvas_y (canvas, y));
      cairo_line_to (canvas->cr, em_canvas_x (canvas, canvas->right_mm), em_canvas_y (canvas, y));
    }
}

/* Tracks seen from above, along the feature or round it. */
static void
draw_tracks (EmCanvas *canvas)
{
  gboolean is_round = canvas->shape.kind->is_round != NULL && canvas->shape.kind->is_round (&canvas->shape);

  if (canvas->plan == NULL || canvas->view != EM_VIEW_PLAN || !em_canvas_trace (canvas, EM_INK_METAL, TRUE))
    return;
  cairo_save (canvas->cr);
  cairo_clip (canvas->cr);
  if (is_round)
    add_rings (canvas);
  else
    add_lines (canvas);
  em_canvas_set_colour (canvas, &canvas->style->accent, 0.55);
  cairo_set_line_width (canvas->cr, canvas->style->font_px * 0.05);
  cairo_stroke (canvas->cr);
  cairo_restore (canvas->cr);
}

void
em_drawing_draw_metal (EmCanvas *canvas)
{
  if (!em_canvas_trace (canvas, EM_INK_METAL, TRUE))
    return;
  em_canvas_set_colour (canvas, &canvas->style->metal, 1);
  cairo_fill (canvas->cr);
  draw_layers (canvas);
  draw_tracks (canvas);
  em_canvas_trace (canvas, EM_INK_METAL, TRUE);
  em_canvas_set_colour (canvas, &canvas->style->accent, 1);
  cairo_set_line_width (canvas->cr, canvas->style->font_px * 0.14);
  cairo_stroke (canvas->cr);
}

/* Tracks along each sharp edge on its other face: beads down the ends of the built-up height. */
void
em_drawing_draw_caps (EmCanvas *canvas)
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
