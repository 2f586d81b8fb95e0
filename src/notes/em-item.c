/* em-item: tokens grouped into phrases of the lexicon, sizes and signs.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-item.h"

#include "em-steel.h"

#include <math.h>
#include <string.h>

typedef struct
{
  EmItems *items;
  GArray  *tokens;
  int      language; /* of most of the words; −1: of none */
} Builder;

/* What one inch, etc. is in mm, as a whole fraction: exact (NIST SP 811, appendix B). */
static const EmFraction unit_scale[EM_N_UNIT] = {
  [EM_UNIT_NONE] = { 1, 1 },       [EM_UNIT_MM] = { 1, 1 },         [EM_UNIT_CM] = { 10, 1 },        [EM_UNIT_METRE] = { 1000, 1 },
  [EM_UNIT_UM] = { 1, 1000 },      [EM_UNIT_TENTH_MM] = { 1, 10 },   [EM_UNIT_HUNDREDTH_MM] = { 1, 100 },
  [EM_UNIT_INCH] = { 254, 10 },    [EM_UNIT_THOU] = { 254, 10000 },
  [EM_UNIT_FOOT] = { 3048, 10 },   [EM_UNIT_DEGREE] = { 1, 1 },     [EM_UNIT_MM2] = { 1, 1 },
  [EM_UNIT_CM2] = { 100, 1 },      [EM_UNIT_INCH2] = { 64516, 100 },[EM_UNIT_HRC] = { 1, 1 },
  [EM_UNIT_HB] = { 1, 1 },         [EM_UNIT_HV] = { 1, 1 },         [EM_UNIT_OTHER] = { 1, 1 },
};

/* Roles of a size that can be given as a range: "1 to 3 deep". */
static const guint32 ranged_roles = EM_ROLE_LENGTH | EM_ROLE_WIDTH | EM_ROLE_HEIGHT | EM_ROLE_DEPTH | EM_ROLE_THICKNESS |
                                    EM_ROLE_GAP;

/* A worn diameter is nearer to the finished one than this. */
static const double far_ratio = 1.3;

/* The bounds of what to add are no farther apart. */
static const double close_ratio = 2;

/* Colder than this nobody heats a tool: "5F" is something else. */
enum { WIDE_GAP = 2 /* blanks that part columns */, PHRASE_MAX = 8 /* tokens; the lexicon has no longer ones */, TEMPERATURE_MIN = 30, LEAST_HARDNESS = 10 /* told in words, HRC */,
       LEAST_PARTED = 5 /* no range leads from decimals to more than that without any (common practice, no source) */ };

/* HRC, as steels are ordered (common practice, no source). */
enum { PAIR_MIN = 24, PAIR_MAX = 66, PAIR_STEP = 4 };

gboolean
em_item_is_word (const EmItems *items, guint index, const char *word)
{
  const EmItem *item = index < items->items->len ? em_item (items, index) : NULL;

  return item != NULL && item->length == strlen (word) && g_ascii_strncasecmp (items->text + item->start, word, item->length) == 0;
}

gboolean
em_item_is_any_word_of (const EmItems *items, guint index, const char *const *words, gsize n_words)
{
  for (gsize k = 0; k < n_words; k++)
    if (em_item_is_word (items, index, words[k]))
      return TRUE;
  return FALSE;
}

double
em_fraction_plain (EmFraction value)
{
  return value.d == 0 ? (double) NAN : (double) value.n / (double) value.d;
}

/* One division of whole numbers, so the result is the double nearest to the exact value while both stay below 2^53. */
double
em_fraction_in_mm (EmFraction value, EmUnit unit)
{
  EmFraction scale = unit_scale[unit];

  if (value.d == 0)
    return (double) NAN;
  if (unit == EM_UNIT_HB || unit == EM_UNIT_HV)
    return (unit == EM_UNIT_HB ? em_steel_hb_to_hrc : em_steel_hv_to_hrc) (em_fraction_plain (value)).value;
  return ((double) value.n * (double) scale.n) / ((double) value.d * (double) scale.d);
}

static const EmToken *
token_at (const Builder *b, guint at)
{
  static const EmToken end = { .type = EM_TOKEN_LINE };

  return at < b->tokens->len ? &g_array_index (b->tokens, EmToken, at) : &end;
}

static gboolean
is_sign (const Builder *b, guint at, gunichar sign)
{
  return token_at (b, at)->type == EM_TOKEN_SIGN && token_at (b, at)->sign == sign;
}

static gboolean
is_glued (const Builder *b, guint at)
{
  return (token_at (b, at)->flags & EM_TOKEN_GLUED) != 0;
}

static gboolean
is_number (const Builder *b, guint at)
{
  return token_at (b, at)->type == EM_TOKEN_NUMBER;
}

static gboolean
is_whole (const Builder *b, guint at)
{
  return is_number (b, at) && token_at (b, at)->denominator == 1;
}

static gboolean
is_behind_gap (const Builder *b, guint at)
{
  const EmToken *before = token_at (b, at - 1);

  if (token_at (b, at)->start >= before->start + before->length + WIDE_GAP)
    return TRUE;
  for (guint32 i = before->start + before->length; i < token_at (b, at)->start; i++)
    if (b->items->text[i] == '\t')
      return TRUE;
  return FALSE;
}

/* How many tokens from at a phrase may have: a tab or a wide gap parts columns, "Soll<tab>Ist". */
static guint
n_in_cell (const Builder *b, guint at)
{
  guint n = 1;

  while (n < PHRASE_MAX && at + n < b->tokens->len && !is_behind_gap (b, at + n))
    n++;
  return n;
}

static const EmPhrase *
match (const Builder *b, guint at, guint *out_n)
{
  *out_n = 0;
  if (at >= b->tokens->len)
    return NULL;
  return em_lexicon_match (b->items->lexicon, b->language, token_at (b, at), n_in_cell (b, at), out_n);
}

