/* test-hostile: files made to do harm, one of each trick for each kind of file that is XML, and for the tables and the index.
 *
 * Each is refused with a sentence, in bounded memory and time, and reads nothing but what it was given: the programs that read them
 * here are ended by the system if they ask for a socket, another program or, where the file is in memory, any other file.
 *
 * Tricks: XML 1.0 (fifth edition) 2.2 characters, 2.6 instructions, 2.8 prolog, 4.1 references, 4.3.3 encodings; Namespaces in
 * XML 1.0; RFC 3629 3 (overlong forms, surrogates). "Billion laughs" and external entities are well known; see CWE-776, CWE-611.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-book-file.h"
#include "em-lock.h"
#include "em-price-list.h"
#include "em-recovery.h"
#include "em-register.h"
#include "em-test-file.h"
#include "em-test-quote.h"
#include "em-test-shelf.h"
#include "em-xml.h"

#include <linux/filter.h>
#include <linux/seccomp.h>
#include <signal.h>
#include <stdio.h>
#include <sys/prctl.h>
#include <sys/resource.h>
#include <sys/socket.h>
#include <sys/syscall.h>
#include <sys/wait.h>
#include <time.h>

static char *folder;

/* ---- a program that may do nothing but read ---- */

enum { MAY_READ_NOTHING, MAY_READ_FILES };

#define DENY(number) \
  BPF_JUMP (BPF_JMP | BPF_JEQ | BPF_K, number, 0, 1), BPF_STMT (BPF_RET | BPF_K, SECCOMP_RET_KILL_PROCESS)

static gboolean
lock_in (int may)
{
  struct sock_filter rules[] =
  {
    BPF_STMT (BPF_LD | BPF_W | BPF_ABS, offsetof (struct seccomp_data, nr)),
    DENY (SYS_socket), DENY (SYS_connect), DENY (SYS_execve), DENY (SYS_execveat),
    /* The last one is let go where files may be read. */
    DENY (SYS_openat),
    BPF_STMT (BPF_RET | BPF_K, SECCOMP_RET_ALLOW),
  };
  struct sock_fprog program = { G_N_ELEMENTS (rules), rules };

  if (may == MAY_READ_FILES)
    rules[G_N_ELEMENTS (rules) - 2] = (struct sock_filter) BPF_STMT (BPF_RET | BPF_K, SECCOMP_RET_ALLOW);
  return prctl (PR_SET_NO_NEW_PRIVS, 1, 0, 0, 0) == 0 && prctl (PR_SET_SECCOMP, SECCOMP_MODE_FILTER, &program) == 0;
}

/* Sanitizers and valgrind take their own time and memory, and say so. */
static int
slowness (void)
{
  const char *times = g_getenv ("CK_TIMEOUT_MULTIPLIER");

  return times != NULL ? atoi (times) : 1;
}

typedef enum { ENDS_REFUSED, ENDS_READ, ENDS_SPEECHLESS, ENDS_UNLOCKED, ENDS_KILLED } Ending;

typedef struct { Ending ending; double cpu_s; long grown_kib; } Outcome;

typedef gboolean (*Reading) (gpointer data, GError **error);

static Ending
judge (gboolean is_good, const GError *error)
{
  if (is_good)
    return error == NULL ? ENDS_READ : ENDS_SPEECHLESS;
  return error != NULL && error->domain == EM_FILE_ERROR && error->message[0] != '\0' && strlen (error->message) < 2000
         && g_utf8_validate (error->message, -1, NULL) ? ENDS_REFUSED : ENDS_SPEECHLESS;
}

/* Reads in a program of its own. */
static Outcome
read_locked_in (Reading reading, gpointer data, int may)
{
  Outcome outcome = { ENDS_KILLED, 0.0, 0 };
  struct rusage before, used;
  int status;
  pid_t child;

  getrusage (RUSAGE_SELF, &before);
  child = fork ();
  if (child == 0)
    {
      g_autoptr (GError) error = NULL;
      struct rlimit cpu = { 60u * (guint) slowness (), 60u * (guint) slowness () };
      setrlimit (RLIMIT_CPU, &cpu);
      if (!lock_in (may))
        _exit (ENDS_UNLOCKED);
      gboolean is_good = reading (data, &error);
      _exit (judge (is_good, error));
    }
  ck_assert_int_eq (wait4 (child, &status, 0, &used), child);
  if (WIFEXITED (status))
    outcome.ending = (Ending) WEXITSTATUS (status);
  outcome.cpu_s = (double) used.ru_utime.tv_sec + (double) used.ru_stime.tv_sec + (double) (used.ru_utime.tv_usec + used.ru_stime.tv_usec) / 1e6;
  outcome.grown_kib = used.ru_maxrss - before.ru_maxrss;
  return outcome;
}

/* The locks hold: what they are there to stop is stopped. */
static gboolean
ask_for_socket (gpointer data, GError **error)
{
  (void) data;
  (void) error;
  return socket (AF_INET, SOCK_STREAM, 0) >= 0;
}

static gboolean
ask_for_file (gpointer data, GError **error)
{
  (void) data;
  (void) error;
  return open ("/etc/passwd", O_RDONLY) >= 0;
}

