/* em-flow-pages: spreading rows over pages.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-flow-private.h"

#include "em-words.h"

#define CARRY_HEIGHT 16.0
#define EMPTY_RATIO  0.25   /* of a page, at most, is left empty for a wish of more than half a page */

/* Where the next row goes, and what the open table has come to. */
typedef struct
{
  EmFlow  *flow;
  double   y;
  gboolean is_top;       /* nothing on this page yet but repeated headings */
  int      table;        /* of the row placed last */
  int64_t  sum_minor;    /* of that table so far */
  gboolean has_sum;
} Cursor;

static double
page_bottom (const EmFlow *flow)
{
  return flow->height - flow->bottom;
}

static void
place (Cursor *cursor, EmRow *row)
{
  EmPlaced placed = { row, cursor->y };

  g_array_append_val (cursor->flow->placed, placed);
  cursor->y += row->height;
}

static EmRow *
make_carry (Cursor *cursor, int table, const char *label)
{
  EmFlow *flow = cursor->flow;
  const EmCarry *carry = &g_array_index (flow->tables, EmTable, table).carry;
  EmRow *row = em_row_new ();
  g_autofree char *amount = em_words_money_bare (cursor->sum_minor, &carry->currency);
  PangoLayout *figure = em_flow_layout (flow, EM_TEXT_STRONG, amount, 0, EM_ALIGN_LEFT);

  em_row_text_take (row, em_flow_layout (flow, EM_TEXT_BODY, label, 0, EM_ALIGN_LEFT), EM_INK_QUIET, carry->label_x, 3);
  em_row_text_take (row, figure, EM_INK_TEXT, carry->amount_right - em_layout_width (figure), 3);
  row->height = CARRY_HEIGHT;
  row->table = table;
  g_ptr_array_add (flow->made, row);
  return row;
}

static void
start_page (Cursor *cursor)
{
  guint start = cursor->flow->placed->len;

  g_array_append_val (cursor->flow->page_start, start);
  cursor->y = cursor->flow->top;
  cursor->is_top = TRUE;
}

/* Ends the page within row's table: its sum is carried, its heading repeated. */
static void
break_page (Cursor *cursor, const EmRow *row)
{
  EmFlow *flow = cursor->flow;
  gboolean is_within = row->table >= 0 && row->table == cursor->table;
  const EmTable *table = is_within ? &g_array_index (flow->tables, EmTable, row->table) : NULL;
  gboolean has_carry = is_within && table->has_carry && cursor->has_sum;

  if (has_carry)
    place (cursor, make_carry (cursor, row->table, table->carry.forward));
  start_page (cursor);
  if (is_within && table->heading != NULL)
    place (cursor, table->heading);
  if (has_carry)
    place (cursor, make_carry (cursor, row->table, table->carry.brought));
}

/* Height of rows i … j that keep_next chains together, wishes too where they count, and j. */
static double
chain_height (const EmFlow *flow, guint i, gboolean has_wishes, guint *out_last)
{
  double height = 0;
  guint j = i;

  for (;; j++)
    {
      const EmRow *row = g_ptr_array_index (flow->rows, j);

      height += row->height + (j > i ? row->space_before : 0);
      if (!(row->keep_next || (has_wishes && row->wish_next)) || j + 1 >= flow->rows->len)
        break;
    }
  *out_last = j;
  return height;
}

/* Room the table's "carried forward" needs below row last. */
static double
reserve (const EmFlow *flow, guint last)
{
  const EmRow *row = g_ptr_array_index (flow->rows, last);
  const EmRow *next = last + 1 < flow->rows->len ? g_ptr_array_index (flow->rows, last + 1) : NULL;
  gboolean runs_on = row->table >= 0 && next != NULL && next->table == row->table;

  return runs_on && g_array_index (flow->tables, EmTable, row->table).has_carry ? CARRY_HEIGHT : 0;
}

/* A wish is granted before its first row, or not at all. Where two of its kind fill a page it always is: only one page in a
 * row of them is left part empty. */
static gboolean
grants_wish (const EmFlow *flow, guint i, double room)
{
  double page = page_bottom (flow) - flow->top, height;
  guint last;

  if (i > 0 && ((EmRow *) g_ptr_array_index (flow->rows, i - 1))->wish_next)
    return FALSE;
  height = chain_height (flow, i, TRUE, &last);
  return height > room && height <= page && (height <= page / 2 || room < EMPTY_RATIO * page);
}

static gboolean
must_break (Cursor *cursor, guint i)
{
  EmFlow *flow = cursor->flow;
  const EmRow *row = g_ptr_array_index (flow->rows, i);
  double space = cursor->is_top ? 0 : row->space_before;
  double room = page_bottom (flow) - cursor->y - space;
  guint last;
  double chain = chain_height (flow, i, FALSE, &last);

  if (cursor->is_top)
    return FALSE;
  if (row->is_page_start)
    return TRUE;
  if (row->height + reserve (flow, i) > room || grants_wish (flow, i, room))
    return TRUE;
  /* A chain longer than a page has to part somewhere: rows then go as they come. */
  return chain + reserve (flow, last) > room && chain + CARRY_HEIGHT * 3 < page_bottom (flow) - flow->top;
}

static void
note_bookmark (Cursor *cursor, const EmRow *row)
{
  EmBookmark bookmark = { row->bookmark, em_flow_pages (cursor->flow) - 1, row->bookmark_level, cursor->y };

  if (row->bookmark != NULL)
    g_array_append_val (cursor->flow->bookmarks, bookmark);
}

static void
add_to_sum (Cursor *cursor, const EmRow *row)
{
  if (row->table != cursor->table)
    {
      cursor->sum_minor = 0;
      cursor->has_sum = FALSE;
      cursor->table = row->table;
    }
  if (row->has_amount)
    {
      /* Lines of a costed quote: their sum was already formed without overflow. */
      cursor->sum_minor += row->amount_minor;
      cursor->has_sum = TRUE;
    }
}

/** Spreads the rows over pages, from the first page's top margin. */
void
em_flow_paginate (EmFlow *flow)
{
  Cursor cursor = { .flow = flow, .table = -1 };

  start_page (&cursor);
  for (guint i = 0; i < flow->rows->len; i++)
    {
      EmRow *row = g_ptr_array_index (flow->rows, i);

      if (must_break (&cursor, i))
        break_page (&cursor, row);
      if (!cursor.is_top)
        cursor.y += row->space_before;
      note_bookmark (&cursor, row);
      place (&cursor, row);
      cursor.is_top = FALSE;
      add_to_sum (&cursor, row);
    }
}
