/* em-book-window: the shop's rate book and metals, changed with their effect on the open quote in sight, kept or not.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-application.h"
#include "em-draft.h"

G_BEGIN_DECLS

#define EM_TYPE_BOOK_WINDOW (em_book_window_get_type ())
G_DECLARE_FINAL_TYPE (EmBookWindow, em_book_window, EM, BOOK_WINDOW, GtkWindow)

/* For the quote in window, which may be NULL. One is enough: an open one is shown again. */
EmBookWindow *em_book_window_present   (EmApplication *application, EmWindow *window, const char *page);
EmDraft      *em_book_window_get_draft (EmBookWindow *self);
/* "shop", "money", "deposit", "minutes", "machines", "taxes", "bases", "wires", "jobs". */
void          em_book_window_show_page (EmBookWindow *self, const char *page);
/* As the buttons do. Keeping goes on in a thread: it is over when the draft says so, and the trouble shown then is why it failed. */
void          em_book_window_keep      (EmBookWindow *self);
void          em_book_window_discard   (EmBookWindow *self);
/* The effect and what stands in the way, as shown. */
const char   *em_book_window_get_effect  (EmBookWindow *self);
const char   *em_book_window_get_trouble (EmBookWindow *self);
/* Reads a supplier's list and shows what it would do. */
void          em_book_window_import    (EmBookWindow *self, GFile *file);

G_END_DECLS
