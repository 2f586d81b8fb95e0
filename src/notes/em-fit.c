/* em-fit: the kind of a proposal, and a field for each of its sizes.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-fit-parts.h"

#include <string.h>

enum { UNPLACED_MAX = 40 };

static const guint32 added = EM_ROLE_BUILD | EM_ROLE_PER_SIDE | EM_ROLE_WORN;

const EmFitRow em_fit_rows[EM_N_NOTE_KINDS][EM_FIT_ROW_MAX] = {
  [EDGE_NICK] = { { "length", EM_ROLE_LENGTH, 1, TRUE },
                  { "leg_a", EM_ROLE_LEG | EM_ROLE_DEPTH | EM_ROLE_WIDTH | EM_ROLE_HEIGHT | EM_ROLE_THICKNESS, 2, TRUE },
                  { "leg_b", EM_ROLE_LEG | EM_ROLE_DEPTH | EM_ROLE_WIDTH | EM_ROLE_HEIGHT | EM_ROLE_THICKNESS, 3, TRUE },
                  { "leg_a", EM_ROLE_BUILD, 0, FALSE, "from-words" } },
  [WORN_CORNER] = { { "radius", EM_ROLE_RADIUS, 2, TRUE },
                    { "length", EM_ROLE_LENGTH | EM_ROLE_HEIGHT | EM_ROLE_DEPTH, 1, TRUE }, { "angle", EM_ROLE_ANGLE, 0, FALSE },
                    { "diameter", EM_ROLE_DIAMETER, 0, FALSE } },
  [SIDEWALL] = { { "thickness", EM_ROLE_BUILD | EM_ROLE_THICKNESS | EM_ROLE_PER_SIDE | EM_ROLE_WORN, 3, TRUE },
                 { "length", EM_ROLE_LENGTH, 1, TRUE }, { "height", EM_ROLE_HEIGHT | EM_ROLE_WIDTH | EM_ROLE_DEPTH, 2, TRUE },
                 { "thickness", EM_ROLE_DEPTH, 0, FALSE, "from-words" } },
  [FACE] = { { "thickness", EM_ROLE_BUILD | EM_ROLE_THICKNESS | EM_ROLE_PER_SIDE | EM_ROLE_WORN, 3, TRUE },
             { "area", EM_ROLE_AREA, 0, FALSE }, { "diameter", EM_ROLE_DIAMETER, 0, FALSE },
             { "length", EM_ROLE_LENGTH, 1, TRUE }, { "width", EM_ROLE_WIDTH, 2, TRUE },
             { "thickness", EM_ROLE_HEIGHT | EM_ROLE_DEPTH, 0, FALSE } },
  [RIB] = { { "coat", EM_ROLE_BUILD | EM_ROLE_PER_SIDE | EM_ROLE_WORN, 0, TRUE }, { "length", EM_ROLE_LENGTH, 1, TRUE },
            { "thickness", EM_ROLE_THICKNESS | EM_ROLE_WIDTH, 2, TRUE }, { "depth", EM_ROLE_DEPTH | EM_ROLE_HEIGHT, 3, FALSE } },
  [BORE] = { { "length", EM_ROLE_LENGTH | EM_ROLE_DEPTH | EM_ROLE_HEIGHT | EM_ROLE_WIDTH |
              EM_ROLE_THICKNESS, 2, TRUE }, { "arc", EM_ROLE_ARC | EM_ROLE_ANGLE, 0, FALSE } },
  [SEAT] = { { "radius", EM_ROLE_RADIUS | EM_ROLE_SPHERE, 0, FALSE },
             { "thickness", EM_ROLE_BUILD | EM_ROLE_THICKNESS | EM_ROLE_PER_SIDE | EM_ROLE_WORN, 3, TRUE },
             { "depth", EM_ROLE_DEPTH | EM_ROLE_HEIGHT | EM_ROLE_LENGTH, 2, FALSE } },
  [PIN] = { { "length", EM_ROLE_LENGTH | EM_ROLE_HEIGHT | EM_ROLE_WIDTH, 2, TRUE } },
  [DAM] = { { "draft", EM_ROLE_DRAFT | EM_ROLE_ANGLE, 0, FALSE }, { "length", EM_ROLE_LENGTH, 1, TRUE },
            { "width", EM_ROLE_WIDTH | EM_ROLE_THICKNESS | EM_ROLE_GAP, 2, TRUE },
            { "height", EM_ROLE_HEIGHT | EM_ROLE_DEPTH | EM_ROLE_BUILD, 3, TRUE } },
  [RECESS] = { { "diameter", EM_ROLE_DIAMETER, 0, FALSE }, { "depth", EM_ROLE_DEPTH | EM_ROLE_HEIGHT |
                                                            EM_ROLE_THICKNESS, 3, TRUE },
               { "length", EM_ROLE_LENGTH, 1, TRUE }, { "width", EM_ROLE_WIDTH, 2, TRUE } },
  [GROOVE] = { { "angle", EM_ROLE_ANGLE, 0, FALSE }, { "gap", EM_ROLE_GAP | EM_ROLE_WIDTH, 3, FALSE },
               { "depth", EM_ROLE_DEPTH | EM_ROLE_HEIGHT | EM_ROLE_THICKNESS | EM_ROLE_DIAMETER /* "D=" */, 2, TRUE },
               { "length", EM_ROLE_LENGTH, 1, TRUE } },
};

