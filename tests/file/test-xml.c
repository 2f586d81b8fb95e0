/* test-xml: the hardened reader and the writer.
 *
 * What is hostile is told by the XML 1.0 recommendation (fifth edition): 2.8 prolog and DOCTYPE, 4.3.3 encodings, 2.2
 * characters; the entity bomb is the well-known "billion laughs".
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-test-file.h"
#include "em-xml.h"

#define NS "urn:estimend:test"
#define HEAD "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"

/* Reads a shelf of boxes, each with a size of 0 to 10 and perhaps a text; the sum of sizes. */
static double
read_shelf (const char *xml, gsize length, const EmXmlLimits *limits, GError **error)
{
  g_autoptr (GBytes) bytes = g_bytes_new (xml, length);
  g_autoptr (EmXmlReader) reader = em_xml_reader_new (bytes, "shelf.xml", NS, "shelf", limits, error);
  double sum = 0.0;

  if (reader == NULL)
    return -1.0;
  em_xml_version (reader, 1, 0);
  em_xml_begin (reader);
  while (em_xml_child (reader))
    if (em_xml_is (reader, "box"))
      sum += em_xml_real (reader, "size", 0.5, 0.0, 10.0);
    else if (em_xml_is (reader, "word"))
      sum += (double) strlen (em_xml_text (reader));
    else
      em_xml_refuse_element (reader);
  return em_xml_reader_finish (reader, error) ? sum : -1.0;
}

static const struct { const char *name, *xml; double sum; } good[] =
{
  { "plain", HEAD "<shelf xmlns='" NS "' version='1.0'><box size='2'/><box/></shelf>", 2.5 },
  { "no declaration", "<shelf xmlns='" NS "' version='1.0'><box size='2'/></shelf>\n", 2.0 },
  { "byte order mark", "\xef\xbb\xbf" HEAD "<shelf xmlns='" NS "' version='1.0'><box size='2'></box></shelf>", 2.0 },
  { "empty", "<shelf xmlns='" NS "' version='1.0'/>", 0.0 },
  { "comments", "<?xml version='1.0'?><!-- <!DOCTYPE no --><?go on?><shelf xmlns='" NS "' version='1.0'><!-- x --><box size='2'/></shelf><!-- y -->", 2.0 },
  { "prefix", "<s:shelf xmlns:s='" NS "' version='1.0'><s:box size='3'/></s:shelf>", 3.0 },
  { "references", "<shelf xmlns='" NS "' version='1.0'><word>a&amp;b&#x20AC;<![CDATA[<]]></word></shelf>", 7.0 },
  { "reference in a number", "<shelf xmlns='" NS "' version='1.0'><box size='&#50;.5'/></shelf>", 2.5 },
};

START_TEST (reads)
{
  GError *error = NULL;
  double sum = read_shelf (good[_i].xml, strlen (good[_i].xml), NULL, &error);

  ck_assert_msg (error == NULL, "%s: %s", good[_i].name, error != NULL ? error->message : "");
  ck_assert_msg (sum == good[_i].sum, "%s: %g", good[_i].name, sum);
}
END_TEST

#define NINES "999999999999999999999999999999999999999"   /* 39 */
#define BAD(name, xml, code, words) { name, xml, sizeof (xml) - 1, code, words }