/* Inch drawings divide by powers of two; a few others are met by hand. */
static gboolean
is_divisor (guint64 d)
{
  return d == 2 || d == 3 || d == 4 || d == 5 || d == 8 || d == 16 || d == 32 || d == 64 || d == 128;
}

/* "30/32", "54/56": no fraction of an inch is written so, but the hardness of a steel is. */
static gboolean
is_pair_of_hardness (const Builder *b, guint at)
{
  guint64 low, high;

  if (!is_whole (b, at) || !is_sign (b, at + 1, '/') || !is_whole (b, at + 2) || !is_glued (b, at + 1) || !is_glued (b, at + 2) ||
      (is_sign (b, at + 3, '/') && is_glued (b, at + 3)))
    return FALSE;
  low = token_at (b, at)->numerator;
  high = token_at (b, at + 2)->numerator;
  return low >= PAIR_MIN && high <= PAIR_MAX && high > low && high - low <= PAIR_STEP && high % 2 == low % 2;
}

/* "3/4" at at: three glued tokens, not part of a date. */
static gboolean
is_slash_fraction (const Builder *b, guint at)
{
  return is_whole (b, at) && is_sign (b, at + 1, '/') && is_whole (b, at + 2) && is_glued (b, at + 1) &&
         is_glued (b, at + 2) && token_at (b, at)->numerator < token_at (b, at + 2)->numerator &&
         is_divisor (token_at (b, at + 2)->numerator) && !is_pair_of_hardness (b, at) &&
         !(is_sign (b, at + 3, '/') && is_glued (b, at + 3) && is_number (b, at + 4));
}

/* "-20" of "1/4-20": the threads per inch of the unified series (ASME B1.1: 4 1/2 to 80), glued to the size before it. */
static gboolean
is_pitch (const Builder *b, guint at)
{
  return is_sign (b, at, '-') && is_glued (b, at) && is_whole (b, at + 1) && is_glued (b, at + 1) &&
         token_at (b, at + 1)->numerator >= 5 && token_at (b, at + 1)->numerator <= 80 &&
         !(is_sign (b, at + 2, '/') && is_glued (b, at + 2));
}

/* "1/4-20", "#10-32": the name of a thread. Returns the token after it, or at. */
static guint
skip_thread (const Builder *b, guint at)
{
  if (is_slash_fraction (b, at) && is_pitch (b, at + 3))
    return at + 5;
  return at > 0 && is_sign (b, at - 1, '#') && is_glued (b, at) && is_whole (b, at) && is_pitch (b, at + 1) ? at + 3 : at;
}

static EmFraction
fraction_of (const Builder *b, guint at)
{
  EmFraction f = { token_at (b, at)->numerator, token_at (b, at)->denominator };

  return f;
}

/* The number itself: "12.5", "3/4", "1-1/4", "3 1/2", "1½". Returns the token after it. */
static guint
read_number (const Builder *b, guint at, EmSize *size)
{
  const EmToken *token = token_at (b, at);
  guint part = at + 1;
  EmFraction f;

  size->value = fraction_of (b, at);
  size->flags = token->flags;
  size->n_decimals = token->n_decimals;
  size->is_whole = token->denominator == 1;
  size->is_fraction = (token->flags & EM_TOKEN_VULGAR) != 0;
  if (is_slash_fraction (b, at))
    {
      size->value.d = token_at (b, at + 2)->numerator;
      size->is_fraction = TRUE;
      size->is_whole = FALSE;
      return at + 3;
    }
  if (!size->is_whole || size->value.n > 1000)
    return at + 1;
  if (is_sign (b, part, '-') && is_glued (b, part) && is_glued (b, part + 1))
    part++;
  if (is_number (b, part) && (token_at (b, part)->flags & EM_TOKEN_VULGAR) != 0)
    {
      f = fraction_of (b, part);
      part += 1;
    }
  else if (is_slash_fraction (b, part) && (part == at + 2 || !is_glued (b, part)) &&
           !(part == at + 1 && is_pitch (b, part + 3)) /* "2 5/16-18 holes" */)
    {
      f.n = token_at (b, part)->numerator;
      f.d = token_at (b, part + 2)->numerator;
      part += 3;
    }
  else
    return at + 1;
  size->value.n = size->value.n * f.d + f.n;
  size->value.d = f.d;
  size->is_fraction = TRUE;
  size->is_whole = FALSE;
  return part;
}

/* "R0.2 in 60 mm": two sizes, and the second is in millimetres. */
static gboolean
leads_to_mm (const Builder *b, guint at)
{
  guint n;
  const EmSense *unit = is_number (b, at) ? em_phrase_find (match (b, at + 1, &n), EM_SAYS_UNIT) : NULL;

  return unit != NULL && (unit->unit == EM_UNIT_MM || unit->unit == EM_UNIT_CM);
}

/* "in" is also a preposition: no unit before a word that names a place or thing. */
static gboolean
is_preposition (const Builder *b, guint at, guint n, const EmPhrase *phrase)
{
  const EmPhrase *next;
  guint n_next;

  /* German "um 0,12": by how much. */
  if (em_phrase_find (phrase, EM_SAYS_UNIT)->unit == EM_UNIT_UM && is_number (b, at + n))
    return TRUE;
  if (em_phrase_find (phrase, EM_SAYS_PREPOSITION) == NULL || is_glued (b, at))
    return FALSE;
  if (is_sign (b, at + n, '.'))
    return FALSE;
  if (leads_to_mm (b, at + n))
    return TRUE;
  next = match (b, at + n, &n_next);
  return em_phrase_find (next, EM_SAYS_KIND) != NULL || em_phrase_find (next, EM_SAYS_PLACE) != NULL ||
         (em_phrase_find (next, EM_SAYS_GLUE) != NULL && em_phrase_find (next, EM_SAYS_LABEL) == NULL /* "1/4 in small" */);
}

