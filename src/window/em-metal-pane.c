/* em-metal-pane: the features in a list, and the selected one opened beneath it.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-metal-pane.h"

#include "em-feature-row.h"
#include "em-field.h"
#include "em-kind-picker.h"
#include "em-words.h"

#include <glib/gi18n.h>

struct _EmMetalPane
{
  GtkWidget parent_instance;

  GtkWidget       *summary, *add_button, *more_button, *stack, *empty_box, *list, *paned;   /* template */
  GMenuModel      *feature_menu;
  EmFeatureEditor *editor;
  EmDocument      *document;   /* owned */
  gboolean         has_pictures;        /* of the kinds, in empty_box: made when there is first nothing else to see */
  gboolean         is_placed_by_hand;   /* the handle between list and editor */
  guint            placing;             /* source id */
};

G_DEFINE_FINAL_TYPE (EmMetalPane, em_metal_pane, GTK_TYPE_WIDGET)

/* Of the pane's height, and in pixels. */
#define LIST_SHARE 0.42
enum { LIST_LEAST = 214, HANDLE_REACH = 10 };

static EmFeatureRow *
row_at (EmMetalPane *self, int index)
{
  return EM_FEATURE_ROW (gtk_list_box_get_row_at_index (GTK_LIST_BOX (self->list), index));
}

/* The list a drag began in; the row's place travels. */
static EmMetalPane *dragged_from;

static GdkContentProvider *
on_drag_prepare (GtkDragSource *source, double x, double y, EmMetalPane *self)
{
  GtkWidget *row = gtk_event_controller_get_widget (GTK_EVENT_CONTROLLER (source));

  (void) x;
  (void) y;
  dragged_from = self;
  return gdk_content_provider_new_typed (G_TYPE_INT, gtk_list_box_row_get_index (GTK_LIST_BOX_ROW (row)));
}

static void
on_drag_begin (GtkDragSource *source, GdkDrag *drag)
{
  GtkWidget *row = gtk_event_controller_get_widget (GTK_EVENT_CONTROLLER (source));
  g_autoptr (GdkPaintable) picture = gtk_widget_paintable_new (row);

  (void) drag;
  gtk_drag_source_set_icon (source, picture, 12, 12);
}

static gboolean
on_drop (GtkDropTarget *target, const GValue *value, double x, double y, EmMetalPane *self)
{
  GtkWidget *row = gtk_event_controller_get_widget (GTK_EVENT_CONTROLLER (target));
  int from = g_value_get_int (value), to = gtk_list_box_row_get_index (GTK_LIST_BOX_ROW (row));

  (void) x;
  (void) y;
  if (dragged_from == NULL || from < 0 || from >= em_document_get_quote (dragged_from->document)->n_features
      || (dragged_from == self && from == to))
    return FALSE;
  if (dragged_from == self)
    return em_document_move (self->document, from, to);
  g_autofree char *xml = em_document_copy_xml (dragged_from->document, from);
  return em_document_paste_xml (self->document, to, xml, NULL);
}

static void
add_row (EmMetalPane *self)
{
  GtkWidget *row = em_feature_row_new ();
  GtkDragSource *source = gtk_drag_source_new ();
  GtkDropTarget *target = gtk_drop_target_new (G_TYPE_INT, GDK_ACTION_MOVE);

  gtk_drag_source_set_actions (source, GDK_ACTION_MOVE);
  g_signal_connect (source, "prepare", G_CALLBACK (on_drag_prepare), self);
  g_signal_connect (source, "drag-begin", G_CALLBACK (on_drag_begin), NULL);
  g_signal_connect (target, "drop", G_CALLBACK (on_drop), self);
  gtk_widget_add_controller (row, GTK_EVENT_CONTROLLER (source));
  gtk_widget_add_controller (row, GTK_EVENT_CONTROLLER (target));
  gtk_list_box_append (GTK_LIST_BOX (self->list), row);
}

static void
show_summary (EmMetalPane *self)
{
  const EmCost *cost = em_document_get_cost (self->document);
  int n = em_document_get_quote (self->document)->n_features;

  if (n == 0)
    {
      gtk_label_set_text (GTK_LABEL (self->summary), "");
      return;
    }
  g_autofree char *count = g_strdup_printf (ngettext ("%d feature", "%d features", (gulong) n), n);
  g_autofree char *volume = em_words_volume (cost->required_volume_mm3, em_document_get_units (self->document));
  g_autofree char *time = em_words_duration (cost->labour_s);
  g_autofree char *text = cost->n_faults < cost->n_features ? g_strdup_printf (_("%s · %s to weld · %s of work"), count, volume, time)
                                                            : g_strdup (count);
  gtk_label_set_text (GTK_LABEL (self->summary), text);
  gtk_widget_set_tooltip_text (self->summary, text);
}

