/* em-words-pane: the customer's words, what was read from them, and what has to be asked.
 *
 * Words and features are tied by number: the number beside the line and the underline's
 * pattern and colour under the words. What was not used is tinted and stays in sight.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-words-pane.h"

#include "em-details.h"
#include "em-feature-row.h"
#include "em-look.h"
#include "em-words.h"

#include <glib/gi18n.h>
#include <string.h>

enum { GUTTER_WIDTH = 26 };

struct _EmWordsPane
{
  GtkWidget parent_instance;

  GtkWidget *summary, *details, *notes, *notes_scroller, *teach, *legend, *read_button, *questions;  /* template */

  GtkTextBuffer *buffer;      /* borrowed from notes */
  GtkWidget     *gutter;
  EmLexicon     *lexicon;     /* NULL until first wanted */
  EmReadResult  *reading;     /* of the notes as they were read last; NULL: none */
  gboolean      *is_answered; /* by question of reading */
  char          *lexicon_problem;
  EmDocument    *document;    /* owned */
  gboolean       is_dark;     /* colours the marks were made in */
  guint          recolour;    /* source id */
};

G_DEFINE_FINAL_TYPE (EmWordsPane, em_words_pane, GTK_TYPE_WIDGET)

static void
drop_reading (EmWordsPane *self)
{
  g_clear_pointer (&self->reading, em_read_result_free);
  g_clear_pointer (&self->is_answered, g_free);
}

static void
iter_at_byte (EmWordsPane *self, const char *text, uint32_t at, GtkTextIter *out_iter)
{
  gtk_text_buffer_get_iter_at_offset (self->buffer, out_iter, (int) g_utf8_strlen (text, (gssize) MIN (at, strlen (text))));
}

static GtkTextTag *
tag_for (EmWordsPane *self, const EmMark *mark, int32_t index)
{
  GdkRGBA colour, tint;

  switch (mark->state)
    {
    case EM_MARK_USED:
      em_look_thread (GTK_WIDGET (self), index, &colour);
      return gtk_text_buffer_create_tag (self->buffer, NULL, "underline", em_look_underline (index), "underline-rgba", &colour, NULL);
    case EM_MARK_GENERAL:
      em_look_colour (GTK_WIDGET (self), "em_ink", &colour);
      /* In the text's own colour: GTK 4.8 frees the colour of an overline twice where tags meet. */
      return gtk_text_buffer_create_tag (self->buffer, NULL, "overline", PANGO_OVERLINE_SINGLE, NULL);
    case EM_MARK_QUESTION:
      em_look_colour (GTK_WIDGET (self), "em_caution_ground", &tint);
      em_look_colour (GTK_WIDGET (self), "em_problem", &colour);
      return gtk_text_buffer_create_tag (self->buffer, NULL, "underline", PANGO_UNDERLINE_ERROR, "underline-rgba", &colour,
                                         "background-rgba", &tint, NULL);
    case EM_MARK_UNUSED:
      em_look_colour (GTK_WIDGET (self), "em_unused", &tint);
      return gtk_text_buffer_create_tag (self->buffer, NULL, "background-rgba", &tint, "style", PANGO_STYLE_ITALIC, NULL);
    case EM_MARK_REJECTED:
      return gtk_text_buffer_create_tag (self->buffer, NULL, "strikethrough", TRUE, NULL);
    case EM_N_MARK:
      break;
    }
  return gtk_text_buffer_create_tag (self->buffer, NULL, NULL);
}

static void
forget_tag (GtkTextTag *tag, gpointer data)
{
  g_ptr_array_add (data, tag);
}

