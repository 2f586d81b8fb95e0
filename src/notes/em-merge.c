/* em-merge: which proposals are one repair told in parts, or only say where the next one is.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-merge-parts.h"

#include "em-fit.h"


enum
{
  MERGE_SIZES_MAX = 24,
  CERTAIN = 20,          /* more than any word weighs */
  TIP_MAX = 2            /* what the word "tip" weighs */
};

static int
kind_of (const EmItems *items, const EmProto *proto)
{
  int second;

  return em_fit_kind (items, proto, &second, NULL);
}

/* ---- one repair told in parts: each try has the likeliest kinds of both proposals ---- */

/* Sizes of its own, or of the slot it lies in where the next is no fragment. */
static gboolean
has_own_sizes (const EmItems *items, const EmProto *proto, const EmProto *next)
{
  for (guint i = 0; i < proto->sizes->len; i++)
    if (next->noun != EM_NO_ITEM || (em_item_size (items, g_array_index (proto->sizes, guint, i))->roles & EM_ROLE_SLOT) == 0)
      return TRUE;
  return FALSE;
}

/* "BUILD UP CORE PIN .010" and on the next line "PIN .312 DIA X .875 LG": one repair told in two parts, when the parts
 * are of one kind, neither is whole and no field is told twice. */
static gboolean
try_merge (EmItems *items, EmProto *proto, EmProto *next, int kind, int other)
{
  gboolean is_wall_of_step; /* "step worn, 300 long, build up wall 2 high" */
  EmFit a, b;

  /* More sizes than any repair has: no need to look, and time stays linear. */
  if (proto->sizes->len > MERGE_SIZES_MAX)
    return FALSE;
  is_wall_of_step = kind == FACE && other == SIDEWALL && proto->weight[SIDEWALL] > 0;
  if (is_wall_of_step)
    kind = SIDEWALL;
  /* "RIB #2: DITTO", "RIB #3: DITTO, 45 LG" */
  if (proto->is_same && (next->is_same || (proto->sizes->len == 0 && next->noun != EM_NO_ITEM)))
    return FALSE;
  if (!next->may_merge || kind < 0 || kind != other ||
      (proto->count_item != EM_NO_ITEM && next->count_item != EM_NO_ITEM && proto->count_item != next->count_item))
    return FALSE;
  em_fit_sizes (items, proto, kind, &a);
  em_fit_sizes (items, next, kind, &b);
  /* "slot 6 wide, left flank has gone" and in the next line "needs 0.2 over 55 x 14": of the flank nothing was told yet. */
  if (a.is_complete || (b.is_complete && has_own_sizes (items, proto, next)))
    return FALSE;
  for (guint i = 0; i < b.n_fitted; i++)
    {
      const EmFitted *same = em_fit_find (&a, b.fitted[i].field);

      if (same != NULL && b.fitted[i].item != EM_NO_ITEM && same->value != b.fitted[i].value)
        return FALSE;
    }
  absorb (proto, next);
  if (is_wall_of_step)
    proto->weight[SIDEWALL] += CERTAIN;
  proto->has_build |= next->has_build;
  proto->has_fill |= next->has_fill;
  proto->is_equal |= next->is_equal;
  return TRUE;
}

/* "edge rolled R.010, .5 long, restore edge": the same thing once more, and only what is to be done with it. */
static gboolean
try_deed (EmItems *items, EmProto *proto, EmProto *next, int kind, int other)
{
  if (kind < 0 || kind != other || next->sizes->len > 0 || proto->sizes->len == 0 || !next->has_verb || next->has_damage ||
      next->count_item != EM_NO_ITEM || em_item (items, proto->last)->line != em_item (items, next->first)->line)
    return FALSE;
  absorb (proto, next);
  return TRUE;
}

