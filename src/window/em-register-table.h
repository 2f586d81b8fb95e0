/* em-register-table: the quotes found, in columns that can be sorted, moved and made wider; all of it remembered.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-register.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define EM_TYPE_REGISTER_TABLE (em_register_table_get_type ())
G_DECLARE_FINAL_TYPE (EmRegisterTable, em_register_table, EM, REGISTER_TABLE, GtkWidget)

/* Signals: "selected" when another quote is, or what is known of it changed; "activated" by Enter or a double click; "sorted", by a header
 * or by em_register_table_sort. */
GtkWidget  *em_register_table_new    (void);
/* found: guint, as em_register_search gives them; both may be NULL: nothing. A quote that is still there stays selected. */
void        em_register_table_show   (EmRegisterTable *self, EmRegister *reg, const GArray *found);
guint       em_register_table_count  (EmRegisterTable *self);
void        em_register_table_select (EmRegisterTable *self, guint row);
/* Index into the register shown; G_MAXUINT: none. */
guint       em_register_table_get_selected (EmRegisterTable *self);
guint       em_register_table_get_index    (EmRegisterTable *self, guint row);
void        em_register_table_focus  (EmRegisterTable *self);
/* column: as in the settings, "number", "date", "customer", "tool", "state" or "net"; "": the register's own order, latest first. */
void        em_register_table_sort   (EmRegisterTable *self, const char *column, gboolean is_descending);
/* The same, as it is now. */
const char *em_register_table_get_sort (EmRegisterTable *self, gboolean *out_is_descending);
/* Of the columns in their first order; NULL behind the last. */
const char *em_register_table_column_id    (guint column);
const char *em_register_table_column_title (guint column);
/* Order, widths and sort for the next time. */
void        em_register_table_remember (EmRegisterTable *self);

/* "Q-12 · A", or the file's name. g_free. */
char       *em_register_number_text  (const EmRegisterEntry *entry);
char       *em_register_net_text     (const EmRegisterEntry *entry);

G_END_DECLS
