/* em-paper-quote: what the customer signs: who, what, how much.
 *
 * The head and the price table; what follows them is in em-paper-terms.c.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-sheet-quote.h"

#include "em-words.h"

#include <glib/gi18n.h>
#include <math.h>

#define DRAWING_WIDTH  118.0
#define DRAWING_HEIGHT 72.0
#define AMOUNT_WIDTH   74.0
#define PLACES_WIDTH   44.0
#define GUTTER         10.0
#define PAD            6.0

/* The day after which the price no longer holds; NULL without a date or a span. */
static char *
valid_until (const EmPaperSheet *sheet)
{
  const EmQuote *quote = sheet->source->quote;
  int32_t days = quote->validity_days >= 0 ? quote->validity_days : sheet->source->rates->validity_days;
  const char *date = em_sheet_text (sheet, EM_QUOTE_DATE);
  g_autoptr (GDateTime) from = NULL;
  g_autoptr (GDateTime) until = NULL;
  g_autofree char *midnight = date != NULL ? g_strdup_printf ("%.10sT00:00:00Z", date) : NULL;
  g_autofree char *iso = NULL;

  from = midnight != NULL ? g_date_time_new_from_iso8601 (midnight, NULL) : NULL;
  until = from != NULL && days > 0 ? g_date_time_add_days (from, days) : NULL;
  if (until == NULL)
    return NULL;
  iso = g_date_time_format (until, "%Y-%m-%d");
  return em_words_date (iso);
}

static char *
customer_lines (const EmPaperSheet *sheet)
{
  static const EmQuoteText parts[] = { EM_QUOTE_CUSTOMER, EM_QUOTE_CONTACT, EM_QUOTE_ADDRESS, EM_QUOTE_EMAIL, EM_QUOTE_PHONE };
  GString *text = g_string_new (NULL);

  for (gsize i = 0; i < G_N_ELEMENTS (parts); i++)
    {
      const char *part = em_sheet_text (sheet, parts[i]);

      if (part != NULL)
        g_string_append_printf (text, "%s%s", text->len > 0 ? "\n" : "", part);
    }
  return g_string_free (text, FALSE);
}

static void
add_title (EmPaperSheet *sheet)
{
  EmRow *row = em_flow_row (sheet->flow);
  g_autofree char *customer = customer_lines (sheet);
  g_autofree char *date = em_words_date (em_sheet_text (sheet, EM_QUOTE_DATE));
  g_autofree char *until = valid_until (sheet);
  double left = sheet->width * 0.52, width = (sheet->width - left - 12) / 2, y[2];

  em_row_text_take (row, em_flow_layout (sheet->flow, EM_TEXT_TITLE, _("Quote"), left, EM_ALIGN_LEFT), EM_INK_ACCENT, 0, 0);
  em_sheet_add_fact (sheet, row, _("For"), customer, 0, 34, left - 24);
  y[0] = em_sheet_add_fact (sheet, row, _("Number"), em_sheet_text (sheet, EM_QUOTE_NUMBER), left, 5, width);
  y[1] = em_sheet_add_fact (sheet, row, _("Revision"), em_sheet_text (sheet, EM_QUOTE_REVISION), left + width + 12, 5, width);
  y[0] = y[1] = MAX (y[0], y[1]);
  y[0] = em_sheet_add_fact (sheet, row, _("Date"), date, left, y[0], width);
  y[1] = em_sheet_add_fact (sheet, row, _("Holds until"), until, left + width + 12, y[1], width);
  y[0] = y[1] = MAX (y[0], y[1]);
  y[0] = em_sheet_add_fact (sheet, row, _("Your reference"), em_sheet_text (sheet, EM_QUOTE_REFERENCE), left, y[0], width);
  y[1] = em_sheet_add_fact (sheet, row, _("Lead time"), em_sheet_text (sheet, EM_QUOTE_LEAD_TIME), left + width + 12, y[1], width);
  em_sheet_add_fact (sheet, row, _("Prepared by"), em_sheet_text (sheet, EM_QUOTE_PREPARED_BY), left, MAX (y[0], y[1]), 2 * width);
  row->space_before = 8;
}

