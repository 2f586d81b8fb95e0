/* em-history: steps back and forth through a quote.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-history.h"

#include "em-steps.h"

#include <stdlib.h>
#include <string.h>

typedef struct
{
  guint     what;
  int32_t   index;     /* of the feature; −1: the whole quote */
  EmFeature feature;
  gboolean  has_correction;   /* with feature: */
  int32_t   mark_at;
  gboolean  came;      /* the mark came with the step, else it changed */
  EmMark    mark;      /* the other side's; of one that came: while the step is undone */
  EmQuote  *quote;
  EmBasis  *sent;      /* with quote; owned, or NULL */
} EmChanged;

/* What a text or a mark's texts take with malloc's own. */
enum { TEXT_BYTES = 32 };

struct EmHistory
{
  EmSteps *steps;   /* of EmChanged */
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
  EmChanged *step = data;

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

  history->steps = em_steps_new (free_step);
  return history;
}

void
em_history_set_most (EmHistory *history, gsize n_bytes)
{
  em_steps_set_most (history->steps, n_bytes);
}

void
em_history_free (EmHistory *history)
{
  em_steps_free (history->steps);
  g_free (history);
}

static gsize
size_of (const EmQuote *quote)
{
  gsize n = sizeof *quote + (gsize) quote->n_features * (sizeof *quote->feature + TEXT_BYTES) + (gsize) quote->n_marks * (sizeof *quote->mark + 2 * TEXT_BYTES);

  for (int i = 0; i < EM_N_QUOTE_TEXT; i++)
    n += quote->text[i] != NULL ? strlen (quote->text[i]) : 0;
  return n;
}

static EmChanged *
changed_new (guint what, int32_t index)
{
  EmChanged *step = g_new0 (EmChanged, 1);

  step->what = what;
  step->index = index;
  return step;
}

void
em_history_add_feature_take (EmHistory *history, guint64 key, guint what, int32_t index, EmFeature *old_feature)
{
  EmChanged *step;

  if (em_steps_joins (history->steps, key))
    {
      em_feature_clear (old_feature);
      return;
    }
  step = changed_new (what, index);
  step->feature = *old_feature;
  em_steps_add_take (history->steps, key, step, 0);
}

void
em_history_add_correction_take (EmHistory *history, guint64 key, guint what, int32_t index, EmFeature *old_feature,
                                int32_t mark_at, EmMark *old_mark)
{
  EmChanged *step;

  /* Only a whole quote knows what its marks were. */
  if (em_steps_joins (history->steps, key) && ((EmChanged *) em_steps_peek (history->steps, EM_STEP_BACK))->quote != NULL)
    {
      em_feature_clear (old_feature);
      if (old_mark != NULL)
        clear_mark (old_mark);
      return;
    }
  step = changed_new (what, index);
  step->feature = *old_feature;
  step->has_correction = TRUE;
  step->mark_at = mark_at;
  step->came = old_mark == NULL;
  if (old_mark != NULL)
    step->mark = *old_mark;
  em_steps_add_take (history->steps, key, step, 0);
}

/* A long quote's words are typed one by one, and each word is a step that holds all of it. */
void
em_history_add_quote_take (EmHistory *history, guint64 key, guint what, EmQuote *old_quote, EmBasis *old_sent)
{
  EmChanged *step;

  if (em_steps_joins (history->steps, key))
    {
      em_quote_clear (old_quote);
      return;
    }
  step = changed_new (what, -1);
  step->quote = g_memdup2 (old_quote, sizeof *old_quote);
  step->sent = old_sent != NULL ? em_basis_ref (old_sent) : NULL;
  em_steps_add_take (history->steps, key, step, size_of (old_quote));
}

void
em_history_break (EmHistory *history)
{
  em_steps_break (history->steps);
}

gboolean
em_history_can_undo (const EmHistory *history)
{
  return em_steps_peek (history->steps, EM_STEP_BACK) != NULL;
}

gboolean
em_history_can_redo (const EmHistory *history)
{
  return em_steps_peek (history->steps, EM_STEP_FORTH) != NULL;
}

static void
swap_mark (EmChanged *step, EmQuote *quote)
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

static gboolean
go (EmHistory *history, EmStepWay way, EmQuote *quote, EmBasis **sent, guint *out_what, int32_t *out_index)
{
  EmChanged *step = em_steps_go (history->steps, way);

  if (step == NULL)
    return FALSE;
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
  return TRUE;
}

gboolean
em_history_undo (EmHistory *history, EmQuote *quote, EmBasis **sent, guint *out_what, int32_t *out_index)
{
  return go (history, EM_STEP_BACK, quote, sent, out_what, out_index);
}

gboolean
em_history_redo (EmHistory *history, EmQuote *quote, EmBasis **sent, guint *out_what, int32_t *out_index)
{
  return go (history, EM_STEP_FORTH, quote, sent, out_what, out_index);
}

void
em_history_mark_saved (EmHistory *history)
{
  em_steps_mark_saved (history->steps);
}

void
em_history_unmark_saved (EmHistory *history)
{
  em_steps_unmark_saved (history->steps);
}

gboolean
em_history_is_saved (const EmHistory *history)
{
  return em_steps_is_saved (history->steps);
}
