/* em-flow-private: what rows and pages are made of, for the two files of em-flow.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-flow.h"

typedef enum { EM_ITEM_TEXT, EM_ITEM_RULE, EM_ITEM_FILL, EM_ITEM_FRAME, EM_ITEM_DRAW, EM_ITEM_LINK } EmItemType;

typedef struct
{
  EmItemType     type;
  EmInkColour    ink;
  double         x, y, width, height;  /* of a rule: the other end */
  double         line_width;
  PangoLayout   *layout;               /* owned */
  int            first, n_lines;       /* −1: all */
  EmDrawFunc     draw;
  gpointer       data;
  GDestroyNotify free_data;
  char          *link;                 /* of a link: cairo's own attributes; owned */
} EmItem;

typedef struct
{
  EmRow   *heading;    /* borrowed from rows */
  gboolean has_carry;
  EmCarry  carry;
} EmTable;

typedef struct
{
  EmRow *row;          /* borrowed from rows or made */
  double y;            /* from the page's top */
} EmPlaced;

struct EmFlow
{
  double                width, height, left, right, top, bottom;
  PangoContext         *context;
  PangoFontDescription *font[EM_N_TEXT];
  PangoAttrList        *attributes;
  GPtrArray            *rows;          /* EmRow */
  GPtrArray            *made;          /* EmRow: carried and brought forward */
  GArray               *tables;        /* EmTable */
  int                   table;         /* open one, −1 */
  gboolean              has_heading;
  GArray               *placed;        /* EmPlaced, page by page */
  GArray               *page_start;    /* guint into placed */
  GArray               *bookmarks;     /* EmBookmark */
  char                 *head_left, *head_right, *foot, *page_format;
};

EmRow *em_row_new  (void);
void   em_row_free (EmRow *row);
