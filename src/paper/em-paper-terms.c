/* em-paper-terms: what follows the price: how sure it is, options, scope, assumptions, terms, signatures.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-sheet-quote.h"

#include "em-paper-job.h"
#include "em-words.h"

#include <glib/gi18n.h>
#include <math.h>

#define FIGURE_WIDTH 84.0
#define TICK         7.0
#define TICK_INDENT  14.0
#define OPTIONS_MAX  8
#define REASONS_MAX  3

/* What the price of sizes known only between limits comes to; nothing where that hardly moves it. */
void
em_sheet_add_range (EmPaperSheet *sheet)
{
  const EmRange *range = sheet->source->range;
  const EmCurrency *currency = &sheet->source->rates->currency;
  g_autofree char *low = NULL, *high = NULL, *text = NULL;

  if (range == NULL || !em_range_is_wide (range))
    return;
  low = em_words_money_rough (range->p10_minor, range->p50_minor, currency);
  high = em_words_money_rough (range->p90_minor, range->p50_minor, currency);
  em_sheet_add_heading (sheet, _("How sure the price is"), 14);
  text = g_strdup_printf (_("Some sizes are only known between limits, so the price is an estimate. With the sizes spread between those limits the net "
                            "price lies between about %1$s and %2$s eight times in ten, and is likely to exceed %2$s one time in ten. Once the sizes are "
                            "measured it can be fixed."), low, high);
  em_flow_paragraph (sheet->flow, EM_TEXT_BODY, EM_INK_TEXT, text, 0, sheet->width, 0);
}

/* Reasons in set, few of them, as one text. */
static char *
list_reasons (EmReasons set)
{
  GString *text = g_string_new (NULL);

  for (int i = 0, n = 0; i < EM_N_REASON && n < REASONS_MAX; i++)
    if (set & EM_REASON_BIT (i))
      {
        g_string_append_printf (text, "%s%s", n > 0 ? " · " : "", em_words_reason ((EmReason) i));
        n++;
      }
  return g_string_free (text, FALSE);
}

static void
add_figures_heading (EmPaperSheet *sheet, const char *first, const char *const *figures, int n_figures)
{
  EmRow *row = em_flow_row (sheet->flow);

  em_row_text_take (row, em_flow_layout (sheet->flow, EM_TEXT_SMALL_STRONG, first, 0, EM_ALIGN_LEFT), EM_INK_QUIET, TICK_INDENT, 2);
  for (int i = 0; i < n_figures; i++)
    em_sheet_right_take (row, em_flow_layout (sheet->flow, EM_TEXT_SMALL_STRONG, figures[i], 0, EM_ALIGN_LEFT), EM_INK_QUIET,
                         sheet->width - FIGURE_WIDTH * (n_figures - 1 - i), 2);
  row->height += 3;
  em_row_rule (row, EM_INK_TEXT, 0, row->height, sheet->width, row->height, 0.8);
}

/* For the customer to tick what is ordered. */
static void
add_box (EmRow *row)
{
  em_row_box (row, EM_INK_TEXT, 0.5, 6.4, TICK, TICK, FALSE);
}

static void
add_figure (EmPaperSheet *sheet, EmRow *row, EmTextStyle style, const char *text, int from_right)
{
  em_sheet_right_take (row, em_flow_layout (sheet->flow, style, text, 0, EM_ALIGN_LEFT), EM_INK_TEXT, sheet->width - FIGURE_WIDTH * from_right, 5);
}

/* "+12.00" or "−3.50": a difference always shows its sign. */
static char *
write_difference (int64_t minor, const EmCurrency *currency)
{
  g_autofree char *bare = em_words_money_bare (minor, currency);

  return minor > 0 ? g_strconcat ("+", bare, NULL) : g_steal_pointer (&bare);
}

