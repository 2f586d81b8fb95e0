/* em-autosave: keeps an open quote's unsaved work on the side, and offers it again after a crash.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "config.h"

#include "em-autosave.h"

#include "em-lock.h"
#include "em-lock-release.h"
#include "em-words.h"

#include <glib/gi18n.h>

enum { DELAY_MS = 2000 };

#define KEY "em-autosave"

/* Lives as long as the document, and as a thread that still writes. */
typedef struct
{
  EmDocument *document;    /* NULL once it is gone */
  EmWindow   *window;      /* weak */
  EmJournal  *journal;
  guint       source;      /* waiting to write; 0: not */
  gboolean    is_writing;
  gboolean    has_complained;
} EmAutosave;

/* What a thread writes. */
typedef struct
{
  EmAutosave *autosave;    /* a reference; touched on the main thread alone */
  EmJournal  *journal;
  guint64     ticket;
  EmSnapshot *snapshot;
  char       *path, *title;
  EmFileStamp stamp;
  EmRecovered *replaced;   /* an older program's journal that goes once this is written; or NULL */
} Writing;

static void
clear_autosave (gpointer data)
{
  EmAutosave *autosave = data;

  em_journal_unref (autosave->journal);
  g_clear_weak_pointer (&autosave->window);
}

static void
release_autosave (EmAutosave *autosave)
{
  g_rc_box_release_full (autosave, clear_autosave);
}

static void
free_writing (gpointer data)
{
  Writing *writing = data;

  em_journal_unref (writing->journal);
  em_snapshot_free (writing->snapshot);
  g_clear_pointer (&writing->replaced, em_recovered_free);
  g_free (writing->path);
  g_free (writing->title);
  g_free (writing);
}

static gboolean
write_aside (Writing *writing, GError **error)
{
  g_autoptr (GBytes) bytes = em_snapshot_write (writing->snapshot, error);

  if (bytes == NULL
      || !em_journal_keep (writing->journal, writing->ticket, bytes, writing->path, &writing->stamp, writing->title, error))
    return FALSE;
  if (writing->replaced != NULL)
    em_recovery_discard (writing->replaced);
  return TRUE;
}

/* NULL when memory runs out. */
static Writing *
prepare (EmAutosave *autosave, GError **error)
{
  EmSnapshot *snapshot = em_document_snapshot (autosave->document, error);
  Writing *writing;

  if (snapshot == NULL)
    return NULL;
  writing = g_new0 (Writing, 1);
  writing->journal = em_journal_ref (autosave->journal);
  writing->ticket = em_journal_ticket (autosave->journal);
  writing->snapshot = snapshot;
  writing->path = g_strdup (em_document_get_path (autosave->document));
  writing->title = em_document_dup_title (autosave->document);
  writing->stamp = *em_document_get_stamp (autosave->document);
  return writing;
}

static void
complain (EmAutosave *autosave, const GError *error)
{
  if (autosave->has_complained || autosave->window == NULL)
    return;
  autosave->has_complained = TRUE;
  g_autofree char *sentence = g_strdup_printf (_("Unsaved work is not safe from a crash. Save often. %s"), error->message);
  em_window_say (autosave->window, sentence);
}

/* ---- writing ---- */

static void
write_in_thread (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  GError *error = NULL;

  (void) source;
  (void) cancellable;
  if (write_aside (data, &error))
    g_task_return_boolean (task, TRUE);
  else
    g_task_return_error (task, error);
}

static void
on_written (GObject *source, GAsyncResult *result, gpointer data)
{
  EmAutosave *autosave = data;
  g_autoptr (GError) error = NULL;

  (void) source;
  autosave->is_writing = FALSE;
  if (!g_task_propagate_boolean (G_TASK (result), &error))
    complain (autosave, error);
  release_autosave (autosave);
}

/* Takes replaced. */
static void
start_writing (EmAutosave *autosave, EmRecovered *replaced)
{
  g_autoptr (GError) error = NULL;
  Writing *writing = prepare (autosave, &error);

  if (writing == NULL)
    {
      complain (autosave, error);
      g_clear_pointer (&replaced, em_recovered_free);
      return;
    }
  writing->replaced = replaced;
  g_autoptr (GTask) task = g_task_new (NULL, NULL, on_written, g_rc_box_acquire (autosave));
  g_task_set_task_data (task, writing, free_writing);
  autosave->is_writing = TRUE;
  g_task_run_in_thread (task, write_in_thread);
}

static gboolean
on_time (gpointer data)
{
  EmAutosave *autosave = data;

  if (autosave->is_writing)
    return G_SOURCE_CONTINUE;
  autosave->source = 0;
  if (em_document_is_modified (autosave->document))
    start_writing (autosave, NULL);
  return G_SOURCE_REMOVE;
}

