/* em-paper-steps: one stop of the bench sheet: drawings, starting values, layers, steps, actuals.
 *
 * Checks: dye penetrant by ISO 3452-1; hardness by ISO 6508-1; common practice otherwise, no source.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-sheet-bench.h"

#include "em-words.h"

#include <glib/gi18n.h>
#include <math.h>

#define DRAWING_HEIGHT 106.0
#define VALUES_WIDTH   178.0
#define VALUE_HEIGHT   13.5
#define USED_WIDTH     44.0
#define GAP            12.0
#define BOX_HEIGHT     38.0

/* A stop under way. */
typedef struct
{
  EmPaperSheet        *sheet;
  const EmQuote       *quote;
  const EmFeature     *feature;
  const EmFeatureCost *cost;
  const EmMachine     *machine;   /* NULL: none */
  int32_t              index;
} Stop;

char *
em_sheet_stop_dest (int32_t stop)
{
  return g_strdup_printf ("stop-%d", stop + 1);
}

static char *
write_unit (double value, int digits, const char *unit)
{
  g_autofree char *number = NULL;

  if (!isfinite (value))
    return NULL;
  number = em_words_figure (value, digits);
  return g_strconcat (number, EM_NBSP, unit, NULL);
}

static char *
write_length (const Stop *stop, double mm, int decimals)
{
  return isfinite (mm) ? em_words_length (mm, stop->quote->units, decimals) : NULL;
}

/* "Pulsed laser, 300 W · ER420 (AWS A5.9), ⌀ 0.5 mm · Deep": what to have in hand before reading on. */
static char *
describe_means (const Stop *stop)
{
  g_autofree char *wire = em_sheet_wire_text (stop->sheet, stop->cost);
  GString *text = g_string_new (NULL);

  if (stop->machine != NULL && stop->machine->name != NULL)
    g_string_append_printf (text, "%s · ", stop->machine->name);
  g_string_append (text, wire);
  if (stop->feature->access != EM_ACCESS_OPEN)
    g_string_append_printf (text, " · %s: %s", _("Access"), em_words_access (stop->feature->access));
  return g_string_free (text, FALSE);
}

static void
add_head (Stop *stop, int32_t number)
{
  EmPaperSheet *sheet = stop->sheet;
  EmRow *row = em_flow_row (sheet->flow);
  g_autofree char *name = em_sheet_short_name (sheet, stop->index);
  g_autofree char *places = g_strdup_printf (ngettext ("%d place", "%d places", (gulong) stop->feature->count), stop->feature->count);
  g_autofree char *badge = g_strdup_printf (_("Stop %d"), number);
  EmCellText texts[] = {
    { EM_TEXT_HEADING, EM_INK_TEXT, g_strdup_printf ("%s – %s", name, places), 0 },
    { EM_TEXT_QUIET, EM_INK_QUIET, em_words_sizes (stop->feature, stop->quote->units), 2 },
    { EM_TEXT_BODY, EM_INK_TEXT, describe_means (stop), 2 },
    { EM_TEXT_STRONG, EM_INK_TEXT, g_strdup (stop->feature->text[EM_FEATURE_REMARK]), 3 },
  };

  row->bookmark = g_strdup (name);
  row->dest = em_sheet_stop_dest (number - 1);
  row->bookmark_level = 2;
  row->space_before = 10;
  row->keep_next = TRUE;
  em_row_rule (row, EM_INK_TEXT, 0, 0, sheet->width, 0, 0.8);
  em_row_text_take (row, em_flow_layout (sheet->flow, EM_TEXT_HEADING, badge, EM_STOP_INDENT - 4, EM_ALIGN_LEFT), EM_INK_ACCENT, 0, 7);
  em_sheet_stack_take (sheet, row, texts, G_N_ELEMENTS (texts), EM_STOP_INDENT, 7, sheet->width - EM_STOP_INDENT);
}

/* A starting value and a line to write the one that was used on. Returns the bottom. */
static double
add_value (Stop *stop, EmRow *row, const char *label, char *take_value, double x, double y, double width)
{
  PangoLayout *name, *value;
  double right = x + width - USED_WIDTH - 6;
  g_autofree char *text = take_value;

  if (text == NULL)
    return y;
  value = em_flow_layout (stop->sheet->flow, EM_TEXT_STRONG, text, 0, EM_ALIGN_LEFT);
  name = em_flow_layout (stop->sheet->flow, EM_TEXT_QUIET, label, width - USED_WIDTH - 12 - em_layout_width (value), EM_ALIGN_LEFT);
  em_sheet_right_take (row, value, EM_INK_TEXT, right, y + 2.4);
  em_row_text_take (row, name, EM_INK_TEXT, x, y + 3.2);
  y += fmax (VALUE_HEIGHT, em_layout_height (name) + 4);
  em_row_rule (row, EM_INK_LINE, x, y, right, y, 0.5);
  em_row_rule (row, EM_INK_TEXT, right + 6, y, x + width, y, 0.5);
  return y;
}

