/* test-autosave: what is not saved outlives a crash, what is saved or given up leaves nothing; others are told.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-test-window.h"

#include "em-autosave.h"
#include "em-lock-release.h"
#include "em-save.h"

#include <glib/gstdio.h>
#include <signal.h>
#include <unistd.h>

enum { LONG_ENOUGH_MS = 2600 };   /* the program waits two seconds */

static guint
count_files (const char *folder, const char *suffix)
{
  GDir *dir = g_dir_open (folder, 0, NULL);
  const char *name;
  guint n = 0;

  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    n += g_str_has_suffix (name, suffix);
  g_clear_pointer (&dir, g_dir_close);
  return n;
}

static guint
count_journals (void)
{
  g_autofree char *folder = g_build_filename (g_getenv ("ESTIMEND_STATE_DIR"), "recovery", NULL);

  return count_files (folder, ".journal");
}

static void
on_saved (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (GError) error = NULL;

  *(int *) data = em_document_save_finish (EM_DOCUMENT (source), result, &error)
                    ? 1 : g_error_matches (error, EM_FILE_ERROR, EM_FILE_ERROR_CHANGED) ? -2 : -1;
}

static int
save (EmDocument *document, const char *path)
{
  int done = 0;

  em_document_save_async (document, path, NULL, on_saved, &done);
  while (done == 0)
    g_main_context_iteration (NULL, TRUE);
  return done;
}

START_TEST (kept_until_undone_or_saved)
{
  g_autoptr (EmApplication) application = test_application ();
  g_autoptr (EmDocument) document = test_demo (NULL);
  g_autofree char *folder = g_dir_make_tmp ("estimend-test-XXXXXX", NULL), *path = g_build_filename (folder, "q.estimend", NULL);

  test_window (application, document);
  test_settle (LONG_ENOUGH_MS);
  ck_assert_uint_eq (count_journals (), 0);
  em_document_set_text (document, EM_QUOTE_CUSTOMER, "Somebody");
  test_settle (LONG_ENOUGH_MS);
  ck_assert_uint_eq (count_journals (), 1);
  em_document_undo (document);
  ck_assert_uint_eq (count_journals (), 0);
  em_document_redo (document);
  test_settle (LONG_ENOUGH_MS);
  ck_assert_uint_eq (count_journals (), 1);
  ck_assert_int_eq (save (document, path), 1);
  ck_assert_uint_eq (count_journals (), 0);
  g_remove (path);
}
END_TEST

START_TEST (given_up_with_the_window)
{
  g_autoptr (EmApplication) application = test_application ();
  EmDocument *document = test_demo (NULL);
  EmWindow *window = test_window (application, document);

  g_object_add_weak_pointer (G_OBJECT (document), (gpointer *) &document);
  em_document_set_text (document, EM_QUOTE_CUSTOMER, "Somebody");
  test_settle (LONG_ENOUGH_MS);
  ck_assert_uint_eq (count_journals (), 1);
  g_object_unref (document);
  gtk_window_destroy (GTK_WINDOW (window));
  test_settle (100);
  ck_assert_msg (document == NULL, "the document outlives its window");
  ck_assert_uint_eq (count_journals (), 0);
}
END_TEST

/* In a process of its own, where nothing may be asserted: an edit of the quote at path, and then the plug is pulled. */
static int
crash (const char *path)
{
  g_autoptr (EmApplication) application = em_application_new ();
  g_autoptr (EmDocument) document = NULL;

  g_application_set_flags (G_APPLICATION (application), G_APPLICATION_NON_UNIQUE | G_APPLICATION_HANDLES_OPEN);
  if (!g_application_register (G_APPLICATION (application), NULL, NULL))
    return 1;
  document = em_document_new_from_path (em_application_get_basis (application), path, NULL);
  em_application_add_window (application, document);
  em_document_set_text (document, EM_QUOTE_CUSTOMER, "Unsaved");
  test_settle (LONG_ENOUGH_MS);
  kill (getpid (), SIGKILL);
  return 1;
}

