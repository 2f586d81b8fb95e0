/* em-words-trace: the figures of a working as a reader of the quote writes them.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-words.h"

#include <math.h>
#include <string.h>

/* The engine counts money in minor units, and rates in minor units of something ("minor/h"); nobody reads either. */
static const char minor[] = "minor";

/* Beyond this a double no longer tells neighbouring minor units apart (2⁵³ is 9.007e15). */
#define MINOR_HIGH 9e15

typedef struct
{
  const char *quantity;   /* of a trace */
  const char *name;       /* EM_N */
} EmFigureName;

/* Figures that are neither a task nor a kind of money, which have names of their own. */
static const EmFigureName figure_names[] =
{
  { "wire_diameter", EM_N ("Wire") },
  { "clearance", EM_N ("Clearance") },
  { "tilt", EM_N ("Tilt from the wall") },
  { "net_volume", EM_N ("Metal missing") },
  { "required_volume", EM_N ("Metal to weld, with the allowance") },
  { "deposited_volume", EM_N ("Metal deposited") },
  { "layers", EM_N ("Layers") },
  { "tracks", EM_N ("Tracks") },
  { "welded_length", EM_N ("Welded length") },
  { "melt_out_length", EM_N ("Length melted out first") },
  { "wire_length", EM_N ("Wire used") },
  { "sticks", EM_N ("Sticks of wire") },
  { "filler_mass", EM_N ("Mass of wire") },
  { "speed", EM_N ("Welding speed") },
  { "pulse_energy", EM_N ("Energy of a pulse") },
  { "peak_power", EM_N ("Peak power") },
  { "heat_input", EM_N ("Heat input") },
  { "arc_on", EM_N ("Arc-on time") },
  { "arc_on_attended", EM_N ("Arc-on time") },
  { "gas", EM_N ("Shielding gas") },
  { "labour", EM_N ("Work in all") },
  { "learning", EM_N ("Learning from tool to tool") },
  { "price", EM_N ("Price") },
  { "markup", EM_N ("Markup") },
  { "subtotal", EM_N ("Sum of the lines") },
  { "net", EM_N ("Net") },
  { "tax", EM_N ("Tax") },
  { "total", EM_N ("Total") },
};

static const struct { const char *quantity; EmMoney money; } money_figures[] =
{
  { "office_cost", EM_MONEY_OFFICE }, { "bench_cost", EM_MONEY_BENCH }, { "finish_cost", EM_MONEY_FINISH }, { "machine_cost", EM_MONEY_MACHINE },
  { "filler_cost", EM_MONEY_FILLER }, { "gas_cost", EM_MONEY_GAS }, { "consumable_cost", EM_MONEY_CONSUMABLE }, { "bought_cost", EM_MONEY_BOUGHT },
  { "overhead", EM_MONEY_OVERHEAD }, { "contingency", EM_MONEY_CONTINGENCY }, { "margin", EM_MONEY_MARGIN },
};

/** What a figure of a working is called, by the trace's name of it; the name itself where nobody has called it anything yet. */
const char *
em_words_trace_name (const char *quantity)
{
  for (gsize i = 0; i < G_N_ELEMENTS (figure_names); i++)
    if (g_str_equal (quantity, figure_names[i].quantity))
      return em_words (figure_names[i].name);
  for (gsize i = 0; i < G_N_ELEMENTS (money_figures); i++)
    if (g_str_equal (quantity, money_figures[i].quantity))
      return em_words (em_moneys[money_figures[i].money].name);
  for (int i = 0; i < EM_N_TASK; i++)
    if (g_str_equal (quantity, em_tasks[i].id))
      return em_words (em_tasks[i].name);
  return quantity;
}

const char *
em_words_trace_of_money (EmMoney money)
{
  for (gsize i = 0; i < G_N_ELEMENTS (money_figures); i++)
    if (money_figures[i].money == money)
      return money_figures[i].quantity;
  return NULL;
}

#define CM_PER_INCH (EM_MM_PER_INCH / 10)

/* What holds a length, as an inch reader has it, so that the figures of a working can be multiplied as they stand. */
static const struct { const char *metric, *inch; double factor; } inch_units[] =
{
  { "mm²", "in²", 1 / (EM_MM_PER_INCH * EM_MM_PER_INCH) },
  { "cm", "in", 1 / CM_PER_INCH },
  { "cm²", "in²", 1 / (CM_PER_INCH * CM_PER_INCH) },
  { "cm³", "in³", 1 / (CM_PER_INCH * CM_PER_INCH * CM_PER_INCH) },
  { "mm/s", "in/s", 1 / EM_MM_PER_INCH },
  { "J/mm", "J/in", EM_MM_PER_INCH },
  { "kJ/mm", "kJ/in", EM_MM_PER_INCH },
  { "g/mm³", "g/in³", EM_MM_PER_INCH * EM_MM_PER_INCH * EM_MM_PER_INCH },
  { "min/cm", "min/in", CM_PER_INCH },
  { "min/cm²", "min/in²", CM_PER_INCH * CM_PER_INCH },
  { "min/cm³", "min/in³", CM_PER_INCH * CM_PER_INCH * CM_PER_INCH },
};

static EmTraceTerm
in_inches (const EmTraceTerm *term)
{
  EmTraceTerm converted = *term;

  for (gsize i = 0; i < G_N_ELEMENTS (inch_units); i++)
    if (g_str_equal (term->unit, inch_units[i].metric))
      {
        converted.value *= inch_units[i].factor;
        converted.unit = inch_units[i].inch;
        break;
      }
  return converted;
}

/** A term of a working with its unit: what holds a length in units, money in its currency, a rate as "56.00 EUR/h"; all else to
 * five figures as the engine has it. Money is rounded to its minor unit for reading; a working's own figures stay unrounded. */
char *
em_words_term (const EmTraceTerm *term, EmUnits units, const EmCurrency *currency)
{
  EmTraceTerm shown = units == EM_UNITS_INCH ? in_inches (term) : *term;
  g_autofree char *number = NULL;

  if (g_str_has_prefix (term->unit, minor) && fabs (term->value) < MINOR_HIGH)
    {
      number = em_words_money ((int64_t) llround (term->value), currency);
      return g_strconcat (number, term->unit + strlen (minor), NULL);
    }
  if (g_str_equal (term->unit, "mm"))
    return em_words_length (term->value, units, 3);
  if (g_str_equal (term->unit, "mm³"))
    return em_words_volume (term->value, units);
  number = em_words_figure (shown.value, 5);
  return shown.unit[0] == '\0' ? g_steal_pointer (&number) : g_strdup_printf ("%s\302\240%s", number, shown.unit);
}
