/* em-paper-held: a quote as it was when its sheets were asked for.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-paper-held.h"

#include "em-book-file.h"

#include <glib/gi18n.h>

struct _EmPaperHeld
{
  EmQuote    quote;
  EmCost     cost;
  EmBasis   *basis;   /* owned; never changes */
  EmPaperJob job;     /* of the three above */
};

static EmPaperHeld *
hold (EmDocument *document, GError **error)
{
  EmPaperHeld *held = g_new0 (EmPaperHeld, 1);

  if (em_quote_copy (em_document_get_quote (document), &held->quote) != EM_OK)
    {
      g_set_error_literal (error, EM_PAPER_ERROR, EM_PAPER_ERROR_WRITE, _("Not enough memory"));
      g_free (held);
      return NULL;
    }
  held->basis = em_basis_ref (em_document_get_basis (document));
  em_cost_init (&held->cost);
  return held;
}

static void
work_out (EmPaperHeld *held)
{
  g_autofree char *book = em_book_own_rates_path ();
  g_autofree char *folder = g_path_get_dirname (book);
  const EmRates *rates = em_basis_get_rates (held->basis);
  const EmCatalogue *catalogue = em_basis_get_catalogue (held->basis);

  /* A fault leaves nothing priced, which the sheets say themselves. */
  em_cost_quote (&held->cost, &held->quote, rates, catalogue, NULL, NULL);
  em_paper_job_init (&held->job, &held->quote, &held->cost, rates, catalogue, folder, FALSE, NULL);
}

EmPaperHeld *
em_paper_held_new (EmDocument *document, GError **error)
{
  EmPaperHeld *held = hold (document, error);

  if (held != NULL)
    work_out (held);
  return held;
}

/* What was held for nobody any more. */
static void
free_kept (gpointer data)
{
  EmPaperHeld **kept = data;

  em_paper_held_free (*kept);
  g_free (kept);
}

static void
work_in_thread (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  EmPaperHeld **kept = data;

  (void) source;
  (void) cancellable;
  work_out (*kept);
  g_task_return_boolean (task, TRUE);
}

void
em_paper_held_new_async (EmDocument *document, GCancellable *cancellable, GAsyncReadyCallback callback, gpointer data)
{
  g_autoptr (GTask) task = g_task_new (NULL, cancellable, callback, data);
  GError *error = NULL;
  EmPaperHeld **kept = g_new0 (EmPaperHeld *, 1);

  *kept = hold (document, &error);
  g_task_set_task_data (task, kept, free_kept);
  if (*kept == NULL)
    g_task_return_error (task, error);
  else
    g_task_run_in_thread (task, work_in_thread);
}

EmPaperHeld *
em_paper_held_new_finish (GAsyncResult *result, GError **error)
{
  EmPaperHeld **kept = g_task_get_task_data (G_TASK (result));

  return g_task_propagate_boolean (G_TASK (result), error) ? g_steal_pointer (kept) : NULL;
}

const EmPaperSource *
em_paper_held_get_source (const EmPaperHeld *held)
{
  return &held->job.source;
}

void
em_paper_held_free (EmPaperHeld *held)
{
  if (held == NULL)
    return;
  em_paper_job_clear (&held->job);
  em_cost_clear (&held->cost);
  em_quote_clear (&held->quote);
  em_basis_unref (held->basis);
  g_free (held);
}
