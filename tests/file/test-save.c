/* test-save: a save at any moment leaves the old file or the new, and what it may not replace stays.
 *
 * That rename replaces in one step is POSIX.1-2017, rename().
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-save.h"

#include <check.h>
#include <glib/gstdio.h>
#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

enum { KILLS = 200, LONG = 256 << 10 };

static char *folder;

static void
make_folder (void)
{
  folder = g_dir_make_tmp ("estimend-save-XXXXXX", NULL);
  ck_assert_ptr_nonnull (folder);
}

static void
drop_folder (void)
{
  GDir *dir;
  const char *name;

  g_chmod (folder, 0700);
  dir = g_dir_open (folder, 0, NULL);
  while ((name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *path = g_build_filename (folder, name, NULL);
      g_remove (path);
    }
  g_dir_close (dir);
  g_rmdir (folder);
  g_clear_pointer (&folder, g_free);
}

static char *
in_folder (const char *name)
{
  return g_build_filename (folder, name, NULL);
}

static gboolean
save (const char *path, const char *text, GError **error)
{
  g_autoptr (GBytes) bytes = g_bytes_new (text, strlen (text));

  return em_save_bytes (path, bytes, error);
}

static void
check_holds (const char *path, const char *text)
{
  g_autofree char *found = NULL;

  ck_assert (g_file_get_contents (path, &found, NULL, NULL));
  ck_assert_str_eq (found, text);
}

static int
count_files (void)
{
  GDir *dir = g_dir_open (folder, 0, NULL);
  int n = 0;

  while (g_dir_read_name (dir) != NULL)
    n++;
  g_dir_close (dir);
  return n;
}

static mode_t
mode_of (const char *path)
{
  struct stat about;

  ck_assert_int_eq (stat (path, &about), 0);
  return about.st_mode & 07777;
}

START_TEST (new_file_then_replaced)
{
  g_autofree char *path = in_folder ("a");
  mode_t before = umask (0027);

  ck_assert (save (path, "one", NULL));
  umask (before);
  ck_assert_uint_eq (mode_of (path), 0640);
  check_holds (path, "one");
  g_chmod (path, 0604);
  ck_assert (save (path, "two", NULL));
  check_holds (path, "two");
  ck_assert_uint_eq (mode_of (path), 0604);
  ck_assert_int_eq (count_files (), 1);
}
END_TEST

START_TEST (follows_links)
{
  g_autofree char *target = in_folder ("target"), *link = in_folder ("link"), *second = in_folder ("second");
  g_autofree char *leads_to = NULL;

  ck_assert_int_eq (symlink ("target", link), 0);
  ck_assert_int_eq (symlink (link, second), 0);
  ck_assert (save (second, "new", NULL));
  check_holds (target, "new");
  ck_assert (save (link, "newer", NULL));
  check_holds (target, "newer");
  leads_to = g_file_read_link (link, NULL);
  ck_assert_str_eq (leads_to, "target");
}
END_TEST

static void
check_refused (const char *path)
{
  GError *error = NULL;
  int n = count_files ();
  g_autofree char *name = g_path_get_basename (path);

  ck_assert (!save (path, "new", &error));
  ck_assert_int_eq (error->domain, EM_FILE_ERROR);
  ck_assert_int_eq (error->code, EM_FILE_ERROR_WRITE);
  ck_assert_ptr_nonnull (strstr (error->message, name));
  g_error_free (error);
  ck_assert_int_eq (count_files (), n);
}

START_TEST (leaves_what_it_may_not_replace)
{
  g_autofree char *directory = in_folder ("directory"), *locked = in_folder ("locked"), *pipe = in_folder ("pipe");
  g_autofree char *ring = in_folder ("ring"), *nowhere = in_folder ("no/where");

  g_mkdir (directory, 0755);
  check_refused (directory);
  ck_assert (save (locked, "old", NULL));
  g_chmod (locked, 0444);
  check_refused (locked);
  check_holds (locked, "old");
  ck_assert_int_eq (mkfifo (pipe, 0644), 0);
  check_refused (pipe);
  ck_assert_int_eq (symlink ("ring", ring), 0);
  check_refused (ring);
  check_refused (nowhere);
}
END_TEST

START_TEST (folder_without_leave_to_write)
{
  g_autofree char *path = in_folder ("a");

  if (geteuid () == 0)
    return;   /* the superuser may write anywhere: nothing to see */
  ck_assert (save (path, "old", NULL));
  g_chmod (folder, 0500);
  check_refused (path);
  check_holds (path, "old");
}
END_TEST

