/* em-labels: which words of a sentence name which of its sizes.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-labels.h"

#include "em-labels-parts.h"
#include "em-name.h"

#include <string.h>

enum
{
  ROW_WINDOW = 16, WIDE_GAP = 2 /* bytes between the cells of a row */,
  ALIKE_RATIO = 20,      /* two sizes of one thing differ by less */
  ROUND_NOUN = 4,        /* a bore or a pin by name */
  NEAR_WINDOW = 5,
  LEAST_THOU = 2,
  MOST_THOU = 125,       /* told so, and no inches */
  LEAST_HARDNESS = 10,   /* of any scale (common practice, no source) */
  ALLOY_NUMBER = 1000    /* no hardness has four digits */
};

/* State while labels of a clause are handed out. */
typedef struct
{
  const EmClause *c;
  guint           open;         /* size that a label right here would follow; G_MAXUINT: none */
  guint32         pending;      /* roles waiting for the next size */
  guint           pending_item;
  gboolean        has_finished; /* a word like "should be" was met */
} Labels;

static void
give (Labels *l, guint i, guint32 roles, guint label)
{
  EmSize *size = em_item_size (l->c->items, i);

  /* "4140 hardened", "4140 HT": a metal's number. */
  if (size->is_whole && size->value.n >= ALLOY_NUMBER && em_phrase_find (em_item (l->c->items, i)->phrase, EM_SAYS_BASE) != NULL)
    return;
  /* "1.7131 einsatzgehärtet": another metal's. */
  if ((roles & EM_ROLE_HARDNESS) != 0 && !em_unit_is_hardness (size->unit) && em_fraction_plain (size->value) < LEAST_HARDNESS)
    return;
  /* "Umfang 120 mm": how long the edge is that runs round, and no part of the circle. */
  if (roles == EM_ROLE_ARC && size->unit != EM_UNIT_DEGREE &&
      (size->unit != EM_UNIT_NONE || (label != G_MAXUINT && em_item_is_word (l->c->items, label, "Umfang"))))
    roles = EM_ROLE_LENGTH;
  size->roles |= roles;
  /* "leave .005 R", "keep R0.05": what radius is left, neither stock nor clearance. */
  if ((size->roles & EM_ROLE_RADIUS) != 0 && (size->roles & (EM_ROLE_STOCK | EM_ROLE_CLEARANCE)) != 0)
    size->roles = (size->roles & ~(guint32) (EM_ROLE_STOCK | EM_ROLE_CLEARANCE)) | EM_ROLE_FINISHED;
  if (label != G_MAXUINT)
    {
      size->label_item = size->label_item == G_MAXUINT32 ? label : size->label_item;
      em_item (l->c->items, label)->is_used = TRUE;
    }
}

static void
give_row (Labels *l, guint at, guint32 roles)
{
  guint32 chain = em_item_size (l->c->items, at)->chain;

  for (guint i = at + 1; chain != 0 && i-- > l->c->first && i + ROW_WINDOW > at;)
    if (em_item (l->c->items, i)->type == EM_ITEM_SIZE)
      {
        EmSize *size = em_item_size (l->c->items, i);

        if (size->chain != chain)
          break;
        if ((size->roles & em_dimension_roles) == 0)
          size->roles |= roles;
      }
}

/* "auf 3,42 abgenutzt": the little word led to what it is now, not to a length. */
static void
drop_weak_length (const Labels *l, const EmSense *after)
{
  EmSize *size = em_item_size (l->c->items, l->open);

  if (after->roles == EM_ROLE_CLEARANCE && size->roles == EM_ROLE_STOCK)
    size->roles = 0;
  if ((after->roles == EM_ROLE_WORN || after->roles == EM_ROLE_STOCK) && size->roles == EM_ROLE_LENGTH &&
      size->label_item != G_MAXUINT32 && em_clause_says (l->c, size->label_item, EM_SAYS_PREPOSITION))
    size->roles = 0;
}

/* "EJ SIDE:" */
static gboolean
is_heading (const Labels *l, guint i, const EmSense *sense)
{
  return i + 1 < l->c->end && em_item_is_sign (l->c->items, i + 1, ':') && (l->open == G_MAXUINT || l->open + 1 != i) &&
         (sense->roles & ~(guint32) EM_ROLE_PER_SIDE) == 0;
}

/* A label that stands before its size, and leads to none here. */
static gboolean
leads_nowhere (const Labels *l, guint i, const EmSense *prior)
{
  /* "should be 5.00, is 4.85": a little word says what is now only behind what shall be, and right before its size. */
  if (prior->roles == EM_ROLE_WORN && em_clause_says (l->c, i, EM_SAYS_GLUE) &&
      (!l->has_finished || em_labels_next_size (l->c, i) != i + 1))
    return TRUE;
  /* "hole for core pin", "the top edge": "for", "over" and "the top" lead to a length only right before it. */
  return prior->roles == EM_ROLE_LENGTH && (prior->place == EM_LABEL_BEFORE || em_clause_says (l->c, i, EM_SAYS_PREPOSITION)) &&
         em_labels_next_size (l->c, i) == l->c->end;
}

/* A label that stands behind its size, has none there, and leads to none either. */
static gboolean
is_left_alone (const Labels *l, guint i, const EmSense *after)
{
  /* "a deep pit": a word that follows its size and has none. */
  if (em_labels_next_size (l->c, i) == l->c->end)
    {
      em_item (l->c->items, i)->is_used |= l->c->end - l->c->first > 1 && i + 1 < l->c->end &&
        em_clause_says (l->c, i + 1, EM_SAYS_KIND);
      return TRUE;
    }
  /* "Kante 0,3 mm Radius", against "20 mm Kante": in front of its size the noun is only the noun. */
  if (after->roles == EM_ROLE_LENGTH && em_clause_says (l->c, i, EM_SAYS_KIND))
    return TRUE;
  /* "thickness of rib 1.5": what the size is was told. "takes away 1.5 mm", "worn round .04 R": what is away or round has its size
   * before it. */
  return (l->pending & em_dimension_roles) != 0 || after->roles == EM_ROLE_CLEARANCE ||
         (after->roles & ~(guint32) (EM_ROLE_LARGE | EM_ROLE_SMALL)) == EM_ROLE_DIAMETER;
}

