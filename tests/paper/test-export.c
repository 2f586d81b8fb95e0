/* test-export: bytes that do not change, files that stay whole, data for others.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-test-paper.h"

#include "em-pdf.h"

#include "../core/em-test-main.h"
#include "em-test-tools.h"

START_TEST (test_same_input_same_bytes)
{
  EmTestPaper paper;

  em_test_paper_init (&paper, 5, "en", "a4");
  for (int sheet = EM_SHEET_QUOTE; sheet <= EM_SHEET_BENCH; sheet++)
    {
      g_autoptr (GBytes) first = em_paper_to_pdf ((EmSheet) sheet, &paper.source, "2026-03-09", NULL);
      g_autoptr (GBytes) second = em_paper_to_pdf ((EmSheet) sheet, &paper.source, "2026-03-09", NULL);
      g_autoptr (GBytes) later = em_paper_to_pdf ((EmSheet) sheet, &paper.source, "2026-03-10", NULL);

      ck_assert_ptr_nonnull (first);
      ck_assert (g_bytes_equal (first, second));
      ck_assert (!g_bytes_equal (first, later));
    }
  em_test_paper_clear (&paper);
}
END_TEST

/* The quote's language is put back, whatever it was. */
START_TEST (test_language_is_put_back)
{
  EmTestPaper paper;

  em_test_paper_init (&paper, 1, "fr", "a4");
  em_words_push ("de");
  g_autoptr (GBytes) bytes = em_paper_to_pdf (EM_SHEET_QUOTE, &paper.source, "2026-03-09", NULL);

  ck_assert_ptr_nonnull (bytes);
  ck_assert_str_eq (em_words_language (), "de");
  em_words_pop ();
  em_test_paper_clear (&paper);
}
END_TEST

START_TEST (test_failed_write_leaves_the_old_file)
{
  EmTestPaper paper;
  g_autofree char *folder = em_test_folder ();
  g_autofree char *path = g_build_filename (folder, "old.pdf", NULL);
  g_autofree char *nowhere = g_build_filename (folder, "missing", "new.pdf", NULL);
  g_autofree char *kept = NULL;
  g_autoptr (GError) error = NULL;

  em_test_paper_init (&paper, 1, "en", "a4");
  ck_assert (g_file_set_contents (path, "old", -1, NULL));
  paper.source.logo_path = nowhere;
  ck_assert (!em_paper_export (EM_SHEET_QUOTE, &paper.source, path, "2026-03-09", &error));
  ck_assert (g_error_matches (error, EM_PAPER_ERROR, EM_PAPER_ERROR_LOGO));
  ck_assert_ptr_nonnull (strstr (error->message, nowhere));
  ck_assert (g_file_get_contents (path, &kept, NULL, NULL));
  ck_assert_str_eq (kept, "old");
  g_clear_error (&error);
  paper.source.logo_path = NULL;
  ck_assert (!em_paper_export (EM_SHEET_QUOTE, &paper.source, nowhere, "2026-03-09", &error));
  ck_assert (g_error_matches (error, EM_PAPER_ERROR, EM_PAPER_ERROR_WRITE));
  em_test_paper_clear (&paper);
  em_test_forget (g_steal_pointer (&folder));
}
END_TEST

START_TEST (test_nothing_to_print_is_said)
{
  EmTestPaper paper;
  g_autoptr (GError) error = NULL;

  em_test_paper_init (&paper, 0, "en", "a4");
  ck_assert_ptr_null (em_pages_new (EM_SHEET_QUOTE, &paper.source, 595, 842, &error));
  ck_assert (g_error_matches (error, EM_PAPER_ERROR, EM_PAPER_ERROR_EMPTY));
  g_clear_error (&error);
  ck_assert_ptr_null (em_pages_new (EM_SHEET_BENCH, &paper.source, 595, 842, &error));
  ck_assert (g_error_matches (error, EM_PAPER_ERROR, EM_PAPER_ERROR_EMPTY));
  em_test_paper_clear (&paper);

  /* A feature that the costing does not know yet. */
  g_clear_error (&error);
  em_test_paper_init (&paper, 2, "en", "a4");
  em_test_add_ledge (&paper.quote, 5, 1, 1, NULL);
  ck_assert_ptr_null (em_pages_new (EM_SHEET_QUOTE, &paper.source, 595, 842, &error));
  ck_assert (g_error_matches (error, EM_PAPER_ERROR, EM_PAPER_ERROR_EMPTY));
  em_test_paper_clear (&paper);
}
END_TEST

/* Texts without end and without spaces do not hang or lose the page. */
START_TEST (test_long_words_go_on)
{
  EmTestPaper paper;
  g_autofree char *word = g_strnfill (6000, 'W');
  EmPages *pages;

  em_test_paper_init (&paper, 2, "de", "a4");
  em_feature_set_text (&paper.quote.feature[0], EM_FEATURE_LABEL, word);
  em_quote_set_text (&paper.quote, EM_QUOTE_TERMS, word);
  em_quote_set_text (&paper.quote, EM_QUOTE_TOOL, "Werkzeugformeneinsatzwechselplattenhalterung");
  pages = em_pages_new (EM_SHEET_QUOTE, &paper.source, 595, 842, NULL);
  ck_assert_ptr_nonnull (pages);
  ck_assert_int_gt (em_pages_count (pages), 3);
  em_pages_free (pages);
  em_test_paper_clear (&paper);
}
END_TEST

