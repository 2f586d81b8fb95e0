/* em-book-window: the shop's rate book and metals.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-book-window.h"

#include "em-book-pages.h"
#include "em-csv.h"
#include "em-price-report.h"
#include "em-settings.h"
#include "em-words.h"

#include <glib/gi18n.h>

struct _EmBookWindow
{
  GtkWindow parent_instance;

  EmApplication *application;   /* borrowed: it owns all windows */
  EmDraft       *draft;         /* owned */
  EmWindow      *quote_window;  /* weak: of the quote whose effect is shown */
  GtkWidget     *row, *stack, *effect, *trouble, *keep_button, *discard_button;
  GActionMap    *actions;       /* borrowed from the window itself */
  GtkWidget     *import_button; /* of the present stack */
  GtkFileChooserNative *chooser;   /* owned */
  gboolean       is_closing;    /* asked and answered, or to go once all is kept */
  gboolean       is_importing;
};

G_DEFINE_FINAL_TYPE (EmBookWindow, em_book_window, GTK_TYPE_WINDOW)

/* ---- the effect on the open quote ---- */

static void
append_signed (EmBookWindow *self, GString *text, gint64 minor)
{
  g_autofree char *amount = em_words_money_bare (minor, &em_draft_get_rates (self->draft)->currency);

  g_string_append_printf (text, "%s%s", minor > 0 ? "+" : "", amount);
}

static void
append_part (EmBookWindow *self, GString *text, const char *name, gint64 minor)
{
  if (minor == 0)
    return;
  g_string_append_printf (text, " · %s ", name);
  append_signed (self, text, minor);
}

static char *
effect_text (EmBookWindow *self)
{
  const EmEffect *effect = em_draft_get_effect (self->draft);
  const EmCurrency *currency = &em_draft_get_rates (self->draft)->currency;
  g_autoptr (GString) text = g_string_new (NULL);

  if (em_draft_is_keeping (self->draft))
    return g_strdup (_("Being kept…"));
  if (!effect->has_quote)
    return g_strdup (_("No quote with features is open, so there is no price to compare."));
  if (effect->is_sent)
    return g_strdup (_("The open quote was sent and keeps the rates of that day."));
  /* Of an entry that can't be read the book holds what stood there before its last letters. */
  if (!effect->is_reckoned || em_draft_has_problems (self->draft))
    return g_strdup (_("The open quote can’t be priced with this."));
  if (!em_draft_is_changed (self->draft))
    return g_strdup (_("What you change shows its effect on the open quote here, before it is kept."));
  g_autofree char *before = em_words_money_bare (effect->before_minor, currency), *after = em_words_money (effect->after_minor, currency);
  g_autofree char *title = em_document_dup_title (em_draft_get_document (self->draft));
  /* Translators: the open quote's number and customer, its price before, its price after. */
  g_string_append_printf (text, _("%s: %s → %s ("), title, before, after);
  append_signed (self, text, effect->after_minor - effect->before_minor);
  g_string_append (text, ")");
  for (int i = 0; i < EM_N_MONEY; i++)
    append_part (self, text, em_words (em_moneys[i].name), effect->money_minor[i]);
  append_part (self, text, _("Surcharges, discount and rounding"), effect->other_minor);
  append_part (self, text, _("Taxes"), effect->tax_minor);
  if (effect->faults_after > effect->faults_before)
    {
      int n = effect->faults_after - effect->faults_before;
      g_string_append_printf (text, ngettext (" · %d feature more can’t be priced", " · %d features more can’t be priced", (gulong) n), n);
    }
  return g_string_free (g_steal_pointer (&text), FALSE);
}

static void
enable (EmBookWindow *self, const char *action, gboolean is_enabled)
{
  g_simple_action_set_enabled (G_SIMPLE_ACTION (g_action_map_lookup_action (self->actions, action)), is_enabled);
}

