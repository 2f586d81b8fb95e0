/* em-counts: how many of a repair there are.
 *
 * A count is loose where nothing beside it ("X", "PLCS", "QTY") says that it is one. A second count multiplies, adds to or
 * leaves the first, as its words say. Private to the grammar.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-proto.h"

G_BEGIN_DECLS

/* The whole number at i that was marked as a count. */
void     em_counts_add_number (const EmReader *r, EmProto *proto, guint i);
/* What a word at i may count: "three", "the same on the other half", "cavities 2 and 5", "both sides". */
void     em_counts_add_word   (const EmReader *r, EmProto *proto, guint i);
/* A number told apart from the repair; words_too: a number word counts, too. */
void     em_counts_add_loose  (const EmReader *r, EmProto *proto, guint i, gboolean words_too);
/* How many "two of them" are. */
void     em_counts_add_those  (const EmReader *r, EmProto *proto, guint first, guint end);
/* "Same on the other half": twice in all, which the words only let guess. */
void     em_counts_add_same   (const EmReader *r, EmProto *proto, guint first, guint end);
/* The number at i that counts, in digits or a word; NaN: none. */
double   em_counts_number_at   (const EmReader *r, guint i);
/* "per cavity", "in each". */
gboolean em_counts_is_per_part (const EmReader *r, guint i);
/* "BOTH SIDES" in a part of its own, or a sentence: twice. */
gboolean em_counts_is_both    (const EmReader *r, guint i);

/* ", and the same again on the other half": once more. */
void     em_counts_add_same_again (const EmReader *r, EmProto *proto, guint i);
/* "cavities 2 and 5", behind the part at i: as many as are numbered. */
void     em_counts_add_numbered   (const EmReader *r, EmProto *proto, guint i);
/* Counts, though nothing beside it says that it does. */
void     em_counts_guess      (const EmReader *r, EmProto *proto, guint i, double count);
/* "Two of the cores", "each has a dent". */
void     em_counts_add_told   (const EmReader *r, EmProto *proto, guint i);
/* "both flanks", once all of a wall was told: each of them is one. */
void     em_counts_add_sides  (const EmReader *r, EmProto *proto, guint first, guint end);
/* "sur les deux", "an beiden", "on the two": leads to parts that have it, and not "between the two". */
gboolean em_counts_is_led     (const EmReader *r, guint i);
/* "three more": besides the one told before. */
gboolean em_counts_says_more  (const EmReader *r, guint i);
/* "2 of the cores": the number at i counts parts; items of the sentence. */
gboolean em_counts_is_some_of (const EmItems *items, guint first, guint end, guint i);

/* "cavities 2 and 5", "Nest 1 u. 3": how many parts are numbered behind part; *out_end is the item after them. */
guint  em_counts_numbered (const EmReader *reader, guint part, guint *out_end);

G_END_DECLS
