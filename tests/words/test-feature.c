/* test-feature: what will be done in plain words, sizes as people read them, names of printed lines.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-words.h"

#include "../core/em-test-main.h"

#include <stdlib.h>
#include <string.h>

#define NB "\302\240"

static const char *const end_ids[] = { "square", "tapered", NULL };
static const char *const end_names[] = { "Square", "Tapered", NULL };

static const EmField fields[] =
{
  { "length", "l", "Length", EM_QUANTITY_LENGTH, 0, 500, false, EM_ABSENT, true, NULL, NULL, NULL, 0 },
  { "gap", "g", "Gap", EM_QUANTITY_LENGTH, 0, 500, true, 0, true, NULL, NULL, NULL, 0 },
  { "angle", "β", "Angle", EM_QUANTITY_ANGLE, 0, 180, false, EM_ABSENT, false, NULL, NULL, NULL, 0 },
  { "ends", "", "Ends", EM_QUANTITY_CHOICE, 0, 1, true, 0, true, end_ids, end_names, NULL, 0 },
};

static const EmKind kind = { .id = "test-groove", .name = "Test groove", .fields = fields, .n_fields = 4 };

typedef struct { EmQuote quote; EmRates rates; EmCatalogue catalogue; EmFeatureCost cost; } Work;

static void
work_init (Work *work)
{
  EmFeature feature;
  EmFiller filler;

  memset (work, 0, sizeof *work);
  em_quote_init (&work->quote);
  em_rates_init (&work->rates);
  em_catalogue_init (&work->catalogue);
  em_filler_init (&filler);
  filler.id = em_text_dup ("w");
  filler.designation = em_text_dup ("W1");
  em_catalogue_add_filler_take (&work->catalogue, &filler);
  em_feature_init (&feature, &kind);
  feature.value[0] = 12.7;
  feature.value[1] = 0;
  feature.value[2] = 60;
  feature.value[3] = 0;
  em_quote_insert_take (&work->quote, 0, &feature);
  work->cost.rules = (EmPlanRules) { .wire_mm = 0.508, .stock_mm = 0.254 };
  work->cost.plan.layers = 3;
  em_words_push ("en");
}

static void
work_clear (Work *work)
{
  em_words_pop ();
  em_quote_clear (&work->quote);
  em_rates_clear (&work->rates);
  em_catalogue_clear (&work->catalogue);
}

static void
expect (Work *work, const char *expected)
{
  g_autofree char *text = em_words_feature (&work->quote, 0, &work->cost, &work->rates, &work->catalogue);

  ck_assert_str_eq (text, expected);
}

START_TEST (test_plain_words)
{
  Work work;

  work_init (&work);
  expect (&work, "Built up in 3 layers; filler wire: W1, ⌀" NB "0.51" NB "mm. At least 0.254" NB "mm is left on for machining. You machine it back to size.");
  work.cost.plan.layers = 1;
  work.cost.rules.stock_mm = 0;
  work.cost.rules.is_melted_out = true;
  work.cost.plan.cap_length_mm = 10;
  work.quote.finish = EM_FINISH_SHOP;
  work.quote.units = EM_UNITS_INCH;
  work.quote.feature[0].near = EM_NEAR_HOLE;
  work.quote.feature[0].clearance_mm = 0.381;
  expect (&work, "The damaged metal is melted clean first. Built up in 1 layer; filler wire: W1, ⌀" NB ".020" NB "in. Its sharp edges are capped from the "
                 "other face. The hole .015" NB "in away is kept free. We machine it back to size.");
  work_clear (&work);
}
END_TEST

START_TEST (test_a_fault_is_said_instead)
{
  Work work;

  work_init (&work);
  em_fault_set (&work.cost.fault, EM_FAULT_MISSING, "length", EM_ABSENT, 0, 500);
  work.cost.status = EM_FAULT_MISSING;
  expect (&work, "Not in the price. Length: please give it, the price needs it.");
  work_clear (&work);
}
END_TEST

/* The feature's own choice of who machines goes before the quote's; with neither, the customer does (common practice, no source). */
START_TEST (test_who_machines)
{
  static const struct { EmFinish quote, feature, expected; } rows[] = {
    { EM_FINISH_DEFAULT, EM_FINISH_DEFAULT, EM_FINISH_CUSTOMER }, { EM_FINISH_SHOP, EM_FINISH_DEFAULT, EM_FINISH_SHOP },
    { EM_FINISH_SHOP, EM_FINISH_CUSTOMER, EM_FINISH_CUSTOMER }, { EM_FINISH_CUSTOMER, EM_FINISH_SHOP, EM_FINISH_SHOP },
  };
  Work work;

  work_init (&work);
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      work.quote.finish = rows[i].quote;
      work.quote.feature[0].finish = rows[i].feature;
      ck_assert_msg (em_words_finish_of (&work.quote, 0) == rows[i].expected, "row %d", (int) i);
    }
  work_clear (&work);
}
END_TEST