/* "worn, build up 0.4 evenly" in the line below a seat or a face that nothing was to be added to yet. */
static gboolean
try_nameless (EmItems *items, EmProto *proto, EmProto *next, int kind, int other)
{
  const guint32 added = EM_ROLE_BUILD | EM_ROLE_ADD | EM_ROLE_WELD | EM_ROLE_WORN;
  const EmSize *size = next->sizes->len == 1 ? em_item_size (items, g_array_index (next->sizes, guint, 0)) : NULL;
  EmFit fit;

  if (size == NULL || em_item (items, next->first)->line > em_item (items, proto->last)->line + 1 || next->noun != EM_NO_ITEM || kind < 0 ||
      kind == BORE || kind == PIN || size->chain != 0 || (!next->has_build && (size->roles & (EM_ROLE_BUILD | EM_ROLE_ADD | EM_ROLE_WELD)) == 0) ||
      (size->roles & ~added) != 0 ||
      (proto->roles & (EM_ROLE_BUILD | EM_ROLE_ADD | EM_ROLE_WELD)) != 0 || next->count_item != EM_NO_ITEM ||
      proto->sizes->len == 0 || proto->sizes->len > MERGE_SIZES_MAX || other >= 0)
    return FALSE;
  em_fit_sizes (items, proto, kind, &fit);
  if (fit.is_complete)
    return FALSE;
  absorb (proto, next);
  proto->roles |= next->roles;
  proto->has_build |= next->has_build;
  proto->has_worn |= next->has_worn;
  return TRUE;
}

/* An edge turns out to be a strip or a blade: what was said of the edge stays. */
static void
become_of_edge (EmProto *proto, EmProto *next)
{
  append_uint (proto->sizes, next->sizes);
  proto->roles |= next->roles;
  if (next->count_item != EM_NO_ITEM)
    take_count (proto, next);
  become (proto, next);
}

/* The largest size that is called a radius, in mm; 0: none. */
static double
radius_mm (const EmItems *items, const EmProto *proto)
{
  double most = 0;

  for (guint i = 0; i < proto->sizes->len; i++)
    {
      const EmSize *size = em_item_size (items, g_array_index (proto->sizes, guint, i));

      if ((size->roles & EM_ROLE_RADIUS) != 0)
        most = MAX (most, em_fraction_in_mm (size->value, size->unit));
    }
  return most;
}

/* An angle, or a radius smaller than the worn one; nothing that another edge would need. */
static gboolean
is_more_of_corner (const EmItems *items, const EmProto *next, double worn_mm)
{
  for (guint i = 0; i < next->sizes->len; i++)
    {
      const EmSize *size = em_item_size (items, g_array_index (next->sizes, guint, i));
      gboolean is_less = (size->roles & (EM_ROLE_RADIUS | EM_ROLE_FINISHED)) != 0 && em_fraction_in_mm (size->value, size->unit) < worn_mm;

      /* "corner is 90 degrees" */
      if (size->chain == 0 && size->unit == EM_UNIT_DEGREE)
        continue;
      if (size->chain != 0 || (size->roles & (EM_ROLE_LENGTH | EM_ROLE_DIAMETER | EM_ROLE_WORN)) != 0 ||
          (size->unit != EM_UNIT_DEGREE && !is_less))
        return FALSE;
    }
  return TRUE;
}

/* "edge peened to .020 R, 1.06 long, solid corner is 78°. Bring back to .002 R", "…, inside edge": more of the edge told before. */
static gboolean
try_corner (EmItems *items, EmProto *proto, EmProto *next, int kind, int other)
{
  double worn_mm = radius_mm (items, proto);

  if (!next->may_merge || kind != WORN_CORNER || other != WORN_CORNER || next->has_damage || next->has_worn || next->count_item != EM_NO_ITEM ||
      worn_mm == 0 || next->sizes->len > 2 || (next->sizes->len == 0 && next->given->len == 0) ||
      !is_more_of_corner (items, next, worn_mm))
    return FALSE;
  for (guint i = 0; i < next->sizes->len; i++)
    {
      EmSize *size = em_item_size (items, g_array_index (next->sizes, guint, i));

      if (size->unit == EM_UNIT_DEGREE)
        continue;
      size->roles |= EM_ROLE_FINISHED | EM_ROLE_RADIUS;
      size->reason = size->reason != NULL ? size->reason : "from-words";
    }
  /* What is told of both is an edge's. */
  proto->weight[WORN_CORNER] += CERTAIN;
  absorb (proto, next);
  return TRUE;
}

