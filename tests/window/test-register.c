/* test-register: past quotes found, opened, copied, revised, won and lost from the window of the register.
 *
 * Expectations follow from what each of these means; how a folder is read and priced is tested with the file room.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-test-register.h"

#include "em-book-window.h"
#include "em-lock.h"
#include "em-number.h"
#include "em-revision.h"

#include <glib/gstdio.h>
#include <math.h>
#include <string.h>
#include <unistd.h>

static char *
path_of (const char *demo)
{
  g_autofree char *name = g_strconcat (demo, ".estimend", NULL);

  return g_build_filename (folder, name, NULL);
}

static EmWindow *
find_quote_window (EmApplication *application)
{
  for (GList *window = gtk_application_get_windows (GTK_APPLICATION (application)); window != NULL; window = window->next)
    if (EM_IS_WINDOW (window->data))
      return window->data;
  return NULL;
}

static EmWindow *
wait_for_quote (EmApplication *application)
{
  for (int i = 0; i < 3000 && find_quote_window (application) == NULL; i++)
    test_settle (20);
  ck_assert_ptr_nonnull (find_quote_window (application));
  return find_quote_window (application);
}

/* Escape gives the search up; the arrow down goes on to what was found. */
START_TEST (keys_of_the_search)
{
  g_autoptr (EmApplication) application = test_application ();
  EmRegisterWindow *window = open_register (application);
  GtkWidget *search = test_find_type (GTK_WIDGET (window), GTK_TYPE_SEARCH_ENTRY);
  g_autoptr (GListModel) controllers = gtk_widget_observe_controllers (search);
  guint n_all = em_register_window_count (window);
  gboolean is_taken = FALSE;

  em_register_window_search (window, "D-1002");
  ck_assert_uint_lt (em_register_window_count (window), n_all);
  g_signal_emit_by_name (search, "stop-search");
  ck_assert_uint_eq (em_register_window_count (window), n_all);
  test_settle (100);
  ck_assert (gtk_widget_is_ancestor (gtk_root_get_focus (GTK_ROOT (window)), search));
  for (guint i = 0; i < g_list_model_get_n_items (controllers) && !is_taken; i++)
    {
      g_autoptr (GtkEventController) controller = g_list_model_get_item (controllers, i);
      if (GTK_IS_EVENT_CONTROLLER_KEY (controller))
        g_signal_emit_by_name (controller, "key-pressed", GDK_KEY_Down, 0, 0, &is_taken);
    }
  ck_assert (is_taken);
  ck_assert (!gtk_widget_is_ancestor (gtk_root_get_focus (GTK_ROOT (window)), search));
  gtk_window_destroy (GTK_WINDOW (window));
}
END_TEST

START_TEST (quotes_are_found_as_one_types)
{
  g_autoptr (EmApplication) application = test_application ();
  EmRegisterWindow *window = open_register (application);

  ck_assert_uint_eq (em_register_window_count (window), (guint) em_n_demos);
  em_register_window_search (window, "D-1002");
  ck_assert_uint_eq (em_register_window_count (window), 1);
  em_register_window_search (window, "fernWICK");
  ck_assert_uint_eq (em_register_window_count (window), 1);
  em_register_window_search (window, "ejector");   /* in a customer's notes */
  ck_assert_uint_eq (em_register_window_count (window), 1);
  em_register_window_search (window, "no such words");
  ck_assert_uint_eq (em_register_window_count (window), 0);
  em_register_window_search (window, "");
  ck_assert_uint_eq (em_register_window_count (window), (guint) em_n_demos);
  close_all (application);
}
END_TEST

static const char *
number_at (EmRegisterWindow *window, guint row)
{
  const EmRegisterEntry *entry = em_register_window_get_entry (window, row);

  ck_assert_ptr_nonnull (entry);
  return entry->text[EM_ENTRY_NUMBER];
}

