/* test-accessible: everything that takes the keyboard has a name for those who can't see it.
 *
 * GTK's own test accessibility backend is asked, so that what counts is what is exported.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-test-names.h"

#include "em-book-window.h"
#include "em-demo.h"
#include "em-drawing-view.h"
#include "em-feature-row.h"
#include "em-money-bar.h"
#include "em-register-undo.h"
#include "em-register-window.h"
#include "em-settings.h"

#include <glib/gstdio.h>
#include <string.h>

START_TEST (everything_has_a_name)
{
  g_autoptr (EmApplication) application = test_application ();
  g_autoptr (EmDocument) document = test_demo (NULL);
  EmWindow *window = test_window (application, document);

  test_settle (800);
  test_check_named (window, "demo");
  for (int32_t i = 0; i < em_document_get_quote (document)->n_features; i++)
    {
      em_document_set_selected (document, em_document_get_quote (document)->feature[i].id);
      test_check_named (window, em_document_get_quote (document)->feature[i].kind->id);
    }
  test_act (window, "win.read-notes");
  test_check_named (window, "questions");
  test_act (window, "win.paper");
  test_check_named (window, "paper");
  em_window_show_welcome (window);
  test_check_named (window, "welcome");
  gtk_window_destroy (GTK_WINDOW (window));
}
END_TEST

static GtkWidget *
find_mapped (GtkWidget *in, GType type)
{
  if (G_TYPE_CHECK_INSTANCE_TYPE (in, type) && gtk_widget_get_mapped (in))
    return in;
  for (GtkWidget *child = gtk_widget_get_first_child (in); child != NULL; child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *found = find_mapped (child, type);
      if (found != NULL)
        return found;
    }
  return NULL;
}

static GtkWidget *
find_button_of_class (GtkWidget *in, const char *css_class)
{
  if (GTK_IS_BUTTON (in) && gtk_widget_has_css_class (in, css_class) && gtk_widget_get_mapped (in))
    return in;
  for (GtkWidget *child = gtk_widget_get_first_child (in); child != NULL; child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *found = find_button_of_class (child, css_class);
      if (found != NULL)
        return found;
    }
  return NULL;
}

START_TEST (so_has_what_opens)
{
  g_autoptr (EmApplication) application = test_application ();
  g_autoptr (EmDocument) document = test_demo (NULL);
  EmWindow *window = test_window (application, document);

  test_act (window, "win.add");
  test_settle (200);
  GtkWidget *picker = find_mapped (GTK_WIDGET (em_window_get_metal (window)), GTK_TYPE_POPOVER);
  ck_assert_ptr_nonnull (picker);
  test_check_named (picker, "kinds to add");
  gtk_popover_popdown (GTK_POPOVER (picker));
  g_signal_emit_by_name (find_button_of_class (GTK_WIDGET (em_window_get_money (window)), "line"), "clicked");
  test_settle (200);
  GtkWidget *working = find_mapped (GTK_WIDGET (em_window_get_money (window)), GTK_TYPE_POPOVER);
  ck_assert_ptr_nonnull (working);
  ck_assert (test_is_named (working));
  gtk_popover_popdown (GTK_POPOVER (working));
  test_settle (200);
  gtk_window_destroy (GTK_WINDOW (window));
}
END_TEST

/* The check itself: what has no name is found, what is said to be hidden from those who can't see is not. */
START_TEST (the_nameless_are_found)
{
  g_autoptr (GString) list = g_string_new (NULL);
  int n_seen = 0;

  gtk_init ();
  GtkWidget *window = gtk_window_new (), *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *entry = gtk_entry_new (), *swatch = em_money_swatch_new (EM_MONEY_BENCH);
  gtk_window_set_child (GTK_WINDOW (window), box);
  gtk_box_append (GTK_BOX (box), entry);
  gtk_box_append (GTK_BOX (box), em_money_bar_new ());
  gtk_box_append (GTK_BOX (box), swatch);
  gtk_window_present (GTK_WINDOW (window));
  test_settle (100);
  ck_assert_int_eq (test_count_nameless (box, &n_seen, list), 2);
  ck_assert_int_eq (n_seen, 2);
  gtk_accessible_update_property (GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_PROPERTY_LABEL, "Length", -1);
  ck_assert_int_eq (test_count_nameless (box, &n_seen, list), 1);
  gtk_window_destroy (GTK_WINDOW (window));
}
END_TEST

