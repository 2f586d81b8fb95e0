/* Checks of core/em-plan, on three plain shapes of its own.
 *
 * Worked by hand with d = 0.5 mm, κ = 0.5, η = 0.95: A = π·0.25/4 = 0.196349541 mm², tL = 0.25 mm,
 * p = 0.95·0.196349541/0.25 = 0.746128255 mm.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-plan.h"
#include "em-test-main.h"

#include <math.h>

/* A box: w and l constant, p[0] and p[1]. */
static double box_width (const EmShape *s, double z) { (void) z; return s->p[0]; }
static double box_length (const EmShape *s, double z) { (void) z; return s->p[1]; }
static const EmKind box_kind = { .id = "box", .width_mm = box_width, .length_mm = box_length };

/* A wedge: full width p[0] at the foot, none at the top. */
static double wedge_width (const EmShape *s, double z) { return s->p[0] * (1.0 - z / s->height_mm); }
static const EmKind wedge_kind = { .id = "wedge", .width_mm = wedge_width, .length_mm = box_length };

/* A ridge that grows wider upwards: p[0]·z/H. */
static double vee_width (const EmShape *s, double z) { return s->p[0] * z / s->height_mm; }
static const EmKind vee_kind = { .id = "vee", .width_mm = vee_width, .length_mm = box_length };

/* A pyramid, as a nick that tapers to both ends: neither width nor length at the top. */
static double pyramid_length (const EmShape *s, double z) { return s->p[1] * (1.0 - z / s->height_mm); }
static const EmKind pyramid_kind = { .id = "pyramid", .width_mm = wedge_width, .length_mm = pyramid_length };

static EmShape
shape_of (const EmKind *kind, double width, double length, double height, double share)
{
  return (EmShape) { .kind = kind, .height_mm = height, .net_volume_mm3 = share * width * length * height,
                     .coated_area_mm2 = width * length, .cap_edge_mm = length, .p = { width, length } };
}

static EmPlanRules
rules_of (double wire)
{
  return (EmPlanRules) { .wire_mm = wire, .layer_ratio = 0.5, .efficiency_ratio = 0.95, .safety_layers = 1 };
}

static EmPlan
solve (const EmShape *shape, const EmPlanRules *rules)
{
  EmPlan plan;
  EmFault fault;

  ck_assert_int_eq (em_plan_solve (shape, rules, &plan, &fault), EM_OK);
  return plan;
}

/* Common practice, no source: 0.020 in wire builds 0.010 in a pass; 0.015 in wanted is two passes
 * and a third for safety. Other rows: ⌈H/tL⌉ by hand, at and around whole numbers of layers. */
START_TEST (test_layers)
{
  static const struct { const char *name; double wire, height; int safety, layers; } rows[] =
  {
    { "0.010 in of 0.020 in wire", 0.508, 0.254, 0, 1 },
    { "0.015 in of 0.020 in wire, and safety", 0.508, 0.381, 1, 3 },
    { "exactly two", 0.508, 0.508, 0, 2 },
    { "exactly three, 0.3/0.1 is a bit less in binary", 0.2, 0.3, 0, 3 },
    { "exactly three, 0.1 + 0.2 is a bit more", 0.2, 0.1 + 0.2, 0, 3 },
    { "exactly seven, 0.7/0.1", 0.2, 0.7, 0, 7 },
    { "a hair over two", 0.5, 0.5001, 0, 3 },
    { "a hair under two", 0.5, 0.4999, 0, 2 },
    { "thinner than a layer", 0.5, 0.01, 0, 1 },
    { "two for safety", 0.5, 0.5, 2, 4 },
  };

  for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++)
    {
      EmShape shape = shape_of (&box_kind, 2, 10, rows[i].height, 1);
      EmPlanRules rules = rules_of (rows[i].wire);

      rules.safety_layers = rows[i].safety;
      ck_assert_msg (solve (&shape, &rules).layers == rows[i].layers, "%s: %d", rows[i].name, solve (&shape, &rules).layers);
    }
}
END_TEST

/* Box 2 × 10 × 0.5: N = 2 + 1, ⌈2/0.746128⌉ = ⌈2.6805⌉ = 3 tracks a layer, 9 tracks, 90 mm;
 * deposited 0.95·0.196349541·90 = 16.787886 mm³. */