START_TEST (locks_hold)
{
  ck_assert_int_eq (read_locked_in (ask_for_socket, NULL, MAY_READ_FILES).ending, ENDS_KILLED);
  ck_assert_int_eq (read_locked_in (ask_for_file, NULL, MAY_READ_NOTHING).ending, ENDS_KILLED);
  ck_assert_int_eq (read_locked_in (ask_for_file, NULL, MAY_READ_FILES).ending, ENDS_READ);
}
END_TEST

/* ---- the readers ---- */

static gboolean
parse_quote (GBytes *bytes, GError **error)
{
  EmQuoteFile file;
  gboolean is_good = em_quote_file_parse (bytes, "hostile", &file, error);

  if (is_good)
    em_quote_file_clear (&file);
  return is_good;
}

static gboolean
parse_rates (GBytes *bytes, GError **error)
{
  EmRates rates;
  gboolean is_good = em_rates_parse (bytes, "hostile", &rates, error);

  if (is_good)
    em_rates_clear (&rates);
  return is_good;
}

static gboolean
parse_catalogue (GBytes *bytes, GError **error)
{
  EmCatalogue catalogue;
  gboolean is_good = em_catalogue_parse (bytes, "hostile", &catalogue, error);

  if (is_good)
    em_catalogue_clear (&catalogue);
  return is_good;
}

static gboolean
parse_clipboard (GBytes *bytes, GError **error)
{
  EmQuote quote;
  gsize size;
  const char *xml = g_bytes_get_data (bytes, &size);
  gboolean is_good;

  em_quote_init (&quote);
  is_good = em_features_from_xml (xml, (gssize) size, &quote, error);
  em_quote_clear (&quote);
  return is_good;
}

static gboolean
parse_journal (GBytes *bytes, GError **error)
{
  EmQuoteFile file;
  gboolean is_good = em_recovery_parse (bytes, "hostile", &file, error);

  if (is_good)
    em_quote_file_clear (&file);
  return is_good;
}

static char *
good_features (void)
{
  EmFeature feature;
  char *xml;

  em_feature_init (&feature, em_kinds[0]);
  feature.id = 1;
  xml = em_features_to_xml (&feature, 1);
  em_feature_clear (&feature);
  return xml;
}

static char *
good_of (int file)
{
  ck_assert (em_test_files[file].write (FALSE, NULL));
  return em_test_file_dup_content (&em_test_files[file]);
}

static char *good_quote (void) { return good_of (EM_TEST_QUOTE_FILE); }
static char *good_rates (void) { return good_of (EM_TEST_RATES_FILE); }
static char *good_catalogue (void) { return good_of (EM_TEST_CATALOGUE_FILE); }
static char *good_journal (void) { return good_of (EM_TEST_JOURNAL_FILE); }

static const struct
{
  const char *name, *root;
  char     *(*dup_good) (void);
  gboolean  (*parse) (GBytes *bytes, GError **error);
} readers[] =
{
  { "quote", "<quote", good_quote, parse_quote },
  { "clipboard", "<features", good_features, parse_clipboard },
  { "rate book", "<rates", good_rates, parse_rates },
  { "catalogue", "<metals", good_catalogue, parse_catalogue },
  { "journal", "<journal", good_journal, parse_journal },
  { "quote in a journal", "<quote", good_journal, parse_journal },
};

/* ---- the tricks ---- */

typedef enum { IN_PROLOG, IN_ROOT_TAG, IN_ROOT, AT_END, INSTEAD } Place;

/* A text of so many copies, between a head and a tail. */
typedef struct
{
  const char *name;
  Place       place;
  const char *head;
  gsize       n;
  const char *copy, *tail;
  gboolean    is_harmless;   /* read as if it were not there */
} Trick;

#define XI "<xi:include xmlns:xi='http://www.w3.org/2001/XInclude' href="

