/* em-xml-row: members of a record as attributes, by a table.
 *
 * A member at its default is left out. So a word of a newer version, which stands at its
 * default here, can be put back as it was; see em_xml_put_kept.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-xml.h"

#include <stddef.h>

G_BEGIN_DECLS

typedef enum { EM_XML_REAL, EM_XML_WHOLE, EM_XML_LARGE, EM_XML_FLAG, EM_XML_WORD } EmXmlType;

typedef struct
{
  const char        *id;       /* attribute */
  EmXmlType          type;     /* double, int32_t, int64_t, bool, enum */
  size_t             offset;
  gint64             preset;   /* left out when equal; of a double: NaN */
  const char *const *words;    /* of an enum */
  int                n_words;
} EmXmlRow;

#define EM_XML_ROW_REAL(id, holder, member)                { id, EM_XML_REAL, offsetof (holder, member), 0, NULL, 0 }
#define EM_XML_ROW_WHOLE(id, holder, member, preset)       { id, EM_XML_WHOLE, offsetof (holder, member), preset, NULL, 0 }
#define EM_XML_ROW_LARGE(id, holder, member, preset)       { id, EM_XML_LARGE, offsetof (holder, member), preset, NULL, 0 }
#define EM_XML_ROW_FLAG(id, holder, member)                { id, EM_XML_FLAG, offsetof (holder, member), 0, NULL, 0 }
#define EM_XML_ROW_WORD(id, holder, member, words, n)      { id, EM_XML_WORD, offsetof (holder, member), 0, words, n }

/* holder's members as they are stay where there is no attribute. Any value of the type is taken: what may be priced the core
 * says, and a draft that may not yet has to open again. */
void em_xml_rows_read (EmXmlReader *reader, const EmXmlRow *rows, int n_rows, void *holder);
void em_xml_rows_put  (EmXmlWriter *writer, const EmXmlRow *rows, int n_rows, const void *holder);

G_END_DECLS
