/* em-govern: notes that are not sizes of a repair.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-govern.h"

#include <math.h>
#include <string.h>

enum { LONG_NUMBER = 1000 /* longer than a size */ };

enum { HRC_MIN = 25, HRC_MAX = 68 /* of mold steels (common practice, no source) */,
       HRC_LEAST = 15, HRC_MOST = 70 /* no steel of a tool is softer or harder (common practice, no source) */ };

enum { AGENT_WINDOW = 6 /* from what is done to who does it */, WINDOW = 4, REFERENCE_WINDOW = 12,
      SENTENCE_WINDOW = 40 /* items of a sentence that may be looked over whole */ };

typedef struct
{
  EmGrammar      *grammar;
  const EmClause *c;
  GArray         *loose;
  gboolean        has_all;   /* "all over" stands in the sentence */
  gboolean        has_verb;  /* of repairing */
  guint           n_nouns;
} Governor;

static EmItem *
item (const Governor *g, guint i)
{
  return em_item (g->c->items, i);
}

static const EmSense *
says (const Governor *g, guint i, EmSays what)
{
  return i >= g->c->first && i < g->c->end ? em_item_says (g->c->items, i, what) : NULL;
}

static gboolean
is_size (const Governor *g, guint i)
{
  return i >= g->c->first && i < g->c->end && item (g, i)->type == EM_ITEM_SIZE;
}

static gboolean
is_count (const Governor *g, guint i)
{
  return is_size (g, i) && (em_item_size (g->c->items, i)->roles & EM_ROLE_COUNT) != 0;
}

static EmLoose *
add (Governor *g, const char *field, const char *text, guint from, guint to)
{
  EmLoose one = { .given = em_given_new (field, text, item (g, from)), .item = from };

  one.given.field.length = item (g, to)->start + item (g, to)->length - item (g, from)->start;
  g_array_append_val (g->loose, one);
  for (guint i = from; i <= to; i++)
    item (g, i)->is_used = TRUE;
  return &g_array_index (g->loose, EmLoose, g->loose->len - 1);
}

static EmLoose *
add_size (Governor *g, const char *field, guint i)
{
  EmLoose *one = add (g, field, NULL, i, i);
  const EmSize *size = em_item_size (g->c->items, i);

  one->given.size_item = i;
  one->given.field.reason = size->reason;
  one->given.field.state = size->reason != NULL ? EM_READ_INFERRED : EM_READ_READ;
  return one;
}

static void
infer (EmLoose *one, const char *reason)
{
  one->given.field.state = EM_READ_INFERRED;
  one->given.field.reason = reason;
}

/* The unit that items i to last name. A later "UNITS: MM" that says otherwise governs what follows it; other words that only name a
 * unit do not. units: its word; NULL: the unit stands apart. */
static void
say_units (Governor *g, EmUnit unit, const EmSense *units, guint i, guint last)
{
  EmUnitsSaid said = { i, unit == EM_UNIT_INCH ? EM_UNITS_INCH : EM_UNITS_METRIC };
  GArray *all = g->grammar->units_said;
  gboolean is_first = !g->grammar->has_units;
  EmLoose *one;

  if (!is_first && (units == NULL || units->unit != EM_UNIT_NONE || g_array_index (all, EmUnitsSaid, all->len - 1).units == said.units))
    return;
  g_array_append_val (all, said);
  one = add (g, "units", unit == EM_UNIT_INCH ? "in" : "mm", i, last);
  one->is_general = TRUE;
  /* "MM [INCH]": the other unit in brackets, as the sizes have it. */
  if (last + 2 < g->c->end && em_item_is_sign (g->c->items, last + 1, '[') && says (g, last + 2, EM_SAYS_UNIT) != NULL)
    item (g, last + 2)->is_used = TRUE;
  if (!is_first)
    {
      infer (one, "units-differ");
      return;
    }
  g->grammar->has_units = TRUE;
  g->grammar->units = said.units;
  /* A unit that only stands apart is taken to govern; "ALL DIMS MM" says so. */
  if (units == NULL)
    infer (one, "from-words");
}

/* "ALL DIMS MM", "metric", or a unit that stands apart from any number: "(MM)". */
static void
read_units (Governor *g, guint i)
{
  const EmSense *units = says (g, i, EM_SAYS_UNITS), *unit = says (g, i, EM_SAYS_UNIT);
  guint last = i;

  if (item (g, i)->is_used)
    return;
  if (units != NULL && units->unit != EM_UNIT_NONE)
    unit = units;
  else if (units != NULL)
    for (guint k = i + 1; k < g->c->end && k <= i + WINDOW && unit == NULL; k++)
      {
        unit = says (g, k, EM_SAYS_UNIT);
        /* "sizes in mm": that "in" is no inch. */
        if (unit != NULL && says (g, k, EM_SAYS_PREPOSITION) != NULL && says (g, k + 1, EM_SAYS_UNIT) != NULL)
          unit = NULL;
        last = k;
      }
  else if (unit != NULL && i > g->c->first && (i + 1 < g->c->end || says (g, i, EM_SAYS_PREPOSITION) != NULL) &&
           !em_item_is_soft_break (g->c->items, i - 1) && !em_item_is_sign (g->c->items, i - 1, '(') &&
           !em_item_is_sign (g->c->items, i - 1, ':') &&
           !em_item_is_sign (g->c->items, i - 1, '['))
    return;
  if (unit == NULL || (unit->unit != EM_UNIT_MM && unit->unit != EM_UNIT_INCH) ||
      (units == NULL && says (g, i, EM_SAYS_PREPOSITION) != NULL && i + 1 < g->c->end &&
       !em_item_is_sign (g->c->items, i + 1, ')')))
    return;
  say_units (g, unit->unit, units, i, last);
}

