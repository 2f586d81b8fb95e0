/* em-document-notes: the customer's words in an open quote, and what is read from them.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-document-edit.h"

#include <string.h>

/* Same as the other places of typing; see em-document-edit.c. */
#define NOTES_KEY (G_GUINT64_CONSTANT (8) << 56)

/* Moves one mark across a replacement of old bytes [from, from + n_old) by n_new. FALSE when its words are gone. */
static gboolean
shift_mark (EmMark *mark, gsize from, gsize n_old, gsize n_new)
{
  gsize start = mark->start, end = start + mark->length;
  gsize old_end = from + n_old;

  if (end <= from)
    return TRUE;
  if (start >= old_end)
    start += n_new - n_old;
  else if (start > from)
    start = from + n_new;
  if (end >= old_end)
    end += n_new - n_old;
  else
    end = from;
  if (end <= start)
    return FALSE;
  mark->start = (uint32_t) start;
  mark->length = (uint32_t) (end - start);
  return TRUE;
}

/* That the office corrected a field is known after its words went, should they come again. */
static gboolean
remembers (EmMark *mark)
{
  if (mark->state != EM_MARK_REJECTED || mark->field == NULL)
    return FALSE;
  mark->start = mark->length = 0;
  return TRUE;
}

static void
put_notes (EmQuote *quote, gconstpointer data)
{
  const char *now = data != NULL ? data : "";
  const char *before = quote->text[EM_QUOTE_NOTES] != NULL ? quote->text[EM_QUOTE_NOTES] : "";
  gsize n_now = strlen (now), n_before = strlen (before);
  gsize n_least = MIN (n_now, n_before);
  gsize head = 0, tail = 0;

  while (head < n_least && now[head] == before[head])
    head++;
  while (tail < n_least - head && now[n_now - 1 - tail] == before[n_before - 1 - tail])
    tail++;

  int32_t kept = 0;
  for (int32_t i = 0; i < quote->n_marks; i++)
    if (shift_mark (&quote->mark[i], head, n_before - head - tail, n_now - head - tail) || remembers (&quote->mark[i]))
      {
        EmMark mark = quote->mark[i];
        quote->mark[i] = quote->mark[kept];
        quote->mark[kept++] = mark;
      }
  for (int32_t i = kept; i < quote->n_marks; i++)
    {
      free (quote->mark[i].field);
      free (quote->mark[i].reason);
    }
  quote->n_marks = kept;
  em_quote_set_text (quote, EM_QUOTE_NOTES, data);
}

gboolean
em_document_set_notes (EmDocument *self, const char *text)
{
  return em_document_edit_quote (self, NOTES_KEY, EM_CHANGE_NOTES, put_notes, text);
}

typedef struct
{
  EmReadResult *reading;
  const char   *text;
  guint         question;
  int           answer;
} EmReadEdit;

static void
put_reading (EmQuote *quote, gconstpointer data)
{
  const EmReadEdit *edit = data;

  em_notes_apply (edit->reading, edit->text, quote);
}

void
em_document_apply_reading (EmDocument *self, EmReadResult *reading)
{
  const char *text = em_document_get_quote (self)->text[EM_QUOTE_NOTES];
  EmReadEdit edit = { .reading = reading };
  g_autofree char *words = g_strdup (text != NULL ? text : "");

  edit.text = words;
  em_document_edit_quote (self, 0, EM_CHANGE_LIST | EM_CHANGE_MARKS | EM_CHANGE_DETAILS | EM_CHANGE_UNITS, put_reading, &edit);
}

static void
put_answer (EmQuote *quote, gconstpointer data)
{
  const EmReadEdit *edit = data;
  const EmReadQuestion *question = &g_array_index (edit->reading->questions, EmReadQuestion, edit->question);
  int32_t index = -1;

  if (question->feature > 0)
    {
      if ((guint) question->feature > edit->reading->ids->len)
        return;
      index = em_quote_find (quote, g_array_index (edit->reading->ids, guint32, question->feature - 1));
      if (index < 0)
        return;
    }
  em_notes_answer (edit->reading, edit->question, edit->answer, quote, index);
}

gboolean
em_document_answer (EmDocument *self, EmReadResult *reading, guint question, int answer)
{
  EmReadEdit edit = { .reading = reading, .question = question, .answer = answer };

  return em_document_edit_quote (self, 0, EM_CHANGE_LIST | EM_CHANGE_MARKS | EM_CHANGE_DETAILS | EM_CHANGE_UNITS, put_answer, &edit);
}
