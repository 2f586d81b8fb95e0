/* test-customer: what the customer reads and signs: options, how sure, stated prices, words nobody expected; by pdftotext, pdfinfo.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-test-paper.h"

#include "../core/em-test-main.h"
#include "em-paper-job.h"
#include "em-test-tools.h"

#include <stdio.h>

static char *
read_back (EmSheet sheet, const EmTestPaper *paper, const char *tool, const char *option)
{
  g_autofree char *folder = em_test_folder ();
  g_autofree char *path = g_build_filename (folder, "sheet.pdf", NULL);
  const char *const text_argv[] = { tool, option, path, "-", NULL }, *const info_argv[] = { tool, option, path, NULL };
  g_autoptr (GError) error = NULL;
  int status;
  char *text;

  ck_assert_msg (em_paper_export (sheet, &paper->source, path, "2026-03-09", &error), "%s", error != NULL ? error->message : "");
  text = em_test_run (g_str_equal (tool, "pdftotext") ? text_argv : info_argv, &status);
  ck_assert_int_eq (status, 0);
  em_test_forget (g_steal_pointer (&folder));
  return text;
}

/* Three wires: the chosen one, one that is offered, one that is not. */
static void
add_compare (EmTestPaper *paper)
{
  static EmCompareRow rows[] = {
    { .filler = 0, .is_present = true, .net_minor = 10000, .total_minor = 11000 },
    { .filler = 1, .net_minor = 9950, .total_minor = 10945, .difference_minor = -50, .reasons = EM_REASON_BIT (EM_REASON_POLISHES) },
    { .filler = 2, .net_minor = 12345, .total_minor = 13580, .difference_minor = 2345 },
  };

  ck_assert_int_ge (paper->catalogue.n_fillers, 3);
  paper->compare = (EmCompare) { .n_rows = 3, .cap_rows = 3, .row = rows };
  paper->source.compare = &paper->compare;
}

START_TEST (test_only_named_wires_are_offered)
{
  EmTestPaper paper;

  em_test_paper_init (&paper, 1, "en", "a4");
  add_compare (&paper);
  g_autofree char *none = read_back (EM_SHEET_QUOTE, &paper, "pdftotext", "-layout");
  em_quote_set_text (&paper.quote, EM_QUOTE_OFFERS, paper.catalogue.filler[1].id);
  g_autofree char *one = read_back (EM_SHEET_QUOTE, &paper, "pdftotext", "-layout");
  paper.source.offers_all = TRUE;
  g_autofree char *all = read_back (EM_SHEET_QUOTE, &paper, "pdftotext", "-layout");

  ck_assert_ptr_null (strstr (none, "Options: other filler wires"));
  ck_assert_ptr_nonnull (strstr (one, "Options: other filler wires"));
  ck_assert_ptr_nonnull (strstr (one, "Tick what you choose."));
  ck_assert_ptr_nonnull (strstr (one, "\342\210\2220.50"));
  ck_assert_ptr_nonnull (strstr (one, "99.50"));
  ck_assert_ptr_null (strstr (one, "123.45"));
  ck_assert_ptr_nonnull (strstr (all, "+23.45"));
  em_test_paper_clear (&paper);
}
END_TEST

START_TEST (test_offers_are_added_and_taken_out)
{
  EmQuote quote;

  em_quote_init (&quote);
  g_autofree char *first = em_paper_with_offer (&quote, "er420", TRUE);
  em_quote_set_text (&quote, EM_QUOTE_OFFERS, first);
  g_autofree char *again = em_paper_with_offer (&quote, "er420", TRUE);
  g_autofree char *second = em_paper_with_offer (&quote, "h13", TRUE);
  em_quote_set_text (&quote, EM_QUOTE_OFFERS, second);
  g_autofree char *less = em_paper_with_offer (&quote, "er420", FALSE);

  ck_assert_str_eq (again, "er420");
  ck_assert_str_eq (second, "er420 h13");
  ck_assert_str_eq (less, "h13");
  ck_assert (em_paper_offers (&quote, "h13") && !em_paper_offers (&quote, "h1"));
  em_quote_set_text (&quote, EM_QUOTE_OFFERS, less);
  ck_assert_ptr_null (em_paper_with_offer (&quote, "h13", FALSE));
  em_quote_clear (&quote);
}
END_TEST

/* The rate book names a file beside itself; nobody's working folder matters. */
START_TEST (test_logo_lies_beside_the_rate_book)
{
  EmTestPaper paper;
  EmPaperJob job;
  EmFault fault;

  em_test_paper_init (&paper, 1, "en", "a4");
  em_rates_set_text (&paper.rates, EM_SHOP_LOGO, "logo.svg");
  em_paper_job_init (&job, &paper.quote, &paper.cost, &paper.rates, &paper.catalogue, "/etc/shop", FALSE, &fault);
  ck_assert_str_eq (job.source.logo_path, "/etc/shop/logo.svg");
  ck_assert_ptr_null (job.source.compare);
  em_paper_job_clear (&job);
  em_test_paper_clear (&paper);
}
END_TEST