/* A little at a time is as good as at once, and says how far it is: nothing before, all behind, never less than before. */
static void
check_bit_by_bit (EmSheet sheet)
{
  EmTestPaper paper;
  EmPages *pages, *at_once;
  double share = 0;
  int n_steps = 0;

  em_test_paper_init (&paper, 60, NULL, "a4");
  pages = em_pages_begin (sheet, &paper.source, 595, 842, NULL);
  at_once = em_pages_new (sheet, &paper.source, 595, 842, NULL);
  ck_assert (pages != NULL && at_once != NULL);
  ck_assert_int_eq (em_pages_count (pages), 0);
  ck_assert (em_pages_get_share (pages) == 0);
  while (em_pages_lay_out (pages))
    {
      ck_assert (em_pages_get_share (pages) >= share && em_pages_get_share (pages) < 1);
      ck_assert_int_eq (em_pages_count (pages), 0);
      share = em_pages_get_share (pages);
      n_steps++;
    }
  ck_assert_int_gt (n_steps, 5);
  ck_assert (share > 0.5);
  ck_assert (em_pages_get_share (pages) == 1);
  ck_assert_int_eq (em_pages_count (pages), em_pages_count (at_once));
  ck_assert (!em_pages_lay_out (pages));
  em_pages_free (pages);
  em_pages_free (at_once);
  em_test_paper_clear (&paper);
}

START_TEST (test_layout_goes_on_bit_by_bit)
{
  check_bit_by_bit (EM_SHEET_QUOTE);
  check_bit_by_bit (EM_SHEET_BENCH);
}
END_TEST

/* Stopped in the middle of it nothing is left behind, as the leak checkers see. */
START_TEST (test_layout_can_be_left)
{
  EmTestPaper paper;
  EmPdf *pdf;

  em_test_paper_init (&paper, 60, "de", "a4");
  pdf = em_pdf_new (EM_SHEET_QUOTE, &paper.source, "2026-01-01", NULL);
  ck_assert_ptr_nonnull (pdf);
  for (int i = 0; i < 3; i++)
    ck_assert (em_pdf_lay_out (pdf));
  em_pdf_free (pdf);
  em_test_paper_clear (&paper);
}
END_TEST

/* RFC 4180, section 2: records end in CRLF; a field with comma, quote or line end is quoted, its quotes doubled.
 * Each record read here by those rules must have as many fields as the heading. */
static int
count_fields (const char **at)
{
  int n = 1;
  gboolean is_quoted = FALSE;

  for (; **at != '\0'; (*at)++)
    if (**at == '"')
      is_quoted = !is_quoted;
    else if (**at == ',' && !is_quoted)
      n++;
    else if (**at == '\r' && !is_quoted)
      {
        ck_assert_int_eq ((*at)[1], '\n');
        *at += 2;
        return n;
      }
  ck_abort_msg ("a record without CRLF");
}

START_TEST (test_lines_as_csv)
{
  EmTestPaper paper;
  int n_records = 0;

  em_test_paper_init (&paper, 2, "de", "a4");
  em_feature_set_text (&paper.quote.feature[0], EM_FEATURE_LABEL, "gate, \"upper\"\r\nleft");
  g_autofree char *csv = em_paper_lines_csv (&paper.source);
  const char *at = csv;

  for (; *at != '\0'; n_records++)
    ck_assert_int_eq (count_fields (&at), 6);
  /* heading, 2 features, set-up, order, tax, net, tax sum, total */
  ck_assert_int_eq (n_records, 9);
  ck_assert_ptr_nonnull (strstr (csv, "(gate, \"\"upper\"\"\r\nleft)\",1,100.01,USD\r\n"));
  /* 100.01 + 107.14 + 84.00 + 15.50 = 306.65; tax 30.665 → 30.67; 337.32 */
  ck_assert_ptr_nonnull (strstr (csv, ",net,,1,306.65,USD\r\n"));
  ck_assert_ptr_nonnull (strstr (csv, ",total,,1,337.32,USD\r\n"));
  em_test_paper_clear (&paper);
}
END_TEST

START_TEST (test_comparison_as_csv)
{
  EmTestPaper paper;
  EmCompareRow rows[] = {
    { .filler = 0, .is_present = true, .net_minor = 10000, .total_minor = 11000 },
    { .filler = 1, .net_minor = 9950, .total_minor = 10945, .difference_minor = -50, .reasons = EM_REASON_BIT (EM_REASON_POLISHES) },
  };
  int n_records = 0;

  em_test_paper_init (&paper, 1, "en", "a4");
  paper.compare = (EmCompare) { .n_rows = 2, .cap_rows = 2, .row = rows };
  paper.source.compare = &paper.compare;
  g_autofree char *csv = em_paper_compare_csv (&paper.source);
  const char *at = csv;

  for (; *at != '\0'; n_records++)
    ck_assert_int_eq (count_fields (&at), 17);
  ck_assert_int_eq (n_records, 3);
  ck_assert_ptr_nonnull (strstr (csv, "\r\n2,er420,er420,suited,99.50,109.45,-0.50,0.00,USD,"));
  em_test_paper_clear (&paper);
}
END_TEST

EM_TEST_MAIN ("export", test_same_input_same_bytes, test_language_is_put_back, test_failed_write_leaves_the_old_file, test_nothing_to_print_is_said,
              test_long_words_go_on, test_layout_goes_on_bit_by_bit, test_layout_can_be_left, test_lines_as_csv, test_comparison_as_csv)
