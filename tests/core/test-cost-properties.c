/* Properties of a costing that hold for any quote, tried on seeded random ones of every kind.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-test-job.h"

#include <math.h>
#include <string.h>

static EmTestJob job;
static uint64_t state;

static void
setup (void)
{
  em_test_job_init (&job);
  state = 20260101;
}

static void
teardown (void)
{
  em_test_job_clear (&job);
}

static double
draw (double low, double high)
{
  state = state * UINT64_C (6364136223846793005) + UINT64_C (1442695040888963407);
  return low + (high - low) * (double) (state >> 11) / 9007199254740992.0;
}

static double
draw_value (const EmField *field)
{
  int n_options = 0;

  /* One or the other of two sizes that mean the same: without this no bore and no pin is ever drawn. */
  if (!field->is_required && em_is_absent (field->preset) && draw (0, 1) < 0.5)
    return EM_ABSENT;
  switch (field->quantity)
    {
    case EM_QUANTITY_LENGTH:
      return exp (draw (log (0.2), log (30.0)));
    case EM_QUANTITY_AREA:
      return draw (1, 400);
    case EM_QUANTITY_ANGLE:
      return draw (fmax (field->low, 5), fmin (field->high, 170));
    case EM_QUANTITY_COUNT:
      return floor (draw (0, 3));
    case EM_QUANTITY_CHOICE:
      while (field->options[n_options] != NULL)
        n_options++;
      return floor (draw (0, n_options));
    }
  return EM_ABSENT;
}

/* Appends a feature of kind that the engine prices, with a wire and machine of its own choosing. */
static void
add_of_kind (const EmKind *kind)
{
  for (;;)
    {
      EmFeature feature;
      EmShape shape;

      em_feature_init (&feature, kind);
      for (int i = 0; i < feature.kind->n_fields; i++)
        feature.value[i] = draw_value (&feature.kind->fields[i]);
      feature.count = 1 + (int32_t) draw (0, 4);
      feature.setting = (int32_t) draw (0, 4);
      feature.access = (EmAccess) draw (0, EM_N_ACCESS);
      if (em_feature_solve (&feature, &shape, NULL) == EM_OK && shape.height_mm < 20 && shape.coated_area_mm2 < 5000)
        {
          ck_assert_int_eq (em_quote_insert_take (&job.quote, job.quote.n_features, &feature), EM_OK);
          return;
        }
      em_feature_clear (&feature);
    }
}

static void
fill (int n)
{
  while (job.quote.n_features > 0)
    em_quote_remove (&job.quote, 0, NULL);
  for (int i = 0; i < n; i++)
    add_of_kind (em_kinds[(int) draw (0, em_n_kinds)]);
}

/* All features on one wire and machine, so that no choice changes under a property. */
static void
fix_choice (double wire_mm, const char *machine)
{
  for (int32_t i = 0; i < job.quote.n_features; i++)
    {
      job.quote.feature[i].wire_mm = wire_mm;
      em_feature_set_text (&job.quote.feature[i], EM_FEATURE_MACHINE, machine);
    }
}

static int64_t
net (void)
{
  EmCost cost;
  int64_t minor;

  em_test_job_solve (&job, &cost);
  minor = cost.totals.net_minor;
  em_cost_clear (&cost);
  return minor;
}

START_TEST (test_lines_add_up)
{
  for (int trial = 0; trial < 100; trial++)
    {
      EmCost cost;
      int64_t sums[3] = { 0 }, money = 0, calculated = 0;

      fill (1 + trial % 9);
      job.rates.minimum_minor = trial % 3 == 0 ? 500000 : 0;
      job.rates.rounding_minor = trial % 2 == 0 ? 500 : 1;
      job.quote.rush_ppm = trial % 4 == 0 ? 123457 : -1;
      job.quote.discount_ppm = trial % 5 == 0 ? 33333 : -1;
      job.quote.n_tools = 1 + trial % 4;
      job.quote.learning_ppm = 871234;
      em_test_job_solve (&job, &cost);
      for (int32_t i = 0; i < cost.n_lines; i++)
        {
          sums[0] += cost.line[i].type <= EM_LINE_EXTRA ? cost.line[i].amount_minor : 0;
          calculated += cost.line[i].type <= EM_LINE_EXTRA ? cost.line[i].calculated_minor : 0;
          sums[1] += cost.line[i].type < EM_LINE_TAX ? cost.line[i].amount_minor : 0;
          sums[2] += cost.line[i].amount_minor;
        }
      for (int i = 0; i < EM_N_MONEY; i++)
        money += cost.money_minor[i];
      ck_assert_int_eq (cost.totals.subtotal_minor, sums[0]);
      ck_assert_int_eq (cost.totals.net_minor, sums[1]);
      ck_assert_int_eq (cost.totals.total_minor, sums[2]);
      ck_assert_int_eq (money, calculated);
      for (int32_t f = 0; f < cost.n_features; f++)
        {
          int64_t parts = 0;

          for (int i = 0; i < EM_N_MONEY; i++)
            parts += cost.feature[f].money_minor[i];
          ck_assert_int_eq (parts, cost.feature[f].calculated_minor);
        }
      ck_assert_int_eq (cost.totals.net_minor % job.rates.rounding_minor, 0);
      em_cost_clear (&cost);
    }
}
END_TEST