/* The demos: D-1001 Fernwick of 16 March 2026, D-1002 Lindmoor of 18 March; by the customer's name also Quillbeck's D-1003. */
START_TEST (columns_sort_and_are_remembered)
{
  g_autoptr (EmApplication) application = test_application ();
  EmRegisterWindow *window = open_register (application);

  em_register_window_sort (window, "number", FALSE);
  ck_assert_str_eq (number_at (window, 0), "D-1001");
  ck_assert_str_eq (number_at (window, 1), "D-1002");
  em_register_window_select (window, 0);
  em_register_window_sort (window, "number", TRUE);
  ck_assert_str_eq (number_at (window, 0), "D-1003");
  ck_assert_str_eq (number_at (window, 2), "D-1001");
  /* The quote that was selected still is, wherever it went. */
  ck_assert_str_eq (em_register_window_get_selected (window)->text[EM_ENTRY_NUMBER], "D-1001");
  em_register_window_search (window, "lindmoor");
  ck_assert_str_eq (number_at (window, 0), "D-1002");
  em_register_window_search (window, "");
  em_register_window_sort (window, "customer", FALSE);
  ck_assert (g_str_has_prefix (em_register_window_get_entry (window, 0)->text[EM_ENTRY_CUSTOMER], "Fernwick"));
  ck_assert (g_str_has_prefix (em_register_window_get_entry (window, 1)->text[EM_ENTRY_CUSTOMER], "Lindmoor"));
  em_register_window_sort (window, "net", TRUE);
  for (guint i = 1; i < em_register_window_count (window); i++)
    if (strcmp (em_register_window_get_entry (window, i - 1)->currency.code, em_register_window_get_entry (window, i)->currency.code) == 0)
      ck_assert (em_register_window_get_entry (window, i - 1)->net_minor >= em_register_window_get_entry (window, i)->net_minor);
  g_autofree char *first = g_strdup (number_at (window, 0));
  gtk_widget_activate_action (GTK_WIDGET (window), "win.close", NULL);
  test_settle (50);
  ck_assert_ptr_null (gtk_application_get_windows (GTK_APPLICATION (application)));
  window = em_register_window_present (application);
  wait_for_scan (window);
  ck_assert_str_eq (number_at (window, 0), first);
  em_register_window_sort (window, "", FALSE);
  ck_assert_str_ge (em_register_window_get_entry (window, 0)->text[EM_ENTRY_DATE], em_register_window_get_entry (window, 1)->text[EM_ENTRY_DATE]);
  close_all (application);
}
END_TEST

static GtkWidget *
find_text (GtkWidget *within, const char *end)
{
  if (GTK_IS_LABEL (within) && gtk_widget_get_mapped (within) && g_str_has_suffix (gtk_label_get_text (GTK_LABEL (within)), end))
    return within;
  for (GtkWidget *child = gtk_widget_get_first_child (within); child != NULL; child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *found = find_text (child, end);
      if (found != NULL)
        return found;
    }
  return NULL;
}

/* Where the drawn text of a label ends. */
static double
text_end (GtkWidget *label, GtkWidget *within)
{
  PangoRectangle ink;
  int x, y;
  graphene_point_t end;

  gtk_label_get_layout_offsets (GTK_LABEL (label), &x, &y);
  pango_layout_get_pixel_extents (gtk_label_get_layout (GTK_LABEL (label)), NULL, &ink);
  ck_assert (gtk_widget_compute_point (label, within, &GRAPHENE_POINT_INIT ((float) (x + ink.width), 0), &end));
  return (double) end.x;
}

/* The heading ends where the figures beneath it end, but for the cells' own edges. */
START_TEST (the_price_stands_under_its_heading)
{
  g_autoptr (EmApplication) application = test_application ();
  EmRegisterWindow *window = open_register (application);
  GtkWidget *title = find_text (GTK_WIDGET (window), "Net price"), *figure;

  test_settle (100);
  figure = find_text (GTK_WIDGET (window), " EUR");
  if (figure == NULL)
    figure = find_text (GTK_WIDGET (window), "\302\240EUR");
  ck_assert_ptr_nonnull (title);
  ck_assert_ptr_nonnull (figure);
  ck_assert_double_lt (fabs (text_end (title, GTK_WIDGET (window)) - text_end (figure, GTK_WIDGET (window))), 8);
  close_all (application);
}
END_TEST

START_TEST (what_is_empty_says_what_to_do)
{
  g_autoptr (EmApplication) application = test_application ();
  EmRegisterWindow *window = open_register (application);
  g_autofree char *bare = g_dir_make_tmp ("estimend-XXXXXX", NULL);

  ck_assert_str_eq (em_register_window_get_page (window), "table");
  em_register_window_search (window, "no such words");
  ck_assert_str_eq (em_register_window_get_page (window), "none");
  em_register_window_set_folder (window, bare);
  wait_for_scan (window);
  ck_assert_str_eq (em_register_window_get_page (window), "bare");
  em_register_window_set_folder (window, "");
  ck_assert_str_eq (em_register_window_get_page (window), "empty");
  g_rmdir (bare);
  close_all (application);
}
END_TEST

