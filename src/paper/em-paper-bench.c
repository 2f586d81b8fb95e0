/* em-paper-bench: the sheet the bench works from: order, settings, cautions. No prices.
 *
 * What is done at one feature is in em-paper-steps.c.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-sheet-bench.h"

#include "em-words.h"

#include <glib/gi18n.h>
#include <math.h>

#define TICK 7.0

void
em_sheet_add_tick (EmPaperSheet *sheet, const char *text, double x, double width)
{
  EmRow *row = em_flow_row (sheet->flow);
  EmCellText cell = { EM_TEXT_BODY, EM_INK_TEXT, g_strdup (text), 0 };

  row->space_before = 3;
  em_row_box (row, EM_INK_TEXT, x + 0.5, 1.6, TICK, TICK, FALSE);
  em_sheet_stack_take (sheet, row, &cell, 1, x + TICK + 7, 0, width - TICK - 7);
}

void
em_sheet_add_tick_take (EmPaperSheet *sheet, char *take_text, double x, double width)
{
  if (take_text != NULL)
    em_sheet_add_tick (sheet, take_text, x, width);
  g_free (take_text);
}

static void
add_facts (EmPaperSheet *sheet, EmRow *row, const char *const (*facts)[2], int n_facts, int n_columns, double top)
{
  double width = (sheet->width - 12 * (n_columns - 1)) / n_columns, bottom = top;
  int column = 0;

  for (int i = 0; i < n_facts; i++)
    {
      if (facts[i][1] == NULL || facts[i][1][0] == '\0')
        continue;
      bottom = fmax (bottom, em_sheet_add_fact (sheet, row, facts[i][0], facts[i][1], column * (width + 12), top, width));
      if (++column == n_columns)
        {
          column = 0;
          top = bottom;
        }
    }
}

static void
add_head (EmPaperSheet *sheet)
{
  const EmQuote *quote = sheet->source->quote;
  g_autofree char *date = em_words_date (em_sheet_text (sheet, EM_QUOTE_DATE));
  g_autofree char *base = em_sheet_base_name (sheet);
  g_autofree char *tools = g_strdup_printf ("%d", quote->n_tools);
  g_autofree char *section = em_is_absent (quote->section_mm) ? NULL : em_words_length (quote->section_mm, quote->units, 2);
  const char *const facts[][2] = {
    { _("Number"), em_sheet_text (sheet, EM_QUOTE_NUMBER) },
    { _("Revision"), em_sheet_text (sheet, EM_QUOTE_REVISION) },
    { _("Date"), date },
    { _("Customer"), em_sheet_text (sheet, EM_QUOTE_CUSTOMER) },
    { _("Tool"), em_sheet_text (sheet, EM_QUOTE_TOOL) },
    { _("Tool number"), em_sheet_text (sheet, EM_QUOTE_TOOL_NUMBER) },
    { _("Drawing"), em_sheet_text (sheet, EM_QUOTE_DRAWING) },
    { _("Tools"), tools },
    { _("Tool metal"), base },
    { _("Section thickness"), section },
    { _("Coating"), em_sheet_text (sheet, EM_QUOTE_COATING) },
    { _("Customer’s reference"), em_sheet_text (sheet, EM_QUOTE_REFERENCE) },
  };
  EmRow *row = em_flow_row (sheet->flow);

  em_row_text_take (row, em_flow_layout (sheet->flow, EM_TEXT_TITLE, _("Bench sheet"), 0, EM_ALIGN_LEFT), EM_INK_ACCENT, 0, 0);
  add_facts (sheet, row, facts, G_N_ELEMENTS (facts), 4, 34);
  row->space_before = 12;
  row->height += 2;
  em_row_rule (row, EM_INK_LINE, 0, row->height, sheet->width, row->height, 0.6);
}

/* Stretches of the customer's words that forbid welding, word for word. */
static void
add_refusals (EmPaperSheet *sheet)
{
  const EmQuote *quote = sheet->source->quote;

  for (int32_t i = 0; i < quote->n_marks; i++)
    {
      g_autofree char *words = g_strcmp0 (quote->mark[i].field, "refuse") == 0 ? em_sheet_mark_words (sheet, &quote->mark[i]) : NULL;
      g_autofree char *text = words != NULL ? g_strdup_printf (_("Do not weld: “%s”"), words) : NULL;

      if (text != NULL)
        em_sheet_add_notice (sheet, text);
    }
}

