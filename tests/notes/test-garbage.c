/* Checks that the readers bear any bytes: random ones, no UTF-8, one line of 10 MB.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "notes-check.h"

#include <math.h>

enum { N_RANDOM = 400, RANDOM_BYTES = 600, LONG_BYTES = 10 * 1024 * 1024 };

static gboolean
is_inside (guint32 start, guint32 span, gsize length)
{
  return (gsize) start + span <= length;
}

/* Every span lies in the text, and every field is of a feature there is. One assertion for all: there may be a million. */
static void
check_result (const EmReadResult *result, gsize length)
{
  guint n_bad = 0;

  for (guint i = 0; i < result->fields->len; i++)
    {
      const EmReadField *field = &g_array_index (result->fields, EmReadField, i);

      if (field->state != EM_READ_MISSING && field->text == NULL && !isfinite (field->value))
        {
          fprintf (stderr, "%s has no value\n", field->field);
          n_bad++;
        }
      n_bad += !is_inside (field->start, field->length, length) || field->feature < 0 || field->feature > result->n_features;
    }
  for (guint i = 0; i < result->questions->len; i++)
    {
      const EmReadQuestion *question = &g_array_index (result->questions, EmReadQuestion, i);

      n_bad += !is_inside (question->start, question->length, length);
      for (int k = 0; k < question->n_answers; k++)
        n_bad += question->first_set[k] + question->n_sets[k] > result->sets->len;
    }
  for (guint i = 0; i < result->unused->len; i++)
    {
      const EmReadSpan *span = &g_array_index (result->unused, EmReadSpan, i);

      n_bad += !is_inside (span->start, span->length, length) || span->length == 0;
    }
  ck_assert_uint_eq (n_bad, 0);
}

static void
read_and_check (const EmLexicon *lexicon, const char *bytes, gsize length)
{
  g_autoptr (EmReadResult) result = em_notes_read (lexicon, bytes, length, EM_UNITS_METRIC);
  g_autofree char *tsv = em_read_result_to_tsv (result, bytes);

  check_result (result, length);
  /* What was not looked at is told; the cut lies between characters. */
  ck_assert (length <= EM_NOTES_READ_MAX ? result->n_unread == 0
             : result->n_unread >= length - EM_NOTES_READ_MAX && result->n_unread < length - EM_NOTES_READ_MAX + 4);
  ck_assert (g_utf8_validate (tsv, -1, NULL));
}

START_TEST (test_random_bytes)
{
  EmLexicon *lexicon = load_lexicon ();
  g_autoptr (GRand) random = g_rand_new_with_seed (20260101);
  char bytes[RANDOM_BYTES];

  for (int i = 0; i < N_RANDOM; i++)
    {
      for (int k = 0; k < RANDOM_BYTES; k++)
        bytes[k] = (char) g_rand_int_range (random, 0, 256);
      read_and_check (lexicon, bytes, RANDOM_BYTES);
    }
  em_lexicon_free (lexicon);
}
END_TEST

