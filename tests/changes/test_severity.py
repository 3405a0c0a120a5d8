"""How grave a change is, line by line of what was asked of it: each case names the line it is for.

A case is (line, file, words that stand there, what stands there instead, what makes it a stop, what its correction is about).
"""

import pytest
from compared_books import comparison, proved_book, replaced
from small_book import PROCEDURE, SITE_DATA

from witnessmark.build import compared

SPECS = """\
  gap:
    label: Gap
    kind: clearance
    condition: cold
    figures:
      - {role: window, is: 0.010 to 0.020 in, source: shop p. 7}
      - {role: reject, is: over 0.030 in, source: shop p. 7}
  play:
    label: Play
    kind: length
    is: 0.50 ± 0.01 in
    source: shop p. 8
  ram:
    label: Ram
    kind: press force
    figures:
      - {role: stop, is: 13 short ton, source: shop p. 2}
      - {role: ceiling, is: 14.5 short ton, source: shop p. 2}
  weight:
    label: Rim weight
    kind: force
    is: 100 to 120 lbf
    source: shop p. 9
"""
COMPUTED = """\
computed:
  grip:
    working: taper-grip
    torque to carry: 400 lbf·ft
    taper: 1:12
    mean diameter: 3.000 in
    length: 3.50 in
    friction: 0.12 / 0.15 / 0.20
steps:
"""
STEP = """\
    do: Press to {press.target} and read {press}.
    hold point: Look along the hub.
    second person: yes
"""
RICH = PROCEDURE
for old, new in (("  bolt:\n    label", f"{SPECS}  bolt:\n    label"), ("    wrench: W1\n", "    wrench: W1\n    must not out-pull: press.ceiling\n    passes: [40 lbf·ft, 55 lbf·ft]\n"),
                 ("steps:\n", COMPUTED), ("    do: Press to {press.target} and read {press}.\n", STEP), ("after: none\n", "after: none\ncautions: [HZ-1]\n"),
                 ("  - id: lock\n    do: Bend the plate over.\n    closes: [plate]\n",
                  "  - id: lock\n    only: [late]\n    do: Bend the plate over.\n    closes: [plate]\n  - id: lock-early\n    only: [early]\n    do: Bend the plate twice.\n    closes: [plate]\n")):
    RICH = replaced(old, new, RICH)
FILES = {"drum": RICH, "cautions": replaced("  avoid: Stand clear.\n", "  avoid: [Stand clear., Wear a shield.]\n  source: shop p. 12\n", SITE_DATA["site_data/cautions.yaml"]),
         **{name: SITE_DATA[f"site_data/{name}.yaml"] for name in ("presses", "surfaces", "sources", "machines/hoist")}}
CEILING = "{role: ceiling, is: 14 short ton, source: shop p. 2}"

