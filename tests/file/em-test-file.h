/* em-test-file: what the tests of this room share: runner, scratch folders.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include <check.h>
#include <fcntl.h>
#include <gio/gio.h>
#include <glib/gstdio.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

typedef struct { const TTest *test; int n; } EmTestRow;

#define EM_TEST(test) { test, 1 }
#define EM_TEST_LOOP(test, rows) { test, (int) G_N_ELEMENTS (rows) }

static inline int
em_test_run_how (const char *name, const EmTestRow *rows, int n_rows, SFun set_up, SFun tear_down, enum fork_status how)
{
  Suite *suite = suite_create (name);
  TCase *tcase = tcase_create (name);
  SRunner *runner;

  if (set_up != NULL)
    tcase_add_checked_fixture (tcase, set_up, tear_down);
  for (int i = 0; i < n_rows; i++)
    tcase_add_loop_test (tcase, rows[i].test, 0, rows[i].n);
  tcase_set_timeout (tcase, g_getenv ("ESTIMEND_TEST_KILLS") != NULL ? 600 : 60);
  suite_add_tcase (suite, tcase);
  runner = srunner_create (suite);
  srunner_set_fork_status (runner, how);
  srunner_run_all (runner, CK_ENV);

  int n_failed = srunner_ntests_failed (runner);

  srunner_free (runner);
  return n_failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}

/* set_up and tear_down, where given, run around each test. */
static inline int
em_test_run_in (const char *name, const EmTestRow *rows, int n_rows, SFun set_up, SFun tear_down)
{
  return em_test_run_how (name, rows, n_rows, set_up, tear_down, CK_FORK_GETENV);
}

/* Each test in a process of its own, whatever CK_FORK says: a process is one session of unsaved work, in one folder, for as long as it
 * lives, and rights, file system and system calls that a test gives up do not come back. */
static inline int
em_test_run_apart (const char *name, const EmTestRow *rows, int n_rows, SFun set_up, SFun tear_down)
{
  return em_test_run_how (name, rows, n_rows, set_up, tear_down, CK_FORK);
}

static inline int
em_test_run (const char *name, const EmTestRow *rows, int n_rows)
{
  return em_test_run_in (name, rows, n_rows, NULL, NULL);
}

/* How often a program is killed at moments of chance; the suite "slow" asks for more. */
static inline int
em_test_kills (void)
{
  const char *wanted = g_getenv ("ESTIMEND_TEST_KILLS");

  return wanted != NULL ? atoi (wanted) : 200;
}

static inline char *
em_test_folder_new (void)
{
  char *folder = g_dir_make_tmp ("estimend-test-XXXXXX", NULL);

  ck_assert_ptr_nonnull (folder);
  return folder;
}

/* With the files in it; folders in it have to be empty. */
static inline void
em_test_folder_remove (const char *folder)
{
  GDir *dir = g_dir_open (folder, 0, NULL);
  const char *name;

  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *path = g_build_filename (folder, name, NULL);
      g_remove (path);
    }
  if (dir != NULL)
    g_dir_close (dir);
  g_rmdir (folder);
}
