/* em-window-files: opening, saving, printing and closing.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-window-private.h"

#include "em-application.h"
#include "em-export.h"
#include "em-number.h"
#include "em-print.h"
#include "em-save.h"
#include "em-settings.h"

#include <glib/gi18n.h>

enum { NOTES_MAX = 4 * 1024 * 1024 };

void
em_window_fill_recent (EmWindow *self)
{
  g_auto (GStrv) recent = g_settings_get_strv (em_settings_get (), "recent-files");

  g_menu_remove_all (self->recent_menu);
  for (char **path = recent; *path != NULL; path++)
    {
      g_autoptr (GMenuItem) item = NULL;
      g_autofree char *name = g_filename_display_basename (*path);
      g_auto (GStrv) parts = g_strsplit (name, "_", -1);
      g_autofree char *label = g_strjoinv ("__", parts);
      item = g_menu_item_new (label, NULL);
      g_menu_item_set_action_and_target (item, "app.open-path", "s", *path);
      g_menu_append_item (self->recent_menu, item);
    }
}

static void
say_error (EmWindow *self, const char *format, const char *name, const GError *error)
{
  g_autofree char *sentence = g_strdup_printf ("%s: %s %s", format, name, error->message);

  em_window_say (self, sentence);
}

/* Text and DXF files are the customer's words; anything else is taken for a quote. */

typedef struct
{
  EmWindow     *window;        /* owned */
  GCancellable *cancellable;   /* owned */
} EmOpening;

static void
free_opening (EmOpening *opening)
{
  g_object_unref (opening->window);
  g_object_unref (opening->cancellable);
  g_free (opening);
}

G_DEFINE_AUTOPTR_CLEANUP_FUNC (EmOpening, free_opening)

static gboolean
has_suffix (GFile *file, const char *suffix)
{
  g_autofree char *name = g_file_get_basename (file);
  g_autofree char *lower = name != NULL ? g_ascii_strdown (name, -1) : NULL;

  return lower != NULL && g_str_has_suffix (lower, suffix);
}

static void
say_too_long (EmWindow *window)
{
  em_window_say (window, _("That file is too long for a customer’s notes."));
}

/* Stopped by hand, which needs no words, or told why not. */
static void
say_unread (EmWindow *window, GFile *file, const GError *error)
{
  g_autofree char *name = g_file_get_basename (file);

  if (!g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED))
    say_error (window, _("Could not read"), name, error);
}

static void
on_notes_loaded (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (EmOpening) opening = data;
  g_autoptr (GError) error = NULL;
  g_autofree char *content = NULL, *name = g_file_get_basename (G_FILE (source));
  gsize length;
  EmUnits units = EM_UNITS_METRIC;
  gboolean has_units = FALSE, is_read = g_file_load_contents_finish (G_FILE (source), result, &content, &length, NULL, &error);

  if (opening->window->document == NULL)
    return;
  em_window_end_work (opening->window);
  if (!is_read)
    {
      say_unread (opening->window, G_FILE (source), error);
      return;
    }
  if (length > NOTES_MAX)
    {
      say_too_long (opening->window);
      return;
    }
  if (has_suffix (G_FILE (source), ".dxf"))
    {
      char *text = em_dxf_text (content, length, &units, &has_units, &error);
      if (text == NULL)
        {
          say_error (opening->window, _("Could not read the drawing"), name, error);
          return;
        }
      g_free (content);
      content = text;
    }
  em_words_pane_take_text (EM_WORDS_PANE (opening->window->words), content, has_units, units);
}

/* Told before it is read, where that can be: a gigabyte would have to come whole first. */
static void
on_notes_measured (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (EmOpening) opening = data;
  g_autoptr (GError) error = NULL;
  g_autoptr (GFileInfo) info = g_file_query_info_finish (G_FILE (source), result, &error);
  GCancellable *cancellable = opening->cancellable;

  if (opening->window->document == NULL)
    return;
  if (info != NULL && g_file_info_get_size (info) <= NOTES_MAX)
    {
      g_file_load_contents_async (G_FILE (source), cancellable, on_notes_loaded, g_steal_pointer (&opening));
      return;
    }
  em_window_end_work (opening->window);
  if (info == NULL)
    say_unread (opening->window, G_FILE (source), error);
  else
    say_too_long (opening->window);
}

