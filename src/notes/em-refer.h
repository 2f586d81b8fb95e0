/* em-refer: what refers to a repair told before, and what does not though it stands behind it. Private to the grammar.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-content.h"

G_BEGIN_DECLS

/* The stretch from first, a point of its own, says more of the current repair. */
gboolean       em_refer_continues_jotted (const EmReader *r, const EmContent *content, guint first);
/* "Die A  ⌀10": the line is of another part. */
gboolean       em_refer_names_other_part (const EmReader *r, guint first);
/* "Twelve molds, all the same": "same" is said of tools. */
gboolean       em_refer_counts_tools     (const EmReader *r, guint first, guint end);
/* "as item 1": the number or letter behind the words for "same", or in them; 0: none. */
guint64        em_refer_head             (const EmReader *r, guint first, guint end);
/* "stock 0.5 on items 1 and 2", "2 mm from pos. 3": the repairs that words near item at name by their numbers, at most max. */
guint          em_refer_items            (const EmReader *r, guint at, EmProto **out_protos, guint max);
/* "grain next to B", "thread on 1 and 3": those that a sentence without a repair of its own names by no more than that. */
guint          em_refer_codes            (const EmReader *r, guint at, EmProto **out_protos, guint max);
/* "rib hard to get at": the one repair told whose noun stands from first to end; before where none or several have it. */
EmProto       *em_refer_named            (const EmReader *r, EmProto *before, guint first, guint end);
/* The repair that has that number or letter; before where none has. */
const EmProto *em_refer_repair           (const EmReader *r, const EmProto *before, guint64 head);
/* The repair with that number or letter, or NULL. */
EmProto *em_refer_with               (const EmReader *r, guint64 head);

G_END_DECLS
