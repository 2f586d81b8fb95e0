/* em-test-main: the few lines every Check program of this room ends with.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include <check.h>
#include <stdlib.h>

/* setup and teardown (may be NULL) run around each test. */
static inline int
em_test_main_with (const char *name, SFun setup, SFun teardown, const TTest *const *tests, int n_tests)
{
  Suite *suite = suite_create (name);
  TCase *tcase = tcase_create (name);
  SRunner *runner;

  tcase_add_checked_fixture (tcase, setup, teardown);
  for (int i = 0; i < n_tests; i++)
    tcase_add_test (tcase, tests[i]);
  tcase_set_timeout (tcase, 60);
  suite_add_tcase (suite, tcase);
  runner = srunner_create (suite);
  srunner_run_all (runner, CK_ENV);

  int n_failed = srunner_ntests_failed (runner);

  srunner_free (runner);
  return n_failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}

static inline int
em_test_main (const char *name, const TTest *const *tests, int n_tests)
{
  return em_test_main_with (name, NULL, NULL, tests, n_tests);
}

#define EM_TEST_MAIN(name, ...) \
  int main (void) \
  { \
    const TTest *const tests[] = { __VA_ARGS__ }; \
    return em_test_main (name, tests, (int) (sizeof tests / sizeof tests[0])); \
  }
