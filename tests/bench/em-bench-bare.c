/* em-bench-bare: the formulas of the comparison, nothing else.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-bench-bare.h"
#include "em-arc.h"

#include <math.h>
#include <string.h>

#define PI 3.14159265358979323846

enum { N_SIZES = 5, N_MACHINES = 2, N_PLANS = N_SIZES * N_MACHINES };

typedef enum { NICK, SIDEWALL, GROOVE } Form;

typedef struct
{
  Form   form;
  double a, b, c;     /* as the kind's fields */
  double angle_deg;
  double n;
  int    access;
} Job;

typedef struct { double welded_mm, melt_mm, excess_mm3, starts; bool overfills; } Plan;

typedef struct { double s_per_mm, minor_per_mm; } Speed;

struct EmBenchBare
{
  const EmRates *rates;
  int32_t n_jobs;
  Job    *job;
  double  wire_mm[N_SIZES];
  Speed   speed[EM_BENCH_WIRES][N_SIZES][N_MACHINES];
};

static Job
job_of (const EmFeature *feature)
{
  const EmKind *kind = feature->kind;
  Job job = { .n = feature->count, .access = feature->access, .a = feature->value[0], .b = feature->value[1], .c = feature->value[2] };

  job.form = strcmp (kind->id, "edge-nick") == 0 ? NICK : strcmp (kind->id, "sidewall") == 0 ? SIDEWALL : GROOVE;
  job.angle_deg = 60.0;
  if (job.form == GROOVE)
    job.c = 0.0;
  return job;
}

EmBenchBare *
em_bench_bare_new (const EmBenchShop *shop)
{
  EmBenchBare *bare = calloc (1, sizeof *bare);
  const EmRates *rates = &shop->rates;
  double stick = rates->stick_mm / (rates->stick_mm - rates->stub_mm);

  em_bench_demand (bare != NULL, "no memory");
  bare->rates = rates;
  bare->n_jobs = shop->quote.n_features;
  bare->job = calloc ((size_t) bare->n_jobs, sizeof *bare->job);
  em_bench_demand (bare->job != NULL, "no memory");
  for (int32_t i = 0; i < bare->n_jobs; i++)
    bare->job[i] = job_of (&shop->quote.feature[i]);
  for (int w = 0; w < EM_BENCH_WIRES; w++)
    for (int s = 0; s < N_SIZES; s++)
      for (int m = 0; m < N_MACHINES; m++)
        {
          const EmFiller *filler = &shop->catalogue.filler[w];
          EmArc arc;

          em_bench_demand (em_arc_solve (&rates->machine[m], filler->size[s].wire_mm, filler->density_g_per_mm3, filler->melt_j_per_g, &arc, NULL) == EM_OK,
                           "a wire that no arc melts");
          bare->wire_mm[s] = filler->size[s].wire_mm;
          /* Priced by the metre; stubs and lost wire paid for. */
          bare->speed[w][s][m] = (Speed) { 1.0 / arc.speed_mm_per_s,
                                           (double) filler->size[s].price_minor * stick / 1000.0 / rates->machine[m].usable_ratio };
        }
  return bare;
}

void
em_bench_bare_free (EmBenchBare *bare)
{
  if (bare != NULL)
    free (bare->job);
  free (bare);
}

typedef struct { double height, area, volume, edge, extent, length, foot, top; bool melts, caps; } Body;

static inline Body
body_of (const Job *job)
{
  if (job->form == NICK)
    {
      double slope = hypot (job->b, job->c);

      return (Body) { .height = job->b * job->c / slope, .area = slope * job->a, .volume = job->a * job->b * job->c / 2.0, .extent = fmax (job->a, slope),
                      .length = job->a, .foot = slope, .top = 0.0, .melts = true };
    }
  if (job->form == SIDEWALL)
    return (Body) { .height = job->c, .area = job->a * job->b, .volume = job->a * job->b * job->c, .edge = job->a, .extent = fmax (job->a, job->b),
                    .length = fmax (job->a, job->b), .foot = fmin (job->a, job->b), .top = fmin (job->a, job->b), .caps = true };

  double slope = tan (job->angle_deg / 2.0 * PI / 180.0);

  return (Body) { .height = job->b, .area = job->a * (job->c + 2.0 * job->b * hypot (1.0, slope)), .volume = job->a * job->b * (job->c + job->b * slope),
                  .extent = fmax (job->a, job->c + 2.0 * job->b * slope), .length = job->a, .foot = job->c, .top = job->c + 2.0 * job->b * slope, .melts = true };
}

static inline double
whole (double value)
{
  double n = ceil (value * (1.0 - 1e-9));

  return n > 1.0 ? n : 1.0;
}

