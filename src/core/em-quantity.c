/* em-quantity: reading and writing dimensions, and numbers of files.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-quantity.h"

#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { NUMBER_MAX = 400 /* bytes of one number */, LONG_DIGITS = 18 /* that any int64_t holds */ };

/* ---- numbers of files ---- */

static bool
is_digit (char c)
{
  return c >= '0' && c <= '9';
}

/* Powers of ten that a double holds exactly, as it does every whole number of SHORT_DIGITS digits: dividing the one by the
 * other rounds once, correctly (W. D. Clinger, How to read floating point numbers accurately, 1990). */
enum { SHORT_DIGITS = 15, POWERS = 23 };

static const double powers_of_ten[POWERS] =
{
  1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16, 1e17, 1e18, 1e19, 1e20, 1e21, 1e22,
};

/* Numbers as people type them, few digits and no exponent, many times quicker than strtod and to the same bits. False: none of these,
 * and maybe no number. */
static bool
convert_short (const char *text, double *out_value)
{
  bool is_negative = text[0] == '-', has_point = false;
  int64_t whole = 0;
  int all = 0, digits = 0, decimals = 0;

  for (const char *at = text + (text[0] == '-' || text[0] == '+'); *at != '\0'; at++)
    if (is_digit (*at))
      {
        all++;
        whole = 10 * whole + (*at - '0');
        digits += whole > 0;
        decimals += has_point;
        if (digits > SHORT_DIGITS || decimals >= POWERS || all > SHORT_DIGITS + POWERS)
          return false;
      }
    else if (*at == '.' && !has_point)
      has_point = true;
    else
      return false;
  if (all == 0)
    return false;
  *out_value = (double) whole / powers_of_ten[decimals];
  if (is_negative)
    *out_value = -*out_value;
  return true;
}

/* The decimal mark printf and strtod use now, whatever the locale: what stands between the digits of one half. */
static void
find_mark (char *out_mark, size_t size)
{
  char half[16];
  int n = snprintf (half, sizeof half, "%.1f", 0.5);

  snprintf (out_mark, size, "%.*s", n - 2, half + 1);
}

/* Correctly rounded, as strtod is: text holds digits, at most one '.', maybe an exponent. */
static double
convert (const char *text)
{
  char mark[16], local[NUMBER_MAX + 16];
  const char *point;
  double value;

  if (convert_short (text, &value))
    return value;
  point = strchr (text, '.');
  find_mark (mark, sizeof mark);
  if (point == NULL)
    return strtod (text, NULL);
  snprintf (local, sizeof local, "%.*s%s%s", (int) (point - text), text, mark, point + 1);
  return strtod (local, NULL);
}

/* Length of an unsigned decimal number at text, 0 when there is none. */
static size_t
span_number (const char *text, bool takes_comma, bool takes_exponent)
{
  size_t n = 0, digits = 0;

  for (; is_digit (text[n]); n++)
    digits++;
  if (text[n] == '.' || (takes_comma && text[n] == ','))
    for (n++; is_digit (text[n]); n++)
      digits++;
  if (digits == 0)
    return 0;
  if (takes_exponent && (text[n] == 'e' || text[n] == 'E'))
    {
      size_t e = n + 1 + (text[n + 1] == '+' || text[n + 1] == '-');

      if (!is_digit (text[e]))
        return 0;
      while (is_digit (text[e]))
        e++;
      n = e;
    }
  return n;
}

bool
em_number_read (const char *text, double *out_value)
{
  size_t sign = text != NULL && (text[0] == '-' || text[0] == '+');

  if (text == NULL)
    return false;
  if (convert_short (text, out_value))
    return true;
  if (strlen (text) >= NUMBER_MAX)
    return false;

  size_t n = span_number (text + sign, false, true);

  if (n == 0 || text[sign + n] != '\0')
    return false;

  double value = convert (text);

  if (!isfinite (value))
    return false;
  *out_value = value;
  return true;
}

bool
em_integer_read (const char *text, int64_t *out_value)
{
  size_t n = text != NULL && (text[0] == '-' || text[0] == '+');
  int64_t whole = 0;

  if (text == NULL || !is_digit (text[n]))
    return false;
  for (; is_digit (text[n]); n++)
    if (n < LONG_DIGITS)
      whole = 10 * whole + (text[n] - '0');
  if (text[n] != '\0')
    return false;
  if (n <= LONG_DIGITS)
    {
      *out_value = text[0] == '-' ? -whole : whole;
      return true;
    }
  errno = 0;

  long long value = strtoll (text, NULL, 10);

  if (errno == ERANGE)
    return false;
  *out_value = value;
  return true;
}

