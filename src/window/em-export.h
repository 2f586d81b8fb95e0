/* em-export: a sheet as a PDF file, a page at a time between which the window lives on.
 *
 * Text is laid out and drawn in the main loop, since the language of a sheet is the thread's; the file is written in a thread.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-document.h"
#include "em-paper.h"

G_BEGIN_DECLS

/* n_pages is 0 while they are laid out, of which so much is done; then n_done of them are drawn. */
typedef void (*EmExportProgress) (double laid_out_share, int n_done, int n_pages, gpointer data);

/* Of the quote as it is now, whatever is edited meanwhile. Cancelled, nothing is written and what lay at path stays. progress may be
 * NULL. */
void     em_export_async  (EmDocument *document, EmSheet sheet, const char *path, EmExportProgress progress, gpointer progress_data,
                           GCancellable *cancellable, GAsyncReadyCallback callback, gpointer data);
gboolean em_export_finish (GAsyncResult *result, GError **error);

G_END_DECLS
