/* test-price-list: comma separated values as RFC 4180 has them, and what each row of a price list would do.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-csv.h"
#include "em-price-list.h"

#include "../core/em-test-main.h"

#include <string.h>

/* ---- tables ---- */

/* Cells joined by "|", rows by "/". Rows 1 to 7 are the rules and examples of RFC 4180 section 2, in its order. */
static const struct { const char *name, *text, *cells; } tables[] =
{
  { "rule 1: each record on a line", "aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n", "aaa|bbb|ccc/zzz|yyy|xxx" },
  { "rule 2: no break at the end", "aaa,bbb,ccc\r\nzzz,yyy,xxx", "aaa|bbb|ccc/zzz|yyy|xxx" },
  { "rule 3: header line", "field_name,field_name,field_name\r\naaa,bbb,ccc\r\n", "field_name|field_name|field_name/aaa|bbb|ccc" },
  { "rule 4: spaces belong to the cell", "aaa, bbb ,ccc", "aaa| bbb |ccc" },
  { "rule 5: quotes", "\"aaa\",\"bbb\",\"ccc\"\r\nzzz,yyy,xxx", "aaa|bbb|ccc/zzz|yyy|xxx" },
  { "rule 6: a break inside", "\"aaa\",\"b\r\nbb\",\"ccc\"\r\nzzz,yyy,xxx", "aaa|b\r\nbb|ccc/zzz|yyy|xxx" },
  { "rule 7: doubled quotes", "\"aaa\",\"b\"\"bb\",\"ccc\"", "aaa|b\"bb|ccc" },
  { "a separator inside", "a,\"b,c\",d", "a|b,c|d" },
  { "line feeds alone", "a,b\nc,d\n", "a|b/c|d" },
  { "semicolons, decimal commas", "a;b\n0,4;1,50\n", "a|b/0,4|1,50" },
  { "tabs", "a\tb\nc\td", "a|b/c|d" },
  { "byte order mark", "\xef\xbb\xbf" "a,b", "a|b" },
  { "blank lines", "a,b\n\n  \nc,d\n\n", "a|b/c|d" },
  { "empty cells", ",,\n", "||" },
  { "nothing", "", "" },
};

static char *
join (const EmCsv *csv)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < csv->rows->len; i++)
    {
      const EmCsvRow *row = g_ptr_array_index (csv->rows, i);
      g_autofree char *cells = g_strjoinv ("|", row->cell);

      g_string_append_printf (text, "%s%s", i > 0 ? "/" : "", cells);
    }
  return g_string_free (text, FALSE);
}

static GBytes *
bytes_of (const char *text)
{
  return g_bytes_new (text, strlen (text));
}

static void
check_csv (gsize at)
{
  g_autoptr (GBytes) bytes = bytes_of (tables[at].text);
  g_autoptr (GError) error = NULL;
  g_autoptr (EmCsv) csv = em_csv_parse (bytes, "list.csv", &error);

  ck_assert_msg (csv != NULL, "%s: %s", tables[at].name, error != NULL ? error->message : "");

  g_autofree char *cells = join (csv);

  ck_assert_msg (strcmp (cells, tables[at].cells) == 0, "%s: %s", tables[at].name, cells);
}

START_TEST (test_csv)
{
  for (gsize i = 0; i < G_N_ELEMENTS (tables); i++)
    check_csv (i);
}
END_TEST

/* The line is where the trouble is: an unclosed quote's where it was opened. */
static const struct { const char *name, *text; gsize size; EmFileError code; const char *says; } refused[] =
{
  { "unclosed", "a,b\n\"c,d\ne,f\n", 0, EM_FILE_ERROR_SYNTAX, "line 2" },
  { "text behind a quote", "a,b\n\"c\"x,d\n", 0, EM_FILE_ERROR_SYNTAX, "line 2" },
  { "quote inside", "a,b\n\nc\"x,d\n", 0, EM_FILE_ERROR_SYNTAX, "line 3" },
  { "lone quote at the end", "a,\"", 0, EM_FILE_ERROR_SYNTAX, "line 1" },
  { "Latin-1", "a,Gr\xf6\xdf" "e\n", 0, EM_FILE_ERROR_SYNTAX, "UTF-8" },
  { "NUL", "a,b\n\0c", 6, EM_FILE_ERROR_NOT_OURS, "NUL" },
};

