/* em-test-names: what those who can't see a window are told of it.
 *
 * GTK's own test accessibility backend is asked, so that what counts is what is exported.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-test-window.h"

#include <string.h>

/* GTK's text of a button with a mnemonic still has its underscore; what is not shown yet is not told yet either. */
static inline gboolean
test_has_underscore (GtkWidget *widget)
{
  gboolean has_mnemonic = FALSE;

  if ((!GTK_IS_BUTTON (widget) && !GTK_IS_CHECK_BUTTON (widget)) || !gtk_widget_get_mapped (widget))
    return FALSE;
  g_object_get (widget, "use-underline", &has_mnemonic, NULL);
  if (!has_mnemonic || !gtk_test_accessible_has_property (GTK_ACCESSIBLE (widget), GTK_ACCESSIBLE_PROPERTY_LABEL))
    return FALSE;

  g_autofree char *marked = NULL;
  g_object_get (widget, "label", &marked, NULL);
  g_autofree char *differs = gtk_test_accessible_check_property (GTK_ACCESSIBLE (widget), GTK_ACCESSIBLE_PROPERTY_LABEL, marked);
  return differs == NULL && strchr (marked, '_') != NULL;
}

static inline gboolean
test_is_named (GtkWidget *widget)
{
  if (test_has_underscore (widget))
    return FALSE;
  if (GTK_IS_WINDOW (widget) && gtk_window_get_title (GTK_WINDOW (widget)) != NULL && *gtk_window_get_title (GTK_WINDOW (widget)) != '\0')
    return TRUE;
  return gtk_test_accessible_has_property (GTK_ACCESSIBLE (widget), GTK_ACCESSIBLE_PROPERTY_LABEL)
         || gtk_test_accessible_has_relation (GTK_ACCESSIBLE (widget), GTK_ACCESSIBLE_RELATION_LABELLED_BY);
}

/* Parts of GTK's own widgets speak by the widget they are part of. */
static inline gboolean
test_is_part (GtkWidget *widget)
{
  for (GtkWidget *parent = gtk_widget_get_parent (widget); parent != NULL; parent = gtk_widget_get_parent (parent))
    if (GTK_IS_POPOVER (parent) && GTK_IS_MENU_BUTTON (gtk_widget_get_parent (parent)))
      return FALSE;
    else if (GTK_IS_DROP_DOWN (parent) || GTK_IS_STACK_SIDEBAR (parent) || GTK_IS_ENTRY (parent) || GTK_IS_MENU_BUTTON (parent) || GTK_IS_WINDOW_CONTROLS (parent)
        || GTK_IS_SCROLLBAR (parent))
      return TRUE;
  return FALSE;
}

/* Drawings, bars and diagrams of ours, unless what they show is said in words beside them. */
static inline gboolean
test_is_own_picture (GtkWidget *widget)
{
  return g_str_has_prefix (G_OBJECT_TYPE_NAME (widget), "Em") && gtk_accessible_get_accessible_role (GTK_ACCESSIBLE (widget)) == GTK_ACCESSIBLE_ROLE_IMG
         && !gtk_test_accessible_has_state (GTK_ACCESSIBLE (widget), GTK_ACCESSIBLE_STATE_HIDDEN);
}

/* The part of a drop-down that takes the keyboard. */
static inline gboolean
test_is_handle (GtkWidget *widget)
{
  return GTK_IS_TOGGLE_BUTTON (widget) && GTK_IS_DROP_DOWN (gtk_widget_get_parent (widget));
}

/* Of menus and tables, once they are on the screen. */
static inline gboolean
test_is_item (GtkWidget *widget)
{
  switch (gtk_accessible_get_accessible_role (GTK_ACCESSIBLE (widget)))
    {
    case GTK_ACCESSIBLE_ROLE_MENU:
    case GTK_ACCESSIBLE_ROLE_MENU_ITEM:
    case GTK_ACCESSIBLE_ROLE_MENU_ITEM_CHECKBOX:
    case GTK_ACCESSIBLE_ROLE_MENU_ITEM_RADIO:
    case GTK_ACCESSIBLE_ROLE_ROW:
    case GTK_ACCESSIBLE_ROLE_TAB:
      return gtk_widget_get_mapped (widget) && !GTK_IS_LIST_BOX_ROW (widget);
    default:
      return FALSE;
    }
}

/* A list of its own, not the inside of a table or of a drop-down. */
static inline gboolean
test_is_list (GtkWidget *widget)
{
  return GTK_IS_LIST_VIEW (widget) && !GTK_IS_COLUMN_VIEW (gtk_widget_get_parent (widget)) && gtk_widget_get_ancestor (widget, GTK_TYPE_POPOVER) == NULL;
}

static inline gboolean
test_is_list_row (GtkWidget *widget)
{
  GtkWidget *parent = gtk_widget_get_parent (widget);

  return parent != NULL && test_is_list (parent);
}

static inline gboolean
test_wants_name (GtkWidget *widget)
{
  if (GTK_IS_WINDOW (widget) || (GTK_IS_POPOVER (widget) && gtk_widget_get_mapped (widget)) || GTK_IS_COLUMN_VIEW (widget) || test_is_item (widget)
      || (test_is_handle (widget) && gtk_widget_get_mapped (widget)))
    return TRUE;
  return (GTK_IS_CHECK_BUTTON (widget) || GTK_IS_SCALE (widget) || GTK_IS_PROGRESS_BAR (widget) || GTK_IS_BUTTON (widget) || GTK_IS_ENTRY (widget) || (GTK_IS_TEXT_VIEW (widget) && gtk_widget_get_mapped (widget)) || GTK_IS_DROP_DOWN (widget)
          || GTK_IS_MENU_BUTTON (widget) || GTK_IS_LIST_BOX_ROW (widget) || test_is_list_row (widget) || GTK_IS_EXPANDER (widget) || GTK_IS_SPINNER (widget)
          || GTK_IS_DRAWING_AREA (widget) || GTK_IS_LIST_BOX (widget) || test_is_list (widget) || test_is_own_picture (widget)) && !test_is_part (widget);
}

static inline int
test_count_nameless (GtkWidget *widget, int *n_seen, GString *out_list)
{
  int n = 0;

  if (test_wants_name (widget))
    {
      (*n_seen)++;
      if (!test_is_named (widget))
        {
          GtkWidget *parent = gtk_widget_get_parent (widget);
          g_string_append_printf (out_list, " %s in %s in %s;", G_OBJECT_TYPE_NAME (widget), G_OBJECT_TYPE_NAME (parent),
                                  G_OBJECT_TYPE_NAME (gtk_widget_get_parent (parent)));
          n++;
        }
    }
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL; child = gtk_widget_get_next_sibling (child))
    n += test_count_nameless (child, n_seen, out_list);
  return n;
}

static inline void
test_check_named (gpointer window, const char *where)
{
  g_autoptr (GString) list = g_string_new (NULL);
  int n_seen = 0, n = test_count_nameless (GTK_WIDGET (window), &n_seen, list);

  ck_assert_msg (n == 0, "%s: %d of %d have no name:%s", where, n, n_seen, list->str);
  ck_assert_int_gt (n_seen, 5);
}
