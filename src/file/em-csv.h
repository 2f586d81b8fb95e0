/* em-csv: tables of comma separated values, as RFC 4180 has them.
 *
 * Reads UTF-8 with or without a byte order mark; CR LF or LF; comma, semicolon or tab, told by the first
 * line. A quote in the wrong place refuses the file with its line, for cells after it can't be trusted.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include <gio/gio.h>

G_BEGIN_DECLS

enum { EM_CSV_BYTES_MAX = 8 * 1024 * 1024 };   /* larger ones are refused */

typedef struct
{
  guint line;     /* on which the row begins, from 1 */
  GStrv cell;     /* without outer quotes; never NULL */
  guint n_cells;
} EmCsvRow;

typedef struct
{
  char       separator;
  GPtrArray *rows;      /* EmCsvRow*; blank lines are left out */
} EmCsv;

/* name is the file's, for messages. NULL and EM_FILE_ERROR on failure. */
EmCsv *em_csv_parse (GBytes *bytes, const char *name, GError **error);
void   em_csv_free  (EmCsv *csv);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (EmCsv, em_csv_free)

G_END_DECLS
