/* test-words: the customer's words in the window: what is asked, what each answer costs, whose words are looked at.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-test-window.h"

#include "em-words.h"

#include <string.h>

/* The second is asked whether per side or on the diameter, the third whether in inches; the first has neither doubt. */
#define NOTES "1. gate edge chipped, 12 mm long, 0.5 x 0.4\n2. 2 bores worn .010, dia .500, 1 1/4 deep\n3. 2 pins worn dia 8 to 7.8, 20 long"

typedef struct
{
  EmApplication *application;
  EmDocument    *document;
  EmWindow      *window;
  EmWordsPane   *words;
} Fixture;

static void
start (Fixture *f, EmDocument *document)
{
  f->application = test_application ();
  f->document = document != NULL ? document : em_document_new (em_application_get_basis (f->application));
  f->window = test_window (f->application, f->document);
  f->words = em_window_get_words (f->window);
}

static void
end (Fixture *f)
{
  gtk_window_destroy (GTK_WINDOW (f->window));
  g_object_unref (f->document);
  g_object_unref (f->application);
}

/* Until the wires were compared and the answers priced. */
static void
settle_prices (Fixture *f)
{
  for (int i = 0; i < 3000 && (em_outlook_is_busy (em_window_get_outlook (f->window)) || em_outlook_get_compare (em_window_get_outlook (f->window)) == NULL); i++)
    test_settle (20);
  test_settle (150);
}

static void
read_notes (Fixture *f)
{
  em_document_set_text (f->document, EM_QUOTE_BASE, "p20");
  gtk_text_buffer_set_text (em_words_pane_get_buffer (f->words), NOTES, -1);
  test_act (f->window, "win.read-notes");
  settle_prices (f);
}

static char *price_of (Fixture *f, int number);

/* The price of the number-th answer once it is told, and is another than before. */
static char *
wait_for_price (Fixture *f, int number, const char *before)
{
  char *price = price_of (f, number);

  for (int i = 0; i < 200 && (price == NULL || *price == '\0' || g_strcmp0 (price, before) == 0); i++)
    {
      test_settle (40);
      g_free (price);
      price = price_of (f, number);
    }
  return price;
}

/* The text of the number-th answer's price, over all questions; NULL: no such answer. */
static const char *
answer_price (GtkWidget *in, int *number)
{
  GtkWidget *price = GTK_IS_BUTTON (in) ? g_object_get_data (G_OBJECT (in), "price") : NULL;

  if (price != NULL && (*number)-- == 0)
    return gtk_label_get_text (GTK_LABEL (price));
  for (GtkWidget *child = gtk_widget_get_first_child (in); child != NULL; child = gtk_widget_get_next_sibling (child))
    {
      const char *found = answer_price (child, number);
      if (found != NULL)
        return found;
    }
  return NULL;
}

static char *
price_of (Fixture *f, int number)
{
  return g_strdup (answer_price (GTK_WIDGET (f->words), &number));
}

/* What the second feature costs once the answer is given and the wire is chosen: the price told before, when there was no wire. */
START_TEST (answers_are_priced_before_a_wire_is_chosen)
{
  Fixture f;

  start (&f, NULL);
  read_notes (&f);
  ck_assert_ptr_null (em_document_get_quote (f.document)->text[EM_QUOTE_FILLER]);
  ck_assert_int_eq (em_words_pane_count_questions (f.words), 2);
  for (int answer = 0; answer < 2; answer++)
    {
      g_autofree char *told = wait_for_price (&f, answer, NULL);
      const EmCompare *compare = em_outlook_get_compare (em_window_get_outlook (f.window));
      gboolean is_stale;

      ck_assert_ptr_nonnull (told);
      ck_assert_str_ne (told, "");
      g_autofree char *wire = g_strdup (em_document_get_catalogue (f.document)->filler[compare->row[0].filler].id);
      em_words_pane_answer (f.words, 0, answer);
      em_document_choose_wire (f.document, -1, wire);
      g_autofree char *price = em_words_money_bare (em_document_get_feature_price (f.document, 1, &is_stale), &em_document_get_rates (f.document)->currency);
      ck_assert (!is_stale);
      ck_assert_str_eq (told, price);
      em_document_undo (f.document);
      em_document_undo (f.document);
      settle_prices (&f);
    }
  end (&f);
}
END_TEST

