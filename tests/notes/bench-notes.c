/* How long the reader takes, by length: time per byte must not grow, and 1 MB takes well under a second.
 *
 * The text is the corpus' kept notes over and over, so it is what notes look like. The yardstick beside it is GLib's own
 * splitting of the same text into words. Best of three runs, in processor time.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "notes-check.h"

#include <stdio.h>
#include <time.h>

enum { N_RUNS = 3, MEGABYTE = 1000000 };

static const double limit_s = 1.0;       /* for 1 MB */
static const double limit_growth = 1.5;  /* time per byte at 1 MB against 125 kB */

static GString *
corpus (gsize length)
{
  GString *text = g_string_sized_new (length + 1000);
  const char *source = g_getenv ("ESTIMEND_TEST_SOURCE");

  while (text->len < length)
    {
      gsize before = text->len;

      for (int i = 1; i < 200 && text->len < length; i++)
        {
          g_autofree char *name = g_strdup_printf ("%s/tests/notes/corpus/kept/%03d.txt", source != NULL ? source : ".", i);
          g_autofree char *note = NULL;

          if (g_file_get_contents (name, &note, NULL, NULL))
            g_string_append_printf (text, "%s\n", note);
        }
      if (text->len == before)
        break;
    }
  g_string_truncate (text, length);
  return text;
}

static double
seconds_to_read (const EmLexicon *lexicon, const GString *text)
{
  double best = 1e9;

  for (int run = 0; run < N_RUNS; run++)
    {
      clock_t start = clock ();
      EmReadResult *result = em_notes_read (lexicon, text->str, text->len, EM_UNITS_METRIC);

      em_read_result_free (result);
      best = MIN (best, (double) (clock () - start) / CLOCKS_PER_SEC);
    }
  return best;
}

static double
seconds_to_split (const GString *text)
{
  clock_t start = clock ();
  g_auto (GStrv) words = g_strsplit_set (text->str, " \n\t,;:", -1);

  return (double) (clock () - start) / CLOCKS_PER_SEC + (words == NULL ? 1 : 0);
}

int
main (void)
{
  EmLexicon *lexicon = load_lexicon ();
  double first = 0, last = 0, yardstick = 0;

  for (gsize length = MEGABYTE / 8; length <= MEGABYTE; length *= 2)
    {
      GString *text = corpus (length);

      if (text->len < length)
        {
          fprintf (stderr, "the corpus is not there\n");
          return EXIT_FAILURE;
        }
      last = seconds_to_read (lexicon, text);
      yardstick = seconds_to_split (text);
      first = length == MEGABYTE / 8 ? last : first;
      printf ("%7zu bytes: %.3f s, %.0f ns a byte; splitting into words alone %.3f s\n", length, last, last / (double) length * 1e9, yardstick);
      g_string_free (text, TRUE);
    }
  em_lexicon_free (lexicon);
  printf ("growth of time per byte, 125 kB to 1 MB: %.2f (limit %.1f); 1 MB: %.3f s (limit %.1f s)\n", last / (first * 8), limit_growth, last, limit_s);
  return last <= limit_s && last / (first * 8) <= limit_growth ? EXIT_SUCCESS : EXIT_FAILURE;
}
