/* Checks of the kinds against hand-worked numbers and refusals by field.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-feature.h"
#include "em-test-main.h"

#define X EM_ABSENT

/* Elementary mensuration, worked from the formula beside each row to six figures. */
static const struct { const char *name, *kind; double value[EM_FIELD_MAX], volume; } rows[] =
{
  { "chip 2 × 1 on 10: ½·2·1·10", "edge-nick", { 10, 2, 1, 0, X, X, X, X, X, X }, 10.0 },
  { "tapered: a third", "edge-nick", { 10, 2, 1, 1, X, X, X, X, X, X }, 10.0 / 3.0 },
  { "r 0.5, 90°, l 120: 0.25·0.2146018·120", "worn-corner", { 120, 0.5, X, X, X, X, X, X, X, X }, 6.438055 },
  { "r 0.8, 60°, l 45: 0.64·0.6848533·45", "worn-corner", { 45, 0.8, X, 60, X, X, X, X, X, X }, 19.723775 },
  { "outside edge R 10, r 0.5: 0.0536505·2π·(10 − 0.111684)", "worn-corner", { X, 0.5, X, X, 20, 0, X, X, X, X }, 3.33331 },
  { "bore edge R 10, r 0.5: 0.0536505·2π·(10 + 0.111684)", "worn-corner", { X, 0.5, X, X, 20, 1, X, X, X, X }, 3.40861 },
  { "20·5·0.3", "sidewall", { 20, 5, 0.3, X, X, X, X, X, X, X }, 30.0 },
  { "area 40, 0.5 thick", "face", { 2, X, X, X, 40, 0.5, X, X, X, X }, 20.0 },
  { "rib 10·(0.5·(2 + 6) + 2·0.25)", "rib", { 10, 2, 0.5, 3, 0, 0, X, X, X, X }, 45.0 },
  { "D 12 worn, 0.25 a side, L 30: π·0.25·11.75·30", "bore", { 11.5, 12, X, 30, X, X, X, X, X, X }, 276.853 },
  { "d 25 worn, 0.4 a side, L 18: π·0.4·25.4·18", "pin", { 25.8, 25, X, 18, X, X, X, X, X, X }, 574.534 },
  { "flat half sphere R 2, t 2: ⅔π·8", "seat", { 1, 4, X, X, 2, 2, X, X, X, X }, 16.755161 },
  { "dam: base 1.5 + 4·tan 5° = 1.849955, l 12, h 2, top 1.5 wide: 12·2·1.674977", "dam", { 12, 1.849954654, 2, 5, 0, X, X, X, X, X }, 40.19946 },
  { "cap a 1, h 0.3: π·0.3/6·3.09", "recess", { 4, X, X, 2, 0.3, X, X, X, X, X }, 0.485376 },
  { "half ellipsoid 2 × 1 × 0.5: ⅔π", "recess", { 3, 4, 2, X, 0.5, X, X, X, X, X }, 2.094395 },
  { "cone ø1 × 0.6: π·0.25·0.6/3 = π·0.05", "recess", { 2, X, X, 1, 0.6, X, X, X, X, X }, 0.157080 },
  { "depth 0.8, root 0.2, 90°, l 15: 0.8·15", "groove", { 15, 0.8, 0.2, 90, X, X, X, X, X, X }, 12.0 },
};

/* Composite midpoint on z = H·(3u² − 2u³), which flattens root-like ends; independent of the closed forms. */
static double
integral (const EmShape *shape)
{
  double sum = 0.0;

  for (int i = 0; i < 20000; i++)
    {
      double u = (i + 0.5) / 20000.0, z = shape->height_mm * u * u * (3.0 - 2.0 * u);

      sum += shape->kind->width_mm (shape, z) * shape->kind->length_mm (shape, z) * 6.0 * u * (1.0 - u);
    }
  return sum * shape->height_mm / 20000.0;
}

START_TEST (test_volumes)
{
  for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++)
    {
      EmShape shape;
      EmFault fault = { 0 };

      ck_assert_msg (em_shape_solve (em_kind_find (rows[i].kind), rows[i].value, &shape, &fault) == EM_OK, "%s: %s", rows[i].name, fault.field);
      ck_assert_msg (fabs (shape.net_volume_mm3 / rows[i].volume - 1.0) < 3e-6, "%s: %.9g", rows[i].name, shape.net_volume_mm3);
      ck_assert_msg (fabs (integral (&shape) / shape.net_volume_mm3 - 1.0) < 1e-6, "%s: profile %.9g", rows[i].name, integral (&shape));
    }
}
END_TEST

static const struct { const char *name, *kind; double value[EM_FIELD_MAX]; EmStatus code; const char *field; } refusals[] =
{
  { "draft closes", "dam", { 10, 1, 2, 20, 0, X, X, X, X, X }, EM_FAULT_CONFLICT, "draft" },
  { "bore larger than worn", "bore", { 12, 11, X, 5, X, X, X, X, X, X }, EM_FAULT_CONFLICT, "worn" },
  { "build too large for the bore", "bore", { 12, X, 7, 5, X, X, X, X, X, X }, EM_FAULT_CONFLICT, "build" },
  { "arc 0", "bore", { 12, 13, X, 5, 0, X, X, X, X, X }, EM_FAULT_RANGE, "arc" },
  { "arc 400", "bore", { 12, 13, X, 5, 400, X, X, X, X, X }, EM_FAULT_RANGE, "arc" },
  { "mouth wider than sphere", "seat", { 1, 10, X, X, 4, 1, X, X, X, X }, EM_FAULT_CONFLICT, "diameter" },
  { "cap deeper than its mouth's radius", "recess", { 4, X, X, 2, 1.1, X, X, X, X, X }, EM_FAULT_CONFLICT, "depth" },
  { "wrap on a crest", "rib", { 10, 2, 1, 0, 0, 1, X, X, X, X }, EM_FAULT_CONFLICT, "wraps" },
  { "radius to leave not smaller", "worn-corner", { 10, 1, 1, X, X, X, X, X, X, X }, EM_FAULT_CONFLICT, "radius_to" },
  { "angle 180", "worn-corner", { 10, 1, X, 180, X, X, X, X, X, X }, EM_FAULT_RANGE, "angle" },
  { "no length", "worn-corner", { X, 1, X, X, X, X, X, X, X, X }, EM_FAULT_MISSING, "length" },
  { "infinite", "sidewall", { INFINITY, 1, 1, X, X, X, X, X, X, X }, EM_FAULT_NOT_FINITE, "length" },
  { "negative", "sidewall", { 1, -1, 1, X, X, X, X, X, X, X }, EM_FAULT_RANGE, "height" },
  { "absent", "sidewall", { 1, 1, X, X, X, X, X, X, X, X }, EM_FAULT_MISSING, "thickness" },
};

START_TEST (test_refusals)
{
  for (size_t i = 0; i < sizeof refusals / sizeof refusals[0]; i++)
    {
      EmShape shape = { .height_mm = 42 };
      EmFault fault = { .field = "none" };
      EmStatus status = em_shape_solve (em_kind_find (refusals[i].kind), refusals[i].value, &shape, &fault);

      ck_assert_msg (status == refusals[i].code, "%s: %d", refusals[i].name, (int) status);
      ck_assert_str_eq (fault.field, refusals[i].field);
      ck_assert_double_eq (shape.height_mm, 42.0);
    }
}
END_TEST

EM_TEST_MAIN ("core: kinds", test_volumes, test_refusals)
