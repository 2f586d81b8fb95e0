/* em-edge-scroll: a list that moves on while something is dragged near its upper or lower edge.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* scrollable: a widget that scrolls by itself, such as GtkListView. Belongs to it from then on. */
void em_edge_scroll_add (GtkScrollable *scrollable);

G_END_DECLS
