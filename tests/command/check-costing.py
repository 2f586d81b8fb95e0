#!/usr/bin/env python3
# Copyright (C) 2026 The Estimend developers
# SPDX-License-Identifier: GPL-3.0-or-later
"""The whole way from a quote to its price walked a second time, in another language, with money in exact fractions, for invented quotes in
many currencies; the program has to come to the same to the minor unit.

usage: check-costing.py ESTIMEND DATA_DIR [HOW_MANY]

Shapes: elementary mensuration (CRC Standard Mathematical Tables; Machinery's Handbook); a layer at height z is the surface z away from the base
metal. Layers, tracks, caps and fusing clean: common practice, no source. Pulses: v = f·s·(1 − o); power: v = P·η/(ρ·A/(1 − D)·h). Arc:
EN 1011-1 has no part in a price. Labour: operating factor as arc time over time at the weld (welding cost handbooks). Repeat tools: T. P. Wright,
1936, cumulative average. Minor units: ISO 4217. Time is kept in whole ms, gas in µl, wire in millionths of what its price is for; each printed
line is rounded once, half away from zero, and every total is a sum of printed lines."""

import itertools
import math
import os
import pathlib
import random
import subprocess
import sys
import tempfile
import xml.etree.ElementTree as ET
from fractions import Fraction as F

PROGRAM, DATA = sys.argv[1], pathlib.Path(sys.argv[2])
HOW_MANY = int(sys.argv[3]) if len(sys.argv) > 3 else 60
METALS = "{urn:estimend:metals}"
PI = math.pi
DIGITS = {"JPY": 0, "KRW": 0, "CLP": 0, "EUR": 2, "USD": 2, "GBP": 2, "KWD": 3, "TND": 3, "BHD": 3}
failures = []


def expect(condition, what):
    if not condition:
        failures.append(what)
        print("not ok:", what)


def up(value):
    """Ceiling that floating error does not push over a whole number."""
    return math.ceil(value * (1 - 1e-9))


def half_up(value):
    """A fraction rounded half away from zero."""
    return (abs(value) + F(1, 2)).__floor__() * (1 if value >= 0 else -1)


# ---- shapes: height, w(z), l(z), volume, area covered, sharp edge, largest extent ----

class Shape:
    def __init__(self, height, width, length, volume, area, edge, extent):
        self.height, self.width, self.length, self.volume, self.area, self.edge, self.extent = height, width, length, volume, area, edge, extent


def nick(f):
    l, a, b = f["length"], f["leg_a"], f["leg_b"]
    slope = math.hypot(a, b)
    height = a * b / slope
    if f["ends"] == "tapered":
        # Two flat flanks meet over the middle of the edge: foot and tips make triangles with sides of half the length.
        area = math.hypot(a * b, slope * l / 2)
        return Shape(height, lambda z: slope * max(0, 1 - z / height), lambda z: l / 2 * max(0, 1 - z / height), a * b * l / 6, area, 0, max(l, slope))
    return Shape(height, lambda z: slope * max(0, 1 - z / height), lambda z: l, a * b * l / 2, slope * l, 0, max(l, slope))


def corner(f):
    """The worn arc r about C; new metal lies between it and the faces, or the arc left. Half angle of the metal at rho about C by bisection."""
    r, to, half = f["radius"], f["radius_to"], math.radians(f["angle"]) / 2
    centre = r / math.sin(half)                  # from the tip, along the bisector
    left = to / math.sin(half)
    gamma = PI / 2 - half
    # From C a face is met perpendicularly at gamma off the bisector, at distance r.
    def inside(rho, psi):
        x, y = rho * math.cos(psi), rho * math.sin(psi)      # from C towards the tip; x along the bisector
        if x * math.cos(gamma) + y * math.sin(gamma) > r * (1 + 1e-15):
            return False
        along = (centre - x) * math.cos(half) + y * math.sin(half)  # of the foot on the face, from the tip
        if to > 0 and along < to / math.tan(half):
            return math.hypot(x - (centre - left), y) <= to
        return True
    def phi(rho):
        low, high = 0.0, gamma
        if not inside(rho, 0):
            return 0.0
        # Inside is a stretch about the bisector for the rounded rest, and one that reaches up to the face otherwise.
        for _ in range(100):
            middle = (low + high) / 2
            low, high = (middle, high) if inside(rho, middle) else (low, middle)
        return low
    height = (r - to) * (1 / math.sin(half) - 1)
    rho_of = lambda z: r + max(0, min(z, height))
    k = 1 / math.tan(half) - gamma
    area = k * (r * r - to * to)
    arc = 2 * gamma * r
    width = lambda z: 2 * rho_of(z) * phi(rho_of(z))
    if "diameter" not in f:
        l = f["length"]
        return Shape(height, width, lambda z: l, area * l, arc * l, 0, l)
    edge, sign = f["diameter"] / 2, 1 if f["side"] == "bore" else -1
    turn = 2 * PI if "length" not in f else min(2 * PI, f["length"] / edge)
    def mean_in(rho, p):
        """Mean distance of an arc ±p from the edge's radius: its centroid lies rho·sin p/p out along the bisector."""
        return r - rho * (math.sin(p) / p if p > 1e-9 else 1) * math.sin(half)
    length = lambda z: turn * (edge + sign * mean_in(rho_of(z), phi(rho_of(z))))
    # Pappus: first moment about the edge of kite less sector, for both radii.
    tip, tangent = 1 / math.sin(half), 1 / math.tan(half)
    kite = tangent * (tangent * math.cos(half) + tip) / 3
    moment = (kite - (gamma * tip - 2 * math.sin(gamma) / 3)) * math.sin(half) * (r ** 3 - to ** 3)
    extent = 2 * edge * math.sin(min(turn, PI) / 2)
    return Shape(height, width, length, turn * (edge * area + sign * moment), arc * turn * (edge + sign * mean_in(r, gamma)), 0, extent)


