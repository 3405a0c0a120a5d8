"""A small invented book for the search tests, the page that carries the box, and queries for the demo book."""

from __future__ import annotations

import shutil
from pathlib import Path

from jinja2 import Environment, FileSystemLoader, StrictUndefined

import witnessmark
from witnessmark.pages.search_index import Entry, Line, SearchUnit, build_index

PACKAGE = Path(witnessmark.__file__).parent
SCRIPTS = PACKAGE / "pages" / "static" / "search"

# Exact by definition: 1 lbf = 0.45359237 kg x 9.80665 m/s2, 1 ft = 0.3048 m, a long ton 2240 lb, 0 F = 459.67 degrees above zero.
LBF = 0.45359237 * 9.80665
UNITS = (
    SearchUnit("torque", LBF * 0.3048, ("lbf·ft", "lb-ft", "ft-lb", "ft-lbf")),
    SearchUnit("torque", 1.0, ("N·m", "N m", "Nm")),
    SearchUnit("force", LBF * 2240, ("long ton",)),
    SearchUnit("force", 1000.0, ("kN",)),
    SearchUnit("mass", 0.45359237 * 2240, ("long ton",)),
    SearchUnit("length", 0.0254, ("in", "inch", '"')),
    SearchUnit("length", 0.001, ("mm",)),
    SearchUnit("temperature", 5 / 9, ("°F", "F", "deg F"), 459.67 * 5 / 9),
    SearchUnit("temperature", 1.0, ("°C", "C", "deg C"), 273.15),
    SearchUnit("pressure", LBF / 0.0254**2, ("psi",)),
)


def _torque(pound_feet: float, anchor: str, label: str) -> tuple:
    return ("torque", pound_feet * LBF * 0.3048, anchor, label)


ENTRIES = (
    Entry(
        "mill/crank-press/", "Press the fly-crank on its taper", "Saw mill engine",
        (
            Line("", "A dry taper, a slow nut and a tab washer hold the crank."),
            Line("seat", "Clean the taper seat and wipe it dry."),
            Line("press", "Press the fly-crank home in four stops, nobody in line with the ram."),
            Line("nut", "Tighten the crank nut in one slow pull."),
            Line("tab", "Lay the tab washer flat and do not bend it."),
        ),
        (("3/4-16", "nut", "Crank nut thread 3/4-16 UNF"), ("6B-7789", "tab", "Tab washer 6B-7789"), ("crank-nut", "nut", "Crank nut"),
         ("TW3", "nut", "Torque wrench TW3")),
        (_torque(460, "nut", "Crank nut 460 lbf·ft, oiled"), ("force", 18 * LBF * 2240, "press", "Press target 18 long ton")),
    ),
    Entry(
        "mill/crank-draw/", "Draw the fly-crank off", "Saw mill engine",
        (
            Line("back", "Back the nut off one turn and leave it on."),
            Line("draw", "Draw with the 3/4-10 stud, a chain through the ram."),
            Line("mark", "Stop at 4,300 psi on the gauge of press BP50."),
        ),
        (("3/4-10", "draw", "Draw stud 3/4-10 UNC"), ("6B-7790", "draw", "Draw stud 6B-7790"), ("BP50", "mark", "Bench press BP50")),
        (("pressure", 4300 * LBF / 0.0254**2, "mark", "Never pass 4,300 psi"), ("force", 26 * LBF * 2240, "draw", "Ceiling 26 long ton")),
    ),
    Entry(
        "mill/quartering/", "Prove the quartering of the cranks", "Saw mill engine",
        (
            Line("level", "Level the bed and set the jig on both pins."),
            Line("read", "Read the dial at each quarter turn; the angle is ninety degrees."),
        ),
        (("HZ-11", "read", "NOTICE HZ-11: one rod alone can bend a pin"),),
        (("length", 0.018 * 0.0254, "read", "Quartering error at most 0.018 in"),),
    ),
    Entry(
        "mill/ring-gear/", "Shrink the ring gear on", "Saw mill engine",
        (
            Line("oven", "Warm the ring gear evenly in the oven, thermocouple on the work."),
            Line("drop", "Drop the ring on the flywheel with leather gauntlets on."),
        ),
        (("HZ-09", "oven", "WARNING HZ-09: burns through thin gloves"),),
        (("temperature", (358 + 459.67) * 5 / 9, "oven", "Oven 358 °F"), ("temperature", (450 + 459.67) * 5 / 9, "oven", "Never pass 450 °F")),
    ),
    Entry(
        "mill/boiler-stays/", "Renew the boiler stays", "Saw mill engine",
        (
            Line("tap", "Tap the plate and screw the stay in by hand."),
            Line("rivet", "Rivet over both ends; the stays must ring."),
        ),
        (("1-1/2-12", "tap", "Stay thread 1-1/2-12"),),
        (("length", 1.5 * 0.0254, "tap", "Stay 1-1/2 in"),),
    ),
    Entry(
        "pump/head/", "Close the pump head", "Fire pump",
        (
            Line("gasket", "Lay the gasket dry, the bead towards the head."),
            Line("paint", "Prime the flange, let the prime coat dry and prime it again."),
            Line("bolts", "Draw the head bolts down crosswise in three passes."),
        ),
        (("M12 x 1.25", "bolts", "Head bolt M12 x 1.25"),),
        (("torque", 650.0, "bolts", "Coupling bolt 650 N·m"), ("torque", 90.0, "bolts", "Head bolts 90 N·m")),
    ),
    Entry(
        "pump/springs/", "Test the valve springs", "Fire pump",
        (
            Line("load", "Press each spring to its fitted height and read the load."),
            Line("write", "Write the spring load on the card; a weak spring is renewed, a spring with rust too."),
        ),
        (("TWM", "load", "Torque wrench TWM"),),
        (("length", 2.0 * 0.0254, "load", "Fitted height 2.000 in"),),
    ),
    Entry(
        "pump/prime/", "Prime the pump", "Fire pump",
        (
            Line("fill", "Fill the casing through the cock until no air comes."),
            Line("turn", "Turn the shaft by hand and listen to each valve spring."),
        ),
        (),
        (("mass", 2 * 0.45359237 * 2240, "fill", "Water ballast 2 long ton"),),
    ),
)

