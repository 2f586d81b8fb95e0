/* em-quantity: dimensions as people write them, and back.
 *
 * ".020", "20 thou", "0,5 mm", "1/2", "1 1/2 in", "2 x 0.4"… A reader and a writer
 * with no locale: point and comma are both decimal marks. One inch is 25.4 mm exactly
 * (NIST SP 811, appendix B).
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-kind.h"

#include <stddef.h>

typedef enum { EM_UNITS_METRIC, EM_UNITS_INCH } EmUnits;

#define EM_MM_PER_INCH 25.4

typedef struct
{
  double value;       /* mm, degrees, mm² or plain */
  double count;       /* "2 x 0.4": 2; NaN when none was written */
  double low, high;   /* "0.3-0.5", "0.4 ±0.1", "0.3/0.4/0.5": limits; NaN when none */
  bool   has_unit;    /* the text itself named a unit */
} EmReading;

/* Reads the whole of text (UTF-8). A bare number takes units. Returns EM_FAULT_MISSING for
 * blank text, EM_FAULT_RANGE for text that is no quantity (value NaN), EM_FAULT_NOT_FINITE
 * for one too large; *out_reading untouched then. field is put into the fault. */
EmStatus em_quantity_read (const char *text, EmQuantityType type, EmUnits units,
                           const char *field, EmReading *out_reading, EmFault *out_fault);

/* Writes value without a unit, in units, with just the digits people expect (inch to 5
 * decimals, no leading zero before a point as on US drawings, ASME Y14.5, but one before a comma,
 * which would read as punctuation, SI Brochure 5.4.4; metric to 4) and no trailing zeros, unless that
 * would not read back to the same double within 1e-9 mm; then as many as needed, at most 17.
 * decimal_mark is '.' or ','. Returns the length as snprintf does. */
int em_quantity_write (double value, EmQuantityType type, EmUnits units, char decimal_mark,
                       char *buffer, size_t size);

/* "mm", "in", "°", "mm²", "in²", "" */
const char *em_quantity_unit (EmQuantityType type, EmUnits units);

/* Shortest text that reads back to the same double with strtod in the C locale; never
 * depends on the locale. For files. size ≥ 32. */
int em_number_write (double value, char *buffer, size_t size);

/* The whole of text as a finite double, '.' decimal mark only, no locale, no hex, no inf/nan. */
bool em_number_read (const char *text, double *out_value);
bool em_integer_read (const char *text, int64_t *out_value);
