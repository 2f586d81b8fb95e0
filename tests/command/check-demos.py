#!/usr/bin/env python3
# Copyright (C) 2026 The Estimend developers
# SPDX-License-Identifier: GPL-3.0-or-later
"""A second implementation, written from the mensuration of handbooks, held against the program on every demo quote.

usage: check-demos.py ESTIMEND DATA_DIR

Net volumes: elementary mensuration (CRC Standard Mathematical Tables; Machinery's Handbook, mensuration), worked here from the
quote file itself. Layers: a layer is half the wire's diameter (common practice, no source) and one more for safety. Mass: section times
length times density."""

import math
import os
import pathlib
import subprocess
import sys
import tempfile
import xml.etree.ElementTree as ET

PROGRAM, DATA = sys.argv[1], pathlib.Path(sys.argv[2])
QUOTE, RATES, METALS = "{urn:estimend:quote}", "{urn:estimend:rates}", "{urn:estimend:metals}"
PI = math.pi
failures = []


def expect(condition, what):
    if not condition:
        failures.append(what)
        print("not ok:", what)


def close(a, b, relative=1e-9):
    return abs(a - b) <= relative * max(abs(a), abs(b), 1e-12)


def nick(f):
    whole = f["leg_a"] * f["leg_b"] / 2 * f["length"]
    return whole / 3 if f.get("ends") == "tapered" else whole


def corner(f):
    theta = math.radians(f.get("angle", 90))
    def area(r):
        return r * r * (1 / math.tan(theta / 2) - (PI - theta) / 2)
    if "diameter" in f:
        return None   # Pappus: held by hand-worked values elsewhere
    return (area(f["radius"]) - area(f.get("radius_to", 0))) * f["length"]


def face(f):
    form = f.get("form", "rectangle")
    area = {"rectangle": lambda: f["length"] * f["width"], "disc": lambda: PI * f["diameter"] ** 2 / 4, "area": lambda: f["area"]}[form]()
    return area * f["thickness"]


def rib(f):
    b, t, h, c = f["thickness"], f["coat"], f.get("depth", 0), PI / 4 if f.get("corners") == "rounded" else 1
    if h == 0:
        return f["length"] * b * t
    if f.get("wraps", 0):
        return None
    return f["length"] * (t * (b + 2 * h) + 2 * c * t * t)


def ring(inner, outer, length):
    return PI / 4 * (outer ** 2 - inner ** 2) * length


def bore(f):
    worn = f["worn"] if "worn" in f else f["diameter"] + 2 * f["build"]
    return ring(f["diameter"], worn, f["length"]) * f.get("arc", 360) / 360


def pin(f):
    worn = f["worn"] if "worn" in f else f["diameter"] - 2 * f["build"]
    return ring(worn, f["diameter"], f["length"])


def dam(f):
    run = f["height"] * math.tan(math.radians(f.get("draft", 0)))
    ends = f.get("ends", "square")
    def area(z):
        w, l = f["width"] - 2 * run * z, f["length"] - (0 if ends == "square" else 2 * run * z)
        return w * l if ends != "rounded" else w * (l - w) + PI * w * w / 4
    return f["height"] / 6 * (area(0) + 4 * area(0.5) + area(1))


def recess(f):
    form, d = f.get("form", "box"), f["depth"]
    if form == "box":
        return f["length"] * f["width"] * d
    r = f.get("diameter", 0) / 2
    if form == "ellipsoid":
        a, b = (f["length"] / 2, f["width"] / 2) if "length" in f else (r, r)
        return 2 / 3 * PI * a * b * d
    return {"cylinder": PI * r * r * d, "cone": PI * r * r * d / 3, "cap": PI * d / 6 * (3 * r * r + d * d)}[form]


def groove(f):
    d = f["depth"]
    return f["length"] * (f.get("gap", 0) * d + d * d * math.tan(math.radians(f.get("angle", 60)) / 2))


def sidewall(f):
    return f["length"] * f["height"] * f["thickness"]