/* More than micro welding is asked for (common practice, no source): read, but never without a mark, and never by place alone. */
static const struct { int kind; const char *field; double high_mm; } unusual[] = {
  { WORN_CORNER, "radius", 12 }, { EDGE_NICK, "leg_a", 25 }, { EDGE_NICK, "leg_b", 25 }, { FACE, "thickness", 3 },
  { SIDEWALL, "thickness", 3 }, { RIB, "coat", 6 }, { RIB, "thickness", 40 }, { SEAT, "thickness", 3 },
  { GROOVE, "depth", 40 }, { GROOVE, "gap", 10 },
  { SEAT, "diameter", 200 }, { FACE, "diameter", 200 }, { RECESS, "diameter", 100 }, { PIN, "diameter", 250 },
  { BORE, "diameter", 250 }, { BORE, "build", 5 }, { PIN, "build", 10 }, { -1, "length", 4000 }, { -1, "clearance", 200 },
};

gboolean
em_fitter_is_unusual (int kind, const char *field, double value_mm)
{
  for (gsize i = 0; i < G_N_ELEMENTS (unusual); i++)
    if ((unusual[i].kind == kind || unusual[i].kind < 0) && strcmp (unusual[i].field, field) == 0)
      return value_mm > unusual[i].high_mm;
  return FALSE;
}

const EmFitted *
em_fit_find (const EmFit *fit, const char *field)
{
  for (guint i = 0; i < fit->n_fitted; i++)
    if (strcmp (fit->fitted[i].field, field) == 0)
      return &fit->fitted[i];
  return NULL;
}

double
em_fitter_mm (const EmFitter *f, guint item)
{
  const EmSize *size = em_item_size (f->items, item);

  return em_fraction_in_mm (size->value, size->unit);
}

/* "NICK 14 X 2 X 2" among inches: an unusual size whose unit is only that of other repairs makes the units of this one a question. */
static void
ask_units (const EmFitter *f, const EmSize *unusual_size)
{
  for (guint i = 0; unusual_size->is_guessed && i < f->proto->sizes->len && i < UNPLACED_MAX; i++)
    {
      EmSize *size = em_item_size (f->items, g_array_index (f->proto->sizes, guint, i));

      size->is_asked |= size->is_guessed;
    }
}

/* A question, and the reason of a field that is left open till it is answered; none of these stays. */
static const char two_values[] = "two-values";

static void
drop_open (EmFit *fit)
{
  guint n = 0;

  for (guint i = 0; i < fit->n_fitted; i++)
    if (fit->fitted[i].reason != two_values)
      fit->fitted[n++] = fit->fitted[i];
  fit->n_fitted = n;
}

/* "R0.4 OR R0.6": none of them is taken, and each may be the answer. */
static void
ask_either (EmFitter *f, const char *field, guint item, double factor)
{
  EmFitted fitted = { .field = field, .factor = factor, .item = item, .words = EM_NO_ITEM, .value = em_fitter_mm (f, item) * factor };

  em_item (f->items, item)->is_used = TRUE;
  em_fitter_ask (f, two_values, item);
  if (f->fit->n_either < G_N_ELEMENTS (f->fit->either))
    f->fit->either[f->fit->n_either++] = fitted;
}

void
em_fitter_put (EmFitter *f, const char *field, guint item, double factor, const char *reason)
{
  const EmSize *size = em_item_size (f->items, item);
  EmFitted fitted = { .field = field, .factor = factor, .item = item, .words = EM_NO_ITEM, .reason = reason };

  /* "from 0 to 0.6": nothing measures nothing. */
  if (f->fit->n_fitted == EM_FIT_MAX || size->value.n == 0)
    return;
  /* Its field is taken all the same, so that no other size comes there. */
  if (size->is_either)
    {
      ask_either (f, field, item, factor);
      fitted.reason = two_values;
      if (em_fit_find (f->fit, field) == NULL)
        f->fit->fitted[f->fit->n_fitted++] = fitted;
      return;
    }
  fitted.value = em_fitter_mm (f, item) * factor;
  fitted.low = em_fraction_in_mm (size->low, size->unit) * factor;
  fitted.high = em_fraction_in_mm (size->high, size->unit) * factor;
  if (fitted.reason == NULL)
    fitted.reason = size->reason;
  /* A label that does not stand right beside its size may belong to another. */
  if (fitted.reason == NULL && size->label_item != G_MAXUINT32 && size->label_item + 2 < item)
    fitted.reason = "from-words";
  if (em_fitter_is_unusual (f->fit->kind, field, fitted.value))
    {
      ask_units (f, size);
      fitted.reason = fitted.reason != NULL ? fitted.reason : "implausible";
    }
  fitted.state = fitted.reason != NULL && strcmp (fitted.reason, "on-diameter") != 0 ? EM_READ_INFERRED : EM_READ_READ;
  f->fit->fitted[f->fit->n_fitted++] = fitted;
}

void
em_fitter_put_text (EmFitter *f, const char *field, const char *text, const char *reason)
{
  EmFitted fitted = { .field = field, .item = EM_NO_ITEM, .words = EM_NO_ITEM, .state = EM_READ_INFERRED, .reason = reason,
                     .text = text,
                      .value = (double) NAN, .low = (double) NAN, .high = (double) NAN };

  if (f->fit->n_fitted < EM_FIT_MAX)
    f->fit->fitted[f->fit->n_fitted++] = fitted;
}

