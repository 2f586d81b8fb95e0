/* test-disk: whatever the disk does, every file the program writes is the old one or the new one, whole, and a failure is told
 * with its reason.
 *
 * What calls fail with: POSIX.1-2017, open(), write(), fsync(), close(), rename(); EDQUOT as in the Linux manual, write(2).
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-book-file.h"
#include "em-lock.h"
#include "em-recovery.h"
#include "em-register.h"
#include "em-save.h"
#include "em-test-disk.h"
#include "em-test-file.h"
#include "em-test-shelf.h"

#include <errno.h>
#include <signal.h>
#include <stdio.h>
#include <sys/wait.h>

/* No save takes as many; a sweep that gets here doesn't end. */
enum { CALLS_MAX = 200 };

/* ESTALE and ETIMEDOUT are a server's folder that is gone, nfs(5). */
static const int errors[] = { ENOSPC, EDQUOT, EIO, EROFS, ENOENT, EACCES, ESTALE, ETIMEDOUT };
static const EmTestDiskMode modes[] = { EM_TEST_DISK_ONCE, EM_TEST_DISK_DEAD };

static char *folder, *recovery;

/* In memory where there is such a disk: forcing thousands of files to a real one takes minutes. */
static void
make_folder (void)
{
  g_autofree char *in_memory = g_strdup ("/dev/shm/estimend-test-XXXXXX");

  folder = g_mkdtemp (in_memory) != NULL ? g_steal_pointer (&in_memory) : em_test_folder_new ();
  recovery = g_build_filename (folder, "recovery", NULL);
  em_test_shelf_open (folder);
}

static void
drop_folder (void)
{
  em_test_shelf_close ();
  em_test_folder_remove (recovery);
  em_test_folder_remove (folder);
  g_free (recovery);
  g_free (folder);
}

static int
count_with (const char *in, const char *suffix)
{
  GDir *dir = g_dir_open (in, 0, NULL);
  const char *name;
  int n = 0;

  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    n += g_str_has_suffix (name, suffix);
  g_clear_pointer (&dir, g_dir_close);
  return n;
}

static int
count_half_written (void)
{
  return count_with (folder, EM_SAVE_SUFFIX) + count_with (recovery, EM_SAVE_SUFFIX);
}

/* ---- writing ---- */

typedef struct { const EmTestFile *file; char *content[2]; } Subject;

/* Both states as a disk that works has them. */
static Subject
open_subject (const EmTestFile *file)
{
  Subject subject = { file, { NULL, NULL } };

  for (int i = 0; i < 2; i++)
    {
      ck_assert_msg (file->write (i == 1, NULL), "%s", file->name);
      subject.content[i] = em_test_file_dup_content (file);
      ck_assert_ptr_nonnull (subject.content[i]);
    }
  ck_assert_str_ne (subject.content[0], subject.content[1]);
  return subject;
}

static void
close_subject (Subject *subject)
{
  g_free (subject->content[0]);
  g_free (subject->content[1]);
}

static void
begin_with (const Subject *subject, gboolean has_old)
{
  g_autofree char *path = subject->file->dup_path ();

  if (has_old)
    ck_assert (subject->file->write (FALSE, NULL));
  else
    (void) g_unlink (path);
}

/* A sentence of ours stands for what the system would say too vaguely. */
static gboolean
tells_reason (const GError *error, int error_number)
{
  return error->domain == EM_FILE_ERROR && error->code == EM_FILE_ERROR_WRITE
         && (strstr (error->message, g_strerror (error_number)) != NULL
             || (error_number == ENOENT && strstr (error->message, "no longer there") != NULL)
             || (error_number == EACCES && strstr (error->message, "read-only") != NULL)
             || strstr (error->message, "it is there, but") != NULL);
}