/* Noughts, absent sizes and choices left as they were say nothing. */
START_TEST (test_sizes)
{
  Work work;

  work_init (&work);
  g_autofree char *metric = em_words_sizes (&work.quote.feature[0], EM_UNITS_METRIC);

  ck_assert_str_eq (metric, "Length" NB "12.7" NB "mm, Angle" NB "60°");
  work.quote.feature[0].value[2] = EM_ABSENT;
  work.quote.feature[0].value[3] = 1;
  g_autofree char *inch = em_words_sizes (&work.quote.feature[0], EM_UNITS_INCH);

  ck_assert_str_eq (inch, "Length" NB ".500" NB "in, Tapered");
  work.quote.feature[0].value[2] = 60;
  g_autofree char *short_metric = em_words_sizes_short (&work.quote.feature[0], EM_UNITS_METRIC);
  g_autofree char *short_inch = em_words_sizes_short (&work.quote.feature[0], EM_UNITS_INCH);

  ck_assert_str_eq (short_metric, "l" NB "12.7" NB "mm · β" NB "60° · Tapered");
  ck_assert_str_eq (short_inch, "l" NB ".500" NB "in · β" NB "60° · Tapered");
  work_clear (&work);
}
END_TEST

START_TEST (test_lines)
{
  static const struct { EmLine line; const char *expected; } rows[] = {
    { { .type = EM_LINE_FEATURE }, "1 · Test groove (Gate)" },
    { { .type = EM_LINE_RUSH, .rate_ppm = 250000 }, "Rush surcharge (25%)" },
    { { .type = EM_LINE_DISCOUNT, .rate_ppm = 25000 }, "Discount (2.5%)" },
    { { .type = EM_LINE_TAX, .rate_ppm = 82500 }, "Sales tax (8.25%)" },
    { { .type = EM_LINE_EXTRA }, "Hardening" },
    { { .type = EM_LINE_MINIMUM }, "Raised to our minimum charge" },
  };
  EmTax tax = { em_text_dup ("Sales tax"), 82500, false };
  EmExtra extra = { em_text_dup ("Hardening"), 100, false };
  Work work;

  work_init (&work);
  em_feature_set_text (&work.quote.feature[0], EM_FEATURE_LABEL, "Gate");
  em_rates_add_tax_take (&work.rates, &tax);
  em_quote_add_extra_take (&work.quote, &extra);
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *name = em_words_line (&rows[i].line, &work.quote, &work.rates);

      ck_assert_str_eq (name, rows[i].expected);
    }
  work_clear (&work);
}
END_TEST

