/* em-register-panel: what is known of the selected quote, what its revision changed, and what can be done to it.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-basis.h"
#include "em-register.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define EM_TYPE_REGISTER_PANEL (em_register_panel_get_type ())
G_DECLARE_FINAL_TYPE (EmRegisterPanel, em_register_panel, EM, REGISTER_PANEL, GtkWidget)

/* Signal: "state" (int), one was chosen. The buttons act through register.open, register.revise and register.copy. */
GtkWidget  *em_register_panel_new  (void);
/* index G_MAXUINT: no quote. state: of a quote that is open and not saved yet it is not the file's. basis prices drafts that are compared. */
void        em_register_panel_show (EmRegisterPanel *self, EmRegister *reg, guint index, EmState state, EmBasis *basis);
/* As shown; "" until it is worked out. */
const char *em_register_panel_get_changes (EmRegisterPanel *self);

G_END_DECLS