/* Starting values, those that are known, at the right of the drawings. */
static void
add_values (Stop *stop, EmRow *row, double x, double width)
{
  const EmArc *arc = &stop->cost->arc;
  EmPaperSheet *sheet = stop->sheet;
  const struct { const char *label; char *value; } values[] = {
    { _("Spot or pool"), write_length (stop, arc->spot_mm, 2) },
    { _("Travel speed"), write_unit (arc->speed_mm_per_s, 3, "mm/s") },
    { _("Pulse length"), write_unit (arc->pulse_ms, 3, "ms") },
    { _("Pulse rate"), write_unit (arc->frequency_hz, 3, "Hz") },
    { _("Pulse energy"), write_unit (arc->pulse_energy_j, 3, "J") },
    { _("Peak power"), write_unit (arc->peak_w / 1000, 3, "kW") },
    { _("Current"), write_unit (arc->current_a, 3, "A") },
    { _("Voltage"), write_unit (arc->voltage_v, 3, "V") },
    { _("Heat input"), write_unit (arc->heat_input_kj_per_mm, 3, "kJ/mm") },
    { _("Gas flow"), stop->machine != NULL ? write_unit (stop->machine->gas_l_per_min, 3, "l/min") : NULL },
    { _("Tilt from the wall"), stop->cost->tilt_deg > 0 ? em_words_quantity (ceil (stop->cost->tilt_deg), EM_QUANTITY_ANGLE, stop->quote->units) : NULL },
  };
  double y = 10;

  em_row_text_take (row, em_flow_layout (sheet->flow, EM_TEXT_LABEL, _("Starting values"), width - USED_WIDTH - 6, EM_ALIGN_LEFT), EM_INK_QUIET, x, 0);
  em_row_text_take (row, em_flow_layout (sheet->flow, EM_TEXT_LABEL, _("Used"), USED_WIDTH, EM_ALIGN_LEFT), EM_INK_QUIET, x + width - USED_WIDTH, 0);
  for (gsize i = 0; i < G_N_ELEMENTS (values); i++)
    y = add_value (stop, row, values[i].label, values[i].value, x, y, width);
  if (arc->was_slowed)
    {
      g_autofree char *text = g_strdup_printf ("%s %s", _("Travel speed is"), em_words_bound (arc->bound));

      em_row_text_take (row, em_flow_layout (sheet->flow, EM_TEXT_SMALL, text, width, EM_ALIGN_LEFT), EM_INK_QUIET, x, y + 3);
    }
}

/* Section, plan and starting values side by side. */
static void
add_drawings (Stop *stop)
{
  EmPaperSheet *sheet = stop->sheet;
  EmRow *row = em_flow_row (sheet->flow);
  double width = (sheet->width - VALUES_WIDTH - 2 * GAP) / 2, height;

  add_values (stop, row, 2 * (width + GAP), VALUES_WIDTH);
  height = fmax (DRAWING_HEIGHT, row->height - 10);
  em_row_text_take (row, em_flow_layout (sheet->flow, EM_TEXT_LABEL, _("Section, tracks and layers"), width, EM_ALIGN_LEFT), EM_INK_QUIET, 0, 0);
  em_row_text_take (row, em_flow_layout (sheet->flow, EM_TEXT_LABEL, _("Plan"), width, EM_ALIGN_LEFT), EM_INK_QUIET, width + GAP, 0);
  em_sheet_draw_feature (sheet, row, stop->index, EM_VIEW_SECTION, 0, 10, width, height);
  em_sheet_draw_feature (sheet, row, stop->index, EM_VIEW_PLAN, width + GAP, 10, width, height);
  row->space_before = 6;
  row->keep_next = TRUE;
}

