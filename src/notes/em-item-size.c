/* em-item-size: the tokens of a size: its number, limits, range and unit.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-item-parts.h"

#include <math.h>
#include <string.h>

/* Roles of a size that can be given as a range: "1 to 3 deep". */
static const guint32 ranged_roles = EM_ROLE_LENGTH | EM_ROLE_WIDTH | EM_ROLE_HEIGHT | EM_ROLE_DEPTH | EM_ROLE_THICKNESS |
                                    EM_ROLE_GAP;

enum { WIDE_GAP = 2 /* blanks that part columns */, PHRASE_MAX = 8 /* tokens; the lexicon has no longer ones */,
       LEAST_PARTED = 5 /* no range leads from decimals to more than that without any (common practice, no source) */ };

/* HRC, as steels are ordered (common practice, no source). */
enum { PAIR_MIN = 24, PAIR_MAX = 66, PAIR_STEP = 4 };

const EmToken *
em_builder_token (const EmItemBuilder *b, guint at)
{
  static const EmToken end = { .type = EM_TOKEN_LINE };

  return at < b->tokens->len ? &g_array_index (b->tokens, EmToken, at) : &end;
}

gboolean
em_builder_is_sign (const EmItemBuilder *b, guint at, gunichar sign)
{
  return em_builder_token (b, at)->type == EM_TOKEN_SIGN && em_builder_token (b, at)->sign == sign;
}

gboolean
em_builder_is_glued (const EmItemBuilder *b, guint at)
{
  return (em_builder_token (b, at)->flags & EM_TOKEN_GLUED) != 0;
}

gboolean
em_builder_is_number (const EmItemBuilder *b, guint at)
{
  return em_builder_token (b, at)->type == EM_TOKEN_NUMBER;
}

static gboolean
is_whole (const EmItemBuilder *b, guint at)
{
  return em_builder_is_number (b, at) && em_builder_token (b, at)->denominator == 1;
}

static gboolean
is_behind_gap (const EmItemBuilder *b, guint at)
{
  const EmToken *before = em_builder_token (b, at - 1);

  if (em_builder_token (b, at)->start >= before->start + before->length + WIDE_GAP)
    return TRUE;
  for (guint32 i = before->start + before->length; i < em_builder_token (b, at)->start; i++)
    if (b->items->text[i] == '\t')
      return TRUE;
  return FALSE;
}

/* How many tokens from at a phrase may have: a tab or a wide gap parts columns, "Soll<tab>Ist". */
static guint
n_in_cell (const EmItemBuilder *b, guint at)
{
  guint n = 1;

  while (n < PHRASE_MAX && at + n < b->tokens->len && !is_behind_gap (b, at + n))
    n++;
  return n;
}

const EmPhrase *
em_builder_match (const EmItemBuilder *b, guint at, guint *out_n)
{
  *out_n = 0;
  if (at >= b->tokens->len)
    return NULL;
  return em_lexicon_match (b->items->lexicon, b->language, em_builder_token (b, at), n_in_cell (b, at), out_n);
}

/* Inch drawings divide by powers of two; a few others are met by hand. */
static gboolean
is_divisor (guint64 d)
{
  return d == 2 || d == 3 || d == 4 || d == 5 || d == 8 || d == 16 || d == 32 || d == 64 || d == 128;
}

/* "30/32", "54/56": no fraction of an inch is written so, but the hardness of a steel is. */
static gboolean
is_pair_of_hardness (const EmItemBuilder *b, guint at)
{
  guint64 low, high;

  if (!is_whole (b, at) || !em_builder_is_sign (b, at + 1, '/') || !is_whole (b, at + 2) || !em_builder_is_glued (b, at + 1) || !em_builder_is_glued (b, at + 2) ||
      (em_builder_is_sign (b, at + 3, '/') && em_builder_is_glued (b, at + 3)))
    return FALSE;
  low = em_builder_token (b, at)->numerator;
  high = em_builder_token (b, at + 2)->numerator;
  return low >= PAIR_MIN && high <= PAIR_MAX && high > low && high - low <= PAIR_STEP && high % 2 == low % 2;
}

