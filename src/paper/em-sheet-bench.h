/* em-sheet-bench: parts of the bench sheet shared by its files.
 *
 * Private to the paper room.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-sheet.h"

G_BEGIN_DECLS

#define EM_STOP_INDENT 62.0   /* where what a stop or a setting is about begins */

/* A box to tick and what for. */
void  em_sheet_add_tick      (EmPaperSheet *sheet, const char *text, double x, double width);
void  em_sheet_add_tick_take (EmPaperSheet *sheet, char *take_text, double x, double width);   /* NULL: nothing */
char *em_sheet_wire_text     (const EmPaperSheet *sheet, const EmFeatureCost *cost);            /* "ER420 (AWS A5.9), ⌀ 0.5 mm" */
char *em_sheet_wire_length   (double mm, EmUnits units);                                        /* "4.9 m", "193 in" */
char *em_sheet_stop_dest     (int32_t stop);   /* what links lead to a stop by */
void  em_sheet_add_stop      (EmPaperSheet *sheet, int32_t number);

G_END_DECLS