/* An update gives the very bits of a costing from scratch. */
START_TEST (test_update_is_costing_afresh)
{
  EmCost updated, fresh;

  fill (150);
  job.quote.n_breaks = 1;
  job.quote.break_tools[0] = 3;
  em_test_job_solve (&job, &updated);
  for (int trial = 0; trial < 120; trial++)
    {
      int32_t at = (int32_t) draw (0, job.quote.n_features);
      EmFeature *f = &job.quote.feature[at];

      switch (trial % 6)
        {
        case 0: f->value[0] = f->value[0] * draw (0.5, 2); break;
        case 1: f->count = 1 + trial % 7; break;
        case 2: f->setting = trial % 5; break;
        case 3: f->wire_mm = trial % 4 == 3 ? 0.254 : EM_ABSENT; break;
        case 4: f->clearance_mm = trial % 8 == 4 ? 0.01 : EM_ABSENT; break;   /* nothing fits: a fault, and later none */
        case 5: em_feature_set_text (f, EM_FEATURE_FILLER, trial % 4 == 1 ? "er420" : NULL); break;
        }
      ck_assert_int_eq (em_cost_update (&updated, at, &job.quote, &job.rates, &job.catalogue, NULL), EM_OK);
      em_test_job_solve (&job, &fresh);
      ck_assert_mem_eq (&updated.totals, &fresh.totals, sizeof fresh.totals);
      ck_assert_mem_eq (updated.breaks, fresh.breaks, sizeof fresh.breaks);
      ck_assert_mem_eq (updated.task_s, fresh.task_s, sizeof fresh.task_s);
      ck_assert_mem_eq (updated.money_minor, fresh.money_minor, sizeof fresh.money_minor);
      ck_assert_int_eq (updated.n_lines, fresh.n_lines);
      ck_assert_int_eq (updated.n_faults, fresh.n_faults);
      ck_assert_int_eq (updated.n_visits, fresh.n_visits);
      for (int32_t i = 0; i < fresh.n_lines; i++)
        ck_assert_int_eq (updated.line[i].amount_minor, fresh.line[i].amount_minor);
      for (int32_t i = 0; i < fresh.n_visits; i++)
        ck_assert_int_eq (updated.visit[i].feature, fresh.visit[i].feature);
      ck_assert_double_eq (updated.arc_on_s, fresh.arc_on_s);
      ck_assert_int_eq (updated.sticks, fresh.sticks);
      em_cost_clear (&fresh);
    }
  em_cost_clear (&updated);
}
END_TEST

/* With wire and machine fixed the price never falls when a count or a rate grows. */
START_TEST (test_price_never_falls_with_counts_and_rates)
{
  for (int trial = 0; trial < 40; trial++)
    {
      int64_t before;

      fill (3);
      fix_choice (trial % 2 == 0 ? 0.381 : 0.635, trial % 2 == 0 ? "laser" : "tig");
      before = net ();
      job.quote.feature[1].count++;
      ck_assert_int_ge (net (), before);
      before = net ();
      job.quote.n_tools++;
      ck_assert_int_ge (net (), before);
      job.quote.n_tools = 1;
      for (int i = 0; i < em_n_rate_fields; i++)
        {
          const EmRateField *field = &em_rate_fields[i];
          double value = em_rate_get (field, &job.rates), grown = value * 1.3 + (field->type <= EM_RATE_PPM ? 50 : 0.5);

          /* Not costs: a taller layer or a longer stick is less work; a learning rate nearer 1 is no cost of its own here; sticks and
           * stubs have limits between them. */
          if (strcmp (field->group, "deposit") == 0 || field->type == EM_RATE_BOOL || grown > field->high || strcmp (field->id, "rounding") == 0)
            continue;
          before = net ();
          em_rate_set (field, &job.rates, grown);
          ck_assert_msg (net () >= before, "%s", field->id);
          em_rate_set (field, &job.rates, value);
        }
    }
}
END_TEST

