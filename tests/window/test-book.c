/* test-book: the rate book and the metals changed in the program: nothing before it is kept, all of it after.
 *
 * Expectations follow from what keeping and discarding mean. Effects are held against
 * pricing the quote with the changed book from the start.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-test-window.h"

#include "em-amount-entry.h"
#include "em-book-file.h"
#include "em-book-window.h"
#include "em-csv.h"
#include "em-price-report.h"
#include "em-rate-entry.h"

#include <glib/gstdio.h>
#include <string.h>

static GtkWidget *
find_entry (GtkWidget *in, const char *id)
{
  if (EM_IS_RATE_ENTRY (in) && g_str_equal (em_rate_entry_get_field (EM_RATE_ENTRY (in))->id, id))
    return in;
  for (GtkWidget *child = gtk_widget_get_first_child (in); child != NULL; child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *found = find_entry (child, id);
      if (found != NULL)
        return found;
    }
  return NULL;
}

static void
type_into (EmBookWindow *book, const char *id, const char *text)
{
  GtkWidget *entry = find_entry (GTK_WIDGET (book), id);

  ck_assert_msg (entry != NULL, "no entry %s", id);
  test_type (em_rate_entry_get_text_widget (EM_RATE_ENTRY (entry)), text);
}

/* Waits for the end; whether all of it was kept. */
static gboolean
keep (EmBookWindow *book)
{
  em_book_window_keep (book);
  for (int i = 0; i < 3000 && em_draft_is_keeping (em_book_window_get_draft (book)); i++)
    test_settle (20);
  test_settle (20);
  return !em_draft_is_changed (em_book_window_get_draft (book)) && em_book_window_get_trouble (book) == NULL;
}

/* 72.00 an hour becomes 90.00: the effect shown is the price of the same quote with that book. */
START_TEST (the_effect_is_shown_before_it_is_kept)
{
  g_autoptr (EmApplication) application = test_application ();
  g_autoptr (EmDocument) document = test_demo (NULL);
  EmWindow *window = test_window (application, document);
  EmBookWindow *book = em_book_window_present (application, window, "money");
  EmRates rates;
  EmCost cost;
  int64_t before = em_document_get_cost (document)->totals.total_minor;

  ck_assert (!em_draft_is_changed (em_book_window_get_draft (book)));
  type_into (book, "bench", "90.00");
  ck_assert_int_eq (em_draft_get_rates (em_book_window_get_draft (book))->bench_minor_per_h, 9000);
  ck_assert_int_eq (em_document_get_cost (document)->totals.total_minor, before);
  const EmEffect *effect = em_draft_get_effect (em_book_window_get_draft (book));
  ck_assert_int_eq (em_rates_copy (em_basis_get_rates (em_application_get_basis (application)), &rates), EM_OK);
  rates.bench_minor_per_h = 9000;
  em_cost_init (&cost);
  ck_assert_int_eq (em_cost_quote (&cost, em_document_get_quote (document), &rates, em_document_get_catalogue (document), NULL, NULL), EM_OK);
  ck_assert (effect->is_reckoned);
  ck_assert_int_eq (effect->before_minor, before);
  int64_t parts = effect->tax_minor + effect->other_minor;
  for (int i = 0; i < EM_N_MONEY; i++)
    parts += effect->money_minor[i];
  ck_assert_int_eq (parts, effect->after_minor - effect->before_minor);
  ck_assert_int_eq (effect->tax_minor, cost.totals.tax_minor - em_document_get_cost (document)->totals.tax_minor);
  ck_assert_int_gt (effect->tax_minor, 0);
  ck_assert_ptr_nonnull (strstr (em_book_window_get_effect (book), "Taxes +"));
  ck_assert_int_eq (effect->after_minor, cost.totals.total_minor);
  ck_assert_int_gt (effect->after_minor, before);
  ck_assert (keep (book));
  ck_assert_int_eq (em_document_get_cost (document)->totals.total_minor, cost.totals.total_minor);
  g_autofree char *path = em_book_own_rates_path ();
  EmRates kept;
  ck_assert (em_rates_load (path, &kept, NULL));
  ck_assert_int_eq (kept.bench_minor_per_h, 9000);
  em_rates_clear (&kept);
  em_cost_clear (&cost);
  em_rates_clear (&rates);
  g_unlink (path);
  gtk_window_destroy (GTK_WINDOW (book));
  gtk_window_destroy (GTK_WINDOW (window));
}
END_TEST

START_TEST (discarding_brings_all_of_it_back)
{
  g_autoptr (EmApplication) application = test_application ();
  g_autoptr (EmDocument) document = test_demo (NULL);
  EmWindow *window = test_window (application, document);
  EmBookWindow *book = em_book_window_present (application, window, "money");
  EmDraft *draft = em_book_window_get_draft (book);

  type_into (book, "margin", "31.5");
  ck_assert_int_eq (em_draft_get_rates (draft)->margin_ppm, 315000);
  type_into (book, "receive", "forty");
  type_into (book, "wire_high", ".04 in");
  ck_assert_double_eq_tol (em_draft_get_rates (draft)->machine[0].wire_high_mm, 1.016, 1e-12);   /* 0.04 · 25.4, SP 811 */
  ck_assert_ptr_nonnull (em_book_window_get_trouble (book));
  ck_assert (!keep (book));
  em_book_window_discard (book);
  ck_assert_ptr_null (em_book_window_get_trouble (book));
  ck_assert (!em_draft_is_changed (draft));
  ck_assert (em_rates_equal (em_draft_get_rates (draft), em_basis_get_rates (em_application_get_basis (application))));
  GtkWidget *text = em_rate_entry_get_text_widget (EM_RATE_ENTRY (find_entry (GTK_WIDGET (book), "margin")));
  ck_assert_str_eq (gtk_editable_get_text (GTK_EDITABLE (text)), "25");
  gtk_window_destroy (GTK_WINDOW (book));
  gtk_window_destroy (GTK_WINDOW (window));
}
END_TEST

