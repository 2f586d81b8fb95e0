/* em-drawing-dims: dimensions, the near thing, the scale.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-drawing-private.h"

#include "em-words.h"

#include <math.h>
#include <pango/pangocairo.h>

#define ARROW_EM 0.75   /* an arrowhead's length, of the font size */

static PangoLayout *
make_text (EmCanvas *canvas, const char *text)
{
  PangoLayout *layout = pango_cairo_create_layout (canvas->cr);
  PangoFontDescription *font = pango_font_description_from_string (canvas->style->font_family != NULL ? canvas->style->font_family : "sans");
  PangoAttrList *attributes = pango_attr_list_new ();

  pango_attr_list_insert (attributes, pango_attr_font_features_new ("tnum=1, lnum=1"));
  pango_layout_set_attributes (layout, attributes);
  pango_attr_list_unref (attributes);
  pango_font_description_set_absolute_size (font, canvas->style->font_px * PANGO_SCALE);
  pango_layout_set_font_description (layout, font);
  pango_font_description_free (font);
  pango_layout_set_text (layout, text, -1);
  return layout;
}

static void
text_size (PangoLayout *layout, double *out_width, double *out_height)
{
  int width, height;

  pango_layout_get_size (layout, &width, &height);
  *out_width = (double) width / PANGO_SCALE;
  *out_height = (double) height / PANGO_SCALE;
}

/* Text centred on x, y, or as near as the drawing's edge allows, the ground behind it wiped so that lines do not cross it. */
static void
show_text (EmCanvas *canvas, const char *text, double x, double y, const EmColour *colour)
{
  g_autoptr (PangoLayout) layout = make_text (canvas, text);
  double width, height, pad = canvas->style->font_px * 0.18;

  text_size (layout, &width, &height);
  x = fmax (width / 2 + pad, fmin (x, canvas->width - width / 2 - pad));
  y = fmax (height / 2, fmin (y, canvas->height - height / 2));
  em_canvas_set_colour (canvas, &canvas->style->paper, 0.9);
  cairo_rectangle (canvas->cr, x - width / 2 - pad, y - height / 2, width + 2 * pad, height);
  cairo_fill (canvas->cr);
  em_canvas_set_colour (canvas, colour, 1);
  cairo_move_to (canvas->cr, x - width / 2, y - height / 2);
  pango_cairo_show_layout (canvas->cr, layout);
}

static const EmField *
field_of (const EmCanvas *canvas, const EmOutlineDim *dim)
{
  return dim->field >= 0 && dim->field < canvas->shape.kind->n_fields ? &canvas->shape.kind->fields[dim->field] : NULL;
}

static gboolean
is_angle (const EmCanvas *canvas, const EmOutlineDim *dim)
{
  const EmField *field = field_of (canvas, dim);

  return field != NULL && field->quantity == EM_QUANTITY_ANGLE;
}

/* From a centre to an arc: one arrowhead, on the arc (ISO 129-1). */
static gboolean
is_radius (const EmCanvas *canvas, const EmOutlineDim *dim)
{
  const EmField *field = field_of (canvas, dim);

  return dim->offset_mm == 0 && field != NULL && (field->symbol[0] == 'r' || field->symbol[0] == 'R');
}

/* "l 10" in the quote's unit, which the scale's caption names. */
static char *
dim_text (const EmCanvas *canvas, const EmOutlineDim *dim)
{
  const EmField *field = field_of (canvas, dim);
  if (canvas->style->is_sketch)
    return g_strdup (field != NULL && field->symbol != NULL ? field->symbol : "");
  g_autofree char *value = is_angle (canvas, dim) ? em_words_quantity (dim->value, EM_QUANTITY_ANGLE, canvas->units)
                                                  : em_words_length (dim->value, canvas->units, field != NULL ? 3 : 2);
  char *space = g_strrstr (value, "\302\240");

  if (space != NULL)
    *space = '\0';
  return field != NULL && field->symbol != NULL && field->symbol[0] != '\0' ? g_strdup_printf ("%s\302\240%s", field->symbol, value) : g_steal_pointer (&value);
}

/* Unit vector from the measured points to the dimension line, in user space (y down). */
static void
side_of (const EmOutlineDim *dim, double *out_x, double *out_y)
{
  double dx = dim->x1_mm - dim->x0_mm, dy = dim->y1_mm - dim->y0_mm, length = hypot (dx, dy);
  double sign = dim->offset_mm < 0 ? -1 : 1;

  *out_x = length > 0 ? -dy / length * sign : 0;
  *out_y = length > 0 ? -dx / length * sign : -sign;
}

