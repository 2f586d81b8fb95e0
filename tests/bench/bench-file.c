/* bench-file: opening and saving a quote of 100,000 features, beside libxml2 alone on the same bytes.
 *
 * Reading's yardstick runs libxml2's xmlReader over the file and looks at nothing in it; ours checks every attribute and
 * makes the model. Writing's yardstick gives the same elements, attributes and texts, ready as strings, to libxml2's
 * xmlTextWriter; ours makes the strings from the model. Disk and its syncing are left out: both would wait alike.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-bench-shop.h"
#include "em-quote-file.h"

#include <glib/gstdio.h>
#include <libxml/xmlreader.h>
#include <libxml/xmlwriter.h>
#include <string.h>

enum { N_FEATURES = 100000, N_RUNS = 5 };

/* What the xmlTextWriter is to be given. */
typedef enum { OPEN, ATTRIBUTE, TEXT, CLOSE } EventType;
typedef struct { EventType type; char *name, *value; } Event;

typedef struct
{
  GBytes     *bytes;
  EmQuoteFile file;
  GArray     *events;
  gsize       plain_size;
} Bench;

/* ---- the quote ---- */

/* As an office's quote is: every feature has a name, some a remark, a range, a place. */
static void
dress (EmFeature *feature, int32_t i)
{
  g_autofree char *label = g_strdup_printf ("Insert %d, repair %d", i / 40 + 1, i % 40 + 1);

  em_feature_set_text (feature, EM_FEATURE_LABEL, label);
  if (i % 5 == 0)
    em_feature_set_text (feature, EM_FEATURE_REMARK, "Keep clear of the texture; blend by hand & re-check the shut-off");
  if (i % 7 == 0)
    feature->stock_mm = 0.25;
  if (i % 4 == 0)
    {
      feature->low[0] = floor (90.0 * feature->value[0]) / 100.0;
      feature->high[0] = ceil (120.0 * feature->value[0]) / 100.0;
    }
  feature->setting = i % 12;
}

static GBytes *
make_file (void)
{
  EmQuoteFile file;
  GBytes *bytes;

  em_quote_file_init (&file);
  em_bench_fill (&file.quote, N_FEATURES, EM_BENCH_ALL_KINDS);
  for (int32_t i = 0; i < N_FEATURES; i++)
    dress (&file.quote.feature[i], i);
  em_quote_set_text (&file.quote, EM_QUOTE_CUSTOMER, "Nobody in particular");
  bytes = em_quote_file_write (&file, NULL);
  em_bench_demand (bytes != NULL, "the quote could not be written");
  em_quote_file_clear (&file);
  return bytes;
}

/* ---- reading ---- */

static void
read_ours (void *data)
{
  Bench *bench = data;

  em_quote_file_clear (&bench->file);
  em_bench_demand (em_quote_file_parse (bench->bytes, "bench", &bench->file, NULL), "the quote could not be read");
}

static void
read_plain (void *data)
{
  Bench *bench = data;
  gsize size;
  const char *text = g_bytes_get_data (bench->bytes, &size);
  xmlTextReaderPtr reader = xmlReaderForMemory (text, (int) size, NULL, "UTF-8", XML_PARSE_NONET | XML_PARSE_COMPACT);
  int result;

  while ((result = xmlTextReaderRead (reader)) == 1)
    continue;
  em_bench_demand (result == 0, "libxml2 could not read the quote");
  xmlFreeTextReader (reader);
}

/* ---- writing ---- */

static void
note (GArray *events, EventType type, const xmlChar *name, const xmlChar *value)
{
  Event event = { type, g_strdup ((const char *) name), g_strdup ((const char *) value) };

  g_array_append_val (events, event);
}

static void
note_element (GArray *events, xmlTextReaderPtr reader)
{
  gboolean is_empty = xmlTextReaderIsEmptyElement (reader) == 1;

  note (events, OPEN, xmlTextReaderConstName (reader), NULL);
  while (xmlTextReaderMoveToNextAttribute (reader) == 1)
    note (events, ATTRIBUTE, xmlTextReaderConstName (reader), xmlTextReaderConstValue (reader));
  if (is_empty)
    note (events, CLOSE, NULL, NULL);
}

static GArray *
list_events (GBytes *bytes)
{
  gsize size;
  const char *text = g_bytes_get_data (bytes, &size);
  xmlTextReaderPtr reader = xmlReaderForMemory (text, (int) size, NULL, "UTF-8", XML_PARSE_NONET | XML_PARSE_NOBLANKS);
  GArray *events = g_array_new (FALSE, FALSE, sizeof (Event));

  while (xmlTextReaderRead (reader) == 1)
    switch (xmlTextReaderNodeType (reader))
      {
      case XML_READER_TYPE_ELEMENT:
        note_element (events, reader);
        break;
      case XML_READER_TYPE_END_ELEMENT:
        note (events, CLOSE, NULL, NULL);
        break;
      case XML_READER_TYPE_TEXT:
        note (events, TEXT, NULL, xmlTextReaderConstValue (reader));
        break;
      default:
        break;
      }
  xmlFreeTextReader (reader);
  return events;
}

static void
write_ours (void *data)
{
  Bench *bench = data;
  GBytes *bytes = em_quote_file_write (&bench->file, NULL);

  em_bench_demand (bytes != NULL && g_bytes_equal (bytes, bench->bytes), "what was written is not what was read");
  g_bytes_unref (bytes);
}

