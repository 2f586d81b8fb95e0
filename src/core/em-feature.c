/* em-feature: life, copies and checks of one feature.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-feature.h"

#include <stdlib.h>
#include <string.h>

const char *const em_access_ids[EM_N_ACCESS] = { "open", "restricted", "deep" };
const char *const em_finish_ids[EM_N_FINISH] = { "default", "customer", "shop" };
const char *const em_origin_ids[EM_N_ORIGIN] = { "entered", "read", "inferred" };
const char *const em_near_ids[EM_N_NEAR] = { "nothing", "hole", "texture", "polish", "thread" };
const char *const em_choice_ids[3] = { "auto", "yes", "no" };

static const EmActual no_actual = { EM_ABSENT, EM_ABSENT, EM_ABSENT };

/* Equal as inputs are: two absent numbers are equal. */
static bool
same (double a, double b)
{
  return a == b || (isnan (a) && isnan (b));
}

static bool
all_same (const double *a, const double *b)
{
  for (int i = 0; i < EM_FIELD_MAX; i++)
    if (!same (a[i], b[i]))
      return false;
  return true;
}

void
em_feature_init (EmFeature *out_feature, const EmKind *kind)
{
  *out_feature = (EmFeature) {
    .kind = kind, .count = 1, .stock_mm = EM_ABSENT, .clearance_mm = EM_ABSENT,
    .slot_width_mm = EM_ABSENT, .slot_depth_mm = EM_ABSENT, .safety_layers = -1,
    .wire_mm = EM_ABSENT, .actual = no_actual,
  };
  for (int i = 0; i < EM_FIELD_MAX; i++)
    out_feature->value[i] = out_feature->low[i] = out_feature->high[i] = EM_ABSENT;
}

/* Frees the strings; what is left is an empty feature of no kind. */
void
em_feature_clear (EmFeature *feature)
{
  for (int i = 0; i < EM_N_FEATURE_TEXT; i++)
    free (feature->text[i]);
  em_feature_init (feature, NULL);
}

EmStatus
em_feature_copy (const EmFeature *feature, EmFeature *out_copy)
{
  EmFeature copy = *feature;
  bool is_whole = true;

  for (int i = 0; i < EM_N_FEATURE_TEXT; i++)
    {
      copy.text[i] = em_text_dup (feature->text[i]);
      is_whole = is_whole && (copy.text[i] != NULL) == (feature->text[i] != NULL);
    }
  if (!is_whole)
    {
      em_feature_clear (&copy);
      return EM_FAULT_MEMORY;
    }
  *out_copy = copy;
  return EM_OK;
}

static bool
shared_inputs_equal (const EmFeature *a, const EmFeature *b)
{
  return a->count == b->count && same (a->stock_mm, b->stock_mm) && same (a->clearance_mm, b->clearance_mm)
         && a->near == b->near && same (a->slot_width_mm, b->slot_width_mm) && same (a->slot_depth_mm, b->slot_depth_mm)
         && a->access == b->access && a->setting == b->setting && a->safety_layers == b->safety_layers
         && a->melt_out == b->melt_out && a->cap == b->cap && a->finish == b->finish && same (a->wire_mm, b->wire_mm)
         && a->has_override == b->has_override && a->override_minor == b->override_minor
         && same (a->actual.arc_on_s, b->actual.arc_on_s) && same (a->actual.bench_s, b->actual.bench_s)
         && same (a->actual.wire_mm, b->actual.wire_mm);
}

bool
em_feature_equal (const EmFeature *a, const EmFeature *b)
{
  for (int i = 0; i < EM_N_FEATURE_TEXT; i++)
    if (!em_text_equal (a->text[i], b->text[i]))
      return false;
  return a->id == b->id && a->kind == b->kind && all_same (a->value, b->value) && all_same (a->low, b->low)
         && all_same (a->high, b->high) && memcmp (a->origin, b->origin, sizeof a->origin) == 0
         && shared_inputs_equal (a, b);
}

EmStatus
em_feature_set_text (EmFeature *feature, EmFeatureText which, const char *text)
{
  char *copy = NULL;

  if (text != NULL && text[0] != '\0')
    {
      copy = em_text_dup (text);
      if (copy == NULL)
        return EM_FAULT_MEMORY;
    }
  free (feature->text[which]);
  feature->text[which] = copy;
  return EM_OK;
}

/* A shared length: absent is fine, zero only where is_zero_fine. */
static EmStatus
check_length (const char *field, double value_mm, bool is_zero_fine, double high_mm, EmFault *out_fault)
{
  if (em_is_absent (value_mm))
    return EM_OK;
  if (isinf (value_mm) || value_mm < 0.0 || value_mm > high_mm || (value_mm == 0.0 && !is_zero_fine))
    return em_fault_open (out_fault, !is_zero_fine, false,
                          em_fault_set (out_fault, isinf (value_mm) ? EM_FAULT_NOT_FINITE : EM_FAULT_RANGE, field, value_mm, 0.0, high_mm));
  return EM_OK;
}

static EmStatus
check_whole (const char *field, int32_t value, int32_t low, int32_t high, EmFault *out_fault)
{
  return value >= low && value <= high ? EM_OK : em_fault_set (out_fault, EM_FAULT_RANGE, field, value, low, high);
}

/*
 * em_feature_solve:
 *
 * Limits of the inputs every kind shares (a count of 1 … 10,000, stock to 10 mm, wire to 5 mm, a slot to 2 m, up to
 * 20 safety layers), then the kind's own. A slot needs its width and its depth: one alone is EM_FAULT_MISSING for the other.
 */
EmStatus
em_feature_solve (const EmFeature *feature, EmShape *out_shape, EmFault *out_fault)
{
  const struct { const char *field; double value; bool is_zero_fine; double high; } lengths[] =
  {
    { "stock", feature->stock_mm, true, 10.0 },
    { "clearance", feature->clearance_mm, true, 1000.0 },
    { "slot_width", feature->slot_width_mm, false, 2000.0 },
    { "slot_depth", feature->slot_depth_mm, true, 2000.0 },
    { "wire", feature->wire_mm, false, 5.0 },
  };
  EmStatus status = check_whole ("count", feature->count, 1, 10000, out_fault);

  if (status == EM_OK)
    status = check_whole ("setting", feature->setting, 0, 10000, out_fault);
  if (status == EM_OK)
    status = check_whole ("safety_layers", feature->safety_layers, -1, 20, out_fault);
  for (size_t i = 0; status == EM_OK && i < sizeof lengths / sizeof lengths[0]; i++)
    status = check_length (lengths[i].field, lengths[i].value, lengths[i].is_zero_fine, lengths[i].high, out_fault);
  if (status == EM_OK && em_is_absent (feature->slot_width_mm) != em_is_absent (feature->slot_depth_mm))
    status = em_fault_set (out_fault, EM_FAULT_MISSING, em_is_absent (feature->slot_width_mm) ? "slot_width" : "slot_depth",
                           EM_ABSENT, 0.0, 2000.0);
  return status == EM_OK ? em_shape_solve (feature->kind, feature->value, out_shape, out_fault) : status;
}
