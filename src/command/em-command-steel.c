/* em-command-steel: `estimend steel`: what a base metal and a wire make together.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-command-private.h"

#include "em-caution.h"
#include "em-steel.h"
#include "em-trace.h"
#include "em-words.h"

#include <glib/gi18n.h>

static void
print_estimate (const char *name, const EmEstimate *estimate, const char *unit, int decimals)
{
  g_autofree char *text = em_words_estimate (estimate, unit, decimals);

  g_print ("  ");
  em_command_cell (name, 36, FALSE);
  g_print (" %s\n", text);
}

static void
print_constitution (const char *name, const EmConstitution *constitution, gboolean is_wrc)
{
  g_autofree char *chromium = em_words_number (constitution->cr_eq, 1);
  g_autofree char *nickel = em_words_number (constitution->ni_eq, 1);
  g_autofree char *field = em_words_constitution (constitution, is_wrc);

  g_print ("  ");
  em_command_cell (name, 36, FALSE);
  g_print (" Cr eq %s, Ni eq %s: %s\n", chromium, nickel, field);
}

static void
print_fact (const char *name, const char *text)
{
  g_print ("  ");
  em_command_cell (name, 36, FALSE);
  g_print (" %s\n", text != NULL ? text : _("not known"));
}

static void
print_hardness (const EmPairing *pairing)
{
  g_autofree char *deposit = em_words_hardness (pairing), *tool = em_words_base_hardness (pairing);

  print_fact (pairing->is_hardness_from_catalogue ? _("Hardness of the deposit, catalog") : _("Hardness of the deposit, estimate"), deposit);
  print_fact (_("Hardness of the tool"), tool);
}

static void
print_preheat (const EmPairing *pairing)
{
  g_autofree char *degrees = em_words_number (pairing->preheat_degc, 0), *ceiling = em_words_number (pairing->preheat_ceiling_degc, 0);
  g_autofree char *text = NULL;

  if (!pairing->is_preheat_advised || em_is_absent (pairing->preheat_degc))
    text = g_strdup (pairing->is_preheat_advised ? _("advised") : _("none advised"));
  else if (em_is_absent (pairing->preheat_ceiling_degc))
    text = g_strdup_printf (_("about %s °C"), degrees);
  else
    text = g_strdup_printf (_("about %s °C, below %s °C"), degrees, ceiling);
  print_fact (_("Preheat"), text);
}

static void
print_deposit (const EmChemistry deposit)
{
  g_print ("%s\n ", _("Deposit, mass percent (estimate)"));
  for (int i = 0; i < EM_N_ELEMENT; i++)
    if (deposit[i] >= 0.005)
      {
        g_autofree char *value = em_words_number (deposit[i], 2);
        g_print (" %s %s", em_element_ids[i], value);
      }
  g_print ("\n");
}

static void
print_pairing (const EmBase *base, const EmFiller *filler, EmProcess process, double dilution, const EmPairing *pairing)
{
  g_autofree char *share = em_words_percent ((gint64) (dilution * 1e6 + 0.5));

  /* Translators: base metal, wire, process, share of the base metal in the deposit. */
  g_print (_("%s welded with %s, %s, dilution %s\n"), base->designation, filler->designation, em_words_process (process), share);
  print_deposit (pairing->deposit);
  print_hardness (pairing);
  print_preheat (pairing);
  print_estimate (_("Carbon equivalent (IIW)"), &pairing->ce_iiw, "", 2);
  print_estimate (_("Carbon equivalent CET (EN 1011-2)"), &pairing->cet, "", 2);
  print_estimate (_("Martensite start (Andrews)"), &pairing->ms_degc, "°C", 0);
  print_estimate (_("Preheat for an arc (Séférian)"), &pairing->preheat_seferian_degc, "°C", 0);
  print_estimate (_("Preheat for an arc (EN 1011-2)"), &pairing->preheat_en1011_degc, "°C", 0);
  print_estimate (_("Hardness of martensite"), &pairing->martensite_hrc, "HRC", 0);
  print_constitution (_("Schaeffler"), &pairing->schaeffler, FALSE);
  print_constitution (_("WRC-1992"), &pairing->wrc, TRUE);
  for (int i = 0; i < EM_N_REASON; i++)
    if (pairing->reasons & EM_REASON_BIT (i))
      g_print ("  %s %s\n", EM_REASONS_FOR & EM_REASON_BIT (i) ? "+" : "−", em_words_reason ((EmReason) i));

  uint32_t cautions = em_caution_pair (base, filler, process) | (pairing->is_preheat_advised ? 1u << EM_CAUTION_PREHEAT_BURNS : 0);
  g_print ("%s\n", _("Cautions"));
  for (int i = 0; i < EM_N_CAUTION; i++)
    if (cautions & (1u << i))
      g_print ("  • %s\n", em_words_caution ((EmCaution) i));
}

