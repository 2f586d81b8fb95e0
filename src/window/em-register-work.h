/* em-register-work: what is done to a quote that lies in the folder and is not open: all of it in threads.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-revision.h"

#include <gio/gio.h>

G_BEGIN_DECLS

/* Another state, written back; a draft sent takes the present rates and metals with it, one that is a draft again lets them go.
 * EM_FILE_ERROR_CHANGED or _LOCKED where somebody else is at it. The whole file before and after comes back. */
void     em_register_work_state_async  (const char *path, EmState state, EmBasis *basis, GCancellable *cancellable,
                                        GAsyncReadyCallback callback, gpointer data);
gboolean em_register_work_state_finish (GAsyncResult *result, GBytes **out_before, GBytes **out_after, GError **error);

/* The file's bytes are exchanged, if they are the expected ones: else, or where somebody has it open, as above. */
void     em_register_work_replace_async  (const char *path, GBytes *expected, GBytes *wanted, GAsyncReadyCallback callback, gpointer data);
gboolean em_register_work_replace_finish (GAsyncResult *result, GError **error);

/* The quote in path as a copy for another job, or as its next revision; not written anywhere. */
void     em_register_work_derive_async  (const char *path, gboolean is_revision, GCancellable *cancellable,
                                         GAsyncReadyCallback callback, gpointer data);
gboolean em_register_work_derive_finish (GAsyncResult *result, EmQuoteFile *out_file, GError **error);

/* What changed from one file to the other, a sentence a line under a heading. basis: for drafts. */
void     em_register_work_compare_async  (const char *old_path, const char *new_path, EmBasis *basis, GCancellable *cancellable,
                                          GAsyncReadyCallback callback, gpointer data);
char    *em_register_work_compare_finish (GAsyncResult *result, GError **error);

G_END_DECLS