/* "DAM 40 x 3 x 1", and in the next line "- DAM SIDES WITH 10° DRAFT": the same thing, of which only an angle is told. */
static gboolean
try_angle (EmItems *items, EmProto *proto, EmProto *next, int kind, int other)
{
  guint32 line = em_item (items, proto->last)->line;
  const EmSize *size = next->sizes->len == 1 ? em_item_size (items, g_array_index (next->sizes, guint, 0)) : NULL;

  /* "flanks with 5° draft" of a dam */
  if (size == NULL || (kind != DAM && kind != SIDEWALL && kind != RIB) || (other != kind && !(kind == DAM && other == SIDEWALL)) || next->has_damage || next->has_worn || next->has_build ||
      next->count_item != EM_NO_ITEM || em_item (items, next->first)->line > line + 1 ||
      (size->unit != EM_UNIT_DEGREE && (size->roles & (EM_ROLE_DRAFT | EM_ROLE_ANGLE)) == 0) ||
      (proto->roles & (EM_ROLE_DRAFT | EM_ROLE_ANGLE)) != 0 || proto->sizes->len > MERGE_SIZES_MAX)
    return FALSE;
  absorb (proto, next);
  proto->roles |= next->roles;
  return TRUE;
}

/* A tip, which of a rib is no pin's. */
static gboolean
is_tip (const EmItems *items, const EmProto *proto, int kind)
{
  const EmSense *noun = proto->noun != EM_NO_ITEM ? em_item_says (items, proto->noun, EM_SAYS_KIND) : NULL;

  return kind == PIN && noun != NULL && noun->weight[PIN] <= TIP_MAX && (proto->roles & EM_ROLE_DIAMETER) == 0;
}

/* "Rib 48 long, 0.4 missing on top. Flanks only the top 2 mm": how far down its sides a rib is coated. "Coat tip": its crest. */
static gboolean
try_flanks (EmItems *items, EmProto *proto, EmProto *next, int kind, int other)
{
  const guint32 told = EM_ROLE_DEPTH | EM_ROLE_HEIGHT | EM_ROLE_WORN | EM_ROLE_FINISHED | EM_ROLE_DRAFT;
  EmSize *size = next->sizes->len == 1 ? em_item_size (items, g_array_index (next->sizes, guint, 0)) : NULL;

  if (!next->may_merge || kind != RIB || !(other == SIDEWALL || is_tip (items, next, other)) ||
      next->sizes->len > 1 || (next->count_item != EM_NO_ITEM && next->count != 2) ||
      (size != NULL && (size->chain != 0 || (size->roles & ~told) != 0)))
    return FALSE;
  if (size != NULL)
    size->roles = EM_ROLE_DEPTH;
  /* "both flanks": of each rib. */
  next->count_item = EM_NO_ITEM;
  absorb (proto, next);
  return TRUE;
}

/* Both tell no field otherwise; what is told by both is used. */
static gboolean
agree (EmItems *items, const EmFit *a, const EmFit *b)
{
  for (guint i = 0; i < b->n_fitted; i++)
    {
      const EmFitted *same = em_fit_find (a, b->fitted[i].field);

      if (same != NULL && b->fitted[i].item != EM_NO_ITEM && same->value != b->fitted[i].value)
        return FALSE;
    }
  for (guint i = 0; i < b->n_fitted; i++)
    if (b->fitted[i].item != EM_NO_ITEM && em_fit_find (a, b->fitted[i].field) != NULL)
      em_item (items, em_fit_find (a, b->fitted[i].field)->item)->is_used = TRUE;
  return TRUE;
}

/* "Blade 1 thick, tip short 0.6" and "build up tip 0.6 and 1.5 down each side", "add 0.5 on tip. Blade 1.5 thick x 8": the tip is the blade's. */
static gboolean
try_tip (EmItems *items, EmProto *proto, EmProto *next, int kind, int other)
{
  const guint32 told = EM_ROLE_BUILD | EM_ROLE_ADD | EM_ROLE_WORN | EM_ROLE_DEPTH | EM_ROLE_PER_SIDE | EM_ROLE_WELD;
  gboolean is_before = other == RIB && is_tip (items, proto, kind);
  const EmProto *tip = is_before ? proto : next;
  EmFit a, b;

  if (!(is_before || (kind == RIB && is_tip (items, next, other))) || tip->sizes->len == 0 || tip->sizes->len > 2 || (tip->roles & ~told) != 0 ||
      (tip->count_item != EM_NO_ITEM && proto->count_item != next->count_item) || proto->sizes->len + next->sizes->len > MERGE_SIZES_MAX ||
      em_item (items, next->first)->line > em_item (items, proto->last)->line + (is_before ? 0 : 1))
    return FALSE;
  em_fit_sizes (items, proto, RIB, &a);
  em_fit_sizes (items, next, RIB, &b);
  if (!agree (items, &a, &b))
    return FALSE;
  if (is_before)
    become_with_all (proto, next);
  else
    absorb (proto, next);
  proto->roles |= next->roles;
  proto->has_build |= next->has_build;
  return TRUE;
}

