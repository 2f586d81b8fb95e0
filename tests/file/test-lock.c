/* test-lock: who has a quote open is told to the second.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-lock.h"
#include "em-test-file.h"

#include <signal.h>
#include <sys/wait.h>

static char *folder, *path, *lock_path;

static void
make_folder (void)
{
  folder = em_test_folder_new ();
  path = g_build_filename (folder, "Q-1.estimend", NULL);
  lock_path = g_build_filename (folder, ".Q-1.estimend.lock", NULL);
}

static void
drop_folder (void)
{
  em_test_folder_remove (folder);
  g_free (folder);
  g_free (path);
  g_free (lock_path);
}

static void
expect_locked (const char *words)
{
  g_autoptr (GError) error = NULL;

  ck_assert_ptr_null (em_lock_take (path, &error));
  ck_assert_msg (g_error_matches (error, EM_FILE_ERROR, EM_FILE_ERROR_LOCKED), "%s", error->message);
  ck_assert_msg (strstr (error->message, words) != NULL && strstr (error->message, "Q-1.estimend") != NULL, "%s", error->message);
}

static void
put_lock (const char *host, int process, const char *began, gint64 since)
{
  g_autofree char *text = g_strdup_printf ("Estimend lock 1\nAnna Beispiel\n%s\n%d\n%s\n%" G_GINT64_FORMAT "\n", host, process, began, since);

  ck_assert (g_file_set_contents (lock_path, text, -1, NULL));
}

static gint64
now (void)
{
  return g_get_real_time () / G_USEC_PER_SEC;
}

START_TEST (taken_and_given_back)
{
  EmLock *lock = em_lock_take (path, NULL);

  ck_assert_ptr_nonnull (lock);
  ck_assert_str_eq (em_lock_get_path (lock), path);
  ck_assert (g_file_test (lock_path, G_FILE_TEST_EXISTS));
  expect_locked ("another window");
  em_lock_free (lock);
  ck_assert (!g_file_test (lock_path, G_FILE_TEST_EXISTS));
  lock = em_lock_take (path, NULL);
  ck_assert_ptr_nonnull (lock);
  em_lock_free (lock);
}
END_TEST

static char *
tell_roughly (gint64 moment_s)
{
  return g_strdup (ABS (now () - 3600 - moment_s) < 60 ? "an hour ago" : "another moment");
}

START_TEST (others_are_named)
{
  put_lock ("workshop-2", 1234, "5678", now () - 3600);
  expect_locked ("Anna Beispiel on workshop-2");
  /* Since when, in no language of this room's own, or as it is told to tell it. */
  g_autoptr (GDateTime) hour_ago = g_date_time_new_from_unix_local (now () - 3600);
  g_autofree char *day = g_date_time_format (hour_ago, "since %Y-%m-%d ");
  expect_locked (day);
  em_lock_set_teller (tell_roughly);
  expect_locked ("since an hour ago");
  em_lock_set_teller (NULL);
  put_lock (g_get_host_name (), (int) getppid (), "", now ());
  expect_locked ("Anna Beispiel");
}
END_TEST

/* Two programs, the second of which is told of the first for as long as it runs, and no longer. */
START_TEST (another_program)
{
  int ready[2], end[2];
  char byte;

  ck_assert (pipe (ready) == 0 && pipe (end) == 0);
  pid_t child = fork ();
  if (child == 0)
    {
      EmLock *lock = em_lock_take (path, NULL);
      close (end[1]);
      if (write (ready[1], lock != NULL ? "y" : "n", 1) == 1)
        (void) !read (end[0], &byte, 1);
      _exit (0);   /* without giving it back, as one that crashes */
    }
  ck_assert (read (ready[0], &byte, 1) == 1 && byte == 'y');
  expect_locked (g_get_host_name ());
  expect_locked ("is open by");
  close (end[1]);
  ck_assert_int_eq (waitpid (child, NULL, 0), child);
  EmLock *lock = em_lock_take (path, NULL);
  ck_assert_ptr_nonnull (lock);
  em_lock_free (lock);
}
END_TEST

