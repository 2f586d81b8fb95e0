/* em-unused: the words that a reading could not use.
 *
 * Every such stretch is kept, so that it can be shown. What an office would not look up, talk of how the damage came and what
 * lies about, is minor; names, dates, wishes, prices, states and instructions are not. A size left over within a repair's words
 * is a doubt about the repair.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-item.h"

G_BEGIN_DECLS

/* After all fields are written: fills result->unused, and marks as inferred what left-over sizes throw doubt on. Linear. */
void em_unused_write (EmItems *items, EmReadResult *result);

G_END_DECLS
