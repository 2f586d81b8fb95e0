/* em-govern: notes that are not sizes of a repair.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-govern-parts.h"

#include "em-list.h"


#include <math.h>
#include <string.h>

enum { WORD_MIN = 4 /* bytes of one that tells something */ };
enum { HRC_LEAST = 15, HRC_MOST = 70 /* no steel of a tool is softer or harder (common practice, no source) */ };

enum { AGENT_WINDOW = 6 /* from what is done to who does it */, EACH_WINDOW = 10, EACH_BACK = 64 };

EmLoose *
em_governor_add (Governor *g, const char *field, const char *text, guint from, guint to)
{
  EmLoose one = { .given = em_given_new (field, text, item (g, from)), .item = from };

  one.given.field.length = item (g, to)->start + item (g, to)->length - item (g, from)->start;
  g_array_append_val (g->loose, one);
  for (guint i = from; i <= to; i++)
    item (g, i)->is_used = TRUE;
  return &g_array_index (g->loose, EmLoose, g->loose->len - 1);
}

void
em_governor_infer (EmLoose *one, const char *reason)
{
  one->given.field.state = EM_READ_INFERRED;
  one->given.field.reason = reason;
}

/* "no texture near", "not nitrided" */
gboolean
em_governor_is_none (const Governor *g, guint i)
{
  static const char *const none[] = { "no", "not", "un", "kein", "keine", "nicht", "sin" };

  return i > g->c->first && em_item_is_any_word_of (g->c->items, i - 1, none, G_N_ELEMENTS (none));
}

/* "is" of "the tool number is 4471" */
gboolean
em_governor_is_is (const Governor *g, guint i)
{
  static const char *const words[] = { "es", "est", "lautet" };
  const EmSense *label = says (g, i, EM_SAYS_LABEL);

  if (i < g->c->end && em_item_is_any_word_of (g->c->items, i, words, G_N_ELEMENTS (words)))
    return TRUE;
  return label != NULL && label->roles == EM_ROLE_WORN && item (g, i)->length <= 3 &&
         g_ascii_tolower (g->c->items->text[item (g, i)->start]) != 'h' /* "has" */;
}

static EmLoose *
add_size (Governor *g, const char *field, guint i)
{
  EmLoose *one = em_governor_add (g, field, NULL, i, i);
  const EmSize *size = em_item_size (g->c->items, i);

  one->given.size_item = i;
  one->given.field.reason = size->reason;
  one->given.field.state = size->reason != NULL ? EM_READ_INFERRED : EM_READ_READ;
  return one;
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
  one = em_governor_add (g, "units", unit == EM_UNIT_INCH ? "in" : "mm", i, last);
  one->is_general = TRUE;
  /* "MM [INCH]": the other unit in brackets, as the sizes have it. */
  if (last + 2 < g->c->end && em_item_is_sign (g->c->items, last + 1, '[') && says (g, last + 2, EM_SAYS_UNIT) != NULL)
    item (g, last + 2)->is_used = TRUE;
  if (!is_first)
    {
      em_governor_infer (one, "units-differ");
      return;
    }
  g->grammar->has_units = TRUE;
  g->grammar->units = said.units;
  /* A unit that only stands apart is taken to govern; "ALL DIMS MM" says so. "Symmetrisch" is only like "metrisch". */
  if (units == NULL || (item (g, i)->flags & EM_TOKEN_SLIP) != 0)
    em_governor_infer (one, "from-words");
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
    for (guint k = i + 1; k < g->c->end && k <= i + EM_GOVERN_WINDOW && unit == NULL; k++)
      {
        unit = says (g, k, EM_SAYS_UNIT);
        /* "sizes in mm": that "in" is no inch. */
        if (unit != NULL && says (g, k, EM_SAYS_PREPOSITION) != NULL && says (g, k + 1, EM_SAYS_UNIT) != NULL)
          unit = NULL;
        last = k;
      }
  else if (unit != NULL && i > g->c->first && (i + 1 < g->c->end || says (g, i, EM_SAYS_PREPOSITION) != NULL) &&
           !em_item_is_soft_break (g->c->items, i - 1) && !em_item_is_sign (g->c->items, i - 1, '(') &&
           !em_item_is_sign (g->c->items, i - 1, ':') && !item (g, i)->is_heading /* "size mm" */ &&
           !em_item_is_sign (g->c->items, i - 1, '['))
    return;
  /* "Ins. 3: chipped": an insert. */
  if (units == NULL && unit != NULL && says (g, i, EM_SAYS_PLACE) != NULL &&
      is_size (g, i + 1 + (i + 1 < g->c->end && em_item_is_sign (g->c->items, i + 1, '.'))))
    return;
  if (unit == NULL || (unit->unit != EM_UNIT_MM && unit->unit != EM_UNIT_INCH) ||
      (units == NULL && says (g, i, EM_SAYS_PREPOSITION) != NULL && i + 1 < g->c->end &&
       !em_item_is_sign (g->c->items, i + 1, ')')))
    return;
  say_units (g, unit->unit, units, i, last);
}

