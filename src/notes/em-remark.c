/* em-remark: sentences and parts of them that tell an office something though no field has a use for them.
 *
 * What counts is the whole part: "one of the lads dropped a spanner" has no word that would matter alone.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-remark.h"

#include "em-clause.h"

#include <string.h>

enum { PART_WINDOW = 30 /* items of a part */,
       EVENT_WORDS = 3 /* who, what became of it, of what */,
       ACTOR_WORDS = 4 /* who did it, what, to what */,
       WISH_WORDS = 2,
       SENTENCE_WORDS = 6,
       VERDICT_WORDS = 2 /* what, and that it is good */,
       NONE_WORDS = 2,
       NONE_WORDS_BEHIND = 3 /* behind a comma */ };

gboolean
em_remark_has_noise (const EmItems *items, guint i, const char *value)
{
  const EmItem *item = em_item (items, i);

  for (guint k = 0; item->type == EM_ITEM_PHRASE && k < item->phrase->n_senses; k++)
    if (item->phrase->sense[k]->says == EM_SAYS_NOISE && g_strcmp0 (item->phrase->sense[k]->value, value) == 0)
      return TRUE;
  return FALSE;
}

/* The part of a sentence ends before it: at a mark, at a new line. */
static gboolean
is_break (const EmItems *items, guint i)
{
  static const char marks[] = ".?!;:,|()*>";
  const EmItem *item = em_item (items, i);

  if (item->type != EM_ITEM_SIGN)
    return item->type == EM_ITEM_LINE;
  for (gsize k = 0; marks[k] != '\0'; k++)
    if (item->sign == (gunichar) marks[k])
      return TRUE;
  return em_item_is_soft_break (items, i);
}

static gboolean
begins_sentence (const EmItems *items, guint i)
{
  return i == 0 || em_item (items, i - 1)->type == EM_ITEM_LINE || em_item_is_sign (items, i - 1, '.') || em_item_is_sign (items, i - 1, '-') ||
         em_item_is_sign (items, i - 1, '*') || em_item_is_sign (items, i - 1, 0x2022);
}

/* "NO OTHER WORK", "please no filler with beryllium", "aucun autre travail". */
static gboolean
is_none (const EmItems *items, guint first, guint end)
{
  static const char *const words[] = { "no", "without", "kein", "keine", "keinen", "ohne", "sin", "ningún", "ninguna", "aucun", "aucune", "sans" };
  static const char *const asked[] = { "please", "pls", "bitte", "but", "and", "aber", "pero", "mais" };

  while (first < end && em_item_is_any_word_of (items, first, asked, G_N_ELEMENTS (asked)))
    first++;
  return first < end && em_item_is_any_word_of (items, first, words, G_N_ELEMENTS (words));
}

gboolean
em_remark_is_verdict (const EmItems *items, guint i)
{
  if (!em_remark_has_noise (items, i, "good"))
    return FALSE;
  if (i + 1 < items->items->len && !is_break (items, i + 1))
    return FALSE;
  return i > 0 && em_item (items, i - 1)->type != EM_ITEM_LINE && !em_item_is_sign (items, i - 1, '.');
}

/* A field has used it: not only as an article, a little word or the name of the place. */
static gboolean
is_read (const EmItems *items, guint i)
{
  static const EmSays little[] = { EM_SAYS_GLUE, EM_SAYS_PREPOSITION, EM_SAYS_TO, EM_SAYS_NUMBER, EM_SAYS_PLACE, EM_SAYS_NOISE };

  if (!em_item (items, i)->is_used)
    return FALSE;
  for (gsize k = 0; em_item_says (items, i, EM_SAYS_KIND) == NULL && k < G_N_ELEMENTS (little); k++)
    if (em_item_says (items, i, little[k]) != NULL)
      return FALSE;
  return TRUE;
}

/* The item is one of the words, or a phrase that ends in one: "could you quote". */
static gboolean
ends_in (const EmItems *items, guint i, const char *const *words, gsize n_words)
{
  const EmItem *item = em_item (items, i);

  for (gsize k = 0; k < n_words; k++)
    {
      gsize n = strlen (words[k]);
      const char *tail = items->text + item->start + item->length - MIN (n, item->length);

      if (n <= item->length && g_ascii_strncasecmp (tail, words[k], n) == 0 && (n == item->length || tail[-1] == ' '))
        return TRUE;
    }
  return FALSE;
}

