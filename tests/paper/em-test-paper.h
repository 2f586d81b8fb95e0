/* em-test-paper: a quote, a book and a finished costing stated by hand, all invented.
 *
 * The amounts are set here and not worked out, so that what the pages say can be added up
 * apart from the engine. One kind of the tests' own: a ledge, l × t × h.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "../core/em-test-book.h"
#include "em-caution.h"
#include "em-paper.h"
#include "em-words.h"

#include <stdlib.h>
#include <string.h>

static const EmField ledge_fields[] =
{
  { "length", "l", "Length", EM_QUANTITY_LENGTH, 0.1, 5000, true, EM_ABSENT, true, NULL, NULL, NULL, 0 },
  { "thickness", "t", "Thickness", EM_QUANTITY_LENGTH, 0.01, 50, true, EM_ABSENT, true, NULL, NULL, NULL, 0 },
  { "height", "h", "Height", EM_QUANTITY_LENGTH, 0.01, 50, true, EM_ABSENT, true, NULL, NULL, NULL, 0 },
};

static inline EmStatus
ledge_solve (const double *value, EmShape *out_shape, EmFault *out_fault)
{
  (void) out_fault;
  out_shape->height_mm = value[2];
  out_shape->net_volume_mm3 = value[0] * value[1] * value[2];
  out_shape->coated_area_mm2 = value[0] * value[1];
  out_shape->cap_edge_mm = 2 * value[0];
  out_shape->reach_extent_mm = value[0];
  memcpy (out_shape->p, value, 3 * sizeof *value);
  return EM_OK;
}

static inline double ledge_width  (const EmShape *shape, double z_mm) { (void) z_mm; return shape->p[1]; }
static inline double ledge_length (const EmShape *shape, double z_mm) { (void) z_mm; return shape->p[0]; }

static inline void
ledge_point (EmOutline *outline, double x_mm, double y_mm, EmInk ink, bool is_start)
{
  outline->point[outline->n_points++] = (EmOutlinePoint) { x_mm, y_mm, ink, is_start };
}

static inline void
ledge_box (EmOutline *outline, double x0, double y0, double x1, double y1, EmInk ink)
{
  ledge_point (outline, x0, y0, ink, true);
  ledge_point (outline, x1, y0, ink, false);
  ledge_point (outline, x1, y1, ink, false);
  ledge_point (outline, x0, y1, ink, false);
}

static inline void
ledge_outline (const EmShape *shape, EmView view, EmOutline *out_outline)
{
  double l = shape->p[0], t = shape->p[1], h = shape->p[2];

  memset (out_outline, 0, sizeof *out_outline);
  if (view == EM_VIEW_SECTION)
    {
      ledge_box (out_outline, -t, -1.2 * h, 2 * t, 0, EM_INK_BASE);
      ledge_box (out_outline, 0, 0, t, h, EM_INK_METAL);
      out_outline->dim[out_outline->n_dims++] = (EmOutlineDim) { 0, h, t, h, t, 1, t, 0, 0 };
      out_outline->dim[out_outline->n_dims++] = (EmOutlineDim) { t, 0, t, h, -t, 2, h, 0, 0 };
      return;
    }
  ledge_box (out_outline, -0.1 * l, -t, 1.1 * l, 2 * t, EM_INK_BASE);
  ledge_box (out_outline, 0, 0, l, t, EM_INK_METAL);
  out_outline->dim[out_outline->n_dims++] = (EmOutlineDim) { 0, t, l, t, t, 0, l, 0, 0 };
}

static inline int
ledge_layer (const EmShape *shape, double z_mm, int max, double *out_xy_mm)
{
  if (max < 2)
    return 0;
  out_xy_mm[0] = 0;
  out_xy_mm[1] = z_mm;
  out_xy_mm[2] = shape->p[1];
  out_xy_mm[3] = z_mm;
  return 2;
}

static const EmKind ledge =
{
  .id = "test-ledge", .name = "Ledge", .summary = "A ledge", .fields = ledge_fields, .n_fields = 3, .melts_out = true, .caps_edges = true,
  .solve = ledge_solve, .width_mm = ledge_width, .length_mm = ledge_length, .outline = ledge_outline, .layer = ledge_layer,
};

typedef struct
{
  EmQuote     quote;
  EmRates     rates;
  EmCatalogue catalogue;
  EmCost      cost;
  EmCompare   compare;
  EmRange     range;
  EmPaperSource source;
} EmTestPaper;

static inline void
em_test_add_ledge (EmQuote *quote, double length_mm, double thickness_mm, double height_mm, const char *label)
{
  EmFeature feature;

  em_feature_init (&feature, &ledge);
  feature.value[0] = length_mm;
  feature.value[1] = thickness_mm;
  feature.value[2] = height_mm;
  feature.count = 1 + quote->n_features % 3;
  if (label != NULL)
    em_feature_set_text (&feature, EM_FEATURE_LABEL, label);
  em_quote_insert_take (quote, quote->n_features, &feature);
}

/* One feature's figures: wire 0.508 mm, layers of 0.254 mm, two of them and one for safety. */
static inline void
em_test_cost_feature (const EmFeature *feature, EmFeatureCost *out_cost)
{
  memset (out_cost, 0, sizeof *out_cost);
  em_feature_solve (feature, &out_cost->shape, NULL);
  out_cost->shape.kind = feature->kind;
  out_cost->rules = (EmPlanRules) { .wire_mm = 0.508, .layer_ratio = 0.5, .efficiency_ratio = 0.95, .stock_mm = 0.1, .safety_layers = 1,
                                    .is_melted_out = true, .is_capped = true };
  em_plan_solve (&out_cost->shape, &out_cost->rules, &out_cost->plan, NULL);
  out_cost->arc = (EmArc) { .speed_mm_per_s = 2.5, .bound = EM_BOUND_PULSE, .spot_mm = 0.61, .needed_w = 60, .frequency_hz = 10, .pulse_ms = 5,
                            .pulse_energy_j = 6, .peak_w = 1200, .current_a = EM_ABSENT, .voltage_v = EM_ABSENT, .heat_input_kj_per_mm = EM_ABSENT };
  out_cost->arc_on_s = out_cost->plan.welded_length_mm / 2.5;
  out_cost->wire_length_mm = out_cost->plan.welded_length_mm * 1.2;
  out_cost->task_s[EM_TASK_ARC_ON] = out_cost->arc_on_s;
  out_cost->task_s[EM_TASK_HANDLING] = out_cost->arc_on_s * 1.5;
}

