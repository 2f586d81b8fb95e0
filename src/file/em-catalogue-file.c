/* em-catalogue-file: base metals and filler wires as XML of our own (data/metals.rng).
 *
 * Densities stand in the file in g/cm³, as data sheets give them, and in the catalogue in g/mm³; all else has one unit
 * throughout, told by the attribute's name.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "config.h"

#include "em-book-file.h"
#include "em-catalogue-file.h"
#include "em-price-list.h"
#include "em-save.h"
#include "em-shown.h"

#include <glib/gi18n-lib.h>
#include <string.h>

enum { VERSION_MAJOR = 1, VERSION_MINOR = 0, ID_BYTES_MAX = 60 };

/* What a wire is good for, as words of one list. */
static const struct
{
  const char *word;
  size_t      offset;
} suits[] = {
  { "polishes", offsetof (EmFiller, polishes) },
  { "textures", offsetof (EmFiller, textures) },
  { "nitrides", offsetof (EmFiller, nitrides) },
  { "machines-easily", offsetof (EmFiller, machines_easily) },
  { "resists-corrosion", offsetof (EmFiller, resists_corrosion) },
  { "resists-wear", offsetof (EmFiller, resists_wear) },
};

/* What a base and a wire have alike, borrowed from either. */
typedef struct
{
  char         **id, **designation, **source, **remark;
  EmFamily      *family;
  EmComposition *composition;
  double        *density_g_per_mm3;
  double        *low_hrc, *high_hrc, *low_hv, *high_hv;
  bool          *is_retired, *is_own;
} Common;

static Common
base_common (EmBase *base)
{
  return (Common) {
    &base->id, &base->designation, &base->source, &base->remark, &base->family, &base->composition, &base->density_g_per_mm3,
    &base->hardness_low_hrc, &base->hardness_high_hrc, &base->hardness_low_hv, &base->hardness_high_hv, &base->is_retired, &base->is_own,
  };
}

static Common
filler_common (EmFiller *filler)
{
  return (Common) {
    &filler->id, &filler->designation, &filler->source, &filler->remark, &filler->family, &filler->composition,
    &filler->density_g_per_mm3, &filler->hardness_low_hrc, &filler->hardness_high_hrc, &filler->hardness_low_hv,
    &filler->hardness_high_hv, &filler->is_retired, &filler->is_own,
  };
}

/* ---- reading ---- */

/* Text into *out, freed with free() as the core does; "" counts as absent. */
static void
keep_text (EmXmlReader *reader, const char *text, char **out)
{
  free (*out);
  *out = text != NULL && text[0] != '\0' ? em_text_dup (text) : NULL;
  if (*out == NULL && text != NULL && text[0] != '\0')
    em_xml_refuse (reader, EM_FILE_ERROR_READ, NULL, _("memory ran out."));
}

/* An attribute of two numbers, "28 34"; both stay as they are when it is absent. */
static void
read_span (EmXmlReader *reader, const char *name, double *out_low, double *out_high)
{
  const char *text = em_xml_attribute (reader, name);

  if (text == NULL)
    return;

  g_auto (GStrv) words = g_strsplit (text, " ", 3);
  double low, high;

  if (g_strv_length (words) != 2 || !em_number_read (words[0], &low) || !em_number_read (words[1], &high) || low > high)
    {
      em_xml_refuse (reader, EM_FILE_ERROR_VALUE, name, _("two numbers are wanted, the lower first, as in “28 34”."));
      return;
    }
  *out_low = low;
  *out_high = high;
}

/* Ids go into quotes, command lines and tables: lower-case letters, digits, points and hyphens. */
static gboolean
is_id (const char *text)
{
  return strlen (text) <= ID_BYTES_MAX && g_ascii_isalnum (text[0])
         && strspn (text, "abcdefghijklmnopqrstuvwxyz0123456789.-") == strlen (text);
}

