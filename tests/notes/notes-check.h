/* notes-check: what the checks of the reader share: the shipped lexicons and a reading as rows.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-notes.h"

#include <check.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static inline EmLexicon *
load_lexicon (void)
{
  const char *data = g_getenv ("ESTIMEND_TEST_DATA");
  g_autofree char *en = g_build_filename (data, "notes-en.xml", NULL);
  g_autofree char *de = g_build_filename (data, "notes-de.xml", NULL);
  g_autofree char *es = g_build_filename (data, "notes-es.xml", NULL);
  g_autofree char *fr = g_build_filename (data, "notes-fr.xml", NULL);
  const char *paths[] = { en, de, es, fr, NULL };
  g_autoptr (GError) error = NULL;
  EmLexicon *lexicon = em_lexicon_load (paths, &error);

  /* Also called outside a test, where Check's own asserts may not stand. */
  if (lexicon == NULL)
    {
      fprintf (stderr, "%s\n", error->message);
      exit (EXIT_FAILURE);
    }
  return lexicon;
}

static inline char *
read_tsv (const EmLexicon *lexicon, const char *text, EmUnits units)
{
  g_autoptr (EmReadResult) result = em_notes_read (lexicon, text, strlen (text), units);

  return em_read_result_to_tsv (result, text);
}

/* Asserts that the reading of text has the row, or lacks it when the row begins with '!'. */
static inline void
assert_row (const EmLexicon *lexicon, const char *text, EmUnits units, const char *row)
{
  g_autofree char *tsv = read_tsv (lexicon, text, units);
  g_autofree char *line = g_strconcat (*row == '!' ? row + 1 : row, "\n", NULL);
  const char *at = strstr (tsv, line);
  gboolean is_there = at != NULL && (at == tsv || at[-1] == '\n');

  ck_assert_msg (is_there == (*row != '!'), "“%s”: %s row “%s” in\n%s", text, is_there ? "unwanted" : "no", row, tsv);
}

static inline int
run_suite (const char *name, TCase *tcase)
{
  Suite *suite = suite_create (name);
  SRunner *runner = srunner_create (suite);
  int n_failed;

  tcase_set_timeout (tcase, 60);
  suite_add_tcase (suite, tcase);
  srunner_run_all (runner, CK_ENV);
  n_failed = srunner_ntests_failed (runner);
  srunner_free (runner);
  return n_failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
