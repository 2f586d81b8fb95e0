/* em-numbered: lines that begin with the same word and a number that goes up.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-item.h"

G_BEGIN_DECLS

/* "Kav. 3  Kratzer 15 lang" and below it "Kav. 7  Ausbruch …": the numbers say which, and count nothing. Marks them as used names. */
void em_numbered_read (EmItems *items);

G_END_DECLS
