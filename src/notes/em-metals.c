/* em-metals: which of several metals is of which repair.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-metals.h"

#include <string.h>

enum
{
  METALS_MAX = 6, REPAIRS_MAX = 64,
  NAME_WINDOW = 5,      /* items from a metal back to its part's name */
  NAME_MIN = 3,         /* bytes of a name */
  COMPOUND_MIN = 4,     /* and of one that may end a longer word: "Stift" in "Kernstift" */
  HARDNESS_WINDOW = 4,
  TEXT_MAX = 400        /* bytes of a repair that are looked over */
};

typedef struct
{
  const EmMetal *metal;
  guint32        from, to;     /* the name of its part */
  guint          first_name;   /* its first item */
  gboolean       is_rest;
  guint          hardness;     /* its item, or EM_NO_ITEM */
} Part;

/* "all other", "the rest": what no name tells. */
static gboolean
is_rest_word (const EmItems *items, guint i)
{
  static const char *const words[] = { "other", "others", "rest", "remaining", "übrige", "übrigen", "restliche", "andere", "anderen", "otros", "otras", "resto",
                                       "demás", "autres", "reste", "all other", "all others", "the others", "the rest" };

  return em_item_is_any_word_of (items, i, words, G_N_ELEMENTS (words));
}

/* What stands between a part and its metal. */
static gboolean
is_between (const EmItems *items, guint i)
{
  static const EmSays little[] = { EM_SAYS_GLUE, EM_SAYS_PREPOSITION, EM_SAYS_MATERIAL, EM_SAYS_ALL };

  for (gsize k = 0; k < G_N_ELEMENTS (little); k++)
    if (em_item_says (items, i, little[k]) != NULL)
      return TRUE;
  return em_item_is_sign (items, i, ':') || em_item_is_sign (items, i, '=') || em_item_is_sign (items, i, '-');
}

static gboolean
ends_part (const EmItems *items, guint i)
{
  const EmItem *item = em_item (items, i);

  return item->type == EM_ITEM_LINE || item->type == EM_ITEM_SIZE || em_item_is_sign (items, i, '.') || em_item_is_sign (items, i, ';') ||
         em_item_is_sign (items, i, '/') || (em_item_is_soft_break (items, i) && !em_item_is_sign (items, i, '-')) ||
         em_phrase_find (item->phrase, EM_SAYS_BASE) != NULL;
}

/* The words right before the metal; FALSE: none that name a part. */
static gboolean
find_name (const EmItems *items, Part *part)
{
  guint last = part->metal->item, first;

  while (last > 0 && last + NAME_WINDOW > part->metal->item && !is_rest_word (items, last - 1) && is_between (items, last - 1))
    last--;
  if (last == 0 || ends_part (items, last - 1))
    return FALSE;
  part->is_rest = is_rest_word (items, last - 1);
  first = last - 1;
  /* "INSERT B" */
  if (em_item (items, first)->length < NAME_MIN && first > 0 && !ends_part (items, first - 1) && em_item_says (items, first - 1, EM_SAYS_GLUE) == NULL)
    first--;
  part->first_name = first;
  part->from = em_item (items, first)->start;
  part->to = em_item (items, last - 1)->start + em_item (items, last - 1)->length;
  return part->is_rest || part->to - part->from >= NAME_MIN;
}

static guint
find_hardness (const EmItems *items, guint metal)
{
  for (guint i = metal + 1; i < items->items->len && i <= metal + HARDNESS_WINDOW; i++)
    {
      const EmItem *item = em_item (items, i);

      if (item->type == EM_ITEM_LINE || em_phrase_find (item->phrase, EM_SAYS_BASE) != NULL)
        break;
      if (item->type == EM_ITEM_SIZE && (em_unit_is_hardness (em_item_size (items, i)->unit) || (em_item_size (items, i)->roles & EM_ROLE_HARDNESS) != 0))
        return i;
    }
  return EM_NO_ITEM;
}

/* The text of the repair, from the beginning of its line on. */
static char *
text_of (const EmItems *items, const EmProto *proto)
{
  guint32 from = em_item (items, proto->first)->start, to = em_item (items, proto->last)->start + em_item (items, proto->last)->length;
  g_autofree char *text = NULL;

  while (from > 0 && items->text[from - 1] != '\n' && to - from < TEXT_MAX)
    from--;
  text = g_strndup (items->text + from, MIN (to - from, TEXT_MAX));
  return g_utf8_casefold (text, -1);
}

/* A whole word, or the end of a longer one. */
static gboolean
names (const char *text, const char *name)
{
  for (const char *at = strstr (text, name); at != NULL; at = strstr (at + 1, name))
    {
      gboolean is_begun = at == text || !(g_ascii_isalnum (at[-1]) || (guchar) at[-1] >= 0x80), is_ended = !g_ascii_isalnum (at[strlen (name)]);

      if (is_ended && (is_begun || strlen (name) >= COMPOUND_MIN))
        return TRUE;
    }
  return FALSE;
}

