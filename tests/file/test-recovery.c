/* test-recovery: unsaved work outlives the program, saved work leaves nothing behind.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-recovery.h"
#include "em-save.h"
#include "em-test-file.h"
#include "em-test-quote.h"

#include <signal.h>
#include <stdio.h>
#include <sys/wait.h>

static char *folder, *recovery;

static void
make_folder (void)
{
  folder = em_test_folder_new ();
  recovery = g_build_filename (folder, "recovery", NULL);
  g_setenv ("ESTIMEND_STATE_DIR", folder, TRUE);
}

static void
drop_folder (void)
{
  em_test_folder_remove (recovery);
  em_test_folder_remove (folder);
  g_free (recovery);
  g_free (folder);
}

/* A quote with number in its number. No ck_assert here: programs about to be killed run this, and a kill in the middle of
 * Check's own note of the place would spoil the file it shares with the test. */
static GBytes *
quote_bytes (const char *number)
{
  EmQuoteFile file;
  GBytes *bytes;

  em_quote_file_init (&file);
  em_test_quote_full (&file.quote);
  em_quote_set_text (&file.quote, EM_QUOTE_NUMBER, number);
  bytes = em_quote_file_write (&file, NULL);
  em_quote_file_clear (&file);
  g_assert_nonnull (bytes);
  return bytes;
}

static gboolean
keep (EmJournal *journal, const char *number, const char *path, const EmFileStamp *opened)
{
  g_autoptr (GBytes) bytes = quote_bytes (number);

  return em_journal_keep (journal, em_journal_ticket (journal), bytes, path, opened, number, NULL);
}

static guint
count_journals (void)
{
  GDir *dir = g_dir_open (recovery, 0, NULL);
  const char *name;
  guint n = 0;

  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    n += g_str_has_suffix (name, ".journal");
  g_clear_pointer (&dir, g_dir_close);
  return n;
}

/* In a program of its own, which then is gone without a word. */
static void
crash_after (void (*work) (void))
{
  pid_t child = fork ();
  int status;

  if (child == 0)
    {
      work ();
      kill (getpid (), SIGKILL);
    }
  ck_assert (waitpid (child, &status, 0) == child && WIFSIGNALED (status));
}

static const EmFileStamp opened = { G_MAXUINT64, 12, 34, -56 };

static void
edit_two (void)
{
  EmJournal *one = em_journal_new (), *two = em_journal_new (), *three = em_journal_new ();

  keep (one, "Q-1 & <co>", "/shop/ä quote.estimend", &opened);
  keep (two, "Q-2", NULL, NULL);
  keep (three, "Q-3", NULL, NULL);
  keep (one, "Q-1b", "/shop/ä quote.estimend", &opened);
  em_journal_drop (three);
}

static const EmRecovered *
find_title (GPtrArray *found, const char *title)
{
  for (guint i = 0; i < found->len; i++)
    if (g_str_equal (((EmRecovered *) found->pdata[i])->title, title))
      return found->pdata[i];
  ck_abort_msg ("%s is not found", title);
  return NULL;
}

START_TEST (found_after_a_crash)
{
  EmQuoteFile file;

  crash_after (edit_two);
  g_autoptr (GPtrArray) found = em_recovery_find (), again = em_recovery_find ();
  ck_assert_uint_eq (found->len, 2);
  ck_assert_uint_eq (again->len, 2);   /* until it is dealt with */
  const EmRecovered *one = find_title (found, "Q-1b"), *two = find_title (found, "Q-2");
  ck_assert_str_eq (one->path, "/shop/ä quote.estimend");
  ck_assert_ptr_null (two->path);
  ck_assert (ABS (one->kept_s - g_get_real_time () / G_USEC_PER_SEC) < 60);
  ck_assert (em_recovery_read (one, &file, NULL));
  ck_assert_str_eq (file.quote.text[EM_QUOTE_NUMBER], "Q-1b");
  ck_assert (em_file_stamp_equal (&file.stamp, &opened));
  ck_assert_int_eq (file.quote.n_features, em_n_kinds - 1);
  em_quote_file_clear (&file);
  ck_assert (em_recovery_read (two, &file, NULL));
  ck_assert (file.stamp.inode == 0);
  em_quote_file_clear (&file);
  em_recovery_discard (one);
  em_recovery_discard (two);
  g_autoptr (GPtrArray) none = em_recovery_find ();
  ck_assert_uint_eq (none->len, 0);
}
END_TEST

/* How much another program would find: this one started anew. */
static int
ask_another_program (void)
{
  g_autofree char *self = g_file_read_link ("/proc/self/exe", NULL);
  const char *command[] = { self, "find", NULL };
  int status;

  ck_assert (g_spawn_sync (NULL, (char **) command, NULL, G_SPAWN_DEFAULT, NULL, NULL, NULL, NULL, &status, NULL));
  return WEXITSTATUS (status);
}

