/* em-register-window: the shop's past quotes: found as one types, opened, copied, revised, won or lost.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-application.h"
#include "em-register.h"

G_BEGIN_DECLS

#define EM_TYPE_REGISTER_WINDOW (em_register_window_get_type ())
G_DECLARE_FINAL_TYPE (EmRegisterWindow, em_register_window, EM, REGISTER_WINDOW, GtkWindow)

/* One is enough: an open one is shown again. */
EmRegisterWindow *em_register_window_present (EmApplication *application);
/* The folder to keep, remembered; its quotes are read in the background. */
void         em_register_window_set_folder   (EmRegisterWindow *self, const char *folder);
gboolean     em_register_window_is_busy      (EmRegisterWindow *self);   /* files are read or written */
void         em_register_window_search       (EmRegisterWindow *self, const char *text);
guint        em_register_window_count        (EmRegisterWindow *self);   /* rows shown */
void         em_register_window_select       (EmRegisterWindow *self, guint row);
/* As in the settings: "number", "date", "customer", "tool", "state", "net"; "": the latest first. */
void         em_register_window_sort         (EmRegisterWindow *self, const char *column, gboolean is_descending);
const EmRegisterEntry *em_register_window_get_entry    (EmRegisterWindow *self, guint row);
const EmRegisterEntry *em_register_window_get_selected (EmRegisterWindow *self);
/* "table", or what stands in its place: "empty" without a folder, "reading", "unread", "none" found, "bare" folder. */
const char  *em_register_window_get_page     (EmRegisterWindow *self);
const char  *em_register_window_get_summary  (EmRegisterWindow *self);   /* as shown */
/* What the panel says of the selected quote, and what its revision changed; "" until it is worked out. */
const char  *em_register_window_get_changes  (EmRegisterWindow *self);
/* As the controls do, to the selected quote. */
void         em_register_window_open         (EmRegisterWindow *self);
void         em_register_window_copy         (EmRegisterWindow *self);
void         em_register_window_revise       (EmRegisterWindow *self);
void         em_register_window_set_state    (EmRegisterWindow *self, EmState state);
/* What the bar says was done to a state last; NULL: nothing can be undone or done again. */
const char  *em_register_window_get_done     (EmRegisterWindow *self);

G_END_DECLS
