/* em-table: rows under a line of headings.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-table.h"

#include "em-clause.h"

#include <string.h>

enum { COLUMN_MAX = 12, COLUMN_MIN = 3, CELL_ITEMS_MAX = 8, TEN = 10 /* some number lines by tens */, CODE_DIGITS = 3, INDENT = 8 /* blanks before headings, of which the first column has none */ };

typedef enum
{
  COLUMN_OTHER, COLUMN_SIZE, COLUMN_COUNT, COLUMN_NUMBER,
  COLUMN_PART /* which one: "CAV" */
} ColumnType;

typedef struct
{
  guint      first, end;   /* items */
  ColumnType type;
  guint32    roles;
  guint      label;        /* the item that names the sizes below */
  const char *code;        /* the field that a code below is of, "tool_number" */
} Cell;

typedef struct
{
  guint    n;
  Cell     cell[COLUMN_MAX];
  gunichar bar;            /* what parts the cells; 0: wide gaps */
} Line;

static gboolean
is_wide_gap (const EmItems *items, guint i)
{
  guint32 from = em_item (items, i)->start + em_item (items, i)->length, to = em_item (items, i + 1)->start;

  return to >= from + 2 || (to == from + 1 && items->text[from] == '\t');
}

/* A slash parts cells only between blanks. */
static gboolean
is_bar (const EmItems *items, guint i, gunichar bar)
{
  return em_item_is_sign (items, i, bar) &&
         (bar != '/' || (!em_item_is_glued (items, i) && i + 1 < items->items->len && !em_item_is_glued (items, i + 1)));
}

static guint
n_bars (const EmItems *items, guint first, guint end, gunichar bar)
{
  guint n = 0;

  for (guint i = first; i < end; i++)
    n += is_bar (items, i, bar);
  return n;
}

/* "1 | NICK | .12", "1 / NICK / .12", or "1;nick;.12" as spreadsheets write it; 0: none of them. */
static gunichar
bar_of (const EmItems *items, guint first, guint end)
{
  static const gunichar bars[] = { '|', ';', '/' };

  for (gsize i = 0; i < G_N_ELEMENTS (bars); i++)
    if (n_bars (items, first, end, bars[i]) >= COLUMN_MIN - 1)
      return bars[i];
  return 0;
}

/* How many tabs part item i from the next, or begin the line where i is before the first item. */
static guint
n_tabs (const EmItems *items, guint first, guint i)
{
  guint32 from = i + 1 == first ? (first > 0 ? em_item (items, first - 1)->start + em_item (items, first - 1)->length : 0)
                                : em_item (items, i)->start + em_item (items, i)->length;
  guint n = 0;

  for (guint32 b = from; b < em_item (items, i + 1)->start; b++)
    n += items->text[b] == '\t';
  return n;
}

/* One cell more, which may be empty; none when there are more than a table has. */
static void
add_cell (Line *line, guint first, guint end)
{
  if (line->n < COLUMN_MAX)
    line->cell[line->n] = (Cell) { .first = first, .end = end };
  line->n++;
}

static void
split_by_bars (const EmItems *items, guint first, guint end, Line *line)
{
  guint start = first;

  for (guint i = first; i < end; i++)
    if (is_bar (items, i, line->bar))
      {
        /* "| 1 | nick |": what stands at both ends parts nothing. */
        if (i > first || line->bar == ';')
          add_cell (line, start, i);
        start = i + 1;
      }
  if (start < end || line->bar == ';')
    add_cell (line, start, end);
}

/* As a spreadsheet is pasted: each tab parts two cells. */
static void
split_by_tabs (const EmItems *items, guint first, guint end, Line *line)
{
  guint start = first;

  for (guint k = first < end ? n_tabs (items, first, first - 1) : 0; k > 0 && line->n < COLUMN_MAX; k--)
    add_cell (line, first, first);
  for (guint i = first; i + 1 < end; i++)
    for (guint k = n_tabs (items, first, i); k > 0 && line->n < COLUMN_MAX; k--)
      {
        add_cell (line, start, i + 1);
        start = i + 1;
      }
  if (start < end)
    add_cell (line, start, end);
}

