/* test-pdf: sheets read back by tools that know nothing of us: pdftotext, pdfinfo, pdffonts, pdfimages (poppler) and qpdf.
 *
 * Amounts are the fixture's: feature i 100.01 + 7.13·i, set-up 84.00, order 15.50, tax 10 %.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-test-paper.h"

#include "../core/em-test-main.h"
#include "em-test-tools.h"

#include <gdk-pixbuf/gdk-pixbuf.h>
#include <stdio.h>

#define DATE "2026-03-09"

static char *
export_sheet (EmSheet sheet, const EmTestPaper *paper, const char *folder, const char *name)
{
  char *path = g_build_filename (folder, name, NULL);
  g_autoptr (GError) error = NULL;

  ck_assert_msg (em_paper_export (sheet, &paper->source, path, DATE, &error), "%s", error != NULL ? error->message : "");
  return path;
}

static char *
read_text (const char *path)
{
  const char *const argv[] = { "pdftotext", "-layout", path, "-", NULL };
  int status;
  char *text = em_test_run (argv, &status);

  ck_assert_int_eq (status, 0);
  return text;
}

static int
read_pages (const char *path)
{
  const char *const argv[] = { "pdfinfo", path, NULL };
  int status;
  g_autofree char *text = em_test_run (argv, &status);
  const char *at = strstr (text, "Pages:");

  ck_assert_int_eq (status, 0);
  ck_assert_ptr_nonnull (at);
  return atoi (at + strlen ("Pages:"));
}

/* The amount a line of text ends with, in cents; G_MININT64 when it ends otherwise. */
static int64_t
last_amount (const char *line, char decimal_mark, char group_mark)
{
  g_autofree char *trimmed = g_strchomp (g_strdup (line));
  const char *space = strrchr (trimmed, ' ');
  const char *word = space != NULL ? space + 1 : trimmed;
  gsize length = strlen (word);
  int64_t value = 0;

  if (length < 4 || word[length - 3] != decimal_mark)
    return G_MININT64;
  for (const char *c = word; *c != '\0'; c++)
    if (g_ascii_isdigit (*c))
      value = 10 * value + (*c - '0');
    else if (*c != decimal_mark && *c != group_mark)
      return G_MININT64;
  return value;
}

/* What the text of a quote adds up to, line by line. */
typedef struct
{
  int64_t sum, net, tax, total;
  int     n_lines, n_carried, n_brought;
} Sums;

static void
add_text_line (Sums *sums, const char *line)
{
  int64_t amount = last_amount (line, '.', ',');

  if (amount == G_MININT64)
    return;
  if (strstr (line, "Carried forward") != NULL)
    {
      ck_assert_int_eq (amount, sums->sum);
      sums->n_carried++;
    }
  else if (strstr (line, "Brought forward") != NULL)
    {
      ck_assert_int_eq (amount, sums->sum);
      sums->n_brought++;
    }
  else if (strstr (line, "Net ") != NULL)
    sums->net = amount;
  else if (strstr (line, "Sales tax") != NULL)
    sums->tax = amount;
  else if (strstr (line, "Total, USD") != NULL)
    sums->total = amount;
  else
    {
      sums->sum += amount;
      sums->n_lines++;
    }
}

static Sums
add_up (const char *text)
{
  g_auto (GStrv) lines = g_strsplit (text, "\n", -1);
  Sums sums = { 0 };

  for (int i = 0; lines[i] != NULL; i++)
    add_text_line (&sums, lines[i]);
  return sums;
}

/* 3 features: 100.01 + 107.14 + 114.27 = 321.42; + 84.00 + 15.50 = 420.92; tax 42.092 → 42.09; total 463.01. */
START_TEST (test_short_quote_adds_up)
{
  EmTestPaper paper;
  g_autofree char *folder = em_test_folder ();

  em_test_paper_init (&paper, 3, "en", "a4");
  g_autofree char *path = export_sheet (EM_SHEET_QUOTE, &paper, folder, "short.pdf");
  g_autofree char *text = read_text (path);
  Sums sums = add_up (text);

  ck_assert_int_eq (sums.n_lines, 5);
  ck_assert_int_eq (sums.sum, 42092);
  ck_assert_int_eq (sums.net, 42092);
  ck_assert_int_eq (sums.tax, 4209);
  ck_assert_int_eq (sums.total, 46301);
  em_test_paper_clear (&paper);
  em_test_forget (g_steal_pointer (&folder));
}
END_TEST

/* In cents, 900 features: 900·10001 + 713·(900·899/2) = 9,000,900 + 713·404,550 = 9,000,900 + 288,444,150 = 297,445,050;
 * + 8400 + 1550 = 297,455,000; tax exactly a tenth, 29,745,500; total 327,200,500. */
