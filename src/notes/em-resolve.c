/* em-resolve: the unit of each bare number.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-resolve.h"

#include <string.h>

/* No metric drawing tells the tenth part of a micrometre. */
enum { FINEST_DECIMALS = 4, LEAST_THOUSANDTHS = 2 /* sizes that tell it */ };

/* A bare size of this many inches is large for a repair (common practice, no source). */
static const double LARGE_IN = 20;
static const double HUGE_IN = 15;
/* And of this many no repair's. */
static const double GIANT_IN = 100;

typedef struct
{
  guint n_inch, n_mm;      /* sizes that tell their system */
  guint n_plain_inch, n_plain_mm; /* those of them that name a unit */
  guint n_thou;            /* of n_plain_inch, those in thousandths, which shops say among millimetres, too */
  guint n_zero;            /* "0.5": metric by ASME Y14.5, but often written so for inches too */
  guint n_thousandths, n_coarse; /* bare decimals of three digits, and of fewer */
  guint n_trailing;        /* "1.000": metric sizes end in no zero (ASME Y14.5); "3.1496" */
  guint n_point;           /* of n_inch, those that tell it only by a leading point */
  guint n_fine;            /* ".015": of the leading points, those with more than one decimal */
  guint n_huge;            /* "⌀39.80": to the hundredth and beyond any tool in inches */
  guint n_giant;           /* bare sizes that no repair has in inches */
  guint n_large;           /* bare sizes that would be large in inches */
} Votes;

typedef struct
{
  EmGrammar *grammar;
  EmItems   *items;
  EmUnits    fallback;
  Votes      all;
  GArray    *rows;         /* EmUnit by chain */
  gboolean   has_language;
  EmUnits    language;
} Resolver;

/* Sizes that are not used still show how the drawing is written: ".XX ±.01". */
static gboolean
is_witness (const EmSize *size)
{
  return (size->roles & EM_ROLE_REFERENCE) != 0 && size->unit == EM_UNIT_NONE && !size->is_fraction &&
         (size->flags & EM_TOKEN_LEADING_DOT) != 0;
}

static gboolean
is_length (const EmSize *size)
{
  return (size->roles & (EM_ROLE_COUNT | EM_ROLE_REFERENCE | EM_ROLE_HARDNESS)) == 0 && size->unit != EM_UNIT_DEGREE;
}

/* The system a size's own writing tells: INCH, MM, or NONE. */
static EmUnit
told (const EmSize *size)
{
  switch (size->unit)
    {
    case EM_UNIT_INCH: case EM_UNIT_THOU: case EM_UNIT_FOOT: case EM_UNIT_INCH2:
      return EM_UNIT_INCH;
    case EM_UNIT_MM: case EM_UNIT_CM: case EM_UNIT_METRE: case EM_UNIT_UM: case EM_UNIT_TENTH_MM:
    case EM_UNIT_HUNDREDTH_MM: case EM_UNIT_MM2: case EM_UNIT_CM2:
      return EM_UNIT_MM;
    default:
      break;
    }
  if ((size->flags & EM_TOKEN_LEADING_DOT) != 0 || size->is_fraction)
    return EM_UNIT_INCH;
  if (size->has_fit || ((size->flags & EM_TOKEN_COMMA) != 0 && (size->flags & EM_TOKEN_THREE) == 0))
    return EM_UNIT_MM;
  return EM_UNIT_NONE;
}

