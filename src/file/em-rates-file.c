/* em-rates-file: the rate book as XML of our own (data/rates.rng).
 *
 * Scalars are attributes named by the rows of em_rate_fields[], em_machine_fields[] and em_setting_fields[], in the unit the
 * row stores: money in minor units, shares in parts per million. A book is written and read only if it passes the core's
 * checks, so what was saved can be opened.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "config.h"

#include "em-book-file.h"
#include "em-rates-file.h"
#include "em-save.h"

#include <glib/gi18n-lib.h>
#include <stdlib.h>
#include <string.h>

enum { VERSION_MAJOR = 1, VERSION_MINOR = 0 };

static const char *const unit_ids[] = { "metric", "inch" };
/* Where elements of a later version go back, behind all that are known here, so that a second reading finds them in the
 * order of the first. */
#define LAST "last"

static const char *const groups[] = { "money", "deposit", "minutes" };

/* What one reading carries along. */
typedef struct
{
  EmXmlReader *reader;
  EmRates     *rates;
  EmXmlKept    kept;
  guint        groups_seen;   /* bit by index into groups[] */
} Reading;

/* ---- reading ---- */

static void
no_memory (EmXmlReader *reader)
{
  em_xml_refuse (reader, EM_FILE_ERROR_READ, NULL, _("memory ran out."));
}

/* Text into *out, freed with free() as the core does. */
static void
keep_text (EmXmlReader *reader, const char *text, char **out)
{
  free (*out);
  *out = em_text_dup (text);
  if (*out == NULL && text != NULL)
    no_memory (reader);
}

/* One row's attribute of the present element into holder. */
static void
read_row (EmXmlReader *reader, const EmRateField *field, void *holder, gboolean is_required)
{
  double value = em_rate_get (field, holder);

  if (is_required && !em_xml_need (reader, field->id))
    return;
  switch (field->type)
    {
    case EM_RATE_REAL:
      value = em_xml_real (reader, field->id, value, field->low, field->high);
      break;
    case EM_RATE_BOOL:
      value = em_xml_boolean (reader, field->id, value != 0.0);
      break;
    case EM_RATE_MINOR:
    case EM_RATE_PPM:
    case EM_RATE_WHOLE:
      /* Whole and below 2^53 by the limits of every row: the double holds them exactly. */
      value = (double) em_xml_integer (reader, field->id, (gint64) value, (gint64) field->low, (gint64) field->high);
      break;
    }
  em_rate_set (field, holder, value);
}

static void
read_group (Reading *reading, int group)
{
  if ((reading->groups_seen & (1u << group)) != 0)
    em_xml_refuse (reading->reader, EM_FILE_ERROR_VALUE, groups[group], _("stands here twice."));
  reading->groups_seen |= 1u << group;
  for (int i = 0; i < em_n_rate_fields; i++)
    if (strcmp (em_rate_fields[i].group, groups[group]) == 0)
      read_row (reading->reader, &em_rate_fields[i], reading->rates, TRUE);
  em_xml_keep_attributes (reading->reader, &reading->kept, groups[group]);
  em_xml_keep_children (reading->reader, &reading->kept, groups[group]);
}

/* <text id="terms">words</text>; "extra" is the program's own and never stands in a file. */
static void
read_text (Reading *reading)
{
  EmXmlReader *reader = reading->reader;
  int which = em_xml_need (reader, "id") ? em_xml_choice (reader, "id", em_shop_text_ids, EM_RATES_EXTRA, -1) : -1;

  if (!em_xml_is_good (reader))
    return;
  if (which < 0)
    {
      em_xml_keep_element (reader, &reading->kept, LAST);
      return;
    }
  if (reading->rates->text[which] != NULL)
    em_xml_refuse (reader, EM_FILE_ERROR_VALUE, em_shop_text_ids[which], _("stands here twice."));

  g_autofree char *place = g_strconcat ("text:", em_shop_text_ids[which], NULL);

  em_xml_keep_attributes (reader, &reading->kept, place);
  keep_text (reader, em_xml_text (reader), &reading->rates->text[which]);
}

