/* em-settings: what the program remembers between starts.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "config.h"

#include "em-settings.h"

#include "em-place.h"

enum { RECENT_MAX = 10 };

GSettings *
em_settings_get (void)
{
  static GSettings *settings;

  if (settings != NULL)
    return settings;
  if (!em_place_is_build ())
    return settings = g_settings_new (EM_APP_ID);

  g_autoptr (GSettingsSchemaSource) source
    = g_settings_schema_source_new_from_directory (EM_BUILD_ROOT G_DIR_SEPARATOR_S "data", g_settings_schema_source_get_default (), TRUE, NULL);
  g_autoptr (GSettingsSchema) schema = source != NULL ? g_settings_schema_source_lookup (source, EM_APP_ID, FALSE) : NULL;
  settings = schema != NULL ? g_settings_new_full (schema, NULL, NULL) : g_settings_new (EM_APP_ID);
  return settings;
}

void
em_settings_add_recent (const char *path)
{
  g_auto (GStrv) old = g_settings_get_strv (em_settings_get (), "recent-files");
  g_autoptr (GStrvBuilder) builder = g_strv_builder_new ();
  int n = 1;

  g_strv_builder_add (builder, path);
  for (char **other = old; *other != NULL && n < RECENT_MAX; other++)
    if (!g_str_equal (*other, path))
      {
        g_strv_builder_add (builder, *other);
        n++;
      }
  g_auto (GStrv) recent = g_strv_builder_end (builder);
  g_settings_set_strv (em_settings_get (), "recent-files", (const char *const *) recent);
}

void
em_settings_drop_recent (const char *path)
{
  g_auto (GStrv) old = g_settings_get_strv (em_settings_get (), "recent-files");
  g_autoptr (GStrvBuilder) builder = g_strv_builder_new ();

  for (char **other = old; *other != NULL; other++)
    if (!g_str_equal (*other, path))
      g_strv_builder_add (builder, *other);
  g_auto (GStrv) recent = g_strv_builder_end (builder);
  g_settings_set_strv (em_settings_get (), "recent-files", (const char *const *) recent);
}

void
em_settings_put_size (GtkWindow *window, const char *width_key, const char *height_key)
{
  gtk_window_set_default_size (window, g_settings_get_int (em_settings_get (), width_key), g_settings_get_int (em_settings_get (), height_key));
}

void
em_settings_keep_size (GtkWindow *window, const char *width_key, const char *height_key)
{
  int width, height;

  if (gtk_window_is_maximized (window))
    return;
  gtk_window_get_default_size (window, &width, &height);
  g_settings_set_int (em_settings_get (), width_key, width);
  g_settings_set_int (em_settings_get (), height_key, height);
}