/* "300 HV10", "353 HBW 10/3000": ball and load of a hardness test. */
static guint
skip_load (const Builder *b, guint at)
{
  if (is_whole (b, at) && is_sign (b, at + 1, '/') && is_whole (b, at + 2))
    return at + 3;
  return is_whole (b, at) && is_glued (b, at) ? at + 1 : at;
}

/* The unit at at, if any: returns the token after it. */
/* "1.5 mm. 2x blade", "18 mm. 2. flank": a count, or the number of a list, that begins what is next. */
static gboolean
is_times_count (const Builder *b, guint at)
{
  guint n;

  if (is_whole (b, at) && (is_sign (b, at + 1, '.') || is_sign (b, at + 1, ')')) && is_glued (b, at + 1) &&
      !is_glued (b, at + 2) &&
      token_at (b, at + 2)->type == EM_TOKEN_WORD)
    return TRUE;
  return is_whole (b, at) && is_glued (b, at + 1) && em_phrase_find (match (b, at + 1, &n), EM_SAYS_TIMES) != NULL &&
         !is_glued (b, at + 1 + n);
}

/* "12 mm. pocket 9 wide": a noun of a repair begins the next sentence. */
static gboolean
is_only_noun (const Builder *b, guint at)
{
  guint n;
  const EmPhrase *phrase = match (b, at, &n);

  return em_phrase_find (phrase, EM_SAYS_KIND) != NULL && em_phrase_find (phrase, EM_SAYS_LABEL) == NULL;
}

/* "25 mm. 4 cores": how many there are begins the next sentence. */
static gboolean
is_counted_thing (const Builder *b, guint at)
{
  guint n;
  const EmPhrase *phrase = is_whole (b, at) && !is_glued (b, at + 1) ? match (b, at + 1, &n) : NULL;

  return phrase != NULL && (em_phrase_find (phrase, EM_SAYS_KIND) != NULL || em_phrase_find (phrase, EM_SAYS_PLACE) != NULL) &&
         em_phrase_find (phrase, EM_SAYS_LABEL) == NULL;
}

/* "8 M6 holes", "LG 40 M": a metre is written small and by itself. */
static gboolean
is_no_metre (const Builder *b, guint at)
{
  const EmToken *token = token_at (b, at);
  guint n;
  const EmSense *label = em_phrase_find (match (b, at + 1, &n), EM_SAYS_LABEL);
  gboolean is_capital = (token->flags & (EM_TOKEN_UPPER | EM_TOKEN_CAPITAL)) != 0;

  /* "1.2 M LONG" */
  if (is_capital && label != NULL && label->roles == EM_ROLE_LENGTH && label->place == EM_LABEL_AFTER && !is_glued (b, at + 1))
    return FALSE;
  return token->length == 1 && (is_capital || is_glued (b, at + 1)) && token_at (b, at + 1)->type != EM_TOKEN_LINE &&
         !is_sign (b, at + 1, ',') && !is_sign (b, at + 1, '.') && !is_sign (b, at + 1, ';') && !is_sign (b, at + 1, ')');
}

static guint
read_unit (const Builder *b, guint at, EmUnit *out_unit)
{
  const EmPhrase *phrase;
  const EmSense *sense;
  guint n;

  if (is_sign (b, at, '"') && is_glued (b, at))
    {
      *out_unit = EM_UNIT_INCH;
      return at + 1;
    }
  if (is_sign (b, at, 0xb0))
    {
      /* Minutes of arc are below what a repair can tell; degrees stand alone. */
      *out_unit = EM_UNIT_DEGREE;
      return at + 1;
    }
  phrase = match (b, at, &n);
  sense = em_phrase_find (phrase, EM_SAYS_UNIT);
  if (sense == NULL && is_sign (b, at, '-') && is_glued (b, at))
    {
      phrase = match (b, at + 1, &n);
      sense = em_phrase_find (phrase, EM_SAYS_UNIT);
      n++;
    }
  if (sense == NULL || is_preposition (b, at, n, phrase) || (sense->unit == EM_UNIT_METRE && is_no_metre (b, at)))
    return at;
  *out_unit = sense->unit;
  at += n;
  if (sense->unit == EM_UNIT_HB || sense->unit == EM_UNIT_HV)
    return skip_load (b, at);
  /* "in." and "mm.": the point belongs to the unit unless a sentence ends there. */
  if (is_sign (b, at, '.') && is_glued (b, at) && token_at (b, at + 1)->type != EM_TOKEN_LINE &&
      !em_unit_is_hardness (sense->unit) &&
      sense->unit != EM_UNIT_DEGREE && (token_at (b, at + 1)->flags & EM_TOKEN_CAPITAL) == 0 && !is_times_count (b, at + 1) &&
      !is_only_noun (b, at + 1) && !is_counted_thing (b, at + 1))
    at++;
  return at;
}

/* "±.002", "+.002/-.000", "+0.1": a tolerance says how exact, not how large. */
static guint
read_tolerance (const Builder *b, guint at, EmUnit *out_unit)
{
  EmUnit unit;

  /* "47±1 HRC": the unit of both. */
  if (is_sign (b, at, 0xb1) && is_number (b, at + 1))
    return read_unit (b, at + 2, *out_unit == EM_UNIT_NONE ? out_unit : &unit);
  while ((is_sign (b, at, '+') || is_sign (b, at, '-')) && is_number (b, at + 1) && is_glued (b, at + 1) &&
         (is_sign (b, at, '+') || !is_glued (b, at) || is_sign (b, at - 1, '/')))
    {
      const EmToken *number = token_at (b, at + 1);

      /* "- 12 x 3" is a dash; a lower tolerance is small or nothing. */
      if (is_sign (b, at, '-') && number->numerator > number->denominator)
        break;
      at = read_unit (b, at + 2, &unit);
      if (is_sign (b, at, '/') && (is_sign (b, at + 1, '-') || is_sign (b, at + 1, '+')))
        at++;
      else if (is_sign (b, at, '/') && is_number (b, at + 1) && token_at (b, at + 1)->numerator == 0)
        return at + 2;
    }
  return at;
}

