/* em-command-cost: `estimend cost`: a quote's figures as a table, as TSV, with their working.
 *
 * The TSV names are the interface of other programs: documented in the man page, only ever added to.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-command-private.h"

#include "em-words.h"

#include <glib/gi18n.h>

/* ---- TSV ---- */

static void
print_real (const char *scope, const char *quantity, double value, const char *unit)
{
  char text[32];

  em_number_write (value, text, sizeof text);
  g_print ("%s\t%s\t%s\t%s\n", scope, quantity, text, unit);
}

static void
print_whole (const char *scope, const char *quantity, gint64 value, const char *unit)
{
  g_print ("%s\t%s\t%" G_GINT64_FORMAT "\t%s\n", scope, quantity, value, unit);
}

/* One tool, all instances; layers and tracks are of one instance. */
static void
print_feature_tsv (const EmJob *job, int32_t index)
{
  const EmFeatureCost *cost = &job->cost.feature[index];
  const char *code = job->rates->currency.code;
  g_autofree char *scope = g_strdup_printf ("feature.%d", index + 1);

  print_real (scope, "net_volume", cost->net_volume_mm3, "mm3");
  print_real (scope, "required_volume", cost->required_volume_mm3, "mm3");
  print_real (scope, "deposited_volume", cost->deposited_volume_mm3, "mm3");
  print_real (scope, "excess_volume", cost->excess_volume_mm3, "mm3");
  print_whole (scope, "layers", cost->plan.layers, "");
  print_whole (scope, "tracks", cost->plan.tracks, "");
  print_real (scope, "wire_diameter", cost->rules.wire_mm, "mm");
  print_real (scope, "welded_length", cost->welded_length_mm, "mm");
  print_real (scope, "wire_length", cost->wire_length_mm, "mm");
  print_whole (scope, "sticks", cost->sticks, "");
  print_real (scope, "filler_mass", cost->filler_mass_g, "g");
  print_real (scope, "speed", cost->arc.speed_mm_per_s, "mm/s");
  print_real (scope, "arc_on", cost->arc_on_s, "s");
  print_real (scope, "labour", cost->labour_s, "s");
  print_whole (scope, "filler_cost", cost->money_minor[EM_MONEY_FILLER], code);
  print_whole (scope, "cost", cost->cost_minor, code);
  print_whole (scope, "price", cost->price_minor, code);
}

/* The whole order. */
static void
print_quote_tsv (const EmJob *job)
{
  const EmCost *cost = &job->cost;
  const char *code = job->rates->currency.code, *scope = "quote";

  print_real (scope, "net_volume", cost->net_volume_mm3, "mm3");
  print_real (scope, "required_volume", cost->required_volume_mm3, "mm3");
  print_real (scope, "deposited_volume", cost->deposited_volume_mm3, "mm3");
  print_whole (scope, "layers", cost->layers, "");
  print_whole (scope, "tracks", cost->tracks, "");
  print_real (scope, "welded_length", cost->welded_length_mm, "mm");
  print_real (scope, "wire_length", cost->wire_length_mm, "mm");
  print_whole (scope, "sticks", cost->sticks, "");
  print_real (scope, "filler_mass", cost->filler_mass_g, "g");
  print_real (scope, "arc_on", cost->arc_on_s, "s");
  print_real (scope, "labour", cost->labour_s, "s");
  print_whole (scope, "settings", cost->settings, "");
  print_whole (scope, "wire_changes", cost->wire_changes, "");
  for (int i = 0; i < EM_N_TASK; i++)
    {
      g_autofree char *quantity = g_strconcat ("task.", em_tasks[i].id, NULL);
      print_real (scope, quantity, cost->task_s[i], "s");
    }
  print_whole (scope, "filler_cost", cost->money_minor[EM_MONEY_FILLER], code);
  for (int i = 0; i < EM_N_MONEY; i++)
    {
      g_autofree char *quantity = g_strconcat ("money.", em_moneys[i].id, NULL);
      print_whole (scope, quantity, cost->money_minor[i], code);
    }
  print_whole (scope, "cost", cost->cost_minor, code);
  print_whole (scope, "subtotal", cost->totals.subtotal_minor, code);
  print_whole (scope, "tax", cost->totals.tax_minor, code);
  print_whole (scope, "total", cost->totals.total_minor, code);
  print_whole (scope, "price", cost->totals.net_minor, code);
  if (job->range.has_range)
    {
      print_whole (scope, "price_p10", job->range.p10_minor, code);
      print_whole (scope, "price_p50", job->range.p50_minor, code);
      print_whole (scope, "price_p90", job->range.p90_minor, code);
    }
  for (int32_t i = 0; i < cost->n_lines; i++)
    {
      g_autofree char *line = g_strdup_printf ("line.%d", i + 1);
      print_whole (line, "amount", cost->line[i].amount_minor, code);
    }
}

static void
print_tsv (const EmJob *job)
{
  for (int32_t i = 0; i < job->cost.n_features; i++)
    if (job->cost.feature[i].status == EM_OK)
      print_feature_tsv (job, i);
  print_quote_tsv (job);
}

/* ---- for people ---- */

