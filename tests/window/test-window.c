/* test-window: the real window: acts by actions and widgets, reads the model and the screen.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-test-window.h"

#include "em-details.h"
#include "em-settings.h"
#include "em-steady.h"
#include "em-feature-row.h"
#include "em-record-choice.h"
#include "em-wire-table.h"
#include "em-words.h"

#include <string.h>

static int
count_rows (EmWindow *window)
{
  return (int) g_list_model_get_n_items (G_LIST_MODEL (em_metal_pane_get_features (em_window_get_metal (window))));
}

static GtkWidget *
entry_of (EmWindow *window, const char *field)
{
  GtkWidget *entry = em_feature_editor_get_entry (em_metal_pane_get_editor (em_window_get_metal (window)), field);

  ck_assert_msg (entry != NULL, "no entry for %s", field);
  return em_quantity_entry_get_text_widget (EM_QUANTITY_ENTRY (entry));
}

static const char *
first_field (EmWindow *window)
{
  return em_document_get_quote (em_window_get_document (window))->feature[0].kind->fields[0].id;
}

START_TEST (price_follows_the_typing)
{
  g_autoptr (EmApplication) application = test_application ();
  g_autoptr (EmDocument) document = test_demo (NULL);
  EmWindow *window = test_window (application, document);
  GtkWidget *entry = entry_of (window, first_field (window));
  g_autofree char *before = g_strdup (em_money_pane_get_price (em_window_get_money (window)));

  test_type (entry, "37.5 mm");
  ck_assert_msg (em_document_get_quote (document)->feature[0].value[0] == 37.5, "%.17g", em_document_get_quote (document)->feature[0].value[0]);
  ck_assert_str_ne (before, em_money_pane_get_price (em_window_get_money (window)));
  g_autofree char *shown = em_words_money_bare (em_document_get_cost (document)->totals.total_minor, &em_document_get_rates (document)->currency);
  ck_assert_str_eq (em_money_pane_get_price (em_window_get_money (window)), shown);
  gtk_window_destroy (GTK_WINDOW (window));
}
END_TEST

/* One inch is 25.4 mm exactly (NIST SP 811, appendix B); a thou a thousandth of it. */
START_TEST (entries_read_as_people_write)
{
  static const struct { const char *text; double mm; } rows[] =
  {
    { ".5 in", 12.7 }, { "20 thou", 0.508 }, { "0,5 mm", 0.5 }, { "1/2 in", 12.7 }, { "12", 12 },
  };
  g_autoptr (EmApplication) application = test_application ();
  g_autoptr (EmDocument) document = test_demo (NULL);
  EmWindow *window = test_window (application, document);
  GtkWidget *entry = entry_of (window, first_field (window));

  em_document_set_units (document, EM_UNITS_METRIC);
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      test_type (entry, rows[i].text);
      ck_assert_msg (em_document_get_quote (document)->feature[0].value[0] == rows[i].mm, "%s read as %.17g", rows[i].text,
                     em_document_get_quote (document)->feature[0].value[0]);
    }
  gtk_window_destroy (GTK_WINDOW (window));
}
END_TEST

START_TEST (bad_entry_says_so_and_keeps_the_price)
{
  g_autoptr (EmApplication) application = test_application ();
  g_autoptr (EmDocument) document = test_demo (NULL);
  EmWindow *window = test_window (application, document);
  GtkWidget *text = entry_of (window, first_field (window));
  EmQuantityEntry *entry = EM_QUANTITY_ENTRY (gtk_widget_get_ancestor (text, EM_TYPE_QUANTITY_ENTRY));
  g_autofree char *before = g_strdup (em_money_pane_get_price (em_window_get_money (window)));
  double value = em_document_get_quote (document)->feature[0].value[0];
  gboolean is_stale;

  test_type (text, "twelve-ish");
  ck_assert (em_quantity_entry_has_problem (entry));
  ck_assert_str_eq (before, em_money_pane_get_price (em_window_get_money (window)));
  ck_assert_double_eq (em_document_get_quote (document)->feature[0].value[0], value);
  em_document_get_total (document, &is_stale);
  ck_assert (is_stale);
  test_type (text, "12 mm");
  ck_assert (!em_quantity_entry_has_problem (entry));
  em_document_get_total (document, &is_stale);
  ck_assert (!is_stale);
  gtk_window_destroy (GTK_WINDOW (window));
}
END_TEST

