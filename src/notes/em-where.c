/* em-where: what only says where a repair told before lies.
 *
 * The slot, pocket, groove or channel that a wall, a rib or a dam stands in is told in a sentence of its own, with a width, a depth or both,
 * and with nothing that is to be done to it. Which repair it is of is a choice, and marked, where several may lie in one.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-where.h"

#include "em-refer.h"
#include "em-remark.h"
#include "em-slots.h"

#include <string.h>

enum
{
  HEAD_NOUN = 3,        /* a noun of this weight stands for its kind */
  SHORT_SENTENCE = 12,  /* items of one that only tells of access */
  LONG_SENTENCE = 32,   /* items of one that tells more than where */
  HOSTS_MAX = 12,       /* repairs looked back over */
  OWN_MAX = 16,         /* sizes, or words, of a repair looked over */
  LED_WINDOW = 5        /* items from "in" to what lies there */
};

/* What a sentence says of a place. */
typedef struct
{
  guint    space;        /* the slot, or EM_NO_ITEM */
  guint    other;        /* another noun, or EM_NO_ITEM */
  guint    bare;         /* the first size without a name, or EM_NO_ITEM */
  guint    n_sizes, n_bare;
  guint32  roles;        /* width, depth and length told by name */
  gboolean is_led;       /* "in a slot" */
  gboolean has_access;
} Where;

/* No size of a slot. */
static const guint32 of_other = EM_ROLE_BUILD;

/* A slot, by its name alone or in "in a slot". */
static gboolean
is_space (const EmReader *r, guint i)
{
  return em_item_says (r->items, i, EM_SAYS_SLOT) != NULL;
}

/* "in a slot", against "slot is only". */
static gboolean
leads_into (const EmReader *r, guint i)
{
  static const char *const subjects[] = { "slot", "ranura", "rainure", "la rainure" };
  const char *text = r->items->text + em_item (r->items, i)->start;

  for (gsize k = 0; k < G_N_ELEMENTS (subjects); k++)
    if (g_ascii_strncasecmp (text, subjects[k], strlen (subjects[k])) == 0)
      return FALSE;
  return em_slots_is_in (r->items, i);
}

/* "low", "add", "worn": of a thing that is to be mended. */
static gboolean
tells_repair (const EmReader *r, guint i)
{
  static const EmSays never[] = { EM_SAYS_VERB, EM_SAYS_SAME, EM_SAYS_ONE_OF, EM_SAYS_REFUSE, EM_SAYS_SOUND, EM_SAYS_NUMBER, EM_SAYS_MACHINING };
  const EmSense *label = em_item_says (r->items, i, EM_SAYS_LABEL), *set = em_item_says (r->items, i, EM_SAYS_SET);
  const EmSense *noun = em_item_says (r->items, i, EM_SAYS_KIND);

  for (gsize k = 0; k < G_N_ELEMENTS (never); k++)
    if (em_item_says (r->items, i, never[k]) != NULL && em_item_says (r->items, i, EM_SAYS_GLUE) == NULL && em_item_says (r->items, i, EM_SAYS_ACCESS) == NULL &&
        label == NULL)
      return TRUE;
  if (set != NULL && set->set_field == NULL)
    return TRUE;
  /* "sits .375 down" */
  if (label != NULL && (label->roles & (EM_ROLE_BUILD | EM_ROLE_WORN)) != 0 && em_item_says (r->items, i, EM_SAYS_GLUE) == NULL &&
      em_item_says (r->items, i, EM_SAYS_TALK) == NULL)
    return TRUE;
  return noun != NULL && noun->value != NULL;
}

/* "D 12": a letter, which of a slot means its depth. */
static gboolean
is_letter_depth (const EmReader *r, const EmSize *size)
{
  return (size->roles & ~(guint32) EM_ROLE_SLOT) == EM_ROLE_DIAMETER && size->label_item != G_MAXUINT32 && em_item (r->items, size->label_item)->sign == 0 &&
         em_item (r->items, size->label_item)->length == 1;
}

