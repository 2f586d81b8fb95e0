/* em-lock-release: taking away the lock beside a file, in a thread: the folder may be far away, or gone.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-lock.h"

#include <glib.h>

G_BEGIN_DECLS

/* For one that is going to be taken away before another is put there. */
enum { EM_LOCK_PATIENCE_MS = 2000 };

/* Takes lock, which may be NULL. */
void     em_lock_release_take (EmLock *lock);
/* Until all are taken away, so long at most; FALSE: some are not yet. Before the program ends, and in a thread before a lock is put
 * where one of ours may just be going. */
gboolean em_lock_release_wait (guint milliseconds);

G_END_DECLS
