/* em-revision: a quote made from another: a copy for another job, or a revision, and what changed between two.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-basis.h"
#include "em-quote-file.h"
#include "em-register.h"

G_BEGIN_DECLS

/* What a quote is told by to those that revise it: "D-1001 B"; "" without a number. g_free. */
char *em_revision_name (const char *number, const char *revision);
/* "B" after "A", "3" after "2", "R3" after "R2", "A" after none. g_free. */
char *em_revision_next (const char *revision);
/* The first quote may be revised when it has been already: the next revision that the register, which may be NULL, does not have. */
void  em_revision_pass (EmRegister *reg, EmQuote *quote);

/* Both turn *file into a draft of today, priced by the shop's present book, with nothing noted after the job. A copy is of no
 * number yet; a revision keeps the number, takes the next revision and remembers which one it came from. */
void  em_revision_make_copy (EmQuoteFile *file);
void  em_revision_make_next (EmQuoteFile *file);

/* Two quotes, each priced by the basis given, their features matched by their id: what takes its time, in any thread. The quotes are
 * borrowed. */
typedef struct EmRevisionPair EmRevisionPair;
EmRevisionPair *em_revision_pair_new  (const EmQuote *old_quote, EmBasis *old_basis, const EmQuote *new_quote, EmBasis *new_basis);
void            em_revision_pair_free (EmRevisionPair *pair);

/* Sentences (char *) of what differs, old to new: features, of very many only how many more there are, then the quote's own numbers and
 * choices; the first is the net price. Empty when nothing does. In the words of the main thread. */
GPtrArray *em_revision_pair_tell (const EmRevisionPair *pair);

G_END_DECLS