/* "pocket sunk too deep: 14 x 9, floor has to come up 0.35": how large it is, and behind it only how much is wanted. */
static gboolean
is_only_plan (EmItems *items, const EmProto *proto, const EmProto *next)
{
  const guint32 was = EM_ROLE_WORN | EM_ROLE_FINISHED; /* the little words "was" and "is" */
  const EmSize *size[3];

  if (proto->sizes->len != 2 || next->sizes->len != 1)
    return FALSE;
  for (guint i = 0; i < 3; i++)
    size[i] = em_item_size (items, g_array_index (i < 2 ? proto->sizes : next->sizes, guint, i % 2));
  return size[0]->chain != 0 && size[0]->chain == size[1]->chain && ((size[0]->roles | size[1]->roles) & ~was) == 0 &&
         size[2]->chain == 0 && (size[2]->roles & EM_ROLE_BUILD) != 0;
}

/* No size, or only "0.5 too deep" when the next says itself what it needs. */
static gboolean
is_only_error (EmItems *items, const EmProto *proto, const EmProto *next)
{
  if (is_only_plan (items, proto, next))
    return TRUE;
  return proto->sizes->len == 0 || (proto->sizes->len == 1 && (next->roles & EM_ROLE_BUILD) != 0 &&
                                    em_item_size (items, g_array_index (proto->sizes, guint, 0))->roles == EM_ROLE_BUILD);
}

/* "We cut a pocket too deep. Floor needs .060 back, 2.5 x 1.25": a pocket or slot without sizes is where the floor or the wall lies. */
static gboolean
try_part (EmItems *items, EmProto *proto, EmProto *next, G_GNUC_UNUSED int kind, int other)
{
  const EmSense *noun = proto->noun != EM_NO_ITEM ? em_item_says (items, proto->noun, EM_SAYS_KIND) : NULL;

  if (!next->may_merge || noun == NULL || noun->weight[RECESS] == 0 || g_strcmp0 (noun->set_value, "cap") == 0 ||
      (other != SIDEWALL && other != FACE) || !is_only_error (items, proto, next) ||
      next->sizes->len == 0 || proto->count_item != EM_NO_ITEM ||
        line_of (items, proto) != line_of (items, next))
    return FALSE;
  for (guint i = 0; i < proto->sizes->len && proto->sizes->len > 1; i++)
    em_item_size (items, g_array_index (proto->sizes, guint, i))->roles = 0;
  g_array_set_size (proto->given, 0);
  become_with_all (proto, next);
  return TRUE;
}

/* A bore or pin of which only the diameter is told, and nothing that is to be done. */
static gboolean
is_only_named (EmItems *items, const EmProto *proto, int kind)
{
  /* "ID is .312": the little word tells no wear, and the noun is the size's label. */
  guint32 roles = proto->sizes->len == 1 ? em_item_size (items, g_array_index (proto->sizes, guint, 0))->roles & ~(guint32) EM_ROLE_WORN : 0;
  const EmSense *label = proto->noun != EM_NO_ITEM ? em_item_says (items, proto->noun, EM_SAYS_LABEL) : NULL;

  if (roles == 0 && proto->sizes->len == 1 && label != NULL && (label->roles & EM_ROLE_DIAMETER) != 0)
    em_item_size (items, g_array_index (proto->sizes, guint, 0))->roles |= roles = EM_ROLE_DIAMETER;
  return (kind == BORE || kind == PIN || kind == FACE) && !proto->has_verb &&
         !proto->has_worn &&
         !proto->has_damage && (roles & ~(guint32) (EM_ROLE_LARGE | EM_ROLE_SMALL | EM_ROLE_LENGTH)) <= EM_ROLE_DIAMETER &&
           roles != 0;
}

/* An edge runs round what is of that kind: on which side. */
static void
give_side (EmItems *items, EmProto *edge, guint item, int kind)
{
  EmGiven side = em_given_new ("side", kind == BORE ? "bore" : "outer", em_item (items, item));

  side.field.state = EM_READ_INFERRED;
  side.field.reason = "from-words";
  if ((kind == BORE || kind == PIN) && em_fit_given_text (edge, "side") == NULL)
    g_array_append_val (edge->given, side);
}