START_TEST (test_box)
{
  EmShape shape = shape_of (&box_kind, 2, 10, 0.5, 1);
  EmPlanRules rules = rules_of (0.5);
  EmPlan plan = solve (&shape, &rules);

  ck_assert_double_eq_tol (plan.layer_mm, 0.25, 1e-12);
  ck_assert_double_eq_tol (plan.pitch_mm, 0.746128255, 1e-9);
  ck_assert_int_eq (plan.tracks, 9);
  ck_assert_double_eq_tol (plan.welded_length_mm, 90, 1e-9);
  ck_assert_double_eq_tol (plan.net_volume_mm3, 10, 1e-12);
  ck_assert_double_eq_tol (plan.required_volume_mm3, 10, 1e-12);
  ck_assert_double_eq_tol (plan.deposited_volume_mm3, 16.787886, 1e-6);
  ck_assert_double_eq_tol (plan.excess_volume_mm3, 6.787886, 1e-6);
  ck_assert_int_eq (plan.cap_tracks, 0);
  ck_assert_int_eq (plan.melt_out_tracks, 0);
}
END_TEST

/* 0.2 mm to machine off: (0.5 + 0.2)/0.25 = 2.8 → 3, + 1 = 4 layers, 12 tracks, 120 mm; required 10 + 0.2·20 = 14 mm³. */
START_TEST (test_stock)
{
  EmShape shape = shape_of (&box_kind, 2, 10, 0.5, 1);
  EmPlanRules rules = rules_of (0.5);

  rules.stock_mm = 0.2;

  EmPlan plan = solve (&shape, &rules);

  ck_assert_int_eq (plan.layers, 4);
  ck_assert_int_eq (plan.tracks, 12);
  ck_assert_double_eq_tol (plan.welded_length_mm, 120, 1e-9);
  ck_assert_double_eq_tol (plan.required_volume_mm3, 14, 1e-12);
}
END_TEST

/* Wedge 2 × 10 × 1: mid-heights 0.125, 0.375, 0.625, 0.875 → widths 1.75, 1.25, 0.75, 0.25 → /p = 2.345, 1.675, 1.005, 0.335
 * → 3 + 2 + 2 + 1, and the safety layer at w(H) = 0 → 1: 9 tracks, 90 mm. */
START_TEST (test_wedge)
{
  EmShape shape = shape_of (&wedge_kind, 2, 10, 1, 0.5);
  EmPlanRules rules = rules_of (0.5);
  EmPlan plan = solve (&shape, &rules);
  static const int64_t tracks[] = { 3, 2, 2, 1, 1 };
  int64_t sum = 0;

  ck_assert_int_eq (plan.layers, 5);
  ck_assert_int_eq (plan.tracks, 9);
  ck_assert_double_eq_tol (plan.welded_length_mm, 90, 1e-9);
  for (int32_t i = 0; i < plan.layers; i++)
    {
      EmPlanLayer layer;

      em_plan_layer (&shape, &rules, &plan, i, &layer);
      ck_assert_int_eq (layer.tracks, tracks[i]);
      ck_assert_int_eq (layer.layer, i + 1);
      ck_assert_int_eq (layer.is_safety, i == 4);
      sum += layer.tracks;
    }
  ck_assert_int_eq (sum, plan.tracks);
}
END_TEST

/* Vee 2 × 10 × 1, stock 0.5: heights 0.125 … 0.875 → widths 0.25, 0.75, 1.25, 1.75 → 1, 2, 2, 3; the two stock layers and
 * the safety layer at w(H) = 2 → 3 each: 8 + 9 = 17 tracks. */
START_TEST (test_stock_is_as_wide_as_the_top)
{
  EmShape shape = shape_of (&vee_kind, 2, 10, 1, 0.5);
  EmPlanRules rules = rules_of (0.5);

  rules.stock_mm = 0.5;
  ck_assert_int_eq (solve (&shape, &rules).tracks, 17);
}
END_TEST

/* A pyramid 0.3 × 6 × 0.1 is lower than the middle of the first layer (0.125), where it has no length. What is missing, 0.3·6·0.1/3 =
 * 0.06 mm³, still takes its wire: 0.06/(0.95·0.196349541) = 0.3216606 mm of track. */
