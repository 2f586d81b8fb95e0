/* em-paper: pages on a cairo context: the quote, the bench sheet.
 *
 * The preview, the print dialog, PDF export and the command line call the same renderer. No display needed.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-compare.h"
#include "em-range.h"

#include <cairo.h>
#include <gio/gio.h>

G_BEGIN_DECLS

#define EM_PAPER_ERROR (em_paper_error_quark ())
GQuark em_paper_error_quark (void);
typedef enum { EM_PAPER_ERROR_WRITE, EM_PAPER_ERROR_LOGO, EM_PAPER_ERROR_EMPTY } EmPaperError;

typedef enum { EM_SHEET_QUOTE, EM_SHEET_BENCH } EmSheet;

/* Everything a sheet shows; all borrowed for the life of the layout. */
typedef struct
{
  const EmQuote     *quote;
  const EmCost      *cost;
  const EmRates     *rates;
  const EmCatalogue *catalogue;
  const EmCompare   *compare;   /* options on the quote, those it names; NULL: none */
  gboolean           offers_all;   /* every suited wire of compare, the cheapest first, named or not */
  const EmRange     *range;     /* NULL: none */
  const char        *logo_path; /* PNG or SVG; NULL */
  const struct EmLogo *logo;    /* the same, loaded before; NULL: it is when the pages are begun */
} EmPaperSource;

typedef struct EmPages EmPages;

/* Lays out; source->cost must be of the quote as it is. Page size in points (A4 595.28 × 841.89). */
EmPages *em_pages_new (EmSheet sheet, const EmPaperSource *source, double width_pt, double height_pt, GError **error);
/* The same a little at a time, so that who waits can be told how far it is, and stop. Of pages that are not all laid out there are none. */
EmPages *em_pages_begin (EmSheet sheet, const EmPaperSource *source, double width_pt, double height_pt, GError **error);
gboolean em_pages_lay_out (EmPages *pages);   /* some more; FALSE: it is done */
double   em_pages_get_share (const EmPages *pages);   /* how much is done, from 0 to 1 */
int      em_pages_count (const EmPages *pages);
const char *em_pages_title (const EmPages *pages);   /* "Quote 2041 – Lower cavity", for print jobs */
void     em_pages_draw (EmPages *pages, int page, cairo_t *cr);   /* from 0; user space in points */
void     em_pages_free (EmPages *pages);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (EmPages, em_pages_free)

/* "a4" or "letter" of quote, else rate book, else a4. */
void em_paper_size (const EmQuote *quote, const EmRates *rates, double *out_width_pt, double *out_height_pt);

/* Byte-identical for identical input; date: ISO 8601, as the PDF's creation date. Written beside and renamed. */
gboolean em_paper_export (EmSheet sheet, const EmPaperSource *source, const char *path, const char *date, GError **error);

/* The same bytes, for a stream. */
GBytes  *em_paper_to_pdf (EmSheet sheet, const EmPaperSource *source, const char *date, GError **error);

/* Font family before our own list, for all papers from now on; NULL: our own. For tests that compare images. */
void     em_paper_set_font (const char *family);

/* CSV (RFC 4180). */
char *em_paper_lines_csv   (const EmPaperSource *source);
char *em_paper_compare_csv (const EmPaperSource *source);

G_END_DECLS
