/* em-drawing-view: one view of a feature, to scale, live.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-document.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define EM_TYPE_DRAWING_VIEW (em_drawing_view_get_type ())
G_DECLARE_FINAL_TYPE (EmDrawingView, em_drawing_view, EM, DRAWING_VIEW, GtkWidget)

GtkWidget *em_drawing_view_new (EmView view);
/* Shows the selected feature of document; field: index of the dimension to bring out, −1 none. */
void       em_drawing_view_show (EmDrawingView *self, EmDocument *document, int field);

G_END_DECLS
