/* test-pages: a long quote as a PDF while the window lives on.
 *
 * The file is held against the pages made in one go from the quote as it was when the PDF was asked for: the same input and
 * date give the same bytes.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-test-window.h"

#include <glib/gstdio.h>
#include <string.h>
#include <time.h>

/* What nobody should wait for without being told; a hundred times less is usual for a turn. */
static const double LONGEST_S = 0.5;

enum { N_FEATURES = 150, N_MANY = 600, N_VERY_MANY = 3000 };

static EmDocument *
long_quote (void)
{
  EmDocument *document = test_demo ("injection-mold");

  for (int i = em_document_get_quote (document)->n_features; i < N_FEATURES; i++)
    em_document_duplicate (document, i % 8);
  ck_assert_int_eq (em_document_get_quote (document)->n_features, N_FEATURES);
  return document;
}

/* As long as pages come by the hundred. */
static EmDocument *
very_long_quote (int n)
{
  g_autoptr (EmDocument) demo = test_demo ("injection-mold");
  g_autoptr (EmBasis) basis = test_basis ();
  const EmQuote *few = em_document_get_quote (demo);
  EmQuoteFile file;

  em_quote_file_init (&file);
  em_quote_clear (&file.quote);
  ck_assert_int_eq (em_quote_copy (few, &file.quote), EM_OK);
  for (int i = file.quote.n_features; i < n; i++)
    {
      EmFeature feature;
      ck_assert_int_eq (em_feature_copy (&few->feature[i % few->n_features], &feature), EM_OK);
      feature.id = 0;
      ck_assert_int_eq (em_quote_insert_take (&file.quote, i, &feature), EM_OK);
    }
  return em_document_new_take (basis, &file, NULL);
}

static gboolean
has_said (EmWindow *window, const char *text)
{
  return em_window_get_said (window) != NULL && strstr (em_window_get_said (window), text) != NULL;
}

static void
wait_until_said (EmWindow *window, const char *text)
{
  for (int i = 0; i < 2000 && !has_said (window, text); i++)
    test_settle (10);
  ck_assert_msg (has_said (window, text), "it says: %s", em_window_get_said (window));
}

START_TEST (what_is_edited_meanwhile_is_not_in_it)
{
  g_autoptr (EmApplication) application = test_application ();
  g_autoptr (EmDocument) document = long_quote ();
  EmWindow *window = test_window (application, document);
  g_autofree char *folder = g_dir_make_tmp ("estimend-test-XXXXXX", NULL), *path = g_build_filename (folder, "q.pdf", NULL);
  g_autofree char *content = NULL;
  EmPaperJob job;
  gsize size;

  em_paper_job_of (&job, document);
  g_autoptr (GBytes) expected = em_paper_to_pdf (EM_SHEET_QUOTE, &job.source, em_document_get_quote (document)->text[EM_QUOTE_DATE], NULL);
  em_paper_job_clear (&job);
  ck_assert_ptr_nonnull (expected);
  em_window_export_to (window, path);
  test_settle (60);
  ck_assert (!g_file_test (path, G_FILE_TEST_EXISTS));
  while (em_document_get_quote (document)->n_features > 1)
    em_document_remove (document, 0);
  em_document_set_text (document, EM_QUOTE_CUSTOMER, "Somebody else");
  wait_until_said (window, "is written");
  ck_assert (g_file_get_contents (path, &content, &size, NULL));
  ck_assert_uint_eq (size, g_bytes_get_size (expected));
  ck_assert (memcmp (content, g_bytes_get_data (expected, NULL), size) == 0);
  g_remove (path);
  g_rmdir (folder);
  gtk_window_destroy (GTK_WINDOW (window));
}
END_TEST

/* Stopped between two pages: what lay there before is as it was. */
START_TEST (it_can_be_stopped)
{
  g_autoptr (EmApplication) application = test_application ();
  g_autoptr (EmDocument) document = long_quote ();
  EmWindow *window = test_window (application, document);
  g_autofree char *folder = g_dir_make_tmp ("estimend-test-XXXXXX", NULL), *path = g_build_filename (folder, "q.pdf", NULL);
  g_autofree char *content = NULL;

  ck_assert (g_file_set_contents (path, "before", -1, NULL));
  em_window_export_to (window, path);
  for (int i = 0; i < 4; i++)
    g_main_context_iteration (NULL, TRUE);
  test_act (window, "win.dismiss");
  wait_until_said (window, "no PDF was written");
  ck_assert (g_file_get_contents (path, &content, NULL, NULL));
  ck_assert_str_eq (content, "before");
  g_remove (path);
  g_rmdir (folder);
  gtk_window_destroy (GTK_WINDOW (window));
}
END_TEST

