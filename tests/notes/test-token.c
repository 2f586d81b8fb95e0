/* Checks of notes/em-token and notes/em-slip.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-slip.h"
#include "em-token.h"
#include "notes-check.h"

/* Tokens as one letter each: w word, n number, s sign, l line, j junk. */
static const struct { const char *text, *types; } splits[] = {
  { "", "" },
  { "R.03", "wn" },
  { "4X ⌀.500", "nwsn" },
  { "12x1.5", "nwn" },
  { "58..60", "nsn" },
  { "58...60", "nsn" },
  { "a\r\nb\rc\nd", "wlwlwlw" },
  { "+/-.002", "sn" },
  { "%%c12", "sn" },
  { "1½", "nn" },
  { "don't", "w" },
  { "l'arête", "ww" },              /* French: the article is a word of its own */
  { "jusqu’à", "ww" },
  { "D'USURE", "ww" },
  { "c'bore", "w" },
  { "c'est", "w" },
  { "I'd", "w" },
  { "P20", "wn" },
  { "\xff\xfe", "j" },
  { "a\x01" "b", "wjw" },
  { "µm", "sw" },
  { "1234567890123456", "j" },      /* 16 digits: no dimension */
  { "12.5.3", "nsn" },
  { "\xef\xbb\xbfx", "w" },         /* byte order mark */
  { "C0RNER", "w" },                /* a nought among letters */
  { "R0.5", "wn" },
  { "20x0L", "nwnw" },
};

START_TEST (test_split)
{
  g_autoptr (GArray) tokens = em_token_split (splits[_i].text, strlen (splits[_i].text));

  ck_assert_msg (tokens->len == strlen (splits[_i].types), "“%s”: %u tokens", splits[_i].text, tokens->len);
  for (guint i = 0; i < tokens->len; i++)
    ck_assert_int_eq ("wnslj"[g_array_index (tokens, EmToken, i).type], splits[_i].types[i]);
}
END_TEST

/* Values exactly as written, as fractions of whole numbers. Marks: ASME Y14.5 writes ".5" for inch, ISO 129-1 "0,5". */
static const struct { const char *text; guint64 n, d; guint flags; } numbers[] = {
  { ".030", 30, 1000, EM_TOKEN_LEADING_DOT | EM_TOKEN_DECIMAL },
  { "0.5", 5, 10, EM_TOKEN_LEADING_ZERO | EM_TOKEN_DECIMAL },
  { "0,5", 5, 10, EM_TOKEN_LEADING_ZERO | EM_TOKEN_DECIMAL | EM_TOKEN_COMMA },
  { "12", 12, 1, 0 },
  { "1,250", 1250, 1000, EM_TOKEN_DECIMAL | EM_TOKEN_COMMA | EM_TOKEN_THREE },
  { "12.", 12, 1, 0 },
  { "¾", 3, 4, EM_TOKEN_VULGAR },
  { "5O", 50, 1, EM_TOKEN_SLIP },   /* the letter O among digits */
};

START_TEST (test_number)
{
  g_autoptr (GArray) tokens = em_token_split (numbers[_i].text, strlen (numbers[_i].text));
  const EmToken *token = &g_array_index (tokens, EmToken, 0);

  ck_assert_msg (token->numerator == numbers[_i].n && token->denominator == numbers[_i].d && token->flags == numbers[_i].flags,
                 "“%s”: %" G_GUINT64_FORMAT "/%" G_GUINT64_FORMAT " flags %u", numbers[_i].text, token->numerator, token->denominator, token->flags);
}
END_TEST

START_TEST (test_fold)
{
  char folded[EM_FOLDED_MAX];

  ck_assert (em_token_fold ("FLÄCHE", strlen ("FLÄCHE"), folded));
  ck_assert_str_eq (folded, "flaeche");
  ck_assert (em_token_fold ("diámetro", strlen ("diámetro"), folded));
  ck_assert_str_eq (folded, "diametro");
  ck_assert (em_token_fold ("schließen", strlen ("schließen"), folded));
  ck_assert_str_eq (folded, "schliessen");
  ck_assert (em_token_fold ("ABÎMÉ", strlen ("ABÎMÉ"), folded));
  ck_assert_str_eq (folded, "abime");
  ck_assert (em_token_fold ("tôle", strlen ("tôle"), folded));
  ck_assert_str_eq (folded, "tole");
  ck_assert (em_token_fold ("œil", strlen ("œil"), folded));
  ck_assert_str_eq (folded, "oeil");
  ck_assert (!em_token_fold ("aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa", 50, folded));
}
END_TEST

/* One slip in a word of five letters or more, not the first letter; of four letters only a swap. */
static const struct { const char *word; guint32 atom; } slips[] = {
  { "cornr", 1 }, { "cornner", 1 }, { "cornor", 1 }, { "cronet", 0 }, { "conrer", 1 }, { "borner", 0 }, { "croner", 1 },
  { "corn", 0 },  { "boer", 2 },    { "bord", 0 },   { "corner", 1 },
};

START_TEST (test_slip)
{
  EmSlips *known = em_slips_new ();
  guint32 atom;

  em_slips_add (known, "corner", 1);
  em_slips_add (known, "bore", 2);
  /* The word itself is known and never a slip. */
  atom = strcmp (slips[_i].word, "corner") == 0 ? 1 : em_slips_find (known, slips[_i].word);
  em_slips_free (known);
  ck_assert_msg (atom == slips[_i].atom, "“%s”: %u", slips[_i].word, atom);
}
END_TEST

int
main (void)
{
  TCase *tcase = tcase_create ("token");

  tcase_add_loop_test (tcase, test_split, 0, G_N_ELEMENTS (splits));
  tcase_add_loop_test (tcase, test_number, 0, G_N_ELEMENTS (numbers));
  tcase_add_test (tcase, test_fold);
  tcase_add_loop_test (tcase, test_slip, 0, G_N_ELEMENTS (slips));
  return run_suite ("notes: token", tcase);
}