/* What a figure of the rate book's deposit rows, of a machine or of the wire does to a price on one wire and machine when it alone grows by a
 * little. Not in the list: layer_ratio, where thicker layers are fewer but their tracks lie closer together, so that a price may go either way;
 * whole_sticks, wires and limits of what a machine melts, clears and reaches, which decide whether there is a price at all. */
static const struct { const char *id; bool is_dearer; } effects[] =
{
  { "stock_allowance", true }, { "safety_passes", true }, { "stub", true }, { "stick", false },
  { "machine_rate", true }, { "consumable_rate", true }, { "gas_flow", true }, { "gas_pre_post", true }, { "dilution", true }, { "overlap", true },
  { "power", false }, { "pulse_energy", false }, { "peak", false }, { "current_high", false }, { "coupling", false }, { "spot_ratio", false },
  { "operating_open", false }, { "operating_restricted", false }, { "operating_deep", false }, { "usable", false }, { "efficiency", false },
};

static const EmRateField *
find_field (const EmRateField *fields, int n, const char *id)
{
  for (int i = 0; i < n; i++)
    if (strcmp (fields[i].id, id) == 0)
      return &fields[i];
  return NULL;
}

START_TEST (test_what_each_figure_does_to_a_price)
{
  for (int trial = 0; trial < 30; trial++)
    {
      int at = trial % 2;

      fill (3);
      fix_choice (at == 0 ? 0.381 : 0.635, job.rates.machine[at].id);
      /* Weak enough for every bound on the speed to hold in some trials. */
      job.rates.machine[0].power_w = trial % 4 == 0 ? 15 : 300;
      job.rates.machine[0].pulse_energy_j = trial % 6 == 2 ? 1.2 : 80;
      job.rates.machine[0].peak_w = trial % 6 == 4 ? 250 : 9000;
      job.rates.machine[1].current_high_a = trial % 4 == 1 ? 25 : 120;
      for (size_t e = 0; e < sizeof effects / sizeof effects[0]; e++)
        {
          const EmRateField *field = find_field (em_rate_fields, em_n_rate_fields, effects[e].id);
          void *holder = field != NULL ? (void *) &job.rates : (void *) &job.rates.machine[at];

          if (field == NULL)
            field = find_field (em_machine_fields, em_n_machine_fields, effects[e].id);
          ck_assert_msg (field != NULL, "%s", effects[e].id);

          double value = em_rate_get (field, holder), grown = value * 1.05 + (field->type == EM_RATE_WHOLE ? 1 : field->type == EM_RATE_MINOR ? 50 : 0.01);
          int64_t before = net (), after;

          if (em_is_absent (value) || grown > field->high || (strcmp (field->id, "efficiency") == 0 && grown > 1))
            continue;
          em_rate_set (field, holder, grown);
          after = net ();
          em_rate_set (field, holder, value);
          ck_assert_msg (effects[e].is_dearer ? after >= before : after <= before, "trial %d, %s: %lld after %lld", trial, effects[e].id,
                         (long long) after, (long long) before);
        }
    }
}
END_TEST

/* A dearer wire, extra or tax: never a lower total. */
START_TEST (test_dearer_wire_extra_and_tax)
{
  for (int trial = 0; trial < 20; trial++)
    {
      EmExtra extra = { em_text_dup ("Invented"), 5000, trial % 2 == 0 };
      EmTax tax = { em_text_dup ("Tax"), 80000, trial % 3 == 0 };
      EmCost cost;
      int64_t before;

      fill (2);
      fix_choice (0.381, "laser");
      if (trial == 0)
        {
          ck_assert_int_eq (em_quote_add_extra_take (&job.quote, &extra), EM_OK);
          ck_assert_int_eq (em_rates_add_tax_take (&job.rates, &tax), EM_OK);
        }
      else
        {
          free (extra.label);
          free (tax.name);
        }
      em_test_job_solve (&job, &cost);
      before = cost.totals.total_minor;
      em_cost_clear (&cost);
      switch (trial % 3)
        {
        case 0: job.catalogue.filler[0].size[1].price_minor += 7; break;
        case 1: job.quote.extra[0].cost_minor += 7; break;
        case 2: job.rates.tax[0].rate_ppm += 700; break;
        }
      em_test_job_solve (&job, &cost);
      ck_assert_int_ge (cost.totals.total_minor, before);
      em_cost_clear (&cost);
    }
}
END_TEST

