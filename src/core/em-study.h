/* em-study: a feature looked at once, so that many wires and machines can be tried on it cheaply.
 *
 * Private to the core room. Three layers, each solved as seldom as it can be:
 *   EmOptions  once per rate book and catalogue: every filler × size × machine with its speed and its rates;
 *   EmStudy    once per feature: shape, shared times, and one plan per slot (wire diameter and efficiency), solved when
 *              first asked for, whatever the alloy;
 *   EmPick     once per feature and filler: the cheapest option that clears, reaches and melts.
 * A comparison runs features outside and fillers inside, with one EmStudy reused, and gathers one EmScenario per filler:
 *
 *   em_options_solve (&options, rates, catalogue, -1, &fault);
 *   em_price_rule_set (quote, rates, &rule);
 *   for each filler  em_scenario_begin (&scenario[filler], quote, rates, catalogue, &rule);
 *   for each feature
 *     {
 *       em_study_solve (&study, quote, index, rates, &options, &fault);
 *       for each filler
 *         if (em_study_pick (&study, filler, &fixed, &rule, &pick, NULL, &fault) == EM_OK)
 *           em_scenario_add (&scenario[filler], &study, filler, &pick, &fault);
 *     }
 *   for each filler  em_scenario_finish (&scenario[filler], &figures, &fault);
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-order.h"
#include "em-price.h"

/* One size of one filler on one machine. */
typedef struct
{
  int32_t     filler, size, machine;   /* indices */
  int32_t     slot;                    /* plans are shared by it */
  bool        is_offered;              /* stocked, and machine in use; else only when the office names it */
  EmStatus    status;                  /* why it can never be used: UNSUITED, RANGE, RATING; EM_OK */
  EmFault     fault;
  double      wire_mm;
  EmArc       arc;
  double      s_per_mm;                /* of track */
  double      wire_per_track;          /* 1/usable */
  double      units_per_mm;            /* priced units of filler for each mm of wire used, stubs in it */
  int64_t     unit_minor;
} EmOption;

/* What the quick look needs of an option, close together in memory. */
typedef struct
{
  double  spot_mm, s_per_mm;
  double  minor_per_mm;           /* wire, for each mm of track */
  int32_t pair;
  bool    is_offered, is_fine;    /* fine: status EM_OK */
} EmOptionLook;

/* A slot on a machine. */
typedef struct { int32_t slot, machine; } EmPair;

typedef struct
{
  const EmRates     *rates;       /* borrowed */
  const EmCatalogue *catalogue;   /* borrowed */
  int32_t   n_slots;
  double   *slot_wire_mm, *slot_efficiency;
  int32_t   n_options;
  EmOption *option;
  EmOptionLook *look;             /* by option */
  int32_t   n_pairs;
  EmPair   *pair;
  double    s_per_mm_high, units_per_mm_high, minor_per_mm_high, unit_minor_high;   /* over options; mm of track */
  int32_t  *first;                /* options of filler i: first[i] … first[i + 1] − 1 */
} EmOptions;

void     em_options_init (EmOptions *out_options);
void     em_options_clear (EmOptions *options);
/* filler −1: all of them; else the others have no options. Replaces what options held; on failure it is cleared.
 * A filler whose own figures are faulty has options that say so; the return is then still EM_OK. */
EmStatus em_options_solve (EmOptions *options, const EmRates *rates, const EmCatalogue *catalogue, int32_t filler, EmFault *out_fault);

/* Rates of the quick look at options; see em-screen.h. */
typedef struct
{
  double minor_per_arc_s;     /* bench time with its overhead, machine, consumables, gas */
  double minor_per_start;     /* gas */
} EmScreenMachine;

typedef struct
{
  const EmPriceRule *rule;    /* it was set for; NULL: not yet for this feature */
  double common_minor;        /* what every option of the feature costs alike */
  double slack_minor;         /* what exact pricing may round away and the common part be off by, whatever the option */
  double finish_minor_per_s;
  double spot_high_mm;        /* the largest that clears; in a slot none is taken unasked */
  double bench_s_per_arc_s_high, gas_l_per_s_high, gas_l_per_start_high;   /* over machines */
  bool   is_sure;             /* the common part is no larger than can be bracketed */
  EmScreenMachine machine[EM_MACHINE_MAX];
} EmScreen;

/* What the quick look needs of a slot's plan on a machine, all instances: cost is
 * arc_minor_mm_per_s·(s/mm) + wire_mm·(minor/mm) + rest_minor. */
typedef struct
{
  double arc_minor_mm_per_s, wire_mm, rest_minor;
  double rank_mm;             /* 0 where the layer fits the job, else the wire: it goes before cost, the finest first */
  bool   is_known, is_fine;   /* fine: planned, and small enough to be bracketed */
} EmPairLook;

