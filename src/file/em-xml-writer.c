/* em-xml-writer: the byte-deterministic writer of our own XML.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "config.h"

#include "em-xml-private.h"

#include <glib/gi18n-lib.h>
#include <libxml/parser.h>
#include <libxml/xmlerror.h>
#include <libxml/tree.h>
#include <string.h>

enum { DEPTH_MAX = 32, NAME_MAX_BYTES = 64, PUT_MAX = 64 };

struct _EmXmlWriter
{
  GString    *out;
  char        name[DEPTH_MAX][NAME_MAX_BYTES];
  int         depth;
  gboolean    is_tag_open;              /* ">" of the present element is still to come */
  gboolean    has_content;              /* the present element holds text: closed on the same line */
  const char *put[PUT_MAX];             /* attributes of the open tag */
  int         n_put;
  GPtrArray  *kept_names;               /* those of them that had to be copied */
  char       *bad;                      /* what could not be written, or NULL */
  gboolean    is_out_of_memory;
  const char *kept;                     /* what was kept last, borrowed; the next place asks for the same most often */
  GHashTable *kept_pieces;              /* of it: "what place" → GPtrArray of xmlNodePtr; NULL: it cannot be read */
  xmlDocPtr   kept_document;
};

EmXmlWriter *
em_xml_writer_new (void)
{
  EmXmlWriter *writer = g_new0 (EmXmlWriter, 1);

  writer->kept_names = g_ptr_array_new_with_free_func (g_free);
  writer->out = g_string_new ("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n");
  return writer;
}

static void
forget_kept (EmXmlWriter *writer)
{
  g_clear_pointer (&writer->kept_pieces, g_hash_table_unref);
  g_clear_pointer (&writer->kept_document, xmlFreeDoc);
  writer->kept = NULL;
}

void
em_xml_writer_free (EmXmlWriter *writer)
{
  if (writer == NULL)
    return;
  if (writer->out != NULL)
    g_string_free (writer->out, TRUE);
  forget_kept (writer);
  g_ptr_array_unref (writer->kept_names);
  g_free (writer->bad);
  g_free (writer);
}

GBytes *
em_xml_writer_finish (EmXmlWriter *writer, GError **error)
{
  GBytes *bytes = NULL;

  g_assert (writer->depth == 0);
  if (writer->is_out_of_memory)
    g_set_error_literal (error, EM_FILE_ERROR, EM_FILE_ERROR_WRITE, _("memory ran out."));
  else if (writer->bad != NULL)
    g_set_error (error, EM_FILE_ERROR, EM_FILE_ERROR_WRITE, _("“%s” cannot be written: it is not valid text."), writer->bad);
  else
    bytes = g_string_free_to_bytes (g_steal_pointer (&writer->out));
  em_xml_writer_free (writer);
  return bytes;
}

/* ---- text ---- */

static void
note_bad (EmXmlWriter *writer, const char *name)
{
  if (writer->bad == NULL)
    writer->bad = g_strdup (name);
}

/* XML 1.0 has no place for control characters, nor for U+FFFE and U+FFFF: each byte of one becomes a blank, so that
 * offsets into the text stay true. Line breaks and tabs are references in attributes, where a parser would make blanks
 * of them; a carriage return is one everywhere. */
static void
append_special (GString *out, const char *at, gboolean is_attribute)
{
  switch (*at)
    {
    case '&': g_string_append (out, "&amp;"); break;
    case '<': g_string_append (out, "&lt;"); break;
    case '>': g_string_append (out, "&gt;"); break;
    case '"': g_string_append (out, is_attribute ? "&quot;" : "\""); break;
    case '\r': g_string_append (out, "&#13;"); break;
    case '\n': g_string_append (out, is_attribute ? "&#10;" : "\n"); break;
    case '\t': g_string_append (out, is_attribute ? "&#9;" : "\t"); break;
    default: g_string_append_c (out, ' '); break;
    }
}

static gboolean
is_outside_xml (const char *at)
{
  return (guchar) at[0] == 0xef && (guchar) at[1] == 0xbf && ((guchar) at[2] == 0xbe || (guchar) at[2] == 0xbf);
}