static const Trick tricks[] =
{
  /* document types and entities */
  { "document type", IN_PROLOG, "<!DOCTYPE x>", 0, "", "", FALSE },
  { "entity bomb", IN_PROLOG, "<!DOCTYPE x [<!ENTITY a 'ha'><!ENTITY b '&a;&a;&a;&a;&a;&a;&a;&a;'><!ENTITY c '&b;&b;&b;&b;&b;&b;'>]>", 0, "", "", FALSE },
  { "long entity", IN_PROLOG, "<!DOCTYPE x [<!ENTITY a '", 1 << 20, "ha", "'>]>", FALSE },
  { "file as entity", IN_PROLOG, "<!DOCTYPE x [<!ENTITY a SYSTEM 'file:///etc/passwd'>]>", 0, "", "", FALSE },
  { "entity over the network", IN_PROLOG, "<!DOCTYPE x [<!ENTITY a SYSTEM 'http://127.0.0.1:9/a'>]>", 0, "", "", FALSE },
  { "parameter entity", IN_PROLOG, "<!DOCTYPE x [<!ENTITY % a SYSTEM 'http://127.0.0.1:9/a'>%a;]>", 0, "", "", FALSE },
  { "document type over the network", IN_PROLOG, "<!DOCTYPE x PUBLIC '-//x' 'http://127.0.0.1:9/x.dtd'>", 0, "", "", FALSE },
  { "document type behind a comment", IN_PROLOG, "<!-- -->\n<?go on?>\n<!DOCTYPE x>", 0, "", "", FALSE },
  { "document type in small letters", IN_PROLOG, "<!doctype x>", 0, "", "", FALSE },
  { "document type in the root", IN_ROOT, "<!DOCTYPE x>", 0, "", "", FALSE },
  { "entity in the root", IN_ROOT, "<!ENTITY a 'b'>", 0, "", "", FALSE },
  { "document type at the end", AT_END, "<!DOCTYPE x>", 0, "", "", FALSE },
  { "entity nobody declared", IN_ROOT, "&a;", 0, "", "", FALSE },
  { "entity nobody declared, in an attribute", IN_ROOT_TAG, " a='&b;'", 0, "", "", FALSE },
  /* other ways out */
  { "inclusion of a file", IN_ROOT, XI "'file:///etc/passwd'/>", 0, "", "", FALSE },
  { "inclusion over the network", IN_ROOT, XI "'http://127.0.0.1:9/a'/>", 0, "", "", FALSE },
  { "schema over the network", IN_ROOT_TAG, " xmlns:i='http://www.w3.org/2001/XMLSchema-instance' i:schemaLocation='a http://127.0.0.1:9/a'", 0, "", "", FALSE },
  { "base over the network", IN_ROOT_TAG, " xml:base='http://127.0.0.1:9/'", 0, "", "", FALSE },
  { "style sheet over the network", IN_PROLOG, "<?xml-stylesheet type='text/xsl' href='http://127.0.0.1:9/a'?>", 0, "", "", TRUE },
  { "schema by an instruction", IN_PROLOG, "<?xml-model href='http://127.0.0.1:9/a'?>", 0, "", "", TRUE },
  /* size */
  { "nested 100,000 deep", IN_ROOT, "", 100000, "<a>", "", FALSE },
  { "100,000 attributes that are one", IN_ROOT_TAG, "", 100000, " a='1'", "", FALSE },
  { "attribute of 100 kB", IN_ROOT_TAG, " a='", 100000, "b", "'", FALSE },
  { "attribute of 12 MB", IN_ROOT_TAG, " a='", 12 << 20, "b", "'", FALSE },
  { "attribute that never ends", IN_ROOT_TAG, " a='", 12 << 20, "b", "", FALSE },
  { "text of 12 MB", IN_ROOT, "", 12 << 20, "b", "", FALSE },
  { "unparsed text of 12 MB", IN_ROOT, "<![CDATA[", 12 << 20, "<", "]]>", FALSE },
  { "unparsed text that never ends", IN_ROOT, "<![CDATA[", 1 << 20, "]", "", FALSE },
  { "comment that never ends", IN_PROLOG, "<!--", 1 << 20, " ", "", FALSE },
  { "comment that never ends, in the root", IN_ROOT, "<!--", 1 << 20, " ", "", FALSE },
  { "instruction that never ends", IN_PROLOG, "<?a ", 1 << 20, "?", "", FALSE },
  { "instruction that never ends, in the root", IN_ROOT, "<?a ", 1 << 20, "?", "", FALSE },
  { "a million instructions", IN_ROOT, "", 1000000, "<?a?>", "", FALSE },
  { "a million comments", IN_ROOT, "", 1000000, "<!---->", "", FALSE },
  { "a million blanks", IN_ROOT, "", 1000000, "\n", "", TRUE },
  { "comment of 8 MB", IN_PROLOG, "<!--", 8 << 20, "-a", "-->", FALSE },
  { "name of 1 MB", IN_ROOT, "<", 1 << 20, "a", "/>", FALSE },
  { "a million references", IN_ROOT_TAG, " a='", 1000000, "&#65;", "'", FALSE },
  { "a million elements that do not belong", IN_ROOT, "", 1000000, "<a/>", "", FALSE },
  { "tags that never end", IN_ROOT, "", 1000000, "<a ", "", FALSE },
  { "ends without a beginning", IN_ROOT, "", 1000000, "</a>", "", FALSE },
  /* characters */
  { "reference to NUL", IN_ROOT_TAG, " a='&#0;'", 0, "", "", FALSE },
  { "reference to a control", IN_ROOT_TAG, " a='&#x1F;'", 0, "", "", FALSE },
  { "reference to half a character", IN_ROOT_TAG, " a='&#xD800;'", 0, "", "", FALSE },
  { "reference beyond the last", IN_ROOT_TAG, " a='&#x110000;'", 0, "", "", FALSE },
  { "reference past all bounds", IN_ROOT_TAG, " a='&#", 100, "9", ";'", FALSE },
  { "control", IN_ROOT, "\x01", 0, "", "", FALSE },
  { "U+FFFE", IN_ROOT, "\xef\xbf\xbe", 0, "", "", FALSE },
  { "overlong", IN_ROOT, "\xc0\x80", 0, "", "", FALSE },
  { "overlong bracket", IN_ROOT, "\xc0\xbc" "a>", 0, "", "", FALSE },
  { "half a character", IN_ROOT, "\xed\xa0\x80", 0, "", "", FALSE },
  { "beyond the last character", IN_ROOT, "\xf4\x90\x80\x80", 0, "", "", FALSE },
  { "cut character at the end", AT_END, "\xe2\x82", 0, "", "", FALSE },
  { "Latin-1", IN_ROOT, "<!-- caf\xe9 -->", 0, "", "", FALSE },
  /* names */
  { "attribute twice", IN_ROOT_TAG, " version='1.0'", 0, "", "", FALSE },
  { "prefix nobody declared", IN_ROOT, "<a:b/>", 0, "", "", FALSE },
  { "another name space", IN_ROOT, "<feature xmlns='urn:x'/>", 0, "", "", FALSE },
  { "prefix without a name space", IN_ROOT_TAG, " xmlns:a=''", 0, "", "", FALSE },
  { "xml for another name space", IN_ROOT_TAG, " xmlns:xml='urn:x'", 0, "", "", FALSE },
  { "two roots", AT_END, "<a/>", 0, "", "", FALSE },
  { "text behind the root", AT_END, "b", 0, "", "", FALSE },
  { "nothing", INSTEAD, "", 0, "", "", FALSE },
  { "blanks", INSTEAD, "", 1 << 20, " ", "", FALSE },
  { "only brackets", INSTEAD, "", 1 << 20, "<", "", FALSE },
  { "only quotes", INSTEAD, "<a b=", 1 << 20, "'", "", FALSE },
  { "declared another version", INSTEAD, "<?xml version='1.1'?><!DOCTYPE x><a/>", 0, "", "", FALSE },
  { "two marks before a document type", INSTEAD, "\xef\xbb\xbf\xef\xbb\xbf<!DOCTYPE x [<!ENTITY a 'b'>]>", 0, "", "<a/>", FALSE },
  { "declaration twice", INSTEAD, "<?xml version='1.0'?><?xml version='1.0' encoding='UTF-16'?><a/>", 0, "", "", FALSE },
  { "archive", INSTEAD, "PK\x03\x04", 1000, "a", "", FALSE },
};