/* Of what the accessibility bus is told, not only that it is told something. */
START_TEST (roles_are_what_things_are)
{
  g_autoptr (EmApplication) application = test_application ();
  g_autoptr (EmDocument) document = test_demo (NULL);
  EmWindow *window = test_window (application, document);
  EmFeatureEditor *editor = em_metal_pane_get_editor (em_window_get_metal (window));
  GtkWidget *entry = em_quantity_entry_get_text_widget (EM_QUANTITY_ENTRY (em_feature_editor_get_entry (editor, NULL)));

  ck_assert_int_eq (gtk_accessible_get_accessible_role (GTK_ACCESSIBLE (find_mapped (GTK_WIDGET (editor), EM_TYPE_DRAWING_VIEW))), GTK_ACCESSIBLE_ROLE_IMG);
  ck_assert_int_eq (gtk_accessible_get_accessible_role (GTK_ACCESSIBLE (find_mapped (GTK_WIDGET (window), EM_TYPE_MONEY_BAR))), GTK_ACCESSIBLE_ROLE_IMG);
  ck_assert_int_eq (gtk_accessible_get_accessible_role (GTK_ACCESSIBLE (gtk_widget_get_parent (find_mapped (GTK_WIDGET (window), EM_TYPE_FEATURE_ROW)))), GTK_ACCESSIBLE_ROLE_LIST_ITEM);
  ck_assert (gtk_test_accessible_has_relation (GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_RELATION_LABELLED_BY));
  ck_assert (gtk_test_accessible_has_relation (GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_RELATION_DESCRIBED_BY));
  gtk_window_destroy (GTK_WINDOW (window));
}
END_TEST

START_TEST (so_has_everything_in_the_other_windows)
{
  static const char *const pages[] = { "money", "minutes", "deposit", "machines", "bases", "wires", "jobs", "taxes", "shop" };
  g_autoptr (EmApplication) application = test_application ();
  EmBookWindow *book = em_book_window_present (application, NULL, "money");
  EmRegisterWindow *reg;

  for (gsize i = 0; i < G_N_ELEMENTS (pages); i++)
    {
      em_book_window_show_page (book, pages[i]);
      test_settle (20);
      test_check_named (book, pages[i]);
    }
  gtk_window_destroy (GTK_WINDOW (book));
  reg = em_register_window_present (application);
  test_check_named (reg, "register");
  gtk_window_destroy (GTK_WINDOW (reg));
}
END_TEST

static void
wait_for_register (EmRegisterWindow *reg)
{
  do
    test_settle (20);
  while (em_register_window_is_busy (reg));
}

/* The bar with what was done to a state is there only then. */
START_TEST (so_has_what_was_done_to_a_state)
{
  g_autoptr (EmApplication) application = test_application ();
  g_autofree char *folder = g_dir_make_tmp ("estimend-XXXXXX", NULL), *path = g_build_filename (folder, "q.estimend", NULL);
  g_autofree char *from = em_demo_path ("blow-mold"), *content = NULL;
  EmRegisterWindow *reg = em_register_window_present (application);

  ck_assert (g_file_get_contents (from, &content, NULL, NULL) && g_file_set_contents (path, content, -1, NULL));
  em_register_window_set_folder (reg, folder);
  wait_for_register (reg);
  em_register_window_select (reg, 0);
  em_register_window_set_state (reg, EM_STATE_SENT);
  wait_for_register (reg);
  ck_assert_ptr_nonnull (em_register_window_get_done (reg));
  test_settle (50);
  test_check_named (reg, "register with a step back");
  GtkWidget *bar = find_mapped (GTK_WIDGET (reg), EM_TYPE_REGISTER_UNDO);
  ck_assert_int_eq (gtk_accessible_get_accessible_role (GTK_ACCESSIBLE (bar)), GTK_ACCESSIBLE_ROLE_STATUS);
  gtk_window_destroy (GTK_WINDOW (reg));
  g_settings_reset (em_settings_get (), "shop-folder");
  g_remove (path);
  g_rmdir (folder);
}
END_TEST

/* Whoever gives an action a key tells people so. */
START_TEST (every_key_is_in_the_list_of_shortcuts)
{
  g_autoptr (EmApplication) application = test_application ();
  g_autoptr (GBytes) bytes = g_resources_lookup_data ("/org/estimend/Estimend/help-overlay.ui", 0, NULL);
  g_auto (GStrv) actions = gtk_application_list_action_descriptions (GTK_APPLICATION (application));

  ck_assert_ptr_nonnull (bytes);
  g_autofree char *xml = g_strndup (g_bytes_get_data (bytes, NULL), g_bytes_get_size (bytes));
  ck_assert_uint_gt (g_strv_length (actions), 20);
  for (char **action = actions; *action != NULL; action++)
    {
      g_autofree char *wanted = g_strdup_printf (">%s<", *action);
      ck_assert_msg (strstr (xml, wanted) != NULL, "%s is not told", *action);
    }
}
END_TEST