static void
add_option (EmPaperSheet *sheet, const EmCompareRow *option)
{
  const EmCurrency *currency = &sheet->source->rates->currency;
  g_autofree char *difference = write_difference (option->difference_minor, currency);
  g_autofree char *net = em_words_money_bare (option->net_minor, currency);
  g_autofree char *against = list_reasons (option->reasons & ~EM_REASONS_FOR & ~EM_REASONS_RULE_OUT);
  g_autofree char *wire = g_strdup (sheet->source->catalogue->filler[option->filler].designation);
  EmRow *row = em_flow_row (sheet->flow);
  EmCellText texts[] = {
    { EM_TEXT_STRONG, EM_INK_TEXT, g_steal_pointer (&wire), 0 },
    { EM_TEXT_QUIET, EM_INK_TEXT, list_reasons (option->reasons & EM_REASONS_FOR), 1 },
    { EM_TEXT_QUIET, EM_INK_QUIET, against[0] != '\0' ? g_strdup_printf (_("But: %s"), against) : NULL, 1 },
  };

  add_box (row);
  add_figure (sheet, row, EM_TEXT_BODY, difference, 1);
  add_figure (sheet, row, EM_TEXT_STRONG, net, 0);
  em_sheet_stack_take (sheet, row, texts, G_N_ELEMENTS (texts), TICK_INDENT, 5, sheet->width - 2 * FIGURE_WIDTH - 10 - TICK_INDENT);
  row->height += 5;
  em_row_rule (row, EM_INK_LINE, 0, row->height, sheet->width, row->height, 0.5);
}

static gboolean
is_option (const EmPaperSource *source, const EmCompareRow *row)
{
  return !row->is_ruled_out && !row->is_present && (source->offers_all || em_paper_offers (source->quote, source->catalogue->filler[row->filler].id));
}

static void
add_how_to_choose (EmPaperSheet *sheet)
{
  em_flow_paragraph (sheet->flow, EM_TEXT_QUIET, EM_INK_QUIET, _("Tick what you choose. Without a tick the order is as above."), 0, sheet->width, 0);
  em_flow_last_row (sheet->flow)->keep_next = TRUE;
}

/* Other wires, the cheapest first as the comparison has them. */
void
em_sheet_add_options (EmPaperSheet *sheet)
{
  const EmCompare *compare = sheet->source->compare;
  g_autofree char *net = g_strdup_printf (_("Net, %s"), sheet->source->rates->currency.code);
  const char *figures[] = { _("Difference"), net };
  int n = 0;

  for (int32_t i = 0; compare != NULL && i < compare->n_rows && n < OPTIONS_MAX; i++)
    {
      if (!is_option (sheet->source, &compare->row[i]))
        continue;
      if (n++ == 0)
        {
          em_sheet_add_heading (sheet, _("Options: other filler wires"), 16);
          add_how_to_choose (sheet);
          em_flow_begin_table (sheet->flow, NULL);
          add_figures_heading (sheet, _("The same work with"), figures, 2);
        }
      add_option (sheet, &compare->row[i]);
    }
  em_flow_end_table (sheet->flow);
}

static void
add_break (EmPaperSheet *sheet, const EmTotals *totals)
{
  const EmCurrency *currency = &sheet->source->rates->currency;
  EmRow *row = em_flow_row (sheet->flow);
  g_autofree char *tools = g_strdup_printf (ngettext ("%d tool", "%d tools", (gulong) totals->n_tools), totals->n_tools);
  g_autofree char *each = em_words_money_bare (totals->each_minor, currency);
  g_autofree char *net = em_words_money_bare (totals->net_minor, currency);
  g_autofree char *total = em_words_money_bare (totals->total_minor, currency);

  em_row_text_take (row, em_flow_layout (sheet->flow, EM_TEXT_BODY, tools, 0, EM_ALIGN_LEFT), EM_INK_TEXT, TICK_INDENT, 5);
  add_box (row);
  add_figure (sheet, row, EM_TEXT_BODY, each, 2);
  add_figure (sheet, row, EM_TEXT_STRONG, net, 1);
  add_figure (sheet, row, EM_TEXT_BODY, total, 0);
  row->height += 4;
  em_row_rule (row, EM_INK_LINE, 0, row->height, sheet->width, row->height, 0.5);
}

