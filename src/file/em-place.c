/* em-place: where the program's own data lie.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "config.h"

#include "em-place.h"

#include <gio/gio.h>

gboolean
em_place_is_build (void)
{
  static gsize state = 0;

  if (g_once_init_enter (&state))
    {
      g_autofree char *self = g_file_read_link ("/proc/self/exe", NULL);
      gboolean is_build = self != NULL && g_str_has_prefix (self, EM_BUILD_ROOT G_DIR_SEPARATOR_S);
      g_once_init_leave (&state, is_build ? 1 : 2);
    }
  return state == 1;
}

const char *
em_place_data_dir (void)
{
  const char *chosen = g_getenv ("ESTIMEND_DATA_DIR");

  if (chosen != NULL && *chosen != '\0')
    return chosen;
  return em_place_is_build () ? EM_SOURCE_ROOT G_DIR_SEPARATOR_S "data" : EM_DATA_DIR;
}

const char *
em_place_locale_dir (void)
{
  return em_place_is_build () ? EM_BUILD_ROOT G_DIR_SEPARATOR_S "po" : EM_LOCALE_DIR;
}

char *
em_place_data_file (const char *name)
{
  return g_build_filename (em_place_data_dir (), name, NULL);
}