/* A feature without a plan is not among the stops. */
static void
add_left_out (EmPaperSheet *sheet)
{
  int32_t n = sheet->source->cost->n_faults;
  g_autofree char *text = g_strdup_printf (ngettext ("%d feature is not planned yet and not on this sheet.",
                                                     "%d features are not planned yet and not on this sheet.", (gulong) n), n);

  if (n > 0)
    em_sheet_add_notice (sheet, text);
}

static char *
describe_preheat (const EmPaperSheet *sheet)
{
  const EmCost *cost = sheet->source->cost;
  const EmBase *base = em_sheet_base (sheet);
  g_autofree char *degrees = em_words_number (cost->preheat_degc, 0);
  g_autofree char *ceiling = base != NULL ? em_words_number (base->temper_degc, 0) : NULL;

  if (!cost->is_preheated)
    return g_strdup (_("No preheat is planned. Let the tool come to room temperature before welding."));
  if (!isfinite (cost->preheat_degc))
    return g_strdup (_("Preheat the tool; the office has the temperature."));
  if (base != NULL && isfinite (base->temper_degc))
    return g_strdup_printf (_("Preheat to about %1$s\302\240°C, hold it while welding and stay below %2$s\302\240°C, where the tool would soften. Cool slowly under cover."),
                            degrees, ceiling);
  return g_strdup_printf (_("Preheat to about %s\302\240°C, hold it while welding, cool slowly under cover."), degrees);
}

static void
add_before (EmPaperSheet *sheet)
{
  const EmQuote *quote = sheet->source->quote;
  const char *coating = quote->text[EM_QUOTE_COATING];

  em_sheet_add_heading (sheet, _("Before starting"), 12);
  add_left_out (sheet);
  add_refusals (sheet);
  em_sheet_add_tick (sheet, _("Tool, drawing and this sheet belong together; each place is found and marked on the tool."), 0, sheet->width);
  em_sheet_add_tick (sheet, _("Metal and hardness of the tool checked; tell the office when they differ from this sheet."), 0, sheet->width);
  em_sheet_add_tick_take (sheet, coating != NULL ? g_strdup_printf (_("Coating “%s” taken off wherever heat will come, and the rest protected."), coating)
                                                 : g_strdup (_("Looked for a coating or nitriding: nothing found, or the office told.")), 0, sheet->width);
  em_sheet_add_tick (sheet, _("Oil, water and plastic residue cleaned out of holes and cooling channels."), 0, sheet->width);
  em_sheet_add_tick (sheet, _("Starting values tried on scrap of the same metal first; they are calculated, not proven on this machine."), 0, sheet->width);
  em_sheet_add_tick_take (sheet, describe_preheat (sheet), 0, sheet->width);
}

enum { N_ORDER = 5, ORDER_GAP = 8 };

static const char *
order_head (int column)
{
  const char *const heads[N_ORDER] = { _("Stop"), _("Setting"), _("Feature"), _("Wire"), _("Arc or beam on") };

  return heads[column];
}