/* "8 M6 holes": threads (ISO 261), as many as stand before them; "10 m6" is a fit. */
static gboolean
is_counted_thread (const Builder *b, guint at)
{
  guint n;
  const EmPhrase *noun = match (b, at + 2, &n);

  return token_at (b, at)->length == 1 && g_ascii_toupper (b->items->text[token_at (b, at)->start]) == 'M' && !is_glued (b, at) &&
         (em_phrase_find (noun, EM_SAYS_KIND) != NULL || em_phrase_find (noun, EM_SAYS_THING) != NULL);
}

/* "H7" right after a size is a fit (ISO 286), not a steel. */
static guint
read_fit (const Builder *b, guint at)
{
  const EmToken *letter = token_at (b, at);
  guint n;

  if (letter->type != EM_TOKEN_WORD || letter->length > 2 || !is_whole (b, at + 1) || !is_glued (b, at + 1) ||
      token_at (b, at + 1)->numerator < 4 || token_at (b, at + 1)->numerator > 10 || is_counted_thread (b, at))
    return at;
  return em_phrase_find (em_lexicon_match (b->items->lexicon, b->language, letter, 1, &n), EM_SAYS_FIT) != NULL ? at + 2 : at;
}

static gboolean
less (EmFraction a, EmFraction b)
{
  return em_fraction_plain (a) < em_fraction_plain (b);
}

/* Makes size a range from itself to second; its value is the middle. FALSE when the products would leave 64 bits. */
static gboolean
set_limits (EmSize *size, EmFraction second)
{
  const guint64 most = 10000000;  /* no dimension has more digits */
  EmFraction first = size->value;

  if (first.n > most || second.n > most || first.d > most || second.d > most)
    return FALSE;
  size->low = less (first, second) ? first : second;
  size->high = less (first, second) ? second : first;
  size->value.n = size->low.n * size->high.d + size->high.n * size->low.d;
  size->value.d = 2 * size->low.d * size->high.d;
  size->reason = "range-middle";
  size->is_whole = FALSE;
  return TRUE;
}

/* Roles of a label at at that follows its size: "deep". */
static guint32
roles_after (const Builder *b, guint at)
{
  guint n;
  const EmPhrase *phrase = match (b, at, &n);
  guint32 roles = 0;

  for (guint k = 0; phrase != NULL && k < phrase->n_senses; k++)
    if (phrase->sense[k]->says == EM_SAYS_LABEL && phrase->sense[k]->place == EM_LABEL_AFTER)
      roles |= phrase->sense[k]->roles;
  return roles;
}

/* ".003/.005": the second the larger of two as small and as fine, and no columns of a table. */
static gboolean
is_fine_slash (const Builder *b, guint at, guint next, const EmSize *first, const EmSize *second)
{
  const double small = 1, most = 2.5;
  double ratio = em_fraction_plain (second->value) / em_fraction_plain (first->value);

  return em_fraction_plain (second->value) < small && ratio > 1 && ratio <= most && first->n_decimals == second->n_decimals &&
         !is_sign (b, next, '/') && (at < 2 || !is_sign (b, at - 2, '/'));
}

/* "bore dia / .7500 / .7535": a slash between blanks parts columns where another stands before its first number. */
static gboolean
is_column_slash (const Builder *b, guint slash)
{
  return slash >= 2 && !is_glued (b, slash) && !is_glued (b, slash + 1) && is_sign (b, slash - 2, '/') && !is_glued (b, slash - 2) &&
         !is_glued (b, slash - 1);
}

/* "R0.2-R0.4": the R of the first once more behind the dash. */
static gboolean
is_same_sign (const Builder *b, guint at)
{
  const EmToken *sign = token_at (b, at + 1), *first = at >= 2 ? token_at (b, at - 2) : sign;

  return at >= 2 && is_number (b, at + 2) && is_glued (b, at + 2) && is_glued (b, at - 1) && sign->length == first->length && sign->length == 1 &&
         g_ascii_tolower (b->items->text[sign->start]) == 'r' && g_ascii_tolower (b->items->text[first->start]) == 'r';
}

/* "0.3-0.5", ".498/.502", ".003/.005", "1-3 DEEP": limits of one size; the value is their middle. Returns the token after them. */
static guint
read_limits (const Builder *b, guint at, EmSize *size)
{
  gboolean is_slash = is_sign (b, at, '/'), is_dash = is_sign (b, at, '-') || is_sign (b, at, '~'), is_named, is_fine;
  EmSize second = { 0 };
  EmUnit unit;
  double ratio, ratio_max;
  guint next, number = at + 1 + (is_dash && is_same_sign (b, at));

  if ((!is_slash && !is_dash) || !is_number (b, number) || size->value.n == 0 || (is_slash && is_column_slash (b, at)))
    return at;
  if (is_dash && is_glued (b, at) != is_glued (b, at + 1))
    return at;
  next = read_number (b, number, &second);
  /* "now 16.3 - 20 deep": the dash parts two sizes. */
  if (is_dash && !is_glued (b, at) && size->n_decimals > 0 && second.is_whole && second.value.n >= LEAST_PARTED)
    return at;
  is_named = (roles_after (b, next) & ranged_roles) != 0 || read_unit (b, next, &unit) != next;
  ratio = em_fraction_plain (second.value) / em_fraction_plain (size->value);
  /* "0.4-1.2", "1-3 mm" are nothing else; "1-3" may be numbers of items. */
  ratio_max = is_dash && ((size->n_decimals > 0 && second.n_decimals > 0) || is_named) ? 10 : 2.5;
  if (second.is_fraction || size->is_fraction || ratio <= 1 / 2.5 || ratio >= ratio_max)
    return at;
  if (is_slash && !is_pair_of_hardness (b, at - 1) && (second.n_decimals == 0 || size->n_decimals == 0 || ratio < 0.95 || ratio > 1.05) &&
      !is_fine_slash (b, at, next, size, &second))
    return at;
  /* "1.5000-1.4990" */
  is_fine = ratio >= 0.95 && ratio < 1 && size->n_decimals >= 3 && second.n_decimals == size->n_decimals;
  if (is_dash && !is_fine && (ratio <= 1 || (!is_named && second.n_decimals != size->n_decimals &&
                                 second.n_decimals * size->n_decimals == 0)))
    return at;
  return set_limits (size, second.value) ? next : at;
}

