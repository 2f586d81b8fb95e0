/* em-fit-finish: what follows from the sizes of a proposal that found their fields.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-fit-parts.h"

#include <math.h>
#include <string.h>

/* No edge is worn or left as round (common practice, no source). */
static const double LARGEST_MM = 12;

enum { SIDE_WINDOW = 16 /* items of a repair that are looked over for "outer" or a hole */ };

/* ".060 on the face and .040 down the side": the legs come in the order they are told. */
static void
order_legs (EmFitted *a, EmFitted *b)
{
  EmFitted first = *a;

  if (a->item < b->item)
    return;
  *a = *b;
  *b = first;
  b->field = a->field;
  a->field = first.field;
}

void
em_fitter_finish_nick (EmFitter *f)
{
  EmFitted *leg = (EmFitted *) em_fit_find (f->fit, "leg_a"), *other = (EmFitted *) em_fit_find (f->fit, "leg_b");

  if (leg == NULL)
    return;
  if (other != NULL)
    {
      order_legs (leg, other);
      return;
    }
  /* "0.8 per side": on both faces that meet in the edge. */
  if (f->proto->is_equal || (em_item_size (f->items, leg->item)->roles & EM_ROLE_PER_SIDE) != 0)
    em_fitter_put (f, "leg_b", leg->item, 1, "equal-legs");
  else
    em_fitter_ask (f, "second-leg", leg->item);
}

/* Neither says what shall be or what is, both have an R of their own, and nothing leads from one to the other. */
static gboolean
is_worn_too (const EmFitter *f, guint first, guint second)
{
  const guint32 told = EM_ROLE_FINISHED | EM_ROLE_WORN;
  guint32 a = em_item_size (f->items, first)->roles, b = em_item_size (f->items, second)->roles;
  guint label = em_item_size (f->items, second)->label_item, before;
  /* "worn R0.2 here, R0.5 there": no edge is to be rounder than it is worn. */
  gboolean is_larger_too = (a & told) == EM_ROLE_WORN && (b & told) == 0 && em_fitter_mm (f, second) > em_fitter_mm (f, first);

  /* "Sollradius 0,2": more than an R. */
  if ((a & b & EM_ROLE_RADIUS) == 0 || ((a & told) != (b & told) && !is_larger_too) || label == G_MAXUINT32 || label < 1 || label > second ||
      em_item (f->items, label)->length > 1)
    return FALSE;
  /* "R0.2 worn to about R0.5" */
  before = label - 1;
  while (before > first && (em_item_says (f->items, before, EM_SAYS_APPROXIMATE) != NULL || em_item_is_sign (f->items, before, '.')))
    before--;
  /* "R0.1 > R0.4" */
  return !em_item_is_sign (f->items, before, '>') && em_item_says (f->items, before, EM_SAYS_MAXIMUM) == NULL && em_item_says (f->items, before, EM_SAYS_TO) == NULL && em_item_says (f->items, before, EM_SAYS_PREPOSITION) == NULL &&
         em_item_says (f->items, before, EM_SAYS_LABEL) == NULL;
}

/* No edge is left with more than this share of the radius that it is worn to (common practice, no source). */
static const double MOST_LEFT = 0.7;

/* "R0.6 over 120 mm, has to have R0.1": the smaller, in a part of its own behind the other, is what is wanted. "R0.6 at one end and R0.2
 * at the other" is not. */
static gboolean
is_left_too (const EmFitter *f, guint first, guint second)
{
  gboolean is_apart = FALSE;
  guint next = second + 1, label = em_item_size (f->items, second)->label_item;

  if ((em_item_size (f->items, first)->roles & EM_ROLE_FINISHED) != 0 || em_fitter_mm (f, second) > MOST_LEFT * em_fitter_mm (f, first))
    return FALSE;
  next = MAX (next, label + 1);
  for (guint i = first + 1; i < second && i < first + SIDE_WINDOW; i++)
    {
      is_apart |= em_item (f->items, i)->type == EM_ITEM_SIGN || em_item (f->items, i)->type == EM_ITEM_LINE;
      if (em_item_says (f->items, i, EM_SAYS_ONE_OF) != NULL || (em_item_is_soft_break (f->items, i) && em_item (f->items, i)->type != EM_ITEM_SIGN))
        return FALSE;
    }
  return is_apart && (next >= f->items->items->len || em_item_says (f->items, next, EM_SAYS_PREPOSITION) == NULL);
}

