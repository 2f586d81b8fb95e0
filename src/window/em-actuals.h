/* em-actuals: what the selected feature took after the job was done, against what was reckoned.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-document-edit.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define EM_TYPE_ACTUALS (em_actuals_get_type ())
G_DECLARE_FINAL_TYPE (EmActuals, em_actuals, EM, ACTUALS, GtkWidget)

GtkWidget *em_actuals_new  (void);
/* Fills from the selected feature of document; there must be one. */
/* What stands in an entry and can't be taken gives way to its value. */
void       em_actuals_forget_unread (EmActuals *self);
void       em_actuals_show (EmActuals *self, EmDocument *document);

G_END_DECLS
