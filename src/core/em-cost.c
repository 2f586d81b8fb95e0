/* em-cost: the whole quote, and one changed feature of it.
 *
 * Figures of the features are summed in blocks, always the same way, so that a change
 * touches one block and an update gives the very bits of a costing from scratch.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-cost-internal.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

enum { BLOCK = 64, COUNT_MAX = 1 + EM_BREAK_MAX, TAIL_MAX = EM_N_LINE + EM_TAX_MAX };

const EmMoneyRow em_moneys[EM_N_MONEY] =
{
  { "office",      EM_N ("Office") },
  { "bench",       EM_N ("Bench") },
  { "finish",      EM_N ("Finishing") },
  { "machine",     EM_N ("Machine") },
  { "filler",      EM_N ("Wire") },
  { "gas",         EM_N ("Shielding gas") },
  { "consumable",  EM_N ("Consumables") },
  { "bought",      EM_N ("Bought out") },
  { "overhead",    EM_N ("Overhead") },
  { "contingency", EM_N ("Contingency") },
  { "margin",      EM_N ("Margin") },
};

/* What the totals need of one feature: its line for every number of tools, and its place in the order of work. */
typedef struct
{
  EmExact     direct[EM_N_DIRECT];   /* n_tools */
  int64_t     amount[COUNT_MAX], calculated_minor;
  EmOrderItem item;
  double      wire_mm;               /* used, one tool */
  EmPreheat   preheat;
  bool        is_faulty;
} Row;

/* Sums over features: whole lines for money, one tool for the rest. */
typedef struct
{
  EmExact direct[EM_N_DIRECT];
  int64_t amount[COUNT_MAX], calculated_minor;
  double  task_s[EM_N_TASK];
  double  arc_on_s, wire_length_mm, filler_mass_g, gas_l;
  double  net_volume_mm3, required_volume_mm3, deposited_volume_mm3, welded_length_mm;
  int64_t layers, tracks;
  EmPreheat preheat;
  int32_t n_faults, first_faulty;    /* −1: none */
} Sums;

struct EmCostRoom
{
  EmOptions    options;
  EmPriceRule  rule;
  EmStudy      study;
  EmOrderRoom  order;
  EmPreheats   preheats;
  int32_t      n_counts, count[COUNT_MAX];   /* n_tools, then the breaks */
  double       factor[COUNT_MAX];
  Row         *row;
  Sums        *block;
  EmOrderItem *item;
  EmVisit     *spare_visit;
  double      *use_mm;
};

/* What is worked out from the sums before anything of the cost is touched. */
typedef struct
{
  Sums     sums;
  double   shared_s[EM_N_TASK];
  double   preheat_degc;
  bool     is_preheated;
  int32_t  n_visits, settings, wire_changes;
  int64_t  set_up_minor, order_minor, extra_minor_sum;
  int64_t  money_minor[EM_N_MONEY], cost_minor, sticks;
  EmTotals totals[COUNT_MAX];
  EmLine   tail[TAIL_MAX];
  int32_t  n_tail;
} Draft;

/* ---- life ---- */

void
em_cost_init (EmCost *out_cost)
{
  *out_cost = (EmCost) { .preheat_degc = EM_ABSENT, .learning_factor = 1.0 };
}

static void
free_room (struct EmCostRoom *room)
{
  if (room == NULL)
    return;
  em_options_clear (&room->options);
  em_study_clear (&room->study);
  em_order_room_clear (&room->order);
  em_preheats_clear (&room->preheats);
  free (room->row);
  free (room->block);
  free (room->item);
  free (room->spare_visit);
  free (room->use_mm);
  free (room);
}

void
em_cost_clear (EmCost *cost)
{
  free (cost->feature);
  free (cost->visit);
  free (cost->line);
  free_room (cost->room);
  em_cost_init (cost);
}

static int32_t
n_blocks (int32_t n_features)
{
  return (n_features + BLOCK - 1) / BLOCK;
}

