/* em-register-window: the shop's past quotes.
 *
 * The files are read by threads; what is on the screen is a snapshot that the next scan replaces.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-register-window.h"

#include "em-beside.h"
#include "em-register-filter.h"
#include "em-register-panel.h"
#include "em-register-table.h"
#include "em-register-undo.h"
#include "em-register-work.h"
#include "em-revision.h"
#include "em-settings.h"
#include "em-words.h"

#include <glib/gi18n.h>
#include <math.h>

struct _EmRegisterWindow
{
  GtkWindow parent_instance;

  EmApplication  *application;   /* borrowed: it owns all windows */
  EmRegister     *reg;           /* owned; NULL: no folder yet, or its index is still being read */
  GCancellable   *scan;          /* owned; NULL: none runs, and no index is read */
  GSimpleActionGroup *actions;   /* owned: "register" */
  GtkFileChooserNative *chooser; /* owned */
  gboolean        is_unread;     /* the last look was stopped, or the folder could not be read */
  char           *said;          /* what the summary says instead for now, or NULL */
  GFileMonitor   *monitor;       /* owned; of the folder itself, not of folders in it; or NULL */
  guint           looking_again, showing_progress;   /* sources; 0: none */

  GtkWidget *pages, *filter, *table, *panel, *undo, *summary, *progress, *cancel_button, *folder_label;
};

G_DEFINE_FINAL_TYPE (EmRegisterWindow, em_register_window, GTK_TYPE_WINDOW)

enum { SUMMARY_CHARS = 30, TABLE_SHARE_PERCENT = 45, QUIET_MS = 400, CHANGES_MS = 500 };

static void rescan (EmRegisterWindow *self);

/* ---- searching ---- */

enum { PPM_PER_PERCENT = 10000 };

/* "12 quotes · won 4 of 9 decided (44 %), by value 51 % · 3 jobs took 1.08 times what was reckoned" */
static char *
summary_text (EmRegisterWindow *self, const GArray *found)
{
  EmRegisterSummary sum;
  g_autoptr (GString) text = g_string_new (NULL);

  em_register_sum_up (self->reg, found, &sum);
  g_string_append_printf (text, ngettext ("%u quote", "%u quotes", found->len - sum.n_unreadable),
                          found->len - sum.n_unreadable);
  if (sum.n_unreadable > 0)
    g_string_append_printf (text, ngettext (" · %u file can’t be read", " · %u files can’t be read", sum.n_unreadable), sum.n_unreadable);
  if (!isnan (sum.won_ratio))
    {
      g_autofree char *share = em_words_percent (llround (sum.won_ratio * 100) * PPM_PER_PERCENT);
      g_string_append_printf (text, _(" · won %u of %u decided, %s"), sum.n[EM_STATE_WON],
                              sum.n[EM_STATE_WON] + sum.n[EM_STATE_LOST] + sum.n[EM_STATE_LAPSED], share);
    }
  if (!isnan (sum.won_value_ratio))
    {
      g_autofree char *share = em_words_percent (llround (sum.won_value_ratio * 100) * PPM_PER_PERCENT);
      g_string_append_printf (text, _(" · by value %s"), share);
    }
  if (!isnan (sum.actual_ratio))
    {
      g_autofree char *ratio = em_words_number (sum.actual_ratio, 2);
      g_string_append_printf (text, ngettext (" · %u job took %s times the hours quoted", " · %u jobs took %s times the hours quoted", sum.n_timed),
                              sum.n_timed, ratio);
    }
  return g_string_free (g_steal_pointer (&text), FALSE);
}

/* What stands in place of the table, or the table. */
static const char *
page_of (EmRegisterWindow *self, const GArray *found)
{
  g_autofree char *folder = g_settings_get_string (em_settings_get (), "shop-folder");

  if (*folder == '\0')
    return "empty";
  if (found != NULL && found->len > 0)
    return "table";
  if (self->scan != NULL && (self->reg == NULL || em_register_get_length (self->reg) == 0))
    return "reading";
  if (self->reg != NULL && em_register_get_length (self->reg) > 0)
    return "none";
  return self->is_unread ? "unread" : "bare";
}