static void
on_draft_changed (EmBookWindow *self)
{
  g_autofree char *effect = effect_text (self), *trouble = em_draft_dup_trouble (self->draft);
  gboolean is_changed = em_draft_is_changed (self->draft), is_keeping = em_draft_is_keeping (self->draft);

  gtk_label_set_text (GTK_LABEL (self->effect), effect);
  gtk_label_set_text (GTK_LABEL (self->trouble), trouble != NULL ? trouble : "");
  gtk_widget_set_visible (self->trouble, trouble != NULL);
  gtk_widget_set_sensitive (self->keep_button, is_changed && trouble == NULL && !is_keeping);
  gtk_widget_set_sensitive (self->discard_button, (is_changed || trouble != NULL) && !is_keeping);
  enable (self, "undo", em_draft_can_undo (self->draft));
  enable (self, "redo", em_draft_can_redo (self->draft));
}

static void
say (EmBookWindow *self, const char *problem)
{
  gtk_label_set_text (GTK_LABEL (self->trouble), problem);
  gtk_widget_set_visible (self->trouble, TRUE);
}

typedef struct
{
  EmBookWindow  *window;        /* owned */
  EmApplication *application;   /* owned, and held until all is on the disk */
} EmKeeping;

static void
on_kept (GObject *source, GAsyncResult *result, gpointer data)
{
  EmKeeping *keeping = data;
  g_autoptr (EmBookWindow) self = keeping->window;
  g_autoptr (EmApplication) application = keeping->application;
  EmBasis *basis = em_draft_get_basis (EM_DRAFT (source));
  g_autoptr (GError) error = NULL;
  gboolean is_kept = em_draft_keep_finish (EM_DRAFT (source), result, &error), is_closing = self->is_closing;
  gboolean is_part_kept = basis != em_application_get_basis (application);

  g_free (keeping);
  if (is_part_kept)
    em_application_set_basis (application, basis);
  g_application_release (G_APPLICATION (application));
  self->is_closing = FALSE;
  if (self->draft == NULL)
    return;
  if (!is_kept)
    {
      g_autofree char *sentence = g_strdup_printf (is_part_kept ? _("The metals are kept, the rate book is not. %s") : _("Not kept. %s"), error->message);
      say (self, sentence);
    }
  else if (is_closing)
    gtk_window_close (GTK_WINDOW (self));
}

void
em_book_window_keep (EmBookWindow *self)
{
  EmKeeping *keeping;

  if (em_draft_is_keeping (self->draft))
    return;
  keeping = g_new0 (EmKeeping, 1);
  keeping->window = g_object_ref (self);
  keeping->application = g_object_ref (self->application);
  g_application_hold (G_APPLICATION (self->application));
  em_draft_keep_async (self->draft, on_kept, keeping);
}

/* ---- pages ---- */

static void
on_import_chosen (GtkNativeDialog *dialog, int response, EmBookWindow *self)
{
  g_autoptr (GFile) file = response == GTK_RESPONSE_ACCEPT ? gtk_file_chooser_get_file (GTK_FILE_CHOOSER (dialog)) : NULL;

  if (file != NULL)
    em_book_window_import (self, file);
}

static void
on_import (EmBookWindow *self)
{
  /* Whatever their case; programs call a table with tabs by all of these. */
  static const char *const suffixes[] = { "csv", "tsv", "txt" };
  g_autoptr (GtkFileFilter) filter = gtk_file_filter_new ();

  g_clear_object (&self->chooser);
  self->chooser = gtk_file_chooser_native_new (_("Open a supplier’s price list"), GTK_WINDOW (self), GTK_FILE_CHOOSER_ACTION_OPEN, _("_Open"), _("_Cancel"));
  gtk_file_filter_set_name (filter, _("Price lists (CSV)"));
  for (gsize i = 0; i < G_N_ELEMENTS (suffixes); i++)
    gtk_file_filter_add_suffix (filter, suffixes[i]);
  gtk_file_chooser_add_filter (GTK_FILE_CHOOSER (self->chooser), filter);
  g_signal_connect (self->chooser, "response", G_CALLBACK (on_import_chosen), self);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (self->chooser));
}

