/* em-choose: which wire, on which machine.
 *
 * Every stocked size of the filler is tried on every machine in use; the cheapest that
 * melts, clears, reaches and lays no more in one layer than is wanted is taken. What the office fixed is kept, even where the
 * engine would not have offered it.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-cost-internal.h"
#include "em-screen.h"

#include <math.h>
#include <string.h>

#define PI 3.14159265358979323846

/* A size is nominal: one written in inches and one in millimetres that differ by less are one. */
#define SAME_WIRE_MM 1e-3

/* How far an option came before it failed; the furthest says best what stands in the way. */
typedef enum { STAGE_SUITED, STAGE_CATALOGUE, STAGE_MELTS, STAGE_RATING, STAGE_CLEARS, STAGE_REACHES, STAGE_PLAN } Stage;

EmStatus
em_cost_find_base (const EmQuote *quote, const EmCatalogue *catalogue, int32_t *out_base, EmFault *out_fault)
{
  const char *id = quote->text[EM_QUOTE_BASE];
  int32_t base = id == NULL ? -1 : em_catalogue_find_base (catalogue, id);

  if (id != NULL && base < 0)
    return em_fault_set (out_fault, EM_FAULT_UNKNOWN, "base", EM_ABSENT, EM_ABSENT, EM_ABSENT);
  *out_base = base;
  return EM_OK;
}

EmStatus
em_cost_find_filler (const EmQuote *quote, int32_t index, const EmCatalogue *catalogue, int32_t *out_filler, EmFault *out_fault)
{
  const char *own = quote->feature[index].text[EM_FEATURE_FILLER];
  const char *id = own != NULL ? own : quote->text[EM_QUOTE_FILLER];
  int32_t filler = id == NULL ? -1 : em_catalogue_find_filler (catalogue, id);

  if (filler < 0)
    {
      em_fault_set (out_fault, id == NULL ? EM_FAULT_MISSING : EM_FAULT_UNKNOWN, "filler", EM_ABSENT, EM_ABSENT, EM_ABSENT);
      if (out_fault != NULL)
        out_fault->row = index;
      return id == NULL ? EM_FAULT_MISSING : EM_FAULT_UNKNOWN;
    }
  *out_filler = filler;
  return EM_OK;
}

static EmStatus
refuse_unknown (const char *field, int32_t index, EmFault *out_fault)
{
  em_fault_set (out_fault, EM_FAULT_UNKNOWN, field, EM_ABSENT, EM_ABSENT, EM_ABSENT);
  if (out_fault != NULL)
    out_fault->row = index;
  return EM_FAULT_UNKNOWN;
}

void
em_cost_find_named (const EmQuote *quote, const EmFeature *feature, const char **out_machine, const char **out_process)
{
  bool is_own = feature->text[EM_FEATURE_MACHINE] != NULL || feature->text[EM_FEATURE_PROCESS] != NULL;

  *out_machine = is_own ? feature->text[EM_FEATURE_MACHINE] : quote->text[EM_QUOTE_MACHINE];
  *out_process = is_own ? feature->text[EM_FEATURE_PROCESS] : quote->text[EM_QUOTE_PROCESS];
  if (*out_machine != NULL)
    *out_process = NULL;
}

static bool
has_machine_of (const EmRates *rates, int32_t process)
{
  for (int32_t i = 0; i < rates->n_machines; i++)
    if (!rates->machine[i].is_retired && (int32_t) rates->machine[i].process == process)
      return true;
  return false;
}

EmStatus
em_cost_find_fixed (const EmQuote *quote, int32_t index, const EmRates *rates, EmFixed *out_fixed, EmFault *out_fault)
{
  const char *machine_id, *process_id;
  EmFixed fixed = { .wire_mm = quote->feature[index].wire_mm };

  em_cost_find_named (quote, &quote->feature[index], &machine_id, &process_id);
  fixed.machine = em_rates_find_machine (rates, machine_id);
  fixed.process = em_process_find (process_id);
  if (machine_id != NULL && fixed.machine < 0)
    return refuse_unknown ("machine", index, out_fault);
  if (process_id != NULL && (fixed.process < 0 || !has_machine_of (rates, fixed.process)))
    return refuse_unknown ("process", index, out_fault);
  *out_fixed = fixed;
  return EM_OK;
}