static void
show_selection (EmMetalPane *self)
{
  int32_t index = em_document_get_selected_index (self->document);
  GtkListBoxRow *row = index >= 0 ? GTK_LIST_BOX_ROW (row_at (self, index)) : NULL;

  if (row != NULL && gtk_list_box_get_selected_row (GTK_LIST_BOX (self->list)) != row)
    gtk_list_box_select_row (GTK_LIST_BOX (self->list), row);
}

static void
show_rows (EmMetalPane *self)
{
  int n = em_document_get_quote (self->document)->n_features, n_rows = 0;

  while (row_at (self, n_rows) != NULL)
    n_rows++;
  for (; n_rows < n; n_rows++)
    add_row (self);
  for (; n_rows > n; n_rows--)
    gtk_list_box_remove (GTK_LIST_BOX (self->list), GTK_WIDGET (row_at (self, n_rows - 1)));
  for (int i = 0; i < n; i++)
    em_feature_row_show (row_at (self, i), self->document, i);
  if (n == 0 && !self->has_pictures)
    {
      gtk_box_append (GTK_BOX (self->empty_box), em_kind_picker_new (2, 4));
      self->has_pictures = TRUE;
    }
  gtk_stack_set_visible_child_name (GTK_STACK (self->stack), n > 0 ? "list" : "empty");
}

static void
on_row_selected (EmMetalPane *self, GtkListBoxRow *row)
{
  if (row != NULL && self->document != NULL)
    em_document_set_selected (self->document, em_feature_row_get_feature_id (EM_FEATURE_ROW (row)));
}

/* The list is as high as its features want, up to a share of the pane; once moved by hand it stays there. */
static gboolean
place_handle (gpointer data)
{
  EmMetalPane *self = data;
  int natural, most = (int) (gtk_widget_get_height (self->paned) * LIST_SHARE);

  self->placing = 0;
  if (most <= 0 || self->is_placed_by_hand)
    return G_SOURCE_REMOVE;
  gtk_widget_measure (self->list, GTK_ORIENTATION_VERTICAL, gtk_widget_get_width (self->list), NULL, &natural, NULL, NULL);
  gtk_paned_set_position (GTK_PANED (self->paned), CLAMP (natural, LIST_LEAST, MAX (most, LIST_LEAST)));
  return G_SOURCE_REMOVE;
}

/* Not while heights are being worked out. */
static void
place_soon (EmMetalPane *self)
{
  if (self->placing == 0 && !self->is_placed_by_hand)
    self->placing = g_idle_add (place_handle, self);
}

static void
on_pressed (GtkGestureClick *gesture, int n_press, double x, double y, EmMetalPane *self)
{
  (void) gesture;
  (void) n_press;
  (void) x;
  if (ABS ((int) y - gtk_paned_get_position (GTK_PANED (self->paned))) < HANDLE_REACH)
    self->is_placed_by_hand = TRUE;
}

static void
on_document_changed (EmMetalPane *self, guint what, int index)
{
  if (what == EM_CHANGE_FILE)
    return;
  g_signal_handlers_block_by_func (self->list, on_row_selected, self);
  if (what == EM_CHANGE_FEATURE && index >= 0)
    em_feature_row_show (row_at (self, index), self->document, index);
  else if (what != EM_CHANGE_SELECTION)
    show_rows (self);
  if (what & EM_CHANGE_LIST)
    place_soon (self);
  show_selection (self);
  g_signal_handlers_unblock_by_func (self->list, on_row_selected, self);
  show_summary (self);
}

static void
on_row_activated (EmMetalPane *self)
{
  em_feature_editor_focus_field (self->editor, NULL);
}

typedef struct
{
  guint           key;
  GdkModifierType state;
  const char     *action;
} EmListKey;

/* What people press without thinking, while the list has the keyboard. */
static const EmListKey list_keys[] =
{
  { GDK_KEY_Delete, 0, "win.remove" },
  { GDK_KEY_c, GDK_CONTROL_MASK, "win.copy-feature" },
  { GDK_KEY_v, GDK_CONTROL_MASK, "win.paste-feature" },
};

static gboolean
on_list_key (GtkEventControllerKey *controller, guint key, guint code, GdkModifierType state, EmMetalPane *self)
{
  (void) controller;
  (void) code;
  for (gsize i = 0; i < G_N_ELEMENTS (list_keys); i++)
    if (key == list_keys[i].key && (state & gtk_accelerator_get_default_mod_mask ()) == list_keys[i].state)
      return gtk_widget_activate_action (GTK_WIDGET (self), list_keys[i].action, NULL);
  return FALSE;
}

