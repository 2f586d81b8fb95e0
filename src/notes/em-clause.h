/* em-clause: what the items of one sentence say of each other.
 *
 * Marks counts and rows of sizes joined by ×. Looks only at near items, so its time is linear.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-item.h"

G_BEGIN_DECLS

/* "per", in the languages there are. */
gboolean em_item_is_per (const EmItems *items, guint index);
/* "each", "chacun", which need no word for what each is of behind them. */
gboolean em_item_is_each_alone (const EmItems *items, guint index);

typedef struct
{
  EmItems *items;
  guint    first, end;   /* items of the sentence */
  guint32 *n_chains;     /* counts rows over the whole text */
} EmClause;

/* Roles that say what a size measures, as against what is done with it. */
static const guint32 em_dimension_roles =
  EM_ROLE_LENGTH | EM_ROLE_WIDTH | EM_ROLE_HEIGHT | EM_ROLE_DEPTH | EM_ROLE_THICKNESS | EM_ROLE_DIAMETER | EM_ROLE_RADIUS |
  EM_ROLE_SPHERE | EM_ROLE_LEG | EM_ROLE_GAP | EM_ROLE_DRAFT | EM_ROLE_STOCK | EM_ROLE_CLEARANCE | EM_ROLE_AREA |
  EM_ROLE_ARC | EM_ROLE_HARDNESS | EM_ROLE_ANGLE | EM_ROLE_SQUARE;

/* Roles of sizes that no angle has. */
static const guint32 em_length_roles = EM_ROLE_LENGTH | EM_ROLE_WIDTH | EM_ROLE_HEIGHT | EM_ROLE_DEPTH | EM_ROLE_THICKNESS |
                                       EM_ROLE_DIAMETER | EM_ROLE_RADIUS;

/* No blank before it. */
static inline gboolean
em_item_is_glued (const EmItems *items, guint index)
{
  return (em_item (items, index)->flags & EM_TOKEN_GLUED) != 0;
}

/* Within the sentence only; any i. */
static inline gboolean
em_clause_says (const EmClause *clause, guint i, EmSays what)
{
  return i >= clause->first && i < clause->end && em_item_says (clause->items, i, what) != NULL;
}

static inline gboolean
em_clause_is_size (const EmClause *clause, guint i)
{
  return i >= clause->first && i < clause->end && em_item (clause->items, i)->type == EM_ITEM_SIZE;
}

/* The word "all". */
gboolean em_item_is_all (const EmItems *items, guint index);
/* "ANNULAR FACE OD 2.20", "edge of ring ID 42": the word at i is how large the face or edge before it is, no shaft or bore. */
gboolean em_item_is_of_face (const EmItems *items, guint index);
/* Uses up sizes that say the ones before them in the other unit. */
void em_clause_mark_dual   (const EmClause *clause);
void em_clause_mark_counts (const EmClause *clause);
void em_clause_mark_chains (const EmClause *clause);
/* "je 2 pro Einsatz", "about 6", "(all 6)", "2 of the cores": the whole number at i counts. */
gboolean em_clause_counts_some (const EmClause *clause, guint i);
/* "between 10 and 2 o'clock": the number at i is an hour, and says where. */
gboolean em_clause_is_on_dial (const EmClause *clause, guint i);
/* A number or word that only names something: read, and nothing is made of it. */
void em_clause_use_name    (const EmClause *clause, guint i);

/* Between the sizes of a row, as Spanish "3 por 1 por 1" has it: there the word names no size. */
static inline gboolean
em_clause_is_times_of_row (const EmClause *clause, guint i)
{
  return i < clause->end && em_item (clause->items, i)->is_used && em_clause_says (clause, i, EM_SAYS_TIMES);
}

/* What a word at i says of the size it stands before or behind; NULL: nothing, or past the end. */
const EmSense *em_clause_label_at (const EmClause *clause, guint i, EmLabelPlace place);

/* "full length (85)": the size at i, alone in brackets, is what the word before them names. */
gboolean em_clause_is_after_name (const EmClause *c, guint i);

/* Index of the item before i that is no colon, equals sign or full stop; the clause's end when none. */
guint    em_clause_before (const EmClause *clause, guint i);
/* A comma, a dash between blanks, "and": parts that may belong to different features. */
gboolean em_item_is_soft_break (const EmItems *items, guint index);
gboolean em_item_is_sign (const EmItems *items, guint index, gunichar sign);
/* "core 3 edge", "Schieber 1/2 Kante": a bare number behind a part, or behind another of its numbers, names it when a noun follows. */
gboolean em_item_is_part_number (const EmItems *items, guint index);
/* "1 Kante R0,2": a few of the noun behind it, at the head of a part. */
gboolean em_item_is_few_of (const EmItems *items, guint index);
/* A size that measures something: neither count nor reference. */
gboolean em_item_is_measure (const EmItems *items, guint index);

G_END_DECLS