static void
show_marks (EmWordsPane *self)
{
  const EmQuote *quote = em_document_get_quote (self->document);
  const char *text = quote->text[EM_QUOTE_NOTES] != NULL ? quote->text[EM_QUOTE_NOTES] : "";
  GtkTextTagTable *table = gtk_text_buffer_get_tag_table (self->buffer);
  g_autoptr (GPtrArray) old = g_ptr_array_new ();
  GtkTextIter start, end;

  gtk_text_tag_table_foreach (table, forget_tag, old);
  for (guint i = 0; i < old->len; i++)
    gtk_text_tag_table_remove (table, old->pdata[i]);
  for (int32_t i = 0; i < quote->n_marks; i++)
    {
      const EmMark *mark = &quote->mark[i];
      int32_t index = mark->feature_id != 0 ? em_quote_find (quote, mark->feature_id) : -1;
      if (mark->length == 0 || (mark->state == EM_MARK_USED && index < 0 && mark->feature_id != 0))
        continue;
      iter_at_byte (self, text, mark->start, &start);
      iter_at_byte (self, text, mark->start + mark->length, &end);
      gtk_text_buffer_apply_tag (self->buffer, tag_for (self, mark, MAX (index, 0)), &start, &end);
    }
  self->is_dark = em_look_is_dark ();
  gtk_widget_queue_draw (self->gutter);
}

/* Tags hold their colours, so they are made anew in another scheme; not while styles are being worked out. */
static gboolean
recolour (gpointer data)
{
  EmWordsPane *self = data;

  self->recolour = 0;
  if (self->document != NULL)
    show_marks (self);
  return G_SOURCE_REMOVE;
}

static gboolean
redraw_gutter (gpointer data)
{
  EmWordsPane *self = data;

  gtk_widget_queue_draw (self->gutter);
  return G_SOURCE_REMOVE;
}

/* Lines wrap anew: the text view finds out where when it is idle, and the numbers beside it follow. */
static void
on_width_changed (EmWordsPane *self)
{
  g_idle_add_full (G_PRIORITY_LOW, redraw_gutter, g_object_ref (self), g_object_unref);
}

static void
em_words_pane_css_changed (GtkWidget *widget, GtkCssStyleChange *change)
{
  EmWordsPane *self = EM_WORDS_PANE (widget);

  GTK_WIDGET_CLASS (em_words_pane_parent_class)->css_changed (widget, change);
  if (self->is_dark != em_look_is_dark () && self->recolour == 0)
    self->recolour = g_idle_add (recolour, self);
}

/* The feature's own stretch goes before words it shares with others, such as a general note of stock; then the earlier. */
static gboolean
is_nearer_start (const EmMark *mark, const EmMark *first)
{
  if (first == NULL || (mark->field == NULL) != (first->field == NULL))
    return first == NULL || mark->field == NULL;
  return mark->start < first->start;
}

/* Where a feature's words begin, in the gutter; FALSE: it has none. */
static gboolean
find_line (EmWordsPane *self, int32_t index, int *out_y, int *out_height)
{
  const EmQuote *quote = em_document_get_quote (self->document);
  const EmMark *first = NULL;
  GtkTextIter iter;
  GdkRectangle place;
  int x;

  for (int32_t i = 0; i < quote->n_marks; i++)
    if (quote->mark[i].feature_id == quote->feature[index].id && quote->mark[i].state == EM_MARK_USED
        && is_nearer_start (&quote->mark[i], first))
      first = &quote->mark[i];
  if (first == NULL)
    return FALSE;
  iter_at_byte (self, quote->text[EM_QUOTE_NOTES], first->start, &iter);
  gtk_text_view_get_iter_location (GTK_TEXT_VIEW (self->notes), &iter, &place);
  gtk_text_view_buffer_to_window_coords (GTK_TEXT_VIEW (self->notes), GTK_TEXT_WINDOW_LEFT, 0, place.y, &x, out_y);
  *out_height = place.height;
  return TRUE;
}

