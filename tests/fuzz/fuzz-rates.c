/* Fuzz target of the rate book's reader: any bytes; a book that is read has passed the engine's checks, is written, and read
 * and written again the same. Seed: data/rates.xml.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-fuzz.h"

static gboolean
is_newer (GBytes *written)
{
  gsize size;
  const char *text = g_bytes_get_data (written, &size);

  return g_strstr_len (text, MIN (size, 200), "\" version=\"1.0\"") == NULL;
}

int
LLVMFuzzerTestOneInput (const uint8_t *data, size_t size)
{
  g_autoptr (GBytes) bytes = g_bytes_new_static (data, size), once = NULL, twice = NULL;
  g_autoptr (GError) error = NULL;
  EmRates rates, again;
  EmFault fault;

  if (!em_rates_parse (bytes, "fuzzed", &rates, &error))
    {
      fuzz_check_refusal (error);
      return 0;
    }
  PROMISE (em_rates_check (&rates, &fault) == EM_OK);
  once = em_rates_write (&rates, NULL);
  PROMISE (once != NULL);
  PROMISE (em_rates_parse (once, "written", &again, NULL));
  /* What is kept of a newer version comes back whole, but its pieces in the order they are written in. */
  PROMISE (is_newer (once) || em_rates_equal (&rates, &again));
  twice = em_rates_write (&again, NULL);
  PROMISE (twice != NULL && g_bytes_equal (once, twice));
  em_rates_clear (&rates);
  em_rates_clear (&again);
  return 0;
}
