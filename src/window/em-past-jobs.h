/* em-past-jobs: what the quotes of a folder say of the times that were noted after the job.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-basis.h"
#include "em-calibrate.h"

#include <gio/gio.h>

G_BEGIN_DECLS

typedef struct
{
  guint n_quotes, n_records;   /* quotes with something noted, features that say something */
  EmCalibration by[EM_N_PROCESS][EM_N_ACCESS];
} EmPastJobs;

/* Reads, in a thread, every quote of folder in which something was noted; a sent one by the rates it was sent with, so that an old
 * factor does not colour what is learned now: only times and wire are compared. */
void     em_past_jobs_async  (const char *folder, EmBasis *basis, GCancellable *cancellable, GAsyncReadyCallback callback, gpointer data);
gboolean em_past_jobs_finish (GAsyncResult *result, EmPastJobs *out_jobs, GError **error);

G_END_DECLS