START_TEST (test_hundred_pages_add_up)
{
  EmTestPaper paper;
  g_autofree char *folder = em_test_folder ();

  em_test_paper_init (&paper, 900, "en", "a4");
  g_autofree char *path = export_sheet (EM_SHEET_QUOTE, &paper, folder, "long.pdf");
  g_autofree char *text = read_text (path);
  Sums sums = add_up (text);
  int n_pages = read_pages (path);

  ck_assert_int_ge (n_pages, 100);
  ck_assert_int_eq (sums.n_lines, 902);
  ck_assert_int_eq (sums.sum, 297455000);
  ck_assert_int_eq (sums.net, 297455000);
  ck_assert_int_eq (sums.tax, 29745500);
  ck_assert_int_eq (sums.total, 327200500);
  ck_assert_int_ge (sums.n_carried, 98);
  ck_assert_int_eq (sums.n_carried, sums.n_brought);
  em_test_paper_clear (&paper);
  em_test_forget (g_steal_pointer (&folder));
}
END_TEST

/* Every page says which it is of how many, and a page the table runs on to has its heading again. */
START_TEST (test_pages_are_numbered_and_headed)
{
  EmTestPaper paper;
  g_autofree char *folder = em_test_folder ();

  em_test_paper_init (&paper, 40, "en", "letter");
  g_autofree char *path = export_sheet (EM_SHEET_QUOTE, &paper, folder, "heads.pdf");
  g_autofree char *text = read_text (path);
  g_auto (GStrv) pages = g_strsplit (text, "\f", -1);
  int n_pages = read_pages (path);

  ck_assert_int_gt (n_pages, 3);
  for (int i = 0; i < n_pages; i++)
    {
      g_autofree char *number = g_strdup_printf ("Page %d of %d", i + 1, n_pages);

      ck_assert_msg (strstr (pages[i], number) != NULL, "page %d has no “%s”", i + 1, number);
      if (strstr (pages[i], "· Ledge ") != NULL && strstr (pages[i], "Carried forward") != NULL)
        ck_assert_msg (strstr (pages[i], "Amount, USD") != NULL, "page %d has no heading", i + 1);
    }
  em_test_paper_clear (&paper);
  em_test_forget (g_steal_pointer (&folder));
}
END_TEST

/* ISO 216: A4 is 210 × 297 mm = 595.276 × 841.890 pt; letter 8.5 × 11 in = 612 × 792 pt. */
START_TEST (test_paper_sizes)
{
  static const struct { const char *paper, *size; } rows[] = { { "a4", "595.276 x 841.89 pts (A4)" }, { "letter", "612 x 792 pts (letter)" } };
  g_autofree char *folder = em_test_folder ();

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      EmTestPaper paper;

      em_test_paper_init (&paper, 2, "en", rows[i].paper);
      g_autofree char *path = export_sheet (EM_SHEET_QUOTE, &paper, folder, rows[i].paper);
      const char *const argv[] = { "pdfinfo", path, NULL };
      int status;
      g_autofree char *text = em_test_run (argv, &status);

      ck_assert_msg (strstr (text, rows[i].size) != NULL, "%s: %s", rows[i].paper, text);
      ck_assert_ptr_nonnull (strstr (text, "Quote Q-1001 – Lower cavity"));
      em_test_paper_clear (&paper);
    }
  em_test_forget (g_steal_pointer (&folder));
}
END_TEST

/* pdffonts: name, type, encoding, emb, sub, uni, object; "emb" must be yes and "uni" too, or the text is not searchable. */
START_TEST (test_fonts_are_embedded)
{
  EmTestPaper paper;
  g_autofree char *folder = em_test_folder ();

  em_test_paper_init (&paper, 3, "fr", "a4");
  for (int sheet = EM_SHEET_QUOTE; sheet <= EM_SHEET_BENCH; sheet++)
    {
      g_autofree char *path = export_sheet ((EmSheet) sheet, &paper, folder, sheet == EM_SHEET_QUOTE ? "q.pdf" : "b.pdf");
      const char *const argv[] = { "pdffonts", path, NULL };
      int status, n_fonts = 0;
      g_autofree char *text = em_test_run (argv, &status);
      g_auto (GStrv) lines = g_strsplit (g_strchomp (text), "\n", -1);

      for (int i = 2; lines[i] != NULL; i++, n_fonts++)
        ck_assert_msg (strstr (lines[i], " yes yes yes ") != NULL, "%s", lines[i]);
      ck_assert_int_ge (n_fonts, 2);
    }
  em_test_paper_clear (&paper);
  em_test_forget (g_steal_pointer (&folder));
}
END_TEST

