/* Checks of core/em-feature: limits of the inputs every kind shares, texts, equality.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-feature.h"
#include "em-test-main.h"

#include <float.h>
#include <stddef.h>
#include <string.h>

/* A wall with everything shared given. */
static void
make (EmFeature *out_feature)
{
  em_feature_init (out_feature, em_kind_find ("sidewall"));
  out_feature->value[0] = 20;
  out_feature->value[1] = 5;
  out_feature->value[2] = 0.5;
  out_feature->stock_mm = 0.2;
  out_feature->clearance_mm = 1;
  out_feature->slot_width_mm = 10;
  out_feature->slot_depth_mm = 4;
  out_feature->wire_mm = 0.4;
}

static const struct { const char *field; size_t offset; double low, high; bool is_zero_fine; } lengths[] =
{
  { "stock", offsetof (EmFeature, stock_mm), 0, 10, true },
  { "clearance", offsetof (EmFeature, clearance_mm), 0, 1000, true },
  { "slot_width", offsetof (EmFeature, slot_width_mm), 0, 2000, false },
  { "slot_depth", offsetof (EmFeature, slot_depth_mm), 0, 2000, true },
  { "wire", offsetof (EmFeature, wire_mm), 0, 5, false },
};

static const struct { const char *field; size_t offset; int32_t low, high; } counts[] =
{
  { "count", offsetof (EmFeature, count), 1, 10000 },
  { "setting", offsetof (EmFeature, setting), 0, 10000 },
  { "safety_layers", offsetof (EmFeature, safety_layers), -1, 20 },
};

enum { N_LENGTHS = (int) (sizeof lengths / sizeof lengths[0]), N_COUNTS = (int) (sizeof counts / sizeof counts[0]) };

static void
refuse (const EmFeature *feature, EmStatus code, const char *field, double value, double low, double high)
{
  EmShape shape, before;
  EmFault fault = { 0 };
  EmStatus status;

  memset (&shape, 0x5a, sizeof shape);
  before = shape;
  status = em_feature_solve (feature, &shape, &fault);
  ck_assert_msg (status == code && fault.code == code, "%s = %g: %d, not %d", field, value, (int) status, (int) code);
  ck_assert_str_eq (fault.field, field);
  ck_assert_msg (fault.value == value || (isnan (value) && isnan (fault.value)), "%s = %g told as %g", field, value, fault.value);
  ck_assert_msg (fault.low == low && fault.high == high, "%s: limits %g … %g", field, fault.low, fault.high);
  ck_assert_mem_eq (&shape, &before, sizeof shape);
}

static void
accept (const EmFeature *feature, const char *field)
{
  EmShape shape;
  EmFault fault = { 0 };

  ck_assert_msg (em_feature_solve (feature, &shape, &fault) == EM_OK, "%s within limits: %s refused", field, fault.field);
  ck_assert_double_eq_tol (shape.net_volume_mm3, 50.0, 1e-12);   /* 20·5·0.5 */
}

START_TEST (test_lengths)
{
  for (int i = 0; i < N_LENGTHS; i++)
    {
      EmFeature feature;
      double *value = (double *) (void *) ((char *) &feature + lengths[i].offset);
      const double bad[] = { -DBL_MIN, -1, nextafter (lengths[i].high, INFINITY), DBL_MAX, -DBL_MAX };

      make (&feature);
      for (size_t b = 0; b < sizeof bad / sizeof bad[0]; b++)
        {
          *value = bad[b];
          refuse (&feature, EM_FAULT_RANGE, lengths[i].field, bad[b], lengths[i].low, lengths[i].high);

          EmFault fault;

          em_feature_solve (&feature, &(EmShape) { 0 }, &fault);
          ck_assert_int_eq (fault.low_is_open, !lengths[i].is_zero_fine);
        }
      *value = INFINITY;
      refuse (&feature, EM_FAULT_NOT_FINITE, lengths[i].field, INFINITY, lengths[i].low, lengths[i].high);
      *value = -INFINITY;
      refuse (&feature, EM_FAULT_NOT_FINITE, lengths[i].field, -INFINITY, lengths[i].low, lengths[i].high);
      *value = 0;
      if (lengths[i].is_zero_fine)
        accept (&feature, lengths[i].field);
      else
        refuse (&feature, EM_FAULT_RANGE, lengths[i].field, 0, lengths[i].low, lengths[i].high);
      *value = lengths[i].high;
      accept (&feature, lengths[i].field);
    }
}
END_TEST

