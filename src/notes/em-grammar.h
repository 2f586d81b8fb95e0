/* em-grammar: sentences into proposed repairs and notes that govern all.
 *
 * A proposal (EmProto) gathers what was said about one repair: weights for each kind, the
 * sizes, the shared inputs. em-fit then chooses the kind and gives each size its field.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-clause.h"

G_BEGIN_DECLS

#define EM_NO_ITEM G_MAXUINT

/* A field whose value may wait for its size's unit. */
typedef struct
{
  EmReadField field;
  guint       size_item;   /* EM_NO_ITEM: the field has its value */
} EmGiven;

/* How many equal parts were told apart from the repair. */
typedef struct
{
  guint    item;           /* EM_NO_ITEM: none */
  double   n;
  gboolean is_each;        /* cavities: they count only what is told "per cavity" */
  gboolean is_every;       /* all that is told behind is told per cavity */
} EmParts;

typedef struct
{
  int      weight[EM_N_NOTE_KINDS];
  int      damage[EM_N_NOTE_KINDS]; /* of it, what words of damage gave */
  int      noun_weight;    /* of the strongest noun */
  guint    noun;           /* its item, or EM_NO_ITEM */
  guint    fill;           /* the item of its verb of filling, or EM_NO_ITEM */
  guint    kinds;          /* bits: the likeliest kind of each noun of its own */
  gboolean is_slip;        /* the noun was a near spelling */
  gboolean has_verb, has_build, has_fill, has_worn, has_damage, is_equal;
  gboolean is_unclear;     /* what it is was not told, and is asked */
  gboolean is_one_of;      /* one of several that were named together */
  gboolean is_same;        /* refers to the proposal before: what it lacks is that one's */
  guint64  head;           /* the number or letter that heads its line in a list; 0: none */
  guint64  like;           /* "as item 1": the head of the one it refers to instead; 0: the one before */
  gboolean is_part;        /* the noun may only say which part: "PIN BOSS" */
  const char *kind_reason; /* "heading" when the kind is not its own words', or NULL */
  GArray  *sizes;          /* guint items of measures, in order */
  guint32  roles;          /* of all of them together */
  GArray  *given;          /* EmGiven: shared inputs and choices, feature unset */
  double   count;          /* NaN: not told */
  guint    count_item;
  gboolean is_count_loose; /* a number before a noun, without "X", "PLCS" or "QTY" */
  EmParts  parts;          /* told above it */
  gboolean is_per_part;    /* "per cavity" */
  gboolean is_multiplied;  /* its count has the parts in it */
  guint    typical_item;   /* "TYP" or "several" without a number; EM_NO_ITEM: none */
  guint    chamfer_item;   /* "3 X 45°"; EM_NO_ITEM: none */
  guint    first, last;    /* items */
  gboolean may_merge;      /* may be more of the proposal before it */
  gboolean is_merged;      /* taken into the one before */
} EmProto;

/* A metal told in the note. */
typedef struct
{
  const char *base;
  guint       item;
} EmMetal;

/* "ALL DIMS MM", at its item: for what follows it where another says otherwise. */
typedef struct
{
  guint   item;
  EmUnits units;
} EmUnitsSaid;

typedef struct
{
  EmItems   *items;
  gboolean   has_units;       /* a note says which */
  EmUnits    units;           /* the first that does */
  GArray    *units_said;      /* EmUnitsSaid, in order, each other than the one before it */
  gboolean   has_written;     /* all sizes that tell their unit tell the same */
  EmUnits    written;
  GArray    *metals;          /* EmMetal: all that were met */
  GArray    *coatings;        /* EmMetal: coatings that may be of one part, by their ids */
  const char *base;           /* the metal that was met; NULL: none */
  gboolean   has_other_base;  /* another one was met, too */
  guint32    taken;           /* general fields that stand once and were met */
  GPtrArray *protos;          /* EmProto */
  GArray    *general;         /* EmGiven, feature 0 */
} EmGrammar;

/* A field of the item's words, not yet of a feature. */
EmGiven    em_given_new    (const char *field, const char *text, const EmItem *item);
EmGrammar *em_grammar_read (EmItems *items);
void       em_grammar_free (EmGrammar *grammar);

G_END_DECLS