START_TEST (test_never_less_wire_than_metal_missing)
{
  EmShape shape = shape_of (&pyramid_kind, 0.3, 6, 0.1, 1.0 / 3.0);
  EmPlanRules rules = rules_of (0.5);
  EmPlan plan = solve (&shape, &rules);

  ck_assert_double_eq_tol (plan.welded_length_mm, 0.3216606, 1e-7);
  ck_assert_double_eq_tol (plan.deposited_volume_mm3, 0.06, 1e-9);
  ck_assert_double_eq_tol (plan.excess_volume_mm3, 0, 1e-9);
}
END_TEST

/* Common practice, no source: a built-up top is capped along its edge; a nicked edge is fused clean before filler.
 * Box 2 × 10 × 2: cap ⌈2/0.746⌉ = 3 tracks of 10 mm, with filler; melt-out ⌈2/0.746⌉ = 3 tracks of 10 mm, with none. */
START_TEST (test_cap_and_melt_out)
{
  EmShape shape = shape_of (&box_kind, 2, 10, 2, 1);
  EmPlanRules rules = rules_of (0.5);
  EmPlan plain = solve (&shape, &rules), plan;

  rules.is_capped = rules.is_melted_out = true;
  plan = solve (&shape, &rules);
  ck_assert_int_eq (plan.cap_tracks, 3);
  ck_assert_double_eq_tol (plan.cap_length_mm, 30, 1e-9);
  ck_assert_int_eq (plan.melt_out_tracks, 3);
  ck_assert_double_eq_tol (plan.melt_out_length_mm, 30, 1e-9);
  ck_assert_double_eq_tol (plan.welded_length_mm, plain.welded_length_mm + 30, 1e-9);
  ck_assert_double_eq_tol (plan.deposited_volume_mm3 - plain.deposited_volume_mm3, 0.95 * 0.196349541 * 30, 1e-6);
  ck_assert_int_eq (plan.layers, plain.layers);
}
END_TEST

/* A cone stands on its tip: w(0)·l(0) is nothing, yet the whole flank is fused clean. Mouth 4, depth 3: flank π·2·√(2² + 3²) =
 * 22.654347 mm²; over p = 0.746128255 that is 30.362539 mm of track. */
START_TEST (test_melt_out_of_a_point)
{
  const EmKind *recess = em_kind_find ("recess");
  double value[EM_FIELD_MAX];
  EmPlanRules rules = rules_of (0.5);
  EmShape shape;
  EmFault fault;

  for (int i = 0; i < EM_FIELD_MAX; i++)
    value[i] = EM_ABSENT;
  value[em_kind_field (recess, "form")] = 2;
  value[em_kind_field (recess, "diameter")] = 4;
  value[em_kind_field (recess, "depth")] = 3;
  ck_assert_int_eq (em_shape_solve (recess, value, &shape, &fault), EM_OK);
  rules.is_melted_out = true;
  ck_assert_double_eq_tol (solve (&shape, &rules).melt_out_length_mm, 30.362539, 1e-5);
  ck_assert_int_ge (solve (&shape, &rules).melt_out_tracks, 1);
}
END_TEST

/* Pitch is not free: where the width is a whole number of pitches and the height of layers, metal laid is metal wanted. */
START_TEST (test_volume_is_conserved)
{
  static const double wires[] = { 0.2, 0.254, 0.381, 0.508, 0.889 };

  for (int i = 0; i < 5; i++)
    {
      double pitch = 0.95 * acos (-1.0) * wires[i] / 4.0 / 0.5;   /* η·(π·d²/4)/(κ·d) */
      EmShape shape = shape_of (&box_kind, 4 * pitch, 25, 3 * 0.5 * wires[i], 1);
      EmPlanRules rules = rules_of (wires[i]);

      rules.safety_layers = 0;

      EmPlan plan = solve (&shape, &rules);

      ck_assert_int_eq (plan.tracks, 12);
      ck_assert_double_eq_tol (plan.deposited_volume_mm3, plan.net_volume_mm3, 1e-9 * plan.net_volume_mm3);
    }
}
END_TEST

