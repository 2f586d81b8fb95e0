/* em-feature-xml: features as elements, alike in a quote and on the clipboard.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "config.h"

#include "em-feature-xml.h"

#include "em-shown.h"
#include "em-xml-row.h"

#include <glib/gi18n-lib.h>
#include <string.h>

static const char *const text_ids[EM_N_FEATURE_TEXT] =
{
  "label", "remark", "assumption", "filler", "machine", "process", "override_reason", NULL,
};

static const EmXmlRow rows[] =
{
  EM_XML_ROW_WHOLE ("count", EmFeature, count, 1),
  EM_XML_ROW_REAL ("stock", EmFeature, stock_mm),
  EM_XML_ROW_REAL ("clearance", EmFeature, clearance_mm),
  EM_XML_ROW_WORD ("near", EmFeature, near, em_near_ids, EM_N_NEAR),
  EM_XML_ROW_REAL ("slot_width", EmFeature, slot_width_mm),
  EM_XML_ROW_REAL ("slot_depth", EmFeature, slot_depth_mm),
  EM_XML_ROW_WORD ("access", EmFeature, access, em_access_ids, EM_N_ACCESS),
  EM_XML_ROW_WHOLE ("setting", EmFeature, setting, 0),
  EM_XML_ROW_WHOLE ("safety_layers", EmFeature, safety_layers, -1),
  EM_XML_ROW_WORD ("melt_out", EmFeature, melt_out, em_choice_ids, 3),
  EM_XML_ROW_WORD ("cap", EmFeature, cap, em_choice_ids, 3),
  EM_XML_ROW_WORD ("finish", EmFeature, finish, em_finish_ids, EM_N_FINISH),
  EM_XML_ROW_REAL ("wire", EmFeature, wire_mm),
  EM_XML_ROW_FLAG ("override", EmFeature, has_override),
  EM_XML_ROW_LARGE ("override_price", EmFeature, override_minor, 0),
  EM_XML_ROW_REAL ("actual_arc_on", EmFeature, actual.arc_on_s),
  EM_XML_ROW_REAL ("actual_bench", EmFeature, actual.bench_s),
  EM_XML_ROW_REAL ("actual_wire", EmFeature, actual.wire_mm),
};

void
em_feature_reading_init (EmFeatureReading *out_reading, EmQuote *quote)
{
  *out_reading = (EmFeatureReading) { .quote = quote };
}

void
em_feature_reading_clear (EmFeatureReading *reading)
{
  g_clear_pointer (&reading->ids, g_hash_table_unref);
}

/* ---- texts ---- */

void
em_quote_read_text (EmXmlReader *reader, const char *id, char **text, EmXmlKept *kept)
{
  if (*text != NULL)
    {
      em_xml_refuse (reader, EM_FILE_ERROR_VALUE, id, _("stands here twice."));
      return;
    }
  if (em_xml_is_newer (reader))
    {
      g_autofree char *place = g_strconcat ("text:", id, NULL);
      em_xml_keep_attributes (reader, kept, place);
    }

  const char *found = em_xml_text (reader);

  if (found[0] == '\0')
    return;
  *text = em_text_dup (found);
  if (*text == NULL)
    em_xml_refuse (reader, EM_FILE_ERROR_READ, id, _("memory ran out."));
}

void
em_quote_put_text (EmXmlWriter *writer, const char *id, const char *text, const char *kept)
{
  if (text == NULL)
    return;
  em_xml_open (writer, id);
  if (kept != NULL)
    {
      g_autofree char *place = g_strconcat ("text:", id, NULL);
      em_xml_put_kept (writer, kept, place);
    }
  em_xml_put_content (writer, text);
  em_xml_close (writer);
}

/* ---- values ---- */

static int
count_options (const EmField *field)
{
  int n = 0;

  while (field->options != NULL && field->options[n] != NULL)
    n++;
  return n;
}

/* A choice's option by its id. In a newer file an option not known here is left for keeping. */
static double
read_option (EmXmlReader *reader, const EmField *field)
{
  int option = em_xml_choice (reader, "is", field->options, count_options (field), -1);

  return option < 0 ? EM_ABSENT : option;
}

