/* em-number: the next free number of a quote, by the shop's pattern and what lies in its folder.
 *
 * In a pattern # stands for a figure of the running number, %Y for the year, %y for its last two figures and %m for the
 * month: Q-%Y-### makes Q-2026-001. Running numbers begin anew where the rest of the pattern changes.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-basis.h"
#include "em-register.h"

G_BEGIN_DECLS

/* reg NULL: the first. NULL when pattern is NULL or empty. */
char *em_number_next        (const char *pattern, GDateTime *day, const EmRegister *reg);
/* Looks through folder (NULL or "": none) in a thread first, by the pattern of basis' rate book. */
void  em_number_next_async  (const char *folder, EmBasis *basis, GCancellable *cancellable, GAsyncReadyCallback callback, gpointer data);
/* NULL with no error: there is no pattern. */
char *em_number_next_finish (GAsyncResult *result, GError **error);

G_END_DECLS