static guint
count_quote_windows (EmApplication *application)
{
  guint n = 0;

  for (GList *window = gtk_application_get_windows (GTK_APPLICATION (application)); window != NULL; window = window->next)
    n += EM_IS_WINDOW (window->data);
  return n;
}

/* Asked for twice at once, again later, and by another path to the same file. */
START_TEST (a_file_is_open_in_one_window_only)
{
  g_autoptr (EmApplication) application = test_application ();
  g_autofree char *path = path_of ("blow-mold"), *other_path = path_of ("injection-mold"), *link = path_of ("link");
  g_autoptr (GFile) file = g_file_new_for_path (path), linked = g_file_new_for_path (link);

  ck_assert_int_eq (symlink (path, link), 0);
  em_application_open_quote (application, file, NULL);
  em_application_open_quote (application, file, NULL);
  EmWindow *window = wait_for_quote (application);
  test_settle (300);
  em_application_open_quote (application, file, window);
  em_application_open_quote (application, linked, window);
  test_settle (300);
  /* What takes more than half a second is spoken of until it is done. */
  for (int i = 0; i < 400 && em_window_get_said (window) != NULL; i++)
    test_settle (20);
  ck_assert_msg (em_window_get_said (window) == NULL, "it says: %s", em_window_get_said (window));
  ck_assert_uint_eq (count_quote_windows (application), 1);
  ck_assert_ptr_eq (em_application_find_path (application, link), window);
  ck_assert_ptr_null (em_application_find_path (application, other_path));
  /* Nor can another be saved over it. */
  g_autoptr (EmDocument) document = em_document_new_from_path (em_application_get_basis (application), other_path, NULL);
  EmWindow *other = test_window (application, document);
  em_window_save_to (other, path);
  test_settle (300);
  ck_assert_ptr_nonnull (em_window_get_said (other));
  ck_assert_ptr_nonnull (strstr (em_window_get_said (other), "another window"));
  ck_assert_str_eq (em_document_get_path (document), other_path);
  close_all (application);
}
END_TEST

START_TEST (a_state_is_written_to_the_file)
{
  g_autoptr (EmApplication) application = test_application ();
  EmRegisterWindow *window = open_register (application);
  g_autofree char *path = path_of ("blow-mold");
  EmQuoteFile file;

  em_register_window_search (window, "D-1002");
  em_register_window_select (window, 0);
  em_register_window_set_state (window, EM_STATE_WON);
  wait_for_scan (window);
  ck_assert (em_quote_file_load (path, &file, NULL));
  ck_assert_int_eq (file.quote.state, EM_STATE_WON);
  ck_assert (file.quote.has_sent_rates && file.sent_rates != NULL && file.sent_catalogue != NULL);
  ck_assert (em_rates_equal (file.sent_rates, em_basis_get_rates (em_application_get_basis (application))));
  em_quote_file_clear (&file);
  em_register_window_search (window, "D-1001");
  em_register_window_select (window, 0);
  em_register_window_set_state (window, EM_STATE_LOST);
  wait_for_scan (window);
  em_register_window_search (window, "");
  /* One of two decided. */
  ck_assert_msg (strstr (em_register_window_get_summary (window), "won 1 of 2 decided, 50%") != NULL, "%s",
                 em_register_window_get_summary (window));
  em_register_window_select (window, 1);
  em_register_window_search (window, "D-1002");
  em_register_window_select (window, 0);
  em_register_window_set_state (window, EM_STATE_DRAFT);
  wait_for_scan (window);
  ck_assert (em_quote_file_load (path, &file, NULL));
  ck_assert (!file.quote.has_sent_rates && file.sent_rates == NULL);
  em_quote_file_clear (&file);
  close_all (application);
}
END_TEST

/* Who has it open would be asked about a change he can't see. */
START_TEST (a_quote_that_is_open_elsewhere_is_left_alone)
{
  g_autoptr (EmApplication) application = test_application ();
  EmRegisterWindow *window = open_register (application);
  g_autofree char *path = path_of ("blow-mold"), *before = NULL, *after = NULL;
  g_autoptr (EmLock) lock = em_lock_take (path, NULL);

  ck_assert (g_file_get_contents (path, &before, NULL, NULL));
  em_register_window_search (window, "D-1002");
  em_register_window_select (window, 0);
  em_register_window_set_state (window, EM_STATE_SENT);
  wait_for_scan (window);
  ck_assert (g_file_get_contents (path, &after, NULL, NULL));
  ck_assert_str_eq (before, after);
  /* Told by a thread, which may take its time. */
  for (int i = 0; i < 3000 && strstr (em_register_window_get_summary (window), "open") == NULL; i++)
    test_settle (20);
  ck_assert_msg (strstr (em_register_window_get_summary (window), "open") != NULL, "%s", em_register_window_get_summary (window));
  close_all (application);
}
END_TEST

