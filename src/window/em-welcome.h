/* em-welcome: the first start: asks for little, and can go straight to a demo.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define EM_TYPE_WELCOME (em_welcome_get_type ())
G_DECLARE_FINAL_TYPE (EmWelcome, em_welcome, EM, WELCOME, GtkWidget)

GtkWidget *em_welcome_new (void);

G_END_DECLS
