/* test-register-look: the window of past quotes by hand: days typed, the order chosen, room for large text, a folder that others change.
 *
 * The demos are D-1001 of 16 March 2026, D-1002 of 18 March and D-1003 of 20 March.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-test-register.h"

#include "em-beside.h"
#include "em-register-filter.h"
#include "em-register-panel.h"
#include "em-test-letters.h"

#include <glib/gstdio.h>
#include <string.h>

static char *
path_of (const char *name)
{
  return g_build_filename (folder, name, NULL);
}

/* A demo in the folder; the words of it changed. */
static void
put_demo (const char *id, const char *name, const char *from, const char *to)
{
  g_autofree char *demo = em_demo_path (id), *path = path_of (name), *content = NULL;
  g_autoptr (GString) text = NULL;

  ck_assert (g_file_get_contents (demo, &content, NULL, NULL));
  text = g_string_new (content);
  if (from != NULL)
    ck_assert_uint_ge (g_string_replace (text, from, to, 1), 1);
  ck_assert (g_file_set_contents (path, text->str, -1, NULL));
}

/* The nth mapped widget of a type within another; NULL. */
static GtkWidget *
find_nth (GtkWidget *in, GType type, int *n)
{
  if (g_type_is_a (G_OBJECT_TYPE (in), type) && gtk_widget_get_mapped (in) && (*n)-- == 0)
    return in;
  for (GtkWidget *child = gtk_widget_get_first_child (in); child != NULL; child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *found = find_nth (child, type, n);
      if (found != NULL)
        return found;
    }
  return NULL;
}

static GtkWidget *
find (gpointer in, GType type, int n)
{
  return find_nth (GTK_WIDGET (in), type, &n);
}

static GtkWidget *
filter_of (EmRegisterWindow *window)
{
  return find (window, EM_TYPE_REGISTER_FILTER, 0);
}

enum { STATES, DATES, ORDER };   /* drop-downs of the filter */

static GtkDropDown *
drop_down_of (EmRegisterWindow *window, int which)
{
  GtkWidget *drop_down = find (filter_of (window), GTK_TYPE_DROP_DOWN, which);

  ck_assert_ptr_nonnull (drop_down);
  return GTK_DROP_DOWN (drop_down);
}

static const char *
chosen (GtkDropDown *drop_down)
{
  return gtk_string_object_get_string (gtk_drop_down_get_selected_item (drop_down));
}

static void
choose (GtkDropDown *drop_down, const char *name)
{
  GListModel *model = gtk_drop_down_get_model (drop_down);

  for (guint i = 0; i < g_list_model_get_n_items (model); i++)
    {
      g_autoptr (GtkStringObject) item = g_list_model_get_item (model, i);
      if (g_str_equal (gtk_string_object_get_string (item), name))
        {
          gtk_drop_down_set_selected (drop_down, i);
          return;
        }
    }
  ck_abort_msg ("“%s” can't be chosen", name);
}

static const char *
number_at (EmRegisterWindow *window, guint row)
{
  const EmRegisterEntry *entry = em_register_window_get_entry (window, row);

  ck_assert_ptr_nonnull (entry);
  return entry->text[EM_ENTRY_NUMBER];
}

/* Customers: Fernwick's D-1001, Lindmoor's D-1002, Oakridge's D-1003. */
START_TEST (the_order_is_chosen)
{
  g_autoptr (EmApplication) application = test_application ();
  EmRegisterWindow *window = open_register (application);
  GtkDropDown *order = drop_down_of (window, ORDER);
  GtkWidget *direction = find (filter_of (window), GTK_TYPE_TOGGLE_BUTTON, ORDER + 1);   /* behind those within the drop-downs */

  ck_assert_ptr_null (gtk_widget_get_ancestor (direction, GTK_TYPE_DROP_DOWN));
  ck_assert_str_eq (chosen (order), "Latest first");
  ck_assert (!gtk_widget_get_sensitive (direction));
  ck_assert_str_eq (number_at (window, 0), "D-1003");
  choose (order, "Customer");
  ck_assert_str_eq (number_at (window, 0), "D-1001");
  ck_assert (gtk_widget_get_sensitive (direction));
  gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (direction), TRUE);
  ck_assert_str_eq (number_at (window, 0), "D-1003");
  ck_assert_str_eq (number_at (window, 2), "D-1001");
  /* As a header does it. */
  em_register_window_sort (window, "date", FALSE);
  ck_assert_str_eq (chosen (order), "Date");
  ck_assert (!gtk_toggle_button_get_active (GTK_TOGGLE_BUTTON (direction)));
  ck_assert_str_eq (number_at (window, 0), "D-1001");
  em_register_window_sort (window, "number", TRUE);
  ck_assert_str_eq (chosen (order), "Number");
  ck_assert (gtk_toggle_button_get_active (GTK_TOGGLE_BUTTON (direction)));
  choose (order, "Latest first");
  ck_assert_str_eq (number_at (window, 0), "D-1003");
  ck_assert (!gtk_toggle_button_get_active (GTK_TOGGLE_BUTTON (direction)) && !gtk_widget_get_sensitive (direction));
  close_all (application);
}
END_TEST

