/* Fuzz target of the quote's reader and of the clipboard's: any bytes. What is read is saved, read again the same and saved the same; is
 * priced with its own books or the shipped ones without harm, and its printed lines add up. Its features go through the clipboard.
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

/* Features alone, there and back; those of a newer version bring what was kept of them in the order it is written in. */
static void
paste (const EmFeature *features, int32_t n_features, gboolean is_newer)
{
  g_autofree char *xml = em_features_to_xml (features, n_features), *again = NULL;
  EmQuote pasted;

  PROMISE (xml != NULL && em_features_from_xml (xml, -1, &pasted, NULL));
  PROMISE (pasted.n_features == n_features);
  for (int32_t i = 0; i < n_features; i++)
    PROMISE (is_newer || em_feature_equal (&pasted.feature[i], &features[i]));
  again = em_features_to_xml (pasted.feature, pasted.n_features);
  PROMISE (is_newer || g_strcmp0 (xml, again) == 0);
  em_quote_clear (&pasted);
}

static void
try_clipboard (const uint8_t *data, size_t size)
{
  g_autoptr (GError) error = NULL;
  EmQuote pasted;

  if (!em_features_from_xml ((const char *) data, (gssize) size, &pasted, &error))
    {
      fuzz_check_refusal (error);
      return;
    }
  paste (pasted.feature, pasted.n_features, TRUE);
  em_quote_clear (&pasted);
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
      if (size > 0 && error->code == EM_FILE_ERROR_NOT_OURS)
        try_clipboard (data, size);
      return 0;
    }
  paste (file.quote.feature, file.quote.n_features, file.is_newer_minor);
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
