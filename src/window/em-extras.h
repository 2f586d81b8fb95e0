/* em-extras: bought-out work and other lines the office adds to a quote.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-document-edit.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define EM_TYPE_EXTRAS (em_extras_get_type ())
G_DECLARE_FINAL_TYPE (EmExtras, em_extras, EM, EXTRAS, GtkWidget)

void em_extras_set_document (EmExtras *self, EmDocument *document);

G_END_DECLS