/* Dimension lines on one side stand one behind the other, the shorter nearer. */
static int
level_of (const EmCanvas *canvas, int index)
{
  const EmOutlineDim *dim = &canvas->outline.dim[index];
  double side_x, side_y, length = hypot (dim->x1_mm - dim->x0_mm, dim->y1_mm - dim->y0_mm);
  int level = 0;

  side_of (dim, &side_x, &side_y);
  for (int i = 0; i < canvas->outline.n_dims; i++)
    {
      const EmOutlineDim *other = &canvas->outline.dim[i];
      double other_x, other_y, other_length = hypot (other->x1_mm - other->x0_mm, other->y1_mm - other->y0_mm);
      double along = (other->x0_mm - dim->x0_mm) * (dim->x1_mm - dim->x0_mm) + (other->y0_mm - dim->y0_mm) * (dim->y1_mm - dim->y0_mm);
      double until = (other->x1_mm - dim->x0_mm) * (dim->x1_mm - dim->x0_mm) + (other->y1_mm - dim->y0_mm) * (dim->y1_mm - dim->y0_mm);

      side_of (other, &other_x, &other_y);
      /* One that lies on the metal itself stands on no side. */
      if (i == index || other->offset_mm == 0 || side_x * other_x + side_y * other_y < 0.99 || is_angle (canvas, other))
        continue;
      /* Side by side and not overlapping: they share a level. */
      if (fmax (along, until) <= 1e-9 * length * length || fmin (along, until) >= length * length * (1 - 1e-9))
        continue;
      level += other_length < length || (other_length == length && i < index);
    }
  return level;
}

static double
offset_of (const EmCanvas *canvas, int index)
{
  return canvas->style->font_px * (1.7 + 1.7 * level_of (canvas, index));
}

/* The right end of the metal to add, where the near thing is drawn beyond. */
static double
metal_right_mm (const EmCanvas *canvas)
{
  double right = -INFINITY;

  for (int i = 0; i < canvas->outline.n_points; i++)
    if (canvas->outline.point[i].ink == EM_INK_METAL)
      right = fmax (right, canvas->outline.point[i].x_mm);
  return right;
}

/* Where the arc of an angle goes as it ends, in user space (y down): past there stands what does not fit on it. */
static void
angle_end (const EmOutlineDim *dim, double *out_x, double *out_y)
{
  double to = atan2 (dim->y1_mm - dim->y0_mm, dim->x1_mm - dim->x0_mm) + dim->turn;

  *out_x = -sin (to);
  *out_y = -cos (to);
}

static gboolean
has_near (const EmCanvas *canvas)
{
  return !em_is_absent (canvas->feature->clearance_mm) && canvas->feature->clearance_mm >= 0
         && canvas->feature->near != EM_NEAR_NOTHING && canvas->feature->near < EM_N_NEAR && isfinite (metal_right_mm (canvas));
}

/* For a dimension that lies on the metal, whose text may have to stand past its end. */
static void
leave_room (const EmCanvas *canvas, const EmOutlineDim *dim, double width, double out_margin[4])
{
  double dx = dim->x1_mm - dim->x0_mm, dy = dim->y1_mm - dim->y0_mm, length = hypot (dx, dy), font = canvas->style->font_px;

  if (is_angle (canvas, dim))
    {
      angle_end (dim, &dx, &dy);
      if (fabs (dx) > 0.5)
        out_margin[dx > 0 ? 1 : 0] = fmax (out_margin[dx > 0 ? 1 : 0], width * 0.6);
      return;
    }
  if (dim->turn != 0)
    return;
  if (is_radius (canvas, dim))
    {
      out_margin[dx >= 0 ? 1 : 0] = fmax (out_margin[dx >= 0 ? 1 : 0], width + font * 1.6);
      out_margin[dy >= 0 ? 2 : 3] = fmax (out_margin[dy >= 0 ? 2 : 3], font * (dy >= 0 ? 1.8 : 3.6));
    }
  else if (fabs (dx) > 0.9 * length)
    out_margin[dx >= 0 ? 1 : 0] = fmax (out_margin[dx >= 0 ? 1 : 0], width + font * 0.9);
}