/* Fields that stand once: the first is taken, later ones stay visible as unused. TRUE for the first. */
static gboolean
take_once (Governor *g, const char *field)
{
  static const char *const once[] = { "base", "reference", "drawing", "tool_number" };

  for (guint k = 0; k < G_N_ELEMENTS (once); k++)
    if (strcmp (once[k], field) == 0)
      {
        gboolean is_first = (g->grammar->taken & (1u << k)) == 0;

        g->grammar->taken |= 1u << k;
        return is_first;
      }
  return TRUE;
}

static gboolean
has_material_near (const Governor *g, guint i)
{
  gboolean has_material = FALSE;

  for (guint k = i > g->c->first + 3 ? i - 3 : g->c->first; k < g->c->end && k <= i + 2; k++)
    if (says (g, k, EM_SAYS_MATERIAL) != NULL)
      item (g, k)->is_used = has_material = TRUE;
  return has_material;
}

/* "4140." or "4140, 30 HRC" and no more in the sentence; "2.125 dia x 1.5 long, 420." at its end. */
static gboolean
stands_alone (const Governor *g, guint i)
{
  if (i + 1 == g->c->end && i > g->c->first + 1 && em_item_is_sign (g->c->items, i - 1, ',') && is_size (g, i) &&
      em_item_size (g->c->items, i)->unit == EM_UNIT_NONE &&
      !is_size (g, i - 2))
    return TRUE;
  for (guint k = g->c->first; k < g->c->end; k++)
    if (k != i && item (g, k)->type != EM_ITEM_SIGN &&
        !(is_size (g, k) && em_unit_is_hardness (em_item_size (g->c->items, k)->unit)))
      return FALSE;
  return TRUE;
}

/* "300 BHN, 4140, HOLE", "6061 INSERT": four digits that are a metal's number and measure nothing. */
static gboolean
is_alloy_number (const Governor *g, guint i)
{
  const EmSize *size = is_size (g, i) ? em_item_size (g->c->items, i) : NULL;

  return size != NULL && size->is_whole && size->value.n >= 1000 && size->unit == EM_UNIT_NONE && size->chain == 0 &&
         size->label_item == G_MAXUINT32;
}

/* "H13 46.": a whole number right behind a metal and alone there. */
static gboolean
is_bare_behind (const Governor *g, guint base, guint i)
{
  gboolean is_behind = i == base + 1 || (i == base + 2 && says (g, base + 1, EM_SAYS_PREPOSITION) != NULL); /* "D2 at 60" */
  const EmSize *size = is_behind && is_size (g, i) ? em_item_size (g->c->items, i) : NULL;

  return size != NULL && size->is_whole && size->unit == EM_UNIT_NONE && size->chain == 0 && size->roles == 0 &&
         size->value.n >= HRC_MIN && size->value.n <= HRC_MAX &&
         (i + 1 >= g->c->end || em_item_is_soft_break (g->c->items, i + 1));
}

/* A bare range of whole numbers that may be a hardness. */
static gboolean
is_bare_range (const Governor *g, guint i)
{
  const EmSize *size = is_size (g, i) ? em_item_size (g->c->items, i) : NULL;

  return size != NULL && size->low.d != 0 && size->unit == EM_UNIT_NONE && size->chain == 0 && size->roles == 0 &&
         size->n_decimals == 0 &&
         em_fraction_plain (size->low) >= HRC_MIN && em_fraction_plain (size->high) <= HRC_MAX;
}

/* "H13, 50-52", "60-62, A2": a bare range beside a metal is its hardness. */
static void
read_bare_hardness (Governor *g, guint base)
{
  for (guint i = base > g->c->first + 2 ? base - 2 : g->c->first; i < g->c->end && i <= base + 2; i++)
    if (is_bare_range (g, i) || is_bare_behind (g, base, i))
      em_item_size (g->c->items, i)->roles |= EM_ROLE_HARDNESS;
}

/* "isn't H13" */
static gboolean
is_denied (const Governor *g, guint i)
{
  const EmSense *glue = says (g, i - 1, EM_SAYS_GLUE);

  return i > g->c->first && glue != NULL && g_strcmp0 (glue->value, "not") == 0;
}