START_TEST (a_folder_that_is_not_there_is_told)
{
  g_autoptr (EmApplication) application = test_application ();
  g_autoptr (EmDocument) document = test_demo (NULL);
  EmWindow *window = test_window (application, document);

  em_window_export_to (window, "/no/such/folder/anywhere/q.pdf");
  wait_until_said (window, "could not be written");
  gtk_window_destroy (GTK_WINDOW (window));
}
END_TEST

/* Processor seconds of this thread: a busy machine lengthens only the clock's. */
static double
main_thread_s (void)
{
  struct timespec now;

  clock_gettime (CLOCK_THREAD_CPUTIME_ID, &now);
  return (double) now.tv_sec + (double) now.tv_nsec * 1e-9;
}

static double
longest_turn_until_shown (EmWindow *window)
{
  EmPaperView *paper = em_window_get_paper (window);
  double longest = 0;

  do
    {
      double from = main_thread_s ();
      g_main_context_iteration (NULL, TRUE);
      longest = MAX (longest, main_thread_s () - from);
    }
  while (em_paper_view_is_busy (paper));
  return longest;
}

START_TEST (many_pages_are_shown_bit_by_bit)
{
  g_autoptr (EmApplication) application = test_application ();
  g_autoptr (EmDocument) document = very_long_quote (N_VERY_MANY);
  EmWindow *window = test_window (application, document);
  EmPaperView *paper = em_window_get_paper (window);

  ck_assert (gtk_widget_activate_action (GTK_WIDGET (window), "win.paper", NULL));
  ck_assert (em_paper_view_is_busy (paper));
  double longest_s = longest_turn_until_shown (window);
  ck_assert_int_gt (em_paper_view_count (paper), 100);
  ck_assert_msg (longest_s < LONGEST_S * test_slowness (), "the window did not answer for %.2f s", longest_s);
  test_settle (100);
  gtk_window_destroy (GTK_WINDOW (window));
}
END_TEST

START_TEST (a_long_pdf_is_made_bit_by_bit)
{
  g_autoptr (EmApplication) application = test_application ();
  g_autoptr (EmDocument) document = very_long_quote (N_MANY);
  EmWindow *window = test_window (application, document);
  g_autofree char *folder = g_dir_make_tmp ("estimend-test-XXXXXX", NULL), *path = g_build_filename (folder, "q.pdf", NULL);
  double longest = 0;

  em_window_export_to (window, path);
  while (!has_said (window, "is written"))
    {
      double from = main_thread_s ();
      g_main_context_iteration (NULL, TRUE);
      longest = MAX (longest, main_thread_s () - from);
    }
  ck_assert_msg (longest < LONGEST_S * test_slowness (), "the window did not answer for %.2f s", longest);
  g_remove (path);
  g_rmdir (folder);
  gtk_window_destroy (GTK_WINDOW (window));
}
END_TEST

START_TEST (leaving_the_paper_stops_it)
{
  g_autoptr (EmApplication) application = test_application ();
  g_autoptr (EmDocument) document = very_long_quote (N_VERY_MANY);
  EmWindow *window = test_window (application, document);
  EmPaperView *paper = em_window_get_paper (window);

  test_act (window, "win.paper");
  test_settle (100);
  ck_assert (em_paper_view_is_busy (paper));
  test_act (window, "win.paper");
  test_settle (50);
  ck_assert (!em_paper_view_is_busy (paper));
  ck_assert_int_eq (em_paper_view_count (paper), 0);
  gtk_window_destroy (GTK_WINDOW (window));
}
END_TEST

TEST_MAIN ("pages", many_pages_are_shown_bit_by_bit, a_long_pdf_is_made_bit_by_bit, leaving_the_paper_stops_it, what_is_edited_meanwhile_is_not_in_it, it_can_be_stopped, a_folder_that_is_not_there_is_told)
