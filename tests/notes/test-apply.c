/* Checks of notes/em-notes-apply: what the office did survives, what the notes no longer say goes.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "notes-check.h"

static EmLexicon *lexicon;

static EmReadResult *
apply (EmQuote *quote, const char *text)
{
  EmReadResult *result = em_notes_read (lexicon, text, strlen (text), quote->units);

  em_notes_apply (result, text, quote);
  return result;
}

static void
reapply (EmQuote *quote, const char *text)
{
  em_read_result_free (apply (quote, text));
}

static double
value_of (const EmQuote *quote, int32_t feature, const char *field)
{
  return quote->feature[feature].value[em_kind_field (quote->feature[feature].kind, field)];
}

static int
count_marks (const EmQuote *quote, EmMarkState state)
{
  int n = 0;

  for (int32_t i = 0; i < quote->n_marks; i++)
    n += quote->mark[i].state == state;
  return n;
}

static void
type_value (EmQuote *quote, int32_t feature, const char *field, double value)
{
  quote->feature[feature].value[em_kind_field (quote->feature[feature].kind, field)] = value;
  em_notes_corrected (quote, feature, field);
}

START_TEST (test_fills_quote_and_features)
{
  EmQuote quote;

  em_quote_init (&quote);
  reapply (&quote, "ALL DIMS INCH. MATL: H13 48 HRC. PO 77-12\n2X NICK .5 X .03 X .04, IN SLOT .25 WD\nADD .010 STOCK ALL OVER. MACHINING BY CUSTOMER");
  ck_assert_int_eq (quote.n_features, 1);
  ck_assert_str_eq (quote.feature[0].kind->id, "edge-nick");
  ck_assert_int_eq (quote.feature[0].count, 2);
  /* .5 in = 12.7 mm, .03 in = 0.762 mm, .04 in = 1.016 mm, .010 in = 0.254 mm, .25 in = 6.35 mm */
  ck_assert_double_eq_tol (value_of (&quote, 0, "length"), 12.7, 1e-12);
  ck_assert_double_eq_tol (value_of (&quote, 0, "leg_a"), 0.762, 1e-12);
  ck_assert_double_eq_tol (value_of (&quote, 0, "leg_b"), 1.016, 1e-12);
  ck_assert_double_eq_tol (quote.feature[0].stock_mm, 0.254, 1e-12);
  ck_assert_double_eq_tol (quote.feature[0].slot_width_mm, 6.35, 1e-12);
  ck_assert_str_eq (quote.text[EM_QUOTE_BASE], "h13");
  ck_assert_str_eq (quote.text[EM_QUOTE_REFERENCE], "77-12");
  ck_assert_double_eq (quote.hardness_hrc, 48);
  ck_assert_int_eq (quote.finish, EM_FINISH_CUSTOMER);
  ck_assert_int_eq (quote.units, EM_UNITS_INCH);
  ck_assert_int_gt (count_marks (&quote, EM_MARK_USED), 0);
  ck_assert_int_gt (count_marks (&quote, EM_MARK_GENERAL), 0);
  em_quote_clear (&quote);
}
END_TEST

/* The bench goes by these marks: each thing that must stay free of weld has one. */
START_TEST (test_all_refused_things_are_kept)
{
  EmQuote quote;
  int n = 0;

  em_quote_init (&quote);
  reapply (&quote, "NICK 5 X 1 X 1 MM\nDO NOT WELD: THREADS, TEXTURE, CLAMP SLOT");
  for (int32_t i = 0; i < quote.n_marks; i++)
    n += quote.mark[i].state == EM_MARK_GENERAL && g_strcmp0 (quote.mark[i].field, "refuse") == 0;
  ck_assert_int_eq (n, 3);
  ck_assert_int_eq (count_marks (&quote, EM_MARK_QUESTION), 0);
  em_quote_clear (&quote);
}
END_TEST