static bool
allocate (EmCost *cost, const EmQuote *quote, const EmCatalogue *catalogue)
{
  /* One more of each than needed: an empty quote is no lack of memory. */
  size_t n = (size_t) quote->n_features + 1;
  struct EmCostRoom *room = calloc (1, sizeof *room);

  cost->room = room;
  if (room == NULL)
    return false;
  em_options_init (&room->options);
  em_study_init (&room->study);
  em_order_room_init (&room->order);
  em_preheats_init (&room->preheats);
  cost->cap_features = (int32_t) n;
  cost->cap_lines = quote->n_features + quote->n_extras + 2 + TAIL_MAX;
  cost->feature = malloc (n * sizeof *cost->feature);
  cost->visit = malloc (n * sizeof *cost->visit);
  cost->line = malloc ((size_t) cost->cap_lines * sizeof *cost->line);
  room->row = malloc (n * sizeof *room->row);
  room->block = malloc ((size_t) (n_blocks (quote->n_features) + 1) * sizeof *room->block);
  room->item = malloc (n * sizeof *room->item);
  room->spare_visit = malloc (n * sizeof *room->spare_visit);
  room->use_mm = malloc (((size_t) catalogue->n_fillers * EM_SIZE_MAX + 1) * sizeof *room->use_mm);
  return cost->feature != NULL && cost->visit != NULL && cost->line != NULL && room->row != NULL && room->block != NULL
         && room->item != NULL && room->spare_visit != NULL && room->use_mm != NULL;
}

/* ---- one feature ---- */

/* The printed line of a feature for every number of tools: rounded once, or the stated override for each tool. */
static EmStatus
price_row (const struct EmCostRoom *room, const EmFeature *feature, const EmWork *work, Row *row)
{
  EmStatus status = EM_OK;

  for (int32_t k = 0; status == EM_OK && k < room->n_counts; k++)
    {
      EmExact direct[EM_N_DIRECT];

      status = em_price_direct (&room->rule, work, room->count[k], room->factor[k], direct);
      if (status == EM_OK)
        status = em_price_amount (&room->rule, direct, &row->amount[k]);
      if (k == 0 && status == EM_OK)
        {
          memcpy (row->direct, direct, sizeof direct);
          row->calculated_minor = row->amount[0];
        }
      if (feature->has_override && status == EM_OK)
        status = em_money_mul_div (feature->override_minor, room->count[k], 1, &row->amount[k]);
    }
  return status;
}

static EmStatus
solve_row (struct EmCostRoom *room, const EmQuote *quote, int32_t index, const EmRates *rates, const EmCatalogue *catalogue,
           EmFeatureCost *out_cost, Row *out_row)
{
  Row row = { .preheat.degc = EM_ABSENT };
  EmWork work;
  EmStatus status = em_cost_feature_with (&room->study, &room->options, quote, index, rates, catalogue, &room->rule, out_cost, &work);

  /* Want of memory is no fault of the feature's: a total without it would pass for good. */
  if (status == EM_FAULT_MEMORY)
    return status;
  if (status != EM_OK)
    {
      row.is_faulty = true;
      *out_row = row;
      return EM_OK;
    }
  status = price_row (room, &quote->feature[index], &work, &row);
  if (status != EM_OK)
    return status;
  row.item = (EmOrderItem) { .feature = index, .setting = quote->feature[index].setting, .machine = out_cost->machine,
                             .wire = em_cost_wire (out_cost->filler, out_cost->size), .is_capped = out_cost->plan.cap_tracks > 0 };
  row.wire_mm = out_cost->wire_length_mm;
  row.preheat = em_preheats_get (&room->preheats, out_cost->filler, out_cost->machine);
  *out_row = row;
  return EM_OK;
}

/* ---- sums ---- */

static EmStatus
add_amounts (Sums *sums, const int64_t *amount, int64_t calculated_minor)
{
  EmStatus status = em_money_add (sums->calculated_minor, calculated_minor, &sums->calculated_minor);

  for (int k = 0; k < COUNT_MAX && status == EM_OK; k++)
    status = em_money_add (sums->amount[k], amount[k], &sums->amount[k]);
  return status;
}

static EmStatus
add_feature (Sums *sums, int32_t index, const EmFeature *feature, const EmFeatureCost *cost, const Row *row)
{
  if (row->is_faulty)
    {
      if (sums->n_faults++ == 0)
        sums->first_faulty = index;
      return EM_OK;
    }
  for (int i = 0; i < EM_N_DIRECT; i++)
    sums->direct[i] += row->direct[i];
  for (int i = 0; i < EM_N_TASK; i++)
    sums->task_s[i] += cost->task_s[i];
  sums->arc_on_s += cost->arc_on_s;
  sums->wire_length_mm += cost->wire_length_mm;
  sums->filler_mass_g += cost->filler_mass_g;
  sums->gas_l += cost->gas_l;
  sums->net_volume_mm3 += cost->net_volume_mm3;
  sums->required_volume_mm3 += cost->required_volume_mm3;
  sums->deposited_volume_mm3 += cost->deposited_volume_mm3;
  sums->welded_length_mm += cost->welded_length_mm;
  sums->layers += (int64_t) cost->plan.layers * feature->count;
  sums->tracks += (cost->plan.tracks + cost->plan.cap_tracks) * feature->count;
  em_preheat_add (&sums->preheat, &row->preheat);
  return add_amounts (sums, row->amount, row->calculated_minor);
}

