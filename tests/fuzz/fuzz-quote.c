/* Fuzz target of the quote's reader: any bytes. What is read is saved, read again the same and saved the same; is priced
 * with its own books or the shipped ones without harm, and its printed lines add up.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-cost.h"
#include "em-fuzz.h"

enum { PRICED_MAX = 64 };   /* features; pricing more finds nothing new */

static void
price (const EmQuoteFile *file, const EmRates *shop_rates, const EmCatalogue *shop_catalogue)
{
  const EmRates *rates = file->sent_rates != NULL ? file->sent_rates : shop_rates;
  const EmCatalogue *catalogue = file->sent_catalogue != NULL ? file->sent_catalogue : shop_catalogue;
  EmCost cost;
  EmFault fault = { 0 };
  int64_t sum = 0;

  em_cost_init (&cost);
  if (file->quote.n_features <= PRICED_MAX && em_cost_quote (&cost, &file->quote, rates, catalogue, NULL, &fault) == EM_OK && cost.n_faults == 0)
    {
      for (int32_t i = 0; i < cost.n_lines; i++)
        sum += cost.line[i].amount_minor;
      PROMISE (sum == cost.totals.total_minor);
    }
  em_cost_clear (&cost);
}

static GBytes *
write_and_clear (EmQuoteFile *file)
{
  g_autoptr (GError) error = NULL;
  GBytes *bytes = em_quote_file_write (file, &error);

  if (bytes == NULL)
    fprintf (stderr, "%s\n", error != NULL ? error->message : "no reason given");
  PROMISE (bytes != NULL);
  em_quote_file_clear (file);
  return bytes;
}

int
LLVMFuzzerTestOneInput (const uint8_t *data, size_t size)
{
  static EmRates rates;
  static EmCatalogue catalogue;
  g_autoptr (GBytes) bytes = g_bytes_new_static (data, size), once = NULL, twice = NULL;
  g_autoptr (GError) error = NULL;
  EmQuoteFile file, again;

  if (catalogue.n_fillers == 0)
    fuzz_load_books (&rates, &catalogue);
  if (!em_quote_file_parse (bytes, "fuzzed", &file, &error))
    {
      fuzz_check_refusal (error);
      return 0;
    }
  price (&file, &rates, &catalogue);

  EmQuote first;

  PROMISE (em_quote_copy (&file.quote, &first) == EM_OK && em_quote_equal (&file.quote, &first));
  once = write_and_clear (&file);
  if (!em_quote_file_parse (once, "written", &again, &error))
    fprintf (stderr, "%s\n", error->message);
  PROMISE (error == NULL);
  /* What is kept of a newer version comes back whole, but its pieces in the order they are written in. */
  PROMISE (again.is_newer_minor || em_quote_equal (&first, &again.quote));
  twice = write_and_clear (&again);
  PROMISE (g_bytes_equal (once, twice));
  em_quote_clear (&first);
  return 0;
}