static void
read_common (EmXmlReader *reader, const Common *common)
{
  em_xml_need (reader, "id");
  em_xml_need (reader, "designation");
  em_xml_need (reader, "family");
  em_xml_need (reader, "balance");
  em_xml_need (reader, "density-g-per-cm3");

  const char *id = em_xml_attribute (reader, "id");

  if (id != NULL && !is_id (id))
    em_xml_refuse (reader, EM_FILE_ERROR_VALUE, "id", _("at most %d lower-case letters, digits, points and hyphens are wanted."), ID_BYTES_MAX);
  keep_text (reader, id, common->id);
  keep_text (reader, em_xml_attribute (reader, "designation"), common->designation);
  *common->family = (EmFamily) em_xml_choice (reader, "family", em_family_ids, EM_N_FAMILY, EM_FAMILY_TOOL_STEEL);
  common->composition->balance = (EmElement) em_xml_choice (reader, "balance", em_element_ids, EM_N_ELEMENT, EM_EL_FE);
  *common->density_g_per_mm3 = em_xml_real (reader, "density-g-per-cm3", EM_ABSENT, 1.5, 20.0) / 1000.0;
  read_span (reader, "hardness-hrc", common->low_hrc, common->high_hrc);
  read_span (reader, "hardness-hv", common->low_hv, common->high_hv);
  *common->is_retired = em_xml_boolean (reader, "retired", FALSE);
  *common->is_own = em_xml_boolean (reader, "own", FALSE);
}

/* What is read: where each record's own things of a newer version go, and ids so far. */
typedef struct
{
  EmXmlReader *reader;
  EmCatalogue *catalogue;
  GHashTable  *base_ids, *filler_ids;
  EmXmlKept    kept;
} Reading;

/* Whether each word of the present record is one of those known here. In a file of a newer version one that is not makes the record of
 * no use here, and it is kept whole: to guess would be to price with it. */
static gboolean
knows_word (EmXmlReader *reader, const char *name, const char *const *ids, int n_ids)
{
  const char *text = em_xml_attribute (reader, name);
  g_auto (GStrv) words = text != NULL ? g_strsplit (text, " ", 20) : NULL;

  for (int i = 0; words != NULL && words[i] != NULL; i++)
    {
      gboolean is_known = words[i][0] == '\0';
      for (int id = 0; id < n_ids && !is_known; id++)
        is_known = strcmp (words[i], ids[id]) == 0;
      if (!is_known)
        return FALSE;
    }
  return TRUE;
}

static gboolean
knows_record (EmXmlReader *reader)
{
  const char *suit_words[G_N_ELEMENTS (suits)];

  for (gsize i = 0; i < G_N_ELEMENTS (suits); i++)
    suit_words[i] = suits[i].word;
  return !em_xml_is_newer (reader)
         || (knows_word (reader, "family", em_family_ids, EM_N_FAMILY) && knows_word (reader, "balance", em_element_ids, EM_N_ELEMENT)
             && knows_word (reader, "processes", em_process_ids, EM_N_PROCESS)
             && knows_word (reader, "suits", suit_words, G_N_ELEMENTS (suits)));
}

static char *
record_place (const char *what, const char *id)
{
  return g_strconcat (what, ":", id != NULL ? id : "", NULL);
}

static char *
contains_place (const char *record, int element)
{
  return g_strconcat (record, ":contains:", em_element_ids[element], NULL);
}

static char *
size_place (const char *record, double wire_mm)
{
  char text[32];

  em_number_write (wire_mm, text, sizeof text);
  return g_strconcat (record, ":size:", text, NULL);
}

/* All of an element that holds nothing in this version. Takes place. */
static void
keep_rest (Reading *reading, char *place)
{
  em_xml_keep_attributes (reading->reader, &reading->kept, place);
  em_xml_keep_children (reading->reader, &reading->kept, place);
  g_free (place);
}

/* One <contains>: an element named twice is refused. */
static void
read_contains (Reading *reading, EmComposition *composition, guint32 *seen, const char *place)
{
  EmXmlReader *reader = reading->reader;

  if (em_xml_is_newer (reader) && !knows_word (reader, "element", em_element_ids, EM_N_ELEMENT))
    {
      em_xml_keep_element (reader, &reading->kept, place);
      return;
    }
  em_xml_need (reader, "element");
  em_xml_need (reader, "low");
  em_xml_need (reader, "high");

  int element = em_xml_choice (reader, "element", em_element_ids, EM_N_ELEMENT, EM_EL_FE);

  if ((*seen & (1u << element)) != 0)
    em_xml_refuse (reader, EM_FILE_ERROR_VALUE, "element", _("%s is named twice."), em_element_ids[element]);
  *seen |= 1u << element;
  composition->low_pct[element] = em_xml_real (reader, "low", 0.0, 0.0, 100.0);
  composition->high_pct[element] = em_xml_real (reader, "high", 0.0, composition->low_pct[element], 100.0);
  keep_rest (reading, contains_place (place, element));
}

