/* em-words-pane: the customer's words, what was read from them, and what has to be asked.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-words-pane.h"

#include "em-details.h"
#include "em-feature-row.h"
#include "em-look.h"
#include "em-notes-marks.h"
#include "em-window.h"
#include "em-words.h"

#include <glib/gi18n.h>
#include <math.h>
#include <string.h>

/* More are asked when these are answered. */
enum { QUESTIONS_AT_ONCE = 12 };

/* Bytes; a megabyte takes a third of a second. */
enum { READ_AT_ONCE = 64 * 1024 };

struct _EmWordsPane
{
  GtkWidget parent_instance;

  GtkWidget *summary, *details, *notes, *notes_scroller, *teach, *legend, *read_button, *questions;  /* template */

  GtkTextBuffer *buffer;      /* borrowed from notes */
  EmNotesMarks  *marks;       /* owned; NULL once disposed */
  EmLexicon     *lexicon;     /* NULL until first wanted */
  EmReadResult  *reading;     /* of the notes as they were read last; NULL: none */
  gboolean      *is_answered; /* by question of reading */
  char          *lexicon_problem;
  EmDocument    *document;    /* owned */
  gboolean       is_dark;     /* colours the marks were made in */
  gboolean       is_reading;  /* in a thread */
  guint          recolour;    /* source id */
  guint          pricing;     /* source id, of the answers' prices */
};

G_DEFINE_FINAL_TYPE (EmWordsPane, em_words_pane, GTK_TYPE_WIDGET)

static void
drop_reading (EmWordsPane *self)
{
  g_clear_pointer (&self->reading, em_read_result_free);
  g_clear_pointer (&self->is_answered, g_free);
}

static void
show_marks (EmWordsPane *self)
{
  em_notes_marks_show (self->marks, em_document_get_quote (self->document));
}

/* Tags hold their colours; not while styles are being worked out. */
static gboolean
recolour (gpointer data)
{
  EmWordsPane *self = data;

  self->recolour = 0;
  self->is_dark = em_look_is_dark ();
  em_notes_marks_recolour (self->marks);
  return G_SOURCE_REMOVE;
}

