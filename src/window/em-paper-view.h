/* em-paper-view: the pages as they will be printed, in the window.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-document.h"
#include "em-outlook.h"
#include "em-paper.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define EM_TYPE_PAPER_VIEW (em_paper_view_get_type ())
G_DECLARE_FINAL_TYPE (EmPaperView, em_paper_view, EM, PAPER_VIEW, GtkWidget)

/* What a sheet of document shows; borrowed until its next edit. */
void em_paper_source_fill  (EmPaperSource *out_source, EmDocument *document, EmOutlook *outlook);
void em_paper_view_show    (EmPaperView *self, EmDocument *document, EmOutlook *outlook);
EmSheet em_paper_view_get_sheet (EmPaperView *self);
int  em_paper_view_count   (EmPaperView *self);   /* pages laid out */

G_END_DECLS