/* One save with one failure; FALSE when it came to no failure any more. */
static gboolean
save_once (const Subject *subject, gboolean has_old, EmTestDiskMode mode, int nth, int error_number)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *where = g_strdup_printf ("%s, %s, call %d%s: %s", subject->file->name, has_old ? "over an old one" : "anew", nth,
                                            mode == EM_TEST_DISK_DEAD ? " and all after" : "", g_strerror (error_number));

  begin_with (subject, has_old);
  em_test_disk_arm (mode, nth, error_number);
  gboolean is_good = subject->file->write (TRUE, &error), was_hit = em_test_disk_disarm ();
  g_autofree char *found = em_test_file_dup_content (subject->file);
  gboolean is_new = g_strcmp0 (found, subject->content[1]) == 0;
  gboolean is_old = has_old ? g_strcmp0 (found, subject->content[0]) == 0 : found == NULL;
  ck_assert_msg (is_new || is_old, "%s: neither the old nor the new file (calls %s)", where, em_test_disk_calls ());
  ck_assert_msg (is_good ? is_new && error == NULL : error != NULL, "%s: said %d", where, is_good);
  ck_assert_msg (is_good || tells_reason (error, error_number), "%s: %s", where, error != NULL ? error->message : "");
  ck_assert_msg (is_good || is_old || strstr (error->message, "it is there, but") != NULL, "%s: new, but %s", where, error->message);
  ck_assert_msg (mode == EM_TEST_DISK_DEAD || count_half_written () == 0, "%s: left something behind", where);
  /* Once the disk is well again, so is saving. */
  ck_assert_msg (subject->file->write (TRUE, NULL), "%s: not saved after it", where);
  g_autofree char *after = em_test_file_dup_content (subject->file);
  ck_assert_msg (g_strcmp0 (after, subject->content[1]) == 0 && count_half_written () == 0, "%s: after it", where);
  return was_hit;
}

START_TEST (old_or_new)
{
  Subject subject = open_subject (&em_test_files[_i]);
  int n_failures = 0;

  for (gsize e = 0; e < G_N_ELEMENTS (errors); e++)
    for (gsize m = 0; m < G_N_ELEMENTS (modes); m++)
      for (int has_old = 0; has_old < 2; has_old++)
        {
          int nth = 0;
          while (save_once (&subject, has_old == 1, modes[m], nth, errors[e]))
            ck_assert_int_lt (++nth, CALLS_MAX);
          ck_assert_int_gt (nth, 5);
          n_failures += nth;
        }
  printf ("%s: %d failures of the disk, the old or the new file whole after each\n", subject.file->name, n_failures);
  close_subject (&subject);
}
END_TEST

/* What is new is on the disk before it takes the old one's name, and the name before anybody is told. */
START_TEST (in_this_order)
{
  const EmTestFile *file = &em_test_files[_i];

  ck_assert (file->write (FALSE, NULL));
  em_test_disk_arm (EM_TEST_DISK_ONCE, CALLS_MAX, EIO);
  ck_assert (file->write (TRUE, NULL));
  em_test_disk_disarm ();
  const char *calls = em_test_disk_calls ();
  const char *written = strrchr (calls, 'w'), *named = strchr (calls, 'm');
  const char *forced = written != NULL ? strchr (written, 's') : NULL, *name_forced = named != NULL ? strchr (named, 's') : NULL;
  ck_assert_msg (forced != NULL && name_forced != NULL && written < forced && forced < named && named < name_forced, "%s: %s", file->name, calls);
}
END_TEST

/* ---- killed between any two calls ---- */

/* In a program of its own; TRUE when it was killed before it was done. */
static gboolean
killed_at (const EmTestFile *file, gboolean begins_old, int nth)
{
  int status;
  pid_t child = fork ();

  if (child == 0)
    {
      if (begins_old && !file->write (FALSE, NULL))
        _exit (2);
      em_test_disk_arm (EM_TEST_DISK_KILL, nth, 0);
      gboolean is_good = file->write (TRUE, NULL);
      em_test_disk_disarm ();
      _exit (is_good ? 0 : 1);
    }
  ck_assert_int_eq (waitpid (child, &status, 0), child);
  ck_assert_msg (WIFSIGNALED (status) || WEXITSTATUS (status) == 0, "%s, call %d: ended with %d", file->name, nth, status);
  return WIFSIGNALED (status);
}

START_TEST (killed_at_every_call)
{
  Subject subject = open_subject (&em_test_files[_i]);
  int nth = 0;

  for (gboolean goes_on = TRUE; goes_on; nth += goes_on)
    {
      begin_with (&subject, TRUE);
      goes_on = killed_at (subject.file, FALSE, nth);
      g_autofree char *found = em_test_file_dup_content (subject.file);
      ck_assert_msg (g_strcmp0 (found, subject.content[0]) == 0 || g_strcmp0 (found, subject.content[1]) == 0, "%s: neither after call %d",
                     subject.file->name, nth);
      ck_assert (subject.file->write (TRUE, NULL));
      ck_assert_msg (count_half_written () == 0, "%s: something stays behind call %d", subject.file->name, nth);
      ck_assert_int_lt (nth, CALLS_MAX);
    }
  ck_assert_int_gt (nth, 5);
  printf ("%s: killed before each of %d calls, the old or the new file whole after each\n", subject.file->name, nth);
  close_subject (&subject);
}
END_TEST