/* Layers, tracks, cap, melt-out of one wire and efficiency. */
static inline Plan
plan_of (const Body *body, const EmRates *rates, double wire_mm, double efficiency)
{
  double section = PI * wire_mm * wire_mm / 4.0, layer = rates->layer_ratio * wire_mm, pitch = efficiency * section / layer;
  double layers = whole ((body->height + rates->stock_mm) / layer) + rates->safety_layers, tracks = 0.0;
  double below = fmin (layers, ceil (fmax (0.0, body->height / layer - 0.5)));
  Plan plan = { .starts = layers + body->caps + body->melts, .overfills = layer > (body->height + rates->stock_mm) * (1.0 + 1e-9) };

  for (int i = 0; i < (int) below; i++)
    tracks += whole ((body->foot + (body->top - body->foot) * ((i + 0.5) * layer / body->height)) / pitch);
  tracks += whole (body->top / pitch) * (layers - below);
  plan.welded_mm = tracks * body->length;
  if (body->caps)
    plan.welded_mm += whole ((body->height + rates->stock_mm) / pitch) * body->edge;
  if (body->melts)
    {
      bool is_flat = fabs (body->foot * body->length - body->area) <= 1e-9 * body->area;

      plan.melt_mm = is_flat ? whole (body->foot / pitch) * body->length : body->area / pitch;
    }
  plan.excess_mm3 = fmax (0.0, efficiency * section * plan.welded_mm - body->volume);
  return plan;
}

void
em_bench_bare_run (EmBenchBare *bare, double out_net_minor[EM_BENCH_WIRES])
{
  const EmRates *rates = bare->rates;
  double over = 1.0 + (double) rates->overhead_ppm * 1e-6, marked = (1.0 + (double) rates->contingency_ppm * 1e-6) / (1.0 - (double) rates->margin_ppm * 1e-6);
  double bench_minor_per_s = (double) rates->bench_minor_per_h / 3600.0 * over;
  double net[EM_BENCH_WIRES] = { 0 };
  int used[EM_BENCH_WIRES][N_SIZES] = { 0 };
  int settings = bare->n_jobs, capped = 0;

  for (int32_t j = 0; j < bare->n_jobs; j++)
    {
      const Job *job = &bare->job[j];
      Body body = body_of (job);
      double area_cm2 = body.area / 100.0;
      double fixed_s = job->n * 60.0 * (rates->mask_min + rates->mask_min_per_cm2 * area_cm2 + rates->inspect_min + rates->inspect_min_per_cm * body.extent / 10.0);
      Plan plan[N_SIZES][N_MACHINES];

      capped += body.caps;
      for (int s = 0; s < N_SIZES; s++)
        for (int m = 0; m < N_MACHINES; m++)
          plan[s][m] = plan_of (&body, rates, bare->wire_mm[s], rates->machine[m].efficiency_ratio);
      for (int w = 0; w < EM_BENCH_WIRES; w++)
        {
          double best = INFINITY;
          bool best_overfills = true;
          int best_size = N_SIZES;

          for (int s = 0; s < N_SIZES; s++)
            for (int m = 0; m < N_MACHINES; m++)
              {
                const Plan *p = &plan[s][m];
                const EmMachine *machine = &rates->machine[m];
                const Speed *speed = &bare->speed[w][s][m];
                double arc_s = job->n * (p->welded_mm + p->melt_mm) * speed->s_per_mm;
                double gas_l = machine->gas_l_per_min / 60.0 * (arc_s + machine->gas_pre_post_s * p->starts * job->n);
                double cost = (fixed_s + arc_s / machine->operating_ratio[job->access]) * bench_minor_per_s
                              + arc_s * (double) (machine->machine_minor_per_h + machine->consumable_minor_per_h) / 3600.0
                              + job->n * p->welded_mm * speed->minor_per_mm + gas_l * (double) rates->gas_minor_per_m3 / 1000.0;
                bool is_better = p->overfills != best_overfills ? !p->overfills : p->overfills && s != best_size ? s < best_size : cost < best;

                if (is_better)
                  {
                    best = cost;
                    best_overfills = p->overfills;
                    best_size = s;
                  }
              }
          net[w] += floor (best * marked + 0.5);
          used[w][best_size]++;
        }
    }
  for (int w = 0; w < EM_BENCH_WIRES; w++)
    {
      int changes = -1;
      double minutes;

      for (int s = 0; s < N_SIZES; s++)
        changes += used[w][s] > 0;
      minutes = rates->receive_min + rates->true_setting_min * (settings + capped) + rates->wire_change_min * changes + rates->pack_min;
      out_net_minor[w] = net[w] + floor (minutes * 60.0 * bench_minor_per_s * marked + 0.5)
                         + floor ((rates->program_min * 60.0 * bench_minor_per_s + rates->paperwork_min / 60.0 * (double) rates->office_minor_per_h * over) * marked + 0.5);
    }
}
