/* em-register-undo: states written to quotes in the folder, and the way back: a bar that says what was done, with Undo and Redo.
 *
 * A step back puts the very bytes of the file in their place again, and is refused where the file is no longer as the
 * step left it. Hidden until something was done. Emits "written" (the quote's path, or NULL; a sentence of what went
 * wrong, or NULL) after each try.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-register-work.h"
#include "em-steps.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define EM_TYPE_REGISTER_UNDO (em_register_undo_get_type ())
G_DECLARE_FINAL_TYPE (EmRegisterUndo, em_register_undo, EM, REGISTER_UNDO, GtkWidget)

GtkWidget  *em_register_undo_new       (void);
/* Another state for the quote in path, which the bar calls title. FALSE: the last one is still being written, and nothing is done. */
gboolean    em_register_undo_set_state (EmRegisterUndo *self, const char *path, const char *title, EmState from, EmState to, EmBasis *basis);
gboolean    em_register_undo_can_go    (EmRegisterUndo *self, EmStepWay way);
void        em_register_undo_go        (EmRegisterUndo *self, EmStepWay way);
gboolean    em_register_undo_is_busy   (EmRegisterUndo *self);
const char *em_register_undo_get_said  (EmRegisterUndo *self);   /* NULL: hidden */

G_END_DECLS
