/* em-table: rows under a line of headings.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-table.h"

#include <string.h>

enum { COLUMN_MAX = 12, COLUMN_MIN = 3, CELL_ITEMS_MAX = 8 };

typedef enum { COLUMN_OTHER, COLUMN_SIZE, COLUMN_COUNT, COLUMN_NUMBER } ColumnType;

typedef struct
{
  guint      first, end;   /* items */
  ColumnType type;
  guint32    roles;
  guint      label;        /* the item that names the sizes below */
} Cell;

typedef struct
{
  guint n;
  Cell  cell[COLUMN_MAX];
} Line;

static gboolean
is_wide_gap (const EmItems *items, guint i)
{
  guint32 from = em_item (items, i)->start + em_item (items, i)->length, to = em_item (items, i + 1)->start;

  return to >= from + 2 || (to == from + 1 && items->text[from] == '\t');
}

static guint
n_bars (const EmItems *items, guint first, guint end)
{
  guint n = 0;

  for (guint i = first; i < end; i++)
    n += em_item (items, i)->type == EM_ITEM_SIGN && em_item (items, i)->sign == '|';
  return n;
}

/* The cells of the line from first to end; n 0 when there are more than a table has. */
static void
split_line (const EmItems *items, guint first, guint end, Line *line)
{
  memset (line, 0, sizeof *line);
  gboolean has_bars = n_bars (items, first, end) >= COLUMN_MIN - 1;

  for (guint i = first, start = first; i < end; i++)
    {
      /* "1 | NICK | .12": bars part the cells. */
      if (has_bars && em_item (items, i)->sign == '|')
        start = i + 1;
      if (has_bars ? i < start || (i + 1 < end && em_item (items, i + 1)->sign != '|') : i + 1 < end && !is_wide_gap (items, i))
        continue;
      if (line->n == COLUMN_MAX)
        {
          line->n = 0;
          return;
        }
      line->cell[line->n].first = start;
      line->cell[line->n++].end = i + 1;
      start = i + 1;
    }
}

/* What a column of sizes may hold: "HT" is a height there, no heat treatment. */
static const guint32 measured = EM_ROLE_LENGTH | EM_ROLE_WIDTH | EM_ROLE_HEIGHT | EM_ROLE_DEPTH | EM_ROLE_THICKNESS |
                                EM_ROLE_DIAMETER | EM_ROLE_RADIUS | EM_ROLE_ANGLE |
                                EM_ROLE_LEG | EM_ROLE_BUILD | EM_ROLE_WORN | EM_ROLE_FINISHED | EM_ROLE_AREA;

static guint32
label_roles (const EmItem *item)
{
  const EmSense *named = NULL;

  for (guint k = 0; item->type == EM_ITEM_PHRASE && k < item->phrase->n_senses; k++)
    if (item->phrase->sense[k]->says == EM_SAYS_LABEL && (item->phrase->sense[k]->roles & measured) != 0 &&
        (named == NULL || named->place == EM_LABEL_AFTER))
      named = item->phrase->sense[k];
  return named != NULL ? named->roles : 0;
}

static void
name_column (const EmItems *items, Cell *cell)
{
  for (guint i = cell->first; i < cell->end && i < cell->first + CELL_ITEMS_MAX; i++)
    {
      const EmSense *glue = em_item_says (items, i, EM_SAYS_GLUE);
      guint32 roles = label_roles (em_item (items, i));

      if (em_item_says (items, i, EM_SAYS_QUANTITY) != NULL && cell->type == COLUMN_OTHER)
        cell->type = COLUMN_COUNT;
      else if (glue != NULL && (g_strcmp0 (glue->value, "item") == 0 || g_strcmp0 (glue->value, "number") == 0) &&
               cell->type == COLUMN_OTHER)
        cell->type = COLUMN_NUMBER;
      else if (roles != 0)
        {
          cell->type = COLUMN_SIZE;
          cell->roles |= roles;
          cell->label = i;
        }
    }
}