/* Numbers of the features beside the line their words begin on; of several on one line the first and "…". */
static void
draw_gutter (GtkDrawingArea *area, cairo_t *cr, int width, int height, gpointer data)
{
  EmWordsPane *self = data;
  const EmQuote *quote = self->document != NULL ? em_document_get_quote (self->document) : NULL;
  g_autoptr (GHashTable) first_on = g_hash_table_new (NULL, NULL);   /* y → index of the first feature + 1, negative when more follow */
  GHashTableIter iter;
  gpointer key, value;
  int y, line_height = 0;

  (void) height;
  for (int32_t i = 0; quote != NULL && quote->text[EM_QUOTE_NOTES] != NULL && i < quote->n_features; i++)
    if (find_line (self, i, &y, &line_height))
      {
        int present = GPOINTER_TO_INT (g_hash_table_lookup (first_on, GINT_TO_POINTER (y)));
        g_hash_table_insert (first_on, GINT_TO_POINTER (y), GINT_TO_POINTER (present == 0 ? i + 1 : -ABS (present)));
      }
  g_hash_table_iter_init (&iter, first_on);
  while (g_hash_table_iter_next (&iter, &key, &value))
    {
      int number = ABS (GPOINTER_TO_INT (value));
      g_autofree char *text = g_strdup_printf (GPOINTER_TO_INT (value) < 0 ? "%d…" : "%d", number);
      g_autoptr (PangoLayout) layout = gtk_widget_create_pango_layout (GTK_WIDGET (area), text);
      GdkRGBA colour;
      int text_width, text_height;
      pango_layout_get_pixel_size (layout, &text_width, &text_height);
      em_look_thread (GTK_WIDGET (self), number - 1, &colour);
      gdk_cairo_set_source_rgba (cr, &colour);
      /* NOLINTNEXTLINE(bugprone-integer-division): whole pixels. */
      cairo_move_to (cr, MAX (0, width - text_width - 4), GPOINTER_TO_INT (key) + (line_height - text_height) / 2);
      pango_cairo_show_layout (cr, layout);
    }
}

static void
show_notes (EmWordsPane *self)
{
  const char *text = em_document_get_quote (self->document)->text[EM_QUOTE_NOTES];
  GtkTextIter start, end;

  gtk_text_buffer_get_bounds (self->buffer, &start, &end);
  g_autofree char *shown = gtk_text_buffer_get_text (self->buffer, &start, &end, TRUE);
  if (!g_str_equal (shown, text != NULL ? text : ""))
    {
      g_signal_handlers_block_matched (self->buffer, G_SIGNAL_MATCH_DATA, 0, 0, NULL, NULL, self);
      gtk_text_buffer_set_text (self->buffer, text != NULL ? text : "", -1);
      g_signal_handlers_unblock_matched (self->buffer, G_SIGNAL_MATCH_DATA, 0, 0, NULL, NULL, self);
    }
  gtk_widget_set_visible (self->teach, text == NULL);
}

static int
count_marks (const EmQuote *quote, EmMarkState state)
{
  int n = 0;

  for (int32_t i = 0; i < quote->n_marks; i++)
    n += quote->mark[i].state == state;
  return n;
}

static void
show_summary (EmWordsPane *self)
{
  const EmQuote *quote = em_document_get_quote (self->document);
  int n_questions = em_words_pane_count_questions (self), n_unused = count_marks (quote, EM_MARK_UNUSED);
  g_autoptr (GString) text = g_string_new (NULL);

  if (n_questions > 0)
    g_string_append_printf (text, ngettext ("%d question", "%d questions", (gulong) n_questions), n_questions);
  if (n_unused > 0)
    {
      if (text->len > 0)
        g_string_append (text, " · ");
      g_string_append_printf (text, ngettext ("%d stretch unused", "%d stretches unused", (gulong) n_unused), n_unused);
    }
  gtk_label_set_text (GTK_LABEL (self->summary), text->str);
  gtk_label_set_text (GTK_LABEL (self->legend), quote->n_marks == 0 ? ""
                      : _("Underlined: used by the feature of that number. Overlined: governs all. Tinted italics: not used."));
}