/* Fields that stand once: the first is taken, later ones stay visible as unused. TRUE for the first. */
gboolean
em_governor_take_once (Governor *g, const char *field)
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

/* "missing corner, .100 cube": a small word of letters alone right behind a size is no copper-beryllium ("CuBe"). */
static gboolean
is_shape_behind_size (const Governor *g, guint i)
{
  const EmItem *its = item (g, i);

  if (i == g->c->first || !is_size (g, i - 1) ||
      (em_item_size (g->c->items, i - 1)->n_decimals == 0 && em_item_size (g->c->items, i - 1)->unit == EM_UNIT_NONE) ||
      (its->flags & EM_TOKEN_CAPITAL) != 0)
    return FALSE;
  for (guint32 k = 0; k < its->length; k++)
    if (!g_ascii_isalpha (g->c->items->text[its->start + k]))
      return FALSE;
  return TRUE;
}

/* "corner A1/A2": the second of two corners, no steel. */
static gboolean
is_second_name (const Governor *g, guint i)
{
  return i > g->c->first + 1 && em_item_is_glued (g->c->items, i) && em_item_is_sign (g->c->items, i - 1, '/') &&
         em_item_is_glued (g->c->items, i - 1) && is_size (g, i - 2) && em_item_is_glued (g->c->items, i - 2);
}

static gboolean
is_wire (const Governor *g, guint i)
{
  const EmSense *noise = says (g, i, EM_SAYS_NOISE);

  return noise != NULL && g_strcmp0 (noise->value, "wire") == 0;
}

/* "weld with 1.2343", "mit 1.2343 schweißen": what to weld with. */
static gboolean
is_welded_with (const Governor *g, guint i)
{
  static const char *const with[] = { "with", "w/", "using", "mit", "con", "avec", "avec du" };
  static const char *const steel[] = { "du", "de", "acero", "acier", "Stahl", "steel" };
  guint before = i;

  while (before > g->c->first + 1 && before + 2 > i && em_item_is_any_word_of (g->c->items, before - 1, steel, G_N_ELEMENTS (steel)))
    before--;
  /* One phrase of the lexicon. */
  if (before > g->c->first && em_item_is_word (g->c->items, before - 1, "soldar con"))
    return TRUE;
  if (before == g->c->first || !em_item_is_any_word_of (g->c->items, before - 1, with, G_N_ELEMENTS (with)))
    return FALSE;
  return (before > g->c->first + 1 && says (g, before - 2, EM_SAYS_VERB) != NULL) || says (g, i + 1, EM_SAYS_VERB) != NULL;
}

/* "preferred wire 1.2343 dia 0.3", "mit Draht aus 1.2343": the metal that is welded on, and how thick the wire is. */
static gboolean
is_of_wire (const Governor *g, guint i)
{
  static const char *const rods[] = { "rod", "rods", "stick", "electrode", "electrodes", "Stab", "varilla", "baguette" };
  guint before = i - 1;

  /* "weld with H13 filler", "use S7 rod" */
  if (is_wire (g, i + 1) || (i + 1 < g->c->end && em_item_is_any_word_of (g->c->items, i + 1, rods, G_N_ELEMENTS (rods))) ||
      is_welded_with (g, i))
    return TRUE;
  if (i == g->c->first)
    return FALSE;
  /* "What would you use for wire? It's A2." */
  while (before > g->c->first && before + 2 >= i &&
         ((item (g, before)->type == EM_ITEM_SIGN && !em_item_is_sign (g->c->items, before, '?')) || says (g, before, EM_SAYS_PREPOSITION) != NULL || says (g, before, EM_SAYS_GLUE) != NULL ||
          says (g, before, EM_SAYS_NEAR) != NULL || says (g, before, EM_SAYS_MATERIAL) != NULL))
    before--;
  if (!is_wire (g, before))
    return FALSE;
  for (guint k = i + 1; k < g->c->end && k <= i + EM_GOVERN_WINDOW; k++)
    if (is_size (g, k) && !em_unit_is_hardness (em_item_size (g->c->items, k)->unit))
      em_item_size (g->c->items, k)->roles = EM_ROLE_REFERENCE;
  return TRUE;
}