/* A child that base and wire have alike; FALSE for any other. */
static gboolean
read_common_child (Reading *reading, const Common *common, guint32 *seen, const char *place)
{
  EmXmlReader *reader = reading->reader;

  if (em_xml_is (reader, "source") || em_xml_is (reader, "remark"))
    {
      char **out = em_xml_is (reader, "source") ? common->source : common->remark;
      g_autofree char *text_place = g_strconcat (place, ":", em_xml_name (reader), NULL);

      em_xml_keep_attributes (reader, &reading->kept, text_place);
      keep_text (reader, em_xml_text (reader), out);
      return TRUE;
    }
  if (!em_xml_is (reader, "contains"))
    return FALSE;
  read_contains (reading, common->composition, seen, place);
  return TRUE;
}

/* ids seen so far; one used twice is refused. */
static void
check_new (EmXmlReader *reader, GHashTable *ids, const char *id)
{
  if (id != NULL && !g_hash_table_add (ids, g_strdup (id)))
    em_xml_refuse (reader, EM_FILE_ERROR_VALUE, "id", _("“%s” is used twice."), id);
}

static void
refuse_status (EmXmlReader *reader, EmStatus status, const EmFault *fault)
{
  if (status == EM_FAULT_MEMORY || status == EM_FAULT_OVERFLOW)
    em_xml_refuse (reader, EM_FILE_ERROR_READ, NULL, _("memory ran out."));
  else if (status != EM_OK)
    em_xml_refuse_fault (reader, fault);
}

static void
read_base (Reading *reading)
{
  EmXmlReader *reader = reading->reader;
  EmFault fault;
  EmBase base;
  guint32 seen = 0;

  em_base_init (&base);

  Common common = base_common (&base);

  read_common (reader, &common);
  check_new (reader, reading->base_ids, base.id);
  g_autofree char *place = record_place ("base", base.id);
  base.temper_degc = em_xml_real (reader, "temper-degc", EM_ABSENT, 0.0, 1000.0);
  read_span (reader, "preheat-degc", &base.preheat_low_degc, &base.preheat_high_degc);
  base.laser_preheat_degc = em_xml_real (reader, "laser-preheat-degc", EM_ABSENT, 0.0, 1000.0);
  em_xml_keep_attributes (reader, &reading->kept, place);
  em_xml_begin (reader);
  while (em_xml_child (reader))
    if (!read_common_child (reading, &common, &seen, place))
      em_xml_keep_element (reader, &reading->kept, place);
  if (em_xml_is_good (reader))
    refuse_status (reader, em_base_check (&base, &fault), &fault);
  if (em_xml_is_good (reader))
    refuse_status (reader, em_catalogue_add_base_take (reading->catalogue, &base), &fault);
  em_base_clear (&base);
}

/* Words of a list, each of which take() has to know. */
static void
read_words (EmXmlReader *reader, const char *name, gboolean (*take) (EmFiller *filler, const char *word), EmFiller *filler)
{
  const char *text = em_xml_attribute (reader, name);

  if (text == NULL)
    return;

  g_auto (GStrv) words = g_strsplit (text, " ", 20);

  for (int i = 0; words[i] != NULL; i++)
    if (words[i][0] != '\0' && !take (filler, words[i]))
      em_xml_refuse (reader, EM_FILE_ERROR_VALUE, name, _("“%.40s” is not known here."), em_shown (words[i]).text);
}

static gboolean
take_process (EmFiller *filler, const char *word)
{
  for (int i = 0; i < EM_N_PROCESS; i++)
    if (strcmp (em_process_ids[i], word) == 0)
      {
        filler->processes |= 1u << i;
        return TRUE;
      }
  return FALSE;
}

static gboolean
take_suit (EmFiller *filler, const char *word)
{
  for (gsize i = 0; i < G_N_ELEMENTS (suits); i++)
    if (strcmp (suits[i].word, word) == 0)
      {
        *(bool *) G_STRUCT_MEMBER_P (filler, suits[i].offset) = true;
        return TRUE;
      }
  return FALSE;
}