/* The quote takes the first metal; each repair says its own, at every reading the same. */
START_TEST (test_metals_of_parts)
{
  static const char *const text = "CORE: EDGE CHIP 8 X 0.6 X 0.5 MM\nPLATE: CRACK 5 LONG 0.8 DEEP\nCORE H13 50 HRC, PLATE P20";
  EmQuote quote;

  em_quote_init (&quote);
  for (int reading = 0; reading < 2; reading++)
    {
      reapply (&quote, text);
      ck_assert_int_eq (quote.n_features, 2);
      ck_assert_str_eq (quote.text[EM_QUOTE_BASE], "h13");
      ck_assert_str_eq (quote.feature[0].text[EM_FEATURE_REMARK], "Metal of this part: H13, 50 HRC");
      ck_assert_double_eq (quote.hardness_hrc, 50);
      ck_assert_str_eq (quote.feature[1].text[EM_FEATURE_REMARK], "Metal of this part: P20");
    }
  em_quote_clear (&quote);
}
END_TEST

/* The quote's cautions need a coating that only one part has; the bench reads of which. */
START_TEST (test_coatings_of_parts)
{
  static const char *const text = "BLADE: EDGE CHIP 8 X 0.6 X 0.5 MM\nPLATE: CRACK 5 LONG 0.8 DEEP\nPLATE P20, NITRIDED. BLADE H13 50 HRC, CHROME PLATED";
  EmQuote quote;

  em_quote_init (&quote);
  for (int reading = 0; reading < 2; reading++)
    {
      reapply (&quote, text);
      ck_assert_int_eq (quote.n_features, 2);
      ck_assert_str_eq (quote.text[EM_QUOTE_COATING], "chrome");
      ck_assert_str_eq (quote.feature[0].text[EM_FEATURE_REMARK], "Metal of this part: H13, 50 HRC, chrome");
      ck_assert_str_eq (quote.feature[1].text[EM_FEATURE_REMARK], "Metal of this part: P20, nitride");
    }
  reapply (&quote, "BLADE: EDGE CHIP 8 X 0.6 X 0.5 MM\nPLATE: CRACK 5 LONG 0.8 DEEP\nH13 50 HRC");
  ck_assert_ptr_null (quote.text[EM_QUOTE_COATING]);
  em_quote_clear (&quote);
}
END_TEST

/* A leading point is how inches are written (ASME Y14.5); a comma or "mm" is metric. Once there are features the unit is the office's. */
START_TEST (test_first_notes_bring_their_unit)
{
  EmQuote quote;

  em_quote_init (&quote);
  quote.units = EM_UNITS_METRIC;
  reapply (&quote, "CORNER R.015, 3.25 LG");
  ck_assert_int_eq (quote.units, EM_UNITS_INCH);
  reapply (&quote, "CORNER R0.4 mm, 80 mm LG");
  ck_assert_int_eq (quote.units, EM_UNITS_INCH);
  em_quote_clear (&quote);
  em_quote_init (&quote);
  quote.units = EM_UNITS_INCH;
  reapply (&quote, "CORNER R0,4, 80 mm LG");
  ck_assert_int_eq (quote.units, EM_UNITS_METRIC);
  em_quote_clear (&quote);
  em_quote_init (&quote);
  quote.units = EM_UNITS_INCH;
  reapply (&quote, "CORNER R.015, NICK 3 X 2 X 2 mm");
  ck_assert_int_eq (quote.units, EM_UNITS_INCH);
  em_quote_clear (&quote);
}
END_TEST

START_TEST (test_every_kind_and_choice_is_known_to_the_engine)
{
  static const struct { const char *text, *kind, *field; double value; } known[] = {
    { "NICK 5 X 1 X 1 MM TAPERED ENDS", "edge-nick", "ends", 1 },
    { "WORN CORNER R0.5 MM X 20 LG", "worn-corner", "radius", 0.5 },
    { "BORE EDGE WORN R0.4 MM", "worn-corner", "side", 1 },
    { "SIDEWALL 20 LG X 5 HT X 0.4 THK MM", "sidewall", "thickness", 0.4 },
    { "FACE ⌀30 MM, 0.4 THK", "face", "form", 1 },
    { "RIB 20 LG X 1.5 THK MM, ADD 0.2 PER SIDE, WRAP BOTH ENDS", "rib", "wraps", 2 },
    { "BORE ⌀20 MM WORN TO 20.3 X 15 DP", "bore", "worn", 20.3 },
    { "SPHERICAL SEAT SR12 MM", "seat", "form", 1 },
    { "PIN ⌀8 MM WORN TO 7.9 X 20 LG", "pin", "diameter", 8 },
    { "DAM 10 LG X 3 WD X 2 HT MM ROUNDED ENDS", "dam", "ends", 2 },
    { "PIT ⌀2 X 0.5 DEEP MM", "recess", "form", 4 },
    { "ROUND PIT ⌀2 X 1.5 DEEP MM", "recess", "width", 2 },
    { "CRACK 20 LG X 2 DP MM, 60° INCL", "groove", "angle", 60 },
  };
  EmQuote quote;

  em_quote_init (&quote);
  reapply (&quote, known[_i].text);
  ck_assert_msg (quote.n_features == 1, "“%s”: %d features", known[_i].text, quote.n_features);
  ck_assert_str_eq (quote.feature[0].kind->id, known[_i].kind);
  ck_assert_msg (value_of (&quote, 0, known[_i].field) == known[_i].value, "“%s”: %s is %g", known[_i].text, known[_i].field, value_of (&quote, 0, known[_i].field));
  em_quote_clear (&quote);
}
END_TEST