/* "face low | dia 32", "land worn low: dia 32": the next cell, or what stands behind the colon, is how large it is, and not how low. */
static gboolean
is_in_next_cell (const Labels *l, guint i, const EmSense *sense)
{
  if (sense->roles != EM_ROLE_DIAMETER || (l->pending & ~(guint32) (EM_ROLE_BUILD | EM_ROLE_WORN)) != 0 || l->pending_item == G_MAXUINT || l->pending_item + 2 != i)
    return FALSE;
  return em_item_is_sign (l->c->items, i - 1, '|') ||
         (em_item_is_sign (l->c->items, i - 1, ':') && l->pending_item > l->c->first && !em_labels_is_building (l->c, l->pending_item));
}

/* The label at i waits for the next size. */
static void
await_size (Labels *l, guint i, const EmSense *sense)
{
  if (l->pending != 0 && l->pending_item != G_MAXUINT)
    em_item (l->c->items, l->pending_item)->is_used = TRUE;
  /* "was opened up to 8.3": what became of it, not what it was. */
  if (sense->roles == EM_ROLE_WORN && l->pending_item != G_MAXUINT && l->pending_item + 1 == i &&
      (em_item_is_word (l->c->items, i - 1, "was") || em_item_is_word (l->c->items, i - 1, "were")))
    l->pending &= ~(guint32) EM_ROLE_FINISHED;
  /* "Einlaufradius Ø 45": how large round the rounded edge is. */
  if (sense->roles == EM_ROLE_DIAMETER && l->pending == EM_ROLE_RADIUS && l->pending_item != G_MAXUINT && l->pending_item + 1 == i)
    l->pending = 0;
  if (is_in_next_cell (l, i, sense))
    l->pending = 0;
  l->pending |= sense->roles | (em_labels_is_building (l->c, i) && sense->roles == EM_ROLE_BUILD ? EM_ROLE_ADD : 0);
  l->pending_item = i;
  l->open = G_MAXUINT;
}

/* "1/32 R 1.75 long": the size behind the letter says itself what it is, the one before it does not. */
static gboolean
is_of_size_before (const Labels *l, guint i, const EmSense *sense)
{
  const guint32 plan = EM_ROLE_LENGTH | EM_ROLE_WIDTH | EM_ROLE_HEIGHT | EM_ROLE_DEPTH;
  const EmSense *behind = em_clause_label_at (l->c, i + 2, EM_LABEL_AFTER);

  return sense->roles == EM_ROLE_RADIUS && i > l->c->first && l->open == i - 1 && (em_item_size (l->c->items, l->open)->roles & em_dimension_roles) == 0 &&
         behind != NULL && (behind->roles & plan) != 0;
}

/* "leg 1 worn", "bearing in leg B worn 0.1": a name; and "5 L" behind a vessel: what it holds. */
static gboolean
is_name_beside (const Labels *l, guint i, const EmSense *prior)
{
  const EmItems *items = l->c->items;
  gboolean is_leg = prior != NULL && (prior->roles & EM_ROLE_LEGS) != 0 && i + 2 < l->c->end;

  if (is_leg && em_item (items, i + 1)->length == 1 && g_ascii_isupper (items->text[em_item (items, i + 1)->start]) &&
      !em_clause_says (l->c, i + 1, EM_SAYS_TIMES) && !em_clause_is_size (l->c, i + 2))
    return TRUE;
  if (!(is_leg && em_clause_is_size (l->c, i + 1) && em_name_is_leg (l->c, i + 1)) &&
      !(em_item_is_word (items, i, "l") && em_clause_is_size (l->c, i - 1) && (em_item_size (items, i - 1)->roles & EM_ROLE_REFERENCE) != 0))
    return FALSE;
  em_item (items, i)->is_used = TRUE;
  return TRUE;
}

/* "low .02 across .75 x .30": where so much is missing, and not how wide that is. */
static gboolean
leads_to_row (const Labels *l, guint i)
{
  guint size = i + 1;

  if (!em_item_is_word (l->c->items, i, "across") || !em_clause_is_size (l->c, i - 1))
    return FALSE;
  while (size < l->c->end && size < i + 3 && em_item (l->c->items, size)->type == EM_ITEM_PHRASE && !em_clause_says (l->c, size, EM_SAYS_TIMES))
    size++;
  return em_clause_is_size (l->c, size) && em_item_size (l->c->items, size)->chain != 0;
}

/* "1 deep at the bottom of the slot": where, behind a size that has its name already. */
static gboolean
is_place_of_deep (const Labels *l, guint i)
{
  static const char *const places[] = { "at bottom", "at the bottom" };
  const EmSense *before = i > l->c->first ? em_item_says (l->c->items, i - 1, EM_SAYS_LABEL) : NULL;

  return before != NULL && (before->roles & (EM_ROLE_DEPTH | EM_ROLE_LENGTH)) != 0 && em_item_is_any_word_of (l->c->items, i, places, G_N_ELEMENTS (places));
}

/* "8 mm and 5 mm long": both of them. */
static void
give_and (Labels *l, guint size, guint32 roles, guint label)
{
  const EmSense *and = size >= l->c->first + 2 ? em_item_says (l->c->items, size - 1, EM_SAYS_GLUE) : NULL;
  EmSize *before = and != NULL && em_clause_is_size (l->c, size - 2) ? em_item_size (l->c->items, size - 2) : NULL;

  if (before == NULL || g_strcmp0 (and->value, "and") != 0 || before->roles != 0 || before->chain != 0 || em_item_size (l->c->items, size)->chain != 0 ||
      before->unit != em_item_size (l->c->items, size)->unit || (roles & (EM_ROLE_LENGTH | EM_ROLE_DIAMETER)) == 0 || before->is_whole != em_item_size (l->c->items, size)->is_whole)
    return;
  give (l, size - 2, roles, label);
}

/* "24.95 now should be 25.00": the word stands behind what is now. */
static gboolean
is_now_of_size (const Labels *l, guint i)
{
  static const char *const now[] = { "now", "currently", "at present", "at the moment", "jetzt", "derzeit", "ahora", "actualmente", "maintenant", "actuellement" };
  const EmSense *next = i + 1 < l->c->end ? em_item_says (l->c->items, i + 1, EM_SAYS_LABEL) : NULL;

  return em_item_is_any_word_of (l->c->items, i, now, G_N_ELEMENTS (now)) && next != NULL && (next->roles & EM_ROLE_FINISHED) != 0 &&
         i > l->c->first && em_item_is_measure (l->c->items, i - 1);
}

