/* em-token: any bytes cut into words, numbers, signs and line ends.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-token.h"

#include <string.h>

/* More digits than this are no dimension; 2^53 > 10^15, so products by 254 stay whole in 64 bits. */
enum { DIGITS_MAX = 15 };

typedef struct
{
  const char *text;
  gsize       at, length;
  guint32     line;
  GArray     *tokens;
} Splitter;

/* Letters outside ASCII that our languages use, and what they fold to. */
static const struct { gunichar from; const char *to; } folds[] = {
  { 0xe4, "ae" }, { 0xf6, "oe" }, { 0xfc, "ue" }, { 0xdf, "ss" }, { 0xe1, "a" }, { 0xe0, "a" }, { 0xe2, "a" },
  { 0xe9, "e" },  { 0xe8, "e" },  { 0xea, "e" },  { 0xed, "i" },  { 0xec, "i" }, { 0xf3, "o" }, { 0xf2, "o" },
  { 0xfa, "u" },  { 0xf9, "u" },  { 0xf1, "n" },  { 0xe7, "c" },  { 0x1e9e, "ss" }, { 0xee, "i" }, { 0xef, "i" },
  { 0xf4, "o" },  { 0xfb, "u" },  { 0xeb, "e" },  { 0x153, "oe" },
};

/* Signs that are written in several ways; ASME Y14.5 and ISO 129-1 use the first of each group. */
static const struct { gunichar from, to; } signs[] = {
  { 0x2300, 0x2300 }, { 0xd8, 0x2300 },   { 0xf8, 0x2300 },   { 0x2205, 0x2300 }, { 0x3a6, 0x2300 }, { 0x3c6, 0x2300 },
  { 0xb0, 0xb0 },     { 0xba, 0xb0 },     { 0x2da, 0xb0 },
  { 0xd7, 0xd7 },     { '*', 0xd7 },      { 0x2715, 0xd7 },
  { 0x201c, '"' },    { 0x201d, '"' },    { 0x2033, '"' },    { 0x201e, '"' },
  { 0x2018, '\'' },   { 0x2019, '\'' },   { 0x2032, '\'' },   { 0xb4, '\'' },     { '`', '\'' },
  { 0x2010, '-' },    { 0x2011, '-' },    { 0x2012, '-' },    { 0x2013, '-' },    { 0x2014, '-' },   { 0x2212, '-' },
  { 0x2044, '/' },    { 0x2215, '/' },    { 0x2248, '~' },
};

static const struct { gunichar sign; guint8 numerator, denominator; } vulgars[] = {
  { 0xbd, 1, 2 },   { 0xbc, 1, 4 },   { 0xbe, 3, 4 },   { 0x215b, 1, 8 }, { 0x215c, 3, 8 }, { 0x215d, 5, 8 },
  { 0x215e, 7, 8 }, { 0x2153, 1, 3 }, { 0x2154, 2, 3 }, { 0x2155, 1, 5 },
};

static gunichar
peek (const Splitter *s, gsize at)
{
  gunichar c;

  if (at >= s->length)
    return 0;
  if ((guchar) s->text[at] < 0x80)
    return (guchar) s->text[at];
  c = g_utf8_get_char_validated (s->text + at, (gssize) (s->length - at));
  return c == (gunichar) -1 || c == (gunichar) -2 ? 0 : c;
}

static gsize
width (gunichar c)
{
  return c < 0x80 ? 1 : c < 0x800 ? 2 : c < 0x10000 ? 3 : 4;
}

static gunichar
fold_sign (gunichar c)
{
  for (gsize i = 0; i < G_N_ELEMENTS (signs); i++)
    if (signs[i].from == c)
      return signs[i].to;
  return c;
}

static gboolean
is_word (gunichar c)
{
  if (c < 0x80)
    return g_ascii_isalpha ((char) c);
  return fold_sign (c) == c && g_unichar_isalpha (c) && c != 0xb5 && c != 0x3bc;
}

/* Appends the folded letter; FALSE when it does not fit. */
static gboolean
fold_letter (gunichar c, char *folded, gsize *n)
{
  char utf8[8];
  const char *to = utf8;
  gsize n_to;

  if (c < 0x80)
    {
      if (*n + 1 >= EM_FOLDED_MAX)
        return FALSE;
      folded[(*n)++] = c == '0' ? 'o' : g_ascii_tolower ((char) c);
      return TRUE;
    }
  c = g_unichar_tolower (c);
  utf8[g_unichar_to_utf8 (c, utf8)] = '\0';
  for (gsize i = 0; i < G_N_ELEMENTS (folds); i++)
    if (folds[i].from == c)
      to = folds[i].to;
  n_to = strlen (to);
  if (*n + n_to >= EM_FOLDED_MAX)
    return FALSE;
  memcpy (folded + *n, to, n_to);
  *n += n_to;
  return TRUE;
}

gboolean
em_token_fold (const char *text, gsize length, char folded[EM_FOLDED_MAX])
{
  Splitter s = { text, 0, length, 0, NULL };
  gsize n = 0;

  while (s.at < length)
    {
      gunichar c = fold_sign (peek (&s, s.at));

      if (c == 0 || !fold_letter (c, folded, &n))
        return FALSE;
      s.at += width (peek (&s, s.at));
    }
  folded[n] = '\0';
  return TRUE;
}

