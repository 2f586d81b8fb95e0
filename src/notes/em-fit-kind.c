/* em-fit-kind: the likeliest kind of a proposal.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-fit.h"

#include <math.h>
#include <string.h>

/* A worn diameter differs from the finished one by less (common practice, no source). */
static const double TWIN_SHARE = 0.15;

/* No face is as narrow (common practice, no source). */
static const double NARROW_MM = 0.6;

/* No leg of a nick is as long (common practice, no source). */
static const double BROAD_MM = 2.5;

enum
{
  EVIDENCE = 8,
  IN_WINDOW = 4,   /* items from a dent to the edge it is in */
  LOOKED_OVER = 8, /* sizes of a repair compared with each other */
  OWN_FACE = 20,   /* a noun of a face that is no place of something else */
  ONE_WORD = 5,    /* what one word of wear weighs by itself */
  SLENDER = 12,    /* a groove so many times as long as wide stays one when it is filled */
  GROOVE_OF_ANY = 8, /* "groove" may be either */
  TOLD_GROOVE = 9, /* a scratch or a crack, and no groove that was cut, weighs as much */
  WEAK_NOUN = 2,    /* "tip": hardly tells the kind */
  MOST_OF_TIP = 12, /* what such a noun weighs with its diameter */
  STRONG_EDGE = 7   /* a noun of this weight is a chipped or worn edge whatever the sizes */
};

static gboolean
has_form (const EmProto *proto, const char *form)
{
  for (guint i = 0; i < proto->given->len; i++)
    if (strcmp (g_array_index (proto->given, EmGiven, i).field.field, "form") == 0 &&
        g_strcmp0 (g_array_index (proto->given, EmGiven, i).field.text, form) == 0)
      return TRUE;
  return FALSE;
}

/* "0.3 mm welded over 45 mm, 6 mm wide" */
static const guint32 flat = EM_ROLE_BUILD | EM_ROLE_LENGTH | EM_ROLE_WIDTH;

/* Sizes that only what is broken out has beside its length. */
static const guint32 legs = EM_ROLE_LEG | EM_ROLE_DEPTH | EM_ROLE_WIDTH | EM_ROLE_HEIGHT | EM_ROLE_THICKNESS;

/* "inside dia 6.00, now 6.08": wear opens a bore and thins a pin. The kind that two diameters tell of; -1: none. */
static int
told_by_wear (const EmItems *items, const EmProto *proto)
{
  for (guint i = 0; i < proto->sizes->len && i < LOOKED_OVER; i++)
    for (guint k = 0; k < proto->sizes->len && k < LOOKED_OVER; k++)
      {
        const EmSize *now = em_item_size (items, g_array_index (proto->sizes, guint, i));
        const EmSize *new = em_item_size (items, g_array_index (proto->sizes, guint, k));
        double ratio = em_fraction_in_mm (now->value, now->unit) / em_fraction_in_mm (new->value, new->unit);

        /* "Kern Ø14,98 soll 15,02": what shall be tells what is. */
        gboolean is_pair = ((now->roles & EM_ROLE_WORN) != 0 && (new->roles & EM_ROLE_WORN) == 0) ||
                           ((new->roles & EM_ROLE_FINISHED) != 0 && (now->roles == EM_ROLE_DIAMETER || now->roles == EM_ROLE_WIDTH));

        if (i != k && is_pair && now->unit == new->unit &&
            fabs (ratio - 1) < TWIN_SHARE && ratio != 1)
          return ratio > 1 ? BORE : PIN;
      }
  return -1;
}

/* "O-ring land pitted, 45 OD, 39 ID, add 0.5": the ring that is built up, not what is wrong with it. */
static void
weigh_ring (const EmItems *items, const EmProto *proto, const EmSense *noun, guint32 roles, int *weight)
{
  guint n_round = 0;
  int sides = 0;

  for (guint i = 0; i < proto->sizes->len && i < LOOKED_OVER; i++)
    {
      const EmSize *size = em_item_size (items, g_array_index (proto->sizes, guint, i));
      const EmSense *label = size->label_item != G_MAXUINT32 ? em_item_says (items, size->label_item, EM_SAYS_KIND) : NULL;

      n_round += (size->roles & EM_ROLE_DIAMETER) != 0;
      if (label != NULL && label->weight[BORE] + label->weight[PIN] > 0)
        sides |= label->weight[BORE] > label->weight[PIN] ? 1 << BORE : 1 << PIN;
    }
  /* "ring 26 OD / 21 ID, worn 0.25": what lies between the two. */
  if (n_round == 2 && sides == (1 << BORE | 1 << PIN) && (roles & (EM_ROLE_ADD | EM_ROLE_BUILD | EM_ROLE_WORN)) != 0 && proto->sizes->len == 3 &&
      (roles & (EM_ROLE_FINISHED | EM_ROLE_LENGTH | EM_ROLE_DEPTH | EM_ROLE_PER_SIDE | EM_ROLE_ON_DIAMETER)) == 0)
    weight[FACE] = MAX (weight[FACE], MAX (weight[PIN], weight[BORE]) + EVIDENCE);
  if (n_round != 2 || noun == NULL || noun->value == NULL || weight[FACE] == 0 || (roles & (EM_ROLE_ADD | EM_ROLE_BUILD)) == 0)
    return;
  weight[FACE] += 3 * EVIDENCE;
  weight[RECESS] /= 2;
  weight[GROOVE] /= 2;
}

/* "pinch-off crest 1 wide x 140 long, add 0.8": a rib's width is its thickness. */
static gboolean
is_wide_rib (const EmSense *noun, guint32 roles)
{
  return noun != NULL && noun->weight[RIB] > 0 && noun->weight[FACE] == 0 && (roles & flat) == flat;
}

/* "build up .2 over 35 x 4": what to add and two more sizes in a row are a face's. */
static void
weigh_build (const EmProto *proto, const EmSense *noun, guint32 roles, guint n_row, int *weight)
{
  gboolean is_over_row = (roles & (EM_ROLE_ADD | EM_ROLE_BUILD)) != 0 && n_row == 2;
  /* "face pitted, build .040 over 1.75 x 1.00": the pits are what is wrong with the face. */
  gboolean is_flaw = (is_over_row || (roles & flat) == flat) && noun != NULL && noun->weight[RECESS] + noun->weight[GROOVE] > 0 &&
                     noun->weight[EDGE_NICK] == 0 && !proto->has_fill &&
                     (roles & (EM_ROLE_DEPTH | EM_ROLE_DIAMETER)) == 0;

  /* "crest on core top, 1.5 thick x 20 long, coat 0.4": no face has a thickness of its own. */
  if ((roles & (EM_ROLE_RADIUS | EM_ROLE_LEG)) != 0 || weight[FACE] == 0 ||
      (weight[RIB] > weight[FACE] && (roles & EM_ROLE_THICKNESS) != 0) || is_wide_rib (noun, roles) ||
      !((is_over_row && (proto->noun_weight < STRONG_EDGE || is_flaw)) || (roles & flat) == flat))
    return;
  weight[FACE] += 3 * EVIDENCE;
  weight[RECESS] /= is_flaw ? 2 : 1;
  weight[GROOVE] /= is_flaw ? 2 : 1;
}

/* "core tip, round face ⌀18, raise 0.7": the noun right before the diameter is what is round. */
static void
weigh_round_face (const EmItems *items, const EmProto *proto, guint32 roles, int *weight)
{
  if (weight[FACE] == 0 || (roles & (EM_ROLE_BUILD | EM_ROLE_ADD)) == 0 || (roles & EM_ROLE_DIAMETER) == 0 ||
      (roles & (EM_ROLE_PER_SIDE | EM_ROLE_ON_DIAMETER | EM_ROLE_WORN | EM_ROLE_FINISHED | EM_ROLE_LENGTH)) != 0)
    return;
  for (guint i = 0; i < proto->sizes->len && i < LOOKED_OVER; i++)
    {
      guint size = g_array_index (proto->sizes, guint, i), label = em_item_size (items, size)->label_item;
      guint first = label != G_MAXUINT32 ? MIN (label, size) : size;
      const EmSense *noun = first > 0 ? em_item_says (items, first - 1, EM_SAYS_KIND) : NULL;

      if ((em_item_size (items, size)->roles & EM_ROLE_DIAMETER) != 0 && noun != NULL && noun->weight[FACE] > 0 &&
          noun->weight[PIN] + noun->weight[BORE] == 0)
        weight[FACE] = MAX (weight[FACE], weight[PIN] + EVIDENCE);
    }
}

/* "seal face pitted and low 0.1": the pits are what is wrong with the face, and so much is to be put on it. */
static void
weigh_pitted_face (const EmProto *proto, const EmSense *noun, guint32 roles, int *weight)
{
  if (weight[FACE] == 0 || noun == NULL || noun->weight[RECESS] == 0 || g_strcmp0 (noun->value, "damage") != 0 || proto->has_fill ||
      (roles & EM_ROLE_BUILD) == 0 || (roles & ~(guint32) (EM_ROLE_BUILD | EM_ROLE_ADD | EM_ROLE_DIAMETER | EM_ROLE_WORN)) != 0)
    return;
  weight[FACE] = MAX (weight[FACE], weight[RECESS] + EVIDENCE);
}

/* The smallest size of the rows. */
static double
least_of_row_mm (const EmItems *items, const EmProto *proto)
{
  double least = (double) INFINITY;

  for (guint i = 0; i < proto->sizes->len && i < LOOKED_OVER; i++)
    {
      const EmSize *size = em_item_size (items, g_array_index (proto->sizes, guint, i));

      if (size->chain != 0)
        least = MIN (least, em_fraction_in_mm (size->value, size->unit));
    }
  return least;
}

/* How many sizes of the rows are thinner than any face or wall. */
static guint
n_thin_of_row (const EmItems *items, const EmProto *proto)
{
  guint n = 0;

  for (guint i = 0; i < proto->sizes->len && i < LOOKED_OVER; i++)
    {
      const EmSize *size = em_item_size (items, g_array_index (proto->sizes, guint, i));

      n += size->chain != 0 && em_fraction_in_mm (size->value, size->unit) <= NARROW_MM;
    }
  return n;
}

