/* em-unclear: damage that is told, and not what it is. Private to the grammar.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-content.h"

G_BEGIN_DECLS

/* "DAMAGE AT GATE, SEE PHOTO", "something wrong on the face, 5 x 3": a repair whose kind is to be asked. */
gboolean em_unclear_tells (const EmReader *r, const EmContent *content, guint first, guint end);
/* The proposal has none of the kinds that its words have. */
void     em_unclear_make  (EmProto *proto);

G_END_DECLS