static void
add_tool (EmPaperSheet *sheet)
{
  const EmQuote *quote = sheet->source->quote;
  EmRow *row = em_flow_row (sheet->flow);
  g_autofree char *base = em_sheet_base_name (sheet);
  g_autofree char *tools = g_strdup_printf ("%d", quote->n_tools);
  const struct { const char *label, *value; double share; } facts[] = {
    { _("Tool"), em_sheet_text (sheet, EM_QUOTE_TOOL), 0.30 },
    { _("Tool number"), em_sheet_text (sheet, EM_QUOTE_TOOL_NUMBER), 0.16 },
    { _("Drawing"), em_sheet_text (sheet, EM_QUOTE_DRAWING), 0.18 },
    { _("Tool metal"), base, 0.26 },
    { _("Tools"), tools, 0.10 },
  };
  double x = 8, bottom = 0, room = sheet->width - 16;

  for (gsize i = 0; i < G_N_ELEMENTS (facts); i++)
    {
      bottom = fmax (bottom, em_sheet_add_fact (sheet, row, facts[i].label, facts[i].value, x, 7, facts[i].share * room - 8));
      x += facts[i].share * room;
    }
  em_row_rule (row, EM_INK_LINE, 0, 0, sheet->width, 0, 0.6);
  em_row_rule (row, EM_INK_LINE, 0, bottom + 2, sheet->width, bottom + 2, 0.6);
  row->space_before = 10;
}

const char *
em_sheet_total_label (const EmPaperSheet *sheet)
{
  return sheet->source->cost->n_faults > 0 ? _("Total so far") : sheet->source->rates->n_taxes > 0 ? _("Total with tax") : _("Total");
}

/* What it comes to, on the first page however long the table. */
static void
add_summary (EmPaperSheet *sheet)
{
  const EmPaperSource *source = sheet->source;
  int32_t n = source->quote->n_features;
  g_autofree char *features = g_strdup_printf (ngettext ("%d feature", "%d features", (gulong) n), n);
  g_autofree char *tools = g_strdup_printf (ngettext ("%d tool", "%d tools", (gulong) source->quote->n_tools), source->quote->n_tools);
  g_autofree char *total = em_words_money (source->cost->totals.total_minor, &source->rates->currency);
  PangoLayout *figure = em_flow_layout (sheet->flow, EM_TEXT_SUM, total, 0, EM_ALIGN_LEFT);
  double figure_x = sheet->width - 10 - em_layout_width (figure);
  EmRow *row = em_flow_row (sheet->flow);
  /* TRANSLATORS: "3 features", "2 tools". */
  g_autofree char *count = g_strdup_printf (_("%1$s on %2$s"), features, tools);

  em_row_box (row, EM_INK_TINT, 0, 0, sheet->width, 26, TRUE);
  em_row_text_take (row, em_flow_layout (sheet->flow, EM_TEXT_BODY, count, 0, EM_ALIGN_LEFT), EM_INK_TEXT, 8, 7.5);
  em_sheet_right_take (row, em_flow_layout (sheet->flow, EM_TEXT_BODY, em_sheet_total_label (sheet), 0, EM_ALIGN_LEFT), EM_INK_QUIET, figure_x - 10, 7.5);
  em_row_text_take (row, figure, EM_INK_TEXT, figure_x, 6);
  row->height = 26;
}

/* What must be read before the price. */
static void
add_notices (EmPaperSheet *sheet)
{
  const EmPaperSource *source = sheet->source;

  if (source->rates->is_demo)
    em_sheet_add_notice (sheet, _("Made with invented rates: an example, not an offer."));
  if (source->cost->n_faults > 0)
    {
      g_autofree char *text = g_strdup_printf (ngettext ("%d feature has no price yet and is not in the total.",
                                                         "%d features have no price yet and are not in the total.", (gulong) source->cost->n_faults),
                                               source->cost->n_faults);

      em_sheet_add_notice (sheet, text);
    }
}

static double text_x (void) { return DRAWING_WIDTH + GUTTER; }
static double places_right (const EmPaperSheet *sheet) { return sheet->width - AMOUNT_WIDTH; }
static double text_width (const EmPaperSheet *sheet) { return places_right (sheet) - PLACES_WIDTH - GUTTER - text_x (); }

static void
add_table_heading (EmPaperSheet *sheet)
{
  EmRow *row = em_flow_row (sheet->flow);
  g_autofree char *amount = g_strdup_printf (_("Amount, %s"), sheet->source->rates->currency.code);
  const char *places = sheet->source->quote->n_tools > 1 ? _("Places × tools") : _("Places");

  em_row_text_take (row, em_flow_layout (sheet->flow, EM_TEXT_SMALL_STRONG, _("What we will do"), 0, EM_ALIGN_LEFT), EM_INK_QUIET, 0, 3);
  em_sheet_right_take (row, em_flow_layout (sheet->flow, EM_TEXT_SMALL_STRONG, places, 0, EM_ALIGN_LEFT), EM_INK_QUIET, places_right (sheet), 3);
  em_sheet_right_take (row, em_flow_layout (sheet->flow, EM_TEXT_SMALL_STRONG, amount, 0, EM_ALIGN_LEFT), EM_INK_QUIET, sheet->width, 3);
  row->height += 3;
  em_row_rule (row, EM_INK_TEXT, 0, row->height, sheet->width, row->height, 0.8);
}