static void
step (EmRegisterWindow *window, const char *action)
{
  gtk_widget_activate_action (GTK_WIDGET (window), action, NULL);
  wait_for_scan (window);
}

/* A sent quote with a line that this program would not write, made a draft and back: byte by byte as it was, its rates with it. */
START_TEST (a_state_is_undone_to_the_byte)
{
  g_autoptr (EmApplication) application = test_application ();
  EmRegisterWindow *window = open_register (application);
  g_autofree char *path = path_of ("blow-mold"), *sent = NULL, *draft = NULL, *undone = NULL, *again = NULL;
  EmQuoteFile file;
  gsize length, other_length;

  ck_assert_ptr_null (em_register_window_get_done (window));
  em_register_window_search (window, "D-1002");
  em_register_window_select (window, 0);
  em_register_window_set_state (window, EM_STATE_SENT);
  wait_for_scan (window);
  /* A comment is no part of a quote: writing the quote anew would lose it. */
  ck_assert (g_file_get_contents (path, &sent, NULL, NULL));
  g_autofree char *marked = g_strconcat (sent, "<!-- by hand -->\n", NULL);
  ck_assert (g_file_set_contents (path, marked, -1, NULL));
  step (window, "register.again");
  em_register_window_set_state (window, EM_STATE_DRAFT);
  wait_for_scan (window);
  ck_assert (g_file_get_contents (path, &draft, &length, NULL));
  ck_assert_ptr_null (strstr (draft, "by hand"));
  ck_assert_ptr_nonnull (strstr (em_register_window_get_done (window), "Sent → Draft"));
  ck_assert_ptr_nonnull (strstr (em_register_window_get_done (window), "D-1002"));

  step (window, "register.undo");
  ck_assert (g_file_get_contents (path, &undone, NULL, NULL));
  ck_assert_str_eq (undone, marked);
  ck_assert_ptr_nonnull (strstr (em_register_window_get_done (window), "Draft → Sent"));
  ck_assert_int_eq (em_register_window_get_selected (window)->state, EM_STATE_SENT);
  ck_assert (em_quote_file_load (path, &file, NULL));
  ck_assert (file.quote.has_sent_rates && file.sent_rates != NULL && file.sent_catalogue != NULL);
  em_quote_file_clear (&file);

  step (window, "register.redo");
  ck_assert (g_file_get_contents (path, &again, &other_length, NULL));
  ck_assert_uint_eq (length, other_length);
  ck_assert_str_eq (again, draft);
  close_all (application);
}
END_TEST

/* Two steps of one file and one of another, all the way back and forth again. */
START_TEST (states_are_undone_one_by_one)
{
  g_autoptr (EmApplication) application = test_application ();
  EmRegisterWindow *window = open_register (application);
  g_autofree char *first = path_of ("blow-mold"), *second = path_of ("injection-mold");
  g_autofree char *first_before = NULL, *second_before = NULL, *first_after = NULL, *second_after = NULL;

  ck_assert (g_file_get_contents (first, &first_before, NULL, NULL));
  ck_assert (g_file_get_contents (second, &second_before, NULL, NULL));
  em_register_window_search (window, "D-1002");
  em_register_window_select (window, 0);
  em_register_window_set_state (window, EM_STATE_SENT);
  wait_for_scan (window);
  em_register_window_set_state (window, EM_STATE_WON);
  wait_for_scan (window);
  em_register_window_search (window, "D-1001");
  em_register_window_select (window, 0);
  em_register_window_set_state (window, EM_STATE_LOST);
  wait_for_scan (window);
  for (int i = 0; i < 4; i++)
    step (window, "register.undo");
  ck_assert (g_file_get_contents (first, &first_after, NULL, NULL));
  ck_assert (g_file_get_contents (second, &second_after, NULL, NULL));
  ck_assert_str_eq (first_before, first_after);
  ck_assert_str_eq (second_before, second_after);
  for (int i = 0; i < 4; i++)
    step (window, "register.redo");
  em_register_window_search (window, "");
  ck_assert_msg (strstr (em_register_window_get_summary (window), "won 1 of 2 decided") != NULL, "%s", em_register_window_get_summary (window));
  close_all (application);
}
END_TEST

