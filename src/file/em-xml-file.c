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
              em_xml_fail (reader, EM_FILE_ERROR_HOSTILE, _("only UTF-8 is read."));
              return NULL;
            }
          at = close;
        }
      else if (starts (at, end, "<!--"))
        at = past (at + 4, end, "-->");
      else if (starts (at, end, "<!"))
        {
          count_line (reader, text, at);
          em_xml_fail (reader, EM_FILE_ERROR_HOSTILE, _("a document type or entity is declared, which our files never do."));
          return NULL;
        }
      else
        return at;
    }
  em_xml_fail (reader, EM_FILE_ERROR_NOT_OURS, _("there is nothing in this file."));
  return NULL;
}

gboolean
em_xml_check_plain (EmXmlReader *reader, const char *text, gsize length)
{
  const char *bad = memchr (text, '\0', length), *end;

  reader->line = 1;
  if (length >= 2 && (memcmp (text, "\xfe\xff", 2) == 0 || memcmp (text, "\xff\xfe", 2) == 0))
    em_xml_fail (reader, EM_FILE_ERROR_HOSTILE, _("only UTF-8 is read."));
  else if (bad != NULL)
    {
      count_line (reader, text, bad);
      em_xml_fail (reader, EM_FILE_ERROR_HOSTILE, _("there is a NUL byte in the text."));
    }
  else if (!g_utf8_validate_len (text, length, &end))
    {
      count_line (reader, text, end);
      em_xml_fail (reader, EM_FILE_ERROR_HOSTILE, _("only UTF-8 is read."));
    }
  else
    return find_root (reader, text, text + length) != NULL;
  return FALSE;
}
