/* em-catalogue: base metals and filler wires.
 *
 * Compositions are mass percent ranges by element. The catalogue owns all
 * its strings and arrays. Shipped records come from data/metals.xml, the shop's own
 * from its file; where both hold an id, the shop's wins (file merges them).
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-fault.h"

#include <stdint.h>

typedef enum
{
  EM_EL_C, EM_EL_MN, EM_EL_SI, EM_EL_CR, EM_EL_NI, EM_EL_MO, EM_EL_V, EM_EL_W, EM_EL_CO, EM_EL_CU, EM_EL_AL, EM_EL_TI,
  EM_EL_NB, EM_EL_N, EM_EL_B, EM_EL_S, EM_EL_P, EM_EL_BE, EM_EL_FE, EM_EL_MG, EM_EL_ZN, EM_EL_PB, EM_EL_SN,
  EM_N_ELEMENT
} EmElement;

extern const char *const em_element_ids[EM_N_ELEMENT];  /* "C", "Mn", … */

/* Mass percent; 0/0 where the standard names none; the balance element has is_balance. */
typedef struct
{
  double    low_pct[EM_N_ELEMENT];
  double    high_pct[EM_N_ELEMENT];
  EmElement balance;
} EmComposition;

typedef double EmChemistry[EM_N_ELEMENT];   /* one composition, mass percent, summing to 100 */

typedef enum
{
  EM_FAMILY_LOW_ALLOY, EM_FAMILY_TOOL_STEEL, EM_FAMILY_STAINLESS_MARTENSITIC, EM_FAMILY_STAINLESS_AUSTENITIC,
  EM_FAMILY_STAINLESS_PH, EM_FAMILY_MARAGING, EM_FAMILY_FREE_MACHINING, EM_FAMILY_CAST_IRON, EM_FAMILY_NICKEL,
  EM_FAMILY_COBALT, EM_FAMILY_COPPER, EM_FAMILY_ALUMINIUM, EM_N_FAMILY
} EmFamily;

extern const char *const em_family_ids[EM_N_FAMILY];

typedef enum { EM_PROCESS_LASER, EM_PROCESS_GTAW, EM_N_PROCESS } EmProcess;  /* ISO 4063: 52x, 141 */

extern const char *const em_process_ids[EM_N_PROCESS];  /* "laser", "gtaw" */
int32_t em_process_find (const char *id);               /* an EmProcess; −1: none, or NULL */

typedef struct
{
  char         *id;            /* "p20" */
  char         *designation;   /* "AISI P20 (UNS T51620)" */
  char         *source;        /* where the figures come from */
  char         *remark;        /* or NULL */
  EmFamily      family;
  EmComposition composition;
  double        density_g_per_mm3;
  double        hardness_low_hrc, hardness_high_hrc;   /* as used in tools; NaN: not on that scale */
  double        hardness_low_hv, hardness_high_hv;     /* for metals off the HRC scale; else NaN */
  double        temper_degc;   /* usual last tempering or ageing temperature, preheat stays below; NaN: none */
  double        preheat_low_degc, preheat_high_degc;   /* practical for GTAW; NaN: none usual */
  double        laser_preheat_degc;  /* NaN: none usual */
  bool          is_retired;    /* hidden from pickers, still priced in old quotes */
  bool          is_own;        /* the shop's record, not ours */
} EmBase;

enum { EM_SIZE_MAX = 8 };

typedef enum { EM_PER_METRE, EM_PER_GRAM, EM_PER_STICK, EM_N_PRICE_BASIS } EmPriceBasis;

typedef struct
{
  double       wire_mm;        /* diameter */
  int64_t      price_minor;    /* per metre, gram or stick, in the rate book's currency */
  EmPriceBasis basis;
  bool         is_stocked;
} EmWireSize;

typedef struct
{
  char         *id;            /* "er420" */
  char         *designation;   /* "ER420 (AWS A5.9)" */
  char         *source, *remark;
  char         *supplier_ref;  /* the shop's supplier's article, for CSV import; or NULL */
  EmFamily      family;
  EmComposition composition;
  double        density_g_per_mm3;
  double        melt_j_per_g;  /* enthalpy from room temperature to liquid */
  double        hardness_low_hrc, hardness_high_hrc;  /* as deposited; NaN: unknown */
  double        aged_low_hrc, aged_high_hrc;          /* after ageing; NaN */
  double        hardness_low_hv, hardness_high_hv;    /* off the HRC scale; else NaN */
  double        stick_mm;      /* NaN: the rate book's */
  uint32_t      processes;     /* bit (1 << EmProcess) */
  bool          polishes, textures, nitrides, machines_easily, resists_corrosion, resists_wear; /* relative to P20 */
  int32_t       n_sizes;
  EmWireSize    size[EM_SIZE_MAX];  /* ascending diameter */
  bool          is_retired, is_own, has_demo_price;
} EmFiller;

typedef struct
{
  int32_t   n_bases;
  EmBase   *base;
  int32_t   n_fillers;
  EmFiller *filler;
  char     *extra;     /* what a newer version's file holds besides, kept for it; NULL: nothing; owned */
} EmCatalogue;

void     em_catalogue_init (EmCatalogue *out_catalogue);
void     em_catalogue_clear (EmCatalogue *catalogue);
EmStatus em_catalogue_copy (const EmCatalogue *catalogue, EmCatalogue *out_copy);
bool     em_catalogue_equal (const EmCatalogue *a, const EmCatalogue *b);   /* record by record in order; two absent numbers are equal */
EmStatus em_catalogue_add_base_take (EmCatalogue *catalogue, EmBase *base);
EmStatus em_catalogue_add_filler_take (EmCatalogue *catalogue, EmFiller *filler);
int32_t  em_catalogue_find_base (const EmCatalogue *catalogue, const char *id);    /* −1 */
int32_t  em_catalogue_find_filler (const EmCatalogue *catalogue, const char *id);  /* −1 */
void     em_base_init (EmBase *out_base);
void     em_base_clear (EmBase *base);
EmStatus em_base_copy (const EmBase *base, EmBase *out_copy);
void     em_filler_init (EmFiller *out_filler);
void     em_filler_clear (EmFiller *filler);
EmStatus em_filler_copy (const EmFiller *filler, EmFiller *out_copy);
EmStatus em_base_check (const EmBase *base, EmFault *out_fault);
EmStatus em_filler_check (const EmFiller *filler, EmFault *out_fault);

/* Middle of the ranges, the balance element filled to 100. */
void em_composition_middle (const EmComposition *composition, EmChemistry out_chemistry);
