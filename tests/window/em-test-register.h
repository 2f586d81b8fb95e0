/* em-test-register: a folder of quotes that are the demos, and the window of the register that shows it.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-test-window.h"

#include "em-register-window.h"

#include <glib/gstdio.h>

static char *folder;

static inline void
make_shop (void)
{
  folder = g_dir_make_tmp ("estimend-XXXXXX", NULL);
  for (int i = 0; i < em_n_demos; i++)
    {
      g_autofree char *from = em_demo_path (em_demos[i].id), *base = g_path_get_basename (from);
      g_autofree char *to = g_build_filename (folder, base, NULL);
      g_autofree char *content = NULL;
      gsize size;
      ck_assert (g_file_get_contents (from, &content, &size, NULL) && g_file_set_contents (to, content, (gssize) size, NULL));
    }
}

static inline void
drop_shop (void)
{
  GDir *dir = g_dir_open (folder, 0, NULL);
  const char *name;

  while ((name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *path = g_build_filename (folder, name, NULL);
      g_remove (path);
    }
  g_dir_close (dir);
  g_rmdir (folder);
  g_clear_pointer (&folder, g_free);
}

static inline void
wait_for_scan (EmRegisterWindow *window)
{
  for (int i = 0; i < 250; i++)
    {
      test_settle (20);
      if (!em_register_window_is_busy (window))
        return;
    }
  ck_abort_msg ("the folder is read for ever");
}

static inline EmRegisterWindow *
open_register (EmApplication *application)
{
  EmRegisterWindow *window = em_register_window_present (application);

  em_register_window_set_folder (window, folder);
  wait_for_scan (window);
  return window;
}

static inline void
close_all (EmApplication *application)
{
  while (gtk_application_get_windows (GTK_APPLICATION (application)) != NULL)
    gtk_window_destroy (gtk_application_get_windows (GTK_APPLICATION (application))->data);
  test_settle (20);
}