/* Pins that are none by name, and tips that are none. */
static void
weigh_weak_pin (const EmProto *proto, guint32 roles, guint n_row, int *weight)
{
  /* "SHUT-OFF DIA .437 UNDERSIZE .0015 PER SIDE, .375 LG": no face has sides, and is as long as that. */
  if (weight[FACE] > 0 && weight[PIN] + weight[BORE] + weight[RIB] == 0 && (roles & (EM_ROLE_DIAMETER | EM_ROLE_LENGTH)) == (EM_ROLE_DIAMETER | EM_ROLE_LENGTH) &&
      (roles & EM_ROLE_PER_SIDE) != 0 && (roles & (EM_ROLE_WIDTH | EM_ROLE_HEIGHT | EM_ROLE_RADIUS)) == 0 && proto->sizes->len == 3)
    weight[PIN] = weight[FACE] + EVIDENCE;
  /* "hook broken, build up .1 x .1 x .08 at tip": no pin has a row of three, nor a word that hardly tells one. */
  if (n_row == 3 && weight[PIN] > 0 && weight[PIN] <= MOST_OF_TIP && weight[BORE] + weight[FACE] + weight[RECESS] == 0 &&
      (roles & (EM_ROLE_DIAMETER | EM_ROLE_RADIUS | EM_ROLE_WORN | EM_ROLE_FINISHED)) == 0)
    weight[EDGE_NICK] = MAX (weight[EDGE_NICK], weight[PIN] + 1);
}

static gboolean
has_area (const EmItems *items, const EmProto *proto)
{
  for (guint i = 0; i < proto->sizes->len && i < LOOKED_OVER; i++)
    if (em_unit_is_area (em_item_size (items, g_array_index (proto->sizes, guint, i))->unit))
      return TRUE;
  return FALSE;
}

/* What was hammered, scratched or washed and is a face by its sizes. */
static void
weigh_hurt_face (const EmItems *items, const EmProto *proto, const EmSense *noun, guint32 roles, guint n_row, int *weight)
{
  /* "end face hammered, 30 mm round, 0.8 mm low": round and low is a face. */
  if (weight[FACE] > 0 && weight[EDGE_NICK] + weight[GROOVE] > 0 && (roles & EM_ROLE_DIAMETER) != 0 &&
      (roles & (EM_ROLE_BUILD | EM_ROLE_ADD)) != 0 &&
      (roles & (EM_ROLE_RADIUS | legs)) == 0)
    {
      weight[FACE] += EVIDENCE;
      weight[EDGE_NICK] /= 4;
      weight[GROOVE] /= 4;
    }
  /* "cutting edge low: 110 long, 1.2 wide, add 0.5": a strip of an edge that nothing broke off. */
  if (weight[EDGE_NICK] > 0 && weight[WORN_CORNER] > 0 && !proto->has_damage && proto->sizes->len == 3 && !is_wide_rib (noun, roles) &&
      ((roles & flat) == flat || (n_row == 2 && (roles & EM_ROLE_ADD) != 0 && proto->noun_weight < STRONG_EDGE)) &&
      (roles & (EM_ROLE_RADIUS | EM_ROLE_LEG | EM_ROLE_DEPTH | EM_ROLE_HEIGHT)) == 0)
    weight[FACE] = MAX (weight[FACE], MAX (weight[EDGE_NICK], weight[WORN_CORNER]) + (n_row == 2 ? 3 : 1) * EVIDENCE);
  /* "wall scored, 30 x 0.5 x 0.2": no face is as narrow and no wall as low. */
  if (weight[GROOVE] > 0 && weight[FACE] + weight[SIDEWALL] > 0 && proto->sizes->len == 3 && n_row == 3 && roles == 0 &&
      n_thin_of_row (items, proto) == 2)
    weight[GROOVE] = MAX (weight[GROOVE], MAX (weight[FACE], weight[SIDEWALL])) + EVIDENCE;
  /* "core end mushroomed, face .500 x .500, weld .030": no edge is broken out as far as that. */
  if (weight[FACE] > 0 && weight[EDGE_NICK] > 0 && proto->sizes->len == 3 && n_row == 2 &&
      (roles & (EM_ROLE_BUILD | EM_ROLE_ADD | EM_ROLE_WELD)) != 0 && (roles & (EM_ROLE_RADIUS | legs)) == 0 && least_of_row_mm (items, proto) > BROAD_MM)
    weight[FACE] = MAX (weight[FACE], weight[EDGE_NICK] + 3 * EVIDENCE);
  /* "bearing 0.3 washed, 190 x 4": no worn edge has a row and one size more. */
  if (noun != NULL && g_strcmp0 (noun->value, "state") == 0 && proto->sizes->len == 3 && n_row == 2 && weight[RECESS] == 0 &&
      weight[EDGE_NICK] == 0 &&
      (roles & ~(guint32) (EM_ROLE_BUILD | EM_ROLE_ADD | EM_ROLE_WORN | EM_ROLE_DEPTH | EM_ROLE_PER_SIDE | EM_ROLE_LENGTH)) == 0)
    weight[FACE] = MAX (weight[FACE], weight[WORN_CORNER] + EVIDENCE);
  /* "Anlagefläche 1200 mm² eingeschlagen, 0,1 auftragen": no edge has an area. */
  if (weight[FACE] > 0 && has_area (items, proto) && (roles & (EM_ROLE_RADIUS | legs)) == 0)
    weight[FACE] = MAX (weight[FACE], MAX (weight[EDGE_NICK], weight[WORN_CORNER]) + 3 * EVIDENCE);
  /* "land hobbed in 34 x 9, 0.15 deep": a row of an own face that no edge was broken from. */
  if (noun != NULL && noun->weight[FACE] > 0 && noun->weight[EDGE_NICK] + noun->weight[RECESS] == 0 && weight[FACE] > 0 &&
      proto->sizes->len == 3 && n_row == 2 && (roles & ~(guint32) (EM_ROLE_DEPTH | EM_ROLE_WORN)) == 0 && (roles & EM_ROLE_DEPTH) != 0)
    weight[EDGE_NICK] = MIN (weight[EDGE_NICK], weight[FACE] / 3);
  /* "restrictor bar, underside washed out 420 x 16": it is there already, and its face is built up. */
  if (weight[DAM] > 0 && weight[FACE] > 0 && (proto->has_worn || proto->has_damage || weight[WORN_CORNER] > 0) && n_row == 2)
    weight[DAM] /= 4;
  /* "worn shut-off 1.250 x .375 x .010 low": what has lost so much in a row of three is flat. */
  if (weight[FACE] > 0 && weight[WORN_CORNER] > 0 && proto->sizes->len == 3 && n_row == 3 && (roles & EM_ROLE_BUILD) != 0 &&
      (roles & (EM_ROLE_RADIUS | legs | EM_ROLE_DIAMETER)) == 0)
    weight[FACE] = MAX (weight[FACE], weight[WORN_CORNER] + EVIDENCE);
  /* "PL near sprue peened low .003, 1.5 x .75": what is only hurt, low by so much and has a row is flat. */
  if (weight[EDGE_NICK] > 0 && weight[RECESS] + weight[WORN_CORNER] == 0 && noun != NULL && noun->value != NULL && proto->sizes->len == 3 && n_row == 2 &&
      (roles & EM_ROLE_BUILD) != 0 && (roles & (EM_ROLE_RADIUS | legs | EM_ROLE_DIAMETER)) == 0 && least_of_row_mm (items, proto) > BROAD_MM)
    weight[FACE] = MAX (weight[FACE], weight[EDGE_NICK] + 3 * EVIDENCE);
  /* "shim seat low .004, 1.125 x .625": a row is no cone and no sphere. */
  if (weight[SEAT] > 0 && proto->sizes->len == 3 && n_row == 2 && (roles & (EM_ROLE_BUILD | EM_ROLE_ADD | EM_ROLE_WORN)) != 0 &&
      (roles & (EM_ROLE_RADIUS | EM_ROLE_SPHERE | EM_ROLE_DIAMETER | EM_ROLE_LARGE | EM_ROLE_SMALL | EM_ROLE_DEPTH | EM_ROLE_ANGLE)) == 0)
    weight[FACE] = MAX (weight[FACE], weight[SEAT] + EVIDENCE);
  /* "washed .010, area .5 x .25" */
  if (weight[FACE] > 0 && weight[WORN_CORNER] > 0 && proto->sizes->len == 3 && n_row == 2 &&
      (roles & ~(guint32) (EM_ROLE_BUILD | EM_ROLE_ADD | EM_ROLE_WORN | (weight[RECESS] > 0 ? 0 : EM_ROLE_DEPTH))) == 0)
    weight[FACE] = MAX (weight[FACE], weight[WORN_CORNER] + EVIDENCE);
  /* "land 6 long, .03 wide, mashed .012": a face of its own name that has lost so much. */
  if (weight[FACE] >= OWN_FACE && weight[EDGE_NICK] > 0 && proto->sizes->len == 3 && (roles & EM_ROLE_LENGTH) != 0 &&
      (roles & EM_ROLE_WIDTH) != 0 &&
      (roles & (EM_ROLE_RADIUS | EM_ROLE_LEG | EM_ROLE_DEPTH | EM_ROLE_HEIGHT | EM_ROLE_THICKNESS)) == 0)
    weight[FACE] = MAX (weight[FACE], weight[EDGE_NICK] + EVIDENCE);
}

/* "rib 1 thick, 6 long, broken off, build 1.8 high": what broke off a thin upright is its top, as no edge of it is told. */
static void
weigh_broken_rib (const EmSense *noun, guint32 roles, guint n_row, int *weight)
{
  if (noun == NULL || noun->weight[RIB] == 0 || noun->weight[EDGE_NICK] > 0 || weight[RIB] == 0 || (roles & EM_ROLE_LEG) != 0 ||
      ((roles & EM_ROLE_THICKNESS) == 0 && (n_row > 0 || (roles & legs) != 0)))
    return;
  weight[EDGE_NICK] = MIN (weight[EDGE_NICK], weight[RIB] / 2);
}

