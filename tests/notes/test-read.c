/* Checks of notes/em-notes: conventions of drawing notes against the standards that define them.
 *
 * Inches are converted by 25.4 mm exactly (NIST SP 811, appendix B), worked by hand beside each row.
 *
 * Copyright (C) 2026 The Estimend developers
 * SPDX-License-Identifier: GPL-3.0-or-later */

#include "em-lexicon.h"
#include "notes-check.h"

static EmLexicon *lexicon;

typedef struct
{
  const char *text;
  EmUnits     units;
  const char *row;
} Case;

static const Case cases[] = {
  /* Symbols of ASME Y14.5-2018 and ISO 129-1. */
  { "BORE ⌀12 MM X 20 DEEP, 0.1 PER SIDE", EM_UNITS_METRIC, "1\t1\tdiameter\t12\tmm" },
  { "PIT ⌀1.2 MM ↧0.4 MM", EM_UNITS_METRIC, "1\t1\tdepth\t0.4\tmm" },
  { "CORNER WORN R0.5 MM X 40 LG", EM_UNITS_METRIC, "1\t1\tradius\t0.5\tmm" },
  { "SPHERICAL SEAT SR6 MM", EM_UNITS_METRIC, "1\t1\tradius\t6\tmm" },
  { "4X NICK 2 X 1 X 1 MM", EM_UNITS_METRIC, "1\t1\tcount\t4\t" },
  { "⌴ TO FILL ⌀8 MM ↧3 MM", EM_UNITS_METRIC, "1\t1\tform\tcylinder\t" },
  { "⌵ TO FILL ⌀8 MM ↧3 MM", EM_UNITS_METRIC, "1\t1\tform\tcone\t" },
  { "DAM 10 LG X 3 WD X 2 HT MM, 5° DRAFT", EM_UNITS_METRIC, "1\t1\tdraft\t5\tdeg" },
  /* Reference sizes are for information only and never used (ASME Y14.5). */
  { "NICK 5 X 1 X 1 MM (12.5)", EM_UNITS_METRIC, "1\t0\tunused\t12.5\t" },
  /* A tolerance is no size: 25 ±0.1. */
  { "PIN ⌀25 ±0.1 MM WORN TO 24.8", EM_UNITS_METRIC, "1\t1\tworn\t24.8\tmm" },
  { "BORE .500 +.001/-.000 DIA X .75 DP", EM_UNITS_METRIC, "1\t1\tdiameter\t12.7\tmm" },
  /* Limits .498/.502: the middle .500 in = 12.7 mm. */
  { "BORE ⌀.498/.502 X .75 DP", EM_UNITS_METRIC, "1\t1\tdiameter\t12.7\tmm" },
  /* Abbreviations of ASME Y14.38: DP, LG, THK, WD, HT, DIA, RAD, TYP, PLCS, REF, INCL, STK, MATL. */
  { "CRACK 1 LG X .1 DP", EM_UNITS_INCH, "1\t1\tdepth\t2.54\tmm" },
  { "FACE 2 LG X 1 WD X .02 THK", EM_UNITS_INCH, "1\t1\tthickness\t0.508\tmm" },
  { "SIDEWALL 2 LG X .5 HT X .02 THK", EM_UNITS_INCH, "1\t1\theight\t12.7\tmm" },
  { "CRACK 1\" LG X .1 DP X 60 DEG INCL", EM_UNITS_INCH, "1\t1\tangle\t60\tdeg" },
  { "NICK .1 X .02 X .02 4 PLCS", EM_UNITS_INCH, "1\t1\tcount\t4\t" },
  { "NICK .1 X .02 X .02 (4) PLCS", EM_UNITS_INCH, "1\t1\tcount\t4\t" },
  { "NICK .1 X .02 X .02 TYP", EM_UNITS_INCH, "1\t1\tquestion\tcount-unknown\t" },
  { "MATL: P20, 30 HRC", EM_UNITS_INCH, "1\t0\tbase\tp20\t" },
  { "MATL: P20, 30 HRC", EM_UNITS_INCH, "1\t0\thardness\t30\tHRC" },
  { "MATL 420", EM_UNITS_INCH, "1\t0\tbase\t420\t" },
  { "EDGE NICK 420 LONG", EM_UNITS_METRIC, "!1\t0\tbase\t420\t" },
  /* Inch exactness: .030 → 0.762; 3/4 → 19.05; 1-1/4 → 31.75; 20 thou → 0.508; 1 mil → 0.0254. */
  { "FACE 2 X 1, ADD .030", EM_UNITS_METRIC, "1\t1\tthickness\t0.762\tmm" },
  { "CRACK 3/4 LG", EM_UNITS_METRIC, "1\t1\tlength\t19.05\tmm" },
  { "CRACK 1-1/4 LG", EM_UNITS_METRIC, "1\t1\tlength\t31.75\tmm" },
  { "CRACK 1 1/4 LG", EM_UNITS_METRIC, "1\t1\tlength\t31.75\tmm" },
  { "CRACK 1¼ LG", EM_UNITS_METRIC, "1\t1\tlength\t31.75\tmm" },
  { "FACE 2\" X 1\", ADD 20 THOU", EM_UNITS_METRIC, "1\t1\tthickness\t0.508\tmm" },
  { "FACE 2\" X 1\", ADD 10 MILS", EM_UNITS_METRIC, "1\t1\tthickness\t0.254\tmm" },
  /* What broke off a rib is its top; how thick it is, no wear. */
  { "Steg (1 mm dick, 6 mm lang) weggebrochen, 1,8 mm hoch wieder aufbauen", EM_UNITS_METRIC, "1\t1\tcoat\t1.8\tmm" },
  { "der Steg ist 1,6 dick und 48 lang, oben fehlen 0,4", EM_UNITS_METRIC, "1\t1\tthickness\t1.6\tmm" },
  { "CREST ON CORE TOP WORN, 1.5 THK X 20 LG, COAT 0.4", EM_UNITS_METRIC, "1\t1\tkind\trib\t" },
  /* A step is a face, unless it is as high as a wall. */
  { "SHUTOFF STEP 20 X 8 LOW 0.3", EM_UNITS_METRIC, "1\t1\tkind\tface\t" },
  { "step worn, 30 mm long, build up wall 2 mm high 0.5 mm thick", EM_UNITS_METRIC, "1\t1\theight\t2\tmm" },
  { "STEP HT 3.2 IS NOW 3.0, STEP 22 X 5", EM_UNITS_METRIC, "1\t1\tthickness\t0.2\tmm" },
  /* Words that stand before their sizes, one after the other. */
  { "RIB TIP 0.4 LOW. THK 1.2 WD 20", EM_UNITS_METRIC, "1\t1\tthickness\t1.2\tmm" },
  { "Dorn Ø Soll 30,00 Ist 29,82 Länge 50", EM_UNITS_METRIC, "1\t1\tworn\t29.82\tmm" },
  { "LAND WORN 60 LONG 3 WIDE 0.5", EM_UNITS_METRIC, "1\t1\tlength\t60\tmm" },
  { "Bohrung Ø16 jetzt 16,3 - 20 tief", EM_UNITS_METRIC, "1\t1\tworn\t16.3\tmm" },
  { "Schlitzflanke 33 lang, 11 hoch, 0,2 bis 0,4 auftragen", EM_UNITS_METRIC, "1\t1\tthickness\t0.3\tmm" },
  { "SHAFT ⌀20 MM, WORN 0.1 UNDER OVER 35 LG", EM_UNITS_METRIC, "1\t1\tbuild\t0.05\tmm" },
  { "land in the left half is down, 0.3 mm, on a strip 210 by 5", EM_UNITS_METRIC, "1\t1\tthickness\t0.3\tmm" },
  { "Dent (oval) 6 x 4 mm, 0.5 deep", EM_UNITS_METRIC, "1\t1\tform\tellipsoid\t" },
  { "RIDGE 60.0 X 2.0 X 0.8 HIGH ADDED ON FLAT, ENDS DRAFTED 15°", EM_UNITS_METRIC, "1\t1\tends\tdrafted\t" },
  /* Damage and the face it is on; a slot with no length beside a rib or a wall. */
  { "Kratzer Dichtfläche 26 x 0,4 x 0,2", EM_UNITS_METRIC, "1\t1\tkind\tgroove\t" },
  { "ding bottom of pocket, round, Ø1.5 x 0.4 mm dp", EM_UNITS_METRIC, "1\t1\tkind\trecess\t" },
  { "Steg abgebrochen, 15 lang, Dicke 0,9, Höhe fehlt 2,5 mm\nNut daneben ist 1,1 breit und 8 tief", EM_UNITS_METRIC, "2\t1\tslot_width\t1.1\tmm" },
  { "Steg: 1 mm dick, 6 mm lang, 1,8 mm aufbauen.\nNut daneben 3 breit, 8 tief, Flanke 0,1 ausgewaschen auf 20 Länge und 5 Höhe.", EM_UNITS_METRIC,
    "2\t2\tslot_width\t3\tmm" },
  /* Round what an edge runs, on which side, and how far. */
  { "4 CORE PINS, TIP ⌀4 MM, EDGE ROLLED R0.2 ALL ROUND", EM_UNITS_METRIC, "1\t1\tside\touter\t" },
  { "edge of the pin is rolled over, about 0.2 mm radius, pin is 11 mm dia", EM_UNITS_METRIC, "1\t1\tdiameter\t11\tmm" },
  { "Dichtkante außen Ø28 auf R0,4 ausgewaschen", EM_UNITS_METRIC, "1\t1\tside\touter\t" },
  { "bore should be 22.00 mm, it's 22.18 over 15 mm, a third of the way round (120 deg)", EM_UNITS_METRIC, "1\t1\tarc\t120\tdeg" },
  { "edge washed: radius 1.2 mm, 33 mm long, corner is 90 degrees", EM_UNITS_METRIC, "1\t1\tangle\t90\tdeg" },
  /* Seats told by their cone, or by what befell them. */
  { "VALVE PIN, CONICAL TIP SEAT 40° INCL, ⌀6 MM LARGE END, 2.8 DEEP, COAT 0.2", EM_UNITS_METRIC, "1\t1\tkind\tseat\t" },
  { "spherical seat R15.5, mouth dia 12 mm, hammered, needs about 0.6 all over", EM_UNITS_METRIC, "1\t1\tthickness\t0.6\tmm" },
  { "EDGE DINGED .20 [5.1] LG, .03 [0.8] X .03 [0.8]", EM_UNITS_INCH, "1\t1\tleg_b\t0.762\tmm" },
  { "fill two holes dia 10 mm x 22 deep, and a gouge beside them, 30 long, 3 wide, 1 deep", EM_UNITS_METRIC, "1\t2\tkind\tgroove\t" },
  /* What names and what measures: a side, a zone, a part's number; a pin by its diameter. */
  { "core, side 2\nBORE ⌀20 MM, ADD 0.1 PER SIDE", EM_UNITS_METRIC, "2\t1\tbuild\t0.1\tmm" },
  { "weld note (zone D1): step 22 x 5 mm low 0.2", EM_UNITS_METRIC, "1\t1\tkind\tface\t" },
  { "Gewindekern Nr. 5: Dichtkante Ø28 auf R0,4 ausgewaschen", EM_UNITS_METRIC, "!1\t1\tlength\t5\tmm" },
  { "Kernstift, 10er, soll 0,1 auf den Durchmesser mehr kriegen, 45 lang", EM_UNITS_METRIC, "1\t1\tbuild\t0.05\tmm" },
  { "der 8er Stift ist auf 7,9 verschlissen, 20 lang", EM_UNITS_METRIC, "1\t1\tdiameter\t8\tmm" },
  { "Stift Ø8, 0,06 Untermaß, 15 lang", EM_UNITS_METRIC, "1\t1\tbuild\t0.03\tmm" },
  /* What no slot, no angle and no repair is. */
  { "CRACKED CORNERS IN POCKET 8 MM LG 2 DP", EM_UNITS_METRIC, "1\t1\tlength\t8\tmm" },
  { "The slot is 5.5 mm wide, 140 mm long and 6 mm deep, to be filled flush", EM_UNITS_METRIC, "1\t1\twidth\t5.5\tmm" },
  { "LOCK ANGLE FACE BUILD .020, FACE IS 3.00 X 1.12", EM_UNITS_INCH, "1\t1\tthickness\t0.508\tmm" },
  { "STEP: SHUTOFF DRAFT 7°, FINISH BY US. NICK 3 X 1 X 1 MM", EM_UNITS_METRIC, "1\t1\tkind\tedge-nick\t" },
  { "nick top edge .09 lg x .015 x .015\nnick same edge, .14 lg, .02 deep", EM_UNITS_INCH, "2\t2\tquestion\tsecond-leg\t" },
  { "The guide face (1.2379, 58 HRC) is low. It measures 24,85 high and should be 25,00.", EM_UNITS_METRIC, "1\t1\tthickness\t0.15\tmm" },
  /* A repair told in lines of fragments; how it is reached in a line of its own. */
  { "- slot 6 wide x 22 deep mm, left flank has gone\n- needs 0.2 put back over 55 long, 14 high", EM_UNITS_METRIC, "2\t1\tlength\t55\tmm" },
  { "- Schlitzflanke ausgewaschen, 30 lang, 11 hoch, 0,2 auftragen\n- Zugang nur von der Einlaufseite, sehr eng", EM_UNITS_METRIC,
    "2\t1\taccess\trestricted\t" },
  { "LAND WORN BACK 0.35, BLADE 1.2 THK X 86 LONG MM", EM_UNITS_METRIC, "1\t1\tcoat\t0.35\tmm" },
  { "El tope mide 14,6 y debería medir 15,0 (cara de 20 x 20).", EM_UNITS_METRIC, "1\t1\tthickness\t0.4\tmm" },
  { "éclats de 1,5 mm de long, 0,2 sur 0,3", EM_UNITS_METRIC, "1\t1\tleg_b\t0.3\tmm" },
  { "usée de 0,15 sur 55 x 12 : face d'appui", EM_UNITS_METRIC, "1\t1\tthickness\t0.15\tmm" },
  /* No size of the repair: the wire's; no repair: what was removed. */
  { "muesca 3 x 1 x 1 mm.\nSoldar con alambre de 0.3 mm por favor", EM_UNITS_METRIC, "!2\t2\tquestion\twhich-kind\t" },
  { "PARTING FACE RUST PITS REMOVED, FACE NOW 0.2 MM LOW OVER 125 X 40 MM", EM_UNITS_METRIC, "1\t1\tkind\tface\t" },
  { "STAUBALKEN, UNTERSEITE AUSGEWASCHEN 420 X 16, TIEFE 0,5 AUFTRAGEN", EM_UNITS_METRIC, "1\t1\tkind\tface\t" },
  { "land hobbed in 34 x 9 mm, 0.15 deep", EM_UNITS_METRIC, "1\t1\tkind\tface\t" },
  /* A metre at the end of a line, or in capitals before its length. */
  { "edge worn R0.5 mm over 1.2 m", EM_UNITS_METRIC, "1\t1\tlength\t1200\tmm" },
  { "CRACK 1.2 M LONG, 3 MM DEEP", EM_UNITS_METRIC, "1\t1\tlength\t1200\tmm" },
  { "nervure ép. 1 mm, longueur 22, hauteur 7,6 au lieu de 8", EM_UNITS_METRIC, "1\t1\tcoat\t0.4\tmm" },
  /* A wall's groove, a seat that is pitted, a face that was mushroomed or washed. */
  { "O-ring groove wall damaged, 30 mm long 2 deep, add 0.2", EM_UNITS_METRIC, "1\t1\theight\t2\tmm" },
  { "ring groove side washed 0.2 x 40 x 3 mm", EM_UNITS_METRIC, "1\t1\tkind\tsidewall\t" },
  { "valve seat 90° included, mouth 20 mm, small end 14, pitted, 0.4 all round", EM_UNITS_METRIC, "1\t1\tkind\tseat\t" },
  { "Kegelsitz, groß 30, klein 22, 7 tief, 0,3 auftragen", EM_UNITS_METRIC, "1\t1\tdiameter_small\t22\tmm" },
  { "fissure 20 de long, ouverture 0,2, profondeur 2", EM_UNITS_METRIC, "1\t1\tgap\t0.2\tmm" },
  { "core end mushroomed, face .500 X .500, WELD .030", EM_UNITS_INCH, "1\t1\tkind\tface\t" },
  { "shutoff washed 0.2 mm deep, 30 x 4", EM_UNITS_METRIC, "1\t1\tkind\tface\t" },
  { "seal face scored 0.05 mm deep, 40 x 3, build up 0.2", EM_UNITS_METRIC, "1\t1\tthickness\t0.2\tmm" },
  /* Two rows are two dents; what is wanted needs no R; a bare number behind thousandths. */
  { "two dents: 3 x 2 x 0.4 mm deep; 5 x 2 x 0.3 mm deep", EM_UNITS_METRIC, "1\t2\tlength\t5\tmm" },
  { "labio redondeado a 0,4, debe quedar 0,1, largo 300 mm", EM_UNITS_METRIC, "1\t1\tradius_to\t0.1\tmm" },
  { "gouge 20 thou wide and 15 deep, 3/4 long", EM_UNITS_INCH, "1\t1\tdepth\t0.381\tmm" },
  { "colonne Ø30 usée de 0,1 au diamètre sur 80", EM_UNITS_METRIC, "1\t1\tbuild\t0.05\tmm" },
  /* Pairs of hardness, forms, rows of grooves, products, slots told of a wall's flank. */
  { "P20, prehardened 30/32. nick 3 x 1 x 1", EM_UNITS_METRIC, "1\t1\tlength\t3\tmm" },
  { "steel S-7 @ 54/56. nick 3 x 1 x 1 mm", EM_UNITS_METRIC, "1\t0\thardness\t55\tHRC" },
  { "BUSHING BORE\nnom: 1.125 in\ndeep: 1.5 in", EM_UNITS_INCH, "3\t1\tlength\t38.1\tmm" },
  { "scratch in the bore, 20 mm long x 0.1 x 0.05", EM_UNITS_METRIC, "1\t1\tgap\t0.1\tmm" },
  { "core for the 38 mm cap: crest is 0.4 mm thick and I need 0.25 mm put on top, 30 mm long", EM_UNITS_METRIC, "1\t1\tcoat\t0.25\tmm" },
  { "FLANK OF DOVETAIL SLOT GALLED, 80 MM LG X 9 HI, ADD 0.2\nDOVETAIL ANGLE 60°, SLOT 19 WIDE", EM_UNITS_METRIC, "2\t1\tslot_width\t19\tmm" },
  /* Radii, pillars that were scored, parts that have a flaw, legs into faces. */
  { "STEP RADIUS R0.5 WASHED TO R1.5 MM, 65 LG", EM_UNITS_METRIC, "1\t1\tradius\t1.5\tmm" },
  { "die Führungssäule (Ø 32 g6) hat Fressspuren, Tiefe ca. 0,15 mm auf 90 mm Länge, rundum auftragen 0,3 je Seite", EM_UNITS_METRIC,
    "1\t1\tbuild\t0.3\tmm" },
  { "die lip 1200 mm wide has a nick 6 long x 0.7 x 0.7", EM_UNITS_METRIC, "1\t1\tleg_a\t0.7\tmm" },
  { "core pin Ø8 has a dent 2 x 1 x 0.3 mm deep", EM_UNITS_METRIC, "1\t1\tform\tbox\t" },
  { "lip: ding, 3 mm long, 1 deep into the land, 0.6 into the lip face", EM_UNITS_METRIC, "1\t1\tkind\tedge-nick\t" },
  { "El asiento de la válvula (cono 90°, boca 16, profundidad 3) está picado, aportar 0,5", EM_UNITS_METRIC, "1\t1\tkind\tseat\t" },
  /* Slots that became too wide; what is added to each of several; flanks without degrees. */
  { "Lug slot: width was opened up to 8.3 mm and must be 8.0, so one wall gets 0.3, 64 long and 12 deep", EM_UNITS_METRIC, "1\t1\tslot_width\t8\tmm" },
  { "Nut: Soll 8,0 Ist 8,3, 40 lang, 6 tief", EM_UNITS_METRIC, "1\t1\tthickness\t0.3\tmm" },
  { "ADD .010 WELD TO: FACE A (1.0 X .5), WALL C (1.0 LG X .25 HI)", EM_UNITS_INCH, "1\t2\tthickness\t0.254\tmm" },
  { "LAND LOW .010, 1.0 X .5, WALL 1.0 LG X .25 HI", EM_UNITS_INCH, "!1\t2\tthickness\t0.254\tmm" },
  { "Steg 0,9 stark, 30 lang, 0,6 aufbauen, Flanken 3 tief", EM_UNITS_METRIC, "1\t1\tdepth\t3\tmm" },
  { "Rippe 1 dick, 22 lang, oben 0,5 auftragen und seitlich 3 herunter", EM_UNITS_METRIC, "1\t1\tcoat\t0.5\tmm" },
  { "shoulder face 0.3 mm low, OD 40", EM_UNITS_METRIC, "1\t1\tdiameter\t40\tmm" },
  { "Messerkante R0,3 zurück auf 200 mm", EM_UNITS_METRIC, "!1\t1\tradius\t200\tmm" },
  /* Forms that tell what is to be added, or a size by no other name. */
  { "Dichtfläche 60 x 12\nAuftrag: 0,3", EM_UNITS_METRIC, "2\t1\tthickness\t0.3\tmm" },
  { "face d'appui\n dimensions : 40 x 15\n à recharger : 0,4", EM_UNITS_METRIC, "3\t1\tthickness\t0.4\tmm" },
  { "BORE\nSIZE .500\nWORN TO .505\nDEPTH 1.0", EM_UNITS_INCH, "2\t1\tdiameter\t12.7\tmm" },
  { "damage on core, about 6 mm long", EM_UNITS_METRIC, "1\t1\tquestion\twhich-kind\t" },
  /* What is left of a height; a size in brackets behind its name; a bearing that was washed; a ding in a flat. */
  { "Eine Rippe (1,2 x 40) steht nur noch 3,5 statt 4,2 hoch", EM_UNITS_METRIC, "1\t1\tcoat\t0.7\tmm" },
  { "Kante ist rund, R0,6, auf der ganzen Länge (85)", EM_UNITS_METRIC, "1\t1\tlength\t85\tmm" },
  { "nicks (4) on edge 3 x 1 x 1 mm", EM_UNITS_METRIC, "1\t1\tcount\t4\t" },
  { "parting surface: ding 4 mm long by 2 wide, .5 deep, in the middle of the flat", EM_UNITS_METRIC, "1\t1\tkind\trecess\t" },
  { "An der Hülse ist der Innen-Ø von 14 auf 14,15 gewachsen, 30 tief", EM_UNITS_METRIC, "1\t1\tworn\t14.15\tmm" },
  /* A rib rebuilt from its root; what is round and worn behind an edge. */
  { "RIB MISSING: 1.0 THK, 20 LG, 5 HIGH MM - REBUILD FROM ROOT", EM_UNITS_METRIC, "1\t1\tcoat\t5\tmm" },
  { "Rippe komplett abgebrochen, neu aufbauen: 1 dick, 20 lang, 5 hoch", EM_UNITS_METRIC, "1\t1\tthickness\t1\tmm" },
  { "punzón: canto mellado 5x0,8x0,6; Ø12 gastado a 11,92 (largo 30)", EM_UNITS_METRIC, "1\t2\tkind\tpin\t" },
  /* Walls told by their surface, by the slot they lie in or by its flanks. */
  { "side wall worn out, 0.2 mm to weld, surface 30x14", EM_UNITS_METRIC, "1\t1\theight\t14\tmm" },
  { "Slot 4 mm wide: both flanks +0.1, 30 long, 8 deep", EM_UNITS_METRIC, "1\t1\tslot_width\t4\tmm" },
  { "Nutflanken beidseitig 0,1 auftragen, Nut 4 breit 8 tief, 30 lang", EM_UNITS_METRIC, "1\t1\tslot_depth\t8\tmm" },
  { "slot 4 mm wide, 8 deep, 30 long, to be filled", EM_UNITS_METRIC, "1\t1\tkind\trecess\t" },
  /* Cones that are pitted, faces that stand upright, where along the lip a nick is. */
  { "Cone seat Ø30 to Ø22 over 6 mm, pitted, put 0.4 on", EM_UNITS_METRIC, "1\t1\tthickness\t0.4\tmm" },
  { "face 22 mm high, 14 wide, add 0.1", EM_UNITS_METRIC, "1\t1\tlength\t22\tmm" },
  { "SECOND NICK AT 820: 1.5 LONG, .3 X .3 MM", EM_UNITS_METRIC, "!1\t1\tleg_a\t820\tmm" },
  { "hole needs 0.06 per side to come back to 10.00, 25 mm deep", EM_UNITS_METRIC, "1\t1\tbuild\t0.06\tmm" },
  { "the button's top must come up 0.3, it's a 14 mm circle", EM_UNITS_METRIC, "1\t1\tform\tdisc\t" },
  { "paroi rayée, 30 x 0,5 x 0,2", EM_UNITS_METRIC, "1\t1\tkind\tgroove\t" },
  { "rework: seat for O-ring, face ID 30 OD 36 mm pitted, 0.2 to add", EM_UNITS_METRIC, "1\t1\tkind\tface\t" },
  { "Zunge 5,00 dick ist 4,85, 60 lang, 10 hoch, beidseitig auftragen", EM_UNITS_METRIC, "1\t1\tthickness\t0.15\tmm" },
  /* What is built up over a row is a face, pitted or not. */
  { "FACE PITTED, BUILD .040 OVER 1.75 X 1.00", EM_UNITS_INCH, "1\t1\tkind\tface\t" },
  { "LAND SCORED, BUILD UP .020 OVER 2.5 X .75", EM_UNITS_INCH, "1\t1\tthickness\t0.508\tmm" },
  { "FACE PITTED, FILL PITS ⌀.04 X .02 DEEP", EM_UNITS_INCH, "1\t1\tkind\trecess\t" },
  /* A dent has no two faces: what is told of each is an edge's leg. */
  { "Parting line: one dent, 3/16\" long, .020\" on each face", EM_UNITS_INCH, "1\t1\tkind\tedge-nick\t" },
  { "canto picado 1 mm x 0,4 x 0,4", EM_UNITS_METRIC, "1\t1\tkind\tedge-nick\t" },
  /* A number word alone in its part counts what was named before it. */
  { "pits on core face, maybe a dozen, .02 dia .01 deep", EM_UNITS_INCH, "1\t1\tcount\t12\t" },
  { "bores (all four) 12 mm dia now 12.1, 20 deep", EM_UNITS_METRIC, "1\t1\tcount\t4\t" },
  { "Agujero del botador, nominal 5 mm, actual 5,15, profundidad 18 mm, son dos", EM_UNITS_METRIC, "1\t1\tcount\t2\t" },
  /* One part with two dents on it. */
  { "1 off ring - two dents 3 mm dia x 0.5 deep", EM_UNITS_METRIC, "1\t1\tcount\t2\t" },
  { "Broken edge of tooth 2 x 1 x 1 mm, 5 teeth", EM_UNITS_METRIC, "1\t1\tcount\t5\t" },
  { "core pin 4 mm now 3.95, 20 mm long. how much for 4", EM_UNITS_METRIC, "1\t1\tcount\t4\t" },
  { "cracks, didn't count em, 12 mm long 1 mm deep", EM_UNITS_METRIC, "1\t1\tquestion\tcount-unknown\t" },
  /* How many cavities a mold has is no number of it. */
  { "BLOW MOLD 2 CAV, BE-CU", EM_UNITS_INCH, "!1\t0\ttool_number\t2\t" },
  { "BLOW MOLD 2 CAV, PINCH INSERTS", EM_UNITS_INCH, "!1\t1\tlength\t50.8\tmm" },
  { "MOLD 2205", EM_UNITS_INCH, "1\t0\ttool_number\t2205\t" },
  /* The top of a rib is no face of its own. */
  { "Rippe 2,0 breit 26 lang, Oberseite 0,5", EM_UNITS_METRIC, "1\t1\tcoat\t0.5\tmm" },
  { "rib 2 wide 26 long, top face 18 x 5, add 0.3", EM_UNITS_METRIC, "1\t2\tkind\tface\t" },
  /* What it is worn to, and a length in brackets. */
  { "Kernstift Ø 3,5 mm, auf 3,42 abgenutzt (Länge 6 mm)", EM_UNITS_METRIC, "1\t1\tworn\t3.42\tmm" },
  { "Kernstift Ø 3,5 mm, auf 3,42 abgenutzt (Länge 6 mm)", EM_UNITS_METRIC, "1\t1\tlength\t6\tmm" },
  { "Quetschkante Hals abgenutzt, 72 lang, 0,9 breit, 0,3 auftragen", EM_UNITS_METRIC, "1\t1\tkind\trib\t" },
  { "Abquetschkante 95 x 1,2 mm, 0,4 draufgeben", EM_UNITS_METRIC, "1\t1\tcoat\t0.4\tmm" },
  { "Planfläche Ø36 am Flansch eingelaufen, 0,2 zu tief", EM_UNITS_METRIC, "1\t1\tdiameter\t36\tmm" },
  { "Bolzen Ø14 mm pro Seite 0,12 auftragen, 18 lang", EM_UNITS_METRIC, "1\t1\tbuild\t0.12\tmm" },
  { "Bolzen Ø14 mm pro Seite 0,12 auftragen, 18 lang", EM_UNITS_METRIC, "1\t1\tdiameter\t14\tmm" },
  { "Der Ventilsitz ist ausgeschlagen. Bitte 0,3 mm auftragen.", EM_UNITS_METRIC, "1\t1\tkind\tseat\t" },
  { "Kante der Bohrung ausgebrochen, 4 lang, 0,6 x 0,4", EM_UNITS_METRIC, "1\t1\tkind\tedge-nick\t" },
  { "Angussbuchse Ø6 mm ausgewaschen, 0,2 je Seite, 14 tief", EM_UNITS_METRIC, "1\t1\tbuild\t0.2\tmm" },
  { "Kernstift Ø5 mm ist auf 4,9 herunter, Länge 18", EM_UNITS_METRIC, "1\t1\tworn\t4.9\tmm" },
  { "WAND RECHTS\nL 55 H 9\nFEHLT 0,15", EM_UNITS_METRIC, "3\t1\tthickness\t0.15\tmm" },
  { "Auflagefläche 950 mm² eingeschlagen, 0,2 auftragen", EM_UNITS_METRIC, "1\t1\tarea\t950\tmm2" },
  { "Bohrung 12 H7 daneben: 0,08 je Seite auftragen, 30 tief", EM_UNITS_METRIC, "1\t1\tdiameter\t12\tmm" },
  { "Hole 12 mm dia next to it: add 0.1 per side, 30 deep", EM_UNITS_METRIC, "1\t1\tbuild\t0.1\tmm" },
  { "Ecke weg, 4 lang, 0,8 und 0,6.\nSind das mehr als 3 h Arbeit?", EM_UNITS_METRIC, "1\t1\tleg_b\t0.6\tmm" },
  { "Stempel hat an der Ecke ein Stück verloren, 2,5 lang", EM_UNITS_METRIC, "1\t1\tkind\tedge-nick\t" },
  { "Riss 12 lang, 1 tief. Nicht näher als 3 mm an die Narbung", EM_UNITS_METRIC, "1\t1\tclearance\t3\tmm" },
  { "Riss 12 lang, 1 tief\nDie Kühlbohrung darf keinesfalls verschlossen werden", EM_UNITS_METRIC, "2\t1\tnear\thole\t" },
  { "Kegelsitz 90° gesamt, Mündung Ø8 mm, 4 tief, 0,3 auftragen", EM_UNITS_METRIC, "!1\t1\tdiameter_small\t8.881784197e-16\tmm" },
  { "Kante R0,3 verschlissen, 25 lang, davon gibt es 4", EM_UNITS_METRIC, "1\t1\tcount\t4\t" },
  { "zu Backe rechts: Ausbruch 5 lang, 1,2 x 0,7 mm", EM_UNITS_METRIC, "1\t1\tkind\tedge-nick\t" },
  { "Riss 12 lang, 1 tief\nGewinde M8 und Passbohrungen nicht schweißen", EM_UNITS_METRIC, "2\t0\trefuse\tthread\t" },
  { "Riss 12 lang, 1 tief\nSchrift, Datumsuhr und Narbung nicht schweißen", EM_UNITS_METRIC, "2\t0\trefuse\tDatumsuhr\t" },
  { "crack 12 mm long, 1 deep\nthreads and dowel holes not to be welded", EM_UNITS_METRIC, "2\t0\trefuse\tthread\t" },
  { "crack 12 mm long and worn edges, dowel holes not to be welded", EM_UNITS_METRIC, "!1\t0\trefuse\tworn edges\t" },
  { "Steg zwischen den Kanälen aufbauen, 40 lang, 5 breit, 2 hoch, Enden rund", EM_UNITS_METRIC, "1\t1\tkind\tdam\t" },
  { "Wand 30 x 9 mm, 0,1 auftragen\nSpalt davor nur 3 mm", EM_UNITS_METRIC, "2\t1\tclearance\t3\tmm" },
  { "Leider ist der Düsensitz eingeschlagen. Bitte 0,4 mm auftragen.", EM_UNITS_METRIC, "1\t1\tkind\tseat\t" },
  /* 9/16 in = 14.2875 mm; 1-1/8 in = 28.575 mm. */
  { "that hole is 9/16 across and 3/4 deep, just weld it shut", EM_UNITS_INCH, "1\t1\tdiameter\t14.2875\tmm" },
  { "that hole is 9/16 across and 3/4 deep, just weld it shut", EM_UNITS_INCH, "!1\t1\tfinish\tcustomer\t" },
  { "crack inch and an eighth long, .1 deep", EM_UNITS_INCH, "1\t1\tlength\t28.575\tmm" },
  { "BUILD UP ANGLED WALL 0.35 MM, 62 LG X 18 HIGH", EM_UNITS_METRIC, "1\t1\tthickness\t0.35\tmm" },
  { "parting line low, .008 welded on, 2-1/2 x 5/16", EM_UNITS_INCH, "1\t1\tkind\tface\t" },
  { "Weld and re-machine (2) dowel holes. Finished size 0.5000\", present size 0.5035\", 1.00\" deep.", EM_UNITS_INCH, "1\t1\tkind\tbore\t" },
  /* A number of letters and digits after "No." goes on past the full stop. */
  { "slide core, drawing No. SK-2071", EM_UNITS_METRIC, "1\t0\tdrawing\tSK-2071\t" },
  { "2-cavity cap mould, tool no. CM-118.", EM_UNITS_METRIC, "1\t0\ttool_number\tCM-118\t" },
  { "an der Form 771 ist eine Kante 3 x 1 x 1 mm ausgebrochen", EM_UNITS_METRIC, "1\t0\ttool_number\t771\t" },
  { "an der Form 2 Kanten verrundet R0,3, 20 mm lang", EM_UNITS_METRIC, "!1\t0\ttool_number\t2\t" },
  { "seat SR 16 mm, 25 mm dia mouth, 0.4 mm all over", EM_UNITS_METRIC, "1\t1\tthickness\t0.4\tmm" },
  { "ENTRY CORNER ERODED R.040 AROUND ⌀.875 HOLE", EM_UNITS_INCH, "1\t1\tside\tbore\t" },
  { "Bottom plate has 3 holes of corrosion, 2 mm diameter and 1 mm deep", EM_UNITS_METRIC, "1\t1\tkind\trecess\t" },
  { "edge worn radius 0.4 mm, 20 mm long. Make it live edge.", EM_UNITS_METRIC, "!1\t2\tkind\tworn-corner\t" },
  { "- 1 punch diam. 18 mm, length 25 mm, missing 0,1 mm per side", EM_UNITS_METRIC, "1\t1\tdiameter\t18\tmm" },
  { "12 ejector sleeves, ID worn, now 8.05, nominal 8 mm, 20 long", EM_UNITS_METRIC, "1\t1\tkind\tbore\t" },
  { "wall 40 mm long 12 high 0.2 thick, both sides of core", EM_UNITS_METRIC, "1\t1\tcount\t2\t" },
  /* The number of an item in a long list, though a steel has it too. */
  { "1045) edge 2 x 1 x 1 mm chipped", EM_UNITS_METRIC, "!1\t0\tbase\t1045\t" },
  { "1995) nick 2 x 1 x 1 mm", EM_UNITS_METRIC, "1\t1\tlength\t2\tmm" },
  { "OD worn, .010 per side on 2.125 dia x 1.5 long, 420.", EM_UNITS_INCH, "1\t0\tbase\t420\t" },
  { "pocket face 25 x 10, 420.", EM_UNITS_METRIC, "!1\t0\tbase\t420\t" },
  /* What is missing is what it should be less what it is: 0.500 − 0.488 = 0.012 in = 0.3048 mm; 8.0 − 7.6 = 0.4. */
  { "wear plate face, should be 0.500\" thick, measures 0.488\", 3\" x 1.5\"", EM_UNITS_INCH, "1\t1\tthickness\t0.3048\tmm" },
  { "wear plate face, should be 0.500\" thick, measures 0.488\", 3\" x 1.5\"", EM_UNITS_INCH, "1\t1\twidth\t38.1\tmm" },
  { "Rib 1,5 mm thick 20 mm long, height should be 8,0 but is 7,6", EM_UNITS_METRIC, "1\t1\tcoat\t0.4\tmm" },
  { "rib broke off on core 3. .045 thick 1.1 long", EM_UNITS_INCH, "!1\t1\tdepth\t76.2\tmm" },
  { "shut-off edge rounded, R0.25, dia 64 outside", EM_UNITS_METRIC, "1\t1\tside\touter\t" },
  { "Seat SR 16, 25 mm dia mouth, 0.4 mm.\nHead face 50 dia, ten thou low.", EM_UNITS_INCH, "2\t2\tdiameter\t50\tmm" },
  { "Head face 2.5 dia, ten thou low.", EM_UNITS_INCH, "1\t1\tdiameter\t63.5\tmm" },
  { "wall should be 40 mm long, is 39.5, 12 high", EM_UNITS_METRIC, "!1\t1\tthickness\t0.5\tmm" },
  { "worn edge R0.3 mm 20 long outside of pocket", EM_UNITS_METRIC, "!1\t1\tside\touter\t" },
  { "2 place decimals +-.01, nick .1 x .05 x .05", EM_UNITS_INCH, "!1\t1\tcount\t2\t" },
  /* ISO 129-1: a decimal comma. */
  { "CRACK 12,5 LG", EM_UNITS_METRIC, "1\t1\tlength\t12.5\tmm" },
  /* Both units: the first stands, the other confirms it. */
  { "CRACK 12.70 [.500] LG", EM_UNITS_METRIC, "1\t1\tlength\t12.7\tmm" },
  { "CRACK .500 [12.7] LG", EM_UNITS_METRIC, "1\t1\tlength\t12.7\tmm" },
  { "CRACK 12.7 MM [.600 IN] LG", EM_UNITS_METRIC, "1\t1\tquestion\tdual-mismatch\t" },
  /* Per side or on diameter: .020 on diameter is .010 per side = 0.254 mm (common practice, no source). */
  { "BORE ⌀.5 X .75 DP BUILD .020 ON DIA", EM_UNITS_INCH, "1\t1\tbuild\t0.254\tmm" },
  { "BORE ⌀.5 X .75 DP BUILD .010 PER SIDE", EM_UNITS_INCH, "1\t1\tbuild\t0.254\tmm" },
  { "BORE ⌀.5 X .75 DP BUILD .010 P/S", EM_UNITS_INCH, "1\t1\tbuild\t0.254\tmm" },
  { "BORE ⌀.5 X .75 DP BUILD UP .010", EM_UNITS_INCH, "1\t1\tquestion\tside-or-diameter\t" },
  { "BORE ⌀.5 X .75 DP BUILD UP .010", EM_UNITS_INCH, "!1\t1\tbuild\t0.254\tmm" },
  /* Notes that govern. */
  { "ALL DIMS MM\nCRACK 12 LG", EM_UNITS_INCH, "2\t1\tlength\t12\tmm" },
  { "CRACK 12 LG\nDIMENSIONS IN INCHES", EM_UNITS_METRIC, "1\t1\tlength\t304.8\tmm" },
  { "ALL DIMS INCH\nNICK ON P/L .25 LG X .03 X .03\nUNITS: MM\nP/L EDGE WORN TO R0.5, 40 LG", EM_UNITS_INCH, "2\t1\tlength\t6.35\tmm" },
  { "ALL DIMS INCH\nNICK ON P/L .25 LG X .03 X .03\nUNITS: MM\nP/L EDGE WORN TO R0.5, 40 LG", EM_UNITS_INCH, "4\t2\tlength\t40\tmm" },
  { "ALL DIMS INCH\nNICK ON P/L .25 LG X .03 X .03\nUNITS: MM\nP/L EDGE WORN TO R0.5, 40 LG", EM_UNITS_INCH, "!3\t0\tunused\tUNITS: MM\t" },
  { "ALL DIMS MM\nCRACK 12 LG\nALL DIMS MM", EM_UNITS_INCH, "2\t1\tlength\t12\tmm" },
  { "ADD .015 STOCK ALL OVER", EM_UNITS_INCH, "1\t0\tstock\t0.381\tmm" },
  { "MACHINING BY CUSTOMER", EM_UNITS_INCH, "1\t0\tfinish\tcustomer\t" },
  { "HARD CHROME PLATED", EM_UNITS_INCH, "1\t0\tcoating\tchrome\t" },
  /* Negations make no feature. */
  { "DO NOT WELD THREADS", EM_UNITS_INCH, "1\t0\trefuse\tthread\t" },
  { "NO WELD ON TEXTURE", EM_UNITS_INCH, "1\t0\trefuse\ttexture\t" },
  { "NO REPAIR NEEDED ON BORE ⌀.5 X .75 DP", EM_UNITS_INCH, "!1\t1\tkind\tbore\t" },
  /* What lies near is no repair of its own. */
  { "4 HOLES ADJACENT\nNICK .1 X .02 X .02", EM_UNITS_INCH, "1\t1\tnear\thole\t" },
  { "4 HOLES ADJACENT\nNICK .1 X .02 X .02", EM_UNITS_INCH, "!1\t1\tkind\tbore\t" },
  { "TEXTURED FACE ABOVE\nNICK .1 X .02 X .02", EM_UNITS_INCH, "1\t1\tnear\ttexture\t" },
  /* Nothing says which unit: asked, and the quote's own taken meanwhile. */
  { "NICK 9 X 2 X 2", EM_UNITS_METRIC, "1\t1\tquestion\tinch-or-mm\t" },
  { "NICK 9 X 2 X 2", EM_UNITS_INCH, "1\t1\tlength\t228.6\tmm" },
  { "NICK 9 X 2 X 2 MM", EM_UNITS_INCH, "!1\t1\tquestion\tinch-or-mm\t" },
  /* "3 X 45°" with blanks may be a chamfer of 3 or three places. */
  { "EDGE CHIPPED 3 X 45°", EM_UNITS_METRIC, "1\t1\tquestion\tcount-or-chamfer\t" },
  { "WELD 2.5 X .25 X .125", EM_UNITS_INCH, "1\t1\tquestion\twhich-kind\t" },
  { "ADD .015 TO FACE", EM_UNITS_INCH, "1\t1\tquestion\twhich-face\t" },
  { "CIRCULAR EDGE WORN R.010, DIA .750", EM_UNITS_INCH, "1\t1\tquestion\touter-or-bore\t" },
  { "NICK 5 MM LONG, 1 MM DEEP", EM_UNITS_INCH, "1\t1\tquestion\tsecond-leg\t" },
  { "NICK 5 MM", EM_UNITS_INCH, "1\t1\tquestion\twhich-field\t" },
  { "CRACK 1,250 MM LG", EM_UNITS_METRIC, "1\t1\tquestion\tdecimal-comma\t" },
  /* A fit (ISO 286) is no steel, a number of three digits no thousands. */
  { "BORE 16 H7 X 20 DEEP MM, BUILD 0.1 PER SIDE", EM_UNITS_METRIC, "1\t1\tdiameter\t16\tmm" },
  { "CORNR NICKD 2 X 1 X 1 MM", EM_UNITS_METRIC, "1\t1\tkind\tedge-nick\t" },
  /* Ranges: low and high of the dimension, the value their middle. */
  { "CRACK 14 LONG, 1-3 DEEP (MM)", EM_UNITS_INCH, "1\t1\tdepth\t2\tmm" },
  { "CRACK 14 MM LONG, 1 TO 3 MM DEEP", EM_UNITS_INCH, "1\t1\tdepth\t2\tmm" },
  { "CRACK 14 MM LONG, BETWEEN 1 AND 3 MM DEEP", EM_UNITS_INCH, "1\t1\tdepth\t2\tmm" },
  { "CRACK 1/8 TO 1/4 DEEP", EM_UNITS_INCH, "1\t1\tdepth\t4.7625\tmm" },                /* 3/16 in */
  { "FACE 2 X 1, LOW .010 TO .020", EM_UNITS_INCH, "1\t1\tthickness\t0.381\tmm" },       /* .015 in */
  { "BORE ⌀1.000 WORN TO 1.010", EM_UNITS_INCH, "1\t1\tworn\t25.654\tmm" },              /* no range */
  { "MATL H13, 58..60 HRC", EM_UNITS_INCH, "1\t0\thardness\t59\tHRC" },
  /* Hardness of other scales, ASTM E140 table 1: 353 HBW is 38 HRC, 513 HV is 50 HRC. Below the table nothing is invented. */
  { "MATL P20, 353 HB", EM_UNITS_INCH, "1\t0\thardness\t38\tHRC" },
  { "HARDNESS HB 353", EM_UNITS_INCH, "1\t0\thardness\t38\tHRC" },
  { "353 HBW 10/3000", EM_UNITS_INCH, "1\t0\thardness\t38\tHRC" },
  { "513 HV10", EM_UNITS_INCH, "1\t0\thardness\t50\tHRC" },
  { "HV: 513", EM_UNITS_INCH, "1\t0\thardness\t50\tHRC" },
  { "MATL 4140 180 HB", EM_UNITS_INCH, "1\t0\tunused\t180 HB\t" },
  /* A square has two sides. */
  { "FACE 1.00 SQ, ADD .020 THK", EM_UNITS_INCH, "1\t1\tlength\t25.4\tmm" },
  { "FACE 1.00 SQ, ADD .020 THK", EM_UNITS_INCH, "1\t1\twidth\t25.4\tmm" },
  { "FILL □12 MM X 3 DP POCKET", EM_UNITS_METRIC, "1\t1\twidth\t12\tmm" },
  /* A cone's angle gives the depth: (20 − 10) / 2 / tan 45° = 5. One side's angle is half the cone's; alone it may be either. */
  { "CONE SEAT ⌀20 TO ⌀10, 90° INCL, ADD 0.5 THK, MM", EM_UNITS_METRIC, "1\t1\tdepth\t5\tmm" },
  { "CONE SEAT ⌀20 TO ⌀10, 45° PER SIDE, ADD 0.5 THK, MM", EM_UNITS_METRIC, "1\t1\tdepth\t5\tmm" },
  { "CONE SEAT ⌀20 TO ⌀10, 45°, ADD 0.5 THK, MM", EM_UNITS_METRIC, "1\t1\tquestion\tcone-angle\t" },
  { "CONE SEAT ⌀20 TO ⌀10, 45°, ADD 0.5 THK, MM", EM_UNITS_METRIC, "!1\t1\tdepth\t5\tmm" },
  /* Several named together. */
  { "NICKS: 3 @ .1 X .02 X .02, 2 @ .2 X .03 X .03", EM_UNITS_INCH, "1\t1\tcount\t3\t" },
  { "NICKS: 3 @ .1 X .02 X .02, 2 @ .2 X .03 X .03", EM_UNITS_INCH, "1\t2\tcount\t2\t" },
  { "NICKS: 3 @ .1 X .02 X .02, 2 @ .2 X .03 X .03", EM_UNITS_INCH, "1\t2\tlength\t5.08\tmm" },
  { "2 nicks: one 3 x 1 x 1 mm, the other 2 x 1 x 1 mm", EM_UNITS_INCH, "1\t2\tlength\t2\tmm" },
  { "WORN EDGES: R.02 X 1.5 LG (3 PLCS), R.03 X 2.0 LG (1 PLC)", EM_UNITS_INCH, "1\t2\tradius\t0.762\tmm" },
  /* Sizes before their noun. */
  { "Length: 40; radius: 0.5 mm. Worn corner", EM_UNITS_METRIC, "1\t1\tlength\t40\tmm" },
  { "Length: 40; radius: 0.5 mm. Worn corner", EM_UNITS_METRIC, "1\t1\tradius\t0.5\tmm" },
  /* "Same" takes over what is not told anew. */
  { "1) NICK .1 X .02 X .03\n2) SAME, .4 LG", EM_UNITS_INCH, "1\t2\tleg_b\t0.762\tmm" },
  /* What is worn and what is to be added: the second is the build-up. */
  { "FACE 2 X 1 LOW .007, ADD .015", EM_UNITS_INCH, "1\t1\tthickness\t0.381\tmm" },
  /* A unit that is only other repairs' is asked where it makes an unusual size: legs of 2 in. */
  { "CRACK .5 LG X .1 DP\nNICK 14 X 2 X 2", EM_UNITS_METRIC, "2\t2\tquestion\tinch-or-mm\t" },
  { "CRACK .5 LG X .1 DP\nNICK 1 X .2 X .2", EM_UNITS_METRIC, "!2\t2\tquestion\tinch-or-mm\t" },
  /* A temperature is no size, a part's number no count. */
  { "CRACK .4 LG X .03 DP, PREHEAT 400F", EM_UNITS_INCH, "!1\t1\tlength\t10160\tmm" },
  { "Slide 3: nick 2 x 1 x 1 mm", EM_UNITS_METRIC, "!1\t1\tcount\t3\t" },
  /* Who machines, in whatever words. */
  { "FIN GRD BY CUST", EM_UNITS_INCH, "1\t0\tfinish\tcustomer\t" },
  { "We will then mill it ourselves", EM_UNITS_INCH, "1\t0\tfinish\tcustomer\t" },
  /* A metal that is asked for is not told. */
  { "BeCu insert? No, H13", EM_UNITS_INCH, "1\t0\tbase\th13\t" },
  { "MOLD BASE 4140", EM_UNITS_INCH, "!1\t0\ttool_number\t4140\t" },
  /* A dam's ends are no nick's. */
  { "DAM 60 X 8 X 3 MM, SIDES TAPERED 5 DEG, ENDS ROUNDED", EM_UNITS_METRIC, "1\t1\tends\trounded\t" },
  /* Words of letters and calls are no text that could not be used; days, names and states are. */
  { "Could you please send us your best price as soon as possible", EM_UNITS_METRIC, "!1\t0\tunused\tCould you please send us your best price as soon as possible\t" },
  { "NICK 2 X 1 X 1 MM, PIN BENT", EM_UNITS_METRIC, "1\t0\tunused\tBENT\t" },
  /* The metal in a repair's own words is its metal, whatever part another line names. */
  { "1) Core insert (H13, 48-50 HRC): edge rounded to R0.4, 62 long\n2) Bore dia 20 worn to 20.15, 30 deep, P20 insert", EM_UNITS_METRIC, "1\t1\tbase\th13\t" },
  { "1) Core insert (H13, 48-50 HRC): edge rounded to R0.4, 62 long\n2) Bore dia 20 worn to 20.15, 30 deep, P20 insert", EM_UNITS_METRIC, "2\t2\tbase\tp20\t" },
  { "1) Core insert (H13, 48-50 HRC): edge rounded to R0.4, 62 long\n2) Bore dia 20 worn to 20.15, 30 deep, P20 insert", EM_UNITS_METRIC, "!2\t1\tbase\tp20\t" },
  /* A count behind all of a slot's sizes is of the wall in it. */
  { "Flank of the slot wants 0.25 on, 30 long 14 high; slot 8 wide, 22 deep. 4 off.", EM_UNITS_METRIC, "1\t1\tcount\t4\t" },
  { "Flank of the slot wants 0.25 on, 30 long 14 high; slot 8 wide, 22 deep. 4 off.", EM_UNITS_METRIC, "1\t1\tslot_depth\t22\tmm" },
  /* A whole number without its unit is told by what it measures. */
  { "- flank of the pocket wants 0.25 on, 30 long\n- pocket is 8 wide and 22 deep", EM_UNITS_METRIC, "2\t1\tslot_width\t8\tmm" },
  { "- flank of the pocket wants 0.25 on, 30 long\n- pocket is 8 wide and 22 deep", EM_UNITS_METRIC, "2\t1\tslot_depth\t22\tmm" },
  /* Stock behind several repairs, or in a sentence of its own, is for all: .005 x 25.4 = 0.127. */
  { "BORE .375 WORN TO .381, .75 DEEP. PIN .375 WORN TO .371, .90 LONG. STOCK .005", EM_UNITS_INCH, "1\t0\tstock\t0.127\tmm" },
  { "Bore 16 mm, worn to 16.06; 24 mm deep; 0.2 mm stock", EM_UNITS_METRIC, "1\t1\tstock\t0.2\tmm" },
  /* English "an" is no German preposition: the bore is what is to be done. */
  { "nick 4 mm long, 1 x 1 mm, and an ejector bore 6 mm worn to 6.1, 30 mm deep", EM_UNITS_METRIC, "1\t2\tworn\t6.1\tmm" },
  /* What became of it ends the sentence; what was named before keeps its place: 3/32 in = 2.38125 mm. */
  { "rib between the two pockets is low. 3/32 thick, 1 5/8 long, add 1/16", EM_UNITS_METRIC, "1\t1\tthickness\t2.38125\tmm" },
  /* Numbers of things outside the tool count nothing. */
  { "Dana, it came from press 14, needed by Thursday", EM_UNITS_METRIC, "1\t0\tunused\tDana, it came from press 14, needed by Thursday\t" },
  { "mold came back from press 14 with a chipped corner, 3 x 1 x 1 mm", EM_UNITS_METRIC, "!1\t1\tcount\t14\t" },
  { "the inside edge of a 25 mm bore is worn, R0.3 mm", EM_UNITS_METRIC, "1\t1\tdiameter\t25\tmm" },
  { "LAND BAR TO BE ADDED 60 MM LONG X 6 MM WIDE X 2.5 MM HIGH", EM_UNITS_METRIC, "1\t1\tkind\tdam\t" },
  { "NICK 3 X 1 X 1 MM. NO THREADS TO BE WELDED", EM_UNITS_METRIC, "1\t0\trefuse\tthread\t" },
  { "NICK 3 X 1 X 1 MM. THREADS TO BE WELDED", EM_UNITS_METRIC, "!1\t0\trefuse\tthread\t" },
  { "Hole no longer used to be filled, 8 mm dia, 12 mm deep", EM_UNITS_METRIC, "!1\t0\trefuse\thole\t" },
  /* "klein" and "am Grund" name no diameter by themselves. */
  { "Kegelsitz, großer Durchmesser 12 mm, kleiner Durchmesser 8 mm, 3 mm tief, 0,6 mm auftragen", EM_UNITS_METRIC, "1\t1\tdiameter_small\t8\tmm" },
  { "Arête arrondie, rayon 0,3 mm, lg 20", EM_UNITS_METRIC, "1\t1\tradius\t0.3\tmm" },
  { "l'arête est émoussée, rayon de 0,3 mm sur 20 mm", EM_UNITS_INCH, "1\t1\tlength\t20\tmm" },
  { "Kante 0,3 mm Radius, 20 lang", EM_UNITS_METRIC, "1\t1\tradius\t0.3\tmm" },
  { "Tasche 12 x 8 mm, am Grund 0,3 mm auftragen", EM_UNITS_METRIC, "!1\t1\tdiameter\t0.3\tmm" },
  { "BUILD UP LAND .090 WD X 6.0 LG TO FINISHED HT .250", EM_UNITS_INCH, "!1\t0\thardness\t0.25\tHRC" },
  { "GATE EDGE WORN R.006 X .35 LG, (2) PLCS. GATE POST .125 DIA WORN TO .121 X .25 LG", EM_UNITS_INCH, "1\t1\tcount\t2\t" },
  /* How damage came and what lies about is passed over; who, when, in what state and what to mind is not. */
  { "Nick 2 x 1 x 1 mm\nthe blade is here with us", EM_UNITS_METRIC, "!2\t0\tunused\tblade is here with us\t" },
  { "Nick 2 x 1 x 1 mm. Needed by Thursday", EM_UNITS_METRIC, "1\t0\tunused\tNeeded by Thursday\t" },
  { "Nick 2 x 1 x 1 mm. Preheat required", EM_UNITS_METRIC, "1\t0\tunused\tPreheat required\t" },
  { "Nick 5 x 1 x 1 mm and 7.5 mm", EM_UNITS_METRIC, "1\t0\tunused\t7.5 mm\t" },
  { "Edge R.02 X 1.5 LG. Ref. 9021", EM_UNITS_INCH, "1\t0\treference\t9021\t" },
  { "Edge R.02 X 1.5 LG. Ref. 9021", EM_UNITS_INCH, "1\t1\tlength\t38.1\tmm" },
  { "EDGE R.02 X 1.5 LG, REF .500 DIA", EM_UNITS_INCH, "!1\t0\treference\t.500\t" },
  { "Valve seat cone 1/2 in large, 1/4 in small, 3/8 deep, .020 metal", EM_UNITS_INCH, "1\t1\tdiameter_small\t6.35\tmm" },
  { "WALL LOW .006, 1.5 LG X .4 HI, 3 DEG DRAFT", EM_UNITS_INCH, "1\t0\tunused\t3 DEG DRAFT\t" },
  { "WALL LOW .006, 1.5 LG X .4 HI, DRAFT 3 DEG", EM_UNITS_INCH, "1\t0\tunused\tDRAFT 3 DEG\t" },
  { "PIN ⌀6 WORN TO 5.9, 20 LG, HEAD 3 MM HIGH", EM_UNITS_METRIC, "1\t0\tunused\t3 MM HIGH\t" },
  /* Numbers that are no size: telephone, time, date, names of steels and parts, how long. */
  { "Pin 8 mm dia, call 555-0142", EM_UNITS_METRIC, "!1\t1\tquestion\ttwo-values\t" },
  { "NICK 2 X 1 X 1 MM ON INSERT C2", EM_UNITS_METRIC, "!1\t1\tdiameter\t2\tmm" },
  { "RIB R4: WORN 0.6 MM, 16 MM LG, 0.8 MM THK", EM_UNITS_METRIC, "1\t1\tlength\t16\tmm" },
  { "Core pin 6 has lost its tip, dia 3 mm, delivery 2 weeks", EM_UNITS_METRIC, "1\t1\tdiameter\t3\tmm" },
  { "Nick 2 x 1 x 1 mm. NAK80", EM_UNITS_METRIC, "!1\t1\tquestion\ttwo-values\t" },
  { "2 of the 4 lifters have a nick, 4 x 1 x 1 mm", EM_UNITS_METRIC, "1\t1\tcount\t2\t" },
  { "2 small nicks 3 x 1 x 1 mm", EM_UNITS_METRIC, "1\t1\tlength\t3\tmm" },
  /* What is away has its size before it. */
  { "RIB 1 MM THICK, 20 MM LONG, BURNED AWAY 0.8 MM", EM_UNITS_METRIC, "1\t1\tcoat\t0.8\tmm" },
  { "NICK 2 X 1 X 1 MM, TAPPED HOLE 3 MM AWAY", EM_UNITS_METRIC, "1\t1\tclearance\t3\tmm" },
  { "Keep clear of the vent hole by 1.5 mm - chip 2 x 0.8 x 0.8 mm", EM_UNITS_METRIC, "!1\t0\trefuse\thole\t" },
  /* A small diameter beside a large one is wear on the diameter: .004 in is 0.0508 mm per side. */
  { "PLUNGER 1.000 OD, WORN .004 DIA OVER 2.5", EM_UNITS_INCH, "1\t1\tbuild\t0.0508\tmm" },
  /* A leading point alone is not enough for inches beside "0.3" or a large number. */
  { "Weld 0.3 on 60 x 4 strip, leave .2 for spotting", EM_UNITS_METRIC, "1\t1\tquestion\tinch-or-mm\t" },
  { "Weld 0.3 on 60 x 4 strip, leave .2 for spotting", EM_UNITS_METRIC, "1\t1\tlength\t60\tmm" },
  /* Four decimals are no millimeters (common practice, no source): 3.1496 in. */
  { "JOURNAL ⌀3.1496, NOW ⌀3.144, 1.06 WIDE", EM_UNITS_METRIC, "1\t1\tdiameter\t79.99984\tmm" },
  /* Tables. */
  { "LOC   TYPE   LG     WD    THK\nL1    face   2.50   .375  .012", EM_UNITS_METRIC, "2\t1\tthickness\t0.3048\tmm" },
  { "ITEM\tQTY\tDEFECT\tSIZE\nA\t2\tlow face\t30 x 12 x 0.25\nB\t1\tcrack\t9 lg x 1.1 dp", EM_UNITS_METRIC, "2\t1\tcount\t2\t" },
  { "ITEM\tQTY\tDEFECT\tSIZE\nA\t2\tlow face\t30 x 12 x 0.25\nB\t1\tcrack\t9 lg x 1.1 dp", EM_UNITS_METRIC, "3\t2\tdepth\t1.1\tmm" },
  { "1  face 20 x 10 x 0.3 mm\n2  face 30 x 10 x 0.3 mm", EM_UNITS_METRIC, "!2\t2\tcount\t2\t" },
  { "1 CORNER, R0.5 X 20 MM\n2 CORNERS, R0.5 X 30 MM", EM_UNITS_METRIC, "2\t2\tcount\t2\t" },
  /* Lists: numbers and letters within a line, bracketed and named. */
  { "Please: (1) fill hole 6 mm dia x 19 mm deep, (2) nick 4 x 1 x 1 mm.", EM_UNITS_METRIC, "1\t2\tlength\t4\tmm" },
  { "Please: (1) fill hole 6 mm dia x 19 mm deep, (2) nick 4 x 1 x 1 mm.", EM_UNITS_METRIC, "!1\t2\tcount\t2\t" },
  { "1.) Kavität 2: Ausbruch 3,5 x 1,2 x 0,8 mm", EM_UNITS_METRIC, "1\t1\tlength\t3.5\tmm" },
  { "AREA 1 - CRACK 15 MM LONG X 2 MM DEEP", EM_UNITS_METRIC, "1\t1\tkind\tgroove\t" },
  { "AREA 20 X 10 MM LOW 0.2 MM", EM_UNITS_METRIC, "1\t1\tkind\tface\t" },
  { "Stack 3: nick 5 x 1 x 1 mm", EM_UNITS_METRIC, "1\t1\tlength\t5\tmm" },
  { "On each the top edge is worn to 1/64 radius by 1.25 long. 3 also have nicks .06 long .02 deep", EM_UNITS_METRIC, "1\t1\tlength\t31.75\tmm" },
  { "Guide pillar bore: nominal dia. 32 mm H7. Actual 32.09. Depth: 56 mm. No. of bores: 4.", EM_UNITS_METRIC, "1\t1\tcount\t4\t" },
  { "Guide pillar bore: nominal dia. 32 mm H7. Actual 32.09. Depth: 56 mm. No. of bores: 4.", EM_UNITS_METRIC, "1\t1\tdiameter\t32\tmm" },
  { "We machined the pocket 0.3 mm too deep, 44 x 21 mm", EM_UNITS_METRIC, "!1\t1\tfinish\tcustomer\t" },
  { "the texture on the next wall must not be damaged", EM_UNITS_METRIC, "1\t0\trefuse\ttexture\t" },
  { "build up 2 corners on bender die, 1/4 rad worn, 3/8 long each", EM_UNITS_METRIC, "1\t1\tcount\t2\t" },
  /* What a rib is now is no coat; the one small size of a crest is. */
  { "rib height should be 8.0 mm, is 7.6 mm", EM_UNITS_METRIC, "!1\t1\tcoat\t7.6\tmm" },
  { "the crest needs 0.4 mm, rib 1.2 mm thick, 30 mm long", EM_UNITS_METRIC, "1\t1\tcoat\t0.4\tmm" },
  /* The repair told before, named once more for what lies near it. */
  { "Nick 3 x 1 x 1 mm on core. There is a polished area 3 mm from the nick.", EM_UNITS_METRIC, "1\t1\tclearance\t3\tmm" },
  /* The size between "and" and a noun is that noun's; "each" behind a row is no count; "4 x" before damage is one. */
  { "edge chipped .06 x .03 x .03 and the .375 core pin hole is egged out to .381, 1\" deep", EM_UNITS_INCH, "1\t2\tdiameter\t9.525\tmm" },
  { "3 corners chipped, 5 mm x 2 x 2 each", EM_UNITS_METRIC, "1\t1\tleg_b\t2\tmm" },
  { "Quetschkante 4 x beschädigt je 3 mm lang, 0,8 x 0,8", EM_UNITS_METRIC, "1\t1\tcount\t4\t" },
  /* "Cav." before its number ends no sentence; the one size of a pit beside its depth is across. */
  { "Cav. 3: poro de 0,6 mm, prof. 0,3 mm", EM_UNITS_METRIC, "1\t1\tdiameter\t0.6\tmm" },
  { "Bohrungen (6 x) von Ø 5,00 auf Ø 5,10 ausgeschlagen", EM_UNITS_METRIC, "1\t1\tcount\t6\t" },
  { "A  edge nick   3.0 x 0.8 x 0.6 mm\nB  wall   20 x 8 mm, 0.3 mm thk", EM_UNITS_METRIC, "2\t2\tlength\t20\tmm" },
  { "Item 3 nick 4 x 1 x 1 mm", EM_UNITS_METRIC, "!1\t1\tcount\t3\t" },
  { "bore 42 H7, now 42.4 mm. 56 mm deep. moving half: crack 15 mm long", EM_UNITS_METRIC, "1\t1\tlength\t56\tmm" },
  { "pits 0.5-1 mm dia and 0.3 mm deep", EM_UNITS_METRIC, "1\t1\tdiameter\t0.75\tmm" },
  { "Hi, the tool number is 4471-B", EM_UNITS_METRIC, "1\t0\ttool_number\t4471-B\t" },
  { "The bead on blow mold half is dented, 4 mm long", EM_UNITS_METRIC, "!1\t1\tlength\t12.7\tmm" },
  { "core 88-2: nick 4 x 1 x 1 mm", EM_UNITS_METRIC, "1\t1\tlength\t4\tmm" },
  /* A size far from the diameter that is called none is no diameter. */
  { "Core pin broken, 12 mm long, ⌀3 mm, should be 18 mm", EM_UNITS_METRIC, "!1\t1\tdiameter\t18\tmm" },
  /* What was told of one size stays there: few thou deep. */
  { "scratch 1/2\" long few thou deep", EM_UNITS_METRIC, "1\t1\tlength\t12.7\tmm" },
  /* A letter that was misread for a digit and a digit for a letter. */
  { "W0RN C0RNER R0.5 MM X 20 MM LG", EM_UNITS_METRIC, "1\t1\tkind\tworn-corner\t" },
  { "H13, 5O-52 HRC", EM_UNITS_METRIC, "1\t0\thardness\t51\tHRC" },
  { "420 SS, 5Q-52 HRC", EM_UNITS_METRIC, "!1\t0\thardness\t52\tHRC" },
  /* The same once more, told of another place. */
  { "Shut off edge R0.6 mm, 34 mm long.\nSame on the other half.", EM_UNITS_METRIC, "2\t1\tcount\t2\t" },
  /* A slot where nothing is to be done is where the wall lies. */
  { "Deep slot, 5 mm wide, 19 mm deep - left wall scored. Add 0.25 mm over 33 x 15 mm.", EM_UNITS_METRIC, "1\t1\tslot_depth\t19\tmm" },
  { "BORE MOUTH ⌀28 MM, EDGE WORN R0.8 MM", EM_UNITS_METRIC, "1\t1\tside\tbore\t" },
  /* A metal that is denied. */
  { "Insert isn't H13, it's D2", EM_UNITS_METRIC, "1\t0\tbase\td2\t" },
  { "H13, 50-52. NICK 2 X 1 X 1 MM", EM_UNITS_METRIC, "1\t0\thardness\t51\tHRC" },
  /* Who finishes stands before what a shop else does. */
  { "we finish machine", EM_UNITS_METRIC, "1\t0\tfinish\tcustomer\t" },
  { "GRIND ALL FLUSH", EM_UNITS_METRIC, "1\t0\tfinish\tshop\t" },
  /* An article counts nothing. */
  { "una grieta, 14 mm de largo, 2,5 mm de profundidad", EM_UNITS_METRIC, "!1\t1\tcount\t1\t" },
  /* A word known only within phrases is read like the word it resembles. */
  { "Delle Ø3 mm, 0,8 mm tief, auf polierter Fläche", EM_UNITS_METRIC, "1\t1\tnear\tpolish\t" },
  /* A diameter and the same one worn make a pin or a bore, whatever word of damage stands beside them: .218 in is 5.5372 mm. */
  { "CORE PIN TIP PEENED .218 DIA -> .2155, .40 LG", EM_UNITS_INCH, "1\t1\tkind\tpin\t" },
  { "RETURN PIN ⌀.625 MUSHROOMED, NOW .619, .30 LG", EM_UNITS_INCH, "1\t1\tdiameter\t15.875\tmm" },
  { "PIN ⌀8 MM CHIPPED, 2 LONG, 1 WIDE, 1 DEEP", EM_UNITS_METRIC, "1\t1\tkind\tedge-nick\t" },
  { "ejector sleeve i/d 8.0 mm opened up to 8.12, 25 mm deep", EM_UNITS_METRIC, "1\t1\tkind\tbore\t" },
  { "the hole is ovalised to 10.1 mm, dia 10, depth 20", EM_UNITS_METRIC, "1\t1\tworn\t10.1\tmm" },
  { "Ejector sleeve, inside dia 6.00 mm, now 6.08 for the first 20 mm", EM_UNITS_METRIC, "1\t1\tkind\tbore\t" },
  { "Stem: O/D 14.00 mm nominal, necked to 13.86, 40 mm of it", EM_UNITS_METRIC, "1\t1\tworn\t13.86\tmm" },
  { "pin Ø2.5 mm picked up, now 2.46, last 15 mm of it", EM_UNITS_METRIC, "1\t1\tworn\t2.46\tmm" },
  { "Auswerferstift Ø10 mm angelaufen, hat noch 9,94, 40 lang", EM_UNITS_METRIC, "1\t1\tworn\t9.94\tmm" },
  { "éjecteur Ø6 mm grippé, usé à 5,93, 25 mm de long", EM_UNITS_METRIC, "1\t1\tworn\t5.93\tmm" },
  { "expulsor Ø6 mm gripado, ha quedado en 5,93, 25 mm de largo", EM_UNITS_METRIC, "1\t1\tworn\t5.93\tmm" },
  { "OD 2.375 SEIZED, TURNED DOWN TO 2.340 FOR CLEANUP, 1.25 WIDE", EM_UNITS_INCH, "1\t1\tworn\t59.436\tmm" },
  /* What became of the thing before the comma is no other repair: 3/8 in is 9.525 mm, 5/8 in 15.875 mm. */
  { "Pin hole .375 dia on the print, mic'd at .3795, washed out 5/8 down", EM_UNITS_INCH, "1\t1\tlength\t15.875\tmm" },
  { "CUTTING EDGE 60° INCLUDED, BLUNTED R.010 X 3.00 LG", EM_UNITS_INCH, "1\t1\tradius\t0.254\tmm" },
  { "Bohrung Ø12 auf 12,15 ausgeschlagen. Tauchkante verrundet, R0,2, 80 lang", EM_UNITS_METRIC, "1\t2\tradius\t0.2\tmm" },
  /* What is broken out has no radius, a score no width, a wall a height. */
  { "pinch edge knocked over .03 rad x 9 1/4 lg", EM_UNITS_INCH, "1\t1\tkind\tworn-corner\t" },
  { "LAND SCORED, .80 LG X .012 DP", EM_UNITS_INCH, "1\t1\tkind\tgroove\t" },
  { "INTERLOCK WIPED: SIDE 1.00 LG X .500 HT, ADD .005 THK", EM_UNITS_INCH, "1\t1\tkind\tsidewall\t" },
  { "PINCH BLADE 0.5 MM THICK HAMMERED DOWN 0.4 MM OVER 92 MM", EM_UNITS_METRIC, "1\t1\tcoat\t0.4\tmm" },
  { "FEATHERED EDGE KNOCKED OFF 2.125 LG X .09 X .07", EM_UNITS_INCH, "!1\t1\tends\ttapered\t" },
  /* No distance stands before "next to". */
  { "crack of 12 mm next to the vent hole, 2 mm deep", EM_UNITS_METRIC, "1\t1\tlength\t12\tmm" },
  { "chip 2 x 1 x 1 mm, 3 mm from the vent hole", EM_UNITS_METRIC, "1\t1\tclearance\t3\tmm" },
  { "Fissure lg 12 prof. 2, acier 1.2344", EM_UNITS_INCH, "1\t1\tdepth\t2\tmm" },
  { "Fissure de 12 mm près du trou, 2 mm de profondeur", EM_UNITS_METRIC, "1\t1\tlength\t12\tmm" },
  { "Rep. 1 : axe Ø12 usé à 11,94, lg 30\nRep. 2 : axe Ø8 usé à 7,94, lg 25", EM_UNITS_METRIC, "2\t2\tdiameter\t8\tmm" },
  { "Item 2 : pin Ø8 worn to 7.94, 25 long", EM_UNITS_METRIC, "1\t1\tlength\t25\tmm" },
  { "Éclat 2 x 1 x 1 mm, à 3 mm du trou", EM_UNITS_METRIC, "1\t1\tclearance\t3\tmm" },
  { "Usinage par nos soins", EM_UNITS_METRIC, "1\t0\tfinish\tcustomer\t" },
  { "À livrer fini, finition comprise", EM_UNITS_METRIC, "1\t0\tfinish\tshop\t" },
  { "Alésage Ø12 H7 usé à 12,06, prof. 22", EM_UNITS_METRIC, "1\t1\tworn\t12.06\tmm" },
  { "Plaque trempée à 52 HRC, nitrurée", EM_UNITS_METRIC, "1\t0\tcoating\tnitride\t" },
  /* French words that are English once their accents are gone stay English in English. */
  { "Please use a .5 mm wire. Large dent, 3 mm long, 1 x 1 mm", EM_UNITS_METRIC, "!1\t1\tworn\t0.5\tmm" },
  { "Remove chrome. Chip 3 x 1 x 1 mm at the edge", EM_UNITS_METRIC, "!1\t0\tcoating\tchrome\t" },
  { "Riss 12 mm direkt neben der Bohrung, 2 mm tief", EM_UNITS_METRIC, "1\t1\tlength\t12\tmm" },
  { "Fisura de 12 mm junto al agujero, 2 mm de profundidad", EM_UNITS_METRIC, "!1\t1\tclearance\t12\tmm" },
  /* Ranges of hardness in words and with a tilde. */
  { "H-13, RC 46 TO 48", EM_UNITS_INCH, "1\t0\thardness\t47\tHRC" },
  { "Stahl 1.2344, 46 bis 48 HRC", EM_UNITS_INCH, "1\t0\thardness\t47\tHRC" },
  { "Material 1.2344 HRC48~50", EM_UNITS_METRIC, "1\t0\thardness\t49\tHRC" },
  { "P20, 30/32 HRC", EM_UNITS_INCH, "1\t0\thardness\t31\tHRC" },
  { "SLOT 9/32 WIDE X 1/8 DEEP X 1 LONG, FILL", EM_UNITS_INCH, "1\t1\twidth\t7.14375\tmm" },
  /* What must stay free, in whatever words. */
  { "Stay out of threads.", EM_UNITS_METRIC, "1\t0\trefuse\tthread\t" },
  { "All weld is to be kept off the polish", EM_UNITS_METRIC, "1\t0\trefuse\tpolish\t" },
  { "Les taraudages ne doivent pas être soudés", EM_UNITS_METRIC, "1\t0\trefuse\tthread\t" },
  { "Ne pas souder sur la face polie", EM_UNITS_METRIC, "1\t0\trefuse\tpolish\t" },
  { "No se puede soldar en la zona pulida", EM_UNITS_METRIC, "1\t0\trefuse\tpolish\t" },
  { "Please keep all weld off the mirror polish.", EM_UNITS_METRIC, "1\t0\trefuse\tpolish\t" },
  { "Las roscas no se sueldan", EM_UNITS_METRIC, "1\t0\trefuse\tthread\t" },
  { "Don't weld on the engraving please.", EM_UNITS_METRIC, "1\t0\trefuse\tengraving\t" },
  /* Counts of parts, and names that are none. */
  { "split line gone round, 0.15 mm radius along 38 mm, on all 16 impressions", EM_UNITS_METRIC, "1\t1\tcount\t16\t" },
  { "Three of the six core pins are peened, .218 dia now .2155, .4 lg", EM_UNITS_INCH, "1\t1\tcount\t3\t" },
  { "Drei der sechs Stifte verschlissen, Ø8 jetzt 7,95, 12 lang", EM_UNITS_METRIC, "1\t1\tcount\t3\t" },
  { "Rounded edge R0.5 mm, 30 mm long, on all four cavities", EM_UNITS_METRIC, "1\t1\tcount\t4\t" },
  { "Trennkante verrundet R0,3, 20 lang, an allen 4 Kavitäten", EM_UNITS_METRIC, "1\t1\tcount\t4\t" },
  { "Arista redondeada R0,3 mm, 20 mm de largo, en todas las 4 cavidades", EM_UNITS_METRIC, "1\t1\tcount\t4\t" },
  { "Arête arrondie R0,3 mm, 20 mm de long, dans toutes les 4 empreintes", EM_UNITS_METRIC, "1\t1\tcount\t4\t" },
  { "edge worn R0.5 mm x 20 mm long, 3 places. bore worn", EM_UNITS_METRIC, "1\t1\tcount\t3\t" },
  { "Insert A3 left edge wear R0.3 mm, length 65 mm", EM_UNITS_METRIC, "!1\t1\tcount\t3\t" },
  { "Z1 CORNER R0.5 X 20 MM\nZ2 CORNER R0.5 X 30 MM", EM_UNITS_METRIC, "!2\t2\tcount\t2\t" },
  { "Der Kern aus Werkzeug 883 ist wieder da", EM_UNITS_METRIC, "1\t0\ttool_number\t883\t" },
  /* Who does the rest. */
  { "Leave 0.3 mm for our milling", EM_UNITS_METRIC, "1\t0\tfinish\tcustomer\t" },
  { "Hole 2 - chip, 2 x 0.4 x 0.4 mm", EM_UNITS_METRIC, "1\t1\tkind\tedge-nick\t" },
  { "Hole 2 - chip, 2 x 0.4 x 0.4 mm", EM_UNITS_METRIC, "!1\t1\tdiameter\t2\tmm" },
  { "Bore 6: now 6.1, 20 mm deep", EM_UNITS_METRIC, "1\t1\tdiameter\t6\tmm" },
  { "mould for a 5 litre drum, pinch edges worn R0.4, 30 mm long", EM_UNITS_METRIC, "1\t1\tlength\t30\tmm" },
  { "Flasche 0,5 Liter, Kante R0,4, 20 lang", EM_UNITS_METRIC, "1\t1\tradius\t0.4\tmm" },
  { "FILL OLD POCKET 1.50 X .625 X .375 DP FLUSH", EM_UNITS_INCH, "!1\t1\tfinish\tshop\t" },
  { "Fill old pocket 30 x 12 x 4 mm, mill flush", EM_UNITS_METRIC, "1\t1\tfinish\tshop\t" },
  { "Sprue bush, 1.2767 at 54 HRC", EM_UNITS_METRIC, "1\t0\tbase\t1-2767\t" },
  { "Aluminium 3.4365", EM_UNITS_METRIC, "1\t0\tbase\t7075\t" },
  { "Slot 6 mm wide, 20 mm deep: wall worn 0.2, 50 long, 12 high", EM_UNITS_METRIC, "1\t1\tslot_depth\t20\tmm" },
  { "Slot 6 mm wide, 20 mm deep, one flank has gone\nneeds 0.2 put back over 50 long, 12 high", EM_UNITS_METRIC, "2\t1\tthickness\t0.2\tmm" },
  { "Nutflanke 40 lang, 8 hoch, 0,25 auftragen\nNut: 5 breit, 9 tief", EM_UNITS_METRIC, "2\t1\tslot_width\t5\tmm" },
  { "Flanc de rainure usé, L 40, h 8, à recharger 0,25\nEclat 5 x 1 x 1\nRainure : largeur 5, profondeur 9", EM_UNITS_METRIC, "3\t1\tslot_depth\t9\tmm" },
  { "Pin Ø8 mm worn to 7.8, 20 long. Ten pins in the crate, all alike.", EM_UNITS_METRIC, "1\t1\tcount\t10\t" },
  { "Flow dam 150 x 4 x 2.2 mm\n2 dams, mirrored", EM_UNITS_METRIC, "2\t1\tcount\t2\t" },
  { "Broche Ø18, usée à 17,7 sur 22 mm.\nIl y en a six pareilles.", EM_UNITS_METRIC, "2\t1\tcount\t6\t" },
  { "pointe (petite sphère R8, ouverture Ø14) usée, remettre 0,4", EM_UNITS_METRIC, "1\t1\tform\tsphere\t" },
  { "NECK FINISH, TOP FACE\nNICK .25 X .03 X .02", EM_UNITS_INCH, "2\t1\tkind\tedge-nick\t" },
  { "oval dimple 6 x 4 mm, 0.5 deep", EM_UNITS_METRIC, "1\t1\tform\tellipsoid\t" },
  { "2ND WEIR: 1.50 LG X .188 W X .060 HI", EM_UNITS_INCH, "!1\t1\tcount\t2\t" },
  { "Cone seat Ø12 mm at the mouth, Ø8 small, 4 deep, coat 0.3\n4 seats per plate, 2 plates", EM_UNITS_METRIC, "2\t1\tcount\t8\t" },
  { "Pit 2 mm dia, 0.6 deep.\nGrain starts about 0.5 mm from the pit.", EM_UNITS_METRIC, "2\t1\tclearance\t0.5\tmm" },
  { "Picadura redonda Ø 2 y 0,6 de profundidad.\nCuidado con el texturizado, está a 3 mm de la picadura.", EM_UNITS_METRIC, "2\t1\tclearance\t3\tmm" },
  { "FILL POCKET 1.5 X .75 X .06 DEEP\nTHREAD 1/4-20 .19 FROM POCKET, PROTECT", EM_UNITS_INCH, "2\t1\tclearance\t4.826\tmm" },
  { "LINE  DAMAGE       SIZE\n10    CRACK        .45 LG X .05 DP\n20    PIT          DIA .06 X .020 DP   QTY 2", EM_UNITS_INCH, "!2\t1\tcount\t10\t" },
  { "LINE  DAMAGE       SIZE\n10    CRACK        .45 LG X .05 DP\n20    PIT          DIA .06 X .020 DP   QTY 2", EM_UNITS_INCH, "3\t2\tcount\t2\t" },
  { "Pos | Stelle | Schaden | Maß\n10 | Kern 1 | Kante ausgebrochen | 2,2 x 0,5 x 0,3", EM_UNITS_METRIC, "2\t1\tlength\t2.2\tmm" },
  { "Tasche 18 x 7 mm, 2,5 tief, bündig zuschweißen", EM_UNITS_METRIC, "!1\t1\tfinish\tshop\t" },
  { "Bolsillo 16 x 9, 1,2 de profundidad, rellenar a ras", EM_UNITS_METRIC, "!1\t1\tfinish\tshop\t" },
  { "filo de corte mellado 2 x 0,3 x 0,3 mm", EM_UNITS_METRIC, "1\t1\tkind\tedge-nick\t" },
  { "SIDE OF T-SLOT WORN, 1.0 LG X .25 HI, .008 TO ADD, SLOT .50 W X .30 D", EM_UNITS_INCH, "1\t1\tslot_depth\t7.62\tmm" },
  /* 90 mm worn 0.2 under is 89.8: half of it per side (common practice, no source). */
  { "SPIGOT Ø90 MM WORN 0.2 UNDER, 10 LG", EM_UNITS_METRIC, "1\t1\tbuild\t0.1\tmm" },
  { "M-240   pad low .007, pad 1.25 x .80", EM_UNITS_INCH, "!1\t1\tcount\t240\t" },
  { "Stop face 24,85 mm high, should be 25,00 mm, 80 x 32 mm", EM_UNITS_METRIC, "1\t1\tthickness\t0.15\tmm" },
  { "Bitte nicht am Bund schweißen", EM_UNITS_METRIC, "1\t0\trefuse\tBund\t" },
  /* 20 π / 3 = 20.94 */
  { "edge ⌀20 mm worn R0.5, 120° of it", EM_UNITS_METRIC, "1\t1\tlength\t20.94\tmm" },
  { "El inserto de la cavidad 4 trae fisuras de 9 mm de largo y 0.8 mm de profundidad", EM_UNITS_METRIC, "!1\t1\tcount\t4\t" },
  { "Nutwand ausgewaschen 0,2 / 45 lang / 9 hoch, Nut 6 breit", EM_UNITS_METRIC, "1\t1\tslot_width\t6\tmm" },
  { "Nick 5 x 1 x 1 mm. 1.4542 COND. H900", EM_UNITS_METRIC, "1\t0\tunused\tCOND. H900\t" },
  { "EDGE PEENED TO .020 R, 1.00 LONG, SOLID CORNER IS 78°. BRING BACK TO .002 R", EM_UNITS_INCH, "1\t1\tangle\t78\tdeg" },
  { "EDGE PEENED TO .020 R, 1.00 LONG, SOLID CORNER IS 78°. BRING BACK TO .002 R", EM_UNITS_INCH, "1\t1\tradius_to\t0.0508\tmm" },
  { "Kante Ø28 auf R0,4 ausgewaschen. Kante danach R0,1.", EM_UNITS_METRIC, "1\t1\tradius_to\t0.1\tmm" },
  { "HOLE Ø.156 EDGE ROLLED TO R.010, INSIDE EDGE, SHARP", EM_UNITS_INCH, "1\t1\tside\tbore\t" },
  { "Steg zu niedrig: 1,4 dick, 30 lang, 0,25 auftragen", EM_UNITS_METRIC, "1\t1\tthickness\t1.4\tmm" },
  { "RIB .045 THK X 1.40 LG, TIP DOWN .012. COAT TIP + .020 DOWN EACH SIDE", EM_UNITS_INCH, "1\t1\tdepth\t0.508\tmm" },
  { "ADD RIDGE: 38 MM LONG, 4 WIDE, 1.5 HIGH", EM_UNITS_METRIC, "1\t1\tkind\tdam\t" },
  { "Fase 2 x 45° beschädigt, 12 mm lang", EM_UNITS_METRIC, "1\t1\tquestion\tcount-or-chamfer\t" },
  { "sprue bore  4.000  4.005  OK", EM_UNITS_METRIC, "!1\t1\tkind\tbore\t" },
  { "BORE EDGE Ø14 MM WORN TO R0.8, OVER 120°", EM_UNITS_METRIC, "1\t1\tlength\t14.66\tmm" },
  { "Turning and lapping by us", EM_UNITS_METRIC, "!1\t0\tunused\tTurning\t" },
  { "Grinding, polishing and fitting by customer", EM_UNITS_METRIC, "!1\t0\tunused\tGrinding\t" },
  { "He wants us to finish it off", EM_UNITS_METRIC, "1\t0\tfinish\tshop\t" },
  { "chip 3/8 long, a thirty-second both ways", EM_UNITS_INCH, "1\t1\tleg_b\t0.79375\tmm" },
  /* Text that means nothing stays visible. */
  { "Frobisher and nephews", EM_UNITS_METRIC, "1\t0\tunused\tFrobisher and nephews\t" },
  /* A greeting is no text that could not be used. */
  { "Nicht schweißen: Gewinde, Wassernut", EM_UNITS_METRIC, "1\t0\trefuse\tWassernut\t" },
  { "DO NOT WELD: CLAMP SLOT", EM_UNITS_METRIC, "1\t0\trefuse\tCLAMP SLOT\t" },
  { "No weld on threads, engraving or texture", EM_UNITS_METRIC, "1\t0\trefuse\tengraving\t" },
  { "The neck plates must not be welded, they stay in", EM_UNITS_METRIC, "1\t0\trefuse\tneck plates\t" },
  { "The thread is good, don't weld it", EM_UNITS_METRIC, "1\t0\trefuse\tthread\t" },
  { "Le filetage est bon, surtout ne pas le souder", EM_UNITS_METRIC, "1\t0\trefuse\tthread\t" },
  { "HOLE 8 DIA X 14 DP MM, FILL. THREAD NEXT TO IT IS GOOD, DON'T HURT IT", EM_UNITS_METRIC, "1\t1\tnear\tthread\t" },
  { "NICK 6 X 1 X 1 MM\nTHREAD BESIDE IT - DO NOT TOUCH", EM_UNITS_METRIC, "2\t1\tnear\tthread\t" },
  { "DRG 30-2217 REV C", EM_UNITS_METRIC, "1\t0\tdrawing\t30-2217 REV C\t" },
  { "Innenkante am Auslauf Ø50 verrundet R0,4", EM_UNITS_METRIC, "1\t1\tside\tbore\t" },
  { "Kante außen Ø24 abgenutzt R0,6", EM_UNITS_METRIC, "1\t1\tside\touter\t" },
  { "inside exit corner of the bush gone round R0.5 mm, dia 110", EM_UNITS_METRIC, "1\t1\tside\tbore\t" },
  /* 25 π / 2 = 39.27 */
  { "BORE EDGE Ø25 MM WORN TO R1.2, UPPER 180° ONLY", EM_UNITS_METRIC, "1\t1\tlength\t39.27\tmm" },
  { "arête ext. Ø36 usée R0,5 sur 90°", EM_UNITS_METRIC, "1\t1\tlength\t28.27\tmm" },
  { "Steg 1,5 dick, 40 lang, oben fehlen 0,3. Flanken nur 2 mm tief.", EM_UNITS_METRIC, "1\t1\tdepth\t2\tmm" },
  { "Steg 1,5 dick, 40 lang, oben fehlen 0,3. An beiden Stirnseiten rund.", EM_UNITS_METRIC, "1\t1\twraps\t2\t" },
  { "Kind regards", EM_UNITS_METRIC, "!1\t0\tunused\tKind regards\t" },
  { "LIP SHARP EDGE ROUNDED 0.15 RAD OVER FULL 650 MM\nCHROME", EM_UNITS_METRIC, "2\t0\tcoating\tchrome\t" },
  { "LIP SHARP EDGE ROUNDED 0.15 RAD OVER FULL 650 MM\nchrome shop wants it back on Friday", EM_UNITS_METRIC, "!2\t0\tcoating\tchrome\t" },
  { "Kerbe 3 x 1 x 1 mm\nWerkzeug-Nr.: 31.118", EM_UNITS_METRIC, "2\t0\ttool_number\t31.118\t" },
  { "Asset 00917, print 7781-2", EM_UNITS_METRIC, "1\t0\tdrawing\t7781-2\t" },
  { "Chip 3 x 1 x 1 mm\nabout 50 on the Rockwell C scale", EM_UNITS_METRIC, "2\t0\thardness\t50\tHRC" },
  { "Delle 3 x 1 x 0,5 mm tief. Können Sie auch Strukturen nachätzen?", EM_UNITS_METRIC, "!1\t1\tnear\ttexture\t" },
  { "agujero Ø4,2 mm x 9 mm, rellenar; el termopar queda a 10 mm", EM_UNITS_METRIC, "1\t1\tclearance\t10\tmm" },
  { "Grieta 12 mm x 2 mm de fondo\nEl molde lleva cromo duro, ya lo hemos quitado", EM_UNITS_METRIC, "!2\t0\tcoating\tchrome\t" },
  { "Riss 12 mm lang, 2 mm tief\nBitte mit Laser, nicht WIG", EM_UNITS_METRIC, "2\t0\tunused\tBitte mit Laser, nicht WIG\t" },
  { "NICK 3 X 1 X 1 MM. SUPPLY READY FOR SERVICE.", EM_UNITS_METRIC, "1\t0\tfinish\tshop\t" },
  { "Kerbe 3 x 1 x 1 mm. Rest machen wir.", EM_UNITS_METRIC, "1\t0\tfinish\tcustomer\t" },
  { "NICK 3 X 1 X 1 MM. DIAMOND POLISHED, DO NOT MARK.", EM_UNITS_METRIC, "1\t1\tnear\tpolish\t" },
  { "edge worn R0.4 mm over 20\nhappened when the mold was fitted", EM_UNITS_METRIC, "2\t0\tunused\thappened when the mold was fitted\t" },
  { "Schichtübergabe\nStift Ø6 auf 5,9 verschlissen, 20 mm lang", EM_UNITS_METRIC, "!1\t0\tunused\tSchichtübergabe\t" },
  /* Questions to the shop are answered by the office; one that asks for a quote is the letter itself. */
  { "pit 2 mm dia, 0.6 deep. Could it be ready for then?", EM_UNITS_METRIC, "1\t0\tunused\tCould it be ready for then\t" },
  { "Grübchen Ø2 mm, 0,6 tief. Geht das bis Ende des Monats?", EM_UNITS_METRIC, "1\t0\tunused\tGeht das bis Ende des Monats\t" },
  { "Could you quote on the following?", EM_UNITS_METRIC, "!1\t0\tunused\tCould you quote on the following\t" },
  { "Chip, 4 x 1 x 1 mm. O-ring groove to stay free of weld.", EM_UNITS_METRIC, "1\t0\trefuse\tO-ring groove\t" },
  { "Chip, 4 x 1 x 1 mm. Can only be reached from one side.", EM_UNITS_METRIC, "1\t1\taccess\trestricted\t" },
  { "Ausbruch 4 x 1 x 1 mm. Kühlbohrung 5 mm darunter.", EM_UNITS_METRIC, "1\t1\tclearance\t5\tmm" },
  { "Mella 4 x 1 x 1 mm. La textura está a 2 mm.", EM_UNITS_METRIC, "1\t1\tclearance\t2\tmm" },
  /* What is no finish, no coating any more, no steel. */
  { "old hole, drilled Ø8 mm x 15 deep, fill it flush please.", EM_UNITS_METRIC, "!1\t1\tfinish\tshop\t" },
  { "FILL (3) EJ PIN HOLES Ø.125 X .62 DEEP. FLUSH.", EM_UNITS_INCH, "!1\t0\tfinish\tshop\t" },
  { "edge worn R.03, 1.75 long. Nickel plating removed already.", EM_UNITS_INCH, "!1\t0\tcoating\tnickel\t" },
  { "edge worn R.03, 1.75 long. Nickel plating removed already.", EM_UNITS_INCH, "1\t0\tunused\tNickel plating removed already\t" },
  { "WELD NOTE (ZONE D2): EDGE BREAKOUT .44 X .10 X .07\nMAT'L 420", EM_UNITS_INCH, "2\t0\tbase\t420\t" },
  /* What is refused by its own words, without the little ones before it. */
  { "DO NOT WELD ON THE DATUM FACE OR THE DATE STAMP", EM_UNITS_METRIC, "1\t0\trefuse\tDATE STAMP\t" },
  { "Stahl 1.2738, vergütet. Bitte am Stempeldatum nicht schweißen.", EM_UNITS_METRIC, "1\t0\trefuse\tStempeldatum\t" },
  { "Molde de soplado en 3.4365, con inserto de cobre-berilio que no se debe soldar", EM_UNITS_METRIC, "1\t0\trefuse\tinserto de cobre-berilio\t" },
  { "Please don't weld the angle pin hole.", EM_UNITS_METRIC, "1\t0\trefuse\tangle pin hole\t" },
  /* What must be spared lies near; how near may be told. What no weld may touch is refused. */
  { "PIT 2 MM DIA, 0.6 DEEP\nTEXTURE ON TOP FACE, PROTECT", EM_UNITS_METRIC, "2\t1\tnear\ttexture\t" },
  { "FACE 20 X 10 MM, ADD 0.6\nBOLT HOLES TO STAY CLEAR, MIN 3", EM_UNITS_METRIC, "2\t1\tclearance\t3\tmm" },
  { "Auflagefläche 20 x 10 mm, 0,6 auftragen. Bohrung in der Mitte 4 mm muss offen bleiben.", EM_UNITS_METRIC, "1\t1\tnear\thole\t" },
  { "Auflagefläche 20 x 10 mm, 0,6 auftragen. Bohrung in der Mitte 4 mm muss offen bleiben.", EM_UNITS_METRIC, "!1\t1\tdepth\t4\tmm" },
  { "Éclat 9 x 0,8 x 0,5 mm\nGrain laser sur le flanc à 2 mm, ne pas abîmer", EM_UNITS_METRIC, "2\t1\tclearance\t2\tmm" },
  { "B/ ARETE USEE R0,5 SUR 20 MM\nC/ FILETAGE M8 A 5 MM DE B/", EM_UNITS_METRIC, "2\t1\tclearance\t5\tmm" },
  /* Who does the rest, in more words. */
  { "Wall is 20 mm long, 8 high, add 0.2. Our EDM guy will burn it afterwards.", EM_UNITS_METRIC, "1\t0\tfinish\tcustomer\t" },
  { "Führungsbohrung 20 mm, je Seite 0,5 mm Auftrag, 35 tief, wir spindeln aus", EM_UNITS_METRIC, "1\t1\tfinish\tcustomer\t" },
  { "broche Ø18, usée à 17,7 sur 22 mm. On rectifie ici.", EM_UNITS_METRIC, "1\t0\tfinish\tcustomer\t" },
  { "PRESA 18 X 4 X 2,2 MM ALTO\nFRESADO A MEDIDA POR VUESTRA PARTE", EM_UNITS_METRIC, "2\t0\tfinish\tshop\t" },
  { "dimple .31 x .22, .035 deep that has to come up flush", EM_UNITS_INCH, "!1\t1\tfinish\tshop\t" },
  /* How it is reached, and what has a number. */
  { "gouge 14 x 0.8 wide x 0.3 mm deep\ntight to get in", EM_UNITS_METRIC, "2\t1\taccess\trestricted\t" },
  { "Kratzer 14 x 0,8 breit x 0,3 mm tief, gut zu erreichen", EM_UNITS_METRIC, "1\t1\taccess\topen\t" },
  { "core insert, tool nbr 77-145", EM_UNITS_METRIC, "1\t0\ttool_number\t77-145\t" },
  { "Ordre de travail OT-903", EM_UNITS_METRIC, "1\t0\treference\tOT-903\t" },
  { "WELD COMPLETE PER PRINT 5520-07.", EM_UNITS_INCH, "1\t0\tdrawing\t5520-07\t" },
  /* The titles of papers tell nothing; what befell a part and what is forbidden or asked beside the repair does. */
  { "Messprotokoll Werkzeug 17-09", EM_UNITS_METRIC, "!1\t0\tunused\tMessprotokoll\t" },
  { "INCOMING INSPECTION, TOOL ROOM", EM_UNITS_INCH, "!1\t0\tunused\tINCOMING INSPECTION, TOOL ROOM\t" },
  { "Rapport de contrôle moule 5-118", EM_UNITS_METRIC, "!1\t0\tunused\tRapport de contrôle\t" },
  { "trou Ø 8 mm, prof. 25, percé par erreur, à boucher", EM_UNITS_METRIC, "1\t0\tunused\tpercé par erreur\t" },
  { "PIT 2 MM DIA, 0.6 DEEP. WATCH THE HEAT.", EM_UNITS_METRIC, "1\t0\tunused\tWATCH THE HEAT\t" },
  { "Düsenring, Zentrierring", EM_UNITS_METRIC, "!1\t0\tunused\tDüsenring, Zentrierring\t" },
  /* Lists that run on in a line, with marks and, before what is to be done, without. */
  { "1) nick 3 x 1 x 1 2) nick 5 x 1 x 0.5 3) pit dia 2, 0.5 deep", EM_UNITS_METRIC, "1\t3\tkind\trecess\t" },
  { "1. WELD (3) CHIPS ON EDGE, 3 LG X 1 X 1", EM_UNITS_METRIC, "1\t1\tcount\t3\t" },
  { "1 FILL HOLE ⌀6 X 12 DEEP (2) PLCS. 2 FILL POCKET 20 LG X 10 WD X 3 DEEP.", EM_UNITS_METRIC, "1\t2\tlength\t20\tmm" },
  { "1 FILL HOLE ⌀6 X 12 DEEP (2) PLCS. 2 FILL POCKET 20 LG X 10 WD X 3 DEEP.", EM_UNITS_METRIC, "1\t1\tcount\t2\t" },
  /* What is to be done with the first is to be done with the second; a worn row is a row. */
  { "WELD SHUT (6) HOLES ⌀6 X 12 DP AND (2) HOLES ⌀8 X 25 DP", EM_UNITS_METRIC, "1\t2\tkind\trecess\t" },
  { "Fläche 24 x 16 verschlissen, 0,3 auftragen", EM_UNITS_METRIC, "1\t1\twidth\t16\tmm" },
  { "the top edge: one chip, 2 mm long, 1 mm x 1 mm", EM_UNITS_METRIC, "!1\t1\tcount\t1\t" },
  /* Round and low is a face, whatever hammered it; a strip of an edge that nothing broke off is one, too. */
  { "end face is hammered, 30 mm round, about 0.8 mm low", EM_UNITS_METRIC, "1\t1\tkind\tface\t" },
  { "El filo de corte bajo: 110 de largo, 1,2 de ancho, aumentar 0,5", EM_UNITS_METRIC, "1\t1\tkind\tface\t" },
  { "FILL GROOVE 57 LG X 3 WD X 1.5 DP", EM_UNITS_METRIC, "1\t1\tkind\tgroove\t" },
  { "WORN LIP OF EXTRUSION DIE: R0.5 X 240 MM, RESTORE TO R0.1", EM_UNITS_METRIC, "1\t1\tradius_to\t0.1\tmm" },
  { "Dorn Ø22, gemessen Ø21,7 auf 35 mm Länge", EM_UNITS_METRIC, "1\t1\tlength\t35\tmm" },
  { "dent, 3 mm dia 0.8 mm deep. R0.2 on the shutoff, 15 mm.", EM_UNITS_METRIC, "1\t2\tradius\t0.2\tmm" },
  { "dent, 3 mm across 0.8 mm deep. Ejector pin hole nearby, gap 1.5 mm.", EM_UNITS_METRIC, "1\t1\tclearance\t1.5\tmm" },
  { "pocket 3 mm too far over. It must be filled: 22 x 8, 5 mm deep", EM_UNITS_METRIC, "1\t1\twidth\t8\tmm" },
  { "Its outer corner is rounded R0.4 over 26 mm", EM_UNITS_METRIC, "!1\t1\tside\touter\t" },
  /* The sizes of one repair told in parts: a noun once more, a slot's depth, an area of so much by so much. */
  { "Wall low: 0.3 mm per side, wall 35 mm long, 12 mm high. Slot is 4 mm wide, 19 mm deep.", EM_UNITS_METRIC, "1\t1\tslot_depth\t19\tmm" },
  { "2 slots, one wall each washed 0.5 mm, wall 80 mm long 15 mm high, slot 10 mm wide", EM_UNITS_METRIC, "1\t1\tkind\tsidewall\t" },
  { "The face is 0.15 mm low over an area of 20 by 35 mm", EM_UNITS_METRIC, "1\t1\tlength\t35\tmm" },
  { "blade 3 mm thick 18 mm wide, add 2 mm", EM_UNITS_METRIC, "1\t1\tlength\t18\tmm" },
  { "The stop is mushroomed; build the face up 0.5 mm, dia 25", EM_UNITS_METRIC, "1\t1\tthickness\t0.5\tmm" },
  { "2 dents: first 3 mm dia x 0.5, second 5 mm dia x 0.8", EM_UNITS_METRIC, "1\t1\tdiameter\t3\tmm" },
  { "cone damaged: large dia 20, small dia 12, 0.5 mm all over", EM_UNITS_METRIC, "1\t1\tkind\tseat\t" },
  { "seat, spherical radius 15.5 mm, pitted. Add 0.6 mm", EM_UNITS_METRIC, "1\t1\tthickness\t0.6\tmm" },
  /* A table whose one named column is the quantity; L, W and D beside each other. */
  { "Repair\tSize\tQty\nNick on edge\t3 x 1 x 1 mm\t2\nScratch\t25 x 0.2 deep\t1", EM_UNITS_METRIC, "2\t1\tcount\t2\t" },
  { "Pos | Type | L | W | D | Qty\n1 | pocket | 20 | 10 | 3 | 1\n2 | slot | 40 | 4 | 2 | 2", EM_UNITS_METRIC, "3\t2\tdepth\t2\tmm" },
  { "crack 40 mm. depth unknown, maybe 8 mm", EM_UNITS_METRIC, "1\t1\tlength\t40\tmm" },
  { "ribs 1 mm thick, tops rounded, 30 mm long, add .5, 6 ribs", EM_UNITS_METRIC, "1\t1\tlength\t30\tmm" },
  { "Close 4 cooling holes, each diameter 10 mm, depth 25 mm", EM_UNITS_METRIC, "1\t1\tcount\t4\t" },
  { "Hob mark 5 mm dia, 0.8 deep", EM_UNITS_METRIC, "1\t1\tkind\trecess\t" },
  { "Sprue bushing: spherical radius 19 mm, hammered, mouth dia 25", EM_UNITS_METRIC, "1\t1\tkind\tseat\t" },
  /* Legs tell what is broken out; what is only round and deep is a pit; no repair is 250 in long. */
  { "The damage is 6 mm long and goes 1.5 mm into the top and 2 mm down the side.", EM_UNITS_METRIC, "1\t1\tkind\tedge-nick\t" },
  { "a hit mark in the cavity floor 2 mm dia and 0.4 deep", EM_UNITS_METRIC, "1\t1\tkind\trecess\t" },
  { "lip land 250 long, 2 wide, raise .15", EM_UNITS_METRIC, "1\t1\twidth\t2\tmm" },
  { "rib to be made higher by 1.5 mm, 1.8 x 60", EM_UNITS_METRIC, "1\t1\tcoat\t1.5\tmm" },
  { "barrel end face scratched, dia 60 mm, 0.2 low", EM_UNITS_METRIC, "1\t1\tkind\tface\t" },
  /* How many, told of the parts or behind the sizes; a pocket that its wall is mended in. */
  { "rounded edge R0.3, 120 mm along the long side and the same again on the other half", EM_UNITS_METRIC, "1\t1\tcount\t2\t" },
  { "Three cores, each with a chip 2 x 1 x 1 mm", EM_UNITS_METRIC, "1\t1\tcount\t3\t" },
  { "BUILD UP RIB 1.5 MM THK X 40 MM LG, ADD 0.6 MM, TWO RIBS", EM_UNITS_METRIC, "1\t1\tcount\t2\t" },
  { "pocket 9 mm wide, 15 mm deep, wall eaten 0.4 mm, 50 mm x 12 mm", EM_UNITS_METRIC, "1\t1\tslot_width\t9\tmm" },
  { "dia 20 mm at top and 12 mm at the bottom, cone seat", EM_UNITS_METRIC, "1\t1\tdiameter_small\t12\tmm" },
  { "Wall 20 x 10 mm. To build up: 0.3 mm", EM_UNITS_METRIC, "1\t1\tthickness\t0.3\tmm" },
  { "Land 6.25 long, .030 wide, mashed .012. Both halves.", EM_UNITS_INCH, "1\t1\tkind\tface\t" },
  { "edges R0.2 mm, length 150 each", EM_UNITS_METRIC, "1\t1\tlength\t150\tmm" },
  { "face 60 x 12 low 0.3 mm, two slides", EM_UNITS_METRIC, "1\t1\tcount\t2\t" },
  { "Cav 1 thru 4: pinch edge R0.4 X 140 mm", EM_UNITS_METRIC, "1\t1\tlength\t140\tmm" },
  /* One more of its kind; a nick at a round edge; what is filled was round, what wear is not. */
  { "scratch 30 mm, depth 0.2 mm and another one 15 mm, depth 0.1 mm", EM_UNITS_METRIC, "1\t2\tdepth\t0.1\tmm" },
  { "inside edge of bore dia 18 mm chipped 2 x 1 x 1", EM_UNITS_METRIC, "1\t1\tkind\tedge-nick\t" },
  { "Dowel hole 8 mm moved 2 mm, fill the old one 20 mm deep", EM_UNITS_METRIC, "1\t1\tdiameter\t8\tmm" },
  { "Part: ejector pin ⌀6 mm. Head side worn to 5.9 for 12 mm.", EM_UNITS_METRIC, "1\t1\tworn\t5.9\tmm" },
  { "Fill in the old date stamp, 8 mm dia, 0.5 deep.", EM_UNITS_METRIC, "1\t1\tform\tcylinder\t" },
  /* Which holes stay free of weld only their own words say. */
  { "DO NOT WELD INSIDE DOWEL HOLES", EM_UNITS_METRIC, "1\t0\trefuse\tDOWEL HOLES\t" },
  { "The rib is low by 0.7 mm over 22 mm, rib 1.8 mm thick. Gap to the next rib only 2.5 mm.", EM_UNITS_METRIC, "!1\t2\tkind\trib\t" },
  /* Bounds of a hardness with a stroke, and a bare hardness behind a metal and a stroke. */
  { "CORNER NICK 2 X 1 X 1 MM. H13, 46/48 HRC", EM_UNITS_METRIC, "1\t0\thardness\t47\tHRC" },
  { "Nick 2 x 1 x 1 mm. D2/58", EM_UNITS_METRIC, "1\t0\thardness\t58\tHRC" },
  { "STEP HT .150 TO BE .162", EM_UNITS_INCH, "!1\t0\thardness\t0.15\tHRC" },
  /* Two sizes of one thing without a name: wear thins a pin and opens a bore. */
  { "It should measure 24.60 mm on the outside, we find 24.48 mm, 11 mm long", EM_UNITS_METRIC, "1\t1\tkind\tpin\t" },
  { "PLUG ⌀18 WORN TO ⌀17.6 MM X 25", EM_UNITS_METRIC, "1\t1\tkind\tpin\t" },
  { "ANNULAR FACE OD 2.20, RAISE .010", EM_UNITS_INCH, "1\t1\tform\tdisc\t" },
  { "FLAT BOSS 1.10 DIA: RAISE .060", EM_UNITS_INCH, "1\t1\tdiameter\t27.94\tmm" },
  { "STEP FACE 16 MM X 2.5 MM, +0.2 MM", EM_UNITS_METRIC, "1\t1\tthickness\t0.2\tmm" },
  { "crack runs 5/8 of an inch, 1/8\" deep", EM_UNITS_METRIC, "1\t1\tlength\t15.875\tmm" },
  { "crack 25 mm long, depth 6 to 8", EM_UNITS_METRIC, "1\t1\tdepth\t7\tmm" },
  /* What heads a line of a list, or a part of it. */
  { "△1 NICK 2 X 1 X 1 MM\n△2 NICK 3 X 1 X 1 MM", EM_UNITS_METRIC, "2\t2\tlength\t3\tmm" },
  { "POS 2 = CORNER CHIPPED, 5 MM LG, 1.5 MM X 1 MM", EM_UNITS_METRIC, "!1\t1\tleg_a\t2\tmm" },
  { "B … CORNER A1/A2 GONE: 1 MM LG, 0.6 MM X 0.5 MM", EM_UNITS_METRIC, "1\t1\tleg_a\t0.6\tmm" },
  { "B … CORNER A1/A2 GONE: 1 MM LG, 0.6 MM X 0.5 MM", EM_UNITS_METRIC, "!1\t0\tbase\ta2\t" },
  { "3 dents in cavity: 1) 2 mm dia 0.5 dp 2) 3 mm dia 0.6 dp", EM_UNITS_METRIC, "1\t2\tdiameter\t3\tmm" },
  { "A) gouge 30x2x0.8 mm deep B) gouge 14x1.5x0.5 mm deep", EM_UNITS_METRIC, "1\t2\tlength\t14\tmm" },
  { "RADIUS AT FLAG 6 IS WORN .045, LG .66", EM_UNITS_INCH, "1\t1\tradius\t1.143\tmm" },
  { "Core insert 1: chip, 4 mm, 1 mm by 1 mm", EM_UNITS_METRIC, "1\t1\tlength\t4\tmm" },
  { "nozzle seat R20 washed out, add 0.5 mm, mouth ⌀30", EM_UNITS_METRIC, "1\t1\tradius\t20\tmm" },
  { "Trennkante am Einsatz 3 aufschweißen, 25 mm lang, 1 x 0,8", EM_UNITS_METRIC, "1\t1\tleg_a\t1\tmm" },
  /* How many parts, told by their numbers or at the head of the sentence; and how many is open. */
  { "cavities 2 and 5: edge worn R0.1 mm, 19 mm long", EM_UNITS_METRIC, "1\t1\tcount\t2\t" },
  { "On two rods the corner is bruised, 2 mm long, 0.5 x 0.5 mm", EM_UNITS_METRIC, "1\t1\tcount\t2\t" },
  { "corners chipped 2 x 1 x 1 mm, three or all eight of them", EM_UNITS_METRIC, "1\t1\tquestion\tcount-unknown\t" },
  /* The place of a thing ends where it is told what it has. */
  { "Face of stripper plate has a score 3\" long .06 wide .02 deep", EM_UNITS_INCH, "1\t1\tkind\tgroove\t" },
  { "slot wall (slot 2.2 wide and 11 deep): 26 mm long, 8 high, 0.25 missing", EM_UNITS_METRIC, "1\t1\tslot_width\t2.2\tmm" },
  { "two stripper rings have a notch in the lip, 2.5 mm long by 0.4 by 0.4", EM_UNITS_METRIC, "1\t1\tcount\t2\t" },
  /* What stays free. */
  { "NICK 2 X 1 X 1 MM\nFIXTURE HOLES STAY OPEN", EM_UNITS_METRIC, "2\t1\tnear\thole\t" },
  { "flat 145 x 15 mm, is 0.25 mm low. leave 2 mm free round the oil hole", EM_UNITS_METRIC, "1\t1\tclearance\t2\tmm" },
  { "NICK 2 X 1 X 1 MM\nGRIND — BY US", EM_UNITS_METRIC, "2\t0\tfinish\tcustomer\t" },
  /* So thin that it is what to add; how high it shall be is no width. */
  { "want .020 on the end face ⌀.5", EM_UNITS_INCH, "1\t1\tthickness\t0.508\tmm" },
  { "FACE 1.00 X .40: BUILD TO .885 OVERALL HT", EM_UNITS_INCH, "1\t1\twidth\t10.16\tmm" },
  { "needs 0.1 mm on the bore, 12 mm dia, 20 deep", EM_UNITS_METRIC, "1\t1\tquestion\tside-or-diameter\t" },
  /* Two lengths of two cracks: neither is a width. What lies near tells itself how near. */
  { "two cracks from the corner: 8 mm and 5 mm long, 2 mm deep each", EM_UNITS_METRIC, "!1\t1\tgap\t8\tmm" },
  { "hole 3/4 dia x 1 deep, fill. next to 1/2 waterline (.2 away)", EM_UNITS_INCH, "1\t1\tclearance\t5.08\tmm" },
  { "Taper seat: big end 10, small end 8, depth 6, build .4 per side", EM_UNITS_METRIC, "1\t1\tquestion\tinch-or-mm\t" },
  { "wedge face galled, 60x25 mm, needs 0.3 (2 wedges)", EM_UNITS_METRIC, "1\t1\tcount\t2\t" },
  { "On cavity two the shut-off edge is chipped, 6 mm (1.2 x 0.8)", EM_UNITS_METRIC, "!1\t1\tcount\t2\t" },
  { "FACE 2 X 1, ADD .030. CUST. TO RECUT.", EM_UNITS_INCH, "1\t0\tfinish\tcustomer\t" },
  { "Nozzle tip orifice worn from .060 to .068, .25 land", EM_UNITS_INCH, "1\t1\tworn\t1.7272\tmm" },
  { "Formkern Ø18,00 verschlissen auf 17,85 über 25 mm. 4 Kerne. 1.2379", EM_UNITS_METRIC, "1\t1\tcount\t4\t" },
  { "Fläche neben der Narbung, Abstand 2 mm: 3 Lunker Ø0,8 x 0,5 tief", EM_UNITS_METRIC, "1\t1\tcount\t3\t" },
  { "Führungssäule Ø30 Riefen, 0,1 pro Seite auf 60 mm", EM_UNITS_METRIC, "1\t1\tkind\tpin\t" },
  { "Pared lateral de la ranura (4 mm de ancho, 18 de profundidad): 25 largo x 10 alto, aportar 0,2", EM_UNITS_METRIC,
    "1\t1\tslot_depth\t18\tmm" },
  { "Die #2 orifice plate - lands washed out at 8 holes. Hole dia .125 worn to .132 x .25 land length.", EM_UNITS_INCH, "1\t1\tcount\t8\t" },
  { "weld 2 dowel holes closed (dia 8 x 24 mm)", EM_UNITS_METRIC, "1\t1\tkind\trecess\t" },
  { "⌀8 TO BE CLOSED 0.15 PER SIDE, 20 mm deep", EM_UNITS_METRIC, "1\t1\tkind\tbore\t" },
  { "Damaged thread core: top diameter 26.8 mm now 26.5, 10 long", EM_UNITS_METRIC, "1\t1\tkind\tpin\t" },
  { "heat checks on 40x30 mm area", EM_UNITS_METRIC, "!1\t1\tdepth\t30\tmm" },
  { "top of boss ø12 — low .3, weld", EM_UNITS_METRIC, "1\t1\tquestion\tinch-or-mm\t" },
  /* In short forms each line or part tells the next what it is of. */
  { "Damage: dropped - corner dented. Size 4 x 1.5 x 1 mm", EM_UNITS_METRIC, "1\t1\tleg_a\t1.5\tmm" },
  { "Area: gate land\nProblem: washed .010, area .5 x .25", EM_UNITS_INCH, "2\t1\tthickness\t0.254\tmm" },
  { "Build up pin .0025 per side: ⌀.250 x 1.00 lg.", EM_UNITS_INCH, "1\t1\tbuild\t0.0635\tmm" },
  { "Hub seal land: OD 1.25, ID 1.00, low .008. Add weld.", EM_UNITS_INCH, "1\t1\tkind\tface\t" },
  { "Lip of coathanger die nicked: .10 long, .03 into land, .05 into lip face.", EM_UNITS_INCH, "1\t1\tleg_b\t1.27\tmm" },
  { "Rebuild (2) missing corners of slide, .100 cube", EM_UNITS_INCH, "!1\t0\tbase\tc17200\t" },
  { "pit .04 dia x .02 dp, CuBe insert", EM_UNITS_INCH, "1\t0\tbase\tc17200\t" },
  { "Weld lip: 12\" long X 1/16 wide X .010 thk both lips", EM_UNITS_INCH, "1\t1\tkind\tface\t" },
  { "Core pin holes on \"B\" plate, six of them, .201 reamer falls thru, shd be .1995. 1 inch plate.", EM_UNITS_INCH, "1\t1\tcount\t6\t" },
  { "angle face 18x25 mm needs 0.3", EM_UNITS_METRIC, "1\t1\twidth\t18\tmm" },
  { "ITEM | QTY | DESCRIPTION | L | W | D\n1 | 1 | Pocket fill | 12 | 8 | 3\n3 | 2 | Face low | 20 | 10 | 0.2", EM_UNITS_METRIC,
    "3\t2\tthickness\t0.2\tmm" },
  { "Wir möchten einen Damm 30x5x1,2 auf die Bügelzone", EM_UNITS_METRIC, "1\t1\tlabel\tBügelzone\t" },
  { "Radius 0.5 am Einlauf ausgewaschen auf R 1,2. Länge 18", EM_UNITS_METRIC, "1\t1\tradius_to\t0.5\tmm" },
  /* A round face with a width, or with two diameters, is a ring: π × 40 = 125.7; π × 56 = 175.9. */
  { "land ⌀40 mm, 2 wide, low 0.2", EM_UNITS_METRIC, "1\t1\tlength\t125.7\tmm" },
  { "SEAL LAND ⌀60 OD ⌀52 ID LOW 0.1 MM", EM_UNITS_METRIC, "1\t1\tlength\t175.9\tmm" },
  { "SEAL LAND ⌀60 OD ⌀52 ID LOW 0.1 MM", EM_UNITS_METRIC, "1\t1\twidth\t4\tmm" },
  { "face ⌀25 mm, add 0.4 mm", EM_UNITS_METRIC, "1\t1\tform\tdisc\t" },
  { "⌵ ⌀10 MM X 90° TO BE FILLED, 2X", EM_UNITS_METRIC, "1\t1\tdepth\t5\tmm" },
  /* Days are what an office looks up. */
  { "nick 2 x 1 x 1 mm. Comes 12 May", EM_UNITS_METRIC, "1\t0\tunused\t12 May\t" },
  { "nick 2 x 1 x 1 mm\ndate: 19/06", EM_UNITS_METRIC, "2\t0\tunused\tdate: 19/06\t" },
  { "CORE TIP, ROUND FACE ⌀18 MM, RAISE 0.7 MM", EM_UNITS_METRIC, "1\t1\tform\tdisc\t" },
  { "STRIPPER PLATE, BORE 12 H7 WASHED TO 12.09, 28 MM LG, 2 PLCS", EM_UNITS_METRIC, "1\t1\tdiameter\t12\tmm" },
  { "as told on 3 May: guide bore 40 mm H7, measured 40.11 mm, 50 mm long", EM_UNITS_METRIC, "1\t1\tdiameter\t40\tmm" },
  { "SPLIT LINE EDGE WORN. 7 INCH LONG, 15 THOU RADIUS. SAME ON THE MATING HALF.", EM_UNITS_INCH, "1\t1\tcount\t2\t" },
  { "Kernspitze abgebrochen: Rippe 0,8 mm dick, 15 mm lang, fehlen 1,5 mm oben", EM_UNITS_METRIC, "1\t1\tkind\trib\t" },
  { "SHIM SEAT LOW .004, 1.125 X .625", EM_UNITS_INCH, "1\t1\tkind\tface\t" },
  { "Land on die lip has to end up 5.2 mm high. It is 90 mm long and 1.5 mm wide.", EM_UNITS_METRIC, "!1\t1\tthickness\t5.2\tmm" },
  { "Agujero roscado cerca, dejar 2 mm. Muesca 3 x 1 x 1 mm", EM_UNITS_METRIC, "!1\t0\tstock\t2\tmm" },
  { "Dam 25 x 5 x 3 mm high, ends tapered", EM_UNITS_METRIC, "1\t1\tends\ttapered\t" },
  { "inner edge of flange ID 42 mm, R0.3 mm", EM_UNITS_METRIC, "1\t1\tdiameter\t42\tmm" },
  { "bore threads damaged M16x1.5, fill, diam 18 mm, 20 deep", EM_UNITS_METRIC, "!1\t1\tlength\t1.5\tmm" },
  { "Face 80 x 25 mm, add 0.3. On core scratch 25 mm long, 1 wide, 0.4 deep.", EM_UNITS_METRIC, "1\t2\tkind\tgroove\t" },
  { "nick 2 x 1 x 1 mm. Back by the 14th.", EM_UNITS_METRIC, "1\t0\tunused\t14th\t" },
  /* What counts: per part, in words, of the tool, told of the repair before. */
  { "4 cavities, 2 chips in each: 6 mm long, 0.4 x 0.5", EM_UNITS_METRIC, "1\t1\tcount\t8\t" },
  { "edge gone round R0.1 mm, length 15 mm, qty sixteen", EM_UNITS_METRIC, "1\t1\tcount\t16\t" },
  { "two of the runner corners got whacked, each 6 mm long and 1 mm both ways", EM_UNITS_METRIC, "1\t1\tcount\t2\t" },
  { "Strip 110 mm long and 5 mm wide, 0.4 mm more steel, both sides of the mold.", EM_UNITS_METRIC, "1\t1\tcount\t2\t" },
  { "Rib 0.8 mm thick, 35 mm long, burned off by 1.1 mm. Two ribs, identical.", EM_UNITS_METRIC, "1\t1\tcount\t2\t" },
  { "nick 3 mm long, 1 x 1. There are two bushes with the same nick.", EM_UNITS_METRIC, "1\t1\tcount\t2\t" },
  /* What became of a thing is no other thing. */
  { "land peened, 50 mm long x 2 mm wide, needs 0.4", EM_UNITS_METRIC, "1\t1\tkind\tface\t" },
  { "VALVE SEAT, CONE ⌀16 MM TO ⌀10 MM, 3 MM DEEP, WASHED OUT, BUILD 0.4", EM_UNITS_METRIC, "1\t1\tthickness\t0.4\tmm" },
  { "Pocket was sunk too deep: 14 x 9 mm, floor has to come up 0.35 mm.", EM_UNITS_METRIC, "1\t1\tkind\tface\t" },
  { "seat: sphere radius 10 mm, 5 mm deep, 0.5 mm on the seat", EM_UNITS_METRIC, "1\t1\tthickness\t0.5\tmm" },
  { "Ecke ausgebrochen, 3 mm lang, beidseitig 0,8 mm", EM_UNITS_METRIC, "1\t1\tleg_b\t0.8\tmm" },
  { "ribs: 0.9 mm thk, 33 lg, tip down 0.35", EM_UNITS_METRIC, "1\t1\tcoat\t0.35\tmm" },
  { "edge worn R0.2 at one end and R0.5 at the other, 26 mm long", EM_UNITS_METRIC, "1\t1\tquestion\ttwo-values\t" },
  { "crack 24 mm long 3 mm deep, next to a hole, 6 mm off.", EM_UNITS_METRIC, "1\t1\tclearance\t6\tmm" },
  /* What the sizes tell themselves is not asked. */
  { "a nick 1.5 mm long .4 x .4", EM_UNITS_METRIC, "!1\t1\tquestion\tinch-or-mm\t" },
  { "bushing bored .004 too big. want .6250 have .6290 for 2\" of length", EM_UNITS_INCH, "!1\t1\tquestion\tside-or-diameter\t" },
  /* Lists within a line, a thing named twice, what is told of it afterwards. */
  { "The lip has 3 nicks: #1 is 2 mm long 0.5 deep, #2 3 mm long 0.8 deep", EM_UNITS_METRIC, "1\t2\tlength\t3\tmm" },
  { "Sidewall of the slot needs 0.2 mm. Wall length 55 mm, wall height 10 mm.", EM_UNITS_METRIC, "1\t1\theight\t10\tmm" },
  { "We drilled 3 holes dia 5 mm too far left, depth 18. Fill please.", EM_UNITS_METRIC, "1\t1\tkind\trecess\t" },
  { "heel face 57 x 19 mm down 0.15", EM_UNITS_METRIC, "1\t1\tthickness\t0.15\tmm" },
  { "Radius on sealing edge should be 0.1 max, now 0.5, edge is 280 mm long", EM_UNITS_METRIC, "1\t1\tradius\t0.5\tmm" },
  { "sub gate hole eroded from 1.2 to 1.6 mm, 4 mm long", EM_UNITS_METRIC, "1\t1\tworn\t1.6\tmm" },
  { "crack 35 mm long and 4 mm deep, bevel 60 deg, weld", EM_UNITS_METRIC, "1\t1\tangle\t60\tdeg" },
  { "Nozzle seat spherical radius 19 mm is washed out 0.3 deep, mouth is 12 mm dia.", EM_UNITS_METRIC, "1\t1\tthickness\t0.3\tmm" },
  { "gouge 30 mm long x 0.5 wide x 0.3 deep. Blend & polish by us.", EM_UNITS_METRIC, "!1\t0\tfinish\tshop\t" },
  { "Runner edge washed R0.8 mm x 23 long (4 per plate).", EM_UNITS_METRIC, "1\t1\tcount\t4\t" },
  { "Auswerferbohrungen 6 x Ø3,06 → Ø3,00, Tiefe 10", EM_UNITS_METRIC, "1\t1\tcount\t6\t" },
  { "Kern Ø 14,98 soll 15,02, Länge 25", EM_UNITS_METRIC, "1\t1\tworn\t14.98\tmm" },
  { "Cavity wall (draft 1°): scratch 18 mm long, 1.2 wide, 0.4 deep", EM_UNITS_METRIC, "!1\t1\tangle\t1\tdeg" },
  { "Please build up inside of ring 60 mm ID by 0.15 per side, height 12", EM_UNITS_METRIC, "1\t1\tkind\tbore\t" },
  { "Chip, 4 x 2 x 1.5 mm, and 2 more of 2 x 1 x 1 mm next to it", EM_UNITS_METRIC, "1\t2\tcount\t2\t" },
  { "edge nick 3 x 1 x 1 mm on cav 4, also cav 6 same size", EM_UNITS_METRIC, "1\t1\tcount\t2\t" },
  { "land 20 mm long, 1.5 wide, dented, 0.2 mm", EM_UNITS_METRIC, "1\t1\tthickness\t0.2\tmm" },
  /* As long, as wide and as deep (common practice, no source). */
  { "gouge 30 x 2 x 0.5 mm", EM_UNITS_METRIC, "1\t1\tgap\t2\tmm" },
  /* Threads (ASME B1.1, ISO 261) measure nothing; a metre is one. */
  { "Weld shut 2 5/16-18 tapped holes, 3/4 deep", EM_UNITS_INCH, "1\t1\tcount\t2\t" },
  { "Weld shut 6 #10-32 holes, 1/2 deep", EM_UNITS_INCH, "1\t1\tcount\t6\t" },
  { "8 M6 holes dia 5 mm, 12 deep, fill", EM_UNITS_METRIC, "1\t1\tcount\t8\t" },
  { "dowel dia 10 m6 worn to 9.97, 12 long", EM_UNITS_METRIC, "1\t1\tdiameter\t10\tmm" },
  { "cutting edge 2.2 m total length, R0.3 mm", EM_UNITS_METRIC, "1\t1\tlength\t2200\tmm" },
  /* No nozzle seat is 30 inches wide. */
  { "Nozzle seat ⌀30 / ⌀18, eroded .008\"", EM_UNITS_METRIC, "1\t1\tquestion\tinch-or-mm\t" },
  { "Thread insert damaged, no weld possible? nick 3 x 1 x 1 mm", EM_UNITS_METRIC, "!1\t0\trefuse\tpossible?\t" },
  { "Face low 0.35 mm, 16 x 9 mm. Also radius next to it R2 should be R1.5, 16 long.", EM_UNITS_METRIC, "1\t2\tradius_to\t1.5\tmm" },
  { "Kante R0,2 verschlissen auf ca. R0,5, 88 mm lang", EM_UNITS_METRIC, "1\t1\tradius\t0.5\tmm" },
  { "Steg zwischen 2 Bohrungen gerissen, 7 mm lang, 2 tief", EM_UNITS_METRIC, "!1\t1\tcount\t2\t" },
  { "4 bushings, ID 1.0015, need .9995, 1.5 lg each, 4140 hardened", EM_UNITS_INCH, "1\t0\tbase\t4140\t" },
  { "knife edge cutter ring, ø120 mm, full circumference, edge rounded to R0.15", EM_UNITS_METRIC, "1\t1\tdiameter\t120\tmm" },
  /* Tables as spreadsheets write and paste them: what is empty shifts nothing. */
  { "pos;damage;qty;length;width;depth;remarks\n1;crack;1;25 mm;;3;grind out first\n2;edge nick;2;3.0;1.0;0.5;", EM_UNITS_METRIC,
    "2\t1\tdepth\t3\tmm" },
  { "Item\tFeature\tQty\tL\tW\tD\n1\tCrack\t1\t25 mm\t\t3\n2\tNick on edge\t3\t4\t1\t1", EM_UNITS_METRIC, "3\t2\tcount\t3\t" },
  { "| pos | damage | qty | length | width | depth |\n| 1 | crack | 1 | 25 mm | | 3 |", EM_UNITS_METRIC, "2\t1\tdepth\t3\tmm" },
  /* Forms, line by line. */
  { "FEATURE: LEADER PIN BORE\nSIZE: 31.75 MM\nNOW: 31.85\nDEPTH: 50\nQTY: 4", EM_UNITS_METRIC, "3\t1\tworn\t31.85\tmm" },
  { "What: rib\nThickness: 1.2 mm\nLength: 25\nMissing: 0.8", EM_UNITS_METRIC, "4\t1\tcoat\t0.8\tmm" },
  { "1/8 wide slot wall chewed up over 1-1/4 length, 3/8 deep slot, .010 needed", EM_UNITS_INCH, "1\t1\tslot_width\t3.175\tmm" },
  { "1/8 wide slot wall chewed up over 1-1/4 length, 3/8 deep slot, .010 needed", EM_UNITS_INCH, "1\t1\tthickness\t0.254\tmm" },
  { "our machinist plunged the cutter: hole in the parting surface dia 12 mm, 3.5 deep, flat bottom", EM_UNITS_METRIC, "1\t1\tkind\trecess\t" },
  { "O-ring land pitted, dia 45 mm OD, 39 ID, add 0.5", EM_UNITS_METRIC, "1\t1\tkind\tface\t" },
  { "Pilot should be 2.4995, is 2.493, .875 wide. Weld & grind back. 4140 HT", EM_UNITS_INCH, "1\t0\tbase\t4140\t" },
  { "trim edge of die insert dull, 14 inches of perimeter, .015 radius now, 1.2379 @ 60", EM_UNITS_INCH, "1\t0\thardness\t60\tHRC" },
  { "12-off core tips, broken off 2 mm, tip dia 1.5", EM_UNITS_METRIC, "1\t1\tcount\t12\t" },
  { "Wedge face 60 x 25 mm build up from 0 to 0.6 mm", EM_UNITS_METRIC, "!1\t1\tthickness\t0\tmm" },
  { "pinch off worn, 180 mm long, build up 0.5, land is 1 mm wide", EM_UNITS_METRIC, "1\t1\tkind\tface\t" },
  { "wall undersize by five thou, slot is 6 mm wide and 22 deep, wall 40 long x 18 high", EM_UNITS_METRIC, "!1\t1\tquestion\tinch-or-mm\t" },
  { "Tauchkante beidseitig verrundet (R0,2, je 80 mm lang)", EM_UNITS_METRIC, "1\t1\tcount\t2\t" },
  /* Several, and how many is not told. */
  { "EJECTOR HOLES EGGED OUT, SHOULD BE 5 MM, MEASURE 5.2, DEPTH 15", EM_UNITS_METRIC, "1\t1\tquestion\tcount-unknown\t" },
  { "Edges rounded R0.3 mm, 20 long", EM_UNITS_METRIC, "!1\t1\tquestion\tcount-unknown\t" },
  { "reamed hole s/b 11.11 mm, it's 11.21 now, go in 16. got 3 like that", EM_UNITS_METRIC, "1\t1\tcount\t3\t" },
  { "gate on cav 5 washed into a pit 2 mm dia 0.8 deep", EM_UNITS_METRIC, "!1\t1\tcount\t5\t" },
  { "Sidewall of core wore 0.15 mm at both sides, wall 25 long 9 high", EM_UNITS_METRIC, "1\t1\tcount\t2\t" },
  { "A) FACE 42 X 16 MM, BUILD 0.6\nZONE C: NOT TO BE WELDED", EM_UNITS_METRIC, "2\t0\trefuse\tZONE C\t" },
  { "NO WELD PERMITTED ON PARTING LINE VENTS", EM_UNITS_METRIC, "1\t0\trefuse\tPARTING LINE VENTS\t" },
  { "Kühlkanal durchgebrochen: Loch Ø2 mm, 3 mm tief", EM_UNITS_METRIC, "1\t1\tkind\trecess\t" },
  { "SIDE WALL OF SHUTOFF POCKET WORN 0.15 MM, 38 LG X 10 HI", EM_UNITS_METRIC, "1\t1\tkind\tsidewall\t" },
  { "Slot for the blade: one wall eroded 0.2 mm, wall 28 long 6 high", EM_UNITS_METRIC, "1\t1\tkind\tsidewall\t" },
  { "Broken T-slot wall: 38 mm long, 12 high, 1.5 eaten off.", EM_UNITS_METRIC, "1\t1\tlength\t38\tmm" },
  { "rework of insert 7 per drawing 41-0067, chipped edge, 2.5 mm long, 0.8 mm on each face", EM_UNITS_METRIC, "1\t1\tleg_a\t0.8\tmm" },
  { "REPAIR AREAS ONLY AS MARKED.\nZONE A: CHIP 2 X 1 X 1 MM", EM_UNITS_METRIC, "2\t1\tkind\tedge-nick\t" },
  { "NICK 1 X 0.3 X 0.3 MM, QTY 16 CAVITIES ALL SAME.", EM_UNITS_METRIC, "1\t1\tcount\t16\t" },
  { "land 20 mm x 1.5 mm, put on 0.6 mm. Do not fill the vent slots.", EM_UNITS_METRIC, "1\t0\trefuse\tvent slots\t" },
  { "The hole in the middle, do not fill.", EM_UNITS_METRIC, "1\t0\trefuse\thole in the middle\t" },
  { "Circular edge rounded over 120 deg of arc, R0.4 mm, dia 28", EM_UNITS_METRIC, "!1\t1\tangle\t120\tdeg" },
  { "upper lip edge R0.1 mm > R0.4 over 300 mm", EM_UNITS_METRIC, "1\t1\tradius\t0.4\tmm" },
  { "wall of cam track, 1 side, 95 mm, 0.15 per side, height of wall 12", EM_UNITS_METRIC, "1\t1\tthickness\t0.15\tmm" },
  /* As it is told over the telephone. */
  { "rib's forty thou thick, inch long, short by thirty thou", EM_UNITS_METRIC, "1\t1\tlength\t25.4\tmm" },
  { "bore three eighths, half inch deep, two thou per side, six of em", EM_UNITS_METRIC, "1\t1\tdiameter\t9.525\tmm" },
  { "P twenty, thirty Rockwell", EM_UNITS_METRIC, "1\t0\tbase\tp20\t" },
  /* Names, and hardness told in words. */
  { "press 14 is down again, ring face 90 mm dia and sits low about 0.2 mm", EM_UNITS_METRIC, "1\t1\tthickness\t0.2\tmm" },
  { "steel at fifty two Rockwell. nick 3 mm long 1 x 1", EM_UNITS_METRIC, "1\t0\thardness\t52\tHRC" },
  { "Ref: WO 77015", EM_UNITS_METRIC, "1\t0\treference\tWO 77015\t" },
  { "LASER-MARKED NUMBER: DO NOT WELD", EM_UNITS_METRIC, "1\t0\trefuse\tLASER-MARKED NUMBER\t" },
  { "Danke, Sönke", EM_UNITS_METRIC, "1\t0\tunused\tSönke\t" },
  /* Of how many equal parts the note is, told apart from its repairs. */
  { "CORE PINS (8 PCS)\nTIP CHIPPED 2 X 0.5 X 0.5 MM", EM_UNITS_METRIC, "1\t1\tcount\t8\t" },
  { "re: neck rings x 6\nshear edge Ø22 mm, bore side, worn to R0.2", EM_UNITS_METRIC, "1\t1\tcount\t6\t" },
  { "4 OFF LIFTERS, H13\nEDGE CHIP 2 X 1 X 1 MM\nFACE LOW 0.2, 20 X 10", EM_UNITS_METRIC, "1\t0\ttools\t4\t" },
  { "two lifters\nlifter A: chip 2 x 1 x 1 mm\nlifter B: face low 0.2, 20 x 10", EM_UNITS_METRIC, "!1\t1\tcount\t2\t" },
  { "CAVITIES 1-4\nWALL LOST 0.15 MM, 18 LG, 3 HIGH, 1 PER CAVITY", EM_UNITS_METRIC, "2\t1\tcount\t4\t" },
  { "Tool T-9, 24 cav\nedge chip 2 x 1 x 1 mm at gate", EM_UNITS_METRIC, "!1\t1\tcount\t24\t" },
  { "LAND LOW .003, .375 X .188, 2 PER CAV X 8 CAV", EM_UNITS_INCH, "1\t1\tcount\t16\t" },
  { "BORE 32.4 MM FIN, NOW 32.7, 12 DEEP\n1 PER PLATE, 3 PLATES", EM_UNITS_METRIC, "2\t1\tcount\t3\t" },
  { "CHIP 3 X 1 X 1 MM\nFACE LOW 0.2, 20 X 10\nTYP 4 CAVS EA ITEM", EM_UNITS_METRIC, "3\t1\tcount\t4\t" },
  { "CHIP 3 X 1 X 1 MM\nFACE LOW 0.2, 20 X 10\nTYP 4 CAVS EA ITEM", EM_UNITS_METRIC, "3\t2\tcount\t4\t" },
  { "CARA Ø8 MM BAJA 0,2. FILO REDONDEADO R0,2, Ø5. 8 CAMISAS.", EM_UNITS_METRIC, "1\t1\tcount\t8\t" },
  /* What the words beside a size, or its own name, say against another one. */
  { "LEAVE .003/.005 GRIND STOCK", EM_UNITS_INCH, "1\t0\tstock\t0.1016\tmm" },
  { "dent in the flat, .15 x .08 oval, .015 deep", EM_UNITS_INCH, "1\t1\tform\tellipsoid\t" },
  { "SEAT SPHERICAL R.750, DIA .900 AT FACE, HAMMERED\nRECOAT .020 EVEN", EM_UNITS_INCH, "2\t1\tthickness\t0.508\tmm" },
  { "BORE WORN .0025 PER SIDE, FIN DIA .8125, 1.06 DEEP", EM_UNITS_INCH, "1\t1\tdiameter\t20.6375\tmm" },
  { "rib 0.05 thick by 5/8 long broke off .100, build back up", EM_UNITS_INCH, "1\t1\tcoat\t2.54\tmm" },
  { "WELD CRACK, 1.12 LG X .090 DP, V-GROOVE .100 WIDE", EM_UNITS_INCH, "1\t1\tgap\t2.54\tmm" },
  { "edge worn .03 R 1.75 long", EM_UNITS_INCH, "1\t1\tradius\t0.762\tmm" },
  { "Corner hammered, R.03, 1.75 long, leave R.005", EM_UNITS_INCH, "1\t1\tkind\tworn-corner\t" },
  /* Tables as they are pasted and typed, and the numbers of lists. */
  { "Feature | nominal | actual | depth\nBore | 12.00 | 12.15 | 20 mm", EM_UNITS_METRIC, "2\t1\tworn\t12.15\tmm" },
  { "Merkmal\tSoll\tIst\tTiefe\nBohrung\t12,00\t12,15\t20", EM_UNITS_METRIC, "2\t1\tdiameter\t12\tmm" },
  { "Pos.\tBezeichnung\tSoll\tIst\tTiefe\tStk\n1\tBohrung\t12,00\t12,15\t20\t2", EM_UNITS_METRIC, "2\t1\tcount\t2\t" },
  { "Item / Damage / Length / Width / Depth\n1 / crack / 12 mm / 0.3 / 0.5", EM_UNITS_METRIC, "2\t1\tgap\t0.3\tmm" },
  { "Char. / nominal / actual (inch)\nbore dia / .7500 / .7535 - depth 1.00", EM_UNITS_METRIC, "2\t1\tdiameter\t19.05\tmm" },
  { "Char. / nominal / actual (inch)\nbore dia / .7500 / .7535 - depth 1.00", EM_UNITS_METRIC, "1\t0\tunits\tin\t" },
  { "Char. / nominal / actual\nbore dia / .7500 / .7535\npin dia / .3125 / .3125 - accept", EM_UNITS_INCH, "!3\t2\tkind\tpin\t" },
  { "| # | Damage | L | W | D | Qty |\n|---|---|---|---|---|---|\n| 1 | Crack | 12 mm | 0.3 | 0.5 | 2 |", EM_UNITS_METRIC, "!3\t0\tunused\t1\t" },
  { "Nr | Schaden | L | B | T\n1 | Kratzer Dichtfläche | 26 | 0,4 | 0,2", EM_UNITS_METRIC, "2\t1\tgap\t0.4\tmm" },
  { "1/ nick 3 x 1 x 1 mm\n2/ crack 5 long 1 deep", EM_UNITS_METRIC, "!2\t0\tunused\t2\t" },
  { "Position: 1 Schaden: Riss Länge: 12 mm Tiefe: 1 mm", EM_UNITS_METRIC, "!1\t1\tgap\t1\tmm" },
  /* What is none. */
  { "One bore 12 mm is now 12.1, 25 deep. Please fill it so that we can bore and hone here.", EM_UNITS_METRIC, "!1\t2\tkind\trecess\t" },
  { "edge round the button (dia 20 mm) rounded to R0.5\nTwelve molds, all the same.", EM_UNITS_METRIC, "!2\t2\tkind\tworn-corner\t" },
  { "PIN 8 MM WORN TO 7.9, 20 LG\nPIN HEAD 12 DIA X 3 HT NO CHG", EM_UNITS_METRIC, "!2\t2\tkind\tpin\t" },
  { "SURFACE PLATE LOW 0.3 MM", EM_UNITS_METRIC, "1\t1\tquestion\twhich-face\t" },
  /* Tenths and hundredths of a millimetre, as they are said; what is theirs in other languages. */
  { "la arista comida, unas 3 décimas de radio en 4 cm de largo", EM_UNITS_METRIC, "1\t1\tradius\t0.3\tmm" },
  { "Fläche drei Zehntel zu tief, 30 x 15 mm", EM_UNITS_METRIC, "1\t1\tthickness\t0.3\tmm" },
  { "rayures, lg 25 mm, prof. 3 centièmes", EM_UNITS_METRIC, "1\t1\tdepth\t0.03\tmm" },
  { "nervure ép. 1,5 lg 30, à recharger de 0,8", EM_UNITS_METRIC, "1\t1\tthickness\t1.5\tmm" },
  { "ARISTA SALIDA: R0,2 EN 60 MM, ÁNGULO 75°", EM_UNITS_METRIC, "1\t1\tradius\t0.2\tmm" },
  { "edge worn R0.2 in 60 mm", EM_UNITS_METRIC, "1\t1\tradius\t0.2\tmm" },
  { "LIJADO FINAL A CARGO DEL CLIENTE", EM_UNITS_METRIC, "1\t0\tfinish\tcustomer\t" },
  /* Rows under a heading that has no size. */
  { "PITS IN CAVITY\nØ1 MM X 0.5 DEEP - 4 PCS\nØ2.5 X 1.2 DEEP - 2 PCS", EM_UNITS_METRIC, "3\t2\tdiameter\t2.5\tmm" },
  { "PITS IN CAVITY\nØ1 MM X 0.5 DEEP - 4 PCS\nØ2.5 X 1.2 DEEP - 2 PCS", EM_UNITS_METRIC, "3\t2\tcount\t2\t" },
  { "FLAT ON LIFTER WORN .006", EM_UNITS_INCH, "1\t1\tquestion\twhich-face\t" },
  /* Tools in other words, counts told aside, and what is left over flush. */
  { "Wir haben zwei baugleiche Blasformen.\nRiss 5 lang, 1 tief", EM_UNITS_METRIC, "1\t0\ttools\t2\t" },
  { "Nombre de moules : 2\nfissure 5 mm de long, prof 1", EM_UNITS_METRIC, "1\t0\ttools\t2\t" },
  { "insert lot of 3 (same repair all three)\ncrack 5 mm long, 1 deep", EM_UNITS_METRIC, "1\t1\tcount\t3\t" },
  { "PIN 6 MM DIA WORN, BUILD .1 PER SIDE X 9 LG, (6) PINS, H13", EM_UNITS_METRIC, "1\t1\tcount\t6\t" },
  { "PIN 6 MM DIA WORN, BUILD .1 PER SIDE X 9 LG, (6) PINS, H13", EM_UNITS_METRIC, "!1\t2\tkind\tpin\t" },
  { "Two nicks: 4 x 1 x 1 mm and 6 x 1 x 1 mm", EM_UNITS_METRIC, "!1\t1\tcount\t2\t" },
  { "Lands A & B: raise 0.3 mm over 20 x 8", EM_UNITS_METRIC, "1\t1\tcount\t2\t" },
  { "Edge nick 4 x 1 x 1 mm, twice", EM_UNITS_METRIC, "1\t1\tcount\t2\t" },
  { "CRACK 16 MM LONG, 6 DEEP\nWELD FLUSH + 0.3", EM_UNITS_METRIC, "2\t0\tstock\t0.3\tmm" },
  { "SEAL LAND: SCORED, LATHE WILL CLEAN IT UP", EM_UNITS_METRIC, "!1\t1\tkind\tface\t" },
  { "Ölnuten nicht zuschweissen! Schleifen tun wir selber, 0,2 mm stehen lassen.", EM_UNITS_METRIC, "1\t0\trefuse\tÖlnuten\t" },
  { "VENT LAND 30 X 6 MM LOW 0.03\nNEAR Ø3 EJECTOR HOLE, HOLE 2 MM AWAY", EM_UNITS_METRIC, "1\t1\tlength\t30\tmm" },
  { "nick 3 x 1 x 1 mm next to a 6 mm hole", EM_UNITS_METRIC, "!1\t1\tclearance\t6\tmm" },
  { "flank of rib slot, 28 x 9 mm, 0.12 to weld on, slot 2.0 x 9", EM_UNITS_METRIC, "1\t1\tslot_width\t2\tmm" },
  { "edge worn R0.4 mm over 32. Need R0.1 max after.", EM_UNITS_METRIC, "1\t1\tradius_to\t0.1\tmm" },
  { "AUSSENKANTE Ø32 MM VERRUNDET R0,6, UMFANG 120°", EM_UNITS_METRIC, "1\t1\tlength\t33.51\tmm" },
  /* One repair jotted over several points, and other counts. */
  { "- slot 6 mm wide x 22 deep, left flank has gone\n- needs 0.2 put back over 55 long, 14 high", EM_UNITS_METRIC, "2\t1\tthickness\t0.2\tmm" },
  { "- bore in plate 3 is oval\n- should be 12 mm, measures 12.2\n- 20 deep", EM_UNITS_METRIC, "3\t1\tlength\t20\tmm" },
  { "- rib tip broken\n- needs 0.5 mm put back over 25, rib is 1.2 thick", EM_UNITS_METRIC, "2\t1\tcoat\t0.5\tmm" },
  { "- crack 20 mm long, 2 deep\n- nick 3 x 1 x 1\n- 4 x 1 x 1", EM_UNITS_METRIC, "!3\t2\tlength\t4\tmm" },
  { "Four inserts, and each one has two dings 3 mm long, 1 x 1", EM_UNITS_METRIC, "1\t1\tcount\t8\t" },
  { "seal face is low on all four, 30 x 20 mm, bring it up 0.2", EM_UNITS_METRIC, "1\t1\tcount\t4\t" },
  { "RIB 1.0 MM THK X 22 LG, TIP LOW 0.5, 3 INSERTS", EM_UNITS_METRIC, "1\t1\tcount\t3\t" },
  { "CHIP 2 X 1 X 1 MM\nH13, nitrided 3 times", EM_UNITS_METRIC, "!2\t1\tcount\t3\t" },
  { "Ausbrüche an der Kante, je 3 x 1 x 1 mm", EM_UNITS_METRIC, "1\t1\tquestion\tcount-unknown\t" },
  { "Golpes en la arista de 3 x 1 x 1 mm", EM_UNITS_METRIC, "1\t1\tquestion\tcount-unknown\t" },
  { "HEAT CHECKS AT GATE, 5 MM LONG, 0.6 DEEP", EM_UNITS_METRIC, "1\t1\tquestion\tcount-unknown\t" },
  { "Objet : lèvre de filière film 2,2 m\néclat 3 x 1 x 1 mm", EM_UNITS_METRIC, "!1\t1\tkind\tworn-corner\t" },
  { "PARED: LARGO 1,250 MM\nALTO 40, AÑADIR 0,2", EM_UNITS_METRIC, "1\t1\tquestion\tdecimal-comma\t" },
  { "bore 12,125 mm, now 12,25", EM_UNITS_METRIC, "!1\t1\tquestion\tdecimal-comma\t" },
  { "PINCH EDGE .018 WIDE PEENED DOWN, 4.25 LONG, ADD .040 ON TOP", EM_UNITS_INCH, "1\t1\tkind\trib\t" },
  { "FLANK WORN 120 X 4 MM, ADD 0.1\nCLEARANCE TO OPPOSITE WALL 3 MM", EM_UNITS_METRIC, "2\t1\tclearance\t3\tmm" },
  { "chip .025 x .010 x .012 CAV 6 EDGE", EM_UNITS_INCH, "!1\t1\tcount\t6\t" },
  { "- DAM 1.1 MM HIGH X 5 WIDE X 70 LONG\n- SECOND ONE 0.8 HIGH X 5 WIDE X 38 LONG", EM_UNITS_METRIC, "2\t2\tlength\t38\tmm" },
  { "- DAM 1.1 MM HIGH X 5 WIDE X 70 LONG\n- DAM TO HAVE 10° DRAFT SIDES", EM_UNITS_METRIC, "2\t1\tdraft\t10\tdeg" },
  /* Forms with the place in a line of its own, both hands, and what refers to another point. */
  { "TYPE: NICK\nLOCATION: PL EDGE\nLENGTH: 6 MM\nDEPTH: 0.5\nWIDTH: 0.4", EM_UNITS_METRIC, "3\t1\tlength\t6\tmm" },
  { "Art des Schadens: Ausbruch\nOrt: Trennkante\nLänge: 6 mm\nHöhe: 0,5\nBreite: 0,4", EM_UNITS_METRIC, "!2\t2\tkind\tedge-nick\t" },
  { "Défaut : éclat\nEmplacement : plan de joint\nLongueur : 6 mm\nHauteur : 0,5\nLargeur : 0,4", EM_UNITS_METRIC, "4\t1\tleg_a\t0.5\tmm" },
  { "corner worn R0.5 mm x 30, LH and RH", EM_UNITS_METRIC, "1\t1\tcount\t2\t" },
  { "Ecke links und rechts verrundet R0,5 x 30", EM_UNITS_METRIC, "1\t1\tcount\t2\t" },
  { "nicks on both sides, 3 x 1 x 1 mm each", EM_UNITS_METRIC, "1\t1\tcount\t2\t" },
  { "Kante 1 - Ausbruch 3 x 1 x 1 mm\nKante 2 - i.O.", EM_UNITS_METRIC, "!2\t2\tkind\tworn-corner\t" },
  { "item 1: bore 12 now 12.2 mm, 20 deep\nitem 2: nick 3 x 1 x 1\nitem 3: same as item 1", EM_UNITS_METRIC, "3\t3\tkind\tbore\t" },
  { "1) Riss 20 lang, 2 tief\n2) wie Pos. 1, aber 30 lang\n3) wie Pos. 1", EM_UNITS_METRIC, "1\t3\tlength\t20\tmm" },
  { "a) nick 6 x 1 x 1 mm\nb) face low 0.3, 30 x 20\nc) same as a)", EM_UNITS_METRIC, "3\t3\tkind\tedge-nick\t" },
  { "1. Muesca 6 x 1 x 1 mm\n2. grieta 12 de largo 1 de profundidad\n3. igual que el punto 1", EM_UNITS_METRIC, "3\t3\tkind\tedge-nick\t" },
  /* Told twice and otherwise, and names that count nothing. */
  { "CHIP .03 X .02, LENGTH .08 ON TAG BUT .12 ON SKETCH", EM_UNITS_INCH, "1\t1\tquestion\ttwo-values\t" },
  { "CHIP .03 X .02, LENGTH .08 ON TAG BUT .12 ON SKETCH", EM_UNITS_INCH, "1\t1\tleg_a\t0.762\tmm" },
  { "Riss Länge 12 mm laut Zeichnung, aber 15 laut Skizze, 1 tief", EM_UNITS_METRIC, "1\t1\tquestion\ttwo-values\t" },
  { "fissure 12 ou 15 mm de long, prof 1", EM_UNITS_METRIC, "1\t1\tquestion\ttwo-values\t" },
  { "DET 12 CORE BLADE. BUILD UP TOP .030. BLADE IS .062 X 2.06 LG.", EM_UNITS_INCH, "!1\t1\tcount\t12\t" },
  { "pt.  nom.  meas.  dev.\n1  R.005  R.020  corner rounded, .80 long", EM_UNITS_INCH, "2\t1\tradius\t0.508\tmm" },
  { "Nitriding layer we grind away before.", EM_UNITS_METRIC, "!1\t0\tfinish\tcustomer\t" },
  { "Etagenwerkzeug 2x4-fach", EM_UNITS_METRIC, "!1\t0\ttool_number\t2x4-fach\t" },
  /* Parts by their numbers, and each of several alike. */
  { "EJ PIN HOLES #3, #7 AND #9 WORN, 4.76 MM FIN, NOW 4.85, 19 DP", EM_UNITS_METRIC, "1\t1\tcount\t3\t" },
  { "Kernschieber 1 und 2: Dichtfläche 0,1 abgenutzt, 30 x 12", EM_UNITS_METRIC, "1\t1\tcount\t2\t" },
  { "sur le moule 5521 (2 empreintes) : sur chaque empreinte, arête usée R0,4 sur 35 mm", EM_UNITS_METRIC, "1\t1\tcount\t2\t" },
  { "Cav 1-4: gate land washed, 6 x 3 mm, low 0.2\nface low 0.3, 30 x 20", EM_UNITS_METRIC, "1\t1\tcount\t4\t" },
  { "Cav 1-4: gate land washed, 6 x 3 mm, low 0.2\nface low 0.3, 30 x 20", EM_UNITS_METRIC, "!1\t2\tcount\t4\t" },
  { "RIB #1: 1.2 MM THK X 30 LG, TOP LOW 0.4\nRIB #2: DITTO\nRIB #3: DITTO, 45 LG", EM_UNITS_METRIC, "3\t3\tlength\t45\tmm" },
  { "Slide A: face worn 0.3 over 50 x 12 mm. Slide B the same but 0.4.", EM_UNITS_METRIC, "!1\t2\tquestion\twhich-face\t" },
  { "| Cav | Damage | Size |\n| 1 | nick | 3 x 1 x 1 mm |", EM_UNITS_METRIC, "!2\t0\tunused\t1\t" },
  /* Several told in a row, and numbers of those there are. */
  { "Two nicks on the edge (2 x 0.5 x 0.5 mm and 4 x 1 x 0.5), one scratch 12 long 0.2 deep", EM_UNITS_METRIC, "1\t3\tkind\tgroove\t" },
  { "weld 3 places on shutoff: 10 x 3 x 0.2 mm deep, 6 x 3 x 0.2, 4 x 2 x 0.15", EM_UNITS_METRIC, "1\t2\tlength\t6\tmm" },
  { "CAVITY #1 - WELD EDGE 31 MM LG R.4\nCAVITY #2 - SAME 50 LG\nCAVITY #4 - SAME AS #1", EM_UNITS_METRIC, "1\t3\tlength\t31\tmm" },
  { "Punch B  ø12  worn to 11.85  25 mm long\nDie A  ø10.05  worn to 10.15  12 deep", EM_UNITS_METRIC, "2\t2\tkind\tbore\t" },
  { "3 Stk. Stempel Ø8 auf 7,9 verschlissen, 20 lang; 2 Stk. Buchsen Ø8 auf 8,1, 15 tief", EM_UNITS_METRIC, "1\t1\tcount\t3\t" },
  { "The sealing edge of every cavity (6 cavities) is worn to R0.2 mm over 45", EM_UNITS_METRIC, "1\t1\tcount\t6\t" },
  { "edge worn R0.3 mm, 6 long. There are 16 cores.", EM_UNITS_METRIC, "1\t1\tcount\t16\t" },
  { "tenemos 4 punzones de D2, todos con el filo desportillado: 2 x 0.5 x 0.4 mm", EM_UNITS_METRIC, "1\t1\tcount\t4\t" },
  /* What is said aside of a repair is no other. */
  { "Edge nick 3 x 1 x 1 mm\nLast time the bore cracked after welding, please preheat.", EM_UNITS_METRIC, "!2\t2\tkind\tgroove\t" },
  { "Edge nick 3 x 1 x 1 mm\nRemove the ejector pins before welding.", EM_UNITS_METRIC, "!2\t2\tkind\tpin\t" },
  { "Kantenausbruch 3 x 1 x 1 mm\nNach dem Schweißen auf Risse prüfen.", EM_UNITS_METRIC, "!2\t2\tkind\tgroove\t" },
  { "Kantenausbruch 3 x 1 x 1 mm\nKönnen Sie auch den Riss am Anguss ansehen?", EM_UNITS_METRIC, "!2\t2\tkind\tgroove\t" },
  { "Muesca 3 x 1 x 1 mm\nRevisar que no queden poros ni grietas.", EM_UNITS_METRIC, "!2\t2\tkind\tgroove\t" },
  { "Edge nick 3 x 1 x 1 mm\nJob done before: bore in 2019, face in 2021.", EM_UNITS_METRIC, "!2\t2\tdiameter\t2019\tmm" },
  { "Crack 12 mm long, 1 deep\nCheck for cracks: crack 5 mm long, 0.5 deep", EM_UNITS_METRIC, "2\t2\tkind\tgroove\t" },
  { "MATERIAL 4340 / 38 RC", EM_UNITS_INCH, "1\t0\thardness\t38\tHRC" },
  { "EXIT CORNER WASHED TO R.03, 2.25 LG\nCORNER IS 60° SHARP WHEN NEW", EM_UNITS_INCH, "1\t1\tradius\t0.762\tmm" },
  { "edge worn R1 mm, Ø16, OUTER, 6 OFF", EM_UNITS_METRIC, "1\t1\tside\touter\t" },
  { "LOCATING RING: OD Ø60 MM TURNED 0.3 UNDERSIZE, 8 WIDE", EM_UNITS_METRIC, "1\t1\tbuild\t0.15\tmm" },
  { "FACE 12 X 5 MM, ADD 0.3\nSTOCK ON FACES 0.15", EM_UNITS_METRIC, "2\t0\tstock\t0.15\tmm" },
  { "seal face: scored, 2.5 lg .010 wide .006 deep", EM_UNITS_INCH, "1\t1\tgap\t0.254\tmm" },
  { "DENT IN EDGE 2.5 X 0.8 MM", EM_UNITS_METRIC, "1\t1\tquestion\tsecond-leg\t" },
  { "LIP LAND\n36.0 LG X .50 WIDE\nWORN LOW\nADD .006", EM_UNITS_INCH, "4\t1\tthickness\t0.1524\tmm" },
  /* Once more on the other side, codes of parts, and a part's number before a row. */
  { "am Formeinsatz ist eine Ecke weg (2 x 2 x 1,5 mm), gegenüber nochmal das Gleiche.", EM_UNITS_METRIC, "1\t1\tcount\t2\t" },
  { "Les deux coquilles ont le même défaut : pincement écrasé, 45 mm de long, R0,5.", EM_UNITS_METRIC, "1\t1\tcount\t2\t" },
  { "Core pin (P/N 7731-04): dia 8 mm, worn to 7.91, length 25.", EM_UNITS_METRIC, "1\t1\tdiameter\t8\tmm" },
  { "corner of slide 1 - 3 x 1 x 1 mm", EM_UNITS_METRIC, "1\t1\tlength\t3\tmm" },
  { "chip 3 x 1 x 1 mm, same chip on mirror side (2 total)", EM_UNITS_METRIC, "!1\t0\tunused\t2\t" },
  /* What is said of all that was told. */
  { "a) nick 6 x 1 x 1 mm\nb) crack 20 long 2 deep\nBoth next to texture, keep 2 mm away.", EM_UNITS_METRIC, "3\t1\tclearance\t2\tmm" },
  { "1. Ausbruch 6 x 1 x 1 mm\n2. Riss 20 lang 2 tief\nBeide Stellen schwer zugänglich.", EM_UNITS_METRIC, "3\t1\taccess\trestricted\t" },
  { "1. nick 6 x 1 x 1 mm\n2. crack 20 long 2 deep\nThe crack is near texture, 2 mm", EM_UNITS_METRIC, "!3\t1\tclearance\t2\tmm" },
  { "1. nick 6 x 1 x 1 mm\n2. crack 20 long 2 deep\n2 of each.", EM_UNITS_METRIC, "3\t1\tcount\t2\t" },
  { "1. Ausbruch 6 x 1 x 1 mm\n2. Riss 20 lang 2 tief\nAlles doppelt (linke und rechte Form).", EM_UNITS_METRIC, "3\t1\tcount\t2\t" },
  { "1. éclat 6 x 1 x 1 mm\n2. fissure 20 de long prof 2\nLe tout en double.", EM_UNITS_METRIC, "3\t1\tcount\t2\t" },
  /* Tables and forms: wide gaps part words, a column says where, a box that is not ticked asks for nothing. */
  { "Item  Where       Damage              Size\n1     core top    worn land, low 0.25  18 x 6 mm\n2     cav. edge   chip                 2 x 0.6 x 0.5", EM_UNITS_METRIC,
    "!3\t1\tcount\t2\t" },
  { "| # | where | what | length | width | depth |\n| 1 | lip edge | chip | 3 mm | 0.5 | 0.5 |\n| 2 | choker bar top | land worn | 210 | 8 | 0.15 |", EM_UNITS_METRIC,
    "3\t2\tkind\tface\t" },
  { "[X] CHIP .12 X .04 X .05\n[ ] CRACK\n[X] PIT .05 DIA X .015 DP", EM_UNITS_INCH, "3\t2\tkind\trecess\t" },
  { "LAND LOW .015, 4.50 LG X .250 WIDE\nLAND SITS IN SLOT .300 WIDE X .500 DEEP", EM_UNITS_INCH, "2\t1\tslot_width\t7.62\tmm" },
  { "WELD BOTH ENDS OF SLIDE WHERE EDGE WORN, R.020 X .625", EM_UNITS_INCH, "1\t1\tcount\t2\t" },
  { "pin hole .312 dia is good", EM_UNITS_INCH, "1\t0\tunused\tpin hole .312 dia is good\t" },
  /* "Pos.1": a number behind a point is no inch. */
  { "Pos.1 – Formplatte, Bohrung zuschweißen, Ø12 × 30 tief\nPos.2 – Rippe, 1,5 dick, 40 lang, 0,5 auftragen\nPos.3 – wie Pos.2, aber 25 lang", EM_UNITS_INCH, "2\t2\tthickness\t1.5\tmm" },
  { "Pos.1 – Formplatte, Bohrung zuschweißen, Ø12 × 30 tief\nPos.2 – Rippe, 1,5 dick, 40 lang, 0,5 auftragen\nPos.3 – wie Pos.2, aber 25 lang", EM_UNITS_INCH, "3\t3\tlength\t25\tmm" },
  { "Nr.1: Riss 5 lang, 1 tief\nNr.2: Riss 8 lang, 1 tief", EM_UNITS_METRIC, "2\t2\tlength\t8\tmm" },
  { "FACES C & D 10 X 10 LOW 0.1 MM", EM_UNITS_METRIC, "1\t1\twidth\t10\tmm" },
  /* Forms with leaders, stacked points, damages by number. */
  { "type ........ gouge\nlength ...... 30 mm\nwidth ....... 0.5\ndepth ....... 0.3", EM_UNITS_METRIC, "3\t1\tgap\t0.5\tmm" },
  { "1 Nick\n  L 4 W 1 D 0.5 mm\n2 Crack\n  L 20 D 2", EM_UNITS_METRIC, "2\t1\tleg_b\t0.5\tmm" },
  { "1 Nick\n  L 4 W 1 D 0.5 mm\n2 Crack\n  L 20 D 2", EM_UNITS_METRIC, "4\t2\tlength\t20\tmm" },
  { "Damage 1 (nick): 4 x 1 x 0.5 mm\nDamage 2 (crack): 20 x 2\nDamage 3 (worn bore): 12 / 12.2, 20 deep", EM_UNITS_METRIC, "3\t3\tworn\t12.2\tmm" },
  { "Damage 1 (nick): 4 x 1 x 0.5 mm\nDamage 2 (crack): 20 x 2", EM_UNITS_METRIC, "2\t2\tdepth\t2\tmm" },
  { "MOULD 663 B-SIDE, CORE NICKED", EM_UNITS_METRIC, "1\t0\ttool_number\t663\t" },
  { "MATL 1.2738 / RELEASE ANGLE OK", EM_UNITS_METRIC, "1\t0\tbase\tp20-ni\t" },
  /* All of so many parts. */
  { "Sur les 4 noyaux, pointe usée : Ø6 mm mesuré 5,9, longueur 20.", EM_UNITS_METRIC, "1\t1\tcount\t4\t" },
  { "chips on the 4 cores, 3 x 1 x 1 mm", EM_UNITS_METRIC, "1\t1\tcount\t4\t" },
  { "Alle 8 Kerne an der Spitze abgenutzt, Ø6 auf 5,9, 20 lang.", EM_UNITS_METRIC, "1\t1\tcount\t8\t" },
  { "4 corners x 2 inserts, R0.3 mm worn x 10", EM_UNITS_METRIC, "1\t1\tcount\t8\t" },
  { "Kante oben und unten verrundet, R0,4, je 50 lang", EM_UNITS_METRIC, "1\t1\tcount\t2\t" },
  { "rib between the 2 pockets low 0.3 mm, 1 thick, 20 long", EM_UNITS_METRIC, "1\t1\tkind\trib\t" },
  { "rib between the 2 pockets low 0.3 mm, 1 thick, 20 long", EM_UNITS_METRIC, "!1\t1\tcount\t2\t" },
  /* Metals of parts, and of the rest. */
  { "KERN: KANTE 8 X 0,6 X 0,5 MM AUSGEBROCHEN\nMATRIZE: RISS 5 LANG 0,8 TIEF\nKERN 1.2343 50 HRC, MATRIZE 1.2312", EM_UNITS_METRIC, "3\t2\tbase\tp20-s\t" },
  { "KERN: KANTE 8 X 0,6 X 0,5 MM AUSGEBROCHEN\nMATRIZE: RISS 5 LANG 0,8 TIEF\nKERN 1.2343 50 HRC, MATRIZE 1.2312", EM_UNITS_METRIC, "3\t1\thardness\t50\tHRC" },
  { "INSERT A: FACE 14 X 6 MM LOW 0.15\nINSERT B: FACE 14 X 6 MM LOW 0.20\nINSERT B IS 1.2379 58 HRC, ALL OTHER 1.2343 52 HRC", EM_UNITS_METRIC, "3\t0\tbase\th11\t" },
  /* Commas between numbers of parts, and notes that refer to notes. */
  { "8 cav tool. Cavs 1,3,5 - chip at gate .03 x .02 x .02. Cavs 2,4 - gate R.010 worn .12 lg.", EM_UNITS_INCH, "1\t1\tcount\t3\t" },
  { "Cavs 2,4 - gate R.010 worn .12 lg.", EM_UNITS_INCH, "1\t1\tcount\t2\t" },
  { "Fläche am Schieber 1,5, Länge 20, Breite 10 mm", EM_UNITS_METRIC, "!1\t1\tcount\t2\t" },
  { "NOTE 1: BUILD UP FACE B .020 OVER 2.00 X .75\nNOTE 2: WELD EDGE C R.015 X 2.00\nNOTE 3: SAME AS NOTE 2 AT EDGE E, 1.50 LG", EM_UNITS_INCH, "3\t3\tlength\t38.1\tmm" },
  { "NOTE 1: WELD EDGE C R.015 X 2.00\nNOTE 2: BUILD UP FACE B .020 OVER 2.00 X .75\nNOTE 3: SAME AS NOTE 1 AT EDGE E, 1.50 LG", EM_UNITS_INCH, "1\t3\tradius\t0.381\tmm" },
  { "No.\tLocation\tDefect\tSize (mm)\tPcs\n1\tCore 3\tCrack\t12 x 0.5 deep\t1", EM_UNITS_METRIC, "!2\t1\tcount\t3\t" },
  { "| Stelle | Ist | Soll | Tiefe |\n| Bohrung 1 | 12,15 | 12,00 | 20 |", EM_UNITS_METRIC, "!2\t0\tunused\t1\t" },
  { "RIPPE OBEN ABGENÜTZT, 30 MM LANG, 1,5 DICK, 0,4 FEHLT\nBEIDE FLANKEN 2 TIEF MITSCHWEISSEN", EM_UNITS_METRIC, "2\t1\tdepth\t2\tmm" },
  { "lèvre du joint écrasée sur 1 1/2 po, arrondie à .030, la veut à .010", EM_UNITS_METRIC, "1\t1\tradius_to\t0.254\tmm" },
  { "Measuring report no. 88-12", EM_UNITS_METRIC, "1\t0\treference\t88-12\t" },
  { "HILERA 217", EM_UNITS_METRIC, "1\t0\ttool_number\t217\t" },
  /* Said of the repairs that are named by their number or their noun. */
  { "1) FACE LOW 0.12 MM, AREA 6 X 4\n2) CHIP 1.5 LG X 0.4 X 0.4\nTEXTURED WALL 2 MM FROM ITEM 1", EM_UNITS_METRIC, "3\t1\tclearance\t2\tmm" },
  { "Item 1: core rod, dia 18 mm worn to 17.9, length 55\nItem 2: pits 5 dia x 1 deep\nItem 3: die ring, inner edge dia 75 rounded R0.3\nStock 0.5 on items 1 and 3.", EM_UNITS_METRIC,
    "4\t3\tstock\t0.5\tmm" },
  { "knocked corner, 4 mm long by 1.5 by 1.2. heel face is down 0.3 over 50 by 18. You finish the corner, we grind the face.", EM_UNITS_METRIC, "1\t1\tfinish\tshop\t" },
  { "knocked corner, 4 mm long by 1.5 by 1.2. heel face is down 0.3 over 50 by 18. You finish the corner, we grind the face.", EM_UNITS_METRIC, "1\t2\tfinish\tcustomer\t" },
  { "Shaft is 240 mm long and may not bend", EM_UNITS_METRIC, "!1\t1\tkind\tpin\t" },
  { "shoulder face is low 0.1 mm (outer dia 32)", EM_UNITS_METRIC, "1\t1\tform\tdisc\t" },
  { "sphere seat radius 15.5 mm is hammered in, coat with 0.4 mm, mouth diameter is 18 mm", EM_UNITS_METRIC, "1\t1\tradius\t15.5\tmm" },
  { "welding only with laser please", EM_UNITS_METRIC, "!1\t0\tfinish\tcustomer\t" },
  { "Inspection report 14 March\nitem 2, gate insert: gate hole dia 1.4 mm washed to 1.55", EM_UNITS_METRIC, "!2\t1\tlength\t2\tmm" },
  { "Quetschschneide 0,3 mm zu niedrig, Schneide 2 dick 110 lang", EM_UNITS_METRIC, "1\t1\tkind\trib\t" },
  { "FLAT SEAT ⌀18 MM, 0.15 LOW", EM_UNITS_METRIC, "1\t1\tform\tdisc\t" },
  { "nr | what | size mm | pcs | remark\n30 | side wall of pocket | 33 x 8, +0.2 | 1 | pocket 6 wide, 15 deep", EM_UNITS_INCH, "2\t1\tslot_depth\t15\tmm" },
  { "Einsatz     Fehler                Mass             Bemerkung\nB02         Fläche eingefallen    15x15 / 0,1      Narbung daneben", EM_UNITS_METRIC,
    "2\t1\tthickness\t0.1\tmm" },
  /* Wear told "over" is on the diameter; half of .003 in is 0.0381 mm. */
  { "BORE .375 DIA, WORN .003 OVER, .75 DEEP", EM_UNITS_INCH, "1\t1\tbuild\t0.0381\tmm" },
  { "PAD WORN 0.1 OVER 12 X 8 MM", EM_UNITS_METRIC, "1\t1\tthickness\t0.1\tmm" },
  /* Of how many cavities a die is, is no number of it; what stands behind a refusal and "or" is refused, too. */
  { "EXTRUSION DIE 2-UP, EDGE NICK 2 X 1 X 1 MM", EM_UNITS_METRIC, "!1\t0\ttool_number\t2-UP\t" },
  { "NO WELD ON DOWEL HOLES OR KEYWAY", EM_UNITS_METRIC, "1\t0\trefuse\tKEYWAY\t" },
  { "Edge nick 3 x 1 x 1 mm\nDont touch the thread", EM_UNITS_METRIC, "2\t0\trefuse\tthread\t" },
  { "4 inserts, 2 chips each, 2 x 1 x 1 mm", EM_UNITS_METRIC, "!1\t0\ttools\t4\t" },
  /* A row says that the seat of something is flat. */
  { "WEAR STRIP SEAT 80 X 25 WORN 0.3 MM", EM_UNITS_METRIC, "1\t1\tkind\tface\t" },
  { "1 > pad 7 x 5 built up 0.4 mm\n2 > land 7 x 2 needs 0.3 mm", EM_UNITS_METRIC, "2\t2\tthickness\t0.3\tmm" },
  { "CHIP 5.5 LG, 0.7 HIGH X 0.5 WIDE, BROKEN OUT, MM", EM_UNITS_METRIC, "!1\t2\tkind\tedge-nick\t" },
  { "Side wall 40 long, 9 high, 0.2 must come on, mm", EM_UNITS_METRIC, "1\t1\tthickness\t0.2\tmm" },
  { "Dent 3 dia, 1 deep, mm\nBolt hole below, leave", EM_UNITS_METRIC, "!2\t1\tnear\thole\t" },
  { "NERVURE ép. 1,2 long. 28 : sommet usé, à recharger 0,3", EM_UNITS_METRIC, "1\t1\tthickness\t1.2\tmm" },
  { "EJECTOR SLEEVE O.D. 12 MM WORN, BUILD UP 0.3 OVER 25 LENGTH", EM_UNITS_METRIC, "1\t1\tdiameter\t12\tmm" },
  { "AÑADIR REPRESA: 22 LARGO X 4 ANCHO X 1,5 ALTO\nFLANCOS CON INCLINACION 5°, EXTREMOS REDONDEADOS", EM_UNITS_METRIC, "2\t1\tends\trounded\t" },
  { "The lip has a nick, 0.8 mm long, 0.2 x 0.2. There is a second one beside it, 1.2 mm long, 0.3 x 0.2.", EM_UNITS_METRIC, "1\t2\tlength\t1.2\tmm" },
  { "ZONA 2: CARA DE AJUSTE Ø18 MM, FALTA 0,1\nZONA 3: PARED DE CAJERA 20 X 5, FALTAN 0,08\nDEJAR 0,15 PARA MECANIZAR EN ZONA 2", EM_UNITS_METRIC,
    "3\t1\tstock\t0.15\tmm" },
  /* Uprights by how thick and long they are; walls that wore; which item. */
  { "MANDREL TIP 1.2 THICK X 18 LONG, BUILD 0.6 ON TOP", EM_UNITS_METRIC, "1\t1\tcoat\t0.6\tmm" },
  { "CREST 1 WIDE X 140 LONG WORN, ADD 0.8", EM_UNITS_METRIC, "1\t1\tkind\trib\t" },
  { "Schneide 0,3 zu niedrig, Schneide 2 dick 110 lang", EM_UNITS_METRIC, "1\t1\tthickness\t2\tmm" },
  { "Tasche an einer Wand ausgewaschen: 38 lang, 12 hoch, 0,3 Auftrag", EM_UNITS_METRIC, "1\t1\tkind\tsidewall\t" },
  { "pocket washed out on one wall, 38 long, 12 high, add 0.3", EM_UNITS_METRIC, "1\t1\tkind\tsidewall\t" },
  { "item 1, gate insert: heat checks, 6 places, 5 long x 0.5 deep", EM_UNITS_METRIC, "!1\t1\tgap\t1\tmm" },
  { "EXTREMOS INCLINADOS, REPRESA 22 LARGO X 4 ANCHO X 1,5 ALTO", EM_UNITS_METRIC, "1\t1\tends\tdrafted\t" },
  { "CHROME STRIPPED ALREADY", EM_UNITS_METRIC, "!1\t0\tcoating\tchrome\t" },
  { "Auflagefläche 12 x 5 mm 0,2 tief\nToolnr. 6-0415", EM_UNITS_METRIC, "2\t0\ttool_number\t6-0415\t" },
  { "welding only with laser please", EM_UNITS_METRIC, "!1\t0\tfinish\tcustomer\t" },
  /* A tip told apart from its blade is the blade's. */
  { "BLADE 1 THK X 28 LG, TIP SHORT 0.6 MM\nBUILD UP TIP 0.6 MM AND 1.5 MM DOWN EACH SIDE", EM_UNITS_METRIC, "2\t1\tdepth\t1.5\tmm" },
  { "TOP WORN, ADD 0.5 ON TIP. BLADE 1.5 THK X 8 LG MM", EM_UNITS_METRIC, "1\t1\tcoat\t0.5\tmm" },
  /* How many: 2 on each of 4, 2 per insert of 1 to 4; a title with its metal behind it. */
  { "2 nicks on each of 4 cores, each 1.5 x 0.3 x 0.2 mm", EM_UNITS_METRIC, "1\t1\tcount\t8\t" },
  { "gate insert 1-4: corner R0.2 worn, 3 long, 2 corners per insert, mm", EM_UNITS_METRIC, "1\t1\tcount\t8\t" },
  { "SUB-GATE INSERT (QTY 8) 1.2379\nCORNER WORN R0.15 X 2 LG MM\nNICK 3 X 1 X 1 MM", EM_UNITS_METRIC, "1\t0\ttools\t8\t" },
  { "Plate with 6 blades, all the same\nBlade 1 thick, 28 long, 0.6 missing on top, mm", EM_UNITS_METRIC, "1\t1\tcount\t6\t" },
  /* What is done already, or asks for nothing, is no repair. */
  { "Edge nick 3 x 1 x 1 mm\nCore pin 2.4 dia bent - replaced already", EM_UNITS_METRIC, "!2\t2\tkind\tpin\t" },
  { "Edge nick 3 x 1 x 1 mm. A few scratches on the floor 0.02 mm deep, those are ok.", EM_UNITS_METRIC, "!1\t2\tkind\tgroove\t" },
  /* Stock that is kept, sides told behind a comma, threads by their names, lengths behind the name of a place. */
  { "EDGE NICK 3 X 1 X 1 MM\nKEEP 0.8 MM STOCK ON ALL", EM_UNITS_METRIC, "2\t0\tstock\t0.8\tmm" },
  { "Bore dia 50, needs 0.2 added, on the dia, 35 long, mm", EM_UNITS_METRIC, "1\t1\tbuild\t0.1\tmm" },
  { "chip .1 x .010 x .015 right next to a tapped hole 10-32", EM_UNITS_INCH, "!1\t1\tclearance\t254\tmm" },
  { "CRACK IN CORNER OF CAVITY 32 LG, 4 DEEP, MM", EM_UNITS_METRIC, "1\t1\tlength\t32\tmm" },
  { "Got a crash on the 1302 mold. Chip 4 x 1 x 1 mm", EM_UNITS_METRIC, "1\t0\ttool_number\t1302\t" },
  { "Round spigot damaged at the edge, dia 16, worn R0.4 all the way round, mm", EM_UNITS_METRIC, "1\t1\tradius\t0.4\tmm" },
  { "1) nick 3 x 1 x 1 mm\n2) same pocket, floor low 0.2 mm, floor is 44 x 12", EM_UNITS_METRIC, "2\t2\tkind\tface\t" },
  { "1) pits 1 dia x 0.3 deep mm, 7 places\n2) nick 3 x 1 x 1 mm\nTEXTURE RIGHT NEXT TO ITEM 1, KEEP OFF", EM_UNITS_METRIC, "3\t1\tnear\ttexture\t" },
  /* A column of numbers counts its row's repair wherever the repair's words begin. */
  { "Pos.\tPart\tQty\tDamage\tSize\n1\tPinch insert, handle\t2\tcutting edge rolled\tR.018 x 3.1 long", EM_UNITS_METRIC, "2\t1\tcount\t2\t" },
  { "No.  Damage             Dimensions (mm)  Number\n1    striker face worn  50 x 20, 0.2     2", EM_UNITS_METRIC, "2\t1\tcount\t2\t" },
  { "Item | Tool 2219 part | Repair | Nos\nA | pinch bar front | edge nick 3 x 0.8 x 0.6 mm | 4", EM_UNITS_METRIC, "2\t1\tcount\t4\t" },
  /* What is to be added may head a column, and cavities are numbered in any. */
  { "die;cav;fault;length mm;height mm;add mm;qty\n17-330;1;rib pocket wall washed out;28;9;0.3;2", EM_UNITS_METRIC, "2\t1\tthickness\t0.3\tmm" },
  { "die;cav;fault;length mm;height mm;add mm;qty\n17-330;1;rib pocket wall washed out;28;9;0.3;2", EM_UNITS_METRIC, "!2\t0\tunused\t1\t" },
  { "flank of the bar slot lost size, 180 mm x 12 mm, thickness to add 0.4 mm", EM_UNITS_METRIC, "1\t1\tkind\tsidewall\t" },
  { "crack 24 mm long, 3 mm deep\nuse wire of the same type", EM_UNITS_METRIC, "!2\t2\tkind\tgroove\t" },
  /* A metal is of the repairs that its part's name fits best: joined names, one word of a name, behind the metal, by number; the tool's own is of the rest. */
  { "pin dia 25, worn to 24.9\nbush bore 25, worn 25.1\npinch bar edge R0.5 x 110 mm\nPins and bushes 1.2842, 58 HRC; pinch bar 1.2379", EM_UNITS_METRIC, "4\t2\tbase\to2\t" },
  { "pin dia 25, worn to 24.9\nbush bore 25, worn 25.1\npinch bar edge R0.5 x 110 mm\nPins and bushes 1.2842, 58 HRC; pinch bar 1.2379", EM_UNITS_METRIC, "4\t3\tbase\td2\t" },
  { "mould is 7075 with C17200 pinch-off inserts\npinch edge rolled to R0.4 on 95 mm\nface 20 x 10, add 0.3 mm", EM_UNITS_METRIC, "1\t1\tbase\tc17200\t" },
  { "mould is 7075 with C17200 pinch-off inserts\npinch edge rolled to R0.4 on 95 mm\nface 20 x 10, add 0.3 mm", EM_UNITS_METRIC, "1\t0\tbase\t7075\t" },
  { "1) shear edge 210 mm, worn R0.8\n2) face 20 x 10, add 0.3 mm\nMould is 7075, the bar 1.2083 (item 1)", EM_UNITS_METRIC, "3\t1\tbase\t1-2083\t" },
  { "handle: crest 0.6 thick, 38 long, 0.35 missing on top\nface 20 x 10, add 0.3 mm\n7075 / inserts 1.2343 in the handle", EM_UNITS_METRIC, "3\t1\tbase\th11\t" },
  /* Number words before what is no size; a dent in an edge; R once more in a range; at most so round. */
  { "a five litre mould here. Pinch edge rolled R0.4 on 95 mm", EM_UNITS_METRIC, "!1\t1\tlength\t5\tmm" },
  { "dent in the parting line edge, 6 mm long, 1.5 deep and 1 wide", EM_UNITS_METRIC, "1\t1\tleg_a\t1.5\tmm" },
  { "edge worn R0.2-R0.4 x 40 mm", EM_UNITS_METRIC, "1\t1\tradius\t0.3\tmm" },
  { "Kante auf R 0,3 verrundet, 420 lang, max. R 0,05", EM_UNITS_METRIC, "1\t1\tradius_to\t0.05\tmm" },
  { "edge worn round R0.5 x 30, should have R0.1 left", EM_UNITS_METRIC, "1\t1\tradius_to\t0.1\tmm" },
  /* Inside or outside is told anywhere in the words of the repair. */
  { "outer cutting edge, dia 27.4 mm, is worn round to R0.15", EM_UNITS_METRIC, "1\t1\tside\touter\t" },
  { "60 HOLES, EXIT EDGE ⌀.140 WORN R.012", EM_UNITS_INCH, "1\t1\tside\tbore\t" },
  /* What heads the numbers of order forms, and inserts that are no inches. */
  { "customer ref: PX-9061", EM_UNITS_METRIC, "1\t0\treference\tPX-9061\t" },
  { "SHOP TRAVELER 30571, NECK BLOCK", EM_UNITS_METRIC, "1\t0\treference\t30571\t" },
  { "Laufkarte Nr. 4471, Blasform", EM_UNITS_METRIC, "1\t0\treference\t4471\t" },
  { "albarán nº 2210, hilera", EM_UNITS_METRIC, "1\t0\treference\t2210\t" },
  { "bon de retour n° 318, filière", EM_UNITS_METRIC, "1\t0\treference\t318\t" },
  { "Ins. 1: chip 1.2 x 0.4 x 0.4 mm\nIns. 3: lower face worn 0.1 mm", EM_UNITS_METRIC, "!1\t0\tunits\tin\t" },
  { "Ins. 1: chip 1.2 x 0.4 x 0.4 mm\nIns. 3: lower face worn 0.1 mm", EM_UNITS_METRIC, "!2\t2\tlength\t76.2\tmm" },
  { "3 DIES SAME REPAIR:\nCORNER OF LAND WORN .03 R, .25 LONG, 4 PLCS", EM_UNITS_INCH, "1\t0\ttools\t3\t" },
  { "order for two equal mould bottoms:\nnick 3 x 1 x 1 mm", EM_UNITS_METRIC, "1\t0\ttools\t2\t" },
  /* A hardness beyond the table of ASTM E140 is none of the part's. */
  { "pin dia 25, worn to 24.9\nface 20 x 10 mm, add 0.3\nPins M2 3000 HV, body H13", EM_UNITS_METRIC, "3\t1\tbase\tm2\t" },
  /* A second one behind a comma; the metal of a wire; elided articles; refused things one by one. */
  { "the lip has a nick, 0.8 mm long, 0.2 x 0.2. There is a second one beside it, 1.2 mm long, 0.3 x 0.2.", EM_UNITS_METRIC, "1\t2\tlength\t1.2\tmm" },
  { "bore dia 33, add 0.04 per side, 9 deep\npreferred wire 1.2343 dia 0.3", EM_UNITS_METRIC, "!2\t0\tbase\th11\t" },
  { "bore dia 33, add 0.04 per side, 9 deep\npreferred wire 1.2343 dia 0.3", EM_UNITS_METRIC, "1\t1\tdiameter\t33\tmm" },
  { "Éclat 3 x 1 x 1.\nLe grain est à 1,5 mm de l'arête.", EM_UNITS_METRIC, "2\t1\tclearance\t1.5\tmm" },
  { "L'arête est matée sur 35 mm, R0,4. Il faut la remettre à vif.", EM_UNITS_METRIC, "!1\t2\tkind\tworn-corner\t" },
  { "DO NOT WELD COOLING CHANNEL PLUG", EM_UNITS_METRIC, "1\t0\trefuse\tCOOLING CHANNEL PLUG\t" },
  { "Please don't weld on the heater groove and the thread.", EM_UNITS_METRIC, "1\t0\trefuse\tthread\t" },
  { "WELD UP 6x OLD EJECTOR HOLES DIA 3.2 MM, 10 DEEP, FLUSH", EM_UNITS_METRIC, "!1\t1\tfinish\tshop\t" },
  { "cierre lateral corredera 1: cara gastada 0,12, zona 25x18", EM_UNITS_METRIC, "1\t1\tthickness\t0.12\tmm" },
  { "CONICAL SEAT 45°, LARGE DIA 12 MM, ADD 0.4", EM_UNITS_METRIC, "1\t1\tquestion\tcone-angle\t" },
  { "nervure 1,0 x 55 mm, rapporter 0,2", EM_UNITS_METRIC, "1\t1\tcoat\t0.2\tmm" },
  { "edge rolled R.010 1/2 long, restore edge", EM_UNITS_INCH, "!1\t2\tkind\tworn-corner\t" },
  { "GATE LAND WORN, ADD 0.2 TO 0.3 MM ON 8 X 5", EM_UNITS_METRIC, "1\t1\tthickness\t0.25\tmm" },
  { "mandrel tip 1.2 mm thick x 18 long, build 0.6 on top", EM_UNITS_METRIC, "1\t1\tkind\trib\t" },
  { "alésage | Ø10 mm mesuré 10,07 | prof. 15", EM_UNITS_METRIC, "1\t1\tworn\t10.07\tmm" },
  /* The sign at once before a size says what it is; what is sound is no repair; what covers is not spared. */
  { "face low ⌀40, add 0.3 mm", EM_UNITS_METRIC, "1\t1\tdiameter\t40\tmm" },
  { "1 - NICK 3 X 1 X 1 MM\n2 - NICK IN BACKER, NOT IMPORTANT", EM_UNITS_METRIC, "!2\t2\tkind\tedge-nick\t" },
  { "spiral grooves are not hurt. nick 3 x 1 x 1 mm", EM_UNITS_METRIC, "!1\t1\tkind\tgroove\t" },
  { "Riss im Boden, nicht wichtig\nAusbruch 3 x 1 x 1 mm", EM_UNITS_METRIC, "!1\t1\tkind\tgroove\t" },
  { "nick 3 x 1 x 1 mm. PROTECT WITH TAPE", EM_UNITS_METRIC, "!1\t0\trefuse\tTAPE\t" },
  /* The number alone, whatever kind of order it is called. */
  { "Edge nick 3 x 1 x 1 mm\nOrder: RFQ 3391", EM_UNITS_METRIC, "2\t0\treference\t3391\t" },
  { "Edge nick 3 x 1 x 1 mm\nReference: RFQ-88", EM_UNITS_METRIC, "2\t0\treference\tRFQ-88\t" },
  { "TAG 1: EDGE DING .070 LG, .018 X .022\nTAG 2: EDGE DING .120 LG, .020 X .030", EM_UNITS_INCH, "!1\t0\treference\t1\t" },
  /* Columns of blanks with an empty cell; two columns, of which the first counts. */
  { "Pos  What                 Size           Qty\n1    chip on shut-off     5 x 0.6 x 0.4  2\n2    corner rounded R0.5 18 long         4", EM_UNITS_METRIC, "3\t2\tcount\t4\t" },
  { "QTY  DESCRIPTION\n2    RIB 0.8 MM THK X 12 MM LG, ADD 0.4 MM\n3    EDGE NICK 2 X 1 X 1 MM", EM_UNITS_METRIC, "3\t2\tcount\t3\t" },
  /* Told otherwise by the drawing or by somebody. */
  { "EDGE NICK 4 LG X 1 X 1 MM (5 LG ON SKETCH)", EM_UNITS_METRIC, "1\t1\tquestion\ttwo-values\t" },
  { "Face 60 x 22 mm has lost 0.15 mm as the operator says, but the setter measured 0.2 mm", EM_UNITS_METRIC, "!1\t1\tthickness\t0.15\tmm" },
  { "- thin blade, 0.9 thick and 16 long, is 1.2 too short, mm\n- blade is 11 deep in a pocket, only 5 wide", EM_UNITS_METRIC, "2\t1\tslot_depth\t11\tmm" },
  { "Pins 1.2 dia, worn to 1.14, 7 long. Block edge: chip 1 x 0.3 x 0.2. Steel D2 60 HRC for pins, block H13 50 HRC, mm.", EM_UNITS_METRIC, "1\t2\tbase\th13\t" },
  { "Mold 883 - 4 ribs per cavity, 2 cavities. Rib tips broken off 1.2, rib 1.5 thick x 19 long, mm", EM_UNITS_METRIC, "1\t1\tcount\t8\t" },
  { "BORE 16 DIA CLOSED 0.3 ON DIA, 38 DEEP MM\nSTAY 1.5 MM OFF THREAD AT BOTTOM", EM_UNITS_METRIC, "2\t1\tnear\tthread\t" },
  { "Mandrel 40 dia, turned 0.3 too small on 25 mm of length", EM_UNITS_METRIC, "1\t1\tbuild\t0.15\tmm" },
  /* How many of each; ranges behind verbs; what is under size; the top of a rib; what is only added in the next line. */
  { "guide shaft 16 mm is 0.08 under over 50 mm length", EM_UNITS_METRIC, "1\t1\tbuild\t0.04\tmm" },
  { "GATE LAND WORN, ADD 0.2 TO 0.3 MM ON 8 X 5", EM_UNITS_METRIC, "1\t1\tthickness\t0.25\tmm" },
  { "3 postizos iguales, cada uno con 2 mellas de 1,2 x 0,3 x 0,3 en la arista", EM_UNITS_METRIC, "1\t1\tcount\t6\t" },
  { "it's two inserts from tool 5520, every insert has 3 chipped corners 1.5 x 1 x 0.5 mm", EM_UNITS_METRIC, "1\t1\tcount\t6\t" },
  { "INSERT 2 PCS IDENTICAL\nEACH: EDGE DENTED 2 PLACES, 3 X 0.5 X 0.5 MM\nEACH: BORE ⌀9 OVERSIZE BY 0.06 ON DIA, 20 DEEP", EM_UNITS_METRIC, "2\t1\tcount\t4\t" },
  { "lame de pincement ép. 0,5, lg 26, refaire le dessus 0,6", EM_UNITS_METRIC, "1\t1\tcoat\t0.6\tmm" },
  { "SITZ KEGELIG, ⌀16 AUF ⌀10, 5 TIEF\nVERSCHLISSEN, 0,4 GLEICHMÄSSIG AUFTRAGEN", EM_UNITS_METRIC, "2\t1\tthickness\t0.4\tmm" },
  /* Numbers of items before a quantity's own, and before what is done; ends that are wrapped. */
  { "ITEM 2 QTY 3 EA - STRIPPER PLATE, BORE ⌀1.500 EGGED TO 1.512, .80 THICK", EM_UNITS_INCH, "1\t1\tcount\t3\t" },
  { "op 20 weld: nick 3 x 1 x 1 mm", EM_UNITS_METRIC, "!1\t0\tunused\t20\t" },
  { "CREST WORN, ADD .025, KNIFE .055 THK, 6.50 LG, 2 ROUND ENDS WRAPPED", EM_UNITS_INCH, "!1\t1\tdepth\t50.8\tmm" },
  /* A flank that was washed out has lost size, by its height. */
  { "pos;damage;length mm;height mm;add mm\n1;flank of vent slot washed out;15;4;0.2", EM_UNITS_METRIC, "2\t1\theight\t4\tmm" },
  { "nick 3 x 1 x 1 mm, sandblasted surface starts 3 mm away", EM_UNITS_METRIC, "1\t1\tnear\ttexture\t" },
  { "Ausbruch 3 x 1 x 1 mm, sandgestrahlte Fläche 3 mm daneben", EM_UNITS_METRIC, "1\t1\tnear\ttexture\t" },
  { "FINISH GRIND AT OUR PLANT, NICK 3 X 1 X 1 MM", EM_UNITS_METRIC, "1\t1\tfinish\tcustomer\t" },
  { "nick 3 x 1 x 1 mm. Access from one side only.", EM_UNITS_METRIC, "1\t1\taccess\trestricted\t" },
  { "Bushing bore to get .003, 1.5 deep", EM_UNITS_INCH, "1\t1\tquestion\tside-or-diameter\t" },
  /* Spanish rows, totals, a size that is left of another, and what a hole is made for. */
  { "mella 3 por 1 por 0,8 mm en la arista", EM_UNITS_METRIC, "1\t1\tleg_b\t0.8\tmm" },
  { "golpe en la orilla, 2 mm de largo por 0,5 x 0,4", EM_UNITS_METRIC, "1\t1\tleg_a\t0.5\tmm" },
  { "4 CORES - CORNER CHIPPED BOTH SIDES, 3 X 0.5 X 0.5 MM (8 PLACES TOTAL)", EM_UNITS_METRIC, "1\t1\tcount\t8\t" },
  { "Maß 12,40 ist nur noch 12,15, Fläche 26 x 10", EM_UNITS_METRIC, "1\t1\tthickness\t0.25\tmm" },
  { "sur le noyau Ø 12,00 on mesure 11,90, hauteur 40", EM_UNITS_METRIC, "1\t1\tkind\tpin\t" },
  { "EJECTOR SLEEVE O.D. 12 MM WORN, BUILD UP 0.3 OVER 25 LENGTH", EM_UNITS_METRIC, "1\t1\tdiameter\t12\tmm" },
  { "hole for 1/4 dowel oversize, is .256, bring back to .250", EM_UNITS_INCH, "1\t1\tkind\tbore\t" },
  { "asiento bajo 0,05, superficie 14 x 9", EM_UNITS_METRIC, "1\t1\tkind\tface\t" },
  /* "1.2" heads a line of a list, and is referred to. */
  { "1.1 EDGE BREAKOUT 4.5 LG, 0.35 X 0.5 MM\n1.2 SIDEWALL, 16 X 7 DEEP, ADD 0.2 MM\n1.3 PIT 1 DIA X 0.3 DEEP MM\nRESTRICTED ACCESS ON 1.2", EM_UNITS_METRIC, "4\t2\taccess\trestricted\t" },
  { "1.1 EDGE BREAKOUT 4.5 LG, 0.35 X 0.5 MM\n1.2 SIDEWALL, 16 X 7 DEEP, ADD 0.2 MM", EM_UNITS_METRIC, "2\t2\tlength\t16\tmm" },
  { "1) nick 3 x 1 x 1 mm\n2) nick 4 x 1 x 1 mm\nRestricted access on item 1", EM_UNITS_METRIC, "3\t1\taccess\trestricted\t" },
  /* British "no." counts, and ranges behind a plural name its things. */
  { "2 no. edge nicks 3 x 1 x 1 mm", EM_UNITS_METRIC, "1\t1\tcount\t2\t" },
  { "Fill 3 no. tapped holes 8 dia x 15 deep mm", EM_UNITS_METRIC, "1\t1\tcount\t3\t" },
  { "Ribs 3-6 on cavity B: rib 0.9 x 22, add 0.4, mm", EM_UNITS_METRIC, "!1\t1\tlength\t4.5\tmm" },
  { "Edge nick 3 x 1 x 1 mm\nWELD WITH H13 FILLER", EM_UNITS_METRIC, "!2\t0\tbase\th13\t" },
  { "PIN HOLE CLOSE FROM 6.4 TO 6.3 MM, 19 LONG", EM_UNITS_METRIC, "1\t1\tworn\t6.4\tmm" },
  /* Below a face a pin by its sizes is one of its own; the whole of it is the same; found is now; what was checked and is sound. */
  { "Shoulder face ⌀22 mm, 0.3 low\nBody ⌀14 worn to 13.94, length 40", EM_UNITS_METRIC, "2\t2\tworn\t13.94\tmm" },
  { "spherical seat R15.5 mm, mouth 20 mm. Please weld 0.5 mm over the whole seat.", EM_UNITS_METRIC, "1\t1\tthickness\t0.5\tmm" },
  { "STEP HEIGHT .500 FOUND .490", EM_UNITS_INCH, "1\t1\tthickness\t0.254\tmm" },
  { "land scratched, 20 mm long, 0.1 deep\nRemarks: lip gap checked 0.62, ok", EM_UNITS_METRIC, "!2\t1\tgap\t0.62\tmm" },
  { "LEAVE .005 FOR FIT. CUST TO FINISH.", EM_UNITS_INCH, "1\t0\tfinish\tcustomer\t" },
  { "la portée conique est usée : grand diamètre 20 mm, petit 14, hauteur 6, à recharger 0,4", EM_UNITS_METRIC, "1\t1\tdiameter_small\t14\tmm" },
  { "RIB TIPS (6) BROKEN, .060 THK X .500 LG, REBUILD .125", EM_UNITS_INCH, "1\t1\tcoat\t3.175\tmm" },
  { "The lip land is 600 mm long, 2 wide and has a scratch, 2 long, 0.1 deep", EM_UNITS_METRIC, "1\t1\tkind\tgroove\t" },
  { "nozzle tip radius SR 12.7 mm pitted, dia 16, add 0.5", EM_UNITS_METRIC, "1\t1\tform\tsphere\t" },
  { "We have 3 inserts, each with two chipped corners: 2 x 1 x 1 mm", EM_UNITS_METRIC, "1\t1\tcount\t6\t" },
  { "Shut-off face low 0.05 mm on area 15 x 30 mm", EM_UNITS_METRIC, "1\t1\twidth\t15\tmm" },
  { "O-ring groove: scratch across it 3 long, 0.1 deep, mm", EM_UNITS_METRIC, "1\t1\tlength\t3\tmm" },
  { "Height of rib is 0.4 mm too low, rib thickness 1.5 mm, length 60 mm", EM_UNITS_METRIC, "1\t1\tcoat\t0.4\tmm" },
  { "Gate is washed, 1.0 mm dia, now 1.4 mm, 2 mm deep", EM_UNITS_METRIC, "1\t1\tkind\tbore\t" },
  /* Worn to a radius, and what it was; a side of a slot; how high a rib is beside how far down it is coated; the rest of an edge. */
  { "corner is worn to a radius of 1 mm over a length of 85 mm, originally it was R0.4 mm", EM_UNITS_METRIC, "1\t1\tradius_to\t0.4\tmm" },
  { "One of the rib slots has a side which is burnt, 28 mm x 12 mm, 0.35 mm must come on", EM_UNITS_METRIC, "1\t1\tkind\tsidewall\t" },
  { "rib 0.8 thk 42 long 5 high, tip lost, build 0.6, coat 1.5 down sides mm", EM_UNITS_METRIC, "1\t1\tdepth\t1.5\tmm" },
  { "Nick 7 x 0.8 x 1.1 mm. The rest of the edge is rounded to R0.2.", EM_UNITS_METRIC, "1\t2\tradius\t0.2\tmm" },
  { "Muesca 7 x 0,8 x 1,1 mm. El resto del borde está redondeado a R0,2.", EM_UNITS_METRIC, "1\t2\tradius\t0.2\tmm" },
  { "Ébréchure 7 x 0,8 x 1,1 mm. Le reste de l'arête est arrondi à R0,2.", EM_UNITS_METRIC, "1\t2\tradius\t0.2\tmm" },
  { "blow mould pinch-off worn, length 95 mm, blade 1.2 mm wide, build up 0.8 mm", EM_UNITS_METRIC, "1\t1\tcoat\t0.8\tmm" },
  /* What something has, which slot, counts below it, and damage without a kind. */
  { "der Formkern hat Brandrisse. 5 Stück, je 8 mm lang und 1 mm tief.", EM_UNITS_METRIC, "1\t1\tkind\tgroove\t" },
  { "El núcleo de la placa tiene grietas, 8 mm de largo, 1 mm de profundidad", EM_UNITS_METRIC, "1\t1\tdepth\t1\tmm" },
  { "core pin dia 24.3 mm now 24.22, L 11\n8 cores the same", EM_UNITS_METRIC, "2\t1\tcount\t8\t" },
  { "now there is a damage on the core 6 x 4 mm", EM_UNITS_METRIC, "1\t1\tquestion\twhich-kind\t" },
  { "flank of slot 2 worn 0.2 mm, 50 x 6", EM_UNITS_METRIC, "!1\t0\tunused\t2\t" },
  { "Flanke der Nut 3 ausgewaschen 50 x 6, 0,2 auftragen\nNut 5 breit 6 tief\nbeide Flanken!", EM_UNITS_METRIC, "3\t1\tcount\t2\t" },
  { "C. LAND 2.0 X .31, .010 LOW\nMTL: S7. LEAVE .004-.006 STOCK TYP", EM_UNITS_INCH, "!1\t1\tquestion\tcount-unknown\t" },
  { "Rippe 0,8 mm dick, 22 lang, oben 0,6 abgebrochen. Daneben Textur, Abstand 1 mm", EM_UNITS_METRIC, "1\t1\tcoat\t0.6\tmm" },
  { "Rippe 0,8 mm dick, 22 lang, oben 0,6 abgebrochen. Daneben Textur, Abstand 1 mm", EM_UNITS_METRIC, "1\t1\tclearance\t1\tmm" },
  /* How thick the weld is to be tells more than the wear; a coating is of the part before it, where other repairs are of others. */
  { "both side walls 0.25 mm oversize, weld 300 mm long, 10 mm high, 0.4 mm thick", EM_UNITS_METRIC, "1\t1\tthickness\t0.4\tmm" },
  { "bore 20.00 now 20.09, 35 deep\npin 20.00 now 19.93, 50 long mm\nSteel: O1, 60 HRC. Pins chrome plated", EM_UNITS_METRIC, "3\t2\tcoating\tchrome\t" },
  { "bore 20.00 now 20.09, 35 deep\npin 20.00 now 19.93, 50 long mm\nSteel: O1, 60 HRC. Pins chrome plated", EM_UNITS_METRIC, "!3\t0\tcoating\tchrome\t" },
  /* Who wrote it is no repair, and a shape no copper. */
  { "Bore 6 mm dia worn to 6.15 mm, 25 mm deep. Cheers, Nick", EM_UNITS_METRIC, "1\t0\tunused\tNick\t" },
  { "Bore 6 mm dia worn to 6.15 mm, 25 mm deep.\n\nKind regards\nChip", EM_UNITS_METRIC, "!4\t2\tkind\tedge-nick\t" },
  { "Corner near gate is missing, roughly 5mm cube", EM_UNITS_METRIC, "!1\t0\tbase\tc17200\t" },
  { "SHOP ORDER 20113\nEDGE NICK 3 X 1 X 1 MM", EM_UNITS_METRIC, "1\t0\treference\t20113\t" },
  { "weld 0.8 mm per side on the ring, outside diameter 120 mm, height 12 mm", EM_UNITS_METRIC, "1\t1\tdiameter\t120\tmm" },
  { "pinch edge nick 3 x 1 x 1 mm\npin 20.00 now 19.93, 50 long mm\nPins chrome plated", EM_UNITS_METRIC, "!3\t1\tcoating\tchrome\t" },
  { "edge nick 3 x 1 x 1 mm\nface of land 20 x 10, add 0.3 mm\nDIE LANDS ARE NITRIDED H13", EM_UNITS_METRIC, "3\t0\tcoating\tnitride\t" },
  /* Lists of what was measured number their sizes. */
  { "DIM 2  FACE STEP HEIGHT .500  FOUND .490", EM_UNITS_INCH, "!1\t1\tcount\t2\t" },
  { "Merkmal 3 Bohrung 12,0 ist 12,1", EM_UNITS_METRIC, "!1\t1\tcount\t3\t" },
  /* A diameter told twice round what it is now; narrow pockets; access by the noun; places with numbers. */
  { "bore dia 6 mm, is 6.08, bring back to 6.00, 20 deep", EM_UNITS_METRIC, "1\t1\tworn\t6.08\tmm" },
  { "hole for 1/4 dowel oversize, is .256, bring back to .250, 5/8 deep", EM_UNITS_INCH, "1\t1\tlength\t15.875\tmm" },
  { "une fissure au fond de la poche, environ 22 mm de long, 2 mm de profondeur.\nLa poche est étroite (6 mm de large, 15 de profond) donc accès difficile.", EM_UNITS_METRIC,
    "2\t1\tslot_width\t6\tmm" },
  { "nervio esp. 0,8 largo 15: reponer punta 0,4\ngrieta en rincón, 11 mm, profundidad 1,2\nOJO: nervio con poco acceso", EM_UNITS_METRIC, "3\t1\taccess\trestricted\t" },
  { "cierre lateral corredera 1: cara gastada 0,12, zona 25x18", EM_UNITS_METRIC, "1\t1\tkind\tface\t" },
  { "HARD CHROME PLATED - STRIPPED ALREADY", EM_UNITS_METRIC, "1\t0\tcoating\tchrome\t" },
  /* Tables: French "L | l", and a thing without a known name by its columns; a choker bar is no dam; finish in forms. */
  { "Repère | Défaut | L | l | Recharge | Nb\n1 | flanc de rainure usé | 30 | 10 | 0,2 | 1", EM_UNITS_METRIC, "2\t1\theight\t10\tmm" },
  { "part;fault;length mm;width mm;add mm;qty\nthingy;worn;40;12;0.3;2", EM_UNITS_METRIC, "2\t1\tkind\tface\t" },
  { "choker bar tip down .050, 3/16 thick, 14 long", EM_UNITS_INCH, "1\t1\tcoat\t1.27\tmm" },
  { "NICK .20 X .05 X .04\nFINISH: BY CUSTOMER   LEAVE .015 STOCK", EM_UNITS_INCH, "2\t0\tfinish\tcustomer\t" },
  { "8 dia pin worn to 7.9 over 12mm at the tip", EM_UNITS_METRIC, "1\t1\tlength\t12\tmm" },
  { "Lip face 300 x 2 mm, pitted, build 0.3", EM_UNITS_METRIC, "1\t1\tthickness\t0.3\tmm" },
  { "Bottom of the pocket was cut 0.2 mm too deep (pocket is 20 x 14 mm)", EM_UNITS_METRIC, "1\t1\twidth\t14\tmm" },
  { "Dents in shut off (2 of), 1.5 dia x 0.4 mm", EM_UNITS_METRIC, "1\t1\tcount\t2\t" },
  { "Threads stripped in M5 hole, weld up 12 deep, mm", EM_UNITS_METRIC, "1\t1\tkind\trecess\t" },
  /* Days of months in four languages; slots below a depth; parts that were only numbered. */
  { "Riss 8 mm lang, 1 mm tief. Kommt am 3. Juni.", EM_UNITS_METRIC, "!1\t2\tquestion\twhich-field\t" },
  { "Le moule a cassé le 3 juin après un démarrage à froid.", EM_UNITS_METRIC, "!1\t1\tkind\tedge-nick\t" },
  { "Se rompió el 3 de junio en la prensa", EM_UNITS_METRIC, "!1\t1\tkind\tedge-nick\t" },
  { "SHUT-OFF BLADE 2 MM THK X 16 LG, TIP LOW, BUILD 0.5 + 1 MM DOWN SIDES\nSITS IN SLOT 5 WIDE X 12 DEEP", EM_UNITS_METRIC, "2\t1\tslot_depth\t12\tmm" },
  { "Mandamos 3 postizos iguales, cada uno con 2 mellas de 1,2 x 0,3 x 0,3 en la arista de cierre.", EM_UNITS_METRIC, "1\t1\tcount\t6\t" },
  { "DO NOT WELD - DATE STAMP", EM_UNITS_METRIC, "1\t0\trefuse\tDATE STAMP\t" },
  { "Plan de joint : choc 6 x 2 x 1 mm", EM_UNITS_METRIC, "1\t1\tkind\tedge-nick\t" },
  /* Where a crack is, is no depth of it. */
  { "Core has hairline crack 15mm from base of boss; length 9 mm", EM_UNITS_METRIC, "!1\t1\tdepth\t15\tmm" },
  { "P/L edge is rounded 0.2 rad x 55mm\nRepair: laser weld and re-spot", EM_UNITS_METRIC, "!2\t2\tkind\tface\t" },
  { "Bore of neck insert 28,0 H7, is 28,11 mm, 24 deep", EM_UNITS_METRIC, "1\t1\tdiameter\t28\tmm" },
  /* A leg of a die has a number and is none of a nick; what a vessel holds is no length; a sheath is no grain. */
  { "Bearing, leg 1 worn   22 x 4, 0.15 low mm", EM_UNITS_METRIC, "1\t1\tkind\tface\t" },
  { "nick 5 long, leg 1, 0.5 mm", EM_UNITS_METRIC, "1\t1\tleg_a\t1\tmm" },
  { "Molde de soplado 5 L, insertos de corte C17200\nmella 3 x 0,8 x 0,6 mm", EM_UNITS_METRIC, "!1\t1\tlength\t5\tmm" },
  { "Filière de gaine\n1) arête arrondie R0,25 sur 60 mm", EM_UNITS_METRIC, "!1\t1\tnear\ttexture\t" },
  /* Codes that head lines, one of which a metal has, too. */
  { "A1 corner nick 2 x 1 x 1 mm\nA2 groove 30 long 0.3 deep mm\nB1 bore dia 10 worn 10.1, 20 deep mm", EM_UNITS_METRIC, "!2\t0\tbase\ta2\t" },
  { "A1 corner nick 2 x 1 x 1 mm\nA2 groove 30 long 0.3 deep mm", EM_UNITS_METRIC, "!1\t1\tcount\t1\t" },
  { "Edge nick 2 x 1 x 1 mm\nA2 60 HRC", EM_UNITS_METRIC, "2\t0\tbase\ta2\t" },
  /* References with a point, hits, and where a shaft is worn. */
  { "Pos. 2: Delle ⌀1,5 x 0,4 tief\nPos. 3: Bohrung ⌀8 ist 8,06\nPos. 4: wie Pos. 2, aber 2 Stück", EM_UNITS_METRIC, "3\t3\tkind\trecess\t" },
  { "am Einsatz 3 zwei Ecken ausgebrochen, je 3 mm lang, 1 mm tief und 0,8 mm breit", EM_UNITS_METRIC, "!1\t0\tunused\t3\t" },
  { "we have at the parting line a hit of 5 mm length and 0.8 x 0.6 mm.", EM_UNITS_METRIC, "1\t1\tleg_a\t0.8\tmm" },
  { "axe Ø20, portée usée sur 30 mm de long\nà recharger 0,2 au diamètre", EM_UNITS_METRIC, "2\t1\tbuild\t0.1\tmm" },
  { "Bearing in leg B worn 0.1 over 26 x 5 mm", EM_UNITS_METRIC, "1\t1\tkind\tface\t" },
  { "edge broken, length 5 mm, leg 1 on top", EM_UNITS_METRIC, "1\t1\tleg_a\t1\tmm" },
  /* Edges on a diameter, holes that were drilled wrong. */
  { "the sealing edge on diameter 32 mm inside is rounded to R0.4 all around", EM_UNITS_METRIC, "1\t1\tdiameter\t32\tmm" },
  { "Kante am Durchmesser 32 innen verrundet R0,4", EM_UNITS_METRIC, "1\t1\tdiameter\t32\tmm" },
  { "Loch ⌀8, 12 tief, falsch gebohrt, verschließen", EM_UNITS_METRIC, "!1\t2\tkind\trecess\t" },
  { "Falsch gebohrt: ⌀4,2, 16 tief, verschließen", EM_UNITS_METRIC, "1\t1\tform\tcylinder\t" },
  { "Slot milled wrong, 30 mm x 8 mm x 5 mm deep. There's a 6 mm hole 4 mm from the end of it.", EM_UNITS_METRIC, "1\t1\tclearance\t4\tmm" },
  { "nick 3 x 1 x 1 mm\nface low 0.2, 20 x 10\nall easy to get at from the front", EM_UNITS_METRIC, "3\t1\taccess\topen\t" },
  { "Tool No;Fault;L;W;H\nT9;dam, ends square;55;3;0.8\nT9;dam, ends square;40;2;1.5", EM_UNITS_METRIC, "2\t0\ttool_number\tT9\t" },
  { "Tool No;Fault;L;W;H\nT9;dam, ends square;55;3;0.8\nT9;dam, ends square;40;2;1.5", EM_UNITS_METRIC, "3\t2\twidth\t2\tmm" },
  { "Die\tFault\tLength\tWidth\tAdd\nD-30\tland low\t48\t6\t0.2\nD-31\tland low\t40\t5\t0.2", EM_UNITS_METRIC, "2\t0\ttool_number\tD-30\t" },
  { "ID|Component|Fault|Dimension 1|Dimension 2\n881|die plate|land washed|length 18 x 4|0.08 to add", EM_UNITS_METRIC, "!1\t1\tkind\tbore\t" },
  { "MARK  DAMAGE          L            W           D\nA     STEP FACE LOW   2.000 [50.8] .375 [9.5]  .005 [0.13]", EM_UNITS_INCH, "2\t1\tthickness\t0.127\tmm" },
  { "REF  DAMAGE           L     A     B     QTY\n03   scratch, core    .600  .004 deep   1", EM_UNITS_INCH, "!2\t1\tgap\t25.4\tmm" },
  { "Part\tDamage\tLength\tHeight\tAdd\nland top\tface low\t48\t6\t0.2", EM_UNITS_METRIC, "2\t1\twidth\t6\tmm" },
  { "Part;Dim;Nominal;Measured;Add per side;Length\nBushing;bore dia;40;;0,15;65", EM_UNITS_METRIC, "2\t1\tbuild\t0.15\tmm" },
  { "Kav. 1  Kratzer 15 lang, 0,05 tief\nKav. 3  Kratzer 12 lang, 0,05 tief", EM_UNITS_METRIC, "!2\t2\tcount\t3\t" },
  { "EDGE 1  .010R  .75 LG\nEDGE 2  .010R  1.12 LG\nEDGE 4  NICK .05 X .02 X .01", EM_UNITS_INCH, "!3\t3\tcount\t4\t" },
  { "Pin 2 bent, dia 4 worn to 3.9, 10 long\nPin 3 dia 4 worn to 3.8, 10 long", EM_UNITS_METRIC, "2\t2\tdiameter\t4\tmm" },
  { "RIB 2 THK, 20 LG, ADD 0.4\nRIB 3 THK, 20 LG, ADD 0.4", EM_UNITS_METRIC, "2\t2\tthickness\t3\tmm" },
  { "Bestellung folgt, Nr. B-20931.\nRiss 3 lang", EM_UNITS_METRIC, "1\t0\treference\tB-20931\t" },
  { "mella 3 x 1 x 1 mm\nel pedido es el 21-0344", EM_UNITS_METRIC, "2\t0\treference\t21-0344\t" },
  { "Hilera de perfil nº 88-14, acero 1.2344.\ndique 30 x 3 x 1.5 alto", EM_UNITS_METRIC, "1\t0\ttool_number\t88-14\t" },
  { "Two inserts, same tool (no. 2174).\nnick 3 x 1 x 1 mm", EM_UNITS_METRIC, "1\t0\ttool_number\t2174\t" },
  { "Riss 3 lang\nZEICHNUNG 304-118", EM_UNITS_METRIC, "2\t0\tdrawing\t304-118\t" },
  { "Form 7b   Request for weld repair\nMould ID    : BL-330/24\nnick 3 x 1 x 1 mm", EM_UNITS_METRIC, "2\t0\ttool_number\tBL-330/24\t" },
  { "Riss 3 lang\nBitte Zusatz 1.2343 nehmen.\nGrundwerkstoff 1.2738", EM_UNITS_METRIC, "3\t0\tbase\tp20-ni\t" },
  { "nick 3 x 1 x 1 mm, X38CrMoV5-1, nitrided", EM_UNITS_METRIC, "1\t0\tbase\th11\t" },
  { "spreader pin dia .875 worn to .861, 2 inches long, 4340 steel", EM_UNITS_INCH, "1\t0\tbase\t4340\t" },
  { "core pin dia 6 worn to 5.9 mm, coated TiN", EM_UNITS_METRIC, "1\t0\tcoating\tpvd\t" },
  { "1. nick 3 x 1 x 1 mm\n2. nick 4 x 1 x 1 mm\n3. nick 4 x 1 x 1 mm\nItems 1 and 3 are H13, item 2 is S7.", EM_UNITS_METRIC, "4\t3\tbase\th13\t" },
  { "1) Bohrung ⌀10 H7, jetzt 10,06, Tiefe 25\n2) Stift ⌀8 auf 7,93, Länge 15\nStahl 1.2379, 60 HRC\nPos. 2 ist aus 1.3343", EM_UNITS_METRIC, "4\t2\tbase\tm2\t" },
  { "1 - corner broken, 2.5 x 1 x 1 mm\n2 - nick 2.5 x 1 x 1\n\n2 is o1 steel. The rest is m2", EM_UNITS_METRIC, "4\t2\tbase\to1\t" },
  { "• 1 - nick 2.5 x 1 x 1 mm\n• 2 - pocket wall, 18 x 10, thin by 0.15", EM_UNITS_METRIC, "2\t2\tlength\t18\tmm" },
  { "Bore measures 14.22 instead of 14.00. It is 26 mm deep, the drawing says 30 mm deep.", EM_UNITS_METRIC, "1\t1\tquestion\ttwo-values\t" },
  { "Bolzen Ø 14, abgenutzt auf 13,9, Länge 30 mm\n(lt. Zeichnung Länge 32 mm)", EM_UNITS_METRIC, "1\t1\tquestion\ttwo-values\t" },
  { "nick 5 long, 1 deep, 1 wide mm. Print shows 8 long.", EM_UNITS_METRIC, "!1\t1\tlength\t5\tmm" },
  { "pin 12 dia, worn to 11.9, 20 long mm. see print, 40 long plate", EM_UNITS_METRIC, "1\t1\tlength\t20\tmm" },
  { "Damage      : dent, round, 4 mm dia, 0.8 mm deep\nFilled in   : D. Arkwell, 11.06.", EM_UNITS_METRIC, "!2\t2\tkind\trecess\t" },
  { "Schaden: Riss 9 lang\nAusgefüllt von: K. Brandl, 11.06.", EM_UNITS_METRIC, "!2\t1\tdepth\t11.06\tmm" },
  { "Bore oversize 10.00/10.05, 25 deep mm", EM_UNITS_METRIC, "1\t1\tworn\t10.05\tmm" },
  { "Shaft 25.00/24.99 mm, worn 0.1 per side, 30 long", EM_UNITS_METRIC, "!1\t1\tworn\t24.99\tmm" },
  { "Wear on gib, 110 x 16 x 0.08 mm", EM_UNITS_METRIC, "1\t1\tkind\tface\t" },
  { "gib worn, 110 x 16 x 0.08 mm", EM_UNITS_METRIC, "1\t1\tthickness\t0.08\tmm" },
  { "nick cav 3 4 x 1 x 1 mm", EM_UNITS_METRIC, "1\t1\tlength\t4\tmm" },
  { "edge rolled R0.3 mm cav 2 length 18", EM_UNITS_METRIC, "!1\t1\tcount\t2\t" },
  { "                     L       W      T/D    Remark\nparting face upper   140     12     0.15   low", EM_UNITS_METRIC, "2\t1\tlength\t140\tmm" },
  { "                     L       W      T/D    Remark\nvent groove edge       6     1.0    0.8    broken out", EM_UNITS_METRIC, "2\t1\tleg_b\t0.8\tmm" },
  { "gouge 30 mm long, 1 mm deep at the inlet. In the table it says 35 mm long.", EM_UNITS_METRIC, "1\t1\tquestion\ttwo-values\t" },
  { "pin Ø12 x 45 worn, add 0.2 mm", EM_UNITS_METRIC, "1\t1\tlength\t45\tmm" },
  { "finger Ø12 x 45 worn, add 0.2 mm per side", EM_UNITS_METRIC, "1\t1\tkind\tpin\t" },
  { "Nervure cassée, épaisseur 1,2 mm, longueur 33 mm, à remonter de 0,6 mm et à recharger aussi sur les flancs, 3 mm de chaque côté.", EM_UNITS_METRIC, "1\t1\tdepth\t3\tmm" },
  { "pared comida 0,2 mm en 30 x 12 (largo x alto)", EM_UNITS_METRIC, "1\t1\tlength\t30\tmm" },
  { "combler rainure 40 x 4 x 2 mm", EM_UNITS_METRIC, "1\t1\tkind\trecess\t" },
  { "close old thermocouple hole, dia 4 over 18 mm", EM_UNITS_METRIC, "1\t1\tdepth\t18\tmm" },
  { "Alésage Ø14 usé à 14,08, profondeur 20 mm (sur le plan : profondeur 25 mm)", EM_UNITS_METRIC, "1\t1\tquestion\ttwo-values\t" },
  { "Nº  Daño                Largo  Ancho/Ø  Prof.\n1   mella en canto      8      1        0,6\n2   picadura redonda    -      2,5      0,4", EM_UNITS_METRIC, "3\t2\tdiameter\t2.5\tmm" },
  { "The mandrel on our 2\" pipe die has a dent, round, about .12 across and 15 thou deep.", EM_UNITS_INCH, "1\t1\tkind\trecess\t" },
  { "Neck ring edge rounded to R 0.8 on 22 mm.\n22:10 blow pin seat (cone 90° included). Mouth 20, depth 4. Needs 0.3.", EM_UNITS_METRIC, "!2\t2\tcount\t10\t" },
  { "ID PILOT 1.2500 IS 1.2530, DEPTH .40", EM_UNITS_INCH, "1\t1\tkind\tbore\t" },
  { "RIB .045 THK X 1.10 LG, ADD .015\n- NEXT TO IT: MIRROR POLISH, NO SPATTER", EM_UNITS_INCH, "2\t1\tnear\tpolish\t" },
  { "nick 3 x 1 x 1 mm\nWELD ROD 1.2344 SHALL BE USED", EM_UNITS_METRIC, "!2\t0\tbase\th13\t" },
  { "nick 3 x 1 x 1 mm. Guide strips show scoring but stay as they are", EM_UNITS_METRIC, "!1\t2\tkind\tgroove\t" },
  { "ejector sleeve worn inside, should be 6.00, measures 6.07, 25 long mm", EM_UNITS_METRIC, "1\t1\tkind\tbore\t" },
  { "2 cavity inserts. Each insert has 3 dings, .06 x .02 x .015", EM_UNITS_INCH, "!1\t1\tcount\t6\t" },
  { "nick 3 x 1 x 1 mm\nBush is H13 at 48.", EM_UNITS_METRIC, "2\t0\thardness\t48\tHRC" },
  { "SHAFT .750 DIA, BUILD UP .005 PER SIDE X 1.00 LG\nKEYWAY .188 WIDE NEXT TO IT", EM_UNITS_INCH, "!2\t1\tslot_width\t4.7752\tmm" },
  { "Corner worn. Diameter of the insert 36 mm, worn to R 0,3.\nIt is the outside edge.", EM_UNITS_METRIC, "2\t1\tside\touter\t" },
  { "Tool: GT 4417, 2 cavity closure tool\nnick 2.5 long x 0.4 x 0.3", EM_UNITS_METRIC, "1\t0\ttool_number\tGT 4417\t" },
  { "bezel tool (#2210)\nnick 2.5 long x 0.4 x 0.3", EM_UNITS_METRIC, "1\t0\ttool_number\t2210\t" },
  { "bores are egged out. Should be 1.125, they gauge 1.131 now. Four of them, 1.375 deep.", EM_UNITS_METRIC, "1\t1\tlength\t34.925\tmm" },
  { "bore 6 worn to 6.1 mm\nDepth to weld: 12 from the face", EM_UNITS_METRIC, "2\t1\tlength\t12\tmm" },
  { "nick 3 x 1 x 1 mm.\nOur youngest fellow put the thing away in a hurry.", EM_UNITS_METRIC, "2\t0\tunused\tOur youngest fellow put the thing away in a hurry\t" },
  { "éclat de l'arête 3 x 1 x 1 mm\nacier 1.2344, 46 HRC, chromé", EM_UNITS_METRIC, "2\t0\tcoating\tchrome\t" },
  { "Bohrung Ø 4 ausgeschlagen, 6 Stück. Neue Stifte haben Ø 4, alte Bohrung jetzt 4,2. Tiefe 30 mm.", EM_UNITS_METRIC, "1\t1\tworn\t4.2\tmm" },
  { "Tip of core broken off, 6 x 1 mm, build up 2.5 mm.", EM_UNITS_METRIC, "1\t1\tkind\trib\t" },
  { "1) Riss 9 lang, 1 tief\n2) Kratzer 5 lang\nzu 2) Aufmaß 0,1", EM_UNITS_METRIC, "3\t2\tstock\t0.1\tmm" },
  { "WAND 28 LANG, 5 HOCH, 0,15 AUFTRAGEN\nFREIMACHEN WIR SELBST", EM_UNITS_METRIC, "2\t0\tfinish\tcustomer\t" },
  { "Damm 20 x 5 x 1,2 schweißen.\nUmgebung gut zugänglich.", EM_UNITS_METRIC, "2\t1\taccess\topen\t" },
  { "cara baja 0,3, 25 x 10 mm\nEl pulido final lo hacemos nosotros.", EM_UNITS_METRIC, "2\t0\tfinish\tcustomer\t" },
  { "portée basse de 0,3, 25 x 10 mm\npolissage par notre fournisseur", EM_UNITS_METRIC, "2\t0\tfinish\tcustomer\t" },
  { "[ ] parting line corner rolled .008, 1.2 lg\n[ ] core pin .218 worn to .214, .62 lg", EM_UNITS_INCH, "2\t2\tkind\tpin\t" },
  { "[x] crack 9 mm long, 1 deep\n[ ] pin dia 6 worn to 5.9, 10 long", EM_UNITS_METRIC, "!2\t2\tkind\tpin\t" },
  { "[ ] crack 9 mm long, 1 deep\n[X] pin dia 6 worn to 5.9, 10 long", EM_UNITS_METRIC, "!1\t1\tkind\tgroove\t" },
  { "TOOL: 2-PLATE CRATE\nnick 3 x 1 x 1 mm", EM_UNITS_METRIC, "!1\t0\ttool_number\t2-PLATE\t" },
  { "nick 3 x 1 x 1 mm\nCHROME PLATING STRIPPED BEFORE SHIPPING.", EM_UNITS_METRIC, "!2\t0\tcoating\tchrome\t" },
  { "nick 3 x 1 x 1 mm, P20\ncrack 4 long 1 deep, H13\nnick 4 x 1 x 1, S7\nnick 5 x 1 x 1, A2\nnick 6 x 1 x 1, D2\nnick 7 x 1 x 1, O1\nnick 8 x 1 x 1, M2", EM_UNITS_METRIC, "7\t7\tbase\tm2\t" },
  { "Check\tSpec\tFound\tLength\tAction\nkey height\t.250\t.250\t\tnone\nstop face\t\t.010 low\t1.0 x .75\tweld", EM_UNITS_INCH, "3\t1\tthickness\t0.254\tmm" },
  /* What radius is left, in other words; how much is too thin or too wide, across; no unit before a metal. */
  { "Kante R0,6 auf 120 mm Länge, muss R0,1", EM_UNITS_METRIC, "1\t1\tradius_to\t0.1\tmm" },
  { "Edge worn R0.6 at one end and R0.2 at the other, 20 long", EM_UNITS_METRIC, "1\t1\tquestion\ttwo-values\t" },
  { "Edge worn R0.25, 20 long. Keep R0.05.", EM_UNITS_METRIC, "1\t1\tradius_to\t0.05\tmm" },
  { "CORNER WORN .031 R X 1.25 LG, LEAVE .005 R", EM_UNITS_INCH, "!1\t1\tstock\t0.127\tmm" },
  { "The ring edge, 32.6 diameter at the outside edge, is rounded about 0.25 (should be 0.05)", EM_UNITS_METRIC, "1\t1\tradius\t0.25\tmm" },
  { "Le bord intérieur du trou ø40 est mangé, R1 sur 180°, le remettre à 0,3", EM_UNITS_METRIC, "!1\t1\tangle\t180\tdeg" },
  { "PINS Ø2.5 WORN 0.04 UNDER SIZE, 10 LONG", EM_UNITS_METRIC, "1\t1\tbuild\t0.02\tmm" },
  { "Stift ⌀8 um 0,05 zu dünn, 20 lang", EM_UNITS_METRIC, "1\t1\tbuild\t0.025\tmm" },
  { "Bohrung ⌀20 im Durchmesser um 0,08 zu groß, 30 tief", EM_UNITS_METRIC, "1\t1\tdiameter\t20\tmm" },
  { "HOLE .312 DIA OVERSIZE BY .004, DEPTH .80", EM_UNITS_INCH, "1\t1\tbuild\t0.0508\tmm" },
  { "Gate insert: gate ⌀0.8 eroded to 1.05, 1.5 deep", EM_UNITS_METRIC, "1\t1\tkind\tbore\t" },
  { "Angusspunkt ausgewaschen ⌀1,4 soll ⌀1,0, Tiefe 2", EM_UNITS_METRIC, "1\t1\tworn\t1.4\tmm" },
  { "ALESAGE Ø16 H7 USE A Ø16,12 SUR PROF. 25", EM_UNITS_METRIC, "1\t1\tlength\t25\tmm" },
  { "Pin dia 3, 6 long, lost 0.04 on dia.\nBoth in M2, 60 HRC", EM_UNITS_METRIC, "1\t1\tdiameter\t3\tmm" },
  { "Three blades snapped short: 0.6 thick x 9 long, tops need 0.7 mm of metal.\nThey sit in a pocket 14 deep and 5 wide so it's hard to get in.", EM_UNITS_METRIC, "2\t1\tslot_width\t5\tmm" },
  { "3. Flanc de la fente trop mince : recharger 0,15 sur 60 x 8 mm.\nLa fente fait 1,6 mm de large et 8 mm de profondeur.", EM_UNITS_METRIC, "1\t1\theight\t8\tmm" },
  { "3. Flanc de la fente trop mince : recharger 0,15 sur 60 x 8 mm.\nL'accès est difficile au point 3.", EM_UNITS_METRIC, "2\t1\taccess\trestricted\t" },
  { "Flanke im Kanal, 40 x 6 mm, es fehlen 0,2\n\nWerkstoff 1.2316, Kanal 4,5 breit, 6 tief.", EM_UNITS_METRIC, "3\t1\tslot_depth\t6\tmm" },
  { "SLOT FLANK WORN, ADD 0.2 MM\nSLOT 8 W X 15 DP X 48 LG", EM_UNITS_METRIC, "2\t1\tlength\t48\tmm" },
  { "ADD DAM ACROSS CHANNEL, .75 LG X .10 WIDE X .08 HIGH\nCHANNEL .75 WIDE X .25 DP", EM_UNITS_INCH, "2\t1\tslot_width\t19.05\tmm" },
  { "- rib pocket flank 45 long, 11 high, weld on 0.25\n- slot there is only 2.4 wide and 11 deep, so bad access", EM_UNITS_METRIC, "2\t1\tslot_width\t2.4\tmm" },
  { "BUILD UP RIB TIP .020, RIB .040 THK X 1.25 LG\nRIB SITS .375 DOWN IN A .25 WIDE SLOT", EM_UNITS_INCH, "2\t1\tslot_depth\t9.525\tmm" },
  { "1) wall of feed slot worn 0.2 mm, 45 x 8\n2) nick 3 x 1 x 1 on land\nThe feed slot is 2.5 wide and 8 deep.", EM_UNITS_METRIC, "3\t1\tslot_width\t2.5\tmm" },
  { "Wall worn 0.2, 45 x 8 mm\nSlot 12 long, 3 wide, 2 deep to be filled", EM_UNITS_METRIC, "2\t2\tkind\trecess\t" },
  { "WALL OF SLIT WORN, ADD 0.1 MM, 50 LG X 20 HIGH\nWEIR 30 X 3 X 1.5 HIGH\nACCESS TO SLIT RESTRICTED", EM_UNITS_METRIC, "3\t1\taccess\trestricted\t" },
  { "WELD VALVE SEAT CONE 90° INCL\nMOUTH DIA 24, 5 DEEP\nTHK 0.5 EVEN\nRESTRICTED, SEAT IS 60 DOWN THE HOLE", EM_UNITS_METRIC, "4\t1\taccess\trestricted\t" },
  { "dent, round, 4 mm dia, 0.8 mm deep\nLocation: accessible from split line", EM_UNITS_METRIC, "2\t1\taccess\topen\t" },
  { "Nick 2 x 1 x 1 mm\nthe blade fell on it", EM_UNITS_METRIC, "2\t0\tunused\tthe blade fell on it\t" },
  { "one of the lads dropped a spanner on the die. Nick 2 x 1 x 1 mm", EM_UNITS_METRIC, "1\t0\tunused\tone of the lads dropped a spanner on the die\t" },
  { "Kerbe 2 x 1 x 1 mm\nder Kern ist uns runtergefallen", EM_UNITS_METRIC, "2\t0\tunused\tder Kern ist uns runtergefallen\t" },
  { "NICK 2 X 1 X 1 MM\nOTHER SIDE WALL GOOD", EM_UNITS_METRIC, "2\t0\tunused\tOTHER SIDE WALL GOOD\t" },
  { "rayure 12 mm de long, 0,2 mm de profondeur\nLes colonnes sont correctes.", EM_UNITS_METRIC, "2\t0\tunused\tcolonnes sont correctes\t" },
  { "NICK 2 X 1 X 1 MM\nNO OTHER WORK", EM_UNITS_METRIC, "2\t0\tunused\tNO OTHER WORK\t" },
  { "nervio de 0,7 mm de espesor y 11 mm de largo, sin punta, aportar 0,6 mm", EM_UNITS_METRIC, "!1\t0\tunused\tsin punta\t" },
  { "NICK 2 X 1 X 1 MM\nSTRIP CHROME FIRST", EM_UNITS_METRIC, "2\t0\tunused\tSTRIP CHROME FIRST\t" },
  { "NICK 2 X 1 X 1 MM\nSTRIP CHROME FIRST", EM_UNITS_METRIC, "2\t0\tcoating\tchrome\t" },
  { "ITEM  DESCRIPTION  SIZE (MM)\n1  CHIP ON EDGE  2 X 1 X 1", EM_UNITS_METRIC, "!1\t0\tunused\tDESCRIPTION\t" },
  { "Nick 2 x 1 x 1 mm. 1.2311 hardened, 30 HRC", EM_UNITS_METRIC, "!1\t0\tunused\thardened\t" },
  { "Golpe de 6 mm de largo, 0,8 y 0,5 mm.\nSe golpeó al desmontar la corredera.", EM_UNITS_METRIC, "2\t0\tunused\tSe golpeó al desmontar\t" },
  { "BUILD UP STEP, .500 X .375 X .025 HIGH\nSTEP MUST BE SQUARE TO FACE A WITHIN .001", EM_UNITS_INCH, "!2\t2\tkind\tface\t" },
  { "face 20 x 10 mm low 0.2. Face must be flat within 0.01 after grinding", EM_UNITS_METRIC, "!1\t2\tkind\tface\t" },
  { "Land is beat down, .004 to .006 low, .090 wide and 9.5\" long.", EM_UNITS_INCH, "1\t1\tthickness\t0.127\tmm" },
  { "Land worn .004 to .006, .090 x 2.5", EM_UNITS_INCH, "1\t1\tthickness\t0.127\tmm" },
  { "Bore ⌀20 mm, washed .1 to .2 mm per side, 30 deep", EM_UNITS_METRIC, "1\t1\tbuild\t0.15\tmm" },
  { "Bore ⌀1.000 worn 1.005 to 1.010", EM_UNITS_INCH, "!1\t1\tworn\t25.5905\tmm" },
  { "Face low by anything from 0.2 to 0.4 mm, 30 x 12 mm", EM_UNITS_METRIC, "1\t1\tlength\t30\tmm" },
  { "Wall 30 mm long 10 high. Scored badly, add 0.3.", EM_UNITS_METRIC, "1\t1\tthickness\t0.3\tmm" },
  { "Bore ⌀20 mm x 30 deep. Scored badly, add 0.3 per side.", EM_UNITS_METRIC, "1\t1\tbuild\t0.3\tmm" },
  { "Valve seat, cone, mouth Ø9 mm, small end Ø5, 2 deep. Erosion all over, build 0.4.", EM_UNITS_METRIC, "1\t1\tthickness\t0.4\tmm" },
  { "FLANKS OF KEYWAY WORN, 1.50 LONG X .156 HIGH, ADD .008\nSHAFT 4340, 36-38 RC.", EM_UNITS_INCH, "!2\t2\tkind\tpin\t" },
  { "Parting line dinged at 3 spots, each approx. 8 mm long, 1.2 deep x 1 mm wide.", EM_UNITS_METRIC, "1\t1\tkind\tedge-nick\t" },
  { "Hole dia 10 mm has become 10.12, depth 20 mm. To be closed to dia 10.", EM_UNITS_METRIC, "1\t1\tworn\t10.12\tmm" },
  /* Walls of pockets, cracks at corners and filled, oval pits, cones by other names, weirs. */
  { "POCKET FOR LOCK KEY: WALL WORN 0.2, 25 LONG, 10 HIGH", EM_UNITS_METRIC, "1\t1\tkind\tsidewall\t" },
  { "Slot: one side worn 0.2, 25 long, 10 deep", EM_UNITS_METRIC, "1\t1\tthickness\t0.2\tmm" },
  { "SLIT IN DIE PLATE 3 WIDE: WALL SCORED, ADD 0.1, 50 LG X 20 HIGH", EM_UNITS_METRIC, "1\t1\tslot_width\t3\tmm" },
  { "Außerdem hat die Ecke am Anschnitt einen Riss: 6 mm lang, 0,5 tief.", EM_UNITS_METRIC, "1\t1\tkind\tgroove\t" },
  { "CRACK AT CORNER .50 LONG X .06 DEEP, GRIND OUT AND FILL", EM_UNITS_INCH, "1\t1\tkind\tgroove\t" },
  { "a pit in the P/L 5 x 3 mm oval and 1.1 deep", EM_UNITS_METRIC, "1\t1\tform\tellipsoid\t" },
  { "COAT CENTRE CONE, MOUTH 12 DIA, CONE 45°, 3 DEEP\nADD 0.4", EM_UNITS_METRIC, "1\t1\tquestion\tcone-angle\t" },
  { "Siège conique, grand Ø24, angle total 90°, profondeur 4\nRecharger 0,5 sur toute la surface", EM_UNITS_METRIC, "2\t1\tthickness\t0.5\tmm" },
  { "Ventilsitz Kegel 60° inklusive, Mündung ⌀8, Tiefe 3, rundum 0,3 drauf", EM_UNITS_METRIC, "!1\t1\tquestion\tcone-angle\t" },
  { "parting line edge at cavity 2 smashed by a stuck part, 11 mm long, 0.7 on the top, 0.5 on the side", EM_UNITS_METRIC, "1\t1\tleg_b\t0.5\tmm" },
  { "KANTE EINSEITIG BESCHÄDIGT 7 X 0,8", EM_UNITS_METRIC, "1\t1\tquestion\tsecond-leg\t" },
  { "Auf der Einlauffläche fehlt ein Wehr: Länge 40, Breite 4, Höhe 2, Flanken 10° Schräge, Enden angeschrägt", EM_UNITS_METRIC, "1\t1\tdraft\t10\tdeg" },
  { "DAMM 60 LANG 5 BREIT 1,5 HOCH ENDEN SCHRÄG", EM_UNITS_METRIC, "1\t1\tends\tdrafted\t" },
  { "L'angle a une fissure de 8 mm, 2 de profondeur", EM_UNITS_METRIC, "1\t1\tlength\t8\tmm" },
  { "nick 6 long, 4 wide, 2.5 high. Stay 3 mm off the land.", EM_UNITS_METRIC, "!1\t1\tquestion\tinch-or-mm\t" },
  { "HANDLE BOTTLE MOLD\nNICK 2 X 1 X 1 MM", EM_UNITS_METRIC, "!1\t0\tunused\tBOTTLE\t" },
  { "Can you laser it while I wait if I drive over?\nNick 2 x 1 x 1 mm", EM_UNITS_METRIC, "1\t0\tunused\tCan you laser it while I wait if I drive over\t" },
  { "Nick 2 x 1 x 1 mm. Could you weld it?", EM_UNITS_METRIC, "!1\t0\tunused\tCould you weld it\t" },
  { "> Nick 2 x 1 x 1 mm\n> Can you do this without annealing?", EM_UNITS_METRIC, "2\t0\tunused\tCan you do this without annealing\t" },
  { "Hi Mark,\nNick 2 x 1 x 1 mm", EM_UNITS_METRIC, "1\t0\tunused\tMark\t" },
  { "Hallo Team,\nKerbe 2 x 1 x 1 mm", EM_UNITS_METRIC, "!1\t0\tunused\tTeam\t" },
  { "Nick 2 x 1 x 1 mm\nCheers, Bas", EM_UNITS_METRIC, "2\t0\tunused\tBas\t" },
  { "Nick 2 x 1 x 1 mm\nRegards\nSøren", EM_UNITS_METRIC, "3\t0\tunused\tSøren\t" },
  { "Kav. 7 Angusspunkt ausgewaschen ⌀1,4 soll ⌀1,0, Tiefe 2", EM_UNITS_METRIC, "1\t1\tworn\t1.4\tmm" },
  { "CRACK .40 LG X .030 DP\nTEXTURE WITHIN .12 OF CRACK - PROTECT", EM_UNITS_INCH, "2\t1\tclearance\t3.048\tmm" },
  { "edge broke out - 4 mm long and 0.9 down.\nGraining on the cavity wall stops 1.5 mm from it so go easy.", EM_UNITS_METRIC, "2\t1\tclearance\t1.5\tmm" },
  { "ADD .5MM TO TOP OF WEAR STRIP 90 X 12\nCOUNTERSUNK SCREW HOLES IN STRIP, KEEP 3MM AWAY", EM_UNITS_METRIC, "2\t1\tnear\thole\t" },
  { "Stirnfläche 420 mm² um 0,1 abgenutzt\n2 Gewindebohrungen M5 liegen 4 mm neben der Stirnfläche", EM_UNITS_METRIC, "2\t1\tclearance\t4\tmm" },
  { "FLOOR DENT 4 X 2 X 0.5 DP MM\nRIB 1.0 THK X 7 LG, COAT 0.4 TOP\nTEXTURE 2 FROM DENT", EM_UNITS_METRIC, "3\t1\tnear\ttexture\t" },
  { "FILL 3 TAPPED HOLES X .50 DP, .25 FROM LEADER PIN BORE", EM_UNITS_INCH, "1\t1\tclearance\t6.35\tmm" },
  { "a dam on the flat of the die plate, 24 x 5 x 2.5 high mm.\nPlate is 1.2343 & has a hole dia 6 about 8 mm from the end, which is to stay open.", EM_UNITS_METRIC, "2\t1\tclearance\t8\tmm" },
  { "edge worn R0.4, 64 long\ncooling bore is 4 mm under it", EM_UNITS_METRIC, "2\t1\tclearance\t4\tmm" },
  { "SEALING FACE, AREA 85 MM2, RAISE 0.2\nSCREW HOLE DIA 6 MM AT 5 MM - KEEP OPEN\nDAM 12 X 2 X 0.8 HIGH", EM_UNITS_METRIC, "2\t1\tclearance\t5\tmm" },
  { "Kante 12 lang, 1 x 0,8 mm ausgebrochen\nAuswerferbohrung ⌀4 in 6 mm Entfernung, muss frei bleiben", EM_UNITS_METRIC, "2\t1\tclearance\t6\tmm" },
  { "Mella de 3 x 1 x 1 mm en el canto\nEl canal de refrigeración pasa a 5 mm por debajo", EM_UNITS_METRIC, "2\t1\tnear\thole\t" },
  { "nick 3 x 1 x 1 mm\nEJ. PIN HOLE DIA 4, 3 MM OFF", EM_UNITS_METRIC, "2\t1\tclearance\t3\tmm" },
  { "nick 3 x 1 x 1 mm, heater groove 4 mm from it", EM_UNITS_METRIC, "1\t1\tclearance\t4\tmm" },
  { "hole dia 6 mm worn to 6.1, 12 deep, 4 mm from the edge", EM_UNITS_METRIC, "1\t1\tkind\tbore\t" },
  { "BARRENO Ø25 MM ESTÁ A 25.08 MM, 50 MM DE PROFUNDIDAD", EM_UNITS_METRIC, "1\t1\tworn\t25.08\tmm" },
  { "nicks on the edge .10 long, .020 in from the top and .015 in from the bore", EM_UNITS_INCH, "!1\t1\tclearance\t0.381\tmm" },
  { "sur l'axe Ø25 recharger 0,2 au rayon sur 20 mm\nla plaque doit rester montée, espace libre 15 mm, accès difficile", EM_UNITS_METRIC, "2\t1\tclearance\t15\tmm" },
  { "NICK 4 X 0.6 X 0.6 MM ON RIB\nMIRROR POLISH ADJACENT, KEEP SPATTER OFF", EM_UNITS_METRIC, "2\t1\tnear\tpolish\t" },
  { "alésage Ø3, à recharger 0,1 au rayon sur 12 mm de profondeur.\nPolissage miroir juste à côté de l'alésage.", EM_UNITS_METRIC, "2\t1\tnear\tpolish\t" },
  /* How long is said behind the verb of building up; a point's number before an edge; how the damage came; where a rib stands. */
  { "Rippe oben aufbauen 28 lang 1,2 dick, 0,3 drauf", EM_UNITS_METRIC, "1\t1\tlength\t28\tmm" },
  { "Rippe auftragen 0,3 Länge 28, 1,2 dick", EM_UNITS_METRIC, "1\t1\tcoat\t0.3\tmm" },
  { "Pos 2 Kante R0,3 auf 40 mm", EM_UNITS_METRIC, "1\t1\tkind\tworn-corner\t" },
  { "Pos 10  Lip corner, R0.3 over 400 mm, restore", EM_UNITS_METRIC, "!1\t1\tcount\t10\t" },
  { "Pos 3 Schieber Kante R0,3 auf 400 mm", EM_UNITS_METRIC, "1\t1\tlength\t400\tmm" },
  { "Riss in der Tasche, 18 lang, 2 tief\nRiss ist gestern erst aufgefallen", EM_UNITS_METRIC, "!2\t2\tkind\tgroove\t" },
  { "Nick 3 x 1 x 1 mm\nNick happened during transport", EM_UNITS_METRIC, "!2\t2\tkind\tedge-nick\t" },
  /* How long an edge is, and behind it how thick: a blade. How wide: a strip. */
  { "Pinch-off mashed over 60 mm, blade is 0.8 wide and needs 0.5 back on top", EM_UNITS_METRIC, "1\t1\tthickness\t0.8\tmm" },
  { "Pinch-off mashed over 60 mm, blade is 0.8 wide and needs 0.5 back on top", EM_UNITS_METRIC, "1\t1\tlength\t60\tmm" },
  { "PINCH-OFF UPPER 52 LG, LAND 0.6 WIDE, BUILD UP 0.5 MM", EM_UNITS_METRIC, "1\t1\twidth\t0.6\tmm" },
  /* Repairs by their codes alone. */
  { "A) nick 3 x 1 x 1 mm\nB) pit dia 2 x 1 deep\nC) crack 12 long 2 deep\nTextured face 3 mm from B", EM_UNITS_METRIC, "4\t2\tnear\ttexture\t" },
  { "a) nick 3 x 1 x 1 mm\nb) pit dia 2 x 1 deep\nThe face near a) is polished", EM_UNITS_METRIC, "3\t1\tnear\tpolish\t" },
  { "1) nick 3 x 1 x 1 mm\n2) pit dia 2 x 1 deep\n3) crack 12 long 2 deep\n1 & 3 are in a textured area", EM_UNITS_METRIC, "4\t1\tnear\ttexture\t" },
  { "A) nick 3 x 1 x 1 mm\nB) pit dia 2 x 1 deep\nStock A 0.2, B 0.5", EM_UNITS_METRIC, "3\t2\tstock\t0.5\tmm" },
  { "A) nick 3 x 1 x 1 mm\nB) pit dia 2 x 1 deep\nStock 0.15 everywhere except item B, 0.4 there", EM_UNITS_METRIC, "3\t0\tstock\t0.15\tmm" },
  { "1) nick 3 x 1 x 1 mm\n2) pit dia 2 x 1 deep\nWe finish 1, you finish 2", EM_UNITS_METRIC, "3\t2\tfinish\tshop\t" },
  { "A) Kante 3 x 1 x 1 mm\nB) Delle Ø2 x 1 tief\nFertigbearbeitung A durch uns, B bei Ihnen", EM_UNITS_METRIC, "3\t2\tfinish\tshop\t" },
  /* Repairs by the names of their parts. */
  { "Tip: nick 3 x 1 x 1 mm\nDie: scratch 5 long, 0.05 deep, 0.1 wide\nWe will hone the die ourselves", EM_UNITS_METRIC, "3\t2\tfinish\tcustomer\t" },
  { "Nick on the core 3 x 1 x 1 mm. Crack in the cavity 12 long, 2 deep. Leave 0.3 on the core, we grind it.", EM_UNITS_METRIC, "1\t1\tstock\t0.3\tmm" },
  { "La aleta de 1,1 x 15 mm perdió 0,7 en la punta. Mella en el canto 3 x 1 x 1. Para la aleta déjenme 0,2 de más.", EM_UNITS_METRIC, "1\t1\tstock\t0.2\tmm" },
  { "Dam 30 x 4 x 2 mm. Edge nick 3 x 1 x 1 mm.\nYou grind the dam.", EM_UNITS_METRIC, "2\t1\tfinish\tshop\t" },
  { "Nick 3 x 1 x 1 mm. We machine nothing here.", EM_UNITS_METRIC, "1\t0\tfinish\tshop\t" },
  { "Kante 3 x 1 x 1 mm, nitriert. Nitrierschicht schleifen wir vorher runter.", EM_UNITS_METRIC, "!1\t0\tfinish\tcustomer\t" },
  { "Kante 3 x 1 x 1 mm. Aufmaß 0,5 zum Fräsen durch uns", EM_UNITS_METRIC, "1\t0\tfinish\tcustomer\t" },
  /* How many, told apart. */
  { "Four vents ground too deep, each 12 x 6, 0.05 deep, fill them", EM_UNITS_METRIC, "1\t1\tcount\t4\t" },
  { "VENT LAND 8 X 2 MM DOWN 0.05, ONE PER HALF, 32 IN ALL", EM_UNITS_METRIC, "1\t1\tcount\t32\t" },
  { "WORN LAND CORNER R0.2 MM, 30 LG EACH, 2 PER OUTLET X 4 OUTLETS", EM_UNITS_METRIC, "1\t1\tcount\t8\t" },
  { "Kernstifte (2 Schieber à 3 Stifte): Soll ø 5,1, Ist 4,95, 14 mm lang", EM_UNITS_METRIC, "1\t1\tcount\t6\t" },
  { "DIE PLATE, 24 HOLES\nALL HOLES WORN, 14 MM NOMINAL, 14.5 AT PRESENT, 12 DEEP", EM_UNITS_METRIC, "1\t1\tcount\t24\t" },
  { "Tasche 7 und 8: Wand je 0,12 zu weit, 35 lang x 11 hoch", EM_UNITS_METRIC, "1\t1\tcount\t2\t" },
  { "Nr | Stk | Was | Maße\n---+-----+-----+-----\n1 | 2 | Delle | Ø1,5 x 0,3 tief\n2 | 6 | Rippe | 14 lang, 0,8 dick, 0,5 aufbauen", EM_UNITS_METRIC, "4\t2\tcount\t6\t" },
  /* What shape a dam has, below its sizes or beside an upright's that is one. */
  { "DAM 85 LONG, 6 WIDE, 1.5 MM HIGH\nFLANKS 30°, ENDS TAPERED", EM_UNITS_METRIC, "2\t1\tdraft\t30\tdeg" },
  { "- weir 240 long, 5 wide, 2 mm high\n- ends rounded\n- sides with 15 degrees draft each", EM_UNITS_METRIC, "2\t1\tends\trounded\t" },
  { "Neue Dämme, 2 Stück:\n - 85 lang\n - 6 breit\n - 2 hoch", EM_UNITS_METRIC, "4\t1\theight\t2\tmm" },
  { "Neue Dämme, 2 Stück:\n - 85 lang\n - 6 breit\n - 2 hoch", EM_UNITS_METRIC, "1\t1\tcount\t2\t" },
  { "Steg im Verteiler: L 120, B 4, H 1,5, Flanken 10° schräg, Enden auslaufend", EM_UNITS_METRIC, "1\t1\tkind\tdam\t" },
  { "Steg im Verteiler: L 120, B 4, H 1,5, Flanken 10° schräg, Enden auslaufend", EM_UNITS_METRIC, "1\t1\twidth\t4\tmm" },
  { "Stempel Ø7,98 ist, Ø8,00 soll, 12 lang\nauftragen 0,3 auf Ø", EM_UNITS_METRIC, "2\t1\tbuild\t0.15\tmm" },
  /* Metals by the numbers and letters of the repairs. */
  { "1) Fläche 20 x 6 mm, 0,12 auftragen\n2) Fläche 30 x 8, 0,2 auftragen\nMaterial Pos. 1 1.2343, Pos. 2 1.2311", EM_UNITS_METRIC, "3\t2\tbase\tp20\t" },
  { "a) nick 3 x 1 x 1 mm\nb) crack 12 long 1 deep\nc) pit dia 2 x 1 deep\na)-b) P20, c) S7", EM_UNITS_METRIC, "4\t2\tbase\tp20\t" },
  { "1) nick 3 x 1 x 1 mm\n2) crack 12 long 1 deep\n3) pit dia 2 x 1 deep\nP20 (items 1, 3), S7 (item 2)", EM_UNITS_METRIC, "4\t3\tbase\tp20\t" },
  /* Rows of what shall be and what is, without a noun that is known. */
  { "Part        nominal     actual      length\nFaceplate   dia 4.000   dia 4.012   1.0", EM_UNITS_INCH, "2\t1\tkind\tbore\t" },
  { "Merkmal   Soll    Ist     Bem.\nZapfen Ø  20,00   19,94   Länge 60", EM_UNITS_METRIC, "2\t1\tlength\t60\tmm" },
  { "Kante 3 x 1 x 1 mm. Bohrungen der Heizung nicht zuschweißen", EM_UNITS_METRIC, "1\t0\trefuse\tBohrungen der Heizung\t" },
  { "Nick 3 x 1 x 1 mm. No weld on datum face or dowel holes.", EM_UNITS_METRIC, "1\t0\trefuse\tdowel holes\t" },
  { "Nick 3 x 1 x 1 mm. Don't weld the cover plate behind it.", EM_UNITS_METRIC, "1\t0\trefuse\tcover plate\t" },
  { "dam 30 x 4 x 2 mm\nABSTAND ZUR LIPPE MIN. 6", EM_UNITS_METRIC, "2\t1\tclearance\t6\tmm" },
  /* Without a size beside a whole repair it is none, and stays to be looked at. */
  { "Nick 3 x 1 x 1 mm\nBore was found worn", EM_UNITS_METRIC, "2\t0\tunused\tBore was found worn\t" },
  { "Nick 3 x 1 x 1 mm\nBore was found worn", EM_UNITS_METRIC, "!2\t2\tkind\tbore\t" },
  { "SPRUE BUSH AND VALVE SEAT\nNICK 3 X 1 X 1 MM", EM_UNITS_METRIC, "2\t1\tkind\tedge-nick\t" },
  { "Nick 3 x 1 x 1 mm. The pin that runs there is dia 12.", EM_UNITS_METRIC, "!1\t2\tkind\tpin\t" },
  { "Nick 3 x 1 x 1 mm\nall 4 the same", EM_UNITS_METRIC, "2\t1\tcount\t4\t" },
  { "Nick 3 x 1 x 1 mm\nH13, same as ever", EM_UNITS_METRIC, "!2\t2\tkind\tedge-nick\t" },
  { "Rib 1.2 mm thick, 9 mm long, rebuild 1.5 on top\nthe rib stands in a slot 5 wide 7 deep", EM_UNITS_METRIC, "2\t1\tslot_width\t5\tmm" },
  { "Steg 0,8 dick x 22 lang, oben 1,5 aufbauen\n2 Stk\nSteg sitzt in Nut 3 breit, 6 tief", EM_UNITS_METRIC, "3\t1\tslot_depth\t6\tmm" },
  { "DO NOT WELD Ø3 VENT HOLE. FILL NICK 3 X 1 X 1 MM", EM_UNITS_METRIC, "1\t0\trefuse\tØ3 VENT HOLE\t" },
  { "NICK 3 X 1 X 1 MM\nDo not weld: ejector hole dia 4, threads M6", EM_UNITS_METRIC, "!2\t2\tkind\tbore\t" },
  { "CORE PINS 3 OFF, TIP WASHED: NOW Ø5.7 MM OVER LAST 8 MM, BUILD TO Ø6\nDO NOT WELD TIP HOLE Ø1", EM_UNITS_METRIC, "1\t1\tworn\t5.7\tmm" },
  { "Core pins for repair\n1) pin dia 4 mm worn to 3.9, 10 long\n2) pin dia 5 mm worn to 4.9, 10 long", EM_UNITS_METRIC, "3\t2\tworn\t4.9\tmm" },
  { "Blade edge chipped, 0.8mm deep, 1.5 long, 0.5 wide. Blade 1.0 thick.", EM_UNITS_METRIC, "!1\t2\tkind\trib\t" },
  { "Keyway sloppy, one side of it is worn .012. Wall is 2.00 long by .25 high.", EM_UNITS_INCH, "1\t1\tthickness\t0.3048\tmm" },
  { "Keyway worn, one side is worn .012, 2.00 long by .25 high.", EM_UNITS_INCH, "1\t1\tkind\tsidewall\t" },
  { "There's a nick 1.5mm long, 0.3mm deep and 0.2mm deep.\nSecond is the same tool, ejector side.", EM_UNITS_METRIC, "!1\t1\tcount\t2\t" },
  { "We have 3 identical tools and all of them have the gate edge worn, R.010 x .25 long", EM_UNITS_INCH, "!1\t1\tquestion\tcount-unknown\t" },
  { "EDGE WASHED R.008 X .125 LG, 32 CAVITIES, 2 PER CAVITY", EM_UNITS_INCH, "1\t1\tcount\t64\t" },
  { "chip on shut off edge, both cavities, 4 mm long, 0.8 high, 0.5 wide", EM_UNITS_METRIC, "1\t1\tcount\t2\t" },
  { "shelf low .02 across .75 x .30", EM_UNITS_INCH, "1\t1\tthickness\t0.508\tmm" },
  { "Nick 2 x 1 x 1 mm\nThe dovetail slot must stay clear of weld please.", EM_UNITS_METRIC, "2\t0\trefuse\tdovetail slot\t" },
  { "NICK 2 X 1 X 1 MM\nHEAD Ø7 NOT TO BE TOUCHED", EM_UNITS_METRIC, "2\t0\trefuse\tHEAD Ø7\t" },
  { "Kerbe 2 x 1 x 1 mm\nPassfedernut bitte nicht schweißen.", EM_UNITS_METRIC, "2\t0\trefuse\tPassfedernut\t" },
  { "Kerbe 2 x 1 x 1 mm\nDie Entlüftungsnut muss frei bleiben.", EM_UNITS_METRIC, "2\t0\trefuse\tEntlüftungsnut\t" },
  { "Kerbe 2 x 1 x 1 mm\nAuswerfer ⌀8: nicht reparieren, ersetzen wir", EM_UNITS_METRIC, "2\t0\trefuse\tAuswerfer ⌀8\t" },
  { "éclat 2 x 1 x 1 mm\nAlésage central Ø4 à ne pas boucher.", EM_UNITS_METRIC, "2\t0\trefuse\tAlésage central Ø4\t" },
  { "éclat 2 x 1 x 1 mm\nAlésage central Ø4 à ne pas boucher.", EM_UNITS_METRIC, "!2\t2\tkind\trecess\t" },
  { "éclat 2 x 1 x 1 mm\nNe soudez pas la portée de centrage.", EM_UNITS_METRIC, "2\t0\trefuse\tportée de centrage\t" },
  { "golpe 2 x 1 x 1 mm\nLa ranura de la junta tiene que quedar libre de soldadura.", EM_UNITS_METRIC, "2\t0\trefuse\tranura de la junta\t" },
  { "Nick 2 x 1 x 1 mm\nNo weld in the 4 mm water hole please", EM_UNITS_METRIC, "2\t0\trefuse\t4 mm water hole\t" },
  { "NICK 2 X 1 X 1 MM\nDO NOT WELD WITHIN .06 OF THE PARTING LINE", EM_UNITS_METRIC, "!2\t2\tkind\tworn-corner\t" },
  { "Nick 2 x 1 x 1 mm\nWe must keep the datum pad weld free", EM_UNITS_METRIC, "2\t0\trefuse\tdatum pad\t" },
  /* Sentences that go on in the next line; the row of a face below it; lengths that paper tells otherwise. */
  { "We have a core insert here in 1.2767 at 54 HRC. The shut-off face is 0.15 low\nover 32 x 14 mm after a screw was trapped.", EM_UNITS_METRIC, "2\t1\twidth\t14\tmm" },
  { "The bush has a bore of 30 mm that has picked up, worn 0.08 on dia over a length\nof 40 mm. Send it back soon.", EM_UNITS_METRIC, "2\t1\tlength\t40\tmm" },
  { "Profile die, the hole for the dowel of 9 mm has opened to 9.4 mm, and is 11 mm deep\nface low 0.2, 20 x 10", EM_UNITS_METRIC, "2\t2\tkind\tface\t" },
  { "FACE LOW 0.15 MM\nSIZE 32 X 14 MM", EM_UNITS_METRIC, "2\t1\tlength\t32\tmm" },
  { "Insert edge is rolled, length 30 (drawing says 34), radius 0.5", EM_UNITS_METRIC, "1\t1\tquestion\ttwo-values\t" },
  { "Bore measures 14.22 mm instead of 14.00. It is 26 mm deep, the drawing says 30 mm deep.", EM_UNITS_METRIC, "!1\t1\tlength\t26\tmm" },
  { "Rille 20 lang, laut Zeichnung 25 lang, 0,3 tief", EM_UNITS_METRIC, "!1\t1\tlength\t20\tmm" },
  { "Rib height is 5.0, drawing says 5.3, 0.8 thick 20 long", EM_UNITS_METRIC, "1\t1\tcoat\t0.3\tmm" },
  { "Face 40 x 20 mm worn, add 0.3 mm.\nREAM BY YOU", EM_UNITS_METRIC, "2\t0\tfinish\tshop\t" },
  { "Face 40 x 20 mm worn, add 0.3 mm.\nto be reamed .312 by you", EM_UNITS_METRIC, "2\t0\tfinish\tshop\t" },
  { "Face 40 x 20 mm worn, add 0.3 mm.\nAll work back to size by yourselves please.", EM_UNITS_METRIC, "2\t0\tfinish\tshop\t" },
  { "Face 40 x 20 mm worn, add 0.3 mm.\nhis guy will turn it", EM_UNITS_METRIC, "2\t0\tfinish\tcustomer\t" },
  { "Face 40 x 20 mm worn, add 0.3 mm.\nSURFACE IS POLISHED BY CUSTOMER", EM_UNITS_METRIC, "2\t1\tfinish\tcustomer\t" },
  { "Face 40 x 20 mm worn, add 0.3 mm.\nAufmaß 0,2, fräst selbst", EM_UNITS_METRIC, "2\t0\tfinish\tcustomer\t" },
  { "Face 40 x 20 mm worn, add 0.3 mm.\nMecanizado posterior en nuestra casa.", EM_UNITS_METRIC, "2\t0\tfinish\tcustomer\t" },
  { "Face 40 x 20 mm worn, add 0.3 mm.\nel acabado por su cuenta", EM_UNITS_METRIC, "2\t0\tfinish\tshop\t" },
  { "Face 40 x 20 mm worn, add 0.3 mm.\nFIN. MACH. BY OTHERS", EM_UNITS_METRIC, "2\t0\tfinish\tcustomer\t" },
  { "1. Strip low by 0.4, 90 x 20 mm\n2. Bore 12 opened out to 12.15, 30 deep.\n3. Nick 2 x 1 x 1\nYou machine 1 and 2, we do 3.", EM_UNITS_METRIC, "4\t2\tfinish\tshop\t" },
  { "1. Strip low by 0.4, 90 x 20 mm\n2. Bore 12 opened out to 12.15, 30 deep.\n3. Nick 2 x 1 x 1\nYou machine 1 and 2, we do 3.", EM_UNITS_METRIC, "4\t3\tfinish\tcustomer\t" },
  { "pos 1: nick 2 x 1 x 1 mm\npos 2: bore 12 worn to 12.1, 20 deep\nWe grind item 1, item 2 to be finished by you", EM_UNITS_METRIC, "3\t2\tfinish\tshop\t" },
  { "Ref: 2207\nNick 3 x 1 x 1 mm", EM_UNITS_METRIC, "1\t0\treference\t2207\t" },
  { "REF: RFQ-2207", EM_UNITS_METRIC, "1\t0\treference\tRFQ-2207\t" },
  { "Ref. 3: nick 3 x 1 x 1 mm", EM_UNITS_METRIC, "!1\t0\treference\t3\t" },
  { "Ribs no. 3 and 7 broken, 1.2 mm thick, 18 long, 2.5 to build", EM_UNITS_METRIC, "1\t1\tcoat\t2.5\tmm" },
  { "Cracked from corner of pocket to water line, 22mm visible, depth unknown.", EM_UNITS_METRIC, "1\t1\tkind\tgroove\t" },
  { "Crack runs from the pocket corner to the ejector bore, 12 mm long, 2 deep", EM_UNITS_METRIC, "1\t1\tkind\tgroove\t" },
  { "R15.5 mm spherical seat, face Ø25, eroded, 0.5 mm all over.", EM_UNITS_METRIC, "1\t1\tdiameter\t25\tmm" },
  { "Sprue bush SR15.5 mm, face ⌀25, 0.5 mm to put on", EM_UNITS_METRIC, "1\t1\tkind\tseat\t" },
  { "BUILD UP BOTH FLANKS OF KEYWAY, FLANKS 1.50 LONG X .156 HIGH, ADD .008 PER FLANK.", EM_UNITS_INCH, "1\t1\tcount\t2\t" },
  { "Weld up stripped M6 hole, 5 dia 12 deep mm", EM_UNITS_METRIC, "1\t1\tkind\trecess\t" },
  { "LUG LOW 12 X 12 X 0.6 MM", EM_UNITS_METRIC, "1\t1\tthickness\t0.6\tmm" },
  { "Shutoff face 30 x 12 mm, 0.08 gap needs closing", EM_UNITS_METRIC, "1\t1\tthickness\t0.08\tmm" },
  { "TALADRO MAL POSICIONADO Ø6,5 X 14 PROF. RELLENAR A RAS.", EM_UNITS_METRIC, "1\t1\tform\tcylinder\t" },
  { "Añadir un resalte de 25 x 3 x 1,5 de alto, extremos rectos, salida 5°", EM_UNITS_METRIC, "1\t1\tkind\tdam\t" },
  { "3 expulsores Ø4 que están en 3,95, largo 15 mm", EM_UNITS_METRIC, "1\t1\tworn\t3.95\tmm" },
  { "ARISTA CIRCULAR Ø30 REDONDEADA R0,6 POR LA PARTE DE FUERA", EM_UNITS_METRIC, "1\t1\tside\touter\t" },
  { "macho ø4, está en 3,93 en los últimos 15 mm\nquiere que se lo devolvamos rectificado a cota", EM_UNITS_METRIC, "2\t0\tfinish\tshop\t" },
  { "broche dia 6, elle est à 5,94 sur 30 mm\nil veut qu'on la rende rectifiée", EM_UNITS_METRIC, "2\t0\tfinish\tshop\t" },
  { "Lèvre écrasée sur 38 mm, arrondie à 0,8, la veut à 0,2", EM_UNITS_METRIC, "!1\t2\tkind\tworn-corner\t" },
  { "Amorce de rupture, 25 mm de long et 2 de profond", EM_UNITS_METRIC, "1\t1\tkind\tgroove\t" },
  { "Coin pété 5 x 1 x 1 mm, à refaire vif", EM_UNITS_METRIC, "!1\t2\tkind\tworn-corner\t" },
  { "Nervure ép. 0,6 mm, longueur 85, à monter de 0,5. Bouts ronds enveloppés", EM_UNITS_METRIC, "1\t1\twraps\t2\t" },
  { "2x vert. shut-off faces, 22 x 9 mm, 0.1 low", EM_UNITS_METRIC, "1\t1\tcount\t2\t" },
  { "thin blades 0.35 thick mm, 2.2 long, worn on the top, needs 0.25.\nTwo of the sliding cores got a dimple ⌀1, 0.3 deep.", EM_UNITS_METRIC, "2\t2\tcount\t2\t" },
  { "BUSE : siège conique, angle total 90°, grand ø14, profondeur 3, recharger 0,25\nAIGUILLE : pointe usée, ø4 à 3,9 sur 8 mm\nQté buses : 4", EM_UNITS_METRIC, "3\t1\tcount\t4\t" },
  { "WEIR 1 1/4 LG X 3/16 W X 1/8 HIGH. SQUARE ENDS. 3 BARS.", EM_UNITS_INCH, "1\t1\tcount\t3\t" },
  { "Repère A - éclat 1,5 x 0,4 x 0,4 mm\nRepère B - fissure 3 mm, profondeur 0,5\nRepère C - éclat 2 x 1 x 1\nLe repère B se retrouve sur les 6 noyaux.", EM_UNITS_METRIC, "4\t2\tcount\t6\t" },
  { "the bead on the 6 stripper inserts is flattened, bead 0.7 mm wide and 41 long, put 0.35 on", EM_UNITS_METRIC, "1\t1\tcount\t6\t" },
  { "the bead on the 6 stripper inserts is flattened, bead 0.7 mm wide and 41 long, put 0.35 on", EM_UNITS_METRIC, "!1\t0\ttools\t6\t" },
  { "FLAT FACE 1.10 X .60, 2 OPPOSITE FACES, ADD .008", EM_UNITS_INCH, "1\t1\tcount\t2\t" },
  { "CORE PIN WORN .004 PER SIDE\nFINISH DIA .2500\nM2 HSS 60-62 HRC\nQTY 6 PINS", EM_UNITS_INCH, "4\t1\tcount\t6\t" },
  { "two bosses got banged up on the ejector side, each has a dent, .09 dia x .02 deep", EM_UNITS_INCH, "1\t1\tcount\t2\t" },
  { "PARTING LINE NICKS, ABOUT 6, .06 X .02 X .02", EM_UNITS_INCH, "1\t1\tcount\t6\t" },
  { "CORNERS OF 4 CORE INSERTS CHIPPED, 1 PER INSERT, 2 X 0.5 X 0.5 MM", EM_UNITS_METRIC, "1\t1\tcount\t4\t" },
  { "WALL 40 X 8 MM WORN, ADD 0.2 TO BOTH FLANKS", EM_UNITS_METRIC, "1\t1\tcount\t2\t" },
  { "RIB 1.5 MM THK X 22 LG, ADD 0.5 ON TOP AND 2 DOWN BOTH FLANKS", EM_UNITS_METRIC, "!1\t1\tcount\t2\t" },
  { "For a mould with 16 cavities we need the following repair on every cavity:\nthe gate edge is worn to R 0.3 mm, 5 long.", EM_UNITS_METRIC, "1\t1\tcount\t16\t" },
  { "8-cavity mould\ngate edge worn R0.2 over 6 mm in each cavity", EM_UNITS_METRIC, "1\t1\tcount\t8\t" },
  { "nick 3 x 1 x 1 mm, je Kern 2, 3 Kerne", EM_UNITS_METRIC, "1\t1\tcount\t6\t" },
  { "2 nicks per insert, 4 inserts: 3 x 1 x 1 mm", EM_UNITS_METRIC, "1\t1\tcount\t8\t" },
  { "cav 1 and cav 3: edge nick 3 x 1 x 1 mm", EM_UNITS_METRIC, "1\t1\tcount\t2\t" },
  { "BORE 10 MM WORN 10.1, 20 DP\nON 3 PLATES", EM_UNITS_METRIC, "2\t1\tcount\t3\t" },
  { "LOT DE 4 POINCONS\nBORD EBRECHE 3 X 1 X 1 MM", EM_UNITS_METRIC, "1\t1\tcount\t4\t" },
  /* Hardness without a scale; rows of a hole, of what is low, of what lost thousandths; sides of a rib; a mandrel's edge. */
  { "Hardened 1.2363, 58. Nick 3 x 1 x 1 mm", EM_UNITS_METRIC, "1\t0\thardness\t58\tHRC" },
  { "Stainless 1.2083, 52ish. Nick 3 x 1 x 1 mm", EM_UNITS_METRIC, "1\t0\thardness\t52\tHRC" },
  { "H13 (48-50). Nick 3 x 1 x 1 mm", EM_UNITS_METRIC, "1\t0\thardness\t49\tHRC" },
  { "steel 1.2343 hard 50: nick 3 x 1 x 1 mm", EM_UNITS_METRIC, "1\t0\thardness\t50\tHRC" },
  { "D2, 60 pieces. nick 3 x 1 x 1 mm", EM_UNITS_METRIC, "!1\t0\thardness\t60\tHRC" },
  { "TAPAR TALADRO 6 X 10 PROF.", EM_UNITS_METRIC, "1\t1\tdiameter\t6\tmm" },
  { "WELD UP WORN SHUT-OFF 1.250 X .375 X .010 LOW", EM_UNITS_INCH, "1\t1\tthickness\t0.254\tmm" },
  { "PL NR SPRUE PEENED LOW .003, 1.5 X .75", EM_UNITS_INCH, "1\t1\tkind\tface\t" },
  { "Land 0.5 mm low, 20 x 4.\nSlot flank lost about 6 thou over 24 x 10", EM_UNITS_METRIC, "2\t2\theight\t10\tmm" },
  { "Blade-type core, thickness 1.4, length 32, put 0.3 on top and 0.3 down 5 mm each side.", EM_UNITS_METRIC, "1\t1\tdepth\t5\tmm" },
  { "blade 1.0 thick 20 long, 0.4 on top and 0.2 down each side 3 deep", EM_UNITS_METRIC, "1\t1\tdepth\t3\tmm" },
  { "El mandril tiene el borde exterior ⌀48 redondeado a 0,6, se quiere 0,2", EM_UNITS_METRIC, "!1\t1\tquestion\twhich-kind\t" },
  { "Kante außen ⌀75 auf einem Viertel (90°) verrundet, R 0,6", EM_UNITS_METRIC, "!1\t1\tangle\t90\tdeg" },
  { "Choc dans le plan de joint : creux ø3, 0,8 de profondeur", EM_UNITS_METRIC, "1\t1\tform\tcap\t" },
  { "Stift ⌀8 abgenutzt auf 7,9 über Länge 25", EM_UNITS_METRIC, "1\t1\tlength\t25\tmm" },
  { "NICK 3 X 1 X 1 MM\nCALL BEFORE WELDING IF CRACKED", EM_UNITS_METRIC, "!2\t2\tkind\tgroove\t" },
  { "Tool\tLocation\tDefect\tLength (in)\tHeight (in)\tAdd (in)\n1\tfeed slot left wall\twall worn\t2.75\t.50\t.012", EM_UNITS_INCH, "2\t1\theight\t12.7\tmm" },
  /* What German, Austrian and Swiss shops say; words that only look like one of the trade. */
  { "Formrand Flasche, Kante am Hals innen bestoßen, 3 x 1 x 0,5", EM_UNITS_METRIC, "1\t1\tkind\tedge-nick\t" },
  { "Riss im Boden, 25 lang, 3 tief. Wir können den Einsatz weiter nutzen, schöne Grüße", EM_UNITS_METRIC, "!1\t2\tkind\tgroove\t" },
  { "Rostflecken auf der Kappe entdeckt, bitte drücken", EM_UNITS_METRIC, "!1\t1\tkind\tedge-nick\t" },
  { "Alle Heizungen und Setzungen geprüft", EM_UNITS_METRIC, "!1\t1\tkind\tsidewall\t" },
  { "Nachtarbeit, Karte 4, Fasern und Masken", EM_UNITS_METRIC, "!1\t1\tkind\tedge-nick\t" },
  { "Kante ausgebrochen 3 x 1 x 1\nNacharbeit: Schweißbetrieb", EM_UNITS_METRIC, "2\t0\tfinish\tshop\t" },
  { "Düsenlippenkante verrundet R0,3, 240 lang\nkonturgerecht verschleifen", EM_UNITS_METRIC, "2\t0\tfinish\tshop\t" },
  { "Steg 28 lang, 1,2 dick, 0,3 auftragen, beide Rundungen an den Enden auch", EM_UNITS_METRIC, "1\t1\twraps\t2\t" },
  { "Trennebenenkante gestaucht, 3 x 1 x 1, fünfzehn Stück", EM_UNITS_METRIC, "1\t1\tcount\t15\t" },
  { "Abdruck 7 x 4, 0,5 tief in der Formfläche, ringsum strukturerodiert", EM_UNITS_METRIC, "1\t1\tnear\ttexture\t" },
  { "Nutwand 25 lang, 6 hoch, 0,2 aufzutragen, schwer ranzukommen", EM_UNITS_METRIC, "1\t1\taccess\trestricted\t" },
  { "Ausstosserbohrung Ø6 auf 6,1 ausgelaufen, 20 tief", EM_UNITS_METRIC, "1\t1\tkind\tbore\t" },
  { "Fliessdamm 80 lang, 6 breit, 4 hoch, an beiden Enden auslaufend", EM_UNITS_METRIC, "1\t1\tends\ttapered\t" },
  { "Bestell-Nummer 4711\nKante ausgebrochen 3 x 1 x 1", EM_UNITS_METRIC, "1\t0\treference\t4711\t" },
  { "nick 3 x 1 x 1 mm down in a channel 12 mm wide and 30 mm deep", EM_UNITS_METRIC, "1\t1\tslot_depth\t30\tmm" },
  { "NICK .10 X .04 X .04 AT BOTTOM OF POCKET .5 WIDE X 1.0 DEEP", EM_UNITS_INCH, "1\t1\tslot_width\t12.7\tmm" },
  { "Rippe gebrochen 1,0 dick 18 lang, 2 mm fehlen, in einer 5 mm breiten und 14 mm tiefen Tasche", EM_UNITS_METRIC, "1\t1\tslot_width\t5\tmm" },
  { "Seitenwand der Tasche: 30 lang, 8 hoch, 0,3 mm auftragen. Taschenbreite 6, Taschentiefe 14.", EM_UNITS_METRIC, "1\t1\tslot_depth\t14\tmm" },
  { "Weir to add 30 x 4 x 2 mm high, in flow channel 30 wide x 8 deep", EM_UNITS_METRIC, "1\t1\tslot_depth\t8\tmm" },
  { "MELLA 8 X 1 X 1 MM EN ESQUINA\nTAPAR TALADRO 6 X 10 PROF.", EM_UNITS_METRIC, "2\t2\tform\tcylinder\t" },
  { "Lame écrasée : 90 mm de long, lame de 0,7, remonter 0,8", EM_UNITS_METRIC, "1\t1\tthickness\t0.7\tmm" },
  { "Repasar 2 postizos iguales\ngolpe 2,5 x 1 x 1 mm", EM_UNITS_METRIC, "1\t0\ttools\t2\t" },
  { "Mandamos 3 postizos iguales, cada uno con 2 mellas de 1,2 x 0,3 x 0,3 mm", EM_UNITS_METRIC, "!1\t0\ttools\t3\t" },
  { "CONE 45° Ø12 PROF 4 A RECHARGER 0,3", EM_UNITS_METRIC, "1\t1\tdepth\t4\tmm" },
  { "Cono de 60°, boca Ø14, fondo 4, recargar 0,3 mm", EM_UNITS_METRIC, "1\t1\tkind\tseat\t" },
  { "L'aiguille Ø3 est usée, elle fait 2,96 sur les 5 derniers mm", EM_UNITS_METRIC, "1\t1\tlength\t5\tmm" },
  { "Guide : portée Ø18 usée à 17,9, lg 12", EM_UNITS_METRIC, "1\t1\tkind\tpin\t" },
  { "Nick 2 x 1 x 1 mm\nSecond shift put a wrench on the lip.", EM_UNITS_METRIC, "2\t0\tunused\tSecond shift put a wrench on the lip\t" },
  { "Nick 2 x 1 x 1 mm\nEin Lehrling hat den Kern fallen lassen.", EM_UNITS_METRIC, "2\t0\tunused\tEin Lehrling hat den Kern fallen lassen\t" },
  { "Nick 2 x 1 x 1 mm\nThe operator says the core is fine", EM_UNITS_METRIC, "!2\t0\tunused\tThe operator says the core is fine\t" },
  { "Nick 2 x 1 x 1 mm\nplease clean the water connections", EM_UNITS_METRIC, "2\t0\tunused\tplease clean the water connections\t" },
  { "Nick 2 x 1 x 1 mm\nPlease take care", EM_UNITS_METRIC, "!2\t0\tunused\tPlease take care\t" },
  { "Nick 2 x 1 x 1 mm\nBitte gut verpacken", EM_UNITS_METRIC, "2\t0\tunused\tBitte gut verpacken\t" },
  { "Nick 2 x 1 x 1 mm\nUSE S7 ROD", EM_UNITS_METRIC, "!2\t0\tbase\ts7\t" },
  { "Nick 2 x 1 x 1 mm\nWeld with 1.2343", EM_UNITS_METRIC, "2\t0\tunused\t1.2343\t" },
  { "Nick 2 x 1 x 1 mm\nMit 1.2343 schweißen", EM_UNITS_METRIC, "!2\t0\tbase\th11\t" },
  /* Damage that nobody says what it is: how large it is, and what it is asked. */
  { "one damaged area by the gate, 3/8 x 3/16, she doesn't know what it is", EM_UNITS_INCH, "1\t1\tquestion\twhich-kind\t" },
  { "We have something wrong on the sealing area of cavity 5, about 5 x 3 mm", EM_UNITS_METRIC, "1\t1\twidth\t3\tmm" },
  { "CAVITY BLOCK DAMAGED AT GATE, SEE PHOTO 3", EM_UNITS_METRIC, "1\t1\tquestion\twhich-kind\t" },
  { "Pos 4  Schlagstelle unklarer Form", EM_UNITS_METRIC, "!1\t1\tkind\tedge-nick\t" },
  { "daño en el macho, aprox. 4 mm, ver foto", EM_UNITS_METRIC, "!1\t1\tkind\tpin\t" },
  { "Edge damaged 7 x 0.8 mm", EM_UNITS_METRIC, "1\t1\tquestion\tsecond-leg\t" },
  { "Aufstellung Schäden Etagenwerkzeug 2x4-fach", EM_UNITS_METRIC, "!1\t1\tquestion\twhich-kind\t" },
  { "2 mm nick in each of the four cavities, 0.5 x 0.5", EM_UNITS_METRIC, "1\t1\tcount\t4\t" },
  { "Chip on edge 2 x 0.5 x 0.5 mm. Three more just like it.", EM_UNITS_METRIC, "1\t1\tcount\t4\t" },
  { "Pits (about 8) on the face 0.5 dia 0.2 deep mm", EM_UNITS_METRIC, "1\t1\tcount\t8\t" },
  { "5 or 6 pits on the face 0.5 mm dia 0.2 deep", EM_UNITS_METRIC, "1\t1\tquestion\tcount-unknown\t" },
  { "EJ PIN HOLES WORN .187 TO .193, .5 DP (ALL 6)", EM_UNITS_INCH, "1\t1\tcount\t6\t" },
  { "holes .187 in worn to .193, .5 deep, 6 no.", EM_UNITS_INCH, "1\t1\tcount\t6\t" },
  { "In allen 4 Kavitäten Kante verrundet R0,3 auf 8 mm", EM_UNITS_METRIC, "1\t1\tcount\t4\t" },
  { "4-fach-Form\nje Kavität Kante R0,3 auf 8 mm", EM_UNITS_METRIC, "1\t1\tcount\t4\t" },
  { "arista R0,3 en 8 mm, en ambos lados", EM_UNITS_METRIC, "1\t1\tcount\t2\t" },
  { "nick 3 x 1 x 1 mm\noccurs on all 4 inserts", EM_UNITS_METRIC, "2\t1\tcount\t4\t" },
  { "1. nick 3 x 1 x 1 mm\n2. dent 2 dia 0.5 deep\n3. crack 10 long 1 deep\nItem 2 is on all 4 inserts, the others once.", EM_UNITS_METRIC, "4\t2\tcount\t4\t" },
  { "Nick 2 x 1 x 1 mm\nBLOCK HAS BEEN WELDED BEFORE IN SAME AREA", EM_UNITS_METRIC, "!2\t2\tkind\tedge-nick\t" },
  { "Nick 2 x 1 x 1 mm. Don't bother with the shoulder, a new punch is on order.", EM_UNITS_METRIC, "1\t0\trefuse\tshoulder\t" },
  { "Nick 2 x 1 x 1 mm. Don't bother with the shoulder, a new punch is on order.", EM_UNITS_METRIC, "!1\t0\trefuse\tnew punch is on order\t" },
  { "Te mando la placa de expulsores.\nArista golpeada 8 x 1 x 0,6 mm", EM_UNITS_METRIC, "!1\t1\tkind\tpin\t" },
  { "Nick 2 x 1 x 1 mm\nWANTS TO KNOW IF WE CAN TURN IT AROUND IN 24 HRS", EM_UNITS_METRIC, "!2\t0\tfinish\tcustomer\t" },
  { "Nick 2 x 1 x 1 mm\nThey say it was our EDM.", EM_UNITS_METRIC, "!2\t0\tfinish\tcustomer\t" },
  { "usure du bord intérieur Ø33,2 mm, R0,3 sur tout le tour\nune bague déjà rechargée l'an passé.", EM_UNITS_METRIC, "!2\t2\tkind\tbore\t" },
  { "Nick 2 x 0.3 x 0.2 mm half way down a 14 mm deep pocket that's 3 wide.", EM_UNITS_METRIC, "1\t1\tslot_depth\t14\tmm" },
  { "crack 5 mm long, 1 deep at the bottom of a 20 mm deep slot 4 wide", EM_UNITS_METRIC, "1\t1\tslot_width\t4\tmm" },
  { "crack 5 mm long, 1 deep at the bottom of a slot", EM_UNITS_METRIC, "1\t1\tdepth\t1\tmm" },
  { "Add 0.5 mm on the slide face (45 x 30) and 0.3 on the gib surface (45 x 8)", EM_UNITS_METRIC, "1\t2\tthickness\t0.3\tmm" },
  { "Two scratches, one 14mm and the other 6mm, both hardly 0.05 deep.", EM_UNITS_METRIC, "1\t1\tdepth\t0.05\tmm" },
  { "Face of the anvil is mushed. Needs about fifty thou over the whole 2 inch diameter.", EM_UNITS_INCH, "1\t1\tthickness\t1.27\tmm" },
  { "INSERT A (QTY 2): REBUILD WORN PAD .750 SQ, .018 LOW\nINSERT B (QTY 2): WELD SHUT ⌀.125 VENT, .50 DEEP", EM_UNITS_INCH, "2\t2\tkind\trecess\t" },
  { "ring edge worn R0.4 mm, ring is 14 outside dia", EM_UNITS_METRIC, "1\t1\tdiameter\t14\tmm" },
  { "Bearing seat on shaft (35k6) measures 34.95, 22 wide, mm", EM_UNITS_METRIC, "1\t1\tdiameter\t35\tmm" },
  { "sealing edge worn 0.35 mm, made of M333 or 1.2083", EM_UNITS_METRIC, "!1\t1\tlength\t333\tmm" },
  { "WALL OVERCUT .025, 1.20 X .44", EM_UNITS_INCH, "1\t1\tkind\tsidewall\t" },
  { "Add 1/16 to the end of 3 core pins, 3/16 dia", EM_UNITS_INCH, "1\t1\tkind\tface\t" },
  { "Edge chipped 3 x 1 x 1 mm. This is on a 40 mm dia pin.", EM_UNITS_METRIC, "!1\t2\tkind\tpin\t" },
  { "wedge face low 0.08 mm (full 65 x 30 face)", EM_UNITS_METRIC, "1\t1\tlength\t65\tmm" },
  /* Numbers that name parts and no inches; what lies between two; how often it was welded before; questions about finishing. */
  { "Nest 1/3: Kante R0,3, 20 lang", EM_UNITS_METRIC, "1\t1\tlength\t20\tmm" },
  { "Cavity 1/3/5: edge R0.3, 20 long", EM_UNITS_METRIC, "1\t1\tcount\t3\t" },
  { "Kerne 1/2/3/4 Kante R0,3, 20 lang", EM_UNITS_METRIC, "1\t1\tcount\t4\t" },
  { "Kern 3 Kante R0,3 20 lang", EM_UNITS_METRIC, "1\t1\tkind\tworn-corner\t" },
  { "In cavity 1/4 deep pit, 1/8 dia", EM_UNITS_INCH, "1\t1\tdepth\t6.35\tmm" },
  { "Nest 1 + 3: Ausbruch 3,5 x 0,7 x 0,7", EM_UNITS_METRIC, "1\t1\tcount\t2\t" },
  { "Form 220 x 160, Nest 1 und 3\nje Nest 1 Ausbruch 3,5 x 0,7 x 0,7", EM_UNITS_METRIC, "1\t1\tcount\t2\t" },
  { "Kratzer zwischen zwei Stiften 20 lang, 0,2 tief", EM_UNITS_METRIC, "!1\t1\tcount\t2\t" },
  { "Kante R0,3 20 lang, schon 3x geschweißt", EM_UNITS_METRIC, "!1\t1\tcount\t3\t" },
  { "Nick 3 x 1 x 1 mm\nhas been welded 2x before", EM_UNITS_METRIC, "!2\t1\tcount\t2\t" },
  { "Kante R0,3 20 lang\nSchleifen Sie auch auf Maß?", EM_UNITS_METRIC, "!2\t0\tfinish\tshop\t" },
  { "Edge R0.3, 20 mm long\nDo you also grind it to size?", EM_UNITS_METRIC, "2\t0\tunused\tDo you also grind it to size\t" },
  { "Edge R0.3, 20 mm long\nCan you grind it afterwards?", EM_UNITS_METRIC, "2\t0\tfinish\tshop\t" },
  { "PITS: 3 OF ⌀0.8 X 0.5 AND 1 OF ⌀2 X 1 MM", EM_UNITS_METRIC, "1\t1\tcount\t3\t" },
  { "SOUFFLURES : 3 DE Ø0,8 X 0,5 ET 1 DE Ø2 X 1", EM_UNITS_METRIC, "1\t2\tdiameter\t2\tmm" },
  { "reparar 2 corazones de 12 mm que están en 11.90", EM_UNITS_METRIC, "1\t1\tcount\t2\t" },
  { "Il faut boucher 3 trous taraudés M8 arrachés, Ø 8,5 profondeur 20", EM_UNITS_METRIC, "1\t1\tcount\t3\t" },
  { "Éclat 3 x 1 x 1. Un canal d'eau passe à 5 mm.", EM_UNITS_METRIC, "1\t1\tclearance\t5\tmm" },
  { "Golpe 3 x 1 x 1 mm. A 5 mm pasa un canal de refrigeración.", EM_UNITS_METRIC, "1\t1\tclearance\t5\tmm" },
  { "MOULE SOUFFLAGE 5 L : LAME USEE DE 0,6 SUR 110 MM", EM_UNITS_METRIC, "1\t1\tcoat\t0.6\tmm" },
  { "Kerbe 2 x 1 x 1 mm\nSchöne Grüße aus Ulm, Toni", EM_UNITS_METRIC, "!2\t0\tunused\tUlm\t" },
  { "Kerbe 2 x 1 x 1 mm\nLG aus Linz, Toni", EM_UNITS_METRIC, "2\t0\tunused\tToni\t" },
  { "call from Yusra: nick 2 x 1 x 1 mm", EM_UNITS_METRIC, "1\t0\tunused\tYusra\t" },
  { "Muffendorn, 1.2316\nKerbe 2 x 1 x 1 mm", EM_UNITS_METRIC, "!1\t0\tunused\tMuffendorn\t" },
  { "Kerbe 2 x 1 x 1 mm\nUrsache war ein Fremdteil im Werkzeug", EM_UNITS_METRIC, "2\t0\tunused\tUrsache war ein Fremdteil im Werkzeug\t" },
  { "RISSE IM FORMBODEN 3 STÜCK: 12 LANG, CA. 0,3 BREIT, CA. 2 TIEF", EM_UNITS_METRIC, "1\t1\tcount\t3\t" },
  { "Ausbrüche, 4 Stk. 3 x 1 x 0,5", EM_UNITS_METRIC, "1\t1\tlength\t3\tmm" },
  { "ZUGMATRIZE EINLAUFRADIUS Ø 45 INNEN VERSCHLISSEN, R 1,5 STATT R 1", EM_UNITS_METRIC, "1\t1\tdiameter\t45\tmm" },
  { "NUT 6 BREIT, 5 TIEF: WAND LINKS 28 LANG, 5 HOCH, 0,15 ZU WEIT", EM_UNITS_METRIC, "1\t1\tslot_width\t6\tmm" },
  { "Steg abgenützt, 22 x 1,0, oben 0,4 auftragen\ndito, 24 x 1,0, oben 0,5 draufgeben", EM_UNITS_METRIC, "2\t2\tlength\t24\tmm" },
  { "Stempel 1: Kante R 0,3, 22 lang\nStempel 2: dito, 18 lang", EM_UNITS_METRIC, "2\t2\tkind\tworn-corner\t" },
  { "SITZ KEGEL 45°, Ø 14, 2 TIEF, 0,3 AUFTRAGEN\nANSCHLUSSGEWINDE G1/4 FREI LASSEN", EM_UNITS_METRIC, "!1\t1\tclearance\t6.35\tmm" },
  { "Kavität 1-4: Ecke ausgebröckelt je 2 Stellen, 2,5 x 0,4 x 0,4", EM_UNITS_METRIC, "1\t1\tcount\t8\t" },
  { "Cav. 1-4: 2 chips each 2.5 x 0.4 x 0.4 mm", EM_UNITS_METRIC, "1\t1\tcount\t8\t" },
  { "Ausbruch 3 x 0,5 x 0,5 in Kavität 1-4", EM_UNITS_METRIC, "1\t1\tcount\t4\t" },
  { "Pin 1 dia 4 mm worn to 3.9, pin 2 dia 5 worn to 4.9, both 20 long", EM_UNITS_METRIC, "1\t1\tdiameter\t4\tmm" },
  { "Pin 1 dia 4 mm worn to 3.9, pin 2 dia 5 worn to 4.9, both 20 long", EM_UNITS_METRIC, "1\t1\tlength\t20\tmm" },
  { "Edge 1 worn R0.3 mm, edge 2 worn R0.5, both 40 long", EM_UNITS_METRIC, "1\t2\tradius\t0.5\tmm" },
  { "Length 1 mm of the edge chipped, length 2 mm more is worn", EM_UNITS_METRIC, "!1\t0\tunused\t1\t" },
  { "face A .004 low, face B .006 low, each .75 x 1.50.", EM_UNITS_INCH, "1\t1\tlength\t38.1\tmm" },
  { "hole .045 opened to .052 at exit, land .060", EM_UNITS_INCH, "!1\t2\tkind\tface\t" },
  { "Crack 8 mm long on the moulding face, 2 deep, wall there is about 6 thick.", EM_UNITS_METRIC, "!1\t2\tkind\tsidewall\t" },
  { "Bore Ø32 mm G6 measures Ø32.06. Depth 55. Hardened bush 60HRC, 100Cr6.", EM_UNITS_METRIC, "!1\t2\tdiameter\t100\tmm" },
  { "The cone on the nozzle tip, ⌀14 mm to ⌀6, is hammered. 0.5 mm build.", EM_UNITS_METRIC, "1\t1\tdiameter_small\t6\tmm" },
  { "SHUT-OFF DIA .437 UNDERSIZE .0015 PER SIDE, .375 LG", EM_UNITS_INCH, "1\t1\tkind\tpin\t" },
  { "2 locks galled (45 x 20 mm, 0.2 each face, 2 faces per lock)", EM_UNITS_METRIC, "1\t1\tthickness\t0.2\tmm" },
  { "Crack at rib root, 16 mm lg, 1.5 dp, root radius R0.8 to be restored", EM_UNITS_METRIC, "!1\t1\tgap\t0.8\tmm" },
  { "nick 3 x 1 x 1 mm on slide edge\nOIL GROOVE 1.5 FROM EDGE, KEEP CLEAR", EM_UNITS_METRIC, "2\t1\tclearance\t1.5\tmm" },
  { "pit, roundish, 2,5 mm across and 0,6 mm deep.\nThe engraving stands at 1,5 mm from it.", EM_UNITS_METRIC, "2\t1\tclearance\t1.5\tmm" },
  { "PRESA SOBRE EL PLANO, 18 X 4 X 2,2 MM ALTO\nAGUJERO EXPULSOR Ø6 A 4,5 MM DE LA PRESA", EM_UNITS_METRIC, "2\t1\tclearance\t4.5\tmm" },
  { "Rib is 1,1 mm thick, 48 mm long, the tip is missing 0,5 mm. It stands 4 mm from the neighbour rib.", EM_UNITS_METRIC, "1\t1\tclearance\t4\tmm" },
  { "FILL RECESS .60 X .35 X .09 DP. SURROUNDING POLISH A3, NO ARC MARKS.", EM_UNITS_INCH, "!1\t1\tclearance\t76.2\tmm" },
  { "it is about three equal cutter plates for the flash trimmer.\nOn every plate the cutting edge has 2 breakouts, each 3 mm long, 0.5 mm deep x 0.4 mm wide.", EM_UNITS_METRIC, "2\t1\tcount\t6\t" },
  { "arête de plan de joint, 4 éclats par empreinte, 2 empreintes, chacun 2 mm de long, 0,6 x 0,6", EM_UNITS_METRIC, "1\t1\tcount\t8\t" },
  { "MOULE 1906 / EMPREINTES 1 A 4\n2 ÉCLATS PAR EMPREINTE SUR L'ARÊTE DU SEUIL : 1,5 x 0,3 x 0,3 mm", EM_UNITS_METRIC, "2\t1\tcount\t8\t" },
  { "Auswerferhülse an der Kante innen rund geworden, R0,2 mm. Bohrung ⌀7.\nDrei Hülsen sind gleich betroffen", EM_UNITS_METRIC, "2\t1\tcount\t3\t" },
  { "FLANK OF SLOT 5 WIDE: ADD 0.15 MM, 40 X 7 HIGH", EM_UNITS_METRIC, "1\t1\tslot_width\t5\tmm" },
  { "SLOT WALL WORN, SLOT .125 WD X .75 DP, WALL 2.25 LG X .75 HIGH, ADD .004", EM_UNITS_INCH, "1\t1\tslot_depth\t19.05\tmm" },
  { "BLADE 2 MM THK X 16 LG, BUILD 0.5\nSITS IN SLOT 5 WIDE X 12 DEEP, TIGHT", EM_UNITS_METRIC, "2\t1\taccess\trestricted\t" },
  { "1) sliding surface 60 x 22 mm, has lost 0,15 mm\n2) corner of the insert pocket, 14 mm long, worn R0,6 mm.\nEverything is open to reach from above.", EM_UNITS_METRIC, "3\t2\taccess\topen\t" },
  /* A wall before its pocket; a pitted face; a cone's two ends; an edge at its outside; how long the wear is; access told twice. */
  { "Wandung Rippentasche links zu weit, 32 x 14, 0,15 drauf", EM_UNITS_METRIC, "1\t1\tkind\tsidewall\t" },
  { "Wand Tasche 32 x 14, 0,15 zu weit", EM_UNITS_METRIC, "1\t1\tthickness\t0.15\tmm" },
  { "Innenkante Bohrung Ø20 verrundet auf R0,5, soll R0,1", EM_UNITS_METRIC, "!1\t1\tquestion\twhich-kind\t" },
  { "PIN BORE Ø12 WORN TO 12.1, 20 DEEP", EM_UNITS_METRIC, "1\t1\tkind\tbore\t" },
  { "END PLATE SEAL FACE PITTED AND LOW 0.1\nFACE Ø90", EM_UNITS_METRIC, "1\t1\tthickness\t0.1\tmm" },
  { "FACE PITTED, PIT Ø1.5 X 0.4 DEEP", EM_UNITS_METRIC, "1\t1\tkind\trecess\t" },
  { "TAPER SEAT GALLED, COAT .012 PER SURFACE\nLARGE DIA 1.375  SMALL DIA 1.250", EM_UNITS_INCH, "2\t1\tdiameter_small\t31.75\tmm" },
  { "EDGE AT OD ROUNDED R.010, DIA .75", EM_UNITS_INCH, "1\t1\tside\touter\t" },
  { "Kern Ø28 ist 27,85\nLänge der verschlissenen Zone 6", EM_UNITS_METRIC, "2\t1\tlength\t6\tmm" },
  { "Crack in the leg, 35 mm long. It is deep inside the housing, access is restricted.", EM_UNITS_METRIC, "1\t1\taccess\trestricted\t" },
  { "CONE SEAT Ø14, DEPTH 3, 90° INCLUDED\nCOAT EVENLY 0.4", EM_UNITS_METRIC, "2\t1\tthickness\t0.4\tmm" },
  { "Asiento de junta plano Ø40 exterior, bajo 0,2 mm", EM_UNITS_METRIC, "!1\t0\tdrawing\tØ40\t" },
  { "Fissure de 45 mm (prof. 6)", EM_UNITS_METRIC, "1\t1\tlength\t45\tmm" },
  { "Insert n°5 : coin écaillé 2,5 sur 0,8 sur 0,6.", EM_UNITS_METRIC, "1\t1\tleg_b\t0.6\tmm" },
  { "lèvre supérieure : choc de 3 mm sur 0,5 et 0,4", EM_UNITS_METRIC, "1\t1\tlength\t3\tmm" },
  { "nervio espesor 0,9, alto 4, le falta 1,5 en 12 mm", EM_UNITS_METRIC, "1\t1\tcoat\t1.5\tmm" },
  { "arête arrondie R0,4 sur septante mm", EM_UNITS_METRIC, "1\t1\tlength\t70\tmm" },
  { "Cavidad con hoyo Ø5, 1,5 de fondo. Textura VDI 27 alrededor.", EM_UNITS_METRIC, "!1\t1\tclearance\t27\tmm" },
  { "Please weld 3mm hole which is in the flow path. It is a blind hole 5mm deep with a M4 thread in it.", EM_UNITS_METRIC, "1\t1\tdepth\t5\tmm" },
  { "Keyway 8 mm wide is now 8.15, 40 long, 4 deep. Close one side.", EM_UNITS_METRIC, "1\t1\tthickness\t0.15\tmm" },
  { "slot 12H7 mm wide worn to 12.2 both sides equally", EM_UNITS_METRIC, "!1\t1\tthickness\t12.2\tmm" },
  { "Die button: ID cutting edge rolled, .004 R, ID is .312. sharp edge needed.", EM_UNITS_INCH, "1\t1\tdiameter\t7.9248\tmm" },
  { "Blow pin: ring 26 mm OD / 21 ID, worn 0.25", EM_UNITS_METRIC, "1\t1\tkind\tface\t" },
  { "Extruder screw tip (nose cone): 90° cone, base Ø45 mm, wear 0.5 all over.", EM_UNITS_METRIC, "1\t1\tkind\tseat\t" },
  { "Need approx. 1 mm weld all over top face (60 x 40) incl. 4 edges", EM_UNITS_METRIC, "1\t1\twidth\t40\tmm" },
  { "crack 8 long, 2 deep mm, wall was 9.", EM_UNITS_METRIC, "!1\t2\tkind\tsidewall\t" },
  { "slot bottom 0.1 mm too deep, slot 4 wide 30 long. Weld bottom only, sidewalls must stay.", EM_UNITS_METRIC, "!1\t2\tkind\tsidewall\t" },
  { "Nick 2 x 1 x 1 mm\nKeep the cooling channel open", EM_UNITS_METRIC, "2\t0\tunused\tKeep the cooling channel open\t" },
  { "Nick 2 x 1 x 1 mm\nLaisser le trou central ouvert", EM_UNITS_METRIC, "2\t0\tunused\tLaisser le trou central ouvert\t" },
  { "Kerbe 2 x 1 x 1 mm\nNicht über die Trennebene schweißen", EM_UNITS_METRIC, "2\t0\trefuse\tTrennebene\t" },
  { "Kerbe 2 x 1 x 1 mm\nNicht über die Trennebene schweißen", EM_UNITS_METRIC, "!2\t2\tkind\tface\t" },
  { "Nick 2 x 1 x 1 mm\nCooling channel is not to be closed", EM_UNITS_METRIC, "2\t0\trefuse\tCooling channel\t" },
  /* "einmal …, einmal …"; how long round; a mouth that stays open is no seat; what is to be added in a column of its own; products' sizes. */
  { "Messerkante ausgebrochen: einmal 7,5 lang, 0,6 x 0,5, einmal 2 lang, 0,3 x 0,3.", EM_UNITS_METRIC, "1\t2\tlength\t2\tmm" },
  { "Edge chipped, once 3 mm long, 1 x 1, once 2 mm long, 0.5 x 0.5", EM_UNITS_METRIC, "1\t2\tleg_a\t0.5\tmm" },
  { "Kante umlaufend verrundet R0,3, Umfang 88", EM_UNITS_METRIC, "1\t1\tlength\t88\tmm" },
  { "Kante R0,3 am Umfang 120°, Ø30 außen", EM_UNITS_METRIC, "!1\t1\tlength\t120\tmm" },
  { "Seat SR 15.5, mouth Ø4 must stay open, add 0.4 mm", EM_UNITS_METRIC, "1\t1\tkind\tseat\t" },
  { "A  FLÄCHE 18X7  +0,25", EM_UNITS_METRIC, "1\t1\tthickness\t0.25\tmm" },
  { "BORE 18 +0.02/-0.01 WORN TO 18.1, 20 DEEP", EM_UNITS_METRIC, "!1\t1\tbuild\t0.02\tmm" },
  { "Extrusionsdüse Rohr Ø63: Dorn eingelaufen, Soll 57,2, Ist 56,9, auf 40 mm Länge", EM_UNITS_METRIC, "1\t1\tdiameter\t57.2\tmm" },
  { "2 Auswerferhülsen innen ausgelaufen: Ø 6 soll, 6,12 ist, 30 lang", EM_UNITS_METRIC, "1\t1\tkind\tbore\t" },
  { "Kante R0,3, 20 lang\n1.7131 einsatzgehärtet", EM_UNITS_METRIC, "!2\t0\thardness\t1.7131\tHRC" },
  /* Ditto with a row; an edge round an ID; a gate that shall be closed again; an oval hole; a seat of a shaft. */
  { "1) face 30 x 10 mm low 0.2\n2) ditto 40 x 12", EM_UNITS_METRIC, "2\t2\tlength\t40\tmm" },
  { "NICK 3 X 1 X 1 MM\nDITTO 4 X 1 X 0.8 MM", EM_UNITS_METRIC, "2\t2\tleg_b\t0.8\tmm" },
  { "Lip ID 32 rounded R0.3", EM_UNITS_METRIC, "1\t1\tside\tbore\t" },
  { "Bolzen ⌀12 Kante R0,4 verrundet", EM_UNITS_METRIC, "1\t1\tdiameter\t12\tmm" },
  { "Gate ⌀1.2 eroded to 1.6, 2 deep, close to 1.2", EM_UNITS_METRIC, "1\t1\tworn\t1.6\tmm" },
  { "Hole ⌀8 egg shaped, 8.3 one way, 20 deep", EM_UNITS_METRIC, "1\t1\tworn\t8.3\tmm" },
  { "shaft seat ⌀35 k6 worn to 34.95, 22 long", EM_UNITS_METRIC, "1\t1\tkind\tpin\t" },
  { "wall worn 0.2 mm, 30 x 8\ngroove 0.5 wide, 0.3 deep on the wall, 10 long", EM_UNITS_METRIC, "1\t1\theight\t8\tmm" },
  { "hole 6 dia, 10 mm from the corner, 12 deep, to be filled", EM_UNITS_METRIC, "!1\t1\tclearance\t10\tmm" },
  { "Fillet weld not allowed. Build pad ⌀22 x 3 mm high on plate for new stop (S355).", EM_UNITS_METRIC, "!1\t1\tkind\tworn-corner\t" },
  { "Build pad ⌀22 x 3 mm high on plate for new stop (S355).", EM_UNITS_METRIC, "!1\t1\tclearance\t355\tmm" },
  { "rib slot too wide - 1.6 mm now, drawing 1.5, depth 8 length 24", EM_UNITS_METRIC, "1\t1\tslot_width\t1.5\tmm" },
  { "Land should be .030 wide it's about .045 now. 6\" long", EM_UNITS_INCH, "!1\t1\tthickness\t1.143\tmm" },
  { "Valve gate edge: 4 gates, sharp edge gone, R0.1-0.15 mm, ⌀1.2", EM_UNITS_METRIC, "1\t1\tcount\t4\t" },
  { "Seal-off blade (0.6 mm thick) cracked at base, crack 9 long through the thickness", EM_UNITS_METRIC, "!1\t1\tdepth\t0.6\tmm" },
  { "Two low places on rib crest, 8mm and 5mm long, crest thickness 1.2, low 0.25", EM_UNITS_METRIC, "!1\t1\tdepth\t8\tmm" },
  { "Two core halves. Each: face 50 x 12 mm low 0.1, and each has one dowel hole (⌀6) to be welded closed 14 deep", EM_UNITS_METRIC, "1\t2\tcount\t2\t" },
  { "Please could you price welding up these 3 items\n1. nick 3 x 1 x 1 mm", EM_UNITS_METRIC, "2\t1\tkind\tedge-nick\t" },
  { "SHUTOFF PIN ⌀.250: TIP FACE LOW .010", EM_UNITS_INCH, "1\t1\tkind\tface\t" },
  { "FACE 1.5 X .75 WORN, ADD .012\nSTOCK .010 FOR MACHINING BY OTHERS", EM_UNITS_METRIC, "2\t0\tfinish\tcustomer\t" },
  { "FACE 1.5 X .75 WORN, ADD .012\nSTOCK .010 FOR MACHINING BY OTHERS", EM_UNITS_METRIC, "2\t0\tstock\t0.254\tmm" },
  { "Anruf 7:15, Schicht B\nKerbe 2 x 1 x 1 mm", EM_UNITS_METRIC, "1\t0\tunused\tAnruf 7:15, Schicht B\t" },
  { "Pos | Defecto | Largo | Ancho | Alto\n1 | plano de cierre bajo, falta | 40 | 12 | 0,15", EM_UNITS_METRIC, "2\t1\tkind\tface\t" },
  { "Zona de inyección erosionada: Ø4 x 0,6 prof, en 8 cavidades", EM_UNITS_METRIC, "1\t1\tcount\t8\t" },
  { "Zone d'injection érodée : Ø4 x 0,6 prof, dans 8 empreintes", EM_UNITS_METRIC, "1\t1\tcount\t8\t" },
  { "en el inserto de boca se rompió un pedazo de 6 x 3 x 2 mm en la esquina", EM_UNITS_METRIC, "1\t1\tkind\tedge-nick\t" },
  { "golpe 3 x 1 x 1 mm\nFecha: 12-3\nGracias, Belén", EM_UNITS_METRIC, "3\t0\tunused\tBelén\t" },
  { "golpe 3 x 1 x 1 mm\nFecha: 12-3", EM_UNITS_METRIC, "!2\t2\tkind\tpin\t" },
  { "RISSE IM FORMBODEN 3 STÜCK: 12 LANG, CA. 0,3 BREIT, CA. 2 TIEF", EM_UNITS_METRIC, "1\t1\tcount\t3\t" },
  { "Ausbrüche, 4 Stk. 3 x 1 x 0,5", EM_UNITS_METRIC, "1\t1\tlength\t3\tmm" },
  { "ZUGMATRIZE EINLAUFRADIUS Ø 45 INNEN VERSCHLISSEN, R 1,5 STATT R 1", EM_UNITS_METRIC, "1\t1\tdiameter\t45\tmm" },
  { "NUT 6 BREIT, 5 TIEF: WAND LINKS 28 LANG, 5 HOCH, 0,15 ZU WEIT", EM_UNITS_METRIC, "1\t1\tslot_width\t6\tmm" },
  { "Steg abgenützt, 22 x 1,0, oben 0,4 auftragen\ndito, 24 x 1,0, oben 0,5 draufgeben", EM_UNITS_METRIC, "2\t2\tlength\t24\tmm" },
  { "Stempel 1: Kante R 0,3, 22 lang\nStempel 2: dito, 18 lang", EM_UNITS_METRIC, "2\t2\tkind\tworn-corner\t" },
  { "SITZ KEGEL 45°, Ø 14, 2 TIEF, 0,3 AUFTRAGEN\nANSCHLUSSGEWINDE G1/4 FREI LASSEN", EM_UNITS_METRIC, "!1\t1\tclearance\t6.35\tmm" },
  { "Kavität 1-4: Ecke ausgebröckelt je 2 Stellen, 2,5 x 0,4 x 0,4", EM_UNITS_METRIC, "1\t1\tcount\t8\t" },
  { "Cav. 1-4: 2 chips each 2.5 x 0.4 x 0.4 mm", EM_UNITS_METRIC, "1\t1\tcount\t8\t" },
  { "Ausbruch 3 x 0,5 x 0,5 in Kavität 1-4", EM_UNITS_METRIC, "1\t1\tcount\t4\t" },
  { "Kante R0,3 mm auf 20 mm, an beiden Schiebern.", EM_UNITS_METRIC, "1\t1\tcount\t2\t" },
  { "arête R0,3 mm sur 20 mm sur les deux tiroirs", EM_UNITS_METRIC, "1\t1\tcount\t2\t" },
  { "EDGE CHIP .08 X .03 X .03 - 2 PLCS/INSERT - 4 INSERTS", EM_UNITS_INCH, "1\t1\tcount\t8\t" },
  { "EDGE CHIP .08 X .03 X .03 - 2 PER CAV, 8 CAV TOOL = 16 PLCS", EM_UNITS_INCH, "1\t1\tcount\t16\t" },
  { "4 CAV TOOL - ALL CAVS: EDGE CHIP .08 X .03 X .03", EM_UNITS_INCH, "1\t1\tcount\t4\t" },
  { "Dent 4 mm dia 1 mm deep, 2 mm away from the vent slot.", EM_UNITS_METRIC, "1\t1\tclearance\t2\tmm" },
  /* A slot that is wider than it was; what bottles hold; parts by name. */
  { "Nut 4,0 ist 4,25, eine Flanke auftragen, 18 lang, 6 tief", EM_UNITS_METRIC, "1\t1\tkind\tsidewall\t" },
  { "Slot 4.0 mm now 4.25, add to one wall, 18 long, 6 high", EM_UNITS_METRIC, "1\t1\tslot_width\t4\tmm" },
  { "Bodenkuppe Flasche 1,5 l: Delle 5 x 3, 0,8 tief", EM_UNITS_METRIC, "1\t1\tlength\t5\tmm" },
  { "Düsenspitze 3: Kante ausgebrochen 3 x 1 x 1", EM_UNITS_METRIC, "!1\t1\tkind\tseat\t" },
  { "Felge am Zentrierflansch, Kante ausgebrochen 3 x 1 x 1", EM_UNITS_METRIC, "1\t1\tkind\tedge-nick\t" },
  /* What was measured from one place to another, and radii from one to another, are limits of one size. */
  { "Kern Ø35,00, gemessen 34,86 bis 34,90, 22 lang", EM_UNITS_METRIC, "1\t1\tworn\t34.88\tmm" },
  { "Core Ø35.00 mm, measures 34.86 to 34.90, 22 long", EM_UNITS_METRIC, "1\t1\tworn\t34.88\tmm" },
  { "Bohrung Ø20 auf Ø 20,08 bis Ø 20,12 ausgelaufen, 45 tief", EM_UNITS_METRIC, "1\t1\tworn\t20.1\tmm" },
  { "Kante R0,3 bis R0,5, 55 lang", EM_UNITS_METRIC, "1\t1\tradius\t0.4\tmm" },
  { "Pin worn from 1.000 to 1.010", EM_UNITS_INCH, "!1\t1\tworn\t25.527\tmm" },
  { "Ejector pin hole oversize. Pin is 3/16, hole is .1905, need it .1876 again for the top half inch. 6 holes.", EM_UNITS_INCH, "1\t1\tworn\t4.8387\tmm" },
  { "Lifter: t-slot side walls worn .008/side, .75 long .19 high slot .375 wide", EM_UNITS_INCH, "1\t1\theight\t4.826\tmm" },
  { "Steel safe problem: boss on core is .015 undersize on dia. Boss .3125 dia x .45 tall", EM_UNITS_INCH, "1\t1\tkind\tpin\t" },
  { "Sprue puller Z: hook broken. build up .1 x .1 x .08 at tip", EM_UNITS_INCH, "1\t1\tkind\tedge-nick\t" },
  { "Nick 2 x 1 x 1 mm\n2 day turn please", EM_UNITS_METRIC, "!2\t0\tfinish\tshop\t" },
  { "Nick 2 x 1 x 1 mm, beside a hole dia 6, which is to stay open.", EM_UNITS_METRIC, "!1\t0\trefuse\twhich is\t" },
  { "nick 3 x 1 x 1 mm\nAccess: poor", EM_UNITS_METRIC, "2\t1\taccess\trestricted\t" },
  { "Kerbe 3 x 1 x 1 mm\nZugang: schlecht", EM_UNITS_METRIC, "2\t1\taccess\trestricted\t" },
  { "éclat 3 x 1 x 1 mm\nAccès par le haut : facile", EM_UNITS_METRIC, "2\t1\taccess\topen\t" },
  { "5 lames d'extrusion, 3 éclats par lame, 1,8 x 0,5 x 0,4 mm", EM_UNITS_METRIC, "1\t1\tcount\t15\t" },
  { "5 lames d'extrusion, 3 éclats par lame, 1,8 x 0,5 x 0,4 mm", EM_UNITS_METRIC, "1\t1\tkind\tedge-nick\t" },
  { "4 postizos con 3 mellas cada uno, 2 x 0,5 x 0,5 mm", EM_UNITS_METRIC, "1\t1\tcount\t12\t" },
  { "6 noyaux usés, Ø11 au plan, mesurés à 10,9", EM_UNITS_METRIC, "1\t1\tcount\t6\t" },
  { "hoyo redondo Ø4 x 12 mm, rellenar", EM_UNITS_METRIC, "1\t1\tform\tcylinder\t" },
  { "éclat 2 x 1 x 1 mm\nréf. interne 7712", EM_UNITS_METRIC, "2\t0\treference\t7712\t" },
  { "mella 2 x 1 x 1 mm\nTrabajo nº 8123", EM_UNITS_METRIC, "2\t0\treference\t8123\t" },
  { "éclat 2 x 1 x 1 mm\nReprise à la fraise chez nous.", EM_UNITS_METRIC, "2\t0\tfinish\tcustomer\t" },
  { "mella 2 x 1 x 1 mm\nLas terminaciones las hacen ustedes.", EM_UNITS_METRIC, "2\t0\tfinish\tshop\t" },
  { "éclat 2 x 1 x 1 mm\nInterdit : dateur", EM_UNITS_METRIC, "2\t0\trefuse\tdateur\t" },
  { "grieta en la raíz de la costilla 22 x 0.2 ancho x 3 prof, mm", EM_UNITS_METRIC, "1\t1\tlength\t22\tmm" },
  { "hay que levantar la partición 0,08 mm", EM_UNITS_METRIC, "1\t1\tkind\tface\t" },
  { "éclat 2 x 1 x 1 mm. Tout près (4 mm) d'un filetage.", EM_UNITS_METRIC, "1\t1\tclearance\t4\tmm" },
  { "mella 2 x 1 x 1 mm. Muy cerca, a 5 mm, hay una rosca.", EM_UNITS_METRIC, "1\t1\tnear\tthread\t" },
  { "mella 2 x 1 x 1 mm\nNo tocar el logotipo grabado.", EM_UNITS_METRIC, "2\t0\trefuse\tlogotipo grabado\t" },
  { "mella 2 x 1 x 1 mm. Son tres.", EM_UNITS_METRIC, "1\t1\tcount\t3\t" },
  { "fissure de 8 mm. À côté une piqûre ronde Ø1 x 0,3 mm.", EM_UNITS_METRIC, "1\t2\tkind\trecess\t" },
  { "eje Ø30 gastado 0,08 mm por debajo de cota, largo 25", EM_UNITS_METRIC, "1\t1\tbuild\t0.04\tmm" },
  { "face usée : 18,6 mm mesuré, 19 mm au plan, 30 x 12 mm", EM_UNITS_METRIC, "1\t1\tthickness\t0.4\tmm" },
  { "la rayure du moule 722 mesure 14 mm de long", EM_UNITS_METRIC, "1\t0\ttool_number\t722\t" },
  { "filo redondeado R0,4 30 mm largo, molde 1045-C\nacero P20", EM_UNITS_METRIC, "2\t0\tbase\tp20\t" },
  { "éclat 3 x 1 x 1 mm\nrainure de 6 mm de large, 10 mm de prof. : flanc à recharger 0,2 mm sur 25 mm", EM_UNITS_METRIC, "2\t2\tslot_depth\t10\tmm" },
  { "outil T-0822 : butée usée 30 x 14 mm, manque 0,3 mm", EM_UNITS_METRIC, "1\t1\tthickness\t0.3\tmm" },
  { "bord abîmé sur 5 mm, on ne sait pas si c'est un choc ou de l'usure", EM_UNITS_METRIC, "1\t1\tquestion\twhich-kind\t" },
  { "tapar taladro Ø8.2 a Ø8.0 mm, prof. 20", EM_UNITS_METRIC, "1\t1\tkind\tbore\t" },
  { "mella 6 x 1 x 1 mm\notra más pequeña: 3 mm de largo y 0,5 de profundidad", EM_UNITS_METRIC, "2\t2\tlength\t3\tmm" },
  { "éclat 6 x 1 x 1 mm\nun autre plus petit : 3 mm de long et 0,5 de profondeur", EM_UNITS_METRIC, "1\t1\tlength\t6\tmm" },
  { "mella 6 x 1 x 1 mm. El texturizado queda a 3 mm, favor de no tocarlo.", EM_UNITS_METRIC, "!1\t0\tunused\tno tocarlo\t" },
  { "éclat 6 x 1 x 1 mm\nfiletage M6 à 5 mm, ne pas toucher", EM_UNITS_METRIC, "!2\t0\tunused\tne pas toucher\t" },
  { "4 noyaux abîmés, Ø9 mm usé à 8,9", EM_UNITS_METRIC, "1\t1\tcount\t4\t" },
  { "asiento de válvula picado, cono 90° total, boca 18, profundidad 3 mm, aportar 0,5", EM_UNITS_METRIC, "1\t1\tform\tcone\t" },
  { "siège piqué, cône 90° total, ouverture 18, prof. 3 mm, recharger 0,5", EM_UNITS_METRIC, "1\t1\tdiameter_small\t12\tmm" },
  { "Golpe en la esquina de 5 x 1 x 1 mm, y el plano de apoyo perdió 0,2 mm en 25 x 10. Hay otro golpe igual en la corredera opuesta.", EM_UNITS_METRIC, "1\t1\tcount\t2\t" },
  { "fissure 10 mm prof. 1,5", EM_UNITS_METRIC, "1\t1\tdepth\t1.5\tmm" },
  { "pocket 10 x 5 mm prof. 3, fill", EM_UNITS_METRIC, "1\t1\tdepth\t3\tmm" },
  { "Riss 10 mm T. 1,5", EM_UNITS_METRIC, "1\t1\tlength\t10\tmm" },
  { "mold of 4 cavities, in each cavity 2 nicks of 1.5 x 0.3 x 0.3 mm", EM_UNITS_METRIC, "1\t1\tcount\t8\t" },
  { "Face basse de 0,2, 40 x 20 mm. Les trous d'éjecteurs ne se bouchent pas.", EM_UNITS_METRIC, "1\t0\trefuse\ttrous d'éjecteurs\t" },
  /* So many pieces of what follows; a quarter of the circle is no quarter inch. */
  { "Teil 2: Riss 14/1,5\nTeil 3: 3 Stk. Auswerfer, Schaft 0,04 untermaßig, Ø6, 35 lang", EM_UNITS_METRIC, "2\t2\tcount\t3\t" },
  { "Riss 14 lang, 1,5 tief\nAuswerfer 3 Stk. Schaft 0,04 untermaßig, Ø6, 35 lang", EM_UNITS_METRIC, "!2\t1\tcount\t3\t" },
  { "Kante R0,3, 20 lang, 3 Stk. Bohrung Ø6 auf 6,1, 12 tief", EM_UNITS_METRIC, "1\t1\tcount\t3\t" },
  { "Kante Ø45 außen R0,3 auf 1/4 des Umfangs", EM_UNITS_METRIC, "1\t1\tdiameter\t45\tmm" },
  { "EDGE 1.5 DIA, R.02, OUTSIDE, 1/4 OF THE CIRCUMFERENCE", EM_UNITS_INCH, "1\t1\tradius\t0.508\tmm" },
  { "rayas a lo largo 25 mm x 0,2 de hondo, son 3 rayas", EM_UNITS_METRIC, "1\t1\tcount\t3\t" },
  { "Creux de 14 x 9 et 4 de prof. à combler, 1.2738", EM_UNITS_METRIC, "1\t1\tdepth\t4\tmm" },
  { "Alojamiento Ø36: desgaste de 0,15 en diámetro, 28 de largo. El casquillo lo ponemos nuevo.", EM_UNITS_METRIC, "!1\t2\tkind\tbore\t" },
  /* Which slide broke; twice at the end; an edge at a bore. */
  { "Kante Schieber 3 abgebrochen: 6/2/1,5", EM_UNITS_METRIC, "1\t1\tlength\t6\tmm" },
  { "Slide 3 broken, corner 6 x 2 x 1.5 mm", EM_UNITS_METRIC, "!1\t1\tcount\t3\t" },
  { "Führungsbolzen Ø 20 auf 19,9 abgelaufen, 55 lang, 2 x", EM_UNITS_METRIC, "1\t1\tcount\t2\t" },
  { "Kante an Bohrung Ø8 ausgebrochen, 1 x 0,5", EM_UNITS_METRIC, "1\t1\tkind\tedge-nick\t" },
  { "Tool 16-220: face 40 x 25 mm worn, 0.3 to put on", EM_UNITS_METRIC, "!1\t1\tcount\t205\t" },
  { "Runner turned corner eroded: radius 3 mm worn to about 5 over 8", EM_UNITS_METRIC, "1\t1\tradius\t5\tmm" },
  { "Slide T1 damage as photo: corner missing 5 x 5 x 3 mm.", EM_UNITS_METRIC, "1\t1\tlength\t5\tmm" },
  { "someone tapped M10 instead of M8, need welding solid, 10 mm dia x 25", EM_UNITS_METRIC, "1\t1\tkind\trecess\t" },
  /* "1 Kante" counts; how far a pin is thin; a bore's Übermaß is wear unless it is left on purpose. */
  { "1 Kante R0,2, 45 lang", EM_UNITS_METRIC, "1\t1\tlength\t45\tmm" },
  { "Schieber 2: 1 Kante a 45 mm R0,2", EM_UNITS_METRIC, "1\t1\tradius\t0.2\tmm" },
  { "45 mm Kante R0,2", EM_UNITS_METRIC, "1\t1\tlength\t45\tmm" },
  { "Kernstift Ø 3 vorne auf 5 mm um 0,02 zu dünn. 16 Stk.", EM_UNITS_METRIC, "1\t1\tlength\t5\tmm" },
  { "Kernstift Ø 3 vorne auf 2,95 abgenutzt, 5 lang", EM_UNITS_METRIC, "1\t1\tworn\t2.95\tmm" },
  { "Bohrung Ø 12 H7 hat 0,08 Übermaß, 25 tief", EM_UNITS_METRIC, "1\t1\tbuild\t0.04\tmm" },
  { "Bohrung Ø 12 auf 12,1, bitte mit 0,3 Übermaß schweißen", EM_UNITS_METRIC, "1\t1\tstock\t0.3\tmm" },
  { "Insert : 1 gros coup 8 x 2 x 1,5 et 3 petits de 2 x 0,5 x 0,5", EM_UNITS_METRIC, "1\t2\tcount\t3\t" },
  { "recargar en una cara de 50 x 20 mm, espesor 1,5", EM_UNITS_METRIC, "1\t1\tkind\tface\t" },
  { "relleno de logotipo: 25x8x0,4 mm", EM_UNITS_METRIC, "1\t1\tkind\trecess\t" },
  { "Punch ground undersize, 24.95 mm now should be 25.00, 30 mm of length. D2.", EM_UNITS_METRIC, "1\t1\tworn\t24.95\tmm" },
  { "1/4\" wide x 1/2\" deep slot, wall galled .004, 1\" long", EM_UNITS_INCH, "1\t1\tslot_width\t6.35\tmm" },
  { "10-32 tapped hole stripped, fill 3/8 deep", EM_UNITS_INCH, "!1\t1\twidth\t254\tmm" },
  { "Weld .5\" dia bolt hole c'bore shut, .31 dp - leave .257 thru hole open", EM_UNITS_INCH, "!1\t1\tstock\t6.5278\tmm" },
  { "Crack 35 mm in total, 2 branches 20 and 15, depth 4, P20", EM_UNITS_METRIC, "!1\t1\tgap\t15\tmm" },
  /* The dash behind a point's number leads to what is told of it. */
  { "Pos. 1 - 2 Kanten R0,3 je 20 lang\nPos. 2 - 1 Ecke 3 x 1 x 1", EM_UNITS_METRIC, "1\t1\tcount\t2\t" },
  { "Item 1 - 2 edges R0.3 mm, each 20 long", EM_UNITS_METRIC, "1\t1\tcount\t2\t" },
  { "Manche Stellen trennt der Abzug, die stehenden wusste ich noch", EM_UNITS_METRIC, "!1\t1\tkind\trib\t" },
  { "Kante R0,3 20 lang, manches verschoben", EM_UNITS_METRIC, "!1\t2\tkind\tedge-nick\t" },
  { "3 barrenos roscados M5 a rellenar (Ø4,2 x 12)", EM_UNITS_METRIC, "1\t1\tcount\t3\t" },
  { "Diamètre du noyau : 14,00 théorique / 13,92 réel / zone 25 mm depuis le bout", EM_UNITS_METRIC, "1\t1\tworn\t13.92\tmm" },
  /* What lies or is only there beside a repair; how far to stay away; an edge told in two; oval spots; whose metal by its own sentence. */
  { "Corner worn R0.3 mm, 25 long.\nSlot itself is 3 wide and is good, leave it alone", EM_UNITS_METRIC, "!2\t2\tkind\trecess\t" },
  { "FILL POCKET FLUSH 30 X 20 X 5 MM. POCKET CORNERS R3", EM_UNITS_METRIC, "!1\t2\tkind\tworn-corner\t" },
  { "Fill pocket flush 30 x 20 x 5 mm. Pocket corners R3. Water line 6 below pocket floor", EM_UNITS_METRIC, "1\t1\tclearance\t6\tmm" },
  { "Crack 12 mm long 1 deep. Keep away from the vents by 1.5 mm.", EM_UNITS_METRIC, "1\t1\tclearance\t1.5\tmm" },
  { "Edge worn R0.4 on length 45 mm, texture close to edge (1 mm)", EM_UNITS_METRIC, "1\t1\tclearance\t1\tmm" },
  { "Parting line mashed, 3.5 in long, edge is rolled to R.025", EM_UNITS_INCH, "1\t1\tradius\t0.635\tmm" },
  { "worn spot, oval, 8 x 5 mm and 0.4 mm deep", EM_UNITS_METRIC, "1\t1\tform\tellipsoid\t" },
  { "The tool has three spots for you.\n* nick 3 x 1 x 1 mm\n* crack 12 mm long", EM_UNITS_METRIC, "!1\t0\ttools\t3\t" },
  { "Nick 3 x 1 x 1 mm. We'd rather you grind it to size.", EM_UNITS_METRIC, "1\t0\tfinish\tshop\t" },
  { "Nick 3 x 1 x 1 mm. Print is 2026-B.", EM_UNITS_METRIC, "1\t0\tdrawing\t2026-B\t" },
  { "The core is H13 and the cavity is P20. Core has a nick, 6 x 3 x 2 mm. Cavity has a gouge 20 mm long, 1 wide and .5 deep.", EM_UNITS_METRIC, "1\t1\tbase\th13\t" },
  /* What is said of "it" in the next sentence; "down to … from"; a part of the tool by its number; a wire that is asked for. */
  { "The edge is chipped. It's 3 mm long. On the top it is missing 1 mm and down the side 0.6.", EM_UNITS_METRIC, "1\t1\tleg_b\t0.6\tmm" },
  { "The rib should stand 12.0 mm and it's at 11.6, it's 1.5 thick and 22 long.", EM_UNITS_METRIC, "1\t1\tcoat\t0.4\tmm" },
  { "Step is worn down to 4.8 from 5.0 mm, 20 x 10.", EM_UNITS_METRIC, "1\t1\tthickness\t0.2\tmm" },
  { "Rib is down to 11.6 mm from 12.0, 1.5 thick and 22 long.", EM_UNITS_METRIC, "1\t1\tcoat\t0.4\tmm" },
  { "Shut-off face on slide 2 is down 0.2. It measures 40 by 12 mm.", EM_UNITS_METRIC, "!1\t0\tunused\t2\t" },
  { "Cavity 2 has a chip at the gate, 0.8 x 0.5 x 0.5 mm. So has cavity 4.", EM_UNITS_METRIC, "1\t1\tcount\t2\t" },
  { "What would you use for wire? It's A2 at 58. Nick 3 x 1 x 1 mm.", EM_UNITS_METRIC, "1\t0\tbase\ta2\t" },
  { "core pin dia 5 mm worn to 4.94, 20 long\ncavity 2: core pin dia 5, nothing to do", EM_UNITS_METRIC, "!2\t2\tkind\tpin\t" },
  { "b) broche usée : 5,00 / 4,90, 18 mm", EM_UNITS_METRIC, "1\t1\tlength\t18\tmm" },
  { "Edge chip 2 x 0.5 x 0.5 mm. Lower edge: worn, radius 0.3 over 21.\nThe polish starts 0.5 from the chip.", EM_UNITS_METRIC, "2\t1\tclearance\t0.5\tmm" },
  { "Customer would like us to finish grind. Chip 3 x 1 x 1 mm", EM_UNITS_METRIC, "!1\t0\tfinish\tcustomer\t" },
  { "Hacer una presa nueva a la salida: 40 de largo, 5 de ancho, 3 de alto", EM_UNITS_METRIC, "1\t1\tlength\t40\tmm" },
  { "El diámetro de ajuste, nominal 22 mm, tiene 21.9 mm en una longitud de 10 mm.", EM_UNITS_METRIC, "1\t1\tworn\t21.9\tmm" },
  { "Le plot d'appui Ø20 est usé : il fait 14,75 de haut, on doit retrouver 15.", EM_UNITS_METRIC, "1\t1\tthickness\t0.25\tmm" },
  { "SPRUE HOLE TAPER: ADD .006, MOUTH .30, .9 DEEP", EM_UNITS_INCH, "1\t1\tform\tcone\t" },
  /* The same on another one, told with a noun; so many more of other sizes; a round ding; a scored pin by its wear. */
  { "Corner chipped, 3 x 1 x 0.6 mm. Same on the opposite corner.", EM_UNITS_METRIC, "1\t1\tcount\t2\t" },
  { "Edge worn R0.4, 30 mm long. Same again on the back edge.", EM_UNITS_METRIC, "1\t1\tcount\t2\t" },
  { "Edge worn R0.4, 30 mm long. Right side is the same but only 20.", EM_UNITS_METRIC, "1\t2\tradius\t0.4\tmm" },
  { "There's a crack, 12 mm long and 1 deep. There are three more, 8 long and 0.5 deep.", EM_UNITS_METRIC, "1\t2\tcount\t3\t" },
  { "Chip 3 x 1 x 1 mm, and two small ones, 1 x 0.5 x 0.5 each.", EM_UNITS_METRIC, "1\t2\tlength\t1\tmm" },
  { "There's a ding, .2 across and .05 deep.", EM_UNITS_INCH, "1\t1\tform\tcap\t" },
  { "The upper one is scored, 0.400 dia worn to .394 over 1 inch.", EM_UNITS_INCH, "1\t1\tkind\tpin\t" },
  /* "shaft's" is no plural; a hole across and in; a part's steel by its number; how large a blade is; the corner off a blade. */
  { "Shaft's worn, 1.000 down to .996 over 3/4.", EM_UNITS_INCH, "!1\t1\tquestion\tcount-unknown\t" },
  { "Hole is in the wrong place, it is 1/8 and goes 1 inch in.", EM_UNITS_INCH, "1\t1\tdiameter\t3.175\tmm" },
  { "Edge chipped .25 x .12 x .10. Insert is 420, 50-52.", EM_UNITS_INCH, "1\t0\tbase\t420\t" },
  { "Corner chipped, 2 x 1 x 1 mm. Blade's 1.5 x 8.", EM_UNITS_METRIC, "!1\t2\tkind\trib\t" },
  { "We've lost the corner off an ejector blade. Corner's about 2 x 1 x 1 mm.", EM_UNITS_METRIC, "1\t1\tkind\tedge-nick\t" },
  { "One corner's gone, .25 x .12 x .10, and the one on the left is .06 x .04 x .04.", EM_UNITS_INCH, "1\t2\tkind\tedge-nick\t" },
  { "Trou de guidage usé 12,00, fait 12,06 ; 25 de long, il y en a 4", EM_UNITS_METRIC, "1\t1\tcount\t4\t" },
  { "Mella 5 x 0,5 x 0,5 mm a 2 mm de la textura", EM_UNITS_METRIC, "1\t1\tclearance\t2\tmm" },
  { "dos rayas: una de 45 mm y otra de 30, ambas de 0,2 de hondo.", EM_UNITS_METRIC, "1\t2\tlength\t30\tmm" },
  { "Hay que subir la base del alojamiento 0,4 mm.", EM_UNITS_METRIC, "1\t1\tthickness\t0.4\tmm" },
  { "ARÊTE MANGÉE PAR LES GAZ, R 0,5, 28 MM", EM_UNITS_METRIC, "1\t1\tradius\t0.5\tmm" },
  { "Soldar cuarteo térmico en zona de ataque, 8 líneas de unos 5 mm, 0,3 de hondo", EM_UNITS_METRIC, "1\t1\tcount\t8\t" },
  /* How far to stay away behind a comma; a machine is a thing. */
  { "Crack 12 mm long 1 deep. Vented area behind, keep away from the vents by 1.5 mm.", EM_UNITS_METRIC, "1\t1\tclearance\t1.5\tmm" },
  { "Nick 3 x 1 x 1 mm. Bring your machine to us, the tool is heavy.", EM_UNITS_METRIC, "!1\t0\tfinish\tcustomer\t" },
  /* Where a crack runs; what broke off a nose. */
  { "Crack by the gate. It's 9 mm long, 1 deep, and it runs toward the hole.", EM_UNITS_METRIC, "!1\t2\tkind\tbore\t" },
  { "Core nose, 4 x 2 x 1 mm broken off", EM_UNITS_METRIC, "1\t1\tkind\tedge-nick\t" },
  { "l'insert 4 a l'arête mangée, R0,6 x 22", EM_UNITS_METRIC, "!1\t1\tcount\t4\t" },
  { "el inserto 4 viene con el canto comido, R0,6 x 22", EM_UNITS_METRIC, "!1\t1\tcount\t4\t" },
  { "Outil chromé, 1.2344. Arête arrondie à R 0,2 sur 95 mm.", EM_UNITS_METRIC, "1\t0\tcoating\tchrome\t" },
  { "CHIP .50 X .06 X .04\nNO PREHEAT OVER 400 F", EM_UNITS_METRIC, "1\t1\tlength\t12.7\tmm" },
  { "CHIP .50 X .06 X .04\nKEEP UNDER 300 F", EM_UNITS_METRIC, "!2\t1\tclearance\t7620\tmm" },
  { "CUTTING EDGE ROUNDED R.010, OUTER, DIA .625, ALL 6", EM_UNITS_METRIC, "1\t1\tcount\t6\t" },
  { "Kante verschlissen R0,3, 40 lang, alle 4", EM_UNITS_METRIC, "1\t1\tcount\t4\t" },
  { "12 PINCH-OFF EDGES (2 PER CAV) ROLLED OVER TO R.012, 2.25 LONG EACH", EM_UNITS_METRIC, "1\t1\tcount\t12\t" },
  { "6 cavities (2 per cavity): edge nick 5 x 1 x 1 mm", EM_UNITS_METRIC, "1\t1\tcount\t12\t" },
  { "seat face low | dia 32, 0.15 to add", EM_UNITS_METRIC, "1\t1\tdiameter\t32\tmm" },
  { "seat face low: dia 32, 0.15 to add", EM_UNITS_METRIC, "1\t1\tthickness\t0.15\tmm" },
  { "Damage: rib tip burnt away\nLength: 22 mm\nRib thickness: 1.2 mm\nTo add on top: 0.6 mm", EM_UNITS_METRIC, "4\t1\tcoat\t0.6\tmm" },
  { "Chip 5 x 1 x 1 mm\nCUST. WILL FINISH MACHINE AND POLISH", EM_UNITS_METRIC, "2\t0\tfinish\tcustomer\t" },
  { "Chip 5 x 1 x 1 mm\nFINISH BY REPAIR SHOP", EM_UNITS_METRIC, "2\t0\tfinish\tshop\t" },
  { "Ref 66/18. Valve pin, dia 5 mm, worn", EM_UNITS_METRIC, "1\t0\treference\t66/18\t" },
  { "REF 3/4\nCHIP .5 X .1 X .1", EM_UNITS_METRIC, "!1\t0\treference\t3/4\t" },
  { "Carla has the PO (88120).\nchip 5 x 1 x 1 mm", EM_UNITS_METRIC, "1\t0\treference\t88120\t" },
  { "WELD REQ'N 1174\nchip 5 x 1 x 1 mm", EM_UNITS_METRIC, "1\t0\treference\t1174\t" },
  { "PROFILE DIE NO. PD-88\nchip 5 x 1 x 1 mm", EM_UNITS_METRIC, "1\t0\ttool_number\tPD-88\t" },
  { "Bore edge worn between 10 and 2 o'clock, dia 54 mm, R0.3", EM_UNITS_METRIC, "!1\t1\tlength\t10\tmm" },
  { "Bore edge worn between 10 and 2 o'clock, dia 54 mm, R0.3", EM_UNITS_METRIC, "1\t1\tdiameter\t54\tmm" },
  { "Kante zwischen 10 und 2 Uhr verschlissen, Ø54, R0,3", EM_UNITS_METRIC, "!1\t1\tlength\t10\tmm" },
  { "Chip 5 x 1 x 1 mm\nTorch gets in from one side only", EM_UNITS_METRIC, "2\t1\taccess\trestricted\t" },
  { "Blade 0.6 thick x 4.0 long, tip lost 0.35. Access very tight between the blades, gap 0.9.", EM_UNITS_METRIC, "1\t1\taccess\trestricted\t" },
  { "Chip 5 x 1 x 1 mm. Please leave a few thou for us to spot in.", EM_UNITS_METRIC, "1\t0\tunused\tleave a few thou\t" },
  { "Chip 5 x 1 x 1 mm.\nNitrided, H11. Remove layer before work.", EM_UNITS_METRIC, "2\t0\tunused\tRemove layer\t" },
  /* Who finishes, in a plain sentence of its own. */
  { "CRACK 2 LONG .1 DEEP. FINISH BY VENDOR TO PRINT.", EM_UNITS_INCH, "1\t0\tfinish\tshop\t" },
  { "CRACK 2 LONG .1 DEEP. MACHINED BY OTHERS.", EM_UNITS_INCH, "1\t0\tfinish\tcustomer\t" },
  { "Edge chipped 4 x 1 x 1. Jo will stone it sharp after you weld it.", EM_UNITS_METRIC, "1\t0\tfinish\tcustomer\t" },
  { "Edge chipped 4 x 1 x 1. Our milling department does the rest.", EM_UNITS_METRIC, "1\t0\tfinish\tcustomer\t" },
  /* Steels by number (EN ISO 4957, EN 10084, EN ISO 683-2) and of AISI; after "no." four digits name the tool. */
  { "DIE 1.2367, CRACK 12 LG 1 DEEP", EM_UNITS_METRIC, "1\t0\tbase\t1-2367\t" },
  { "MATL 16MnCr5, PIN 20 WORN TO 19.8", EM_UNITS_METRIC, "1\t0\tbase\t1-7131\t" },
  { "MATL P21 40 HRC, CRACK 12 LG 1 DEEP", EM_UNITS_METRIC, "1\t0\tbase\tp21\t" },
  { "Die no. 2210, P20, crack 12 lg 1 deep", EM_UNITS_METRIC, "1\t0\ttool_number\t2210\t" },
  /* What is to be done before welding. */
  { "CRACK 3 LG .1 DP, GRIND OUT BEFORE WELDING", EM_UNITS_INCH, "1\t0\tunused\tGRIND OUT BEFORE WELDING\t" },
  { "Welle 20 auf 19,8. Nitrierschicht vorher abschleifen.", EM_UNITS_METRIC, "1\t0\tunused\tNitrierschicht vorher abschleifen\t" },
  /* Part of a circle in words; where a crack lies is no width of it. */
  { "bore nominal 35 mm, measured 35.2 mm on half of the circle (180°), length 28 mm", EM_UNITS_METRIC, "1\t1\tarc\t180\tdeg" },
  { "GOUGE AT BOTTOM 8 LG X 0.3 DP X 0.5 WIDE", EM_UNITS_METRIC, "1\t1\tgap\t0.5\tmm" },
  { "PIN DIA 1.000 worn .005 per side, worn area is 3.5 long", EM_UNITS_INCH, "1\t1\tlength\t88.9\tmm" },
  { "face worn 5/8 in. dia, .020 low", EM_UNITS_INCH, "1\t1\tdiameter\t15.875\tmm" },
  { "Bore 16 mm, now 16.1 to 16.2, 12 deep", EM_UNITS_METRIC, "1\t1\tworn\t16.15\tmm" },
  { "slot 6 wide, both walls worn, add 0.2, 30 x 12", EM_UNITS_METRIC, "1\t1\tslot_width\t6\tmm" },
  { "slot 6 wide, both walls worn, add 0.2, 30 x 12", EM_UNITS_METRIC, "1\t1\tcount\t2\t" },
  /* What is asked is no coating. */
  { "bore 48 dia, 22 long mm, build 0.2 per side. Do you also do nitriding?", EM_UNITS_METRIC, "!1\t0\tcoating\tnitride\t" },
  { "Crack 20 mm long. One more thing, do you also do plasma nitriding?", EM_UNITS_METRIC, "!1\t0\tcoating\tnitride\t" },
  { "bore 20 worn 20.1, open on both faces", EM_UNITS_METRIC, "1\t1\taccess\topen\t" },
  { "small hollow 3 mm dia 0.15 deep", EM_UNITS_METRIC, "1\t1\tform\tcap\t" },
  /* A code at the note's head that no word says of what it is. */
  { "Die ring D-118, H13\nLand low 0.2, 30 x 5", EM_UNITS_METRIC, "1\t0\ttool_number\tD-118\t" },
  { "17-4PH H1025\nLand low 0.2, 30 x 5", EM_UNITS_METRIC, "!1\t0\ttool_number\tH1025\t" },
  { "Corner B-12 worn R0.5 x 20", EM_UNITS_METRIC, "!1\t0\ttool_number\tB-12\t" },
  { "Mould T-204\nInsert X-330, corner worn R0.5 x 20", EM_UNITS_METRIC, "!2\t0\ttool_number\tX-330\t" },
  { "TIP OD WORN. FINISH DIA .2500, WORN DIA .2440, LENGTH OF WORN PORTION .625", EM_UNITS_INCH, "1\t1\tdiameter\t6.35\tmm" },
  { "ENTRY EDGE RADIUSED .03 X 5.5 LG, TO BE .005 R", EM_UNITS_INCH, "1\t1\tradius_to\t0.127\tmm" },
  { "INSERT HEIGHT 1.995, SHOULD BE 2.000. BUILD UP TOP, .437 X .312.", EM_UNITS_INCH, "1\t1\tthickness\t0.127\tmm" },
  /* How much is missing, in a line of its own. */
  { "Fläche 40 x 5\nfehlt 0,12", EM_UNITS_METRIC, "2\t1\tthickness\t0.12\tmm" },
  { "Land 40 x 5 mm\nmissing 0.12", EM_UNITS_METRIC, "!2\t2\tkind\tedge-nick\t" },
  /* German words of one kind: dams, filled holes, who finishes, what stays free. */
  { "Stauwulst 30 x 4 x 1,5 hoch ergänzen, Enden gerundet", EM_UNITS_METRIC, "1\t1\tkind\tdam\t" },
  { "Fehlbohrung Ø 6, 14 tief, soll bündig zu", EM_UNITS_METRIC, "1\t1\tform\tcylinder\t" },
  { "V-Kerbe, 25 lang, 0,6 tief, 90° Öffnungswinkel", EM_UNITS_METRIC, "1\t1\tangle\t90\tdeg" },
  { "Kante R0,4, 20 lang. Drehen macht unser Lohnbetrieb.", EM_UNITS_METRIC, "1\t0\tfinish\tcustomer\t" },
  { "Kante R0,4, 20 lang. Die Stiftbohrungen dürfen keinesfalls geschweißt werden.", EM_UNITS_METRIC, "1\t0\trefuse\tStiftbohrungen\t" },
  { "Unsere Bestellnummer lautet BE-20917. Kante R0,4, 20 lang.", EM_UNITS_METRIC, "1\t0\treference\tBE-20917\t" },
  { "2x45° chamfer chipped, 5 mm long", EM_UNITS_METRIC, "1\t1\tquestion\tcount-or-chamfer\t" },
  { "Kante: 2 X 45° ausgebrochen, 5 lang", EM_UNITS_METRIC, "1\t1\tlength\t5\tmm" },
  { "nick in the parting face 3 x 2 x 0.4 mm, fill flush", EM_UNITS_METRIC, "1\t1\tkind\trecess\t" },
  { "chip on the corner 3 x 2 x 0.4 mm, fill", EM_UNITS_METRIC, "1\t1\tkind\tedge-nick\t" },
  /* Another repair whose noun stands behind a preposition. */
  { "Nick 3 x 1 x 1 mm. On the core pin dia 8 we need 0.05 per side over 20 mm", EM_UNITS_METRIC, "1\t2\tdiameter\t8\tmm" },
  { "Kante verrundet R 0,3 auf 40 mm und am Kernstift Ø 8 fehlen 0,05 je Seite auf 20 mm", EM_UNITS_METRIC, "1\t2\tbuild\t0.05\tmm" },
  { "arête arrondie R0,4 sur 50 mm et il manque 0,1 mm sur la face d'appui 30 x 12", EM_UNITS_METRIC, "1\t2\tthickness\t0.1\tmm" },
  { "1.) edge chipped 3 x 1 x 1 mm. 2.) face low 0.2, 30 x 20 mm.", EM_UNITS_METRIC, "1\t2\tthickness\t0.2\tmm" },
  { "Bohrung 20 hat 20,08, Tiefe 18. Der Stift ist auf 19,9 runter, 16 lang", EM_UNITS_METRIC, "1\t2\tworn\t19.9\tmm" },
  { "3 inserts: nick 3 x 1 x 1 mm", EM_UNITS_METRIC, "1\t1\tcount\t3\t" },
  { "3 Einsätze: Kante R0,4, 20 lang", EM_UNITS_METRIC, "1\t1\tcount\t3\t" },
  { "1 insert: nick 3 x 1 x 1 mm\n2 slide: nick 4 x 1 x 1 mm", EM_UNITS_METRIC, "!2\t2\tcount\t2\t" },
  { "Schieber 2 Fläche 0,1 zu tief, 90 x 15", EM_UNITS_METRIC, "!1\t1\tcount\t2\t" },
  { "Slide 2 faces low 0.1 mm 90 x 15", EM_UNITS_METRIC, "1\t1\tcount\t2\t" },
  { "fill 6 holes M5 (10 deep)", EM_UNITS_METRIC, "1\t0\tunused\tM5\t" },
};

START_TEST (test_case)
{
  assert_row (lexicon, cases[_i].text, cases[_i].units, cases[_i].row);
}
END_TEST

/* Answers set what they say: .010 in is 0.254 mm per side, and 0.127 mm when it was meant on diameter. */
START_TEST (test_answers_set_fields)
{
  const char *text = "BORE ⌀.5 X .75 DP BUILD UP .010";
  g_autoptr (EmReadResult) result = em_notes_read (lexicon, text, strlen (text), EM_UNITS_INCH);
  const EmReadQuestion *question = &g_array_index (result->questions, EmReadQuestion, 0);

  ck_assert_uint_eq (result->questions->len, 1);
  ck_assert_int_eq (question->n_answers, 2);
  ck_assert_str_eq (question->answer[0], "per-side");
  ck_assert_str_eq (question->answer[1], "on-diameter");
  ck_assert_double_eq_tol (g_array_index (result->sets, EmReadField, question->first_set[0]).value, 0.254, 1e-12);
  ck_assert_double_eq_tol (g_array_index (result->sets, EmReadField, question->first_set[1]).value, 0.127, 1e-12);
}
END_TEST

/* Where the drawing says another length, both are offered; of two sizes of different fields none is. */
START_TEST (test_two_values_are_offered)
{
  const char *text = "pin 6 dia worn to 5.9, 12 mm long, print says 15 mm long";
  g_autoptr (EmReadResult) result = em_notes_read (lexicon, text, strlen (text), EM_UNITS_METRIC);
  const EmReadQuestion *question = NULL;

  for (guint i = 0; i < result->questions->len; i++)
    if (strcmp (g_array_index (result->questions, EmReadQuestion, i).code, "two-values") == 0)
      question = &g_array_index (result->questions, EmReadQuestion, i);
  ck_assert_ptr_nonnull (question);
  ck_assert_int_eq (question->n_answers, 2);
  for (int k = 0; k < 2; k++)
    {
      const EmReadField *set = &g_array_index (result->sets, EmReadField, question->first_set[k]);
      g_autofree char *words = g_strndup (text + set->start, set->length);

      ck_assert_str_eq (set->field, "length");
      ck_assert_double_eq_tol (set->value, k == 0 ? 12 : 15, 1e-12);
      ck_assert_str_eq (words, k == 0 ? "12 mm" : "15 mm");
    }
}
END_TEST

START_TEST (test_missing_fields_are_told)
{
  const char *text = "CRACK IN RUNNER";
  g_autoptr (EmReadResult) result = em_notes_read (lexicon, text, strlen (text), EM_UNITS_INCH);
  guint n_missing = 0;

  for (guint i = 0; i < result->fields->len; i++)
    {
      const EmReadField *field = &g_array_index (result->fields, EmReadField, i);

      if (field->state == EM_READ_MISSING)
        {
          n_missing++;
          ck_assert (strcmp (field->field, "length") == 0 || strcmp (field->field, "depth") == 0);
          ck_assert_uint_eq (field->length, 0);
        }
    }
  ck_assert_uint_eq (n_missing, 2);
}
END_TEST

/* Ends that taper have a length, which square ones have not. */
START_TEST (test_a_choice_asks_for_its_size)
{
  static const struct { const char *text; gboolean is_missing; } dams[] = {
    { "Dam 25 x 5 x 3 mm high, ends tapered", TRUE }, { "Dam 25 x 5 x 3 mm high, ends square", FALSE },
  };

  for (gsize k = 0; k < G_N_ELEMENTS (dams); k++)
    {
      g_autoptr (EmReadResult) result = em_notes_read (lexicon, dams[k].text, strlen (dams[k].text), EM_UNITS_METRIC);
      guint n_missing = 0;

      for (guint i = 0; i < result->fields->len; i++)
        n_missing += g_array_index (result->fields, EmReadField, i).state == EM_READ_MISSING &&
                     strcmp (g_array_index (result->fields, EmReadField, i).field, "runout") == 0;
      ck_assert_uint_eq (n_missing, dams[k].is_missing ? 1 : 0);
    }
}
END_TEST

/* Each field is tied to the words it came from. */
START_TEST (test_fields_point_to_their_words)
{
  const char *text = "Worn corner R.020, 3.5 LG";
  g_autoptr (EmReadResult) result = em_notes_read (lexicon, text, strlen (text), EM_UNITS_METRIC);

  for (guint i = 0; i < result->fields->len; i++)
    {
      const EmReadField *field = &g_array_index (result->fields, EmReadField, i);
      g_autofree char *words = g_strndup (text + field->start, field->length);

      if (strcmp (field->field, "radius") == 0)
        ck_assert_str_eq (words, "R.020");
      if (strcmp (field->field, "length") == 0)
        ck_assert_str_eq (words, "3.5 LG");
      if (strcmp (field->field, "radius") == 0)
        ck_assert_str_eq (field->reason, "leading-dot-inch");
    }
}
END_TEST

/* No steel of a tool has a hardness of 6 HRC (common practice, no source): what was read so is never plainly read. */
START_TEST (test_unlikely_hardness_is_marked)
{
  const char *text = "H13, 6 HRC";
  g_autoptr (EmReadResult) result = em_notes_read (lexicon, text, strlen (text), EM_UNITS_METRIC);
  gboolean is_met = FALSE;

  for (guint i = 0; i < result->fields->len; i++)
    {
      const EmReadField *field = &g_array_index (result->fields, EmReadField, i);

      if (strcmp (field->field, "hardness") != 0)
        continue;
      is_met = TRUE;
      ck_assert_int_eq (field->state, EM_READ_INFERRED);
      ck_assert_str_eq (field->reason, "implausible");
    }
  ck_assert (is_met);
}
END_TEST

/* The next field of that name from *at on, of any feature; NULL: none. */
static const EmReadField *
next_field (const EmReadResult *result, const char *name, guint *at)
{
  while (*at < result->fields->len)
    {
      const EmReadField *field = &g_array_index (result->fields, EmReadField, (*at)++);

      if (strcmp (field->field, name) == 0)
        return field;
    }
  return NULL;
}

/* A repair that not all sizes are told of may be none; of several any may be the one that is hard to reach. */
START_TEST (test_half_told_is_marked)
{
  static const struct { const char *text, *field, *reason; int feature; } told[] = {
    { "EDGE CHIP 3 X 1 X 1 MM\n\nGROOVE 6 WIDE, 15 DEEP", "kind", "incomplete", 2 },
    { "EDGE CHIP 3 X 1 X 1 MM, HARD TO REACH\nFACE LOW 0.2, 20 X 10", "access", "from-words", 1 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (told); i++)
    {
      g_autoptr (EmReadResult) result = em_notes_read (lexicon, told[i].text, strlen (told[i].text), EM_UNITS_METRIC);
      const EmReadField *field;
      guint at = 0;

      do
        field = next_field (result, told[i].field, &at);
      while (field != NULL && field->feature != told[i].feature);
      ck_assert_msg (field != NULL, "%s", told[i].text);
      ck_assert_int_eq (field->state, EM_READ_INFERRED);
      ck_assert_str_eq (field->reason, told[i].reason);
    }
}
END_TEST

/* Told of one part among several repairs, it may not be said of all. */
START_TEST (test_a_coating_of_one_part_is_marked)
{
  const char *text = "LIFTER CORNER NICKED 3 X 1 X 1 MM\nSLIDE FACE LOW 0.1, 40 X 20 MM\nSLIDE IS NITRIDED";
  g_autoptr (EmReadResult) result = em_notes_read (lexicon, text, strlen (text), EM_UNITS_METRIC);
  guint at = 0;
  const EmReadField *field = next_field (result, "coating", &at);

  ck_assert_ptr_nonnull (field);
  ck_assert_int_eq (field->state, EM_READ_INFERRED);
}
END_TEST

/* A drawing's text behind a mail in the other unit: what each governs is no more than taken for it. */
START_TEST (test_two_units_are_marked)
{
  const char *text = "ALL DIMS INCH\nNICK ON P/L .25 LG X .03 X .03\nUNITS: MM\nP/L EDGE WORN TO R0.5, 40 LG";
  g_autoptr (EmReadResult) result = em_notes_read (lexicon, text, strlen (text), EM_UNITS_INCH);
  guint n_met = 0, at = 0;

  for (const EmReadField *field; (field = next_field (result, "length", &at)) != NULL; n_met++)
    {
      ck_assert_int_eq (field->state, EM_READ_INFERRED);
      ck_assert_str_eq (field->reason, "units-differ");
    }
  ck_assert_uint_eq (n_met, 2);
}
END_TEST

/* Two steels, two hardnesses, two who machine: neither is plainly read, and the second shows. */
START_TEST (test_contradictions_are_marked)
{
  const char *text = "STEEL: P20, HARDNESS 30 HRC\nNICK 2 X 1 X 1 MM\nCUSTOMER TO MACHINE\nMATERIAL: H13\nHARDNESS 50 HRC\nSHOP TO MACHINE";
  g_autoptr (EmReadResult) result = em_notes_read (lexicon, text, strlen (text), EM_UNITS_METRIC);
  static const struct { const char *name; guint n; } doubted[] = { { "base", 1 }, { "hardness", 2 }, { "finish", 2 } };

  for (gsize k = 0; k < G_N_ELEMENTS (doubted); k++)
    {
      guint n = 0, at = 0;

      for (const EmReadField *field; (field = next_field (result, doubted[k].name, &at)) != NULL; n++)
        ck_assert_int_eq (field->state, EM_READ_INFERRED);
      ck_assert_uint_eq (n, doubted[k].n);
    }
  assert_row (lexicon, text, EM_UNITS_METRIC, "4\t0\tunused\tH13\t");
}
END_TEST

/* Talk is not listed, but where it stands is still told, so that it can be shown as not used. */
START_TEST (test_talk_stays_among_the_unused)
{
  const char *text = "Nick 2 x 1 x 1 mm\nthe blade wobbled somewhat";
  g_autoptr (EmReadResult) result = em_notes_read (lexicon, text, strlen (text), EM_UNITS_METRIC);
  gboolean is_met = FALSE;

  for (guint i = 0; i < result->unused->len; i++)
    {
      const EmReadSpan *span = &g_array_index (result->unused, EmReadSpan, i);
      g_autofree char *words = g_strndup (text + span->start, span->length);

      ck_assert (span->is_minor);
      is_met |= strstr (words, "blade") != NULL;
    }
  ck_assert (is_met);
}
END_TEST

/* A field of the feature is plainly read, or only inferred. */
static gboolean
is_sure (const char *text, int feature, const char *field)
{
  g_autoptr (EmReadResult) result = em_notes_read (lexicon, text, strlen (text), EM_UNITS_METRIC);

  for (guint i = 0; i < result->fields->len; i++)
    {
      const EmReadField *one = &g_array_index (result->fields, EmReadField, i);

      if (one->feature == feature && strcmp (one->field, field) == 0)
        return one->state == EM_READ_READ;
    }
  ck_abort_msg ("no %s in: %s", field, text);
}

START_TEST (test_what_may_be_of_a_part_is_marked)
{
  ck_assert (is_sure ("Sidewall worn, 20 x 10 mm, 0.2 low", 1, "kind"));
  ck_assert (!is_sure ("Grommel sidewall worn, 20 x 10 mm, 0.2 low", 1, "kind"));
  ck_assert (is_sure ("nick 3 x 1 x 1 mm\nDO NOT WELD THREADS", 0, "refuse"));
  ck_assert (!is_sure ("nick 3 x 1 x 1 mm\nDO NOT WELD TIP HOLE Ø1", 0, "refuse"));
  ck_assert (!is_sure ("nick 3 x 1 x 1 mm\nnick 4 x 1 x 1\nnick 5 x 1 x 1\nYou machine 1 and 2", 0, "finish"));
}
END_TEST

/* A size that found no place beside a repair's others: none of them is plainly read any more. */
START_TEST (test_a_size_left_over_is_a_doubt)
{
  const char *text = "Nick 5 x 1 x 1 mm and 7.5 mm";
  g_autoptr (EmReadResult) result = em_notes_read (lexicon, text, strlen (text), EM_UNITS_METRIC);
  guint n_sizes = 0;

  ck_assert_uint_eq (result->unused->len, 1);
  ck_assert (!g_array_index (result->unused, EmReadSpan, 0).is_minor);
  for (guint i = 0; i < result->fields->len; i++)
    {
      const EmReadField *field = &g_array_index (result->fields, EmReadField, i);

      if (field->text != NULL || field->state == EM_READ_MISSING)
        continue;
      n_sizes++;
      ck_assert_int_eq (field->state, EM_READ_INFERRED);
    }
  ck_assert_uint_eq (n_sizes, 3);
}
END_TEST

/* A word spelled alike in two languages says what it says in the note's, and nothing of it elsewhere. */
START_TEST (test_words_of_one_language_alone)
{
  static const char *const xml[] = {
    "<lexicon xmlns='urn:estimend:notes' language='aa'><say is='kind' kinds='groove:9'>rayon</say><say is='glue'>uno | dos</say></lexicon>",
    "<lexicon xmlns='urn:estimend:notes' language='bb'><say is='label' value='radius' own='yes'>rayon</say><say is='glue'>un | deux</say>"
    "<say is='glue' own='yes'>uno dos</say></lexicon>",
    NULL,
  };
  static const struct { const char *text; int language; guint n_tokens; EmSays says; } words[] = {
    { "rayon un deux", 1, 1, EM_SAYS_LABEL }, { "rayon uno dos", 0, 1, EM_SAYS_KIND }, { "rayon", -1, 1, EM_SAYS_KIND },
    { "rayon un uno", -1, 1, EM_SAYS_KIND }, { "uno dos", 0, 1, EM_SAYS_GLUE },
  };
  g_autoptr (GError) error = NULL;
  g_autoptr (EmLexicon) two = em_lexicon_parse (xml, &error);

  ck_assert_msg (two != NULL, "%s", error != NULL ? error->message : "");
  for (gsize i = 0; i < G_N_ELEMENTS (words); i++)
    {
      g_autoptr (GArray) tokens = em_token_split (words[i].text, strlen (words[i].text));
      const EmToken *first = &g_array_index (tokens, EmToken, 0);
      const EmPhrase *phrase;
      guint n_tokens;
      int language;

      em_lexicon_name (two, words[i].text, tokens);
      language = em_lexicon_language (two, first, tokens->len);
      phrase = em_lexicon_match (two, language, first, tokens->len, &n_tokens);
      ck_assert_int_eq (language, words[i].language);
      ck_assert_uint_eq (n_tokens, words[i].n_tokens);
      ck_assert_uint_eq (phrase->n_senses, 1);
      ck_assert_int_eq (phrase->sense[0]->says, words[i].says);
    }
}
END_TEST

START_TEST (test_lexicon_errors_name_the_line)
{
  static const char *const bad[] = {
    "<lexicon/>",
    "<lexicon xmlns='urn:estimend:notes' language='en'>\n<say is='nonsense'>x</say></lexicon>",
    "<lexicon xmlns='urn:estimend:notes' language='en'>\n<say is='kind' kinds='tooth:3'>x</say></lexicon>",
    "<lexicon xmlns='urn:estimend:notes' language='en'>\n<say is='glue'></say></lexicon>",
    "<!DOCTYPE lexicon [<!ENTITY e 'x'>]><lexicon xmlns='urn:estimend:notes' language='en'><say is='glue'>&e;</say></lexicon>",
    "<lexicon",
  };

  for (gsize i = 0; i < G_N_ELEMENTS (bad); i++)
    {
      const char *xml[] = { bad[i], NULL };
      g_autoptr (GError) error = NULL;
      EmLexicon *none = em_lexicon_parse (xml, &error);

      ck_assert_msg (none == NULL && error != NULL && g_str_has_prefix (error->message, "lexicon:"), "%s", bad[i]);
    }
}
END_TEST

int
main (void)
{
  TCase *tcase = tcase_create ("read");
  int status;

  /* A broken precondition of the reader fails its row. */
  g_log_set_always_fatal (G_LOG_FATAL_MASK | G_LOG_LEVEL_CRITICAL);
  lexicon = load_lexicon ();
  tcase_add_loop_test (tcase, test_case, 0, G_N_ELEMENTS (cases));
  tcase_add_test (tcase, test_answers_set_fields);
  tcase_add_test (tcase, test_two_values_are_offered);
  tcase_add_test (tcase, test_missing_fields_are_told);
  tcase_add_test (tcase, test_a_choice_asks_for_its_size);
  tcase_add_test (tcase, test_fields_point_to_their_words);
  tcase_add_test (tcase, test_unlikely_hardness_is_marked);
  tcase_add_test (tcase, test_half_told_is_marked);
  tcase_add_test (tcase, test_a_coating_of_one_part_is_marked);
  tcase_add_test (tcase, test_two_units_are_marked);
  tcase_add_test (tcase, test_contradictions_are_marked);
  tcase_add_test (tcase, test_talk_stays_among_the_unused);
  tcase_add_test (tcase, test_what_may_be_of_a_part_is_marked);
  tcase_add_test (tcase, test_a_size_left_over_is_a_doubt);
  tcase_add_test (tcase, test_words_of_one_language_alone);
  tcase_add_test (tcase, test_lexicon_errors_name_the_line);
  status = run_suite ("notes: read", tcase);
  em_lexicon_free (lexicon);
  return status;
}