static EmToken *
add (Splitter *s, EmTokenType type, gsize start)
{
  EmToken token = { .start = (guint32) start, .length = (guint32) (s->at - start), .line = s->line, .type = type,
                    .denominator = 1 };

  if (s->tokens->len > 0)
    {
      const EmToken *last = &g_array_index (s->tokens, EmToken, s->tokens->len - 1);

      if (last->start + last->length == start && last->type != EM_TOKEN_LINE)
        token.flags |= EM_TOKEN_GLUED;
    }
  g_array_append_val (s->tokens, token);
  return &g_array_index (s->tokens, EmToken, s->tokens->len - 1);
}

/* Three letters and more follow: "W0RN", but not "R0X". */
static gboolean
is_long_word (const Splitter *s)
{
  for (gsize i = 1; i <= 2; i++)
    if (s->at + i >= s->length || !g_ascii_isalpha (s->text[s->at + i]))
      return FALSE;
  return TRUE;
}

/* "l'arête", "d'usure", "jusqu'à": an article or preposition that lost its vowel is a word of its own. "c'bore" is none. */
static gboolean
is_elided (const Splitter *s, gsize start)
{
  gsize n = s->at - start;
  char last = s->at > start ? g_ascii_tolower (s->text[s->at - 1]) : 0;

  return n == 1 ? last == 'l' || last == 'd' : n > 1 && last == 'u' && g_ascii_tolower (s->text[s->at - 2]) == 'q';
}

static void
split_word (Splitter *s)
{
  gsize start = s->at;
  gboolean has_lower = FALSE, is_end = FALSE, is_capital = g_unichar_isupper (peek (s, s->at));
  gunichar c;
  EmToken *token;

  while (!is_end && (c = peek (s, s->at)) != 0)
    {
      gboolean is_apostrophe = s->at > start && fold_sign (c) == '\'' && is_word (peek (s, s->at + width (c)));
      /* "C0RNER": a nought among letters is a letter O that was misread or mistyped. */
      gboolean is_nought = c == '0' && s->at > start && s->at + 1 < s->length && g_ascii_isalpha (s->text[s->at - 1]) &&
                           g_ascii_isalpha (s->text[s->at + 1]) &&
                           (s->at - start > 1 || is_long_word (s));
      /* "Søren": within a word it is a letter and no sign of a diameter. */
      gboolean is_letter = (c == 0xf8 || c == 0xd8) && s->at > start && is_word (peek (s, s->at + width (c)));

      if (!is_word (c) && !is_apostrophe && !is_nought && !is_letter)
        break;
      has_lower |= g_unichar_islower (c);
      is_end = is_apostrophe && is_elided (s, start);
      s->at += width (c);
    }
  token = add (s, EM_TOKEN_WORD, start);
  token->flags |= (is_capital ? EM_TOKEN_CAPITAL : 0) | (has_lower ? 0 : EM_TOKEN_UPPER);
}

/* The letter O among digits, "5O-52", is a zero that was misread or mistyped. */
static gboolean
is_letter_zero (const Splitter *s, gsize at)
{
  return at > 0 && (s->text[at] == 'O' || s->text[at] == 'o') && g_ascii_isdigit (s->text[at - 1]) &&
         (at + 1 >= s->length || !g_ascii_isalpha (s->text[at + 1]));
}

static gsize
count_digits (const Splitter *s, gsize at)
{
  gsize n = 0;

  while (at + n < s->length && (g_ascii_isdigit (s->text[at + n]) || (n > 0 && is_letter_zero (s, at + n))))
    n++;
  return n;
}

/* Digits with at most one decimal mark. A comma is a decimal mark too (ISO 129-1); "1,250" may also be
 * thousands and is flagged. Further marks end the number, but "1,250,000" and "1.250,5" are no dimension: junk. */
static void
split_number (Splitter *s)
{
  gsize start = s->at, n_whole = count_digits (s, s->at), n_decimals = 0, at = s->at + n_whole;
  gboolean is_comma = FALSE, has_letter = FALSE;
  EmToken *token;
  guint64 value = 0, scale = 1;

  if (at < s->length && (s->text[at] == '.' || s->text[at] == ','))
    {
      n_decimals = count_digits (s, at + 1);
      if (n_whole == 0 && n_decimals > 0 && s->text[at] == ',')
        is_comma = TRUE;
      else
        is_comma = n_decimals > 0 && s->text[at] == ',';
    }
  s->at = n_decimals > 0 ? at + 1 + n_decimals : at;
  if (n_whole + n_decimals > DIGITS_MAX)
    {
      add (s, EM_TOKEN_JUNK, start);
      return;
    }
  for (gsize i = start; i < s->at; i++)
    if (g_ascii_isdigit (s->text[i]))
      value = value * 10 + (guint64) (s->text[i] - '0');
    else if (g_ascii_isalpha (s->text[i]))
      {
        value = value * 10;
        has_letter = TRUE;
      }
  for (gsize i = 0; i < n_decimals; i++)
    scale *= 10;
  token = add (s, EM_TOKEN_NUMBER, start);
  token->numerator = value;
  token->denominator = scale;
  token->n_decimals = (guint8) n_decimals;
  token->flags |= n_decimals > 0 ? EM_TOKEN_DECIMAL : 0;
  token->flags |= has_letter ? EM_TOKEN_SLIP : 0;
  token->flags |= is_comma ? EM_TOKEN_COMMA : 0;
  token->flags |= n_whole == 0 && !is_comma ? EM_TOKEN_LEADING_DOT : 0;
  token->flags |= n_decimals > 0 && n_whole == 1 && s->text[start] == '0' ? EM_TOKEN_LEADING_ZERO : 0;
  token->flags |= is_comma && n_decimals == 3 && n_whole >= 1 && n_whole <= 3 && s->text[start] != '0' ? EM_TOKEN_THREE : 0;
}