/* What the feature, or for a question of all of them the quote without tax, would cost by an answer; FALSE when it can't be told. */
static gboolean
price_answer (EmWordsPane *self, guint question, int answer, int64_t *out_price_minor)
{
  const EmReadQuestion *row = &g_array_index (self->reading->questions, EmReadQuestion, question);
  const EmQuote *quote = em_document_get_quote (self->document);
  EmQuote other;
  EmCost cost;
  gboolean is_good = FALSE;
  int32_t index = -1;

  if (row->feature > 0)
    index = em_quote_find (quote, g_array_index (self->reading->ids, guint32, row->feature - 1));
  if ((row->feature > 0 && index < 0) || em_quote_copy (quote, &other) != EM_OK)
    return FALSE;
  em_notes_answer (self->reading, question, answer, &other, index);
  em_cost_init (&cost);
  if (em_cost_quote (&cost, &other, em_document_get_rates (self->document), em_document_get_catalogue (self->document), NULL, NULL) == EM_OK)
    {
      is_good = index < 0 ? cost.n_faults <= em_document_get_cost (self->document)->n_faults : cost.feature[index].status == EM_OK;
      *out_price_minor = index < 0 ? cost.totals.net_minor : cost.feature[index].price_minor;
    }
  em_cost_clear (&cost);
  em_quote_clear (&other);
  return is_good;
}

static void
on_answer (GtkButton *button, EmWordsPane *self)
{
  em_words_pane_answer (self, GPOINTER_TO_INT (g_object_get_data (G_OBJECT (button), "question")),
                        GPOINTER_TO_INT (g_object_get_data (G_OBJECT (button), "answer")));
}

static GtkWidget *
answer_button (EmWordsPane *self, guint question, int answer)
{
  const EmReadQuestion *row = &g_array_index (self->reading->questions, EmReadQuestion, question);
  GtkWidget *button = gtk_button_new ();
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *name = gtk_label_new (em_notes_answer_text (row->answer[answer]));
  GtkWidget *price = gtk_label_new (NULL);
  const EmKind *kind = em_kind_find (row->answer[answer]);
  int64_t price_minor;

  if (kind != NULL)
    gtk_label_set_text (GTK_LABEL (name), em_words (kind->name));
  if (price_answer (self, question, answer, &price_minor))
    {
      g_autofree char *money = em_words_money_bare (price_minor, &em_document_get_rates (self->document)->currency);

      gtk_label_set_text (GTK_LABEL (price), money);
    }
  gtk_label_set_xalign (GTK_LABEL (name), 0);
  gtk_label_set_wrap (GTK_LABEL (name), TRUE);
  gtk_widget_set_hexpand (name, TRUE);
  gtk_widget_add_css_class (price, "money");
  gtk_widget_add_css_class (price, "quiet");
  gtk_box_append (GTK_BOX (box), name);
  gtk_box_append (GTK_BOX (box), price);
  gtk_button_set_child (GTK_BUTTON (button), box);
  gtk_accessible_update_relation (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_RELATION_LABELLED_BY, name, price, NULL, -1);
  g_object_set_data (G_OBJECT (button), "question", GINT_TO_POINTER (question));
  g_object_set_data (G_OBJECT (button), "answer", GINT_TO_POINTER (answer));
  g_signal_connect (button, "clicked", G_CALLBACK (on_answer), self);
  return button;
}

static GtkWidget *
question_new (EmWordsPane *self, guint question)
{
  const EmReadQuestion *row = &g_array_index (self->reading->questions, EmReadQuestion, question);
  const EmQuote *quote = em_document_get_quote (self->document);
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  GtkWidget *head = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  GtkWidget *label = gtk_label_new (em_notes_question_text (row->code));
  int32_t index = row->feature > 0 && (guint) row->feature <= self->reading->ids->len
                    ? em_quote_find (quote, g_array_index (self->reading->ids, guint32, row->feature - 1)) : -1;

  if (index >= 0)
    gtk_box_append (GTK_BOX (head), em_badge_new (index + 1));
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_box_append (GTK_BOX (head), label);
  gtk_box_append (GTK_BOX (box), head);
  for (int i = 0; i < row->n_answers; i++)
    gtk_box_append (GTK_BOX (box), answer_button (self, question, i));
  gtk_widget_add_css_class (box, "question");
  return box;
}