START_TEST (a_sent_quote_keeps_its_price)
{
  g_autoptr (EmApplication) application = test_application ();
  g_autoptr (EmDocument) sent = test_demo (NULL), open = test_demo (NULL);
  EmWindow *first = test_window (application, sent), *second = test_window (application, open);
  int64_t before = em_document_get_cost (sent)->totals.total_minor;

  em_document_set_state (sent, EM_STATE_SENT);
  EmBookWindow *book = em_book_window_present (application, first, "money");
  type_into (book, "office", "200");
  ck_assert (em_draft_get_effect (em_book_window_get_draft (book))->is_sent);
  ck_assert (keep (book));
  ck_assert_int_eq (em_document_get_cost (sent)->totals.total_minor, before);
  ck_assert_int_gt (em_document_get_cost (open)->totals.total_minor, before);
  g_autofree char *path = em_book_own_rates_path ();
  g_unlink (path);
  gtk_window_destroy (GTK_WINDOW (book));
  gtk_window_destroy (GTK_WINDOW (first));
  gtk_window_destroy (GTK_WINDOW (second));
}
END_TEST

/* "9" on the way to "96" is no margin that anybody meant, and no price is told for it. */
START_TEST (no_price_is_told_for_half_an_entry)
{
  g_autoptr (EmApplication) application = test_application ();
  g_autoptr (EmDocument) document = test_demo (NULL);
  EmWindow *window = test_window (application, document);
  EmBookWindow *book = em_book_window_present (application, window, "money");
  GtkWidget *text = em_rate_entry_get_text_widget (EM_RATE_ENTRY (find_entry (GTK_WIDGET (book), "margin")));

  test_key_in (text, "9");
  ck_assert_ptr_nonnull (strstr (em_book_window_get_effect (book), " → "));
  test_key_in (text, "96");
  ck_assert_ptr_null (strstr (em_book_window_get_effect (book), " → "));
  test_key_in (text, "30");
  ck_assert_ptr_nonnull (strstr (em_book_window_get_effect (book), " → "));
  gtk_window_destroy (GTK_WINDOW (book));
  gtk_window_destroy (GTK_WINDOW (window));
}
END_TEST

/* An emptied share is none; typed over, "8" must not become 80 %. */
START_TEST (typing_over_a_share_replaces_it)
{
  g_autoptr (EmApplication) application = test_application ();
  EmBookWindow *book = em_book_window_present (application, NULL, "money");
  EmDraft *draft = em_book_window_get_draft (book);
  GtkWidget *text = em_rate_entry_get_text_widget (EM_RATE_ENTRY (find_entry (GTK_WIDGET (book), "margin")));

  test_key_in (text, "8");
  ck_assert_int_eq (em_draft_get_rates (draft)->margin_ppm, 80000);
  test_key_in (text, "12.5");
  ck_assert_int_eq (em_draft_get_rates (draft)->margin_ppm, 125000);
  ck_assert_str_eq (gtk_editable_get_text (GTK_EDITABLE (text)), "12.5");
  test_key_in (text, "");
  ck_assert_int_eq (em_draft_get_rates (draft)->margin_ppm, 0);
  gtk_window_destroy (GTK_WINDOW (book));
}
END_TEST

/* Limits of the rate book: a margin is at most 95 % of the price. */
START_TEST (what_breaks_a_limit_is_not_kept)
{
  g_autoptr (EmApplication) application = test_application ();
  EmBookWindow *book = em_book_window_present (application, NULL, "money");

  type_into (book, "margin", "96");
  ck_assert_ptr_nonnull (em_book_window_get_trouble (book));
  ck_assert (!keep (book));
  ck_assert_msg (strstr (em_book_window_get_trouble (book), "Margin, share of price: ") != NULL, "%s", em_book_window_get_trouble (book));
  type_into (book, "margin", "95");
  ck_assert_ptr_null (em_book_window_get_trouble (book));
  em_draft_get_rates (em_book_window_get_draft (book))->machine[0].n_settings = 0;
  em_draft_touch (em_book_window_get_draft (book), EM_DRAFT_RATES, NULL);
  ck_assert_ptr_nonnull (em_book_window_get_trouble (book));
  gtk_window_destroy (GTK_WINDOW (book));
}
END_TEST

/* A changed wire is the shop's own, in its own file, over the shipped one. */
START_TEST (a_changed_wire_becomes_the_shops_own)
{
  g_autoptr (EmApplication) application = test_application ();
  EmBookWindow *book = em_book_window_present (application, NULL, "wires");
  EmDraft *draft = em_book_window_get_draft (book);
  int n_wires = em_draft_get_catalogue (draft)->n_fillers;
  g_autofree char *path = em_book_own_catalogue_path ();
  g_autofree char *id = g_strdup (em_draft_get_catalogue (draft)->filler[0].id);
  EmCatalogue own;

  ck_assert (!em_draft_get_catalogue (draft)->filler[0].is_own);
  type_into (book, "price", "7.77");
  ck_assert_int_eq (em_draft_get_catalogue (draft)->filler[0].size[0].price_minor, 777);
  ck_assert (em_draft_get_catalogue (draft)->filler[0].is_own);
  ck_assert (!em_draft_get_catalogue (draft)->filler[0].has_demo_price);
  ck_assert_msg (keep (book), "%s", em_book_window_get_trouble (book));
  ck_assert (em_catalogue_load (path, &own, NULL));
  ck_assert_int_eq (own.n_fillers, 1);
  ck_assert_int_eq (own.n_bases, 0);
  ck_assert_str_eq (own.filler[0].id, id);
  ck_assert_int_eq (own.filler[0].size[0].price_minor, 777);
  em_catalogue_clear (&own);
  g_autoptr (EmBasis) again = test_basis ();
  ck_assert_int_eq (em_basis_get_catalogue (again)->n_fillers, n_wires);
  ck_assert_int_eq (em_basis_get_catalogue (again)->filler[em_catalogue_find_filler (em_basis_get_catalogue (again), id)].size[0].price_minor, 777);
  g_unlink (path);
  gtk_window_destroy (GTK_WINDOW (book));
}
END_TEST

