/* em-beside: two parts side by side where there is room for both, else the second below the first.
 *
 * What is decided while sizes are given out needs no part moved from one parent to another, so nothing blinks and the keyboard stays
 * where it is.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-beside.h"

struct _EmBeside
{
  GtkWidget parent_instance;

  GtkWidget *first, *second;
  int        spacing_px, share_percent;
  gboolean   is_beside, is_tight;
};

G_DEFINE_FINAL_TYPE (EmBeside, em_beside, GTK_TYPE_WIDGET)

typedef struct { int least, usual; } Size;

static Size
size_of (GtkWidget *part, GtkOrientation orientation, int for_size)
{
  Size size = { 0, 0 };

  if (gtk_widget_should_layout (part))
    gtk_widget_measure (part, orientation, for_size, &size.least, &size.usual, NULL, NULL);
  return size;
}

/* Between the parts, if there are two. */
static int
spacing_of (EmBeside *self)
{
  return gtk_widget_should_layout (self->first) && gtk_widget_should_layout (self->second) ? self->spacing_px : 0;
}

static gboolean
fits_beside (EmBeside *self, int width)
{
  Size first = size_of (self->first, GTK_ORIENTATION_HORIZONTAL, -1);

  return (self->is_tight ? first.least : first.usual) + spacing_of (self)
         + size_of (self->second, GTK_ORIENTATION_HORIZONTAL, -1).usual <= width;
}

static GtkSizeRequestMode
em_beside_get_request_mode (GtkWidget *widget)
{
  (void) widget;
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

/* Beside each other is what a wide place is used for, not what is asked for. */
static void
measure_width (EmBeside *self, Size *out_size)
{
  Size first = size_of (self->first, GTK_ORIENTATION_HORIZONTAL, -1), second = size_of (self->second, GTK_ORIENTATION_HORIZONTAL, -1);

  out_size->least = MAX (first.least, second.least);
  out_size->usual = MAX (first.usual, second.usual);
}

static void
measure_height (EmBeside *self, int width, Size *out_size)
{
  gboolean is_beside = width >= 0 && fits_beside (self, width);
  int second_width = is_beside ? size_of (self->second, GTK_ORIENTATION_HORIZONTAL, -1).usual : width;
  Size first = size_of (self->first, GTK_ORIENTATION_VERTICAL, is_beside ? width - second_width - spacing_of (self) : width);
  Size second = size_of (self->second, GTK_ORIENTATION_VERTICAL, second_width);

  out_size->least = is_beside ? MAX (first.least, second.least) : first.least + spacing_of (self) + second.least;
  out_size->usual = is_beside ? MAX (first.usual, second.usual) : first.usual + spacing_of (self) + second.usual;
}

/* NOLINTBEGIN(readability-non-const-parameter): GtkWidget's own. */
static void
em_beside_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum, int *natural, int *minimum_baseline,
                   int *natural_baseline)
/* NOLINTEND(readability-non-const-parameter) */
{
  Size size = { 0, 0 };

  (void) minimum_baseline;
  (void) natural_baseline;
  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    measure_width (EM_BESIDE (widget), &size);
  else
    measure_height (EM_BESIDE (widget), for_size, &size);
  *minimum = size.least;
  *natural = size.usual;
}

static void
put (GtkWidget *part, int x, int y, int width, int height)
{
  if (gtk_widget_should_layout (part))
    gtk_widget_size_allocate (part, &(GtkAllocation) { x, y, width, height }, -1);
}

static void
em_beside_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  EmBeside *self = EM_BESIDE (widget);
  int spacing_px = spacing_of (self);

  (void) baseline;
  self->is_beside = fits_beside (self, width);
  if (self->is_beside)
    {
      int second_px = size_of (self->second, GTK_ORIENTATION_HORIZONTAL, -1).usual, first_px = width - second_px - spacing_px;
      gboolean is_left = gtk_widget_get_direction (widget) != GTK_TEXT_DIR_RTL;
      put (self->first, is_left ? 0 : second_px + spacing_px, 0, first_px, height);
      put (self->second, is_left ? first_px + spacing_px : 0, 0, second_px, height);
      return;
    }

  Size first = size_of (self->first, GTK_ORIENTATION_VERTICAL, width), second = size_of (self->second, GTK_ORIENTATION_VERTICAL, width);
  int shared_px = height - spacing_px, kept_px = MAX (first.least, shared_px * self->share_percent / 100);
  int second_px = MAX (second.least, MIN (second.usual, shared_px - kept_px));

  put (self->first, 0, 0, width, shared_px - second_px);
  put (self->second, 0, height - second_px, width, second_px);
}

static void
em_beside_dispose (GObject *object)
{
  EmBeside *self = EM_BESIDE (object);

  g_clear_pointer (&self->first, gtk_widget_unparent);
  g_clear_pointer (&self->second, gtk_widget_unparent);
  G_OBJECT_CLASS (em_beside_parent_class)->dispose (object);
}

static void
em_beside_class_init (EmBesideClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  G_OBJECT_CLASS (class)->dispose = em_beside_dispose;
  widget_class->get_request_mode = em_beside_get_request_mode;
  widget_class->measure = em_beside_measure;
  widget_class->size_allocate = em_beside_size_allocate;
}

static void
em_beside_init (EmBeside *self)
{
  (void) self;
}

GtkWidget *
em_beside_new (GtkWidget *first, GtkWidget *second, int spacing_px, int share_percent)
{
  EmBeside *self = g_object_new (EM_TYPE_BESIDE, NULL);

  self->first = first;
  self->second = second;
  self->spacing_px = spacing_px;
  self->share_percent = share_percent;
  gtk_widget_set_parent (first, GTK_WIDGET (self));
  gtk_widget_set_parent (second, GTK_WIDGET (self));
  return GTK_WIDGET (self);
}

void
em_beside_set_tight (EmBeside *self)
{
  self->is_tight = TRUE;
}

gboolean
em_beside_is_beside (EmBeside *self)
{
  return self->is_beside;
}
