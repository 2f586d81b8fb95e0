/* em-paper-view: the pages as they will be printed, in the window.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-document.h"
#include "em-paper-job.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define EM_TYPE_PAPER_VIEW (em_paper_view_get_type ())
G_DECLARE_FINAL_TYPE (EmPaperView, em_paper_view, EM, PAPER_VIEW, GtkWidget)

/* What the sheets of document show; good until its next edit, and to be cleared. */
void em_paper_job_of       (EmPaperJob *out_job, EmDocument *document);
void em_paper_view_show    (EmPaperView *self, EmDocument *document);
EmSheet em_paper_view_get_sheet (EmPaperView *self);
int  em_paper_view_count   (EmPaperView *self);   /* pages laid out */
gboolean em_paper_view_is_busy (EmPaperView *self);   /* those of a long quote are not laid out yet */

G_END_DECLS
