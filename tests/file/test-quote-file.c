/* test-quote-file: quotes round, by every member, spoiled in every way, and from a newer version.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-book-file.h"
#include "em-test-file.h"
#include "em-test-quote.h"

#include <locale.h>

#define HEAD "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
#define OPEN(version) "<quote xmlns=\"urn:estimend:quote\" version=\"" version "\""

static gboolean
parse (const char *text, EmQuoteFile *out_file, GError **error)
{
  g_autoptr (GBytes) bytes = g_bytes_new (text, strlen (text));

  return em_quote_file_parse (bytes, "q.estimend", out_file, error);
}

static char *
write_text (const EmQuoteFile *file)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GBytes) bytes = em_quote_file_write (file, &error);

  ck_assert_msg (bytes != NULL, "%s", error != NULL ? error->message : "");
  return g_strndup (g_bytes_get_data (bytes, NULL), g_bytes_get_size (bytes));
}

/* Writes, reads, compares, writes again, compares bytes. */
static void
go_round (const EmQuoteFile *file)
{
  g_autofree char *first = write_text (file), *second = NULL;
  g_autoptr (GError) error = NULL;
  EmQuoteFile back;

  ck_assert_msg (parse (first, &back, &error), "%s", error != NULL ? error->message : "");
  ck_assert_msg (em_quote_equal (&file->quote, &back.quote), "not the same quote:\n%s", first);
  ck_assert_uint_eq (file->quote.next_id, back.quote.next_id);
  ck_assert ((file->sent_rates != NULL) == (back.sent_rates != NULL));
  ck_assert (file->sent_rates == NULL || em_rates_equal (file->sent_rates, back.sent_rates));
  ck_assert (!back.is_newer_minor && back.n_kept == 0 && back.version_major == 1);
  second = write_text (&back);
  ck_assert_str_eq (first, second);
  em_quote_file_clear (&back);
}

static void
take_books (EmQuoteFile *file)
{
  const char *data = g_getenv ("ESTIMEND_TEST_DATA");
  g_autofree char *rates = g_build_filename (data, "rates.xml", NULL), *metals = g_build_filename (data, "metals.xml", NULL);

  file->sent_rates = g_new0 (EmRates, 1);
  file->sent_catalogue = g_new0 (EmCatalogue, 1);
  ck_assert (em_rates_load (rates, file->sent_rates, NULL));
  ck_assert (em_catalogue_load (metals, file->sent_catalogue, NULL));
  file->quote.has_sent_rates = true;
}

START_TEST (round_empty)
{
  EmQuoteFile file;
  g_autofree char *text = NULL;

  em_quote_file_init (&file);
  go_round (&file);
  text = write_text (&file);
  ck_assert_str_eq (text, HEAD OPEN ("1.3") "/>\n");
  em_quote_file_clear (&file);
}
END_TEST

START_TEST (round_full)
{
  EmQuoteFile file;

  em_quote_file_init (&file);
  em_test_quote_full (&file.quote);
  go_round (&file);
  take_books (&file);
  go_round (&file);
  em_quote_file_clear (&file);
}
END_TEST

/* A locale with a comma must not reach the file. */
START_TEST (round_in_german)
{
  EmQuoteFile file;

  if (setlocale (LC_ALL, "de_DE.UTF-8") == NULL)
    return;
  em_quote_file_init (&file);
  em_test_quote_full (&file.quote);
  go_round (&file);
  g_autofree char *there = write_text (&file);
  setlocale (LC_ALL, "C");
  g_autofree char *here = write_text (&file);
  ck_assert_str_eq (there, here);
  em_quote_file_clear (&file);
}
END_TEST

START_TEST (sent_metals_come_back)
{
  EmQuoteFile file, back;
  g_autofree char *text = NULL;

  em_quote_file_init (&file);
  take_books (&file);
  text = write_text (&file);
  ck_assert (parse (text, &back, NULL));
  ck_assert (back.quote.has_sent_rates);
  ck_assert_int_eq (back.sent_catalogue->n_bases, file.sent_catalogue->n_bases);
  ck_assert_int_eq (back.sent_catalogue->n_fillers, file.sent_catalogue->n_fillers);
  ck_assert_str_eq (back.sent_catalogue->base[0].id, file.sent_catalogue->base[0].id);
  em_quote_file_clear (&back);
  em_quote_file_clear (&file);
}
END_TEST

