/* em-xml-keep: what a newer minor version wrote, kept as XML until it is saved again.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "config.h"

#include "em-xml-private.h"

#include <glib/gi18n-lib.h>

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