/* A third exception, at the quote as a whole: each feature takes what is cheapest for itself, so when a rate that one machine alone bears grows,
 * all may move to the other and save a change of wire or a setting. Two walls of one setting, on the laser with 0.889 mm wire and the arc with
 * 0.381 mm: with the laser's hour dear enough both go to the arc, and the quote's set-up is one setting and one change of wire less. */
START_TEST (test_a_dearer_machine_may_save_a_setting)
{
  EmCost cost;
  int32_t settings;

  em_test_job_sidewall (&job, 30, 8, 2)->setting = 1;
  em_test_job_sidewall (&job, 30, 8, 0.25)->setting = 1;
  em_feature_set_text (&job.quote.feature[1], EM_FEATURE_MACHINE, "tig");
  em_test_job_solve (&job, &cost);
  settings = cost.settings;
  ck_assert_int_eq (settings, 2);
  em_cost_clear (&cost);
  job.rates.machine[0].machine_minor_per_h = 10000000;
  em_test_job_solve (&job, &cost);
  ck_assert_int_eq (cost.settings, 1);
  em_cost_clear (&cost);
}
END_TEST

/* More length of the same wall, more height, more thickness: never cheaper on one wire. With a free choice of wire too where the same
 * wires stay open, since a wall that grew is dearer by every one of them; more thickness opens coarser wires, so there it is fixed. */
START_TEST (test_price_never_falls_with_size)
{
  for (int trial = 0; trial < 60; trial++)
    {
      EmFeature *f;
      int64_t before;
      int field = trial % 3;

      fill (0);
      f = em_test_job_sidewall (&job, draw (1, 40), draw (0.5, 10), draw (0.1, 3));
      if (trial % 2 == 0 || field == 2)
        fix_choice (0.508, "laser");
      before = net ();
      for (int step = 0; step < 12; step++)
        {
          int64_t after;

          f->value[em_kind_field (f->kind, field == 0 ? "length" : field == 1 ? "height" : "thickness")] *= 1.07;
          after = net ();
          ck_assert_msg (after >= before, "trial %d step %d: %lld after %lld", trial, step, (long long) after, (long long) before);
          before = after;
        }
    }
}
END_TEST

/* The stated exception: another wire can cost less than the one fixed, so freeing the choice lowers a price with nothing made smaller. */
START_TEST (test_a_wire_switch_may_lower_the_price)
{
  int64_t fixed;

  em_test_job_sidewall (&job, 30, 8, 2);
  fix_choice (0.254, "laser");
  fixed = net ();
  fix_choice (EM_ABSENT, NULL);
  ck_assert_int_lt (net (), fixed);
}
END_TEST

/* The other exception: 0.44 mm wanted is less than a layer of 0.889 mm wire (0.4445 mm at half the diameter), 0.445 mm is more, so the
 * thicker wall may be welded with the coarser, quicker wire. */
START_TEST (test_a_thicker_wall_opens_a_coarser_wire)
{
  EmFeature *f = em_test_job_sidewall (&job, 30, 8, 0.44);
  EmFeatureCost thin, thick;

  ck_assert_int_eq (em_cost_feature (&job.quote, 0, &job.rates, &job.catalogue, &thin, NULL), EM_OK);
  ck_assert_double_eq (thin.rules.wire_mm, 0.635);
  f->value[em_kind_field (f->kind, "thickness")] = 0.445;
  ck_assert_int_eq (em_cost_feature (&job.quote, 0, &job.rates, &job.catalogue, &thick, NULL), EM_OK);
  ck_assert_double_eq (thick.rules.wire_mm, 0.889);
  ck_assert_int_lt (thick.calculated_minor, thin.calculated_minor);
}
END_TEST

