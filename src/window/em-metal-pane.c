/* em-metal-pane: the features in a list, and the selected one opened beneath it.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-metal-pane.h"

#include "em-edge-scroll.h"
#include "em-feature-list.h"
#include "em-feature-row.h"
#include "em-field.h"
#include "em-kind-picker.h"
#include "em-steady.h"
#include "em-words.h"

#include <glib/gi18n.h>
#include <math.h>

struct _EmMetalPane
{
  GtkWidget parent_instance;

  GtkWidget       *summary, *add_button, *more_button, *stack, *empty_box, *list, *paned;   /* template */
  GMenuModel      *feature_menu;
  EmFeatureEditor *editor;
  EmFeatureList   *features;
  GtkSingleSelection *selection;   /* of features, which it owns; owned by the list */
  EmDocument      *document;   /* owned */
  gboolean         has_pictures;        /* of the kinds, in empty_box: made when there is first nothing else to see */
  gboolean         is_placed_by_hand;   /* the handle between list and editor */
  guint            placing;             /* source id */
};

G_DEFINE_FINAL_TYPE (EmMetalPane, em_metal_pane, GTK_TYPE_WIDGET)

/* Of the pane's height, and in pixels. */
#define LIST_SHARE 0.42
enum { LIST_LEAST = 90, HANDLE_REACH = 10 };

/* Only rows in and about the part in sight are there: this one's, or NULL. */
static EmFeatureRow *
find_row (EmMetalPane *self, uint32_t feature_id)
{
  for (GtkWidget *item = gtk_widget_get_first_child (self->list); item != NULL; item = gtk_widget_get_next_sibling (item))
    {
      GtkWidget *row = gtk_widget_get_first_child (item);
      if (row != NULL && em_feature_row_get_feature_id (EM_FEATURE_ROW (row)) == feature_id)
        return EM_FEATURE_ROW (row);
    }
  return NULL;
}

/* Where the feature of a row stands; -1: it shows none. */
static int32_t
index_of_row (GtkWidget *row)
{
  guint position = gtk_list_item_get_position (g_object_get_data (G_OBJECT (row), "item"));

  return position != GTK_INVALID_LIST_POSITION ? (int32_t) position : -1;
}

static int32_t
index_of (GtkEventController *controller)
{
  return index_of_row (gtk_widget_get_first_child (gtk_event_controller_get_widget (controller)));
}

/* The list a drag began in; the row's place travels. */
static EmMetalPane *dragged_from;

static GdkContentProvider *
on_drag_prepare (GtkDragSource *source, double x, double y, EmMetalPane *self)
{
  (void) x;
  (void) y;
  dragged_from = self;
  return gdk_content_provider_new_typed (G_TYPE_INT, (int) index_of (GTK_EVENT_CONTROLLER (source)));
}

static void
on_drag_begin (GtkDragSource *source, GdkDrag *drag)
{
  GtkWidget *row = gtk_event_controller_get_widget (GTK_EVENT_CONTROLLER (source));
  g_autoptr (GdkPaintable) shown = gtk_widget_paintable_new (row);
  /* As it is now: the list may scroll on, and the row be another feature's. */
  g_autoptr (GdkPaintable) picture = gdk_paintable_get_current_image (shown);

  (void) drag;
  gtk_drag_source_set_icon (source, picture, 12, 12);
}

static gboolean
on_drop (GtkDropTarget *target, const GValue *value, double x, double y, EmMetalPane *self)
{
  int from = g_value_get_int (value), to = index_of (GTK_EVENT_CONTROLLER (target));

  (void) x;
  (void) y;
  if (dragged_from == NULL || from < 0 || to < 0 || from >= em_document_get_quote (dragged_from->document)->n_features
      || (dragged_from == self && from == to))
    return FALSE;
  if (dragged_from == self)
    return em_document_move (self->document, from, to);
  g_autofree char *xml = em_document_copy_xml (dragged_from->document, from);
  return em_document_paste_xml (self->document, to, xml, NULL);
}

static void
on_activated (EmMetalPane *self)
{
  em_feature_editor_focus_field (self->editor, NULL);
}

/* The widget a row lies in is the list's, and stays with it whatever feature it shows. */
static void
on_placed (GtkWidget *row, GParamSpec *spec, EmMetalPane *self)
{
  GtkWidget *place = gtk_widget_get_parent (row);
  GtkDragSource *source;
  GtkDropTarget *target;
  GtkGesture *click;

  (void) spec;
  if (place == NULL)
    return;
  source = gtk_drag_source_new ();
  target = gtk_drop_target_new (G_TYPE_INT, GDK_ACTION_MOVE);
  click = gtk_gesture_click_new ();
  gtk_drag_source_set_actions (source, GDK_ACTION_MOVE);
  g_signal_connect (source, "prepare", G_CALLBACK (on_drag_prepare), self);
  g_signal_connect (source, "drag-begin", G_CALLBACK (on_drag_begin), NULL);
  g_signal_connect (target, "drop", G_CALLBACK (on_drop), self);
  g_signal_connect_swapped (click, "released", G_CALLBACK (on_activated), self);
  gtk_widget_add_controller (place, GTK_EVENT_CONTROLLER (source));
  gtk_widget_add_controller (place, GTK_EVENT_CONTROLLER (target));
  gtk_widget_add_controller (place, GTK_EVENT_CONTROLLER (click));
}