static void
read_tax (Reading *reading)
{
  EmXmlReader *reader = reading->reader;
  EmTax tax = { 0 };
  g_autofree char *place = g_strdup_printf ("tax:%d", reading->rates->n_taxes);

  em_xml_need (reader, "rate");
  tax.rate_ppm = em_xml_integer (reader, "rate", 0, 0, EM_PPM);
  tax.on_taxes = em_xml_boolean (reader, "on_taxes", FALSE);
  em_xml_keep_attributes (reader, &reading->kept, place);
  keep_text (reader, em_xml_text (reader), &tax.name);
  if (em_rates_add_tax_take (reading->rates, &tax) != EM_OK)
    em_xml_refuse (reader, EM_FILE_ERROR_VALUE, "tax", _("more than %d taxes."), EM_TAX_MAX);
}

static void
read_setting (Reading *reading, EmMachine *machine, const char *machine_place)
{
  EmXmlReader *reader = reading->reader;

  if (machine->n_settings >= EM_SETTING_MAX)
    {
      em_xml_refuse (reader, EM_FILE_ERROR_VALUE, "setting", _("more than %d settings of one machine."), EM_SETTING_MAX);
      return;
    }

  g_autofree char *place = g_strdup_printf ("%s:%d", machine_place, machine->n_settings);
  EmSetting *setting = &machine->setting[machine->n_settings++];

  for (int i = 0; i < em_n_setting_fields; i++)
    read_row (reader, &em_setting_fields[i], setting, (em_setting_fields[i].processes & (1u << machine->process)) != 0);
  em_xml_keep_attributes (reader, &reading->kept, place);
  em_xml_keep_children (reader, &reading->kept, place);
}

/* A process that only a newer version knows cannot be priced by another's rules: refused, never guessed. */
static void
read_process (EmXmlReader *reader, EmMachine *machine)
{
  int process = em_xml_need (reader, "process") ? em_xml_choice (reader, "process", em_process_ids, EM_N_PROCESS, -1) : -1;

  if (process < 0)
    em_xml_refuse (reader, EM_FILE_ERROR_NEWER, "process", _("a welding process this version does not know."));
  machine->process = process < 0 ? EM_PROCESS_LASER : (EmProcess) process;
}

static void
read_machine_children (Reading *reading, EmMachine *machine, const char *place)
{
  EmXmlReader *reader = reading->reader;
  g_autofree char *last = g_strconcat (place, ":" LAST, NULL);

  em_xml_begin (reader);
  while (em_xml_child (reader))
    if (em_xml_is (reader, "name"))
      {
        g_autofree char *name_place = g_strconcat (place, ":name", NULL);

        em_xml_keep_attributes (reader, &reading->kept, name_place);
        keep_text (reader, em_xml_text (reader), &machine->name);
      }
    else if (em_xml_is (reader, "setting"))
      read_setting (reading, machine, place);
    else
      em_xml_keep_element (reader, &reading->kept, last);
}

static void
read_machine (Reading *reading)
{
  EmXmlReader *reader = reading->reader;
  EmMachine machine;
  EmFault fault;

  em_machine_init (&machine);
  em_xml_need (reader, "id");
  keep_text (reader, em_xml_attribute (reader, "id"), &machine.id);
  read_process (reader, &machine);
  machine.is_retired = em_xml_boolean (reader, "retired", FALSE);
  for (int i = 0; i < em_n_machine_fields; i++)
    read_row (reader, &em_machine_fields[i], &machine, (em_machine_fields[i].processes & (1u << machine.process)) != 0);

  g_autofree char *place = g_strconcat ("machine:", machine.id != NULL ? machine.id : "", NULL);

  em_xml_keep_attributes (reader, &reading->kept, place);
  if (em_rates_find_machine (reading->rates, machine.id) >= 0)
    em_xml_refuse (reader, EM_FILE_ERROR_VALUE, "id", _("“%s” is used twice."), machine.id);
  read_machine_children (reading, &machine, place);
  if (em_xml_is_good (reader) && em_machine_check (&machine, &fault) != EM_OK)
    em_xml_refuse_fault (reader, &fault);
  if (em_xml_is_good (reader) && em_rates_add_machine_take (reading->rates, &machine) != EM_OK)
    em_xml_refuse (reader, EM_FILE_ERROR_VALUE, "machine", _("more than %d machines."), EM_MACHINE_MAX);
  em_machine_clear (&machine);
}

static void
read_child (Reading *reading)
{
  for (int group = 0; group < (int) G_N_ELEMENTS (groups); group++)
    if (em_xml_is (reading->reader, groups[group]))
      {
        read_group (reading, group);
        return;
      }
  if (em_xml_is (reading->reader, "text"))
    read_text (reading);
  else if (em_xml_is (reading->reader, "tax"))
    read_tax (reading);
  else if (em_xml_is (reading->reader, "machine"))
    read_machine (reading);
  else
    em_xml_keep_element (reading->reader, &reading->kept, LAST);
}