/* Words and signs that mean something, in any order. */
START_TEST (test_random_words)
{
  static const char *const words[] = {
    "NICK", "4X", "⌀", ".5", "X", "(", ")", "[", "]", "R", "12", "MM", ",", ".", ";", ":", "\n", "PER SIDE", "ON DIA", "BORE", "TYP", "1/2",
    "-", "+", "/", "°", "ADD", "STOCK", "ALL OVER", "DO NOT WELD", "THREADS", "HOLES", "ADJACENT", "MATL", "420", "H7", "SAME", "LG", "DP", "\n- ",
    "1,250", "WORN", "TO", "FROM", "IN SLOT", "EDGE", "CORNER", "BOTH LEGS", "PO", "REF", "3 X 45°", "\xc3", "\n\n", "SEVERAL", "SEAT", "DAM", "RIB",
    "BETWEEN", "AND", "300 HB", "HV", "60° INCL", "PER SIDE", "ONE", "THE OTHER", "@", "#", "SQ", "□", "FIRST", "FILL", "IT", "POS. 2", "SLOT", "WIDE",
    "CUSTOMER", "GRIND", "BOLT HOLE", "WRONG SPOT", "LENGTH:", "RADIUS:", "S⌀", "4140", "?", "400F", "±", "COAT", "ON END OF", "um",
  };
  EmLexicon *lexicon = load_lexicon ();
  g_autoptr (GRand) random = g_rand_new_with_seed (7);

  for (int i = 0; i < N_RANDOM; i++)
    {
      g_autoptr (GString) text = g_string_new (NULL);

      for (int k = 0; k < 60; k++)
        {
          g_string_append (text, words[g_rand_int_range (random, 0, G_N_ELEMENTS (words))]);
          if (g_rand_boolean (random))
            g_string_append_c (text, ' ');
        }
      read_and_check (lexicon, text->str, text->len);
    }
  em_lexicon_free (lexicon);
}
END_TEST

static const char *const repeated[] = {
  "NICK 12 X 1 X 1, ", "x", "1", "1 ", "(", "\xff", ".5 LG X ", "approx ", "R.5 legs ", "NICK 5°, ", "DO NOT WELD X. PO 1. ",
  "length: 4; ", "one 3 x 1 x 1, ", "nick: 3 @ .1 x .02, ", "hole in the wrong spot. ", "between 1 and 2 ", "300 HB, ", "finish by customer ", "wall, .3 wide slot ",
  "same, ", "bore, pin ", "1 to 2 to 3 ", "unbekannterweise ", "R.02 X 1.5 LG (3 PLCS), ",
  "nick 3 plcs per side, ", "1.5 [38.1 x ", "do not fill the ", "two of them are 1 x 2 x 3, ", "R1 or R2, ", "1. nick 2. ",
};

START_TEST (test_long_line)
{
  EmLexicon *lexicon = load_lexicon ();
  g_autofree char *bytes = g_malloc (LONG_BYTES);
  gsize n = strlen (repeated[_i]);

  for (gsize at = 0; at < LONG_BYTES; at++)
    bytes[at] = repeated[_i][at % n];
  read_and_check (lexicon, bytes, LONG_BYTES);
  em_lexicon_free (lexicon);
}
END_TEST

START_TEST (test_random_dxf)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (11);
  static const char *const lines[] = {
    "0", "SECTION", "2", "ENTITIES", "TEXT", "MTEXT", "DIMENSION", "1", "3", "42", "70", "9", "$INSUNITS", "\\S1^2;", "{\\f", "%%c", "\\U+22", "1e999", "-1", "\xff\xfe", "<>", "EOF", "",
  };

  for (int i = 0; i < N_RANDOM * 5; i++)
    {
      g_autoptr (GString) dxf = g_string_new ("0\nSECTION\n");
      g_autoptr (GError) error = NULL;
      g_autofree char *text = NULL;
      EmUnits units;
      gboolean has_units;

      for (int k = 0; k < 30; k++)
        g_string_append_printf (dxf, "%s\n", lines[g_rand_int_range (random, 0, G_N_ELEMENTS (lines))]);
      text = em_dxf_text (dxf->str, dxf->len, &units, &has_units, &error);
      ck_assert ((text != NULL) != (error != NULL));
      if (text != NULL)
        ck_assert (g_utf8_validate (text, -1, NULL));
    }
}
END_TEST

int
main (void)
{
  TCase *tcase = tcase_create ("garbage");

  tcase_add_test (tcase, test_random_bytes);
  tcase_add_test (tcase, test_random_words);
  tcase_add_loop_test (tcase, test_long_line, 0, G_N_ELEMENTS (repeated));
  tcase_add_test (tcase, test_random_dxf);
  return run_suite ("notes: garbage", tcase);
}