START_TEST (test_structure_is_valid)
{
  EmTestPaper paper;
  g_autofree char *folder = em_test_folder ();

  em_test_paper_init (&paper, 12, "en", "a4");
  for (int sheet = EM_SHEET_QUOTE; sheet <= EM_SHEET_BENCH; sheet++)
    {
      g_autofree char *path = export_sheet ((EmSheet) sheet, &paper, folder, "s.pdf");
      const char *const check[] = { "qpdf", "--check", path, NULL };
      const char *const outline[] = { "qpdf", "--json", "--json-key=outlines", path, NULL };
      int status;
      g_autofree char *checked = em_test_run (check, &status);

      ck_assert_msg (status == 0, "%s", checked);
      g_autofree char *entries = em_test_run (outline, &status);

      ck_assert_int_eq (status, 0);
      ck_assert_ptr_nonnull (strstr (entries, sheet == EM_SHEET_QUOTE ? "Work and price" : "Order of work"));
      ck_assert_ptr_nonnull (strstr (entries, "1 \\u00b7 Ledge") != NULL ? entries : strstr (entries, "1 · Ledge"));
    }
  em_test_paper_clear (&paper);
  em_test_forget (g_steal_pointer (&folder));
}
END_TEST

/* The bench works to sizes and settings: no currency, no amount, no hourly rate. */
START_TEST (test_bench_has_no_prices)
{
  EmTestPaper paper;
  g_autofree char *folder = em_test_folder ();

  em_test_paper_init (&paper, 6, "en", "a4");
  g_autofree char *path = export_sheet (EM_SHEET_BENCH, &paper, folder, "bench.pdf");
  g_autofree char *text = read_text (path);

  ck_assert_ptr_null (strstr (text, "USD"));
  for (int32_t i = 0; i < 6; i++)
    {
      g_autofree char *amount = em_words_money_bare (em_test_amount (i), &paper.rates.currency);

      ck_assert_msg (strstr (text, amount) == NULL, "%s", amount);
    }
  ck_assert_ptr_nonnull (strstr (text, "dye penetrant"));
  ck_assert_ptr_nonnull (strstr (text, "290 °C"));
  ck_assert_ptr_nonnull (strstr (text, "2.5 mm/s"));
  em_test_paper_clear (&paper);
  em_test_forget (g_steal_pointer (&folder));
}
END_TEST

/* Stops on a page of the bench sheet, each with its beginning and its end there; −1 when one is cut. */
static int
whole_stops (const char *page)
{
  int n = 0;

  for (const char *at = page; ; n++)
    {
      const char *begin = strstr (at, "Starting values  "), *end = strstr (at, "Done by, date");

      if (begin == NULL && end == NULL)
        return n;
      if (begin == NULL || end == NULL || end < begin)
        return -1;
      at = end + 1;
      begin = strstr (begin + 1, "Starting values  ");
      if (begin != NULL && begin < end)
        return -1;
    }
}

/* Who works at a stop has all of it on one page, and two stops share a page: 8 of them on a first page or two of preparations
 * and four more. */
START_TEST (test_stops_share_pages_whole)
{
  static const char *const sizes[] = { "a4", "letter" };
  g_autofree char *folder = em_test_folder ();

  for (gsize s = 0; s < G_N_ELEMENTS (sizes); s++)
    {
      EmTestPaper paper;

      em_test_paper_init (&paper, 8, "en", sizes[s]);
      g_autofree char *path = export_sheet (EM_SHEET_BENCH, &paper, folder, sizes[s]);
      g_autofree char *text = read_text (path);
      g_auto (GStrv) pages = g_strsplit (text, "\f", -1);
      int n_stops = 0;

      ck_assert_int_le (read_pages (path), 6);
      for (int i = 0; pages[i] != NULL; i++)
        {
          ck_assert_msg (whole_stops (pages[i]) >= 0, "%s: a stop is cut on page %d", sizes[s], i + 1);
          n_stops += whole_stops (pages[i]);
        }
      ck_assert_int_eq (n_stops, 8);
      em_test_paper_clear (&paper);
    }
  em_test_forget (g_steal_pointer (&folder));
}
END_TEST

/* The customer's paper says so when the reader settled an unclear size. */
START_TEST (test_assumptions_are_printed)
{
  EmTestPaper paper;
  g_autofree char *folder = em_test_folder ();

  em_test_paper_init (&paper, 2, "en", "a4");
  em_feature_set_text (&paper.quote.feature[1], EM_FEATURE_ASSUMPTION, "the small nick is taken as drawn");
  paper.quote.feature[0].origin[1] = EM_ORIGIN_INFERRED;
  g_autofree char *path = export_sheet (EM_SHEET_QUOTE, &paper, folder, "assume.pdf");
  g_autofree char *text = read_text (path);

  ck_assert_ptr_nonnull (strstr (text, "the small nick is taken as drawn"));
  ck_assert_ptr_nonnull (strstr (text, "“Thickness” is taken to be 0.6 mm"));
  em_test_paper_clear (&paper);
  em_test_forget (g_steal_pointer (&folder));
}
END_TEST

