/* Fuzz target of the notes reader: any bytes; spans lie in the text, proposals go into a quote that can be saved, and reading
 * the same again changes nothing. Seeds: the corpus.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-fuzz.h"
#include "em-notes.h"

#include <string.h>

static void
check_spans (const EmReadResult *result, size_t size)
{
  PROMISE (result->spans->len == (guint) result->n_features);
  for (guint i = 0; i < result->spans->len; i++)
    {
      const EmReadSpan *span = &g_array_index (result->spans, EmReadSpan, i);

      PROMISE (span->start <= size && span->length <= size - span->start);
    }
  for (guint i = 0; i < result->fields->len; i++)
    {
      const EmReadField *field = &g_array_index (result->fields, EmReadField, i);

      PROMISE (field->feature >= 0 && field->feature <= result->n_features && field->field != NULL);
      PROMISE (field->start <= size && field->length <= size - field->start);
    }
}

static void
apply (EmReadResult *result, const char *text, EmUnits units)
{
  EmQuoteFile file;
  EmQuote before;
  g_autoptr (GBytes) bytes = NULL;

  em_quote_file_init (&file);
  file.quote.units = units;
  em_notes_apply (result, text, &file.quote);
  bytes = em_quote_file_write (&file, NULL);
  PROMISE (bytes != NULL);
  PROMISE (em_quote_copy (&file.quote, &before) == EM_OK);
  em_notes_apply (result, text, &file.quote);
  PROMISE (em_quote_equal (&before, &file.quote));
  em_quote_clear (&before);
  em_quote_file_clear (&file);
}

int
LLVMFuzzerTestOneInput (const uint8_t *data, size_t size)
{
  static EmLexicon *lexicon;
  EmUnits units = size % 2 == 0 ? EM_UNITS_METRIC : EM_UNITS_INCH;

  if (lexicon == NULL)
    {
      g_autofree char *en = fuzz_data_path ("notes-en.xml"), *de = fuzz_data_path ("notes-de.xml");
      g_autofree char *es = fuzz_data_path ("notes-es.xml"), *fr = fuzz_data_path ("notes-fr.xml");

      lexicon = em_lexicon_load ((const char *[]) { en, de, es, fr, NULL }, NULL);
      PROMISE (lexicon != NULL);
    }

  g_autoptr (EmReadResult) result = em_notes_read (lexicon, (const char *) data, size, units);
  g_autofree char *text = g_strndup ((const char *) data, size), *tsv = em_read_result_to_tsv (result, text);

  PROMISE (g_utf8_validate (tsv, -1, NULL));
  check_spans (result, size);
  if (strlen (text) == size && g_utf8_validate (text, -1, NULL))
    apply (result, text, units);
  return 0;
}
