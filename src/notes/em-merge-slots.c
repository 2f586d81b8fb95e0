/* em-merge-slots: slots told beside the walls, ribs and lands that lie in them.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-remark.h"
#include "em-merge-parts.h"

#include "em-fit.h"
#include "em-slots.h"

enum
{
  SLOT_BACK = 3,         /* repairs from what is told of a slot back to its wall */
  SLOT_WINDOW = 24,      /* items looked over for where a rib lies */
  SLOT_LINES = 2,        /* from a rib to where it lies: its count or its metal may stand between */
  POCKET_MIN = 6         /* "pocket" weighs more */
};

static int
kind_of (const EmItems *items, const EmProto *proto)
{
  int second;

  return em_fit_kind (items, proto, &second, NULL);
}

/* A slot, or a pocket, which may be one. */
static gboolean
is_open_space (const EmSense *noun, gboolean pockets_too)
{
  return noun != NULL && (g_strcmp0 (noun->set_value, "box") == 0 ||
                          (pockets_too && noun->set_field == NULL && noun->value == NULL && noun->weight[RECESS] > POCKET_MIN));
}

/* "Groove: 5 wide, 9 deep" behind a wall: nothing is to be done to it, as it has no length. */
static gboolean
is_groove_of_wall (const EmSense *noun, const EmProto *next, int kind)
{
  /* "is 1.1 wide": the little word tells no wear. */
  const guint32 told = EM_ROLE_WIDTH | EM_ROLE_GAP | EM_ROLE_DEPTH | EM_ROLE_WORN;

  return (kind == SIDEWALL || kind == RIB) && noun != NULL && noun->weight[GROOVE] > 0 && noun->value == NULL && !next->has_damage &&
         !next->has_worn && next->sizes->len >= 1 && (next->roles & (EM_ROLE_WIDTH | EM_ROLE_GAP)) != 0 &&
         (next->sizes->len == 1 || (next->roles & EM_ROLE_DEPTH) != 0) &&
         (next->roles & ~told) == 0;
}

/* "Dovetail angle 60°, slot 19 wide": all that it tells is of the slot. */
static gboolean
is_only_slot (const EmItems *items, const EmProto *next, int kind)
{
  if ((kind != SIDEWALL && kind != RIB) || next->has_damage || next->has_worn)
    return FALSE;
  for (guint i = 0; i < next->sizes->len; i++)
    {
      const EmSize *size = em_item_size (items, g_array_index (next->sizes, guint, i));

      if ((size->roles & EM_ROLE_SLOT) == 0 && size->unit != EM_UNIT_DEGREE)
        return FALSE;
    }
  return TRUE;
}

/* "slot 3 wide, tight": the wall in it is as hard to reach. */
static void
take_access (EmProto *proto, const EmProto *next)
{
  for (guint i = 0; i < next->given->len; i++)
    if (strcmp (g_array_index (next->given, EmGiven, i).field.field, "access") == 0)
      g_array_append_val (proto->given, g_array_index (next->given, EmGiven, i));
}

/* "blade is 11 deep in a pocket, only 5 wide": that and nothing else is told, and a slot is named. */
static gboolean
is_in_slot (EmItems *items, const EmProto *next)
{
  const guint32 told = EM_ROLE_DEPTH | EM_ROLE_WIDTH | EM_ROLE_GAP | EM_ROLE_SLOT | EM_ROLE_WORN;
  gboolean has_slot = FALSE;

  for (guint i = next->first; i <= next->last && i < next->first + SLOT_WINDOW; i++)
    has_slot |= em_slots_is_in (items, i);
  for (guint i = 0; i < next->sizes->len; i++)
    {
      const EmSize *size = em_item_size (items, g_array_index (next->sizes, guint, i));

      if (size->chain != 0 || (size->roles & ~told) != 0 || (size->roles & (EM_ROLE_DEPTH | EM_ROLE_WIDTH | EM_ROLE_GAP | EM_ROLE_SLOT)) == 0)
        return FALSE;
    }
  return has_slot;
}

/* "LAND SITS IN SLOT .300 WIDE": of the land told before only where it lies. */
gboolean
em_merge_try_told_slot (EmItems *items, EmProto *proto, EmProto *next, int kind, int other)
{
  if (kind < 0 || kind != other || next->has_verb || next->has_damage || next->has_worn || next->count_item != EM_NO_ITEM || next->sizes->len == 0 ||
      next->sizes->len > 2 || (proto->roles & EM_ROLE_SLOT) != 0 || em_item (items, next->first)->line > em_item (items, proto->last)->line + SLOT_LINES)
    return FALSE;
  for (guint i = 0; i < next->sizes->len && kind == RIB && proto->sizes->len > 1 && is_in_slot (items, next); i++)
    em_item_size (items, g_array_index (next->sizes, guint, i))->roles |= EM_ROLE_SLOT;
  for (guint i = 0; i < next->sizes->len; i++)
    if ((em_item_size (items, g_array_index (next->sizes, guint, i))->roles & EM_ROLE_SLOT) == 0)
      return FALSE;
  absorb (proto, next);
  proto->roles |= next->roles;
  return TRUE;
}