/* "ist auf 3,05 herunter", "ist auf 7,9 runter": to what it is worn, and not how far down. */
static gboolean
is_down_to (const Labels *l, guint i)
{
  static const char *const down[] = { "herunter", "runter", "hinunter", "unten", "heruntergekommen", "runtergekommen" };
  const EmSize *size = i > l->c->first && em_clause_is_size (l->c, i - 1) ? em_item_size (l->c->items, i - 1) : NULL;

  if (size == NULL || size->chain != 0 || (size->roles & EM_ROLE_WORN) == 0 || size->label_item + 1 > i - 1 || !em_item_is_any_word_of (l->c->items, i, down, G_N_ELEMENTS (down)))
    return FALSE;
  em_item (l->c->items, i)->is_used = TRUE;
  return TRUE;
}

static void
take_label (Labels *l, guint i)
{
  const EmSense *after = em_clause_label_at (l->c, i, EM_LABEL_AFTER);
  const EmSense *prior = em_clause_label_at (l->c, i, EM_LABEL_BEFORE);

  /* "T-slot": a letter of a word. */
  if (em_item (l->c->items, i)->length == 1 && i + 2 < l->c->end && em_item_is_sign (l->c->items, i + 1, '-') &&
      em_item_is_glued (l->c->items, i + 1) && em_item_is_glued (l->c->items, i + 2) && !em_clause_is_size (l->c, i + 2))
    return;
  if (is_now_of_size (l, i))
    {
      give (l, i - 1, EM_ROLE_WORN, i);
      return;
    }
  if (is_name_beside (l, i, prior) || leads_to_row (l, i) || is_place_of_deep (l, i) || is_down_to (l, i))
    return;
  /* A label stands before its size or after it. */
  g_return_if_fail (prior != NULL || after != NULL);
  /* "deep: 1.5" in a form */
  if (prior == NULL && i == l->c->first && em_clause_is_size (l->c, i + 2) && em_item_is_sign (l->c->items, i + 1, ':') &&
      (after->roles & (em_dimension_roles | EM_ROLE_BUILD | EM_ROLE_WORN)) != 0)
    prior = after;
  if (em_item_is_of_face (l->c->items, i) && i + 1 < l->c->end)
    {
      give (l, i + 1, EM_ROLE_DIAMETER, i);
      return;
    }
  if (is_heading (l, i, prior != NULL ? prior : after))
    return;
  l->has_finished |= prior != NULL && (prior->roles & EM_ROLE_FINISHED) != 0;
  /* "R.03": glued to the size after it. */
  if (prior != NULL && i + 1 < l->c->end && em_item (l->c->items, i + 1)->type == EM_ITEM_SIZE &&
      (em_item_is_glued (l->c->items, i + 1) ||
       (prior->place == EM_LABEL_BEFORE && after != NULL && after->place == EM_LABEL_AFTER && !is_of_size_before (l, i, after))))
    after = NULL;
  if (after != NULL && em_labels_follows (l->c, l->open, i, after))
    {
      drop_weak_length (l, after);
      give_and (l, l->open, after->roles, i);
      give (l, l->open, after->roles & ~(guint32) EM_ROLE_LEGS, i);
      if ((after->roles & EM_ROLE_LEGS) != 0)
        give_row (l, l->open, EM_ROLE_LEG);
      return;
    }
  if (prior != NULL ? !leads_nowhere (l, i, prior) : !is_left_alone (l, i, after))
    await_size (l, i, prior != NULL ? prior : after);
}

/* "over 1.5 wide": "over" leads to a length only where the size has no name of its own. */
static gboolean
is_weak (const Labels *l, guint i)
{
  const EmSense *after = em_clause_label_at (l->c, i + 1, EM_LABEL_AFTER);

  return l->pending == EM_ROLE_LENGTH &&
         (em_clause_says (l->c, l->pending_item, EM_SAYS_PREPOSITION) || (after != NULL && after->roles == EM_ROLE_DIAMETER && em_item_is_word (l->c->items, l->pending_item, "over")) ||
          em_clause_says (l->c, l->pending_item, EM_SAYS_ONE_OF)) && after != NULL &&
         (after->roles & em_dimension_roles) != 0;
}

/* "RIB CREST LOW: 1.200 LG": a size that says itself that it is a length or a width is no build-up or wear, whatever stands
 * before it. */
static gboolean
denies_build (const Labels *l, guint i)
{
  const EmSense *after = em_clause_label_at (l->c, i + 1, EM_LABEL_AFTER);
  static const char *const needs[] = { "needs", "wants", "requires" };

  /* "needs 3 x 3 built up 1": how large it is. */
  if (em_item_size (l->c->items, i)->chain != 0 && em_item_is_any_word_of (l->c->items, l->pending_item, needs, G_N_ELEMENTS (needs)))
    return TRUE;
  /* "now 29.82 length 50" */
  if ((l->pending & ~(guint32) EM_ROLE_DIAMETER) == EM_ROLE_WORN && l->pending_item + 1 == i && em_labels_leads_to_own (l->c, i + 1, FALSE))
    return FALSE;
  return after != NULL && (after->roles & (EM_ROLE_LENGTH | EM_ROLE_WIDTH)) != 0 && !leads_to_row (l, i + 1);
}

/* "edge of a 25 mm bore", "round the 1/2 hole": the size in front of what is round is how large it is. */
static gboolean
is_of_round (const EmClause *c, guint i)
{
  const EmSense *noun = i + 1 < c->end ? em_item_says (c->items, i + 1, EM_SAYS_KIND) : NULL;
  const EmSize *size = em_item_size (c->items, i);

  if (noun == NULL || noun->weight[BORE] + noun->weight[PIN] < ROUND_NOUN || em_clause_says (c, i + 1, EM_SAYS_LABEL))
    return FALSE;
  if (size->chain != 0 || size->unit == EM_UNIT_DEGREE || (size->unit == EM_UNIT_NONE && size->is_whole))
    return FALSE;
  /* "of the", "of a" may be one phrase or two. */
  return em_clause_says (c, i - 1, EM_SAYS_PREPOSITION) ||
         (i > c->first && em_item (c->items, i - 1)->type == EM_ITEM_PHRASE && em_clause_says (c, i - 2, EM_SAYS_PREPOSITION));
}

