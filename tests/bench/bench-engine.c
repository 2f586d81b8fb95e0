/* bench-engine: one edited feature of a long quote, and every wire tried on the whole of it.
 *
 * The yardstick of the comparison is em_bench_bare: the same formulas in one loop of plain doubles, with no faults,
 * no limits, no records of what was chosen, no exact money. Both must come to the same prices, but for its rounding.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-bench-bare.h"
#include "em-compare.h"
#include "em-range.h"

#include <math.h>
#include <string.h>

enum { N_FEATURES = 1000, N_LONG = 100000, N_EDITS = 500, N_RUNS = 15 };

typedef struct
{
  EmBenchShop  shop;
  EmCompare    compare;
  EmCost       cost;
  EmBenchBare *bare;
  double       bare_minor[EM_BENCH_WIRES];
} Bench;

static void
begin (Bench *bench, int32_t n_features, int32_t n_kinds)
{
  em_bench_shop_init (&bench->shop);
  em_bench_fill (&bench->shop.quote, n_features, n_kinds);
  em_compare_init (&bench->compare);
  em_cost_init (&bench->cost);
  bench->bare = NULL;
}

static void
end (Bench *bench)
{
  em_bench_bare_free (bench->bare);
  em_compare_clear (&bench->compare);
  em_cost_clear (&bench->cost);
  em_bench_shop_clear (&bench->shop);
}

/* ---- one edit ---- */

static void
edit_features (void *data)
{
  Bench *bench = data;
  EmQuote *quote = &bench->shop.quote;

  for (int32_t i = 0; i < N_EDITS; i++)
    {
      int32_t at = i * 619 % quote->n_features;

      quote->feature[at].value[0] *= i % 2 == 0 ? 1.01 : 0.99;
      em_bench_demand (em_cost_update (&bench->cost, at, quote, &bench->shop.rates, &bench->shop.catalogue, NULL) == EM_OK, "an update");
    }
}

static void
cost_whole (void *data)
{
  Bench *bench = data;

  em_bench_demand (em_cost_quote (&bench->cost, &bench->shop.quote, &bench->shop.rates, &bench->shop.catalogue, NULL, NULL) == EM_OK, "a costing");
}

static bool
measure_edit (void)
{
  Bench bench;
  double whole_s, edit_s;

  begin (&bench, N_FEATURES, EM_BENCH_ALL_KINDS);
  whole_s = em_bench_best_s (N_RUNS, cost_whole, &bench);
  em_bench_demand (bench.cost.n_faults == 0, "a feature at fault");
  edit_s = em_bench_best_s (N_RUNS, edit_features, &bench) / N_EDITS;
  printf ("costing of %d features from scratch: %.3f ms; one edited: 1/%.0f of it\n", N_FEATURES, whole_s * 1e3, whole_s / edit_s);
  end (&bench);
  return em_bench_tell ("one edited feature of 1,000, totals and all", edit_s * 1e3, "ms", 0.1);
}

/* ---- comparison ---- */

static void
compare_wires (void *data)
{
  Bench *bench = data;

  em_bench_demand (em_compare_quote (&bench->compare, &bench->shop.quote, -1, &bench->shop.rates, &bench->shop.catalogue, NULL) == EM_OK, "a comparison");
}

static void
compare_bare (void *data)
{
  Bench *bench = data;

  em_bench_bare_run (bench->bare, bench->bare_minor);
}

/* Half a minor unit a rounded line, and as much again for a double that lies on the other side of one. */
static void
demand_agreement (const Bench *bench)
{
  double worst = 0.0, slack = bench->shop.quote.n_features;

  for (int32_t i = 0; i < bench->compare.n_rows; i++)
    {
      const EmCompareRow *row = &bench->compare.row[i];

      em_bench_demand (!row->is_ruled_out, "a wire ruled out");
      worst = fmax (worst, fabs ((double) row->net_minor - bench->bare_minor[row->filler]));
    }
  printf ("bare loop and engine differ by at most %.1f minor units of %.0f\n", worst, bench->bare_minor[0]);
  em_bench_demand (worst <= slack, "the bare loop comes to another price");
}

