/* em-columns: headers of columns of figures.
 *
 * GTK 4.8 has no property for where a column's title stands: its label is looked for in the header.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-columns.h"

#define FIGURES "em-columns-figures"

void
em_columns_set_figures (GtkColumnViewColumn *column)
{
  g_object_set_data (G_OBJECT (column), FIGURES, GINT_TO_POINTER (TRUE));
}

static GtkWidget *
find_label (GtkWidget *within, const char *text)
{
  if (GTK_IS_LABEL (within))
    return g_strcmp0 (gtk_label_get_text (GTK_LABEL (within)), text) == 0 ? within : NULL;
  for (GtkWidget *child = gtk_widget_get_first_child (within); child != NULL; child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *found = find_label (child, text);
      if (found != NULL)
        return found;
    }
  return NULL;
}

/* The header is the view's first child. */
static void
align (GtkColumnView *view)
{
  GListModel *columns = gtk_column_view_get_columns (view);
  GtkWidget *header = gtk_widget_get_first_child (GTK_WIDGET (view));

  for (guint i = 0; header != NULL && i < g_list_model_get_n_items (columns); i++)
    {
      g_autoptr (GtkColumnViewColumn) column = g_list_model_get_item (columns, i);
      GtkWidget *label = g_object_get_data (G_OBJECT (column), FIGURES) != NULL ? find_label (header, gtk_column_view_column_get_title (column)) : NULL;

      GtkWidget *box = label != NULL ? gtk_widget_get_parent (label) : NULL;
      if (label == NULL)
        continue;
      /* The mark of the order stands before it then. */
      if (GTK_IS_BOX (box) && gtk_widget_get_last_child (box) != label)
        gtk_box_reorder_child_after (GTK_BOX (box), label, gtk_widget_get_last_child (box));
      gtk_widget_set_hexpand (label, TRUE);
      gtk_label_set_xalign (GTK_LABEL (label), 1);
    }
}

void
em_columns_align (GtkColumnView *view)
{
  align (view);
  g_signal_connect_object (gtk_column_view_get_columns (view), "items-changed", G_CALLBACK (align), view, G_CONNECT_SWAPPED | G_CONNECT_AFTER);
}
