/* em-words-pane: the customer's words, what was read from them, and what has to be asked.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-words-pane.h"

#include "em-details.h"
#include "em-look.h"
#include "em-notes-marks.h"
#include "em-questions.h"
#include "em-steady.h"
#include "em-window.h"
#include "em-words.h"

#include <glib/gi18n.h>
#include <string.h>

/* Bytes; a megabyte takes a third of a second. */
enum { READ_AT_ONCE = 64 * 1024, PAUSE_MS = 400 };

struct _EmWordsPane
{
  GtkWidget parent_instance;

  GtkWidget *summary, *details, *notes, *notes_scroller, *teach, *legend, *read_button, *questions;  /* template */

  GtkTextBuffer *buffer;      /* borrowed from notes */
  EmNotesMarks  *marks;       /* owned; NULL once disposed */
  EmLexicon     *lexicon;     /* NULL until first wanted */
  EmQuestions   *asked;       /* owned; NULL once disposed */
  EmDocument    *document;    /* owned */
  gboolean       is_dark;     /* colours the marks were made in */
  gboolean       is_reading;  /* in a thread */
  guint          recolour;    /* source id */
  guint          rereading;   /* source id: what is open after an edit of the words */
};

G_DEFINE_FINAL_TYPE (EmWordsPane, em_words_pane, GTK_TYPE_WIDGET)