/* "parting line mashed, 90 long, edge is rolled to R0.6": no nick has only a length, and no worn edge only a radius. */
static gboolean
try_mashed_edge (EmItems *items, EmProto *proto, EmProto *next, int kind, int other)
{
  const guint32 along = EM_ROLE_LENGTH | EM_ROLE_WORN;
  const EmSense *noun = proto->noun != EM_NO_ITEM ? em_item_says (items, proto->noun, EM_SAYS_KIND) : NULL;

  if (!next->may_merge || noun == NULL || noun->value == NULL || kind != EDGE_NICK || other != WORN_CORNER || proto->sizes->len != 1 || next->sizes->len != 1 || next->count_item != EM_NO_ITEM ||
      (proto->roles & ~along) != 0 || next->is_same || radius_mm (items, next) <= 0 || line_of (items, proto) != line_of (items, next))
    return FALSE;
  append_uint (proto->sizes, next->sizes);
  append_uint (proto->given, next->given);
  become (proto, next);
  return TRUE;
}

/* "FILL POCKET 30 X 20 X 5. POCKET CORNERS R3": how round the corners of what is filled are, which stays visible. */
static gboolean
try_pocket_corners (EmItems *items, EmProto *proto, EmProto *next, int kind, int other)
{
  const EmSense *noun = next->noun != EM_NO_ITEM ? em_item_says (items, next->noun, EM_SAYS_KIND) : NULL;

  if (kind != RECESS || other != WORN_CORNER || proto->sizes->len < 3 || noun == NULL || noun->value != NULL || next->has_damage || next->has_worn || next->has_verb ||
      next->is_same || next->count_item != EM_NO_ITEM || next->kind_reason != NULL || line_of (items, next) > line_of (items, proto) + 1)
    return FALSE;
  for (guint i = 0; i < next->sizes->len; i++)
    {
      guint32 roles = em_item_size (items, g_array_index (next->sizes, guint, i))->roles;

      if (roles == 0 || (roles & ~(guint32) (EM_ROLE_RADIUS | EM_ROLE_CLEARANCE)) != 0)
        return FALSE;
    }
  if (radius_mm (items, next) <= 0)
    return FALSE;
  append_uint (proto->given, next->given);
  for (guint i = 0; i < next->sizes->len; i++)
    if ((em_item_size (items, g_array_index (next->sizes, guint, i))->roles & EM_ROLE_CLEARANCE) != 0)
      g_array_append_val (proto->sizes, g_array_index (next->sizes, guint, i));
  em_item (items, next->noun)->is_used = FALSE;
  next->is_merged = TRUE;
  return TRUE;
}

/* "BORE EDGE WORN R0.4, BORE ⌀20": the bore is where the edge runs. "Edge of the pin rolled to R0.2, pin is ⌀11": so is the pin. */
static gboolean
try_bore_edge (EmItems *items, EmProto *proto, EmProto *next, int kind, int other)
{
  gboolean is_round = em_fit_given_text (proto, "side") != NULL ||
                      (proto->sizes->len == 1 && radius_mm (items, proto) > 0 && next->count_item == EM_NO_ITEM);

  if (!next->may_merge || kind != WORN_CORNER || other < 0 || other == FACE || !is_only_named (items, next, other) || !is_round ||
      proto->sizes->len > MERGE_SIZES_MAX)
    return FALSE;
  give_side (items, proto, next->first, other);
  absorb (proto, next);
  return TRUE;
}

/* "BORE MOUTH ⌀28, EDGE WORN R0.8", "collar ⌀70, corner R1": the edge runs round the bore, pin or collar that was named before it. */
static gboolean
try_edge_of_bore (EmItems *items, EmProto *proto, EmProto *next, int kind, int other)
{
  if (!next->may_merge || other != WORN_CORNER || !is_only_named (items, proto, kind) || (next->roles & EM_ROLE_DIAMETER) != 0 ||
      line_of (items, proto) != line_of (items, next))
    return FALSE;
  append_uint (proto->sizes, next->sizes);
  append_uint (proto->given, next->given);
  give_side (items, proto, proto->noun != EM_NO_ITEM ? proto->noun : proto->first, kind);
  if (proto->count_item == EM_NO_ITEM)
    take_count (proto, next);
  become (proto, next);
  return TRUE;
}

