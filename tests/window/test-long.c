/* Long quotes: thousands of features cost the window no more widgets than a few, and all of them can be reached.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-test-window.h"

#include "em-feature-lines.h"
#include "em-feature-list.h"
#include "em-feature-row.h"
#include "em-words.h"

#include <string.h>



enum { N_FEATURES = 3000, MOST_WIDGETS = 300 };

static int
count_type (GtkWidget *in, GType type)
{
  int n = g_type_is_a (G_OBJECT_TYPE (in), type);

  for (GtkWidget *child = gtk_widget_get_first_child (in); child != NULL; child = gtk_widget_get_next_sibling (child))
    n += count_type (child, type);
  return n;
}

static GtkWidget *
find_of_type (GtkWidget *in, GType type)
{
  GtkWidget *found = g_type_is_a (G_OBJECT_TYPE (in), type) ? in : NULL;

  for (GtkWidget *child = gtk_widget_get_first_child (in); found == NULL && child != NULL; child = gtk_widget_get_next_sibling (child))
    found = find_of_type (child, type);
  return found;
}

static GtkWidget *
find_of_class (GtkWidget *in, const char *css_class)
{
  if (gtk_widget_has_css_class (in, css_class))
    return in;
  for (GtkWidget *child = gtk_widget_get_first_child (in); child != NULL; child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *found = find_of_class (child, css_class);
      if (found != NULL)
        return found;
    }
  return NULL;
}

/* The row of a feature, NULL when it is not made; then nobody could see it. */
static GtkWidget *
find_row (GtkWidget *in, uint32_t id)
{
  if (EM_IS_FEATURE_ROW (in) && em_feature_row_get_feature_id (EM_FEATURE_ROW (in)) == id)
    return in;
  for (GtkWidget *child = gtk_widget_get_first_child (in); child != NULL; child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *found = find_row (child, id);
      if (found != NULL)
        return found;
    }
  return NULL;
}

/* The demo's features over and over. */
static EmDocument *
make_long (int n)
{
  g_autoptr (EmDocument) demo = test_demo (NULL);
  g_autoptr (EmBasis) basis = test_basis ();
  const EmQuote *few = em_document_get_quote (demo);
  EmQuoteFile file;

  em_quote_file_init (&file);
  em_quote_clear (&file.quote);
  ck_assert_int_eq (em_quote_copy (few, &file.quote), EM_OK);
  em_quote_clear_marks (&file.quote);
  for (int i = file.quote.n_features; i < n; i++)
    {
      EmFeature feature;
      ck_assert_int_eq (em_feature_copy (&few->feature[i % few->n_features], &feature), EM_OK);
      feature.id = 0;
      ck_assert_int_eq (em_quote_insert_take (&file.quote, i, &feature), EM_OK);
    }
  return em_document_new_take (basis, &file, NULL);
}

static uint32_t
id_at (EmDocument *document, int32_t index)
{
  return em_document_get_quote (document)->feature[index].id;
}

static uint32_t
listed_id (GtkSelectionModel *features, guint position)
{
  g_autoptr (EmFeatureItem) item = g_list_model_get_item (G_LIST_MODEL (features), position);

  ck_assert_ptr_nonnull (item);
  return em_feature_item_get_id (item);
}