static GtkWidget *
wires_new (EmBookWindow *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0), *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 10);
  GtkWidget *button = self->import_button = gtk_button_new_with_mnemonic (_("_Import a price list…"));
  GtkWidget *remark = em_page_remark (_("A CSV table with columns: reference or wire; size_mm or size_in; price; per (metre, gram, stick)."));

  gtk_widget_set_hexpand (remark, TRUE);
  gtk_widget_set_valign (remark, GTK_ALIGN_CENTER);
  gtk_widget_add_css_class (row, "book-head");
  gtk_box_append (GTK_BOX (row), remark);
  gtk_box_append (GTK_BOX (row), button);
  gtk_widget_set_sensitive (button, !self->is_importing);
  gtk_widget_set_valign (button, GTK_ALIGN_CENTER);
  gtk_box_append (GTK_BOX (box), row);
  gtk_box_append (GTK_BOX (box), em_wires_page_new (self->draft));
  g_signal_connect_swapped (button, "clicked", G_CALLBACK (on_import), self);
  return box;
}

static void
add_page (EmBookWindow *self, GtkWidget *page, const char *id, const char *name)
{
  gtk_stack_add_titled (GTK_STACK (self->stack), page, id, name);
}

/* A new stack each time: in GTK 4.8 the sidebar of one that loses its pages falls over them. */
static void
build_stack (EmBookWindow *self)
{
  GtkWidget *sidebar = gtk_stack_sidebar_new (), *child;

  while ((child = gtk_widget_get_first_child (self->row)) != NULL)
    gtk_box_remove (GTK_BOX (self->row), child);
  self->stack = gtk_stack_new ();
  gtk_widget_set_hexpand (self->stack, TRUE);
  gtk_widget_set_vexpand (self->stack, TRUE);
  gtk_stack_sidebar_set_stack (GTK_STACK_SIDEBAR (sidebar), GTK_STACK (self->stack));
  gtk_box_append (GTK_BOX (self->row), sidebar);
  gtk_box_append (GTK_BOX (self->row), self->stack);
}

static void
build_pages (EmBookWindow *self)
{
  build_stack (self);
  add_page (self, em_figures_page_new (self->draft, "money", _("What an hour costs, and what is added to it. The margin is a share of the price.")), "money", _("Rates"));
  add_page (self, em_figures_page_new (self->draft, "minutes", _("Minutes of each task. Those of a setting or a tool are counted once for it.")), "minutes", _("Minutes"));
  add_page (self, em_figures_page_new (self->draft, "deposit", _("How metal is built up, and how wire is bought.")), "deposit", _("Deposit"));
  add_page (self, em_machines_page_new (self->draft), "machines", _("Machines"));
  add_page (self, em_bases_page_new (self->draft), "bases", _("Base metals"));
  add_page (self, wires_new (self), "wires", _("Wires"));
  add_page (self, em_jobs_page_new (self->draft, em_application_get_basis (self->application)), "jobs", _("Past jobs"));
  add_page (self, em_taxes_page_new (self->draft), "taxes", _("Taxes"));
  add_page (self, em_shop_page_new (self->draft), "shop", _("The shop"));
}

void
em_book_window_discard (EmBookWindow *self)
{
  g_autofree char *page = g_strdup (gtk_stack_get_visible_child_name (GTK_STACK (self->stack)));

  em_draft_discard (self->draft);
  /* Entries that could not be read would otherwise stand there still. */
  build_pages (self);
  em_book_window_show_page (self, page);
  on_draft_changed (self);
}

/* ---- steps back and forth ---- */

static void
on_step (GSimpleAction *action, GVariant *target, gpointer data)
{
  EmBookWindow *self = data;

  (void) target;
  if (g_str_equal (g_action_get_name (G_ACTION (action)), "undo"))
    em_draft_undo (self->draft);
  else
    em_draft_redo (self->draft);
}

/* What changed is in sight: its page first, as pages look for the record and the keyboard goes to what is seen only. */
static void
on_stepped (EmBookWindow *self, const char *where)
{
  g_auto (GStrv) parts = where != NULL ? g_strsplit (where, "/", 2) : NULL;

  if (parts != NULL)
    em_book_window_show_page (self, parts[0]);
}

/* After the pages have shown the record. */
static void
on_step_shown (EmBookWindow *self, const char *where)
{
  if (where != NULL)
    em_page_focus_field (gtk_stack_get_visible_child (GTK_STACK (self->stack)), where);
}

/* Who comes back to a field begins another step. */
static void
on_focus (EmBookWindow *self)
{
  if (self->draft != NULL)
    em_draft_break (self->draft);
}