/* One of the phrase's labels, whatever its place, has the role. */
static gboolean
has_label (const EmClause *c, guint i, guint32 role)
{
  const EmPhrase *phrase = em_item (c->items, i)->phrase;

  for (guint k = 0; phrase != NULL && k < phrase->n_senses; k++)
    if (phrase->sense[k]->says == EM_SAYS_LABEL && (phrase->sense[k]->roles & role) != 0)
      return TRUE;
  return FALSE;
}

/* "STEP FACE 16 x 2.5, +0.2": so much is to be added; behind a size it would be a tolerance. */
static gboolean
is_plus (const EmClause *c, guint i)
{
  return i > c->first + 1 && em_item_is_sign (c->items, i - 1, '+') && em_item_is_glued (c->items, i) &&
         !em_item_is_glued (c->items, i - 1) && em_item_size (c->items, i)->chain == 0;
}

/* "auf 35 mm Länge": right behind the size stands what it measures. */
static gboolean
names_itself (const EmClause *c, guint size)
{
  const EmSense *after = em_clause_label_at (c, size + 1, EM_LABEL_AFTER);

  return after != NULL && (after->roles & (EM_ROLE_LENGTH | EM_ROLE_WIDTH | EM_ROLE_DEPTH | EM_ROLE_HEIGHT)) != 0;
}

/* What the labels that wait say of the size at i. */
static guint32
waiting_roles (const Labels *l, guint i)
{
  const EmSize *size = em_item_size (l->c->items, i);
  guint32 roles = l->pending & ~(guint32) (denies_build (l, i) ? EM_ROLE_BUILD | EM_ROLE_WORN | EM_ROLE_ADD | EM_ROLE_PER_SIDE
                                           : 0);

  /* "crack at rib root 22 long": where it is. */
  if ((roles & EM_ROLE_GAP) != 0 &&
      em_clause_label_at (l->c, i + 1, EM_LABEL_AFTER) != NULL &&
      (em_clause_label_at (l->c, i + 1, EM_LABEL_AFTER)->roles & em_plan_roles) != 0)
    {
      em_item (l->c->items, l->pending_item)->is_used = TRUE;
      roles = 0;
    }
  if (is_weak (l, i))
    roles = 0;
  /* "keep .030 stock on all" */
  if (roles == EM_ROLE_CLEARANCE && em_clause_label_at (l->c, i + 1, EM_LABEL_AFTER) != NULL &&
      (em_clause_label_at (l->c, i + 1, EM_LABEL_AFTER)->roles & EM_ROLE_STOCK) != 0)
    roles = 0;
  /* "FACE LOW | 20 | 10 | 0.2" under headings: what the column says it is. */
  if ((size->roles & em_dimension_roles) != 0)
    roles &= ~(guint32) (EM_ROLE_BUILD | EM_ROLE_WORN | EM_ROLE_ADD);
  /* "low 0.05 on area 15 x 30": no size of a row is an area. */
  if (size->chain != 0 && !em_unit_is_area (size->unit))
    roles &= ~(guint32) EM_ROLE_AREA;
  /* "scratch across it 3 long": a word that stands behind its size is no name of one that has its own. */
  if (l->pending_item != G_MAXUINT && em_clause_label_at (l->c, l->pending_item, EM_LABEL_BEFORE) == NULL && names_itself (l->c, i) &&
      em_item_is_word (l->c->items, l->pending_item, "across"))
    roles &= ~em_dimension_roles;
  /* "the angle of the face 18 x 25": no row is an angle. */
  if (size->chain != 0)
    roles &= ~(guint32) (EM_ROLE_ANGLE | EM_ROLE_DRAFT);
  /* "Flanken 3 tief": only degrees make a draft of the flanks. */
  if ((roles & EM_ROLE_DRAFT) != 0 && size->unit != EM_UNIT_DEGREE && l->pending_item != G_MAXUINT &&
      em_clause_says (l->c, l->pending_item, EM_SAYS_KIND))
    roles &= ~(guint32) EM_ROLE_DRAFT;
  /* "lock angle face, build .020": no metal is added in degrees. */
  if (((roles | size->roles) & EM_ROLE_BUILD) != 0 && size->unit != EM_UNIT_DEGREE)
    roles &= ~(guint32) (EM_ROLE_ANGLE | EM_ROLE_DRAFT);
  /* "the long side (190 x 4)", "einseitig beschädigt 7 x 0,8": how large that side, or what is there, is. */
  if (size->chain != 0 && (roles & EM_ROLE_PER_SIDE) != 0 && l->pending_item != G_MAXUINT &&
      (em_item_is_word (l->c->items, l->pending_item, "side") || l->pending_item + 1 < i))
    roles &= ~(guint32) EM_ROLE_PER_SIDE;
  /* "0.2 over 6 x 40": the row tells both. */
  if (size->chain != 0 && roles == EM_ROLE_LENGTH && em_clause_says (l->c, l->pending_item, EM_SAYS_PREPOSITION))
    roles = 0;
  /* "STEP HT .150": heat treated to no such figure. */
  if ((roles & EM_ROLE_HARDNESS) != 0 && em_fraction_plain (size->value) < LEAST_HARDNESS && l->pending_item != G_MAXUINT)
    roles = (roles & ~(guint32) EM_ROLE_HARDNESS) | (has_label (l->c, l->pending_item, EM_ROLE_HEIGHT) ? EM_ROLE_HEIGHT : 0);
  return roles;
}