/* Something dragged near an edge moves the list that way, the faster the nearer; in the middle or gone, the list stands. */
START_TEST (the_list_moves_on_under_what_is_dragged)
{
  g_autoptr (EmApplication) application = test_application ();
  g_autoptr (EmDocument) document = make_long (N_FEATURES);
  EmWindow *window = test_window (application, document);
  GtkWidget *metal = GTK_WIDGET (em_window_get_metal (window)), *list = find_of_type (metal, GTK_TYPE_LIST_VIEW);
  g_autoptr (GListModel) controllers = gtk_widget_observe_controllers (list);
  GtkAdjustment *adjustment = gtk_scrollable_get_vadjustment (GTK_SCROLLABLE (list));
  GtkEventController *motion = NULL;
  double height = gtk_widget_get_height (list), middle = height / 2, at;

  for (guint i = 0; motion == NULL && i < g_list_model_get_n_items (controllers); i++)
    {
      g_autoptr (GtkEventController) controller = g_list_model_get_item (controllers, i);
      if (GTK_IS_DROP_CONTROLLER_MOTION (controller))
        motion = controller;
    }
  ck_assert_ptr_nonnull (motion);
  ck_assert_double_eq (gtk_adjustment_get_value (adjustment), 0);
  g_signal_emit_by_name (motion, "enter", 10.0, middle);
  test_settle (200);
  ck_assert_double_eq (gtk_adjustment_get_value (adjustment), 0);
  g_signal_emit_by_name (motion, "motion", 10.0, height - 1);
  test_settle (500);
  at = gtk_adjustment_get_value (adjustment);
  ck_assert_msg (at > 20, "%g", at);
  test_settle (500);   /* with the pointer at rest too */
  ck_assert_double_gt (gtk_adjustment_get_value (adjustment), at);
  g_signal_emit_by_name (motion, "motion", 10.0, middle);
  at = gtk_adjustment_get_value (adjustment);
  test_settle (200);
  ck_assert_double_eq (gtk_adjustment_get_value (adjustment), at);
  g_signal_emit_by_name (motion, "motion", 10.0, 1.0);
  test_settle (300);
  ck_assert_double_lt (gtk_adjustment_get_value (adjustment), at);
  g_signal_emit_by_name (motion, "leave");
  at = gtk_adjustment_get_value (adjustment);
  test_settle (200);
  ck_assert_double_eq (gtk_adjustment_get_value (adjustment), at);
  gtk_window_destroy (GTK_WINDOW (window));
}
END_TEST

START_TEST (few_rows_stand_for_many_features)
{
  g_autoptr (EmApplication) application = test_application ();
  g_autoptr (EmDocument) document = make_long (N_FEATURES);
  EmWindow *window = test_window (application, document);
  GtkWidget *metal = GTK_WIDGET (em_window_get_metal (window));
  GtkSelectionModel *features = em_metal_pane_get_features (em_window_get_metal (window));

  ck_assert_uint_eq (g_list_model_get_n_items (G_LIST_MODEL (features)), N_FEATURES);
  ck_assert_int_gt (count_type (metal, EM_TYPE_FEATURE_ROW), 5);
  ck_assert_int_lt (count_type (metal, EM_TYPE_FEATURE_ROW), MOST_WIDGETS);
  ck_assert_ptr_null (find_row (metal, id_at (document, N_FEATURES - 1)));
  em_document_set_selected (document, id_at (document, N_FEATURES - 1));
  test_settle (100);
  ck_assert (gtk_selection_model_is_selected (features, N_FEATURES - 1));
  ck_assert_msg (find_row (metal, id_at (document, N_FEATURES - 1)) != NULL, "what is selected is not brought into sight");
  ck_assert_int_lt (count_type (metal, EM_TYPE_FEATURE_ROW), MOST_WIDGETS);
  gtk_window_destroy (GTK_WINDOW (window));
}
END_TEST

/* From the list to the quote, wherever the row is. */
START_TEST (a_row_that_is_selected_is_the_feature_shown)
{
  g_autoptr (EmApplication) application = test_application ();
  g_autoptr (EmDocument) document = make_long (N_FEATURES);
  EmWindow *window = test_window (application, document);
  GtkSelectionModel *features = em_metal_pane_get_features (em_window_get_metal (window));

  gtk_selection_model_select_item (features, 2017, TRUE);
  test_settle (20);
  ck_assert_int_eq (em_document_get_selected_index (document), 2017);
  test_act (window, "win.focus-pane(2)");
  GtkWidget *focus = gtk_window_get_focus (GTK_WINDOW (window));
  ck_assert_ptr_nonnull (focus);
  ck_assert_msg (find_row (focus, id_at (document, 2017)) != NULL, "the keyboard is not at the selected row but at a %s", G_OBJECT_TYPE_NAME (focus));
  gtk_window_destroy (GTK_WINDOW (window));
}
END_TEST

