/* test-memory: every allocation while a file is read or written may fail: the first, then the second, and so on until the call
 * succeeds. After each it says so, has read or written all or nothing, and nothing it took is left taken.
 *
 * The parser's memory is counted by its own hooks (xmlMemSetup), that of this room and the engine by the linker's --wrap. GLib's is not:
 * it ends the program where there is none, by design.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-book-file.h"
#include "em-recovery.h"
#include "em-test-file.h"
#include "em-test-quote.h"

#include <libxml/parser.h>
#include <stdio.h>

enum { FAILURES_MAX = 100000 };

/* ---- counted memory ---- */

static struct { long n_live, n_parser_live, n_taken, fail_at; gboolean is_dead, is_on; } memory;

void *__real_malloc (size_t size);
void *__real_calloc (size_t n, size_t size);
void *__real_realloc (void *old, size_t size);
void  __real_free (void *old);
char *__real_strdup (const char *text);
void *__wrap_malloc (size_t size);
void *__wrap_calloc (size_t n, size_t size);
void *__wrap_realloc (void *old, size_t size);
void  __wrap_free (void *old);
char *__wrap_strdup (const char *text);

static gboolean
is_refused (void)
{
  long n = memory.n_taken;

  if (!memory.is_on)
    return FALSE;
  memory.n_taken++;
  return n == memory.fail_at || (memory.is_dead && n > memory.fail_at);
}

static void *
count (void *taken)
{
  memory.n_live += taken != NULL;
  return taken;
}

void *
__wrap_malloc (size_t size)
{
  return is_refused () ? NULL : count (__real_malloc (size));
}

void *
__wrap_calloc (size_t n, size_t size)
{
  return is_refused () ? NULL : count (__real_calloc (n, size));
}

void *
__wrap_realloc (void *old, size_t size)
{
  void *grown = is_refused () ? NULL : __real_realloc (old, size);

  return old == NULL ? count (grown) : grown;
}

char *
__wrap_strdup (const char *text)
{
  return is_refused () ? NULL : count (__real_strdup (text));
}

void
__wrap_free (void *old)
{
  memory.n_live -= old != NULL;
  __real_free (old);
}

/* The parser's, counted apart: in some corners it loses a little itself where it runs out. */
static void *
parser_malloc (size_t size)
{
  void *taken = is_refused () ? NULL : __real_malloc (size);

  memory.n_parser_live += taken != NULL;
  return taken;
}

static void *
parser_realloc (void *old, size_t size)
{
  void *grown = is_refused () ? NULL : __real_realloc (old, size);

  memory.n_parser_live += old == NULL && grown != NULL;
  return grown;
}

static char *
parser_strdup (const char *text)
{
  char *taken = is_refused () ? NULL : __real_strdup (text);

  memory.n_parser_live += taken != NULL;
  return taken;
}

static void
parser_free (void *old)
{
  memory.n_parser_live -= old != NULL;
  __real_free (old);
}

static void
begin (long fail_at, gboolean is_dead)
{
  memory.n_taken = 0;
  memory.fail_at = fail_at;
  memory.is_dead = is_dead;
  memory.is_on = TRUE;
}

/* Whether something was refused. */
static gboolean
end (void)
{
  memory.is_on = FALSE;
  xmlResetLastError ();   /* the parser keeps a copy of the last one */
  return memory.n_taken > memory.fail_at;
}

/* ---- reading ---- */

typedef union { EmQuoteFile quote; EmRates rates; EmCatalogue catalogue; EmQuote pasted; } Model;

static char *folder;

static gboolean
read_quote (GBytes *bytes, Model *out, GError **error)
{
  return em_quote_file_parse (bytes, "q", &out->quote, error);
}

static GBytes *
write_quote (const Model *model, GError **error)
{
  return em_quote_file_write (&model->quote, error);
}

static void
clear_quote (Model *model)
{
  em_quote_file_clear (&model->quote);
}

static gboolean
read_rates (GBytes *bytes, Model *out, GError **error)
{
  return em_rates_parse (bytes, "r", &out->rates, error);
}

static GBytes *
write_rates (const Model *model, GError **error)
{
  return em_rates_write (&model->rates, error);
}

static void
clear_rates (Model *model)
{
  em_rates_clear (&model->rates);
}

static gboolean
read_catalogue (GBytes *bytes, Model *out, GError **error)
{
  return em_catalogue_parse (bytes, "c", &out->catalogue, error);
}

static GBytes *
write_catalogue (const Model *model, GError **error)
{
  return em_catalogue_write (&model->catalogue, FALSE, error);
}

static void
clear_catalogue (Model *model)
{
  em_catalogue_clear (&model->catalogue);
}

