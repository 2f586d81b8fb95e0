/* em-test-chemistry: compositions spelled out, iron filling up to 100.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-steel.h"

#include <string.h>

typedef struct { double c, mn, si, cr, ni, mo, v, cu; } EmTestSteel;

static inline void
em_test_steel (const EmTestSteel *steel, EmChemistry out_chemistry)
{
  memset (out_chemistry, 0, sizeof (EmChemistry));
  out_chemistry[EM_EL_C] = steel->c;
  out_chemistry[EM_EL_MN] = steel->mn;
  out_chemistry[EM_EL_SI] = steel->si;
  out_chemistry[EM_EL_CR] = steel->cr;
  out_chemistry[EM_EL_NI] = steel->ni;
  out_chemistry[EM_EL_MO] = steel->mo;
  out_chemistry[EM_EL_V] = steel->v;
  out_chemistry[EM_EL_CU] = steel->cu;
  out_chemistry[EM_EL_FE] = 100.0 - steel->c - steel->mn - steel->si - steel->cr - steel->ni - steel->mo - steel->v - steel->cu;
}

/* Middles of the standards' ranges (ASTM A681, A29, AWS A5.28; from memory), as the figures below were worked with. */
static const EmTestSteel em_test_4140 = { .c = 0.40, .mn = 0.875, .si = 0.25, .cr = 0.95, .mo = 0.20 };
static const EmTestSteel em_test_p20 = { .c = 0.34, .mn = 0.80, .si = 0.50, .cr = 1.70, .mo = 0.43 };
static const EmTestSteel em_test_p20_ni = { .c = 0.40, .mn = 1.45, .si = 0.30, .cr = 1.95, .ni = 1.05, .mo = 0.20 };
static const EmTestSteel em_test_s7 = { .c = 0.50, .mn = 0.55, .si = 0.60, .cr = 3.25, .mo = 1.55 };
static const EmTestSteel em_test_h13 = { .c = 0.39, .mn = 0.40, .si = 1.0, .cr = 5.1, .mo = 1.4, .v = 1.0 };
static const EmTestSteel em_test_d2 = { .c = 1.50, .mn = 0.30, .si = 0.30, .cr = 12.0, .mo = 0.95, .v = 0.55 };
static const EmTestSteel em_test_er80s_d2 = { .c = 0.095, .mn = 1.85, .si = 0.65, .mo = 0.50 };
static const EmTestSteel em_test_304l = { .c = 0.02, .mn = 1.2, .si = 0.4, .cr = 18.2, .ni = 10.1 };
static const EmTestSteel em_test_309l = { .c = 0.02, .mn = 1.8, .si = 0.5, .cr = 24.0, .ni = 13.0, .mo = 0.2 };
