/* em-window: one quote in one window.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-window-private.h"

#include "em-autosave.h"
#include "em-demo.h"
#include "em-field.h"
#include "em-look.h"
#include "em-settings.h"
#include "em-welcome.h"
#include "em-words.h"

#include <glib/gi18n.h>

G_DEFINE_FINAL_TYPE (EmWindow, em_window, GTK_TYPE_APPLICATION_WINDOW)

enum { WORK_SPOKEN_OF_MS = 500 };

/* Shares of the window that words and money take until someone moves the handles, and their bounds in pixels. */
#define WORDS_SHARE 0.27
#define MONEY_SHARE 0.295
enum { WORDS_LEAST = 300, WORDS_MOST = 460, MONEY_LEAST = 340, MONEY_MOST = 540, HANDLE = 1, HANDLE_REACH = 8 };

void
em_window_update_title (EmWindow *self)
{
  g_autofree char *title = em_document_dup_title (self->document);
  const char *path = em_document_get_path (self->document);
  gboolean is_modified = em_document_is_modified (self->document);
  g_autofree char *shown = g_strdup_printf ("%s%s", is_modified ? "• " : "", title);
  g_autofree char *name = path != NULL ? g_filename_display_name (path) : g_strdup (_("not saved yet"));
  guint n_kept = em_document_get_n_kept (self->document);
  g_autofree char *kept = n_kept > 0 ? g_strdup_printf (ngettext (" · %u thing of a newer version is not in the price",
                                                                  " · %u things of a newer version are not in the price", n_kept), n_kept) : g_strdup ("");
  g_autofree char *subtitle = g_strdup_printf ("%s · %s%s", em_words_state (em_document_get_quote (self->document)->state), name, kept);
  g_autofree char *window_title = g_strdup_printf ("%s – Estimend", shown);

  gtk_label_set_text (GTK_LABEL (self->title_label), shown);
  gtk_widget_set_tooltip_text (self->title_label, is_modified ? _("Not saved") : NULL);
  gtk_label_set_text (GTK_LABEL (self->subtitle_label), subtitle);
  gtk_widget_set_tooltip_text (self->subtitle_label, subtitle);
  gtk_window_set_title (GTK_WINDOW (self), window_title);
}

static gboolean
is_paper_shown (EmWindow *self)
{
  return g_strcmp0 (gtk_stack_get_visible_child_name (GTK_STACK (self->stack)), "paper") == 0;
}

static void
on_document_changed (EmWindow *self)
{
  em_window_update_title (self);
  em_window_update_actions (self);
  if (is_paper_shown (self))
    em_paper_view_show (EM_PAPER_VIEW (self->paper), self->document);
}

/* The metal takes what room the words and the money leave. */
static void
place_for_width (EmWindow *self, int width)
{
  int kept = g_settings_get_int (em_settings_get (), "money-width");
  int words = self->is_words_by_hand ? gtk_paned_get_position (GTK_PANED (self->outer_paned)) : (int) CLAMP (width * WORDS_SHARE, WORDS_LEAST, WORDS_MOST);
  int money = kept > 0 ? kept : (int) CLAMP (width * MONEY_SHARE, MONEY_LEAST, MONEY_MOST);

  gtk_paned_set_position (GTK_PANED (self->outer_paned), words);
  if (!self->is_money_by_hand)
    gtk_paned_set_position (GTK_PANED (self->inner_paned), MAX (width - words - money - 2 * HANDLE, 0));
}

static gboolean
place_panes (gpointer data)
{
  EmWindow *self = data;
  int width = gtk_widget_get_width (self->outer_paned);

  self->placing = 0;
  if (width > 0)
    place_for_width (self, width);
  return G_SOURCE_REMOVE;
}

/* Not while widths are being worked out. */
static void
place_soon (EmWindow *self)
{
  if (self->placing == 0 && !(self->is_words_by_hand && self->is_money_by_hand))
    self->placing = g_idle_add (place_panes, self);
}

static void
on_pressed (GtkGestureClick *gesture, int n_press, double x, double y, EmWindow *self)
{
  GtkWidget *paned = gtk_event_controller_get_widget (GTK_EVENT_CONTROLLER (gesture));
  gboolean is_outer = paned == self->outer_paned;

  (void) n_press;
  (void) y;
  if (gtk_widget_get_direction (paned) == GTK_TEXT_DIR_RTL)
    x = gtk_widget_get_width (paned) - x;
  if (ABS ((int) x - gtk_paned_get_position (GTK_PANED (paned))) >= HANDLE_REACH)
    return;
  self->is_money_by_hand = TRUE;
  self->is_words_by_hand = self->is_words_by_hand || is_outer;
}

static void
watch_handle (EmWindow *self, GtkWidget *paned)
{
  GtkGesture *press = gtk_gesture_click_new ();

  gtk_event_controller_set_propagation_phase (GTK_EVENT_CONTROLLER (press), GTK_PHASE_CAPTURE);
  g_signal_connect (press, "pressed", G_CALLBACK (on_pressed), self);
  gtk_widget_add_controller (paned, GTK_EVENT_CONTROLLER (press));
  g_signal_connect_swapped (paned, "notify::max-position", G_CALLBACK (place_soon), self);
}

