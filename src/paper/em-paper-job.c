/* em-paper-job: working out what goes on a sheet beside the quote.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-paper-job.h"

#include "em-logo.h"

/** Compares wires when any is offered and draws the range, by the seed all others use.
 *
 * Returns EM_OK, or what the comparison or the range met; what could not be worked out is then left off the sheets. */
EmStatus
em_paper_job_init (EmPaperJob *out_job, const EmQuote *quote, const EmCost *cost, const EmRates *rates, const EmCatalogue *catalogue,
                   const char *folder, gboolean offers_all, EmFault *out_fault)
{
  const char *logo = rates->text[EM_SHOP_LOGO];
  gboolean has_offers = offers_all || quote->text[EM_QUOTE_OFFERS] != NULL;
  EmStatus status = EM_OK;

  *out_job = (EmPaperJob) { .logo_path = logo != NULL && logo[0] != '\0' ? g_build_filename (folder, logo, NULL) : NULL };
  em_compare_init (&out_job->compare);
  out_job->source = (EmPaperSource) { .quote = quote, .cost = cost, .rates = rates, .catalogue = catalogue, .offers_all = offers_all,
                                      .logo_path = out_job->logo_path };
  if (out_job->logo_path != NULL)
    out_job->source.logo = out_job->logo = em_logo_load (out_job->logo_path, EM_LOGO_WIDTH, EM_LOGO_HEIGHT, NULL);
  if (has_offers)
    status = em_compare_quote (&out_job->compare, quote, -1, rates, catalogue, out_fault);
  if (has_offers && status == EM_OK)
    out_job->source.compare = &out_job->compare;
  if (status == EM_OK)
    status = em_range_quote (quote, rates, catalogue, EM_RANGE_SAMPLES, EM_RANGE_SEED, &out_job->range, out_fault);
  if (status == EM_OK)
    out_job->source.range = &out_job->range;
  return status;
}

void
em_paper_job_clear (EmPaperJob *job)
{
  em_compare_clear (&job->compare);
  g_clear_pointer (&job->logo, em_logo_free);
  g_clear_pointer (&job->logo_path, g_free);
}

gboolean
em_paper_offers (const EmQuote *quote, const char *filler_id)
{
  g_auto (GStrv) ids = quote->text[EM_QUOTE_OFFERS] != NULL ? g_strsplit (quote->text[EM_QUOTE_OFFERS], " ", -1) : NULL;

  return ids != NULL && g_strv_contains ((const char *const *) ids, filler_id);
}

char *
em_paper_with_offer (const EmQuote *quote, const char *filler_id, gboolean is_offered)
{
  g_auto (GStrv) ids = g_strsplit (quote->text[EM_QUOTE_OFFERS] != NULL ? quote->text[EM_QUOTE_OFFERS] : "", " ", -1);
  GString *text = g_string_new (NULL);

  for (int i = 0; ids[i] != NULL; i++)
    if (ids[i][0] != '\0' && !g_str_equal (ids[i], filler_id))
      g_string_append_printf (text, "%s%s", text->len > 0 ? " " : "", ids[i]);
  if (is_offered)
    g_string_append_printf (text, "%s%s", text->len > 0 ? " " : "", filler_id);
  return g_string_free (text, text->len == 0);
}
