/* em-aside: what looks like a repair and only heads others, or tells how large the part of another is.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-aside.h"

#include "em-fit.h"

#include <string.h>

/* The sense of its noun, if that is a thing and no damage; NULL: none. */
static const EmSense *
thing_of (const EmItems *items, const EmProto *proto)
{
  const EmSense *noun = proto->noun != EM_NO_ITEM ? em_item_says (items, proto->noun, EM_SAYS_KIND) : NULL;

  return noun != NULL && noun->value == NULL ? noun : NULL;
}

/* Nothing is told of it but its name and that something is to be done. */
static gboolean
is_bare (const EmProto *proto)
{
  return !proto->has_damage && !proto->has_worn && !proto->is_same && proto->count_item == EM_NO_ITEM && proto->chamfer_item == EM_NO_ITEM &&
         proto->kind_reason == NULL && !proto->is_one_of;
}

/* Nothing but marks stands between i and the end of its line. */
static gboolean
ends_line (const EmItems *items, guint i)
{
  while (i < items->items->len && em_item (items, i)->type == EM_ITEM_SIGN)
    i++;
  return i >= items->items->len || em_item (items, i)->type == EM_ITEM_LINE;
}

/* "Core pins for repair" over the lines that tell of each. */
static gboolean
is_title (const EmItems *items, const GPtrArray *protos, guint i)
{
  const EmProto *proto = g_ptr_array_index (protos, i), *next = i + 1 < protos->len ? g_ptr_array_index (protos, i + 1) : NULL;

  if (next == NULL || next->is_merged || thing_of (items, proto) == NULL || !is_bare (proto) || proto->sizes->len > 0 || !proto->has_verb ||
      proto->given->len > 0 || next->sizes->len == 0 || em_item (items, next->first)->line <= em_item (items, proto->last)->line)
    return FALSE;
  if ((proto->first > 0 && em_item (items, proto->first - 1)->type != EM_ITEM_LINE) || !ends_line (items, proto->last + 1))
    return FALSE;
  return em_fit_kind (items, proto, &(int) { 0 }, NULL) == em_fit_kind (items, next, &(int) { 0 }, NULL);
}

/* "Chip on the blade, 1.5 long. Blade 1.0 thick.": how thick that is, and nothing that is to be done. Its size stays visible. */
static gboolean
is_thickness (const EmItems *items, const GPtrArray *protos, guint i)
{
  const EmProto *proto = g_ptr_array_index (protos, i);
  const EmSense *noun = thing_of (items, proto);

  /* "Rib 1.0 thick. Tip short 0.6": the next may be more of it. */
  if (i == 0 || (i + 1 < protos->len && ((const EmProto *) g_ptr_array_index (protos, i + 1))->may_merge) || noun == NULL || noun->weight[RIB] + noun->weight[SIDEWALL] == 0 || noun->weight[EDGE_NICK] > 0 || !is_bare (proto) || proto->has_verb ||
      proto->sizes->len != 1 || proto->given->len > 0)
    return FALSE;
  /* "is" has a role of its own; "wall was .09" has no other. */
  return ((em_item_size (items, g_array_index (proto->sizes, guint, 0))->roles & (EM_ROLE_THICKNESS | EM_ROLE_WIDTH)) != 0 ||
          em_item (items, proto->first)->line == em_item (items, ((const EmProto *) g_ptr_array_index (protos, i - 1))->last)->line) &&
         (em_item_size (items, g_array_index (proto->sizes, guint, 0))->roles & ~(guint32) (EM_ROLE_THICKNESS | EM_ROLE_WIDTH | EM_ROLE_WORN | EM_ROLE_FINISHED)) == 0 &&
         ((const EmProto *) g_ptr_array_index (protos, i - 1))->sizes->len > 1;
}

/* "Blade's 1.5 x 8" beside a whole nick of it: how large the part is. */
static gboolean
is_size_of_blade (const EmItems *items, const GPtrArray *protos, guint i)
{
  const EmProto *proto = g_ptr_array_index (protos, i), *other = i > 0 ? g_ptr_array_index (protos, i - 1) : i + 1 < protos->len ? g_ptr_array_index (protos, i + 1) : NULL;
  const EmSense *noun = thing_of (items, proto);
  guint n_row = 0;

  if (other == NULL || other->is_merged || noun == NULL || noun->weight[RIB] == 0 || noun->weight[EDGE_NICK] > 0 || !is_bare (proto) || proto->has_verb ||
      proto->sizes->len != 2 || proto->given->len > 0 || other->sizes->len < 3 || em_fit_kind (items, other, &(int) { 0 }, NULL) != EDGE_NICK)
    return FALSE;
  for (guint k = 0; k < proto->sizes->len; k++)
    n_row += em_item_size (items, g_array_index (proto->sizes, guint, k))->chain != 0;
  return n_row == 2 && (em_item_says (items, proto->noun + 1, EM_SAYS_GLUE) != NULL || em_item (items, proto->noun + 1)->type == EM_ITEM_SIZE);
}

