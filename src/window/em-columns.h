/* em-columns: headers of columns of figures stand over their figures.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* Says that column holds figures, which stand at its end; before it is put into a view. */
void em_columns_set_figures (GtkColumnViewColumn *column);
/* From now on titles of such columns in view stand at the end too, wherever the columns are moved. */
void em_columns_align       (GtkColumnView *view);

G_END_DECLS
