/* em-words-caution: the engine's cautions, translated.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-words.h"

const char *
em_words_caution (EmCaution caution)
{
  return (guint) caution < EM_N_CAUTION ? em_words (em_cautions[caution].text) : "";
}

const char *
em_words_caution_name (EmCaution caution)
{
  return (guint) caution < EM_N_CAUTION ? em_words (em_cautions[caution].name) : "";
}