/* The window answers meanwhile: what is typed then is no part of what is kept, and the window goes when all is on the disk. */
START_TEST (keeping_holds_nothing_up)
{
  g_autoptr (EmApplication) application = test_application ();
  EmBookWindow *book = em_book_window_present (application, NULL, "money");
  EmDraft *draft = em_book_window_get_draft (book);
  g_autofree char *path = em_book_own_rates_path ();
  EmRates kept;

  type_into (book, "bench", "90.00");
  em_book_window_keep (book);
  ck_assert (em_draft_is_keeping (draft));
  type_into (book, "office", "61.00");
  em_book_window_discard (book);   /* not now */
  ck_assert_int_eq (em_draft_get_rates (draft)->office_minor_per_h, 6100);
  for (int i = 0; i < 3000 && em_draft_is_keeping (draft); i++)
    test_settle (20);
  test_settle (50);
  ck_assert (em_draft_is_changed (draft));
  ck_assert (em_rates_load (path, &kept, NULL));
  ck_assert_int_eq (kept.bench_minor_per_h, 9000);
  ck_assert_int_ne (kept.office_minor_per_h, 6100);
  em_rates_clear (&kept);
  ck_assert_int_ne (em_basis_get_rates (em_application_get_basis (application))->office_minor_per_h, 6100);
  g_object_add_weak_pointer (G_OBJECT (book), (gpointer *) &book);
  em_book_window_keep (book);
  gtk_window_close (GTK_WINDOW (book));
  ck_assert_ptr_nonnull (book);
  for (int i = 0; i < 3000 && book != NULL; i++)
    test_settle (20);
  ck_assert_ptr_null (book);
  ck_assert_int_eq (em_basis_get_rates (em_application_get_basis (application))->office_minor_per_h, 6100);
  ck_assert_int_eq (g_unlink (path), 0);
}
END_TEST

/* A folder stands where the rate book goes: the metals are on the disk, and the rates stay in the window. */
START_TEST (what_cannot_be_kept_is_told_and_stays)
{
  g_autoptr (EmApplication) application = test_application ();
  EmBookWindow *book = em_book_window_present (application, NULL, "money");
  EmDraft *draft = em_book_window_get_draft (book);
  g_autofree char *path = em_book_own_rates_path (), *metals = em_book_own_catalogue_path ();

  ck_assert_int_eq (g_mkdir_with_parents (path, 0755), 0);
  type_into (book, "bench", "90.00");
  ck_assert (!keep (book));
  ck_assert_msg (g_str_has_prefix (em_book_window_get_trouble (book), "Not kept. "), "%s", em_book_window_get_trouble (book));
  ck_assert_int_eq (em_draft_get_rates (draft)->bench_minor_per_h, 9000);
  ck_assert_int_ne (em_basis_get_rates (em_application_get_basis (application))->bench_minor_per_h, 9000);
  type_into (book, "price", "7.77");
  em_book_window_keep (book);
  gtk_window_close (GTK_WINDOW (book));
  while (em_draft_is_keeping (draft))
    test_settle (20);
  test_settle (50);
  ck_assert_ptr_nonnull (em_book_window_get_trouble (book));
  ck_assert_msg (g_str_has_prefix (em_book_window_get_trouble (book), "The metals are kept"), "%s", em_book_window_get_trouble (book));
  ck_assert (g_file_test (metals, G_FILE_TEST_IS_REGULAR));
  ck_assert_int_eq (em_basis_get_catalogue (em_application_get_basis (application))->filler[0].size[0].price_minor, 777);
  ck_assert_int_eq (g_rmdir (path), 0);
  ck_assert (keep (book));
  ck_assert_int_eq (em_basis_get_rates (em_application_get_basis (application))->bench_minor_per_h, 9000);
  ck_assert_int_eq (g_unlink (path), 0);
  ck_assert_int_eq (g_unlink (metals), 0);
  gtk_window_destroy (GTK_WINDOW (book));
}
END_TEST

static GtkWidget *
last_quantity (GtkWidget *in)
{
  GtkWidget *found = EM_IS_QUANTITY_ENTRY (in) && gtk_widget_get_mapped (in) ? in : NULL;

  for (GtkWidget *child = gtk_widget_get_last_child (in); found == NULL && child != NULL; child = gtk_widget_get_prev_sibling (child))
    found = last_quantity (child);
  return found;
}

static GtkWidget *
find_icon (GtkWidget *in, const char *icon)
{
  GtkWidget *found = GTK_IS_BUTTON (in) && gtk_widget_get_mapped (in) && g_strcmp0 (gtk_button_get_icon_name (GTK_BUTTON (in)), icon) == 0 ? in : NULL;

  for (GtkWidget *child = gtk_widget_get_first_child (in); found == NULL && child != NULL; child = gtk_widget_get_next_sibling (child))
    found = find_icon (child, icon);
  return found;
}

static GtkWidget *
find_button (GtkWidget *in, const char *label)
{
  if (GTK_IS_BUTTON (in) && g_strcmp0 (gtk_button_get_label (GTK_BUTTON (in)), label) == 0 && gtk_widget_get_mapped (in))
    return in;
  for (GtkWidget *child = gtk_widget_get_first_child (in); child != NULL; child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *found = find_button (child, label);
      if (found != NULL)
        return found;
    }
  return NULL;
}

/* A price that can't be read, of a wire that is shown no more, or in a row that is gone, can't be mended, and is in nobody's way. */
START_TEST (what_is_gone_is_no_trouble)
{
  g_autoptr (EmApplication) application = test_application ();
  EmBookWindow *book = em_book_window_present (application, NULL, "wires");
  EmDraft *draft = em_book_window_get_draft (book);

  test_settle (100);
  gtk_widget_grab_focus (find_entry (GTK_WIDGET (book), "price"));
  test_key_in (em_rate_entry_get_text_widget (EM_RATE_ENTRY (find_entry (GTK_WIDGET (book), "price"))), "dear");
  ck_assert_ptr_nonnull (em_book_window_get_trouble (book));
  g_signal_emit_by_name (find_button (GTK_WIDGET (book), "Add a _copy"), "clicked");
  ck_assert_msg (em_book_window_get_trouble (book) == NULL, "%s", em_book_window_get_trouble (book));
  em_book_window_show_page (book, "taxes");
  test_settle (100);
  g_signal_emit_by_name (find_button (GTK_WIDGET (book), "_Add a tax"), "clicked");
  ck_assert (GTK_IS_TEXT (gtk_root_get_focus (GTK_ROOT (book))));
  test_settle (50);
  GtkWidget *rate = last_quantity (GTK_WIDGET (book));
  gtk_widget_grab_focus (em_quantity_entry_get_text_widget (EM_QUANTITY_ENTRY (rate)));
  test_key_in (em_quantity_entry_get_text_widget (EM_QUANTITY_ENTRY (rate)), "half");
  ck_assert_ptr_nonnull (em_book_window_get_trouble (book));
  int n = em_draft_get_rates (draft)->n_taxes;
  g_signal_emit_by_name (find_icon (GTK_WIDGET (book), "list-remove-symbolic"), "clicked");   /* the first of them */
  ck_assert_int_eq (em_draft_get_rates (draft)->n_taxes, n - 1);
  ck_assert_msg (em_book_window_get_trouble (book) == NULL, "%s", em_book_window_get_trouble (book));
  gtk_window_destroy (GTK_WINDOW (book));
}
END_TEST

