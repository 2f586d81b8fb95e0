/* test-frozen: files of version 1.0 as they were on the day of its format; they have to open for ever.
 *
 * The files in frozen/ are never written again. What is expected was read off them by eye.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-book-file.h"
#include "em-recovery.h"
#include "em-test-file.h"

static char *
frozen_path (const char *name)
{
  return g_build_filename (g_getenv ("ESTIMEND_TEST_SOURCE"), "tests", "file", "frozen", name, NULL);
}

/* A file that is written anew is frozen no more. */
static const struct { const char *name, *sha256; } sums[] =
{
  { "by-hand-1.0.estimend", "45454259b4e1f513f72cf47c2865cb69e5f04d3dd413dd5efac2871e7c8a1881" },
  { "journal-1.0.journal", "b8f074ab0005eccfcc90af7e0d0ae4e923750a9d65ef0348c826d58da70dc6ae" },
  { "metals-1.0.xml", "6a917dc200f1c37523f9987e282e3767b9ca1fca55e6e0d266821d933e6a104f" },
  { "quote-1.0.estimend", "188e71e34ff8c403d2c9033b6e0c577f78b169dc9d350acfd6dc03fa8a58bf35" },
  { "rates-1.0.xml", "c2dd3615befa374f443f4eee69620228a1fde4594edd272076ce505e1163fab4" },
};

START_TEST (unchanged)
{
  g_autofree char *path = frozen_path (sums[_i].name), *content = NULL, *sum = NULL;
  gsize size;

  ck_assert (g_file_get_contents (path, &content, &size, NULL));
  sum = g_compute_checksum_for_data (G_CHECKSUM_SHA256, (const guchar *) content, size);
  ck_assert_msg (strcmp (sum, sums[_i].sha256) == 0, "%s was changed", sums[_i].name);
}
END_TEST

static void
load_quote (EmQuoteFile *out_file)
{
  g_autofree char *path = frozen_path ("quote-1.0.estimend");
  g_autoptr (GError) error = NULL;
  gboolean is_good = em_quote_file_load (path, out_file, &error);

  ck_assert_msg (is_good, "%s", error != NULL ? error->message : "");
}

START_TEST (quote)
{
  EmQuoteFile file;

  load_quote (&file);
  const EmQuote *q = &file.quote;
  ck_assert_str_eq (q->text[EM_QUOTE_NUMBER], "number & <0> 'ä€😀'\r\nsecond line ");
  ck_assert_str_eq (q->text[EM_QUOTE_REVISES], "revises & <24> 'ä€😀'\r\nsecond line ");
  ck_assert (q->units == EM_UNITS_INCH && q->state == EM_STATE_LAPSED && q->finish == EM_FINISH_SHOP);
  ck_assert (q->hardness_hrc == 1.0 / 3.0 && q->section_mm == 25.4 && q->has_preheat && q->preheat == EM_NO);
  ck_assert (q->n_tools == 4 && q->learning_ppm == 900000 && q->margin_ppm == 0 && q->contingency_ppm == 123456);
  ck_assert (q->rush_ppm == 350001 && q->discount_ppm == 1 && q->validity_days == 0 && q->next_id == 12);
  ck_assert (q->n_breaks == 6 && q->break_tools[0] == 5 && q->break_tools[5] == 30);
  ck_assert (q->n_extras == 3 && q->extra[0].label == NULL && q->extra[1].cost_minor == INT64_C (4611686018427387903));
  ck_assert (q->extra[1].is_per_tool && !q->extra[2].is_per_tool);
  ck_assert (q->n_marks == 3 && q->mark[2].start == 2 && q->mark[2].length == 2 && q->mark[2].feature_id == 2);
  ck_assert_str_eq (q->mark[1].field, "length");
  ck_assert_str_eq (q->mark[2].reason, "typ");
  em_quote_file_clear (&file);
}
END_TEST

