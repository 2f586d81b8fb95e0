/* em-demo: the invented quotes that come with the program.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-demo.h"

#include "em-place.h"

#include <glib/gi18n.h>

const EmDemo em_demos[] =
{
  { "injection-mold", N_("Injection mold, inch notes") },
  { "blow-mold", N_("Blow mold, metric notes") },
  { "extrusion-die", N_("Extrusion die") },
};
const int em_n_demos = G_N_ELEMENTS (em_demos);

char *
em_demo_path (const char *id)
{
  const char *known = em_demos[0].id;

  for (int i = 0; i < em_n_demos; i++)
    if (g_strcmp0 (em_demos[i].id, id) == 0)
      known = em_demos[i].id;
  g_autofree char *name = g_strconcat (known, ".estimend", NULL);
  return g_build_filename (em_place_data_dir (), "demo", name, NULL);
}

EmDocument *
em_demo_open (const char *id, EmBasis *basis, GError **error)
{
  g_autofree char *path = em_demo_path (id);
  EmQuoteFile file;

  if (!em_quote_file_load (path, &file, error))
    return NULL;
  return em_document_new_take (basis, &file, NULL);
}