/* Text as customers write and clipboards bring it. XML 1.0 has no form feed: it becomes a blank, and the marks stay true. */
START_TEST (odd_texts)
{
  EmQuoteFile file, back;
  EmMark mark = { .start = 5, .length = 2 };

  em_quote_file_init (&file);
  em_quote_set_text (&file.quote, EM_QUOTE_NOTES, " \t<a>\f\xc3\xa4\r\n\"&amp;\" ]]> \n");
  em_quote_set_text (&file.quote, EM_QUOTE_CUSTOMER, " ");
  mark.start = 6;
  ck_assert (em_quote_add_mark_take (&file.quote, &mark) == EM_OK);
  mark = (EmMark) { .start = 20, .length = 200 };   /* past the end: not written */
  ck_assert (em_quote_add_mark_take (&file.quote, &mark) == EM_OK);
  g_autofree char *text = write_text (&file);
  ck_assert (parse (text, &back, NULL));
  ck_assert_str_eq (back.quote.text[EM_QUOTE_NOTES], " \t<a> \xc3\xa4\r\n\"&amp;\" ]]> \n");
  ck_assert_str_eq (back.quote.text[EM_QUOTE_CUSTOMER], " ");
  ck_assert_int_eq (back.quote.n_marks, 1);
  em_quote_file_clear (&back);
  em_quote_file_clear (&file);
}
END_TEST

START_TEST (save_and_load)
{
  g_autofree char *folder = em_test_folder_new (), *path = g_build_filename (folder, "Müller <1>.estimend", NULL);
  g_autoptr (GError) error = NULL;
  EmQuoteFile file, back;

  em_quote_file_init (&file);
  em_test_quote_full (&file.quote);
  ck_assert (em_quote_file_save (path, &file, NULL));
  ck_assert (em_quote_file_load (path, &back, NULL));
  ck_assert (em_quote_equal (&file.quote, &back.quote));
  em_quote_file_clear (&back);
  ck_assert (!em_quote_file_load (folder, &back, &error));
  ck_assert (g_error_matches (error, EM_FILE_ERROR, EM_FILE_ERROR_READ));
  em_quote_file_clear (&file);
  em_test_folder_remove (folder);
}
END_TEST

/* ---- spoiled ---- */

#define Q(rest) HEAD OPEN ("1.0") rest
#define F(rest) Q (">\n<feature id=\"1\" kind=\"edge-nick\"" rest "</quote>")

