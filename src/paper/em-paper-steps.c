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

#define DRAWING_HEIGHT 150.0
#define VALUE_COLUMNS  5
#define BOX_HEIGHT     48.0

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

/* Wire is counted in metres from one on; in inches always. */
static char *
write_wire (const Stop *stop, double mm)
{
  return stop->quote->units == EM_UNITS_METRIC && mm >= 1000 ? write_unit (mm / 1000, 3, "m") : write_length (stop, mm, 0);
}

static void
add_head (Stop *stop, int32_t number)
{
  EmPaperSheet *sheet = stop->sheet;
  EmRow *row = em_flow_row (sheet->flow);
  g_autofree char *name = em_words_feature_name (stop->quote, stop->index);
  g_autofree char *places = g_strdup_printf (ngettext ("%d place", "%d places", (gulong) stop->feature->count), stop->feature->count);
  g_autofree char *badge = g_strdup_printf (_("Stop %d"), number);
  EmCellText texts[] = {
    { EM_TEXT_HEADING, EM_INK_TEXT, g_strdup_printf ("%s – %s", name, places), 0 },
    { EM_TEXT_QUIET, EM_INK_QUIET, em_words_sizes (stop->feature, stop->quote->units), 2 },
    { EM_TEXT_STRONG, EM_INK_TEXT, g_strdup (stop->feature->text[EM_FEATURE_REMARK]), 3 },
  };

  row->bookmark = g_strdup (name);
  row->bookmark_level = 2;
  row->space_before = 10;
  row->keep_next = TRUE;
  em_row_rule (row, EM_INK_TEXT, 0, 0, sheet->width, 0, 0.8);
  em_row_text_take (row, em_flow_layout (sheet->flow, EM_TEXT_HEADING, badge, 0, EM_ALIGN_LEFT), EM_INK_ACCENT, 0, 7);
  em_sheet_stack_take (sheet, row, texts, G_N_ELEMENTS (texts), 62, 7, sheet->width - 62);
}

static void
add_drawings (Stop *stop)
{
  EmPaperSheet *sheet = stop->sheet;
  EmRow *row = em_flow_row (sheet->flow);
  double width = (sheet->width - 16) / 2;

  em_row_text_take (row, em_flow_layout (sheet->flow, EM_TEXT_LABEL, _("Section, tracks and layers"), 0, EM_ALIGN_LEFT), EM_INK_QUIET, 0, 0);
  em_row_text_take (row, em_flow_layout (sheet->flow, EM_TEXT_LABEL, _("Plan"), 0, EM_ALIGN_LEFT), EM_INK_QUIET, width + 16, 0);
  em_sheet_draw_feature (sheet, row, stop->index, EM_VIEW_SECTION, 0, 10, width, DRAWING_HEIGHT);
  em_sheet_draw_feature (sheet, row, stop->index, EM_VIEW_PLAN, width + 16, 10, width, DRAWING_HEIGHT);
  row->space_before = 6;
  row->keep_next = TRUE;
}

