/* Checks of notes/em-dxf: files written by hand after the public group-code reference of the format.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "notes-check.h"

#define HEADER(units) "0\nSECTION\n2\nHEADER\n9\n$INSUNITS\n70\n" units "\n0\nENDSEC\n"
#define ENTITIES(body) "0\nSECTION\n2\nENTITIES\n" body "0\nENDSEC\n0\nEOF\n"

static const struct { const char *name, *dxf, *text; } good[] = {
  { "text", ENTITIES ("0\nTEXT\n8\n0\n1\nNICK %%c.25\n"), "NICK ⌀.25\n" },
  { "units inch", HEADER ("1") ENTITIES ("0\nTEXT\n1\nA\n"), "UNITS: INCHES\nA\n" },
  { "units mm", HEADER ("     4") ENTITIES ("0\nTEXT\n1\nA\n"), "UNITS: MM\nA\n" },
  { "units none", HEADER ("0") ENTITIES ("0\nTEXT\n1\nA\n"), "A\n" },
  { "percent codes", ENTITIES ("0\nTEXT\n1\n%%c5%%p.1 60%%d 100%%% %%uBORE%%u %%065\n"), "⌀5±.1 60° 100% BORE A\n" },
  { "mtext", ENTITIES ("0\nMTEXT\n1\n{\\fsans|b0|i0;\\H2.5;NOTES:}\\P1. WELD \\LNICK\\l\n"), "NOTES:\n1. WELD NICK\n" },
  { "mtext in chunks", ENTITIES ("0\nMTEXT\n3\nBUILD UP \n1\nBORE\n"), "BUILD UP BORE\n" },
  { "stacked fraction", ENTITIES ("0\nMTEXT\n1\n1\\S1/2; LG\n"), "1 1/2 LG\n" },
  { "stacked tolerance", ENTITIES ("0\nMTEXT\n1\n.500\\S+.002^-.001; DIA\n"), ".500 +.002/-.001 DIA\n" },
  { "unicode code", ENTITIES ("0\nMTEXT\n1\n\\U+220512\n"), "∅12\n" },
  { "escapes", ENTITIES ("0\nMTEXT\n1\nA\\\\B\\~C\\{D\\}\n"), "A\\B C{D}\n" },
  { "dimension with text", ENTITIES ("0\nDIMENSION\n1\n4X <>\n42\n12.7\n70\n3\n"), "4X ⌀12.7\n" },
  { "dimension measured", ENTITIES ("0\nDIMENSION\n1\n\n42\n12.7\n70\n32\n"), "12.7\n" },
  /* π/3 rad = 60° */
  { "dimension of an angle", ENTITIES ("0\nDIMENSION\n42\n1.0471975511965976\n70\n34\n"), "60°\n" },
  { "dimension of a radius", ENTITIES ("0\nDIMENSION\n42\n0.5\n70\n36\n"), "R0.5\n" },
  { "crlf", "0\r\nSECTION\r\n2\r\nENTITIES\r\n0\r\nTEXT\r\n1\r\nA\r\n0\r\nEOF\r\n", "A\n" },
  { "old code page", ENTITIES ("0\nTEXT\n1\nFL\xc4" "CHE 60\xb0\n"), "FLÄCHE 60°\n" },
  { "comment first", "999\nby hand\n" ENTITIES ("0\nTEXT\n1\nA\n"), "A\n" },
  { "other entities", ENTITIES ("0\nLINE\n1\nno\n0\nTEXT\n1\nyes\n"), "yes\n" },
  /* Found by the fuzz target: the bytes of a letter were parted. */
  { "backslash and a letter", ENTITIES ("0\nMTEXT\n1\nA\\\303\271B\n"), "A\303\271B\n" },
  { "code at the end", ENTITIES ("0\nMTEXT\n1\nA\\\n0\nTEXT\n1\n%%\n0\nMTEXT\n1\n\\S1\n"), "A\n%%\n1\n" },
};

START_TEST (test_good)
{
  EmUnits units = EM_UNITS_METRIC;
  gboolean has_units = FALSE;
  g_autoptr (GError) error = NULL;
  g_autofree char *text = em_dxf_text (good[_i].dxf, strlen (good[_i].dxf), &units, &has_units, &error);

  ck_assert_msg (text != NULL, "%s: %s", good[_i].name, error != NULL ? error->message : "");
  ck_assert_msg (strcmp (text, good[_i].text) == 0, "%s: “%s”", good[_i].name, text);
  ck_assert_int_eq (has_units, strncmp (good[_i].text, "UNITS", 5) == 0);
}
END_TEST

static const struct { const char *name, *dxf; gsize length; } bad[] = {
  { "empty", "", 0 },
  { "not one", "hello\nworld\n", 12 },
  { "binary", "A\0B", 3 },
  { "no section", "0\nTEXT\n1\nA\n0\nEOF\n", 18 },
  { "cut short", "0\nSECTION\n2\nENTITIES\n0\nTEXT\n1\nNICK\n", 36 },
  { "cut in a group", "0\nSECTION\n2\n", 12 },
  { "bad code", "0\nSECTION\nx\nENTITIES\n0\nEOF\n", 27 },
  { "code too large", "0\nSECTION\n99999\nA\n0\nEOF\n", 24 },
};

START_TEST (test_bad)
{
  EmUnits units = EM_UNITS_METRIC;
  gboolean has_units = FALSE;
  g_autoptr (GError) error = NULL;
  g_autofree char *text = em_dxf_text (bad[_i].dxf, bad[_i].length, &units, &has_units, &error);

  ck_assert_msg (text == NULL && error != NULL && *error->message != '\0', "%s", bad[_i].name);
}
END_TEST

/* The drawing's units header governs its notes: 12.7 there is half an inch. */
START_TEST (test_units_govern)
{
  const char *dxf = HEADER ("4") ENTITIES ("0\nMTEXT\n1\nCRACK 12.7 LG X 1 DP\n");
  EmUnits units = EM_UNITS_INCH;
  gboolean has_units = FALSE;
  g_autofree char *text = em_dxf_text (dxf, strlen (dxf), &units, &has_units, NULL);
  EmLexicon *lexicon = load_lexicon ();

  ck_assert_int_eq (units, EM_UNITS_METRIC);
  assert_row (lexicon, text, EM_UNITS_INCH, "2\t1\tlength\t12.7\tmm");
  em_lexicon_free (lexicon);
}
END_TEST

int
main (void)
{
  TCase *tcase = tcase_create ("dxf");

  tcase_add_loop_test (tcase, test_good, 0, G_N_ELEMENTS (good));
  tcase_add_loop_test (tcase, test_bad, 0, G_N_ELEMENTS (bad));
  tcase_add_test (tcase, test_units_govern);
  return run_suite ("notes: dxf", tcase);
}
