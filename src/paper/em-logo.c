/* em-logo: a picture through gdk-pixbuf into a cairo surface.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-logo.h"

#include "em-paper.h"

#include <gdk-pixbuf/gdk-pixbuf.h>
#include <glib/gi18n.h>

#define PIXELS_PER_POINT 5.0    /* 360 dots an inch */
#define SIDE_MAX         20000  /* pixels; a picture claiming more is not decoded */

struct EmLogo
{
  cairo_surface_t *surface;
  double           width, height;   /* points */
};

void
em_logo_free (EmLogo *logo)
{
  if (logo == NULL)
    return;
  cairo_surface_destroy (logo->surface);
  g_free (logo);
}

void
em_logo_get_size (const EmLogo *logo, double *out_width, double *out_height)
{
  *out_width = logo->width;
  *out_height = logo->height;
}

/* c·a/255, rounded: cairo wants colour already weighted by its cover. */
static guint32
weigh (guint32 c, guint32 a)
{
  return (c * a + 127) / 255;
}

static void
copy_row (const guchar *in, int n_channels, int width, guint32 *out)
{
  for (int x = 0; x < width; x++, in += n_channels)
    {
      guint32 a = n_channels == 4 ? in[3] : 255;

      out[x] = a << 24 | weigh (in[0], a) << 16 | weigh (in[1], a) << 8 | weigh (in[2], a);
    }
}

static cairo_surface_t *
to_surface (GdkPixbuf *pixbuf)
{
  int width = gdk_pixbuf_get_width (pixbuf), height = gdk_pixbuf_get_height (pixbuf);
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, width, height);
  unsigned char *bytes;

  if (cairo_surface_status (surface) != CAIRO_STATUS_SUCCESS)
    return surface;
  cairo_surface_flush (surface);
  bytes = cairo_image_surface_get_data (surface);
  for (int y = 0; y < height; y++)
    copy_row (gdk_pixbuf_read_pixels (pixbuf) + (gsize) y * (gsize) gdk_pixbuf_get_rowstride (pixbuf), gdk_pixbuf_get_n_channels (pixbuf), width,
              (guint32 *) (void *) (bytes + (gsize) y * (gsize) cairo_image_surface_get_stride (surface)));
  cairo_surface_mark_dirty (surface);
  return surface;
}

EmLogo *
em_logo_load (const char *path, double width, double height, GError **error)
{
  g_autoptr (GError) reason = NULL;
  g_autoptr (GdkPixbuf) pixbuf = NULL;
  int file_width = 0, file_height = 0;
  EmLogo *logo;
  double scale;

  if (gdk_pixbuf_get_file_info (path, &file_width, &file_height) != NULL && (file_width > SIDE_MAX || file_height > SIDE_MAX))
    {
      g_set_error (error, EM_PAPER_ERROR, EM_PAPER_ERROR_LOGO, _("The logo %s has %d × %d pixels; at most %d on a side can be used."),
                   path, file_width, file_height, SIDE_MAX);
      return NULL;
    }
  pixbuf = gdk_pixbuf_new_from_file_at_scale (path, (int) (width * PIXELS_PER_POINT), (int) (height * PIXELS_PER_POINT), TRUE, &reason);
  if (pixbuf == NULL)
    {
      g_set_error (error, EM_PAPER_ERROR, EM_PAPER_ERROR_LOGO, _("The logo %s cannot be used: %s"), path, reason->message);
      return NULL;
    }
  logo = g_new0 (EmLogo, 1);
  logo->surface = to_surface (pixbuf);
  scale = MIN (width / gdk_pixbuf_get_width (pixbuf), height / gdk_pixbuf_get_height (pixbuf));
  logo->width = gdk_pixbuf_get_width (pixbuf) * scale;
  logo->height = gdk_pixbuf_get_height (pixbuf) * scale;
  return logo;
}

void
em_logo_draw (const EmLogo *logo, cairo_t *cr, double width, double height)
{
  if (cairo_surface_status (logo->surface) != CAIRO_STATUS_SUCCESS)
    return;
  cairo_save (cr);
  cairo_scale (cr, width / cairo_image_surface_get_width (logo->surface), height / cairo_image_surface_get_height (logo->surface));
  cairo_set_source_surface (cr, logo->surface, 0, 0);
  cairo_pattern_set_filter (cairo_get_source (cr), CAIRO_FILTER_GOOD);
  /* Within a tag, cairo 1.16 takes a painted picture for a fault in nesting. */
  cairo_rectangle (cr, 0, 0, cairo_image_surface_get_width (logo->surface), cairo_image_surface_get_height (logo->surface));
  cairo_fill (cr);
  cairo_restore (cr);
}
