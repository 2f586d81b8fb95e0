/* em-export: a sheet as a PDF file, a page at a time.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-export.h"

#include "em-paper-held.h"
#include "em-pdf.h"

typedef struct
{
  EmPaperHeld     *held;
  EmPdf           *pdf;        /* NULL until it is laid out */
  int              n_drawn;
  GBytes          *bytes;      /* once all pages are drawn */
  EmSheet          sheet;
  char            *path;
  EmExportProgress progress;
  gpointer         progress_data;
} Export;

static void
free_export (gpointer data)
{
  Export *export = data;

  /* The pages borrow what is held. */
  g_clear_pointer (&export->pdf, em_pdf_free);
  em_paper_held_free (export->held);
  g_clear_pointer (&export->bytes, g_bytes_unref);
  g_free (export->path);
  g_free (export);
}

static void
write_in_thread (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  Export *export = data;
  GError *error = NULL;

  (void) source;
  (void) cancellable;
  if (g_task_return_error_if_cancelled (task))
    return;
  if (em_pdf_write (export->bytes, export->path, &error))
    g_task_return_boolean (task, TRUE);
  else
    g_task_return_error (task, error);
}

static void
tell (const Export *export)
{
  double share = em_pdf_get_share (export->pdf);

  if (export->progress != NULL)
    export->progress (share, export->n_drawn, share < 1 ? 0 : em_pdf_count (export->pdf), export->progress_data);
}

/* Layout, bit by bit, then a page each time. */
static gboolean
step (gpointer data)
{
  GTask *task = data;
  Export *export = g_task_get_task_data (task);
  const EmPaperSource *source = em_paper_held_get_source (export->held);
  GError *error = NULL;

  if (g_task_return_error_if_cancelled (task))
    return G_SOURCE_REMOVE;
  if (export->pdf == NULL)
    export->pdf = em_pdf_new (export->sheet, source, source->quote->text[EM_QUOTE_DATE], &error);
  else if (em_pdf_lay_out (export->pdf))
    ;
  else if (em_pdf_draw (export->pdf))
    export->n_drawn++;
  else
    {
      export->bytes = em_pdf_finish_take (g_steal_pointer (&export->pdf), &error);
      if (export->bytes != NULL)
        {
          g_task_run_in_thread (task, write_in_thread);
          return G_SOURCE_REMOVE;
        }
    }
  if (error != NULL)
    {
      g_task_return_error (task, error);
      return G_SOURCE_REMOVE;
    }
  tell (export);
  return G_SOURCE_CONTINUE;
}

static void
on_held (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (GTask) task = data;
  Export *export = g_task_get_task_data (task);
  GError *error = NULL;

  (void) source;
  export->held = em_paper_held_new_finish (result, &error);
  if (export->held == NULL)
    g_task_return_error (task, error);
  else
    g_idle_add_full (G_PRIORITY_DEFAULT_IDLE, step, g_steal_pointer (&task), g_object_unref);
}

void
em_export_async (EmDocument *document, EmSheet sheet, const char *path, EmExportProgress progress, gpointer progress_data,
                 GCancellable *cancellable, GAsyncReadyCallback callback, gpointer data)
{
  GTask *task = g_task_new (NULL, cancellable, callback, data);
  Export *export = g_new0 (Export, 1);

  export->sheet = sheet;
  export->path = g_strdup (path);
  export->progress = progress;
  export->progress_data = progress_data;
  g_task_set_task_data (task, export, free_export);
  em_paper_held_new_async (document, cancellable, on_held, task);
}

gboolean
em_export_finish (GAsyncResult *result, GError **error)
{
  return g_task_propagate_boolean (G_TASK (result), error);
}
