/* em-kind-picture: a kind of feature as a small picture: sound metal, and the metal to add.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-kind.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define EM_TYPE_KIND_PICTURE (em_kind_picture_get_type ())
G_DECLARE_FINAL_TYPE (EmKindPicture, em_kind_picture, EM, KIND_PICTURE, GtkWidget)

GtkWidget *em_kind_picture_new      (const EmKind *kind, int width, int height);
void       em_kind_picture_set_kind (EmKindPicture *self, const EmKind *kind);
/* A kind at typical proportions, for pictures; FALSE when none of those tried fit together. out_value: EM_FIELD_MAX numbers, or NULL. */
gboolean   em_kind_sample           (const EmKind *kind, EmShape *out_shape, double *out_value);

G_END_DECLS
