/* em-csv: tables of comma separated values.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "config.h"

#include "em-csv.h"

#include "em-quote-file.h"

#include <glib/gi18n-lib.h>
#include <string.h>

enum { ROWS_MAX = 50000, CELLS_MAX = 64, CELL_MAX = 4096 };

typedef struct
{
  const char *at, *end;
  const char *name;
  guint       line;
  char        separator;
} Scan;

static void
free_row (gpointer data)
{
  EmCsvRow *row = data;

  g_strfreev (row->cell);
  g_free (row);
}

void
em_csv_free (EmCsv *csv)
{
  if (csv == NULL)
    return;
  g_ptr_array_unref (csv->rows);
  g_free (csv);
}

static gboolean
refuse (const Scan *scan, EmFileError code, GError **error, const char *sentence)
{
  g_set_error (error, EM_FILE_ERROR, (int) code, _("%s, line %u: %s"), scan->name, scan->line, sentence);
  return FALSE;
}

/* The likeliest separator: the one most often found outside quotes on the first line; a comma where there is none. */
static char
guess_separator (const char *at, const char *end)
{
  static const char marks[] = { ',', ';', '\t' };
  guint found[G_N_ELEMENTS (marks)] = { 0 };
  gboolean is_quoted = FALSE;
  guint best = 0;

  for (; at < end && *at != '\n'; at++)
    {
      if (*at == '"')
        is_quoted = !is_quoted;
      for (guint i = 0; !is_quoted && i < G_N_ELEMENTS (marks); i++)
        found[i] += *at == marks[i];
    }
  for (guint i = 1; i < G_N_ELEMENTS (marks); i++)
    if (found[i] > found[best])
      best = i;
  return marks[best];
}

static gboolean
is_line_end (const Scan *scan)
{
  return *scan->at == '\n' || (*scan->at == '\r' && scan->at + 1 < scan->end && scan->at[1] == '\n');
}

/* From behind the opening quote to behind the closing one. */
static gboolean
scan_quoted (Scan *scan, GString *cell, GError **error)
{
  guint opened = scan->line;

  for (; scan->at < scan->end; scan->at++)
    {
      if (*scan->at == '"')
        {
          if (scan->at + 1 >= scan->end || scan->at[1] != '"')
            {
              scan->at++;
              return TRUE;
            }
          scan->at++;
        }
      else if (*scan->at == '\n')
        scan->line++;
      g_string_append_c (cell, *scan->at);
    }
  scan->line = opened;
  return refuse (scan, EM_FILE_ERROR_SYNTAX, error, _("a quotation mark is opened and never closed"));
}

static gboolean
scan_cell (Scan *scan, GString *cell, GError **error)
{
  g_string_truncate (cell, 0);
  if (scan->at < scan->end && *scan->at == '"')
    {
      scan->at++;
      if (!scan_quoted (scan, cell, error))
        return FALSE;
      if (scan->at < scan->end && *scan->at != scan->separator && !is_line_end (scan))
        return refuse (scan, EM_FILE_ERROR_SYNTAX, error, _("text follows a closing quotation mark"));
    }
  else
    for (; scan->at < scan->end && *scan->at != scan->separator && !is_line_end (scan); scan->at++)
      {
        if (*scan->at == '"')
          return refuse (scan, EM_FILE_ERROR_SYNTAX, error, _("a quotation mark stands inside a cell that is not quoted"));
        g_string_append_c (cell, *scan->at);
      }
  if (cell->len > CELL_MAX)
    return refuse (scan, EM_FILE_ERROR_TOO_LARGE, error, _("a cell is longer than 4,096 bytes"));
  return TRUE;
}

/* One row, up to behind its line end; NULL on failure. */
static EmCsvRow *
scan_row (Scan *scan, GError **error)
{
  g_autoptr (GPtrArray) cells = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GString) cell = g_string_new (NULL);
  guint line = scan->line;
  gboolean is_more = TRUE;

  while (is_more)
    {
      if (!scan_cell (scan, cell, error))
        return NULL;
      g_ptr_array_add (cells, g_strdup (cell->str));
      if (cells->len > CELLS_MAX)
        {
          refuse (scan, EM_FILE_ERROR_TOO_LARGE, error, _("more than 64 columns"));
          return NULL;
        }
      is_more = scan->at < scan->end && *scan->at == scan->separator;
      if (is_more)
        scan->at++;
    }
  if (scan->at < scan->end)
    {
      scan->at += *scan->at == '\r' ? 2 : 1;
      scan->line++;
    }

  EmCsvRow *row = g_new0 (EmCsvRow, 1);

  row->line = line;
  row->n_cells = cells->len;
  g_ptr_array_add (cells, NULL);
  row->cell = (GStrv) g_ptr_array_steal (cells, NULL);
  return row;
}

static gboolean
is_blank (const EmCsvRow *row)
{
  return row->n_cells == 1 && strspn (row->cell[0], " \t") == strlen (row->cell[0]);
}

static gboolean
check_text (const Scan *scan, GError **error)
{
  gsize size = (gsize) (scan->end - scan->at);

  if (size > EM_CSV_BYTES_MAX)
    return refuse (scan, EM_FILE_ERROR_TOO_LARGE, error, _("larger than 8 MiB, which no price list is"));
  if (memchr (scan->at, '\0', size) != NULL)
    return refuse (scan, EM_FILE_ERROR_NOT_OURS, error, _("holds NUL bytes, so it is no text; save the list as CSV in UTF-8"));
  if (!g_utf8_validate_len (scan->at, size, NULL))
    return refuse (scan, EM_FILE_ERROR_SYNTAX, error, _("not written in UTF-8; save the list as CSV in UTF-8"));
  return TRUE;
}

/*
 * em_csv_parse:
 *
 * bytes: at most 8 MiB. Errors: TOO_LARGE, NOT_OURS for no text, SYNTAX for no UTF-8 or misplaced quotes. Rows may differ in
 * length; whoever asks for a cell looks at n_cells.
 */
EmCsv *
em_csv_parse (GBytes *bytes, const char *name, GError **error)
{
  gsize size;
  const char *data = g_bytes_get_data (bytes, &size);
  Scan scan = { .at = data != NULL ? data : "", .name = name, .line = 1 };

  scan.end = scan.at + size;
  if (!check_text (&scan, error))
    return NULL;
  if (size >= 3 && memcmp (scan.at, "\xef\xbb\xbf", 3) == 0)
    scan.at += 3;
  scan.separator = guess_separator (scan.at, scan.end);

  g_autoptr (EmCsv) csv = g_new0 (EmCsv, 1);

  csv->separator = scan.separator;
  csv->rows = g_ptr_array_new_with_free_func (free_row);
  while (scan.at < scan.end)
    {
      EmCsvRow *row = scan_row (&scan, error);

      if (row == NULL)
        return NULL;
      if (is_blank (row))
        free_row (row);
      else
        g_ptr_array_add (csv->rows, row);
      if (csv->rows->len > ROWS_MAX)
        {
          refuse (&scan, EM_FILE_ERROR_TOO_LARGE, error, _("more than 50,000 rows"));
          return NULL;
        }
    }
  return g_steal_pointer (&csv);
}