static const struct { const char *name, *xml; EmFileError code; const char *words; } bad[] =
{
  { "root", "<estimate xmlns='urn:estimend:quote' version='1.0'/>", EM_FILE_ERROR_NOT_OURS, "another kind of file" },
  { "version", HEAD OPEN ("2.0") "/>", EM_FILE_ERROR_NEWER, "line 2, “version”" },
  { "attribute", Q (" colour=\"red\"/>"), EM_FILE_ERROR_VALUE, "line 2, “colour”" },
  { "element", Q (">\n<colour/></quote>"), EM_FILE_ERROR_VALUE, "line 3, “colour”" },
  { "text twice", Q (">\n<number>1</number>\n<number>2</number></quote>"), EM_FILE_ERROR_VALUE, "line 4, “number”: stands here twice" },
  { "extra text", Q ("><extra>x</extra></quote>"), EM_FILE_ERROR_VALUE, "“cost”: missing" },
  { "units", Q (" units=\"cubit\"/>"), EM_FILE_ERROR_VALUE, "“units”: “cubit”" },
  { "state", Q (" state=\"eaten\"/>"), EM_FILE_ERROR_VALUE, "“state”: “eaten”" },
  { "tools", Q (" tools=\"two\"/>"), EM_FILE_ERROR_VALUE, "q.estimend, line 2, “tools”: “two” is not a whole number" },
  { "half a tool", Q (" tools=\"2.5\"/>"), EM_FILE_ERROR_VALUE, "“tools”" },
  { "tools past 32 bits", Q (" tools=\"4294967297\"/>"), EM_FILE_ERROR_VALUE, "outside -2147483648 to 2147483647" },
  { "margin past 64 bits", Q (" margin=\"99999999999999999999\"/>"), EM_FILE_ERROR_VALUE, "“margin”" },
  { "hardness", Q (" hardness=\"30 HRC\"/>"), EM_FILE_ERROR_VALUE, "“hardness”: “30 HRC” is not a number" },
  { "hardness not finite", Q (" hardness=\"1e999\"/>"), EM_FILE_ERROR_VALUE, "“hardness”" },
  { "flag", Q (" preheat_stated=\"true\"/>"), EM_FILE_ERROR_VALUE, "“preheat_stated”: “true” is neither yes nor no" },
  { "break", Q ("><break/></quote>"), EM_FILE_ERROR_VALUE, "“tools”: missing" },
  { "breaks", Q ("><break tools='1'/><break tools='2'/><break tools='3'/><break tools='4'/><break tools='5'/><break tools='6'/>"
                 "<break tools='7'/></quote>"), EM_FILE_ERROR_VALUE, "“break”: more than 6" },
  { "extra", Q ("><extra cost=\"1.5\"/></quote>"), EM_FILE_ERROR_VALUE, "“cost”: “1.5”" },
  { "mark", Q ("><notes>abc</notes><mark start=\"1\" length=\"3\"/></quote>"), EM_FILE_ERROR_VALUE, "1 to 4 is no stretch" },
  { "mark, wrapped", Q ("><notes>abc</notes><mark start=\"2\" length=\"4294967295\"/></quote>"), EM_FILE_ERROR_VALUE, "no stretch" },
  { "mark in a character", Q ("><notes>\xc3\xa4</notes><mark start=\"1\" length=\"1\"/></quote>"), EM_FILE_ERROR_VALUE, "no stretch" },
  { "mark, negative", Q ("><mark start=\"-1\" length=\"0\"/></quote>"), EM_FILE_ERROR_VALUE, "“start”" },
  { "sent, empty", Q ("><sent/></quote>"), EM_FILE_ERROR_VALUE, "“sent”" },
  { "sent, spoiled", Q (">\n<sent>\n<rates xmlns=\"urn:estimend:rates\" version=\"1.0\"/></sent></quote>"), EM_FILE_ERROR_VALUE, "q.estimend from line 4 on, line 1, “currency”" },
  { "feature without id", Q ("><feature kind=\"rib\"/></quote>"), EM_FILE_ERROR_VALUE, "“id”: missing" },
  { "feature without kind", Q ("><feature id=\"1\"/></quote>"), EM_FILE_ERROR_VALUE, "“kind”: missing" },
  { "id 0", Q ("><feature id=\"0\" kind=\"rib\"/></quote>"), EM_FILE_ERROR_VALUE, "“id”: 0 is outside 1 to 4294967295" },
  { "id twice", Q (">\n<feature id=\"7\" kind=\"rib\"/>\n<feature id=\"7\" kind=\"rib\"/></quote>"), EM_FILE_ERROR_VALUE, "line 4, “id”: 7 is used twice" },
  { "id twice, far apart", Q (">\n<feature id=\"7\" kind=\"rib\"/>\n<feature id=\"9\" kind=\"rib\"/>\n<feature id=\"7\" kind=\"rib\"/></quote>"),
    EM_FILE_ERROR_VALUE, "line 5, “id”: 7 is used twice" },
  { "id twice, after a lower one", Q (">\n<feature id=\"7\" kind=\"rib\"/>\n<feature id=\"3\" kind=\"rib\"/>\n<feature id=\"7\" kind=\"rib\"/></quote>"),
    EM_FILE_ERROR_VALUE, "line 5, “id”: 7 is used twice" },
  { "id of a newer kind again", HEAD OPEN ("1.9") ">\n<feature id=\"7\" kind=\"dent\"/>\n<feature id=\"9\" kind=\"rib\"/>\n<feature id=\"7\" kind=\"rib\"/></quote>",
    EM_FILE_ERROR_VALUE, "line 5, “id”: 7 is used twice" },
  { "kind", Q ("><feature id=\"1\" kind=\"dent\"/></quote>"), EM_FILE_ERROR_VALUE, "“kind”: “dent”" },
  { "count", F (" count=\"\"/>"), EM_FILE_ERROR_VALUE, "line 3, “count”" },
  { "near", F (" near=\"water\"/>"), EM_FILE_ERROR_VALUE, "“near”" },
  { "value without field", F (">\n<value is=\"1\"/></feature>"), EM_FILE_ERROR_VALUE, "line 4, “field”: missing" },
  { "field", F (">\n<value field=\"girth\" is=\"1\"/></feature>"), EM_FILE_ERROR_VALUE, "line 4, “girth”: “edge-nick” has no such" },
  { "field twice", F (">\n<value field=\"length\" is=\"1\"/>\n<value field=\"length\" is=\"1\"/></feature>"), EM_FILE_ERROR_VALUE, "line 5, “length”: stands here twice" },
  { "value", F (">\n<value field=\"length\" is=\"1 in\"/></feature>"), EM_FILE_ERROR_VALUE, "“is”: “1 in” is not a number" },
  { "option", F (">\n<value field=\"ends\" is=\"pointed\"/></feature>"), EM_FILE_ERROR_VALUE, "“is”: “pointed”" },
  { "option as a number", F (">\n<value field=\"ends\" is=\"0\"/></feature>"), EM_FILE_ERROR_VALUE, "“is”: “0”" },
  { "origin", F (">\n<value field=\"length\" origin=\"guessed\"/></feature>"), EM_FILE_ERROR_VALUE, "“origin”" },
  { "text in a feature", F (">12</feature>"), EM_FILE_ERROR_VALUE, "text where none belongs" },
  { "text with an element", F ("><label>a<b/></label></feature>"), EM_FILE_ERROR_VALUE, "“b”" },
};