# What is typed -> the url of the first hit, or None where nothing may be found.
QUERIES = (
    ("3/4-16", "mill/crank-press/"),
    ("3/4 - 16", "mill/crank-press/"),
    ("3/4-16 UNF", "mill/crank-press/"),
    ("3/4-10", "mill/crank-draw/"),
    ("6B-7789", "mill/crank-press/"),
    ("6b7789", "mill/crank-press/"),
    ("6b 7790", "mill/crank-draw/"),
    ("6B-7791", None),
    ("1-1/2-12", "mill/boiler-stays/"),
    ("m12x1.25", "pump/head/"),
    ("tw3", "mill/crank-press/"),
    ("crank nut", "mill/crank-press/"),
    ("460 lbf·ft", "mill/crank-press/"),
    ("460 lb-ft", "mill/crank-press/"),
    ("460 ft-lb", "mill/crank-press/"),
    ("624 N·m", "mill/crank-press/"),
    ("623.7Nm", "mill/crank-press/"),
    ("650 N·m", "pump/head/"),
    ("18 long tons", "mill/crank-press/"),
    ("26 long ton", "mill/crank-draw/"),
    ("2 long ton", "pump/prime/"),
    ("358 °F", "mill/ring-gear/"),
    ("181 C", "mill/ring-gear/"),
    ('1-1/2 "', "mill/boiler-stays/"),
    ("1 1/2 in", "mill/boiler-stays/"),
    (".018 in", "mill/quartering/"),
    ("4,300 psi", "mill/crank-draw/"),
    ("4300", "mill/crank-draw/"),
    ("460", "mill/crank-press/"),
    ("461", None),
    ("fly-crank", "mill/crank-press/"),
    ("flycrank stud", "mill/crank-draw/"),
    ("flycrnk taper", "mill/crank-press/"),
    ("quartering", "mill/quartering/"),
    ("quatering", "mill/quartering/"),
    ("tab washer", "mill/crank-press/"),
    ("gask", "pump/head/"),
    ("spring", "pump/springs/"),
    ("springs valve", "pump/springs/"),
    ("prime", "pump/prime/"),                   # once in the title, thrice in the body of another
    ("stay", "mill/boiler-stays/"),
    ("crank 460 lb-ft", "mill/crank-press/"),
    ("HZ-09", "mill/ring-gear/"),
    ("HZ-1", "mill/quartering/"),
    ("zzyzx", None),
    ("the of", None),
)