/* "420 at 52 HRC" */
static gboolean
has_hardness_near (const Governor *g, guint i)
{
  for (guint k = i + 1; k < g->c->end && k <= i + 3; k++)
    if (is_size (g, k) && em_unit_is_hardness (em_item_size (g->c->items, k)->unit))
      return TRUE;
  return FALSE;
}

/* "maybe 420", "I think it is H13" */
static gboolean
is_unsure (const Governor *g, guint i)
{
  for (guint k = i; k-- > g->c->first && k + WINDOW >= i;)
    if (says (g, k, EM_SAYS_APPROXIMATE) != NULL ||
        (says (g, k, EM_SAYS_NOISE) != NULL && g_strcmp0 (says (g, k, EM_SAYS_NOISE)->value, "unsure") == 0))
      return TRUE;
  return FALSE;
}

static void
read_base (Governor *g, guint i)
{
  const EmSense *base = em_phrase_find (item (g, i)->phrase, EM_SAYS_BASE);
  gboolean has_material;
  EmLoose *one;

  if (base == NULL || item (g, i)->is_used)
    return;
  /* "BeCu insert? No, H13" */
  for (guint k = i + 1; k < g->c->end && k <= i + 2; k++)
    if (em_item_is_sign (g->c->items, k, '?'))
      return;
  if (is_denied (g, i))
    return;
  has_material = has_material_near (g, i);
  if (base->needs_material && !has_material && !stands_alone (g, i) && !is_alloy_number (g, i) && !has_hardness_near (g, i))
    return;
  if (is_size (g, i))
    em_item_size (g->c->items, i)->roles |= EM_ROLE_REFERENCE;
  read_bare_hardness (g, i);
  /* The first stands; another one stays visible as unused, unless it is the same: "C17200 BECU". */
  if (g_strcmp0 (g->grammar->base, base->value) == 0)
    item (g, i)->is_used = TRUE;
  if (take_once (g, "base"))
    {
      g->grammar->base = base->value;
      one = add (g, "base", base->value, i, i);
      one->is_general = TRUE;
      if (!has_material || is_unsure (g, i))
        infer (one, "from-words");
    }
  else
    g->grammar->has_other_base |= g_strcmp0 (g->grammar->base, base->value) != 0;
}

/* "we finish machine": who does it stands right before it. */
static gboolean
is_customers (const Governor *g, guint i)
{
  for (guint k = i; k-- > g->c->first && k + 2 >= i && !em_item_is_soft_break (g->c->items, k);)
    if (says (g, k, EM_SAYS_AGENT) != NULL && g_strcmp0 (says (g, k, EM_SAYS_AGENT)->value, "customer") == 0)
      return TRUE;
  /* "Planschleifen übernehmen wir" */
  for (guint k = i + 1; k < g->c->end && k <= i + 2 && !em_item_is_soft_break (g->c->items, k); k++)
    if (says (g, k, EM_SAYS_AGENT) != NULL && g_strcmp0 (says (g, k, EM_SAYS_AGENT)->value, "customer") == 0)
      return TRUE;
  return FALSE;
}

/* "no texture near", "not nitrided" */
static gboolean
is_none (const Governor *g, guint i)
{
  static const char *const none[] = { "no", "not", "un", "kein", "keine", "nicht", "sin", "no" };
  const EmItem *before = i > g->c->first ? item (g, i - 1) : NULL;

  for (gsize k = 0; before != NULL && k < G_N_ELEMENTS (none); k++)
    if (before->length == strlen (none[k]) &&
        g_ascii_strncasecmp (g->c->items->text + before->start, none[k], before->length) == 0)
      return TRUE;
  return FALSE;
}

static void
read_simple (Governor *g, guint i)
{
  static const struct { EmSays says; const char *field; gboolean is_general; } simple[] = {
    { EM_SAYS_COATING, "coating", TRUE },
    { EM_SAYS_FINISH, "finish", FALSE },
  };

  for (gsize k = 0; k < G_N_ELEMENTS (simple); k++)
    {
      const EmSense *sense = says (g, i, simple[k].says);

      if (sense != NULL && simple[k].says == EM_SAYS_COATING && is_none (g, i))
        {
          item (g, i)->is_used = item (g, i - 1)->is_used = TRUE;
          continue;
        }

      /* "0.3 for our milling" is a label, too. */
      if (sense != NULL && (!item (g, i)->is_used || says (g, i, EM_SAYS_LABEL) != NULL))
        {
          gboolean is_told_who = sense->says == EM_SAYS_FINISH && is_customers (g, i);
          EmLoose *one = add (g, simple[k].field, is_told_who ? "customer" : sense->value, i, i);

          one->is_general = simple[k].is_general || g->has_all;
          /* Who "us" is depends on who wrote it. */
          if (is_told_who)
            infer (one, "from-words");
        }
    }
}

