/* em-test-job: a quote to fill for tests of costing, over the invented book and catalogue.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-cost.h"
#include "em-test-book.h"
#include "em-test-main.h"

typedef struct
{
  EmRates     rates;
  EmCatalogue catalogue;
  EmQuote     quote;
} EmTestJob;

static inline void
em_test_job_init (EmTestJob *out_job)
{
  em_test_rates (&out_job->rates);
  em_test_catalogue (&out_job->catalogue);
  em_quote_init (&out_job->quote);
  em_quote_set_text (&out_job->quote, EM_QUOTE_BASE, "h13");
  em_quote_set_text (&out_job->quote, EM_QUOTE_FILLER, "h13");
}

static inline void
em_test_job_clear (EmTestJob *job)
{
  em_quote_clear (&job->quote);
  em_catalogue_clear (&job->catalogue);
  em_rates_clear (&job->rates);
}

/* A sidewall of length × height × thickness, plain: neither capped nor fused clean, nothing near. */
static inline EmFeature *
em_test_job_sidewall (EmTestJob *job, double length, double height, double thickness)
{
  const EmKind *kind = em_kind_find ("sidewall");
  EmFeature feature;

  ck_assert_ptr_nonnull (kind);
  em_feature_init (&feature, kind);
  feature.value[em_kind_field (kind, "length")] = length;
  feature.value[em_kind_field (kind, "height")] = height;
  feature.value[em_kind_field (kind, "thickness")] = thickness;
  feature.cap = feature.melt_out = EM_NO;
  ck_assert_int_eq (em_quote_insert_take (&job->quote, job->quote.n_features, &feature), EM_OK);
  return &job->quote.feature[job->quote.n_features - 1];
}

static inline void
em_test_job_solve (const EmTestJob *job, EmCost *out_cost)
{
  EmFault fault = { 0 };

  em_cost_init (out_cost);
  ck_assert_msg (em_cost_quote (out_cost, &job->quote, &job->rates, &job->catalogue, NULL, &fault) == EM_OK, "%s: %g", fault.field, fault.value);
}

static inline const EmLine *
em_test_job_line (const EmCost *cost, EmLineType type)
{
  for (int32_t i = 0; i < cost->n_lines; i++)
    if (cost->line[i].type == type)
      return &cost->line[i];
  return NULL;
}
