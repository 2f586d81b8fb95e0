/* em-catalogue: life, copies, look-up and checks of base metals and wires.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-catalogue.h"
#include "em-feature.h"

#include <math.h>
#include <stddef.h>
#include <stdlib.h>
#include <string.h>

enum { RECORDS_MAX = 100000 };

const char *const em_element_ids[EM_N_ELEMENT] =
{
  "C", "Mn", "Si", "Cr", "Ni", "Mo", "V", "W", "Co", "Cu", "Al", "Ti", "Nb", "N", "B", "S", "P", "Be", "Fe", "Mg", "Zn",
  "Pb", "Sn",
};

const char *const em_family_ids[EM_N_FAMILY] =
{
  "low-alloy", "tool-steel", "stainless-martensitic", "stainless-austenitic", "stainless-ph", "maraging", "free-machining",
  "cast-iron", "nickel", "cobalt", "copper", "aluminium",
};

const char *const em_process_ids[EM_N_PROCESS] = { "laser", "gtaw" };

/* ---- life ---- */

void
em_base_init (EmBase *out_base)
{
  *out_base = (EmBase) {
    .composition.balance = EM_EL_FE, .density_g_per_mm3 = EM_ABSENT, .hardness_low_hrc = EM_ABSENT, .hardness_high_hrc = EM_ABSENT,
    .hardness_low_hv = EM_ABSENT, .hardness_high_hv = EM_ABSENT, .temper_degc = EM_ABSENT, .preheat_low_degc = EM_ABSENT,
    .preheat_high_degc = EM_ABSENT, .laser_preheat_degc = EM_ABSENT,
  };
}

void
em_base_clear (EmBase *base)
{
  free (base->id);
  free (base->designation);
  free (base->source);
  free (base->remark);
  em_base_init (base);
}

void
em_filler_init (EmFiller *out_filler)
{
  *out_filler = (EmFiller) {
    .composition.balance = EM_EL_FE, .density_g_per_mm3 = EM_ABSENT, .melt_j_per_g = EM_ABSENT, .hardness_low_hrc = EM_ABSENT,
    .hardness_high_hrc = EM_ABSENT, .aged_low_hrc = EM_ABSENT, .aged_high_hrc = EM_ABSENT, .hardness_low_hv = EM_ABSENT,
    .hardness_high_hv = EM_ABSENT, .stick_mm = EM_ABSENT,
  };
}

void
em_filler_clear (EmFiller *filler)
{
  free (filler->id);
  free (filler->designation);
  free (filler->source);
  free (filler->remark);
  free (filler->supplier_ref);
  em_filler_init (filler);
}

void
em_catalogue_init (EmCatalogue *out_catalogue)
{
  *out_catalogue = (EmCatalogue) { 0 };
}

void
em_catalogue_clear (EmCatalogue *catalogue)
{
  for (int32_t i = 0; i < catalogue->n_bases; i++)
    em_base_clear (&catalogue->base[i]);
  for (int32_t i = 0; i < catalogue->n_fillers; i++)
    em_filler_clear (&catalogue->filler[i]);
  free (catalogue->base);
  free (catalogue->filler);
  free (catalogue->extra);
  em_catalogue_init (catalogue);
}

/* ---- copies ---- */

/* Copies text into *out; true unless memory ran out. */
static bool
dup_into (const char *text, char **out)
{
  *out = em_text_dup (text);
  return *out != NULL || text == NULL;
}

EmStatus
em_base_copy (const EmBase *base, EmBase *out_copy)
{
  EmBase copy = *base;
  bool is_whole = dup_into (base->id, &copy.id);

  is_whole = dup_into (base->designation, &copy.designation) && is_whole;
  is_whole = dup_into (base->source, &copy.source) && is_whole;
  is_whole = dup_into (base->remark, &copy.remark) && is_whole;
  if (!is_whole)
    {
      em_base_clear (&copy);
      return EM_FAULT_MEMORY;
    }
  *out_copy = copy;
  return EM_OK;
}