static void
check_csv_refused (gsize at)
{
  g_autoptr (GBytes) bytes = g_bytes_new (refused[at].text, refused[at].size > 0 ? refused[at].size : strlen (refused[at].text));
  g_autoptr (GError) error = NULL;
  g_autoptr (EmCsv) csv = em_csv_parse (bytes, "list.csv", &error);

  ck_assert_msg (csv == NULL, "%s", refused[at].name);
  ck_assert_msg (g_error_matches (error, EM_FILE_ERROR, (int) refused[at].code), "%s: %s", refused[at].name, error->message);
  ck_assert_msg (strstr (error->message, refused[at].says) != NULL && strstr (error->message, "list.csv") != NULL, "%s: %s", refused[at].name, error->message);
}

START_TEST (test_csv_refused)
{
  for (gsize i = 0; i < G_N_ELEMENTS (refused); i++)
    check_csv_refused (i);
}
END_TEST

START_TEST (test_csv_too_wide)
{
  g_autofree char *commas = g_strnfill (64, ',');
  g_autofree char *word = g_strnfill (5000, 'a');
  const char *const text[] = { commas, word };

  for (gsize i = 0; i < G_N_ELEMENTS (text); i++)
    {
      g_autoptr (GBytes) bytes = bytes_of (text[i]);
      g_autoptr (GError) error = NULL;

      ck_assert_ptr_null (em_csv_parse (bytes, "list.csv", &error));
      ck_assert (g_error_matches (error, EM_FILE_ERROR, EM_FILE_ERROR_TOO_LARGE));
    }
}
END_TEST

/* ---- price lists ---- */

static const EmCurrency euro = { "EUR", 2 };

/* Two wires, invented: er420 in 0.4 and 0.6 mm with demo prices, supplier's reference A-17; p20-wire in eight sizes, the shop's prices. */
static void
fill (EmCatalogue *catalogue)
{
  EmFiller filler;

  em_catalogue_init (catalogue);
  em_filler_init (&filler);
  filler.id = em_text_dup ("er420");
  filler.designation = em_text_dup ("ER420 (AWS A5.9)");
  filler.supplier_ref = em_text_dup ("A-17");
  filler.has_demo_price = true;
  filler.n_sizes = 2;
  filler.size[0] = (EmWireSize) { 0.4, 150, EM_PER_METRE, true };
  filler.size[1] = (EmWireSize) { 0.6, 250, EM_PER_METRE, true };
  ck_assert_int_eq (em_catalogue_add_filler_take (catalogue, &filler), EM_OK);
  em_filler_init (&filler);
  filler.id = em_text_dup ("p20-wire");
  filler.designation = em_text_dup ("P20 wire, modified (generic)");
  filler.n_sizes = EM_SIZE_MAX;
  for (int i = 0; i < EM_SIZE_MAX; i++)
    filler.size[i] = (EmWireSize) { 0.2 + 0.1 * i, 100, EM_PER_METRE, true };
  ck_assert_int_eq (em_catalogue_add_filler_take (catalogue, &filler), EM_OK);
}

static EmPriceList *
read_list (const char *text, const EmCatalogue *catalogue, const EmCurrency *currency)
{
  g_autoptr (GBytes) bytes = bytes_of (text);
  g_autoptr (GError) error = NULL;
  EmPriceList *list = em_price_list_parse (bytes, "list.csv", catalogue, currency, &error);

  ck_assert_msg (list != NULL, "%s", error != NULL ? error->message : "");
  return list;
}

