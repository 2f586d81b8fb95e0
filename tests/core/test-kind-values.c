/* Checks of the kinds against hand-worked numbers and refusals by field.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-feature.h"
#include "em-test-main.h"

#include <string.h>

#define X EM_ABSENT

/* Elementary mensuration, worked from the formula beside each row to six figures. */
static const struct { const char *name, *kind; double value[EM_FIELD_MAX], volume; } rows[] =
{
  { "chip 2 × 1 on 10: ½·2·1·10", "edge-nick", { 10, 2, 1, 0, X, X }, 10.0 },
  { "tapered: a third", "edge-nick", { 10, 2, 1, 1, X, X }, 10.0 / 3.0 },
  { "r 0.5, 90°, l 120: 0.25·0.2146018·120", "worn-corner", { 120, 0.5, X, X, X, X }, 6.438055 },
  { "r 0.8, 60°, l 45: 0.64·0.6848533·45", "worn-corner", { 45, 0.8, X, 60, X, X }, 19.723775 },
  { "outside edge R 10, r 0.5: 0.0536505·2π·(10 − 0.111684)", "worn-corner", { X, 0.5, X, X, 20, 0 }, 3.33331 },
  { "bore edge R 10, r 0.5: 0.0536505·2π·(10 + 0.111684)", "worn-corner", { X, 0.5, X, X, 20, 1 }, 3.40861 },
  { "20·5·0.3", "sidewall", { 20, 5, 0.3, X, X, X }, 30.0 },
  { "area 40, 0.5 thick", "face", { 2, X, X, X, 40, 0.5 }, 20.0 },
  { "rib 10·(0.5·(2 + 6) + 2·0.25)", "rib", { 10, 2, 0.5, 3, 0, 0 }, 45.0 },
  { "D 12 worn, 0.25 a side, L 30: π·0.25·11.75·30", "bore", { 11.5, 12, X, 30, X, X }, 276.853 },
  { "d 25 worn, 0.4 a side, L 18: π·0.4·25.4·18", "pin", { 25.8, 25, X, 18, X, X }, 574.534 },
  { "flat half sphere R 2, t 2: ⅔π·8", "seat", { 1, 4, X, X, 2, 2 }, 16.755161 },
  { "dam: base 1.5 + 4·tan 5° = 1.849955, l 12, h 2, top 1.5 wide: 12·2·1.674977", "dam", { 12, 1.849954654, 2, 5, 0, X }, 40.19946 },
  { "dam, ends tapered over 4: 2·1.5·(20 − 4), both wedges are half a block", "dam", { 20, 1.5, 2, 0, 3, 4 }, 48 },
  { "dam tapered to its middle: half a block 20·1.5·2", "dam", { 20, 1.5, 2, 0, 3, 10 }, 30 },
  { "cap a 1, h 0.3: π·0.3/6·3.09", "recess", { 4, X, X, 2, 0.3, X }, 0.485376 },
  { "half ellipsoid 2 × 1 × 0.5: ⅔π", "recess", { 3, 4, 2, X, 0.5, X }, 2.094395 },
  { "cone ø1 × 0.6: π·0.25·0.6/3 = π·0.05", "recess", { 2, X, X, 1, 0.6, X }, 0.157080 },
  { "depth 0.8, root 0.2, 90°, l 15: 0.8·15", "groove", { 15, 0.8, 0.2, 90, X, X }, 12.0 },
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

/* How fields may not fit together, with what would fit as the fault tells it; X where that side is open. Single fields beyond
 * their own limits: test-kind-limits. */
static const struct
{
  const char *name, *kind;
  double      value[EM_FIELD_MAX];
  EmStatus    code;
  const char *field, *other;
  double      low, high;
} refusals[] =
{
  { "draft closes: atan(1/(2·2)) = 14.0362°", "dam", { 10, 1, 2, 20, 0, X }, EM_FAULT_CONFLICT, "draft", "height", 0, 14.036243 },
  { "drafted ends close first: atan(1/(2·2))", "dam", { 1, 10, 2, 20, 1, X }, EM_FAULT_CONFLICT, "draft", "height", 0, 14.036243 },
  { "tapered ends longer than half the dam", "dam", { 10, 3, 2, 0, 3, 5.5 }, EM_FAULT_CONFLICT, "runout", "length", 0, 5 },
  { "rounded ends wider than the dam is long", "dam", { 3, 4, 2, 5, 2, X }, EM_FAULT_CONFLICT, "length", "width", 4, X },
  { "bore larger than worn", "bore", { 12, 11, X, 5, X, X }, EM_FAULT_CONFLICT, "worn", "diameter", 12, 5000 },
  { "bore not worn at all", "bore", { 12, 12, X, 5, X, X }, EM_FAULT_CONFLICT, "worn", "diameter", 12, 5000 },
  { "build too large for the bore", "bore", { 12, X, 7, 5, X, X }, EM_FAULT_CONFLICT, "build", "diameter", 0, 6 },
  { "bore told twice", "bore", { 12, 13, 0.5, 5, X, X }, EM_FAULT_CONFLICT, "build", "worn", X, X },
  { "bore not told", "bore", { 12, X, X, 5, X, X }, EM_FAULT_MISSING, "worn", NULL, 12, 5000 },
  { "arc 0", "bore", { 12, 13, X, 5, 0, X }, EM_FAULT_RANGE, "arc", NULL, 0, 360 },
  { "arc 400", "bore", { 12, 13, X, 5, 400, X }, EM_FAULT_RANGE, "arc", NULL, 0, 360 },
  { "pin thicker worn than finished", "pin", { 12, 13, X, 5, X, X }, EM_FAULT_CONFLICT, "worn", "diameter", 0, 12 },
  { "pin not worn at all", "pin", { 12, 12, X, 5, X, X }, EM_FAULT_CONFLICT, "worn", "diameter", 0, 12 },
  { "build leaves no pin", "pin", { 12, X, 6, 5, X, X }, EM_FAULT_CONFLICT, "build", "diameter", 0, 6 },
  { "pin told twice", "pin", { 12, 11, 0.5, 5, X, X }, EM_FAULT_CONFLICT, "build", "worn", X, X },
  { "pin not told", "pin", { 12, X, X, 5, X, X }, EM_FAULT_MISSING, "worn", NULL, 0, 12 },
  { "mouth wider than sphere", "seat", { 1, 10, X, X, 4, 1 }, EM_FAULT_CONFLICT, "diameter", "radius", 0, 8 },
  { "thicker than the sphere's radius", "seat", { 1, 6, X, X, 4, 4.1 }, EM_FAULT_CONFLICT, "thickness", "radius", 0, 4 },
  { "cone upside down", "seat", { 0, 6, 10, 4, X, 0.5 }, EM_FAULT_CONFLICT, "diameter_small", "diameter", 0, 6 },
  { "coat closes the cone: 3·4/√(4² + 2²) = 2.683282", "seat", { 0, 10, 6, 4, X, 2.7 }, EM_FAULT_CONFLICT, "thickness", "diameter_small", 0, 2.683282 },
  { "cap deeper than its mouth's radius", "recess", { 4, X, X, 2, 1.1, X }, EM_FAULT_CONFLICT, "depth", "diameter", 0, 1 },
  { "wrap on a crest", "rib", { 10, 2, 1, 0, 0, 1 }, EM_FAULT_CONFLICT, "wraps", "depth", 0, 0 },
  { "groove with no room", "groove", { 10, 2, 0, 0, X, X }, EM_FAULT_CONFLICT, "gap", "angle", 0, 200 },
  { "radius to leave not smaller", "worn-corner", { 10, 1, 1, X, X, X }, EM_FAULT_CONFLICT, "radius_to", "radius", 0, 1 },
  { "radius to leave larger", "worn-corner", { 10, 1, 1.5, X, X, X }, EM_FAULT_CONFLICT, "radius_to", "radius", 0, 1 },
  { "square shaft end: the worn arc is r wide on each side", "worn-corner", { X, 1, X, 90, 1.9, 0 }, EM_FAULT_CONFLICT, "diameter", "radius", 2, X },
  { "shaft with a 60° edge: 2·1·(1 + ½)", "worn-corner", { X, 1, X, 60, 2.9, 0 }, EM_FAULT_CONFLICT, "diameter", "radius", 3, X },
  { "longer than round: π·10 = 31.415927", "worn-corner", { 32, 1, X, 90, 10, 0 }, EM_FAULT_CONFLICT, "length", "diameter", 0, 31.415927 },
  { "angle 180", "worn-corner", { 10, 1, X, 180, X, X }, EM_FAULT_RANGE, "angle", NULL, 1, 179 },
  { "no length", "worn-corner", { X, 1, X, X, X, X }, EM_FAULT_MISSING, "length", NULL, 0, 20000 },
};

static bool
is_limit (double told, double limit)
{
  return isnan (limit) ? isnan (told) : fabs (told - limit) < 1e-6;
}

START_TEST (test_refusals)
{
  for (size_t i = 0; i < sizeof refusals / sizeof refusals[0]; i++)
    {
      EmShape shape = { .height_mm = 42 };
      EmFault fault = { .field = "none" };
      EmStatus status = em_shape_solve (em_kind_find (refusals[i].kind), refusals[i].value, &shape, &fault);

      ck_assert_msg (status == refusals[i].code, "%s: %d", refusals[i].name, (int) status);
      ck_assert_msg (strcmp (fault.field, refusals[i].field) == 0, "%s: %s named", refusals[i].name, fault.field);
      ck_assert_msg (refusals[i].other == NULL ? fault.other_field == NULL : fault.other_field != NULL && strcmp (fault.other_field, refusals[i].other) == 0,
                     "%s: beside %s", refusals[i].name, fault.other_field);
      ck_assert_msg (is_limit (fault.low, refusals[i].low) && is_limit (fault.high, refusals[i].high), "%s: %g … %g", refusals[i].name, fault.low, fault.high);
      ck_assert_double_eq (shape.height_mm, 42.0);
    }
}
END_TEST

/* Whether field at value is taken, as far as that field goes: another may still not fit. */
static bool
is_taken (size_t row, const char *field, double at)
{
  const EmKind *kind = em_kind_find (refusals[row].kind);
  double value[EM_FIELD_MAX];
  EmShape shape;
  EmFault fault = { 0 };

  memcpy (value, refusals[row].value, sizeof value);
  value[em_kind_field (kind, field)] = at;
  return em_shape_solve (kind, value, &shape, &fault) == EM_OK || strcmp (fault.field, field) != 0;
}

/* A limit told is a limit kept: the field a hair within it is taken, a hair beyond it refused, and on it refused only where the fault says so.
 * Only zero and whole numbers are sure to be met to the last bit. */
static void
try_limit (size_t row, const char *field, double limit, bool is_open, double inwards)
{
  double hair = 1e-9 * fmax (1.0, fabs (limit));
  const EmKind *kind = em_kind_find (refusals[row].kind);

  if (isnan (limit))
    return;
  if (floor (limit) == limit)
    ck_assert_msg (is_taken (row, field, limit) == !is_open, "%s: %s of %g, open %d", refusals[row].name, field, limit, is_open);
  if (kind->fields[em_kind_field (kind, field)].quantity == EM_QUANTITY_COUNT)
    return;
  ck_assert_msg (is_taken (row, field, limit + inwards * hair), "%s: refuses %s within %g", refusals[row].name, field, limit);
  ck_assert_msg (!is_taken (row, field, limit - inwards * 10 * hair), "%s: takes %s beyond %g", refusals[row].name, field, limit);
}

START_TEST (test_limits_told_are_kept)
{
  EmShape shape;
  EmFault fault = { 0 };

  em_shape_solve (em_kind_find (refusals[_i].kind), refusals[_i].value, &shape, &fault);
  try_limit ((size_t) _i, fault.field, fault.low, fault.low_is_open, 1);
  try_limit ((size_t) _i, fault.field, fault.high, fault.high_is_open, -1);
}
END_TEST

/* What just fits is taken. */
START_TEST (test_just_fits)
{
  static const struct { const char *name, *kind; double value[EM_FIELD_MAX]; } fits[] =
  {
    { "dam as long as wide", "dam", { 4, 4, 2, 5, 2, X } },
    { "coat to the sphere's centre", "seat", { 1, 6, X, X, 4, 4 } },
    { "half sphere", "seat", { 1, 8, X, X, 4, 1 } },
    { "cylinder for a cone", "seat", { 0, 6, 6, 4, X, 1 } },
    { "bore closed", "bore", { 12, X, 6, 5, X, X } },
    { "half ball", "recess", { 4, X, X, 2, 1, X } },
    { "shaft worn to a dome", "worn-corner", { X, 1, X, 90, 2, 0 } },
    { "once round", "worn-corner", { 31.415926535897932, 1, X, 90, 10, 0 } },
    { "slit", "groove", { 10, 2, 0.1, 0, X, X } },
  };

  for (size_t i = 0; i < sizeof fits / sizeof fits[0]; i++)
    {
      EmShape shape;
      EmFault fault = { .field = "none" };

      ck_assert_msg (em_shape_solve (em_kind_find (fits[i].kind), fits[i].value, &shape, &fault) == EM_OK, "%s: %s", fits[i].name, fault.field);
      ck_assert_msg (fabs (integral (&shape) / shape.net_volume_mm3 - 1.0) < 1e-6, "%s: profile %.9g", fits[i].name, integral (&shape));
    }
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("core: kinds");
  TCase *tcase = tcase_create ("kinds");
  SRunner *runner = srunner_create (suite);

  tcase_add_test (tcase, test_volumes);
  tcase_add_test (tcase, test_refusals);
  tcase_add_loop_test (tcase, test_limits_told_are_kept, 0, (int) (sizeof refusals / sizeof refusals[0]));
  tcase_add_test (tcase, test_just_fits);
  suite_add_tcase (suite, tcase);
  srunner_run_all (runner, CK_ENV);

  int n_failed = srunner_ntests_failed (runner);

  srunner_free (runner);
  return n_failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