/* "turning and lapping by us": the other work that the same hand does. */
static void
use_other_work (const Governor *g, guint i)
{
  for (guint k = i; k > g->c->first + 1 && k + AGENT_WINDOW > i && em_item_is_soft_break (g->c->items, k - 1) &&
       says (g, k - 2, EM_SAYS_MACHINING) != NULL; k -= 2)
    item (g, k - 2)->is_used = TRUE;
  for (guint k = i; k + 2 < g->c->end && k < i + AGENT_WINDOW && em_item_is_soft_break (g->c->items, k + 1) &&
       says (g, k + 2, EM_SAYS_MACHINING) != NULL; k += 2)
    item (g, k + 2)->is_used = TRUE;
}

/* "… and EDM back by cust" */
static gboolean
has_agent_behind (const Governor *g, guint i)
{
  for (guint k = i + 1; k < g->c->end && k <= i + AGENT_WINDOW && !is_size (g, k) && !em_item_is_soft_break (g->c->items, k); k++)
    if (says (g, k, EM_SAYS_AGENT) != NULL)
      return TRUE;
  return FALSE;
}

/* "FIN GRD BY CUST", "we mill it ourselves": who does what is done after welding. */
static void
read_machining (Governor *g, guint i)
{
  guint agent = EM_NO_ITEM;
  EmLoose *one;

  /* "weld and grind back" */
  if (says (g, i, EM_SAYS_MACHINING) != NULL && !item (g, i)->is_used && i > g->c->first + 1 &&
      em_item_is_soft_break (g->c->items, i - 1) &&
      !em_item_is_sign (g->c->items, i - 1, ',') && says (g, i - 2, EM_SAYS_VERB) != NULL && !has_agent_behind (g, i))
    {
      infer (add (g, "finish", "shop", i, i), "from-words");
      return;
    }
  if (says (g, i, EM_SAYS_MACHINING) == NULL || item (g, i)->is_used)
    return;
  for (guint k = i > g->c->first + AGENT_WINDOW ? i - AGENT_WINDOW : g->c->first; k < g->c->end && k <= i + AGENT_WINDOW; k++)
    if (is_size (g, k) || em_item_is_soft_break (g->c->items, k) || says (g, k, EM_SAYS_VERB) != NULL)
      {
        if (k > i)
          break;
        agent = EM_NO_ITEM;
      }
    else if (says (g, k, EM_SAYS_AGENT) != NULL && !item (g, k)->is_used)
      agent = k;
  /* "We machined the pocket too deep": what was done before. */
  if (agent != EM_NO_ITEM && agent + 1 == i && g_strcmp0 (says (g, i, EM_SAYS_MACHINING)->value, "past") == 0)
    return;
  /* "grind all flush" */
  if (agent == EM_NO_ITEM && g_strcmp0 (says (g, i, EM_SAYS_MACHINING)->value, "flush") == 0 &&
      says (g, i - 1, EM_SAYS_SET) == NULL)
    infer (add (g, "finish", "shop", i, i), "from-words");
  if (agent == EM_NO_ITEM)
    return;
  one = add (g, "finish", says (g, agent, EM_SAYS_AGENT)->value, MIN (i, agent), MAX (i, agent));
  one->is_general = g->has_all;
  infer (one, "from-words");
  use_other_work (g, i);
}

/* Something follows without a blank: "A-77" is one number though "a" is a little word. */
static gboolean
is_glued_on (const Governor *g, guint i)
{
  return i + 1 < g->c->end && (item (g, i + 1)->flags & EM_TOKEN_GLUED) != 0 && !em_item_is_sign (g->c->items, i + 1, ':') &&
         !em_item_is_sign (g->c->items, i + 1, '.') && !em_item_is_sign (g->c->items, i + 1, ',') &&
           !em_item_is_sign (g->c->items, i + 1, ')');
}

/* "NO", "number" */
static gboolean
is_number_word (const Governor *g, guint i)
{
  const EmSense *glue = says (g, i, EM_SAYS_GLUE);

  return glue != NULL && g_strcmp0 (glue->value, "number") == 0 && !is_glued_on (g, i);
}

/* "is" of "the tool number is 4471" */
static gboolean
is_is (const Governor *g, guint i)
{
  const EmSense *label = says (g, i, EM_SAYS_LABEL);

  return label != NULL && label->roles == EM_ROLE_WORN && item (g, i)->length <= 3 &&
         g_ascii_tolower (g->c->items->text[item (g, i)->start]) != 'h' /* "has" */;
}

/* "mold 2 cav": how many of them the mold has. */
static gboolean
is_counted_place (const Governor *g, guint i)
{
  const EmSense *place = i < g->c->end ? says (g, i, EM_SAYS_PLACE) : NULL;

  return place != NULL && g_strcmp0 (place->value, "counted") == 0;
}