/* A journal belongs to a program, so its death is another's to find: what was kept before is there, or what was being kept. */
START_TEST (work_recovered_after_every_call)
{
  int nth = 0;

  for (gboolean goes_on = TRUE; goes_on; nth += goes_on)
    {
      EmQuoteFile quote;
      goes_on = killed_at (&em_test_files[EM_TEST_JOURNAL_FILE], TRUE, nth);
      g_autoptr (GPtrArray) found = em_recovery_find ();
      ck_assert_msg (found->len == 1, "call %d: %u found", nth, found->len);
      ck_assert_msg (em_recovery_read (found->pdata[0], &quote, NULL), "call %d: not whole", nth);
      const char *number = quote.quote.text[EM_QUOTE_NUMBER];
      ck_assert_msg (g_str_equal (number, "old") || g_str_equal (number, "new"), "call %d: %s", nth, number);
      ck_assert_msg (goes_on || g_str_equal (number, "new"), "the last was not kept");
      em_quote_file_clear (&quote);
      em_recovery_discard (found->pdata[0]);
      ck_assert_int_eq (count_half_written (), 0);
    }
  ck_assert_int_gt (nth, 5);
  printf ("keeping unsaved work: killed before each of %d calls, recovered whole after each\n", nth);
}
END_TEST

/* ---- the lock ---- */

/* It may not be had, which keeps nobody from working; but no half of one may keep others out for good. */
START_TEST (lock_or_a_reason)
{
  g_autofree char *path = g_build_filename (folder, "q.estimend", NULL), *lock_path = g_build_filename (folder, ".q.estimend.lock", NULL);
  int n_failures = 0;

  for (gsize e = 0; e < G_N_ELEMENTS (errors); e++)
    for (int nth = 0;; nth++)
      {
        g_autoptr (GError) error = NULL;
        em_test_disk_arm (EM_TEST_DISK_ONCE, nth, errors[e]);
        EmLock *lock = em_lock_take (path, &error);
        gboolean was_hit = em_test_disk_disarm ();
        ck_assert_msg ((lock != NULL) == (error == NULL), "call %d", nth);
        ck_assert_msg (lock != NULL || strstr (error->message, g_strerror (errors[e])) != NULL, "call %d: %s", nth, error != NULL ? error->message : "");
        ck_assert_msg (lock != NULL || !g_file_test (lock_path, G_FILE_TEST_EXISTS), "call %d: a lock that nobody has", nth);
        em_lock_free (lock);
        ck_assert_msg (!g_file_test (lock_path, G_FILE_TEST_EXISTS), "call %d: the lock stays", nth);
        n_failures += was_hit;
        if (!was_hit)
          break;
        ck_assert_int_lt (nth, CALLS_MAX);
      }
  printf ("lock: %d failures of the disk\n", n_failures);
  ck_assert_int_gt (n_failures, 6);
}
END_TEST

static void
take_lock_killed_at (const char *path, int nth)
{
  em_test_disk_arm (EM_TEST_DISK_KILL, nth, 0);
  em_lock_take (path, NULL);
  em_test_disk_disarm ();
  _exit (0);
}

START_TEST (lock_of_the_killed)
{
  g_autofree char *path = g_build_filename (folder, "q.estimend", NULL);
  int nth = 0;

  for (gboolean goes_on = TRUE; goes_on; nth += goes_on)
    {
      int status;
      pid_t child = fork ();
      if (child == 0)
        take_lock_killed_at (path, nth);
      ck_assert_int_eq (waitpid (child, &status, 0), child);
      goes_on = WIFSIGNALED (status);
      g_autoptr (GError) error = NULL;
      g_autoptr (EmLock) lock = em_lock_take (path, &error);
      ck_assert_msg (lock != NULL, "call %d: %s", nth, error != NULL ? error->message : "");
      ck_assert_int_lt (nth, CALLS_MAX);
    }
  printf ("lock: killed before each of %d calls, taken over after each\n", nth);
  ck_assert_int_gt (nth, 2);
}
END_TEST

/* ---- reading ---- */

static gboolean
load_quote (const char *path, GError **error)
{
  EmQuoteFile file;
  gboolean is_good = em_quote_file_load (path, &file, error);

  if (is_good)
    em_quote_file_clear (&file);
  return is_good;
}

static gboolean
load_rates (const char *path, GError **error)
{
  EmRates rates;
  gboolean is_good = em_rates_load (path, &rates, error);

  if (is_good)
    em_rates_clear (&rates);
  return is_good;
}

