/* em-paper-csv: lines and comparison as data for other programs.
 *
 * RFC 4180: comma, CRLF, quotes doubled. Headings are stable English names, figures have a
 * point and no grouping, so that a spreadsheet in any language can be told how to read them.
 * People's words that a spreadsheet would run as a formula (CWE-1236) get an apostrophe before them; figures never do.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-paper.h"
#include "em-words.h"

#include <string.h>

static const char *const line_ids[EM_N_LINE] =
{
  [EM_LINE_FEATURE] = "feature", [EM_LINE_SET_UP] = "set-up", [EM_LINE_ORDER] = "order", [EM_LINE_EXTRA] = "extra",
  [EM_LINE_MINIMUM] = "minimum", [EM_LINE_RUSH] = "rush", [EM_LINE_DISCOUNT] = "discount", [EM_LINE_ROUNDING] = "rounding",
  [EM_LINE_TAX] = "tax",
};

static void
add_cell (GString *csv, const char *text)
{
  gboolean is_quoted = strpbrk (text, ",\"\r\n") != NULL;

  if (is_quoted)
    g_string_append_c (csv, '"');
  for (; *text != '\0'; text++)
    g_string_append (csv, *text == '"' ? "\"\"" : (char[]) { *text, '\0' });
  g_string_append (csv, is_quoted ? "\"," : ",");
}

/* Words somebody typed, the customer perhaps. */
static void
add_words (GString *csv, const char *text)
{
  gboolean is_formula = text[0] != '\0' && strchr ("=+-@\t\r", text[0]) != NULL;
  g_autofree char *harmless = is_formula ? g_strconcat ("'", text, NULL) : NULL;

  add_cell (csv, is_formula ? harmless : text);
}

/* The comma behind the last cell gives way to the record's end. */
static void
end_record (GString *csv)
{
  g_string_truncate (csv, csv->len - 1);
  g_string_append (csv, "\r\n");
}

static void
add_whole (GString *csv, int64_t value)
{
  g_autofree char *text = g_strdup_printf ("%" G_GINT64_FORMAT, (gint64) value);

  add_cell (csv, text);
}

static void
add_real (GString *csv, double value)
{
  char text[32];

  if (em_is_absent (value))
    add_cell (csv, "");
  else if (em_number_write (value, text, sizeof text) > 0)
    add_cell (csv, text);
}

static void
add_money (GString *csv, int64_t minor, const EmCurrency *currency)
{
  uint64_t size = minor < 0 ? (uint64_t) 0 - (uint64_t) minor : (uint64_t) minor;
  g_autofree char *digits = g_strdup_printf ("%0*" G_GUINT64_FORMAT, currency->digits + 1, (guint64) size);
  gsize whole = strlen (digits) - (gsize) currency->digits;
  g_autofree char *text = g_strdup_printf ("%s%.*s%s%s", minor < 0 ? "-" : "", (int) whole, digits, currency->digits > 0 ? "." : "", digits + whole);

  add_cell (csv, text);
}

static void
add_heads (GString *csv, const char *const *heads)
{
  for (; *heads != NULL; heads++)
    add_cell (csv, *heads);
  end_record (csv);
}

static void
add_sum (GString *csv, const char *type, int64_t minor, const EmPaperSource *source)
{
  add_cell (csv, "");
  add_cell (csv, type);
  add_cell (csv, "");
  add_whole (csv, source->cost->totals.n_tools);
  add_money (csv, minor, &source->rates->currency);
  add_cell (csv, source->rates->currency.code);
  end_record (csv);
}

/** Printed lines in order, then net, tax and total. */
char *
em_paper_lines_csv (const EmPaperSource *source)
{
  static const char *const heads[] = { "line", "type", "description", "quantity", "amount", "currency", NULL };
  const EmCost *cost = source->cost;
  GString *csv = g_string_new (NULL);

  em_words_push (source->quote->text[EM_QUOTE_LANGUAGE]);
  add_heads (csv, heads);
  for (int32_t i = 0; i < cost->n_lines; i++)
    {
      g_autofree char *name = em_words_line (&cost->line[i], source->quote, source->rates);

      add_whole (csv, i + 1);
      add_cell (csv, line_ids[cost->line[i].type]);
      add_words (csv, name);
      add_whole (csv, cost->line[i].quantity);
      add_money (csv, cost->line[i].amount_minor, &source->rates->currency);
      add_cell (csv, source->rates->currency.code);
      end_record (csv);
    }
  add_sum (csv, "net", cost->totals.net_minor, source);
  add_sum (csv, "tax-sum", cost->totals.tax_minor, source);
  add_sum (csv, "total", cost->totals.total_minor, source);
  em_words_pop ();
  return g_string_free (csv, FALSE);
}

static void
add_reasons (GString *csv, EmReasons reasons)
{
  GString *ids = g_string_new (NULL);

  for (int i = 0; i < EM_N_REASON; i++)
    if (reasons & EM_REASON_BIT (i))
      g_string_append_printf (ids, "%s%s", ids->len > 0 ? " " : "", em_reason_ids[i]);
  add_cell (csv, ids->str);
  g_string_free (ids, TRUE);
}

static void
add_compare_row (GString *csv, const EmCompareRow *row, int rank, const EmPaperSource *source)
{
  const EmCurrency *currency = &source->rates->currency;
  const EmFiller *filler = &source->catalogue->filler[row->filler];

  if (row->is_ruled_out)
    add_cell (csv, "");
  else
    add_whole (csv, rank);
  add_cell (csv, filler->id);
  add_words (csv, filler->designation);
  add_cell (csv, row->is_ruled_out ? "ruled-out" : row->is_present ? "present" : "suited");
  add_money (csv, row->net_minor, currency);
  add_money (csv, row->total_minor, currency);
  add_money (csv, row->difference_minor, currency);
  add_money (csv, row->filler_cost_minor, currency);
  add_cell (csv, currency->code);
  add_real (csv, row->arc_on_s);
  add_real (csv, row->labour_s);
  add_real (csv, row->wire_low_mm);
  add_real (csv, row->wire_high_mm);
  add_real (csv, row->pairing.hardness_low_hrc);
  add_real (csv, row->pairing.hardness_high_hrc);
  add_real (csv, row->pairing.preheat_degc);
  add_reasons (csv, row->reasons);
  end_record (csv);
}

/** The comparison's rows; header only when there is none. */
char *
em_paper_compare_csv (const EmPaperSource *source)
{
  static const char *const heads[] = { "rank", "filler", "designation", "state", "net", "total", "difference", "filler_cost", "currency",
                                       "arc_on_s", "labour_s", "wire_low_mm", "wire_high_mm", "hardness_low_hrc", "hardness_high_hrc",
                                       "preheat_degc", "reasons", NULL };
  GString *csv = g_string_new (NULL);

  add_heads (csv, heads);
  for (int32_t i = 0; source->compare != NULL && i < source->compare->n_rows; i++)
    add_compare_row (csv, &source->compare->row[i], i + 1, source);
  return g_string_free (csv, FALSE);
}