/* What the sizes beside a word of damage or wear tell of it. */
static void
weigh_damage (const EmProto *proto, guint32 roles, guint n_row, int *weight)
{
  /* "pin ⌀.625 peened, now .619, .30 long": round and in no row, so no edge, unless a leg of one is told. */
  if ((roles & EM_ROLE_DIAMETER) != 0 && n_row == 0 && (weight[PIN] > 0 || weight[BORE] > 0) &&
      (roles & (EM_ROLE_RADIUS | legs)) == 0)
    {
      weight[EDGE_NICK] /= 4;
      /* "guide pillar ⌀30 scored, 0.1 per side over 60" */
      weight[GROOVE] /= (roles & (EM_ROLE_PER_SIDE | EM_ROLE_ON_DIAMETER)) != 0 ? 4 : 1;
    }
  /* "pillar ⌀30 has scores 0.15 deep over 90, add 0.3 per side": round the pillar, however deep they are. */
  if ((roles & EM_ROLE_DIAMETER) != 0 && n_row == 0 && (weight[PIN] > 0 || weight[BORE] > 0) && (roles & EM_ROLE_RADIUS) == 0 &&
      (roles & EM_ROLE_PER_SIDE) != 0 && (roles & (EM_ROLE_BUILD | EM_ROLE_ADD)) != 0)
    weight[GROOVE] /= 4;
  /* "edge knocked over .03 R x 9 long", "corner hammered, R.03, 9 long, leave R.005": what is broken out has no radius. */
  if ((roles & EM_ROLE_RADIUS) != 0 && proto->sizes->len >= 2 && proto->sizes->len <= 4 && (proto->sizes->len == 2 || n_row < 3) &&
      weight[WORN_CORNER] > 0 && (roles & legs) == 0)
    weight[EDGE_NICK] /= 4;
  /* "parting line: one dent 3/16 long, .020 on each face": no dent has two faces. */
  if (proto->is_equal && weight[EDGE_NICK] > 0 && has_form (proto, "cap") && (roles & EM_ROLE_LENGTH) != 0 &&
      (roles & (EM_ROLE_DIAMETER | EM_ROLE_DEPTH | EM_ROLE_WIDTH)) == 0)
    weight[RECESS] = MIN (weight[RECESS], weight[EDGE_NICK] / 2);
  /* "land scored, .80 long x .012 deep": a length and a depth alone are a score's. */
  if (weight[GROOVE] > 0 && weight[FACE] > 0 && proto->sizes->len == 2 && (roles & EM_ROLE_LENGTH) != 0 &&
      (roles & EM_ROLE_DEPTH) != 0 &&
      (roles & (EM_ROLE_BUILD | EM_ROLE_ADD)) == 0)
    weight[GROOVE] += EVIDENCE;
  /* "step worn, build up wall 300 long, 2 high, 0.5 thick": long and high is a wall. */
  if (weight[SIDEWALL] > 0 && weight[FACE] > 0 && (roles & EM_ROLE_LENGTH) != 0 && (roles & EM_ROLE_HEIGHT) != 0 &&
      (roles & (EM_ROLE_WIDTH | EM_ROLE_DEPTH | EM_ROLE_DIAMETER | EM_ROLE_AREA)) == 0)
    weight[SIDEWALL] = MAX (weight[SIDEWALL], weight[FACE] + 1);
  /* "step R0.5 washed to R1.5, 65 long": no face, wall or rib has a radius. */
  if ((roles & EM_ROLE_RADIUS) != 0 && (roles & (EM_ROLE_SPHERE | EM_ROLE_BUILD | EM_ROLE_ADD)) == 0 &&
      (roles & (EM_ROLE_LENGTH | EM_ROLE_WORN | EM_ROLE_FINISHED)) != 0 && weight[SEAT] + weight[RECESS] + weight[DAM] == 0 && n_row == 0 &&
      (roles & (EM_ROLE_WIDTH | EM_ROLE_DEPTH | EM_ROLE_THICKNESS | EM_ROLE_AREA | EM_ROLE_DIAMETER)) == 0)
    weight[WORN_CORNER] = MAX (weight[WORN_CORNER], MAX (weight[FACE], MAX (weight[SIDEWALL], weight[RIB])));
  /* "side 1.00 long x .500 high, add .005" */
  if (proto->noun == EM_NO_ITEM && (roles & EM_ROLE_LENGTH) != 0 && (roles & EM_ROLE_HEIGHT) != 0 &&
      (roles & (EM_ROLE_BUILD | EM_ROLE_ADD | EM_ROLE_WORN)) != 0 &&
      (roles & (EM_ROLE_RADIUS | EM_ROLE_DIAMETER | EM_ROLE_WIDTH | EM_ROLE_DEPTH)) == 0)
    weight[SIDEWALL] = MAX (weight[SIDEWALL], 1);
}

/* One diameter, a verb of welding, and nothing of wear or of another size. */
static gboolean
is_unworn_hole (const EmProto *proto, guint32 roles)
{
  return proto->has_verb && !proto->has_build && !proto->has_worn && !proto->has_damage && proto->sizes->len == 2 &&
         (roles & EM_ROLE_DIAMETER) != 0 &&
         (roles & (EM_ROLE_DEPTH | EM_ROLE_LENGTH)) != 0;
}

/* A diameter, and a larger size that it has now, or a smaller one that it shall have, up to half as much again. */
static gboolean
is_grown_round (const EmItems *items, const EmProto *proto)
{
  const double most = 1.5;
  double now = 0, new = 0, bare = 0;

  for (guint i = 0; i < proto->sizes->len && i < LOOKED_OVER; i++)
    {
      const EmSize *size = em_item_size (items, g_array_index (proto->sizes, guint, i));

      if (size->chain != 0)
        return FALSE;
      if ((size->roles & EM_ROLE_WORN) != 0)
        now = em_fraction_in_mm (size->value, size->unit);
      else if ((size->roles & EM_ROLE_FINISHED) != 0)
        new = em_fraction_in_mm (size->value, size->unit);
      else if ((size->roles & EM_ROLE_DIAMETER) != 0)
        bare = em_fraction_in_mm (size->value, size->unit);
    }
  now = now > 0 ? now : bare;
  new = new > 0 ? new : bare;
  return new > 0 && now > new && now < most * new;
}

static gboolean
says_inside (const EmItems *items, guint i)
{
  static const char *const words[] = { "id", "i.d.", "inner", "inside", "internal", "bore", "innen", "interior", "intérieur" };

  return em_item_is_any_word_of (items, i, words, G_N_ELEMENTS (words));
}

/* Bores and pins: wear, and what is filled. */
static void
weigh_round (const EmItems *items, const EmProto *proto, guint32 roles, int *weight)
{
  const EmSense *noun = proto->noun != EM_NO_ITEM ? em_item_says (items, proto->noun, EM_SAYS_KIND) : NULL;
  int by_wear;

  /* "gate is washed, 1.0 dia, now 1.4": what is round and has grown is a bore, when nothing else of it is told. */
  if (weight[PIN] + weight[BORE] == 0 && (weight[WORN_CORNER] > 0 || proto->noun == EM_NO_ITEM) && (roles & EM_ROLE_DIAMETER) != 0 &&
      (roles & (EM_ROLE_WORN | EM_ROLE_FINISHED)) != 0 && proto->sizes->len <= 4 &&
      (roles & (EM_ROLE_RADIUS | EM_ROLE_LEG | EM_ROLE_WIDTH | EM_ROLE_BUILD | EM_ROLE_ADD)) == 0 && is_grown_round (items, proto))
    weight[BORE] = MAX (weight[WORN_CORNER], MAX (weight[FACE], MAX (weight[RECESS], weight[EDGE_NICK]))) + EVIDENCE;
  /* "Anguss Ø5 ausgewaschen, 0,25 je Seite, 8 tief", "gate ⌀1 washed out, 0.2 per side": no edge is built up per side. */
  if (weight[PIN] + weight[BORE] + weight[SEAT] == 0 && weight[WORN_CORNER] > 0 && noun != NULL && g_strcmp0 (noun->value, "state") == 0 &&
      (roles & EM_ROLE_DIAMETER) != 0 && (roles & EM_ROLE_PER_SIDE) != 0 && (roles & (EM_ROLE_RADIUS | EM_ROLE_LEG | EM_ROLE_WIDTH)) == 0)
    weight[BORE] = weight[WORN_CORNER] + EVIDENCE;
  /* "ID PILOT 1.2500 IS 1.2530": what is inside is no pin. */
  if (weight[PIN] > weight[BORE] && proto->noun != EM_NO_ITEM && proto->noun > 0 && says_inside (items, proto->noun - 1))
    weight[BORE] = weight[PIN] + EVIDENCE;
  by_wear = weight[PIN] > 0 || weight[BORE] > 0 ? told_by_wear (items, proto) : -1;
  /* "PLUG ⌀18 WORN TO ⌀17.6": what is filled has no wear. */
  if (proto->has_fill && proto->noun == EM_NO_ITEM && (roles & EM_ROLE_DIAMETER) != 0 && told_by_wear (items, proto) == PIN)
    weight[PIN] += 6 * EVIDENCE;
  /* "sleeve worn inside, should be 6.00, measures 6.07": no pin grows. */
  if (by_wear == BORE && weight[PIN] > 0 && weight[BORE] == 0 && (roles & EM_ROLE_FINISHED) != 0 && (roles & EM_ROLE_WORN) != 0)
    weight[BORE] = weight[PIN];
  if (by_wear >= 0 && weight[by_wear] > 0)
    weight[by_wear] += (weight[PIN] > 0 && weight[BORE] > 0 ? 4 : 2) * EVIDENCE;
  if (proto->has_fill && weight[BORE] > 0 && em_fit_is_closed_to_size (items, proto))
    weight[BORE] += weight[RECESS] + EVIDENCE;
  /* "WELD PIN HOLE SHUT": nothing is left of the bore. "Weld up 2 holes ⌀6, 18 deep": nor where no wear is told. */
  else if ((proto->has_fill || is_unworn_hole (proto, roles)) && weight[BORE] > 0 &&
           (roles & (EM_ROLE_WORN | EM_ROLE_FINISHED | EM_ROLE_BUILD | EM_ROLE_PER_SIDE | EM_ROLE_ON_DIAMETER)) == 0)
    {
      weight[RECESS] = MAX (weight[RECESS], weight[BORE]) + EVIDENCE;
      weight[BORE] = 0;
    }
  /* "⌀8 TO BE CLOSED 0.15 PER SIDE": closed only by so much. */
  else if (proto->has_fill && proto->noun == EM_NO_ITEM && (roles & EM_ROLE_DIAMETER) != 0 &&
           (roles & (EM_ROLE_PER_SIDE | EM_ROLE_ON_DIAMETER)) != 0)
    weight[BORE] += weight[RECESS] + 2 * EVIDENCE;
  else if (proto->has_fill && weight[BORE] > 0 && (roles & (EM_ROLE_PER_SIDE | EM_ROLE_ON_DIAMETER)) != 0)
    weight[BORE] += 2 * EVIDENCE;
  /* "blind hole ⌀3.00, now ⌀3.07": what has a size now and a size to be is no hole to fill. */
  if (!proto->has_fill && has_form (proto, "cylinder") && (roles & EM_ROLE_WORN) != 0 && (roles & EM_ROLE_DIAMETER) != 0 &&
      told_by_wear (items, proto) == PIN)
    {
      /* "damaged thread core: top diameter 26.8 now 26.5" */
      weight[PIN] = MAX (weight[PIN], weight[RECESS]) + EVIDENCE;
      weight[RECESS] = 0;
    }
  else if (!proto->has_fill && has_form (proto, "cylinder") && (roles & EM_ROLE_WORN) != 0 &&
           ((roles & EM_ROLE_DIAMETER) != 0 || (roles & (EM_ROLE_WIDTH | EM_ROLE_HEIGHT | EM_ROLE_THICKNESS | EM_ROLE_BUILD | EM_ROLE_ADD)) == 0 /* "the old bore is 4.2 now" */))
    {
      weight[BORE] = MAX (weight[BORE], weight[RECESS]) + EVIDENCE;
      weight[RECESS] = 0;
    }
  /* "scored on the ID, should be 2.375, now 2.381" */
  for (int k = 0; k < EM_N_NOTE_KINDS; k++)
    if ((k == BORE || k == PIN) && weight[k] > 0 && (roles & EM_ROLE_WORN) != 0 && (roles & EM_ROLE_FINISHED) != 0 &&
        (roles & EM_ROLE_RADIUS) == 0)
      weight[k] += 3 * EVIDENCE;
}