static const char *
typed_in (EmWindow *window, const char *field)
{
  return gtk_editable_get_text (GTK_EDITABLE (entry_of (window, field)));
}

/* What can't be taken belongs to its feature: another one does not show it, and it is there again afterwards. */
START_TEST (what_cannot_be_read_stays_with_its_feature)
{
  g_autoptr (EmApplication) application = test_application ();
  g_autoptr (EmDocument) document = test_demo (NULL);
  EmWindow *window = test_window (application, document);
  const EmFeature *feature = em_document_get_quote (document)->feature;
  uint32_t first = feature[0].id, second = feature[1].id;
  gboolean is_stale;

  /* Empty in both, so that the value alone does not tell them apart. */
  ck_assert (em_is_absent (feature[0].wire_mm) && em_is_absent (feature[1].wire_mm));
  em_document_set_selected (document, first);
  test_type (entry_of (window, "wire"), "a bit");
  ck_assert_ptr_nonnull (em_document_get_problem (document, first, "wire/0"));
  em_document_set_selected (document, second);
  ck_assert_str_eq (typed_in (window, "wire"), "");
  test_type (entry_of (window, "wire"), "0.5 mm");
  ck_assert_double_eq (em_document_get_quote (document)->feature[1].wire_mm, 0.5);
  em_document_set_selected (document, first);
  ck_assert_str_eq (typed_in (window, "wire"), "a bit");
  ck_assert (gtk_widget_has_css_class (entry_of (window, "wire"), "error"));
  test_type (entry_of (window, "wire"), "");
  em_document_get_total (document, &is_stale);
  ck_assert (!is_stale);
  gtk_window_destroy (GTK_WINDOW (window));
}
END_TEST

/* Nothing in Places means 1, and the office sees that once it is elsewhere; typing over it must not come before or behind that 1. */
START_TEST (typing_over_a_figure_replaces_it)
{
  g_autoptr (EmApplication) application = test_application ();
  g_autoptr (EmDocument) document = test_demo (NULL);
  EmWindow *window = test_window (application, document);
  const EmFeature *feature = &em_document_get_quote (document)->feature[0];

  em_document_set_selected (document, feature->id);
  test_key_in (entry_of (window, "count"), "4");
  ck_assert_int_eq (em_document_get_quote (document)->feature[0].count, 4);
  ck_assert_str_eq (typed_in (window, "count"), "4");
  test_key_in (entry_of (window, "count"), "");
  ck_assert_int_eq (em_document_get_quote (document)->feature[0].count, 1);
  test_key_in (entry_of (window, "count"), "27");
  ck_assert_int_eq (em_document_get_quote (document)->feature[0].count, 27);
  ck_assert_str_eq (typed_in (window, "count"), "27");
  /* A step back is shown in the field that was emptied. */
  em_document_break (document);
  test_key_in (entry_of (window, "count"), "");
  em_document_undo (document);
  ck_assert_int_eq (em_document_get_quote (document)->feature[0].count, 27);
  ck_assert_str_eq (typed_in (window, "count"), "27");
  gtk_window_destroy (GTK_WINDOW (window));
}
END_TEST

/* A step back settles the problems, so nothing may be left on the screen that has one. */
START_TEST (a_step_back_takes_what_cannot_be_read)
{
  g_autoptr (EmApplication) application = test_application ();
  g_autoptr (EmDocument) document = test_demo (NULL);
  EmWindow *window = test_window (application, document);

  em_document_set_text (document, EM_QUOTE_CUSTOMER, "Somebody else");
  test_type (entry_of (window, "wire"), "a bit");
  ck_assert_uint_eq (em_document_get_problems (document), 1);
  test_act (window, "win.undo");
  ck_assert_uint_eq (em_document_get_problems (document), 0);
  ck_assert_str_eq (typed_in (window, "wire"), "");
  ck_assert (!gtk_widget_has_css_class (entry_of (window, "wire"), "error"));
  gtk_window_destroy (GTK_WINDOW (window));
}
END_TEST

