/* em-kind-picture: a kind of feature as a small picture.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-kind-picture.h"

#include "em-look.h"

#include <math.h>

struct _EmKindPicture
{
  GtkWidget     parent_instance;
  const EmKind *kind;
  int           width, height;
};

G_DEFINE_FINAL_TYPE (EmKindPicture, em_kind_picture, GTK_TYPE_WIDGET)

/* Proportions tried in turn: the i-th length, mm. */
static const double proportions[][5] =
{
  { 12, 6, 4, 3, 2 }, { 12, 4, 4, 2, 2 }, { 8, 10, 6, 4, 3 }, { 10, 8, 6, 4, 3 }, { 2, 4, 6, 8, 10 }, { 12, 2, 2, 1, 1 },
  { 12, 6, 4, 1, 1 }, { 12, 4, 1, 1, 1 }
};

static double
typical (const EmField *field, const double *lengths, int *n_lengths)
{
  double value = 0;

  switch (field->quantity)
    {
    case EM_QUANTITY_LENGTH: value = lengths[MIN (*n_lengths, 4)]; (*n_lengths)++; break;
    case EM_QUANTITY_ANGLE: value = 90; break;
    case EM_QUANTITY_AREA: value = 40; break;
    case EM_QUANTITY_COUNT: value = 1; break;
    case EM_QUANTITY_CHOICE: value = 0; break;
    }
  return CLAMP (value, field->low, field->high);
}

/* Fills what the kind says it misses, until it solves or finds fault with something else. */
static gboolean
solve_with (const EmKind *kind, const double *lengths, EmShape *out_shape, double value[EM_FIELD_MAX])
{
  int n_lengths = 0;
  EmFault fault;

  for (int i = 0; i < EM_FIELD_MAX; i++)
    value[i] = EM_ABSENT;
  for (int i = 0; i <= kind->n_fields; i++)
    {
      EmStatus status = em_shape_solve (kind, value, out_shape, &fault);
      int missing = status == EM_FAULT_MISSING ? em_kind_field (kind, fault.field) : -1;
      if (status == EM_OK)
        return TRUE;
      if (missing < 0)
        return FALSE;
      value[missing] = typical (&kind->fields[missing], lengths, &n_lengths);
    }
  return FALSE;
}

gboolean
em_kind_sample (const EmKind *kind, EmShape *out_shape, double *out_value)
{
  double value[EM_FIELD_MAX];

  for (gsize i = 0; i < G_N_ELEMENTS (proportions); i++)
    if (solve_with (kind, proportions[i], out_shape, out_value != NULL ? out_value : value))
      return TRUE;
  return FALSE;
}

static gboolean
is_ring (EmInk ink)
{
  return ink == EM_INK_BASE || ink == EM_INK_METAL;
}

/* One line, or the rings of one ink that follow each other: a ring turned against the one around it is its hole. */
static int
trace_runs (cairo_t *cr, const EmOutline *outline, int first)
{
  EmInk ink = outline->point[first].ink;
  int i = first;

  cairo_new_path (cr);
  do
    {
      cairo_new_sub_path (cr);
      do
        {
          cairo_line_to (cr, outline->point[i].x_mm, outline->point[i].y_mm);
          i++;
        }
      while (i < outline->n_points && !outline->point[i].is_start);
      if (is_ring (ink))
        cairo_close_path (cr);
    }
  while (is_ring (ink) && i < outline->n_points && outline->point[i].ink == ink);
  return i;
}

static void
draw_outline (GtkWidget *widget, cairo_t *cr, const EmOutline *outline, double width, double height)
{
  double left = INFINITY, right = -INFINITY, bottom = INFINITY, top = -INFINITY;
  GdkRGBA ink, steel, weld;

  for (int i = 0; i < outline->n_points; i++)
    {
      left = fmin (left, outline->point[i].x_mm);
      right = fmax (right, outline->point[i].x_mm);
      bottom = fmin (bottom, outline->point[i].y_mm);
      top = fmax (top, outline->point[i].y_mm);
    }
  if (!(right > left) || !(top > bottom))
    return;

  double scale = fmin ((width - 4) / (right - left), (height - 4) / (top - bottom));
  em_look_colour (widget, "em_ink", &ink);
  em_look_colour (widget, "em_steel", &steel);
  em_look_colour (widget, "em_weld", &weld);
  cairo_translate (cr, width / 2, height / 2);
  cairo_scale (cr, scale, -scale);
  cairo_translate (cr, -(left + right) / 2, -(bottom + top) / 2);
  cairo_set_line_width (cr, 1.1 / scale);
  for (int i = 0; i < outline->n_points;)
    {
      EmInk ink_of_run = outline->point[i].ink;

      i = trace_runs (cr, outline, i);
      if (is_ring (ink_of_run))
        {
          gdk_cairo_set_source_rgba (cr, ink_of_run == EM_INK_BASE ? &steel : &weld);
          cairo_fill_preserve (cr);
        }
      gdk_cairo_set_source_rgba (cr, &ink);
      cairo_stroke (cr);
    }
}

static void
em_kind_picture_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  EmKindPicture *self = EM_KIND_PICTURE (widget);
  int width = gtk_widget_get_width (widget), height = gtk_widget_get_height (widget);
  EmShape shape;
  EmOutline outline = { 0 };

  if (self->kind == NULL || !em_kind_sample (self->kind, &shape, NULL))
    return;
  self->kind->outline (&shape, EM_VIEW_SECTION, &outline);

  cairo_t *cr = gtk_snapshot_append_cairo (snapshot, &GRAPHENE_RECT_INIT (0, 0, (float) width, (float) height));
  draw_outline (widget, cr, &outline, width, height);
  cairo_destroy (cr);
}

static void
em_kind_picture_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum, int *natural,
                         int *minimum_baseline, int *natural_baseline)
{
  EmKindPicture *self = EM_KIND_PICTURE (widget);

  (void) for_size;
  *minimum = *natural = orientation == GTK_ORIENTATION_HORIZONTAL ? self->width : self->height;
  *minimum_baseline = *natural_baseline = -1;
}

static void
em_kind_picture_class_init (EmKindPictureClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  widget_class->snapshot = em_kind_picture_snapshot;
  widget_class->measure = em_kind_picture_measure;
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_PRESENTATION);
}

static void
em_kind_picture_init (EmKindPicture *self)
{
  gtk_widget_set_overflow (GTK_WIDGET (self), GTK_OVERFLOW_HIDDEN);
}

GtkWidget *
em_kind_picture_new (const EmKind *kind, int width, int height)
{
  EmKindPicture *self = g_object_new (EM_TYPE_KIND_PICTURE, "valign", GTK_ALIGN_CENTER, NULL);

  self->kind = kind;
  self->width = width;
  self->height = height;
  return GTK_WIDGET (self);
}

void
em_kind_picture_set_kind (EmKindPicture *self, const EmKind *kind)
{
  if (self->kind == kind)
    return;
  self->kind = kind;
  gtk_widget_queue_draw (GTK_WIDGET (self));
}