/* The quote in a journal that is read from a file each time. */
static gboolean
read_journal (GBytes *bytes, Model *out, GError **error)
{
  g_autofree char *path = g_build_filename (folder, "a.journal", NULL);
  const EmRecovered recovered = { path, NULL, path, 0 };

  (void) bytes;
  return em_recovery_read (&recovered, &out->quote, error);
}

static void
write_journal (GBytes *quote)
{
  g_autofree char *path = g_build_filename (folder, "a.journal", NULL);
  const char *xml = strstr (g_bytes_get_data (quote, NULL), "<quote");
  g_autofree char *text = g_strdup_printf ("<journal xmlns='urn:estimend:recovery' version='1.0' title='a title' kept='1'>%s</journal>", xml);

  ck_assert (g_file_set_contents (path, text, -1, NULL));
}

static GBytes *
source_file (const char *folder_name, const char *name)
{
  g_autofree char *path = g_build_filename (g_getenv ("ESTIMEND_TEST_SOURCE"), folder_name, name, NULL);
  char *text;
  gsize size;

  ck_assert (g_file_get_contents (path, &text, &size, NULL));
  return g_bytes_new_take (text, size);
}

/* With every member, two of a kind, references in attributes and something of a newer version. */
static const struct
{
  const char *name, *folder, *file;
  gboolean  (*read) (GBytes *bytes, Model *out, GError **error);
  GBytes   *(*write) (const Model *model, GError **error);
  void      (*clear) (Model *model);
} kinds[] =
{
  { "newer quote", "tests/file/newer", "1.9.estimend", read_quote, write_quote, clear_quote },
  { "quote by hand", "tests/file/frozen", "by-hand-1.0.estimend", read_quote, write_quote, clear_quote },
  { "quote with its books", "tests/file/frozen", "quote-1.0.estimend", read_quote, write_quote, clear_quote },
  { "rate book", "data", "rates.xml", read_rates, write_rates, clear_rates },
  { "catalogue", "tests/file/frozen", "metals-1.0.xml", read_catalogue, write_catalogue, clear_catalogue },
  { "journal", "tests/file/newer", "1.9.estimend", read_journal, write_quote, clear_quote },
};

/* How far apart the failures are that are tried: every one up to some hundreds, a sample of those behind. */
static long
next_failure (long at)
{
  return at < 600 ? at + 1 : at + 1 + at / 150;
}

/* That it is told. As what: the parser itself takes some of its failures for errors of the file. */
static gboolean
check_told (const char *name, long at, const GError *error)
{
  ck_assert_msg (error != NULL && error->domain == EM_FILE_ERROR && error->message[0] != '\0', "%s, allocation %ld: no error", name, at);
  return strstr (error->message, "memory ran out") != NULL;
}

/* The same model as with all the memory in the world, told by what it is saved as. */
static void
check_whole (int kind, long at, Model *model, GBytes *wanted)
{
  g_autoptr (GBytes) saved = kinds[kind].write (model, NULL);

  ck_assert_msg (saved != NULL && g_bytes_equal (saved, wanted), "%s, allocation %ld: read in part, and nothing said", kinds[kind].name, at);
  kinds[kind].clear (model);
}

static GBytes *
prepare (int kind, Model *out)
{
  GBytes *bytes = source_file (kinds[kind].folder, kinds[kind].file);

  if (kinds[kind].read == read_journal)
    write_journal (bytes);
  ck_assert (kinds[kind].read (bytes, out, NULL));   /* also fills what the parser keeps for the life of the program */
  return bytes;
}

