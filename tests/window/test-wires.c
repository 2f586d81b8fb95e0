/* test-wires: the table of wires: the price after a click is the price that was shown, and one step goes back.
 *
 * Expectations follow from what the table promises; what a wire costs is checked in the core's tests.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-test-window.h"

#include <string.h>

static void
wait_for_wires (EmWindow *window)
{
  EmOutlook *outlook = em_window_get_outlook (window);

  test_settle (50);
  for (int i = 0; i < 3000 && em_outlook_is_busy (outlook); i++)
    test_settle (20);
  ck_assert_msg (!em_outlook_is_busy (outlook), "the wires are compared for ever");
  ck_assert_ptr_nonnull (em_outlook_get_compare (outlook));
}

/* Every row clicked in turn, each followed by one step back to the very same file. */
static void
click_every_row (EmWindow *window, EmDocument *document)
{
  g_autofree char *before = test_bytes (document);
  EmWireTable *table = em_money_pane_get_wires (em_window_get_money (window));
  int n = em_wire_table_count (table);

  ck_assert_int_ge (n, 2);
  for (int i = 0; i < n; i++)
    {
      int64_t shown;
      int32_t filler = em_wire_table_get_row (table, i, &shown);
      const char *name = em_document_get_catalogue (document)->filler[filler].designation;
      ck_assert (em_wire_table_choose (table, i));
      ck_assert_msg (em_document_get_cost (document)->n_faults == 0, "%s: a feature can't be priced", name);
      ck_assert_msg (em_document_get_cost (document)->totals.net_minor == shown, "%s: shown %lld, priced %lld", name, (long long) shown,
                     (long long) em_document_get_cost (document)->totals.net_minor);
      g_autofree char *chosen = test_bytes (document);
      if (strcmp (chosen, before) != 0)
        em_document_undo (document);
      g_autofree char *after = test_bytes (document);
      ck_assert_msg (strcmp (after, before) == 0, "%s: one step back does not undo it", name);
    }
  ck_assert_int_eq (em_wire_table_choose (table, n), FALSE);
}

START_TEST (a_click_prices_the_quote_as_shown)
{
  g_autoptr (EmApplication) application = test_application ();
  g_autoptr (EmDocument) document = test_demo (em_demos[_i].id);
  EmWindow *window = test_window (application, document);

  wait_for_wires (window);
  click_every_row (window, document);
  gtk_window_destroy (GTK_WINDOW (window));
}
END_TEST

/* A wire of a feature's own does not outlive a choice for the whole quote. */
START_TEST (a_choice_for_the_quote_clears_the_features_own)
{
  g_autoptr (EmApplication) application = test_application ();
  g_autoptr (EmDocument) document = test_demo (NULL);
  EmWindow *window = test_window (application, document);
  EmWireTable *table = em_money_pane_get_wires (em_window_get_money (window));
  int64_t net;

  wait_for_wires (window);
  const char *other = em_document_get_catalogue (document)->filler[em_wire_table_get_row (table, 1, &net)].id;
  em_document_choose_wire (document, 0, other);
  wait_for_wires (window);
  click_every_row (window, document);
  em_wire_table_choose (table, 0);
  for (int32_t i = 0; i < em_document_get_quote (document)->n_features; i++)
    ck_assert_ptr_null (em_document_get_quote (document)->feature[i].text[EM_FEATURE_FILLER]);
  gtk_window_destroy (GTK_WINDOW (window));
}
END_TEST

START_TEST (a_click_prices_one_feature_as_shown)
{
  g_autoptr (EmApplication) application = test_application ();
  g_autoptr (EmDocument) document = test_demo (em_demos[_i].id);
  EmWindow *window = test_window (application, document);
  const EmQuote *quote = em_document_get_quote (document);

  test_act (window, "win.wires-for::feature");
  em_document_set_selected (document, quote->feature[quote->n_features - 1].id);
  wait_for_wires (window);
  ck_assert_uint_eq (em_outlook_get_feature (em_window_get_outlook (window)), quote->feature[quote->n_features - 1].id);
  click_every_row (window, document);
  /* The quote's own wire is none of the feature's own. */
  em_document_choose_wire (document, 0, quote->text[EM_QUOTE_FILLER]);
  ck_assert_ptr_null (em_document_get_quote (document)->feature[0].text[EM_FEATURE_FILLER]);
  gtk_window_destroy (GTK_WINDOW (window));
}
END_TEST

static EmReasons
reasons_of (EmWindow *window, int32_t filler)
{
  const EmCompare *compare = em_outlook_get_compare (em_window_get_outlook (window));

  for (int32_t i = 0; i < compare->n_rows; i++)
    if (compare->row[i].filler == filler)
      return compare->row[i].reasons;
  return 0;
}

/* At first by match: the first row is what the trade would take, with the fewest objections less recommendations among such. By price none is cheaper
 * than the one before it, but for those that would be a compromise, which are after all others by price too: softer than the tool, of another
 * family, apt to crack or to rust (common practice, no source). */
