/* Checks that every allocation of the engine may fail: the first, then the second, and so on until the call succeeds. After each
 * failure it says EM_FAULT_MEMORY, the output is byte for byte as it was, and nothing it took is left taken.
 *
 * Linked with the linker's --wrap, so only the calls of the engine and of this file are counted, not the C library's own.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-calibrate.h"
#include "em-compare.h"
#include "em-range.h"
#include "em-test-job.h"

#include <string.h>

enum { FAILURES_MOST = 100000 };

/* ---- counted memory ---- */

static long n_live, n_taken, fail_at = -1;   /* fail_at: which allocation from now fails; −1: none */

void *__real_malloc (size_t size);
void *__real_calloc (size_t n, size_t size);
void *__real_realloc (void *old, size_t size);
void  __real_free (void *old);
char *__real_strdup (const char *text);
void *__wrap_malloc (size_t size);
void *__wrap_calloc (size_t n, size_t size);
void *__wrap_realloc (void *old, size_t size);
void  __wrap_free (void *old);
char *__wrap_strdup (const char *text);

static bool
is_refused (void)
{
  return n_taken++ == fail_at;
}

static void *
count (void *taken)
{
  n_live += taken != NULL;
  return taken;
}

void *
__wrap_malloc (size_t size)
{
  return is_refused () ? NULL : count (__real_malloc (size));
}

void *
__wrap_calloc (size_t n, size_t size)
{
  return is_refused () ? NULL : count (__real_calloc (n, size));
}

void *
__wrap_realloc (void *old, size_t size)
{
  void *grown = is_refused () ? NULL : __real_realloc (old, size);

  return old == NULL ? count (grown) : grown;
}

/* The compiler may make one of a malloc and a copy of a text's length. */
char *
__wrap_strdup (const char *text)
{
  return is_refused () ? NULL : count (__real_strdup (text));
}

void
__wrap_free (void *old)
{
  n_live -= old != NULL;
  __real_free (old);
}

/* ---- a job with something of everything ---- */

static EmTestJob job;

static void
add_texts (EmQuote *quote)
{
  EmExtra extra = { .label = em_text_dup ("Polishing bought out"), .cost_minor = 12000, .is_per_tool = true };
  EmMark mark = { .start = 0, .length = 4, .feature_id = 1, .state = EM_MARK_USED, .field = em_text_dup ("length"), .reason = em_text_dup ("near") };

  for (int i = 0; i < EM_N_QUOTE_TEXT; i++)
    if (i != EM_QUOTE_BASE && i != EM_QUOTE_FILLER && i != EM_QUOTE_MACHINE && i != EM_QUOTE_PROCESS)
      ck_assert_int_eq (em_quote_set_text (quote, (EmQuoteText) i, "some words"), EM_OK);
  ck_assert_int_eq (em_quote_add_extra_take (quote, &extra), EM_OK);
  ck_assert_int_eq (em_quote_add_mark_take (quote, &mark), EM_OK);
}

/* What the test framework itself holds: where it comes as a static library its calls are counted too. */
static long n_held;

static void
setup (void)
{
  n_held = n_live;
  em_test_job_init (&job);
  for (int i = 0; i < 4; i++)
    {
      EmFeature *f = em_test_job_sidewall (&job, 20 + i, 4, 0.6);

      for (int text = EM_FEATURE_LABEL; text <= EM_FEATURE_ASSUMPTION; text++)
        ck_assert_int_eq (em_feature_set_text (f, (EmFeatureText) text, "a wall"), EM_OK);
      f->low[2] = i < 2 ? 0.4 : EM_ABSENT;
      f->high[2] = i < 2 ? 0.9 : EM_ABSENT;
      f->setting = i % 2;
    }
  add_texts (&job.quote);
  ck_assert_int_eq (em_feature_set_text (&job.quote.feature[3], EM_FEATURE_FILLER, "er420"), EM_OK);
  job.quote.n_tools = 2;
  job.quote.n_breaks = 1;
  job.quote.break_tools[0] = 5;
  ck_assert_int_eq (em_rates_set_text (&job.rates, EM_SHOP_NAME, "An invented shop"), EM_OK);
  ck_assert_int_eq (em_rates_add_tax_take (&job.rates, &(EmTax) { .name = em_text_dup ("Tax"), .rate_ppm = 80000 }), EM_OK);
}

static void
teardown (void)
{
  em_test_job_clear (&job);
  if (n_live != n_held)
    ck_abort_msg ("%ld left taken", n_live - n_held);
}

/* ---- the sweep ---- */

typedef union
{
  EmFeature   feature;
  EmQuote     quote;
  EmCatalogue catalogue;
  EmRates     rates;
  EmCost      cost;
  EmCompare   compare;
  EmRange     range;
  struct { EmSizeTried row[EM_TRIED_MAX]; int32_t n; } tried;
  EmCalibration calibration[EM_N_PROCESS][EM_N_ACCESS];
} Output;

