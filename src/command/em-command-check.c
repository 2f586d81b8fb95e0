/* em-command-check: `estimend check`, `estimend lines` and `estimend print`: a quote looked at and put on paper.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-command-private.h"

#include "em-paper-job.h"
#include "em-words.h"

#include <glib/gi18n.h>

#include <string.h>

/* Prices one file as any other command would; 0 or 1. */
static int
check_one (const char *path)
{
  EmJob job;
  int status = EM_EXIT_INPUT;

  em_job_init (&job);
  if (em_job_load (&job, path, NULL, NULL, NULL) && em_job_tell_faults (&job, path))
    {
      g_print (ngettext ("%s: good, %d feature\n", "%s: good, %d features\n", (gulong) job.cost.n_features),
               path, job.cost.n_features);
      status = EM_EXIT_GOOD;
    }
  em_job_clear (&job);
  return status;
}

int
em_command_check (int argc, char **argv)
{
  int status = EM_EXIT_GOOD;

  if (!em_command_options (&argc, &argv, _("FILE…"), NULL, &status))
    return status;
  if (argc < 2)
    return em_command_misuse (_("check needs at least one quote file."));
  for (int i = 1; i < argc; i++)
    if (check_one (argv[i]) != EM_EXIT_GOOD)
      status = EM_EXIT_INPUT;
  return status;
}

int
em_command_lines (int argc, char **argv)
{
  int status = EM_EXIT_INPUT;

  if (!em_command_options (&argc, &argv, _("FILE"), NULL, &status))
    return status;
  if (argc != 2)
    return em_command_misuse (_("lines needs one quote file."));

  EmJob job;
  em_job_init (&job);
  if (em_job_load (&job, argv[1], NULL, NULL, NULL) && em_job_tell_faults (&job, argv[1]))
    {
      const EmPaperSource source = { .quote = &job.file.quote, .cost = &job.cost, .rates = job.rates, .catalogue = job.catalogue };
      g_autofree char *csv = em_paper_lines_csv (&source);

      g_print ("%s", csv);
      status = EM_EXIT_GOOD;
    }
  em_job_clear (&job);
  return status;
}

static gboolean
export_sheet (const EmJob *job, EmSheet sheet, gboolean has_options, const char *path, const char *date, GError **error)
{
  g_autofree char *book = em_book_own_rates_path ();
  g_autofree char *folder = g_path_get_dirname (book);
  EmPaperJob paper;
  EmFault fault;
  gboolean is_good = FALSE;

  if (em_paper_job_init (&paper, &job->file.quote, &job->cost, job->rates, job->catalogue, folder, has_options, &fault) == EM_OK)
    is_good = em_paper_export (sheet, &paper.source, path, date, error);
  else
    {
      g_autofree char *sentence = em_words_fault (&fault, &job->file.quote, job->file.quote.units);

      g_set_error_literal (error, EM_PAPER_ERROR, EM_PAPER_ERROR_EMPTY, sentence);
    }
  em_paper_job_clear (&paper);
  return is_good;
}

int
em_command_print (int argc, char **argv)
{
  g_autofree char *out = NULL, *sheet = NULL, *date = NULL;
  gboolean has_options = FALSE;
  const GOptionEntry entries[] = {
    { "options", 0, 0, G_OPTION_ARG_NONE, &has_options, N_("Offer all other wires with their prices, not only those the quote names"), NULL },
    { "output", 'o', 0, G_OPTION_ARG_FILENAME, &out, N_("Where to write the PDF"), N_("OUT.pdf") },
    { "sheet", 0, 0, G_OPTION_ARG_STRING, &sheet, N_("Which sheet: quote (default) or bench"), N_("SHEET") },
    { "date", 0, 0, G_OPTION_ARG_STRING, &date, N_("Creation date of the PDF, ISO 8601; default: the quote's"), N_("DATE") },
    G_OPTION_ENTRY_NULL
  };
  int status = EM_EXIT_INPUT;

  if (!em_command_options (&argc, &argv, _("FILE -o OUT.pdf"), entries, &status))
    return status;
  if (argc != 2 || out == NULL)
    return em_command_misuse (_("print needs one quote file and -o OUT.pdf."));
  gboolean is_bench = g_strcmp0 (sheet, "bench") == 0;
  if (sheet != NULL && !is_bench && !g_str_equal (sheet, "quote"))
    return em_command_misuse (_("--sheet is “quote” or “bench”, not “%s”."), sheet);

  EmJob job;
  em_job_init (&job);
  if (em_job_load (&job, argv[1], NULL, NULL, NULL))
    {
      g_autoptr (GError) error = NULL;
      /* As in the window: the paper says itself what has no price yet. */
      gboolean is_whole = em_job_tell_faults (&job, argv[1]);

      if (export_sheet (&job, is_bench ? EM_SHEET_BENCH : EM_SHEET_QUOTE, has_options, out,
                        date != NULL ? date : job.file.quote.text[EM_QUOTE_DATE], &error))
        status = is_whole ? EM_EXIT_GOOD : EM_EXIT_INPUT;
      else
        g_printerr ("estimend: %s: %s\n", out, error->message);
    }
  em_job_clear (&job);
  return status;
}