static void
open_notes (EmWindow *self, GFile *file)
{
  EmOpening *opening = g_new0 (EmOpening, 1);
  g_autofree char *name = g_file_get_basename (file);
  g_autofree char *text = g_strdup_printf (_("Opening %s… Dismiss to stop."), name);

  opening->window = g_object_ref (self);
  opening->cancellable = g_cancellable_new ();
  em_window_begin_work (self, text, opening->cancellable);
  g_file_query_info_async (file, G_FILE_ATTRIBUTE_STANDARD_SIZE, G_FILE_QUERY_INFO_NONE, G_PRIORITY_DEFAULT, opening->cancellable,
                           on_notes_measured, opening);
}

void
em_window_open_file (EmWindow *self, GFile *file)
{
  if (has_suffix (file, ".txt") || has_suffix (file, ".dxf"))
    open_notes (self, file);
  else
    em_application_open_quote (EM_APPLICATION (gtk_window_get_application (GTK_WINDOW (self))), file, self);
}

static void
run_chooser (EmWindow *self, GtkFileChooserAction action, const char *title, const char *accept, GCallback callback)
{
  g_clear_object (&self->chooser);
  self->chooser = gtk_file_chooser_native_new (title, GTK_WINDOW (self), action, accept, _("_Cancel"));
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (self->chooser), TRUE);
  g_signal_connect (self->chooser, "response", callback, self);
}

static void
add_filter (GtkFileChooserNative *chooser, const char *name, const char *const *patterns)
{
  g_autoptr (GtkFileFilter) filter = gtk_file_filter_new ();

  gtk_file_filter_set_name (filter, name);
  for (; *patterns != NULL; patterns++)
    gtk_file_filter_add_pattern (filter, *patterns);
  gtk_file_chooser_add_filter (GTK_FILE_CHOOSER (chooser), filter);
}

static void
put_folder (EmWindow *self)
{
  g_autofree char *folder = g_settings_get_string (em_settings_get (), "shop-folder");
  g_autoptr (GFile) file = folder[0] != '\0' ? g_file_new_for_path (folder) : NULL;

  if (file != NULL)
    gtk_file_chooser_set_current_folder (GTK_FILE_CHOOSER (self->chooser), file, NULL);
}

static GFile *
chosen_file (GtkNativeDialog *dialog, int response)
{
  return response == GTK_RESPONSE_ACCEPT ? gtk_file_chooser_get_file (GTK_FILE_CHOOSER (dialog)) : NULL;
}

static void
on_open_chosen (GtkNativeDialog *dialog, int response, EmWindow *self)
{
  g_autoptr (GFile) file = chosen_file (dialog, response);

  if (file != NULL)
    em_window_open_file (self, file);
}

void
em_window_open_dialog (EmWindow *self)
{
  static const char *const quotes[] = { "*.estimend", NULL }, *const words[] = { "*.txt", "*.dxf", NULL }, *const all[] = { "*", NULL };

  run_chooser (self, GTK_FILE_CHOOSER_ACTION_OPEN, _("Open a quote or a customer’s notes"), _("_Open"), G_CALLBACK (on_open_chosen));
  add_filter (self->chooser, _("Quotes"), quotes);
  add_filter (self->chooser, _("Notes and drawings"), words);
  add_filter (self->chooser, _("All files"), all);
  put_folder (self);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (self->chooser));
}

enum { RESPONSE_OVER = 1, RESPONSE_COPY };

static void
on_changed_answered (GtkDialog *dialog, int response, EmWindow *self)
{
  em_application_end_dialog (dialog);
  if (response == RESPONSE_OVER)
    {
      em_document_allow_overwrite (self->document);
      em_window_save (self, FALSE);
    }
  else if (response == RESPONSE_COPY)
    em_window_save (self, TRUE);
  else
    self->is_closing = FALSE;
}