/* Prices are of the quote as it is, not as it was when it was asked. */
START_TEST (prices_follow_the_quote)
{
  Fixture f;

  start (&f, NULL);
  read_notes (&f);
  g_autofree char *before = wait_for_price (&f, 0, NULL);
  em_document_set_feature_number (f.document, 1, EM_FEATURE_COUNT, 5);
  g_autofree char *after = wait_for_price (&f, 0, before);
  ck_assert_str_ne (before, "");
  ck_assert_str_ne (after, "");
  ck_assert_str_ne (before, after);
  end (&f);
}
END_TEST

START_TEST (a_step_back_asks_again)
{
  Fixture f;

  start (&f, NULL);
  read_notes (&f);
  em_words_pane_answer (f.words, 0, 0);
  ck_assert_int_eq (em_words_pane_count_questions (f.words), 1);
  em_document_undo (f.document);
  ck_assert_int_eq (em_words_pane_count_questions (f.words), 2);
  em_document_redo (f.document);
  ck_assert_int_eq (em_words_pane_count_questions (f.words), 1);
  test_act (f.window, "win.read-notes");
  ck_assert_int_eq (em_words_pane_count_questions (f.words), 1);
  /* The one about the feature goes with it. */
  em_document_remove (f.document, 2);
  ck_assert_int_eq (em_words_pane_count_questions (f.words), 0);
  end (&f);
}
END_TEST

/* Words beside the question's may be edited, and the quote saved and opened again, without the question being lost. */
START_TEST (questions_outlive_an_edit_and_a_save)
{
  Fixture f;
  GtkTextIter at;

  start (&f, NULL);
  read_notes (&f);
  em_words_pane_answer (f.words, 0, 0);
  gtk_text_buffer_get_start_iter (em_words_pane_get_buffer (f.words), &at);
  gtk_text_buffer_insert (em_words_pane_get_buffer (f.words), &at, "Dear all,\n", -1);
  test_settle (600);
  ck_assert_int_eq (em_words_pane_count_questions (f.words), 1);
  g_autoptr (GBytes) bytes = em_document_to_bytes (f.document, NULL);
  end (&f);

  EmQuoteFile file;
  g_autoptr (EmBasis) basis = test_basis ();
  g_autoptr (GError) error = NULL;
  ck_assert_msg (em_quote_file_parse (bytes, "test", &file, &error), "%s", error != NULL ? error->message : "");
  start (&f, em_document_new_take (basis, &file, NULL));
  test_settle (600);
  ck_assert_int_eq (em_words_pane_count_questions (f.words), 1);
  em_words_pane_answer (f.words, 1, 0);
  ck_assert_int_eq (em_words_pane_count_questions (f.words), 0);
  end (&f);
}
END_TEST

static gboolean
stands_out (Fixture *f, const char *words)
{
  const char *notes = em_document_get_quote (f->document)->text[EM_QUOTE_NOTES];
  int at = (int) g_utf8_strlen (notes, strstr (notes, words) - notes);
  gboolean found = FALSE;
  GtkTextIter iter;

  gtk_text_buffer_get_iter_at_offset (em_words_pane_get_buffer (f->words), &iter, at);
  g_autoptr (GSList) tags = gtk_text_iter_get_tags (&iter);
  for (GSList *tag = tags; tag != NULL; tag = tag->next)
    {
      g_autoptr (GdkRGBA) ground = NULL;
      g_object_get (tag->data, "background-rgba", &ground, NULL);
      found = found || (ground != NULL && ground->alpha > 0 && ground->alpha < 1);
    }
  return found;
}

