/* em-beside: how far what must be spared lies from a repair. Private to the grammar.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-govern.h"
#include "em-proto.h"

G_BEGIN_DECLS

/* "Cooling channel 4 mm below", "SCREW HOLE DIA 6 AT 5 MM", "TEXTURE 2 FROM DENT": marks the distance, and appends the thing to loose (EmLoose),
 * before the notes that govern are looked for. */
void em_beside_read (EmReader *r, GArray *loose);

G_END_DECLS