/* Tab comes into the list at the row that is selected, and leaves the selection alone. */
START_TEST (the_keyboard_comes_to_the_selected_row)
{
  g_autoptr (EmApplication) application = test_application ();
  g_autoptr (EmDocument) document = make_long (N_FEATURES);
  EmWindow *window = test_window (application, document);
  GtkWidget *list = find_of_class (GTK_WIDGET (em_window_get_metal (window)), "features");

  test_act (window, "win.focus-pane(1)");
  em_document_set_selected (document, id_at (document, 700));
  test_settle (50);
  ck_assert (gtk_widget_child_focus (list, GTK_DIR_TAB_FORWARD));
  GtkWidget *focus = gtk_window_get_focus (GTK_WINDOW (window));
  ck_assert_int_eq (em_document_get_selected_index (document), 700);
  ck_assert_msg (focus != NULL && find_row (focus, id_at (document, 700)) != NULL, "another row has the keyboard");
  gtk_window_destroy (GTK_WINDOW (window));
}
END_TEST

/* What moves stays selected, keeps the keyboard, and is the same item; only what lies between changes places. */
START_TEST (a_feature_moves_with_the_keyboard_on_it)
{
  g_autoptr (EmApplication) application = test_application ();
  g_autoptr (EmDocument) document = make_long (40);
  EmWindow *window = test_window (application, document);
  GtkSelectionModel *features = em_metal_pane_get_features (em_window_get_metal (window));
  uint32_t id = id_at (document, 3);

  em_document_set_selected (document, id);
  test_act (window, "win.focus-pane(2)");
  g_autoptr (GObject) before = g_list_model_get_item (G_LIST_MODEL (features), 3);
  test_act (window, "win.move-down");
  test_act (window, "win.move-down");
  g_autoptr (GObject) after = g_list_model_get_item (G_LIST_MODEL (features), 5);
  ck_assert_ptr_eq (before, after);
  ck_assert_uint_eq (em_document_get_selected (document), id);
  ck_assert (gtk_selection_model_is_selected (features, 5));
  GtkWidget *focus = gtk_window_get_focus (GTK_WINDOW (window));
  ck_assert (focus != NULL && find_row (focus, id) != NULL);
  test_act (window, "win.duplicate");
  ck_assert_uint_eq (g_list_model_get_n_items (G_LIST_MODEL (features)), 41);
  ck_assert (gtk_selection_model_is_selected (features, 6));
  test_act (window, "win.remove");
  test_act (window, "win.undo");
  test_act (window, "win.undo");
  test_act (window, "win.undo");
  test_act (window, "win.undo");
  for (int32_t i = 0; i < 40; i++)
    ck_assert_uint_eq (listed_id (features, (guint) i), id_at (document, i));
  ck_assert_uint_eq (id_at (document, 3), id);
  gtk_window_destroy (GTK_WINDOW (window));
}
END_TEST

/* One feature's price in its row, in its line and in the total, by a key typed in the middle of many. */
START_TEST (a_price_follows_in_row_and_line)
{
  g_autoptr (EmApplication) application = test_application ();
  g_autoptr (EmDocument) document = make_long (N_FEATURES);
  EmWindow *window = test_window (application, document);
  GtkWidget *metal = GTK_WIDGET (em_window_get_metal (window)), *money = GTK_WIDGET (em_window_get_money (window));
  GtkWidget *fold = find_of_class (money, "features-fold");
  EmFeatureLines *lines = EM_FEATURE_LINES (gtk_expander_get_child (GTK_EXPANDER (fold)));
  const int at = 1234;

  ck_assert_uint_eq (g_list_model_get_n_items (em_feature_lines_get_model (lines)), 0);
  gtk_widget_activate (fold);
  test_settle (100);
  ck_assert_uint_eq (g_list_model_get_n_items (em_feature_lines_get_model (lines)), N_FEATURES);
  ck_assert_int_lt (count_type (GTK_WIDGET (lines), GTK_TYPE_LABEL), 3 * MOST_WIDGETS);
  em_document_set_selected (document, id_at (document, at));
  test_settle (50);
  EmFeatureEditor *editor = em_metal_pane_get_editor (em_window_get_metal (window));
  GtkWidget *entry = em_feature_editor_get_entry (editor, em_document_get_quote (document)->feature[at].kind->fields[0].id);
  test_type (em_quantity_entry_get_text_widget (EM_QUANTITY_ENTRY (entry)), "31");
  test_settle (50);
  g_autofree char *price = em_words_money_bare (em_document_get_feature_cost (document, at)->price_minor, &em_document_get_rates (document)->currency);
  GtkWidget *row = find_row (metal, id_at (document, at));
  ck_assert_ptr_nonnull (row);
  ck_assert_str_eq (gtk_label_get_text (GTK_LABEL (gtk_widget_get_last_child (row))), price);
  gtk_window_destroy (GTK_WINDOW (window));
}
END_TEST

