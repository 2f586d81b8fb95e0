/* em-beside: two parts side by side where there is room for both, else the second below the first.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* Beside each other the second is as wide as it likes and the first has the rest; below, the second is as high as it likes, but leaves
 * the first its share of the height. */
#define EM_TYPE_BESIDE (em_beside_get_type ())
G_DECLARE_FINAL_TYPE (EmBeside, em_beside, EM, BESIDE, GtkWidget)

/* share_percent: of the height, the first's at least when the second is below it. */
GtkWidget *em_beside_new (GtkWidget *first, GtkWidget *second, int spacing_px, int share_percent);
/* From now on side by side as long as the first has the least it needs, not what it likes. */
void       em_beside_set_tight (EmBeside *self);
/* Whether they were side by side when they were last put in their places. */
gboolean   em_beside_is_beside (EmBeside *self);

G_END_DECLS
