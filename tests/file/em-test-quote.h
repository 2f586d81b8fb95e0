/* em-test-quote: a quote, invented, with something in every member. Asserts by GLib, for programs that are no test themselves.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-quote.h"

#include <glib.h>
#include <stdio.h>

/* Values no two of which are alike, some that decimals cannot hold. */
static inline void
em_test_fill_values (EmFeature *feature, int salt)
{
  for (int i = 0; i < feature->kind->n_fields; i++)
    {
      const EmField *field = &feature->kind->fields[i];
      int n_options = 0;

      while (field->options != NULL && field->options[n_options] != NULL)
        n_options++;
      feature->value[i] = field->quantity == EM_QUANTITY_CHOICE ? (salt + i) % n_options : 0.1 + i / 3.0 + salt;
      if (field->quantity != EM_QUANTITY_CHOICE && i % 2 == 0)
        {
          feature->low[i] = feature->value[i] / 3.0;
          feature->high[i] = feature->value[i] * 3.0;
        }
      feature->origin[i] = (uint8_t) ((salt + i) % EM_N_ORIGIN);
    }
}

static inline void
em_test_fill_feature (EmFeature *feature, int salt)
{
  char text[64];

  em_test_fill_values (feature, salt);
  feature->count = salt + 2;
  feature->stock_mm = 0.1 + salt;
  feature->clearance_mm = 0.3 * salt;
  feature->near = (EmNear) (salt % EM_N_NEAR);
  feature->slot_width_mm = 1.0 / 3.0;
  feature->slot_depth_mm = 1e-7 * (salt + 1);
  feature->access = (EmAccess) (salt % EM_N_ACCESS);
  feature->setting = salt;
  feature->safety_layers = salt % 5 - 1;
  feature->melt_out = (EmChoice) (salt % 3);
  feature->cap = (EmChoice) ((salt + 1) % 3);
  feature->finish = (EmFinish) (salt % EM_N_FINISH);
  feature->wire_mm = 0.254;
  feature->has_override = salt % 2 == 1;
  feature->override_minor = salt * INT64_C (1000000000007);
  feature->actual = (EmActual) { 1.5 * salt, 1e15 / 7.0, 5e-324 };
  for (int i = 0; i < EM_N_FEATURE_TEXT; i++)
    if (i != EM_FEATURE_EXTRA)
      {
        snprintf (text, sizeof text, "text %d & <%d> \"ä€😀\"\n\tline", salt, i);
        g_assert_true (em_feature_set_text (feature, (EmFeatureText) i, text) == EM_OK);
      }
}

/* One feature of every kind; into an empty quote. */
static inline void
em_test_quote_full (EmQuote *quote)
{
  char text[64];

  for (int i = 0; i < EM_N_QUOTE_TEXT; i++)
    if (i != EM_QUOTE_EXTRA)
      {
        snprintf (text, sizeof text, "%s & <%d> 'ä€😀'\r\nsecond line ", em_quote_text_ids[i], i);
        g_assert_true (em_quote_set_text (quote, (EmQuoteText) i, text) == EM_OK);
      }
  quote->units = EM_UNITS_INCH;
  quote->state = EM_STATE_LAPSED;
  quote->hardness_hrc = 1.0 / 3.0;
  quote->section_mm = 25.4;
  quote->has_preheat = true;
  quote->preheat = EM_NO;
  quote->n_tools = 4;
  quote->n_breaks = EM_BREAK_MAX;
  for (int i = 0; i < EM_BREAK_MAX; i++)
    quote->break_tools[i] = 5 * (i + 1);
  quote->learning_ppm = 900000;
  quote->margin_ppm = 0;
  quote->contingency_ppm = 123456;
  quote->rush_ppm = 350001;
  quote->discount_ppm = 1;
  quote->validity_days = 0;
  quote->finish = EM_FINISH_SHOP;
  for (int i = 0; i < em_n_kinds; i++)
    {
      EmFeature feature;

      em_feature_init (&feature, em_kinds[i]);
      em_test_fill_feature (&feature, i);
      g_assert_true (em_quote_insert_take (quote, 0, &feature) == EM_OK);
    }
  em_quote_remove (quote, 0, NULL);   /* its id is spent */
  for (int i = 0; i < 3; i++)
    {
      EmExtra extra = { em_text_dup (i == 0 ? NULL : "Bought-out <EDM> & \"grinding\"\n2"), i * INT64_C (4611686018427387903), i == 1 };
      EmMark mark = { (uint32_t) i, (uint32_t) i, (uint32_t) i, (EmMarkState) i, em_text_dup (i == 1 ? "length" : NULL), em_text_dup (i == 2 ? "typ" : NULL) };

      g_assert_true (em_quote_add_extra_take (quote, &extra) == EM_OK);
      g_assert_true (em_quote_add_mark_take (quote, &mark) == EM_OK);
    }
}