/* ---- closing ---- */

enum { RESPONSE_DISCARD = 1, RESPONSE_KEEP };

static void
on_close_answered (GtkDialog *dialog, int response, EmBookWindow *self)
{
  em_application_end_dialog (dialog);
  self->is_closing = response == RESPONSE_DISCARD || response == RESPONSE_KEEP;
  if (response == RESPONSE_DISCARD)
    gtk_window_close (GTK_WINDOW (self));
  else if (response == RESPONSE_KEEP)
    em_book_window_keep (self);
}

static gboolean
em_book_window_close_request (GtkWindow *window)
{
  EmBookWindow *self = EM_BOOK_WINDOW (window);
  GtkWidget *dialog;

  em_settings_keep_size (window, "book-width", "book-height");
  /* It goes when all is on the disk, and stays with what can't be. */
  if (em_draft_is_keeping (self->draft))
    {
      self->is_closing = TRUE;
      return TRUE;
    }
  if (self->is_closing || !em_draft_is_changed (self->draft))
    return GTK_WINDOW_CLASS (em_book_window_parent_class)->close_request (window);
  dialog = gtk_message_dialog_new (window, GTK_DIALOG_MODAL | GTK_DIALOG_DESTROY_WITH_PARENT, GTK_MESSAGE_QUESTION, GTK_BUTTONS_NONE,
                                   "%s", _("Keep the changed rate book and metals?"));
  gtk_message_dialog_format_secondary_text (GTK_MESSAGE_DIALOG (dialog), "%s", gtk_label_get_text (GTK_LABEL (self->effect)));
  gtk_dialog_add_buttons (GTK_DIALOG (dialog), _("_Throw away"), RESPONSE_DISCARD, _("_Cancel"), GTK_RESPONSE_CANCEL, _("_Keep"), RESPONSE_KEEP, NULL);
  gtk_dialog_set_response_sensitive (GTK_DIALOG (dialog), RESPONSE_KEEP, gtk_widget_get_sensitive (self->keep_button));
  /* Enter throws nothing away. */
  gtk_dialog_set_default_response (GTK_DIALOG (dialog), gtk_widget_get_sensitive (self->keep_button) ? RESPONSE_KEEP : GTK_RESPONSE_CANCEL);
  gtk_widget_add_css_class (gtk_dialog_get_widget_for_response (GTK_DIALOG (dialog), RESPONSE_DISCARD), "destructive-action");
  g_signal_connect (dialog, "response", G_CALLBACK (on_close_answered), self);
  gtk_window_present (GTK_WINDOW (dialog));
  return TRUE;
}

static void
em_book_window_dispose (GObject *object)
{
  EmBookWindow *self = EM_BOOK_WINDOW (object);

  if (self->draft != NULL)
    g_signal_handlers_disconnect_by_data (self->draft, self);
  g_clear_weak_pointer (&self->quote_window);
  g_clear_object (&self->draft);
  g_clear_object (&self->chooser);
  G_OBJECT_CLASS (em_book_window_parent_class)->dispose (object);
}

static void
em_book_window_class_init (EmBookWindowClass *class)
{
  G_OBJECT_CLASS (class)->dispose = em_book_window_dispose;
  GTK_WINDOW_CLASS (class)->close_request = em_book_window_close_request;
}