/* "parting face: dent 6 x 2 x 1": three sizes of a hurt, in one row, are no face's, which would have what to add. */
static void
weigh_hurt_row (const EmProto *proto, guint32 roles, guint n_row, int *weight)
{
  if (proto->has_damage && !proto->has_build && proto->sizes->len == 3 && n_row == 3 && roles == 0 && weight[FACE] > 0 && weight[EDGE_NICK] > 0)
    weight[EDGE_NICK] = MAX (weight[EDGE_NICK], weight[FACE] + EVIDENCE);
}

/* A size of both roles. */
static gboolean
is_one_size (const EmItems *items, const EmProto *proto, guint32 role, guint32 other)
{
  for (guint i = 0; i < proto->sizes->len && i < LOOKED_OVER; i++)
    {
      guint32 roles = em_item_size (items, g_array_index (proto->sizes, guint, i))->roles;

      if ((roles & role) != 0 && (roles & other) != 0)
        return TRUE;
    }
  return FALSE;
}

/* Worn, chipped or pitted: what the sizes of an edge or a dent have and have not. */
static void
weigh_edge (const EmItems *items, const EmProto *proto, guint32 roles, int *weight)
{
  const EmSense *noun = proto->noun != EM_NO_ITEM ? em_item_says (items, proto->noun, EM_SAYS_KIND) : NULL;

  /* "lost a bit of its edge, 8 long, 1.2 deep": a worn edge has no depth beside its length. */
  if (weight[EDGE_NICK] > 0 && weight[WORN_CORNER] > 0 && (roles & EM_ROLE_RADIUS) == 0 && (roles & EM_ROLE_LENGTH) != 0 &&
      (roles & (EM_ROLE_DEPTH | EM_ROLE_HEIGHT)) != 0)
    {
      weight[EDGE_NICK] += EVIDENCE;
      weight[WORN_CORNER] /= 3;
    }
  /* "ding 4 long by 2 wide, .5 deep, in the middle of the flat": no edge is near. */
  if (noun != NULL && noun->weight[EDGE_NICK] > 0 && noun->weight[RECESS] > 0 && weight[FACE] > 0 && weight[WORN_CORNER] == 0 &&
      (roles & (EM_ROLE_LENGTH | EM_ROLE_WIDTH | EM_ROLE_DEPTH)) == (EM_ROLE_LENGTH | EM_ROLE_WIDTH | EM_ROLE_DEPTH) &&
      (roles & (EM_ROLE_LEG | EM_ROLE_HEIGHT)) == 0)
    weight[RECESS] = MAX (weight[RECESS], weight[EDGE_NICK] + EVIDENCE);
  /* "tip broken off, ⌀2.5 x 6": what is round and no edge by name has none. */
  if ((roles & EM_ROLE_DIAMETER) != 0 && noun != NULL && noun->weight[EDGE_NICK] + noun->weight[WORN_CORNER] == 0)
    weight[EDGE_NICK] /= 4;
  /* "spigot ⌀16, damaged at the edge, worn R0.4 all the way round": no pin has a worn radius. */
  if (weight[WORN_CORNER] > 0 && weight[PIN] + weight[BORE] > 0 && proto->sizes->len == 2 && (roles & EM_ROLE_DIAMETER) != 0 &&
      (roles & EM_ROLE_RADIUS) != 0 && (roles & (EM_ROLE_ON_DIAMETER | EM_ROLE_ADD)) == 0)
    weight[WORN_CORNER] = MAX (weight[WORN_CORNER], MAX (weight[PIN], weight[BORE]) + EVIDENCE);
  /* "lip ID 32 rounded R0.3": nor has a bore. */
  if (weight[PIN] + weight[BORE] > 0 && weight[SEAT] + weight[RECESS] == 0 && !proto->has_fill && proto->sizes->len <= 3 &&
      ((roles & EM_ROLE_DIAMETER) != 0 || (proto->sizes->len == 2 && (roles & EM_ROLE_LENGTH) == 0)) &&
      (roles & (EM_ROLE_RADIUS | EM_ROLE_SPHERE)) == EM_ROLE_RADIUS && told_by_wear (items, proto) < 0 && !is_one_size (items, proto, EM_ROLE_DIAMETER, EM_ROLE_RADIUS) &&
      (roles & (EM_ROLE_ON_DIAMETER | EM_ROLE_PER_SIDE | EM_ROLE_BUILD | EM_ROLE_ADD | EM_ROLE_DEPTH)) == 0)
    weight[WORN_CORNER] = MAX (weight[WORN_CORNER], MAX (weight[PIN], weight[BORE]) + EVIDENCE);
  /* "the mandrel has its outer edge ⌀48 rounded to 0.6, should be 0.2": no pin is worn as far. */
  if (weight[WORN_CORNER] > 0 && weight[PIN] > 0 && (proto->kinds & (1u << WORN_CORNER)) != 0 && (roles & EM_ROLE_DIAMETER) != 0 &&
      (roles & (EM_ROLE_WORN | EM_ROLE_FINISHED | EM_ROLE_RADIUS)) != 0 && told_by_wear (items, proto) < 0 &&
      (roles & (EM_ROLE_BUILD | EM_ROLE_ADD | EM_ROLE_PER_SIDE | EM_ROLE_ON_DIAMETER | EM_ROLE_LENGTH)) == 0)
    weight[WORN_CORNER] = MAX (weight[WORN_CORNER], weight[PIN] + 2 * EVIDENCE);
  /* "a ding 3 dia": round, so no edge. */
  if ((roles & EM_ROLE_DIAMETER) != 0 && weight[RECESS] > 0)
    {
      weight[RECESS] += (roles & EM_ROLE_DEPTH) != 0 ? EVIDENCE : 0;
      weight[EDGE_NICK] /= 4;
      if ((roles & EM_ROLE_RADIUS) == 0 && (roles & EM_ROLE_DEPTH) != 0)
        weight[WORN_CORNER] /= 4;
    }
  /* "hit mark 2 mm dia and 0.4 deep": what is only round and deep is a pit. */
  if (weight[EDGE_NICK] > 0 && weight[RECESS] == 0 && proto->sizes->len == 2 && (roles & EM_ROLE_DIAMETER) != 0 &&
      (roles & EM_ROLE_DEPTH) != 0)
    weight[RECESS] = weight[EDGE_NICK] + EVIDENCE;
  /* "a ding 2.5 across, 0.9 deep" */
  if ((roles & EM_ROLE_WIDTH) != 0 && (roles & EM_ROLE_DEPTH) != 0 &&
      (roles & (EM_ROLE_LENGTH | EM_ROLE_LEG | EM_ROLE_HEIGHT)) == 0 && proto->sizes->len == 2 &&
      weight[RECESS] > 0 && has_form (proto, "cap"))
    {
      weight[RECESS] += EVIDENCE;
      weight[EDGE_NICK] /= 4;
    }
}

/* How many times as long as wide the labelled sizes make it; 0: not told. */
static double
slenderness (const EmItems *items, const EmProto *proto)
{
  double length = 0, width = 0;

  for (guint i = 0; i < proto->sizes->len && i < LOOKED_OVER; i++)
    {
      const EmSize *size = em_item_size (items, g_array_index (proto->sizes, guint, i));

      if ((size->roles & EM_ROLE_LENGTH) != 0)
        length = em_fraction_in_mm (size->value, size->unit);
      if ((size->roles & EM_ROLE_WIDTH) != 0)
        width = em_fraction_in_mm (size->value, size->unit);
    }
  return width > 0 ? length / width : 0;
}

/* "dent in the parting line edge" */
static gboolean
is_in_edge (const EmItems *items, const EmProto *proto)
{
  const EmSense *dent = proto->noun != EM_NO_ITEM ? em_item_says (items, proto->noun, EM_SAYS_KIND) : NULL;
  guint i = proto->noun + 1;

  if (dent == NULL || g_strcmp0 (dent->set_value, "cap") != 0 || i >= items->items->len || em_item_says (items, i, EM_SAYS_PREPOSITION) == NULL)
    return FALSE;
  for (i++; i < items->items->len && i <= proto->noun + IN_WINDOW; i++)
    {
      const EmSense *edge = em_item_says (items, i, EM_SAYS_KIND);

      if (edge != NULL)
        return edge->weight[EDGE_NICK] > 0 && edge->weight[WORN_CORNER] > 0;
      if (em_item (items, i)->type != EM_ITEM_PHRASE && em_item (items, i)->type != EM_ITEM_UNKNOWN)
        return FALSE;
    }
  return FALSE;
}

