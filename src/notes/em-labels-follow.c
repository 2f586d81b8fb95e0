/* em-labels-follow: whether a label names the size before it or the one after.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-labels-parts.h"

enum { GLUE_WINDOW = 6 };

guint
em_labels_next_size (const EmClause *c, guint i)
{
  for (guint limit = i + GLUE_WINDOW; ++i < c->end && i <= limit;)
    {
      if (em_item_is_measure (c->items, i))
        return i;
      if (!em_clause_says (c, i, EM_SAYS_GLUE) && !em_clause_says (c, i, EM_SAYS_APPROXIMATE))
        return c->end;
    }
  return c->end;
}

/* More than is left to be machined, in whatever unit (common practice, no source). */
static gboolean
is_long (const EmSize *size)
{
  return em_fraction_plain (size->value) > (size->unit == EM_UNIT_INCH || (size->flags & EM_TOKEN_LEADING_DOT) != 0 ? 0.1 : 2);
}

/* Nothing of the row that the size at i is in comes behind it, and another size of it right before. */
static gboolean
is_last_of_row (const EmClause *c, guint i)
{
  return i >= c->first + 2 && em_clause_is_size (c, i - 2) &&
         em_item_size (c->items, i - 2)->chain == em_item_size (c->items, i)->chain &&
         (em_item_size (c->items, i - 2)->roles | em_item_size (c->items, i)->roles) == 0;
}

static gboolean
ends_in_point (const EmClause *c, guint i)
{
  const EmItem *item = em_item (c->items, i);

  return c->items->text[item->start + item->length - 1] == '.';
}

gboolean
em_labels_is_building (const EmClause *c, guint i)
{
  const EmSense *verb = i < c->end ? em_item_says (c->items, i, EM_SAYS_VERB) : NULL;

  return verb != NULL && g_strcmp0 (verb->value, "build") == 0;
}

gboolean
em_labels_leads_to_own (const EmClause *c, guint i, gboolean is_row)
{
  /* "long. 28": an abbreviation's point */
  guint size = i + 1 + (i + 1 < c->end && em_item_is_sign (c->items, i + 1, '.') && em_item_is_glued (c->items, i + 1));
  const EmSense *after = em_clause_label_at (c, size + 1, EM_LABEL_AFTER);

  return em_clause_is_size (c, size) && em_item_size (c->items, size)->chain == 0 &&
         (after == NULL || (after->roles & em_dimension_roles) == 0 || (is_row && em_clause_is_size (c, size + 2)));
}

/* A label at i, and the size that it would follow. */
typedef struct
{
  const EmClause *c;
  const EmSense  *sense;
  const EmSize   *size;
  guint           i, open, next;
  guint           behind;   /* the label, or the point of its abbreviation: "prof." */
} Follower;

/* "90° = 4", "boss dia: 2.00": a sign leads to the size behind it, but neither "boss 1.10 dia: raise .060" nor ".0025 per side:
 * ⌀.250" does. */
static gboolean
leads_on (const Follower *f)
{
  return f->i + 1 < f->c->end &&
         (em_item_is_sign (f->c->items, f->i + 1, '=') ||
          (em_item_is_sign (f->c->items, f->i + 1, ':') && f->sense->place != EM_LABEL_AFTER && !em_labels_is_building (f->c, f->i + 2) &&
           (f->open + 1 != f->i || em_clause_label_at (f->c, f->i + 2, EM_LABEL_BEFORE) == NULL)));
}

/* "1.5 mm draft 10 deg", "90° dia 8": no length is an angle. */
static gboolean
is_no_angle (const Follower *f)
{
  gboolean is_angle = (f->sense->roles & (EM_ROLE_DRAFT | EM_ROLE_ANGLE)) != 0;

  /* "(60 x 40) incl. 4 edges" */
  if (is_angle && f->size->chain != 0 && f->size->unit == EM_UNIT_NONE && em_item_is_sign (f->c->items, f->i - 1, ')'))
    return TRUE;
  return (is_angle && f->size->unit != EM_UNIT_NONE && f->size->unit != EM_UNIT_DEGREE) ||
         ((f->sense->roles & em_length_roles) != 0 && f->size->unit == EM_UNIT_DEGREE);
}

/* The third size or a later one of its row, with no size behind the label. */
static gboolean
is_third_of_row (const Follower *f)
{
  return f->next == f->c->end && f->open + 1 == f->i && f->open >= f->c->first + 4 && em_clause_is_size (f->c, f->open - 4) &&
         em_item_size (f->c->items, f->open - 4)->chain == f->size->chain;
}

