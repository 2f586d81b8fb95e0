/* em-table: rows under a line of headings.
 *
 * A line of three columns and more, parted by tabs, bars or two blanks and more, whose words name sizes or counts, gives its names
 * to the numbers that stand alone in the columns below it, until a line has other columns.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-item.h"

G_BEGIN_DECLS

/* Gives roles to the sizes of all tables, marks the headings and row numbers used, and the first item of each row. */
void em_table_read (EmItems *items);

G_END_DECLS
