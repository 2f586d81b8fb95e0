/* em-slots: the slots that walls and ribs lie in.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-slots.h"

#include <string.h>

enum
{
  HEAD_NOUN = 3,   /* a noun of this weight may begin another repair */
  LEAD_WINDOW = 9,   /* items from "in" to the slot, with its sizes between */
  CELL_MAX = 8   /* items of a cell of a table */
};

gboolean
em_slots_is_in (const EmItems *items, guint i)
{
  const EmSense *slot = em_item_says (items, i, EM_SAYS_SLOT);

  return slot != NULL && slot->value == NULL;
}

static gboolean
is_slot_noun (const EmReader *r, guint i)
{
  const EmSense *noun = em_item_says (r->items, i, EM_SAYS_KIND);
  const char *text = r->items->text + em_item (r->items, i)->start;

  /* "1/8 wide slot wall" */
  return noun != NULL && (g_strcmp0 (noun->set_value, "box") == 0 ||
                          (noun->weight[SIDEWALL] > 0 && g_ascii_strncasecmp (text, "slot ", 5) == 0));
}

/* "wall (slot 2.2 wide and 11 deep): 26 long", "wall of the slot (4 wide, 18 deep): 25 long" */
static void
mark_slot_in_brackets (EmReader *r, guint slot)
{
  em_item (r->items, slot)->is_used = TRUE;
  for (guint i = slot + 1; i < r->end && !em_item_is_sign (r->items, i, ')'); i++)
    if (em_item_is_measure (r->items, i))
      em_item_size (r->items, i)->roles |= EM_ROLE_SLOT;
}

/* "(block itself 120 x 80 x 40)": how large the part is, told for information in brackets of its own. */
static void
mark_part_in_brackets (EmReader *r, guint bracket)
{
  guint end = bracket + 1, n = 0;

  if (end >= r->end || em_item_says (r->items, end, EM_SAYS_PLACE) == NULL)
    return;
  for (; end < r->end && !em_item_is_sign (r->items, end, ')'); end++)
    if (em_item_says (r->items, end, EM_SAYS_KIND) != NULL)
      return;
    else
      n += em_item_is_measure (r->items, end) && em_item_size (r->items, end)->chain != 0;
  for (guint i = bracket; n == 3 && i < end; i++)
    if (em_item_is_measure (r->items, i))
      em_item_size (r->items, i)->roles |= EM_ROLE_REFERENCE;
}

/* "blade (0.6 thick) cracked": how thick the thing is that has the crack. */
static void
mark_thickness_in_brackets (EmReader *r, guint bracket)
{
  const EmSense *thing = bracket > r->first ? em_item_says (r->items, bracket - 1, EM_SAYS_KIND) : NULL;

  if (thing == NULL || thing->weight[RIB] + thing->weight[SIDEWALL] == 0 || bracket + 3 >= r->end || !em_item_is_measure (r->items, bracket + 1) ||
      (em_item_size (r->items, bracket + 1)->roles & EM_ROLE_THICKNESS) == 0 || !em_item_is_sign (r->items, bracket + 3, ')'))
    return;
  for (guint i = bracket + 4; i < r->end && i < bracket + CELL_MAX; i++)
    {
      const EmSense *noun = em_item_says (r->items, i, EM_SAYS_KIND);

      if (noun != NULL && noun->weight[GROOVE] > 0 && noun->weight[RECESS] == 0)
        em_item_size (r->items, bracket + 1)->roles |= EM_ROLE_REFERENCE;
    }
}

/* A slot, a groove or a pocket. */
static gboolean
is_space_noun (const EmReader *r, guint i)
{
  const EmSense *noun = em_item_says (r->items, i, EM_SAYS_KIND);

  return noun != NULL && noun->value == NULL && noun->weight[RECESS] + noun->weight[GROOVE] > 0 && noun->weight[SIDEWALL] == 0;
}

/* "| pocket 6 wide, 15 deep" in the column of remarks */
static void
mark_slot_in_cell (const EmReader *r, guint noun)
{
  for (guint i = noun + 1; i < r->end && i <= noun + CELL_MAX && !em_item_is_sign (r->items, i, '|') && em_item (r->items, i)->is_where; i++)
    if (em_item_is_measure (r->items, i))
      em_item_size (r->items, i)->roles |= EM_ROLE_SLOT;
}