gboolean
em_remark_asks_as_all (const EmItems *items, guint i)
{
  static const char *const words[] = { "quote", "price", "look", "look at", "offer", "Angebot", "anbieten", "anschauen", "ansehen", "cotizar",
                                       "presupuesto", "precio", "mirar",
                                       "devis", "chiffrer", "regarder", "prix", "oferta", "offre" };

  return ends_in (items, i, words, G_N_ELEMENTS (words));
}

/* "Please clean the threads", "Bitte gut verpacken": a wish of its own, and no call to quote, to weld or to take care. */
static gboolean
is_wish (const EmItems *items, guint first, guint end)
{
  static const char *const asked[] = { "please", "pls", "plz", "kindly", "bitte", "por favor", "favor de", "merci de", "svp" };
  static const char *const empty[] = { "care", "careful", "carefully", "easy", "see", "find", "note", "follow", "following", "below", "list",
                                       "add", "attached", "advise",
                                       "siehe", "folgendes", "folgende", "laut", "Liste", "beachten", "vorsichtig", "aufpassen", "melden",
                                       "Fragen", "cuidado", "ver",
                                       "siguiente", "attention", "scharf", "sharp", "voir", "trouver", "suivant" };
  static const EmSays work[] = { EM_SAYS_VERB, EM_SAYS_MACHINING, EM_SAYS_ACCESS, EM_SAYS_SAME, EM_SAYS_FINISH };

  if (!em_item_is_any_word_of (items, first, asked, G_N_ELEMENTS (asked)))
    return FALSE;
  for (guint i = first + 1; i < end; i++)
    {
      if (em_remark_asks_as_all (items, i) || ends_in (items, i, empty, G_N_ELEMENTS (empty)))
        return FALSE;
      for (gsize k = 0; k < G_N_ELEMENTS (work); k++)
        if (em_item_says (items, i, work[k]) != NULL)
          return FALSE;
      if (em_item_says (items, i, EM_SAYS_LABEL) != NULL && (em_item_says (items, i, EM_SAYS_LABEL)->roles & EM_ROLE_BUILD) != 0)
        return FALSE;
    }
  return TRUE;
}

/* "Keep the cooling channel open", "laisser le trou central ouvert": how something is to stay, in words round its name. */
static gboolean
is_to_stay (const EmItems *items, guint first, guint end)
{
  static const char *const keep[] = { "keep", "leave", "laisser", "laissez", "dejar", "dejen", "dejad", "mantener", "garder" };
  static const char *const so[] = { "open", "free", "clear", "alone", "untouched", "closed", "as is", "in", "ouvert", "ouverte", "ouverts", "libre", "libres", "abierto",
                                    "abierta", "abiertos", "así", "tel quel" };
  static const char *const asked[] = { "please", "pls", "merci de", "por favor" };

  while (first < end && em_item_is_any_word_of (items, first, asked, G_N_ELEMENTS (asked)))
    first++;
  return first + 2 < end && em_item_is_any_word_of (items, first, keep, G_N_ELEMENTS (keep)) && ends_in (items, end - 1, so, G_N_ELEMENTS (so));
}

/* "Second shift put a wrench on the lip", but not "the operator says …": who did something stands before it. */
static gboolean
is_of_actor (const EmItems *items, guint first, guint end)
{
  static const char *const says[] = { "say", "says", "said", "think", "thinks", "want", "wants", "wanted", "ask", "asks", "asked", "report",
                                      "reports", "reported", "found", "finds",
                                      "noticed", "called", "calls", "needs", "sagt", "meint", "will", "fragt", "braucht", "meldet", "hat gefunden",
                                      "dice", "dijo", "quiere",
                                      "pide", "encontró", "dit", "demande", "veut", "signale", "a trouvé" };

  while (first < end && (em_item_says (items, first, EM_SAYS_GLUE) != NULL || em_item_says (items, first, EM_SAYS_NUMBER) != NULL) &&
         !em_remark_has_noise (items, first, "actor"))
    first++;
  if (first + ACTOR_WORDS > end || !em_remark_has_noise (items, first, "actor"))
    return FALSE;
  for (guint i = first + 1; i < end; i++)
    if (em_item_is_any_word_of (items, i, says, G_N_ELEMENTS (says)) || em_item_says (items, i, EM_SAYS_MACHINING) != NULL)
      return FALSE;
  return TRUE;
}