/* What the customer forbids stands on the bench sheet word for word, what is open on the quote. */
START_TEST (test_marked_words_are_printed)
{
  EmTestPaper paper;
  g_autofree char *folder = em_test_folder ();
  EmMark refused = { .start = 0, .length = 22, .state = EM_MARK_GENERAL, .field = em_text_dup ("refuse") };
  EmMark open = { .start = 24, .length = 9, .state = EM_MARK_QUESTION };

  em_test_paper_init (&paper, 1, "en", "a4");
  em_quote_set_text (&paper.quote, EM_QUOTE_NOTES, "no weld on the texture, .5 or so?");
  ck_assert_int_eq (em_quote_add_mark_take (&paper.quote, &refused), EM_OK);
  ck_assert_int_eq (em_quote_add_mark_take (&paper.quote, &open), EM_OK);
  g_autofree char *bench = export_sheet (EM_SHEET_BENCH, &paper, folder, "bench.pdf");
  g_autofree char *quote = export_sheet (EM_SHEET_QUOTE, &paper, folder, "quote.pdf");
  g_autofree char *on_bench = read_text (bench);
  g_autofree char *on_quote = read_text (quote);

  ck_assert_ptr_nonnull (strstr (on_bench, "Do not weld: “no weld on the texture”"));
  ck_assert_ptr_nonnull (strstr (on_quote, "“.5 or so?” in your notes"));
  em_test_paper_clear (&paper);
  em_test_forget (g_steal_pointer (&folder));
}
END_TEST

/* A logo of 40 × 20 pixels comes out as one picture twice as wide as high. pdfimages: page, num, type, width, height … */
START_TEST (test_logo_is_on_the_page)
{
  EmTestPaper paper;
  g_autofree char *folder = em_test_folder ();
  g_autofree char *logo = g_build_filename (folder, "logo.png", NULL);
  g_autoptr (GdkPixbuf) pixbuf = gdk_pixbuf_new (GDK_COLORSPACE_RGB, TRUE, 8, 40, 20);
  int status, width = 0, height = 0;

  gdk_pixbuf_fill (pixbuf, 0x8f4b12ff);
  ck_assert (gdk_pixbuf_save (pixbuf, logo, "png", NULL, NULL));
  em_test_paper_init (&paper, 1, "en", "a4");
  paper.source.logo_path = logo;
  g_autofree char *path = export_sheet (EM_SHEET_QUOTE, &paper, folder, "logo.pdf");
  const char *const argv[] = { "pdfimages", "-list", path, NULL };
  g_autofree char *list = em_test_run (argv, &status);
  const char *row = strstr (list, "image ");

  ck_assert_ptr_nonnull (row);
  ck_assert_int_eq (sscanf (row, "image %d %d", &width, &height), 2);
  ck_assert_int_eq (width, 2 * height);
  em_test_paper_clear (&paper);
  em_test_forget (g_steal_pointer (&folder));
}
END_TEST

/* German figures need no German locale: 1.234,56 (DIN 5008), and the customer's date 09.03.2026. */
START_TEST (test_figures_follow_the_papers_language)
{
  EmTestPaper paper;
  g_autofree char *folder = em_test_folder ();

  em_test_paper_init (&paper, 12, "de", "a4");
  g_autofree char *path = export_sheet (EM_SHEET_QUOTE, &paper, folder, "de.pdf");
  g_autofree char *text = read_text (path);

  /* 12·100.01 + 7.13·66 + 99.50 = 1200.12 + 470.58 + 99.50 = 1770.20 */
  ck_assert_ptr_nonnull (strstr (text, "1.770,20"));
  ck_assert_ptr_nonnull (strstr (text, "09.03.2026"));
  em_test_paper_clear (&paper);
  em_test_forget (g_steal_pointer (&folder));
}
END_TEST

int
main (void)
{
  static const char *const tools[] = { "pdftotext", "pdfinfo", "pdffonts", "pdfimages", "qpdf" };
  const TTest *const tests[] = {
    test_short_quote_adds_up, test_hundred_pages_add_up, test_pages_are_numbered_and_headed, test_paper_sizes, test_fonts_are_embedded,
    test_structure_is_valid, test_bench_has_no_prices, test_stops_share_pages_whole, test_assumptions_are_printed, test_marked_words_are_printed, test_logo_is_on_the_page, test_figures_follow_the_papers_language,
  };

  for (gsize i = 0; i < G_N_ELEMENTS (tools); i++)
    em_test_need (tools[i]);
  return em_test_main ("pdf", tests, (int) G_N_ELEMENTS (tests));
}