/* "20 thou wide and 15 deep": a bare whole number behind thousandths of an inch is so many, too. */
static void
share_thou (const EmClause *c, guint i)
{
  EmSize *size = em_item_size (c->items, i);

  if (!size->is_whole || size->unit != EM_UNIT_NONE || size->chain != 0 || size->value.n < LEAST_THOU || size->value.n > MOST_THOU)
    return;
  for (guint k = i; k-- > c->first && k + NEAR_WINDOW > i;)
    if (em_item (c->items, k)->type == EM_ITEM_SIZE)
      {
        if (em_item_size (c->items, k)->unit != EM_UNIT_THOU || k + 1 == i)
          return;
        size->unit = EM_UNIT_THOU;
        size->reason = "from-words";
      }
    else if (!em_clause_says (c, k, EM_SAYS_LABEL) && !em_clause_says (c, k, EM_SAYS_TIMES) && !em_clause_says (c, k, EM_SAYS_GLUE))
      return;
}

/* "leave .257 thru hole open": the hole's own size, and nothing that is left to be machined. */
static gboolean
is_of_hole (const EmClause *c, guint i)
{
  for (guint k = i + 1; k < c->end && k <= i + 2; k++)
    {
      const EmSense *noun = em_item_says (c->items, k, EM_SAYS_KIND);

      if (noun != NULL && noun->weight[BORE] > 0 && !em_clause_says (c, k, EM_SAYS_LABEL))
        return TRUE;
    }
  return FALSE;
}

static void
take_size (Labels *l, guint i)
{
  EmSize *size = em_item_size (l->c->items, i);
  guint32 roles = waiting_roles (l, i);
  gboolean keeps_legs = (l->pending & EM_ROLE_LEGS) != 0;

  if ((roles & EM_ROLE_STOCK) != 0 && is_of_hole (l->c, i))
    roles = EM_ROLE_REFERENCE;
  /* "worn land 180 x 3": a row measures the thing, not its wear. */
  if (size->chain != 0 && (roles & (EM_ROLE_WORN | EM_ROLE_DIAMETER | EM_ROLE_RADIUS)) == EM_ROLE_WORN)
    roles &= ~(guint32) EM_ROLE_WORN;
  /* "build up 20 x 10", but "low .018 x .062 wide" */
  if (size->chain != 0 && !(em_clause_says (l->c, i + 1, EM_SAYS_TIMES) && i + 3 < l->c->end &&
                            em_clause_label_at (l->c, i + 3, EM_LABEL_AFTER) != NULL))
    roles &= ~(guint32) (EM_ROLE_BUILD | EM_ROLE_ADD);

  /* "an area of 20 by 35 mm": a row, or a size of a length's unit, is none. */
  if (size->chain != 0 || (size->unit != EM_UNIT_NONE && !em_unit_is_area (size->unit)))
    roles &= ~(guint32) EM_ROLE_AREA;
  if (keeps_legs)
    roles = (roles & ~(guint32) EM_ROLE_LEGS) | EM_ROLE_LEG;
  if (is_plus (l->c, i))
    roles |= EM_ROLE_BUILD | EM_ROLE_ADD;
  if (em_clause_is_after_name (l->c, i) && (size->roles & em_dimension_roles) == 0)
    give (l, i, em_item_says (l->c->items, i - 2, EM_SAYS_LABEL)->roles & em_length_roles, i - 2);
  else if (roles != 0)
    give (l, i, roles, l->pending_item);
  else if (is_of_round (l->c, i))
    size->roles |= EM_ROLE_DIAMETER;
  l->pending = keeps_legs ? EM_ROLE_LEGS : 0;
  l->open = i;
  if (em_unit_is_hardness (size->unit))
    size->roles |= EM_ROLE_HARDNESS;
  if (em_unit_is_area (size->unit))
    size->roles |= EM_ROLE_AREA;
}

static void
take_bound (Labels *l, guint i)
{
  static const struct { EmSays says; const char *reason; } bounds[] = {
    { EM_SAYS_APPROXIMATE, "approximate" }, { EM_SAYS_MINIMUM, "minimum" }, { EM_SAYS_MAXIMUM, "maximum" },
  };
  guint next = em_labels_next_size (l->c, i), at = l->open != G_MAXUINT ? l->open : next;

  for (gsize k = 0; k < G_N_ELEMENTS (bounds); k++)
    if (em_clause_says (l->c, i, bounds[k].says))
      {
        if (k == 0 && next != l->c->end)
          at = next;
        em_item (l->c->items, i)->is_used = TRUE;
        if (at != l->c->end && at != G_MAXUINT && em_item_size (l->c->items, at)->reason == NULL)
          em_item_size (l->c->items, at)->reason = bounds[k].reason;
      }
}

/* "weld .4 mm", but not "weld 6 mm edge", "weld 10 mm long" or "weld 20 x 10". */
static void
take_weld (const EmClause *c, guint i)
{
  guint next = em_labels_next_size (c, i);

  if (next != i + 1 || next == c->end || em_item_size (c->items, next)->chain != 0 ||
      em_item_size (c->items, next)->unit == EM_UNIT_DEGREE ||
      em_clause_says (c, next + 1, EM_SAYS_LABEL) || em_clause_says (c, next + 1, EM_SAYS_KIND) ||
        em_clause_says (c, next + 1, EM_SAYS_PLACE) || em_clause_says (c, next + 1, EM_SAYS_THING))
    return;
  em_item_size (c->items, next)->roles |= EM_ROLE_WELD;
}

/* "6 Stk.: 10,00": a word of counting beside its count is no label. */
static gboolean
is_count_word (const EmClause *c, guint i)
{
  return em_clause_says (c, i, EM_SAYS_PLACES) && i > c->first && em_clause_is_size (c, i - 1) &&
         (em_item_size (c->items, i - 1)->roles & EM_ROLE_COUNT) != 0;
}

/* A label of the plan or of the thickness stands right behind the size. */
static gboolean
names_or_thick (const EmClause *c, guint size)
{
  const EmSense *after = em_clause_label_at (c, size + 1, EM_LABEL_AFTER);

  return after != NULL && (after->roles & (EM_ROLE_LENGTH | EM_ROLE_WIDTH | EM_ROLE_HEIGHT | EM_ROLE_THICKNESS)) != 0;
}

/* "neu aufbauen: 1 dick, 20 lang, 5 hoch": behind the colon each size has its name. */
static gboolean
is_list_of_named (const EmClause *c, guint verb, guint size)
{
  return size == verb + 2 && names_or_thick (c, size) && size + 3 < c->end && em_item_is_soft_break (c->items, size + 2) &&
         em_clause_is_size (c, size + 3) && names_or_thick (c, size + 3);
}