/* Puts '.' where the locale's mark stands. */
static void
set_point (char *text, char point)
{
  char mark[16], *at;

  find_mark (mark, sizeof mark);
  at = strstr (text, mark);
  if (at == NULL)
    return;
  *at = point;
  memmove (at + 1, at + strlen (mark), strlen (at + strlen (mark)) + 1);
}

/* Digits of whole ≥ 0, the last decimals of them after a point, backwards from end; returns where they begin. */
static char *
write_back (int64_t whole, int decimals, char *end)
{
  for (int i = 0; i < decimals || whole > 0 || i == 0; i++)
    {
      *--end = (char) ('0' + whole % 10);
      whole /= 10;
      if (i + 1 == decimals)
        {
          *--end = '.';
          if (whole == 0)
            *--end = '0';
        }
    }
  return end;
}

/* A value that a decimal number of at most SHORT_DIGITS digits stands for, no larger or smaller than "%.15g" writes without an
 * exponent: the least decimals that read back. That many digits are what "%.15g" would give, since a double tells all decimal
 * numbers of 15 digits apart. NULL: another one. */
static char *
write_short (double value, char *end)
{
  double size = fabs (value);

  if (!(size >= 1e-4 && size < powers_of_ten[SHORT_DIGITS]))
    return NULL;
  for (int decimals = 0; size * powers_of_ten[decimals] < powers_of_ten[SHORT_DIGITS] - 1.0; decimals++)
    {
      int64_t whole = (int64_t) (size * powers_of_ten[decimals] + 0.5);
      double back = (double) whole / powers_of_ten[decimals];

      if (back < size || back > size)
        continue;
      end = write_back (whole, decimals, end);
      if (value < 0.0)
        *--end = '-';
      return end;
    }
  return NULL;
}

/* As snprintf gives text. */
static int
copy_out (const char *text, char *buffer, size_t size)
{
  size_t n = strlen (text), fits = n < size ? n : size - 1;

  if (size > 0)
    {
      memcpy (buffer, text, fits);
      buffer[fits] = '\0';
    }
  return (int) n;
}

int
em_number_write (double value, char *buffer, size_t size)
{
  char text[64] = "", *short_text;
  double back = 0.0;

  short_text = write_short (value, &text[sizeof text - 1]);
  if (short_text != NULL)
    return copy_out (short_text, buffer, size);
  for (int digits = 15; digits <= 17; digits++)
    {
      snprintf (text, sizeof text, "%.*g", digits, value);
      set_point (text, '.');
      if (em_number_read (text, &back) && back == value)
        break;
    }
  return copy_out (text, buffer, size);
}

/* ---- dimensions as people write them ---- */

typedef struct { const char *text; EmQuantityType type; double factor; } Unit;

/* Longest first where one begins another. NIST SP 811 appendix B: 1 in = 25.4 mm, 1 mil = 0.0254 mm, exact. */
static const Unit units_known[] =
{
  { "mm²", EM_QUANTITY_AREA, 1.0 }, { "mm2", EM_QUANTITY_AREA, 1.0 }, { "mm^2", EM_QUANTITY_AREA, 1.0 },
  { "cm²", EM_QUANTITY_AREA, 100.0 }, { "cm2", EM_QUANTITY_AREA, 100.0 },
  { "in²", EM_QUANTITY_AREA, 645.16 }, { "in2", EM_QUANTITY_AREA, 645.16 }, { "in^2", EM_QUANTITY_AREA, 645.16 },
  { "sq in", EM_QUANTITY_AREA, 645.16 },
  { "mm", EM_QUANTITY_LENGTH, 1.0 }, { "cm", EM_QUANTITY_LENGTH, 10.0 }, { "thou", EM_QUANTITY_LENGTH, 0.0254 },
  { "mils", EM_QUANTITY_LENGTH, 0.0254 }, { "mil", EM_QUANTITY_LENGTH, 0.0254 }, { "inches", EM_QUANTITY_LENGTH, 25.4 },
  { "inch", EM_QUANTITY_LENGTH, 25.4 }, { "in.", EM_QUANTITY_LENGTH, 25.4 }, { "in", EM_QUANTITY_LENGTH, 25.4 },
  { "IN", EM_QUANTITY_LENGTH, 25.4 }, { "MM", EM_QUANTITY_LENGTH, 1.0 }, { "\"", EM_QUANTITY_LENGTH, 25.4 },
  { "″", EM_QUANTITY_LENGTH, 25.4 }, { "”", EM_QUANTITY_LENGTH, 25.4 }, { "m", EM_QUANTITY_LENGTH, 1000.0 },
  { "degrees", EM_QUANTITY_ANGLE, 1.0 }, { "deg", EM_QUANTITY_ANGLE, 1.0 }, { "°", EM_QUANTITY_ANGLE, 1.0 },
};

