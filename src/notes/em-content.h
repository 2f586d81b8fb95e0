/* em-content: what a stretch of a sentence holds, and whether that begins a repair.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-proto.h"

G_BEGIN_DECLS

/* What a stretch holds, before anything is used. */
typedef struct
{
  int      best;         /* strongest noun's weight */
  int      best_named;   /* the same of nouns that are neither state nor damage */
  int      best_thing;   /* the same of nouns that are no state of another */
  guint    n_sizes, n_labelled, n_other, n_row;
  guint32  roles;
  gboolean has_noun, has_verb, has_worn, has_damage, has_same, has_given, has_count, has_hurt, has_access;
  gboolean is_slip;      /* every noun is only like a word that is known */
} EmContent;

/* Roles that one repair has once. */
static const guint32 em_once_roles = EM_ROLE_LENGTH | EM_ROLE_WIDTH | EM_ROLE_HEIGHT | EM_ROLE_DEPTH | EM_ROLE_THICKNESS | EM_ROLE_AREA;

EmContent em_content_weigh          (const EmReader *r, guint first, guint end);
gboolean  em_content_begins_repair  (const EmReader *r, const EmContent *content, const EmProto *before, guint first, guint end);
/* What became of the thing before, and how much is wanted on it for that. */
gboolean  em_content_is_why         (const EmReader *r, const EmContent *content, const EmProto *before, guint first);
/* An edge told in a sentence of its own behind what has no radius. */
gboolean  em_content_is_edge_behind (const EmReader *r, const EmContent *content, const EmProto *before, guint first);
/* "FACE LOW 0.15" and below it "32 X 14": the one row that the face or wall lacks. */
gboolean  em_content_fills_plan     (const EmReader *r, const EmContent *content, const EmProto *before);
/* What tells sizes of something though no noun of a repair is in it. */
gboolean  em_content_tells_unnamed  (const EmReader *r, const EmContent *content, guint first, guint end);

/* "SHUTOFF DRAFT 7°": one size, and that how steep something is. */
gboolean em_content_is_draft (const EmReader *r, const EmContent *content, guint first, guint end);

G_END_DECLS
