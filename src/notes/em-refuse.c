/* em-refuse: what must stay free of weld.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-govern-parts.h"

#include <string.h>

enum { NAME_WINDOW = 6 /* items of a name that is not to be welded */, SPARED_WINDOW = 12 /* from a thing to what spares it */,
       BESIDE_WINDOW = 5 /* items from "next to it" to what is there */ };

/* "KEEP CLEAR OF THE VENT HOLE BY 1.5": how near it lies. */
static gboolean
is_apart (const Governor *g, guint thing)
{
  if (em_near_distance (g, thing) != EM_NO_ITEM)
    return TRUE;
  for (guint k = thing + 1; k < g->c->end && k <= thing + 2; k++)
    if (is_size (g, k) && em_item_size (g->c->items, k)->chain == 0 && !is_count (g, k))
      return (em_item_size (g->c->items, k)->roles & EM_ROLE_CLEARANCE) != 0 || says (g, k - 1, EM_SAYS_TIMES) != NULL;
  return FALSE;
}

/* Nothing of meaning stands behind the refusal, or only another part: "the inserts must not be welded, they stay in". */
static gboolean
is_refused_end (const Governor *g, guint i)
{
  if (i + 1 < g->c->end && i > g->c->first && em_item_is_sign (g->c->items, i + 1, ','))
    return TRUE;
  for (guint k = i + 1; k < g->c->end; k++)
    if (item (g, k)->type != EM_ITEM_SIGN && says (g, k, EM_SAYS_GLUE) == NULL && !item (g, k)->is_talk)
      return FALSE;
  return TRUE;
}

/* "NUMBER:" may be one phrase with its colon. */
static void
trim (const Governor *g, EmLoose *one)
{
  EmReadField *field = &one->given.field;

  while (field->length > 1 && strchr (":;,.!", g->c->items->text[field->start + field->length - 1]) != NULL)
    field->length--;
}

/* "Ø6 DOWEL HOLES", "TIP HOLE Ø1": how large across the thing is. */
static gboolean
is_across (const Governor *g, guint i)
{
  const guint32 told = EM_ROLE_WORN | EM_ROLE_FINISHED | EM_ROLE_BUILD | EM_ROLE_ADD | EM_ROLE_CLEARANCE;

  return is_size (g, i) && em_item_size (g->c->items, i)->chain == 0 && (em_item_size (g->c->items, i)->roles & EM_ROLE_DIAMETER) != 0 &&
         (em_item_size (g->c->items, i)->roles & told) == 0;
}

/* "Die Entlüftungsnut", but not "die face", the face of a die. */
static gboolean
is_german_article (const Governor *g, guint i, guint last)
{
  return i < last && em_item_is_word (g->c->items, i, "die") && (item (g, i)->flags & EM_TOKEN_UPPER) == 0 &&
         (item (g, i + 1)->flags & EM_TOKEN_CAPITAL) != 0 &&
         ((item (g, i)->flags & EM_TOKEN_CAPITAL) == 0 || (item (g, i + 1)->flags & EM_TOKEN_UPPER) == 0);
}

/* "the", "on the", "bitte am": words before a name that are none of it. */
static guint
skip_little (const Governor *g, guint first, guint last)
{
  if (is_german_article (g, first, last))
    first++;
  while (first < last && item (g, first)->type != EM_ITEM_SIZE && says (g, first, EM_SAYS_PLACE) == NULL && says (g, first, EM_SAYS_KIND) == NULL &&
         says (g, first, EM_SAYS_ONE_OF) == NULL && says (g, first, EM_SAYS_SAME) == NULL &&
         ((item (g, first)->type == EM_ITEM_SIGN && !is_across (g, first + 1)) || says (g, first, EM_SAYS_GLUE) != NULL || says (g, first, EM_SAYS_PREPOSITION) != NULL ||
          says (g, first, EM_SAYS_AGENT) != NULL))
    first++;
  return first;
}

