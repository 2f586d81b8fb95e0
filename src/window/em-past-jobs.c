/* em-past-jobs: what the quotes of a folder say of the times that were noted after the job.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-past-jobs.h"

#include "em-register.h"

#include <glib/gi18n.h>

typedef struct
{
  char      *folder;
  EmBasis   *basis;     /* owned */
  GArray    *records;   /* EmJobRecord */
  EmPastJobs jobs;
} EmGathering;

static void
free_gathering (gpointer data)
{
  EmGathering *gathering = data;

  g_free (gathering->folder);
  em_basis_unref (gathering->basis);
  g_array_unref (gathering->records);
  g_free (gathering);
}

static gboolean
has_actuals (const EmQuote *quote)
{
  for (int32_t i = 0; i < quote->n_features; i++)
    {
      const EmActual *actual = &quote->feature[i].actual;
      if (!em_is_absent (actual->arc_on_s) || !em_is_absent (actual->bench_s) || !em_is_absent (actual->wire_mm))
        return TRUE;
    }
  return FALSE;
}

static void
add_records (EmGathering *gathering, const EmQuoteFile *file)
{
  const EmQuote *quote = &file->quote;
  gboolean is_sent = quote->has_sent_rates && file->sent_rates != NULL && file->sent_catalogue != NULL;
  const EmRates *rates = is_sent ? file->sent_rates : em_basis_get_rates (gathering->basis);
  const EmCatalogue *catalogue = is_sent ? file->sent_catalogue : em_basis_get_catalogue (gathering->basis);
  EmCost cost;

  em_cost_init (&cost);
  if (em_cost_quote (&cost, quote, rates, catalogue, NULL, NULL) == EM_OK)
    {
      guint before = gathering->records->len;
      for (int32_t i = 0; i < quote->n_features; i++)
        {
          EmJobRecord record;
          if (em_calibrate_record (quote, i, &cost, rates, &record))
            g_array_append_val (gathering->records, record);
        }
      gathering->jobs.n_quotes += gathering->records->len > before;
    }
  em_cost_clear (&cost);
}

static void
gather_in_thread (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  EmGathering *gathering = data;
  GError *error = NULL;
  g_autoptr (EmRegister) old = em_register_new (gathering->folder);
  g_autoptr (EmRegister) reg = em_register_scan (gathering->folder, old, em_basis_get_rates (gathering->basis),
                                                 em_basis_get_catalogue (gathering->basis), NULL, NULL, cancellable, &error);

  (void) source;
  if (reg == NULL)
    {
      g_task_return_error (task, error);
      return;
    }
  for (guint i = 0; i < em_register_get_length (reg) && !g_cancellable_is_cancelled (cancellable); i++)
    {
      g_autofree char *path = em_register_dup_path (reg, i);
      const EmRegisterEntry *entry = em_register_get_entry (reg, i);
      EmQuoteFile file;
      /* Nobody notes times of a job that was not had. */
      if (entry->problem != NULL || (entry->state != EM_STATE_WON && entry->actual_bench_s <= 0) || !em_quote_file_load (path, &file, NULL))
        continue;
      if (has_actuals (&file.quote))
        add_records (gathering, &file);
      em_quote_file_clear (&file);
    }
  gathering->jobs.n_records = gathering->records->len;
  if (em_calibrate ((const EmJobRecord *) (gpointer) gathering->records->data, (int32_t) gathering->records->len, gathering->jobs.by) != EM_OK)
    g_task_return_new_error (task, G_IO_ERROR, G_IO_ERROR_NO_SPACE, "%s", _("Not enough memory"));
  else
    g_task_return_boolean (task, TRUE);
}

void
em_past_jobs_async (const char *folder, EmBasis *basis, GCancellable *cancellable, GAsyncReadyCallback callback, gpointer data)
{
  g_autoptr (GTask) task = g_task_new (NULL, cancellable, callback, data);
  EmGathering *gathering = g_new0 (EmGathering, 1);

  gathering->folder = g_strdup (folder);
  gathering->basis = em_basis_ref (basis);
  gathering->records = g_array_new (FALSE, FALSE, sizeof (EmJobRecord));
  g_task_set_task_data (task, gathering, free_gathering);
  g_task_run_in_thread (task, gather_in_thread);
}

gboolean
em_past_jobs_finish (GAsyncResult *result, EmPastJobs *out_jobs, GError **error)
{
  EmGathering *gathering = g_task_get_task_data (G_TASK (result));

  if (!g_task_propagate_boolean (G_TASK (result), error))
    return FALSE;
  *out_jobs = gathering->jobs;
  return TRUE;
}
