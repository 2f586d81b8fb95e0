/* em-fields: entries in columns of one width.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-fields.h"

struct _EmFields
{
  GtkWidget parent_instance;

  int least, most;             /* columns */
  int column_gap, line_gap;    /* px */
  int width;                   /* as last laid out; 0: not yet */
  guint telling;               /* source id: others are to ask anew how high it is */
};

G_DEFINE_FINAL_TYPE (EmFields, em_fields, GTK_TYPE_WIDGET)

#define WIDE "em-fields-wide"

static gboolean
is_wide (GtkWidget *child)
{
  return g_object_get_data (G_OBJECT (child), WIDE) != NULL;
}

/* The first one from child on that takes room. */
static GtkWidget *
shown_from (GtkWidget *child)
{
  while (child != NULL && !gtk_widget_should_layout (child))
    child = gtk_widget_get_next_sibling (child);
  return child;
}

/* The widest least and usual width of a column's entries; of wide ones only what they can't do without counts, over all columns. */
static void
measure_columns (EmFields *self, int *out_least, int *out_usual, int *out_wide)
{
  int least, usual;

  *out_least = *out_usual = *out_wide = 0;
  for (GtkWidget *child = shown_from (gtk_widget_get_first_child (GTK_WIDGET (self))); child != NULL; child = shown_from (gtk_widget_get_next_sibling (child)))
    {
      gtk_widget_measure (child, GTK_ORIENTATION_HORIZONTAL, -1, &least, &usual, NULL, NULL);
      if (is_wide (child))
        {
          *out_wide = MAX (*out_wide, least);
          continue;
        }
      *out_least = MAX (*out_least, least);
      *out_usual = MAX (*out_usual, usual);
    }
}

static int
count_columns (EmFields *self, int width)
{
  int least, usual, wide;

  measure_columns (self, &least, &usual, &wide);
  return CLAMP ((width + self->column_gap) / MAX (usual + self->column_gap, 1), self->least, self->most);
}

/* Where the line that begins with first ends, and how high it is. */
static GtkWidget *
measure_line (GtkWidget *first, int n_columns, int column, int width, int *out_height)
{
  GtkWidget *child = first;
  int height, at = 0;

  *out_height = 0;
  do
    {
      gtk_widget_measure (child, GTK_ORIENTATION_VERTICAL, is_wide (child) ? width : column, NULL, &height, NULL, NULL);
      *out_height = MAX (*out_height, height);
      at = is_wide (child) ? n_columns : at + 1;
      child = shown_from (gtk_widget_get_next_sibling (child));
    }
  while (child != NULL && at < n_columns && !is_wide (child));
  return child;
}

/* Of all lines at a width; places them too. */
static int
lay_out (EmFields *self, int width, gboolean is_placing)
{
  int n_columns = count_columns (self, width), column = MAX ((width - (n_columns - 1) * self->column_gap) / n_columns, 0), top = 0, height;
  gboolean is_backward = gtk_widget_get_direction (GTK_WIDGET (self)) == GTK_TEXT_DIR_RTL;
  GtkWidget *child = shown_from (gtk_widget_get_first_child (GTK_WIDGET (self)));

  while (child != NULL)
    {
      GtkWidget *next = measure_line (child, n_columns, column, width, &height);

      for (int at = 0; is_placing && child != next; at++, child = shown_from (gtk_widget_get_next_sibling (child)))
        {
          int own = is_wide (child) ? width : column, x = at * (column + self->column_gap);
          GtkAllocation allocation = { is_backward ? width - x - own : x, top, own, height };

          gtk_widget_size_allocate (child, &allocation, -1);
        }
      child = next;
      top += height + (child != NULL ? self->line_gap : 0);
    }
  return top;
}

static GtkSizeRequestMode
em_fields_get_request_mode (GtkWidget *widget)
{
  (void) widget;
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

static void
em_fields_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum, int *natural, int *minimum_baseline, int *natural_baseline)
{
  EmFields *self = EM_FIELDS (widget);
  int least, usual, wide, n = 0;

  *minimum_baseline = *natural_baseline = -1;
  measure_columns (self, &least, &usual, &wide);
  for (GtkWidget *child = shown_from (gtk_widget_get_first_child (widget)); child != NULL; child = shown_from (gtk_widget_get_next_sibling (child)))
    n++;
  int most = CLAMP (n, self->least, self->most);
  int narrowest = MAX (self->least * least + (self->least - 1) * self->column_gap, wide), widest = MAX (most * usual + (most - 1) * self->column_gap, narrowest);

  if (orientation == GTK_ORIENTATION_VERTICAL)
    {
      /* A scrolled window asks without a width: it is the one it has. */
      *natural = lay_out (self, for_size >= 0 ? MAX (for_size, narrowest) : self->width > 0 ? self->width : widest, FALSE);
      *minimum = *natural;
      return;
    }
  *minimum = narrowest;
  *natural = widest;
}

static gboolean
tell (gpointer data)
{
  EmFields *self = data;

  self->telling = 0;
  gtk_widget_queue_resize (GTK_WIDGET (self));
  return G_SOURCE_REMOVE;
}

static void
em_fields_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  EmFields *self = EM_FIELDS (widget);

  (void) height;
  (void) baseline;
  lay_out (self, width, TRUE);
  /* Not while sizes are being worked out. */
  if (width != self->width && self->telling == 0)
    self->telling = g_idle_add (tell, self);
  self->width = width;
}

static void
em_fields_compute_expand (GtkWidget *widget, gboolean *is_across, gboolean *is_down)
{
  (void) widget;
  *is_across = TRUE;
  *is_down = FALSE;
}

static void
em_fields_dispose (GObject *object)
{
  g_clear_handle_id (&EM_FIELDS (object)->telling, g_source_remove);
  em_fields_clear (EM_FIELDS (object));
  G_OBJECT_CLASS (em_fields_parent_class)->dispose (object);
}

static void
em_fields_class_init (EmFieldsClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  G_OBJECT_CLASS (class)->dispose = em_fields_dispose;
  widget_class->get_request_mode = em_fields_get_request_mode;
  widget_class->measure = em_fields_measure;
  widget_class->size_allocate = em_fields_size_allocate;
  widget_class->compute_expand = em_fields_compute_expand;
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
em_fields_init (EmFields *self)
{
  self->least = 1;
  self->most = 4;
  self->column_gap = 10;
  self->line_gap = 6;
}

GtkWidget *
em_fields_new (void)
{
  return g_object_new (EM_TYPE_FIELDS, NULL);
}

void
em_fields_set_columns (EmFields *self, int least, int most)
{
  self->least = least;
  self->most = most;
  gtk_widget_queue_resize (GTK_WIDGET (self));
}

void
em_fields_set_gaps (EmFields *self, int column_gap, int line_gap)
{
  self->column_gap = column_gap;
  self->line_gap = line_gap;
  gtk_widget_queue_resize (GTK_WIDGET (self));
}

void
em_fields_add (GtkWidget *fields, GtkWidget *widget)
{
  gtk_widget_insert_before (widget, fields, NULL);
}

void
em_fields_add_wide (GtkWidget *fields, GtkWidget *widget)
{
  g_object_set_data (G_OBJECT (widget), WIDE, GINT_TO_POINTER (TRUE));
  em_fields_add (fields, widget);
}

void
em_fields_clear (EmFields *self)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self))) != NULL)
    gtk_widget_unparent (child);
}
