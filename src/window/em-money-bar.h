/* em-money-bar: where the money goes, as one bar to scale. Filled by colour and by hatching.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-cost.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define EM_TYPE_MONEY_BAR (em_money_bar_get_type ())
G_DECLARE_FINAL_TYPE (EmMoneyBar, em_money_bar, EM, MONEY_BAR, GtkWidget)

GtkWidget *em_money_bar_new (void);
/* money: EM_N_MONEY amounts. */
void       em_money_bar_show (EmMoneyBar *self, const int64_t *money_minor);
/* A low one for a row of a table, to a scale shared by its rows; what it shows is told beside it in figures. */
GtkWidget *em_money_bar_new_low (void);
/* whole_minor, > 0: the amount that fills the bar's width. */
void       em_money_bar_show_of (EmMoneyBar *self, const int64_t *money_minor, int64_t whole_minor);
/* A square filled as money is in the bar, for its key. */
GtkWidget *em_money_swatch_new (EmMoney money);

G_END_DECLS
