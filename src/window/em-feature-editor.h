/* em-feature-editor: the selected feature's entries, made from its kind's field table, under its drawings.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-document-edit.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define EM_TYPE_FEATURE_EDITOR (em_feature_editor_get_type ())
G_DECLARE_FINAL_TYPE (EmFeatureEditor, em_feature_editor, EM, FEATURE_EDITOR, GtkWidget)

void em_feature_editor_set_document (EmFeatureEditor *self, EmDocument *document);
/* Focuses the entry of a field, opening its group; the first one for NULL. */
void em_feature_editor_focus_field  (EmFeatureEditor *self, const char *field_id);
/* The entry of a field id, for tests; NULL when it is not shown. */
GtkWidget *em_feature_editor_get_entry (EmFeatureEditor *self, const char *field_id);

G_END_DECLS
