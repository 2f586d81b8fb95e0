/* em-fuzz: what the fuzz targets share: a promise that ends the run when broken, the shipped books, wild values in XML.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-book-file.h"

#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>

int    LLVMFuzzerTestOneInput (const uint8_t *data, size_t size);
size_t LLVMFuzzerMutate (uint8_t *data, size_t size, size_t size_max);

#define PROMISE(is_kept) \
  G_STMT_START { \
    if (!(is_kept)) \
      { \
        fprintf (stderr, "%s:%d: not kept: %s\n", __FILE__, __LINE__, #is_kept); \
        abort (); \
      } \
  } G_STMT_END

/* A refusal says why, in text that can be shown. */
static inline void
fuzz_check_refusal (const GError *error)
{
  PROMISE (error != NULL);
  PROMISE (g_utf8_validate (error->message, -1, NULL) && *error->message != '\0');
}

static inline char *
fuzz_data_path (const char *name)
{
  const char *folder = g_getenv ("ESTIMEND_TEST_DATA");

  return g_build_filename (folder != NULL ? folder : "data", name, NULL);
}

static inline void
fuzz_load_books (EmRates *out_rates, EmCatalogue *out_catalogue)
{
  g_autofree char *rates = fuzz_data_path ("rates.xml"), *metals = fuzz_data_path ("metals.xml");

  PROMISE (out_rates == NULL || em_rates_load (rates, out_rates, NULL));
  PROMISE (out_catalogue == NULL || em_catalogue_load (metals, out_catalogue, NULL));
}
