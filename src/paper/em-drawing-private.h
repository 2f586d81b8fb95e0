/* em-drawing-private: a drawing under way, for the files of em-drawing.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-drawing.h"

/* What is left out of the middle of a long plan. */
typedef struct
{
  gboolean is_made;
  double   from_mm, to_mm;   /* along x */
  double   gap;              /* user units in its stead */
} EmBreak;

typedef struct
{
  cairo_t              *cr;
  const EmDrawingStyle *style;
  const EmFeature      *feature;
  const EmPlan         *plan;     /* NULL: not priced, no layers */
  const EmPlanRules    *rules;
  EmShape               shape;
  EmView                view;
  EmUnits               units;
  int                   field;
  EmOutline             outline;
  double                left_mm, right_mm, bottom_mm, top_mm;   /* of everything drawn */
  EmBreak               cut;
  double                width, height;   /* of the room, in user units */
  double                scale;    /* user units per mm */
  double                ratio;    /* drawn size to true size; 0: not a round one */
  double                origin_x, origin_y;
  int half;                        /* of a section that is its own image: 0 the right one, 1 the left */
} EmCanvas;

void   em_canvas_set_colour (EmCanvas *canvas, const EmColour *colour, double alpha);
double em_canvas_x (const EmCanvas *canvas, double x_mm);
double em_canvas_y (const EmCanvas *canvas, double y_mm);
void   em_canvas_extend (EmCanvas *canvas, double x_mm, double y_mm);

/* Path of all runs in ink; FALSE: there are none. */
gboolean em_canvas_trace (EmCanvas *canvas, EmInk ink, gboolean is_closed);

void   em_drawing_extend_weld (EmCanvas *canvas);
void   em_drawing_draw_proud  (EmCanvas *canvas);
void   em_drawing_draw_excess (EmCanvas *canvas);
void   em_drawing_draw_metal  (EmCanvas *canvas);
void   em_drawing_draw_caps   (EmCanvas *canvas);

/* Left, right, top, bottom: room the dimensions and the scale need around the outline, in user units. */
void em_drawing_margins (EmCanvas *canvas, double out_margin[4]);
void em_drawing_extend_near (EmCanvas *canvas);
void em_drawing_extend_dims (EmCanvas *canvas);
void em_drawing_draw_near  (EmCanvas *canvas);
void em_drawing_draw_dims  (EmCanvas *canvas);
void em_drawing_draw_scale (EmCanvas *canvas, double width, double height);