/* "aufbauen 28 lang": how long it is says the size itself; but "auftragen 0,3 Länge 28". */
static gboolean
is_plan_named_behind (const EmClause *c, guint size)
{
  const EmSense *after = em_clause_label_at (c, size + 1, EM_LABEL_AFTER);

  return after != NULL && (after->roles & (EM_ROLE_LENGTH | EM_ROLE_WIDTH)) != 0 && !em_labels_leads_to_own (c, size + 1, FALSE);
}

/* "ADD .030": the size right after the verb is metal to add, unless it begins a row of sizes; "0,3 auftragen": or the one before. */
static void
take_building (Labels *l, guint i)
{
  const EmClause *c = l->c;
  /* "Metal to add: 0.4" */
  guint next = em_labels_next_size (c, i + 1 < c->end && em_item_is_sign (c->items, i + 1, ':') ? i + 1 : i);
  EmSize *open = l->open != G_MAXUINT ? em_item_size (c->items, l->open) : NULL;

  /* "0,5 auftragen und seitlich 3 herunter": what stands right before the verb is added, and not what another part tells. */
  if (open != NULL && l->open + 1 == i && open->chain == 0 && (open->roles & em_dimension_roles) == 0 && i + 1 < c->end &&
      em_item_is_soft_break (c->items, i + 1))
    next = c->end;
  if (next != c->end && em_item_size (c->items, next)->chain == 0 && !is_list_of_named (c, i, next) && !is_plan_named_behind (c, next))
    em_item_size (c->items, next)->roles |= EM_ROLE_BUILD | EM_ROLE_ADD;
  if (next == c->end && open != NULL && open->chain == 0 && (open->roles & em_dimension_roles) == 0)
    open->roles |= EM_ROLE_BUILD | EM_ROLE_ADD;
  else if (next == c->end && open != NULL && open->roles == EM_ROLE_HEIGHT)
    open->roles |= EM_ROLE_ADD;
  else
    l->open = G_MAXUINT;
}

/* "eroded from 1.2 to 1.6": the label of the first says that the other is what it is now. */
static gboolean
is_from (const EmClause *c, const EmSize *first)
{
  const EmItem *label = first->label_item != G_MAXUINT32 ? em_item (c->items, first->label_item) : NULL;

  return label != NULL && (first->roles & EM_ROLE_FINISHED) != 0 && label->length > 5 &&
         g_ascii_strncasecmp (c->items->text + label->start + label->length - 5, " from", 5) == 0;
}

/* "Ø 3 vorne auf 5 mm um 0,02 zu dünn": behind words that tell where, only what is almost as large is the same. */
static gboolean
is_apart (const Labels *l, guint to)
{
  const double most = 1.3;
  double ratio = em_fraction_plain (em_item_size (l->c->items, to + 1)->value) / em_fraction_plain (em_item_size (l->c->items, l->open)->value);

  return l->open + 1 < to && (ratio > most || ratio * most < 1);
}

/* "⌀1.25 TO 1.00": two of the same, unless far apart, "Radius 0,2 auf 55 mm", or the second says what it is. */
static void
take_to (Labels *l, guint i)
{
  const EmSize *first = em_item_size (l->c->items, l->open), *second = em_item_size (l->c->items, i + 1);

  if (!names_itself (l->c, i + 1) && !is_apart (l, i) && em_fraction_plain (second->value) < ALIKE_RATIO * em_fraction_plain (first->value))
    {
      l->pending |= (first->roles & (EM_ROLE_DIAMETER | EM_ROLE_RADIUS)) | (is_from (l->c, first) ? EM_ROLE_WORN : 0);
      l->pending_item = i;
    }
  l->open = G_MAXUINT;
}

/* "into the land": so far into one of two faces. */
static gboolean
is_into_face (const EmClause *c, guint i)
{
  guint next = i + 1 + em_clause_says (c, i + 1, EM_SAYS_GLUE);
  const EmSense *noun = next < c->end ? em_item_says (c->items, next, EM_SAYS_KIND) : NULL;

  return em_clause_says (c, i, EM_SAYS_TO) && em_item_is_word (c->items, i, "into") && noun != NULL && noun->weight[FACE] > 0;
}

static gboolean
is_leg_into_face (const Labels *l, guint i)
{
  /* "1 deep into the land" */
  return is_into_face (l->c, i) && l->open != G_MAXUINT &&
         (l->open + 1 == i || (l->open + 2 == i && em_item_size (l->c->items, l->open)->label_item == l->open + 1)) &&
         (em_item_size (l->c->items, l->open)->roles & em_dimension_roles) == 0;
}

/* "worn to 3.42 (length 6)", and a letter that was used as a name: no label behind it follows the size before it. */
static gboolean
ends_here (const EmClause *c, guint i)
{
  const EmItem *item = em_item (c->items, i);

  /* "(prof. 6)" */
  guint size = i + 2 + (i + 2 < c->end && em_item_is_sign (c->items, i + 2, '.') && em_item_is_glued (c->items, i + 2));

  return (em_item_is_sign (c->items, i, '(') && em_clause_says (c, i + 1, EM_SAYS_LABEL) && em_clause_is_size (c, size)) ||
         (em_clause_says (c, i, EM_SAYS_LABEL) && item->is_used && item->length == 1);
}

/* "dia 20 to dia 16", "20 x 16" */
static gboolean
closes (const Labels *l, guint i)
{
  const EmClause *c = l->c;

  return em_clause_says (c, i, EM_SAYS_TIMES) ||
         (em_clause_says (c, i, EM_SAYS_TO) && em_clause_says (c, i + 1, EM_SAYS_LABEL) && em_clause_is_size (c, i + 2) &&
          l->open != G_MAXUINT && em_clause_says (c, l->open - 1, EM_SAYS_LABEL));
}

/* "face low ⌀40, add 0.3": the sign at once before the size says what it is, and not how low. */
static void
mark_low_round (const EmClause *c, guint i)
{
  EmSize *size = em_item_size (c->items, i);

  if ((size->roles & (EM_ROLE_DIAMETER | EM_ROLE_BUILD)) == (EM_ROLE_DIAMETER | EM_ROLE_BUILD) && i > c->first &&
      em_item_is_glued (c->items, i) && em_clause_label_at (c, i - 1, EM_LABEL_BEFORE) != NULL &&
      em_clause_label_at (c, i - 1, EM_LABEL_BEFORE)->roles == EM_ROLE_DIAMETER)
    size->roles &= ~(guint32) EM_ROLE_BUILD;
}

