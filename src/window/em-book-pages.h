/* em-book-pages: the pages of the window for the rate book and the metals.
 *
 * Each shows and changes its part of one draft, and follows it.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-draft.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

GtkWidget *em_shop_page_new     (EmDraft *draft);
/* group of em_rate_fields: "money", "deposit", "minutes". */
GtkWidget *em_figures_page_new  (EmDraft *draft, const char *group, const char *remark);
GtkWidget *em_machines_page_new (EmDraft *draft);
GtkWidget *em_taxes_page_new    (EmDraft *draft);
GtkWidget *em_bases_page_new    (EmDraft *draft);
GtkWidget *em_wires_page_new    (EmDraft *draft);
/* basis: what drafts among past jobs are priced by. */
GtkWidget *em_jobs_page_new     (EmDraft *draft, EmBasis *basis);

/* What pages are made of. */
GtkWidget *em_page_new          (GtkWidget **out_box);   /* scrolls; its box takes the content */
GtkWidget *em_page_heading      (const char *text);
GtkWidget *em_page_remark       (const char *text);

G_END_DECLS