static EmStatus
sum_block (const EmCost *cost, const EmQuote *quote, int32_t block, Sums *out_sums)
{
  int32_t end = block * BLOCK + BLOCK < quote->n_features ? block * BLOCK + BLOCK : quote->n_features;
  Sums sums = { .preheat.degc = EM_ABSENT, .first_faulty = -1 };
  EmStatus status = EM_OK;

  for (int32_t i = block * BLOCK; i < end && status == EM_OK; i++)
    status = add_feature (&sums, i, &quote->feature[i], &cost->feature[i], &cost->room->row[i]);
  *out_sums = sums;
  return status;
}

static EmStatus
sum_all (const struct EmCostRoom *room, int32_t blocks, Sums *out_sums)
{
  Sums sums = { .preheat.degc = EM_ABSENT, .first_faulty = -1 };
  EmStatus status = EM_OK;

  for (int32_t b = 0; b < blocks && status == EM_OK; b++)
    {
      const Sums *part = &room->block[b];

      for (int i = 0; i < EM_N_DIRECT; i++)
        sums.direct[i] += part->direct[i];
      for (int i = 0; i < EM_N_TASK; i++)
        sums.task_s[i] += part->task_s[i];
      sums.arc_on_s += part->arc_on_s;
      sums.wire_length_mm += part->wire_length_mm;
      sums.filler_mass_g += part->filler_mass_g;
      sums.gas_l += part->gas_l;
      sums.net_volume_mm3 += part->net_volume_mm3;
      sums.required_volume_mm3 += part->required_volume_mm3;
      sums.deposited_volume_mm3 += part->deposited_volume_mm3;
      sums.welded_length_mm += part->welded_length_mm;
      sums.layers += part->layers;
      sums.tracks += part->tracks;
      em_preheat_add (&sums.preheat, &part->preheat);
      if (sums.n_faults == 0)
        sums.first_faulty = part->first_faulty;
      sums.n_faults += part->n_faults;
      status = add_amounts (&sums, part->amount, part->calculated_minor);
    }
  *out_sums = sums;
  return status;
}

/* ---- the order ---- */

static EmStatus
draft_order (const EmCost *cost, const EmQuote *quote, const EmCatalogue *catalogue, Draft *draft)
{
  struct EmCostRoom *room = cost->room;

  memset (room->use_mm, 0, (size_t) catalogue->n_fillers * EM_SIZE_MAX * sizeof *room->use_mm);
  for (int32_t i = 0; i < quote->n_features; i++)
    if (!room->row[i].is_faulty)
      {
        room->use_mm[room->row[i].item.wire] += room->row[i].wire_mm;
        room->item[draft->n_visits++] = room->row[i].item;
      }
  return em_order_solve (&room->order, room->item, draft->n_visits, room->spare_visit, &draft->settings, &draft->wire_changes);
}

/* A shared line joins the sums: its amount for k, and for the order itself its exact parts too. */
static EmStatus
add_line_to_sums (const struct EmCostRoom *room, Draft *draft, int32_t k, const EmExact direct[EM_N_DIRECT], int64_t *out_minor)
{
  int64_t minor;
  EmStatus status = em_price_amount (&room->rule, direct, &minor);

  if (status == EM_OK)
    status = em_money_add (draft->sums.amount[k], minor, &draft->sums.amount[k]);
  if (status != EM_OK || k > 0)
    return status;
  for (int i = 0; i < EM_N_DIRECT; i++)
    draft->sums.direct[i] += direct[i];
  *out_minor += minor;
  return em_money_add (draft->sums.calculated_minor, minor, &draft->sums.calculated_minor);
}

