/* em-words-feature: what will be done, in plain words for the customer, and the names of printed lines.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-words.h"

#include <glib/gi18n.h>
#include <math.h>
#include <string.h>

static void
add_sentence (GString *text, char *take_sentence)
{
  if (take_sentence == NULL)
    return;
  if (text->len > 0)
    g_string_append_c (text, ' ');
  g_string_append (text, take_sentence);
  g_free (take_sentence);
}

static char *
describe_melt_out (const EmFeatureCost *cost)
{
  return cost->rules.is_melted_out ? g_strdup (_("The damaged metal is melted clean first.")) : NULL;
}

static char *
describe_build (const EmFeatureCost *cost, EmUnits units, const EmCatalogue *catalogue)
{
  const char *filler = cost->filler >= 0 && cost->filler < catalogue->n_fillers ? catalogue->filler[cost->filler].designation : "–";
  g_autofree char *size = em_words_wire (cost->rules.wire_mm, units);

  return g_strdup_printf (ngettext ("Built up in %1$d layer; filler wire: %2$s, ⌀\302\240%3$s.", "Built up in %1$d layers; filler wire: %2$s, ⌀\302\240%3$s.",
                                    (gulong) cost->plan.layers), cost->plan.layers, filler, size);
}

static char *
describe_stock (const EmFeatureCost *cost, EmUnits units)
{
  g_autofree char *stock = em_words_length (cost->rules.stock_mm, units, 3);

  return cost->rules.stock_mm > 0 ? g_strdup_printf (_("At least %s is left on for machining."), stock) : NULL;
}

static char *
describe_cap (const EmFeatureCost *cost)
{
  return cost->plan.cap_length_mm > 0 ? g_strdup (_("Its sharp edges are capped from the other face.")) : NULL;
}

static char *
describe_near (const EmFeature *feature, EmUnits units)
{
  g_autofree char *clearance = em_words_length (feature->clearance_mm, units, 3);

  if (em_is_absent (feature->clearance_mm))
    return NULL;
  switch (feature->near)
    {
    case EM_NEAR_HOLE:    return g_strdup_printf (_("The hole %s away is kept free."), clearance);
    case EM_NEAR_TEXTURE: return g_strdup_printf (_("The texture %s away is masked and kept free."), clearance);
    case EM_NEAR_POLISH:  return g_strdup_printf (_("The polished face %s away is masked and kept free."), clearance);
    case EM_NEAR_THREAD:  return g_strdup_printf (_("The thread %s away is kept free."), clearance);
    case EM_NEAR_NOTHING:
    case EM_N_NEAR:
    default:              return NULL;
    }
}

/** Who machines the weld: the feature's own choice, else the quote's; where neither says, the customer. */
EmFinish
em_words_finish_of (const EmQuote *quote, int32_t index)
{
  EmFinish finish = quote->feature[index].finish;

  if (finish == EM_FINISH_DEFAULT)
    finish = quote->finish;
  return finish == EM_FINISH_DEFAULT ? EM_FINISH_CUSTOMER : finish;
}

static char *
describe_finish (const EmQuote *quote, int32_t index)
{
  return em_words_finish_of (quote, index) == EM_FINISH_SHOP ? g_strdup (_("We machine it back to size.")) : g_strdup (_("You machine it back to size."));
}

/** What will be done to feature index, in a few short sentences; a feature that cannot be priced says why. */
char *
em_words_feature (const EmQuote *quote, int32_t index, const EmFeatureCost *cost, const EmRates *rates, const EmCatalogue *catalogue)
{
  const EmFeature *feature = &quote->feature[index];
  GString *text = g_string_new (NULL);

  (void) rates;
  if (cost->status != EM_OK)
    {
      g_autofree char *reason = em_words_fault_of (&cost->fault, feature->kind, quote->units);

      add_sentence (text, g_strdup_printf (_("Not in the price. %s"), reason));
      return g_string_free (text, FALSE);
    }
  add_sentence (text, describe_melt_out (cost));
  add_sentence (text, describe_build (cost, quote->units, catalogue));
  add_sentence (text, describe_stock (cost, quote->units));
  add_sentence (text, describe_cap (cost));
  add_sentence (text, describe_near (feature, quote->units));
  add_sentence (text, describe_finish (quote, index));
  return g_string_free (text, FALSE);
}

