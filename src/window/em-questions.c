/* em-questions: what has to be asked about the customer's words, each answer with its price.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-questions.h"

#include "em-document-edit.h"
#include "em-feature-row.h"
#include "em-words.h"

#include <glib/gi18n.h>
#include <math.h>
#include <string.h>

/* More are asked when these are answered. */
enum { QUESTIONS_AT_ONCE = 12 };

struct EmQuestions
{
  GtkWidget    *box;        /* borrowed */
  EmDocument   *document;   /* owned, as is outlook */
  EmOutlook    *outlook;
  EmReadResult *reading;    /* of the notes as they are; NULL: none */
  gboolean     *is_open;    /* by question of reading */
  int           n_open;
  char         *problem;
  GtkWidget    *basis;      /* what the prices suppose; in box while questions are */
  guint         pricing;    /* source id */
};

/* ---- prices ---- */

/* Of the wires compared, the cheapest that suits; NULL: the quote has its own, or nothing is known yet. */
static const EmFiller *
supposed_wire (EmQuestions *self)
{
  const EmCompare *compare = self->outlook != NULL ? em_outlook_get_compare (self->outlook) : NULL;

  if (em_document_get_quote (self->document)->text[EM_QUOTE_FILLER] != NULL || compare == NULL)
    return NULL;
  for (int32_t i = 0; i < compare->n_rows; i++)
    if (!compare->row[i].is_ruled_out && compare->row[i].filler < em_document_get_catalogue (self->document)->n_fillers)
      return &em_document_get_catalogue (self->document)->filler[compare->row[i].filler];
  return NULL;
}

/* The quote with one feature of it and what its words say of that, or with all (index −1). A feature's price does not hang on the
 * others. */
static EmStatus
copy_part (const EmQuote *quote, int32_t index, EmQuote *out_part)
{
  g_autofree EmMark *marks = NULL;
  EmQuote part = *quote;

  if (index >= 0)
    {
      part.feature = &quote->feature[index];
      part.n_features = part.cap_features = 1;
      part.n_marks = 0;
      part.mark = marks = g_new (EmMark, quote->n_marks + 1);
      for (int32_t i = 0; i < quote->n_marks; i++)
        if (quote->mark[i].feature_id == quote->feature[index].id)
          marks[part.n_marks++] = quote->mark[i];
    }
  return em_quote_copy (&part, out_part);
}

/* Features of the quote that can't be priced with the wire; −1 when nothing can be told. */
static int32_t
count_faults (EmQuestions *self, const EmQuote *quote, int32_t feature, int64_t *out_price_minor)
{
  EmCost cost;
  int32_t n = -1;

  em_cost_init (&cost);
  if (em_cost_quote (&cost, quote, em_document_get_rates (self->document), em_document_get_catalogue (self->document), NULL, NULL) == EM_OK)
    {
      n = feature < 0 ? cost.n_faults : cost.feature[feature].status != EM_OK;
      *out_price_minor = feature < 0 ? cost.totals.net_minor : cost.feature[feature].price_minor;
    }
  em_cost_clear (&cost);
  return n;
}

static void
suppose_wire (EmQuestions *self, EmQuote *quote)
{
  const EmFiller *wire = supposed_wire (self);

  if (wire != NULL)
    em_quote_set_text (quote, EM_QUOTE_FILLER, wire->id);
}

/* How many features have no price as it is; what answers leave out then is the same for each of them. */
static int32_t
count_faults_now (EmQuestions *self)
{
  EmQuote quote;
  int64_t minor;
  int32_t n;

  if (supposed_wire (self) == NULL)
    return em_document_get_cost (self->document)->n_faults;
  if (em_quote_copy (em_document_get_quote (self->document), &quote) != EM_OK)
    return -1;
  suppose_wire (self, &quote);
  n = count_faults (self, &quote, -1, &minor);
  em_quote_clear (&quote);
  return n;
}

static int32_t
place_of (EmQuestions *self, const EmReadQuestion *question)
{
  if (question->feature < 1 || (guint) question->feature > self->reading->ids->len)
    return -1;
  return em_quote_find (em_document_get_quote (self->document), g_array_index (self->reading->ids, guint32, question->feature - 1));
}

