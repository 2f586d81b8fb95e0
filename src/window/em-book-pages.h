/* em-book-pages: the pages of the window for the rate book and the metals.
 *
 * Each shows and changes its part of one draft, and follows it.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-draft.h"
#include "em-steps.h"

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

/* Undo or Redo, as a word or a picture. */
GtkWidget *em_step_button_new   (EmStepWay way, gboolean is_word);

/* Touches the draft at page, record and field, so that a step back finds the way there; record and field may be NULL. */
void       em_page_touch        (EmDraft *draft, EmDraftPart part, const char *page, const char *record, const char *field);
/* The record of a step's where, to be freed; NULL: it is of another page. */
char      *em_page_dup_record   (const char *where, const char *page);
/* widget is what shows field; entries of figures are known by themselves. */
void       em_page_set_field    (GtkWidget *widget, const char *field);
/* The keyboard goes to where's field in page, where there is one. */
void       em_page_focus_field  (GtkWidget *page, const char *where);

G_END_DECLS
