/* Checks of the judgement of base and wire against what the trade knows.
 *
 * Practical preheats, pairings and the behaviour of laser deposits are common practice, no source, unless one is named.
 * Hardness bands of the wires are from memory of makers' common figures.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-steel.h"
#include "em-test-chemistry.h"
#include "em-test-main.h"

#define HAS(pairing, reason) (((pairing).reasons & EM_REASON_BIT (EM_REASON_##reason)) != 0)

/* Low and high of every element alike, so the middle is the composition itself. */
static void
spell (const EmTestSteel *steel, EmComposition *out_composition)
{
  EmChemistry c;

  em_test_steel (steel, c);
  memcpy (out_composition->low_pct, c, sizeof c);
  memcpy (out_composition->high_pct, c, sizeof c);
  out_composition->balance = EM_EL_FE;
}

static EmBase
base_of (EmFamily family, const EmTestSteel *steel, double low_hrc, double high_hrc)
{
  EmBase base;

  em_base_init (&base);
  base.family = family;
  spell (steel, &base.composition);
  base.hardness_low_hrc = low_hrc;
  base.hardness_high_hrc = high_hrc;
  return base;
}

static EmFiller
filler_of (EmFamily family, const EmTestSteel *steel, double low_hrc, double high_hrc)
{
  EmFiller filler;

  em_filler_init (&filler);
  filler.family = family;
  spell (steel, &filler.composition);
  filler.hardness_low_hrc = low_hrc;
  filler.hardness_high_hrc = high_hrc;
  filler.processes = 1u << EM_PROCESS_LASER | 1u << EM_PROCESS_GTAW;
  filler.n_sizes = 1;
  filler.size[0] = (EmWireSize) { .wire_mm = 0.4, .is_stocked = true };
  return filler;
}

static EmPairing
pair (const EmBase *base, const EmFiller *filler, EmProcess process)
{
  EmPairing pairing;

  em_steel_pair (base, filler, process, 0.2, EM_ABSENT, EM_ABSENT, &pairing, NULL);
  return pairing;
}

static const EmTestSteel p20_wire = { .c = 0.28, .mn = 1.1, .si = 0.4, .cr = 1.8, .mo = 0.5 };
static const EmTestSteel s420 = { .c = 0.35, .mn = 0.5, .si = 0.5, .cr = 13.0 };
static const EmTestSteel er420 = { .c = 0.32, .mn = 0.4, .si = 0.3, .cr = 13.0 };

/* Common practice, no source: a P20-type wire, nominally softer than the parent, comes out somewhat harder from a laser's fast
 * quench. Carbon of the deposit: 0.2·0.34 + 0.8·0.28 = 0.292; 35 + 50·0.292 = 49.6 HRC fresh, against 33 of the parent. */
START_TEST (test_p20_wire_on_p20)
{
  EmBase base = base_of (EM_FAMILY_TOOL_STEEL, &em_test_p20, 30, 36);
  EmFiller wire = filler_of (EM_FAMILY_TOOL_STEEL, &p20_wire, 26, 28);
  EmPairing laser = pair (&base, &wire, EM_PROCESS_LASER), arc = pair (&base, &wire, EM_PROCESS_GTAW);

  ck_assert_double_lt ((wire.hardness_low_hrc + wire.hardness_high_hrc) / 2, laser.base_hrc);
  ck_assert_double_eq_tol (laser.base_hrc, 33.0, 1e-12);
  ck_assert_double_eq_tol (laser.martensite_hrc.value, 49.6, 1e-9);
  ck_assert (laser.is_suited && HAS (laser, MATCHES_BASE) && HAS (laser, LASER_ABOVE_TOOL));
  ck_assert (!HAS (laser, SOFTER) && !HAS (laser, LASER_HARDER));
  ck_assert (HAS (arc, SOFTER) && !HAS (arc, LASER_ABOVE_TOOL));
}
END_TEST