/* What the feature, or for a question of all of them the quote without tax, would cost by an answer; FALSE when it can't be told. */
static gboolean
price_answer (EmQuestions *self, guint question, int answer, int64_t *out_price_minor)
{
  const EmReadQuestion *row = &g_array_index (self->reading->questions, EmReadQuestion, question);
  const EmQuote *quote = em_document_get_quote (self->document);
  int32_t index = place_of (self, row), n_faults;
  EmQuote other;
  gboolean is_good;

  if (copy_part (quote, index, &other) != EM_OK)
    return FALSE;
  suppose_wire (self, &other);
  em_notes_answer (self->reading, question, answer, &other, index >= 0 ? 0 : -1);
  if (index >= 0)
    is_good = count_faults (self, &other, 0, out_price_minor) == 0;
  /* An answer that makes the feature: it is the last. */
  else if (row->feature > 0)
    is_good = other.n_features > quote->n_features && count_faults (self, &other, other.n_features - 1, out_price_minor) == 0;
  else
    {
      n_faults = count_faults (self, &other, -1, out_price_minor);
      is_good = n_faults >= 0 && n_faults < other.n_features && n_faults <= count_faults_now (self);
    }
  em_quote_clear (&other);
  return is_good;
}

/* TRUE: it was to be done. */
static gboolean
show_price (EmQuestions *self, GtkWidget *button)
{
  guint question = GPOINTER_TO_UINT (g_object_get_data (G_OBJECT (button), "question"));
  int answer = GPOINTER_TO_INT (g_object_get_data (G_OBJECT (button), "answer"));
  GtkWidget *price = g_object_get_data (G_OBJECT (button), "price");
  int64_t minor;

  if (g_object_get_data (G_OBJECT (button), "is-priced") != NULL)
    return FALSE;
  g_object_set_data (G_OBJECT (button), "is-priced", button);
  gboolean is_good = price_answer (self, question, answer, &minor);
  g_autofree char *money = is_good ? em_words_money_bare (minor, &em_document_get_rates (self->document)->currency) : g_strdup ("");
  gtk_label_set_text (GTK_LABEL (price), money);
  return TRUE;
}

/* One price at a time: that of a whole quote may take its time. */
static gboolean
price_some (gpointer data)
{
  EmQuestions *self = data;

  for (GtkWidget *box = gtk_widget_get_first_child (self->box); box != NULL; box = gtk_widget_get_next_sibling (box))
    for (GtkWidget *child = gtk_widget_get_first_child (box); child != NULL; child = gtk_widget_get_next_sibling (child))
      if (GTK_IS_BUTTON (child) && show_price (self, child))
        return G_SOURCE_CONTINUE;
  self->pricing = 0;
  return G_SOURCE_REMOVE;
}

static void
show_basis (EmQuestions *self)
{
  const EmFiller *wire = supposed_wire (self);
  g_autofree char *text = wire != NULL ? g_strdup_printf (_("Prices with %s, the cheapest that suits: no wire is chosen yet."), wire->designation) : NULL;

  gtk_label_set_text (GTK_LABEL (self->basis), text != NULL ? text : "");
  gtk_widget_set_visible (self->basis, text != NULL);
}

static void
price_anew (EmQuestions *self)
{
  if (self->n_open == 0)
    return;
  for (GtkWidget *box = gtk_widget_get_first_child (self->box); box != NULL; box = gtk_widget_get_next_sibling (box))
    for (GtkWidget *child = gtk_widget_get_first_child (box); child != NULL; child = gtk_widget_get_next_sibling (child))
      if (GTK_IS_BUTTON (child))
        g_object_set_data (G_OBJECT (child), "is-priced", NULL);
  show_basis (self);
  if (self->pricing == 0)
    self->pricing = g_idle_add (price_some, self);
}

/* ---- questions ---- */

static void
on_answer (GtkButton *button, EmQuestions *self)
{
  em_questions_answer (self, GPOINTER_TO_UINT (g_object_get_data (G_OBJECT (button), "question")),
                       GPOINTER_TO_INT (g_object_get_data (G_OBJECT (button), "answer")));
}

