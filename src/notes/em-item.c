/* em-item: tokens grouped into phrases of the lexicon, sizes and signs.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-item-parts.h"
#include "em-wrap.h"

#include "em-steel.h"

#include <math.h>
#include <string.h>

/* What one inch, etc. is in mm, as a whole fraction: exact (NIST SP 811, appendix B). */
static const EmFraction unit_scale[EM_N_UNIT] = {
  [EM_UNIT_NONE] = { 1, 1 },       [EM_UNIT_MM] = { 1, 1 },         [EM_UNIT_CM] = { 10, 1 },        [EM_UNIT_METRE] = { 1000, 1 },
  [EM_UNIT_UM] = { 1, 1000 },      [EM_UNIT_TENTH_MM] = { 1, 10 },   [EM_UNIT_HUNDREDTH_MM] = { 1, 100 },
  [EM_UNIT_INCH] = { 254, 10 },    [EM_UNIT_THOU] = { 254, 10000 },
  [EM_UNIT_FOOT] = { 3048, 10 },   [EM_UNIT_DEGREE] = { 1, 1 },     [EM_UNIT_MM2] = { 1, 1 },
  [EM_UNIT_CM2] = { 100, 1 },      [EM_UNIT_INCH2] = { 64516, 100 },[EM_UNIT_HRC] = { 1, 1 },
  [EM_UNIT_HB] = { 1, 1 },         [EM_UNIT_HV] = { 1, 1 },         [EM_UNIT_OTHER] = { 1, 1 },
};

enum { LEAST_HARDNESS = 10 /* told in words, HRC */ };

/* Most words differ in their first byte, which is looked at alone: a fifth of the time of reading went into their lengths. */
gboolean
em_item_is_any_word_of (const EmItems *items, guint index, const char *const *words, gsize n_words)
{
  const EmItem *item = index < items->items->len ? em_item (items, index) : NULL;
  const char *text = item != NULL ? items->text + item->start : NULL;
  char first = item != NULL && item->length > 0 ? g_ascii_tolower (text[0]) : '\0';

  for (gsize k = 0; k < n_words && first != '\0'; k++)
    if (g_ascii_tolower (words[k][0]) == first && strlen (words[k]) == item->length && g_ascii_strncasecmp (text, words[k], item->length) == 0)
      return TRUE;
  return FALSE;
}