/* While a save is under way the work is not yet on the disk, though it counts as saved. */
static void
on_changed (EmDocument *document, guint what, int index, EmAutosave *autosave)
{
  (void) index;
  if ((what & ~(guint) (EM_CHANGE_SELECTION | EM_CHANGE_PROBLEMS | EM_CHANGE_BASIS)) == 0 || em_document_is_saving (document))
    return;
  if (!em_document_is_modified (document))
    {
      g_clear_handle_id (&autosave->source, g_source_remove);
      em_journal_drop (autosave->journal);
    }
  else if (autosave->source == 0)
    autosave->source = g_timeout_add (DELAY_MS, on_time, autosave);
}

/* The document ends in good order: what was not saved was given up. */
static void
end_watch (gpointer data)
{
  EmAutosave *autosave = data;

  autosave->document = NULL;
  g_clear_handle_id (&autosave->source, g_source_remove);
  em_journal_drop (autosave->journal);
  release_autosave (autosave);
}

void
em_autosave_watch (EmDocument *document, EmWindow *window)
{
  EmAutosave *autosave = g_object_get_data (G_OBJECT (document), KEY);

  if (autosave == NULL)
    {
      autosave = g_rc_box_new0 (EmAutosave);
      autosave->document = document;
      autosave->journal = em_journal_new ();
      g_object_set_data_full (G_OBJECT (document), KEY, autosave, end_watch);
      g_signal_connect (document, "changed", G_CALLBACK (on_changed), autosave);
      on_changed (document, EM_CHANGE_FILE, -1, autosave);
    }
  g_set_weak_pointer (&autosave->window, window);
}

/* ---- recovering ---- */

/* One journal, as a thread reads it. */
typedef struct
{
  EmRecovered *recovered;   /* owned */
  EmQuoteFile  file;
  gboolean     is_read;
  EmLock      *lock;        /* owned; others are told, as of any open file; NULL: somebody else's, or none can be put */
  char        *locked;      /* who else has it open, or NULL */
  GError      *error;       /* why it can't be read */
} Found;

typedef struct
{
  EmApplication *application;   /* owned */
  GArray        *found;         /* Found */
} Recovering;

static void
clear_found (gpointer data)
{
  Found *found = data;

  g_clear_pointer (&found->recovered, em_recovered_free);
  if (found->is_read)
    em_quote_file_clear (&found->file);
  em_lock_free (found->lock);
  g_free (found->locked);
  g_clear_error (&found->error);
}

static void
free_recovering (gpointer data)
{
  Recovering *recovering = data;

  g_object_unref (recovering->application);
  g_array_unref (recovering->found);
  g_free (recovering);
}

static void
read_in_thread (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  Recovering *recovering = data;

  (void) source;
  (void) cancellable;
  for (guint i = 0; i < recovering->found->len; i++)
    {
      Found *found = &g_array_index (recovering->found, Found, i);
      g_autoptr (GError) lock_error = NULL;
      found->is_read = em_recovery_read (found->recovered, &found->file, &found->error);
      if (!found->is_read || found->recovered->path == NULL)
        continue;
      em_lock_release_wait (EM_LOCK_PATIENCE_MS);
      found->lock = em_lock_take (found->recovered->path, &lock_error);
      if (g_error_matches (lock_error, EM_FILE_ERROR, EM_FILE_ERROR_LOCKED))
        found->locked = g_strdup (lock_error->message);
    }
  g_task_return_boolean (task, TRUE);
}

/* It stays where it lies until it is kept aside anew. */
static void
open_found (EmApplication *application, Found *found)
{
  g_autoptr (EmDocument) document = em_document_new_recovered (em_application_get_basis (application), &found->file, found->recovered->path);
  EmWindow *window = em_application_add_window (application, document);
  EmAutosave *autosave = g_object_get_data (G_OBJECT (document), KEY);

  em_document_set_lock_take (document, g_steal_pointer (&found->lock));
  if (found->locked != NULL)
    em_window_say (window, found->locked);
  g_clear_handle_id (&autosave->source, g_source_remove);
  start_writing (autosave, g_steal_pointer (&found->recovered));
}

static void
on_read (GObject *source, GAsyncResult *result, gpointer data)
{
  Recovering *recovering = g_task_get_task_data (G_TASK (result));
  EmApplication *application = recovering->application;
  g_autoptr (GString) trouble = g_string_new (NULL);

  (void) source;
  (void) data;
  g_application_release (G_APPLICATION (application));
  for (guint i = 0; i < recovering->found->len; i++)
    {
      Found *found = &g_array_index (recovering->found, Found, i);
      if (found->is_read)
        open_found (application, found);
      else
        g_string_append_printf (trouble, _("%s could not be recovered and stays in %s. %s "), found->recovered->title, found->recovered->file,
                                found->error->message);
    }
  GtkWindow *window = gtk_application_get_active_window (GTK_APPLICATION (application));
  if (trouble->len > 0 && EM_IS_WINDOW (window))
    em_window_say (EM_WINDOW (window), trouble->str);
}

