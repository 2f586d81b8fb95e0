/* em-constitution-picture: base, wire and deposit on the Schaeffler or WRC-1992 picture.
 *
 * Fields are named by the letters the published figures use. A spot whose chemistry is outside the
 * published limits is hollow: its place is reckoned, its field is not told.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-constitution-picture.h"

#include "em-look.h"

#include <glib/gi18n.h>
#include <math.h>

struct _EmConstitutionPicture
{
  GtkWidget parent_instance;

  const EmDiagram *diagram;   /* NULL until shown */
  EmConstitution   spot[EM_N_SPOT];
};

G_DEFINE_FINAL_TYPE (EmConstitutionPicture, em_constitution_picture, GTK_TYPE_WIDGET)

enum { LEAST_WIDTH = 200, USUAL_HEIGHT = 190, MOST_HEIGHT = 320, SPOT = 5 };

/* Where the box of the diagram lies in the widget. */
typedef struct
{
  const EmDiagram *diagram;
  double x, y, width, height;
} EmFrame;

static double
place_x (const EmFrame *frame, double cr_eq)
{
  return frame->x + (cr_eq - frame->diagram->cr_eq_low) / (frame->diagram->cr_eq_high - frame->diagram->cr_eq_low) * frame->width;
}

static double
place_y (const EmFrame *frame, double ni_eq)
{
  return frame->y + frame->height
         - (ni_eq - frame->diagram->ni_eq_low) / (frame->diagram->ni_eq_high - frame->diagram->ni_eq_low) * frame->height;
}

static const char *
field_letters (EmPhase phase)
{
  static const char *const letters[EM_N_PHASE] =
  {
    [EM_PHASE_MARTENSITE] = "M", [EM_PHASE_AUSTENITE_MARTENSITE] = "A + M", [EM_PHASE_AUSTENITE] = "A",
    [EM_PHASE_AUSTENITE_FERRITE] = "A + F", [EM_PHASE_FERRITE] = "F", [EM_PHASE_MARTENSITE_FERRITE] = "M + F",
    [EM_PHASE_AUSTENITE_MARTENSITE_FERRITE] = "A + M + F", [EM_PHASE_FERRITE_MARTENSITE] = "F + M", [EM_PHASE_UNKNOWN] = "",
  };

  return letters[phase];
}

static PangoLayout *
text_layout (GtkWidget *widget, const char *text, double scale)
{
  PangoLayout *layout = gtk_widget_create_pango_layout (widget, text);
  g_autoptr (PangoAttrList) attributes = pango_attr_list_new ();

  pango_attr_list_insert (attributes, pango_attr_scale_new (scale));
  pango_layout_set_attributes (layout, attributes);
  return layout;
}

/* Text with its middle at x, y; align_x 0 puts its left there, 1 its right. */
static void
put_text (GtkWidget *widget, cairo_t *cr, const char *text, double scale, double x, double y, double align_x)
{
  g_autoptr (PangoLayout) layout = text_layout (widget, text, scale);
  int width, height;

  pango_layout_get_pixel_size (layout, &width, &height);
  cairo_move_to (cr, x - align_x * width, y - height / 2.0);
  pango_cairo_show_layout (cr, layout);
}

static void
draw_field (GtkWidget *widget, cairo_t *cr, const EmFrame *frame, const EmRegion *region)
{
  double x = 0, y = 0, least = INFINITY, most = -INFINITY;
  GdkRGBA rule, quiet;

  em_look_colour (widget, "em_rule", &rule);
  em_look_colour (widget, "em_quiet", &quiet);
  cairo_new_path (cr);
  for (int i = 0; i < region->n_points; i++)
    {
      double at_x = place_x (frame, region->point[i].cr_eq), at_y = place_y (frame, region->point[i].ni_eq);
      cairo_line_to (cr, at_x, at_y);
      x += at_x / region->n_points;
      y += at_y / region->n_points;
      least = fmin (least, at_x);
      most = fmax (most, at_x);
    }
  cairo_close_path (cr);
  gdk_cairo_set_source_rgba (cr, &rule);
  cairo_set_line_width (cr, 1);
  cairo_stroke (cr);
  gdk_cairo_set_source_rgba (cr, &quiet);
  if (most - least > 34)
    put_text (widget, cr, field_letters (region->phase), 0.8, x, y, 0.5);
}