def wall(f):
    l, h, t = f["length"], f["height"], f["thickness"]
    return Shape(t, lambda z: min(l, h), lambda z: max(l, h), l * h * t, l * h, l, max(l, h))


def face(f):
    t, form = f["thickness"], f["form"]
    if form == "rectangle":
        l, w, area, edge = f["length"], f["width"], f["length"] * f["width"], 2 * (f["length"] + f["width"])
    elif form == "disc":
        l = w = f["diameter"]
        area, edge = PI * l * l / 4, PI * l
    else:
        area = f["area"]
        l = w = math.sqrt(area)
        edge = 4 * l
    return Shape(t, lambda z: min(l, w), lambda z: area / min(l, w), area * t, area, edge, max(l, w))


def rib(f):
    l, b, t, h, wraps, rounded = f["length"], f["thickness"], f["coat"], f["depth"], f["wraps"], f["corners"] == "rounded"
    if h == 0:
        return Shape(t, lambda z: b, lambda z: l, l * b * t, l * b, 2 * l, max(l, b))
    grow = PI if rounded else 4
    def end(z):
        """Surface of a half-round end at distance z: side, top, and between them nothing or a quarter turn (Pappus)."""
        if rounded:
            return PI * (b / 2 + z) * h + PI * b * b / 8 + PI * z / 2 * PI * (b / 2 + 2 * z / PI)
        return PI * (b / 2 + z) * (h + z) + PI / 2 * (b / 2 + z) ** 2
    def end_volume():
        side = PI / 2 * ((b / 2 + t) ** 2 - b * b / 4) * h
        if rounded:
            return side + PI * b * b / 8 * t + PI * t * t / 4 * PI * (b / 2 + 4 * t / (3 * PI))
        return side + PI / 2 * (b / 2 + t) ** 2 * t
    width = lambda z: b + 2 * h + grow * min(z, t)
    volume = l * (t * (b + 2 * h) + 2 * (PI / 4 if rounded else 1) * t * t) + wraps * end_volume()
    return Shape(t, width, lambda z: l + wraps * end(min(z, t)) / width(z), volume, l * (b + 2 * h) + wraps * end(0),
                 0 if rounded else 2 * l + wraps * PI * (b / 2 + t), max(l + wraps * (b / 2 + t), b + 2 * h))


def ring(base, finished, length, arc, extent):
    """Around a bore or a pin; tracks run the longer way, judged halfway through the weld."""
    t, sign = abs(base - finished), 1 if finished > base else -1
    turn = lambda z: arc * max(0, base + sign * z)
    around = arc * (base + sign * t / 2) >= length
    width, run = (lambda z: length, turn) if around else (turn, lambda z: length)
    return Shape(t, width, run, arc / 2 * abs(finished ** 2 - base ** 2) * length, arc * base * length, 0, extent)


def bore(f):
    finished = f["diameter"] / 2
    base = f["worn"] / 2 if "worn" in f else finished + f["build"]
    return ring(base, finished, f["length"], math.radians(f["arc"]), max(2 * base, f["length"]))


def pin(f):
    finished = f["diameter"] / 2
    base = f["worn"] / 2 if "worn" in f else finished - f["build"]
    return ring(base, finished, f["length"], 2 * PI, max(2 * finished, f["length"]))


def seat(f):
    t, mouth = f["thickness"], f["diameter"] / 2
    if f["form"] == "cone":
        small, h = f["diameter_small"] / 2, f["depth"]
        slant = math.hypot(h, mouth - small)
        shrink = lambda z: min(z, t) * slant / h
        frustum = lambda a, b: PI * h / 3 * (a * a + a * b + b * b)
        volume = frustum(mouth, small) - frustum(mouth - shrink(t), small - shrink(t))
        return Shape(t, lambda z: slant, lambda z: PI * (mouth + small - 2 * shrink(z)), volume, PI * slant * (mouth + small), 0, f["diameter"])
    r = f["radius"]
    alpha = math.asin(mouth / r)
    zone = 2 * PI * (1 - math.cos(alpha))
    return Shape(t, lambda z: alpha * max(0, r - z), lambda z: zone * max(0, r - z) / alpha, zone / 3 * (r ** 3 - (r - t) ** 3), zone * r * r, 0,
                 f["diameter"])


def dam(f):
    l, w, h, ends, slope = f["length"], f["width"], f["height"], f["ends"], math.tan(math.radians(f["draft"]))
    width = lambda z: max(0, w - 2 * min(z, h) * slope)
    if ends == "square":
        length, edge = (lambda z: l), 2 * l
    elif ends in ("drafted", "tapered"):
        lean = slope if ends == "drafted" else f["runout"] / h
        length = lambda z: max(0, l - 2 * min(z, h) * lean)
        edge = 2 * (length(h) + width(h))
    else:
        length, edge = (lambda z: l - w + PI / 4 * width(z)), 2 * (l - w) + PI * width(h)
    area = lambda z: width(z) * length(z)
    return Shape(h, width, length, h / 6 * (area(0) + 4 * area(h / 2) + area(h)), area(0), edge, max(l, w))


