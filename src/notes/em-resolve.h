/* em-resolve: the unit of each bare number.
 *
 * In this order: its own unit; its row's; the note that governs; its writing (a leading point or a
 * fraction is inch, a decimal comma metric: ASME Y14.5, ISO 129-1); the rest of its repair; the rest of
 * the notes; the language; the quote's units, and then it is asked.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-grammar.h"

G_BEGIN_DECLS

void em_resolve_units (EmGrammar *grammar, EmUnits fallback);

G_END_DECLS