static GtkWidget *
footer_new (EmBookWindow *self)
{
  GtkWidget *footer = gtk_grid_new (), *words = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2);

  self->effect = em_page_remark (NULL);
  self->trouble = em_page_remark (NULL);
  gtk_label_set_max_width_chars (GTK_LABEL (self->effect), 40);
  gtk_widget_remove_css_class (self->effect, "quiet");
  gtk_widget_add_css_class (self->effect, "figure");
  gtk_widget_remove_css_class (self->trouble, "quiet");
  gtk_widget_add_css_class (self->trouble, "problem");
  gtk_widget_set_hexpand (words, TRUE);
  gtk_box_append (GTK_BOX (words), self->effect);
  gtk_box_append (GTK_BOX (words), self->trouble);
  self->discard_button = gtk_button_new_with_mnemonic (_("_Discard"));
  self->keep_button = gtk_button_new_with_mnemonic (_("_Keep"));
  gtk_widget_add_css_class (self->keep_button, "call");
  GtkWidget *parts[] =
  {
    words, em_step_button_new (EM_STEP_BACK, FALSE), em_step_button_new (EM_STEP_FORTH, FALSE), self->discard_button, self->keep_button,
  };
  gtk_actionable_set_action_name (GTK_ACTIONABLE (parts[1]), "win.undo");
  gtk_actionable_set_action_name (GTK_ACTIONABLE (parts[2]), "win.redo");
  /* A grid, as a GtkBox asks a text that wraps how high it is at widths it never gets. */
  for (gsize i = 0; i < G_N_ELEMENTS (parts); i++)
    {
      gtk_widget_set_valign (parts[i], GTK_ALIGN_CENTER);
      gtk_grid_attach (GTK_GRID (footer), parts[i], (int) i, 0, 1, 1);
    }
  gtk_grid_set_column_spacing (GTK_GRID (footer), 10);
  gtk_widget_add_css_class (footer, "book-foot");
  g_signal_connect_swapped (self->discard_button, "clicked", G_CALLBACK (em_book_window_discard), self);
  g_signal_connect_swapped (self->keep_button, "clicked", G_CALLBACK (em_book_window_keep), self);
  return footer;
}

static void
em_book_window_init (EmBookWindow *self)
{
  static const GActionEntry entries[] = { { .name = "undo", .activate = on_step }, { .name = "redo", .activate = on_step } };
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  self->row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0);
  gtk_box_append (GTK_BOX (box), self->row);
  gtk_box_append (GTK_BOX (box), footer_new (self));
  gtk_window_set_child (GTK_WINDOW (self), box);
  gtk_window_set_title (GTK_WINDOW (self), _("Rate book and metals"));
  em_settings_put_size (GTK_WINDOW (self), "book-width", "book-height");
  self->actions = em_application_make_closable (GTK_WINDOW (self));
  g_action_map_add_action_entries (self->actions, entries, G_N_ELEMENTS (entries), self);
  g_signal_connect (self, "notify::focus-widget", G_CALLBACK (on_focus), NULL);
  gtk_widget_add_css_class (GTK_WIDGET (self), "estimend");
}

/* A quote that is closed is not kept alive by what would have become of its price. */
static void
on_quote_closed (EmBookWindow *self)
{
  if (self->draft != NULL)
    em_draft_set_document (self->draft, NULL);
}

static void
follow_quote (EmBookWindow *self, EmWindow *window)
{
  if (self->quote_window != NULL)
    g_signal_handlers_disconnect_by_func (self->quote_window, on_quote_closed, self);
  g_set_weak_pointer (&self->quote_window, window);
  if (window != NULL)
    g_signal_connect_object (window, "destroy", G_CALLBACK (on_quote_closed), self, G_CONNECT_SWAPPED);
  em_draft_set_document (self->draft, window != NULL ? em_window_get_document (window) : NULL);
}

static EmBookWindow *
find_open (EmApplication *application)
{
  for (GList *window = gtk_application_get_windows (GTK_APPLICATION (application)); window != NULL; window = window->next)
    if (EM_IS_BOOK_WINDOW (window->data))
      return window->data;
  return NULL;
}

EmBookWindow *
em_book_window_present (EmApplication *application, EmWindow *window, const char *page)
{
  EmBookWindow *self = find_open (application);

  if (self == NULL)
    {
      self = g_object_new (EM_TYPE_BOOK_WINDOW, "application", application, NULL);
      self->application = application;
      self->draft = em_draft_new (em_application_get_basis (application), NULL);
      if (self->draft == NULL)
        {
          gtk_window_destroy (GTK_WINDOW (self));
          return NULL;
        }
      g_signal_connect_swapped (self->draft, "stepped", G_CALLBACK (on_stepped), self);
      g_signal_connect_data (self->draft, "stepped", G_CALLBACK (on_step_shown), self, NULL, G_CONNECT_SWAPPED | G_CONNECT_AFTER);
      build_pages (self);
      g_signal_connect_swapped (self->draft, "changed", G_CALLBACK (on_draft_changed), self);
      on_draft_changed (self);
    }
  if (window != NULL || self->quote_window == NULL)
    follow_quote (self, window);
  em_book_window_show_page (self, page);
  gtk_window_present (GTK_WINDOW (self));
  return self;
}

