/* em-metals: which of several metals is of which repair.
 *
 * "CORE 1.2343 50 HRC, PLATE 1.2312": each metal and its hardness are of the repairs whose words name the part that stands before
 * it; "ALL OTHER 1.2343" governs the rest. All of it is only inferred. Private to the grammar.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-grammar.h"

G_BEGIN_DECLS

/* At the end, when all repairs are known. */
void em_metals_hand_out (EmGrammar *grammar);
/* The same for coatings that are told of one part. */
void em_coatings_hand_out (EmGrammar *grammar);

G_END_DECLS