static void
append_text (EmXmlWriter *writer, const char *name, const char *text, gboolean is_attribute)
{
  const char *from = text, *at = text;

  if (!g_utf8_validate (text, -1, NULL))
    {
      note_bad (writer, name);
      return;
    }
  for (; *at != '\0'; at++)
    {
      gboolean is_outside = is_outside_xml (at);
      if (!is_outside && (guchar) *at >= 0x20 && *at != '&' && *at != '<' && *at != '>' && *at != '"')
        continue;
      g_string_append_len (writer->out, from, at - from);
      if (is_outside)
        {
          g_string_append (writer->out, "   ");
          at += 2;
        }
      else
        append_special (writer->out, at, is_attribute);
      from = at + 1;
    }
  g_string_append_len (writer->out, from, at - from);
}

/* ---- elements ---- */

static void
forget_put (EmXmlWriter *writer)
{
  writer->n_put = 0;
  g_ptr_array_set_size (writer->kept_names, 0);
}

static void
end_tag (EmXmlWriter *writer)
{
  if (writer->is_tag_open)
    g_string_append (writer->out, ">\n");
  writer->is_tag_open = FALSE;
  forget_put (writer);
}

static void
indent (EmXmlWriter *writer)
{
  for (int i = 0; i < writer->depth; i++)
    g_string_append (writer->out, "  ");
}

void
em_xml_open (EmXmlWriter *writer, const char *name)
{
  g_assert (writer->depth < DEPTH_MAX && strlen (name) < NAME_MAX_BYTES && !writer->has_content);
  end_tag (writer);
  indent (writer);
  g_string_append_c (writer->out, '<');
  g_string_append (writer->out, name);
  g_strlcpy (writer->name[writer->depth++], name, NAME_MAX_BYTES);
  writer->is_tag_open = TRUE;
}

void
em_xml_close (EmXmlWriter *writer)
{
  g_assert (writer->depth > 0);
  writer->depth--;
  if (writer->is_tag_open)
    g_string_append (writer->out, "/>\n");
  else
    {
      if (!writer->has_content)
        indent (writer);
      g_string_append (writer->out, "</");
      g_string_append (writer->out, writer->name[writer->depth]);
      g_string_append (writer->out, ">\n");
    }
  writer->is_tag_open = writer->has_content = FALSE;
  forget_put (writer);
}

void
em_xml_put_content (EmXmlWriter *writer, const char *text)
{
  g_assert (writer->is_tag_open);
  if (text == NULL || text[0] == '\0')
    return;
  g_string_append_c (writer->out, '>');
  writer->is_tag_open = FALSE;
  writer->has_content = TRUE;
  append_text (writer, writer->name[writer->depth - 1], text, FALSE);
}

void
em_xml_put_text (EmXmlWriter *writer, const char *name, const char *text)
{
  if (text == NULL)
    return;
  em_xml_open (writer, name);
  em_xml_put_content (writer, text);
  em_xml_close (writer);
}

void
em_xml_put_xml (EmXmlWriter *writer, const char *xml, gsize length)
{
  const char *end = xml + length;

  if (length > 6 && memcmp (xml, "<?xml ", 6) == 0)
    {
      const char *close = g_strstr_len (xml, (gssize) length, "?>");
      xml = close != NULL ? close + 2 : xml;
    }
  while (xml < end && g_ascii_isspace (*xml))
    xml++;
  while (end > xml && g_ascii_isspace (end[-1]))
    end--;
  end_tag (writer);
  indent (writer);
  g_string_append_len (writer->out, xml, end - xml);
  g_string_append_c (writer->out, '\n');
}

/* ---- attributes ---- */

static void
start_attribute (EmXmlWriter *writer, const char *name)
{
  g_assert (writer->is_tag_open);
  if (writer->n_put < PUT_MAX)
    writer->put[writer->n_put++] = name;
  g_string_append_c (writer->out, ' ');
  g_string_append (writer->out, name);
  g_string_append (writer->out, "=\"");
}

void
em_xml_put (EmXmlWriter *writer, const char *name, const char *text)
{
  if (text == NULL)
    return;
  start_attribute (writer, name);
  append_text (writer, name, text, TRUE);
  g_string_append_c (writer->out, '"');
}

/* Digits of a whole number, without the locale and without parsing a format. */
static void
append_whole (GString *out, gint64 value)
{
  char digits[24], *at = digits + sizeof digits;
  guint64 rest = value < 0 ? (guint64) 0 - (guint64) value : (guint64) value;

  do
    *--at = (char) ('0' + rest % 10);
  while ((rest /= 10) != 0);
  if (value < 0)
    *--at = '-';
  g_string_append_len (out, at, digits + sizeof digits - at);
}