/* What is unfolded of a few lines is all to be seen; of many a part, which scrolls by itself. */
START_TEST (unfolded_lines_are_in_sight)
{
  static const struct { int n, from_px, to_px; } rows[] = { { 6, 120, 320 }, { 300, 320, 320 } };
  g_autoptr (EmApplication) application = test_application ();

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (EmDocument) document = make_long (rows[i].n);
      while (em_document_get_quote (document)->n_features > rows[i].n)
        em_document_remove (document, 0);
      EmWindow *window = test_window (application, document);
      GtkWidget *fold = find_of_class (GTK_WIDGET (em_window_get_money (window)), "features-fold");
      gtk_widget_activate (fold);
      test_settle (200);
      int height = gtk_widget_get_height (gtk_expander_get_child (GTK_EXPANDER (fold)));
      ck_assert_msg (height >= rows[i].from_px && height <= rows[i].to_px, "%d lines are %d pixels high", rows[i].n, height);
      gtk_window_destroy (GTK_WINDOW (window));
    }
}
END_TEST

/* Lines that were unfolded, folded away and became fewer meanwhile: three and less unfold by themselves. */
START_TEST (lines_that_went_while_folded_are_gone)
{
  g_autoptr (EmApplication) application = test_application ();
  g_autoptr (EmDocument) document = make_long (40);
  EmWindow *window = test_window (application, document);
  GtkWidget *fold = find_of_class (GTK_WIDGET (em_window_get_money (window)), "features-fold");
  EmFeatureLines *lines = EM_FEATURE_LINES (gtk_expander_get_child (GTK_EXPANDER (fold)));

  gtk_expander_set_expanded (GTK_EXPANDER (fold), TRUE);
  test_settle (50);
  em_document_set_text (document, EM_QUOTE_FILLER, NULL);
  gtk_expander_set_expanded (GTK_EXPANDER (fold), FALSE);
  test_settle (50);
  while (em_document_get_quote (document)->n_features > 2)
    em_document_remove (document, 0);
  em_document_set_text (document, EM_QUOTE_FILLER, "h13-wire");
  test_settle (50);
  ck_assert (gtk_expander_get_expanded (GTK_EXPANDER (fold)));
  ck_assert_uint_eq (g_list_model_get_n_items (em_feature_lines_get_model (lines)), 2);
  gtk_window_destroy (GTK_WINDOW (window));
}
END_TEST

/* The customer's words */

static void
take_words (EmWindow *window, const char *text)
{
  EmWordsPane *words = em_window_get_words (window);

  em_document_set_notes (em_window_get_document (window), NULL);
  em_words_pane_take_text (words, text, FALSE, EM_UNITS_METRIC);
  while (em_words_pane_is_busy (words))
    test_settle (20);
  test_settle (50);
}

static EmWindow *
blank_window (EmApplication *application)
{
  g_autoptr (EmDocument) document = em_document_new (em_application_get_basis (application));

  em_document_set_text (document, EM_QUOTE_FILLER, "h13-wire");
  return test_window (application, document);
}

static gboolean
find_label (GtkWidget *in, const char *words)
{
  if (GTK_IS_LABEL (in) && gtk_widget_get_mapped (in) && strstr (gtk_label_get_text (GTK_LABEL (in)), words) != NULL)
    return TRUE;
  for (GtkWidget *child = gtk_widget_get_first_child (in); child != NULL; child = gtk_widget_get_next_sibling (child))
    if (find_label (child, words))
      return TRUE;
  return FALSE;
}

static int
count_of_class (GtkWidget *in, const char *css_class)
{
  int n = gtk_widget_has_css_class (in, css_class);

  for (GtkWidget *child = gtk_widget_get_first_child (in); child != NULL; child = gtk_widget_get_next_sibling (child))
    n += count_of_class (child, css_class);
  return n;
}

