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

EmPaperHeld *
em_paper_held_new (EmDocument *document, GError **error)
{
  EmPaperHeld *held = g_new0 (EmPaperHeld, 1);
  g_autofree char *book = em_book_own_rates_path ();
  g_autofree char *folder = g_path_get_dirname (book);
  const EmRates *rates;
  const EmCatalogue *catalogue;

  if (em_quote_copy (em_document_get_quote (document), &held->quote) != EM_OK)
    {
      g_set_error_literal (error, EM_PAPER_ERROR, EM_PAPER_ERROR_WRITE, _("Not enough memory"));
      g_free (held);
      return NULL;
    }
  held->basis = em_basis_ref (em_document_get_basis (document));
  rates = em_basis_get_rates (held->basis);
  catalogue = em_basis_get_catalogue (held->basis);
  em_cost_init (&held->cost);
  /* A fault leaves nothing priced, which the sheets say themselves. */
  em_cost_quote (&held->cost, &held->quote, rates, catalogue, NULL, NULL);
  em_paper_job_init (&held->job, &held->quote, &held->cost, rates, catalogue, folder, FALSE, NULL);
  return held;
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