/* Symbol and figure, formula, what went in, source. */
static void
print_working (const EmTrace *trace, const EmRates *rates)
{
  g_print ("%s\n", _("The working"));
  for (int i = 0; i < trace->n_steps; i++)
    {
      const EmTraceStep *step = &trace->step[i];
      g_autofree char *result = em_words_term (&step->result, rates->units, &rates->currency);

      g_print ("  %s = %s\n    %s\n", em_words (step->result.symbol), result, em_words (step->formula));
      for (int k = 0; k < step->n_inputs; k++)
        {
          g_autofree char *input = em_words_term (&step->input[k], rates->units, &rates->currency);
          g_print ("      %s = %s\n", em_words (step->input[k].symbol), input);
        }
      g_print ("    (%s)\n", em_words (step->source));
    }
}

static int
explain (const EmRates *rates, const EmCatalogue *catalogue, const char *base_id, const char *filler_id, EmProcess process,
         double dilution, double section_mm, gboolean has_working)
{
  int32_t base = em_catalogue_find_base (catalogue, base_id), filler = em_catalogue_find_filler (catalogue, filler_id);

  if (base < 0 || filler < 0)
    {
      g_printerr (base < 0 ? _("estimend: no base metal “%s” in the catalogue. There are:") : _("estimend: no wire “%s” in the catalogue. There are:"),
                  base < 0 ? base_id : filler_id);
      for (int32_t i = 0; i < (base < 0 ? catalogue->n_bases : catalogue->n_fillers); i++)
        g_printerr (" %s", base < 0 ? catalogue->base[i].id : catalogue->filler[i].id);
      g_printerr ("\n");
      return EM_EXIT_INPUT;
    }
  for (int32_t i = 0; i < rates->n_machines && em_is_absent (dilution); i++)
    if (rates->machine[i].process == process)
      dilution = rates->machine[i].dilution_ratio;
  if (em_is_absent (dilution))
    return em_command_misuse (_("The rate book has no machine of that process: give --dilution."));

  EmPairing pairing;
  EmTrace trace;

  em_trace_init (&trace);
  em_steel_pair (&catalogue->base[base], &catalogue->filler[filler], process, dilution, EM_ABSENT, section_mm, &pairing, has_working ? &trace : NULL);
  print_pairing (&catalogue->base[base], &catalogue->filler[filler], process, dilution, &pairing);
  if (has_working)
    print_working (&trace, rates);
  em_trace_clear (&trace);
  return EM_EXIT_GOOD;
}

/* A positive number up to high, or NaN for NULL; FALSE when it is none. */
static gboolean
read_option (const char *text, double high, double *out_value)
{
  *out_value = EM_ABSENT;
  return text == NULL || (em_number_read (text, out_value) && *out_value > 0.0 && *out_value <= high);
}

int
em_command_steel (int argc, char **argv)
{
  g_autofree char *process = NULL, *dilution = NULL, *section = NULL;
  gboolean has_working = FALSE;
  const GOptionEntry entries[] = {
    { "process", 0, 0, G_OPTION_ARG_STRING, &process, N_("laser (default) or gtaw"), N_("PROCESS") },
    { "dilution", 0, 0, G_OPTION_ARG_STRING, &dilution, N_("Share of the base metal in the deposit, 0 to 1; default: the machine's"), N_("SHARE") },
    { "section", 0, 0, G_OPTION_ARG_STRING, &section, N_("Thickness of the steel at the weld; default: 25"), N_("MM") },
    { "explain", 0, 0, G_OPTION_ARG_NONE, &has_working, N_("Show the working behind every figure"), NULL },
    G_OPTION_ENTRY_NULL
  };
  double dilution_ratio, section_mm;
  int status = EM_EXIT_INPUT;

  if (!em_command_options (&argc, &argv, _("BASE WIRE"), entries, &status))
    return status;
  if (argc != 3)
    return em_command_misuse (_("steel needs a base metal and a wire, by their ids in the catalogue."));
  gboolean is_gtaw = g_strcmp0 (process, em_process_ids[EM_PROCESS_GTAW]) == 0;
  if (process != NULL && !is_gtaw && !g_str_equal (process, em_process_ids[EM_PROCESS_LASER]))
    return em_command_misuse (_("--process is “laser” or “gtaw”, not “%s”."), process);
  if (!read_option (dilution, 1.0, &dilution_ratio) || !read_option (section, 10000.0, &section_mm))
    return em_command_misuse (_("--dilution is above 0 and at most 1; --section is above 0 and at most 10000 mm."));

  EmRates rates;
  EmCatalogue catalogue;
  g_autoptr (GError) error = NULL;
  if (!em_book_load (&rates, &catalogue, &error))
    {
      g_printerr ("estimend: %s\n", error->message);
      return EM_EXIT_INPUT;
    }
  status = explain (&rates, &catalogue, argv[1], argv[2], is_gtaw ? EM_PROCESS_GTAW : EM_PROCESS_LASER, dilution_ratio, section_mm, has_working);
  em_rates_clear (&rates);
  em_catalogue_clear (&catalogue);
  return status;
}