static void
on_setup (GtkSignalListItemFactory *factory, GtkListItem *item, EmMetalPane *self)
{
  GtkWidget *row = em_feature_row_new ();

  (void) factory;
  g_object_set_data (G_OBJECT (row), "item", item);
  g_signal_connect (row, "notify::parent", G_CALLBACK (on_placed), self);
  gtk_list_item_set_child (item, row);
}

static void
on_bind (GtkSignalListItemFactory *factory, GtkListItem *item, EmMetalPane *self)
{
  int32_t index = (int32_t) gtk_list_item_get_position (item);

  (void) factory;
  if (index < em_document_get_quote (self->document)->n_features)
    em_feature_row_show (EM_FEATURE_ROW (gtk_list_item_get_child (item)), self->document, index);
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
  /* How long it takes is told with the money. */
  g_autofree char *text = cost->n_faults < cost->n_features ? g_strdup_printf (_("%s · %s to weld"), count, volume) : g_strdup (count);
  gtk_label_set_text (GTK_LABEL (self->summary), text);
  gtk_widget_set_tooltip_text (self->summary, text);
}

/* Into sight, and where the keyboard goes when it comes into the list. */
static void
show_selection (EmMetalPane *self)
{
  int32_t index = em_document_get_selected_index (self->document);
  EmFeatureRow *row;

  if (index < 0 || gtk_single_selection_get_selected (self->selection) == (guint) index)
    return;
  gtk_single_selection_set_selected (self->selection, (guint) index);
  gtk_widget_activate_action (self->list, "list.scroll-to-item", "u", (guint) index);
  row = find_row (self, em_document_get_selected (self->document));
  if (row != NULL)
    gtk_widget_set_focus_child (self->list, gtk_widget_get_parent (GTK_WIDGET (row)));
}

static void
show_list (EmMetalPane *self)
{
  const EmQuote *quote = em_document_get_quote (self->document);
  g_autofree uint32_t *ids = g_new (uint32_t, quote->n_features);

  for (int32_t i = 0; i < quote->n_features; i++)
    ids[i] = quote->feature[i].id;
  em_feature_list_show (self->features, ids, (guint) quote->n_features);
}

static void
show_rows (EmMetalPane *self)
{
  const EmQuote *quote = em_document_get_quote (self->document);

  for (GtkWidget *item = gtk_widget_get_first_child (self->list); item != NULL; item = gtk_widget_get_next_sibling (item))
    {
      GtkWidget *row = gtk_widget_get_first_child (item);
      int32_t index = index_of_row (row);
      if (index >= 0 && index < quote->n_features)
        em_feature_row_show (EM_FEATURE_ROW (row), self->document, index);
    }
  if (quote->n_features == 0 && !self->has_pictures)
    {
      gtk_box_append (GTK_BOX (self->empty_box), em_kind_picker_new (2, 4));
      self->has_pictures = TRUE;
    }
  gtk_stack_set_visible_child_name (GTK_STACK (self->stack), quote->n_features > 0 ? "list" : "empty");
}

static void
show_feature (EmMetalPane *self, int32_t index)
{
  EmFeatureRow *row = find_row (self, em_document_get_quote (self->document)->feature[index].id);

  if (row != NULL)
    em_feature_row_show (row, self->document, index);
}

static void
on_selected (EmMetalPane *self)
{
  guint position = gtk_single_selection_get_selected (self->selection);

  if (position != GTK_INVALID_LIST_POSITION && self->document != NULL)
    em_document_set_selected (self->document, em_feature_list_get_id (self->features, position));
}