/* "gate ⌀.062 washed to ⌀.075, land .040": one size of a flat behind a whole repair, and nothing that is to be done. It stays visible. */
static gboolean
is_one_size_of_flat (const EmItems *items, const GPtrArray *protos, guint i)
{
  const EmProto *proto = g_ptr_array_index (protos, i), *before = i > 0 ? g_ptr_array_index (protos, i - 1) : NULL;
  const EmSense *noun = thing_of (items, proto);
  const guint32 plan = EM_ROLE_LENGTH | EM_ROLE_WIDTH | EM_ROLE_HEIGHT | EM_ROLE_DEPTH;

  if (before == NULL || before->sizes->len < 2 || noun == NULL || noun->weight[FACE] == 0 || noun->weight[EDGE_NICK] + noun->weight[PIN] + noun->weight[BORE] > 0 ||
      !is_bare (proto) || proto->has_verb || proto->sizes->len != 1 || (i + 1 < protos->len && ((const EmProto *) g_ptr_array_index (protos, i + 1))->may_merge) ||
      em_item (items, proto->first)->line != em_item (items, before->last)->line)
    return FALSE;
  return (em_item_size (items, g_array_index (proto->sizes, guint, 0))->roles & ~plan) == 0;
}

static const EmProto *
next_of (const GPtrArray *protos, guint i)
{
  return i + 1 < protos->len ? g_ptr_array_index (protos, i + 1) : NULL;
}

/* "Ejector pin hole oversize. Pin is 3/16, hole is .1905": the pin that runs in the hole, and nothing that is wrong with it. */
static gboolean
is_pin_of_hole (const EmItems *items, const GPtrArray *protos, guint i)
{
  const EmProto *proto = g_ptr_array_index (protos, i), *next = next_of (protos, i);
  const EmSense *noun = thing_of (items, proto), *other = next != NULL ? thing_of (items, next) : NULL;

  return noun != NULL && other != NULL && noun->weight[PIN] > 0 && noun->weight[BORE] == 0 && other->weight[BORE] > 0 && is_bare (proto) && !proto->has_verb &&
         proto->sizes->len == 1 && next->sizes->len > 1 && em_item_says (items, proto->noun + 1, EM_SAYS_GLUE) != NULL &&
         em_item (items, proto->first)->line == em_item (items, next->first)->line;
}

/* "Ejector pin hole oversize. … hole is .1905, need it .1876": the same thing is told with its sizes in the sentences behind. */
static gboolean
is_told_later (const EmItems *items, const GPtrArray *protos, guint i)
{
  const EmProto *proto = g_ptr_array_index (protos, i);
  const EmSense *noun = thing_of (items, proto);

  if (noun == NULL || noun->weight[BORE] == 0 || proto->sizes->len > 0 || proto->count_item != EM_NO_ITEM || proto->given->len > 0 || proto->has_damage)
    return FALSE;
  for (guint k = i + 1; k < protos->len && k <= i + 2; k++)
    {
      const EmProto *later = g_ptr_array_index (protos, k);
      const EmSense *same = thing_of (items, later);

      if (same != NULL && same->weight[BORE] > 0 && later->sizes->len > 1 && em_item (items, later->first)->line == em_item (items, proto->first)->line)
        return TRUE;
    }
  return FALSE;
}

/* Every size of it has a role, and none another than these. */
static gboolean
has_only (const EmItems *items, const EmProto *proto, guint32 allowed)
{
  for (guint i = 0; i < proto->sizes->len; i++)
    {
      guint32 roles = em_item_size (items, g_array_index (proto->sizes, guint, i))->roles;

      if ((roles & ~(guint32) (EM_ROLE_WORN | EM_ROLE_FINISHED)) == 0 || (roles & ~allowed) != 0)
        return FALSE;
    }
  return proto->sizes->len > 0;
}

/* "Corner worn R.3, 25 long. The slot itself is 3 wide and good", "KEYWAY .188 WIDE NEXT TO IT": how large a slot is that lies there, too few
 * sizes for one to be filled, and nothing that is to be done. */
static gboolean
is_slot_there (const EmItems *items, const GPtrArray *protos, guint i)
{
  const EmProto *proto = g_ptr_array_index (protos, i), *before = i > 0 ? g_ptr_array_index (protos, i - 1) : NULL;
  const EmSense *noun = thing_of (items, proto);

  return before != NULL && before->sizes->len > 1 && noun != NULL && noun->weight[RECESS] > 0 && g_strcmp0 (noun->set_value, "box") == 0 && is_bare (proto) &&
         !proto->has_verb && !proto->has_fill && proto->sizes->len <= 2 && next_of (protos, i) == NULL &&
         (proto->roles & EM_ROLE_LENGTH) == 0 && has_only (items, proto, EM_ROLE_WIDTH | EM_ROLE_DEPTH | EM_ROLE_GAP | EM_ROLE_WORN | EM_ROLE_FINISHED | EM_ROLE_SLOT);
}

gboolean
em_aside_is (const EmItems *items, const GPtrArray *protos, guint i)
{
  return is_title (items, protos, i) || is_thickness (items, protos, i) || is_one_size_of_flat (items, protos, i) ||
         is_pin_of_hole (items, protos, i) || is_told_later (items, protos, i) || is_slot_there (items, protos, i) || is_size_of_blade (items, protos, i);
}
