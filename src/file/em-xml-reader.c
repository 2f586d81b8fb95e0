/* em-xml-reader: the hardened, streaming reader of our own XML.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "config.h"

#include "em-xml-private.h"

#include <glib/gi18n-lib.h>
#include <string.h>

G_DEFINE_QUARK (em-file-error-quark, em_file_error)

const EmXmlLimits em_xml_limits = { 16u << 20, 32, 4u << 20, 1u << 16, 1000000 };

/* ---- errors ---- */

void
em_xml_fail (EmXmlReader *reader, EmFileError code, const char *sentence)
{
  if (reader->error == NULL)
    g_set_error (&reader->error, EM_FILE_ERROR, code, _("%s, line %d: %s"), reader->name, reader->line, sentence);
}

void
em_xml_refuse (EmXmlReader *reader, EmFileError code, const char *field, const char *format, ...)
{
  va_list arguments;

  if (reader->error != NULL)
    return;
  va_start (arguments, format);
  g_autofree char *sentence = g_strdup_vprintf (format, arguments);
  va_end (arguments);
  if (field == NULL)
    field = em_xml_name (reader);
  g_set_error (&reader->error, EM_FILE_ERROR, code, _("%s, line %d, “%s”: %s"), reader->name, reader->line, field, sentence);
}

void
em_xml_refuse_element (EmXmlReader *reader)
{
  em_xml_refuse (reader, EM_FILE_ERROR_VALUE, NULL, _("not known here."));
}

void
em_xml_refuse_take (EmXmlReader *reader, GError *error)
{
  if (reader->error == NULL)
    reader->error = error;
  else
    g_error_free (error);
}

static char *
write_limit (double value)
{
  char text[32];

  em_number_write (value, text, sizeof text);
  return g_strdup (text);
}

void
em_xml_refuse_fault (EmXmlReader *reader, const EmFault *fault)
{
  g_autofree char *value = write_limit (fault->value), *low = write_limit (fault->low), *high = write_limit (fault->high);

  if (fault->code == EM_FAULT_MEMORY)
    em_xml_refuse (reader, EM_FILE_ERROR_READ, fault->field, _("memory ran out."));
  else if (fault->code == EM_FAULT_MISSING)
    em_xml_refuse (reader, EM_FILE_ERROR_VALUE, fault->field, _("missing."));
  else if (fault->code == EM_FAULT_UNKNOWN)
    em_xml_refuse (reader, EM_FILE_ERROR_VALUE, fault->field, _("not known."));
  else if (fault->code == EM_FAULT_CONFLICT)
    em_xml_refuse (reader, EM_FILE_ERROR_VALUE, fault->field, _("does not fit “%s”."), fault->other_field);
  else if (isnan (fault->low) || isnan (fault->high))
    em_xml_refuse (reader, EM_FILE_ERROR_VALUE, fault->field, _("%s cannot be used."), value);
  else
    em_xml_refuse (reader, EM_FILE_ERROR_VALUE, fault->field, _("%s is outside %s to %s."), value, low, high);
}

/* libxml2 tells its errors here; the first one counts. Its sentences end in a line break. */
static void
on_xml_error (void *data, xmlErrorPtr xml_error)
{
  EmXmlReader *reader = data;

  if (reader->error != NULL || xml_error == NULL || xml_error->level < XML_ERR_ERROR)
    return;
  if (xml_error->line > 0)
    reader->line = xml_error->line;
  if (xml_error->code == XML_ERR_NO_MEMORY)
    {
      em_xml_fail (reader, EM_FILE_ERROR_READ, _("memory ran out."));
      return;
    }
  g_autofree char *message = g_strdup (xml_error->message != NULL ? xml_error->message : "");
  g_autofree char *valid = g_utf8_make_valid (g_strstrip (message), -1);
  g_autofree char *sentence = g_strdup_printf (_("this is not well-formed XML (%s)."), valid);
  em_xml_fail (reader, EM_FILE_ERROR_SYNTAX, sentence);
}

/* ---- moving ---- */

static void
refuse_unread (EmXmlReader *reader)
{
  int i = 0;

  for (xmlAttrPtr at = reader->node->properties; at != NULL && reader->error == NULL; at = at->next, i++)
    if (!(reader->is_read & (G_GUINT64_CONSTANT (1) << i)))
      em_xml_refuse (reader, EM_FILE_ERROR_VALUE, (const char *) at->name, _("not known here."));
}