/* The choice is the cheapest: no size fixed on any machine makes the feature cheaper without laying more in one layer than is wanted. */
START_TEST (test_choice_is_the_cheapest)
{
  static const double wires[] = { 0.254, 0.381, 0.508, 0.635, 0.889 };

  for (int trial = 0; trial < 30; trial++)
    {
      EmFeatureCost chosen, other;

      fill (1);
      if (em_cost_feature (&job.quote, 0, &job.rates, &job.catalogue, &chosen, NULL) != EM_OK)
        continue;
      for (int w = 0; w < 5; w++)
        for (int m = 0; m < 2; m++)
          {
            fix_choice (wires[w], job.rates.machine[m].id);
            /* The parts of a cost are rounded apart: two minor units say no more than that. */
            if (em_cost_feature (&job.quote, 0, &job.rates, &job.catalogue, &other, NULL) == EM_OK
                && other.plan.layer_mm <= other.shape.height_mm + other.rules.stock_mm)
              ck_assert_int_ge (other.calculated_minor, chosen.calculated_minor);
          }
    }
}
END_TEST

/* Units are for the eye: a quote in inches costs what it costs in millimetres, and so does one whose every size was shown in inches and typed
 * again as it stood there. One inch is 25.4 mm (NIST SP 811). */
START_TEST (test_units_change_nothing)
{
  int n_typed = 0;

  for (int trial = 0; trial < 60; trial++)
    {
      int64_t metric;

      fill (3);
      job.quote.units = job.rates.units = EM_UNITS_METRIC;
      metric = net ();
      job.quote.units = job.rates.units = EM_UNITS_INCH;
      ck_assert_int_eq (net (), metric);
      for (int32_t i = 0; i < job.quote.n_features; i++)
        for (int k = 0; k < job.quote.feature[i].kind->n_fields; k++)
          {
            EmQuantityType type = job.quote.feature[i].kind->fields[k].quantity;
            double *value = &job.quote.feature[i].value[k];
            char text[64];
            EmReading reading;

            if (em_is_absent (*value) || type == EM_QUANTITY_CHOICE)
              continue;
            em_quantity_write (*value, type, EM_UNITS_INCH, trial % 2 == 0 ? '.' : ',', text, sizeof text);
            ck_assert_int_eq (em_quantity_read (text, type, EM_UNITS_INCH, "size", &reading, NULL), EM_OK);
            ck_assert_msg (fabs (reading.value - *value) <= 2e-9 * fmax (1, fabs (*value)), "%s reads %.17g, was %.17g", text, reading.value, *value);
            *value = reading.value;
            n_typed++;
          }
      ck_assert_int_eq (net (), metric);
    }
  ck_assert_int_gt (n_typed, 300);
}
END_TEST

/* Splitting a count over two lines of one setting keeps metal and time, whatever the kind: eleven kinds, each met several times. */
START_TEST (test_splitting_a_count_keeps_metal_and_time)
{
  for (int trial = 0; trial < 12 * em_n_kinds; trial++)
    {
      EmCost whole, split;
      EmFeature second;

      fill (0);
      add_of_kind (em_kinds[trial % em_n_kinds]);
      job.quote.finish = trial % 2 == 0 ? EM_FINISH_SHOP : EM_FINISH_CUSTOMER;
      job.rates.buys_whole_sticks = trial % 3 == 0;
      job.quote.n_tools = 1 + trial % 3;
      job.quote.feature[0].count = 7;
      job.quote.feature[0].setting = 1;
      em_test_job_solve (&job, &whole);
      job.quote.feature[0].count = 3;
      ck_assert_int_eq (em_feature_copy (&job.quote.feature[0], &second), EM_OK);
      second.count = 4;
      ck_assert_int_eq (em_quote_insert_take (&job.quote, 1, &second), EM_OK);
      em_test_job_solve (&job, &split);
      ck_assert_double_eq_tol (split.net_volume_mm3, whole.net_volume_mm3, 1e-9 * whole.net_volume_mm3);
      ck_assert_double_eq_tol (split.deposited_volume_mm3, whole.deposited_volume_mm3, 1e-9 * whole.deposited_volume_mm3);
      ck_assert_double_eq_tol (split.wire_length_mm, whole.wire_length_mm, 1e-9 * whole.wire_length_mm);
      ck_assert_double_eq_tol (split.arc_on_s, whole.arc_on_s, 1e-9 * whole.arc_on_s);
      ck_assert_double_eq_tol (split.labour_s, whole.labour_s, 1e-9 * whole.labour_s);
      ck_assert_int_eq (split.tracks, whole.tracks);
      ck_assert_int_eq (split.sticks, whole.sticks);
      ck_assert_int_eq (split.layers, whole.layers);
      ck_assert_int_eq (split.settings, whole.settings);
      ck_assert_double_eq_tol (split.required_volume_mm3, whole.required_volume_mm3, 1e-9 * whole.required_volume_mm3);
      ck_assert_double_eq_tol (split.filler_mass_g, whole.filler_mass_g, 1e-9 * whole.filler_mass_g);
      ck_assert_double_eq_tol (split.gas_l, whole.gas_l, 1e-9 * whole.gas_l);
      for (int i = 0; i < EM_N_TASK; i++)
        ck_assert_double_eq_tol (split.task_s[i], whole.task_s[i], 1e-9 * whole.task_s[i] + 1e-12);
      em_cost_clear (&whole);
      em_cost_clear (&split);
    }
}
END_TEST

