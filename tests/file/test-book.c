/* test-book: what the program starts with: shipped data, the shop's own over them, and never a silent fallback.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-book-file.h"

#include "em-test-file.h"

static char *folder;

static void
set_up (void)
{
  folder = em_test_folder_new ();
  g_setenv ("ESTIMEND_CONFIG_DIR", folder, TRUE);
  g_setenv ("ESTIMEND_DATA_DIR", g_getenv ("ESTIMEND_TEST_DATA"), TRUE);
}

static void
tear_down (void)
{
  em_test_folder_remove (folder);
  g_clear_pointer (&folder, g_free);
}

static void
load (EmRates *out_rates, EmCatalogue *out_catalogue)
{
  g_autoptr (GError) error = NULL;

  ck_assert_msg (em_book_load (out_rates, out_catalogue, &error), "%s", error != NULL ? error->message : "");
}

static void
clear (EmRates *rates, EmCatalogue *catalogue)
{
  em_rates_clear (rates);
  em_catalogue_clear (catalogue);
}

/* Loading fails, names the file, and leaves both outputs as they were. */
static void
check_refused (const char *name)
{
  EmRates rates, rates_before;
  EmCatalogue catalogue, catalogue_before;
  g_autoptr (GError) error = NULL;

  memset (&rates, 0x5a, sizeof rates);
  memset (&rates_before, 0x5a, sizeof rates_before);
  memset (&catalogue, 0x5a, sizeof catalogue);
  memset (&catalogue_before, 0x5a, sizeof catalogue_before);
  ck_assert_msg (!em_book_load (&rates, &catalogue, &error), "a bad %s was passed over", name);
  ck_assert_int_eq (error->domain, EM_FILE_ERROR);
  ck_assert_msg (strstr (error->message, name) != NULL, "%s not named: %s", name, error->message);
  ck_assert_mem_eq (&rates, &rates_before, sizeof rates);
  ck_assert_mem_eq (&catalogue, &catalogue_before, sizeof catalogue);
}

START_TEST (shipped_when_there_is_no_own)
{
  EmRates rates;
  EmCatalogue catalogue;

  load (&rates, &catalogue);
  ck_assert (rates.is_demo);
  ck_assert_int_ge (catalogue.n_bases, 20);
  ck_assert_int_ge (catalogue.n_fillers, 24);
  clear (&rates, &catalogue);
}
END_TEST

/* A folder that is not there yet is no own file either. */
START_TEST (shipped_when_there_is_no_folder)
{
  EmRates rates;
  EmCatalogue catalogue;
  g_autofree char *none = g_build_filename (folder, "none", NULL);

  g_setenv ("ESTIMEND_CONFIG_DIR", none, TRUE);
  load (&rates, &catalogue);
  ck_assert (rates.is_demo);
  clear (&rates, &catalogue);
}
END_TEST

START_TEST (own_rates_come_first)
{
  EmRates rates, own;
  EmCatalogue catalogue;
  g_autofree char *path = em_book_own_rates_path ();

  load (&rates, &catalogue);
  rates.is_demo = false;
  rates.bench_minor_per_h = 8123;
  ck_assert (em_rates_save (path, &rates, NULL));
  em_catalogue_clear (&catalogue);
  load (&own, &catalogue);
  ck_assert (em_rates_equal (&own, &rates));
  em_rates_clear (&rates);
  clear (&own, &catalogue);
}
END_TEST

START_TEST (own_metals_lie_over_ours)
{
  EmRates rates;
  EmCatalogue catalogue, both;
  int32_t at, n_bases;
  g_autofree char *path = em_book_own_catalogue_path ();

  load (&rates, &catalogue);
  n_bases = catalogue.n_bases;
  at = em_catalogue_find_base (&catalogue, "p20");
  ck_assert_int_ge (at, 0);
  catalogue.base[at].is_own = true;
  catalogue.base[at].hardness_high_hrc = 33.5;
  ck_assert (em_catalogue_save (path, &catalogue, TRUE, NULL));
  em_rates_clear (&rates);
  load (&rates, &both);
  ck_assert_int_eq (both.n_bases, n_bases);
  ck_assert (both.base[em_catalogue_find_base (&both, "p20")].hardness_high_hrc == 33.5);
  ck_assert (both.base[em_catalogue_find_base (&both, "p20")].is_own);
  em_catalogue_clear (&catalogue);
  clear (&rates, &both);
}
END_TEST

static const char *const names[] = { "rates.xml", "metals.xml" };

START_TEST (damaged_own_file_is_told)
{
  g_autofree char *path = g_build_filename (folder, names[_i], NULL);

  ck_assert (g_file_set_contents (path, "<?xml version=\"1.0\"?>\n<half", -1, NULL));
  check_refused (names[_i]);
  ck_assert (g_file_set_contents (path, "", 0, NULL));
  check_refused (names[_i]);
}
END_TEST

START_TEST (own_file_that_is_none_is_told)
{
  g_autofree char *path = g_build_filename (folder, names[_i], NULL);

  ck_assert_int_eq (g_mkdir (path, 0755), 0);
  check_refused (names[_i]);
  ck_assert_int_eq (g_rmdir (path), 0);
  ck_assert_int_eq (symlink ("nowhere", path), 0);
  check_refused (names[_i]);
}
END_TEST

/* An installation without its data says which file it misses. */
START_TEST (no_shipped_data)
{
  g_setenv ("ESTIMEND_DATA_DIR", folder, TRUE);
  check_refused ("rates.xml");
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("book");
  TCase *tcase = tcase_create ("book");
  SRunner *runner;
  int n_failed;

  tcase_add_checked_fixture (tcase, set_up, tear_down);
  tcase_add_test (tcase, shipped_when_there_is_no_own);
  tcase_add_test (tcase, shipped_when_there_is_no_folder);
  tcase_add_test (tcase, own_rates_come_first);
  tcase_add_test (tcase, own_metals_lie_over_ours);
  tcase_add_loop_test (tcase, damaged_own_file_is_told, 0, G_N_ELEMENTS (names));
  tcase_add_loop_test (tcase, own_file_that_is_none_is_told, 0, G_N_ELEMENTS (names));
  tcase_add_test (tcase, no_shipped_data);
  suite_add_tcase (suite, tcase);
  runner = srunner_create (suite);
  srunner_run_all (runner, CK_ENV);
  n_failed = srunner_ntests_failed (runner);
  srunner_free (runner);
  return n_failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