static gsize
place_in (const char *good, const char *root, Place place)
{
  const char *at = good;

  switch (place)
    {
    case IN_PROLOG:
      at = g_str_has_prefix (good, "<?xml") ? strstr (good, "?>") + 2 : good;
      break;
    case IN_ROOT_TAG:
      at = strstr (good, root) + strlen (root);
      break;
    case IN_ROOT:
      at = strchr (strstr (good, root), '>') + 1;
      break;
    case AT_END:
      at = good + strlen (good);
      break;
    case INSTEAD:
    default:
      break;
    }
  return (gsize) (at - good);
}

static GBytes *
play (const Trick *trick, const char *good, const char *root)
{
  gsize at = place_in (good, root, trick->place);
  GString *text = g_string_new_len (good, (gssize) at);

  g_string_append (text, trick->head);
  if (strlen (trick->copy) == 1)
    {
      g_autofree char *copies = g_strnfill (trick->n, trick->copy[0]);
      g_string_append (text, copies);
    }
  else
    for (gsize i = 0; i < trick->n; i++)
      g_string_append (text, trick->copy);
  g_string_append (text, trick->tail);
  if (trick->place != INSTEAD)
    g_string_append (text, good + at);
  return g_string_free_to_bytes (text);
}

/* ---- asking ---- */

typedef struct { gboolean (*parse) (GBytes *bytes, GError **error); GBytes *bytes; } Parsing;

static gboolean
parse_it (gpointer data, GError **error)
{
  Parsing *parsing = data;

  return parsing->parse (parsing->bytes, error);
}

typedef struct { double cpu_s; long grown_kib; int n; } Worst;

static void
check_outcome (const char *reader, const char *trick, const Outcome *outcome, Ending wanted, gsize size, Worst *worst)
{
  static const char *const endings[] = { "refused", "read", "without a proper sentence", "not locked in", "killed" };

  ck_assert_msg (outcome->ending == wanted, "%s, %s: %s, after %.1f s", reader, trick, endings[outcome->ending], outcome->cpu_s);
  /* A second for each 10 MB and what little there is to it. */
  ck_assert_msg (outcome->cpu_s < (1.0 + (double) size / 1e7) * slowness (), "%s, %s: %.1f s for %zu kB", reader, trick, outcome->cpu_s, size / 1000);
  ck_assert_msg (slowness () > 1 || (gsize) MAX (outcome->grown_kib, 0) < 16384 + 4 * size / 1024, "%s, %s: %ld KiB for %zu", reader, trick,
                 outcome->grown_kib, size / 1024);
  worst->cpu_s = MAX (worst->cpu_s, outcome->cpu_s);
  worst->grown_kib = MAX (worst->grown_kib, outcome->grown_kib);
  worst->n++;
}

static Ending
try_one (gsize reader, const char *name, GBytes *bytes, gboolean is_harmless, Worst *worst)
{
  Parsing parsing = { readers[reader].parse, bytes };
  Outcome outcome = read_locked_in (parse_it, &parsing, MAY_READ_NOTHING);

  if (outcome.ending != ENDS_UNLOCKED)
    check_outcome (readers[reader].name, name, &outcome, is_harmless ? ENDS_READ : ENDS_REFUSED, g_bytes_get_size (bytes), worst);
  return outcome.ending;
}

START_TEST (tricks_of_xml)
{
  g_autofree char *good = readers[_i].dup_good ();
  g_autoptr (GBytes) untouched = g_bytes_new (good, strlen (good));
  Worst worst = { 0.0, 0, 0 };

  if (try_one ((gsize) _i, "untouched", untouched, TRUE, &worst) == ENDS_UNLOCKED)
    {
      printf ("not tested: the system locks nobody in\n");
      return;
    }
  for (gsize i = 0; i < G_N_ELEMENTS (tricks); i++)
    {
      g_autoptr (GBytes) bytes = play (&tricks[i], good, readers[_i].root);
      try_one ((gsize) _i, tricks[i].name, bytes, tricks[i].is_harmless, &worst);
    }
  printf ("%s: %d hostile files, at worst %.2f s and %ld MiB, no socket, no program, no other file\n", readers[_i].name, worst.n, worst.cpu_s,
          worst.grown_kib / 1024);
}
END_TEST