/* "Schlag auf der Trennebene 5 x 3, 0,4 tief, bündig füllen": no edge is named, and a blow into a face is filled as a pocket. */
static gboolean
is_filled_blow (const EmItems *items, const EmProto *proto, guint32 roles, const int *weight)
{
  const EmSense *noun = proto->noun != EM_NO_ITEM ? em_item_says (items, proto->noun, EM_SAYS_KIND) : NULL;

  if (!proto->has_fill || weight[EDGE_NICK] == 0 || proto->sizes->len != 3 || noun == NULL || noun->weight[EDGE_NICK] == 0 ||
      (roles & (EM_ROLE_DIAMETER | EM_ROLE_RADIUS | EM_ROLE_LEG | EM_ROLE_HEIGHT)) != 0)
    return FALSE;
  for (guint i = proto->first; i <= proto->last && i < proto->first + LOOKED_OVER; i++)
    {
      const EmSense *edge = em_item_says (items, i, EM_SAYS_KIND);

      if (edge != NULL && edge->weight[WORN_CORNER] > 0)
        return FALSE;
    }
  return TRUE;
}

/* Grooves that are filled, and dents that are edges'. */
static void
weigh_filled (const EmItems *items, const EmProto *proto, guint32 roles, guint n_row, guint n_bare, int *weight)
{
  /* "VENT GROOVE TO BE CLOSED, 40 LG X 4 WIDE X 0.3 DEEP": a short one. */
  if (proto->has_fill && proto->fill >= proto->first && slenderness (items, proto) <= SLENDER && weight[GROOVE] > 0 && (roles & EM_ROLE_LENGTH) != 0 &&
      (roles & EM_ROLE_WIDTH) != 0 &&
      (roles & EM_ROLE_DEPTH) != 0)
    weight[RECESS] = MAX (weight[RECESS], weight[GROOVE] + 2 * EVIDENCE);
  /* "plate edge: dent 3 mm long, 1 x 0.6 mm": three sizes and an edge, so two legs. */
  if (weight[EDGE_NICK] > 0 && weight[RECESS] > 0 && has_form (proto, "cap") && proto->sizes->len == 3 && n_row >= 2 &&
      (roles & (EM_ROLE_DIAMETER | EM_ROLE_DEPTH | EM_ROLE_WIDTH | EM_ROLE_RADIUS)) == 0)
    weight[EDGE_NICK] = MAX (weight[EDGE_NICK], weight[RECESS] + EVIDENCE);
  /* "dent in the lip edge, 6 long, 1.5 deep, 1 wide" */
  if (proto->sizes->len == 3 && (roles & (EM_ROLE_DIAMETER | EM_ROLE_RADIUS)) == 0 && is_in_edge (items, proto))
    weight[EDGE_NICK] = MAX (weight[EDGE_NICK], weight[RECESS] + 2 * EVIDENCE);
  /* "a dent at the edge, 4 mm long, 1 mm on one face, 0.5 mm on the other" */
  if (weight[EDGE_NICK] > 0 && weight[RECESS] > 0 && (roles & EM_ROLE_LEG) != 0)
    weight[EDGE_NICK] = MAX (weight[EDGE_NICK], weight[RECESS] + EVIDENCE);
  /* "pit in the P/L 5 x 3 mm, oval, 1.1 deep": no edge is oval. */
  if (weight[EDGE_NICK] > 0 && weight[RECESS] > 0 && has_form (proto, "ellipsoid") && (roles & EM_ROLE_LEG) == 0)
    {
      weight[RECESS] = MAX (weight[RECESS], weight[EDGE_NICK]) + 2 * EVIDENCE;
      weight[EDGE_NICK] /= 4;
    }
  /* "burn mark, fill it, 6 x 4, 1.5 deep" */
  if (proto->has_fill && weight[GROOVE] > 0 && n_row == 2 && (roles & EM_ROLE_DEPTH) != 0)
    weight[RECESS] = MAX (weight[RECESS], weight[GROOVE] + EVIDENCE);
  /* "lost its corner, 2 mm on both faces" */
  if (proto->is_equal && (roles & EM_ROLE_RADIUS) == 0 && weight[EDGE_NICK] > 0)
    {
      weight[EDGE_NICK] += EVIDENCE;
      weight[WORN_CORNER] /= 2;
    }
  /* "seal face: scored, 2.5 lg .010 wide .006 deep": so slender it is the score. */
  if (weight[GROOVE] > 0 && weight[FACE] > 0 && (roles & EM_ROLE_LENGTH) != 0 && (roles & EM_ROLE_DEPTH) != 0 &&
      slenderness (items, proto) > SLENDER)
    weight[GROOVE] = MAX (weight[GROOVE], weight[FACE] + EVIDENCE);
  /* "crack .50 long x .06 deep, grind out and fill": no pit, which would be wide. */
  if (proto->has_fill && weight[RECESS] > 0 && proto->noun != EM_NO_ITEM && em_item_says (items, proto->noun, EM_SAYS_KIND)->weight[GROOVE] >= TOLD_GROOVE &&
      proto->sizes->len == 2 && (roles & (EM_ROLE_WIDTH | EM_ROLE_DIAMETER)) == 0 && (roles & EM_ROLE_DEPTH) != 0)
    weight[RECESS] = MIN (weight[RECESS], weight[GROOVE] / 2);
  /* "combler rainure 40 x 4 x 2", "Nut zuschweißen": one that was cut, and no crack; "groove" is said of both. */
  if (proto->has_fill && proto->noun != EM_NO_ITEM && proto->sizes->len == 3 && (roles & (EM_ROLE_DIAMETER | EM_ROLE_RADIUS)) == 0 &&
      em_item_says (items, proto->noun, EM_SAYS_KIND)->weight[GROOVE] > 0 && em_item_says (items, proto->noun, EM_SAYS_KIND)->weight[GROOVE] < GROOVE_OF_ANY)
    weight[RECESS] = MAX (weight[RECESS], weight[GROOVE]) + EVIDENCE;
  /* "wash-out 5 x 3 x 2 deep" */
  if ((roles & EM_ROLE_DEPTH) != 0 && (roles & EM_ROLE_RADIUS) == 0 && n_bare >= 2 && weight[RECESS] > 0)
    weight[WORN_CORNER] /= 8;
}

/* "inside of ring 60 mm ID": the label of the diameter says whether it is a bore or a pin; -1: it does not. */
static int
told_by_label (const EmItems *items, const EmProto *proto)
{
  for (guint i = 0; i < proto->sizes->len && i < LOOKED_OVER; i++)
    {
      const EmSize *size = em_item_size (items, g_array_index (proto->sizes, guint, i));
      const EmSense *noun = size->label_item != G_MAXUINT32 ? em_item_says (items, size->label_item, EM_SAYS_KIND) : NULL;

      if ((size->roles & EM_ROLE_DIAMETER) != 0 && noun != NULL && noun->weight[BORE] + noun->weight[PIN] > 0)
        return noun->weight[BORE] > noun->weight[PIN] ? BORE : PIN;
    }
  return -1;
}

/* Three sizes of which the last is no metal to speak of beside the others. */
static gboolean
is_flat_row (const EmItems *items, const EmProto *proto)
{
  const double so_flat = 0.05; /* of the lesser of the others (common practice, no source) */
  double mm[3];

  for (guint i = 0; i < 3; i++)
    {
      const EmSize *size = em_item_size (items, g_array_index (proto->sizes, guint, i));

      mm[i] = em_fraction_plain (size->value);
    }
  return mm[2] > 0 && mm[2] <= so_flat * MIN (mm[0], mm[1]);
}

/* A row of a diameter and of a length that is greater. */
static gboolean
is_long_round (const EmItems *items, const EmProto *proto)
{
  guint first = g_array_index (proto->sizes, guint, 0), second = proto->sizes->len > 1 ? g_array_index (proto->sizes, guint, 1) : first;
  const EmSize *diameter = em_item_size (items, first), *length = em_item_size (items, second);

  return second != first && diameter->chain != 0 && diameter->chain == length->chain && (diameter->roles & EM_ROLE_DIAMETER) != 0 &&
         (length->roles & EM_ROLE_DEPTH) == 0 && em_fraction_plain (length->value) > em_fraction_plain (diameter->value);
}