/* One row under the head "reference,wire,size_mm,size_in,price,per,currency". 0.010 in = 0.254 mm exactly. */
static const struct { const char *row; EmPriceRowState state; double wire_mm; gint64 minor; EmPriceBasis basis; const char *says; } rows[] =
{
  { "A-17,,0.4,,1.75,metre,", EM_PRICE_ROW_CHANGES, 0.4, 175, EM_PER_METRE, NULL },
  { ",er420,0.4,,1.75,m,EUR", EM_PRICE_ROW_CHANGES, 0.4, 175, EM_PER_METRE, NULL },
  { ",ER420,0.4,,\"1,75\",Meter,eur", EM_PRICE_ROW_CHANGES, 0.4, 175, EM_PER_METRE, NULL },
  { ",ER420 (AWS A5.9),0.4,,2,stick,", EM_PRICE_ROW_CHANGES, 0.4, 200, EM_PER_STICK, NULL },
  { ",er420,,.010,.5,g,", EM_PRICE_ROW_NEW_SIZE, 0.254, 50, EM_PER_GRAM, NULL },
  { ",er420,0.4004,,1.75,m,", EM_PRICE_ROW_CHANGES, 0.4, 175, EM_PER_METRE, NULL },   /* within half a thousandth of 0.4, and so means that size */
  { ",er420,0.401,,1.75,m,", EM_PRICE_ROW_NEW_SIZE, 0.401, 175, EM_PER_METRE, NULL },
  { ",p20-wire,0.2,,1.00,m,", EM_PRICE_ROW_SAME, 0.2, 100, EM_PER_METRE, NULL },
  { ",er420,0.4,,1.50,m,", EM_PRICE_ROW_CHANGES, 0.4, 150, EM_PER_METRE, NULL },        /* the same figure, but no longer invented */
  { "B-99,,0.4,,1.75,m,", EM_PRICE_ROW_UNKNOWN, 0.4, 175, EM_PER_METRE, NULL },
  { ",er4,0.4,,1.75,m,", EM_PRICE_ROW_UNKNOWN, 0.4, 175, EM_PER_METRE, NULL },          /* no start of a name is a name */
  { ",,0.4,,1.75,m,", EM_PRICE_ROW_BAD, 0, 0, EM_PER_METRE, "no wire" },
  { ",er420,,,1.75,m,", EM_PRICE_ROW_BAD, 0, 0, EM_PER_METRE, "size" },
  { ",er420,0.04,,1.75,m,", EM_PRICE_ROW_BAD, 0, 0, EM_PER_METRE, "0.05 to 5" },
  { ",er420,5.1,,1.75,m,", EM_PRICE_ROW_BAD, 0, 0, EM_PER_METRE, "0.05 to 5" },
  { ",er420,nan,,1.75,m,", EM_PRICE_ROW_BAD, 0, 0, EM_PER_METRE, "size" },
  { ",er420,0.4,,,m,", EM_PRICE_ROW_BAD, 0, 0, EM_PER_METRE, "price" },
  { ",er420,0.4,,0,m,", EM_PRICE_ROW_BAD, 0, 0, EM_PER_METRE, "free" },
  { ",er420,0.4,,0.00,m,", EM_PRICE_ROW_BAD, 0, 0, EM_PER_METRE, "free" },
  { ",er420,0.4,,-1,m,", EM_PRICE_ROW_BAD, 0, 0, EM_PER_METRE, "price" },
  { ",er420,0.4,,1e3,m,", EM_PRICE_ROW_BAD, 0, 0, EM_PER_METRE, "price" },
  { ",er420,0.4,,1.,m,", EM_PRICE_ROW_BAD, 0, 0, EM_PER_METRE, "price" },
  { ",er420,0.4,,1.234,m,", EM_PRICE_ROW_BAD, 0, 0, EM_PER_METRE, "decimals" },          /* thousands or thousandths: not guessed */
  { ",er420,0.4,,\"1,234.50\",m,", EM_PRICE_ROW_BAD, 0, 0, EM_PER_METRE, "plain amount" },
  { ",er420,0.4,,99999999999999,m,", EM_PRICE_ROW_BAD, 0, 0, EM_PER_METRE, "large" },
  /* Long words are cut before what would be half a character, here the € of three bytes. */
  { ",er420,0.4,,1.75,ein halbes Dutzend zu je drei Pfund und€,", EM_PRICE_ROW_BAD, 0, 0, EM_PER_METRE, "drei Pfund und” is none" },
  { ",er420,0.4,,1.75,yard,", EM_PRICE_ROW_BAD, 0, 0, EM_PER_METRE, "per" },
  { ",er420,0.4,,1.75,m,USD", EM_PRICE_ROW_BAD, 0, 0, EM_PER_METRE, "USD" },
  { ",p20-wire,1.6,,1.75,m,", EM_PRICE_ROW_BAD, 0, 0, EM_PER_METRE, "8 sizes" },
  { ",er420,0.4", EM_PRICE_ROW_BAD, 0, 0, EM_PER_METRE, "price" },
};

static void
check_row (gsize at)
{
  g_autofree char *text = g_strconcat ("reference,wire,size_mm,size_in,price,per,currency\r\n", rows[at].row, "\r\n", NULL);
  EmCatalogue catalogue;

  fill (&catalogue);

  g_autoptr (EmPriceList) list = read_list (text, &catalogue, &euro);
  const EmPriceRow *row = g_ptr_array_index (list->rows, 0);

  ck_assert_uint_eq (list->rows->len, 1);
  ck_assert_uint_eq (row->line, 2);
  ck_assert_msg (row->state == rows[at].state, "%s: %s, %s", rows[at].row, em_price_row_ids[row->state], row->sentence != NULL ? row->sentence : "");
  ck_assert_uint_eq (list->n_of[row->state], 1);
  ck_assert_msg ((row->sentence != NULL) == (rows[at].says != NULL), "%s: %s", rows[at].row, row->sentence);
  if (rows[at].says != NULL)
    ck_assert_msg (g_utf8_validate (row->sentence, -1, NULL) && strstr (row->sentence, rows[at].says) != NULL, "%s: %s", rows[at].row, row->sentence);
  else
    {
      ck_assert_msg (ABS (row->wire_mm - rows[at].wire_mm) < 1e-12, "%s: %g mm", rows[at].row, row->wire_mm);
      ck_assert_msg (row->price_minor == rows[at].minor && row->basis == rows[at].basis, "%s: %" G_GINT64_FORMAT, rows[at].row, row->price_minor);
    }
  em_catalogue_clear (&catalogue);
}

