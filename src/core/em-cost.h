/* em-cost: a quote priced: every feature, the shared work, the printed lines, the totals.
 *
 * Order of things: each feature alone (shape, plan, arc, wire choice, time, cost) and then
 * the quote (settings, order of work, tools, lines, totals). One edited feature means one
 * em_cost_update and one em_cost_total: no allocation, no text.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-arc.h"
#include "em-plan.h"
#include "em-quote.h"
#include "em-rates.h"
#include "em-trace.h"

/* Minutes and seconds are itemised by these. Per instance, per setting, per tool or once: see em_tasks[]. */
typedef enum
{
  EM_TASK_PAPERWORK, EM_TASK_PROGRAM, EM_TASK_RECEIVE, EM_TASK_STRIP, EM_TASK_PREHEAT, EM_TASK_TRUE, EM_TASK_MASK,
  EM_TASK_MELT_OUT, EM_TASK_ARC_ON, EM_TASK_HANDLING, EM_TASK_WIRE_CHANGE, EM_TASK_INSPECT, EM_TASK_FINISH, EM_TASK_PACK,
  EM_N_TASK
} EmTask;

typedef enum { EM_PER_ORDER, EM_PER_TOOL, EM_PER_SETTING, EM_PER_CHANGE, EM_PER_INSTANCE } EmTaskScope;
typedef enum { EM_ROLE_OFFICE, EM_ROLE_BENCH, EM_ROLE_FINISH, EM_N_ROLE } EmRole;

typedef struct
{
  const char *id;       /* "true" */
  const char *name;     /* EM_N "Set up and true" */
  EmTaskScope scope;
  EmRole      role;     /* whose hourly rate */
} EmTaskRow;

extern const EmTaskRow em_tasks[EM_N_TASK];

/* Where the money goes. */
typedef enum
{
  EM_MONEY_OFFICE, EM_MONEY_BENCH, EM_MONEY_FINISH, EM_MONEY_MACHINE, EM_MONEY_FILLER, EM_MONEY_GAS, EM_MONEY_CONSUMABLE,
  EM_MONEY_BOUGHT, EM_MONEY_OVERHEAD, EM_MONEY_CONTINGENCY, EM_MONEY_MARGIN,
  EM_N_MONEY
} EmMoney;

typedef struct { const char *id, *name; } EmMoneyRow;
extern const EmMoneyRow em_moneys[EM_N_MONEY];

typedef enum
{
  EM_WHY_CHEAPEST,     /* of the sizes that fit */
  EM_WHY_ONLY,         /* the only one that fits */
  EM_WHY_OFFICE,       /* the office overruled */
  EM_N_WHY
} EmWhy;

/* One wire size considered for one feature, on one machine. */
typedef struct
{
  double   wire_mm;
  int32_t  machine;      /* index in the rate book */
  EmStatus status;       /* EM_OK, or why not: RANGE (machine), CONFLICT (clearance), UNREACHABLE, RATING */
  EmFault  fault;        /* when status != EM_OK */
  bool     overfills;    /* a single layer of it is thicker than the metal wanted: taken only where every size does */
  int64_t  cost_minor;   /* of the feature with it, all instances of one tool; 0 when not EM_OK */
  int64_t  price_minor;  /* the feature's share of the price with it; 0 when not EM_OK */
} EmSizeTried;

enum { EM_TRIED_MAX = EM_SIZE_MAX * EM_MACHINE_MAX };

/* One feature: one tool, all count instances, unless said otherwise. */
typedef struct
{
  EmStatus    status;
  EmFault     fault;             /* when status != EM_OK; every figure below is then 0 or NaN */
  EmShape     shape;             /* one instance */
  EmPlanRules rules;
  EmPlan      plan;              /* one instance */
  EmArc       arc;
  int32_t     base, filler, machine, size;   /* indices */
  EmWhy       why;
  int32_t     n_fitting;         /* sizes and machines that would do, what the office fixed kept */
  int64_t     office_choice_minor;  /* what overruling the cheapest costs, ≥ 0 normally; 0 when not overruled */
  double      tilt_deg;
  double      net_volume_mm3, required_volume_mm3, deposited_volume_mm3, excess_volume_mm3;
  double      welded_length_mm, wire_length_mm;
  int64_t     sticks;            /* whole sticks, rounded up */
  double      filler_mass_g;
  double      arc_on_s;          /* with filler and melting out */
  double      gas_l;
  double      task_s[EM_N_TASK]; /* per-instance tasks only; handling excludes arc-on */
  double      labour_s;          /* sum of task_s (arc-on attended, so included) */
  int64_t     pulses;            /* laser */
  int64_t     money_minor[EM_N_MONEY]; /* cost by where it goes, one tool, learning not applied */
  int64_t     cost_minor;        /* sum of money but margin */
  int64_t     price_minor;       /* one tool's share, rounded once; or the override */
  int64_t     calculated_minor;  /* what it would be with no override */
} EmFeatureCost;

