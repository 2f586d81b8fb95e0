/* bench-register: the first look through a folder of 10,000 quotes, the next ones, and search at every key.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-bench.h"
#include "em-book-file.h"
#include "em-quote-file.h"
#include "em-register.h"

#include <glib/gstdio.h>

enum { RUNS = 5, QUOTES = 10000, KEYS = 20 };

static void
fill_folder (const char *folder, const EmRates *rates)
{
  static const char *const customers[] = { "Müller Formen", "Éclair Moulds", "North Tooling", "Plastics & Co", "Extrusion Works" };
  EmQuoteFile file;

  em_quote_file_init (&file);
  file.quote.units = rates->units;
  for (int i = 0; i < 3; i++)
    {
      EmFeature feature;
      em_feature_init (&feature, em_kinds[i]);
      for (int k = 0; k < feature.kind->n_fields; k++)
        feature.value[k] = feature.kind->fields[k].quantity == EM_QUANTITY_CHOICE ? 0 : 2.0 + k;
      em_bench_demand (em_quote_insert_take (&file.quote, i, &feature) == EM_OK, "memory");
    }
  em_quote_set_text (&file.quote, EM_QUOTE_NOTES, "Parting line nicked at gate 3, .020 deep. Weld and leave stock, customer machines.");
  for (int i = 0; i < QUOTES; i++)
    {
      g_autofree char *number = g_strdup_printf ("Q-%05d", i), *name = g_strconcat (number, ".estimend", NULL);
      g_autofree char *path = g_build_filename (folder, name, NULL);
      em_quote_set_text (&file.quote, EM_QUOTE_NUMBER, number);
      em_quote_set_text (&file.quote, EM_QUOTE_CUSTOMER, customers[i % G_N_ELEMENTS (customers)]);
      g_autoptr (GBytes) bytes = em_quote_file_write (&file, NULL);
      em_bench_demand (g_file_set_contents_full (path, g_bytes_get_data (bytes, NULL), (gssize) g_bytes_get_size (bytes),
                                                 G_FILE_SET_CONTENTS_NONE, 0600, NULL), "filling the folder");
    }
  em_quote_file_clear (&file);
}

typedef struct
{
  const char        *folder;
  EmRegister        *reg;
  const EmRates     *rates;
  const EmCatalogue *catalogue;
} Shop;

static void
scan (void *data)
{
  Shop *shop = data;
  EmRegister *reg = em_register_scan (shop->folder, shop->reg, shop->rates, shop->catalogue, NULL, NULL, NULL, NULL);

  em_bench_demand (reg != NULL && em_register_get_length (reg) == QUOTES, "the scan");
  g_clear_pointer (&shop->reg, em_register_unref);
  shop->reg = reg;
}

static void
start (void *data)
{
  Shop *shop = data;
  g_autoptr (EmRegister) reg = em_register_new (shop->folder);

  em_bench_demand (em_register_get_length (reg) == QUOTES, "the index");
}

/* A customer's name and a word of the notes, key by key. */
static void
search (void *data)
{
  Shop *shop = data;
  const char *typed = "muller parting line x";

  for (int n = 1; n <= KEYS; n++)
    {
      g_autofree char *text = g_strndup (typed, (gsize) n);
      g_array_unref (em_register_search (shop->reg, &(EmRegisterQuery) { .text = text }));
    }
}

static void
empty_folder (const char *folder)
{
  GDir *dir = g_dir_open (folder, 0, NULL);
  const char *name;

  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *path = g_build_filename (folder, name, NULL);
      g_remove (path);
    }
  g_clear_pointer (&dir, g_dir_close);
  g_rmdir (folder);
}

static bool
bench_register (void)
{
  const char *data = g_getenv ("ESTIMEND_TEST_DATA");
  g_autofree char *book = g_build_filename (data, "rates.xml", NULL), *metals = g_build_filename (data, "metals.xml", NULL);
  g_autofree char *folder = g_dir_make_tmp ("estimend-bench-XXXXXX", NULL), *state = g_dir_make_tmp ("estimend-bench-XXXXXX", NULL);
  EmRates rates;
  EmCatalogue catalogue;
  Shop shop = { folder, NULL, &rates, &catalogue };
  bool is_met;

  g_setenv ("ESTIMEND_STATE_DIR", state, TRUE);
  em_bench_demand (em_rates_load (book, &rates, NULL) && em_catalogue_load (metals, &catalogue, NULL), "the shipped books");
  fill_folder (folder, &rates);
  printf ("register of %d quotes: first scan %.2f s\n", QUOTES, em_bench_time_s (scan, &shop));
  printf ("again, nothing changed: %.0f ms; from the index at the next start: %.0f ms\n", em_bench_best_s (3, scan, &shop) * 1e3,
          em_bench_best_s (3, start, &shop) * 1e3);
  is_met = em_bench_tell ("search of the register, a key", em_bench_best_s (RUNS, search, &shop) / KEYS * 1e3, "ms", EM_BENCH_FRAME_S * 1e3);
  em_register_unref (shop.reg);
  em_rates_clear (&rates);
  em_catalogue_clear (&catalogue);
  empty_folder (folder);
  empty_folder (state);
  return is_met;
}

int
main (void)
{
  return bench_register () ? EXIT_SUCCESS : EXIT_FAILURE;
}