static gboolean
load_catalogue (const char *path, GError **error)
{
  EmCatalogue catalogue;
  gboolean is_good = em_catalogue_load (path, &catalogue, error);

  if (is_good)
    em_catalogue_clear (&catalogue);
  return is_good;
}

static const struct { int file; gboolean (*load) (const char *path, GError **error); } readers[] =
{
  { EM_TEST_QUOTE_FILE, load_quote }, { EM_TEST_RATES_FILE, load_rates }, { EM_TEST_CATALOGUE_FILE, load_catalogue },
};

/* Read whole, or refused with the file's name: no part of a file is ever taken for it. */
START_TEST (read_or_a_reason)
{
  const EmTestFile *file = &em_test_files[readers[_i].file];
  const EmTestDiskMode how[] = { EM_TEST_DISK_ONCE, EM_TEST_DISK_DEAD, EM_TEST_DISK_SHORT };
  int n_refused = 0;

  ck_assert (file->write (FALSE, NULL));
  g_autofree char *path = file->dup_path (), *name = g_path_get_basename (path);
  for (gsize m = 0; m < G_N_ELEMENTS (how); m++)
    for (int nth = 0;; nth++)
      {
        g_autoptr (GError) error = NULL;
        em_test_disk_arm (how[m], nth, EIO);
        gboolean is_good = readers[_i].load (path, &error), was_hit = em_test_disk_disarm ();
        ck_assert_msg (is_good == (error == NULL), "%s, call %d", file->name, nth);
        ck_assert_msg (is_good || (error->domain == EM_FILE_ERROR && strstr (error->message, name) != NULL), "%s, call %d: %s", file->name, nth,
                       error != NULL ? error->message : "");
        n_refused += !is_good;
        ck_assert_msg (was_hit || is_good, "%s", error != NULL ? error->message : "");
        /* A short read of nothing at the end is the end. */
        if (!was_hit && nth > 40)
          break;
        ck_assert_int_lt (nth, CALLS_MAX);
      }
  ck_assert_int_gt (n_refused, 4);
}
END_TEST

/* No index is no harm: it is made again. */
START_TEST (index_or_none)
{
  ck_assert (em_test_files[EM_TEST_INDEX_FILE].write (TRUE, NULL));
  for (int nth = 0; nth < 40; nth++)
    for (int mode = EM_TEST_DISK_ONCE; mode <= EM_TEST_DISK_SHORT; mode++)
      {
        em_test_disk_arm ((EmTestDiskMode) mode, nth, EIO);
        g_autoptr (EmRegister) reg = em_register_new (folder);
        em_test_disk_disarm ();
        guint n = em_register_get_length (reg);
        ck_assert_msg (n == 40 || n == 0, "call %d: %u entries", nth, n);
      }
}
END_TEST

/* Whatever fails while it is looked for, unsaved work stays where it is and is found by the next look. */
START_TEST (work_stays_until_it_is_read)
{
  ck_assert (!killed_at (&em_test_files[EM_TEST_JOURNAL_FILE], TRUE, CALLS_MAX));
  for (int nth = 0; nth < 40; nth++)
    for (int mode = EM_TEST_DISK_ONCE; mode <= EM_TEST_DISK_SHORT; mode++)
      {
        EmQuoteFile quote;
        em_test_disk_arm ((EmTestDiskMode) mode, nth, EIO);
        g_autoptr (GPtrArray) found = em_recovery_find ();
        if (found->len > 0 && em_recovery_read (found->pdata[0], &quote, NULL))
          em_quote_file_clear (&quote);
        em_test_disk_disarm ();
        g_autoptr (GPtrArray) again = em_recovery_find ();
        ck_assert_uint_eq (again->len, 1);
        ck_assert (em_recovery_read (again->pdata[0], &quote, NULL));
        em_quote_file_clear (&quote);
      }
}
END_TEST

int
main (void)
{
  const EmTestRow rows[] =
  {
    EM_TEST_LOOP (old_or_new, em_test_files), EM_TEST_LOOP (in_this_order, em_test_files),
    EM_TEST_LOOP (killed_at_every_call, em_test_files), EM_TEST (work_recovered_after_every_call),
    EM_TEST (lock_or_a_reason), EM_TEST (lock_of_the_killed),
    EM_TEST_LOOP (read_or_a_reason, readers), EM_TEST (index_or_none), EM_TEST (work_stays_until_it_is_read),
  };

  return em_test_run_apart ("disk", rows, (int) G_N_ELEMENTS (rows), make_folder, drop_folder);
}