void
em_drawing_margins (EmCanvas *canvas, double out_margin[4])
{
  double font = canvas->style->font_px;

  out_margin[0] = out_margin[1] = out_margin[2] = font * 0.6;
  out_margin[3] = font * 2.2;   /* the scale */
  if (has_near (canvas))
    out_margin[1] = font * 1.6;
  for (int i = 0; i < canvas->outline.n_dims; i++)
    {
      const EmOutlineDim *dim = &canvas->outline.dim[i];
      g_autofree char *text = dim_text (canvas, dim);
      g_autoptr (PangoLayout) layout = make_text (canvas, text);
      double x, y, width, height, offset = offset_of (canvas, i);

      text_size (layout, &width, &height);
      if (dim->offset_mm == 0)
        {
          leave_room (canvas, dim, width, out_margin);
          continue;
        }
      side_of (dim, &x, &y);
      if (x < -0.5)
        out_margin[0] = fmax (out_margin[0], offset + width + font * 0.6);
      if (x > 0.5)
        out_margin[1] = fmax (out_margin[1], offset + width + font * (has_near (canvas) ? 2.0 : 0.6));
      if (y < -0.5)
        out_margin[2] = fmax (out_margin[2], offset + font * 1.5);
      if (y > 0.5)
        out_margin[3] = fmax (out_margin[3], offset + font * 3.2);
    }
}

static void
arrowhead (EmCanvas *canvas, double x, double y, double ux, double uy)
{
  double length = canvas->style->font_px * ARROW_EM, half = length * 0.17;

  cairo_move_to (canvas->cr, x, y);
  cairo_line_to (canvas->cr, x - ux * length - uy * half, y - uy * length + ux * half);
  cairo_line_to (canvas->cr, x - ux * length + uy * half, y - uy * length - ux * half);
  cairo_close_path (canvas->cr);
  cairo_fill (canvas->cr);
}

static void
segment (EmCanvas *canvas, double x0, double y0, double x1, double y1)
{
  cairo_move_to (canvas->cr, x0, y0);
  cairo_line_to (canvas->cr, x1, y1);
  cairo_stroke (canvas->cr);
}

/* Whether an edge of the metal crosses a box about x, y. */
static gboolean
is_crossed (const EmCanvas *canvas, double x, double y, double width, double height)
{
  const EmOutline *outline = &canvas->outline;

  for (int i = 0; i + 1 < outline->n_points; i++)
    {
      double ax = em_canvas_x (canvas, outline->point[i].x_mm) - x, ay = em_canvas_y (canvas, outline->point[i].y_mm) - y;
      double dx = em_canvas_x (canvas, outline->point[i + 1].x_mm) - x - ax, dy = em_canvas_y (canvas, outline->point[i + 1].y_mm) - y - ay;
      /* What part of the edge, from 0 to 1, is beyond no side of the box. */
      double first = 0, last = 1;
      const double part[4] = { -dx, dx, -dy, dy }, until[4] = { ax + width / 2, width / 2 - ax, ay + height / 2, height / 2 - ay };

      for (int side = 0; side < 4; side++)
        if (part[side] < 0)
          first = fmax (first, until[side] / part[side]);
        else if (part[side] > 0)
          last = fmin (last, until[side] / part[side]);
        else if (until[side] < 0)
          last = -1;
      if (!outline->point[i + 1].is_start && outline->point[i].ink != EM_INK_CENTRE && first < last)
        return TRUE;
    }
  return FALSE;
}

/* Goes on with a level dimension line past its end at x1 until it is outside of everything drawn; returns how far that is from its middle. */
static double
lead_out (EmCanvas *canvas, double x0, double x1, double y, double ux)
{
  double edge = em_canvas_x (canvas, ux > 0 ? canvas->right_mm : canvas->left_mm) + ux * canvas->style->font_px * 0.5;

  segment (canvas, x1, y, edge, y);
  return fabs (edge - (x0 + x1) / 2);
}

/* The dimension line with its arrowheads, which point inwards from outside where there is no room between them, and its
 * text: on the line, or beyond it away from the metal (side_x, side_y) where it would not fit; past its end where the line
 * itself lies on the metal (no side). */