static const struct { const char *name, *xml; gsize length; EmFileError code; const char *words; } bad[] =
{
  BAD ("nothing", "", EM_FILE_ERROR_NOT_OURS, "nothing"),
  BAD ("blanks", " \n ", EM_FILE_ERROR_NOT_OURS, "nothing"),
  BAD ("no XML", "%PDF-1.4", EM_FILE_ERROR_SYNTAX, "well-formed"),
  BAD ("other root", "<shop xmlns='" NS "' version='1.0'/>", EM_FILE_ERROR_NOT_OURS, "another kind"),
  BAD ("other name space", "<shelf xmlns='urn:x' version='1.0'/>", EM_FILE_ERROR_NOT_OURS, "another kind"),
  BAD ("no name space", "<shelf version='1.0'/>", EM_FILE_ERROR_NOT_OURS, "another kind"),
  BAD ("document type", HEAD "<!DOCTYPE shelf>\n<shelf xmlns='" NS "' version='1.0'/>", EM_FILE_ERROR_HOSTILE, "line 2"),
  BAD ("external document type", "<!DOCTYPE shelf SYSTEM 'http://127.0.0.1:9/x.dtd'><shelf xmlns='" NS "' version='1.0'/>", EM_FILE_ERROR_HOSTILE, "document type"),
  BAD ("entity bomb", "<!-- a --><!DOCTYPE l [<!ENTITY a 'ha'><!ENTITY b '&a;&a;&a;&a;&a;&a;&a;&a;&a;&a;'>"
       "<!ENTITY c '&b;&b;&b;&b;&b;&b;&b;&b;&b;&b;'>]><shelf xmlns='" NS "' version='1.0'><word>&c;</word></shelf>", EM_FILE_ERROR_HOSTILE, "entity"),
  BAD ("file entity", "<!DOCTYPE l [<!ENTITY a SYSTEM 'file:///etc/passwd'>]><shelf xmlns='" NS "' version='1.0'><word>&a;</word></shelf>", EM_FILE_ERROR_HOSTILE, "entity"),
  BAD ("undeclared entity", "<shelf xmlns='" NS "' version='1.0'><word>&a;</word></shelf>", EM_FILE_ERROR_SYNTAX, "well-formed"),
  BAD ("UTF-16", "\xff\xfe<\0s\0h\0", EM_FILE_ERROR_HOSTILE, "UTF-8"),
  BAD ("UTF-16 big-endian without a mark", "\0<\0s\0h", EM_FILE_ERROR_HOSTILE, "NUL"),
  BAD ("declared Latin-1", "<?xml version='1.0' encoding='ISO-8859-1'?><shelf xmlns='" NS "' version='1.0'/>", EM_FILE_ERROR_HOSTILE, "UTF-8"),
  BAD ("declared UTF-16", "<?xml version='1.0' encoding='UTF-16'?><shelf xmlns='" NS "' version='1.0'/>", EM_FILE_ERROR_HOSTILE, "UTF-8"),
  BAD ("Latin-1 bytes", "<shelf xmlns='" NS "' version='1.0'>\n<word>\xe9</word></shelf>", EM_FILE_ERROR_HOSTILE, "line 2"),
  BAD ("NUL", "<shelf xmlns='" NS "' version='1.0'>\n\n<word>a\0b</word></shelf>", EM_FILE_ERROR_HOSTILE, "line 3: there is a NUL"),
  BAD ("truncated", "<shelf xmlns='" NS "' version='1.0'><box size='2'/>", EM_FILE_ERROR_SYNTAX, "well-formed"),
  BAD ("two roots", "<shelf xmlns='" NS "' version='1.0'/><shelf/>", EM_FILE_ERROR_SYNTAX, "well-formed"),
  BAD ("attribute twice", "<shelf xmlns='" NS "' version='1.0'><box size='1' size='2'/></shelf>", EM_FILE_ERROR_SYNTAX, "well-formed"),
  BAD ("no version", "<shelf xmlns='" NS "'/>", EM_FILE_ERROR_VALUE, "“version”"),
  BAD ("no such version", "<shelf xmlns='" NS "' version='one'/>", EM_FILE_ERROR_VALUE, "“one”"),
  BAD ("newer", "<shelf xmlns='" NS "' version='2.0'/>", EM_FILE_ERROR_NEWER, "2.0"),
  BAD ("unknown element", "<shelf xmlns='" NS "' version='1.0'>\n<boat/></shelf>", EM_FILE_ERROR_VALUE, "line 2, “boat”"),
  BAD ("other's element", "<shelf xmlns='" NS "' version='1.0'>\n<box xmlns='urn:x'/></shelf>", EM_FILE_ERROR_VALUE, "line 2, “box”"),
  BAD ("unknown attribute", "<shelf xmlns='" NS "' version='1.0'>\n\n<box seize='1'/></shelf>", EM_FILE_ERROR_VALUE, "line 3, “seize”"),
  BAD ("unknown attribute of the root", "<shelf xmlns='" NS "' version='1.0' seize='1'/>", EM_FILE_ERROR_VALUE, "line 1, “seize”"),
  BAD ("attribute of another name space", "<shelf xmlns='" NS "' version='1.0' xml:lang='en'/>", EM_FILE_ERROR_VALUE, "“lang”"),
  BAD ("element in a box", "<shelf xmlns='" NS "' version='1.0'><box><box/></box></shelf>", EM_FILE_ERROR_VALUE, "“box”"),
  BAD ("text in a box", "<shelf xmlns='" NS "' version='1.0'><box>hello</box></shelf>", EM_FILE_ERROR_VALUE, "text"),
  BAD ("element in a text", "<shelf xmlns='" NS "' version='1.0'><word>a<b/></word></shelf>", EM_FILE_ERROR_VALUE, "“b”"),
  BAD ("half a number", "<shelf xmlns='" NS "' version='1.0'><box size='2 mm'/></shelf>", EM_FILE_ERROR_VALUE, "shelf.xml, line 1, “size”: “2 mm” is not a number"),
  BAD ("comma", "<shelf xmlns='" NS "' version='1.0'><box size='2,5'/></shelf>", EM_FILE_ERROR_VALUE, "not a number"),
  BAD ("no number", "<shelf xmlns='" NS "' version='1.0'><box size=''/></shelf>", EM_FILE_ERROR_VALUE, "not a number"),
  BAD ("infinite", "<shelf xmlns='" NS "' version='1.0'><box size='inf'/></shelf>", EM_FILE_ERROR_VALUE, "not a number"),
  BAD ("out of range", "<shelf xmlns='" NS "' version='1.0'><box size='10.5'/></shelf>", EM_FILE_ERROR_VALUE, "10.5 is outside 0 to 10"),
  /* A long word is shown as far as 40 bytes hold whole characters: 39, since é is two. */
  BAD ("cut within a character", "<shelf xmlns='" NS "' version='1.0'><box size='" NINES "é'/></shelf>", EM_FILE_ERROR_VALUE, "“" NINES "” is not a number"),
  BAD ("cut after a character", "<shelf xmlns='" NS "' version='1.0'><box size='" NINES "9é'/></shelf>", EM_FILE_ERROR_VALUE, "“" NINES "9” is not a number"),
};

