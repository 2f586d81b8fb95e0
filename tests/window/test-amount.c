/* test-amount: money as people type it. Digits of the currencies: ISO 4217. Groups of three, apart by a blank, a point, a comma or
 * an apostrophe, with either decimal mark: SI Brochure 5.4.4 and the customs of Europe and America (common practice, no source).
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-field.h"
#include "../core/em-test-main.h"

enum { NONE = -1 };

static const struct { const char *text, *currency; int64_t minor; } amounts[] =
{
  { "80", "EUR", 8000 }, { " 80 ", "EUR", 8000 }, { "80.5", "EUR", 8050 }, { "80,05", "EUR", 8005 }, { ".5", "EUR", 50 }, { "5.", "EUR", 500 },
  { "1,250.00", "EUR", 125000 }, { "1.250,00", "EUR", 125000 }, { "1 250,00", "EUR", 125000 }, { "1'250.00", "EUR", 125000 },
  { "1\302\240250,00", "EUR", 125000 }, { "1\342\200\257250,00", "EUR", 125000 }, { "1\342\200\231250.00", "EUR", 125000 },
  { "1,250", "EUR", 125000 }, { "1.250", "EUR", 125000 }, { "1.250.000", "EUR", 125000000 }, { "12,345,678.90", "EUR", 1234567890 },
  { "1.250", "KWD", 1250 }, { "1,250.125", "KWD", 1250125 }, { "1,250", "JPY", 1250 }, { "1250", "JPY", 1250 }, { "0", "JPY", 0 },
  { "92233720368547758.07", "EUR", INT64_MAX },
  { "92233720368547758.08", "EUR", NONE }, { "92233720368547759", "EUR", NONE }, { "99999999999999999999", "JPY", NONE },
  /* Finer than a cent, or no way of grouping: a slip, which must not become a thousand times the amount. */
  { "0.125", "EUR", NONE }, { "0,125", "EUR", NONE }, { "1.2345", "EUR", NONE }, { "1,2,3", "EUR", NONE }, { "1 2", "EUR", NONE },
  { "12,34,567", "EUR", NONE }, { "1234,567.00", "EUR", NONE }, { "1,234,56", "EUR", NONE }, { "1.234 567,00", "EUR", NONE }, { "1,,250", "EUR", NONE },
  { ",250.00", "EUR", NONE }, { "1,250,", "EUR", NONE }, { "1.5", "JPY", NONE }, { "0.5", "JPY", NONE },
  { "", "EUR", NONE }, { ".", "EUR", NONE }, { "-5", "EUR", NONE }, { "5 EUR", "EUR", NONE }, { "1e3", "EUR", NONE }, { "\331\245", "EUR", NONE },
};

START_TEST (test_reading)
{
  for (size_t i = 0; i < sizeof amounts / sizeof amounts[0]; i++)
    {
      EmCurrency currency;
      int64_t minor = -7;
      bool is_read;

      ck_assert (em_currency_find (amounts[i].currency, &currency));
      is_read = em_money_read (amounts[i].text, &currency, &minor);
      ck_assert_msg (is_read == (amounts[i].minor != NONE), "“%s” was %sread", amounts[i].text, is_read ? "" : "not ");
      ck_assert_msg (minor == (is_read ? amounts[i].minor : -7), "“%s”: %" G_GINT64_FORMAT, amounts[i].text, minor);
    }
}
END_TEST

START_TEST (test_shown_is_read_as_the_same)
{
  static const char *const codes[] = { "EUR", "JPY", "KWD" };
  static const int64_t minors[] = { 0, 1, 9, 10, 99, 100, 999, 1000, 1001, 123456, 1000000, INT64_MAX };

  for (size_t c = 0; c < sizeof codes / sizeof codes[0]; c++)
    for (size_t i = 0; i < sizeof minors / sizeof minors[0]; i++)
      {
        EmCurrency currency;
        int64_t back;

        ck_assert (em_currency_find (codes[c], &currency));
        g_autofree char *shown = em_money_write (minors[i], &currency);
        ck_assert_msg (em_money_read (shown, &currency, &back) && back == minors[i], "%s %s", shown, codes[c]);
      }
}
END_TEST

EM_TEST_MAIN ("window: amount", test_reading, test_shown_is_read_as_the_same)
