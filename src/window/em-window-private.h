/* em-window-private: the window's parts, shared by its files alone.
 *
 * em-window.c holds the window, em-window-actions.c what can be done in it,
 * em-window-files.c opening, saving and closing.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-window.h"

G_BEGIN_DECLS

struct _EmWindow
{
  GtkApplicationWindow parent_instance;

  GtkWidget *title_label, *subtitle_label, *message_revealer, *message_label, *stack, *outer_paned, *inner_paned,
            *words, *metal, *money, *paper;            /* template */
  GMenu     *recent_menu, *demo_menu;                  /* template */
  GMenuModel *main_menu;                               /* template */
  GtkWidget  *menu_button;                             /* template */

  EmDocument *document;    /* owned */
  EmOutlook  *outlook;     /* owned */
  GCancellable *work;      /* owned; what a dismissal cancels, or NULL */
  char       *work_text;
  guint       work_source; /* until it has taken long enough to speak of */
  gboolean    is_closing;  /* asked and answered */
  guint       placing;     /* source id, of the handles between the panes */
  gboolean    is_words_by_hand, is_money_by_hand;   /* widths: chosen by someone, here or before */
  GtkFileChooserNative *chooser;   /* open dialog, owned */
};

void em_window_add_actions    (EmWindow *self);
/* One place sets what can be done at present. */
void em_window_update_actions (EmWindow *self);
void em_window_update_title   (EmWindow *self);

void em_window_open_dialog    (EmWindow *self);
void em_window_save           (EmWindow *self, gboolean as);
/* The next free one of the shop's pattern; then_save: and on to the save dialog. */
void em_window_give_number    (EmWindow *self, gboolean then_save);
void em_window_export_dialog  (EmWindow *self);
void em_window_export_data_dialog (EmWindow *self, gboolean is_wires);
void em_window_print          (EmWindow *self);
/* TRUE when the window may close now; else asks, and closes by itself later. */
gboolean em_window_may_close  (EmWindow *self);
/* The keyboard goes to the notes of a quote that nothing was done in. */
void em_window_start_at_notes (EmWindow *self);
void em_window_fill_recent    (EmWindow *self);

G_END_DECLS