static void
read_value (EmXmlReader *reader, EmFeature *feature, guint *seen, EmXmlKept *kept)
{
  const char *id = em_xml_needed (reader, "field");
  int i = id != NULL ? em_kind_field (feature->kind, id) : -1;
  g_autofree char *place = NULL;

  if (id == NULL)
    return;
  if (i < 0 && em_xml_is_newer (reader))
    {
      em_xml_keep_element (reader, kept, "");
      return;
    }
  if (i < 0)
    em_xml_refuse (reader, EM_FILE_ERROR_VALUE, id, _("“%s” has no such dimension."), feature->kind->id);
  else if (*seen & (1u << i))
    em_xml_refuse (reader, EM_FILE_ERROR_VALUE, id, _("stands here twice."));
  if (!em_xml_is_good (reader))
    return;
  *seen |= 1u << i;
  feature->value[i] = feature->kind->fields[i].quantity == EM_QUANTITY_CHOICE
                        ? read_option (reader, &feature->kind->fields[i])
                        : em_xml_real (reader, "is", EM_ABSENT, -G_MAXDOUBLE, G_MAXDOUBLE);
  if (!em_xml_has_unread (reader) && !em_xml_is_newer (reader))
    return;
  feature->low[i] = em_xml_real (reader, "low", EM_ABSENT, -G_MAXDOUBLE, G_MAXDOUBLE);
  feature->high[i] = em_xml_real (reader, "high", EM_ABSENT, -G_MAXDOUBLE, G_MAXDOUBLE);
  feature->origin[i] = (uint8_t) em_xml_choice (reader, "origin", em_origin_ids, EM_N_ORIGIN, 0);
  if (em_xml_is_newer (reader))
    {
      place = g_strconcat ("value:", id, NULL);
      em_xml_keep_attributes (reader, kept, place);
      em_xml_keep_children (reader, kept, place);
    }
}

/* A choice that is no option, which nothing in the program makes, is written as absent. */
static void
put_value (EmXmlWriter *writer, const EmFeature *feature, int i)
{
  const EmField *field = &feature->kind->fields[i];
  const char *kept = feature->text[EM_FEATURE_EXTRA];
  double value = feature->value[i];

  if (isnan (value) && isnan (feature->low[i]) && isnan (feature->high[i]) && feature->origin[i] == 0 && kept == NULL)
    return;
  em_xml_open (writer, "value");
  em_xml_put (writer, "field", field->id);
  if (field->quantity != EM_QUANTITY_CHOICE)
    em_xml_put_real (writer, "is", value);
  else if (value >= 0.0 && value < count_options (field))
    em_xml_put (writer, "is", field->options[(int) value]);
  em_xml_put_real (writer, "low", feature->low[i]);
  em_xml_put_real (writer, "high", feature->high[i]);
  if (feature->origin[i] > 0 && feature->origin[i] < EM_N_ORIGIN)
    em_xml_put (writer, "origin", em_origin_ids[feature->origin[i]]);
  if (kept != NULL)
    {
      g_autofree char *place = g_strconcat ("value:", field->id, NULL);
      em_xml_put_kept (writer, kept, place);
    }
  em_xml_close (writer);
}

/* ---- features ---- */

static int
find_text (EmXmlReader *reader)
{
  for (int i = 0; i < EM_N_FEATURE_TEXT; i++)
    if (text_ids[i] != NULL && em_xml_is (reader, text_ids[i]))
      return i;
  return -1;
}

static void
read_children (EmXmlReader *reader, EmFeature *feature, EmXmlKept *kept)
{
  guint seen = 0;

  em_xml_begin (reader);
  while (em_xml_child (reader))
    {
      gboolean is_value = em_xml_is (reader, "value");
      int text = is_value ? -1 : find_text (reader);
      if (is_value)
        read_value (reader, feature, &seen, kept);
      else if (text >= 0)
        em_quote_read_text (reader, text_ids[text], &feature->text[text], kept);
      else
        em_xml_keep_element (reader, kept, "");
    }
}

/* Room for one more at the end of the quote's features. */
static gboolean
reserve (EmXmlReader *reader, EmQuote *quote)
{
  if (quote->n_features >= EM_QUOTE_LINES_MAX)
    {
      em_xml_refuse (reader, EM_FILE_ERROR_TOO_LARGE, "feature", _("more than %d of them."), EM_QUOTE_LINES_MAX);
      return FALSE;
    }
  if (quote->n_features < quote->cap_features)
    return TRUE;

  int32_t cap = quote->cap_features < 8 ? 8 : quote->cap_features * 2;
  EmFeature *grown = realloc (quote->feature, (size_t) cap * sizeof *grown);

  if (grown == NULL)
    {
      em_xml_refuse (reader, EM_FILE_ERROR_READ, "feature", _("memory ran out."));
      return FALSE;
    }
  quote->feature = grown;
  quote->cap_features = cap;
  return TRUE;
}

