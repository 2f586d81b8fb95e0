/* em-labels-parts: what the files of em-labels share.
 *
 * Private to em-labels.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-clause.h"

G_BEGIN_DECLS

/* Roles of what a repair measures across, as against how much is added. */
static const guint32 em_plan_roles = EM_ROLE_LENGTH | EM_ROLE_WIDTH | EM_ROLE_HEIGHT | EM_ROLE_DIAMETER;

/* The next size when only glue stands between; the clause's end otherwise. */
guint    em_labels_next_size    (const EmClause *c, guint i);
/* A verb of building. */
gboolean em_labels_is_building  (const EmClause *c, guint i);
/* The word at i is all that can name the size right behind it, but for one that leads on itself where is_row. */
gboolean em_labels_leads_to_own (const EmClause *c, guint i, gboolean is_row);
/* Whether the label at i names the size at open rather than the one after it; open G_MAXUINT: there is none. */
gboolean em_labels_follows      (const EmClause *c, guint open, guint i, const EmSense *sense);

/* What the words round i tell of a size otherwise than by a label beside it: "but .12 on sketch", "worn .004 under", ", per side". */
void     em_labels_mark_told    (const EmClause *c, guint i);

G_END_DECLS