START_TEST (test_corrections_survive)
{
  EmQuote quote;
  uint32_t id;

  em_quote_init (&quote);
  reapply (&quote, "NICK 5 X 1 X 1 MM, 3 PLCS");
  id = quote.feature[0].id;
  type_value (&quote, 0, "length", 7.0);
  quote.feature[0].count = 9;
  em_notes_corrected (&quote, 0, "count");
  reapply (&quote, "NICK 6 X 2 X 1 MM, 4 PLCS");
  reapply (&quote, "NICK 6 X 2 X 1 MM, 4 PLCS\nCRACK 10 LG X 1 DP MM");
  ck_assert_int_eq (quote.n_features, 2);
  ck_assert_uint_eq (quote.feature[0].id, id);
  ck_assert_double_eq (value_of (&quote, 0, "length"), 7.0);
  ck_assert_double_eq (value_of (&quote, 0, "leg_a"), 2.0);
  ck_assert_int_eq (quote.feature[0].count, 9);
  em_quote_clear (&quote);
}
END_TEST

START_TEST (test_words_gone_take_their_effect_along)
{
  EmQuote quote;

  em_quote_init (&quote);
  reapply (&quote, "MATL H13\n4X NICK 5 X 1 X 1 MM\nCRACK 10 LG X 1 DP MM");
  ck_assert_int_eq (quote.n_features, 2);
  reapply (&quote, "NICK 5 X 1 X 1 MM");
  ck_assert_int_eq (quote.n_features, 1);
  ck_assert_int_eq (quote.feature[0].count, 1);
  ck_assert_ptr_null (quote.text[EM_QUOTE_BASE]);
  em_quote_clear (&quote);
}
END_TEST

START_TEST (test_corrected_feature_stays_without_its_words)
{
  EmQuote quote;

  em_quote_init (&quote);
  reapply (&quote, "NICK 5 X 1 X 1 MM\nCRACK 10 LG X 1 DP MM");
  type_value (&quote, 1, "depth", 3.0);
  reapply (&quote, "NICK 5 X 1 X 1 MM");
  ck_assert_int_eq (quote.n_features, 2);
  ck_assert_double_eq (value_of (&quote, 1, "depth"), 3.0);
  em_quote_clear (&quote);
}
END_TEST

START_TEST (test_rejected_stays_rejected)
{
  EmQuote quote;
  EmReadResult *result;

  em_quote_init (&quote);
  reapply (&quote, "NICK 5 X 1 X 1 MM\nCRACK 10 LG X 1 DP MM");
  em_notes_reject (&quote, 0);
  ck_assert_int_eq (quote.n_features, 1);
  result = apply (&quote, "Hello\nNICK 5 X 1 X 1 MM\nCRACK 10 LG X 1 DP MM");
  ck_assert_int_eq (quote.n_features, 1);
  ck_assert_str_eq (quote.feature[0].kind->id, "groove");
  ck_assert_uint_eq (g_array_index (result->ids, guint32, 0), 0);
  ck_assert_uint_eq (g_array_index (result->ids, guint32, 1), quote.feature[0].id);
  ck_assert_int_eq (count_marks (&quote, EM_MARK_REJECTED), 1);
  em_read_result_free (result);
  reapply (&quote, "NICK 5 X 1 X 1 MM\nCRACK 10 LG X 1 DP MM");
  ck_assert_int_eq (quote.n_features, 1);
  em_quote_clear (&quote);
}
END_TEST

