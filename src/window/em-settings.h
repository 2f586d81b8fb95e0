/* em-settings: what the program remembers between starts: sizes, recent files, the shop's folder.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include <gio/gio.h>

G_BEGIN_DECLS

/* Borrowed; the build folder's own schema when run from there. */
GSettings *em_settings_get (void);
/* Puts path first of the recent files. */
void       em_settings_add_recent (const char *path);

G_END_DECLS
