/* em-whose: which repairs a sentence means by the names of their parts.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-whose.h"

#include <string.h>

enum
{
  REPAIRS_MOST = 16,    /* more are no short list, of which one sentence names some */
  NAME_WINDOW = 10,     /* items of a repair that may name its part */
  PART_WINDOW = 12,     /* words of a sentence to either side */
  SIZES_MOST = 8,       /* of a repair that are looked over */
  NAME_BYTES = 3        /* of the shortest name */
};

/* A part of the tool, a thing that is mended, or a word that no lexicon has. */
static gboolean
is_name (const EmReader *r, guint i)
{
  const EmItem *item = em_item (r->items, i);
  const EmSense *noun = em_item_says (r->items, i, EM_SAYS_KIND);

  if (item->length < NAME_BYTES || item->is_talk || em_item_says (r->items, i, EM_SAYS_MACHINING) != NULL || em_item_says (r->items, i, EM_SAYS_THING) != NULL ||
      (em_item_says (r->items, i, EM_SAYS_GLUE) != NULL && (em_item_says (r->items, i, EM_SAYS_PLACE) == NULL || em_reader_is_foreign_article (r, i))) ||
      em_item_says (r->items, i, EM_SAYS_ALL) != NULL)
    return FALSE;
  return em_item_says (r->items, i, EM_SAYS_PLACE) != NULL || (noun != NULL && noun->value == NULL) ||
         (item->type == EM_ITEM_UNKNOWN && (item->flags & EM_TOKEN_CAPITAL) != 0);
}

/* "slide" and "slides", "Rahmen" and "Rahmens". */
static gboolean
is_same_name (const EmReader *r, guint a, guint b)
{
  const EmItem *one = em_item (r->items, a), *two = em_item (r->items, b);
  guint32 shorter = MIN (one->length, two->length), longer = MAX (one->length, two->length);
  const char *rest = r->items->text + (one->length > two->length ? one->start : two->start) + shorter;

  if (g_ascii_strncasecmp (r->items->text + one->start, r->items->text + two->start, shorter) != 0)
    return FALSE;
  return longer == shorter || (longer == shorter + 1 && strchr ("snSN", rest[0]) != NULL) ||
         (longer == shorter + 2 && g_ascii_strncasecmp (rest, "es", 2) == 0);
}

/* The words before the first size of the repair's line have that name. */
static gboolean
has_name (const EmReader *r, const EmProto *proto, guint name)
{
  guint first = proto->first;

  while (first > 0 && first + NAME_WINDOW > proto->first && em_item (r->items, first - 1)->type != EM_ITEM_LINE && !em_item_is_measure (r->items, first - 1) &&
         !em_item_is_sign (r->items, first - 1, '.'))
    first--;
  for (guint i = first; i <= proto->last && i < proto->first + NAME_WINDOW; i++)
    {
      if (i >= proto->first && em_reader_is_sized (r, i))
        return FALSE;
      if (is_name (r, i) && is_same_name (r, i, name))
        return TRUE;
    }
  return FALSE;
}

/* "all faces", "every insert": not of one of them. */
static gboolean
is_of_all (const EmReader *r, guint name)
{
  for (guint i = name > r->first + 2 ? name - 2 : r->first; i < name; i++)
    if (em_item_says (r->items, i, EM_SAYS_ALL) != NULL || em_item_is_all (r->items, i) || em_item_says (r->items, i, EM_SAYS_NUMBER) != NULL)
      return TRUE;
  return FALSE;
}

static guint
repairs_with (const EmReader *r, guint name, EmProto **out_protos, guint max)
{
  const GPtrArray *protos = r->grammar->protos;
  guint n = 0, n_told = 0;

  for (guint k = 0; k < protos->len && n < max; k++)
    {
      EmProto *proto = g_ptr_array_index (protos, k);

      if (proto->last >= r->first || proto->sizes->len == 0)
        continue;
      n_told++;
      if (has_name (r, proto, name))
        out_protos[n++] = proto;
    }
  return n == n_told ? 0 : n;
}

/* Those that a word from first to end names; *out_has_name: some word may be a name. */
static guint
named_between (const EmReader *r, guint first, guint end, EmProto **out_protos, guint max, gboolean *out_has_name)
{
  *out_has_name = FALSE;
  for (guint i = first; i < end; i++)
    {
      gboolean is_one = is_name (r, i);
      guint n = is_one && !is_of_all (r, i) ? repairs_with (r, i, out_protos, max) : 0;

      *out_has_name |= is_one;
      if (n > 0)
        return n;
    }
  return 0;
}

/* "of the bore Ø.625": the one repair of that diameter; NULL: none, or several. */
static EmProto *
repair_of_diameter (const EmReader *r, guint first, guint end)
{
  EmProto *found = NULL;

  for (guint i = first; i < end; i++)
    for (guint k = 0; em_item_is_measure (r->items, i) && (em_item_size (r->items, i)->roles & EM_ROLE_DIAMETER) != 0 && k < r->grammar->protos->len; k++)
      {
        EmProto *proto = g_ptr_array_index (r->grammar->protos, k);

        for (guint s = 0; proto->last < r->first && s < proto->sizes->len && s < SIZES_MOST; s++)
          {
            const EmSize *size = em_item_size (r->items, g_array_index (proto->sizes, guint, s)), *told = em_item_size (r->items, i);

            if ((size->roles & EM_ROLE_DIAMETER) == 0 || size->value.n != told->value.n || size->value.d != told->value.d)
              continue;
            if (found != NULL && found != proto)
              return NULL;
            found = proto;
          }
      }
  return found;
}

guint
em_whose_named (const EmReader *r, guint at, EmProto **out_protos, guint max)
{
  guint first = at, end = at + 1, before, n;
  gboolean has_name, has_name_before;

  if (r->grammar->protos->len < 2 || r->grammar->protos->len > REPAIRS_MOST)
    return 0;
  while (first > r->first && first + PART_WINDOW > at && !em_item_is_sign (r->items, first - 1, ',') && !em_item_is_sign (r->items, first - 1, ':'))
    first--;
  while (end < r->end && end < at + PART_WINDOW && !em_item_is_sign (r->items, end, ','))
    end++;
  if (max > 0 && (out_protos[0] = repair_of_diameter (r, first, end)) != NULL)
    return 1;
  n = named_between (r, first, end, out_protos, max, &has_name);
  if (n > 0 || has_name || first < r->first + 2)
    return n;
  /* "Leave 0.3 on the core, we grind it": what stands before the comma is meant. */
  before = first - 1;
  while (before > r->first && before + PART_WINDOW > first && !em_item_is_sign (r->items, before - 1, ','))
    before--;
  return named_between (r, before, first - 1, out_protos, max, &has_name_before);
}
