/* em-picture: a picture of the window.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-picture.h"

#include "em-look.h"

#include <stdio.h>

/* A busy machine may not have laid the window out yet: asked again for ten seconds. */
enum { SETTLE_MS = 400, STEP_MS = 250, TRIES_MOST = 40 };

struct EmPictureWish
{
  char    *path;
  int      width, height;   /* 0: as it is */
  double   text_scale;
  gboolean is_dark, is_high_contrast, is_right_to_left;
  char   **actions;
};

typedef struct
{
  EmWindow            *window;   /* owned */
  const EmPictureWish *wish;
  int                  next;     /* action */
  int                  tries;
} EmSitting;

EmPictureWish *
em_picture_wish_new (const char *path, GVariantDict *options)
{
  EmPictureWish *wish = g_new0 (EmPictureWish, 1);
  const char *size = NULL, *actions = NULL;

  wish->path = g_strdup (path);
  if (g_variant_dict_lookup (options, "size", "&s", &size) && sscanf (size, "%dx%d", &wish->width, &wish->height) != 2)
    g_printerr ("--size WIDTHxHEIGHT\n");
  g_variant_dict_lookup (options, "text-scale", "d", &wish->text_scale);
  wish->is_dark = g_variant_dict_contains (options, "dark");
  wish->is_high_contrast = g_variant_dict_contains (options, "high-contrast");
  wish->is_right_to_left = g_variant_dict_contains (options, "right-to-left");
  g_variant_dict_lookup (options, "actions", "&s", &actions);
  wish->actions = g_strsplit (actions != NULL ? actions : "", ";", -1);
  return wish;
}

void
em_picture_wish_free (EmPictureWish *wish)
{
  g_free (wish->path);
  g_strfreev (wish->actions);
  g_free (wish);
}

gboolean
em_picture_save (GtkWidget *widget, const char *path)
{
  g_autoptr (GdkPaintable) paintable = gtk_widget_paintable_new (widget);
  GtkSnapshot *snapshot = gtk_snapshot_new ();
  int width = gtk_widget_get_width (widget), height = gtk_widget_get_height (widget);
  g_autoptr (GskRenderNode) node = NULL;
  g_autoptr (GdkTexture) texture = NULL;

  gdk_paintable_snapshot (paintable, snapshot, width, height);
  node = gtk_snapshot_free_to_node (snapshot);
  if (node == NULL)
    return FALSE;
  texture = gsk_renderer_render_texture (gtk_native_get_renderer (gtk_widget_get_native (widget)), node,
                                         &GRAPHENE_RECT_INIT (0, 0, (float) width, (float) height));
  return gdk_texture_save_to_png (texture, path);
}

/* The one an action opened, if any. */
static GtkWidget *
newest_window (EmSitting *sitting)
{
  GListModel *all = gtk_window_get_toplevels ();
  GtkWidget *newest = GTK_WIDGET (sitting->window);

  for (guint i = 0; i < g_list_model_get_n_items (all); i++)
    {
      g_autoptr (GtkWidget) window = g_list_model_get_item (all, i);
      if (gtk_widget_get_mapped (window) && window != GTK_WIDGET (sitting->window))
        newest = window;
    }
  return newest;
}

static gboolean
on_settled (gpointer data)
{
  EmSitting *sitting = data;
  const char *action = sitting->wish->actions[sitting->next];

  if (action != NULL)
    {
      g_autofree char *name = NULL;
      g_autoptr (GVariant) target = NULL;
      sitting->next++;
      if (g_action_parse_detailed_name (action, &name, &target, NULL))
        gtk_widget_activate_action_variant (GTK_WIDGET (sitting->window), name, target);
      g_timeout_add (STEP_MS, on_settled, sitting);
      return G_SOURCE_REMOVE;
    }
  GtkApplication *application = gtk_window_get_application (GTK_WINDOW (sitting->window));
  GtkWidget *shown = newest_window (sitting);
  if (!em_picture_save (shown, sitting->wish->path))
    {
      if (++sitting->tries < TRIES_MOST)
        return G_SOURCE_CONTINUE;
      g_printerr ("%s could not be written\n", sitting->wish->path);
    }
  while (gtk_application_get_windows (application) != NULL)
    gtk_window_destroy (gtk_application_get_windows (application)->data);
  g_object_unref (sitting->window);
  g_free (sitting);
  return G_SOURCE_REMOVE;
}

void
em_picture_take (EmWindow *window, const EmPictureWish *wish)
{
  EmSitting *sitting = g_new0 (EmSitting, 1);
  GtkSettings *settings = gtk_settings_get_default ();

  if (wish->is_right_to_left)
    gtk_widget_set_default_direction (GTK_TEXT_DIR_RTL);
  if (wish->is_high_contrast)
    g_object_set (settings, "gtk-theme-name", "Default-hc", NULL);
  if (wish->is_dark)
    em_look_set_scheme (EM_SCHEME_DARK);
  if (wish->text_scale > 0)
    g_object_set (settings, "gtk-xft-dpi", (int) (96 * 1024 * wish->text_scale), NULL);
  if (wish->width > 0)
    gtk_window_set_default_size (GTK_WINDOW (window), wish->width, wish->height);
  g_object_set (settings, "gtk-enable-animations", FALSE, NULL);
  sitting->window = g_object_ref (window);
  sitting->wish = wish;
  g_timeout_add (SETTLE_MS, on_settled, sitting);
}