static void
show_questions (EmWordsPane *self)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (self->questions)) != NULL)
    gtk_box_remove (GTK_BOX (self->questions), child);
  if (self->lexicon_problem != NULL)
    {
      child = gtk_label_new (self->lexicon_problem);
      gtk_label_set_wrap (GTK_LABEL (child), TRUE);
      gtk_label_set_xalign (GTK_LABEL (child), 0);
      gtk_widget_add_css_class (child, "problem");
      gtk_box_append (GTK_BOX (self->questions), child);
    }
  for (guint i = 0; self->reading != NULL && i < self->reading->questions->len; i++)
    if (!self->is_answered[i])
      gtk_box_append (GTK_BOX (self->questions), question_new (self, i));
}

/* The first answer of the first question that is open: one key answers it. */
static void
focus_first_answer (EmWordsPane *self)
{
  for (GtkWidget *box = gtk_widget_get_first_child (self->questions); box != NULL; box = gtk_widget_get_next_sibling (box))
    for (GtkWidget *child = gtk_widget_get_first_child (box); child != NULL; child = gtk_widget_get_next_sibling (child))
      if (GTK_IS_BUTTON (child))
        {
          gtk_widget_grab_focus (child);
          return;
        }
}

static void
on_document_changed (EmWordsPane *self, guint what, int index)
{
  (void) index;
  if (what & EM_CHANGE_NOTES)
    {
      drop_reading (self);
      show_notes (self);
      show_questions (self);
    }
  if (what & (EM_CHANGE_NOTES | EM_CHANGE_MARKS | EM_CHANGE_LIST))
    {
      show_marks (self);
      show_summary (self);
    }
}

static void
on_buffer_changed (GtkTextBuffer *buffer, EmWordsPane *self)
{
  GtkTextIter start, end, cursor;

  gtk_text_buffer_get_bounds (buffer, &start, &end);
  g_autofree char *text = gtk_text_buffer_get_text (buffer, &start, &end, TRUE);
  em_document_set_notes (self->document, text);
  /* A word typed is a step to go back by. */
  gtk_text_buffer_get_iter_at_mark (buffer, &cursor, gtk_text_buffer_get_insert (buffer));
  if (gtk_text_iter_backward_char (&cursor) && g_unichar_isspace (gtk_text_iter_get_char (&cursor)))
    em_document_break (self->document);
}

/* The feature whose words the cursor stands in is the one to look at. */
static void
on_cursor_moved (EmWordsPane *self)
{
  const EmQuote *quote = self->document != NULL ? em_document_get_quote (self->document) : NULL;
  GtkTextIter start, cursor;

  if (quote == NULL || !gtk_widget_has_focus (self->notes))
    return;
  gtk_text_buffer_get_start_iter (self->buffer, &start);
  gtk_text_buffer_get_iter_at_mark (self->buffer, &cursor, gtk_text_buffer_get_insert (self->buffer));
  g_autofree char *before = gtk_text_buffer_get_text (self->buffer, &start, &cursor, TRUE);
  uint32_t at = (uint32_t) strlen (before);
  for (int32_t i = 0; i < quote->n_marks; i++)
    if (quote->mark[i].state == EM_MARK_USED && at >= quote->mark[i].start && at <= quote->mark[i].start + quote->mark[i].length
        && em_quote_find (quote, quote->mark[i].feature_id) >= 0)
      {
        em_document_set_selected (self->document, quote->mark[i].feature_id);
        return;
      }
}