static void
read_size (Reading *reading, EmFiller *filler, const char *place)
{
  EmXmlReader *reader = reading->reader;

  if (em_xml_is_newer (reader) && !knows_word (reader, "per", em_price_basis_ids, EM_N_PRICE_BASIS))
    {
      em_xml_keep_element (reader, &reading->kept, place);
      return;
    }
  if (filler->n_sizes >= EM_SIZE_MAX)
    {
      em_xml_refuse (reader, EM_FILE_ERROR_VALUE, "size", _("more than %d sizes of one wire."), EM_SIZE_MAX);
      return;
    }

  EmWireSize *size = &filler->size[filler->n_sizes++];

  em_xml_need (reader, "wire-mm");
  em_xml_need (reader, "price-minor");
  em_xml_need (reader, "per");
  size->wire_mm = em_xml_real (reader, "wire-mm", EM_ABSENT, 0.05, 5.0);
  size->price_minor = em_xml_integer (reader, "price-minor", 0, 0, G_GINT64_CONSTANT (1000000000000));
  size->basis = (EmPriceBasis) em_xml_choice (reader, "per", em_price_basis_ids, EM_N_PRICE_BASIS, EM_PER_METRE);
  size->is_stocked = em_xml_boolean (reader, "stocked", FALSE);
  keep_rest (reading, size_place (place, size->wire_mm));
}

static void
read_filler_attributes (EmXmlReader *reader, EmFiller *filler)
{
  em_xml_need (reader, "melt-j-per-g");
  em_xml_need (reader, "processes");
  filler->melt_j_per_g = em_xml_real (reader, "melt-j-per-g", EM_ABSENT, 100.0, 5000.0);
  read_span (reader, "aged-hrc", &filler->aged_low_hrc, &filler->aged_high_hrc);
  filler->stick_mm = em_xml_real (reader, "stick-mm", EM_ABSENT, 10.0, 5000.0);
  read_words (reader, "processes", take_process, filler);
  read_words (reader, "suits", take_suit, filler);
  keep_text (reader, em_xml_attribute (reader, "supplier-ref"), &filler->supplier_ref);
  filler->has_demo_price = em_xml_boolean (reader, "demo-price", FALSE);
}

static void
read_filler (Reading *reading)
{
  EmXmlReader *reader = reading->reader;
  EmFault fault;
  EmFiller filler;
  guint32 seen = 0;

  em_filler_init (&filler);

  Common common = filler_common (&filler);

  read_common (reader, &common);
  check_new (reader, reading->filler_ids, filler.id);
  g_autofree char *place = record_place ("filler", filler.id);
  read_filler_attributes (reader, &filler);
  em_xml_keep_attributes (reader, &reading->kept, place);
  em_xml_begin (reader);
  while (em_xml_child (reader))
    if (em_xml_is (reader, "size"))
      read_size (reading, &filler, place);
    else if (!read_common_child (reading, &common, &seen, place))
      em_xml_keep_element (reader, &reading->kept, place);
  if (em_xml_is_good (reader))
    refuse_status (reader, em_filler_check (&filler, &fault), &fault);
  if (em_xml_is_good (reader))
    refuse_status (reader, em_catalogue_add_filler_take (reading->catalogue, &filler), &fault);
  em_filler_clear (&filler);
}

void
em_catalogue_read_element (EmXmlReader *reader, EmCatalogue *out_catalogue)
{
  g_autoptr (GHashTable) base_ids = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  g_autoptr (GHashTable) filler_ids = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  Reading reading = { reader, out_catalogue, base_ids, filler_ids, { NULL, 0 } };

  em_catalogue_init (out_catalogue);
  em_xml_keep_attributes (reader, &reading.kept, "");
  em_xml_begin (reader);
  while (em_xml_child (reader))
    if (em_xml_is (reader, "base") && knows_record (reader))
      read_base (&reading);
    else if (em_xml_is (reader, "filler") && knows_record (reader))
      read_filler (&reading);
    else
      em_xml_keep_element (reader, &reading.kept, "");
  if (reading.kept.text != NULL)
    keep_text (reader, reading.kept.text->str, &out_catalogue->extra);
  em_xml_kept_clear (&reading.kept);
  if (!em_xml_is_good (reader))
    em_catalogue_clear (out_catalogue);
}

