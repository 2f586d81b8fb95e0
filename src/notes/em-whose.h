/* em-whose: which repairs a sentence means by the names of their parts. Private to the grammar.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-proto.h"

G_BEGIN_DECLS

/* "The die we hone ourselves" below "Die: scratch …" and "Tip: …": some of the repairs, but not all, whose lines have a name that the words round
 * item at have, too; at most max. */
guint em_whose_named (const EmReader *r, guint at, EmProto **out_protos, guint max);

G_END_DECLS