/* "rounded about 0.25 (should be 0.05)": what is left of the other radius, told without an R, and no size of another kind. */
gboolean
em_fitter_is_left (const EmFitter *f, guint item)
{
  const EmSize *size = em_item_size (f->items, item);

  if (f->fit->kind != WORN_CORNER || (size->roles & EM_ROLE_FINISHED) == 0 || (size->roles & em_dimension_roles) != 0 ||
      size->unit == EM_UNIT_DEGREE || size->chain != 0)
    return FALSE;
  for (guint i = 0; i < f->proto->sizes->len && i < EM_BARE_MAX; i++)
    {
      guint other = g_array_index (f->proto->sizes, guint, i);
      const EmSize *its = em_item_size (f->items, other);
      gboolean is_bare = (its->roles & (em_dimension_roles | EM_ROLE_FINISHED)) == 0;

      if (other != item && its->unit != EM_UNIT_DEGREE && em_fitter_mm (f, other) <= LARGEST_MM &&
          em_fitter_mm (f, item) < em_fitter_mm (f, other) && (is_bare || (its->roles & EM_ROLE_RADIUS) != 0))
        return TRUE;
    }
  return FALSE;
}

/* Taken for the length by its place. */
static gboolean
is_length_of (const EmFitter *f, guint item)
{
  const EmFitted *length = em_fit_find (f->fit, "length");

  return length != NULL && length->item == item;
}

/* "radius 3 worn to about 5": by more than the little word "is". */
static gboolean
is_told_worn (const EmFitter *f, guint item)
{
  guint label = em_item_size (f->items, item)->label_item;

  return label != G_MAXUINT32 && label < item && em_item_says (f->items, label, EM_SAYS_GLUE) == NULL && f->proto->has_worn;
}

void
em_fitter_finish_corner (EmFitter *f)
{
  EmFitted *radius = (EmFitted *) em_fit_find (f->fit, "radius");

  for (guint i = 0; radius != NULL && i < f->proto->sizes->len; i++)
    {
      guint item = g_array_index (f->proto->sizes, guint, i);
      const EmSize *size = em_item_size (f->items, item);

      /* "radius should be .1, now .5": what it is now needs no R. */
      gboolean is_now = (size->roles & ~(guint32) EM_ROLE_ADD) == EM_ROLE_WORN &&
                        ((em_item_size (f->items, radius->item)->roles & EM_ROLE_FINISHED) != 0 || is_told_worn (f, item)) &&
                        em_fitter_mm (f, item) > radius->value;

      if (item == radius->item || size->unit == EM_UNIT_DEGREE || ((size->roles & (EM_ROLE_RADIUS | EM_ROLE_FINISHED)) == 0 && !is_now) ||
          (size->roles & EM_ROLE_LENGTH) != 0 || is_length_of (f, item) ||
          ((size->roles & EM_ROLE_RADIUS) == 0 && em_fitter_mm (f, item) > LARGEST_MM) ||
          em_fitter_is_near (em_fitter_mm (f, item), radius->value) || em_fit_find (f->fit, "radius_to") != NULL)
        continue;
      /* "worn R0.2 at one end and R0.5 at the other": both are what it is now. */
      if (is_worn_too (f, radius->item, item) && is_left_too (f, radius->item, item))
        em_fitter_put (f, "radius_to", item, 1, "from-words");
      else if (is_worn_too (f, radius->item, item))
        {
          em_item (f->items, item)->is_used = TRUE;
          em_fitter_ask (f, "two-values", radius->item);
          em_fitter_drop (f, "radius");
          return;
        }
      else if (em_fitter_mm (f, item) < radius->value)
        em_fitter_put (f, "radius_to", item, 1, NULL);
      else
        {
          guint smaller = radius->item;

          radius->item = item;
          radius->value = em_fitter_mm (f, item);
          em_fitter_put (f, "radius_to", smaller, 1, NULL);
        }
    }
}

