/* em-name: numbers and letters that name a thing and measure nothing.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-name.h"

#include <math.h>
#include <string.h>

enum
{
  DIGITS_MAX = 3,        /* digits of "Slide 12" */
  CODE_MAX = 3,        /* letters of "A-12" */
  ALLOY_DECIMALS = 4,  /* "2.0402" */
  HOURS = 24, DAYS = 31, FEW = 6 /* alike, told apart by numbers */, CAVITIES = 64 /* of one tool */,
  CONDITION_MIN = 800, /* "H900", aged at 900 °F */
  TOO_LONG = 10000,    /* a whole number that is no size */
  TOO_WIDE = 101,      /* of a metric thread */
  LEAST_ALLOY = 100,   /* a metal's number */
  ROW_WINDOW = 16, NEAR_WINDOW = 3
};

/* A worn size is nearer to the finished one than this part of it. */
static const double alike_part = 0.25;

static gboolean
is_first (const EmClause *c, guint i)
{
  return i == c->first || em_item_is_soft_break (c->items, i - 1) || em_item_is_sign (c->items, i - 1, '.') ||
         em_item_is_sign (c->items, i - 1, ':') || em_item_is_sign (c->items, i - 1, '|');
}

/* "Core insert 1:": the first, or behind other words for parts from the first on. */
static gboolean
is_first_part (const EmClause *c, guint i)
{
  while (i > c->first && !is_first (c, i) && (em_clause_says (c, i - 1, EM_SAYS_PLACE) || em_clause_says (c, i - 1, EM_SAYS_KIND)))
    i--;
  return is_first (c, i);
}

/* A diameter is told further on. */
static gboolean
has_diameter (const EmClause *c, guint i)
{
  for (guint k = i; k + 1 < c->end && k < i + ROW_WINDOW; k++)
    {
      const EmSense *label = em_item_says (c->items, k, EM_SAYS_LABEL);

      if (label != NULL && label->roles == EM_ROLE_DIAMETER)
        return TRUE;
    }
  return FALSE;
}

/* "insert 14 OF the mold" */
static gboolean
is_followed_by_place (const EmClause *c, guint i)
{
  return em_clause_says (c, i, EM_SAYS_PREPOSITION) && !em_clause_says (c, i, EM_SAYS_UNIT) &&
         !em_clause_says (c, i, EM_SAYS_LABEL);
}

/* A part of the tool or of the repair whose number is followed by a little word or a colon. A bore's or a pin's may be its size. */
static gboolean
is_which (const EmClause *c, guint noun, guint next)
{
  const EmSense *kind = em_item_says (c->items, noun, EM_SAYS_KIND);
  const EmSense *glue = next < c->end ? em_item_says (c->items, next, EM_SAYS_GLUE) : NULL;

  if (kind != NULL && (kind->weight[BORE] > 0 || kind->weight[PIN] > 0) && !has_diameter (c, next))
    return FALSE;
  if (kind == NULL && !em_clause_says (c, noun, EM_SAYS_PLACE))
    return FALSE;
  if (is_followed_by_place (c, next))
    return TRUE;
  /* "insert 7 per drawing 41-0067" */
  if (em_clause_says (c, next, EM_SAYS_REFERENCE) && em_item (c->items, next)->length > 4 &&
      g_ascii_strncasecmp (c->items->text + em_item (c->items, next)->start, "per ", 4) == 0)
    return TRUE;
  /* "step 1 - 15 x 3" */
  if (next + 1 < c->end && em_item_is_sign (c->items, next, '-') && !em_item_is_glued (c->items, next) &&
      em_clause_is_size (c, next + 1) && !em_item_is_glued (c->items, next + 1))
    return TRUE;
  return (next < c->end && em_item_is_sign (c->items, next, ':')) || em_clause_says (c, next, EM_SAYS_SAME) ||
         em_clause_says (c, next, EM_SAYS_NOISE) ||
         (glue != NULL && (glue->value == NULL || strcmp (glue->value, "has") == 0) && !em_clause_says (c, next, EM_SAYS_UNIT));
}

static gboolean
is_counted (const EmClause *c, guint i)
{
  const EmSense *place = em_item_says (c->items, i, EM_SAYS_PLACE);

  return place != NULL && g_strcmp0 (place->value, "counted") == 0;
}

/* A word that neither names a size nor a count nor a repair. */
static gboolean
is_any_word (const EmClause *c, guint i)
{
  static const EmSays other[] = { EM_SAYS_LABEL, EM_SAYS_QUANTITY, EM_SAYS_PLACES, EM_SAYS_UNIT, EM_SAYS_KIND,
                                 EM_SAYS_REFERENCE, EM_SAYS_MATERIAL, EM_SAYS_TIMES };

  for (gsize k = 0; k < G_N_ELEMENTS (other); k++)
    if (em_clause_says (c, i, other[k]))
      return FALSE;
  return em_item (c->items, i)->type == EM_ITEM_UNKNOWN || em_item (c->items, i)->type == EM_ITEM_PHRASE;
}

/* An English noun of a repair without the s of several. */
static gboolean
is_singular (const EmClause *c, guint i)
{
  const EmItem *item;

  if (!em_clause_says (c, i, EM_SAYS_KIND) || em_clause_says (c, i, EM_SAYS_LABEL) ||
      (em_item (c->items, i)->phrase->languages & ~1u) != 0)
    return FALSE;
  item = em_item (c->items, i);
  return g_ascii_tolower (c->items->text[item->start + item->length - 1]) != 's';
}

/* "item", "Pos" */
static gboolean
is_item_word (const EmClause *c, guint i)
{
  const EmSense *glue = i >= c->first && i < c->end ? em_item_says (c->items, i, EM_SAYS_GLUE) : NULL;

  return glue != NULL && g_strcmp0 (glue->value, "item") == 0;
}

/* The number or letter that may be a name, and the word before it. */
typedef struct
{
  const EmClause *c;
  guint           i, prior;   /* prior: c->end when there is none */
  gboolean        is_size;    /* a whole bare number of few digits; else one letter */
  gboolean        is_next;    /* the word stands right before it */
} Name;

static gboolean
is_letter (const EmClause *c, guint i)
{
  return i >= c->first && i < c->end && em_item (c->items, i)->length == 1 && em_item (c->items, i)->type != EM_ITEM_SIGN &&
         em_item (c->items, i)->type != EM_ITEM_SIZE &&
         em_item (c->items, i)->sign == 0;
}

