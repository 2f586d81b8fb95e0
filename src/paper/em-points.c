/* em-points: leading points of decimals, ".020", where no line may part.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-points.h"

#include <string.h>

gssize
em_points_next (const char *text, gsize from)
{
  for (const char *c = text != NULL ? text + from : NULL; c != NULL && (c = strpbrk (c, ".,")) != NULL; c++)
    if (g_ascii_isdigit (c[1]) && (c == text || !g_ascii_isdigit (c[-1])))
      return c - text;
  return -1;
}

PangoAttrList *
em_points_bar (PangoAttrList *attributes, const char *text)
{
  PangoAttrList *barred = NULL;

  for (gssize at = em_points_next (text, 0); at >= 0; at = em_points_next (text, (gsize) at + EM_POINT_BYTES))
    {
      PangoAttribute *bar = pango_attr_allow_breaks_new (FALSE);

      bar->start_index = (guint) at;
      bar->end_index = bar->start_index + EM_POINT_BYTES;
      if (barred == NULL)
        barred = attributes != NULL ? pango_attr_list_copy (attributes) : pango_attr_list_new ();
      pango_attr_list_insert (barred, bar);
    }
  return barred;
}