static void
show_marks (EmWordsPane *self)
{
  em_notes_marks_show (self->marks, em_document_get_quote (self->document));
  em_notes_marks_choose (self->marks, em_document_get_quote (self->document), em_document_get_selected (self->document));
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

/* Some question was open when the quote was saved, or when its words were edited. */
static gboolean
has_question (const EmQuote *quote)
{
  for (int32_t i = 0; i < quote->n_marks; i++)
    if (quote->mark[i].state == EM_MARK_QUESTION && quote->mark[i].reason != NULL)
      return TRUE;
  return FALSE;
}

static gboolean has_lexicon (EmWordsPane *self);

/* What is asked is not kept with the quote, only that it is: reading again tells. The quote stays as it is. */
static gboolean
read_questions (gpointer data)
{
  EmWordsPane *self = data;
  const EmQuote *quote = em_document_get_quote (self->document);
  const char *text = quote->text[EM_QUOTE_NOTES];
  EmQuote trial;

  self->rereading = 0;
  if (text == NULL || strlen (text) > READ_AT_ONCE || em_questions_has_reading (self->asked) || !has_question (quote) || !has_lexicon (self)
      || em_quote_copy (quote, &trial) != EM_OK)
    return G_SOURCE_REMOVE;
  EmReadResult *reading = em_notes_read (self->lexicon, text, strlen (text), quote->units);
  em_notes_apply (reading, text, &trial);
  em_quote_clear (&trial);
  em_questions_set_reading (self->asked, reading);
  show_summary (self);
  return G_SOURCE_REMOVE;
}

static void
on_document_changed (EmWordsPane *self, guint what, int index)
{
  (void) index;
  if (what & EM_CHANGE_NOTES)
    {
      if (em_questions_has_reading (self->asked))
        em_questions_set_reading (self->asked, NULL);
      show_notes (self);
      g_clear_handle_id (&self->rereading, g_source_remove);
      if (has_question (em_document_get_quote (self->document)))
        self->rereading = g_timeout_add (PAUSE_MS, read_questions, self);
    }
  em_questions_update (self->asked, (EmChange) what);
  if (what & (EM_CHANGE_NOTES | EM_CHANGE_MARKS | EM_CHANGE_LIST))
    {
      show_marks (self);
      show_summary (self);
    }
  else if (what & EM_CHANGE_SELECTION)
    em_notes_marks_choose (self->marks, em_document_get_quote (self->document), em_document_get_selected (self->document));
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
    if ((quote->mark[i].state == EM_MARK_USED || quote->mark[i].state == EM_MARK_QUESTION) && at >= quote->mark[i].start && at <= quote->mark[i].start + quote->mark[i].length
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

/* Before the text view takes a file for its name, which file managers offer as well. */
static gboolean
on_files_dropped (GtkDropTarget *target, const GValue *value, double x, double y, EmWordsPane *self)
{
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self));

  (void) target;
  (void) x;
  (void) y;
  if (!EM_IS_WINDOW (root))
    return FALSE;
  for (GSList *file = g_value_get_boxed (value); file != NULL; file = file->next)
    em_window_open_file (EM_WINDOW (root), file->data);
  return TRUE;
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
  g_clear_handle_id (&self->rereading, g_source_remove);
  g_clear_pointer (&self->asked, em_questions_free);
  g_clear_pointer (&self->marks, em_notes_marks_free);
  g_clear_object (&self->document);
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

  g_type_ensure (EM_TYPE_STEADY);
  g_type_ensure (EM_TYPE_DETAILS);
  G_OBJECT_CLASS (class)->dispose = em_words_pane_dispose;
  G_OBJECT_CLASS (class)->finalize = em_words_pane_finalize;
  widget_class->css_changed = em_words_pane_css_changed;
  gtk_widget_class_set_layout_manager_type (widget_class, EM_TYPE_STEADY_LAYOUT);
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
  GtkDropTarget *files = gtk_drop_target_new (GDK_TYPE_FILE_LIST, GDK_ACTION_COPY);

  gtk_widget_init_template (GTK_WIDGET (self));
  self->buffer = gtk_text_view_get_buffer (GTK_TEXT_VIEW (self->notes));
  /* The document keeps the steps. */
  gtk_text_buffer_set_enable_undo (self->buffer, FALSE);
  self->asked = em_questions_new (self->questions);
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
  gtk_event_controller_set_propagation_phase (GTK_EVENT_CONTROLLER (files), GTK_PHASE_CAPTURE);
  g_signal_connect (files, "drop", G_CALLBACK (on_files_dropped), self);
  gtk_widget_add_controller (self->notes, GTK_EVENT_CONTROLLER (files));
  gtk_widget_set_has_tooltip (self->notes, TRUE);
  g_signal_connect (self->notes, "query-tooltip", G_CALLBACK (on_query_tooltip), self);
}

void
em_words_pane_set_document (EmWordsPane *self, EmDocument *document, EmOutlook *outlook)
{
  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_set_object (&self->document, document);
  g_signal_connect_object (document, "changed", G_CALLBACK (on_document_changed), self, G_CONNECT_SWAPPED);
  em_questions_set_document (self->asked, document, outlook);
  em_details_set_document (EM_DETAILS (self->details), document);
  on_document_changed (self, EM_CHANGE_ALL, -1);
}

static gboolean
has_lexicon (EmWordsPane *self)
{
  g_autoptr (GError) error = NULL;

  if (self->lexicon == NULL)
    self->lexicon = em_lexicon_load_default (&error);
  em_questions_set_problem (self->asked, error != NULL ? error->message : NULL);
  return self->lexicon != NULL;
}

static void
take_reading (EmWordsPane *self, EmReadResult *reading)
{
  em_document_apply_reading (self->document, reading);
  em_questions_set_reading (self->asked, reading);
  show_summary (self);
  em_questions_focus (self->asked);
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

  if (text == NULL || self->is_reading || !has_lexicon (self))
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
  g_autofree char *valid = g_utf8_make_valid (text, -1), *both = NULL;

  if (has_units)
    em_document_set_units (self->document, units);
  em_document_break (self->document);
  /* A second mail goes below the first. */
  const char *before = em_document_get_quote (self->document)->text[EM_QUOTE_NOTES];
  both = before != NULL ? g_strdup_printf ("%s\n\n%s", before, valid) : NULL;
  em_document_set_notes (self->document, both != NULL ? both : valid);
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
  return em_questions_count (self->asked);
}

void
em_words_pane_answer (EmWordsPane *self, int question, int answer)
{
  em_questions_answer (self->asked, (guint) question, answer);
}
