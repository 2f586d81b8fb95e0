/* em-plan: layers and tracks of one instance.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-plan.h"

#include <math.h>

#define PI 3.14159265358979323846

/* A count that is whole but for floating error stays that count. */
#define SLACK (1.0 - 1e-9)

/* More tracks than this in a layer is no weld, and would not be held exactly. */
#define TRACKS_HIGH 1e9

double
em_ceil (double value)
{
  return ceil (value * SLACK);
}

/* As em_ceil, for 0 ≤ value ≤ TRACKS_HIGH and never below 1; the conversion is quicker than ceil. */
static inline int64_t
count_up (double value)
{
  double guarded = value * SLACK;
  int64_t whole = (int64_t) guarded;

  whole += guarded > (double) whole;
  return whole > 1 ? whole : 1;
}

static double
required_volume (const EmShape *shape, double stock_mm)
{
  /* The allowance lies as a skin of even thickness over the metal covered. */
  return shape->net_volume_mm3 + stock_mm * shape->coated_area_mm2;
}

static EmStatus
check_rules (const EmPlanRules *rules, EmFault *out_fault)
{
  if (!isfinite (rules->wire_mm) || rules->wire_mm <= 0.0)
    return em_fault_set (out_fault, EM_FAULT_RANGE, "wire", rules->wire_mm, 0.0, EM_ABSENT);
  if (!isfinite (rules->layer_ratio) || rules->layer_ratio <= 0.0)
    return em_fault_set (out_fault, EM_FAULT_RANGE, "layer_ratio", rules->layer_ratio, 0.0, 1.0);
  if (!(rules->efficiency_ratio > 0.0 && rules->efficiency_ratio <= 1.0))
    return em_fault_set (out_fault, EM_FAULT_RANGE, "efficiency", rules->efficiency_ratio, 0.0, 1.0);
  if (!isfinite (rules->stock_mm) || rules->stock_mm < 0.0)
    return em_fault_set (out_fault, EM_FAULT_RANGE, "stock", rules->stock_mm, 0.0, EM_ABSENT);
  if (rules->safety_layers < 0 || rules->safety_layers > EM_PLAN_LAYER_MAX)
    return em_fault_set (out_fault, EM_FAULT_RANGE, "safety_layers", rules->safety_layers, 0.0, EM_PLAN_LAYER_MAX);
  return EM_OK;
}

/* Sums tracks and their length over the layers. Layer i is taken at its mid-height
 * (i + ½)·tL, and at H where that lies above it: stock and safety layers are as wide
 * as the top. Those, all alike, are added in one step. */
static EmStatus
sum_layers (const EmShape *shape, EmPlan *plan, EmFault *out_fault)
{
  const EmKind *kind = shape->kind;
  double height = shape->height_mm, per_pitch = 1.0 / plan->pitch_mm;
  double top_length = kind->length_mm (shape, height), top_width = kind->width_mm (shape, height);
  int32_t below = (int32_t) fmin (plan->layers, ceil (fmax (0.0, height / plan->layer_mm - 0.5)));
  int64_t tracks = 0;
  double length = 0.0;

  if (!(top_width * per_pitch < TRACKS_HIGH && kind->width_mm (shape, 0.0) * per_pitch < TRACKS_HIGH))
    return em_fault_set (out_fault, EM_FAULT_OVERFLOW, "tracks", top_width * per_pitch, 1.0, TRACKS_HIGH);
  for (int32_t i = 0; i < below; i++)
    {
      double z = (i + 0.5) * plan->layer_mm;
      int64_t n = count_up (fmin (kind->width_mm (shape, z) * per_pitch, TRACKS_HIGH));

      tracks += n;
      length += (double) n * kind->length_mm (shape, z);
    }

  int64_t top_tracks = count_up (top_width * per_pitch) * (plan->layers - below);

  plan->tracks = tracks + top_tracks;
  plan->build_length_mm = length + (double) top_tracks * top_length;
  return EM_OK;
}

/* Tracks along the sharp edge on the other face: max(1, ⌈built height / p⌉) for each mm of edge (common practice). */
static void
plan_cap (const EmShape *shape, const EmPlanRules *rules, EmPlan *plan)
{
  if (!rules->is_capped || !(shape->cap_edge_mm > 0.0))
    return;
  plan->cap_tracks = count_up (fmin ((shape->height_mm + rules->stock_mm) / plan->pitch_mm, TRACKS_HIGH));
  plan->cap_length_mm = (double) plan->cap_tracks * shape->cap_edge_mm;
}

/* One layer of tracks over the metal covered, with no filler (common practice): area/p of track, and whole tracks of
 * the footing's length where they make up that area, as they do on a flat footing. */