/* "35 x 10 low, 0.2 to add", "24 x 16 worn, 0.3 to add": a row is not what it is low by. "1.250 x .375 x .010 low": its third size is. */
static gboolean
is_row_to_build (const Follower *f)
{
  return f->size->chain != 0 && !is_third_of_row (f) && (f->sense->roles == EM_ROLE_BUILD ||
                                 (f->sense->roles == EM_ROLE_WORN && is_last_of_row (f->c, f->open)));
}

/* "face 2.25 x .75 down .006": how far it lies too low stands behind it. */
static gboolean
is_row_down (const Follower *f)
{
  return f->size->chain != 0 && f->sense->roles == EM_ROLE_DEPTH && f->next == f->behind + 1 &&
         em_item_is_word (f->c->items, f->i, "down") && em_item_size (f->c->items, f->next)->chain == 0;
}

/* "18 mm high to be built up 0.25 mm", "depth 4 to add 0.3": what is added stands behind it. */
static gboolean
is_plan_to_build (const Follower *f)
{
  gboolean leads_to_own = f->next == f->behind + 1 && f->next != f->c->end && em_item_size (f->c->items, f->next)->chain == 0;

  return f->sense->roles == EM_ROLE_BUILD &&
         ((f->size->roles & em_plan_roles) != 0 || (leads_to_own && (f->size->roles & (EM_ROLE_DEPTH | EM_ROLE_DIAMETER)) != 0));
}

/* "leave 2 mm free round it": free, so no stock. */
static gboolean
is_stock_left_free (const Follower *f)
{
  return f->sense->roles == EM_ROLE_CLEARANCE && f->size->roles == EM_ROLE_STOCK && f->i == f->open + 1;
}

/* "5 deep must go away", "Bohrung 10 H7 daneben" */
static gboolean
is_away_of_other (const Follower *f)
{
  return f->sense->roles == EM_ROLE_CLEARANCE && ((f->size->roles & em_dimension_roles) != 0 || f->size->has_fit);
}

/* "weld over 0.1 for grinding": the little word led to no length. */
static gboolean
is_little_stock (const Follower *f)
{
  return f->sense->roles == EM_ROLE_STOCK && f->size->roles == EM_ROLE_LENGTH && f->i == f->open + 1 &&
         f->size->label_item + 1 == f->open && !is_long (f->size);
}

/* "turned down to 2.340 for cleanup": what it is now is no stock. */
static gboolean
is_worn_no_stock (const Follower *f)
{
  return f->sense->roles == EM_ROLE_STOCK && (f->size->roles & (EM_ROLE_WORN | EM_ROLE_DIAMETER)) != 0;
}

/* "1/2 long, few thou deep": the deep one is another, which could not be read. */
static gboolean
is_of_unread (const Follower *f)
{
  return f->sense->place == EM_LABEL_AFTER && (f->sense->roles & em_dimension_roles) != 0 &&
         (f->size->roles & em_dimension_roles & ~f->sense->roles) != 0 && f->i > f->open + 2 &&
         f->size->label_item != G_MAXUINT32 && f->size->label_item > f->open;
}

/* "0.5 short. THK 1.2": behind a point the size after it is meant. */
static gboolean
is_behind_point (const Follower *f)
{
  return f->i > f->open + 1 && em_item_is_sign (f->c->items, f->i - 1, '.') && f->next == f->behind + 1 && f->next != f->c->end;
}

/* "height 4, missing 1.5": behind a comma the wear is told by the size after it. */
static gboolean
is_behind_comma (const Follower *f)
{
  return f->i > f->open + 1 && em_item_is_sign (f->c->items, f->i - 1, ',') && f->next == f->behind + 1 && f->next != f->c->end &&
         f->sense->place == EM_LABEL_EITHER && f->sense->roles == EM_ROLE_BUILD;
}

/* "THK .090 WD .75", "thk. 1.5 lg 30", "Ist 29,82 Länge 50": a word stands before the last size, and this one before the next. */
static gboolean
is_in_row_of_labels (const Follower *f)
{
  guint label = f->size->label_item;

  return (f->sense->roles & em_dimension_roles) != 0 && label != G_MAXUINT32 && label == em_clause_before (f->c, f->open) && f->i == f->open + 1 &&
         !em_clause_says (f->c, label, EM_SAYS_PREPOSITION) && (f->size->roles & f->sense->roles) == 0 &&
         em_labels_leads_to_own (f->c, f->i, (f->size->roles & em_dimension_roles) != 0);
}