START_TEST (features)
{
  static const struct { uint32_t id; const char *kind; } kinds[] =
  {
    { 10, "recess" }, { 9, "dam" }, { 8, "pin" }, { 7, "seat" }, { 6, "bore" }, { 5, "rib" }, { 4, "face" }, { 3, "sidewall" },
    { 2, "worn-corner" }, { 1, "edge-nick" },
  };
  EmQuoteFile file;

  load_quote (&file);
  ck_assert_int_eq (file.quote.n_features, (int) G_N_ELEMENTS (kinds));
  for (gsize i = 0; i < G_N_ELEMENTS (kinds); i++)
    {
      ck_assert_uint_eq (file.quote.feature[i].id, kinds[i].id);
      ck_assert_str_eq (file.quote.feature[i].kind->id, kinds[i].kind);
    }
  const EmFeature *recess = &file.quote.feature[0];
  ck_assert (recess->count == 11 && recess->stock_mm == 9.1 && recess->near == EM_NEAR_THREAD && recess->setting == 9);
  ck_assert (recess->slot_width_mm == 1.0 / 3.0 && recess->slot_depth_mm == 1e-6 && recess->safety_layers == 3);
  ck_assert (recess->melt_out == EM_AUTO && recess->cap == EM_YES && recess->wire_mm == 0.254);
  ck_assert (recess->has_override && recess->override_minor == INT64_C (9000000000063));
  ck_assert (recess->actual.arc_on_s == 13.5 && recess->actual.wire_mm == 5e-324);
  ck_assert_str_eq (recess->text[EM_FEATURE_LABEL], "text 9 & <0> \"ä€😀\"\n\tline");
  ck_assert_str_eq (recess->text[EM_FEATURE_OVERRIDE_REASON], "text 9 & <5> \"ä€😀\"\n\tline");
  em_quote_file_clear (&file);
}
END_TEST

START_TEST (sent_books)
{
  EmQuoteFile file;

  load_quote (&file);
  ck_assert (file.quote.has_sent_rates && file.sent_rates != NULL && file.sent_catalogue != NULL);
  ck_assert_int_eq (file.sent_catalogue->n_bases, 2);
  ck_assert_int_eq (file.sent_catalogue->n_fillers, 2);
  const EmBase *p20 = &file.sent_catalogue->base[0];
  ck_assert_str_eq (p20->id, "p20");
  ck_assert (p20->composition.low_pct[EM_EL_C] == 0.28 && p20->composition.high_pct[EM_EL_C] == 0.4);
  ck_assert_double_eq_tol (p20->density_g_per_mm3, 0.00785, 1e-9);
  em_quote_file_clear (&file);
}
END_TEST

/* Whatever version writes it next, nothing of it is lost. */
START_TEST (saved_again)
{
  EmQuoteFile file, back;

  load_quote (&file);
  g_autoptr (GBytes) bytes = em_quote_file_write (&file, NULL);
  ck_assert_ptr_nonnull (bytes);
  ck_assert (em_quote_file_parse (bytes, "again", &back, NULL));
  ck_assert (em_quote_equal (&file.quote, &back.quote) && em_rates_equal (file.sent_rates, back.sent_rates));
  em_quote_file_clear (&back);
  em_quote_file_clear (&file);
}
END_TEST

START_TEST (rates)
{
  g_autofree char *path = frozen_path ("rates-1.0.xml");
  EmRates book;

  ck_assert (em_rates_load (path, &book, NULL));
  ck_assert (book.n_machines == 3 && book.n_taxes == 1 && book.is_demo);
  ck_assert_str_eq (book.currency.code, "EUR");
  em_rates_clear (&book);
}
END_TEST

START_TEST (metals)
{
  g_autofree char *path = frozen_path ("metals-1.0.xml");
  EmCatalogue catalogue;

  ck_assert (em_catalogue_load (path, &catalogue, NULL));
  ck_assert (em_catalogue_find_base (&catalogue, "p20") == 0 && em_catalogue_find_filler (&catalogue, "er420") > 0);
  em_catalogue_clear (&catalogue);
}
END_TEST

/* Work that was not saved on the day of this format. */
static void
check_journal (const char *path, GError **error)
{
  EmRecovered recovered = { (char *) path, NULL, (char *) "Q-1", 0 };
  EmQuoteFile file, alone;

  load_quote (&alone);
  ck_assert_msg (em_recovery_read (&recovered, &file, error), "%s", error != NULL && *error != NULL ? (*error)->message : "");
  ck_assert (em_quote_equal (&file.quote, &alone.quote) && em_rates_equal (file.sent_rates, alone.sent_rates));
  ck_assert (file.stamp.device == G_MAXUINT64 && file.stamp.inode == 12 && file.stamp.size == 34 && file.stamp.modified_ns == -56);
  em_quote_file_clear (&file);
  em_quote_file_clear (&alone);
}

START_TEST (journal)
{
  g_autofree char *path = frozen_path ("journal-1.0.journal");
  g_autoptr (GError) error = NULL;

  check_journal (path, &error);
}
END_TEST

/* Round which a version 1.7 that does not exist put things of its own: the work is not out of reach. With its version not told, the
 * same things are damage. */