static gboolean
on_query_tooltip (GtkWidget *widget, int x, int y, gboolean by_keyboard, GtkTooltip *tooltip, EmWordsPane *self)
{
  const EmQuote *quote = em_document_get_quote (self->document);
  GtkTextIter start, iter;
  int bx, by;

  (void) by_keyboard;
  gtk_text_view_window_to_buffer_coords (GTK_TEXT_VIEW (widget), GTK_TEXT_WINDOW_WIDGET, x, y, &bx, &by);
  if (!gtk_text_view_get_iter_at_location (GTK_TEXT_VIEW (widget), &iter, bx, by))
    return FALSE;
  gtk_text_buffer_get_start_iter (self->buffer, &start);
  g_autofree char *before = gtk_text_buffer_get_text (self->buffer, &start, &iter, TRUE);
  uint32_t at = (uint32_t) strlen (before);
  for (int32_t i = 0; i < quote->n_marks; i++)
    {
      const EmMark *mark = &quote->mark[i];
      if (at < mark->start || at >= mark->start + mark->length)
        continue;
      int32_t index = em_quote_find (quote, mark->feature_id);
      g_autofree char *name = index >= 0 ? em_words_feature_name (quote, index) : g_strdup (_("The quote as a whole"));
      g_autofree char *field = mark->field != NULL ? em_words_field (mark->field, index >= 0 ? quote->feature[index].kind : NULL) : NULL;
      g_autofree char *text = mark->state == EM_MARK_UNUSED ? g_strdup (_("Not used"))
        : g_strdup_printf ("%s%s%s%s%s", name, field != NULL ? " – " : "", field != NULL ? field : "",
                           mark->reason != NULL ? "\n" : "", mark->reason != NULL ? em_notes_reason_text (mark->reason) : "");
      gtk_tooltip_set_text (tooltip, text);
      return TRUE;
    }
  return FALSE;
}

/* Colours of the marks are those of the scheme; they are looked up once it holds. */
static gboolean
show_marks_later (gpointer data)
{
  g_autoptr (EmWordsPane) self = data;

  if (self->document != NULL)
    show_marks (self);
  return G_SOURCE_REMOVE;
}

static void
on_scheme_changed (EmWordsPane *self)
{
  g_idle_add (show_marks_later, g_object_ref (self));
}

static void
em_words_pane_dispose (GObject *object)
{
  EmWordsPane *self = EM_WORDS_PANE (object);
  GtkWidget *child = gtk_widget_get_first_child (GTK_WIDGET (self));

  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  if (self->buffer != NULL)
    g_signal_handlers_disconnect_by_data (self->buffer, self);
  self->buffer = NULL;
  g_clear_handle_id (&self->recolour, g_source_remove);
  g_clear_object (&self->document);
  drop_reading (self);
  g_clear_pointer (&self->lexicon, em_lexicon_free);
  g_clear_pointer (&self->lexicon_problem, g_free);
  if (child != NULL)
    gtk_widget_unparent (child);
  G_OBJECT_CLASS (em_words_pane_parent_class)->dispose (object);
}

static void
em_words_pane_class_init (EmWordsPaneClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  g_type_ensure (EM_TYPE_DETAILS);
  G_OBJECT_CLASS (class)->dispose = em_words_pane_dispose;
  widget_class->css_changed = em_words_pane_css_changed;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/estimend/Estimend/words-pane.ui");
  gtk_widget_class_bind_template_child (widget_class, EmWordsPane, summary);
  gtk_widget_class_bind_template_child (widget_class, EmWordsPane, details);
  gtk_widget_class_bind_template_child (widget_class, EmWordsPane, notes);
  gtk_widget_class_bind_template_child (widget_class, EmWordsPane, notes_scroller);
  gtk_widget_class_bind_template_child (widget_class, EmWordsPane, teach);
  gtk_widget_class_bind_template_child (widget_class, EmWordsPane, legend);
  gtk_widget_class_bind_template_child (widget_class, EmWordsPane, read_button);
  gtk_widget_class_bind_template_child (widget_class, EmWordsPane, questions);
}