static void
vote (Votes *votes, const EmSize *size)
{
  EmUnit unit = told (size);

  /* "stay 3 mm off": a size that no field takes has its unit all the same. */
  if (!is_length (size) && !is_witness (size))
    {
      votes->n_plain_mm += unit == EM_UNIT_MM && size->unit != EM_UNIT_NONE;
      votes->n_mm += unit == EM_UNIT_MM && size->unit != EM_UNIT_NONE;
      return;
    }
  votes->n_plain_inch += unit == EM_UNIT_INCH && (size->unit != EM_UNIT_NONE || size->is_fraction);
  votes->n_plain_mm += unit == EM_UNIT_MM && size->unit != EM_UNIT_NONE;
  votes->n_thou += size->unit == EM_UNIT_THOU;
  votes->n_inch += unit == EM_UNIT_INCH;
  votes->n_mm += unit == EM_UNIT_MM;
  votes->n_trailing += unit == EM_UNIT_NONE &&
    ((size->n_decimals >= 3 && size->value.n % 10 == 0) || size->n_decimals >= FINEST_DECIMALS);
  votes->n_point += unit == EM_UNIT_INCH && size->unit == EM_UNIT_NONE && !size->is_fraction;
  votes->n_fine += unit == EM_UNIT_INCH && size->unit == EM_UNIT_NONE && size->n_decimals > 1;
  votes->n_thousandths += unit == EM_UNIT_NONE && size->n_decimals == 3 && !size->is_fraction;
  votes->n_coarse += unit == EM_UNIT_NONE && size->n_decimals > 0 && size->n_decimals < 3;
  votes->n_huge += unit == EM_UNIT_NONE && size->n_decimals == 2 && (size->roles & (EM_ROLE_DIAMETER | EM_ROLE_WORN)) != 0 &&
    em_fraction_plain (size->value) >= HUGE_IN;
  votes->n_large += unit == EM_UNIT_NONE && em_fraction_plain (size->value) >= LARGE_IN;
  votes->n_giant += unit == EM_UNIT_NONE && (size->chain != 0 || (size->roles & (EM_ROLE_LENGTH | EM_ROLE_DIAMETER)) != 0) &&
    em_fraction_plain (size->value) >= GIANT_IN;
  votes->n_zero += unit == EM_UNIT_NONE && (size->flags & EM_TOKEN_LEADING_ZERO) != 0 && size->n_decimals <= 2;
}

/* The system that the votes agree on, or NONE. has_loose_points: a leading point is no vote. */
static EmUnit
one_side (const Votes *votes, gboolean has_loose_points)
{
  guint n_inch = votes->n_inch - (has_loose_points ? votes->n_point : 0);
  guint n_plain_inch = votes->n_plain_inch - (votes->n_plain_mm > 0 ? votes->n_thou : 0);

  /* A named unit outweighs a leading point. */
  if ((n_plain_inch > 0) != (votes->n_plain_mm > 0))
    return n_plain_inch > 0 ? EM_UNIT_INCH : EM_UNIT_MM;
  if ((n_inch > 0) == (votes->n_mm > 0))
    return EM_UNIT_NONE;
  return n_inch > 0 ? EM_UNIT_INCH : EM_UNIT_MM;
}

static EmUnit
unit_of (EmUnits units)
{
  return units == EM_UNITS_INCH ? EM_UNIT_INCH : EM_UNIT_MM;
}

static void
settle (EmSize *size, EmUnit unit, const char *reason)
{
  size->unit = unit;
  if (size->reason == NULL)
    size->reason = reason;
}

/* ".2" beside "22 long" or "0.3": the leading point alone is not enough for inches. */
static gboolean
has_loose_points (const Votes *all)
{
  return all->n_plain_inch == 0 && all->n_plain_mm == 0 && all->n_inch > 0 && all->n_mm == 0 &&
         (all->n_giant > 0 || (all->n_fine == 0 && (all->n_large > 0 || all->n_zero > 0)));
}

/* Of several notes that name different units the last one before the item governs it; of one, that one. */
static EmUnit
governing_unit (const Resolver *r, guint item)
{
  GArray *said = r->grammar->units_said;
  guint low = 0, high = said->len;

  while (low < high)
    {
      guint middle = low + (high - low) / 2;
      if (g_array_index (said, EmUnitsSaid, middle).item < item)
        low = middle + 1;
      else
        high = middle;
    }
  return unit_of (low > 0 ? g_array_index (said, EmUnitsSaid, low - 1).units : r->grammar->units);
}

/* Nothing of the repair tells its unit but what is told in thousandths of an inch. */
static gboolean
is_only_thou (const Votes *own)
{
  return own->n_thou > 0 && own->n_plain_inch == own->n_thou && own->n_inch == own->n_thou && own->n_mm == 0;
}