/* "Passfedernut bitte nicht schweißen", "ne pas souder la rainure SVP" */
static guint
before_polite (const Governor *g, guint first, guint last)
{
  static const char *const words[] = { "please", "pls", "plz", "bitte", "unbedingt", "svp", "s.v.p.", "por favor", "porfa", "s'il vous plaît", "s'il te plaît", "merci", "surtout" };

  while (last > first && (item (g, last)->type == EM_ITEM_SIGN || em_item_is_any_word_of (g->c->items, last, words, G_N_ELEMENTS (words))))
    last--;
  return last;
}

/* "cover plate behind it", "nicht an die Gravur kommen": words behind a name that are none of it. */
static guint
before_tail (const Governor *g, guint first, guint last)
{
  static const char *const words[] = { "behind", "behind it", "next to", "next to it", "beside it", "below it", "above it", "it", "them", "either side", "dahinter", "daneben", "darunter", "darüber", "davor", "kommen", "gehen", "geraten",
                                       "fassen", "Sie", "bitte", "auch", "detrás", "al lado", "debajo", "derrière", "à côté", "dessous" };

  while (last > first && (em_item_is_any_word_of (g->c->items, last, words, G_N_ELEMENTS (words)) || item (g, last)->type == EM_ITEM_SIGN))
    last--;
  return last;
}

/* "the insert that must not be welded": the words that lead from the name to the refusal. */
static guint
last_of_name (const Governor *g, guint first, guint last)
{
  static const char *const who[] = { "that", "which", "que", "qui", "die", "der", "das", "welche", "welcher" };

  last = before_polite (g, first, last);
  while (last > first && (em_item_is_any_word_of (g->c->items, last, who, G_N_ELEMENTS (who)) || item (g, last)->type == EM_ITEM_SIGN))
    last--;
  return last;
}

/* "ZONE C: NOT TO BE WELDED", where the name heads the line. */
static void
refuse_head (Governor *g, guint i)
{
  guint first = i, last = i;
  EmLoose *one;

  while (first > 0 && item (g, first - 1)->type != EM_ITEM_LINE && i - first < NAME_WINDOW)
    first--;
  while (last > first && item (g, last - 1)->type == EM_ITEM_SIGN)
    last--;
  /* "5) do not weld": only a number. */
  if (last == first || (last == first + 1 && item (g, first)->type == EM_ITEM_SIZE))
    return;
  one = em_governor_add (g, "refuse", NULL, skip_little (g, first, last - 1), last - 1);
  trim (g, one);
  one->is_general = TRUE;
  em_governor_infer (one, "from-words");
  item (g, i)->is_used = TRUE;
}

/* A word of nearness leads to the repair told before. */
static gboolean
is_beside_it (const Governor *g, guint thing, guint refusal)
{
  /* "next to it: mirror polish, no spatter" */
  for (guint k = thing; k > g->c->first + 1 && k + BESIDE_WINDOW > thing; k--)
    if (em_item_is_word (g->c->items, k - 1, "it") && em_item_says (g->c->items, k - 2, EM_SAYS_NEAR) != NULL)
      return TRUE;
  for (guint k = thing + 1; k + 1 < refusal; k++)
    if (em_item_says (g->c->items, k, EM_SAYS_NEAR) != NULL)
      {
        const EmSense *glue = em_item_says (g->c->items, k + 1, EM_SAYS_GLUE);

        /* "mirror polish adjacent, keep spatter off" */
        if (em_item_says (g->c->items, k, EM_SAYS_NEAR)->value == NULL && em_item_is_soft_break (g->c->items, k + 1))
          return TRUE;
        /* "texture right next to item 2, keep off" */
        if (em_item_is_word (g->c->items, k + 1, "it") || (glue != NULL && g_strcmp0 (glue->value, "item") == 0 && k + 2 < refusal))
          return TRUE;
      }
  return FALSE;
}

