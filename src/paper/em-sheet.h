/* em-sheet: what the quote and the bench sheet have in common: letterhead, facts, headings, lists.
 *
 * Private to the paper room.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-flow.h"
#include "em-paper.h"

G_BEGIN_DECLS

#define EM_NBSP "\302\240"

typedef struct
{
  const EmPaperSource *source;   /* lives as long as the pages */
  EmFlow              *flow;
  double               width;    /* between the margins */
  int32_t              line;     /* of the cost: the features' lines before it are on the sheet */
} EmPaperSheet;

/* A stretch of text under another in a cell. */
typedef struct
{
  EmTextStyle style;
  EmInkColour ink;
  char       *text;       /* owned; NULL or "": left out */
  double      space;      /* above, when not the first */
} EmCellText;

const char *em_sheet_text (const EmPaperSheet *sheet, EmQuoteText which);   /* NULL when absent */
const char *em_sheet_shop (const EmPaperSheet *sheet, EmShopText which);
const EmBase *em_sheet_base (const EmPaperSheet *sheet);                    /* NULL when unknown */
char       *em_sheet_base_name (const EmPaperSheet *sheet);                 /* "AISI P20 (UNS T51620), 30 HRC"; NULL */
double      em_sheet_hardness_hrc (const EmPaperSheet *sheet);              /* the quote's, else the catalogue's middle; may be NaN */

char       *em_sheet_flatten    (const char *text);                         /* on one line; NULL stays NULL */
char       *em_sheet_short_name (const EmPaperSheet *sheet, int32_t index);  /* a feature's; a very long one gives way to an ellipsis */
char       *em_sheet_mark_words (const EmPaperSheet *sheet, const EmMark *mark);   /* the customer's words; NULL when they are gone */

/* Shop, logo, title, and the running heads of later pages. title: "Quote". */
gboolean em_sheet_add_letterhead (EmPaperSheet *sheet, const char *title, GError **error);
void     em_sheet_add_heading (EmPaperSheet *sheet, const char *text, double space_before);
void     em_sheet_add_bullet  (EmPaperSheet *sheet, EmTextStyle style, const char *text, double x, double width);
/* A framed remark that must not be overlooked. */
void     em_sheet_add_notice  (EmPaperSheet *sheet, const char *text);
/* label over value; returns the bottom. value NULL or "": nothing. */
double   em_sheet_add_fact (EmPaperSheet *sheet, EmRow *row, const char *label, const char *value, double x, double y, double width);
/* Stacks texts in row from y; what does not fit a reasonable row goes on in rows of its own. Frees the texts. */
void     em_sheet_stack_take (EmPaperSheet *sheet, EmRow *row, EmCellText *texts, int n_texts, double x, double y, double width);
void     em_sheet_right_take (EmRow *row, PangoLayout *layout, EmInkColour ink, double right, double y);
/* The drawing of a feature in one view, drawn when the page is. */
void     em_sheet_draw_feature (EmPaperSheet *sheet, EmRow *row, int32_t index, EmView view, double x, double y, double width, double height);
void     em_sheet_add_cautions (EmPaperSheet *sheet, unsigned papers, gboolean has_sources);

/* A sheet is its parts, in order, under the letterhead; one of as many like things as the quote has comes one by one, so that a long
 * quote's sheet can be laid out little by little. */
typedef struct
{
  void    (*once)  (EmPaperSheet *sheet);                  /* this, */
  void    (*each)  (EmPaperSheet *sheet, int32_t index);   /* or this from 0 to below count; the last part has neither */
  int32_t (*count) (const EmPaperSheet *sheet);
} EmSheetPart;

extern const EmSheetPart em_sheet_quote_parts[], em_sheet_bench_parts[];

int32_t em_sheet_count_features (const EmPaperSheet *sheet);
int32_t em_sheet_count_marks    (const EmPaperSheet *sheet);

G_END_DECLS
