/* em-job: a quote loaded and priced for a command.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-command-private.h"

#include "em-place.h"
#include "em-words.h"

#include <glib/gi18n.h>

void
em_job_init (EmJob *out_job)
{
  em_quote_file_init (&out_job->file);
  em_rates_init (&out_job->own_rates);
  em_catalogue_init (&out_job->own_catalogue);
  em_cost_init (&out_job->cost);
  out_job->range = (EmRange) { .has_range = false };
  out_job->process = NULL;
  out_job->rates = NULL;
  out_job->catalogue = NULL;
}

void
em_job_clear (EmJob *job)
{
  em_cost_clear (&job->cost);
  em_catalogue_clear (&job->own_catalogue);
  em_rates_clear (&job->own_rates);
  em_quote_file_clear (&job->file);
}

/* The shop's book and metals, then the files named in their place. */
static gboolean
load_books (EmJob *job, const char *rates_path, const char *metals_path, GError **error)
{
  if (!em_book_load (&job->own_rates, &job->own_catalogue, error))
    return FALSE;
  if (rates_path != NULL)
    {
      EmRates rates;

      if (!em_rates_load (rates_path, &rates, error))
        return FALSE;
      em_rates_clear (&job->own_rates);
      job->own_rates = rates;
    }
  if (metals_path != NULL)
    {
      EmCatalogue catalogue;

      if (!em_catalogue_load (metals_path, &catalogue, error))
        return FALSE;
      em_catalogue_clear (&job->own_catalogue);
      job->own_catalogue = catalogue;
    }
  return TRUE;
}

/* FALSE: no memory. */
static gboolean
name_process (EmQuote *quote, const char *process)
{
  gboolean is_named = em_quote_set_text (quote, EM_QUOTE_PROCESS, process) == EM_OK && em_quote_set_text (quote, EM_QUOTE_MACHINE, NULL) == EM_OK;

  for (int32_t i = 0; is_named && i < quote->n_features; i++)
    is_named = em_feature_set_text (&quote->feature[i], EM_FEATURE_PROCESS, NULL) == EM_OK
               && em_feature_set_text (&quote->feature[i], EM_FEATURE_MACHINE, NULL) == EM_OK;
  return is_named;
}

gboolean
em_job_load (EmJob *job, const char *path, const char *rates_path, const char *metals_path, EmTrace *trace)
{
  g_autoptr (GError) error = NULL;
  EmFault fault;

  if (!em_quote_file_load (path, &job->file, &error) || !load_books (job, rates_path, metals_path, &error))
    {
      g_printerr ("estimend: %s\n", error->message);
      return FALSE;
    }
  if (job->file.n_kept > 0)
    {
      g_autofree char *sentence = g_strdup_printf (ngettext ("A newer version wrote this file. %u thing it holds can’t be used here: it is not in the price, and is kept when the quote is saved.",
                                                             "A newer version wrote this file. %u things it holds can’t be used here: they are not in the price, and are kept when the quote is saved.",
                                                             job->file.n_kept), job->file.n_kept);
      g_printerr ("estimend: %s: %s\n", path, sentence);
    }
  job->rates = job->file.sent_rates != NULL && rates_path == NULL ? job->file.sent_rates : &job->own_rates;
  job->catalogue = job->file.sent_catalogue != NULL && metals_path == NULL ? job->file.sent_catalogue : &job->own_catalogue;
  if (job->process != NULL && !name_process (&job->file.quote, job->process))
    {
      g_printerr ("estimend: %s\n", _("There is not enough memory."));
      return FALSE;
    }
  if (em_cost_quote (&job->cost, &job->file.quote, job->rates, job->catalogue, trace, &fault) != EM_OK
      || em_range_quote (&job->file.quote, job->rates, job->catalogue, EM_RANGE_SAMPLES, EM_RANGE_SEED, &job->range, &fault) != EM_OK)
    {
      g_autofree char *sentence = em_words_fault (&fault, &job->file.quote, job->file.quote.units);

      g_printerr ("estimend: %s: %s\n", path, sentence);
      return FALSE;
    }
  return TRUE;
}

gboolean
em_job_tell_faults (const EmJob *job, const char *path)
{
  for (int32_t i = 0; i < job->cost.n_features; i++)
    if (job->cost.feature[i].status != EM_OK)
      {
        EmFault fault = job->cost.feature[i].fault;

        fault.row = i;
        g_autofree char *sentence = em_words_fault (&fault, &job->file.quote, job->file.quote.units);
        g_printerr ("estimend: %s: %s\n", path, sentence);
      }
  return job->cost.n_faults == 0;
}