START_TEST (refuses)
{
  g_autoptr (GError) error = NULL;
  double sum = read_shelf (bad[_i].xml, bad[_i].length, NULL, &error);

  ck_assert_msg (error != NULL && sum == -1.0, "%s: read", bad[_i].name);
  ck_assert_msg (g_error_matches (error, EM_FILE_ERROR, (int) bad[_i].code), "%s: code %d: %s", bad[_i].name, error->code, error->message);
  ck_assert_msg (g_utf8_validate (error->message, -1, NULL), "%s: a message that can't be shown", bad[_i].name);
  ck_assert_msg (strstr (error->message, bad[_i].words) != NULL, "%s: %s", bad[_i].name, error->message);
  ck_assert_msg (g_str_has_prefix (error->message, "shelf.xml"), "%s: %s", bad[_i].name, error->message);
}
END_TEST

/* Every prefix of a good file is refused, and nothing is read past its end. */
START_TEST (truncation)
{
  const char *xml = good[6].xml;

  for (gsize n = 0; n < strlen (xml); n++)
    {
      g_autoptr (GError) error = NULL;
      ck_assert_msg (read_shelf (xml, n, NULL, &error) == -1.0 && error != NULL, "%zu bytes were read", n);
    }
}
END_TEST

static GString *
nest (int depth)
{
  GString *xml = g_string_new ("<shelf xmlns='" NS "' version='1.0'>");

  for (int i = 0; i < depth; i++)
    g_string_append (xml, "<box>");
  for (int i = 0; i < depth; i++)
    g_string_append (xml, "</box>");
  return g_string_append (xml, "</shelf>");
}

