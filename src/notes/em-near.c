/* em-near: what lies near a repair: a texture, a polish, a hole, a thread.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-govern-parts.h"

#include <string.h>

enum { DISTANCE_WINDOW = 6 /* from a thing to how far it lies from the repair */ };

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

static const guint32 dimension_roles = EM_ROLE_LENGTH | EM_ROLE_WIDTH | EM_ROLE_HEIGHT | EM_ROLE_DEPTH | EM_ROLE_THICKNESS | EM_ROLE_DIAMETER |
                        EM_ROLE_RADIUS | EM_ROLE_LEG | EM_ROLE_ANGLE | EM_ROLE_BUILD | EM_ROLE_COUNT | EM_ROLE_REFERENCE;

/* "5 mm from B": the letter of a repair in a list. */
static gboolean
is_letter (const Governor *g, guint i)
{
  return i < g->c->end && item (g, i)->type != EM_ITEM_SIZE && item (g, i)->type != EM_ITEM_LINE && item (g, i)->length == 1 &&
         g_ascii_isupper (g->c->items->text[item (g, i)->start]);
}

/* "the", and "l'" of "l'arête". */
static gboolean
is_article (const Governor *g, guint i)
{
  return says (g, i, EM_SAYS_GLUE) != NULL ||
         (item (g, i)->type == EM_ITEM_UNKNOWN && item (g, i)->length == 2 && g->c->items->text[item (g, i)->start + 1] == '\'');
}

/* "6 mm behind the face", ".05 from the dimple": leads from a size to a repair. */
static gboolean
leads_from_size (const Governor *g, guint i)
{
  guint noun = i + 1;

  if (says (g, i, EM_SAYS_NEAR) == NULL && says (g, i, EM_SAYS_PREPOSITION) == NULL && says (g, i, EM_SAYS_TO) == NULL)
    return FALSE;
  /* "from A" is from no "a". */
  if (is_letter (g, noun) && (noun + 1 == g->c->end || item (g, noun + 1)->type == EM_ITEM_SIGN))
    return TRUE;
  while (noun < g->c->end && noun < i + 3 && is_article (g, noun))
    noun++;
  return says (g, noun, EM_SAYS_KIND) != NULL || says (g, noun, EM_SAYS_ONE_OF) != NULL || is_letter (g, noun);
}

guint
em_near_distance (const Governor *g, guint thing)
{
  static const char *const at[] = { "à", "a", "at", "bei", "está a", "están a", "queda a", "quedan a", "se encuentra a", "est à", "se trouve à" };

  for (guint k = thing + 1; k < g->c->end && k <= thing + DISTANCE_WINDOW; k++)
    if (is_size (g, k) && (em_item_size (g->c->items, k)->roles & EM_ROLE_REFERENCE) == 0 /* the thread's own */)
      {
        const EmSize *size = em_item_size (g->c->items, k);
        gboolean is_end = k + 1 == g->c->end || em_item_is_soft_break (g->c->items, k + 1);
        gboolean is_at = em_item_is_any_word_of (g->c->items, k - 1, at, G_N_ELEMENTS (at)) && is_end;

        if (size->chain != 0 || (size->roles & dimension_roles) != 0)
          return EM_NO_ITEM;
        /* "texture about 3/8 away from it" */
        if ((size->roles & EM_ROLE_CLEARANCE) != 0 && size->label_item == k + 1)
          return k;
        return is_at || leads_from_size (g, k + 1) ? k : EM_NO_ITEM;
      }
    else if (says (g, k, EM_SAYS_VERB) != NULL || em_phrase_find (item (g, k)->phrase, EM_SAYS_BASE) != NULL /* "bush is 1.2344 at 48" */)
      return EM_NO_ITEM;
  return EM_NO_ITEM;
}

/* "NEAR Ø3 EJECTOR HOLE", "next to a 6 mm hole": how large the thing is. */
static gboolean
is_of_thing (const Governor *g, guint k, guint thing, guint cue)
{
  return k > cue && k + 1 == thing && cue != EM_NO_ITEM && is_size (g, k) && em_item_size (g->c->items, k)->chain == 0 && says (g, cue, EM_SAYS_NEAR) != NULL;
}

