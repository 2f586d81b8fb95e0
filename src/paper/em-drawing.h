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

/* The program's one accent: the bronze of tempered steel, #8f4b12. Dark grounds take #e39a5b. */
#define EM_ACCENT_HEX      "#8f4b12"
#define EM_ACCENT_DARK_HEX "#e39a5b"
#define EM_ACCENT_RED      0.561
#define EM_ACCENT_GREEN    0.294
#define EM_ACCENT_BLUE     0.071

typedef struct { double red, green, blue, alpha; } EmColour;

typedef struct
{
  EmColour ink, quiet, base, metal, accent, paper; /* lines and text; secondary; sound metal; weld metal; highlighted dimension */
  double   font_px;         /* of dimension text, in user units */
  const char *font_family;  /* borrowed; NULL: "sans" */
  gboolean is_sketch;       /* sizes are none of anyone's: dimensions by their symbols, no scale */
  gboolean has_hatch;       /* hatch as well as fill: black-and-white legible */
  double   mm_per_unit;     /* of the context's user space: draws at a round scale and names it ("20:1"); 0: fills the room, scale bar only */
} EmDrawingStyle;

/* For paper: user space in points. */
void em_drawing_style_paper (EmDrawingStyle *out_style);
/* For screens: user space in pixels, on a light or dark ground. */
void em_drawing_style_screen (EmDrawingStyle *out_style, gboolean is_dark);

/* Fills width × height of cr's user space. cost may hold a fault: then only what solves is drawn, and FALSE returned.
 * field: index of a dimension to highlight, −1 none. */
gboolean em_drawing_draw (cairo_t *cr, double width, double height, const EmFeature *feature, const EmFeatureCost *cost,
                          EmView view, EmUnits units, const EmDrawingStyle *style, int field);

G_END_DECLS
