#!/usr/bin/env python3
# Copyright (C) 2026 The Estimend developers
# SPDX-License-Identifier: GPL-3.0-or-later
"""The shipped metals against figures printed elsewhere, and against their schema.

check-metals.py table METALS.XML           compositions, densities, and what every record must hold
check-metals.py schema METALS.XML METALS.RNG  with xmllint and jing; skipped (77) where neither is installed

Expected ranges below were copied from the source named beside them, never from the file under test.
"""

import re
import shutil
import subprocess
import sys
import tempfile
import xml.etree.ElementTree as tree

NS = "{urn:estimend:metals}"

# Printed ranges in mass percent; None: that end isn't printed. The record has to lie within what is printed.
RANGES = [
    # data sheet of P20 at jademetals.co.uk
    ("p20", {"C": (.28, .40), "Mn": (.60, 1.00), "Si": (.20, .80), "Cr": (1.40, 2.00), "Mo": (.30, .55)}),
    # data sheet of D2, azom.com article 6214
    ("d2", {"C": (1.40, 1.60), "Mn": (None, .60), "Si": (None, .60), "Cr": (11.0, 13.0), "Mo": (.70, 1.20), "V": (None, 1.10)}),
    # data sheet of M2, azom.com article 6138 (both carbon levels)
    ("m2", {"C": (.78, 1.05), "Mn": (.15, .40), "Si": (.20, .45), "Cr": (3.75, 4.50), "Mo": (4.50, 5.50), "V": (1.75, 2.20),
            "W": (5.50, 6.75)}),
    # stainless data sheets at scotforge.com
    ("420", {"C": (.15, None), "Cr": (12.0, 14.0)}),
    ("316l", {"C": (None, .03), "Mn": (None, 2.00), "Cr": (16.0, 18.0), "Mo": (2.0, 3.0), "Ni": (10.0, 14.0)}),
    # data sheets of H13, ascforgings.com and makeitfrom.com; manganese there 0.20 to 0.50, in ASTM A681 0.20 to 0.60 (from memory)
    ("h13", {"C": (.32, .45), "Si": (.80, 1.25), "Cr": (4.75, 5.50), "Mo": (1.10, 1.75), "V": (.80, 1.20)}),
    # C17200 at jsktraders.com and lfa-wire.com
    ("c17200", {"Be": (1.80, 2.00), "Al": (None, .20), "Si": (None, .20)}),
    # AWS A5.9 wires, table 15-2 at rewon.com.my
    ("er316l", {"C": (None, .03), "Cr": (18.0, 20.0), "Ni": (11.0, 14.0), "Mo": (2.0, 3.0), "Mn": (1.0, 2.5), "Si": (.30, .65)}),
    ("er309l", {"C": (None, .03), "Cr": (23.0, 25.0), "Ni": (12.0, 14.0), "Mo": (None, .75)}),
    ("er312", {"C": (None, .15), "Cr": (28.0, 32.0), "Ni": (8.0, 10.5)}),
    # AWS A5.28 wires, printed guide; its "0.7-0.12" carbon of ER80S-D2 is a misprint of 0.07
    ("er80s-d2", {"C": (.07, .12), "Mn": (1.60, 2.10), "Si": (.50, .80), "Mo": (.40, .60), "Ni": (None, .15), "Cu": (None, .50)}),
    ("er80s-b2", {"C": (.07, .12), "Mn": (.40, .70), "Si": (.40, .70), "Cr": (1.20, 1.50), "Mo": (.40, .65)}),
    ("er90s-b3", {"C": (.07, .12), "Cr": (2.30, 2.70), "Mo": (.90, 1.20)}),
    # AWS A5.10 wires, brazing.com aluminum alloy compositions
    ("er4043", {"Si": (4.5, 6.0), "Fe": (None, .80), "Cu": (None, .30), "Mn": (None, .05), "Mg": (None, .05)}),
    ("er4047", {"Si": (11.0, 13.0)}),
    ("er5356", {"Mg": (4.5, 5.5), "Mn": (.05, .20), "Cr": (.05, .20), "Ti": (.06, .20)}),
    # AWS A5.7 wires, product pages at weldingwarehouseinc.com
    ("ercu", {"Sn": (None, 1.0), "Mn": (None, .50), "Si": (None, .50), "P": (None, .15), "Al": (None, .01), "Pb": (None, .02)}),
    ("ercusi-a", {"Zn": (None, 1.0), "Sn": (None, 1.0), "Mn": (None, 1.5), "Fe": (None, .50), "Si": (2.8, 4.0), "Al": (None, .01),
                  "Pb": (None, .02)}),
    # powder sheet of 18Ni 300: nickel 17 to 19, cobalt 8.5 to 10, molybdenum 4.5 to 5.2, titanium 0.5 to 0.8
    ("maraging-300", {"Ni": (17.0, 19.0), "Co": (8.5, 10.0), "Mo": (4.5, 5.2), "Ti": (.5, .8)}),
]