static void
add_amount (EmPaperSheet *sheet, EmRow *row, EmTextStyle style, int64_t minor, double y)
{
  g_autofree char *amount = em_words_money_bare (minor, &sheet->source->rates->currency);

  em_sheet_right_take (row, em_flow_layout (sheet->flow, style, amount, 0, EM_ALIGN_LEFT), EM_INK_TEXT, sheet->width, y);
}

static char *
places_text (const EmQuote *quote, const EmFeature *feature)
{
  return quote->n_tools > 1 ? g_strdup_printf ("%d" EM_NBSP "×" EM_NBSP "%d", feature->count, quote->n_tools) : g_strdup_printf ("%d", feature->count);
}

/* line: NULL for a feature that has no price. */
static void
add_feature (EmPaperSheet *sheet, int32_t index, const EmLine *line)
{
  const EmPaperSource *source = sheet->source;
  const EmFeature *feature = &source->quote->feature[index];
  EmRow *row = em_flow_row (sheet->flow);
  g_autofree char *places = places_text (source->quote, feature);
  EmCellText texts[] = {
    { EM_TEXT_STRONG, EM_INK_TEXT, em_words_feature_name (source->quote, index), 0 },
    { EM_TEXT_QUIET, EM_INK_QUIET, feature->kind != NULL ? em_words_sizes (feature, source->quote->units) : NULL, 1.5 },
    { EM_TEXT_BODY, EM_INK_TEXT, em_words_feature (source->quote, index, &source->cost->feature[index], source->rates, source->catalogue), 2 },
  };

  row->bookmark = g_strdup (texts[0].text);
  row->bookmark_level = 2;
  em_row_rule (row, EM_INK_LINE, 0, 0, sheet->width, 0, 0.5);
  em_sheet_draw_feature (sheet, row, index, EM_VIEW_SECTION, 0, PAD, DRAWING_WIDTH, DRAWING_HEIGHT);
  em_sheet_right_take (row, em_flow_layout (sheet->flow, EM_TEXT_BODY, places, 0, EM_ALIGN_LEFT), EM_INK_TEXT, places_right (sheet), PAD);
  if (line == NULL)
    em_sheet_right_take (row, em_flow_layout (sheet->flow, EM_TEXT_STRONG, "–", 0, EM_ALIGN_LEFT), EM_INK_TEXT, sheet->width, PAD);
  else
    {
      add_amount (sheet, row, EM_TEXT_STRONG, line->amount_minor, PAD);
      row->has_amount = TRUE;
      row->amount_minor = line->amount_minor;
    }
  if (line != NULL && line->is_override)
    em_sheet_right_take (row, em_flow_layout (sheet->flow, EM_TEXT_SMALL, _("stated price"), 0, EM_ALIGN_LEFT), EM_INK_QUIET, sheet->width, PAD + 12);
  em_sheet_stack_take (sheet, row, texts, G_N_ELEMENTS (texts), text_x (), PAD, text_width (sheet));
  row->height += PAD;
}

static EmRow *
add_sum_row (EmPaperSheet *sheet, const char *label, int64_t minor, EmTextStyle style)
{
  EmRow *row = em_flow_row (sheet->flow);
  EmCellText text = { style, EM_INK_TEXT, g_strdup (label), 0 };

  add_amount (sheet, row, style, minor, 3.5);
  em_sheet_stack_take (sheet, row, &text, 1, text_x (), 3.5, sheet->width - text_x () - AMOUNT_WIDTH - GUTTER);
  row->height += 3.5;
  return row;
}

static void
add_line (EmPaperSheet *sheet, const EmLine *line)
{
  g_autofree char *name = em_words_line (line, sheet->source->quote, sheet->source->rates);
  EmRow *row = add_sum_row (sheet, name, line->amount_minor, EM_TEXT_BODY);

  em_row_rule (row, EM_INK_LINE, line->type == EM_LINE_SET_UP ? 0 : text_x (), 0, sheet->width, 0, 0.5);
  row->has_amount = line->type != EM_LINE_TAX;
  row->amount_minor = line->amount_minor;
}

/* The features' lines stand in their order, so the next is looked for from the last on; NULL: a feature without a price. */
static const EmLine *
take_feature_line (EmPaperSheet *sheet, int32_t index)
{
  const EmCost *cost = sheet->source->cost;

  while (sheet->line < cost->n_lines && (cost->line[sheet->line].type != EM_LINE_FEATURE || cost->line[sheet->line].row < index))
    sheet->line++;
  return sheet->line < cost->n_lines && cost->line[sheet->line].row == index ? &cost->line[sheet->line] : NULL;
}