/* "cavity 1/3: edge", "1/3/5": a list of the parts' numbers. */
static gboolean
is_list_of_parts (const EmItemBuilder *b, guint at)
{
  const GArray *items = b->items->items;
  const EmItem *last = items->len > 0 ? &g_array_index (items, EmItem, items->len - 1) : NULL;

  if (at >= 2 && em_builder_is_sign (b, at - 1, '/') && em_builder_is_glued (b, at) && em_builder_is_glued (b, at - 1) && em_builder_is_number (b, at - 2))
    return TRUE;
  return last != NULL && last->type == EM_ITEM_PHRASE && em_phrase_tells (last->phrase, EM_SAYS_PLACE, "counted") &&
         em_builder_token (b, at - 1)->start + em_builder_token (b, at - 1)->length == last->start + last->length &&
         (em_builder_is_sign (b, at + 3, ':') || em_builder_is_sign (b, at + 3, ','));
}

/* "3/4" at at: three glued tokens, not part of a date. */
static gboolean
is_slash_fraction (const EmItemBuilder *b, guint at)
{
  return is_whole (b, at) && em_builder_is_sign (b, at + 1, '/') && is_whole (b, at + 2) && em_builder_is_glued (b, at + 1) &&
         em_builder_is_glued (b, at + 2) && em_builder_token (b, at)->numerator < em_builder_token (b, at + 2)->numerator &&
         is_divisor (em_builder_token (b, at + 2)->numerator) && !is_pair_of_hardness (b, at) && !is_list_of_parts (b, at) &&
         !(em_builder_is_sign (b, at + 3, '/') && em_builder_is_glued (b, at + 3) && em_builder_is_number (b, at + 4));
}

/* "-20" of "1/4-20": the threads per inch of the unified series (ASME B1.1: 4 1/2 to 80), glued to the size before it. */
static gboolean
is_pitch (const EmItemBuilder *b, guint at)
{
  return em_builder_is_sign (b, at, '-') && em_builder_is_glued (b, at) && is_whole (b, at + 1) && em_builder_is_glued (b, at + 1) &&
         em_builder_token (b, at + 1)->numerator >= 5 && em_builder_token (b, at + 1)->numerator <= 80 &&
         !(em_builder_is_sign (b, at + 2, '/') && em_builder_is_glued (b, at + 2));
}

/* "G" and the like, which name pipe threads (ISO 228-1, ASME B1.20.1). */
static gboolean
is_pipe_word (const EmItemBuilder *b, guint at)
{
  static const char *const words[] = { "G", "Rp", "Rc", "NPT", "NPTF", "BSP", "BSPP", "BSPT" };
  const EmToken *token = em_builder_token (b, at);

  for (gsize k = 0; k < G_N_ELEMENTS (words); k++)
    if (token->type == EM_TOKEN_WORD && token->length == strlen (words[k]) && strncmp (b->items->text + token->start, words[k], token->length) == 0)
      return TRUE;
  return FALSE;
}

/* "G1/4", "1/8 NPT" */
static gboolean
is_pipe_thread (const EmItemBuilder *b, guint at)
{
  return is_slash_fraction (b, at) && ((at > 0 && is_pipe_word (b, at - 1)) || is_pipe_word (b, at + 3));
}

/* "1/4-20", "#10-32", "G1/4": the name of a thread. Returns the token after it, or at. */
guint
em_builder_skip_thread (const EmItemBuilder *b, guint at)
{
  if (is_slash_fraction (b, at) && is_pitch (b, at + 3))
    return at + 5;
  if (is_pipe_thread (b, at))
    return at + 3;
  return at > 0 && em_builder_is_sign (b, at - 1, '#') && em_builder_is_glued (b, at) && is_whole (b, at) && is_pitch (b, at + 1) ? at + 3 : at;
}

static EmFraction
fraction_of (const EmItemBuilder *b, guint at)
{
  EmFraction f = { em_builder_token (b, at)->numerator, em_builder_token (b, at)->denominator };

  return f;
}