static void
show_found (EmRegisterWindow *self)
{
  g_autofree char *summary = NULL;
  g_autoptr (GArray) found = NULL;
  EmRegisterQuery query;

  em_register_filter_query (EM_REGISTER_FILTER (self->filter), &query);
  if (self->reg != NULL)
    {
      found = em_register_search (self->reg, &query);
      /* "0 quotes" would be known too early. */
      if (self->scan == NULL || em_register_get_length (self->reg) > 0)
        summary = summary_text (self, found);
    }
  gtk_stack_set_visible_child_name (GTK_STACK (self->pages), page_of (self, found));
  gtk_label_set_text (GTK_LABEL (self->folder_label), self->reg != NULL ? em_register_get_folder (self->reg) : "");
  gtk_label_set_text (GTK_LABEL (self->summary), self->said != NULL ? self->said : summary != NULL ? summary : "");
  em_register_table_show (EM_REGISTER_TABLE (self->table), self->reg, found);
}

static void
say (EmRegisterWindow *self, const char *sentence)
{
  g_free (self->said);
  self->said = g_strdup (sentence);
  show_found (self);
}

static void
on_query (EmRegisterWindow *self)
{
  g_clear_pointer (&self->said, g_free);
  show_found (self);
}

static gboolean
on_down (EmRegisterWindow *self)
{
  if (em_register_table_count (EM_REGISTER_TABLE (self->table)) == 0)
    return FALSE;
  em_register_table_focus (EM_REGISTER_TABLE (self->table));
  return TRUE;
}

static void
on_show_all (EmRegisterWindow *self)
{
  em_register_filter_clear (EM_REGISTER_FILTER (self->filter));
}

/* ---- the order ---- */

static void
on_order_chosen (EmRegisterWindow *self)
{
  gboolean is_descending;
  const char *column = em_register_filter_get_sort (EM_REGISTER_FILTER (self->filter), &is_descending);

  em_register_table_sort (EM_REGISTER_TABLE (self->table), column, is_descending);
}

static void
on_sorted (EmRegisterWindow *self)
{
  gboolean is_descending;
  const char *column = em_register_table_get_sort (EM_REGISTER_TABLE (self->table), &is_descending);

  em_register_filter_put_sort (EM_REGISTER_FILTER (self->filter), column, is_descending);
}

/* ---- the selected quote ---- */

/* An open quote is changed where it is open, so that one does not overwrite the other. */
static EmDocument *
find_open_document (EmRegisterWindow *self, const char *path)
{
  EmWindow *window = em_application_find_path (self->application, path);

  return window != NULL ? em_window_get_document (window) : NULL;
}

static void
enable (EmRegisterWindow *self, const char *action, gboolean is_enabled)
{
  g_simple_action_set_enabled (G_SIMPLE_ACTION (g_action_map_lookup_action (G_ACTION_MAP (self->actions), action)), is_enabled);
}

/* NULL: none. */
static const EmRegisterEntry *
selected_entry (EmRegisterWindow *self, char **out_path)
{
  guint index = em_register_table_get_selected (EM_REGISTER_TABLE (self->table));

  *out_path = NULL;
  if (self->reg == NULL || index >= em_register_get_length (self->reg))
    return NULL;
  *out_path = em_register_dup_path (self->reg, index);
  return em_register_get_entry (self->reg, index);
}

static void
on_selected (EmRegisterWindow *self)
{
  g_autofree char *path = NULL;
  const EmRegisterEntry *entry = selected_entry (self, &path);
  gboolean is_good = entry != NULL && entry->problem == NULL;
  EmDocument *open = is_good ? find_open_document (self, path) : NULL;

  enable (self, "open", entry != NULL);
  enable (self, "revise", is_good);
  enable (self, "copy", is_good);
  em_register_panel_show (EM_REGISTER_PANEL (self->panel), self->reg, em_register_table_get_selected (EM_REGISTER_TABLE (self->table)),
                          open != NULL ? em_document_get_quote (open)->state : is_good ? entry->state : EM_STATE_DRAFT,
                          em_application_get_basis (self->application));
}

/* ---- what is done to it ---- */

