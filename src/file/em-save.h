/* em-save: whole files, put on the disk without ever being half done.
 *
 * A save writes a new file beside the old one, makes it durable and renames it: who is
 * stopped at any moment leaves the old file or the new one, each whole.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-quote-file.h"

G_BEGIN_DECLS

/* Puts bytes at path. A symbolic link is followed and stays one; an existing file keeps its mode, and its owner where we
 * may give it. A folder, a device or a file set read-only is refused. Error: WRITE; the old file is untouched then,
 * except where only making the rename durable failed, which the sentence says. */
gboolean em_save_bytes (const char *path, GBytes *bytes, GError **error);

G_END_DECLS