/* A second size of a range at at, not smaller than the first by much nor of another unit. Returns the token after it, or at. */
static guint
read_second (const Builder *b, guint at, EmSize *size)
{
  EmSize second = { 0 };
  guint next;
  double ratio;

  if (!is_number (b, at) || size->low.d != 0 || size->value.n == 0)
    return at;
  next = read_unit (b, read_number (b, at, &second), &second.unit);
  ratio = em_fraction_plain (second.value) / em_fraction_plain (size->value);
  if (!(ratio > 1 && ratio < 10) || (size->unit != EM_UNIT_NONE && second.unit != EM_UNIT_NONE && size->unit != second.unit))
    return at;
  if (!set_limits (size, second.value))
    return at;
  size->unit = second.unit != EM_UNIT_NONE ? second.unit : size->unit;
  return next;
}

/* The item before is a word for wear or build-up: "low .010 to .015", or for a diameter: no two of one thing are as far apart as
 * "dia 0.3 to 0.5 mm". */
static gboolean
is_after_wear (const Builder *b, const EmSize *range)
{
  const EmItem *last = b->items->items->len > 0 ? &g_array_index (b->items->items, EmItem, b->items->items->len - 1) : NULL;
  const EmSense *label = last != NULL && last->type == EM_ITEM_PHRASE ? em_phrase_find (last->phrase, EM_SAYS_LABEL) : NULL;

  /* "add 0.2 to 0.3", against "add .010 to .375 dia" */
  if (last != NULL && last->type == EM_ITEM_PHRASE && em_phrase_find (last->phrase, EM_SAYS_VERB) != NULL &&
      g_strcmp0 (em_phrase_find (last->phrase, EM_SAYS_VERB)->value, "build") == 0)
    return range->low.d == range->high.d && em_fraction_plain (range->high) <= close_ratio * em_fraction_plain (range->low);
  if (label != NULL && label->roles == EM_ROLE_DIAMETER)
    return range->unit != EM_UNIT_NONE && em_fraction_plain (range->high) > far_ratio * em_fraction_plain (range->low);
  /* "add 0.2 to 0.3" */
  if (last != NULL && last->type == EM_ITEM_PHRASE && em_phrase_find (last->phrase, EM_SAYS_VERB) != NULL)
    return g_strcmp0 (em_phrase_find (last->phrase, EM_SAYS_VERB)->value, "build") == 0 && range->n_decimals > 0;
  /* "RC 46 to 48" */
  /* "depth 6 to 8" */
  return label != NULL && (label->roles == EM_ROLE_BUILD || label->roles == EM_ROLE_HARDNESS || label->roles == EM_ROLE_DEPTH);
}

/* "0,2 bis 0,4 auftragen" */
static gboolean
is_before_building (const Builder *b, guint at)
{
  guint n;
  const EmSense *verb = em_phrase_find (match (b, at, &n), EM_SAYS_VERB);

  return verb != NULL && g_strcmp0 (verb->value, "build") == 0;
}

/* "1 to 3 mm deep", "wear 0.1 to 0.15": a range in words; "worn from 1.000 to 1.010" is none. Returns the token after it, or at. */
static guint
read_word_range (const Builder *b, guint at, EmSize *size)
{
  EmSize range = *size;
  guint n, next;
  const EmSense *to = em_phrase_find (match (b, at, &n), EM_SAYS_TO);

  if (to == NULL || g_strcmp0 (to->value, "range") != 0)
    return at;
  next = read_second (b, at + n, &range);
  if (next == at + n || !((roles_after (b, next) & ranged_roles) != 0 || em_unit_is_hardness (range.unit) ||
                          is_after_wear (b, &range) || is_before_building (b, next)))
    return at;
  *size = range;
  return next;
}

/* 3 % covers two rounded figures of the smallest sizes (0.5 mm as .02 in). */
static gboolean
is_about (double a, double b)
{
  return fabs (a / b - 1) < 0.03;
}

/* "12.7 [.500]", ".500 (12.7)": the same size in the other unit (ASME Y14.5 dual dimensioning). In round brackets
 * only when the two agree; otherwise it is a reference or a count. */
static guint
read_dual (const Builder *b, guint at, EmSize *size)
{
  gboolean is_square = is_sign (b, at, '[');
  EmSize other = { 0 };
  EmUnit unit = EM_UNIT_NONE;
  double ratio;
  guint next;

  if ((!is_square && !is_sign (b, at, '(')) || !is_number (b, at + 1))
    return at;
  next = read_unit (b, read_number (b, at + 1, &other), &unit);
  if (!is_sign (b, next, is_square ? ']' : ')') || size->value.n == 0 || other.value.n == 0)
    return at;
  ratio = em_fraction_plain (size->value) / em_fraction_plain (other.value);
  if (is_about (ratio, 25.4) && size->unit != EM_UNIT_INCH && unit != EM_UNIT_MM)
    {
      size->unit = EM_UNIT_MM;
      unit = EM_UNIT_INCH;
    }
  else if (is_about (ratio * 25.4, 1) && size->unit != EM_UNIT_MM && unit != EM_UNIT_INCH)
    {
      size->unit = EM_UNIT_INCH;
      unit = EM_UNIT_MM;
    }
  else if (!is_square || unit == EM_UNIT_NONE)
    return at;
  else
    size->reason = "dual-mismatch";
  size->other = other.value;
  size->other_unit = unit;
  return next + 1;
}

