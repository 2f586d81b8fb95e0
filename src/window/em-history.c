/* em-history: steps back and forth through a quote.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-history.h"

#include <stdlib.h>
#include <string.h>

typedef struct
{
  guint64   key;
  guint     what;
  int32_t   index;     /* of the feature; −1: the whole quote */
  EmFeature feature;
  gboolean  has_correction;   /* with feature: */
  int32_t   mark_at;
  gboolean  came;      /* the mark came with the step, else it changed */
  EmMark    mark;      /* the other side's; of one that came: while the step is undone */
  EmQuote  *quote;
  EmBasis  *sent;      /* with quote; owned, or NULL */
  gsize     n_bytes;   /* of quote, about */
} EmStep;

/* Steps that are never forgotten. */
enum { LEAST_STEPS = 20 };
#define MOST_BYTES ((gsize) 512 * 1024 * 1024)

/* What a text or a mark's texts take with malloc's own. */
enum { TEXT_BYTES = 32 };

/* steps[0 … done − 1] can be undone, steps[done …] redone. saved is the value of done
 * when the quote was last on disk, −1 when that state can no longer be reached. */
struct EmHistory
{
  GPtrArray *steps;
  guint      done;
  gint64     saved;
  gboolean   is_broken;
  gsize      n_bytes, most_bytes;   /* of all steps */
};

static void
clear_mark (EmMark *mark)
{
  free (mark->field);
  free (mark->reason);
  *mark = (EmMark) { 0 };
}

static void
free_step (gpointer data)
{
  EmStep *step = data;

  clear_mark (&step->mark);

  if (step->quote != NULL)
    {
      em_quote_clear (step->quote);
      g_free (step->quote);
      g_clear_pointer (&step->sent, em_basis_unref);
    }
  else
    em_feature_clear (&step->feature);
  g_free (step);
}

EmHistory *
em_history_new (void)
{
  EmHistory *history = g_new0 (EmHistory, 1);

  history->steps = g_ptr_array_new_with_free_func (free_step);
  history->most_bytes = MOST_BYTES;
  return history;
}

void
em_history_set_most (EmHistory *history, gsize n_bytes)
{
  history->most_bytes = n_bytes;
}

void
em_history_free (EmHistory *history)
{
  g_ptr_array_unref (history->steps);
  g_free (history);
}

/* Whether a change with key belongs to the newest step. A saved state stays reachable. */
static gboolean
joins (const EmHistory *history, guint64 key)
{
  if (key == 0 || history->is_broken || history->done == 0 || history->done != history->steps->len
      || history->saved == (gint64) history->done)
    return FALSE;
  return ((EmStep *) g_ptr_array_index (history->steps, history->done - 1))->key == key;
}

static gsize
size_of (const EmQuote *quote)
{
  gsize n = sizeof *quote + (gsize) quote->n_features * (sizeof *quote->feature + TEXT_BYTES) + (gsize) quote->n_marks * (sizeof *quote->mark + 2 * TEXT_BYTES);

  for (int i = 0; i < EM_N_QUOTE_TEXT; i++)
    n += quote->text[i] != NULL ? strlen (quote->text[i]) : 0;
  return n;
}

/* A long quote's words are typed one by one, and each word is a step that holds all of it. */
static void
forget_oldest (EmHistory *history)
{
  while (history->n_bytes > history->most_bytes && history->done > LEAST_STEPS)
    {
      history->n_bytes -= ((EmStep *) g_ptr_array_index (history->steps, 0))->n_bytes;
      g_ptr_array_remove_index (history->steps, 0);
      history->done--;
      history->saved = history->saved > 0 ? history->saved - 1 : -1;
    }
}

static EmStep *
add_step (EmHistory *history, guint64 key, guint what, int32_t index)
{
  EmStep *step = g_new0 (EmStep, 1);

  step->key = key;
  step->what = what;
  step->index = index;
  if (history->saved > (gint64) history->done)
    history->saved = -1;
  for (guint i = history->done; i < history->steps->len; i++)
    history->n_bytes -= ((EmStep *) g_ptr_array_index (history->steps, i))->n_bytes;
  g_ptr_array_set_size (history->steps, (gint) history->done);
  g_ptr_array_add (history->steps, step);
  history->done++;
  history->is_broken = FALSE;
  return step;
}