void
em_register_window_open (EmRegisterWindow *self)
{
  g_autofree char *path = NULL;

  if (selected_entry (self, &path) == NULL)
    return;
  g_autoptr (GFile) file = g_file_new_for_path (path);
  em_application_open_quote (self->application, file, NULL);
}

static void
on_derived (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (EmRegisterWindow) self = data;
  g_autoptr (GError) error = NULL;
  EmQuoteFile file;

  (void) source;
  if (!em_register_work_derive_finish (result, &file, &error))
    {
      if (self->summary != NULL)
        say (self, error->message);
      return;
    }
  em_revision_pass (self->reg, &file.quote);
  g_autoptr (EmDocument) document = em_document_new_take (em_application_get_basis (self->application), &file, NULL);
  em_application_add_window (self->application, document);
}

static void
derive (EmRegisterWindow *self, gboolean is_revision)
{
  g_autofree char *path = NULL;

  if (selected_entry (self, &path) != NULL)
    em_register_work_derive_async (path, is_revision, NULL, on_derived, g_object_ref (self));
}

void
em_register_window_copy (EmRegisterWindow *self)
{
  derive (self, FALSE);
}

void
em_register_window_revise (EmRegisterWindow *self)
{
  derive (self, TRUE);
}

static gboolean
is_writing (EmRegisterWindow *self)
{
  return self->undo != NULL && em_register_undo_is_busy (EM_REGISTER_UNDO (self->undo));
}

/* The quote that a step was made in is shown, where it is among those found. */
static void
select_path (EmRegisterWindow *self, const char *path)
{
  guint n = self->reg != NULL ? em_register_table_count (EM_REGISTER_TABLE (self->table)) : 0;

  for (guint row = 0; row < n; row++)
    {
      g_autofree char *other = em_register_dup_path (self->reg, em_register_table_get_index (EM_REGISTER_TABLE (self->table), row));
      if (!g_str_equal (other, path))
        continue;
      em_register_table_select (EM_REGISTER_TABLE (self->table), row);
      return;
    }
}

static void
on_written (EmRegisterWindow *self, const char *path, const char *trouble)
{
  if (self->summary == NULL)
    return;
  select_path (self, path);
  if (trouble != NULL)
    say (self, trouble);
  else
    g_clear_pointer (&self->said, g_free);
  /* A state that was not taken is not shown either. */
  on_selected (self);
  rescan (self);
}

void
em_register_window_set_state (EmRegisterWindow *self, EmState state)
{
  g_autofree char *path = NULL;
  const EmRegisterEntry *entry = selected_entry (self, &path);
  EmDocument *open = path != NULL ? find_open_document (self, path) : NULL;

  if (open != NULL && em_document_get_quote (open)->state != state)
    {
      em_document_set_state (open, state);
      say (self, _("That quote is open: its state is changed there. Save it to keep it."));
    }
  else if (open == NULL && entry != NULL && entry->problem == NULL && entry->state != state)
    {
      g_autofree char *title = em_register_number_text (entry);
      if (!em_register_undo_set_state (EM_REGISTER_UNDO (self->undo), path, title, entry->state, state, em_application_get_basis (self->application)))
        on_selected (self);
    }
}

static void
on_undo (EmRegisterWindow *self)
{
  em_register_undo_go (EM_REGISTER_UNDO (self->undo), EM_STEP_BACK);
}

static void
on_redo (EmRegisterWindow *self)
{
  em_register_undo_go (EM_REGISTER_UNDO (self->undo), EM_STEP_FORTH);
}

static void
on_state (EmRegisterWindow *self, int state)
{
  em_register_window_set_state (self, (EmState) state);
}

/* ---- scanning ---- */

static gboolean
on_progress_due (gpointer data)
{
  EmRegisterWindow *self = data;

  self->showing_progress = 0;
  gtk_widget_set_visible (self->progress, TRUE);
  gtk_widget_set_visible (self->cancel_button, TRUE);
  return G_SOURCE_REMOVE;
}

static void
drop_source (guint *source)
{
  if (*source != 0)
    g_source_remove (*source);
  *source = 0;
}

