/* Checks of the currency table against ISO 4217 minor units.
 *
 * The digits below are those of ISO 4217 (list one), read against ICU 72 except where
 * noted; IQD and MGA follow the standard, not ICU.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-money.h"
#include "em-test-main.h"

#include <string.h>

typedef struct { int digits; const char *codes; } Group;

static const Group groups[] =
{
  { 2, "USD EUR GBP CHF CAD AUD NZD CNY INR MXN BRL SEK NOK DKK PLN CZK HUF TRY ZAR SGD HKD TWD THB MYR IDR PHP ILS AED SAR COP MRU MGA" },
  { 0, "JPY KRW VND CLP ISK PYG UGX RWF XOF XAF XPF BIF DJF GNF KMF VUV" },
  { 3, "KWD BHD OMR JOD TND LYD IQD" },
  { 4, "CLF UYW" },
};

START_TEST (test_minor_units)
{
  for (size_t g = 0; g < sizeof groups / sizeof groups[0]; g++)
    for (const char *code = groups[g].codes; *code != '\0'; code += code[3] == ' ' ? 4 : 3)
      {
        char text[4] = { code[0], code[1], code[2], '\0' };
        EmCurrency currency;

        ck_assert_msg (em_currency_find (text, &currency), "%s is missing", text);
        ck_assert_msg (currency.digits == groups[g].digits, "%s has %d digits", text, currency.digits);
        ck_assert_str_eq (currency.code, text);
      }
}
END_TEST

START_TEST (test_table_is_in_order)
{
  EmCurrency last, currency, found;

  ck_assert_int_gt (em_currency_count (), 150);
  em_currency_at (0, &last);
  for (int i = 1; i < em_currency_count (); i++, last = currency)
    {
      em_currency_at (i, &currency);
      ck_assert_msg (strcmp (last.code, currency.code) < 0, "%s after %s", currency.code, last.code);
      ck_assert (em_currency_find (currency.code, &found));
      ck_assert_int_eq (found.digits, currency.digits);
    }
}
END_TEST

START_TEST (test_what_is_no_currency)
{
  static const char *const bad[] = { "", "XXX", "XAU", "usd", "US", "USDX", "$", NULL };
  EmCurrency currency = { "ZZZ", 9 };

  for (int i = 0; bad[i] != NULL; i++)
    ck_assert_msg (!em_currency_find (bad[i], &currency), "%s was found", bad[i]);
  ck_assert (!em_currency_find (NULL, &currency));
  ck_assert_int_eq (currency.digits, 9);
}
END_TEST

EM_TEST_MAIN ("core: currency", test_minor_units, test_table_is_in_order, test_what_is_no_currency)
