/* em-words-fault: a fault as a sentence that names the field and its limits.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-words.h"

#include <glib/gi18n.h>
#include <math.h>

/* How a field's value is written. */
typedef enum { AS_LENGTH, AS_ANGLE, AS_AREA, AS_COUNT, AS_PPM, AS_PLAIN, AS_TEXT } Writing;

typedef struct
{
  const char *id, *label;
  Writing     writing;
  const char *unit;       /* after a plain number */
} Field;

/* Fields outside the kinds' own tables and the rate book's. */
static const Field fields[] =
{
  { "kind", N_("Kind"), AS_TEXT, "" },
  { "label", N_("Label"), AS_TEXT, "" },
  { "count", N_("Places"), AS_COUNT, "" },
  { "stock", N_("Machining stock"), AS_LENGTH, "" },
  { "clearance", N_("Clearance"), AS_LENGTH, "" },
  { "near", N_("Near"), AS_TEXT, "" },
  { "slot_width", N_("Slot width"), AS_LENGTH, "" },
  { "slot_depth", N_("Slot depth"), AS_LENGTH, "" },
  { "access", N_("Access"), AS_TEXT, "" },
  { "setting", N_("Setting"), AS_COUNT, "" },
  { "safety_layers", N_("Safety layers"), AS_COUNT, "" },
  { "melt_out", N_("Melt clean first"), AS_TEXT, "" },
  { "cap", N_("Cap the edges"), AS_TEXT, "" },
  { "finish", N_("Finishing"), AS_TEXT, "" },
  { "wire", N_("Wire size"), AS_LENGTH, "" },
  { "override", N_("Stated price"), AS_TEXT, "" },
  { "remark", N_("Remark"), AS_TEXT, "" },
  { "assumption", N_("Assumption"), AS_TEXT, "" },
  { "base", N_("Tool metal"), AS_TEXT, "" },
  { "filler", N_("Filler wire"), AS_TEXT, "" },
  { "machine", N_("Machine"), AS_TEXT, "" },
  { "process", N_("Process"), AS_TEXT, "" },
  { "tools", N_("Identical tools"), AS_COUNT, "" },
  { "break", N_("Quantities also priced"), AS_COUNT, "" },
  { "learning", N_("Learning rate"), AS_PPM, "" },
  { "margin", N_("Margin"), AS_PPM, "" },
  { "contingency", N_("Contingency"), AS_PPM, "" },
  { "rush", N_("Rush surcharge"), AS_PPM, "" },
  { "discount", N_("Discount"), AS_PPM, "" },
  { "validity", N_("Quote holds for"), AS_PLAIN, N_("days") },
  { "hardness", N_("Tool hardness"), AS_PLAIN, "HRC" },
  { "section", N_("Section thickness"), AS_LENGTH, "" },
  { "preheat", N_("Preheat"), AS_TEXT, "" },
  { "units", N_("Units"), AS_TEXT, "" },
  { "coating", N_("Coating"), AS_TEXT, "" },
  { "number", N_("Quote number"), AS_TEXT, "" },
  { "revision", N_("Revision"), AS_TEXT, "" },
  { "date", N_("Date"), AS_TEXT, "" },
  { "prepared_by", N_("Prepared by"), AS_TEXT, "" },
  { "customer", N_("Customer"), AS_TEXT, "" },
  { "contact", N_("Contact"), AS_TEXT, "" },
  { "address", N_("Address"), AS_TEXT, "" },
  { "email", N_("Email"), AS_TEXT, "" },
  { "phone", N_("Phone"), AS_TEXT, "" },
  { "reference", N_("Customer’s reference"), AS_TEXT, "" },
  { "tool", N_("Tool"), AS_TEXT, "" },
  { "tool_number", N_("Tool number"), AS_TEXT, "" },
  { "drawing", N_("Drawing"), AS_TEXT, "" },
  { "notes", N_("Customer’s notes"), AS_TEXT, "" },
  { "scope", N_("Scope"), AS_TEXT, "" },
  { "terms", N_("Terms"), AS_TEXT, "" },
  { "language", N_("Language of the paper"), AS_TEXT, "" },
  { "paper", N_("Paper size"), AS_TEXT, "" },
  { "lead_time", N_("Lead time"), AS_TEXT, "" },
  { "offers", N_("Wires offered"), AS_TEXT, "" },
  { "currency", N_("Currency"), AS_TEXT, "" },
  { "machine_settings", N_("Machine’s table of starting values"), AS_TEXT, "" },
  { "tax", N_("Tax"), AS_PPM, "" },
  { "extra", N_("Further line"), AS_TEXT, "" },
  { "amount", N_("Amount"), AS_TEXT, "" },
  { "memory", N_("Memory"), AS_TEXT, "" },
  { "composition", N_("Composition"), AS_TEXT, "" },
  { "density", N_("Density"), AS_PLAIN, "g/mm³" },
};

