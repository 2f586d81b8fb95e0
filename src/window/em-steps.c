/* em-steps: a way back and forth.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-steps.h"

typedef struct
{
  guint64  key;
  gpointer held;
  gsize    n_bytes;   /* of held, about */
} EmStep;

/* Steps that are never forgotten. */
enum { LEAST_STEPS = 20 };
#define MOST_BYTES ((gsize) 512 * 1024 * 1024)

/* steps[0 … done − 1] can be undone, steps[done …] redone. saved is the value of done
 * when the present was last on disk, −1 when that state can no longer be reached. */
struct EmSteps
{
  GArray        *steps;   /* EmStep */
  GDestroyNotify free_held;
  guint          done;
  gint64         saved;
  gboolean       is_broken;
  gsize          n_bytes, most_bytes;   /* of all steps */
};

static EmStep *
step_at (const EmSteps *steps, guint at)
{
  return &g_array_index (steps->steps, EmStep, at);
}

static void
remove_range (EmSteps *steps, guint from, guint n)
{
  for (guint i = from; i < from + n; i++)
    {
      steps->n_bytes -= step_at (steps, i)->n_bytes;
      steps->free_held (step_at (steps, i)->held);
    }
  if (n > 0)
    g_array_remove_range (steps->steps, from, n);
}

EmSteps *
em_steps_new (GDestroyNotify free_held)
{
  EmSteps *steps = g_new0 (EmSteps, 1);

  steps->steps = g_array_new (FALSE, FALSE, sizeof (EmStep));
  steps->free_held = free_held;
  steps->most_bytes = MOST_BYTES;
  return steps;
}

void
em_steps_set_most (EmSteps *steps, gsize n_bytes)
{
  steps->most_bytes = n_bytes;
}

void
em_steps_free (EmSteps *steps)
{
  remove_range (steps, 0, steps->steps->len);
  g_array_unref (steps->steps);
  g_free (steps);
}

/* A saved state stays reachable. */
gboolean
em_steps_joins (const EmSteps *steps, guint64 key)
{
  if (key == 0 || steps->is_broken || steps->done == 0 || steps->done != steps->steps->len || steps->saved == (gint64) steps->done)
    return FALSE;
  return step_at (steps, steps->done - 1)->key == key;
}

static void
forget_oldest (EmSteps *steps)
{
  while (steps->n_bytes > steps->most_bytes && steps->done > LEAST_STEPS)
    {
      remove_range (steps, 0, 1);
      steps->done--;
      steps->saved = steps->saved > 0 ? steps->saved - 1 : -1;
    }
}

void
em_steps_add_take (EmSteps *steps, guint64 key, gpointer held, gsize n_bytes)
{
  EmStep step = { key, held, n_bytes };

  if (steps->saved > (gint64) steps->done)
    steps->saved = -1;
  remove_range (steps, steps->done, steps->steps->len - steps->done);
  g_array_append_val (steps->steps, step);
  steps->done++;
  steps->is_broken = FALSE;
  steps->n_bytes += n_bytes;
  forget_oldest (steps);
}

void
em_steps_break (EmSteps *steps)
{
  steps->is_broken = TRUE;
}

gpointer
em_steps_peek (const EmSteps *steps, EmStepWay way)
{
  if (way == EM_STEP_BACK)
    return steps->done > 0 ? step_at (steps, steps->done - 1)->held : NULL;
  return steps->done < steps->steps->len ? step_at (steps, steps->done)->held : NULL;
}

gpointer
em_steps_go (EmSteps *steps, EmStepWay way)
{
  gpointer held = em_steps_peek (steps, way);

  if (held == NULL)
    return NULL;
  steps->done = way == EM_STEP_BACK ? steps->done - 1 : steps->done + 1;
  steps->is_broken = TRUE;
  return held;
}

void
em_steps_drop (EmSteps *steps, EmStepWay way)
{
  guint at = way == EM_STEP_BACK ? steps->done - 1 : steps->done;

  if (em_steps_peek (steps, way) == NULL)
    return;
  remove_range (steps, at, 1);
  steps->done = at;
  /* No way leads over the gap. */
  if (way == EM_STEP_BACK ? steps->saved <= (gint64) at : steps->saved > (gint64) at)
    steps->saved = -1;
  else if (way == EM_STEP_BACK)
    steps->saved--;
  steps->is_broken = TRUE;
}

void
em_steps_mark_saved (EmSteps *steps)
{
  steps->saved = steps->done;
}

void
em_steps_unmark_saved (EmSteps *steps)
{
  steps->saved = -1;
}

gboolean
em_steps_is_saved (const EmSteps *steps)
{
  return steps->saved == (gint64) steps->done;
}