STOPS = [
    ("a caution gone", "drum", "    cautions: [HZ-1]\n", "    cautions: none\n", "a caution is gone", "drum"),
    ("a caution gone", "drum", "after: none\ncautions: [HZ-1]\n", "after: none\n", "a caution is gone", "HZ-1"),
    ("a caution gone", "cautions", "[Stand clear., Wear a shield.]", "Stand clear.", "a caution tells less to do", "HZ-1"),
    ("a source gone", "drum", "is: 14 short ton, source: shop p. 2", "is: 14 short ton", "a source is gone", "drum/press"),
    ("a source gone", "drum", "source: shop p. 3", "to be found by: A trial.", "a source is gone", "drum/bolt"),
    ("a source gone", "cautions", "  source: shop p. 12\n", "", "a source is gone", "HZ-1"),
    ("a source gone", "machines/hoist", ", source: chart p. 1", "", "a source is gone", "hoist/load"),
    ("a hold point gone", "drum", "    hold point: Look along the hub.\n", "", "a hold point is gone", "drum"),
    ("a second person gone", "drum", "    second person: yes\n", "", "a second person is gone", "drum"),
    ("a second person gone", "drum", "people: 2", "people: 1", "the second person is gone", "hoist"),
    ("a signal word lowered", "cautions", "word: WARNING", "word: CAUTION", "a signal word is lowered", "HZ-1"),
    ("a signal word lowered", "cautions", "word: WARNING", "word: NOTICE", "a signal word is lowered", "HZ-1"),
    ("a ceiling raised", "drum", "is: 14 short ton, source: shop p. 2", "is: 14.4 short ton, source: shop p. 2", "a ceiling is raised", "drum/press"),
    ("a ceiling raised", "drum", "is: 14 short ton, source: shop p. 2", "is: {early: 14 short ton, late: 14.2 short ton}, source: shop p. 4", "a ceiling is raised", "drum/press"),
    ("a ceiling raised", "drum", f"      - {CEILING}\n", "", "a ceiling is gone", "drum/press"),
    ("a floor lowered", "drum", "is: 6 short ton", "is: 5.9 short ton", "a floor is lowered", "drum/press"),
    ("a limit widened", "drum", "0.010 to 0.020 in", "0.009 to 0.020 in", "a window is widened", "drum/gap"),
    ("a limit widened, source or not", "drum", "0.010 to 0.020 in, source: shop p. 7", "0.010 to 0.021 in, source: shop p. 9", "a window is widened", "drum/gap"),
    ("a limit widened", "drum", "over 0.030 in", "over 0.032 in", "a reject limit is loosened", "drum/gap"),
    ("a limit widened", "drum", "role: stop, is: 13 short ton", "role: stop, is: 13.5 short ton", "a stop limit is loosened", "drum/ram"),
    ("a limit widened", "drum", "0.50 ± 0.01 in", "0.50 ± 0.02 in", "the range to aim for is widened", "drum/play"),
    ("a limit widened", "drum", "100 to 120 lbf", "98 to 120 lbf", "the range to aim for is widened", "drum/weight"),
    ("surface", "drum", "    surface: oiled", "    surface: greased", "another thread, grade or surface", "drum/bolt"),
    ("surface", "drum", "    condition: dry", "    condition: oiled", "another surface condition", "drum/press"),
    ("surface", "drum", "    condition: cold", "    condition: hot", "read hot and not cold, or cold and not hot", "drum/gap"),
    ("surface", "drum", "0.12 / 0.15 / 0.20", "0.11 / 0.15 / 0.20", "another thread, grade or surface", "drum/grip"),
    ("surface", "surfaces", "high: 0.17", "high: 0.18", "a surface changed", "oiled"),
    ("unit", "drum", "is: 14 short ton, source: shop p. 2", "is: 12.5 long ton, source: shop p. 2", "another unit", "drum/press"),
    ("unit", "drum", "mean diameter: 3.000 in", "mean diameter: 76.2 mm", "another unit", "drum/grip"),
    ("thread", "drum", "    thread: 1/2-13 UNC", "    thread: 1/2-20 UNF", "another thread, grade or surface", "drum/bolt"),
    ("grade", "drum", "    grade: 5", "    grade: 8", "another thread, grade or surface", "drum/bolt"),
    ("applicability", "drum", "after: none\n", "after: none\napplies to: [late]\n", "it is for other machines", "drum"),
    ("applicability", "drum", "    only: [early]\n", "", "it is for other machines", "drum"),
    ("applicability", "drum", "{early: 8 short ton, late: 10 short ton}", "{early: 8 short ton, late: none}", "it is for other machines", "drum/press"),
    ("applicability", "machines/hoist", "early: {serials: up to 499}\n      late: {serials: from 500}", "early: {serials: up to 599}\n      late: {serials: from 600}",
     "it is for other machines", "hoist"),
    ("press or gauge data changed", "presses", "area: 5.00 in²", "area: 5.10 in²", "press or gauge data changed", "P20"),
    ("press or gauge data changed", "presses", "division: 100 psi", "division: 50 psi", "press or gauge data changed", "P20"),
    ("press or gauge data changed", "presses", "accuracy: 1.0 %", "accuracy: 2.0 %", "press or gauge data changed", "P20"),
    ("press or gauge data changed", "drum", "gauge: main", "gauge: fine", "press or gauge changed", "drum"),
    ("a loose end orphaned", "drum", "    do: Bend the plate twice.\n    closes: [plate]\n", "    do: Bend the plate twice.\n", "a loose end is orphaned", "drum"),
    ("a clamp above its press figure", "drum", "is: 55 lbf·ft\n", "is: 90 lbf·ft\n", "the clamp is above the press force", "drum/bolt"),
    ("a clamp above its press figure", "drum", "    must not out-pull: press.ceiling\n", "", "the clamp is no longer held against the press force", "drum/bolt"),
    ("a force or torque moved over 10 %", "drum", "is: 55 lbf·ft\n", "is: 49 lbf·ft\n", "a torque moved over 10 %", "drum/bolt"),
    ("a force or torque moved over 10 %", "drum", "100 to 120 lbf", "100 to 107 lbf", "a force moved over 10 %", "drum/weight"),
    ("a force or torque moved over 10 %", "drum", "[40 lbf·ft, 55 lbf·ft]", "[35 lbf·ft, 55 lbf·ft]", "a force or torque moved over 10 %", "drum/bolt"),
    ("a force or torque moved over 10 %", "drum", "torque to carry: 400 lbf·ft", "torque to carry: 500 lbf·ft", "a force or torque moved over 10 %", "drum/grip"),
]
#: Broken besides, so that a correction alone does not let them pass: check finds what is wrong in the new book.
BROKEN = {"a ceiling is gone", "a source is gone", "a loose end is orphaned", "the clamp is above the press force", "it is for other machines", "another thread, grade or surface", "press or gauge changed"}