static void
measure_line (EmCanvas *canvas, double x0, double y0, double x1, double y1, double side_x, double side_y, gboolean has_one_head, const char *text, const EmColour *colour)
{
  double length = hypot (x1 - x0, y1 - y0), font = canvas->style->font_px, arrow = font * ARROW_EM;
  double ux = length > 0 ? (x1 - x0) / length : 1, uy = length > 0 ? (y1 - y0) / length : 0;
  g_autoptr (PangoLayout) layout = make_text (canvas, text);
  double width, height, room, beyond = 0, past = 0;
  gboolean is_outside = length < 2.6 * arrow;

  text_size (layout, &width, &height);
  room = fabs (ux) * width + fabs (uy) * height * 0.8;
  if (is_outside)
    {
      segment (canvas, x0 - ux * arrow * 2, y0 - uy * arrow * 2, x0, y0);
      segment (canvas, x1, y1, x1 + ux * arrow * 2, y1 + uy * arrow * 2);
    }
  else
    segment (canvas, x0, y0, x1, y1);
  if (!has_one_head)
    arrowhead (canvas, x0, y0, is_outside ? ux : -ux, is_outside ? uy : -uy);
  arrowhead (canvas, x1, y1, is_outside ? -ux : ux, is_outside ? -uy : uy);
  if (room + 2.9 * arrow > length)
    {
      beyond = (fabs (side_x) * width + fabs (side_y) * height * 0.8) / 2 + font * 0.3;
      past = side_x == 0 && side_y == 0 ? length / 2 + (is_outside ? 2 * arrow : 0) + room / 2 + font * 0.3 : 0;
      /* Into the sound metal, which lies below: above are other dimensions. */
      past = uy < -0.3 ? -past : past;
      if (past > 0 && fabs (ux) > 0.99 && is_crossed (canvas, (x0 + x1) / 2 + ux * past, y1, width, height))
        past = lead_out (canvas, x0, x1, y1, ux) + width / 2 + font * 0.3;
    }
  show_text (canvas, text, (x0 + x1) / 2 + side_x * beyond + ux * past, (y0 + y1) / 2 + side_y * beyond + uy * past, colour);
}

/* A radius too short for its text: a leader from outside everything drawn, its arrowhead on the arc (ISO 129-1). */
static void
lead_in (EmCanvas *canvas, double x0, double y0, double x1, double y1, const char *text, const EmColour *colour)
{
  double length = hypot (x1 - x0, y1 - y0), font = canvas->style->font_px, width, height, out;
  double ux = length > 0 ? (x1 - x0) / length : 0.7, uy = length > 0 ? (y1 - y0) / length : -0.7;
  double edge_x = em_canvas_x (canvas, ux >= 0 ? canvas->right_mm : canvas->left_mm);
  double edge_y = em_canvas_y (canvas, uy >= 0 ? canvas->bottom_mm : canvas->top_mm);
  g_autoptr (PangoLayout) layout = make_text (canvas, text);

  text_size (layout, &width, &height);
  out = fmin (fabs (ux) > 0.05 ? (edge_x - x1) / ux : INFINITY, fabs (uy) > 0.05 ? (edge_y - y1) / uy : INFINITY) + font * 0.9;
  segment (canvas, x1, y1, x1 + ux * out, y1 + uy * out);
  arrowhead (canvas, x1, y1, -ux, -uy);
  show_text (canvas, text, x1 + ux * out + (ux >= 0 ? 1 : -1) * (width / 2 + font * 0.25), y1 + uy * out, colour);
}

static gboolean
has_room (EmCanvas *canvas, double length, const char *text)
{
  g_autoptr (PangoLayout) layout = make_text (canvas, text);
  double width, height;

  text_size (layout, &width, &height);
  return length > width + 2.9 * canvas->style->font_px * ARROW_EM;
}

/* The length of an arc (ISO 129-1): a line along it with arrowheads at its ends, the number under a small arc. */
static void
measure_arc (EmCanvas *canvas, const EmOutlineDim *dim, const char *text, const EmColour *colour)
{
  double x = em_canvas_x (canvas, 0), y = em_canvas_y (canvas, 0), radius = hypot (dim->x0_mm, dim->y0_mm) * canvas->scale;
  double from = -atan2 (dim->y0_mm, dim->x0_mm), to = from - dim->turn, middle = from - dim->turn / 2;
  double font = canvas->style->font_px, width, height, in;
  g_autoptr (PangoLayout) layout = make_text (canvas, text);

  text_size (layout, &width, &height);
  cairo_new_path (canvas->cr);
  cairo_arc_negative (canvas->cr, x, y, radius, from, to);
  cairo_stroke (canvas->cr);
  arrowhead (canvas, x + radius * cos (from), y + radius * sin (from), -sin (from), cos (from));
  arrowhead (canvas, x + radius * cos (to), y + radius * sin (to), sin (to), -cos (to));
  in = fmax (0, radius - font * 0.5 - (fabs (cos (middle)) * width + fabs (sin (middle)) * height * 1.6) / 2);
  x += in * cos (middle);
  y += in * sin (middle);
  show_text (canvas, text, x, y, colour);
  em_canvas_set_colour (canvas, colour, 1);
  cairo_new_path (canvas->cr);
  cairo_arc (canvas->cr, x, y + width * 0.25 - height * 0.18, width * 0.25 + height * 0.55, -G_PI * 0.68, -G_PI * 0.32);
  cairo_stroke (canvas->cr);
}

