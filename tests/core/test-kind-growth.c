/* Checks of what becomes of metal and price when one size grows and the rest is held, on one wire and machine.
 *
 * Most sizes make a job dearer or leave its price. The exceptions, each a row below:
 *   less metal     by what the size means: a larger radius to leave, a larger worn pin, more draft, a blunter corner.
 *   fewer tracks   a layer is priced by its width at its own height above the metal underneath. A recess that gets deeper, a seat,
 *                  a pin or a dam that gets thicker is narrower at the same height or at its crest, so whole tracks may drop out
 *                  although there is more metal, until another layer comes; a pin worn further has less to mask. The price
 *                  falls only with the length welded or the area covered.
 *   turned         tracks run round a bore or pin or along it, whichever is longer: where one size overtakes the other the
 *                  rounding up to whole tracks changes.
 *   either         a steeper cone has less slope but opens wider; a larger sphere is flatter but shrinks less; a larger bore's edge
 *                  turns less over the same length.
 * A free choice of wire has an exception of its own, a switch to another size: test-cost-properties.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-test-job.h"

#include <math.h>
#include <string.h>

typedef enum { DEARER, LESS_METAL, FEWER_TRACKS, TURNED, EITHER } Growth;

/* form: the option of the kind's choice field, −1: all. given, absent: a field that is or is not given, or NULL. */
static const struct { const char *kind, *field; int form; const char *given, *absent; Growth growth; } rows[] =
{
  { "edge-nick", "length", -1, NULL, NULL, DEARER },
  { "edge-nick", "leg_a", -1, NULL, NULL, DEARER },
  { "edge-nick", "leg_b", -1, NULL, NULL, DEARER },
  { "worn-corner", "length", -1, "length", NULL, DEARER },
  { "worn-corner", "radius", -1, NULL, "diameter", DEARER },
  { "worn-corner", "radius", 0, "diameter", NULL, FEWER_TRACKS },
  { "worn-corner", "radius", 1, "diameter", NULL, DEARER },
  { "worn-corner", "radius_to", -1, NULL, NULL, LESS_METAL },
  { "worn-corner", "angle", -1, NULL, "diameter", LESS_METAL },
  { "worn-corner", "diameter", -1, "diameter", "length", DEARER },
  { "worn-corner", "diameter", 0, "length", NULL, DEARER },
  { "worn-corner", "diameter", 1, "length", NULL, EITHER },
  { "sidewall", "length", -1, NULL, NULL, DEARER },
  { "sidewall", "height", -1, NULL, NULL, DEARER },
  { "sidewall", "thickness", -1, NULL, NULL, DEARER },
  { "face", "length", 0, NULL, NULL, DEARER },
  { "face", "width", 0, NULL, NULL, DEARER },
  { "face", "diameter", 1, NULL, NULL, DEARER },
  { "face", "area", 2, NULL, NULL, DEARER },
  { "face", "thickness", -1, NULL, NULL, DEARER },
  { "rib", "length", -1, NULL, NULL, DEARER },
  { "rib", "thickness", -1, NULL, NULL, DEARER },
  { "rib", "coat", -1, NULL, NULL, DEARER },
  { "rib", "depth", -1, NULL, NULL, DEARER },
  { "rib", "wraps", -1, NULL, NULL, DEARER },
  { "bore", "diameter", -1, "worn", NULL, LESS_METAL },
  { "bore", "diameter", -1, "build", NULL, TURNED },
  { "bore", "worn", -1, "worn", NULL, TURNED },
  { "bore", "build", -1, "build", NULL, TURNED },
  { "bore", "length", -1, NULL, NULL, TURNED },
  { "bore", "arc", -1, NULL, NULL, TURNED },
  { "seat", "diameter", 0, NULL, NULL, FEWER_TRACKS },
  { "seat", "diameter_small", 0, NULL, NULL, EITHER },
  { "seat", "depth", 0, NULL, NULL, DEARER },
  { "seat", "diameter", 1, NULL, NULL, DEARER },
  { "seat", "radius", 1, NULL, NULL, EITHER },
  { "seat", "thickness", -1, NULL, NULL, FEWER_TRACKS },
  { "pin", "diameter", -1, "worn", NULL, TURNED },
  { "pin", "diameter", -1, "build", NULL, TURNED },
  { "pin", "worn", -1, "worn", NULL, LESS_METAL },
  { "pin", "build", -1, "build", NULL, FEWER_TRACKS },
  { "pin", "length", -1, NULL, NULL, TURNED },
  { "dam", "length", -1, NULL, NULL, DEARER },
  { "dam", "width", 0, NULL, NULL, DEARER },
  { "dam", "width", 1, NULL, NULL, DEARER },
  { "dam", "width", 2, NULL, NULL, FEWER_TRACKS },
  { "dam", "width", 3, NULL, NULL, DEARER },
  { "dam", "runout", 3, NULL, NULL, LESS_METAL },
  { "dam", "height", -1, NULL, NULL, FEWER_TRACKS },
  { "dam", "draft", -1, NULL, NULL, LESS_METAL },
  { "recess", "length", -1, "length", NULL, DEARER },
  { "recess", "width", -1, "length", NULL, DEARER },
  { "recess", "diameter", -1, "diameter", NULL, DEARER },
  { "recess", "depth", 0, NULL, NULL, DEARER },
  { "recess", "depth", 1, NULL, NULL, DEARER },
  { "recess", "depth", 2, NULL, NULL, FEWER_TRACKS },
  { "recess", "depth", 3, NULL, NULL, FEWER_TRACKS },
  { "recess", "depth", 4, NULL, NULL, FEWER_TRACKS },
  { "groove", "length", -1, NULL, NULL, DEARER },
  { "groove", "depth", -1, NULL, NULL, DEARER },
  { "groove", "gap", -1, NULL, NULL, DEARER },
  { "groove", "angle", -1, NULL, NULL, DEARER },
};