static const struct { const char *text; double value; } fractions[] =
  { { "½", 0.5 }, { "¼", 0.25 }, { "¾", 0.75 }, { "⅛", 0.125 }, { "⅜", 0.375 }, { "⅝", 0.625 }, { "⅞", 0.875 } };

static bool
take (const char **at, const char *word)
{
  size_t n = strlen (word);

  if (strncmp (*at, word, n) != 0)
    return false;
  *at += n;
  return true;
}

static void
skip_space (const char **at)
{
  while (**at == ' ' || **at == '\t' || take (at, "\xc2\xa0") || take (at, "\xe2\x80\xaf"))
    if (**at == ' ' || **at == '\t')
      (*at)++;
}

static bool
take_fraction_sign (const char **at, double *out_value)
{
  for (size_t i = 0; i < sizeof fractions / sizeof fractions[0]; i++)
    if (take (at, fractions[i].text))
      {
        *out_value = fractions[i].value;
        return true;
      }
  return false;
}

static bool
take_decimal (const char **at, bool *out_is_whole, double *out_value)
{
  char text[NUMBER_MAX];
  size_t n = span_number (*at, true, false);

  if (n == 0 || n >= sizeof text)
    return false;
  memcpy (text, *at, n);
  text[n] = '\0';
  *out_is_whole = strpbrk (text, ".,") == NULL;
  if (strchr (text, ',') != NULL)
    *strchr (text, ',') = '.';
  *out_value = convert (text);
  *at += n;
  return true;
}

/* "/ whole" after a whole numerator; a chain "0.3/0.4/0.5" or "1/2/3" is no fraction. */
static bool
take_over (const char **at, double *value)
{
  const char *p = *at;
  bool is_whole;
  double below;

  if (!take (&p, "/") || !take_decimal (&p, &is_whole, &below) || !is_whole || below <= 0.0 || *p == '/')
    return false;
  *value /= below;
  *at = p;
  return true;
}

/* "0.5", "1/2", "½", "1 1/2", "1-1/2", "1½". */
static bool
take_value (const char **at, double *out_value)
{
  const char *p = *at;
  bool is_whole = false, part_is_whole;
  double value, part;

  if (take_fraction_sign (at, out_value))
    return true;
  if (!take_decimal (&p, &is_whole, &value))
    return false;
  if (is_whole && !take_over (&p, &value))
    {
      const char *q = p;

      if (take_fraction_sign (&q, &part))
        p = q, value += part;
      else
        {
          if (*q == '-' || *q == ' ')
            q++;
          if (q > p && (take_fraction_sign (&q, &part)
                        || (take_decimal (&q, &part_is_whole, &part) && part_is_whole && take_over (&q, &part))) && part < 1.0)
            p = q, value += part;
        }
    }
  *at = p;
  *out_value = value;
  return true;
}

static bool
take_unit (const char **at, EmQuantityType type, double *factor, bool *has_unit)
{
  for (size_t i = 0; i < sizeof units_known / sizeof units_known[0]; i++)
    if (units_known[i].type == type && take (at, units_known[i].text))
      {
        *factor = units_known[i].factor;
        return *has_unit = true;
      }
  return false;
}

static bool
take_dash (const char **at)
{
  skip_space (at);
  return take (at, "-") || take (at, "–") || take (at, "…") || take (at, "...") || take (at, "..");
}

/* What follows the first value: a tolerance, a range, or low/likely/high. */
static bool
take_limits (const char **at, EmReading *reading)
{
  const char *p = *at;
  double second, third;

  skip_space (&p);
  if (take (&p, "±") || take (&p, "+/-"))
    {
      skip_space (&p);
      if (!take_value (&p, &second))
        return false;
      reading->low = reading->value - second;
      reading->high = reading->value + second;
    }
  else if (take (&p, "/"))
    {
      if (!take_value (&p, &second) || !take (&p, "/") || !take_value (&p, &third) || second < reading->value || third < second)
        return false;
      reading->low = reading->value;
      reading->value = second;
      reading->high = third;
    }
  else if (take_dash (&p))
    {
      skip_space (&p);
      if (!take_value (&p, &second) || second < reading->value)
        return false;
      reading->low = reading->value;
      reading->high = second;
      reading->value = (reading->low + second) / 2.0;
    }
  else
    return true;
  *at = p;
  return true;
}

/* "2 x", "4×", "3·" before the size. */
static void
take_count (const char **at, EmReading *reading)
{
  const char *p = *at;
  bool is_whole;
  double count;

  if (!take_decimal (&p, &is_whole, &count) || !is_whole || count < 1.0)
    return;
  skip_space (&p);
  if (!(take (&p, "x") || take (&p, "X") || take (&p, "×") || take (&p, "·")))
    return;
  skip_space (&p);
  *at = p;
  reading->count = count;
}