typedef struct
{
  const char *name;
  EmStatus  (*run)   (Output *out, EmFault *out_fault);
  void      (*prime) (Output *out);   /* fills what the call will replace; NULL: the call wants nothing there */
  void      (*clear) (Output *out);   /* NULL: owns nothing */
  bool        has_fault;
} Call;

static EmStatus run_feature (Output *out, EmFault *f) { (void) f; return em_feature_copy (&job.quote.feature[0], &out->feature); }
static EmStatus run_quote (Output *out, EmFault *f) { (void) f; return em_quote_copy (&job.quote, &out->quote); }
static EmStatus run_catalogue (Output *out, EmFault *f) { (void) f; return em_catalogue_copy (&job.catalogue, &out->catalogue); }
static EmStatus run_rates (Output *out, EmFault *f) { (void) f; return em_rates_copy (&job.rates, &out->rates); }

static EmStatus
run_cost (Output *out, EmFault *f)
{
  return em_cost_quote (&out->cost, &job.quote, &job.rates, &job.catalogue, NULL, f);
}

static EmStatus
run_compare (Output *out, EmFault *f)
{
  return em_compare_quote (&out->compare, &job.quote, -1, &job.rates, &job.catalogue, f);
}

static EmStatus
run_range (Output *out, EmFault *f)
{
  return em_range_quote (&job.quote, &job.rates, &job.catalogue, 200, 1, &out->range, f);
}

static EmStatus
run_tried (Output *out, EmFault *f)
{
  return em_cost_tried (&job.quote, 0, &job.rates, &job.catalogue, out->tried.row, &out->tried.n, f);
}

static EmStatus
run_calibrate (Output *out, EmFault *f)
{
  static const EmJobRecord record = { .process = EM_PROCESS_LASER, .operating_ratio = 0.3, .usable_ratio = 0.9 };

  (void) f;
  return em_calibrate (&record, 1, out->calibration);
}

static void clear_feature (Output *out) { em_feature_clear (&out->feature); }
static void clear_quote (Output *out) { em_quote_clear (&out->quote); }
static void clear_catalogue (Output *out) { em_catalogue_clear (&out->catalogue); }
static void clear_rates (Output *out) { em_rates_clear (&out->rates); }
static void clear_cost (Output *out) { em_cost_clear (&out->cost); }
static void clear_compare (Output *out) { em_compare_clear (&out->compare); }

static void
prime_cost (Output *out)
{
  em_cost_init (&out->cost);
  ck_assert_int_eq (run_cost (out, NULL), EM_OK);
}

static void
prime_compare (Output *out)
{
  em_compare_init (&out->compare);
  ck_assert_int_eq (run_compare (out, NULL), EM_OK);
}

static const Call calls[] =
{
  { "em_feature_copy", run_feature, NULL, clear_feature, false },
  { "em_quote_copy", run_quote, NULL, clear_quote, false },
  { "em_catalogue_copy", run_catalogue, NULL, clear_catalogue, false },
  { "em_rates_copy", run_rates, NULL, clear_rates, false },
  { "em_cost_quote", run_cost, prime_cost, clear_cost, true },
  { "em_compare_quote", run_compare, prime_compare, clear_compare, true },
  { "em_range_quote", run_range, NULL, NULL, true },
  { "em_cost_tried", run_tried, NULL, NULL, true },
  { "em_calibrate", run_calibrate, NULL, NULL, false },
};

enum { N_CALLS = (int) (sizeof calls / sizeof calls[0]) };

static void
sweep (const Call *call)
{
  Output out, before;
  long live;
  int n_failures = 0;

  memset (&out, 0xa5, sizeof out);
  if (call->prime != NULL)
    call->prime (&out);
  for (;; n_failures++)
    {
      EmFault fault = { 0 };
      EmStatus status;
      long n, left;

      ck_assert_msg (n_failures < FAILURES_MOST, "%s never succeeds", call->name);
      memcpy (&before, &out, sizeof before);
      live = n_live;
      n_taken = 0;
      fail_at = n_failures;
      status = call->run (&out, &fault);
      fail_at = -1;
      n = n_taken;
      left = n_live - live;
      if (n <= n_failures)
        {
          ck_assert_msg (status == EM_OK, "%s: %d with all the memory it wants", call->name, (int) status);
          break;
        }
      ck_assert_msg (status == EM_FAULT_MEMORY, "%s, allocation %d refused: %d", call->name, n_failures, (int) status);
      ck_assert_msg (!call->has_fault || (fault.code == EM_FAULT_MEMORY && fault.field != NULL), "%s, allocation %d: no fault", call->name, n_failures);
      ck_assert_msg (memcmp (&before, &out, sizeof out) == 0, "%s, allocation %d: output touched", call->name, n_failures);
      ck_assert_msg (left == 0, "%s, allocation %d: %ld left taken", call->name, n_failures, left);
    }
  ck_assert_msg (n_failures > 0 || call->clear == NULL, "%s took no memory", call->name);
  if (call->clear != NULL)
    call->clear (&out);
}

