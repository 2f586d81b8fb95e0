/* Fuzz target of the table reader: any bytes. Cells that were read, written out quoted as RFC 4180 has it, are read the same.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-csv.h"
#include "em-fuzz.h"

#include <string.h>

static GBytes *
write_quoted (const EmCsv *csv)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < csv->rows->len; i++)
    {
      const EmCsvRow *row = g_ptr_array_index (csv->rows, i);

      for (guint j = 0; j < row->n_cells; j++)
        {
          GString *cell = g_string_new (row->cell[j]);

          g_string_replace (cell, "\"", "\"\"", 0);
          g_string_append_printf (text, "%s\"%s\"", j > 0 ? (char[]) { csv->separator, '\0' } : "", cell->str);
          g_string_free (cell, TRUE);
        }
      g_string_append_c (text, '\n');
    }
  return g_string_free_to_bytes (text);
}

/* A first line of one cell gives the separator no hint, nor does one that was blank. */
static gboolean
is_told_apart (const EmCsv *csv)
{
  const EmCsvRow *first = csv->rows->len > 0 ? g_ptr_array_index (csv->rows, 0) : NULL;

  return first != NULL && first->n_cells > 1;
}

static void
check_same (const EmCsv *a, const EmCsv *b)
{
  PROMISE (a->separator == b->separator && a->rows->len == b->rows->len);
  for (guint i = 0; i < a->rows->len; i++)
    {
      const EmCsvRow *x = g_ptr_array_index (a->rows, i), *y = g_ptr_array_index (b->rows, i);

      PROMISE (x->n_cells == y->n_cells && g_strv_length (x->cell) == x->n_cells);
      PROMISE (g_strv_equal ((const char *const *) x->cell, (const char *const *) y->cell));
    }
}

int
LLVMFuzzerTestOneInput (const uint8_t *data, size_t size)
{
  g_autoptr (GBytes) bytes = g_bytes_new_static (data, size);
  g_autoptr (GError) error = NULL;
  g_autoptr (EmCsv) csv = em_csv_parse (bytes, "fuzzed", &error), again = NULL;

  if (csv == NULL)
    {
      fuzz_check_refusal (error);
      return 0;
    }
  if (is_told_apart (csv))
    {
      g_autoptr (GBytes) quoted = write_quoted (csv);

      again = em_csv_parse (quoted, "written", NULL);
      PROMISE (again != NULL);
      check_same (csv, again);
    }
  return 0;
}
