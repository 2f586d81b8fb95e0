/* em-look: our colours and type, light and dark, for widgets and for what is drawn by hand.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-cost.h"
#include "em-drawing.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

typedef enum { EM_SCHEME_SYSTEM, EM_SCHEME_LIGHT, EM_SCHEME_DARK, EM_N_SCHEME } EmScheme;

extern const char *const em_scheme_ids[EM_N_SCHEME];   /* "system", "light", "dark" */

/* Puts our style on the display, and keeps it in step with the theme. Once. */
void em_look_init       (void);
void em_look_set_scheme (EmScheme scheme);
gboolean em_look_is_dark (void);

/* Drawings in the colours of widget's surroundings. */
void em_look_drawing_style (GtkWidget *widget, EmDrawingStyle *out_style);
/* A colour of our style by name: "em_accent", "em_quiet" … */
void em_look_colour (GtkWidget *widget, const char *name, GdkRGBA *out_colour);

/* How the n-th feature's words are marked: one of six colours safe for the colour-blind and, never colour alone,
 * one of three underlines, so that looks come round after 18; its number stands beside the line. */
PangoUnderline em_look_underline (int n);
void           em_look_thread    (GtkWidget *widget, int n, GdkRGBA *out_colour);
/* How a kind of money is filled in the picture: colour and hatch angle in degrees (< 0: plain). */
void           em_look_money     (GtkWidget *widget, EmMoney money, GdkRGBA *out_colour, double *out_hatch_deg);

G_END_DECLS
