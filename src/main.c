/* main: starts the command line or the window.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-application.h"
#include "em-command.h"
#include "em-place.h"
#include "em-words.h"

#include <locale.h>

int
main (int argc, char **argv)
{
  setlocale (LC_ALL, "");
  em_words_init (em_place_locale_dir ());
  if (em_command_is_ours (argc, argv))
    return em_command_run (argc, argv);
  return em_application_main (argc, argv);
}