/* No noun at all. */
static void
weigh_nameless (const EmItems *items, const EmProto *proto, guint32 roles, guint n_row, int *weight)
{
  int by_wear;

  if (proto->noun != EM_NO_ITEM)
    return;
  /* "should be 24.60 on the outside, we find 24.48, 11 long": no flat thing is told by what it is and what it was. */
  by_wear = told_by_wear (items, proto);
  if (by_wear == BORE && n_row == 0 && (roles & EM_ROLE_SLOT) != 0)
    weight[SIDEWALL] = MAX (weight[SIDEWALL], 1) + EVIDENCE;
  else if (by_wear >= 0 && n_row == 0 && (roles & (EM_ROLE_RADIUS | EM_ROLE_THICKNESS | EM_ROLE_AREA)) == 0 &&
           ((roles & EM_ROLE_HEIGHT) == 0 || (roles & EM_ROLE_DIAMETER) != 0))
    weight[by_wear] = MAX (weight[by_wear], 1) + EVIDENCE;
  /* "gib worn, 110 x 16 x 0.08": so flat only a face is. */
  if ((proto->has_worn || proto->has_damage) && proto->sizes->len == 3 && n_row == 3 && is_flat_row (items, proto))
    weight[FACE] = MAX (weight[FACE], 1) + EVIDENCE;
  /* "finger ⌀12 x 45 worn": longer than thick. */
  else if ((proto->has_worn || proto->has_damage) && n_row == 2 && (roles & EM_ROLE_DIAMETER) != 0 && is_long_round (items, proto))
    weight[PIN] = MAX (weight[PIN], 1) + EVIDENCE;
  /* "damage on the core, 9 x 4 x 1" */
  else if (proto->has_damage && proto->sizes->len == 3 && n_row == 3 && roles == 0)
    weight[RECESS] = MAX (weight[RECESS], 1);
  /* An area is a face's, a worn radius an edge's. */
  if ((roles & EM_ROLE_AREA) != 0)
    weight[FACE] = MAX (weight[FACE], 1);
  /* "whatever, worn | 40 | 12 | 0.3" under a length, a width and what to add */
  if ((roles & (EM_ROLE_LENGTH | EM_ROLE_WIDTH)) == (EM_ROLE_LENGTH | EM_ROLE_WIDTH) && (roles & (EM_ROLE_BUILD | EM_ROLE_ADD)) != 0 &&
      (roles & (EM_ROLE_RADIUS | EM_ROLE_DIAMETER | EM_ROLE_DEPTH | EM_ROLE_HEIGHT | EM_ROLE_LEG)) == 0 && proto->sizes->len == 3)
    weight[FACE] = MAX (weight[FACE], 1);
  /* "6 long, goes 1.5 into the top and 2 down the side": only what is broken out has legs. */
  if ((roles & EM_ROLE_LEG) != 0)
    weight[EDGE_NICK] = MAX (weight[EDGE_NICK], 1);
  /* "on top: 30 x 8 low by 0.3" */
  if (proto->sizes->len == 3 && n_row == 2 && (roles & (EM_ROLE_BUILD | EM_ROLE_ADD)) != 0)
    weight[FACE] = MAX (weight[FACE], 1);
  /* "hob mark 5 dia, 0.8 deep", "EDM burn 3 x 2 x 0.4 deep": what is deep is a pit, whatever it is called. */
  if ((roles & EM_ROLE_DEPTH) != 0 && ((roles & EM_ROLE_DIAMETER) != 0 ? proto->sizes->len == 2 : proto->sizes->len == 3) &&
      (roles & (EM_ROLE_RADIUS | EM_ROLE_HEIGHT | EM_ROLE_BUILD | EM_ROLE_WORN | EM_ROLE_FINISHED | EM_ROLE_LEG)) == 0)
    weight[RECESS] = MAX (weight[RECESS], 1);
  /* "PUNCH BODY ⌀.750 GALLED .002 PER SIDE" */
  if ((roles & EM_ROLE_DIAMETER) != 0 && (roles & (EM_ROLE_PER_SIDE | EM_ROLE_ON_DIAMETER)) != 0 &&
      n_row == 0 && (roles & EM_ROLE_RADIUS) == 0)
    weight[told_by_label (items, proto) == BORE ? BORE : PIN]++;
  /* "ADD WELD TO SLIDE GIB, .010 THK X 4.00 X .375" */
  if (proto->sizes->len == 3 &&
      ((proto->has_verb && n_row == 3 && (roles & EM_ROLE_THICKNESS) != 0) ||
       (n_row == 2 && (roles & (EM_ROLE_BUILD | EM_ROLE_ADD | EM_ROLE_WORN)) != 0)) &&
      (roles & (EM_ROLE_RADIUS | EM_ROLE_DIAMETER | EM_ROLE_HEIGHT | EM_ROLE_DEPTH)) == 0)
    weight[FACE] = MAX (weight[FACE], 1);
  if ((roles & EM_ROLE_RADIUS) != 0 && ((roles & EM_ROLE_LENGTH) != 0 || proto->has_verb))
    weight[WORN_CORNER] = MAX (weight[WORN_CORNER], 1);
}

/* The size of that role, in whatever unit; 0: none. */
static double
size_of (const EmItems *items, const EmProto *proto, guint32 role)
{
  for (guint i = 0; i < proto->sizes->len && i < LOOKED_OVER; i++)
    {
      const EmSize *size = em_item_size (items, g_array_index (proto->sizes, guint, i));

      if ((size->roles & role) != 0)
        return em_fraction_in_mm (size->value, size->unit);
    }
  return 0;
}

/* "ends tapered" */
static gboolean
ends_of (const EmItems *items, const EmProto *proto)
{
  for (guint i = 0; i < proto->given->len; i++)
    {
      const EmReadField *field = &g_array_index (proto->given, EmGiven, i).field;

      if (strcmp (field->field, "ends") == 0 && field->start >= em_item (items, proto->first)->start)
        return TRUE;
    }
  return FALSE;
}

/* "Steg zwischen den Nuten aufbauen, 32 lang, 4 breit, 1,5 hoch, Enden gerade": what is so long, wide and high and has ends of a shape is a dam. */
static void
weigh_ends (const EmItems *items, const EmProto *proto, guint32 roles, guint n_row, gboolean has_degrees, int *weight)
{
  const guint32 block = EM_ROLE_LENGTH | EM_ROLE_WIDTH | EM_ROLE_HEIGHT;
  gboolean is_shaped = ends_of (items, proto) || has_degrees || (roles & EM_ROLE_DRAFT) != 0;

  if (weight[RIB] > 0 && is_shaped && ((roles & block) == block || n_row == 3) && (roles & (EM_ROLE_RADIUS | EM_ROLE_DIAMETER | EM_ROLE_LEG)) == 0)
    weight[DAM] = MAX (weight[DAM], weight[RIB] + EVIDENCE);
}

/* "Quetschkante 80 lang, 1 breit, 0,4 auftragen", "pinch edge 80 x 1 mm, add 0.4": an edge that squeezes or cuts, and so narrow, is an upright. */
static void
weigh_pinch (const EmItems *items, const EmProto *proto, guint32 roles, guint n_row, int *weight)
{
  const double broad_mm = 2; /* no such edge is as wide (common practice, no source) */
  gboolean is_plan = n_row == 2 || (roles & (EM_ROLE_LENGTH | EM_ROLE_WIDTH)) == (EM_ROLE_LENGTH | EM_ROLE_WIDTH);
  double width;

  if (weight[RIB] == 0 || weight[WORN_CORNER] == 0 || weight[SIDEWALL] + weight[RECESS] + weight[GROOVE] > 0 || !is_plan || proto->sizes->len != 3 ||
      (roles & (EM_ROLE_BUILD | EM_ROLE_ADD)) == 0 ||
      (roles & (EM_ROLE_RADIUS | EM_ROLE_LEG | EM_ROLE_DEPTH | EM_ROLE_HEIGHT | EM_ROLE_DIAMETER | EM_ROLE_SLOT)) != 0)
    return;
  width = n_row == 2 ? least_of_row_mm (items, proto) : size_of (items, proto, EM_ROLE_WIDTH);
  if (width > 0 && width <= broad_mm)
    weight[RIB] += weight[FACE] + weight[EDGE_NICK] + weight[WORN_CORNER] + 4 * EVIDENCE;
}

/* "pinch edge .018 wide, 4.25 long, add .040 on top": what is to be higher than it is wide is an upright, no face. */
static void
weigh_upright (const EmItems *items, const EmProto *proto, guint32 roles, int *weight)
{
  double width = size_of (items, proto, EM_ROLE_WIDTH);
  gboolean is_thin = (roles & EM_ROLE_THICKNESS) != 0 && (roles & (EM_ROLE_BUILD | EM_ROLE_ADD)) != 0 && (roles & EM_ROLE_WIDTH) == 0;

  /* "cutting edge 0.3 too low, 2 thick, 110 long" */
  if (proto->sizes->len == 3 && (roles & EM_ROLE_LENGTH) != 0 && is_thin && weight[EDGE_NICK] + weight[WORN_CORNER] + weight[PIN] > weight[FACE] &&
      (roles & (EM_ROLE_RADIUS | EM_ROLE_LEG | EM_ROLE_DEPTH | EM_ROLE_DIAMETER | EM_ROLE_SLOT)) == 0)
    weight[RIB] += weight[EDGE_NICK] + weight[WORN_CORNER] + weight[PIN] + 4 * EVIDENCE;
  if (proto->sizes->len == 3 && (roles & EM_ROLE_LENGTH) != 0 && width > 0 &&
      (roles & (EM_ROLE_RADIUS | EM_ROLE_LEG | EM_ROLE_DEPTH | EM_ROLE_HEIGHT | EM_ROLE_DIAMETER | EM_ROLE_SLOT)) == 0 &&
      size_of (items, proto, EM_ROLE_BUILD | EM_ROLE_ADD) > width && weight[FACE] + weight[EDGE_NICK] + weight[WORN_CORNER] > 0)
    weight[RIB] += weight[FACE] + weight[EDGE_NICK] + weight[WORN_CORNER] + 4 * EVIDENCE;
  /* "mandrel tip 1.2 thick x 18 long, build 0.6", "Schneide 2 dick 110 lang, 0,3 zu niedrig": no edge, face or pin is so thick and so long. */
  if (proto->sizes->len == 3 && (roles & EM_ROLE_THICKNESS) != 0 && (roles & EM_ROLE_LENGTH) != 0 &&
      (roles & (EM_ROLE_BUILD | EM_ROLE_ADD)) != 0 && !is_one_size (items, proto, EM_ROLE_THICKNESS, EM_ROLE_BUILD | EM_ROLE_ADD) &&
      (roles & (EM_ROLE_RADIUS | EM_ROLE_LEG | EM_ROLE_WIDTH | EM_ROLE_DEPTH | EM_ROLE_HEIGHT | EM_ROLE_DIAMETER | EM_ROLE_SLOT |
                EM_ROLE_PER_SIDE | EM_ROLE_ON_DIAMETER)) == 0 &&
      weight[SIDEWALL] == 0 && weight[EDGE_NICK] + weight[WORN_CORNER] + weight[PIN] + weight[GROOVE] > 0)
    weight[RIB] += weight[EDGE_NICK] + weight[WORN_CORNER] + weight[PIN] + weight[FACE] + weight[GROOVE] + 4 * EVIDENCE;
}

/* The largest size over the smallest of the plan. */
static double
length_over_width (const EmItems *items, const EmProto *proto)
{
  double most = 0, least = 0;

  for (guint i = 0; i < proto->sizes->len && i < LOOKED_OVER; i++)
    {
      const EmSize *size = em_item_size (items, g_array_index (proto->sizes, guint, i));
      double mm = em_fraction_in_mm (size->value, size->unit);

      if (size->chain == 0 && (size->roles & (EM_ROLE_LENGTH | EM_ROLE_WIDTH)) == 0)
        continue;
      most = MAX (most, mm);
      least = least > 0 ? MIN (least, mm) : mm;
    }
  return least > 0 ? most / least : 0;
}