static void
forget_document (EmWindow *self)
{
  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_clear_object (&self->document);
  g_clear_object (&self->outlook);
}

static gboolean
on_drop (GtkDropTarget *target, const GValue *value, double x, double y, EmWindow *self)
{
  (void) target;
  (void) x;
  (void) y;
  if (G_VALUE_HOLDS_STRING (value))
    {
      em_words_pane_take_text (EM_WORDS_PANE (self->words), g_value_get_string (value), FALSE, EM_UNITS_METRIC);
      return TRUE;
    }
  GSList *files = g_value_get_boxed (value);
  for (GSList *file = files; file != NULL; file = file->next)
    em_window_open_file (self, file->data);
  return files != NULL;
}

static gboolean
em_window_close_request (GtkWindow *window)
{
  EmWindow *self = EM_WINDOW (window);
  GSettings *settings = em_settings_get ();
  int width, height;

  if (!em_window_may_close (self))
    return TRUE;
  gtk_window_get_default_size (window, &width, &height);
  g_settings_set_boolean (settings, "is-maximized", gtk_window_is_maximized (window));
  if (!gtk_window_is_maximized (window))
    {
      g_settings_set_int (settings, "window-width", width);
      g_settings_set_int (settings, "window-height", height);
    }
  if (self->is_words_by_hand)
    g_settings_set_int (settings, "words-width", gtk_paned_get_position (GTK_PANED (self->outer_paned)));
  if (self->is_money_by_hand)
    g_settings_set_int (settings, "money-width", gtk_widget_get_width (self->money));
  return GTK_WINDOW_CLASS (em_window_parent_class)->close_request (window);
}

static void
em_window_dispose (GObject *object)
{
  EmWindow *self = EM_WINDOW (object);

  self->is_words_by_hand = self->is_money_by_hand = TRUE;
  g_clear_handle_id (&self->placing, g_source_remove);
  forget_document (self);
  em_window_end_work (self);
  g_clear_object (&self->chooser);
  G_OBJECT_CLASS (em_window_parent_class)->dispose (object);
}

static void
em_window_class_init (EmWindowClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  g_type_ensure (EM_TYPE_WORDS_PANE);
  g_type_ensure (EM_TYPE_METAL_PANE);
  g_type_ensure (EM_TYPE_MONEY_PANE);
  g_type_ensure (EM_TYPE_PAPER_VIEW);
  G_OBJECT_CLASS (class)->dispose = em_window_dispose;
  GTK_WINDOW_CLASS (class)->close_request = em_window_close_request;
  gtk_widget_class_set_template_from_resource (widget_class, "/org/estimend/Estimend/window.ui");
  gtk_widget_class_bind_template_child (widget_class, EmWindow, title_label);
  gtk_widget_class_bind_template_child (widget_class, EmWindow, subtitle_label);
  gtk_widget_class_bind_template_child (widget_class, EmWindow, message_revealer);
  gtk_widget_class_bind_template_child (widget_class, EmWindow, message_label);
  gtk_widget_class_bind_template_child (widget_class, EmWindow, stack);
  gtk_widget_class_bind_template_child (widget_class, EmWindow, outer_paned);
  gtk_widget_class_bind_template_child (widget_class, EmWindow, inner_paned);
  gtk_widget_class_bind_template_child (widget_class, EmWindow, words);
  gtk_widget_class_bind_template_child (widget_class, EmWindow, metal);
  gtk_widget_class_bind_template_child (widget_class, EmWindow, money);
  gtk_widget_class_bind_template_child (widget_class, EmWindow, paper);
  gtk_widget_class_bind_template_child (widget_class, EmWindow, menu_button);
  gtk_widget_class_bind_template_child (widget_class, EmWindow, main_menu);
  gtk_widget_class_bind_template_child (widget_class, EmWindow, recent_menu);
  gtk_widget_class_bind_template_child (widget_class, EmWindow, demo_menu);
}

static void
fill_demos (EmWindow *self)
{
  for (int i = 0; i < em_n_demos; i++)
    {
      g_autofree char *action = g_strdup_printf ("app.demo::%s", em_demos[i].id);
      g_menu_append (self->demo_menu, _(em_demos[i].name), action);
    }
}

static void
em_window_init (EmWindow *self)
{
  GSettings *settings = em_settings_get ();
  GtkDropTarget *target = gtk_drop_target_new (G_TYPE_INVALID, GDK_ACTION_COPY);
  GType types[] = { GDK_TYPE_FILE_LIST, G_TYPE_STRING };

  em_look_init ();
  gtk_widget_init_template (GTK_WIDGET (self));
  em_window_add_actions (self);
  fill_demos (self);
  em_window_fill_recent (self);
  g_signal_connect_object (settings, "changed::recent-files", G_CALLBACK (em_window_fill_recent), self, G_CONNECT_SWAPPED);
  em_menu_set_late (self->menu_button, self->main_menu);
  gtk_window_set_default_size (GTK_WINDOW (self), g_settings_get_int (settings, "window-width"), g_settings_get_int (settings, "window-height"));
  if (g_settings_get_boolean (settings, "is-maximized"))
    gtk_window_maximize (GTK_WINDOW (self));
  self->is_words_by_hand = g_settings_get_int (settings, "words-width") > 0;
  if (self->is_words_by_hand)
    gtk_paned_set_position (GTK_PANED (self->outer_paned), g_settings_get_int (settings, "words-width"));
  place_for_width (self, g_settings_get_int (settings, "window-width"));
  watch_handle (self, self->outer_paned);
  watch_handle (self, self->inner_paned);
  /* What is offered as both is a file, with its name. */
  gtk_drop_target_set_gtypes (target, types, G_N_ELEMENTS (types));
  g_signal_connect (target, "drop", G_CALLBACK (on_drop), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (target));
}

