/* em-details: who asks, for which tool, on what terms.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-document-edit.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define EM_TYPE_DETAILS (em_details_get_type ())
G_DECLARE_FINAL_TYPE (EmDetails, em_details, EM, DETAILS, GtkWidget)

void       em_details_set_document (EmDetails *self, EmDocument *document);
void       em_details_set_expanded (EmDetails *self, gboolean is_expanded);
GtkWidget *em_details_get_entry    (EmDetails *self, EmQuoteText which);

G_END_DECLS