/* What neither a note nor its own writing tells: the sizes round it do, the language, or the quote. */
static void
settle_by_company (const Resolver *r, EmSize *size, const Votes *own, gboolean is_loose)
{
  if (r->all.n_plain_mm > 0 && one_side (own, is_loose) == EM_UNIT_INCH && em_fraction_plain (size->value) >= LARGE_IN)
    {
      /* "face 50 dia, ten thou low" beside "0.4 mm": no inches, whatever its company. */
      settle (size, EM_UNIT_MM, "same-note");
      size->is_asked = TRUE;
    }
  else if (is_only_thou (own) && (r->all.n_plain_mm > 0 || own->n_large > 0))
    {
      /* "lost six thou over 24 x 10": the wear alone is told so, among millimetres. */
      settle (size, EM_UNIT_MM, "same-note");
      size->is_guessed = TRUE;
      size->is_asked = r->all.n_plain_mm == 0;
    }
  else if (one_side (own, is_loose) != EM_UNIT_NONE)
    {
      settle (size, one_side (own, is_loose), "same-feature");
      /* "big end 10, small end 8, .4 per side": one point more or less is all that tells it. */
      size->is_guessed = (own->n_fine == 0 && own->n_inch > 0 && own->n_inch == own->n_point) ||
                         /* "⌀30 / ⌀18, eroded .008 in": nor is a whole number so large */
                         (size->unit == EM_UNIT_INCH && size->is_whole && em_fraction_plain (size->value) >= LARGE_IN);
    }
  else if (one_side (&r->all, is_loose) != EM_UNIT_NONE)
    {
      settle (size, one_side (&r->all, is_loose), "same-note");
      size->is_guessed = TRUE;
    }
  else if (own->n_inch == 0 && r->all.n_inch == 0 && r->has_language)
    settle (size, unit_of (r->language), "same-language");
  else if (own->n_mm == 0 && r->all.n_mm == 0 && r->all.n_trailing > 0 && r->all.n_large == 0)
    settle (size, EM_UNIT_INCH, "trailing-zero-inch");
  /* "should be 1.125, is 1.131, 1.375 deep": drawings in millimeters rarely go that far (common practice, no source). */
  else if (own->n_mm == 0 && r->all.n_mm == 0 && r->all.n_thousandths >= LEAST_THOUSANDTHS && r->all.n_coarse == 0 && r->all.n_large == 0)
    settle (size, EM_UNIT_INCH, "three-decimals");
  else if (r->all.n_inch == 0 && r->all.n_trailing == 0 && r->all.n_huge > 0)
    settle (size, EM_UNIT_MM, "same-note");
  else if (own->n_inch == 0 && r->all.n_inch == 0 && r->all.n_zero > 0 && r->fallback == EM_UNITS_METRIC)
    settle (size, EM_UNIT_MM, "leading-zero-mm");
  else
    {
      settle (size, unit_of (r->fallback), "quote-units");
      size->is_asked = TRUE;
    }
}

static void
settle_bare (const Resolver *r, guint item, EmSize *size, const Votes *own)
{
  gboolean is_metric = r->all.n_plain_mm > 0 && r->all.n_plain_inch == 0, is_loose = is_metric || has_loose_points (&r->all);
  EmUnit written = told (size), row = size->chain != 0 ? g_array_index (r->rows, EmUnit, size->chain) : EM_UNIT_NONE;

  if (row != EM_UNIT_NONE)
    size->unit = row;
  else if (r->grammar->has_units)
    settle (size, governing_unit (r, item), r->grammar->units_said->len > 1 ? "units-differ" : "general-note");
  else if (written == EM_UNIT_INCH && !size->is_fraction && is_metric)
    {
      /* ".05" beside "3 mm": inch by its writing, metric by its company, and surely so where its own repair tells millimetres. */
      settle (size, EM_UNIT_MM, own->n_plain_mm > 0 ? "same-feature" : "same-note");
      size->is_asked = own->n_plain_mm == 0;
    }
  else if (has_loose_points (&r->all))
    {
      settle (size, r->fallback == EM_UNITS_INCH ? EM_UNIT_INCH : EM_UNIT_MM, "quote-units");
      size->is_asked = TRUE;
    }
  else if (written == EM_UNIT_INCH)
    settle (size, written, size->is_fraction ? "fraction-inch" : "leading-dot-inch");
  else if (written == EM_UNIT_MM)
    settle (size, written, "comma-decimal");
  else
    settle_by_company (r, size, own, is_loose);
}

/* "V-groove .100 wide": a size with another name, or too small for one, is no angle. */
static void
deny_angle (EmSize *size)
{
  const double least_deg = 1;

  /* "arista salida: R0,2" */
  if ((size->roles & (EM_ROLE_RADIUS | EM_ROLE_DIAMETER)) != 0)
    size->roles &= ~(guint32) (EM_ROLE_ANGLE | EM_ROLE_DRAFT);
  if ((size->roles & (EM_ROLE_DRAFT | EM_ROLE_ARC)) == 0 &&
      ((size->roles & em_length_roles) != 0 || em_fraction_plain (size->value) < least_deg))
    size->roles &= ~(guint32) EM_ROLE_ANGLE;
}

