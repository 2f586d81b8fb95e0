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
  double    usable_ratio;       /* calculated wire with usable 1 / actual wire; NaN */
} EmJobRecord;

typedef struct
{
  int32_t n_operating, n_usable;                      /* jobs behind each */
  double  operating_ratio, usable_ratio;              /* median; NaN below EM_CALIBRATE_LEAST jobs */
  double  operating_low, operating_high, usable_low, usable_high; /* median ± scaled median absolute deviation */
} EmCalibration;

enum { EM_CALIBRATE_LEAST = 3 };

/* Record of one feature with actuals; false when it has none. */
bool em_calibrate_record (const EmQuote *quote, int32_t index, const EmCost *cost, const EmRates *rates, EmJobRecord *out_record);

/* result[process][access] by the median (robust: Hampel 1974), n records. */
EmStatus em_calibrate (const EmJobRecord *records, int32_t n_records, EmCalibration out_result[EM_N_PROCESS][EM_N_ACCESS]);

/* Puts accepted figures of one machine's process into the book. */
void em_calibrate_accept (EmRates *rates, EmProcess process, EmAccess access, const EmCalibration *calibration);