/* "12 mm": where the answers are sizes of the notes, their own words; else what the answer is called. */
static char *
answer_name (EmQuestions *self, const EmReadQuestion *row, int answer)
{
  const EmKind *kind = em_kind_find (row->answer[answer]);
  const char *notes = em_document_get_quote (self->document)->text[EM_QUOTE_NOTES];
  const EmReadField *set = row->n_sets[answer] == 1 ? &g_array_index (self->reading->sets, EmReadField, row->first_set[answer]) : NULL;
  gboolean is_size = strcmp (row->answer[answer], "first") == 0 || strcmp (row->answer[answer], "second") == 0;

  if (kind != NULL)
    return g_strdup (em_words (kind->name));
  if (is_size && strcmp (row->code, "two-values") == 0 && set != NULL && notes != NULL && strlen (notes) >= (gsize) set->start + set->length)
    return g_strndup (notes + set->start, set->length);
  return g_strdup (em_notes_answer_text (row->answer[answer]));
}

static GtkWidget *
answer_button (EmQuestions *self, guint question, int answer)
{
  const EmReadQuestion *row = &g_array_index (self->reading->questions, EmReadQuestion, question);
  GtkWidget *button = gtk_button_new ();
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  g_autofree char *called = answer_name (self, row, answer);
  GtkWidget *name = gtk_label_new (called);
  GtkWidget *price = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (name), 0);
  gtk_label_set_wrap (GTK_LABEL (name), TRUE);
  gtk_widget_set_hexpand (name, TRUE);
  gtk_widget_add_css_class (price, "money");
  gtk_widget_add_css_class (price, "quiet");
  gtk_box_append (GTK_BOX (box), name);
  gtk_box_append (GTK_BOX (box), price);
  gtk_button_set_child (GTK_BUTTON (button), box);
  gtk_accessible_update_relation (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_RELATION_LABELLED_BY, name, price, NULL, -1);
  g_object_set_data (G_OBJECT (button), "question", GUINT_TO_POINTER (question));
  g_object_set_data (G_OBJECT (button), "answer", GINT_TO_POINTER (answer));
  g_object_set_data (G_OBJECT (button), "price", price);
  g_signal_connect (button, "clicked", G_CALLBACK (on_answer), self);
  return button;
}

