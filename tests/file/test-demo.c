/* test-demo: the quotes that come with the program are whole, are priced without a fault, and are saved again as they are.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-book-file.h"
#include "em-compare.h"
#include "em-range.h"
#include "../core/em-test-main.h"

#include <string.h>

static const struct
{
  const char *id;
  EmUnits     units;
} demos[] = {
  { "injection-mold", EM_UNITS_INCH },
  { "blow-mold", EM_UNITS_METRIC },
  { "extrusion-die", EM_UNITS_METRIC },
};

static char *
data_path (const char *folder, const char *name, const char *suffix)
{
  g_autofree char *file = g_strconcat (name, suffix, NULL);

  return folder != NULL ? g_build_filename (g_getenv ("ESTIMEND_TEST_DATA"), folder, file, NULL)
                        : g_build_filename (g_getenv ("ESTIMEND_TEST_DATA"), file, NULL);
}

static void
load_demo (int which, EmQuoteFile *out_file)
{
  g_autofree char *path = data_path ("demo", demos[which].id, ".estimend");
  g_autoptr (GError) error = NULL;

  ck_assert_msg (em_quote_file_load (path, out_file, &error), "%s", error != NULL ? error->message : "");
}

static void
load_book (EmRates *out_rates, EmCatalogue *out_catalogue)
{
  g_autofree char *rates = data_path (NULL, "rates", ".xml"), *metals = data_path (NULL, "metals", ".xml");
  g_autoptr (GError) error = NULL;

  ck_assert_msg (em_rates_load (rates, out_rates, &error), "%s", error != NULL ? error->message : "");
  ck_assert_msg (em_catalogue_load (metals, out_catalogue, &error), "%s", error != NULL ? error->message : "");
}

/* Invented, and called so; words of a customer; the units its notes are in. */
START_TEST (test_says_it_is_invented)
{
  EmQuoteFile file;

  load_demo (_i, &file);
  ck_assert (strstr (file.quote.text[EM_QUOTE_CUSTOMER], "invented") != NULL);
  ck_assert (file.quote.text[EM_QUOTE_NOTES] != NULL && strlen (file.quote.text[EM_QUOTE_NOTES]) > 100);
  ck_assert_int_eq (file.quote.units, demos[_i].units);
  ck_assert_int_ge (file.quote.n_features, 5);
  ck_assert_int_gt (file.quote.n_marks, 0);
  for (int32_t i = 0; i < file.quote.n_features; i++)
    ck_assert_msg (file.quote.feature[i].text[EM_FEATURE_LABEL] != NULL, "feature %d has no name", i + 1);
  ck_assert (!file.is_newer_minor && file.sent_rates == NULL);
  em_quote_file_clear (&file);
}
END_TEST

START_TEST (test_is_priced)
{
  EmQuoteFile file;
  EmRates rates;
  EmCatalogue catalogue;
  EmCost cost;
  EmFault fault;
  int64_t sum = 0;

  load_demo (_i, &file);
  load_book (&rates, &catalogue);
  em_cost_init (&cost);
  ck_assert_int_eq (em_cost_quote (&cost, &file.quote, &rates, &catalogue, NULL, &fault), EM_OK);
  ck_assert_msg (cost.n_faults == 0, "feature %d: %s", cost.first_fault.row + 1, cost.first_fault.field);
  for (int32_t i = 0; i < cost.n_features; i++)
    ck_assert_int_gt (cost.feature[i].price_minor, 0);
  /* The paper adds up: the total is the sum of the printed lines. */
  for (int32_t i = 0; i < cost.n_lines; i++)
    sum += cost.line[i].amount_minor;
  ck_assert_int_eq (sum, cost.totals.total_minor);
  em_cost_clear (&cost);
  em_quote_file_clear (&file);
  em_rates_clear (&rates);
  em_catalogue_clear (&catalogue);
}
END_TEST

START_TEST (test_has_alternatives)
{
  EmQuoteFile file;
  EmRates rates;
  EmCatalogue catalogue;
  EmCompare compare;
  EmFault fault;
  int n_suited = 0;

  load_demo (_i, &file);
  load_book (&rates, &catalogue);
  em_compare_init (&compare);
  ck_assert_int_eq (em_compare_quote (&compare, &file.quote, -1, &rates, &catalogue, &fault), EM_OK);
  ck_assert_int_ge (compare.present, 0);
  ck_assert_msg (!compare.row[compare.present].is_ruled_out, "the demo's own wire is ruled out");
  for (int32_t i = 0; i < compare.n_rows; i++)
    n_suited += !compare.row[i].is_ruled_out;
  ck_assert_int_ge (n_suited, 2);
  em_compare_clear (&compare);
  em_quote_file_clear (&file);
  em_rates_clear (&rates);
  em_catalogue_clear (&catalogue);
}
END_TEST

