/* em-rows: how many a table's row says there are, for the one repair of the row.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-grammar.h"

G_BEGIN_DECLS

/* Numbers alone in columns of counts count the only repair of their row. Linear. */
void em_rows_hand_out (EmGrammar *grammar);

G_END_DECLS