static void
read_root_attributes (Reading *reading)
{
  EmXmlReader *reader = reading->reader;
  const char *currency = em_xml_needed (reader, "currency");
  int units = em_xml_need (reader, "units") ? em_xml_choice (reader, "units", unit_ids, G_N_ELEMENTS (unit_ids), 0) : 0;

  if (currency != NULL && !em_currency_find (currency, &reading->rates->currency))
    em_xml_refuse (reader, EM_FILE_ERROR_VALUE, "currency", _("no ISO 4217 currency; write EUR, USD, CHF or the like."));
  reading->rates->units = (EmUnits) units;
  em_xml_need (reader, "demo");
  reading->rates->is_demo = em_xml_boolean (reader, "demo", FALSE);
  em_xml_keep_attributes (reader, &reading->kept, "");
}

/* What the single rows cannot tell: missing groups, then how the values go together. */
static void
check_whole (Reading *reading)
{
  EmFault fault;

  for (int group = 0; group < (int) G_N_ELEMENTS (groups); group++)
    if ((reading->groups_seen & (1u << group)) == 0)
      em_xml_refuse (reading->reader, EM_FILE_ERROR_VALUE, groups[group], _("missing."));
  if (em_xml_is_good (reading->reader) && em_rates_check (reading->rates, &fault) != EM_OK)
    em_xml_refuse_fault (reading->reader, &fault);
}

void
em_rates_read_element (EmXmlReader *reader, EmRates *out_rates, guint *n_kept)
{
  Reading reading = { .reader = reader, .rates = out_rates };

  em_rates_init (out_rates);
  read_root_attributes (&reading);
  em_xml_begin (reader);
  while (em_xml_child (reader))
    read_child (&reading);
  if (em_xml_is_good (reader))
    check_whole (&reading);
  if (reading.kept.text != NULL)
    keep_text (reader, reading.kept.text->str, &out_rates->text[EM_RATES_EXTRA]);
  *n_kept += reading.kept.n_kept;
  em_xml_kept_clear (&reading.kept);
  if (!em_xml_is_good (reader))
    em_rates_clear (out_rates);
}

/* name: what messages call the file. *out_rates is untouched on failure. */
gboolean
em_rates_parse (GBytes *bytes, const char *name, EmRates *out_rates, GError **error)
{
  g_autoptr (EmXmlReader) reader = em_xml_reader_new (bytes, name, EM_RATES_NS, "rates", NULL, error);
  EmRates rates;
  guint n_kept = 0;

  if (reader == NULL)
    return FALSE;
  em_xml_version (reader, VERSION_MAJOR, VERSION_MINOR);
  em_rates_read_element (reader, &rates, &n_kept);
  if (!em_xml_reader_finish (reader, error))
    {
      em_rates_clear (&rates);
      return FALSE;
    }
  *out_rates = rates;
  return TRUE;
}

gboolean
em_rates_load (const char *path, EmRates *out_rates, GError **error)
{
  g_autoptr (GBytes) bytes = em_xml_read_file (path, em_xml_limits.size_max, error);
  g_autofree char *name = bytes != NULL ? g_filename_display_name (path) : NULL;

  return bytes != NULL && em_rates_parse (bytes, name, out_rates, error);
}

/* ---- writing ---- */

static void
put_row (EmXmlWriter *writer, const EmRateField *field, const void *holder)
{
  double value = em_rate_get (field, holder);

  if (field->type == EM_RATE_REAL)
    em_xml_put_real (writer, field->id, value);
  else if (field->type == EM_RATE_BOOL)
    em_xml_put_boolean (writer, field->id, value != 0.0);
  else
    em_xml_put_integer (writer, field->id, (gint64) value);
}

static void
put_texts (EmXmlWriter *writer, const EmRates *rates)
{
  for (int i = 0; i < EM_RATES_EXTRA; i++)
    if (rates->text[i] != NULL)
      {
        g_autofree char *place = g_strconcat ("text:", em_shop_text_ids[i], NULL);

        em_xml_open (writer, "text");
        em_xml_put (writer, "id", em_shop_text_ids[i]);
        em_xml_put_kept (writer, rates->text[EM_RATES_EXTRA], place);
        em_xml_put_content (writer, rates->text[i]);
        em_xml_close (writer);
      }
}

