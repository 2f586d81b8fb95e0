/* em-weak: what has too little to be a repair where others are told whole.
 *
 * Sizes have their units by now.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-grammar.h"

G_BEGIN_DECLS

/* Takes out of protos, where one is told whole, what has too little: a name without sizes ("valve seat" in a title), or with one that tells no repair
 * of its kind ("pin ⌀12"). What was said of it beside is said of the repair that it names, or of the one before it; its words are unused after all. */
void em_weak_leave_out (EmItems *items, GPtrArray *protos);

G_END_DECLS