/* At twice the size of letters the window still goes on a screen of 1280 by 800. */
START_TEST (large_letters_have_room)
{
  g_autoptr (EmApplication) application = test_application ();
  EmBookWindow *book;
  int width, height, dpi;

  g_object_get (gtk_settings_get_default (), "gtk-xft-dpi", &dpi, NULL);
  g_object_set (gtk_settings_get_default (), "gtk-xft-dpi", 2 * 96 * PANGO_SCALE, NULL);
  book = em_book_window_present (application, NULL, "wires");
  test_settle (200);
  gtk_widget_measure (gtk_window_get_child (GTK_WINDOW (book)), GTK_ORIENTATION_HORIZONTAL, -1, &width, NULL, NULL, NULL);
  gtk_widget_measure (gtk_window_get_child (GTK_WINDOW (book)), GTK_ORIENTATION_VERTICAL, MAX (width, 1000), &height, NULL, NULL, NULL);
  ck_assert_msg (width <= 1280, "%d wide", width);
  ck_assert_msg (height <= 760, "%d high", height);   /* the title's bar is the desktop's */
  g_object_set (gtk_settings_get_default (), "gtk-xft-dpi", dpi, NULL);
  gtk_window_destroy (GTK_WINDOW (book));
}
END_TEST

static GtkWidget *
find_stack (GtkWidget *in)
{
  return test_find_type (in, GTK_TYPE_STACK);
}

/* Pages, wider than which a line of theirs would have to be sought by scrolling; tables scroll by themselves. */
static void
check_page_widths (GtkWidget *in, const char *page)
{
  if (GTK_IS_SCROLLED_WINDOW (in))
    {
      GtkAdjustment *across = gtk_scrolled_window_get_hadjustment (GTK_SCROLLED_WINDOW (in));
      ck_assert_msg (gtk_adjustment_get_upper (across) <= gtk_adjustment_get_page_size (across), "%s: %g wide in %g", page,
                     gtk_adjustment_get_upper (across), gtk_adjustment_get_page_size (across));
      return;
    }
  for (GtkWidget *child = gtk_widget_get_first_child (in); child != NULL; child = gtk_widget_get_next_sibling (child))
    check_page_widths (child, page);
}

static GtkWidget *
find_lines (GtkWidget *in)
{
  GtkWidget *found = GTK_IS_TEXT_VIEW (in) ? in : NULL;

  for (GtkWidget *child = gtk_widget_get_first_child (in); found == NULL && child != NULL; child = gtk_widget_get_next_sibling (child))
    found = find_lines (child);
  return found;
}

/* In the window as it opens first, no page is wider than it, and both lines of the address are seen whole. */
START_TEST (large_letters_are_not_sought)
{
  static const char *const pages[] = { "money", "minutes", "deposit", "machines", "bases", "wires", "jobs", "taxes", "shop" };
  g_autoptr (EmApplication) application = test_application ();
  EmBookWindow *book;
  GdkRectangle line;
  GtkTextIter end;
  int dpi;

  g_object_get (gtk_settings_get_default (), "gtk-xft-dpi", &dpi, NULL);
  g_object_set (gtk_settings_get_default (), "gtk-xft-dpi", 2 * 96 * PANGO_SCALE, NULL);
  book = em_book_window_present (application, NULL, "money");
  GtkStack *stack = GTK_STACK (find_stack (GTK_WIDGET (book)));
  for (gsize i = 0; i < G_N_ELEMENTS (pages); i++)
    {
      em_book_window_show_page (book, pages[i]);
      test_settle (300);
      check_page_widths (gtk_stack_get_visible_child (stack), pages[i]);
    }
  GtkWidget *address = find_lines (gtk_stack_get_visible_child (stack));
  GtkTextBuffer *buffer = gtk_text_view_get_buffer (GTK_TEXT_VIEW (address));
  ck_assert_int_eq (gtk_text_buffer_get_line_count (buffer), 2);
  gtk_text_buffer_get_end_iter (buffer, &end);
  gtk_text_view_get_iter_location (GTK_TEXT_VIEW (address), &end, &line);
  ck_assert_int_le (line.y + line.height, gtk_widget_get_height (address));
  g_object_set (gtk_settings_get_default (), "gtk-xft-dpi", dpi, NULL);
  gtk_window_destroy (GTK_WINDOW (book));
}
END_TEST

/* Of a row of a table all stand at one height, whatever else would be higher. */
START_TEST (rows_of_tables_are_level)
{
  g_autoptr (EmApplication) application = test_application ();
  EmBookWindow *book = em_book_window_present (application, NULL, "wires");
  graphene_rect_t diameter, price;

  test_settle (300);
  GtkWidget *first = em_rate_entry_get_text_widget (EM_RATE_ENTRY (find_entry (GTK_WIDGET (book), "diameter")));
  GtkWidget *second = em_rate_entry_get_text_widget (EM_RATE_ENTRY (find_entry (GTK_WIDGET (book), "price")));
  ck_assert (gtk_widget_compute_bounds (first, GTK_WIDGET (book), &diameter) && gtk_widget_compute_bounds (second, GTK_WIDGET (book), &price));
  ck_assert_double_eq (diameter.origin.y, price.origin.y);
  ck_assert_double_eq (diameter.size.height, price.size.height);
  gtk_window_destroy (GTK_WINDOW (book));
}
END_TEST

