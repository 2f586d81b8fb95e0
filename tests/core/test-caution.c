/* Checks of core/em-caution. Limits named are those of 29 CFR 1910; thresholds without one are common practice, no source.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-test-book.h"
#include "em-test-main.h"
#include "em-caution.h"

#define HAS(set, caution) (((set) & (1u << (caution))) != 0)

static EmRates rates;
static EmCatalogue catalogue;
static EmQuote quote;

static void
set_up (void)
{
  em_test_rates (&rates);
  em_test_catalogue (&catalogue);
  em_quote_init (&quote);
}

static void
tear_down (void)
{
  em_quote_clear (&quote);
  em_catalogue_clear (&catalogue);
  em_rates_clear (&rates);
}

static void
add_feature (void)
{
  EmFeature feature;

  em_feature_init (&feature, em_kind_find ("edge-nick"));
  ck_assert_int_eq (em_quote_insert_take (&quote, quote.n_features, &feature), EM_OK);
}

/* Every row is whole, ids are unlike, sentences end as sentences and leave the decision to local codes, law or rules. */
START_TEST (test_table_is_whole_and_defers)
{
  for (int i = 0; i < EM_N_CAUTION; i++)
    {
      const EmCautionRow *row = &em_cautions[i];

      ck_assert_ptr_nonnull (row->id);
      ck_assert_ptr_nonnull (row->name);
      ck_assert_uint_lt (strlen (row->name), 26);
      ck_assert_ptr_nonnull (row->source);
      ck_assert_int_eq (row->text[strlen (row->text) - 1], '.');
      ck_assert_msg (strstr (row->text, "local ") != NULL || strstr (row->text, "Local ") != NULL, "%s does not defer", row->id);
      ck_assert_msg ((row->papers & EM_CAUTION_ON_BENCH) != 0, "%s is not on the bench sheet", row->id);
      for (int j = 0; j < i; j++)
        ck_assert_str_ne (row->id, em_cautions[j].id);
    }
  ck_assert_int_ne (em_cautions[EM_CAUTION_LOCAL_CODES].papers & EM_CAUTION_ON_QUOTE, 0);
  ck_assert_ptr_nonnull (strstr (em_cautions[EM_CAUTION_LOCAL_CODES].text, "licensed"));
}
END_TEST

/* The standard each substance has in 29 CFR 1910, subpart Z. */
START_TEST (test_sources)
{
  /* 1910.1026(c): 5 micrograms per cubic meter as an 8-hour time-weighted average; 1910.1024(c)(1): 0.2; 1910.146(b), hazardous
   * atmosphere: oxygen below 19.5 percent. */
  ck_assert_ptr_nonnull (strstr (em_cautions[EM_CAUTION_CHROMIUM_VI].source, "1910.1026: at most 5 µg/m³ over 8 hours"));
  ck_assert_ptr_nonnull (strstr (em_cautions[EM_CAUTION_BERYLLIUM].source, "1910.1024: at most 0.2 µg/m³ over 8 hours"));
  ck_assert_ptr_nonnull (strstr (em_cautions[EM_CAUTION_ARGON].source, "1910.146: oxygen below 19.5 percent"));
  ck_assert_ptr_nonnull (strstr (em_cautions[EM_CAUTION_LEAD_SULPHUR].source, "1910.1025"));
  ck_assert_ptr_nonnull (strstr (em_cautions[EM_CAUTION_LASER_CLASS_4].source, "IEC 60825-1"));
}
END_TEST

START_TEST (test_process)
{
  uint32_t laser = em_caution_pair (NULL, NULL, EM_PROCESS_LASER), arc = em_caution_pair (NULL, NULL, EM_PROCESS_GTAW);

  ck_assert (HAS (laser, EM_CAUTION_LASER_CLASS_4) && !HAS (laser, EM_CAUTION_ARC_RADIATION));
  ck_assert (!HAS (arc, EM_CAUTION_LASER_CLASS_4) && HAS (arc, EM_CAUTION_ARC_RADIATION));
  /* both are under argon and hot work */
  ck_assert (HAS (laser & arc, EM_CAUTION_ARGON) && HAS (laser & arc, EM_CAUTION_FIRE) && HAS (laser & arc, EM_CAUTION_LOCAL_CODES));
  ck_assert (!HAS (laser | arc, EM_CAUTION_CHROMIUM_VI));
}
END_TEST

