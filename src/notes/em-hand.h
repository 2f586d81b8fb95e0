/* em-hand: what governs reaches its repair, or all. Private to the grammar.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-govern.h"
#include "em-proto.h"

G_BEGIN_DECLS

/* To the repair that its words name, to proto, which was told in the same part of the sentence (NULL: none was), or to all. */
void em_hand_out (EmReader *r, const EmLoose *loose, EmProto *proto);

G_END_DECLS