START_TEST (features_come_go_and_move_by_actions)
{
  g_autoptr (EmApplication) application = test_application ();
  g_autoptr (EmDocument) document = test_demo (NULL);
  EmWindow *window = test_window (application, document);
  int n = em_document_get_quote (document)->n_features;
  uint32_t first = em_document_get_quote (document)->feature[0].id;

  ck_assert_int_eq (count_rows (window), n);
  test_act (window, "win.duplicate");
  ck_assert_int_eq (em_document_get_quote (document)->n_features, n + 1);
  ck_assert_int_eq (count_rows (window), n + 1);
  test_act (window, "win.remove");
  ck_assert_int_eq (count_rows (window), n);
  em_document_set_selected (document, first);
  test_act (window, "win.move-down");
  ck_assert_uint_eq (em_document_get_quote (document)->feature[1].id, first);
  test_act (window, "win.move-up");
  ck_assert_uint_eq (em_document_get_quote (document)->feature[0].id, first);
  g_autofree char *add = g_strdup_printf ("win.add-kind::%s", em_kinds[em_n_kinds - 1]->id);
  test_act (window, add);
  ck_assert_ptr_eq (em_document_get_quote (document)->feature[1].kind, em_kinds[em_n_kinds - 1]);
  ck_assert_int_eq (em_document_get_selected_index (document), 1);
  for (int i = 0; i < 5; i++)
    test_act (window, "win.undo");
  ck_assert_int_eq (count_rows (window), n);
  ck_assert (!em_document_is_modified (document));
  gtk_window_destroy (GTK_WINDOW (window));
}
END_TEST

START_TEST (features_travel_by_the_clipboard)
{
  g_autoptr (EmApplication) application = test_application ();
  g_autoptr (EmDocument) document = test_demo (NULL);
  EmWindow *window = test_window (application, document);
  int n = em_document_get_quote (document)->n_features;

  test_act (window, "win.copy-feature");
  test_act (window, "win.paste-feature");
  test_settle (200);
  ck_assert_int_eq (em_document_get_quote (document)->n_features, n + 1);
  ck_assert_mem_eq (em_document_get_quote (document)->feature[0].value, em_document_get_quote (document)->feature[1].value,
                    sizeof em_document_get_quote (document)->feature[0].value);
  /* No words of this quote say so. */
  ck_assert (em_feature_is_read (&em_document_get_quote (document)->feature[0]));
  ck_assert (!em_feature_is_read (&em_document_get_quote (document)->feature[1]));
  gdk_clipboard_set_text (gtk_widget_get_clipboard (GTK_WIDGET (window)), "no feature at all");
  test_act (window, "win.paste-feature");
  test_settle (200);
  ck_assert_int_eq (em_document_get_quote (document)->n_features, n + 1);
  ck_assert_ptr_nonnull (em_window_get_said (window));
  gtk_window_destroy (GTK_WINDOW (window));
}
END_TEST

START_TEST (units_are_shown_and_switched)
{
  g_autoptr (EmApplication) application = test_application ();
  g_autoptr (EmDocument) document = test_demo (NULL);
  EmWindow *window = test_window (application, document);
  GtkWidget *text = entry_of (window, first_field (window));

  test_act (window, "win.units::metric");
  em_document_set_value (document, 0, 0, EM_LIKELY, 12.7);
  ck_assert_str_eq (gtk_editable_get_text (GTK_EDITABLE (text)), "12.7");
  test_act (window, "win.units::inch");
  /* As on inch drawings: no leading zero. */
  ck_assert_str_eq (gtk_editable_get_text (GTK_EDITABLE (text)), ".5");
  ck_assert_double_eq (em_document_get_quote (document)->feature[0].value[0], 12.7);
  gtk_window_destroy (GTK_WINDOW (window));
}
END_TEST

START_TEST (pages_are_shown_in_the_window)
{
  g_autoptr (EmApplication) application = test_application ();
  g_autoptr (EmDocument) document = test_demo (NULL);
  EmWindow *window = test_window (application, document);

  test_act (window, "win.paper");
  while (em_paper_view_is_busy (em_window_get_paper (window)))
    test_settle (10);
  ck_assert_int_ge (em_paper_view_count (em_window_get_paper (window)), 1);
  test_act (window, "win.paper");
  gtk_window_destroy (GTK_WINDOW (window));
}
END_TEST