START_TEST (test_every_allocation_may_fail)
{
  sweep (&calls[_i]);
}
END_TEST

/* What a costing holds outside its struct stays too: its lines and rows, after any failure of the next one. */
START_TEST (test_last_good_figures_stay)
{
  EmCost cost, kept;
  EmFault fault;

  em_cost_init (&cost);
  em_cost_init (&kept);
  ck_assert_int_eq (em_cost_quote (&cost, &job.quote, &job.rates, &job.catalogue, NULL, NULL), EM_OK);
  ck_assert_int_eq (em_cost_quote (&kept, &job.quote, &job.rates, &job.catalogue, NULL, NULL), EM_OK);
  job.quote.feature[1].value[0] *= 3;
  for (int at = 0; at < 3; at++)
    {
      EmStatus status;

      n_taken = 0;
      fail_at = at;
      status = em_cost_quote (&cost, &job.quote, &job.rates, &job.catalogue, NULL, &fault);
      fail_at = -1;
      ck_assert_int_eq (status, EM_FAULT_MEMORY);
      ck_assert_int_eq (cost.n_lines, kept.n_lines);
      for (int32_t i = 0; i < kept.n_lines; i++)
        ck_assert_int_eq (cost.line[i].amount_minor, kept.line[i].amount_minor);
      for (int32_t i = 0; i < kept.n_features; i++)
        ck_assert_int_eq (cost.feature[i].price_minor, kept.feature[i].price_minor);
      ck_assert_mem_eq (&cost.totals, &kept.totals, sizeof kept.totals);
    }
  em_cost_clear (&cost);
  em_cost_clear (&kept);
}
END_TEST

/* An edited feature repriced in room that is already there: an update takes no memory at all, so none can fail. */
START_TEST (test_update_takes_no_memory)
{
  EmCost cost;
  EmStatus status;
  long n;

  em_cost_init (&cost);
  ck_assert_int_eq (em_cost_quote (&cost, &job.quote, &job.rates, &job.catalogue, NULL, NULL), EM_OK);
  job.quote.feature[1].value[0] *= 3;
  n_taken = 0;
  status = em_cost_update (&cost, 1, &job.quote, &job.rates, &job.catalogue, NULL);
  n = n_taken;
  ck_assert_int_eq (status, EM_OK);
  ck_assert_int_eq (n, 0);
  em_cost_clear (&cost);
}
END_TEST

/* Want of memory loses the working, not the figures: the list stops, says so, and takes no more. */
START_TEST (test_working_may_be_lost)
{
  EmCost whole, cost;
  EmTrace trace;
  EmFault fault;
  EmStatus status;
  long n_costing;
  int n_lost = 0;

  em_cost_init (&whole);
  n_taken = 0;
  status = em_cost_quote (&whole, &job.quote, &job.rates, &job.catalogue, NULL, NULL);
  n_costing = n_taken;
  ck_assert_int_eq (status, EM_OK);
  for (;; n_lost++)
    {
      em_cost_init (&cost);
      em_trace_init (&trace);
      n_taken = 0;
      fail_at = n_costing + n_lost;
      status = em_cost_quote (&cost, &job.quote, &job.rates, &job.catalogue, &trace, &fault);
      fail_at = -1;
      ck_assert_int_eq (status, EM_OK);
      ck_assert_mem_eq (&cost.totals, &whole.totals, sizeof whole.totals);
      if (!trace.is_out_of_memory)
        break;
      ck_assert_int_eq (trace.n_steps, trace.cap_steps);
      em_trace_clear (&trace);
      em_cost_clear (&cost);
    }
  ck_assert_int_gt (n_lost, 1);
  em_trace_clear (&trace);
  em_cost_clear (&cost);
  em_cost_clear (&whole);
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("core: memory");
  TCase *tcase = tcase_create ("memory");
  SRunner *runner = srunner_create (suite);

  tcase_add_checked_fixture (tcase, setup, teardown);
  tcase_add_loop_test (tcase, test_every_allocation_may_fail, 0, N_CALLS);
  tcase_add_test (tcase, test_last_good_figures_stay);
  tcase_add_test (tcase, test_update_takes_no_memory);
  tcase_add_test (tcase, test_working_may_be_lost);
  suite_add_tcase (suite, tcase);
  srunner_run_all (runner, CK_ENV);

  int n_failed = srunner_ntests_failed (runner);

  srunner_free (runner);
  return n_failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