/* "L | W | D": beside a length and a width, and no depth, the letter is a depth's. */
static void
name_depth (const EmItems *items, Line *line)
{
  guint32 roles = 0;

  for (guint c = 0; c < line->n; c++)
    roles |= line->cell[c].type == COLUMN_SIZE ? line->cell[c].roles : 0;
  if ((roles & EM_ROLE_LENGTH) == 0 || (roles & EM_ROLE_WIDTH) == 0 || (roles & EM_ROLE_DEPTH) != 0)
    return;
  for (guint c = 0; c < line->n; c++)
    if (line->cell[c].type == COLUMN_SIZE && line->cell[c].roles == EM_ROLE_DIAMETER &&
        em_item (items, line->cell[c].label)->length == 1)
      line->cell[c].roles = EM_ROLE_DEPTH;
}

/* Whether the line is one of headings: no number, and two columns whose words name what stands below them. */
static gboolean
read_headings (const EmItems *items, Line *line)
{
  guint n_named = 0, n_told = 0;
  gboolean has_count = FALSE;

  if (line->n < COLUMN_MIN)
    return FALSE;
  for (guint c = 0; c < line->n; c++)
    {
      for (guint i = line->cell[c].first; i < line->cell[c].end; i++)
        if (em_item (items, i)->type == EM_ITEM_SIZE)
          return FALSE;
      name_column (items, &line->cell[c]);
      has_count |= line->cell[c].type == COLUMN_COUNT;
      n_named += line->cell[c].type != COLUMN_OTHER;
      n_told += line->cell[c].type == COLUMN_SIZE || line->cell[c].type == COLUMN_COUNT;
    }
  name_depth (items, line);
  return n_told >= 1 && (n_named >= 2 || has_count);
}

static void
use_headings (const EmItems *items, const Line *line)
{
  for (guint c = 0; c < line->n; c++)
    for (guint i = line->cell[c].first; i < line->cell[c].end; i++)
      {
        em_item (items, i)->is_used = line->cell[c].type != COLUMN_OTHER;
        em_item (items, i)->is_heading = TRUE;
      }
}

static void
read_cell (const EmItems *items, const Cell *heading, const Cell *cell, gboolean is_first, guint row)
{
  gboolean is_alone = cell->end == cell->first + 1 && em_item (items, cell->first)->type == EM_ITEM_SIZE;
  EmSize *size = is_alone ? em_item_size (items, cell->first) : NULL;

  gboolean is_row_number = size != NULL && size->is_whole && size->value.n == row && heading->type != COLUMN_COUNT;

  if (is_first && (heading->type == COLUMN_NUMBER || is_row_number))
    for (guint i = cell->first; i < cell->end; i++)
      {
        em_item (items, i)->is_used = TRUE;
        if (em_item (items, i)->type == EM_ITEM_SIZE)
          em_item_size (items, i)->roles |= EM_ROLE_REFERENCE;
      }
  else if (size != NULL && heading->type == COLUMN_COUNT && size->is_whole && size->unit == EM_UNIT_NONE)
    size->roles |= EM_ROLE_COUNT;
  else if (size != NULL && heading->type == COLUMN_SIZE)
    {
      size->roles |= heading->roles;
      size->label_item = heading->label;
    }
}

static void
read_row (const EmItems *items, const Line *headings, const Line *row, guint number)
{
  for (guint c = 0; c < row->n; c++)
    read_cell (items, &headings->cell[c], &row->cell[c], c == 0, number);
  em_item (items, row->cell[0].first)->is_row = TRUE;
}

void
em_table_read (EmItems *items)
{
  Line headings = { 0 }, line;
  guint first = 0, n = items->items->len, n_rows = 0;

  for (guint i = 0; i <= n; i++)
    {
      if (i < n && em_item (items, i)->type != EM_ITEM_LINE)
        continue;
      split_line (items, first, i, &line);
      if (headings.n > 0 && line.n == headings.n)
        read_row (items, &headings, &line, ++n_rows);
      else
        headings.n = 0;
      if (headings.n == 0 && read_headings (items, &line))
        {
          use_headings (items, &line);
          headings = line;
          n_rows = 0;
        }
      first = i + 1;
    }
}
