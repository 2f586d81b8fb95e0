/* em-catalogue-file: the catalogue's element inside other files of ours.
 *
 * Whole files are read and written by em-book-file.h.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-xml.h"

G_BEGIN_DECLS

#define EM_CATALOGUE_NS "urn:estimend:metals"

/* Reads the children of the present element into an empty catalogue; after an error of the reader it holds nothing. */
void em_catalogue_read_element (EmXmlReader *reader, EmCatalogue *out_catalogue);
/* A whole element <metals> in its namespace, with what was kept of a newer version. */
void em_catalogue_put_element  (EmXmlWriter *writer, const EmCatalogue *catalogue, gboolean only_own);

G_END_DECLS
