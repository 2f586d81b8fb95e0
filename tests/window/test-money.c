/* test-money: the money pane: price, picture, lines, cautions, and what opens from them.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-test-window.h"

#include "em-deposit-view.h"
#include "em-look.h"
#include "em-words.h"

static GtkWidget *
find (GtkWidget *in, gboolean (*is_it) (GtkWidget *widget, gconstpointer data), gconstpointer data)
{
  if (is_it (in, data))
    return in;
  for (GtkWidget *child = gtk_widget_get_first_child (in); child != NULL; child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *found = find (child, is_it, data);
      if (found != NULL)
        return found;
    }
  return NULL;
}

static gboolean
has_class (GtkWidget *widget, gconstpointer css_class)
{
  return gtk_widget_has_css_class (widget, css_class);
}

static gboolean
is_type (GtkWidget *widget, gconstpointer type)
{
  return G_TYPE_CHECK_INSTANCE_TYPE (widget, *(const GType *) type);
}

static gboolean
says (GtkWidget *widget, gconstpointer text)
{
  return GTK_IS_LABEL (widget) && g_str_equal (gtk_label_get_text (GTK_LABEL (widget)), text);
}

static GtkWidget *
money_of (EmWindow *window)
{
  return GTK_WIDGET (em_window_get_money (window));
}

/* GTK obeys the environment's theme before any setting, so the program's own colours have to go by it too. */
START_TEST (colours_follow_the_theme_of_the_environment)
{
  GtkSettings *settings = (gtk_init (), gtk_settings_get_default ());

  em_look_init ();
  g_setenv ("GTK_THEME", "Adwaita:dark", TRUE);
  g_object_notify (G_OBJECT (settings), "gtk-theme-name");
  ck_assert (em_look_is_dark ());
  g_setenv ("GTK_THEME", "Adwaita", TRUE);
  g_object_notify (G_OBJECT (settings), "gtk-theme-name");
  ck_assert (!em_look_is_dark ());
  g_unsetenv ("GTK_THEME");
  g_object_notify (G_OBJECT (settings), "gtk-theme-name");
}
END_TEST

/* Codes are for files; people get names. */
START_TEST (every_figure_of_a_working_has_a_name)
{
  g_autoptr (EmDocument) document = (gtk_init (), test_demo (em_demos[_i].id));
  int n_features = em_document_get_quote (document)->n_features, n = 0;

  for (int row = EM_ROW_QUOTE; row < n_features; row++)
    {
      EmTrace trace;
      em_document_trace (document, row, &trace);
      for (int i = 0; i < trace.n_steps; i++, n++)
        ck_assert_msg (em_words_trace_name (trace.step[i].quantity) != trace.step[i].quantity, "%s has no name", trace.step[i].quantity);
      em_trace_clear (&trace);
    }
  ck_assert_int_gt (n, 100);
  for (int i = 0; i < EM_N_MONEY; i++)
    ck_assert_msg (em_words_trace_of_money ((EmMoney) i) != NULL, "%s opens no working", em_moneys[i].id);
}
END_TEST

START_TEST (parts_of_the_price_open_their_working)
{
  g_autoptr (EmApplication) application = test_application ();
  g_autoptr (EmDocument) document = test_demo (NULL);
  EmWindow *window = test_window (application, document);
  GType popover_type = GTK_TYPE_POPOVER, button_type = GTK_TYPE_BUTTON;
  GtkWidget *key = find (money_of (window), has_class, "money-key");
  GtkWidget *name = find (key, says, "Margin");

  ck_assert_ptr_nonnull (name);
  GtkWidget *button = gtk_widget_get_ancestor (name, button_type);
  g_signal_emit_by_name (button, "clicked");
  test_settle (100);
  GtkWidget *popover = find (button, is_type, &popover_type);
  ck_assert_ptr_nonnull (popover);
  g_autofree char *margin = em_words_money (em_document_get_cost (document)->money_minor[EM_MONEY_MARGIN], &em_document_get_rates (document)->currency);
  ck_assert_msg (find (popover, says, margin) != NULL, "the working does not come to %s", margin);
  gtk_widget_unparent (popover);
  gtk_window_destroy (GTK_WINDOW (window));
}
END_TEST