/* "Slot wall worn, slot .125 wide, wall 2.25 long": of the wall only its slot was told. */
gboolean
em_merge_try_slot_first (EmItems *items, EmProto *proto, EmProto *next, int kind, int other)
{
  if (!next->may_merge || kind != SIDEWALL || other != SIDEWALL || proto->sizes->len == 0 || proto->sizes->len > 2 || next->sizes->len == 0 ||
      (next->roles & EM_ROLE_SLOT) != 0 || proto->count_item != EM_NO_ITEM || line_of (items, proto) != line_of (items, next))
    return FALSE;
  for (guint i = 0; i < proto->sizes->len; i++)
    if ((em_item_size (items, g_array_index (proto->sizes, guint, i))->roles & EM_ROLE_SLOT) == 0)
      return FALSE;
  absorb (proto, next);
  proto->roles |= next->roles;
  proto->has_build |= next->has_build;
  return TRUE;
}

/* "crack at the bottom of the pocket. Pocket is narrow, 6 wide, 15 deep": no length, so that nothing is to be filled. */
static gboolean
is_narrow (const EmProto *proto, const EmProto *next, int kind)
{
  return (kind == GROOVE || kind == EDGE_NICK || kind == WORN_CORNER) && next->sizes->len == 2 && (next->roles & EM_ROLE_WIDTH) != 0 &&
         (next->roles & EM_ROLE_DEPTH) != 0 && (next->roles & EM_ROLE_SLOT) == 0 && !next->has_fill && !next->has_damage && proto->sizes->len > 0;
}

/* "both flanks!" in the line below the slot, "slot 8 wide, 22 deep. 4 off": how many walls. */
static gboolean
is_counted_apart (const EmItems *items, const EmProto *proto, const EmProto *next)
{
  return proto->count_item == EM_NO_ITEM && (em_item (items, next->count_item)->line > line_of (items, next) ||
                                             (next->count_item > next->first && em_item_is_sign (items, next->count_item - 1, '.')));
}

/* "slot itself is 3 wide and is good", "keyway 5 wide next to it" */
static gboolean
is_of_itself (const EmItems *items, const EmProto *next)
{
  for (guint i = next->first; i <= next->last + 2 && i < items->items->len && i < next->first + SLOT_WINDOW && em_item (items, i)->type != EM_ITEM_LINE; i++)
    if (em_remark_has_noise (items, i, "good") || em_item_says (items, i, EM_SAYS_SOUND) != NULL ||
        (next->sizes->len == 1 && em_item_says (items, i, EM_SAYS_NEAR) != NULL))
      return TRUE;
  return FALSE;
}

/* "SIDEWALL 1.5 LG X .3 DEEP, SLOT .125 WIDE": a slot with neither length nor verb is where the repair before it lies. */
gboolean
em_merge_try_slot (EmItems *items, EmProto *proto, EmProto *next, int kind, G_GNUC_UNUSED int other)
{
  const EmSense *noun = next->noun != EM_NO_ITEM ? em_item_says (items, next->noun, EM_SAYS_KIND) : NULL;

  if (!next->may_merge || next->has_verb || is_of_itself (items, next) ||
      (!is_open_space (noun, kind == SIDEWALL || kind == RIB || is_narrow (proto, next, kind)) && !is_groove_of_wall (noun, next, kind) && !is_only_slot (items, next, kind)) ||
      next->sizes->len == 0 ||
      next->sizes->len > 2 || (next->roles & EM_ROLE_LENGTH) != 0 || (next->count_item != EM_NO_ITEM && !is_counted_apart (items, proto, next)))
    return FALSE;
  for (guint i = 0; i < next->sizes->len; i++)
    {
      EmSize *size = em_item_size (items, g_array_index (next->sizes, guint, i));

      size->roles |= size->unit != EM_UNIT_DEGREE ? EM_ROLE_SLOT : 0;
    }
  if (next->count_item != EM_NO_ITEM)
    take_count (proto, next);
  append_uint (proto->sizes, next->sizes);
  take_access (proto, next);
  proto->last = next->last;
  next->is_merged = TRUE;
  return TRUE;
}