void
em_xml_put_real (EmXmlWriter *writer, const char *name, double value)
{
  char text[32];

  if (isnan (value))
    return;
  if (isinf (value))
    {
      note_bad (writer, name);
      return;
    }
  start_attribute (writer, name);
  g_string_append_len (writer->out, text, em_number_write (value, text, sizeof text));
  g_string_append_c (writer->out, '"');
}

void
em_xml_put_integer (EmXmlWriter *writer, const char *name, gint64 value)
{
  start_attribute (writer, name);
  append_whole (writer->out, value);
  g_string_append_c (writer->out, '"');
}

void
em_xml_put_boolean (EmXmlWriter *writer, const char *name, gboolean value)
{
  em_xml_put (writer, name, value ? "yes" : "no");
}

/* ---- what was kept ---- */

/* What the parser complains of while kept things are put together. Where memory runs out it cuts texts and leaves things out, and
 * says so here alone; its last error is the next complaint's soon. */
typedef struct
{
  EmXmlWriter           *writer;
  gboolean               has_other;   /* a complaint of another kind */
  xmlStructuredErrorFunc before;
  void                  *before_data;
} Watch;

static void
on_complaint (void *data, xmlErrorPtr complaint)
{
  Watch *watch = data;

  if (complaint->code == XML_ERR_NO_MEMORY)
    watch->writer->is_out_of_memory = TRUE;
  else
    watch->has_other = TRUE;
}

static void
begin_watch (Watch *watch, EmXmlWriter *writer)
{
  *watch = (Watch) { writer, FALSE, xmlStructuredError, xmlStructuredErrorContext };
  xmlSetStructuredErrorFunc (watch, on_complaint);
}

static void
end_watch (const Watch *watch)
{
  xmlSetStructuredErrorFunc (watch->before_data, watch->before);
}

/* The pieces of a kept text, under one root, where no DTD can be declared; NULL when it is no XML of ours or memory ran out, which
 * the writer remembers. Free the document. */
static xmlDocPtr
read_kept (const Watch *watch, const char *kept)
{
  g_autofree char *whole = g_strconcat ("<kept>", kept, "</kept>", NULL);
  xmlParserCtxtPtr context;
  xmlDocPtr document = NULL;

  if (strlen (whole) > G_MAXINT)
    {
      note_bad (watch->writer, kept);
      return NULL;
    }
  /* No encoding is named: it is UTF-8 anyway, and switching to one ends the program where memory runs out (libxml2 2.9.14). */
  context = xmlNewParserCtxt ();
  if (context != NULL)
    document = xmlCtxtReadMemory (context, whole, (int) strlen (whole), NULL, NULL, XML_PARSE_NONET);
  xmlFreeParserCtxt (context);
  if (document == NULL && watch->has_other)
    note_bad (watch->writer, kept);
  else if (document == NULL)
    watch->writer->is_out_of_memory = TRUE;
  return document;
}

static gboolean
is_put (EmXmlWriter *writer, const char *name)
{
  for (int i = 0; i < writer->n_put; i++)
    if (strcmp (writer->put[i], name) == 0)
      return TRUE;
  return FALSE;
}

static void
put_kept_attributes (EmXmlWriter *writer, xmlNodePtr piece)
{
  for (xmlNodePtr holder = piece->children; holder != NULL; holder = holder->next)
    for (xmlAttrPtr at = holder->type == XML_ELEMENT_NODE ? holder->properties : NULL; at != NULL; at = at->next)
      {
        xmlChar *value = xmlNodeListGetString (at->doc, at->children, 1);
        const char *name = (const char *) at->name;
        writer->is_out_of_memory |= value == NULL && at->children != NULL;
        if (!is_put (writer, name))
          {
            char *copy = g_strdup (name);
            g_ptr_array_add (writer->kept_names, copy);
            em_xml_put (writer, copy, value != NULL ? (const char *) value : "");
          }
        xmlFree (value);
      }
}

static void
put_kept_element (EmXmlWriter *writer, xmlNodePtr piece)
{
  for (xmlNodePtr node = piece->children; node != NULL; node = node->next)
    {
      if (node->type != XML_ELEMENT_NODE)
        continue;
      g_autofree char *xml = em_xml_dump_node (node);
      if (xml != NULL)
        em_xml_put_xml (writer, xml, strlen (xml));
      else
        writer->is_out_of_memory = TRUE;
    }
}