/* "⌀20 PIN, SCRATCH 15 LG": the pin is where the scratch is. Its words stay visible as unused. */
gboolean
em_merge_is_place_of (EmItems *items, const EmProto *proto, const EmProto *next)
{
  int kind = kind_of (items, proto), other = kind_of (items, next);
  EmFit fit;

  if (!next->may_merge || kind < 0 || kind == FACE || other < 0 || !is_only_named (items, proto, kind) || next->noun == EM_NO_ITEM ||
      em_item (items, next->noun)->line != em_item (items, proto->first)->line)
    return FALSE;
  if ((kind == PIN || kind == BORE) && (next->roles & (EM_ROLE_PER_SIDE | EM_ROLE_ON_DIAMETER)) != 0 && (other == GROOVE || other == RECESS))
    return FALSE;
  em_fit_sizes (items, next, other, &fit);
  if (!fit.is_complete)
    return FALSE;
  if (proto->noun != EM_NO_ITEM)
    em_item (items, proto->noun)->is_used = FALSE;
  return TRUE;
}

gboolean
em_merge_is_only_told (EmItems *items, const EmProto *proto)
{
  int kind = kind_of (items, proto);
  const guint32 plan = EM_ROLE_LENGTH | EM_ROLE_WIDTH | EM_ROLE_HEIGHT;

  if ((kind != PIN && kind != BORE && kind != FACE) || proto->noun == EM_NO_ITEM || proto->has_verb || proto->has_worn || proto->has_damage || proto->has_fill ||
      proto->count_item != EM_NO_ITEM || proto->sizes->len == 0 || proto->sizes->len > (kind == FACE ? 2 : 1) || proto->kind_reason != NULL || proto->is_same ||
      em_item_says (items, proto->noun, EM_SAYS_KIND)->value != NULL || em_item_says (items, proto->noun + 1, EM_SAYS_GLUE) == NULL)
    return FALSE;
  for (guint i = 0; i < proto->sizes->len; i++)
    {
      guint32 roles = em_item_size (items, g_array_index (proto->sizes, guint, i))->roles;

      if (roles == 0 || (roles & ~(kind == FACE ? plan : EM_ROLE_LENGTH)) != 0)
        return FALSE;
    }
  em_item (items, proto->noun)->is_used = FALSE;
  return TRUE;
}

/* "The stop is mushroomed; build the face up 0.5, dia 25": a damage without sizes is why the next is built up. */
static gboolean
try_damage (EmItems *items, EmProto *proto, EmProto *next, G_GNUC_UNUSED int kind, G_GNUC_UNUSED int other)
{
  const EmSense *noun = proto->noun != EM_NO_ITEM ? em_item_says (items, proto->noun, EM_SAYS_KIND) : NULL;

  if (!next->may_merge || noun == NULL || noun->value == NULL || proto->sizes->len > 0 || next->sizes->len == 0 ||
      !next->has_build ||
      next->noun == EM_NO_ITEM || em_item_says (items, next->noun, EM_SAYS_KIND)->value != NULL ||
      proto->count_item != EM_NO_ITEM ||
      line_of (items, proto) != line_of (items, next))
    return FALSE;
  g_array_set_size (proto->given, 0);
  become_with_all (proto, next);
  return TRUE;
}

/* "Pillar ⌀32 has scores, 0.15 deep over 90, add 0.3 per side": what is added goes round the pillar, however deep it is scored. */
static gboolean
try_scored_round (EmItems *items, EmProto *proto, EmProto *next, int kind, int other)
{
  if (!next->may_merge || (kind != PIN && kind != BORE) || (other != GROOVE && other != RECESS) || !is_only_named (items, proto, kind) ||
      (next->roles & (EM_ROLE_PER_SIDE | EM_ROLE_ON_DIAMETER)) == 0 || (next->roles & EM_ROLE_DIAMETER) != 0 ||
      line_of (items, proto) != line_of (items, next) || next->sizes->len > MERGE_SIZES_MAX)
    return FALSE;
  for (guint i = 0; i < next->sizes->len; i++)
    if ((em_item_size (items, g_array_index (next->sizes, guint, i))->roles & (EM_ROLE_DEPTH | EM_ROLE_GAP | EM_ROLE_WIDTH)) == 0)
      g_array_append_val (proto->sizes, g_array_index (next->sizes, guint, i));
  append_uint (proto->given, next->given);
  if (proto->count_item == EM_NO_ITEM)
    take_count (proto, next);
  proto->has_build |= next->has_build;
  proto->last = next->last;
  next->is_merged = TRUE;
  return TRUE;
}