/* "L 4 W 1 D 0.5": beside a length and a width by their letters, D is a depth. */
static void
mark_letter_depth (const EmClause *c)
{
  guint depth = G_MAXUINT;
  gboolean has_length = FALSE, has_width = FALSE;

  for (guint i = c->first; i + 1 < c->end; i++)
    if (em_item (c->items, i)->length == 1 && em_clause_is_size (c, i + 1) && em_item_size (c->items, i + 1)->label_item == i)
      {
        guint32 roles = em_item_size (c->items, i + 1)->roles;

        has_length |= (roles & EM_ROLE_LENGTH) != 0;
        has_width |= (roles & EM_ROLE_WIDTH) != 0;
        depth = em_item_is_word (c->items, i, "d") ? i + 1 : depth;
      }
  if (has_length && has_width && depth != G_MAXUINT && (em_item_size (c->items, depth)->roles & EM_ROLE_DIAMETER) != 0)
    em_item_size (c->items, depth)->roles = (em_item_size (c->items, depth)->roles & ~(guint32) EM_ROLE_DIAMETER) | EM_ROLE_DEPTH;
}

/* "B 1,1" alone below "T 0,8" alone, in a list of one repair's sizes. */
static gboolean
is_below_letter (const EmClause *c)
{
  const EmItems *items = c->items;
  guint first = c->first;

  return c->end == first + 2 && first >= 4 && em_item (items, first - 1)->type == EM_ITEM_LINE && em_item (items, first - 2)->type == EM_ITEM_SIZE &&
         em_item (items, first - 3)->length == 1 && em_item (items, first - 4)->type == EM_ITEM_LINE && strchr ("LTHlth", items->text[em_item (items, first - 3)->start]) != NULL;
}

/* "L 120, B 4, H 1,5": beside a length and a height by their letters, German B is a width ("Breite"). With "=", too. */
static void
mark_letter_width (const EmClause *c)
{
  guint width = G_MAXUINT;
  gboolean has_length = FALSE, has_height = FALSE;

  for (guint i = c->first; i + 1 < c->end; i++)
    {
      guint size = i + 1 + (em_item_is_sign (c->items, i + 1, '=') || em_item_is_sign (c->items, i + 1, ':'));

      if (em_item (c->items, i)->length != 1 || !em_clause_is_size (c, size))
        continue;
      has_length |= em_item_is_word (c->items, i, "l");
      has_height |= em_item_is_word (c->items, i, "h") || em_item_is_word (c->items, i, "t");
      width = em_item_is_word (c->items, i, "b") ? size : width;
    }
  has_length |= is_below_letter (c);
  has_height |= is_below_letter (c);
  if (!has_length || !has_height || width == G_MAXUINT)
    return;
  em_item_size (c->items, width)->roles = EM_ROLE_WIDTH;
  em_item_size (c->items, width)->label_item = width - 1;
  em_item (c->items, width - 1)->is_used = TRUE;
}

/* "soll überall 0,4 drauf": how much shall come on, not what shall be left. */
static void
mark_shall_come_on (const EmClause *c)
{
  for (guint i = c->first; i < c->end; i++)
    if (em_item_is_measure (c->items, i))
      {
        EmSize *size = em_item_size (c->items, i);

        if ((size->roles & (EM_ROLE_BUILD | EM_ROLE_FINISHED)) == (EM_ROLE_BUILD | EM_ROLE_FINISHED) && (size->roles & ~(EM_ROLE_BUILD | EM_ROLE_FINISHED | EM_ROLE_ADD | EM_ROLE_WELD)) == 0 &&
            em_clause_label_at (c, i + 1, EM_LABEL_AFTER) != NULL && (em_clause_label_at (c, i + 1, EM_LABEL_AFTER)->roles & EM_ROLE_BUILD) != 0)
          size->roles &= ~(guint32) EM_ROLE_FINISHED;
      }
}

/* "Bohrung hat 0,08 Übermaß": a bore is too wide by so much; "mit 0,3 Übermaß schweißen" is left to be machined. */
static void
mark_bore_oversize (const EmClause *c)
{
  static const char *const words[] = { "Übermaß", "Übermass", "Uebermass" };
  gboolean has_bore = FALSE, has_with = FALSE;

  for (guint i = c->first; i < c->end; i++)
    {
      const EmSense *noun = em_item_says (c->items, i, EM_SAYS_KIND);

      has_bore |= noun != NULL && noun->weight[BORE] >= ROUND_NOUN;
      has_with |= em_item_is_word (c->items, i, "mit") || em_clause_says (c, i, EM_SAYS_VERB);
    }
  for (guint i = c->first; i < c->end && has_bore && !has_with; i++)
    if (em_item (c->items, i)->type == EM_ITEM_SIZE)
      {
        EmSize *size = em_item_size (c->items, i);

        if (size->roles == EM_ROLE_STOCK && size->label_item != G_MAXUINT32 && em_item_is_any_word_of (c->items, size->label_item, words, G_N_ELEMENTS (words)))
          size->roles = EM_ROLE_BUILD;
      }
}

/* "tool T-0935": a letter of a number that names something. */
static gboolean
is_letter_of_code (const EmClause *c, guint i)
{
  return em_item (c->items, i)->length == 1 && em_clause_is_size (c, i + 2) && em_item_is_sign (c->items, i + 1, '-') && em_item_is_glued (c->items, i + 1) &&
         em_item_is_glued (c->items, i + 2) && !em_item_is_measure (c->items, i + 2);
}

/* "we finish 1 and 2": what is done, and no name of a size. */
static gboolean
is_work (const EmClause *c, guint i)
{
  return i > c->first && em_clause_says (c, i, EM_SAYS_MACHINING) && em_clause_says (c, i - 1, EM_SAYS_AGENT);
}