/* Some word from first to last may name what is not to be welded. */
static gboolean
has_name (const Governor *g, guint first, guint last)
{
  for (guint k = first; k <= last; k++)
    if (says (g, k, EM_SAYS_KIND) != NULL || says (g, k, EM_SAYS_PLACE) != NULL || says (g, k, EM_SAYS_THING) != NULL || says (g, k, EM_SAYS_SLOT) != NULL ||
        (item (g, k)->type == EM_ITEM_UNKNOWN && !item (g, k)->is_talk))
      return TRUE;
  return FALSE;
}

/* "mold of 4140, with an insert that must not be welded": of the words from *first to *last before the refusal those that name it. */
static void
narrow (const Governor *g, guint i, guint *first, guint *last)
{
  guint from = *last, to;

  if (em_item_is_sign (g->c->items, i - 1, ':'))
    return;
  while (from > *first && !em_item_is_soft_break (g->c->items, from - 1))
    from--;
  from = skip_little (g, from, *last);
  to = last_of_name (g, from, *last);
  if (!has_name (g, from, to))
    return;
  *first = from;
  *last = to;
}

/* "seat SR 15.5, mouth Ø4 must stay open": sizes of a repair stand in a part before it. */
static guint
behind_sizes (const Governor *g, guint first, guint last)
{
  guint part = first;
  gboolean has_size = FALSE;

  for (guint k = first; k <= last; k++)
    if (em_item_is_measure (g->c->items, k))
      has_size = TRUE;
    else if (has_size && em_item_is_soft_break (g->c->items, k))
      part = k + 1;
  return part;
}

/* "which is", "the one": only little words. */
static gboolean
is_little (const Governor *g, guint first, guint last)
{
  for (guint k = first; k <= last; k++)
    if (item (g, k)->type != EM_ITEM_SIGN && !item (g, k)->is_talk && (says (g, k, EM_SAYS_GLUE) == NULL || says (g, k, EM_SAYS_PLACE) != NULL))
      return FALSE;
  return TRUE;
}

/* Only what a thing is called, without a size, a deed or what became of it. */
static gboolean
is_bare_name (const Governor *g, guint first, guint last)
{
  for (guint k = first; k <= last; k++)
    {
      const EmSense *noun = says (g, k, EM_SAYS_KIND), *label = says (g, k, EM_SAYS_LABEL);

      if ((is_size (g, k) && (em_item_size (g->c->items, k)->roles & EM_ROLE_REFERENCE) == 0) || says (g, k, EM_SAYS_VERB) != NULL ||
          says (g, k, EM_SAYS_REFUSE) != NULL || says (g, k, EM_SAYS_SET) != NULL || says (g, k, EM_SAYS_NEAR) != NULL ||
          says (g, k, EM_SAYS_SOUND) != NULL || (noun != NULL && noun->value != NULL) ||
          (label != NULL && (label->roles & (EM_ROLE_WORN | EM_ROLE_FINISHED | EM_ROLE_BUILD)) != 0))
        return FALSE;
    }
  return last - first < NAME_WINDOW && has_name (g, first, last);
}

static guint
begin_of_part (const Governor *g, guint i)
{
  for (guint n = 0; i > g->c->first && n <= NAME_WINDOW && !em_item_is_soft_break (g->c->items, i - 1) && !em_item_is_sign (g->c->items, i - 1, ':'); n++)
    i--;
  return i;
}

/* "Gewinde M8 und Passbohrungen nicht schweißen", "threads and dowel holes not to be welded": what is told before the last of them, which begins at first. */
static void
refuse_others_before (Governor *g, guint first)
{
  static const char *const and[] = { "and", "und", "sowie", "u.", "&", "y", "e", "et", "or", "oder", "o", "ou", "ni" };

  if (first < g->c->first + 2 || !em_item_is_any_word_of (g->c->items, first - 1, and, G_N_ELEMENTS (and)))
    return;
  for (guint end = first - 1, part, n = 0; end > g->c->first && n < NAME_WINDOW; end = part - 1, n++)
    {
      const EmSense *thing = NULL;
      EmLoose *one;

      part = begin_of_part (g, end);
      if (part == end || !is_bare_name (g, part, end - 1))
        return;
      for (guint k = part; k < end && thing == NULL; k++)
        thing = says (g, k, EM_SAYS_THING);
      one = em_governor_add (g, "refuse", thing != NULL ? em_thing_refused (thing) : NULL, skip_little (g, part, end - 1), end - 1);
      trim (g, one);
      one->is_general = TRUE;
      em_governor_infer (one, "from-words");
      if (part == g->c->first || !em_item_is_soft_break (g->c->items, part - 1))
        return;
    }
}