void
em_fitter_ask (EmFitter *f, const char *code, guint item)
{
  EmFitQuestion question = { code, item };

  /* "R0.4 or R0.6": two sizes, and one question. */
  for (guint i = 0; strcmp (code, two_values) == 0 && i < f->fit->n_questions; i++)
    if (strcmp (f->fit->question[i].code, code) == 0)
      return;
  if (f->fit->n_questions < EM_FIT_QUESTION_MAX)
    f->fit->question[f->fit->n_questions++] = question;
}

void
em_fitter_drop (EmFitter *f, const char *field)
{
  EmFitted *fitted = (EmFitted *) em_fit_find (f->fit, field);
  guint at;

  g_return_if_fail (fitted != NULL);
  at = (guint) (fitted - f->fit->fitted);
  em_item (f->items, fitted->item)->is_used = TRUE;
  memmove (fitted, fitted + 1, (f->fit->n_fitted - at - 1) * sizeof *fitted);
  f->fit->n_fitted--;
}

gboolean
em_fitter_is_near (double a, double b)
{
  return fabs (a - b) <= 1e-9 * MAX (fabs (a), fabs (b));
}

/* The field is free, or says the same already (then the size only repeats it). */
gboolean
em_fitter_offer (EmFitter *f, const char *field, guint item, double factor, const char *reason)
{
  const EmFitted *there = em_fit_find (f->fit, field);

  if (there == NULL)
    em_fitter_put (f, field, item, factor, reason);
  /* "length 30 (drawing says 34)" */
  else if (there->reason == two_values && em_item_size (f->items, item)->is_either)
    ask_either (f, field, item, factor);
  else if (!em_fitter_is_near (there->value, em_fitter_mm (f, item) * factor))
    return FALSE;
  else
    em_item (f->items, item)->is_used = TRUE;
  return TRUE;
}

const char *
em_fit_given_text (const EmProto *proto, const char *field)
{
  for (guint i = 0; i < proto->given->len; i++)
    if (strcmp (g_array_index (proto->given, EmGiven, i).field.field, field) == 0)
      return g_array_index (proto->given, EmGiven, i).field.text;
  return NULL;
}

gboolean
em_fitter_is_round_form (const char *form)
{
  return g_strcmp0 (form, "cap") == 0 || g_strcmp0 (form, "cone") == 0 || g_strcmp0 (form, "cylinder") == 0;
}

/* How many sizes are no slot's. */
static guint
n_beside_slot (const EmFitter *f)
{
  guint n = 0;

  for (guint i = 0; i < f->proto->sizes->len && i < UNPLACED_MAX; i++)
    n += (em_item_size (f->items, g_array_index (f->proto->sizes, guint, i))->roles & EM_ROLE_SLOT) == 0;
  return n;
}

gboolean
em_fitter_slot (EmFitter *f, guint item)
{
  const EmSize *size = em_item_size (f->items, item);
  gboolean is_row = size->chain != 0, has_width = em_fit_find (f->fit, "slot_width") != NULL;
  gboolean is_named = (size->roles & (EM_ROLE_WIDTH | EM_ROLE_DEPTH | EM_ROLE_HEIGHT)) != 0;

  /* "corner of the pocket washed away to R1.2", "edge at port, port dia 1.75": no slot is as wide. */
  gboolean is_round = (size->roles & EM_ROLE_RADIUS) != 0 || (f->fit->kind == WORN_CORNER && (size->roles & EM_ROLE_DIAMETER) != 0);

  if ((size->roles & EM_ROLE_SLOT) == 0 || size->unit == EM_UNIT_DEGREE || is_round)
    return FALSE;
  /* "bottom of the pocket cut 0.2 too deep (pocket is 20 x 14)": how large that face is, where nothing else tells it. */
  if (f->fit->kind == FACE && is_row && !is_named && n_beside_slot (f) <= 1)
    return FALSE;
  /* "in a slot 5 wide needs 0.3": only a row goes on without a name. */
  if (!is_named && !is_row && has_width)
    return FALSE;
  /* "slot W 6 D 22" */
  if (has_width && (size->roles & EM_ROLE_DIAMETER) != 0 && size->label_item != G_MAXUINT32 && em_item (f->items, size->label_item)->length == 1 &&
      em_item (f->items, size->label_item)->sign == 0)
    return em_fitter_offer (f, "slot_depth", item, 1, "from-words");
  if ((size->roles & (EM_ROLE_DEPTH | EM_ROLE_HEIGHT)) != 0 || (has_width && (size->roles & EM_ROLE_WIDTH) == 0))
    return em_fitter_offer (f, "slot_depth", item, 1, is_named ? NULL : "position");
  return em_fitter_offer (f, "slot_width", item, 1, is_named ? NULL : "position");
}

const char *
em_fitter_build_field (int kind)
{
  return kind == FACE || kind == SIDEWALL || kind == SEAT ? "thickness" : kind == RIB ? "coat" : NULL;
}

/* "that hole is 9/16 across and 3/4 deep, weld it shut": round as the bore it was. */
gboolean
em_fitter_is_filled_hole (const EmFitter *f)
{
  return f->proto->has_fill && f->proto->noun != EM_NO_ITEM &&
         em_item_says (f->items, f->proto->noun, EM_SAYS_KIND)->weight[BORE] > 0;
}