START_TEST (words_of_the_chosen_feature_stand_out)
{
  Fixture f;

  start (&f, NULL);
  read_notes (&f);
  const EmFeature *feature = em_document_get_quote (f.document)->feature;
  em_document_set_selected (f.document, feature[0].id);
  ck_assert (stands_out (&f, "gate edge"));
  ck_assert (!stands_out (&f, "bores worn"));
  em_document_set_selected (f.document, feature[1].id);
  ck_assert (!stands_out (&f, "gate edge"));
  ck_assert (stands_out (&f, "bores worn"));
  /* Marks are put there anew; the words stay chosen. */
  em_words_pane_answer (f.words, 0, 0);
  ck_assert (stands_out (&f, "bores worn"));
  end (&f);
}
END_TEST

/* Accepted is as good as entered: another reading with another size in the words leaves it. */
START_TEST (what_was_read_is_accepted)
{
  Fixture f;
  const EmQuote *quote;

  start (&f, NULL);
  read_notes (&f);
  quote = em_document_get_quote (f.document);
  em_document_set_selected (f.document, quote->feature[0].id);
  ck_assert (em_feature_is_read (&quote->feature[0]));
  test_act (f.window, "win.accept");
  quote = em_document_get_quote (f.document);
  ck_assert (!em_feature_is_read (&quote->feature[0]));
  ck_assert_uint_eq (em_document_get_selected (f.document), quote->feature[1].id);
  em_document_undo (f.document);
  ck_assert (em_feature_is_read (&em_document_get_quote (f.document)->feature[0]));
  em_document_redo (f.document);
  em_document_set_notes (f.document, "1. gate edge chipped, 13 mm long, 0.5 x 0.4\n2. 2 bores worn .010, dia .500, 1 1/4 deep");
  test_act (f.window, "win.read-notes");
  ck_assert_double_eq (em_document_get_quote (f.document)->feature[0].value[em_kind_field (em_document_get_quote (f.document)->feature[0].kind, "length")], 12);
  end (&f);
}
END_TEST

/* Two places became four by hand. The number is deleted and typed again in the words, as one does to mend them. */
START_TEST (a_correction_outlives_its_words)
{
  static const char *const texts[] = {
    "1. gate edge chipped, 12 mm long, 0.5 x 0.4\n2. bores worn .010, dia .500, 1 1/4 deep\n3. 2 pins worn dia 8 to 7.8, 20 long",
    "1. gate edge chipped, 12 mm long, 0.5 x 0.4\n2. 3 bores worn .010, dia .500, 1 1/4 deep\n3. 2 pins worn dia 8 to 7.8, 20 long",
  };
  Fixture f;

  start (&f, NULL);
  read_notes (&f);
  ck_assert_int_eq (em_document_get_quote (f.document)->feature[1].count, 2);
  em_document_set_feature_number (f.document, 1, EM_FEATURE_COUNT, 4);
  for (gsize i = 0; i < G_N_ELEMENTS (texts); i++)
    em_document_set_notes (f.document, texts[i]);
  test_act (f.window, "win.read-notes");
  ck_assert_int_eq (em_document_get_quote (f.document)->feature[1].count, 4);
  end (&f);
}
END_TEST

/* As GTK tells the first controller that takes such a value, those that see it before the widget itself ahead. */
static gboolean
drop (GtkWidget *at, const GValue *value)
{
  g_autoptr (GListModel) controllers = gtk_widget_observe_controllers (at);
  gboolean is_taken = FALSE;

  for (guint i = 0; i < g_list_model_get_n_items (controllers) && !is_taken; i++)
    {
      g_autoptr (GtkEventController) controller = g_list_model_get_item (controllers, i);
      if (!GTK_IS_DROP_TARGET (controller))
        continue;
      /* GTK 4.8 does not give it away, whatever it says. */
      GdkContentFormats *formats = gtk_drop_target_get_formats (GTK_DROP_TARGET (controller));
      if (gdk_content_formats_contain_gtype (formats, G_VALUE_TYPE (value)))
        g_signal_emit_by_name (controller, "drop", value, 5.0, 5.0, &is_taken);
    }
  return is_taken;
}