/* What somebody else wrote meanwhile is never lost for a step back: it is refused in words, and not offered again. */
START_TEST (a_file_changed_meanwhile_is_left_alone)
{
  g_autoptr (EmApplication) application = test_application ();
  EmRegisterWindow *window = open_register (application);
  g_autofree char *path = path_of ("blow-mold"), *written = NULL, *after = NULL;

  em_register_window_search (window, "D-1002");
  em_register_window_select (window, 0);
  em_register_window_set_state (window, EM_STATE_SENT);
  wait_for_scan (window);
  ck_assert (g_file_get_contents (path, &written, NULL, NULL));
  g_autofree char *other = g_strconcat (written, "<!-- by another -->\n", NULL);
  ck_assert (g_file_set_contents (path, other, -1, NULL));
  step (window, "register.undo");
  ck_assert (g_file_get_contents (path, &after, NULL, NULL));
  ck_assert_str_eq (after, other);
  ck_assert_msg (strstr (em_register_window_get_summary (window), "was changed since then") != NULL, "%s", em_register_window_get_summary (window));
  ck_assert_ptr_null (em_register_window_get_done (window));
  close_all (application);
}
END_TEST

/* Who has it open keeps what he sees; the step stays for later. */
START_TEST (a_step_back_waits_for_who_has_it_open)
{
  g_autoptr (EmApplication) application = test_application ();
  EmRegisterWindow *window = open_register (application);
  g_autofree char *path = path_of ("blow-mold"), *before = NULL, *sent = NULL, *after = NULL;

  ck_assert (g_file_get_contents (path, &before, NULL, NULL));
  em_register_window_search (window, "D-1002");
  em_register_window_select (window, 0);
  em_register_window_set_state (window, EM_STATE_SENT);
  wait_for_scan (window);
  ck_assert (g_file_get_contents (path, &sent, NULL, NULL));
  EmLock *lock = em_lock_take (path, NULL);
  step (window, "register.undo");
  ck_assert (g_file_get_contents (path, &after, NULL, NULL));
  ck_assert_str_eq (sent, after);
  ck_assert_msg (strstr (em_register_window_get_summary (window), "open") != NULL, "%s", em_register_window_get_summary (window));
  em_lock_free (lock);
  step (window, "register.undo");
  g_free (after);
  ck_assert (g_file_get_contents (path, &after, NULL, NULL));
  ck_assert_str_eq (before, after);
  close_all (application);
}
END_TEST

START_TEST (an_open_quote_changes_state_where_it_is_open)
{
  g_autoptr (EmApplication) application = test_application ();
  EmRegisterWindow *window = open_register (application);

  em_register_window_search (window, "D-1002");
  em_register_window_select (window, 0);
  em_register_window_open (window);
  EmDocument *document = em_window_get_document (wait_for_quote (application));
  em_register_window_set_state (window, EM_STATE_SENT);
  ck_assert_int_eq (em_document_get_quote (document)->state, EM_STATE_SENT);
  ck_assert (em_document_is_modified (document));
  close_all (application);
}
END_TEST

START_TEST (a_copy_is_a_new_draft)
{
  g_autoptr (EmApplication) application = test_application ();
  EmRegisterWindow *window = open_register (application);

  em_register_window_search (window, "D-1003");
  em_register_window_select (window, 0);
  em_register_window_copy (window);
  EmDocument *document = em_window_get_document (wait_for_quote (application));
  const EmQuote *quote = em_document_get_quote (document);
  ck_assert_ptr_null (em_document_get_path (document));
  ck_assert_ptr_null (quote->text[EM_QUOTE_NUMBER]);
  ck_assert_ptr_null (quote->text[EM_QUOTE_REVISES]);
  ck_assert_int_eq (quote->state, EM_STATE_DRAFT);
  ck_assert_int_gt (quote->n_features, 0);
  for (int32_t i = 0; i < quote->n_features; i++)
    ck_assert (em_is_absent (quote->feature[i].actual.bench_s) && em_is_absent (quote->feature[i].actual.wire_mm));
  close_all (application);
}
END_TEST

static void
on_saved (GObject *source, GAsyncResult *result, gpointer data)
{
  *(int *) data = em_document_save_finish (EM_DOCUMENT (source), result, NULL) ? 1 : -1;
}

