/* em-exact: 128-bit whole numbers for money between its inputs and its one rounding.
 *
 * Private to the core room. Needs a compiler with a 128-bit integer type (GCC and
 * Clang on 64-bit machines have one).
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-fault.h"

#include <stdint.h>

__extension__ typedef __int128 EmExact;
__extension__ typedef unsigned __int128 EmExactUnsigned;

/* numerator/denominator (> 0) rounded once, half away from zero. EM_FAULT_OVERFLOW when
 * it does not fit 64 bits; *out_value untouched then. */
EmStatus em_exact_round (EmExact numerator, EmExact denominator, int64_t *out_value);
