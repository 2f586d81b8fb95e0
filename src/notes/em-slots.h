/* em-slots: the slots that walls and ribs lie in. Private to the grammar.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-proto.h"

G_BEGIN_DECLS

/* Marks the sizes of the sentence that are a slot's. */
void em_slots_mark (EmReader *r);

/* "in a slot", and not the name of one alone. */
gboolean em_slots_is_in (const EmItems *items, guint i);

G_END_DECLS
