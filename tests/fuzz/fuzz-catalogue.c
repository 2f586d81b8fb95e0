/* Fuzz target of the catalogue's reader: any bytes; what is read is written, and read and written again the same.
 * Seeds: data/metals.xml, and single records of it.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-fuzz.h"

static GBytes *
write_and_clear (EmCatalogue *catalogue)
{
  GBytes *bytes = em_catalogue_write (catalogue, FALSE, NULL);

  em_catalogue_clear (catalogue);
  PROMISE (bytes != NULL);
  return bytes;
}

int
LLVMFuzzerTestOneInput (const uint8_t *data, size_t size)
{
  g_autoptr (GBytes) bytes = g_bytes_new_static (data, size), once = NULL, twice = NULL;
  g_autoptr (GError) error = NULL;
  EmCatalogue catalogue;

  if (!em_catalogue_parse (bytes, "fuzzed", &catalogue, &error))
    {
      fuzz_check_refusal (error);
      return 0;
    }
  once = write_and_clear (&catalogue);
  PROMISE (em_catalogue_parse (once, "written", &catalogue, NULL));
  twice = write_and_clear (&catalogue);
  PROMISE (g_bytes_equal (once, twice));
  return 0;
}