/* The headers themselves, which sort by a click that programs can't do but GTK's sorter can. */
START_TEST (the_order_follows_the_headers)
{
  g_autoptr (EmApplication) application = test_application ();
  EmRegisterWindow *window = open_register (application);
  GtkColumnView *view = GTK_COLUMN_VIEW (find (window, GTK_TYPE_COLUMN_VIEW, 0));
  g_autoptr (GtkColumnViewColumn) tool = g_list_model_get_item (gtk_column_view_get_columns (view), 3);

  ck_assert_str_eq (gtk_column_view_column_get_title (tool), "Tool");
  gtk_column_view_sort_by_column (view, tool, GTK_SORT_DESCENDING);
  ck_assert_str_eq (chosen (drop_down_of (window, ORDER)), "Tool");
  /* "Serving tray", "Hollow profile die", "Canister" */
  ck_assert_str_eq (number_at (window, 0), "D-1001");
  ck_assert_str_eq (number_at (window, 2), "D-1002");
  close_all (application);
}
END_TEST

/* What a keyboard meets in the open list: the choice, though it was made by a header. */
START_TEST (a_drop_down_opens_at_its_choice)
{
  g_autoptr (EmApplication) application = test_application ();
  EmRegisterWindow *window = open_register (application);
  GtkDropDown *order = drop_down_of (window, ORDER);
  GtkWidget *focus, *label;

  em_register_window_sort (window, "state", FALSE);
  test_settle (50);
  gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (find (order, GTK_TYPE_TOGGLE_BUTTON, 0)), TRUE);
  test_settle (100);
  focus = gtk_root_get_focus (GTK_ROOT (window));
  ck_assert_ptr_nonnull (focus);
  label = find (focus, GTK_TYPE_LABEL, 0);
  ck_assert_ptr_nonnull (label);
  ck_assert_str_eq (gtk_label_get_text (GTK_LABEL (label)), "State");
  ck_assert (gtk_widget_is_ancestor (focus, GTK_WIDGET (order)));
  close_all (application);
}
END_TEST

static void
type_days (EmRegisterWindow *window, const char *from, const char *to)
{
  gtk_editable_set_text (GTK_EDITABLE (find (filter_of (window), GTK_TYPE_ENTRY, 0)), from);
  gtk_editable_set_text (GTK_EDITABLE (find (filter_of (window), GTK_TYPE_ENTRY, 1)), to);
}

static gboolean
is_wrong (EmRegisterWindow *window, int entry)
{
  return gtk_widget_has_css_class (find (filter_of (window), GTK_TYPE_ENTRY, entry), "error");
}

/* Both days count; a month is all of it; what is no day is said to be none and bounds nothing. */
static const struct { const char *from, *to; guint n_found; gboolean is_from_wrong, is_to_wrong; } days[] =
{
  { "", "", 3, FALSE, FALSE },
  { "2026-03-18", "", 2, FALSE, FALSE },
  { "2026-03-17", "18.3.2026", 1, FALSE, FALSE },
  { "2026-03", "2026-03", 3, FALSE, FALSE },
  { "", "2026-02", 0, FALSE, FALSE },
  { "2026-02-30", "2026-03-17", 1, TRUE, FALSE },
  { "2026-03-18", "soon", 2, FALSE, TRUE },
  { "2026-03-19", "2026-03-17", 0, FALSE, TRUE },
};

