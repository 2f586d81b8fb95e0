/* Checks of core/em-pair: base and wire judged together.
 *
 * Compositions of steels are middles of the published ranges (ASTM A681 and makers' open data).
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-steel.h"
#include "em-test-main.h"

#include <string.h>

/* The elements the relations read; iron fills to 100. */
typedef struct { double c, mn, si, cr, ni, mo, v, cu; } Mix;

static const Mix p20 = { .c = 0.34, .mn = 0.80, .si = 0.50, .cr = 1.70, .mo = 0.43 };
static const Mix h13 = { .c = 0.39, .mn = 0.40, .si = 1.00, .cr = 5.10, .mo = 1.40, .v = 1.00 };
static const Mix d2 = { .c = 1.50, .mn = 0.30, .si = 0.30, .cr = 12.0, .mo = 0.95, .v = 0.55 };

static void
check_refused (EmEstimate estimate, EmValidity validity, const char *limited_by)
{
  ck_assert_int_eq (estimate.validity, validity);
  ck_assert (em_is_absent (estimate.value));
  ck_assert_str_eq (estimate.limited_by, limited_by);
}

static void
fix (EmComposition *composition, Mix m)
{
  const EmElement elements[] = { EM_EL_C, EM_EL_MN, EM_EL_SI, EM_EL_CR, EM_EL_NI, EM_EL_MO, EM_EL_V, EM_EL_CU };
  const double values[] = { m.c, m.mn, m.si, m.cr, m.ni, m.mo, m.v, m.cu };

  for (int i = 0; i < 8; i++)
    composition->low_pct[elements[i]] = composition->high_pct[elements[i]] = values[i];
}

static EmBase
base_of (EmFamily family, Mix m, double low_hrc, double high_hrc)
{
  EmBase base;

  em_base_init (&base);
  base.family = family;
  base.hardness_low_hrc = low_hrc;
  base.hardness_high_hrc = high_hrc;
  fix (&base.composition, m);
  return base;
}

static EmFiller
wire_of (EmFamily family, Mix m, double low_hrc, double high_hrc)
{
  EmFiller filler;

  em_filler_init (&filler);
  filler.family = family;
  filler.processes = (1u << EM_PROCESS_LASER) | (1u << EM_PROCESS_GTAW);
  filler.hardness_low_hrc = low_hrc;
  filler.hardness_high_hrc = high_hrc;
  fix (&filler.composition, m);
  return filler;
}

static bool
has (const EmPairing *pairing, EmReason reason)
{
  return (pairing->reasons & EM_REASON_BIT (reason)) != 0;
}

static EmPairing
pair (const EmBase *base, const EmFiller *filler, EmProcess process, double base_hrc)
{
  EmPairing pairing;

  em_steel_pair (base, filler, process, 0.2, base_hrc, NAN, &pairing, NULL);
  return pairing;
}

static const Mix p20_wire = { .c = 0.275, .mn = 1.15, .si = 0.50, .cr = 1.85, .mo = 0.60 };
static const Mix er420 = { .c = 0.33, .mn = 0.50, .si = 0.40, .cr = 13.0 };
static const Mix er309l = { .c = 0.02, .mn = 1.75, .si = 0.45, .cr = 24.0, .ni = 13.0 };
static const Mix er316l = { .c = 0.02, .mn = 1.75, .si = 0.45, .cr = 19.0, .ni = 12.5, .mo = 2.5 };

/* Common practice, no source: a P20-type wire on P20 comes out somewhat harder than the parent from a laser's fast quench, though
 * nominally softer. An arc leaves it at its nominal. */