/* A leg that is no edge: a thin line from the apex to past the arc. */
static void
draw_leg (EmCanvas *canvas, double x, double y, double radius, double angle)
{
  double from = canvas->style->font_px * 0.2, to = radius + canvas->style->font_px * 0.35;

  segment (canvas, x + from * cos (angle), y + from * sin (angle), x + to * cos (angle), y + to * sin (angle));
}

/* An arc of radius from one angle down to another, its arrowheads at its ends: from within, or, where it is short, from outside,
 * where it then goes on (ISO 129-1). */
static void
draw_angle_arc (EmCanvas *canvas, double x, double y, double radius, double from, double to, double more, gboolean is_outside)
{
  double before = is_outside ? more : 0, sign = is_outside ? -1 : 1;

  cairo_new_path (canvas->cr);
  cairo_arc_negative (canvas->cr, x, y, radius, from + before / radius, to - more / radius);
  cairo_stroke (canvas->cr);
  arrowhead (canvas, x + radius * cos (from), y + radius * sin (from), -sin (from) * sign, cos (from) * sign);
  arrowhead (canvas, x + radius * cos (to), y + radius * sin (to), sin (to) * sign, -cos (to) * sign);
}

/* An angle: an arc from leg to leg about its apex, the number on it, or past its end where it does not fit. */
static void
measure_angle (EmCanvas *canvas, const EmOutlineDim *dim, const char *text, const EmColour *colour)
{
  double x = em_canvas_x (canvas, dim->x0_mm), y = em_canvas_y (canvas, dim->y0_mm), font = canvas->style->font_px, arrow = font * ARROW_EM;
  double dx = dim->x1_mm - dim->x0_mm, dy = dim->y1_mm - dim->y0_mm, radius = hypot (dx, dy) * canvas->scale, length = radius * dim->turn;
  double from = -atan2 (dy, dx), to = from - dim->turn, middle = from - dim->turn / 2, width, height, end_x, end_y;
  g_autoptr (PangoLayout) layout = make_text (canvas, text);

  if (!(radius > 0))
    return;
  text_size (layout, &width, &height);
  gboolean is_outside = length < 2.6 * arrow, fits = length > fabs (sin (middle)) * width + fabs (cos (middle)) * height + 2.9 * arrow;
  double more = is_outside ? 2 * arrow : fits ? 0 : arrow, past;

  draw_angle_arc (canvas, x, y, radius, from, to, more, is_outside);
  if (dim->legs > 0)
    draw_leg (canvas, x, y, radius, to);
  if (dim->legs > 1)
    draw_leg (canvas, x, y, radius, from);
  if (fits)
    {
      show_text (canvas, text, x + radius * cos (middle), y + radius * sin (middle), colour);
      return;
    }
  /* Between two legs of its own, behind the apex, there is nothing else. */
  if (dim->legs > 1)
    {
      past = (fabs (cos (middle)) * width + fabs (sin (middle)) * height) / 2 + font * 0.2;
      show_text (canvas, text, x - cos (middle) * past, y - sin (middle) * past, colour);
      return;
    }
  to -= more / radius;
  end_x = sin (to);
  end_y = -cos (to);
  past = (fabs (end_x) * width + fabs (end_y) * height * 0.8) / 2 + font * 0.2;
  show_text (canvas, text, x + radius * cos (to) + end_x * past, y + radius * sin (to) + end_y * past, colour);
}