START_TEST (records_are_copied_and_taken_away_again)
{
  static const char *const pages[] = { "bases", "wires" };
  g_autoptr (EmApplication) application = test_application ();
  EmBookWindow *book = em_book_window_present (application, NULL, pages[_i]);
  EmCatalogue *catalogue = em_draft_get_catalogue (em_book_window_get_draft (book));
  const int32_t *n = _i == 0 ? &catalogue->n_bases : &catalogue->n_fillers;
  int32_t before = *n;

  test_settle (100);
  g_signal_emit_by_name (find_button (GTK_WIDGET (book), "Add a _copy"), "clicked");
  ck_assert_int_eq (*n, before + 1);
  ck_assert_ptr_null (em_book_window_get_trouble (book));
  GtkWidget *remover = find_button (GTK_WIDGET (book), "_Remove");
  ck_assert (gtk_widget_get_sensitive (remover));
  g_signal_emit_by_name (remover, "clicked");
  ck_assert_int_eq (*n, before);
  ck_assert (!gtk_widget_get_sensitive (remover));
  /* One that is kept has come to stay. */
  g_autofree char *path = em_book_own_catalogue_path ();
  g_signal_emit_by_name (find_button (GTK_WIDGET (book), "Add a _copy"), "clicked");
  ck_assert (gtk_widget_get_sensitive (remover));
  ck_assert (keep (book));
  ck_assert (!gtk_widget_get_sensitive (remover));
  ck_assert_int_eq (g_unlink (path), 0);
  gtk_window_destroy (GTK_WINDOW (book));
}
END_TEST

static EmPriceReport *
find_report (void)
{
  g_autoptr (GList) all = gtk_window_list_toplevels ();

  for (GList *window = all; window != NULL; window = window->next)
    if (EM_IS_PRICE_REPORT (window->data))
      return window->data;
  return NULL;
}

static gboolean
shows_text (GtkWidget *in, const char *text)
{
  gboolean is_shown = GTK_IS_LABEL (in) && g_str_equal (gtk_label_get_text (GTK_LABEL (in)), text);

  for (GtkWidget *child = gtk_widget_get_first_child (in); !is_shown && child != NULL; child = gtk_widget_get_next_sibling (child))
    is_shown = shows_text (child, text);
  return is_shown;
}

/* Three rows: a price that changes, a wire nobody has, and one that is no price. */
START_TEST (a_price_list_is_looked_at_before_it_is_taken)
{
  g_autoptr (EmApplication) application = test_application ();
  EmBookWindow *book = em_book_window_present (application, NULL, "wires");
  EmDraft *draft = em_book_window_get_draft (book);
  EmFiller *wire = &em_draft_get_catalogue (draft)->filler[0];
  g_autofree char *folder = g_dir_make_tmp ("estimend-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (folder, "prices.csv", NULL);
  g_autofree char *csv = g_strdup_printf ("wire,size_mm,price,per\n%s,%g,2.00,metre\nno-such-wire,0.5,1.00,metre\n%s,%g,dear,metre\n", wire->id,
                                          wire->size[0].wire_mm, wire->id, wire->size[1].wire_mm);
  g_autoptr (GFile) file = g_file_new_for_path (path);
  int64_t before = wire->size[0].price_minor;

  ck_assert (g_file_set_contents (path, csv, -1, NULL));
  em_book_window_import (book, file);
  test_settle (200);
  EmPriceReport *report = find_report ();
  ck_assert_ptr_nonnull (report);
  ck_assert_msg (strstr (em_price_report_get_summary (report), "1 row changes something") != NULL, "%s", em_price_report_get_summary (report));
  ck_assert_msg (strstr (em_price_report_get_summary (report), "2 are left out") != NULL, "%s", em_price_report_get_summary (report));
  ck_assert_int_eq (wire->size[0].price_minor, before);
  /* 2.00 from 1.25 is six tenths more. */
  ck_assert_int_eq (before, 125);
  ck_assert (shows_text (GTK_WIDGET (report), "new price (+60 %)"));
  ck_assert (em_price_report_apply (report));
  ck_assert_int_eq (em_draft_get_catalogue (draft)->filler[0].size[0].price_minor, 200);
  ck_assert (em_draft_is_changed (draft));
  ck_assert (g_file_set_contents (path, "no such table at all", -1, NULL));
  em_book_window_import (book, file);
  test_settle (200);
  ck_assert_ptr_nonnull (em_book_window_get_trouble (book));
  ck_assert_ptr_null (find_report ());
  /* A byte more than a list may have: its size is refused, whatever is in it. */
  g_autofree char *large = g_strnfill (EM_CSV_BYTES_MAX + 1, '\n');
  ck_assert (g_file_set_contents (path, large, EM_CSV_BYTES_MAX + 1, NULL));
  em_book_window_import (book, file);
  test_settle (300);
  ck_assert_msg (strstr (em_book_window_get_trouble (book), "too large") != NULL, "%s", em_book_window_get_trouble (book));
  ck_assert_ptr_null (find_report ());
  g_unlink (path);
  g_rmdir (folder);
  gtk_window_destroy (GTK_WINDOW (book));
}
END_TEST

/* 1,250.00 in words of either language; a comma alone is a decimal mark before two figures. */
START_TEST (amounts_are_typed_as_people_write)
{
  static const struct { const char *text; gint64 minor; } rows[] =
  {
    { "90", 9000 }, { "90.5", 9050 }, { "90,50", 9050 }, { "1,250.00", 125000 }, { "1.250,00", 125000 }, { "0.01", 1 },
  };
  g_autoptr (EmApplication) application = test_application ();
  EmBookWindow *book = em_book_window_present (application, NULL, "money");

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      type_into (book, "bench", rows[i].text);
      ck_assert_msg (em_draft_get_rates (em_book_window_get_draft (book))->bench_minor_per_h == rows[i].minor, "%s", rows[i].text);
    }
  type_into (book, "bench", "1.234");
  type_into (book, "bench", "ninety");
  ck_assert_ptr_nonnull (em_book_window_get_trouble (book));
  gtk_window_destroy (GTK_WINDOW (book));
}
END_TEST

