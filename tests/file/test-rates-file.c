/* test-rates-file: the rate book round, by every row, and spoiled in every row.
 *
 * Minor units by ISO 4217: EUR 2, JPY 0, KWD 3.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-arc.h"
#include "em-book-file.h"
#include "em-rates-file.h"

#include "em-test-file.h"

#include <locale.h>

static char *
shipped_path (const char *name)
{
  return g_build_filename (g_getenv ("ESTIMEND_TEST_DATA"), name, NULL);
}

static void
load_shipped (EmRates *out_rates)
{
  g_autofree char *path = shipped_path ("rates.xml");
  g_autoptr (GError) error = NULL;
  gboolean is_fine = em_rates_load (path, out_rates, &error);

  ck_assert_msg (is_fine, "%s", error != NULL ? error->message : "");
}

static char *
shipped_text (void)
{
  g_autofree char *path = shipped_path ("rates.xml");
  char *text = NULL;

  ck_assert (g_file_get_contents (path, &text, NULL, NULL));
  return text;
}

static gboolean
parse (const char *text, EmRates *out_rates, GError **error)
{
  g_autoptr (GBytes) bytes = g_bytes_new (text, strlen (text));

  return em_rates_parse (bytes, "rates.xml", out_rates, error);
}

/* Writes, reads, compares, writes again, compares bytes. */
static void
go_round (const EmRates *rates)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GBytes) first = em_rates_write (rates, &error), second = NULL;
  EmRates back;

  ck_assert_msg (first != NULL, "%s", error != NULL ? error->message : "");
  ck_assert_msg (em_rates_parse (first, "rates.xml", &back, &error), "%s", error != NULL ? error->message : "");
  ck_assert (em_rates_equal (rates, &back));
  second = em_rates_write (&back, &error);
  ck_assert (g_bytes_equal (first, second));
  em_rates_clear (&back);
}

START_TEST (shipped_book)
{
  EmRates rates;
  int n_lasers = 0, n_arcs = 0;

  load_shipped (&rates);
  ck_assert (rates.is_demo);
  ck_assert_str_eq (rates.currency.code, "EUR");
  ck_assert_int_eq (rates.currency.digits, 2);
  for (int i = 0; i < rates.n_machines; i++)
    {
      n_lasers += rates.machine[i].process == EM_PROCESS_LASER;
      n_arcs += rates.machine[i].process == EM_PROCESS_GTAW;
    }
  ck_assert_int_eq (n_lasers, 2);
  ck_assert_int_eq (n_arcs, 1);
  go_round (&rates);
  em_rates_clear (&rates);
}
END_TEST

/* A 300 W pulsed laser melts wire of 0.010 to 0.035 in: common practice, no source. 0.25 and 0.9 mm are the nearest sizes sold. */
START_TEST (melts_what_practice_says)
{
  EmRates rates;
  const EmMachine *laser;

  load_shipped (&rates);
  laser = &rates.machine[em_rates_find_machine (&rates, "laser-300")];
  ck_assert (laser->power_w == 300.0);
  ck_assert (fabs (laser->wire_low_mm - 0.010 * 25.4) < 0.02);
  ck_assert (fabs (laser->wire_high_mm - 0.035 * 25.4) < 0.02);
  em_rates_clear (&rates);
}
END_TEST

/* Spot, pulse and pulse rate by wire, the starting table's ranges (engineering estimates): wire mm, spot, ms, Hz. */
static const double laser_ranges[][7] =
{
  { 0.25, 0.35, 0.5, 2, 5, 4, 12 }, { 0.3, 0.4, 0.6, 3, 6, 4, 10 }, { 0.4, 0.5, 0.8, 4, 8, 3, 8 },
  { 0.5, 0.7, 1.0, 5, 10, 3, 7 }, { 0.6, 0.8, 1.2, 6, 12, 2, 6 }, { 0.8, 1.1, 1.6, 8, 16, 1, 4 }, { 0.9, 1.1, 1.6, 8, 16, 1, 4 },
};