def seat(f):
    return None   # normal thickness on a cone or sphere: held by solids elsewhere


VOLUME = {"edge-nick": nick, "worn-corner": corner, "sidewall": sidewall, "face": face, "rib": rib, "bore": bore, "seat": seat, "pin": pin,
          "dam": dam, "recess": recess, "groove": groove}
HEIGHT = {"sidewall": lambda f: f["thickness"], "face": lambda f: f["thickness"], "dam": lambda f: f["height"],
          "bore": lambda f: f["build"] if "build" in f else (f["worn"] - f["diameter"]) / 2,
          "pin": lambda f: f["build"] if "build" in f else (f["diameter"] - f["worn"]) / 2}


def number(text):
    try:
        return float(text)
    except ValueError:
        return text


def figures(demo):
    with tempfile.TemporaryDirectory() as config:
        env = {"PATH": os.environ["PATH"], "LC_ALL": "C.UTF-8", "ESTIMEND_CONFIG_DIR": config, "HOME": config}
        out = subprocess.run([PROGRAM, "cost", "--tsv", demo], capture_output=True, text=True, check=True, env=env, timeout=60).stdout
    table = {}
    for line in out.splitlines():
        scope, quantity, value, _ = line.split("\t")
        table.setdefault(scope, {})[quantity] = number(value)
    return table


def check(demo, rates, densities):
    """Returns how many volumes were compared."""
    root = ET.parse(demo).getroot()
    deposit = rates.find(RATES + "deposit")
    stock_default, safety = float(deposit.get("stock_allowance")), int(deposit.get("safety_passes"))
    table, compared = figures(demo), 0
    for i, feature in enumerate(root.findall(QUOTE + "feature")):
        kind, count = feature.get("kind"), int(feature.get("count", "1"))
        values = {v.get("field"): number(v.get("is")) for v in feature.findall(QUOTE + "value")}
        got = table[f"feature.{i + 1}"]
        name = f"{demo.name} feature {i + 1} {kind}"
        volume = VOLUME[kind](values)
        if volume is not None:
            expect(close(got["net_volume"], count * volume), f"{name}: net volume {got['net_volume']} against {count * volume}")
            compared += 1
        if kind in HEIGHT:
            stock = float(feature.get("stock", stock_default))
            layer = got["wire_diameter"] / 2
            layers = max(1, math.ceil((HEIGHT[kind](values) + stock) / layer - 1e-9)) + int(feature.get("safety_layers", safety))
            expect(got["layers"] == layers, f"{name}: layers {got['layers']} against {layers}")
        section = PI * got["wire_diameter"] ** 2 / 4
        filler = feature.findtext(QUOTE + "filler") or root.findtext(QUOTE + "filler")
        mass = section * got["wire_length"] * densities[filler] / 1000
        expect(close(got["filler_mass"], mass), f"{name}: mass {got['filler_mass']} against {mass}")
        ratio = got["deposited_volume"] / (section * got["welded_length"])
        expect(any(close(ratio, float(m.get("efficiency"))) for m in rates.findall(RATES + "machine")), f"{name}: efficiency {ratio}")
        share = got["welded_length"] / got["wire_length"]
        expect(any(close(share, float(m.get("usable"))) for m in rates.findall(RATES + "machine")), f"{name}: usable share {share}")
        expect(got["deposited_volume"] >= got["net_volume"], f"{name}: as much goes on as is missing")
    return compared


def main():
    rates = ET.parse(DATA / "rates.xml").getroot()
    densities = {f.get("id"): float(f.get("density-g-per-cm3")) for f in ET.parse(DATA / "metals.xml").getroot().findall(METALS + "filler")}
    demos = sorted((DATA / "demo").glob("*.estimend"))
    compared = sum(check(demo, rates, densities) for demo in demos)
    expect(len(demos) >= 3 and compared >= 10, f"{compared} volumes compared over {len(demos)} demos")
    print(f"{compared} volumes, {len(failures)} failures")
    return 1 if failures else 0


sys.exit(main())