/* Lines of equal ferrite, each with its number at its upper end. */
static void
draw_contours (GtkWidget *widget, cairo_t *cr, const EmFrame *frame)
{
  static const double dashes[] = { 2, 2 };
  GdkRGBA rule, quiet;

  em_look_colour (widget, "em_rule", &rule);
  em_look_colour (widget, "em_quiet", &quiet);
  for (int i = 0; i < frame->diagram->n_contours; i++)
    {
      const EmContour *contour = &frame->diagram->contour[i];
      double x = place_x (frame, contour->end.cr_eq), y = place_y (frame, contour->end.ni_eq);

      if (!contour->is_drawn)
        continue;
      cairo_move_to (cr, place_x (frame, contour->start.cr_eq), place_y (frame, contour->start.ni_eq));
      cairo_line_to (cr, x, y);
      gdk_cairo_set_source_rgba (cr, &rule);
      cairo_set_line_width (cr, 1);
      cairo_set_dash (cr, dashes, G_N_ELEMENTS (dashes), 0);
      cairo_stroke (cr);
      cairo_set_dash (cr, NULL, 0, 0);

      g_autofree char *text = g_strdup_printf ("%.0f", contour->value);
      gboolean is_at_edge = x > frame->x + frame->width - 2;
      gdk_cairo_set_source_rgba (cr, &quiet);
      put_text (widget, cr, text, 0.65, is_at_edge ? x - 2 : x, fmax (y + (is_at_edge ? 7 : -5), frame->y + 6), is_at_edge ? 1 : 0.5);
    }
}

static void
draw_axes (GtkWidget *widget, cairo_t *cr, const EmFrame *frame)
{
  const EmDiagram *diagram = frame->diagram;
  double step = diagram->cr_eq_high - diagram->cr_eq_low > 20 ? 10 : 5;
  GdkRGBA quiet;

  em_look_colour (widget, "em_quiet", &quiet);
  gdk_cairo_set_source_rgba (cr, &quiet);
  for (double at = ceil (diagram->cr_eq_low / step) * step; at <= diagram->cr_eq_high; at += step)
    {
      g_autofree char *text = g_strdup_printf ("%.0f", at);
      put_text (widget, cr, text, 0.75, place_x (frame, at), frame->y + frame->height + 8, 0.5);
    }
  for (double at = ceil (diagram->ni_eq_low / step) * step; at <= diagram->ni_eq_high; at += step)
    {
      g_autofree char *text = g_strdup_printf ("%.0f", at);
      put_text (widget, cr, text, 0.75, frame->x - 4, place_y (frame, at), 1);
    }
  put_text (widget, cr, _("Cr equivalent, %"), 0.75, frame->x + frame->width, frame->y + frame->height + 21, 1);
  put_text (widget, cr, _("Ni equivalent, %"), 0.75, frame->x, frame->y - 9, 0);
}

static gboolean
is_in_box (const EmDiagram *diagram, const EmConstitution *spot)
{
  return spot->cr_eq >= diagram->cr_eq_low && spot->cr_eq <= diagram->cr_eq_high && spot->ni_eq >= diagram->ni_eq_low
         && spot->ni_eq <= diagram->ni_eq_high;
}

/* Shapes differ, so that colour is never alone: a square for the base, a diamond for the wire, a disc for the deposit. */
static void
trace_spot (cairo_t *cr, EmSpot spot, double x, double y)
{
  cairo_new_path (cr);
  if (spot == EM_SPOT_BASE)
    cairo_rectangle (cr, x - SPOT + 1, y - SPOT + 1, 2 * SPOT - 2, 2 * SPOT - 2);
  else if (spot == EM_SPOT_DEPOSIT)
    cairo_arc (cr, x, y, SPOT, 0, 2 * G_PI);
  else
    {
      cairo_move_to (cr, x - SPOT - 1, y);
      cairo_line_to (cr, x, y - SPOT - 1);
      cairo_line_to (cr, x + SPOT + 1, y);
      cairo_line_to (cr, x, y + SPOT + 1);
      cairo_close_path (cr);
    }
}

/* is_filled: its field is told. */
static void
put_spot (EmConstitutionPicture *self, cairo_t *cr, EmSpot which, double x, double y, gboolean is_filled)
{
  static const char *const colours[EM_N_SPOT] = { "em_thread_1", "em_thread_3", "em_weld" };
  GdkRGBA colour, paper;

  em_look_colour (GTK_WIDGET (self), colours[which], &colour);
  em_look_colour (GTK_WIDGET (self), "em_paper", &paper);
  trace_spot (cr, which, x, y);
  gdk_cairo_set_source_rgba (cr, is_filled ? &colour : &paper);
  cairo_fill_preserve (cr);
  gdk_cairo_set_source_rgba (cr, &colour);
  cairo_set_line_width (cr, 1.8);
  cairo_stroke (cr);
}

/* From the right above the frame, so that spots close together keep their names apart. */
static void
draw_key (EmConstitutionPicture *self, cairo_t *cr, const EmFrame *frame)
{
  double x = frame->x + frame->width;
  GdkRGBA ink;

  em_look_colour (GTK_WIDGET (self), "em_ink", &ink);
  for (int i = EM_N_SPOT - 1; i >= 0; i--)
    {
      g_autoptr (PangoLayout) layout = text_layout (GTK_WIDGET (self), em_spot_name ((EmSpot) i), 0.75);
      int width, height;
      pango_layout_get_pixel_size (layout, &width, &height);
      gdk_cairo_set_source_rgba (cr, &ink);
      cairo_move_to (cr, x - width, frame->y - 9 - height / 2.0);
      pango_cairo_show_layout (cr, layout);
      put_spot (self, cr, (EmSpot) i, x - width - SPOT - 4, frame->y - 9, TRUE);
      x -= width + 2 * SPOT + 16;
    }
}