START_TEST (limits)
{
  const EmXmlLimits small = { .size_max = 400, .depth_max = 4, .text_max = 20, .attribute_max = 10, .count_max = 5 };
  g_autofree char *fill = g_strnfill (300, '1'), *word = g_strnfill (21, 'w');
  g_autofree char *large = g_strdup_printf ("<shelf xmlns='" NS "' version='1.0'><!-- %s%s --></shelf>", fill, fill);
  g_autofree char *text = g_strdup_printf ("<shelf xmlns='" NS "' version='1.0'><word>%s</word></shelf>", word);
  g_autofree char *attribute = g_strdup ("<shelf xmlns='" NS "' version='1.0'><box size='0.1234567890123'/></shelf>");
  g_autofree char *many = g_strdup ("<shelf xmlns='" NS "' version='1.0'><box/><box/><box/><box/><box/></shelf>");
  const struct { const char *name, *xml; EmFileError code; } rows[] =
  {
    { "large", large, EM_FILE_ERROR_TOO_LARGE }, { "text", text, EM_FILE_ERROR_TOO_LARGE },
    { "attribute", attribute, EM_FILE_ERROR_TOO_LARGE }, { "many", many, EM_FILE_ERROR_TOO_LARGE },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (GError) error = NULL;
      ck_assert_msg (read_shelf (rows[i].xml, strlen (rows[i].xml), &small, &error) == -1.0, "%s", rows[i].name);
      ck_assert_msg (g_error_matches (error, EM_FILE_ERROR, (int) rows[i].code), "%s: %s", rows[i].name, error->message);
    }
}
END_TEST

/* A hundred thousand levels: refused by the first that does not belong, long before the stack matters. */
START_TEST (deep)
{
  g_autoptr (GError) error = NULL;
  GString *xml = nest (100000);

  ck_assert (read_shelf (xml->str, xml->len, NULL, &error) == -1.0);
  ck_assert (error != NULL);
  g_string_free (xml, TRUE);
}
END_TEST

/* More than 64 attributes, which no record of ours has. */
START_TEST (wide)
{
  g_autoptr (GError) error = NULL;
  GString *xml = g_string_new ("<shelf xmlns='" NS "' version='1.0'><box");

  for (int i = 0; i < 65; i++)
    g_string_append_printf (xml, " a%d='1'", i);
  g_string_append (xml, "/></shelf>");
  ck_assert (read_shelf (xml->str, xml->len, NULL, &error) == -1.0);
  ck_assert (g_error_matches (error, EM_FILE_ERROR, EM_FILE_ERROR_TOO_LARGE));
  g_string_free (xml, TRUE);
}
END_TEST

/* ---- files ---- */

START_TEST (reads_no_folder_pipe_or_giant)
{
  g_autofree char *folder = em_test_folder_new (), *pipe = g_build_filename (folder, "pipe", NULL);
  g_autofree char *giant = g_build_filename (folder, "giant", NULL), *none = g_build_filename (folder, "none", NULL);
  const struct { const char *path; EmFileError code; } rows[] =
  {
    { folder, EM_FILE_ERROR_READ }, { pipe, EM_FILE_ERROR_READ }, { giant, EM_FILE_ERROR_TOO_LARGE }, { none, EM_FILE_ERROR_READ },
  };
  int fd = open (giant, O_CREAT | O_WRONLY, 0600);

  ck_assert (fd >= 0 && ftruncate (fd, 1 << 30) == 0 && close (fd) == 0);
  ck_assert_int_eq (mkfifo (pipe, 0600), 0);
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (GError) error = NULL;
      ck_assert_ptr_null (em_xml_read_file (rows[i].path, 1 << 20, &error));
      ck_assert_msg (g_error_matches (error, EM_FILE_ERROR, (int) rows[i].code), "%s", error->message);
      ck_assert_msg (strstr (error->message, rows[i].path) != NULL, "%s", error->message);
    }
  em_test_folder_remove (folder);
}
END_TEST

/* ---- writing ---- */

