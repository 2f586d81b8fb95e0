/* em-command: the command line over the same layers as the window.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-command.h"

gboolean
em_command_is_ours (int argc, char **argv)
{
  return argc > 1 && g_str_equal (argv[1], "--version");
}

int
em_command_run (int argc, char **argv)
{
  (void) argc;
  (void) argv;
  g_print ("estimend\n");
  return 0;
}