/* "axe Ø20, portée usée sur 30 mm, à recharger 0,2 au diamètre": what has neither a width nor a diameter is where the shaft is worn. */
static gboolean
try_bearing_of_shaft (EmItems *items, EmProto *proto, EmProto *next, int kind, int other)
{
  const guint32 told = EM_ROLE_LENGTH | EM_ROLE_WORN | EM_ROLE_BUILD | EM_ROLE_ADD | EM_ROLE_ON_DIAMETER | EM_ROLE_PER_SIDE;

  if (!next->may_merge || kind != PIN || other != FACE || !is_only_named (items, proto, kind) || next->sizes->len == 0 || next->sizes->len > 2 ||
      (next->roles & ~told) != 0 || (next->roles & (EM_ROLE_LENGTH | EM_ROLE_ON_DIAMETER | EM_ROLE_PER_SIDE)) == 0 ||
      line_of (items, proto) != line_of (items, next) || (proto->roles & EM_ROLE_DIAMETER) == 0)
    return FALSE;
  absorb (proto, next);
  proto->roles |= next->roles;
  proto->has_build |= next->has_build;
  proto->has_worn |= next->has_worn;
  return TRUE;
}

/* "Land worn back 0.35, blade 1.2 thick x 86 long": what the rib beside it lacks is what its land has lost. */
static gboolean
try_land_of_rib (EmItems *items, EmProto *proto, EmProto *next, int kind, int other)
{
  const EmSize *size = proto->sizes->len == 1 ? em_item_size (items, g_array_index (proto->sizes, guint, 0)) : NULL;

  if (!next->may_merge || kind != FACE || other != RIB || size == NULL || (size->roles & (EM_ROLE_BUILD | EM_ROLE_WORN)) == 0 ||
      (size->roles & (EM_ROLE_DIAMETER | EM_ROLE_LENGTH | EM_ROLE_WIDTH)) != 0 ||
      (next->roles & (EM_ROLE_BUILD | EM_ROLE_ADD | EM_ROLE_PER_SIDE)) != 0 || (next->roles & EM_ROLE_THICKNESS) == 0 ||
      proto->count_item != EM_NO_ITEM || line_of (items, proto) != line_of (items, next))
    return FALSE;
  become_with_all (proto, next);
  return TRUE;
}

/* "side wall worn, 0.2 to weld, surface 30 x 14": how large the wall is. */
static gboolean
try_plan (EmItems *items, EmProto *proto, EmProto *next, int kind, int other)
{
  const guint32 added = EM_ROLE_BUILD | EM_ROLE_ADD | EM_ROLE_WORN | EM_ROLE_THICKNESS | EM_ROLE_PER_SIDE | EM_ROLE_WELD;

  if (!next->may_merge || (kind != SIDEWALL && kind != SEAT) || other != FACE || proto->sizes->len != 1 || next->sizes->len != 2 || next->roles != 0 ||
      (proto->roles & ~added) != 0 || next->has_verb ||
      next->has_damage || next->has_worn || next->count_item != EM_NO_ITEM || line_of (items, proto) != line_of (items, next))
    return FALSE;
  for (guint i = 0; i < next->sizes->len; i++)
    if (em_item_size (items, g_array_index (next->sizes, guint, i))->chain == 0)
      return FALSE;
  /* "seat low 0.05, surface 14 x 9": no cone has such an area. */
  if (kind == SEAT)
    proto->weight[FACE] += CERTAIN + proto->weight[SEAT];
  absorb (proto, next);
  return TRUE;
}

/* "pinch-off worn, 180 long, add 0.5, land is 1 wide": how wide the edge is makes a strip of it. */
static gboolean
try_strip (EmItems *items, EmProto *proto, EmProto *next, G_GNUC_UNUSED int kind, int other)
{
  const EmSense *noun = proto->noun != EM_NO_ITEM ? em_item_says (items, proto->noun, EM_SAYS_KIND) : NULL;

  if (!next->may_merge || noun == NULL || noun->weight[WORN_CORNER] == 0 || noun->weight[EDGE_NICK] == 0 || other != FACE ||
      next->sizes->len != 1 || next->roles != EM_ROLE_WIDTH || proto->sizes->len != 2 || next->has_verb ||
      (proto->roles & (EM_ROLE_RADIUS | EM_ROLE_LEG | EM_ROLE_WIDTH | EM_ROLE_DEPTH)) != 0 || (proto->roles & EM_ROLE_LENGTH) == 0 ||
      (proto->roles & (EM_ROLE_BUILD | EM_ROLE_ADD)) == 0)
    return FALSE;
  become_of_edge (proto, next);
  return TRUE;
}