START_TEST (days_are_typed)
{
  g_autoptr (EmApplication) application = test_application ();
  EmRegisterWindow *window = open_register (application);

  ck_assert_ptr_null (find (filter_of (window), GTK_TYPE_ENTRY, 0));
  choose (drop_down_of (window, DATES), "From … to …");
  test_settle (50);
  ck_assert_ptr_nonnull (find (filter_of (window), GTK_TYPE_ENTRY, 1));
  ck_assert (gtk_widget_is_ancestor (gtk_root_get_focus (GTK_ROOT (window)), find (filter_of (window), GTK_TYPE_ENTRY, 0)));
  type_days (window, days[_i].from, days[_i].to);
  test_settle (20);
  ck_assert_uint_eq (em_register_window_count (window), days[_i].n_found);
  ck_assert_int_eq (is_wrong (window, 0), days[_i].is_from_wrong);
  ck_assert_int_eq (is_wrong (window, 1), days[_i].is_to_wrong);
  ck_assert_str_eq (em_register_window_get_page (window), days[_i].n_found > 0 ? "table" : "none");
  /* Days that are not asked for any more bound nothing. */
  choose (drop_down_of (window, DATES), "Any date");
  ck_assert_uint_eq (em_register_window_count (window), 3);
  close_all (application);
}
END_TEST

/* The part of the window that is scrolled sideways, or NULL. */
static GtkAdjustment *
find_sideways (GtkWidget *in)
{
  GtkAdjustment *found = NULL;

  if (GTK_IS_SCROLLED_WINDOW (in) && gtk_widget_get_mapped (in))
    {
      GtkAdjustment *across = gtk_scrolled_window_get_hadjustment (GTK_SCROLLED_WINDOW (in));

      if (gtk_adjustment_get_upper (across) > gtk_adjustment_get_page_size (across) + 0.5)
        return across;
    }
  for (GtkWidget *child = gtk_widget_get_first_child (in); child != NULL && found == NULL; child = gtk_widget_get_next_sibling (child))
    found = find_sideways (child);
  return found;
}

/* Columns leave once the window is as wide as it stays, which takes long on a busy machine. */
static void
check_sideways (GtkWidget *in, const char *language)
{
  GtkAdjustment *across = find_sideways (in);

  for (int i = 0; i < 100 && across != NULL; i++)
    {
      test_settle (50);
      across = find_sideways (in);
    }
  if (across != NULL)
    ck_abort_msg ("%s: %g of %g", language, gtk_adjustment_get_page_size (across), gtk_adjustment_get_upper (across));
}

START_TEST (large_text_is_not_scrolled_sideways)
{
  const char *language = test_languages[_i / 2];
  int dpi = _i % 2 == 0 ? 96 : 192;
  g_autoptr (EmApplication) application = test_application_in (language);
  g_autoptr (GListModel) columns = NULL;
  EmRegisterWindow *window;

  g_object_set (gtk_settings_get_default (), "gtk-xft-dpi", dpi * PANGO_SCALE, NULL);
  put_demo ("blow-mold", "damaged.estimend", "<quote", "<nothing");
  window = open_register (application);
  test_settle (200);
  ck_assert_int_eq (gtk_widget_get_width (GTK_WIDGET (window)), 1100);
  ck_assert_int_eq (gtk_widget_get_height (GTK_WIDGET (window)), 700);
  ck_assert_uint_eq (em_register_window_count (window), 4);
  check_sideways (GTK_WIDGET (window), language);
  ck_assert_int_eq (em_beside_is_beside (EM_BESIDE (gtk_widget_get_parent (find (window, EM_TYPE_REGISTER_PANEL, 0)))), dpi == 96);
  columns = g_object_ref (gtk_column_view_get_columns (GTK_COLUMN_VIEW (find (window, GTK_TYPE_COLUMN_VIEW, 0))));
  g_autoptr (GtkColumnViewColumn) number = g_list_model_get_item (columns, 0), tool = g_list_model_get_item (columns, 3);
  ck_assert (gtk_column_view_column_get_visible (number));
  ck_assert (dpi != 96 || gtk_column_view_column_get_visible (tool));
  close_all (application);
}
END_TEST

/* A summary of many words, which once asked for a window of a thousand pixels and more. */
START_TEST (the_foot_leaves_the_window_low)
{
  g_autoptr (EmApplication) application = test_application ();
  EmRegisterWindow *window;
  int least;

  put_demo ("injection-mold", "won.estimend", "<quote ", "<quote state=\"won\" ");
  put_demo ("injection-mold", "damaged.estimend", "<quote", "<nothing");
  window = open_register (application);
  ck_assert_msg (strlen (em_register_window_get_summary (window)) > 50, "%s", em_register_window_get_summary (window));
  gtk_widget_measure (GTK_WIDGET (window), GTK_ORIENTATION_VERTICAL, -1, &least, NULL, NULL, NULL);
  ck_assert_int_lt (least, 600);
  close_all (application);
}
END_TEST