static void
check_laser (const EmMachine *machine, const double *range)
{
  for (int s = 0; s < machine->n_settings; s++)
    {
      const EmSetting *setting = &machine->setting[s];

      if (setting->wire_mm != range[0])
        continue;
      ck_assert_msg (setting->spot_mm >= range[1] && setting->spot_mm <= range[2], "%s spot at %g", machine->id, range[0]);
      ck_assert_msg (setting->pulse_ms >= range[3] && setting->pulse_ms <= range[4], "%s pulse at %g", machine->id, range[0]);
      ck_assert_msg (setting->frequency_hz >= range[5] && setting->frequency_hz <= range[6], "%s rate at %g", machine->id, range[0]);
    }
}

START_TEST (laser_starts_inside_ranges)
{
  EmRates rates;

  load_shipped (&rates);
  for (int i = 0; i < rates.n_machines; i++)
    if (rates.machine[i].process == EM_PROCESS_LASER)
      check_laser (&rates.machine[i], laser_ranges[_i]);
  em_rates_clear (&rates);
}
END_TEST

/* Common practice, no source: settings differ little between tool steels. For each of their wires on the shipped lasers, every size the machine
 * melts goes at the same speed with a pulse energy within a twentieth of the P20 wire's; aluminium, for contrast, asks for less than half. */
START_TEST (settings_differ_little_between_tool_steels)
{
  EmRates rates;
  EmCatalogue metals;
  g_autofree char *path = shipped_path ("metals.xml");
  int n = 0;

  load_shipped (&rates);
  ck_assert (em_catalogue_load (path, &metals, NULL));
  const EmFiller *p20 = &metals.filler[em_catalogue_find_filler (&metals, "p20-wire")];
  for (int32_t f = 0; f < metals.n_fillers; f++)
    for (int32_t m = 0; m < rates.n_machines; m++)
      for (int32_t s = 0; s < metals.filler[f].n_sizes; s++)
        {
          const EmFiller *filler = &metals.filler[f];
          double wire = filler->size[s].wire_mm;
          EmArc usual, arc;

          if ((filler->family != EM_FAMILY_TOOL_STEEL && filler->family != EM_FAMILY_ALUMINIUM) || rates.machine[m].process != EM_PROCESS_LASER
              || em_arc_solve (&rates.machine[m], wire, p20->density_g_per_mm3, p20->melt_j_per_g, &usual, NULL) != EM_OK)
            continue;
          ck_assert_int_eq (em_arc_solve (&rates.machine[m], wire, filler->density_g_per_mm3, filler->melt_j_per_g, &arc, NULL), EM_OK);
          if (filler->family == EM_FAMILY_ALUMINIUM)
            ck_assert_msg (arc.pulse_energy_j < 0.5 * usual.pulse_energy_j, "%s, %g mm", filler->id, wire);
          else
            {
              ck_assert_msg (fabs (arc.speed_mm_per_s / usual.speed_mm_per_s - 1) < 0.01, "%s, %g mm: speed", filler->id, wire);
              ck_assert_msg (fabs (arc.pulse_energy_j / usual.pulse_energy_j - 1) < 0.05, "%s, %g mm: pulse energy", filler->id, wire);
              n++;
            }
        }
  ck_assert_int_gt (n, 50);
  em_catalogue_clear (&metals);
  em_rates_clear (&rates);
}
END_TEST

/* U = 10 + 0.04 I, the conventional load voltage of TIG, IEC 60974-1, from memory: worked by hand, 20 A gives 10.8 V. */
START_TEST (arc_on_its_load_line)
{
  EmRates rates;
  const EmMachine *torch;

  load_shipped (&rates);
  torch = &rates.machine[em_rates_find_machine (&rates, "micro-tig")];
  for (int s = 0; s < torch->n_settings; s++)
    ck_assert (fabs (torch->setting[s].voltage_v - 10.0 - 0.04 * torch->setting[s].current_a) < 1e-9);
  em_rates_clear (&rates);
}
END_TEST