static gboolean
is_sign (const EmClause *c, guint i, gunichar sign)
{
  return i >= c->first && i < c->end && em_item_is_sign (c->items, i, sign);
}

/* "R" before its number. */
static gboolean
has_radius (const EmClause *c, guint i)
{
  const EmSense *label = em_clause_label_at (c, i, EM_LABEL_BEFORE);

  return label != NULL && (label->roles & EM_ROLE_RADIUS) != 0;
}

/* A seat or an edge, which has a radius. */
static gboolean
has_round_kind (const EmClause *c, guint i)
{
  const EmSense *kind = em_item_says (c->items, i, EM_SAYS_KIND);

  return kind != NULL && kind->weight[SEAT] + kind->weight[WORN_CORNER] > 0;
}

/* "insert B7 got", "RIB R4:", "Web W2 cracked" */
static gboolean
is_letter_and_number (const Name *n)
{
  const EmClause *c = n->c;
  guint i = n->i;
  gboolean is_name;

  if (!n->is_size || i == c->first || !em_item_is_glued (c->items, i) || !is_letter (c, i - 1))
    return FALSE;
  /* "insert A3 left edge": a capital is no article. */
  is_name = em_item (c->items, i - 1)->type == EM_ITEM_UNKNOWN ||
            ((em_item (c->items, i - 1)->flags & EM_TOKEN_UPPER) != 0 && !em_clause_says (c, i - 1, EM_SAYS_LABEL));
  /* "zone D1" */
  if (i > c->first + 1 && is_item_word (c, i - 2) && !has_radius (c, i - 1))
    return TRUE;
  if (is_sign (c, i + 1, ':') || (i > c->first + 1 && is_name && em_clause_says (c, i - 2, EM_SAYS_PLACE)))
    return TRUE;
  /* "corner A1/A2 gone" */
  if (i > c->first + 1 && is_name && em_clause_says (c, i - 2, EM_SAYS_KIND) && is_sign (c, i + 1, '/') &&
      em_item_is_glued (c->items, i + 1))
    return TRUE;
  /* "seat R20 washed out": its radius. */
  if (i == c->first + 2 && has_radius (c, i - 1) && has_round_kind (c, c->first))
    return FALSE;
  return i == c->first + 2 && (em_clause_says (c, c->first, EM_SAYS_KIND) || em_clause_says (c, c->first, EM_SAYS_PLACE)) &&
         (em_clause_says (c, i + 1, EM_SAYS_KIND) || em_clause_says (c, i + 1, EM_SAYS_SET) ||
          em_clause_says (c, i + 1, EM_SAYS_GLUE));
}

/* "Core lifter 4R: …" */
static gboolean
is_number_and_letter (const Name *n)
{
  return n->is_size && n->is_next && em_clause_says (n->c, n->prior, EM_SAYS_PLACE) && is_letter (n->c, n->i + 1) &&
         em_item_is_glued (n->c->items, n->i + 1) && is_sign (n->c, n->i + 2, ':');
}

/* "(B) NICK", "FACE C LOW" */
static gboolean
is_lone_letter (const Name *n)
{
  const EmClause *c = n->c;

  if (n->is_size)
    return FALSE;
  if (n->i > c->first && is_sign (c, n->i - 1, '(') && is_sign (c, n->i + 1, ')'))
    return TRUE;
  return em_item (c->items, n->i)->type == EM_ITEM_UNKNOWN && n->is_next &&
         (em_clause_says (c, n->prior, EM_SAYS_KIND) || em_clause_says (c, n->prior, EM_SAYS_PLACE));
}

/* "3 CAV MOLD: …", "8 cav tool", "on the 2-impression tool" */
static gboolean
is_of_tool (const Name *n)
{
  const EmClause *c = n->c;
  guint next = n->i + 1;

  if (!n->is_size)
    return FALSE;
  if (next + 1 < c->end && is_sign (c, next, '-') && em_item_is_glued (c->items, next) && em_item_is_glued (c->items, next + 1) &&
      em_clause_says (c, next + 1, EM_SAYS_PLACE))
    return TRUE;
  if (n->i == c->first && em_clause_says (c, next, EM_SAYS_PLACE) &&
      (is_sign (c, MIN (next + 1, c->end - 1), ':') || is_sign (c, MIN (next + 2, c->end - 1), ':')))
    return TRUE;
  /* "blow mold 2 cav, …" */
  if (n->is_next && em_clause_says (c, n->prior, EM_SAYS_REFERENCE) && next < c->end && is_counted (c, next))
    return TRUE;
  /* "qty 16 cavities all same" */
  if (n->prior != c->end && (em_clause_says (c, n->prior, EM_SAYS_QUANTITY) || em_clause_says (c, next + 1, EM_SAYS_SAME) ||
                             em_clause_says (c, next + 1, EM_SAYS_ALL) || (next + 1 < c->end && em_item_is_all (c->items, next + 1))))
    return FALSE;
  return n->prior != c->end && next + 1 < c->end && is_counted (c, next) && !em_item_is_soft_break (c->items, next + 1);
}

static gboolean
ends_in_hash (const EmClause *c, guint i)
{
  const EmItem *item = em_item (c->items, i);

  return c->items->text[item->start + item->length - 1] == '#';
}

/* "Stack 3: …", "Lifter #3", "slide no 2" */
static gboolean
is_numbered (const Name *n)
{
  const EmClause *c = n->c;
  const EmSense *word = n->prior != c->end ? em_item_says (c->items, n->prior, EM_SAYS_GLUE) : NULL;

  if (!n->is_size || n->prior == c->end)
    return FALSE;
  if (is_sign (c, n->i - 1, '#') && !em_clause_says (c, n->prior, EM_SAYS_QUANTITY))
    return TRUE;
  /* "die #2 orifice plate": the sign may be the word's own. */
  if (n->is_next && em_clause_says (c, n->prior, EM_SAYS_REFERENCE) && ends_in_hash (c, n->prior) &&
      em_item_is_glued (c->items, n->i))
    return TRUE;
  if (n->is_next && is_first (c, n->prior) && is_any_word (c, n->prior) && is_sign (c, n->i + 1, ':') &&
      !(n->i + 2 < c->end && em_item_is_glued (c->items, n->i + 2)))
    return TRUE;
  return word != NULL && g_strcmp0 (word->value, "number") == 0 && n->prior > c->first &&
         (em_clause_says (c, n->prior - 1, EM_SAYS_PLACE) || em_clause_says (c, n->prior - 1, EM_SAYS_KIND) ||
          (em_item (c->items, n->prior - 1)->type == EM_ITEM_UNKNOWN && !em_item (c->items, n->prior - 1)->is_talk));
}