/* What the size at i is of a slot: its width, depth or length; 0: not told; of_other: none of these. "is 3 wide" tells no wear. */
static guint32
role_at (const EmReader *r, guint i)
{
  const guint32 named = EM_ROLE_WIDTH | EM_ROLE_GAP | EM_ROLE_DEPTH | EM_ROLE_HEIGHT | EM_ROLE_LENGTH;
  const EmSize *size = em_item_size (r->items, i);
  guint32 roles = size->roles & ~(guint32) (EM_ROLE_WORN | EM_ROLE_SLOT);

  if (is_letter_depth (r, size))
    return EM_ROLE_DEPTH;
  /* "sits .375 down" */
  if (i > r->first && em_item_says (r->items, i - 1, EM_SAYS_TALK) != NULL && (roles & EM_ROLE_DEPTH) != 0)
    roles &= ~(guint32) EM_ROLE_BUILD;
  if ((roles & ~named) != 0 || size->unit == EM_UNIT_DEGREE || em_unit_is_area (size->unit) || em_unit_is_hardness (size->unit))
    return of_other;
  return (roles & EM_ROLE_LENGTH) != 0 ? EM_ROLE_LENGTH : (roles & (EM_ROLE_WIDTH | EM_ROLE_GAP)) != 0 ? EM_ROLE_WIDTH : roles != 0 ? EM_ROLE_DEPTH : 0;
}

/* A size that tells of this sentence, and no hardness, distance or name. */
static gboolean
is_told (const EmReader *r, guint i)
{
  return em_item (r->items, i)->type == EM_ITEM_SIZE && !em_item (r->items, i)->is_used &&
         (em_item_size (r->items, i)->roles & (EM_ROLE_REFERENCE | EM_ROLE_HARDNESS | EM_ROLE_CLEARANCE)) == 0;
}

/* FALSE: no slot has it. */
static gboolean
add_size (const EmReader *r, Where *w, guint i)
{
  guint32 role = role_at (r, i);

  if (role == of_other || (w->roles & role) != 0)
    return FALSE;
  w->bare = role == 0 && w->bare == EM_NO_ITEM ? i : w->bare;
  w->n_sizes++;
  w->n_bare += role == 0;
  w->roles |= role;
  return TRUE;
}

/* Reads the sentence; FALSE: it tells something else, too. */
static gboolean
look (const EmReader *r, Where *w)
{
  for (guint i = r->first; i < r->end; i++)
    {
      if (em_item (r->items, i)->type == EM_ITEM_SIZE)
        {
          if (is_told (r, i) && !add_size (r, w, i))
            return FALSE;
          continue;
        }
      if (em_item (r->items, i)->type != EM_ITEM_PHRASE)
        continue;
      /* "slot itself is 3 wide and is good": no place of the repair. */
      if (em_remark_has_noise (r->items, i, "good"))
        return FALSE;
      w->has_access |= em_item_says (r->items, i, EM_SAYS_ACCESS) != NULL;
      if (is_space (r, i))
        {
          w->space = w->space == EM_NO_ITEM ? i : w->space;
          w->is_led |= leads_into (r, i);
        }
      else if (tells_repair (r, i))
        return FALSE;
      else if (em_item_says (r->items, i, EM_SAYS_KIND) != NULL && !em_item (r->items, i)->is_used && w->other == EM_NO_ITEM)
        w->other = i;
    }
  for (guint i = w->space; w->space != EM_NO_ITEM && i-- > r->first && i + LED_WINDOW > w->space;)
    w->is_led |= em_item_says (r->items, i, EM_SAYS_PREPOSITION) != NULL;
  return TRUE;
}

/* The likeliest kind of what was told so far. */
static int
kind_of (const EmProto *proto)
{
  int kind = 0;

  for (int k = 1; k < EM_N_NOTE_KINDS; k++)
    kind = proto->weight[k] > proto->weight[kind] ? k : kind;
  return kind;
}

/* A slot was told of it before, and not only what is told now. */
static gboolean
has_slot (const EmReader *r, const EmProto *proto, const Where *w)
{
  for (guint i = 0; i < proto->sizes->len && i < OWN_MAX; i++)
    {
      guint size = g_array_index (proto->sizes, guint, i);
      gboolean is_slot = (em_item_size (r->items, size)->roles & EM_ROLE_SLOT) != 0;

      if (is_slot && (w->n_bare > 0 || role_at (r, size) == 0 || (role_at (r, size) & w->roles) != 0))
        return TRUE;
    }
  return FALSE;
}