/* Every row at both of its limits, where that leaves the book one that passes the core's checks. */
static int
go_round_row (const EmRates *rates, const EmRateField *field, void *holder, double value)
{
  double before = em_rate_get (field, holder);
  EmFault fault;
  int n = 0;

  em_rate_set (field, holder, value);
  if (em_rates_check (rates, &fault) == EM_OK)
    {
      go_round (rates);
      n = 1;
    }
  em_rate_set (field, holder, before);
  return n;
}

START_TEST (every_row_comes_back)
{
  EmRates rates;
  int n = 0;

  load_shipped (&rates);
  for (int i = 0; i < em_n_rate_fields; i++)
    n += go_round_row (&rates, &em_rate_fields[i], &rates, em_rate_fields[i].low)
         + go_round_row (&rates, &em_rate_fields[i], &rates, em_rate_fields[i].high);
  for (int i = 0; i < em_n_machine_fields; i++)
    n += go_round_row (&rates, &em_machine_fields[i], &rates.machine[0], em_machine_fields[i].low)
         + go_round_row (&rates, &em_machine_fields[i], &rates.machine[0], em_machine_fields[i].high);
  /* All but a few whose limit clashes with a neighbour (a stub as long as a stick, wire limits crossed). */
  ck_assert_int_ge (n, 2 * (em_n_rate_fields + em_n_machine_fields) - 6);
  em_rates_clear (&rates);
}
END_TEST

static const char *const currencies[] = { "EUR", "JPY", "KWD", "USD" };
static const int digits[] = { 2, 0, 3, 2 };

START_TEST (other_currencies_and_texts)
{
  EmRates rates;
  EmTax tax = { em_text_dup ("Levy <&> \"x\""), 50000, true };

  load_shipped (&rates);
  ck_assert (em_currency_find (currencies[_i], &rates.currency));
  ck_assert_int_eq (rates.currency.digits, digits[_i]);
  rates.units = EM_UNITS_INCH;
  rates.is_demo = false;
  ck_assert_int_eq (em_rates_add_tax_take (&rates, &tax), EM_OK);
  em_rates_set_text (&rates, EM_SHOP_ADDRESS, "Größe & Co\n\tline two \r\n<end>");
  em_rates_set_text (&rates, EM_SHOP_LOGO, NULL);
  go_round (&rates);
  em_rates_clear (&rates);
}
END_TEST

/* What is changed, into what, and what the message has to name beside the file. */
static const struct { const char *from, *to, *field; int code; } spoils[] =
{
  { "bench=\"7200\"", "bench=\"72.00\"", "bench", EM_FILE_ERROR_VALUE },
  { "bench=\"7200\"", "bench=\"-1\"", "bench", EM_FILE_ERROR_VALUE },
  { "bench=\"7200\"", "bench=\"99999999999999999999\"", "bench", EM_FILE_ERROR_VALUE },
  { "bench=\"7200\"", "bench=\" 7200\"", "bench", EM_FILE_ERROR_VALUE },
  { "bench=\"7200\" ", "", "bench", EM_FILE_ERROR_VALUE },
  { "bench=\"7200\"", "bench=\"7200\" bribe=\"1\"", "bribe", EM_FILE_ERROR_VALUE },
  { "margin=\"250000\"", "margin=\"1000000\"", "margin", EM_FILE_ERROR_VALUE },
  { "layer_ratio=\"0.5\"", "layer_ratio=\"0,5\"", "layer_ratio", EM_FILE_ERROR_VALUE },
  { "layer_ratio=\"0.5\"", "layer_ratio=\"nan\"", "layer_ratio", EM_FILE_ERROR_VALUE },
  { "whole_sticks=\"no\"", "whole_sticks=\"0\"", "whole_sticks", EM_FILE_ERROR_VALUE },
  { "stub=\"25\"", "stub=\"333\"", "stub", EM_FILE_ERROR_VALUE },
  { "currency=\"EUR\"", "currency=\"EUX\"", "currency", EM_FILE_ERROR_VALUE },
  { "units=\"metric\"", "units=\"miles\"", "units", EM_FILE_ERROR_VALUE },
  { "rates\" version=\"1.0\"", "rates\" version=\"2.0\"", "version", EM_FILE_ERROR_NEWER },
  { "rates\" version=\"1.0\"", "rates\" version=\"one\"", "version", EM_FILE_ERROR_VALUE },
  { "id=\"micro-tig\"", "id=\"laser-300\"", "id", EM_FILE_ERROR_VALUE },
  { "process=\"gtaw\"", "process=\"glue\"", "process", EM_FILE_ERROR_VALUE },
  { "setting_wire=\"0.3\"", "setting_wire=\"0.2\"", "setting_wire", EM_FILE_ERROR_VALUE },
  { "pulse=\"3\"", "pulse=\"200\"", "pulse", EM_FILE_ERROR_VALUE },
  { "frequency=\"8\"", "", "frequency", EM_FILE_ERROR_VALUE },
  { "wire_low=\"0.25\"", "wire_low=\"0.95\"", "wire_low", EM_FILE_ERROR_VALUE },
  { "id=\"name\"", "id=\"nickname\"", NULL, EM_FILE_ERROR_VALUE },
  { "id=\"phone\"", "id=\"name\"", "name", EM_FILE_ERROR_VALUE },
  { "rate=\"190000\"", "rate=\"1900000\"", "rate", EM_FILE_ERROR_VALUE },
  { "<money ", "<mony ", "mony", EM_FILE_ERROR_VALUE },
  { "urn:estimend:rates", "urn:estimend:quote", NULL, EM_FILE_ERROR_NOT_OURS },
};

