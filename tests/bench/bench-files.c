/* bench-files: opening and saving a large quote beside libxml2 alone, the memory of it, and the register of a large folder.
 *
 * The yardsticks are libxml2's own: its parse of the same bytes into a tree, and its writing of that tree.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-bench.h"
#include "em-book-file.h"
#include "em-quote-file.h"
#include "em-register.h"

#include <glib/gstdio.h>
#include <libxml/parser.h>
#include <string.h>
#include <sys/wait.h>
#include <unistd.h>

enum { FEATURES = 100000, RUNS = 5, QUOTES = 10000, KEYS = 20 };

typedef struct
{
  EmQuoteFile file;
  GBytes     *bytes;
  xmlDocPtr   tree;
} Large;

/* Features as the notes reader leaves them: values with origins, a label, some of the rest. */
static void
fill_large (EmQuote *quote)
{
  for (int i = 0; i < FEATURES; i++)
    {
      EmFeature feature;
      char label[40];
      em_feature_init (&feature, em_kinds[i % em_n_kinds]);
      for (int k = 0; k < feature.kind->n_fields; k++)
        {
          feature.value[k] = feature.kind->fields[k].quantity == EM_QUANTITY_CHOICE ? 0 : 0.25 * (1 + (i + k) % 97);
          feature.origin[k] = EM_ORIGIN_READ;
        }
      feature.id = (uint32_t) i + 1;
      feature.count = 1 + i % 4;
      snprintf (label, sizeof label, "Gate insert %d", i);
      em_bench_demand (em_feature_set_text (&feature, EM_FEATURE_LABEL, label) == EM_OK, "memory");
      quote->feature[quote->n_features++] = feature;
    }
  quote->next_id = FEATURES + 1;
}

static void
make_large (Large *large)
{
  em_quote_file_init (&large->file);
  large->file.quote.feature = calloc (FEATURES, sizeof *large->file.quote.feature);
  em_bench_demand (large->file.quote.feature != NULL, "memory");
  large->file.quote.cap_features = FEATURES;
  fill_large (&large->file.quote);
  large->bytes = em_quote_file_write (&large->file, NULL);
  em_bench_demand (large->bytes != NULL, "writing");
  large->tree = xmlReadMemory (g_bytes_get_data (large->bytes, NULL), (int) g_bytes_get_size (large->bytes), NULL, NULL, XML_PARSE_NONET);
  em_bench_demand (large->tree != NULL, "the yardstick's parse");
}

static void
open_ours (void *data)
{
  Large *large = data;
  EmQuoteFile file;

  em_bench_demand (em_quote_file_parse (large->bytes, "large", &file, NULL), "opening");
  em_quote_file_clear (&file);
}

static void
open_plain (void *data)
{
  Large *large = data;

  xmlFreeDoc (xmlReadMemory (g_bytes_get_data (large->bytes, NULL), (int) g_bytes_get_size (large->bytes), NULL, NULL, XML_PARSE_NONET));
}

static void
save_ours (void *data)
{
  Large *large = data;

  g_bytes_unref (em_quote_file_write (&large->file, NULL));
}

static void
save_plain (void *data)
{
  Large *large = data;
  xmlChar *text;
  int length;

  xmlDocDumpMemoryEnc (large->tree, &text, &length, "UTF-8");
  xmlFree (text);
}

/* ---- memory ---- */

static double
resident_peak_bytes (void)
{
  g_autofree char *text = NULL;
  const char *line;

  em_bench_demand (g_file_get_contents ("/proc/self/status", &text, NULL, NULL), "/proc");
  line = strstr (text, "VmHWM:");
  return line != NULL ? g_ascii_strtod (line + strlen ("VmHWM:"), NULL) * 1024.0 : 0.0;
}

/* In a process of its own, over what it holds before; the file's bytes count, since they are held while it is read. */
static double
open_peak_bytes (const char *path)
{
  int ends[2];
  double peak = 0.0;

  em_bench_demand (pipe (ends) == 0, "pipe");
  g_autofree char *self = g_file_read_link ("/proc/self/exe", NULL), *fd = g_strdup_printf ("%d", ends[1]);
  pid_t child = fork ();
  if (child == 0)
    {
      execl (self, self, path, fd, NULL);
      _exit (1);
    }
  close (ends[1]);
  em_bench_demand (read (ends[0], &peak, sizeof peak) == sizeof peak && waitpid (child, NULL, 0) == child, "the child");
  close (ends[0]);
  return peak;
}

static int
open_and_tell (const char *path, int fd)
{
  double before = resident_peak_bytes (), peak;
  EmQuoteFile file;

  em_bench_demand (em_quote_file_load (path, &file, NULL), "opening");
  peak = resident_peak_bytes () - before;
  return write (fd, &peak, sizeof peak) == sizeof peak ? 0 : 1;
}

static bool
bench_large (void)
{
  g_autofree char *folder = g_dir_make_tmp ("estimend-bench-XXXXXX", NULL), *path = g_build_filename (folder, "large.estimend", NULL);
  Large large;
  double ours_s, plain_s;
  bool is_met = true;

  make_large (&large);
  printf ("%d features, %.1f MB\n", FEATURES, (double) g_bytes_get_size (large.bytes) / 1e6);
  em_bench_pair_s (RUNS, open_ours, open_plain, &large, &ours_s, &plain_s);
  printf ("open %.0f ms, libxml2's parse %.0f ms\n", ours_s * 1e3, plain_s * 1e3);
  is_met = em_bench_tell ("open, model ready, over libxml2's parse", ours_s / plain_s, "×", 2.0) && is_met;
  em_bench_pair_s (RUNS, save_ours, save_plain, &large, &ours_s, &plain_s);
  printf ("write %.0f ms, libxml2's writing %.0f ms\n", ours_s * 1e3, plain_s * 1e3);
  is_met = em_bench_tell ("write over libxml2's writing", ours_s / plain_s, "×", 2.0) && is_met;
  em_bench_demand (em_quote_file_save (path, &large.file, NULL), "saving");
  is_met = em_bench_tell ("peak memory of opening over the file", open_peak_bytes (path) / (double) g_bytes_get_size (large.bytes), "×", 3.0) && is_met;
  g_remove (path);
  g_rmdir (folder);
  xmlFreeDoc (large.tree);
  g_bytes_unref (large.bytes);
  em_quote_file_clear (&large.file);
  return is_met;
}

/* ---- the register ---- */

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
main (int argc, char **argv)
{
  if (argc > 2)
    return open_and_tell (argv[1], (int) g_ascii_strtoll (argv[2], NULL, 10));

  bool is_met = bench_large ();

  return bench_register () && is_met ? EXIT_SUCCESS : EXIT_FAILURE;
}