START_TEST (test_p20_on_p20_is_harder_from_a_laser)
{
  EmBase base = base_of (EM_FAMILY_LOW_ALLOY, p20, 30, 36);
  EmFiller wire = wire_of (EM_FAMILY_LOW_ALLOY, p20_wire, 26, 29);
  EmPairing laser = pair (&base, &wire, EM_PROCESS_LASER, 36), arc = pair (&base, &wire, EM_PROCESS_GTAW, 36);

  ck_assert (laser.is_suited);
  ck_assert (has (&laser, EM_REASON_MATCHES_BASE));
  ck_assert (has (&laser, EM_REASON_LASER_ABOVE_TOOL) && has (&laser, EM_REASON_USUAL) && !has (&arc, EM_REASON_USUAL));
  /* told once: not softer and harder in one breath */
  ck_assert (!has (&laser, EM_REASON_SOFTER) && !has (&laser, EM_REASON_LASER_HARDER) && !has (&laser, EM_REASON_HARDNESS_MATCHES));
  ck_assert_double_gt (laser.martensite_hrc.value, 36);
  ck_assert (has (&arc, EM_REASON_SOFTER));
  ck_assert (!has (&arc, EM_REASON_LASER_HARDER) && !has (&arc, EM_REASON_LASER_ABOVE_TOOL));
  /* on a tool of 28 HRC the nominal is as hard, and the beam still leaves it harder than that */
  laser = pair (&base, &wire, EM_PROCESS_LASER, 28);
  ck_assert (has (&laser, EM_REASON_HARDNESS_MATCHES) && has (&laser, EM_REASON_LASER_HARDER));
  /* on one at 50 even the quench, 35 + 50·(0.8·0.275 + 0.2·0.34) = 49.4 ± 2, is softer */
  laser = pair (&base, &wire, EM_PROCESS_LASER, 50);
  ck_assert (has (&laser, EM_REASON_SOFTER) && has (&laser, EM_REASON_LASER_HARDER) && !has (&laser, EM_REASON_LASER_ABOVE_TOOL));
}
END_TEST

/* Common practice, no source: 420 on 420 for abrasive moulding; the pair is alike and keeps its corrosion resistance. */
START_TEST (test_420_on_420)
{
  EmBase base = base_of (EM_FAMILY_STAINLESS_MARTENSITIC, (Mix) { .c = 0.38, .mn = 0.5, .si = 0.5, .cr = 13.5 }, 48, 52);
  EmFiller wire = wire_of (EM_FAMILY_STAINLESS_MARTENSITIC, er420, 45, 53), plain = wire_of (EM_FAMILY_LOW_ALLOY, p20_wire, 30, 40);
  EmPairing pairing, rusting;

  wire.resists_wear = wire.resists_corrosion = wire.polishes = true;
  pairing = pair (&base, &wire, EM_PROCESS_LASER, NAN);
  rusting = pair (&base, &plain, EM_PROCESS_LASER, NAN);
  ck_assert (pairing.is_suited && has (&pairing, EM_REASON_MATCHES_BASE) && has (&pairing, EM_REASON_RESISTS_WEAR));
  ck_assert (has (&pairing, EM_REASON_HARDNESS_MATCHES) && has (&pairing, EM_REASON_POLISHES) && !has (&pairing, EM_REASON_RUSTS));
  ck_assert_double_eq_tol (pairing.base_hrc, 50, 1e-9);
  ck_assert (has (&pairing, EM_REASON_USUAL) && !has (&rusting, EM_REASON_USUAL));
  ck_assert (has (&pairing, EM_REASON_ABRASIVE_PLASTIC) && !has (&rusting, EM_REASON_ABRASIVE_PLASTIC));
  /* 0.8·1.85 + 0.2·13.5 = 4.18 % Cr; stainless begins at 10.5 (EN 10088-1) */
  ck_assert (has (&rusting, EM_REASON_RUSTS) && has (&rusting, EM_REASON_DISSIMILAR) && has (&rusting, EM_REASON_SOFTER));
}
END_TEST