/* What the labels of a size say, less what its kind or its other labels make impossible. */
static guint32
told_roles (const EmFitter *f, guint item)
{
  const EmSize *size = em_item_size (f->items, item);
  guint32 roles = size->roles;

  /* "3.0 LG WORN": the length of what is worn. */
  if ((roles & (EM_ROLE_LENGTH | EM_ROLE_WIDTH | EM_ROLE_HEIGHT | EM_ROLE_DIAMETER | EM_ROLE_RADIUS)) != 0)
    roles &= ~(guint32) EM_ROLE_WORN;
  /* "rib height should be 8.0, is 7.6": what it is now is no coat. */
  if (em_fitter_build_field (f->fit->kind) != NULL && (roles & (EM_ROLE_WORN | EM_ROLE_BUILD | EM_ROLE_PER_SIDE)) == EM_ROLE_WORN &&
      em_fitter_mm (f, item) > em_build_max_mm)
    roles &= ~(guint32) EM_ROLE_WORN;
  if ((roles & EM_ROLE_AREA) != 0)
    roles = EM_ROLE_AREA;
  /* "rib too low: 1.4 thick, add 0.25": how thick the rib is. */
  if (f->fit->kind == RIB && f->has_add && (roles & EM_ROLE_THICKNESS) != 0 && (roles & EM_ROLE_ADD) == 0)
    roles &= ~(guint32) (EM_ROLE_BUILD | EM_ROLE_WORN);
  /* "the rib is 1.6 thick": the little word tells no wear. */
  if (f->fit->kind == RIB && (roles & EM_ROLE_THICKNESS) != 0 && (roles & (EM_ROLE_WORN | EM_ROLE_BUILD)) == EM_ROLE_WORN)
    roles &= ~(guint32) EM_ROLE_WORN;
  /* "rib missing: 1.0 thick, 20 long, 5 high": how thick it was, as its height tells what is missing. */
  if (f->fit->kind == RIB && (roles & EM_ROLE_THICKNESS) != 0 && (roles & EM_ROLE_ADD) == 0 && (f->proto->roles & EM_ROLE_HEIGHT) != 0)
    roles &= ~(guint32) (EM_ROLE_BUILD | EM_ROLE_WORN);
  /* "build up the flanks too, 3 mm each side": so far down, and not so thick. */
  if (f->fit->kind == RIB && (roles & EM_ROLE_PER_SIDE) != 0 && size->chain == 0 && em_fitter_mm (f, item) > em_build_max_mm &&
      (roles & (EM_ROLE_THICKNESS | EM_ROLE_LENGTH)) == 0)
    roles = EM_ROLE_DEPTH;
  /* "COAT SIDES 5 DOWN" */
  if (f->fit->kind == RIB && (roles & EM_ROLE_DEPTH) != 0 && em_fitter_mm (f, item) > em_build_max_mm)
    roles &= ~(guint32) (EM_ROLE_BUILD | EM_ROLE_WORN | EM_ROLE_PER_SIDE);
  /* "a dent 3 mm across"; "9 long, 1 wide" is none. */
  if (f->fit->kind == RECESS && roles == EM_ROLE_WIDTH && (f->proto->roles & EM_ROLE_LENGTH) == 0 &&
      (em_fitter_is_round_form (em_fit_given_text (f->proto, "form")) || em_fitter_is_filled_hole (f)))
    roles = EM_ROLE_DIAMETER;
  /* "D=" may be a depth, "⌀" and "dia" never. */
  if (f->fit->kind == GROOVE && (size->label_item == G_MAXUINT32 || em_item (f->items, size->label_item)->sign != 0 ||
                                 em_item (f->items, size->label_item)->length > 1))
    roles &= ~(guint32) EM_ROLE_DIAMETER;
  return roles;
}

/* The word right before the size. */
static gboolean
is_led_by (const EmFitter *f, guint item, const char *word)
{
  return item > 0 && em_item_is_word (f->items, item - 1, word);
}

/* A word for what broke stands right before the size: "rib broke off .100". */
static gboolean
is_led_by_break (const EmFitter *f, guint item)
{
  const EmSense *set = item > 0 ? em_item_says (f->items, item - 1, EM_SAYS_SET) : NULL;
  const EmSense *noun = item > 0 ? em_item_says (f->items, item - 1, EM_SAYS_KIND) : NULL;

  /* "oben 0,6 abgebrochen" */
  if (set == NULL && noun == NULL && item + 1 < f->items->items->len && em_item_size (f->items, item)->label_item == G_MAXUINT32)
    {
      set = em_item_says (f->items, item + 1, EM_SAYS_SET);
      noun = em_item_says (f->items, item + 1, EM_SAYS_KIND);
    }
  return em_item_size (f->items, item)->chain == 0 && ((set != NULL && set->weight[EDGE_NICK] > 0) ||
                                                       (noun != NULL && noun->value != NULL && noun->weight[EDGE_NICK] > 0));
}

/* "rib tips broken, .060 thk x .5 lg, rebuild .125": right behind the verb, no part of a row. */
static gboolean
is_rebuilt (const EmFitter *f, guint item)
{
  return (em_item_size (f->items, item)->roles & EM_ROLE_WELD) != 0 && em_item_size (f->items, item)->chain == 0 &&
         (f->proto->roles & EM_ROLE_THICKNESS) != 0 && em_fitter_mm (f, item) <= 2 * em_build_max_mm;
}

