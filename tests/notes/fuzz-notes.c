/* Fuzz target of the notes reader: any bytes. Seeds: the corpus.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-notes.h"

#include <stdint.h>
#include <stdlib.h>

int LLVMFuzzerTestOneInput (const uint8_t *data, size_t size);

int
LLVMFuzzerTestOneInput (const uint8_t *data, size_t size)
{
  static EmLexicon *lexicon;

  if (lexicon == NULL)
    {
      const char *folder = g_getenv ("ESTIMEND_TEST_DATA");
      g_autofree char *en = g_build_filename (folder != NULL ? folder : "data", "notes-en.xml", NULL);
      g_autofree char *de = g_build_filename (folder != NULL ? folder : "data", "notes-de.xml", NULL);
      g_autofree char *es = g_build_filename (folder != NULL ? folder : "data", "notes-es.xml", NULL);
      const char *paths[] = { en, de, es, NULL };

      lexicon = em_lexicon_load (paths, NULL);
      if (lexicon == NULL)
        abort ();
    }
  {
    g_autoptr (EmReadResult) result = em_notes_read (lexicon, (const char *) data, size, size % 2 == 0 ? EM_UNITS_METRIC : EM_UNITS_INCH);
    g_autofree char *tsv = em_read_result_to_tsv (result, (const char *) data);

    if (!g_utf8_validate (tsv, -1, NULL))
      abort ();
  }
  return 0;
}
