/* em-currency: the ISO 4217 table, looked up.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-currency-table.h"

#include <string.h>

enum { N_CURRENCIES = sizeof currencies / sizeof currencies[0] };

bool
em_currency_find (const char *code, EmCurrency *out_currency)
{
  int low = 0, high = N_CURRENCIES;

  if (code == NULL)
    return false;
  while (low < high)
    {
      int middle = low + (high - low) / 2;
      int order = strcmp (code, currencies[middle].code);

      if (order == 0)
        {
          *out_currency = currencies[middle];
          return true;
        }
      if (order < 0)
        high = middle;
      else
        low = middle + 1;
    }
  return false;
}

int
em_currency_count (void)
{
  return N_CURRENCIES;
}

void
em_currency_at (int index, EmCurrency *out_currency)
{
  *out_currency = currencies[index];
}
