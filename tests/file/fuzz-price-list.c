/* Fuzz target of the price list's reader: any bytes; a list that is read can be applied, and the catalogue stays sound.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-book-file.h"
#include "em-price-list.h"

#include <stdint.h>
#include <stdlib.h>

int LLVMFuzzerTestOneInput (const uint8_t *data, size_t size);

static void
load (EmCatalogue *out_catalogue)
{
  const char *folder = g_getenv ("ESTIMEND_TEST_DATA");
  g_autofree char *path = g_build_filename (folder != NULL ? folder : "data", "metals.xml", NULL);

  if (!em_catalogue_load (path, out_catalogue, NULL))
    abort ();
}

static void
apply (const EmPriceList *list, const EmCatalogue *shipped)
{
  EmCatalogue catalogue;
  EmFault fault;

  if (em_catalogue_copy (shipped, &catalogue) != EM_OK || !em_price_list_apply (list, &catalogue, NULL, NULL))
    abort ();
  for (int32_t i = 0; i < catalogue.n_fillers; i++)
    if (em_filler_check (&catalogue.filler[i], &fault) != EM_OK)
      abort ();
  em_catalogue_clear (&catalogue);
}

int
LLVMFuzzerTestOneInput (const uint8_t *data, size_t size)
{
  static EmCatalogue shipped;
  static EmCurrency euro;

  if (shipped.n_fillers == 0)
    {
      load (&shipped);
      em_currency_find ("EUR", &euro);
    }

  g_autoptr (GBytes) bytes = g_bytes_new_static (data, size);
  g_autoptr (GError) error = NULL;
  g_autoptr (EmPriceList) list = em_price_list_parse (bytes, "fuzzed", &shipped, &euro, &error);

  if (list != NULL)
    apply (list, &shipped);
  else if (error == NULL || !g_utf8_validate (error->message, -1, NULL))
    abort ();
  return 0;
}