/* Set-up, order and extra lines for one number of tools. */
static EmStatus
draft_shared (const struct EmCostRoom *room, const EmQuote *quote, const EmRates *rates, const EmCatalogue *catalogue, int32_t k, Draft *draft)
{
  EmExact set_up[EM_N_DIRECT], order[EM_N_DIRECT], extra[EM_N_DIRECT];
  EmStatus status = EM_OK;

  if (draft->n_visits > 0)
    {
      status = em_cost_shared_direct (&room->rule, rates, catalogue, draft->shared_s, room->use_mm, room->count[k], room->factor[k], set_up, order);
      if (status == EM_OK)
        status = add_line_to_sums (room, draft, k, set_up, &draft->set_up_minor);
      if (status == EM_OK)
        status = add_line_to_sums (room, draft, k, order, &draft->order_minor);
    }
  for (int32_t i = 0; i < quote->n_extras && status == EM_OK; i++)
    {
      status = em_cost_extra_direct (&room->rule, &quote->extra[i], room->count[k], extra);
      if (status == EM_OK)
        status = add_line_to_sums (room, draft, k, extra, &draft->extra_minor_sum);
    }
  return status;
}

static EmStatus
draft_totals (const EmCost *cost, const EmQuote *quote, const EmRates *rates, Draft *draft, EmFault *out_fault)
{
  const struct EmCostRoom *room = cost->room;
  bool is_empty = draft->n_visits == 0 && quote->n_extras == 0;

  for (int32_t k = 0; k < room->n_counts; k++)
    {
      EmStatus status;

      draft->totals[k] = (EmTotals) { .n_tools = room->count[k] };
      if (is_empty)
        continue;
      status = em_price_totals (quote, rates, draft->sums.amount[k], room->count[k], &draft->totals[k],
                                k == 0 ? draft->tail : NULL, k == 0 ? &draft->n_tail : NULL, out_fault);
      if (status != EM_OK)
        return status;
    }
  return EM_OK;
}

static EmStatus
draft_all (const EmCost *cost, const EmQuote *quote, const EmRates *rates, const EmCatalogue *catalogue, Draft *draft, EmFault *out_fault)
{
  const struct EmCostRoom *room = cost->room;
  EmStatus status = sum_all (room, n_blocks (quote->n_features), &draft->sums);

  if (status == EM_OK)
    status = draft_order (cost, quote, catalogue, draft);
  draft->preheat_degc = EM_ABSENT;
  if (draft->n_visits > 0)
    draft->is_preheated = em_preheat_decide (quote, &draft->sums.preheat, &draft->preheat_degc);
  em_cost_shared_times (rates, draft->settings, draft->wire_changes, draft->is_preheated, draft->shared_s);
  for (int32_t k = 0; k < room->n_counts && status == EM_OK; k++)
    status = draft_shared (room, quote, rates, catalogue, k, draft);
  if (status == EM_OK)
    status = em_price_split (&room->rule, draft->sums.direct, draft->sums.calculated_minor, draft->money_minor, &draft->cost_minor);
  if (status != EM_OK)
    return em_fault_set (out_fault, status, status == EM_FAULT_MEMORY ? "quote" : "price", EM_ABSENT, EM_ABSENT, EM_ABSENT);
  draft->sticks = em_cost_sticks (rates, catalogue, room->use_mm, room->count[0]);
  return draft_totals (cost, quote, rates, draft, out_fault);
}

/* ---- from the draft to the cost ---- */

static void
put_line (EmCost *cost, EmLineType type, int32_t row, int32_t quantity, int64_t amount_minor, int64_t calculated_minor, bool is_override)
{
  cost->line[cost->n_lines++] = (EmLine) { .type = type, .row = row, .quantity = quantity, .amount_minor = amount_minor,
                                           .calculated_minor = calculated_minor, .is_override = is_override };
}

static void
put_lines (EmCost *cost, const EmQuote *quote, const Draft *draft)
{
  const struct EmCostRoom *room = cost->room;
  int32_t n_tools = room->count[0];

  cost->n_lines = 0;
  for (int32_t i = 0; i < quote->n_features; i++)
    if (!room->row[i].is_faulty)
      put_line (cost, EM_LINE_FEATURE, i, n_tools, room->row[i].amount[0], room->row[i].calculated_minor, quote->feature[i].has_override);
  if (draft->n_visits > 0)
    {
      put_line (cost, EM_LINE_SET_UP, 0, n_tools, draft->set_up_minor, draft->set_up_minor, false);
      put_line (cost, EM_LINE_ORDER, 0, 1, draft->order_minor, draft->order_minor, false);
    }
  for (int32_t i = 0; i < quote->n_extras; i++)
    {
      EmExact direct[EM_N_DIRECT];
      int64_t minor = 0;

      /* Went through once already, in the draft. */
      em_cost_extra_direct (&room->rule, &quote->extra[i], n_tools, direct);
      em_price_amount (&room->rule, direct, &minor);
      put_line (cost, EM_LINE_EXTRA, i, quote->extra[i].is_per_tool ? n_tools : 1, minor, minor, false);
    }
  for (int32_t i = 0; i < draft->n_tail; i++)
    cost->line[cost->n_lines++] = draft->tail[i];
}