/* Attributes that all differ: parsers compare each with each. */
START_TEST (attributes_without_end)
{
  g_autofree char *good = readers[_i].dup_good ();
  gsize at = place_in (good, readers[_i].root, IN_ROOT_TAG);
  Worst worst = { 0.0, 0, 0 };

  for (int is_space = 0; is_space < 2; is_space++)
    {
      GString *text = g_string_new_len (good, (gssize) at);
      for (int i = 0; i < 400000; i++)
        g_string_append_printf (text, is_space == 1 ? " xmlns:a%d='urn:%d'" : " a%d='%d'", i, i);
      g_string_append (text, good + at);
      g_autoptr (GBytes) bytes = g_string_free_to_bytes (text);
      try_one ((gsize) _i, is_space == 1 ? "400,000 name spaces" : "400,000 attributes", bytes, FALSE, &worst);
    }
}
END_TEST

/* ---- encodings ---- */

static const struct { const char *name, *encoding, *mark, *declared; } encodings[] =
{
  { "UTF-16 with a mark", "UTF-16", "", NULL }, { "UTF-16, little end first", "UTF-16LE", "", NULL },
  { "UTF-16, big end first", "UTF-16BE", "", NULL }, { "UTF-16, little end first, marked", "UTF-16LE", "\xff\xfe", NULL },
  { "UTF-16, big end first, marked", "UTF-16BE", "\xfe\xff", NULL }, { "UTF-32", "UTF-32", "", NULL },
  { "UTF-32, big end first", "UTF-32BE", "", NULL }, { "EBCDIC", "IBM037", "", NULL }, { "UTF-7", "UTF-7", "", "UTF-7" },
  { "declared UTF-16", NULL, "", "UTF-16" }, { "declared Latin-1", NULL, "", "ISO-8859-1" }, { "declared ASCII", NULL, "", "US-ASCII" },
  { "declared Windows", NULL, "", "windows-1252" }, { "declared EBCDIC", NULL, "", "IBM037" }, { "declared nonsense", NULL, "", "x" },
  { "declared nothing", NULL, "", "" }, { "declared UTF-8 and more", NULL, "", "UTF-8-or-so" }, { "two marks", NULL, "\xef\xbb\xbf\xef\xbb\xbf", NULL },
};

START_TEST (other_encodings)
{
  g_autofree char *good = readers[_i].dup_good ();
  gsize prolog = place_in (good, readers[_i].root, IN_PROLOG);
  Worst worst = { 0.0, 0, 0 };

  for (gsize i = 0; i < G_N_ELEMENTS (encodings); i++)
    {
      g_autofree char *declaration = encodings[i].declared != NULL ? g_strdup_printf ("<?xml version='1.0' encoding='%s'?>", encodings[i].declared)
                                                                   : g_strdup ("<?xml version='1.0'?>");
      /* What another encoding has no place for is not what this is about. */
      g_autofree char *text = g_strconcat (declaration, good + prolog, NULL);
      g_autofree char *ascii = encodings[i].encoding != NULL ? g_str_to_ascii (text, "C") : g_strdup (text);
      gsize size = strlen (ascii), out = 0;
      g_autofree char *other = encodings[i].encoding != NULL ? g_convert (ascii, (gssize) size, encodings[i].encoding, "UTF-8", NULL, &out, NULL)
                                                             : g_strdup (ascii);
      if (other == NULL)
        continue;   /* this system's iconv has no such encoding */
      GByteArray *array = g_byte_array_new ();
      g_byte_array_append (array, (const guint8 *) encodings[i].mark, (guint) strlen (encodings[i].mark));
      g_byte_array_append (array, (const guint8 *) other, (guint) (encodings[i].encoding != NULL ? out : size));
      g_autoptr (GBytes) bytes = g_byte_array_free_to_bytes (array);
      try_one ((gsize) _i, encodings[i].name, bytes, FALSE, &worst);
    }
  ck_assert_int_gt (worst.n, 8);
}
END_TEST

/* A NUL in the first, the last and any thirty-seventh place. */
START_TEST (nul_anywhere)
{
  g_autofree char *good = readers[_i].dup_good ();
  gsize size = strlen (good), step = MAX (size / 37, 1);

  for (gsize at = 0; at < size; at += step)
    for (int instead = 0; instead < 2; instead++)
      {
        g_autoptr (GByteArray) array = g_byte_array_new ();
        g_autoptr (GError) error = NULL;
        g_byte_array_append (array, (const guint8 *) good, (guint) at);
        g_byte_array_append (array, (const guint8 *) "", 1);
        g_byte_array_append (array, (const guint8 *) good + at + instead, (guint) (size - at - (gsize) instead));
        g_autoptr (GBytes) bytes = g_byte_array_free_to_bytes (g_steal_pointer (&array));
        ck_assert_msg (!readers[_i].parse (bytes, &error), "%s: NUL at %zu", readers[_i].name, at);
        ck_assert_int_eq (judge (FALSE, error), ENDS_REFUSED);
      }
}
END_TEST