/* "wall of the feed slot" over "feed slot 2.5 wide": the words of the repair name it, too. */
static gboolean
has_name (const EmReader *r, const EmProto *proto, guint name)
{
  for (guint i = proto->first; i <= proto->last && i < proto->first + OWN_MAX; i++)
    if (i != name && em_item (r->items, i)->type == EM_ITEM_PHRASE && em_item (r->items, i)->phrase == em_item (r->items, name)->phrase)
      return TRUE;
  return FALSE;
}

/* "seat" and "valve seat" */
static gboolean
has_kind_of (const EmReader *r, const EmProto *proto, guint noun)
{
  const EmSense *its = proto->noun != EM_NO_ITEM ? em_item_says (r->items, proto->noun, EM_SAYS_KIND) : NULL;
  const EmSense *other = em_item_says (r->items, noun, EM_SAYS_KIND);

  for (int k = 0; its != NULL && k < EM_N_NOTE_KINDS; k++)
    if (its->weight[k] >= HEAD_NOUN && other->weight[k] >= HEAD_NOUN)
      return TRUE;
  return FALSE;
}

static gboolean
lies_in_slots (const EmProto *proto)
{
  return proto->weight[SIDEWALL] + proto->weight[RIB] + proto->weight[DAM] > 0 && kind_of (proto) != BORE && kind_of (proto) != PIN;
}

/* Told by name, or in a row. */
static gboolean
has_length (const EmReader *r, const EmProto *proto)
{
  for (guint i = 0; i < proto->sizes->len && i < OWN_MAX; i++)
    {
      const EmSize *size = em_item_size (r->items, g_array_index (proto->sizes, guint, i));

      if (size->chain != 0 || (size->roles & EM_ROLE_LENGTH) != 0)
        return TRUE;
    }
  return FALSE;
}

/* The slot that is told may be this one's. */
static gboolean
may_have_slot (const EmReader *r, const EmProto *proto, const Where *w)
{
  if (proto->sizes->len == 0 || proto->has_fill || (kind_of (proto) == RECESS && !lies_in_slots (proto)) || has_slot (r, proto, w))
    return FALSE;
  return (w->roles & EM_ROLE_LENGTH) == 0 || (proto->weight[SIDEWALL] > 0 && !has_length (r, proto));
}

/* How well the repair fits what the sentence says; 0: not at all. */
static int
fitness (const EmReader *r, const EmProto *proto, const Where *w)
{
  enum { NAMED = 4, OF_SPACE = 3, LIKELY = 2, POSSIBLE = 1 };
  gboolean is_wall = lies_in_slots (proto), is_only_depth = w->n_bare == 0 && w->roles == EM_ROLE_DEPTH, is_of_space;

  if (w->n_sizes > 0 && !may_have_slot (r, proto, w))
    return 0;
  is_of_space = w->space != EM_NO_ITEM && has_name (r, proto, w->space);
  /* Of access the slot tells more than "end" or "floor". */
  if (w->other != EM_NO_ITEM && (w->n_sizes > 0 || w->space == EM_NO_ITEM))
    return has_kind_of (r, proto, w->other) && (w->is_led || is_wall || w->space == EM_NO_ITEM) ? NAMED : w->n_sizes == 0 && has_name (r, proto, w->other) ? OF_SPACE : 0;
  if (is_of_space)
    return is_wall || w->is_led || w->n_sizes == 0 ? OF_SPACE : 0;
  return is_wall && (w->is_led || !is_only_depth || (proto->roles & EM_ROLE_SLOT) != 0) ? LIKELY : w->is_led ? POSSIBLE : 0;
}

/* The repair that the sentence is of; NULL: none. *out_is_choice: another one may be meant. */
static EmProto *
find_host (const EmReader *r, const Where *w, gboolean *out_is_choice)
{
  const GPtrArray *protos = r->grammar->protos;
  EmProto *host = NULL;
  int best = 0;

  *out_is_choice = FALSE;
  for (guint k = protos->len; k-- > 0 && k + HOSTS_MAX >= protos->len;)
    {
      EmProto *proto = g_ptr_array_index (protos, k);
      int fits = fitness (r, proto, w);

      *out_is_choice |= host != NULL && fits >= best;
      if (fits <= best)
        continue;
      best = fits;
      host = proto;
    }
  return host;
}

