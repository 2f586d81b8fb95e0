/* em-govern: notes that are not sizes of a repair.
 *
 * Units, metal, hardness, coating, who machines, stock, references, what must not be welded,
 * what lies near. Found before the repairs of a sentence are, so that "4 HOLES ADJACENT" is
 * not taken for four bores.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-grammar.h"

G_BEGIN_DECLS

typedef struct
{
  EmGiven  given;
  guint    item;        /* where it stands */
  gboolean is_general;  /* governs the whole, wherever it stands */
  gboolean is_near;     /* says what lies near a repair */
} EmLoose;

/* Appends EmLoose in order. */
void em_govern_read (EmGrammar *grammar, const EmClause *clause, GArray *loose);

G_END_DECLS