/* ---- two of one name ---- */

/* The first element of this name written twice. */
static const struct { int reader; const char *begins, *ends; } twice[] =
{
  { 0, "  <feature ", "</feature>\n" }, { 1, "<feature ", "/>" }, { 2, "  <machine ", "</machine>\n" },
  { 3, "  <base ", "</base>\n" }, { 3, "  <filler ", "</filler>\n" }, { 4, "<feature ", "</feature>\n" },
};

START_TEST (ids_twice)
{
  g_autofree char *good = readers[twice[_i].reader].dup_good ();
  const char *begin = strstr (good, twice[_i].begins), *end = begin != NULL ? strstr (begin, twice[_i].ends) : NULL;
  g_autoptr (GError) error = NULL;

  ck_assert_msg (end != NULL, "%s: no %s", readers[twice[_i].reader].name, twice[_i].begins);
  end += strlen (twice[_i].ends);
  GString *text = g_string_new_len (good, end - good);
  g_string_append_len (text, begin, end - begin);
  g_string_append (text, end);
  g_autoptr (GBytes) bytes = g_string_free_to_bytes (text);
  ck_assert_msg (!readers[twice[_i].reader].parse (bytes, &error), "%s: %s twice was read", readers[twice[_i].reader].name, twice[_i].begins);
  ck_assert_int_eq (judge (FALSE, error), ENDS_REFUSED);
  ck_assert_msg (strstr (error->message, "“id”") != NULL, "%s", error->message);
}
END_TEST

/* ---- what a newer version wrote ---- */

#define TEN_ATTRIBUTES(c) c "0='' " c "1='' " c "2='' " c "3='' " c "4='' " c "5='' " c "6='' " c "7='' " c "8='' " c "9='' "
#define MANY_ATTRIBUTES TEN_ATTRIBUTES ("a") TEN_ATTRIBUTES ("b") TEN_ATTRIBUTES ("c") TEN_ATTRIBUTES ("d") TEN_ATTRIBUTES ("e") TEN_ATTRIBUTES ("f")
#define NEWER "<quote xmlns='urn:estimend:quote' version='1.9'>"

static const Trick newer_tricks[] =
{
  { "8 million elements to keep", INSTEAD, NEWER "<a>", 8000000, "<b/>", "</a></quote>", FALSE },
  { "4 million attributes to keep", INSTEAD, NEWER "<a>", 4000000, "<b c='d'/>", "</a></quote>", FALSE },
  { "elements of 60 attributes to keep", INSTEAD, NEWER "<a>", 50000, "<b " MANY_ATTRIBUTES "/>", "</a></quote>", FALSE },
  { "4 million elements to keep, one by one", INSTEAD, NEWER, 4000000, "<b/>", "</quote>", FALSE },
  { "texts of 40 MB to keep", INSTEAD, NEWER, 40, "<b>@</b>", "</quote>", FALSE },
  { "nested to be kept", INSTEAD, NEWER, 200, "<b>", "</quote>", FALSE },
  { "entity to be kept", INSTEAD, NEWER "<b>&c;</b></quote>", 0, "", "", FALSE },
  { "one thing to keep", INSTEAD, NEWER "<b c='d'>e</b></quote>", 0, "", "", TRUE },
};

/* In a quote's own file, and in a journal, which may be no way round its limits. */
static const struct { int reader; const char *before, *behind; } around[] =
{
  { 0, "", "" }, { 5, "<journal xmlns='urn:estimend:recovery' version='1.0'>", "</journal>" },
};

/* One for each trick and each place: memory is measured against a program that has freed nothing large before. */
START_TEST (too_much_to_keep)
{
  const Trick *trick = &newer_tricks[_i / (int) G_N_ELEMENTS (around)];
  gsize at = (gsize) _i % G_N_ELEMENTS (around), reader = (gsize) around[at].reader;
  g_autofree char *megabyte = g_strnfill (1 << 20, 'e');
  g_auto (GStrv) parts = g_strsplit (trick->copy, "@", 2);
  g_autofree char *copy = g_strjoinv (megabyte, parts);
  g_autofree char *head = g_strconcat (around[at].before, trick->head, NULL), *tail = g_strconcat (trick->tail, around[at].behind, NULL);
  const Trick filled = { trick->name, trick->place, head, trick->n, copy, tail, trick->is_harmless };
  g_autoptr (GBytes) bytes = play (&filled, "", "");
  Worst worst = { 0.0, 0, 0 };

  if (try_one (reader, trick->name, bytes, trick->is_harmless, &worst) != ENDS_UNLOCKED)
    printf ("%s, %s: %.2f s and %ld MiB for %zu MB\n", readers[reader].name, trick->name, worst.cpu_s, worst.grown_kib / 1024,
            g_bytes_get_size (bytes) / 1000000);
}
END_TEST

