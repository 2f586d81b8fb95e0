/* em-command-cost: `estimend cost`: a quote's figures as a table, as TSV, with their working.
 *
 * The TSV names are the interface of other programs: documented in the man page, only ever added to.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-command-private.h"

#include "em-words.h"

#include <glib/gi18n.h>
#include <math.h>

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

static const char *const why_ids[EM_N_WHY] = { "cheapest", "only", "office" };

/* A price is told when there is something to price and all of it is priced. */
static gboolean
has_price (const EmJob *job)
{
  return job->cost.n_faults == 0 && job->cost.n_lines > 0;
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
  print_whole (scope, "calculated", cost->calculated_minor, code);
  g_print ("%s\tmachine\t%s\t\n", scope, job->rates->machine[cost->machine].id);
  g_print ("%s\twire_choice\t%s\t\n", scope, why_ids[cost->why]);
  print_whole (scope, "office_choice", cost->office_choice_minor, code);
}

static void
print_totals_tsv (const char *scope, const EmTotals *totals, const char *code)
{
  print_whole (scope, "subtotal", totals->subtotal_minor, code);
  print_whole (scope, "tax", totals->tax_minor, code);
  print_whole (scope, "total", totals->total_minor, code);
  print_whole (scope, "price", totals->net_minor, code);
}

static void
print_line_tsv (const EmLine *line, int32_t index, const char *code)
{
  g_autofree char *scope = g_strdup_printf ("line.%d", index + 1);

  print_whole (scope, "amount", line->amount_minor, code);
  if (line->is_override)
    print_whole (scope, "calculated", line->calculated_minor, code);
}

