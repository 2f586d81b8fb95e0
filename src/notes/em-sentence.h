/* em-sentence: where one sentence of a line ends.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-proto.h"

G_BEGIN_DECLS

/* A semicolon, or a full stop, unless that marks an abbreviation in front of more of the same. */
gboolean em_sentence_ends          (const EmReader *r, guint i);
/* "10 long ea. 2 corners: R.8": the point of the abbreviation before i ends the sentence, too. */
gboolean em_sentence_ends_at_point (const EmReader *r, guint i);

G_END_DECLS