START_TEST (test_row)
{
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    check_row (i);
}
END_TEST

/* Yen have no minor digits, dinars of Kuwait three (ISO 4217). */
START_TEST (test_minor_units)
{
  const EmCurrency yen = { "JPY", 0 }, dinar = { "KWD", 3 };
  EmCatalogue catalogue;

  fill (&catalogue);

  g_autoptr (EmPriceList) in_yen = read_list ("wire,size mm,price,per\ner420,0.4,175,m\ner420,0.6,1.5,m\n", &catalogue, &yen);
  g_autoptr (EmPriceList) in_dinars = read_list ("wire;size mm;price;per\ner420;0,4;1,5;m\ner420;0,6;1,125;m\n", &catalogue, &dinar);

  ck_assert_int_eq (((EmPriceRow *) g_ptr_array_index (in_yen->rows, 0))->price_minor, 175);
  ck_assert_int_eq (((EmPriceRow *) g_ptr_array_index (in_yen->rows, 1))->state, EM_PRICE_ROW_BAD);
  ck_assert_int_eq (((EmPriceRow *) g_ptr_array_index (in_dinars->rows, 0))->price_minor, 1500);
  ck_assert_int_eq (((EmPriceRow *) g_ptr_array_index (in_dinars->rows, 1))->price_minor, 1125);
  em_catalogue_clear (&catalogue);
}
END_TEST

static const char *const headless[] = { "", "er420,0.4,1.75,m\n", "wire,price,per\n", "wire,size_mm,per\n", "size_mm,price,per\n", "wire,size_mm,price\n" };

static void
check_no_head (gsize at)
{
  g_autoptr (GBytes) bytes = bytes_of (headless[at]);
  g_autoptr (GError) error = NULL;
  EmCatalogue catalogue;

  fill (&catalogue);
  ck_assert_ptr_null (em_price_list_parse (bytes, "list.csv", &catalogue, &euro, &error));
  ck_assert (g_error_matches (error, EM_FILE_ERROR, EM_FILE_ERROR_NOT_OURS));
  em_catalogue_clear (&catalogue);
}

START_TEST (test_no_head)
{
  for (gsize i = 0; i < G_N_ELEMENTS (headless); i++)
    check_no_head (i);
}
END_TEST

/* ---- applying ---- */

START_TEST (test_apply)
{
  EmCatalogue catalogue;
  guint n = 0;

  fill (&catalogue);

  g_autoptr (EmPriceList) list = read_list ("wire,size_mm,price,per\ner420,0.4,1.75,m\ner420,0.5,0.80,g\ner420,0.4,9.99,m\nnone,0.4,1,m\ner420,x,1,m\n",
                                            &catalogue, &euro);

  /* Reading has changed nothing. */
  ck_assert_int_eq (catalogue.filler[0].size[0].price_minor, 150);
  ck_assert_int_eq (catalogue.filler[0].n_sizes, 2);
  ck_assert_uint_eq (list->n_of[EM_PRICE_ROW_CHANGES], 1);
  ck_assert_uint_eq (list->n_of[EM_PRICE_ROW_NEW_SIZE], 1);
  ck_assert_uint_eq (list->n_of[EM_PRICE_ROW_TWICE], 1);
  ck_assert_uint_eq (list->n_of[EM_PRICE_ROW_UNKNOWN], 1);
  ck_assert_uint_eq (list->n_of[EM_PRICE_ROW_BAD], 1);

  ck_assert (em_price_list_apply (list, &catalogue, &n, NULL));
  ck_assert_uint_eq (n, 2);
  ck_assert_int_eq (catalogue.filler[0].n_sizes, 3);
  ck_assert_int_eq (catalogue.filler[0].size[0].price_minor, 175);
  ck_assert (catalogue.filler[0].size[1].wire_mm == 0.5);
  ck_assert_int_eq (catalogue.filler[0].size[1].price_minor, 80);
  ck_assert_int_eq (catalogue.filler[0].size[1].basis, EM_PER_GRAM);
  ck_assert (catalogue.filler[0].size[1].is_stocked);
  ck_assert_int_eq (catalogue.filler[0].size[2].price_minor, 250);
  ck_assert (catalogue.filler[0].is_own);
  /* 0.6 mm still has its invented price, and the wire says so. */
  ck_assert (catalogue.filler[0].has_demo_price);
  ck_assert (!catalogue.filler[1].is_own);

  /* Nor does what was just taken over change again, though the wire still has an invented price. */
  g_autoptr (EmPriceList) again = read_list ("wire,size_mm,price,per\ner420,0.4,1.75,m\ner420,0.5,0.80,g\n", &catalogue, &euro);

  ck_assert_uint_eq (again->n_of[EM_PRICE_ROW_SAME], 2);
  em_catalogue_clear (&catalogue);
}
END_TEST