/* The bare size stands where a slot's does: "pocket 6 x 15", "slot width 3", "slot opening is 3.5". */
static gboolean
is_behind_space (const EmReader *r, const Where *w)
{
  guint before = w->bare;

  while (before > r->first && em_item_says (r->items, before - 1, EM_SAYS_GLUE) != NULL)
    before--;
  before -= before > r->first && em_item_is_sign (r->items, before - 1, ':');
  return before > r->first && before - 1 == w->space;
}

/* Width and depth, or one of them, are told, and no more than these and a length. */
static gboolean
measures_slot (const EmReader *r, const Where *w)
{
  gboolean is_row = w->bare != EM_NO_ITEM && em_item_size (r->items, w->bare)->chain != 0;

  if (w->n_sizes == 0 || w->n_bare > 2 || (w->n_bare > 0 && (w->n_bare == 2) != is_row))
    return FALSE;
  if (w->n_bare > 0)
    return is_behind_space (r, w) && (w->roles & ~(guint32) (w->n_bare == 2 ? 0 : EM_ROLE_DEPTH)) == 0;
  return (w->roles & EM_ROLE_WIDTH) != 0 || (w->roles & EM_ROLE_DEPTH) != 0;
}

static void
take_sizes (const EmReader *r, EmProto *host, gboolean is_choice)
{
  for (guint i = r->first; i < r->end; i++)
    if (is_told (r, i))
      {
        EmSize *size = em_item_size (r->items, i);
        guint32 role = role_at (r, i);

        /* "slot opening 3.5" */
        if (role == 0 && size->chain == 0)
          role = EM_ROLE_WIDTH;
        size->roles = role == EM_ROLE_LENGTH ? role : role | EM_ROLE_SLOT;
        if (is_choice && size->reason == NULL)
          size->reason = "from-words";
        g_array_append_val (host->sizes, i);
        host->roles |= size->roles;
      }
}

/* "sits in slot 5 wide x 12 deep, tight" */
static void
give_tight (const EmReader *r, EmProto *host)
{
  static const char *const tight[] = { "tight", "narrow", "eng", "sehr eng", "étroit", "étroite", "serré", "estrecho", "estrecha" };

  for (guint i = 0; i < host->given->len; i++)
    if (strcmp (g_array_index (host->given, EmGiven, i).field.field, "access") == 0)
      return;
  for (guint i = r->first; i < r->end; i++)
    if (em_item_is_any_word_of (r->items, i, tight, G_N_ELEMENTS (tight)))
      {
        EmGiven given = em_given_new ("access", "restricted", em_item (r->items, i));

        given.field.state = EM_READ_INFERRED;
        given.field.reason = "from-words";
        g_array_append_val (host->given, given);
        em_item (r->items, i)->is_used = TRUE;
        return;
      }
}

static void
use_words (const EmReader *r)
{
  static const EmSays used[] = { EM_SAYS_KIND, EM_SAYS_SLOT, EM_SAYS_LABEL, EM_SAYS_PREPOSITION, EM_SAYS_PLACE, EM_SAYS_TIMES, EM_SAYS_UNIT };

  for (guint i = r->first; i < r->end; i++)
    for (gsize k = 0; k < G_N_ELEMENTS (used); k++)
      em_item (r->items, i)->is_used |= em_item_says (r->items, i, used[k]) != NULL;
}

/* "RESTRICTED, SEAT IS 60 DOWN THE HOLE": how deep a thing lies is no size of it, and is left to be seen. */
static gboolean
is_only_down (const Where *w)
{
  return w->n_sizes == 1 && w->roles == EM_ROLE_DEPTH && w->space == EM_NO_ITEM && w->other != EM_NO_ITEM;
}