/* "flank of slot" may be one phrase. */
static gboolean
starts_with_part_of (const EmClause *c, guint i)
{
  const EmItem *item = em_item (c->items, i);

  return em_item_says (c->items, i, EM_SAYS_KIND)->weight[SIDEWALL] > 0 && memchr (c->items->text + item->start, ' ', item->length) != NULL;
}

/* "Flanke der Nut 3 ausgewaschen", "flank of slot 2 worn": which of several; a bore's or a pin's number may be its size. */
static gboolean
is_worn_part (const Name *n)
{
  const EmClause *c = n->c;
  guint next = n->i + 1;
  const EmSense *noun = em_item_says (c->items, n->prior, EM_SAYS_KIND);
  const EmSense *label = em_clause_says (c, next, EM_SAYS_LABEL) ? em_item_says (c->items, next, EM_SAYS_LABEL) : NULL;
  gboolean is_of = em_clause_says (c, n->prior - 1, EM_SAYS_PREPOSITION) && em_clause_says (c, n->prior - 2, EM_SAYS_KIND);
  const EmSense *state = em_clause_says (c, next, EM_SAYS_KIND) ? em_item_says (c->items, next, EM_SAYS_KIND) : NULL;

  if (noun == NULL || noun->weight[BORE] + noun->weight[PIN] > 0 || em_item_size (c->items, n->i)->value.n > FEW || n->prior < c->first ||
      !(is_of || starts_with_part_of (c, n->prior)))
    return FALSE;
  return (state != NULL && state->value != NULL) || (label != NULL && (label->roles & EM_ROLE_WORN) != 0 && !em_clause_says (c, next, EM_SAYS_GLUE));
}

/* "is down", "low" before a size of its own. */
static gboolean
is_state_of_size (const EmClause *c, guint i)
{
  const EmSense *label = em_clause_says (c, i, EM_SAYS_LABEL) ? em_item_says (c->items, i, EM_SAYS_LABEL) : NULL;

  return label != NULL && (label->roles & (EM_ROLE_BUILD | EM_ROLE_WORN)) != 0 && (label->roles & em_length_roles) == 0 && em_clause_is_size (c, i + 1) &&
         em_item_size (c->items, i + 1)->chain == 0;
}

/* "SLIDE 2 WEAR PLATE", "on cav 5", "as core 9 but longer", "insert 14 of the mold", "Cavity 3 has a chip": which of several. */
static gboolean
is_one_of_several (const Name *n)
{
  const EmClause *c = n->c;
  guint next = n->i + 1;
  gboolean is_place = em_clause_says (c, n->prior, EM_SAYS_PLACE), is_free = !em_clause_says (c, next, EM_SAYS_PLACES) &&
                      !em_clause_says (c, next, EM_SAYS_LABEL);

  /* "wie Pos. 2" */
  if (n->is_size && n->prior != c->end && is_free && em_clause_says (c, n->prior, EM_SAYS_SAME) && is_sign (c, n->i - 1, '.'))
    return TRUE;
  if (!n->is_size || !n->is_next)
    return FALSE;
  /* "low on area 15 x 30" */
  if (is_item_word (c, n->prior) && em_clause_says (c, next, EM_SAYS_TIMES) && em_clause_is_size (c, next + 1))
    return FALSE;
  /* One thing, so that the number is the slide's. */
  if (is_first (c, n->prior) && is_place && is_singular (c, next))
    return TRUE;
  /* What is counted has its count before it. */
  if (is_counted (c, n->prior) && is_free && !em_clause_says (c, next, EM_SAYS_TIMES) &&
      (!em_clause_says (c, next, EM_SAYS_KIND) || em_item_says (c->items, next, EM_SAYS_KIND)->value != NULL /* "cav 5 washed" */))
    return TRUE;
  if (em_clause_says (c, n->prior, EM_SAYS_SAME) && is_free && !em_clause_says (c, next, EM_SAYS_TIMES))
    return TRUE;
  /* "pt 3 bore" */
  if (is_item_word (c, n->prior) && is_singular (c, next))
    return TRUE;
  /* "radius at flag 6" */
  if (is_item_word (c, n->prior) && em_clause_says (c, n->prior - 1, EM_SAYS_PREPOSITION) &&
      (is_free || em_clause_says (c, next, EM_SAYS_GLUE)))
    return TRUE;
  if (is_place && !em_clause_says (c, n->prior, EM_SAYS_KIND) && is_followed_by_place (c, next))
    return TRUE;
  /* "am Einsatz 4 ausgebrochen" */
  if (is_place && em_clause_says (c, n->prior - 1, EM_SAYS_PREPOSITION) &&
      (em_clause_says (c, next, EM_SAYS_SET) || em_clause_says (c, next, EM_SAYS_VERB) ||
       (em_clause_says (c, next, EM_SAYS_NUMBER) && em_clause_says (c, next + 1, EM_SAYS_KIND)) /* "am Einsatz 3 zwei Ecken" */))
    return TRUE;
  if (is_worn_part (n))
    return TRUE;
  /* "face on slide 2 is down 0.2" */
  if (is_place && em_clause_says (c, n->prior - 1, EM_SAYS_PREPOSITION) && em_item_size (c->items, n->i)->value.n <= FEW && is_state_of_size (c, next))
    return TRUE;
  /* "an Kavität 2 auf 35 mm Länge": what has no unit is no length beside what has one. */
  if (is_place && (em_clause_says (c, n->prior - 1, EM_SAYS_PREPOSITION) || em_clause_says (c, n->prior - 1, EM_SAYS_GLUE)) &&
      (em_clause_says (c, next, EM_SAYS_PREPOSITION) || em_clause_says (c, next, EM_SAYS_TO)) && em_clause_is_size (c, next + 1) && em_item_size (c->items, next + 1)->unit != EM_UNIT_NONE)
    return TRUE;
  return (is_first (c, n->prior) || (em_clause_says (c, n->prior - 1, EM_SAYS_GLUE) && is_first (c, n->prior - 1)) /* "The insert 3 has" */ ||
          em_clause_says (c, n->prior - 1, EM_SAYS_PREPOSITION) || em_clause_says (c, n->prior - 1, EM_SAYS_NEAR) ||
          em_clause_says (c, n->prior - 1, EM_SAYS_TIMES) /* "by core 2:" */) && is_which (c, n->prior, next);
}

