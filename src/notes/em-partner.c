/* em-partner: the new part that fits what is mended.
 *
 * A bore's pin and a pin's bush are told by their own diameter, which is near to the repair's. Only what is called new is one: the other may be
 * worn, too.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-partner.h"

enum { LED_WINDOW = 2 /* words from "new" to the part */, SIZES_MAX = 12 };

/* What fits has a diameter within this part of the repair's (common practice, no source). */
static const double FIT_SHARE = 0.15;

static gboolean
is_new (const EmReader *r, guint i)
{
  static const char *const words[] = { "new", "the new", "our new", "a new", "neu", "neue", "neuer", "neuen", "neues", "der neue", "die neue", "die neuen",
                                       "nouveau", "le nouveau", "nouvelle", "la nouvelle", "nouveaux", "les nouveaux", "neuf", "nuevo", "el nuevo", "nueva", "la nueva", "nuevos", "los nuevos" };

  return em_item_is_any_word_of (r->items, i, words, G_N_ELEMENTS (words));
}

/* A new pin behind a bore, a new bush behind a pin. */
static gboolean
names_partner (const EmReader *r, const EmProto *before, guint first, guint end)
{
  for (guint i = first + 1; i < end; i++)
    {
      const EmSense *noun = em_item_says (r->items, i, EM_SAYS_KIND);

      if (noun == NULL)
        continue;
      if (!((before->weight[BORE] > before->weight[PIN] && noun->weight[PIN] > 0) || (before->weight[PIN] > before->weight[BORE] && noun->weight[BORE] > 0)))
        return FALSE;
      for (guint k = i; k-- > first && k + LED_WINDOW >= i;)
        if (is_new (r, k))
          return TRUE;
      return FALSE;
    }
  return FALSE;
}

static gboolean
fits (const EmReader *r, const EmProto *before, guint item)
{
  const EmSize *size = em_item_size (r->items, item);

  for (guint i = 0; i < before->sizes->len && i < SIZES_MAX; i++)
    {
      const EmSize *its = em_item_size (r->items, g_array_index (before->sizes, guint, i));
      double ratio = em_fraction_in_mm (size->value, size->unit) / em_fraction_in_mm (its->value, its->unit);

      if (size->unit == its->unit && (its->roles & (EM_ROLE_LENGTH | EM_ROLE_DEPTH)) == 0 && ratio > 1 - FIT_SHARE && ratio < 1 + FIT_SHARE)
        return TRUE;
    }
  return FALSE;
}

gboolean
em_partner_take (EmReader *r, const EmContent *content, const EmProto *before, guint first, guint end)
{
  const guint32 work = EM_ROLE_BUILD | EM_ROLE_ADD | EM_ROLE_PER_SIDE | EM_ROLE_ON_DIAMETER | EM_ROLE_LENGTH | EM_ROLE_DEPTH;
  guint size = first;

  if (before == NULL || content->n_sizes != 1 || (content->roles & work) != 0 || content->has_damage || content->has_verb || !names_partner (r, before, first, end))
    return FALSE;
  while (size < end && !em_reader_is_sized (r, size))
    size++;
  if (size == end || !fits (r, before, size))
    return FALSE;
  em_item_size (r->items, size)->roles |= EM_ROLE_REFERENCE;
  return TRUE;
}