static void
leave (EmXmlReader *reader)
{
  if (reader->node == NULL)
    return;
  if ((reader->is_there & ~reader->is_read) != 0)
    refuse_unread (reader);
  reader->node = NULL;
  reader->is_there = reader->is_read = 0;
  if (reader->scratch->len > 0)
    g_ptr_array_set_size (reader->scratch, 0);
}

static void
count_attributes (EmXmlReader *reader)
{
  int n = 0;

  reader->is_there = reader->is_read = 0;
  for (xmlAttrPtr at = reader->node->properties; at != NULL && n <= EM_XML_ATTRIBUTES_MAX; at = at->next, n++)
    reader->is_there = reader->is_there << 1 | 1;
  if (n > EM_XML_ATTRIBUTES_MAX)
    em_xml_refuse (reader, EM_FILE_ERROR_TOO_LARGE, NULL, _("more attributes than allowed."));
}

void
em_xml_arrive (EmXmlReader *reader)
{
  reader->node = xmlTextReaderCurrentNode (reader->text_reader);
  /* A node has room for a short number only; the parser is a little ahead of it. */
  reader->line = reader->node->line < 65535 ? reader->node->line : xmlTextReaderGetParserLineNumber (reader->text_reader);
  if (++reader->n_elements > reader->limits.count_max)
    em_xml_refuse (reader, EM_FILE_ERROR_TOO_LARGE, NULL, _("more elements than allowed."));
  if (xmlTextReaderDepth (reader->text_reader) >= (int) reader->limits.depth_max)
    em_xml_refuse (reader, EM_FILE_ERROR_HOSTILE, NULL, _("nested too deeply."));
  count_attributes (reader);
}

/* What is wrong with a file the parser always tells, of an allocation that failed not always. */
static void
fail_to_parse (EmXmlReader *reader)
{
  if (reader->last_error->code == XML_ERR_OK || em_xml_is_out_of_memory (reader))
    em_xml_fail (reader, EM_FILE_ERROR_READ, _("memory ran out."));
  else
    em_xml_fail (reader, EM_FILE_ERROR_SYNTAX, _("this is not well-formed XML."));
}

gboolean
em_xml_step (EmXmlReader *reader)
{
  leave (reader);
  if (reader->error != NULL)
    return FALSE;

  int result = xmlTextReaderRead (reader->text_reader);

  if (result < 0 || em_xml_is_out_of_memory (reader))
    fail_to_parse (reader);
  return result == 1 && reader->error == NULL;
}

static int
present_line (EmXmlReader *reader)
{
  return xmlTextReaderGetParserLineNumber (reader->text_reader);
}

void
em_xml_begin (EmXmlReader *reader)
{
  if (reader->error != NULL)
    return;
  if (reader->n_stack == EM_XML_STACK_MAX)
    {
      em_xml_refuse (reader, EM_FILE_ERROR_HOSTILE, NULL, _("nested too deeply."));
      return;
    }
  reader->stack[reader->n_stack++] = xmlTextReaderIsEmptyElement (reader->text_reader) == 1
                                       ? -1 : xmlTextReaderDepth (reader->text_reader);
}

/* What the reader met inside the begun element at depth. TRUE: nothing of note, go on. */
static gboolean
may_pass (EmXmlReader *reader, int type)
{
  switch (type)
    {
    case XML_READER_TYPE_TEXT:
    case XML_READER_TYPE_CDATA:
      reader->line = present_line (reader);
      em_xml_fail (reader, EM_FILE_ERROR_VALUE, _("there is text where none belongs."));
      return FALSE;
    case XML_READER_TYPE_ENTITY_REFERENCE:
    case XML_READER_TYPE_DOCUMENT_TYPE:
      em_xml_fail (reader, EM_FILE_ERROR_HOSTILE, _("a document type or entity is declared, which our files never do."));
      return FALSE;
    default:
      return TRUE;
    }
}

