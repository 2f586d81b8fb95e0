/* test-catalogue: the shipped metals and the shop's own, read, written, merged and refused.
 *
 * Compositions are held against printed ranges by check-metals.py; this is about the reader.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-book-file.h"
#include "em-steel.h"
#include "../core/em-test-main.h"

#include <glib/gstdio.h>
#include <string.h>

static char *
shipped_path (const char *name)
{
  return g_build_filename (g_getenv ("ESTIMEND_TEST_DATA"), name, NULL);
}

static void
load_shipped (EmCatalogue *out_catalogue)
{
  g_autofree char *path = shipped_path ("metals.xml");
  g_autoptr (GError) error = NULL;

  ck_assert_msg (em_catalogue_load (path, out_catalogue, &error), "%s", error != NULL ? error->message : "");
}

static gboolean
parse (const char *xml, EmCatalogue *out_catalogue, GError **error)
{
  g_autoptr (GBytes) bytes = g_bytes_new (xml, strlen (xml));

  return em_catalogue_parse (bytes, "own.xml", out_catalogue, error);
}

static char *
write_text (const EmCatalogue *catalogue, gboolean only_own)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GBytes) bytes = em_catalogue_write (catalogue, only_own, &error);

  ck_assert_msg (bytes != NULL, "%s", error != NULL ? error->message : "");
  return g_strndup (g_bytes_get_data (bytes, NULL), g_bytes_get_size (bytes));
}

static const EmBase *
base_of (const EmCatalogue *catalogue, const char *id)
{
  int32_t at = em_catalogue_find_base (catalogue, id);

  ck_assert_msg (at >= 0, "no base %s", id);
  return &catalogue->base[at];
}

static const EmFiller *
filler_of (const EmCatalogue *catalogue, const char *id)
{
  int32_t at = em_catalogue_find_filler (catalogue, id);

  ck_assert_msg (at >= 0, "no filler %s", id);
  return &catalogue->filler[at];
}

/* ---- what is shipped ---- */

START_TEST (test_shipped_is_whole)
{
  static const char *const bases[] =
  {
    "p20", "p20-ni", "h11", "h13", "s7", "a2", "d2", "o1", "m2", "4140", "410", "420", "17-4ph", "316l", "maraging-250",
    "maraging-300", "c17200", "6061", "7075", "grey-iron", "ductile-iron",
  };
  EmCatalogue catalogue;
  EmFault fault;

  load_shipped (&catalogue);
  ck_assert_int_ge (catalogue.n_bases, 20);
  ck_assert_int_ge (catalogue.n_fillers, 24);
  for (gsize i = 0; i < G_N_ELEMENTS (bases); i++)
    base_of (&catalogue, bases[i]);
  for (int32_t i = 0; i < catalogue.n_bases; i++)
    {
      ck_assert_int_eq (em_base_check (&catalogue.base[i], &fault), EM_OK);
      ck_assert_msg (catalogue.base[i].source != NULL, "%s names no source", catalogue.base[i].id);
      ck_assert (!catalogue.base[i].is_own && !catalogue.base[i].is_retired);
    }
  for (int32_t i = 0; i < catalogue.n_fillers; i++)
    {
      const EmFiller *filler = &catalogue.filler[i];

      ck_assert_int_eq (em_filler_check (filler, &fault), EM_OK);
      ck_assert_msg (filler->source != NULL, "%s names no source", filler->id);
      ck_assert_msg (filler->has_demo_price, "%s: a shipped price is invented and has to say so", filler->id);
      ck_assert_msg (filler->n_sizes > 0, "%s has no size", filler->id);
      for (int k = 0; k < filler->n_sizes; k++)
        ck_assert_msg (filler->size[k].wire_mm >= 0.2 && filler->size[k].wire_mm <= 1.6, "%s: %g mm", filler->id, filler->size[k].wire_mm);
    }
  em_catalogue_clear (&catalogue);
}
END_TEST

static EmPairing
pair (const EmCatalogue *catalogue, const char *base, const char *filler, EmProcess process)
{
  EmPairing pairing;

  em_steel_pair (base_of (catalogue, base), filler_of (catalogue, filler), process, 0.2, EM_ABSENT, EM_ABSENT, &pairing, NULL);
  return pairing;
}

#define HAS(pairing, reason) (((pairing).reasons & EM_REASON_BIT (EM_REASON_##reason)) != 0)