static inline void
em_test_add_line (EmCost *cost, EmLineType type, int32_t row, int64_t amount_minor, int64_t rate_ppm)
{
  cost->line = realloc (cost->line, (size_t) (cost->n_lines + 1) * sizeof *cost->line);
  cost->line[cost->n_lines++] = (EmLine) { .type = type, .row = row, .quantity = 1, .amount_minor = amount_minor, .calculated_minor = amount_minor,
                                           .rate_ppm = rate_ppm };
}

/* Feature i costs 100.01 + 7.13·i; set-up 84.00, order 15.50; 10 % tax on the net, rounded half away from zero. */
static inline int64_t
em_test_amount (int32_t i)
{
  return 10001 + 713 * (int64_t) i;
}

static inline void
em_test_cost (EmTestPaper *paper)
{
  EmCost *cost = &paper->cost;
  int32_t n = paper->quote.n_features;
  int64_t net = 0;

  memset (cost, 0, sizeof *cost);
  cost->feature = calloc ((size_t) n, sizeof *cost->feature);
  cost->visit = calloc ((size_t) n, sizeof *cost->visit);
  cost->n_features = cost->cap_features = cost->n_visits = n;
  for (int32_t i = 0; i < n; i++)
    {
      em_test_cost_feature (&paper->quote.feature[i], &cost->feature[i]);
      cost->visit[i] = (EmVisit) { .feature = i, .setting = 1 + i / 3, .is_new_setting = i % 3 == 0, .is_new_wire = i == 0 };
      em_test_add_line (cost, EM_LINE_FEATURE, i, em_test_amount (i), 0);
    }
  em_test_add_line (cost, EM_LINE_SET_UP, 0, 8400, 0);
  em_test_add_line (cost, EM_LINE_ORDER, 0, 1550, 0);
  for (int32_t i = 0; i < cost->n_lines; i++)
    net += cost->line[i].amount_minor;
  em_test_add_line (cost, EM_LINE_TAX, 0, (net + 5) / 10, 100000);
  cost->settings = (n + 2) / 3;
  cost->wire_changes = 1;
  cost->preheat_degc = 290;
  cost->is_preheated = true;
  cost->totals = (EmTotals) { .n_tools = 1, .subtotal_minor = net, .net_minor = net, .tax_minor = (net + 5) / 10, .total_minor = net + (net + 5) / 10,
                              .each_minor = net };
}

