/* em-where: what only says where a repair told before lies. Private to the grammar.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-proto.h"

G_BEGIN_DECLS

/* "POCKET .090 WIDE X .450 DEEP", "They sit in a pocket 14 deep and 5 wide, hard to get in": a sentence that tells only the slot of a repair
 * told before, or how it is reached. TRUE: taken. */
gboolean em_where_take (EmReader *r);

G_END_DECLS