/* Common practice, no source; of the records as shipped. P20 wire on P20: nominally softer than the parent, from a laser's fast
 * quench somewhat harder. 420 on 420 where the plastic is abrasive. Unlike steels: 309L joins stainless to a hardened tool steel. */
START_TEST (test_shipped_pairs_hold_what_the_trade_knows)
{
  EmCatalogue catalogue;

  load_shipped (&catalogue);

  const EmBase *p20 = base_of (&catalogue, "p20");
  const EmFiller *wire = filler_of (&catalogue, "p20-wire");
  EmPairing laser = pair (&catalogue, "p20", "p20-wire", EM_PROCESS_LASER), arc = pair (&catalogue, "p20", "p20-wire", EM_PROCESS_GTAW);

  ck_assert_double_lt (wire->hardness_low_hrc + wire->hardness_high_hrc, p20->hardness_low_hrc + p20->hardness_high_hrc);
  ck_assert_double_gt (laser.martensite_hrc.value, laser.base_hrc);
  ck_assert (HAS (laser, LASER_ABOVE_TOOL) && HAS (laser, MATCHES_BASE) && !HAS (laser, SOFTER));
  ck_assert (HAS (arc, SOFTER) && !HAS (arc, LASER_ABOVE_TOOL));
  ck_assert (HAS (pair (&catalogue, "420", "er420", EM_PROCESS_LASER), ABRASIVE_PLASTIC));
  ck_assert (!HAS (pair (&catalogue, "420", "er316l", EM_PROCESS_LASER), ABRASIVE_PLASTIC));
  ck_assert (!HAS (pair (&catalogue, "p20", "er420", EM_PROCESS_LASER), ABRASIVE_PLASTIC));

  EmPairing unlike = pair (&catalogue, "4140", "er309l", EM_PROCESS_LASER);

  ck_assert (unlike.is_suited && HAS (unlike, JOINS_UNLIKE) && HAS (unlike, DISSIMILAR));
  em_catalogue_clear (&catalogue);
}
END_TEST

/* Every reason that the records can give is given by some pair of what is shipped; the others are the comparison's. */
START_TEST (test_every_reason_occurs)
{
  const EmReasons of_comparison = EM_REASON_BIT (EM_REASON_CHEAPEST) | EM_REASON_BIT (EM_REASON_NOT_STOCKED)
                                  | EM_REASON_BIT (EM_REASON_NO_SIZE_FITS) | EM_REASON_BIT (EM_REASON_RETIRED);
  EmReasons seen = of_comparison;
  EmCatalogue catalogue;

  load_shipped (&catalogue);
  for (int32_t b = 0; b < catalogue.n_bases; b++)
    for (int32_t f = 0; f < catalogue.n_fillers; f++)
      for (int p = 0; p < EM_N_PROCESS; p++)
        seen |= pair (&catalogue, catalogue.base[b].id, catalogue.filler[f].id, (EmProcess) p).reasons;
  for (int i = 0; i < EM_N_REASON; i++)
    ck_assert_msg ((seen & EM_REASON_BIT (i)) != 0, "nothing shipped is %s", em_reason_ids[i]);
  em_catalogue_clear (&catalogue);
}
END_TEST

/* No two records of a kind by the same name, and none that says "wire" again where sentences say it already. */
START_TEST (test_designations)
{
  EmCatalogue catalogue;

  load_shipped (&catalogue);
  for (int32_t i = 0; i < catalogue.n_fillers; i++)
    {
      ck_assert_msg (strstr (catalogue.filler[i].designation, "wire") == NULL, "%s", catalogue.filler[i].designation);
      for (int32_t j = 0; j < i; j++)
        ck_assert_str_ne (catalogue.filler[i].designation, catalogue.filler[j].designation);
    }
  for (int32_t i = 0; i < catalogue.n_bases; i++)
    for (int32_t j = 0; j < i; j++)
      ck_assert_str_ne (catalogue.base[i].designation, catalogue.base[j].designation);
  em_catalogue_clear (&catalogue);
}
END_TEST