/* "INSERT 3 OF 8": which, and of how many. */
static gboolean
is_of_how_many (const Name *n)
{
  const EmClause *c = n->c;
  gboolean is_first = n->is_size && n->is_next && em_clause_says (c, n->prior, EM_SAYS_PLACE) &&
                      em_clause_says (c, n->i + 1, EM_SAYS_PREPOSITION) &&
                      em_clause_is_size (c, n->i + 2);
  gboolean is_last = n->is_size && n->i > c->first + 2 && em_clause_says (c, n->i - 1, EM_SAYS_PREPOSITION) &&
                     em_clause_is_size (c, n->i - 2) &&
                     em_clause_says (c, n->i - 3, EM_SAYS_PLACE);
  guint of = is_first ? n->i + 1 : n->i - 1;

  return (is_first || is_last) && g_ascii_strncasecmp (c->items->text + em_item (c->items, of)->start, "of", 2) == 0;
}

/* "edge rolled, cav 2, L=18", "nick cav 3 4 x 1 x 1": which cavity, for one alone is not counted. */
static gboolean
is_number_of_cavity (const Name *n)
{
  const EmClause *c = n->c;
  const EmSense *place = n->is_size && n->is_next && n->prior != c->end ? em_item_says (c->items, n->prior, EM_SAYS_PLACE) : NULL;
  guint next = n->i + 1;
  const EmItem *word;

  if (place == NULL || g_strcmp0 (place->value, "counted") != 0 || em_item_is_glued (c->items, n->i) || em_item_size (c->items, n->i)->unit != EM_UNIT_NONE ||
      !em_item_size (c->items, n->i)->is_whole || em_item_size (c->items, n->i)->value.n > CAVITIES || em_item_size (c->items, n->i)->chain != 0)
    return FALSE;
  word = em_item (c->items, n->prior);
  if (g_ascii_tolower (c->items->text[word->start + word->length - 1]) == 's' || em_clause_says (c, next, EM_SAYS_PLACES) || em_clause_says (c, next, EM_SAYS_TIMES))
    return FALSE;
  if (em_clause_is_size (c, next + 1) || (next + 1 < c->end && is_sign (c, next + 1, '=')))
    return TRUE;
  return !em_clause_says (c, next, EM_SAYS_LABEL) && !em_clause_says (c, next, EM_SAYS_UNIT);
}

/* "hole 2 - chip": one of a few alike, closed by a dash or a colon. */
static gboolean
is_numbered_noun (const Name *n)
{
  guint next = n->i + 1;
  const EmSize *size = n->is_size ? em_item_size (n->c->items, n->i) : NULL;

  /* "Bore 6: now 6.1" */
  for (guint k = next + 1; size != NULL && k < n->c->end && k <= next + NEAR_WINDOW; k++)
    if (em_clause_is_size (n->c, k) && !em_clause_says (n->c, k + 1, EM_SAYS_TIMES) &&
        fabs (em_fraction_plain (em_item_size (n->c->items, k)->value) / em_fraction_plain (size->value) - 1) < alike_part)
      return FALSE;
  return size != NULL && n->is_next && size->is_whole && size->unit == EM_UNIT_NONE && size->value.n <= FEW &&
         em_clause_says (n->c, n->prior, EM_SAYS_KIND) && next < n->c->end &&
         (is_sign (n->c, next, ':') || (is_sign (n->c, next, '-') && !em_item_is_glued (n->c->items, next)));
}

/* "core, side 2": which side. */
static gboolean
is_numbered_side (const Name *n)
{
  static const char *const sides[] = { "side", "seite", "lado" };

  return n->is_size && n->is_next && em_item_size (n->c->items, n->i)->value.n <= FEW &&
         em_item_is_any_word_of (n->c->items, n->prior, sides, G_N_ELEMENTS (sides));
}

/* "Slide 3:", "Cavity B:", "Pos. 2 -" */
static gboolean
is_closed (const Name *n)
{
  const EmClause *c = n->c;
  guint next = n->i + 1;
  const EmSense *word = n->prior != c->end ? em_item_says (c->items, n->prior, EM_SAYS_GLUE) : NULL;

  if (n->prior == c->end || !(next == c->end || is_sign (c, next, ':') || is_sign (c, next, '|') || em_clause_says (c, next, EM_SAYS_SOUND) ||
                              (is_sign (c, next, ')') && n->is_next && is_item_word (c, n->prior)) ||
                              (is_sign (c, next, '-') && !em_item_is_glued (c->items, next)) ||
                              (n->is_size && em_item_is_soft_break (c->items, next))))
    return FALSE;
  /* "nick 5 long, leg 1, 0.5" */
  if (n->is_size && next < c->end && em_item_is_soft_break (c->items, next) && em_clause_says (c, n->prior, EM_SAYS_LABEL) &&
      (em_item_says (c->items, n->prior, EM_SAYS_LABEL)->roles & EM_ROLE_LEGS) != 0)
    return FALSE;
  return (word != NULL && g_strcmp0 (word->value, "item") == 0) || is_numbered_noun (n) || is_numbered_side (n) ||
         (is_first_part (c, n->prior) && em_clause_says (c, n->prior, EM_SAYS_PLACE) && !is_sign (c, n->i - 1, ':')) ||
         /* "rib broke off on core 3." */
         ((next == c->end || em_item_is_soft_break (c->items, next)) && n->is_size && n->is_next &&
          em_clause_says (c, n->prior, EM_SAYS_PLACE) && n->prior > c->first &&
          em_clause_says (c, n->prior - 1, EM_SAYS_PREPOSITION));
}

/* "is", "is down" */
static gboolean
begins_with_is (const EmClause *c, guint i)
{
  const EmItem *item = i < c->end ? em_item (c->items, i) : NULL;

  return item != NULL && item->length >= 2 && g_ascii_strncasecmp (c->items->text + item->start, "is", 2) == 0 &&
         (item->length == 2 || c->items->text[item->start + 2] == ' ');
}

