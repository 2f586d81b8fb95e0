/* em-notes-match: which proposals of a new reading are the ones of the reading before.
 *
 * Built from a quote's marks and notes before they are replaced.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-notes.h"

G_BEGIN_DECLS

typedef struct EmEarlier EmEarlier;

EmEarlier *em_earlier_new  (const EmReadResult *result, const char *text, const EmQuote *quote);
void       em_earlier_free (EmEarlier *earlier);

/* The features that came from notes. */
guint      em_earlier_n          (const EmEarlier *earlier);
guint32    em_earlier_id         (const EmEarlier *earlier, guint index);
gboolean   em_earlier_is_matched (const EmEarlier *earlier, guint index);

/* The earlier feature that proposal number (from 1) is; 0: it is new. */
guint32    em_earlier_match_of    (const EmEarlier *earlier, int number);
/* Whether the office removed it before. */
gboolean   em_earlier_is_rejected (const EmEarlier *earlier, int number);

/* id 0: the quote as a whole. */
gboolean   em_earlier_had_field       (const EmEarlier *earlier, guint32 id, const char *field);
/* Whether the field's words are those of the reading before. */
gboolean   em_earlier_says_the_same   (const EmEarlier *earlier, guint32 id, const char *field, const char *text, guint32 start, guint32 length);
gboolean   em_earlier_is_corrected    (const EmEarlier *earlier, guint32 id, const char *field);
gboolean   em_earlier_has_corrections (const EmEarlier *earlier, guint32 id);
/* Puts the marks of corrected fields into the quote again, at the words that say them in feature number (0: general) of result. */
void       em_earlier_mark_corrected  (const EmEarlier *earlier, const EmReadResult *result, int number, EmQuote *quote, guint32 id);

gboolean   em_notes_has_marks (const EmQuote *quote, guint32 id);

G_END_DECLS