START_TEST (rows_stand_in_the_order_asked_for)
{
  g_autoptr (EmApplication) application = test_application ();
  g_autoptr (EmDocument) document = test_demo (NULL);
  EmWindow *window = test_window (application, document);
  EmWireTable *table = em_money_pane_get_wires (em_window_get_money (window));
  int64_t last = 0, net;

  wait_for_wires (window);
  ck_assert ((reasons_of (window, em_wire_table_get_row (table, 0, &net)) & EM_REASON_BIT (EM_REASON_USUAL)) != 0);
  test_act (window, "win.wires-first::price");
  ck_assert (!em_wire_table_is_apart (table, 0));
  ck_assert (em_wire_table_is_apart (table, em_wire_table_count (table) - 1));
  for (int i = 0; i < em_wire_table_count (table); i++)
    {
      int32_t filler = em_wire_table_get_row (table, i, &net);
      EmReasons reasons = reasons_of (window, filler), apart = EM_REASON_BIT (EM_REASON_SOFTER) | EM_REASON_BIT (EM_REASON_DISSIMILAR);

      ck_assert_msg (i == 0 || em_wire_table_is_apart (table, i) >= em_wire_table_is_apart (table, i - 1), "row %d", i);
      ck_assert_msg ((reasons & apart) == 0 || em_wire_table_is_apart (table, i), "row %d", i);
      ck_assert_msg (net >= last || (em_wire_table_is_apart (table, i) && !em_wire_table_is_apart (table, i - 1)), "row %d", i);
      last = net;
    }
  test_act (window, "win.wires-first::match");
  const EmCompare *compare = em_outlook_get_compare (em_window_get_outlook (window));
  int least = 99, first = 99;
  bool has_usual = false, is_first_usual = false;
  int32_t filler = em_wire_table_get_row (table, 0, &net);
  for (int32_t i = 0; i < compare->n_rows; i++)
    if (!compare->row[i].is_ruled_out)
      {
        EmReasons reasons = compare->row[i].reasons & ~EM_REASON_BIT (EM_REASON_CHEAPEST);
        bool is_usual = (reasons & EM_REASON_BIT (EM_REASON_USUAL)) != 0;
        int balance = 0;
        for (int reason = 0; reason < EM_N_REASON; reason++)
          if (reasons & EM_REASON_BIT (reason))
            balance += reason < EM_REASON_SOFTER ? -1 : 1;
        if (is_usual && !has_usual)
          least = 99;   /* among the usual only, once there is one */
        has_usual |= is_usual;
        if (is_usual || !has_usual)
          least = MIN (least, balance);
        if (compare->row[i].filler == filler)
          {
            first = balance;
            is_first_usual = is_usual;
          }
      }
  /* The demo is a tool of P20 and a wire of its type is in stock: that comes before all. */
  ck_assert (has_usual && is_first_usual);
  ck_assert_int_eq (first, least);
  gtk_window_destroy (GTK_WINDOW (window));
}
END_TEST

START_TEST (what_they_make_is_told_as_an_estimate)
{
  g_autoptr (EmApplication) application = test_application ();
  g_autoptr (EmDocument) document = test_demo (NULL);
  EmWindow *window = test_window (application, document);

  wait_for_wires (window);
  g_autofree char *text = em_money_pane_deposit_text (em_window_get_money (window));
  ck_assert_msg (strstr (text, "Hardness of the tool") != NULL, "%s", text);
  ck_assert_msg (strstr (text, "Preheat") != NULL, "%s", text);
  ck_assert_msg (strstr (text, "Boundaries are approximate") != NULL, "%s", text);
  gtk_window_destroy (GTK_WINDOW (window));
}
END_TEST

START_TEST (no_wire_no_price_and_a_hint)
{
  g_autoptr (EmApplication) application = test_application ();
  g_autoptr (EmDocument) document = em_document_new (em_application_get_basis (application));
  EmWindow *window = test_window (application, document);

  em_document_insert (document, 0, em_kinds[0]);
  ck_assert_str_eq (em_money_pane_get_price (em_window_get_money (window)), "–");
  ck_assert (!em_document_has_total (document));
  gtk_window_destroy (GTK_WINDOW (window));
}
END_TEST

int
main (void)
{
  TCase *tcase = tcase_create ("wires");

  tcase_add_loop_test (tcase, a_click_prices_the_quote_as_shown, 0, em_n_demos);
  tcase_add_loop_test (tcase, a_click_prices_one_feature_as_shown, 0, em_n_demos);
  tcase_add_test (tcase, a_choice_for_the_quote_clears_the_features_own);
  tcase_add_test (tcase, rows_stand_in_the_order_asked_for);
  tcase_add_test (tcase, what_they_make_is_told_as_an_estimate);
  tcase_add_test (tcase, no_wire_no_price_and_a_hint);
  return test_run ("wires", tcase, 60);
}