/* Things to keep in each of many lines: saved in a time that grows with their number, and the same again. */
static double
save_lines_s (int n)
{
  GString *text = g_string_new (NEWER);
  EmQuoteFile file;
  clock_t before;

  for (int i = 0; i < n; i++)
    g_string_append_printf (text, "<extra label='E %d' cost='100' vendor='V %d'/>", i, i);
  g_string_append (text, "</quote>");
  g_autoptr (GBytes) bytes = g_string_free_to_bytes (text), once = NULL, again = NULL;
  ck_assert (em_quote_file_parse (bytes, "newer", &file, NULL));
  ck_assert_uint_eq (file.n_kept, (guint) n);
  before = clock ();
  once = em_quote_file_write (&file, NULL);
  double took_s = (double) (clock () - before) / CLOCKS_PER_SEC;
  em_quote_file_clear (&file);
  ck_assert (em_quote_file_parse (once, "again", &file, NULL));
  again = em_quote_file_write (&file, NULL);
  em_quote_file_clear (&file);
  ck_assert (g_bytes_equal (once, again));
  g_autofree char *xml = g_strndup (g_bytes_get_data (once, NULL), g_bytes_get_size (once));
  g_autofree char *last = g_strdup_printf ("vendor=\"V %d\"", n - 1);
  ck_assert_ptr_nonnull (strstr (xml, last));
  return took_s;
}

START_TEST (much_to_keep)
{
  double took_s = save_lines_s (20000);

  printf ("20,000 lines with something to keep in each: saved in %.2f s\n", took_s);
  ck_assert_msg (took_s < 2.0 * slowness (), "%.2f s", took_s);
}
END_TEST

/* What is kept of one record leaves room for all that this version can add, so that what was saved can be opened. */
START_TEST (attributes_to_keep)
{
  for (int n = 20; n <= 30; n++)
    {
      GString *text = g_string_new (NEWER "<feature id='1' kind='edge-nick'");
      EmQuoteFile file;
      g_autoptr (GError) error = NULL;
      for (int i = 0; i < n; i++)
        g_string_append_printf (text, " new%d='%d'", i, i);
      g_string_append (text, "/></quote>");
      g_autoptr (GBytes) bytes = g_string_free_to_bytes (text);
      gboolean is_good = em_quote_file_parse (bytes, "newer", &file, &error);
      ck_assert_msg (is_good == (n <= 24), "%d attributes: %s", n, error != NULL ? error->message : "read");
      if (!is_good)
        continue;
      EmFeature edited;
      em_feature_init (&edited, file.quote.feature[0].kind);
      em_test_fill_feature (&edited, 3);
      edited.id = 1;
      ck_assert (em_feature_set_text (&edited, EM_FEATURE_EXTRA, file.quote.feature[0].text[EM_FEATURE_EXTRA]) == EM_OK);
      em_feature_clear (&file.quote.feature[0]);
      file.quote.feature[0] = edited;
      g_autoptr (GBytes) saved = em_quote_file_write (&file, NULL);
      em_quote_file_clear (&file);
      ck_assert_msg (em_quote_file_parse (saved, "saved", &file, &error), "%s", error != NULL ? error->message : "");
      ck_assert_uint_eq (file.n_kept, 1);
      em_quote_file_clear (&file);
    }
}
END_TEST

/* ---- files of a gigabyte ---- */

static gboolean
load_quote (const char *path, GError **error)
{
  EmQuoteFile file;

  return em_quote_file_load (path, &file, error);
}

static gboolean
load_rates (const char *path, GError **error)
{
  EmRates rates;

  return em_rates_load (path, &rates, error);
}

static gboolean
load_catalogue (const char *path, GError **error)
{
  EmCatalogue catalogue;

  return em_catalogue_load (path, &catalogue, error);
}

static gboolean
load_journal (const char *path, GError **error)
{
  const EmRecovered recovered = { (char *) path, NULL, (char *) path, 0 };
  EmQuoteFile file;

  return em_recovery_read (&recovered, &file, error);
}

static gboolean
load_price_list (const char *path, GError **error)
{
  EmCatalogue catalogue;
  EmCurrency currency;

  em_catalogue_init (&catalogue);
  return em_currency_find ("EUR", &currency) && em_price_list_load (path, &catalogue, &currency, error) != NULL;
}

static gboolean
load_lock (const char *path, GError **error)
{
  (void) path;
  g_autofree char *quote = g_build_filename (folder, "q", NULL);
  EmLock *lock = em_lock_take (quote, error);

  em_lock_free (lock);
  return lock != NULL;
}

static const struct { const char *name; gboolean (*load) (const char *path, GError **error); const char *file; } loaders[] =
{
  { "quote", load_quote, "a" }, { "rate book", load_rates, "a" }, { "catalogue", load_catalogue, "a" }, { "journal", load_journal, "a" },
  { "price list", load_price_list, "a" }, { "lock", load_lock, ".q.lock" },
};

typedef struct { gboolean (*load) (const char *path, GError **error); const char *path; } Loading;

static gboolean
load_it (gpointer data, GError **error)
{
  Loading *loading = data;

  return loading->load (loading->path, error);
}