/* The third feature goes from four places to five: nothing else is told, and the money that makes. */
START_TEST (a_revision_tells_what_changed)
{
  g_autoptr (EmApplication) application = test_application ();
  EmRegisterWindow *window = open_register (application);
  g_autofree char *path = path_of ("revised");
  int done = 0;

  em_register_window_search (window, "D-1001");
  em_register_window_select (window, 0);
  em_register_window_revise (window);
  EmDocument *document = em_window_get_document (wait_for_quote (application));
  ck_assert_str_eq (em_document_get_quote (document)->text[EM_QUOTE_NUMBER], "D-1001");
  ck_assert_str_eq (em_document_get_quote (document)->text[EM_QUOTE_REVISION], "B");
  ck_assert_str_eq (em_document_get_quote (document)->text[EM_QUOTE_REVISES], "D-1001 A");
  ck_assert_int_eq (em_document_get_quote (document)->feature[2].count, 4);
  em_document_set_feature_number (document, 2, EM_FEATURE_COUNT, 5);
  em_document_save_async (document, path, NULL, on_saved, &done);
  while (done == 0)
    g_main_context_iteration (NULL, TRUE);
  ck_assert_int_eq (done, 1);
  em_register_window_set_folder (window, folder);
  wait_for_scan (window);
  em_register_window_search (window, "D-1001");
  ck_assert_uint_eq (em_register_window_count (window), 2);
  em_register_window_select (window, 1);
  em_register_window_select (window, 0);
  for (int i = 0; i < 3000 && em_register_window_get_changes (window)[0] == '\0'; i++)
    test_settle (20);
  const char *changes = em_register_window_get_changes (window);
  ck_assert_msg (strstr (changes, "Since D-1001 A:") != NULL, "%s", changes);
  ck_assert_msg (strstr (changes, "× 4 → × 5") != NULL, "%s", changes);
  ck_assert_msg (strstr (changes, "Net:") != NULL && strstr (changes, "(+") != NULL, "%s", changes);
  ck_assert_msg (strstr (changes, "Added") == NULL && strstr (changes, "Customer") == NULL, "%s", changes);
  close_all (application);
}
END_TEST

static GtkWidget *
find_button (GtkWidget *in, const char *label)
{
  if (GTK_IS_BUTTON (in) && g_strcmp0 (gtk_button_get_label (GTK_BUTTON (in)), label) == 0)
    return in;
  for (GtkWidget *child = gtk_widget_get_first_child (in); child != NULL; child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *found = find_button (child, label);
      if (found != NULL)
        return found;
    }
  return NULL;
}

/* Arc-on for 30, 40 and 50 of 100 s at the bench: a median factor of 0.4, whatever the book says now. */
static int
count_labels (GtkWidget *in, const char *text)
{
  int n = GTK_IS_LABEL (in) && gtk_widget_get_mapped (in) && g_str_equal (gtk_label_get_text (GTK_LABEL (in)), text);

  for (GtkWidget *child = gtk_widget_get_first_child (in); child != NULL; child = gtk_widget_get_next_sibling (child))
    n += count_labels (child, text);
  return n;
}

static GtkWidget *
find_check (GtkWidget *in)
{
  GtkWidget *found = GTK_IS_CHECK_BUTTON (in) && gtk_widget_get_mapped (in) ? in : NULL;

  for (GtkWidget *child = gtk_widget_get_first_child (in); found == NULL && child != NULL; child = gtk_widget_get_next_sibling (child))
    found = find_check (child);
  return found;
}

