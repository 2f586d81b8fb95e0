/* em-quote-file: quotes as files of our own (data/quote.rng).
 *
 * Numbers are attributes, texts elements, in the units the core holds them in. What stands
 * at its default is left out.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "config.h"

#include "em-quote-file.h"

#include "em-book-file.h"
#include "em-catalogue-file.h"
#include "em-feature-xml.h"
#include "em-rates-file.h"
#include "em-save.h"
#include "em-xml-row.h"

#include <glib/gi18n-lib.h>
#include <string.h>

/* A hundred thousand features take some 50 MiB. */
static const EmXmlLimits quote_limits = { 256u << 20, 32, 8u << 20, 1u << 16, 5000000 };

static const char *const unit_ids[] = { "metric", "inch" };

static const EmXmlRow rows[] =
{
  EM_XML_ROW_WORD ("units", EmQuote, units, unit_ids, 2),
  EM_XML_ROW_WORD ("state", EmQuote, state, em_state_ids, EM_N_STATE),
  EM_XML_ROW_WHOLE ("tools", EmQuote, n_tools, 1),
  EM_XML_ROW_REAL ("hardness", EmQuote, hardness_hrc),
  EM_XML_ROW_REAL ("section", EmQuote, section_mm),
  EM_XML_ROW_FLAG ("preheat_stated", EmQuote, has_preheat),
  EM_XML_ROW_WORD ("preheat", EmQuote, preheat, em_choice_ids, 3),
  EM_XML_ROW_LARGE ("learning", EmQuote, learning_ppm, -1),
  EM_XML_ROW_LARGE ("margin", EmQuote, margin_ppm, -1),
  EM_XML_ROW_LARGE ("contingency", EmQuote, contingency_ppm, -1),
  EM_XML_ROW_LARGE ("rush", EmQuote, rush_ppm, -1),
  EM_XML_ROW_LARGE ("discount", EmQuote, discount_ppm, -1),
  EM_XML_ROW_WHOLE ("validity", EmQuote, validity_days, -1),
  EM_XML_ROW_WORD ("finish", EmQuote, finish, em_finish_ids, EM_N_FINISH),
};

/* What one reading carries along. */
typedef struct
{
  EmXmlReader     *reader;
  EmQuoteFile     *file;
  EmFeatureReading features;
  EmXmlKept        kept;
  gboolean         has_sent;
} Reading;

/* ---- life ---- */

void
em_quote_file_init (EmQuoteFile *out_file)
{
  *out_file = (EmQuoteFile) { .version_major = EM_QUOTE_MAJOR, .version_minor = EM_QUOTE_MINOR };
  em_quote_init (&out_file->quote);
}

void
em_quote_file_clear (EmQuoteFile *file)
{
  em_quote_clear (&file->quote);
  if (file->sent_rates != NULL)
    em_rates_clear (file->sent_rates);
  if (file->sent_catalogue != NULL)
    em_catalogue_clear (file->sent_catalogue);
  g_free (file->sent_rates);
  g_free (file->sent_catalogue);
  em_quote_file_init (file);
}

/* ---- reading ---- */

static void
need_memory (Reading *reading, EmStatus status)
{
  if (status == EM_FAULT_OVERFLOW)
    em_xml_refuse (reading->reader, EM_FILE_ERROR_TOO_LARGE, NULL, _("more than %d of them."), EM_QUOTE_LINES_MAX);
  else if (status != EM_OK)
    em_xml_refuse (reading->reader, EM_FILE_ERROR_READ, NULL, _("memory ran out."));
}

/* What is kept of a line, which holds nothing in this version, belongs to it by what it says: a line changed or removed takes it along. */
static void
keep (Reading *reading, char *place)
{
  if (em_xml_is_newer (reading->reader))
    {
      em_xml_keep_attributes (reading->reader, &reading->kept, place);
      em_xml_keep_children (reading->reader, &reading->kept, place);
    }
  g_free (place);
}

static char *
extra_place (const EmExtra *extra)
{
  return g_strconcat ("extra:", extra->label != NULL ? extra->label : "", NULL);
}

static char *
mark_place (const EmMark *mark)
{
  return g_strdup_printf ("mark:%u:%u:%u:%s", mark->start, mark->length, mark->feature_id, mark->field != NULL ? mark->field : "");
}

static char *
break_place (int32_t tools)
{
  return g_strdup_printf ("break:%d", tools);
}

