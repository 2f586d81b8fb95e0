/* em-register-work: what is done to a quote that lies in the folder and is not open.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-register-work.h"

#include "em-lock-release.h"
#include "em-save.h"

#include <glib/gi18n.h>

typedef struct
{
  char       *path, *old_path;
  EmState     state;
  gboolean    is_revision;
  EmBasis    *basis;           /* owned or NULL */
  EmQuoteFile file, old_file;
  gboolean    has_file, has_old_file;
  GBytes     *before, *after;  /* the whole file; owned or NULL */
  EmRevisionPair *pair;        /* of the two files, or NULL */
} EmWork;

static void
free_work (gpointer data)
{
  EmWork *work = data;

  em_revision_pair_free (work->pair);
  if (work->has_file)
    em_quote_file_clear (&work->file);
  if (work->has_old_file)
    em_quote_file_clear (&work->old_file);
  g_clear_pointer (&work->basis, em_basis_unref);
  g_clear_pointer (&work->before, g_bytes_unref);
  g_clear_pointer (&work->after, g_bytes_unref);
  g_free (work->path);
  g_free (work->old_path);
  g_free (work);
}

static void
start (EmWork *work, GTaskThreadFunc func, GCancellable *cancellable, GAsyncReadyCallback callback, gpointer data)
{
  g_autoptr (GTask) task = g_task_new (NULL, cancellable, callback, data);

  g_task_set_task_data (task, work, free_work);
  g_task_run_in_thread (task, func);
}

static gboolean
load (EmWork *work, GError **error)
{
  work->has_file = em_quote_file_load (work->path, &work->file, error);
  return work->has_file;
}

/* ---- state ---- */

static void
drop_sent (EmQuoteFile *file)
{
  if (file->sent_rates != NULL)
    em_rates_clear (file->sent_rates);
  if (file->sent_catalogue != NULL)
    em_catalogue_clear (file->sent_catalogue);
  g_clear_pointer (&file->sent_rates, g_free);
  g_clear_pointer (&file->sent_catalogue, g_free);
  file->quote.has_sent_rates = false;
}

static gboolean
take_present (EmQuoteFile *file, const EmBasis *basis)
{
  file->sent_rates = g_new0 (EmRates, 1);
  file->sent_catalogue = g_new0 (EmCatalogue, 1);
  em_rates_init (file->sent_rates);
  em_catalogue_init (file->sent_catalogue);
  file->quote.has_sent_rates = em_rates_copy (em_basis_get_rates (basis), file->sent_rates) == EM_OK
                               && em_catalogue_copy (em_basis_get_catalogue (basis), file->sent_catalogue) == EM_OK;
  return file->quote.has_sent_rates;
}

static gboolean
put_state (EmWork *work, GError **error)
{
  EmQuoteFile *file = &work->file;
  EmFileStamp stamp;

  file->quote.state = work->state;
  if (work->state == EM_STATE_DRAFT)
    drop_sent (file);
  else if (!file->quote.has_sent_rates && !take_present (file, work->basis))
    {
      g_set_error_literal (error, G_IO_ERROR, G_IO_ERROR_NO_SPACE, _("Not enough memory"));
      return FALSE;
    }
  work->after = em_quote_file_write (file, error);
  return work->after != NULL && em_save_bytes_over (work->path, work->after, &file->stamp, &stamp, error);
}

/* As load, and the bytes are kept. */
static gboolean
load_whole (EmWork *work, GError **error)
{
  g_autofree char *name = g_path_get_basename (work->path);
  EmFileStamp stamp;

  work->before = em_quote_file_bytes (work->path, &stamp, error);
  work->has_file = work->before != NULL && em_quote_file_parse (work->before, name, &work->file, error);
  if (work->has_file)
    work->file.stamp = stamp;
  return work->has_file;
}

/* Somebody who has it open would be asked about a change he can't see: better not made. */
static void
change_locked (GTask *task, EmWork *work, gboolean (*change) (EmWork *work, GError **error))
{
  GError *error = NULL;

  em_lock_release_wait (EM_LOCK_PATIENCE_MS);
  g_autoptr (EmLock) lock = em_lock_take (work->path, &error);

  if (lock != NULL && change (work, &error))
    g_task_return_boolean (task, TRUE);
  else
    g_task_return_error (task, error);
}

static gboolean
load_and_put_state (EmWork *work, GError **error)
{
  return load_whole (work, error) && put_state (work, error);
}

static void
state_in_thread (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  (void) source;
  (void) cancellable;
  change_locked (task, data, load_and_put_state);
}

void
em_register_work_state_async (const char *path, EmState state, EmBasis *basis, GCancellable *cancellable, GAsyncReadyCallback callback, gpointer data)
{
  EmWork *work = g_new0 (EmWork, 1);

  work->path = g_strdup (path);
  work->state = state;
  work->basis = em_basis_ref (basis);
  start (work, state_in_thread, cancellable, callback, data);
}

gboolean
em_register_work_state_finish (GAsyncResult *result, GBytes **out_before, GBytes **out_after, GError **error)
{
  EmWork *work = g_task_get_task_data (G_TASK (result));

  if (!g_task_propagate_boolean (G_TASK (result), error))
    return FALSE;
  *out_before = g_steal_pointer (&work->before);
  *out_after = g_steal_pointer (&work->after);
  return TRUE;
}

