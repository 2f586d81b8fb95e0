/* Checks that every field of every kind refuses what no drawing holds, by name and with its limits, and leaves the shape alone.
 *
 * The rows are sound shapes, at least one for each form a field is shown in; each field of each is then made wrong in turn. The
 * limits a fault names are those of the field's own row, which the window shows beside it.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-kind.h"
#include "em-test-main.h"

#include <float.h>
#include <string.h>

#define X EM_ABSENT

static const struct { const char *name, *kind; double value[EM_FIELD_MAX]; } sound[] =
{
  { "square nick", "edge-nick", { 10, 2, 1, 0, X, X } },
  { "tapered nick", "edge-nick", { 10, 2, 1, 1, X, X } },
  { "straight corner", "worn-corner", { 20, 1, 0.2, 80, X, X } },
  { "shaft's corner", "worn-corner", { X, 1, 0, 90, 30, 0 } },
  { "part of a bore's corner", "worn-corner", { 25, 1, 0, 90, 30, 1 } },
  { "wall", "sidewall", { 20, 5, 0.3, X, X, X } },
  { "rectangle", "face", { 0, 20, 10, X, X, 0.5 } },
  { "disc", "face", { 1, X, X, 10, X, 0.5 } },
  { "area", "face", { 2, X, X, X, 40, 0.5 } },
  { "rib", "rib", { 10, 2, 0.5, 3, 1, 2 } },
  { "bore to a size", "bore", { 12, 13, X, 5, 180, X } },
  { "bore by build", "bore", { 12, X, 0.5, 5, 360, X } },
  { "cone", "seat", { 0, 10, 6, 4, X, 0.5 } },
  { "sphere", "seat", { 1, 8, X, X, 6, 0.5 } },
  { "pin to a size", "pin", { 13, 12, X, 5, X, X } },
  { "pin by build", "pin", { 13, X, 0.5, 5, X, X } },
  { "square dam", "dam", { 20, 2, 3, 5, 0, X } },
  { "rounded dam", "dam", { 20, 2, 3, 5, 2, X } },
  { "tapered dam", "dam", { 20, 2, 3, 5, 3, 4 } },
  { "box", "recess", { 0, 10, 4, X, 2, X } },
  { "cylinder", "recess", { 1, X, X, 4, 2, X } },
  { "cone pit", "recess", { 2, X, X, 4, 2, X } },
  { "half ellipsoid", "recess", { 3, 10, 4, X, 2, X } },
  { "cap", "recess", { 4, X, X, 4, 1, X } },
  { "groove", "groove", { 15, 2, 0.5, 60, X, X } },
};

enum { N_SOUND = (int) (sizeof sound / sizeof sound[0]) };

static double
n_options (const EmField *field)
{
  int n = 0;

  while (field->options[n] != NULL)
    n++;
  return n;
}

/* The shape of row with field at value: refused with code on that field, the limits its own, nothing written. */
static void
refuse (int row, int field, double value, EmStatus code)
{
  const EmKind *kind = em_kind_find (sound[row].kind);
  const EmField *f = &kind->fields[field];
  double values[EM_FIELD_MAX], low = f->options != NULL ? 0 : f->low, high = f->options != NULL ? n_options (f) - 1 : f->high;
  EmShape shape, before;
  EmFault fault = { 0 };
  EmStatus status;

  memcpy (values, sound[row].value, sizeof values);
  values[field] = value;
  memset (&shape, 0x5a, sizeof shape);
  before = shape;
  status = em_shape_solve (kind, values, &shape, &fault);
  ck_assert_msg (status == code && fault.code == code, "%s, %s = %g: %d, not %d", sound[row].name, f->id, value, (int) status, (int) code);
  ck_assert_msg (strcmp (fault.field, f->id) == 0, "%s, %s = %g: %s named", sound[row].name, f->id, value, fault.field);
  ck_assert_msg (fault.low_is_open == (f->options == NULL && !f->low_allowed) && !fault.high_is_open, "%s, %s: open limits", sound[row].name, f->id);
  ck_assert_msg (fault.low == low && fault.high == high, "%s, %s: limits %g … %g", sound[row].name, f->id, fault.low, fault.high);
  ck_assert_msg (isnan (value) ? isnan (fault.value) : fault.value == value, "%s, %s = %g: told as %g", sound[row].name, f->id, value, fault.value);
  ck_assert_msg (memcmp (&shape, &before, sizeof shape) == 0, "%s, %s = %g: shape touched", sound[row].name, f->id, value);
}

