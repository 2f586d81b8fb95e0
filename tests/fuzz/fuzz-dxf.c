/* Fuzz target of the drawing text reader: any bytes.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-fuzz.h"
#include "em-notes.h"

int
LLVMFuzzerTestOneInput (const uint8_t *data, size_t size)
{
  EmUnits units = EM_UNITS_METRIC;
  gboolean has_units = FALSE;
  g_autoptr (GError) error = NULL;
  g_autofree char *text = em_dxf_text ((const char *) data, size, &units, &has_units, &error);

  if (text == NULL)
    fuzz_check_refusal (error);
  else
    PROMISE (error == NULL && g_utf8_validate (text, -1, NULL));
  return 0;
}
