/* em-said: what only says more of the repair before it. Private to the grammar.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-content.h"

G_BEGIN_DECLS

/* Without a size: how many, where, "the same". TRUE: taken. */
gboolean em_said_take (EmReader *r, const EmContent *content, EmProto *before, gboolean is_repair, guint first, guint end);

/* Gives the one of several before what was said of both: "both 0.05 deep". */
void     em_said_share_both (const EmReader *r, const EmProto *proto, EmProto *before);

G_END_DECLS
