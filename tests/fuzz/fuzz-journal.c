/* Fuzz target of the reader of unsaved work: any bytes. A quote that is read out of a journal is saved, and kept and read again the same.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-fuzz.h"
#include "em-recovery.h"

/* The quote in a journal around it, as the program writes one. */
static GBytes *
wrap (GBytes *quote)
{
  gsize size;
  const char *text = g_bytes_get_data (quote, &size), *root = g_strstr_len (text, (gssize) size, "?>");

  PROMISE (root != NULL);
  root += 2;

  char *journal = g_strdup_printf ("<journal xmlns=\"urn:estimend:recovery\" version=\"1.0\" title=\"t\" kept=\"1\">%.*s</journal>",
                                   (int) (text + size - root), root);

  return g_bytes_new_take (journal, strlen (journal));
}

int
LLVMFuzzerTestOneInput (const uint8_t *data, size_t size)
{
  g_autoptr (GBytes) bytes = g_bytes_new_static (data, size), once = NULL, journal = NULL, twice = NULL;
  g_autoptr (GError) error = NULL;
  EmQuoteFile file, again;

  if (!em_recovery_parse (bytes, "fuzzed", &file, &error))
    {
      fuzz_check_refusal (error);
      return 0;
    }
  once = em_quote_file_write (&file, NULL);
  PROMISE (once != NULL);
  journal = wrap (once);
  if (!em_recovery_parse (journal, "kept", &again, &error))
    fprintf (stderr, "%s\n", error->message);
  PROMISE (error == NULL);
  /* What is kept of a newer version comes back whole, but its pieces in the order they are written in. */
  PROMISE (again.is_newer_minor || em_quote_equal (&file.quote, &again.quote));
  twice = em_quote_file_write (&again, NULL);
  PROMISE (twice != NULL && g_bytes_equal (once, twice));
  em_quote_file_clear (&file);
  em_quote_file_clear (&again);
  return 0;
}