/* Common practice, no source: unlike steels may be joined when the pair is suitable, and the why-nots are told. */
START_TEST (test_unlike_pairs)
{
  EmBase base = base_of (EM_FAMILY_TOOL_STEEL, h13, 48, 52);
  EmFiller austenitic = wire_of (EM_FAMILY_STAINLESS_AUSTENITIC, er309l, NAN, NAN), bronze = wire_of (EM_FAMILY_COPPER, (Mix) { .cu = 90 }, NAN, NAN);
  EmFiller light = wire_of (EM_FAMILY_ALUMINIUM, (Mix) { .si = 5 }, NAN, NAN);
  EmPairing pairing;

  austenitic.hardness_low_hv = 160;
  austenitic.hardness_high_hv = 210;
  pairing = pair (&base, &austenitic, EM_PROCESS_LASER, NAN);
  ck_assert (pairing.is_suited && has (&pairing, EM_REASON_DISSIMILAR) && !has (&pairing, EM_REASON_MATCHES_BASE));
  ck_assert (has (&pairing, EM_REASON_AUSTENITIC_ON_TOOL) && has (&pairing, EM_REASON_TOUGH_CUSHION));
  /* 210 HV against 50 HRC = 513 HV */
  ck_assert (has (&pairing, EM_REASON_SOFTER));
  ck_assert (em_is_absent (pairing.hardness_low_hrc));
  ck_assert_double_eq_tol (pairing.hardness_high_hv, 210, 1e-9);
  ck_assert_double_eq_tol (pairing.base_hv, 513, 1e-9);
  /* 20 % of H13: Cr_eq 0.8·24.675 + 0.2·8.0 = 21.3, Ni_eq 0.8·14.475 + 0.2·11.9 = 14.0: some ferrite */
  ck_assert_int_eq (pairing.schaeffler.phase, EM_PHASE_AUSTENITE_FERRITE);
  ck_assert (has (&pairing, EM_REASON_JOINS_UNLIKE));
  pairing = pair (&base, &bronze, EM_PROCESS_LASER, NAN);
  ck_assert (pairing.is_suited && has (&pairing, EM_REASON_COPPER_CONTENT));
  /* iron and aluminium make brittle compounds */
  pairing = pair (&base, &light, EM_PROCESS_LASER, NAN);
  ck_assert (!pairing.is_suited && has (&pairing, EM_REASON_WRONG_FAMILY));
  ck_assert ((pairing.reasons & EM_REASONS_RULE_OUT) != 0);
}
END_TEST

START_TEST (test_wrong_process_rules_out)
{
  EmBase base = base_of (EM_FAMILY_LOW_ALLOY, p20, 28, 32);
  EmFiller wire = wire_of (EM_FAMILY_LOW_ALLOY, p20_wire, 30, 40);
  EmPairing laser, arc;

  wire.processes = 1u << EM_PROCESS_GTAW;
  laser = pair (&base, &wire, EM_PROCESS_LASER, NAN);
  arc = pair (&base, &wire, EM_PROCESS_GTAW, NAN);
  ck_assert (!laser.is_suited && has (&laser, EM_REASON_WRONG_PROCESS));
  ck_assert (arc.is_suited && (arc.reasons & EM_REASONS_RULE_OUT) == 0);
}
END_TEST

/* Common practice, no source: under a beam usually no preheat but for much carbon; for an arc the metal's own, and always below the
 * last temper. */
START_TEST (test_preheat_advice)
{
  EmBase hot_work = base_of (EM_FAMILY_TOOL_STEEL, h13, 48, 52), cold_work = base_of (EM_FAMILY_TOOL_STEEL, d2, 58, 62);
  EmBase plain = base_of (EM_FAMILY_LOW_ALLOY, p20, 28, 32);
  EmFiller wire = wire_of (EM_FAMILY_TOOL_STEEL, h13, 48, 54);
  EmPairing pairing;

  hot_work.preheat_low_degc = 300;
  hot_work.preheat_high_degc = 400;
  hot_work.temper_degc = 590;
  pairing = pair (&hot_work, &wire, EM_PROCESS_LASER, NAN);
  ck_assert (!pairing.is_preheat_advised && em_is_absent (pairing.preheat_degc) && has (&pairing, EM_REASON_NO_PREHEAT));
  pairing = pair (&hot_work, &wire, EM_PROCESS_GTAW, NAN);
  ck_assert (pairing.is_preheat_advised && has (&pairing, EM_REASON_NEEDS_PREHEAT));
  ck_assert_double_eq_tol (pairing.preheat_degc, 300, 1e-9);
  ck_assert_double_eq_tol (pairing.preheat_ceiling_degc, 590, 1e-9);
  hot_work.temper_degc = 310;
  pairing = pair (&hot_work, &wire, EM_PROCESS_GTAW, NAN);
  ck_assert_double_lt (pairing.preheat_degc, 310);
  pairing = pair (&cold_work, &wire, EM_PROCESS_LASER, NAN);
  ck_assert (pairing.is_preheat_advised && has (&pairing, EM_REASON_CRACKS) && em_is_absent (pairing.preheat_degc));
  cold_work.preheat_low_degc = 200;
  cold_work.preheat_high_degc = 400;
  pairing = pair (&cold_work, &wire, EM_PROCESS_LASER, NAN);
  ck_assert_double_eq_tol (pairing.preheat_degc, 200, 1e-9);
  /* no practice told: Séférian of the base, worked above */
  pairing = pair (&plain, &wire, EM_PROCESS_GTAW, NAN);
  ck_assert_double_eq_tol (pairing.preheat_degc, 243.1, 0.1);
}
END_TEST