/* One size with its name, rounded for reading; NULL for what says nothing: absent, hidden, nought, a choice left as it was. */
static char *
write_size (const EmFeature *feature, int i, EmUnits units)
{
  const EmField *field = &feature->kind->fields[i];
  double value = feature->value[i];
  g_autofree char *text = NULL;

  if (em_is_absent (value) || !em_field_is_shown (feature->kind, i, feature->value))
    return NULL;
  if (field->quantity == EM_QUANTITY_CHOICE)
    return value != field->preset && value >= 0 ? g_strdup (em_words (field->option_names[(int) value])) : NULL;
  if (value == 0)
    return NULL;
  text = field->quantity == EM_QUANTITY_LENGTH ? em_words_length (value, units, 4) : em_words_quantity (value, field->quantity, units);
  return g_strdup_printf ("%s\302\240%s", em_words (field->name), text);
}

/** A feature's own sizes with their names: "Length 10 mm, Leg a 0.5 mm". */
char *
em_words_sizes (const EmFeature *feature, EmUnits units)
{
  GString *text = g_string_new (NULL);

  for (int i = 0; i < feature->kind->n_fields; i++)
    {
      g_autofree char *size = write_size (feature, i, units);

      if (size != NULL)
        g_string_append_printf (text, "%s%s", text->len > 0 ? ", " : "", size);
    }
  return g_string_free (text, FALSE);
}

/* "l\302\2406.35" as it stands in the drawing; the unit only where it is not the lengths' own. NULL for what says nothing. */
static char *
write_short_size (const EmFeature *feature, int i, EmUnits units)
{
  const EmField *field = &feature->kind->fields[i];
  g_autofree char *named = write_size (feature, i, units);
  g_autofree char *value = NULL;

  if (named == NULL || field->quantity == EM_QUANTITY_CHOICE || field->symbol == NULL || field->symbol[0] == '\0')
    return g_steal_pointer (&named);
  if (field->quantity != EM_QUANTITY_LENGTH)
    value = em_words_quantity (feature->value[i], field->quantity, units);
  else
    {
      value = em_words_length (feature->value[i], units, 4);
      *g_strrstr (value, "\302\240") = '\0';
    }
  return g_strdup_printf ("%s\302\240%s", field->symbol, value);
}

static void
append_short_sizes (GString *text, const EmFeature *feature, EmUnits units, gboolean has_lengths)
{
  for (int i = 0; i < feature->kind->n_fields; i++)
    if ((feature->kind->fields[i].quantity == EM_QUANTITY_LENGTH) == has_lengths)
      {
        g_autofree char *size = write_short_size (feature, i, units);

        if (size != NULL)
          g_string_append_printf (text, "%s%s", text->len > 0 ? " · " : "", size);
      }
}

/** A feature's own sizes by the symbols of its drawing, lengths first with their unit once: "l 6.35 · w 0.762 mm · β 3°". */
char *
em_words_sizes_short (const EmFeature *feature, EmUnits units)
{
  GString *text = g_string_new (NULL);

  append_short_sizes (text, feature, units, TRUE);
  if (text->len > 0)
    g_string_append_printf (text, "\302\240%s", units == EM_UNITS_INCH ? "in" : "mm");
  append_short_sizes (text, feature, units, FALSE);
  return g_string_free (text, FALSE);
}

static char *
with_rate (const char *name, int64_t rate_ppm)
{
  g_autofree char *rate = em_words_percent (rate_ppm < 0 ? -rate_ppm : rate_ppm);

  return g_strdup_printf ("%s (%s)", name, rate);
}

/** What a printed line is called. */
char *
em_words_line (const EmLine *line, const EmQuote *quote, const EmRates *rates)
{
  switch (line->type)
    {
    case EM_LINE_FEATURE:  return em_words_feature_name (quote, line->row);
    case EM_LINE_SET_UP:   return g_strdup (_("Receiving, setting up and packing"));
    case EM_LINE_ORDER:    return g_strdup (_("Preparing the order"));
    case EM_LINE_EXTRA:    return g_strdup (quote->extra[line->row].label != NULL ? quote->extra[line->row].label : "");
    case EM_LINE_MINIMUM:  return g_strdup (_("Raised to our minimum charge"));
    case EM_LINE_RUSH:     return with_rate (_("Rush surcharge"), line->rate_ppm);
    case EM_LINE_DISCOUNT: return with_rate (_("Discount"), line->rate_ppm);
    case EM_LINE_ROUNDING: return g_strdup (_("Rounding"));
    case EM_LINE_TAX:      return with_rate (rates->tax[line->row].name, line->rate_ppm);
    case EM_N_LINE:
    default:               return g_strdup ("");
    }
}
