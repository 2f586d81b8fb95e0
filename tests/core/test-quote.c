/* Checks of core/em-quote and em-feature: copies, order, ids, limits.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-quote.h"
#include "em-test-main.h"

START_TEST (test_order_and_ids)
{
  EmQuote quote, copy;

  em_quote_init (&quote);
  for (int i = 0; i < 20; i++)
    {
      EmFeature feature;

      em_feature_init (&feature, em_kinds[0]);
      ck_assert_int_eq (em_feature_set_text (&feature, EM_FEATURE_LABEL, "gate"), EM_OK);
      feature.id = i == 5 ? 1 : 0;   /* 1 is used by then */
      ck_assert_int_eq (em_quote_insert_take (&quote, i, &feature), EM_OK);
    }
  for (uint32_t id = 1; id <= 20; id++)
    ck_assert_int_eq (em_quote_find (&quote, id), (int) id - 1);
  em_quote_move (&quote, 0, 19);
  ck_assert_int_eq (em_quote_find (&quote, 1), 19);
  em_quote_remove (&quote, 0, NULL);
  ck_assert_int_eq (em_quote_find (&quote, 2), -1);
  ck_assert_int_eq (em_quote_copy (&quote, &copy), EM_OK);
  ck_assert (em_quote_equal (&quote, &copy));
  copy.feature[3].value[0] = 1.0;
  ck_assert (!em_quote_equal (&quote, &copy));
  em_quote_clear (&copy);
  em_quote_clear (&quote);
}
END_TEST

START_TEST (test_limits)
{
  EmQuote quote;
  EmFault fault;

  em_quote_init (&quote);
  ck_assert_int_eq (em_quote_check (&quote, &fault), EM_OK);
  quote.margin_ppm = 1000000;
  ck_assert_int_eq (em_quote_check (&quote, &fault), EM_FAULT_RANGE);
  ck_assert_str_eq (fault.field, "margin");
  em_quote_clear (&quote);
}
END_TEST

EM_TEST_MAIN ("core: quote", test_order_and_ids, test_limits)