/* "MOLD 2 PINS", "DIE .030 LOW", "MOLD 4140": a count, a size, a metal. */
static gboolean
is_other (const Governor *g, guint i)
{
  const EmSize *size = is_size (g, i) ? em_item_size (g->c->items, i) : NULL;

  if (em_phrase_find (item (g, i)->phrase, EM_SAYS_BASE) != NULL)
    return TRUE;
  return size != NULL && !is_glued_on (g, i) &&
         (size->n_decimals > 0 || size->is_fraction || size->has_fit || size->unit != EM_UNIT_NONE ||
          (size->roles & EM_ROLE_COUNT) != 0 ||
          (size->value.n < LONG_NUMBER &&
           ((says (g, i + 1, EM_SAYS_LABEL) != NULL && !is_is (g, i + 1)) || says (g, i + 1, EM_SAYS_TIMES) != NULL ||
            says (g, i + 1, EM_SAYS_KIND) != NULL ||
                                            is_counted_place (g, i + 1))));
}

/* "die 1: nick": which of those in the list. */
static gboolean
is_list_name (const Governor *g, const EmSense *sense, guint word, guint number)
{
  return strcmp (sense->value, "tool_number") == 0 && number == word + 1 && is_size (g, number) &&
         em_item_size (g->c->items, number)->is_whole &&
         item (g, number)->length <= 2 && number + 1 < g->c->end && em_item_is_sign (g->c->items, number + 1, ':');
}

/* "LIP OF DIE: R0.5": a letter glued to a number with a point measures. */
static gboolean
is_radius (const Governor *g, guint from, guint to)
{
  return to == from + 2 && item (g, from)->length == 1 && says (g, from, EM_SAYS_LABEL) != NULL && is_size (g, from + 1) &&
         em_item_size (g->c->items, from + 1)->n_decimals > 0;
}

/* "PO 45871", "DWG A-2201": the run of glued items with a digit in it. */
static void
read_reference (Governor *g, guint i)
{
  const EmSense *sense = says (g, i, EM_SAYS_REFERENCE);
  guint from = i + 1, to;
  gboolean has_digit = FALSE;
  EmLoose *one;

  if (sense == NULL)
    return;
  while (from < g->c->end && from <= i + WINDOW &&
         (em_item_is_sign (g->c->items, from, ':') || em_item_is_sign (g->c->items, from, '#') ||
          em_item_is_sign (g->c->items, from, '.') ||
          em_item_is_sign (g->c->items, from, '=') || is_number_word (g, from) || is_is (g, from)))
    from++;
  if (from >= g->c->end || item (g, from)->type == EM_ITEM_SIGN || is_other (g, from))
    return;
  for (to = from; to < g->c->end && to < from + REFERENCE_WINDOW; to++)
    {
      if (to > from && (item (g, to)->flags & EM_TOKEN_GLUED) == 0)
        break;
      for (guint32 b = 0; b < item (g, to)->length; b++)
        has_digit |= g_ascii_isdigit (g->c->items->text[item (g, to)->start + b]);
    }
  while (to > from + 1 && (em_item_is_sign (g->c->items, to - 1, ')') || em_item_is_sign (g->c->items, to - 1, ',') ||
                           em_item_is_sign (g->c->items, to - 1, ':') || em_item_is_sign (g->c->items, to - 1, '.')))
    to--;
  /* "Mold: 4-cav lid" */
  for (guint k = from; k < to; k++)
    has_digit &= !is_counted_place (g, k);
  if (!has_digit || is_list_name (g, sense, i, from) || is_radius (g, from, to))
    return;
  for (guint k = from; k < to; k++)
    if (is_size (g, k))
      em_item_size (g->c->items, k)->roles |= EM_ROLE_REFERENCE;
  if (!take_once (g, sense->value))
    return;
  one = add (g, sense->value, NULL, from, to - 1);
  one->is_general = TRUE;
  /* "mold 12": a short number may say which of several. */
  if (to == from + 1 && item (g, from)->length <= 2)
    infer (one, "from-words");
  item (g, i)->is_used = TRUE;
}

/* "identical cavity blocks": parts of the tool, none of them a repair. */
static gboolean
is_part (const Governor *g, guint i)
{
  return says (g, i, EM_SAYS_PLACE) != NULL && says (g, i, EM_SAYS_KIND) == NULL && says (g, i + 1, EM_SAYS_KIND) == NULL;
}

static void
read_tools (Governor *g, guint i)
{
  const EmSense *number = says (g, i, EM_SAYS_NUMBER);
  EmLoose *one;

  if (!is_count (g, i) && (number == NULL || strchr (number->value, '/') != NULL))
    return;
  for (guint k = i + 1; k < g->c->end && k <= i + 2; k++)
    if (says (g, k, EM_SAYS_TOOLS) != NULL &&
        (g_strcmp0 (says (g, k, EM_SAYS_TOOLS)->value, "identical") != 0 || is_part (g, k + 1)))
      {
        if (says (g, i - 1, EM_SAYS_QUANTITY) != NULL)
          item (g, i - 1)->is_used = TRUE;
        one = add (g, "tools", NULL, i, k);
        one->given.field.value = number != NULL ? g_ascii_strtod (number->value, NULL)
                                 : em_fraction_plain (em_item_size (g->c->items, i)->value);
        one->is_general = TRUE;
        /* They may as well be the places of the repair. */
        infer (one, "from-words");
        return;
      }
}

