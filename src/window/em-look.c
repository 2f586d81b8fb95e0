/* em-look: our colours and type, light and dark.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-look.h"

#include "em-window-resources.h"

#include <string.h>

const char *const em_scheme_ids[EM_N_SCHEME] = { "system", "light", "dark" };

static GtkCssProvider *colours;
static gboolean is_dark_now, was_dark_by_system;

typedef struct
{
  const char *colour;
  double      hatch_deg;
} EmFill;

/* Work of hands is filled plain, things bought are hatched one way, the firm's own shares the other. */
static const EmFill fills[EM_N_MONEY] =
{
  [EM_MONEY_OFFICE]      = { "em_money_1", -1 },
  [EM_MONEY_BENCH]       = { "em_money_2", -1 },
  [EM_MONEY_FINISH]      = { "em_money_3", -1 },
  [EM_MONEY_MACHINE]     = { "em_money_4", 45 },
  [EM_MONEY_FILLER]      = { "em_accent", 45 },
  [EM_MONEY_GAS]         = { "em_money_3", 45 },
  [EM_MONEY_CONSUMABLE]  = { "em_money_1", 45 },
  [EM_MONEY_BOUGHT]      = { "em_money_2", 45 },
  [EM_MONEY_OVERHEAD]    = { "em_money_4", 135 },
  [EM_MONEY_CONTINGENCY] = { "em_money_3", 135 },
  [EM_MONEY_MARGIN]      = { "em_accent", 135 },
};

/* Not the low one: it lies beneath the letters of each run, so that it is in steps wherever runs meet. */
static const PangoUnderline underlines[] = { PANGO_UNDERLINE_SINGLE, PANGO_UNDERLINE_DOUBLE, PANGO_UNDERLINE_ERROR };

enum { N_THREAD_COLOURS = 6 };

static void
put_colours (gboolean is_dark)
{
  is_dark_now = is_dark;
  gtk_css_provider_load_from_resource (colours, is_dark ? "/org/estimend/Estimend/colours-dark.css"
                                                        : "/org/estimend/Estimend/colours-light.css");
}

/* GTK's own theme for it, and the one of older desktops. */
static gboolean
is_high_contrast (const char *theme)
{
  return strstr (theme, "HighContrast") != NULL || g_str_has_suffix (theme, "-hc") || strstr (theme, "-hc-") != NULL;
}

static void
put_contrast (gboolean is_high)
{
  static GtkCssProvider *contrast;

  if (!is_high == (contrast == NULL))
    return;
  if (is_high)
    {
      contrast = gtk_css_provider_new ();
      gtk_css_provider_load_from_resource (contrast, "/org/estimend/Estimend/contrast.css");
      gtk_style_context_add_provider_for_display (gdk_display_get_default (), GTK_STYLE_PROVIDER (contrast), GTK_STYLE_PROVIDER_PRIORITY_APPLICATION + 2);
      return;
    }
  gtk_style_context_remove_provider_for_display (gdk_display_get_default (), GTK_STYLE_PROVIDER (contrast));
  g_clear_object (&contrast);
}

static void
on_theme_changed (GtkSettings *settings)
{
  const char *forced = g_getenv ("GTK_THEME");
  gboolean is_dark;
  g_autofree char *theme = NULL;

  g_object_get (settings, "gtk-application-prefer-dark-theme", &is_dark, "gtk-theme-name", &theme, NULL);
  /* What GTK obeys before any setting: "Adwaita:dark". */
  if (forced != NULL && *forced != '\0')
    {
      is_dark = FALSE;
      g_free (theme);
      theme = g_strdup (forced);
    }
  put_colours (is_dark || (theme != NULL && (g_str_has_suffix (theme, "dark") || g_str_has_suffix (theme, "Inverse"))));
  put_contrast (theme != NULL && is_high_contrast (theme));
}