/* Common practice, no source: 420 on 420 where the molded material is abrasive. */
START_TEST (test_420_on_420)
{
  EmBase base = base_of (EM_FAMILY_STAINLESS_MARTENSITIC, &s420, 48, 54);
  EmFiller wire = filler_of (EM_FAMILY_STAINLESS_MARTENSITIC, &er420, 45, 53);

  wire.resists_wear = wire.resists_corrosion = true;

  EmPairing pairing = pair (&base, &wire, EM_PROCESS_LASER);

  ck_assert (pairing.is_suited && HAS (pairing, MATCHES_BASE) && HAS (pairing, RESISTS_WEAR) && HAS (pairing, HARDNESS_MATCHES));
  ck_assert (HAS (pairing, ABRASIVE_PLASTIC));
  ck_assert (!HAS (pairing, DISSIMILAR) && !HAS (pairing, RUSTS));
}
END_TEST

/* Common practice, no source: unlike steels may be joined; steel on aluminium may not, nor aluminium on steel. */
START_TEST (test_unlike_metals)
{
  EmBase p20 = base_of (EM_FAMILY_TOOL_STEEL, &em_test_p20, 30, 36);
  EmFiller h13 = filler_of (EM_FAMILY_TOOL_STEEL, &em_test_h13, 48, 54);
  EmFiller s309 = filler_of (EM_FAMILY_STAINLESS_AUSTENITIC, &em_test_309l, EM_ABSENT, EM_ABSENT);
  EmFiller s420wire = filler_of (EM_FAMILY_STAINLESS_MARTENSITIC, &er420, 45, 53);
  EmFiller aluminium = filler_of (EM_FAMILY_ALUMINIUM, &em_test_309l, EM_ABSENT, EM_ABSENT);
  EmBase alloy = base_of (EM_FAMILY_ALUMINIUM, &em_test_309l, EM_ABSENT, EM_ABSENT);

  s309.hardness_low_hv = 160;
  s309.hardness_high_hv = 210;

  EmPairing soft = pair (&p20, &s309, EM_PROCESS_GTAW);

  ck_assert (pair (&p20, &h13, EM_PROCESS_LASER).is_suited && HAS (pair (&p20, &h13, EM_PROCESS_LASER), HARDER));
  ck_assert (pair (&p20, &s420wire, EM_PROCESS_LASER).is_suited && HAS (pair (&p20, &s420wire, EM_PROCESS_LASER), DISSIMILAR));
  ck_assert (soft.is_suited && HAS (soft, DISSIMILAR) && HAS (soft, AUSTENITIC_ON_TOOL) && HAS (soft, SOFTER));
  ck_assert (!pair (&p20, &aluminium, EM_PROCESS_LASER).is_suited && HAS (pair (&p20, &aluminium, EM_PROCESS_LASER), WRONG_FAMILY));
  ck_assert (!pair (&alloy, &h13, EM_PROCESS_LASER).is_suited && pair (&alloy, &aluminium, EM_PROCESS_LASER).is_suited);
}
END_TEST

/* 0.2·0.34 + 0.8·0.28 as above; each element of the deposit and the process asked for. */
START_TEST (test_process)
{
  EmBase base = base_of (EM_FAMILY_TOOL_STEEL, &em_test_p20, 30, 36);
  EmFiller wire = filler_of (EM_FAMILY_TOOL_STEEL, &p20_wire, 30, 34);

  wire.processes = 1u << EM_PROCESS_GTAW;
  ck_assert_double_eq_tol (pair (&base, &wire, EM_PROCESS_GTAW).deposit[EM_EL_C], 0.292, 1e-12);
  ck_assert (pair (&base, &wire, EM_PROCESS_GTAW).is_suited);
  ck_assert (!pair (&base, &wire, EM_PROCESS_LASER).is_suited && HAS (pair (&base, &wire, EM_PROCESS_LASER), WRONG_PROCESS));
}
END_TEST

