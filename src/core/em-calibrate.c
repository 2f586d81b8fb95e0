/* em-calibrate: what past jobs say of operating factor and wire efficiency.
 *
 * The centre is the median and the spread the scaled median absolute deviation, so
 * that one mistyped time sheet does not move the shop's prices.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-calibrate.h"

#include <stdlib.h>

/* Scales the median absolute deviation to the standard deviation of a normal
 * distribution: 1/Φ⁻¹(3/4) (Hampel 1974). */
#define MAD_SCALE 1.482602218505602

static bool
is_ratio (double value)
{
  return isfinite (value) && value > 0.0 && value <= 1.0;
}

bool
em_calibrate_record (const EmQuote *quote, int32_t index, const EmCost *cost, const EmRates *rates,
                     EmJobRecord *out_record)
{
  if (index < 0 || index >= quote->n_features || index >= cost->n_features)
    return false;

  const EmFeature *feature = &quote->feature[index];
  const EmFeatureCost *priced = &cost->feature[index];
  const EmActual *actual = &feature->actual;

  if (priced->status != EM_OK || priced->machine < 0 || priced->machine >= rates->n_machines)
    return false;

  const EmMachine *machine = &rates->machine[priced->machine];
  double operating = actual->arc_on_s / actual->bench_s;
  double usable = priced->wire_length_mm * machine->usable_ratio * quote->n_tools / actual->wire_mm;

  EmJobRecord record = { .process = machine->process, .access = feature->access,
                         .operating_ratio = is_ratio (operating) ? operating : EM_ABSENT,
                         .usable_ratio = is_ratio (usable) ? usable : EM_ABSENT };
  if (em_is_absent (record.operating_ratio) && em_is_absent (record.usable_ratio))
    return false;
  *out_record = record;
  return true;
}

static int
compare_doubles (const void *a, const void *b)
{
  double x = *(const double *) a, y = *(const double *) b;

  return (x > y) - (x < y);
}

/* Median of n > 0 sorted values: the middle one, or the mean of the middle two. */
static double
median_of_sorted (const double *sorted, int32_t n)
{
  return n % 2 == 1 ? sorted[n / 2] : 0.5 * (sorted[n / 2 - 1] + sorted[n / 2]);
}

/* Median and median ± scaled MAD of values[0 … n), which it sorts and overwrites. The
 * band is kept inside (0, 1], where a ratio lies. NaN below EM_CALIBRATE_LEAST values. */
static void
settle (double *values, int32_t n, double *out_median, double *out_low, double *out_high)
{
  *out_median = *out_low = *out_high = EM_ABSENT;
  if (n < EM_CALIBRATE_LEAST)
    return;

  qsort (values, (size_t) n, sizeof *values, compare_doubles);
  double median = median_of_sorted (values, n);

  for (int32_t i = 0; i < n; i++)
    values[i] = fabs (values[i] - median);
  qsort (values, (size_t) n, sizeof *values, compare_doubles);
  double spread = MAD_SCALE * median_of_sorted (values, n);

  *out_median = median;
  *out_low = fmax (median - spread, 0.0);
  *out_high = fmin (median + spread, 1.0);
}

/* The figures of records that fit one process and access, in scratch (n_records long). */
static EmCalibration
calibrate_one (const EmJobRecord *records, int32_t n_records, EmProcess process, EmAccess access, double *scratch)
{
  EmCalibration result = { .n_operating = 0, .n_usable = 0 };

  for (int32_t i = 0; i < n_records; i++)
    if (records[i].process == process && records[i].access == access && is_ratio (records[i].operating_ratio))
      scratch[result.n_operating++] = records[i].operating_ratio;
  settle (scratch, result.n_operating, &result.operating_ratio, &result.operating_low, &result.operating_high);

  for (int32_t i = 0; i < n_records; i++)
    if (records[i].process == process && records[i].access == access && is_ratio (records[i].usable_ratio))
      scratch[result.n_usable++] = records[i].usable_ratio;
  settle (scratch, result.n_usable, &result.usable_ratio, &result.usable_low, &result.usable_high);
  return result;
}

EmStatus
em_calibrate (const EmJobRecord *records, int32_t n_records, EmCalibration out_result[EM_N_PROCESS][EM_N_ACCESS])
{
  size_t n = n_records > 0 ? (size_t) n_records : 1;
  double *scratch = malloc (n * sizeof *scratch);

  if (scratch == NULL)
    return EM_FAULT_MEMORY;
  for (int process = 0; process < EM_N_PROCESS; process++)
    for (int access = 0; access < EM_N_ACCESS; access++)
      out_result[process][access] = calibrate_one (records, n_records, (EmProcess) process, (EmAccess) access, scratch);
  free (scratch);
  return EM_OK;
}

void
em_calibrate_accept (EmRates *rates, EmProcess process, EmAccess access, const EmCalibration *calibration)
{
  for (int32_t i = 0; i < rates->n_machines; i++)
    {
      EmMachine *machine = &rates->machine[i];

      if (machine->process != process)
        continue;
      if (!em_is_absent (calibration->operating_ratio))
        machine->operating_ratio[access] = calibration->operating_ratio;
      if (!em_is_absent (calibration->usable_ratio))
        machine->usable_ratio = calibration->usable_ratio;
    }
}