/* "1/4-20": a screw thread and its pitch (ASME B1.1), no size of a repair. */
static gboolean
is_thread (const Builder *b, guint at, const EmSize *size)
{
  return size->is_fraction && is_sign (b, at, '-') && is_glued (b, at) && is_glued (b, at + 1) && is_whole (b, at + 1) &&
         token_at (b, at + 1)->numerator >= 8 && token_at (b, at + 1)->numerator <= 80 && !is_sign (b, at + 2, '/');
}

/* The token is the letter, in either case. */
static gboolean
is_letter (const Builder *b, guint at, char letter)
{
  return token_at (b, at)->length == 1 && g_ascii_tolower (b->items->text[token_at (b, at)->start]) == letter;
}

/* "200 °C", "400F", "200 deg C": a temperature is no size. Returns the token after it, or at. */
static guint
read_temperature (const Builder *b, guint at, const EmSize *size)
{
  guint letter = at, n;
  const EmSense *unit;

  if (em_fraction_plain (size->value) < TEMPERATURE_MIN)
    return at;
  unit = em_phrase_find (match (b, at, &n), EM_SAYS_UNIT);
  if (is_sign (b, at, 0xb0))
    letter = at + 1;
  else if (unit != NULL && unit->unit == EM_UNIT_DEGREE)
    letter = at + n;
  else if (!is_glued (b, at))
    return at;
  return is_letter (b, letter, 'c') || is_letter (b, letter, 'f') ? letter + 1 : at;
}

/* "4340 / 38 RC": a metal's number and a hardness are no bounds. */
static gboolean
are_bounds (guint64 first, guint64 second)
{
  return first > 0 && second > 0 && first <= 2 * second && second <= 2 * first;
}

/* "30/32 HRC": the bounds of a hardness, which has no fractions. Returns the token after the second, or at. */
static guint
read_hardness_bounds (const Builder *b, guint at, EmSize *size)
{
  EmUnit unit = EM_UNIT_NONE;

  if (!is_whole (b, at) || !is_sign (b, at + 1, '/') || !is_whole (b, at + 2) || read_unit (b, at + 3, &unit) == at + 3 ||
      !em_unit_is_hardness (unit) || !are_bounds (token_at (b, at)->numerator, token_at (b, at + 2)->numerator))
    return at;
  size->value = fraction_of (b, at);
  size->flags = token_at (b, at)->flags;
  return set_limits (size, fraction_of (b, at + 2)) ? at + 3 : at;
}

static guint
read_size (Builder *b, guint at, EmSize *size)
{
  guint next = read_hardness_bounds (b, at, size);

  if (next == at)
    next = read_limits (b, read_number (b, at, size), size);

  size->label_item = G_MAXUINT32;
  if (is_thread (b, next, size))
    {
      size->roles = EM_ROLE_REFERENCE;
      return next + 2;
    }
  if (read_temperature (b, next, size) != next)
    {
      size->roles = EM_ROLE_REFERENCE;
      return read_temperature (b, next, size);
    }
  next = read_unit (b, next, &size->unit);
  /* "5 liter canister" */
  if (size->unit == EM_UNIT_OTHER)
    {
      size->unit = EM_UNIT_NONE;
      size->roles = EM_ROLE_REFERENCE;
      return next;
    }
  if (size->unit != EM_UNIT_NONE)
    {
      /* "0.3 mm - 0.5 mm" */
      guint after = read_limits (b, next, size);

      if (after != next)
        next = read_unit (b, after, &size->unit);
    }
  next = read_word_range (b, next, size);
  if ((token_at (b, at)->flags & EM_TOKEN_SLIP) != 0 && size->reason == NULL)
    size->reason = "spelling";
  next = read_tolerance (b, next, &size->unit);
  size->has_fit = read_fit (b, next) != next;
  next = read_fit (b, next);
  if (size->unit == EM_UNIT_NONE)
    next = read_unit (b, next, &size->unit);
  return read_dual (b, next, size);
}

static EmItem *
add_item (Builder *b, EmItemType type, guint at, guint next)
{
  const EmToken *first = token_at (b, at), *last = token_at (b, next - 1);
  EmItem item = { .type = type, .start = first->start, .length = last->start + last->length - first->start,
                  .line = first->line, .flags = first->flags };

  g_array_append_val (b->items->items, item);
  return &g_array_index (b->items->items, EmItem, b->items->items->len - 1);
}

/* A phrase of digits alone needs a word for material beside it; it stays a size that may be a metal. */
static gboolean
is_only_with_material (const EmPhrase *phrase)
{
  for (guint i = 0; i < phrase->n_senses; i++)
    if (!phrase->sense[i]->needs_material)
      return FALSE;
  return TRUE;
}

static void
note_language (EmItems *items, const EmPhrase *phrase)
{
  int language = em_phrase_language (phrase);

  if (language >= 0)
    items->n_words[language]++;
}

static guint
add_size (Builder *b, guint at, guint next, const EmSize *size)
{
  g_array_append_val (b->items->sizes, *size);
  add_item (b, EM_ITEM_SIZE, at, next)->size = b->items->sizes->len - 1;
  return next;
}