START_TEST (past_jobs_teach_the_rate_book)
{
  static const double arc_on_s[] = { 30, 50, 40 };
  g_autoptr (EmApplication) application = test_application ();
  EmRegisterWindow *window = open_register (application);
  g_autoptr (EmBasis) basis = test_basis ();
  g_autofree char *from = path_of ("injection-mold"), *path = path_of ("done");
  g_autoptr (EmDocument) document = em_document_new_from_path (basis, from, NULL);
  int done = 0;

  for (int32_t i = 0; i < 3; i++)
    {
      EmActual actual = { arc_on_s[i], 100, EM_ABSENT };
      em_document_set_feature_number (document, i, EM_FEATURE_ACCESS, EM_ACCESS_OPEN);
      em_document_set_actual (document, i, &actual);
    }
  em_document_set_state (document, EM_STATE_WON);
  em_document_save_async (document, path, NULL, on_saved, &done);
  while (done == 0)
    g_main_context_iteration (NULL, TRUE);
  EmBookWindow *book = em_book_window_present (application, NULL, "jobs");
  test_settle (50);
  g_signal_emit_by_name (find_button (GTK_WIDGET (book), "_Look through past jobs"), "clicked");
  GtkWidget *take = find_button (GTK_WIDGET (book), "_Take the ticked ones");
  for (int i = 0; i < 3000 && !gtk_widget_get_sensitive (take); i++)
    test_settle (20);
  ck_assert (gtk_widget_get_sensitive (take));
  ck_assert (!em_draft_is_changed (em_book_window_get_draft (book)));
  g_signal_emit_by_name (take, "clicked");
  const EmRates *rates = em_draft_get_rates (em_book_window_get_draft (book));
  for (int i = 0; i < rates->n_machines; i++)
    if (rates->machine[i].process == EM_PROCESS_LASER)
      ck_assert_double_eq_tol (rates->machine[i].operating_ratio[EM_ACCESS_OPEN], 0.4, 1e-12);
    else
      ck_assert_double_eq (rates->machine[i].operating_ratio[EM_ACCESS_OPEN], em_basis_get_rates (basis)->machine[i].operating_ratio[EM_ACCESS_OPEN]);
  ck_assert (em_draft_is_changed (em_book_window_get_draft (book)));
  /* What stands in the book now is shown beside what was found, a step back too; what was unticked stays so. */
  GtkWidget *stack = gtk_widget_get_ancestor (take, GTK_TYPE_STACK);
  ck_assert_int_eq (count_labels (stack, "0.40"), 1);
  gtk_check_button_set_active (GTK_CHECK_BUTTON (find_check (stack)), FALSE);
  gtk_widget_activate_action (GTK_WIDGET (book), "win.undo", NULL);
  ck_assert (!em_draft_is_changed (em_book_window_get_draft (book)));
  ck_assert_int_eq (count_labels (stack, "0.40"), 0);
  ck_assert (!gtk_check_button_get_active (GTK_CHECK_BUTTON (find_check (stack))));
  ck_assert (window != NULL);
  close_all (application);
}
END_TEST

static const struct { const char *from, *next; } revisions[] =
{
  { NULL, "A" }, { "", "A" }, { "A", "B" }, { "Y", "Z" }, { "Z", "ZA" }, { "b", "c" }, { "2", "3" }, { "R9", "R10" }, { "09", "10" }, { "A-", "A-A" },
};

START_TEST (revisions_are_counted_on)
{
  g_autofree char *next = em_revision_next (revisions[_i].from);

  ck_assert_str_eq (next, revisions[_i].next);
}
END_TEST

/* On 5 March 2026, worked by the rules in em-number.h. */
static const struct { const char *pattern, *next; } numbers[] =
{
  { NULL, NULL }, { "", NULL }, { "Q-%Y-###", "Q-2026-001" }, { "%y%m-##", "2603-01" }, { "N", "N1" },
  { "D-####", "D-1004" },          /* the demos are D-1001 to D-1003 */
  { "D-100#", "D-1004" }, { "D-###", "D-1004" }, { "###/X", "001/X" },
};

START_TEST (numbers_run_on)
{
  g_autoptr (EmBasis) basis = test_basis ();
  g_autoptr (EmRegister) reg = em_register_scan (folder, NULL, em_basis_get_rates (basis), em_basis_get_catalogue (basis), NULL, NULL, NULL, NULL);
  g_autoptr (GDateTime) day = g_date_time_new_local (2026, 3, 5, 12, 0, 0);
  g_autofree char *next = em_number_next (numbers[_i].pattern, day, reg);

  ck_assert_ptr_nonnull (reg);
  ck_assert_msg (g_strcmp0 (next, numbers[_i].next) == 0, "%s gives %s", numbers[_i].pattern, next);
}
END_TEST

START_TEST (a_quote_is_given_the_next_number)
{
  g_autoptr (EmApplication) application = test_application ();
  EmRegisterWindow *window = open_register (application);
  g_autoptr (EmDocument) document = em_document_new (em_application_get_basis (application));
  EmWindow *quote_window = test_window (application, document);
  EmRates rates;
  EmCatalogue catalogue;

  test_act (quote_window, "win.next-number");
  for (int i = 0; i < 3000 && em_window_get_said (quote_window) == NULL; i++)
    test_settle (20);
  ck_assert_ptr_null (em_document_get_quote (document)->text[EM_QUOTE_NUMBER]);
  ck_assert (em_rates_copy (em_basis_get_rates (em_application_get_basis (application)), &rates) == EM_OK);
  ck_assert (em_catalogue_copy (em_basis_get_catalogue (em_application_get_basis (application)), &catalogue) == EM_OK);
  em_rates_set_text (&rates, EM_SHOP_NUMBER_PATTERN, "D-####");
  g_autoptr (EmBasis) basis = em_basis_new_take (&rates, &catalogue);
  em_application_set_basis (application, basis);
  test_act (quote_window, "win.next-number");
  for (int i = 0; i < 3000 && em_document_get_quote (document)->text[EM_QUOTE_NUMBER] == NULL; i++)
    test_settle (20);
  ck_assert_str_eq (em_document_get_quote (document)->text[EM_QUOTE_NUMBER], "D-1004");
  em_document_undo (document);
  ck_assert_ptr_null (em_document_get_quote (document)->text[EM_QUOTE_NUMBER]);
  ck_assert (window != NULL);
  close_all (application);
}
END_TEST

