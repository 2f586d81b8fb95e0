#!/usr/bin/env python3
# Copyright (C) 2026 The Estimend developers
# SPDX-License-Identifier: GPL-3.0-or-later
"""Runs the built program as another program would, with no display, and reads what it prints.

usage: check-command.py ESTIMEND DATA_DIR

Nothing here knows the engine's formulas: it checks that the interface holds its word (names, units, exit codes,
messages) and re-adds the money in Python's integers."""

import csv
import io
import os
import pathlib
import re
import resource
import shlex
import shutil
import signal
import subprocess
import sys
import tempfile
from decimal import Decimal
from xml.etree import ElementTree

PROGRAM, DATA = sys.argv[1], pathlib.Path(sys.argv[2])
# What the program runs under, such as valgrind with its options.
WRAPPER = shlex.split(os.environ.get("ESTIMEND_TEST_WRAPPER", ""))
PATIENCE_S = 600 if WRAPPER else 60
DEMOS = sorted((DATA / "demo").glob("*.estimend"))
FEATURE_NAMES = {"net_volume": "mm3", "required_volume": "mm3", "deposited_volume": "mm3", "layers": "", "tracks": "",
                 "welded_length": "mm", "wire_length": "mm", "sticks": "", "filler_mass": "g", "arc_on": "s", "labour": "s"}
MONEY_NAMES = {"filler_cost", "price"}
failures = []


def expect(condition, what):
    if not condition:
        failures.append(what)
        print("not ok:", what)


def run(*arguments, env=None):
    """Exit status, standard output, standard error; no display and nobody's own books."""
    with tempfile.TemporaryDirectory() as config:
        surroundings = {"PATH": os.environ["PATH"], "LC_ALL": "C.UTF-8", "ESTIMEND_CONFIG_DIR": config, "HOME": config}
        for name in ("ASAN_OPTIONS", "LSAN_OPTIONS", "ESTIMEND_DATA_DIR"):
            if name in os.environ:
                surroundings[name] = os.environ[name]
        surroundings.update(env or {})
        done = subprocess.run([*WRAPPER, PROGRAM, *map(str, arguments)], capture_output=True, env=surroundings, timeout=PATIENCE_S)
    return done.returncode, done.stdout.decode(), done.stderr.decode()


def rows(text):
    table = {}
    for line in text.splitlines():
        scope, quantity, value, unit = line.split("\t")
        table.setdefault(scope, {}).setdefault(quantity, (value, unit))
    return table


def check_cost(demo):
    status, out, err = run("cost", "--tsv", demo)
    expect(status == 0 and err == "", f"{demo.name}: cost exits 0 and says nothing else: {status} {err}")
    table = rows(out)
    features = [scope for scope in table if scope.startswith("feature.")]
    expect(features == [f"feature.{i + 1}" for i in range(len(features))] and len(features) >= 3, f"{demo.name}: features from 1 up")
    code = table["quote"]["price"][1]
    expect(re.fullmatch("[A-Z]{3}", code) is not None, f"{demo.name}: currency as unit")
    for scope in features + ["quote"]:
        for name, unit in FEATURE_NAMES.items():
            value, given = table[scope].get(name, ("nan", "none"))
            expect(given == unit and float(value) > 0, f"{demo.name}: {scope} {name} is {value} {given}")
        for name in MONEY_NAMES:
            value, given = table[scope].get(name, ("", ""))
            expect(given == code and re.fullmatch(r"\d+", value) is not None, f"{demo.name}: {scope} {name} whole, in {code}")
    # The paper adds up: every printed line once, to the minor unit.
    lines = sum(int(table[scope]["amount"][0]) for scope in table if scope.startswith("line."))
    expect(lines == int(table["quote"]["total"][0]), f"{demo.name}: lines {lines} add up to the total")
    expect(int(table["quote"]["price"][0]) + int(table["quote"]["tax"][0]) == lines, f"{demo.name}: net and tax make the total")
    # Metal is neither made nor lost on the way from the features to the quote (per tool × tools).
    tools = round(float(table["quote"]["net_volume"][0]) / sum(float(table[f]["net_volume"][0]) for f in features))
    for name in ("net_volume", "deposited_volume", "wire_length", "filler_mass", "arc_on"):
        total = sum(float(table[f][name][0]) for f in features) * tools
        expect(abs(total - float(table["quote"][name][0])) <= 1e-9 * total, f"{demo.name}: {name} of the quote is that of its features")
    return table


