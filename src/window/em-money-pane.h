/* em-money-pane: the price, where it goes, what else it could be, and what to beware of.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-document-edit.h"
#include "em-outlook.h"
#include "em-wire-table.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define EM_TYPE_MONEY_PANE (em_money_pane_get_type ())
G_DECLARE_FINAL_TYPE (EmMoneyPane, em_money_pane, EM, MONEY_PANE, GtkWidget)

void        em_money_pane_set_document (EmMoneyPane *self, EmDocument *document, EmOutlook *outlook);
const char *em_money_pane_get_price    (EmMoneyPane *self);   /* as shown */
/* Wires with the fewest objections first, not the cheapest. */
void        em_money_pane_set_by_match (EmMoneyPane *self, gboolean is_by_match);
EmWireTable *em_money_pane_get_wires (EmMoneyPane *self);
/* Opens or folds what base and wire make together, and scrolls to it. */
void        em_money_pane_toggle_deposit (EmMoneyPane *self);
char       *em_money_pane_deposit_text (EmMoneyPane *self);
void        em_money_pane_focus        (EmMoneyPane *self);
/* The chosen wire, else the first in the table. */
void em_money_pane_focus_wires (EmMoneyPane *self);

G_END_DECLS