static char *
piece_key (const char *what, const char *at)
{
  return g_strconcat (what, " ", at, NULL);
}

/* Pieces of one place, in their order. A quote can have thousands, each asked for once. */
static GHashTable *
sort_by_place (EmXmlWriter *writer, xmlDocPtr document)
{
  GHashTable *pieces = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, (GDestroyNotify) g_ptr_array_unref);

  for (xmlNodePtr piece = xmlDocGetRootElement (document)->children; piece != NULL; piece = piece->next)
    {
      xmlChar *place = piece->type == XML_ELEMENT_NODE ? xmlGetNoNsProp (piece, (const xmlChar *) "at") : NULL;
      g_autofree char *key = place != NULL ? piece_key ((const char *) piece->name, (const char *) place) : NULL;
      GPtrArray *there = key != NULL ? g_hash_table_lookup (pieces, key) : NULL;
      writer->is_out_of_memory |= piece->type == XML_ELEMENT_NODE && place == NULL;
      if (key != NULL && there == NULL)
        g_hash_table_insert (pieces, g_steal_pointer (&key), there = g_ptr_array_new ());
      if (there != NULL)
        g_ptr_array_add (there, piece);
      xmlFree (place);
    }
  return pieces;
}

/* kept stays as it is while the writer lives. */
static void
remember_kept (EmXmlWriter *writer, const Watch *watch, const char *kept)
{
  if (writer->kept == kept)
    return;
  forget_kept (writer);
  writer->kept = kept;
  writer->kept_document = read_kept (watch, kept);
  if (writer->kept_document != NULL)
    writer->kept_pieces = sort_by_place (writer, writer->kept_document);
}

static void
put_pieces (EmXmlWriter *writer, const char *kept, const char *at, const char *what,
            void (*put_piece) (EmXmlWriter *writer, xmlNodePtr piece))
{
  g_autofree char *key = piece_key (what, at);
  GPtrArray *pieces = NULL;
  Watch watch;

  if (kept == NULL)
    return;
  begin_watch (&watch, writer);
  remember_kept (writer, &watch, kept);
  if (writer->kept_pieces != NULL)
    pieces = g_hash_table_lookup (writer->kept_pieces, key);
  for (guint i = 0; pieces != NULL && i < pieces->len; i++)
    put_piece (writer, pieces->pdata[i]);
  end_watch (&watch);
}

void
em_xml_put_kept_attributes (EmXmlWriter *writer, const char *kept, const char *at)
{
  put_pieces (writer, kept, at, "attributes", put_kept_attributes);
}

void
em_xml_put_kept_elements (EmXmlWriter *writer, const char *kept, const char *at)
{
  put_pieces (writer, kept, at, "element", put_kept_element);
}

void
em_xml_put_kept (EmXmlWriter *writer, const char *kept, const char *at)
{
  if (writer->is_tag_open)
    em_xml_put_kept_attributes (writer, kept, at);
  em_xml_put_kept_elements (writer, kept, at);
}

void
em_xml_put_text_kept (EmXmlWriter *writer, const char *name, const char *text, const char *kept, const char *at)
{
  if (text == NULL)
    return;
  em_xml_open (writer, name);
  em_xml_put_kept_attributes (writer, kept, at);
  em_xml_put_content (writer, text);
  em_xml_close (writer);
}

static int
minor_of (EmXmlWriter *writer, xmlNodePtr piece)
{
  xmlChar *text = xmlGetNoNsProp (piece, (const xmlChar *) "minor");
  int64_t value = 0;

  writer->is_out_of_memory |= text == NULL;
  if (text == NULL || !em_integer_read ((const char *) text, &value) || value < 0 || value > 9999)
    value = 0;
  xmlFree (text);
  return (int) value;
}

int
em_xml_kept_minor (EmXmlWriter *writer, const char *kept)
{
  xmlDocPtr document;
  Watch watch;
  int minor = 0;

  if (kept == NULL)
    return 0;
  begin_watch (&watch, writer);
  document = read_kept (&watch, kept);
  for (xmlNodePtr piece = document != NULL ? xmlDocGetRootElement (document)->children : NULL; piece != NULL; piece = piece->next)
    if (piece->type == XML_ELEMENT_NODE)
      minor = MAX (minor, minor_of (writer, piece));
  xmlFreeDoc (document);
  end_watch (&watch);
  return minor;
}