/* "outer" or "bore" when the word at i tells it of the diameter beside it: "OD", "hole", "außen"; NULL: it does not. */
static const char *
side_told (const EmFitter *f, guint i)
{
  const EmSense *noun = i < f->items->items->len ? em_item_says (f->items, i, EM_SAYS_KIND) : NULL;
  const EmSense *set = i < f->items->items->len ? em_item_says (f->items, i, EM_SAYS_SET) : NULL;

  if (set != NULL && g_strcmp0 (set->set_field, "side") == 0)
    return set->set_value;
  /* "port dia 1.75", "pocket ⌀40": so is what is open by name. */
  if (noun != NULL && noun->value == NULL && noun->weight[RECESS] > 0 && noun->weight[EDGE_NICK] + noun->weight[GROOVE] + noun->weight[PIN] + noun->weight[FACE] == 0 &&
      g_strcmp0 (noun->set_value, "cap") != 0)
    return "bore";
  return noun == NULL || (noun->weight[PIN] == 0 && noun->weight[BORE] == 0) ? NULL : noun->weight[PIN] > 0 ? "outer" : "bore";
}

/* "outer cutting edge, dia 27", "edge of 60 holes ⌀3": what the words of the repair tell, where they tell one thing. NULL: nothing, or both. */
static const char *
side_in_words (const EmFitter *f)
{
  const char *side = NULL;

  for (guint i = f->proto->first; i <= f->proto->last && i < f->proto->first + SIDE_WINDOW; i++)
    {
      const EmSense *noun = em_item_says (f->items, i, EM_SAYS_KIND);
      /* A pin's head may have a hole. */
      gboolean is_open = (noun != NULL && noun->weight[PIN] > 0 && em_item_says (f->items, i, EM_SAYS_SET) == NULL) ||
                         (i > 0 && em_item_says (f->items, i - 1, EM_SAYS_NEAR) != NULL);
      const char *told = is_open ? NULL : side_told (f, i);

      if (told != NULL && side != NULL && strcmp (told, side) != 0)
        return NULL;
      side = told != NULL ? told : side;
    }
  return side;
}

/* "1.75 OD" runs round the outside, "ID" round a bore; so do "corner worn around ⌀.875 hole" and "O.D. ⌀1.000". */
gboolean
em_fitter_finish_side (EmFitter *f)
{
  guint size = em_fit_find (f->fit, "diameter")->item, label = em_item_size (f->items, size)->label_item;
  guint first = label != G_MAXUINT32 ? MIN (label, size) : size;
  const char *side = label != G_MAXUINT32 ? side_told (f, label) : NULL;

  if (side == NULL)
    side = side_told (f, size + 1);
  first -= first > 1 && em_item_is_sign (f->items, first - 1, '.');
  if (side == NULL && first > 0)
    side = side_told (f, first - 1);
  if (side == NULL)
    side = side_in_words (f);
  if (side == NULL)
    return FALSE;
  em_fitter_put_text (f, "side", side, "from-words");
  return TRUE;
}

static guint
find_angle (const EmFitter *f)
{
  for (guint i = 0; i < f->proto->sizes->len && i < EM_BARE_MAX; i++)
    {
      guint item = g_array_index (f->proto->sizes, guint, i);

      if (em_item_size (f->items, item)->unit == EM_UNIT_DEGREE)
        return item;
    }
  return EM_NO_ITEM;
}

/* What a cone of half the angle makes of a seat that lacks its depth or its small diameter, as a share of the mouth: depth
 * = (D − d) / 2 / tan, d = D − 2 · depth · tan. field NULL: nothing possible. */