static guint
build_number (Builder *b, guint at)
{
  guint n, next;
  const EmPhrase *phrase = match (b, at, &n);
  EmSize size = { .value = { 0, 1 }, .label_item = G_MAXUINT32 };

  if (skip_thread (b, at) != at)
    {
      size.roles = EM_ROLE_REFERENCE;
      return add_size (b, at, skip_thread (b, at), &size);
    }
  if (phrase != NULL && !is_only_with_material (phrase))
    {
      add_item (b, EM_ITEM_PHRASE, at, at + n)->phrase = phrase;
      return at + n;
    }
  next = add_size (b, at, read_size (b, at, &size), &size);
  g_array_index (b->items->items, EmItem, b->items->items->len - 1).phrase = phrase;
  return next;
}

/* "long", but no "is" */
static gboolean
is_measuring (const EmPhrase *phrase)
{
  return em_phrase_find (phrase, EM_SAYS_LABEL) != NULL && em_phrase_find (phrase, EM_SAYS_GLUE) == NULL;
}

/* "by five eighths" */
static gboolean
is_after_times (const Builder *b)
{
  const EmItem *last = b->items->items->len > 0 ? &g_array_index (b->items->items, EmItem, b->items->items->len - 1) : NULL;

  return last != NULL && last->type == EM_ITEM_PHRASE && em_phrase_find (last->phrase, EM_SAYS_TIMES) != NULL;
}

/* "fifty two": the ones behind the tens are added to the number. Returns the token after them, or next. */
static guint
read_ones (const Builder *b, guint next, EmSize *size)
{
  guint n = 0, ones = next + is_sign (b, next, '-');
  const EmPhrase *phrase = ones < b->tokens->len && token_at (b, ones)->type == EM_TOKEN_WORD ? match (b, ones, &n) : NULL;
  const EmSense *number = em_phrase_find (phrase, EM_SAYS_NUMBER);

  if (size->is_fraction || size->value.n < 20 || size->value.n > 90 || size->value.n % 10 != 0 || number == NULL ||
      number->value == NULL || strlen (number->value) != 1)
    return next;
  size->value.n += g_ascii_strtoull (number->value, NULL, 10);
  return ones + n;
}

/* "bore three eighths": the size of what is round. */
static gboolean
is_after_round (const Builder *b)
{
  const EmItem *last = b->items->items->len > 0 ? &g_array_index (b->items->items, EmItem, b->items->items->len - 1) : NULL;
  const EmSense *noun = last != NULL && last->type == EM_ITEM_PHRASE ? em_phrase_find (last->phrase, EM_SAYS_KIND) : NULL;

  return noun != NULL && noun->weight[BORE] + noun->weight[PIN] > 4;
}

/* "rib is inch long": one. Returns the token after it, or at. */
static guint
build_single_inch (Builder *b, guint at, guint n, const EmSense *unit)
{
  EmSize size = { .label_item = G_MAXUINT32, .value = { 1, 1 }, .unit = EM_UNIT_INCH, .is_whole = TRUE };
  guint n_label;
  const EmItem *last = b->items->items->len > 0 ? &g_array_index (b->items->items, EmItem, b->items->items->len - 1) : NULL;

  if (unit == NULL || unit->unit != EM_UNIT_INCH || token_at (b, at)->length != 4 || !is_measuring (match (b, at + n, &n_label)) ||
      (last != NULL && (last->type == EM_ITEM_SIZE || em_phrase_find (last->phrase, EM_SAYS_UNITS) != NULL)))
    return at;
  return add_size (b, at, at + n, &size);
}

/* "the left half is down": of the mould, not of an inch. */
static gboolean
is_half_of_tool (const Builder *b, const EmSize *size, guint n, guint next)
{
  guint n_label;
  const EmSense *label = em_phrase_find (match (b, next, &n_label), EM_SAYS_LABEL);

  return n == 1 && size->is_fraction && size->value.d == 2 && label != NULL &&
         (label->roles & ~(guint32) (EM_ROLE_BUILD | EM_ROLE_WORN | EM_ROLE_FINISHED)) == 0;
}

/* "twenty thou", "half inch", "eighth long": a number word with a unit, or a fraction before its label, is a size. Returns the
 * token after it, or at. */
static guint
build_number_word (Builder *b, guint at, guint n, const EmSense *number)
{
  EmSize size = { .label_item = G_MAXUINT32, .value = { 0, 1 } };
  char *end;
  guint next, n_label;

  if (number == NULL || number->value == NULL)
    return at;
  size.value.n = g_ascii_strtoull (number->value, &end, 10);
  size.is_fraction = *end == '/';
  if (size.is_fraction)
    size.value.d = MAX (1, g_ascii_strtoull (end + 1, NULL, 10));
  size.unit = number->unit;
  next = size.unit == EM_UNIT_NONE ? read_unit (b, read_ones (b, at + n, &size), &size.unit) : at + n;
  if ((em_unit_is_hardness (size.unit) && (size.is_fraction || size.value.n < LEAST_HARDNESS)) ||
      (size.unit == EM_UNIT_NONE && is_half_of_tool (b, &size, n, next)) ||
      (size.unit == EM_UNIT_NONE && !(size.is_fraction && (is_measuring (match (b, next, &n_label)) ||
                                                            em_phrase_find (match (b, next, &n_label), EM_SAYS_TIMES) != NULL ||
                                                            em_phrase_find (match (b, next, &n_label), EM_SAYS_EQUAL) != NULL ||
                                                              is_after_times (b) || is_after_round (b)))))
    return at;
  /* "a five litre jug" */
  if (size.unit == EM_UNIT_OTHER)
    {
      size.unit = EM_UNIT_NONE;
      size.roles = EM_ROLE_REFERENCE;
    }
  return add_size (b, at, next, &size);
}

/* "between 1 and 2 mm". Returns the token after it, or at. */
static guint
build_between (Builder *b, guint at, guint n, const EmSense *between)
{
  EmSize size = { .label_item = G_MAXUINT32 };
  guint second, next, n_and;
  const EmSense *glue;

  if (between == NULL || !is_number (b, at + n))
    return at;
  next = read_unit (b, read_number (b, at + n, &size), &size.unit);
  glue = em_phrase_find (match (b, next, &n_and), EM_SAYS_GLUE);
  if (glue == NULL || g_strcmp0 (glue->value, "and") != 0)
    return at;
  second = next + n_and;
  next = read_second (b, second, &size);
  return next != second ? add_size (b, at, next, &size) : at;
}