def recess(f):
    form, d = f["form"], f["depth"]
    l, w = (f["length"], f["width"]) if form in ("box", "ellipsoid") else (f["diameter"], f["diameter"])
    long, short, r = max(l, w), min(l, w), w / 2
    at = lambda z: max(0, min(z, d))
    share = {"box": lambda z: 1, "cylinder": lambda z: 1, "cone": lambda z: at(z) / d, "ellipsoid": lambda z: math.sqrt(at(z) / d * (2 - at(z) / d)),
             "cap": lambda z: math.sqrt(at(z) * ((r * r + d * d) / d - at(z))) / r}[form]
    mean = 1 if form == "box" else PI / 4
    volume = {"box": l * w * d, "cylinder": PI * r * r * d, "cone": PI * r * r * d / 3, "ellipsoid": PI / 6 * l * w * d,
              "cap": PI * d / 6 * (3 * r * r + d * d)}[form]
    p, a, b = 1.6075, l / 2, w / 2      # Thomsen's mean for an ellipsoid's surface
    area = {"box": l * w + 2 * (l + w) * d, "cylinder": PI * r * r + 2 * PI * r * d, "cone": PI * r * math.hypot(r, d),
            "ellipsoid": 2 * PI * (((a * b) ** p + (a * d) ** p + (b * d) ** p) / 3) ** (1 / p), "cap": PI * (r * r + d * d)}[form]
    return Shape(d, lambda z: short * share(z), lambda z: long * share(z) * mean, volume, area, 0, long)


def groove(f):
    l, d, g, slope = f["length"], f["depth"], f["gap"], math.tan(math.radians(f["angle"]) / 2)
    return Shape(d, lambda z: g + 2 * min(z, d) * slope, lambda z: l, l * (g * d + d * d * slope), l * (g + 2 * math.hypot(d, d * slope)), 0,
                 max(l, g + 2 * d * slope))


KINDS = {"edge-nick": nick, "worn-corner": corner, "sidewall": wall, "face": face, "rib": rib, "bore": bore, "seat": seat, "pin": pin, "dam": dam,
         "recess": recess, "groove": groove}
CAPPED, FUSED = {"sidewall", "face", "rib", "dam"}, {"edge-nick", "groove", "recess"}


# ---- invented quotes ----

def draw_values(kind, draw):
    size = lambda low, high: round(math.exp(draw.uniform(math.log(low), math.log(high))), 3)
    length, thin = lambda: size(3, 60), lambda: size(0.1, 2)
    if kind == "edge-nick":
        return {"length": length(), "leg_a": thin(), "leg_b": thin(), "ends": draw.choice(["square", "tapered"])}
    if kind == "worn-corner":
        r = size(0.2, 2)
        f = {"radius": r, "radius_to": draw.choice([0, round(r * draw.uniform(0.1, 0.8), 3)]), "angle": draw.choice([90, round(draw.uniform(40, 130), 1)])}
        if draw.random() < 0.4:
            f.update(diameter=size(10, 60), side=draw.choice(["outer", "bore"]))
            if draw.random() < 0.5:
                f["length"] = round(PI * f["diameter"] * draw.uniform(0.1, 0.95), 3)
        else:
            f["length"] = length()
        return f
    if kind == "sidewall":
        return {"length": length(), "height": size(1, 30), "thickness": thin()}
    if kind == "face":
        form = draw.choice(["rectangle", "disc", "area"])
        f = {"form": form, "thickness": thin()}
        f.update({"rectangle": {"length": length(), "width": size(1, 20)}, "disc": {"diameter": size(3, 30)}, "area": {"area": size(5, 800)}}[form])
        return f
    if kind == "rib":
        h = draw.choice([0, size(0.5, 8)])
        return {"length": length(), "thickness": size(0.5, 4), "coat": thin(), "depth": h, "corners": draw.choice(["square", "rounded"]),
                "wraps": draw.choice([0, 1, 2]) if h > 0 else 0}
    if kind in ("bore", "pin"):
        d, t = size(4, 40), thin() / 2
        worn = round(d + (2 * t if kind == "bore" else -2 * t), 4)
        f = {"diameter": d, "length": size(2, 40), **draw.choice([{"worn": worn}, {"build": t}])}
        if kind == "bore":
            f["arc"] = draw.choice([360, round(draw.uniform(20, 350), 1)])
        return f
    if kind == "seat":
        if draw.random() < 0.5:
            small = size(4, 20)
            return {"form": "cone", "diameter_small": small, "diameter": round(small * draw.uniform(1, 2), 3), "depth": size(1, 10), "thickness": size(0.1, 0.6)}
        r = size(4, 20)
        return {"form": "sphere", "radius": r, "diameter": round(2 * r * draw.uniform(0.2, 0.99), 3), "thickness": size(0.1, 1)}
    if kind == "dam":
        w, h = size(1, 6), size(0.3, 4)
        most = math.degrees(math.atan(w / (2 * h)))
        f = {"width": w, "length": round(w * draw.uniform(1.1, 15), 3), "height": h, "draft": draw.choice([0, round(most * draw.uniform(0.1, 0.9), 2)]),
             "ends": draw.choice(["square", "drafted", "rounded", "tapered"])}
        if f["ends"] == "tapered":
            f["runout"] = round(f["length"] * draw.uniform(0.02, 0.49), 3)
        return f
    if kind == "recess":
        form, d = draw.choice(["box", "cylinder", "cone", "ellipsoid", "cap"]), size(0.2, 3)
        if form in ("box", "ellipsoid"):
            return {"form": form, "depth": d, "length": size(1, 12), "width": size(1, 12)}
        return {"form": form, "depth": d, "diameter": round(2 * d * draw.uniform(1.01, 5), 3)}
    return {"length": length(), "depth": size(0.3, 4), "gap": size(0.05, 1), "angle": draw.choice([60, round(draw.uniform(10, 100), 1)])}