static EmFitted
cone (const EmFitter *f, guint angle, double half_deg)
{
  const EmFitted *mouth = em_fit_find (f->fit, "diameter"), *small = em_fit_find (f->fit, "diameter_small");
  const EmFitted *depth = em_fit_find (f->fit, "depth");
  const double least_share = 1e-3; /* of the mouth: rounding */
  double slope = tan (half_deg * G_PI / 180);
  EmFitted fitted = { .item = mouth->item, .words = angle, .low = (double) NAN, .high = (double) NAN, .state = EM_READ_INFERRED,
                      .reason = "from-cone-angle" };

  if (!(half_deg > 0 && half_deg < 90) || (small == NULL) == (depth == NULL))
    return fitted;
  fitted.value = depth == NULL ? (mouth->value - small->value) / 2 / slope : mouth->value - 2 * depth->value * slope;
  fitted.factor = fitted.value / mouth->value * mouth->factor;
  /* A cone that runs to a point has no small end worth telling. */
  if (fitted.value > least_share * mouth->value)
    fitted.field = depth == NULL ? "depth" : "diameter_small";
  return fitted;
}

/* "60° INCL" gives the cone's depth or its small end. An angle alone may be the whole cone's or that of one side (a valve seat's). */
void
em_fitter_finish_seat (EmFitter *f)
{
  const EmFitted *mouth = em_fit_find (f->fit, "diameter"), *small = em_fit_find (f->fit, "diameter_small");
  const EmFitted *depth = em_fit_find (f->fit, "depth");
  guint angle = find_angle (f);
  guint32 roles = angle != EM_NO_ITEM ? em_item_size (f->items, angle)->roles : 0;
  double angle_deg = angle != EM_NO_ITEM ? em_fraction_plain (em_item_size (f->items, angle)->value) : 0;
  gboolean is_included = (roles & (EM_ROLE_LARGE | EM_ROLE_ON_DIAMETER /* "90° total" */)) != 0, is_side = (roles & EM_ROLE_PER_SIDE) != 0;

  if (angle == EM_NO_ITEM || mouth == NULL || em_fit_find (f->fit, "radius") != NULL)
    return;
  if (small != NULL && depth != NULL)
    {
      double half_deg = atan ((mouth->value - small->value) / 2 / depth->value) * 180 / G_PI;

      /* The angle repeats what the sizes say; 1.5° covers their rounding. */
      em_item (f->items, angle)->is_used = fabs (half_deg - angle_deg) < 1.5 || fabs (half_deg - angle_deg / 2) < 1.5;
      return;
    }
  f->fit->cone[0] = cone (f, angle, angle_deg / 2);
  f->fit->cone[1] = cone (f, angle, angle_deg);
  /* Neither depth nor small diameter: what the angle makes can't be told, but which it is has to be asked. */
  if (f->fit->cone[is_side].field == NULL && !is_included && !is_side && small == NULL && depth == NULL)
    {
      em_item (f->items, angle)->is_used = TRUE;
      em_fitter_ask (f, "cone-angle", angle);
    }
  if (f->fit->cone[is_side].field == NULL || f->fit->n_fitted == EM_FIT_MAX)
    return;
  em_item (f->items, angle)->is_used = TRUE;
  if (is_included || is_side)
    f->fit->fitted[f->fit->n_fitted++] = f->fit->cone[is_side];
  else
    em_fitter_ask (f, "cone-angle", angle);
}

