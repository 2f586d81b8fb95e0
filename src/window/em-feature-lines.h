/* em-feature-lines: what each feature costs, a line each; only those in sight are widgets. A line opens its working.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-document.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define EM_TYPE_FEATURE_LINES (em_feature_lines_get_type ())
G_DECLARE_FINAL_TYPE (EmFeatureLines, em_feature_lines, EM, FEATURE_LINES, GtkWidget)

GtkWidget  *em_feature_lines_new  (void);
void        em_feature_lines_show (EmFeatureLines *self, EmDocument *document);
/* In the order shown; for tests. */
GListModel *em_feature_lines_get_model (EmFeatureLines *self);

G_END_DECLS
