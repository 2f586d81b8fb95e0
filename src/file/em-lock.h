/* em-lock: who has a quote open, for others on a shared folder to see.
 *
 * A small file beside the quote, with a name, a machine and a time. It keeps nobody from
 * saving: that the file changed meanwhile is found by em_save_bytes_over. It is there so
 * that two people learn of each other before they have done the same work twice.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-quote-file.h"

G_BEGIN_DECLS

typedef struct _EmLock EmLock;

/* NULL and EM_FILE_ERROR_LOCKED: somebody else has the file open, and the sentence says who, where and since when. NULL and
 * EM_FILE_ERROR_WRITE: no lock can be put there. One that a program of this machine left when it died, or that is three
 * days old, is taken over. */
EmLock     *em_lock_take     (const char *path, GError **error);
/* How sentences tell a moment, seconds since 1970: this room knows no language. NULL, as at first: "2026-11-23 04:41". */
void        em_lock_set_teller (char *(*teller) (gint64 moment_s));
const char *em_lock_get_path (const EmLock *lock);   /* of the quote */
/* Takes the lock away, unless it is somebody else's by now. */
void        em_lock_free     (EmLock *lock);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (EmLock, em_lock_free)

G_END_DECLS