/* "web between 2 holes": where it is. */
static gboolean
is_between (const Name *n)
{
  return n->is_size && n->is_next && em_clause_says (n->c, n->prior, EM_SAYS_BETWEEN) &&
         (em_clause_says (n->c, n->i + 1, EM_SAYS_KIND) || em_clause_says (n->c, n->i + 1, EM_SAYS_PLACE));
}

/* "came back from press 14 with two nicks", "see photo 3": a thing outside the tool that has a number. */
static gboolean
is_outside (const Name *n)
{
  const EmPhrase *phrase = n->is_size && n->is_next ? em_item (n->c->items, n->prior)->phrase : NULL;
  static const EmSays measured[] = { EM_SAYS_LABEL, EM_SAYS_PLACES, EM_SAYS_TIMES };

  /* "press 14 is down": nor is it a size of the press. */
  for (gsize k = 0; k < G_N_ELEMENTS (measured) && !begins_with_is (n->c, n->i + 1); k++)
    if (em_clause_says (n->c, n->i + 1, measured[k]))
      return FALSE;
  for (guint k = 0; phrase != NULL && k < phrase->n_senses; k++)
    if (phrase->sense[k]->says == EM_SAYS_NOISE && g_strcmp0 (phrase->sense[k]->value, "numbered") == 0)
      return TRUE;
  return FALSE;
}

/* "Bearing, leg 1 worn", "spider leg 3 has": a leg of the part, and no size of a nick's. */
static gboolean
is_part_leg (const Name *n)
{
  static const char *const words[] = { "leg", "spider leg", "arm", "schenkel", "steg", "bras" };
  const EmSense *noun, *label;
  guint next = n->i + 1;

  if (!n->is_size || !n->is_next || next >= n->c->end || em_item (n->c->items, n->i)->length != 1 ||
      !em_item_is_any_word_of (n->c->items, n->prior, words, G_N_ELEMENTS (words)))
    return FALSE;
  noun = em_item_says (n->c->items, next, EM_SAYS_KIND);
  label = em_item_says (n->c->items, next, EM_SAYS_LABEL);
  /* What became of it follows. */
  return (noun != NULL && noun->value != NULL) || (label != NULL && (label->roles & EM_ROLE_WORN) != 0) ||
         em_clause_says (n->c, next, EM_SAYS_SOUND);
}

/* "bottle mould 5 L", "Kanister 2 l": what goes into it. */
static gboolean
is_capacity (const Name *n)
{
  static const char *const vessels[] = { "mould", "mold", "blow mould", "blow mold", "bottle", "bottle mould", "bottle mold", "jug", "can", "canister", "drum", "container", "tank", "jerrycan",
                                         "form", "blasform", "kanister", "flasche", "flaschenform", "fass", "behälter", "molde", "molde de soplado", "botella", "bidón", "garrafa", "moule",
                                         "bouteille", "bidon", "fût", "jerrican", "soufflage", "moule de soufflage", "moule soufflage", "flacon", "soplado", "molde soplado", "envase",
                                         "frasco", "tambor", "cubo", "seau", "bac", "pot" };
  guint next = n->i + 1;

  return n->is_size && n->is_next && next < n->c->end && em_item_is_word (n->c->items, next, "l") &&
         em_item_is_any_word_of (n->c->items, n->prior, vessels, G_N_ELEMENTS (vessels)) && !em_clause_is_size (n->c, next + 1);
}

/* "in each cavity 2 nicks": so many, and not the second cavity. */
static gboolean
is_so_many_in_each (const Name *n)
{
  return n->is_size && n->is_next && n->prior > n->c->first && em_clause_says (n->c, n->prior, EM_SAYS_PLACE) && em_item_is_per (n->c->items, n->prior - 1) &&
         em_clause_says (n->c, n->i + 1, EM_SAYS_KIND);
}

gboolean
em_name_is_leg (const EmClause *c, guint i)
{
  Name n = { c, i, i - 1, TRUE, TRUE };

  return is_part_leg (&n);
}

gboolean
em_name_is (const EmClause *c, guint i)
{
  static gboolean (*const names[]) (const Name *n) = { is_letter_and_number, is_number_and_letter, is_lone_letter, is_of_tool,
                                                      is_numbered, is_one_of_several, is_of_how_many, is_number_of_cavity, is_closed,
                                                      is_outside, is_between, is_part_leg, is_capacity };
  const EmItem *item = em_item (c->items, i);
  Name n = { c, i, em_clause_before (c, i), item->type == EM_ITEM_SIZE, FALSE };

  /* "Cav. 3" */
  n.is_next = n.prior != c->end && (n.prior + 1 == i ||
                                    (n.prior + 2 == i && is_sign (c, i - 1, '.') && em_item_is_glued (c->items, i - 1)));
  if (n.is_size ? !em_item_size (c->items, i)->is_whole || em_item_size (c->items, i)->unit != EM_UNIT_NONE ||
      item->length > DIGITS_MAX
                : item->type == EM_ITEM_SIGN || item->length != 1)
    return FALSE;
  if (is_so_many_in_each (&n))
    return FALSE;
  for (gsize k = 0; k < G_N_ELEMENTS (names); k++)
    if (names[k] (&n))
      return TRUE;
  return FALSE;
}

/* "NAK80", "CR12": digits that an unknown word runs into are part of a name. */
/* A capital that stands alone before a number and is no label of sizes: of "S355", and not of "R355". */
static gboolean
is_steel_letter (const EmClause *c, guint i)
{
  const EmItem *item = em_item (c->items, i);

  return item->length == 1 && (item->flags & EM_TOKEN_UPPER) != 0 && g_ascii_isupper (c->items->text[item->start]) &&
         strchr ("RLWHDTB", c->items->text[item->start]) == NULL;
}

/* A capital that alone before a number names a part: no "R", "L" or "D", which measure. */
static gboolean
is_part_letter (const EmClause *c, guint i)
{
  return is_steel_letter (c, i) || (em_item (c->items, i)->length == 1 && c->items->text[em_item (c->items, i)->start] == 'T');
}