/* Made at the first call and the same at the next. */
START_TEST (shortcuts_are_shown_whenever_asked_for)
{
  g_autoptr (EmApplication) application = test_application ();
  g_autoptr (EmDocument) document = test_demo (NULL);
  EmWindow *window = test_window (application, document);
  GtkShortcutsWindow *first;

  ck_assert_ptr_null (gtk_application_window_get_help_overlay (GTK_APPLICATION_WINDOW (window)));
  test_act (window, "win.show-help-overlay");
  first = gtk_application_window_get_help_overlay (GTK_APPLICATION_WINDOW (window));
  ck_assert_ptr_nonnull (first);
  ck_assert (gtk_widget_get_visible (GTK_WIDGET (first)) && gtk_window_get_transient_for (GTK_WINDOW (first)) == GTK_WINDOW (window));
  gtk_window_close (GTK_WINDOW (first));
  test_settle (10);
  ck_assert (!gtk_widget_get_visible (GTK_WIDGET (first)));
  test_act (window, "win.show-help-overlay");
  ck_assert_ptr_eq (gtk_application_window_get_help_overlay (GTK_APPLICATION_WINDOW (window)), first);
  ck_assert (gtk_widget_get_visible (GTK_WIDGET (first)));
  gtk_window_destroy (GTK_WINDOW (window));
}
END_TEST

/* A label asked for its width at a height tries widths until it fits; around it nobody does. Its height at a width is its own. */
START_TEST (a_steady_child_is_as_wide_at_any_height)
{
  const char *words = "Some words that go on over several lines where there is little room";
  g_autoptr (EmApplication) application = test_application ();
  GtkWidget *label = gtk_label_new (words), *alone = gtk_label_new (words);
  GtkWidget *steady = em_steady_new (label), *window = gtk_window_new (), *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  int least, usual, least_at, usual_at, high, high_alone;

  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_wrap (GTK_LABEL (alone), TRUE);
  gtk_box_append (GTK_BOX (box), steady);
  gtk_box_append (GTK_BOX (box), alone);
  gtk_window_set_child (GTK_WINDOW (window), box);
  gtk_widget_measure (steady, GTK_ORIENTATION_HORIZONTAL, -1, &least, &usual, NULL, NULL);
  gtk_widget_measure (steady, GTK_ORIENTATION_HORIZONTAL, 400, &least_at, &usual_at, NULL, NULL);
  ck_assert (least == least_at && usual == usual_at);
  gtk_widget_measure (alone, GTK_ORIENTATION_HORIZONTAL, 400, &least_at, &usual_at, NULL, NULL);
  ck_assert_msg (usual_at < usual, "a label no longer asks for less width where there is height: there is nothing to do");
  gtk_widget_measure (steady, GTK_ORIENTATION_VERTICAL, usual / 3, &high, NULL, NULL, NULL);
  gtk_widget_measure (alone, GTK_ORIENTATION_VERTICAL, usual / 3, &high_alone, NULL, NULL, NULL);
  ck_assert_int_eq (high, high_alone);
  gtk_window_destroy (GTK_WINDOW (window));
}
END_TEST

/* Deleted or renamed meanwhile: it is said once, and not offered again. */
START_TEST (a_recent_file_that_is_gone_is_forgotten)
{
  static const char *const recent[] = { "/no/such/folder/gone.estimend", "/no/such/folder/other.estimend", NULL };
  g_autoptr (EmApplication) application = test_application ();
  g_autoptr (EmDocument) document = test_demo (NULL);
  EmWindow *window = test_window (application, document);

  g_settings_set_strv (em_settings_get (), "recent-files", recent);
  g_action_group_activate_action (G_ACTION_GROUP (application), "open-path", g_variant_new_string (recent[0]));
  for (int i = 0; i < 200 && em_window_get_said (window) == NULL; i++)
    test_settle (20);
  ck_assert_ptr_nonnull (em_window_get_said (window));
  ck_assert_ptr_nonnull (strstr (em_window_get_said (window), "gone.estimend could not be opened"));
  g_auto (GStrv) left = g_settings_get_strv (em_settings_get (), "recent-files");
  ck_assert_uint_eq (g_strv_length (left), 1);
  ck_assert_str_eq (left[0], recent[1]);
  gtk_window_destroy (GTK_WINDOW (window));
}
END_TEST

static gboolean
has_dialog (void)
{
  g_autoptr (GList) all = gtk_window_list_toplevels ();

  for (GList *window = all; window != NULL; window = window->next)
    if (GTK_IS_MESSAGE_DIALOG (window->data) && gtk_widget_get_visible (window->data))
      return TRUE;
  return FALSE;
}

