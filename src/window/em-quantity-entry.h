/* em-quantity-entry: one labelled number: typed as people write, with its unit and its problem in words.
 *
 * Knows nothing of documents. Emits "read" (EmReading pointer; NULL when cleared) whenever the text can
 * be taken as it is typed, and "unread" (message) when it can't.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-quantity.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define EM_TYPE_QUANTITY_ENTRY (em_quantity_entry_get_type ())
G_DECLARE_FINAL_TYPE (EmQuantityEntry, em_quantity_entry, EM, QUANTITY_ENTRY, GtkWidget)

GtkWidget *em_quantity_entry_new (const char *label, EmQuantityType type);
/* label may hold a mnemonic. */
void em_quantity_entry_set_label    (EmQuantityEntry *self, const char *label);
/* Shown when empty: what is used then. */
void em_quantity_entry_set_hint     (EmQuantityEntry *self, const char *hint);
/* A unit of its own, such as "HRC" or "%"; NULL: by type and units. */
void em_quantity_entry_set_unit     (EmQuantityEntry *self, const char *unit);
/* Room for units of so many characters, so that entries of a column end in line. */
void em_quantity_entry_set_unit_chars (EmQuantityEntry *self, int n);
/* Shows value (NaN: empty) unless what is typed already means just that. */
void em_quantity_entry_set_value    (EmQuantityEntry *self, double value, EmUnits units);
/* A problem from outside, such as the engine's; NULL: none. */
void em_quantity_entry_set_problem  (EmQuantityEntry *self, const char *problem);
/* A quiet remark under the entry, such as where the value came from; NULL: none. */
void em_quantity_entry_set_remark   (EmQuantityEntry *self, const char *remark);
/* Limits checked while typing, inclusive; NaN: open. */
void em_quantity_entry_set_limits   (EmQuantityEntry *self, double low, double high, gboolean is_whole);
/* In a table, whose head says what it is; screen readers still hear the label. */
void em_quantity_entry_hide_label   (EmQuantityEntry *self);
gboolean em_quantity_entry_has_problem (EmQuantityEntry *self);
/* What stands there and can't be taken gives way to the value. */
void em_quantity_entry_forget_unread (EmQuantityEntry *self);
/* Shows again what was typed and could not be taken, and why; without a signal. */
void em_quantity_entry_show_unread (EmQuantityEntry *self, const char *typed, const char *problem);
GtkWidget *em_quantity_entry_get_text_widget (EmQuantityEntry *self);

G_END_DECLS