/* Another size that is called deep, and is so many times as large that this one can't be how far down a rib is coated. */
static gboolean
is_led_to_side (const EmFitter *f, guint item)
{
  for (guint i = 0; i < f->proto->sizes->len && i < UNPLACED_MAX; i++)
    {
      guint other = g_array_index (f->proto->sizes, guint, i);

      if (other > item && (em_item_size (f->items, other)->roles & (EM_ROLE_DEPTH | EM_ROLE_SLOT)) == EM_ROLE_DEPTH && em_fitter_mm (f, other) > 2 * em_fitter_mm (f, item) &&
          em_fitter_mm (f, item) <= em_build_max_mm)
        return TRUE;
    }
  return FALSE;
}

/* The field of a size that its kind takes for another than its label says; NULL: none other; "": no field at all. */
static const char *
field_by_kind (const EmFitter *f, guint item, guint32 roles)
{
  /* "wall damaged, 25 x 10, 0.5 deep": no wall is that low. */
  if (f->fit->kind == SIDEWALL && roles == EM_ROLE_DEPTH && em_fitter_mm (f, item) <= em_build_max_mm && !f->has_add)
    return "thickness";
  /* "want .020 on the end face": no face shall be that high. */
  if ((f->fit->kind == SIDEWALL || f->fit->kind == FACE) && roles == EM_ROLE_FINISHED &&
      em_fitter_mm (f, item) <= em_build_max_mm &&
      em_item_size (f->items, item)->chain == 0 && (f->proto->roles & (EM_ROLE_WORN | EM_ROLE_BUILD)) == 0)
    return "thickness";
  /* "face scored 0.05 deep, build up 0.2": how deep it is scored, not how much is added. */
  if (f->fit->kind == FACE && roles == EM_ROLE_DEPTH && f->has_add)
    return "";
  /* "draft face 22 high 14 wide, 0.1 to add": a face that stands upright. */
  if (f->fit->kind == FACE && roles == EM_ROLE_HEIGHT && em_fitter_mm (f, item) > em_build_max_mm && f->proto->sizes->len == 3 &&
      (f->proto->roles & EM_ROLE_WIDTH) != 0 && (f->proto->roles & (EM_ROLE_LENGTH | EM_ROLE_DIAMETER | EM_ROLE_AREA)) == 0 &&
      (f->proto->roles & (EM_ROLE_BUILD | EM_ROLE_ADD)) != 0)
    return "length";
  /* "land | 48 | 6 | 0.2" under "length | height | add" */
  if (f->fit->kind == FACE && roles == EM_ROLE_HEIGHT && em_fitter_mm (f, item) > em_build_max_mm && f->proto->sizes->len == 3 &&
      (f->proto->roles & EM_ROLE_LENGTH) != 0 && (f->proto->roles & (EM_ROLE_WIDTH | EM_ROLE_DIAMETER | EM_ROLE_AREA)) == 0 &&
      (f->proto->roles & (EM_ROLE_BUILD | EM_ROLE_ADD)) != 0)
    return "width";
  /* "land has to end up 5.2 high": how high it is, not how much is added. */
  if (f->fit->kind == FACE && roles == EM_ROLE_HEIGHT && em_fitter_mm (f, item) > em_build_max_mm && f->proto->sizes->len > 2)
    return "";
  /* "spherical radius 19, washed out 0.3 deep": a sphere has no depth of its own, and none is that flat. */
  if (f->fit->kind == SEAT && roles == EM_ROLE_DEPTH && (f->proto->roles & (EM_ROLE_RADIUS | EM_ROLE_SPHERE)) != 0 &&
      em_fitter_mm (f, item) <= em_build_max_mm &&
      (f->proto->roles & (EM_ROLE_BUILD | EM_ROLE_ADD | EM_ROLE_PER_SIDE | EM_ROLE_THICKNESS)) == 0 && f->proto->sizes->len <= 3)
    return "thickness";
  if (f->fit->kind != RIB)
    return NULL;
  /* "ribs 0.9 thick, 33 long, tip down 0.35": no rib is that low. */
  if (roles == EM_ROLE_DEPTH && em_fitter_mm (f, item) <= em_build_max_mm && em_fit_find (f->fit, "coat") == NULL &&
      (f->proto->roles & (EM_ROLE_BUILD | EM_ROLE_ADD | EM_ROLE_WORN)) == 0 && is_led_by (f, item, "down"))
    return "coat";
  if ((roles & ~(guint32) EM_ROLE_WELD) == 0 && em_fit_find (f->fit, "coat") == NULL && (is_led_by_break (f, item) || is_rebuilt (f, item)))
    return "coat";
  /* "0.4 on top and 0.2 down each side 3 deep": how thick it is down there. */
  if (roles == EM_ROLE_DEPTH && is_led_to_side (f, item))
    return "";
  /* "rib 5 high, build 0.6 on top, 1.5 down the sides": how high it is, and another size how far down it is coated. */
  if (roles == EM_ROLE_HEIGHT && (f->proto->roles & EM_ROLE_DEPTH) != 0 && (f->proto->roles & (EM_ROLE_BUILD | EM_ROLE_ADD)) != 0)
    return "";
  /* "build up 2 mm high" */
  if ((roles & EM_ROLE_ADD) != 0 && (roles & EM_ROLE_HEIGHT) != 0)
    return "coat";
  /* "rib to rebuild, 1 thick, 20 long, 5 high" */
  if (f->proto->has_verb && (roles & EM_ROLE_HEIGHT) != 0 && em_fit_find (f->fit, "coat") == NULL &&
      (f->proto->roles & (EM_ROLE_BUILD | EM_ROLE_ADD | EM_ROLE_WORN | EM_ROLE_PER_SIDE | EM_ROLE_FINISHED)) == 0 &&
      (f->proto->roles & EM_ROLE_THICKNESS) != 0 && f->proto->sizes->len == 3)
    return "coat";
  /* "blade snapped, needs .06 of height": what is gone is what to put on. */
  if (f->proto->has_damage && (roles & EM_ROLE_HEIGHT) != 0 && em_fit_find (f->fit, "coat") == NULL)
    return "coat";
  /* "blade 3 thick, 18 wide": beside a thickness the width is how long the rib is. */
  if (roles == EM_ROLE_WIDTH && (f->proto->roles & EM_ROLE_THICKNESS) != 0 && (f->proto->roles & EM_ROLE_LENGTH) == 0)
    return "length";
  return NULL;
}