/* Work of a program that runs is nobody else's, neither its own nor what it is about to recover. */
START_TEST (not_from_the_living)
{
  int ends[2];
  char ready;
  ck_assert (pipe (ends) == 0);
  pid_t child = fork ();

  if (child == 0)
    {
      edit_two ();
      if (write (ends[1], "x", 1) == 1)
        pause ();
      _exit (0);
    }
  close (ends[1]);   /* so that the end of a child that fails is seen */
  ck_assert (read (ends[0], &ready, 1) == 1);
  close (ends[0]);
  ck_assert_int_eq (ask_another_program (), 0);
  g_autoptr (GPtrArray) early = em_recovery_find ();
  ck_assert_uint_eq (early->len, 0);
  kill (child, SIGKILL);
  ck_assert (waitpid (child, NULL, 0) == child);
  g_autoptr (GPtrArray) found = em_recovery_find ();
  ck_assert_uint_eq (found->len, 2);
  ck_assert_int_eq (ask_another_program (), 0);   /* ours to recover now */
}
END_TEST

START_TEST (saved_leaves_nothing)
{
  g_autoptr (EmJournal) journal = em_journal_new ();
  g_autoptr (GBytes) bytes = quote_bytes ("late");
  guint64 ticket = em_journal_ticket (journal);

  ck_assert (keep (journal, "Q-1", NULL, NULL));
  ck_assert_uint_eq (count_journals (), 1);
  em_journal_drop (journal);
  ck_assert_uint_eq (count_journals (), 0);
  /* A thread that was under way when the quote was saved. */
  ck_assert (em_journal_keep (journal, ticket, bytes, NULL, NULL, "late", NULL));
  ck_assert_uint_eq (count_journals (), 0);
  ck_assert (keep (journal, "Q-1", NULL, NULL));
  ck_assert_uint_eq (count_journals (), 1);
  em_journal_drop (journal);
}
END_TEST

static gpointer
keep_many (gpointer data)
{
  EmJournal *journal = data;

  for (int i = 0; i < 40; i++)
    keep (journal, "Q-1", NULL, NULL);
  return NULL;
}

/* However writes and drops fall together, the last word is a drop's. */
START_TEST (threads)
{
  g_autoptr (EmJournal) journal = em_journal_new ();
  GThread *one = g_thread_new (NULL, keep_many, journal), *two = g_thread_new (NULL, keep_many, journal);

  for (int i = 0; i < 200; i++)
    {
      em_journal_drop (journal);
      g_usleep (500);
    }
  g_thread_join (one);
  g_thread_join (two);
  em_journal_drop (journal);
  ck_assert_uint_eq (count_journals (), 0);
}
END_TEST

START_TEST (damaged_is_told_of)
{
  EmQuoteFile file;
  g_autoptr (GError) error = NULL;

  crash_after (edit_two);
  g_autoptr (GPtrArray) found = em_recovery_find ();
  const EmRecovered *one = find_title (found, "Q-1b");
  ck_assert (truncate (one->file, 900) == 0);
  g_autoptr (GPtrArray) again = em_recovery_find ();
  ck_assert_uint_eq (again->len, 2);
  ck_assert (!em_recovery_read (find_title (again, "Q-1b"), &file, &error));
  ck_assert (g_error_matches (error, EM_FILE_ERROR, EM_FILE_ERROR_SYNTAX));
}
END_TEST

/* A quote stands in a journal with a name space and a version of its own, and neither is the other's. */
#define JOURNAL(prefix, version) "<" prefix "journal xmlns='urn:estimend:other' xmlns:j='urn:estimend:recovery' version='" version "'>"
#define QUOTE(version, inside) "<quote xmlns='urn:estimend:quote' version='" version "'>" inside "</quote>"

