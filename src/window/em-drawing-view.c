/* em-drawing-view: one view of a feature, to scale, live.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-drawing-view.h"

#include "em-kind-picture.h"
#include "em-look.h"
#include "em-words.h"

#include <glib/gi18n.h>
#include <math.h>

struct _EmDrawingView
{
  GtkWidget parent_instance;

  EmView      view;
  EmDocument *document;   /* owned */
  int         field;
};

G_DEFINE_FINAL_TYPE (EmDrawingView, em_drawing_view, GTK_TYPE_WIDGET)

enum { LEAST_WIDTH = 120, LEAST_HEIGHT = 110, USUAL_HEIGHT = 150, MOST_HEIGHT = 280 };

#define USUAL_FONT 11.5   /* px of the dimensions at the usual size of text */
#define MOST_SCALE 1.5
#define FONT_SHARE 0.115  /* of the height at most: large text is to leave room for what it measures */
#define SKETCH_ALPHA 0.55

/* Sizes that make no shape, as those of a feature just added: what they will mean, at sizes of nobody's. */
static void
draw_sketch (EmDrawingView *self, cairo_t *cr, int width, int height, const EmFeature *feature, EmDrawingStyle *style)
{
  EmFeature sample;
  EmShape shape;

  em_feature_init (&sample, feature->kind);
  style->is_sketch = TRUE;
  if (em_kind_sample (feature->kind, &shape, sample.value))
    {
      cairo_push_group (cr);
      em_drawing_draw (cr, width, height, &sample, NULL, self->view, em_document_get_units (self->document), style, self->field);
      cairo_pop_group_to_source (cr);
      cairo_paint_with_alpha (cr, SKETCH_ALPHA);
    }
  em_feature_clear (&sample);
}

static void
em_drawing_view_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  EmDrawingView *self = EM_DRAWING_VIEW (widget);
  int width = gtk_widget_get_width (widget), height = gtk_widget_get_height (widget);
  int32_t index = self->document != NULL ? em_document_get_selected_index (self->document) : -1;
  EmDrawingStyle style;
  EmShape shape;

  if (index < 0 || width < 20 || height < 20)
    return;

  cairo_t *cr = gtk_snapshot_append_cairo (snapshot, &GRAPHENE_RECT_INIT (0, 0, (float) width, (float) height));
  em_look_drawing_style (widget, &style);
  style.font_px = fmin (style.font_px, height * FONT_SHARE);
  const EmFeature *feature = &em_document_get_quote (self->document)->feature[index];
  if (em_feature_solve (feature, &shape, NULL) == EM_OK)
    em_drawing_draw (cr, width, height, feature, em_document_get_feature_cost (self->document, index),
                     self->view, em_document_get_units (self->document), &style, self->field);
  else
    draw_sketch (self, cr, width, height, feature, &style);
  cairo_destroy (cr);
}

static GtkSizeRequestMode
em_drawing_view_get_request_mode (GtkWidget *widget)
{
  (void) widget;
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

/* How much larger than usual people have their text. */
static double
text_scale (GtkWidget *widget)
{
  EmDrawingStyle style;

  em_look_drawing_style (widget, &style);
  return CLAMP (style.font_px / USUAL_FONT, 1, MOST_SCALE);
}

/* Half as high as wide, within reason, so that a large screen shows a large drawing; large dimensions need room too. */
static void
em_drawing_view_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum, int *natural,
                         int *minimum_baseline, int *natural_baseline)
{
  *minimum = orientation == GTK_ORIENTATION_HORIZONTAL ? LEAST_WIDTH : LEAST_HEIGHT;
  *natural = orientation == GTK_ORIENTATION_HORIZONTAL ? 2 * LEAST_WIDTH : CLAMP (for_size / 2, (int) (USUAL_HEIGHT * text_scale (widget)), MOST_HEIGHT);
  *minimum_baseline = *natural_baseline = -1;
}

static void
em_drawing_view_finalize (GObject *object)
{
  g_clear_object (&EM_DRAWING_VIEW (object)->document);
  G_OBJECT_CLASS (em_drawing_view_parent_class)->finalize (object);
}

static void
em_drawing_view_class_init (EmDrawingViewClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  G_OBJECT_CLASS (class)->finalize = em_drawing_view_finalize;
  widget_class->snapshot = em_drawing_view_snapshot;
  widget_class->get_request_mode = em_drawing_view_get_request_mode;
  widget_class->measure = em_drawing_view_measure;
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static void
em_drawing_view_init (EmDrawingView *self)
{
  self->field = -1;
  gtk_widget_set_hexpand (GTK_WIDGET (self), TRUE);
  gtk_widget_set_overflow (GTK_WIDGET (self), GTK_OVERFLOW_HIDDEN);
}

GtkWidget *
em_drawing_view_new (EmView view)
{
  EmDrawingView *self = g_object_new (EM_TYPE_DRAWING_VIEW, NULL);

  self->view = view;
  return GTK_WIDGET (self);
}

/* Says in words what the picture shows. */
static void
describe (EmDrawingView *self)
{
  int32_t index = self->document != NULL ? em_document_get_selected_index (self->document) : -1;
  g_autofree char *text = NULL;

  if (index >= 0)
    {
      const EmFeature *feature = &em_document_get_quote (self->document)->feature[index];
      g_autofree char *sizes = em_words_sizes (feature, em_document_get_units (self->document));
      text = g_strdup_printf (self->view == EM_VIEW_SECTION ? _("Section: %s, %s") : _("Plan: %s, %s"),
                              em_words (feature->kind->name), sizes);
    }
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  text != NULL ? text : self->view == EM_VIEW_SECTION ? _("Section") : _("Plan"), -1);
}

void
em_drawing_view_show (EmDrawingView *self, EmDocument *document, int field)
{
  g_set_object (&self->document, document);
  self->field = field;
  describe (self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}