START_TEST (test_office_values_are_not_overwritten)
{
  EmQuote quote;

  em_quote_init (&quote);
  em_quote_set_text (&quote, EM_QUOTE_BASE, "s7");
  reapply (&quote, "MATL H13\nNICK 5 X 1 X 1 MM");
  ck_assert_str_eq (quote.text[EM_QUOTE_BASE], "s7");
  em_quote_clear (&quote);
}
END_TEST

/* The office overruled the notes without a word to the reader: as long as the notes say the same, it stands. */
START_TEST (test_unchanged_words_change_nothing)
{
  EmQuote quote;

  em_quote_init (&quote);
  reapply (&quote, "ALL DIMS MM. MATL H13 50 HRC\n4X NICK 5 X 1 X 1");
  quote.units = EM_UNITS_INCH;
  quote.hardness_hrc = 44;
  quote.feature[0].count = 2;
  em_quote_set_text (&quote, EM_QUOTE_BASE, "h11");
  reapply (&quote, "ALL DIMS MM. MATL H13 50 HRC\n4X NICK 6 X 1 X 1");
  ck_assert_int_eq (quote.units, EM_UNITS_INCH);
  ck_assert_double_eq (quote.hardness_hrc, 44);
  ck_assert_int_eq (quote.feature[0].count, 2);
  ck_assert_str_eq (quote.text[EM_QUOTE_BASE], "h11");
  ck_assert_double_eq (value_of (&quote, 0, "length"), 6);
  reapply (&quote, "ALL DIMS MM. MATL S7 52 HRC\n6X NICK 6 X 1 X 1");
  ck_assert_double_eq (quote.hardness_hrc, 52);
  ck_assert_int_eq (quote.feature[0].count, 6);
  ck_assert_str_eq (quote.text[EM_QUOTE_BASE], "s7");
  em_quote_clear (&quote);
}
END_TEST

/* Of two hardnesses the first counts, at every reading; the other is asked about. Found by the fuzz target. */
START_TEST (test_two_of_a_general_field)
{
  EmQuote quote;

  em_quote_init (&quote);
  for (int i = 0; i < 3; i++)
    {
      reapply (&quote, "MATL: H13 48 HRC\nNICK 10 x 1 x 1 mm\nCORE IS 52 HRC\n");
      ck_assert_double_eq_tol (quote.hardness_hrc, 48.0, 1e-12);
      ck_assert_int_eq (count_marks (&quote, EM_MARK_QUESTION), 1);
    }
  em_quote_clear (&quote);
}
END_TEST

START_TEST (test_features_of_the_office_are_left_alone)
{
  EmQuote quote;
  EmFeature own;

  em_quote_init (&quote);
  em_feature_init (&own, em_kind_find ("dam"));
  ck_assert_int_eq (em_quote_insert_take (&quote, 0, &own), EM_OK);
  reapply (&quote, "NICK 5 X 1 X 1 MM");
  reapply (&quote, "");
  ck_assert_int_eq (quote.n_features, 1);
  ck_assert_str_eq (quote.feature[0].kind->id, "dam");
  em_quote_clear (&quote);
}
END_TEST

START_TEST (test_order_follows_the_notes)
{
  EmQuote quote;

  em_quote_init (&quote);
  reapply (&quote, "NICK 5 X 1 X 1 MM\nCRACK 10 LG X 1 DP MM");
  reapply (&quote, "NICK 5 X 1 X 1 MM\nPIT ⌀1 X 0.3 DEEP MM\nCRACK 10 LG X 1 DP MM");
  ck_assert_int_eq (quote.n_features, 3);
  ck_assert_str_eq (quote.feature[0].kind->id, "edge-nick");
  ck_assert_str_eq (quote.feature[1].kind->id, "recess");
  ck_assert_str_eq (quote.feature[2].kind->id, "groove");
  em_quote_clear (&quote);
}
END_TEST

