/* em-wire-table: every wire side by side: price, difference, hardness, why and why not. A click chooses.
 *
 * Over the whole quote a click sets features' own wires aside, for one feature it gives
 * that feature its own: the price after the click is the price shown.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-document-edit.h"
#include "em-compare.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define EM_TYPE_WIRE_TABLE (em_wire_table_get_type ())
G_DECLARE_FINAL_TYPE (EmWireTable, em_wire_table, EM, WIRE_TABLE, GtkWidget)

/* Suits, but is not what the trade would take for it. */
gboolean em_wire_is_compromise (const EmCompareRow *row);
/* compare NULL: none yet. feature_id: whom it is for; 0: the whole quote. */
void em_wire_table_show   (EmWireTable *self, EmDocument *document, const EmCompare *compare, uint32_t feature_id);
/* Whether those with the fewest objections come first, not the cheapest. */
void em_wire_table_set_by_match (EmWireTable *self, gboolean is_by_match);
int  em_wire_table_count  (EmWireTable *self);
/* Whether the at-th row is a compromise on this tool, which stand after all others. */
gboolean em_wire_table_is_apart (EmWireTable *self, int at);
/* As a click on the at-th row that can be chosen; FALSE: there is none. */
gboolean em_wire_table_choose (EmWireTable *self, int at);
/* Puts the keyboard on the chosen row, else the first; FALSE: there is none. */
gboolean em_wire_table_focus (EmWireTable *self);
/* Its filler, as an index in the catalog, and its net price; −1: there is none. */
int32_t  em_wire_table_get_row (EmWireTable *self, int at, int64_t *out_net_minor);

G_END_DECLS