enum { N_ROWS = (int) (sizeof rows / sizeof rows[0]), TRIALS = 60, STEPS = 12 };

static EmTestJob job;
static uint64_t state;

static void
setup (void)
{
  em_test_job_init (&job);
}

static void
teardown (void)
{
  em_test_job_clear (&job);
}

static double
draw (double low, double high)
{
  state = state * UINT64_C (6364136223846793005) + UINT64_C (1442695040888963407);
  return low + (high - low) * (double) (state >> 11) / 9007199254740992.0;
}

static bool
is_named (const EmField *field, const char *id)
{
  return id != NULL && strcmp (field->id, id) == 0;
}

static double
draw_value (const EmField *field, int row)
{
  int n = 0;

  if (is_named (field, rows[row].absent))
    return EM_ABSENT;
  if (!field->is_required && isnan (field->preset) && !is_named (field, rows[row].given) && draw (0, 1) < 0.5)
    return EM_ABSENT;
  switch (field->quantity)
    {
    case EM_QUANTITY_LENGTH:
      return exp (draw (log (0.2), log (30.0)));
    case EM_QUANTITY_AREA:
      return draw (1, 400);
    case EM_QUANTITY_ANGLE:
      return draw (fmax (field->low, 5), fmin (field->high, 150));
    case EM_QUANTITY_COUNT:
      return floor (draw (0, 2));
    case EM_QUANTITY_CHOICE:
      while (field->options[n] != NULL)
        n++;
      return rows[row].form >= 0 ? rows[row].form : floor (draw (0, n));
    }
  return EM_ABSENT;
}