/* A width or a depth, and nothing else. */
static gboolean
measures_slot (const EmReader *r, guint i)
{
  const guint32 told = EM_ROLE_WIDTH | EM_ROLE_GAP | EM_ROLE_DEPTH;

  return em_item_is_measure (r->items, i) && !em_item (r->items, i)->is_used && (em_item_size (r->items, i)->roles & told) != 0 &&
         (em_item_size (r->items, i)->roles & ~told) == 0;
}

/* Stands between the sizes of a slot. */
static gboolean
joins_sizes (const EmReader *r, guint i)
{
  return em_item_says (r->items, i, EM_SAYS_LABEL) != NULL || em_item_says (r->items, i, EM_SAYS_TIMES) != NULL || em_item_says (r->items, i, EM_SAYS_GLUE) != NULL ||
         em_item_is_sign (r->items, i, ',') || em_item_is_sign (r->items, i, '(');
}

/* Where "in", "at the bottom of" stands that leads to the slot; EM_NO_ITEM: none. Only little words, labels and sizes come between. */
static guint
lead_of (const EmReader *r, guint slot)
{
  for (guint i = slot; i-- > r->first && i + LEAD_WINDOW > slot;)
    if (em_item_says (r->items, i, EM_SAYS_PREPOSITION) != NULL)
      return i;
    else if (em_item_says (r->items, i, EM_SAYS_KIND) != NULL || em_item_is_sign (r->items, i, ',') || em_item_is_sign (r->items, i, ':'))
      return EM_NO_ITEM;
  return EM_NO_ITEM;
}

/* "nick 3 x 1 x 1 in a channel 12 wide and 30 deep", "… in einer 5 mm breiten und 14 mm tiefen Tasche": behind the sizes of the repair. */
static void
mark_slot_behind (EmReader *r, guint slot)
{
  guint lead = lead_of (r, slot), n = 0;

  if (lead == EM_NO_ITEM)
    return;
  for (guint i = lead + 1; i < r->end && i < slot + CELL_MAX; i++)
    if (measures_slot (r, i))
      {
        em_item_size (r->items, i)->roles |= EM_ROLE_SLOT;
        n++;
      }
    else if (i > slot && !joins_sizes (r, i))
      break;
  if (n > 0)
    em_item (r->items, slot)->is_used = TRUE;
}

/* "crack 5 long, 1 deep at the bottom of a 20 mm deep slot": the slot's size stands right before it. */
static gboolean
is_sized_before (const EmReader *r, guint slot)
{
  return slot >= r->first + 2 && em_item_says (r->items, slot - 1, EM_SAYS_LABEL) != NULL && measures_slot (r, slot - 2);
}

/* "SLOT WALL WORN, SLOT .125 WD X .75 DP, WALL 2.25 LG": a part of no more than the slot and its sizes. */
static void
mark_slot_part (EmReader *r, guint slot)
{
  guint n = 0, i = slot + 1;

  if (slot == r->first || !(em_item_is_soft_break (r->items, slot - 1) || em_item_is_sign (r->items, slot - 1, '.')))
    return;
  for (; i < r->end && i < slot + CELL_MAX; i++)
    if (measures_slot (r, i))
      n++;
    else if (!joins_sizes (r, i) || (em_item_is_soft_break (r->items, i) && !(i + 1 < r->end && measures_slot (r, i + 1))))
      break;
  if (n == 0 || n > 2 || !(i >= r->end || em_item_is_soft_break (r->items, i) || em_item_is_sign (r->items, i, '.') || em_item_is_sign (r->items, i, ':')))
    return;
  for (guint k = slot + 1; k < i; k++)
    if (measures_slot (r, k))
      em_item_size (r->items, k)->roles |= EM_ROLE_SLOT;
  em_item (r->items, slot)->is_used = TRUE;
}