/* What stands before it in the sentence is not to be welded. */
static void
refuse_before (Governor *g, guint i)
{
  const EmSense *thing = NULL;
  guint first = g->c->first, last = i - 1;
  EmLoose *one;

  last = before_tail (g, first, before_polite (g, first, last));
  /* "..., please protect it": what was told before stands in another part. */
  if (item (g, last)->type == EM_ITEM_SIGN)
    return;
  narrow (g, i, &first, &last);
  first = behind_sizes (g, first, last);
  /* "…, which is to stay open": what it is, no word of the part names. */
  if (is_little (g, first, last))
    return;
  for (guint k = first; k <= last; k++)
    if (is_size (g, k) && em_item_size (g->c->items, k)->unit != EM_UNIT_NONE)
      return;
  for (guint k = first; k <= last && thing == NULL; k++)
    {
      thing = says (g, k, EM_SAYS_THING);
      if (thing != NULL && em_near_distance (g, k) != EM_NO_ITEM)
        {
          item (g, i)->is_used = TRUE;
          return;
        }
      /* "thread next to it: do not touch" */
      if (thing != NULL && is_beside_it (g, k, i))
        {
          em_governor_add (g, "near", em_thing_near (thing), k, k)->is_near = TRUE;
          item (g, i)->is_used = TRUE;
          return;
        }
    }
  /* Which holes only their own words say. */
  one = em_governor_add (g, "refuse", thing != NULL ? em_thing_refused (thing) : NULL, first, last);
  trim (g, one);
  one->is_general = TRUE;
  em_governor_infer (one, "from-words");
  item (g, i)->is_used = TRUE;
  refuse_others_before (g, first);
}

/* "NO THREADS TO BE WELDED": a "no" in front of the thing makes a refusal of it; without one it asks for the weld. */
static gboolean
is_asked_for (const Governor *g, guint i)
{
  if (g_strcmp0 (says (g, i, EM_SAYS_REFUSE)->value, "denied") != 0)
    return FALSE;
  for (guint k = i; k-- > g->c->first && !em_item_is_soft_break (g->c->items, k);)
    if (says (g, k, EM_SAYS_THING) != NULL)
      return !em_governor_is_none (g, k);
  return TRUE;
}

/* "Alésage central Ø4 à ne pas boucher": its name ends before the refusal, unless more is told of the hole in between. */
static guint
end_of_hole (const Governor *g, guint hole, guint refusal)
{
  static const char *const of[] = { "der", "des", "von", "vom", "of", "of the", "del", "de", "de la", "du", "des" };

  for (guint k = hole + 1; k < refusal; k++)
    if (em_item_is_any_word_of (g->c->items, k, of, G_N_ELEMENTS (of)))
      continue;
    else if (em_item_is_soft_break (g->c->items, k) || says (g, k, EM_SAYS_NEAR) != NULL || says (g, k, EM_SAYS_SOUND) != NULL ||
        says (g, k, EM_SAYS_PREPOSITION) != NULL)
      return hole;
  return last_of_name (g, hole, refusal - 1);
}

