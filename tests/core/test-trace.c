/* Checks of core/em-trace.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-test-main.h"
#include "em-trace.h"

START_TEST (test_steps_are_kept_in_order)
{
  EmTrace trace;

  em_trace_init (&trace);
  for (int i = 0; i < 1000; i++)
    em_trace_add (&trace, i, "layers", (EmTraceTerm) { "N", i, "" }, "N = 1", "a source", 2,
                  (EmTraceTerm[]) { { "H", i, "mm" }, { "tL", 2.0 * i, "mm" } });
  ck_assert_int_eq (trace.n_steps, 1000);
  ck_assert (!trace.is_out_of_memory);
  ck_assert_int_eq (trace.step[999].row, 999);
  ck_assert_double_eq (trace.step[999].input[1].value, 1998.0);
  em_trace_clear (&trace);
  ck_assert_int_eq (trace.n_steps, 0);
  ck_assert_ptr_null (trace.step);
}
END_TEST

START_TEST (test_null_trace_costs_nothing)
{
  em_trace_add (NULL, 0, "layers", (EmTraceTerm) { "N", 1, "" }, "", "", 0, NULL);
}
END_TEST

EM_TEST_MAIN ("core: trace", test_steps_are_kept_in_order, test_null_trace_costs_nothing)