/* A random shape as row wants it, alone in the quote on one wire and machine. */
static EmFeature *
fill (int row, bool is_laser)
{
  const EmKind *kind = em_kind_find (rows[row].kind);
  EmFeature feature;
  EmShape shape;

  ck_assert_ptr_nonnull (kind);
  do
    {
      em_feature_init (&feature, kind);
      for (int i = 0; i < kind->n_fields; i++)
        feature.value[i] = draw_value (&kind->fields[i], row);
      for (int i = 0; i < kind->n_fields; i++)
        if (!em_field_is_shown (kind, i, feature.value))
          feature.value[i] = EM_ABSENT;
    }
  while (em_feature_solve (&feature, &shape, NULL) != EM_OK || shape.height_mm > 8 || shape.coated_area_mm2 > 2500
         || isnan (feature.value[em_kind_field (kind, rows[row].field)]));
  feature.wire_mm = is_laser ? 0.381 : 0.635;
  ck_assert_int_eq (em_feature_set_text (&feature, EM_FEATURE_MACHINE, is_laser ? "laser" : "tig"), EM_OK);
  while (job.quote.n_features > 0)
    em_quote_remove (&job.quote, 0, NULL);
  ck_assert_int_eq (em_quote_insert_take (&job.quote, 0, &feature), EM_OK);
  return &job.quote.feature[0];
}

typedef struct
{
  int64_t net_minor;
  double  net_volume_mm3;
  double  welded_mm, coated_mm2;
  bool    runs_along;   /* one length at every height */
} Figures;

static bool
figure (Figures *out_figures)
{
  EmCost cost;
  bool is_priced;

  em_test_job_solve (&job, &cost);
  is_priced = cost.n_faults == 0;
  if (is_priced)
    {
      const EmShape *shape = &cost.feature[0].shape;
      double foot = shape->kind->length_mm (shape, 0.0), top = shape->kind->length_mm (shape, shape->height_mm);

      *out_figures = (Figures) { cost.totals.net_minor, shape->net_volume_mm3, cost.feature[0].plan.welded_length_mm, shape->coated_area_mm2,
                                  fabs (foot - top) <= 1e-12 * foot };
    }
  em_cost_clear (&cost);
  return is_priced;
}

/* Volumes told apart only beyond what rounding leaves in their last digits. */
static void
check_step (int row, const Figures *before, const Figures *after)
{
  bool is_dearer = after->net_minor >= before->net_minor;
  const char *kind = rows[row].kind, *field = rows[row].field;

  if (rows[row].growth == LESS_METAL)
    ck_assert_msg (after->net_volume_mm3 <= before->net_volume_mm3 * (1 + 1e-12), "%s, %s: more metal", kind, field);
  else if (rows[row].growth != EITHER)
    ck_assert_msg (after->net_volume_mm3 >= before->net_volume_mm3 * (1 - 1e-12), "%s, %s: less metal", kind, field);
  switch (rows[row].growth)
    {
    case DEARER:
      ck_assert_msg (is_dearer, "%s, %s: %lld after %lld", kind, field, (long long) after->net_minor, (long long) before->net_minor);
      break;
    case FEWER_TRACKS:
      ck_assert_msg (is_dearer || after->welded_mm < before->welded_mm || after->coated_mm2 < before->coated_mm2, "%s, %s: %lld after %lld with no less welded", kind, field,
                     (long long) after->net_minor, (long long) before->net_minor);
      break;
    case TURNED:
      ck_assert_msg (is_dearer || after->runs_along != before->runs_along, "%s, %s: %lld after %lld", kind, field, (long long) after->net_minor,
                     (long long) before->net_minor);
      break;
    case LESS_METAL:
    case EITHER:
      break;
    }
}

START_TEST (test_one_size_grows)
{
  state = 20260101 + (uint64_t) _i;
  for (int trial = 0; trial < TRIALS; trial++)
    {
      EmFeature *feature = fill (_i, trial % 2 == 0);
      int field = em_kind_field (feature->kind, rows[_i].field);
      Figures before, after;

      if (!figure (&before))
        continue;
      for (int step = 0; step < STEPS; step++, before = after)
        {
          feature->value[field] = feature->kind->fields[field].quantity == EM_QUANTITY_COUNT ? feature->value[field] + 1
                                                                                           : feature->value[field] * draw (1.0, 1.07);
          if (!figure (&after))
            break;
          check_step (_i, &before, &after);
        }
    }
}
END_TEST

