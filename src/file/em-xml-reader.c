/* em-xml-reader: the hardened, streaming reader of our own XML.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "config.h"

#include "em-xml.h"

#include <errno.h>
#include <fcntl.h>
#include <glib/gi18n-lib.h>
#include <libxml/xmlreader.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

G_DEFINE_QUARK (em-file-error-quark, em_file_error)

enum { STACK_MAX = 64, ATTRIBUTES_MAX = 64 };

const EmXmlLimits em_xml_limits = { 16u << 20, 32, 4u << 20, 1u << 16, 1000000 };

struct _EmXmlReader
{
  GBytes          *bytes;
  char            *name;
  const xmlChar   *ns;           /* of the root and of everything that is known; in the parser's dictionary */
  EmXmlLimits      limits;
  xmlTextReaderPtr text_reader;
  xmlNodePtr       node;         /* the present element, owned by text_reader; NULL when there is none */
  guint64          is_read;      /* bit a present attribute, in document order */
  GPtrArray       *scratch;      /* attribute values that had to be put together */
  int              line;
  int              stack[STACK_MAX];   /* depths of the begun elements; −1 for one without content */
  int              n_stack;
  guint            n_elements;
  gboolean         is_past;      /* the present element is to be skipped whole */
  gboolean         is_done;      /* the root has ended */
  int              major, minor;
  gboolean         is_newer;
  GError          *error;
};

/* ---- errors ---- */

static void
fail (EmXmlReader *reader, EmFileError code, const char *sentence)
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
      fail (reader, EM_FILE_ERROR_READ, _("memory ran out."));
      return;
    }
  g_autofree char *message = g_strdup (xml_error->message != NULL ? xml_error->message : "");
  g_autofree char *valid = g_utf8_make_valid (g_strstrip (message), -1);
  g_autofree char *sentence = g_strdup_printf (_("this is not well-formed XML (%s)."), valid);
  fail (reader, EM_FILE_ERROR_SYNTAX, sentence);
}

/* ---- the file ---- */

static GBytes *
read_whole (int fd, gsize size, gsize size_max, const char *path, GError **error)
{
  g_autoptr (GByteArray) array = g_byte_array_sized_new ((guint) MIN (size + 1, size_max));
  guint8 block[65536];
  ssize_t n;

  while ((n = read (fd, block, sizeof block)) != 0)
    {
      if (n < 0 && errno == EINTR)
        continue;
      if (n < 0)
        {
          g_set_error (error, EM_FILE_ERROR, EM_FILE_ERROR_READ, _("%s could not be read: %s."), path, g_strerror (errno));
          return NULL;
        }
      if (array->len + (gsize) n > size_max)
        {
          g_set_error (error, EM_FILE_ERROR, EM_FILE_ERROR_TOO_LARGE, _("%s is too large to be one of ours."), path);
          return NULL;
        }
      g_byte_array_append (array, block, (guint) n);
    }
  return g_byte_array_free_to_bytes (g_steal_pointer (&array));
}

GBytes *
em_xml_read_file (const char *path, gsize size_max, GError **error)
{
  g_autofree char *shown = g_filename_display_name (path);
  int fd = open (path, O_RDONLY | O_CLOEXEC | O_NONBLOCK | O_NOCTTY);
  struct stat status;
  GBytes *bytes = NULL;

  if (fd < 0 || fstat (fd, &status) != 0)
    g_set_error (error, EM_FILE_ERROR, EM_FILE_ERROR_READ, _("%s could not be opened: %s."), shown, g_strerror (errno));
  else if (S_ISDIR (status.st_mode))
    g_set_error (error, EM_FILE_ERROR, EM_FILE_ERROR_READ, _("%s is a folder."), shown);
  else if (!S_ISREG (status.st_mode))
    g_set_error (error, EM_FILE_ERROR, EM_FILE_ERROR_READ, _("%s is not a file."), shown);
  else if ((guint64) status.st_size > size_max)
    g_set_error (error, EM_FILE_ERROR, EM_FILE_ERROR_TOO_LARGE, _("%s is too large to be one of ours."), shown);
  else
    bytes = read_whole (fd, (gsize) status.st_size, size_max, shown, error);
  if (fd >= 0)
    close (fd);
  return bytes;
}

