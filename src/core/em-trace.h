/* em-trace: the working behind a figure, when someone asks for it.
 *
 * Functions that take an EmTrace accept NULL and then pay nothing. All strings are
 * static; formula and source are EM_N strings where they hold words.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-fault.h"

#include <stdint.h>

enum { EM_TRACE_INPUT_MAX = 8 };

typedef struct
{
  const char *symbol;
  double      value;
  const char *unit;      /* "mm", "" … ; "minor" for money */
} EmTraceTerm;

typedef struct
{
  int         row;         /* feature index or EM_ROW_QUOTE */
  const char *quantity;    /* TSV name: "wire_length"; several steps may share one */
  EmTraceTerm result;
  const char *formula;     /* "N = ⌈(H + stock)/tL⌉ + safety" */
  const char *source;      /* "method, common practice", "EN 1011-1", … */
  int         n_inputs;
  EmTraceTerm input[EM_TRACE_INPUT_MAX];
} EmTraceStep;

typedef struct
{
  EmTraceStep *step;
  int          n_steps, cap_steps;
  bool         is_out_of_memory;
} EmTrace;

void em_trace_init (EmTrace *out_trace);
void em_trace_clear (EmTrace *trace);
/* inputs: n_inputs terms. No effect on NULL trace. */
void em_trace_add (EmTrace *trace, int row, const char *quantity, EmTraceTerm result,
                   const char *formula, const char *source, int n_inputs, const EmTraceTerm *inputs);
