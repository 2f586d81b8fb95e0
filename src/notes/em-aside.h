/* em-aside: what looks like a repair and only heads others, or tells how large the part of another is.
 *
 * Sizes have their units by now.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-grammar.h"

G_BEGIN_DECLS

/* The proposal i of protos is no repair by itself. */
gboolean em_aside_is (const EmItems *items, const GPtrArray *protos, guint i);

G_END_DECLS
