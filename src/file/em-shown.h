/* em-shown: as much of a refused text as a message shows: up to 40 bytes, ending with a whole character.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include <string.h>

enum { EM_SHOWN_BYTES = 40 };

typedef struct
{
  char text[EM_SHOWN_BYTES + 1];
} EmShown;

/* text is UTF-8. em_shown (text).text lasts until the end of the expression it stands in. */
static inline EmShown
em_shown (const char *text)
{
  EmShown shown = { "" };
  size_t length = strlen (text);

  if (length > EM_SHOWN_BYTES)
    for (length = EM_SHOWN_BYTES; length > 0 && ((unsigned char) text[length] & 0xC0) == 0x80; length--)
      ;
  memcpy (shown.text, text, length);
  return shown;
}