static const struct { const EmRateField *rows; const int *n_rows; } rate_tables[] =
{
  { em_rate_fields, &em_n_rate_fields },
  { em_machine_fields, &em_n_machine_fields },
  { em_setting_fields, &em_n_setting_fields },
};

static const Field *
find_field (const char *id)
{
  for (gsize i = 0; i < G_N_ELEMENTS (fields); i++)
    if (g_strcmp0 (fields[i].id, id) == 0)
      return &fields[i];
  return NULL;
}

static const EmRateField *
find_rate (const char *id)
{
  for (gsize t = 0; t < G_N_ELEMENTS (rate_tables); t++)
    for (int i = 0; i < *rate_tables[t].n_rows; i++)
      if (g_strcmp0 (rate_tables[t].rows[i].id, id) == 0)
        return &rate_tables[t].rows[i];
  return NULL;
}

static const EmField *
find_own (const EmKind *kind, const char *id)
{
  for (int i = 0; kind != NULL && i < kind->n_fields; i++)
    if (g_strcmp0 (kind->fields[i].id, id) == 0)
      return &kind->fields[i];
  return NULL;
}

/** Label of a field by its stable id: the kind's own first, then the shared ones, then the rate book's; the id itself when unknown. */
char *
em_words_field (const char *field_id, const EmKind *kind)
{
  const EmField *own = find_own (kind, field_id);

  if (own != NULL)
    return g_strdup (em_words (own->name));
  if (find_field (field_id) != NULL)
    return g_strdup (em_words (find_field (field_id)->label));
  if (find_rate (field_id) != NULL)
    return g_strdup (em_words (find_rate (field_id)->name));
  return g_strdup (field_id != NULL ? field_id : "");
}

static char *
write_rate (double value, const EmRateField *rate)
{
  gboolean is_ppm = rate->type == EM_RATE_PPM;
  g_autofree char *number = NULL;

  if (is_ppm)
    return em_words_percent ((int64_t) round (value));
  number = em_words_figure (value, 6);
  /* A unit that begins with a stroke is "per" something: money, whose sign the sentence leaves out. */
  return rate->unit[0] == '\0' || rate->unit[0] == '/' ? g_steal_pointer (&number) : g_strconcat (number, "\302\240", rate->unit, NULL);
}

/* No finer than anyone measures: a thousandth on four inches is nothing. */
static char *
write_length (double mm, EmUnits units)
{
  return em_words_length (mm, units, fabs (mm) >= 100 ? 2 : 4);
}

static char *
write_value (double value, const char *field_id, const EmKind *kind, EmUnits units)
{
  static const EmQuantityType types[] = { EM_QUANTITY_LENGTH, EM_QUANTITY_ANGLE, EM_QUANTITY_AREA, EM_QUANTITY_COUNT };
  const EmField *own = find_own (kind, field_id);
  const Field *field = find_field (field_id);

  if (!isfinite (value))
    return g_strdup (_("nothing"));
  if (own != NULL)
    return own->quantity == EM_QUANTITY_LENGTH ? write_length (value, units) : em_words_quantity (value, own->quantity, units);
  if (field == NULL && find_rate (field_id) != NULL)
    return write_rate (value, find_rate (field_id));
  if (field == NULL || field->writing >= AS_PLAIN)
    {
      g_autofree char *number = em_words_figure (value, 6);

      return field == NULL || field->unit[0] == '\0' ? g_steal_pointer (&number) : g_strconcat (number, "\302\240", em_words (field->unit), NULL);
    }
  if (field->writing == AS_PPM)
    return em_words_percent ((int64_t) round (value));
  return field->writing == AS_LENGTH ? write_length (value, units) : em_words_quantity (value, types[field->writing], units);
}

/** What a feature is called in sentences: "2 · Edge nick (Gate insert)"; the label only where it says more than the kind. */
char *
em_words_feature_name (const EmQuote *quote, int32_t index)
{
  const EmFeature *feature = &quote->feature[index];
  const char *label = feature->text[EM_FEATURE_LABEL];
  const char *kind = feature->kind != NULL ? em_words (feature->kind->name) : _("Feature");

  return label != NULL && g_ascii_strcasecmp (label, kind) != 0
             ? g_strdup_printf ("%d · %s (%s)", index + 1, kind, label)
             : g_strdup_printf ("%d · %s", index + 1, kind);
}