/* written·factor as the double nearest the exact product: a decimal times 25.4 is a decimal, of at most 15 digits in any
 * dimension, while the product of the two doubles may be the double beside it (0.015 in is 0.381 mm). */
static double
exact_product (double written, double factor)
{
  double product = written * factor, nearest;
  char text[40];

  if (factor == 1.0 || !isfinite (product))
    return product;
  snprintf (text, sizeof text, "%.15g", product);
  set_point (text, '.');
  return em_number_read (text, &nearest) ? nearest : product;
}

static bool
parse (const char *text, EmQuantityType type, EmUnits units, EmReading *reading)
{
  bool is_inch = units == EM_UNITS_INCH;
  double factor = !is_inch ? 1.0 : type == EM_QUANTITY_LENGTH ? 25.4 : type == EM_QUANTITY_AREA ? 645.16 : 1.0;
  bool is_negative = false;

  take_count (&text, reading);
  if (take (&text, "ø") || take (&text, "Ø") || take (&text, "⌀"))
    skip_space (&text);
  is_negative = take (&text, "-");
  if (!take_value (&text, &reading->value))
    return false;
  skip_space (&text);
  take_unit (&text, type, &factor, &reading->has_unit);
  if (!is_negative && !take_limits (&text, reading))
    return false;
  skip_space (&text);
  take_unit (&text, type, &factor, &reading->has_unit);
  skip_space (&text);
  if (is_negative)
    reading->value = -reading->value;
  reading->value = exact_product (reading->value, factor);
  reading->low = exact_product (reading->low, factor);
  reading->high = exact_product (reading->high, factor);
  return *text == '\0';
}

EmStatus
em_quantity_read (const char *text, EmQuantityType type, EmUnits units, const char *field, EmReading *out_reading, EmFault *out_fault)
{
  EmReading reading = { .value = EM_ABSENT, .count = EM_ABSENT, .low = EM_ABSENT, .high = EM_ABSENT };

  if (text != NULL)
    skip_space (&text);
  if (text == NULL || *text == '\0')
    return em_fault_set (out_fault, EM_FAULT_MISSING, field, EM_ABSENT, EM_ABSENT, EM_ABSENT);
  if (!parse (text, type, units, &reading))
    return em_fault_set (out_fault, EM_FAULT_RANGE, field, EM_ABSENT, EM_ABSENT, EM_ABSENT);
  if (isinf (reading.value) || isinf (reading.high) || isinf (reading.count))
    return em_fault_set (out_fault, EM_FAULT_NOT_FINITE, field, reading.value, EM_ABSENT, EM_ABSENT);
  *out_reading = reading;
  return EM_OK;
}

const char *
em_quantity_unit (EmQuantityType type, EmUnits units)
{
  switch (type)
    {
    case EM_QUANTITY_LENGTH:
      return units == EM_UNITS_INCH ? "in" : "mm";
    case EM_QUANTITY_AREA:
      return units == EM_UNITS_INCH ? "in²" : "mm²";
    case EM_QUANTITY_ANGLE:
      return "°";
    case EM_QUANTITY_COUNT:
    case EM_QUANTITY_CHOICE:
      break;
    }
  return "";
}

static void
strip_zeros (char *text)
{
  size_t n = strlen (text);

  if (strchr (text, '.') == NULL)
    return;
  while (text[n - 1] == '0')
    text[--n] = '\0';
  if (text[n - 1] == '.')
    text[--n] = '\0';
}

int
em_quantity_write (double value, EmQuantityType type, EmUnits units, char decimal_mark, char *buffer, size_t size)
{
  bool is_inch = units == EM_UNITS_INCH && (type == EM_QUANTITY_LENGTH || type == EM_QUANTITY_AREA);
  double factor = !is_inch ? 1.0 : type == EM_QUANTITY_LENGTH ? 25.4 : 645.16, back = 0.0;
  char text[400];

  if (!isfinite (value))
    return snprintf (buffer, size, "%s", "");
  for (int places = is_inch ? 5 : 4; places <= 17; places++)
    {
      snprintf (text, sizeof text, "%.*f", places, value / factor);
      set_point (text, '.');
      if (em_number_read (text, &back) && fabs (back * factor - value) <= 1e-9)
        break;
    }
  strip_zeros (text);
  if (strcmp (text, "-0") == 0)
    memmove (text, "0", 2);

  size_t sign = text[0] == '-';

  if (is_inch && decimal_mark == '.' && text[sign] == '0' && text[sign + 1] == '.')
    memmove (text + sign, text + sign + 1, strlen (text + sign));
  if (decimal_mark != '.' && strchr (text, '.') != NULL)
    *strchr (text, '.') = decimal_mark;
  return snprintf (buffer, size, "%s", text);
}