/* Mouth the cone needs, from the reach rule with τ = α: Z·tan 2α + s/2, and no less than the head. */
static double
needed_mouth_mm (const EmMachine *machine, double spot_mm, double depth_mm)
{
  double opening_deg = 2.0 * machine->cone_half_deg, mouth;

  if (opening_deg >= 90.0 && depth_mm > 0.0)
    return EM_ABSENT;
  mouth = depth_mm * tan (opening_deg * PI / 180.0) + spot_mm / 2.0;
  return em_is_absent (machine->head_width_mm) ? mouth : fmax (mouth, machine->head_width_mm);
}

static EmStatus
refuse (const EmStudy *study, EmFault *out_fault, EmStatus status, const char *field, double value, double low)
{
  em_fault_set (out_fault, status, field, value, low, EM_ABSENT);
  if (out_fault != NULL)
    {
      out_fault->row = study->row;
      if (status == EM_FAULT_CONFLICT)
        out_fault->other_field = "wire";
    }
  return status;
}

static EmStatus
refuse_option (const EmStudy *study, const EmOption *option, EmFault *out_fault)
{
  if (out_fault != NULL)
    {
      *out_fault = option->fault;
      out_fault->row = study->row;
    }
  return option->status;
}

/* Whether the option clears, reaches and can be planned. */
static EmStatus
fit_option (EmStudy *study, const EmOption *option, EmFault *out_fault)
{
  const EmFeature *feature = study->feature;
  const EmMachine *machine = &study->rates->machine[option->machine];

  if (option->status != EM_OK)
    return refuse_option (study, option, out_fault);
  if (!em_arc_clears (option->arc.spot_mm, feature->clearance_mm))
    return refuse (study, out_fault, EM_FAULT_CONFLICT, "clearance", feature->clearance_mm, option->arc.spot_mm / 2.0);
  if (!em_arc_reaches (machine, option->arc.spot_mm, feature->slot_width_mm, feature->slot_depth_mm, NULL))
    return refuse (study, out_fault, EM_FAULT_UNREACHABLE, "slot_width", feature->slot_width_mm,
                   needed_mouth_mm (machine, option->arc.spot_mm, feature->slot_depth_mm));
  return em_study_plan (study, option->slot, out_fault) != NULL ? EM_OK : study->plan_status[option->slot];
}

/* An option that fits, priced. A failure leaves *pick half filled. */
static EmStatus
price_option (const EmStudy *study, const EmOption *option, const EmPriceRule *rule, EmPick *pick)
{
  EmStatus status;

  pick->option = option;
  pick->plan = &study->plan[option->slot];
  pick->tilt_deg = 0.0;
  pick->n_fitting = 1;
  if (!em_is_absent (study->feature->slot_width_mm))
    em_arc_reaches (&study->rates->machine[option->machine], option->arc.spot_mm, study->feature->slot_width_mm,
                    study->feature->slot_depth_mm, &pick->tilt_deg);
  em_cost_fill_work (study, pick);
  status = em_price_direct (rule, &pick->work, 1, 1.0, pick->direct);
  if (status == EM_OK)
    pick->cost = em_price_cost (rule, pick->direct);
  return status;
}

EmStatus
em_study_try (EmStudy *study, const EmOption *option, const EmPriceRule *rule, EmPick *out_pick, EmFault *out_fault)
{
  EmPick pick;
  EmStatus status = fit_option (study, option, out_fault);

  if (status != EM_OK)
    return status;
  if (price_option (study, option, rule, &pick) != EM_OK)
    return refuse (study, out_fault, EM_FAULT_OVERFLOW, "price", EM_ABSENT, EM_ABSENT);
  *out_pick = pick;
  return EM_OK;
}

static Stage
stage_of (const EmFault *fault)
{
  switch (fault->code)
    {
    case EM_FAULT_UNSUITED:
      return STAGE_SUITED;
    case EM_FAULT_RATING:
      return STAGE_RATING;
    case EM_FAULT_CONFLICT:
      return STAGE_CLEARS;
    case EM_FAULT_UNREACHABLE:
      return STAGE_REACHES;
    case EM_FAULT_RANGE:
      if (strcmp (fault->field, "wire") != 0)
        return STAGE_CATALOGUE;
      /* A machine states both limits of its wire, a plan only the finest. */
      return fault->high > 0.0 ? STAGE_MELTS : STAGE_PLAN;
    default:
      return STAGE_PLAN;
    }
}