EmWindow *
em_window_new (GtkApplication *application, EmDocument *document)
{
  EmWindow *self = g_object_new (EM_TYPE_WINDOW, "application", application, NULL);

  em_window_set_document (self, document);
  return self;
}

EmDocument *
em_window_get_document (EmWindow *self)
{
  return self->document;
}

/* What is copied from a mail can be pasted at once. */
void
em_window_start_at_notes (EmWindow *self)
{
  if (em_document_is_blank (self->document) && g_strcmp0 (gtk_stack_get_visible_child_name (GTK_STACK (self->stack)), "work") == 0)
    em_words_pane_focus_notes (EM_WORDS_PANE (self->words));
}

void
em_window_set_document (EmWindow *self, EmDocument *document)
{
  g_object_ref (document);
  forget_document (self);
  self->document = document;
  self->outlook = em_outlook_new (document);
  g_signal_connect_object (document, "changed", G_CALLBACK (on_document_changed), self, G_CONNECT_SWAPPED);
  em_words_pane_set_document (EM_WORDS_PANE (self->words), document, self->outlook);
  em_metal_pane_set_document (EM_METAL_PANE (self->metal), document);
  em_money_pane_set_document (EM_MONEY_PANE (self->money), document, self->outlook);
  em_autosave_watch (document, self);
  on_document_changed (self);
  em_window_start_at_notes (self);
}

EmOutlook *
em_window_get_outlook (EmWindow *self)
{
  return self->outlook;
}

EmWordsPane *
em_window_get_words (EmWindow *self)
{
  return EM_WORDS_PANE (self->words);
}

EmMetalPane *
em_window_get_metal (EmWindow *self)
{
  return EM_METAL_PANE (self->metal);
}

EmMoneyPane *
em_window_get_money (EmWindow *self)
{
  return EM_MONEY_PANE (self->money);
}

EmPaperView *
em_window_get_paper (EmWindow *self)
{
  return EM_PAPER_VIEW (self->paper);
}

void
em_window_say (EmWindow *self, const char *text)
{
  if (text != NULL)
    gtk_label_set_text (GTK_LABEL (self->message_label), text);
  gtk_revealer_set_reveal_child (GTK_REVEALER (self->message_revealer), text != NULL);
}

const char *
em_window_get_said (EmWindow *self)
{
  return gtk_revealer_get_reveal_child (GTK_REVEALER (self->message_revealer))
         ? gtk_label_get_text (GTK_LABEL (self->message_label)) : NULL;
}

static gboolean
on_work_takes_long (gpointer data)
{
  EmWindow *self = data;

  self->work_source = 0;
  em_window_say (self, self->work_text);
  return G_SOURCE_REMOVE;
}

void
em_window_begin_work (EmWindow *self, const char *text, GCancellable *cancellable)
{
  em_window_end_work (self);
  self->work = g_object_ref (cancellable);
  self->work_text = g_strdup (text);
  self->work_source = g_timeout_add (WORK_SPOKEN_OF_MS, on_work_takes_long, self);
}

void
em_window_show_work (EmWindow *self, const char *text)
{
  if (self->work == NULL)
    return;
  g_free (self->work_text);
  self->work_text = g_strdup (text);
  if (self->work_source == 0)
    em_window_say (self, text);
}

void
em_window_end_work (EmWindow *self)
{
  if (self->work == NULL)
    return;
  if (self->work_source == 0 && self->document != NULL)
    em_window_say (self, NULL);
  g_clear_handle_id (&self->work_source, g_source_remove);
  g_clear_object (&self->work);
  g_clear_pointer (&self->work_text, g_free);
}

void
em_window_show_welcome (EmWindow *self)
{
  GtkWidget *welcome = gtk_stack_get_child_by_name (GTK_STACK (self->stack), "welcome"), *focus;

  if (welcome == NULL)
    {
      welcome = em_welcome_new ();
      gtk_stack_add_named (GTK_STACK (self->stack), welcome, "welcome");
    }
  gtk_stack_set_visible_child (GTK_STACK (self->stack), welcome);
  focus = gtk_root_get_focus (GTK_ROOT (self));
  if (focus == NULL || !gtk_widget_is_ancestor (focus, welcome))
    gtk_widget_child_focus (welcome, GTK_DIR_TAB_FORWARD);
  em_window_update_actions (self);
}
