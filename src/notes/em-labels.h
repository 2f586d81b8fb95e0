/* em-labels: which words of a sentence name which of its sizes.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-clause.h"

G_BEGIN_DECLS

/* "R.03", ".25 LG", "add .010": gives each size of the sentence its roles, once counts and rows are marked. */
void em_labels_mark (const EmClause *clause);

G_END_DECLS