/* "la textura queda a 4 mm, por favor no tocarla", "rosca M6 a 5 mm, no tocar": of what is told as near already. */
static gboolean
is_of_thing_near (const Governor *g, guint i)
{
  if (i + 1 < g->c->end && !em_item_is_sign (g->c->items, i + 1, '.'))
    return FALSE;
  for (guint k = 0; k < g->loose->len && k < 2 * EM_GOVERN_WINDOW; k++)
    {
      const EmLoose *one = &g_array_index (g->loose, EmLoose, k);

      for (guint at = one->item; one->is_near && at < i && one->item + 3 * EM_GOVERN_WINDOW > i; at++)
        if (is_size (g, at) && (em_item_size (g->c->items, at)->roles & EM_ROLE_CLEARANCE) != 0)
          return TRUE;
    }
  return FALSE;
}

/* "THREADS TO BE PROTECTED", "the texture on the next wall must not be damaged": the thing stands before it; "it" of "the thread is
 * good, do not weld it" may also be told in the part before. */
static gboolean
refuse_thing_before (Governor *g, guint i)
{
  gboolean is_it = g_strcmp0 (says (g, i, EM_SAYS_REFUSE)->value, "it") == 0;

  for (guint k = i; k-- > (is_it ? 0 : g->c->first) && k + 2 * EM_GOVERN_WINDOW > i &&
                    (is_it ? item (g, k)->type != EM_ITEM_LINE : !em_item_is_soft_break (g->c->items, k));)
    if (em_item_says (g->c->items, k, EM_SAYS_THING) != NULL && !item (g, k)->is_used)
      {
        const EmSense *thing = em_item_says (g->c->items, k, EM_SAYS_THING);
        gboolean has_words = em_thing_refused (thing) == NULL;
        EmLoose *one;

        /* "thread .19 from pocket, protect" */
        if (em_near_distance (g, k) != EM_NO_ITEM)
          {
            item (g, i)->is_used = TRUE;
            return TRUE;
          }
        /* "thread right next to it - do not touch" */
        if (is_beside_it (g, k, i))
          {
            one = em_governor_add (g, "near", em_thing_near (thing), k, k);
            one->is_near = TRUE;
          }
        else
          {
            one = em_governor_add (g, "refuse", em_thing_refused (thing), k, has_words ? end_of_hole (g, k, i) : i);
            one->is_general = TRUE;
            refuse_others_before (g, begin_of_part (g, k));
          }
        em_governor_infer (one, "from-words");
        item (g, i)->is_used = TRUE;
        return TRUE;
      }
  return FALSE;
}

/* "no weld in the 4 mm water hole": how large the thing is. */
static gboolean
is_size_of_thing (const Governor *g, guint k, guint refusal)
{
  for (guint m = refusal + 1; m < k; m++)
    if (says (g, m, EM_SAYS_GLUE) == NULL)
      return FALSE;
  return k + 1 < g->c->end && em_item_size (g->c->items, k)->chain == 0 &&
         (says (g, k + 1, EM_SAYS_KIND) != NULL || says (g, k + 1, EM_SAYS_PLACE) != NULL || says (g, k + 1, EM_SAYS_THING) != NULL);
}

/* The thing behind the refusal, or NULL; *out_last is the last item that was looked at. */
static const EmSense *
thing_behind (const Governor *g, guint i, guint *out_last)
{
  const EmSense *thing = NULL;

  *out_last = i;
  for (guint k = i + 1; k < g->c->end && k <= i + EM_GOVERN_WINDOW + 2 && thing == NULL; k++)
    {
      if (em_item_is_soft_break (g->c->items, k) || (item (g, k)->type == EM_ITEM_SIZE && !is_across (g, k) && !is_size_of_thing (g, k, i)))
        break;
      thing = says (g, k, EM_SAYS_THING);
      *out_last = k;
    }
  return thing;
}

/* "COOLING CHANNEL PLUG": a thing, though it is a verb, too. */
static gboolean
is_plug (const Governor *g, guint i)
{
  static const char *const words[] = { "plug", "plugs", "fill", "patch" };

  return em_item_is_any_word_of (g->c->items, i, words, G_N_ELEMENTS (words));
}