/* "A" of "0.5 on A": the letter that heads a repair. */
static gboolean
is_code_letter (const EmClause *c, guint i)
{
  return i < c->end && em_item (c->items, i)->length == 1 && g_ascii_isalpha (c->items->text[em_item (c->items, i)->start]);
}

/* "STOCK A 0.4, B AND C 0.2", "stock: item 1 .010, item 2 .015", "stock .010 on A and .020 on B": one label for a list of sizes, each beside a code. */
static void
mark_stock_list (const EmClause *c)
{
  const EmSense *label = em_item_says (c->items, c->first, EM_SAYS_LABEL);
  gboolean is_head = label != NULL && (label->roles & EM_ROLE_STOCK) != 0, has_code = FALSE, has_stock = is_head;

  for (guint i = c->first + is_head; i < c->end; i++)
    if (em_item_is_measure (c->items, i))
      {
        EmSize *size = em_item_size (c->items, i);
        gboolean is_on = em_clause_says (c, i + 1, EM_SAYS_PREPOSITION) && is_code_letter (c, i + 2);

        if (has_stock && ((is_head && has_code) || is_on) && size->chain == 0 && (size->roles & em_dimension_roles) == 0 && !size->is_whole)
          size->roles |= EM_ROLE_STOCK;
        has_stock |= (size->roles & EM_ROLE_STOCK) != 0 && is_on;
        has_code = FALSE;
      }
    else
      has_code |= em_item (c->items, i)->type == EM_ITEM_SIZE || is_code_letter (c, i);
}

/* "build up 0.3 auf Ø", "add 0.3 on dia": at the end of its part the sign names no size of its own. */
static gboolean
is_on_round (const Labels *l, guint i)
{
  const EmClause *c = l->c;
  const EmSense *label = em_item_says (c->items, i + 1 < c->end ? i + 1 : i, EM_SAYS_LABEL);

  return l->open != G_MAXUINT && i + 1 < c->end && (em_clause_says (c, i, EM_SAYS_PREPOSITION) || em_clause_says (c, i, EM_SAYS_TO)) && label != NULL &&
         label->roles == EM_ROLE_DIAMETER &&
         (i + 2 == c->end || em_item_is_soft_break (c->items, i + 2) || em_item_is_sign (c->items, i + 2, '.') || em_item_is_sign (c->items, i + 2, ')')) &&
         (em_item_size (c->items, l->open)->roles & (EM_ROLE_BUILD | EM_ROLE_ADD)) != 0;
}

/* "19.94    length 60" in a row of a table: the label is of its own cell. */
static gboolean
begins_cell (const EmClause *c, guint i)
{
  const EmItem *before = i > c->first ? em_item (c->items, i - 1) : NULL;

  return before != NULL && em_item (c->items, i)->start >= before->start + before->length + WIDE_GAP;
}

static gboolean
is_in_row (const EmClause *c)
{
  guint first = c->first;

  while (first > 0 && em_item (c->items, first - 1)->type != EM_ITEM_LINE && first + ROW_WINDOW > c->first)
    first--;
  return em_item (c->items, first)->is_row;
}

void
em_labels_mark (const EmClause *c)
{
  Labels l = { c, G_MAXUINT, 0, G_MAXUINT, FALSE };
  gboolean is_row = is_in_row (c);

  for (guint i = c->first; i < c->end; i++)
    {
      const EmItem *item = em_item (c->items, i);

      if (is_row && begins_cell (c, i))
        l.open = G_MAXUINT;

      em_labels_mark_told (c, i);
      if (em_item_is_measure (c->items, i))
        {
          share_thou (c, i);
          take_size (&l, i);
          mark_low_round (c, i);
        }
      else if (item->type == EM_ITEM_SIZE)
        l.open = G_MAXUINT;
      else if (em_item_is_soft_break (c->items, i))
        {
          l.open = G_MAXUINT;
          l.pending = 0;
        }
      else if (ends_here (c, i) || em_item_is_sign (c->items, i, ':') /* "slot 4 wide: both flanks +0.1" */)
        {
          l.open = G_MAXUINT;
          /* "undersize: nominal 14.00, measured 13.91" */
          if (em_clause_label_at (c, i + 1, EM_LABEL_BEFORE) != NULL && (em_clause_label_at (c, i + 1, EM_LABEL_BEFORE)->roles & (EM_ROLE_FINISHED | EM_ROLE_WORN)) != 0)
            l.pending = 0;
        }
      else if (em_clause_says (c, i, EM_SAYS_LABEL) && !is_count_word (c, i) && !em_clause_is_times_of_row (c, i) && !is_letter_of_code (c, i) &&
               !is_work (c, i))
        take_label (&l, i);
      else if (em_clause_says (c, i, EM_SAYS_APPROXIMATE) || em_clause_says (c, i, EM_SAYS_MINIMUM) ||
               em_clause_says (c, i, EM_SAYS_MAXIMUM))
        take_bound (&l, i);
      else if (em_labels_is_building (c, i))
        take_building (&l, i);
      else if (em_clause_says (c, i, EM_SAYS_VERB) && !em_clause_says (c, i, EM_SAYS_PLACES))
        take_weld (c, i);
      else if (em_clause_says (c, i, EM_SAYS_TO) && l.open != G_MAXUINT && i + 1 < c->end && em_item_is_measure (c->items, i + 1))
        take_to (&l, i);
      /* ".03 into the land, .05 into the lip face" */
      else if (is_leg_into_face (&l, i))
        {
          give (&l, l.open, EM_ROLE_LEG, i);
          l.open = G_MAXUINT;
        }
      else if (is_on_round (&l, i))
        {
          give (&l, l.open, EM_ROLE_ON_DIAMETER, ++i);
          l.open = G_MAXUINT;
        }
      else if (closes (&l, i))
        l.open = G_MAXUINT;
      else if (em_clause_says (c, i, EM_SAYS_KIND) || em_clause_says (c, i, EM_SAYS_PREPOSITION) || item->type == EM_ITEM_UNKNOWN)
        {
          l.open = G_MAXUINT;
          l.pending &= ~(guint32) (EM_ROLE_BUILD | EM_ROLE_STOCK);
        }
    }
  mark_stock_list (c);
  mark_letter_depth (c);
  mark_letter_width (c);
  mark_shall_come_on (c);
  mark_bore_oversize (c);
}
