/* em-xml-row: members of a record as attributes, by a table.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-xml-row.h"

#include "em-xml-private.h"

#include <string.h>

/* Enums are read and written as the int they are stored in. */
G_STATIC_ASSERT (sizeof (EmState) == sizeof (int) && sizeof (EmChoice) == sizeof (int));

static void
read_row (EmXmlReader *reader, const EmXmlRow *row, void *at)
{
  switch (row->type)
    {
    case EM_XML_REAL:
      *(double *) at = em_xml_real (reader, row->id, *(double *) at, -G_MAXDOUBLE, G_MAXDOUBLE);
      break;
    case EM_XML_WHOLE:
      *(int32_t *) at = (int32_t) em_xml_integer (reader, row->id, *(int32_t *) at, G_MININT32, G_MAXINT32);
      break;
    case EM_XML_LARGE:
      *(int64_t *) at = em_xml_integer (reader, row->id, *(int64_t *) at, G_MININT64, G_MAXINT64);
      break;
    case EM_XML_FLAG:
      *(bool *) at = em_xml_boolean (reader, row->id, *(bool *) at);
      break;
    case EM_XML_WORD:
      *(int *) at = em_xml_choice (reader, row->id, row->words, row->n_words, *(int *) at);
      break;
    }
}

static const EmXmlRow *
find_row (const EmXmlRow *rows, int n_rows, const char *id)
{
  for (int i = 0; i < n_rows; i++)
    if (rows[i].id[0] == id[0] && strcmp (rows[i].id, id) == 0)
      return &rows[i];
  return NULL;
}

/* Most members stand at their default and have no attribute, so this goes by what is there. */
void
em_xml_rows_read (EmXmlReader *reader, const EmXmlRow *rows, int n_rows, void *holder)
{
  xmlAttrPtr at = reader->node != NULL ? reader->node->properties : NULL;

  for (int i = 0; at != NULL && em_xml_has_unread (reader); at = at->next, i++)
    {
      const EmXmlRow *row = reader->is_read >> i & 1 ? NULL : find_row (rows, n_rows, (const char *) at->name);
      if (row != NULL)
        read_row (reader, row, (char *) holder + row->offset);
    }
}

static void
put_word (EmXmlWriter *writer, const EmXmlRow *row, int word)
{
  if (word != row->preset && word >= 0 && word < row->n_words)
    em_xml_put (writer, row->id, row->words[word]);
}

static void
put_row (EmXmlWriter *writer, const EmXmlRow *row, const void *at)
{
  switch (row->type)
    {
    case EM_XML_REAL:
      em_xml_put_real (writer, row->id, *(const double *) at);
      break;
    case EM_XML_WHOLE:
      if (*(const int32_t *) at != row->preset)
        em_xml_put_integer (writer, row->id, *(const int32_t *) at);
      break;
    case EM_XML_LARGE:
      if (*(const int64_t *) at != row->preset)
        em_xml_put_integer (writer, row->id, *(const int64_t *) at);
      break;
    case EM_XML_FLAG:
      if (*(const bool *) at)
        em_xml_put_boolean (writer, row->id, TRUE);
      break;
    case EM_XML_WORD:
      put_word (writer, row, *(const int *) at);
      break;
    }
}

void
em_xml_rows_put (EmXmlWriter *writer, const EmXmlRow *rows, int n_rows, const void *holder)
{
  for (int i = 0; i < n_rows; i++)
    put_row (writer, &rows[i], (const char *) holder + rows[i].offset);
}
