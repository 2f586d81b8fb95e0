/* em-logo: the shop's logo from a PNG or SVG file, ready to draw.
 *
 * Private to the paper room.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include <cairo.h>
#include <glib.h>

G_BEGIN_DECLS

typedef struct EmLogo EmLogo;

/* Of a letterhead, in points. */
#define EM_LOGO_WIDTH  170.0
#define EM_LOGO_HEIGHT 46.0

/* Fits into width × height points, keeping its proportions. EM_PAPER_ERROR_LOGO names the file and what is wrong. */
EmLogo *em_logo_load (const char *path, double width, double height, GError **error);
void    em_logo_free (EmLogo *logo);
void    em_logo_get_size (const EmLogo *logo, double *out_width, double *out_height);
void    em_logo_draw (const EmLogo *logo, cairo_t *cr, double width, double height);

G_END_DECLS