# For the demo book: what is typed -> procedures of which one must come first. The url of a procedure ends in its id.
DEMO_QUERIES = (
    ("fly-crank", ("flycrank-press-on",)),
    ("flycrank press", ("flycrank-press-on",)),
    ("flycrnk", ("flycrank-press-on",)),
    ("460 lb-ft", ("flycrank-press-on",)),
    ("460 lbf·ft", ("flycrank-press-on",)),
    ("624 N·m", ("flycrank-press-on",)),
    ("26 long ton", ("flycrank-press-on",)),
    ("1-1/2-12", ("flycrank-press-on",)),
    ("1-1/2-8", ("flycrank-press-on",)),
    ("BP50", ("coupling-rods", "flycrank-press-on", "strip-and-as-found", "wheelset-repress")),
    ("HZ-02", ("clean-measure-decide", "coupling-rods", "flycrank-press-on", "strip-and-as-found", "wheelset-repress")),
    ("HZ", ("flycrank-press-on", "final-drive-build", "quartering-check", "lathe-front-bearing-taper")),
    ("quartering", ("quartering-check",)),
    ("quatering", ("quartering-check",)),
    ("tab washer", ("flycrank-press-on", "quartering-check")),
    ("crown wheel bolts", ("final-drive-build",)),
    ("lockwire", ("final-drive-build",)),
    ("280 lb ft", ("final-drive-build",)),
    ("250 lbf·ft", ("final-drive-build",)),
    ("taper roller", ("lathe-front-bearing-taper",)),
    ("cone temperature", ("lathe-front-bearing-taper",)),
    ("250 F", ("lathe-front-bearing-taper",)),
    ("thornley", ("lathe-strip-and-readings", "lathe-front-bearing-plain", "lathe-front-bearing-taper", "lathe-headstock-close", "lathe-run-in-and-test")),
)

PAGE = """<!doctype html>
<html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1">
<title>Search</title><link rel="stylesheet" href="{base}/own/search.css"><link rel="stylesheet" href="{base}/page.css">
<script defer src="{base}/own/search.js"></script></head>
<body><header>{box}</header><main><h1>A page</h1><p>Its text.</p></main></body></html>
"""
PAGE_STYLE = "body{margin:0;font-family:sans-serif}header{position:sticky;top:0;display:flex;background:#14181c;padding:4px}"


def write_site(folder: Path) -> None:
    """Write the site: index files, scripts under `own/`, one page at the root and one page for each procedure."""
    templates = Environment(loader=FileSystemLoader(PACKAGE / "theme"), undefined=StrictUndefined, autoescape=True)
    box = templates.get_template("partials/search.html")
    for path, text in build_index(ENTRIES, UNITS).items():
        (folder / path).parent.mkdir(parents=True, exist_ok=True)
        (folder / path).write_text(text, encoding="utf-8")
    shutil.copytree(SCRIPTS, folder / "own")
    (folder / "page.css").write_text(PAGE_STYLE, encoding="utf-8")
    (folder / "index.html").write_text(PAGE.format(base=".", box=box.render(base_url=".")), encoding="utf-8")
    for entry in ENTRIES:
        page = folder / entry.url / "index.html"
        page.parent.mkdir(parents=True, exist_ok=True)
        page.write_text(PAGE.format(base="../..", box=box.render(base_url="../..")), encoding="utf-8")