/* Where the columns of the order of work begin: shares of the width, the first two as wide as their headings need in any language. */
static void
place_order (EmPaperSheet *sheet, double out_x[N_ORDER])
{
  static const double share[N_ORDER] = { 0, 0.07, 0.15, 0.49, 0.86 };

  for (int i = 0; i < N_ORDER; i++)
    out_x[i] = share[i] * sheet->width;
  for (int i = 1; i <= 2; i++)
    {
      g_autoptr (PangoLayout) before = em_flow_layout (sheet->flow, EM_TEXT_SMALL_STRONG, order_head (i - 1), 0, EM_ALIGN_LEFT);
      out_x[i] = fmax (out_x[i], out_x[i - 1] + em_layout_width (before) + ORDER_GAP);
    }
}

static void
add_order_heading (EmPaperSheet *sheet)
{
  EmRow *row = em_flow_row (sheet->flow);
  double x[N_ORDER];

  place_order (sheet, x);
  for (int i = 0; i < N_ORDER; i++)
    em_row_text_take (row, em_flow_layout (sheet->flow, EM_TEXT_SMALL_STRONG, order_head (i), 0, EM_ALIGN_LEFT), EM_INK_QUIET, x[i], 2);
  row->height += 3;
  em_row_rule (row, EM_INK_TEXT, 0, row->height, sheet->width, row->height, 0.8);
}

char *
em_sheet_wire_text (const EmPaperSheet *sheet, const EmFeatureCost *cost)
{
  g_autofree char *size = em_words_wire (cost->rules.wire_mm, sheet->source->quote->units);
  const char *designation = cost->filler >= 0 ? sheet->source->catalogue->filler[cost->filler].designation : "";

  return g_strdup_printf ("%s, ⌀" EM_NBSP "%s", designation, size);
}

static void
add_order_row (EmPaperSheet *sheet, int32_t stop)
{
  const EmVisit *visit = &sheet->source->cost->visit[stop];
  const EmFeatureCost *cost = &sheet->source->cost->feature[visit->feature];
  EmRow *row = em_flow_row (sheet->flow);
  g_autofree char *number = g_strdup_printf ("%d", stop + 1);
  g_autofree char *setting = visit->is_new_setting ? g_strdup_printf ("%d", visit->setting) : g_strdup ("");
  g_autofree char *wire = em_sheet_wire_text (sheet, cost);
  g_autofree char *arc_on = em_words_duration (cost->arc_on_s);
  g_autofree char *dest = NULL;
  EmCellText name = { EM_TEXT_BODY, EM_INK_TEXT, em_sheet_short_name (sheet, visit->feature), 0 };
  double x[N_ORDER];

  place_order (sheet, x);
  em_row_text_take (row, em_flow_layout (sheet->flow, EM_TEXT_BODY, number, 0, EM_ALIGN_LEFT), EM_INK_TEXT, x[0], 4);
  em_row_text_take (row, em_flow_layout (sheet->flow, EM_TEXT_STRONG, setting, 0, EM_ALIGN_LEFT), EM_INK_TEXT, x[1], 4);
  em_row_text_take (row, em_flow_layout (sheet->flow, visit->is_new_wire ? EM_TEXT_SMALL_STRONG : EM_TEXT_SMALL, wire,
                                         x[4] - x[3] - ORDER_GAP, EM_ALIGN_LEFT), EM_INK_TEXT, x[3], 5);
  em_row_text_take (row, em_flow_layout (sheet->flow, EM_TEXT_BODY, arc_on, 0, EM_ALIGN_LEFT), EM_INK_TEXT, x[4], 4);
  em_row_rule (row, EM_INK_LINE, 0, 0, sheet->width, 0, 0.5);
  em_sheet_stack_take (sheet, row, &name, 1, x[2], 4, x[3] - x[2] - 10);
  row->height += 3;
  dest = em_sheet_stop_dest (stop);
  em_row_link_dest (row, 0, 0, sheet->width, row->height, dest);
}