EmStatus
em_filler_copy (const EmFiller *filler, EmFiller *out_copy)
{
  EmFiller copy = *filler;
  bool is_whole = dup_into (filler->id, &copy.id);

  is_whole = dup_into (filler->designation, &copy.designation) && is_whole;
  is_whole = dup_into (filler->source, &copy.source) && is_whole;
  is_whole = dup_into (filler->remark, &copy.remark) && is_whole;
  is_whole = dup_into (filler->supplier_ref, &copy.supplier_ref) && is_whole;
  if (!is_whole)
    {
      em_filler_clear (&copy);
      return EM_FAULT_MEMORY;
    }
  *out_copy = copy;
  return EM_OK;
}

EmStatus
em_catalogue_copy (const EmCatalogue *catalogue, EmCatalogue *out_copy)
{
  EmCatalogue copy = { 0 };
  EmStatus status = EM_OK;

  for (int32_t i = 0; status == EM_OK && i < catalogue->n_bases; i++)
    {
      EmBase base;

      status = em_base_copy (&catalogue->base[i], &base);
      if (status == EM_OK)
        status = em_catalogue_add_base_take (&copy, &base);
    }
  for (int32_t i = 0; status == EM_OK && i < catalogue->n_fillers; i++)
    {
      EmFiller filler;

      status = em_filler_copy (&catalogue->filler[i], &filler);
      if (status == EM_OK)
        status = em_catalogue_add_filler_take (&copy, &filler);
    }
  if (status == EM_OK && !dup_into (catalogue->extra, &copy.extra))
    status = EM_FAULT_MEMORY;
  if (status != EM_OK)
    em_catalogue_clear (&copy);
  else
    *out_copy = copy;
  return status;
}

/* ---- equality ---- */

static const size_t base_numbers[] =
{
  offsetof (EmBase, density_g_per_mm3), offsetof (EmBase, hardness_low_hrc), offsetof (EmBase, hardness_high_hrc), offsetof (EmBase, hardness_low_hv),
  offsetof (EmBase, hardness_high_hv), offsetof (EmBase, temper_degc), offsetof (EmBase, preheat_low_degc), offsetof (EmBase, preheat_high_degc),
  offsetof (EmBase, laser_preheat_degc),
};

static const size_t filler_numbers[] =
{
  offsetof (EmFiller, density_g_per_mm3), offsetof (EmFiller, melt_j_per_g), offsetof (EmFiller, hardness_low_hrc), offsetof (EmFiller, hardness_high_hrc),
  offsetof (EmFiller, aged_low_hrc), offsetof (EmFiller, aged_high_hrc), offsetof (EmFiller, hardness_low_hv), offsetof (EmFiller, hardness_high_hv),
  offsetof (EmFiller, stick_mm),
};

static bool
number_equal (double a, double b)
{
  return a == b || (isnan (a) && isnan (b));
}

/* Of the doubles that lie so many bytes into a and b. */
static bool
numbers_equal (const size_t *offset, size_t n, const void *a, const void *b)
{
  for (size_t i = 0; i < n; i++)
    {
      double x, y;

      memcpy (&x, (const char *) a + offset[i], sizeof x);
      memcpy (&y, (const char *) b + offset[i], sizeof y);
      if (!number_equal (x, y))
        return false;
    }
  return true;
}

static bool
composition_equal (const EmComposition *a, const EmComposition *b)
{
  for (int i = 0; i < EM_N_ELEMENT; i++)
    if (!number_equal (a->low_pct[i], b->low_pct[i]) || !number_equal (a->high_pct[i], b->high_pct[i]))
      return false;
  return a->balance == b->balance;
}

static bool
base_equal (const EmBase *a, const EmBase *b)
{
  return em_text_equal (a->id, b->id) && em_text_equal (a->designation, b->designation) && em_text_equal (a->source, b->source)
         && em_text_equal (a->remark, b->remark) && a->family == b->family && a->is_retired == b->is_retired && a->is_own == b->is_own
         && numbers_equal (base_numbers, sizeof base_numbers / sizeof base_numbers[0], a, b)
         && composition_equal (&a->composition, &b->composition);
}