EmDraft *
em_book_window_get_draft (EmBookWindow *self)
{
  return self->draft;
}

void
em_book_window_show_page (EmBookWindow *self, const char *page)
{
  if (page != NULL && gtk_stack_get_child_by_name (GTK_STACK (self->stack), page) != NULL)
    gtk_stack_set_visible_child_name (GTK_STACK (self->stack), page);
}

const char *
em_book_window_get_effect (EmBookWindow *self)
{
  return gtk_label_get_text (GTK_LABEL (self->effect));
}

const char *
em_book_window_get_trouble (EmBookWindow *self)
{
  return gtk_widget_get_visible (self->trouble) ? gtk_label_get_text (GTK_LABEL (self->trouble)) : NULL;
}

/* ---- a supplier's list ---- */

typedef struct
{
  GFile   *file;    /* owned */
  EmBasis *basis;   /* owned: the draft as it stands */
} EmImport;

static void
free_import (gpointer data)
{
  EmImport *import = data;

  g_object_unref (import->file);
  g_clear_pointer (&import->basis, em_basis_unref);
  g_free (import);
}

/* Of a place without paths, no more than shows that it is too much. */
static GBytes *
read_far (GFile *file, GError **error)
{
  g_autoptr (GFileInputStream) stream = g_file_read (file, NULL, error);
  g_autofree char *buffer = g_malloc (EM_CSV_BYTES_MAX + 1);
  gsize n = 0;

  if (stream == NULL || !g_input_stream_read_all (G_INPUT_STREAM (stream), buffer, EM_CSV_BYTES_MAX + 1, &n, NULL, error))
    return NULL;
  return g_bytes_new (buffer, n);
}

static void
import_in_thread (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  const EmImport *import = data;
  const EmCatalogue *catalogue = em_basis_get_catalogue (import->basis);
  const EmCurrency *currency = &em_basis_get_rates (import->basis)->currency;
  const char *path = g_file_peek_path (import->file);
  g_autofree char *name = g_file_get_basename (import->file);
  g_autoptr (GBytes) bytes = NULL;
  GError *error = NULL;
  EmPriceList *list = NULL;

  (void) source;
  (void) cancellable;
  if (path != NULL)
    list = em_price_list_load (path, catalogue, currency, &error);
  else if ((bytes = read_far (import->file, &error)) != NULL)
    list = em_price_list_parse (bytes, name, catalogue, currency, &error);
  if (list == NULL)
    g_task_return_error (task, error);
  else
    g_task_return_pointer (task, list, (GDestroyNotify) em_price_list_free);
}

static void
set_importing (EmBookWindow *self, gboolean is_importing)
{
  self->is_importing = is_importing;
  gtk_widget_set_sensitive (self->import_button, !is_importing);
}

static void
on_imported (GObject *source, GAsyncResult *result, gpointer data)
{
  EmBookWindow *self = EM_BOOK_WINDOW (source);
  g_autoptr (GError) error = NULL;
  EmPriceList *list = g_task_propagate_pointer (G_TASK (result), &error);

  (void) data;
  if (self->draft == NULL)
    {
      g_clear_pointer (&list, em_price_list_free);
      return;
    }
  set_importing (self, FALSE);
  if (list == NULL)
    say (self, error->message);
  else
    gtk_window_present (GTK_WINDOW (em_price_report_new (GTK_WINDOW (self), self->draft, list)));
}

void
em_book_window_import (EmBookWindow *self, GFile *file)
{
  g_autoptr (EmBasis) basis = em_draft_snapshot (self->draft);
  g_autoptr (GTask) task = g_task_new (self, NULL, on_imported, NULL);
  EmImport *import;

  if (basis == NULL)
    {
      say (self, _("Not enough memory"));
      return;
    }
  if (self->is_importing)
    return;
  import = g_new0 (EmImport, 1);
  import->file = g_object_ref (file);
  import->basis = g_steal_pointer (&basis);
  g_task_set_task_data (task, import, free_import);
  set_importing (self, TRUE);
  g_task_run_in_thread (task, import_in_thread);
}
