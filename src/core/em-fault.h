/* em-fault: how the engine says no.
 *
 * A fault is numbers and identifiers, never a sentence: the words room turns it
 * into one. Functions that can fail return an EmStatus and fill *out_fault (which
 * may be NULL); on failure every other output is left as it was.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include <math.h>
#include <stdbool.h>
#include <stddef.h>

/* Marks a user-facing English string for the translators; core itself never
 * translates. */
#define EM_N(text) (text)

/* A dimension that was not given is NaN; ask with em_is_absent. */
#define EM_ABSENT ((double) NAN)

typedef enum
{
  EM_OK = 0,
  EM_FAULT_MISSING,      /* a required field is absent */
  EM_FAULT_NOT_FINITE,   /* infinite */
  EM_FAULT_RANGE,        /* value outside [low, high] */
  EM_FAULT_CONFLICT,     /* field contradicts other_field; low/high say what would fit */
  EM_FAULT_UNKNOWN,      /* an id that is in neither catalogue nor rate book */
  EM_FAULT_UNREACHABLE,  /* beam or torch cannot reach without dismantling */
  EM_FAULT_NO_WIRE,      /* no stocked wire size fits clearance, reach and machine */
  EM_FAULT_UNSUITED,     /* filler does not suit the process or the base */
  EM_FAULT_RATING,       /* a machine rating cannot be kept */
  EM_FAULT_OVERFLOW,     /* an amount or count too large to hold */
  EM_FAULT_MEMORY,
  EM_N_STATUS
} EmStatus;

enum { EM_ROW_QUOTE = -1, EM_ROW_RATES = -2, EM_ROW_CATALOGUE = -3 };

typedef struct
{
  EmStatus    code;
  const char *field;       /* static identifier, as in the field tables; never NULL on failure */
  const char *other_field; /* static identifier of the field it clashes with, or NULL */
  int         row;         /* index of the feature, or EM_ROW_* */
  double      value;       /* what was given; NaN when nothing was */
  double      low;         /* limits, in the field's own unit; NaN when open */
  double      high;
  bool        low_is_open, high_is_open;   /* the limit itself is refused too */
} EmFault;

static inline bool
em_is_absent (double value)
{
  return isnan (value);
}

/* Fills *out_fault (when not NULL) and returns code. */
EmStatus em_fault_set (EmFault *out_fault, EmStatus code, const char *field,
                       double value, double low, double high);
EmStatus em_fault_set_conflict (EmFault *out_fault, const char *field, const char *other_field,
                                double value, double low, double high);

/* Says of a fault just set which of its limits are themselves refused; returns code. */
static inline EmStatus
em_fault_open (EmFault *out_fault, bool low_is_open, bool high_is_open, EmStatus code)
{
  if (out_fault != NULL)
    {
      out_fault->low_is_open = low_is_open;
      out_fault->high_is_open = high_is_open;
    }
  return code;
}