def books(file: str, old: str, new: str, about: str = ""):
    changed = {**FILES, file: replaced(old, new, FILES[file])}
    correction = {"site_data/corrections.yaml": f"COR-1: {{on: 2024-02-03, about: [{about}], old: A., new: B., reason: C., if already done: inspect}}\n"} if about else None
    sides = [proved_book(texts["drum"], extra, **{name: text for name, text in texts.items() if name != "drum"}) for texts, extra in ((FILES, None), (changed, correction))]
    return compared(("old", sides[0]), ("new", sides[1]))


def test_the_book_of_these_cases_has_no_finding():
    assert proved_book(RICH, **{name: text for name, text in FILES.items() if name != "drum"}).findings == ()


@pytest.mark.parametrize("line, file, old, new, reason, about", STOPS, ids=[f"{case[0]}: {case[3].strip()[:40]}" for case in STOPS])
def test_each_line_is_a_stop_that_its_correction_lets_pass(line, file, old, new, reason, about):
    found = books(file, old, new)
    assert found.verdict == "stop" and reason in {each for change in found.stops for each in change.reasons} and not found.passes
    told = books(file, old, new, about)
    assert told.verdict == "stop" and all(change.corrections == ("COR-1",) for change in told.stops if reason in change.reasons)
    if reason not in BROKEN:
        assert told.passes, (told.findings, [change for change in told.stops if not change.corrections])


@pytest.mark.parametrize("file, old, new, about", [
    ("drum", "is: 14 short ton, source: shop p. 2", "is: 14.4 short ton, source: shop p. 2", "drum/bolt"),
    ("drum", "    hold point: Look along the hub.\n", "", "drum/press"), ("presses", "area: 5.00 in²", "area: 5.10 in²", "drum/press"),
    ("cautions", "word: WARNING", "word: CAUTION", "P20"), ("machines/hoist", "up to 499}\n      late: {serials: from 500}", "up to 599}\n      late: {serials: from 600}", "drum/press"),
])
def test_a_correction_about_something_else_lets_nothing_pass(file, old, new, about):
    assert not books(file, old, new, about).passes


LOOKS = [
    ("drum", "is: 14 short ton, source: shop p. 2", "is: 13.6 short ton, source: shop p. 2"), ("drum", "is: 6 short ton", "is: 6.5 short ton"),
    ("drum", "0.010 to 0.020 in", "0.011 to 0.020 in"), ("drum", "0.50 ± 0.01 in", "0.50 ± 0.005 in"), ("drum", "over 0.030 in", "over 0.028 in"),
    ("drum", "is: 55 lbf·ft\n", "is: 54 lbf·ft\n"), ("drum", "people: 2", "people: 3"), ("drum", "source: shop p. 3", "source: chart p. 3"),
    ("drum", "mean diameter: 3.000 in", "mean diameter: 3.010 in"), ("drum", "torque to carry: 400 lbf·ft", "torque to carry: 410 lbf·ft"),
    ("drum", "number: 6B-7789", "number: 6B-7780"), ("drum", "count: 1,", "count: 2,"), ("drum", ", one use: yes", ""),
    ("cautions", "word: WARNING", "word: DANGER"), ("cautions", "[Stand clear., Wear a shield.]", "[Stand clear., Wear a shield., Wear gloves.]"),
]


@pytest.mark.parametrize("file, old, new", LOOKS, ids=[case[2][:40] for case in LOOKS])
def test_what_makes_it_no_less_safe_is_to_be_looked_at_and_is_told(file, old, new):
    found = books(file, old, new)
    assert found.verdict == "look" and bool(found.sheets) != new.startswith("source")


def test_a_figure_withdrawn_is_no_stop_and_passes_at_once():
    """Whoever withdraws a figure knows no better one yet: everything that rests on it refuses, and nothing is less safe."""
    for old in ("is: 55 lbf·ft\n", "    is: 0.50 ± 0.01 in\n"):
        found = books("drum", old, f"{old}    in doubt: A bolt broke at it.\n")
        assert found.verdict == "look" and found.passes
    found = books("drum", CEILING, CEILING.replace("source", "in doubt: A hub split., source"))
    assert found.verdict == "look" and found.passes and any("REFUSED" in (change.new or "") for change in found.consequences)


def test_a_figure_brought_back_with_more_than_it_had_is_a_stop():
    doubt = CEILING.replace("source", "in doubt: A hub split., source")
    withdrawn = proved_book(replaced(CEILING, doubt, RICH), cautions=FILES["cautions"])
    for worth, verdict in (("15", "stop"), ("14", "look"), ("13.5", "look")):
        back = proved_book(replaced("is: 14 short ton, source", f"is: {worth} short ton, source", RICH), cautions=FILES["cautions"])
        assert compared(("old", withdrawn), ("new", back)).verdict == verdict