/* NULL when there is none; where memory ran out, the reader knows. */
static char *
dup_attribute (Reading *reading, const char *name)
{
  const char *text = em_xml_attribute (reading->reader, name);
  char *copy = em_text_dup (text);

  if (text != NULL && copy == NULL)
    em_xml_refuse (reading->reader, EM_FILE_ERROR_READ, name, _("memory ran out."));
  return copy;
}

static void
read_extra (Reading *reading)
{
  EmExtra extra = { 0 };

  em_xml_need (reading->reader, "cost");
  extra.cost_minor = em_xml_integer (reading->reader, "cost", 0, G_MININT64, G_MAXINT64);
  extra.is_per_tool = em_xml_boolean (reading->reader, "per_tool", FALSE);
  extra.label = dup_attribute (reading, "label");
  keep (reading, extra_place (&extra));
  need_memory (reading, em_quote_add_extra_take (&reading->file->quote, &extra));
}

static void
read_break (Reading *reading)
{
  EmQuote *quote = &reading->file->quote;
  int32_t tools = em_xml_need (reading->reader, "tools") ? (int32_t) em_xml_integer (reading->reader, "tools", 0, G_MININT32, G_MAXINT32) : 0;

  keep (reading, break_place (tools));
  if (quote->n_breaks == EM_BREAK_MAX)
    em_xml_refuse (reading->reader, EM_FILE_ERROR_VALUE, "break", _("more than %d of them."), EM_BREAK_MAX);
  else
    quote->break_tools[quote->n_breaks++] = tools;
}

static void
read_mark (Reading *reading)
{
  EmXmlReader *reader = reading->reader;
  EmMark mark = { 0 };

  em_xml_need (reader, "start");
  em_xml_need (reader, "length");
  mark.start = (uint32_t) em_xml_integer (reader, "start", 0, 0, G_MAXUINT32);
  mark.length = (uint32_t) em_xml_integer (reader, "length", 0, 0, G_MAXUINT32);
  mark.feature_id = (uint32_t) em_xml_integer (reader, "feature", 0, 0, G_MAXUINT32);
  mark.state = (EmMarkState) em_xml_choice (reader, "state", em_mark_ids, EM_N_MARK, 0);
  mark.field = dup_attribute (reading, "field");
  mark.reason = dup_attribute (reading, "reason");
  keep (reading, mark_place (&mark));
  need_memory (reading, em_quote_add_mark_take (&reading->file->quote, &mark));
}

/* A file inside ours, which its own room reads. line: where it begins, for the message. */
static GBytes *
take_part (Reading *reading, char **out_name, const char *name)
{
  int line = em_xml_line (reading->reader);
  char *xml = em_xml_take_element (reading->reader, EM_XML_PART_MAX);

  *out_name = g_strdup_printf (_("%s from line %d on"), name, line);
  return xml != NULL ? g_bytes_new_take (xml, strlen (xml)) : NULL;
}

static void
read_sent_rates (Reading *reading, const char *name)
{
  g_autofree char *part = NULL;
  g_autoptr (GBytes) bytes = take_part (reading, &part, name);
  g_autofree EmRates *rates = g_new0 (EmRates, 1);
  GError *error = NULL;

  if (reading->file->sent_rates != NULL)
    em_xml_refuse (reading->reader, EM_FILE_ERROR_VALUE, "rates", _("stands here twice."));
  else if (bytes != NULL && em_rates_parse (bytes, part, rates, &error))
    reading->file->sent_rates = g_steal_pointer (&rates);
  else if (error != NULL)
    em_xml_refuse_take (reading->reader, error);
}

static void
read_sent_catalogue (Reading *reading, const char *name)
{
  g_autofree char *part = NULL;
  g_autoptr (GBytes) bytes = take_part (reading, &part, name);
  g_autofree EmCatalogue *catalogue = g_new0 (EmCatalogue, 1);
  GError *error = NULL;

  if (reading->file->sent_catalogue != NULL)
    em_xml_refuse (reading->reader, EM_FILE_ERROR_VALUE, "metals", _("stands here twice."));
  else if (bytes != NULL && em_catalogue_parse (bytes, part, catalogue, &error))
    reading->file->sent_catalogue = g_steal_pointer (&catalogue);
  else if (error != NULL)
    em_xml_refuse_take (reading->reader, error);
}