static bool
measure_against_bare (void)
{
  Bench bench;
  double ours_s, bare_s;

  begin (&bench, N_FEATURES, EM_BENCH_PLAIN_KINDS);
  bench.bare = em_bench_bare_new (&bench.shop);
  em_bench_pair_s (N_RUNS, compare_wires, compare_bare, &bench, &ours_s, &bare_s);
  demand_agreement (&bench);
  printf ("comparison of three kinds: ours %.2f ms, bare loop %.2f ms\n", ours_s * 1e3, bare_s * 1e3);
  end (&bench);
  return em_bench_tell ("comparison against the bare arithmetic in one loop", ours_s / bare_s, "times", 4.0);
}

static double
seconds_to_compare (int32_t n_features, int n_runs)
{
  Bench bench;
  double best_s;

  begin (&bench, n_features, EM_BENCH_ALL_KINDS);
  best_s = em_bench_best_s (n_runs, compare_wires, &bench);
  for (int32_t i = 0; i < bench.compare.n_rows; i++)
    em_bench_demand (!bench.compare.row[i].is_ruled_out, "a wire ruled out");
  end (&bench);
  return best_s;
}

static bool
measure_compare (void)
{
  double short_s = seconds_to_compare (N_FEATURES, N_RUNS), long_s = seconds_to_compare (N_LONG, 4);
  bool is_met = em_bench_tell ("comparison of 1,000 features, all kinds, in frames", short_s / EM_BENCH_FRAME_S, "frames", 1.0);

  printf ("comparison of %d features: %.2f ms; of %d: %.3f s\n", N_FEATURES, short_s * 1e3, N_LONG, long_s);
  /* 1.25: caches no longer hold it all. */
  return em_bench_tell ("growth of time per feature, 1,000 to 100,000", long_s / short_s * N_FEATURES / N_LONG, "times", 1.25) && is_met;
}

/* ---- a range ---- */

enum { N_RANGED = 20, N_SAMPLES = 10000 };

/* Two dimensions of every feature known as low, likely, high. */
static void
loosen (EmQuote *quote)
{
  for (int32_t i = 0; i < quote->n_features; i++)
    for (int field = 0, n = 0; field < quote->feature[i].kind->n_fields && n < 2; field++)
      if (quote->feature[i].kind->fields[field].quantity == EM_QUANTITY_LENGTH && !em_is_absent (quote->feature[i].value[field]))
        {
          quote->feature[i].low[field] = 0.8 * quote->feature[i].value[field];
          quote->feature[i].high[field] = 1.3 * quote->feature[i].value[field];
          n++;
        }
}

static void
find_range (void *data)
{
  Bench *bench = data;
  EmRange range;

  em_bench_demand (em_range_quote (&bench->shop.quote, &bench->shop.rates, &bench->shop.catalogue, N_SAMPLES, 7, &range, NULL) == EM_OK
                   && range.has_range && range.p10_minor < range.p90_minor && range.n_inputs == EM_RANGE_INPUT_MAX, "a range");
}

static void
cost_samples (void *data)
{
  Bench *bench = data;

  for (int i = 0; i < N_SAMPLES / 100; i++)
    cost_whole (bench);
}

/* The yardstick: each sample costed by itself. A hundredth of them is timed. */
static bool
measure_range (void)
{
  Bench bench;
  double range_s, costs_s;

  begin (&bench, N_RANGED, EM_BENCH_ALL_KINDS);
  loosen (&bench.shop.quote);
  em_bench_pair_s (N_RUNS, find_range, cost_samples, &bench, &range_s, &costs_s);
  printf ("range of %d features by %d samples: %.2f ms; the quote costed as often: %.0f ms\n", N_RANGED, N_SAMPLES, range_s * 1e3, 100 * costs_s * 1e3);
  end (&bench);
  return em_bench_tell ("price range of 20 features, 10,000 samples, in frames", range_s / EM_BENCH_FRAME_S, "frames", 1.0);
}

int
main (int argc, char **argv)
{
  bool is_met;

  /* One part alone, for a profiler. */
  if (argc > 1)
    return seconds_to_compare (N_FEATURES, atoi (argv[1])) > 0.0 ? EXIT_SUCCESS : EXIT_FAILURE;
  is_met = measure_edit ();
  is_met = measure_against_bare () && is_met;
  is_met = measure_compare () && is_met;
  is_met = measure_range () && is_met;
  return is_met ? EXIT_SUCCESS : EXIT_FAILURE;
}
