/* Checks of core/em-calibrate.
 *
 * Expected figures are medians and deviations worked by hand beside each check; the
 * scale 1.4826 of the median absolute deviation is Hampel 1974 (from memory).
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-calibrate.h"

#include "em-test-main.h"

static EmJobRecord
job (double operating_ratio, double usable_ratio)
{
  return (EmJobRecord) { .process = EM_PROCESS_LASER, .access = EM_ACCESS_OPEN,
                         .operating_ratio = operating_ratio, .usable_ratio = usable_ratio };
}

/* .20 .24 .25 .31 .90: median .25; deviations .05 .01 .00 .06 .65, median .05; band .25 ± .05·1.4826.
 * The mean would have been .38: one wild sheet does not move the median. */
START_TEST (test_median_ignores_one_wild_sheet)
{
  EmJobRecord records[] = { job (.31, NAN), job (.20, NAN), job (.90, NAN), job (.25, NAN), job (.24, NAN) };
  EmCalibration result[EM_N_PROCESS][EM_N_ACCESS];

  ck_assert_int_eq (em_calibrate (records, 5, result), EM_OK);
  const EmCalibration *open = &result[EM_PROCESS_LASER][EM_ACCESS_OPEN];
  ck_assert_int_eq (open->n_operating, 5);
  ck_assert_int_eq (open->n_usable, 0);
  ck_assert_double_eq_tol (open->operating_ratio, .25, 1e-12);
  ck_assert_double_eq_tol (open->operating_low, .25 - .05 * 1.4826, 1e-6);
  ck_assert_double_eq_tol (open->operating_high, .25 + .05 * 1.4826, 1e-6);
  ck_assert (em_is_absent (open->usable_ratio));
}
END_TEST

/* Even count: mean of the middle two, (.80 + .90)/2. */
START_TEST (test_even_count_takes_the_middle_pair)
{
  EmJobRecord records[] = { job (NAN, .95), job (NAN, .80), job (NAN, .70), job (NAN, .90) };
  EmCalibration result[EM_N_PROCESS][EM_N_ACCESS];

  ck_assert_int_eq (em_calibrate (records, 4, result), EM_OK);
  ck_assert_double_eq_tol (result[EM_PROCESS_LASER][EM_ACCESS_OPEN].usable_ratio, .85, 1e-12);
}
END_TEST

START_TEST (test_too_few_jobs_say_nothing)
{
  EmJobRecord records[] = { job (.25, .9), job (.30, .9) };
  EmCalibration result[EM_N_PROCESS][EM_N_ACCESS];
  EmRates rates;

  ck_assert_int_eq (em_calibrate (records, 2, result), EM_OK);
  ck_assert (em_is_absent (result[EM_PROCESS_LASER][EM_ACCESS_OPEN].operating_ratio));
  ck_assert_int_eq (result[EM_PROCESS_LASER][EM_ACCESS_OPEN].n_operating, 2);

  em_rates_init (&rates);
  rates.n_machines = 1;
  rates.machine[0].process = EM_PROCESS_LASER;
  rates.machine[0].operating_ratio[EM_ACCESS_OPEN] = .5;
  em_calibrate_accept (&rates, EM_PROCESS_LASER, EM_ACCESS_OPEN, &result[EM_PROCESS_LASER][EM_ACCESS_OPEN]);
  ck_assert_double_eq (rates.machine[0].operating_ratio[EM_ACCESS_OPEN], .5);
  em_rates_clear (&rates);
}
END_TEST

START_TEST (test_no_jobs_at_all)
{
  EmCalibration result[EM_N_PROCESS][EM_N_ACCESS];

  ck_assert_int_eq (em_calibrate (NULL, 0, result), EM_OK);
  ck_assert_int_eq (result[EM_PROCESS_GTAW][EM_ACCESS_DEEP].n_operating, 0);
}
END_TEST

