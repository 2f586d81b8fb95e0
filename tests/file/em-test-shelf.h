/* em-test-shelf: every kind of file the program writes, each in two states, old and new.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include <gio/gio.h>

typedef struct
{
  const char *name;
  /* Writes the file in its old or new state, as the program does. */
  gboolean  (*write) (gboolean is_new, GError **error);
  char     *(*dup_path) (void);
} EmTestFile;

enum { EM_TEST_QUOTE_FILE, EM_TEST_RATES_FILE, EM_TEST_CATALOGUE_FILE, EM_TEST_INDEX_FILE, EM_TEST_JOURNAL_FILE, EM_TEST_N_FILES };

extern const EmTestFile em_test_files[EM_TEST_N_FILES];

/* Where the files go; the program's state too. Forgets what was open in another folder. */
void em_test_shelf_open  (const char *folder);
/* Before main() ends. */
void em_test_shelf_close (void);

/* What is in the file, but for a journal's time of day; NULL: there is none, or it can't be read. */
char *em_test_file_dup_content (const EmTestFile *file);
