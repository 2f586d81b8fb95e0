/* em-wire-table: every wire side by side: price, difference, hardness, why and why not. A click chooses.
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

/* compare NULL: none yet. */
void em_wire_table_show (EmWireTable *self, EmDocument *document, const EmCompare *compare);
int  em_wire_table_count (EmWireTable *self);

G_END_DECLS
