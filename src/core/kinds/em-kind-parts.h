/* em-kind-parts: what the files of the kinds share; private to them and to em-kind.c.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "../em-kind.h"

#include <stddef.h>

extern const EmKind em_kind_edge_nick, em_kind_worn_corner, em_kind_sidewall, em_kind_face, em_kind_rib, em_kind_bore,
  em_kind_seat, em_kind_pin, em_kind_dam, em_kind_recess, em_kind_groove;

#define EM_PI 3.14159265358979323846
#define EM_RADIANS(degrees) ((degrees) * (EM_PI / 180.0))
#define EM_DEGREES(radians) ((radians) * (180.0 / EM_PI))

enum { EM_ARC_STEPS = 72 };   /* chords a full turn is drawn with */

/* A dimension in mm that must be given; one that may be left out; the n of a table. */
#define EM_FIELD_SIZE(id_, symbol_, name_, high_) \
  { .id = id_, .symbol = symbol_, .name = name_, .quantity = EM_QUANTITY_LENGTH, .high = high_, .preset = EM_ABSENT, .is_required = true }
#define EM_FIELD_SIZE_WHEN(id_, symbol_, name_, high_, choice_, mask_) \
  { .id = id_, .symbol = symbol_, .name = name_, .quantity = EM_QUANTITY_LENGTH, .high = high_, .preset = EM_ABSENT, .is_required = true, \
    .shown_when = choice_, .shown_mask = mask_ }
#define EM_FIELD_OPTIONAL(id_, symbol_, name_, high_) \
  { .id = id_, .symbol = symbol_, .name = name_, .quantity = EM_QUANTITY_LENGTH, .high = high_, .preset = EM_ABSENT }
#define EM_FIELD_CHOICE(id_, name_, options_, names_) \
  { .id = id_, .symbol = "", .name = name_, .quantity = EM_QUANTITY_CHOICE, .low_allowed = true, .preset = 0.0, .is_required = true, \
    .options = options_, .option_names = names_ }
#define EM_N_OF(table) ((int) (sizeof (table) / sizeof (table)[0]))

/* ---- drawing; points beyond EM_OUTLINE_MAX are dropped ---- */

void em_outline_point (EmOutline *outline, EmInk ink, bool is_start, double x_mm, double y_mm);
void em_outline_run (EmOutline *outline, EmInk ink, int n, const double *xy_mm);
void em_outline_box (EmOutline *outline, EmInk ink, double x0_mm, double y0_mm, double x1_mm, double y1_mm);
/* from and to in radians, counter-clockwise when to > from. */
void em_outline_arc (EmOutline *outline, EmInk ink, bool is_start, double x_mm, double y_mm, double radius_x_mm, double radius_y_mm,
                     double from, double to);
/* The length of an arc about the origin, drawn at radius from 0 to turn. */
void em_outline_arc_dim (EmOutline *outline, double radius_mm, double turn, int field, double value);
/* An angle of turn radians at an apex, its arc beginning in direction from; legs as in EmOutlineDim. */
void em_outline_angle (EmOutline *outline, double x_mm, double y_mm, double radius_mm, double from, double turn, int legs, int field);
void em_outline_dim (EmOutline *outline, double x0_mm, double y0_mm, double x1_mm, double y1_mm, double offset_mm, int field, double value);

/* Writes up to max points of an arc; returns how many. */
int em_layer_arc (int max, double *out_xy_mm, double x_mm, double y_mm, double radius_x_mm, double radius_y_mm, double from, double to);
/* Writes one straight line, when there is room. */
int em_layer_line (int max, double *out_xy_mm, double x0_mm, double y0_mm, double x1_mm, double y1_mm);
