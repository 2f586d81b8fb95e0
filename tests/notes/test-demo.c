/* test-demo: the words in the shipped quotes are read into the features those quotes hold.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-notes.h"
#include "em-quote-file.h"
#include "../core/em-test-main.h"

#include <string.h>

static const char *const demos[] = { "injection-mold", "blow-mold", "extrusion-die" };

static void
load_demo (const char *id, EmQuoteFile *out_file)
{
  g_autofree char *name = g_strconcat (id, ".estimend", NULL);
  g_autofree char *path = g_build_filename (g_getenv ("ESTIMEND_TEST_DATA"), "demo", name, NULL);
  g_autoptr (GError) error = NULL;

  ck_assert_msg (em_quote_file_load (path, out_file, &error), "%s", error != NULL ? error->message : "");
}

static gboolean
is_same (double a, double b)
{
  return (em_is_absent (a) && em_is_absent (b)) || ABS (a - b) < 1e-9;
}

static void
check_feature (const char *id, const EmFeature *held, const EmFeature *read)
{
  ck_assert_msg (held->kind == read->kind, "%s: “%s” is a %s, read as %s", id, held->text[EM_FEATURE_LABEL], held->kind->id, read->kind->id);
  ck_assert_msg (held->count == read->count, "%s: “%s” count", id, held->text[EM_FEATURE_LABEL]);
  ck_assert_msg (is_same (held->clearance_mm, read->clearance_mm) && held->near == read->near, "%s: “%s” near", id, held->text[EM_FEATURE_LABEL]);
  ck_assert_msg (is_same (held->slot_width_mm, read->slot_width_mm) && is_same (held->slot_depth_mm, read->slot_depth_mm),
                 "%s: “%s” slot", id, held->text[EM_FEATURE_LABEL]);
  for (int k = 0; k < held->kind->n_fields; k++)
    ck_assert_msg (is_same (held->value[k], read->value[k]) && is_same (held->low[k], read->low[k]) && is_same (held->high[k], read->high[k]),
                   "%s: “%s” %s: %g held, %g read", id, held->text[EM_FEATURE_LABEL], held->kind->fields[k].id, held->value[k], read->value[k]);
}

START_TEST (test_words_give_features)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (EmLexicon) lexicon = em_lexicon_load_default (&error);
  EmQuoteFile file;
  EmQuote fresh;

  ck_assert_msg (lexicon != NULL, "%s", error != NULL ? error->message : "");
  load_demo (demos[_i], &file);

  const char *notes = file.quote.text[EM_QUOTE_NOTES];
  g_autoptr (EmReadResult) result = em_notes_read (lexicon, notes, strlen (notes), file.quote.units);

  em_quote_init (&fresh);
  fresh.units = file.quote.units;
  em_notes_apply (result, notes, &fresh);
  ck_assert_int_eq (fresh.n_features, file.quote.n_features);
  ck_assert_uint_eq (result->questions->len, 0);
  ck_assert_str_eq (fresh.text[EM_QUOTE_BASE], file.quote.text[EM_QUOTE_BASE]);
  ck_assert (g_strcmp0 (fresh.text[EM_QUOTE_COATING], file.quote.text[EM_QUOTE_COATING]) == 0);
  ck_assert_int_eq (fresh.n_tools, file.quote.n_tools);
  for (int32_t i = 0; i < fresh.n_features; i++)
    check_feature (demos[_i], &file.quote.feature[i], &fresh.feature[i]);
  em_quote_clear (&fresh);
  em_quote_file_clear (&file);
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("notes: demo");
  TCase *tcase = tcase_create ("demo");
  SRunner *runner;

  g_setenv ("ESTIMEND_DATA_DIR", g_getenv ("ESTIMEND_TEST_DATA"), TRUE);
  tcase_add_loop_test (tcase, test_words_give_features, 0, G_N_ELEMENTS (demos));
  suite_add_tcase (suite, tcase);
  runner = srunner_create (suite);
  srunner_run_all (runner, CK_ENV);

  int n_failed = srunner_ntests_failed (runner);

  srunner_free (runner);
  return n_failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