START_TEST (says_what_is_wrong)
{
  g_autofree char *text = shipped_text ();
  char *at = strstr (text, spoils[_i].from);
  GString *spoiled = g_string_new_len (text, at - text);
  g_autoptr (GError) error = NULL;
  EmRates rates;

  ck_assert_ptr_nonnull (at);
  g_string_append (spoiled, spoils[_i].to);
  g_string_append (spoiled, at + strlen (spoils[_i].from));
  memset (&rates, 0x5a, sizeof rates);
  ck_assert_msg (!parse (spoiled->str, &rates, &error), "“%s” was read", spoils[_i].to);
  ck_assert_msg (error->code == spoils[_i].code, "%s: code %d: %s", spoils[_i].to, error->code, error->message);
  ck_assert_msg (strstr (error->message, "rates.xml") != NULL, "%s", error->message);
  if (spoils[_i].field != NULL)
    ck_assert_msg (strstr (error->message, spoils[_i].field) != NULL, "%s", error->message);
  ck_assert (((unsigned char *) &rates)[0] == 0x5a && ((unsigned char *) &rates)[sizeof rates - 1] == 0x5a);
  g_string_free (spoiled, TRUE);
}
END_TEST

START_TEST (line_of_a_bad_rate)
{
  g_autofree char *text = shipped_text ();
  char *at = strstr (text, "bench=\"7200\"");
  g_autoptr (GError) error = NULL;
  g_autofree char *wanted = NULL;
  EmRates rates;
  int line = 1;

  for (const char *c = text; c < at; c++)
    line += *c == '\n';
  at[strlen ("bench=\"")] = 'x';
  wanted = g_strdup_printf ("%d", line);
  ck_assert (!parse (text, &rates, &error));
  ck_assert_msg (strstr (error->message, wanted) != NULL, "line %s not in: %s", wanted, error->message);
}
END_TEST

/* Cut anywhere, the book is refused; only the blank after the root may go. */
START_TEST (cut_short_anywhere)
{
  g_autofree char *text = shipped_text ();
  gsize length = strlen (text);

  for (gsize cut = 0; cut < length - 1; cut += 37)
    {
      g_autofree char *part = g_strndup (text, cut);
      g_autoptr (GError) error = NULL;
      EmRates rates;

      ck_assert_msg (!parse (part, &rates, &error), "cut at %zu was read", cut);
      ck_assert_ptr_nonnull (strstr (error->message, "rates.xml"));
    }
}
END_TEST