START_TEST (close_asks_only_when_something_would_be_lost)
{
  g_autoptr (EmApplication) application = test_application ();
  g_autoptr (EmDocument) document = test_demo (NULL), second = test_demo (NULL);
  EmWindow *window = test_window (application, document);

  em_document_set_text (document, EM_QUOTE_CUSTOMER, "Changed");
  gtk_window_close (GTK_WINDOW (window));
  test_settle (100);
  ck_assert (has_dialog ());
  gtk_window_destroy (GTK_WINDOW (window));
  test_settle (50);
  window = test_window (application, second);
  gtk_window_close (GTK_WINDOW (window));
  test_settle (100);
  ck_assert (!has_dialog ());
  ck_assert_ptr_null (gtk_application_get_windows (GTK_APPLICATION (application)));
}
END_TEST

static int
compare_times (gconstpointer a, gconstpointer b)
{
  gint64 x = *(const gint64 *) a, y = *(const gint64 *) b;

  return (x > y) - (x < y);
}

/* The price on screen is already that of the text when the keystroke's handlers return; how long that takes is printed, for the
 * benchmark to judge: a loaded machine says nothing about a time. */
START_TEST (a_keystroke_is_priced_at_once)
{
  g_autoptr (EmApplication) application = test_application ();
  g_autoptr (EmDocument) document = test_demo (NULL);
  EmWindow *window = test_window (application, document);
  GtkWidget *text = entry_of (window, first_field (window));
  gint64 took[40];

  for (int i = 0; i < 40; i++)
    {
      g_autofree char *typed = g_strdup_printf ("%d.%d mm", 10 + i % 7, i % 10);
      gint64 start = g_get_monotonic_time ();

      test_type (text, typed);
      took[i] = g_get_monotonic_time () - start;
      g_autofree char *shown = em_words_money_bare (em_document_get_cost (document)->totals.total_minor,
                                                    &em_document_get_rates (document)->currency);
      ck_assert_str_eq (em_money_pane_get_price (em_window_get_money (window)), shown);
      test_settle (2);
    }
  qsort (took, G_N_ELEMENTS (took), sizeof took[0], compare_times);
  g_print ("a keystroke is priced in %.1f ms (median of 40)\n", (double) took[20] / 1000);
  gtk_window_destroy (GTK_WINDOW (window));
}
END_TEST

/* What another may be made of: a copy is nobody's number yet, a revision the next of the same. */
START_TEST (a_quote_is_copied_and_revised)
{
  static const struct { const char *action, *number, *revision; } rows[] =
  {
    { "win.copy-quote", NULL, NULL }, { "win.new-revision", "D-1001", "B" },
  };
  g_autoptr (EmApplication) application = test_application ();
  g_autoptr (EmDocument) document = test_demo (NULL);
  EmWindow *window = test_window (application, document);

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      test_act (window, rows[i].action);
      GList *windows = gtk_application_get_windows (GTK_APPLICATION (application));
      EmWindow *other = EM_WINDOW (windows->data == window ? windows->next->data : windows->data);
      const EmQuote *quote = em_document_get_quote (em_window_get_document (other));
      ck_assert_int_eq (quote->n_features, em_document_get_quote (document)->n_features);
      ck_assert_msg (em_text_equal (quote->text[EM_QUOTE_NUMBER], rows[i].number), "%s", rows[i].action);
      ck_assert_msg (em_text_equal (quote->text[EM_QUOTE_REVISION], rows[i].revision), "%s", rows[i].action);
      ck_assert (em_document_is_modified (em_window_get_document (other)));
      gtk_window_destroy (GTK_WINDOW (other));
    }
  gtk_window_destroy (GTK_WINDOW (window));
}
END_TEST