static void
write_event (xmlTextWriterPtr writer, const Event *event)
{
  switch (event->type)
    {
    case OPEN:
      xmlTextWriterStartElement (writer, (const xmlChar *) event->name);
      break;
    case ATTRIBUTE:
      xmlTextWriterWriteAttribute (writer, (const xmlChar *) event->name, (const xmlChar *) event->value);
      break;
    case TEXT:
      xmlTextWriterWriteString (writer, (const xmlChar *) event->value);
      break;
    case CLOSE:
      xmlTextWriterEndElement (writer);
      break;
    }
}

static void
write_plain (void *data)
{
  Bench *bench = data;
  xmlBufferPtr buffer = xmlBufferCreateSize (1u << 16);
  xmlTextWriterPtr writer = xmlNewTextWriterMemory (buffer, 0);

  xmlBufferSetAllocationScheme (buffer, XML_BUFFER_ALLOC_DOUBLEIT);
  xmlTextWriterSetIndent (writer, 1);
  xmlTextWriterSetIndentString (writer, (const xmlChar *) "  ");
  xmlTextWriterStartDocument (writer, NULL, "UTF-8", NULL);
  for (guint i = 0; i < bench->events->len; i++)
    write_event (writer, &g_array_index (bench->events, Event, i));
  xmlTextWriterEndDocument (writer);
  xmlFreeTextWriter (writer);
  bench->plain_size = (gsize) xmlBufferLength (buffer);
  xmlBufferFree (buffer);
}

/* ---- memory ---- */

static double
line_of_status_bytes (const char *name)
{
  g_autofree char *status = NULL;
  const char *at;

  em_bench_demand (g_file_get_contents ("/proc/self/status", &status, NULL, NULL), "no /proc/self/status");
  at = strstr (status, name);
  em_bench_demand (at != NULL, name);
  return 1024.0 * g_ascii_strtod (at + strlen (name), NULL);
}

/* In a process of its own, so that nothing before counts: bytes above what it had at its start. */
static int
load_and_tell (const char *path)
{
  double before = line_of_status_bytes ("VmRSS:"), peak, after;
  EmQuoteFile file;

  if (!em_quote_file_load (path, &file, NULL))
    return EXIT_FAILURE;
  peak = line_of_status_bytes ("VmHWM:");
  after = line_of_status_bytes ("VmRSS:");
  printf ("%.0f %.0f\n", peak - before, after - before);
  em_quote_file_clear (&file);
  return EXIT_SUCCESS;
}

static bool
measure_memory (const char *program, GBytes *bytes)
{
  g_autofree char *folder = g_dir_make_tmp ("estimend-bench-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (folder, "long.quote", NULL);
  const char *argv[] = { program, "--load", path, NULL };
  g_autofree char *told = NULL;
  gsize size;
  const char *text = g_bytes_get_data (bytes, &size);
  double peak, after;
  char *rest;
  int status;

  em_bench_demand (g_file_set_contents (path, text, (gssize) size, NULL)
                   && g_spawn_sync (NULL, (char **) argv, NULL, G_SPAWN_DEFAULT, NULL, NULL, &told, NULL, &status, NULL) && status == 0,
                   "the quote could not be loaded apart");
  peak = g_ascii_strtod (told, &rest);
  after = g_ascii_strtod (rest, NULL);
  g_remove (path);
  g_rmdir (folder);
  printf ("file %.1f MB; model, when loaded, %.1f MB; peak %.1f MB\n", (double) size / 1e6, after / 1e6, peak / 1e6);
  return em_bench_tell ("peak memory of opening 100,000 features, of the file", peak / (double) size, "times", 3.0);
}

int
main (int argc, char **argv)
{
  Bench bench = { 0 };
  double ours_s, plain_s;
  bool is_met;

  if (argc == 3 && strcmp (argv[1], "--load") == 0)
    return load_and_tell (argv[2]);
  bench.bytes = make_file ();
  is_met = measure_memory (argv[0], bench.bytes);
  em_quote_file_init (&bench.file);
  em_bench_pair_s (N_RUNS, read_ours, read_plain, &bench, &ours_s, &plain_s);
  printf ("reading %.1f MB: ours %.3f s, libxml2's reader alone %.3f s\n", (double) g_bytes_get_size (bench.bytes) / 1e6, ours_s, plain_s);
  is_met = em_bench_tell ("opening 100,000 features against a plain parse", ours_s / plain_s, "times", 2.0) && is_met;
  bench.events = list_events (bench.bytes);
  em_bench_pair_s (N_RUNS, write_ours, write_plain, &bench, &ours_s, &plain_s);
  printf ("writing: ours %.3f s, libxml2's writer alone %.3f s (%.1f MB)\n", ours_s, plain_s, (double) bench.plain_size / 1e6);
  is_met = em_bench_tell ("saving 100,000 features against a plain write", ours_s / plain_s, "times", 2.0) && is_met;
  for (guint i = 0; i < bench.events->len; i++)
    {
      g_free (g_array_index (bench.events, Event, i).name);
      g_free (g_array_index (bench.events, Event, i).value);
    }
  g_array_unref (bench.events);
  em_quote_file_clear (&bench.file);
  g_bytes_unref (bench.bytes);
  return is_met ? EXIT_SUCCESS : EXIT_FAILURE;
}