/* Wright's curve shortens labour on repeat tools, the beam's attendance with it; what the machine, wire and gas do it does not. */
static void
put_times (EmCost *cost, const Draft *draft)
{
  double n = cost->room->count[0], learned = n * cost->room->factor[0];

  cost->labour_s = 0.0;
  for (int i = 0; i < EM_N_TASK; i++)
    {
      cost->task_s[i] = draft->sums.task_s[i] * learned;
      if (draft->n_visits > 0)
        cost->task_s[i] += draft->shared_s[i] * (em_tasks[i].scope == EM_PER_ORDER ? 1.0 : learned);
      cost->labour_s += cost->task_s[i];
    }
  cost->arc_on_s = n * draft->sums.arc_on_s;
  cost->wire_length_mm = n * draft->sums.wire_length_mm;
  cost->filler_mass_g = n * draft->sums.filler_mass_g;
  cost->gas_l = n * draft->sums.gas_l;
  cost->net_volume_mm3 = n * draft->sums.net_volume_mm3;
  cost->required_volume_mm3 = n * draft->sums.required_volume_mm3;
  cost->deposited_volume_mm3 = n * draft->sums.deposited_volume_mm3;
  cost->welded_length_mm = n * draft->sums.welded_length_mm;
  cost->layers = (int64_t) n * draft->sums.layers;
  cost->tracks = (int64_t) n * draft->sums.tracks;
}

static void
put_draft (EmCost *cost, const EmQuote *quote, const Draft *draft)
{
  struct EmCostRoom *room = cost->room;
  EmVisit *visit = cost->visit;
  int64_t margin_ppm = room->rule.margin_ppm;

  cost->visit = room->spare_visit;
  room->spare_visit = visit;
  cost->n_features = quote->n_features;
  cost->n_visits = draft->n_visits;
  cost->settings = draft->settings;
  cost->wire_changes = draft->wire_changes;
  cost->is_preheated = draft->is_preheated;
  cost->preheat_degc = draft->preheat_degc;
  cost->learning_factor = room->factor[0];
  put_times (cost, draft);
  cost->sticks = draft->sticks;
  memcpy (cost->money_minor, draft->money_minor, sizeof cost->money_minor);
  cost->cost_minor = draft->cost_minor;
  em_money_mul_div (margin_ppm, EM_PPM, EM_PPM - margin_ppm, &cost->markup_ppm);   /* m/(1 − m), m at most 95 % */
  put_lines (cost, quote, draft);
  cost->totals = draft->totals[0];
  cost->n_breaks = room->n_counts - 1;
  for (int32_t k = 1; k < room->n_counts; k++)
    cost->breaks[k - 1] = draft->totals[k];
  cost->n_faults = draft->sums.n_faults;
  cost->first_fault = draft->sums.n_faults > 0 ? cost->feature[draft->sums.first_faulty].fault : (EmFault) { 0 };
}

/* ---- public ---- */

static void
set_counts (struct EmCostRoom *room, const EmQuote *quote, const EmRates *rates)
{
  int64_t learning = quote->learning_ppm >= 0 ? quote->learning_ppm : rates->learning_ppm;

  room->count[room->n_counts++] = quote->n_tools;
  for (int32_t i = 0; i < quote->n_breaks; i++)
    room->count[room->n_counts++] = quote->break_tools[i];
  for (int32_t k = 0; k < room->n_counts; k++)
    room->factor[k] = em_price_learning (learning, room->count[k]);
}