static gboolean
redraw_gutter (gpointer data)
{
  EmWordsPane *self = data;

  if (self->marks != NULL)
    gtk_widget_queue_draw (em_notes_marks_get_gutter (self->marks));
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
      em_notes_marks_forget (self->marks);
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

/* The quote with one feature of it, or with all (index −1). A feature's price does not hang on the others. */
static EmStatus
copy_part (const EmQuote *quote, int32_t index, EmQuote *out_part)
{
  EmQuote part = *quote;

  if (index >= 0)
    {
      part.feature = &quote->feature[index];
      part.n_features = part.cap_features = 1;
      part.n_marks = 0;
      part.mark = NULL;
    }
  return em_quote_copy (&part, out_part);
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
  if ((row->feature > 0 && index < 0) || copy_part (quote, index, &other) != EM_OK)
    return FALSE;
  em_notes_answer (self->reading, question, answer, &other, index >= 0 ? 0 : -1);
  em_cost_init (&cost);
  if (em_cost_quote (&cost, &other, em_document_get_rates (self->document), em_document_get_catalogue (self->document), NULL, NULL) == EM_OK)
    {
      is_good = index < 0 ? cost.n_faults <= em_document_get_cost (self->document)->n_faults : cost.feature[0].status == EM_OK;
      *out_price_minor = index < 0 ? cost.totals.net_minor : cost.feature[0].price_minor;
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

/* TRUE: it was not done before. */
static gboolean
show_answer_price (EmWordsPane *self, GtkWidget *button)
{
  guint question = GPOINTER_TO_UINT (g_object_get_data (G_OBJECT (button), "question"));
  int answer = GPOINTER_TO_INT (g_object_get_data (G_OBJECT (button), "answer"));
  GtkWidget *price = g_object_get_data (G_OBJECT (button), "price");
  int64_t price_minor;

  if (price == NULL)
    return FALSE;
  g_object_set_data (G_OBJECT (button), "price", NULL);
  if (price_answer (self, question, answer, &price_minor))
    {
      g_autofree char *money = em_words_money_bare (price_minor, &em_document_get_rates (self->document)->currency);

      gtk_label_set_text (GTK_LABEL (price), money);
    }
  return TRUE;
}

/* One price at a time: that of a whole quote may take its time. */
static gboolean
price_some (gpointer data)
{
  EmWordsPane *self = data;

  for (GtkWidget *box = gtk_widget_get_first_child (self->questions); box != NULL; box = gtk_widget_get_next_sibling (box))
    for (GtkWidget *child = gtk_widget_get_first_child (box); child != NULL; child = gtk_widget_get_next_sibling (child))
      if (GTK_IS_BUTTON (child) && show_answer_price (self, child))
        return G_SOURCE_CONTINUE;
  self->pricing = 0;
  return G_SOURCE_REMOVE;
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

  if (kind != NULL)
    gtk_label_set_text (GTK_LABEL (name), em_words (kind->name));
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
  g_object_set_data (G_OBJECT (button), "price", price);
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

static GtkWidget *
told_new (const char *text, const char *css_class)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_widget_add_css_class (label, css_class);
  return label;
}

/* What lies behind the reader's limit is not passed over in silence. */
static void
tell_unread (EmWordsPane *self)
{
  g_autofree char *read = em_words_number (EM_NOTES_READ_MAX / 1000, 0), *unread = em_words_number (ceil ((double) self->reading->n_unread / 1000), 0);
  g_autofree char *text = g_strdup_printf (_("Only the first %s kB of the notes were read; the last %s kB were not."), read, unread);

  gtk_box_append (GTK_BOX (self->questions), told_new (text, "problem"));
}

static void
show_questions (EmWordsPane *self)
{
  GtkWidget *child;
  int n_shown = 0, n_open = em_words_pane_count_questions (self);

  while ((child = gtk_widget_get_first_child (self->questions)) != NULL)
    gtk_box_remove (GTK_BOX (self->questions), child);
  if (self->lexicon_problem != NULL)
    gtk_box_append (GTK_BOX (self->questions), told_new (self->lexicon_problem, "problem"));
  if (self->reading != NULL && self->reading->n_unread > 0)
    tell_unread (self);
  for (guint i = 0; self->reading != NULL && i < self->reading->questions->len && n_shown < QUESTIONS_AT_ONCE; i++)
    if (!self->is_answered[i])
      {
        gtk_box_append (GTK_BOX (self->questions), question_new (self, i));
        n_shown++;
      }
  if (n_shown < n_open)
    {
      g_autofree char *text = g_strdup_printf (ngettext ("%d more question follows.", "%d more questions follow.", (gulong) (n_open - n_shown)), n_open - n_shown);
      gtk_box_append (GTK_BOX (self->questions), told_new (text, "quiet"));
    }
  if (self->pricing == 0 && n_shown > 0)
    self->pricing = g_idle_add (price_some, self);
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
static void
on_scheme_changed (EmWordsPane *self)
{
  if (self->recolour == 0)
    self->recolour = g_idle_add (recolour, self);
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
  g_clear_handle_id (&self->pricing, g_source_remove);
  g_clear_pointer (&self->marks, em_notes_marks_free);
  g_clear_object (&self->document);
  drop_reading (self);
  g_clear_pointer (&self->lexicon_problem, g_free);
  if (child != NULL)
    gtk_widget_unparent (child);
  G_OBJECT_CLASS (em_words_pane_parent_class)->dispose (object);
}

/* A thread may still have read with it when the rest went. */
static void
em_words_pane_finalize (GObject *object)
{
  g_clear_pointer (&EM_WORDS_PANE (object)->lexicon, em_lexicon_free);
  G_OBJECT_CLASS (em_words_pane_parent_class)->finalize (object);
}

static void
em_words_pane_class_init (EmWordsPaneClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  g_type_ensure (EM_TYPE_DETAILS);
  G_OBJECT_CLASS (class)->dispose = em_words_pane_dispose;
  G_OBJECT_CLASS (class)->finalize = em_words_pane_finalize;
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
  self->marks = em_notes_marks_new (GTK_TEXT_VIEW (self->notes));
  self->is_dark = em_look_is_dark ();
  g_signal_connect_object (gtk_scrolled_window_get_vadjustment (GTK_SCROLLED_WINDOW (self->notes_scroller)), "value-changed",
                           G_CALLBACK (gtk_widget_queue_draw), em_notes_marks_get_gutter (self->marks), G_CONNECT_SWAPPED);
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

static void
take_reading (EmWordsPane *self, EmReadResult *reading)
{
  drop_reading (self);
  self->reading = reading;
  self->is_answered = g_new0 (gboolean, reading->questions->len + 1);
  em_document_apply_reading (self->document, reading);
  show_questions (self);
  show_summary (self);
  focus_first_answer (self);
}

/* A long text, read while the window goes on. */
typedef struct
{
  const EmLexicon *lexicon;   /* the pane's, which is there until the task ends */
  char            *text;
  EmUnits          units;
  EmWindow        *window;    /* owned; where it is spoken of, or NULL */
} EmReadJob;

static void
free_reading (gpointer data)
{
  EmReadJob *job = data;

  g_free (job->text);
  g_clear_object (&job->window);
  g_free (job);
}

static void
read_in_thread (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  EmReadJob *job = data;

  (void) source;
  (void) cancellable;
  g_task_return_pointer (task, em_notes_read (job->lexicon, job->text, strlen (job->text), job->units), (GDestroyNotify) em_read_result_free);
}

static void
on_read_in_thread (GObject *source, GAsyncResult *result, gpointer data)
{
  EmWordsPane *self = EM_WORDS_PANE (source);
  EmReadJob *job = g_task_get_task_data (G_TASK (result));
  EmReadResult *reading = g_task_propagate_pointer (G_TASK (result), NULL);
  const char *text = self->document != NULL ? em_document_get_quote (self->document)->text[EM_QUOTE_NOTES] : NULL;

  (void) data;
  self->is_reading = FALSE;
  if (job->window != NULL)
    em_window_end_work (job->window);
  /* Stopped, or the words are others by now. */
  if (reading != NULL && g_strcmp0 (text, job->text) == 0)
    take_reading (self, reading);
  else
    g_clear_pointer (&reading, em_read_result_free);
}

static void
read_long (EmWordsPane *self, const char *text)
{
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  g_autoptr (GTask) task = g_task_new (self, cancellable, on_read_in_thread, NULL);
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self));
  EmReadJob *job = g_new0 (EmReadJob, 1);

  job->lexicon = self->lexicon;
  job->text = g_strdup (text);
  job->units = em_document_get_units (self->document);
  job->window = EM_IS_WINDOW (root) ? EM_WINDOW (g_object_ref (root)) : NULL;
  self->is_reading = TRUE;
  if (job->window != NULL)
    em_window_begin_work (job->window, _("Reading the notes… Dismiss to stop."), cancellable);
  g_task_set_task_data (task, job, free_reading);
  g_task_run_in_thread (task, read_in_thread);
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
  if (self->is_reading)
    return;
  if (strlen (text) > READ_AT_ONCE)
    read_long (self, text);
  else
    take_reading (self, em_notes_read (self->lexicon, text, strlen (text), em_document_get_units (self->document)));
}

gboolean
em_words_pane_is_busy (EmWordsPane *self)
{
  return self->is_reading || em_notes_marks_is_busy (self->marks);
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
