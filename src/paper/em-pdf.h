/* em-pdf: a PDF made a page at a time, so that who waits for it can show how far it is, and stop.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-paper.h"

G_BEGIN_DECLS

typedef struct _EmPdf EmPdf;

/* source is borrowed until the end. date: ISO 8601, the document's creation date. */
EmPdf    *em_pdf_new    (EmSheet sheet, const EmPaperSource *source, const char *date, GError **error);
/* Lays out some more, before the first page is drawn; FALSE: it is done, by the share of 1. */
gboolean  em_pdf_lay_out (EmPdf *pdf);
double    em_pdf_get_share (const EmPdf *pdf);
int       em_pdf_count  (const EmPdf *pdf);
/* Draws the next page; FALSE: there is none left. */
gboolean  em_pdf_draw   (EmPdf *pdf);
/* The document, once all pages are drawn. Frees pdf whatever comes of it. */
GBytes   *em_pdf_finish_take (EmPdf *pdf, GError **error);
void      em_pdf_free   (EmPdf *pdf);
/* Puts the document at path, whole or not at all; in any thread. */
gboolean  em_pdf_write  (GBytes *document, const char *path, GError **error);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (EmPdf, em_pdf_free)

G_END_DECLS