void
em_sheet_add_breaks (EmPaperSheet *sheet)
{
  const EmCost *cost = sheet->source->cost;
  g_autofree char *total = g_strdup_printf (_("Total, %s"), sheet->source->rates->currency.code);
  const char *figures[] = { _("Net each"), _("Net"), total };

  if (cost->n_breaks == 0)
    return;
  em_sheet_add_heading (sheet, _("Options: other quantities"), 16);
  add_how_to_choose (sheet);
  em_flow_begin_table (sheet->flow, NULL);
  add_figures_heading (sheet, _("Identical tools together"), figures, 3);
  for (int32_t i = 0; i < cost->n_breaks; i++)
    add_break (sheet, &cost->breaks[i]);
  em_flow_end_table (sheet->flow);
}

/* "1, 2, 5" of the features finish is chosen for; NULL when there is none. */
static char *
list_features (const EmPaperSheet *sheet, EmFinish finish, int *out_n)
{
  const EmQuote *quote = sheet->source->quote;
  GString *text = g_string_new (NULL);
  int n = 0;

  for (int32_t i = 0; i < quote->n_features; i++)
    if (em_words_finish_of (quote, i) == finish)
      g_string_append_printf (text, "%s%d", n++ > 0 ? ", " : "", i + 1);
  *out_n = n;
  return g_string_free (text, n == 0);
}

static void
add_scope_item (EmPaperSheet *sheet, char *take_text)
{
  em_sheet_add_bullet (sheet, EM_TEXT_BODY, take_text, 0, sheet->width);
  g_free (take_text);
}

static void
add_machining (EmPaperSheet *sheet, EmFinish finish)
{
  int n;
  g_autofree char *features = list_features (sheet, finish, &n);

  if (features != NULL && n == sheet->source->quote->n_features)
    add_scope_item (sheet, g_strdup (_("Machining the welds back to size, at every feature")));
  else if (features != NULL)
    add_scope_item (sheet, g_strdup_printf (ngettext ("Machining the welds back to size at feature %s", "Machining the welds back to size at features %s",
                                                     (gulong) n), features));
}

static void
add_included (EmPaperSheet *sheet)
{
  const EmCost *cost = sheet->source->cost;
  g_autofree char *degrees = em_words_number (cost->preheat_degc, 0);

  add_scope_item (sheet, g_strdup (_("Receiving, cleaning, setting up, masking and packing")));
  if (cost->task_s[EM_TASK_STRIP] > 0)
    add_scope_item (sheet, g_strdup (_("Taking the coating off where we weld")));
  if (cost->is_preheated && isfinite (cost->preheat_degc))
    add_scope_item (sheet, g_strdup_printf (_("Preheating to about %s\302\240°C"), degrees));
  add_scope_item (sheet, g_strdup (_("Welding with the filler wire and shielding gas it takes, and inspecting each weld")));
  add_machining (sheet, EM_FINISH_SHOP);
}

static void
add_excluded (EmPaperSheet *sheet)
{
  add_machining (sheet, EM_FINISH_CUSTOMER);
  add_scope_item (sheet, g_strdup (_("Polishing, texturing and coating afterwards")));
  add_scope_item (sheet, g_strdup (_("Taking the tool apart, putting it together, and trying it out")));
  add_scope_item (sheet, g_strdup (_("Freight and insurance, unless a line above names them")));
}