static GtkWidget *
find_text_view (GtkWidget *in)
{
  if (GTK_IS_TEXT_VIEW (in))
    return in;
  for (GtkWidget *child = gtk_widget_get_first_child (in); child != NULL; child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *found = find_text_view (child);
      if (found != NULL)
        return found;
    }
  return NULL;
}

static void
drop_file (GtkWidget *at, const char *path)
{
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autoptr (GSList) files = g_slist_append (NULL, file);
  g_auto (GValue) value = G_VALUE_INIT;

  g_value_init (&value, GDK_TYPE_FILE_LIST);
  g_value_take_boxed (&value, gdk_file_list_new_from_list (files));
  ck_assert (drop (at, &value));
  test_settle (200);
}

/* A file let go over the notes is read, not written into them by its name; the words that are there stay above it. Words let go
 * anywhere else in the window are the customer's too. */
START_TEST (files_and_words_are_dropped)
{
  g_autofree char *folder = g_dir_make_tmp ("estimend-test-XXXXXX", NULL), *path = g_build_filename (folder, "mail.txt", NULL);
  g_auto (GValue) words = G_VALUE_INIT;
  Fixture f;

  start (&f, NULL);
  ck_assert (g_file_set_contents (path, "gate edge chipped, 12 mm long, 0.5 mm x 0.4 mm", -1, NULL));
  drop_file (find_text_view (GTK_WIDGET (f.words)), path);
  ck_assert_str_eq (em_document_get_quote (f.document)->text[EM_QUOTE_NOTES], "gate edge chipped, 12 mm long, 0.5 mm x 0.4 mm");
  ck_assert_int_eq (em_document_get_quote (f.document)->n_features, 1);
  g_value_init (&words, G_TYPE_STRING);
  g_value_set_string (&words, "and a crack 20 mm long, 2 mm deep");
  ck_assert (drop (GTK_WIDGET (f.window), &words));
  ck_assert_str_eq (em_document_get_quote (f.document)->text[EM_QUOTE_NOTES],
                    "gate edge chipped, 12 mm long, 0.5 mm x 0.4 mm\n\nand a crack 20 mm long, 2 mm deep");
  em_document_undo (f.document);
  ck_assert_ptr_null (strstr (em_document_get_quote (f.document)->text[EM_QUOTE_NOTES], "crack"));
  end (&f);
}
END_TEST

/* Wherever the lines end, none begins with the figures of ".030": that would be read as another number. Pango 1.50 parts there. */
START_TEST (no_line_parts_a_decimal)
{
  g_autoptr (GString) notes = g_string_new (NULL);
  Fixture f;
  GtkTextIter at;
  GtkTextView *view;
  int n_lines = 1;

  start (&f, NULL);
  for (int i = 0; i < 40; i++)
    g_string_append_printf (notes, "%.*s .0%d x", i % 7 + 1, "ABCDEFG", 30 + i);
  em_document_set_notes (f.document, notes->str);
  test_settle (300);
  view = GTK_TEXT_VIEW (find_text_view (GTK_WIDGET (f.words)));
  gtk_text_buffer_get_start_iter (gtk_text_view_get_buffer (view), &at);
  for (; gtk_text_view_forward_display_line (view, &at) && !gtk_text_iter_is_end (&at); n_lines++)
    ck_assert_msg (!g_unichar_isdigit (gtk_text_iter_get_char (&at)), "line %d begins within a number", n_lines + 1);
  ck_assert_int_gt (n_lines, 8);
  end (&f);
}
END_TEST

TEST_MAIN ("words", answers_are_priced_before_a_wire_is_chosen, prices_follow_the_quote, a_step_back_asks_again, questions_outlive_an_edit_and_a_save,
           words_of_the_chosen_feature_stand_out, what_was_read_is_accepted, a_correction_outlives_its_words, files_and_words_are_dropped, no_line_parts_a_decimal)