/* Common practice, no source: P20 200–300 °C for an arc, none under a pulsed laser; D2 warmed even then. Never above the last
 * tempering (azom.com ArticleID 2451). */
START_TEST (test_preheat)
{
  EmBase p20 = base_of (EM_FAMILY_TOOL_STEEL, &em_test_p20, 30, 36), d2 = base_of (EM_FAMILY_TOOL_STEEL, &em_test_d2, 56, 62);
  EmFiller wire = filler_of (EM_FAMILY_TOOL_STEEL, &p20_wire, 30, 34);

  p20.preheat_low_degc = 200;
  p20.preheat_high_degc = 300;
  p20.temper_degc = 595;
  d2.preheat_low_degc = 200;
  d2.preheat_high_degc = 400;
  d2.temper_degc = 205;
  d2.laser_preheat_degc = 150;

  EmPairing arc = pair (&p20, &wire, EM_PROCESS_GTAW), beam = pair (&p20, &wire, EM_PROCESS_LASER);

  ck_assert (arc.is_preheat_advised && arc.preheat_degc >= 200 && arc.preheat_degc <= 300 && HAS (arc, NEEDS_PREHEAT));
  ck_assert (!beam.is_preheat_advised && isnan (beam.preheat_degc) && HAS (beam, NO_PREHEAT));
  ck_assert_double_eq (arc.preheat_ceiling_degc, 595);

  EmPairing arc_d2 = pair (&d2, &wire, EM_PROCESS_GTAW), beam_d2 = pair (&d2, &wire, EM_PROCESS_LASER);

  ck_assert (arc_d2.is_preheat_advised && arc_d2.preheat_degc < 205);
  ck_assert (beam_d2.is_preheat_advised && beam_d2.preheat_degc < 205 && HAS (beam_d2, CRACKS));
}
END_TEST

/* For any last temper, the preheat told stays below it. */
START_TEST (test_preheat_stays_below_any_temper)
{
  EmBase base = base_of (EM_FAMILY_TOOL_STEEL, &em_test_h13, 44, 54);
  EmFiller wire = filler_of (EM_FAMILY_TOOL_STEEL, &em_test_h13, 48, 54);

  base.preheat_low_degc = 300;
  base.preheat_high_degc = 400;
  base.laser_preheat_degc = 350;
  for (int temper_degc = 20; temper_degc <= 700; temper_degc += 5)
    for (int process = 0; process < EM_N_PROCESS; process++)
      {
        base.temper_degc = temper_degc;

        EmPairing pairing = pair (&base, &wire, (EmProcess) process);

        ck_assert_msg (isnan (pairing.preheat_degc) || pairing.preheat_degc < temper_degc, "%f at a temper of %d", pairing.preheat_degc,
                       temper_degc);
      }
}
END_TEST

/* Tool steels and stainless lie outside CE, CET and EN 1011-2 by nature; a laser outside an arc welding standard. */
START_TEST (test_relations_for_other_families)
{
  EmBase h13 = base_of (EM_FAMILY_TOOL_STEEL, &em_test_h13, 44, 54), p4140 = base_of (EM_FAMILY_LOW_ALLOY, &em_test_4140, 26, 34);
  EmFiller wire = filler_of (EM_FAMILY_TOOL_STEEL, &em_test_h13, 48, 54), low = filler_of (EM_FAMILY_LOW_ALLOY, &em_test_er80s_d2, 20, 28);
  EmPairing tool = pair (&h13, &wire, EM_PROCESS_GTAW);

  ck_assert_int_eq ((int) tool.ce_iiw.validity, EM_VALID_NOT_APPLICABLE);
  ck_assert_int_eq ((int) tool.cet.validity, EM_VALID_NOT_APPLICABLE);
  ck_assert_int_eq ((int) tool.preheat_en1011_degc.validity, EM_VALID_NOT_APPLICABLE);
  ck_assert_int_eq ((int) pair (&p4140, &low, EM_PROCESS_LASER).preheat_en1011_degc.validity, EM_VALID_NOT_APPLICABLE);
  ck_assert_int_eq ((int) pair (&p4140, &low, EM_PROCESS_GTAW).cet.validity, EM_VALID);
}
END_TEST

