/* em-snapshot: a quote as it was at one moment, for a thread to write while it is edited further.
 *
 * Taking one copies the quote, some hundredths of a second for 100,000 features; turning it into bytes takes several times
 * as long and may be done in any thread.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-quote-file.h"

G_BEGIN_DECLS

typedef struct _EmSnapshot EmSnapshot;

/* A copy of all that file writes. NULL and an error when memory runs out. */
EmSnapshot *em_snapshot_new   (const EmQuoteFile *file, GError **error);
void        em_snapshot_free  (EmSnapshot *self);
GBytes     *em_snapshot_write (const EmSnapshot *self, GError **error);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (EmSnapshot, em_snapshot_free)

G_END_DECLS
