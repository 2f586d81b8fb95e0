/* em-weak: what has too little to be a repair where others are told whole.
 *
 * Sizes have their units by now.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-grammar.h"

G_BEGIN_DECLS

/* Every size that its kind needs is told. */
gboolean em_weak_is_whole (const EmItems *items, const EmProto *proto);
/* A name without sizes ("valve seat" in a title), or with one that tells no repair of its kind ("pin ⌀12"). */
gboolean em_weak_is       (const EmItems *items, const EmProto *proto);
/* Its words are unused after all; next is told behind it, or NULL. */
void     em_weak_free     (EmItems *items, const EmProto *proto, const EmProto *next);

G_END_DECLS