/* name: what messages call the file. Every record has passed the core's checks; ids are unique by sort. *out_catalogue is
 * untouched on failure. */
gboolean
em_catalogue_parse (GBytes *bytes, const char *name, EmCatalogue *out_catalogue, GError **error)
{
  g_autoptr (EmXmlReader) reader = em_xml_reader_new (bytes, name, EM_CATALOGUE_NS, "metals", NULL, error);
  EmCatalogue catalogue;

  if (reader == NULL)
    return FALSE;
  em_xml_version (reader, VERSION_MAJOR, VERSION_MINOR);
  em_catalogue_read_element (reader, &catalogue);
  if (!em_xml_reader_finish (reader, error))
    {
      em_catalogue_clear (&catalogue);
      return FALSE;
    }
  *out_catalogue = catalogue;
  return TRUE;
}

gboolean
em_catalogue_load (const char *path, EmCatalogue *out_catalogue, GError **error)
{
  g_autoptr (GBytes) bytes = em_xml_read_file (path, em_xml_limits.size_max, error);
  g_autofree char *name = bytes != NULL ? g_filename_display_basename (path) : NULL;

  return bytes != NULL && em_catalogue_parse (bytes, name, out_catalogue, error);
}

/* ---- writing ---- */

static void
put_span (EmXmlWriter *writer, const char *name, double low, double high)
{
  char low_text[32], high_text[32];

  if (em_is_absent (low) || em_is_absent (high))
    return;
  em_number_write (low, low_text, sizeof low_text);
  em_number_write (high, high_text, sizeof high_text);

  g_autofree char *text = g_strconcat (low_text, " ", high_text, NULL);

  em_xml_put (writer, name, text);
}

static void
put_if (EmXmlWriter *writer, const char *name, gboolean is_so)
{
  if (is_so)
    em_xml_put_boolean (writer, name, TRUE);
}

/* The g/cm³ that, read again, give exactly this density, with as few decimals as do. */
static double
density_g_per_cm3 (double density_g_per_mm3)
{
  double product = density_g_per_mm3 * 1000.0;

  for (double scale = 1.0; scale <= 1e14; scale *= 10.0)
    if (round (product * scale) / scale / 1000.0 == density_g_per_mm3)
      return round (product * scale) / scale;
  for (int i = 0; i < 3 && product / 1000.0 != density_g_per_mm3; i++)
    product = nextafter (product, product / 1000.0 < density_g_per_mm3 ? INFINITY : 0.0);
  return product;
}

static void
put_common (EmXmlWriter *writer, const Common *common)
{
  em_xml_put (writer, "id", *common->id);
  em_xml_put (writer, "designation", *common->designation);
  em_xml_put (writer, "family", em_family_ids[*common->family]);
  em_xml_put (writer, "balance", em_element_ids[common->composition->balance]);
  em_xml_put_real (writer, "density-g-per-cm3", density_g_per_cm3 (*common->density_g_per_mm3));
  put_if (writer, "retired", *common->is_retired);
  put_if (writer, "own", *common->is_own);
  put_span (writer, "hardness-hrc", *common->low_hrc, *common->high_hrc);
  put_span (writer, "hardness-hv", *common->low_hv, *common->high_hv);
}

/* Takes place. */
static void
put_kept (EmXmlWriter *writer, const char *kept, char *place)
{
  if (kept != NULL)
    em_xml_put_kept (writer, kept, place);
  g_free (place);
}

static void
put_common_children (EmXmlWriter *writer, const Common *common, const char *kept, const char *record)
{
  g_autofree char *source_place = g_strconcat (record, ":source", NULL), *remark_place = g_strconcat (record, ":remark", NULL);

  em_xml_put_text_kept (writer, "source", *common->source != NULL ? *common->source : "", kept, source_place);
  em_xml_put_text_kept (writer, "remark", *common->remark, kept, remark_place);
  for (int i = 0; i < EM_N_ELEMENT; i++)
    if (common->composition->low_pct[i] > 0.0 || common->composition->high_pct[i] > 0.0)
      {
        em_xml_open (writer, "contains");
        em_xml_put (writer, "element", em_element_ids[i]);
        em_xml_put_real (writer, "low", common->composition->low_pct[i]);
        em_xml_put_real (writer, "high", common->composition->high_pct[i]);
        put_kept (writer, kept, contains_place (record, i));
        em_xml_close (writer);
      }
}

