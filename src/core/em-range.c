/* em-range: the price when dimensions are only known as low, likely, high.
 *
 * Features do not touch each other's price but through the shared work, which is held at
 * the likely values. So each feature with a range is priced exactly for a table of
 * stratified draws, and the samples of the quote are sums of random rows of the tables: ten
 * thousand of them cost little more than their additions.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-range.h"
#include "em-cost-internal.h"

#include <stdlib.h>

/* Rows of one feature's table: all tables together hold about TABLE_ALL. */
enum { TABLE_LEAST = 128, TABLE_MOST = 1024, TABLE_ALL = 4096, MAIN_EFFECT_STEPS = 33, SAMPLES_MOST = 10000000 };

/* One quote being sampled. */
typedef struct
{
  const EmQuote     *quote;
  const EmRates     *rates;
  const EmCatalogue *catalogue;
  EmPriceRule  rule;
  EmOptions    options;
  EmStudy      study;
  int32_t      n_tools;
  double       learning_factor;
  uint64_t     random;
  EmRange      range;
} Sampler;

/* One feature's amounts less the likely one. */
typedef struct
{
  int32_t  n_rows;
  int64_t *delta_minor;
} Table;

/* SplitMix64 (Steele, Lea, Flood 2014): small, seeded, the same everywhere. */
static uint64_t
next_random (uint64_t *state)
{
  uint64_t z = (*state += UINT64_C (0x9e3779b97f4a7c15));

  z = (z ^ (z >> 30)) * UINT64_C (0xbf58476d1ce4e5b9);
  z = (z ^ (z >> 27)) * UINT64_C (0x94d049bb133111eb);
  return z ^ (z >> 31);
}

/* In [0, 1). */
static double
next_unit (uint64_t *state)
{
  return (double) (next_random (state) >> 11) * 0x1p-53;
}

/* Evenly among n > 0; the bias of the product is below n/2³². */
static int32_t
next_index (uint64_t *state, int32_t n)
{
  return (int32_t) (((next_random (state) >> 32) * (uint64_t) n) >> 32);
}

static bool
is_ranged (const EmFeature *feature, int field)
{
  return !em_is_absent (feature->value[field]) && (!em_is_absent (feature->low[field]) || !em_is_absent (feature->high[field]))
         && feature->kind->fields[field].quantity != EM_QUANTITY_CHOICE
         && em_field_is_shown (feature->kind, field, feature->value);
}

/* Quantile u of the triangular distribution low, likely, high; a missing end is the likely value:
 * F⁻¹(u) = low + √(u·(high − low)(likely − low)) up to the peak, high − √((1 − u)(high − low)(high − likely)) after it. */
static double
triangular (const EmFeature *feature, int field, double u)
{
  double likely = feature->value[field];
  double low = em_is_absent (feature->low[field]) ? likely : feature->low[field];
  double high = em_is_absent (feature->high[field]) ? likely : feature->high[field];

  if (!(high > low))
    return likely;
  if (u * (high - low) < likely - low)
    return low + sqrt (u * (high - low) * (likely - low));
  return high - sqrt ((1.0 - u) * (high - low) * (high - likely));
}

/* Limits of every range: low ≤ likely ≤ high, both finite. */
static EmStatus
check_ranges (const EmQuote *quote, EmFault *out_fault)
{
  for (int32_t i = 0; i < quote->n_features; i++)
    for (int field = 0; field < quote->feature[i].kind->n_fields; field++)
      {
        const EmFeature *feature = &quote->feature[i];
        double low = feature->low[field], high = feature->high[field], likely = feature->value[field];

        if (!is_ranged (feature, field))
          continue;
        if (!isinf (low) && !isinf (high) && !(low > likely) && !(high < likely))
          continue;
        em_fault_set (out_fault, EM_FAULT_RANGE, feature->kind->fields[field].id, likely, low, high);
        if (out_fault != NULL)
          out_fault->row = i;
        return EM_FAULT_RANGE;
      }
  return EM_OK;
}

