/* em-xml-keep: elements taken out as XML, and what a newer minor version wrote, kept so until it is saved again.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "config.h"

#include "em-xml-private.h"

#include <glib/gi18n-lib.h>
#include <string.h>

/* Attributes of one record, so that with all of ours it still is one that can be read; what the parser takes for a node, about. */
enum { ATTRIBUTES_KEPT_MAX = 24, NODE_BYTES = 128 };

/* ---- elements ---- */

/* Towards the limit of what is taken out. */
static void
count_kept (EmXmlReader *reader, const char *text, gsize bytes_max)
{
  reader->kept_bytes += NODE_BYTES + (text != NULL ? strlen (text) : 0);
  if (reader->kept_bytes > bytes_max)
    em_xml_refuse (reader, EM_FILE_ERROR_TOO_LARGE, NULL, _("more elements than allowed."));
}

static void
count_attributes (EmXmlReader *reader, gsize bytes_max)
{
  for (xmlAttrPtr at = reader->node->properties; at != NULL && reader->error == NULL; at = at->next)
    count_kept (reader, em_xml_attribute_value (reader, at), bytes_max);
}

/* Through the present element to its end, the parser holding on to it. An element that is small in the file can be large in memory, so
 * it is counted on the way; NULL: too large, or not well-formed. */
static xmlNodePtr
hold_element (EmXmlReader *reader, gsize bytes_max)
{
  xmlNodePtr node = xmlTextReaderPreserve (reader->text_reader);
  int depth = xmlTextReaderDepth (reader->text_reader), type;

  if (node == NULL)
    em_xml_fail (reader, EM_FILE_ERROR_READ, _("memory ran out."));
  count_kept (reader, NULL, bytes_max);
  count_attributes (reader, bytes_max);
  reader->is_read = G_MAXUINT64;
  if (xmlTextReaderIsEmptyElement (reader->text_reader) == 1)
    return reader->error == NULL ? node : NULL;
  while (em_xml_step (reader))
    {
      type = xmlTextReaderNodeType (reader->text_reader);
      if (type == XML_READER_TYPE_END_ELEMENT && xmlTextReaderDepth (reader->text_reader) == depth)
        return node;
      if (type == XML_READER_TYPE_ELEMENT)
        {
          em_xml_arrive (reader);
          count_attributes (reader, bytes_max);
          reader->is_read = G_MAXUINT64;
        }
      count_kept (reader, (const char *) xmlTextReaderConstValue (reader->text_reader), bytes_max);
    }
  return NULL;
}

static int
append_piece (void *data, const char *piece, int length)
{
  g_string_append_len (data, piece, length);
  return length;
}

/* Not xmlNodeDump, which frees its buffer twice where memory runs out (libxml2 2.9.14). */
char *
em_xml_dump_node (xmlNodePtr node)
{
  GString *text = g_string_new (NULL);
  xmlOutputBufferPtr out = xmlOutputBufferCreateIO (append_piece, NULL, text, NULL);
  gboolean is_good = FALSE;

  if (out != NULL)
    {
      xmlNodeDumpOutput (out, node->doc, node, 0, 0, NULL);
      is_good = out->error == 0;
      is_good = xmlOutputBufferClose (out) >= 0 && is_good;
    }
  return g_string_free (text, !is_good || text->len == 0);
}

/* From a copy out of the document, so that name spaces declared further out come along. What did not fit into memory is left out of a
 * copy, which only the last error tells. */
static char *
dump_element (EmXmlReader *reader, xmlNodePtr node)
{
  xmlResetLastError ();

  xmlNodePtr copy = xmlDocCopyNode (node, node->doc, 1);
  char *xml = copy != NULL ? em_xml_dump_node (copy) : NULL;

  if (xml == NULL || xmlGetLastError () != NULL)
    em_xml_fail (reader, EM_FILE_ERROR_READ, _("memory ran out."));
  xmlFreeNode (copy);
  return xml;
}

char *
em_xml_take_element (EmXmlReader *reader, gsize bytes_max)
{
  xmlNodePtr node = reader->error == NULL ? hold_element (reader, bytes_max) : NULL;

  return node != NULL && reader->error == NULL ? dump_element (reader, node) : NULL;
}

/* ---- of a newer minor version ---- */

static void
add_kept (EmXmlReader *reader, EmXmlKept *kept, const char *what, const char *at, const char *inside)
{
  g_autofree char *place = g_markup_escape_text (at, -1);

  if (kept->text == NULL)
    kept->text = g_string_new (NULL);
  g_string_append_printf (kept->text, "<%s at=\"%s\" minor=\"%d\">%s</%s>", what, place, reader->minor, inside, what);
  kept->n_kept++;
}

/* Attributes go as attributes of an element “a” of no name space; those with a prefix bring their declaration. */
void
em_xml_keep_attributes (EmXmlReader *reader, EmXmlKept *kept, const char *at)
{
  g_autoptr (GString) inside = NULL;
  int i = 0, n = 0;

  if (reader->error != NULL || !reader->is_newer || reader->node == NULL)
    return;
  for (xmlAttrPtr attribute = reader->node->properties; attribute != NULL; attribute = attribute->next, i++)
    {
      if (reader->is_read & (G_GUINT64_CONSTANT (1) << i))
        continue;
      if (attribute->ns != NULL)
        {
          em_xml_refuse (reader, EM_FILE_ERROR_VALUE, (const char *) attribute->name, _("not known here."));
          return;
        }
      if (++n > ATTRIBUTES_KEPT_MAX)
        {
          em_xml_refuse (reader, EM_FILE_ERROR_TOO_LARGE, NULL, _("more attributes than allowed."));
          return;
        }
      g_autofree char *value = g_markup_escape_text (em_xml_attribute_value (reader, attribute), -1);
      if (inside == NULL)
        inside = g_string_new ("<a");
      g_string_append_printf (inside, " %s=\"", (const char *) attribute->name);
      for (const char *c = value; *c != '\0'; c++)
        if (*c == '\n' || *c == '\t' || *c == '\r')
          g_string_append_printf (inside, "&#%d;", *c);
        else
          g_string_append_c (inside, *c);
      g_string_append_c (inside, '"');
      reader->is_read |= G_GUINT64_CONSTANT (1) << i;
    }
  if (inside == NULL)
    return;
  g_string_append (inside, "/>");
  add_kept (reader, kept, "attributes", at, inside->str);
}

void
em_xml_keep_element (EmXmlReader *reader, EmXmlKept *kept, const char *at)
{
  if (!reader->is_newer)
    {
      em_xml_refuse_element (reader);
      return;
    }
  g_autofree char *xml = em_xml_take_element (reader, EM_XML_PART_MAX);
  if (xml != NULL)
    add_kept (reader, kept, "element", at, xml);
}

void
em_xml_keep_children (EmXmlReader *reader, EmXmlKept *kept, const char *at)
{
  em_xml_begin (reader);
  while (em_xml_child (reader))
    em_xml_keep_element (reader, kept, at);
}

void
em_xml_kept_clear (EmXmlKept *kept)
{
  if (kept->text != NULL)
    g_string_free (kept->text, TRUE);
  *kept = (EmXmlKept) { NULL, 0 };
}