def draw_shop(draw):
    digits = DIGITS[draw.choice(list(DIGITS))]
    currency = draw.choice([code for code in DIGITS if DIGITS[code] == digits])
    money = lambda low, high: round(draw.uniform(low, high) * 10 ** digits * (100 if digits == 0 else 1))
    ppm = lambda high: draw.choice([0, draw.randrange(0, high)])
    shop = {
        "currency": currency,
        "money": {"bench": money(30, 120), "finishing": money(30, 120), "office": money(30, 90), "gas": money(5, 30),
                  "minimum": draw.choice([0, 0, money(50, 3000)]), "rounding": draw.choice([1, 1, max(1, money(0.05, 10))]), "overhead": ppm(500000),
                  "contingency": ppm(150000), "margin": ppm(600000), "rush": 0, "finish_area_cost": money(0, 3), "finish_edge_cost": money(0, 1)},
        "deposit": {"layer_ratio": draw.choice([0.5, 0.5, round(draw.uniform(0.3, 0.8), 2)]), "stock_allowance": draw.choice([0, 0.2, 0.25]),
                    "safety_passes": draw.choice([0, 1, 1, 2]), "stick": draw.choice([333, 500]), "stub": draw.choice([0, 25]),
                    "whole_sticks": draw.choice(["yes", "no"])},
        "minutes": {name: round(draw.uniform(0, 25), 2) for name in ("receive", "paperwork", "true_setting", "mask", "mask_area", "wire_change", "program",
                    "preheat_attend", "inspect", "inspect_length", "pack", "strip_area", "finish_area", "finish_volume")},
        "taxes": [(draw.randrange(0, 250000), draw.choice(["yes", "no"])) for _ in range(draw.randrange(0, 4))],
        "machines": [],
    }
    shop["minutes"].update(learning_rate=draw.choice([1000000, 1000000, draw.randrange(700000, 999999)]), valid_days=30)
    for i in range(draw.randrange(1, 4)):
        arc = draw.random() < 0.4
        wires = sorted({round(draw.uniform(0.2, 1.2), 2) for _ in range(3)})
        common = {"id": f"m{i}", "process": "gtaw" if arc else "laser", "retired": "no", "wire_low": 0.2, "wire_high": draw.choice([0.6, 1.0]),
                  "power": draw.choice([40, 300, 1500]) if not arc else 1500, "spot_ratio": round(draw.uniform(1.1, 3), 2), "coupling": round(draw.uniform(0.1, 0.4), 2),
                  "dilution": round(draw.uniform(0.05, 0.4), 2), "cone_half": draw.choice([5, 8, 20]), "gas_flow": round(draw.uniform(0, 12), 1),
                  "gas_pre_post": draw.choice([0, 1, 5]), "machine_rate": money(5, 40), "consumable_rate": money(0, 12),
                  "operating_open": round(draw.uniform(0.1, 0.6), 2), "operating_restricted": 0.2, "operating_deep": 0.11, "usable": draw.choice([0.9, 0.85, 1]),
                  "efficiency": draw.choice([0.95, 0.98])}
        if arc:
            common.update(current_high=draw.choice([60, 200]), head_width=draw.choice([8, 12]))
            settings = [{"setting_wire": w, "current": round(50 * w, 1), "voltage": 11, "speed": round(draw.uniform(0.5, 2), 2)} for w in wires]
        else:
            common.update(pulse_energy=draw.choice([5, 80]), peak=draw.choice([2000, 9000]), overlap=round(draw.uniform(0.3, 0.8), 2))
            settings = [{"setting_wire": w, "pulse": 5, "frequency": round(draw.uniform(2, 12), 1)} for w in wires]
            if draw.random() < 0.5:
                for s in settings:
                    s["spot"] = round(s["setting_wire"] * 1.5, 3)
        shop["machines"].append((common, settings))
    return shop


