/* em-item-parts: what the files of em-item share.
 *
 * Private to em-item.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-item.h"

G_BEGIN_DECLS

typedef struct
{
  EmItems *items;
  GArray  *tokens;
  int      language; /* of most of the words; −1: of none */
} EmItemBuilder;

/* The token at an index; past the last one, the end of a line. */
const EmToken  *em_builder_token       (const EmItemBuilder *b, guint at);
gboolean        em_builder_is_sign     (const EmItemBuilder *b, guint at, gunichar sign);
/* No blank before it. */
gboolean        em_builder_is_glued    (const EmItemBuilder *b, guint at);
gboolean        em_builder_is_number   (const EmItemBuilder *b, guint at);
/* The longest phrase that begins at a token, within its column; *out_n: of how many tokens. NULL: none. */
const EmPhrase *em_builder_match       (const EmItemBuilder *b, guint at, guint *out_n);

/* Each reads at a token and returns the one behind what it read; at itself: nothing was. */
guint           em_builder_read_number (const EmItemBuilder *b, guint at, EmSize *size);
guint           em_builder_read_unit   (const EmItemBuilder *b, guint at, EmUnit *out_unit);
/* "to 0.6", "/.312": the other end of a range or the other limit. */
guint           em_builder_read_second (const EmItemBuilder *b, guint at, EmSize *size);
/* "to 0.6", "bis 34,90": the rest of a range told in words, behind its first size. */
guint           em_builder_read_range  (const EmItemBuilder *b, guint at, EmSize *size);
/* "°C", "F" behind a number: the token after it, or at. A temperature is no size. */
guint           em_builder_read_temperature (const EmItemBuilder *b, guint at, const EmSize *size);
guint           em_builder_read_size   (EmItemBuilder *b, guint at, EmSize *size);
/* A label at a token that may stand behind a range: "deep". */
gboolean        em_builder_is_ranged_after (const EmItemBuilder *b, guint at);
/* "M8x1.25": no size. */
guint           em_builder_skip_thread (const EmItemBuilder *b, guint at);

G_END_DECLS