/* One higher than the last is new, as nearly all are. Another needs all that came before; of those, what is kept whole is not among the
 * quote's features, so that they are noted from the first such on. */
static gboolean
note_id (EmFeatureReading *reading, uint32_t id, gboolean is_kept)
{
  gboolean is_higher = id > reading->last_id;

  reading->last_id = id;
  if (reading->ids == NULL && is_higher && !is_kept)
    return TRUE;
  if (reading->ids == NULL)
    {
      reading->ids = g_hash_table_new (NULL, NULL);
      for (int32_t i = 0; i < reading->quote->n_features; i++)
        g_hash_table_add (reading->ids, GUINT_TO_POINTER (reading->quote->feature[i].id));
    }
  return g_hash_table_add (reading->ids, GUINT_TO_POINTER (id));
}

static uint32_t
read_id (EmXmlReader *reader, EmFeatureReading *reading, gboolean is_kept)
{
  uint32_t id = em_xml_need (reader, "id") ? (uint32_t) em_xml_integer (reader, "id", 1, 1, G_MAXUINT32) : 1;

  if (!em_xml_is_good (reader))
    return id;
  if (!note_id (reading, id, is_kept))
    em_xml_refuse (reader, EM_FILE_ERROR_VALUE, "id", _("%u is used twice."), id);
  reading->quote->next_id = em_quote_next_id (reading->quote->next_id, id);
  return id;
}

void
em_feature_read (EmXmlReader *reader, EmFeatureReading *reading, EmXmlKept *quote_kept)
{
  EmQuote *quote = reading->quote;
  const char *kind_id = em_xml_needed (reader, "kind");
  const EmKind *kind = kind_id != NULL ? em_kind_find (kind_id) : NULL;
  uint32_t id = read_id (reader, reading, kind == NULL);
  EmXmlKept kept = { NULL, 0 };

  if (kind == NULL && em_xml_is_newer (reader))
    em_xml_keep_element (reader, quote_kept, "");
  else if (kind == NULL)
    em_xml_refuse (reader, EM_FILE_ERROR_VALUE, "kind", _("“%.40s” is no kind of repair known here."), em_shown (kind_id != NULL ? kind_id : "").text);
  if (kind == NULL || !em_xml_is_good (reader) || !reserve (reader, quote))
    return;

  EmFeature *feature = &quote->feature[quote->n_features];

  em_feature_init (feature, kind);
  quote->n_features++;
  feature->id = id;
  em_xml_rows_read (reader, rows, G_N_ELEMENTS (rows), feature);
  em_xml_keep_attributes (reader, &kept, "");
  read_children (reader, feature, &kept);
  if (kept.text != NULL && em_feature_set_text (feature, EM_FEATURE_EXTRA, kept.text->str) != EM_OK)
    em_xml_refuse (reader, EM_FILE_ERROR_READ, "feature", _("memory ran out."));
  reading->n_kept += kept.n_kept;
  em_xml_kept_clear (&kept);
}

void
em_feature_put (EmXmlWriter *writer, const EmFeature *feature)
{
  const char *kept = feature->text[EM_FEATURE_EXTRA];

  em_xml_open (writer, "feature");
  em_xml_put_integer (writer, "id", feature->id);
  em_xml_put (writer, "kind", feature->kind->id);
  em_xml_rows_put (writer, rows, G_N_ELEMENTS (rows), feature);
  em_xml_put_kept_attributes (writer, kept, "");
  for (int i = 0; i < EM_N_FEATURE_TEXT; i++)
    if (text_ids[i] != NULL)
      em_quote_put_text (writer, text_ids[i], feature->text[i], kept);
  for (int i = 0; i < feature->kind->n_fields; i++)
    put_value (writer, feature, i);
  em_xml_put_kept_elements (writer, kept, "");
  em_xml_close (writer);
}

char *
em_quote_dup_version (EmXmlWriter *writer, const EmFeature *features, int32_t n_features, const char *quote_kept)
{
  int minor = MAX (EM_QUOTE_MINOR, em_xml_kept_minor (writer, quote_kept));

  for (int32_t i = 0; i < n_features; i++)
    if (features[i].text[EM_FEATURE_EXTRA] != NULL)
      minor = MAX (minor, em_xml_kept_minor (writer, features[i].text[EM_FEATURE_EXTRA]));
  return g_strdup_printf ("%d.%d", EM_QUOTE_MAJOR, minor);
}
