/* em-unclear: damage that is told, and not what it is.
 *
 * A general word for harm ("damage", "kaputt") says no kind. What it is stays open where somebody says so ("we don't know what it is"), where a
 * picture shall tell it, or where nothing but how large it is follows, and every part that is named is only where it is.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-unclear.h"

#include <string.h>

enum { SAID_WINDOW = 24 /* items of the same line behind the harm that are looked over for what is said of it */, FLAW = 7 /* a nick, a crack, a pit by name */ };

static gboolean
has_noise (const EmItems *items, guint i, const char *value)
{
  const EmItem *item = em_item (items, i);

  for (guint k = 0; item->type == EM_ITEM_PHRASE && k < item->phrase->n_senses; k++)
    if (item->phrase->sense[k]->says == EM_SAYS_NOISE && g_strcmp0 (item->phrase->sense[k]->value, value) == 0)
      return TRUE;
  return FALSE;
}

/* Said between the item first and the end of its line. */
static gboolean
is_said (const EmReader *r, guint first, const char *value)
{
  for (guint i = first; i < r->items->items->len && i < first + SAID_WINDOW && em_item (r->items, i)->type != EM_ITEM_LINE; i++)
    if (has_noise (r->items, i, value))
      return TRUE;
  return FALSE;
}

static gboolean
is_flaw (const EmSense *noun)
{
  return noun->value != NULL ? g_strcmp0 (noun->value, "damage") == 0
                             : noun->weight[EDGE_NICK] >= FLAW || noun->weight[GROOVE] >= FLAW || (noun->weight[RECESS] >= FLAW && noun->set_value != NULL);
}

gboolean
em_unclear_tells (const EmReader *r, const EmContent *content, guint first, guint end)
{
  const guint32 telling = (em_dimension_roles & ~(guint32) (EM_ROLE_LENGTH | EM_ROLE_WIDTH)) | EM_ROLE_BUILD | EM_ROLE_ADD | EM_ROLE_WORN | EM_ROLE_FINISHED | EM_ROLE_PER_SIDE |
                          EM_ROLE_ON_DIAMETER | EM_ROLE_SLOT | EM_ROLE_WELD;
  gboolean has_harm = FALSE, has_flaw = FALSE, has_part = FALSE, is_only_large;

  for (guint i = first; i < end; i++)
    {
      const EmSense *noun = em_item (r->items, i)->is_used ? NULL : em_item_says (r->items, i, EM_SAYS_KIND);

      has_harm |= has_noise (r->items, i, "harm");
      has_flaw |= noun != NULL && is_flaw (noun);
      has_part |= noun != NULL && !is_flaw (noun) && noun->value == NULL && !em_reader_is_demoted (r, i);
    }
  if (content->n_sizes > 2 || (content->roles & telling) != 0 || content->has_verb || content->has_same)
    return FALSE;
  if ((has_harm || has_flaw) && is_said (r, first, "unknown"))
    return TRUE;
  is_only_large = content->n_sizes > 0 && content->has_noun == FALSE;
  return has_harm && !has_flaw && !has_part && (is_only_large || is_said (r, first, "unclear"));
}

void
em_unclear_make (EmProto *proto)
{
  memset (proto->weight, 0, sizeof proto->weight);
  memset (proto->damage, 0, sizeof proto->damage);
  proto->noun_weight = 0;
  proto->noun = EM_NO_ITEM;
  proto->kinds = 0;
  proto->is_unclear = TRUE;
  proto->may_merge = FALSE;
}
