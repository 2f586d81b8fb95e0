/* em-working: how a figure came about, in a popover at the figure.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-document.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* row: a feature, or EM_ROW_QUOTE; quantity: only these steps, or NULL for all of the row. */
void em_working_popup (GtkWidget *at, EmDocument *document, int32_t row, const char *quantity, const char *title);
/* The steps as text, a line each, for tests and the clipboard. */
char *em_working_text (EmDocument *document, int32_t row, const char *quantity);

G_END_DECLS