static gboolean
begins_number (const Splitter *s)
{
  char c = s->text[s->at];

  if (g_ascii_isdigit (c))
    return TRUE;
  /* ".5" but not the point in "12.5.3" or at the end of a sentence; ",5" only after a blank. */
  if ((c == '.' || c == ',') && count_digits (s, s->at + 1) > 0)
    return s->at == 0 || !g_ascii_isdigit (s->text[s->at - 1]);
  return FALSE;
}

/* "+/-", "%%c" (drawing files' own codes), "''": several characters that are one sign. */
static gboolean
split_compound (Splitter *s)
{
  static const struct { const char *text; gunichar sign; } compounds[] = {
    { "+/-", 0xb1 }, { "+-", 0xb1 }, { "%%c", 0x2300 }, { "%%C", 0x2300 }, { "%%d", 0xb0 }, { "%%D", 0xb0 },
    { "%%p", 0xb1 }, { "%%P", 0xb1 }, { "''", '"' },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (compounds); i++)
    {
      gsize n = strlen (compounds[i].text);

      if (s->length - s->at >= n && memcmp (s->text + s->at, compounds[i].text, n) == 0)
        {
          s->at += n;
          add (s, EM_TOKEN_SIGN, s->at - n)->sign = compounds[i].sign;
          return TRUE;
        }
    }
  return FALSE;
}

/* "58..60": points between digits mean what a dash does. */
static gboolean
split_points (Splitter *s)
{
  gsize start = s->at, n = 0;

  while (start + n < s->length && s->text[start + n] == '.')
    n++;
  if (n < 2 || n > 3 || start == 0 || !g_ascii_isdigit (s->text[start - 1]) || count_digits (s, start + n) == 0)
    return FALSE;
  s->at += n;
  add (s, EM_TOKEN_SIGN, start)->sign = '-';
  return TRUE;
}

static void
split_sign (Splitter *s, gunichar c)
{
  gsize start = s->at;
  EmToken *token;

  s->at += width (c);
  for (gsize i = 0; i < G_N_ELEMENTS (vulgars); i++)
    if (vulgars[i].sign == c)
      {
        token = add (s, EM_TOKEN_NUMBER, start);
        token->numerator = vulgars[i].numerator;
        token->denominator = vulgars[i].denominator;
        token->flags |= EM_TOKEN_VULGAR;
        return;
      }
  token = add (s, EM_TOKEN_SIGN, start);
  token->sign = fold_sign (c);
}

/* A run of bytes that mean nothing is one token, so that garbage stays small. */
static void
split_junk (Splitter *s)
{
  gsize start = s->at;

  while (s->at < s->length)
    {
      gunichar c = peek (s, s->at);

      if (c >= 0x20 || c == '\n' || c == '\r' || c == '\t')
        break;
      s->at++;
    }
  add (s, EM_TOKEN_JUNK, start);
}

static void
split_line (Splitter *s)
{
  gsize start = s->at;

  if (s->text[s->at] == '\r' && s->at + 1 < s->length && s->text[s->at + 1] == '\n')
    s->at++;
  s->at++;
  add (s, EM_TOKEN_LINE, start);
  s->line++;
}

GArray *
em_token_split (const char *text, gsize length)
{
  Splitter s = { text, 0, length, 1, g_array_new (FALSE, FALSE, sizeof (EmToken)) };

  if (length >= 3 && memcmp (text, "\xef\xbb\xbf", 3) == 0)
    s.at = 3;
  while (s.at < length)
    {
      gunichar c = peek (&s, s.at);

      if (c == '\n' || c == '\r' || c == 0x2028)
        {
          if (c == 0x2028)
            s.at += 2;
          split_line (&s);
        }
      else if (c == ' ' || c == '\t' || (c >= 0x80 && g_unichar_isspace (c)) || c == 0x200b || c == 0xad)
        s.at += width (c);
      else if (c < 0x20)
        split_junk (&s);
      else if (is_word (c))
        split_word (&s);
      else if (begins_number (&s))
        split_number (&s);
      else if (!split_points (&s) && !split_compound (&s))
        split_sign (&s, c);
    }
  return s.tokens;
}