/* The list is as high as its features want, up to a share of the pane; once moved by hand it stays there. */
static gboolean
place_handle (gpointer data)
{
  EmMetalPane *self = data;
  int natural, most = (int) (gtk_widget_get_height (self->paned) * LIST_SHARE), n = em_document_get_quote (self->document)->n_features;

  self->placing = 0;
  if (most <= 0 || self->is_placed_by_hand)
    return G_SOURCE_REMOVE;
  gtk_widget_measure (self->list, GTK_ORIENTATION_VERTICAL, gtk_widget_get_width (self->list), NULL, &natural, NULL, NULL);
  /* Whole rows: none is cut through a line of its text. */
  if (natural > most && n > 0)
    most = (int) (floor (most / ((double) natural / n)) * natural / n);
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
  g_signal_handlers_block_by_func (self->selection, on_selected, self);
  if (index < 0)
    show_list (self);
  if (index >= 0)
    show_feature (self, index);
  else if (what != EM_CHANGE_SELECTION && what != EM_CHANGE_NOTES)
    show_rows (self);
  if (what & EM_CHANGE_LIST)
    place_soon (self);
  show_selection (self);
  g_signal_handlers_unblock_by_func (self->selection, on_selected, self);
  show_summary (self);
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
  if (self->selection != NULL)
    g_signal_handlers_disconnect_by_data (self->selection, self);
  self->selection = NULL;
  g_clear_object (&self->document);
  if (child != NULL)
    gtk_widget_unparent (child);
  G_OBJECT_CLASS (em_metal_pane_parent_class)->dispose (object);
}

static void
em_metal_pane_class_init (EmMetalPaneClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  g_type_ensure (EM_TYPE_STEADY);
  g_type_ensure (EM_TYPE_FEATURE_EDITOR);
  G_OBJECT_CLASS (class)->dispose = em_metal_pane_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, EM_TYPE_STEADY_LAYOUT);
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
  popover = g_object_new (GTK_TYPE_POPOVER, "accessible-role", GTK_ACCESSIBLE_ROLE_DIALOG, NULL);
  scrolled = gtk_scrolled_window_new ();
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scrolled), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_propagate_natural_height (GTK_SCROLLED_WINDOW (scrolled), TRUE);
  gtk_scrolled_window_set_propagate_natural_width (GTK_SCROLLED_WINDOW (scrolled), TRUE);
  gtk_scrolled_window_set_max_content_height (GTK_SCROLLED_WINDOW (scrolled), 460);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), em_kind_picker_new (3, 3));
  gtk_popover_set_child (GTK_POPOVER (popover), scrolled);
  gtk_menu_button_set_popover (button, popover);
}

static void
make_list (EmMetalPane *self)
{
  g_autoptr (GtkListItemFactory) factory = gtk_signal_list_item_factory_new ();

  self->features = em_feature_list_new ();
  self->selection = gtk_single_selection_new (G_LIST_MODEL (self->features));
  gtk_single_selection_set_autoselect (self->selection, FALSE);
  g_signal_connect (factory, "setup", G_CALLBACK (on_setup), self);
  g_signal_connect (factory, "bind", G_CALLBACK (on_bind), self);
  gtk_list_view_set_factory (GTK_LIST_VIEW (self->list), factory);
  gtk_list_view_set_model (GTK_LIST_VIEW (self->list), GTK_SELECTION_MODEL (self->selection));
  g_object_unref (self->selection);
  g_signal_connect_swapped (self->selection, "notify::selected", G_CALLBACK (on_selected), self);
  g_signal_connect_swapped (self->list, "activate", G_CALLBACK (on_activated), self);
}

static void
em_metal_pane_init (EmMetalPane *self)
{
  GtkEventController *keys = gtk_event_controller_key_new ();
  GtkGesture *press = gtk_gesture_click_new ();

  gtk_widget_init_template (GTK_WIDGET (self));
  make_list (self);
  gtk_menu_button_set_create_popup_func (GTK_MENU_BUTTON (self->add_button), make_picker, NULL, NULL);
  em_menu_set_late (self->more_button, self->feature_menu);
  gtk_paned_set_position (GTK_PANED (self->paned), LIST_LEAST);
  gtk_event_controller_set_propagation_phase (GTK_EVENT_CONTROLLER (press), GTK_PHASE_CAPTURE);
  g_signal_connect (press, "pressed", G_CALLBACK (on_pressed), self);
  gtk_widget_add_controller (self->paned, GTK_EVENT_CONTROLLER (press));
  g_signal_connect_swapped (self->paned, "notify::max-position", G_CALLBACK (place_soon), self);
  g_signal_connect (keys, "key-pressed", G_CALLBACK (on_list_key), self);
  gtk_widget_add_controller (self->list, keys);
  em_edge_scroll_add (GTK_SCROLLABLE (self->list));
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
  int32_t index = em_document_get_selected_index (self->document);
  EmFeatureRow *row;

  if (index >= 0)
    gtk_widget_activate_action (self->list, "list.scroll-to-item", "u", (guint) index);
  row = find_row (self, em_document_get_selected (self->document));
  if (row != NULL)
    gtk_widget_grab_focus (gtk_widget_get_parent (GTK_WIDGET (row)));
  else
    gtk_widget_child_focus (self->stack, GTK_DIR_TAB_FORWARD);
}

GtkSelectionModel *
em_metal_pane_get_features (EmMetalPane *self)
{
  return GTK_SELECTION_MODEL (self->selection);
}