START_TEST (refuses)
{
  g_autoptr (GError) error = NULL;
  EmQuoteFile file;

  memset (&file, 0x5a, sizeof file);
  EmQuoteFile before = file;
  ck_assert_msg (!parse (bad[_i].xml, &file, &error), "%s: read", bad[_i].name);
  ck_assert_msg (g_error_matches (error, EM_FILE_ERROR, (int) bad[_i].code), "%s: code %d: %s", bad[_i].name, error->code, error->message);
  ck_assert_msg (strstr (error->message, bad[_i].words) != NULL, "%s: %s", bad[_i].name, error->message);
  ck_assert_msg (memcmp (&file, &before, sizeof file) == 0, "%s: the outputs were touched", bad[_i].name);
}
END_TEST

START_TEST (truncation)
{
  EmQuoteFile file;
  g_autofree char *text = NULL;

  em_quote_file_init (&file);
  em_test_quote_full (&file.quote);
  text = write_text (&file);
  em_quote_file_clear (&file);
  for (gsize n = 0; n + 1 < strlen (text); n += 7)   /* the last byte is a line break */
    {
      g_autoptr (GBytes) bytes = g_bytes_new (text, n);
      ck_assert_msg (!em_quote_file_parse (bytes, "q.estimend", &file, NULL), "%zu bytes were read", n);
    }
}
END_TEST

/* ---- newer ---- */

static const char newer[] =
  HEAD OPEN ("1.4") " units=\"inch\" next_id=\"10\" state=\"frozen\" weather=\"mild\">\n"
  "  <number font=\"bold\">12</number>\n"
  "  <break tools=\"5\" shown=\"no\"/>\n"
  "  <extra label=\"EDM\" cost=\"100\" vendor=\"a&amp;b\">\n"
  "    <order xmlns=\"urn:estimend:quote\" no=\"7\"/>\n"
  "  </extra>\n"
  "  <feature id=\"3\" kind=\"edge-nick\" near=\"seam\" colour=\"red\">\n"
  "    <label side=\"left\">Gate</label>\n"
  "    <value field=\"length\" is=\"12\" sigma=\"0.1\">\n"
  "      <seen xmlns=\"urn:estimend:quote\" by=\"gauge\"/>\n"
  "    </value>\n"
  "    <value field=\"leg_a\"/>\n"
  "    <value field=\"leg_b\" is=\"2\">\n"
  "      <seen xmlns=\"urn:estimend:quote\" by=\"eye\"/>\n"
  "    </value>\n"
  "    <value field=\"ends\" is=\"pointed\"/>\n"
  "    <photo xmlns=\"urn:estimend:quote\" file=\"a.png\"><caption>x &lt; y</caption></photo>\n"
  "    <value xmlns=\"urn:estimend:quote\" field=\"girth\" is=\"2\"/>\n"
  "  </feature>\n"
  "  <mark start=\"0\" length=\"0\" feature=\"3\" tone=\"2\">\n"
  "    <doubt xmlns=\"urn:estimend:quote\">unit</doubt>\n"
  "  </mark>\n"
  "  <weights xmlns=\"urn:estimend:quote\"><weight kg=\"3\"/></weights>\n"
  "  <feature xmlns=\"urn:estimend:quote\" id=\"9\" kind=\"dent\" depth=\"2\"/>\n"
  "</quote>\n";

