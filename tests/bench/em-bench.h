/* em-bench: what every speed measurement here has in common.
 *
 * A figure is the best of several runs in processor time of this process, which a busy machine disturbs least, and
 * is printed beside its yardstick, measured by turns in the same process. A missed target fails the benchmark.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

#define EM_BENCH_FRAME_S (1.0 / 60.0)

/* Processor seconds this process has used. */
static inline double
em_bench_now_s (void)
{
  struct timespec now;

  clock_gettime (CLOCK_PROCESS_CPUTIME_ID, &now);
  return (double) now.tv_sec + (double) now.tv_nsec * 1e-9;
}

typedef void (*EmBenchRun) (void *data);

/* Processor seconds of one run. */
static inline double
em_bench_time_s (EmBenchRun run, void *data)
{
  double start = em_bench_now_s ();

  run (data);
  return em_bench_now_s () - start;
}

static inline double
em_bench_best_s (int n_runs, EmBenchRun run, void *data)
{
  double best = 1e9;

  for (int i = 0; i < n_runs; i++)
    {
      double s = em_bench_time_s (run, data);

      best = s < best ? s : best;
    }
  return best;
}

/* Ours and the yardstick by turns, the best of each. */
static inline void
em_bench_pair_s (int n_runs, EmBenchRun ours, EmBenchRun yardstick, void *data, double *out_ours_s, double *out_yardstick_s)
{
  *out_ours_s = *out_yardstick_s = 1e9;
  for (int i = 0; i < n_runs; i++)
    {
      double s = em_bench_time_s (ours, data), y = em_bench_time_s (yardstick, data);

      *out_ours_s = s < *out_ours_s ? s : *out_ours_s;
      *out_yardstick_s = y < *out_yardstick_s ? y : *out_yardstick_s;
    }
}

/* One line of the report; false when the target is missed. */
static inline bool
em_bench_tell (const char *what, double value, const char *unit, double target)
{
  printf ("%-58s %8.3f %s (target %g) %s\n", what, value, unit, target, value <= target ? "met" : "MISSED");
  return value <= target;
}

static inline void
em_bench_demand (bool is_fine, const char *what)
{
  if (is_fine)
    return;
  fprintf (stderr, "the benchmark itself failed: %s\n", what);
  exit (EXIT_FAILURE);
}