/* Nothing that another repair would need: how wide or thick, how much is to be added, how far down. */
static gboolean
is_section_of_edge (const EmItems *items, const EmProto *next)
{
  const guint32 told = EM_ROLE_WIDTH | EM_ROLE_THICKNESS | EM_ROLE_BUILD | EM_ROLE_ADD | EM_ROLE_WORN | EM_ROLE_WELD | EM_ROLE_DEPTH | EM_ROLE_HEIGHT;

  for (guint i = 0; i < next->sizes->len; i++)
    {
      const EmSize *size = em_item_size (items, g_array_index (next->sizes, guint, i));
      guint32 roles = (size->roles & EM_ROLE_BUILD) != 0 ? size->roles & ~(guint32) EM_ROLE_LENGTH /* "put back on top of it" */ : size->roles;

      if (size->chain != 0 || (roles & ~told) != 0)
        return FALSE;
    }
  return TRUE;
}

static void
become_strip (EmItems *items, EmProto *proto, EmProto *next, int kind)
{
  em_item_size (items, g_array_index (proto->sizes, guint, 0))->roles = EM_ROLE_LENGTH;
  for (guint i = 0; i < next->sizes->len; i++)
    em_item_size (items, g_array_index (next->sizes, guint, i))->roles &= ~(guint32) EM_ROLE_LENGTH;
  next->weight[EDGE_NICK] = next->weight[WORN_CORNER] = 0;
  next->weight[kind] += CERTAIN;
  append_uint (proto->given, next->given);
  become_of_edge (proto, next);
}

/* "pinch-off worn, 95 long, blade 1.2 wide, build up 0.8", "the land is 1 wide, put back 0.8": how thick the edge is makes a blade of it, how wide
 * a strip. */
static gboolean
try_blade (EmItems *items, EmProto *proto, EmProto *next, int kind, int other)
{
  const guint32 along = EM_ROLE_LENGTH | EM_ROLE_WORN | EM_ROLE_DEPTH /* "de largo" */ | EM_ROLE_BUILD /* "flattened over" */;
  const EmSense *noun = proto->noun != EM_NO_ITEM ? em_item_says (items, proto->noun, EM_SAYS_KIND) : NULL;
  gboolean is_blade = other == RIB || kind == RIB || (next->roles & (EM_ROLE_THICKNESS | EM_ROLE_DEPTH)) != 0;

  if (!next->may_merge || noun == NULL || noun->weight[WORN_CORNER] + noun->weight[EDGE_NICK] + noun->weight[RIB] == 0 || proto->sizes->len != 1 ||
      (proto->roles & EM_ROLE_LENGTH) == 0 || (proto->roles & ~along) != 0 || next->sizes->len == 0 || next->sizes->len > 3 || other < 0 ||
      (next->sizes->len == 1 && other != RIB) ||
      !(is_blade || (next->roles & EM_ROLE_WIDTH) != 0) || (other == RIB && !(next->roles & (EM_ROLE_THICKNESS | EM_ROLE_WIDTH))) ||
      !is_section_of_edge (items, next) || (next->count_item != EM_NO_ITEM && proto->count_item != EM_NO_ITEM))
    return FALSE;
  become_strip (items, proto, next, is_blade ? RIB : FACE);
  return TRUE;
}

gboolean
em_merge_take (EmItems *items, EmProto *proto, EmProto *next)
{
  static gboolean (*const tries[]) (EmItems *, EmProto *, EmProto *, int kind, int other) = {
    try_merge, try_deed, try_nameless, try_angle, em_merge_try_told_slot, em_merge_try_slot_first, try_flanks, try_tip, try_corner, try_scored_round, try_bearing_of_shaft, try_plan, em_merge_try_groove_of_wall, em_merge_try_slot, em_merge_try_slot_before,
    try_part, try_mashed_edge, try_pocket_corners, try_bore_edge, try_edge_of_bore, try_land_of_rib, try_strip, try_blade, try_damage,
  };

  int kind, other;

  if (next->is_merged)
    return FALSE;
  kind = kind_of (items, proto);
  other = kind_of (items, next);
  for (gsize i = 0; i < G_N_ELEMENTS (tries); i++)
    if (tries[i] (items, proto, next, kind, other))
      return TRUE;
  return FALSE;
}