/* "KEEP CLEAR OF THE VENT HOLE BY 1.5": how near it lies. */
static gboolean
is_apart (const Governor *g, guint thing)
{
  for (guint k = thing + 1; k < g->c->end && k <= thing + 2; k++)
    if (is_size (g, k) && em_item_size (g->c->items, k)->chain == 0 && !is_count (g, k))
      return (em_item_size (g->c->items, k)->roles & EM_ROLE_CLEARANCE) != 0 || says (g, k - 1, EM_SAYS_TIMES) != NULL;
  return FALSE;
}

/* Nothing of meaning stands behind the refusal. */
static gboolean
is_refused_end (const Governor *g, guint i)
{
  for (guint k = i + 1; k < g->c->end; k++)
    if (item (g, k)->type != EM_ITEM_SIGN && says (g, k, EM_SAYS_GLUE) == NULL && !item (g, k)->is_talk)
      return FALSE;
  return TRUE;
}

/* What stands before it in the sentence is not to be welded. */
static void
refuse_before (Governor *g, guint i)
{
  const EmSense *thing = NULL;
  guint last = i - 1;
  EmLoose *one;

  while (last > g->c->first && item (g, last)->type == EM_ITEM_SIGN)
    last--;
  for (guint k = g->c->first; k <= last; k++)
    if (is_size (g, k) && em_item_size (g->c->items, k)->unit != EM_UNIT_NONE)
      return;
  for (guint k = g->c->first; k <= last && thing == NULL; k++)
    thing = says (g, k, EM_SAYS_THING);
  one = add (g, "refuse", thing != NULL ? thing->value : NULL, g->c->first, last);
  one->is_general = TRUE;
  infer (one, "from-words");
  item (g, i)->is_used = TRUE;
}

/* "NO THREADS TO BE WELDED": a "no" in front of the thing makes a refusal of it; without one it asks for the weld. */
static gboolean
is_asked_for (const Governor *g, guint i)
{
  if (g_strcmp0 (says (g, i, EM_SAYS_REFUSE)->value, "denied") != 0)
    return FALSE;
  for (guint k = i; k-- > g->c->first && !em_item_is_soft_break (g->c->items, k);)
    if (says (g, k, EM_SAYS_THING) != NULL)
      return !is_none (g, k);
  return TRUE;
}

/* "DO NOT WELD THREADS": what must stay free of weld. */
static void
read_refusal (Governor *g, guint i)
{
  const EmSense *thing = NULL;
  guint last = i;

  if (says (g, i, EM_SAYS_REFUSE) == NULL || item (g, i)->is_used || is_asked_for (g, i))
    return;
  for (guint k = i + 1; k < g->c->end && k <= i + WINDOW + 2 && thing == NULL; k++)
    {
      if (em_item_is_soft_break (g->c->items, k) || item (g, k)->type == EM_ITEM_SIZE)
        break;
      thing = says (g, k, EM_SAYS_THING);
      last = k;
    }
  /* "THREADS TO BE PROTECTED", "the texture on the next wall must not be damaged" */
  for (guint k = i; thing == NULL && k-- > g->c->first && k + 2 * WINDOW > i && !em_item_is_soft_break (g->c->items, k);)
    if (says (g, k, EM_SAYS_THING) != NULL && !item (g, k)->is_used)
      {
        EmLoose *one = add (g, "refuse", says (g, k, EM_SAYS_THING)->value, k, i);

        one->is_general = TRUE;
        infer (one, "from-words");
        return;
      }
  /* "ZONE C: NOT TO BE WELDED", "The hole in the middle, do not fill." */
  if (thing == NULL && i > g->c->first && is_refused_end (g, i))
    {
      refuse_before (g, i);
      return;
    }
  /* "don't weld on the engraving please" */
  while (thing == NULL && last > i + 1 && says (g, last, EM_SAYS_AGENT) != NULL && says (g, last, EM_SAYS_GLUE) != NULL)
    last--;
  /* "NO WELD ON POLISHED LENS AREA" */
  while (thing != NULL && last + 1 < g->c->end &&
         (says (g, last + 1, EM_SAYS_THING) != NULL || says (g, last + 1, EM_SAYS_PLACE) != NULL))
    last++;
  if (thing != NULL && is_apart (g, last))
    return;
  /* "INSIDE DOWEL HOLES": which holes only their own words say. */
  if (thing != NULL && strcmp (thing->value, "hole") == 0)
    {
      add (g, "refuse", NULL, last, last)->is_general = TRUE;
      item (g, i)->is_used = TRUE;
    }
  else if (thing != NULL)
    add (g, "refuse", thing->value, i, last)->is_general = TRUE;
  else if (last > i)
    {
      EmLoose *one = add (g, "refuse", NULL, i + 1, last);

      one->is_general = TRUE;
      infer (one, "from-words");
      item (g, i)->is_used = TRUE;
    }
}

/* "before" or "beside": the cue leads to what it lies near. */
static gboolean
is_leading (const EmSense *near)
{
  return g_strcmp0 (near->value, "before") == 0 || g_strcmp0 (near->value, "beside") == 0;
}