static void
read_sent (Reading *reading, const char *name)
{
  EmXmlReader *reader = reading->reader;

  if (reading->has_sent)
    em_xml_refuse (reader, EM_FILE_ERROR_VALUE, "sent", _("stands here twice."));
  reading->has_sent = TRUE;
  reading->file->quote.has_sent_rates = true;
  em_xml_keep_attributes (reader, &reading->kept, "sent");
  em_xml_begin (reader);
  while (em_xml_child (reader))
    if (strcmp (em_xml_name (reader), "rates") == 0)
      read_sent_rates (reading, name);
    else if (strcmp (em_xml_name (reader), "metals") == 0)
      read_sent_catalogue (reading, name);
    else
      em_xml_keep_element (reader, &reading->kept, "sent");
  if (em_xml_is_good (reader) && (reading->file->sent_rates == NULL || reading->file->sent_catalogue == NULL))
    em_xml_refuse (reader, EM_FILE_ERROR_VALUE, "sent", _("its rates or its metals are missing."));
}

static int
find_text (EmXmlReader *reader)
{
  for (int i = 0; i < EM_N_QUOTE_TEXT; i++)
    if (i != EM_QUOTE_EXTRA && em_xml_is (reader, em_quote_text_ids[i]))
      return i;
  return -1;
}

static void
read_child (Reading *reading, const char *name)
{
  EmXmlReader *reader = reading->reader;
  int text;

  if (em_xml_is (reader, "feature"))
    em_feature_read (reader, &reading->features, &reading->kept);
  else if (em_xml_is (reader, "mark"))
    read_mark (reading);
  else if (em_xml_is (reader, "extra"))
    read_extra (reading);
  else if (em_xml_is (reader, "break"))
    read_break (reading);
  else if (em_xml_is (reader, "sent"))
    read_sent (reading, name);
  else if ((text = find_text (reader)) >= 0)
    em_quote_read_text (reader, em_quote_text_ids[text], &reading->file->quote.text[text], &reading->kept);
  else
    em_xml_keep_element (reader, &reading->kept, "");
}

/* A stretch lies within the notes, on character boundaries. */
static gboolean
is_within (const EmMark *mark, const char *notes, size_t length)
{
  size_t end = (size_t) mark->start + mark->length;

  return end <= length && ((guchar) notes[mark->start] & 0xc0) != 0x80 && ((guchar) notes[end] & 0xc0) != 0x80;
}

static void
check_marks (Reading *reading)
{
  const EmQuote *quote = &reading->file->quote;
  const char *notes = quote->text[EM_QUOTE_NOTES] != NULL ? quote->text[EM_QUOTE_NOTES] : "";
  size_t length = strlen (notes);

  for (int32_t i = 0; i < quote->n_marks; i++)
    if (!is_within (&quote->mark[i], notes, length))
      {
        em_xml_refuse (reading->reader, EM_FILE_ERROR_VALUE, "mark", _("%u to %u is no stretch of the notes."), quote->mark[i].start,
                       quote->mark[i].start + quote->mark[i].length);
        return;
      }
}

static void
read_quote (Reading *reading, const char *name)
{
  EmXmlReader *reader = reading->reader;
  EmQuote *quote = &reading->file->quote;

  em_xml_version (reader, EM_QUOTE_MAJOR, EM_QUOTE_MINOR);
  em_xml_rows_read (reader, rows, G_N_ELEMENTS (rows), quote);

  uint32_t next_id = (uint32_t) em_xml_integer (reader, "next_id", 1, 1, G_MAXUINT32);

  em_xml_keep_attributes (reader, &reading->kept, "");
  em_xml_begin (reader);
  while (em_xml_child (reader))
    read_child (reading, name);
  if (quote->next_id != 0)
    quote->next_id = MAX (quote->next_id, next_id);
  check_marks (reading);
  if (reading->kept.text != NULL)
    need_memory (reading, em_quote_set_text (quote, EM_QUOTE_EXTRA, reading->kept.text->str));
  reading->file->version_major = em_xml_major (reader);
  reading->file->version_minor = em_xml_minor (reader);
  reading->file->is_newer_minor = em_xml_is_newer (reader);
  reading->file->n_kept = reading->kept.n_kept + reading->features.n_kept;
}

void
em_quote_file_read (EmXmlReader *reader, const char *name, EmQuoteFile *out_file)
{
  Reading reading = { .reader = reader, .file = out_file };

  em_feature_reading_init (&reading.features, &out_file->quote);
  read_quote (&reading, name);
  em_feature_reading_clear (&reading.features);
  em_xml_kept_clear (&reading.kept);
}

gboolean
em_quote_file_parse (GBytes *bytes, const char *name, EmQuoteFile *out_file, GError **error)
{
  g_autoptr (EmXmlReader) reader = em_xml_reader_new (bytes, name, EM_QUOTE_NS, "quote", &quote_limits, error);
  EmQuoteFile file;

  if (reader == NULL)
    return FALSE;
  em_quote_file_init (&file);
  em_quote_file_read (reader, name, &file);
  if (em_xml_reader_finish (reader, error))
    {
      *out_file = file;
      return TRUE;
    }
  em_quote_file_clear (&file);
  return FALSE;
}