def draw_quote(draw, shop):
    features = []
    for _ in range(draw.randrange(1, 6)):
        kind = draw.choice(list(KINDS))
        f = {"kind": kind, "values": draw_values(kind, draw), "count": draw.choice([1, 1, 2, 7]), "setting": draw.choice([0, 0, 1, 2]),
             "access": draw.choice(["open", "restricted", "deep"]), "melt_out": draw.choice(["auto", "auto", "yes", "no"]),
             "cap": draw.choice(["auto", "auto", "yes", "no"]), "finish": draw.choice(["default", "customer", "shop"])}
        if draw.random() < 0.2:
            f["stock"] = draw.choice([0, 0.1, 0.3])
        if draw.random() < 0.2:
            f["safety_layers"] = draw.choice([0, 3])
        if draw.random() < 0.2:
            f["clearance"] = round(draw.uniform(0.3, 1.5), 2)
        if draw.random() < 0.2:
            f.update(slot_width=round(draw.uniform(2, 20), 1), slot_depth=round(draw.uniform(1, 15), 1))
        if draw.random() < 0.2:
            f["machine"] = draw.choice(shop["machines"])[0]["id"]
        if draw.random() < 0.15:
            f["override"] = draw.randrange(1, 10 ** 6)
        features.append(f)
    quote = {"features": features, "tools": draw.choice([1, 1, 2, 9]), "coating": draw.random() < 0.2, "finish": draw.choice(["customer", "shop"]),
             "preheat": draw.choice(["yes", "no"]), "breaks": sorted(draw.sample(range(1, 60), draw.choice([0, 0, 2]))),
             "extras": [(draw.randrange(1, 10 ** 5), draw.choice(["yes", "no"])) for _ in range(draw.choice([0, 0, 1, 2]))]}
    for name in ("rush", "discount", "margin", "contingency"):
        if draw.random() < 0.3:
            quote[name] = draw.randrange(1, 300000)
    return quote


def write_rates(path, shop):
    root = ET.Element("rates", xmlns="urn:estimend:rates", version="1.0", currency=shop["currency"], units="metric", demo="no")
    attributes = lambda values: {k: str(v) for k, v in values.items()}
    for group in ("money", "deposit", "minutes"):
        ET.SubElement(root, group, attributes(shop[group]))
    for rate, on in shop["taxes"]:
        ET.SubElement(root, "tax", rate=str(rate), on_taxes=on).text = "Invented tax"
    for common, settings in shop["machines"]:
        machine = ET.SubElement(root, "machine", attributes(common))
        ET.SubElement(machine, "name").text = common["id"]
        for setting in settings:
            ET.SubElement(machine, "setting", attributes(setting))
    ET.ElementTree(root).write(path, encoding="utf-8", xml_declaration=True)


def write_quote(path, quote, filler):
    root = ET.Element("quote", xmlns="urn:estimend:quote", version="1.0", units="metric", tools=str(quote["tools"]), preheat_stated="yes",
                      preheat=quote["preheat"], finish=quote["finish"])
    for name in ("rush", "discount", "margin", "contingency"):
        if name in quote:
            root.set(name, str(quote[name]))
    ET.SubElement(root, "base").text = "p20"
    ET.SubElement(root, "filler").text = filler
    if quote["coating"]:
        ET.SubElement(root, "coating").text = "chrome"
    for n in quote["breaks"]:
        ET.SubElement(root, "break", tools=str(n))
    for cost, each in quote["extras"]:
        ET.SubElement(root, "extra", label="Invented", cost=str(cost), per_tool=each)
    for i, f in enumerate(quote["features"]):
        element = ET.SubElement(root, "feature", id=str(i + 1), kind=f["kind"], count=str(f["count"]), setting=str(f["setting"]), access=f["access"],
                                melt_out=f["melt_out"], cap=f["cap"], finish=f["finish"])
        for name in ("stock", "clearance", "slot_width", "slot_depth", "safety_layers"):
            if name in f:
                element.set(name, str(f[name]))
        if "override" in f:
            element.set("override", "yes")
            element.set("override_price", str(f["override"]))
        if "machine" in f:
            ET.SubElement(element, "machine").text = f["machine"]
        for field, value in f["values"].items():
            ET.SubElement(element, "value", {"field": field, "is": str(value)})
    ET.ElementTree(root).write(path, encoding="utf-8", xml_declaration=True)


# ---- the second way ----

def setting_of(machine, settings, wire):
    """Straight between the table's neighbours, its own end beyond either end; a spot follows the wire there."""
    below = [s for s in settings if s["setting_wire"] <= wire]
    low = below[-1] if below else settings[0]
    above = [s for s in settings if s["setting_wire"] > wire]
    high = above[0] if below and above else low
    share = 0 if high is low else (wire - low["setting_wire"]) / (high["setting_wire"] - low["setting_wire"])
    at = {name: low[name] + share * (high[name] - low[name]) for name in low}
    if "spot" not in at:
        at["spot"] = machine["spot_ratio"] * wire
    elif high is low:
        at["spot"] *= wire / low["setting_wire"]
    return at


def beam(machine, settings, wire, density, enthalpy):
    """Speed and spot, or None when the machine cannot."""
    if not machine["wire_low"] - 1e-3 <= wire <= machine["wire_high"] + 1e-3:
        return None
    at = setting_of(machine, settings, wire)
    q = density * PI * wire * wire / 4 / (1 - machine["dilution"]) * enthalpy / machine["coupling"]
    if machine["process"] == "laser":
        rate, pulse = at["frequency"], at["pulse"] / 1000
        speed = min(rate * at["spot"] * (1 - machine["overlap"]), machine["power"] / q, machine["pulse_energy"] * rate / q, machine["peak"] * pulse * rate / q)
        return (speed, at["spot"]) if speed >= 0.02 * rate * at["spot"] else None
    share = min(1, machine["current_high"] / at["current"], machine["power"] / (at["current"] * at["voltage"]))
    speed = min(at["speed"] * share, at["current"] * share * at["voltage"] / q)
    return (speed, at["spot"]) if share >= 0.5 else None


