/* em-steady: a width that is asked for without regard to the height.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-steady.h"

struct _EmSteadyLayout
{
  GtkLayoutManager parent_instance;

  int spacing_px;
};

G_DEFINE_FINAL_TYPE (EmSteadyLayout, em_steady_layout, GTK_TYPE_LAYOUT_MANAGER)

/* The first one from child on that takes room. */
static GtkWidget *
shown_from (GtkWidget *child)
{
  while (child != NULL && !gtk_widget_should_layout (child))
    child = gtk_widget_get_next_sibling (child);
  return child;
}

static GtkWidget *
first_shown (GtkWidget *widget)
{
  return shown_from (gtk_widget_get_first_child (widget));
}

static GtkWidget *
next_shown (GtkWidget *child)
{
  return shown_from (gtk_widget_get_next_sibling (child));
}

static GtkSizeRequestMode
em_steady_layout_get_request_mode (GtkLayoutManager *manager, GtkWidget *widget)
{
  (void) manager;
  (void) widget;
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

/* NOLINTBEGIN(readability-non-const-parameter): GtkLayoutManager's own. */
static void
em_steady_layout_measure (GtkLayoutManager *manager, GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum, int *natural,
                          int *minimum_baseline, int *natural_baseline)
/* NOLINTEND(readability-non-const-parameter) */
{
  gboolean is_width = orientation == GTK_ORIENTATION_HORIZONTAL;
  int spacing_px = 0, least, usual;

  (void) minimum_baseline;
  (void) natural_baseline;
  *minimum = *natural = 0;
  for (GtkWidget *child = first_shown (widget); child != NULL; child = next_shown (child))
    {
      gtk_widget_measure (child, orientation, is_width ? -1 : for_size, &least, &usual, NULL, NULL);
      *minimum = is_width ? MAX (*minimum, least) : *minimum + spacing_px + least;
      *natural = is_width ? MAX (*natural, usual) : *natural + spacing_px + usual;
      spacing_px = EM_STEADY_LAYOUT (manager)->spacing_px;
    }
}

static void
em_steady_layout_allocate (GtkLayoutManager *manager, GtkWidget *widget, int width, int height, int baseline)
{
  int spacing_px = EM_STEADY_LAYOUT (manager)->spacing_px, left = height, y = 0;
  guint n = 0, i = 0;

  (void) baseline;
  for (GtkWidget *child = first_shown (widget); child != NULL; child = next_shown (child))
    n++;
  if (n == 0)
    return;

  g_autofree GtkRequestedSize *size = g_new0 (GtkRequestedSize, n);

  for (GtkWidget *child = first_shown (widget); child != NULL; child = next_shown (child), i++)
    {
      gtk_widget_measure (child, GTK_ORIENTATION_VERTICAL, width, &size[i].minimum_size, &size[i].natural_size, NULL, NULL);
      left -= size[i].minimum_size + (i > 0 ? spacing_px : 0);
    }
  left = gtk_distribute_natural_allocation (MAX (left, 0), n, size);
  if (n == 1)
    size[0].minimum_size += left;
  i = 0;
  for (GtkWidget *child = first_shown (widget); child != NULL; child = next_shown (child), i++)
    {
      gtk_widget_size_allocate (child, &(GtkAllocation) { 0, y, width, size[i].minimum_size }, -1);
      y += size[i].minimum_size + spacing_px;
    }
}

static void
em_steady_layout_class_init (EmSteadyLayoutClass *class)
{
  GtkLayoutManagerClass *manager_class = GTK_LAYOUT_MANAGER_CLASS (class);

  manager_class->get_request_mode = em_steady_layout_get_request_mode;
  manager_class->measure = em_steady_layout_measure;
  manager_class->allocate = em_steady_layout_allocate;
}

static void
em_steady_layout_init (EmSteadyLayout *self)
{
  (void) self;
}

void
em_steady_layout_set_spacing (EmSteadyLayout *self, int spacing_px)
{
  self->spacing_px = spacing_px;
  gtk_layout_manager_layout_changed (GTK_LAYOUT_MANAGER (self));
}

struct _EmSteady { GtkWidget parent_instance; };

G_DEFINE_FINAL_TYPE (EmSteady, em_steady, GTK_TYPE_WIDGET)

static void
em_steady_dispose (GObject *object)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (object))) != NULL)
    gtk_widget_unparent (child);
  G_OBJECT_CLASS (em_steady_parent_class)->dispose (object);
}

static void
em_steady_class_init (EmSteadyClass *class)
{
  G_OBJECT_CLASS (class)->dispose = em_steady_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (class), EM_TYPE_STEADY_LAYOUT);
}

static void
em_steady_init (EmSteady *self)
{
  (void) self;
}

GtkWidget *
em_steady_new (GtkWidget *child)
{
  GtkWidget *self = g_object_new (EM_TYPE_STEADY, NULL);

  gtk_widget_set_parent (child, self);
  return self;
}