/* ---- and back ---- */

static gboolean
replace (EmWork *work, GError **error)
{
  EmFileStamp stamp, written;
  g_autoptr (GBytes) present = em_quote_file_bytes (work->path, &stamp, error);
  g_autofree char *name = g_filename_display_basename (work->path);

  if (present == NULL)
    return FALSE;
  if (!g_bytes_equal (present, work->before))
    {
      g_set_error (error, EM_FILE_ERROR, EM_FILE_ERROR_CHANGED, _("“%s” was changed since then, so it stays as it is."), name);
      return FALSE;
    }
  return em_save_bytes_over (work->path, work->after, &stamp, &written, error);
}

static void
replace_in_thread (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  (void) source;
  (void) cancellable;
  change_locked (task, data, replace);
}

void
em_register_work_replace_async (const char *path, GBytes *expected, GBytes *wanted, GAsyncReadyCallback callback, gpointer data)
{
  EmWork *work = g_new0 (EmWork, 1);

  work->path = g_strdup (path);
  work->before = g_bytes_ref (expected);
  work->after = g_bytes_ref (wanted);
  start (work, replace_in_thread, NULL, callback, data);
}

gboolean
em_register_work_replace_finish (GAsyncResult *result, GError **error)
{
  return g_task_propagate_boolean (G_TASK (result), error);
}

/* ---- copies and revisions ---- */

static void
derive_in_thread (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  EmWork *work = data;
  GError *error = NULL;

  (void) source;
  (void) cancellable;
  if (!load (work, &error))
    {
      g_task_return_error (task, error);
      return;
    }
  if (work->is_revision)
    em_revision_make_next (&work->file);
  else
    em_revision_make_copy (&work->file);
  g_task_return_boolean (task, TRUE);
}

void
em_register_work_derive_async (const char *path, gboolean is_revision, GCancellable *cancellable, GAsyncReadyCallback callback, gpointer data)
{
  EmWork *work = g_new0 (EmWork, 1);

  work->path = g_strdup (path);
  work->is_revision = is_revision;
  start (work, derive_in_thread, cancellable, callback, data);
}

gboolean
em_register_work_derive_finish (GAsyncResult *result, EmQuoteFile *out_file, GError **error)
{
  EmWork *work = g_task_get_task_data (G_TASK (result));

  if (!g_task_propagate_boolean (G_TASK (result), error))
    return FALSE;
  *out_file = work->file;
  work->has_file = FALSE;
  return TRUE;
}

/* ---- what changed ---- */

/* The sent rates and metals of a file as a basis of their own, or the shop's. */
static EmBasis *
basis_of (EmWork *work, const EmQuoteFile *file)
{
  EmRates rates;
  EmCatalogue catalogue;

  if (!file->quote.has_sent_rates || file->sent_rates == NULL || file->sent_catalogue == NULL || em_rates_copy (file->sent_rates, &rates) != EM_OK)
    return em_basis_ref (work->basis);
  if (em_catalogue_copy (file->sent_catalogue, &catalogue) != EM_OK)
    {
      em_rates_clear (&rates);
      return em_basis_ref (work->basis);
    }
  return em_basis_new_take (&rates, &catalogue);
}

static void
compare_in_thread (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  EmWork *work = data;
  GError *error = NULL;

  (void) source;
  (void) cancellable;
  work->has_old_file = em_quote_file_load (work->old_path, &work->old_file, &error);
  if (!work->has_old_file || !load (work, &error))
    {
      g_task_return_error (task, error);
      return;
    }
  g_autoptr (EmBasis) old_basis = basis_of (work, &work->old_file), new_basis = basis_of (work, &work->file);
  work->pair = em_revision_pair_new (&work->old_file.quote, old_basis, &work->file.quote, new_basis);
  g_task_return_boolean (task, TRUE);
}

void
em_register_work_compare_async (const char *old_path, const char *new_path, EmBasis *basis, GCancellable *cancellable,
                                GAsyncReadyCallback callback, gpointer data)
{
  EmWork *work = g_new0 (EmWork, 1);

  work->path = g_strdup (new_path);
  work->old_path = g_strdup (old_path);
  work->basis = em_basis_ref (basis);
  start (work, compare_in_thread, cancellable, callback, data);
}

/* Words belong to the main thread. */
char *
em_register_work_compare_finish (GAsyncResult *result, GError **error)
{
  EmWork *work = g_task_get_task_data (G_TASK (result));
  g_autoptr (GString) text = g_string_new (NULL);

  if (!g_task_propagate_boolean (G_TASK (result), error))
    return NULL;
  g_autoptr (GPtrArray) sentences = em_revision_pair_tell (work->pair);
  g_autofree char *from = em_revision_name (work->old_file.quote.text[EM_QUOTE_NUMBER], work->old_file.quote.text[EM_QUOTE_REVISION]);
  g_string_append_printf (text, sentences->len > 0 ? _("Since %s:") : _("Nothing changed since %s."), from);
  for (guint i = 0; i < sentences->len; i++)
    g_string_append_printf (text, "\n• %s", (const char *) sentences->pdata[i]);
  return g_string_free (g_steal_pointer (&text), FALSE);
}