/* A choice that decides what else is shown: an infinite option shows nothing, and is itself told first. */
static void
refuse_all (int row, int field)
{
  const EmField *f = &em_kind_find (sound[row].kind)->fields[field];
  bool is_choice = f->options != NULL;
  double high = is_choice ? n_options (f) - 1 : f->high, low = is_choice ? 0 : f->low;

  refuse (row, field, INFINITY, EM_FAULT_NOT_FINITE);
  refuse (row, field, -INFINITY, EM_FAULT_NOT_FINITE);
  refuse (row, field, -1, EM_FAULT_RANGE);
  refuse (row, field, -DBL_MIN, EM_FAULT_RANGE);
  refuse (row, field, -DBL_MAX, EM_FAULT_RANGE);
  refuse (row, field, DBL_MAX, EM_FAULT_RANGE);
  refuse (row, field, nextafter (high, INFINITY), EM_FAULT_RANGE);
  refuse (row, field, high + 1, EM_FAULT_RANGE);
  refuse (row, field, nextafter (low, -INFINITY), EM_FAULT_RANGE);
  if (!is_choice && !f->low_allowed)
    refuse (row, field, low, EM_FAULT_RANGE);
  if (is_choice || f->quantity == EM_QUANTITY_COUNT)
    refuse (row, field, 0.5, EM_FAULT_RANGE);
  if (f->is_required && isnan (f->preset))
    refuse (row, field, EM_ABSENT, EM_FAULT_MISSING);
}

START_TEST (test_every_field)
{
  const EmKind *kind = em_kind_find (sound[_i].kind);
  EmShape shape;

  ck_assert_ptr_nonnull (kind);
  ck_assert_msg (em_shape_solve (kind, sound[_i].value, &shape, NULL) == EM_OK, "%s is not sound", sound[_i].name);
  for (int field = 0; field < kind->n_fields; field++)
    if (em_field_is_shown (kind, field, sound[_i].value) && !isnan (sound[_i].value[field]))
      refuse_all (_i, field);
}
END_TEST

/* Between them the rows reach every field of every kind. */
START_TEST (test_rows_reach_every_field)
{
  for (int k = 0; k < em_n_kinds; k++)
    ck_assert_msg (em_kinds[k]->n_fields <= EM_FIELD_MAX, "a feature has no room for every field of %s", em_kinds[k]->id);
  for (int k = 0; k < em_n_kinds; k++)
    for (int field = 0; field < em_kinds[k]->n_fields; field++)
      {
        bool is_reached = false;

        for (int row = 0; row < N_SOUND && !is_reached; row++)
          is_reached = strcmp (sound[row].kind, em_kinds[k]->id) == 0 && !isnan (sound[row].value[field]);
        ck_assert_msg (is_reached, "no row gives %s its %s", em_kinds[k]->id, em_kinds[k]->fields[field].id);
      }
}
END_TEST

/* What is not shown is not looked at, whatever it holds: a form changed by the office leaves the other form's sizes behind. */
START_TEST (test_hidden_fields_do_not_matter)
{
  EmShape plain, littered;
  double value[EM_FIELD_MAX];

  memcpy (value, sound[7].value, sizeof value);
  ck_assert_int_eq (em_shape_solve (em_kind_find ("face"), value, &plain, NULL), EM_OK);
  value[1] = -5;
  value[2] = INFINITY;
  value[4] = 1e300;
  ck_assert_int_eq (em_shape_solve (em_kind_find ("face"), value, &littered, NULL), EM_OK);
  ck_assert_mem_eq (&plain, &littered, sizeof plain);
}
END_TEST

/* Each size at its highest is a size still: no figure of the shape is infinite or no number. */
START_TEST (test_largest_sizes)
{
  const EmKind *kind = em_kind_find (sound[_i].kind);

  for (int field = 0; field < kind->n_fields; field++)
    {
      double value[EM_FIELD_MAX];
      EmShape shape;

      memcpy (value, sound[_i].value, sizeof value);
      if (kind->fields[field].options != NULL || isnan (value[field]))
        continue;
      value[field] = kind->fields[field].high;

      EmFault fault = { 0 };
      EmStatus status = em_shape_solve (kind, value, &shape, &fault);

      ck_assert_msg (status == EM_OK || status == EM_FAULT_CONFLICT, "%s, %s at its highest: %d", sound[_i].name, kind->fields[field].id, (int) status);
      if (status == EM_OK)
        ck_assert_msg (isfinite (shape.net_volume_mm3) && isfinite (shape.coated_area_mm2) && isfinite (shape.height_mm)
                       && isfinite (shape.cap_edge_mm) && isfinite (shape.reach_extent_mm), "%s, %s at its highest", sound[_i].name,
                       kind->fields[field].id);
    }
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("core: limits of kinds");
  TCase *tcase = tcase_create ("limits");
  SRunner *runner = srunner_create (suite);

  tcase_add_loop_test (tcase, test_every_field, 0, N_SOUND);
  tcase_add_loop_test (tcase, test_largest_sizes, 0, N_SOUND);
  tcase_add_test (tcase, test_rows_reach_every_field);
  tcase_add_test (tcase, test_hidden_fields_do_not_matter);
  suite_add_tcase (suite, tcase);
  srunner_run_all (runner, CK_ENV);

  int n_failed = srunner_ntests_failed (runner);

  srunner_free (runner);
  return n_failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