/* Whatever page the window opened with, the middle gets its room; on a large screen the sides take their share. */
START_TEST (panes_share_the_window)
{
  static const struct { int width, words_most, money_most; } rows[] = { { 1280, 350, 380 }, { 1900, 460, 540 } };
  g_autoptr (EmApplication) application = test_application ();

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (EmDocument) document = test_demo (NULL);
      EmWindow *window = em_application_add_window (application, document);
      gtk_window_set_default_size (GTK_WINDOW (window), rows[i].width, 800);
      em_window_show_welcome (window);
      test_settle (250);
      test_act (window, "win.work");
      int words = 0, metal = 0, money = 0;
      gboolean is_shared = FALSE;
      for (int tries = 0; tries < 40 && !is_shared; tries++)
        {
          test_settle (100);
          words = gtk_widget_get_width (GTK_WIDGET (em_window_get_words (window)));
          metal = gtk_widget_get_width (GTK_WIDGET (em_window_get_metal (window)));
          money = gtk_widget_get_width (GTK_WIDGET (em_window_get_money (window)));
          is_shared = words <= rows[i].words_most && money <= rows[i].money_most
                      && metal >= rows[i].width - rows[i].words_most - rows[i].money_most - 20;
        }
      ck_assert_msg (is_shared, "%d: %d, %d, %d", rows[i].width, words, metal, money);
      gtk_window_destroy (GTK_WINDOW (window));
    }
}
END_TEST

/* A new quote lacks its wire: that is the next step, and no mistake. */
START_TEST (a_wire_not_yet_chosen_is_no_mistake)
{
  g_autoptr (EmApplication) application = test_application ();
  g_autoptr (EmDocument) document = test_demo (NULL);

  ck_assert (!em_document_awaits_wire (document));
  em_document_set_text (document, EM_QUOTE_FILLER, NULL);
  ck_assert (em_document_awaits_wire (document));
  em_document_set_value (document, 0, 0, EM_LIKELY, EM_ABSENT);
  ck_assert (!em_document_awaits_wire (document));
}
END_TEST

static GtkWidget *
find_text (GtkWidget *in, const char *css_class, const char *part)
{
  if (GTK_IS_LABEL (in) && gtk_widget_get_mapped (in) && gtk_widget_has_css_class (in, css_class) && strstr (gtk_label_get_text (GTK_LABEL (in)), part) != NULL)
    return in;
  for (GtkWidget *child = gtk_widget_get_first_child (in); child != NULL; child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *found = find_text (child, css_class, part);
      if (found != NULL)
        return found;
    }
  return NULL;
}

/* 5,000 mm, the longest any kind takes, is 196.85 in. */
/* The title of a quote with a long customer and tool goes on on a second line, and what is below it begins below it. */
static gboolean
tells_whole (GtkWidget *widget)
{
  g_autoptr (GtkTooltip) tooltip = g_object_new (GTK_TYPE_TOOLTIP, NULL);
  gboolean is_told = FALSE;

  g_signal_emit_by_name (widget, "query-tooltip", 1, 1, FALSE, tooltip, &is_told);
  return is_told;
}

static EmDetails *
find_details (GtkWidget *in)
{
  EmDetails *found = EM_IS_DETAILS (in) ? EM_DETAILS (in) : NULL;

  for (GtkWidget *child = gtk_widget_get_first_child (in); found == NULL && child != NULL; child = gtk_widget_get_next_sibling (child))
    found = find_details (child);
  return found;
}

START_TEST (a_long_title_has_its_room)
{
  g_autoptr (EmApplication) application = test_application ();
  g_autoptr (EmDocument) document = test_demo (NULL);
  EmWindow *window = test_window (application, document);
  GtkWidget *words = GTK_WIDGET (em_window_get_words (window)), *title, *notes;
  graphene_rect_t above, below;

  test_settle (200);
  title = find_text (words, "strong", em_document_get_quote (document)->text[EM_QUOTE_CUSTOMER]);
  notes = find_text (words, "section-name", "notes");
  ck_assert_ptr_nonnull (title);
  ck_assert_ptr_nonnull (notes);
  ck_assert_int_ge (pango_layout_get_line_count (gtk_label_get_layout (GTK_LABEL (title))), 2);
  ck_assert (!pango_layout_is_ellipsized (gtk_label_get_layout (GTK_LABEL (title))));
  ck_assert (!tells_whole (title));
  /* What is too long for any title is told whole under the pointer, and so is a name in its narrow entry. */
  g_autofree char *much = g_strnfill (600, 'W');
  GtkWidget *entry = em_details_get_entry (find_details (GTK_WIDGET (window)), EM_QUOTE_CUSTOMER);
  em_details_set_expanded (find_details (GTK_WIDGET (window)), TRUE);
  gtk_editable_set_text (GTK_EDITABLE (entry), "Short");
  test_settle (200);
  ck_assert (!tells_whole (entry));
  gtk_editable_set_text (GTK_EDITABLE (entry), much);
  test_settle (200);
  ck_assert (tells_whole (entry) && tells_whole (title));
  em_details_set_expanded (find_details (GTK_WIDGET (window)), FALSE);
  em_document_undo (document);
  test_settle (200);
  ck_assert (gtk_widget_compute_bounds (title, words, &above) && gtk_widget_compute_bounds (notes, words, &below));
  ck_assert_float_ge (below.origin.y, above.origin.y + above.size.height);
  gtk_window_destroy (GTK_WINDOW (window));
}
END_TEST