/* Columns of a table part them. */
static gboolean
is_apart (const Governor *g, guint a, guint b)
{
  const guint32 gap = 3;
  guint first = MIN (a, b), last = MAX (a, b);

  for (guint i = first; i < last; i++)
    if (item (g, i + 1)->start >= item (g, i)->start + item (g, i)->length + gap || em_item_is_sign (g->c->items, i, '|'))
      return TRUE;
  return FALSE;
}

/* A size that says how far: right before or after the thing, not naming a dimension. */
static guint
find_clearance (const Governor *g, guint thing, guint cue)
{
  const guint32 named = dimension_roles;
  guint only = EM_NO_ITEM;

  /* "beside a water line, 6 mm off" */
  for (guint k = thing + 1; cue < thing && k + 1 < g->c->end && k <= thing + EM_GOVERN_WINDOW; k++)
    if (is_size (g, k) && em_item_size (g->c->items, k)->unit != EM_UNIT_NONE && em_item_size (g->c->items, k)->chain == 0 &&
        (em_item_size (g->c->items, k)->roles & named) == 0 && em_item_is_word (g->c->items, k + 1, "off"))
      return k;
  /* "a 6 mm hole 4 mm from the end": not the hole's own size before it. */
  for (guint k = thing + 1; k + 1 < g->c->end && k <= thing + 2; k++)
    if (is_size (g, k) && em_item_size (g->c->items, k)->chain == 0 && g_ascii_strncasecmp (g->c->items->text + item (g, k + 1)->start, "from", 4) == 0)
      return k;
  /* "next to 1/2 waterline (.2 away)": what says so itself. */
  for (guint k = thing + 1; k < g->c->end && k <= thing + EM_GOVERN_WINDOW; k++)
    if (is_size (g, k) && (em_item_size (g->c->items, k)->roles & (named | EM_ROLE_CLEARANCE)) == EM_ROLE_CLEARANCE)
      return k;
  for (guint k = thing > g->c->first + EM_GOVERN_WINDOW ? thing - EM_GOVERN_WINDOW : g->c->first; k < g->c->end && k <= thing + EM_GOVERN_WINDOW; k++)
    if (is_size (g, k) && (em_item_size (g->c->items, k)->roles & named) == 0 && em_item_size (g->c->items, k)->chain == 0 &&
        !is_before_beside (g, k, thing, cue) && !is_of_thing (g, k, thing, cue) && !is_apart (g, k, thing))
      {
        gboolean is_beside = FALSE;

        for (guint m = k > g->c->first + 2 ? k - 2 : g->c->first; m < g->c->end && m <= k + 2; m++)
          is_beside |= m == cue || m == thing;
        if (is_beside)
          return k;
      }
  /* "Keep away from the polished face, about 0.5 mm.": the only size of the sentence. */
  for (guint k = g->c->first; k < g->c->end && g->n_nouns <= 1 && g->c->end - g->c->first <= EM_SENTENCE_WINDOW; k++)
    if (is_size (g, k) && !is_apart (g, k, thing))
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
  while (next < g->c->end && next < cue + 3 && is_article (g, next))
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
  /* "bush is H13 at 48": how hard it is. */
  for (guint k = thing + 1; k < g->c->end && k <= thing + 3 && em_phrase_find (item (g, k)->phrase, EM_SAYS_BASE) == NULL; k++)
    if (says (g, k, EM_SAYS_NEAR) != NULL && (!is_leading (says (g, k, EM_SAYS_NEAR)) || leads_to_repair (g, k)))
      return k;
  for (guint k = thing; k-- > g->c->first && k + EM_GOVERN_WINDOW >= thing;)
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

/* "Ej pin hole next to it worn, now 8.2", "Bohrung 10 H7 daneben: 0,1 auftragen": the hole is what is to be mended. */
static gboolean
is_worn_itself (const Governor *g, guint i)
{
  const guint32 build = EM_ROLE_BUILD | EM_ROLE_ADD | EM_ROLE_PER_SIDE;

  if (says (g, i, EM_SAYS_KIND) == NULL || g->n_nouns != 1)
    return FALSE;
  for (guint k = i + 1; k < g->c->end && k <= i + EM_GOVERN_WINDOW; k++)
    if (says (g, k, EM_SAYS_LABEL) != NULL && (says (g, k, EM_SAYS_LABEL)->roles & EM_ROLE_WORN) != 0 && !em_governor_is_is (g, k))
      return TRUE;
    else if (i == g->c->first && is_size (g, k) && (em_item_size (g->c->items, k)->roles & build) != 0 && em_item_size (g->c->items, k)->chain == 0)
      return TRUE;
  return FALSE;
}

/* "Polish right next to the bore": what the cue leads to is a repair, and does not lie near itself. */
static void
use_repair_named (const Governor *g, guint thing, guint cue)
{
  for (guint i = cue + 1; cue > thing && i < g->c->end && i <= cue + 3 && !em_item_is_soft_break (g->c->items, i); i++)
    if (says (g, i, EM_SAYS_THING) != NULL && says (g, i, EM_SAYS_KIND) != NULL)
      item (g, i)->is_used = TRUE;
}

/* So no size of the repair. */
static void
set_apart (const Governor *g, guint cue, guint thing)
{
  if (thing == g->c->first || !is_of_thing (g, thing - 1, thing, cue))
    return;
  em_item_size (g->c->items, thing - 1)->roles |= EM_ROLE_REFERENCE;
  item (g, thing - 1)->is_used = TRUE;
}

/* The sentence ends soon, and as a question. */
static gboolean
is_asked (const Governor *g, guint i)
{
  const EmItems *items = g->c->items;

  for (guint k = i + 1; k < items->items->len && k <= i + EM_GOVERN_WINDOW && em_item (items, k)->type != EM_ITEM_LINE; k++)
    if (em_item_is_sign (items, k, '?'))
      return TRUE;
    else if (em_item_is_sign (items, k, '.'))
      return FALSE;
  return FALSE;
}

void
em_near_read (Governor *g, guint i)
{
  const EmSense *thing = says (g, i, EM_SAYS_THING);
  gboolean is_surface;
  guint cue, clearance;

  if (thing == NULL || item (g, i)->is_used || em_governor_is_none (g, i) || is_worn_itself (g, i))
    return;
  is_surface = strcmp (em_thing_near (thing), "texture") == 0 || strcmp (thing->value, "polish") == 0;
  cue = find_cue (g, i);
  /* "grain starts about .05 from the dimple" */
  if (cue == EM_NO_ITEM)
    cue = em_near_distance (g, i);
  /* "TAPPED HOLE .25 AWAY" */
  for (guint k = i + 1; cue == EM_NO_ITEM && k <= i + EM_GOVERN_WINDOW; k++)
    if (is_size (g, k) && (em_item_size (g->c->items, k)->roles & EM_ROLE_CLEARANCE) != 0)
      cue = k;
  /* "STAY .060 OFF THREAD" */
  for (guint k = i; cue == EM_NO_ITEM && k-- > g->c->first && k + 3 >= i && !em_item_is_soft_break (g->c->items, k);)
    if (is_size (g, k) && (em_item_size (g->c->items, k)->roles & (EM_ROLE_CLEARANCE | EM_ROLE_STOCK)) == EM_ROLE_CLEARANCE)
      cue = k;
  /* "polish afterwards", "can you re-etch textures?": something to do. */
  if (cue == EM_NO_ITEM && (says (g, i, EM_SAYS_MACHINING) != NULL || is_asked (g, i)))
    return;
  if (cue == EM_NO_ITEM && (!is_surface || (says (g, i, EM_SAYS_KIND) != NULL && g->n_nouns == 1)))
    {
      if (is_surface)
        {
          EmLoose *one = em_governor_add (g, "near", em_thing_near (thing), i, i);

          one->is_near = TRUE;
          em_governor_infer (one, "from-words");
          item (g, i)->is_used = FALSE;
        }
      return;
    }
  if (i > g->c->first && is_count (g, i - 1))
    item (g, i - 1)->is_used = TRUE;
  {
    EmLoose *one = em_governor_add (g, "near", em_thing_near (thing), i, i);

    one->is_near = TRUE;
    clearance = cue != EM_NO_ITEM ? find_clearance (g, i, cue) : EM_NO_ITEM;
    /* How near is not told: it may only say where. */
    if (clearance == EM_NO_ITEM)
      em_governor_infer (one, "from-words");
  }
  if (cue == EM_NO_ITEM)
    return;
  item (g, cue)->is_used |= !is_size (g, cue);
  use_repair_named (g, i, cue);
  set_apart (g, cue, i);
  if (clearance != EM_NO_ITEM)
    em_item_size (g->c->items, clearance)->roles |= EM_ROLE_CLEARANCE;
}

/* "Abstand zur Profilkante mind. 1,5", "distance to lip min. 6": how far from what no field has a word for. */
void
em_near_distance_told (Governor *g, guint i)
{
  static const char *const distance[] = { "abstand zu", "abstand zur", "abstand zum", "abstand zu den", "abstand von", "abstand", "mindestabstand", "mindestabstand zu", "mindestabstand zur", "mindestabstand zum",
                                          "distance to", "distance to the", "distance from", "distance from the", "min distance to", "min. distance to", "distancia a", "distancia al", "distancia mínima", "distance au", "distance à la" };
  guint end = i + 1;

  if (!em_item_is_any_word_of (g->c->items, i, distance, G_N_ELEMENTS (distance)))
    return;
  while (end < g->c->end && end <= i + DISTANCE_WINDOW && !is_size (g, end) && !em_item_is_soft_break (g->c->items, end) && says (g, end, EM_SAYS_THING) == NULL)
    end++;
  if (end == i + 1 || end >= g->c->end || !is_size (g, end) || em_item_size (g->c->items, end)->chain != 0 ||
      (em_item_size (g->c->items, end)->roles & (dimension_roles & ~(guint32) EM_ROLE_LENGTH)) != 0)
    return;
  em_item_size (g->c->items, end)->roles = EM_ROLE_CLEARANCE;
  for (guint k = i; k < end; k++)
    item (g, k)->is_used = TRUE;
}

/* "BOLT HOLES TO STAY CLEAR, MIN 3": how much is behind the words that spare it. */
static void
mark_least (const Governor *g, guint i)
{
  for (guint k = i + 1; k < g->c->end && k <= i + EM_GOVERN_WINDOW; k++)
    if (is_size (g, k))
      {
        if (says (g, k - 1, EM_SAYS_MINIMUM) != NULL)
          em_item_size (g->c->items, k)->roles |= EM_ROLE_CLEARANCE;
        return;
      }
}

/* "Bohrung in der Mitte 4 mm muss offen bleiben": a size of the thing itself is none of the repair's. */
static void
keep_sizes (const Governor *g, guint thing, guint refusal)
{
  for (guint k = thing + 1; k < refusal && !em_item_is_soft_break (g->c->items, k); k++)
    if (is_size (g, k) && em_item_size (g->c->items, k)->chain == 0 && (em_item_size (g->c->items, k)->roles & EM_ROLE_CLEARANCE) == 0)
      em_item_size (g->c->items, k)->roles |= EM_ROLE_REFERENCE;
}

void
em_near_spare (Governor *g, guint thing, guint refusal)
{
  guint n = g->loose->len;

  item (g, refusal)->is_used = TRUE;
  em_near_read (g, thing);
  if (g->loose->len == n)
    {
      EmLoose *one = em_governor_add (g, "near", em_thing_near (says (g, thing, EM_SAYS_THING)), thing, thing);

      one->is_near = TRUE;
      em_governor_infer (one, "from-words");
    }
  item (g, thing)->is_used = TRUE;
  keep_sizes (g, thing, refusal);
  mark_least (g, refusal);
}