def reaches(machine, spot, f):
    if "clearance" in f and spot / 2 > f["clearance"] * (1 + 1e-9):
        return False
    if "slot_width" not in f:
        return True
    mouth = f["slot_depth"] * math.tan(math.radians(2 * machine["cone_half"])) + spot / 2
    return mouth <= f["slot_width"] * (1 + 1e-9) and machine.get("head_width", 0) <= f["slot_width"]


def plan(shape, f, shop, wire, efficiency):
    stock, safety = f.get("stock", shop["deposit"]["stock_allowance"]), f.get("safety_layers", shop["deposit"]["safety_passes"])
    layer, section = shop["deposit"]["layer_ratio"] * wire, PI * wire * wire / 4
    pitch = efficiency * section / layer
    layers = max(1, up((shape.height + stock) / layer)) + safety
    tracks, length = 0, 0.0
    for i in range(layers):
        z = min((i + 0.5) * layer, shape.height)
        n = max(1, up(shape.width(z) / pitch))
        tracks, length = tracks + n, length + n * shape.length(z)
    length = max(length, shape.volume / (efficiency * section))   # what is missing is never welded with less wire than it is
    capped = (f["cap"] == "yes" or f["cap"] == "auto" and f["kind"] in CAPPED) and shape.edge > 0
    fused = f["melt_out"] == "yes" or f["melt_out"] == "auto" and f["kind"] in FUSED
    cap = max(1, up((shape.height + stock) / pitch)) * shape.edge if capped else 0
    melt = 0.0
    if fused:
        melt = shape.area / pitch
        if math.isclose(shape.width(0) * shape.length(0), shape.area, rel_tol=1e-9):
            melt = max(1, up(shape.width(0) / pitch)) * shape.length(0)
    welded = length + cap
    return {"layers": layers, "tracks": tracks, "welded": welded, "melt": melt, "capped": capped, "starts": layers + capped + fused,
            "deposited": efficiency * section * welded, "overfills": layer > (shape.height + stock) * (1 + 1e-9), "stock": stock, "section": section}


def whole(value):
    return math.floor(value + 0.5)


class Money:
    """Rates of one quote; direct cost of work for n tools as an exact fraction of a minor unit, labour apart."""
    def __init__(self, shop, quote):
        m = shop["money"]
        self.hour = {"office": m["office"], "bench": m["bench"], "finish": m["finishing"]}
        self.gas, self.area, self.edge, self.overhead = m["gas"], m["finish_area_cost"], m["finish_edge_cost"], F(m["overhead"], 10 ** 6)
        self.contingency, self.margin = (F(quote.get(name, m[name]), 10 ** 6) for name in ("contingency", "margin"))

    def direct(self, work, n, factor):
        labour = sum(F(self.hour[role] * whole(work.get(role, 0) * (n * factor * 1e3)), 3600000) for role in self.hour)
        other = F(work.get("machine_hour", 0) * whole(work.get("machine", 0) * n * 1e3), 3600000)
        other += F(work.get("wire_price", 0) * whole(work.get("wire", 0) * n * 1e6), 10 ** 6) + F(self.gas * whole(work.get("gas", 0) * n * 1e6), 10 ** 9)
        other += F(self.area * whole(work.get("area", 0) * n * 1e6) + self.edge * whole(work.get("edge", 0) * n * 1e6), 10 ** 6) + work.get("bought", 0) * n
        return labour, other

    def cost(self, labour, other):
        return (labour * (1 + self.overhead) + other) * (1 + self.contingency)

    def line(self, labour, other):
        return half_up(self.cost(labour, other) / (1 - self.margin))


def weld(f, shape, quote, shop, filler, size, machine, settings):
    """One feature with one wire on one machine: its plan and its work, or None."""
    speed_spot = beam(machine, settings, size["wire"], filler["density"], filler["enthalpy"]) if machine["process"] in filler["processes"] else None
    if speed_spot is None or not reaches(machine, speed_spot[1], f):
        return None
    p, speed, n, minutes = plan(shape, f, shop, size["wire"], machine["efficiency"]), speed_spot[0], f["count"], shop["minutes"]
    arc = n * (p["welded"] + p["melt"]) / speed
    wire = n * p["welded"] / machine["usable"]
    stick, stub, area = shop["deposit"]["stick"], shop["deposit"]["stub"], shape.area / 100
    units = {"metre": wire * stick / (stick - stub) / 1000, "gram": wire * p["section"] * filler["density"] * stick / (stick - stub),
             "stick": wire / (stick - stub)}[size["basis"]]
    finishes = (f["finish"] if f["finish"] != "default" else quote["finish"]) == "shop"
    bench = 60 * n * ((minutes["strip_area"] * area if quote["coating"] else 0) + minutes["mask"] + minutes["mask_area"] * area + minutes["inspect"]
                      + minutes["inspect_length"] * shape.extent / 10) + arc / machine["operating_" + f["access"]]
    excess = max(0, p["deposited"] - shape.volume)
    finish = 60 * n * (minutes["finish_area"] * area + minutes["finish_volume"] * excess / 1000) if finishes else 0
    p["work"] = {"bench": bench, "finish": finish, "machine": arc, "machine_hour": machine["machine_rate"] + machine["consumable_rate"], "wire": units,
                 "wire_price": size["price"], "gas": machine["gas_flow"] / 60 * (arc + machine["gas_pre_post"] * p["starts"] * n),
                 "area": n * area if finishes else 0, "edge": n * shape.edge / 10 if finishes else 0}
    p.update(arc=arc, wire=wire, size=size, machine=machine["id"], n=n, shape=shape, feature=f, mass=wire * p["section"] * filler["density"])
    return p