START_TEST (test_saves_the_same)
{
  g_autofree char *path = data_path ("demo", demos[_i].id, ".estimend");
  g_autofree char *data = NULL;
  g_autoptr (GError) error = NULL;
  EmQuoteFile file;
  gsize size;

  load_demo (_i, &file);
  ck_assert (g_file_get_contents (path, &data, &size, NULL));

  g_autoptr (GBytes) bytes = em_quote_file_write (&file, &error);

  ck_assert_msg (bytes != NULL, "%s", error != NULL ? error->message : "");
  ck_assert_uint_eq (g_bytes_get_size (bytes), size);
  ck_assert_int_eq (memcmp (g_bytes_get_data (bytes, NULL), data, size), 0);
  em_quote_file_clear (&file);
}
END_TEST

/* xmllint reads the schema apart from our reader. */
START_TEST (test_fits_the_schema)
{
  g_autofree char *xmllint = g_find_program_in_path ("xmllint");
  g_autofree char *path = data_path ("demo", demos[_i].id, ".estimend"), *schema = data_path (NULL, "quote", ".rng");
  const char *argv[] = { xmllint, "--noout", "--nonet", "--relaxng", schema, path, NULL };
  g_autofree char *says = NULL;
  int status = -1;

  if (xmllint == NULL)
    {
      g_message ("xmllint is not here: the schema was not asked");
      return;
    }
  ck_assert (g_spawn_sync (NULL, (char **) argv, NULL, G_SPAWN_DEFAULT, NULL, NULL, NULL, &says, &status, NULL));
  ck_assert_msg (status == 0, "%s", says);
}
END_TEST

/* Between them they show every kind, and what the program can say about a feature. */
START_TEST (test_show_everything)
{
  gboolean has_clearance = FALSE, has_slot = FALSE, has_coating = FALSE, has_breaks = FALSE, has_range = FALSE, has_shared_setting = FALSE;
  gboolean *has_kind = g_new0 (gboolean, em_n_kinds);

  for (int which = 0; which < (int) G_N_ELEMENTS (demos); which++)
    {
      EmQuoteFile file;

      load_demo (which, &file);
      has_coating |= file.quote.text[EM_QUOTE_COATING] != NULL;
      has_breaks |= file.quote.n_breaks > 0;
      for (int32_t i = 0; i < file.quote.n_features; i++)
        {
          const EmFeature *feature = &file.quote.feature[i];

          for (int k = 0; k < em_n_kinds; k++)
            has_kind[k] |= em_kinds[k] == feature->kind;
          for (int k = 0; k < feature->kind->n_fields; k++)
            has_range |= feature->low[k] < feature->high[k];
          has_clearance |= !em_is_absent (feature->clearance_mm) && feature->near != EM_NEAR_NOTHING;
          has_slot |= !em_is_absent (feature->slot_width_mm) && !em_is_absent (feature->slot_depth_mm);
          has_shared_setting |= feature->setting > 0;
        }
      em_quote_file_clear (&file);
    }
  for (int k = 0; k < em_n_kinds; k++)
    ck_assert_msg (has_kind[k], "no demo has a %s", em_kinds[k]->id);
  ck_assert (has_clearance && has_slot && has_coating && has_breaks && has_range && has_shared_setting);
  g_free (has_kind);
}
END_TEST

/* The blow mold's wear is known as ranges: a price that is likely to be exceeded one time in ten lies above the likely one. */
START_TEST (test_range_of_price)
{
  EmQuoteFile file;
  EmRates rates;
  EmCatalogue catalogue;
  EmRange range;
  EmFault fault;

  load_demo (1, &file);
  load_book (&rates, &catalogue);
  ck_assert_int_eq (em_range_quote (&file.quote, &rates, &catalogue, 2000, 1, &range, &fault), EM_OK);
  ck_assert (range.has_range);
  ck_assert_int_ge (range.n_inputs, 2);
  ck_assert_int_lt (range.p10_minor, range.p90_minor);
  em_quote_file_clear (&file);
  em_rates_clear (&rates);
  em_catalogue_clear (&catalogue);
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("demo");
  TCase *tcase = tcase_create ("demo");
  SRunner *runner;

  tcase_set_timeout (tcase, 60);
  tcase_add_loop_test (tcase, test_says_it_is_invented, 0, G_N_ELEMENTS (demos));
  tcase_add_loop_test (tcase, test_is_priced, 0, G_N_ELEMENTS (demos));
  tcase_add_loop_test (tcase, test_has_alternatives, 0, G_N_ELEMENTS (demos));
  tcase_add_loop_test (tcase, test_saves_the_same, 0, G_N_ELEMENTS (demos));
  tcase_add_loop_test (tcase, test_fits_the_schema, 0, G_N_ELEMENTS (demos));
  tcase_add_test (tcase, test_show_everything);
  tcase_add_test (tcase, test_range_of_price);
  suite_add_tcase (suite, tcase);
  runner = srunner_create (suite);
  srunner_run_all (runner, CK_ENV);

  int n_failed = srunner_ntests_failed (runner);

  srunner_free (runner);
  return n_failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