/* The printed amount of one feature on the whole order, with other dimensions; the wire is chosen anew. */
static EmStatus
amount_of (Sampler *sampler, const EmFeature *feature, int32_t index, int64_t *out_minor)
{
  EmQuote quote = *sampler->quote;
  EmFeature drawn = *feature;
  EmExact direct[EM_N_DIRECT];
  int32_t filler;
  EmFixed fixed;
  EmPick pick;
  EmStatus status = em_cost_find_filler (sampler->quote, index, sampler->catalogue, &filler, NULL);

  quote.feature = &drawn;
  quote.n_features = 1;
  if (status == EM_OK)
    status = em_cost_find_fixed (sampler->quote, index, sampler->rates, &fixed, NULL);
  if (status == EM_OK)
    status = em_study_solve (&sampler->study, &quote, 0, sampler->rates, &sampler->options, NULL);
  if (status == EM_OK)
    status = em_study_pick (&sampler->study, filler, &fixed, &sampler->rule, &pick, NULL, NULL);
  if (status == EM_OK)
    status = em_price_direct (&sampler->rule, &pick.work, sampler->n_tools, sampler->learning_factor, direct);
  if (status == EM_OK)
    status = em_price_amount (&sampler->rule, direct, out_minor);
  return status;
}

/* Puts the strata of each ranged field in random order (Latin hypercube: McKay, Beckman, Conover 1979). order: n_rows. */
static void
shuffle (uint64_t *random, int32_t *order, int32_t n_rows)
{
  for (int32_t i = 0; i < n_rows; i++)
    order[i] = i;
  for (int32_t i = n_rows - 1; i > 0; i--)
    {
      int32_t j = next_index (random, i + 1), kept = order[i];

      order[i] = order[j];
      order[j] = kept;
    }
}

/* Fills table with n_rows exact prices; refused draws are left out and counted. drawn: room for n_rows features' values. */
static EmStatus
fill_table (Sampler *sampler, int32_t index, int64_t likely_minor, int32_t n_rows, Table *table)
{
  const EmFeature *feature = &sampler->quote->feature[index];
  int32_t *order = malloc ((size_t) n_rows * EM_FIELD_MAX * sizeof *order);

  table->n_rows = 0;
  table->delta_minor = malloc ((size_t) n_rows * sizeof *table->delta_minor);
  if (order == NULL || table->delta_minor == NULL)
    {
      free (order);
      return EM_FAULT_MEMORY;
    }
  for (int field = 0; field < feature->kind->n_fields; field++)
    shuffle (&sampler->random, order + (size_t) field * (size_t) n_rows, n_rows);
  for (int32_t row = 0; row < n_rows; row++)
    {
      EmFeature drawn = *feature;
      int64_t amount;

      for (int field = 0; field < feature->kind->n_fields; field++)
        if (is_ranged (feature, field))
          {
            double stratum = order[(size_t) field * (size_t) n_rows + (size_t) row];
            drawn.value[field] = triangular (feature, field, (stratum + next_unit (&sampler->random)) / n_rows);
          }
      if (amount_of (sampler, &drawn, index, &amount) == EM_OK)
        table->delta_minor[table->n_rows++] = amount - likely_minor;
      else
        sampler->range.n_refused++;
    }
  free (order);
  return EM_OK;
}

/* Variance of the amount when one field alone moves, at the middles of equal strata. */
static double
main_effect (Sampler *sampler, int32_t index, int field, int64_t likely_minor)
{
  EmFeature drawn = sampler->quote->feature[index];
  double sum = 0.0, squares = 0.0;
  int n = 0;

  for (int step = 0; step < MAIN_EFFECT_STEPS; step++)
    {
      int64_t amount;

      drawn.value[field] = triangular (&sampler->quote->feature[index], field, (step + 0.5) / MAIN_EFFECT_STEPS);
      if (amount_of (sampler, &drawn, index, &amount) != EM_OK)
        continue;
      double delta = (double) (amount - likely_minor);
      sum += delta;
      squares += delta * delta;
      n++;
    }
  return n > 0 ? fmax (0.0, squares / n - sum / n * (sum / n)) : 0.0;
}

/* Keeps the largest EM_RANGE_INPUT_MAX, largest first; share_ratio holds the variance until the end. */
static void
add_input (EmRange *range, int32_t feature, int32_t field, double variance)
{
  int32_t at = range->n_inputs;

  while (at > 0 && range->input[at - 1].share_ratio < variance)
    at--;
  if (at == EM_RANGE_INPUT_MAX)
    return;
  if (range->n_inputs < EM_RANGE_INPUT_MAX)
    range->n_inputs++;
  for (int32_t i = range->n_inputs - 1; i > at; i--)
    range->input[i] = range->input[i - 1];
  range->input[at] = (EmRangeInput) { .feature = feature, .field = field, .share_ratio = variance };
}