/* "C'SINK 90° ⌀.44": the cone runs to a point, depth = D / 2 / tan of half its angle, which is the included one (ASME Y14.5). */
void
em_fitter_finish_cone (EmFitter *f)
{
  const EmFitted *mouth = em_fit_find (f->fit, "diameter");
  guint angle = find_angle (f);
  double half_deg = angle != EM_NO_ITEM ? em_fraction_plain (em_item_size (f->items, angle)->value) / 2 : 0;
  EmFitted fitted = { .field = "depth", .words = angle, .low = (double) NAN, .high = (double) NAN, .state = EM_READ_INFERRED,
                     .reason = "from-cone-angle" };

  if (!(half_deg > 0 && half_deg < 90) || mouth == NULL || em_fit_find (f->fit, "depth") != NULL ||
      f->fit->n_fitted == EM_FIT_MAX ||
      g_strcmp0 (em_fit_given_text (f->proto, "form"), "cone") != 0)
    return;
  fitted.item = mouth->item;
  fitted.factor = mouth->factor / 2 / tan (half_deg * G_PI / 180);
  fitted.value = mouth->value / 2 / tan (half_deg * G_PI / 180);
  em_item (f->items, angle)->is_used = TRUE;
  f->fit->fitted[f->fit->n_fitted++] = fitted;
}

/* "dent 6 x 4, oval": a pit by its noun, and of that shape. */
static gboolean
is_told_oval (const EmFitter *f)
{
  for (guint i = 0; i < f->proto->given->len; i++)
    {
      const EmReadField *given = &g_array_index (f->proto->given, EmGiven, i).field;

      if (strcmp (given->field, "form") == 0 && g_strcmp0 (given->text, "ellipsoid") == 0)
        return TRUE;
    }
  return FALSE;
}

/* "close old hole, dia 4 over 18": as deep as it is long. */
static void
deepen_hole (EmFitter *f)
{
  if (f->fit->kind != RECESS || em_fit_find (f->fit, "diameter") == NULL || em_fit_find (f->fit, "depth") != NULL || em_fit_find (f->fit, "width") != NULL)
    return;
  for (guint i = 0; i < f->fit->n_fitted; i++)
    if (strcmp (f->fit->fitted[i].field, "length") == 0)
      {
        f->fit->fitted[i].field = "depth";
        f->fit->fitted[i].state = EM_READ_INFERRED;
        f->fit->fitted[i].reason = f->fit->fitted[i].reason != NULL ? f->fit->fitted[i].reason : "from-words";
      }
}

/* "stray hole, it's 1/8 and goes 1 inch in": of two sizes told apart the first is how large across, the other how deep. */
static void
round_hole (EmFitter *f)
{
  const EmSense *noun = f->proto->noun != EM_NO_ITEM ? em_item_says (f->items, f->proto->noun, EM_SAYS_KIND) : NULL;
  EmFitted *length = (EmFitted *) em_fit_find (f->fit, "length"), *width = (EmFitted *) em_fit_find (f->fit, "width");
  gboolean is_hole = noun != NULL && (noun->weight[BORE] > 0 || g_strcmp0 (noun->set_value, "cylinder") == 0);

  if (f->fit->kind != RECESS || !is_hole || f->proto->sizes->len != 2 || length == NULL || width == NULL ||
      em_item_size (f->items, length->item)->chain != 0 || (em_item_size (f->items, width->item)->roles & EM_ROLE_WIDTH) != 0)
    return;
  width->field = width->item < length->item ? "diameter" : "depth";
  length->field = width->item < length->item ? "depth" : "diameter";
  length->state = width->state = EM_READ_INFERRED;
  length->reason = width->reason = "from-words";
}

/* A form that a seat may have; "picado" of one that is pitted tells none. */
static const char *
seat_form (const EmFitter *f)
{
  for (guint i = 0; i < f->proto->given->len; i++)
    {
      const EmReadField *field = &g_array_index (f->proto->given, EmGiven, i).field;

      if (strcmp (field->field, "form") == 0 && (g_strcmp0 (field->text, "cone") == 0 || g_strcmp0 (field->text, "sphere") == 0))
        return field->text;
    }
  return NULL;
}

