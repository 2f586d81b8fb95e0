/* em-metal-pane: the features in a list, and the selected one opened beneath it.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-document-edit.h"
#include "em-feature-editor.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define EM_TYPE_METAL_PANE (em_metal_pane_get_type ())
G_DECLARE_FINAL_TYPE (EmMetalPane, em_metal_pane, EM, METAL_PANE, GtkWidget)

void             em_metal_pane_set_document (EmMetalPane *self, EmDocument *document);
EmFeatureEditor *em_metal_pane_get_editor   (EmMetalPane *self);
void             em_metal_pane_open_picker  (EmMetalPane *self);
void             em_metal_pane_close_picker (EmMetalPane *self);
void             em_metal_pane_focus_list   (EmMetalPane *self);
/* The list's features, in order, with the one that is selected; borrowed. */
GtkSelectionModel *em_metal_pane_get_features (EmMetalPane *self);

G_END_DECLS