/* Carbon equivalents are not for tool steels; P20 is a low-alloy steel with too much carbon for them. */
START_TEST (test_tool_steel_has_no_carbon_equivalent)
{
  EmBase hot_work = base_of (EM_FAMILY_TOOL_STEEL, h13, 48, 52), plain = base_of (EM_FAMILY_LOW_ALLOY, p20, 28, 32);
  EmFiller same = wire_of (EM_FAMILY_TOOL_STEEL, h13, 48, 54), alike = wire_of (EM_FAMILY_LOW_ALLOY, p20_wire, 30, 40);
  EmPairing tool = pair (&hot_work, &same, EM_PROCESS_GTAW, NAN), low = pair (&plain, &alike, EM_PROCESS_GTAW, NAN);

  ck_assert_int_eq (tool.ce_iiw.validity, EM_VALID_NOT_APPLICABLE);
  ck_assert_int_eq (tool.cet.validity, EM_VALID_NOT_APPLICABLE);
  ck_assert_int_eq (tool.preheat_seferian_degc.validity, EM_VALID_NOT_APPLICABLE);
  check_refused (low.ce_iiw, EM_VALID_OUTSIDE, "C");
}
END_TEST

/* P20 with 30 % of itself in an austenitic wire: 316L falls at 0.3·2.88 + 0.7·22.175 = 16.4 and 0.3·10.6 + 0.7·13.975 = 13.0. The
 * sheet's line to martensite is at 12.3 there: nearer than it can be read to, so to be warned of. 309L, two units off, is not. */
START_TEST (test_too_lean_an_austenitic_wire_is_warned_of)
{
  EmBase base = base_of (EM_FAMILY_LOW_ALLOY, p20, 28, 32);
  EmFiller wire = wire_of (EM_FAMILY_STAINLESS_AUSTENITIC, er316l, NAN, NAN), better = wire_of (EM_FAMILY_STAINLESS_AUSTENITIC, er309l, NAN, NAN);
  EmPairing pairing;

  em_steel_pair (&base, &wire, EM_PROCESS_GTAW, 0.3, NAN, NAN, &pairing, NULL);
  ck_assert_double_eq_tol (pairing.schaeffler.cr_eq, 16.4, 0.05);
  ck_assert_double_eq_tol (pairing.schaeffler.ni_eq, 13.0, 0.05);
  ck_assert (has (&pairing, EM_REASON_CRACKS));
  em_steel_pair (&base, &better, EM_PROCESS_GTAW, 0.3, NAN, NAN, &pairing, NULL);
  ck_assert (!has (&pairing, EM_REASON_CRACKS));
  /* half of the tool in it brings 309L there too */
  em_steel_pair (&base, &better, EM_PROCESS_GTAW, 0.5, NAN, NAN, &pairing, NULL);
  ck_assert (has (&pairing, EM_REASON_CRACKS));
}
END_TEST