/* Short lists: none leaves its last point alone on the next page. */
void
em_sheet_add_scope (EmPaperSheet *sheet)
{
  guint first = em_flow_n_rows (sheet->flow), second;

  em_sheet_add_heading (sheet, _("Included"), 16);
  add_included (sheet);
  second = em_flow_n_rows (sheet->flow);
  em_flow_keep (sheet->flow, first, second - 1);
  em_sheet_add_heading (sheet, _("Not included"), 12);
  add_excluded (sheet);
  em_flow_keep (sheet->flow, second, em_flow_n_rows (sheet->flow) - 1);
  if (em_sheet_text (sheet, EM_QUOTE_SCOPE) == NULL)
    return;
  em_sheet_add_heading (sheet, _("Also agreed"), 12);
  em_flow_paragraph (sheet->flow, EM_TEXT_BODY, EM_INK_TEXT, em_sheet_text (sheet, EM_QUOTE_SCOPE), 0, sheet->width, 0);
}

/* Sizes the customer's words left open and the reader settled by a rule. */
void
em_sheet_add_inferred (EmPaperSheet *sheet, int32_t index)
{
  const EmQuote *quote = sheet->source->quote;
  const EmFeature *feature = &quote->feature[index];
  g_autofree char *name = em_sheet_short_name (sheet, index);

  for (int i = 0; feature->kind != NULL && i < feature->kind->n_fields; i++)
    {
      const EmField *field = &feature->kind->fields[i];
      g_autofree char *value = NULL;

      if (feature->origin[i] != EM_ORIGIN_INFERRED || em_is_absent (feature->value[i]) || field->quantity == EM_QUANTITY_CHOICE
          || !em_field_is_shown (feature->kind, i, feature->value))
        continue;
      value = em_words_quantity (feature->value[i], field->quantity, quote->units);
      add_scope_item (sheet, g_strdup_printf (_("%1$s: “%2$s” is taken to be %3$s from your notes."), name, em_words (field->name), value));
    }
  if (feature->text[EM_FEATURE_ASSUMPTION] != NULL)
    add_scope_item (sheet, g_strdup_printf ("%s: %s", name, feature->text[EM_FEATURE_ASSUMPTION]));
}

void
em_sheet_add_general_assumptions (EmPaperSheet *sheet)
{
  const EmQuote *quote = sheet->source->quote;
  g_autofree char *base = em_sheet_base_name (sheet);

  if (base != NULL && em_is_absent (quote->hardness_hrc))
    add_scope_item (sheet, g_strdup_printf (_("The tool is of %s; the hardness is the usual one, not measured."), base));
  else if (base != NULL)
    add_scope_item (sheet, g_strdup_printf (_("The tool is of %s."), base));
  add_scope_item (sheet, quote->text[EM_QUOTE_COATING] == NULL ? g_strdup (_("The tool has no coating we were told of."))
                                                               : g_strdup_printf (_("The tool’s coating is as told: %s."), quote->text[EM_QUOTE_COATING]));
  if (quote->n_tools > 1)
    add_scope_item (sheet, g_strdup (_("The tools are identical and come together.")));
  add_scope_item (sheet, g_strdup (_("Sizes are as given. What turns out otherwise when the tool is here we will tell you before we weld.")));
}

/* The customer's own words that are still open when the quote goes out. */
void
em_sheet_add_question (EmPaperSheet *sheet, int32_t mark)
{
  const EmMark *asked = &sheet->source->quote->mark[mark];
  g_autofree char *words = asked->state == EM_MARK_QUESTION ? em_sheet_mark_words (sheet, asked) : NULL;

  if (words != NULL && words[0] != '\0')
    add_scope_item (sheet, g_strdup_printf (_("“%s” in your notes can be read in more than one way: please confirm that it is meant as drawn here."), words));
}

void
em_sheet_add_assumptions (EmPaperSheet *sheet)
{
  em_sheet_add_heading (sheet, _("What the price assumes"), 12);
}

void
em_sheet_add_terms (EmPaperSheet *sheet)
{
  const char *terms = em_sheet_text (sheet, EM_QUOTE_TERMS);
  const char *bank = em_sheet_shop (sheet, EM_SHOP_BANK);

  if (terms == NULL)
    terms = em_sheet_shop (sheet, EM_SHOP_TERMS);
  if (terms == NULL && bank == NULL)
    return;
  em_sheet_add_heading (sheet, _("Terms"), 14);
  if (terms != NULL)
    em_flow_paragraph (sheet->flow, EM_TEXT_QUIET, EM_INK_TEXT, terms, 0, sheet->width, 0);
  if (bank != NULL)
    em_flow_paragraph (sheet->flow, EM_TEXT_QUIET, EM_INK_QUIET, bank, 0, sheet->width, 5);
}

