/* main: starts the command line or the window.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-command.h"

int
main (int argc, char **argv)
{
  if (em_command_is_ours (argc, argv))
    return em_command_run (argc, argv);
  return 0;
}