typedef struct
{
  const EmFeature *feature;       /* borrowed, until solved again */
  const EmRates   *rates;
  const EmOptions *options;
  int32_t          row;
  EmShape          shape;
  EmPlanRules      rules;         /* wire_mm and efficiency_ratio belong to the slot */
  double           strip_s, mask_s, inspect_s, finish_area_s, finish_s_per_mm3;   /* one instance */
  double           finish_cm2, finish_cm;                                         /* one instance; 0: by the customer */
  int32_t          cap_slots, cap_pairs;
  EmPlan          *plan;          /* by slot */
  EmStatus        *plan_status;   /* by slot; EM_N_STATUS: not asked for yet */
  EmScreen         screen;
  EmPairLook      *look;          /* by pair */
} EmStudy;

void     em_study_init (EmStudy *out_study);
void     em_study_clear (EmStudy *study);
/* Shape and shared times of one feature. fault.row is the feature. */
EmStatus em_study_solve (EmStudy *study, const EmQuote *quote, int32_t index, const EmRates *rates, const EmOptions *options,
                         EmFault *out_fault);
/* The plan of a slot, or NULL with *out_fault filled. */
const EmPlan *em_study_plan (EmStudy *study, int32_t slot, EmFault *out_fault);
/* A layer thicker than all the metal wanted: the wire buries the job and leaves it to be machined off. */
bool     em_study_overfills (const EmStudy *study, const EmPlan *plan);

/* What the office settled beforehand. */
typedef struct
{
  int32_t machine;    /* −1: any */
  int32_t process;    /* EmProcess, where no machine is; −1: any */
  double  wire_mm;    /* NaN: any */
} EmFixed;

typedef struct
{
  const EmOption *option;    /* borrowed from the options */
  const EmPlan   *plan;      /* borrowed from the study, until it is solved again */
  double   tilt_deg;
  int32_t  n_fitting;        /* options that would do, what is fixed kept */
  EmWork   work;             /* all instances, one tool */
  EmExact  direct[EM_N_DIRECT];   /* of work, for one tool */
  EmExact  cost;             /* as em_price_cost */
} EmPick;

/* Whether one option does for the feature: clearance, reach, plan, and its work and cost when it does. */
EmStatus em_study_try (EmStudy *study, const EmOption *option, const EmPriceRule *rule, EmPick *out_pick, EmFault *out_fault);
/* The cheapest option of filler within what is fixed whose layer is no thicker than the metal wanted, ties to the thicker wire; where
 * every one overfills, the finest. *out_cheapest (may be NULL) is the cheapest
 * with nothing fixed. When none does, the fault names what stood in the way of the one that came furthest. */
EmStatus em_study_pick (EmStudy *study, int32_t filler, const EmFixed *fixed, const EmPriceRule *rule,
                        EmPick *out_pick, EmPick *out_cheapest, EmFault *out_fault);
/* Per-instance tasks of a pick, seconds, all instances of one tool. */
void     em_study_tasks (const EmStudy *study, const EmPick *pick, double out_task_s[EM_N_TASK]);

/* What the metal asks of one wire on one machine. */
typedef struct
{
  bool   is_known, is_advised;
  double degc;                    /* NaN: none, or nobody says how warm */
} EmPreheat;

/* Advice by filler and machine, worked out when first asked for. */
typedef struct
{
  const EmRates     *rates;
  const EmCatalogue *catalogue;
  int32_t    base;                /* −1: unknown, no advice */
  double     hardness_hrc, section_mm;
  EmPreheat *at;
} EmPreheats;

/* One whole-quote what-if: lines added feature by feature, then the shared work and the totals. */
typedef struct
{
  const EmQuote     *quote;
  const EmRates     *rates;
  const EmCatalogue *catalogue;
  const EmPriceRule *rule;
  double       learning_factor;
  int64_t      subtotal_minor;              /* printed lines */
  int64_t      calculated_minor;            /* the same with no overrides */
  EmExact      direct[EM_N_DIRECT];
  double       arc_on_s, labour_s;          /* whole order, features so far */
  double       wire_low_mm, wire_high_mm;   /* NaN before the first */
  int32_t      features_by_process[EM_N_PROCESS];
  EmPreheats   preheats;
  EmPreheat    preheat;                     /* of the features so far */
  int32_t      n_items, cap_items;
  EmOrderItem *item;
  double      *item_wire_mm;                /* wire used, one tool */
  EmOrderRoom  room;
} EmScenario;

typedef struct
{
  EmTotals totals;
  int64_t  money_minor[EM_N_MONEY];
  double   arc_on_s, labour_s;
  int32_t  settings, wire_changes;
} EmScenarioFigures;

void     em_scenario_init (EmScenario *out_scenario);
void     em_scenario_clear (EmScenario *scenario);
/* Starts afresh; quote, rates, catalogue and rule are borrowed until the end. */
EmStatus em_scenario_begin (EmScenario *scenario, const EmQuote *quote, const EmRates *rates, const EmCatalogue *catalogue,
                            const EmPriceRule *rule);
EmStatus em_scenario_add (EmScenario *scenario, const EmStudy *study, int32_t filler, const EmPick *pick, EmFault *out_fault);
EmStatus em_scenario_finish (EmScenario *scenario, EmScenarioFigures *out_figures, EmFault *out_fault);
