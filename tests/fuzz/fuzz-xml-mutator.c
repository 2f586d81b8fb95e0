/* Changes XML as XML: a value of some attribute becomes one at or beyond the edge of what it may be, a stretch between two
 * tags is taken out or doubled. Every other time it is libFuzzer's own change of bytes.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-fuzz.h"

#include <string.h>

size_t LLVMFuzzerCustomMutator (uint8_t *data, size_t size, size_t size_max, unsigned int seed);

static const char *const wild[] = {
  "", "0", "-0", "1", "-1", "2", "0.1", "1e-9", "1e-320", "1e300", "1e999", "-1e300", "nan", "inf", "0x1p3", "1,5", " 1", "1 ",
  "2147483647", "2147483648", "-2147483648", "4294967295", "9223372036854775807", "9223372036854775808", "-9223372036854775808",
  "1000000", "1000001", "yes", "no", "maybe", "1.0", "1.1", "1.9", "2.0", "0.9", "&amp;", "&lt;", "&#0;", "&#x10FFFF;", "\xc3\xa9", "\xff",
};

/* A generator of its own, so that a run with a seed can be had again. Numerical Recipes' constants, 3rd ed., section 7.1. */
static unsigned int
draw (unsigned int *seed, size_t below)
{
  *seed = *seed * 1664525u + 1013904223u;
  return below == 0 ? 0 : (unsigned int) ((*seed >> 8) % below);
}

/* Start of the n-th c, n counted round; size when there is none. */
static size_t
find_nth (const uint8_t *data, size_t size, uint8_t c, unsigned int *seed)
{
  size_t from = draw (seed, size);

  for (size_t i = 0; i < size; i++)
    if (data[(from + i) % size] == c)
      return (from + i) % size;
  return size;
}

/* Puts n bytes where the stretch [from, to) is. */
static size_t
replace (uint8_t *data, size_t size, size_t size_max, size_t from, size_t to, const uint8_t *bytes, size_t n)
{
  if (size - (to - from) + n > size_max)
    return size;
  memmove (data + from + n, data + to, size - to);
  if (n > 0)
    memcpy (data + from, bytes, n);
  return size - (to - from) + n;
}

static size_t
change_value (uint8_t *data, size_t size, size_t size_max, unsigned int *seed)
{
  size_t at = find_nth (data, size, '=', seed), end;
  const char *value = wild[draw (seed, G_N_ELEMENTS (wild))];

  if (at + 2 >= size || data[at + 1] != '"')
    return size;
  for (end = at + 2; end < size && data[end] != '"'; end++)
    ;
  return end < size ? replace (data, size, size_max, at + 2, end, (const uint8_t *) value, strlen (value)) : size;
}

static size_t
change_elements (uint8_t *data, size_t size, size_t size_max, unsigned int *seed)
{
  size_t a = find_nth (data, size, '<', seed), b = find_nth (data, size, '<', seed);
  size_t from = MIN (a, b), to = MAX (a, b);

  if (to >= size || from == to)
    return size;
  if (draw (seed, 2) == 0)
    return replace (data, size, size_max, from, to, NULL, 0);

  uint8_t *copy = g_memdup2 (data + from, to - from);
  size_t changed = replace (data, size, size_max, to, to, copy, to - from);

  g_free (copy);
  return changed;
}

size_t
LLVMFuzzerCustomMutator (uint8_t *data, size_t size, size_t size_max, unsigned int seed)
{
  size_t changed = size;

  switch (size == 0 ? 3 : draw (&seed, 6))
    {
    case 0: case 1: case 2:
      changed = change_value (data, size, size_max, &seed);
      break;
    case 3:
      changed = change_elements (data, size, size_max, &seed);
      break;
    default:
      break;
    }
  return changed != size ? changed : LLVMFuzzerMutate (data, size, size_max);
}
