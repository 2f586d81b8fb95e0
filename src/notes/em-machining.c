/* em-machining: who does what is done after welding.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-govern-parts.h"

#include <string.h>

enum { AGENT_WINDOW = 6 /* from what is done to who does it */, QUESTION_WINDOW = 8 /* from it to the mark of the question */ };

static const char *const away[] = { "off", "away", "down", "runter", "herunter", "weg", "ab", "fuera", "enlevée", "enlevé" };

/* "The nitriding will be ground off": what comes off is the coating. */
static gboolean
is_of_coating (const Governor *g, guint i)
{
  gboolean has_coating = FALSE, is_away = FALSE;

  for (guint k = i > g->c->first + AGENT_WINDOW ? i - AGENT_WINDOW : g->c->first; k < i; k++)
    has_coating |= says (g, k, EM_SAYS_COATING) != NULL;
  for (guint k = i + 1; k < g->c->end && k <= i + 3; k++)
    is_away |= em_item_is_any_word_of (g->c->items, k, away, G_N_ELEMENTS (away));
  return has_coating && is_away;
}

/* "nitriding we grind away before", "antes de soldar": not what is done after welding. */
gboolean
em_machining_is_before (const Governor *g, guint i)
{
  static const char *const before[] = { "before", "beforehand", "vorher", "davor", "zuvor", "antes", "avant", "previously" };
  static const char *const was[] = { "was", "were", "war", "waren", "fue", "era", "était" };

  /* "They say it was our EDM" */
  for (guint k = i; k > g->c->first && k + 2 > i; k--)
    if (em_item_is_any_word_of (g->c->items, k - 1, was, G_N_ELEMENTS (was)))
      return TRUE;
  if (is_of_coating (g, i))
    return TRUE;
  for (guint k = i + 1; k < g->c->end && k <= i + AGENT_WINDOW; k++)
    if (em_item_is_any_word_of (g->c->items, k, before, G_N_ELEMENTS (before)))
      return k + 1 == g->c->end || em_item_is_any_word_of (g->c->items, k + 1, away, G_N_ELEMENTS (away)) || em_item_is_soft_break (g->c->items, k + 1) || says (g, k + 1, EM_SAYS_VERB) != NULL ||
             (k + 2 < g->c->end && says (g, k + 2, EM_SAYS_VERB) != NULL);
  return FALSE;
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

/* "GRIND - BY US" at the beginning of a sentence: the dash parts nothing. */
static gboolean
is_dash_to_agent (const Governor *g, guint machining, guint i)
{
  return machining <= g->c->first + 1 && (i == machining + 1 || (i == machining + 2 && says (g, i - 1, EM_SAYS_MACHINING) != NULL)) && em_item_is_sign (g->c->items, i, '-') &&
         (says (g, i + 1, EM_SAYS_TIMES) != NULL || says (g, i + 1, EM_SAYS_AGENT) != NULL);
}

/* "WELD UP 6x OLD EJECTOR HOLES DIA 3.2": what is welded is a hole. */
static gboolean
is_hole_behind (const Governor *g, guint verb)
{
  for (guint k = verb + 1; k < g->c->end && k <= verb + EM_GOVERN_WINDOW && !em_item_is_soft_break (g->c->items, k); k++)
    {
      const EmSense *noun = says (g, k, EM_SAYS_KIND);

      if (noun != NULL)
        return noun->weight[RECESS] > 0 || noun->weight[BORE] > 0;
    }
  return FALSE;
}

/* "FILL OLD HOLE FLUSH", without a word of machining: how high to weld. */
static gboolean
is_filled_flush (const Governor *g, guint i)
{
  const GPtrArray *protos = g->grammar->protos;
  /* "FLUSH." behind what is filled. */
  gboolean is_filled = i == g->c->first && i + 1 == g->c->end && protos->len > 0 && ((const EmProto *) protos->pdata[protos->len - 1])->has_fill;

  for (guint k = g->c->first; k < g->c->end; k++)
    {
      const EmSense *machining = says (g, k, EM_SAYS_MACHINING), *verb = says (g, k, EM_SAYS_VERB);

      if (k != i && machining != NULL && g_strcmp0 (machining->value, "flush") != 0)
        return FALSE;
      is_filled |= verb != NULL && (g_strcmp0 (verb->value, "fill") == 0 || is_hole_behind (g, k));
    }
  return is_filled;
}

/* "TO BE REAMED .312 BY YOU": the size that the work at i makes, behind which who does it stands. */
static gboolean
is_own_size (const Governor *g, guint i, guint k)
{
  return k == i + 1 && is_size (g, k) && em_item_size (g->c->items, k)->chain == 0 &&
         (says (g, k + 1, EM_SAYS_AGENT) != NULL || (says (g, k + 1, EM_SAYS_TIMES) != NULL && says (g, k + 2, EM_SAYS_AGENT) != NULL));
}

/* "We do 3": whose the rest of the work is. */
static gboolean
is_share (const Governor *g, guint i)
{
  static const char *const words[] = { "do", "does", "machen", "macht", "hacemos", "hace", "faisons", "fait" };

  return i > g->c->first && says (g, i - 1, EM_SAYS_AGENT) != NULL && em_item_is_any_word_of (g->c->items, i, words, G_N_ELEMENTS (words)) &&
         is_size (g, i + 1) && em_item_size (g->c->items, i + 1)->is_whole && em_item_size (g->c->items, i + 1)->unit == EM_UNIT_NONE &&
         (i + 2 >= g->c->end || item (g, i + 2)->type == EM_ITEM_SIGN || em_item_is_soft_break (g->c->items, i + 2));
}

/* "…, C by you": whose the work that was named before is on the repair with that letter. */
static gboolean
is_share_of_code (const Governor *g, guint i)
{
  guint code = i - 1;

  if (i < g->c->first + 2 || says (g, i, EM_SAYS_AGENT) == NULL || item (g, i)->is_used ||
      (i + 1 < g->c->end && item (g, i + 1)->type != EM_ITEM_SIGN && !em_item_is_soft_break (g->c->items, i + 1)))
    return FALSE;
  code -= says (g, code, EM_SAYS_TIMES) != NULL || says (g, code, EM_SAYS_PREPOSITION) != NULL;
  if (code <= g->c->first || item (g, code)->length != 1 || !g_ascii_isupper (g->c->items->text[item (g, code)->start]) ||
      !em_item_is_soft_break (g->c->items, code - 1))
    return FALSE;
  for (guint k = g->c->first; k < code; k++)
    if (says (g, k, EM_SAYS_MACHINING) != NULL)
      return TRUE;
  return FALSE;
}

/* "can you grind", "Können Sie": the item is a word of a request, or begins with one. */
static gboolean
is_request (const EmItems *items, guint i)
{
  static const char *const words[] = { "can", "could", "would", "will", "können", "könnten", "könnt", "könntet", "kannst", "würden", "würdet", "puede", "pueden",
                                       "podría", "podrían", "podéis", "pouvez", "pourriez", "peux" };
  const EmItem *item = em_item (items, i);

  for (gsize k = 0; k < G_N_ELEMENTS (words); k++)
    {
      gsize length = strlen (words[k]);

      if (em_item_is_word (items, i, words[k]) || (item->length > length && items->text[item->start + length] == ' ' &&
                                                   g_ascii_strncasecmp (items->text + item->start, words[k], length) == 0))
        return TRUE;
    }
  return FALSE;
}

/* "Do you also grind it to size?": an office answers it; "can you polish it?" asks for the work. */
gboolean
em_machining_is_asked (const Governor *g, guint i)
{
  const EmItems *items = g->c->items;
  guint end = i;

  for (; end < items->items->len && end <= i + QUESTION_WINDOW && !em_item_is_sign (items, end, '?'); end++)
    if (em_item (items, end)->type == EM_ITEM_LINE || em_item_is_sign (items, end, '.') || em_item_is_sign (items, end, ','))
      return FALSE;
  if (end >= items->items->len || !em_item_is_sign (items, end, '?'))
    return FALSE;
  for (guint k = g->c->first; k <= i && k <= g->c->first + 2; k++)
    if (is_request (items, k))
      return FALSE;
  return !is_request (items, i);
}

/* "Bring your machine to us": a thing. */
static gboolean
is_thing (const Governor *g, guint i)
{
  static const char *const whose[] = { "your", "our", "my", "the", "a", "that", "this", "laser", "welding", "portable", "bring your", "bring the" };

  return i > g->c->first && em_item_is_word (g->c->items, i, "machine") && em_item_is_any_word_of (g->c->items, i - 1, whose, G_N_ELEMENTS (whose));
}

/* Who does the work at i: the nearest word for it in the part, the last one before it or any behind; EM_NO_ITEM: nobody is named. */
static guint
find_agent (const Governor *g, guint i)
{
  guint agent = EM_NO_ITEM;

  for (guint k = i > g->c->first + AGENT_WINDOW ? i - AGENT_WINDOW : g->c->first; k < g->c->end && k <= i + AGENT_WINDOW; k++)
    if (is_own_size (g, i, k))
      continue;
    else if (is_size (g, k) || (em_item_is_soft_break (g->c->items, k) && !is_dash_to_agent (g, i, k)) ||
        says (g, k, EM_SAYS_VERB) != NULL)
      {
        if (k > i)
          break;
        agent = EM_NO_ITEM;
      }
    else if (says (g, k, EM_SAYS_AGENT) != NULL && !item (g, k)->is_used)
      agent = k;
  return agent;
}

gboolean
em_machining_is_denied (const Governor *g, guint i)
{
  static const char *const nothing[] = { "nothing", "none", "nichts", "nada", "rien" };

  for (guint k = i > g->c->first + 2 ? i - 2 : g->c->first; k < g->c->end && k <= i + 3; k++)
    if (em_item_is_any_word_of (g->c->items, k, nothing, G_N_ELEMENTS (nothing)))
      return TRUE;
  return FALSE;
}

/* "0.5 zum Fräsen durch uns", "0.3 for grinding by us": who does what the stock is left for. */
static gboolean
is_stock_for (Governor *g, guint i)
{
  const EmSense *label = says (g, i, EM_SAYS_LABEL);
  guint agent = i + 1 + (says (g, i + 1, EM_SAYS_TIMES) != NULL || says (g, i + 1, EM_SAYS_PREPOSITION) != NULL);

  if (label == NULL || (label->roles & EM_ROLE_STOCK) == 0 || says (g, i, EM_SAYS_FINISH) != NULL || says (g, agent, EM_SAYS_AGENT) == NULL ||
      item (g, agent)->is_used || (agent == i + 1 && strcmp (says (g, agent, EM_SAYS_AGENT)->value, "customer") != 0) /* "0.3 proud please" */)
    return FALSE;
  em_governor_infer (em_governor_add (g, "finish", says (g, agent, EM_SAYS_AGENT)->value, agent, agent), "from-words");
  return TRUE;
}

/* "FIN GRD BY CUST", "we mill it ourselves": who does what is done after welding. */
void
em_machining_read (Governor *g, guint i)
{
  guint agent;
  EmLoose *one;

  if (is_stock_for (g, i))
    return;
  if (is_share_of_code (g, i))
    {
      em_governor_infer (em_governor_add (g, "finish", says (g, i, EM_SAYS_AGENT)->value, i, i), "from-words");
      return;
    }
  if (is_share (g, i))
    {
      em_governor_infer (em_governor_add (g, "finish", says (g, i - 1, EM_SAYS_AGENT)->value, i - 1, i), "from-words");
      return;
    }
  /* "weld and grind back" */
  if (says (g, i, EM_SAYS_MACHINING) != NULL && !item (g, i)->is_used && i > g->c->first + 1 &&
      em_item_is_soft_break (g->c->items, i - 1) &&
      !em_item_is_sign (g->c->items, i - 1, ',') && says (g, i - 2, EM_SAYS_VERB) != NULL && !has_agent_behind (g, i))
    {
      em_governor_infer (em_governor_add (g, "finish", "shop", i, i), "from-words");
      return;
    }
  if (says (g, i, EM_SAYS_MACHINING) == NULL || item (g, i)->is_used || is_thing (g, i) || em_machining_is_before (g, i) || em_machining_is_asked (g, i))
    return;
  agent = find_agent (g, i);
  if (em_machining_is_denied (g, i))
    {
      if (agent != EM_NO_ITEM && g_strcmp0 (says (g, agent, EM_SAYS_AGENT)->value, "customer") == 0)
        em_governor_infer (em_governor_add (g, "finish", "shop", MIN (i, agent), MAX (i, agent)), "from-words");
      return;
    }
  /* "We machined the pocket too deep": what was done before. */
  if (agent != EM_NO_ITEM && agent + 1 == i && g_strcmp0 (says (g, i, EM_SAYS_MACHINING)->value, "past") == 0)
    return;
  /* "fill it flush please" */
  if (agent != EM_NO_ITEM && g_strcmp0 (says (g, agent, EM_SAYS_AGENT)->value, "shop") == 0 &&
      g_strcmp0 (says (g, i, EM_SAYS_MACHINING)->value, "flush") == 0 && is_filled_flush (g, i))
    {
      item (g, i)->is_used = TRUE;
      return;
    }
  /* "grind all flush" */
  if (agent == EM_NO_ITEM && g_strcmp0 (says (g, i, EM_SAYS_MACHINING)->value, "flush") == 0 &&
      says (g, i - 1, EM_SAYS_SET) == NULL)
    {
      if (is_filled_flush (g, i))
        item (g, i)->is_used = TRUE;
      else
        em_governor_infer (em_governor_add (g, "finish", "shop", i, i), "from-words");
    }
  if (agent == EM_NO_ITEM)
    return;
  one = em_governor_add (g, "finish", says (g, agent, EM_SAYS_AGENT)->value, MIN (i, agent), MAX (i, agent));
  one->is_general = g->has_all;
  em_governor_infer (one, "from-words");
  use_other_work (g, i);
}
