/* em-command: the command line over the same layers as the window. No display needed.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Whether argv names one of our commands ("cost", "compare", …, "--help", "--version"); else the window opens the files. */
gboolean em_command_is_ours (int argc, char **argv);

/* 0 good, 1 something wrong in the input, 2 misuse. */
int em_command_run (int argc, char **argv);

G_END_DECLS