START_TEST (without_a_folder_it_says_what_for)
{
  g_autoptr (EmApplication) application = test_application ();
  EmRegisterWindow *window = em_register_window_present (application);

  test_settle (50);
  ck_assert_uint_eq (em_register_window_count (window), 0);
  ck_assert (!em_register_window_is_busy (window));
  em_register_window_set_folder (window, "/no/such/folder/anywhere");
  wait_for_scan (window);
  ck_assert_str_ne (em_register_window_get_summary (window), "");
  close_all (application);
}
END_TEST

/* Of a long list of changes the first are told and the others counted: the net price and 199 of 250 features, 51 more. What is alike on
 * both sides is no change. */
START_TEST (very_many_changes_are_counted)
{
  g_autoptr (EmDocument) demo = test_demo ("injection-mold");
  EmQuote before, after;

  ck_assert_int_eq (em_quote_copy (em_document_get_quote (demo), &before), EM_OK);
  for (int i = before.n_features; i < 300; i++)
    {
      EmFeature feature;
      ck_assert_int_eq (em_feature_copy (&before.feature[i % 8], &feature), EM_OK);
      feature.id = 0;
      ck_assert_int_eq (em_quote_insert_take (&before, i, &feature), EM_OK);
    }
  ck_assert_int_eq (em_quote_copy (&before, &after), EM_OK);
  EmRevisionPair *same = em_revision_pair_new (&before, em_document_get_basis (demo), &after, em_document_get_basis (demo));
  g_autoptr (GPtrArray) nothing = em_revision_pair_tell (same);
  ck_assert_uint_eq (nothing->len, 0);
  for (int i = 0; i < 250; i++)
    after.feature[i].count += 1;
  EmRevisionPair *pair = em_revision_pair_new (&before, em_document_get_basis (demo), &after, em_document_get_basis (demo));
  g_autoptr (GPtrArray) told = em_revision_pair_tell (pair);
  ck_assert_uint_eq (told->len, 201);
  ck_assert (g_str_has_prefix (told->pdata[0], "Net: "));
  ck_assert_str_eq (told->pdata[200], "51 more features differ");
  em_revision_pair_free (same);
  em_revision_pair_free (pair);
  em_quote_clear (&before);
  em_quote_clear (&after);
}
END_TEST

int
main (void)
{
  TCase *tcase = tcase_create ("register");

  tcase_add_checked_fixture (tcase, make_shop, drop_shop);
  tcase_add_test (tcase, keys_of_the_search);
  tcase_add_test (tcase, very_many_changes_are_counted);
  tcase_add_test (tcase, quotes_are_found_as_one_types);
  tcase_add_test (tcase, columns_sort_and_are_remembered);
  tcase_add_test (tcase, what_is_empty_says_what_to_do);
  tcase_add_test (tcase, the_price_stands_under_its_heading);
  tcase_add_test (tcase, a_file_is_open_in_one_window_only);
  tcase_add_test (tcase, a_state_is_written_to_the_file);
  tcase_add_test (tcase, a_quote_that_is_open_elsewhere_is_left_alone);
  tcase_add_test (tcase, a_state_is_undone_to_the_byte);
  tcase_add_test (tcase, states_are_undone_one_by_one);
  tcase_add_test (tcase, a_file_changed_meanwhile_is_left_alone);
  tcase_add_test (tcase, a_step_back_waits_for_who_has_it_open);
  tcase_add_test (tcase, an_open_quote_changes_state_where_it_is_open);
  tcase_add_test (tcase, a_copy_is_a_new_draft);
  tcase_add_test (tcase, a_revision_tells_what_changed);
  tcase_add_test (tcase, a_quote_is_given_the_next_number);
  tcase_add_test (tcase, past_jobs_teach_the_rate_book);
  tcase_add_test (tcase, without_a_folder_it_says_what_for);
  tcase_add_loop_test (tcase, numbers_run_on, 0, (int) G_N_ELEMENTS (numbers));
  tcase_add_loop_test (tcase, revisions_are_counted_on, 0, (int) G_N_ELEMENTS (revisions));
  return test_run ("register", tcase, 60);
}
