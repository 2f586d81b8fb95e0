/* em-book-file: the rate book and the catalogue as files.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-quote-file.h"

G_BEGIN_DECLS

gboolean em_rates_load  (const char *path, EmRates *out_rates, GError **error);
gboolean em_rates_parse (GBytes *bytes, const char *name, EmRates *out_rates, GError **error);
GBytes  *em_rates_write (const EmRates *rates, GError **error);
gboolean em_rates_save  (const char *path, const EmRates *rates, GError **error);

gboolean em_catalogue_load  (const char *path, EmCatalogue *out_catalogue, GError **error);
gboolean em_catalogue_parse (GBytes *bytes, const char *name, EmCatalogue *out_catalogue, GError **error);
GBytes  *em_catalogue_write (const EmCatalogue *catalogue, gboolean only_own, GError **error);
gboolean em_catalogue_save  (const char *path, const EmCatalogue *catalogue, gboolean only_own, GError **error);
/* Puts own records over shipped ones by id; both keep what the other lacks. */
gboolean em_catalogue_merge (EmCatalogue *shipped, const EmCatalogue *own, GError **error);

/* What the program starts with: shipped data, then the shop's own files in its configuration folder
 * (g_get_user_config_dir()/estimend/rates.xml, metals.xml; ESTIMEND_CONFIG_DIR moves it). A damaged own file is an error that names it,
 * never silently replaced. */
gboolean em_book_load (EmRates *out_rates, EmCatalogue *out_catalogue, GError **error);
char    *em_book_own_rates_path (void);
char    *em_book_own_catalogue_path (void);

G_END_DECLS
