/* em-kind-face: a flat face built up by an even thickness.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-kind-parts.h"

enum { FORM, LENGTH, WIDTH, DIAMETER, AREA, THICKNESS };
enum { RECTANGLE, DISC, STATED };
enum { P_FORM, P_LENGTH, P_WIDTH };

static const char *const form_ids[] = { "rectangle", "disc", "area", NULL };
static const char *const form_names[] = { EM_N ("Rectangle"), EM_N ("Disc"), EM_N ("Stated area"), NULL };

static const EmField fields[] =
{
  EM_FIELD_CHOICE ("form", EM_N ("Form"), form_ids, form_names),
  EM_FIELD_SIZE_WHEN ("length", "l", EM_N ("Length"), 5000.0, "form", 1u << RECTANGLE),
  EM_FIELD_SIZE_WHEN ("width", "w", EM_N ("Width"), 5000.0, "form", 1u << RECTANGLE),
  EM_FIELD_SIZE_WHEN ("diameter", "D", EM_N ("Diameter"), 5000.0, "form", 1u << DISC),
  { .id = "area", .symbol = "A", .name = EM_N ("Area"), .quantity = EM_QUANTITY_AREA, .high = 1e7, .preset = EM_ABSENT, .is_required = true,
    .shown_when = "form", .shown_mask = 1u << STATED },
  EM_FIELD_SIZE ("thickness", "t", EM_N ("Thickness to add"), 100.0),
};

/* V = area·t. A stated area is welded as the square of that area; its edge to cap is the square's, an estimate. */
static EmStatus
solve (const double *value, EmShape *out_shape, EmFault *out_fault)
{
  int form = (int) value[FORM];
  double l = form == RECTANGLE ? value[LENGTH] : form == DISC ? value[DIAMETER] : sqrt (value[AREA]);
  double w = form == RECTANGLE ? value[WIDTH] : l;

  (void) out_fault;
  out_shape->height_mm = value[THICKNESS];
  out_shape->coated_area_mm2 = form == STATED ? value[AREA] : l * w * (form == DISC ? EM_PI / 4.0 : 1.0);
  out_shape->net_volume_mm3 = out_shape->coated_area_mm2 * value[THICKNESS];
  out_shape->cap_edge_mm = form == DISC ? EM_PI * l : 2.0 * (l + w);
  out_shape->reach_extent_mm = fmax (l, w);
  out_shape->p[P_FORM] = form;
  out_shape->p[P_LENGTH] = l;
  out_shape->p[P_WIDTH] = w;
  return EM_OK;
}

static double
width_mm (const EmShape *shape, double z_mm)
{
  (void) z_mm;
  return fmin (shape->p[P_LENGTH], shape->p[P_WIDTH]);
}

/* A disc's mean chord is π/4 of its diameter. */
static double
length_mm (const EmShape *shape, double z_mm)
{
  (void) z_mm;
  return shape->coated_area_mm2 / fmin (shape->p[P_LENGTH], shape->p[P_WIDTH]);
}

static void
outline (const EmShape *shape, EmView view, EmOutline *out)
{
  double l = shape->p[P_LENGTH], w = shape->p[P_WIDTH], t = shape->height_mm, m = fmax (0.3 * w, 3 * t), e = 0.15 * fmax (l, w);
  int form = (int) shape->p[P_FORM], across = form == RECTANGLE ? WIDTH : form == DISC ? DIAMETER : -1;

  *out = (EmOutline) { 0 };
  if (view == EM_VIEW_SECTION)
    {
      em_outline_box (out, EM_INK_BASE, -w / 2, -m, w / 2, 0);
      em_outline_box (out, EM_INK_METAL, -w / 2, 0, w / 2, t);
      em_outline_dim (out, -w / 2, t, w / 2, t, 0.5 * m, across, w);
      em_outline_dim (out, w / 2, t, w / 2, 0, 0.5 * m, THICKNESS, t);
      return;
    }
  em_outline_box (out, EM_INK_BASE, -l / 2 - e, -w / 2 - e, l / 2 + e, w / 2 + e);
  if (form == DISC)
    em_outline_arc (out, EM_INK_METAL, true, 0, 0, l / 2, l / 2, 0, 2 * EM_PI);
  else
    em_outline_box (out, EM_INK_METAL, -l / 2, -w / 2, l / 2, w / 2);
  em_outline_dim (out, -l / 2, w / 2, l / 2, w / 2, 1.5 * e, form == RECTANGLE ? LENGTH : across, l);
}

static int
layer (const EmShape *shape, double z_mm, int max, double *out_xy_mm)
{
  return em_layer_line (max, out_xy_mm, -shape->p[P_WIDTH] / 2, z_mm, shape->p[P_WIDTH] / 2, z_mm);
}

const EmKind em_kind_face =
{
  .id = "face", .name = EM_N ("Face build-up"), .summary = EM_N ("A flat face built up by an even thickness"),
  .fields = fields, .n_fields = EM_N_OF (fields), .caps_edges = true,
  .solve = solve, .width_mm = width_mm, .length_mm = length_mm, .outline = outline, .layer = layer,
};