/* Layers with as many tracks each as one line: "Layers 1 to 3: 5 tracks of 12 mm". */
static char *
describe_layers (const Stop *stop, const EmPlanLayer *first, const EmPlanLayer *last)
{
  g_autofree char *length = em_words_length (first->length_mm, stop->quote->units, 2);
  const char *safety = first->is_safety ? _(" (for safety)") : "";
  g_autofree char *tracks = g_strdup_printf (ngettext ("%d track", "%d tracks", (gulong) first->tracks), (int) MIN (first->tracks, G_MAXINT));

  return first->layer == last->layer ? g_strdup_printf (_("Layer %1$d%2$s: %3$s, %4$s long"), first->layer, safety, tracks, length)
                                     : g_strdup_printf (_("Layers %1$d to %2$d%3$s: %4$s each, %5$s long"), first->layer, last->layer, safety, tracks, length);
}

static gboolean
is_alike (const EmPlanLayer *a, const EmPlanLayer *b)
{
  return a->tracks == b->tracks && a->is_safety == b->is_safety && fabs (a->length_mm - b->length_mm) < 0.05;
}

static void
add_layers (Stop *stop, double x, double width)
{
  const EmFeatureCost *cost = stop->cost;
  EmPlanLayer first, last, next;

  em_plan_layer (&cost->shape, &cost->rules, &cost->plan, 0, &first);
  last = first;
  for (int32_t i = 1; i <= cost->plan.layers; i++)
    {
      g_autofree char *text = NULL;

      if (i < cost->plan.layers)
        em_plan_layer (&cost->shape, &cost->rules, &cost->plan, i, &next);
      if (i < cost->plan.layers && is_alike (&first, &next))
        {
          last = next;
          continue;
        }
      text = describe_layers (stop, &first, &last);
      em_sheet_add_bullet (stop->sheet, EM_TEXT_QUIET, text, x, width);
      first = last = next;
    }
}

static char *
describe_masking (const Stop *stop)
{
  g_autofree char *clearance = write_length (stop, stop->feature->clearance_mm, 3);

  if (clearance == NULL || stop->feature->near == EM_NEAR_NOTHING)
    return g_strdup (_("Place found, marked, cleaned to bright metal."));
  return g_strdup_printf (_("Place found, marked, cleaned to bright metal. %1$s %2$s away: masked, the spot stays clear of it."),
                          em_words_near (stop->feature->near), clearance);
}

static char *
describe_melt_out (const Stop *stop)
{
  g_autofree char *length = write_length (stop, stop->cost->plan.melt_out_length_mm, 1);

  if (!stop->cost->rules.is_melted_out)
    return NULL;
  return g_strdup_printf (ngettext ("Melted clean without filler: %1$d track, %2$s in all. Pores and dirt brushed off before filler goes on.",
                                    "Melted clean without filler: %1$d tracks, %2$s in all. Pores and dirt brushed off before filler goes on.",
                                    (gulong) stop->cost->plan.melt_out_tracks), (int) MIN (stop->cost->plan.melt_out_tracks, G_MAXINT), length);
}

static char *
describe_build (const Stop *stop)
{
  const EmPlan *plan = &stop->cost->plan;
  g_autofree char *layer = write_length (stop, plan->layer_mm, 2);
  g_autofree char *pitch = write_length (stop, plan->pitch_mm, 2);
  g_autofree char *height = write_length (stop, stop->cost->shape.height_mm, 3);
  g_autofree char *stock = write_length (stop, stop->cost->rules.stock_mm, 3);

  return g_strdup_printf (ngettext ("Built up: %1$d layer of %2$s, tracks %3$s apart. Finished height %4$s and at least %5$s of stock on top.",
                                    "Built up: %1$d layers of %2$s, tracks %3$s apart. Finished height %4$s and at least %5$s of stock on top.",
                                    (gulong) plan->layers), plan->layers, layer, pitch, height, stock);
}

static char *
describe_cap (const Stop *stop)
{
  const EmPlan *plan = &stop->cost->plan;
  g_autofree char *edge = write_length (stop, stop->cost->shape.cap_edge_mm, 2);

  if (!(plan->cap_length_mm > 0))
    return NULL;
  return g_strdup_printf (ngettext ("Capped: tool turned, %1$d track along each sharp edge on its other face, %2$s of edge.",
                                    "Capped: tool turned, %1$d tracks along each sharp edge on its other face, %2$s of edge.",
                                    (gulong) plan->cap_tracks), (int) MIN (plan->cap_tracks, G_MAXINT), edge);
}

/* What the catalogue says of the wire as deposited; NULL when it says nothing. */
static char *
describe_hardness (const Stop *stop)
{
  const EmFiller *filler = stop->cost->filler >= 0 ? &stop->sheet->source->catalogue->filler[stop->cost->filler] : NULL;
  g_autofree char *low = filler != NULL ? em_words_figure (filler->hardness_low_hrc, 3) : NULL;
  g_autofree char *high = filler != NULL ? em_words_figure (filler->hardness_high_hrc, 3) : NULL;

  if (filler == NULL || !isfinite (filler->hardness_low_hrc) || !isfinite (filler->hardness_high_hrc))
    return NULL;
  return g_strdup_printf (_("wire: %1$s to %2$s\302\240HRC"), low, high);
}