void
em_look_init (void)
{
  GdkDisplay *display = gdk_display_get_default ();
  GtkSettings *settings = gtk_settings_get_default ();
  g_autoptr (GtkCssProvider) style = gtk_css_provider_new ();

  if (colours != NULL)
    return;
  /* Named, so that the linker keeps them. */
  g_resources_register (em_shipped_get_resource ());
  colours = gtk_css_provider_new ();
  gtk_css_provider_load_from_resource (style, "/org/estimend/Estimend/style.css");
  gtk_style_context_add_provider_for_display (display, GTK_STYLE_PROVIDER (colours), GTK_STYLE_PROVIDER_PRIORITY_APPLICATION);
  gtk_style_context_add_provider_for_display (display, GTK_STYLE_PROVIDER (style), GTK_STYLE_PROVIDER_PRIORITY_APPLICATION + 1);
  /* Tab would mark all of a text that it comes by, and leave it so. */
  g_object_set (settings, "gtk-label-select-on-focus", FALSE, NULL);
  g_object_get (settings, "gtk-application-prefer-dark-theme", &was_dark_by_system, NULL);
  g_signal_connect (settings, "notify::gtk-application-prefer-dark-theme", G_CALLBACK (on_theme_changed), NULL);
  g_signal_connect (settings, "notify::gtk-theme-name", G_CALLBACK (on_theme_changed), NULL);
  on_theme_changed (settings);
}

void
em_look_set_scheme (EmScheme scheme)
{
  gboolean is_dark = scheme == EM_SCHEME_SYSTEM ? was_dark_by_system : scheme == EM_SCHEME_DARK, is_so_already;

  /* GTK reads its whole theme anew even when told what it knows. */
  g_object_get (gtk_settings_get_default (), "gtk-application-prefer-dark-theme", &is_so_already, NULL);
  if (is_dark == is_so_already)
    return;
  g_object_set (gtk_settings_get_default (), "gtk-application-prefer-dark-theme", is_dark, NULL);
}

gboolean
em_look_is_dark (void)
{
  return is_dark_now;
}

void
em_look_colour (GtkWidget *widget, const char *name, GdkRGBA *out_colour)
{
  if (!gtk_style_context_lookup_color (gtk_widget_get_style_context (widget), name, out_colour))
    *out_colour = (GdkRGBA) { 0.5f, 0.5f, 0.5f, 1 };
}

static EmColour
drawing_colour (GtkWidget *widget, const char *name)
{
  GdkRGBA colour;

  em_look_colour (widget, name, &colour);
  return (EmColour) { (double) colour.red, (double) colour.green, (double) colour.blue, (double) colour.alpha };
}

void
em_look_drawing_style (GtkWidget *widget, EmDrawingStyle *out_style)
{
  PangoContext *context = gtk_widget_get_pango_context (widget);
  const PangoFontDescription *font = pango_context_get_font_description (context);
  double size = pango_font_description_get_size (font) / (double) PANGO_SCALE;

  if (!pango_font_description_get_size_is_absolute (font))
    size *= pango_cairo_context_get_resolution (context) / 72;
  em_drawing_style_screen (out_style, is_dark_now);
  out_style->ink = drawing_colour (widget, "em_ink");
  out_style->quiet = drawing_colour (widget, "em_quiet");
  out_style->base = drawing_colour (widget, "em_steel");
  out_style->metal = drawing_colour (widget, "em_weld_cut");
  out_style->accent = drawing_colour (widget, "em_accent");
  out_style->paper = drawing_colour (widget, "em_paper");
  out_style->font_px = size * 0.88;
}

PangoUnderline
em_look_underline (int n)
{
  return underlines[(n + n / N_THREAD_COLOURS) % (int) G_N_ELEMENTS (underlines)];
}

void
em_look_thread (GtkWidget *widget, int n, GdkRGBA *out_colour)
{
  char name[] = "em_thread_1";

  name[sizeof name - 2] = (char) ('1' + n % N_THREAD_COLOURS);
  em_look_colour (widget, name, out_colour);
}

void
em_look_money (GtkWidget *widget, EmMoney money, GdkRGBA *out_colour, double *out_hatch_deg)
{
  em_look_colour (widget, fills[money].colour, out_colour);
  *out_hatch_deg = fills[money].hatch_deg;
}