static void
put_base (EmXmlWriter *writer, const EmBase *base, const char *kept)
{
  Common common = base_common ((EmBase *) base);
  g_autofree char *place = record_place ("base", base->id);

  em_xml_open (writer, "base");
  put_common (writer, &common);
  em_xml_put_real (writer, "temper-degc", base->temper_degc);
  put_span (writer, "preheat-degc", base->preheat_low_degc, base->preheat_high_degc);
  em_xml_put_real (writer, "laser-preheat-degc", base->laser_preheat_degc);
  em_xml_put_kept_attributes (writer, kept, place);
  put_common_children (writer, &common, kept, place);
  em_xml_put_kept_elements (writer, kept, place);
  em_xml_close (writer);
}

static void
put_word_lists (EmXmlWriter *writer, const EmFiller *filler)
{
  g_autoptr (GString) processes = g_string_new (NULL);
  g_autoptr (GString) words = g_string_new (NULL);

  for (int i = 0; i < EM_N_PROCESS; i++)
    if ((filler->processes & (1u << i)) != 0)
      g_string_append_printf (processes, "%s%s", processes->len > 0 ? " " : "", em_process_ids[i]);
  for (gsize i = 0; i < G_N_ELEMENTS (suits); i++)
    if (*(const bool *) G_STRUCT_MEMBER_P (filler, suits[i].offset))
      g_string_append_printf (words, "%s%s", words->len > 0 ? " " : "", suits[i].word);
  em_xml_put (writer, "processes", processes->str);
  em_xml_put (writer, "suits", words->len > 0 ? words->str : NULL);
}

static void
put_size (EmXmlWriter *writer, const EmWireSize *size, const char *kept, const char *record)
{
  em_xml_open (writer, "size");
  em_xml_put_real (writer, "wire-mm", size->wire_mm);
  em_xml_put_integer (writer, "price-minor", size->price_minor);
  em_xml_put (writer, "per", em_price_basis_ids[size->basis]);
  put_if (writer, "stocked", size->is_stocked);
  put_kept (writer, kept, size_place (record, size->wire_mm));
  em_xml_close (writer);
}

static void
put_filler (EmXmlWriter *writer, const EmFiller *filler, const char *kept)
{
  Common common = filler_common ((EmFiller *) filler);
  g_autofree char *place = record_place ("filler", filler->id);

  em_xml_open (writer, "filler");
  put_common (writer, &common);
  em_xml_put_real (writer, "melt-j-per-g", filler->melt_j_per_g);
  put_span (writer, "aged-hrc", filler->aged_low_hrc, filler->aged_high_hrc);
  em_xml_put_real (writer, "stick-mm", filler->stick_mm);
  put_word_lists (writer, filler);
  em_xml_put (writer, "supplier-ref", filler->supplier_ref);
  put_if (writer, "demo-price", filler->has_demo_price);
  em_xml_put_kept_attributes (writer, kept, place);
  put_common_children (writer, &common, kept, place);
  for (int32_t i = 0; i < filler->n_sizes; i++)
    put_size (writer, &filler->size[i], kept, place);
  em_xml_put_kept_elements (writer, kept, place);
  em_xml_close (writer);
}

void
em_catalogue_put_element (EmXmlWriter *writer, const EmCatalogue *catalogue, gboolean only_own)
{
  const char *kept = catalogue->extra;
  g_autofree char *version = g_strdup_printf ("%d.%d", VERSION_MAJOR, MAX (VERSION_MINOR, em_xml_kept_minor (writer, kept)));

  em_xml_open (writer, "metals");
  em_xml_put (writer, "xmlns", EM_CATALOGUE_NS);
  em_xml_put (writer, "version", version);
  em_xml_put_kept_attributes (writer, kept, "");
  for (int32_t i = 0; i < catalogue->n_bases; i++)
    if (!only_own || catalogue->base[i].is_own)
      put_base (writer, &catalogue->base[i], kept);
  for (int32_t i = 0; i < catalogue->n_fillers; i++)
    if (!only_own || catalogue->filler[i].is_own)
      put_filler (writer, &catalogue->filler[i], kept);
  em_xml_put_kept_elements (writer, kept, "");
  em_xml_close (writer);
}

