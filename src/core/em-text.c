/* em-text: owned strings, as every record of the core holds them.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-feature.h"

#include <stdlib.h>
#include <string.h>

char *
em_text_dup (const char *text)
{
  if (text == NULL)
    return NULL;

  size_t size = strlen (text) + 1;
  char *copy = malloc (size);

  if (copy != NULL)
    memcpy (copy, text, size);
  return copy;
}

bool
em_text_equal (const char *a, const char *b)
{
  return a == b || (a != NULL && b != NULL && strcmp (a, b) == 0);
}