static void
note_gone (gpointer gone, GObject *where)
{
  (void) where;
  *(gboolean *) gone = TRUE;
}

/* What is opened to be looked at once is not kept for ever, however it goes: what it showed, even when it goes at once. */
START_TEST (a_working_that_is_closed_is_let_go)
{
  g_autoptr (EmApplication) application = test_application ();
  g_autoptr (EmDocument) document = test_demo (NULL);
  EmWindow *window = test_window (application, document);
  GType popover_type = GTK_TYPE_POPOVER;
  GtkWidget *key = find (money_of (window), has_class, "money-key"), *button = gtk_widget_get_ancestor (find (key, says, "Margin"), GTK_TYPE_BUTTON);
  gboolean is_gone = FALSE;

  g_signal_emit_by_name (button, "clicked");
  test_settle (100);
  GtkWidget *popover = find (button, is_type, &popover_type);
  g_object_weak_ref (G_OBJECT (gtk_popover_get_child (GTK_POPOVER (popover))), note_gone, &is_gone);
  if (_i == 0)
    gtk_popover_popdown (GTK_POPOVER (popover));
  else if (_i == 1)
    em_document_set_value (document, 0, 0, EM_LIKELY, 7);
  else
    gtk_widget_set_visible (key, FALSE);
  test_settle (300);
  ck_assert_msg (is_gone, "a working closed in way %d is still there", _i);
  gtk_window_destroy (GTK_WINDOW (window));
}
END_TEST

/* A popover pointing at what has left the screen is refused by GDK. */
START_TEST (a_working_closes_when_its_figure_is_scrolled_away)
{
  g_autoptr (EmApplication) application = test_application ();
  g_autoptr (EmDocument) document = test_demo (NULL);
  EmWindow *window = test_window (application, document);
  GType popover_type = GTK_TYPE_POPOVER;
  GtkWidget *button = gtk_widget_get_ancestor (find (find (money_of (window), has_class, "money-key"), says, "Margin"), GTK_TYPE_BUTTON);
  GtkWidget *scroller = gtk_widget_get_ancestor (button, GTK_TYPE_SCROLLED_WINDOW);

  g_signal_emit_by_name (button, "clicked");
  test_settle (100);
  ck_assert_ptr_nonnull (find (button, is_type, &popover_type));
  GtkAdjustment *place = gtk_scrolled_window_get_vadjustment (GTK_SCROLLED_WINDOW (scroller));
  ck_assert (gtk_adjustment_get_upper (place) > gtk_adjustment_get_page_size (place));
  gtk_adjustment_set_value (place, gtk_adjustment_get_upper (place));
  test_settle (100);
  ck_assert_ptr_null (find (button, is_type, &popover_type));
  gtk_window_destroy (GTK_WINDOW (window));
}
END_TEST

/* What is folded away adds up to what its line says, and opens. */
START_TEST (lines_of_features_are_one_line_to_open)
{
  g_autoptr (EmApplication) application = test_application ();
  g_autoptr (EmDocument) document = test_demo (NULL);
  EmWindow *window = test_window (application, document);
  GtkWidget *fold = find (money_of (window), has_class, "features-fold");
  const EmCost *cost = em_document_get_cost (document);
  int64_t sum_minor = 0;

  for (int i = 0; i < cost->n_lines; i++)
    sum_minor += cost->line[i].type == EM_LINE_FEATURE ? cost->line[i].amount_minor : 0;
  g_autofree char *sum = em_words_money_bare (sum_minor, &em_document_get_rates (document)->currency);
  ck_assert_ptr_nonnull (find (fold, says, sum));
  ck_assert (!gtk_expander_get_expanded (GTK_EXPANDER (fold)));
  gtk_widget_activate (fold);
  test_settle (50);
  ck_assert (gtk_expander_get_expanded (GTK_EXPANDER (fold)));
  em_document_set_value (document, 0, 0, EM_LIKELY, 7);
  ck_assert (gtk_expander_get_expanded (GTK_EXPANDER (fold)));
  gtk_window_destroy (GTK_WINDOW (window));
}
END_TEST