/* An estimate has no more figures than three: 10,123.45 to 12,987.65 about 11,500 is said as 10,100 and 13,000. A range of
 * less than a hundredth of the price says nothing worth a heading. */
START_TEST (test_range_is_told_in_three_figures)
{
  EmTestPaper paper;

  em_test_paper_init (&paper, 1, "en", "a4");
  paper.range = (EmRange) { .has_range = true, .p10_minor = 1012345, .p50_minor = 1150000, .p90_minor = 1298765 };
  paper.source.range = &paper.range;
  g_autofree char *wide = read_back (EM_SHEET_QUOTE, &paper, "pdftotext", "-layout");
  paper.range.p10_minor = 1149000;
  paper.range.p90_minor = 1151000;
  g_autofree char *narrow = read_back (EM_SHEET_QUOTE, &paper, "pdftotext", "-layout");

  ck_assert_ptr_nonnull (strstr (wide, "so the price is an estimate"));
  ck_assert_ptr_nonnull (strstr (wide, "10,100 USD"));
  ck_assert_ptr_nonnull (strstr (wide, "13,000 USD"));
  ck_assert_ptr_nonnull (strstr (wide, "one time in ten"));
  ck_assert_ptr_null (strstr (wide, "12,987"));
  ck_assert_ptr_null (strstr (narrow, "How sure the price is"));
  em_test_paper_clear (&paper);
}
END_TEST

START_TEST (test_stated_price_is_told)
{
  EmTestPaper paper;

  em_test_paper_init (&paper, 2, "en", "a4");
  g_autofree char *calculated = read_back (EM_SHEET_QUOTE, &paper, "pdftotext", "-layout");
  paper.cost.line[1].is_override = true;
  g_autofree char *stated = read_back (EM_SHEET_QUOTE, &paper, "pdftotext", "-layout");

  ck_assert_ptr_null (strstr (calculated, "stated price"));
  ck_assert_ptr_nonnull (strstr (stated, "stated price"));
  em_test_paper_clear (&paper);
}
END_TEST

/* What is signed stands with the signatures: the number, the revision and the total once more. */
START_TEST (test_what_is_signed_is_named)
{
  EmTestPaper paper;

  em_test_paper_init (&paper, 3, "en", "a4");
  g_autofree char *text = read_back (EM_SHEET_QUOTE, &paper, "pdftotext", "-layout");

  ck_assert_ptr_nonnull (strstr (text, "Quote Q-1001 · B · Total with tax 463.01 USD"));
  ck_assert_ptr_nonnull (strstr (text, "Ordered as above, for Example"));
  em_test_paper_clear (&paper);
}
END_TEST

/* ISO 32000-1: a tagged document with tables and figures, links by address and by name. */
START_TEST (test_tagged_and_linked)
{
  EmTestPaper paper;

  em_test_paper_init (&paper, 3, "en", "a4");
  em_rates_set_text (&paper.rates, EM_SHOP_EMAIL, "office@shop.example");
  em_rates_set_text (&paper.rates, EM_SHOP_WEB, "www.shop.example/'); rm");
  g_autofree char *info = read_back (EM_SHEET_QUOTE, &paper, "pdfinfo", "-isodates");
  g_autofree char *structure = read_back (EM_SHEET_QUOTE, &paper, "pdfinfo", "-struct");
  g_autofree char *addresses = read_back (EM_SHEET_QUOTE, &paper, "pdfinfo", "-url");
  g_autofree char *places = read_back (EM_SHEET_BENCH, &paper, "pdfinfo", "-dests");

  ck_assert_ptr_nonnull (strstr (info, "Tagged:          yes"));
  ck_assert_ptr_nonnull (strstr (structure, "Table"));
  ck_assert_ptr_nonnull (strstr (structure, "Figure"));
  ck_assert_ptr_nonnull (strstr (structure, "H1"));
  ck_assert_ptr_nonnull (strstr (addresses, "mailto:office@shop.example"));
  ck_assert_ptr_null (strstr (addresses, "https:"));   /* no plain address: no link */
  ck_assert_ptr_nonnull (strstr (places, "stop-3"));
  ck_assert_ptr_null (strstr (places, "stop-4"));
  em_test_paper_clear (&paper);
}
END_TEST