static inline void
em_test_set_quote (EmQuote *quote, const char *language, const char *paper_size)
{
  static const struct { EmQuoteText which; const char *text; } texts[] = {
    { EM_QUOTE_NUMBER, "Q-1001" }, { EM_QUOTE_REVISION, "B" }, { EM_QUOTE_DATE, "2026-03-09" }, { EM_QUOTE_PREPARED_BY, "The office" },
    { EM_QUOTE_CUSTOMER, "Example Moulding Works" }, { EM_QUOTE_CONTACT, "Purchasing" }, { EM_QUOTE_ADDRESS, "1 Invented Street\n00000 Nowhere" },
    { EM_QUOTE_REFERENCE, "RFQ 77" }, { EM_QUOTE_TOOL, "Lower cavity" }, { EM_QUOTE_TOOL_NUMBER, "T-12" }, { EM_QUOTE_DRAWING, "D-34 sheet 2" },
    { EM_QUOTE_BASE, "p20" }, { EM_QUOTE_FILLER, "h13" }, { EM_QUOTE_LEAD_TIME, "5 working days" },
  };

  for (size_t i = 0; i < sizeof texts / sizeof texts[0]; i++)
    em_quote_set_text (quote, texts[i].which, texts[i].text);
  em_quote_set_text (quote, EM_QUOTE_LANGUAGE, language);
  em_quote_set_text (quote, EM_QUOTE_PAPER, paper_size);
}

/* n features; language and paper_size as the quote has them. */
static inline void
em_test_paper_init (EmTestPaper *paper, int32_t n, const char *language, const char *paper_size)
{
  EmTax tax = { em_text_dup ("Sales tax"), 100000, false };

  memset (paper, 0, sizeof *paper);
  em_test_rates (&paper->rates);
  em_rates_set_text (&paper->rates, EM_SHOP_NAME, "Example Weld Shop");
  em_rates_set_text (&paper->rates, EM_SHOP_ADDRESS, "2 Invented Lane\n00000 Nowhere");
  em_rates_set_text (&paper->rates, EM_SHOP_TERMS, "Payment within 30 days. Prices hold for the quantities named.");
  em_rates_add_tax_take (&paper->rates, &tax);
  em_test_catalogue (&paper->catalogue);
  em_quote_init (&paper->quote);
  em_test_set_quote (&paper->quote, language, paper_size);
  for (int32_t i = 0; i < n; i++)
    em_test_add_ledge (&paper->quote, 10 + i % 7, 0.6, 0.45, i % 2 == 0 ? "Parting line, gate side" : NULL);
  em_test_cost (paper);
  paper->source = (EmPaperSource) { .quote = &paper->quote, .cost = &paper->cost, .rates = &paper->rates, .catalogue = &paper->catalogue };
}

static inline void
em_test_paper_clear (EmTestPaper *paper)
{
  free (paper->cost.feature);
  free (paper->cost.visit);
  free (paper->cost.line);
  em_quote_clear (&paper->quote);
  em_rates_clear (&paper->rates);
  em_catalogue_clear (&paper->catalogue);
}