/* "crack of 12 mm next to the hole": behind a noun of its own a size is no distance before "next to", as it is before "from". */
static gboolean
is_before_beside (const Governor *g, guint size, guint thing, guint cue)
{
  const EmSense *near = says (g, cue, EM_SAYS_NEAR);

  return near != NULL && g_strcmp0 (near->value, "beside") == 0 && size < cue && size < thing &&
         (says (g, size - 1, EM_SAYS_KIND) != NULL ||
          (says (g, size - 1, EM_SAYS_PREPOSITION) != NULL && says (g, size - 2, EM_SAYS_KIND) != NULL));
}

/* A size that says how far: right before or after the thing, not naming a dimension. */
static guint
find_clearance (const Governor *g, guint thing, guint cue)
{
  const guint32 named = EM_ROLE_LENGTH | EM_ROLE_WIDTH | EM_ROLE_HEIGHT | EM_ROLE_DEPTH | EM_ROLE_THICKNESS | EM_ROLE_DIAMETER |
                        EM_ROLE_RADIUS | EM_ROLE_LEG | EM_ROLE_ANGLE | EM_ROLE_BUILD | EM_ROLE_COUNT | EM_ROLE_REFERENCE;

  guint only = EM_NO_ITEM;

  for (guint k = thing > g->c->first + WINDOW ? thing - WINDOW : g->c->first; k < g->c->end && k <= thing + WINDOW; k++)
    if (is_size (g, k) && (em_item_size (g->c->items, k)->roles & named) == 0 && em_item_size (g->c->items, k)->chain == 0 &&
        !is_before_beside (g, k, thing, cue))
      {
        gboolean is_beside = FALSE;

        for (guint m = k > g->c->first + 2 ? k - 2 : g->c->first; m < g->c->end && m <= k + 2; m++)
          is_beside |= m == cue || m == thing;
        if (is_beside)
          return k;
      }
  /* "Keep away from the polished face, about 0.5 mm.": the only size of the sentence. */
  for (guint k = g->c->first; k < g->c->end && g->n_nouns <= 1 && g->c->end - g->c->first <= SENTENCE_WINDOW; k++)
    if (is_size (g, k))
      {
        if (only != EM_NO_ITEM || (em_item_size (g->c->items, k)->roles & named) != 0 || is_before_beside (g, k, thing, cue))
          return EM_NO_ITEM;
        only = k;
      }
  return only;
}

/* "THREADED HOLE .06 FROM NICK", "POLISHED FACE NEXT TO NICK"; "HOLE 1.627 WORN FROM 1.625" is something else. */
static gboolean
leads_to_repair (const Governor *g, guint cue)
{
  guint next = cue + 1;

  /* "polish next to it" */
  if (says (g, next, EM_SAYS_GLUE) != NULL && g_strcmp0 (says (g, next, EM_SAYS_GLUE)->value, "it") == 0)
    return TRUE;
  while (next < g->c->end && next < cue + 3 && says (g, next, EM_SAYS_GLUE) != NULL)
    next++;
  return is_size (g, cue - 1) || says (g, next, EM_SAYS_KIND) != NULL;
}

/* "CRACK FROM WATERLINE": where the repair begins, no distance. */
static gboolean
is_origin (const Governor *g, guint cue)
{
  gboolean is_from = says (g, cue, EM_SAYS_TO) != NULL ||
                     g_ascii_strncasecmp (g->c->items->text + item (g, cue)->start, "from", 4) == 0;

  return is_from && cue > g->c->first && says (g, cue - 1, EM_SAYS_KIND) != NULL;
}

/* The word that says "near" beside the thing: "adjacent", or "to" after a size. */
static guint
find_cue (const Governor *g, guint thing)
{
  for (guint k = thing + 1; k < g->c->end && k <= thing + 3; k++)
    if (says (g, k, EM_SAYS_NEAR) != NULL && (!is_leading (says (g, k, EM_SAYS_NEAR)) || leads_to_repair (g, k)))
      return k;
  for (guint k = thing; k-- > g->c->first && k + WINDOW >= thing;)
    {
      if (is_origin (g, k))
        break;
      if (says (g, k, EM_SAYS_NEAR) != NULL || (says (g, k, EM_SAYS_REFUSE) != NULL && !item (g, k)->is_used))
        return k;
      if (says (g, k, EM_SAYS_TO) != NULL && k > g->c->first && is_size (g, k - 1))
        return k;
      if (em_item_is_soft_break (g->c->items, k))
        break;
    }
  return EM_NO_ITEM;
}

/* "Ej pin hole next to it worn, now 8.2": the hole is what is to be mended. */
static gboolean
is_worn_itself (const Governor *g, guint i)
{
  if (says (g, i, EM_SAYS_KIND) == NULL || g->n_nouns != 1)
    return FALSE;
  for (guint k = i + 1; k < g->c->end && k <= i + WINDOW; k++)
    if (says (g, k, EM_SAYS_LABEL) != NULL && (says (g, k, EM_SAYS_LABEL)->roles & EM_ROLE_WORN) != 0 && !is_is (g, k))
      return TRUE;
  return FALSE;
}