void
em_fitter_finish_form (EmFitter *f)
{
  const char *word = f->fit->kind == SEAT ? seat_form (f) : em_fit_given_text (f->proto, "form");
  const EmFitted *diameter = em_fit_find (f->fit, "diameter"), *depth;
  gboolean has_row;
  const char *form = NULL;

  round_hole (f);
  deepen_hole (f);
  diameter = em_fit_find (f->fit, "diameter");
  depth = em_fit_find (f->fit, "depth");
  has_row = em_fit_find (f->fit, "length") != NULL || em_fit_find (f->fit, "width") != NULL;
  if (f->fit->kind == FACE)
    form = diameter != NULL ? "disc" : em_fit_find (f->fit, "area") != NULL ? "area" : has_row ? "rectangle" : NULL;
  else if (f->fit->kind == SEAT)
    form = em_fit_find (f->fit, "radius") != NULL ? "sphere" :
           em_fit_find (f->fit, "diameter_small") != NULL || (word == NULL && find_angle (f) != EM_NO_ITEM) ? "cone" : word;
  else if (f->fit->kind == RECESS)
    {
      form = has_row && diameter == NULL ? "box" : diameter != NULL ? "cylinder" : word;
      if (word != NULL && form != NULL && strcmp (form, "cylinder") == 0 && strcmp (word, "box") != 0)
        form = word;
      if (has_row && is_told_oval (f))
        form = "ellipsoid";
      /* "FILL HOLE, 22 DEEP" */
      if (form == NULL && f->proto->has_fill && em_fit_find (f->fit, "depth") != NULL && f->proto->noun != EM_NO_ITEM &&
          em_item_says (f->items, f->proto->noun, EM_SAYS_KIND)->weight[BORE] > 0)
        form = "cylinder";
      /* "a ball shape .125 dia" is a cap; a disc is no recess. */
      if (g_strcmp0 (form, "sphere") == 0)
        form = "cap";
      if (g_strcmp0 (form, "disc") == 0)
        form = "cylinder";
      /* A cap can be no deeper than its mouth's radius; deeper is a half-ellipsoid, and twice as deep as wide a hole. */
      if (g_strcmp0 (form, "cap") == 0 && diameter != NULL && depth != NULL && depth->value > diameter->value / 2)
        form = depth->value >= 2 * diameter->value ? "cylinder" : "ellipsoid";
    }
  if (form != NULL)
    em_fitter_put_text (f, "form", form, g_strcmp0 (form, word) == 0 ? "shape-from-word" : "shape-from-sizes");
}

/* Another diameter of the face than the one at item, or EM_NO_ITEM: "⌀2.00 / ⌀1.00", "OD 34, ID 30". */
static guint
other_diameter (const EmFitter *f, guint item)
{
  for (guint i = 0; i < f->proto->sizes->len && i < EM_BARE_MAX; i++)
    {
      guint other = g_array_index (f->proto->sizes, guint, i);
      guint32 roles = em_item_size (f->items, other)->roles & (EM_ROLE_DIAMETER | EM_ROLE_BUILD | EM_ROLE_ADD);

      if (other != item && roles == EM_ROLE_DIAMETER && !em_fitter_is_near (em_fitter_mm (f, other), em_fitter_mm (f, item)))
        return other;
    }
  return EM_NO_ITEM;
}

/* +1 when the size is called the inner diameter, −1 the outer, 0 neither. */
static int
side_of_ring (const EmFitter *f, guint item)
{
  guint label = em_item_size (f->items, item)->label_item;
  const EmSense *noun = label != G_MAXUINT32 ? em_item_says (f->items, label, EM_SAYS_KIND) : NULL;

  return noun == NULL ? 0 : noun->weight[BORE] > 0 ? 1 : noun->weight[PIN] > 0 ? -1 : 0;
}

/* Four figures: the sizes of notes have no more. */
static double
rounded (double value)
{
  double scale = pow (10, 3 - floor (log10 (value)));

  return round (value * scale) / scale;
}