static int
count_turned_figures (GtkWidget *widget)
{
  int n = 0;

  if (GTK_IS_ENTRY (widget) && gtk_widget_has_css_class (widget, "figure"))
    n += gtk_widget_get_direction (GTK_WIDGET (gtk_editable_get_delegate (GTK_EDITABLE (widget)))) != GTK_TEXT_DIR_LTR;
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL; child = gtk_widget_get_next_sibling (child))
    n += count_turned_figures (child);
  return n;
}

/* ".25" would read "25." */
START_TEST (figures_are_not_turned_round)
{
  g_autoptr (EmApplication) application = test_application ();
  g_autoptr (EmDocument) document = test_demo (NULL);

  gtk_widget_set_default_direction (GTK_TEXT_DIR_RTL);
  EmWindow *window = test_window (application, document);
  EmBookWindow *book = em_book_window_present (application, window, "money");
  test_settle (100);
  ck_assert_int_eq (gtk_widget_get_direction (GTK_WIDGET (window)), GTK_TEXT_DIR_RTL);
  ck_assert_int_eq (count_turned_figures (GTK_WIDGET (window)), 0);
  ck_assert_int_eq (count_turned_figures (GTK_WIDGET (book)), 0);
  gtk_window_destroy (GTK_WINDOW (book));
  gtk_window_destroy (GTK_WINDOW (window));
}
END_TEST

static GtkWidget *
focus_of (gpointer window)
{
  return gtk_root_get_focus (GTK_ROOT (window));
}

static gboolean
press (GtkWidget *table, guint key)
{
  g_autoptr (GListModel) controllers = gtk_widget_observe_controllers (table);
  gboolean is_taken = FALSE;

  for (guint i = 0; i < g_list_model_get_n_items (controllers); i++)
    {
      g_autoptr (GtkEventController) controller = g_list_model_get_item (controllers, i);
      if (GTK_IS_EVENT_CONTROLLER_KEY (controller) && gtk_event_controller_get_propagation_phase (controller) == GTK_PHASE_CAPTURE)
        g_signal_emit_by_name (controller, "key-pressed", key, 0, 0, &is_taken);
    }
  return is_taken;
}

/* GTK would go from feature to feature; a quote may have a thousand. */
START_TEST (tab_leaves_a_list)
{
  g_autoptr (EmApplication) application = test_application ();
  g_autoptr (EmDocument) document = test_demo (NULL);
  EmWindow *window = test_window (application, document);
  GtkWidget *list = find_mapped (GTK_WIDGET (em_window_get_metal (window)), GTK_TYPE_LIST_VIEW);

  ck_assert_ptr_nonnull (list);
  test_act (window, "win.focus-pane(2)");
  ck_assert (gtk_widget_is_ancestor (focus_of (window), list));
  ck_assert (!press (list, GDK_KEY_Down));
  ck_assert (press (list, GDK_KEY_Tab));
  ck_assert (!gtk_widget_is_ancestor (focus_of (window), list));
  ck_assert (gtk_widget_is_ancestor (focus_of (window), GTK_WIDGET (em_metal_pane_get_editor (em_window_get_metal (window)))));
  test_act (window, "win.focus-pane(2)");
  ck_assert (press (list, GDK_KEY_ISO_Left_Tab));
  ck_assert (!gtk_widget_is_ancestor (focus_of (window), list));
  ck_assert (gtk_widget_is_ancestor (focus_of (window), GTK_WIDGET (em_window_get_metal (window))));
  gtk_window_destroy (GTK_WINDOW (window));
}
END_TEST

START_TEST (problems_are_told_with_the_entry)
{
  g_autoptr (EmApplication) application = test_application ();
  g_autoptr (EmDocument) document = test_demo (NULL);
  EmWindow *window = test_window (application, document);
  GtkWidget *entry = em_quantity_entry_get_text_widget (EM_QUANTITY_ENTRY (
    em_feature_editor_get_entry (em_metal_pane_get_editor (em_window_get_metal (window)), NULL)));

  test_type (entry, "nonsense");
  ck_assert (gtk_test_accessible_has_state (GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_STATE_INVALID));
  ck_assert (gtk_test_accessible_has_relation (GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_RELATION_DESCRIBED_BY));
  gtk_window_destroy (GTK_WINDOW (window));
}
END_TEST

TEST_MAIN ("accessible", everything_has_a_name, so_has_what_opens, the_nameless_are_found, roles_are_what_things_are, so_has_everything_in_the_other_windows, so_has_what_was_done_to_a_state,
           every_key_is_in_the_list_of_shortcuts, figures_are_not_turned_round, tab_leaves_a_list, problems_are_told_with_the_entry)