static void
add_signer (EmPaperSheet *sheet, EmRow *row, const char *title, const char *name, double x, double width)
{
  const char *labels[] = { _("Place, date"), _("Name"), _("Signature") };
  double y = 30;
  g_autofree char *flat_title = em_sheet_flatten (title), *flat_name = em_sheet_flatten (name);
  PangoLayout *who = em_flow_layout (sheet->flow, EM_TEXT_STRONG, flat_title, width, EM_ALIGN_LEFT);

  pango_layout_set_height (who, -2);
  pango_layout_set_ellipsize (who, PANGO_ELLIPSIZE_END);
  em_row_text_take (row, who, EM_INK_TEXT, x, 0);
  for (gsize i = 0; i < G_N_ELEMENTS (labels); i++, y += 34)
    {
      if (i == 1 && name != NULL)
        {
          PangoLayout *signer = em_flow_layout (sheet->flow, EM_TEXT_BODY, flat_name, width, EM_ALIGN_LEFT);

          pango_layout_set_height (signer, 0);
          pango_layout_set_ellipsize (signer, PANGO_ELLIPSIZE_END);
          em_row_text_take (row, signer, EM_INK_TEXT, x, y - 1);
        }
      em_row_rule (row, EM_INK_TEXT, x, y + 12, x + width, y + 12, 0.5);
      em_row_text_take (row, em_flow_layout (sheet->flow, EM_TEXT_LABEL, labels[i], width, EM_ALIGN_LEFT), EM_INK_QUIET, x, y + 14);
    }
}

/* "Quote D-1001 · A · Total with tax 1,137.08 EUR": what is signed stands above the names, whatever page they are on. */
static char *
describe_order (const EmPaperSheet *sheet)
{
  const char *number = em_sheet_text (sheet, EM_QUOTE_NUMBER), *revision = em_sheet_text (sheet, EM_QUOTE_REVISION);
  g_autofree char *total = em_words_money (sheet->source->cost->totals.total_minor, &sheet->source->rates->currency);

  return g_strdelimit (g_strdup_printf ("%s%s%s%s%s · %s %s", _("Quote"), number != NULL ? " " : "", number != NULL ? number : "",
                                        revision != NULL ? " · " : "", revision != NULL ? revision : "", em_sheet_total_label (sheet), total),
                       "\r\n", ' ');
}

void
em_sheet_add_signature (EmPaperSheet *sheet)
{
  const char *shop = em_sheet_shop (sheet, EM_SHOP_NAME), *customer = em_sheet_text (sheet, EM_QUOTE_CUSTOMER);
  g_autofree char *ours = shop != NULL ? g_strdup_printf (_("For %s"), shop) : g_strdup (_("For the shop"));
  g_autofree char *yours = customer != NULL ? g_strdup_printf (_("Ordered as above, for %s"), customer) : g_strdup (_("Ordered as above"));
  g_autofree char *what = describe_order (sheet);
  double width = (sheet->width - 36) / 2;
  EmRow *row;

  em_sheet_add_heading (sheet, _("Order"), 18);
  em_flow_paragraph (sheet->flow, EM_TEXT_BODY, EM_INK_TEXT, what, 0, sheet->width, 0);
  em_flow_last_row (sheet->flow)->keep_next = TRUE;
  row = em_flow_row (sheet->flow);
  row->space_before = 8;
  add_signer (sheet, row, ours, em_sheet_text (sheet, EM_QUOTE_PREPARED_BY), 0, width);
  add_signer (sheet, row, yours, NULL, width + 36, width);
}