/* The first field of the kind's em_fit_rows that takes one of the roles and is free. */
static gboolean
offer_row (EmFitter *f, guint item, guint32 roles, gboolean is_angle)
{
  for (const EmFitRow *row = em_fit_rows[f->fit->kind]; row < em_fit_rows[f->fit->kind] + EM_FIT_ROW_MAX && row->field != NULL; row++)
    {
      gboolean takes_angle = (row->roles & EM_ROLE_ANGLE) != 0;

      if ((row->roles & roles) == 0 || takes_angle != is_angle)
        continue;
      if (is_angle && f->fit->kind == GROOVE && (roles & EM_ROLE_PER_SIDE) != 0)
        return em_fitter_offer (f, row->field, item, 2, "half-angle");
      /* "1 deep and 1 high": the two legs of a nick may be equal. */
      if (f->fit->kind == EDGE_NICK && strcmp (row->field, "leg_a") == 0 && em_fit_find (f->fit, "leg_a") != NULL)
        continue;
      if (em_fitter_offer (f, row->field, item, 1, row->reason))
        return TRUE;
    }
  return FALSE;
}

/* A bore or a pin by a short name of its diameter stands right before the size: "ID", "OD". */
static gboolean
is_behind_round (const EmFitter *f, guint item)
{
  enum { SHORT = 4 };
  const EmSense *noun = item > 0 ? em_item_says (f->items, item - 1, EM_SAYS_KIND) : NULL;

  return noun != NULL && noun->weight[BORE] + noun->weight[PIN] > 0 && em_item (f->items, item - 1)->length <= SHORT &&
         em_item_says (f->items, item - 1, EM_SAYS_LABEL) != NULL;
}

gboolean
em_fitter_labelled (EmFitter *f, guint item)
{
  const EmSize *size = em_item_size (f->items, item);
  guint32 roles = told_roles (f, item);
  gboolean is_angle = size->unit == EM_UNIT_DEGREE;
  const char *field = field_by_kind (f, item, roles);

  if (field != NULL)
    return field[0] != '\0' && em_fitter_offer (f, field, item, 1, "from-words");
  /* "edge on diameter 32 inside, R0.4": how large round the edge is. */
  if (f->fit->kind == WORN_CORNER && (roles & EM_ROLE_ON_DIAMETER) != 0 && (roles & (EM_ROLE_BUILD | EM_ROLE_ADD | EM_ROLE_RADIUS | EM_ROLE_LENGTH)) == 0 && !is_angle &&
      em_fitter_mm (f, item) > em_build_max_mm)
    return em_fitter_offer (f, "diameter", item, 1, "from-words");
  /* "lip ID 32 rounded R0.3" */
  if (f->fit->kind == WORN_CORNER && roles == 0 && size->chain == 0 && is_behind_round (f, item))
    return em_fitter_offer (f, "diameter", item, 1, "from-words");
  if ((roles & EM_ROLE_SQUARE) != 0 && (f->fit->kind == FACE || f->fit->kind == RECESS))
    return em_fitter_offer (f, "length", item, 1, NULL) && em_fitter_offer (f, "width", item, 1, NULL);
  /* "only 120° of it": how far round, see em_fitter_finish_arc. */
  if (is_angle && f->fit->kind == WORN_CORNER && (roles & EM_ROLE_ARC) != 0)
    return FALSE;
  /* "Cavity wall (draft 1°): scratch": no opening of the groove. */
  if (is_angle && f->fit->kind == GROOVE && (roles & EM_ROLE_DRAFT) != 0)
    return FALSE;
  if (is_angle && f->fit->kind == WORN_CORNER && size->label_item == G_MAXUINT32)
    return em_fitter_offer (f, "angle", item, 1, "from-words");
  if (is_angle)
    roles = (roles & (EM_ROLE_DRAFT | EM_ROLE_ARC | EM_ROLE_PER_SIDE)) | EM_ROLE_ANGLE;
  if (offer_row (f, item, roles, is_angle))
    return TRUE;
  /* "30 mm long, worn for 0.4 mm" */
  if (roles == EM_ROLE_LENGTH && em_fitter_build_field (f->fit->kind) != NULL && em_fit_find (f->fit, "length") != NULL &&
      em_fitter_mm (f, item) <= em_build_max_mm)
    return em_fitter_offer (f, em_fitter_build_field (f->fit->kind), item, 1, "from-words");
  /* "IN SLOT 10 WIDE, 20 DEEP" */
  if ((roles & EM_ROLE_DEPTH) != 0 && em_fit_find (f->fit, "slot_width") != NULL && em_fit_find (f->fit, "slot_depth") == NULL)
    return em_fitter_offer (f, "slot_depth", item, 1, "from-words");
  return is_angle;
}