START_TEST (newer_journal)
{
  g_autofree char *path = frozen_path ("journal-1.0.journal"), *content = NULL, *folder = em_test_folder_new ();
  g_autofree char *newer = g_build_filename (folder, "newer.journal", NULL);
  static const char *const versions[] = { "1.0", "1.7" };

  ck_assert (g_file_get_contents (path, &content, NULL, NULL));
  const char *root = strstr (content, "<journal "), *version = strstr (root, "version=\"1.0\""), *inside = strchr (root, '>') + 1;
  for (gsize i = 0; i < G_N_ELEMENTS (versions); i++)
    {
      g_autoptr (GError) error = NULL;
      g_autofree char *text = g_strdup_printf ("%.*sversion=\"%s\" seat=\"3\"%.*s<undo steps=\"2\"/>%s", (int) (version - content), content, versions[i],
                                               (int) (inside - version - strlen ("version=\"1.0\"")), version + strlen ("version=\"1.0\""), inside);
      ck_assert (g_file_set_contents (newer, text, -1, NULL));
      if (i == 1)
        check_journal (newer, &error);
      else
        {
          const EmRecovered recovered = { newer, NULL, newer, 0 };
          EmQuoteFile file;
          ck_assert (!em_recovery_read (&recovered, &file, &error));
          ck_assert (g_error_matches (error, EM_FILE_ERROR, EM_FILE_ERROR_VALUE));
        }
    }
  em_test_folder_remove (folder);
}
END_TEST

/* What version 1.0 reads and its writer never writes: a prefix, CDATA, CR LF, comments, attributes in any order. */
START_TEST (by_hand)
{
  g_autofree char *path = frozen_path ("by-hand-1.0.estimend");
  g_autoptr (GError) error = NULL;
  EmQuoteFile file;
  const EmFeature *nick;

  ck_assert_msg (em_quote_file_load (path, &file, &error), "%s", error != NULL ? error->message : "");
  ck_assert_str_eq (file.quote.text[EM_QUOTE_TOOL], "Core <A> & B");
  ck_assert_str_eq (file.quote.text[EM_QUOTE_CUSTOMER], "Anna Beispiel & Co (invented)");
  ck_assert_int_eq (file.quote.n_features, 1);
  nick = &file.quote.feature[0];
  ck_assert_str_eq (nick->kind->id, "edge-nick");
  ck_assert (nick->id == 4294967295u && nick->count == 1);
  ck_assert (nick->value[em_kind_field (nick->kind, "length")] == 15.0 && nick->value[em_kind_field (nick->kind, "leg_a")] == 0.5
             && nick->value[em_kind_field (nick->kind, "leg_b")] == 0.75);
  em_quote_file_clear (&file);
}
END_TEST

/* By a version 1.9 that does not exist: opens, says how much of it can't be used, and is saved as it was. */
START_TEST (newer)
{
  g_autofree char *path = g_build_filename (g_getenv ("ESTIMEND_TEST_SOURCE"), "tests", "file", "newer", "1.9.estimend", NULL);
  g_autofree char *content = NULL;
  g_autoptr (GBytes) bytes = NULL;
  g_autoptr (GError) error = NULL;
  EmQuoteFile file;
  gsize size;

  ck_assert_msg (em_quote_file_load (path, &file, &error), "%s", error != NULL ? error->message : "");
  ck_assert (file.is_newer_minor && file.version_major == 1 && file.version_minor == 9);
  /* quote, number, break, extra, weights, dent; feature, label, length, ends, photo, girth */
  ck_assert_uint_eq (file.n_kept, 12);
  ck_assert_int_eq (file.quote.n_features, 1);
  bytes = em_quote_file_write (&file, NULL);
  ck_assert (g_file_get_contents (path, &content, &size, NULL));
  ck_assert_uint_eq (g_bytes_get_size (bytes), size);
  ck_assert_mem_eq (g_bytes_get_data (bytes, NULL), content, size);
  em_quote_file_clear (&file);
}
END_TEST

int
main (void)
{
  const EmTestRow tests[] =
  {
    EM_TEST_LOOP (unchanged, sums), EM_TEST (quote), EM_TEST (features), EM_TEST (sent_books), EM_TEST (saved_again), EM_TEST (rates),
    EM_TEST (metals), EM_TEST (journal), EM_TEST (newer_journal), EM_TEST (by_hand), EM_TEST (newer),
  };

  return em_test_run ("frozen", tests, (int) G_N_ELEMENTS (tests));
}