GBytes *
em_quote_file_bytes (const char *path, EmFileStamp *out_stamp, GError **error)
{
  em_file_stamp (path, out_stamp);
  return em_xml_read_file (path, quote_limits.size_max, error);
}

gboolean
em_quote_file_load (const char *path, EmQuoteFile *out_file, GError **error)
{
  g_autofree char *name = g_path_get_basename (path);
  g_autoptr (GBytes) bytes = NULL;
  EmFileStamp stamp;

  bytes = em_quote_file_bytes (path, &stamp, error);
  if (bytes == NULL || !em_quote_file_parse (bytes, name, out_file, error))
    return FALSE;
  out_file->stamp = stamp;
  return TRUE;
}

/* ---- writing ---- */

/* Of lines that say the same the first has all that is kept of them; put to each, it would double at every save. met: the places put so
 * far. place is taken. */
static void
put_place (EmXmlWriter *writer, const char *kept, GHashTable *met, char *place)
{
  if (kept != NULL && !g_hash_table_contains (met, place))
    em_xml_put_kept (writer, kept, place);
  g_hash_table_add (met, place);
}

static GHashTable *
places_new (void)
{
  return g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
}

static void
put_breaks (EmXmlWriter *writer, const EmQuote *quote)
{
  g_autoptr (GHashTable) met = places_new ();

  for (int32_t i = 0; i < quote->n_breaks; i++)
    {
      em_xml_open (writer, "break");
      em_xml_put_integer (writer, "tools", quote->break_tools[i]);
      put_place (writer, quote->text[EM_QUOTE_EXTRA], met, break_place (quote->break_tools[i]));
      em_xml_close (writer);
    }
}

static void
put_extras (EmXmlWriter *writer, const EmQuote *quote)
{
  g_autoptr (GHashTable) met = places_new ();

  for (int32_t i = 0; i < quote->n_extras; i++)
    {
      em_xml_open (writer, "extra");
      em_xml_put (writer, "label", quote->extra[i].label);
      em_xml_put_integer (writer, "cost", quote->extra[i].cost_minor);
      if (quote->extra[i].is_per_tool)
        em_xml_put_boolean (writer, "per_tool", TRUE);
      put_place (writer, quote->text[EM_QUOTE_EXTRA], met, extra_place (&quote->extra[i]));
      em_xml_close (writer);
    }
}

static void
put_mark (EmXmlWriter *writer, const EmMark *mark, const char *kept, GHashTable *met)
{
  em_xml_open (writer, "mark");
  em_xml_put_integer (writer, "start", mark->start);
  em_xml_put_integer (writer, "length", mark->length);
  if (mark->feature_id != 0)
    em_xml_put_integer (writer, "feature", mark->feature_id);
  if ((int) mark->state > 0 && mark->state < EM_N_MARK)
    em_xml_put (writer, "state", em_mark_ids[mark->state]);
  em_xml_put (writer, "field", mark->field);
  em_xml_put (writer, "reason", mark->reason);
  put_place (writer, kept, met, mark_place (mark));
  em_xml_close (writer);
}

/* One that points past the notes shows nothing and prices nothing; writing it would make the file unreadable. */
static void
put_marks (EmXmlWriter *writer, const EmQuote *quote)
{
  const char *notes = quote->text[EM_QUOTE_NOTES] != NULL ? quote->text[EM_QUOTE_NOTES] : "";
  size_t length = strlen (notes);
  g_autoptr (GHashTable) met = places_new ();

  for (int32_t i = 0; i < quote->n_marks; i++)
    if (is_within (&quote->mark[i], notes, length))
      put_mark (writer, &quote->mark[i], quote->text[EM_QUOTE_EXTRA], met);
}

/* Ids given before are not given again, though the features be gone. */
static gboolean
has_spent_ids (const EmQuote *quote)
{
  uint32_t next = 1;

  for (int32_t i = 0; i < quote->n_features; i++)
    next = em_quote_next_id (next, quote->feature[i].id);
  return quote->next_id > next;
}

