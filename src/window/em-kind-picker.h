/* em-kind-picker: the kinds of repair by picture, to add one. Activates win.add-kind.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* Cards in a line, at least and at most. */
GtkWidget *em_kind_picker_new (int n_least, int n_most);

G_END_DECLS