void
em_history_add_feature_take (EmHistory *history, guint64 key, guint what, int32_t index, EmFeature *old_feature)
{
  if (joins (history, key))
    em_feature_clear (old_feature);
  else
    add_step (history, key, what, index)->feature = *old_feature;
}

void
em_history_add_correction_take (EmHistory *history, guint64 key, guint what, int32_t index, EmFeature *old_feature,
                                int32_t mark_at, EmMark *old_mark)
{
  EmStep *step;

  /* Only a whole quote knows what its marks were. */
  if (joins (history, key) && ((EmStep *) g_ptr_array_index (history->steps, history->done - 1))->quote != NULL)
    {
      em_feature_clear (old_feature);
      if (old_mark != NULL)
        clear_mark (old_mark);
      return;
    }
  step = add_step (history, key, what, index);
  step->feature = *old_feature;
  step->has_correction = TRUE;
  step->mark_at = mark_at;
  step->came = old_mark == NULL;
  if (old_mark != NULL)
    step->mark = *old_mark;
}

void
em_history_add_quote_take (EmHistory *history, guint64 key, guint what, EmQuote *old_quote, EmBasis *old_sent)
{
  EmStep *step;

  if (joins (history, key))
    {
      em_quote_clear (old_quote);
      return;
    }
  step = add_step (history, key, what, -1);
  step->quote = g_memdup2 (old_quote, sizeof *old_quote);
  step->sent = old_sent != NULL ? em_basis_ref (old_sent) : NULL;
  step->n_bytes = size_of (old_quote);
  history->n_bytes += step->n_bytes;
  forget_oldest (history);
}

void
em_history_break (EmHistory *history)
{
  history->is_broken = TRUE;
}

gboolean
em_history_can_undo (const EmHistory *history)
{
  return history->done > 0;
}

gboolean
em_history_can_redo (const EmHistory *history)
{
  return history->done < history->steps->len;
}

static void
swap_mark (EmStep *step, EmQuote *quote)
{
  EmMark other = step->mark;

  if (step->came && step->mark_at == quote->n_marks)
    em_quote_add_mark_take (quote, &step->mark);
  else if (step->came)
    step->mark = quote->mark[--quote->n_marks];
  else
    {
      step->mark = quote->mark[step->mark_at];
      quote->mark[step->mark_at] = other;
    }
}

static void
swap_step (EmHistory *history, guint at, EmQuote *quote, EmBasis **sent, guint *out_what, int32_t *out_index)
{
  EmStep *step = g_ptr_array_index (history->steps, at);

  if (step->quote != NULL)
    {
      EmQuote other = *step->quote;
      EmBasis *other_sent = step->sent;
      *step->quote = *quote;
      *quote = other;
      step->sent = *sent;
      *sent = other_sent;
    }
  else
    {
      EmFeature other = step->feature;
      step->feature = quote->feature[step->index];
      quote->feature[step->index] = other;
      if (step->has_correction)
        swap_mark (step, quote);
    }
  *out_what = step->what;
  *out_index = step->index;
  history->is_broken = TRUE;
}

gboolean
em_history_undo (EmHistory *history, EmQuote *quote, EmBasis **sent, guint *out_what, int32_t *out_index)
{
  if (!em_history_can_undo (history))
    return FALSE;
  swap_step (history, --history->done, quote, sent, out_what, out_index);
  return TRUE;
}

gboolean
em_history_redo (EmHistory *history, EmQuote *quote, EmBasis **sent, guint *out_what, int32_t *out_index)
{
  if (!em_history_can_redo (history))
    return FALSE;
  swap_step (history, history->done++, quote, sent, out_what, out_index);
  return TRUE;
}

void
em_history_mark_saved (EmHistory *history)
{
  history->saved = history->done;
}

void
em_history_unmark_saved (EmHistory *history)
{
  history->saved = -1;
}

gboolean
em_history_is_saved (const EmHistory *history)
{
  return history->saved == (gint64) history->done;
}
