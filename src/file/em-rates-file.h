/* em-rates-file: the rate book's element inside other files of ours.
 *
 * Whole files are read and written by em-book-file.h.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-xml.h"

G_BEGIN_DECLS

#define EM_RATES_NS "urn:estimend:rates"

/* The present element <rates>, its version read, into a book that has passed the core's checks; after an error of the reader
 * it holds nothing. *n_kept grows by what a newer minor version wrote and is kept. */
void em_rates_read_element (EmXmlReader *reader, EmRates *out_rates, guint *n_kept);
/* A whole element <rates> in its namespace. The book has to pass the core's checks. */
void em_rates_put_element  (EmXmlWriter *writer, const EmRates *rates);

G_END_DECLS
