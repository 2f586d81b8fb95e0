/* em-book: the rate book and the catalogue the program starts with.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "config.h"

#include "em-book-file.h"
#include "em-place.h"

#include <errno.h>
#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>

static char *
own_path (const char *name)
{
  const char *chosen = g_getenv ("ESTIMEND_CONFIG_DIR");

  return chosen != NULL && *chosen != '\0' ? g_build_filename (chosen, name, NULL)
                                           : g_build_filename (g_get_user_config_dir (), "estimend", name, NULL);
}

char *
em_book_own_rates_path (void)
{
  return own_path ("rates.xml");
}

char *
em_book_own_catalogue_path (void)
{
  return own_path ("metals.xml");
}

/* Only "there is none" counts as none. A file that is there and cannot be looked at is for the reader to complain of, and a
 * link to nowhere is one that is there. */
static gboolean
is_there (const char *path)
{
  GStatBuf about;

  return g_lstat (path, &about) == 0 || (errno != ENOENT && errno != ENOTDIR);
}

static gboolean
load_rates (EmRates *out_rates, GError **error)
{
  g_autofree char *own = em_book_own_rates_path (), *shipped = em_place_data_file ("rates.xml");

  return em_rates_load (is_there (own) ? own : shipped, out_rates, error);
}

static gboolean
load_catalogue (EmCatalogue *out_catalogue, GError **error)
{
  g_autofree char *own_file = em_book_own_catalogue_path (), *shipped = em_place_data_file ("metals.xml");
  EmCatalogue own;
  gboolean is_fine;

  if (!em_catalogue_load (shipped, out_catalogue, error))
    return FALSE;
  if (!is_there (own_file))
    return TRUE;
  is_fine = em_catalogue_load (own_file, &own, error);
  if (is_fine)
    {
      is_fine = em_catalogue_merge (out_catalogue, &own, error);
      em_catalogue_clear (&own);
    }
  if (!is_fine)
    em_catalogue_clear (out_catalogue);
  return is_fine;
}

/* Both outputs are untouched on failure. */
gboolean
em_book_load (EmRates *out_rates, EmCatalogue *out_catalogue, GError **error)
{
  EmRates rates;
  EmCatalogue catalogue;

  if (!load_rates (&rates, error))
    return FALSE;
  if (!load_catalogue (&catalogue, error))
    {
      em_rates_clear (&rates);
      return FALSE;
    }
  *out_rates = rates;
  *out_catalogue = catalogue;
  return TRUE;
}