/* The catalogue's hardness wins; where it is silent, 35 + 50 C of the deposit, ± 2: C 0.2·0.40 + 0.8·0.28 = 0.304, 50.2. */
START_TEST (test_hardness_of_the_deposit)
{
  EmBase base = base_of (EM_FAMILY_LOW_ALLOY, &em_test_4140, 26, 34);
  EmFiller known = filler_of (EM_FAMILY_LOW_ALLOY, &p20_wire, 30, 34), silent = filler_of (EM_FAMILY_LOW_ALLOY, &p20_wire, EM_ABSENT, EM_ABSENT);
  EmPairing told = pair (&base, &known, EM_PROCESS_GTAW), reckoned = pair (&base, &silent, EM_PROCESS_GTAW);

  ck_assert (told.is_hardness_from_catalogue);
  ck_assert_double_eq (told.hardness_low_hrc, 30);
  ck_assert_double_eq (told.hardness_high_hrc, 34);
  ck_assert (!reckoned.is_hardness_from_catalogue);
  ck_assert_double_eq_tol (reckoned.hardness_low_hrc, 48.2, 1e-9);
  ck_assert_double_eq_tol (reckoned.hardness_high_hrc, 52.2, 1e-9);
}
END_TEST

/* Free-machining steel: sulfur makes pores and hot cracks (common practice, no source). */
START_TEST (test_sulfur)
{
  EmBase base = base_of (EM_FAMILY_FREE_MACHINING, &em_test_p20, 28, 34);
  EmFiller wire = filler_of (EM_FAMILY_TOOL_STEEL, &p20_wire, 30, 34);

  base.composition.low_pct[EM_EL_S] = base.composition.high_pct[EM_EL_S] = 0.08;

  EmPairing pairing = pair (&base, &wire, EM_PROCESS_LASER);

  ck_assert (HAS (pairing, SULPHUR) && HAS (pairing, HOT_CRACKS));
}
END_TEST

START_TEST (test_reason_ids)
{
  for (int i = 0; i < EM_N_REASON; i++)
    {
      ck_assert_msg (em_reason_ids[i] != NULL && em_reason_ids[i][0] != '\0', "reason %d has no id", i);
      for (int j = 0; j < i; j++)
        ck_assert_str_ne (em_reason_ids[i], em_reason_ids[j]);
    }
}
END_TEST

/* The working repeats the figures, and says nothing of a relation that does not hold. */
START_TEST (test_working)
{
  EmBase base = base_of (EM_FAMILY_LOW_ALLOY, &em_test_4140, 26, 34);
  EmFiller wire = filler_of (EM_FAMILY_LOW_ALLOY, &p20_wire, 30, 34);
  EmPairing pairing;
  EmTrace trace;
  int n_ms = 0;

  em_trace_init (&trace);
  em_steel_pair (&base, &wire, EM_PROCESS_GTAW, 0.2, EM_ABSENT, EM_ABSENT, &pairing, &trace);
  for (int i = 0; i < trace.n_steps; i++)
    {
      ck_assert_msg (isfinite (trace.step[i].result.value), "%s tells no number", trace.step[i].quantity);
      if (strcmp (trace.step[i].result.symbol, "Ms") == 0)
        {
          n_ms++;
          ck_assert_double_eq (trace.step[i].result.value, pairing.ms_degc.value);
        }
    }
  ck_assert_int_eq (n_ms, 1);
  em_trace_clear (&trace);
}
END_TEST

EM_TEST_MAIN ("core: practice", test_p20_wire_on_p20, test_420_on_420, test_unlike_metals, test_process, test_preheat,
              test_preheat_stays_below_any_temper, test_relations_for_other_families, test_hardness_of_the_deposit, test_sulfur,
              test_reason_ids, test_working)