/* "6 settings and 1 more turn for capping". */
static char *
describe_settings (int32_t n, int32_t n_turns)
{
  g_autofree char *settings = g_strdup_printf (ngettext ("%d setting", "%d settings", (gulong) n), n);
  g_autofree char *turns = g_strdup_printf (ngettext ("%d more turn for capping", "%d more turns for capping", (gulong) n_turns), n_turns);

  /* TRANSLATORS: "6 settings" and "1 more turn for capping". */
  return n_turns > 0 ? g_strdup_printf (_("%1$s and %2$s"), settings, turns) : g_steal_pointer (&settings);
}

static void
begin_order (EmPaperSheet *sheet)
{
  const EmCost *cost = sheet->source->cost;
  /* The first wire is no change, but loaded all the same. */
  int32_t n_settings = cost->visit[cost->n_visits - 1].setting, n_loads = cost->wire_changes + 1;
  g_autofree char *settings = describe_settings (n_settings, cost->settings - n_settings);
  g_autofree char *changes = g_strdup_printf (ngettext ("%d wire to load", "%d times to load a wire", (gulong) n_loads), n_loads);
  g_autofree char *text = g_strdup_printf (_("For each tool: %1$s, %2$s. Bold shows a wire that is new at that stop."), settings, changes);

  em_sheet_add_heading (sheet, _("Order of work"), 14);
  em_flow_paragraph (sheet->flow, EM_TEXT_QUIET, EM_INK_QUIET, text, 0, sheet->width, 0);
  em_flow_last_row (sheet->flow)->keep_next = TRUE;
  em_flow_begin_table (sheet->flow, NULL);
  add_order_heading (sheet);
}

static void
end_order (EmPaperSheet *sheet)
{
  em_flow_end_table (sheet->flow);
}

static int32_t
count_stops (const EmPaperSheet *sheet)
{
  return sheet->source->cost->n_visits;
}

/* One wire of one size, over the whole order. */
typedef struct { int32_t filler; double wire_mm, length_mm; } Wire;

static void
count_wire (GArray *wires, const EmFeatureCost *cost, int32_t n_tools)
{
  Wire wire = { cost->filler, cost->rules.wire_mm, cost->wire_length_mm * n_tools };

  for (guint i = 0; i < wires->len; i++)
    {
      Wire *other = &g_array_index (wires, Wire, i);

      if (other->filler == wire.filler && other->wire_mm == wire.wire_mm)
        {
          other->length_mm += wire.length_mm;
          return;
        }
    }
  g_array_append_val (wires, wire);
}

/* "about 5 sticks": whole ones, less their stubs. */
static char *
describe_sticks (const EmPaperSource *source, const Wire *wire)
{
  double own_mm = wire->filler >= 0 ? source->catalogue->filler[wire->filler].stick_mm : EM_ABSENT;
  double usable_mm = (em_is_absent (own_mm) ? source->rates->stick_mm : own_mm) - source->rates->stub_mm;
  int n = usable_mm > 0 ? (int) fmin (ceil (wire->length_mm / usable_mm - 1e-9), G_MAXINT) : 0;

  return g_strdup_printf (ngettext ("about %d stick", "about %d sticks", (gulong) n), n);
}

/** A length of wire, to three figures: in metres from one on, in inches always. */
char *
em_sheet_wire_length (double mm, EmUnits units)
{
  gboolean is_inch = units == EM_UNITS_INCH;
  g_autofree char *figure = em_words_figure (is_inch ? mm / EM_MM_PER_INCH : mm / 1000, 3);

  if (mm < (is_inch ? 10 * EM_MM_PER_INCH : 1000))
    return em_words_length (mm, units, 0);
  return g_strconcat (figure, EM_NBSP, is_inch ? "in" : "m", NULL);
}