void
em_fitter_finish_ring (EmFitter *f)
{
  EmFitted *diameter = (EmFitted *) em_fit_find (f->fit, "diameter");
  const EmFitted *width = em_fit_find (f->fit, "width");
  guint item, other;
  double across, mean;

  if (f->fit->kind != FACE || diameter == NULL || !(diameter->value > 0) || em_fit_find (f->fit, "length") != NULL ||
      em_fit_find (f->fit, "area") != NULL)
    return;
  item = diameter->item;
  other = width == NULL ? other_diameter (f, item) : EM_NO_ITEM;
  if (width == NULL && other == EM_NO_ITEM)
    return;
  across = width != NULL ? width->value : fabs (em_fitter_mm (f, other) - em_fitter_mm (f, item)) / 2;
  mean = width != NULL ? diameter->value + side_of_ring (f, item) * across
                       : (em_fitter_mm (f, other) + em_fitter_mm (f, item)) / 2;
  if (!(across > 0) || 2 * across >= diameter->value + em_fitter_mm (f, other != EM_NO_ITEM ? other : item))
    return;
  *diameter = f->fit->fitted[--f->fit->n_fitted];
  em_fitter_put (f, "length", item, rounded (G_PI * mean) / em_fitter_mm (f, item), "ring");
  if (width == NULL)
    {
      em_fitter_put (f, "width", item, across / em_fitter_mm (f, item), "ring");
      em_item (f->items, other)->is_used = TRUE;
    }
}

/* "over 120°", "upper 180° only": how far round a circular edge is worn; the angle of a corner follows no such word. */
static guint
find_arc (const EmFitter *f)
{
  guint angle = find_angle (f);
  const EmSize *size = angle != EM_NO_ITEM ? em_item_size (f->items, angle) : NULL;
  static const char *const over[] = { "over", "über", "auf", "sur", "sobre" };
  static const char *const part_of[] = { "of it", "of", "only", "de arco" };
  double angle_deg = size != NULL ? em_fraction_plain (size->value) : 0;

  if (!(angle_deg > 0 && angle_deg < 360))
    return EM_NO_ITEM;
  if ((size->roles & EM_ROLE_ARC) != 0 || angle_deg >= 180 || em_item_is_any_word_of (f->items, angle + 1, part_of, G_N_ELEMENTS (part_of)))
    return angle;
  if ((size->roles & EM_ROLE_ANGLE) != 0 || angle == 0)
    return EM_NO_ITEM;
  return em_item_says (f->items, angle - 1, EM_SAYS_PREPOSITION) != NULL ||
         em_item_is_any_word_of (f->items, angle - 1, over, G_N_ELEMENTS (over)) ? angle : EM_NO_ITEM;
}

void
em_fitter_finish_arc (EmFitter *f)
{
  const EmFitted *diameter = em_fit_find (f->fit, "diameter"), *corner = em_fit_find (f->fit, "angle");
  guint arc = find_arc (f);
  double length_mm;

  if (arc == EM_NO_ITEM || diameter == NULL || em_fit_find (f->fit, "length") != NULL)
    return;
  length_mm = diameter->value * G_PI * em_fraction_plain (em_item_size (f->items, arc)->value) / 360;
  if (corner != NULL && corner->item == arc)
    em_fitter_drop (f, "angle");
  diameter = em_fit_find (f->fit, "diameter");
  em_fitter_put (f, "length", diameter->item, rounded (length_mm) / em_fitter_mm (f, diameter->item), "arc");
  em_item (f->items, arc)->is_used = TRUE;
}

/* "ADD .015 TO FACE": how thick, but neither which face nor how large. */
void
em_fitter_finish_face (EmFitter *f)
{
  static const char *const plan[] = { "length", "width", "diameter", "area", "height" };
  const EmFitted *thickness = em_fit_find (f->fit, "thickness");

  for (gsize i = 0; i < G_N_ELEMENTS (plan); i++)
    if (em_fit_find (f->fit, plan[i]) != NULL)
      return;
  if (thickness != NULL)
    em_fitter_ask (f, "which-face", thickness->item);
}