/* "over 12 mm at the tip": where that length is, no small diameter. */
static gboolean
is_where_of_length (const Follower *f)
{
  return (f->sense->roles & EM_ROLE_DIAMETER) != 0 && (f->sense->roles & (EM_ROLE_SMALL | EM_ROLE_LARGE)) != 0 && (f->size->roles & EM_ROLE_LENGTH) != 0;
}

static gboolean
stands_after (const Follower *f)
{
  return f->sense->place == EM_LABEL_AFTER;
}

/* "40 mm. depth unknown": behind the unit's point another is told; "5/8 in. dia, .02 low" is not, where the part ends behind it. */
static gboolean
stands_before (const Follower *f)
{
  gboolean ends = f->i == f->open + 1 && (f->i + 1 >= f->c->end || em_item_is_soft_break (f->c->items, f->i + 1) ||
                                           em_item_is_sign (f->c->items, f->i + 1, '.') || em_clause_says (f->c, f->i + 1, EM_SAYS_TIMES));

  return f->sense->place == EM_LABEL_BEFORE || (ends_in_point (f->c, f->open) && !ends);
}

static gboolean
is_told_other (const Follower *f)
{
  return (f->sense->roles & em_dimension_roles) != 0 && (f->size->roles & em_dimension_roles & ~f->sense->roles) != 0;
}

/* "usée de 0,1 au diamètre sur 80": of the wear before it. */
static gboolean
is_side_of_wear (const Follower *f)
{
  return (f->sense->roles & (EM_ROLE_ON_DIAMETER | EM_ROLE_PER_SIDE)) != 0 && f->i == f->open + 1 &&
         f->size->chain == 0 && ((f->size->roles & (EM_ROLE_BUILD | EM_ROLE_WORN)) != 0 ||
                                 ((f->size->roles & em_dimension_roles) == 0 && !is_long (f->size) /* "needs 0.06 per side to come back to 10" */));
}

/* "back to R.010" */
static gboolean
is_before_label (const Follower *f)
{
  return f->next == f->c->end && f->i + 2 < f->c->end && em_item_is_measure (f->c->items, f->i + 2) &&
         em_clause_label_at (f->c, f->i + 1, EM_LABEL_BEFORE) != NULL && (f->sense->roles & em_dimension_roles) == 0;
}

static gboolean
has_none_behind (const Follower *f)
{
  return f->next == f->c->end || (f->next != f->behind + 1 && (f->sense->roles & em_dimension_roles) != 0);
}

static gboolean
tells_change (const Follower *f)
{
  return (f->sense->roles & (EM_ROLE_WORN | EM_ROLE_FINISHED | EM_ROLE_BUILD)) != 0;
}

static gboolean
tells_round (const Follower *f)
{
  return (f->sense->roles & (EM_ROLE_DIAMETER | EM_ROLE_PER_SIDE | EM_ROLE_ON_DIAMETER)) != 0;
}

/* "⌀20 im Durchmesser um 0,08 zu groß", "⌀10 je Seite 0,15 auftragen": the diameter has its sign, and so much is meant. */
static gboolean
is_of_size_behind (const Follower *f)
{
  gboolean is_per_side = (f->sense->roles & EM_ROLE_PER_SIDE) != 0 && f->next == f->behind + 1 && f->next != f->c->end &&
                         em_item_size (f->c->items, f->next)->chain == 0;

  return ((f->sense->roles & EM_ROLE_ON_DIAMETER) != 0 || is_per_side) && (f->size->roles & EM_ROLE_DIAMETER) != 0 && f->next != f->c->end;
}

/* "usé à Ø16,12 sur prof. 25", "auf Länge 30": the little word leads to the size behind the label. */
static gboolean
is_led_to (const Follower *f)
{
  const EmSense *led = em_clause_label_at (f->c, f->i - 1, EM_LABEL_BEFORE);

  return f->i == f->open + 2 && (em_clause_says (f->c, f->i - 1, EM_SAYS_PREPOSITION) || (led != NULL && led->roles == EM_ROLE_LENGTH)) && (f->sense->roles & em_length_roles) != 0 &&
         em_labels_leads_to_own (f->c, f->i, FALSE);
}

/* "0.3 down 5 mm each side": so thick, and so far down. */
static gboolean
is_down_so_far (const Follower *f)
{
  return f->i == f->open + 1 && f->next == f->behind + 1 && f->size->chain == 0 && em_item_is_word (f->c->items, f->i, "down") &&
         em_labels_leads_to_own (f->c, f->i, FALSE);
}