static void
wait_for_count (EmRegisterWindow *window, guint n)
{
  for (int i = 0; i < 250 && em_register_window_count (window) != n; i++)
    test_settle (20);
  ck_assert_uint_eq (em_register_window_count (window), n);
}

/* The row that has the keyboard is the selected one. */
static void
check_row_focus (EmRegisterWindow *window)
{
  GtkWidget *focus = gtk_root_get_focus (GTK_ROOT (window)), *label = focus != NULL ? find (focus, GTK_TYPE_LABEL, 0) : NULL;

  ck_assert_ptr_nonnull (label);
  ck_assert (g_str_has_prefix (gtk_label_get_text (GTK_LABEL (label)), em_register_window_get_selected (window)->text[EM_ENTRY_NUMBER]));
}

/* Nobody asks for it. What is selected stays so, and the keyboard with it. */
START_TEST (a_folder_that_others_change)
{
  g_autoptr (EmApplication) application = test_application ();
  EmRegisterWindow *window = open_register (application);
  g_autofree char *path = path_of ("more.estimend");
  gboolean is_taken = FALSE;

  em_register_window_select (window, 2);
  ck_assert_str_eq (em_register_window_get_selected (window)->text[EM_ENTRY_NUMBER], "D-1001");
  g_signal_emit_by_name (filter_of (window), "down", &is_taken);
  ck_assert (is_taken);
  check_row_focus (window);
  put_demo ("blow-mold", "more.estimend", "D-1002", "D-1099");
  wait_for_count (window, 4);
  check_row_focus (window);
  ck_assert_str_eq (em_register_window_get_selected (window)->text[EM_ENTRY_NUMBER], "D-1001");
  ck_assert_int_eq (g_remove (path), 0);
  wait_for_count (window, 3);
  ck_assert_str_eq (em_register_window_get_selected (window)->text[EM_ENTRY_NUMBER], "D-1001");
  check_row_focus (window);
  close_all (application);
}
END_TEST

START_TEST (a_folder_that_is_gone)
{
  g_autoptr (EmApplication) application = test_application ();
  EmRegisterWindow *window = open_register (application);
  g_autofree char *gone = path_of ("gone");

  em_register_window_set_folder (window, gone);
  wait_for_scan (window);
  ck_assert_str_eq (em_register_window_get_page (window), "unread");
  ck_assert_msg (strstr (em_register_window_get_summary (window), "gone") != NULL, "%s", em_register_window_get_summary (window));
  em_register_window_set_folder (window, folder);
  wait_for_scan (window);
  ck_assert_str_eq (em_register_window_get_page (window), "table");
  close_all (application);
}
END_TEST

static EmWindow *
wait_for_quote (EmApplication *application)
{
  for (int i = 0; i < 250; i++, test_settle (20))
    for (GList *window = gtk_application_get_windows (GTK_APPLICATION (application)); window != NULL; window = window->next)
      if (EM_IS_WINDOW (window->data))
        return window->data;
  ck_abort_msg ("no quote is opened");
  return NULL;
}

/* A and B lie in the folder: what revises A once more is C. */
START_TEST (a_revision_has_a_letter_of_its_own)
{
  g_autoptr (EmApplication) application = test_application ();
  EmRegisterWindow *window;

  put_demo ("injection-mold", "b.estimend", "<revision>A", "<revision>B");
  window = open_register (application);
  em_register_window_search (window, "injection-mold D-1001");
  ck_assert_uint_eq (em_register_window_count (window), 1);
  em_register_window_select (window, 0);
  em_register_window_revise (window);
  EmDocument *document = em_window_get_document (wait_for_quote (application));
  const EmQuote *quote = em_document_get_quote (document);
  g_autofree char *title = em_document_dup_title (document);
  /* What its file would be called: not as the quote that it revises. */
  ck_assert_msg (g_str_has_prefix (title, "D-1001 C · "), "%s", title);
  ck_assert_str_eq (quote->text[EM_QUOTE_NUMBER], "D-1001");
  ck_assert_str_eq (quote->text[EM_QUOTE_REVISION], "C");
  ck_assert_str_eq (quote->text[EM_QUOTE_REVISES], "D-1001 A");
  close_all (application);
}
END_TEST