static bool
sizes_equal (const EmFiller *a, const EmFiller *b)
{
  if (a->n_sizes != b->n_sizes)
    return false;
  for (int32_t i = 0; i < a->n_sizes; i++)
    if (!number_equal (a->size[i].wire_mm, b->size[i].wire_mm) || a->size[i].price_minor != b->size[i].price_minor
        || a->size[i].basis != b->size[i].basis || a->size[i].is_stocked != b->size[i].is_stocked)
      return false;
  return true;
}

static bool
filler_equal (const EmFiller *a, const EmFiller *b)
{
  return em_text_equal (a->id, b->id) && em_text_equal (a->designation, b->designation) && em_text_equal (a->source, b->source)
         && em_text_equal (a->remark, b->remark) && em_text_equal (a->supplier_ref, b->supplier_ref) && a->family == b->family
         && a->processes == b->processes && a->polishes == b->polishes && a->textures == b->textures && a->nitrides == b->nitrides
         && a->machines_easily == b->machines_easily && a->resists_corrosion == b->resists_corrosion && a->resists_wear == b->resists_wear
         && a->is_retired == b->is_retired && a->is_own == b->is_own && a->has_demo_price == b->has_demo_price
         && numbers_equal (filler_numbers, sizeof filler_numbers / sizeof filler_numbers[0], a, b)
         && composition_equal (&a->composition, &b->composition) && sizes_equal (a, b);
}

bool
em_catalogue_equal (const EmCatalogue *a, const EmCatalogue *b)
{
  if (a->n_bases != b->n_bases || a->n_fillers != b->n_fillers || !em_text_equal (a->extra, b->extra))
    return false;
  for (int32_t i = 0; i < a->n_bases; i++)
    if (!base_equal (&a->base[i], &b->base[i]))
      return false;
  for (int32_t i = 0; i < a->n_fillers; i++)
    if (!filler_equal (&a->filler[i], &b->filler[i]))
      return false;
  return true;
}

/* Both: the record's contents are taken, even on failure, and *record is left empty. */
EmStatus
em_catalogue_add_base_take (EmCatalogue *catalogue, EmBase *base)
{
  bool is_full = catalogue->n_bases >= RECORDS_MAX;
  EmBase *grown = is_full ? NULL : realloc (catalogue->base, (size_t) (catalogue->n_bases + 1) * sizeof *grown);

  if (grown == NULL)
    {
      em_base_clear (base);
      return is_full ? EM_FAULT_OVERFLOW : EM_FAULT_MEMORY;
    }
  catalogue->base = grown;
  catalogue->base[catalogue->n_bases++] = *base;
  em_base_init (base);
  return EM_OK;
}

EmStatus
em_catalogue_add_filler_take (EmCatalogue *catalogue, EmFiller *filler)
{
  bool is_full = catalogue->n_fillers >= RECORDS_MAX;
  EmFiller *grown = is_full ? NULL : realloc (catalogue->filler, (size_t) (catalogue->n_fillers + 1) * sizeof *grown);

  if (grown == NULL)
    {
      em_filler_clear (filler);
      return is_full ? EM_FAULT_OVERFLOW : EM_FAULT_MEMORY;
    }
  catalogue->filler = grown;
  catalogue->filler[catalogue->n_fillers++] = *filler;
  em_filler_init (filler);
  return EM_OK;
}

int32_t
em_process_find (const char *id)
{
  for (int32_t i = 0; id != NULL && i < EM_N_PROCESS; i++)
    if (strcmp (em_process_ids[i], id) == 0)
      return i;
  return -1;
}

int32_t
em_catalogue_find_base (const EmCatalogue *catalogue, const char *id)
{
  for (int32_t i = 0; id != NULL && i < catalogue->n_bases; i++)
    if (em_text_equal (catalogue->base[i].id, id))
      return i;
  return -1;
}

int32_t
em_catalogue_find_filler (const EmCatalogue *catalogue, const char *id)
{
  for (int32_t i = 0; id != NULL && i < catalogue->n_fillers; i++)
    if (em_text_equal (catalogue->filler[i].id, id))
      return i;
  return -1;
}

/* ---- checks ---- */