gboolean
em_item_is_word (const EmItems *items, guint index, const char *word)
{
  return em_item_is_any_word_of (items, index, &word, 1);
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

static EmItem *
add_item (EmItemBuilder *b, EmItemType type, guint at, guint next)
{
  const EmToken *first = em_builder_token (b, at), *last = em_builder_token (b, next - 1);
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
add_size (EmItemBuilder *b, guint at, guint next, const EmSize *size)
{
  g_array_append_val (b->items->sizes, *size);
  add_item (b, EM_ITEM_SIZE, at, next)->size = b->items->sizes->len - 1;
  return next;
}

static guint
build_number (EmItemBuilder *b, guint at)
{
  guint n, next;
  const EmPhrase *phrase = em_builder_match (b, at, &n);
  EmSize size = { .value = { 0, 1 }, .label_item = G_MAXUINT32 };

  if (em_builder_skip_thread (b, at) != at)
    {
      size.roles = EM_ROLE_REFERENCE;
      return add_size (b, at, em_builder_skip_thread (b, at), &size);
    }
  if (phrase != NULL && !is_only_with_material (phrase))
    {
      add_item (b, EM_ITEM_PHRASE, at, at + n)->phrase = phrase;
      return at + n;
    }
  next = add_size (b, at, em_builder_read_size (b, at, &size), &size);
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
is_after_times (const EmItemBuilder *b)
{
  const EmItem *last = b->items->items->len > 0 ? &g_array_index (b->items->items, EmItem, b->items->items->len - 1) : NULL;

  return last != NULL && last->type == EM_ITEM_PHRASE && em_phrase_find (last->phrase, EM_SAYS_TIMES) != NULL;
}

/* "fifty two": the ones behind the tens are added to the number. Returns the token after them, or next. */
static guint
read_ones (const EmItemBuilder *b, guint next, EmSize *size)
{
  guint n = 0, ones = next + em_builder_is_sign (b, next, '-');
  const EmPhrase *phrase = ones < b->tokens->len && em_builder_token (b, ones)->type == EM_TOKEN_WORD ? em_builder_match (b, ones, &n) : NULL;
  const EmSense *number = em_phrase_find (phrase, EM_SAYS_NUMBER);

  if (size->is_fraction || size->value.n < 20 || size->value.n > 90 || size->value.n % 10 != 0 || number == NULL ||
      number->value == NULL || strlen (number->value) != 1)
    return next;
  size->value.n += g_ascii_strtoull (number->value, NULL, 10);
  return ones + n;
}

/* "bore three eighths": the size of what is round. */
static gboolean
is_after_round (const EmItemBuilder *b)
{
  const EmItem *last = b->items->items->len > 0 ? &g_array_index (b->items->items, EmItem, b->items->items->len - 1) : NULL;
  const EmSense *noun = last != NULL && last->type == EM_ITEM_PHRASE ? em_phrase_find (last->phrase, EM_SAYS_KIND) : NULL;

  return noun != NULL && noun->weight[BORE] + noun->weight[PIN] > 4;
}

/* "rib is inch long": one. Returns the token after it, or at. */
static guint
build_single_inch (EmItemBuilder *b, guint at, guint n, const EmSense *unit)
{
  EmSize size = { .label_item = G_MAXUINT32, .value = { 1, 1 }, .unit = EM_UNIT_INCH, .is_whole = TRUE };
  guint n_label;
  const EmItem *last = b->items->items->len > 0 ? &g_array_index (b->items->items, EmItem, b->items->items->len - 1) : NULL;

  if (unit == NULL || unit->unit != EM_UNIT_INCH || em_builder_token (b, at)->length != 4 || !is_measuring (em_builder_match (b, at + n, &n_label)) ||
      (last != NULL && (last->type == EM_ITEM_SIZE || em_phrase_find (last->phrase, EM_SAYS_UNITS) != NULL)))
    return at;
  return add_size (b, at, at + n, &size);
}

/* "the left half is down": of the mould, not of an inch. */
static gboolean
is_half_of_tool (const EmItemBuilder *b, const EmSize *size, guint n, guint next)
{
  guint n_label;
  const EmSense *label = em_phrase_find (em_builder_match (b, next, &n_label), EM_SAYS_LABEL);

  return n == 1 && size->is_fraction && size->value.d == 2 && label != NULL &&
         (label->roles & ~(guint32) (EM_ROLE_BUILD | EM_ROLE_WORN | EM_ROLE_FINISHED)) == 0;
}

/* "half of the circle (180°)", "a quarter of the circumference": a fraction in words before what it is a part of, and the degrees that say it once more.
 * Returns the token after them, or at. */
static guint
build_part_of_circle (EmItemBuilder *b, guint at, guint n, const EmSize *fraction)
{
  const guint64 circle_deg = 360;
  EmSize size = *fraction;
  guint n_label, next;
  const EmSense *label = em_phrase_find (em_builder_match (b, at + n, &n_label), EM_SAYS_LABEL);

  if (!size.is_fraction || size.value.n >= size.value.d || label == NULL || label->roles != EM_ROLE_ARC || label->place == EM_LABEL_BEFORE ||
      em_builder_token (b, at + n + n_label - 1)->length <= 2 /* "of it" */)
    return at;
  size.value.n *= circle_deg;
  size.is_fraction = FALSE;
  size.unit = EM_UNIT_DEGREE;
  size.roles = EM_ROLE_ARC;
  size.reason = "from-words";
  next = at + n + n_label;
  if (em_builder_is_sign (b, next, '(') && em_builder_is_number (b, next + 1) && em_builder_is_sign (b, next + 2, 0xb0) && em_builder_is_sign (b, next + 3, ')') &&
      em_builder_token (b, next + 1)->numerator * size.value.d == size.value.n * em_builder_token (b, next + 1)->denominator)
    next += 4;
  return add_size (b, at, next, &size);
}

/* "twenty thou", "half inch", "eighth long": a number word with a unit, or a fraction before its label, is a size. Returns the
 * token after it, or at. */
static guint
build_number_word (EmItemBuilder *b, guint at, guint n, const EmSense *number)
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
  next = build_part_of_circle (b, at, n, &size);
  if (next != at)
    return next;
  size.unit = number->unit;
  next = size.unit == EM_UNIT_NONE ? em_builder_read_unit (b, read_ones (b, at + n, &size), &size.unit) : at + n;
  if ((em_unit_is_hardness (size.unit) && (size.is_fraction || size.value.n < LEAST_HARDNESS)) ||
      (size.unit == EM_UNIT_NONE && is_half_of_tool (b, &size, n, next)) ||
      (size.unit == EM_UNIT_NONE && !(size.is_fraction && (is_measuring (em_builder_match (b, next, &n_label)) ||
                                                            em_phrase_find (em_builder_match (b, next, &n_label), EM_SAYS_TIMES) != NULL ||
                                                            em_phrase_find (em_builder_match (b, next, &n_label), EM_SAYS_EQUAL) != NULL ||
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
build_between (EmItemBuilder *b, guint at, guint n, const EmSense *between)
{
  EmSize size = { .label_item = G_MAXUINT32 };
  guint second, next, n_and;
  const EmSense *glue;

  if (between == NULL || !em_builder_is_number (b, at + n))
    return at;
  next = em_builder_read_unit (b, em_builder_read_number (b, at + n, &size), &size.unit);
  glue = em_phrase_find (em_builder_match (b, next, &n_and), EM_SAYS_GLUE);
  if (glue == NULL || g_strcmp0 (glue->value, "and") != 0)
    return at;
  second = next + n_and;
  next = em_builder_read_second (b, second, &size);
  return next != second ? add_size (b, at, next, &size) : at;
}

/* "HB 353", "HV: 300": the scale before its number. Returns the token after it, or at. */
static guint
build_hardness (EmItemBuilder *b, guint at, guint n, const EmSense *unit)
{
  EmSize size = { 0 };
  guint number = at + n, next;

  if (unit == NULL || (unit->unit != EM_UNIT_HB && unit->unit != EM_UNIT_HV))
    return at;
  number += em_builder_is_sign (b, number, ':') || em_builder_is_sign (b, number, '=');
  if (!em_builder_is_number (b, number))
    return at;
  next = em_builder_read_size (b, number, &size);
  if (size.unit != EM_UNIT_NONE)
    return at;
  size.unit = unit->unit;
  return add_size (b, at, next, &size);
}

static guint
build_phrase_size (EmItemBuilder *b, guint at, guint n, const EmPhrase *phrase)
{
  guint next = build_number_word (b, at, n, em_phrase_find (phrase, EM_SAYS_NUMBER));

  if (next == at)
    next = build_single_inch (b, at, n, em_phrase_find (phrase, EM_SAYS_UNIT));
  if (next == at)
    next = build_between (b, at, n, em_phrase_find (phrase, EM_SAYS_BETWEEN));
  return next != at ? next : build_hardness (b, at, n, em_phrase_find (phrase, EM_SAYS_UNIT));
}

static guint
build_phrase (EmItemBuilder *b, guint at, guint n, const EmPhrase *phrase)
{
  const EmToken *token = em_builder_token (b, at);
  guint next = build_phrase_size (b, at, n, phrase);
  EmItem *item;

  if (next != at)
    return next;
  item = add_item (b, EM_ITEM_PHRASE, at, at + n);
  item->phrase = phrase;
  item->sign = n == 1 ? token->sign : 0;
  for (guint i = 0; i < n; i++)
    item->flags |= em_builder_token (b, at + i)->flags & (EM_TOKEN_SLIP | EM_TOKEN_COMPOUND);
  if (token->type == EM_TOKEN_WORD && item->length >= 4)
    note_language (b->items, phrase);
  return at + n;
}

/* The first token is a word that joins nothing, and what begins behind it is a noun that reaches further than the phrase of n tokens. */
static gboolean
is_before_longer (const EmItemBuilder *b, guint at, guint n)
{
  guint alone, further;
  const EmPhrase *first = em_lexicon_match (b->items->lexicon, b->language, em_builder_token (b, at), 1, &alone), *next = em_builder_match (b, at + 1, &further);

  return em_phrase_find (first, EM_SAYS_GLUE) != NULL && em_phrase_find (next, EM_SAYS_KIND) != NULL && 1 + further > n;
}

/* "length ...... 30": how many tokens of points lead from a word to what it heads; 0: none. */
static guint
leader_at (const EmItemBuilder *b, guint at)
{
  enum { LEAST_POINTS = 4 };
  guint n = 0;

  while (em_builder_is_sign (b, at + n, '.') && (n == 0 || em_builder_is_glued (b, at + n)))
    n++;
  return n >= LEAST_POINTS ? n : 0;
}

static guint
build_next (EmItemBuilder *b, guint at)
{
  const EmToken *token = em_builder_token (b, at);
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
  phrase = em_builder_match (b, at, &n);
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
  if (token->type == EM_TOKEN_SIGN && token->sign == 0xb1 && em_builder_is_number (b, at + 1))
    {
      EmSize size = { .roles = EM_ROLE_REFERENCE };

      return add_size (b, at, em_builder_read_size (b, at + 1, &size), &size);
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
  EmItemBuilder b = { items, em_token_split (text, length), -1 };

  items->lexicon = lexicon;
  items->text = text;
  items->items = g_array_new (FALSE, FALSE, sizeof (EmItem));
  items->sizes = g_array_new (FALSE, FALSE, sizeof (EmSize));
  em_lexicon_name (lexicon, text, b.tokens);
  b.language = em_lexicon_language (lexicon, (const EmToken *) (void *) b.tokens->data, b.tokens->len);
  em_wrap_join (lexicon, b.language, text, b.tokens);
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