/* Where in its line the item stands, in bytes. */
static guint32
column_of (const EmItems *items, guint i)
{
  guint32 at = em_item (items, i)->start;
  guint32 from = at;

  while (from > 0 && items->text[from - 1] != '\n')
    from--;
  return at - from;
}

/* "2.000 [50.8] .375 [9.5]": one blank is enough before what begins right below a heading; headings NULL: none. */
static gboolean
begins_column (const EmItems *items, guint i, const Line *headings)
{
  guint32 at = em_item (items, i)->start;

  if (headings == NULL || headings->bar != 0 || at == 0 || items->text[at - 1] != ' ' || em_item (items, i)->type != EM_ITEM_SIZE)
    return FALSE;
  for (guint c = 0; c < headings->n; c++)
    if (headings->cell[c].type == COLUMN_SIZE && column_of (items, headings->cell[c].first) == column_of (items, i))
      return TRUE;
  return FALSE;
}

static void
split_by_gaps (const EmItems *items, guint first, guint end, const Line *headings, Line *line)
{
  for (guint i = first, start = first; i < end; i++)
    if (i + 1 == end || is_wide_gap (items, i) || begins_column (items, i + 1, headings))
      {
        add_cell (line, start, i + 1);
        start = i + 1;
      }
}

/* The cells of the line from first to end, parted by bar; n 0 when there are more than a table has. headings: those above it, or NULL. */
static void
split_line (const EmItems *items, guint first, guint end, gunichar bar, const Line *headings, Line *line)
{
  memset (line, 0, sizeof *line);
  line->bar = bar;
  if (bar == '\t')
    split_by_tabs (items, first, end, line);
  else if (bar != 0)
    split_by_bars (items, first, end, line);
  else
    split_by_gaps (items, first, end, headings, line);
  if (line->n > COLUMN_MAX)
    line->n = 0;
}

static gboolean
has_empty_cell (const Line *line)
{
  for (guint c = 0; c < line->n; c++)
    if (line->cell[c].first == line->cell[c].end)
      return TRUE;
  return FALSE;
}

/* What may be headings: cells parted by bars, by single tabs, or else by gaps. */
static void
split_headings (const EmItems *items, guint first, guint end, Line *line)
{
  gunichar bar = bar_of (items, first, end);

  split_line (items, first, end, bar != 0 ? bar : '\t', NULL, line);
  /* Several tabs only set the words apart. */
  if (bar == 0 && (line->n < COLUMN_MIN || has_empty_cell (line)))
    split_line (items, first, end, 0, NULL, line);
  /* The first column has no heading: "                L      W      D". */
  if (line->bar == 0 && line->n >= COLUMN_MIN && line->n < COLUMN_MAX && column_of (items, first) >= INDENT)
    {
      memmove (line->cell + 1, line->cell, line->n * sizeof *line->cell);
      line->cell[0] = (Cell) { .first = first, .end = first };
      line->n++;
    }
}

/* A cell is below the heading that begins where it does, or a part of which stands above it. */
static gboolean
is_below (const EmItems *items, const Cell *cell, const Cell *heading)
{
  guint32 at = column_of (items, cell->first), head = column_of (items, heading->first), end;

  if (heading->first == heading->end)
    return at < head;
  end = column_of (items, heading->end - 1) + em_item (items, heading->end - 1)->length;

  return at == head || (at < end && at + em_item (items, cell->end - 1)->start + em_item (items, cell->end - 1)->length > head + em_item (items, cell->first)->start);
}

/* Set in columns by blanks, with some cells left empty: every cell begins right below a heading. */
static void
align_row (const EmItems *items, const Line *headings, Line *row)
{
  Line aligned = { .bar = row->bar };

  if (headings->bar != 0 || row->n < 2 || row->n >= headings->n)
    return;
  for (guint c = 0, k = 0; c < headings->n; c++)
    {
      gboolean has_cell = k < row->n && is_below (items, &row->cell[k], &headings->cell[c]);

      if (has_cell)
        add_cell (&aligned, row->cell[k].first, row->cell[k].end);
      else
        add_cell (&aligned, 0, 0);
      k += has_cell;
      if (c + 1 == headings->n && k == row->n)
        *row = aligned;
    }
}