/* Feature N's M-th size tried. */
static void
print_sizes_tsv (const EmJob *job, int32_t index, const EmSizeTried *tried, int32_t n_tried)
{
  for (int32_t i = 0; i < n_tried; i++)
    {
      g_autofree char *scope = g_strdup_printf ("size.%d.%d", index + 1, i + 1);

      print_real (scope, "wire_diameter", tried[i].wire_mm, "mm");
      g_print ("%s\tmachine\t%s\t\n", scope, job->rates->machine[tried[i].machine].id);
      print_whole (scope, "fits", tried[i].status == EM_OK, "");
      if (tried[i].status != EM_OK)
        continue;
      print_whole (scope, "overfills", tried[i].overfills, "");
      print_whole (scope, "price", tried[i].price_minor, job->rates->currency.code);
    }
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
  print_whole (scope, "not_priced", cost->n_faults, "");
  if (has_price (job))
    print_totals_tsv (scope, &cost->totals, code);
  if (has_price (job) && job->range.has_range)
    {
      print_whole (scope, "price_p10", job->range.p10_minor, code);
      print_whole (scope, "price_p50", job->range.p50_minor, code);
      print_whole (scope, "price_p90", job->range.p90_minor, code);
      print_whole (scope, "draws_refused", job->range.n_refused, "");
    }
  for (int32_t i = 0; i < cost->n_lines; i++)
    print_line_tsv (&cost->line[i], i, code);
  for (int32_t i = 0; has_price (job) && i < cost->n_breaks; i++)
    {
      g_autofree char *of_tools = g_strdup_printf ("break.%d", cost->breaks[i].n_tools);

      print_totals_tsv (of_tools, &cost->breaks[i], code);
      print_whole (of_tools, "each", cost->breaks[i].each_minor, code);
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
  g_print (" ");
  if (cost->status != EM_OK)
    {
      g_print ("%s\n", _("not priced"));
      return;
    }
  em_command_cell (job->rates->machine[cost->machine].name, 26, FALSE);
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
  em_command_cell (_("Feature"), 45, FALSE);
  em_command_cell (_("Machine"), 26, FALSE);
  em_command_cell (_("Wire"), 10, TRUE);
  em_command_cell (_("Layers"), 8, TRUE);
  em_command_cell (_("Arc-on"), 12, TRUE);
  em_command_cell (_("Bench"), 12, TRUE);
  em_command_cell (_("Price"), 16, TRUE);
  g_print ("\n");
  for (int32_t i = 0; i < job->cost.n_features; i++)
    print_feature_row (job, i);
}

/* What the office's own choices of wire and machine cost beside the cheapest that fit. */
static void
print_choices (const EmJob *job)
{
  for (int32_t i = 0; i < job->cost.n_features; i++)
    {
      const EmFeatureCost *cost = &job->cost.feature[i];

      if (cost->status != EM_OK || cost->office_choice_minor <= 0)
        continue;
      g_autofree char *name = em_words_feature_name (&job->file.quote, i);
      g_autofree char *extra = em_words_money (cost->office_choice_minor, &job->rates->currency);
      /* Translators: a feature, an amount of money. */
      g_print (_("%s: the wire or machine you chose costs %s more than the cheapest that fits.\n"), name, extra);
    }
}

static void
print_money (const char *name, const char *money)
{
  em_command_cell (name, 109, FALSE);
  em_command_cell (money, 20, TRUE);
  g_print ("\n");
}

static void
print_amount (const char *name, int64_t minor, const EmCurrency *currency)
{
  g_autofree char *money = em_words_money (minor, currency);

  print_money (name, money);
}

static void
print_lines (const EmJob *job)
{
  const EmCurrency *currency = &job->rates->currency;

  for (int32_t i = 0; i < job->cost.n_lines; i++)
    {
      const EmLine *line = &job->cost.line[i];
      g_autofree char *name = em_words_line (line, &job->file.quote, job->rates);
      g_autofree char *calculated = em_words_money (line->calculated_minor, currency);
      /* Translators: a line of the quote whose price the office stated itself, then what was calculated. */
      g_autofree char *stated = g_strdup_printf (_("%s, stated price (calculated: %s)"), name, calculated);

      print_amount (line->is_override ? stated : name, line->amount_minor, currency);
    }
}

/* The prices for other numbers of tools. */
static void
print_breaks (const EmJob *job)
{
  const EmCurrency *currency = &job->rates->currency;

  for (int32_t i = 0; i < job->cost.n_breaks; i++)
    {
      const EmTotals *totals = &job->cost.breaks[i];
      g_autofree char *each = em_words_money (totals->each_minor, currency);
      /* Translators: a number of tools; the net price of each. */
      g_autofree char *name = g_strdup_printf (ngettext ("Net price for %d tool, %s each (estimate)", "Net price for %d tools, %s each (estimate)",
                                                         (gulong) totals->n_tools), totals->n_tools, each);

      print_amount (name, totals->net_minor, currency);
    }
}

static void
print_no_price (const EmCost *cost)
{
  if (cost->n_faults == 0)
    g_print ("%s\n", _("There is nothing to price yet."));
  else
    {
      /* Translators: how many features are not priced, of how many. */
      g_print (ngettext ("No price yet: %d of %d feature is not priced.", "No price yet: %d of %d features are not priced.", (gulong) cost->n_features),
               cost->n_faults, cost->n_features);
      g_print ("\n");
    }
}

static void
print_range (const EmJob *job)
{
  g_autofree char *high = em_words_money_rough (job->range.p90_minor, job->range.p50_minor, &job->rates->currency);

  if (em_range_is_wide (&job->range))
    print_money (_("Net price likely to be exceeded one time in ten (estimate)"), high);
  else
    g_print ("%s\n", _("Sizes known only between limits move the price by less than a hundredth."));
  if (job->range.n_refused > 0)
    {
      /* Translators: sizes drawn at random between the low and the high that the office gave. */
      g_print (ngettext ("%d of the sizes drawn for this cannot be welded and is left out.", "%d of the sizes drawn for this cannot be welded and are left out.",
                         (gulong) job->range.n_refused), job->range.n_refused);
      g_print ("\n");
    }

  const EmRangeInput *largest = &job->range.input[0];
  if (!(largest->share_ratio > 0.0))
    return;
  g_autofree char *name = em_words_feature_name (&job->file.quote, largest->feature);
  g_autofree char *field = em_words_field (job->file.quote.feature[largest->feature].kind->fields[largest->field].id,
                                           job->file.quote.feature[largest->feature].kind);
  g_autofree char *share = em_words_percent ((gint64) (largest->share_ratio * 100.0 + 0.5) * 10000);
  /* Translators: a feature, one of its dimensions, a share such as 60 %. */
  g_print (_("Most of that comes from %s, %s: %s\n"), name, field, share);
}

static void
print_totals (const EmJob *job)
{
  const EmCurrency *currency = &job->rates->currency;

  if (!has_price (job))
    {
      print_no_price (&job->cost);
      return;
    }
  print_amount (_("Net price (estimate)"), job->cost.totals.net_minor, currency);
  print_amount (_("Total with tax"), job->cost.totals.total_minor, currency);
  print_breaks (job);
  if (job->range.has_range)
    print_range (job);
}

/* ---- the sizes there are to choose from ---- */

static void
print_size (const EmJob *job, int32_t index, const EmSizeTried *tried)
{
  const EmFeatureCost *cost = &job->cost.feature[index];
  const EmUnits units = job->file.quote.units;
  gboolean is_taken = cost->status == EM_OK && cost->machine == tried->machine && fabs (cost->rules.wire_mm - tried->wire_mm) < 1e-9;
  g_autofree char *wire = em_words_wire (tried->wire_mm, units);
  g_autofree char *price = em_words_money (tried->price_minor, &job->rates->currency);

  g_print ("  %s ", is_taken ? "→" : " ");
  em_command_cell (wire, 10, TRUE);
  g_print ("  ");
  em_command_cell (job->rates->machine[tried->machine].name, 26, FALSE);
  if (tried->status == EM_OK)
    {
      em_command_cell (price, 16, TRUE);
      g_print ("%s%s\n", tried->overfills ? "  " : "", tried->overfills ? _("one layer is thicker than the metal wanted") : "");
      return;
    }

  EmFault fault = tried->fault;
  fault.row = EM_ROW_QUOTE;
  g_autofree char *sentence = em_words_fault (&fault, &job->file.quote, units);
  g_print ("  %s\n", sentence);
}

/* Of every feature that can be welded at all; the others are told as faults anyway. */
static void
print_sizes (const EmJob *job, gboolean is_tsv)
{
  EmSizeTried tried[EM_TRIED_MAX];
  int32_t n;

  for (int32_t i = 0; i < job->file.quote.n_features; i++)
    {
      if (em_cost_tried (&job->file.quote, i, job->rates, job->catalogue, tried, &n, NULL) != EM_OK)
        continue;
      if (is_tsv)
        {
          print_sizes_tsv (job, i, tried, n);
          continue;
        }
      g_autofree char *name = em_words_feature_name (&job->file.quote, i);

      g_print ("\n%s\n", name);
      for (int32_t k = 0; k < n; k++)
        print_size (job, i, &tried[k]);
    }
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
  print_choices (job);
  g_print ("\n");
  print_lines (job);
  g_print ("\n");
  print_totals (job);
  if (trace == NULL)
    return;
  g_print ("\n%s\n", _("The working"));
  for (int i = 0; i < trace->n_steps; i++)
    print_step (&trace->step[i], job);
  if (trace->is_out_of_memory)
    g_printerr ("estimend: %s\n", _("There is not enough memory."));
}

int
em_command_cost (int argc, char **argv)
{
  g_autofree char *rates = NULL, *metals = NULL, *process = NULL;
  gboolean is_tsv = FALSE, is_explained = FALSE, wants_sizes = FALSE;
  const GOptionEntry entries[] = {
    { "tsv", 0, 0, G_OPTION_ARG_NONE, &is_tsv, N_("For other programs: scope, quantity, value, unit"), NULL },
    { "explain", 0, 0, G_OPTION_ARG_NONE, &is_explained, N_("Show the working behind every figure"), NULL },
    { "sizes", 0, 0, G_OPTION_ARG_NONE, &wants_sizes, N_("Show every wire size and machine tried, with its price or why it doesn’t fit"), NULL },
    { "process", 0, 0, G_OPTION_ARG_STRING, &process, N_("Weld all of it by any machine of this process: laser, gtaw"), N_("PROCESS") },
    { "rates", 0, 0, G_OPTION_ARG_FILENAME, &rates, N_("Another rate book than the shop's"), N_("FILE") },
    { "metals", 0, 0, G_OPTION_ARG_FILENAME, &metals, N_("Another catalogue than the shop's"), N_("FILE") },
    G_OPTION_ENTRY_NULL
  };
  int status = EM_EXIT_INPUT;

  if (!em_command_options (&argc, &argv, _("FILE"), entries, &status))
    return status;
  if (argc != 2)
    return em_command_misuse (_("cost needs one quote file."));
  if (process != NULL && em_process_find (process) < 0)
    return em_command_misuse (_("--process is “laser” or “gtaw”, not “%s”."), process);

  EmJob job;
  EmTrace trace;

  em_job_init (&job);
  job.process = process;
  em_trace_init (&trace);
  if (em_job_load (&job, argv[1], rates, metals, is_explained ? &trace : NULL))
    {
      if (is_tsv)
        print_tsv (&job);
      else
        print_people (&job, is_explained ? &trace : NULL);
      if (wants_sizes)
        print_sizes (&job, is_tsv);
      status = em_job_tell_faults (&job, argv[1]) ? EM_EXIT_GOOD : EM_EXIT_INPUT;
    }
  em_trace_clear (&trace);
  em_job_clear (&job);
  return status;
}
