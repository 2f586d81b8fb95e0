/* test-sentence: every fault becomes a sentence that names the field and its limits, in the quote's units.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-words.h"

#include "../core/em-test-main.h"

#include <string.h>

#define NB "\302\240"

static const EmField nick_fields[] =
{
  { "leg_a", "a", "Leg a", EM_QUANTITY_LENGTH, 0.01, 50, true, EM_ABSENT, true, NULL, NULL, NULL, 0 },
  { "leg_b", "b", "Leg b", EM_QUANTITY_LENGTH, 0.01, 50, true, EM_ABSENT, true, NULL, NULL, NULL, 0 },
};

static const EmKind nick = { .id = "test-nick", .name = "Nick", .fields = nick_fields, .n_fields = 2 };

static void
make_quote (EmQuote *quote)
{
  EmFeature feature;

  em_quote_init (quote);
  em_feature_init (&feature, &nick);
  em_feature_set_text (&feature, EM_FEATURE_LABEL, "Gate insert");
  em_quote_insert_take (quote, 0, &feature);
}

START_TEST (test_sentences)
{
  static const struct { EmFault fault; EmUnits units; const char *expected; } rows[] = {
    { { EM_FAULT_RANGE, "leg_a", NULL, 0, 0, 0.01, 50, false, false }, EM_UNITS_METRIC,
      "1 · Nick (Gate insert) – Leg a: 0" NB "mm was given, it should be between 0.01" NB "mm and 50" NB "mm." },
    { { EM_FAULT_RANGE, "leg_a", NULL, 0, 0, 0.254, 25.4, false, false }, EM_UNITS_INCH,
      "1 · Nick (Gate insert) – Leg a: 0" NB "in was given, it should be between .010" NB "in and 1" NB "in." },
    { { EM_FAULT_MISSING, "leg_b", NULL, 0, EM_ABSENT, 0.01, 50, false, false }, EM_UNITS_METRIC,
      "1 · Nick (Gate insert) – Leg b: please give it, the price needs it." },
    { { EM_FAULT_RANGE, "margin", NULL, EM_ROW_QUOTE, 990000, 0, 950000, false, false }, EM_UNITS_METRIC,
      "Margin: 99% was given, it should be between 0% and 95%." },
    { { EM_FAULT_RANGE, "stub", NULL, EM_ROW_RATES, 1500, 0, 1000, false, false }, EM_UNITS_METRIC,
      "Stub lost of each stick: 1,500" NB "mm was given, it should be between 0" NB "mm and 1,000" NB "mm." },
    { { EM_FAULT_CONFLICT, "leg_a", "leg_b", 0, 3, EM_ABSENT, 2, false, false }, EM_UNITS_METRIC,
      "1 · Nick (Gate insert) – Leg a: 3" NB "mm does not go with “Leg b”, it should be at most 2" NB "mm." },
    /* A limit that is refused itself is told as such. */
    { { EM_FAULT_RANGE, "leg_a", NULL, 0, -3, 0, 200, true, false }, EM_UNITS_METRIC,
      "1 · Nick (Gate insert) – Leg a: -3" NB "mm was given, it should be more than 0" NB "mm and at most 200" NB "mm." },
    { { EM_FAULT_CONFLICT, "leg_a", "leg_b", 0, 3, 0, 2, true, true }, EM_UNITS_METRIC,
      "1 · Nick (Gate insert) – Leg a: 3" NB "mm does not go with “Leg b”, it should be more than 0" NB "mm and less than 2" NB "mm." },
    { { EM_FAULT_CONFLICT, "leg_a", "leg_b", 0, 3, 0, 2, false, true }, EM_UNITS_METRIC,
      "1 · Nick (Gate insert) – Leg a: 3" NB "mm does not go with “Leg b”, it should be at least 0" NB "mm and less than 2" NB "mm." },
    { { EM_FAULT_RANGE, "leg_a", NULL, 0, 0, 0, EM_ABSENT, true, false }, EM_UNITS_METRIC,
      "1 · Nick (Gate insert) – Leg a: 0" NB "mm was given, it should be more than 0" NB "mm." },
    { { EM_FAULT_UNREACHABLE, "slot_width", NULL, 0, 1, 14.6, EM_ABSENT, false, false }, EM_UNITS_METRIC,
      "1 · Nick (Gate insert) – Slot width: the beam or torch cannot reach in there without dismantling the tool. It should be at least 14.6" NB "mm." },
    { { EM_FAULT_NO_WIRE, "wire", NULL, 0, 0.3, 0.2, 0.9, false, false }, EM_UNITS_METRIC,
      "1 · Nick (Gate insert) – Wire size: no wire size in stock fits the clearance, the reach and the machines." },
    { { EM_FAULT_UNKNOWN, "base", NULL, EM_ROW_QUOTE, EM_ABSENT, EM_ABSENT, EM_ABSENT, false, false }, EM_UNITS_METRIC,
      "Tool metal: not in the catalog or the rate book." },
    { { EM_FAULT_MEMORY, "memory", NULL, EM_ROW_QUOTE, EM_ABSENT, EM_ABSENT, EM_ABSENT, false, false }, EM_UNITS_METRIC, "There is not enough memory." },
  };
  EmQuote quote;

  make_quote (&quote);
  em_words_push ("en");
  for (gsize r = 0; r < G_N_ELEMENTS (rows); r++)
    {
      g_autofree char *text = em_words_fault (&rows[r].fault, &quote, rows[r].units);

      ck_assert_str_eq (text, rows[r].expected);
    }
  em_words_pop ();
  em_quote_clear (&quote);
}
END_TEST