START_TEST (recovered_after_a_crash)
{
  g_autofree char *folder = g_dir_make_tmp ("estimend-test-XXXXXX", NULL), *path = g_build_filename (folder, "q.estimend", NULL);
  g_autofree char *self = g_file_read_link ("/proc/self/exe", NULL);
  const char *command[] = { self, path, NULL };
  g_autoptr (EmApplication) application = test_application ();
  g_autoptr (EmDocument) document = test_demo (NULL);

  ck_assert_int_eq (save (document, path), 1);
  ck_assert (g_spawn_sync (NULL, (char **) command, NULL, G_SPAWN_DEFAULT, NULL, NULL, NULL, NULL, NULL, NULL));
  g_autoptr (GPtrArray) found = em_recovery_find ();
  ck_assert_uint_eq (found->len, 1);
  const EmRecovered *old = found->pdata[0];
  g_autofree char *old_file = g_strdup (old->file);
  ck_assert_str_eq (old->path, path);
  em_autosave_recover (application, found);
  for (int i = 0; i < 3000 && g_file_test (old_file, G_FILE_TEST_EXISTS); i++)
    test_settle (20);
  ck_assert (!g_file_test (old_file, G_FILE_TEST_EXISTS));
  ck_assert_uint_eq (count_journals (), 1);   /* its own again, until it is saved */
  EmWindow *window = EM_WINDOW (gtk_application_get_active_window (GTK_APPLICATION (application)));
  EmDocument *again = em_window_get_document (window);
  ck_assert_str_eq (em_document_get_quote (again)->text[EM_QUOTE_CUSTOMER], "Unsaved");
  ck_assert_str_eq (em_document_get_path (again), path);
  ck_assert (em_document_is_modified (again));
  ck_assert_int_eq (save (again, path), 1);   /* nobody else wrote it meanwhile */
  ck_assert_uint_eq (count_journals (), 0);
  g_remove (path);
}
END_TEST

START_TEST (never_over_anothers_work)
{
  g_autofree char *folder = g_dir_make_tmp ("estimend-test-XXXXXX", NULL), *path = g_build_filename (folder, "q.estimend", NULL);
  g_autoptr (EmBasis) basis = test_basis ();
  g_autoptr (EmDocument) mine = test_demo (NULL);

  ck_assert_int_eq (save (mine, path), 1);
  g_autoptr (EmDocument) theirs = em_document_new_from_path (basis, path, NULL);
  em_document_set_text (theirs, EM_QUOTE_CUSTOMER, "Theirs");
  ck_assert_int_eq (save (theirs, path), 1);
  em_document_set_text (mine, EM_QUOTE_CUSTOMER, "Mine");
  ck_assert_int_eq (save (mine, path), -2);
  ck_assert (em_document_is_modified (mine));
  g_autoptr (EmDocument) found = em_document_new_from_path (basis, path, NULL);
  ck_assert_str_eq (em_document_get_quote (found)->text[EM_QUOTE_CUSTOMER], "Theirs");
  em_document_allow_overwrite (mine);
  ck_assert_int_eq (save (mine, path), 1);
  g_remove (path);
}
END_TEST

/* What is written is the quote as it was at that moment, whatever is edited before the thread gets to it. */
START_TEST (a_snapshot_is_of_its_moment)
{
  g_autoptr (EmDocument) document = test_demo (NULL);
  g_autofree char *before = NULL, *after = NULL;
  gsize size;

  em_document_set_text (document, EM_QUOTE_CUSTOMER, "As it was");
  before = test_bytes (document);
  em_document_set_state (document, EM_STATE_SENT);   /* with rates and metals */
  g_autofree char *sent = test_bytes (document);
  g_autoptr (EmSnapshot) snapshot = em_document_snapshot (document, NULL);
  em_document_set_state (document, EM_STATE_DRAFT);
  em_document_set_text (document, EM_QUOTE_CUSTOMER, "As it is");
  em_document_remove (document, 0);
  g_autoptr (GBytes) bytes = em_snapshot_write (snapshot, NULL);
  ck_assert_ptr_nonnull (bytes);
  after = g_strndup (g_bytes_get_data (bytes, &size), g_bytes_get_size (bytes));
  ck_assert_str_eq (after, sent);
  ck_assert_str_ne (sent, before);
}
END_TEST