/* Density 7.85 g/cm³ of P20 (published data sheet) is 0.00785 g/mm³; 28–36 HRC and the list of processes as in the file. */
START_TEST (test_values_arrive)
{
  EmCatalogue catalogue;

  load_shipped (&catalogue);

  const EmBase *p20 = base_of (&catalogue, "p20"), *steel_316l = base_of (&catalogue, "316l");
  const EmFiller *er4043 = filler_of (&catalogue, "er4043");

  ck_assert_double_eq (p20->density_g_per_mm3, 0.00785);
  ck_assert_double_eq (p20->composition.low_pct[EM_EL_CR], 1.4);
  ck_assert_double_eq (p20->composition.high_pct[EM_EL_CR], 2.0);
  ck_assert_int_eq (p20->composition.balance, EM_EL_FE);
  ck_assert (em_is_absent (p20->hardness_low_hv) && em_is_absent (p20->laser_preheat_degc));
  ck_assert (em_is_absent (steel_316l->hardness_low_hrc) && !em_is_absent (steel_316l->hardness_low_hv));
  ck_assert_int_eq (er4043->composition.balance, EM_EL_AL);
  ck_assert_int_eq (er4043->family, EM_FAMILY_ALUMINIUM);
  ck_assert_uint_eq (er4043->processes, (1u << EM_PROCESS_LASER) | (1u << EM_PROCESS_GTAW));
  ck_assert (er4043->machines_easily && !er4043->polishes && er4043->size[0].is_stocked);
  em_catalogue_clear (&catalogue);
}
END_TEST

START_TEST (test_round_trip)
{
  EmCatalogue first, second;
  g_autoptr (GError) error = NULL;

  load_shipped (&first);

  g_autofree char *once = write_text (&first, FALSE);

  ck_assert_msg (parse (once, &second, &error), "%s", error != NULL ? error->message : "");

  g_autofree char *twice = write_text (&second, FALSE);

  ck_assert_str_eq (once, twice);
  ck_assert_int_eq (first.n_bases, second.n_bases);
  ck_assert_int_eq (first.n_fillers, second.n_fillers);
  for (int32_t i = 0; i < first.n_bases; i++)
    ck_assert_double_eq (first.base[i].density_g_per_mm3, second.base[i].density_g_per_mm3);
  em_catalogue_clear (&first);
  em_catalogue_clear (&second);
}
END_TEST

/* ---- the smallest record, and what makes it bad ---- */

#define HEAD "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<metals xmlns=\"urn:estimend:metals\" version=\"1.0\">\n"
#define TAIL "</metals>\n"
#define BASE(id, density) \
  "  <base id=\"" id "\" designation=\"Test steel\" family=\"tool-steel\" balance=\"Fe\" density-g-per-cm3=\"" density "\">\n    <source>invented</source>\n  </base>\n"
#define WIRE_HEAD(id) \
  "  <filler id=\"" id "\" designation=\"Test wire\" family=\"tool-steel\" balance=\"Fe\" density-g-per-cm3=\"7.8\" melt-j-per-g=\"1300\" processes=\"laser\">\n" \
  "    <source>invented</source>\n"
#define SIZE(mm) "    <size wire-mm=\"" mm "\" price-minor=\"100\" per=\"metre\" stocked=\"yes\"/>\n"
#define WIRE_TAIL "  </filler>\n"

/* Every density a data sheet would print, in steps of 0.001 g/cm³, comes back as the same number in the same words. */
START_TEST (test_density_keeps)
{
  EmCatalogue catalogue;

  ck_assert (parse (HEAD BASE ("a", "7.8") TAIL, &catalogue, NULL));
  for (int i = 1500; i <= 20000; i += 7)
    {
      EmCatalogue again;
      g_autofree char *wanted = g_strdup_printf ("density-g-per-cm3=\"%d%s", i / 1000, i % 1000 == 0 ? "\"" : ".");

      catalogue.base[0].density_g_per_mm3 = i / 1000.0 / 1000.0;

      g_autofree char *text = write_text (&catalogue, FALSE);

      ck_assert_msg (strstr (text, wanted) != NULL, "%d: %s", i, text);
      ck_assert (parse (text, &again, NULL));
      ck_assert_double_eq (again.base[0].density_g_per_mm3, catalogue.base[0].density_g_per_mm3);
      em_catalogue_clear (&again);
    }
  em_catalogue_clear (&catalogue);
}
END_TEST