START_TEST (limits_are_told_at_the_field_in_its_unit)
{
  g_autoptr (EmApplication) application = test_application ();
  g_autoptr (EmDocument) document = test_demo (NULL);
  EmWindow *window = test_window (application, document);

  test_act (window, "win.units::inch");
  test_type (entry_of (window, first_field (window)), "-3");
  test_settle (100);
  GtkWidget *told = find_text (GTK_WIDGET (window), "problem", "196.85");
  ck_assert_ptr_nonnull (told);
  ck_assert_ptr_nonnull (strstr (gtk_label_get_text (GTK_LABEL (told)), em_words (em_document_get_quote (document)->feature[0].kind->fields[0].name)));
  ck_assert_ptr_null (find_text (GTK_WIDGET (window), "problem", "76.2"));
  gtk_window_destroy (GTK_WINDOW (window));
}
END_TEST

START_TEST (sizes_never_given_are_asked_for_and_no_mistake)
{
  g_autoptr (EmApplication) application = test_application ();
  g_autoptr (EmDocument) document = test_demo (NULL);
  EmWindow *window = test_window (application, document);

  ck_assert_ptr_null (find_text (GTK_WIDGET (window), "remark", "still needed"));
  test_act (window, "win.add-kind::groove");
  test_settle (50);
  ck_assert_ptr_nonnull (find_text (GTK_WIDGET (window), "remark", "still needed"));
  ck_assert_ptr_null (find_text (GTK_WIDGET (em_metal_pane_get_editor (em_window_get_metal (window))), "problem", "please"));
  gtk_window_destroy (GTK_WINDOW (window));
}
END_TEST

/* No wire is further than a key and the arrows. */
START_TEST (wires_are_reached_by_a_key)
{
  g_autoptr (EmApplication) application = test_application ();
  g_autoptr (EmDocument) document = test_demo (NULL);
  EmWindow *window = test_window (application, document);

  test_settle (600);
  test_act (window, "win.focus-pane(4)");
  GtkWidget *focus = gtk_root_get_focus (GTK_ROOT (window));
  ck_assert_ptr_nonnull (focus);
  ck_assert (gtk_widget_has_css_class (focus, "wire-row"));
  /* Choosing makes the rows anew; the keyboard stays among them, on the chosen one. */
  ck_assert (em_wire_table_choose (em_money_pane_get_wires (em_window_get_money (window)), 1));
  test_settle (1200);
  focus = gtk_root_get_focus (GTK_ROOT (window));
  ck_assert (focus != NULL && gtk_widget_has_css_class (focus, "wire-row") && gtk_widget_has_css_class (focus, "chosen"));
  gtk_window_destroy (GTK_WINDOW (window));
}
END_TEST

static gboolean
offers (GtkWidget *drop_down, const char *name)
{
  GListModel *model = gtk_drop_down_get_model (GTK_DROP_DOWN (drop_down));

  for (guint i = 0; i < g_list_model_get_n_items (model); i++)
    {
      g_autoptr (GtkStringObject) string = g_list_model_get_item (model, i);
      if (g_str_has_prefix (gtk_string_object_get_string (string), name))
        return TRUE;
    }
  return FALSE;
}