/* A look that is over in a moment does not make the foot jump. */
static void
show_progress (EmRegisterWindow *self)
{
  drop_source (&self->showing_progress);
  if (self->scan != NULL && !gtk_widget_get_visible (self->progress))
    self->showing_progress = g_timeout_add (QUIET_MS, on_progress_due, self);
  if (self->scan != NULL)
    return;
  gtk_widget_set_visible (self->progress, FALSE);
  gtk_widget_set_visible (self->cancel_button, FALSE);
}

static void
on_progress (guint n_done, guint n_files, gpointer data)
{
  EmRegisterWindow *self = data;
  g_autofree char *text = g_strdup_printf (_("%u of %u files"), n_done, n_files);

  if (self->progress == NULL)
    return;
  gtk_progress_bar_set_fraction (GTK_PROGRESS_BAR (self->progress), n_files > 0 ? (double) n_done / n_files : 0);
  gtk_progress_bar_set_text (GTK_PROGRESS_BAR (self->progress), text);
}

static void
on_scanned (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (EmRegisterWindow) self = data;
  g_autoptr (GError) error = NULL;
  EmRegister *reg = em_register_scan_finish (result, &error);

  (void) source;
  /* Another scan may have taken this one's place. */
  if (self->summary == NULL || self->scan != g_task_get_cancellable (G_TASK (result)))
    {
      g_clear_pointer (&reg, em_register_unref);
      return;
    }
  g_clear_object (&self->scan);
  show_progress (self);
  self->is_unread = reg == NULL;
  if (reg == NULL)
    {
      if (error != NULL && !g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED))
        say (self, error->message);
      return;
    }
  gboolean is_same = self->reg != NULL && em_register_equal (self->reg, reg);
  g_clear_pointer (is_same ? &reg : &self->reg, em_register_unref);
  if (!is_same)
    self->reg = reg;
  /* Else what is on the screen stays as it is, scrolled as it is. */
  if (!is_same || g_strcmp0 (em_register_window_get_page (self), "table") != 0)
    show_found (self);
}

static void
begin_scan (EmRegisterWindow *self, const char *folder)
{
  EmBasis *basis = em_application_get_basis (self->application);

  em_register_scan_async (folder, self->reg, em_basis_get_rates (basis), em_basis_get_catalogue (basis), on_progress, self, self->scan,
                          on_scanned, g_object_ref (self));
}

static void
index_in_thread (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  (void) source;
  (void) cancellable;
  g_task_return_pointer (task, em_register_new (data), (GDestroyNotify) em_register_unref);
}

static void
on_index (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (EmRegisterWindow) self = data;
  g_autoptr (EmRegister) reg = g_task_propagate_pointer (G_TASK (result), NULL);

  (void) source;
  if (self->summary == NULL || reg == NULL || self->scan != g_task_get_cancellable (G_TASK (result)))
    return;
  self->reg = g_steal_pointer (&reg);
  show_found (self);
  begin_scan (self, g_task_get_task_data (G_TASK (result)));
}

/* ---- changes by others ---- */

static gboolean
on_looking_again (gpointer data)
{
  EmRegisterWindow *self = data;

  /* What changed behind the scan that runs is looked at after it. */
  if (self->scan != NULL || is_writing (self))
    return G_SOURCE_CONTINUE;
  self->looking_again = 0;
  rescan (self);
  return G_SOURCE_REMOVE;
}

static void
on_folder_changed (EmRegisterWindow *self)
{
  if (self->looking_again == 0)
    self->looking_again = g_timeout_add (CHANGES_MS, on_looking_again, self);
}

static void
watch (EmRegisterWindow *self, const char *folder)
{
  g_autoptr (GFile) file = folder != NULL ? g_file_new_for_path (folder) : NULL;

  if (self->monitor != NULL)
    g_signal_handlers_disconnect_by_data (self->monitor, self);
  g_clear_object (&self->monitor);
  /* Where a folder can't be watched, as on some servers, it is looked at when the window is turned to. */
  if (file != NULL)
    self->monitor = g_file_monitor_directory (file, G_FILE_MONITOR_WATCH_MOVES, NULL, NULL);
  if (self->monitor != NULL)
    g_signal_connect_swapped (self->monitor, "changed", G_CALLBACK (on_folder_changed), self);
}