/* One number that may be absent unless is_needed. Written so that NaN never passes. */
static EmStatus
check_real (const char *field, double value, double low, double high, bool is_needed, EmFault *out_fault)
{
  if (em_is_absent (value))
    return is_needed ? em_fault_set (out_fault, EM_FAULT_MISSING, field, value, low, high) : EM_OK;
  if (isinf (value))
    return em_fault_set (out_fault, EM_FAULT_NOT_FINITE, field, value, low, high);
  return value >= low && value <= high ? EM_OK : em_fault_set (out_fault, EM_FAULT_RANGE, field, value, low, high);
}

/* Both ends of a range within limits and in order; one end alone is missing the other. */
static EmStatus
check_span (const char *field, double low_value, double high_value, double low, double high, EmFault *out_fault)
{
  if (em_is_absent (low_value) && em_is_absent (high_value))
    return EM_OK;

  EmStatus status = check_real (field, low_value, low, high, true, out_fault);

  return status == EM_OK ? check_real (field, high_value, low_value, high, true, out_fault) : status;
}

/* Every element 0 ≤ low ≤ high ≤ 100; the lows without the balance may not exceed 100. fault.field is the element's id. */
static EmStatus
check_composition (const EmComposition *composition, EmFault *out_fault)
{
  double sum = 0.0;

  if ((int) composition->balance < 0 || composition->balance >= EM_N_ELEMENT)
    return em_fault_set (out_fault, EM_FAULT_UNKNOWN, "balance", EM_ABSENT, EM_ABSENT, EM_ABSENT);
  for (int i = 0; i < EM_N_ELEMENT; i++)
    {
      EmStatus status = check_real (em_element_ids[i], composition->low_pct[i], 0.0, 100.0, true, out_fault);

      if (status == EM_OK)
        status = check_real (em_element_ids[i], composition->high_pct[i], composition->low_pct[i], 100.0, true, out_fault);
      if (status != EM_OK)
        return status;
      if (i != (int) composition->balance)
        sum += (composition->low_pct[i] + composition->high_pct[i]) / 2.0;
    }
  return sum <= 100.0 ? EM_OK : em_fault_set (out_fault, EM_FAULT_RANGE, "composition", sum, 0.0, 100.0);
}

static EmStatus
check_names (const char *id, const char *designation, EmFault *out_fault)
{
  if (id == NULL || id[0] == '\0')
    return em_fault_set (out_fault, EM_FAULT_MISSING, "id", EM_ABSENT, EM_ABSENT, EM_ABSENT);
  if (designation == NULL || designation[0] == '\0')
    return em_fault_set (out_fault, EM_FAULT_MISSING, "designation", EM_ABSENT, EM_ABSENT, EM_ABSENT);
  return EM_OK;
}

static EmStatus
check_sizes (const EmFiller *filler, EmFault *out_fault)
{
  if (filler->n_sizes < 0 || filler->n_sizes > EM_SIZE_MAX)
    return em_fault_set (out_fault, EM_FAULT_RANGE, "size", filler->n_sizes, 0, EM_SIZE_MAX);
  for (int32_t i = 0; i < filler->n_sizes; i++)
    {
      const EmWireSize *size = &filler->size[i];
      EmStatus status = check_real ("wire", size->wire_mm, 0.05, 5.0, true, out_fault);

      if (status != EM_OK)
        return status;
      if (i > 0 && size->wire_mm <= filler->size[i - 1].wire_mm)
        return em_fault_set (out_fault, EM_FAULT_RANGE, "wire", size->wire_mm, filler->size[i - 1].wire_mm, 5.0);
      if (size->price_minor < 0 || size->price_minor > INT64_C (1000000000000))
        return em_fault_set (out_fault, EM_FAULT_RANGE, "price", (double) size->price_minor, 0.0, 1e12);
      if ((int) size->basis < 0 || size->basis >= EM_N_PRICE_BASIS)
        return em_fault_set (out_fault, EM_FAULT_UNKNOWN, "basis", EM_ABSENT, EM_ABSENT, EM_ABSENT);
    }
  return EM_OK;
}

static EmStatus
set_catalogue_row (EmStatus status, EmFault *out_fault)
{
  if (status != EM_OK && out_fault != NULL)
    out_fault->row = EM_ROW_CATALOGUE;
  return status;
}

