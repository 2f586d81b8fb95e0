/* Checks of notes/em-notes: each symbol and abbreviation that notes are written with, beside the standard that defines it.
 *
 * Standards are named by number and not quoted; which symbols and abbreviations they hold is from memory. Where a word is no
 * standard's, it says common practice.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "notes-check.h"

#define Y14_5 "ASME Y14.5"
#define Y14_38 "ASME Y14.38"
#define ISO_129 "ISO 129-1"
#define ISO_286 "ISO 286-1"
#define TRADE "common practice, no source"

static EmLexicon *lexicon;

typedef struct
{
  const char *source, *sign, *text, *row;
} Case;

static const Case cases[] = {
  { Y14_5 " and " ISO_129, "⌀", "BORE ⌀12 MM X 20 DEEP, 0.1 PER SIDE", "1\t1\tdiameter\t12\tmm" },
  { Y14_5 " and " ISO_129, "R", "WORN CORNER R2 MM X 40 LG", "1\t1\tradius\t2\tmm" },
  { Y14_5, "CR", "WORN CORNER CR2 MM X 40 LG", "1\t1\tradius\t2\tmm" },
  { Y14_5 " and " ISO_129, "SR", "SPHERICAL SEAT SR6 MM, ADD 0.5 THK", "1\t1\tradius\t6\tmm" },
  { Y14_5 " and " ISO_129, "S⌀", "SPHERICAL SEAT S⌀12 MM, ADD 0.5 THK", "1\t1\tradius\t6\tmm" },   /* half of 12 */
  { Y14_5 " and " ISO_129, "□", "FILL POCKET □8 MM X 3 DP", "1\t1\twidth\t8\tmm" },
  { Y14_5, "↧", "PIT ⌀1.2 MM ↧0.4 MM", "1\t1\tdepth\t0.4\tmm" },
  { Y14_5, "⌴", "⌴ TO FILL ⌀8 MM ↧3 MM", "1\t1\tform\tcylinder\t" },
  { Y14_5, "⌵", "⌵ TO FILL ⌀8 MM ↧3 MM", "1\t1\tform\tcone\t" },
  { Y14_5 " and " ISO_129, "°", "DAM 10 X 3 X 2 MM, 5° DRAFT", "1\t1\tdraft\t5\tdeg" },
  { Y14_5 " and " ISO_129, "±", "PIN ⌀25 ±0.1 MM WORN TO 24.8", "1\t1\tdiameter\t25\tmm" },
  { Y14_5, "+/-", "BORE 12 +0.02/-0.00 MM WORN TO 12.1", "1\t1\tdiameter\t12\tmm" },
  { Y14_5, "limits", "BORE ⌀.498/.502 X .75 DP", "1\t1\tdiameter\t12.7\tmm" },                      /* .500 in */
  { Y14_5 " and " ISO_129, "×", "NICK 5 × 2 × 1 MM", "1\t1\tleg_b\t1\tmm" },
  { Y14_5, "4X", "4X NICK 5 X 2 X 1 MM", "1\t1\tcount\t4\t" },
  { ISO_129, "4×", "4× NICK 5 X 2 X 1 MM", "1\t1\tcount\t4\t" },
  { Y14_5 " and " ISO_129, "( )", "NICK 5 X 2 X 1 MM (12.5)", "1\t0\tunused\t12.5\t" },
  { Y14_5, "[ ]", "CRACK 12.7 [.500] LG", "1\t1\tlength\t12.7\tmm" },
  { Y14_5, ".5", "CRACK .5 LG", "1\t1\tlength\t12.7\tmm" },
  { Y14_5, "0.5", "CRACK 0.5 LG X 0.2 DP", "1\t1\tlength\t0.5\tmm" },
  { ISO_129, "0,5", "CRACK 0,5 LG", "1\t1\tlength\t0.5\tmm" },
  { ISO_129, "t=", "RIB t=2 MM, 20 LG, ADD 0.3", "1\t1\tthickness\t2\tmm" },
  { ISO_286, "H7", "BORE 16 H7 WORN TO 16.1, 20 DEEP", "1\t1\tdiameter\t16\tmm" },
  { ISO_129, "2 × 45°", "EDGE CHIPPED 2 × 45°", "1\t1\tquestion\tcount-or-chamfer\t" },
  { TRADE, "3/4", "CRACK 3/4 LG", "1\t1\tlength\t19.05\tmm" },
  { TRADE, "1-1/4", "CRACK 1-1/4 LG", "1\t1\tlength\t31.75\tmm" },
  { TRADE, "1 1/4", "CRACK 1 1/4 LG", "1\t1\tlength\t31.75\tmm" },
  { TRADE, "½", "CRACK 1½ LG", "1\t1\tlength\t38.1\tmm" },
  { TRADE, "thou", "FACE 2\" X 1\", ADD 20 THOU", "1\t1\tthickness\t0.508\tmm" },
  { TRADE, "mil", "FACE 2\" X 1\", ADD 20 MIL", "1\t1\tthickness\t0.508\tmm" },
  { TRADE, "\"", "CRACK 2\" LG", "1\t1\tlength\t50.8\tmm" },
  { TRADE, "(4) PLCS", "NICK 5 X 2 X 1 MM (4) PLCS", "1\t1\tcount\t4\t" },
  { TRADE, "P/S", "BORE ⌀12 MM X 20 DEEP, 0.1 P/S", "1\t1\tbuild\t0.1\tmm" },
  { TRADE, "PER SIDE", "BORE ⌀12 MM X 20 DEEP, 0.1 PER SIDE", "1\t1\tbuild\t0.1\tmm" },
  { TRADE, "ON DIA", "BORE ⌀12 MM X 20 DEEP, 0.2 ON DIA", "1\t1\tbuild\t0.1\tmm" },
  { TRADE, "S/O", "S/O WORN R2 MM X 40 LG", "1\t1\tkind\tworn-corner\t" },
  { TRADE, "P/L", "P/L WORN R2 MM X 40 LG", "1\t1\tkind\tworn-corner\t" },
  { TRADE, "PCS", "NICK 5 X 2 X 1 MM 3 PCS", "1\t1\tcount\t3\t" },
  { Y14_38, "PL", "NICK 5 X 2 X 1 MM 3 PL", "1\t1\tcount\t3\t" },
  { Y14_38, "QTY", "NICK 5 X 2 X 1 MM QTY 3", "1\t1\tcount\t3\t" },
  { Y14_38, "REQD", "NICK 5 X 2 X 1 MM 3 REQD", "1\t1\tcount\t3\t" },
  { Y14_38, "EA", "NICK 5 X 2 X 1 MM 3 EA", "1\t1\tcount\t3\t" },
  { Y14_38, "TYP", "NICK 5 X 2 X 1 MM TYP", "1\t1\tquestion\tcount-unknown\t" },
  { Y14_38, "REF", "NICK 5 X 2 X 1 MM, 12.5 REF", "!1\t1\tlength\t12.5\tmm" },
  { Y14_38, "LG", "CRACK 12 MM LG", "1\t1\tlength\t12\tmm" },
  { Y14_38, "WD", "FACE 20 LG X 12 WD MM", "1\t1\twidth\t12\tmm" },
  { Y14_38, "W", "FACE 20 LG X 12 W MM", "1\t1\twidth\t12\tmm" },
  { Y14_38, "HT", "SIDEWALL 20 LG X 12 HT MM", "1\t1\theight\t12\tmm" },
  { Y14_38, "THK", "FACE 20 X 12 X 2 THK MM", "1\t1\tthickness\t2\tmm" },
  { Y14_38, "DP", "CRACK 12 LG X 2 DP MM", "1\t1\tdepth\t2\tmm" },
  { Y14_38, "THRU", "BORE ⌀12 WORN TO 12.1, 20 THRU MM", "1\t1\tlength\t20\tmm" },
  { Y14_38, "DIA", "PIT 2 DIA X 0.5 DP MM", "1\t1\tdiameter\t2\tmm" },
  { Y14_38, "RAD", "WORN CORNER 2 RAD X 40 LG MM", "1\t1\tradius\t2\tmm" },
  { Y14_38, "ID", "BORE 12 ID WORN TO 12.1 X 20 LG MM", "1\t1\tdiameter\t12\tmm" },
  { Y14_38, "OD", "PIN 12 OD WORN TO 11.9 X 20 LG MM", "1\t1\tdiameter\t12\tmm" },
  { Y14_38, "INCL", "CRACK 12 LG X 2 DP MM, 60 DEG INCL", "1\t1\tangle\t60\tdeg" },
  { Y14_38, "DEG", "DAM 10 X 3 X 2 MM, 5 DEG DRAFT", "1\t1\tdraft\t5\tdeg" },
  { Y14_38, "SQ", "FILL POCKET 8 SQ X 3 DP MM", "1\t1\tlength\t8\tmm" },
  { Y14_38, "CBORE", "FILL CBORE ⌀8 MM X 3 DP", "1\t1\tform\tcylinder\t" },
  { Y14_38, "CSK", "FILL CSK ⌀8 MM X 3 DP", "1\t1\tform\tcone\t" },
  { Y14_38, "SPHER", "SPHER SEAT R6 MM, ADD 0.5 THK", "1\t1\tform\tsphere\t" },
  { Y14_38, "MIN", "FACE 20 X 12, ADD 2 MIN MM", "1\t1\tthickness\t2\tmm" },
  { Y14_38, "MAX", "WORN CORNER R2 MAX X 40 LG MM", "1\t1\tradius\t2\tmm" },
  { Y14_38, "NOM", "BORE 12 NOM, NOW 12.1 X 20 DP MM", "1\t1\tdiameter\t12\tmm" },
  { Y14_38, "ACT", "BORE 12 NOM, 12.1 ACT X 20 DP MM", "1\t1\tworn\t12.1\tmm" },
  { Y14_38, "APPROX", "CRACK APPROX 12 LG MM", "1\t1\tlength\t12\tmm" },
  { Y14_38, "MATL", "MATL H13", "1\t0\tbase\th13\t" },
  { Y14_38, "STL", "STL D2", "1\t0\tbase\td2\t" },
  { Y14_38, "SST", "420 SST", "1\t0\tbase\t420\t" },
  { Y14_38, "AL", "AL 6061", "1\t0\tbase\t6061\t" },
  { Y14_38, "HT TR", "HT TR 48 HRC", "1\t0\thardness\t48\tHRC" },
  { Y14_38, "HRC", "48 HRC", "1\t0\thardness\t48\tHRC" },
  { Y14_38, "STK", "ADD .02 STK ALL OVER", "1\t0\tstock\t0.508\tmm" },
  { Y14_38, "UOS", "UOS ALL DIMS MM", "1\t0\tunits\tmm\t" },
  { Y14_38, "DWG", "DWG 4410-B", "1\t0\tdrawing\t4410-B\t" },
  { Y14_38, "NO.", "TOOL NO. 77", "1\t0\ttool_number\t77\t" },
  { Y14_38, "ADJ", "NICK .1 X .02 X .02, ADJ HOLE", "1\t1\tnear\thole\t" },
  { Y14_38, "SURF", "SURF 20 X 12, ADD 2 MM", "1\t1\tkind\tface\t" },
  { Y14_38, "GRD", "GRD BY CUST", "1\t0\tfinish\tcustomer\t" },
  { Y14_38, "MACH", "MACH BY CUST", "1\t0\tfinish\tcustomer\t" },
  { Y14_38, "BRG", "BRG BORE ⌀1.0 WORN TO 1.01 X .5 LG", "!1\t0\tunused\tBRG\t" },
  { Y14_38, "BSHG", "BSHG BORE ⌀1.0 WORN TO 1.01 X .5 LG", "!1\t0\tunused\tBSHG\t" },
  { Y14_38, "THD", "DO NOT WELD THD", "1\t0\trefuse\tthread\t" },
  { Y14_38, "IN.", "CRACK 2 IN. LG", "1\t1\tlength\t50.8\tmm" },
  { Y14_38, "MM", "CRACK 2 MM LG", "1\t1\tlength\t2\tmm" },
  /* How notes are set out. */
  { TRADE, "stacked", "WORN CORNER\nR2 MM\n40 MM LG", "2\t1\tradius\t2\tmm" },
  { TRADE, "run on", "NICK 5 X 2 X 1 MM, CRACK 12 MM LG X 2 DP", "1\t2\tkind\tgroove\t" },
  { TRADE, "1.", "1. NICK 5 X 2 X 1 MM\n2. CRACK 12 MM LG X 2 DP", "2\t2\tkind\tgroove\t" },
  { TRADE, "a)", "a) nick 5 x 2 x 1 mm\nb) crack 12 mm lg x 2 dp", "2\t2\tkind\tgroove\t" },
  { TRADE, "•", "• nick 5 x 2 x 1 mm\n• crack 12 mm lg x 2 dp", "2\t2\tkind\tgroove\t" },
  { TRADE, "lower case", "worn corner r2 mm x 40 lg", "1\t1\tradius\t2\tmm" },
  { TRADE, "a slip", "WORN CORNRE R2 MM X 40 LG", "1\t1\tkind\tworn-corner\t" },
  /* By data alone: the same in German and Spanish; a decimal comma (ISO 129-1). */
  { ISO_129, "Länge", "Riss, Länge 12, Tiefe 1,5", "1\t1\tdepth\t1.5\tmm" },
  { TRADE, "breit", "Fläche 20 lang, 12 breit, 0,5 auftragen", "1\t1\twidth\t12\tmm" },
  { TRADE, "pro Seite", "Bohrung Ø12, 20 tief, 0,1 pro Seite", "1\t1\tbuild\t0.1\tmm" },
  { TRADE, "im Durchmesser", "Bohrung Ø12, 20 tief, 0,2 im Durchmesser", "1\t1\tbuild\t0.1\tmm" },
  { TRADE, "Stück", "Macke 5 x 2 x 1 mm, 3 Stück", "1\t1\tcount\t3\t" },
  { TRADE, "nicht schweißen", "Nicht auf Gewinde schweißen", "1\t0\trefuse\tthread\t" },
  { TRADE, "an ending", "Delle Ø2 mm, 0,5 tief, in polierter Fläche", "1\t1\tnear\tpolish\t" },
  { TRADE, "a compound", "Zylinderstiftbohrung Ø8 verschlissen auf 8,1, 20 tief", "1\t1\tkind\tbore\t" },
  { TRADE, "ä as ae", "Flaeche 20 x 12 mm, 0,5 auftragen", "1\t1\tkind\tface\t" },
  { TRADE, "de largo", "Grieta de 12 mm de largo y 2 mm de profundidad", "1\t1\tdepth\t2\tmm" },
  { TRADE, "por lado", "Barreno Ø12 mm, 0,1 por lado, 20 de profundidad", "1\t1\tbuild\t0.1\tmm" },
  { TRADE, "piezas", "Mella 5 x 2 x 1 mm, 3 piezas", "1\t1\tcount\t3\t" },
  { TRADE, "no soldar", "No soldar en la rosca", "1\t0\trefuse\tthread\t" },
  { TRADE, "una terminación", "Aristas gastadas, radio 2 mm, 40 mm de largo", "1\t1\tkind\tworn-corner\t" },
};

START_TEST (test_symbol)
{
  /* Says which row of the table breaks. */
  printf ("%s (%s)\n", cases[_i].sign, cases[_i].source);
  assert_row (lexicon, cases[_i].text, EM_UNITS_METRIC, cases[_i].row);
}
END_TEST

int
main (void)
{
  TCase *tcase = tcase_create ("symbols");
  int status;

  lexicon = load_lexicon ();
  tcase_add_loop_test (tcase, test_symbol, 0, G_N_ELEMENTS (cases));
  status = run_suite ("notes: symbols", tcase);
  em_lexicon_free (lexicon);
  return status;
}
