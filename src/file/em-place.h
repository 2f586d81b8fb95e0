/* em-place: where the program's own data lie, installed or in the build folder.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Run from the build folder (told by the executable's own path), these are the source's data and the build's
 * translations; else the installed ones. ESTIMEND_DATA_DIR overrides the first, for tests. Borrowed strings. */
const char *em_place_data_dir   (void);
const char *em_place_locale_dir (void);
gboolean    em_place_is_build   (void);
char       *em_place_data_file  (const char *name);

G_END_DECLS
