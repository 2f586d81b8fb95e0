/* em-words-code: the engine's codes as words.
 *
 * One table a code, in the code's own order.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-words.h"

#include "em-constitution.h"

#include <glib/gi18n.h>
#include <math.h>

#define FROM(table, code) ((guint) (code) < G_N_ELEMENTS (table) ? em_words ((table)[code]) : "")

static const char *const reasons[EM_N_REASON] =
{
  [EM_REASON_USUAL] = N_("The trade’s usual choice for this tool"),
  [EM_REASON_MATCHES_BASE] = N_("Of the same family as the tool"),
  [EM_REASON_HARDNESS_MATCHES] = N_("Nominally as hard as the tool"),
  [EM_REASON_POLISHES] = N_("Takes a polish like the tool"),
  [EM_REASON_TEXTURES] = N_("Takes a texture like the tool"),
  [EM_REASON_NITRIDES] = N_("Can be nitrided"),
  [EM_REASON_MACHINES] = N_("Machines easily"),
  [EM_REASON_RESISTS_CORROSION] = N_("Resists corrosion"),
  [EM_REASON_RESISTS_WEAR] = N_("Resists wear"),
  [EM_REASON_NO_PREHEAT] = N_("Needs no preheat by this process"),
  [EM_REASON_TOUGH_CUSHION] = N_("Tough: a good cushion under harder layers"),
  [EM_REASON_AGES_AFTER] = N_("Hardens by ageing afterwards"),
  [EM_REASON_LASER_HARDER] = N_("A laser’s fast quench leaves it harder than its nominal"),
  [EM_REASON_LASER_ABOVE_TOOL] = N_("Nominally softer, but a laser’s fast quench leaves it somewhat harder than the tool"),
  [EM_REASON_ABRASIVE_PLASTIC] = N_("The usual choice where the plastic is abrasive or corrosive"),
  [EM_REASON_JOINS_UNLIKE] = N_("Joins unlike steels: its ferrite guards against hot cracks"),
  [EM_REASON_CHEAPEST] = N_("The lowest price of all that suit"),
  [EM_REASON_SOFTER] = N_("Nominally softer than the tool"),
  [EM_REASON_HARDER] = N_("Nominally harder than the tool"),
  [EM_REASON_CRACKS] = N_("May crack on cooling"),
  [EM_REASON_NEEDS_PREHEAT] = N_("Needs preheat"),
  [EM_REASON_HOT_CRACKS] = N_("May crack hot while it solidifies"),
  [EM_REASON_POLISH_DIFFERS] = N_("The polish will look different"),
  [EM_REASON_TEXTURE_DIFFERS] = N_("The texture will look different"),
  [EM_REASON_NO_NITRIDE] = N_("Does not nitride"),
  [EM_REASON_HARD_TO_MACHINE] = N_("Hard to machine"),
  [EM_REASON_RUSTS] = N_("Rusts where the tool does not"),
  [EM_REASON_DISSIMILAR] = N_("Of another family than the tool, but the two can be welded"),
  [EM_REASON_AUSTENITIC_ON_TOOL] = N_("Austenitic on a hardened tool: soft, and it grows more with heat"),
  [EM_REASON_COPPER_CONTENT] = N_("Its copper can crack steel along the grain boundaries"),
  [EM_REASON_RETAINED_AUSTENITE] = N_("May keep austenite and stay soft in places"),
  [EM_REASON_SULPHUR] = N_("The tool’s sulfur makes pores and hot cracks"),
  [EM_REASON_WRONG_PROCESS] = N_("Not for this process"),
  [EM_REASON_WRONG_FAMILY] = N_("Does not suit the tool’s metal"),
  [EM_REASON_NOT_STOCKED] = N_("Not in stock"),
  [EM_REASON_NO_SIZE_FITS] = N_("No size in stock fits every feature"),
  [EM_REASON_RETIRED] = N_("No longer used"),
};

static const char *const phases[EM_N_PHASE] =
{
  [EM_PHASE_MARTENSITE] = N_("Martensite"),
  [EM_PHASE_AUSTENITE_MARTENSITE] = N_("Austenite and martensite"),
  [EM_PHASE_AUSTENITE] = N_("Austenite"),
  [EM_PHASE_AUSTENITE_FERRITE] = N_("Austenite and ferrite"),
  [EM_PHASE_FERRITE] = N_("Ferrite"),
  [EM_PHASE_MARTENSITE_FERRITE] = N_("Martensite and ferrite"),
  [EM_PHASE_AUSTENITE_MARTENSITE_FERRITE] = N_("Austenite, martensite and ferrite"),
  [EM_PHASE_FERRITE_MARTENSITE] = N_("Ferrite and martensite"),
  [EM_PHASE_UNKNOWN] = N_("Outside the diagram"),
};

static const char *const bounds[EM_N_BOUND] =
{
  [EM_BOUND_PULSE] = N_("Set by pulse rate and overlap"),
  [EM_BOUND_POWER] = N_("Set by the machine’s power"),
  [EM_BOUND_SET_SPEED] = N_("Set by the machine’s table"),
  [EM_BOUND_PULSE_ENERGY] = N_("Slowed to keep the rated pulse energy"),
  [EM_BOUND_PEAK_POWER] = N_("Slowed to keep the rated peak power"),
  [EM_BOUND_CURRENT] = N_("Slowed to keep the rated current"),
};

static const char *const accesses[EM_N_ACCESS] =
{
  [EM_ACCESS_OPEN] = N_("Open"),
  [EM_ACCESS_RESTRICTED] = N_("Restricted"),
  [EM_ACCESS_DEEP] = N_("Deep"),
};

static const char *const finishes[EM_N_FINISH] =
{
  [EM_FINISH_DEFAULT] = N_("As the quote says"),
  [EM_FINISH_CUSTOMER] = N_("Machined by the customer"),
  [EM_FINISH_SHOP] = N_("Machined by us"),
};

static const char *const states[EM_N_STATE] =
{
  [EM_STATE_DRAFT] = N_("Draft"),
  [EM_STATE_SENT] = N_("Sent"),
  [EM_STATE_WON] = N_("Won"),
  [EM_STATE_LOST] = N_("Lost"),
  [EM_STATE_LAPSED] = N_("Lapsed"),
};

static const char *const nears[EM_N_NEAR] =
{
  [EM_NEAR_NOTHING] = N_("Nothing near"),
  [EM_NEAR_HOLE] = N_("Hole"),
  [EM_NEAR_TEXTURE] = N_("Texture"),
  [EM_NEAR_POLISH] = N_("Polished face"),
  [EM_NEAR_THREAD] = N_("Thread"),
};

static const char *const processes[EM_N_PROCESS] =
{
  [EM_PROCESS_LASER] = N_("Pulsed laser"),
  [EM_PROCESS_GTAW] = N_("Micro TIG"),
};

static const char *const families[EM_N_FAMILY] =
{
  [EM_FAMILY_LOW_ALLOY] = N_("Low-alloy steel"),
  [EM_FAMILY_TOOL_STEEL] = N_("Tool steel"),
  [EM_FAMILY_STAINLESS_MARTENSITIC] = N_("Martensitic stainless steel"),
  [EM_FAMILY_STAINLESS_AUSTENITIC] = N_("Austenitic stainless steel"),
  [EM_FAMILY_STAINLESS_PH] = N_("Precipitation-hardening stainless steel"),
  [EM_FAMILY_MARAGING] = N_("Maraging steel"),
  [EM_FAMILY_FREE_MACHINING] = N_("Free-machining steel"),
  [EM_FAMILY_CAST_IRON] = N_("Cast iron"),
  [EM_FAMILY_NICKEL] = N_("Nickel alloy"),
  [EM_FAMILY_COBALT] = N_("Cobalt alloy"),
  [EM_FAMILY_COPPER] = N_("Copper alloy"),
  [EM_FAMILY_ALUMINIUM] = N_("Aluminum alloy"),
};

const char *em_words_reason  (EmReason code)  { return FROM (reasons, code); }
const char *em_words_phase   (EmPhase code)   { return FROM (phases, code); }
const char *em_words_bound   (EmBound code)   { return FROM (bounds, code); }
const char *em_words_access  (EmAccess code)  { return FROM (accesses, code); }
const char *em_words_finish  (EmFinish code)  { return FROM (finishes, code); }
const char *em_words_state   (EmState code)   { return FROM (states, code); }
const char *em_words_near    (EmNear code)    { return FROM (nears, code); }
const char *em_words_process (EmProcess code) { return FROM (processes, code); }
const char *em_words_family  (EmFamily code)  { return FROM (families, code); }

/* What limited an estimate, where that is no element's symbol or the relation's own name. */
static const char *
limit_name (const char *limited_by)
{
  static const struct { const char *id, *name; } limits[] =
  {
    { "alloy", N_("alloying elements") }, { "section", N_("thickness") }, { "hydrogen", N_("hydrogen") }, { "heat", N_("heat input") },
    { "hardness", N_("hardness") },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (limits); i++)
    if (g_str_equal (limits[i].id, limited_by))
      return _(limits[i].name);
  return limited_by;
}