static gboolean
is_glued_to_word (const EmClause *c, guint i)
{
  const EmSize *size = em_item_size (c->items, i);
  guint word = i - 1;

  if (i == c->first || !em_item_is_glued (c->items, i))
    return FALSE;
  /* "A-12" */
  if (word > c->first && em_item_is_sign (c->items, word, '-') && em_item_is_glued (c->items, word) && size->is_whole &&
      size->unit == EM_UNIT_NONE &&
      em_item (c->items, word - 1)->length <= CODE_MAX && em_item (c->items, word - 1)->type != EM_ITEM_SIZE &&
        em_item (c->items, word - 1)->type != EM_ITEM_SIGN &&
      (em_item (c->items, word - 1)->flags & EM_TOKEN_UPPER) != 0 && !em_clause_says (c, word - 1, EM_SAYS_LABEL))
    return TRUE;
  /* "5O-52": what is before the dash could not be read. */
  if (em_item_is_sign (c->items, word, '-') && word > c->first && em_item_is_glued (c->items, word) && em_item_is_glued (c->items, word - 1))
    word--;
  /* "Slide T1": which of them. */
  if (i >= c->first + 2 && is_part_letter (c, i - 1) && size->is_whole && size->unit == EM_UNIT_NONE && size->value.n < TOO_WIDE &&
      em_clause_says (c, i - 2, EM_SAYS_PLACE) && !em_clause_says (c, i - 2, EM_SAYS_KIND))
    return TRUE;
  /* "M333", "S355": no meters, and a thread is not as large. */
  if (is_steel_letter (c, i - 1) && size->is_whole && size->unit == EM_UNIT_NONE && size->value.n >= TOO_WIDE)
    return TRUE;
  return em_item (c->items, word)->type == EM_ITEM_UNKNOWN &&
         (em_item (c->items, word)->length > 1 || (size->is_whole && size->unit == EM_UNIT_NONE) || word < i - 1);
}

/* Two numbers with a dash between them and no blanks. */
static gboolean
is_dashed (const EmClause *c, guint a, guint dash, guint b)
{
  return b < c->end && em_clause_is_size (c, a) && em_clause_is_size (c, b) && em_item_is_sign (c->items, dash, '-') &&
         em_item_is_glued (c->items, dash) && em_item_is_glued (c->items, b) &&
         em_item_size (c->items, b)->is_whole;
}

static gboolean
is_thread_word (const EmClause *c, guint i)
{
  const EmSense *thing = i >= c->first && i < c->end ? em_item_says (c->items, i, EM_SAYS_THING) : NULL;

  return thing != NULL && g_strcmp0 (thing->value, "thread") == 0;
}

/* A word for material stands before it, and no size of a repair between. */
static gboolean
is_beside_metal (const EmClause *c, guint i)
{
  for (guint k = i; k-- > c->first && k + ROW_WINDOW > i;)
    {
      if (em_clause_says (c, k, EM_SAYS_MATERIAL))
        return TRUE;
      if (em_clause_is_size (c, k) && !em_clause_says (c, k, EM_SAYS_BASE))
        return FALSE;
    }
  return FALSE;
}

/* "555-0142", "14:20", "12.03.2026", "68840": digits of a telephone, a time, a date, a number of something. */
static gboolean
is_code (const EmClause *c, guint i)
{
  const EmItem *item = em_item (c->items, i);
  const EmSize *size = em_item_size (c->items, i);
  const char *text = c->items->text + item->start;
  gboolean is_long = size->is_whole && size->unit == EM_UNIT_NONE &&
                     (size->value.n >= TOO_LONG || (item->length >= 3 && text[0] == '0' && g_ascii_isdigit (text[1])));

  if (is_long && (size->roles & em_dimension_roles) == 0)
    return TRUE;
  if (size->unit != EM_UNIT_NONE)
    return FALSE;
  /* "material 4340" */
  if (size->is_whole && size->value.n >= LEAST_ALLOY && i > c->first && em_clause_says (c, i - 1, EM_SAYS_MATERIAL))
    return TRUE;
  /* "tapped hole 10-32": its name (ASME B1.1). */
  if (size->is_whole && ((is_dashed (c, i, i + 1, i + 2) && is_thread_word (c, i - 1)) || (i > c->first + 2 && is_dashed (c, i - 2, i - 1, i) && is_thread_word (c, i - 3))))
    return TRUE;
  /* "10-32 tapped hole" */
  if (size->is_whole && ((is_dashed (c, i, i + 1, i + 2) && is_thread_word (c, i + 3)) || (i >= c->first + 2 && is_dashed (c, i - 2, i - 1, i) && is_thread_word (c, i + 1))))
    return TRUE;
  /* "core 88-2", "cavity 1-4" */
  if (size->is_whole && ((is_dashed (c, i, i + 1, i + 2) && i > c->first && em_clause_says (c, i - 1, EM_SAYS_PLACE)) ||
                         (i > c->first + 2 && is_dashed (c, i - 2, i - 1, i) && em_clause_says (c, i - 3, EM_SAYS_PLACE))))
    return TRUE;
  /* "brass 2.0402", "Werkstoff 1.2343, Säule 1.7131" */
  if (size->n_decimals == ALLOY_DECIMALS && size->value.n >= size->value.d && i > c->first &&
      (em_clause_says (c, i - 1, EM_SAYS_MATERIAL) || is_beside_metal (c, i)))
    return TRUE;
  for (int side = -2; side <= 2; side += 4)
    {
      guint other = i + (guint) side, sign = side < 0 ? i - 1 : i + 1;

      if ((side < 0 && i < c->first + 2) || other >= c->end || em_item (c->items, other)->type != EM_ITEM_SIZE ||
          !em_item_is_glued (c->items, MAX (i, other)) ||
          !em_item_is_glued (c->items, sign))
        continue;
      if (em_item_is_sign (c->items, sign, ':') || em_item_is_sign (c->items, sign, '.') ||
          (em_item_is_sign (c->items, sign, '-') && item->length >= 3 && em_item (c->items, other)->length >= 3 &&
           size->is_whole))
        return TRUE;
    }
  return FALSE;
}

/* "12 hrs", "250,000 shots", "3 weeks" */
static gboolean
is_time (const EmClause *c, guint i)
{
  const EmSense *noise = i + 1 < c->end ? em_item_says (c->items, i + 1, EM_SAYS_NOISE) : NULL;
  static const char *const weeks[] = { "week", "wk", "kw", "semana", "semaine" };

  /* "delivery week 23" */
  if (i > c->first && em_item_size (c->items, i)->is_whole && em_item_is_any_word_of (c->items, i - 1, weeks, G_N_ELEMENTS (weeks)))
    return TRUE;

  /* "5 am", but German "Radius 0,5 am Einlauf", "Fläche Ø42 am Flansch". */
  return noise != NULL && g_strcmp0 (noise->value, "time") == 0 &&
         ((em_item_size (c->items, i)->is_whole && (i == c->first || !em_clause_says (c, i - 1, EM_SAYS_LABEL))) || !em_clause_says (c, i + 1, EM_SAYS_PREPOSITION)) &&
         em_item_size (c->items, i)->unit == EM_UNIT_NONE;
}