static void
read_near (Governor *g, guint i)
{
  const EmSense *thing = says (g, i, EM_SAYS_THING);
  gboolean is_surface;
  guint cue, clearance;

  if (thing == NULL || item (g, i)->is_used || is_none (g, i) || is_worn_itself (g, i))
    return;
  is_surface = strcmp (thing->value, "texture") == 0 || strcmp (thing->value, "polish") == 0;
  cue = find_cue (g, i);
  /* "TAPPED HOLE .25 AWAY" */
  for (guint k = i + 1; cue == EM_NO_ITEM && k <= i + WINDOW; k++)
    if (is_size (g, k) && (em_item_size (g->c->items, k)->roles & EM_ROLE_CLEARANCE) != 0)
      cue = k;
  /* "polish afterwards": something to do. */
  if (cue == EM_NO_ITEM && says (g, i, EM_SAYS_MACHINING) != NULL)
    return;
  if (cue == EM_NO_ITEM && (!is_surface || (says (g, i, EM_SAYS_KIND) != NULL && g->n_nouns == 1)))
    {
      if (is_surface)
        {
          EmLoose *one = add (g, "near", thing->value, i, i);

          one->is_near = TRUE;
          infer (one, "from-words");
          item (g, i)->is_used = FALSE;
        }
      return;
    }
  if (i > g->c->first && is_count (g, i - 1))
    item (g, i - 1)->is_used = TRUE;
  {
    EmLoose *one = add (g, "near", thing->value, i, i);

    one->is_near = TRUE;
    clearance = cue != EM_NO_ITEM ? find_clearance (g, i, cue) : EM_NO_ITEM;
    /* How near is not told: it may only say where. */
    if (clearance == EM_NO_ITEM)
      infer (one, "from-words");
  }
  if (cue == EM_NO_ITEM)
    return;
  item (g, cue)->is_used |= !is_size (g, cue);
  if (clearance != EM_NO_ITEM)
    em_item_size (g->c->items, clearance)->roles |= EM_ROLE_CLEARANCE;
}

/* Brinell and Vickers are told in HRC; what the table does not hold stays visible as unused. */
static void
read_hardness (Governor *g, guint i)
{
  const EmSize *size = em_item_size (g->c->items, i);
  gboolean is_converted = size->unit == EM_UNIT_HB || size->unit == EM_UNIT_HV;
  EmLoose *one;

  if (is_converted && isnan (em_fraction_in_mm (size->value, size->unit)))
    return;
  one = add_size (g, "hardness", i);
  one->is_general = TRUE;
  /* "WELD 20 HRC SOFTER": in the words of a repair it may be the weld's. */
  if (g->has_verb)
    infer (one, "from-words");
  if (is_converted)
    infer (one, "converted-hardness");
  else if (em_fraction_plain (size->value) < HRC_LEAST || em_fraction_plain (size->value) > HRC_MOST)
    infer (one, "implausible");
}

static void
read_sizes (Governor *g, guint i)
{
  guint32 roles;
  EmLoose *one;

  if (!em_item_is_measure (g->c->items, i) || item (g, i)->is_used)
    return;
  roles = em_item_size (g->c->items, i)->roles;
  if ((roles & EM_ROLE_HARDNESS) != 0)
    read_hardness (g, i);
  else if ((roles & EM_ROLE_STOCK) != 0)
    add_size (g, "stock", i)->is_general = g->has_all;
  else if ((roles & EM_ROLE_CLEARANCE) != 0)
    {
      one = add_size (g, "clearance", i);
      one->is_near = TRUE;
    }
}

static int
compare_item (gconstpointer a, gconstpointer b)
{
  const EmLoose *p = a, *q = b;

  return p->item < q->item ? -1 : p->item > q->item;
}

void
em_govern_read (EmGrammar *grammar, const EmClause *clause, GArray *loose)
{
  Governor g = { grammar, clause, loose, FALSE, FALSE, 0 };

  for (guint i = clause->first; i < clause->end; i++)
    {
      if (says (&g, i, EM_SAYS_ALL) != NULL)
        {
          g.has_all = TRUE;
          item (&g, i)->is_used = TRUE;
        }
      g.n_nouns += says (&g, i, EM_SAYS_KIND) != NULL;
      g.has_verb |= says (&g, i, EM_SAYS_VERB) != NULL;
    }
  for (guint i = clause->first; i < clause->end; i++)
    read_refusal (&g, i);
  for (guint i = clause->first; i < clause->end; i++)
    {
      read_units (&g, i);
      read_reference (&g, i);
      read_base (&g, i);
      read_simple (&g, i);
      read_machining (&g, i);
      read_tools (&g, i);
      read_near (&g, i);
    }
  for (guint i = clause->first; i < clause->end; i++)
    read_sizes (&g, i);
  g_array_sort (loose, compare_item);
}