static void
draw_dim (EmCanvas *canvas, int index)
{
  const EmOutlineDim *dim = &canvas->outline.dim[index];
  gboolean is_chosen = canvas->field >= 0 && dim->field == canvas->field;
  const EmColour *colour = is_chosen ? &canvas->style->accent : &canvas->style->ink;
  g_autofree char *text = dim_text (canvas, dim);
  double sx, sy, offset = offset_of (canvas, index), gap = canvas->style->font_px * 0.2, over = canvas->style->font_px * 0.35;
  double x0 = em_canvas_x (canvas, dim->x0_mm), y0 = em_canvas_y (canvas, dim->y0_mm);
  double x1 = em_canvas_x (canvas, dim->x1_mm), y1 = em_canvas_y (canvas, dim->y1_mm);
  double far;

  side_of (dim, &sx, &sy);
  if (dim->offset_mm == 0)
    offset = 0;
  else
    {
      /* Beyond everything drawn on that side, when the points lie inside. */
      double edge_x = sx > 0 ? em_canvas_x (canvas, canvas->right_mm) : em_canvas_x (canvas, canvas->left_mm);
      double edge_y = sy > 0 ? em_canvas_y (canvas, canvas->bottom_mm) : em_canvas_y (canvas, canvas->top_mm);

      far = fabs (sx) > 0.95 ? (edge_x - (sx > 0 ? fmax (x0, x1) : fmin (x0, x1))) * sx
            : fabs (sy) > 0.95 ? (edge_y - (sy > 0 ? fmax (y0, y1) : fmin (y0, y1))) * sy : 0;
      offset += fmax (far, 0) + (sx > 0.95 && has_near (canvas) ? canvas->style->font_px * 1.4 : 0);
    }
  em_canvas_set_colour (canvas, colour, 1);
  cairo_set_line_width (canvas->cr, canvas->style->font_px * (is_chosen ? 0.11 : 0.06));
  if (dim->turn != 0)
    {
      if (is_angle (canvas, dim))
        measure_angle (canvas, dim, text, colour);
      else
        measure_arc (canvas, dim, text, colour);
      return;
    }
  if (offset > 0)
    {
      segment (canvas, x0 + sx * gap, y0 + sy * gap, x0 + sx * (offset + over), y0 + sy * (offset + over));
      segment (canvas, x1 + sx * gap, y1 + sy * gap, x1 + sx * (offset + over), y1 + sy * (offset + over));
    }
  if (is_radius (canvas, dim) && !has_room (canvas, hypot (x1 - x0, y1 - y0), text))
    lead_in (canvas, x0, y0, x1, y1, text, colour);
  else
    {
      gboolean is_on_metal = dim->offset_mm == 0 && !is_radius (canvas, dim);

      measure_line (canvas, x0 + sx * offset, y0 + sy * offset, x1 + sx * offset, y1 + sy * offset, is_on_metal ? 0 : sx, is_on_metal ? 0 : sy,
                    is_radius (canvas, dim), text, colour);
    }
}

void
em_drawing_draw_dims (EmCanvas *canvas)
{
  for (int i = 0; i < canvas->outline.n_dims; i++)
    if (!canvas->style->is_sketch || field_of (canvas, &canvas->outline.dim[i]) != NULL)
      draw_dim (canvas, i);
}

/* Arcs of angles may reach out of a shape that is flat. */
void
em_drawing_extend_dims (EmCanvas *canvas)
{
  enum { STEPS = 12 };

  for (int i = 0; i < canvas->outline.n_dims; i++)
    {
      const EmOutlineDim *dim = &canvas->outline.dim[i];
      double dx = dim->x1_mm - dim->x0_mm, dy = dim->y1_mm - dim->y0_mm, from = atan2 (dy, dx), radius = hypot (dx, dy);

      for (int step = 0; step <= STEPS && is_angle (canvas, dim); step++)
        em_canvas_extend (canvas, dim->x0_mm + radius * cos (from + dim->turn * step / STEPS), dim->y0_mm + radius * sin (from + dim->turn * step / STEPS));
    }
}

void
em_drawing_extend_near (EmCanvas *canvas)
{
  if (has_near (canvas))
    em_canvas_extend (canvas, metal_right_mm (canvas) + canvas->feature->clearance_mm, canvas->bottom_mm);
}

/* "Hole 0.4" */
static char *
near_text (const EmCanvas *canvas)
{
  g_autofree char *clearance = em_words_length (canvas->feature->clearance_mm, canvas->units, 3);
  char *space = g_strrstr (clearance, "\302\240");

  if (space != NULL)
    *space = '\0';
  return g_strdup_printf ("%s\302\240%s", em_words_near (canvas->feature->near), clearance);
}

