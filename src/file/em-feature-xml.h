/* em-feature-xml: features as elements, alike in a quote and on the clipboard.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-xml.h"

G_BEGIN_DECLS

#define EM_QUOTE_NS "urn:estimend:quote"

enum { EM_QUOTE_MAJOR = 1, EM_QUOTE_MINOR = 3, EM_QUOTE_LINES_MAX = 100000 };

/* The features of one quote while they are read. */
typedef struct
{
  EmQuote    *quote;    /* borrowed */
  uint32_t    last_id;  /* of the feature before */
  GHashTable *ids;      /* all seen; NULL as long as they rise */
  guint       n_kept;   /* things of a newer version in them */
} EmFeatureReading;

void em_feature_reading_init  (EmFeatureReading *out_reading, EmQuote *quote);
void em_feature_reading_clear (EmFeatureReading *reading);
/* The present element <feature>, added to the quote's end. One of a kind that only a newer version knows is kept whole. */
void em_feature_read          (EmXmlReader *reader, EmFeatureReading *reading, EmXmlKept *quote_kept);
void em_feature_put           (EmXmlWriter *writer, const EmFeature *feature);
/* "1.0", or the newest minor version that something kept in the quote came from. g_free. */
char *em_quote_dup_version    (EmXmlWriter *writer, const EmFeature *features, int32_t n_features, const char *quote_kept);

/* The present element <quote>, the root of a quote's file or inside another; out_file has been begun and is to be cleared, whether or not the
 * reader is still good after it. name is the file's, for errors. In em-quote-file.c. */
void em_quote_file_read       (EmXmlReader *reader, const char *name, EmQuoteFile *out_file);

/* <id>text</id> with what was kept of it. */
void em_quote_put_text        (EmXmlWriter *writer, const char *id, const char *text, const char *kept);
/* The text of the present element into *text, once; attributes of a newer version are kept as "text:id". */
void em_quote_read_text       (EmXmlReader *reader, const char *id, char **text, EmXmlKept *kept);

G_END_DECLS