/* "isn't H13" */
static gboolean
is_denied (const Governor *g, guint i)
{
  const EmSense *glue = says (g, i - 1, EM_SAYS_GLUE);

  return i > g->c->first && glue != NULL && g_strcmp0 (glue->value, "not") == 0;
}

/* "ZONE D2", "view A2": a letter and a number that name a place on the drawing. */
static gboolean
is_place_name (const Governor *g, guint i)
{
  static const char *const places[] = { "zone", "view", "detail", "section", "sect", "grid", "zona", "vista", "detalle", "vue", "détail", "Ansicht", "Schnitt", "Einzelheit", "Feld" };

  return i > g->c->first && em_item_is_any_word_of (g->c->items, i - 1, places, G_N_ELEMENTS (places));
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

/* "maybe 420", "I think it is H13", "P20-like steel" */
static gboolean
is_unsure (const Governor *g, guint i)
{
  if (i + 1 < g->c->end && em_item_is_sign (g->c->items, i + 1, '-') &&
      g_ascii_strncasecmp (g->c->items->text + item (g, i + 1)->start, "-like", strlen ("-like")) == 0)
    return TRUE;
  for (guint k = i; k-- > g->c->first && k + EM_GOVERN_WINDOW >= i;)
    if (says (g, k, EM_SAYS_APPROXIMATE) != NULL ||
        (says (g, k, EM_SAYS_NOISE) != NULL && g_strcmp0 (says (g, k, EM_SAYS_NOISE)->value, "unsure") == 0))
      return TRUE;
  return FALSE;
}

/* "Insert is 420, 50-52.": what a part is, by a number that measures nothing. */
static gboolean
is_told_of_part (const Governor *g, guint i)
{
  static const char *const is[] = { "is", "are", "'s", "ist", "sind", "es", "est" };
  const EmSize *size = is_size (g, i) ? em_item_size (g->c->items, i) : NULL;

  if (size == NULL || i < g->c->first + 2 || size->unit != EM_UNIT_NONE || size->chain != 0 || size->n_decimals > 0 || !em_item_is_any_word_of (g->c->items, i - 1, is, G_N_ELEMENTS (is)) ||
      says (g, i - 2, EM_SAYS_PLACE) == NULL)
    return FALSE;
  return i + 1 == g->c->end || (em_item_is_sign (g->c->items, i + 1, ',') && (i + 2 == g->c->end || is_size (g, i + 2)));
}

static void
read_base (Governor *g, guint i)
{
  const EmSense *base = em_phrase_find (item (g, i)->phrase, EM_SAYS_BASE);
  gboolean has_material;
  EmMetal metal;
  EmLoose *one;

  if (base == NULL || item (g, i)->is_used)
    return;
  /* "BeCu insert? No, H13" */
  for (guint k = i + 1; k < g->c->end && k <= i + 2; k++)
    if (em_item_is_sign (g->c->items, k, '?'))
      return;
  if (is_place_name (g, i))
    {
      item (g, i)->is_used = TRUE;
      return;
    }
  if (is_denied (g, i) || is_second_name (g, i) || is_shape_behind_size (g, i) || is_of_wire (g, i))
    return;
  has_material = has_material_near (g, i);
  if (base->needs_material && !has_material && !stands_alone (g, i) && !is_alloy_number (g, i) && !has_hardness_near (g, i) && !is_told_of_part (g, i))
    return;
  if (is_size (g, i))
    em_item_size (g->c->items, i)->roles |= EM_ROLE_REFERENCE;
  em_governor_read_bare_hardness (g, i);
  metal = (EmMetal) { base->value, i };
  g_array_append_val (g->grammar->metals, metal);
  /* The first stands; another one stays visible as unused, unless it is the same: "C17200 BECU". */
  if (g_strcmp0 (g->grammar->base, base->value) == 0)
    item (g, i)->is_used = TRUE;
  if (em_governor_take_once (g, "base"))
    {
      g->grammar->base = base->value;
      one = em_governor_add (g, "base", base->value, i, i);
      one->is_general = TRUE;
      if (!has_material || is_unsure (g, i))
        em_governor_infer (one, "from-words");
    }
  else
    g->grammar->has_other_base |= g_strcmp0 (g->grammar->base, base->value) != 0;
}

/* "blend & polish by us": who does all of the work that is listed. NULL: nobody is named. */
static const EmSense *
agent_of_list (const Governor *g, guint i)
{
  for (guint k = i + 1; says (g, i, EM_SAYS_MACHINING) != NULL && k < g->c->end && k <= i + AGENT_WINDOW; k++)
    if (says (g, k, EM_SAYS_AGENT) != NULL)
      return em_item_is_soft_break (g->c->items, i + 1) ? says (g, k, EM_SAYS_AGENT) : NULL;
    else if (says (g, k, EM_SAYS_FINISH) != NULL && says (g, k, EM_SAYS_MACHINING) == NULL) /* "polish by us" */
      return em_item_is_soft_break (g->c->items, i + 1) ? says (g, k, EM_SAYS_FINISH) : NULL;
    else if (!em_item_is_soft_break (g->c->items, k) && says (g, k, EM_SAYS_MACHINING) == NULL && says (g, k, EM_SAYS_GLUE) == NULL)
      return NULL;
  return NULL;
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

/* "Nickel plating removed already", "cromo duro, ya lo hemos quitado" */
static gboolean
is_removed (const Governor *g, guint i, gboolean dash_too)
{
  for (guint k = i + 1; k < g->c->end && k <= i + EM_GOVERN_WINDOW; k++)
    if (em_item_is_soft_break (g->c->items, k) && !em_item_is_sign (g->c->items, k, ',') && !(dash_too && em_item_is_sign (g->c->items, k, '-')))
      return FALSE;
    else if (says (g, k, EM_SAYS_NOISE) != NULL && g_strcmp0 (says (g, k, EM_SAYS_NOISE)->value, "removed") == 0)
      return TRUE;
  return FALSE;
}

/* "SLIDE IS NITRIDED", "core pin 52 HRC": told of a part where several repairs are, it may be that part's alone. */
static gboolean
is_of_part (const Governor *g, guint i)
{
  if (g->grammar->protos->len < 2 || g->has_all)
    return FALSE;
  for (guint k = i; k-- > g->c->first && k + EM_GOVERN_WINDOW >= i;)
    if (says (g, k, EM_SAYS_PLACE) != NULL || says (g, k, EM_SAYS_KIND) != NULL)
      return TRUE;
  return FALSE;
}

/* "The plug is m2 with pvd": where the parts are of several metals, not all of them may be coated. */
static gboolean
has_metals (const Governor *g)
{
  const GArray *metals = g->grammar->metals;

  return metals->len > 1 && strcmp (g_array_index (metals, EmMetal, 0).base, g_array_index (metals, EmMetal, metals->len - 1).base) != 0;
}

/* "You machine 1 and 2, we do 3", "mill one and two, three stays as welded": some of the repairs. */
static gboolean
names_repairs (const Governor *g)
{
  for (guint i = g->c->first; i < g->c->end && i < g->c->first + EM_SENTENCE_WINDOW; i++)
    {
      const EmSense *number = says (g, i, EM_SAYS_NUMBER);

      if (g->grammar->protos->len > 1 && ((number != NULL && strchr (number->value, '/') == NULL) ||
                                          (is_size (g, i) && em_list_is_bare_whole (g->c->items, i))))
        return TRUE;
    }
  return FALSE;
}

/* "CHROME" in a line of its own, "H13, CHROME": a word that among others may be no coating of the part. */
static gboolean
is_coating_alone (const Governor *g, guint i)
{
  guint metal = i > g->c->first ? i - 1 : i;

  if (i + 1 < g->c->end && !em_item_is_soft_break (g->c->items, i + 1))
    return FALSE;
  if (metal > g->c->first && em_item_is_soft_break (g->c->items, metal))
    metal--;
  return i == g->c->first || em_phrase_find (item (g, metal)->phrase, EM_SAYS_BASE) != NULL;
}

/* A sense of the word; one that needs no metal beside it before one that does: French "chromé", English "chrome". */
static const EmSense *
surest (const Governor *g, guint i, EmSays what)
{
  const EmSense *sense = says (g, i, what);

  for (guint k = 0; sense != NULL && sense->needs_material && item (g, i)->phrase != NULL && k < item (g, i)->phrase->n_senses; k++)
    if (item (g, i)->phrase->sense[k]->says == what && !item (g, i)->phrase->sense[k]->needs_material)
      return item (g, i)->phrase->sense[k];
  return sense;
}

/* French "chromé", against the metal chrome: only its accent tells them apart once accents are folded. */
static gboolean
has_accent (const Governor *g, guint i)
{
  for (guint32 b = 0; b < item (g, i)->length; b++)
    if ((guchar) g->c->items->text[item (g, i)->start + b] >= 0x80)
      return TRUE;
  return FALSE;
}

/* "you grind", "fertig bearbeiten Sie" */
static gboolean
names_shop (const Governor *g, guint i)
{
  static const char *const who[] = { "you", "u", "your", "shop", "supplier", "vendor", "welder", "repairer", "ihr", "euch", "sie", "ihnen", "lieferant", "auftragnehmer", "ustedes", "usted", "vosotros", "proveedor", "taller",
                                     "vous", "votre", "soudeur" };
  g_autofree char *text = g_ascii_strdown (g->c->items->text + item (g, i)->start, (gssize) item (g, i)->length);
  g_auto (GStrv) words = g_strsplit_set (text, " .,-:", -1);

  for (gsize k = 0; k < G_N_ELEMENTS (who); k++)
    if (g_strv_contains ((const char *const *) words, who[k]))
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
      const EmSense *sense = surest (g, i, simple[k].says);

      if (sense != NULL && simple[k].says == EM_SAYS_COATING && em_governor_is_none (g, i))
        {
          item (g, i)->is_used = item (g, i - 1)->is_used = TRUE;
          continue;
        }

      if (sense != NULL && simple[k].says == EM_SAYS_COATING && (is_removed (g, i, FALSE) || (sense->needs_material && !is_coating_alone (g, i) && !has_accent (g, i))))
        continue;

      /* "do you also do nitriding?" */
      if (sense != NULL && sense->says == EM_SAYS_COATING && em_machining_is_asked (g, i))
        continue;
      /* "0.3 for our milling" is a label, too. */
      if (sense != NULL && sense->says == EM_SAYS_FINISH &&
          (em_machining_is_before (g, i) || em_machining_is_asked (g, i) ||
           (em_machining_is_denied (g, i) && strcmp (sense->value, "shop") == 0)))
        continue;
      if (sense != NULL && (!item (g, i)->is_used || says (g, i, EM_SAYS_LABEL) != NULL))
        {
          const EmSense *agent = sense->says == EM_SAYS_FINISH ? agent_of_list (g, i) : NULL;
          gboolean is_told_who = agent != NULL || (sense->says == EM_SAYS_FINISH && is_customers (g, i));
          EmLoose *one = em_governor_add (g, simple[k].field, agent != NULL ? agent->value : is_told_who ? "customer"
                                             : sense->says == EM_SAYS_FINISH && em_machining_is_denied (g, i) ? "shop" : sense->value,
                                          i, i);

          one->is_general = simple[k].is_general || g->has_all;
          /* "blend flush", "needs .006 all over, we lap": who does it, or of which repair, no word says. */
          if (sense->says == EM_SAYS_FINISH && ((g->has_all && g->has_size) || (strcmp (one->given.field.text, "shop") == 0 && !names_shop (g, i))))
            em_governor_infer (one, "from-words");
          /* Who "us" is depends on who wrote it. */
          if (is_told_who || (sense->says == EM_SAYS_FINISH && names_repairs (g)) ||
              (simple[k].says == EM_SAYS_COATING && (is_of_part (g, i) || is_removed (g, i, TRUE) || has_metals (g))))
            em_governor_infer (one, "from-words");
          if (simple[k].says == EM_SAYS_COATING && is_of_part (g, i))
            {
              EmMetal coating = { sense->value, i };

              g_array_append_val (g->grammar->coatings, coating);
            }
        }
    }
}

/* "identical cavity blocks": parts of the tool, none of them a repair. */
static gboolean
is_part (const Governor *g, guint i)
{
  return says (g, i, EM_SAYS_PLACE) != NULL && says (g, i, EM_SAYS_KIND) == NULL && says (g, i + 1, EM_SAYS_KIND) == NULL;
}

/* "Number of tools: 2" */
static guint
tools_before (const Governor *g, guint i)
{
  guint k = i;

  while (k > g->c->first && (em_item_is_sign (g->c->items, k - 1, ':') || em_item_is_sign (g->c->items, k - 1, '=')))
    k--;
  if (k == i || k < g->c->first + 2 || says (g, k - 1, EM_SAYS_TOOLS) == NULL)
    return i;
  k -= 2;
  /* "nombre de moules" */
  k -= k > g->c->first && says (g, k, EM_SAYS_QUANTITY) == NULL &&
       (says (g, k, EM_SAYS_PREPOSITION) != NULL || says (g, k, EM_SAYS_GLUE) != NULL);
  return says (g, k, EM_SAYS_QUANTITY) != NULL ? k : i;
}

static void
give_tools (Governor *g, guint i, guint from, guint to)
{
  const EmSense *number = says (g, i, EM_SAYS_NUMBER);
  EmLoose *one = em_governor_add (g, "tools", NULL, from, to);

  one->given.field.value = number != NULL ? g_ascii_strtod (number->value, NULL)
                           : em_fraction_plain (em_item_size (g->c->items, i)->value);
  one->is_general = TRUE;
  /* They may as well be the places of the repair. */
  em_governor_infer (one, "from-words");
}

/* "on the 6 stripper inserts", in the words of a repair. */
static gboolean
is_led_by_preposition (const Governor *g, guint i)
{
  guint before = i;

  static const char *const led[] = { "on all", "in all", "at all", "to all", "applies to", "to", "an allen", "in allen", "sur tous les", "en todos los" };

  if (before > g->c->first + 1 && em_item_is_any_word_of (g->c->items, before - 1, led, G_N_ELEMENTS (led)))
    return TRUE;
  while (before > g->c->first && before + 2 > i && says (g, before - 1, EM_SAYS_GLUE) != NULL && says (g, before - 1, EM_SAYS_PREPOSITION) == NULL)
    before--;
  return before > g->c->first && says (g, before - 1, EM_SAYS_PREPOSITION) != NULL && before - 1 > g->c->first;
}

/* "Item 2 is on all 4 inserts": of that repair. */
static gboolean
is_of_item (const Governor *g, guint i)
{
  /* The word may have been passed over at the head of the line. */
  guint word = is_size (g, g->c->first) && g->c->first > 0 ? g->c->first - 1 : g->c->first;
  const EmSense *glue = em_item_says (g->c->items, word, EM_SAYS_GLUE);

  return i > word + 2 && glue != NULL && g_strcmp0 (glue->value, "item") == 0 && is_size (g, word + 1);
}

/* "2 nicks per insert, 4 inserts", "2 par insert, 4 inserts": so many times so many. */
static gboolean
is_per_part_before (const Governor *g, guint i)
{
  for (guint k = i; k-- > g->c->first + 1 && k + EACH_WINDOW > i;)
    if (em_item_is_per (g->c->items, k) && says (g, k + 1, EM_SAYS_PLACE) != NULL)
      return is_count (g, k - 1) || (k > g->c->first + 1 && is_count (g, k - 2));
  return FALSE;
}

/* ", 3 INSERTS" behind the sizes, "four inserts, each one has two dings": so many have the repair. */
static gboolean
has_repair_each (const Governor *g, guint i, const EmSense *tools)
{
  gboolean is_behind = FALSE, is_per = FALSE;

  if (g_strcmp0 (tools->value, "part") != 0 && g_strcmp0 (tools->value, "identical") != 0)
    return FALSE;
  /* "4 corners x 2 inserts", "corners of 4 core inserts blown" */
  if (i > g->c->first && (says (g, i - 1, EM_SAYS_TIMES) != NULL || ((g->has_size || g->grammar->protos->len == 1) && is_led_by_preposition (g, i)) || is_of_item (g, i) || is_per_part_before (g, i)))
    return TRUE;
  for (guint k = i > g->c->first + EACH_BACK ? i - EACH_BACK : g->c->first; k < i; k++)
    {
      is_behind |= em_item_is_measure (g->c->items, k);
      is_per |= em_item_is_per (g->c->items, k) || em_item_is_word (g->c->items, k, "ea") /* "qty 2 ea block, 2 blocks" */;
    }
  if (is_behind)
    return !is_per;
  for (guint k = i + 2; k < g->c->end && k <= i + EACH_WINDOW; k++)
    {
      const EmSense *number = says (g, k, EM_SAYS_NUMBER);

        /* "4 inserts, 2 chips each" */
      if (em_item_is_per (g->c->items, k) && k > i + 3 && says (g, k - 1, EM_SAYS_KIND) != NULL &&
          (is_count (g, k - 2) || says (g, k - 2, EM_SAYS_NUMBER) != NULL))
        return TRUE;
      if (em_item_is_per (g->c->items, k - 1) || em_item_is_per (g->c->items, k - 2) || (k > i + 4 && em_item_is_per (g->c->items, k - 3)))
        if (is_count (g, k) || (number != NULL && strchr (number->value, '/') == NULL && strcmp (number->value, "1") != 0))
          return TRUE;
    }
  return FALSE;
}

/* "4 cores identical,", and not "2 Schieber gleich beschädigt". */
static gboolean
is_part_end (const Governor *g, guint i)
{
  return i >= g->c->end || item (g, i)->type == EM_ITEM_SIGN || em_item_is_soft_break (g->c->items, i);
}

static void
read_tools (Governor *g, guint i)
{
  const EmSense *number = says (g, i, EM_SAYS_NUMBER);

  if (is_size (g, i) && tools_before (g, i) < i)
    {
      em_item_size (g->c->items, i)->roles |= EM_ROLE_COUNT;
      give_tools (g, i, tools_before (g, i), i);
      return;
    }
  if (!is_count (g, i) && (number == NULL || strchr (number->value, '/') != NULL))
    return;
  for (guint k = i + 1; k < g->c->end && k <= i + 2; k++)
    if (says (g, k, EM_SAYS_TOOLS) != NULL && !has_repair_each (g, i, says (g, k, EM_SAYS_TOOLS)) &&
        (g_strcmp0 (says (g, k, EM_SAYS_TOOLS)->value, "identical") != 0 || is_part (g, k + 1) || (k == i + 2 && is_part (g, i + 1) && is_part_end (g, k + 1))))
      {
        if (says (g, i - 1, EM_SAYS_QUANTITY) != NULL)
          item (g, i - 1)->is_used = TRUE;
        give_tools (g, i, i, k);
        return;
      }
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
  if (g->has_verb || is_of_part (g, i))
    em_governor_infer (one, "from-words");
  if (is_converted)
    em_governor_infer (one, "converted-hardness");
  else if (em_fraction_plain (size->value) < HRC_LEAST || em_fraction_plain (size->value) > HRC_MOST)
    em_governor_infer (one, "implausible");
}

/* "Tapped hole nearby, leave 2 mm": what is left beside a thing is no stock. */
static gboolean
is_beside_thing (const Governor *g, guint i)
{
  gboolean has_thing = FALSE, has_near = FALSE;

  for (guint k = g->c->first; k < i; k++)
    {
      if (is_size (g, k))
        return FALSE;
      has_thing |= says (g, k, EM_SAYS_THING) != NULL;
      has_near |= says (g, k, EM_SAYS_NEAR) != NULL && says (g, k, EM_SAYS_REFUSE) == NULL;
    }
  return has_thing && has_near && i - g->c->first <= EM_SENTENCE_WINDOW;
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
  else if ((roles & EM_ROLE_STOCK) != 0 && is_beside_thing (g, i))
    add_size (g, "clearance", i)->is_near = TRUE;
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

/* "DO NOT WELD TIP HOLE Ø1": a size or a word that is not known, which may be of what is refused. */
static gboolean
has_more (const Governor *g)
{
  for (guint i = g->c->first; i < g->c->end && i < g->c->first + EM_SENTENCE_WINDOW; i++)
    if (is_size (g, i) || (item (g, i)->type == EM_ITEM_UNKNOWN && !item (g, i)->is_talk))
      return TRUE;
  return FALSE;
}

/* "our", "was", a word that no lexicon has, a part: beside them a coating or who finishes may be of one part, or of another time. */
static gboolean
is_told_aside (const Governor *g, const EmLoose *one)
{
  static const char *const past[] = { "was", "were", "had", "once", "old", "gone", "off", "removed", "war", "waren", "mal", "früher", "alt", "alte", "weg", "runter", "era", "estaba", "venía", "vino", "était", "ancien", "ancienne",
                                      "one", "last", "first", "not", "nicht", "no" };
  guint32 from = one->given.field.start, to = from + one->given.field.length;
  guint first = one->item > g->c->first + EM_SENTENCE_WINDOW ? one->item - EM_SENTENCE_WINDOW : g->c->first;

  for (guint i = first; i < g->c->end && i < one->item + EM_SENTENCE_WINDOW; i++)
    {
      const EmItem *its = item (g, i);

      if (its->start >= from && its->start < to)
        continue;
      if ((its->type == EM_ITEM_UNKNOWN && !its->is_talk && its->length >= WORD_MIN) || says (g, i, EM_SAYS_PLACE) != NULL || says (g, i, EM_SAYS_KIND) != NULL ||
          em_item_is_any_word_of (g->c->items, i, past, G_N_ELEMENTS (past)))
        return TRUE;
    }
  return FALSE;
}

/* "NO WELD ON WATER LINE plugs": what is refused goes on in words that were not taken. */
static gboolean
goes_on (const Governor *g, const EmLoose *one)
{
  guint32 to = one->given.field.start + one->given.field.length;

  for (guint i = MAX (one->item, g->c->first); i < g->c->end; i++)
    if (item (g, i)->start >= to)
      return item (g, i)->type != EM_ITEM_SIGN && !em_item_is_soft_break (g->c->items, i);
  return FALSE;
}

/* What is told beside other words is not plainly read. */
static void
doubt_told_aside (Governor *g)
{
  for (guint i = 0; i < g->loose->len; i++)
    {
      EmLoose *one = &g_array_index (g->loose, EmLoose, i);
      const char *field = one->given.field.field;
      gboolean is_aside = ((strcmp (field, "coating") == 0 || strcmp (field, "finish") == 0) && is_told_aside (g, one)) || (strcmp (field, "refuse") == 0 && goes_on (g, one));

      if (is_aside && one->given.field.state == EM_READ_READ)
        em_governor_infer (one, "from-words");
    }
}

void
em_govern_read (EmGrammar *grammar, const EmClause *clause, GArray *loose)
{
  Governor g = { grammar, clause, loose, FALSE, FALSE, FALSE, 0 };

  for (guint i = clause->first; i < clause->end; i++)
    {
      if (says (&g, i, EM_SAYS_ALL) != NULL)
        {
          g.has_all = TRUE;
          item (&g, i)->is_used = TRUE;
        }
      g.n_nouns += says (&g, i, EM_SAYS_KIND) != NULL;
      g.has_verb |= says (&g, i, EM_SAYS_VERB) != NULL;
      g.has_size |= is_size (&g, i);
    }
  for (guint i = clause->first; i < clause->end; i++)
    em_refuse_read (&g, i);
  if (has_more (&g))
    for (guint i = 0; i < loose->len; i++)
      if (strcmp (g_array_index (loose, EmLoose, i).given.field.field, "refuse") == 0)
        em_governor_infer (&g_array_index (loose, EmLoose, i), "from-words");
  for (guint i = clause->first; i < clause->end; i++)
    {
      read_units (&g, i);
      em_code_read_cell (&g, i);
      em_code_read (&g, i);
      em_code_read_before (&g, i);
      read_base (&g, i);
      read_simple (&g, i);
      em_machining_read (&g, i);
      read_tools (&g, i);
      em_near_read (&g, i);
      em_near_distance_told (&g, i);
    }
  for (guint i = clause->first; i < clause->end; i++)
    read_sizes (&g, i);
  doubt_told_aside (&g);
  g_array_sort (loose, compare_item);
}