static const struct { const char *name, *text; int refused; } journals[] =
{
  { "one quote", JOURNAL ("j:", "1.0") QUOTE ("1.1", "<feature id='1' kind='edge-nick'/>") "</j:journal>", -1 },
  { "a newer quote", JOURNAL ("j:", "1.0") QUOTE ("1.9", "<weight kg='3'/>") "</j:journal>", -1 },
  { "newer around it", JOURNAL ("j:", "1.7") "<a/>" QUOTE ("1.1", "") "<b/></j:journal>", -1 },
  { "newer only around it", JOURNAL ("j:", "1.7") QUOTE ("1.1", "<weight kg='3'/>") "</j:journal>", EM_FILE_ERROR_VALUE },
  { "newer only within", JOURNAL ("j:", "1.0") QUOTE ("1.9", "<weight kg='3'/>") "<b/></j:journal>", EM_FILE_ERROR_VALUE },
  { "a feature that is the journal's", JOURNAL ("j:", "1.0") QUOTE ("1.1", "<j:feature id='1' kind='edge-nick'/>") "</j:journal>", EM_FILE_ERROR_VALUE },
  { "a quote that is the journal's", JOURNAL ("j:", "1.0") "<j:quote version='1.1'/></j:journal>", EM_FILE_ERROR_NOT_OURS },
  { "a quote of no name space", "<j:journal xmlns:j='urn:estimend:recovery' version='1.0'><quote version='1.1'/></j:journal>", EM_FILE_ERROR_NOT_OURS },
  { "two quotes", JOURNAL ("j:", "1.0") QUOTE ("1.1", "") QUOTE ("1.1", "") "</j:journal>", EM_FILE_ERROR_VALUE },
  { "no quote", JOURNAL ("j:", "1.0") "</j:journal>", EM_FILE_ERROR_VALUE },
  { "a quote of a newer major version", JOURNAL ("j:", "1.0") QUOTE ("2.0", "") "</j:journal>", EM_FILE_ERROR_NEWER },
  { "another journal", JOURNAL ("", "1.0") QUOTE ("1.1", "") "</journal>", EM_FILE_ERROR_NOT_OURS },
};

START_TEST (quote_within)
{
  g_autoptr (GBytes) bytes = g_bytes_new_static (journals[_i].text, strlen (journals[_i].text));
  g_autoptr (GError) error = NULL;
  EmQuoteFile file;
  gboolean is_good = em_recovery_parse (bytes, "a.journal", &file, &error);

  ck_assert_msg (is_good == (journals[_i].refused < 0), "%s: %s", journals[_i].name, error != NULL ? error->message : "read");
  if (is_good)
    em_quote_file_clear (&file);
  else
    ck_assert_msg (g_error_matches (error, EM_FILE_ERROR, journals[_i].refused), "%s: %s", journals[_i].name, error->message);
}
END_TEST

START_TEST (nowhere_to_keep)
{
  g_autoptr (EmJournal) journal = em_journal_new ();
  g_autoptr (GBytes) bytes = quote_bytes ("Q-1");
  g_autoptr (GError) error = NULL;

  g_setenv ("ESTIMEND_STATE_DIR", "/dev/null/there", TRUE);
  ck_assert (!em_journal_keep (journal, em_journal_ticket (journal), bytes, NULL, NULL, NULL, &error));
  ck_assert (g_error_matches (error, EM_FILE_ERROR, EM_FILE_ERROR_WRITE));
  g_autoptr (GPtrArray) found = em_recovery_find ();
  ck_assert_uint_eq (found->len, 0);
}
END_TEST

static void
keep_for_ever (int out)
{
  EmJournal *journal = em_journal_new ();

  for (int i = 1;; i++)
    {
      g_autofree char *number = g_strdup_printf ("%d", i);
      if (!keep (journal, number, NULL, NULL) || (i == 1 && write (out, "x", 1) != 1))
        _exit (1);
    }
}

/* Once something was kept, there is always something whole to recover. */
START_TEST (killed_at_any_moment)
{
  int n_recovered = 0, n_kills = em_test_kills ();

  for (int i = 0; i < n_kills; i++)
    {
      int ends[2];
      char ready;
      EmQuoteFile file;
      ck_assert (pipe (ends) == 0);
      pid_t child = fork ();
      if (child == 0)
        keep_for_ever (ends[1]);
      close (ends[1]);   /* so that the end of a child that fails is seen */
      ck_assert (read (ends[0], &ready, 1) == 1);
      g_usleep ((gulong) g_random_int_range (0, 6000));
      kill (child, SIGKILL);
      ck_assert (waitpid (child, NULL, 0) == child);
      close (ends[0]);
      g_autoptr (GPtrArray) found = em_recovery_find ();
      ck_assert_uint_eq (found->len, 1);
      if (em_recovery_read (found->pdata[0], &file, NULL))
        {
          n_recovered++;
          em_quote_file_clear (&file);
        }
      em_recovery_discard (found->pdata[0]);
    }
  printf ("killed %d times while keeping unsaved work, %d times it was recovered whole\n", n_kills, n_recovered);
  ck_assert_int_eq (n_recovered, n_kills);
}
END_TEST

int
main (int argc, char **argv)
{
  (void) argv;
  if (argc > 1)
    {
      g_autoptr (GPtrArray) found = em_recovery_find ();
      return (int) found->len;
    }

  const EmTestRow rows[] =
  {
    EM_TEST (found_after_a_crash), EM_TEST (not_from_the_living), EM_TEST (saved_leaves_nothing), EM_TEST (threads),
    EM_TEST (damaged_is_told_of), EM_TEST_LOOP (quote_within, journals), EM_TEST (nowhere_to_keep), EM_TEST (killed_at_any_moment),
  };

  return em_test_run_apart ("recovery", rows, (int) G_N_ELEMENTS (rows), make_folder, drop_folder);
}
