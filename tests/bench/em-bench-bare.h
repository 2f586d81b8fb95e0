/* em-bench-bare: the comparison as bare arithmetic: one loop over features, wires, sizes and machines.
 *
 * What the engine does, less all that makes it an engine. Good for edge nicks with square ends, sidewalls and grooves of a
 * quote that fixes nothing, one tool, no extras, no settings shared. Speeds and unit prices are found beforehand.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-bench-shop.h"

typedef struct EmBenchBare EmBenchBare;

EmBenchBare *em_bench_bare_new  (const EmBenchShop *shop);
void         em_bench_bare_free (EmBenchBare *bare);
/* The order's net for each wire, minor units. */
void         em_bench_bare_run  (EmBenchBare *bare, double out_net_minor[EM_BENCH_WIRES]);
