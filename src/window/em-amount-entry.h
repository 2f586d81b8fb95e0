/* em-amount-entry: one labelled amount of money, with its unit and its problem in words.
 *
 * Emits "read" (the amount in minor units, as a gint64) as soon as what is typed can be
 * taken, and "unread" (message) when it can't.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-money.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* Room for a currency and what it is per. */
enum { EM_AMOUNT_UNIT_CHARS = 7 };

#define EM_TYPE_AMOUNT_ENTRY (em_amount_entry_get_type ())
G_DECLARE_FINAL_TYPE (EmAmountEntry, em_amount_entry, EM, AMOUNT_ENTRY, GtkWidget)

/* label may hold a mnemonic; NULL: named by em_amount_entry_set_name alone, for tables. */
GtkWidget *em_amount_entry_new        (const char *label);
void       em_amount_entry_set_name   (EmAmountEntry *self, const char *name);
/* Shows minor unless what is typed already means just that. unit follows the currency's code: "/h"; may be NULL. */
void       em_amount_entry_set_value  (EmAmountEntry *self, gint64 minor, const EmCurrency *currency, const char *unit);
void       em_amount_entry_set_limits (EmAmountEntry *self, gint64 low_minor, gint64 high_minor);
/* What can't be read gives way to the amount. */
void       em_amount_entry_forget_unread (EmAmountEntry *self);
gboolean   em_amount_entry_has_problem (EmAmountEntry *self);
GtkWidget *em_amount_entry_get_text_widget (EmAmountEntry *self);

G_END_DECLS