static void
put_group (EmXmlWriter *writer, const EmRates *rates, const char *group)
{
  em_xml_open (writer, group);
  for (int i = 0; i < em_n_rate_fields; i++)
    if (strcmp (em_rate_fields[i].group, group) == 0)
      put_row (writer, &em_rate_fields[i], rates);
  em_xml_put_kept (writer, rates->text[EM_RATES_EXTRA], group);
  em_xml_close (writer);
}

static void
put_taxes (EmXmlWriter *writer, const EmRates *rates)
{
  for (int i = 0; i < rates->n_taxes; i++)
    {
      g_autofree char *place = g_strdup_printf ("tax:%d", i);

      em_xml_open (writer, "tax");
      em_xml_put_integer (writer, "rate", rates->tax[i].rate_ppm);
      em_xml_put_boolean (writer, "on_taxes", rates->tax[i].on_taxes);
      em_xml_put_kept (writer, rates->text[EM_RATES_EXTRA], place);
      em_xml_put_content (writer, rates->tax[i].name);
      em_xml_close (writer);
    }
}

static void
put_machine (EmXmlWriter *writer, const EmMachine *machine, const char *kept)
{
  g_autofree char *place = g_strconcat ("machine:", machine->id, NULL), *last = g_strconcat (place, ":" LAST, NULL);
  g_autofree char *name_place = g_strconcat (place, ":name", NULL);

  em_xml_open (writer, "machine");
  em_xml_put (writer, "id", machine->id);
  em_xml_put (writer, "process", em_process_ids[machine->process]);
  em_xml_put_boolean (writer, "retired", machine->is_retired);
  for (int i = 0; i < em_n_machine_fields; i++)
    put_row (writer, &em_machine_fields[i], machine);
  em_xml_put_kept (writer, kept, place);
  em_xml_put_text_kept (writer, "name", machine->name, kept, name_place);
  for (int s = 0; s < machine->n_settings; s++)
    {
      g_autofree char *setting_place = g_strdup_printf ("%s:%d", place, s);

      em_xml_open (writer, "setting");
      for (int i = 0; i < em_n_setting_fields; i++)
        put_row (writer, &em_setting_fields[i], &machine->setting[s]);
      em_xml_put_kept (writer, kept, setting_place);
      em_xml_close (writer);
    }
  em_xml_put_kept (writer, kept, last);
  em_xml_close (writer);
}

void
em_rates_put_element (EmXmlWriter *writer, const EmRates *rates)
{
  const char *kept = rates->text[EM_RATES_EXTRA];
  g_autofree char *version = g_strdup_printf ("%d.%d", VERSION_MAJOR, MAX (VERSION_MINOR, em_xml_kept_minor (writer, kept)));

  em_xml_open (writer, "rates");
  em_xml_put (writer, "xmlns", EM_RATES_NS);
  em_xml_put (writer, "version", version);
  em_xml_put (writer, "currency", rates->currency.code);
  em_xml_put (writer, "units", unit_ids[rates->units]);
  em_xml_put_boolean (writer, "demo", rates->is_demo);
  em_xml_put_kept (writer, kept, "");
  put_texts (writer, rates);
  for (gsize i = 0; i < G_N_ELEMENTS (groups); i++)
    put_group (writer, rates, groups[i]);
  put_taxes (writer, rates);
  for (int i = 0; i < rates->n_machines; i++)
    put_machine (writer, &rates->machine[i], kept);
  em_xml_put_kept (writer, kept, LAST);
  em_xml_close (writer);
}

/* The same bytes for the same book. EM_FILE_ERROR_VALUE for one that does not pass em_rates_check: it could not be read again. */
GBytes *
em_rates_write (const EmRates *rates, GError **error)
{
  EmFault fault;
  EmXmlWriter *writer;

  if (em_rates_check (rates, &fault) != EM_OK)
    {
      g_set_error (error, EM_FILE_ERROR, EM_FILE_ERROR_VALUE, _("The rate book cannot be saved: “%s” is missing or out of its limits."), fault.field);
      return NULL;
    }
  writer = em_xml_writer_new ();
  em_rates_put_element (writer, rates);
  return em_xml_writer_finish (writer, error);
}

gboolean
em_rates_save (const char *path, const EmRates *rates, GError **error)
{
  g_autoptr (GBytes) bytes = em_rates_write (rates, error);

  return bytes != NULL && em_save_bytes (path, bytes, error);
}
