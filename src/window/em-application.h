/* em-application: the program: its windows, its files, the basis all quotes are priced on.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-window.h"

G_BEGIN_DECLS

#define EM_TYPE_APPLICATION (em_application_get_type ())
G_DECLARE_FINAL_TYPE (EmApplication, em_application, EM, APPLICATION, GtkApplication)

EmApplication *em_application_new        (void);
EmBasis       *em_application_get_basis  (EmApplication *self);
/* A changed rate book or catalogue: every open draft is priced anew. */
void           em_application_set_basis  (EmApplication *self, EmBasis *basis);
/* In a thread; into window when it is blank, else into a window of its own. Says so in window on failure. */
void           em_application_open_quote (EmApplication *self, GFile *file, EmWindow *window);
EmWindow      *em_application_add_window (EmApplication *self, EmDocument *document);
/* The window in which the file is open, by its path or because it is the same file on the disk; NULL: none. */
EmWindow      *em_application_find_path  (EmApplication *self, const char *path);
/* Once answered. In GTK 4.8 a dialog that outlives its parent by the end of the click still looks for it. */
void           em_application_end_dialog (GtkDialog *dialog);
/* Ctrl+W closes a window that is none of a quote too. The window's actions, "win", which belong to it. */
GActionMap    *em_application_make_closable (GtkWindow *window);

/* main's part. */
int            em_application_main       (int argc, char **argv);

G_END_DECLS
