/* em-steps: a way back and forth: what was done, what was undone, and where the saved state lies between them.
 *
 * Of what a step holds it knows nothing: whoever adds one swaps it with the present when it is gone by. Steps in a row
 * with the same key are one, such as the letters typed into one field.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef struct EmSteps EmSteps;

typedef enum { EM_STEP_BACK, EM_STEP_FORTH } EmStepWay;

/* free_held: of what a step holds. */
EmSteps *em_steps_new  (GDestroyNotify free_held);
void     em_steps_free (EmSteps *steps);
/* What steps hold may come to about so many bytes; the oldest are forgotten then, down to a score of steps. Half a gigabyte
 * unless it is set. */
void     em_steps_set_most (EmSteps *steps, gsize n_bytes);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (EmSteps, em_steps_free)

/* Whether a change with key belongs to the newest step, which then holds all that is needed. Key 0 belongs to none. */
gboolean em_steps_joins    (const EmSteps *steps, guint64 key);
/* A step done just now; what had been undone is dropped. n_bytes: what held takes, about. */
void     em_steps_add_take (EmSteps *steps, guint64 key, gpointer held, gsize n_bytes);
/* The next change begins a step of its own. */
void     em_steps_break    (EmSteps *steps);

/* What the next step that way holds; NULL: there is none. To go makes it the last one of the other way. */
gpointer em_steps_peek     (const EmSteps *steps, EmStepWay way);
gpointer em_steps_go       (EmSteps *steps, EmStepWay way);
/* The next step that way can't be gone by any more. */
void     em_steps_drop     (EmSteps *steps, EmStepWay way);

/* The present state is the one on disk. */
void     em_steps_mark_saved   (EmSteps *steps);
void     em_steps_unmark_saved (EmSteps *steps);
gboolean em_steps_is_saved     (const EmSteps *steps);

G_END_DECLS