/* The words from first to last, which alone say what is meant; "nicht am Bund schweißen" ends in its verb. */
static void
refuse_words (Governor *g, guint i, guint first, guint last, gboolean is_sure)
{
  EmLoose *one;

  last = before_tail (g, first, before_polite (g, first, last));
  while (last > first && says (g, last, EM_SAYS_VERB) != NULL && !is_plug (g, last))
    last--;
  first = skip_little (g, first, last);
  one = em_governor_add (g, "refuse", NULL, first, last);
  trim (g, one);
  one->is_general = TRUE;
  if (!is_sure)
    em_governor_infer (one, "from-words");
  item (g, i)->is_used = TRUE;
}

/* "no weld possible?" */
static gboolean
is_question (const Governor *g, guint i)
{
  for (guint k = i + 1; k < g->c->items->items->len && k <= i + EM_GOVERN_WINDOW && item (g, k)->type != EM_ITEM_LINE; k++)
    if (em_item_is_sign (g->c->items, k, '?'))
      return TRUE;
    else if (em_item_is_soft_break (g->c->items, k) || em_item_is_sign (g->c->items, k, '.'))
      return FALSE;
  return FALSE;
}

/* Between the things of a list. */
static gboolean
is_list_break (const Governor *g, guint i)
{
  static const char *const or[] = { "or", "nor", "oder", "ni", "ou" };

  return em_item_is_soft_break (g->c->items, i) || em_item_is_sign (g->c->items, i, ';') ||
         em_item_is_any_word_of (g->c->items, i, or, G_N_ELEMENTS (or));
}

static gboolean
has_list_break (const Governor *g, guint first, guint last)
{
  for (guint k = first; k < last; k++)
    if (is_list_break (g, k))
      return TRUE;
  return FALSE;
}

/* The end of the part of a list that begins at first. */
static guint
part_end (const Governor *g, guint first)
{
  while (first < g->c->end && !is_list_break (g, first) && !em_item_is_sign (g->c->items, first, '.') && item (g, first)->type != EM_ITEM_LINE)
    first++;
  return first;
}

/* A part that names one thing: by a word that is known for one, or in a list behind a colon any words without a size or a deed. */
static gboolean
is_named_part (const Governor *g, guint first, guint end, gboolean is_any)
{
  static const char *const told[] = { "is", "are", "was", "were", "has", "have", "ist", "sind", "war", "wird", "hat", "es", "está", "son", "están", "est", "sont" };
  gboolean has_thing = FALSE;

  for (guint k = first; k < end; k++)
    {
      gboolean is_place = says (g, k, EM_SAYS_PLACE) != NULL && says (g, k, EM_SAYS_KIND) == NULL;
      gboolean is_label = is_across (g, k + 1) || (k > first && is_across (g, k - 1)); /* "Ø", "dia" */

      if ((is_size (g, k) && !is_across (g, k)) || (item (g, k)->is_used && !is_label) || says (g, k, EM_SAYS_VERB) != NULL || says (g, k, EM_SAYS_REFUSE) != NULL)
        return FALSE;
      /* ", a new one is on order": what is told of it. */
      if (em_item_is_any_word_of (g->c->items, k, told, G_N_ELEMENTS (told)))
        return FALSE;
      has_thing |= is_place || says (g, k, EM_SAYS_THING) != NULL;
    }
  return end > first && end - first <= NAME_WINDOW && (has_thing || is_any);
}

static void
refuse_part (Governor *g, guint first, guint end)
{
  const EmSense *thing = NULL;
  EmLoose *one;

  for (guint k = first; k < end && thing == NULL; k++)
    thing = says (g, k, EM_SAYS_THING);
  one = em_governor_add (g, "refuse", thing != NULL ? em_thing_refused (thing) : NULL, skip_little (g, first, end - 1), end - 1);
  trim (g, one);
  one->is_general = TRUE;
  if (thing == NULL)
    em_governor_infer (one, "from-words");
}

/* "DO NOT WELD: threads, water fittings", "… threads and texture": what else is told from first on. */
static void
refuse_list (Governor *g, guint first, gboolean is_any)
{
  for (guint end; first < g->c->end; first = end + 1)
    {
      end = part_end (g, first);
      if (!is_named_part (g, first, end, is_any))
        return;
      refuse_part (g, first, end);
      if (end >= g->c->end || !is_list_break (g, end))
        return;
    }
}

