/* em-points: leading points of decimals, ".020", where no line may part.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include <pango/pango.h>

G_BEGIN_DECLS

enum { EM_POINT_BYTES = 2 /* the point and the figure behind it */ };

/* Byte of the first leading point of text from byte from on; −1: there is none. text may be NULL. */
gssize em_points_next (const char *text, gsize from);

/* Pango would part a line behind such a point: these are attributes (may be NULL) and a bar at each, for text. NULL when there is none.
 * Owned by the caller. */
PangoAttrList *em_points_bar (PangoAttrList *attributes, const char *text);

G_END_DECLS