/* "tip of core broken off, 6 x 1, build up 2.5", "Spitze 10 lang x 0,7 breit fehlt, 2 hoch": a tip that is long and thin is no pin's and no edge's. */
static void
weigh_thin_tip (const EmItems *items, const EmProto *proto, const EmSense *noun, guint32 roles, guint n_row, int *weight)
{
  const double thin = 3; /* times as long as wide (common practice, no source) */
  const guint32 up = EM_ROLE_BUILD | EM_ROLE_ADD | EM_ROLE_HEIGHT;
  gboolean is_plan = n_row == 2 || (roles & (EM_ROLE_LENGTH | EM_ROLE_WIDTH)) == (EM_ROLE_LENGTH | EM_ROLE_WIDTH);
  gboolean is_tip = noun != NULL && (weight[PIN] > 0 || proto->noun_weight <= WEAK_NOUN) && noun->weight[EDGE_NICK] == 0 && weight[FACE] + weight[RIB] + weight[DAM] == 0;

  if (is_tip && is_plan && proto->has_damage && proto->sizes->len == 3 && (roles & up) != 0 &&
      (roles & (EM_ROLE_DIAMETER | EM_ROLE_RADIUS | EM_ROLE_LEG | EM_ROLE_DEPTH | EM_ROLE_WORN | EM_ROLE_FINISHED | EM_ROLE_PER_SIDE | EM_ROLE_ON_DIAMETER)) == 0 &&
      length_over_width (items, proto) >= thin)
    weight[RIB] = MAX (weight[EDGE_NICK], weight[PIN]) + 4 * EVIDENCE;
}

/* What each kind that the words allow gains from the sizes. */
static void
weigh_roles (guint32 roles, guint n_bare, gboolean is_edge, int *weight)
{
  for (int k = 0; k < EM_N_NOTE_KINDS; k++)
    {
      if (weight[k] <= 0)
        continue;
      if (k == WORN_CORNER || k == SEAT)
        weight[k] += (roles & (EM_ROLE_RADIUS | EM_ROLE_SPHERE)) != 0 ? EVIDENCE * 2 : 0;
      if (k == WORN_CORNER && (roles & EM_ROLE_RADIUS) == 0 && (roles & (EM_ROLE_WIDTH | EM_ROLE_THICKNESS | EM_ROLE_BUILD)) != 0)
        weight[k] = MAX (1, weight[k] - EVIDENCE);
      /* "a dent in the seat, spherical radius 1/2" */
      if (k == SEAT)
        weight[k] += (roles & EM_ROLE_SPHERE) != 0 ? EVIDENCE * 2 : 0;
      if (k == EDGE_NICK)
        weight[k] += ((roles & EM_ROLE_LEG) != 0 ? EVIDENCE : 0) + (n_bare >= 2 && (roles & EM_ROLE_RADIUS) == 0 &&
                                                                    is_edge ? 2 * EVIDENCE : 0);
      if (k == BORE || k == PIN)
        weight[k] += (roles & (EM_ROLE_DIAMETER | EM_ROLE_PER_SIDE | EM_ROLE_ON_DIAMETER)) != 0 ? EVIDENCE / 2 : 0;
      if (k == RECESS)
        weight[k] += (roles & EM_ROLE_DEPTH) != 0 ? 1 : 0;
    }
}

/* The heaviest; *out_second another as heavy, or -1. */
static int
pick_kind (const int *weight, int *out_second, gboolean *out_is_close)
{
  int best = -1, second = -1;

  for (int k = 0; k < EM_N_NOTE_KINDS; k++)
    if (weight[k] > 0 && (best < 0 || weight[k] > weight[best]))
      best = k;
  for (int k = 0; k < EM_N_NOTE_KINDS; k++)
    if (k != best && best >= 0 && weight[k] == weight[best] && second < 0)
      second = k;
  *out_second = second;
  if (out_is_close != NULL)
    *out_is_close = FALSE;
  for (int k = 0; k < EM_N_NOTE_KINDS && out_is_close != NULL; k++)
    *out_is_close |= k != best && best >= 0 && weight[k] * 2 > weight[best];
  return best;
}

gboolean
em_fit_is_slot (const EmSense *noun)
{
  return g_strcmp0 (noun->set_value, "box") == 0 || (noun->weight[GROOVE] > 0 && noun->weight[GROOVE] < TOLD_GROOVE);
}

/* A seat by name among its kinds, and every other one that is as strong only damage. */
static gboolean
noun_of_seat (const EmItems *items, const EmProto *proto)
{
  const EmSense *noun = proto->noun != EM_NO_ITEM ? em_item_says (items, proto->noun, EM_SAYS_KIND) : NULL;

  return noun != NULL && (noun->weight[SEAT] > 0 || noun->value != NULL) && (proto->kinds & (1u << SEAT)) != 0;
}

/* "pocket for lock key: wall worn 0.2, 25 long, 10 high", "slit 3 wide: wall scored, add 0.1, 50 x 20": a wall by name that has lost so much
 * is what is welded, and the space where it is. */
static void
weigh_wall_of_space (const EmProto *proto, const EmSense *noun, guint32 roles, guint n_row, int *weight)
{
  const guint32 changed = EM_ROLE_BUILD | EM_ROLE_ADD | EM_ROLE_WORN;
  gboolean is_plan = (roles & EM_ROLE_LENGTH) != 0 ? (roles & (EM_ROLE_HEIGHT | EM_ROLE_DEPTH)) != 0 : n_row == 2;

  gboolean is_wall = (proto->kinds & (1u << SIDEWALL)) != 0 || ((roles & EM_ROLE_PER_SIDE) != 0 && noun != NULL && em_fit_is_slot (noun));

  if (noun == NULL || noun->value != NULL || !is_wall || noun->weight[GROOVE] >= TOLD_GROOVE || noun->weight[RECESS] + noun->weight[GROOVE] == 0 ||
      proto->has_fill || (roles & changed) == 0 || !is_plan || (roles & (EM_ROLE_RADIUS | EM_ROLE_DIAMETER | EM_ROLE_LEG)) != 0)
    return;
  weight[SIDEWALL] = MAX (weight[SIDEWALL], MAX (weight[RECESS], weight[GROOVE])) + EVIDENCE;
  weight[RECESS] /= 2;
}

/* A slot, and the walls of one. */
static void
weigh_slot (const EmItems *items, const EmProto *proto, const EmSense *noun, guint32 roles, guint n_row, int *weight)
{
  /* "2 slots, one wall each washed 0.5, slot 10 wide": the slot is where the wall is. */
  if (weight[SIDEWALL] > 0 && weight[RECESS] > 0 && (roles & EM_ROLE_SLOT) != 0)
    weight[RECESS] /= 4;
  /* "slot 0.2 oversize: 12.2, should be 12.0": its wall has lost so much. */
  if (noun != NULL && noun->value == NULL && !proto->has_fill && n_row == 0 && em_fit_is_slot (noun) &&
      (roles & (EM_ROLE_FINISHED | EM_ROLE_WORN)) != 0 && (roles & (EM_ROLE_RADIUS | EM_ROLE_DIAMETER)) == 0 && told_by_wear (items, proto) == BORE)
    weight[SIDEWALL] = MAX (weight[RECESS], weight[GROOVE]) + EVIDENCE;
  /* "slot 4 wide: both flanks +0.1, 30 long": nothing but its walls is built up. */
  if (noun != NULL && noun->value == NULL && !proto->has_fill && (roles & (EM_ROLE_BUILD | EM_ROLE_ADD)) != 0 && n_row == 0 &&
      (roles & (EM_ROLE_LENGTH | EM_ROLE_WIDTH)) == (EM_ROLE_LENGTH | EM_ROLE_WIDTH) &&
      ((roles & EM_ROLE_PER_SIDE) != 0 || weight[SIDEWALL] > 0) && em_fit_is_slot (noun))
    weight[SIDEWALL] = MAX (weight[SIDEWALL], MAX (weight[RECESS], weight[GROOVE])) + EVIDENCE;
  /* "flank of the slot washed out, 15 long, 4 high": how it is, and no edge of it. */
  if (weight[SIDEWALL] > 0 && weight[WORN_CORNER] > 0 && (roles & (EM_ROLE_LENGTH | EM_ROLE_HEIGHT)) == (EM_ROLE_LENGTH | EM_ROLE_HEIGHT) &&
      (roles & (EM_ROLE_RADIUS | EM_ROLE_DIAMETER | EM_ROLE_LEG)) == 0 && (roles & (EM_ROLE_BUILD | EM_ROLE_ADD | EM_ROLE_THICKNESS)) != 0)
    weight[SIDEWALL] = MAX (weight[SIDEWALL], weight[WORN_CORNER] + EVIDENCE);
  /* "keyway, one side is worn .012, 2.00 long by .25 high": a slot is deep, its wall is high. */
  if (noun != NULL && noun->value == NULL && !proto->has_fill && em_fit_is_slot (noun) && proto->sizes->len == 3 &&
      (roles & (EM_ROLE_LENGTH | EM_ROLE_HEIGHT)) == (EM_ROLE_LENGTH | EM_ROLE_HEIGHT) && (roles & (EM_ROLE_BUILD | EM_ROLE_ADD | EM_ROLE_WORN)) != 0 &&
      (roles & (EM_ROLE_WIDTH | EM_ROLE_GAP | EM_ROLE_DEPTH | EM_ROLE_RADIUS | EM_ROLE_DIAMETER)) == 0)
    weight[SIDEWALL] = MAX (weight[SIDEWALL], MAX (weight[RECESS], weight[GROOVE])) + EVIDENCE;
  /* "deckle slot, one wall: 38 lg x 9 high, add 0.5" */
  if (weight[SIDEWALL] > 0 && weight[RECESS] > 0 && (roles & (EM_ROLE_BUILD | EM_ROLE_ADD)) != 0 &&
      ((roles & EM_ROLE_HEIGHT) != 0 || (n_row == 2 && proto->sizes->len == 3 && !proto->has_fill) /* "Wandung Tasche links zu weit, 32 x 14, 0,15 drauf" */))
    weight[RECESS] /= 2;
}

/* "pitted": what became of the thing. */
static gboolean
is_state (const EmSense *noun)
{
  return noun != NULL && (g_strcmp0 (noun->value, "damage") == 0 || g_strcmp0 (noun->value, "state") == 0);
}