static GtkDialog *
find_dialog (EmApplication *application)
{
  for (GList *window = gtk_application_get_windows (GTK_APPLICATION (application)); window != NULL; window = window->next)
    if (GTK_IS_DIALOG (window->data))
      return window->data;
  g_autoptr (GListModel) all = g_object_ref (gtk_window_get_toplevels ());
  for (guint i = 0; i < g_list_model_get_n_items (all); i++)
    {
      g_autoptr (GtkWindow) window = g_list_model_get_item (all, i);
      if (GTK_IS_DIALOG (window))
        return GTK_DIALOG (window);
    }
  return NULL;
}

/* The click that answers may hold the dialog longer than its parent lives. */
START_TEST (closing_asks_and_keeps)
{
  g_autoptr (EmApplication) application = test_application ();
  g_autoptr (EmDocument) document = test_demo (NULL);
  EmWindow *window = test_window (application, document);
  EmBookWindow *book = em_book_window_present (application, window, "money");

  g_object_add_weak_pointer (G_OBJECT (book), (gpointer *) &book);
  type_into (book, "bench", "90.00");
  gtk_widget_activate_action (GTK_WIDGET (book), "win.close", NULL);
  test_settle (50);
  ck_assert_ptr_nonnull (book);
  g_autoptr (GtkDialog) dialog = g_object_ref (find_dialog (application));
  ck_assert_ptr_nonnull (dialog);
  /* Enter keeps; nothing is thrown away by it. */
  GtkWidget *usual = gtk_window_get_default_widget (GTK_WINDOW (dialog));
  ck_assert_ptr_nonnull (usual);
  ck_assert (!gtk_widget_has_css_class (usual, "destructive-action"));
  gtk_widget_activate (usual);   /* a button stays down for a moment */
  for (int i = 0; i < 3000 && book != NULL; i++)
    test_settle (20);
  ck_assert_ptr_null (book);
  ck_assert_int_eq (em_basis_get_rates (em_application_get_basis (application))->bench_minor_per_h, 9000);
  g_autofree char *own = em_book_own_rates_path ();
  ck_assert_int_eq (g_remove (own), 0);
  gtk_window_destroy (GTK_WINDOW (window));
}
END_TEST

/* Of two open quotes it is the one the book was asked for from; one that is closed is let go. */
START_TEST (the_effect_is_of_the_quote_at_hand)
{
  g_autoptr (EmApplication) application = test_application ();
  EmDocument *first = test_demo ("injection-mold");
  g_autoptr (EmDocument) second = test_demo ("blow-mold");
  EmWindow *first_window = test_window (application, first), *second_window = test_window (application, second);
  EmBookWindow *book = em_book_window_present (application, first_window, "money");

  type_into (book, "bench", "90.00");
  ck_assert (g_str_has_prefix (em_book_window_get_effect (book), "D-1001"));
  em_book_window_present (application, second_window, "money");
  ck_assert (g_str_has_prefix (em_book_window_get_effect (book), "D-1002"));
  ck_assert_int_eq (em_draft_get_effect (em_book_window_get_draft (book))->before_minor, em_document_get_cost (second)->totals.total_minor);
  em_book_window_present (application, first_window, "money");
  g_object_add_weak_pointer (G_OBJECT (first), (gpointer *) &first);
  g_object_unref (first);
  gtk_window_destroy (GTK_WINDOW (first_window));
  /* A thread that compares its wires may hold it a moment longer. */
  for (int i = 0; i < 3000 && first != NULL; i++)
    test_settle (20);
  ck_assert_msg (first == NULL, "a closed quote stays open behind the book");
  ck_assert (!em_draft_get_effect (em_book_window_get_draft (book))->has_quote);
  em_book_window_discard (book);
  gtk_window_destroy (GTK_WINDOW (book));
  gtk_window_destroy (GTK_WINDOW (second_window));
}
END_TEST

static GtkWidget *
find_named_button (GtkWidget *in, const char *name)
{
  GtkWidget *found = find_button (in, name);

  if (found == NULL && GTK_IS_BUTTON (in) && g_strcmp0 (gtk_widget_get_tooltip_text (in), name) == 0)
    found = in;
  for (GtkWidget *child = gtk_widget_get_first_child (in); found == NULL && child != NULL; child = gtk_widget_get_next_sibling (child))
    found = find_named_button (child, name);
  return found;
}

static GtkWidget *
find_button_of (GtkWidget *in, const char *action)
{
  GtkWidget *found = GTK_IS_BUTTON (in) && g_strcmp0 (gtk_actionable_get_action_name (GTK_ACTIONABLE (in)), action) == 0 ? in : NULL;

  for (GtkWidget *child = gtk_widget_get_first_child (in); found == NULL && child != NULL; child = gtk_widget_get_next_sibling (child))
    found = find_button_of (child, action);
  return found;
}

static void
step (EmBookWindow *book, const char *action)
{
  gtk_widget_activate_action (GTK_WIDGET (book), action, NULL);
  test_settle (20);
}

static const char *
text_of (EmBookWindow *book, const char *id)
{
  return gtk_editable_get_text (GTK_EDITABLE (em_rate_entry_get_text_widget (EM_RATE_ENTRY (find_entry (GTK_WIDGET (book), id)))));
}

