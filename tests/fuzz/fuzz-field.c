/* Fuzz target of what is typed into a field: any text as a length, an area, an angle or a count, in either units, and as a
 * number of a file. What was read and is shown again, with either decimal mark, is read as the same.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-fuzz.h"
#include "em-quantity.h"

#include <math.h>
#include <string.h>

static void
check_shown (double value, EmQuantityType type, EmUnits units, char mark)
{
  char text[512];
  EmReading again;
  int n = em_quantity_write (value, type, units, mark, text, sizeof text);

  PROMISE (n > 0 && (size_t) n < sizeof text && strlen (text) == (size_t) n);
  PROMISE (em_quantity_read (text, type, units, "field", &again, NULL) == EM_OK);
  /* The writer keeps 1e-9 mm; a product with the inch is read to 15 digits, half a unit of the last of which is at most 5e-15. */
  PROMISE (fabs (again.value - value) <= 1e-9 + fabs (value) * 5e-15);
}

static void
check_type (const char *text, EmQuantityType type, EmUnits units)
{
  EmReading reading = { .value = 42.0, .count = 43.0, .low = 44.0, .high = 45.0 };
  EmFault fault = { 0 };

  if (em_quantity_read (text, type, units, "field", &reading, &fault) != EM_OK)
    {
      PROMISE (fault.code != EM_OK && g_strcmp0 (fault.field, "field") == 0);
      PROMISE (reading.value == 42.0 && reading.count == 43.0 && reading.low == 44.0 && reading.high == 45.0);
      return;
    }
  PROMISE (isfinite (reading.value));
  PROMISE (isnan (reading.low) == isnan (reading.high));
  PROMISE (isnan (reading.low) || (reading.low <= reading.value && reading.value <= reading.high && isfinite (reading.high)));
  PROMISE (isnan (reading.count) || (reading.count >= 1.0 && isfinite (reading.count)));
  check_shown (reading.value, type, units, '.');
  check_shown (reading.value, type, units, ',');
}

static void
check_number (const char *text)
{
  double value, again;
  int64_t whole;
  char written[64];

  if (em_number_read (text, &value))
    {
      PROMISE (isfinite (value));
      PROMISE (em_number_write (value, written, sizeof written) < 32);
      PROMISE (em_number_read (written, &again) && again == value);
    }
  if (em_integer_read (text, &whole))
    {
      g_snprintf (written, sizeof written, "%" G_GINT64_FORMAT, whole);
      PROMISE (g_ascii_strtoll (text, NULL, 10) == whole);
    }
}

int
LLVMFuzzerTestOneInput (const uint8_t *data, size_t size)
{
  static const EmQuantityType types[] = { EM_QUANTITY_LENGTH, EM_QUANTITY_AREA, EM_QUANTITY_ANGLE, EM_QUANTITY_COUNT };
  g_autofree char *text = g_strndup ((const char *) data, size);

  for (guint i = 0; i < G_N_ELEMENTS (types); i++)
    {
      check_type (text, types[i], EM_UNITS_METRIC);
      check_type (text, types[i], EM_UNITS_INCH);
    }
  check_number (text);
  return 0;
}
