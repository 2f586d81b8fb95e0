/* em-manners: what GTK 4.8's own widgets owe to those who can't see them or don't hold a mouse.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* From now on, in every window, dialog and popover of the program, GTK's own among them:
 * - a button with a mnemonic is told by its text, not by its text with the underscore in it and then without;
 * - the part of a drop-down that takes the keyboard has the drop-down's name, and a popover the name of what opens it;
 * - a row of a table is told by its cells, and Tab leaves a table or list instead of going through its rows;
 * - a message dialog has what it asks as its name;
 * - the keyboard begins at what is chosen when a drop-down opens;
 * - a popover that closes gives the keyboard back: from a submenu it would stay with what is no longer there.
 * Once a process; later calls do nothing. */
void em_manners_init (void);

G_END_DECLS