gboolean
em_xml_child (EmXmlReader *reader)
{
  if (reader->error != NULL || reader->n_stack == 0)
    return FALSE;

  int depth = reader->stack[reader->n_stack - 1];

  if (depth < 0)
    {
      reader->n_stack--;
      leave (reader);
      reader->is_done = reader->n_stack == 0;
      return FALSE;
    }
  while (em_xml_step (reader))
    {
      int type = xmlTextReaderNodeType (reader->text_reader);

      if (type == XML_READER_TYPE_SIGNIFICANT_WHITESPACE)
        continue;
      if (type == XML_READER_TYPE_ELEMENT)
        {
          em_xml_arrive (reader);
          if (xmlTextReaderDepth (reader->text_reader) == depth + 1)
            return reader->error == NULL;
          em_xml_refuse_element (reader);
        }
      else if (type == XML_READER_TYPE_END_ELEMENT && xmlTextReaderDepth (reader->text_reader) == depth)
        {
          reader->n_stack--;
          reader->is_done = reader->n_stack == 0;
          return FALSE;
        }
      else if (!may_pass (reader, type))
        return FALSE;
    }
  return FALSE;
}

void
em_xml_enter (EmXmlReader *reader, const char *ns, EmXmlAround *out_around)
{
  *out_around = (EmXmlAround) { reader->ns, reader->root_ns, reader->major, reader->minor, reader->is_newer };
  if (reader->error != NULL)
    return;
  reader->is_newer = FALSE;
  if (reader->node == NULL || reader->node->ns == NULL || strcmp ((const char *) reader->node->ns->href, ns) != 0)
    em_xml_fail (reader, EM_FILE_ERROR_NOT_OURS, _("this is another kind of file."));
  else
    {
      reader->ns = xmlTextReaderConstString (reader->text_reader, reader->node->ns->href);
      reader->root_ns = reader->node->ns;
    }
}

void
em_xml_come_back (EmXmlReader *reader, const EmXmlAround *around)
{
  reader->ns = around->ns;
  reader->root_ns = around->root_ns;
  reader->major = around->major;
  reader->minor = around->minor;
  reader->is_newer = around->is_newer;
}

gboolean
em_xml_is (EmXmlReader *reader, const char *name)
{
  return reader->node != NULL && reader->node->name[0] == (xmlChar) name[0] && strcmp ((const char *) reader->node->name, name) == 0
         && (reader->node->ns == reader->root_ns || (reader->node->ns != NULL && xmlStrEqual (reader->node->ns->href, reader->ns)));
}

const char *
em_xml_name (EmXmlReader *reader)
{
  return reader->node != NULL ? (const char *) reader->node->name : "";
}

int
em_xml_line (EmXmlReader *reader)
{
  return reader->line;
}

gboolean
em_xml_is_good (EmXmlReader *reader)
{
  return reader->error == NULL;
}

/* ---- texts ---- */

static void
add_piece (EmXmlReader *reader)
{
  const char *piece = (const char *) xmlTextReaderConstValue (reader->text_reader);

  if (piece == NULL)
    return;
  g_string_append (reader->text, piece);
  if (reader->text->len <= reader->limits.text_max)
    return;
  reader->line = present_line (reader);
  em_xml_fail (reader, EM_FILE_ERROR_TOO_LARGE, _("a text is longer than allowed."));
}

const char *
em_xml_text (EmXmlReader *reader)
{
  g_string_truncate (reader->text, 0);
  if (reader->error != NULL || xmlTextReaderIsEmptyElement (reader->text_reader) == 1)
    return reader->text->str;

  int depth = xmlTextReaderDepth (reader->text_reader);

  while (em_xml_step (reader))
    {
      int type = xmlTextReaderNodeType (reader->text_reader);

      if (type == XML_READER_TYPE_END_ELEMENT && xmlTextReaderDepth (reader->text_reader) == depth)
        break;
      if (type == XML_READER_TYPE_ELEMENT)
        {
          em_xml_arrive (reader);
          em_xml_refuse_element (reader);
        }
      else if (type == XML_READER_TYPE_TEXT || type == XML_READER_TYPE_CDATA || type == XML_READER_TYPE_SIGNIFICANT_WHITESPACE
               || type == XML_READER_TYPE_WHITESPACE)
        add_piece (reader);
      else
        may_pass (reader, type);
    }
  return reader->text->str;
}

/* ---- life ---- */