static int
compare_minor (const void *a, const void *b)
{
  int64_t x = *(const int64_t *) a, y = *(const int64_t *) b;

  return (x > y) - (x < y);
}

static void
fill_histogram (EmRange *range, const int64_t *sorted, int32_t n)
{
  int64_t low = sorted[0], high = sorted[n - 1];
  double width = fmax (1.0, (double) (high - low));

  range->bin_low_minor = low;
  range->bin_high_minor = high;
  for (int32_t i = 0; i < n; i++)
    {
      int bin = (int) ((double) (sorted[i] - low) / width * EM_RANGE_BIN);

      range->bin[bin < EM_RANGE_BIN ? bin : EM_RANGE_BIN - 1]++;
    }
}

/* Percentile p as the value of rank ⌈p·n⌉. */
static int64_t
percentile (const int64_t *sorted, int32_t n, double p)
{
  int32_t rank = (int32_t) ceil (p * n);

  return sorted[(rank < 1 ? 1 : rank) - 1];
}

/* Sums of random rows, each through minimum, rush, discount and rounding to the net. */
static EmStatus
draw_samples (Sampler *sampler, const Table *tables, int32_t n_tables, int64_t subtotal_minor, int64_t *net, int32_t n_samples)
{
  for (int32_t s = 0; s < n_samples; s++)
    {
      int64_t sum = subtotal_minor;
      EmTotals totals;
      EmStatus status = EM_OK;

      for (int32_t t = 0; t < n_tables && status == EM_OK; t++)
        status = em_money_add (sum, tables[t].delta_minor[next_index (&sampler->random, tables[t].n_rows)], &sum);
      if (status == EM_OK)
        status = em_price_totals (sampler->quote, sampler->rates, sum, sampler->n_tools, &totals, NULL, NULL, NULL);
      if (status != EM_OK)
        return status;
      net[s] = totals.net_minor;
    }
  return EM_OK;
}

static int32_t
count_ranged (const EmQuote *quote, const EmCost *cost, int32_t index)
{
  const EmFeature *feature = &quote->feature[index];
  int32_t n = 0;

  /* A stated price does not move with the dimensions. */
  if (cost->feature[index].status != EM_OK || feature->has_override)
    return 0;
  for (int field = 0; field < feature->kind->n_fields; field++)
    n += is_ranged (feature, field);
  return n;
}

/* Tables of every feature with a range, and what each input alone would do. */
static EmStatus
fill_tables (Sampler *sampler, const EmCost *cost, int32_t n_ranged, Table *tables, int32_t *out_n_tables)
{
  int32_t n_rows = TABLE_ALL / n_ranged;

  n_rows = n_rows < TABLE_LEAST ? TABLE_LEAST : n_rows > TABLE_MOST ? TABLE_MOST : n_rows;
  for (int32_t i = 0; i < sampler->quote->n_features; i++)
    {
      const EmFeature *feature = &sampler->quote->feature[i];
      int64_t likely_minor;

      if (count_ranged (sampler->quote, cost, i) == 0)
        continue;
      EmStatus status = amount_of (sampler, feature, i, &likely_minor);
      if (status == EM_OK)
        status = fill_table (sampler, i, likely_minor, n_rows, &tables[*out_n_tables]);
      /* Counted even when it failed, so that its room is given back. */
      *out_n_tables += 1;
      if (status != EM_OK)
        return status;
      for (int field = 0; field < feature->kind->n_fields; field++)
        if (is_ranged (feature, field))
          add_input (&sampler->range, i, field, main_effect (sampler, i, field, likely_minor));
    }
  return EM_OK;
}

static void
share_inputs (EmRange *range)
{
  double sum = 0.0;

  for (int32_t i = 0; i < range->n_inputs; i++)
    sum += range->input[i].share_ratio;
  for (int32_t i = 0; i < range->n_inputs; i++)
    range->input[i].share_ratio = sum > 0.0 ? range->input[i].share_ratio / sum : 0.0;
}