def check_compare(demo, present_price):
    status, out, _ = run("compare", "--tsv", demo)
    expect(status == 0, f"{demo.name}: compare exits 0")
    table = rows(out)
    suited = [row for row in table.values() if row["ruled_out"][0] == "0"]
    prices = [int(row["price"][0]) for row in suited]
    expect(len(suited) >= 2 and prices == sorted(prices), f"{demo.name}: at least two wires, cheapest first")
    for row in suited:
        if row["present"][0] == "1":
            expect(row["difference"][0] == "0", f"{demo.name}: no difference to itself")
    present = [row for row in suited if row["present"][0] == "1"]
    base = int(present[0]["price"][0]) if present else None
    for row in suited:
        if base is not None:
            expect(int(row["difference"][0]) == int(row["price"][0]) - base, f"{demo.name}: difference is a difference")
    for scope, row in table.items():
        if row["ruled_out"][0] == "1":
            expect("reason" in row, f"{demo.name}: {scope} is ruled out with a reason")


def check_tool_steels_are_alike(demo):
    """Common practice, no source: settings differ little between tool steels, so the time under the beam does too."""
    table = rows(run("compare", "--tsv", demo)[1])
    times = [float(table[f"filler.{wire}-wire"]["arc_on"][0]) for wire in ("p20", "h11", "h13", "s7", "a2", "d2") if
             table.get(f"filler.{wire}-wire", {}).get("arc_on")]
    if not times:   # the blow mold is of aluminum: no steel suits
        expect("blow" in demo.name, f"{demo.name}: no tool steel suits")
        return
    expect(len(times) >= 3 and max(times) <= 1.1 * min(times), f"{demo.name}: tool steels take about as long: {times}")


def check_print(demo, folder):
    for sheet in ("quote", "bench"):
        first, second = folder / "first.pdf", folder / "second.pdf"
        expect(run("print", demo, "--sheet", sheet, "-o", first)[0] == 0, f"{demo.name}: {sheet} prints")
        expect(run("print", demo, "--sheet", sheet, "-o", second)[0] == 0, f"{demo.name}: {sheet} prints again")
        expect(first.read_bytes() == second.read_bytes() and first.read_bytes()[:5] == b"%PDF-", f"{demo.name}: {sheet} is a PDF, the same twice")


def check_surroundings(folder):
    """The same input and date give the same bytes wherever and whenever the program runs."""
    demo = folder / "english.estimend"
    text = DEMOS[0].read_text(encoding="utf-8")
    demo.write_text(text.replace("<paper>", "<language>en</language><paper>"), encoding="utf-8")
    expect("<language>" in demo.read_text(encoding="utf-8"), "the demo has a language")
    places = [{}, {"TZ": "Pacific/Auckland"}, {"TZ": "America/Los_Angeles", "LANGUAGE": "de", "LANG": "de_DE.UTF-8"}, {"LC_ALL": "C"},
              {"LC_ALL": "POSIX", "LANGUAGE": "fr:es"}, {"LC_ALL": "de_DE.UTF-8"}, {"TZ": "UTC+23:59", "SOURCE_DATE_EPOCH": "1"}]
    for sheet in ("quote", "bench"):
        out = folder / "here.pdf"
        seen = set()
        for place in places:
            expect(run("print", demo, "--sheet", sheet, "--options", "-o", out, env=place)[0] == 0, f"{sheet} prints with {place}")
            seen.add(out.read_bytes())
        expect(len(seen) == 1, f"{sheet}: {len(seen)} different files in {len(places)} surroundings")
        expect(run("print", demo, "--sheet", sheet, "--date", "2026-12-24", "-o", out)[0] == 0, f"{sheet} prints with a date")
        expect(out.read_bytes() not in seen, f"{sheet}: another date is in the file")


