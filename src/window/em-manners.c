/* em-manners: what GTK 4.8's own widgets owe to those who can't see them or don't hold a mouse.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-manners.h"

/* As it is shown. */
static const char *
shown_text (GtkWidget *button)
{
  for (GtkWidget *child = gtk_widget_get_first_child (button); child != NULL; child = gtk_widget_get_next_sibling (child))
    if (GTK_IS_LABEL (child))
      return gtk_label_get_text (GTK_LABEL (child));
  return NULL;
}

/* The text of a button is its name, underscore and all. That of a push button is told a second time, rightly, by its label, for
 * which the letter is; a check button's label is for none. */
static void
drop_underscore (GtkWidget *button)
{
  const char *text = shown_text (button);
  gboolean has_mnemonic = FALSE;

  g_object_get (button, "use-underline", &has_mnemonic, NULL);
  if (!has_mnemonic || text == NULL)
    return;
  if (GTK_IS_BUTTON (button))
    gtk_accessible_reset_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL);
  else
    gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, text, -1);
}

static void
tame_button (GtkWidget *button)
{
  drop_underscore (button);
  /* A widget may be realized more than once. */
  g_signal_handlers_disconnect_by_func (button, drop_underscore, NULL);
  g_signal_connect (button, "notify::label", G_CALLBACK (drop_underscore), NULL);
}

/* GTK takes labels. */
static void
label_by (GtkWidget *widget, GList *labels)
{
  GtkAccessibleRelation relation = GTK_ACCESSIBLE_RELATION_LABELLED_BY;
  GValue value = G_VALUE_INIT;

  gtk_accessible_relation_init_value (relation, &value);
  g_value_set_pointer (&value, labels);
  gtk_accessible_update_relation_value (GTK_ACCESSIBLE (widget), 1, &relation, &value);
  g_value_unset (&value);
}

/* Names are not looked for further than one relation away: by the labels themselves, where there are some. */
static void
label_as (GtkWidget *widget, GtkWidget *owner)
{
  GList *labels = gtk_widget_list_mnemonic_labels (owner);

  label_by (widget, labels != NULL ? labels : g_list_append (NULL, owner));
}

static void
tame_drop_down (GtkWidget *drop_down)
{
  GtkWidget *button = gtk_widget_get_first_child (drop_down);

  if (GTK_IS_TOGGLE_BUTTON (button))
    label_as (button, drop_down);
}

static GList *
labels_in (GtkWidget *widget, GList *found)
{
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL; child = gtk_widget_get_next_sibling (child))
    found = GTK_IS_LABEL (child) ? g_list_append (found, child) : labels_in (child, found);
  return found;
}

/* What takes the keyboard next, outside widget; round the end of the window if need be. */
static void
focus_beside (GtkWidget *widget, GtkDirectionType direction)
{
  GtkWidget *(*next) (GtkWidget *) = direction == GTK_DIR_TAB_BACKWARD ? gtk_widget_get_prev_sibling : gtk_widget_get_next_sibling;
  GtkWidget *root = GTK_WIDGET (gtk_widget_get_root (widget));

  for (; widget != NULL && widget != root; widget = gtk_widget_get_parent (widget))
    for (GtkWidget *sibling = next (widget); sibling != NULL; sibling = next (sibling))
      if (gtk_widget_get_mapped (sibling) && gtk_widget_child_focus (sibling, direction))
        return;
  for (GtkWidget *child = direction == GTK_DIR_TAB_BACKWARD ? gtk_widget_get_last_child (root) : gtk_widget_get_first_child (root); child != NULL;
       child = next (child))
    if (gtk_widget_get_mapped (child) && gtk_widget_child_focus (child, direction))
      return;
}

/* Tab goes from row to row, a thousand of them if need be: in a table or list the arrows do that, and Tab goes on. */
static gboolean
on_table_key (GtkEventControllerKey *controller, guint key, guint code, GdkModifierType state)
{
  GtkWidget *table = gtk_event_controller_get_widget (GTK_EVENT_CONTROLLER (controller));
  gboolean is_back = key == GDK_KEY_ISO_Left_Tab || (state & GDK_SHIFT_MASK) != 0;

  (void) code;
  if ((key != GDK_KEY_Tab && key != GDK_KEY_KP_Tab && key != GDK_KEY_ISO_Left_Tab) || (state & (GDK_CONTROL_MASK | GDK_ALT_MASK)) != 0)
    return FALSE;
  focus_beside (table, is_back ? GTK_DIR_TAB_BACKWARD : GTK_DIR_TAB_FORWARD);
  return TRUE;
}

static void
tame_table (GtkWidget *table)
{
  GtkEventController *keys;

  if (g_object_get_data (G_OBJECT (table), "em-manners") != NULL)
    return;
  keys = gtk_event_controller_key_new ();
  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect (keys, "key-pressed", G_CALLBACK (on_table_key), NULL);
  gtk_widget_add_controller (table, keys);
  g_object_set_data (G_OBJECT (table), "em-manners", table);
}