/* "NO WELD ON DOWEL HOLES OR KEYWAY": what is told behind such a word is refused, too, whatever it is. */
static gboolean
is_or (const Governor *g, guint i)
{
  static const char *const or[] = { "or", "nor", "oder", "ni", "ou", "o" };

  return i < g->c->end && em_item_is_any_word_of (g->c->items, i, or, G_N_ELEMENTS (or));
}

/* "COOLING CHANNEL PLUG": a noun that ends the name, and the sentence or the part of it. */
static gboolean
ends_in_noun (const Governor *g, guint i)
{
  static const char *const nouns[] = { "cover", "covers", "fitting", "fittings", "connection", "connections", "plug", "plate", "cap", "caps", "seal", "port", "ports" };

  return i < g->c->end && (says (g, i, EM_SAYS_KIND) != NULL || is_plug (g, i) || (item (g, i)->type == EM_ITEM_UNKNOWN && !item (g, i)->is_talk) ||
                           em_item_is_any_word_of (g->c->items, i, nouns, G_N_ELEMENTS (nouns))) &&
         (i + 1 >= g->c->end || em_item_is_soft_break (g->c->items, i + 1) || em_item_is_sign (g->c->items, i + 1, '.'));
}

/* The last item of the name that ends in last, with its size behind it. */
static guint
with_size (const Governor *g, guint last)
{
  guint size = is_across (g, last + 1) ? last + 1 : last + 2;

  if (!is_across (g, size) || (size == last + 2 && item (g, last + 1)->type != EM_ITEM_SIGN && says (g, last + 1, EM_SAYS_LABEL) == NULL) ||
      em_item_is_soft_break (g->c->items, last + 1))
    return last;
  return size + 1 >= g->c->end || is_list_break (g, size + 1) || em_item_is_sign (g->c->items, size + 1, '.') ? size : last;
}

/* What stands behind the refusal, up to last. */
static void
refuse_behind (Governor *g, guint i, const EmSense *thing, guint last)
{
  /* "don't weld on the engraving please" */
  while (thing == NULL && last > i + 1 && says (g, last, EM_SAYS_AGENT) != NULL && says (g, last, EM_SAYS_GLUE) != NULL)
    last--;
  /* "NO WELD ON POLISHED LENS AREA" */
  while (thing != NULL && last + 1 < g->c->end &&
         (says (g, last + 1, EM_SAYS_THING) != NULL || says (g, last + 1, EM_SAYS_PLACE) != NULL))
    last++;
  if (thing != NULL && ends_in_noun (g, last + 1))
    last++;
  if (thing != NULL)
    last = with_size (g, last);
  if (thing != NULL && is_apart (g, last))
    return;
  /* "INSIDE DOWEL HOLES": which holes only their own words say. */
  /* "ON DATUM FACE OR DOWEL HOLES" */
  if (thing != NULL && has_list_break (g, i + 1, last))
    {
      refuse_list (g, i + 1, TRUE);
      item (g, i)->is_used = TRUE;
      return;
    }
  if (thing != NULL && em_thing_refused (thing) == NULL)
    refuse_words (g, i, i + 1, last, TRUE);
  else if (thing != NULL)
    em_governor_add (g, "refuse", thing->value, i, last)->is_general = TRUE;
  if (thing != NULL && last + 1 < g->c->end && is_list_break (g, last + 1))
    refuse_list (g, last + 2, is_or (g, last + 1));
  if (thing != NULL || last == i)
    return;
  /* "ON THE DATUM FACE OR THE DATE STAMP" */
  if (has_list_break (g, i + 1, last))
    {
      refuse_list (g, i + 1, TRUE);
      item (g, i)->is_used = TRUE;
    }
  else
    {
      refuse_words (g, i, i + 1, last, FALSE);
      /* "on the heater groove and the thread" */
      if (last + 1 < g->c->end && is_list_break (g, last + 1))
        refuse_list (g, last + 2, FALSE);
    }
}