/* A folder that went away: the window still says that there is work to save, and a crash now would lose none of it. */
START_TEST (kept_when_it_cannot_be_saved)
{
  g_autoptr (EmApplication) application = test_application ();
  g_autoptr (EmDocument) document = test_demo (NULL);
  g_autofree char *folder = g_dir_make_tmp ("estimend-test-XXXXXX", NULL), *path = g_build_filename (folder, "q.estimend", NULL);

  test_window (application, document);
  ck_assert_int_eq (save (document, path), 1);
  em_document_set_lock_take (document, NULL);
  ck_assert (em_lock_release_wait (5000));
  ck_assert (g_remove (path) == 0 && g_rmdir (folder) == 0);
  em_document_set_text (document, EM_QUOTE_CUSTOMER, "Somebody");
  ck_assert_int_eq (save (document, path), -1);
  ck_assert (em_document_is_modified (document));
  test_settle (LONG_ENOUGH_MS);
  ck_assert_uint_eq (count_journals (), 1);
  ck_assert_int_eq (g_mkdir (folder, 0700), 0);
  ck_assert_int_eq (save (document, path), 1);
  ck_assert (!em_document_is_modified (document));
  ck_assert_uint_eq (count_journals (), 0);
  g_remove (path);
}
END_TEST

START_TEST (who_has_it_open)
{
  g_autofree char *folder = g_dir_make_tmp ("estimend-test-XXXXXX", NULL), *path = g_build_filename (folder, "q.estimend", NULL);
  g_autofree char *lock_path = g_build_filename (folder, ".q.estimend.lock", NULL);
  g_autofree char *lock = g_strdup_printf ("Estimend lock 1\nAnna Beispiel\nworkshop-2\n12\n34\n%" G_GINT64_FORMAT "\n", g_get_real_time () / G_USEC_PER_SEC);
  g_autoptr (EmApplication) application = test_application ();
  g_autoptr (EmDocument) document = test_demo (NULL), blank = em_document_new (em_application_get_basis (application));
  g_autoptr (GFile) file = g_file_new_for_path (path);
  EmWindow *window = test_window (application, blank);

  ck_assert_int_eq (save (document, path), 1);
  ck_assert (g_file_test (lock_path, G_FILE_TEST_EXISTS));
  em_document_set_lock_take (document, NULL);
  ck_assert (em_lock_release_wait (5000));
  ck_assert (!g_file_test (lock_path, G_FILE_TEST_EXISTS));
  ck_assert (g_file_set_contents (lock_path, lock, -1, NULL));
  em_window_open_file (window, file);
  test_settle (500);
  window = EM_WINDOW (gtk_application_get_active_window (GTK_APPLICATION (application)));
  ck_assert_ptr_nonnull (em_window_get_said (window));
  ck_assert_msg (strstr (em_window_get_said (window), "Anna Beispiel on workshop-2") != NULL, "%s", em_window_get_said (window));
  g_remove (path);
}
END_TEST

static GtkDialog *
find_question (void)
{
  g_autoptr (GList) all = gtk_window_list_toplevels ();

  for (GList *at = all; at != NULL; at = at->next)
    if (GTK_IS_MESSAGE_DIALOG (at->data) && gtk_widget_get_visible (at->data))
      return at->data;
  return NULL;
}

static char *
content_of (const char *path)
{
  char *text = NULL;

  return g_file_get_contents (path, &text, NULL, NULL) ? text : NULL;
}

/* The window says so, the work stays changed and open, and is saved once it can be. */
START_TEST (refused_and_saved_after)
{
  g_autoptr (EmApplication) application = test_application ();
  g_autoptr (EmDocument) document = test_demo (NULL);
  g_autofree char *folder = g_dir_make_tmp ("estimend-test-XXXXXX", NULL), *path = g_build_filename (folder, "q.estimend", NULL);
  EmWindow *window = test_window (application, document);

  em_document_set_text (document, EM_QUOTE_CUSTOMER, "Somebody");
  ck_assert_int_eq (g_mkdir (path, 0700), 0);
  em_window_save_to (window, path);
  for (int i = 0; i < 3000 && (em_window_get_said (window) == NULL || strstr (em_window_get_said (window), "Not saved") == NULL); i++)
    test_settle (20);
  ck_assert_msg (strstr (em_window_get_said (window), "a folder has that name") != NULL, "%s", em_window_get_said (window));
  ck_assert (em_document_is_modified (document));
  ck_assert_int_eq (g_rmdir (path), 0);
  em_window_save_to (window, path);
  for (int i = 0; i < 3000 && em_document_is_saving (document); i++)
    test_settle (20);
  ck_assert (!em_document_is_modified (document) && g_file_test (path, G_FILE_TEST_IS_REGULAR));
}
END_TEST

