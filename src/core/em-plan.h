/* em-plan: how the metal goes on: layers, tracks, caps, melt-out.
 *
 * Depends on shape, wire size and the layer rules only, so one plan serves every
 * alloy and machine with the same efficiency.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-kind.h"

typedef struct
{
  double wire_mm;          /* d */
  double layer_ratio;      /* κ */
  double efficiency_ratio; /* η */
  double stock_mm;
  int32_t safety_layers;
  bool   is_melted_out, is_capped;
} EmPlanRules;

/* One instance. */
typedef struct
{
  double  layer_mm;             /* tL = κ·d */
  double  pitch_mm;             /* p = η·A / tL */
  int32_t layers;               /* N, safety layers in it */
  int32_t safety_layers;
  int64_t tracks;               /* sum over layers */
  int64_t cap_tracks;           /* tracks along each mm of edge to cap */
  int64_t melt_out_tracks;
  double  build_length_mm;      /* Σ tracks·l(z) */
  double  cap_length_mm;
  double  melt_out_length_mm;   /* no filler */
  double  welded_length_mm;     /* build + cap: with filler */
  double  net_volume_mm3, required_volume_mm3, deposited_volume_mm3, excess_volume_mm3;
} EmPlan;

typedef struct
{
  int32_t layer;          /* from 1 */
  bool    is_safety;
  double  z_mm;           /* mid-height */
  double  width_mm, length_mm;
  int64_t tracks;
} EmPlanLayer;

/* More layers than this is EM_FAULT_RANGE on "wire": a wire far too fine for the job. */
enum { EM_PLAN_LAYER_MAX = 10000 };

EmStatus em_plan_solve (const EmShape *shape, const EmPlanRules *rules, EmPlan *out_plan, EmFault *out_fault);

/* Layer i (from 0) of a plan, for the working, the drawings and the bench sheet. */
void em_plan_layer (const EmShape *shape, const EmPlanRules *rules, const EmPlan *plan, int32_t i, EmPlanLayer *out_layer);

/* ceil that does not count a floating error as a further whole: relative slack 1e-9. */
double em_ceil (double value);