static void
on_active (EmRegisterWindow *self)
{
  if (gtk_window_is_active (GTK_WINDOW (self)) && self->scan == NULL && !is_writing (self))
    rescan (self);
}

/* ---- looking through the folder ---- */

/* What the last scan left is shown while the next one looks for what is new. */
static void
rescan (EmRegisterWindow *self)
{
  g_autofree char *folder = g_settings_get_string (em_settings_get (), "shop-folder");
  g_autofree char *whole = *folder != '\0' ? g_canonicalize_filename (folder, NULL) : NULL;

  if (self->scan != NULL)
    g_cancellable_cancel (self->scan);
  g_clear_object (&self->scan);
  if (self->reg != NULL && g_strcmp0 (em_register_get_folder (self->reg), whole) != 0)
    g_clear_pointer (&self->reg, em_register_unref);
  if (whole != NULL)
    {
      self->scan = g_cancellable_new ();
      gtk_progress_bar_set_fraction (GTK_PROGRESS_BAR (self->progress), 0);
      gtk_progress_bar_set_text (GTK_PROGRESS_BAR (self->progress), "");
    }
  /* Of a folder that is known nothing is new yet. */
  if (self->reg == NULL || self->said != NULL || g_strcmp0 (em_register_window_get_page (self), "table") != 0)
    show_found (self);
  show_progress (self);
  if (self->reg == NULL)
    watch (self, whole);
  if (whole == NULL)
    return;
  if (self->reg != NULL)
    begin_scan (self, whole);
  else
    {
      g_autoptr (GTask) task = g_task_new (NULL, self->scan, on_index, g_object_ref (self));
      g_task_set_task_data (task, g_steal_pointer (&whole), g_free);
      g_task_run_in_thread (task, index_in_thread);
    }
}

static void
on_rescan (EmRegisterWindow *self)
{
  g_clear_pointer (&self->said, g_free);
  show_found (self);
  rescan (self);
}

static void
on_cancel (EmRegisterWindow *self)
{
  if (self->scan != NULL)
    g_cancellable_cancel (self->scan);
  g_clear_object (&self->scan);
  self->is_unread = TRUE;
  show_progress (self);
  show_found (self);
}

void
em_register_window_set_folder (EmRegisterWindow *self, const char *folder)
{
  g_settings_set_string (em_settings_get (), "shop-folder", folder);
  g_clear_pointer (&self->said, g_free);
  rescan (self);
}

static void
on_folder_chosen (GtkNativeDialog *dialog, int response, EmRegisterWindow *self)
{
  g_autoptr (GFile) file = response == GTK_RESPONSE_ACCEPT ? gtk_file_chooser_get_file (GTK_FILE_CHOOSER (dialog)) : NULL;

  if (file != NULL && g_file_peek_path (file) != NULL)
    em_register_window_set_folder (self, g_file_peek_path (file));
}

static void
on_choose_folder (EmRegisterWindow *self)
{
  g_clear_object (&self->chooser);
  self->chooser = gtk_file_chooser_native_new (_("Folder of the shop’s quotes"), GTK_WINDOW (self), GTK_FILE_CHOOSER_ACTION_SELECT_FOLDER,
                                               _("_Choose"), _("_Cancel"));
  g_signal_connect (self->chooser, "response", G_CALLBACK (on_folder_chosen), self);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (self->chooser));
}

/* ---- the window ---- */

static void
on_action (GSimpleAction *action, GVariant *target, gpointer data)
{
  static const struct { const char *name; void (*act) (EmRegisterWindow *self); } acts[] =
  {
    { "open", em_register_window_open }, { "revise", em_register_window_revise }, { "copy", em_register_window_copy }, { "again", on_rescan },
    { "undo", on_undo }, { "redo", on_redo },
  };
  const char *name = g_action_get_name (G_ACTION (action));

  (void) target;
  for (gsize i = 0; i < G_N_ELEMENTS (acts); i++)
    if (g_str_equal (acts[i].name, name))
      acts[i].act (data);
}

static void
on_find (GSimpleAction *action, GVariant *target, gpointer data)
{
  EmRegisterWindow *self = data;

  (void) action;
  (void) target;
  em_register_filter_focus (EM_REGISTER_FILTER (self->filter));
}