static char *
write_limits (const EmFault *fault, const EmKind *kind, EmUnits units)
{
  g_autofree char *low = write_value (fault->low, fault->field, kind, units);
  g_autofree char *high = write_value (fault->high, fault->field, kind, units);

  g_autofree char *least = g_strdup_printf (fault->low_is_open ? _("more than %s") : _("at least %s"), low);
  g_autofree char *most = g_strdup_printf (fault->high_is_open ? _("less than %s") : _("at most %s"), high);

  if (isfinite (fault->low) && isfinite (fault->high))
    return fault->low_is_open || fault->high_is_open
      /* Translators: both limits of a size, as in "more than 0 mm and at most 200 mm". */
      ? g_strdup_printf (_("%s and %s"), least, most) : g_strdup_printf (_("between %s and %s"), low, high);
  if (isfinite (fault->low))
    return g_steal_pointer (&least);
  return isfinite (fault->high) ? g_steal_pointer (&most) : NULL;
}

static char *
write_range (const EmFault *fault, const char *label, const char *value, const char *limits)
{
  if (limits == NULL)
    return g_strdup_printf (_("%s: %s cannot be used."), label, value);
  if (!isfinite (fault->value))
    return g_strdup_printf (_("%s: should be %s."), label, limits);
  return g_strdup_printf (_("%s: %s was given, it should be %s."), label, value, limits);
}

static char *
write_conflict (const EmFault *fault, const char *label, const char *value, const char *limits, const char *other)
{
  if (other[0] == '\0')
    return write_range (fault, label, value, limits);
  if (limits != NULL)
    return g_strdup_printf (_("%1$s: %2$s does not go with “%3$s”, it should be %4$s."), label, value, other, limits);
  return g_strdup_printf (_("%1$s: %2$s does not go with “%3$s”."), label, value, other);
}

/* What is near or around the weld stands in the way: by how much it does is told after why. */
static char *
add_need (char *sentence, const EmFault *fault, const char *limits)
{
  g_autofree char *taken = sentence;

  if (limits == NULL || g_str_equal (fault->field, "wire"))
    return g_steal_pointer (&taken);
  /* Translators: as in "It should be at least 3 mm." */
  g_autofree char *need = g_strdup_printf (_("It should be %s."), limits);
  return g_strconcat (taken, " ", need, NULL);
}

static char *
write_sentence (const EmFault *fault, const EmKind *kind, EmUnits units)
{
  g_autofree char *label = em_words_field (fault->field, kind);
  g_autofree char *other = em_words_field (fault->other_field, kind);
  g_autofree char *value = write_value (fault->value, fault->field, kind, units);
  g_autofree char *limits = write_limits (fault, kind, units);

  switch (fault->code)
    {
    case EM_FAULT_MISSING:     return g_strdup_printf (_("%s: please give it, the price needs it."), label);
    case EM_FAULT_NOT_FINITE:  return g_strdup_printf (_("%s: the number is too large to be one."), label);
    case EM_FAULT_RANGE:       return write_range (fault, label, value, limits);
    case EM_FAULT_CONFLICT:    return write_conflict (fault, label, value, limits, other);
    case EM_FAULT_UNKNOWN:     return g_strdup_printf (_("%s: not in the catalog or the rate book."), label);
    case EM_FAULT_UNREACHABLE:
      return add_need (g_strdup_printf (_("%s: the beam or torch cannot reach in there without dismantling the tool."), label), fault, limits);
    case EM_FAULT_NO_WIRE:
      return add_need (g_strdup_printf (_("%s: no wire size in stock fits the clearance, the reach and the machines."), label), fault, limits);
    case EM_FAULT_UNSUITED:    return g_strdup_printf (_("%s: does not suit the process or the tool’s metal."), label);
    case EM_FAULT_RATING:      return g_strdup_printf (_("%s: no speed keeps within the machine’s ratings."), label);
    case EM_FAULT_OVERFLOW:    return g_strdup_printf (_("%s: the amount is too large to hold."), label);
    case EM_FAULT_MEMORY:      return g_strdup (_("There is not enough memory."));
    case EM_OK:
    case EM_N_STATUS:
    default:                   return g_strdup ("");
    }
}

/** A fault as a sentence without the feature's name.
 *
 * kind: of the feature it is about, for its fields' labels; may be NULL. */
char *
em_words_fault_of (const EmFault *fault, const EmKind *kind, EmUnits units)
{
  return write_sentence (fault, kind, units);
}

/** A fault as a sentence, beginning with the feature's name where it has one.
 *
 * quote: whose features fault->row counts; NULL: left out. units: for lengths and areas. */
char *
em_words_fault (const EmFault *fault, const EmQuote *quote, EmUnits units)
{
  gboolean has_feature = quote != NULL && fault->row >= 0 && fault->row < quote->n_features;
  g_autofree char *sentence = write_sentence (fault, has_feature ? quote->feature[fault->row].kind : NULL, units);
  g_autofree char *name = NULL;

  if (!has_feature)
    return g_steal_pointer (&sentence);
  name = em_words_feature_name (quote, fault->row);
  return g_strdup_printf ("%s – %s", name, sentence);
}