/* Just below and at the share from which each element counts, in base and in wire alike. */
static const struct { EmElement element; double from_pct; EmCaution caution; } thresholds[] =
{
  { EM_EL_CR, 1.0, EM_CAUTION_CHROMIUM_VI },   /* method: more than about 1 % */
  { EM_EL_BE, 0.1, EM_CAUTION_BERYLLIUM },     /* 29 CFR 1910.1024(a)(3): exempt below 0.1 % by weight */
  { EM_EL_NI, 1.0, EM_CAUTION_NICKEL },
  { EM_EL_CO, 0.1, EM_CAUTION_COBALT },
  { EM_EL_MN, 1.0, EM_CAUTION_MANGANESE },
  { EM_EL_CU, 1.0, EM_CAUTION_COPPER },
  { EM_EL_PB, 0.1, EM_CAUTION_LEAD_SULPHUR },
  { EM_EL_S, 0.05, EM_CAUTION_LEAD_SULPHUR },
};

START_TEST (test_thresholds)
{
  EmBase base;
  EmFiller filler;

  em_base_init (&base);
  em_filler_init (&filler);
  base.composition.high_pct[thresholds[_i].element] = 0.99 * thresholds[_i].from_pct;
  filler.composition.high_pct[thresholds[_i].element] = 0.99 * thresholds[_i].from_pct;
  ck_assert (!HAS (em_caution_pair (&base, &filler, EM_PROCESS_LASER), thresholds[_i].caution));
  base.composition.high_pct[thresholds[_i].element] = thresholds[_i].from_pct;
  ck_assert (HAS (em_caution_pair (&base, NULL, EM_PROCESS_LASER), thresholds[_i].caution));
  filler.composition.high_pct[thresholds[_i].element] = thresholds[_i].from_pct;
  ck_assert (HAS (em_caution_pair (NULL, &filler, EM_PROCESS_LASER), thresholds[_i].caution));
}
END_TEST

/* UNS C17200: Be 1.80 … 2.00, Co + Ni ≥ 0.20, copper the rest, which no range names. */
START_TEST (test_beryllium_copper)
{
  EmBase base;
  uint32_t set;

  em_base_init (&base);
  base.composition.balance = EM_EL_CU;
  base.composition.low_pct[EM_EL_BE] = 1.80;
  base.composition.high_pct[EM_EL_BE] = 2.00;
  base.composition.high_pct[EM_EL_CO] = 0.3;
  set = em_caution_pair (&base, NULL, EM_PROCESS_GTAW);
  ck_assert (HAS (set, EM_CAUTION_BERYLLIUM) && HAS (set, EM_CAUTION_COPPER) && HAS (set, EM_CAUTION_COBALT));
  ck_assert (!HAS (set, EM_CAUTION_CHROMIUM_VI));
  ck_assert_int_ne (em_cautions[EM_CAUTION_BERYLLIUM].papers & EM_CAUTION_ON_QUOTE, 0);
}
END_TEST

START_TEST (test_empty_quote_still_defers)
{
  ck_assert_uint_eq (em_caution_quote (&quote, NULL, &rates, &catalogue), 1u << EM_CAUTION_LOCAL_CODES);
}
END_TEST

/* Words of an office, and the coatings they name; chrome plate brings chromium(VI) too. */
static const struct { const char *words; EmCaution caution; bool is_only; } coatings[] =
{
  { "chrome", EM_CAUTION_COATING_CHROME, true },
  { "Hard CHROME, 0.02 mm", EM_CAUTION_COATING_CHROME, true },
  { "hartverchromt", EM_CAUTION_COATING_CHROME, true },
  { "cromado duro", EM_CAUTION_COATING_CHROME, true },
  { "nitride", EM_CAUTION_COATING_NITRIDE, true },
  { "Gasnitriert", EM_CAUTION_COATING_NITRIDE, true },
  { "pvd", EM_CAUTION_COATING_UNKNOWN, true },
  { "something golden", EM_CAUTION_COATING_UNKNOWN, true },
  { "chrome over nitride", EM_CAUTION_COATING_CHROME, false },
  { "chromium nitride", EM_CAUTION_COATING_UNKNOWN, false },
};

START_TEST (test_coatings)
{
  const uint32_t all = (1u << EM_CAUTION_COATING_CHROME) | (1u << EM_CAUTION_COATING_NITRIDE) | (1u << EM_CAUTION_COATING_UNKNOWN);
  uint32_t set;

  em_quote_set_text (&quote, EM_QUOTE_COATING, coatings[_i].words);
  set = em_caution_quote (&quote, NULL, &rates, &catalogue);
  ck_assert (HAS (set, coatings[_i].caution));
  if (coatings[_i].is_only)
    ck_assert_uint_eq (set & all, 1u << coatings[_i].caution);
  if (HAS (set, EM_CAUTION_COATING_CHROME))
    ck_assert (HAS (set, EM_CAUTION_CHROMIUM_VI));
  em_quote_set_text (&quote, EM_QUOTE_COATING, "  ");
  ck_assert_uint_eq (em_caution_quote (&quote, NULL, &rates, &catalogue) & all, 0);
}
END_TEST