/* "14th": the ending glued to its number. */
static gboolean
is_ordinal (const EmItems *items, guint i)
{
  static const char *const endings[] = { "th", "st", "nd", "rd" };

  return em_item_is_glued (items, i) && em_item_is_any_word_of (items, i, endings, G_N_ELEMENTS (endings));
}


gboolean
em_name_is_ordinal (const EmClause *c, guint i)
{
  return em_clause_is_size (c, i) && em_item_size (c->items, i)->is_whole && em_item_size (c->items, i)->unit == EM_UNIT_NONE &&
         i + 1 < c->end && is_ordinal (c->items, i + 1) && em_clause_says (c, i + 2, EM_SAYS_KIND);
}

/* "12 May", "3 Mar": the one word of a month that is another, too, stands behind its day. */
gboolean
em_name_is_day (const EmItems *items, guint i)
{
  static const char *const months[] = { "jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec",
                                       "march", "june", "july" };
  /* Written out, and in languages that write them small. */
  static const char *const named[] = {
    "january", "february", "april", "august", "september", "october", "november", "december", "januar", "februar", "märz", "mai", "juni", "juli", "oktober",
    "dezember", "janvier", "février", "avril", "juin", "juillet", "août", "septembre", "octobre", "novembre", "décembre", "enero", "febrero", "marzo", "abril",
    "mayo", "junio", "julio", "agosto", "septiembre", "octubre", "noviembre", "diciembre",
  };
  const EmItem *word = i + 1 < items->items->len ? em_item (items, i + 1) : NULL;
  const EmSize *day = em_item_size (items, i);
  guint month = i + 1;

  if (word != NULL && day->is_whole && is_ordinal (items, i + 1))
    return TRUE;
  if (word == NULL || !day->is_whole || em_item (items, i)->length > 2 || day->value.n < 1 || day->value.n > DAYS)
    return FALSE;
  /* "3 de junio", "3. Juni" */
  month += em_item_is_word (items, month, "de") || em_item_is_sign (items, month, '.');
  if (em_item_is_any_word_of (items, month, named, G_N_ELEMENTS (named)))
    return TRUE;
  if ((word->flags & EM_TOKEN_CAPITAL) == 0)
    return FALSE;
  return em_item_is_any_word_of (items, i + 1, months, G_N_ELEMENTS (months));
}

/* "9:40" */
gboolean
em_name_is_clock (const EmClause *c, guint i)
{
  const EmItem *hour = em_item (c->items, i), *minute = i + 2 < c->end ? em_item (c->items, i + 2) : NULL;

  return minute != NULL && em_item_is_sign (c->items, i + 1, ':') && em_item_is_glued (c->items, i + 1) && em_item_is_glued (c->items, i + 2) &&
         minute->type == EM_ITEM_SIZE &&
         minute->length == 2 && hour->length <= 2 && em_item_size (c->items, i)->is_whole &&
           em_item_size (c->items, i)->value.n < HOURS;
}

/* "M16x1.5": the pitch of a thread (ISO 965-1). */
static gboolean
is_pitch (const EmClause *c, guint i)
{
  const EmSense *thing = i >= c->first + 2 ? em_item_says (c->items, i - 2, EM_SAYS_THING) : NULL;

  return thing != NULL && g_strcmp0 (thing->value, "thread") == 0 && em_clause_says (c, i - 1, EM_SAYS_TIMES) &&
         em_item_is_glued (c->items, i - 1) && em_item_is_glued (c->items, i);
}

/* "M-219   nozzle seat": letters, a dash and a number of some digits. */
static gboolean
is_dashed_code (const EmClause *c, guint i)
{
  const EmItem *item = em_item (c->items, i), *word = i > c->first + 1 ? em_item (c->items, i - 2) : NULL;

  /* "17-4 PH, cond. H900": how it was hardened (ASTM A564). */
  if (i > c->first && em_item_is_glued (c->items, i) && em_item_is_word (c->items, i - 1, "h") && em_item_size (c->items, i)->is_whole &&
      em_item_size (c->items, i)->value.n >= CONDITION_MIN)
    return TRUE;
  if (word == NULL || word->length > CODE_MAX || word->type == EM_ITEM_SIZE || !em_item_is_sign (c->items, i - 1, '-') ||
      !em_item_is_glued (c->items, i) || !em_item_is_glued (c->items, i - 1) || !g_ascii_isupper (c->items->text[word->start]))
    return FALSE;
  return em_item_size (c->items, i)->is_whole && item->length >= 2;
}

/* "7731-04": a number that goes on with a zero is a part's. */
static gboolean
is_part_code (const EmClause *c, guint i)
{
  const char *text = c->items->text;
  enum { LEAST_DIGITS = 3 };

  if (i + 2 < c->end && em_item_size (c->items, i)->is_whole && em_item (c->items, i)->length >= LEAST_DIGITS &&
      em_item_is_sign (c->items, i + 1, '-') && em_item_is_glued (c->items, i + 1) && em_item (c->items, i + 2)->type == EM_ITEM_SIZE)
    i += 2;
  return i >= c->first + 2 && em_item_size (c->items, i)->is_whole && em_item (c->items, i)->length > 1 && text[em_item (c->items, i)->start] == '0' &&
         em_item_is_glued (c->items, i) && em_item_is_sign (c->items, i - 1, '-') && em_item_is_glued (c->items, i - 1) &&
         em_item (c->items, i - 2)->type == EM_ITEM_SIZE && em_item_size (c->items, i - 2)->is_whole &&
         em_item (c->items, i - 2)->length >= LEAST_DIGITS;
}