# Printed nominal compositions; the record's range has to hold them.
NOMINAL = [
    ("p20-ni", {"C": .40, "Mn": 1.5, "Si": .30, "Cr": 2.0, "Mo": .20, "Ni": 1.1}),   # nominal of 1.2738
    ("a2", {"C": 1.0, "Mn": .75, "Si": .30, "Cr": 5.0, "Mo": 1.0, "V": .25}),        # fo-sky.com
    ("o1", {"C": .94, "Mn": 1.2, "Cr": .50, "W": .50}),                              # published nominal of O1
]

# g/cm3; lb/in3 times 27.6799047 (0.45359237 kg over 16.387064 cm3, both exact, NIST SP 811).
DENSITIES = [
    ("p20", 7.85, .005),                     # jademetals.co.uk
    ("410", 7.775, .026),                    # printed 7.75 to 7.80
    ("er4043", .097 * 27.6799047, .005),     # brazing.com
    ("er4047", .096 * 27.6799047, .005),
    ("er5356", .096 * 27.6799047, .005),
]

# Pure metals of the handbook tables (CRC, from memory), g/cm3: no alloy of theirs lies further off than a tenth.
PURE = {"Fe": 7.87, "Ni": 8.91, "Co": 8.86, "Cu": 8.96, "Al": 2.70}
FAR = {"m2": "tungsten", "ercual-a2": "aluminum", "c95400": "aluminum"}   # heavier or lighter alloying, or graphite in iron

# J/g from 25 degC to liquid at the melting point. Iron 72.4 kJ/mol = 1296 kJ/kg (thermochemical tables); the others from memory of
# the NIST-JANAF tables. An alloy as the mean of these, by mass of those it holds, within 8 %: mixing heat is left out.
MELT = {"Fe": 1296, "Ni": 1080, "Al": 1060, "Cu": 670, "Co": 1060}

IDS = ("p20 p20-ni h11 h13 s7 a2 d2 o1 m2 4140 410 420 17-4ph 316l maraging-250 maraging-300 c17200 6061 7075 grey-iron "
       "ductile-iron").split()

troubles = []


def check(is_right, sentence, *values):
    if not is_right:
        troubles.append(sentence % values)


def number(text):
    """A plain decimal, as the schema has it."""
    if not re.fullmatch(r"\d+(\.\d+)?", text or ""):
        troubles.append("no plain number: %r" % text)
        return float("nan")
    return float(text)


def span(record, name):
    """Both ends, or None."""
    words = record.get(name, "").split()
    if not words:
        return None
    check(len(words) == 2, "%s: %s has %d numbers", record.get("id"), name, len(words))
    return number(words[0]), number(words[-1])


def contents(record):
    found = {}
    for row in record.iter(NS + "contains"):
        check(row.get("element") not in found, "%s: %s twice", record.get("id"), row.get("element"))
        found[row.get("element")] = (number(row.get("low")), number(row.get("high")))
    return found


def check_published(records):
    for name, printed in RANGES:
        has = contents(records[name])
        for element, (low, high) in printed.items():
            check(element in has, "%s: no %s", name, element)
            ours = has.get(element, (0, 100))
            check(low is None or ours[0] >= low, "%s: %s from %g, printed %s", name, element, ours[0], low)
            check(high is None or ours[1] <= high, "%s: %s to %g, printed %s", name, element, ours[1], high)
    for name, printed in NOMINAL:
        has = contents(records[name])
        for element, value in printed.items():
            low, high = has.get(element, (0, 0))
            check(low <= value <= high, "%s: %s %g to %g does not hold the printed %g", name, element, low, high, value)
    for name, density, tolerance in DENSITIES:
        ours = number(records[name].get("density-g-per-cm3"))
        check(abs(ours - density) <= tolerance, "%s: density %g, printed %g", name, ours, density)


def check_record(record):
    name, has, balance = record.get("id"), contents(record), record.get("balance")
    source = record.find(NS + "source")
    check(source is not None and len((source.text or "").strip()) > 10, "%s: no source", name)
    check(balance not in has, "%s: the balance %s has a range too", name, balance)
    for element, (low, high) in has.items():
        check(0 <= low <= high <= 100, "%s: %s %g to %g", name, element, low, high)
    check(sum(low for low, _ in has.values()) < 100, "%s: more than all of it", name)
    for which in ("hardness-hrc", "hardness-hv", "aged-hrc", "preheat-degc"):
        both = span(record, which)
        check(both is None or both[0] <= both[1], "%s: %s falls", name, which)
        check(both is None or "hrc" not in which or both[1] <= 70, "%s: %s beyond the scale", name, which)
    check(span(record, "hardness-hrc") or span(record, "hardness-hv"), "%s: no hardness", name)
    density = number(record.get("density-g-per-cm3"))
    if name not in FAR and record.get("family") != "cast-iron":
        check(abs(density / PURE[balance] - 1) <= .10, "%s: density %g far from that of %s", name, density, balance)