START_TEST (read_all_or_nothing)
{
  Model model, untouched, whole;
  g_autoptr (GBytes) bytes = prepare (_i, &whole), wanted = kinds[_i].write (&whole, NULL);
  int n_failures = 0, n_told = 0, n_named = 0;
  long parser_live = memory.n_parser_live;
  gboolean is_refused_once = TRUE;

  kinds[_i].clear (&whole);
  memset (&untouched, 0xa5, sizeof untouched);
  for (long at = 0; is_refused_once; at = next_failure (at))
    for (int is_dead = 0; is_dead < 2; is_dead++)
      {
        g_autoptr (GError) error = NULL;
        long live = memory.n_live;
        memcpy (&model, &untouched, sizeof model);
        begin (at, is_dead == 1);
        gboolean is_good = kinds[_i].read (bytes, &model, &error);
        is_refused_once = end ();
        n_failures += is_refused_once;
        ck_assert_msg (is_refused_once || is_good, "%s: %s", kinds[_i].name, error != NULL ? error->message : "");
        if (is_good)
          check_whole (_i, at, &model, wanted);
        else
          {
            n_named += check_told (kinds[_i].name, at, error);
            n_told++;
            ck_assert_msg (memcmp (&model, &untouched, sizeof model) == 0, "%s, allocation %ld: output touched", kinds[_i].name, at);
          }
        ck_assert_msg (memory.n_live == live, "%s, allocation %ld%s: %ld left taken", kinds[_i].name, at, is_dead ? " and all after" : "",
                       memory.n_live - live);
        ck_assert_int_lt (n_failures, FAILURES_MAX);
      }
  printf ("%s: read with %d failing allocations, refused %d times, %d of them for want of memory by name; the parser lost %ld pieces\n",
          kinds[_i].name, n_failures, n_told, n_named, memory.n_parser_live - parser_live);
  /* A copy of an element that it gives up half-way (libxml2 2.9.14): once, since reading ends there. */
  ck_assert_int_lt (memory.n_parser_live - parser_live, 50 * n_failures);
  ck_assert_int_gt (n_failures, 100);
  ck_assert_int_gt (n_named, n_told / 2);
}
END_TEST

START_TEST (written_whole_or_not)
{
  Model model;
  g_autoptr (GBytes) bytes = prepare (_i, &model), wanted = kinds[_i].write (&model, NULL);
  int n_failures = 0;
  gboolean is_refused_once = TRUE;

  for (long at = 0; is_refused_once; at = next_failure (at))
    for (int is_dead = 0; is_dead < 2; is_dead++)
      {
        g_autoptr (GError) error = NULL;
        long live = memory.n_live;
        begin (at, is_dead == 1);
        g_autoptr (GBytes) saved = kinds[_i].write (&model, &error);
        is_refused_once = end ();
        n_failures += is_refused_once;
        if (saved != NULL)
          ck_assert_msg (g_bytes_equal (saved, wanted), "%s, allocation %ld: written in part, and nothing said", kinds[_i].name, at);
        else
          check_told (kinds[_i].name, at, error);
        ck_assert_msg (is_refused_once || saved != NULL, "%s: %s", kinds[_i].name, error != NULL ? error->message : "");
        ck_assert_msg (memory.n_live == live, "%s, allocation %ld: %ld left taken", kinds[_i].name, at, memory.n_live - live);
      }
  printf ("%s: written with %d failing allocations\n", kinds[_i].name, n_failures);
  kinds[_i].clear (&model);
}
END_TEST

START_TEST (pasted_all_or_nothing)
{
  EmFeature feature;
  int n_failures = 0;
  gboolean is_refused_once = TRUE;

  em_feature_init (&feature, em_kinds[0]);
  em_test_fill_feature (&feature, 3);
  feature.id = 1;
  g_autofree char *xml = em_features_to_xml (&feature, 1);
  em_feature_clear (&feature);
  for (int first = 1; is_refused_once; first = 0)
    {
      EmQuote quote;
      g_autoptr (GError) error = NULL;
      em_quote_init (&quote);
      long live = memory.n_live;
      begin (first == 1 ? FAILURES_MAX : n_failures, FALSE);   /* the first fills what the parser keeps */
      gboolean is_good = em_features_from_xml (xml, -1, &quote, &error);
      is_refused_once = end () || first == 1;
      n_failures += is_refused_once && first == 0;
      if (!is_good)
        check_told ("pasted", n_failures, error);
      ck_assert_int_eq (quote.n_features, is_good ? 1 : 0);
      em_quote_clear (&quote);
      ck_assert_msg (first == 1 || memory.n_live == live, "allocation %d: %ld left taken", n_failures, memory.n_live - live);
    }
  ck_assert_int_gt (n_failures, 20);
}
END_TEST

/* ---- life ---- */

static void
make_folder (void)
{
  folder = em_test_folder_new ();
}

static void
drop_folder (void)
{
  em_test_folder_remove (folder);
  g_free (folder);
}

static void
say_nothing (void *data, const char *format, ...)
{
  (void) data;
  (void) format;
}

int
main (void)
{
  const EmTestRow rows[] =
  {
    EM_TEST_LOOP (read_all_or_nothing, kinds), EM_TEST_LOOP (written_whole_or_not, kinds), EM_TEST (pasted_all_or_nothing),
  };

  if (xmlMemSetup (parser_free, parser_malloc, parser_realloc, parser_strdup) != 0)
    return EXIT_FAILURE;
  xmlInitParser ();
  xmlSetGenericErrorFunc (NULL, say_nothing);   /* the parser's own complaints */
  return em_test_run_in ("memory", rows, (int) G_N_ELEMENTS (rows), make_folder, drop_folder);
}