/* What is melted together lies on the line between the two. */
static void
draw_mixing_line (EmConstitutionPicture *self, cairo_t *cr, const EmFrame *frame)
{
  static const double dashes[] = { 3, 3 };
  const EmConstitution *base = &self->spot[EM_SPOT_BASE], *wire = &self->spot[EM_SPOT_WIRE];
  GdkRGBA quiet;

  if (isnan (base->cr_eq) || isnan (wire->cr_eq))
    return;
  em_look_colour (GTK_WIDGET (self), "em_quiet", &quiet);
  cairo_save (cr);
  cairo_rectangle (cr, frame->x, frame->y, frame->width, frame->height);
  cairo_clip (cr);
  gdk_cairo_set_source_rgba (cr, &quiet);
  cairo_set_line_width (cr, 1);
  cairo_set_dash (cr, dashes, G_N_ELEMENTS (dashes), 0);
  cairo_move_to (cr, place_x (frame, base->cr_eq), place_y (frame, base->ni_eq));
  cairo_line_to (cr, place_x (frame, wire->cr_eq), place_y (frame, wire->ni_eq));
  cairo_stroke (cr);
  cairo_restore (cr);
}

static void
em_constitution_picture_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  EmConstitutionPicture *self = EM_CONSTITUTION_PICTURE (widget);
  int width = gtk_widget_get_width (widget), height = gtk_widget_get_height (widget);
  EmFrame frame = { self->diagram, 26, 20, width - 26 - 8, height - 20 - 30 };
  GdkRGBA paper;

  if (self->diagram == NULL || frame.width < 40 || frame.height < 40)
    return;
  cairo_t *cr = gtk_snapshot_append_cairo (snapshot, &GRAPHENE_RECT_INIT (0, 0, (float) width, (float) height));
  em_look_colour (widget, "em_paper", &paper);
  gdk_cairo_set_source_rgba (cr, &paper);
  cairo_rectangle (cr, frame.x, frame.y, frame.width, frame.height);
  cairo_fill (cr);
  for (int i = 0; i < self->diagram->n_regions; i++)
    draw_field (widget, cr, &frame, &self->diagram->region[i]);
  draw_contours (widget, cr, &frame);
  draw_axes (widget, cr, &frame);
  draw_mixing_line (self, cr, &frame);
  for (int i = 0; i < EM_N_SPOT; i++)
    if (is_in_box (self->diagram, &self->spot[i]))
      put_spot (self, cr, (EmSpot) i, place_x (&frame, self->spot[i].cr_eq), place_y (&frame, self->spot[i].ni_eq), self->spot[i].is_inside);
  draw_key (self, cr, &frame);
  cairo_destroy (cr);
}

static GtkSizeRequestMode
em_constitution_picture_get_request_mode (GtkWidget *widget)
{
  (void) widget;
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

static void
em_constitution_picture_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum, int *natural,
                                 int *minimum_baseline, int *natural_baseline)
{
  (void) widget;
  *minimum = orientation == GTK_ORIENTATION_HORIZONTAL ? LEAST_WIDTH : USUAL_HEIGHT;
  *natural = orientation == GTK_ORIENTATION_HORIZONTAL ? LEAST_WIDTH : CLAMP (for_size * 2 / 3, USUAL_HEIGHT, MOST_HEIGHT);
  *minimum_baseline = *natural_baseline = -1;
}

static void
em_constitution_picture_class_init (EmConstitutionPictureClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  widget_class->snapshot = em_constitution_picture_snapshot;
  widget_class->get_request_mode = em_constitution_picture_get_request_mode;
  widget_class->measure = em_constitution_picture_measure;
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static void
em_constitution_picture_init (EmConstitutionPicture *self)
{
  gtk_widget_set_overflow (GTK_WIDGET (self), GTK_OVERFLOW_HIDDEN);
}

GtkWidget *
em_constitution_picture_new (void)
{
  return g_object_new (EM_TYPE_CONSTITUTION_PICTURE, NULL);
}

void
em_constitution_picture_show (EmConstitutionPicture *self, const EmDiagram *diagram, const EmConstitution *spots, const char *spoken)
{
  self->diagram = diagram;
  for (int i = 0; i < EM_N_SPOT; i++)
    self->spot[i] = spots[i];
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, spoken, -1);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

const char *
em_spot_name (EmSpot spot)
{
  return spot == EM_SPOT_BASE ? _("Base") : spot == EM_SPOT_WIRE ? _("Wire") : _("Deposit");
}
