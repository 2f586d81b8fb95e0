/* em-print: the pages to a printer, by the same renderer as preview and PDF.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-paper-held.h"
#include "em-paper-view.h"

G_BEGIN_DECLS

#define EM_TYPE_PRINT (em_print_get_type ())
G_DECLARE_FINAL_TYPE (EmPrint, em_print, EM, PRINT, GtkPrintOperation)

EmPrint *em_print_new (EmDocument *document, EmSheet sheet);
/* Why nothing was printed, where it was not for the printer; NULL: nothing was wrong. */
/* What is to be printed, worked out before; else it is when printing begins. */
void em_print_hold_take (EmPrint *self, EmPaperHeld *held);
const char *em_print_get_problem (EmPrint *self);

G_END_DECLS