def fewest_changes(settings):
    """Wires of each setting; every order of settings, every wire first and last in each, tried."""
    best = None
    for order in itertools.permutations(settings):
        ends = {None: 0}
        for wires in order:
            new = {}
            for at, changes in ends.items():
                for first in wires:
                    for last in wires:
                        if (first == last) != (len(wires) == 1):
                            continue
                        total = changes + (at is not None and at != first) + len(wires) - 1
                        new[last] = min(new.get(last, 10 ** 9), total)
            ends = new
        best = min(ends.values()) if best is None else min(best, *ends.values())
    return best or 0


def shared(quote, shop, welds):
    settings = {}
    for i, p in enumerate(welds):
        key = (p["feature"]["setting"] or -1 - i, p["machine"])
        entry = settings.setdefault(key, {"wires": set(), "capped": False})
        entry["wires"].add(p["size"]["wire"])
        entry["capped"] |= p["capped"]
    n_settings = len(settings) + sum(s["capped"] for s in settings.values())
    changes = fewest_changes([s["wires"] for s in settings.values()])
    minutes = shop["minutes"]
    per_tool = minutes["receive"] + minutes["true_setting"] * n_settings + minutes["wire_change"] * changes + minutes["pack"]
    per_tool += minutes["preheat_attend"] if quote["preheat"] == "yes" else 0
    return n_settings, changes, {"bench": 60 * per_tool}, {"office": 60 * minutes["paperwork"], "bench": 60 * minutes["program"]}


def totals(quote, shop, subtotal):
    lines, running = [], subtotal
    def add(amount, always=False):
        nonlocal running
        if amount or always:
            lines.append(amount)
            running += amount
    if subtotal < shop["money"]["minimum"]:
        add(shop["money"]["minimum"] - subtotal)
    add(half_up(running * F(quote.get("rush", 0), 10 ** 6)))
    add(-half_up(running * F(quote.get("discount", 0), 10 ** 6)))
    step = shop["money"]["rounding"]
    add(half_up(F(running, step)) * step - running)
    net = running
    for rate, on in shop["taxes"]:
        add(half_up((running if on == "yes" else net) * F(rate, 10 ** 6)), True)
    return net, running - net, running, lines


def price(quote, shop, money, welds, work, n):
    """Printed lines and totals for n tools."""
    _, _, per_tool, once = work
    factor = 1 if shop["minutes"]["learning_rate"] >= 10 ** 6 else n ** math.log2(shop["minutes"]["learning_rate"] / 10 ** 6)
    lines = [p["feature"]["override"] * n if "override" in p["feature"] else money.line(*money.direct(p["work"], n, factor)) for p in welds]
    lines.append(money.line(*money.direct(per_tool, n, factor)))
    labour, other = money.direct(once, 1, 1)
    sticks, used = 0, {}
    for p in welds:
        used.setdefault(p["size"]["wire"], [0, p])[0] += p["wire"]
    usable = shop["deposit"]["stick"] - shop["deposit"]["stub"]
    for wire, p in used.values():
        share = wire * n / usable
        sticks += up(share)
        if shop["deposit"]["whole_sticks"] == "yes" and up(share) > share:
            rest = (up(share) - share) * usable
            units = {"wire": rest * p["work"]["wire"] / p["wire"], "wire_price": p["size"]["price"]}
            other += money.direct(units, 1, 1)[1]
    lines.append(money.line(labour, other))
    lines += [money.line(0, F(cost) * (n if each == "yes" else 1)) for cost, each in quote["extras"]]
    subtotal = sum(lines)
    net, tax, total, tail = totals(quote, shop, subtotal)
    return {"lines": lines + tail, "subtotal": subtotal, "price": net, "tax": tax, "total": total, "sticks": sticks, "each": half_up(F(net, n))}


def choose(f, quote, shop, money, filler):
    shape, best = KINDS[f["kind"]](f["values"]), None
    for size in filler["sizes"]:
        for machine, settings in shop["machines"]:
            if f.get("machine", machine["id"]) != machine["id"]:
                continue
            p = weld(f, shape, quote, shop, filler, size, machine, settings)
            if p is None:
                continue
            p["key"] = (size["wire"] if p["overfills"] else 0, money.cost(*money.direct(p["work"], 1, 1)), -size["wire"])
            if best is None or p["key"] < best["key"]:
                best = p
    return best


# ---- the program beside it ----

def run(path, rates, metals):
    with tempfile.TemporaryDirectory() as config:
        env = {"PATH": os.environ["PATH"], "LC_ALL": "C.UTF-8", "ESTIMEND_CONFIG_DIR": config, "HOME": config}
        for name in ("ASAN_OPTIONS", "LSAN_OPTIONS", "ESTIMEND_DATA_DIR"):
            if name in os.environ:
                env[name] = os.environ[name]
        done = subprocess.run([PROGRAM, "cost", "--tsv", "--rates", rates, "--metals", metals, path], capture_output=True, text=True, env=env, timeout=60)
    table = {}
    for line in done.stdout.splitlines():
        scope, quantity, value, _ = line.split("\t")
        table.setdefault(scope, {})[quantity] = value
    return done.returncode, table, done.stderr


