/* em-settings: what the program remembers between starts: sizes, recent files, the shop's folder.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* Borrowed; the build folder's own schema when run from there. */
GSettings *em_settings_get (void);
/* Puts path first of the recent files. */
void       em_settings_add_recent (const char *path);
/* One that is no longer there. */
void       em_settings_drop_recent (const char *path);
/* The size a window had when it was closed last. */
void       em_settings_put_size  (GtkWindow *window, const char *width_key, const char *height_key);
void       em_settings_keep_size (GtkWindow *window, const char *width_key, const char *height_key);

G_END_DECLS