def records(text, what):
    """Records by Python's own reader, which stops at anything that is no CSV; every line end is CRLF."""
    bare = re.sub('"[^"]*"', "", text)
    expect(bare.count("\n") == bare.count("\r\n") > 0, f"{what}: lines end in CRLF")
    table = list(csv.reader(io.StringIO(text, newline=""), strict=True))
    expect(all(len(record) == len(table[0]) for record in table), f"{what}: as many fields in each record")
    return [dict(zip(table[0], record)) for record in table[1:]]


def check_csv(folder):
    for language in ("en", "de", "fr"):
        for demo in DEMOS:
            status, text, _ = run("lines", demo, env={"LANGUAGE": language})
            expect(status == 0, f"{demo.name}: lines in {language}")
            table = records(text, f"{demo.name}: lines in {language}")
            amounts = {kind: [Decimal(row["amount"]) for row in table if row["type"] == kind] for kind in {row["type"] for row in table}}
            net, tax, total = amounts.pop("net")[0], amounts.pop("tax-sum")[0], amounts.pop("total")[0]
            expect(sum(amounts.pop("tax", [])) == tax and sum(map(sum, amounts.values())) == net and net + tax == total,
                   f"{demo.name}: the lines add up in {language}")
            status, text, _ = run("compare", "--csv", demo, env={"LANGUAGE": language})
            wires = records(text, f"{demo.name}: wires in {language}")
            present = [row for row in wires if row["state"] == "present"]
            expect(status == 0 and len(wires) > 5 and len(present) == 1, f"{demo.name}: wires compared in {language}")
            expect(all(Decimal(row["net"]) - Decimal(present[0]["net"]) == Decimal(row["difference"]) for row in wires if row["rank"]),
                   f"{demo.name}: differences are against the present wire in {language}")
    hostile = folder / "hostile.estimend"
    hostile.write_text(re.sub(r'<extra [^>]*/>', "", DEMOS[0].read_text(encoding="utf-8")).replace(
        "</quote>", '<extra label="=HYPERLINK(&quot;x&quot;)" cost="100"/><extra label="-2, &quot;b&quot;&#10;c" cost="100"/></quote>'), encoding="utf-8")
    status, text, err = run("lines", hostile)
    names = [row["description"] for row in records(text, "hostile lines") if row["type"] == "extra"]
    expect(status == 0 and names == ["'=HYPERLINK(\"x\")", "'-2, \"b\"\nc"], f"words that look like formulas are harmless: {status} {names} {err}")


def check_misuse(folder):
    for arguments in (["cost"], ["cost", "a", "b"], ["print", DEMOS[0]], ["compare", "--nonsense", DEMOS[0]], ["steel", "p20"],
                      ["print", DEMOS[0], "-o", folder / "x.pdf", "--sheet", "poster"], ["read", "--units", "furlong", DEMOS[0]]):
        status, _, err = run(*arguments)
        expect(status == 2 and err.startswith("estimend: "), f"{arguments}: misuse is 2 with a sentence: {status} {err}")
    for arguments in (["--help"], ["--version"], ["cost", "--help"]):
        status, out, _ = run(*arguments)
        expect(status == 0 and "estimend" in out.lower(), f"{arguments}: helps")


