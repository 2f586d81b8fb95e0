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

/* Ids given are not given again; where they have run out, free ones are found. */
START_TEST (test_ids_run_out)
{
  static const struct { uint32_t asked, got; } rows[] =
  {
    { 7, 7 }, { 7, 8 }, { 3, 3 }, { 0, 9 }, { UINT32_MAX, UINT32_MAX }, { 0, 1 }, { UINT32_MAX, 2 }, { 9, 4 }, { 3, 5 }, { 100, 100 }, { 0, 6 }, { 0, 10 },
  };
  EmQuote quote, copy;

  em_quote_init (&quote);
  for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++)
    {
      EmFeature feature;

      em_feature_init (&feature, em_kinds[0]);
      feature.id = rows[i].asked;
      ck_assert_int_eq (em_quote_insert_take (&quote, 0, &feature), EM_OK);
      ck_assert_msg (quote.feature[0].id == rows[i].got, "asked for %u: %u", rows[i].asked, quote.feature[0].id);
    }
  ck_assert_int_eq (em_quote_copy (&quote, &copy), EM_OK);
  ck_assert_int_eq (copy.next_id, quote.next_id);
  em_quote_clear (&copy);
  em_quote_clear (&quote);
}
END_TEST

/* A hundred thousand inserted one by one at the end: 5·10⁹ looks at a feature if each were held against all, which is more
 * than the time Check gives a test. */
START_TEST (test_many_features)
{
  EmQuote quote;

  em_quote_init (&quote);
  for (int i = 0; i < 100000; i++)
    {
      EmFeature feature;

      em_feature_init (&feature, em_kinds[0]);
      feature.id = i % 2 == 0 ? 0 : (uint32_t) i + 1;
      ck_assert_int_eq (em_quote_insert_take (&quote, i, &feature), EM_OK);
    }
  for (int i = 0; i < 100000; i += 9999)
    ck_assert_int_eq (quote.feature[i].id, i + 1);
  em_quote_clear (&quote);
}
END_TEST

static void
fill (EmQuote *quote)
{
  EmFeature feature;
  EmExtra extra = { em_text_dup ("Polish"), 1200, true };
  EmMark mark = { 3, 4, 1, EM_MARK_USED, em_text_dup ("length"), em_text_dup ("near") };

  em_quote_init (quote);
  for (int i = 0; i < 3; i++)
    {
      em_feature_init (&feature, em_kinds[i]);
      ck_assert_int_eq (em_quote_insert_take (quote, i, &feature), EM_OK);
    }
  ck_assert_int_eq (em_quote_add_extra_take (quote, &extra), EM_OK);
  ck_assert_int_eq (em_quote_add_mark_take (quote, &mark), EM_OK);
  ck_assert_int_eq (em_quote_set_text (quote, EM_QUOTE_CUSTOMER, "invented"), EM_OK);
  quote->n_breaks = 1;
  quote->break_tools[0] = 5;
}

static void change_text (EmQuote *q) { em_quote_set_text (q, EM_QUOTE_CUSTOMER, NULL); }
static void change_break (EmQuote *q) { q->break_tools[0] = 6; }
static void change_breaks (EmQuote *q) { q->n_breaks = 0; }
static void change_tools (EmQuote *q) { q->n_tools = 2; }
static void change_hardness (EmQuote *q) { q->hardness_hrc = 30; }
static void change_rush (EmQuote *q) { q->rush_ppm = 5; }
static void change_extra (EmQuote *q) { q->extra[0].cost_minor++; }
static void change_scope (EmQuote *q) { q->extra[0].is_per_tool = false; }
static void change_extras (EmQuote *q) { em_quote_remove_extra (q, 0); }
static void change_mark (EmQuote *q) { q->mark[0].length++; }
static void change_reason (EmQuote *q) { q->mark[0].reason[0] = 'f'; }
static void change_marks (EmQuote *q) { em_quote_clear_marks (q); }
static void change_feature (EmQuote *q) { q->feature[2].count = 4; }
static void change_order (EmQuote *q) { em_quote_move (q, 2, 0); }

/* Whatever is changed, a copy is another quote; nothing changed, it is the same. */
START_TEST (test_equality)
{
  static void (*const changes[]) (EmQuote *) = { change_text, change_break, change_breaks, change_tools, change_hardness, change_rush, change_extra,
                                                 change_scope, change_extras, change_mark, change_reason, change_marks, change_feature, change_order };
  EmQuote quote;

  fill (&quote);
  for (size_t i = 0; i < sizeof changes / sizeof changes[0]; i++)
    {
      EmQuote copy;

      ck_assert_int_eq (em_quote_copy (&quote, &copy), EM_OK);
      ck_assert (em_quote_equal (&quote, &copy));
      changes[i](&copy);
      ck_assert_msg (!em_quote_equal (&quote, &copy), "change %zu", i);
      em_quote_clear (&copy);
    }
  em_quote_clear (&quote);
}
END_TEST

/* Removed whole into another's hands, moved up and down; what lies outside changes nothing. */
START_TEST (test_list)
{
  EmQuote quote;
  EmFeature taken;

  fill (&quote);
  em_quote_move (&quote, 2, 0);
  ck_assert_ptr_eq (quote.feature[0].kind, em_kinds[2]);
  ck_assert_ptr_eq (quote.feature[2].kind, em_kinds[1]);
  em_quote_move (&quote, 0, 3);
  em_quote_move (&quote, -1, 0);
  em_quote_remove (&quote, 3, NULL);
  em_quote_remove (&quote, -1, NULL);
  em_quote_remove_extra (&quote, 1);
  em_quote_remove_extra (&quote, -1);
  ck_assert_int_eq (quote.n_features, 3);
  ck_assert_int_eq (quote.n_extras, 1);
  ck_assert_ptr_eq (quote.feature[0].kind, em_kinds[2]);
  em_quote_remove (&quote, 0, &taken);
  ck_assert_ptr_eq (taken.kind, em_kinds[2]);
  ck_assert_int_eq (quote.n_features, 2);
  em_quote_remove_extra (&quote, 0);
  ck_assert_int_eq (quote.n_extras, 0);
  em_feature_clear (&taken);
  em_quote_clear (&quote);
}
END_TEST