/* "ACCESS TO SLIT RESTRICTED", "END OF SLOT OPEN, GOOD ACCESS": how what lies there is reached, and no more. */
static gboolean
take_access (EmReader *r, const Where *w)
{
  EmProto *named[1];
  gboolean is_choice;

  if (!w->has_access || (w->n_sizes > 0 && !is_only_down (w)) || (w->space == EM_NO_ITEM && w->other == EM_NO_ITEM))
    return FALSE;
  if (em_refer_items (r, r->first, named, 1) == 0 && (named[0] = find_host (r, w, &is_choice)) == NULL)
    return FALSE;
  em_reader_take_aside (r, named[0], r->first, r->end, FALSE);
  for (guint i = r->first; i < r->end; i++)
    if (is_told (r, i))
      em_item_size (r->items, i)->roles |= EM_ROLE_REFERENCE;
  use_words (r);
  return TRUE;
}

/* "Access: poor", "access to rib is very tight": the noun and what is said of it stand apart. Returns that word's item, or EM_NO_ITEM. */
static guint
access_apart (const EmReader *r, const char **out_access)
{
  static const char *const nouns[] = { "access", "accessibility", "Zugang", "Zugänglichkeit", "accès", "accessibilité", "acceso", "accesibilidad" };
  static const char *const bad[] = { "tight", "poor", "bad", "difficult", "restricted", "limited", "awkward", "narrow", "hard", "schlecht", "schwierig", "eng", "beengt", "eingeschränkt",
                                     "difficile", "mauvais", "limité", "restreint", "étroit", "difícil", "malo", "limitado", "restringido", "estrecho" };
  static const char *const good[] = { "good", "easy", "open", "free", "fine", "clear", "ok", "gut", "frei", "leicht", "offen", "bon", "facile", "libre", "dégagé", "bueno", "fácil", "abierto" };
  static const char *const none[] = { "not", "no", "nicht", "kein", "pas" };
  gboolean has_noun = FALSE;

  for (guint i = r->first; i < r->end; i++)
    {
      has_noun |= em_item_is_any_word_of (r->items, i, nouns, G_N_ELEMENTS (nouns));
      if (!has_noun || em_item (r->items, i)->is_used)
        continue;
      if (em_item_is_any_word_of (r->items, i, none, G_N_ELEMENTS (none)))
        return EM_NO_ITEM;
      *out_access = em_item_is_any_word_of (r->items, i, bad, G_N_ELEMENTS (bad)) ? "restricted" : em_item_is_any_word_of (r->items, i, good, G_N_ELEMENTS (good)) ? "open" : NULL;
      if (*out_access != NULL)
        return i;
    }
  return EM_NO_ITEM;
}

/* The same as a sentence of its own. TRUE: taken. */
static gboolean
take_access_apart (EmReader *r, const Where *w)
{
  const char *access = NULL;
  guint word = w->has_access || w->n_sizes > 0 || r->end - r->first > SHORT_SENTENCE ? EM_NO_ITEM : access_apart (r, &access);
  EmProto *host = NULL;
  EmGiven given;
  gboolean is_choice;

  if (word == EM_NO_ITEM || r->current == NULL)
    return FALSE;
  if (em_refer_items (r, r->first, &host, 1) == 0)
    host = w->space != EM_NO_ITEM || w->other != EM_NO_ITEM ? find_host (r, w, &is_choice) : NULL;
  host = host != NULL ? host : r->current;
  given = em_given_new ("access", access, em_item (r->items, word));
  given.field.state = EM_READ_INFERRED;
  given.field.reason = "from-words";
  g_array_append_val (host->given, given);
  for (guint i = r->first; i < r->end; i++)
    em_item (r->items, i)->is_used = TRUE;
  return TRUE;
}

gboolean
em_where_take (EmReader *r)
{
  Where w = { .space = EM_NO_ITEM, .other = EM_NO_ITEM, .bare = EM_NO_ITEM };
  gboolean is_choice;
  EmProto *host;

  if (r->grammar->protos->len == 0 || r->end - r->first > LONG_SENTENCE || em_item (r->items, r->first)->is_row || !look (r, &w))
    return FALSE;
  if (take_access (r, &w) || take_access_apart (r, &w))
    return TRUE;
  if (w.space == EM_NO_ITEM || !measures_slot (r, &w))
    return FALSE;
  host = find_host (r, &w, &is_choice);
  if (host == NULL)
    return FALSE;
  take_sizes (r, host, is_choice);
  em_reader_take_aside (r, host, r->first, r->end, FALSE);
  give_tight (r, host);
  use_words (r);
  if (host == r->current)
    host->last = r->end - 1;
  return TRUE;
}