static const char *
not_applicable_text (const char *limited_by)
{
  if (g_strcmp0 (limited_by, "process") == 0)
    return _("not for this process");
  if (g_strcmp0 (limited_by, "filler") == 0 || g_strcmp0 (limited_by, "phase") == 0)
    return _("not for such a deposit");
  return _("not for this metal");
}

static char *
outside_text (const char *limited_by)
{
  return limited_by != NULL ? g_strdup_printf (_("outside its published limits (%s)"), limit_name (limited_by))
                            : g_strdup (_("outside its published limits"));
}

/** "about 290 °C", "outside its published limits (C)" or "not for this metal".
 *
 * unit: "°C", "HRC", "" …; decimals of the figure. */
char *
em_words_estimate (const EmEstimate *estimate, const char *unit, int decimals)
{
  g_autofree char *number = NULL;

  if (estimate->validity == EM_VALID_NOT_APPLICABLE)
    return g_strdup (not_applicable_text (estimate->limited_by));
  if (estimate->validity == EM_VALID_OUTSIDE || !isfinite (estimate->value))
    return outside_text (estimate->limited_by);
  number = em_words_number (estimate->value, decimals);
  return unit[0] != '\0' ? g_strdup_printf (_("about %s\302\240%s"), number, unit) : g_strdup_printf (_("about %s"), number);
}

