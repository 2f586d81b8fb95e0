/* em-bench-shop: an invented shop and quotes of any length, the same on every run.
 *
 * 24 wires of 5 sizes, two machines of different efficiency, so that no plan serves both; one of the wires is the quote's.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-bench.h"
#include "em-cost.h"
#include "em-test-book.h"

#include <math.h>

enum { EM_BENCH_WIRES = 24 };

typedef struct
{
  EmRates     rates;
  EmCatalogue catalogue;
  EmQuote     quote;
} EmBenchShop;

/* One feature as typed: kind, then field ids and values. Sizes of everyday mould repairs. */
typedef struct
{
  const char *kind;
  struct { const char *field; double value; } given[5];
} EmBenchSample;

static const EmBenchSample em_bench_samples[] =
{
  { "edge-nick",   { { "length", 12 }, { "leg_a", 0.8 }, { "leg_b", 0.6 } } },
  { "sidewall",    { { "length", 24 }, { "height", 8 }, { "thickness", 0.4 } } },
  { "groove",      { { "length", 30 }, { "depth", 1.5 } } },
  { "worn-corner", { { "length", 60 }, { "radius", 0.7 }, { "angle", 90 } } },
  { "face",        { { "length", 18 }, { "width", 9 }, { "thickness", 0.5 } } },
  { "rib",         { { "length", 40 }, { "thickness", 1.6 }, { "coat", 0.3 }, { "depth", 3 } } },
  { "bore",        { { "diameter", 8 }, { "build", 0.3 }, { "length", 6 } } },
  { "seat",        { { "diameter", 14 }, { "diameter_small", 6 }, { "depth", 5 }, { "thickness", 0.4 } } },
  { "pin",         { { "diameter", 6 }, { "build", 0.25 }, { "length", 10 } } },
  { "dam",         { { "length", 15 }, { "width", 2 }, { "height", 1.5 }, { "draft", 5 } } },
  { "recess",      { { "length", 6 }, { "width", 4 }, { "depth", 0.9 } } },
};

/* The first so many of the samples are edge nick, sidewall and groove alone. */
enum { EM_BENCH_PLAIN_KINDS = 3, EM_BENCH_ALL_KINDS = sizeof em_bench_samples / sizeof em_bench_samples[0] };

static inline void
em_bench_shop_init (EmBenchShop *out_shop)
{
  em_test_rates (&out_shop->rates);
  out_shop->rates.stock_mm = 0.3;
  out_shop->rates.machine[1].efficiency_ratio = 0.9;
  em_catalogue_init (&out_shop->catalogue);
  em_test_add_base (&out_shop->catalogue, "h13", EM_FAMILY_TOOL_STEEL, 0.40, 5.2);
  for (int i = 0; i < EM_BENCH_WIRES; i++)
    {
      char id[8];

      snprintf (id, sizeof id, "w%02d", i);
      em_test_add_filler (&out_shop->catalogue, id, EM_FAMILY_TOOL_STEEL, 0.05 + 0.02 * i, 1.0 + 0.4 * i, (1u << EM_PROCESS_LASER) | (1u << EM_PROCESS_GTAW));
      for (int s = 0; s < 5; s++)
        out_shop->catalogue.filler[i].size[s].price_minor += 7 * ((i * 5 + s * 11) % 17);
    }
  em_quote_init (&out_shop->quote);
  em_quote_set_text (&out_shop->quote, EM_QUOTE_BASE, "h13");
  em_quote_set_text (&out_shop->quote, EM_QUOTE_FILLER, "w07");
}

static inline void
em_bench_shop_clear (EmBenchShop *shop)
{
  em_quote_clear (&shop->quote);
  em_catalogue_clear (&shop->catalogue);
  em_rates_clear (&shop->rates);
}

/* The i-th feature: its sample's sizes, scaled between a half and one and a half, to a hundredth of a millimetre as a caliper
 * reads. */
static inline void
em_bench_feature (int32_t i, int32_t n_kinds, EmFeature *out_feature)
{
  const EmBenchSample *sample = &em_bench_samples[i % n_kinds];
  const EmKind *kind = em_kind_find (sample->kind);

  em_bench_demand (kind != NULL, sample->kind);
  em_feature_init (out_feature, kind);
  for (int k = 0; k < 5 && sample->given[k].field != NULL; k++)
    {
      int field = em_kind_field (kind, sample->given[k].field);

      em_bench_demand (field >= 0, sample->given[k].field);
      out_feature->value[field] = sample->given[k].value;
      if (kind->fields[field].quantity == EM_QUANTITY_LENGTH)
        out_feature->value[field] = round (100.0 * sample->given[k].value * (0.5 + (double) ((i * 37 + k * 11) % 101) / 101.0)) / 100.0;
    }
  out_feature->count = 1 + i % 3;
  out_feature->access = (EmAccess) (i % EM_N_ACCESS);
  out_feature->id = (uint32_t) i + 1;
}

/* Put there at once: inserting looks for a free id each time. */
static inline void
em_bench_fill (EmQuote *quote, int32_t n_features, int32_t n_kinds)
{
  quote->feature = malloc ((size_t) n_features * sizeof *quote->feature);
  em_bench_demand (quote->feature != NULL && quote->n_features == 0, "no memory");
  for (int32_t i = 0; i < n_features; i++)
    em_bench_feature (i, n_kinds, &quote->feature[i]);
  quote->n_features = quote->cap_features = n_features;
  quote->next_id = (uint32_t) n_features + 1;
}
