/* em-cost-internal: what the files of the costing engine tell one another.
 *
 * Private to the core room.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-study.h"

/* Wire number of a filler's size, for the order of work and the sticks. */
static inline int32_t
em_cost_wire (int32_t filler, int32_t size)
{
  return filler * EM_SIZE_MAX + size;
}

/* ---- em-study ---- */
double   em_cost_stick_mm (const EmFiller *filler, const EmRates *rates);
double   em_cost_units_per_mm (const EmFiller *filler, const EmWireSize *size, const EmRates *rates);

/* ---- em-labour ---- */
/* Shared times of a feature that no wire changes: stripping, masking, inspecting, finishing. */
void     em_cost_fixed_times (EmStudy *study, const EmQuote *quote);
/* Whether the shop finishes the feature itself. */
bool     em_cost_finishes (const EmFeature *feature, const EmQuote *quote);
/* What a pick takes: study, option and plan of *pick are set; fills its work. */
void     em_cost_fill_work (const EmStudy *study, EmPick *pick);
/* Times shared by the features, one tool: receive, true, wire changes, preheat, pack; and once for the order: paperwork, programme. */
void     em_cost_shared_times (const EmRates *rates, int32_t settings, int32_t wire_changes, bool is_preheated, double out_task_s[EM_N_TASK]);
/* Set-up and order work, one tool and once, from shared times. */
void     em_cost_set_up_work (const double task_s[EM_N_TASK], EmWork *out_work);
void     em_cost_order_work (const double task_s[EM_N_TASK], EmWork *out_work);

/* ---- em-preheat: declared in em-study.h ---- */
/* One more feature's advice: advised if any is, as warm as the warmest asks. */
void     em_preheat_add (EmPreheat *sum, const EmPreheat *other);
/* Whether the tool is preheated, and to how many °C (NaN: not at all, or nobody says): the office's decision, else the advice. */
bool     em_preheat_decide (const EmQuote *quote, const EmPreheat *advised, double *out_degc);
void     em_preheats_init (EmPreheats *out_preheats);
void     em_preheats_clear (EmPreheats *preheats);
/* Nothing is known yet of any pair; base −1: no advice at all. */
EmStatus em_preheats_begin (EmPreheats *preheats, const EmQuote *quote, const EmRates *rates, const EmCatalogue *catalogue, int32_t base);
EmPreheat em_preheats_get (EmPreheats *preheats, int32_t filler, int32_t machine);

/* ---- em-choose ---- */
/* Indices of the quote's base, and of a feature's filler and fixed machine or process; faults "base", "filler", "machine", "process". */
EmStatus em_cost_find_base (const EmQuote *quote, const EmCatalogue *catalogue, int32_t *out_base, EmFault *out_fault);
EmStatus em_cost_find_filler (const EmQuote *quote, int32_t index, const EmCatalogue *catalogue, int32_t *out_filler, EmFault *out_fault);
/* The ids the office named for a feature, its own before the quote's, a machine before a process: one at most is not NULL. Borrowed. */
void     em_cost_find_named (const EmQuote *quote, const EmFeature *feature, const char **out_machine, const char **out_process);
/* A process no machine in use is of is as unknown as one that is none. */
EmStatus em_cost_find_fixed (const EmQuote *quote, int32_t index, const EmRates *rates, EmFixed *out_fixed, EmFault *out_fault);

/* ---- em-cost-feature ---- */
EmStatus em_cost_feature_with (EmStudy *study, const EmOptions *options, const EmQuote *quote, int32_t index, const EmRates *rates,
                               const EmCatalogue *catalogue, const EmPriceRule *rule, EmFeatureCost *out_cost, EmWork *out_work);

/* ---- em-shared ---- */
/* Money of the work the features share, for n_tools: the set-up line, and the line once for the order, which bears
 * the rest of the last sticks where whole ones are bought. */
EmStatus em_cost_shared_direct (const EmPriceRule *rule, const EmRates *rates, const EmCatalogue *catalogue, const double task_s[EM_N_TASK],
                                const double *use_mm, int32_t n_tools, double learning_factor,
                                EmExact out_set_up[EM_N_DIRECT], EmExact out_order[EM_N_DIRECT]);
EmStatus em_cost_extra_direct (const EmPriceRule *rule, const EmExtra *extra, int32_t n_tools, EmExact out_direct[EM_N_DIRECT]);
/* Limits of the extra lines; fault.field "extra". */
EmStatus em_cost_check_extras (const EmQuote *quote, EmFault *out_fault);
/* Whole sticks for n_tools over all wires. use_mm[]: wire used by one tool of wire number filler·EM_SIZE_MAX + size. */
int64_t  em_cost_sticks (const EmRates *rates, const EmCatalogue *catalogue, const double *use_mm, int32_t n_tools);

/* ---- em-cost-trace ---- */
void     em_cost_trace_feature (EmTrace *trace, const EmQuote *quote, int32_t index, const EmRates *rates, const EmCatalogue *catalogue,
                                const EmFeatureCost *cost);
void     em_cost_trace_quote (EmTrace *trace, const EmQuote *quote, const EmRates *rates, const EmCatalogue *catalogue, const EmCost *cost);