START_TEST (writes)
{
  const char *raw = "<?xml version=\"1.0\"?>\n<raw/>\n";
  EmXmlWriter *writer = em_xml_writer_new ();
  g_autoptr (GError) error = NULL;

  em_xml_open (writer, "shelf");
  em_xml_put (writer, "xmlns", NS);
  em_xml_put (writer, "none", NULL);
  em_xml_put (writer, "text", "<\"a\" & b>\n\t\r\x01é");
  em_xml_put_real (writer, "real", 0.1);
  em_xml_put_real (writer, "absent", NAN);
  em_xml_put_integer (writer, "whole", G_MININT64);
  em_xml_put_boolean (writer, "is", TRUE);
  em_xml_open (writer, "box");
  em_xml_close (writer);
  em_xml_put_text (writer, "word", " two\nlines\r\"\xef\xbf\xbe" "end ");
  em_xml_put_text (writer, "nothing", NULL);
  em_xml_put_xml (writer, raw, strlen (raw));
  em_xml_close (writer);

  g_autoptr (GBytes) bytes = em_xml_writer_finish (writer, &error);
  gsize length;
  const char *text = g_bytes_get_data (bytes, &length);
  g_autofree char *whole = g_strndup (text, length);

  ck_assert_str_eq (whole,
    HEAD "<shelf xmlns=\"" NS "\" text=\"&lt;&quot;a&quot; &amp; b&gt;&#10;&#9;&#13; é\" real=\"0.1\" whole=\"-9223372036854775808\" is=\"yes\">\n"
    "  <box/>\n"
    "  <word> two\nlines&#13;\"   end </word>\n"
    "  <raw/>\n"
    "</shelf>\n");
}
END_TEST

/* The short way of writing numbers and the core's give the same digits, and they read back to the same number. */
START_TEST (numbers)
{
  static const double fixed[] = { 0.0, -0.0, 1.0, 0.1, 0.25, 0.254, 0.0254, 1e-3, 9.99e-4, 1e15, 123456789.0123, 1e10, 9999999999.9999, 0.3,
                                  1.0 / 3.0, 5e-324, 1.7976931348623157e308, 2.675, 1.005, 100.0, -12.5, 0.1 + 0.2, 4503599627370497.5 };
  GRand *random = g_rand_new_with_seed (20260101);

  for (int i = 0; i < 200000; i++)
    {
      double value = i < (int) G_N_ELEMENTS (fixed) ? fixed[i]
                     : i % 2 == 0 ? g_rand_int_range (random, -2000000, 2000000) / pow (10.0, i % 7)
                                  : g_rand_double_range (random, -1.0, 1.0) * pow (10.0, i % 20 - 5);
      char text[32];
      double back;
      EmXmlWriter *writer = em_xml_writer_new ();
      em_xml_open (writer, "a");
      em_xml_put_real (writer, "b", value);
      em_xml_close (writer);
      g_autoptr (GBytes) bytes = em_xml_writer_finish (writer, NULL);
      em_number_write (value, text, sizeof text);
      g_autofree char *expected = g_strdup_printf (HEAD "<a b=\"%s\"/>\n", text);
      ck_assert_msg (strlen (expected) == g_bytes_get_size (bytes) && memcmp (expected, g_bytes_get_data (bytes, NULL), strlen (expected)) == 0,
                     "%.17g: %.*s", value, (int) g_bytes_get_size (bytes), (const char *) g_bytes_get_data (bytes, NULL));
      ck_assert (em_number_read (text, &back) && back == value);
    }
  g_rand_free (random);
}
END_TEST

START_TEST (writes_no_broken_text)
{
  EmXmlWriter *writer = em_xml_writer_new ();
  g_autoptr (GError) error = NULL;

  em_xml_open (writer, "shelf");
  em_xml_put (writer, "text", "\xe9");
  em_xml_close (writer);
  ck_assert_ptr_null (em_xml_writer_finish (writer, &error));
  ck_assert (g_error_matches (error, EM_FILE_ERROR, EM_FILE_ERROR_WRITE));
  ck_assert_msg (strstr (error->message, "“text”") != NULL, "%s", error->message);
}
END_TEST

/* ---- keeping ---- */