guint
em_fit_missing (const EmFit *fit, const char **out_fields, guint max)
{
  gboolean is_round = em_fit_find (fit, "diameter") != NULL || em_fit_find (fit, "area") != NULL;
  guint n = 0;

  for (const EmFitRow *row = em_fit_rows[fit->kind]; row < em_fit_rows[fit->kind] + EM_FIT_ROW_MAX && row->field != NULL; row++)
    {
      gboolean is_plan = strcmp (row->field, "length") == 0 || strcmp (row->field, "width") == 0;

      if (!row->is_required || em_fit_find (fit, row->field) != NULL || n == max)
        continue;
      if (is_round && is_plan && (fit->kind == FACE || fit->kind == RECESS || fit->kind == WORN_CORNER))
        continue;
      out_fields[n++] = row->field;
    }
  if ((fit->kind == BORE || fit->kind == PIN || fit->kind == SEAT) && em_fit_find (fit, "diameter") == NULL && n < max)
    out_fields[n++] = "diameter";
  if ((fit->kind == BORE || fit->kind == PIN) && em_fit_find (fit, "worn") == NULL && em_fit_find (fit, "build") == NULL &&
      n < max)
    out_fields[n++] = "build";
  return n;
}

/* When a size of the repair found no field, the others may have the wrong ones: none of them is plainly read. */
static void
mark_unplaced (EmFitter *f)
{
  gboolean is_unplaced = FALSE;

  for (guint i = 0; i < f->proto->sizes->len && i < UNPLACED_MAX; i++)
    {
      guint item = g_array_index (f->proto->sizes, guint, i);
      gboolean is_placed = em_item (f->items, item)->is_used || em_fitter_is_outdone (f, item);

      for (guint k = 0; k < f->fit->n_fitted; k++)
        is_placed |= f->fit->fitted[k].item == item;
      is_unplaced |= !is_placed;
    }
  f->fit->has_unplaced = is_unplaced;
  for (guint k = 0; is_unplaced && k < f->fit->n_fitted; k++)
    if (f->fit->fitted[k].state == EM_READ_READ)
      {
        f->fit->fitted[k].state = EM_READ_INFERRED;
        f->fit->fitted[k].reason = "unplaced-sizes";
      }
}

/* No bore is closed and no pin built up by half of its diameter: one of the two is something else. */
static void
doubt_thick_build (EmFit *fit)
{
  EmFitted *build = (EmFitted *) em_fit_find (fit, "build"), *diameter = (EmFitted *) em_fit_find (fit, "diameter");

  if ((fit->kind != BORE && fit->kind != PIN) || build == NULL || diameter == NULL || 2 * build->value < diameter->value)
    return;
  build->state = diameter->state = EM_READ_INFERRED;
  build->reason = diameter->reason = "implausible";
}

/* "heat checks on 40 x 30 area": where they are, no length and depth of theirs. */
static gboolean
is_row_of_area (const EmItems *items, guint item)
{
  guint32 chain = em_item_size (items, item)->chain;
  guint next = item + 1;

  if (chain != 0 && next + 1 < items->items->len && em_item_says (items, next, EM_SAYS_TIMES) != NULL &&
      em_item (items, next + 1)->type == EM_ITEM_SIZE)
    next += 2;
  return chain != 0 && em_item_is_word (items, next, "area");
}

/* "lands cut 1.0 wide, should be 0.6": how wide the flat is or shall be, and nothing that it lacks. */
static gboolean
is_width_twin (const EmFitter *f, guint item)
{
  const double most = 2.5; /* times as wide */
  const EmSize *size = em_item_size (f->items, item);

  if (f->fit->kind != FACE || size->chain != 0 || (size->roles & (EM_ROLE_WORN | EM_ROLE_FINISHED)) == 0 ||
      (size->roles & ~(guint32) (EM_ROLE_WORN | EM_ROLE_FINISHED)) != 0)
    return FALSE;
  for (guint i = 0; i < f->proto->sizes->len && i < EM_BARE_MAX; i++)
    {
      guint other = g_array_index (f->proto->sizes, guint, i);
      double ratio = em_fitter_mm (f, other) / em_fitter_mm (f, item);

      if (other != item && (em_item_size (f->items, other)->roles & EM_ROLE_WIDTH) != 0 && ratio < most && ratio * most > 1)
        return TRUE;
    }
  return FALSE;
}