static const struct
{
  const char *name, *xml;
  EmFileError code;
  const char *says;      /* part of the sentence */
} refused[] = {
  { "empty", "", EM_FILE_ERROR_NOT_OURS, "own.xml" },
  { "not XML", "P20;0.4;12.50\n", EM_FILE_ERROR_SYNTAX, "own.xml" },
  { "other root", "<book xmlns=\"urn:estimend:metals\"/>", EM_FILE_ERROR_NOT_OURS, "own.xml" },
  { "other namespace", "<metals xmlns=\"urn:other\" version=\"1.0\"/>", EM_FILE_ERROR_NOT_OURS, "own.xml" },
  { "cut short", HEAD BASE ("a", "7.8"), EM_FILE_ERROR_SYNTAX, "own.xml" },
  { "newer major", "<metals xmlns=\"urn:estimend:metals\" version=\"2.0\"/>", EM_FILE_ERROR_NEWER, "2" },
  { "document type", "<!DOCTYPE metals [<!ENTITY a \"b\">]>" HEAD TAIL, EM_FILE_ERROR_HOSTILE, "own.xml" },
  { "no version", "<metals xmlns=\"urn:estimend:metals\"/>", EM_FILE_ERROR_VALUE, "version" },
  { "unknown element", HEAD "  <steel/>\n" TAIL, EM_FILE_ERROR_VALUE, "steel" },
  { "no id", HEAD "  <base designation=\"x\" family=\"copper\" balance=\"Cu\" density-g-per-cm3=\"8\"/>\n" TAIL, EM_FILE_ERROR_VALUE, "line 3, “id”" },
  { "id of capitals", HEAD BASE ("A2", "7.8") TAIL, EM_FILE_ERROR_VALUE, "line 3, “id”" },
  { "id with a path", HEAD BASE ("../a", "7.8") TAIL, EM_FILE_ERROR_VALUE, "“id”" },
  { "id twice", HEAD BASE ("a", "7.8") BASE ("a", "7.9") TAIL, EM_FILE_ERROR_VALUE, "line 6, “id”: “a”" },
  { "density in g/mm³", HEAD BASE ("a", "0.0078") TAIL, EM_FILE_ERROR_VALUE, "“density-g-per-cm3”" },
  { "density no number", HEAD BASE ("a", "7,8") TAIL, EM_FILE_ERROR_VALUE, "“density-g-per-cm3”" },
  { "density not finite", HEAD BASE ("a", "inf") TAIL, EM_FILE_ERROR_VALUE, "“density-g-per-cm3”" },
  { "unknown family", HEAD "  <base id=\"a\" designation=\"x\" family=\"wood\" balance=\"Fe\" density-g-per-cm3=\"8\"/>\n" TAIL, EM_FILE_ERROR_VALUE, "“family”" },
  { "unknown attribute", HEAD "  <base id=\"a\" designation=\"x\" family=\"copper\" balance=\"Cu\" density-g-per-cm3=\"8\" colour=\"red\"/>\n" TAIL,
    EM_FILE_ERROR_VALUE, "“colour”" },
  { "span of one", HEAD "  <base id=\"a\" designation=\"x\" family=\"copper\" balance=\"Cu\" density-g-per-cm3=\"8\" hardness-hv=\"90\"/>\n" TAIL,
    EM_FILE_ERROR_VALUE, "“hardness-hv”" },
  { "span the wrong way", HEAD "  <base id=\"a\" designation=\"x\" family=\"copper\" balance=\"Cu\" density-g-per-cm3=\"8\" hardness-hv=\"90 80\"/>\n" TAIL,
    EM_FILE_ERROR_VALUE, "“hardness-hv”" },
  { "hardness too high", HEAD "  <base id=\"a\" designation=\"x\" family=\"copper\" balance=\"Cu\" density-g-per-cm3=\"8\" hardness-hrc=\"60 99\"/>\n" TAIL,
    EM_FILE_ERROR_VALUE, "“hardness”" },
  { "element twice", HEAD "  <base id=\"a\" designation=\"x\" family=\"copper\" balance=\"Cu\" density-g-per-cm3=\"8\"><source/><contains element=\"C\" low=\"0\" high=\"1\"/>"
    "<contains element=\"C\" low=\"0\" high=\"1\"/></base>\n" TAIL, EM_FILE_ERROR_VALUE, "“element”" },
  { "range the wrong way", HEAD "  <base id=\"a\" designation=\"x\" family=\"copper\" balance=\"Cu\" density-g-per-cm3=\"8\"><source/>"
    "<contains element=\"C\" low=\"2\" high=\"1\"/></base>\n" TAIL, EM_FILE_ERROR_VALUE, "“high”" },
  { "more than all", HEAD "  <base id=\"a\" designation=\"x\" family=\"copper\" balance=\"Cu\" density-g-per-cm3=\"8\"><source/>"
    "<contains element=\"C\" low=\"90\" high=\"90\"/><contains element=\"Ni\" low=\"20\" high=\"20\"/></base>\n" TAIL, EM_FILE_ERROR_VALUE, "composition" },
  { "no process", HEAD "  <filler id=\"a\" designation=\"x\" family=\"copper\" balance=\"Cu\" density-g-per-cm3=\"8\" melt-j-per-g=\"670\"/>\n" TAIL,
    EM_FILE_ERROR_VALUE, "“processes”" },
  { "unknown process", HEAD "  <filler id=\"a\" designation=\"x\" family=\"copper\" balance=\"Cu\" density-g-per-cm3=\"8\" melt-j-per-g=\"670\" processes=\"glue\"/>\n" TAIL,
    EM_FILE_ERROR_VALUE, "“processes”" },
  { "no melt enthalpy", HEAD "  <filler id=\"a\" designation=\"x\" family=\"copper\" balance=\"Cu\" density-g-per-cm3=\"8\" processes=\"laser\"/>\n" TAIL,
    EM_FILE_ERROR_VALUE, "“melt-j-per-g”" },
  { "sizes out of order", HEAD WIRE_HEAD ("a") SIZE ("0.5") SIZE ("0.4") WIRE_TAIL TAIL, EM_FILE_ERROR_VALUE, "wire" },
  { "size of nothing", HEAD WIRE_HEAD ("a") SIZE ("0") WIRE_TAIL TAIL, EM_FILE_ERROR_VALUE, "“wire-mm”" },
  { "nine sizes", HEAD WIRE_HEAD ("a") SIZE ("0.1") SIZE ("0.2") SIZE ("0.3") SIZE ("0.4") SIZE ("0.5") SIZE ("0.6") SIZE ("0.7") SIZE ("0.8") SIZE ("0.9")
    WIRE_TAIL TAIL, EM_FILE_ERROR_VALUE, "“size”" },
  { "price below nothing", HEAD WIRE_HEAD ("a") "<size wire-mm=\"1\" price-minor=\"-1\" per=\"metre\"/>" WIRE_TAIL TAIL, EM_FILE_ERROR_VALUE, "“price-minor”" },
  { "price with decimals", HEAD WIRE_HEAD ("a") "<size wire-mm=\"1\" price-minor=\"1.5\" per=\"metre\"/>" WIRE_TAIL TAIL, EM_FILE_ERROR_VALUE, "“price-minor”" },
  { "price per mile", HEAD WIRE_HEAD ("a") "<size wire-mm=\"1\" price-minor=\"1\" per=\"mile\"/>" WIRE_TAIL TAIL, EM_FILE_ERROR_VALUE, "“per”" },
};

