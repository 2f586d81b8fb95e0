/* em-command-prices: `estimend prices`: a supplier's price list against the shop's wires, told and with --apply kept.
 *
 * Only wires a row changes become the shop's own; what ships with the program is never written.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-command-private.h"

#include "em-price-list.h"
#include "em-words.h"

#include <glib/gi18n.h>
#include <math.h>

enum { NAME_WIDTH = 22, SIZE_WIDTH = 10, PRICE_WIDTH = 22 };

static const char *const state_names[EM_N_PRICE_ROW] =
{
  [EM_PRICE_ROW_CHANGES] = N_("new price"),
  [EM_PRICE_ROW_NEW_SIZE] = N_("new size"),
  [EM_PRICE_ROW_SAME] = N_("as it is"),
  [EM_PRICE_ROW_UNKNOWN] = N_("not in the catalog, left out"),
  [EM_PRICE_ROW_TWICE] = N_("named before, left out"),
  [EM_PRICE_ROW_BAD] = N_("not understood, left out"),
};

static const char *const basis_names[EM_N_PRICE_BASIS] =
{
  [EM_PER_METRE] = N_("per meter"), [EM_PER_GRAM] = N_("per gram"), [EM_PER_STICK] = N_("per stick"),
};

static gboolean
has_price (const EmPriceRow *row)
{
  return row->state == EM_PRICE_ROW_CHANGES || row->state == EM_PRICE_ROW_NEW_SIZE || row->state == EM_PRICE_ROW_SAME;
}

static char *
price_text (gint64 minor, EmPriceBasis basis, const EmCurrency *currency)
{
  g_autofree char *amount = em_words_money (minor, currency);

  return g_strdup_printf ("%s %s", amount, _(basis_names[basis]));
}

static void
print_row_people (const EmPriceRow *row, const EmRates *rates)
{
  g_autofree char *line = g_strdup_printf ("%u", row->line);
  g_autofree char *size = isnan (row->wire_mm) ? g_strdup ("") : em_words_length (row->wire_mm, rates->units, 3);
  g_autofree char *old = row->had_price ? price_text (row->old_minor, row->old_basis, &rates->currency) : g_strdup ("");
  g_autofree char *new = has_price (row) ? price_text (row->price_minor, row->basis, &rates->currency) : g_strdup ("");

  em_command_cell (line, 5, TRUE);
  g_print ("  ");
  em_command_cell (row->name != NULL ? row->name : "", NAME_WIDTH, FALSE);
  em_command_cell (size, SIZE_WIDTH, TRUE);
  g_print ("  ");
  em_command_cell (old, PRICE_WIDTH, TRUE);
  g_print (" → ");
  em_command_cell (new, PRICE_WIDTH, TRUE);
  g_print ("  %s%s%s\n", _(state_names[row->state]), row->sentence != NULL ? ": " : "", row->sentence != NULL ? row->sentence : "");
}

static void
print_row_tsv (const EmPriceRow *row, const EmRates *rates)
{
  const char *code = rates->currency.code;

  g_print ("line.%u\tstate\t%s\t\n", row->line, em_price_row_ids[row->state]);
  if (row->filler_id != NULL)
    g_print ("line.%u\twire\t%s\t\n", row->line, row->filler_id);
  if (!isnan (row->wire_mm))
    {
      char size[32];
      em_number_write (row->wire_mm, size, sizeof size);
      g_print ("line.%u\tsize\t%s\tmm\n", row->line, size);
    }
  if (has_price (row))
    g_print ("line.%u\tprice\t%" G_GINT64_FORMAT "\t%s/%s\n", row->line, row->price_minor, code, em_price_basis_ids[row->basis]);
  if (row->had_price)
    g_print ("line.%u\told_price\t%" G_GINT64_FORMAT "\t%s/%s\n", row->line, row->old_minor, code, em_price_basis_ids[row->old_basis]);
}

/* Nothing is written where nothing changes. */
static gboolean
keep (const EmPriceList *list, EmCatalogue *catalogue, guint *out_n_applied, GError **error)
{
  g_autofree char *path = em_book_own_catalogue_path ();

  return em_price_list_apply (list, catalogue, out_n_applied, error)
         && (*out_n_applied == 0 || em_catalogue_save (path, catalogue, TRUE, error));
}

static int
tell (const EmPriceList *list, const EmRates *rates, EmCatalogue *catalogue, gboolean is_applied, gboolean is_tsv)
{
  guint n_applied = 0, n_changes = list->n_of[EM_PRICE_ROW_CHANGES] + list->n_of[EM_PRICE_ROW_NEW_SIZE];
  g_autoptr (GError) error = NULL;

  for (guint i = 0; i < list->rows->len; i++)
    (is_tsv ? print_row_tsv : print_row_people) (g_ptr_array_index (list->rows, i), rates);
  if (is_applied && !keep (list, catalogue, &n_applied, &error))
    {
      g_printerr ("estimend: %s\n", error->message);
      return EM_EXIT_INPUT;
    }
  if (is_tsv)
    g_print ("list\tapplied\t%u\t\n", n_applied);
  else if (is_applied)
    g_print (ngettext ("%u price taken over.\n", "%u prices taken over.\n", n_applied), n_applied);
  else
    g_print (ngettext ("%u price would change; --apply takes it over.\n", "%u prices would change; --apply takes them over.\n", n_changes), n_changes);
  return list->n_of[EM_PRICE_ROW_BAD] + list->n_of[EM_PRICE_ROW_TWICE] > 0 ? EM_EXIT_INPUT : EM_EXIT_GOOD;
}

int
em_command_prices (int argc, char **argv)
{
  gboolean is_applied = FALSE, is_tsv = FALSE;
  const GOptionEntry entries[] = {
    { "apply", 0, 0, G_OPTION_ARG_NONE, &is_applied, N_("Take the prices over into the shop's own wires"), NULL },
    { "tsv", 0, 0, G_OPTION_ARG_NONE, &is_tsv, N_("For other programs: scope, quantity, value, unit"), NULL },
    G_OPTION_ENTRY_NULL
  };
  int status = EM_EXIT_INPUT;

  if (!em_command_options (&argc, &argv, _("LIST.csv"), entries, &status))
    return status;
  if (argc != 2)
    return em_command_misuse (_("prices needs one price list, a CSV file."));

  EmRates rates;
  EmCatalogue catalogue;
  g_autoptr (GError) error = NULL;
  if (!em_book_load (&rates, &catalogue, &error))
    {
      g_printerr ("estimend: %s\n", error->message);
      return EM_EXIT_INPUT;
    }
  g_autoptr (EmPriceList) list = em_price_list_load (argv[1], &catalogue, &rates.currency, &error);
  if (list == NULL)
    g_printerr ("estimend: %s\n", error->message);
  else
    status = tell (list, &rates, &catalogue, is_applied, is_tsv);
  em_rates_clear (&rates);
  em_catalogue_clear (&catalogue);
  return status;
}