/* Common practice, no source: sulfur makes pores and hot cracks; ageing wires harden afterwards; high-carbon wires keep austenite. */
START_TEST (test_other_reasons)
{
  EmBase free_cutting = base_of (EM_FAMILY_FREE_MACHINING, p20, 28, 32), cold_work = base_of (EM_FAMILY_TOOL_STEEL, d2, 58, 62);
  EmFiller ageing = wire_of (EM_FAMILY_MARAGING, (Mix) { .c = 0.02, .ni = 18, .mo = 4.8 }, 32, 38);
  EmFiller carbide = wire_of (EM_FAMILY_TOOL_STEEL, (Mix) { .c = 1.25, .cr = 12 }, 55, 60);
  EmPairing pairing;

  ageing.aged_low_hrc = 50;
  ageing.aged_high_hrc = 54;
  pairing = pair (&free_cutting, &ageing, EM_PROCESS_LASER, NAN);
  ck_assert (has (&pairing, EM_REASON_SULPHUR) && has (&pairing, EM_REASON_HOT_CRACKS) && has (&pairing, EM_REASON_AGES_AFTER));
  pairing = pair (&cold_work, &carbide, EM_PROCESS_LASER, NAN);
  ck_assert (has (&pairing, EM_REASON_RETAINED_AUSTENITE) && has (&pairing, EM_REASON_HARD_TO_MACHINE));
}
END_TEST

/* Without a catalogue hardness the carbon relation stands in: 0.8·0.33 + 0.2·0.38 = 0.34 % C, 35 + 17 = 52 ± 2. */
START_TEST (test_hardness_without_catalogue)
{
  EmBase base = base_of (EM_FAMILY_STAINLESS_MARTENSITIC, (Mix) { .c = 0.38, .mn = 0.5, .si = 0.5, .cr = 13.5 }, 48, 52);
  EmFiller wire = wire_of (EM_FAMILY_STAINLESS_MARTENSITIC, er420, NAN, NAN);
  EmPairing pairing = pair (&base, &wire, EM_PROCESS_LASER, NAN);

  ck_assert (!pairing.is_hardness_from_catalogue);
  ck_assert_double_eq_tol (pairing.hardness_low_hrc, 50, 1e-9);
  ck_assert_double_eq_tol (pairing.hardness_high_hrc, 54, 1e-9);
}
END_TEST

/* Much of D2 melted into 309L brings 0.2·1.5 + 0.8·0.02 = 0.32 % carbon, which makes no martensite of it: textbook, from memory. */
START_TEST (test_no_martensite_hardness_of_other_deposits)
{
  EmBase base = base_of (EM_FAMILY_TOOL_STEEL, d2, 58, 62);
  EmFiller austenitic = wire_of (EM_FAMILY_STAINLESS_AUSTENITIC, er309l, NAN, NAN);
  EmFiller ageing = wire_of (EM_FAMILY_MARAGING, (Mix) { .c = 0.02, .ni = 18, .mo = 4.8 }, NAN, NAN);
  EmPairing pairing = pair (&base, &austenitic, EM_PROCESS_LASER, NAN);

  check_refused (pairing.martensite_hrc, EM_VALID_NOT_APPLICABLE, "filler");
  ck_assert (em_is_absent (pairing.hardness_low_hrc));
  pairing = pair (&base, &ageing, EM_PROCESS_LASER, NAN);
  check_refused (pairing.martensite_hrc, EM_VALID_NOT_APPLICABLE, "filler");
}
END_TEST

START_TEST (test_trace_shows_the_working)
{
  EmBase base = base_of (EM_FAMILY_LOW_ALLOY, p20, 28, 32);
  EmFiller wire = wire_of (EM_FAMILY_LOW_ALLOY, p20_wire, 30, 40);
  EmTrace trace;
  EmPairing pairing;
  bool has_ms = false;

  em_trace_init (&trace);
  em_steel_pair (&base, &wire, EM_PROCESS_GTAW, 0.0, NAN, NAN, &pairing, &trace);
  for (int i = 0; i < trace.n_steps; i++)
    {
      ck_assert_str_ne (trace.step[i].source, "");
      if (strcmp (trace.step[i].quantity, "martensite_start") == 0)
        {
          has_ms = true;
          /* 539 − 423·0.275 − 30.4·1.15 − 12.1·1.85 − 7.5·0.60 */
          ck_assert_double_eq_tol (trace.step[i].result.value, 360.83, 0.01);
        }
    }
  ck_assert (has_ms);
  em_trace_clear (&trace);
}
END_TEST

