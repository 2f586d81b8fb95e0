/* em-paper-held: a quote as it was when its sheets were asked for, for as long as they are drawn.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-document.h"
#include "em-paper-job.h"

G_BEGIN_DECLS

typedef struct _EmPaperHeld EmPaperHeld;

/* NULL and an error when memory runs out. */
EmPaperHeld         *em_paper_held_new        (EmDocument *document, GError **error);
/* The same for a long quote: prices, comparison and range are worked out in a thread. */
void                 em_paper_held_new_async  (EmDocument *document, GCancellable *cancellable, GAsyncReadyCallback callback, gpointer data);
EmPaperHeld         *em_paper_held_new_finish (GAsyncResult *result, GError **error);
const EmPaperSource *em_paper_held_get_source (const EmPaperHeld *held);
void                 em_paper_held_free       (EmPaperHeld *held);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (EmPaperHeld, em_paper_held_free)

G_END_DECLS
