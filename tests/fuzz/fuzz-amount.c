/* Fuzz target of amounts of money as typed: what is read is not below nothing, and is shown so that it is read the same.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-field.h"
#include "em-fuzz.h"

int
LLVMFuzzerTestOneInput (const uint8_t *data, size_t size)
{
  static const char *const codes[] = { "EUR", "JPY", "KWD" };   /* 2, 0 and 3 digits: ISO 4217 */
  g_autofree char *text = g_strndup ((const char *) data, size);

  for (guint i = 0; i < G_N_ELEMENTS (codes); i++)
    {
      EmCurrency currency;
      int64_t minor = -7, again;
      g_autofree char *shown = NULL;

      PROMISE (em_currency_find (codes[i], &currency));
      if (!em_money_read (text, &currency, &minor))
        {
          PROMISE (minor == -7);
          continue;
        }
      PROMISE (minor >= 0);
      shown = em_money_write (minor, &currency);
      PROMISE (em_money_read (shown, &currency, &again));
      PROMISE (again == minor);
    }
  return 0;
}