START_TEST (the_deposit_is_opened_into_sight)
{
  g_autoptr (EmApplication) application = test_application ();
  g_autoptr (EmDocument) document = test_demo (NULL);
  EmWindow *window = test_window (application, document);
  GType type = EM_TYPE_DEPOSIT_VIEW;
  graphene_rect_t bounds;

  test_settle (600);
  test_act (window, "win.deposit");
  test_settle (400);
  GtkWidget *deposit = find (money_of (window), is_type, &type);
  ck_assert (gtk_widget_get_mapped (deposit));
  ck_assert (gtk_widget_compute_bounds (deposit, GTK_WIDGET (window), &bounds));
  ck_assert_msg (bounds.origin.y > 0 && bounds.origin.y + bounds.size.height <= gtk_widget_get_height (GTK_WIDGET (window)) + 1,
                 "from %g to %g of %d", (double) bounds.origin.y, (double) (bounds.origin.y + bounds.size.height), gtk_widget_get_height (GTK_WIDGET (window)));
  gtk_window_destroy (GTK_WINDOW (window));
}
END_TEST

/* Their names are always there, in a line or two; the whole of each is one key away. */
START_TEST (cautions_take_two_lines_until_opened)
{
  g_autoptr (EmApplication) application = test_application ();
  g_autoptr (EmDocument) document = test_demo (NULL);
  EmWindow *window = test_window (application, document);
  GtkWidget *fold = find (money_of (window), has_class, "cautions");
  int folded = gtk_widget_get_height (fold);
  const char *whole = em_words_caution (EM_CAUTION_LASER_CLASS_4);

  ck_assert_int_gt (folded, 10);
  ck_assert_int_lt (folded, 60);
  ck_assert (find (fold, says, whole) == NULL || !gtk_widget_get_mapped (find (fold, says, whole)));
  gtk_widget_activate (fold);
  test_settle (400);
  ck_assert_ptr_nonnull (find (fold, says, whole));
  ck_assert (gtk_widget_get_mapped (find (fold, says, whole)));
  gtk_window_destroy (GTK_WINDOW (window));
}
END_TEST

START_TEST (nothing_priced_shows_no_price)
{
  g_autoptr (EmApplication) application = test_application ();
  g_autoptr (EmDocument) document = em_document_new (em_application_get_basis (application));
  EmWindow *window = test_window (application, document);

  ck_assert_str_eq (em_money_pane_get_price (em_window_get_money (window)), "–");
  gtk_window_destroy (GTK_WINDOW (window));
}
END_TEST

int
main (void)
{
  TCase *tcase = tcase_create ("money");

  tcase_add_loop_test (tcase, every_figure_of_a_working_has_a_name, 0, em_n_demos);
  tcase_add_test (tcase, parts_of_the_price_open_their_working);
  tcase_add_loop_test (tcase, a_working_that_is_closed_is_let_go, 0, 3);
  tcase_add_test (tcase, a_working_closes_when_its_figure_is_scrolled_away);
  tcase_add_test (tcase, lines_of_features_are_one_line_to_open);
  tcase_add_test (tcase, the_deposit_is_opened_into_sight);
  tcase_add_test (tcase, cautions_take_two_lines_until_opened);
  tcase_add_test (tcase, nothing_priced_shows_no_price);
  tcase_add_test (tcase, colours_follow_the_theme_of_the_environment);
  return test_run ("money", tcase, 60);
}