START_TEST (test_refused)
{
  EmCatalogue catalogue = { .n_bases = -7 };
  g_autoptr (GError) error = NULL;

  ck_assert_msg (!parse (refused[_i].xml, &catalogue, &error), "%s was read", refused[_i].name);
  ck_assert_msg (g_error_matches (error, EM_FILE_ERROR, (int) refused[_i].code), "%s: code %d, %s", refused[_i].name, error->code, error->message);
  ck_assert_msg (strstr (error->message, "own.xml") != NULL && strstr (error->message, refused[_i].says) != NULL,
                 "%s: %s", refused[_i].name, error->message);
  ck_assert_int_eq (catalogue.n_bases, -7);
}
END_TEST

/* One byte of the shipped file changed, at 1,500 places: read or refused, and what is read passes the checks. */
START_TEST (test_damaged)
{
  g_autofree char *path = shipped_path ("metals.xml");
  g_autofree char *data = NULL;
  gsize size;
  guint n_refused = 0;
  g_autoptr (GRand) dice = g_rand_new_with_seed (20261125);

  ck_assert (g_file_get_contents (path, &data, &size, NULL));
  for (int i = 0; i < 1500; i++)
    {
      gsize at = (gsize) g_rand_int_range (dice, 0, (gint32) size);
      char old = data[at];
      EmCatalogue catalogue;
      EmFault fault;
      g_autoptr (GError) error = NULL;

      data[at] = "<>\"&=0 \x80"[g_rand_int_range (dice, 0, 8)];

      g_autoptr (GBytes) bytes = g_bytes_new_static (data, size);

      if (em_catalogue_parse (bytes, "damaged.xml", &catalogue, &error))
        {
          for (int32_t k = 0; k < catalogue.n_bases; k++)
            ck_assert_int_eq (em_base_check (&catalogue.base[k], &fault), EM_OK);
          em_catalogue_clear (&catalogue);
        }
      else
        {
          ck_assert (error != NULL && error->domain == EM_FILE_ERROR);
          n_refused++;
        }
      data[at] = old;
    }
  ck_assert_uint_gt (n_refused, 200);
}
END_TEST