void
em_xml_reader_free (EmXmlReader *reader)
{
  if (reader == NULL)
    return;
  xmlFreeTextReader (reader->text_reader);
  g_ptr_array_unref (reader->scratch);
  g_string_free (reader->text, TRUE);
  g_bytes_unref (reader->bytes);
  g_free (reader->name);
  g_clear_error (&reader->error);
  g_free (reader);
}

static void
go_to_root (EmXmlReader *reader, const char *ns, const char *root)
{
  while (em_xml_step (reader))
    if (xmlTextReaderNodeType (reader->text_reader) == XML_READER_TYPE_ELEMENT)
      {
        em_xml_arrive (reader);
        reader->ns = reader->node->ns != NULL ? reader->node->ns->href : NULL;
        if (reader->ns == NULL || strcmp ((const char *) reader->ns, ns) != 0 || strcmp (em_xml_name (reader), root) != 0)
          em_xml_fail (reader, EM_FILE_ERROR_NOT_OURS, _("this is another kind of file."));
        else
          reader->ns = xmlTextReaderConstString (reader->text_reader, reader->ns);
        reader->root_ns = reader->node->ns;
        return;
      }
    else if (!may_pass (reader, xmlTextReaderNodeType (reader->text_reader)))
      return;
}

static void
start (EmXmlReader *reader, const char *ns, const char *root)
{
  gsize length;
  const char *text = g_bytes_get_data (reader->bytes, &length);
  gsize mark = length >= 3 && memcmp (text, "\xef\xbb\xbf", 3) == 0 ? 3 : 0;

  if (length > reader->limits.size_max || length > G_MAXINT)
    {
      em_xml_fail (reader, EM_FILE_ERROR_TOO_LARGE, _("too large to be one of ours."));
      return;
    }
  if (length == mark)
    {
      em_xml_fail (reader, EM_FILE_ERROR_NOT_OURS, _("there is nothing in this file."));
      return;
    }
  if (!em_xml_check_plain (reader, text + mark, length - mark))
    return;
  xmlResetLastError ();
  reader->text_reader = xmlReaderForMemory (text + mark, (int) (length - mark), NULL, "UTF-8",
                                            XML_PARSE_NONET | XML_PARSE_COMPACT | XML_PARSE_BIG_LINES);
  if (reader->text_reader == NULL)
    {
      em_xml_fail (reader, EM_FILE_ERROR_READ, _("memory ran out."));
      return;
    }
  xmlTextReaderSetStructuredErrorHandler (reader->text_reader, on_xml_error, reader);
  go_to_root (reader, ns, root);
}

EmXmlReader *
em_xml_reader_new (GBytes *bytes, const char *name, const char *ns, const char *root, const EmXmlLimits *limits, GError **error)
{
  static gsize is_ready = 0;
  EmXmlReader *reader = g_new0 (EmXmlReader, 1);

  if (g_once_init_enter (&is_ready))
    {
      xmlInitParser ();
      g_once_init_leave (&is_ready, 1);
    }
  reader->bytes = g_bytes_ref (bytes);
  reader->name = g_filename_display_name (name != NULL ? name : "");
  reader->limits = limits != NULL ? *limits : em_xml_limits;
  reader->scratch = g_ptr_array_new_with_free_func (xmlFree);
  reader->text = g_string_new (NULL);
  reader->last_error = &xmlLastError;
  reader->line = 1;
  start (reader, ns, root);
  if (reader->error == NULL && reader->node != NULL)
    return reader;
  if (reader->error == NULL)
    em_xml_fail (reader, EM_FILE_ERROR_NOT_OURS, _("there is nothing in this file."));
  g_propagate_error (error, g_steal_pointer (&reader->error));
  em_xml_reader_free (reader);
  return NULL;
}

gboolean
em_xml_reader_finish (EmXmlReader *reader, GError **error)
{
  leave (reader);
  while (reader->error == NULL && em_xml_step (reader))
    if (xmlTextReaderNodeType (reader->text_reader) == XML_READER_TYPE_ELEMENT)
      {
        em_xml_arrive (reader);
        em_xml_refuse_element (reader);
      }
  if (reader->error == NULL)
    return TRUE;
  if (error != NULL)
    *error = g_error_copy (reader->error);
  return FALSE;
}