/* One box with what is not known of it, written again. */
static char *
rewrite_kept (const char *xml)
{
  g_autoptr (GBytes) bytes = g_bytes_new (xml, strlen (xml)), out = NULL;
  g_autoptr (EmXmlReader) reader = em_xml_reader_new (bytes, "shelf.xml", NS, "shelf", NULL, NULL);
  EmXmlWriter *writer = em_xml_writer_new ();
  EmXmlKept kept = { NULL, 0 };
  double size = NAN;

  ck_assert_ptr_nonnull (reader);
  em_xml_version (reader, 1, 0);
  em_xml_keep_attributes (reader, &kept, "");
  em_xml_begin (reader);
  while (em_xml_child (reader))
    if (em_xml_is (reader, "box"))
      {
        size = em_xml_real (reader, "size", NAN, 0, 10);
        em_xml_keep_attributes (reader, &kept, "box");
      }
    else
      em_xml_keep_element (reader, &kept, "");
  ck_assert (em_xml_reader_finish (reader, NULL));
  ck_assert_uint_eq (kept.n_kept, 3);
  em_xml_open (writer, "shelf");
  em_xml_put (writer, "xmlns", NS);
  g_autofree char *version = g_strdup_printf ("1.%d", em_xml_kept_minor (writer, kept.text->str));
  em_xml_put (writer, "version", version);
  em_xml_put_kept (writer, kept.text->str, "nowhere");
  em_xml_open (writer, "box");
  em_xml_put_real (writer, "size", size);
  em_xml_put_kept (writer, kept.text->str, "box");
  em_xml_close (writer);
  em_xml_put_kept (writer, kept.text->str, "");
  em_xml_close (writer);
  out = em_xml_writer_finish (writer, NULL);
  ck_assert_ptr_nonnull (out);
  em_xml_kept_clear (&kept);
  return g_strndup (g_bytes_get_data (out, NULL), g_bytes_get_size (out));
}

START_TEST (keeps_what_is_newer)
{
  const char *xml = HEAD "<shelf xmlns=\"" NS "\" version=\"1.7\">\n"
    "  <box size=\"2\" colour=\"a&amp;b&#10;c\" weight=\"3\"/>\n"
    "  <boat xmlns=\"" NS "\" mast=\"1\"><sail>white &amp; large</sail></boat>\n"
    "  <o:oar xmlns:o=\"urn:other\"/>\n"
    "</shelf>\n";
  g_autofree char *once = rewrite_kept (xml), *twice = rewrite_kept (once);

  ck_assert_str_eq (once, xml);
  ck_assert_str_eq (twice, xml);
}
END_TEST

START_TEST (keeps_nothing_of_this_version)
{
  const char *xml = "<shelf xmlns='" NS "' version='1.0'><boat/></shelf>";
  g_autoptr (GBytes) bytes = g_bytes_new (xml, strlen (xml));
  g_autoptr (EmXmlReader) reader = em_xml_reader_new (bytes, "shelf.xml", NS, "shelf", NULL, NULL);
  g_autoptr (GError) error = NULL;
  EmXmlKept kept = { NULL, 0 };

  em_xml_version (reader, 1, 0);
  em_xml_begin (reader);
  while (em_xml_child (reader))
    em_xml_keep_element (reader, &kept, "");
  ck_assert (!em_xml_reader_finish (reader, &error));
  ck_assert_msg (strstr (error->message, "“boat”") != NULL, "%s", error->message);
  ck_assert_ptr_null (kept.text);
}
END_TEST

int
main (void)
{
  const EmTestRow rows[] =
  {
    EM_TEST_LOOP (reads, good), EM_TEST_LOOP (refuses, bad), EM_TEST (truncation), EM_TEST (limits), EM_TEST (deep), EM_TEST (wide),
    EM_TEST (reads_no_folder_pipe_or_giant), EM_TEST (writes), EM_TEST (numbers), EM_TEST (writes_no_broken_text), EM_TEST (keeps_what_is_newer),
    EM_TEST (keeps_nothing_of_this_version),
  };

  return em_test_run ("xml", rows, (int) G_N_ELEMENTS (rows));
}
