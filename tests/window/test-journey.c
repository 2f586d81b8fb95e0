/* test-journey: from a customer's notes to a priced PDF, once for each demo, in the real window.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-test-window.h"

#include "em-words.h"

#include <glib/gstdio.h>
#include <string.h>

static char *
text_of_pdf (const char *path)
{
  g_autofree char *program = g_find_program_in_path ("pdftotext");
  char *text = NULL;
  const char *argv[] = { "pdftotext", "-layout", path, "-", NULL };

  if (program == NULL)
    return NULL;
  ck_assert (g_spawn_sync (NULL, (char **) argv, NULL, G_SPAWN_SEARCH_PATH, NULL, NULL, &text, NULL, NULL, NULL));
  return text;
}

/* The invented customer's words, typed into an empty quote; the office adds what words can't tell. */
START_TEST (notes_become_a_priced_pdf)
{
  g_autoptr (EmApplication) application = test_application ();
  g_autoptr (EmDocument) demo = test_demo (em_demos[_i].id);
  g_autoptr (EmDocument) document = em_document_new (em_application_get_basis (application));
  EmWindow *window = test_window (application, document);
  const EmQuote *from = em_document_get_quote (demo);
  g_autofree char *folder = g_dir_make_tmp ("estimend-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (folder, "quote.pdf", NULL);

  ck_assert_ptr_nonnull (from->text[EM_QUOTE_NOTES]);
  em_document_set_units (document, from->units);
  gtk_text_buffer_set_text (em_words_pane_get_buffer (em_window_get_words (window)), from->text[EM_QUOTE_NOTES], -1);
  ck_assert_str_eq (em_document_get_quote (document)->text[EM_QUOTE_NOTES], from->text[EM_QUOTE_NOTES]);
  test_act (window, "win.read-notes");
  ck_assert_msg (em_document_get_quote (document)->n_features >= 2, "only %d features read", em_document_get_quote (document)->n_features);
  ck_assert_int_gt (em_document_get_quote (document)->n_marks, 0);
  em_document_set_text (document, EM_QUOTE_CUSTOMER, from->text[EM_QUOTE_CUSTOMER]);
  em_document_set_text (document, EM_QUOTE_NUMBER, "J-1");
  if (em_document_get_quote (document)->text[EM_QUOTE_BASE] == NULL)
    em_document_set_text (document, EM_QUOTE_BASE, from->text[EM_QUOTE_BASE]);
  em_document_set_text (document, EM_QUOTE_FILLER, from->text[EM_QUOTE_FILLER]);
  em_document_set_text (document, EM_QUOTE_MACHINE, from->text[EM_QUOTE_MACHINE]);
  ck_assert_int_gt (em_document_get_cost (document)->totals.total_minor, 0);
  test_settle (600);
  test_act (window, "win.paper");
  while (em_paper_view_is_busy (em_window_get_paper (window)))
    test_settle (10);
  ck_assert_int_ge (em_paper_view_count (em_window_get_paper (window)), 1);
  em_window_export_to (window, path);
  for (int i = 0; i < 1000 && (em_window_get_said (window) == NULL || strstr (em_window_get_said (window), "is written") == NULL); i++)
    test_settle (20);
  ck_assert_msg (em_window_get_said (window) != NULL && strstr (em_window_get_said (window), "is written") != NULL, "%s", em_window_get_said (window));

  g_autofree char *text = text_of_pdf (path);
  g_autofree char *total = em_words_money_bare (em_document_get_cost (document)->totals.total_minor, &em_document_get_rates (document)->currency);
  if (text != NULL)
    ck_assert_msg (strstr (text, total) != NULL, "the total %s stands nowhere in the PDF", total);
  test_act (window, "win.paper");
  while (em_document_can_undo (document))
    em_document_undo (document);
  ck_assert_int_eq (em_document_get_quote (document)->n_features, 0);
  gtk_window_destroy (GTK_WINDOW (window));
  g_remove (path);
  g_rmdir (folder);
}
END_TEST

int
main (void)
{
  TCase *tcase = tcase_create ("journey");

  tcase_add_loop_test (tcase, notes_become_a_priced_pdf, 0, em_n_demos);
  return test_run ("journey", tcase, 60);
}
