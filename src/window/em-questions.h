/* em-questions: what has to be asked about the customer's words, each answer with its price.
 *
 * A question is open while the quote's marks say so: answered, corrected or taken out with its feature it goes, and a step back
 * brings it again. Prices follow the quote, one at a time while nothing else is to be done.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-document.h"
#include "em-notes.h"
#include "em-outlook.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

typedef struct EmQuestions EmQuestions;

/* Shown in box, which is borrowed and has to live longer. */
EmQuestions *em_questions_new  (GtkWidget *box);
void         em_questions_free (EmQuestions *self);
/* Without a reading. Of outlook the cheapest wire is taken to price answers with while none is chosen. */
void         em_questions_set_document (EmQuestions *self, EmDocument *document, EmOutlook *outlook);
/* Takes reading, which was applied to the quote; NULL: the words are others now. */
void         em_questions_set_reading  (EmQuestions *self, EmReadResult *reading);
gboolean     em_questions_has_reading  (EmQuestions *self);
/* Said in the place of questions; NULL: nothing. */
void         em_questions_set_problem  (EmQuestions *self, const char *problem);
/* The document changed. Where the keyboard was on an answer that goes, it is on the next question's or with the features. */
void         em_questions_update       (EmQuestions *self, EmChange what);
int          em_questions_count        (EmQuestions *self);   /* the open ones */
void         em_questions_answer       (EmQuestions *self, guint question, int answer);
/* The first answer of the first question that is open: one key answers it. */
void         em_questions_focus        (EmQuestions *self);

G_END_DECLS