def check_bad_input(folder):
    missing = folder / "missing.estimend"
    status, out, err = run("cost", missing)
    expect(status == 1 and "missing.estimend" in err and out == "", f"missing file is 1, by name: {status} {err}")
    text = DEMOS[0].read_text(encoding="utf-8")
    cases = {
        "truncated": text[: len(text) // 2],
        "foreign": "<?xml version='1.0'?><html/>",
        "empty": "",
        "doctype": text.replace("?>", "?><!DOCTYPE quote SYSTEM 'file:///etc/passwd'>", 1),
        "newer": re.sub(r'version="1\.\d+"', 'version="2.0"', text.split("?>", 1)[0] + "?>" + text.split("?>", 1)[1], count=1),
    }
    for name, content in cases.items():
        path = folder / f"{name}.estimend"
        path.write_text(content, encoding="utf-8")
        out_path = folder / f"{name}.pdf"
        status, out, err = run("print", path, "-o", out_path)
        expect(status == 1 and f"{name}.estimend" in err, f"{name}: is 1 and names the file: {status} {err}")
        expect(not out_path.exists(), f"{name}: nothing is written")
        expect(path.read_text(encoding="utf-8") == content, f"{name}: the file is left alone")


def check_read(folder):
    notes = folder / "notes.txt"
    # One inch is 25.4 mm exactly (NIST SP 811): .010 per side, 1.000 diameter, .750 deep.
    notes.write_text("RESTORE BORE DIA 1.000, BUILD UP .010 PER SIDE, .750 DEEP. ALL DIMS INCH.\n", encoding="utf-8")
    status, out, err = run("read", "--tsv", notes)
    expect(status == 0, f"read exits 0: {err}")
    found = {line.split("\t")[2]: line.split("\t")[3:] for line in out.splitlines() if line.split("\t")[1] == "1"}
    for field, mm in (("diameter", 25.4), ("build", 0.254), ("length", 19.05)):
        value = found.get(field, ["nan", ""])
        expect(abs(float(value[0]) - mm) < 1e-9 and value[1] == "mm", f"read: {field} is {mm} mm: {value}")
    # line, feature, field, value, unit; features from 1, 0 for what governs all.
    for line in out.splitlines():
        expect(re.fullmatch(r"[1-9][0-9]*\t[0-9]+\t[a-z_]+\t[^\t]+\t(mm|mm2|deg|HRC|)", line) is not None, f"read --tsv: five columns: {line!r}")
    expect("1\t0\tunits\tin\t" in out.splitlines(), f"read --tsv: what governs all is feature 0: {out}")
    notes.write_text("BORE DIA 1.000 X .750 DEEP, BUILD UP .010\nzzyzx\n", encoding="utf-8")
    status, out, _ = run("read", "--tsv", notes)
    expect("1\t1\tquestion\tside-or-diameter\t" in out.splitlines() and "2\t0\tunused\tzzyzx\t" in out.splitlines(),
           f"read --tsv: questions and unused words are rows: {out}")
    status, out, err = run("read", folder / "none.txt")
    expect(status != 0 and out == "" and "none.txt" in err, f"read of no file: {status} {err}")
    expect(run("read")[0] == run("read", notes, notes)[0] == 2, "read takes one file")
    # 3 MB: the first two are read, and it says so.
    notes.write_bytes(b"NICK .1 X .02 X .02\n" * 150000)
    status, out, err = run("read", "--tsv", notes)
    expect(status == 0 and "902848" in err, f"read says what it did not read: {status} {err}")
    notes.write_text("RESTORE BORE DIA 1.000, BUILD UP .010 PER SIDE, .750 DEEP. ALL DIMS INCH.\n", encoding="utf-8")
    quote = folder / "read.estimend"
    status, _, err = run("read", notes, "-o", quote)
    expect(status == 0 and quote.exists(), f"read -o writes a quote: {err}")
    status, _, err = run("check", quote)
    expect(status in (0, 1) and "line" not in err, f"a read quote opens: {err}")


def check_steel():
    status, out, _ = run("steel", "h13", "h13-wire" if "h13-wire" in (DATA / "metals.xml").read_text(encoding="utf-8") else "h13")
    expect(status == 0 and "Schaeffler" in out and "local" in out.lower(), "steel explains a pair and defers to local codes")
    expect("Preheat" in out and "hot, lift it" not in out, "a laser on H13 needs no preheat and has no burns to tell of")
    expect("it burns skin" in run("steel", "--process", "gtaw", "h13", "h13-wire")[1], "an arc on H13 is preheated, and burns are told of")
    status, out, _ = run("steel", "--process", "gtaw", "304l", "er309l")
    expect("% ferrite" in out and "ferrite number about" in out, "both diagrams tell the ferrite of stainless")
    status, out, _ = run("steel", "p20", "p20-wire")
    expect("up to about" in out and "somewhat harder than the tool" in out and "Nominally softer than" not in out, "P20 on P20 by laser, told once")
    expect("outside its published limits (C)" in out and "not for this process" in out, "what limits a figure stands in its place")
    out = run("steel", "--explain", "p20", "p20-wire")[1]
    expect("Andrews 1965" in out and "Ms = 539" in out and "WRC-1992" in out, f"steel --explain shows formulas and sources: {out[-400:]}")
    status, _, err = run("steel", "unobtainium", "h13")
    expect(status == 1 and "unobtainium" in err and "p20" in err, f"unknown base is 1 and lists those there are: {err}")


def check_prices(folder):
    """A list of four rows: a new price, a size it had not, a stranger, nonsense. Told first, changed only when asked to, kept
    in the shop's own file and nowhere else; a second time there is nothing to change."""
    own, wires = folder / "own", folder / "list.csv"
    own.mkdir()
    surroundings = {"ESTIMEND_CONFIG_DIR": str(own)}
    wires.write_text("wire,size_mm,price,per\ner307,0.5,9.99,metre\ner307,0.65,8.50,metre\nadamant,0.4,1,metre\ner307,0.4mm,x,metre\n")
    shipped = (DATA / "metals.xml").read_bytes()
    status, out, err = run("prices", wires, env=surroundings)
    expect(status == 1 and "2 prices would change" in out and "9.99" in out and "adamant" in out, f"prices tells: {status} {out} {err}")
    expect(not any(own.iterdir()), "prices without --apply writes nothing")
    status, out, err = run("prices", "--tsv", "--apply", wires, env=surroundings)
    table = rows(out)
    expect(table["list"]["applied"][0] == "2" and table["line.2"]["state"][0] == "changes", f"prices --apply takes two over: {out} {err}")
    expect(table["line.2"]["price"][0] == "999" and table["line.3"]["size"][0] == "0.65", f"prices in minor units: {out}")
    expect(table["line.4"]["state"][0] == "unknown" and table["line.5"]["state"][0] == "bad", f"prices leaves two out: {out}")
    kept = [path.read_text(encoding="utf-8") for path in own.rglob("*.xml")]
    expect(len(kept) == 1 and 'price-minor="999"' in kept[0] and kept[0].count("<filler ") == 1, "only the wire that changed becomes the shop's own")
    expect((DATA / "metals.xml").read_bytes() == shipped, "what ships is never written")
    table = rows(run("prices", "--tsv", "--apply", wires, env=surroundings)[1])
    expect(table["list"]["applied"][0] == "0" and table["line.2"]["state"][0] == "same", "a second time changes nothing")
    own_table = rows(run("compare", "--tsv", DEMOS[0], env=surroundings)[1])
    expect("filler.er307" in own_table and "filler.p20-wire" in own_table, "the shop's own wire stands beside what ships")
    status, _, err = run("prices", folder / "none.csv", env=surroundings)
    expect(status == 1 and "none.csv" in err, f"a missing list is told: {err}")


def feature(kind, values, attributes="", inside=""):
    fields = "".join(f'<value field="{name}" is="{value}"/>' for name, value in values.items())
    return f'<feature id="{{id}}" kind="{kind}" {attributes}>{inside}{fields}</feature>'


def quote(path, features, attributes="", inside=""):
    body = "".join(text.replace("{id}", str(i + 1)) for i, text in enumerate(features))
    path.write_text(f'<?xml version="1.0" encoding="UTF-8"?><quote xmlns="urn:estimend:quote" version="1.0" units="metric" {attributes}>'
                    f'<base>p20</base><filler>p20-wire</filler>{inside}{body}</quote>', encoding="utf-8")
    return path


WALL = {"length": 20, "height": 4, "thickness": 0.5}


def check_no_price(folder):
    """What cannot be welded is told with its limits; a part of a price is not called one."""
    cases = [
        (feature("sidewall", {**WALL, "length": -3}), "Length", "more than 0\u00a0mm and at most 5000\u00a0mm"),
        (feature("sidewall", WALL, 'slot_width="1" slot_depth="40"'), "Slot width", "without dismantling the tool. It should be at least"),
        (feature("sidewall", WALL, 'clearance="0.05"'), "Clearance", "It should be at least 0.175\u00a0mm"),
        (feature("sidewall", WALL, 'wire="4.9"'), "Wire size", "between 0.2\u00a0mm and 1.6\u00a0mm"),
        (feature("bore", {"diameter": 3, "worn": 4, "length": 3, "arc": 400}), "Arc to weld", "more than 0° and at most 360°"),
        (feature("dam", {"length": 10, "width": 1, "height": 2, "draft": 20}), "Draft per side", "between 0° and 14"),
        (feature("bore", {"diameter": 12, "worn": 11, "length": 3}), "Worn diameter", "more than 12\u00a0mm and at most 5000\u00a0mm"),
    ]
    for bad, field, limits in cases:
        path = quote(folder / "bad.estimend", [feature("sidewall", WALL), bad])
        status, out, err = run("cost", path)
        expect(status == 1 and f"{field}:" in err and limits in err and "2 · " in err, f"{field}: told with its limits: {err}")
        expect("1 of 2" in out and "Total with tax" not in out and "Net price" not in out, f"{field}: no price: {out}")
        status, out, _ = run("cost", "--tsv", path)
        table = rows(out)
        expect(status == 1 and table["quote"]["not_priced"][0] == "1" and not {"price", "total", "subtotal"} & set(table["quote"]),
               f"{field}: no price for other programs either")
    # Printed as the window prints it: the rest has its prices, what has none is said on the paper and on standard error.
    for sheet in ("quote", "bench"):
        pdf = folder / f"bad-{sheet}.pdf"
        status, out, err = run("print", path, "--sheet", sheet, "-o", pdf)
        expect(status == 1 and "2 · " in err and str(path) in err, f"{sheet}: what has no price is told: {status} {err}")
        expect(pdf.exists() and pdf.read_bytes().startswith(b"%PDF"), f"{sheet} of a quote with a feature without a price is printed")
    if shutil.which("pdftotext") and (folder / "bad-quote.pdf").exists():
        words = " ".join(subprocess.run(["pdftotext", "-layout", folder / "bad-quote.pdf", "-"], capture_output=True).stdout.decode().split())
        expect("1 feature has no price yet and is not in the total." in words, f"the paper says what is not in its total: {words}")
    empty = quote(folder / "empty.estimend", [])
    status, out, err = run("cost", empty)
    expect(status == 0 and "0.00" not in out and "nothing to price" in out, f"an empty quote has no price: {out}")
    status, out, err = run("compare", empty)
    expect(status == 1 and out == "" and "nothing to price" in err, f"nothing to compare: {out} {err}")


def check_choices(folder):
    """Each size tried costs what naming it costs; the office's choice is told with what it costs; stated prices are called that."""
    path = quote(folder / "free.estimend", [feature("sidewall", WALL)])
    table = rows(run("cost", "--tsv", "--sizes", path)[1])
    sizes = {name: row for name, row in table.items() if name.startswith("size.1.")}
    fitting = {name: row for name, row in sizes.items() if row["fits"][0] == "1" and row["overfills"][0] == "0"}
    expect(len({row["machine"][0] for row in sizes.values()}) == 3 and len(fitting) > 5, "every machine of the book is tried")
    cheapest = min(int(row["price"][0]) for row in fitting.values())
    expect(int(table["feature.1"]["price"][0]) == cheapest and table["feature.1"]["wire_choice"][0] == "cheapest", "the cheapest is taken")
    for name, row in fitting.items():
        named = quote(folder / "named.estimend", [feature("sidewall", WALL, f'wire="{row["wire_diameter"][0]}"', f'<machine>{row["machine"][0]}</machine>')])
        status, out, _ = run("cost", "--tsv", named)
        got = rows(out)["feature.1"]
        expect(status == 0 and got["price"][0] == row["price"][0] and got["wire_choice"][0] == "office", f"{name} costs what it says")
        expect(int(got["office_choice"][0]) == int(row["price"][0]) - cheapest, f"{name}: what the office's choice costs")
        told = "more than the cheapest" in run("cost", named)[1]
        expect(told == (int(row["price"][0]) > cheapest), f"{name}: told when it costs more")
    book = ElementTree.parse(DATA / "rates.xml").getroot()
    process_of = {machine.get("id"): machine.get("process") for machine in book.iter("{urn:estimend:rates}machine")}
    for process in ("laser", "gtaw"):
        best = min(int(row["price"][0]) for row in fitting.values() if process_of[row["machine"][0]] == process)
        by_file = quote(folder / "process.estimend", [feature("sidewall", WALL, "", f"<process>{process}</process>")])
        other = quote(folder / "other.estimend", [feature("sidewall", WALL, "", "<machine>micro-tig</machine>")], "", "<machine>laser-120</machine>")
        for arguments in ([path, "--process", process], [by_file], [other, "--process", process]):
            status, out, _ = run("cost", "--tsv", *arguments)
            got = rows(out)["feature.1"]
            expect(status == 0 and process_of[got["machine"][0]] == process and got["wire_choice"][0] == "office", f"{process}: a machine of it")
            expect(int(got["price"][0]) == best, f"{process}: the cheapest of it, {best}, not {got['price'][0]}")
    expect(run("cost", path, "--process", "plasma")[0] == 2, "no such process")
    unknown = run("cost", quote(folder / "plasma.estimend", [feature("sidewall", WALL)], "", "<process>plasma</process>"))
    expect(unknown[0] == 1 and "Process: not in the catalog" in unknown[2], f"a process nobody knows is told: {unknown[2]}")
    stated = quote(folder / "stated.estimend", [feature("sidewall", WALL, 'override="yes" override_price="12345"')], 'tools="2"', '<break tools="5"/>')
    status, out, _ = run("cost", stated)
    expect("stated price (calculated:" in out and "246.90" in out and "for 5 tools" in out, f"a stated price is called that, breaks are told: {out}")
    table = rows(run("cost", "--tsv", stated)[1])
    expect(table["line.1"]["amount"][0] == "24690" and int(table["line.1"]["calculated"][0]) > 0, "stated and calculated for other programs")
    five = rows(run("cost", "--tsv", quote(folder / "five.estimend", [feature("sidewall", WALL, 'override="yes" override_price="12345"')], 'tools="5"'))[1])
    expect({k: table["break.5"][k] for k in ("price", "tax", "total")} == {k: five["quote"][k] for k in ("price", "tax", "total")},
           "a break is what an order of that many costs")


def check_range(folder):
    """A cap of 4 mm across is 2 mm deep at most: of the depths drawn from 1 to 3 half cannot be welded, which is told; of those from 2 to 3 none can,
    and nothing is said of what the range comes from."""
    for low, comes_from in (("1", True), ("2", False)):
        pit = feature("recess", {"form": "cap", "diameter": 4}, inside=f'<value field="depth" is="2" low="{low}" high="3"/>')
        path = quote(folder / "range.estimend", [pit], 'preheat_stated="yes" preheat="no"')
        status, out, err = run("cost", path)
        expect(status == 0 and "cannot be welded" in out and ("Most of that" in out) == comes_from, f"draws refused are told: {out} {err}")
        expect(int(rows(run("cost", "--tsv", path)[1])["quote"]["draws_refused"][0]) > 0, "draws refused for other programs")


def check_newer():
    """A file of a newer minor version is priced with what is understood, and how much is not is told: counted by eye, 12 things."""
    newer = DATA.parent / "tests" / "file" / "newer" / "1.9.estimend"
    status, out, err = run("check", newer)
    expect(status == 0 and "1 feature" in out and "newer version" in err and " 12 things" in err, f"a newer file is told: {status} {err}")
    status, out, err = run("cost", newer)
    expect(status == 0 and " 12 things" in err and "not in the price" in err and "newer" not in out, f"cost tells it beside the table: {status} {err}")


def run_short_of_room(limit, *arguments):
    """Exit status and standard error where no file may grow past limit bytes, as on a full disk: SIGXFSZ is ignored, so that the
    program is told instead of ended."""
    with tempfile.TemporaryDirectory() as config:
        surroundings = {"PATH": os.environ["PATH"], "LC_ALL": "C.UTF-8", "ESTIMEND_CONFIG_DIR": config, "HOME": config}
        signal.signal(signal.SIGXFSZ, signal.SIG_IGN)
        done = subprocess.run([*WRAPPER, PROGRAM, *map(str, arguments)], stdout=subprocess.DEVNULL, stderr=subprocess.PIPE, env=surroundings, timeout=PATIENCE_S,
                              restore_signals=False, preexec_fn=lambda: resource.setrlimit(resource.RLIMIT_FSIZE, (limit, limit)))
    return done.returncode, done.stderr.decode()


def check_full_disk(folder):
    """What cannot be written is told and leaves what was there."""
    pdf, quote, full = folder / "full.pdf", DEMOS[0], pathlib.Path("/dev/full")
    status, out, err = run("print", quote, "-o", full)
    expect(status == 1 and str(full) in err and "no regular file" in err, f"a device is not printed over: {status} {err}")
    expect(full.is_char_device(), "/dev/full is what it was")
    pdf.write_text("old")
    before = set(folder.iterdir())
    status, err = run_short_of_room(4096, "print", quote, "-o", pdf)
    expect(status == 1 and str(pdf) in err and "too large" in err, f"a PDF that does not fit is told: {status} {err}")
    expect(pdf.read_text() == "old" and set(folder.iterdir()) == before, "and leaves the old one and nothing else")
    pdf.unlink()
    status, err = run_short_of_room(4096, "print", quote, "-o", pdf)
    expect(status == 1 and not pdf.exists() and not list(folder.glob("full.pdf*")), "and no half of one")
    notes, saved = folder / "full.txt", folder / "full.estimend"
    notes.write_text("P20 lid. Gate edge chipped 12 mm long, 0.5 x 0.4 mm.")
    status, err = run_short_of_room(100, "read", notes, "-o", saved)
    expect(status != 0 and not saved.exists(), f"nor half a quote: {status} {err}")
    for command in (["cost", "--tsv", quote], ["cost", quote], ["compare", quote], ["lines", quote], ["steel", "p20", "er420"], ["--help"]):
        with open(full, "wb") as nowhere:
            done = subprocess.run([*WRAPPER, PROGRAM, *map(str, command)], stdout=nowhere, stderr=subprocess.PIPE, timeout=PATIENCE_S,
                                  env={"PATH": os.environ["PATH"], "LC_ALL": "C.UTF-8", "HOME": str(folder), "ESTIMEND_CONFIG_DIR": str(folder)})
        expect(done.returncode == 1 and b"No space left" in done.stderr, f"{command[0]}: a full disk is told: {done.returncode} {done.stderr}")


def main():
    expect(len(DEMOS) >= 3, "three demo quotes")
    with tempfile.TemporaryDirectory() as name:
        folder = pathlib.Path(name)
        for demo in DEMOS:
            expect(run("check", demo)[0] == 0, f"{demo.name}: check is good")
            table = check_cost(demo)
            check_compare(demo, table["quote"]["price"])
            check_tool_steels_are_alike(demo)
            check_print(demo, folder)
            working = run("cost", "--explain", demo)[1]
            expect("The working" in working, f"{demo.name}: cost --explain shows the working")
            expect("minor" not in working, f"{demo.name}: the working counts in the currency, not in its minor units")
            expect(run("lines", demo)[1].count("\r\n") > 3, f"{demo.name}: lines are RFC 4180 rows")
        check_surroundings(folder)
        check_csv(folder)
        check_misuse(folder)
        check_bad_input(folder)
        check_read(folder)
        check_steel()
        check_prices(folder)
        check_no_price(folder)
        check_choices(folder)
        check_range(folder)
        check_newer()
        check_full_disk(folder)
    print(f"{len(failures)} failures")
    return 1 if failures else 0


sys.exit(main())