/* Where the near thing begins: a line across at its clearance from the weld, named. */
void
em_drawing_draw_near (EmCanvas *canvas)
{
  static const double dashes[] = { 1.5, 1.5 };
  g_autofree char *text = NULL;
  double x, top, bottom, font = canvas->style->font_px, width, height, step_x, step_y;

  if (!has_near (canvas))
    return;
  text = near_text (canvas);
  x = em_canvas_x (canvas, metal_right_mm (canvas) + canvas->feature->clearance_mm);
  top = em_canvas_y (canvas, canvas->top_mm);
  bottom = em_canvas_y (canvas, canvas->bottom_mm);
  em_canvas_set_colour (canvas, &canvas->style->ink, 1);
  cairo_set_line_width (canvas->cr, canvas->style->font_px * 0.09);
  cairo_set_dash (canvas->cr, dashes, 2, 0);
  segment (canvas, x, top, x, bottom);
  cairo_set_dash (canvas->cr, NULL, 0, 0);
  /* Its name stands along the line, read from the right as on drawings, at the foot, where no dimension is. */
  g_autoptr (PangoLayout) layout = make_text (canvas, text);
  text_size (layout, &width, &height);
  step_x = x + font * 0.75;
  step_y = fmax (bottom - width / 2, (top + bottom) / 2);
  em_canvas_set_colour (canvas, &canvas->style->paper, 0.9);
  /* NOLINTNEXTLINE(readability-suspicious-call-argument): a text on its side is as wide as it is high. */
  cairo_rectangle (canvas->cr, step_x - height / 2, step_y - width / 2, height, width);
  cairo_fill (canvas->cr);
  em_canvas_set_colour (canvas, &canvas->style->quiet, 1);
  cairo_save (canvas->cr);
  cairo_translate (canvas->cr, step_x - height / 2, step_y + width / 2);
  cairo_rotate (canvas->cr, -G_PI / 2);
  cairo_move_to (canvas->cr, 0, 0);
  pango_cairo_show_layout (canvas->cr, layout);
  cairo_restore (canvas->cr);
}

/* A round length whose bar is about a quarter of the width. */
static double
bar_length (double most, EmUnits units)
{
  double unit = units == EM_UNITS_INCH ? EM_MM_PER_INCH : 1, value = most / unit;
  double power = pow (10, floor (log10 (value)));
  double step = value / power >= 5 ? 5 : value / power >= 2 ? 2 : 1;

  return step * power * unit;
}

/* "20:1", or "1:2" for a drawing smaller than life. */
static char *
ratio_text (double ratio)
{
  g_autofree char *number = em_words_figure (ratio >= 1 ? ratio : 1 / ratio, 4);

  return ratio >= 1 ? g_strdup_printf ("%s:1", number) : g_strdup_printf ("1:%s", number);
}

void
em_drawing_draw_scale (EmCanvas *canvas, double width, double height)
{
  if (canvas->style->is_sketch)
    return;
  double font = canvas->style->font_px, length_mm = bar_length (width * 0.25 / canvas->scale, canvas->units);
  double length = length_mm * canvas->scale, x = font * 0.4, y = height - font * 0.75;
  g_autofree char *bar = em_words_length (length_mm, canvas->units, 4);
  g_autofree char *ratio = canvas->ratio > 0 ? ratio_text (canvas->ratio) : NULL;
  g_autofree char *text = ratio != NULL ? g_strdup_printf ("%s  %s", bar, ratio) : g_strdup (bar);
  g_autoptr (PangoLayout) layout = make_text (canvas, text);
  double text_width, text_height;

  text_size (layout, &text_width, &text_height);
  em_canvas_set_colour (canvas, &canvas->style->quiet, 1);
  cairo_set_line_width (canvas->cr, font * 0.1);
  cairo_move_to (canvas->cr, x, y - font * 0.25);
  cairo_line_to (canvas->cr, x, y + font * 0.25);
  cairo_move_to (canvas->cr, x, y);
  cairo_line_to (canvas->cr, x + length, y);
  cairo_move_to (canvas->cr, x + length, y - font * 0.25);
  cairo_line_to (canvas->cr, x + length, y + font * 0.25);
  cairo_stroke (canvas->cr);
  cairo_move_to (canvas->cr, x + length + font * 0.5, y - text_height / 2);
  pango_cairo_show_layout (canvas->cr, layout);
}