static EmStatus
cost_from_scratch (EmCost *cost, const EmQuote *quote, const EmRates *rates, const EmCatalogue *catalogue, EmFault *out_fault)
{
  Draft draft = { 0 };
  int32_t base;
  EmStatus status = EM_OK;

  if (!allocate (cost, quote, catalogue))
    return em_fault_set (out_fault, EM_FAULT_MEMORY, "quote", EM_ABSENT, EM_ABSENT, EM_ABSENT);
  status = em_options_solve (&cost->room->options, rates, catalogue, -1, out_fault);
  if (status != EM_OK)
    return status;
  status = em_cost_find_base (quote, catalogue, &base, out_fault);
  if (status == EM_OK && em_preheats_begin (&cost->room->preheats, quote, rates, catalogue, base) != EM_OK)
    status = em_fault_set (out_fault, EM_FAULT_MEMORY, "quote", EM_ABSENT, EM_ABSENT, EM_ABSENT);
  if (status != EM_OK)
    return status;
  em_price_rule_set (quote, rates, &cost->room->rule);
  set_counts (cost->room, quote, rates);
  for (int32_t i = 0; i < quote->n_features && status == EM_OK; i++)
    status = solve_row (cost->room, quote, i, rates, catalogue, &cost->feature[i], &cost->room->row[i]);
  for (int32_t b = 0; b < n_blocks (quote->n_features) && status == EM_OK; b++)
    status = sum_block (cost, quote, b, &cost->room->block[b]);
  if (status != EM_OK)
    return em_fault_set (out_fault, status, status == EM_FAULT_MEMORY ? "quote" : "price", EM_ABSENT, EM_ABSENT, EM_ABSENT);
  status = draft_all (cost, quote, rates, catalogue, &draft, out_fault);
  if (status == EM_OK)
    put_draft (cost, quote, &draft);
  return status;
}

/**
 * em_cost_quote:
 * Everything from scratch into fresh room, which replaces the old only when it is whole.
 */
EmStatus
em_cost_quote (EmCost *cost, const EmQuote *quote, const EmRates *rates, const EmCatalogue *catalogue,
               EmTrace *trace, EmFault *out_fault)
{
  EmCost next;
  EmStatus status = em_quote_check (quote, out_fault);

  if (status == EM_OK)
    status = em_rates_check (rates, out_fault);
  if (status == EM_OK)
    status = em_cost_check_extras (quote, out_fault);
  if (status != EM_OK)
    return status;
  em_cost_init (&next);
  status = cost_from_scratch (&next, quote, rates, catalogue, out_fault);
  if (status != EM_OK)
    {
      em_cost_clear (&next);
      return status;
    }
  em_cost_clear (cost);
  *cost = next;
  if (trace != NULL)
    {
      for (int32_t i = 0; i < quote->n_features; i++)
        if (cost->feature[i].status == EM_OK)
          em_cost_trace_feature (trace, quote, i, rates, catalogue, &cost->feature[i]);
      em_cost_trace_quote (trace, quote, rates, catalogue, cost);
    }
  return EM_OK;
}

/**
 * em_cost_update:
 * As em_cost_quote would give, to the bit, when only the feature at index changed since the last costing with the
 * same quote, rate book and catalogue. Costs from scratch when there was none.
 */
EmStatus
em_cost_update (EmCost *cost, int32_t index, const EmQuote *quote, const EmRates *rates, const EmCatalogue *catalogue,
                EmFault *out_fault)
{
  struct EmCostRoom *room = cost->room;
  EmFeatureCost old_feature;
  Row old_row;
  Sums old_block;
  Draft draft = { 0 };
  EmStatus status;

  if (room == NULL || room->options.rates != rates || room->options.catalogue != catalogue || index < 0
      || index >= cost->n_features || quote->n_features != cost->n_features)
    return em_cost_quote (cost, quote, rates, catalogue, NULL, out_fault);
  old_feature = cost->feature[index];
  old_row = room->row[index];
  old_block = room->block[index / BLOCK];
  status = solve_row (room, quote, index, rates, catalogue, &cost->feature[index], &room->row[index]);
  if (status == EM_OK)
    status = sum_block (cost, quote, index / BLOCK, &room->block[index / BLOCK]);
  if (status != EM_OK)
    em_fault_set (out_fault, status, status == EM_FAULT_MEMORY ? "quote" : "price", EM_ABSENT, EM_ABSENT, EM_ABSENT);
  else
    status = draft_all (cost, quote, rates, catalogue, &draft, out_fault);
  if (status != EM_OK)
    {
      cost->feature[index] = old_feature;
      room->row[index] = old_row;
      room->block[index / BLOCK] = old_block;
      return status;
    }
  put_draft (cost, quote, &draft);
  return EM_OK;
}
