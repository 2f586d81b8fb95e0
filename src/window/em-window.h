/* em-window: one quote in one window, from the customer's words to the metal to the money.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-document.h"
#include "em-metal-pane.h"
#include "em-money-pane.h"
#include "em-paper-view.h"
#include "em-words-pane.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define EM_TYPE_WINDOW (em_window_get_type ())
G_DECLARE_FINAL_TYPE (EmWindow, em_window, EM, WINDOW, GtkApplicationWindow)

EmWindow    *em_window_new          (GtkApplication *application, EmDocument *document);
EmDocument  *em_window_get_document (EmWindow *self);
void         em_window_set_document (EmWindow *self, EmDocument *document);
EmOutlook   *em_window_get_outlook  (EmWindow *self);
EmWordsPane *em_window_get_words    (EmWindow *self);
EmMetalPane *em_window_get_metal    (EmWindow *self);
EmMoneyPane *em_window_get_money    (EmWindow *self);
EmPaperView *em_window_get_paper    (EmWindow *self);
/* A sentence at the foot of the window, until dismissed or replaced. */
void         em_window_say          (EmWindow *self, const char *text);
const char  *em_window_get_said     (EmWindow *self);   /* NULL: nothing */
/* Says text once the work has taken half a second; dismissing it then cancels cancellable. */
void         em_window_begin_work   (EmWindow *self, const char *text, GCancellable *cancellable);
void         em_window_show_work    (EmWindow *self, const char *text);   /* how far it is by now */
void         em_window_end_work     (EmWindow *self);
/* Writes the sheet to path page by page, as the save dialog does once a name is chosen, and says so. */
void         em_window_export_to    (EmWindow *self, const char *path);
/* Lines, or every wire compared, as CSV. */
void         em_window_export_data_to (EmWindow *self, gboolean is_wires, const char *path);
void         em_window_save_to      (EmWindow *self, const char *path);
/* Opens a file of ours in a window, words in the notes. */
void         em_window_open_file    (EmWindow *self, GFile *file);
void         em_window_show_welcome (EmWindow *self);

G_END_DECLS