static void
add_steps (Stop *stop)
{
  EmPaperSheet *sheet = stop->sheet;

  em_sheet_add_tick_take (sheet, describe_masking (stop), 0, sheet->width);
  em_flow_last_row (sheet->flow)->space_before = 7;
  em_sheet_add_tick_take (sheet, describe_melt_out (stop), 0, sheet->width);
  em_sheet_add_tick_take (sheet, describe_build (stop), 0, sheet->width);
  em_flow_last_row (sheet->flow)->keep_next = TRUE;
  add_layers (stop, 14, sheet->width - 14);
  em_sheet_add_tick_take (sheet, describe_cap (stop), 0, sheet->width);
  em_sheet_add_tick (sheet, _("Looked over under magnification; dye penetrant (ISO 3452-1): no cracks, no open pores."), 0, sheet->width);
  em_flow_last_row (sheet->flow)->keep_next = TRUE;
  if (em_words_finish_of (stop->quote, stop->index) == EM_FINISH_SHOP)
    {
      em_sheet_add_tick (sheet, _("Size measured: there is metal all over, stock and all."), 0, sheet->width);
      em_flow_last_row (sheet->flow)->keep_next = TRUE;
      em_sheet_add_tick (sheet, _("Machined back to size by us."), 0, sheet->width);
    }
  else
    em_sheet_add_tick (sheet, _("Size measured: there is metal all over, stock and all. Left as welded: the customer machines it."), 0, sheet->width);
  em_flow_last_row (sheet->flow)->keep_next = TRUE;
}

static char *
write_planned (char *take_figure)
{
  char *text = g_strdup_printf (_("planned %s"), take_figure);

  g_free (take_figure);
  return text;
}

/* Boxes to write in; what was planned, or is known of the wire, stands at their foot. */
static void
add_actuals (Stop *stop)
{
  EmPaperSheet *sheet = stop->sheet;
  int32_t n_tools = stop->quote->n_tools;
  const struct { const char *label; char *under; } boxes[] = {
    { _("Arc or beam on"), write_planned (em_words_duration (stop->cost->arc_on_s * n_tools)) },
    { _("At the bench, welding"), write_planned (em_words_duration ((stop->cost->task_s[EM_TASK_ARC_ON] + stop->cost->task_s[EM_TASK_HANDLING]) * n_tools)) },
    { _("Wire used"), write_planned (em_sheet_wire_length (stop->cost->wire_length_mm * n_tools, stop->quote->units)) },
    { _("Hardness"), describe_hardness (stop) },
    { _("Done by, date"), NULL },
  };
  /* NOLINTNEXTLINE(bugprone-integer-division): the count of the boxes is the whole quotient. */
  double width = sheet->width / G_N_ELEMENTS (boxes);
  EmRow *row = em_flow_row (sheet->flow);

  for (gsize i = 0; i < G_N_ELEMENTS (boxes); i++)
    {
      double x = (double) i * width;
      PangoLayout *under = em_flow_layout (sheet->flow, EM_TEXT_LABEL, boxes[i].under, width - 8, EM_ALIGN_LEFT);

      em_row_box (row, EM_INK_TEXT, x, 0, width, BOX_HEIGHT, FALSE);
      em_row_text_take (row, em_flow_layout (sheet->flow, EM_TEXT_LABEL, boxes[i].label, width - 8, EM_ALIGN_LEFT), EM_INK_TEXT, x + 4, 3);
      em_row_text_take (row, under, EM_INK_QUIET, x + 4, BOX_HEIGHT - 3 - em_layout_height (under));
      g_free (boxes[i].under);
    }
  row->space_before = 7;
  row->height += 2;
}

void
em_sheet_add_stop (EmPaperSheet *sheet, int32_t number)
{
  const EmPaperSource *source = sheet->source;
  int32_t index = source->cost->visit[number].feature;
  const EmFeatureCost *cost = &source->cost->feature[index];
  Stop stop = { sheet, source->quote, &source->quote->feature[index], cost,
                cost->machine >= 0 && cost->machine < source->rates->n_machines ? &source->rates->machine[cost->machine] : NULL, index };

  add_head (&stop, number + 1);
  add_drawings (&stop);
  add_steps (&stop);
  add_actuals (&stop);
}
