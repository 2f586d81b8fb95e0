/* em-picture: a picture of the window for the README and the tests, made by the program itself.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-window.h"

G_BEGIN_DECLS

typedef struct EmPictureWish EmPictureWish;

/* options: size "1280x800", text-scale, dark, high-contrast, right-to-left, actions "win.paper;win.units::inch" activated before the picture. */
EmPictureWish *em_picture_wish_new  (const char *path, GVariantDict *options);
void           em_picture_wish_free (EmPictureWish *wish);
/* Waits until the window has settled, writes the PNG and closes the window. */
void           em_picture_take      (EmWindow *window, const EmPictureWish *wish);
/* The window as it stands now. */
gboolean       em_picture_save      (GtkWidget *widget, const char *path);

G_END_DECLS