/* Half of a lock is somebody's who is just writing it, but not for a minute. */
START_TEST (half_written)
{
  static const char *const halves[] = { "", "Estimend lo", "Estimend lock 1\nAnna", "Estimend lock 1\na\nb\n1\n2\n3\n4\n" };
  const struct timespec old[] = { { .tv_sec = now () - 90 }, { .tv_sec = now () - 90 } }, late[] = { { .tv_sec = now () + 90 }, { .tv_sec = now () + 90 } };

  for (gsize i = 0; i < G_N_ELEMENTS (halves); i++)
    {
      ck_assert (g_file_set_contents (lock_path, halves[i], -1, NULL));
      expect_locked ("Somebody else");
      ck_assert_int_eq (utimensat (AT_FDCWD, lock_path, late, 0), 0);   /* a server's clock that is ahead */
      expect_locked ("Somebody else");
      ck_assert_int_eq (utimensat (AT_FDCWD, lock_path, old, 0), 0);
      EmLock *lock = em_lock_take (path, NULL);
      ck_assert_msg (lock != NULL, "half %zu", i);
      expect_locked ("another window");
      em_lock_free (lock);
      ck_assert (!g_file_test (lock_path, G_FILE_TEST_EXISTS));
    }
  ck_assert (g_file_set_contents (lock_path, "Estimend lock 2\na", -1, NULL) && utimensat (AT_FDCWD, lock_path, old, 0) == 0);
  expect_locked ("Somebody else");
}
END_TEST

START_TEST (left_behind)
{
  pid_t child = fork ();

  if (child == 0)
    _exit (0);
  ck_assert (waitpid (child, NULL, 0) == child);   /* no such process any more */
  put_lock (g_get_host_name (), (int) child, "", now ());
  g_autoptr (EmLock) lock = em_lock_take (path, NULL);
  ck_assert_ptr_nonnull (lock);
}
END_TEST

/* The number of a process that is gone was given to another. */
START_TEST (number_given_again)
{
  put_lock (g_get_host_name (), (int) getppid (), "1", now ());
  g_autoptr (EmLock) lock = em_lock_take (path, NULL);
  ck_assert_ptr_nonnull (lock);
}
END_TEST

START_TEST (too_old)
{
  put_lock ("workshop-2", 1234, "5678", now () - 4 * 24 * 3600);
  g_autoptr (EmLock) lock = em_lock_take (path, NULL);
  ck_assert_ptr_nonnull (lock);
}
END_TEST

/* What cannot be read is somebody's; it may be half written. */
START_TEST (not_understood)
{
  static const char *const texts[] = { "", "Estimend lock 1\n", "hello", "Estimend lock 1\n\xff\n\n\n\n\n", "Estimend lock 2\na\nb\n1\n2\n3\n" };

  for (gsize i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      ck_assert (g_file_set_contents (lock_path, texts[i], -1, NULL));
      expect_locked ("Somebody else");
    }
}
END_TEST

START_TEST (not_taken_from_the_next)
{
  EmLock *lock = em_lock_take (path, NULL);

  put_lock ("workshop-2", 1234, "5678", now ());
  em_lock_free (lock);
  ck_assert (g_file_test (lock_path, G_FILE_TEST_EXISTS));
}
END_TEST

START_TEST (nowhere)
{
  g_autofree char *gone = g_build_filename (folder, "gone", "Q-1.estimend", NULL);
  g_autoptr (GError) error = NULL;

  ck_assert_ptr_null (em_lock_take (gone, &error));
  ck_assert (g_error_matches (error, EM_FILE_ERROR, EM_FILE_ERROR_WRITE));
}
END_TEST

static gpointer
race (gpointer data)
{
  (void) data;
  return em_lock_take (path, NULL);
}

/* Of many who find a dead one's lock at once, one gets it. */
START_TEST (one_of_many)
{
  GThread *threads[16];
  int n_taken = 0;
  EmLock *taken = NULL;

  put_lock ("workshop-2", 1234, "5678", 0);
  for (int i = 0; i < 16; i++)
    threads[i] = g_thread_new (NULL, race, NULL);
  for (int i = 0; i < 16; i++)
    {
      EmLock *lock = g_thread_join (threads[i]);
      n_taken += lock != NULL;
      taken = lock != NULL ? lock : taken;
    }
  ck_assert_int_eq (n_taken, 1);
  em_lock_free (taken);
}
END_TEST

int
main (void)
{
  const EmTestRow rows[] =
  {
    EM_TEST (taken_and_given_back), EM_TEST (others_are_named), EM_TEST (another_program), EM_TEST (half_written),
    EM_TEST (left_behind), EM_TEST (number_given_again), EM_TEST (too_old), EM_TEST (not_understood), EM_TEST (not_taken_from_the_next), EM_TEST (nowhere), EM_TEST (one_of_many),
  };

  return em_test_run_in ("lock", rows, (int) G_N_ELEMENTS (rows), make_folder, drop_folder);
}