/* Somebody else saved the same file meanwhile. Neither's work goes without being asked. */
static void
ask_over_changed (EmWindow *self)
{
  g_autofree char *name = g_filename_display_basename (em_document_get_path (self->document));
  GtkWidget *dialog = gtk_message_dialog_new (GTK_WINDOW (self), GTK_DIALOG_MODAL | GTK_DIALOG_DESTROY_WITH_PARENT,
                                              GTK_MESSAGE_WARNING, GTK_BUTTONS_NONE, _("“%s” was changed by somebody else"), name);

  gtk_message_dialog_format_secondary_text (GTK_MESSAGE_DIALOG (dialog),
                                            _("The file is no longer what was opened here. Saving over it throws away what they wrote; a copy keeps both."));
  gtk_dialog_add_buttons (GTK_DIALOG (dialog), _("Save _over it"), RESPONSE_OVER, _("_Cancel"), GTK_RESPONSE_CANCEL,
                          _("Save a cop_y…"), RESPONSE_COPY, NULL);
  gtk_dialog_set_default_response (GTK_DIALOG (dialog), RESPONSE_COPY);
  gtk_widget_add_css_class (gtk_dialog_get_widget_for_response (GTK_DIALOG (dialog), RESPONSE_OVER), "destructive-action");
  g_signal_connect (dialog, "response", G_CALLBACK (on_changed_answered), self);
  gtk_window_present (GTK_WINDOW (dialog));
}

static void
on_saved (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (EmWindow) self = data;
  g_autoptr (GError) error = NULL;

  em_window_end_work (self);
  if (!em_document_save_finish (EM_DOCUMENT (source), result, &error))
    {
      if (g_error_matches (error, EM_FILE_ERROR, EM_FILE_ERROR_CHANGED))
        {
          ask_over_changed (self);
          return;
        }
      g_autofree char *sentence = g_strdup_printf (_("Not saved; your work is still here. %s"), error->message);
      self->is_closing = FALSE;
      em_window_say (self, sentence);
      return;
    }
  guint n_problems = em_document_get_problems (EM_DOCUMENT (source));
  if (n_problems > 0)
    {
      g_autofree char *sentence = g_strdup_printf (ngettext ("Saved, but %u entry can’t be read: the value before it was kept.",
                                                             "Saved, but %u entries can’t be read: the values before them were kept.", n_problems), n_problems);
      em_window_say (self, sentence);
    }
  em_settings_add_recent (em_document_get_path (EM_DOCUMENT (source)));
  em_window_fill_recent (self);
  /* What was changed meanwhile is asked about. */
  if (self->is_closing)
    {
      self->is_closing = FALSE;
      gtk_window_close (GTK_WINDOW (self));
    }
}

void
em_window_save_to (EmWindow *self, const char *path)
{
  EmWindow *other = em_application_find_path (EM_APPLICATION (gtk_window_get_application (GTK_WINDOW (self))), path);
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  g_autofree char *name = g_path_get_basename (path);

  /* Two windows on one file would each lose what the other saves. */
  if (other != NULL && other != self)
    {
      g_autofree char *sentence = g_strdup_printf (_("Not saved; your work is still here. “%s” is open in another window: close it there, or choose another name."), name);
      self->is_closing = FALSE;
      em_window_say (self, sentence);
      return;
    }
  g_autofree char *text = g_strdup_printf (_("Saving %s… Dismiss to stop."), name);
  em_window_begin_work (self, text, cancellable);
  em_document_save_async (self->document, path, cancellable, on_saved, g_object_ref (self));
}

static void
on_save_chosen (GtkNativeDialog *dialog, int response, EmWindow *self)
{
  g_autoptr (GFile) file = chosen_file (dialog, response);
  g_autofree char *path = file != NULL ? g_file_get_path (file) : NULL;

  if (path == NULL)
    {
      self->is_closing = FALSE;
      return;
    }
  if (!g_str_has_suffix (path, ".estimend"))
    {
      char *longer = g_strconcat (path, ".estimend", NULL);
      g_free (path);
      path = longer;
    }
  em_window_save_to (self, path);
}

/* A name that says what it is, fit for any file system. */
static char *
proposed_name (EmWindow *self, const char *suffix)
{
  g_autofree char *title = em_document_dup_title (self->document);

  g_strdelimit (title, "/\\:*?\"<>|", '-');
  return g_strconcat (title, suffix, NULL);
}

static void
ask_where (EmWindow *self)
{
  g_autofree char *name = proposed_name (self, ".estimend");

  run_chooser (self, GTK_FILE_CHOOSER_ACTION_SAVE, _("Save the quote"), _("_Save"), G_CALLBACK (on_save_chosen));
  gtk_file_chooser_set_current_name (GTK_FILE_CHOOSER (self->chooser), name);
  put_folder (self);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (self->chooser));
}

