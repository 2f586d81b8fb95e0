/* em-revision: a quote made from another: a copy for another job, or a revision, and what changed between two.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-basis.h"
#include "em-quote-file.h"

G_BEGIN_DECLS

/* What a quote is told by to those that revise it: "D-1001 B"; "" without a number. g_free. */
char *em_revision_name (const char *number, const char *revision);
/* "B" after "A", "3" after "2", "R3" after "R2", "A" after none. g_free. */
char *em_revision_next (const char *revision);

/* Both turn *file into a draft of today, priced by the shop's present book, with nothing noted after the job. A copy is of no
 * number yet; a revision keeps the number, takes the next revision and remembers which one it came from. */
void  em_revision_make_copy (EmQuoteFile *file);
void  em_revision_make_next (EmQuoteFile *file);

/* Sentences (char *) of what differs, old to new, each price by the basis given: features by their id, then the quote's own numbers
 * and choices; the first is the net price. Empty when nothing does. */
GPtrArray *em_revision_compare (const EmQuote *old_quote, const EmBasis *old_basis, const EmQuote *new_quote, const EmBasis *new_basis);

G_END_DECLS