START_TEST (test_counts)
{
  for (int i = 0; i < N_COUNTS; i++)
    {
      EmFeature feature;
      int32_t *value = (int32_t *) (void *) ((char *) &feature + counts[i].offset);
      const int32_t bad[] = { counts[i].low - 1, counts[i].high + 1, INT32_MIN, INT32_MAX };

      make (&feature);
      for (size_t b = 0; b < sizeof bad / sizeof bad[0]; b++)
        {
          *value = bad[b];
          refuse (&feature, EM_FAULT_RANGE, counts[i].field, bad[b], counts[i].low, counts[i].high);
        }
      *value = counts[i].low;
      accept (&feature, counts[i].field);
      *value = counts[i].high;
      accept (&feature, counts[i].field);
    }
}
END_TEST

START_TEST (test_absent_is_fine)
{
  EmFeature feature;

  make (&feature);
  feature.stock_mm = feature.clearance_mm = feature.wire_mm = feature.slot_width_mm = feature.slot_depth_mm = EM_ABSENT;
  accept (&feature, "absent");
}
END_TEST

/* A slot is as wide as deep to the reach: half a slot asks for its other half. */
START_TEST (test_half_a_slot)
{
  EmFeature feature;

  make (&feature);
  feature.slot_depth_mm = EM_ABSENT;
  refuse (&feature, EM_FAULT_MISSING, "slot_depth", EM_ABSENT, 0, 2000);
  feature.slot_depth_mm = 4;
  feature.slot_width_mm = EM_ABSENT;
  refuse (&feature, EM_FAULT_MISSING, "slot_width", EM_ABSENT, 0, 2000);
}
END_TEST

START_TEST (test_kind_faults_pass_through)
{
  EmFeature feature;

  make (&feature);
  feature.value[1] = EM_ABSENT;
  refuse (&feature, EM_FAULT_MISSING, "height", EM_ABSENT, 0, 2000);
}
END_TEST

/* Two features are equal when every input is, an absent one like another absent one. */
START_TEST (test_equality)
{
  EmFeature a, b;

  make (&a);
  ck_assert_int_eq (em_feature_copy (&a, &b), EM_OK);
  ck_assert (em_feature_equal (&a, &b));
  for (int i = 0; i < N_LENGTHS; i++)
    {
      double *value = (double *) (void *) ((char *) &b + lengths[i].offset), kept = *value;

      *value = EM_ABSENT;
      ck_assert_msg (!em_feature_equal (&a, &b), "%s", lengths[i].field);
      *value = kept;
    }
  for (int i = 0; i < N_COUNTS; i++)
    {
      int32_t *value = (int32_t *) (void *) ((char *) &b + counts[i].offset);

      *value += 1;
      ck_assert_msg (!em_feature_equal (&a, &b), "%s", counts[i].field);
      *value -= 1;
    }
  for (int i = 0; i < EM_N_FEATURE_TEXT; i++)
    {
      ck_assert_int_eq (em_feature_set_text (&b, (EmFeatureText) i, "words"), EM_OK);
      ck_assert (!em_feature_equal (&a, &b));
      ck_assert_int_eq (em_feature_set_text (&b, (EmFeatureText) i, ""), EM_OK);
      ck_assert_ptr_null (b.text[i]);
    }
  b.low[0] = 1;
  ck_assert (!em_feature_equal (&a, &b));
  b.low[0] = EM_ABSENT;
  b.origin[2] = EM_ORIGIN_READ;
  ck_assert (!em_feature_equal (&a, &b));
  b.origin[2] = a.origin[2];
  ck_assert (em_feature_equal (&a, &b));
  em_feature_clear (&a);
  em_feature_clear (&b);
}
END_TEST

EM_TEST_MAIN ("core: feature", test_lengths, test_counts, test_absent_is_fine, test_half_a_slot, test_kind_faults_pass_through, test_equality)