static void
em_words_pane_init (EmWordsPane *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  self->buffer = gtk_text_view_get_buffer (GTK_TEXT_VIEW (self->notes));
  /* The document keeps the steps. */
  gtk_text_buffer_set_enable_undo (self->buffer, FALSE);
  self->gutter = gtk_drawing_area_new ();
  gtk_drawing_area_set_content_width (GTK_DRAWING_AREA (self->gutter), GUTTER_WIDTH);
  gtk_drawing_area_set_draw_func (GTK_DRAWING_AREA (self->gutter), draw_gutter, self, NULL);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->gutter), GTK_ACCESSIBLE_PROPERTY_LABEL, _("Numbers of the features"), -1);
  gtk_text_view_set_gutter (GTK_TEXT_VIEW (self->notes), GTK_TEXT_WINDOW_LEFT, self->gutter);
  g_signal_connect_object (gtk_scrolled_window_get_vadjustment (GTK_SCROLLED_WINDOW (self->notes_scroller)), "value-changed",
                           G_CALLBACK (gtk_widget_queue_draw), self->gutter, G_CONNECT_SWAPPED);
  g_signal_connect_object (gtk_scrolled_window_get_hadjustment (GTK_SCROLLED_WINDOW (self->notes_scroller)), "changed",
                           G_CALLBACK (on_width_changed), self, G_CONNECT_SWAPPED);
  g_signal_connect (self->buffer, "changed", G_CALLBACK (on_buffer_changed), self);
  g_signal_connect_swapped (self->buffer, "notify::cursor-position", G_CALLBACK (on_cursor_moved), self);
  g_signal_connect_object (gtk_settings_get_default (), "notify::gtk-application-prefer-dark-theme", G_CALLBACK (on_scheme_changed), self,
                           G_CONNECT_SWAPPED | G_CONNECT_AFTER);
  gtk_widget_set_has_tooltip (self->notes, TRUE);
  g_signal_connect (self->notes, "query-tooltip", G_CALLBACK (on_query_tooltip), self);
}

void
em_words_pane_set_document (EmWordsPane *self, EmDocument *document)
{
  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_set_object (&self->document, document);
  g_signal_connect_object (document, "changed", G_CALLBACK (on_document_changed), self, G_CONNECT_SWAPPED);
  em_details_set_document (EM_DETAILS (self->details), document);
  on_document_changed (self, EM_CHANGE_ALL, -1);
}

static gboolean
has_lexicon (EmWordsPane *self)
{
  g_autoptr (GError) error = NULL;

  if (self->lexicon == NULL)
    self->lexicon = em_lexicon_load_default (&error);
  g_clear_pointer (&self->lexicon_problem, g_free);
  if (error != NULL)
    self->lexicon_problem = g_strdup (error->message);
  return self->lexicon != NULL;
}

void
em_words_pane_read (EmWordsPane *self)
{
  const char *text = em_document_get_quote (self->document)->text[EM_QUOTE_NOTES];

  if (text == NULL || !has_lexicon (self))
    {
      show_questions (self);
      return;
    }
  EmReadResult *reading = em_notes_read (self->lexicon, text, strlen (text), em_document_get_units (self->document));
  drop_reading (self);
  self->reading = reading;
  self->is_answered = g_new0 (gboolean, reading->questions->len + 1);
  em_document_apply_reading (self->document, reading);
  show_marks (self);
  show_questions (self);
  show_summary (self);
  focus_first_answer (self);
}

void
em_words_pane_take_text (EmWordsPane *self, const char *text, gboolean has_units, EmUnits units)
{
  g_autofree char *valid = g_utf8_make_valid (text, -1);

  if (has_units)
    em_document_set_units (self->document, units);
  em_document_break (self->document);
  em_document_set_notes (self->document, valid);
  em_document_break (self->document);
  if (em_document_get_quote (self->document)->n_features == 0)
    em_words_pane_read (self);
}

void
em_words_pane_focus_notes (EmWordsPane *self)
{
  gtk_widget_grab_focus (self->notes);
}

GtkTextBuffer *
em_words_pane_get_buffer (EmWordsPane *self)
{
  return self->buffer;
}

int
em_words_pane_count_questions (EmWordsPane *self)
{
  int n = 0;

  for (guint i = 0; self->reading != NULL && i < self->reading->questions->len; i++)
    n += !self->is_answered[i];
  return n;
}

void
em_words_pane_answer (EmWordsPane *self, int question, int answer)
{
  self->is_answered[question] = TRUE;
  em_document_answer (self->document, self->reading, (guint) question, answer);
  show_questions (self);
  show_summary (self);
  focus_first_answer (self);
}