/* "Deep slot, 5 wide, 19 deep - left wall scored. Add 0.25 over 33 x 15": a slot that nothing is to be done to is where the wall lies. */
gboolean
em_merge_try_slot_before (EmItems *items, EmProto *proto, EmProto *next, G_GNUC_UNUSED int kind, int other)
{
  const guint32 wear = EM_ROLE_WORN | EM_ROLE_BUILD;
  const EmSense *noun = proto->noun != EM_NO_ITEM ? em_item_says (items, proto->noun, EM_SAYS_KIND) : NULL;

  if (!next->may_merge || proto->has_verb || (!is_open_space (noun, TRUE) && !is_groove_of_wall (noun, proto, other)) || other != SIDEWALL ||
      proto->sizes->len == 0 ||
      proto->sizes->len > 2 || (proto->roles & (EM_ROLE_LENGTH | EM_ROLE_BUILD)) != 0 || proto->count_item != EM_NO_ITEM)
    return FALSE;
  /* "Keyway sloppy, one side worn .012": how much is worn is no size of the slot. */
  for (guint i = 0; i < proto->sizes->len; i++)
    if (!proto->has_worn || (em_item_size (items, g_array_index (proto->sizes, guint, i))->roles & wear) == 0 ||
        (em_item_size (items, g_array_index (proto->sizes, guint, i))->roles & (EM_ROLE_WIDTH | EM_ROLE_GAP | EM_ROLE_DEPTH)) != 0)
      em_item_size (items, g_array_index (proto->sizes, guint, i))->roles |= EM_ROLE_SLOT;
  take_access (next, proto);
  g_array_set_size (proto->given, 0);
  become_with_all (proto, next);
  return TRUE;
}

/* "Flanks of groove: add 0.1, groove 4 wide, 8 deep, 30 long": as long as the wall, and the rest the groove's. */
gboolean
em_merge_try_groove_of_wall (EmItems *items, EmProto *proto, EmProto *next, int kind, G_GNUC_UNUSED int other)
{
  const EmSense *noun = next->noun != EM_NO_ITEM ? em_item_says (items, next->noun, EM_SAYS_KIND) : NULL;
  const guint32 told = EM_ROLE_WIDTH | EM_ROLE_GAP | EM_ROLE_DEPTH | EM_ROLE_LENGTH | EM_ROLE_WORN;

  if (!next->may_merge || noun == NULL || !em_fit_is_slot (noun) || next->has_verb || next->has_damage || next->has_worn ||
      next->sizes->len != 3 || (next->roles & ~told) != 0 || (next->roles & EM_ROLE_LENGTH) == 0 ||
      (next->roles & (EM_ROLE_WIDTH | EM_ROLE_GAP)) == 0 || (next->roles & EM_ROLE_DEPTH) == 0 || (proto->roles & EM_ROLE_LENGTH) != 0 ||
      proto->sizes->len != 1 || next->count_item != EM_NO_ITEM || kind != SIDEWALL ||
      line_of (items, proto) != line_of (items, next))
    return FALSE;
  for (guint i = 0; i < next->sizes->len; i++)
    {
      EmSize *size = em_item_size (items, g_array_index (next->sizes, guint, i));

      if ((size->roles & EM_ROLE_LENGTH) == 0)
        size->roles |= EM_ROLE_SLOT;
    }
  append_uint (proto->sizes, next->sizes);
  take_access (proto, next);
  proto->last = next->last;
  next->is_merged = TRUE;
  return TRUE;
}

/* "Slot beside 3 wide, 8 deep, flank washed 0.1" in a line of its own: the slot is that flank's, and not the wall's in the line before. */
static void
take_own_slots (EmItems *items, const GPtrArray *protos)
{
  for (guint i = 1; i + 1 < protos->len; i++)
    {
      EmProto *before = g_ptr_array_index (protos, i - 1), *slot = g_ptr_array_index (protos, i), *wall = g_ptr_array_index (protos, i + 1);

      if (line_of (items, slot) == line_of (items, wall) && line_of (items, before) != line_of (items, slot))
        em_merge_try_slot_before (items, slot, wall, kind_of (items, slot), kind_of (items, wall));
    }
}

/* A slot that is told behind other repairs is where the nearest wall before it lies. */
void
em_merge_slots (EmItems *items, const GPtrArray *protos)
{
  take_own_slots (items, protos);
  for (guint i = 2; i < protos->len; i++)
    {
      EmProto *slot = g_ptr_array_index (protos, i);

      for (guint back = 2; back <= MIN (i, SLOT_BACK) && !slot->is_merged; back++)
        {
          EmProto *wall = g_ptr_array_index (protos, i - back);

          if (kind_of (items, g_ptr_array_index (protos, i - 1)) == SIDEWALL)
            break;
          if (kind_of (items, wall) == SIDEWALL)
            em_merge_try_slot (items, wall, slot, SIDEWALL, -1);
        }
    }
}