START_TEST (newer_is_kept)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *once = NULL, *twice = NULL;
  EmQuoteFile file;

  ck_assert_msg (parse (newer, &file, &error), "%s", error != NULL ? error->message : "");
  ck_assert (file.is_newer_minor && file.version_major == 1 && file.version_minor == 4);
  /* root, number, break, extra and its order, mark and its doubt, weights, dent; feature, label, length and how it was seen, how leg_b was, ends, photo, girth */
  ck_assert_uint_eq (file.n_kept, 17);
  ck_assert_int_eq (file.quote.n_features, 1);
  ck_assert_uint_eq (file.quote.next_id, 10);   /* the dent keeps its 9 */
  ck_assert (file.quote.feature[0].value[0] == 12.0);
  once = write_text (&file);
  ck_assert_str_eq (once, newer);
  em_quote_file_clear (&file);
  ck_assert (parse (once, &file, NULL));
  twice = write_text (&file);
  ck_assert_str_eq (twice, newer);
  em_quote_file_clear (&file);
}
END_TEST

/* What this version sets wins over what it could not read; what is gone takes what was kept of it along. */
START_TEST (newer_is_edited)
{
  g_autofree char *text = NULL;
  EmQuoteFile file;

  ck_assert (parse (newer, &file, NULL));
  file.quote.state = EM_STATE_WON;
  file.quote.n_breaks = 0;
  text = write_text (&file);
  ck_assert_ptr_nonnull (strstr (text, " state=\"won\""));
  ck_assert_ptr_null (strstr (text, "frozen"));
  ck_assert_ptr_null (strstr (text, "shown="));
  ck_assert_ptr_nonnull (strstr (text, "weather=\"mild\""));
  em_quote_file_clear (&file);
  ck_assert (parse (text, &file, NULL));
  ck_assert (file.quote.state == EM_STATE_WON);
  em_quote_file_clear (&file);
}
END_TEST

/* Two marks that say the same, each with something of a newer version: what is kept does not double at every save. Found by a fuzzer. */
START_TEST (newer_of_the_same_marks_is_kept)
{
  static const char same[] = HEAD OPEN ("1.4") ">\n<mark start=\"0\" length=\"0\"><seen by=\"A\"/></mark>\n"
    "<mark start=\"0\" length=\"0\"><seen by=\"B\"/></mark>\n</quote>";
  g_autofree char *once = NULL, *twice = NULL;
  EmQuoteFile file;

  ck_assert (parse (same, &file, NULL));
  ck_assert_int_eq (file.quote.n_marks, 2);
  once = write_text (&file);
  em_quote_file_clear (&file);
  ck_assert (parse (once, &file, NULL));
  twice = write_text (&file);
  em_quote_file_clear (&file);
  ck_assert_str_eq (once, twice);
  ck_assert_ptr_nonnull (strstr (once, "by=\"A\""));
  ck_assert_ptr_nonnull (strstr (once, "by=\"B\""));
  ck_assert_ptr_eq (strstr (once, "by=\"B\""), g_strrstr (once, "by=\"B\""));
}
END_TEST

/* A feature pasted from a newer quote makes the quote it lands in one of that version. */
START_TEST (newer_is_pasted)
{
  EmQuoteFile file, other;
  EmQuote pasted;
  g_autofree char *xml = NULL, *text = NULL;

  ck_assert (parse (newer, &file, NULL));
  xml = em_features_to_xml (file.quote.feature, 1);
  ck_assert (em_features_from_xml (xml, -1, &pasted, NULL));
  ck_assert (em_feature_equal (&pasted.feature[0], &file.quote.feature[0]));
  em_quote_file_init (&other);
  ck_assert (em_quote_insert_take (&other.quote, 0, &pasted.feature[0]) == EM_OK);
  text = write_text (&other);
  ck_assert_ptr_nonnull (strstr (text, "version=\"1.4\""));
  em_quote_file_clear (&file);
  ck_assert (parse (text, &file, NULL));
  ck_assert (em_quote_equal (&file.quote, &other.quote));
  em_quote_file_clear (&file);
  em_quote_file_clear (&other);
  em_quote_clear (&pasted);
}
END_TEST

/* ---- the clipboard ---- */

START_TEST (clipboard)
{
  EmQuote quote, back;
  g_autofree char *xml = NULL;
  g_autoptr (GError) error = NULL;

  em_quote_init (&quote);
  em_test_quote_full (&quote);
  xml = em_features_to_xml (quote.feature, quote.n_features);
  ck_assert (em_features_from_xml (xml, -1, &back, NULL));
  ck_assert_int_eq (back.n_features, quote.n_features);
  for (int32_t i = 0; i < quote.n_features; i++)
    ck_assert (em_feature_equal (&quote.feature[i], &back.feature[i]));
  em_quote_clear (&back);
  em_quote_clear (&quote);
  ck_assert (!em_features_from_xml ("hello", -1, &back, &error));
  ck_assert (g_error_matches (error, EM_FILE_ERROR, EM_FILE_ERROR_SYNTAX));
}
END_TEST