/* Seats, by their cone or sphere. */
static void
weigh_seat (const EmItems *items, const EmProto *proto, guint32 roles, gboolean has_degrees, int *weight)
{
  const EmSense *noun = proto->noun != EM_NO_ITEM ? em_item_says (items, proto->noun, EM_SAYS_KIND) : NULL;

  /* "bushing: spherical radius 20, hammered", "SR 12 pitted, add 0.5" */
  if ((roles & EM_ROLE_SPHERE) != 0 && weight[SEAT] == 0 && (weight[RECESS] == 0 || (is_state (noun) && (roles & (EM_ROLE_BUILD | EM_ROLE_ADD)) != 0)))
    weight[SEAT] = 8 * EVIDENCE;
  /* "cone damaged: large dia 20, small dia 12, 0.5 all over" */
  if (has_form (proto, "cone") && !proto->has_fill && (roles & EM_ROLE_LARGE) != 0 && (roles & EM_ROLE_SMALL) != 0)
    weight[SEAT] = MAX (weight[SEAT], MAX (weight[PIN], weight[BORE])) + 4 * EVIDENCE;
  /* "cone of the valve ⌀14 to ⌀6, 8 deep, build 0.5" */
  if ((has_form (proto, "cone") || weight[SEAT] > 0) && !proto->has_fill && weight[PIN] + weight[BORE] <= MOST_OF_TIP && (roles & EM_ROLE_DIAMETER) != 0 &&
      (roles & (EM_ROLE_BUILD | EM_ROLE_ADD)) != 0)
    weight[SEAT] = MAX (weight[SEAT], MAX (weight[RECESS], MAX (weight[PIN], weight[BORE])) + EVIDENCE);
  /* "valve seat, mouth 20, small end 14, pitted, 0.4 all round": what is wrong with it. */
  if (weight[SEAT] > 0 && noun_of_seat (items, proto) && !proto->has_fill &&
      ((roles & (EM_ROLE_SPHERE | EM_ROLE_SMALL)) != 0 || ((roles & EM_ROLE_LARGE) != 0 && (roles & EM_ROLE_DIAMETER) != 0) ||
       (has_form (proto, "cone") && (roles & EM_ROLE_DIAMETER) != 0)) &&
      (roles & (EM_ROLE_WIDTH | EM_ROLE_LEG | EM_ROLE_GAP)) == 0)
    weight[SEAT] = MAX (weight[SEAT], MAX (weight[RECESS], MAX (weight[GROOVE], weight[EDGE_NICK])) + EVIDENCE);
  /* "shaft seat ⌀35 k6 worn to 34.95": round, and no cone. */
  if (weight[SEAT] > 0 && (roles & EM_ROLE_DIAMETER) != 0 && !has_form (proto, "cone") && !has_degrees && told_by_wear (items, proto) >= 0 &&
      (roles & (EM_ROLE_SPHERE | EM_ROLE_LARGE | EM_ROLE_SMALL | EM_ROLE_ANGLE | EM_ROLE_RADIUS | EM_ROLE_BUILD | EM_ROLE_ADD)) == 0)
    weight[told_by_wear (items, proto)] = weight[SEAT] + 2 * EVIDENCE;
  /* "valve pin, conical tip seat 40° included" */
  if (has_form (proto, "cone") && weight[SEAT] > 0 && (roles & EM_ROLE_LARGE) != 0 && ((roles & EM_ROLE_ANGLE) != 0 || has_degrees))
    weight[SEAT] += 4 * EVIDENCE;
}

/* "worn spot, oval, 8 x 5 and 0.4 deep": no face is oval. */
static void
weigh_oval (const EmProto *proto, guint32 roles, int *weight)
{
  if (weight[FACE] > 0 && has_form (proto, "ellipsoid") && (roles & (EM_ROLE_DEPTH | EM_ROLE_BUILD | EM_ROLE_ADD)) == EM_ROLE_DEPTH)
    weight[RECESS] = MAX (weight[RECESS], weight[FACE] + EVIDENCE);
}

/* "ding, 5 across and 1 deep": round, and off any edge. */
static void
weigh_ding (const EmProto *proto, const EmSense *noun, guint32 roles, guint n_row, int *weight)
{
  if (noun != NULL && noun->weight[EDGE_NICK] > 0 && noun->weight[RECESS] > 0 && g_strcmp0 (noun->set_value, "cap") == 0 && proto->sizes->len == 2 && n_row == 0 &&
      (roles & EM_ROLE_DEPTH) != 0 && (roles & (EM_ROLE_DIAMETER | EM_ROLE_WIDTH)) != 0 && (roles & (EM_ROLE_LENGTH | EM_ROLE_LEG | EM_ROLE_HEIGHT)) == 0)
    weight[RECESS] = MAX (weight[RECESS], weight[EDGE_NICK] + EVIDENCE);
}

/* "the upper one is scored, 10 dia worn to 9.9": no score has two diameters. */
static void
weigh_scored_round (const EmItems *items, const EmProto *proto, guint32 roles, int *weight)
{
  int kind = (roles & EM_ROLE_DIAMETER) != 0 && (roles & EM_ROLE_WORN) != 0 ? told_by_wear (items, proto) : -1;

  if (kind >= 0 && weight[GROOVE] > 0)
    weight[kind] = MAX (weight[kind], weight[GROOVE] + EVIDENCE);
}

/* "nose, 4 x 2 x 1 broken off": three in a row are no pin's, and broken off is an edge. */
static void
weigh_broken_nose (const EmProto *proto, guint32 roles, guint n_row, int *weight)
{
  const guint32 round = EM_ROLE_DIAMETER | EM_ROLE_WORN | EM_ROLE_FINISHED | EM_ROLE_BUILD | EM_ROLE_ADD | EM_ROLE_PER_SIDE | EM_ROLE_ON_DIAMETER;

  if (weight[PIN] > 0 && proto->has_damage && n_row == 3 && proto->sizes->len == 3 && (roles & round) == 0 && !proto->has_fill)
    weight[EDGE_NICK] = MAX (weight[EDGE_NICK], weight[PIN] + EVIDENCE);
}

/* Sizes tell kinds apart that share a noun: "corner" with a radius is worn, with two legs nicked. */
int
em_fit_kind (const EmItems *items, const EmProto *proto, int *out_second, gboolean *out_is_close)
{
  int weight[EM_N_NOTE_KINDS];
  guint32 roles = 0;
  guint n_bare = 0, n_row = 0;
  gboolean has_degrees = FALSE;
  int best;
  /* "surface 45 x 30, missing 0.35": a thing that is no edge by name does not become one by its sizes. */
  const EmSense *noun = proto->noun != EM_NO_ITEM ? em_item_says (items, proto->noun, EM_SAYS_KIND) : NULL;
  gboolean is_edge = noun == NULL || noun->weight[EDGE_NICK] > 0 || proto->noun_weight <= WEAK_NOUN;

  memcpy (weight, proto->weight, sizeof weight);
  for (guint i = 0; i < proto->sizes->len; i++)
    {
      const EmSize *size = em_item_size (items, g_array_index (proto->sizes, guint, i));

      roles |= size->roles;
      n_row += size->chain != 0;
      has_degrees |= size->unit == EM_UNIT_DEGREE;
      n_bare += size->label_item == G_MAXUINT32 && size->unit != EM_UNIT_DEGREE;
    }
  /* "Worn" alone is no edge. */
  if (proto->noun == EM_NO_ITEM && !proto->has_damage && (roles & EM_ROLE_RADIUS) == 0)
    weight[WORN_CORNER] = 0;
  /* "now there is damage, 6 x 4": nor is "now" with two sizes in a row. */
  if ((roles & EM_ROLE_RADIUS) == 0 && n_row >= 2 && weight[WORN_CORNER] <= ONE_WORD)
    weight[WORN_CORNER] = 0;
  weigh_round (items, proto, roles, weight);
  weigh_edge (items, proto, roles, weight);
  weigh_filled (items, proto, roles, n_row, n_bare, weight);
  weigh_build (proto, noun, roles, n_row, weight);
  weigh_ring (items, proto, noun, roles, weight);
  weigh_damage (proto, roles, n_row, weight);
  weigh_hurt_row (proto, roles, n_row, weight);
  weigh_broken_rib (noun, roles, n_row, weight);
  weigh_hurt_face (items, proto, noun, roles, n_row, weight);
  weigh_round_face (items, proto, roles, weight);
  weigh_pitted_face (proto, noun, roles, weight);
  weigh_oval (proto, roles, weight);
  weigh_scored_round (items, proto, roles, weight);
  weigh_nameless (items, proto, roles, n_row, weight);
  weigh_weak_pin (proto, roles, n_row, weight);
  weigh_upright (items, proto, roles, weight);
  weigh_ends (items, proto, roles, n_row, has_degrees, weight);
  weigh_pinch (items, proto, roles, n_row, weight);
  weigh_thin_tip (items, proto, noun, roles, n_row, weight);
  weigh_slot (items, proto, noun, roles, n_row, weight);
  weigh_wall_of_space (proto, noun, roles, n_row, weight);
  weigh_seat (items, proto, roles, has_degrees, weight);
  /* No radius, but two sizes more than the length: an edge with two legs, if the words allow it. */
  if ((roles & EM_ROLE_RADIUS) == 0 && n_bare >= 2 && weight[EDGE_NICK] > 0)
    weight[WORN_CORNER] /= 3;
  weigh_roles (roles, n_bare, is_edge, weight);
  weigh_ding (proto, noun, roles, n_row, weight);
  weigh_broken_nose (proto, roles, n_row, weight);
  if (is_filled_blow (items, proto, roles, weight))
    weight[RECESS] = MAX (weight[RECESS], weight[EDGE_NICK] + EVIDENCE);
  best = pick_kind (weight, out_second, out_is_close);
  /* "Kerbe 25 lang, 1 breit, 0,5 tief": so slender it may be a groove. */
  if (out_is_close != NULL && best == EDGE_NICK && (roles & EM_ROLE_WIDTH) != 0 && (roles & EM_ROLE_DEPTH) != 0 &&
      (roles & EM_ROLE_LEG) == 0 && slenderness (items, proto) > SLENDER)
    *out_is_close = TRUE;
  return best;
}
