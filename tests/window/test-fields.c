/* test-fields: entries in columns: lines as high as their own, columns of one width, the hidden ones take no room; figures whole.
 *
 * Expectations are sums of the widgets' sizes as they are asked for; the word joiner is U+2060 (UAX #14: no line breaks at it).
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-test-window.h"

#include "em-field.h"
#include "em-fields.h"

enum { WIDE = 100, HIGH = 30, N_BOXES = 5, ROOM = 340 };   /* three columns of 100 and two gaps of 10 fit into 340 */

static GtkWidget *box[N_BOXES];

static GtkWidget *
fields_in_window (GtkWidget **out_window)
{
  GtkWidget *fields, *scrolled;

  gtk_init ();
  fields = em_fields_new ();
  scrolled = gtk_scrolled_window_new ();
  for (int i = 0; i < N_BOXES; i++)
    {
      box[i] = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
      gtk_widget_set_size_request (box[i], WIDE, HIGH);
      em_fields_add (fields, box[i]);
    }
  *out_window = gtk_window_new ();
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scrolled), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), fields);
  gtk_window_set_decorated (GTK_WINDOW (*out_window), FALSE);
  gtk_window_set_default_size (GTK_WINDOW (*out_window), ROOM, 400);
  gtk_window_set_child (GTK_WINDOW (*out_window), scrolled);
  gtk_window_present (GTK_WINDOW (*out_window));
  test_settle (200);
  return fields;
}

static graphene_rect_t
place_of (GtkWidget *widget, GtkWidget *fields)
{
  graphene_rect_t place;

  ck_assert (gtk_widget_compute_bounds (widget, fields, &place));
  return place;
}

START_TEST (a_taller_entry_moves_only_the_lines_below)
{
  GtkWidget *window, *fields;

  fields = fields_in_window (&window);
  float first = place_of (box[0], fields).origin.y, second = place_of (box[3], fields).origin.y;

  /* Three in the first line, one width; the others beneath. */
  ck_assert_float_eq (place_of (box[2], fields).origin.y, first);
  ck_assert_float_eq (place_of (box[1], fields).size.width, place_of (box[4], fields).size.width);
  ck_assert_float_eq (place_of (box[4], fields).origin.x, place_of (box[1], fields).origin.x);
  ck_assert_float_eq (second - first, HIGH + 6);
  gtk_widget_set_size_request (box[4], WIDE, 3 * HIGH);
  test_settle (100);
  ck_assert_float_eq (place_of (box[3], fields).origin.y, second);
  gtk_widget_set_size_request (box[1], WIDE, 2 * HIGH);
  test_settle (100);
  ck_assert_float_eq (place_of (box[3], fields).origin.y, second + HIGH);
  gtk_window_destroy (GTK_WINDOW (window));
}
END_TEST

START_TEST (hidden_entries_and_wide_ones)
{
  GtkWidget *window, *fields = fields_in_window (&window), *wide = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  float third = place_of (box[2], fields).origin.x;

  gtk_widget_set_visible (box[1], FALSE);
  gtk_widget_set_size_request (wide, WIDE, HIGH);
  em_fields_add_wide (fields, wide);
  test_settle (100);
  ck_assert_float_eq (place_of (box[3], fields).origin.x, third);
  ck_assert_float_eq (place_of (box[3], fields).origin.y, place_of (box[0], fields).origin.y);
  ck_assert_float_eq (place_of (wide, fields).size.width, (float) gtk_widget_get_width (fields));
  ck_assert_float_gt (place_of (wide, fields).origin.y, place_of (box[4], fields).origin.y);
  gtk_window_destroy (GTK_WINDOW (window));
}
END_TEST

/* From the right where one reads from there. */
START_TEST (the_other_way_round)
{
  GtkWidget *window, *fields;

  gtk_init ();
  gtk_widget_set_default_direction (GTK_TEXT_DIR_RTL);
  fields = fields_in_window (&window);
  ck_assert_float_gt (place_of (box[0], fields).origin.x, place_of (box[1], fields).origin.x);
  ck_assert_float_eq (place_of (box[0], fields).origin.x + place_of (box[0], fields).size.width, (float) gtk_widget_get_width (fields));
  gtk_window_destroy (GTK_WINDOW (window));
}
END_TEST

#define JOINER "\342\201\240"

START_TEST (only_leading_points_are_joined)
{
  static const struct { const char *text, *kept; } cases[] = {
    { ".030", "." JOINER "030" },
    { "between .0004 in and 2.5 in.", "between ." JOINER "0004 in and 2.5 in." },
    { "R.5-.8", "R." JOINER "5-." JOINER "8" },
    { "12.5", "12.5" },
    { "", "" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *kept = em_field_keep_figures (cases[i].text);

      ck_assert_str_eq (kept, cases[i].kept);
    }
}
END_TEST

TEST_MAIN ("fields", a_taller_entry_moves_only_the_lines_below, hidden_entries_and_wide_ones, the_other_way_round, only_leading_points_are_joined)