/* "Somebody dropped a wrench on the parting line and there's a ding": the part tells how it came, even where it names the place. 0: no such part. */
static guint
part_of_actor (const EmItems *items, guint first)
{
  guint end = first;

  if (!em_remark_has_noise (items, first, "actor"))
    return 0;
  for (; end < items->items->len && end < first + PART_WINDOW && !is_break (items, end); end++)
    if (em_item (items, end)->type == EM_ITEM_SIZE || em_item_says (items, end, EM_SAYS_REFUSE) != NULL || em_item_says (items, end, EM_SAYS_FINISH) != NULL)
      return 0;
  return is_of_actor (items, first, end) ? end : 0;
}

/* "welding", "you start" within a few words behind "before". */
static gboolean
leads_to_weld (const EmItems *items, guint before)
{
  static const char *const start[] = { "start", "starting", "begin", "beginning", "repair", "anfangt", "anfangen", "beginnt", "Reparatur", "Beginn",
                                       "empezar", "comenzar", "reparar", "commencer", "réparer", "réparation", "reparación" };

  for (guint k = before + 1; k < items->items->len && k <= before + 4 && !is_break (items, k); k++)
    if (em_item_says (items, k, EM_SAYS_VERB) != NULL || em_item_is_any_word_of (items, k, start, G_N_ELEMENTS (start)))
      return TRUE;
  return FALSE;
}

/* "GRIND OUT BEFORE WELDING", "Nitrierschicht vorher abschleifen": what is to be done first, in a part without a size. 0: none such begins at first. */
static guint
preparation_end (const EmItems *items, guint first)
{
  static const char *const words[] = { "before", "prior to", "vor dem", "vor", "bevor", "avant", "avant de", "antes", "antes de", "antes del" };
  static const char *const alone[] = { "beforehand", "vorher", "zuvor", "vorab", "first", "previamente", "au préalable", "préalablement" };
  guint end = first, n_words = 0;
  gboolean has_work = FALSE, is_first = FALSE, is_alone = FALSE;

  for (; end < items->items->len && end < first + PART_WINDOW && !is_break (items, end); end++)
    {
      if (em_item (items, end)->type == EM_ITEM_SIZE && (em_item_size (items, end)->roles & EM_ROLE_REFERENCE) == 0)
        return 0;
      n_words += em_item (items, end)->type == EM_ITEM_PHRASE || em_item (items, end)->type == EM_ITEM_UNKNOWN;
      has_work |= em_item_says (items, end, EM_SAYS_MACHINING) != NULL || em_remark_has_noise (items, end, "strip");
      is_first |= em_item_is_any_word_of (items, end, words, G_N_ELEMENTS (words)) && leads_to_weld (items, end);
      is_alone |= em_item_is_any_word_of (items, end, alone, G_N_ELEMENTS (alone));
    }
  return n_words >= WISH_WORDS && (is_first || (is_alone && has_work)) ? end : 0;
}

/* "he couldn't say how deep", "we have no lathe that swings it": what one has not, or does not know, or another wants. */
static gboolean
is_of_person (const EmItems *items, guint first, guint end)
{
  static const char *const persons[] = { "he", "he'll", "she", "they", "his boss", "doesn't know", "doesn't", "don't know", "do not know", "couldn't", "he couldn't", "we don't", "we do not", "we cannot", "we can't",
                                         "we have no", "we've no", "er", "wir können", "wir haben kein", "wir haben keine", "wir haben keinen", "no tenemos", "no sabemos", "él", "elle", "on n'a", "nous n'avons" };

  for (guint i = first; i < end; i++)
    if (em_remark_asks_as_all (items, i) || em_item_says (items, i, EM_SAYS_MACHINING) != NULL || em_item_says (items, i, EM_SAYS_VERB) != NULL || em_item_says (items, i, EM_SAYS_KIND) != NULL)
      return FALSE;
  return em_item_is_any_word_of (items, first, persons, G_N_ELEMENTS (persons));
}

