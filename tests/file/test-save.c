/* test-save: a save at any moment leaves the old file or the new, and what it may not replace stays.
 *
 * That rename replaces in one step is POSIX.1-2017, rename().
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-save.h"
#include "em-test-file.h"

#include <signal.h>
#include <stdio.h>
#include <sys/file.h>
#include <sys/resource.h>
#include <sys/wait.h>

enum { LONG = 256 << 10, PROGRAMS = 4, LINES = 60 };

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

/* SIGXFSZ ends the program in the middle of it. */
static void
save_half (const char *path, const char *text)
{
  const struct rlimit limit = { LONG / 2, LONG / 2 };

  setrlimit (RLIMIT_FSIZE, &limit);
  _exit (save (path, text, NULL));
}

/* Nobody reads in what is half written what the file itself keeps from him. */
START_TEST (closed_while_it_is_written)
{
  g_autofree char *path = in_folder ("a"), *half = in_folder (".a" EM_SAVE_SUFFIX), *text = g_strnfill (LONG, 'n');
  mode_t before = umask (0);
  pid_t child;

  ck_assert (save (path, "old", NULL));
  ck_assert_int_eq (g_chmod (path, 0600), 0);
  child = fork ();
  if (child == 0)
    save_half (path, text);
  ck_assert_int_eq (waitpid (child, NULL, 0), child);
  umask (before);
  ck_assert_uint_eq (mode_of (half), 0600);
  check_holds (path, "old");
  ck_assert (save (path, "new", NULL));
  ck_assert_int_eq (count_files (), 1);
}
END_TEST

/* What another program is just writing is not taken for something left behind. */
START_TEST (not_from_the_living)
{
  g_autofree char *path = in_folder ("a"), *half = in_folder (".a" EM_SAVE_SUFFIX);
  int fd = open (half, O_WRONLY | O_CREAT, 0600);

  ck_assert (fd >= 0 && flock (fd, LOCK_EX) == 0);
  ck_assert (save (path, "one", NULL));
  ck_assert (g_file_test (half, G_FILE_TEST_EXISTS));
  close (fd);
  ck_assert (save (path, "two", NULL));
  check_holds (path, "two");
  ck_assert_int_eq (count_files (), 1);
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
      gboolean is_good = save (path, text, NULL);
      g_clear_pointer (&text, g_free);
      _exit (is_good ? 1 : 0);
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
  int n_whole = 0, n_killed = 0, n_kills = em_test_kills ();

  ck_assert (save (path, first, NULL));
  for (int i = 0; i < n_kills; i++)
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
  ck_assert_int_eq (n_killed, n_kills);
  ck_assert_int_eq (n_whole, n_kills);
  ck_assert_int_le (count_files (), 2);   /* of all of them, the last may have left something half written */
  ck_assert (save (path, "at last", NULL));
  ck_assert_int_eq (count_files (), 1);
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

/* A program that works as ours does: it opens the file, adds a line, saves, and where it is told that somebody else was first,
 * opens it anew. */
static void
add_lines (const char *path, char name)
{
  for (int i = 0; i < LINES;)
    {
      g_autofree char *text = NULL, *longer = NULL;
      g_autoptr (GBytes) bytes = NULL;
      g_autoptr (GError) error = NULL;
      EmFileStamp stamp;
      em_file_stamp (path, &stamp);
      if (!g_file_get_contents (path, &text, NULL, NULL))
        _exit (1);
      longer = g_strdup_printf ("%s%c%d\n", text, name, i);
      bytes = g_bytes_new_static (longer, strlen (longer));
      if (em_save_bytes_over (path, bytes, &stamp, &stamp, &error))
        i++;
      else if (!g_error_matches (error, EM_FILE_ERROR, EM_FILE_ERROR_CHANGED))
        _exit (2);
    }
  _exit (0);
}

/* Several at once, none of whose work is lost: each either is in the file or was told that it is not. */
START_TEST (programs_at_once)
{
  g_autofree char *path = in_folder ("a"), *text = NULL;
  pid_t children[PROGRAMS];

  ck_assert (save (path, "\n", NULL));
  for (int i = 0; i < PROGRAMS; i++)
    {
      children[i] = fork ();
      if (children[i] == 0)
        add_lines (path, (char) ('a' + i));
    }
  for (int i = 0; i < PROGRAMS; i++)
    {
      int status;
      ck_assert_int_eq (waitpid (children[i], &status, 0), children[i]);
      ck_assert_msg (WIFEXITED (status) && WEXITSTATUS (status) == 0, "program %d ended with %d", i, status);
    }
  ck_assert (g_file_get_contents (path, &text, NULL, NULL));
  for (int i = 0; i < PROGRAMS; i++)
    for (int line = 0; line < LINES; line++)
      {
        g_autofree char *wanted = g_strdup_printf ("\n%c%d\n", 'a' + i, line);
        ck_assert_msg (strstr (text, wanted) != NULL, "line %d of program %c is lost", line, 'a' + i);
      }
  printf ("%d programs at once saved %d times each, nothing lost\n", PROGRAMS, LINES);
  ck_assert_int_eq (count_files (), 1);
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("save");
  TCase *tcase = tcase_create ("save");
  SRunner *runner;
  int n_failed;

  tcase_set_timeout (tcase, 300);
  tcase_add_checked_fixture (tcase, make_folder, drop_folder);
  tcase_add_test (tcase, new_file_then_replaced);
  tcase_add_test (tcase, follows_links);
  tcase_add_test (tcase, leaves_what_it_may_not_replace);
  tcase_add_test (tcase, closed_while_it_is_written);
  tcase_add_test (tcase, not_from_the_living);
  tcase_add_test (tcase, cut_save_keeps_the_old);
  tcase_add_test (tcase, not_over_anothers_work);
  tcase_add_test (tcase, programs_at_once);
  tcase_add_test (tcase, killed_at_any_moment);
  suite_add_tcase (suite, tcase);
  runner = srunner_create (suite);
  srunner_run_all (runner, CK_ENV);
  n_failed = srunner_ntests_failed (runner);
  srunner_free (runner);
  return n_failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