/* The reader looks at 2 MiB = 2,097,152 bytes; 9,996 lines of 210 bytes are 2,099,160: 2,008 lie behind. */
START_TEST (what_is_too_long_to_be_read_is_told)
{
  g_autoptr (EmApplication) application = test_application ();
  EmWindow *window = blank_window (application);
  g_autoptr (GString) text = g_string_new (NULL);
  GtkWidget *words = GTK_WIDGET (em_window_get_words (window));

  for (int i = 0; i < 99960; i++)
    g_string_append_printf (text, "No word is of use it%c", i % 10 == 9 ? '\n' : ' ');
  ck_assert_uint_eq (text->len, 2099160);
  take_words (window, text->str);
  ck_assert_msg (find_label (words, "Only the first 2,097 kB of the notes were read; the last 3 kB were not."), "what was not read is not told");
  em_document_set_notes (em_window_get_document (window), NULL);
  take_words (window, "Edge nick 12 x 0.8 x 0.6 mm");
  ck_assert (!find_label (words, "were not"));
  gtk_window_destroy (GTK_WINDOW (window));
}
END_TEST

/* Nobody answers hundreds at once; each would be a box of buttons with a price on each. */
START_TEST (questions_come_a_few_at_a_time)
{
  g_autoptr (EmApplication) application = test_application ();
  EmWindow *window = blank_window (application);
  EmWordsPane *words = em_window_get_words (window);
  g_autoptr (GString) text = g_string_new (NULL);

  for (int i = 0; i < 40; i++)
    g_string_append_printf (text, "%d) Build up face 18 x 9 mm, 0.5 mm thick\n%d) Pin diameter 6 mm, build 0.25 mm, 10 mm long\n", 2 * i + 1, 2 * i + 2);
  take_words (window, text->str);
  int n = em_words_pane_count_questions (words);
  ck_assert_msg (n > 20, "%d questions are too few for this test", n);
  ck_assert_int_eq (count_of_class (GTK_WIDGET (words), "question"), 12);
  g_autofree char *more = g_strdup_printf ("%d more questions follow.", n - 12);
  ck_assert (find_label (GTK_WIDGET (words), more));
  em_words_pane_answer (words, 0, 0);
  test_settle (50);
  ck_assert_int_eq (count_of_class (GTK_WIDGET (words), "question"), 12);
  gtk_window_destroy (GTK_WINDOW (window));
}
END_TEST

/* Whether a tag at the character sets one of Pango's properties. */
static gboolean
has_look (GtkTextBuffer *buffer, int at, const char *property)
{
  GtkTextIter iter;
  gboolean is_set = FALSE;
  g_autofree char *name = g_strdup_printf ("%s-set", property);

  gtk_text_buffer_get_iter_at_offset (buffer, &iter, at);
  g_autoptr (GSList) tags = gtk_text_iter_get_tags (&iter);
  for (GSList *tag = tags; tag != NULL && !is_set; tag = tag->next)
    g_object_get (tag->data, name, &is_set, NULL);
  return is_set;
}

/* Marks stay under their words while others are typed before them, and only words whose mark changed look otherwise. */
START_TEST (marks_stay_under_their_words)
{
  static const char text[] = "Edge nick 12 mm long, 0.8 x 0.6 mm. Grüße aus der Ferne. Bore 8 mm worn, build up 0.3 mm, 6 mm long";
  const int at_length = 10;   /* "12 mm" */
  g_autoptr (EmApplication) application = test_application ();
  EmWindow *window = blank_window (application);
  GtkTextBuffer *buffer = em_words_pane_get_buffer (em_window_get_words (window));
  EmDocument *document = em_window_get_document (window);
  GtkTextIter start;

  take_words (window, text);
  ck_assert_int_eq (em_document_get_quote (document)->n_features, 2);
  const char *bore = strstr (text, "Bore");
  int at_bore = (int) g_utf8_pointer_to_offset (text, bore);
  ck_assert (has_look (buffer, at_length, "underline") && !has_look (buffer, at_length, "strikethrough"));
  ck_assert (has_look (buffer, at_bore, "underline") && !has_look (buffer, at_bore - 10, "underline"));
  gtk_text_buffer_get_start_iter (buffer, &start);
  gtk_text_buffer_insert (buffer, &start, "Hi: ", -1);
  test_settle (20);
  ck_assert (!has_look (buffer, 0, "underline") && !has_look (buffer, 3, "underline"));
  ck_assert (has_look (buffer, at_length + 4, "underline") && has_look (buffer, at_bore + 4, "underline"));
  int32_t nick = strcmp (em_document_get_quote (document)->feature[0].kind->id, "edge-nick") == 0 ? 0 : 1;
  em_document_set_value (document, nick, em_kind_field (em_document_get_quote (document)->feature[nick].kind, "length"), EM_LIKELY, 15);
  test_settle (20);
  ck_assert_msg (has_look (buffer, at_length + 4, "strikethrough"), "what was corrected is not struck out");
  ck_assert (!has_look (buffer, at_bore + 4, "strikethrough") && has_look (buffer, at_bore + 4, "underline"));
  em_document_undo (document);
  test_settle (20);
  ck_assert (!has_look (buffer, at_length + 4, "strikethrough") && has_look (buffer, at_length + 4, "underline"));
  gtk_window_destroy (GTK_WINDOW (window));
}
END_TEST