/* ---- merging ---- */

/* A shop changed P20, retired ER312 and has a steel of its own; then our data change P20 and 316L and gain a metal. Theirs
 * stay, ours arrive where the shop said nothing. */
START_TEST (test_own_wins)
{
  EmCatalogue ours, theirs;
  g_autoptr (GError) error = NULL;

  ck_assert (parse (HEAD BASE ("p20", "7.7") BASE ("316l", "8.01") BASE ("new-of-ours", "7.6") WIRE_HEAD ("er312") SIZE ("0.5") WIRE_TAIL TAIL, &ours, NULL));
  ck_assert_msg (parse (HEAD BASE ("p20", "7.86") BASE ("shop-steel", "7.9")
                        "  <filler id=\"er312\" designation=\"Their wire\" family=\"tool-steel\" balance=\"Fe\" density-g-per-cm3=\"7.8\" retired=\"yes\""
                        " melt-j-per-g=\"1300\" processes=\"gtaw\">\n    <source>the shop</source>\n  </filler>\n" TAIL, &theirs, &error),
                 "%s", error != NULL ? error->message : "");
  ck_assert (em_catalogue_merge (&ours, &theirs, &error));
  ck_assert_int_eq (ours.n_bases, 4);
  ck_assert_int_eq (ours.n_fillers, 1);
  ck_assert_double_eq (base_of (&ours, "p20")->density_g_per_mm3, 0.00786);
  ck_assert (base_of (&ours, "p20")->is_own && base_of (&ours, "shop-steel")->is_own);
  ck_assert_double_eq (base_of (&ours, "316l")->density_g_per_mm3, 0.00801);
  ck_assert (!base_of (&ours, "316l")->is_own && !base_of (&ours, "new-of-ours")->is_own);
  ck_assert_str_eq (filler_of (&ours, "er312")->designation, "Their wire");
  ck_assert (filler_of (&ours, "er312")->is_retired && filler_of (&ours, "er312")->is_own);
  em_catalogue_clear (&ours);
  em_catalogue_clear (&theirs);
}
END_TEST

/* What is saved as the shop's own is what it changed, and merging it again gives the same whole. */
START_TEST (test_only_own)
{
  EmCatalogue shipped, again, own;
  g_autoptr (GError) error = NULL;

  load_shipped (&shipped);
  load_shipped (&again);
  shipped.base[2].is_own = true;
  shipped.base[2].density_g_per_mm3 = 0.0079;
  shipped.filler[5].is_own = true;
  shipped.filler[5].size[0].price_minor = 4321;

  g_autofree char *text = write_text (&shipped, TRUE);

  ck_assert_msg (parse (text, &own, &error), "%s", error != NULL ? error->message : "");
  ck_assert_int_eq (own.n_bases, 1);
  ck_assert_int_eq (own.n_fillers, 1);
  ck_assert_int_eq (own.filler[0].size[0].price_minor, 4321);
  ck_assert (em_catalogue_merge (&again, &own, &error));

  g_autofree char *whole = write_text (&shipped, FALSE), *merged = write_text (&again, FALSE);

  ck_assert_str_eq (whole, merged);
  em_catalogue_clear (&shipped);
  em_catalogue_clear (&again);
  em_catalogue_clear (&own);
}
END_TEST

/* ---- files ---- */