START_TEST (retired_metals_are_offered_to_those_who_have_them)
{
  g_autoptr (EmBasis) basis = test_basis ();
  EmRates rates;
  EmCatalogue catalogue;
  const char *id;
  GtkWidget *drop_down;

  gtk_init ();
  ck_assert (em_rates_copy (em_basis_get_rates (basis), &rates) == EM_OK && em_catalogue_copy (em_basis_get_catalogue (basis), &catalogue) == EM_OK);
  catalogue.base[1].is_retired = true;
  g_autoptr (EmBasis) changed = em_basis_new_take (&rates, &catalogue);
  const EmBase *base = em_basis_get_catalogue (changed)->base;
  g_autoptr (GtkWidget) box = g_object_ref_sink (em_record_choice_new ("Metal", EM_RECORD_BASE, "None", &drop_down));
  em_record_choice_show (drop_down, changed, NULL, NULL);
  ck_assert (offers (drop_down, base[0].designation) && !offers (drop_down, base[1].designation));
  ck_assert (em_record_choice_get (drop_down, &id) && id == NULL);
  em_record_choice_show (drop_down, changed, base[1].id, NULL);
  ck_assert (offers (drop_down, base[1].designation));
  ck_assert (em_record_choice_get (drop_down, &id));
  ck_assert_str_eq (id, base[1].id);
  em_record_choice_show (drop_down, changed, "nobody-knows", NULL);
  ck_assert (offers (drop_down, "nobody-knows") && !offers (drop_down, base[1].designation));
}
END_TEST

/* One choice for the machine, any of a process or none; one step back takes both members of the quote. */
START_TEST (a_process_is_chosen_like_a_machine)
{
  static const char *const processes[] = { "laser", "gtaw" };
  g_autoptr (EmApplication) application = test_application ();
  g_autoptr (EmDocument) document = test_demo (NULL);
  EmWindow *window = test_window (application, document);
  const EmRates *rates = em_document_get_rates (document);
  const EmQuote *quote = em_document_get_quote (document);
  EmDetails *details = find_details (GTK_WIDGET (window));
  GtkWidget *drop_down = em_details_get_entry (details, EM_QUOTE_MACHINE);
  const char *machine_id, *process_id;

  ck_assert (offers (drop_down, "Any pulsed laser") && offers (drop_down, "Any micro TIG"));
  em_document_set_machine (document, rates->machine[0].id, NULL);
  em_document_break (document);
  for (guint i = 0; i < G_N_ELEMENTS (processes); i++)
    {
      gtk_drop_down_set_selected (GTK_DROP_DOWN (drop_down), i + 1);   /* after "Cheapest that fits" */
      em_document_break (document);
      ck_assert_str_eq (quote->text[EM_QUOTE_PROCESS], processes[i]);
      ck_assert_ptr_null (quote->text[EM_QUOTE_MACHINE]);
      ck_assert (em_record_choice_get_machine (drop_down, &machine_id, &process_id));
      ck_assert_ptr_null (machine_id);
      ck_assert_str_eq (process_id, processes[i]);
      const EmFeatureCost *cost = &em_document_get_cost (document)->feature[0];
      if (cost->status == EM_OK)
        ck_assert_str_eq (em_process_ids[rates->machine[cost->machine].process], processes[i]);
    }
  em_document_undo (document);
  em_document_undo (document);
  ck_assert_str_eq (quote->text[EM_QUOTE_MACHINE], rates->machine[0].id);
  ck_assert_ptr_null (quote->text[EM_QUOTE_PROCESS]);
  /* A feature has its own. */
  em_document_set_feature_machine (document, 0, NULL, "gtaw");
  ck_assert_str_eq (quote->feature[0].text[EM_FEATURE_PROCESS], "gtaw");
  em_document_set_feature_machine (document, 0, NULL, NULL);
  ck_assert_ptr_null (quote->feature[0].text[EM_FEATURE_PROCESS]);
  gtk_window_destroy (GTK_WINDOW (window));
}
END_TEST

TEST_MAIN ("window", a_process_is_chosen_like_a_machine, price_follows_the_typing, a_long_title_has_its_room, entries_read_as_people_write, bad_entry_says_so_and_keeps_the_price,
           what_cannot_be_read_stays_with_its_feature, typing_over_a_figure_replaces_it, a_recent_file_that_is_gone_is_forgotten, a_step_back_takes_what_cannot_be_read,
           features_come_go_and_move_by_actions, features_travel_by_the_clipboard, units_are_shown_and_switched,
           a_steady_child_is_as_wide_at_any_height, pages_are_shown_in_the_window, shortcuts_are_shown_whenever_asked_for, close_asks_only_when_something_would_be_lost, a_keystroke_is_priced_at_once,
           a_quote_is_copied_and_revised, retired_metals_are_offered_to_those_who_have_them,
           panes_share_the_window, a_wire_not_yet_chosen_is_no_mistake, wires_are_reached_by_a_key,
           limits_are_told_at_the_field_in_its_unit, sizes_never_given_are_asked_for_and_no_mistake)