/* Chosen in the panel, of a quote that is open: shown there too, and it can be taken back there. */
START_TEST (the_state_of_an_open_quote)
{
  g_autoptr (EmApplication) application = test_application ();
  EmRegisterWindow *window = open_register (application);
  GtkDropDown *state;

  em_register_window_search (window, "D-1002");
  em_register_window_select (window, 0);
  em_register_window_open (window);
  EmDocument *document = em_window_get_document (wait_for_quote (application));
  test_settle (100);
  state = GTK_DROP_DOWN (find (find (window, EM_TYPE_REGISTER_PANEL, 0), GTK_TYPE_DROP_DOWN, 0));
  choose (state, "Won");
  ck_assert_int_eq (em_document_get_quote (document)->state, EM_STATE_WON);
  ck_assert_str_eq (chosen (state), "Won");
  choose (state, "Draft");
  ck_assert_int_eq (em_document_get_quote (document)->state, EM_STATE_DRAFT);
  ck_assert_str_eq (chosen (state), "Draft");
  close_all (application);
}
END_TEST

static GtkWidget *
find_selectable (GtkWidget *in)
{
  GtkWidget *label;

  for (int i = 0; (label = find (in, GTK_TYPE_LABEL, i)) != NULL; i++)
    if (gtk_label_get_selectable (GTK_LABEL (label)))
      return label;
  return NULL;
}

/* Tab comes by it: nothing is marked. */
START_TEST (facts_are_not_marked)
{
  g_autoptr (EmApplication) application = test_application ();
  EmRegisterWindow *window = open_register (application);
  GtkWidget *facts = find_selectable (find (window, EM_TYPE_REGISTER_PANEL, 0));

  ck_assert_ptr_nonnull (facts);
  gtk_widget_grab_focus (facts);
  test_settle (20);
  ck_assert_ptr_eq (gtk_root_get_focus (GTK_ROOT (window)), facts);
  ck_assert (!gtk_label_get_selection_bounds (GTK_LABEL (facts), NULL, NULL));
  close_all (application);
}
END_TEST

/* In the table in three words, in the panel why. */
START_TEST (a_file_that_is_no_quote)
{
  g_autoptr (EmApplication) application = test_application ();
  EmRegisterWindow *window;
  GtkWidget *facts;

  put_demo ("blow-mold", "damaged.estimend", "<quote", "<nothing");
  window = open_register (application);
  em_register_window_search (window, "damaged");
  ck_assert_uint_eq (em_register_window_count (window), 1);
  test_settle (50);
  facts = find_selectable (find (window, EM_TYPE_REGISTER_PANEL, 0));
  ck_assert_msg (strstr (gtk_label_get_text (GTK_LABEL (facts)), "line") != NULL, "%s", gtk_label_get_text (GTK_LABEL (facts)));
  ck_assert (!gtk_widget_get_sensitive (find (find (window, EM_TYPE_REGISTER_PANEL, 0), GTK_TYPE_DROP_DOWN, 0)));
  close_all (application);
}
END_TEST

int
main (void)
{
  TCase *tcase = tcase_create ("register-look");

  tcase_add_checked_fixture (tcase, make_shop, drop_shop);
  tcase_add_test (tcase, the_order_is_chosen);
  tcase_add_test (tcase, the_order_follows_the_headers);
  tcase_add_test (tcase, a_drop_down_opens_at_its_choice);
  tcase_add_loop_test (tcase, days_are_typed, 0, (int) G_N_ELEMENTS (days));
  tcase_add_loop_test (tcase, large_text_is_not_scrolled_sideways, 0, 2 * TEST_LANGUAGES);
  tcase_add_test (tcase, the_foot_leaves_the_window_low);
  tcase_add_test (tcase, a_folder_that_others_change);
  tcase_add_test (tcase, a_folder_that_is_gone);
  tcase_add_test (tcase, a_revision_has_a_letter_of_its_own);
  tcase_add_test (tcase, the_state_of_an_open_quote);
  tcase_add_test (tcase, facts_are_not_marked);
  tcase_add_test (tcase, a_file_that_is_no_quote);
  return test_run ("register-look", tcase, 60);
}
