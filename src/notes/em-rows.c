/* em-rows: how many a table's row says there are, for the one repair of the row.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-rows.h"

/* The only repair of the line that has sizes, of those from *at on; NULL: none, or several. *at: the first that may be of a later line. */
static EmProto *
only_repair (const EmGrammar *grammar, guint32 line, guint *at)
{
  EmProto *only = NULL;
  guint n = 0;

  for (; *at < grammar->protos->len; (*at)++)
    {
      EmProto *proto = g_ptr_array_index (grammar->protos, *at);
      guint32 begins = em_item (grammar->items, proto->first)->line;

      if (begins > line)
        break;
      if (begins == line && !proto->is_merged && proto->sizes->len > 0)
        {
          only = proto;
          n++;
        }
    }
  return n == 1 ? only : NULL;
}

void
em_rows_hand_out (EmGrammar *grammar)
{
  const EmItems *items = grammar->items;
  guint at = 0;

  for (guint i = 0; i < items->items->len; i++)
    {
      EmItem *item = em_item (items, i);
      EmProto *proto = item->is_number_of ? only_repair (grammar, item->line, &at) : NULL;

      if (proto == NULL || proto->count_item != EM_NO_ITEM)
        continue;
      item->is_used = TRUE;
      if (em_item_size (items, i)->value.n == 1)
        continue;
      proto->count = (double) em_item_size (items, i)->value.n;
      proto->count_item = i;
    }
}
