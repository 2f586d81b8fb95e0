/* em-merge-parts: what the tries to merge two proposals share. Private to them.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-merge.h"

#include <string.h>

G_BEGIN_DECLS

static inline void
append_uint (GArray *to, const GArray *from)
{
  g_array_append_vals (to, from->data, from->len);
}

static inline void
take_count (EmProto *proto, const EmProto *next)
{
  proto->count = next->count;
  proto->count_item = next->count_item;
  proto->is_count_loose = next->is_count_loose;
}

/* What next says is said of proto. */
static inline void
absorb (EmProto *proto, EmProto *next)
{
  append_uint (proto->sizes, next->sizes);
  append_uint (proto->given, next->given);
  if (proto->count_item == EM_NO_ITEM)
    take_count (proto, next);
  proto->last = next->last;
  next->is_merged = TRUE;
}

static inline guint32
line_of (const EmItems *items, const EmProto *proto)
{
  return em_item (items, proto->first)->line;
}

/* Takes over what next is, in the place of what proto only named. */
static inline void
become (EmProto *proto, EmProto *next)
{
  memcpy (proto->weight, next->weight, sizeof proto->weight);
  proto->noun = next->noun;
  proto->noun_weight = next->noun_weight;
  proto->kinds = next->kinds;
  proto->kind_reason = "from-words";
  proto->has_verb |= next->has_verb;
  proto->has_build |= next->has_build;
  proto->has_worn |= next->has_worn;
  proto->last = next->last;
  next->is_merged = TRUE;
}

/* The same with all that next says beside what proto says. */
static inline void
become_with_all (EmProto *proto, EmProto *next)
{
  append_uint (proto->sizes, next->sizes);
  append_uint (proto->given, next->given);
  take_count (proto, next);
  become (proto, next);
}

/* The tries of slots: each has the likeliest kinds of both proposals. TRUE: next was taken. */
gboolean em_merge_try_told_slot (EmItems *items, EmProto *proto, EmProto *next, int kind, int other);
gboolean em_merge_try_slot_first (EmItems *items, EmProto *proto, EmProto *next, int kind, int other);
gboolean em_merge_try_groove_of_wall (EmItems *items, EmProto *proto, EmProto *next, int kind, int other);
gboolean em_merge_try_slot_before (EmItems *items, EmProto *proto, EmProto *next, int kind, int other);
gboolean em_merge_try_slot (EmItems *items, EmProto *proto, EmProto *next, int kind, int other);

G_END_DECLS
