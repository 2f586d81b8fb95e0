/* test-language: a push changes gettext's language at run time, also from the plain C locale.
 *
 * The catalog is made here by msgfmt, so that the test does not lean on our translations.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-words.h"

#include "../core/em-test-main.h"

#include <glib/gi18n.h>
#include <glib/gstdio.h>
#include <locale.h>

static const char catalog[] =
  "msgid \"\"\nmsgstr \"Content-Type: text/plain; charset=UTF-8\\nPlural-Forms: nplurals=2; plural=(n != 1);\\n\"\n"
  "msgid \"Sent\"\nmsgstr \"Verschickt\"\n"
  "msgid \"%d tool\"\nmsgid_plural \"%d tools\"\nmsgstr[0] \"%d Werkzeug\"\nmsgstr[1] \"%d Werkzeuge\"\n";

static void
make_catalog (const char *folder)
{
  g_autofree char *messages = g_build_filename (folder, "de", "LC_MESSAGES", NULL);
  g_autofree char *po = g_build_filename (folder, "de.po", NULL);
  g_autofree char *mo = g_build_filename (messages, GETTEXT_PACKAGE ".mo", NULL);
  const char *const argv[] = { "msgfmt", "-o", mo, po, NULL };
  int status;

  ck_assert_int_eq (g_mkdir_with_parents (messages, 0700), 0);
  ck_assert (g_file_set_contents (po, catalog, -1, NULL));
  ck_assert (g_spawn_sync (NULL, (char **) argv, NULL, G_SPAWN_SEARCH_PATH, NULL, NULL, NULL, NULL, &status, NULL));
  ck_assert_int_eq (status, 0);
}

static void
remove_catalog (const char *folder)
{
  static const char *const names[] = { "de/LC_MESSAGES/" GETTEXT_PACKAGE ".mo", "de/LC_MESSAGES", "de", "de.po", "" };

  for (gsize i = 0; i < G_N_ELEMENTS (names); i++)
    {
      g_autofree char *path = g_build_filename (folder, names[i], NULL);

      g_remove (path);
    }
}

static void
check_switch (const char *locale)
{
  g_autofree char *folder = g_dir_make_tmp ("estimend-words-XXXXXX", NULL);

  make_catalog (folder);
  ck_assert_ptr_nonnull (setlocale (LC_ALL, locale));
  em_words_init (folder);
  ck_assert_str_eq (em_words_state (EM_STATE_SENT), "Sent");
  for (int round = 0; round < 2; round++)
    {
      em_words_push ("de");
      ck_assert_str_eq (em_words_state (EM_STATE_SENT), "Verschickt");
      ck_assert_str_eq (ngettext ("%d tool", "%d tools", 2), "%d Werkzeuge");
      em_words_push ("en");
      ck_assert_str_eq (em_words_state (EM_STATE_SENT), "Sent");
      em_words_pop ();
      ck_assert_str_eq (em_words_state (EM_STATE_SENT), "Verschickt");
      em_words_pop ();
      ck_assert_str_eq (em_words_state (EM_STATE_SENT), "Sent");
    }
  remove_catalog (folder);
}

START_TEST (test_switch_from_plain_c)
{
  check_switch ("C");
}
END_TEST

START_TEST (test_switch_from_utf8)
{
  check_switch ("C.UTF-8");
}
END_TEST

START_TEST (test_empty_is_not_the_header)
{
  ck_assert_str_eq (em_words (""), "");
  ck_assert_str_eq (em_words (NULL), "");
}
END_TEST

int
main (void)
{
  const TTest *const tests[] = { test_switch_from_plain_c, test_switch_from_utf8, test_empty_is_not_the_header };
  g_autofree char *msgfmt = g_find_program_in_path ("msgfmt");

  g_unsetenv ("LANGUAGE");
  if (msgfmt == NULL)
    {
      g_printerr ("msgfmt is not installed: skipped\n");
      return 77;
    }
  return em_test_main ("language", tests, (int) G_N_ELEMENTS (tests));
}