/* A later minor version's things are not understood, and not lost. */
START_TEST (keeps_what_is_newer)
{
  g_autofree char *text = shipped_text ();
  g_auto (GStrv) parts = g_strsplit (text, "rates\" version=\"1.0\"", 2);
  g_autofree char *newer = g_strconcat (parts[0], "rates\" version=\"1.4\" mood=\"good\"", parts[1], NULL);
  const char *const changes[][2] =
  {
    { "<money ", "<money tip=\"5\" " }, { "id=\"micro-tig\" ", "id=\"micro-tig\" colour=\"red\" " },
    { "<setting setting_wire=\"0.3\"", "<setting ramp=\"2\" setting_wire=\"0.3\"" }, { "<name>Micro TIG", "<name short=\"MT\">Micro TIG" },
    { "<deposit ", "<deposit bead=\"3\" " }, { "whole_sticks=\"no\"/>", "whole_sticks=\"no\"><spool kg=\"5\"/></deposit>" }, { "</rates>", "<fleet n=\"2\"><van>a &amp; b</van></fleet></rates>" },
  };
  const char *const words[] = { "version=\"1.4\"", "mood=\"good\"", "tip=\"5\"", "colour=\"red\"", "ramp=\"2\"", "short=\"MT\"", "<spool ", "kg=\"5\"/>", "<van>a &amp; b</van>" };
  g_autoptr (GError) error = NULL;
  g_autoptr (GBytes) bytes = NULL;
  g_autofree char *written = NULL;
  EmRates rates;

  for (gsize i = 0; i < G_N_ELEMENTS (changes); i++)
    {
      g_auto (GStrv) pieces = g_strsplit (newer, changes[i][0], 2);
      char *changed = g_strconcat (pieces[0], changes[i][1], pieces[1], NULL);

      g_free (newer);
      newer = changed;
    }
  ck_assert_msg (parse (newer, &rates, &error), "%s", error != NULL ? error->message : "");
  bytes = em_rates_write (&rates, &error);
  ck_assert_ptr_nonnull (bytes);
  written = g_strndup (g_bytes_get_data (bytes, NULL), g_bytes_get_size (bytes));
  for (gsize i = 0; i < G_N_ELEMENTS (words); i++)
    ck_assert_msg (strstr (written, words[i]) != NULL, "lost: %s", words[i]);
  go_round (&rates);
  em_rates_clear (&rates);
}
END_TEST

START_TEST (will_not_write_what_it_cannot_read)
{
  EmRates rates;
  g_autoptr (GError) error = NULL;

  load_shipped (&rates);
  rates.margin_ppm = 1000000;
  ck_assert_ptr_null (em_rates_write (&rates, &error));
  ck_assert_int_eq (error->code, EM_FILE_ERROR_VALUE);
  ck_assert_ptr_nonnull (strstr (error->message, "margin"));
  em_rates_clear (&rates);
}
END_TEST

/* Locales with a decimal comma change nothing. */
START_TEST (no_locale_in_it)
{
  EmRates rates;
  g_autoptr (GBytes) plain = NULL, german = NULL;

  load_shipped (&rates);
  plain = em_rates_write (&rates, NULL);
  setlocale (LC_ALL, "de_DE.UTF-8");
  german = em_rates_write (&rates, NULL);
  go_round (&rates);
  setlocale (LC_ALL, "C.UTF-8");
  ck_assert (g_bytes_equal (plain, german));
  em_rates_clear (&rates);
}
END_TEST

int
main (void)
{
  const EmTestRow rows[] =
  {
    EM_TEST (shipped_book), EM_TEST (melts_what_practice_says), EM_TEST_LOOP (laser_starts_inside_ranges, laser_ranges), EM_TEST (settings_differ_little_between_tool_steels),
    EM_TEST (arc_on_its_load_line), EM_TEST (every_row_comes_back), EM_TEST_LOOP (other_currencies_and_texts, currencies),
    EM_TEST_LOOP (says_what_is_wrong, spoils), EM_TEST (line_of_a_bad_rate), EM_TEST (cut_short_anywhere),
    EM_TEST (keeps_what_is_newer), EM_TEST (will_not_write_what_it_cannot_read), EM_TEST (no_locale_in_it),
  };

  return em_test_run ("rates-file", rows, G_N_ELEMENTS (rows));
}