/* The number itself: "12.5", "3/4", "1-1/4", "3 1/2", "1½". Returns the token after it. */
guint
em_builder_read_number (const EmItemBuilder *b, guint at, EmSize *size)
{
  const EmToken *token = em_builder_token (b, at);
  guint part = at + 1;
  EmFraction f;

  size->value = fraction_of (b, at);
  size->flags = token->flags;
  size->n_decimals = token->n_decimals;
  size->is_whole = token->denominator == 1;
  size->is_fraction = (token->flags & EM_TOKEN_VULGAR) != 0;
  if (is_slash_fraction (b, at))
    {
      size->value.d = em_builder_token (b, at + 2)->numerator;
      size->is_fraction = TRUE;
      size->is_whole = FALSE;
      return at + 3;
    }
  if (!size->is_whole || size->value.n > 1000)
    return at + 1;
  if (em_builder_is_sign (b, part, '-') && em_builder_is_glued (b, part) && em_builder_is_glued (b, part + 1))
    part++;
  if (em_builder_is_number (b, part) && (em_builder_token (b, part)->flags & EM_TOKEN_VULGAR) != 0)
    {
      f = fraction_of (b, part);
      part += 1;
    }
  else if (is_slash_fraction (b, part) && (part == at + 2 || !em_builder_is_glued (b, part)) &&
           !(part == at + 1 && is_pitch (b, part + 3)) /* "2 5/16-18 holes" */)
    {
      f.n = em_builder_token (b, part)->numerator;
      f.d = em_builder_token (b, part + 2)->numerator;
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
leads_to_mm (const EmItemBuilder *b, guint at)
{
  guint n;
  const EmSense *unit = em_builder_is_number (b, at) ? em_phrase_find (em_builder_match (b, at + 1, &n), EM_SAYS_UNIT) : NULL;

  return unit != NULL && (unit->unit == EM_UNIT_MM || unit->unit == EM_UNIT_CM);
}

/* "in" is also a preposition: no unit before a word that names a place or thing. */
static gboolean
is_preposition (const EmItemBuilder *b, guint at, guint n, const EmPhrase *phrase)
{
  const EmPhrase *next;
  guint n_next;

  /* German "um 0,12": by how much. */
  if (em_phrase_find (phrase, EM_SAYS_UNIT)->unit == EM_UNIT_UM && em_builder_is_number (b, at + n))
    return TRUE;
  if (em_phrase_find (phrase, EM_SAYS_PREPOSITION) == NULL || em_builder_is_glued (b, at))
    return FALSE;
  if (em_builder_is_sign (b, at + n, '.'))
    return FALSE;
  if (leads_to_mm (b, at + n))
    return TRUE;
  next = em_builder_match (b, at + n, &n_next);
  /* "both in M2": of which metal. */
  return em_phrase_find (next, EM_SAYS_KIND) != NULL || em_phrase_find (next, EM_SAYS_PLACE) != NULL || em_phrase_find (next, EM_SAYS_BASE) != NULL ||
         (em_phrase_find (next, EM_SAYS_GLUE) != NULL && em_phrase_find (next, EM_SAYS_LABEL) == NULL /* "1/4 in small" */);
}

/* "300 HV10", "353 HBW 10/3000": ball and load of a hardness test. */
static guint
skip_load (const EmItemBuilder *b, guint at)
{
  if (is_whole (b, at) && em_builder_is_sign (b, at + 1, '/') && is_whole (b, at + 2))
    return at + 3;
  return is_whole (b, at) && em_builder_is_glued (b, at) ? at + 1 : at;
}

/* The unit at at, if any: returns the token after it. */
/* "1.5 mm. 2x blade", "18 mm. 2. flank": a count, or the number of a list, that begins what is next. */
static gboolean
is_times_count (const EmItemBuilder *b, guint at)
{
  guint n;

  if (is_whole (b, at) && (em_builder_is_sign (b, at + 1, '.') || em_builder_is_sign (b, at + 1, ')')) && em_builder_is_glued (b, at + 1) &&
      !em_builder_is_glued (b, at + 2) &&
      em_builder_token (b, at + 2)->type == EM_TOKEN_WORD)
    return TRUE;
  return is_whole (b, at) && em_builder_is_glued (b, at + 1) && em_phrase_find (em_builder_match (b, at + 1, &n), EM_SAYS_TIMES) != NULL &&
         !em_builder_is_glued (b, at + 1 + n);
}

/* "12 mm. pocket 9 wide": a noun of a repair begins the next sentence. */
static gboolean
is_only_noun (const EmItemBuilder *b, guint at)
{
  guint n;
  const EmPhrase *phrase = em_builder_match (b, at, &n);

  return em_phrase_find (phrase, EM_SAYS_KIND) != NULL && em_phrase_find (phrase, EM_SAYS_LABEL) == NULL;
}

/* "25 mm. 4 cores": how many there are begins the next sentence. */
static gboolean
is_counted_thing (const EmItemBuilder *b, guint at)
{
  guint n;
  const EmPhrase *phrase = is_whole (b, at) && !em_builder_is_glued (b, at + 1) ? em_builder_match (b, at + 1, &n) : NULL;

  return phrase != NULL && (em_phrase_find (phrase, EM_SAYS_KIND) != NULL || em_phrase_find (phrase, EM_SAYS_PLACE) != NULL) &&
         em_phrase_find (phrase, EM_SAYS_LABEL) == NULL;
}

/* "8 M6 holes", "LG 40 M": a metre is written small and by itself. */
static gboolean
is_no_metre (const EmItemBuilder *b, guint at)
{
  const EmToken *token = em_builder_token (b, at);
  guint n;
  const EmSense *label = em_phrase_find (em_builder_match (b, at + 1, &n), EM_SAYS_LABEL);
  gboolean is_capital = (token->flags & (EM_TOKEN_UPPER | EM_TOKEN_CAPITAL)) != 0;

  /* "1.2 M LONG" */
  if (is_capital && label != NULL && label->roles == EM_ROLE_LENGTH && label->place == EM_LABEL_AFTER && !em_builder_is_glued (b, at + 1))
    return FALSE;
  return token->length == 1 && (is_capital || em_builder_is_glued (b, at + 1)) && em_builder_token (b, at + 1)->type != EM_TOKEN_LINE &&
         !em_builder_is_sign (b, at + 1, ',') && !em_builder_is_sign (b, at + 1, '.') && !em_builder_is_sign (b, at + 1, ';') && !em_builder_is_sign (b, at + 1, ')');
}

guint
em_builder_read_unit (const EmItemBuilder *b, guint at, EmUnit *out_unit)
{
  const EmPhrase *phrase;
  const EmSense *sense;
  guint n;

  if (em_builder_is_sign (b, at, '"') && em_builder_is_glued (b, at))
    {
      *out_unit = EM_UNIT_INCH;
      return at + 1;
    }
  if (em_builder_is_sign (b, at, 0xb0))
    {
      /* Minutes of arc are below what a repair can tell; degrees stand alone. */
      *out_unit = EM_UNIT_DEGREE;
      return at + 1;
    }
  phrase = em_builder_match (b, at, &n);
  sense = em_phrase_find (phrase, EM_SAYS_UNIT);
  if (sense == NULL && em_builder_is_sign (b, at, '-') && em_builder_is_glued (b, at))
    {
      phrase = em_builder_match (b, at + 1, &n);
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
  if (em_builder_is_sign (b, at, '.') && em_builder_is_glued (b, at) && em_builder_token (b, at + 1)->type != EM_TOKEN_LINE &&
      !em_unit_is_hardness (sense->unit) &&
      sense->unit != EM_UNIT_DEGREE && (em_builder_token (b, at + 1)->flags & EM_TOKEN_CAPITAL) == 0 && !is_times_count (b, at + 1) &&
      !is_only_noun (b, at + 1) && !is_counted_thing (b, at + 1))
    at++;
  return at;
}

/* "FACE 18 X 7  +0.25": behind a gap begins another column, where so much is to be added. */
static gboolean
is_in_next_column (const EmItemBuilder *b, guint at)
{
  enum { GAP = 2 };

  return em_builder_is_sign (b, at, '+') && em_builder_token (b, at)->start >= em_builder_token (b, at - 1)->start + em_builder_token (b, at - 1)->length + GAP &&
         !em_builder_is_sign (b, at + 2, '/') && !em_builder_is_sign (b, at + 2, '-');
}

/* "±.002", "+.002/-.000", "+0.1": a tolerance says how exact, not how large. */
static guint
read_tolerance (const EmItemBuilder *b, guint at, EmUnit *out_unit)
{
  EmUnit unit;

  /* "47±1 HRC": the unit of both. */
  if (em_builder_is_sign (b, at, 0xb1) && em_builder_is_number (b, at + 1))
    return em_builder_read_unit (b, at + 2, *out_unit == EM_UNIT_NONE ? out_unit : &unit);
  while ((em_builder_is_sign (b, at, '+') || em_builder_is_sign (b, at, '-')) && em_builder_is_number (b, at + 1) && em_builder_is_glued (b, at + 1) &&
         (em_builder_is_sign (b, at, '+') || !em_builder_is_glued (b, at) || em_builder_is_sign (b, at - 1, '/')))
    {
      const EmToken *number = em_builder_token (b, at + 1);

      /* "- 12 x 3" is a dash; a lower tolerance is small or nothing. */
      if ((em_builder_is_sign (b, at, '-') && number->numerator > number->denominator) || is_in_next_column (b, at))
        break;
      at = em_builder_read_unit (b, at + 2, &unit);
      if (em_builder_is_sign (b, at, '/') && (em_builder_is_sign (b, at + 1, '-') || em_builder_is_sign (b, at + 1, '+')))
        at++;
      else if (em_builder_is_sign (b, at, '/') && em_builder_is_number (b, at + 1) && em_builder_token (b, at + 1)->numerator == 0)
        return at + 2;
    }
  return at;
}

/* "8 M6 holes": threads (ISO 261), as many as stand before them; "10 m6" is a fit. */
static gboolean
is_counted_thread (const EmItemBuilder *b, guint at)
{
  guint n;
  const EmPhrase *noun = em_builder_match (b, at + 2, &n);

  return em_builder_token (b, at)->length == 1 && g_ascii_toupper (b->items->text[em_builder_token (b, at)->start]) == 'M' && !em_builder_is_glued (b, at) &&
         (em_phrase_find (noun, EM_SAYS_KIND) != NULL || em_phrase_find (noun, EM_SAYS_THING) != NULL);
}

/* "H7" right after a size is a fit (ISO 286), not a steel. */
static guint
read_fit (const EmItemBuilder *b, guint at)
{
  const EmToken *letter = em_builder_token (b, at);
  guint n;

  if (letter->type != EM_TOKEN_WORD || letter->length > 2 || !is_whole (b, at + 1) || !em_builder_is_glued (b, at + 1) ||
      em_builder_token (b, at + 1)->numerator < 4 || em_builder_token (b, at + 1)->numerator > 10 || is_counted_thread (b, at))
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
roles_after (const EmItemBuilder *b, guint at)
{
  guint n;
  const EmPhrase *phrase = em_builder_match (b, at, &n);
  guint32 roles = 0;

  for (guint k = 0; phrase != NULL && k < phrase->n_senses; k++)
    if (phrase->sense[k]->says == EM_SAYS_LABEL && phrase->sense[k]->place == EM_LABEL_AFTER)
      roles |= phrase->sense[k]->roles;
  return roles;
}

gboolean
em_builder_is_ranged_after (const EmItemBuilder *b, guint at)
{
  return (roles_after (b, at) & ranged_roles) != 0;
}

/* ".003/.005": the second the larger of two as small and as fine, and no columns of a table. */
static gboolean
is_fine_slash (const EmItemBuilder *b, guint at, guint next, const EmSize *first, const EmSize *second)
{
  const double small = 1, most = 2.5;
  double ratio = em_fraction_plain (second->value) / em_fraction_plain (first->value);

  return em_fraction_plain (second->value) < small && ratio > 1 && ratio <= most && first->n_decimals == second->n_decimals &&
         !em_builder_is_sign (b, next, '/') && (at < 2 || !em_builder_is_sign (b, at - 2, '/'));
}

/* "bore dia / .7500 / .7535": a slash between blanks parts columns where another stands before its first number. */
static gboolean
is_column_slash (const EmItemBuilder *b, guint slash)
{
  return slash >= 2 && !em_builder_is_glued (b, slash) && !em_builder_is_glued (b, slash + 1) && em_builder_is_sign (b, slash - 2, '/') && !em_builder_is_glued (b, slash - 2) &&
         !em_builder_is_glued (b, slash - 1);
}

/* "R0.2-R0.4": the R of the first once more behind the dash. */
static gboolean
is_same_sign (const EmItemBuilder *b, guint at)
{
  const EmToken *sign = em_builder_token (b, at + 1), *first = at >= 2 ? em_builder_token (b, at - 2) : sign;

  return at >= 2 && em_builder_is_number (b, at + 2) && em_builder_is_glued (b, at + 2) && em_builder_is_glued (b, at - 1) && sign->length == first->length && sign->length == 1 &&
         g_ascii_tolower (b->items->text[sign->start]) == 'r' && g_ascii_tolower (b->items->text[first->start]) == 'r';
}

/* "Pos. 1 - 2 Kanten": behind the number of a point the dash between blanks leads to what is told of it. */
static gboolean
is_point_before_dash (const EmItemBuilder *b, guint dash)
{
  const GArray *items = b->items->items;
  guint n = items->len;
  const EmItem *word;
  const EmSense *glue;

  if (em_builder_is_glued (b, dash) || em_builder_is_glued (b, dash + 1))
    return FALSE;
  n -= n > 0 && g_array_index (items, EmItem, n - 1).type == EM_ITEM_SIGN && g_array_index (items, EmItem, n - 1).sign == '.';
  word = n > 0 ? &g_array_index (items, EmItem, n - 1) : NULL;
  glue = word != NULL && word->type == EM_ITEM_PHRASE ? em_phrase_find (word->phrase, EM_SAYS_GLUE) : NULL;
  return glue != NULL && g_strcmp0 (glue->value, "item") == 0;
}

/* "0.3-0.5", ".498/.502", ".003/.005", "1-3 DEEP": limits of one size; the value is their middle. Returns the token after them. */
static guint
read_limits (const EmItemBuilder *b, guint at, EmSize *size)
{
  gboolean is_slash = em_builder_is_sign (b, at, '/'), is_dash = em_builder_is_sign (b, at, '-') || em_builder_is_sign (b, at, '~'), is_named, is_fine;
  EmSize second = { 0 };
  EmUnit unit;
  double ratio, ratio_max;
  guint next, number = at + 1 + (is_dash && is_same_sign (b, at));

  if ((!is_slash && !is_dash) || !em_builder_is_number (b, number) || size->value.n == 0 || (is_slash && is_column_slash (b, at)))
    return at;
  if (is_dash && (em_builder_is_glued (b, at) != em_builder_is_glued (b, at + 1) || is_point_before_dash (b, at)))
    return at;
  next = em_builder_read_number (b, number, &second);
  /* "now 16.3 - 20 deep": the dash parts two sizes. */
  if (is_dash && !em_builder_is_glued (b, at) && size->n_decimals > 0 && second.is_whole && second.value.n >= LEAST_PARTED)
    return at;
  is_named = em_builder_is_ranged_after (b, next) || em_builder_read_unit (b, next, &unit) != next;
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
guint
em_builder_read_second (const EmItemBuilder *b, guint at, EmSize *size)
{
  EmSize second = { 0 };
  guint next;
  double ratio;

  if (!em_builder_is_number (b, at) || size->low.d != 0 || size->value.n == 0)
    return at;
  next = em_builder_read_unit (b, em_builder_read_number (b, at, &second), &second.unit);
  ratio = em_fraction_plain (second.value) / em_fraction_plain (size->value);
  if (!(ratio > 1 && ratio < 10) || (size->unit != EM_UNIT_NONE && second.unit != EM_UNIT_NONE && size->unit != second.unit))
    return at;
  if (!set_limits (size, second.value))
    return at;
  size->unit = second.unit != EM_UNIT_NONE ? second.unit : size->unit;
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
read_dual (const EmItemBuilder *b, guint at, EmSize *size)
{
  gboolean is_square = em_builder_is_sign (b, at, '[');
  EmSize other = { 0 };
  EmUnit unit = EM_UNIT_NONE;
  double ratio;
  guint next;

  if ((!is_square && !em_builder_is_sign (b, at, '(')) || !em_builder_is_number (b, at + 1))
    return at;
  next = em_builder_read_unit (b, em_builder_read_number (b, at + 1, &other), &unit);
  if (!em_builder_is_sign (b, next, is_square ? ']' : ')') || size->value.n == 0 || other.value.n == 0)
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
is_thread (const EmItemBuilder *b, guint at, const EmSize *size)
{
  return size->is_fraction && em_builder_is_sign (b, at, '-') && em_builder_is_glued (b, at) && em_builder_is_glued (b, at + 1) && is_whole (b, at + 1) &&
         em_builder_token (b, at + 1)->numerator >= 8 && em_builder_token (b, at + 1)->numerator <= 80 && !em_builder_is_sign (b, at + 2, '/');
}

/* "4340 / 38 RC": a metal's number and a hardness are no bounds. */
static gboolean
are_bounds (guint64 first, guint64 second)
{
  return first > 0 && second > 0 && first <= 2 * second && second <= 2 * first;
}

/* "30/32 HRC": the bounds of a hardness, which has no fractions. Returns the token after the second, or at. */
static guint
read_hardness_bounds (const EmItemBuilder *b, guint at, EmSize *size)
{
  EmUnit unit = EM_UNIT_NONE;

  if (!is_whole (b, at) || !em_builder_is_sign (b, at + 1, '/') || !is_whole (b, at + 2) || em_builder_read_unit (b, at + 3, &unit) == at + 3 ||
      !em_unit_is_hardness (unit) || !are_bounds (em_builder_token (b, at)->numerator, em_builder_token (b, at + 2)->numerator))
    return at;
  size->value = fraction_of (b, at);
  size->flags = em_builder_token (b, at)->flags;
  return set_limits (size, fraction_of (b, at + 2)) ? at + 3 : at;
}

/* No pressure: nobody writes its unit so. */
static gboolean
ends_in_bars (const EmItemBuilder *b, guint next)
{
  const EmToken *token = em_builder_token (b, next - 1);

  return token->length == strlen ("bars") && g_ascii_strncasecmp (b->items->text + token->start, "bars", token->length) == 0;
}

/* "1/4 des Umfangs", "1/2 of the circumference": no inches, but so much of the circle. Returns the token after the number, or at. */
static guint
read_part_of_circle (const EmItemBuilder *b, guint at, EmSize *size)
{
  const guint64 circle_deg = 360;
  EmSize part = { 0 };
  guint next, n;
  const EmSense *label;

  if (!is_slash_fraction (b, at))
    return at;
  next = em_builder_read_number (b, at, &part);
  label = em_phrase_find (em_builder_match (b, next, &n), EM_SAYS_LABEL);
  if (label == NULL || label->roles != EM_ROLE_ARC || em_fraction_plain (part.value) >= 1)
    return at;
  *size = part;
  size->value.n *= circle_deg;
  size->is_fraction = FALSE;
  size->unit = EM_UNIT_DEGREE;
  size->reason = "from-words";
  size->label_item = G_MAXUINT32;
  return next;
}

guint
em_builder_read_size (EmItemBuilder *b, guint at, EmSize *size)
{
  guint next = read_part_of_circle (b, at, size);

  if (next != at)
    return next;
  next = read_hardness_bounds (b, at, size);
  if (next == at)
    next = read_limits (b, em_builder_read_number (b, at, size), size);

  size->label_item = G_MAXUINT32;
  if (is_thread (b, next, size))
    {
      size->roles = EM_ROLE_REFERENCE;
      return next + 2;
    }
  if (em_builder_read_temperature (b, next, size) != next)
    {
      size->roles = EM_ROLE_REFERENCE;
      return em_builder_read_temperature (b, next, size);
    }
  next = em_builder_read_unit (b, next, &size->unit);
  /* "3 BARS": of iron. */
  if (size->unit == EM_UNIT_OTHER && ends_in_bars (b, next))
    {
      size->unit = EM_UNIT_NONE;
      return next - 1;
    }
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
        next = em_builder_read_unit (b, after, &size->unit);
    }
  next = em_builder_read_range (b, next, size);
  if ((em_builder_token (b, at)->flags & EM_TOKEN_SLIP) != 0 && size->reason == NULL)
    size->reason = "spelling";
  next = read_tolerance (b, next, &size->unit);
  size->has_fit = read_fit (b, next) != next;
  next = read_fit (b, next);
  if (size->unit == EM_UNIT_NONE)
    next = em_builder_read_unit (b, next, &size->unit);
  return read_dual (b, next, size);
}