/* .010 in per side is 0.254 mm; on diameter it is half of that. */
START_TEST (test_answer_sets_and_survives)
{
  const char *text = "BORE .500 DIA X .75 DP, BUILD UP .010";
  EmQuote quote;
  EmReadResult *result;

  em_quote_init (&quote);
  result = apply (&quote, text);
  ck_assert_uint_eq (result->questions->len, 1);
  ck_assert (em_is_absent (value_of (&quote, 0, "build")));
  em_notes_answer (result, 0, 1, &quote, -1);
  ck_assert_double_eq_tol (value_of (&quote, 0, "build"), 0.127, 1e-12);
  ck_assert_ptr_nonnull (quote.feature[0].text[EM_FEATURE_ASSUMPTION]);
  em_notes_answer (result, 0, 99, &quote, -1);
  em_notes_answer (result, 99, 0, &quote, -1);
  em_read_result_free (result);
  reapply (&quote, "BORE .500 DIA X .80 DP, BUILD UP .010");
  ck_assert_double_eq_tol (value_of (&quote, 0, "build"), 0.127, 1e-12);
  ck_assert_double_eq_tol (value_of (&quote, 0, "length"), 20.32, 1e-12);
  em_quote_clear (&quote);
}
END_TEST

static int
count_open (const EmReadResult *result, const EmQuote *quote)
{
  int n;

  g_free (em_notes_open_questions (result, quote, &n));
  return n;
}

static gboolean
is_open (const EmReadResult *result, guint question, const EmQuote *quote)
{
  int n;
  g_autofree gboolean *is = em_notes_open_questions (result, quote, &n);

  return is[question];
}

/* "dia 8 to 7.8" names no unit, "worn .010" no side. Answered once, neither is asked again while its words stay; a step back to
 * the quote before the answer opens it. */
START_TEST (test_answered_is_not_asked_again)
{
  const char *text = "1. BORE .500 DIA X .75 DP, BUILD UP .010\n2. BORE .300 DIA X .50 DP, BUILD UP .020";
  EmQuote quote, before;
  EmReadResult *result;

  em_quote_init (&quote);
  result = apply (&quote, text);
  ck_assert_uint_eq (result->questions->len, 2);
  ck_assert_int_eq (count_open (result, &quote), 2);
  ck_assert_int_eq (em_quote_copy (&quote, &before), EM_OK);
  em_notes_answer (result, 0, 1, &quote, -1);
  ck_assert (!is_open (result, 0, &quote));
  ck_assert (is_open (result, 1, &quote));
  ck_assert_int_eq (count_open (result, &before), 2);
  em_read_result_free (result);
  result = apply (&quote, "URGENT\n1. BORE .500 DIA X .75 DP, BUILD UP .010\n2. BORE .300 DIA X .50 DP, BUILD UP .020");
  ck_assert_uint_eq (result->questions->len, 2);
  ck_assert (!is_open (result, 0, &quote));
  ck_assert (is_open (result, 1, &quote));
  /* Nor is what was asked about a proposal that the office took out. */
  em_notes_reject (&quote, 1);
  em_read_result_free (result);
  result = apply (&quote, text);
  ck_assert_int_eq (count_open (result, &quote), 0);
  ck_assert_int_eq (count_marks (&quote, EM_MARK_QUESTION), 0);
  em_read_result_free (result);
  em_quote_clear (&before);
  em_quote_clear (&quote);
}
END_TEST

/* One answer for many sizes: 2 in = 50.8 mm; the length was typed by the office. */
START_TEST (test_answer_leaves_what_the_office_typed)
{
  EmQuote quote;
  EmReadResult *result;

  em_quote_init (&quote);
  result = apply (&quote, "NICK 9 X 2 X 2\nCRACK 4 LG X 1 DP");
  ck_assert_str_eq (g_array_index (result->questions, EmReadQuestion, 0).code, "inch-or-mm");
  type_value (&quote, 0, "length", 12);
  em_notes_answer (result, 0, 1, &quote, -1);
  ck_assert_double_eq (value_of (&quote, 0, "length"), 12);
  ck_assert_double_eq_tol (value_of (&quote, 0, "leg_a"), 50.8, 1e-12);
  em_read_result_free (result);
  em_quote_clear (&quote);
}
END_TEST