static void
drop_general (EmGrammar *grammar, const char *field, guint32 start)
{
  for (guint i = grammar->general->len; i-- > 0;)
    {
      const EmReadField *general = &g_array_index (grammar->general, EmGiven, i).field;

      if (strcmp (general->field, field) == 0 && general->start == start)
        g_array_remove_index (grammar->general, i);
    }
}

static EmGiven
given_of (const EmGrammar *grammar, const Part *part, gboolean is_hardness)
{
  const EmItem *item = em_item (grammar->items, is_hardness ? part->hardness : part->metal->item);
  EmGiven given = em_given_new (is_hardness ? "hardness" : "base", is_hardness ? NULL : part->metal->base, item);

  given.size_item = is_hardness ? part->hardness : EM_NO_ITEM;
  given.field.state = EM_READ_INFERRED;
  given.field.reason = "from-words";
  return given;
}

/* Gives the metal and its hardness to a repair, or to all. */
static void
give (EmGrammar *grammar, const Part *part, GArray *to)
{
  EmGiven base = given_of (grammar, part, FALSE);

  g_array_append_val (to, base);
  if (part->hardness != EM_NO_ITEM)
    {
      EmGiven hardness = given_of (grammar, part, TRUE);

      g_array_append_val (to, hardness);
    }
}

static void
take_back (EmGrammar *grammar, const Part *part)
{
  for (guint i = part->first_name; i <= part->metal->item; i++)
    em_item (grammar->items, i)->is_used = TRUE;
  drop_general (grammar, "base", em_item (grammar->items, part->metal->item)->start);
  if (part->hardness == EM_NO_ITEM)
    return;
  em_item (grammar->items, part->hardness)->is_used = TRUE;
  drop_general (grammar, "hardness", em_item (grammar->items, part->hardness)->start);
}

/* "pins M2" are of "pin 12 dia". */
static void
drop_plural (char *name)
{
  gsize n = strlen (name);

  if (n > NAME_MIN && name[n - 1] == 's')
    name[n - 1] = '\0';
}

static gboolean
is_named_by_any (char **texts, guint n_repairs, const char *name)
{
  for (guint i = 0; i < n_repairs; i++)
    if (texts[i] != NULL && names (texts[i], name))
      return TRUE;
  return FALSE;
}

/* Gives the metal to each repair that its part's name stands in; the first of several metals that fit a repair is taken. */
static guint
give_to_named (EmGrammar *grammar, const Part *part, char **texts, guint n_repairs)
{
  g_autofree char *written = g_strndup (grammar->items->text + part->from, part->to - part->from), *name = g_utf8_casefold (written, -1);
  guint n = 0;

  if (!is_named_by_any (texts, n_repairs, name))
    drop_plural (name);
  for (guint i = 0; i < n_repairs; i++)
    if (texts[i] != NULL && names (texts[i], name))
      {
        give (grammar, part, ((EmProto *) g_ptr_array_index (grammar->protos, i))->given);
        g_clear_pointer (&texts[i], g_free);
        n++;
      }
  return n;
}

static gboolean
has_other (const EmGrammar *grammar)
{
  for (guint i = 1; i < grammar->metals->len; i++)
    if (strcmp (g_array_index (grammar->metals, EmMetal, i).base, g_array_index (grammar->metals, EmMetal, 0).base) != 0)
      return TRUE;
  return FALSE;
}

void
em_metals_hand_out (EmGrammar *grammar)
{
  char *texts[REPAIRS_MAX] = { NULL };
  guint n_repairs = MIN (grammar->protos->len, REPAIRS_MAX), n_named = 0;

  if (!has_other (grammar) || grammar->metals->len > METALS_MAX || n_repairs < 2)
    return;
  for (guint i = 0; i < n_repairs; i++)
    {
      const EmProto *proto = g_ptr_array_index (grammar->protos, i);

      texts[i] = !proto->is_merged ? text_of (grammar->items, proto) : NULL;
    }
  for (guint i = 0; i < grammar->metals->len; i++)
    {
      Part part = { .metal = &g_array_index (grammar->metals, EmMetal, i) };

      if (!find_name (grammar->items, &part))
        continue;
      part.hardness = find_hardness (grammar->items, part.metal->item);
      if (part.is_rest ? n_named == 0 : give_to_named (grammar, &part, texts, n_repairs) == 0)
        continue;
      n_named++;
      take_back (grammar, &part);
      if (part.is_rest)
        give (grammar, &part, grammar->general);
    }
  for (guint i = 0; i < n_repairs; i++)
    g_free (texts[i]);
}