/* Numbers no drawing holds, into every input of a feature: a fault with a field, no figure, and the rest of the quote priced. */
START_TEST (test_bad_numbers)
{
  static const double bad[] = { INFINITY, -INFINITY, -1, 1e300, -0.001 };

  for (int k = 0; k < em_n_kinds; k++)
    for (int b = 0; b < 5; b++)
      {
        EmCost cost;
        EmFeature feature;

        fill (0);
        em_test_job_sidewall (&job, 20, 4, 0.5);
        em_feature_init (&feature, em_kinds[k]);
        for (int i = 0; i < em_kinds[k]->n_fields; i++)
          feature.value[i] = bad[b];
        ck_assert_int_eq (em_quote_insert_take (&job.quote, 1, &feature), EM_OK);
        em_test_job_solve (&job, &cost);
        ck_assert_msg (cost.n_faults == 1, "%s took %g", em_kinds[k]->id, bad[b]);
        ck_assert_int_eq (cost.first_fault.row, 1);
        ck_assert_ptr_nonnull (cost.first_fault.field);
        ck_assert_int_eq (cost.feature[1].price_minor, 0);
        ck_assert_int_gt (cost.feature[0].price_minor, 0);
        ck_assert_int_gt (cost.totals.net_minor, 0);
        em_cost_clear (&cost);
      }
}
END_TEST

/* Rates of zero divide nothing by zero: the work is done for nothing. */
START_TEST (test_zero_rates)
{
  EmCost cost;

  fill (4);
  for (int i = 0; i < em_n_rate_fields; i++)
    if (strcmp (em_rate_fields[i].group, "deposit") != 0 && em_rate_fields[i].low == 0)
      em_rate_set (&em_rate_fields[i], &job.rates, 0);
  for (int m = 0; m < job.rates.n_machines; m++)
    job.rates.machine[m].machine_minor_per_h = job.rates.machine[m].consumable_minor_per_h = 0;
  for (int f = 0; f < job.catalogue.n_fillers; f++)
    for (int s = 0; s < job.catalogue.filler[f].n_sizes; s++)
      job.catalogue.filler[f].size[s].price_minor = 0;
  em_test_job_solve (&job, &cost);
  ck_assert_int_eq (cost.totals.total_minor, 0);
  ck_assert_double_gt (cost.arc_on_s, 0);
  em_cost_clear (&cost);
}
END_TEST

int
main (void)
{
  const TTest *const tests[] = { test_lines_add_up, test_update_is_costing_afresh, test_price_never_falls_with_counts_and_rates,
                                 test_what_each_figure_does_to_a_price, test_dearer_wire_extra_and_tax,
                                 test_a_dearer_machine_may_save_a_setting, test_price_never_falls_with_size, test_a_wire_switch_may_lower_the_price,
                                 test_a_thicker_wall_opens_a_coarser_wire, test_choice_is_the_cheapest,
                                 test_units_change_nothing, test_splitting_a_count_keeps_metal_and_time, test_bad_numbers, test_zero_rates };

  return em_test_main_with ("core: cost properties", setup, teardown, tests, (int) (sizeof tests / sizeof tests[0]));
}
