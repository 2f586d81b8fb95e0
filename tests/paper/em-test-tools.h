/* em-test-tools: running the independent tools that read our PDFs back.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include <gio/gio.h>
#include <glib/gstdio.h>
#include <stdlib.h>

/* Exits 77, which the test runner reports as skipped, when tool is not installed. */
static inline void
em_test_need (const char *tool)
{
  g_autofree char *path = g_find_program_in_path (tool);

  if (path == NULL)
    {
      g_printerr ("%s is not installed: skipped\n", tool);
      exit (77);
    }
}

/* Output of a tool; aborts the test when it cannot run. *out_status as waitpid has it. Inlined, GCC 12 takes the returned
 * text for the local that held it. */
G_GNUC_UNUSED G_NO_INLINE static char *
em_test_run (const char *const *argv, int *out_status)
{
  char *output = NULL;
  GError *error = NULL;

  if (!g_spawn_sync (NULL, (char **) argv, NULL, G_SPAWN_SEARCH_PATH, NULL, NULL, &output, NULL, out_status, &error))
    g_error ("%s: %s", argv[0], error->message);
  return output;
}

/* A folder for one test's files; em_test_forget removes it with what is in it. */
static inline char *
em_test_folder (void)
{
  GError *error = NULL;
  char *folder = g_dir_make_tmp ("estimend-paper-XXXXXX", &error);

  if (folder == NULL)
    g_error ("%s", error->message);
  return folder;
}

static inline void
em_test_forget (char *take_folder)
{
  GDir *dir = g_dir_open (take_folder, 0, NULL);
  const char *name;

  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *path = g_build_filename (take_folder, name, NULL);

      g_remove (path);
    }
  if (dir != NULL)
    g_dir_close (dir);
  g_rmdir (take_folder);
  g_free (take_folder);
}
