/* em-name: numbers and letters that name a thing and measure nothing.
 *
 * Looks only at near items.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-clause.h"

G_BEGIN_DECLS

/* "Slide 3:", "insert B7", "on cav 5": the number or letter says which. */
gboolean em_name_is      (const EmClause *clause, guint i);
/* The size at i is the number of the leg of a part that is named right before it: "leg 1 worn". */
gboolean em_name_is_leg (const EmClause *clause, guint i);
/* "NAK80", "555-0142", "14:20", "12 hrs": the size at i is part of a name, a number of something, a time. */
gboolean em_name_is_code  (const EmClause *clause, guint i);
/* "9:40": a time of day, whose minutes are the second item behind it. */
gboolean em_name_is_clock (const EmClause *clause, guint i);

/* "2ND WEIR": which one; its ending is the item behind. */
gboolean em_name_is_ordinal (const EmClause *clause, guint i);

/* "12 May", "14th": the number of a day, behind which its month or an ending stands. */
gboolean em_name_is_day (const EmItems *items, guint i);

/* "Cheers, Nick": a word for damage that is somebody's name is none that the lexicon knows. */
void     em_name_read_signatures (EmItems *items);

G_END_DECLS