/* "abgenutzt auf 7,9 über Länge 25": the little word stands before a label that leads on. */
static gboolean
is_before_leading (const Follower *f)
{
  return f->i == f->open + 1 && em_clause_says (f->c, f->i, EM_SAYS_PREPOSITION) && em_clause_label_at (f->c, f->i + 1, EM_LABEL_BEFORE) != NULL &&
         (em_clause_label_at (f->c, f->i + 1, EM_LABEL_BEFORE)->roles & em_length_roles) != 0 && em_labels_leads_to_own (f->c, f->i + 1, FALSE);
}

/* "LARGE DIA 1.375  SMALL DIA 1.250": no end of a cone is both. */
static gboolean
is_other_end (const Follower *f)
{
  const guint32 ends = EM_ROLE_LARGE | EM_ROLE_SMALL;

  return (f->sense->roles & ends) != 0 && (f->size->roles & ends) != 0 && (f->sense->roles & f->size->roles & ends) == 0;
}

/* "Kern 3 Kante R0,3": which core, and no length of the edge. */
static gboolean
is_behind_part_number (const Follower *f)
{
  /* "1 Kante R0,2": nor is so many. */
  return f->i == f->open + 1 && (em_item_is_part_number (f->c->items, f->open) ||
                                 (em_clause_says (f->c, f->i, EM_SAYS_KIND) && em_item_is_few_of (f->c->items, f->open)));
}

/* "Bolzen ⌀12 Kante R0,4": the sign says what the size is, and the noun is only the noun. */
static gboolean
is_noun_behind_round (const Follower *f)
{
  return em_clause_says (f->c, f->i, EM_SAYS_KIND) && f->sense->roles == EM_ROLE_LENGTH && (f->size->roles & EM_ROLE_DIAMETER) != 0;
}

/* The first rule that fits tells. */
/* "15x15 / 0,1      Narbung daneben": another column. */
static gboolean
is_in_other_column (const Follower *f)
{
  const guint32 gap = 3;
  const EmItem *size = em_item (f->c->items, f->open);

  if (f->i == f->open + 2 && em_item_is_sign (f->c->items, f->open + 1, '|'))
    return TRUE;
  return f->i > f->open + 1 && em_item (f->c->items, f->open + 1)->start >= size->start + size->length + gap;
}

/* "10 mm prof. 1,5" */
static gboolean
is_abbreviated (const EmClause *c, guint i, const EmSense *sense)
{
  const guint32 most = 5;

  return (sense->roles & em_dimension_roles) != 0 && sense->place != EM_LABEL_AFTER && em_item (c->items, i)->length <= most && i + 2 < c->end && em_item_is_sign (c->items, i + 1, '.') && em_item_is_glued (c->items, i + 1) && em_clause_is_size (c, i + 2);
}

gboolean
em_labels_follows (const EmClause *c, guint open, guint i, const EmSense *sense)
{
  static const struct { gboolean (*is)(const Follower *f); gboolean follows; } rules[] = {
    { is_in_other_column, FALSE }, { is_behind_part_number, FALSE }, { is_other_end, FALSE }, { leads_on, FALSE }, { is_no_angle, FALSE }, { is_row_to_build, FALSE }, { is_row_down, FALSE }, { is_plan_to_build, FALSE },
    { is_stock_left_free, TRUE }, { is_away_of_other, FALSE }, { is_little_stock, TRUE }, { is_worn_no_stock, FALSE },
    { is_of_unread, FALSE }, { is_behind_point, FALSE }, { is_behind_comma, FALSE }, { is_in_row_of_labels, FALSE }, { is_where_of_length, FALSE }, { is_noun_behind_round, FALSE }, { is_down_so_far, FALSE }, { is_before_leading, FALSE }, { is_led_to, FALSE }, { stands_after, TRUE },
    { stands_before, FALSE }, { is_told_other, FALSE }, { is_side_of_wear, TRUE }, { is_before_label, FALSE }, { has_none_behind, TRUE }, { tells_change, FALSE }, { is_of_size_behind, FALSE }, { tells_round, TRUE },
  };
  Follower f = { c, sense, NULL, i, open, 0, i + is_abbreviated (c, i, sense) };

  if (open == G_MAXUINT)
    return FALSE;
  f.size = em_item_size (c->items, open);
  f.next = em_labels_next_size (c, f.behind);
  for (gsize k = 0; k < G_N_ELEMENTS (rules); k++)
    if (rules[k].is (&f))
      return rules[k].follows;
  /* "1.5 LENGTH .25 WIDTH": the next size has a label of its own behind it. */
  return f.next + 1 < c->end && em_clause_label_at (c, f.next + 1, EM_LABEL_AFTER) != NULL;
}