typedef struct
{
  EmWindow *window;     /* owned */
  gboolean  is_saving;  /* on to the save dialog */
} EmNumbering;

static void
on_numbered (GObject *source, GAsyncResult *result, gpointer data)
{
  EmNumbering *numbering = data;
  g_autoptr (EmWindow) self = numbering->window;
  gboolean is_saving = numbering->is_saving;
  g_autoptr (GError) error = NULL;
  g_autofree char *number = em_number_next_finish (result, &error);

  (void) source;
  g_free (numbering);
  if (self->document == NULL)
    return;
  em_window_end_work (self);
  if (number != NULL)
    {
      em_document_set_text (self->document, EM_QUOTE_NUMBER, number);
      em_document_break (self->document);
    }
  else if (error != NULL)
    say_error (self, _("No number could be given"), "", error);
  else if (!is_saving)
    em_window_say (self, _("The rate book has no pattern for quote numbers yet: give one under The shop."));
  if (is_saving)
    ask_where (self);
}

void
em_window_give_number (EmWindow *self, gboolean then_save)
{
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  g_autofree char *folder = g_settings_get_string (em_settings_get (), "shop-folder");
  EmNumbering *numbering = g_new0 (EmNumbering, 1);

  numbering->window = g_object_ref (self);
  numbering->is_saving = then_save;
  em_window_begin_work (self, _("Looking for the next number… Dismiss to stop."), cancellable);
  em_number_next_async (folder, em_application_get_basis (EM_APPLICATION (gtk_window_get_application (GTK_WINDOW (self)))), cancellable,
                        on_numbered, numbering);
}

void
em_window_save (EmWindow *self, gboolean as)
{
  const char *path = em_document_get_path (self->document);

  if (path != NULL && !as)
    em_window_save_to (self, path);
  else if (path == NULL && em_document_get_quote (self->document)->text[EM_QUOTE_NUMBER] == NULL
           && em_document_get_rates (self->document)->text[EM_SHOP_NUMBER_PATTERN] != NULL)
    em_window_give_number (self, TRUE);
  else
    ask_where (self);
}

static void
on_export_progress (double laid_out_share, int n_done, int n_pages, gpointer data)
{
  g_autofree char *text = n_pages == 0 ? g_strdup_printf (_("Laying out the pages: %d %%… Dismiss to stop."), (int) (laid_out_share * 100))
                                       : g_strdup_printf (_("Page %d of %d is drawn… Dismiss to stop."), n_done, n_pages);

  em_window_show_work (data, text);
}

typedef struct
{
  EmWindow *window;   /* owned */
  char     *name;
} EmExporting;

static void
on_exported (GObject *source, GAsyncResult *result, gpointer data)
{
  EmExporting *exporting = data;
  g_autoptr (EmWindow) self = exporting->window;
  g_autofree char *name = exporting->name;
  g_autoptr (GError) error = NULL;
  gboolean is_written = em_export_finish (result, &error);

  (void) source;
  g_free (exporting);
  if (self->document == NULL)
    return;
  em_window_end_work (self);
  if (is_written)
    {
      g_autofree char *sentence = g_strdup_printf (_("%s is written."), name);
      em_window_say (self, sentence);
    }
  else if (g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED))
    em_window_say (self, _("Stopped: no PDF was written."));
  else
    say_error (self, _("The PDF could not be written"), "", error);
}

void
em_window_export_to (EmWindow *self, const char *path)
{
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  EmExporting *exporting = g_new0 (EmExporting, 1);

  exporting->window = g_object_ref (self);
  exporting->name = g_path_get_basename (path);
  em_window_begin_work (self, _("Laying out the pages… Dismiss to stop."), cancellable);
  em_export_async (self->document, em_paper_view_get_sheet (EM_PAPER_VIEW (self->paper)), path, on_export_progress, self, cancellable,
                   on_exported, exporting);
}

static void
on_export_chosen (GtkNativeDialog *dialog, int response, EmWindow *self)
{
  g_autoptr (GFile) file = chosen_file (dialog, response);
  g_autofree char *path = file != NULL ? g_file_get_path (file) : NULL;

  if (path != NULL)
    em_window_export_to (self, path);
}

