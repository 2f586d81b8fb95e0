/* em-sheet-quote: the parts of the quote that follow its prices.
 *
 * Private to the paper room.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-sheet.h"

G_BEGIN_DECLS

const char *em_sheet_total_label (const EmPaperSheet *sheet);   /* "Total with tax" */
void em_sheet_add_range       (EmPaperSheet *sheet);
void em_sheet_add_options     (EmPaperSheet *sheet);
void em_sheet_add_breaks      (EmPaperSheet *sheet);
void em_sheet_add_scope       (EmPaperSheet *sheet);
void em_sheet_add_assumptions (EmPaperSheet *sheet);   /* their heading; then for each feature and each mark, and what is always assumed */
void em_sheet_add_inferred    (EmPaperSheet *sheet, int32_t feature);
void em_sheet_add_question    (EmPaperSheet *sheet, int32_t mark);
void em_sheet_add_general_assumptions (EmPaperSheet *sheet);
void em_sheet_add_terms       (EmPaperSheet *sheet);
void em_sheet_add_signature   (EmPaperSheet *sheet);

G_END_DECLS