/* Every family with every family, both processes: for and against never say the same thing twice, and one of three hardness words at most. */
START_TEST (test_reasons_do_not_contradict)
{
  for (int b = 0; b < EM_N_FAMILY; b++)
    for (int f = 0; f < EM_N_FAMILY; f++)
      for (int p = 0; p < EM_N_PROCESS; p++)
        {
          EmBase base = base_of ((EmFamily) b, p20, 28, 32);
          EmFiller wire = wire_of ((EmFamily) f, er420, 45, 53);
          EmPairing pairing = pair (&base, &wire, (EmProcess) p, NAN);

          ck_assert (has (&pairing, EM_REASON_MATCHES_BASE) != has (&pairing, EM_REASON_DISSIMILAR));
          ck_assert (has (&pairing, EM_REASON_POLISHES) != has (&pairing, EM_REASON_POLISH_DIFFERS));
          ck_assert (has (&pairing, EM_REASON_TEXTURES) != has (&pairing, EM_REASON_TEXTURE_DIFFERS));
          ck_assert (has (&pairing, EM_REASON_NEEDS_PREHEAT) != has (&pairing, EM_REASON_NO_PREHEAT));
          ck_assert (!(has (&pairing, EM_REASON_MACHINES) && has (&pairing, EM_REASON_HARD_TO_MACHINE)));
          ck_assert_int_le (has (&pairing, EM_REASON_SOFTER) + has (&pairing, EM_REASON_HARDER) + has (&pairing, EM_REASON_HARDNESS_MATCHES)
                            + has (&pairing, EM_REASON_LASER_ABOVE_TOOL), 1);
          ck_assert (!(has (&pairing, EM_REASON_LASER_HARDER) && has (&pairing, EM_REASON_LASER_ABOVE_TOOL)));
          ck_assert (!(has (&pairing, EM_REASON_JOINS_UNLIKE) && has (&pairing, EM_REASON_CRACKS) && b != EM_FAMILY_TOOL_STEEL));
          ck_assert (pairing.is_suited == ((pairing.reasons & EM_REASONS_RULE_OUT) == 0));
          if (b == f)
            ck_assert (pairing.is_suited);
        }
}
END_TEST

START_TEST (test_reason_ids_are_whole_and_unlike)
{
  for (int i = 0; i < EM_N_REASON; i++)
    {
      ck_assert_ptr_nonnull (em_reason_ids[i]);
      for (int j = 0; j < i; j++)
        ck_assert_str_ne (em_reason_ids[i], em_reason_ids[j]);
    }
}
END_TEST

/* Beryllium copper wire goes on beryllium copper tools, and nowhere else: its fume is not brought to a job that can do without. */
START_TEST (test_beryllium_only_on_beryllium)
{
  EmBase steel = base_of (EM_FAMILY_TOOL_STEEL, h13, 44, 52), copper = base_of (EM_FAMILY_COPPER, (Mix) { 0 }, NAN, NAN);
  EmFiller wire = wire_of (EM_FAMILY_COPPER, (Mix) { 0 }, NAN, NAN);
  EmPairing pairing;

  copper.composition.balance = wire.composition.balance = EM_EL_CU;
  copper.composition.low_pct[EM_EL_BE] = wire.composition.low_pct[EM_EL_BE] = 1.8;
  copper.composition.high_pct[EM_EL_BE] = wire.composition.high_pct[EM_EL_BE] = 2.0;
  em_steel_pair (&steel, &wire, EM_PROCESS_GTAW, 0.3, NAN, NAN, &pairing, NULL);
  ck_assert (!pairing.is_suited);
  ck_assert (pairing.reasons & EM_REASON_BIT (EM_REASON_WRONG_FAMILY));
  em_steel_pair (&copper, &wire, EM_PROCESS_GTAW, 0.3, NAN, NAN, &pairing, NULL);
  ck_assert (pairing.is_suited);
}
END_TEST

EM_TEST_MAIN ("core: pair",
              test_beryllium_only_on_beryllium,
              test_p20_on_p20_is_harder_from_a_laser, test_420_on_420, test_unlike_pairs, test_wrong_process_rules_out,
              test_preheat_advice, test_tool_steel_has_no_carbon_equivalent, test_too_lean_an_austenitic_wire_is_warned_of,
              test_other_reasons, test_hardness_without_catalogue, test_no_martensite_hardness_of_other_deposits, test_trace_shows_the_working, test_reasons_do_not_contradict,
              test_reason_ids_are_whole_and_unlike)