/* "FLANK OF SLOT 5 WIDE": how wide the slot is, as a wall has no width. */
static void
mark_slot_of_wall (EmReader *r, guint wall)
{
  static const char *const ends[] = { "slot", "pocket", "groove", "keyway", "channel", "Nut", "Tasche", "Schlitz", "ranura", "rainure", "fente" };
  const EmItem *item = em_item (r->items, wall);
  const EmSense *noun = em_item_says (r->items, wall, EM_SAYS_KIND);

  if (noun == NULL || noun->weight[SIDEWALL] < HEAD_NOUN || wall + 1 >= r->end || !measures_slot (r, wall + 1) ||
      (em_item_size (r->items, wall + 1)->roles & (EM_ROLE_WIDTH | EM_ROLE_GAP)) == 0)
    return;
  for (gsize k = 0; k < G_N_ELEMENTS (ends); k++)
    if (item->length > strlen (ends[k]) &&
        g_ascii_strncasecmp (r->items->text + item->start + item->length - strlen (ends[k]), ends[k], strlen (ends[k])) == 0)
      em_item_size (r->items, wall + 1)->roles |= EM_ROLE_SLOT;
}

static void
mark_slots_behind (EmReader *r)
{
  guint n_before = 0;

  for (guint i = r->first; i < r->end; i++)
    if (em_item_is_measure (r->items, i) && !em_item (r->items, i)->is_used)
      n_before += !measures_slot (r, i) || em_item_size (r->items, i)->chain != 0;
    else if (em_item_says (r->items, i, EM_SAYS_SLOT) != NULL && !em_slots_is_in (r->items, i) && !em_item (r->items, i)->is_used &&
             (n_before >= 2 || (n_before == 1 && is_sized_before (r, i))))
      mark_slot_behind (r, i);
}

/* "WALL IN A 3/8 WIDE SLOT (1/2 DEEP)", ".375 WD SLOT, .50 DP: BUILD SIDEWALL": the slot that a wall or rib lies in, with its
 * sizes. */
void
em_slots_mark (EmReader *r)
{
  gboolean has_wall = FALSE;

  for (guint i = r->first; i < r->end; i++)
    if (em_item_is_sign (r->items, i, '('))
      {
        mark_part_in_brackets (r, i);
        mark_thickness_in_brackets (r, i);
      }
  for (guint i = r->first; i < r->end && !has_wall; i++)
    {
      const EmSense *noun = em_item_says (r->items, i, EM_SAYS_KIND);

      has_wall = noun != NULL && (noun->weight[2] >= HEAD_NOUN || noun->weight[4] >= HEAD_NOUN);
    }
  for (guint i = r->first + 1; i < r->end && has_wall; i++)
    if (is_slot_noun (r, i) && (em_item_is_sign (r->items, i - 1, '(') ||
                                (i + 1 < r->end && em_item_is_sign (r->items, i + 1, '('))))
      mark_slot_in_brackets (r, i);
  for (guint i = r->first; i < r->end && has_wall; i++)
    if (em_item (r->items, i)->is_where && is_space_noun (r, i))
      mark_slot_in_cell (r, i);
  for (guint i = r->first + 2; i < r->end && has_wall; i++)
    {
      /* ".75 long .19 high slot .375 wide": no slot is high. */
      if (!is_slot_noun (r, i) || !em_item_is_measure (r->items, i - 2) || em_item_says (r->items, i - 1, EM_SAYS_LABEL) == NULL ||
          (em_item_size (r->items, i - 2)->roles & EM_ROLE_HEIGHT) != 0)
        continue;
      em_item (r->items, i)->is_used = em_item_says (r->items, i, EM_SAYS_KIND)->weight[SIDEWALL] == 0;
      em_item_size (r->items, i - 2)->roles |= EM_ROLE_SLOT;
      /* "1/4 wide x 1/2 deep slot" */
      for (guint k = i - 2; k-- > r->first && k + CELL_MAX > i && em_item_size (r->items, i - 2)->chain != 0;)
        if (em_item_is_measure (r->items, k) && em_item_size (r->items, k)->chain == em_item_size (r->items, i - 2)->chain)
          em_item_size (r->items, k)->roles |= EM_ROLE_SLOT;
      for (guint k = i + 1; k < r->end && k <= i + 2; k++)
        if (em_item_is_measure (r->items, k) && (em_item_size (r->items, k)->roles & EM_ROLE_DEPTH) != 0)
          em_item_size (r->items, k)->roles |= EM_ROLE_SLOT;
    }
  for (guint i = r->first; i < r->end && has_wall; i++)
    mark_slot_of_wall (r, i);
  for (guint i = r->first; i < r->end && has_wall; i++)
    if (em_item_says (r->items, i, EM_SAYS_SLOT) != NULL && !em_slots_is_in (r->items, i) && !em_item (r->items, i)->is_used)
      mark_slot_part (r, i);
  mark_slots_behind (r);
}