/* Every size of every kind has its row, in every form it is shown in. */
START_TEST (test_every_size_has_a_row)
{
  for (int k = 0; k < em_n_kinds; k++)
    for (int i = 0; i < em_kinds[k]->n_fields; i++)
      {
        bool has_row = em_kinds[k]->fields[i].quantity == EM_QUANTITY_CHOICE;

        for (int row = 0; row < N_ROWS && !has_row; row++)
          has_row = strcmp (rows[row].kind, em_kinds[k]->id) == 0 && strcmp (rows[row].field, em_kinds[k]->fields[i].id) == 0;
        ck_assert_msg (has_row, "%s, %s", em_kinds[k]->id, em_kinds[k]->fields[i].id);
      }
}
END_TEST

/* The exception worked by hand: a cone of 4 mm across, 0.508 mm wire, layers of 0.254 mm, tracks 0.95·π·0.508²/4/0.254 = 0.758061 mm
 * apart. Five layers and one for safety either way, in the middle of each the cone 4·z/d wide, the safety layer 4 mm:
 *   1.02 deep: 0.4980, 1.4941, 2.4902, 3.4863, 4 (beyond the mouth), 4 → 1 + 2 + 4 + 5 + 6 + 6 = 24 tracks
 *   1.26 deep: 0.4032, 1.2095, 2.0159, 2.8222, 3.6286, 4 → 1 + 2 + 3 + 4 + 5 + 6 = 21 tracks
 * Three tracks fewer for 24 % more metal; at 1.28 mm a sixth layer comes: 0.3969, 1.1906, 1.9844, 2.7781, 3.5719, 4, 4
 *   → 1 + 2 + 3 + 4 + 5 + 6 + 6 = 27. */
START_TEST (test_a_deeper_cone)
{
  static const struct { double depth; int32_t layers; int64_t tracks; } cones[] = { { 1.02, 6, 24 }, { 1.26, 6, 21 }, { 1.28, 7, 27 } };
  int64_t price[3];
  EmFeature feature, *f;

  em_feature_init (&feature, em_kind_find ("recess"));
  feature.value[em_kind_field (feature.kind, "form")] = 2;
  feature.value[em_kind_field (feature.kind, "diameter")] = 4;
  feature.value[em_kind_field (feature.kind, "depth")] = 1;
  feature.wire_mm = 0.508;
  feature.melt_out = EM_NO;
  ck_assert_int_eq (em_feature_set_text (&feature, EM_FEATURE_MACHINE, "laser"), EM_OK);
  ck_assert_int_eq (em_quote_insert_take (&job.quote, 0, &feature), EM_OK);
  f = &job.quote.feature[0];
  for (int i = 0; i < 3; i++)
    {
      EmFeatureCost cost;

      f->value[em_kind_field (f->kind, "depth")] = cones[i].depth;
      ck_assert_int_eq (em_cost_feature (&job.quote, 0, &job.rates, &job.catalogue, &cost, NULL), EM_OK);
      ck_assert_int_eq (cost.plan.layers, cones[i].layers);
      ck_assert_int_eq (cost.plan.tracks, cones[i].tracks);
      price[i] = cost.price_minor;
    }
  ck_assert_int_lt (price[1], price[0]);
  ck_assert_int_gt (price[2], price[1]);
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("core: growth of kinds");
  TCase *tcase = tcase_create ("growth");
  SRunner *runner = srunner_create (suite);

  tcase_add_checked_fixture (tcase, setup, teardown);
  tcase_set_timeout (tcase, 60);
  tcase_add_loop_test (tcase, test_one_size_grows, 0, N_ROWS);
  tcase_add_test (tcase, test_every_size_has_a_row);
  tcase_add_test (tcase, test_a_deeper_cone);
  suite_add_tcase (suite, tcase);
  srunner_run_all (runner, CK_ENV);

  int n_failed = srunner_ntests_failed (runner);

  srunner_free (runner);
  return n_failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