/* The same bytes for the same records. only_own leaves out what the program ships. */
GBytes *
em_catalogue_write (const EmCatalogue *catalogue, gboolean only_own, GError **error)
{
  EmXmlWriter *writer = em_xml_writer_new ();

  em_catalogue_put_element (writer, catalogue, only_own);
  return em_xml_writer_finish (writer, error);
}

/* The folder of path is made where it is missing, for a shop's first own record; if that fails, saving says why. */
gboolean
em_catalogue_save (const char *path, const EmCatalogue *catalogue, gboolean only_own, GError **error)
{
  g_autoptr (GBytes) bytes = em_catalogue_write (catalogue, only_own, error);
  g_autofree char *folder = g_path_get_dirname (path);

  if (bytes == NULL)
    return FALSE;
  g_mkdir_with_parents (folder, 0777);
  return em_save_bytes (path, bytes, error);
}

/* ---- merging ---- */

/* Position + 1 by id, of n records stride apart, whose id is their first member. */
static GHashTable *
index_ids (const void *records, int32_t n, size_t stride)
{
  GHashTable *index = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);

  for (int32_t i = 0; i < n; i++)
    g_hash_table_insert (index, g_strdup (*(char *const *) ((const char *) records + (size_t) i * stride)), GINT_TO_POINTER (i + 1));
  return index;
}

G_STATIC_ASSERT (offsetof (EmBase, id) == 0 && offsetof (EmFiller, id) == 0);

/* A copy of base over the one of its id, or behind all. */
static EmStatus
lay_base (EmCatalogue *catalogue, const EmBase *base, int32_t at)
{
  EmBase copy;
  EmStatus status = em_base_copy (base, &copy);

  if (status != EM_OK)
    return status;
  copy.is_own = true;
  if (at < 0)
    return em_catalogue_add_base_take (catalogue, &copy);
  em_base_clear (&catalogue->base[at]);
  catalogue->base[at] = copy;
  return EM_OK;
}

static EmStatus
lay_filler (EmCatalogue *catalogue, const EmFiller *filler, int32_t at)
{
  EmFiller copy;
  EmStatus status = em_filler_copy (filler, &copy);

  if (status != EM_OK)
    return status;
  copy.is_own = true;
  if (at < 0)
    return em_catalogue_add_filler_take (catalogue, &copy);
  em_filler_clear (&catalogue->filler[at]);
  catalogue->filler[at] = copy;
  return EM_OK;
}

/* All of own is marked as such in shipped, whatever it said before. On failure shipped is as it was. */
gboolean
em_catalogue_merge (EmCatalogue *shipped, const EmCatalogue *own, GError **error)
{
  EmCatalogue merged;
  EmStatus status = em_catalogue_copy (shipped, &merged);

  if (status == EM_OK)
    {
      g_autoptr (GHashTable) bases = index_ids (merged.base, merged.n_bases, sizeof *merged.base);
      g_autoptr (GHashTable) fillers = index_ids (merged.filler, merged.n_fillers, sizeof *merged.filler);

      for (int32_t i = 0; status == EM_OK && i < own->n_bases; i++)
        status = lay_base (&merged, &own->base[i], GPOINTER_TO_INT (g_hash_table_lookup (bases, own->base[i].id)) - 1);
      for (int32_t i = 0; status == EM_OK && i < own->n_fillers; i++)
        status = lay_filler (&merged, &own->filler[i], GPOINTER_TO_INT (g_hash_table_lookup (fillers, own->filler[i].id)) - 1);
      /* What of a newer version goes with the shop's own file is the shop's. */
      if (status == EM_OK && own->extra != NULL)
        {
          free (merged.extra);
          merged.extra = em_text_dup (own->extra);
          status = merged.extra != NULL ? EM_OK : EM_FAULT_MEMORY;
        }
      if (status != EM_OK)
        em_catalogue_clear (&merged);
    }
  if (status != EM_OK)
    {
      g_set_error_literal (error, EM_FILE_ERROR, EM_FILE_ERROR_READ, _("Memory ran out while putting the catalogs together."));
      return FALSE;
    }
  em_catalogue_clear (shipped);
  *shipped = merged;
  return TRUE;
}