static EmStatus
plan_melt_out (const EmShape *shape, const EmPlanRules *rules, EmPlan *plan, EmFault *out_fault)
{
  double length = shape->coated_area_mm2 / plan->pitch_mm, along = shape->kind->length_mm (shape, 0.0);
  double across = shape->kind->width_mm (shape, 0.0);
  bool is_flat;

  if (!rules->is_melted_out)
    return EM_OK;
  if (!(length >= 0.0 && length / fmax (along, plan->pitch_mm) < TRACKS_HIGH))
    return em_fault_set (out_fault, EM_FAULT_OVERFLOW, "tracks", length, 0.0, TRACKS_HIGH);
  is_flat = fabs (across * along - shape->coated_area_mm2) <= 1e-9 * shape->coated_area_mm2;
  plan->melt_out_tracks = count_up (is_flat ? across / plan->pitch_mm : length / fmax (shape->reach_extent_mm, plan->pitch_mm));
  plan->melt_out_length_mm = is_flat ? (double) plan->melt_out_tracks * along : length;
  return EM_OK;
}

/**
 * em_plan_solve:
 * tL = κ·d; p = η·A/tL, so that volume is conserved; N = ⌈(H + stock)/tL⌉ + safety, the ceiling guarded
 * against floating error; tracks per layer max(1, ⌈w(z)/p⌉). One instance; lengths mm, volumes mm³.
 * Deposited volume is η·A·welded length; excess is deposited less net.
 * Returns EM_FAULT_RANGE on "wire" when the job would take more than EM_PLAN_LAYER_MAX layers (low: the finest
 * that would do), EM_FAULT_RANGE on a rule outside its limits, EM_FAULT_OVERFLOW on "tracks".
 */
EmStatus
em_plan_solve (const EmShape *shape, const EmPlanRules *rules, EmPlan *out_plan, EmFault *out_fault)
{
  EmPlan plan = { .safety_layers = rules->safety_layers };
  double section_mm2 = PI * rules->wire_mm * rules->wire_mm / 4.0, layers;
  EmStatus status = check_rules (rules, out_fault);

  if (status != EM_OK)
    return status;
  plan.layer_mm = rules->layer_ratio * rules->wire_mm;
  plan.pitch_mm = rules->efficiency_ratio * section_mm2 / plan.layer_mm;
  layers = fmax (1.0, em_ceil ((shape->height_mm + rules->stock_mm) / plan.layer_mm)) + rules->safety_layers;
  if (!(layers <= EM_PLAN_LAYER_MAX))
    return em_fault_set (out_fault, EM_FAULT_RANGE, "wire", rules->wire_mm,
                         (shape->height_mm + rules->stock_mm) / (rules->layer_ratio * (EM_PLAN_LAYER_MAX - rules->safety_layers)),
                         EM_ABSENT);
  plan.layers = (int32_t) layers;
  status = sum_layers (shape, &plan, out_fault);
  if (status != EM_OK)
    return status;
  /* A nick tapering to both ends has no length left above its tip: layers taken there would weld it with no wire at all. */
  plan.build_length_mm = fmax (plan.build_length_mm, shape->net_volume_mm3 / (rules->efficiency_ratio * section_mm2));
  plan_cap (shape, rules, &plan);
  status = plan_melt_out (shape, rules, &plan, out_fault);
  if (status != EM_OK)
    return status;
  plan.welded_length_mm = plan.build_length_mm + plan.cap_length_mm;
  plan.net_volume_mm3 = shape->net_volume_mm3;
  plan.required_volume_mm3 = required_volume (shape, rules->stock_mm);
  plan.deposited_volume_mm3 = rules->efficiency_ratio * section_mm2 * plan.welded_length_mm;
  plan.excess_volume_mm3 = plan.deposited_volume_mm3 - plan.net_volume_mm3;
  *out_plan = plan;
  return EM_OK;
}

/**
 * em_plan_layer:
 * Layer i of plan, 0 ≤ i < plan->layers, as em_plan_solve counted it; z_mm is its true mid-height, width and length those it was counted with.
 */
void
em_plan_layer (const EmShape *shape, const EmPlanRules *rules, const EmPlan *plan, int32_t i, EmPlanLayer *out_layer)
{
  double z = (i + 0.5) * plan->layer_mm, counted = fmin (z, shape->height_mm);

  (void) rules;
  *out_layer = (EmPlanLayer) {
    .layer = i + 1,
    .is_safety = i >= plan->layers - plan->safety_layers,
    .z_mm = z,
    .width_mm = shape->kind->width_mm (shape, counted),
    .length_mm = shape->kind->length_mm (shape, counted),
  };
  out_layer->tracks = count_up (fmin (out_layer->width_mm / plan->pitch_mm, TRACKS_HIGH));
}