/* A printed line. Its amount is for the whole order and rounded once: the line's cost (money but margin, of all tools,
 * learning applied) → overhead and contingency → cost/(1 − margin) in one 128-bit step, half away from zero.
 * Subtotal, net and total are sums of printed lines, so paper adds up. */
typedef enum
{
  EM_LINE_FEATURE,     /* row: feature index */
  EM_LINE_SET_UP,      /* shared work per tool: receive, true, wire changes, preheat, pack */
  EM_LINE_ORDER,       /* once: paperwork, programme */
  EM_LINE_EXTRA,       /* row: extra index */
  EM_LINE_MINIMUM,     /* raises to the minimum charge */
  EM_LINE_RUSH, EM_LINE_DISCOUNT,
  EM_LINE_ROUNDING,    /* to the rounding step */
  EM_LINE_TAX,         /* row: tax index */
  EM_N_LINE
} EmLineType;

typedef struct
{
  EmLineType type;
  int32_t    row;
  int32_t    quantity;         /* tools for per-tool lines, else 1 */
  int64_t    amount_minor;     /* whole order */
  int64_t    calculated_minor; /* differs from amount when overridden */
  int64_t    rate_ppm;         /* tax, rush, discount; else 0 */
  bool       is_override;
} EmLine;

typedef struct
{
  int32_t n_tools;
  int64_t subtotal_minor;      /* features, set-up, order, extras */
  int64_t net_minor;           /* after minimum, rush, discount, rounding */
  int64_t tax_minor;
  int64_t total_minor;
  int64_t each_minor;          /* net per tool, rounded; for show, not for sums */
} EmTotals;

/* An order of work: visits[i] is the i-th stop. */
typedef struct
{
  int32_t feature;       /* index */
  int32_t setting;       /* running number from 1 */
  bool    is_new_setting, is_new_wire;
} EmVisit;

typedef struct
{
  int32_t        n_features, cap_features;
  EmFeatureCost *feature;
  EmVisit       *visit;          /* n_features, faulty ones left out: n_visits */
  int32_t        n_visits;
  int32_t        settings, wire_changes;
  bool           is_preheated;
  double         preheat_degc;     /* NaN: none */
  double         learning_factor;  /* cumulative average over n tools, ≤ 1 */
  double         task_s[EM_N_TASK];   /* whole order */
  double         labour_s, arc_on_s, wire_length_mm, filler_mass_g, gas_l;   /* whole order */
  double         net_volume_mm3, required_volume_mm3, deposited_volume_mm3, welded_length_mm;
  int64_t        layers, tracks;   /* whole order */
  int64_t        sticks;           /* whole order: whole sticks of each wire, pooled over the features */
  int64_t        money_minor[EM_N_MONEY];  /* whole order; sums to the net before minimum, rush, discount, rounding, overrides */
  int64_t        cost_minor;       /* whole order */
  int64_t        markup_ppm;       /* the margin told as markup */
  int32_t        n_lines, cap_lines;
  EmLine        *line;             /* sums: subtotal, net, total are sums of these */
  EmTotals       totals;
  int32_t        n_breaks;
  EmTotals       breaks[EM_BREAK_MAX];
  int32_t        n_faults;         /* features with a fault: the total leaves them out and says so */
  EmFault        first_fault;
  struct EmCostRoom *room;         /* the engine's own, for em_cost_update */
} EmCost;

void em_cost_init (EmCost *out_cost);
void em_cost_clear (EmCost *cost);

/* One feature by itself. out_cost->status repeats the return. trace may be NULL. */
EmStatus em_cost_feature (const EmQuote *quote, int32_t index, const EmRates *rates, const EmCatalogue *catalogue,
                          EmFeatureCost *out_cost, EmTrace *trace);

/* Every size of the feature's wire that is on offer, on every machine in use, whatever the office fixed: at most EM_TRIED_MAX, in
 * the order of the catalogue, then of the rate book. What no size can mend (a shape that cannot be, an unknown wire) is the fault
 * returned, want of memory EM_FAULT_MEMORY on "quote"; the outputs are untouched then. */
EmStatus em_cost_tried (const EmQuote *quote, int32_t index, const EmRates *rates, const EmCatalogue *catalogue,
                        EmSizeTried *out_tried, int32_t *out_n_tried, EmFault *out_fault);

/* Everything. A faulty feature does not stop the rest: n_faults counts them, and the return is EM_OK. Returns a fault for the quote's,
 * rate book's own numbers, overflow or memory; *cost then keeps its last good figures. */
EmStatus em_cost_quote (EmCost *cost, const EmQuote *quote, const EmRates *rates, const EmCatalogue *catalogue,
                        EmTrace *trace, EmFault *out_fault);

/* After features were inserted, removed, moved: em_cost_quote. After one changed in place: */
EmStatus em_cost_update (EmCost *cost, int32_t index, const EmQuote *quote, const EmRates *rates, const EmCatalogue *catalogue,
                         EmFault *out_fault);
