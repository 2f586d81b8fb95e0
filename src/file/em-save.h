/* em-save: whole files, put on the disk without ever being half done.
 *
 * A save writes a new file beside the old one, makes it durable and renames it: who is
 * stopped at any moment leaves the old file or the new one, each whole, and beside it at most one
 * half-written file, hidden, that the next save of the same file takes away.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-quote-file.h"

G_BEGIN_DECLS

#define EM_SAVE_SUFFIX ".saving"   /* of what is half written: ".NAME.saving" */

/* Puts bytes at path. A symbolic link is followed and stays one; an existing file keeps its mode, and its owner where we
 * may give it. A folder, a device or a file set read-only is refused. Error: WRITE; the old file is untouched then,
 * except where only making the rename durable failed, which the sentence says. */
gboolean em_save_bytes (const char *path, GBytes *bytes, GError **error);

void     em_file_stamp       (const char *path, EmFileStamp *out_stamp);
gboolean em_file_stamp_equal (const EmFileStamp *a, const EmFileStamp *b);
/* em_save_bytes, unless the file is there and no longer as expected told: then it is left as it is and the error is CHANGED.
 * expected all zero: whatever is there may go. *out_stamp: the file as it was written, also where FALSE tells that it is there but
 * may not stay; else untouched. Of programs of ours that do this at once, on one machine or where the file system has flock() for
 * all, one comes first and the others are told. */
gboolean em_save_bytes_over  (const char *path, GBytes *bytes, const EmFileStamp *expected, EmFileStamp *out_stamp, GError **error);

G_END_DECLS