/* "crack 15 mm from base of boss": where it is, which no field of a nick, a crack or a pit takes. */
static gboolean
is_position (const EmFitter *f, guint item)
{
  static const char *const from[] = { "from", "from the", "from a", "from any", "away from", "away from the", "away from a", "back from the", "in from the", "up from the" };
  const EmSize *size = em_item_size (f->items, item);
  int kind = f->fit->kind;

  /* ".10 long, .020 from the top and .015 from the bore": the legs of a nick. */
  return (kind == GROOVE || (kind == EDGE_NICK && f->proto->sizes->len > 3) || kind == RECESS) && size->chain == 0 && (size->roles & (em_length_roles | EM_ROLE_LEG | EM_ROLE_GAP | EM_ROLE_FINISHED)) == 0 &&
         size->unit != EM_UNIT_DEGREE && f->proto->sizes->len > 1 && em_item_is_any_word_of (f->items, item + 1, from, G_N_ELEMENTS (from));
}

/* Gives the sizes that tell what they are to their fields, and leaves the bare ones to f. */
static void
fit_told (EmFitter *f, const guint twins[2])
{
  const guint32 bare = added | EM_ROLE_ADD | EM_ROLE_FINISHED | EM_ROLE_ON_DIAMETER | EM_ROLE_SLOT | EM_ROLE_WELD;
  gboolean is_flat = f->fit->kind == FACE || f->fit->kind == SIDEWALL;

  for (guint i = 0; i < f->proto->sizes->len; i++)
    {
      guint item = g_array_index (f->proto->sizes, guint, i);
      const EmSize *size = em_item_size (f->items, item);

      if (item == twins[0] || item == twins[1] || em_fitter_is_outdone (f, item) || is_width_twin (f, item) || em_fitter_slot (f, item) ||
          em_fitter_labelled (f, item))
        continue;
      if ((f->fit->kind == GROOVE && is_row_of_area (f->items, item)) || is_position (f, item) || em_fitter_is_left (f, item))
        continue;
      /* "face 1.00 x .40: build to .885": how high it shall be stands in no row. */
      if (is_flat && size->chain == 0 && f->proto->sizes->len > 1 &&
          (size->roles & (EM_ROLE_FINISHED | EM_ROLE_BUILD | EM_ROLE_ADD)) == EM_ROLE_FINISHED)
        continue;
      if ((size->roles & ~bare) == 0 && f->n_bare < EM_BARE_MAX)
        f->bare[f->n_bare++] = item;
    }
}

/* What follows from the sizes that were found. */
static void
finish (EmFitter *f)
{
  if (f->fit->kind == EDGE_NICK)
    em_fitter_finish_nick (f);
  em_fitter_finish_ring (f);
  if (f->fit->kind == FACE || f->fit->kind == SIDEWALL)
    em_fitter_finish_face (f);
  if (f->fit->kind == SEAT)
    em_fitter_finish_seat (f);
  if (f->fit->kind == RECESS)
    em_fitter_finish_cone (f);
  em_fitter_finish_form (f);
  if (f->fit->kind == WORN_CORNER)
    em_fitter_finish_arc (f);
  if (f->fit->kind == WORN_CORNER && em_fit_find (f->fit, "diameter") != NULL && em_fit_given_text (f->proto, "side") == NULL &&
      !em_fitter_finish_side (f))
    em_fitter_ask (f, "outer-or-bore", em_fit_find (f->fit, "diameter")->item);
}

/* "overcut .015, add .015": said once more. */
static void
use_told_twice (EmFitter *f)
{
  const GArray *sizes = f->proto->sizes;

  for (guint i = 0; f->has_add && i < sizes->len && i < UNPLACED_MAX; i++)
    for (guint k = 0; k < sizes->len && k < UNPLACED_MAX; k++)
      {
        guint low = g_array_index (sizes, guint, i), add = g_array_index (sizes, guint, k);

        if (i != k && (em_item_size (f->items, add)->roles & EM_ROLE_ADD) != 0 && em_fitter_is_outdone (f, low) &&
            em_fitter_is_near (em_fitter_mm (f, low), em_fitter_mm (f, add)))
          em_item (f->items, low)->is_used = TRUE;
      }
}

void
em_fit_sizes (const EmItems *items, const EmProto *proto, int kind, EmFit *out_fit)
{
  EmFitter f = { items, proto, out_fit, 0, { 0 }, FALSE };
  const char *missing[4];
  guint twins[2] = { EM_NO_ITEM, EM_NO_ITEM };

  memset (out_fit, 0, sizeof *out_fit);
  out_fit->kind = kind;
  for (guint i = 0; i < proto->sizes->len; i++)
    f.has_add |= (em_item_size (items, g_array_index (proto->sizes, guint, i))->roles & EM_ROLE_ADD) != 0;
  use_told_twice (&f);
  em_fitter_mark_slot (&f);
  em_fitter_difference (&f, twins);
  if (kind == SIDEWALL && twins[0] == EM_NO_ITEM)
    em_fitter_widened (&f, twins);
  if (kind == BORE || kind == PIN || kind == SEAT)
    em_fitter_round (&f);
  else
    fit_told (&f, twins);
  if (kind == WORN_CORNER)
    em_fitter_finish_corner (&f);
  em_fitter_bare (&f);
  /* "rounded off 0.4, want 0.1": now that the bare one has its field. */
  if (kind == WORN_CORNER && em_fit_find (out_fit, "radius_to") == NULL)
    em_fitter_finish_corner (&f);
  if (kind == SIDEWALL && twins[0] != EM_NO_ITEM)
    em_fitter_lost_width (&f, twins);
  finish (&f);
  drop_open (out_fit);
  doubt_thick_build (out_fit);
  mark_unplaced (&f);
  out_fit->is_complete = em_fit_missing (out_fit, missing, 4) == 0;
}
