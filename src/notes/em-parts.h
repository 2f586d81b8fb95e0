/* em-parts: of how many equal parts a note is, told apart from its repairs.
 *
 * "CORE PINS (8 PCS)" above the repairs counts each of them; "cavities 1-4" only those that are told "per cavity"; "TYP 4 CAVS
 * EA ITEM" below counts those above it. All of these are only inferred. Private to the grammar.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-proto.h"

G_BEGIN_DECLS

/* What counts them tells the first and the last: "cav 1-4". */
gboolean em_parts_is_range  (const EmReader *r, const EmParts *parts);
/* Before the sentence is read: "4 cavities", "cav 1-4". */
void     em_parts_note      (EmReader *r);
/* "Item B is on all 6 cores", "Qty nozzles: 4": so many of the repair that is named. TRUE: the sentence says no more than that. */
gboolean em_parts_count_named (const EmReader *r);
/* "All three near texture, 2 mm": what the current repair was given from first_given on is the others', too. */
void     em_parts_share     (const EmReader *r, guint first_given);
/* "TYP 4 CAVS EA ITEM": so many of each repair told before. TRUE: the sentence says no more than that. */
gboolean em_parts_count_all (const EmReader *r);
/* A line that no repair came from, which may be a title. */
void     em_parts_read      (EmReader *r);
/* "8 sleeves." behind several repairs: the others have as many as proto, which was given its count here. */
void     em_parts_spread    (const EmReader *r, const EmProto *proto);
/* The end of a line: what "Cav 1-4:" heads counts none beyond it. */
void     em_parts_end_line  (EmReader *r);
/* A blank line: what is counted above repairs counts none beyond it. */
void     em_parts_end       (EmReader *r);
/* At the end: counts by the parts told above each. */
void     em_parts_multiply  (EmReader *r);

G_END_DECLS
