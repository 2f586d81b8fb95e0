/* em-clause: what the items of one sentence say of each other.
 *
 * Marks counts, rows of sizes joined by ×, and the labels that name sizes. Looks only at
 * near items, so its time is linear.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-item.h"

G_BEGIN_DECLS

typedef struct
{
  EmItems *items;
  guint    first, end;   /* items of the sentence */
  guint32 *n_chains;     /* counts rows over the whole text */
} EmClause;

void em_clause_mark_counts (const EmClause *clause);
void em_clause_mark_chains (const EmClause *clause);
void em_clause_mark_labels (const EmClause *clause);

/* A comma, a dash between blanks, "and": parts that may belong to different features. */
gboolean em_item_is_soft_break (const EmItems *items, guint index);
gboolean em_item_is_sign (const EmItems *items, guint index, gunichar sign);
/* A size that measures something: neither count nor reference. */
gboolean em_item_is_measure (const EmItems *items, guint index);

G_END_DECLS
