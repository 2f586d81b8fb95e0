/* em-calibrate: what past jobs say of operating factor and wire efficiency.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-cost.h"

typedef struct
{
  EmProcess process;
  EmAccess  access;
  double    operating_ratio;    /* actual arc-on / bench time; NaN: not recorded */
  double    usable_ratio;       /* wire needed with nothing lost / wire used; NaN: not recorded */
} EmJobRecord;

typedef struct
{
  int32_t n_operating, n_usable;                      /* jobs behind each */
  double  operating_ratio, usable_ratio;              /* median; NaN below EM_CALIBRATE_LEAST jobs */
  double  operating_low, operating_high, usable_low, usable_high; /* median ± scaled median absolute deviation */
} EmCalibration;

enum { EM_CALIBRATE_LEAST = 3 };

/* Record of one priced feature with actuals. Figures that give no ratio in (0, 1] (a time sheet with more arc than
 * bench time) count as not recorded; false when nothing is left, *out_record untouched then. */
bool em_calibrate_record (const EmQuote *quote, int32_t index, const EmCost *cost, const EmRates *rates, EmJobRecord *out_record);

/* out_result[process][access] from n_records records: the median, with a band of one scaled median absolute
 * deviation (F. R. Hampel, "The influence curve and its role in robust estimation", J. Am. Stat. Assoc. 69, 1974).
 * EM_FAULT_MEMORY leaves it untouched. */
EmStatus em_calibrate (const EmJobRecord *records, int32_t n_records, EmCalibration out_result[EM_N_PROCESS][EM_N_ACCESS]);

/* Puts accepted figures into every machine of the process; NaN figures change nothing. The usable share has no
 * access of its own in the book, so the last accepted one holds. */
void em_calibrate_accept (EmRates *rates, EmProcess process, EmAccess access, const EmCalibration *calibration);
