/* em-flow: rows laid out once, flowed over pages, drawn on any cairo context.
 *
 * Private to the paper room. A row never splits; rows chained by keep_next stay on one
 * page where they fit it at all, rows chained by wish_next where that leaves little of the page empty. A table's heading row is drawn again on each page it
 * runs on to, and a money table's running sum is carried and brought forward.
 * All lengths in points. Main thread only.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-drawing.h"

#include <pango/pangocairo.h>

G_BEGIN_DECLS

typedef enum
{
  EM_TEXT_BODY, EM_TEXT_STRONG, EM_TEXT_QUIET, EM_TEXT_SMALL, EM_TEXT_SMALL_STRONG,
  EM_TEXT_LABEL,    /* small capitals' job: quiet names over or before values */
  EM_TEXT_HEADING, EM_TEXT_TITLE, EM_TEXT_SHOP, EM_TEXT_SUM,
  EM_N_TEXT
} EmTextStyle;

typedef enum { EM_INK_TEXT, EM_INK_QUIET, EM_INK_ACCENT, EM_INK_LINE, EM_INK_TINT, EM_N_INK_COLOUR } EmInkColour;

typedef enum { EM_ALIGN_LEFT, EM_ALIGN_RIGHT, EM_ALIGN_CENTRE } EmAlign;

typedef void (*EmDrawFunc) (cairo_t *cr, double width, double height, gpointer data);

typedef struct EmFlow EmFlow;
typedef struct EmRow  EmRow;

struct EmRow
{
  double    height, space_before;   /* space is dropped at the top of a page */
  gboolean  keep_next;
  gboolean  wish_next;              /* like keep_next, where that leaves little of the page empty */
  gboolean  is_page_start;
  gboolean  has_amount;
  int64_t   amount_minor;           /* counts to the table's running sum */
  char     *bookmark;               /* outline entry; owned */
  int       bookmark_level;         /* from 1 */
  char     *dest;                   /* what links lead here by; owned */
  int       table;                  /* index; −1: none */
  gboolean  is_table_heading;
  GArray   *items;
};

/* Where a money table's running sum stands. */
typedef struct
{
  double      label_x, amount_right;
  const char *forward, *brought;    /* translated "Carried forward", "Brought forward"; static */
  EmCurrency  currency;
} EmCarry;

typedef struct
{
  const char *title;
  int         page, level;
  double      y;
} EmBookmark;

EmFlow *em_flow_new  (double width, double height, double margin_left, double margin_right, double margin_top, double margin_bottom);
void    em_flow_free (EmFlow *flow);
double  em_flow_width (const EmFlow *flow);   /* between the margins */

/* width ≤ 0: one line. text may be NULL. Given away to em_row_text. */
PangoLayout *em_flow_layout (EmFlow *flow, EmTextStyle style, const char *text, double width, EmAlign align);
double       em_layout_height (PangoLayout *layout);
double       em_layout_width  (PangoLayout *layout);

/* Appends an empty row; x of its items is from the left margin. The row is the flow's. */
EmRow *em_flow_row (EmFlow *flow);
EmRow *em_flow_last_row (EmFlow *flow);
guint  em_flow_n_rows   (const EmFlow *flow);
/* The first of the rows chained to the last one; none yet: 0. */
guint  em_flow_chain_start (const EmFlow *flow);
/* Chains rows first … last − 1 each to its next. */
void   em_flow_keep     (EmFlow *flow, guint first, guint last);
/* The same, as a wish: not where it would leave much of a page empty. */
void   em_flow_wish     (EmFlow *flow, guint first, guint last);
/* Takes layout; grows the row to hold it. */
void   em_row_text_take (EmRow *row, PangoLayout *layout, EmInkColour ink, double x, double y);
/* Only lines first … first + n − 1, the first of them at y. */
void   em_row_lines_take (EmRow *row, PangoLayout *layout, EmInkColour ink, double x, double y, int first, int n_lines);
void   em_row_rule (EmRow *row, EmInkColour ink, double x0, double y0, double x1, double y1, double line_width);
void   em_row_box  (EmRow *row, EmInkColour ink, double x, double y, double width, double height, gboolean is_filled);
/* draw gets a context moved to x, y; data is freed with the flow. */
void   em_row_draw (EmRow *row, double x, double y, double width, double height, EmDrawFunc draw, gpointer data, GDestroyNotify free_data);

/* Where a PDF can be clicked: another row by its dest, or an address. A "mailto:" or "https:" is put before; what is no plain address is no link. */
void   em_row_link_dest  (EmRow *row, double x, double y, double width, double height, const char *dest);
void   em_row_link_email (EmRow *row, double x, double y, double width, double height, const char *email);
void   em_row_link_web   (EmRow *row, double x, double y, double width, double height, const char *web);

/* A paragraph in rows that may part between lines, two at least on either side. */
void   em_flow_paragraph (EmFlow *flow, EmTextStyle style, EmInkColour ink, const char *text, double x, double width, double space_before);

/* Rows from now on belong to a table; the next row is its heading. carry may be NULL. */
void   em_flow_begin_table (EmFlow *flow, const EmCarry *carry);
void   em_flow_end_table   (EmFlow *flow);

/* Over every page but the first, and under every page. Texts are copied. */
void   em_flow_set_running (EmFlow *flow, const char *head_left, const char *head_right, const char *foot, const char *page_format);

/* Spreads the rows over pages; call once, when all rows are there. */
void   em_flow_paginate (EmFlow *flow);
int    em_flow_pages (const EmFlow *flow);
void   em_flow_draw (EmFlow *flow, int page, cairo_t *cr);
GArray *em_flow_bookmarks (const EmFlow *flow);   /* EmBookmark, in order; borrowed */

/* Families in order of preference. */
const char *em_flow_font (void);

G_END_DECLS
