/* em-notes-marks: what became of the customer's words, shown under them, and the features' numbers beside them.
 *
 * Words and features are tied by number: the number beside the line and the underline's pattern and colour under the words.
 * What was not used is tinted. There is one tag for each look, and only words whose look changed are touched, so that thousands
 * of marks cost a key no more than a few; many at once are put under the words bit by bit while nothing else is to be done.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-quote.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

typedef struct EmNotesMarks EmNotesMarks;

/* Of the text in view, which is borrowed and has to live longer. */
EmNotesMarks *em_notes_marks_new  (GtkTextView *view);
void          em_notes_marks_free (EmNotesMarks *self);
/* The marks of the quote whose notes the view holds. */
void          em_notes_marks_show (EmNotesMarks *self, const EmQuote *quote);
/* The words of a feature stand out, and its number beside them; they are brought in sight unless the keyboard is in the text.
 * id 0: none. */
void          em_notes_marks_choose (EmNotesMarks *self, const EmQuote *quote, uint32_t id);
/* Before the text is set as a whole, which takes all marks away. */
void          em_notes_marks_forget (EmNotesMarks *self);
/* In the colours of the scheme that holds now. */
void          em_notes_marks_recolour (EmNotesMarks *self);
/* Not all of them are under the words yet. */
gboolean      em_notes_marks_is_busy (EmNotesMarks *self);
GtkWidget    *em_notes_marks_get_gutter (EmNotesMarks *self);

G_END_DECLS