void
em_window_export_dialog (EmWindow *self)
{
  g_autofree char *name = proposed_name (self, ".pdf");

  run_chooser (self, GTK_FILE_CHOOSER_ACTION_SAVE, _("Save as PDF"), _("_Save"), G_CALLBACK (on_export_chosen));
  gtk_file_chooser_set_current_name (GTK_FILE_CHOOSER (self->chooser), name);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (self->chooser));
}

typedef struct
{
  EmWindow *window;   /* owned */
  gboolean  is_wires;
  char     *path, *csv;
} EmDataExport;

static void
free_data_export (EmDataExport *job)
{
  g_object_unref (job->window);
  g_free (job->path);
  g_free (job->csv);
  g_free (job);
}

G_DEFINE_AUTOPTR_CLEANUP_FUNC (EmDataExport, free_data_export)

static void
write_data_in_thread (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  EmDataExport *job = data;
  GError *error = NULL;

  (void) source;
  if (g_cancellable_set_error_if_cancelled (cancellable, &error)
      || !g_file_set_contents_full (job->path, job->csv, -1, G_FILE_SET_CONTENTS_CONSISTENT, 0644, &error))
    g_task_return_error (task, error);
  else
    g_task_return_boolean (task, TRUE);
}

static void
end_data_export (EmDataExport *job, const GError *error)
{
  g_autofree char *name = g_path_get_basename (job->path);
  g_autofree char *sentence = g_strdup_printf (_("%s is written."), name);

  if (job->window->document == NULL)
    return;
  em_window_end_work (job->window);
  if (error == NULL)
    em_window_say (job->window, sentence);
  else if (!g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED))
    say_error (job->window, _("The data could not be written"), "", error);
}

static void
on_data_written (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (GError) error = NULL;

  (void) source;
  (void) data;
  g_task_propagate_boolean (G_TASK (result), &error);
  end_data_export (g_task_get_task_data (G_TASK (result)), error);
}

static char *
make_csv (const EmPaperHeld *held, gboolean is_wires)
{
  EmPaperSource source = *em_paper_held_get_source (held);
  EmCompare compare;
  char *csv;

  em_compare_init (&compare);
  /* Without a comparison the file has its heading only. */
  source.compare = NULL;
  if (is_wires && em_compare_quote (&compare, source.quote, -1, source.rates, source.catalogue, NULL) == EM_OK)
    source.compare = &compare;
  csv = is_wires ? em_paper_compare_csv (&source) : em_paper_lines_csv (&source);
  em_compare_clear (&compare);
  return csv;
}

static void
on_data_held (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (EmDataExport) job = data;
  g_autoptr (GError) error = NULL;
  g_autoptr (EmPaperHeld) held = em_paper_held_new_finish (result, &error);
  GCancellable *cancellable = g_task_get_cancellable (G_TASK (result));
  g_autoptr (GTask) task = NULL;

  (void) source;
  if (held == NULL)
    {
      end_data_export (job, error);
      return;
    }
  job->csv = make_csv (held, job->is_wires);
  task = g_task_new (NULL, cancellable, on_data_written, NULL);
  g_task_set_task_data (task, g_steal_pointer (&job), (GDestroyNotify) free_data_export);
  g_task_run_in_thread (task, write_data_in_thread);
}

void
em_window_export_data_to (EmWindow *self, gboolean is_wires, const char *path)
{
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  EmDataExport *job = g_new0 (EmDataExport, 1);
  g_autofree char *name = g_path_get_basename (path);
  g_autofree char *text = g_strdup_printf (_("Saving %s… Dismiss to stop."), name);

  job->window = g_object_ref (self);
  job->is_wires = is_wires;
  job->path = g_strdup (path);
  em_window_begin_work (self, text, cancellable);
  em_paper_held_new_async (self->document, cancellable, on_data_held, job);
}

static void
on_data_chosen (GtkNativeDialog *dialog, int response, EmWindow *self)
{
  g_autoptr (GFile) file = chosen_file (dialog, response);
  g_autofree char *path = file != NULL ? g_file_get_path (file) : NULL;

  if (path != NULL)
    em_window_export_data_to (self, GPOINTER_TO_INT (g_object_get_data (G_OBJECT (dialog), "wires")), path);
}

