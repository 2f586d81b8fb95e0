/* em-report: a size that a drawing or a report tells otherwise than what was measured.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-clause.h"
#include "em-proto.h"

G_BEGIN_DECLS

/* "drawing", "laut Zeichnung", "CMM report" */
gboolean em_report_is   (const EmItems *items, guint i);

/* "26 mm deep, the drawing says 30 mm deep": of the labelled sizes of a sentence neither is taken. */
void     em_report_mark (const EmClause *c);

/* "the drawing says 30 mm deep" behind a depth of 26 of the repair before: neither is taken, and the words from first to end are used up.
 * FALSE: nothing of the kind. */
gboolean em_report_take (EmReader *r, EmProto *before, guint first, guint end);

G_END_DECLS
