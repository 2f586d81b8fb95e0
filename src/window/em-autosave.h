/* em-autosave: keeps an open quote's unsaved work on the side, and offers it again after a crash.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-application.h"
#include "em-recovery.h"

G_BEGIN_DECLS

/* From now on document's unsaved work is written aside a moment after each change, in a thread, and dropped when it is
 * saved, undone or given up with the document. window is told, once, when that can't be done. Again is no harm. */
void     em_autosave_watch (EmDocument *document, EmWindow *window);

/* Looks in a thread for work that programs left when they died, and asks what to do with it. */
void     em_autosave_offer (EmApplication *application);
/* Reads what was found (EmRecovered) in a thread and opens it; each is kept aside anew before its old file goes. */
void     em_autosave_recover (EmApplication *application, GPtrArray *found);

G_END_DECLS
