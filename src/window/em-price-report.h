/* em-price-report: a supplier's price list row by row, before it is taken into the draft or left.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-draft.h"
#include "em-price-list.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define EM_TYPE_PRICE_REPORT (em_price_report_get_type ())
G_DECLARE_FINAL_TYPE (EmPriceReport, em_price_report, EM, PRICE_REPORT, GtkWindow)

/* Takes list. */
EmPriceReport *em_price_report_new   (GtkWindow *parent, EmDraft *draft, EmPriceList *list);
/* As its button: takes the rows that change something into the draft, and closes. FALSE: it says why not. */
gboolean       em_price_report_apply (EmPriceReport *self);
/* "3 prices change, 1 row is not understood …", as shown. */
const char    *em_price_report_get_summary (EmPriceReport *self);

G_END_DECLS
