/* em-remark: sentences and parts of them that tell an office something though no field has a use for them.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-item.h"

G_BEGIN_DECLS

/* The end of the part of a sentence that begins at first where it tells what happened, what is good, wished or not wanted, and no field has
 * used a word of it; 0: none begins there. */
guint em_remark_end (const EmItems *items, guint first);

/* "OTHER WALL GOOD": the word at i ends what it says is all right. */
gboolean em_remark_is_verdict (const EmItems *items, guint i);

/* "Kind regards from Vorarlberg", "LG aus Linz": where the letter comes from, behind its last words. */
gboolean em_remark_is_town (const EmItems *items, guint i);

/* "Muffendorn", "Werkzeugliste": a German compound that ends in a word for a part, a product or a paper. */
gboolean em_remark_is_part_name (const EmItems *items, guint i);

/* Some sense of the item is an ordinary word of that value. */
gboolean em_remark_has_noise (const EmItems *items, guint i, const char *value);

/* It asks for a quote, as the whole letter does. */
gboolean em_remark_asks_as_all (const EmItems *items, guint i);

G_END_DECLS
