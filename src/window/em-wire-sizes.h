/* em-wire-sizes: the sizes and prices of a wire, to be edited.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-draft.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

typedef struct _EmWireSizes EmWireSizes;

/* The wire that is shown now; never NULL while the parts are used. */
typedef EmFiller *(*EmWireSizesHold) (gpointer owner);

EmWireSizes *em_wire_sizes_new    (EmDraft *draft, EmWireSizesHold hold, gpointer owner);
void         em_wire_sizes_free   (EmWireSizes *self);
void         em_wire_sizes_add_to (EmWireSizes *self, GtkWidget *box);
/* Shows the wire's sizes; rows are built anew when there are more or fewer. */
void         em_wire_sizes_show   (EmWireSizes *self);
/* Another wire is shown: build its rows anew next time. */
void         em_wire_sizes_forget (EmWireSizes *self);

G_END_DECLS