/* Letters typed into one field are one step; what came back to where it began is no change any more. */
START_TEST (edits_are_undone_and_done_again)
{
  g_autoptr (EmApplication) application = test_application ();
  EmBookWindow *book = em_book_window_present (application, NULL, "money");
  EmDraft *draft = em_book_window_get_draft (book);

  ck_assert (!em_draft_can_undo (draft) && !em_draft_can_redo (draft));
  ck_assert (find_button_of (GTK_WIDGET (book), "win.undo") != NULL && !gtk_widget_get_sensitive (find_button_of (GTK_WIDGET (book), "win.undo")));
  type_into (book, "bench", "8");
  type_into (book, "bench", "80");
  type_into (book, "bench", "80.50");
  type_into (book, "margin", "31");
  ck_assert_int_eq (em_draft_get_rates (draft)->bench_minor_per_h, 8050);
  step (book, "win.undo");
  ck_assert_int_eq (em_draft_get_rates (draft)->margin_ppm, 250000);
  ck_assert_str_eq (text_of (book, "margin"), "25");
  ck_assert_int_eq (em_draft_get_rates (draft)->bench_minor_per_h, 8050);
  step (book, "win.undo");
  ck_assert_str_eq (text_of (book, "bench"), "72.00");
  ck_assert (em_rates_equal (em_draft_get_rates (draft), em_basis_get_rates (em_application_get_basis (application))));
  ck_assert (!em_draft_is_changed (draft) && !em_draft_can_undo (draft));
  step (book, "win.redo");
  step (book, "win.redo");
  ck_assert_int_eq (em_draft_get_rates (draft)->bench_minor_per_h, 8050);
  ck_assert_int_eq (em_draft_get_rates (draft)->margin_ppm, 310000);
  ck_assert (!em_draft_can_redo (draft));
  /* What is typed after a step back drops what was undone, and is a step of its own. */
  step (book, "win.undo");
  type_into (book, "bench", "81");
  ck_assert (!em_draft_can_redo (draft));
  step (book, "win.undo");
  ck_assert_int_eq (em_draft_get_rates (draft)->bench_minor_per_h, 8050);
  gtk_window_destroy (GTK_WINDOW (book));
}
END_TEST

/* Coming back to a field is another step. */
START_TEST (another_visit_is_another_step)
{
  g_autoptr (EmApplication) application = test_application ();
  EmBookWindow *book = em_book_window_present (application, NULL, "money");
  EmDraft *draft = em_book_window_get_draft (book);
  GtkWidget *bench = find_entry (GTK_WIDGET (book), "bench"), *margin = find_entry (GTK_WIDGET (book), "margin");

  test_settle (100);
  gtk_widget_grab_focus (bench);
  type_into (book, "bench", "80");
  gtk_widget_grab_focus (margin);
  gtk_widget_grab_focus (bench);
  type_into (book, "bench", "90");
  step (book, "win.undo");
  ck_assert_int_eq (em_draft_get_rates (draft)->bench_minor_per_h, 8000);
  gtk_window_destroy (GTK_WINDOW (book));
}
END_TEST

/* "9x" can't be read: a step back settles it, under the keyboard too. Put right by hand it is what was typed, not what stood there. */
START_TEST (a_step_back_settles_what_cannot_be_read)
{
  g_autoptr (EmApplication) application = test_application ();
  EmBookWindow *book = em_book_window_present (application, NULL, "money");
  EmDraft *draft = em_book_window_get_draft (book);

  test_settle (100);
  gtk_widget_grab_focus (find_entry (GTK_WIDGET (book), "bench"));
  type_into (book, "margin", "30");
  type_into (book, "bench", "9x");
  type_into (book, "receive", "forty");
  ck_assert_ptr_nonnull (em_book_window_get_trouble (book));
  step (book, "win.undo");
  ck_assert_ptr_null (em_book_window_get_trouble (book));
  ck_assert_str_eq (text_of (book, "bench"), "72.00");
  ck_assert (em_draft_get_rates (draft)->receive_min > 0);
  ck_assert (!em_draft_is_changed (draft));
  type_into (book, "bench", "9x");
  type_into (book, "bench", "9");
  ck_assert_str_eq (text_of (book, "bench"), "9");
  ck_assert_int_eq (em_draft_get_rates (draft)->bench_minor_per_h, 900);
  gtk_window_destroy (GTK_WINDOW (book));
}
END_TEST

START_TEST (discarding_is_undone)
{
  g_autoptr (EmApplication) application = test_application ();
  EmBookWindow *book = em_book_window_present (application, NULL, "money");
  EmDraft *draft = em_book_window_get_draft (book);

  type_into (book, "bench", "80");
  type_into (book, "price", "7.77");
  em_book_window_discard (book);
  ck_assert (!em_draft_is_changed (draft));
  step (book, "win.undo");
  ck_assert_int_eq (em_draft_get_rates (draft)->bench_minor_per_h, 8000);
  ck_assert_int_eq (em_draft_get_catalogue (draft)->filler[0].size[0].price_minor, 777);
  ck_assert_str_eq (text_of (book, "bench"), "80.00");
  step (book, "win.redo");
  ck_assert (!em_draft_is_changed (draft));
  gtk_window_destroy (GTK_WINDOW (book));
}
END_TEST

/* What is on the disk is not what the draft goes back to, so that a step back is a change to be kept. */
START_TEST (what_was_kept_is_undone)
{
  g_autoptr (EmApplication) application = test_application ();
  EmBookWindow *book = em_book_window_present (application, NULL, "money");
  EmDraft *draft = em_book_window_get_draft (book);
  g_autofree char *path = em_book_own_rates_path ();
  EmRates kept;

  type_into (book, "bench", "80");
  ck_assert (keep (book));
  step (book, "win.undo");
  ck_assert (em_draft_is_changed (draft));
  ck_assert (keep (book));
  ck_assert (em_rates_load (path, &kept, NULL));
  ck_assert_int_eq (kept.bench_minor_per_h, 7200);
  em_rates_clear (&kept);
  g_unlink (path);
  gtk_window_destroy (GTK_WINDOW (book));
}
END_TEST

/* The rate book and the metals as they are now; each deed below is undone to them, done again, and is seen where it happened. */
typedef struct { const char *name, *page, *button, *entry, *text; } Deed;   /* button: its text, or what is told under the pointer */

static const Deed deeds[] =
{
  { "a machine's figure", "machines", NULL, "wire_high", "1.2" },
  { "a machine copied", "machines", "Add a _copy", NULL, NULL },
  { "a row of starting values added", "machines", "Add a _wire size", NULL, NULL },
  { "a row of starting values removed", "machines", "Remove", NULL, NULL },
  { "a base metal copied", "bases", "Add a _copy", NULL, NULL },
  { "a base metal's density", "bases", NULL, "density", "7.7" },
  { "a wire copied", "wires", "Add a _copy", NULL, NULL },
  { "a wire's price", "wires", NULL, "price", "7.77" },
  { "a wire's size removed", "wires", "Remove", NULL, NULL },
  { "a tax added", "taxes", "_Add a tax", NULL, NULL },
  { "a tax removed", "taxes", "Remove", NULL, NULL },
};

