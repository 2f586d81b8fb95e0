/* em-steady: a width that is asked for without regard to the height.
 *
 * GtkPaned wants to know how wide each pane has to be at the height it has, and so does GtkBox of what it holds and GTK of what does not
 * fill its place. For every text that wraps GTK finds out by trying widths, some thirty layouts of each, at every change of anything
 * around it. Nothing here grows wider to be less high, so what lies below one of these is never asked.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* For any widget's own children, one under another. One alone fills the height; several take what they need of it. */
#define EM_TYPE_STEADY_LAYOUT (em_steady_layout_get_type ())
G_DECLARE_FINAL_TYPE (EmSteadyLayout, em_steady_layout, EM, STEADY_LAYOUT, GtkLayoutManager)

void em_steady_layout_set_spacing (EmSteadyLayout *self, int spacing_px);

/* Around a text that wraps in a row, or beside an expander's arrow. */
#define EM_TYPE_STEADY (em_steady_get_type ())
G_DECLARE_FINAL_TYPE (EmSteady, em_steady, EM, STEADY, GtkWidget)

GtkWidget *em_steady_new (GtkWidget *child);

G_END_DECLS