/* Keeps the fault of the option that came furthest, with the limits of the one that asks least. */
static void
keep_furthest (EmFault *kept, const EmFault *fault)
{
  Stage stage = stage_of (fault);

  if (kept->code == EM_OK || stage > stage_of (kept))
    *kept = *fault;
  else if (stage == stage_of (kept) && stage == STAGE_MELTS)
    {
      kept->low = fmin (kept->low, fault->low);
      kept->high = fmax (kept->high, fault->high);
    }
  else if (stage == stage_of (kept) && (stage == STAGE_CLEARS || stage == STAGE_REACHES))
    kept->low = fmin (kept->low, fault->low);
}

static bool
is_wire (const EmOption *option, double wire_mm)
{
  return fabs (option->wire_mm - wire_mm) < SAME_WIRE_MM;
}

static bool
is_machine_allowed (const EmRates *rates, int32_t machine, const EmFixed *fixed)
{
  if (fixed->machine >= 0)
    return machine == fixed->machine;
  return !rates->machine[machine].is_retired && (fixed->process < 0 || rates->machine[machine].process == (EmProcess) fixed->process);
}

/* Within what is fixed; a size no longer stocked or a machine retired only where the office named it. */
static bool
is_allowed (const EmOption *option, const EmFixed *fixed, const EmOptions *options)
{
  const EmWireSize *size = &options->catalogue->filler[option->filler].size[option->size];

  if (!is_machine_allowed (options->rates, option->machine, fixed))
    return false;
  return em_is_absent (fixed->wire_mm) ? size->is_stocked : is_wire (option, fixed->wire_mm);
}

/* No size of this filler on this machine: told by the machines' limits when the wire lies outside all of them. */
static void
fault_of_no_option (const EmOptions *options, int32_t filler, const EmFixed *fixed, EmFault *out_fault)
{
  const EmRates *rates = options->rates;
  const EmFiller *record = &options->catalogue->filler[filler];
  double low = INFINITY, high = 0.0;
  double size_low = record->n_sizes > 0 ? record->size[0].wire_mm : EM_ABSENT;
  double size_high = record->n_sizes > 0 ? record->size[record->n_sizes - 1].wire_mm : EM_ABSENT;

  for (int32_t i = 0; i < rates->n_machines; i++)
    if (is_machine_allowed (rates, i, fixed))
      {
        low = fmin (low, rates->machine[i].wire_low_mm);
        high = fmax (high, rates->machine[i].wire_high_mm);
      }
  if (fixed->wire_mm < low - SAME_WIRE_MM || fixed->wire_mm > high + SAME_WIRE_MM)
    em_fault_set (out_fault, EM_FAULT_RANGE, "wire", fixed->wire_mm, low, high);
  else
    em_fault_set (out_fault, EM_FAULT_NO_WIRE, "wire", fixed->wire_mm, size_low, size_high);
}

static EmStatus
settle_fault (const EmStudy *study, int32_t filler, const EmFixed *fixed, EmFault *fault, EmFault *out_fault)
{
  if (fault->code == EM_OK)
    fault_of_no_option (study->options, filler, fixed, fault);
  else if (fault->code == EM_FAULT_CONFLICT)
    fault->code = EM_FAULT_NO_WIRE;
  else if (stage_of (fault) == STAGE_MELTS && em_is_absent (fixed->wire_mm))
    fault->code = EM_FAULT_NO_WIRE;
  fault->row = study->row;
  if (out_fault != NULL)
    *out_fault = *fault;
  return fault->code;
}

/* An option that fits, not yet priced. */
typedef struct
{
  const EmOption *option;
  double rank_mm;                /* as EmPairLook has it */
  double low_minor;              /* by the quick look */
} Candidate;

/* What is certain so far: nothing of a higher rank, or of this one and dearer than this, can win. */
typedef struct { double rank_mm, minor; } Bar;

static inline bool
is_beaten (Bar bar, double rank_mm, double low_minor)
{
  return rank_mm > bar.rank_mm || (rank_mm >= bar.rank_mm && low_minor > bar.minor);
}

/* By one that is not beaten. */
static inline Bar
lower_bar (Bar bar, double rank_mm, double high_minor)
{
  return rank_mm < bar.rank_mm || high_minor < bar.minor ? (Bar) { rank_mm, high_minor } : bar;
}

