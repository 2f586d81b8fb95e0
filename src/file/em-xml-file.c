/* em-xml-file: a file of ours whole in memory, and looked at before the parser sees it.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "config.h"

#include "em-xml-private.h"

#include <errno.h>
#include <fcntl.h>
#include <glib/gi18n-lib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

enum { SHORT_TAG = 4096 /* bytes */, REMARKS_MAX = 100000 };

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

/* Past the comment or instruction at this place; the parser makes something of each before it comes to the next element. NULL:
 * there are too many, and the reader has its error. */
static const char *
past_remark (EmXmlReader *reader, const char *at, const char *end)
{
  if (++reader->n_remarks <= REMARKS_MAX)
    return at[1] == '?' ? past (at, end, "?>") : past (at + 4, end, "-->");
  em_xml_fail (reader, EM_FILE_ERROR_TOO_LARGE, _("more elements than allowed."));
  return NULL;
}

static gboolean
is_remark (const char *at, const char *end)
{
  return starts (at, end, "<?") || starts (at, end, "<!--");
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
      else if (is_remark (at, end))
        {
          const char *behind = past_remark (reader, at, end);
          if (at == text && starts (at, end, "<?xml") && !is_declared_utf8 (at, (gsize) (behind - at)))
            {
              em_xml_fail (reader, EM_FILE_ERROR_HOSTILE, _("only UTF-8 is read."));
              return NULL;
            }
          if (behind == NULL)
            return NULL;
          at = behind;
        }
      else if (starts (at, end, "<!"))
        {
          count_line (reader, text, at);
          em_xml_fail (reader, EM_FILE_ERROR_HOSTILE, _("a document type or entity is declared, which our files never do."));
          return NULL;
        }
      else if (*at == '<')
        return at;
      else
        {
          /* Also a second byte order mark, which the parser would step over. */
          count_line (reader, text, at);
          em_xml_fail (reader, EM_FILE_ERROR_SYNTAX, _("this is not well-formed XML."));
          return NULL;
        }
    }
  em_xml_fail (reader, EM_FILE_ERROR_NOT_OURS, _("there is nothing in this file."));
  return NULL;
}

/* How many attributes the tag at text seems to have; it ends with the first ">" outside quotes. */
static int
count_attributes (const char *text, const char *end)
{
  char quote = '\0';
  int n = 0;

  for (const char *at = text; at < end; at++)
    if (quote != '\0')
      quote = *at == quote ? '\0' : quote;
    else if (*at == '"' || *at == '\'')
      quote = *at;
    else if (*at == '>')
      break;
    else
      n += *at == '=';
  return n;
}

/* The next "<" from here on, or end. */
static const char *
next_bracket (const char *from, const char *end)
{
  const char *found = from < end ? memchr (from, '<', (gsize) (end - from)) : NULL;

  return found != NULL ? found : end;
}

/* The parser compares each attribute and each name space of a tag with every other, so a tag of some megabytes would keep it for
 * hours. A shorter one can do no harm and is not looked into; what is no tag after all is the parser's to refuse. */
static gboolean
check_tags (EmXmlReader *reader, const char *text, const char *end)
{
  for (const char *at = next_bracket (text, end); at < end; at = next_bracket (at, end))
    {
      gboolean is_special = end - at > 1 && (at[1] == '!' || at[1] == '?');
      if (is_special && is_remark (at, end))
        {
          at = past_remark (reader, at, end);
          if (at == NULL)
            return FALSE;
        }
      else if (is_special && starts (at, end, "<![CDATA["))
        at = past (at, end, "]]>");
      else
        {
          const char *next = next_bracket (at + 1, end);
          if (next - at > SHORT_TAG && count_attributes (at, next) > 2 * EM_XML_ATTRIBUTES_MAX)
            {
              count_line (reader, text, at);
              em_xml_fail (reader, EM_FILE_ERROR_TOO_LARGE, _("more attributes than allowed."));
              return FALSE;
            }
          at = next;
        }
    }
  return TRUE;
}

/* The first place that is no UTF-8, or end. Eight bytes at a time as long as they are ASCII, as nearly all of a quote is. */
static const char *
find_no_utf8 (const char *at, const char *end)
{
  const guint64 high_bits = G_GUINT64_CONSTANT (0x8080808080808080);

  while (at < end)
    {
      guint64 eight;
      gunichar character;
      while (end - at >= (gssize) sizeof eight)
        {
          memcpy (&eight, at, sizeof eight);
          if ((eight & high_bits) != 0)
            break;
          at += sizeof eight;
        }
      if (at == end)
        break;
      character = g_utf8_get_char_validated (at, end - at);
      if (character == (gunichar) -1 || character == (gunichar) -2)
        return at;
      at = g_utf8_next_char (at);
    }
  return end;
}

gboolean
em_xml_check_plain (EmXmlReader *reader, const char *text, gsize length)
{
  const char *end = text + length, *bad = memchr (text, '\0', length);

  reader->line = 1;
  if (length >= 2 && (memcmp (text, "\xfe\xff", 2) == 0 || memcmp (text, "\xff\xfe", 2) == 0))
    em_xml_fail (reader, EM_FILE_ERROR_HOSTILE, _("only UTF-8 is read."));
  else if (bad != NULL)
    {
      count_line (reader, text, bad);
      em_xml_fail (reader, EM_FILE_ERROR_HOSTILE, _("there is a NUL byte in the text."));
    }
  else if ((bad = find_no_utf8 (text, end)) != end)
    {
      count_line (reader, text, bad);
      em_xml_fail (reader, EM_FILE_ERROR_HOSTILE, _("only UTF-8 is read."));
    }
  else
    {
      const char *root = find_root (reader, text, end);
      return root != NULL && check_tags (reader, root, end);
    }
  return FALSE;
}