static void
add_wires (EmPaperSheet *sheet)
{
  const EmPaperSource *source = sheet->source;
  g_autoptr (GArray) wires = g_array_new (FALSE, FALSE, sizeof (Wire));

  for (int32_t i = 0; i < source->cost->n_visits; i++)
    count_wire (wires, &source->cost->feature[source->cost->visit[i].feature], source->quote->n_tools);
  em_sheet_add_heading (sheet, _("Wire to have ready"), 14);
  for (guint i = 0; i < wires->len; i++)
    {
      const Wire *wire = &g_array_index (wires, Wire, i);
      g_autofree char *size = em_words_wire (wire->wire_mm, source->quote->units);
      g_autofree char *length = em_sheet_wire_length (wire->length_mm, source->quote->units);
      g_autofree char *sticks = describe_sticks (source, wire);

      em_sheet_add_tick_take (sheet, g_strdup_printf (_("%1$s, ⌀\302\240%2$s: %3$s for the whole order, %4$s used up"),
                                                      wire->filler >= 0 ? source->catalogue->filler[wire->filler].designation : "", size, sticks, length),
                              0, sheet->width);
    }
}

/* Heading and tick on one line: a stop's page has no room to lose. */
static void
add_setting (EmPaperSheet *sheet, int32_t number)
{
  g_autofree char *text = g_strdup_printf (_("Setting %d"), number);
  g_autoptr (PangoLayout) heading = em_flow_layout (sheet->flow, EM_TEXT_HEADING, text, 0, EM_ALIGN_LEFT);
  double x = fmax (EM_STOP_INDENT, em_layout_width (heading) + 12);
  EmCellText cell = { EM_TEXT_BODY, EM_INK_TEXT, g_strdup (_("Tool clamped and trued; everything in this setting can be reached.")), 0 };
  EmRow *row;

  em_sheet_add_heading (sheet, text, 12);
  row = em_flow_last_row (sheet->flow);
  em_row_box (row, EM_INK_TEXT, x + 0.5, 3.0, TICK, TICK, FALSE);
  em_sheet_stack_take (sheet, row, &cell, 1, x + TICK + 7, 1.4, sheet->width - x - TICK - 7);
}

/* A setting and its first stop, and each stop by itself, stay on one page where they can. */
static void
add_stop (EmPaperSheet *sheet, int32_t stop)
{
  const EmVisit *visit = &sheet->source->cost->visit[stop];
  guint first = em_flow_n_rows (sheet->flow);

  if (visit->is_new_setting)
    add_setting (sheet, visit->setting);
  em_sheet_add_stop (sheet, stop);
  em_flow_wish (sheet->flow, first, em_flow_n_rows (sheet->flow) - 1);
}

/* Not alone on a last page: the last stop comes along where both fit one. */
static void
add_after (EmPaperSheet *sheet)
{
  guint first = em_flow_chain_start (sheet->flow);

  em_sheet_add_heading (sheet, _("After the last weld"), 14);
  if (sheet->source->cost->is_preheated)
    em_sheet_add_tick (sheet, _("Cooled slowly to hand-warm before it is moved or checked."), 0, sheet->width);
  em_sheet_add_tick (sheet, _("Masking off; holes, threads and cooling channels free."), 0, sheet->width);
  em_sheet_add_tick (sheet, _("Hardness tested where it is to be known; a laser’s quench may leave the weld harder than the wire’s catalog says."), 0, sheet->width);
  em_sheet_add_tick (sheet, _("Every place checked again cold: cracks can come hours after welding."), 0, sheet->width);
  em_sheet_add_tick (sheet, _("Actual figures written in, sheet back to the office."), 0, sheet->width);
  em_flow_keep (sheet->flow, first, em_flow_n_rows (sheet->flow) - 1);
}

static void
add_cautions (EmPaperSheet *sheet)
{
  em_sheet_add_cautions (sheet, EM_CAUTION_ON_BENCH, TRUE);
}

const EmSheetPart em_sheet_bench_parts[] =
{
  { .once = add_head },
  { .once = add_before },
  { .once = begin_order },
  { .each = add_order_row, .count = count_stops },
  { .once = end_order },
  { .once = add_wires },
  { .once = add_cautions },
  { .each = add_stop, .count = count_stops },
  { .once = add_after },
  { 0 }
};