/* Where the quick look says nothing: why the option does not fit, or, where it is only too large to bracket, that it does. */
static bool
fits_after_all (EmStudy *study, const EmOption *option, const EmPriceRule *rule, EmFault *kept)
{
  EmPick pick;
  EmFault fault;

  if (em_study_try (study, option, rule, &pick, &fault) == EM_OK)
    return true;
  keep_furthest (kept, &fault);
  return false;
}

/* Of one rank the cheapest, ties to the thicker wire. */
static bool
is_better (double rank_mm, const EmPick *pick, double best_rank_mm, const EmPick *best)
{
  if (rank_mm < best_rank_mm || rank_mm > best_rank_mm)
    return rank_mm < best_rank_mm;
  /* NOLINTNEXTLINE(clang-analyzer-core.UndefinedBinaryOperatorResult): both were priced. */
  return pick->cost < best->cost || (pick->cost == best->cost && pick->option->wire_mm > best->option->wire_mm);
}

/* Prices what may still win, and takes the best of it; there is one. */
static void
settle (EmStudy *study, const EmPriceRule *rule, const Candidate *candidate, int32_t n, Bar bar, EmPick *out_pick)
{
  double best_rank_mm = INFINITY;
  EmPick pick;

  out_pick->option = NULL;
  for (int32_t i = 0; i < n; i++)
    {
      if (is_beaten (bar, candidate[i].rank_mm, candidate[i].low_minor))
        continue;
      /* Can't fail: a bracket is there only where exact pricing has room, and the others went through it once. */
      price_option (study, candidate[i].option, rule, out_pick->option == NULL ? out_pick : &pick);
      if (best_rank_mm < INFINITY && !is_better (candidate[i].rank_mm, &pick, best_rank_mm, out_pick))
        continue;
      if (best_rank_mm < INFINITY)
        *out_pick = pick;
      best_rank_mm = candidate[i].rank_mm;
    }
}

/* The best of the options within fixed, or of all on offer (NULL). When none does *out_fault says what stood in the way. */
static bool
choose (EmStudy *study, int32_t filler, const EmFixed *fixed, const EmPriceRule *rule, EmPick *out_pick, EmFault *out_fault)
{
  const EmOptions *options = study->options;
  const EmScreen *screen = &study->screen;
  Candidate candidate[EM_SIZE_MAX * EM_MACHINE_MAX];
  Bar bar = { INFINITY, INFINITY };
  int32_t n = 0, n_fitting = 0;

  out_fault->code = EM_OK;
  for (int32_t i = options->first[filler]; i < options->first[filler + 1]; i++)
    {
      const EmOptionLook *look = &options->look[i];
      const EmPairLook *pair = &study->look[look->pair];
      double low = -INFINITY, high = INFINITY;

      if (fixed == NULL ? !look->is_offered : !is_allowed (&options->option[i], fixed, options))
        continue;
      if (!pair->is_fine && !pair->is_known)
        em_screen_look (study, look->pair);
      if (pair->is_fine && look->is_fine && look->spot_mm <= screen->spot_high_mm)
        {
          double minor = em_screen_minor (look, pair), slack = em_screen_slack (screen, minor);

          low = minor - slack;
          high = minor + slack;
        }
      else if (!fits_after_all (study, &options->option[i], rule, out_fault))
        continue;
      n_fitting++;
      if (is_beaten (bar, pair->rank_mm, low))
        continue;
      candidate[n++] = (Candidate) { &options->option[i], pair->rank_mm, low };
      bar = lower_bar (bar, pair->rank_mm, high);
    }
  if (n_fitting == 0)
    return false;
  settle (study, rule, candidate, n, bar, out_pick);
  out_pick->n_fitting = n_fitting;
  return true;
}

EmStatus
em_study_pick (EmStudy *study, int32_t filler, const EmFixed *fixed, const EmPriceRule *rule,
               EmPick *out_pick, EmPick *out_cheapest, EmFault *out_fault)
{
  bool is_free = fixed->machine < 0 && fixed->process < 0 && em_is_absent (fixed->wire_mm);
  EmFault fault;

  em_screen_set (study, rule);
  if (!choose (study, filler, is_free ? NULL : fixed, rule, out_pick, &fault))
    return settle_fault (study, filler, fixed, &fault, out_fault);
  if (out_cheapest != NULL && (is_free || !choose (study, filler, NULL, rule, out_cheapest, &fault)))
    *out_cheapest = *out_pick;
  return EM_OK;
}