/* Rates that would not pass the check could not be read again. */
static gboolean
put_sent (EmXmlWriter *writer, const EmQuoteFile *file, GError **error)
{
  EmFault fault;

  if (file->sent_rates == NULL || file->sent_catalogue == NULL)
    return TRUE;
  if (em_rates_check (file->sent_rates, &fault) != EM_OK)
    {
      g_set_error (error, EM_FILE_ERROR, EM_FILE_ERROR_VALUE,
                   _("The rates the quote was sent with cannot be saved: “%s” is missing or out of its limits."), fault.field);
      return FALSE;
    }
  em_xml_open (writer, "sent");
  em_xml_put_kept_attributes (writer, file->quote.text[EM_QUOTE_EXTRA], "sent");
  em_rates_put_element (writer, file->sent_rates);
  em_catalogue_put_element (writer, file->sent_catalogue, FALSE);
  em_xml_put_kept_elements (writer, file->quote.text[EM_QUOTE_EXTRA], "sent");
  em_xml_close (writer);
  return TRUE;
}

static void
put_root (EmXmlWriter *writer, const EmQuote *quote)
{
  g_autofree char *version = em_quote_dup_version (writer, quote->feature, quote->n_features, quote->text[EM_QUOTE_EXTRA]);

  em_xml_open (writer, "quote");
  em_xml_put (writer, "xmlns", EM_QUOTE_NS);
  em_xml_put (writer, "version", version);
  em_xml_rows_put (writer, rows, G_N_ELEMENTS (rows), quote);
  if (has_spent_ids (quote))
    em_xml_put_integer (writer, "next_id", quote->next_id);
  em_xml_put_kept_attributes (writer, quote->text[EM_QUOTE_EXTRA], "");
}

GBytes *
em_quote_file_write (const EmQuoteFile *file, GError **error)
{
  const EmQuote *quote = &file->quote;
  EmXmlWriter *writer = em_xml_writer_new ();

  put_root (writer, quote);
  for (int i = 0; i < EM_N_QUOTE_TEXT; i++)
    if (i != EM_QUOTE_EXTRA)
      em_quote_put_text (writer, em_quote_text_ids[i], quote->text[i], quote->text[EM_QUOTE_EXTRA]);
  put_breaks (writer, quote);
  put_extras (writer, quote);
  for (int32_t i = 0; i < quote->n_features; i++)
    em_feature_put (writer, &quote->feature[i]);
  put_marks (writer, quote);
  em_xml_put_kept_elements (writer, quote->text[EM_QUOTE_EXTRA], "");
  if (!put_sent (writer, file, error))
    {
      em_xml_writer_free (writer);
      return NULL;
    }
  em_xml_close (writer);
  return em_xml_writer_finish (writer, error);
}

gboolean
em_quote_file_save (const char *path, const EmQuoteFile *file, GError **error)
{
  g_autoptr (GBytes) bytes = em_quote_file_write (file, error);

  return bytes != NULL && em_save_bytes (path, bytes, error);
}

/* ---- the clipboard ---- */

char *
em_features_to_xml (const EmFeature *features, int32_t n_features)
{
  EmXmlWriter *writer = em_xml_writer_new ();
  g_autofree char *version = em_quote_dup_version (writer, features, n_features, NULL);

  em_xml_open (writer, "features");
  em_xml_put (writer, "xmlns", EM_QUOTE_NS);
  em_xml_put (writer, "version", version);
  for (int32_t i = 0; i < n_features; i++)
    em_feature_put (writer, &features[i]);
  em_xml_close (writer);

  g_autoptr (GBytes) bytes = em_xml_writer_finish (writer, NULL);

  return bytes != NULL ? g_strndup (g_bytes_get_data (bytes, NULL), g_bytes_get_size (bytes)) : NULL;
}

gboolean
em_features_from_xml (const char *xml, gssize length, EmQuote *out_quote, GError **error)
{
  g_autoptr (GBytes) bytes = g_bytes_new (xml, length < 0 ? strlen (xml) : (gsize) length);
  g_autoptr (EmXmlReader) reader = em_xml_reader_new (bytes, _("The clipboard"), EM_QUOTE_NS, "features", &quote_limits, error);
  EmFeatureReading reading;
  EmXmlKept kept = { NULL, 0 };
  EmQuote quote;

  if (reader == NULL)
    return FALSE;
  em_quote_init (&quote);
  em_feature_reading_init (&reading, &quote);
  em_xml_version (reader, EM_QUOTE_MAJOR, EM_QUOTE_MINOR);
  em_xml_begin (reader);
  while (em_xml_child (reader))
    if (em_xml_is (reader, "feature"))
      em_feature_read (reader, &reading, &kept);
    else
      em_xml_refuse_element (reader);
  em_feature_reading_clear (&reading);
  em_xml_kept_clear (&kept);
  if (em_xml_reader_finish (reader, error))
    {
      *out_quote = quote;
      return TRUE;
    }
  em_quote_clear (&quote);
  return FALSE;
}
