/* Fuzz target of the price list's reader: any bytes; a list that is read can be applied, and the catalogue stays sound.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-fuzz.h"
#include "em-price-list.h"

static void
apply (const EmPriceList *list, const EmCatalogue *shipped)
{
  EmCatalogue catalogue;
  EmFault fault;

  PROMISE (em_catalogue_copy (shipped, &catalogue) == EM_OK);
  PROMISE (em_price_list_apply (list, &catalogue, NULL, NULL));
  for (int32_t i = 0; i < catalogue.n_fillers; i++)
    PROMISE (em_filler_check (&catalogue.filler[i], &fault) == EM_OK);
  em_catalogue_clear (&catalogue);
}

int
LLVMFuzzerTestOneInput (const uint8_t *data, size_t size)
{
  static EmCatalogue shipped;
  static EmCurrency euro;

  if (shipped.n_fillers == 0)
    {
      fuzz_load_books (NULL, &shipped);
      em_currency_find ("EUR", &euro);
    }

  g_autoptr (GBytes) bytes = g_bytes_new_static (data, size);
  g_autoptr (GError) error = NULL;
  g_autoptr (EmPriceList) list = em_price_list_parse (bytes, "fuzzed", &shipped, &euro, &error);

  if (list != NULL)
    apply (list, &shipped);
  else
    fuzz_check_refusal (error);
  return 0;
}