START_TEST (test_apply_all_sizes)
{
  EmCatalogue catalogue;

  fill (&catalogue);

  g_autoptr (EmPriceList) list = read_list ("wire,size_mm,price,per\ner420,0.4,1.75,m\ner420,0.6,2.50,m\n", &catalogue, &euro);

  ck_assert (em_price_list_apply (list, &catalogue, NULL, NULL));
  ck_assert (!catalogue.filler[0].has_demo_price);

  /* Read again, the same list changes nothing any more. */
  g_autoptr (EmPriceList) again = read_list ("wire,size_mm,price,per\ner420,0.4,1.75,m\ner420,0.6,2.50,m\n", &catalogue, &euro);

  ck_assert_uint_eq (again->n_of[EM_PRICE_ROW_SAME], 2);
  em_catalogue_clear (&catalogue);
}
END_TEST

/* Seven new sizes where six have room: the seventh is refused on reading. */
START_TEST (test_full)
{
  EmCatalogue catalogue;

  fill (&catalogue);

  g_autoptr (EmPriceList) list = read_list ("wire,size_mm,price,per\ner420,0.7,1,m\ner420,0.8,1,m\ner420,0.9,1,m\ner420,1.0,1,m\ner420,1.1,1,m\n"
                                            "er420,1.2,1,m\ner420,1.3,1,m\n", &catalogue, &euro);

  ck_assert_uint_eq (list->n_of[EM_PRICE_ROW_NEW_SIZE], 6);
  ck_assert_uint_eq (list->n_of[EM_PRICE_ROW_BAD], 1);
  ck_assert (em_price_list_apply (list, &catalogue, NULL, NULL));
  ck_assert_int_eq (catalogue.filler[0].n_sizes, 8);
  for (int i = 1; i < 8; i++)
    ck_assert (catalogue.filler[0].size[i - 1].wire_mm < catalogue.filler[0].size[i].wire_mm);
  em_catalogue_clear (&catalogue);
}
END_TEST

/* The wire is gone since the list was read: an error, and the other row isn't applied either. */
START_TEST (test_changed_since)
{
  EmCatalogue catalogue;
  g_autoptr (GError) error = NULL;

  fill (&catalogue);

  g_autoptr (EmPriceList) list = read_list ("wire,size_mm,price,per\np20-wire,0.2,3,m\ner420,0.4,1.75,m\n", &catalogue, &euro);

  catalogue.filler[0].id[0] = 'x';
  ck_assert (!em_price_list_apply (list, &catalogue, NULL, &error));
  ck_assert (g_error_matches (error, EM_FILE_ERROR, EM_FILE_ERROR_CHANGED));
  ck_assert_int_eq (catalogue.filler[1].size[0].price_minor, 100);
  ck_assert (!catalogue.filler[1].is_own);
  em_catalogue_clear (&catalogue);
}
END_TEST

START_TEST (test_load_missing)
{
  EmCatalogue catalogue;
  g_autoptr (GError) error = NULL;

  fill (&catalogue);
  ck_assert_ptr_null (em_price_list_load ("/nowhere/list.csv", &catalogue, &euro, &error));
  ck_assert (g_error_matches (error, EM_FILE_ERROR, EM_FILE_ERROR_READ));
  em_catalogue_clear (&catalogue);
}
END_TEST

EM_TEST_MAIN ("file: price list", test_csv, test_csv_refused, test_csv_too_wide, test_row, test_minor_units, test_no_head, test_apply,
              test_apply_all_sizes, test_full, test_changed_since, test_load_missing)