/* Lines whose type lies in first … last; returns how many. */
static int
add_lines (EmPaperSheet *sheet, EmLineType first, EmLineType last, gboolean keep_next)
{
  const EmCost *cost = sheet->source->cost;
  int n = 0;

  for (int32_t i = 0; i < cost->n_lines; i++)
    if (cost->line[i].type >= first && cost->line[i].type <= last)
      {
        add_line (sheet, &cost->line[i]);
        em_flow_last_row (sheet->flow)->keep_next = keep_next;
        n++;
      }
  return n;
}

static void
add_totals (EmPaperSheet *sheet)
{
  const EmPaperSource *source = sheet->source;
  const EmTotals *totals = &source->cost->totals;
  gboolean is_adjusted = totals->net_minor != totals->subtotal_minor;
  g_autofree char *total = g_strdup_printf (_("Total, %s"), source->rates->currency.code);
  EmRow *row;

  if (is_adjusted)
    {
      row = add_sum_row (sheet, _("Subtotal"), totals->subtotal_minor, EM_TEXT_BODY);
      em_row_rule (row, EM_INK_TEXT, text_x (), 0, sheet->width, 0, 0.6);
      row->keep_next = TRUE;
    }
  add_lines (sheet, EM_LINE_MINIMUM, EM_LINE_ROUNDING, TRUE);
  row = add_sum_row (sheet, _("Net"), totals->net_minor, EM_TEXT_STRONG);
  em_row_rule (row, EM_INK_TEXT, text_x (), 0, sheet->width, 0, 0.6);
  row->keep_next = TRUE;
  add_lines (sheet, EM_LINE_TAX, EM_LINE_TAX, TRUE);
  row = add_sum_row (sheet, total, totals->total_minor, EM_TEXT_SUM);
  em_row_rule (row, EM_INK_ACCENT, text_x (), 0, sheet->width, 0, 1.4);
  em_row_rule (row, EM_INK_ACCENT, text_x (), row->height + 2, sheet->width, row->height + 2, 0.6);
}

static void
begin_prices (EmPaperSheet *sheet)
{
  EmCarry carry = { text_x (), sheet->width, _("Carried forward"), _("Brought forward"), sheet->source->rates->currency };

  em_sheet_add_heading (sheet, _("Work and price"), 14);
  em_flow_begin_table (sheet->flow, &carry);
  add_table_heading (sheet);
  sheet->line = 0;
}

static void
add_priced (EmPaperSheet *sheet, int32_t index)
{
  add_feature (sheet, index, sheet->source->cost->feature[index].status == EM_OK ? take_feature_line (sheet, index) : NULL);
}

static void
end_prices (EmPaperSheet *sheet)
{
  add_lines (sheet, EM_LINE_SET_UP, EM_LINE_EXTRA, FALSE);
  add_totals (sheet);
  em_flow_end_table (sheet->flow);
}

static void
add_each (EmPaperSheet *sheet)
{
  const EmTotals *totals = &sheet->source->cost->totals;
  g_autofree char *each = NULL;
  g_autofree char *text = NULL;

  if (totals->n_tools < 2)
    return;
  each = em_words_money (totals->each_minor, &sheet->source->rates->currency);
  text = g_strdup_printf (_("That is %s net for each of the %d tools."), each, totals->n_tools);
  em_flow_paragraph (sheet->flow, EM_TEXT_BODY, EM_INK_TEXT, text, text_x (), sheet->width - text_x (), 6);
}

static void
add_cautions (EmPaperSheet *sheet)
{
  em_sheet_add_cautions (sheet, EM_CAUTION_ON_QUOTE, FALSE);
}

const EmSheetPart em_sheet_quote_parts[] =
{
  { .once = add_title },
  { .once = add_tool },
  { .once = add_summary },
  { .once = add_notices },
  { .once = begin_prices },
  { .each = add_priced, .count = em_sheet_count_features },
  { .once = end_prices },
  { .once = add_each },
  { .once = em_sheet_add_range },
  { .once = em_sheet_add_options },
  { .once = em_sheet_add_breaks },
  { .once = em_sheet_add_scope },
  { .once = em_sheet_add_assumptions },
  { .each = em_sheet_add_inferred, .count = em_sheet_count_features },
  { .each = em_sheet_add_question, .count = em_sheet_count_marks },
  { .once = em_sheet_add_general_assumptions },
  { .once = em_sheet_add_terms },
  { .once = add_cautions },
  { .once = em_sheet_add_signature },
  { 0 }
};