/* Each of the quote's own numbers: just outside its limits refused by name with them, at its limits taken, −1 the rate book's where it has one. */
static const struct { const char *field; size_t offset; bool is_long; int64_t low, high; bool has_default; } numbers[] =
{
  { "tools", offsetof (EmQuote, n_tools), false, 1, 10000, false },
  { "learning", offsetof (EmQuote, learning_ppm), true, 500001, 1000000, true },
  { "margin", offsetof (EmQuote, margin_ppm), true, 0, 950000, true },
  { "contingency", offsetof (EmQuote, contingency_ppm), true, 0, 2000000, true },
  { "rush", offsetof (EmQuote, rush_ppm), true, 0, 5000000, true },
  { "discount", offsetof (EmQuote, discount_ppm), true, 0, 1000000, true },
  { "validity", offsetof (EmQuote, validity_days), false, 0, 3650, true },
};

static EmStatus
check_number (int row, int64_t value, EmFault *out_fault)
{
  EmQuote quote;
  EmStatus status;

  em_quote_init (&quote);
  if (numbers[row].is_long)
    *(int64_t *) (void *) ((char *) &quote + numbers[row].offset) = value;
  else
    *(int32_t *) (void *) ((char *) &quote + numbers[row].offset) = (int32_t) value;
  status = em_quote_check (&quote, out_fault);
  em_quote_clear (&quote);
  return status;
}

START_TEST (test_limits)
{
  const int64_t far = numbers[_i].is_long ? INT64_MAX : INT32_MAX;
  const int64_t bad[] = { numbers[_i].low - (numbers[_i].has_default && numbers[_i].low == 0 ? 2 : 1), numbers[_i].high + 1, far, -far - 1 };
  EmFault fault;

  for (size_t b = 0; b < sizeof bad / sizeof bad[0]; b++)
    {
      ck_assert_int_eq (check_number (_i, bad[b], &fault), EM_FAULT_RANGE);
      ck_assert_str_eq (fault.field, numbers[_i].field);
      ck_assert (fault.low == (double) numbers[_i].low && fault.high == (double) numbers[_i].high && fault.value == (double) bad[b]);
    }
  ck_assert_int_eq (check_number (_i, numbers[_i].low, &fault), EM_OK);
  ck_assert_int_eq (check_number (_i, numbers[_i].high, &fault), EM_OK);
  if (numbers[_i].has_default)
    ck_assert_int_eq (check_number (_i, -1, &fault), EM_OK);
}
END_TEST

/* Price breaks ascend; hardness and section are numbers of a tool, or not given. */
START_TEST (test_breaks_and_metal)
{
  EmQuote quote;
  EmFault fault;

  em_quote_init (&quote);
  quote.n_breaks = 3;
  quote.break_tools[0] = 2;
  quote.break_tools[1] = 5;
  quote.break_tools[2] = 5;
  ck_assert_int_eq (em_quote_check (&quote, &fault), EM_FAULT_RANGE);
  ck_assert_str_eq (fault.field, "break");
  ck_assert (fault.value == 5 && fault.low == 6 && fault.high == 10000);
  quote.break_tools[2] = 10001;
  ck_assert_int_eq (em_quote_check (&quote, &fault), EM_FAULT_RANGE);
  quote.break_tools[2] = 10000;
  ck_assert_int_eq (em_quote_check (&quote, &fault), EM_OK);
  quote.n_breaks = EM_BREAK_MAX + 1;
  ck_assert_int_eq (em_quote_check (&quote, &fault), EM_FAULT_RANGE);
  quote.n_breaks = -1;
  ck_assert_int_eq (em_quote_check (&quote, &fault), EM_FAULT_RANGE);
  quote.n_breaks = 0;
  quote.hardness_hrc = 70.1;
  ck_assert_int_eq (em_quote_check (&quote, &fault), EM_FAULT_RANGE);
  ck_assert_str_eq (fault.field, "hardness");
  quote.hardness_hrc = INFINITY;
  ck_assert_int_eq (em_quote_check (&quote, &fault), EM_FAULT_NOT_FINITE);
  quote.hardness_hrc = EM_ABSENT;
  quote.section_mm = 0;
  ck_assert_int_eq (em_quote_check (&quote, &fault), EM_FAULT_RANGE);
  ck_assert_str_eq (fault.field, "section");
  em_quote_clear (&quote);
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("core: quote");
  TCase *tcase = tcase_create ("quote");
  SRunner *runner = srunner_create (suite);

  tcase_add_test (tcase, test_order_and_ids);
  tcase_add_test (tcase, test_ids_run_out);
  tcase_add_test (tcase, test_many_features);
  tcase_add_test (tcase, test_equality);
  tcase_add_test (tcase, test_list);
  tcase_add_loop_test (tcase, test_limits, 0, (int) (sizeof numbers / sizeof numbers[0]));
  tcase_add_test (tcase, test_breaks_and_metal);
  suite_add_tcase (suite, tcase);
  srunner_run_all (runner, CK_ENV);

  int n_failed = srunner_ntests_failed (runner);

  srunner_free (runner);
  return n_failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