START_TEST (test_other_access_and_process_stay_apart)
{
  EmJobRecord records[6];
  EmCalibration result[EM_N_PROCESS][EM_N_ACCESS];

  for (int i = 0; i < 3; i++)
    {
      records[i] = job (.2, NAN);
      records[3 + i] = job (.4, NAN);
      records[3 + i].access = EM_ACCESS_DEEP;
    }
  ck_assert_int_eq (em_calibrate (records, 6, result), EM_OK);
  ck_assert_double_eq (result[EM_PROCESS_LASER][EM_ACCESS_OPEN].operating_ratio, .2);
  ck_assert_double_eq (result[EM_PROCESS_LASER][EM_ACCESS_DEEP].operating_ratio, .4);
  ck_assert_int_eq (result[EM_PROCESS_GTAW][EM_ACCESS_DEEP].n_operating, 0);
}
END_TEST

/* One feature: 100 mm of wire with a usable share of .9 is 90 mm needed; two tools need 180 mm, 225 mm used: .8.
 * Arc 60 s of 240 s at the bench: .25. */
START_TEST (test_record_from_actuals)
{
  EmFeature feature = { .access = EM_ACCESS_RESTRICTED, .actual = { .arc_on_s = 60, .bench_s = 240, .wire_mm = 225 } };
  EmQuote quote = { .n_features = 1, .feature = &feature, .n_tools = 2 };
  EmFeatureCost priced = { .status = EM_OK, .machine = 0, .wire_length_mm = 100 };
  EmCost cost = { .n_features = 1, .feature = &priced };
  EmRates rates = { .n_machines = 1, .machine = { { .process = EM_PROCESS_GTAW, .usable_ratio = .9 } } };
  EmJobRecord record;

  ck_assert (em_calibrate_record (&quote, 0, &cost, &rates, &record));
  ck_assert_int_eq (record.process, EM_PROCESS_GTAW);
  ck_assert_int_eq (record.access, EM_ACCESS_RESTRICTED);
  ck_assert_double_eq_tol (record.operating_ratio, .25, 1e-12);
  ck_assert_double_eq_tol (record.usable_ratio, .8, 1e-12);

  feature.actual = (EmActual) { .arc_on_s = 300, .bench_s = 240, .wire_mm = NAN };  /* more arc than bench */
  ck_assert (!em_calibrate_record (&quote, 0, &cost, &rates, &record));
  ck_assert (!em_calibrate_record (&quote, 1, &cost, &rates, &record));
}
END_TEST

/* What the shop accepts goes into every machine of the process and that access alone; what no job told stays. Refusing is not calling it. */
START_TEST (test_accepting)
{
  EmRates rates;
  const EmCalibration both = { .operating_ratio = .22, .usable_ratio = .8 }, one = { .operating_ratio = EM_ABSENT, .usable_ratio = .7 };

  em_rates_init (&rates);
  rates.n_machines = 3;
  for (int i = 0; i < 3; i++)
    {
      rates.machine[i].process = i < 2 ? EM_PROCESS_LASER : EM_PROCESS_GTAW;
      rates.machine[i].operating_ratio[EM_ACCESS_OPEN] = .5;
      rates.machine[i].operating_ratio[EM_ACCESS_DEEP] = .3;
      rates.machine[i].usable_ratio = .9;
    }
  em_calibrate_accept (&rates, EM_PROCESS_LASER, EM_ACCESS_DEEP, &both);
  for (int i = 0; i < 3; i++)
    {
      ck_assert_double_eq (rates.machine[i].operating_ratio[EM_ACCESS_OPEN], .5);
      ck_assert_double_eq (rates.machine[i].operating_ratio[EM_ACCESS_DEEP], i < 2 ? .22 : .3);
      ck_assert_double_eq (rates.machine[i].usable_ratio, i < 2 ? .8 : .9);
    }
  em_calibrate_accept (&rates, EM_PROCESS_LASER, EM_ACCESS_OPEN, &one);
  ck_assert_double_eq (rates.machine[0].operating_ratio[EM_ACCESS_OPEN], .5);
  ck_assert_double_eq (rates.machine[0].usable_ratio, .7);
  em_rates_clear (&rates);
}
END_TEST

EM_TEST_MAIN ("core: calibrate",
              test_median_ignores_one_wild_sheet, test_even_count_takes_the_middle_pair, test_too_few_jobs_say_nothing,
              test_no_jobs_at_all, test_other_access_and_process_stay_apart, test_record_from_actuals,
              test_accepting)
