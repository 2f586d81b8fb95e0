/* em-words-pane: the customer's words, what was read from them, and what has to be asked.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-document-edit.h"
#include "em-outlook.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define EM_TYPE_WORDS_PANE (em_words_pane_get_type ())
G_DECLARE_FINAL_TYPE (EmWordsPane, em_words_pane, EM, WORDS_PANE, GtkWidget)

void em_words_pane_set_document (EmWordsPane *self, EmDocument *document, EmOutlook *outlook);
/* Reads the notes into proposals, with a step back; long ones in a thread, of which the window tells. */
void em_words_pane_read         (EmWordsPane *self);
/* Reading goes on, or what was read is not all under the words yet. */
gboolean em_words_pane_is_busy  (EmWordsPane *self);
/* Text of a file dropped or opened, below what there is; reads it at once when the quote has no features. */
void em_words_pane_take_text    (EmWordsPane *self, const char *text, gboolean has_units, EmUnits units);
void em_words_pane_focus_notes  (EmWordsPane *self);
GtkTextBuffer *em_words_pane_get_buffer (EmWordsPane *self);
int  em_words_pane_count_questions (EmWordsPane *self);
/* Answers as a click on the answer's button does. */
void em_words_pane_answer       (EmWordsPane *self, int question, int answer);

G_END_DECLS