/* It has no title: what it asks is its name. */
static void
tame_message (GtkWidget *dialog)
{
  g_autofree char *text = NULL, *more = NULL;

  g_object_get (dialog, "text", &text, "secondary-text", &more, NULL);
  if (text != NULL && *text != '\0')
    gtk_accessible_update_property (GTK_ACCESSIBLE (dialog), GTK_ACCESSIBLE_PROPERTY_LABEL, text, -1);
  if (more != NULL && *more != '\0')
    gtk_accessible_update_property (GTK_ACCESSIBLE (dialog), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, more, -1);
}

/* owner: what the popover belongs to; a reference, taken. */
static gboolean
give_keyboard_back (gpointer owner)
{
  GtkRoot *root = gtk_widget_get_root (owner);
  GtkWidget *focus = root != NULL ? gtk_root_get_focus (root) : NULL;

  if (root != NULL && gtk_widget_get_mapped (owner) && (focus == NULL || !gtk_widget_get_mapped (focus)))
    gtk_widget_grab_focus (owner);
  return G_SOURCE_REMOVE;
}

/* Once GTK has done what it does itself. */
static void
on_closed (GtkWidget *popover)
{
  GtkWidget *owner = gtk_widget_get_parent (popover);

  if (owner != NULL)
    g_idle_add_full (G_PRIORITY_LOW, give_keyboard_back, g_object_ref (owner), g_object_unref);
}

static GtkWidget *
find_chosen (GtkWidget *in)
{
  if (GTK_IS_LIST_VIEW (gtk_widget_get_parent (in)) && (gtk_widget_get_state_flags (in) & GTK_STATE_FLAG_SELECTED) != 0)
    return in;
  for (GtkWidget *child = gtk_widget_get_first_child (in); child != NULL; child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *found = find_chosen (child);
      if (found != NULL)
        return found;
    }
  return NULL;
}

/* The keyboard would begin where it was the last time, at first at the top, whatever was chosen since by other means. */
static void
start_at_chosen (GtkWidget *popover)
{
  GtkWidget *chosen = find_chosen (popover);

  if (chosen != NULL)
    gtk_widget_grab_focus (chosen);
}

/* Named by what it was opened from. */
static void
tame_popover (GtkWidget *popover)
{
  GtkWidget *owner = gtk_widget_get_parent (popover);

  g_signal_handlers_disconnect_by_func (popover, on_closed, NULL);
  g_signal_connect (popover, "closed", G_CALLBACK (on_closed), NULL);
  if (GTK_IS_MENU_BUTTON (owner) || GTK_IS_DROP_DOWN (owner))
    label_as (popover, owner);
  g_signal_handlers_disconnect_by_func (popover, start_at_chosen, NULL);
  if (GTK_IS_DROP_DOWN (owner) && !gtk_drop_down_get_enable_search (GTK_DROP_DOWN (owner)))
    g_signal_connect_after (popover, "map", G_CALLBACK (start_at_chosen), NULL);
}

static gboolean
on_realized (GSignalInvocationHint *hint, guint n_values, const GValue *values, gpointer data)
{
  GtkWidget *widget = g_value_get_object (&values[0]);

  (void) hint;
  (void) n_values;
  (void) data;
  if (GTK_IS_BUTTON (widget) || GTK_IS_CHECK_BUTTON (widget))
    tame_button (widget);
  else if (GTK_IS_DROP_DOWN (widget))
    tame_drop_down (widget);
  else if (GTK_IS_MESSAGE_DIALOG (widget))
    tame_message (widget);
  else if (GTK_IS_POPOVER (widget))
    tame_popover (widget);
  /* A row of a table is told by its cells, whatever they show at the time. */
  else if (gtk_accessible_get_accessible_role (GTK_ACCESSIBLE (widget)) == GTK_ACCESSIBLE_ROLE_ROW && gtk_widget_get_ancestor (widget, GTK_TYPE_COLUMN_VIEW) != NULL)
    label_by (widget, labels_in (widget, NULL));
  else if (GTK_IS_COLUMN_VIEW (widget) || (GTK_IS_LIST_VIEW (widget) && gtk_widget_get_ancestor (widget, GTK_TYPE_POPOVER) == NULL))
    tame_table (widget);
  return TRUE;
}

void
em_manners_init (void)
{
  static gboolean is_done;

  if (is_done)
    return;
  is_done = TRUE;
  /* The class makes the signal. */
  g_type_class_unref (g_type_class_ref (GTK_TYPE_WIDGET));
  g_signal_add_emission_hook (g_signal_lookup ("realize", GTK_TYPE_WIDGET), 0, on_realized, NULL, NULL);
}
