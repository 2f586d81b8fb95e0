/* em-demo: the invented quotes that come with the program.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-document.h"

G_BEGIN_DECLS

typedef struct
{
  const char *id;     /* the file's name below data/demo, without its ending */
  const char *name;   /* to be translated */
} EmDemo;

extern const EmDemo em_demos[];
extern const int    em_n_demos;

char       *em_demo_path (const char *id);
/* An untitled copy; id NULL or unknown: the first. */
EmDocument *em_demo_open (const char *id, EmBasis *basis, GError **error);

G_END_DECLS
