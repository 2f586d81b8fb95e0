/* em-quote-file: quotes as files of our own: XML, namespace, version, RELAX NG schema.
 *
 * Reading trusts nothing: no DTD, no entities, no network, limits on size, depth and
 * counts. Writing is byte-deterministic and atomic.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-catalogue.h"
#include "em-quote.h"
#include "em-rates.h"

#include <gio/gio.h>

G_BEGIN_DECLS

#define EM_FILE_ERROR (em_file_error_quark ())
GQuark em_file_error_quark (void);

/* The message of each names file, line and field, untranslated identifiers in a translated sentence. */
typedef enum
{
  EM_FILE_ERROR_READ, EM_FILE_ERROR_NOT_OURS, EM_FILE_ERROR_SYNTAX, EM_FILE_ERROR_HOSTILE, EM_FILE_ERROR_TOO_LARGE,
  EM_FILE_ERROR_NEWER, EM_FILE_ERROR_VALUE, EM_FILE_ERROR_WRITE, EM_FILE_ERROR_LOCKED, EM_FILE_ERROR_CHANGED
} EmFileError;

/* What tells one state of a file from another without reading it; see em-save.h. All zero: there is none. */
typedef struct
{
  guint64 device, inode, size;
  gint64  modified_ns;
} EmFileStamp;

typedef struct
{
  EmQuote      quote;
  EmRates     *sent_rates;      /* NULL: priced with the shop's present book */
  EmCatalogue *sent_catalogue;  /* the metals it was priced with */
  int          version_major, version_minor;
  gboolean     is_newer_minor;  /* holds things this version can't use; kept on save */
  guint        n_kept;          /* how many such things */
  EmFileStamp  stamp;           /* of the file it was loaded from, as it was just before */
} EmQuoteFile;

void         em_quote_file_init  (EmQuoteFile *out_file);
void         em_quote_file_clear (EmQuoteFile *file);
gboolean     em_quote_file_parse (GBytes *bytes, const char *name, EmQuoteFile *out_file, GError **error);
/* The bytes of path, no more than a quote may have, and what the file was just before. */
GBytes      *em_quote_file_bytes (const char *path, EmFileStamp *out_stamp, GError **error);
gboolean     em_quote_file_load  (const char *path, EmQuoteFile *out_file, GError **error);
GBytes      *em_quote_file_write (const EmQuoteFile *file, GError **error);
gboolean     em_quote_file_save  (const char *path, const EmQuoteFile *file, GError **error);
/* Features only, for the clipboard and drag: the same XML, root <features>. */
char        *em_features_to_xml   (const EmFeature *features, int32_t n_features);
gboolean     em_features_from_xml (const char *xml, gssize length, EmQuote *out_quote, GError **error);

G_END_DECLS