void
em_window_export_data_dialog (EmWindow *self, gboolean is_wires)
{
  g_autofree char *name = proposed_name (self, is_wires ? "-wires.csv" : "-lines.csv");

  run_chooser (self, GTK_FILE_CHOOSER_ACTION_SAVE, _("Save as data"), _("_Save"), G_CALLBACK (on_data_chosen));
  g_object_set_data (G_OBJECT (self->chooser), "wires", GINT_TO_POINTER (is_wires));
  gtk_file_chooser_set_current_name (GTK_FILE_CHOOSER (self->chooser), name);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (self->chooser));
}

static void
on_print_done (GtkPrintOperation *operation, GtkPrintOperationResult result, EmWindow *self)
{
  g_autoptr (GError) error = NULL;

  if (em_print_get_problem (EM_PRINT (operation)) != NULL)
    em_window_say (self, em_print_get_problem (EM_PRINT (operation)));
  if (result != GTK_PRINT_OPERATION_RESULT_ERROR)
    return;
  gtk_print_operation_get_error (operation, &error);
  say_error (self, _("Not printed"), "", error);
}

static void
on_held (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (EmWindow) self = data;
  g_autoptr (GError) error = NULL;
  EmPaperHeld *held = em_paper_held_new_finish (result, &error);

  (void) source;
  if (self->document == NULL)
    {
      em_paper_held_free (held);
      return;
    }
  em_window_end_work (self);
  if (held == NULL)
    {
      if (!g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED))
        say_error (self, _("Not printed"), "", error);
      return;
    }
  g_autoptr (EmPrint) print = em_print_new (self->document, em_paper_view_get_sheet (EM_PAPER_VIEW (self->paper)));
  em_print_hold_take (print, held);
  gtk_print_operation_set_allow_async (GTK_PRINT_OPERATION (print), TRUE);
  gtk_print_operation_set_show_progress (GTK_PRINT_OPERATION (print), TRUE);
  g_signal_connect_object (print, "done", G_CALLBACK (on_print_done), self, 0);
  gtk_print_operation_run (GTK_PRINT_OPERATION (print), GTK_PRINT_OPERATION_ACTION_PRINT_DIALOG, GTK_WINDOW (self), NULL);
}

void
em_window_print (EmWindow *self)
{
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();

  em_window_begin_work (self, _("Laying out the pages… Dismiss to stop."), cancellable);
  em_paper_held_new_async (self->document, cancellable, on_held, g_object_ref (self));
}

enum { RESPONSE_DISCARD = 1, RESPONSE_SAVE };

static void
on_close_answered (GtkDialog *dialog, int response, EmWindow *self)
{
  em_application_end_dialog (dialog);
  if (response == RESPONSE_DISCARD)
    {
      self->is_closing = TRUE;
      gtk_window_close (GTK_WINDOW (self));
    }
  else if (response == RESPONSE_SAVE)
    {
      self->is_closing = TRUE;
      em_window_save (self, FALSE);
    }
}

gboolean
em_window_may_close (EmWindow *self)
{
  /* The work counts as saved, but is not yet on the disk: the window goes when it is, and stays when it can't be. */
  if (self->document != NULL && em_document_is_saving (self->document))
    {
      self->is_closing = TRUE;
      return FALSE;
    }
  if (self->is_closing || self->document == NULL || !em_document_is_modified (self->document))
    return TRUE;

  g_autofree char *title = em_document_dup_title (self->document);
  GtkWidget *dialog = gtk_message_dialog_new (GTK_WINDOW (self), GTK_DIALOG_MODAL | GTK_DIALOG_DESTROY_WITH_PARENT,
                                              GTK_MESSAGE_QUESTION, GTK_BUTTONS_NONE, _("Save “%s” before closing?"), title);
  gtk_message_dialog_format_secondary_text (GTK_MESSAGE_DIALOG (dialog), _("What was changed since it was last saved is lost otherwise."));
  gtk_dialog_add_buttons (GTK_DIALOG (dialog), _("Close _without saving"), RESPONSE_DISCARD, _("_Cancel"), GTK_RESPONSE_CANCEL,
                          _("_Save"), RESPONSE_SAVE, NULL);
  gtk_dialog_set_default_response (GTK_DIALOG (dialog), RESPONSE_SAVE);
  gtk_widget_add_css_class (gtk_dialog_get_widget_for_response (GTK_DIALOG (dialog), RESPONSE_DISCARD), "destructive-action");
  g_signal_connect (dialog, "response", G_CALLBACK (on_close_answered), self);
  gtk_window_present (GTK_WINDOW (dialog));
  return FALSE;
}