/* Starting values, label and text; those that are NULL are left out. */
static void
add_values (Stop *stop)
{
  const EmArc *arc = &stop->cost->arc;
  const EmFeatureCost *cost = stop->cost;
  EmPaperSheet *sheet = stop->sheet;
  struct { const char *label; char *value; } values[] = {
    { _("Machine"), g_strdup (stop->machine != NULL ? stop->machine->name : NULL) },
    { _("Wire"), em_sheet_wire_text (sheet, cost) },
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
    { _("Travel speed is"), arc->was_slowed ? g_strdup (em_words_bound (arc->bound)) : NULL },
    { _("Tilt from the wall"), cost->tilt_deg > 0 ? em_words_quantity (ceil (cost->tilt_deg), EM_QUANTITY_ANGLE, stop->quote->units) : NULL },
    { _("Access"), g_strdup (em_words_access (stop->feature->access)) },
    { _("Wire needed"), write_wire (stop, cost->wire_length_mm) },
  };
  double width = (sheet->width - 10 * (VALUE_COLUMNS - 1)) / VALUE_COLUMNS, top = 7, bottom = 7;
  EmRow *row = em_flow_row (sheet->flow);
  int column = 0;

  for (gsize i = 0; i < G_N_ELEMENTS (values); i++)
    {
      if (values[i].value != NULL)
        {
          bottom = fmax (bottom, em_sheet_add_fact (sheet, row, values[i].label, values[i].value, column * (width + 10) + 6, top, width - 6));
          column = (column + 1) % VALUE_COLUMNS;
          top = column == 0 ? bottom : top;
        }
      g_free (values[i].value);
    }
  row->height = bottom;
  em_row_box (row, EM_INK_LINE, 0, 0, sheet->width, bottom, FALSE);
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
  g_autofree char *layer = write_length (stop, plan->layer_mm, 3);
  g_autofree char *pitch = write_length (stop, plan->pitch_mm, 3);
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

static char *
describe_hardness (const Stop *stop)
{
  const EmFiller *filler = stop->cost->filler >= 0 ? &stop->sheet->source->catalogue->filler[stop->cost->filler] : NULL;
  g_autofree char *low = filler != NULL ? em_words_figure (filler->hardness_low_hrc, 3) : NULL;
  g_autofree char *high = filler != NULL ? em_words_figure (filler->hardness_high_hrc, 3) : NULL;

  if (filler == NULL || !isfinite (filler->hardness_low_hrc) || !isfinite (filler->hardness_high_hrc))
    return g_strdup (_("Hardness of the weld tested where it is to be known."));
  return g_strdup_printf (_("Hardness of the weld tested: the wire’s catalog says %1$s to %2$s\302\240HRC as deposited, a laser’s quench may leave it harder."), low, high);
}

static void
add_steps (Stop *stop)
{
  EmPaperSheet *sheet = stop->sheet;
  guint first = em_flow_n_rows (sheet->flow);
  gboolean by_shop = em_words_finish_of (stop->quote, stop->index) == EM_FINISH_SHOP;

  em_sheet_add_tick_take (sheet, describe_masking (stop), 0, sheet->width);
  em_flow_last_row (sheet->flow)->space_before = 7;
  em_sheet_add_tick_take (sheet, describe_melt_out (stop), 0, sheet->width);
  em_sheet_add_tick_take (sheet, describe_build (stop), 0, sheet->width);
  add_layers (stop, 14, sheet->width - 14);
  em_sheet_add_tick_take (sheet, describe_cap (stop), 0, sheet->width);
  em_sheet_add_tick (sheet, _("Looked over under magnification; dye penetrant (ISO 3452-1): no cracks, no open pores."), 0, sheet->width);
  em_sheet_add_tick (sheet, _("Size measured: there is metal all over, stock and all."), 0, sheet->width);
  em_sheet_add_tick_take (sheet, describe_hardness (stop), 0, sheet->width);
  em_sheet_add_tick (sheet, by_shop ? _("Machined back to size by us.") : _("Left as welded: the customer machines it."), 0, sheet->width);
  /* A few steps on either side of a page's end, the last ones with the boxes for actual figures. */
  em_flow_keep (sheet->flow, first, first + 2);
  em_flow_keep (sheet->flow, em_flow_n_rows (sheet->flow) - 3, em_flow_n_rows (sheet->flow));
}

/* Boxes to write in; what was planned stands under each label. */
static void
add_actuals (Stop *stop)
{
  EmPaperSheet *sheet = stop->sheet;
  int32_t n_tools = stop->quote->n_tools;
  g_autofree char *arc_on = em_words_duration (stop->cost->arc_on_s * n_tools);
  g_autofree char *bench = em_words_duration ((stop->cost->task_s[EM_TASK_ARC_ON] + stop->cost->task_s[EM_TASK_HANDLING]) * n_tools);
  g_autofree char *wire = write_wire (stop, stop->cost->wire_length_mm * n_tools);
  const struct { const char *label, *planned; } boxes[] = {
    { _("Arc or beam on"), arc_on }, { _("At the bench, welding"), bench }, { _("Wire used"), wire }, { _("Hardness"), NULL }, { _("Done by, date"), NULL },
  };
  double width = sheet->width / G_N_ELEMENTS (boxes);
  EmRow *row = em_flow_row (sheet->flow);

  for (gsize i = 0; i < G_N_ELEMENTS (boxes); i++)
    {
      g_autofree char *planned = boxes[i].planned != NULL ? g_strdup_printf (_("planned %s"), boxes[i].planned) : NULL;
      double x = (double) i * width;
      PangoLayout *under;

      em_row_box (row, EM_INK_TEXT, x, 0, width, BOX_HEIGHT, FALSE);
      em_row_text_take (row, em_flow_layout (sheet->flow, EM_TEXT_LABEL, boxes[i].label, width - 8, EM_ALIGN_LEFT), EM_INK_TEXT, x + 4, 3);
      under = em_flow_layout (sheet->flow, EM_TEXT_LABEL, planned, width - 8, EM_ALIGN_LEFT);
      em_row_text_take (row, under, EM_INK_QUIET, x + 4, BOX_HEIGHT - 3 - em_layout_height (under));
    }
  row->space_before = 8;
  row->height += 4;
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
  add_values (&stop);
  add_steps (&stop);
  add_actuals (&stop);
}