static const GActionEntry entries[] =
{
  { .name = "open", .activate = on_action }, { .name = "revise", .activate = on_action }, { .name = "copy", .activate = on_action },
  { .name = "again", .activate = on_action }, { .name = "find", .activate = on_find },
  { .name = "undo", .activate = on_action }, { .name = "redo", .activate = on_action },
};

static gboolean
em_register_window_close_request (GtkWindow *window)
{
  EmRegisterWindow *self = EM_REGISTER_WINDOW (window);

  em_register_table_remember (EM_REGISTER_TABLE (self->table));
  em_settings_keep_size (window, "register-width", "register-height");
  return GTK_WINDOW_CLASS (em_register_window_parent_class)->close_request (window);
}

static void
em_register_window_dispose (GObject *object)
{
  EmRegisterWindow *self = EM_REGISTER_WINDOW (object);

  if (self->scan != NULL)
    g_cancellable_cancel (self->scan);
  watch (self, NULL);
  drop_source (&self->looking_again);
  drop_source (&self->showing_progress);
  self->summary = self->progress = self->undo = NULL;
  g_clear_object (&self->scan);
  g_clear_object (&self->actions);
  g_clear_object (&self->chooser);
  g_clear_pointer (&self->reg, em_register_unref);
  g_clear_pointer (&self->said, g_free);
  G_OBJECT_CLASS (em_register_window_parent_class)->dispose (object);
}

static void
em_register_window_class_init (EmRegisterWindowClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  G_OBJECT_CLASS (class)->dispose = em_register_window_dispose;
  GTK_WINDOW_CLASS (class)->close_request = em_register_window_close_request;
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_f, GDK_CONTROL_MASK, "register.find", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_F5, 0, "register.again", NULL);
  /* Not as the keys of all windows: what is typed in the search has steps of its own, which come first there. */
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_z, GDK_CONTROL_MASK, "register.undo", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_z, GDK_CONTROL_MASK | GDK_SHIFT_MASK, "register.redo", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_y, GDK_CONTROL_MASK, "register.redo", NULL);
}

static GtkWidget *
label_new (const char *text, const char *css_class)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  gtk_widget_add_css_class (label, css_class);
  return label;
}

/* What is to be done while there is nothing to show. */
static void
add_empty (EmRegisterWindow *self, const char *id, const char *title, const char *text, const char *name, void (*act) (EmRegisterWindow *self))
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12), *teach = label_new (text, "teach");

  gtk_label_set_max_width_chars (GTK_LABEL (teach), 56);
  gtk_widget_set_halign (box, GTK_ALIGN_CENTER);
  gtk_widget_set_valign (box, GTK_ALIGN_CENTER);
  gtk_box_append (GTK_BOX (box), label_new (title, "section-name"));
  gtk_box_append (GTK_BOX (box), teach);
  if (name != NULL)
    {
      GtkWidget *button = gtk_button_new_with_mnemonic (name);
      gtk_widget_set_halign (button, GTK_ALIGN_START);
      gtk_widget_add_css_class (button, "call");
      gtk_box_append (GTK_BOX (box), button);
      g_signal_connect_swapped (button, "clicked", G_CALLBACK (act), self);
    }
  gtk_stack_add_named (GTK_STACK (self->pages), box, id);
}

static void
add_pages (EmRegisterWindow *self)
{
  gtk_stack_add_named (GTK_STACK (self->pages), self->table, "table");
  add_empty (self, "empty", _("Where does the shop keep its quotes?"),
             _("Save quotes into one folder, on this machine or a shared one. Here they are found again by number, customer, tool and words, and counted: what was won, and how long jobs took."),
             _("_Choose the folder"), on_choose_folder);
  add_empty (self, "reading", _("Reading the shop’s quotes"),
             _("Each file is read and priced once. After that only what is new or changed is looked at."), NULL, NULL);
  add_empty (self, "unread", _("The folder was not looked through"), _("Quotes are listed once each file has been looked at."),
             _("Look _again"), on_rescan);
  add_empty (self, "none", _("No quote is like this"),
             _("All words have to occur in a quote, in whatever case: in its number, customer, tool, features or the customer’s notes. A date is written as 2026-03."),
             _("Show _all quotes"), on_show_all);
  add_empty (self, "bare", _("No quotes lie here yet"), _("Save a quote into this folder and it is listed here, or choose the folder that has them."),
             _("_Choose the folder"), on_choose_folder);
}