/* ---- before the parser sees it ---- */

static void
count_line (EmXmlReader *reader, const char *from, const char *to)
{
  reader->line = 1;
  for (; from < to; from++)
    reader->line += *from == '\n';
}

/* Encoding named in the XML declaration, when there is one, must be UTF-8. */
static gboolean
is_declared_utf8 (const char *declaration, gsize length)
{
  g_autofree char *text = g_ascii_strdown (declaration, (gssize) length);
  const char *at = strstr (text, "encoding");

  if (at == NULL)
    return TRUE;
  at += strlen ("encoding");
  at += strspn (at, " \t\r\n=");
  return (*at == '"' || *at == '\'') && strncmp (at + 1, "utf-8", 5) == 0 && at[6] == at[0];
}

static gboolean
starts (const char *at, const char *end, const char *prefix)
{
  gsize length = strlen (prefix);

  return (gsize) (end - at) >= length && memcmp (at, prefix, length) == 0;
}

/* Past the next mark, or end when there is none. */
static const char *
past (const char *at, const char *end, const char *mark)
{
  const char *found = g_strstr_len (at, end - at, mark);

  return found != NULL ? found + strlen (mark) : end;
}

/* Steps over blanks, comments and processing instructions up to the root. A DOCTYPE, which alone could declare
 * entities, is so met here and never handed to the parser. NULL: refused. */
static const char *
find_root (EmXmlReader *reader, const char *text, const char *end)
{
  for (const char *at = text; at < end;)
    {
      if (*at == ' ' || *at == '\t' || *at == '\r' || *at == '\n')
        at++;
      else if (starts (at, end, "<?"))
        {
          const char *close = past (at, end, "?>");
          if (at == text && starts (at, end, "<?xml") && !is_declared_utf8 (at, (gsize) (close - at)))
            {
              fail (reader, EM_FILE_ERROR_HOSTILE, _("only UTF-8 is read."));
              return NULL;
            }
          at = close;
        }
      else if (starts (at, end, "<!--"))
        at = past (at + 4, end, "-->");
      else if (starts (at, end, "<!"))
        {
          count_line (reader, text, at);
          fail (reader, EM_FILE_ERROR_HOSTILE, _("a document type or entity is declared, which our files never do."));
          return NULL;
        }
      else
        return at;
    }
  fail (reader, EM_FILE_ERROR_NOT_OURS, _("there is nothing in this file."));
  return NULL;
}

static gboolean
check_plain (EmXmlReader *reader, const char *text, gsize length)
{
  const char *bad = memchr (text, '\0', length), *end;

  reader->line = 1;
  if (length >= 2 && (memcmp (text, "\xfe\xff", 2) == 0 || memcmp (text, "\xff\xfe", 2) == 0))
    fail (reader, EM_FILE_ERROR_HOSTILE, _("only UTF-8 is read."));
  else if (bad != NULL)
    {
      count_line (reader, text, bad);
      fail (reader, EM_FILE_ERROR_HOSTILE, _("there is a NUL byte in the text."));
    }
  else if (!g_utf8_validate_len (text, length, &end))
    {
      count_line (reader, text, end);
      fail (reader, EM_FILE_ERROR_HOSTILE, _("only UTF-8 is read."));
    }
  else
    return find_root (reader, text, text + length) != NULL;
  return FALSE;
}

/* ---- moving ---- */

/* Attributes nobody asked for. */
static void
leave (EmXmlReader *reader)
{
  int i = 0;

  if (reader->node == NULL)
    return;
  for (xmlAttrPtr at = reader->node->properties; at != NULL && reader->error == NULL; at = at->next, i++)
    if (!(reader->is_read & (G_GUINT64_CONSTANT (1) << i)))
      em_xml_refuse (reader, EM_FILE_ERROR_VALUE, (const char *) at->name, _("not known here."));
  reader->node = NULL;
  reader->is_read = 0;
  g_ptr_array_set_size (reader->scratch, 0);
}

