/* em-item-temperature: "200 °C", "400F", "over 400 F": what is no size.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-item-parts.h"

enum
{
  TEMPERATURE_MIN = 30, /* colder than this nobody heats a tool: "5F" is something else */
  APART_MIN = 100  /* degrees whose letter stands apart, without a sign */
};

/* The token is the letter, in either case. */
static gboolean
is_letter (const EmItemBuilder *b, guint at, char letter)
{
  return em_builder_token (b, at)->length == 1 && g_ascii_tolower (b->items->text[em_builder_token (b, at)->start]) == letter;
}

/* "over 400 F": the letter in capitals, apart, and nothing behind it that it could name. */
static gboolean
is_apart_degrees (const EmItemBuilder *b, guint at, const EmSize *size)
{
  const EmToken *letter = em_builder_token (b, at), *next = em_builder_token (b, at + 1);

  return (is_letter (b, at, 'f') || is_letter (b, at, 'c')) && g_ascii_isupper (b->items->text[letter->start]) && em_fraction_plain (size->value) >= APART_MIN &&
         size->value.d == 1 && next->type != EM_TOKEN_NUMBER && (next->type == EM_TOKEN_LINE || !em_builder_is_glued (b, at + 1) || em_builder_is_sign (b, at + 1, ',') ||
         em_builder_is_sign (b, at + 1, '.') || em_builder_is_sign (b, at + 1, ')') || em_builder_is_sign (b, at + 1, ';'));
}

guint
em_builder_read_temperature (const EmItemBuilder *b, guint at, const EmSize *size)
{
  guint letter = at, n;
  const EmSense *unit;

  if (em_fraction_plain (size->value) < TEMPERATURE_MIN)
    return at;
  unit = em_phrase_find (em_builder_match (b, at, &n), EM_SAYS_UNIT);
  if (em_builder_is_sign (b, at, 0xb0))
    letter = at + 1;
  else if (unit != NULL && unit->unit == EM_UNIT_DEGREE)
    letter = at + n;
  else if (!em_builder_is_glued (b, at))
    return is_apart_degrees (b, at, size) ? at + 1 : at;
  return is_letter (b, letter, 'c') || is_letter (b, letter, 'f') ? letter + 1 : at;
}
