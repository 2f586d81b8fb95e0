/* Checks of core/em-fault.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-fault.h"

#include <check.h>
#include <stdlib.h>

START_TEST (test_conflict_names_both_fields)
{
  EmFault fault;

  ck_assert_int_eq (em_fault_set_conflict (&fault, "draft", "height", 60.0, 0.0, 45.0), EM_FAULT_CONFLICT);
  ck_assert_str_eq (fault.field, "draft");
  ck_assert_str_eq (fault.other_field, "height");
  ck_assert_int_eq (fault.row, EM_ROW_QUOTE);
  ck_assert_double_eq (fault.high, 45.0);
}
END_TEST

START_TEST (test_null_fault_is_allowed)
{
  ck_assert_int_eq (em_fault_set (NULL, EM_FAULT_RANGE, "length", 1.0, 2.0, 3.0), EM_FAULT_RANGE);
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("core: fault");
  TCase *tcase = tcase_create ("fault");
  SRunner *runner = srunner_create (suite);

  tcase_add_test (tcase, test_conflict_names_both_fields);
  tcase_add_test (tcase, test_null_fault_is_allowed);
  suite_add_tcase (suite, tcase);
  srunner_run_all (runner, CK_ENV);
  int n_failed = srunner_ntests_failed (runner);
  srunner_free (runner);
  return n_failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