static GtkWidget *
foot_new (EmRegisterWindow *self)
{
  GtkWidget *foot = gtk_grid_new (), *words = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2);
  GtkWidget *again = gtk_button_new_from_icon_name ("view-refresh-symbolic"), *folder = gtk_button_new_from_icon_name ("folder-open-symbolic");

  self->summary = label_new (NULL, "figure");
  /* GTK asks how high a window has to be with every text as narrow as it may get. */
  gtk_label_set_width_chars (GTK_LABEL (self->summary), SUMMARY_CHARS);
  gtk_widget_set_tooltip_text (self->summary, _("Of a quote and its revisions the latest one that was decided counts."));
  self->folder_label = label_new (NULL, "remark");
  gtk_label_set_wrap (GTK_LABEL (self->folder_label), FALSE);
  gtk_label_set_ellipsize (GTK_LABEL (self->folder_label), PANGO_ELLIPSIZE_MIDDLE);
  self->progress = gtk_progress_bar_new ();
  gtk_progress_bar_set_show_text (GTK_PROGRESS_BAR (self->progress), TRUE);
  gtk_widget_set_valign (self->progress, GTK_ALIGN_CENTER);
  self->cancel_button = gtk_button_new_with_mnemonic (_("S_top"));
  gtk_widget_set_hexpand (words, TRUE);
  gtk_widget_set_valign (words, GTK_ALIGN_CENTER);
  gtk_box_append (GTK_BOX (words), self->summary);
  gtk_box_append (GTK_BOX (words), self->folder_label);
  gtk_widget_set_tooltip_text (again, _("Look through the folder again (F5)"));
  gtk_widget_set_tooltip_text (folder, _("Another folder"));
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->progress), GTK_ACCESSIBLE_PROPERTY_LABEL, _("Reading quotes"), -1);
  gtk_accessible_update_property (GTK_ACCESSIBLE (again), GTK_ACCESSIBLE_PROPERTY_LABEL, _("Look through the folder again"), -1);
  gtk_accessible_update_property (GTK_ACCESSIBLE (folder), GTK_ACCESSIBLE_PROPERTY_LABEL, _("Another folder"), -1);
  GtkWidget *parts[] = { words, self->progress, self->cancel_button, again, folder };
  for (gsize i = 0; i < G_N_ELEMENTS (parts); i++)
    {
      gtk_widget_set_valign (parts[i], GTK_ALIGN_CENTER);
      gtk_grid_attach (GTK_GRID (foot), parts[i], (int) i, 0, 1, 1);
    }
  gtk_grid_set_column_spacing (GTK_GRID (foot), 10);
  gtk_widget_add_css_class (foot, "book-foot");
  gtk_actionable_set_action_name (GTK_ACTIONABLE (again), "register.again");
  g_signal_connect_swapped (folder, "clicked", G_CALLBACK (on_choose_folder), self);
  g_signal_connect_swapped (self->cancel_button, "clicked", G_CALLBACK (on_cancel), self);
  return foot;
}

