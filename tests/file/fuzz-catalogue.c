/* Fuzz target of the catalogue's reader: any bytes; what is read is written, and read and written again the same.
 * Seeds: data/metals.xml, cut into single records.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-book-file.h"

#include <stdint.h>
#include <stdlib.h>

int LLVMFuzzerTestOneInput (const uint8_t *data, size_t size);

static GBytes *
write_again (EmCatalogue *catalogue)
{
  GBytes *bytes = em_catalogue_write (catalogue, FALSE, NULL);

  em_catalogue_clear (catalogue);
  if (bytes == NULL)
    abort ();
  return bytes;
}

int
LLVMFuzzerTestOneInput (const uint8_t *data, size_t size)
{
  g_autoptr (GBytes) bytes = g_bytes_new_static (data, size);
  g_autoptr (GError) error = NULL;
  EmCatalogue catalogue;

  if (!em_catalogue_parse (bytes, "fuzzed", &catalogue, &error))
    {
      if (error == NULL || !g_utf8_validate (error->message, -1, NULL))
        abort ();
      return 0;
    }

  g_autoptr (GBytes) once = write_again (&catalogue);

  if (!em_catalogue_parse (once, "written", &catalogue, NULL))
    abort ();

  g_autoptr (GBytes) twice = write_again (&catalogue);

  if (!g_bytes_equal (once, twice))
    abort ();
  return 0;
}