START_TEST (test_estimates)
{
  static const struct { EmEstimate estimate; const char *expected; } rows[] = {
    { { 287.4, EM_VALID, NULL }, "about 287" NB "°C" },
    { { EM_ABSENT, EM_VALID_OUTSIDE, "C" }, "outside its published limits (C)" },
    { { EM_ABSENT, EM_VALID_OUTSIDE, NULL }, "outside its published limits" },
    { { EM_ABSENT, EM_VALID_OUTSIDE, "section" }, "outside its published limits (thickness)" },
    { { EM_ABSENT, EM_VALID_NOT_APPLICABLE, NULL }, "not for this metal" },
    { { EM_ABSENT, EM_VALID_NOT_APPLICABLE, "Cr" }, "not for this metal" },
    { { EM_ABSENT, EM_VALID_NOT_APPLICABLE, "process" }, "not for this process" },
    { { EM_ABSENT, EM_VALID_NOT_APPLICABLE, "phase" }, "not for such a deposit" },
  };

  em_words_push ("en");
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *text = em_words_estimate (&rows[i].estimate, "°C", 0);

      ck_assert_str_eq (text, rows[i].expected);
    }
  em_words_pop ();
}
END_TEST

/* A label that only repeats the kind is not told twice. */
START_TEST (test_names)
{
  static const struct { const char *label, *expected; } rows[] = {
    { NULL, "1 · Test groove" }, { "Gate insert", "1 · Test groove (Gate insert)" }, { "Test groove", "1 · Test groove" }, { "TEST GROOVE", "1 · Test groove" },
    { "Test groove 2", "1 · Test groove (Test groove 2)" },
  };
  Work work;

  work_init (&work);
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *name = NULL;

      free (work.quote.feature[0].text[EM_FEATURE_LABEL]);
      work.quote.feature[0].text[EM_FEATURE_LABEL] = em_text_dup (rows[i].label);
      name = em_words_feature_name (&work.quote, 0);
      ck_assert_str_eq (name, rows[i].expected);
    }
  work_clear (&work);
}
END_TEST

START_TEST (test_constitutions)
{
  static const struct { EmConstitution point; gboolean is_wrc; const char *expected; } rows[] = {
    { { 22, 10, EM_PHASE_AUSTENITE_FERRITE, 8.7, EM_ABSENT, true, NULL }, FALSE, "Austenite and ferrite, about 9 % ferrite" },
    { { 5, 6, EM_PHASE_MARTENSITE, EM_ABSENT, EM_ABSENT, true, NULL }, FALSE, "Martensite" },
    { { 14, 10, EM_PHASE_UNKNOWN, EM_ABSENT, EM_ABSENT, false, "C" }, FALSE, "outside its published limits (C)" },
    { { 44, 10, EM_PHASE_UNKNOWN, EM_ABSENT, EM_ABSENT, false, NULL }, FALSE, "outside the diagram" },
    { { 22, 13, EM_PHASE_AUSTENITE_FERRITE, EM_ABSENT, 12.2, true, NULL }, TRUE,
      "Austenite and ferrite, ferrite number about 12, most within 2.5" },
    { { 26, 12, EM_PHASE_AUSTENITE_FERRITE, EM_ABSENT, 56, true, NULL }, TRUE, "Austenite and ferrite, ferrite number about 56, most within 9" },
    { { 30, 17, EM_PHASE_AUSTENITE_FERRITE, EM_ABSENT, EM_ABSENT, true, NULL }, TRUE,
      "Austenite and ferrite, beyond the lines that tell its ferrite number" },
    { { 3, 9.5, EM_PHASE_UNKNOWN, EM_ABSENT, EM_ABSENT, false, NULL }, TRUE,
      "outside the diagram, where martensite may lie, which it does not show" },
    { { 20, 19, EM_PHASE_UNKNOWN, EM_ABSENT, EM_ABSENT, false, NULL }, TRUE, "outside the diagram" },
  };

  em_words_push ("en");
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *text = em_words_constitution (&rows[i].point, rows[i].is_wrc);

      ck_assert_str_eq (text, rows[i].expected);
    }
  em_words_pop ();
}
END_TEST

EM_TEST_MAIN ("feature", test_names, test_constitutions, test_plain_words, test_a_fault_is_said_instead, test_who_machines, test_sizes, test_lines, test_estimates)
