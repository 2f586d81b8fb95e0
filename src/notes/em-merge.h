/* em-merge: which proposals are one repair told in parts, or only say where the next one is.
 *
 * Sizes have their units by now.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-grammar.h"

G_BEGIN_DECLS

/* Takes next into proto when it tells more of the same repair; FALSE: it does not. */
gboolean em_merge_take        (EmItems *items, EmProto *proto, EmProto *next);
/* Before the others: slots that are told some repairs behind their wall. */
void     em_merge_slots       (EmItems *items, const GPtrArray *protos);
/* proto names only where next, the repair after it, is. Its noun is unused again. */
gboolean em_merge_is_place_of (EmItems *items, const EmProto *proto, const EmProto *next);
/* "The shaft is 240 long", "the land is 600 long, 2 wide": no more than how large it is, and nothing that is to be done. Its noun is unused again. */
gboolean em_merge_is_only_told (EmItems *items, const EmProto *proto);

G_END_DECLS