static void
em_register_window_init (EmRegisterWindow *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0), *row;

  self->actions = g_simple_action_group_new ();
  g_action_map_add_action_entries (G_ACTION_MAP (self->actions), entries, G_N_ELEMENTS (entries), self);
  gtk_widget_insert_action_group (GTK_WIDGET (self), "register", G_ACTION_GROUP (self->actions));
  self->table = em_register_table_new ();
  self->panel = em_register_panel_new ();
  self->pages = gtk_stack_new ();
  add_pages (self);
  self->filter = em_register_filter_new ();
  row = em_beside_new (self->pages, self->panel, 0, TABLE_SHARE_PERCENT);
  gtk_widget_set_vexpand (row, TRUE);
  gtk_box_append (GTK_BOX (box), self->filter);
  gtk_box_append (GTK_BOX (box), row);
  self->undo = em_register_undo_new ();
  gtk_box_append (GTK_BOX (box), self->undo);
  gtk_box_append (GTK_BOX (box), foot_new (self));
  gtk_window_set_child (GTK_WINDOW (self), box);
  gtk_window_set_title (GTK_WINDOW (self), _("Past quotes"));
  em_settings_put_size (GTK_WINDOW (self), "register-width", "register-height");
  em_application_make_closable (GTK_WINDOW (self));
  gtk_widget_add_css_class (GTK_WIDGET (self), "estimend");
  show_progress (self);
  on_sorted (self);
  g_signal_connect (self, "notify::is-active", G_CALLBACK (on_active), NULL);
  g_signal_connect_swapped (self->filter, "changed", G_CALLBACK (on_query), self);
  g_signal_connect_swapped (self->filter, "sorted", G_CALLBACK (on_order_chosen), self);
  g_signal_connect_swapped (self->filter, "down", G_CALLBACK (on_down), self);
  g_signal_connect_swapped (self->filter, "activate", G_CALLBACK (em_register_window_open), self);
  g_signal_connect_swapped (self->table, "sorted", G_CALLBACK (on_sorted), self);
  g_signal_connect_swapped (self->table, "selected", G_CALLBACK (on_selected), self);
  g_signal_connect_swapped (self->table, "activated", G_CALLBACK (em_register_window_open), self);
  g_signal_connect_swapped (self->panel, "state", G_CALLBACK (on_state), self);
  g_signal_connect_object (self->undo, "written", G_CALLBACK (on_written), self, G_CONNECT_SWAPPED);
}

EmRegisterWindow *
em_register_window_present (EmApplication *application)
{
  EmRegisterWindow *self = NULL;

  for (GList *window = gtk_application_get_windows (GTK_APPLICATION (application)); window != NULL && self == NULL; window = window->next)
    if (EM_IS_REGISTER_WINDOW (window->data))
      self = window->data;
  if (self == NULL)
    {
      self = g_object_new (EM_TYPE_REGISTER_WINDOW, "application", application, NULL);
      self->application = application;
    }
  rescan (self);
  gtk_window_present (GTK_WINDOW (self));
  em_register_filter_focus (EM_REGISTER_FILTER (self->filter));
  return self;
}

gboolean
em_register_window_is_busy (EmRegisterWindow *self)
{
  return self->scan != NULL || is_writing (self);
}

void
em_register_window_search (EmRegisterWindow *self, const char *text)
{
  em_register_filter_set_text (EM_REGISTER_FILTER (self->filter), text);
}

void
em_register_window_sort (EmRegisterWindow *self, const char *column, gboolean is_descending)
{
  em_register_table_sort (EM_REGISTER_TABLE (self->table), column, is_descending);
}

guint
em_register_window_count (EmRegisterWindow *self)
{
  return em_register_table_count (EM_REGISTER_TABLE (self->table));
}

void
em_register_window_select (EmRegisterWindow *self, guint row)
{
  em_register_table_select (EM_REGISTER_TABLE (self->table), row);
}

const EmRegisterEntry *
em_register_window_get_entry (EmRegisterWindow *self, guint row)
{
  guint index = em_register_table_get_index (EM_REGISTER_TABLE (self->table), row);

  return index != G_MAXUINT ? em_register_get_entry (self->reg, index) : NULL;
}

const EmRegisterEntry *
em_register_window_get_selected (EmRegisterWindow *self)
{
  g_autofree char *path = NULL;

  return selected_entry (self, &path);
}

const char *
em_register_window_get_page (EmRegisterWindow *self)
{
  return gtk_stack_get_visible_child_name (GTK_STACK (self->pages));
}

const char *
em_register_window_get_summary (EmRegisterWindow *self)
{
  return gtk_label_get_text (GTK_LABEL (self->summary));
}

const char *
em_register_window_get_changes (EmRegisterWindow *self)
{
  return em_register_panel_get_changes (EM_REGISTER_PANEL (self->panel));
}

const char *
em_register_window_get_done (EmRegisterWindow *self)
{
  return em_register_undo_get_said (EM_REGISTER_UNDO (self->undo));
}