/* Draws that were all refused leave an empty table, which adds nothing. */
static int32_t
drop_empty (Table *tables, int32_t n_tables)
{
  int32_t n = 0;

  for (int32_t i = 0; i < n_tables; i++)
    if (tables[i].n_rows > 0)
      {
        Table kept = tables[i];

        tables[i] = tables[n];
        tables[n++] = kept;
      }
  return n;
}

static EmStatus
sample (Sampler *sampler, const EmCost *cost, int32_t n_ranged, int32_t n_samples)
{
  Table *tables = calloc ((size_t) n_ranged, sizeof *tables);
  int64_t *net = malloc ((size_t) n_samples * sizeof *net);
  int32_t n_tables = 0;
  EmStatus status = tables == NULL || net == NULL ? EM_FAULT_MEMORY : EM_OK;

  if (status == EM_OK)
    status = em_options_solve (&sampler->options, sampler->rates, sampler->catalogue, -1, NULL);
  if (status == EM_OK)
    status = fill_tables (sampler, cost, n_ranged, tables, &n_tables);
  if (status == EM_OK)
    status = draw_samples (sampler, tables, drop_empty (tables, n_tables), cost->totals.subtotal_minor, net, n_samples);
  if (status == EM_OK)
    {
      qsort (net, (size_t) n_samples, sizeof *net, compare_minor);
      sampler->range.p10_minor = percentile (net, n_samples, 0.1);
      sampler->range.p50_minor = percentile (net, n_samples, 0.5);
      sampler->range.p90_minor = percentile (net, n_samples, 0.9);
      fill_histogram (&sampler->range, net, n_samples);
      share_inputs (&sampler->range);
    }
  for (int32_t i = 0; tables != NULL && i < n_tables; i++)
    free (tables[i].delta_minor);
  free (tables);
  free (net);
  return status;
}

/**
 * em_range_quote:
 * Every ranged dimension is drawn by itself from the triangular distribution of its low, likely and high; settings, wire
 * changes and other shared work stay as at the likely values, the wire of each feature is chosen anew for each draw.
 * n_samples: 1 … 10,000,000. The same seed gives the same figures. An input's share is its part of the sum of the variances
 * that the inputs cause one at a time. A feature with a stated price or a fault does not move.
 * Returns EM_FAULT_RANGE on "samples", or on a field whose likely value is not between its low and high, and what em_cost_quote
 * returns; *out_range is untouched then.
 */
EmStatus
em_range_quote (const EmQuote *quote, const EmRates *rates, const EmCatalogue *catalogue,
                int32_t n_samples, uint64_t seed, EmRange *out_range, EmFault *out_fault)
{
  Sampler sampler = { .quote = quote, .rates = rates, .catalogue = catalogue, .n_tools = quote->n_tools, .random = seed };
  EmCost cost;
  int32_t n_ranged = 0;
  EmStatus status;

  if (n_samples < 1 || n_samples > SAMPLES_MOST)
    return em_fault_set (out_fault, EM_FAULT_RANGE, "samples", n_samples, 1, SAMPLES_MOST);
  status = check_ranges (quote, out_fault);
  if (status != EM_OK)
    return status;
  em_cost_init (&cost);
  status = em_cost_quote (&cost, quote, rates, catalogue, NULL, out_fault);
  if (status == EM_OK)
    {
      for (int32_t i = 0; i < quote->n_features; i++)
        n_ranged += count_ranged (quote, &cost, i) > 0;
      sampler.learning_factor = cost.learning_factor;
      sampler.range = (EmRange) { .has_range = n_ranged > 0, .n_samples = n_ranged > 0 ? n_samples : 0, .seed = seed,
                                  .price_minor = cost.totals.net_minor };
      em_price_rule_set (quote, rates, &sampler.rule);
      em_options_init (&sampler.options);
      em_study_init (&sampler.study);
      if (n_ranged > 0)
        {
          status = sample (&sampler, &cost, n_ranged, n_samples);
          if (status != EM_OK)
            em_fault_set (out_fault, status, "price", EM_ABSENT, EM_ABSENT, EM_ABSENT);
        }
      em_study_clear (&sampler.study);
      em_options_clear (&sampler.options);
    }
  em_cost_clear (&cost);
  if (status == EM_OK)
    *out_range = sampler.range;
  return status;
}

bool
em_range_is_wide (const EmRange *range)
{
  return range->has_range && range->p90_minor - range->p10_minor >= range->p50_minor / 100;
}
