/* em-history: steps back and forth through a quote.
 *
 * em-steps keeps them. A step holds the side of the change that is not in the quote at present: one
 * feature, or the whole quote where several parts changed at once. Going back or
 * forth swaps the two, so a way back to the start gives the very same quote. With a
 * whole quote go the rates and metals it was sent with.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-basis.h"
#include "em-quote.h"

#include <glib.h>

G_BEGIN_DECLS

typedef struct EmHistory EmHistory;

EmHistory *em_history_new  (void);
void       em_history_free (EmHistory *history);
/* Steps that hold whole quotes may come to about so many bytes; the oldest are forgotten then, down to a score of steps. Half a gigabyte
 * unless it is set. */
void       em_history_set_most (EmHistory *history, gsize n_bytes);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (EmHistory, em_history_free)

/* Records the old side of a change just made and drops what had been undone. key names
 * what was typed into; a step with the key of the newest one joins it unless
 * em_history_break came between. 0 never joins. what: passed back by step. Contents are taken.
 * old_sent: what the old quote was sent with, which is referred to; or NULL. */
void em_history_add_feature_take (EmHistory *history, guint64 key, guint what, int32_t index, EmFeature *old_feature);
/* With it the mark at mark_at changed: *old_mark is what it was; or it came, as the last, and old_mark is NULL. */
void em_history_add_correction_take (EmHistory *history, guint64 key, guint what, int32_t index, EmFeature *old_feature,
                                     int32_t mark_at, EmMark *old_mark);
void em_history_add_quote_take   (EmHistory *history, guint64 key, guint what, EmQuote *old_quote, EmBasis *old_sent);
/* The next change begins a step of its own. */
void em_history_break (EmHistory *history);

gboolean em_history_can_undo (const EmHistory *history);
gboolean em_history_can_redo (const EmHistory *history);
/* Swaps a step into quote and *sent; FALSE when there is none. out_index: the feature, or −1. */
gboolean em_history_undo (EmHistory *history, EmQuote *quote, EmBasis **sent, guint *out_what, int32_t *out_index);
gboolean em_history_redo (EmHistory *history, EmQuote *quote, EmBasis **sent, guint *out_what, int32_t *out_index);

/* The present state is the one on disk. */
void     em_history_mark_saved (EmHistory *history);
void     em_history_unmark_saved (EmHistory *history);
gboolean em_history_is_saved   (const EmHistory *history);

G_END_DECLS
