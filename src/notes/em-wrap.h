/* em-wrap: line ends that only wrap the sentences of a letter. Private to em-item.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-lexicon.h"

G_BEGIN_DECLS

/* Takes the ends of lines out of the named tokens where a sentence of prose goes on in the next line. Time is linear in their number. */
void em_wrap_join (const EmLexicon *lexicon, int language, const char *text, GArray *tokens);

G_END_DECLS