/* Angles and hardness have one unit each whether or not it is written. */
static void
settle_special (EmSize *size)
{
  /* "l'angle a une fissure de 8 mm": no length is an angle. */
  if (size->unit != EM_UNIT_NONE && size->unit != EM_UNIT_DEGREE && !em_unit_is_hardness (size->unit))
    size->roles &= ~(guint32) (EM_ROLE_ANGLE | EM_ROLE_DRAFT);
  if (size->unit != EM_UNIT_NONE)
    return;
  if ((size->roles & (EM_ROLE_ANGLE | EM_ROLE_DRAFT)) != 0)
    deny_angle (size);
  if ((size->roles & EM_ROLE_HARDNESS) != 0)
    size->unit = EM_UNIT_HRC;
  else if ((size->roles & (EM_ROLE_ANGLE | EM_ROLE_DRAFT | EM_ROLE_ARC)) != 0 && size->chain == 0)
    size->unit = EM_UNIT_DEGREE;
}

static void
count_votes (Resolver *r)
{
  EmUnit none = EM_UNIT_NONE;

  for (guint i = 0; i < r->items->sizes->len; i++)
    {
      EmSize *size = &g_array_index (r->items->sizes, EmSize, i);

      settle_special (size);
      vote (&r->all, size);
      while (r->rows->len <= size->chain)
        g_array_append_val (r->rows, none);
      if (size->chain != 0 && is_length (size) && (size->unit == EM_UNIT_MM || size->unit == EM_UNIT_INCH))
        g_array_index (r->rows, EmUnit, size->chain) = size->unit;
    }
}

static void
settle_item (const Resolver *r, guint item, const Votes *votes)
{
  EmSize *size = em_item_size (r->items, item);

  if (size->unit == EM_UNIT_NONE && is_length (size))
    settle_bare (r, item, size, votes);
}

static void
settle_proto (const Resolver *r, const EmProto *proto)
{
  Votes votes = { 0 };

  for (guint i = 0; i < proto->sizes->len; i++)
    vote (&votes, em_item_size (r->items, g_array_index (proto->sizes, guint, i)));
  for (guint i = 0; i < proto->sizes->len; i++)
    settle_item (r, g_array_index (proto->sizes, guint, i), &votes);
  for (guint i = 0; i < proto->given->len; i++)
    if (g_array_index (proto->given, EmGiven, i).size_item != EM_NO_ITEM)
      settle_item (r, g_array_index (proto->given, EmGiven, i).size_item, &votes);
}

/* "…is metric" beside sizes that say inch: the note governs only what it speaks of. */
static void
doubt_units (const Resolver *r)
{
  gboolean is_inch = r->grammar->units == EM_UNITS_INCH;

  for (guint i = 0; i < r->grammar->general->len && (is_inch ? r->all.n_plain_mm : r->all.n_plain_inch) > 0; i++)
    {
      EmReadField *field = &g_array_index (r->grammar->general, EmGiven, i).field;

      if (strcmp (field->field, "units") != 0 || field->reason != NULL)
        continue;
      field->state = EM_READ_INFERRED;
      field->reason = "from-words";
    }
}

void
em_resolve_units (EmGrammar *grammar, EmUnits fallback)
{
  Resolver r = { .grammar = grammar, .items = grammar->items, .fallback = fallback,
                 .rows = g_array_new (FALSE, FALSE, sizeof (EmUnit)) };
  Votes none = { 0 };

  count_votes (&r);
  grammar->has_written = (r.all.n_inch > 0) != (r.all.n_mm > 0);
  grammar->written = r.all.n_inch > 0 ? EM_UNITS_INCH : EM_UNITS_METRIC;
  doubt_units (&r);
  r.has_language = em_lexicon_units (grammar->items->lexicon, grammar->items->n_words, &r.language);
  for (guint i = 0; i < grammar->protos->len; i++)
    settle_proto (&r, g_ptr_array_index (grammar->protos, i));
  for (guint i = 0; i < grammar->general->len; i++)
    if (g_array_index (grammar->general, EmGiven, i).size_item != EM_NO_ITEM)
      settle_item (&r, g_array_index (grammar->general, EmGiven, i).size_item, &none);
  g_array_unref (r.rows);
}