START_TEST (test_save_and_validate)
{
  g_autofree char *folder = g_dir_make_tmp ("estimend-catalogue-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (folder, "inner", "metals.xml", NULL);
  g_autofree char *inner = g_path_get_dirname (path), *schema = shipped_path ("metals.rng");
  g_autofree char *xmllint = g_find_program_in_path ("xmllint");
  EmCatalogue catalogue, again;
  g_autoptr (GError) error = NULL;

  load_shipped (&catalogue);
  catalogue.base[0].is_own = catalogue.filler[0].is_own = catalogue.filler[1].is_retired = true;
  ck_assert_msg (em_catalogue_save (path, &catalogue, FALSE, &error), "%s", error != NULL ? error->message : "");
  ck_assert_msg (em_catalogue_load (path, &again, &error), "%s", error != NULL ? error->message : "");
  ck_assert (again.base[0].is_own && again.filler[0].is_own && again.filler[1].is_retired);
  if (xmllint != NULL)
    {
      const char *const argv[] = { xmllint, "--noout", "--nonet", "--relaxng", schema, path, NULL };
      int status = -1;

      ck_assert (g_spawn_sync (NULL, (char **) argv, NULL, G_SPAWN_STDERR_TO_DEV_NULL, NULL, NULL, NULL, NULL, &status, NULL));
      ck_assert_int_eq (status, 0);
    }
  else
    g_message ("xmllint is not here: the schema was not asked");
  g_remove (path);
  ck_assert_int_eq (g_mkdir (path, 0700), 0);
  ck_assert (!em_catalogue_save (path, &catalogue, FALSE, &error));
  ck_assert (g_error_matches (error, EM_FILE_ERROR, EM_FILE_ERROR_WRITE));
  g_rmdir (path);
  g_rmdir (inner);
  g_rmdir (folder);
  em_catalogue_clear (&catalogue);
  em_catalogue_clear (&again);
}
END_TEST

/* By a version 1.6 that does not exist: words, attributes and elements it alone knows, in every place. */
static const char newer[] =
  "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
  "<metals xmlns=\"urn:estimend:metals\" version=\"1.6\" edition=\"spring\">\n"
  "  <base id=\"a\" designation=\"A\" family=\"tool-steel\" balance=\"Fe\" density-g-per-cm3=\"7.8\" own=\"yes\" magnetic=\"yes\">\n"
  "    <source page=\"3\">invented</source>\n"
  "    <contains element=\"C\" low=\"0.3\" high=\"0.4\" typical=\"0.35\">\n"
  "      <lot xmlns=\"urn:estimend:metals\" no=\"2\"/>\n"
  "    </contains>\n"
  "    <contains xmlns=\"urn:estimend:metals\" element=\"Uuo\" low=\"1\" high=\"2\"/>\n"
  "    <curve xmlns=\"urn:estimend:metals\"><point t=\"1\"/></curve>\n"
  "  </base>\n"
  "  <filler id=\"w\" designation=\"W\" family=\"tool-steel\" balance=\"Fe\" density-g-per-cm3=\"7.8\" own=\"yes\" melt-j-per-g=\"1300\""
  " processes=\"laser\" colour=\"red\">\n"
  "    <source>invented</source>\n"
  "    <remark lang=\"en\">soft</remark>\n"
  "    <size wire-mm=\"0.5\" price-minor=\"100\" per=\"metre\" spool=\"big\">\n"
  "      <from xmlns=\"urn:estimend:metals\" pieces=\"10\"/>\n"
  "    </size>\n"
  "    <size xmlns=\"urn:estimend:metals\" wire-mm=\"0.6\" price-minor=\"100\" per=\"spool\"/>\n"
  "  </filler>\n"
  "  <base xmlns=\"urn:estimend:metals\" id=\"g\" designation=\"G\" family=\"glass\" balance=\"Fe\" density-g-per-cm3=\"2\"><source>x</source></base>\n"
  "  <paste xmlns=\"urn:estimend:metals\" id=\"p\"/>\n"
  "</metals>\n";

START_TEST (test_newer_is_kept)
{
  g_autoptr (GBytes) bytes = g_bytes_new_static (newer, sizeof newer - 1), again = NULL, edited = NULL, merged = NULL;
  g_autoptr (GError) error = NULL;
  EmCatalogue catalogue, copy, shipped;

  ck_assert_msg (em_catalogue_parse (bytes, "newer", &catalogue, &error), "%s", error != NULL ? error->message : "");
  ck_assert (catalogue.n_bases == 1 && catalogue.n_fillers == 1 && catalogue.filler[0].n_sizes == 1);
  again = em_catalogue_write (&catalogue, FALSE, NULL);
  g_autofree char *text = g_strndup (g_bytes_get_data (again, NULL), g_bytes_get_size (again));
  ck_assert_str_eq (text, newer);
  /* Through a copy and an edit. */
  ck_assert (em_catalogue_copy (&catalogue, &copy) == EM_OK);
  copy.base[0].is_retired = true;
  edited = em_catalogue_write (&copy, FALSE, NULL);
  g_autofree char *after = g_strndup (g_bytes_get_data (edited, NULL), g_bytes_get_size (edited));
  g_auto (GStrv) parts = g_strsplit (newer, " own=\"yes\" magnetic", 2);
  g_autofree char *wanted = g_strconcat (parts[0], " retired=\"yes\" own=\"yes\" magnetic", parts[1], NULL);
  ck_assert_str_eq (after, wanted);
  /* And as the shop's own over what is shipped. */
  em_catalogue_init (&shipped);
  ck_assert (em_catalogue_merge (&shipped, &catalogue, NULL));
  merged = em_catalogue_write (&shipped, TRUE, NULL);
  ck_assert (g_bytes_equal (merged, again));
  em_catalogue_clear (&shipped);
  em_catalogue_clear (&copy);
  em_catalogue_clear (&catalogue);
  /* In a file of this version the same is damage. */
  g_auto (GStrv) halves = g_strsplit (newer, "1.6", 2);
  g_autofree char *present = g_strjoinv ("1.0", halves);
  g_autoptr (GBytes) damaged = g_bytes_new_static (present, strlen (present));
  ck_assert (!em_catalogue_parse (damaged, "present", &catalogue, NULL));
}
END_TEST

/* A remark and a text as it is, in what only a newer version knows: such a file could be opened, but not saved. Found by a fuzzer. */
START_TEST (test_newer_with_remarks_is_kept)
{
  static const char text[] =
    "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
    "<metals xmlns=\"urn:estimend:metals\" version=\"1.6\">\n"
    "  <paste xmlns=\"urn:estimend:metals\" id=\"p\"><!-- <!DOCTYPE x> is only told here --><use><![CDATA[a < b]]></use><?lot 7?></paste>\n"
    "</metals>\n";
  g_autoptr (GBytes) bytes = g_bytes_new_static (text, sizeof text - 1), once = NULL, twice = NULL;
  g_autoptr (GError) error = NULL;
  EmCatalogue catalogue;

  ck_assert_msg (em_catalogue_parse (bytes, "newer", &catalogue, &error), "%s", error != NULL ? error->message : "");
  once = em_catalogue_write (&catalogue, FALSE, &error);
  ck_assert_msg (once != NULL, "%s", error != NULL ? error->message : "");
  em_catalogue_clear (&catalogue);
  g_autofree char *written = g_strndup (g_bytes_get_data (once, NULL), g_bytes_get_size (once));
  ck_assert_str_eq (written, text);
  ck_assert (em_catalogue_parse (once, "written", &catalogue, NULL));
  twice = em_catalogue_write (&catalogue, FALSE, NULL);
  ck_assert (g_bytes_equal (once, twice));
  em_catalogue_clear (&catalogue);
}
END_TEST

START_TEST (test_missing_file)
{
  EmCatalogue catalogue;
  g_autoptr (GError) error = NULL;

  ck_assert (!em_catalogue_load ("/nowhere/metals.xml", &catalogue, &error));
  ck_assert (g_error_matches (error, EM_FILE_ERROR, EM_FILE_ERROR_READ));
}
END_TEST

int
main (void)
{
  Suite *suite = suite_create ("catalogue");
  TCase *tcase = tcase_create ("catalogue");
  SRunner *runner;

  tcase_set_timeout (tcase, 60);
  tcase_add_test (tcase, test_shipped_is_whole);
  tcase_add_test (tcase, test_values_arrive);
  tcase_add_test (tcase, test_round_trip);
  tcase_add_test (tcase, test_density_keeps);
  tcase_add_loop_test (tcase, test_refused, 0, G_N_ELEMENTS (refused));
  tcase_add_test (tcase, test_damaged);
  tcase_add_test (tcase, test_own_wins);
  tcase_add_test (tcase, test_only_own);
  tcase_add_test (tcase, test_save_and_validate);
  tcase_add_test (tcase, test_newer_is_kept);
  tcase_add_test (tcase, test_newer_with_remarks_is_kept);
  tcase_add_test (tcase, test_missing_file);
  tcase_add_test (tcase, test_shipped_pairs_hold_what_the_trade_knows);
  tcase_add_test (tcase, test_every_reason_occurs);
  tcase_add_test (tcase, test_designations);
  suite_add_tcase (suite, tcase);
  runner = srunner_create (suite);
  srunner_run_all (runner, CK_ENV);

  int n_failed = srunner_ntests_failed (runner);

  srunner_free (runner);
  return n_failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