START_TEST (test_bad_rules)
{
  static const struct { const char *field; size_t offset; double value; } rows[] =
  {
    { "wire", offsetof (EmPlanRules, wire_mm), 0 },
    { "wire", offsetof (EmPlanRules, wire_mm), NAN },
    { "wire", offsetof (EmPlanRules, wire_mm), INFINITY },
    { "wire", offsetof (EmPlanRules, wire_mm), -0.5 },
    { "layer_ratio", offsetof (EmPlanRules, layer_ratio), 0 },
    { "efficiency", offsetof (EmPlanRules, efficiency_ratio), 0 },
    { "efficiency", offsetof (EmPlanRules, efficiency_ratio), 1.01 },
    { "stock", offsetof (EmPlanRules, stock_mm), -0.1 },
    { "stock", offsetof (EmPlanRules, stock_mm), NAN },
    { "layer_ratio", offsetof (EmPlanRules, layer_ratio), INFINITY },
    { "efficiency", offsetof (EmPlanRules, efficiency_ratio), NAN },
    { "stock", offsetof (EmPlanRules, stock_mm), INFINITY },
  };
  EmShape shape = shape_of (&box_kind, 2, 10, 0.5, 1);

  for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++)
    {
      EmPlanRules rules = rules_of (0.5);
      EmPlan plan = { .layers = -5 };
      EmFault fault;

      *(double *) (void *) ((char *) &rules + rows[i].offset) = rows[i].value;
      ck_assert_msg (em_plan_solve (&shape, &rules, &plan, &fault) == EM_FAULT_RANGE, "%s %g", rows[i].field, rows[i].value);
      ck_assert_str_eq (fault.field, rows[i].field);
      ck_assert_int_eq (plan.layers, -5);
    }
}
END_TEST

/* Safety layers beyond any job, and more tracks than can be counted exactly: told, and nothing written. */
START_TEST (test_too_much)
{
  EmShape shape = shape_of (&box_kind, 2, 10, 0.5, 1), wide = shape_of (&box_kind, 1e10, 10, 0.5, 1), covered = shape;
  EmPlanRules rules = rules_of (0.5), more = rules;
  EmPlan plan = { .layers = -5 };
  EmFault fault;

  for (int i = 0; i < 2; i++)
    {
      more.safety_layers = i == 0 ? -1 : EM_PLAN_LAYER_MAX + 1;
      ck_assert_int_eq (em_plan_solve (&shape, &more, &plan, &fault), EM_FAULT_RANGE);
      ck_assert_str_eq (fault.field, "safety_layers");
      ck_assert (fault.low == 0 && fault.high == EM_PLAN_LAYER_MAX);
    }
  ck_assert_int_eq (em_plan_solve (&wide, &rules, &plan, &fault), EM_FAULT_OVERFLOW);
  ck_assert_str_eq (fault.field, "tracks");
  covered.coated_area_mm2 = 1e13;
  rules.is_melted_out = true;
  ck_assert_int_eq (em_plan_solve (&covered, &rules, &plan, &fault), EM_FAULT_OVERFLOW);
  ck_assert_str_eq (fault.field, "tracks");
  ck_assert_int_eq (plan.layers, -5);
}
END_TEST

/* 10 m of height with 0.2 mm wire: 100,000 layers; the finest that would do builds 10,000 mm in 9,999 layers and one
 * for safety: d = 10000/(0.5·9999) = 2.0002 mm. */
START_TEST (test_too_many_layers)
{
  EmShape shape = shape_of (&box_kind, 2, 10, 10000, 1);
  EmPlanRules rules = rules_of (0.2);
  EmPlan plan;
  EmFault fault;

  ck_assert_int_eq (em_plan_solve (&shape, &rules, &plan, &fault), EM_FAULT_RANGE);
  ck_assert_str_eq (fault.field, "wire");
  ck_assert_double_eq_tol (fault.low, 2.0002, 1e-4);
}
END_TEST

EM_TEST_MAIN ("core: plan", test_layers, test_box, test_stock, test_wedge, test_stock_is_as_wide_as_the_top, test_cap_and_melt_out,
              test_melt_out_of_a_point, test_volume_is_conserved, test_bad_rules, test_too_much, test_too_many_layers,
              test_never_less_wire_than_metal_missing)
