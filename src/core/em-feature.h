/* em-feature: one repair on the tool, as the office entered it.
 *
 * A feature owns its strings (malloc). Absent numbers are NaN (EM_ABSENT), absent
 * strings NULL. All inputs that every kind shares live here; a kind's own
 * dimensions live in value[], indexed as its field table.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-kind.h"

typedef enum { EM_AUTO = 0, EM_YES, EM_NO } EmChoice;

typedef enum { EM_ACCESS_OPEN, EM_ACCESS_RESTRICTED, EM_ACCESS_DEEP, EM_N_ACCESS } EmAccess;

typedef enum { EM_FINISH_DEFAULT, EM_FINISH_CUSTOMER, EM_FINISH_SHOP, EM_N_FINISH } EmFinish;

/* How a value came to be. */
typedef enum
{
  EM_ORIGIN_ENTERED,   /* by the office; never overwritten by the notes reader */
  EM_ORIGIN_READ,      /* from the customer's words */
  EM_ORIGIN_INFERRED,  /* from the words, with a reason */
  EM_N_ORIGIN
} EmOrigin;

/* What a near thing is; used with clearance_mm. */
typedef enum { EM_NEAR_NOTHING, EM_NEAR_HOLE, EM_NEAR_TEXTURE, EM_NEAR_POLISH, EM_NEAR_THREAD, EM_N_NEAR } EmNear;

/* Text members, one table for file, window and undo. */
typedef enum
{
  EM_FEATURE_LABEL,            /* what the office calls it: "Gate insert, parting line" */
  EM_FEATURE_REMARK,           /* for the bench sheet */
  EM_FEATURE_ASSUMPTION,       /* printed on the quote: what unclear words were taken to mean */
  EM_FEATURE_FILLER,           /* catalogue id; NULL: the quote's */
  EM_FEATURE_MACHINE,          /* rate book machine id; NULL: the quote's, or cheapest */
  EM_FEATURE_PROCESS,          /* em_process_ids, any machine of it; goes before the quote's machine, after the feature's own */
  EM_FEATURE_OVERRIDE_REASON,
  EM_FEATURE_EXTRA,            /* XML of a newer version, kept as is */
  EM_N_FEATURE_TEXT
} EmFeatureText;

/* After the job. */
typedef struct
{
  double arc_on_s;     /* NaN: not recorded; all instances of all tools */
  double bench_s;      /* weld handling and arc-on together */
  double wire_mm;      /* wire used */
} EmActual;

typedef struct
{
  uint32_t      id;                     /* unique in the quote, > 0, kept on save; ties words to features */
  const EmKind *kind;
  double        value[EM_FIELD_MAX];    /* likely */
  double        low[EM_FIELD_MAX];      /* NaN: no range */
  double        high[EM_FIELD_MAX];
  uint8_t       origin[EM_FIELD_MAX];   /* EmOrigin */

  int32_t  count;            /* instances per tool, 1 … 10,000 */
  double   stock_mm;         /* machining allowance; NaN: the rate book's */
  double   clearance_mm;     /* to the near thing; NaN: nothing near */
  EmNear   near;
  double   slot_width_mm;    /* NaN: not in a slot */
  double   slot_depth_mm;
  EmAccess access;
  int32_t  setting;          /* features with the same positive number share one; 0: its own */
  int32_t  safety_layers;    /* −1: the rate book's */
  EmChoice melt_out, cap;    /* EM_AUTO: as the kind says */
  EmFinish finish;
  double   wire_mm;          /* NaN: cheapest that fits */
  bool     has_override;
  int64_t  override_minor;   /* stated line price, all instances, one tool */
  EmActual actual;
  char    *text[EM_N_FEATURE_TEXT];
} EmFeature;

extern const char *const em_access_ids[EM_N_ACCESS];   /* "open", "restricted", "deep" */
extern const char *const em_finish_ids[EM_N_FINISH];   /* "default", "customer", "shop" */
extern const char *const em_origin_ids[EM_N_ORIGIN];
extern const char *const em_near_ids[EM_N_NEAR];
extern const char *const em_choice_ids[3];             /* "auto", "yes", "no" */

/* A feature of kind with everything absent or at its default, count 1, id 0. */
void em_feature_init (EmFeature *out_feature, const EmKind *kind);
void em_feature_clear (EmFeature *feature);
/* Deep copy into uninitialised *out_copy; EM_FAULT_MEMORY leaves it untouched. */
EmStatus em_feature_copy (const EmFeature *feature, EmFeature *out_copy);
bool em_feature_equal (const EmFeature *a, const EmFeature *b);
/* Replaces a text member; NULL or "" clears it. */
EmStatus em_feature_set_text (EmFeature *feature, EmFeatureText which, const char *text);

/* Shared inputs' limits, then the shape; fault.field is a kind's field id or one of
 * "count", "stock", "clearance", "slot_width", "slot_depth", "setting", "safety_layers", "wire". */
EmStatus em_feature_solve (const EmFeature *feature, EmShape *out_shape, EmFault *out_fault);

/* malloc'd copy of text; NULL for NULL or on no memory. */
char *em_text_dup (const char *text);
bool  em_text_equal (const char *a, const char *b);