/* A limit on file size cuts the child's save in its middle, as a full disk does. */
START_TEST (cut_save_keeps_the_old)
{
  g_autofree char *path = in_folder ("a"), *text = g_strnfill (LONG, 'n');
  int status;
  pid_t child;

  ck_assert (save (path, "old", NULL));
  child = fork ();
  if (child == 0)
    {
      struct rlimit limit = { LONG / 2, LONG / 2 };

      signal (SIGXFSZ, SIG_IGN);
      if (setrlimit (RLIMIT_FSIZE, &limit) != 0)
        _exit (2);
      _exit (save (path, text, NULL) ? 1 : 0);
    }
  ck_assert_int_eq (waitpid (child, &status, 0), child);
  ck_assert (WIFEXITED (status));
  ck_assert_int_eq (WEXITSTATUS (status), 0);
  check_holds (path, "old");
  ck_assert_int_eq (count_files (), 1);
}
END_TEST

/* A child saves two texts in turn until it is killed at a moment of chance; the file must be one of them, whole. */
static void
save_for_ever (const char *path)
{
  g_autofree char *a = g_strnfill (LONG, 'a'), *b = g_strnfill (LONG / 2, 'b');

  for (;;)
    if (!save (path, a, NULL) || !save (path, b, NULL))
      _exit (1);
}

static gboolean
is_whole (const char *path)
{
  g_autofree char *found = NULL;
  gsize size;

  if (!g_file_get_contents (path, &found, &size, NULL))
    return FALSE;
  return (size == LONG && strspn (found, "a") == LONG) || (size == LONG / 2 && strspn (found, "b") == LONG / 2);
}

START_TEST (killed_at_any_moment)
{
  g_autofree char *path = in_folder ("a"), *first = g_strnfill (LONG, 'a');
  int n_whole = 0, n_killed = 0;

  ck_assert (save (path, first, NULL));
  for (int i = 0; i < KILLS; i++)
    {
      int status;
      pid_t child = fork ();

      if (child == 0)
        save_for_ever (path);
      g_usleep ((gulong) g_random_int_range (0, 12000));
      kill (child, SIGKILL);
      ck_assert_int_eq (waitpid (child, &status, 0), child);
      n_killed += WIFSIGNALED (status) && WTERMSIG (status) == SIGKILL;
      n_whole += is_whole (path);
    }
  printf ("killed %d saves, %d files whole after\n", n_killed, n_whole);
  ck_assert_int_eq (n_killed, KILLS);
  ck_assert_int_eq (n_whole, KILLS);
}
END_TEST

/* Two programs on one file: the one that did not see the other's save is told, and nothing is written. */
START_TEST (not_over_anothers_work)
{
  g_autofree char *path = in_folder ("a"), *found = NULL;
  g_autoptr (GBytes) mine = g_bytes_new ("mine", 4), theirs = g_bytes_new ("hers", 4);
  const EmFileStamp anything = { 0 };
  EmFileStamp opened, stamp = { 0 };
  g_autoptr (GError) error = NULL;

  ck_assert (em_save_bytes_over (path, mine, &anything, &opened, NULL));
  ck_assert (opened.inode != 0 && opened.size == 4);
  ck_assert (em_save_bytes_over (path, mine, &opened, &opened, NULL));
  ck_assert (em_save_bytes (path, theirs, NULL));
  ck_assert (!em_save_bytes_over (path, mine, &opened, &stamp, &error));
  ck_assert (g_error_matches (error, EM_FILE_ERROR, EM_FILE_ERROR_CHANGED));
  ck_assert (stamp.inode == 0);
  ck_assert (g_file_get_contents (path, &found, NULL, NULL));
  ck_assert_str_eq (found, "hers");
  ck_assert (em_save_bytes_over (path, mine, &anything, &stamp, NULL));
  /* Gone is not changed: the work is what counts. */
  ck_assert (g_remove (path) == 0);
  ck_assert (em_save_bytes_over (path, mine, &stamp, &stamp, NULL));
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("save");
  TCase *tcase = tcase_create ("save");
  SRunner *runner;
  int n_failed;

  tcase_set_timeout (tcase, 60);
  tcase_add_checked_fixture (tcase, make_folder, drop_folder);
  tcase_add_test (tcase, new_file_then_replaced);
  tcase_add_test (tcase, follows_links);
  tcase_add_test (tcase, leaves_what_it_may_not_replace);
  tcase_add_test (tcase, folder_without_leave_to_write);
  tcase_add_test (tcase, cut_save_keeps_the_old);
  tcase_add_test (tcase, not_over_anothers_work);
  tcase_add_test (tcase, killed_at_any_moment);
  suite_add_tcase (suite, tcase);
  runner = srunner_create (suite);
  srunner_run_all (runner, CK_ENV);
  n_failed = srunner_ntests_failed (runner);
  srunner_free (runner);
  return n_failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