/* No code is without words, and each names its field. */
START_TEST (test_every_code_has_words)
{
  for (int code = EM_FAULT_MISSING; code < EM_N_STATUS; code++)
    {
      EmFault fault = { (EmStatus) code, "stock", NULL, EM_ROW_QUOTE, 1, EM_ABSENT, EM_ABSENT, false, false };
      g_autofree char *text = em_words_fault (&fault, NULL, EM_UNITS_METRIC);

      ck_assert_msg (strlen (text) > 10, "code %d", code);
      if (code != EM_FAULT_MEMORY)
        ck_assert_msg (g_str_has_prefix (text, "Machining stock: "), "code %d: %s", code, text);
    }
}
END_TEST

START_TEST (test_every_rate_field_has_a_label)
{
  for (int i = 0; i < em_n_rate_fields; i++)
    {
      g_autofree char *label = em_words_field (em_rate_fields[i].id, NULL);

      /* An unknown field comes back as its id. */
      ck_assert_str_ne (label, em_rate_fields[i].id);
    }
}
END_TEST

#define CHECK_TABLE(n, call) \
  for (int i = 0; i < (n); i++) \
    ck_assert_msg ((call)[0] != '\0', #call " %d", i); \

START_TEST (test_no_code_is_left_out)
{
  CHECK_TABLE (EM_N_REASON, em_words_reason ((EmReason) i));
  CHECK_TABLE (EM_N_PHASE, em_words_phase ((EmPhase) i));
  CHECK_TABLE (EM_N_BOUND, em_words_bound ((EmBound) i));
  CHECK_TABLE (EM_N_ACCESS, em_words_access ((EmAccess) i));
  CHECK_TABLE (EM_N_FINISH, em_words_finish ((EmFinish) i));
  CHECK_TABLE (EM_N_STATE, em_words_state ((EmState) i));
  CHECK_TABLE (EM_N_NEAR, em_words_near ((EmNear) i));
  CHECK_TABLE (EM_N_PROCESS, em_words_process ((EmProcess) i));
  CHECK_TABLE (EM_N_FAMILY, em_words_family ((EmFamily) i));
  ck_assert_str_eq (em_words_state ((EmState) EM_N_STATE), "");
}
END_TEST

EM_TEST_MAIN ("sentence", test_sentences, test_every_code_has_words, test_every_rate_field_has_a_label, test_no_code_is_left_out)
