/* em-command-compare: `estimend compare`: every wire the shop stocks, priced over a quote.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-command-private.h"

#include "em-paper.h"
#include "em-words.h"

#include <glib/gi18n.h>

static void
print_row_tsv (const EmCompareRow *row, const EmJob *job)
{
  const char *id = job->catalogue->filler[row->filler].id, *code = job->rates->currency.code;

  g_print ("filler.%s\truled_out\t%d\t\n", id, row->is_ruled_out);
  for (int i = 0; i < EM_N_REASON; i++)
    if (row->reasons & EM_REASON_BIT (i))
      g_print ("filler.%s\treason\t%s\t\n", id, em_reason_ids[i]);
  if (row->is_ruled_out)
    return;

  char arc_on[32], labour[32], low[32], high[32];
  em_number_write (row->arc_on_s, arc_on, sizeof arc_on);
  em_number_write (row->labour_s, labour, sizeof labour);
  em_number_write (row->wire_low_mm, low, sizeof low);
  em_number_write (row->wire_high_mm, high, sizeof high);
  g_print ("filler.%s\tpresent\t%d\t\n", id, row->is_present);
  g_print ("filler.%s\tprice\t%" G_GINT64_FORMAT "\t%s\n", id, row->net_minor, code);
  g_print ("filler.%s\ttotal\t%" G_GINT64_FORMAT "\t%s\n", id, row->total_minor, code);
  g_print ("filler.%s\tdifference\t%" G_GINT64_FORMAT "\t%s\n", id, row->difference_minor, code);
  g_print ("filler.%s\tfiller_cost\t%" G_GINT64_FORMAT "\t%s\n", id, row->filler_cost_minor, code);
  g_print ("filler.%s\tarc_on\t%s\ts\n", id, arc_on);
  g_print ("filler.%s\tlabour\t%s\ts\n", id, labour);
  g_print ("filler.%s\twire_low\t%s\tmm\n", id, low);
  g_print ("filler.%s\twire_high\t%s\tmm\n", id, high);
}

static void
print_reasons (EmReasons reasons, EmReasons which, const char *sign)
{
  for (int i = 0; i < EM_N_REASON; i++)
    if (reasons & which & EM_REASON_BIT (i))
      g_print ("    %s %s\n", sign, em_words_reason ((EmReason) i));
}

static void
print_row_people (const EmCompareRow *row, const EmJob *job)
{
  const EmFiller *filler = &job->catalogue->filler[row->filler];
  const EmCurrency *currency = &job->rates->currency;

  if (row->is_ruled_out)
    {
      g_print ("%s: %s\n", filler->designation, _("ruled out"));
      print_reasons (row->reasons, EM_REASONS_RULE_OUT, "–");
      if (row->fault.code != EM_OK && row->fault.code != EM_FAULT_UNSUITED)
        {
          g_autofree char *sentence = em_words_fault (&row->fault, &job->file.quote, job->file.quote.units);
          g_print ("    – %s\n", sentence);
        }
      return;
    }
  g_autofree char *price = em_words_money (row->net_minor, currency);
  g_autofree char *difference = em_words_money (row->difference_minor, currency);
  g_autofree char *arc_on = em_words_duration (row->arc_on_s);
  g_autofree char *labour = em_words_duration (row->labour_s);
  g_autofree char *wire = em_words_money (row->filler_cost_minor, currency);
  g_autofree char *hardness = em_words_hardness (&row->pairing), *tool = em_words_base_hardness (&row->pairing);

  g_print ("%s %s: %s", row->is_present ? "→" : " ", filler->designation, price);
  if (!row->is_present)
    g_print (" (%s%s)", row->difference_minor > 0 ? "+" : "", difference);
  /* Translators: what the wire costs, arc-on time, then time at the bench. */
  g_print (_("; wire %s, arc-on %s, bench %s"), wire, arc_on, labour);
  g_print ("\n");
  if (hardness != NULL && tool != NULL)
    /* Translators: hardness of the deposit, then of the tool. */
    g_print (_("    hardness %s; the tool %s\n"), hardness, tool);
  print_reasons (row->reasons, EM_REASONS_FOR, "+");
  print_reasons (row->reasons, ~EM_REASONS_FOR & ~EM_REASONS_RULE_OUT, "−");
}

static void
print_csv (const EmJob *job, const EmCompare *compare)
{
  const EmPaperSource source = { .quote = &job->file.quote, .cost = &job->cost, .rates = job->rates, .catalogue = job->catalogue, .compare = compare };
  g_autofree char *csv = em_paper_compare_csv (&source);

  g_print ("%s", csv);
}

int
em_command_compare (int argc, char **argv)
{
  gboolean is_tsv = FALSE, is_csv = FALSE;
  int feature = 0;
  const GOptionEntry entries[] = {
    { "tsv", 0, 0, G_OPTION_ARG_NONE, &is_tsv, N_("For other programs: scope, quantity, value, unit"), NULL },
    { "csv", 0, 0, G_OPTION_ARG_NONE, &is_csv, N_("For spreadsheets: comma-separated values (RFC 4180)"), NULL },
    { "feature", 0, 0, G_OPTION_ARG_INT, &feature, N_("Change the wire of this feature only, counted from 1"), N_("N") },
    G_OPTION_ENTRY_NULL
  };
  int status = EM_EXIT_INPUT;

  if (!em_command_options (&argc, &argv, _("FILE"), entries, &status))
    return status;
  if (argc != 2 || feature < 0 || (is_tsv && is_csv))
    return em_command_misuse (_("compare needs one quote file; features count from 1."));

  EmJob job;
  EmCompare compare;
  EmFault fault;

  em_job_init (&job);
  em_compare_init (&compare);
  if (em_job_load (&job, argv[1], NULL, NULL, NULL) && em_job_tell_faults (&job, argv[1]))
    {
      if (feature > job.cost.n_features)
        status = em_command_misuse (ngettext ("The quote has %d feature.", "The quote has %d features.", (gulong) job.cost.n_features),
                                    job.cost.n_features);
      else if (job.cost.n_features == 0)
        {
          g_printerr ("estimend: %s: %s\n", argv[1], _("There is nothing to price yet."));
          status = EM_EXIT_INPUT;
        }
      else if (em_compare_quote (&compare, &job.file.quote, feature - 1, job.rates, job.catalogue, &fault) != EM_OK)
        {
          g_autofree char *sentence = em_words_fault (&fault, &job.file.quote, job.file.quote.units);
          g_printerr ("estimend: %s: %s\n", argv[1], sentence);
        }
      else
        {
          if (is_csv)
            print_csv (&job, &compare);
          for (int32_t i = 0; i < compare.n_rows && !is_csv; i++)
            (is_tsv ? print_row_tsv : print_row_people) (&compare.row[i], &job);
          status = EM_EXIT_GOOD;
        }
    }
  em_compare_clear (&compare);
  em_job_clear (&job);
  return status;
}