/* "HB 353", "HV: 300": the scale before its number. Returns the token after it, or at. */
static guint
build_hardness (Builder *b, guint at, guint n, const EmSense *unit)
{
  EmSize size = { 0 };
  guint number = at + n, next;

  if (unit == NULL || (unit->unit != EM_UNIT_HB && unit->unit != EM_UNIT_HV))
    return at;
  number += is_sign (b, number, ':') || is_sign (b, number, '=');
  if (!is_number (b, number))
    return at;
  next = read_size (b, number, &size);
  if (size.unit != EM_UNIT_NONE)
    return at;
  size.unit = unit->unit;
  return add_size (b, at, next, &size);
}

static guint
build_phrase_size (Builder *b, guint at, guint n, const EmPhrase *phrase)
{
  guint next = build_number_word (b, at, n, em_phrase_find (phrase, EM_SAYS_NUMBER));

  if (next == at)
    next = build_single_inch (b, at, n, em_phrase_find (phrase, EM_SAYS_UNIT));
  if (next == at)
    next = build_between (b, at, n, em_phrase_find (phrase, EM_SAYS_BETWEEN));
  return next != at ? next : build_hardness (b, at, n, em_phrase_find (phrase, EM_SAYS_UNIT));
}

static guint
build_phrase (Builder *b, guint at, guint n, const EmPhrase *phrase)
{
  const EmToken *token = token_at (b, at);
  guint next = build_phrase_size (b, at, n, phrase);
  EmItem *item;

  if (next != at)
    return next;
  item = add_item (b, EM_ITEM_PHRASE, at, at + n);
  item->phrase = phrase;
  item->sign = n == 1 ? token->sign : 0;
  for (guint i = 0; i < n; i++)
    item->flags |= token_at (b, at + i)->flags & (EM_TOKEN_SLIP | EM_TOKEN_COMPOUND);
  if (token->type == EM_TOKEN_WORD && item->length >= 4)
    note_language (b->items, phrase);
  return at + n;
}

/* The first token is a word that joins nothing, and what begins behind it is a noun that reaches further than the phrase of n tokens. */
static gboolean
is_before_longer (const Builder *b, guint at, guint n)
{
  guint alone, further;
  const EmPhrase *first = em_lexicon_match (b->items->lexicon, b->language, token_at (b, at), 1, &alone), *next = match (b, at + 1, &further);

  return em_phrase_find (first, EM_SAYS_GLUE) != NULL && em_phrase_find (next, EM_SAYS_KIND) != NULL && 1 + further > n;
}

/* "length ...... 30": how many tokens of points lead from a word to what it heads; 0: none. */
static guint
leader_at (const Builder *b, guint at)
{
  enum { LEAST_POINTS = 4 };
  guint n = 0;

  while (is_sign (b, at + n, '.') && (n == 0 || is_glued (b, at + n)))
    n++;
  return n >= LEAST_POINTS ? n : 0;
}

static guint
build_next (Builder *b, guint at)
{
  const EmToken *token = token_at (b, at);
  const EmPhrase *phrase;
  guint n;

  if (token->type == EM_TOKEN_LINE)
    {
      add_item (b, EM_ITEM_LINE, at, at + 1);
      return at + 1;
    }
  if (token->type == EM_TOKEN_NUMBER)
    return build_number (b, at);
  n = leader_at (b, at);
  if (n > 0)
    {
      add_item (b, EM_ITEM_SIGN, at, at + n)->sign = ':';
      return at + n;
    }
  phrase = match (b, at, &n);
  /* "the top of the lifter": behind its article a longer phrase begins. */
  if (phrase != NULL && n > 1 && is_before_longer (b, at, n))
    phrase = em_lexicon_match (b->items->lexicon, b->language, token, 1, &n);
  if (phrase != NULL && phrase->n_senses == 1 && phrase->sense[0]->says == EM_SAYS_TALK)
    {
      add_item (b, EM_ITEM_UNKNOWN, at, at + n)->is_talk = TRUE;
      return at + n;
    }
  if (phrase != NULL)
    return build_phrase (b, at, n, phrase);
  /* "± 0.05" after no size: a tolerance of something else. */
  if (token->type == EM_TOKEN_SIGN && token->sign == 0xb1 && is_number (b, at + 1))
    {
      EmSize size = { .roles = EM_ROLE_REFERENCE };

      return add_size (b, at, read_size (b, at + 1, &size), &size);
    }
  if (token->type == EM_TOKEN_SIGN)
    add_item (b, EM_ITEM_SIGN, at, at + 1)->sign = token->sign;
  else
    add_item (b, EM_ITEM_UNKNOWN, at, at + 1);
  return at + 1;
}

EmItems *
em_items_new (const EmLexicon *lexicon, const char *text, gsize length)
{
  EmItems *items = g_new0 (EmItems, 1);
  Builder b = { items, em_token_split (text, length), -1 };

  items->lexicon = lexicon;
  items->text = text;
  items->items = g_array_new (FALSE, FALSE, sizeof (EmItem));
  items->sizes = g_array_new (FALSE, FALSE, sizeof (EmSize));
  em_lexicon_name (lexicon, text, b.tokens);
  b.language = em_lexicon_language (lexicon, (const EmToken *) (void *) b.tokens->data, b.tokens->len);
  for (guint at = 0; at < b.tokens->len;)
    at = build_next (&b, at);
  g_array_unref (b.tokens);
  return items;
}

void
em_items_free (EmItems *items)
{
  g_array_unref (items->items);
  g_array_unref (items->sizes);
  g_free (items);
}
