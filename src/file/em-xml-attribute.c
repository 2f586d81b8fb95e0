/* em-xml-attribute: the present element's attributes, each read whole or refused; the version.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "config.h"

#include "em-xml-private.h"

#include "em-shown.h"

#include <glib/gi18n-lib.h>
#include <string.h>

/* ---- attributes ---- */

xmlAttrPtr
em_xml_find_attribute (EmXmlReader *reader, const char *name, int *out_index)
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
const char *
em_xml_attribute_value (EmXmlReader *reader, xmlAttrPtr at)
{
  xmlNodePtr piece = at->children;

  if (piece == NULL)
    return "";
  if (piece->next == NULL && piece->type == XML_TEXT_NODE)
    return piece->content != NULL ? (const char *) piece->content : "";

  xmlChar *whole = xmlNodeListGetString (at->doc, at->children, 1);

  /* Cut where memory ran out, which only the last error tells. */
  if (whole == NULL || em_xml_is_out_of_memory (reader))
    em_xml_fail (reader, EM_FILE_ERROR_READ, _("memory ran out."));
  if (whole == NULL)
    return "";
  g_ptr_array_add (reader->scratch, whole);
  return (const char *) whole;
}

gboolean
em_xml_has_unread (EmXmlReader *reader)
{
  return reader->error == NULL && reader->node != NULL && (reader->is_there & ~reader->is_read) != 0;
}

gboolean
em_xml_has (EmXmlReader *reader, const char *name)
{
  int index;

  return em_xml_find_attribute (reader, name, &index) != NULL;
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
  xmlAttrPtr at = em_xml_find_attribute (reader, name, &index);

  if (at == NULL)
    return NULL;

  const char *value = em_xml_attribute_value (reader, at);

  reader->is_read |= G_GUINT64_CONSTANT (1) << index;
  if (reader->error != NULL)
    return NULL;
  if (strlen (value) <= reader->limits.attribute_max)
    return value;
  em_xml_refuse (reader, EM_FILE_ERROR_TOO_LARGE, name, _("longer than allowed."));
  return NULL;
}

const char *
em_xml_needed (EmXmlReader *reader, const char *name)
{
  const char *value = em_xml_attribute (reader, name);

  if (value == NULL)
    em_xml_refuse (reader, EM_FILE_ERROR_VALUE, name, _("missing."));
  return value;
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
      em_xml_refuse (reader, EM_FILE_ERROR_VALUE, name, _("“%.40s” is not a number."), em_shown (text).text);
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
    em_xml_refuse (reader, EM_FILE_ERROR_VALUE, name, _("“%.40s” is not a whole number."), em_shown (text).text);
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
  em_xml_refuse (reader, EM_FILE_ERROR_VALUE, name, _("“%.40s” is neither yes nor no."), em_shown (text).text);
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
  if (reader->is_newer && em_xml_find_attribute (reader, name, &index) != NULL)
    reader->is_read &= ~(G_GUINT64_CONSTANT (1) << index);
  else
    em_xml_refuse (reader, EM_FILE_ERROR_VALUE, name, _("“%.40s” is none of the words known here."), em_shown (text).text);
  return fallback;
}

/* ---- version ---- */

void
em_xml_version (EmXmlReader *reader, int major_known, int minor_known)
{
  const char *text = em_xml_needed (reader, "version");
  g_auto (GStrv) parts = text != NULL ? g_strsplit (text, ".", 3) : NULL;
  int64_t major = 0, minor = 0;

  if (text == NULL)
    return;
  if (g_strv_length (parts) != 2 || !em_integer_read (parts[0], &major) || !em_integer_read (parts[1], &minor) || major < 1
      || major > 9999 || minor < 0 || minor > 9999)
    em_xml_refuse (reader, EM_FILE_ERROR_VALUE, "version", _("“%.40s” is no version."), em_shown (text).text);
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