/* The thing that is to be spared, before the word that says so or right behind it; EM_NO_ITEM: none that is known. */
static guint
spared_thing (const Governor *g, guint i)
{
  for (guint k = i; k-- > g->c->first && k + SPARED_WINDOW >= i;)
    if (says (g, k, EM_SAYS_THING) != NULL && !em_governor_is_none (g, k))
      return k;
    else if (em_item_is_sign (g->c->items, k, ';') || em_item_is_sign (g->c->items, k, ':') || says (g, k, EM_SAYS_REFUSE) != NULL)
      break;
  for (guint k = i + 1; k < g->c->end && k <= i + EM_GOVERN_WINDOW && !em_item_is_soft_break (g->c->items, k) && !is_size (g, k); k++)
    if (says (g, k, EM_SAYS_THING) != NULL)
      return k;
  return EM_NO_ITEM;
}

/* "those have to remain usable": what was told before, in a sentence of its own. */
static gboolean
is_pronoun_before (const Governor *g, guint i)
{
  static const char *const pronouns[] = { "those", "these", "they", "them", "this", "that", "it", "diese", "dieser", "dieses", "sie", "es", "der", "die", "das", "ils", "elles", "il", "elle", "estos", "estas", "este", "esta" };

  return i > g->c->first && em_item_is_any_word_of (g->c->items, i - 1, pronouns, G_N_ELEMENTS (pronouns)) &&
         (i - 1 == g->c->first || item (g, i - 2)->type == EM_ITEM_SIGN);
}

/* "THREADS TO BE PROTECTED", "the hole must stay open": nobody would weld it, but it lies near a repair, once there is one. */
static gboolean
is_spared (Governor *g, guint i)
{
  gboolean is_spare = g_strcmp0 (says (g, i, EM_SAYS_REFUSE)->value, "spare") == 0 && (g->has_size || g->grammar->protos->len > 0);
  guint thing = is_spare ? spared_thing (g, i) : EM_NO_ITEM;

  /* Whether that was read, nothing tells: it stays visible. */
  if (is_spare && thing == EM_NO_ITEM && is_pronoun_before (g, i))
    return TRUE;
  if (thing == EM_NO_ITEM)
    return FALSE;
  if (item (g, thing)->is_used)
    item (g, i)->is_used = TRUE;
  else
    em_near_spare (g, thing, i);
  return TRUE;
}

/* "DO NOT WELD THREADS": what must stay free of weld. */
void
em_refuse_read (Governor *g, guint i)
{
  const EmSense *thing;
  guint last;

  if (says (g, i, EM_SAYS_REFUSE) == NULL || item (g, i)->is_used || is_asked_for (g, i) || is_question (g, i) || is_spared (g, i))
    return;
  /* "DO NOT WELD: A, B", "DO NOT WELD - A" */
  if (i + 2 < g->c->end && (em_item_is_sign (g->c->items, i + 1, ':') ||
                            (i == g->c->first && em_item_is_sign (g->c->items, i + 1, '-') && !em_item_is_glued (g->c->items, i + 1))))
    {
      refuse_list (g, i + 2, TRUE);
      item (g, i)->is_used = TRUE;
      return;
    }
  thing = thing_behind (g, i, &last);
  if (thing == NULL && is_of_thing_near (g, i))
    {
      item (g, i)->is_used = TRUE;
      return;
    }
  if (thing == NULL && refuse_thing_before (g, i))
    return;
  /* "ZONE C: NOT TO BE WELDED", "The hole in the middle, do not fill." */
  if (thing == NULL && i > g->c->first && is_refused_end (g, i))
    {
      refuse_before (g, i);
      return;
    }
  if (thing == NULL && i == g->c->first && is_refused_end (g, i))
    {
      refuse_head (g, i);
      return;
    }
  refuse_behind (g, i, thing, last);
}