/* A file of this size, blanks or holes. */
START_TEST (a_gigabyte)
{
  g_autofree char *path = g_build_filename (folder, loaders[_i].file, NULL);
  int fd = open (path, O_CREAT | O_WRONLY, 0600);
  Loading loading = { loaders[_i].load, path };
  /* A lock tells a name, which the system may have to ask another program for; GLib remembers it. */
  const char *names[] = { g_get_real_name (), g_get_host_name () };
  Worst worst = { 0.0, 0, 0 };

  ck_assert (names[0] != NULL && names[1] != NULL);
  ck_assert (fd >= 0 && ftruncate (fd, 1 << 30) == 0 && close (fd) == 0);
  Outcome outcome = read_locked_in (load_it, &loading, MAY_READ_FILES);
  if (outcome.ending == ENDS_UNLOCKED)
    return;
  check_outcome (loaders[_i].name, "1 GB", &outcome, ENDS_REFUSED, 0, &worst);
  printf ("%s of 1 GB: refused in %.3f s and %ld MiB\n", loaders[_i].name, worst.cpu_s, worst.grown_kib / 1024);
}
END_TEST

/* One that goes on growing while it is read is cut off where it is too large, not where it ends. The system makes it up. */
START_TEST (without_end)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GBytes) bytes = em_xml_read_file ("/proc/self/pagemap", 1 << 20, &error);

  ck_assert_ptr_null (bytes);
  ck_assert_msg (g_error_matches (error, EM_FILE_ERROR, EM_FILE_ERROR_TOO_LARGE) || g_error_matches (error, EM_FILE_ERROR, EM_FILE_ERROR_READ), "%s",
                 error->message);
}
END_TEST

/* ---- tables ---- */

static const Trick table_tricks[] =
{
  { "a cell of 7 MB", INSTEAD, "wire,size_mm,price,per\n\"", 7 << 20, "a", "\"\n", FALSE },
  { "quotes without end", INSTEAD, "wire,size_mm,price,per\n\"", 3 << 20, "\"\"", "", FALSE },
  { "a line of a million cells", INSTEAD, "wire,size_mm,price,per\n", 1000000, ",", "\n", FALSE },
  { "a head of a million cells", INSTEAD, "", 1000000, "price,", "\n", FALSE },
  { "a million lines", INSTEAD, "wire,size_mm,price,per\n", 1000000, "a,1,1,m\n", "", FALSE },
  { "a million blank lines", INSTEAD, "", 1000000, "\n", "", FALSE },
  { "carriage returns alone", INSTEAD, "wire,size_mm,price,per\r", 100000, "a,1,1,m\r", "", FALSE },
  { "nothing", INSTEAD, "", 0, "", "", FALSE },
  { "control", INSTEAD, "\x01\x02\x03", 0, "", "", FALSE },
  { "UTF-16", INSTEAD, "\xff\xfew", 0, "", "", FALSE },
  { "Latin-1", INSTEAD, "wire,size_mm,price,per\ncaf\xe9,1,1,m\n", 0, "", "", FALSE },
  { "overlong", INSTEAD, "wire,size_mm,price,per\n\xc0\x80,1,1,m\n", 0, "", "", FALSE },
  { "archive", INSTEAD, "PK\x03\x04", 1000, "a", "", FALSE },
};

static gboolean
parse_price_list (GBytes *bytes, GError **error)
{
  g_autofree char *metals = g_build_filename (g_getenv ("ESTIMEND_TEST_DATA"), "metals.xml", NULL);
  EmCatalogue catalogue;
  EmCurrency currency;
  EmPriceList *list = NULL;

  em_catalogue_init (&catalogue);
  if (em_currency_find ("EUR", &currency))
    list = em_price_list_parse (bytes, "hostile", &catalogue, &currency, error);
  em_price_list_free (list);
  return list != NULL;
}

START_TEST (tricks_of_tables)
{
  Worst worst = { 0.0, 0, 0 };

  for (gsize i = 0; i < G_N_ELEMENTS (table_tricks); i++)
    {
      g_autoptr (GBytes) bytes = play (&table_tricks[i], "", "");
      Parsing parsing = { parse_price_list, bytes };
      Outcome outcome = read_locked_in (parse_it, &parsing, MAY_READ_NOTHING);
      if (outcome.ending != ENDS_UNLOCKED)
        check_outcome ("price list", table_tricks[i].name, &outcome, ENDS_REFUSED, g_bytes_get_size (bytes), &worst);
    }
  printf ("price list: %d hostile files, at worst %.2f s and %ld MiB\n", worst.n, worst.cpu_s, worst.grown_kib / 1024);
}
END_TEST

/* ---- life ---- */

static void
make_folder (void)
{
  folder = em_test_folder_new ();
  em_test_shelf_open (folder);
}

static void
drop_folder (void)
{
  g_autofree char *recovery = g_build_filename (folder, "recovery", NULL);

  em_test_shelf_close ();
  em_test_folder_remove (recovery);
  em_test_folder_remove (folder);
  g_free (folder);
}

int
main (void)
{
  const EmTestRow rows[] =
  {
    EM_TEST (locks_hold), EM_TEST_LOOP (tricks_of_xml, readers), EM_TEST_LOOP (attributes_without_end, readers),
    EM_TEST_LOOP (other_encodings, readers), EM_TEST_LOOP (nul_anywhere, readers), EM_TEST_LOOP (ids_twice, twice),
    { too_much_to_keep, (int) (G_N_ELEMENTS (newer_tricks) * G_N_ELEMENTS (around)) }, EM_TEST (much_to_keep), EM_TEST (attributes_to_keep),
    EM_TEST_LOOP (a_gigabyte, loaders), EM_TEST (without_end), EM_TEST (tricks_of_tables),
  };

  return em_test_run_apart ("hostile", rows, (int) G_N_ELEMENTS (rows), make_folder, drop_folder);
}