/* "welded in 2019", "seit 2021" */
static gboolean
is_year (const EmClause *c, guint i)
{
  static const char *const words[] = { "in", "since", "from", "of", "year", "seit", "im", "jahr", "von", "en", "desde", "año", "depuis", "année", "de" };
  const guint64 first = 1970, last = 2049;
  const EmSize *size = em_item_size (c->items, i);

  return size->is_whole && size->unit == EM_UNIT_NONE && em_item (c->items, i)->length == 4 && size->value.n >= first &&
         size->value.n <= last && i > c->first && em_item_is_any_word_of (c->items, i - 1, words, G_N_ELEMENTS (words)) &&
         (i + 1 >= c->end || (em_item (c->items, i + 1)->type != EM_ITEM_SIZE && !em_clause_says (c, i + 1, EM_SAYS_TIMES) &&
                              !em_clause_says (c, i + 1, EM_SAYS_LABEL)));
}

/* "100Cr6", "16MnCr5": elements glued between numbers name a steel. */
static gboolean
is_alloy (const EmClause *c, guint i)
{
  enum { LEAST_LETTERS = 2, MOST_LETTERS = 6 };
  const EmSize *size = em_item_size (c->items, i);
  const EmItem *next = i + 2 < c->end ? em_item (c->items, i + 1) : NULL;

  return next != NULL && size->is_whole && size->unit == EM_UNIT_NONE && next->type != EM_ITEM_SIZE && next->length >= LEAST_LETTERS &&
         next->length <= MOST_LETTERS && (next->flags & (EM_TOKEN_GLUED | EM_TOKEN_CAPITAL | EM_TOKEN_UPPER)) == (EM_TOKEN_GLUED | EM_TOKEN_CAPITAL) &&
         em_item (c->items, i + 2)->type == EM_ITEM_SIZE && em_item_is_glued (c->items, i + 2);
}

/* "these 3 items:": so many are told behind. */
static gboolean
is_so_many_told (const EmClause *c, guint i)
{
  static const char *const told[] = { "items", "things", "jobs", "repairs", "points", "problems", "issues", "questions", "defects" };

  return em_item_size (c->items, i)->is_whole && em_item_size (c->items, i)->unit == EM_UNIT_NONE && em_item_size (c->items, i)->chain == 0 &&
         i + 1 < c->end && em_item_is_any_word_of (c->items, i + 1, told, G_N_ELEMENTS (told));
}

gboolean
em_name_is_code (const EmClause *c, guint i)
{
  if (is_alloy (c, i) || is_so_many_told (c, i))
    return TRUE;
  if (is_pitch (c, i) || is_dashed_code (c, i))
    return TRUE;
  return is_glued_to_word (c, i) || is_code (c, i) || is_time (c, i) || is_year (c, i) || is_part_code (c, i) || em_name_is_day (c->items, i);
}

/* A word of a letter that begins its line or its sentence: "Cheers", "Kind regards". */
static gboolean
is_closing (const EmItems *items, guint i)
{
  if (i > 0 && em_item (items, i - 1)->type != EM_ITEM_LINE && !em_item_is_sign (items, i - 1, '.') && !em_item_is_sign (items, i - 1, '!'))
    return FALSE;
  return em_item (items, i)->is_talk || em_item_says (items, i, EM_SAYS_TALK) != NULL || em_item_says (items, i, EM_SAYS_GLUE) != NULL;
}

/* One word with a capital that the lexicon takes for a repair, for a slip of another word, for no word of letters, or for one of a
 * language that the words of the greeting are not of: "Nick", "Willem", "Mark", "Bas". */
static gboolean
may_be_first_name (const EmItems *items, guint i, guint greeting)
{
  static const EmSays never[] = { EM_SAYS_AGENT, EM_SAYS_PLACE, EM_SAYS_VERB, EM_SAYS_MACHINING, EM_SAYS_REFERENCE, EM_SAYS_MATERIAL };
  const EmItem *item = em_item (items, i), *before = em_item (items, greeting);

  if (item->type != EM_ITEM_PHRASE || (item->flags & (EM_TOKEN_CAPITAL | EM_TOKEN_UPPER)) != EM_TOKEN_CAPITAL ||
      memchr (items->text + item->start, ' ', item->length) != NULL)
    return FALSE;
  if (em_phrase_find (item->phrase, EM_SAYS_KIND) != NULL || (item->flags & EM_TOKEN_SLIP) != 0)
    return TRUE;
  for (gsize k = 0; k < G_N_ELEMENTS (never); k++)
    if (em_phrase_find (item->phrase, never[k]) != NULL)
      return FALSE;
  /* "Hi Mark", but not "Hi Team". */
  return (before->type == EM_ITEM_PHRASE && (item->phrase->languages & before->phrase->languages) == 0) ||
         (em_phrase_find (item->phrase, EM_SAYS_GLUE) == NULL && em_phrase_find (item->phrase, EM_SAYS_TALK) == NULL);
}

/* "Cheers, Nick", or the name in a line of its own below "Regards": who wrote it. */
static gboolean
is_signature (const EmItems *items, guint i)
{
  guint before = i, n_lines = 0;

  if (i == 0 || (i + 1 < items->items->len && em_item (items, i + 1)->type != EM_ITEM_LINE))
    return FALSE;
  while (before > 0 && before + NEAR_WINDOW > i && (em_item (items, before - 1)->type == EM_ITEM_LINE || em_item_is_sign (items, before - 1, ',')))
    n_lines += em_item (items, --before)->type == EM_ITEM_LINE;
  return before > 0 && before < i && n_lines <= 2 && is_closing (items, before - 1) && may_be_first_name (items, i, before - 1);
}

/* "Buenos días Pilar,": whom it is to. */
static gboolean
is_addressee (const EmItems *items, guint i)
{
  guint next = i + 1;

  if (i == 0 || em_item (items, i - 1)->type == EM_ITEM_LINE || em_item (items, i - 1)->type == EM_ITEM_SIGN || !is_closing (items, i - 1) ||
      !may_be_first_name (items, i, i - 1))
    return FALSE;
  while (next < items->items->len && next <= i + 1 && (em_item_is_sign (items, next, ',') || em_item_is_sign (items, next, ':') || em_item_is_sign (items, next, '!')))
    next++;
  return next < items->items->len && em_item (items, next)->type == EM_ITEM_LINE;
}

void
em_name_read_signatures (EmItems *items)
{
  for (guint i = 0; i < items->items->len; i++)
    if (is_signature (items, i) || is_addressee (items, i))
      {
        em_item (items, i)->type = EM_ITEM_UNKNOWN;
        em_item (items, i)->phrase = NULL;
      }
}
