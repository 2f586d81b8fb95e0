/* em-deposit-view: what base and wire make together: hardness, preheat, cracking, and where it lies on the pictures.
 *
 * All of it is estimated, and says so.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-compare.h"
#include "em-document.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define EM_TYPE_DEPOSIT_VIEW (em_deposit_view_get_type ())
G_DECLARE_FINAL_TYPE (EmDepositView, em_deposit_view, EM, DEPOSIT_VIEW, GtkWidget)

GtkWidget *em_deposit_view_new  (void);
/* row: of a comparison of document; NULL: nothing to show. */
void       em_deposit_view_show (EmDepositView *self, EmDocument *document, const EmCompareRow *row);
/* The figures in words, a line each, as shown. */
char      *em_deposit_view_text (EmDepositView *self);

G_END_DECLS
