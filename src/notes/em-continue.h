/* em-continue: whether a stretch that begins no repair says more of the one before it.
 *
 * Private to the grammar.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-content.h"

G_BEGIN_DECLS

/* The stretch from first, without a noun of its own, says more of the current proposal. */
gboolean em_continue_is_more (const EmReader *r, const EmContent *content, guint first);

/* "FLANKS 30°, ENDS TAPERED", "- ends rounded" in the line below a dam: its shape. */
gboolean em_continue_is_shape       (const EmReader *r, const EmContent *content, guint first, guint end);
/* "- 85 long", "- 6 wide" below "new dams:": one more size of the repair begun in the line before. */
gboolean em_continue_is_listed_size (const EmReader *r, const EmContent *content);

G_END_DECLS