/* Densities between magnesium's 0.0017 and tungsten's 0.0193 g/mm³. fault.row is EM_ROW_CATALOGUE. */
EmStatus
em_base_check (const EmBase *base, EmFault *out_fault)
{
  EmStatus status = check_names (base->id, base->designation, out_fault);

  if (status == EM_OK && ((int) base->family < 0 || base->family >= EM_N_FAMILY))
    status = em_fault_set (out_fault, EM_FAULT_UNKNOWN, "family", EM_ABSENT, EM_ABSENT, EM_ABSENT);
  if (status == EM_OK)
    status = check_composition (&base->composition, out_fault);
  if (status == EM_OK)
    status = check_real ("density", base->density_g_per_mm3, 0.0015, 0.020, true, out_fault);
  if (status == EM_OK)
    status = check_span ("hardness", base->hardness_low_hrc, base->hardness_high_hrc, 0.0, 70.0, out_fault);
  if (status == EM_OK)
    status = check_span ("hardness_hv", base->hardness_low_hv, base->hardness_high_hv, 10.0, 2000.0, out_fault);
  if (status == EM_OK)
    status = check_span ("preheat", base->preheat_low_degc, base->preheat_high_degc, 0.0, 1000.0, out_fault);
  if (status == EM_OK)
    status = check_real ("temper", base->temper_degc, 0.0, 1000.0, false, out_fault);
  if (status == EM_OK)
    status = check_real ("laser_preheat", base->laser_preheat_degc, 0.0, 1000.0, false, out_fault);
  return set_catalogue_row (status, out_fault);
}

EmStatus
em_filler_check (const EmFiller *filler, EmFault *out_fault)
{
  EmStatus status = check_names (filler->id, filler->designation, out_fault);

  if (status == EM_OK && ((int) filler->family < 0 || filler->family >= EM_N_FAMILY))
    status = em_fault_set (out_fault, EM_FAULT_UNKNOWN, "family", EM_ABSENT, EM_ABSENT, EM_ABSENT);
  if (status == EM_OK)
    status = check_composition (&filler->composition, out_fault);
  if (status == EM_OK)
    status = check_real ("density", filler->density_g_per_mm3, 0.0015, 0.020, true, out_fault);
  if (status == EM_OK)
    status = check_real ("melt", filler->melt_j_per_g, 100.0, 5000.0, true, out_fault);
  if (status == EM_OK)
    status = check_span ("hardness", filler->hardness_low_hrc, filler->hardness_high_hrc, 0.0, 70.0, out_fault);
  if (status == EM_OK)
    status = check_span ("aged", filler->aged_low_hrc, filler->aged_high_hrc, 0.0, 70.0, out_fault);
  if (status == EM_OK)
    status = check_span ("hardness_hv", filler->hardness_low_hv, filler->hardness_high_hv, 10.0, 2000.0, out_fault);
  if (status == EM_OK)
    status = check_real ("stick", filler->stick_mm, 10.0, 5000.0, false, out_fault);
  if (status == EM_OK && (filler->processes == 0 || filler->processes >= (1u << EM_N_PROCESS)))
    status = em_fault_set (out_fault, EM_FAULT_MISSING, "processes", filler->processes, EM_ABSENT, EM_ABSENT);
  if (status == EM_OK)
    status = check_sizes (filler, out_fault);
  return set_catalogue_row (status, out_fault);
}

/*
 * em_composition_middle:
 *
 * (low + high)/2 for every element but the balance, which fills to 100. Where the others alone exceed 100 (em_base_check
 * and em_filler_check refuse that) the balance is 0.
 */
void
em_composition_middle (const EmComposition *composition, EmChemistry out_chemistry)
{
  double sum = 0.0;

  for (int i = 0; i < EM_N_ELEMENT; i++)
    {
      out_chemistry[i] = i == (int) composition->balance ? 0.0 : (composition->low_pct[i] + composition->high_pct[i]) / 2.0;
      sum += out_chemistry[i];
    }
  out_chemistry[composition->balance] = fmax (0.0, 100.0 - sum);
}