/* A note of stock for all is over-lined as others that govern are, though each feature holds it. */
START_TEST (stock_for_all_looks_general)
{
  static const char text[] = "Edge nick 12 mm long, 0.8 x 0.6 mm\nFace 20 x 10 mm, add 0.3 mm\nLeave 0.2 mm all over";
  const int at_stock = (int) (strstr (text, "0.2") - text), at_face = (int) (strstr (text, "20") - text);
  g_autoptr (EmApplication) application = test_application ();
  EmWindow *window = blank_window (application);
  GtkTextBuffer *buffer = em_words_pane_get_buffer (em_window_get_words (window));

  take_words (window, text);
  ck_assert_int_eq (em_document_get_quote (em_window_get_document (window))->n_features, 2);
  ck_assert (has_look (buffer, at_stock, "overline") && !has_look (buffer, at_stock, "underline"));
  ck_assert (has_look (buffer, at_face, "underline") && !has_look (buffer, at_face, "overline"));
  gtk_window_destroy (GTK_WINDOW (window));
}
END_TEST

/* The model alone: it tells of what changed and of nothing else. */

typedef struct { guint n_told, at, removed, added; } Told;

static void
on_items_changed (GListModel *model, guint at, guint removed, guint added, Told *told)
{
  (void) model;
  *told = (Told) { told->n_told + 1, at, removed, added };
}

START_TEST (the_model_tells_of_no_more_than_changed)
{
  static const struct { uint32_t now[8]; guint n, at, removed, added; } rows[] = {
    { { 1, 2, 3, 4, 5 }, 5, 0, 0, 5 },
    { { 1, 2, 9, 3, 4, 5 }, 6, 2, 0, 1 },      /* one comes */
    { { 1, 9, 3, 4, 5 }, 5, 1, 1, 0 },         /* one goes */
    { { 1, 3, 4, 9, 5 }, 5, 1, 3, 3 },         /* one moves: what lies between is told too */
    { { 1, 3, 4, 9, 5, 6 }, 6, 5, 0, 1 },      /* one at the end */
    { { 0 }, 0, 0, 6, 0 },
  };
  g_autoptr (EmFeatureList) list = em_feature_list_new ();
  Told told = { 0 };

  g_signal_connect (list, "items-changed", G_CALLBACK (on_items_changed), &told);
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      em_feature_list_show (list, rows[i].now, rows[i].n);
      ck_assert_msg (told.n_told == i + 1 && told.at == rows[i].at && told.removed == rows[i].removed && told.added == rows[i].added,
                     "row %u: told %u times, at %u %u went and %u came", i, told.n_told, told.at, told.removed, told.added);
      em_feature_list_show (list, rows[i].now, rows[i].n);
      ck_assert_msg (told.n_told == i + 1, "row %u: told of no change", i);
      for (guint k = 0; k < rows[i].n; k++)
        ck_assert_uint_eq (em_feature_list_get_id (list, k), rows[i].now[k]);
    }
}
END_TEST

TEST_MAIN ("long quotes", the_list_moves_on_under_what_is_dragged, few_rows_stand_for_many_features, a_row_that_is_selected_is_the_feature_shown, the_keyboard_comes_to_the_selected_row, a_feature_moves_with_the_keyboard_on_it,
           a_price_follows_in_row_and_line, unfolded_lines_are_in_sight, lines_that_went_while_folded_are_gone, what_is_too_long_to_be_read_is_told, questions_come_a_few_at_a_time, marks_stay_under_their_words, stock_for_all_looks_general,
           the_model_tells_of_no_more_than_changed)