static void
em_metal_pane_dispose (GObject *object)
{
  EmMetalPane *self = EM_METAL_PANE (object);
  GtkWidget *child = gtk_widget_get_first_child (GTK_WIDGET (self));

  if (dragged_from == self)
    dragged_from = NULL;
  self->is_placed_by_hand = TRUE;
  g_clear_handle_id (&self->placing, g_source_remove);
  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_clear_object (&self->document);
  if (child != NULL)
    gtk_widget_unparent (child);
  G_OBJECT_CLASS (em_metal_pane_parent_class)->dispose (object);
}

static void
em_metal_pane_class_init (EmMetalPaneClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  g_type_ensure (EM_TYPE_FEATURE_EDITOR);
  G_OBJECT_CLASS (class)->dispose = em_metal_pane_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/estimend/Estimend/metal-pane.ui");
  gtk_widget_class_bind_template_child (widget_class, EmMetalPane, summary);
  gtk_widget_class_bind_template_child (widget_class, EmMetalPane, add_button);
  gtk_widget_class_bind_template_child (widget_class, EmMetalPane, more_button);
  gtk_widget_class_bind_template_child (widget_class, EmMetalPane, feature_menu);
  gtk_widget_class_bind_template_child (widget_class, EmMetalPane, stack);
  gtk_widget_class_bind_template_child (widget_class, EmMetalPane, empty_box);
  gtk_widget_class_bind_template_child (widget_class, EmMetalPane, list);
  gtk_widget_class_bind_template_child (widget_class, EmMetalPane, paned);
  gtk_widget_class_bind_template_child (widget_class, EmMetalPane, editor);
}

/* When first opened. */
static void
make_picker (GtkMenuButton *button, gpointer data)
{
  GtkWidget *popover, *scrolled;

  (void) data;
  if (gtk_menu_button_get_popover (button) != NULL)
    return;
  popover = gtk_popover_new ();
  scrolled = gtk_scrolled_window_new ();
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scrolled), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_propagate_natural_height (GTK_SCROLLED_WINDOW (scrolled), TRUE);
  gtk_scrolled_window_set_max_content_height (GTK_SCROLLED_WINDOW (scrolled), 460);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), em_kind_picker_new (3, 3));
  gtk_popover_set_child (GTK_POPOVER (popover), scrolled);
  gtk_menu_button_set_popover (button, popover);
}

static void
em_metal_pane_init (EmMetalPane *self)
{
  GtkEventController *keys = gtk_event_controller_key_new ();

  GtkGesture *press = gtk_gesture_click_new ();

  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_menu_button_set_create_popup_func (GTK_MENU_BUTTON (self->add_button), make_picker, NULL, NULL);
  em_menu_set_late (self->more_button, self->feature_menu);
  gtk_paned_set_position (GTK_PANED (self->paned), LIST_LEAST);
  gtk_event_controller_set_propagation_phase (GTK_EVENT_CONTROLLER (press), GTK_PHASE_CAPTURE);
  g_signal_connect (press, "pressed", G_CALLBACK (on_pressed), self);
  gtk_widget_add_controller (self->paned, GTK_EVENT_CONTROLLER (press));
  g_signal_connect_swapped (self->paned, "notify::max-position", G_CALLBACK (place_soon), self);
  g_signal_connect_swapped (self->list, "row-selected", G_CALLBACK (on_row_selected), self);
  g_signal_connect_swapped (self->list, "row-activated", G_CALLBACK (on_row_activated), self);
  g_signal_connect (keys, "key-pressed", G_CALLBACK (on_list_key), self);
  gtk_widget_add_controller (self->list, keys);
}

void
em_metal_pane_set_document (EmMetalPane *self, EmDocument *document)
{
  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_set_object (&self->document, document);
  g_signal_connect_object (document, "changed", G_CALLBACK (on_document_changed), self, G_CONNECT_SWAPPED);
  em_feature_editor_set_document (self->editor, document);
  on_document_changed (self, EM_CHANGE_ALL, -1);
}

EmFeatureEditor *
em_metal_pane_get_editor (EmMetalPane *self)
{
  return self->editor;
}

void
em_metal_pane_open_picker (EmMetalPane *self)
{
  gtk_menu_button_popup (GTK_MENU_BUTTON (self->add_button));
}

void
em_metal_pane_close_picker (EmMetalPane *self)
{
  gtk_menu_button_popdown (GTK_MENU_BUTTON (self->add_button));
}

void
em_metal_pane_focus_list (EmMetalPane *self)
{
  GtkListBoxRow *row = gtk_list_box_get_selected_row (GTK_LIST_BOX (self->list));

  if (row != NULL)
    gtk_widget_grab_focus (GTK_WIDGET (row));
  else
    gtk_widget_child_focus (self->stack, GTK_DIR_TAB_FORWARD);
}
