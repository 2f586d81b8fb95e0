/* em-read-result: makes the result a reading fills.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-notes.h"

G_BEGIN_DECLS

EmReadResult *em_read_result_new (void);

G_END_DECLS