static void
print_feature_row (const EmJob *job, int32_t index)
{
  const EmFeatureCost *cost = &job->cost.feature[index];
  const EmUnits units = job->file.quote.units;
  g_autofree char *name = em_words_feature_name (&job->file.quote, index);

  em_command_cell (name, 44, FALSE);
  if (cost->status != EM_OK)
    {
      g_print ("  %s\n", _("not priced"));
      return;
    }
  g_autofree char *wire = em_words_wire (cost->rules.wire_mm, units);
  g_autofree char *arc = em_words_duration (cost->arc_on_s);
  g_autofree char *labour = em_words_duration (cost->labour_s);
  g_autofree char *price = em_words_money (cost->price_minor, &job->rates->currency);
  g_autofree char *layers = g_strdup_printf ("%d", cost->plan.layers);
  em_command_cell (wire, 10, TRUE);
  em_command_cell (layers, 8, TRUE);
  em_command_cell (arc, 12, TRUE);
  em_command_cell (labour, 12, TRUE);
  em_command_cell (price, 16, TRUE);
  g_print ("\n");
}

static void
print_features (const EmJob *job)
{
  em_command_cell (_("Feature"), 44, FALSE);
  em_command_cell (_("Wire"), 10, TRUE);
  em_command_cell (_("Layers"), 8, TRUE);
  em_command_cell (_("Arc-on"), 12, TRUE);
  em_command_cell (_("Bench"), 12, TRUE);
  em_command_cell (_("Price"), 16, TRUE);
  g_print ("\n");
  for (int32_t i = 0; i < job->cost.n_features; i++)
    print_feature_row (job, i);
}

static void
print_amount (const char *name, int64_t minor, const EmCurrency *currency)
{
  g_autofree char *money = em_words_money (minor, currency);

  em_command_cell (name, 82, FALSE);
  em_command_cell (money, 20, TRUE);
  g_print ("\n");
}

static void
print_lines (const EmJob *job)
{
  const EmCurrency *currency = &job->rates->currency;

  for (int32_t i = 0; i < job->cost.n_lines; i++)
    {
      g_autofree char *name = em_words_line (&job->cost.line[i], &job->file.quote, job->rates);
      print_amount (name, job->cost.line[i].amount_minor, currency);
    }
  g_print ("\n");
  print_amount (_("Net price (estimate)"), job->cost.totals.net_minor, currency);
  print_amount (_("Total with tax"), job->cost.totals.total_minor, currency);
  if (!job->range.has_range)
    return;
  print_amount (_("Net price likely to be exceeded one time in ten (estimate)"), job->range.p90_minor, currency);

  const EmRangeInput *largest = &job->range.input[0];
  g_autofree char *name = em_words_feature_name (&job->file.quote, largest->feature);
  g_autofree char *field = em_words_field (job->file.quote.feature[largest->feature].kind->fields[largest->field].id,
                                           job->file.quote.feature[largest->feature].kind);
  g_autofree char *share = em_words_percent ((gint64) (largest->share_ratio * 100.0 + 0.5) * 10000);
  /* Translators: a feature, one of its dimensions, a share such as 60 %. */
  g_print (_("Most of that comes from %s, %s: %s\n"), name, field, share);
}

static void
print_step (const EmTraceStep *step, const EmJob *job)
{
  const EmUnits units = job->file.quote.units;
  const EmCurrency *currency = &job->rates->currency;
  g_autofree char *result = em_words_term (&step->result, units, currency);

  if (step->row >= 0)
    g_print ("feature.%d  ", step->row + 1);
  else
    g_print ("quote      ");
  g_print ("%-20s %s = %s\n", step->quantity, step->result.symbol, result);
  g_print ("           %s\n", em_words (step->formula));
  for (int i = 0; i < step->n_inputs; i++)
    {
      g_autofree char *input = em_words_term (&step->input[i], units, currency);

      g_print ("             %s = %s\n", em_words (step->input[i].symbol), input);
    }
  if (step->source != NULL && *step->source != '\0')
    g_print ("           (%s)\n", em_words (step->source));
}

static void
print_people (const EmJob *job, const EmTrace *trace)
{
  print_features (job);
  g_print ("\n");
  print_lines (job);
  if (trace == NULL)
    return;
  g_print ("\n%s\n", _("The working"));
  for (int i = 0; i < trace->n_steps; i++)
    print_step (&trace->step[i], job);
}

int
em_command_cost (int argc, char **argv)
{
  g_autofree char *rates = NULL, *metals = NULL;
  gboolean is_tsv = FALSE, is_explained = FALSE;
  const GOptionEntry entries[] = {
    { "tsv", 0, 0, G_OPTION_ARG_NONE, &is_tsv, N_("For other programs: scope, quantity, value, unit"), NULL },
    { "explain", 0, 0, G_OPTION_ARG_NONE, &is_explained, N_("Show the working behind every figure"), NULL },
    { "rates", 0, 0, G_OPTION_ARG_FILENAME, &rates, N_("Another rate book than the shop's"), N_("FILE") },
    { "metals", 0, 0, G_OPTION_ARG_FILENAME, &metals, N_("Another catalogue than the shop's"), N_("FILE") },
    G_OPTION_ENTRY_NULL
  };
  int status = EM_EXIT_INPUT;

  if (!em_command_options (&argc, &argv, _("FILE"), entries, &status))
    return status;
  if (argc != 2)
    return em_command_misuse (_("cost needs one quote file."));

  EmJob job;
  EmTrace trace;

  em_job_init (&job);
  em_trace_init (&trace);
  if (em_job_load (&job, argv[1], rates, metals, is_explained ? &trace : NULL))
    {
      if (is_tsv)
        print_tsv (&job);
      else
        print_people (&job, is_explained ? &trace : NULL);
      status = em_job_tell_faults (&job, argv[1]) ? EM_EXIT_GOOD : EM_EXIT_INPUT;
    }
  em_trace_clear (&trace);
  em_job_clear (&job);
  return status;
}
