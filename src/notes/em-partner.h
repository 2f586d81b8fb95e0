/* em-partner: the new part that fits what is mended. Private to the grammar.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-content.h"

G_BEGIN_DECLS

/* "New pins are 4 dia" behind a bore, "die neue Buchse hat 20,02" behind a pillar: no repair. Its size is kept from all repairs and stays to be seen.
 * TRUE: taken. */
gboolean em_partner_take (EmReader *r, const EmContent *content, const EmProto *before, guint first, guint end);

G_END_DECLS
