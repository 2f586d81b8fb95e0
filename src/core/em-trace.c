/* em-trace: a growing list of steps.
 *
 * Running out of memory only loses the working, never the figure: the list stops
 * growing and says so.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-trace.h"

#include <assert.h>
#include <stdlib.h>
#include <string.h>

void
em_trace_init (EmTrace *out_trace)
{
  *out_trace = (EmTrace) { 0 };
}

void
em_trace_clear (EmTrace *trace)
{
  free (trace->step);
  em_trace_init (trace);
}

static bool
grow (EmTrace *trace)
{
  int cap = trace->cap_steps == 0 ? 64 : trace->cap_steps * 2;
  EmTraceStep *step = cap > trace->cap_steps ? realloc (trace->step, (size_t) cap * sizeof *step) : NULL;

  if (step == NULL)
    {
      trace->is_out_of_memory = true;
      return false;
    }
  trace->step = step;
  trace->cap_steps = cap;
  return true;
}

void
em_trace_add (EmTrace *trace, int row, const char *quantity, EmTraceTerm result,
              const char *formula, const char *source, int n_inputs, const EmTraceTerm *inputs)
{
  if (trace == NULL || trace->is_out_of_memory)
    return;
  assert (n_inputs >= 0 && n_inputs <= EM_TRACE_INPUT_MAX);
  if (trace->n_steps == trace->cap_steps && !grow (trace))
    return;

  EmTraceStep *step = &trace->step[trace->n_steps++];

  *step = (EmTraceStep) { .row = row, .quantity = quantity, .result = result,
                          .formula = formula, .source = source, .n_inputs = n_inputs };
  if (n_inputs > 0)
    memcpy (step->input, inputs, (size_t) n_inputs * sizeof *inputs);
}
