/* em-code: the number of a tool that stands alone.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-grammar.h"

G_BEGIN_DECLS

/* Takes the only code at the note's head for the tool's number where no other was told. */
void em_code_read_alone (EmGrammar *grammar);

G_END_DECLS