def check_base(record):
    preheat, temper = span(record, "preheat-degc"), record.get("temper-degc")
    if preheat and temper:
        check(preheat[1] < number(temper), "%s: preheated above its last temper", record.get("id"))


def mixed_melt(record):
    middle = {element: (low + high) / 2 for element, (low, high) in contents(record).items()}
    middle[record.get("balance")] = 100 - sum(middle.values())
    return sum(MELT[e] * middle.get(e, 0) for e in MELT) / sum(middle.get(e, 0) for e in MELT)


def check_filler(record):
    name, sizes = record.get("id"), [number(row.get("wire-mm")) for row in record.iter(NS + "size")]
    melt, expected = number(record.get("melt-j-per-g")), mixed_melt(record)
    check(abs(melt / expected - 1) <= .08, "%s: melts at %g J/g, mixture %g", name, melt, expected)
    check(1 <= len(sizes) <= 8, "%s: %d sizes", name, len(sizes))
    check(sizes == sorted(set(sizes)), "%s: sizes out of order", name)
    check(all(.2 <= size <= 1.6 for size in sizes), "%s: sizes beyond 0.2 to 1.6 mm", name)
    check(record.get("demo-price") == "yes", "%s: an invented price that does not say so", name)
    prices = [int(row.get("price-minor")) for row in record.iter(NS + "size") if row.get("per") == "metre"]
    check(prices == sorted(prices) and all(prices), "%s: thicker wire for less a metre", name)


def check_table(path):
    root = tree.parse(path).getroot()
    bases, fillers = root.findall(NS + "base"), root.findall(NS + "filler")
    names = [record.get("id") for record in bases + fillers]
    check(len(bases) >= 20 and len(fillers) >= 24, "%d metals, %d wires", len(bases), len(fillers))
    check(len(names) == len(set(names)), "an id stands twice")
    check(set(IDS) <= set(names), "missing: %s", " ".join(sorted(set(IDS) - set(names))))
    check(any(record.get("family") == "free-machining" for record in bases), "no free-machining mold steel")
    check_published({record.get("id"): record for record in bases + fillers})
    for record in bases + fillers:
        check_record(record)
    for record in bases:
        check_base(record)
    for record in fillers:
        check_filler(record)


# What the schema must refuse: a change to the good file each.
SPOILED = [
    ("no source", r"<source>.*?</source>", "", 1),
    ("unknown family", r'family="tool-steel"', 'family="wood"', 1),
    ("unknown element", r'element="Cr"', 'element="Xx"', 1),
    ("negative density", r'density-g-per-cm3="', 'density-g-per-cm3="-', 1),
    ("one end of a range", r'hardness-hrc="(\d+) \d+"', r'hardness-hrc="\1"', 1),
    ("unknown attribute", r"<base ", '<base color="red" ', 1),
    ("unknown process", r'processes="laser gtaw"', 'processes="glue"', 1),
    ("price with decimals", r'price-minor="(\d+)"', r'price-minor="\1.5"', 1),
    ("other namespace", r"urn:estimend:metals", "urn:estimend:metal", 1),
    ("no version", r' version="1.0"', "", 1),
]


def accepts(tool, schema, path):
    command = {"xmllint": ["xmllint", "--noout", "--nonet", "--relaxng", schema, path], "jing": ["jing", schema, path]}[tool]
    return subprocess.run(command, capture_output=True).returncode == 0


def check_schema(path, schema):
    tools = [tool for tool in ("xmllint", "jing") if shutil.which(tool)]
    if not tools:
        print("neither xmllint nor jing is installed")
        sys.exit(77)
    text = open(path, encoding="utf-8").read()
    for tool in tools:
        check(accepts(tool, schema, path), "%s refuses the shipped metals", tool)
    for what, pattern, instead, times in SPOILED:
        changed, n = re.subn(pattern, instead, text, count=times)
        check(n == times, "%s: nothing to spoil", what)
        with tempfile.NamedTemporaryFile("w", suffix=".xml", encoding="utf-8") as spoiled:
            spoiled.write(changed)
            spoiled.flush()
            check(not accepts(tools[0], schema, spoiled.name), "%s is accepted", what)


if sys.argv[1] == "table":
    check_table(sys.argv[2])
else:
    check_schema(sys.argv[2], sys.argv[3])
for sentence in troubles:
    print(sentence)
sys.exit(bool(troubles))
