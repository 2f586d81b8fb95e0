/* em-slip: the word that a near spelling most likely means.
 *
 * A slip is one letter added, dropped, changed or swapped with its neighbour, not the first
 * letter, in a word of five letters or more (of four: only a swap). Found by an index of
 * shortened words, so that the time does not grow with the lexicon.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef struct EmSlips EmSlips;

EmSlips *em_slips_new  (void);
void     em_slips_free (EmSlips *slips);
void     em_slips_add  (EmSlips *slips, const char *word, guint32 atom);
/* The atom of the one word meant; 0 when none or when it can't be told. */
guint32  em_slips_find (const EmSlips *slips, const char *word);

G_END_DECLS