static void
do_deed (EmBookWindow *book, const Deed *deed)
{
  GtkWidget *page = gtk_stack_get_child_by_name (GTK_STACK (find_stack (GTK_WIDGET (book))), deed->page);

  if (deed->button != NULL)
    {
      GtkWidget *button = find_named_button (page, deed->button);
      ck_assert_msg (button != NULL, "%s: no button", deed->name);
      g_signal_emit_by_name (button, "clicked");
    }
  else
    test_type (em_rate_entry_get_text_widget (EM_RATE_ENTRY (find_entry (page, deed->entry))), deed->text);
}

START_TEST (deeds_are_undone_where_they_happened)
{
  const Deed *deed = &deeds[_i];
  g_autoptr (EmApplication) application = test_application ();
  EmBookWindow *book = em_book_window_present (application, NULL, deed->page);
  EmDraft *draft = em_book_window_get_draft (book);
  GtkStack *stack = GTK_STACK (find_stack (GTK_WIDGET (book)));

  test_settle (50);
  g_autoptr (EmBasis) before = em_draft_snapshot (draft);
  do_deed (book, deed);
  ck_assert_msg (em_draft_is_changed (draft), "%s: nothing done", deed->name);
  g_autoptr (EmBasis) after = em_draft_snapshot (draft);
  em_book_window_show_page (book, "minutes");
  step (book, "win.undo");
  ck_assert_msg (em_rates_equal (em_draft_get_rates (draft), em_basis_get_rates (before))
                 && em_catalogue_equal (em_draft_get_catalogue (draft), em_basis_get_catalogue (before)), "%s: not undone", deed->name);
  ck_assert_msg (!em_draft_can_undo (draft), "%s: more than one step", deed->name);
  ck_assert_str_eq (gtk_stack_get_visible_child_name (stack), deed->page);
  em_book_window_show_page (book, "minutes");
  step (book, "win.redo");
  ck_assert_msg (em_rates_equal (em_draft_get_rates (draft), em_basis_get_rates (after))
                 && em_catalogue_equal (em_draft_get_catalogue (draft), em_basis_get_catalogue (after)), "%s: not done again", deed->name);
  ck_assert_str_eq (gtk_stack_get_visible_child_name (stack), deed->page);
  gtk_window_destroy (GTK_WINDOW (book));
}
END_TEST

/* Of the second machine, with the first one in sight: the step back shows the second, and the keyboard is in the field. */
START_TEST (a_step_back_finds_its_record)
{
  g_autoptr (EmApplication) application = test_application ();
  EmBookWindow *book = em_book_window_present (application, NULL, "machines");
  EmDraft *draft = em_book_window_get_draft (book);
  GtkWidget *page = gtk_stack_get_child_by_name (GTK_STACK (find_stack (GTK_WIDGET (book))), "machines");
  GtkWidget *chooser = test_find_type (page, GTK_TYPE_DROP_DOWN);
  double before = em_draft_get_rates (draft)->machine[1].wire_high_mm;

  ck_assert_int_ge (em_draft_get_rates (draft)->n_machines, 2);
  test_settle (100);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (chooser), 1);
  type_into (book, "wire_high", "1.25");
  ck_assert_double_eq (em_draft_get_rates (draft)->machine[1].wire_high_mm, 1.25);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (chooser), 0);
  em_book_window_show_page (book, "taxes");
  test_settle (100);
  step (book, "win.undo");
  ck_assert_double_eq (em_draft_get_rates (draft)->machine[1].wire_high_mm, before);
  ck_assert_int_eq (gtk_drop_down_get_selected (GTK_DROP_DOWN (chooser)), 1);
  GtkWidget *focus = gtk_window_get_focus (GTK_WINDOW (book));
  ck_assert (focus != NULL && gtk_widget_is_ancestor (focus, find_entry (page, "wire_high")));
  gtk_window_destroy (GTK_WINDOW (book));
}
END_TEST

int
main (void)
{
  TCase *tcase = tcase_create ("book");

  tcase_add_test (tcase, the_effect_is_shown_before_it_is_kept);
  tcase_add_test (tcase, closing_asks_and_keeps);
  tcase_add_test (tcase, the_effect_is_of_the_quote_at_hand);
  tcase_add_test (tcase, discarding_brings_all_of_it_back);
  tcase_add_test (tcase, a_sent_quote_keeps_its_price);
  tcase_add_test (tcase, typing_over_a_share_replaces_it);
  tcase_add_test (tcase, no_price_is_told_for_half_an_entry);
  tcase_add_test (tcase, what_breaks_a_limit_is_not_kept);
  tcase_add_test (tcase, a_changed_wire_becomes_the_shops_own);
  tcase_add_test (tcase, what_is_gone_is_no_trouble);
  tcase_add_test (tcase, large_letters_have_room);
  tcase_add_test (tcase, large_letters_are_not_sought);
  tcase_add_test (tcase, rows_of_tables_are_level);
  tcase_add_test (tcase, keeping_holds_nothing_up);
  tcase_add_test (tcase, what_cannot_be_kept_is_told_and_stays);
  tcase_add_loop_test (tcase, records_are_copied_and_taken_away_again, 0, 2);
  tcase_add_test (tcase, a_price_list_is_looked_at_before_it_is_taken);
  tcase_add_test (tcase, amounts_are_typed_as_people_write);
  tcase_add_test (tcase, edits_are_undone_and_done_again);
  tcase_add_test (tcase, another_visit_is_another_step);
  tcase_add_test (tcase, a_step_back_settles_what_cannot_be_read);
  tcase_add_test (tcase, discarding_is_undone);
  tcase_add_test (tcase, what_was_kept_is_undone);
  tcase_add_test (tcase, a_step_back_finds_its_record);
  tcase_add_loop_test (tcase, deeds_are_undone_where_they_happened, 0, (int) G_N_ELEMENTS (deeds));
  return test_run ("book", tcase, 60);
}
