/* em-xml-private: the reader's own parts, shared by the files that make it up.
 *
 * em-xml-file.c brings the bytes and looks at them before the parser does, em-xml-reader.c moves and tells errors,
 * em-xml-attribute.c reads attributes, em-xml-keep.c keeps what a newer minor version wrote.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#pragma once

#include "em-xml.h"

#include <libxml/xmlreader.h>

G_BEGIN_DECLS

enum { EM_XML_STACK_MAX = 64, EM_XML_ATTRIBUTES_MAX = 64 /* as many as is_read has bits */ };

struct _EmXmlReader
{
  GBytes          *bytes;
  char            *name;
  const xmlChar   *ns;           /* of the root and of everything that is known; in the parser's dictionary */
  EmXmlLimits      limits;
  xmlTextReaderPtr text_reader;
  xmlNodePtr       node;         /* the present element, owned by text_reader; NULL when there is none */
  const xmlNs     *root_ns;      /* the root's own record of ns, which all in it share that declare none */
  guint64          is_there;     /* bit an attribute of node, in document order */
  guint64          is_read;      /* those of them that were asked for */
  GPtrArray       *scratch;      /* attribute values that had to be put together */
  GString         *text;         /* what em_xml_text gave last */
  const xmlError  *last_error;   /* the parser's, of the thread that reads */
  int              line;
  int              stack[EM_XML_STACK_MAX];   /* depths of the begun elements; −1 for one without content */
  int              n_stack;
  guint            n_elements;
  guint            n_remarks;    /* comments and instructions */
  gsize            kept_bytes;   /* of what was taken out as XML, in the parser's memory */
  gboolean         is_done;      /* the root has ended */
  int              major, minor;
  gboolean         is_newer;
  GError          *error;
};

/* The first error counts: “file, line: sentence”. */
void em_xml_fail (EmXmlReader *reader, EmFileError code, const char *sentence);

/* Whether the parser's last error was that, since a reader was last begun in this thread. */
static inline gboolean
em_xml_is_out_of_memory (const EmXmlReader *reader)
{
  return reader->last_error->code == XML_ERR_NO_MEMORY;
}

/* Whether the text may be handed to the parser: UTF-8 without NUL, no DOCTYPE in front of the root, no tag of attributes
 * without end. After FALSE the reader has its error. */
gboolean em_xml_check_plain (EmXmlReader *reader, const char *text, gsize length);

/* Counts the element the parser has just come to, towards the limits. */
void em_xml_arrive (EmXmlReader *reader);
/* The next node of whatever type; FALSE at the end and after an error. */
gboolean em_xml_step (EmXmlReader *reader);

/* A node as XML; g_free. NULL: memory ran out. */
char *em_xml_dump_node (xmlNodePtr node);

/* NULL when the present element has no such attribute, or after an error. *out_index: its place, as in is_read. */
xmlAttrPtr  em_xml_find_attribute  (EmXmlReader *reader, const char *name, int *out_index);
/* Borrowed until the reader moves; never NULL. */
const char *em_xml_attribute_value (EmXmlReader *reader, xmlAttrPtr at);

G_END_DECLS