guint
em_remark_end (const EmItems *items, guint first)
{
  gboolean has_event = FALSE;
  guint end = first, n_words = 0;

  if (em_item (items, first)->told_end != 0)
    return em_item (items, first)->told_end;
  if (is_break (items, first) || (first > 0 && !is_break (items, first - 1)))
    return 0;
  if (preparation_end (items, first) != 0)
    return preparation_end (items, first);
  if (part_of_actor (items, first) != 0)
    return part_of_actor (items, first);
  for (; end < items->items->len && end < first + PART_WINDOW && !is_break (items, end); end++)
    {
      const EmItem *item = em_item (items, end);

      if (is_read (items, end) || em_item_says (items, end, EM_SAYS_REFUSE) != NULL)
        return 0;
      n_words += item->type == EM_ITEM_PHRASE || item->type == EM_ITEM_UNKNOWN;
      has_event |= em_remark_has_noise (items, end, "event");
    }
  if ((has_event && n_words >= EVENT_WORDS) || is_of_actor (items, first, end) ||
      is_to_stay (items, first, end) || (n_words >= WISH_WORDS && is_wish (items, first, end)) || (n_words >= VERDICT_WORDS && em_remark_is_verdict (items, end - 1)))
    return end;
  if (n_words >= 4 && is_of_person (items, first, end))
    return end;
  /* A whole sentence of which no field used a word tells something that nobody foresaw. */
  if (n_words >= SENTENCE_WORDS && begins_sentence (items, first) && end < items->items->len &&
      (em_item_is_sign (items, end, '.') || em_item_is_sign (items, end, '!')))
    return end;
  /* ", sin punta": what is wrong with the thing told before. */
  return n_words >= (begins_sentence (items, first) ? NONE_WORDS : NONE_WORDS_BEHIND) && is_none (items, first, end) ? end : 0;
}

gboolean
em_remark_is_town (const EmItems *items, guint i)
{
  static const char *const from[] = { "from", "aus", "de", "desde", "depuis" };
  static const char *const farewells[] = { "regards", "greetings", "cheers", "wishes", "rgds", "Gruß", "Grüße", "Gruss", "Grüsse", "LG", "VG",
                                           "saludo", "saludos",
                                           "salutations", "cordialement" };
  static const char *const phrases[] = { "regards from", "greetings from", "wishes from", "Gruß aus", "Grüße aus", "LG aus", "VG aus",
                                         "saludos desde", "saludos de" };
  const EmItem *item = em_item (items, i);

  if (i == 0 || item->type != EM_ITEM_UNKNOWN || (item->flags & EM_TOKEN_CAPITAL) == 0)
    return FALSE;
  if (em_item_is_any_word_of (items, i - 1, from, G_N_ELEMENTS (from)))
    return i > 1 && ends_in (items, i - 2, farewells, G_N_ELEMENTS (farewells));
  /* One phrase of the lexicon. */
  return ends_in (items, i - 1, phrases, G_N_ELEMENTS (phrases));
}

gboolean
em_remark_is_part_name (const EmItems *items, guint i)
{
  static const char *const heads[] = { "dorn", "kern", "form", "ring", "platte", "stift", "buchse", "flasche", "kappe", "deckel", "leiste",
                                       "backe", "backen", "schieber",
                                       "scheibe", "kasten", "kiste", "eimer", "teil", "teile", "matrize", "stempel", "einsatz", "werkzeug",
                                       "kanal", "zapfen", "becher",
                                       "kanister", "profil", "folie", "rohr", "kopf", "block", "liste", "tabelle", "blatt", "schein", "protokoll",
                                       "formular", "karte",
                                       "bericht", "anfrage", "auftrag", "keil", "nut", "bolzen", "nadel", "spindel", "schnecke", "halter", "rahmen", "maschine" };
  enum { LEAST_AHEAD = 4 };
  const EmItem *item = em_item (items, i);

  if (item->type != EM_ITEM_UNKNOWN || (item->flags & (EM_TOKEN_CAPITAL | EM_TOKEN_UPPER)) == 0)
    return FALSE;
  for (gsize k = 0; k < G_N_ELEMENTS (heads); k++)
    {
      gsize n = strlen (heads[k]);

      if (item->length >= n + LEAST_AHEAD && g_ascii_strncasecmp (items->text + item->start + item->length - n, heads[k], n) == 0)
        return TRUE;
    }
  return FALSE;
}
