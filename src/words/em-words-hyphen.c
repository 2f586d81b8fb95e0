/* em-words-hyphen: where a long German compound may part at a line's end.
 *
 * German parts compounds between their members (Amtliches Regelwerk, section F, from memory). Two rules find enough of
 * these joints without a dictionary: behind a joining s of -ungs, -heits, -keits, -schafts, -tions and -ions, and before a
 * word of the trade's own. Other languages need none: their words are short, and their syllables want a dictionary.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-words.h"

#include <string.h>

#define SOFT_HYPHEN "\302\255"

/* Bytes; shorter words are left whole, and so is what would stand alone before or behind a joint. */
enum { WORD_MIN = 12, PART_MIN = 3 };

static const char *const joining[] = { "ungs", "heits", "keits", "schafts", "ions" };

/* Last members of the compounds on our paper. None of them begins within another word of so many letters. */
static const char *const members[] =
{
  "auftrag", "bearbeit", "beauftragt", "berechnung", "blätter", "durchfluss", "durchmesser", "einbringung", "energie", "familie", "fieber", "frequenz",
  "gehalt", "geschwindigkeit", "härtend", "hinweis", "krankheit", "leistung", "legierung", "nummer", "prüfung", "radius", "reparatur", "schweiß",
  "spannung", "spitze", "stunde", "temperatur", "verbrauch", "vorbereitung", "werkzeug", "wirkungsgrad", "zugabe", "zustand", "zuschlag",
};

static gboolean
is_joint (const char *word, gsize length, gsize at)
{
  if (at < PART_MIN || at + PART_MIN > length)
    return FALSE;
  for (gsize i = 0; i < G_N_ELEMENTS (joining); i++)
    {
      gsize n = strlen (joining[i]);

      if (at > n && strncmp (word + at - n, joining[i], n) == 0)
        return TRUE;
    }
  for (gsize i = 0; i < G_N_ELEMENTS (members); i++)
    if (strncmp (word + at, members[i], strlen (members[i])) == 0)
      return TRUE;
  return FALSE;
}

/* Letters from at on, bytes: ASCII letters and every character beyond ASCII but spaces and signs. */
static gsize
word_length (const char *at)
{
  const char *end = at;

  while (g_unichar_isalpha (g_utf8_get_char (end)))
    end = g_utf8_next_char (end);
  return (gsize) (end - at);
}

/** text with a soft hyphen (U+00AD) at each joint of its long words; NULL when there is none, or the language in force is not German. */
char *
em_words_hyphenate (const char *text)
{
  GString *out;
  gboolean has_any = FALSE;

  if (!g_str_equal (em_words_language (), "de"))
    return NULL;
  out = g_string_new (NULL);
  while (*text != '\0')
    {
      gsize length = word_length (text), n = length > 0 ? length : (gsize) (g_utf8_next_char (text) - text);

      for (gsize i = 0; i < n; i++)
        {
          if (length >= WORD_MIN && is_joint (text, length, i))
            {
              g_string_append (out, SOFT_HYPHEN);
              has_any = TRUE;
            }
          g_string_append_c (out, text[i]);
        }
      text += n;
    }
  return g_string_free (out, !has_any);
}