void
em_autosave_recover (EmApplication *application, GPtrArray *found)
{
  g_autoptr (GTask) task = g_task_new (NULL, NULL, on_read, NULL);
  Recovering *recovering = g_new0 (Recovering, 1);

  recovering->application = g_object_ref (application);
  recovering->found = g_array_new (FALSE, TRUE, sizeof (Found));
  g_array_set_clear_func (recovering->found, clear_found);
  for (guint i = 0; i < found->len; i++)
    {
      Found one = { .recovered = em_recovered_copy (found->pdata[i]) };
      g_array_append_val (recovering->found, one);
    }
  g_task_set_task_data (task, recovering, free_recovering);
  g_application_hold (G_APPLICATION (application));
  g_task_run_in_thread (task, read_in_thread);
}

/* ---- asking ---- */

enum { RESPONSE_RECOVER = 1, RESPONSE_DISCARD };

typedef struct
{
  EmApplication *application;   /* owned */
  GPtrArray     *found;         /* owned */
} EmOffer;

static void
free_offer (gpointer data, GClosure *closure)
{
  EmOffer *offer = data;

  (void) closure;
  g_object_unref (offer->application);
  g_ptr_array_unref (offer->found);
  g_free (offer);
}

static void
on_answered (GtkDialog *dialog, int response, EmOffer *offer)
{
  g_autoptr (EmApplication) application = g_object_ref (offer->application);
  g_autoptr (GPtrArray) found = g_ptr_array_ref (offer->found);

  gtk_window_destroy (GTK_WINDOW (dialog));
  if (response == RESPONSE_RECOVER)
    em_autosave_recover (application, found);
  else if (response == RESPONSE_DISCARD)
    for (guint i = 0; i < found->len; i++)
      em_recovery_discard (found->pdata[i]);
}

/* "Q-1 · Customer, 3 Nov 14:05", one a line. */
static char *
describe (GPtrArray *found)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < found->len; i++)
    {
      const EmRecovered *recovered = found->pdata[i];
      g_autofree char *moment = em_words_moment (recovered->kept_s);
      g_string_append_printf (text, "%s%s%s%s", i > 0 ? "\n" : "", recovered->title, *moment != '\0' ? ", " : "", moment);
    }
  return g_string_free (text, FALSE);
}

static void
ask (EmApplication *application, GPtrArray *found)
{
  GtkWindow *parent = gtk_application_get_active_window (GTK_APPLICATION (application));
  GtkWidget *dialog = gtk_message_dialog_new (parent, GTK_DIALOG_MODAL | GTK_DIALOG_DESTROY_WITH_PARENT, GTK_MESSAGE_QUESTION, GTK_BUTTONS_NONE,
                                              ngettext ("Recover unsaved changes to a quote?", "Recover unsaved changes to %u quotes?", found->len), found->len);
  g_autofree char *list = describe (found);
  EmOffer *offer = g_new0 (EmOffer, 1);

  gtk_message_dialog_format_secondary_text (GTK_MESSAGE_DIALOG (dialog), "%s\n\n%s",
                                            _("The program stopped before these changes were saved. They were kept aside."), list);
  gtk_dialog_add_buttons (GTK_DIALOG (dialog), _("_Throw away"), RESPONSE_DISCARD, _("_Later"), GTK_RESPONSE_CANCEL,
                          _("_Recover"), RESPONSE_RECOVER, NULL);
  gtk_dialog_set_default_response (GTK_DIALOG (dialog), RESPONSE_RECOVER);
  gtk_widget_add_css_class (gtk_dialog_get_widget_for_response (GTK_DIALOG (dialog), RESPONSE_DISCARD), "destructive-action");
  offer->application = g_object_ref (application);
  offer->found = g_ptr_array_ref (found);
  g_signal_connect_data (dialog, "response", G_CALLBACK (on_answered), offer, free_offer, 0);
  gtk_window_present (GTK_WINDOW (dialog));
}

static void
find_in_thread (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  (void) source;
  (void) data;
  (void) cancellable;
  g_task_return_pointer (task, em_recovery_find (), (GDestroyNotify) g_ptr_array_unref);
}

static void
on_found (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (GPtrArray) found = g_task_propagate_pointer (G_TASK (result), NULL);

  (void) data;
  if (found != NULL && found->len > 0)
    ask (EM_APPLICATION (source), found);
}

void
em_autosave_offer (EmApplication *application)
{
  g_autoptr (GTask) task = g_task_new (application, NULL, on_found, NULL);

  g_task_run_in_thread (task, find_in_thread);
}