/* The words that a correction overrules are those that say the field, not the whole of the proposal. */
START_TEST (test_correction_marks_its_own_words)
{
  static const char *const texts[] = { "NICK 12 MM LONG, 0.5 X 0.4 MM", "PLEASE QUOTE. NICK 12 MM LONG, 0.5 X 0.4 MM" };
  EmQuote quote;
  int n_seen = 0;

  em_quote_init (&quote);
  reapply (&quote, texts[0]);
  type_value (&quote, 0, "length", 14);
  reapply (&quote, texts[1]);
  for (int32_t i = 0; i < quote.n_marks; i++)
    if (quote.mark[i].state == EM_MARK_REJECTED)
      {
        ck_assert_str_eq (quote.mark[i].field, "length");
        ck_assert_msg (strncmp (texts[1] + quote.mark[i].start, "12 MM", 5) == 0, "at “%s”", texts[1] + quote.mark[i].start);
        ck_assert_uint_lt (quote.mark[i].length, 14);
        n_seen++;
      }
  ck_assert_int_eq (n_seen, 1);
  ck_assert_double_eq (value_of (&quote, 0, "length"), 14);
  em_quote_clear (&quote);
}
END_TEST

START_TEST (test_kind_answer_makes_the_feature)
{
  const char *text = "WELD 2.5 X .25 X .125";
  EmQuote quote;
  EmReadResult *result;

  em_quote_init (&quote);
  result = apply (&quote, text);
  ck_assert_int_eq (quote.n_features, 0);
  ck_assert_str_eq (g_array_index (result->questions, EmReadQuestion, 0).code, "which-kind");
  em_notes_answer (result, 0, 0, &quote, -1);
  ck_assert_int_eq (quote.n_features, 1);
  ck_assert_str_eq (quote.feature[0].kind->id, g_array_index (result->questions, EmReadQuestion, 0).answer[0]);
  ck_assert_double_eq_tol (value_of (&quote, 0, "length"), 63.5, 1e-12);
  em_read_result_free (result);
  reapply (&quote, "WELD 2.5 X .25 X .125");
  ck_assert_int_eq (quote.n_features, 1);
  em_quote_clear (&quote);
}
END_TEST

/* One question for all sizes without a unit; its answer reaches every feature. 9 in = 228.6 mm, 4 in = 101.6 mm. */
START_TEST (test_unit_answer_reaches_all)
{
  EmQuote quote;
  EmReadResult *result;

  em_quote_init (&quote);
  result = apply (&quote, "NICK 9 X 2 X 2\nCRACK 4 LG X 1 DP");
  ck_assert_str_eq (g_array_index (result->questions, EmReadQuestion, 0).code, "inch-or-mm");
  ck_assert_double_eq (value_of (&quote, 0, "length"), 9);
  em_notes_answer (result, 0, 1, &quote, -1);
  ck_assert_double_eq_tol (value_of (&quote, 0, "length"), 228.6, 1e-12);
  ck_assert_double_eq_tol (value_of (&quote, 1, "length"), 101.6, 1e-12);
  em_read_result_free (result);
  em_quote_clear (&quote);
}
END_TEST

int
main (void)
{
  TCase *tcase = tcase_create ("apply");
  int status;

  lexicon = load_lexicon ();
  tcase_add_test (tcase, test_fills_quote_and_features);
  tcase_add_test (tcase, test_first_notes_bring_their_unit);
  tcase_add_loop_test (tcase, test_every_kind_and_choice_is_known_to_the_engine, 0, 13);
  tcase_add_test (tcase, test_corrections_survive);
  tcase_add_test (tcase, test_words_gone_take_their_effect_along);
  tcase_add_test (tcase, test_corrected_feature_stays_without_its_words);
  tcase_add_test (tcase, test_rejected_stays_rejected);
  tcase_add_test (tcase, test_office_values_are_not_overwritten);
  tcase_add_test (tcase, test_unchanged_words_change_nothing);
  tcase_add_test (tcase, test_two_of_a_general_field);
  tcase_add_test (tcase, test_features_of_the_office_are_left_alone);
  tcase_add_test (tcase, test_order_follows_the_notes);
  tcase_add_test (tcase, test_answer_sets_and_survives);
  tcase_add_test (tcase, test_answered_is_not_asked_again);
  tcase_add_test (tcase, test_answer_leaves_what_the_office_typed);
  tcase_add_test (tcase, test_correction_marks_its_own_words);
  tcase_add_test (tcase, test_kind_answer_makes_the_feature);
  tcase_add_test (tcase, test_unit_answer_reaches_all);
  tcase_add_test (tcase, test_all_refused_things_are_kept);
  tcase_add_test (tcase, test_metals_of_parts);
  tcase_add_test (tcase, test_coatings_of_parts);
  status = run_suite ("notes: apply", tcase);
  em_lexicon_free (lexicon);
  return status;
}