/* Costed on the torch: its caution and not the beam's; preheated: burns. */
START_TEST (test_costed_features_go_by_their_machine)
{
  EmFeatureCost costed = { .status = EM_OK, .base = 0, .filler = 2, .machine = 1 };
  EmCost cost = { .n_features = 1, .feature = &costed };
  uint32_t set;

  add_feature ();
  set = em_caution_quote (&quote, &cost, &rates, &catalogue);
  ck_assert (HAS (set, EM_CAUTION_ARC_RADIATION) && !HAS (set, EM_CAUTION_LASER_CLASS_4));
  ck_assert (HAS (set, EM_CAUTION_CHROMIUM_VI) && !HAS (set, EM_CAUTION_PREHEAT_BURNS));
  cost.is_preheated = true;
  ck_assert (HAS (em_caution_quote (&quote, &cost, &rates, &catalogue), EM_CAUTION_PREHEAT_BURNS));
}
END_TEST

/* A feature without a price takes no caution away: what the office named is gone by, and every machine that could be used. */
START_TEST (test_faulty_features_keep_their_cautions)
{
  EmFeatureCost faulty = { .status = EM_FAULT_NO_WIRE, .base = -1, .filler = -1, .machine = -1 };
  EmCost cost = { .n_features = 1, .feature = &faulty };
  uint32_t set;

  add_feature ();
  em_quote_set_text (&quote, EM_QUOTE_BASE, "h13");
  set = em_caution_quote (&quote, &cost, &rates, &catalogue);
  ck_assert (HAS (set, EM_CAUTION_LASER_CLASS_4) && HAS (set, EM_CAUTION_ARC_RADIATION) && HAS (set, EM_CAUTION_CHROMIUM_VI));
  em_quote_set_text (&quote, EM_QUOTE_MACHINE, "tig");
  set = em_caution_quote (&quote, &cost, &rates, &catalogue);
  ck_assert (!HAS (set, EM_CAUTION_LASER_CLASS_4) && HAS (set, EM_CAUTION_ARC_RADIATION));
  em_quote_set_text (&quote, EM_QUOTE_MACHINE, NULL);
  em_quote_set_text (&quote, EM_QUOTE_PROCESS, "laser");
  set = em_caution_quote (&quote, &cost, &rates, &catalogue);
  ck_assert (HAS (set, EM_CAUTION_LASER_CLASS_4) && !HAS (set, EM_CAUTION_ARC_RADIATION));
  em_quote_set_text (&quote, EM_QUOTE_PROCESS, NULL);
  em_quote_set_text (&quote, EM_QUOTE_MACHINE, "tig");
  quote.has_preheat = true;
  quote.preheat = EM_YES;
  ck_assert (HAS (em_caution_quote (&quote, &cost, &rates, &catalogue), EM_CAUTION_PREHEAT_BURNS));
  /* indices past the tables are not trusted */
  faulty = (EmFeatureCost) { .status = EM_OK, .base = 99, .filler = 0, .machine = 0 };
  ck_assert (HAS (em_caution_quote (&quote, &cost, &rates, &catalogue), EM_CAUTION_ARC_RADIATION));
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("core: caution");
  TCase *tcase = tcase_create ("caution");
  SRunner *runner;
  const TTest *const tests[] =
    {
      test_table_is_whole_and_defers, test_sources, test_process, test_beryllium_copper, test_empty_quote_still_defers,
      test_costed_features_go_by_their_machine, test_faulty_features_keep_their_cautions,
    };

  tcase_add_checked_fixture (tcase, set_up, tear_down);
  for (size_t i = 0; i < sizeof tests / sizeof tests[0]; i++)
    tcase_add_test (tcase, tests[i]);
  tcase_add_loop_test (tcase, test_thresholds, 0, sizeof thresholds / sizeof thresholds[0]);
  tcase_add_loop_test (tcase, test_coatings, 0, sizeof coatings / sizeof coatings[0]);
  suite_add_tcase (suite, tcase);
  runner = srunner_create (suite);
  srunner_run_all (runner, CK_ENV);

  int n_failed = srunner_ntests_failed (runner);

  srunner_free (runner);
  return n_failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