/* Somebody else's file stays when the question is put away, and goes only when that is answered. */
START_TEST (asked_before_anothers_work_goes)
{
  enum { OVER = 1 };   /* its first answer */
  g_autoptr (EmApplication) application = test_application ();
  g_autoptr (EmDocument) document = test_demo (NULL);
  g_autofree char *folder = g_dir_make_tmp ("estimend-test-XXXXXX", NULL), *path = g_build_filename (folder, "q.estimend", NULL);
  EmWindow *window = test_window (application, document);

  ck_assert_int_eq (save (document, path), 1);
  ck_assert (g_file_set_contents (path, "hers", -1, NULL));
  em_document_set_text (document, EM_QUOTE_CUSTOMER, "Somebody");
  for (int answer = 0; answer < 2; answer++)
    {
      test_act (window, "win.save");
      for (int i = 0; i < 3000 && find_question () == NULL; i++)
        test_settle (20);
      ck_assert_ptr_nonnull (find_question ());
      gtk_dialog_response (find_question (), answer == 0 ? GTK_RESPONSE_CANCEL : OVER);
      for (int i = 0; i < 3000 && (find_question () != NULL || em_document_is_saving (document)); i++)
        test_settle (20);
      g_autofree char *found = content_of (path);
      ck_assert_msg (answer == 1 || g_strcmp0 (found, "hers") == 0, "put away, and yet hers is gone");
      ck_assert_int_eq (em_document_is_modified (document), answer == 0);
      ck_assert_msg (answer == 0 || strstr (found, "<customer>Somebody</customer>") != NULL, "not saved over");
    }
}
END_TEST

/* The window that is closed while it saves goes when the work is on the disk, and stays with it when it can't be. */
START_TEST (closed_while_it_saves)
{
  for (int can_be_saved = 0; can_be_saved < 2; can_be_saved++)
    {
      g_autoptr (EmApplication) application = test_application ();
      g_autoptr (EmDocument) document = test_demo (NULL);
      g_autofree char *folder = g_dir_make_tmp ("estimend-test-XXXXXX", NULL), *path = g_build_filename (folder, "q.estimend", NULL), *found = NULL;
      EmWindow *window = test_window (application, document);
      g_object_add_weak_pointer (G_OBJECT (window), (gpointer *) &window);
      em_document_set_text (document, EM_QUOTE_CUSTOMER, "Somebody");
      ck_assert (can_be_saved == 1 || g_mkdir (path, 0700) == 0);
      em_window_save_to (window, path);
      gtk_window_close (GTK_WINDOW (window));
      for (int i = 0; i < 3000 && em_document_is_saving (document); i++)
        test_settle (20);
      test_settle (300);
      ck_assert_int_eq (em_document_is_modified (document), can_be_saved == 0);
      ck_assert_msg ((window == NULL) == (can_be_saved == 1), "the window %s", window == NULL ? "went with the work" : "stays for nothing");
      found = content_of (path);
      ck_assert_int_eq (found != NULL && strstr (found, "<customer>Somebody</customer>") != NULL, can_be_saved);
      if (window != NULL)
        {
          ck_assert_msg (strstr (em_window_get_said (window), "Not saved") != NULL, "%s", em_window_get_said (window));
          g_object_remove_weak_pointer (G_OBJECT (window), (gpointer *) &window);
          gtk_window_destroy (GTK_WINDOW (window));
        }
    }
}
END_TEST

int
main (int argc, char **argv)
{
  const TTest *const tests[] =
  {
    kept_until_undone_or_saved, given_up_with_the_window, recovered_after_a_crash, never_over_anothers_work,
    kept_when_it_cannot_be_saved, a_snapshot_is_of_its_moment, who_has_it_open,
    refused_and_saved_after, asked_before_anothers_work_goes, closed_while_it_saves,
  };

  return argc > 1 ? crash (argv[1]) : test_main ("autosave", tests, (int) G_N_ELEMENTS (tests), 60);
}