/* A row may end before its last cells, which are empty then. */
static gboolean
is_row_of (const Line *headings, Line *row)
{
  if (headings->n == 0 || row->n < 2)
    return FALSE;
  while (headings->bar == '\t' && row->n < headings->n)
    add_cell (row, 0, 0);
  /* What stands behind the last column has no heading. */
  return row->n == headings->n || (headings->bar == 0 && row->n == headings->n + 1);
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

/* "28 | 0.3" under "L | ADD": what is to be added. */
static gboolean
is_build_word (const EmItems *items, guint i)
{
  const EmSense *verb = em_item_says (items, i, EM_SAYS_VERB);

  return verb != NULL && g_strcmp0 (verb->value, "build") == 0;
}

/* "TOOL NO", "Werkzeug", "Dwg": what stands below are numbers of tools or drawings. */
static const char *
code_of (const EmItems *items, const Cell *cell)
{
  for (guint i = cell->first; i < cell->end; i++)
    {
      const EmSense *code = em_item_says (items, i, EM_SAYS_REFERENCE);

      /* "REF" and "POS" number the lines. */
      if (code != NULL && em_item_says (items, i, EM_SAYS_LABEL) == NULL)
        return code->value;
    }
  return NULL;
}

static void
name_column (const EmItems *items, Cell *cell)
{
  static const guint32 side = EM_ROLE_PER_SIDE | EM_ROLE_ON_DIAMETER;

  cell->code = code_of (items, cell);
  for (guint i = cell->first; i < cell->end && i < cell->first + CELL_ITEMS_MAX; i++)
    {
      const EmSense *glue = em_item_says (items, i, EM_SAYS_GLUE);
      guint32 roles = label_roles (em_item (items, i));

      if (em_item_says (items, i, EM_SAYS_QUANTITY) != NULL && cell->type == COLUMN_OTHER)
        cell->type = COLUMN_COUNT;
      else if ((em_item_is_sign (items, i, '#') || (glue != NULL && (g_strcmp0 (glue->value, "item") == 0 ||
                                                                     g_strcmp0 (glue->value, "number") == 0))) &&
               cell->type == COLUMN_OTHER)
        cell->type = COLUMN_NUMBER;
      /* "Stk" */
      else if (em_item_says (items, i, EM_SAYS_PLACES) != NULL && cell->end == cell->first + 1 && cell->type == COLUMN_OTHER)
        cell->type = COLUMN_COUNT;
      else if (roles != 0 || (is_build_word (items, i) && cell->type == COLUMN_OTHER))
        {
          cell->type = COLUMN_SIZE;
          cell->roles |= roles != 0 ? roles : EM_ROLE_BUILD;
          cell->label = i;
        }
      /* "Add per side" */
      cell->roles |= em_item_says (items, i, EM_SAYS_LABEL) != NULL ? em_item_says (items, i, EM_SAYS_LABEL)->roles & side : 0;
    }
}

/* "No. | Damage | Size | Number": the first numbers the lines, the last counts. */
static void
name_counts (const EmItems *items, Line *line)
{
  for (guint c = 1; c < line->n; c++)
    if (line->cell[c].type == COLUMN_NUMBER && line->cell[0].type == COLUMN_NUMBER && line->cell[c].end == line->cell[c].first + 1 &&
        em_item_says (items, line->cell[c].first, EM_SAYS_GLUE) != NULL)
      {
        const EmSense *glue = em_item_says (items, line->cell[c].first, EM_SAYS_GLUE);

        if (g_strcmp0 (glue->value, "number") == 0)
          line->cell[c].type = COLUMN_COUNT;
      }
}

/* "Tool 2219 part", "Dimension 1": a number that names, beside words. */
static gboolean
is_name_number (const EmItems *items, const Cell *cell, guint i)
{
  static const char *const words[] = { "dim", "dimension", "size", "value", "measure", "maß", "abmessung", "wert", "medida", "cota", "cote", "dimensión", "mesure" };
  const EmSize *size = em_item_size (items, i);

  if (i > cell->first && size->is_whole && em_item_is_any_word_of (items, i - 1, words, G_N_ELEMENTS (words)))
    return TRUE;
  return cell->end > cell->first + 1 && size->is_whole && size->unit == EM_UNIT_NONE && em_item (items, i)->length >= CODE_DIGITS;
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

/* "L | B | T" in German: beside a length, a depth or a height the letter is the width's. */
static void
name_width (const EmItems *items, Line *line)
{
  guint32 roles = 0;

  for (guint c = 0; c < line->n; c++)
    roles |= line->cell[c].type == COLUMN_SIZE ? line->cell[c].roles : 0;
  if ((roles & EM_ROLE_LENGTH) == 0 || (roles & EM_ROLE_WIDTH) != 0 || (roles & (EM_ROLE_DEPTH | EM_ROLE_HEIGHT | EM_ROLE_THICKNESS)) == 0)
    return;
  for (guint c = 0; c < line->n; c++)
    if (line->cell[c].type == COLUMN_OTHER && line->cell[c].end == line->cell[c].first + 1 &&
        em_item_is_word (items, line->cell[c].first, "b"))
      {
        line->cell[c].type = COLUMN_SIZE;
        line->cell[c].roles = EM_ROLE_WIDTH;
        line->cell[c].label = line->cell[c].first;
      }
}

/* French "L | l": of the two letters the small one is the width's ("largeur"). */
static void
name_small_letter (const EmItems *items, Line *line)
{
  guint large = COLUMN_MAX, small = COLUMN_MAX;

  for (guint c = 0; c < line->n; c++)
    if (line->cell[c].type == COLUMN_SIZE && line->cell[c].roles == EM_ROLE_LENGTH && em_item (items, line->cell[c].label)->length == 1)
      {
        if ((em_item (items, line->cell[c].label)->flags & EM_TOKEN_UPPER) != 0)
          large = c;
        else
          small = c;
      }
  if (large < COLUMN_MAX && small < COLUMN_MAX)
    line->cell[small].roles = EM_ROLE_WIDTH;
}

static gboolean
is_line_word (const EmItems *items, guint i)
{
  static const char *const words[] = { "line", "row", "id", "mark", "pt", "zeile", "lfd", "línea", "ligne" };

  return em_item_is_any_word_of (items, i, words, G_N_ELEMENTS (words));
}

/* "WHERE | WHAT | SIZE | REMARK": what a remark names is where the repair is or what is beside it. */
static gboolean
is_where_word (const EmItems *items, guint i)
{
  static const char *const words[] = { "where", "location", "place", "zone", "ort", "stelle", "lage", "wo", "ubicación", "lugar", "zona", "dónde", "emplacement", "endroit", "lieu", "où",
                                       "remark", "remarks", "note", "notes", "comment", "comments", "bemerkung", "bemerkungen", "anmerkung", "observación", "observaciones",
                                       "remarque", "remarques" };

  return em_item_is_any_word_of (items, i, words, G_N_ELEMENTS (words));
}

/* "none" below "ACTION": nothing is to be done in that row. */
static gboolean
is_idle_cell (const EmItems *items, const Cell *heading, const Cell *cell)
{
  static const char *const actions[] = { "action", "actions", "work", "repair", "measure", "to do", "todo", "weld", "maßnahme", "arbeit", "reparatur", "acción", "trabajo", "reparación",
                                         "mesure", "travail", "réparation" };
  static const char *const none[] = { "none", "nil", "no", "nothing", "no action", "keine", "nein", "nichts", "entfällt", "ninguna", "ninguno", "nada", "aucune", "aucun", "rien", "néant", "non" };

  return cell->end == cell->first + 1 && em_item_is_any_word_of (items, heading->first, actions, G_N_ELEMENTS (actions)) &&
         em_item_is_any_word_of (items, cell->first, none, G_N_ELEMENTS (none));
}

/* "QTY  DESCRIPTION": how many, and what. */
static gboolean
is_count_and_what (const EmItems *items, Line *line)
{
  static const char *const words[] = { "description", "what", "damage", "repair", "item", "work", "beschreibung", "schaden", "was", "arbeit",
                                       "descripción", "daño", "désignation", "description", "défaut" };

  if (line->n != 2 || line->cell[0].end != line->cell[0].first + 1 || line->cell[1].end != line->cell[1].first + 1 ||
      !em_item_is_any_word_of (items, line->cell[1].first, words, G_N_ELEMENTS (words)))
    return FALSE;
  name_column (items, &line->cell[0]);
  return line->cell[0].type == COLUMN_COUNT;
}

/* Whether the line is one of headings: no number, and two columns whose words name what stands below them. */
static gboolean
read_headings (const EmItems *items, Line *line)
{
  guint n_named = 0, n_told = 0;
  gboolean has_count = FALSE;

  if (is_count_and_what (items, line))
    return TRUE;
  if (line->n < COLUMN_MIN)
    return FALSE;
  for (guint c = 0; c < line->n; c++)
    {
      for (guint i = line->cell[c].first; i < line->cell[c].end; i++)
        if (em_item (items, i)->type == EM_ITEM_SIZE && !is_name_number (items, &line->cell[c], i))
          return FALSE;
      name_column (items, &line->cell[c]);
      has_count |= line->cell[c].type == COLUMN_COUNT;
      n_named += line->cell[c].type != COLUMN_OTHER;
      n_told += line->cell[c].type == COLUMN_SIZE || line->cell[c].type == COLUMN_COUNT;
    }
  name_counts (items, line);
  name_depth (items, line);
  name_width (items, line);
  name_small_letter (items, line);
  /* "CAV | DAMAGE | SIZE": which part */
  if (line->cell[0].type == COLUMN_OTHER && line->cell[0].end == line->cell[0].first + 1 &&
      em_item_says (items, line->cell[0].first, EM_SAYS_PLACE) != NULL)
    line->cell[0].type = COLUMN_NUMBER;
  for (guint c = 1; c < line->n; c++)
    if (line->cell[c].type == COLUMN_OTHER && line->cell[c].end == line->cell[c].first + 1 &&
        em_item_says (items, line->cell[c].first, EM_SAYS_PLACE) != NULL)
      line->cell[c].type = COLUMN_PART;
  /* "LINE  DAMAGE  SIZE", "ID  COMPONENT  FAULT" */
  if ((line->cell[0].type == COLUMN_OTHER || em_item_is_word (items, line->cell[0].first, "id")) && line->cell[0].end == line->cell[0].first + 1 && is_line_word (items, line->cell[0].first))
    {
      line->cell[0].type = COLUMN_NUMBER;
      em_item (items, line->cell[0].first)->is_talk = TRUE; /* "ID": no inner diameter */
    }
  return (n_told >= 1 && (n_named >= 2 || has_count)) || (line->cell[0].type == COLUMN_NUMBER && line->n >= COLUMN_MIN);
}

static void
use_headings (const EmItems *items, const Line *line)
{
  for (guint c = 0; c < line->n; c++)
    for (guint i = line->cell[c].first; i < line->cell[c].end; i++)
      {
        /* "actual (inch)" says the unit for all. */
        em_item (items, i)->is_used = line->cell[c].type != COLUMN_OTHER &&
                                      !(em_item_says (items, i, EM_SAYS_UNIT) != NULL && i > line->cell[c].first);
        em_item (items, i)->is_heading = TRUE;
      }
}

/* "Feature | Length" heads what things are as well as their numbers. */
static gboolean
names_thing (const EmItems *items, const Cell *cell)
{
  for (guint i = cell->first; i < cell->end; i++)
    if (em_item_says (items, i, EM_SAYS_KIND) != NULL)
      return TRUE;
  return FALSE;
}

/* "Core 3 | Crack": the number at the end of a cell is the part's, and counts nothing in the next. */
static void
use_part_number (const EmItems *items, const Cell *cell)
{
  guint last = cell->end - 1;
  const EmSize *size = em_item (items, last)->type == EM_ITEM_SIZE ? em_item_size (items, last) : NULL;

  if (cell->end < cell->first + 2 || size == NULL || !size->is_whole || size->unit != EM_UNIT_NONE || em_item (items, last)->length > 2 ||
      (em_item_says (items, last - 1, EM_SAYS_PLACE) == NULL && em_item_says (items, last - 1, EM_SAYS_KIND) == NULL) ||
      em_item_says (items, last - 1, EM_SAYS_LABEL) != NULL)
    return;
  em_item_size (items, last)->roles |= EM_ROLE_REFERENCE;
  em_item (items, last)->is_used = TRUE;
}

/* "EX-77" below "TOOL NO": letters or signs and digits, or a number longer than a line's. FALSE: no code. */
static gboolean
set_code (const EmItems *items, const Cell *heading, const Cell *cell)
{
  const EmItem *first = em_item (items, cell->first), *last = em_item (items, cell->end - 1);
  gboolean has_digit = FALSE, has_other = FALSE;

  for (guint i = cell->first + 1; i < cell->end; i++)
    if (!em_item_is_glued (items, i))
      return FALSE;
  for (guint32 b = first->start; b < last->start + last->length; b++)
    {
      has_digit |= g_ascii_isdigit (items->text[b]);
      has_other |= !g_ascii_isdigit (items->text[b]) && items->text[b] != '.' && items->text[b] != ',';
    }
  if (!has_digit || !(has_other || last->start + last->length >= first->start + CODE_DIGITS))
    return FALSE;
  em_item (items, cell->first)->code = heading->code;
  em_item (items, cell->first)->code_end = cell->end;
  for (guint i = cell->first; i < cell->end; i++)
    {
      em_item (items, i)->is_used = TRUE;
      if (em_item (items, i)->type == EM_ITEM_SIZE)
        em_item_size (items, i)->roles |= EM_ROLE_REFERENCE;
    }
  return TRUE;
}

static void
read_cell (const EmItems *items, const Cell *heading, const Cell *cell, gboolean is_first, guint row)
{
  /* ".7535 - full depth 1.00": what else the cell says is told by its own words. */
  gboolean is_alone = em_item (items, cell->first)->type == EM_ITEM_SIZE &&
                      (cell->end == cell->first + 1 || em_item_is_soft_break (items, cell->first + 1));
  /* "Ø.2500", "dia .2500" */
  gboolean is_labelled = cell->end == cell->first + 2 && label_roles (em_item (items, cell->first)) != 0 &&
                         em_item (items, cell->first + 1)->type == EM_ITEM_SIZE;
  EmSize *size = is_alone || is_labelled ? em_item_size (items, is_labelled ? cell->first + 1 : cell->first) : NULL;

  gboolean is_row_number = size != NULL && size->is_whole && (size->value.n == row || size->value.n == TEN * row) &&
                           heading->type != COLUMN_COUNT;

  if (heading->code != NULL && heading->type != COLUMN_SIZE && heading->type != COLUMN_COUNT && set_code (items, heading, cell))
    return;
  /* "Location" may head places as well as their number. */
  if (heading->type != COLUMN_SIZE)
    use_part_number (items, cell);
  if (is_first && ((heading->type == COLUMN_NUMBER && !names_thing (items, cell)) || is_row_number))
    for (guint i = cell->first; i < cell->end; i++)
      {
        em_item (items, i)->is_used = TRUE;
        if (em_item (items, i)->type == EM_ITEM_SIZE)
          em_item_size (items, i)->roles |= EM_ROLE_REFERENCE;
      }
  else if (size != NULL && heading->type == COLUMN_PART && size->is_whole && size->unit == EM_UNIT_NONE)
    {
      size->roles |= EM_ROLE_REFERENCE;
      em_item (items, cell->first)->is_used = TRUE;
    }
  else if (size != NULL && heading->type == COLUMN_COUNT && size->is_whole && size->unit == EM_UNIT_NONE)
    {
      size->roles |= EM_ROLE_COUNT;
      em_item (items, cell->first)->is_number_of = cell->end == cell->first + 1;
    }
  else if (size != NULL && heading->type == COLUMN_SIZE)
    {
      size->roles |= heading->roles;
      size->label_item = heading->label;
    }
}

/* A semicolon between cells ends no sentence, and a slash joins no sizes. */
static void
draw_bars (const EmItems *items, const Line *line, guint first, guint end)
{
  for (guint i = first; line->bar != 0 && line->bar != '\t' && i < end; i++)
    if (is_bar (items, i, line->bar))
      em_item (items, i)->sign = '|';
}

/* "Ancho/Ø": a width where the row tells a length, and a diameter where it tells none. */
static guint32
row_roles (const EmItems *items, const Line *headings, const Line *row, guint c)
{
  const guint32 either = EM_ROLE_WIDTH | EM_ROLE_DIAMETER;
  guint32 roles = headings->cell[c].roles;

  if ((roles & either) != either)
    return roles;
  for (guint k = 0; k < MIN (row->n, headings->n); k++)
    if (k != c && headings->cell[k].type == COLUMN_SIZE && (headings->cell[k].roles & EM_ROLE_LENGTH) != 0 && row->cell[k].first < row->cell[k].end &&
        em_item (items, row->cell[k].first)->type == EM_ITEM_SIZE)
      return roles & ~(guint32) EM_ROLE_DIAMETER;
  return roles & ~(guint32) EM_ROLE_WIDTH;
}

static void
read_row (const EmItems *items, const Line *headings, const Line *row, guint number)
{
  for (guint c = 0; c < MIN (row->n, headings->n); c++)
    if (row->cell[c].first < row->cell[c].end)
      {
        Cell heading = headings->cell[c];

        heading.roles = row_roles (items, headings, row, c);
        read_cell (items, &heading, &row->cell[c], c == 0, number);
      }
  for (guint c = 1; c < MIN (row->n, headings->n); c++)
    for (guint i = row->cell[c].first; is_where_word (items, headings->cell[c].first) && i < row->cell[c].end; i++)
      em_item (items, i)->is_where = TRUE;
  for (guint c = 1; c < MIN (row->n, headings->n); c++)
    em_item (items, row->cell[0].first)->is_idle |= row->cell[c].first < row->cell[c].end && is_idle_cell (items, &headings->cell[c], &row->cell[c]);
  em_item (items, row->cell[0].first)->is_row = TRUE;
}

/* "----+-----+---" below the headings. */
static gboolean
is_rule (const EmItems *items, guint first, guint end)
{
  const EmItem *last = first < end ? em_item (items, end - 1) : NULL;

  if (last == NULL)
    return FALSE;
  for (guint32 at = em_item (items, first)->start; at < last->start + last->length; at++)
    if (strchr ("-+|=_*~: \t", items->text[at]) == NULL)
      return FALSE;
  return TRUE;
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
      /* Neither such a line nor an empty one parts the headings from the rows. */
      if (headings.n > 0 && (is_rule (items, first, i) || (first == i && n_rows == 0)))
        {
          first = i + 1;
          continue;
        }
      split_line (items, first, i, headings.bar, headings.n > 0 ? &headings : NULL, &line);
      align_row (items, &headings, &line);
      if (is_row_of (&headings, &line))
        {
          draw_bars (items, &line, first, i);
          read_row (items, &headings, &line, ++n_rows);
        }
      else
        headings.n = 0;
      if (headings.n == 0)
        split_headings (items, first, i, &line);
      if (headings.n == 0 && read_headings (items, &line))
        {
          draw_bars (items, &line, first, i);
          use_headings (items, &line);
          headings = line;
          n_rows = 0;
        }
      first = i + 1;
    }
}
