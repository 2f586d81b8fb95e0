/* em-feature-row: a feature in the list: its number, picture, name, sizes, price, and whether something is wrong.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-document.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define EM_TYPE_FEATURE_ROW (em_feature_row_get_type ())
G_DECLARE_FINAL_TYPE (EmFeatureRow, em_feature_row, EM, FEATURE_ROW, GtkBox)

GtkWidget *em_feature_row_new  (void);
/* What it says is told of the widget it lies in too, which is what has the keyboard. */
void       em_feature_row_show (EmFeatureRow *self, EmDocument *document, int32_t index);
uint32_t   em_feature_row_get_feature_id (EmFeatureRow *self);
/* A feature's number in a ring, the same in all panes. */
GtkWidget *em_badge_new (int number);

G_END_DECLS