static void
check_attributes (EmXmlReader *reader)
{
  int n = 0;

  for (xmlAttrPtr at = reader->node->properties; at != NULL; at = at->next)
    n++;
  if (n > ATTRIBUTES_MAX)
    em_xml_refuse (reader, EM_FILE_ERROR_TOO_LARGE, NULL, _("more attributes than allowed."));
}

static void
arrive (EmXmlReader *reader)
{
  reader->node = xmlTextReaderCurrentNode (reader->text_reader);
  reader->is_read = 0;
  reader->line = (int) xmlGetLineNo (reader->node);
  if (reader->line >= 65535)
    reader->line = MAX (reader->line, xmlTextReaderGetParserLineNumber (reader->text_reader));
  if (++reader->n_elements > reader->limits.count_max)
    em_xml_refuse (reader, EM_FILE_ERROR_TOO_LARGE, NULL, _("more elements than allowed."));
  if (xmlTextReaderDepth (reader->text_reader) >= (int) reader->limits.depth_max)
    em_xml_refuse (reader, EM_FILE_ERROR_HOSTILE, NULL, _("nested too deeply."));
  check_attributes (reader);
}

/* The next node of whatever type; FALSE at the end and after an error. */
static gboolean
step (EmXmlReader *reader)
{
  leave (reader);
  if (reader->error != NULL)
    return FALSE;

  int result = reader->is_past ? xmlTextReaderNext (reader->text_reader) : xmlTextReaderRead (reader->text_reader);

  reader->is_past = FALSE;
  if (result < 0)
    fail (reader, EM_FILE_ERROR_SYNTAX, _("this is not well-formed XML."));
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
  if (reader->n_stack == STACK_MAX)
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
      fail (reader, EM_FILE_ERROR_VALUE, _("there is text where none belongs."));
      return FALSE;
    case XML_READER_TYPE_ENTITY_REFERENCE:
    case XML_READER_TYPE_DOCUMENT_TYPE:
      fail (reader, EM_FILE_ERROR_HOSTILE, _("a document type or entity is declared, which our files never do."));
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
  while (step (reader))
    {
      int type = xmlTextReaderNodeType (reader->text_reader), at = xmlTextReaderDepth (reader->text_reader);

      if (type == XML_READER_TYPE_ELEMENT)
        {
          arrive (reader);
          if (at == depth + 1)
            return reader->error == NULL;
          em_xml_refuse_element (reader);
        }
      else if (type == XML_READER_TYPE_END_ELEMENT && at == depth)
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

gboolean
em_xml_is (EmXmlReader *reader, const char *name)
{
  return reader->node != NULL && strcmp ((const char *) reader->node->name, name) == 0 && reader->node->ns != NULL
         && xmlStrEqual (reader->node->ns->href, reader->ns);
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

/* The first piece most often is the whole text; only more of them need a buffer. */
typedef struct { char *first; GString *all; } Pieces;

static void
add_piece (EmXmlReader *reader, Pieces *pieces)
{
  const char *piece = (const char *) xmlTextReaderConstValue (reader->text_reader);
  gsize length;

  if (piece == NULL)
    return;
  if (pieces->first == NULL && pieces->all == NULL)
    pieces->first = g_strdup (piece);
  else
    {
      if (pieces->all == NULL)
        pieces->all = g_string_new (pieces->first);
      g_string_append (pieces->all, piece);
    }
  length = pieces->all != NULL ? pieces->all->len : strlen (pieces->first);
  if (length <= reader->limits.text_max)
    return;
  reader->line = present_line (reader);
  fail (reader, EM_FILE_ERROR_TOO_LARGE, _("a text is longer than allowed."));
}

static char *
join_pieces (Pieces *pieces)
{
  if (pieces->all == NULL)
    return pieces->first != NULL ? pieces->first : g_strdup ("");
  g_free (pieces->first);
  return g_string_free (pieces->all, FALSE);
}

char *
em_xml_text (EmXmlReader *reader)
{
  Pieces pieces = { NULL, NULL };

  if (reader->error != NULL || xmlTextReaderIsEmptyElement (reader->text_reader) == 1)
    return join_pieces (&pieces);

  int depth = xmlTextReaderDepth (reader->text_reader);

  while (step (reader))
    {
      int type = xmlTextReaderNodeType (reader->text_reader);

      if (type == XML_READER_TYPE_END_ELEMENT && xmlTextReaderDepth (reader->text_reader) == depth)
        break;
      if (type == XML_READER_TYPE_ELEMENT)
        {
          arrive (reader);
          em_xml_refuse_element (reader);
        }
      else if (type == XML_READER_TYPE_TEXT || type == XML_READER_TYPE_CDATA || type == XML_READER_TYPE_SIGNIFICANT_WHITESPACE
               || type == XML_READER_TYPE_WHITESPACE)
        add_piece (reader, &pieces);
      else
        may_pass (reader, type);
    }
  return join_pieces (&pieces);
}

/* A copy out of the document, so that name spaces declared further out come along. */
static char *
dump_element (EmXmlReader *reader, xmlNodePtr node)
{
  xmlNodePtr copy = xmlDocCopyNode (node, node->doc, 1);
  xmlBufferPtr buffer = xmlBufferCreate ();
  char *xml = NULL;

  if (copy != NULL && buffer != NULL && xmlNodeDump (buffer, node->doc, copy, 0, 0) > 0)
    xml = g_strdup ((const char *) xmlBufferContent (buffer));
  else
    fail (reader, EM_FILE_ERROR_READ, _("memory ran out."));
  xmlFreeNode (copy);
  xmlBufferFree (buffer);
  return xml;
}

char *
em_xml_take_element (EmXmlReader *reader)
{
  if (reader->error != NULL)
    return NULL;

  xmlNodePtr node = xmlTextReaderExpand (reader->text_reader);

  if (node == NULL)
    {
      fail (reader, EM_FILE_ERROR_SYNTAX, _("this is not well-formed XML."));
      return NULL;
    }
  if (reader->error != NULL)
    return NULL;
  reader->is_read = G_MAXUINT64;
  reader->is_past = TRUE;
  return dump_element (reader, node);
}

/* ---- attributes ---- */

static xmlAttrPtr
find_attribute (EmXmlReader *reader, const char *name, int *out_index)
{
  int i = 0;

  if (reader->error != NULL || reader->node == NULL)
    return NULL;
  for (xmlAttrPtr at = reader->node->properties; at != NULL; at = at->next, i++)
    if (at->name[0] == (xmlChar) name[0] && at->ns == NULL && strcmp ((const char *) at->name, name) == 0)
      {
        *out_index = i;
        return at;
      }
  return NULL;
}

/* The parser leaves a value in pieces when it holds references. */
static const char *
attribute_value (EmXmlReader *reader, xmlAttrPtr at)
{
  xmlNodePtr piece = at->children;

  if (piece == NULL)
    return "";
  if (piece->next == NULL && piece->type == XML_TEXT_NODE)
    return piece->content != NULL ? (const char *) piece->content : "";

  xmlChar *whole = xmlNodeListGetString (at->doc, at->children, 1);

  if (whole == NULL)
    return "";
  g_ptr_array_add (reader->scratch, whole);
  return (const char *) whole;
}

gboolean
em_xml_has_unread (EmXmlReader *reader)
{
  guint64 all = 0;

  if (reader->error != NULL || reader->node == NULL)
    return FALSE;
  for (xmlAttrPtr at = reader->node->properties; at != NULL; at = at->next)
    all = all << 1 | 1;
  return reader->is_read != all;
}

gboolean
em_xml_has (EmXmlReader *reader, const char *name)
{
  int index;

  return find_attribute (reader, name, &index) != NULL;
}

gboolean
em_xml_need (EmXmlReader *reader, const char *name)
{
  if (em_xml_has (reader, name))
    return TRUE;
  em_xml_refuse (reader, EM_FILE_ERROR_VALUE, name, _("missing."));
  return FALSE;
}

const char *
em_xml_attribute (EmXmlReader *reader, const char *name)
{
  int index;
  xmlAttrPtr at = find_attribute (reader, name, &index);

  if (at == NULL)
    return NULL;

  const char *value = attribute_value (reader, at);

  reader->is_read |= G_GUINT64_CONSTANT (1) << index;
  if (strlen (value) <= reader->limits.attribute_max)
    return value;
  em_xml_refuse (reader, EM_FILE_ERROR_TOO_LARGE, name, _("longer than allowed."));
  return NULL;
}

double
em_xml_real (EmXmlReader *reader, const char *name, double fallback, double low, double high)
{
  const char *text = em_xml_attribute (reader, name);
  double value;

  if (text == NULL)
    return fallback;
  if (!em_number_read (text, &value))
    {
      em_xml_refuse (reader, EM_FILE_ERROR_VALUE, name, _("“%.40s” is not a number."), text);
      return fallback;
    }
  if (value >= low && value <= high)
    return value;
  em_xml_refuse_fault (reader, &(EmFault) { .code = EM_FAULT_RANGE, .field = name, .value = value, .low = low, .high = high });
  return fallback;
}

gint64
em_xml_integer (EmXmlReader *reader, const char *name, gint64 fallback, gint64 low, gint64 high)
{
  const char *text = em_xml_attribute (reader, name);
  int64_t value;

  if (text == NULL)
    return fallback;
  if (!em_integer_read (text, &value))
    em_xml_refuse (reader, EM_FILE_ERROR_VALUE, name, _("“%.40s” is not a whole number."), text);
  else if (value < low || value > high)
    {
      g_autofree char *least = g_strdup_printf ("%" G_GINT64_FORMAT, low), *most = g_strdup_printf ("%" G_GINT64_FORMAT, high);
      em_xml_refuse (reader, EM_FILE_ERROR_VALUE, name, _("%s is outside %s to %s."), text, least, most);
    }
  else
    return value;
  return fallback;
}

gboolean
em_xml_boolean (EmXmlReader *reader, const char *name, gboolean fallback)
{
  const char *text = em_xml_attribute (reader, name);

  if (text == NULL)
    return fallback;
  if (strcmp (text, "yes") == 0 || strcmp (text, "no") == 0)
    return text[0] == 'y';
  em_xml_refuse (reader, EM_FILE_ERROR_VALUE, name, _("“%.40s” is neither yes nor no."), text);
  return fallback;
}

int
em_xml_choice (EmXmlReader *reader, const char *name, const char *const *ids, int n_ids, int fallback)
{
  int index;
  const char *text = em_xml_attribute (reader, name);

  if (text == NULL)
    return fallback;
  for (int i = 0; i < n_ids; i++)
    if (strcmp (text, ids[i]) == 0)
      return i;
  if (reader->is_newer && find_attribute (reader, name, &index) != NULL)
    reader->is_read &= ~(G_GUINT64_CONSTANT (1) << index);
  else
    em_xml_refuse (reader, EM_FILE_ERROR_VALUE, name, _("“%.40s” is none of the words known here."), text);
  return fallback;
}

/* ---- version ---- */

void
em_xml_version (EmXmlReader *reader, int major_known, int minor_known)
{
  const char *text = em_xml_need (reader, "version") ? em_xml_attribute (reader, "version") : NULL;
  g_auto (GStrv) parts = text != NULL ? g_strsplit (text, ".", 3) : NULL;
  int64_t major = 0, minor = 0;

  if (text == NULL)
    return;
  if (g_strv_length (parts) != 2 || !em_integer_read (parts[0], &major) || !em_integer_read (parts[1], &minor) || major < 1
      || major > 9999 || minor < 0 || minor > 9999)
    em_xml_refuse (reader, EM_FILE_ERROR_VALUE, "version", _("“%.40s” is no version."), text);
  else if (major > major_known)
    em_xml_refuse (reader, EM_FILE_ERROR_NEWER, "version",
                   _("%s was written by a newer program; this one reads up to %d. Nothing was changed."), text, major_known);
  reader->major = (int) major;
  reader->minor = (int) minor;
  reader->is_newer = major == major_known && minor > minor_known;
}

int
em_xml_major (EmXmlReader *reader)
{
  return reader->major;
}

int
em_xml_minor (EmXmlReader *reader)
{
  return reader->minor;
}

gboolean
em_xml_is_newer (EmXmlReader *reader)
{
  return reader->is_newer;
}

/* ---- keeping ---- */

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
  int i = 0;

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
      g_autofree char *value = g_markup_escape_text (attribute_value (reader, attribute), -1);
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
  g_autofree char *xml = em_xml_take_element (reader);
  if (xml != NULL)
    add_kept (reader, kept, "element", at, xml);
}

void
em_xml_kept_clear (EmXmlKept *kept)
{
  if (kept->text != NULL)
    g_string_free (kept->text, TRUE);
  *kept = (EmXmlKept) { NULL, 0 };
}

/* ---- life ---- */

void
em_xml_reader_free (EmXmlReader *reader)
{
  if (reader == NULL)
    return;
  xmlFreeTextReader (reader->text_reader);
  g_ptr_array_unref (reader->scratch);
  g_bytes_unref (reader->bytes);
  g_free (reader->name);
  g_clear_error (&reader->error);
  g_free (reader);
}

static void
go_to_root (EmXmlReader *reader, const char *ns, const char *root)
{
  while (step (reader))
    if (xmlTextReaderNodeType (reader->text_reader) == XML_READER_TYPE_ELEMENT)
      {
        arrive (reader);
        reader->ns = reader->node->ns != NULL ? reader->node->ns->href : NULL;
        if (reader->ns == NULL || strcmp ((const char *) reader->ns, ns) != 0 || strcmp (em_xml_name (reader), root) != 0)
          fail (reader, EM_FILE_ERROR_NOT_OURS, _("this is another kind of file."));
        else
          reader->ns = xmlTextReaderConstString (reader->text_reader, reader->ns);
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
      fail (reader, EM_FILE_ERROR_TOO_LARGE, _("too large to be one of ours."));
      return;
    }
  if (length == mark)
    {
      fail (reader, EM_FILE_ERROR_NOT_OURS, _("there is nothing in this file."));
      return;
    }
  if (!check_plain (reader, text + mark, length - mark))
    return;
  reader->text_reader = xmlReaderForMemory (text + mark, (int) (length - mark), NULL, "UTF-8",
                                            XML_PARSE_NONET | XML_PARSE_COMPACT | XML_PARSE_BIG_LINES);
  if (reader->text_reader == NULL)
    {
      fail (reader, EM_FILE_ERROR_READ, _("memory ran out."));
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
  reader->line = 1;
  start (reader, ns, root);
  if (reader->error == NULL && reader->node != NULL)
    return reader;
  if (reader->error == NULL)
    fail (reader, EM_FILE_ERROR_NOT_OURS, _("there is nothing in this file."));
  g_propagate_error (error, g_steal_pointer (&reader->error));
  em_xml_reader_free (reader);
  return NULL;
}

gboolean
em_xml_reader_finish (EmXmlReader *reader, GError **error)
{
  leave (reader);
  while (reader->error == NULL && step (reader))
    if (xmlTextReaderNodeType (reader->text_reader) == XML_READER_TYPE_ELEMENT)
      {
        arrive (reader);
        em_xml_refuse_element (reader);
      }
  if (reader->error == NULL)
    return TRUE;
  if (error != NULL)
    *error = g_error_copy (reader->error);
  return FALSE;
}