/* ---- large ---- */

START_TEST (many)
{
  enum { MANY = 100000 };
  GString *xml = g_string_new (HEAD OPEN ("1.0") ">\n");
  EmQuoteFile file;
  g_autoptr (GError) error = NULL;

  for (int i = 1; i <= MANY; i++)
    g_string_append_printf (xml, "<feature id=\"%d\" kind=\"rib\"/>\n", i);
  g_autofree char *fits = g_strconcat (xml->str, "</quote>", NULL);
  g_autofree char *over = g_strconcat (xml->str, "<feature id=\"100001\" kind=\"rib\"/></quote>", NULL);
  ck_assert (parse (fits, &file, NULL));
  ck_assert_int_eq (file.quote.n_features, MANY);
  em_quote_file_clear (&file);
  ck_assert (!parse (over, &file, &error));
  ck_assert (g_error_matches (error, EM_FILE_ERROR, EM_FILE_ERROR_TOO_LARGE));
  ck_assert_msg (strstr (error->message, "line 100003") != NULL, "%s", error->message);
  g_string_free (xml, TRUE);
}
END_TEST

/* ---- the schema, by validators of others ---- */

/* TRUE also where the validator is not installed. */
static gboolean
is_valid (const char *name, const char *const *options, const EmQuoteFile *file)
{
  g_autofree char *program = g_find_program_in_path (name), *folder = em_test_folder_new ();
  g_autofree char *path = g_build_filename (folder, "q.estimend", NULL);
  g_autofree char *rng = g_build_filename (g_getenv ("ESTIMEND_TEST_DATA"), "quote.rng", NULL);
  g_autoptr (GPtrArray) command = g_ptr_array_new ();
  int status = 0;

  g_ptr_array_add (command, program);
  for (; options != NULL && *options != NULL; options++)
    g_ptr_array_add (command, (char *) *options);
  g_ptr_array_add (command, rng);
  g_ptr_array_add (command, path);
  g_ptr_array_add (command, NULL);
  ck_assert (em_quote_file_save (path, file, NULL));
  if (program != NULL)
    ck_assert (g_spawn_sync (NULL, (char **) command->pdata, NULL, G_SPAWN_DEFAULT, NULL, NULL, NULL, NULL, &status, NULL));
  em_test_folder_remove (folder);
  return g_spawn_check_wait_status (status, NULL);
}

START_TEST (schema)
{
  EmQuoteFile file;

  em_quote_file_init (&file);
  em_test_quote_full (&file.quote);
  take_books (&file);
  ck_assert (is_valid ("jing", NULL, &file));
  em_quote_file_clear (&file);
}
END_TEST

/* This one tries every subset of an element's optional attributes, so it gets a quote of everyday size. */
START_TEST (schema_by_another)
{
  static const char *const options[] = { "--noout", "--nonet", "--relaxng", NULL };
  EmQuoteFile file;

  em_quote_file_init (&file);
  for (int i = 0; i < em_n_kinds; i++)
    {
      EmFeature feature;
      em_feature_init (&feature, em_kinds[i]);
      em_test_fill_values (&feature, i);
      feature.count = 3;
      feature.stock_mm = 0.25;
      em_feature_set_text (&feature, EM_FEATURE_LABEL, "Gate");
      ck_assert (em_quote_insert_take (&file.quote, i, &feature) == EM_OK);
    }
  ck_assert (is_valid ("xmllint", options, &file));
  em_quote_file_clear (&file);
}
END_TEST

int
main (void)
{
  const EmTestRow tests[] =
  {
    EM_TEST (round_empty), EM_TEST (round_full), EM_TEST (round_in_german), EM_TEST (sent_metals_come_back), EM_TEST (odd_texts),
    EM_TEST (save_and_load), EM_TEST_LOOP (refuses, bad), EM_TEST (truncation), EM_TEST (newer_is_kept), EM_TEST (newer_is_edited),
    EM_TEST (newer_of_the_same_marks_is_kept),
    EM_TEST (newer_is_pasted), EM_TEST (clipboard), EM_TEST (many), EM_TEST (schema), EM_TEST (schema_by_another),
  };

  return em_test_run ("quote-file", tests, (int) G_N_ELEMENTS (tests));
}
