/* em-drawing: a feature to scale: section and plan, layers, dimensions.
 *
 * Used by the window and the paper alike.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-cost.h"

#include <cairo.h>
#include <glib.h>

G_BEGIN_DECLS

typedef struct { double red, green, blue, alpha; } EmColour;

typedef struct
{
  EmColour ink, quiet, base, metal, accent, paper; /* lines and text; secondary; sound metal; weld metal; highlighted dimension */
  double   font_px;         /* of dimension text */
  gboolean has_hatch;       /* hatch as well as fill: black-and-white legible */
} EmDrawingStyle;

void em_drawing_style_paper (EmDrawingStyle *out_style);

/* Fills width × height of cr's user space. cost may hold a fault: then only what solves is drawn, and FALSE returned.
 * field: index of a dimension to highlight, −1 none. */
gboolean em_drawing_draw (cairo_t *cr, double width, double height, const EmFeature *feature, const EmFeatureCost *cost,
                          EmView view, EmUnits units, const EmDrawingStyle *style, int field);

G_END_DECLS
