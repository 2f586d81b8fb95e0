/* em-rate-entry: one row of a table of figures (rate book, machine, setting, metal) as an entry.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-draft.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define EM_TYPE_RATE_ENTRY (em_rate_entry_get_type ())
/* Emits "edited" when the figure in the holder has been changed: whoever made the entry touches the draft then. */
G_DECLARE_FINAL_TYPE (EmRateEntry, em_rate_entry, EM, RATE_ENTRY, GtkWidget)

/* The struct the row's offset counts from, or NULL when there is none at present. */
typedef void *(*EmRateHolder) (gpointer owner);

/* owner outlives the entry. A table's entry shows no label of its own. */
GtkWidget *em_rate_entry_new  (const EmRateField *field, EmDraft *draft, EmRateHolder holder, gpointer owner, gboolean is_in_table);
/* Tells entries of several rows apart, for problems and screen readers: "machine 2". */
void       em_rate_entry_set_place (EmRateEntry *self, const char *place);
/* Its place and field's id: what it is known by to the draft. */
char      *em_rate_entry_dup_where (EmRateEntry *self);
/* Shown as factor times what is stored, in unit, such as g/cm³ for g/mm³. Real figures only. */
void       em_rate_entry_set_scale (EmRateEntry *self, double factor, const char *unit);
/* Takes what the holder holds now. */
void       em_rate_entry_show (EmRateEntry *self);
const EmRateField *em_rate_entry_get_field (EmRateEntry *self);
GtkWidget *em_rate_entry_get_text_widget (EmRateEntry *self);   /* NULL: a check button */

G_END_DECLS