static GtkWidget *
question_new (EmQuestions *self, guint question)
{
  const EmReadQuestion *row = &g_array_index (self->reading->questions, EmReadQuestion, question);
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  GtkWidget *head = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  GtkWidget *label = gtk_label_new (em_notes_question_text (row->code));
  int32_t index = place_of (self, row);

  if (index >= 0)
    gtk_box_append (GTK_BOX (head), em_badge_new (index + 1));
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_box_append (GTK_BOX (head), label);
  gtk_box_append (GTK_BOX (box), head);
  for (int i = 0; i < row->n_answers; i++)
    {
      GtkWidget *button = answer_button (self, question, i);
      gtk_accessible_update_relation (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_RELATION_DESCRIBED_BY, label, NULL, -1);
      gtk_box_append (GTK_BOX (box), button);
    }
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
tell_unread (EmQuestions *self)
{
  g_autofree char *read = em_words_number (floor ((double) EM_NOTES_READ_MAX / 1000), 0), *unread = em_words_number (ceil ((double) self->reading->n_unread / 1000), 0);
  g_autofree char *text = g_strdup_printf (_("Only the first %s kB of the notes were read; the last %s kB were not."), read, unread);

  gtk_box_append (GTK_BOX (self->box), told_new (text, "problem"));
}

static void
show (EmQuestions *self)
{
  GtkWidget *child;
  int n_shown = 0;

  while ((child = gtk_widget_get_first_child (self->box)) != NULL)
    gtk_box_remove (GTK_BOX (self->box), child);
  if (self->problem != NULL)
    gtk_box_append (GTK_BOX (self->box), told_new (self->problem, "problem"));
  if (self->reading != NULL && self->reading->n_unread > 0)
    tell_unread (self);
  for (guint i = 0; self->reading != NULL && i < self->reading->questions->len && n_shown < QUESTIONS_AT_ONCE; i++)
    if (self->is_open[i])
      {
        gtk_box_append (GTK_BOX (self->box), question_new (self, i));
        n_shown++;
      }
  if (n_shown < self->n_open)
    {
      g_autofree char *text = g_strdup_printf (ngettext ("%d more question follows.", "%d more questions follow.", (gulong) (self->n_open - n_shown)), self->n_open - n_shown);
      gtk_box_append (GTK_BOX (self->box), told_new (text, "quiet"));
    }
  if (n_shown > 0)
    gtk_box_append (GTK_BOX (self->box), self->basis);
  price_anew (self);
}

/* TRUE: others than before. */
static gboolean
look_which_are_open (EmQuestions *self)
{
  guint n = self->reading != NULL ? self->reading->questions->len : 0;
  g_autofree gboolean *before = g_steal_pointer (&self->is_open);

  self->n_open = 0;
  if (n > 0)
    self->is_open = em_notes_open_questions (self->reading, em_document_get_quote (self->document), &self->n_open);
  return before == NULL || n == 0 || memcmp (before, self->is_open, n * sizeof *before) != 0;
}

/* ---- public ---- */

EmQuestions *
em_questions_new (GtkWidget *box)
{
  EmQuestions *self = g_new0 (EmQuestions, 1);

  self->box = box;
  self->basis = g_object_ref_sink (told_new (NULL, "remark"));
  return self;
}

void
em_questions_free (EmQuestions *self)
{
  g_clear_handle_id (&self->pricing, g_source_remove);
  g_clear_pointer (&self->reading, em_read_result_free);
  if (self->outlook != NULL)
    g_signal_handlers_disconnect_by_data (self->outlook, self);
  g_clear_object (&self->outlook);
  g_clear_object (&self->document);
  g_object_unref (self->basis);
  g_free (self->is_open);
  g_free (self->problem);
  g_free (self);
}

void
em_questions_set_document (EmQuestions *self, EmDocument *document, EmOutlook *outlook)
{
  if (self->outlook != NULL)
    g_signal_handlers_disconnect_by_data (self->outlook, self);
  g_set_object (&self->document, document);
  g_set_object (&self->outlook, outlook);
  if (outlook != NULL)
    g_signal_connect_swapped (outlook, "ready", G_CALLBACK (price_anew), self);
  em_questions_set_reading (self, NULL);
}

void
em_questions_set_reading (EmQuestions *self, EmReadResult *reading)
{
  g_clear_pointer (&self->reading, em_read_result_free);
  g_clear_pointer (&self->is_open, g_free);
  self->reading = reading;
  look_which_are_open (self);
  show (self);
}

gboolean
em_questions_has_reading (EmQuestions *self)
{
  return self->reading != NULL;
}

void
em_questions_set_problem (EmQuestions *self, const char *problem)
{
  g_free (self->problem);
  self->problem = g_strdup (problem);
  show (self);
}

void
em_questions_update (EmQuestions *self, EmChange what)
{
  GtkRoot *root = gtk_widget_get_root (self->box);
  GtkWidget *focus = root != NULL ? gtk_root_get_focus (root) : NULL;
  gboolean has_focus = focus != NULL && gtk_widget_is_ancestor (focus, self->box);

  if (self->reading == NULL)
    return;
  if ((what & (EM_CHANGE_NOTES | EM_CHANGE_MARKS | EM_CHANGE_LIST)) != 0 && look_which_are_open (self))
    {
      show (self);
      if (has_focus && self->n_open > 0)
        em_questions_focus (self);
      else if (has_focus)
        gtk_widget_activate_action (self->box, "win.focus-pane", "i", 2);
    }
  else if ((what & ~(guint) (EM_CHANGE_SELECTION | EM_CHANGE_FILE | EM_CHANGE_PROBLEMS)) != 0)
    price_anew (self);
}

int
em_questions_count (EmQuestions *self)
{
  return self->n_open;
}

void
em_questions_answer (EmQuestions *self, guint question, int answer)
{
  em_document_answer (self->document, self->reading, question, answer);
}

void
em_questions_focus (EmQuestions *self)
{
  for (GtkWidget *box = gtk_widget_get_first_child (self->box); box != NULL; box = gtk_widget_get_next_sibling (box))
    for (GtkWidget *child = gtk_widget_get_first_child (box); child != NULL; child = gtk_widget_get_next_sibling (child))
      if (GTK_IS_BUTTON (child))
        {
          gtk_widget_grab_focus (child);
          return;
        }
}