/* Every word's box, by pdftotext -bbox, lies between the page's margins (18 mm at the sides, 10 mm kept above and below). */
static void
check_inside (const char *boxes, const char *what)
{
  g_auto (GStrv) lines = g_strsplit (boxes, "\n", -1);
  double width = 0, height = 0, x0, y0, x1, y1;
  int n = 0;

  for (int i = 0; lines[i] != NULL; i++)
    if (sscanf (lines[i], " <page width=\"%lf\" height=\"%lf\"", &width, &height) == 2)
      n++;
    else if (sscanf (lines[i], " <word xMin=\"%lf\" yMin=\"%lf\" xMax=\"%lf\" yMax=\"%lf\"", &x0, &y0, &x1, &y1) == 4)
      ck_assert_msg (x0 > 45 && x1 < width - 45 && y0 > 15 && y1 < height - 15, "%s, page %d: a word at %g, %g to %g, %g", what, n, x0, y0, x1, y1);
  ck_assert_int_gt (n, 0);
}

static char *
repeat (const char *unit, int times)
{
  GString *text = g_string_new (NULL);

  for (int i = 0; i < times; i++)
    g_string_append (text, unit);
  return g_string_free (text, FALSE);
}

/* Names of up to 5,000 characters, all other texts of a fifth of that. */
START_TEST (test_hostile_words_stay_on_the_page)
{
  static const struct { const char *name, *unit; int times; } rows[] = {
    { "without spaces", "W", 5000 }, { "with spaces", "Grundplatteneinsatz ", 250 },
    { "from right to left", "\330\264\330\261\331\203\330\251 \330\247\331\204\331\202\331\210\330\247\331\204\330\250 ", 120 },
    { "emoji", "\360\237\224\247\360\237\233\240 x", 300 }, { "control characters", "a\001b\033[31m\177\tc", 200 }, { "lines", "line\n", 400 },
    { "marks", "\342\200\256\342\200\213e\314\201\314\202\314\203", 60 },
  };

  for (gsize r = 0; r < G_N_ELEMENTS (rows); r++)
    {
      EmTestPaper paper;
      g_autofree char *text = repeat (rows[r].unit, rows[r].times / 5);
      g_autofree char *name = repeat (rows[r].unit, rows[r].times);

      em_test_paper_init (&paper, 2, "de", r % 2 == 0 ? "a4" : "letter");
      for (int i = 0; i < EM_N_QUOTE_TEXT; i++)
        if (i != EM_QUOTE_LANGUAGE && i != EM_QUOTE_PAPER && i != EM_QUOTE_DATE && i != EM_QUOTE_EXTRA)
          em_quote_set_text (&paper.quote, (EmQuoteText) i, i == EM_QUOTE_CUSTOMER ? name : text);
      for (int i = 0; i < EM_N_SHOP_TEXT; i++)
        if (i != EM_SHOP_LOGO && i != EM_SHOP_PAPER)
          em_rates_set_text (&paper.rates, (EmShopText) i, text);
      for (int i = 0; i < EM_N_FEATURE_TEXT; i++)
        em_feature_set_text (&paper.quote.feature[0], (EmFeatureText) i, i == EM_FEATURE_LABEL ? name : text);
      for (int sheet = EM_SHEET_QUOTE; sheet <= EM_SHEET_BENCH; sheet++)
        {
          g_autofree char *boxes = read_back ((EmSheet) sheet, &paper, "pdftotext", "-bbox");

          check_inside (boxes, rows[r].name);
        }
      em_test_paper_clear (&paper);
    }
}
END_TEST

START_TEST (test_two_hundred_without_names)
{
  EmTestPaper paper;

  em_test_paper_init (&paper, 200, "es", "letter");
  for (int32_t i = 0; i < 200; i++)
    em_feature_set_text (&paper.quote.feature[i], EM_FEATURE_LABEL, NULL);
  g_autofree char *quote = read_back (EM_SHEET_QUOTE, &paper, "pdftotext", "-bbox");
  g_autofree char *bench = read_back (EM_SHEET_BENCH, &paper, "pdftotext", "-bbox");

  check_inside (quote, "quote");
  check_inside (bench, "bench");
  em_test_paper_clear (&paper);
}
END_TEST

int
main (void)
{
  const TTest *const tests[] = {
    test_only_named_wires_are_offered, test_offers_are_added_and_taken_out, test_logo_lies_beside_the_rate_book, test_range_is_told_in_three_figures, test_stated_price_is_told,
    test_what_is_signed_is_named, test_tagged_and_linked, test_hostile_words_stay_on_the_page, test_two_hundred_without_names,
  };

  em_test_need ("pdftotext");
  em_test_need ("pdfinfo");
  return em_test_main ("customer", tests, (int) G_N_ELEMENTS (tests));
}