def close(name, got, want):
    expect(math.isclose(float(got), want, rel_tol=2e-9, abs_tol=1e-9), f"{name}: {got}, a second way {want!r}")


def compare(name, quote, shop, filler, table, tally):
    money = Money(shop, quote)
    welds = [choose(f, quote, shop, money, filler) for f in quote["features"]]
    unpriced = sum(p is None for p in welds)
    expect(int(table["quote"]["not_priced"]) == unpriced, f"{name}: {table['quote']['not_priced']} not priced, a second way {unpriced}")
    for i, p in enumerate(welds):
        got, label = table.get(f"feature.{i + 1}"), f"{name} feature {i + 1} {quote['features'][i]['kind']}"
        expect((got is None) == (p is None), f"{label}: priced {got is not None}")
        if got is None or p is None:
            continue
        tally[quote["features"][i]["kind"]] = tally.get(quote["features"][i]["kind"], 0) + 1
        n = p["n"]
        expect(got["machine"] == p["machine"] and float(got["wire_diameter"]) == p["size"]["wire"], f"{label}: {got['wire_diameter']} on {got['machine']}, "
               f"a second way {p['size']['wire']} on {p['machine']}")
        for quantity, want in (("net_volume", n * p["shape"].volume), ("required_volume", n * (p["shape"].volume + p["stock"] * p["shape"].area)),
                               ("deposited_volume", n * p["deposited"]), ("welded_length", n * p["welded"]), ("wire_length", p["wire"]),
                               ("filler_mass", p["mass"]), ("arc_on", p["arc"]), ("layers", p["layers"]), ("tracks", p["tracks"]),
                               ("labour", p["work"]["bench"] + p["work"]["finish"])):
            close(f"{label}, {quantity}", got[quantity], want)
        want = money.line(*money.direct(p["work"], 1, 1))
        expect(int(got["calculated"]) == want and int(got["price"]) == p["feature"].get("override", want), f"{label}: {got['price']}, a second way {want}")
    if unpriced or failures:
        return
    work = shared(quote, shop, welds)
    expect((int(table["quote"]["settings"]), int(table["quote"]["wire_changes"])) == work[:2], f"{name}: settings and wire changes, a second way {work[:2]}")
    want = price(quote, shop, money, welds, work, quote["tools"])
    lines = [int(table[scope]["amount"]) for scope in table if scope.startswith("line.")]
    expect(lines == want["lines"], f"{name}: {lines}, a second way {want['lines']}")
    expect(int(table["quote"]["sticks"]) == want["sticks"], f"{name}: sticks {table['quote']['sticks']}, a second way {want['sticks']}")
    for quantity in ("subtotal", "price", "tax", "total"):
        expect(int(table["quote"][quantity]) == want[quantity], f"{name}: {quantity} {table['quote'][quantity]}, a second way {want[quantity]}")
    for n in quote["breaks"]:
        want, got = price(quote, shop, money, welds, work, n), table[f"break.{n}"]
        for quantity in ("subtotal", "price", "tax", "total", "each"):
            expect(int(got[quantity]) == want[quantity], f"{name}: {n} tools, {quantity} {got[quantity]}, a second way {want[quantity]}")
    tally[shop["currency"]] = tally.get(shop["currency"], 0) + 1


def draw_filler(draw, name, path):
    """One of the shipped wires, priced by the metre, gram or stick, in a catalogue of the shop's own."""
    root = ET.parse(DATA / "metals.xml").getroot()
    record = next(element for element in root.findall(METALS + "filler") if element.get("id") == name)
    sizes = []
    for size in record.findall(METALS + "size"):
        size.set("per", draw.choice(["metre", "gram", "stick"]))
        size.set("price-minor", str(draw.randrange(0, 3000)))
        if size.get("stocked") == "yes":
            sizes.append({"wire": float(size.get("wire-mm")), "price": int(size.get("price-minor")), "basis": size.get("per")})
    ET.register_namespace("", "urn:estimend:metals")
    ET.ElementTree(root).write(path, encoding="utf-8", xml_declaration=True)
    return {"density": float(record.get("density-g-per-cm3")) / 1000, "enthalpy": float(record.get("melt-j-per-g")),
            "processes": record.get("processes").split(), "sizes": sizes}


def main():
    tally, names = {}, ("p20-wire", "er420", "ernicrmo-3", "er4043", "er70s-2")
    with tempfile.TemporaryDirectory() as folder:
        path, rates, metals = (pathlib.Path(folder) / name for name in ("quote.estimend", "rates.xml", "metals.xml"))
        for seed in range(HOW_MANY):
            draw = random.Random(seed)
            shop = draw_shop(draw)
            quote, name = draw_quote(draw, shop), draw.choice(names)
            filler = draw_filler(draw, name, metals)
            write_rates(rates, shop)
            write_quote(path, quote, name)
            status, table, err = run(path, rates, metals)
            expect("quote" in table, f"quote {seed}: {status} {err}")
            if "quote" in table:
                compare(f"quote {seed} in {shop['currency']}", quote, shop, filler, table, tally)
            if failures:
                break
    expect(failures or all(kind in tally for kind in KINDS), f"every kind met: {tally}")
    expect(failures or {DIGITS[code] for code in DIGITS if code in tally} == {0, 2, 3}, f"currencies of 0, 2 and 3 decimals met: {tally}")
    print(tally, f"{len(failures)} failures")
    return 1 if failures else 0


if __name__ == "__main__":
    sys.exit(main())