static char *
range_text (double low, double high, const char *unit)
{
  g_autofree char *from = em_words_number (low, 0), *to = em_words_number (high, 0);

  /* Translators: a range of hardness and its scale. */
  return g_str_equal (from, to) ? g_strdup_printf ("%s\302\240%s", from, unit) : g_strdup_printf (_("%s to %s\302\240%s"), from, to, unit);
}

/** The deposit's hardness: nominal, and what a laser's fast quench makes of it where that is more.
 *
 * NULL where nothing is known. */
char *
em_words_hardness (const EmPairing *pairing)
{
  const EmReasons quenched = EM_REASON_BIT (EM_REASON_LASER_HARDER) | EM_REASON_BIT (EM_REASON_LASER_ABOVE_TOOL);
  g_autofree char *nominal = NULL, *most = NULL;

  if (isnan (pairing->hardness_low_hrc))
    return isnan (pairing->hardness_low_hv) ? NULL : range_text (pairing->hardness_low_hv, pairing->hardness_high_hv, "HV");
  nominal = range_text (pairing->hardness_low_hrc, pairing->hardness_high_hrc, "HRC");
  if ((pairing->reasons & quenched) == 0)
    return g_steal_pointer (&nominal);
  most = em_words_number (pairing->martensite_hrc.value, 0);
  return g_strdup_printf (_("%s nominal, up to about %s by laser"), nominal, most);
}

/** The tool's hardness, or NULL. */
char *
em_words_base_hardness (const EmPairing *pairing)
{
  if (!isnan (pairing->base_hrc))
    return range_text (pairing->base_hrc, pairing->base_hrc, "HRC");
  return isnan (pairing->base_hv) ? NULL : range_text (pairing->base_hv, pairing->base_hv, "HV");
}

/* Ferrite numbers up to this scatter less: Siewert, McCowan and Olson 1988, table 4. */
#define FN_CLOSE 18.0

static char *
ferrite_number_text (const EmConstitution *point)
{
  if (isnan (point->ferrite_number))
    return g_strdup_printf (_("%s, beyond the lines that tell its ferrite number"), em_words_phase (point->phase));

  gboolean is_close = point->ferrite_number <= FN_CLOSE;
  g_autofree char *number = em_words_number (point->ferrite_number, 0), *spread = em_words_number (is_close ? 2.5 : 9.0, is_close ? 1 : 0);

  /* Translators: a phase, the ferrite number, how far most welds lie from it. */
  return g_strdup_printf (_("%s, ferrite number about %s, most within %s"), em_words_phase (point->phase), number, spread);
}

/** What a diagram says of a point: its field, with the ferrite where the diagram tells it; or that it is outside, and of what.
 *
 * is_wrc: of WRC-1992, else of Schaeffler. */
char *
em_words_constitution (const EmConstitution *point, gboolean is_wrc)
{
  if (point->limited_by != NULL)
    return outside_text (point->limited_by);
  if (!point->is_inside && is_wrc && (point->cr_eq < em_diagram_wrc1992.cr_eq_low || point->ni_eq < em_diagram_wrc1992.ni_eq_low))
    return g_strdup (_("outside the diagram, where martensite may lie, which it does not show"));
  if (!point->is_inside)
    return g_strdup (_("outside the diagram"));
  if (is_wrc)
    return ferrite_number_text (point);
  if (isnan (point->ferrite_pct))
    return g_strdup (em_words_phase (point->phase));

  g_autofree char *share = em_words_number (point->ferrite_pct, 0);

  return g_strdup_printf (_("%s, about %s %% ferrite"), em_words_phase (point->phase), share);
}
