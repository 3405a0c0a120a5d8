"""Slips in figures, names and words: what stands in the smallest book, what stands instead, and the finding at its place."""

import pytest
from small_book import PROCEDURE, SITE_DATA, sources
from test_findings import findings

from witnessmark.loading.load_book import load_book
from witnessmark.workings.derive import derive_book

PLATE = "    check: The plate lies flat."
GAP = "  gap:\n    label: Valve gap\n    kind: clearance\n    condition: cold\n    is: 0.010 in\n    source: shop p. 4\n"
CORD = "  pull:\n    label: Pull on the cord\n    kind: force\n    at radius: 2 in\n    is: 5 lbf\n    source: shop p. 4\n"
DRAG = "  drag:\n    label: Drum drag\n    kind: rolling drag\n    at radius: 2 in\n    is: 5 lbf·in\n    source: shop p. 4\n"
#: The smallest book with one figure of each sort that these rules look at.
BOOK = PROCEDURE.replace("steps:\n", f"{GAP}{CORD}{DRAG}steps:\n").replace(
    "    surface: oiled\n", "    surface: oiled\n    must not out-pull: press.floor\n    checked against: 6 short ton\n"
).replace("steps:\n", "steps:\n  - id: cord\n    do: Measure the drag by a cord.\n    specs: [drag]\n"
) + f"{PLATE}\n    note: Kept clean.\nnotes:\n  - id: why\n    kind: symptom\n    says: It squeals.\n"

JOURNAL = """\
  journal:
    label: Journal
    kind: diameter
    condition: clean
    figures:
      - {role: target, is: 2.750 in, source: shop}
      - {role: reject, from: ground.cleaned up, source: shop}
computed:
  ground:
    working: undersize
    standard size: drum/journal
    readings: 2.7452 in
    clean-up: 0.0015 in
    undersizes: 0.010 in
"""

SHAFT = """\
computed:
  shaft:
    working: taper-advance
    force: {}
    taper: 1:12
    mean diameter: 2.5 in
    length: 2 in
    hub diameter: 5 in
    friction: 0.12
    hub modulus: 30 Mpsi
    hub poisson: 0.3
    shaft modulus: 30 Mpsi
    shaft poisson: 0.3
"""

CASES = [
    ("radius-not-named", "cord\n    kind: force\n    at radius: 2 in\n", "cord\n    kind: force\n", "40:5", "at which radius"),
    ("radius-not-named", "rolling drag\n    at radius: 2 in\n", "rolling drag\n", "46:5", "read by a cord in 'cord'"),
    ("radius-not-named", "label: Valve gap", "label: Gear backlash", "34:5", "at which radius"),
    ("radius-not-named", "by a cord.", "by a cord on the drum of 2.25 in.", "53:9", "a radius or a diameter"),
    ("clearance-without-temperature", "clearance\n    condition: cold\n", "clearance\n", "34:5", "whether cold or hot"),
    ("clearance-without-temperature", "condition: cold", "condition: oiled", "34:5", "whether cold or hot"),
    ("record-about-another", "    is: 55 lbf·ft\n    source: shop p. 3",
     "    figures:\n      - {role: target, is: 55 lbf·ft, source: shop}\n      - {role: found, is: 90 lbf·ft, source: chart, kept for the record: CF-9}",
     "33:9", "CF-9, which is about drum/press"),
    ("no-press-will-do", "presses: [{press: P20, gauge: main}]", "presses: none", "14:5", "no press is among the needs"),
    ("step-for-nobody", "  - id: press\n", "  - id: press\n    only: [erly]\n", "56:12", "did you mean 'early'?"),
    ("html-not-read", "label: Valve gap", "label: <b>Valve</b> gap", "34:12", "HTML is not read here"),
    ("html-not-read", "title: Press the drum", "title: <script>alert(1)</script>", "1:8", "'<script>' stands here"),
    ("outside-link", "item: lock plate", "item: 'data:text/html,x'", "11:15", "'data:' is no address"),
    ("checked-against", "against: 6 short ton", "against: not known yet", "29:5", "not yet checked against the floor, which is 6 short ton"),
    ("two-in-force", "    is: 55 lbf·ft\n    source: shop p. 3",
     "    figures:\n      - {role: target, is: 55 lbf·ft, source: shop}\n      - {role: target, is: 50 lbf·ft, source: chart}",
     "33:9", "a second target for early"),
    ("duplicate-id", "  - id: bolt\n", "  - id: press\n", "58:5", "the step 'press' is there already, in line 55"),
    ("duplicate-id", "        never while open: [run]\n",
     "        never while open: [run]\n      - {id: plate, state: a, because: b, if forgotten: c, never while open: [run]}\n",
     "66:9", "the loose end 'plate'"),
    ("duplicate-id", "  - id: why\n", "  - {id: why, kind: symptom, says: It squeaks.}\n  - id: why\n", "73:5", "the note 'why'"),
    ("was-taken", "label: Cap bolt", "was: [press]\n    label: Cap bolt", "23:5", "is the name of another spec"),
    ("was-taken", "label: Cap bolt", "was: [bolt]\n    label: Cap bolt", "23:5", "is its name still"),
    ("was-taken", "  bolt:\n", "  other: {was: [OLD], label: Nut, kind: none, is: x, source: shop}\n  bolt:\n    was: [OLD]\n",
     "24:5", "an old name of 'other' and of 'bolt'"),
    ("tight-without-figure", "do: Tighten the bolts to {bolt}.", "do: Snug the bolts down.", "59:9", "'Snug' is no figure"),
    ("tight-without-figure", "The plate lies flat", "Torqued to specification", "69:12", "'to specification' is no figure"),
    ("conversion-by-hand", "Kept clean.", "Pull 8 short ton (71 kN).", "70:11", "write 8 short ton alone"),
    ("conversion-by-hand", "It squeals.", "At 1,100 to 1,200 lbf·ft (1491 to 1627 N·m) it squeals.", "74:11", "one figure in two units"),
    ("checked-against", "against: 6 short ton", "against: 7 short ton", "29:5", "was checked against 7 short ton, the floor is now 6 short ton"),
    ("checked-against", "    must not out-pull: press.floor\n", "", "28:5", "but not said which"),
    ("outside-link", "Kept clean.", "'See javascript:alert(1).'", "70:16", "'javascript:' is no address"),
    ("outside-link", "It squeals.", "See ftp://files.example/x.", "74:15", "'ftp:' is no address"),
    ("html-not-read", "Kept clean.", "Kept <b>clean</b>.", "70:16", "HTML is not read here"),
    ("html-not-read", "Kept clean.", "See [the plan](https://plan.example).", "70:15", "a Markdown link"),
]

#: Words that look like a slip and are none.
JUST = [
    ("Kept clean.", "The standard is sold at https://standards.example/b1-1, and http://old.example has a copy."),
    ("Kept clean.", "Gap < 5 and > 3, and 3 short tons (2000 psi) on the gauge."),
    ("Kept clean.", "Nuts finger-tight at 5 o'clock, 2 in or 3 in from the end."),
    ("Tighten the bolts to {bolt}.", "Snug the bolts, then to {bolt}."),
    ("by a cord.", "by a cord on the drum of 2.25 in radius."),
    ("against: 6 short ton", "against: 12000 lbf"),
    ("  - id: press\n", "  - id: press\n    only: up to 499\n"),
    ("  - id: press\n", "  - id: press\n    only: [early, from 500]\n"),
]


def test_the_book_of_these_cases_has_no_finding():
    assert findings(BOOK) == []


@pytest.mark.parametrize("rule, stands, wrong, at, says", CASES, ids=[f"{case[0]}: {case[2][:30]!r}" for case in CASES])
def test_a_slip_is_one_finding_at_its_place(rule, stands, wrong, at, says):
    assert BOOK.count(stands) == 1, "the case must change exactly one place"
    lines = [finding.line() for finding in findings(BOOK.replace(stands, wrong)) if finding.rule == rule]
    assert len(lines) == 1, lines
    assert lines[0].startswith(f"procedures/hoist/drum.yaml:{at}: ") and says in lines[0], lines


@pytest.mark.parametrize("stands, right", JUST, ids=[right[:40] for _, right in JUST])
def test_no_false_alarm(stands, right):
    assert BOOK.count(stands) == 1
    assert findings(BOOK.replace(stands, right)) == []


HOIST = SITE_DATA["site_data/machines/hoist.yaml"]


@pytest.mark.parametrize("stands, wrong, rule, says", [
    ("from 500", "from 490", "serials-in-order", "overlap those of early (up to 499)"),
    ("from 500", "from 510", "serials-in-order", "serials 500 to 509 belong to no variant"),
    ("from 500", "from 501", "serials-in-order", "serial 500 belongs to no variant"),
    ("up to 499", "from 1", "serials-in-order", "overlap"),
    ("early: {serials: up to 499}", "early: {title: Early}", "serials-in-order", "'early' has no serials"),
    ("Left and right are named facing the drum.", "The drum is in front.", "left-without-viewpoint", "places of 'side'"),
    ("figures:\n", "figures:\n  heat: {label: Air, kind: none, is: 'cold, file://x', was: [load], role: found, source: chart}\n",
     "was-taken", "is the name of another spec"),
])
def test_a_slip_in_the_machine(stands, wrong, rule, says):
    assert HOIST.count(stands) == 1
    lines = [f.line() for f in findings(**{"machines/hoist": HOIST.replace(stands, wrong)}) if f.rule == rule]
    assert len(lines) == 1 and says in lines[0], lines


def test_left_in_a_step_wants_a_viewpoint():
    machine = HOIST.replace("Left and right are named facing the drum.", "The drum is in front.").replace("[left, right]", "[near, far]")
    told = PROCEDURE.replace("Press to", "On the left side press to")
    lines = [f.line() for f in findings(told, **{"machines/hoist": machine}) if f.rule == "left-without-viewpoint"]
    assert len(lines) == 1 and ":33:9: warning: 'On the left' is said" in lines[0], lines
    angle = PROCEDURE.replace("Press to", "Turned to the right angle, with a left-hand thread, press to")
    assert [f for f in findings(angle, **{"machines/hoist": machine}) if f.rule == "left-without-viewpoint"] == []


def test_a_correction_is_about_what_it_withdraws():
    corrections = ("COR-9:\n  on: 2024-01-02\n  about: [drum/press]\n  old: a\n  new: b\n  reason: c\n  source: shop\n"
                   "  if already done: fine\n")
    withdrawn = "      - {role: ceiling, is: 15 short ton, source: shop, superseded by: COR-9}\nsteps:\n"
    right = PROCEDURE.replace("kept for the record: CF-9}\n", "kept for the record: CF-9}\n" + withdrawn.removesuffix("steps:\n"))
    assert findings(right, corrections=corrections) == []
    wrong = corrections.replace("drum/press", "drum/bolt")
    lines = [f.line() for f in findings(right, corrections=wrong) if f.rule == "record-about-another"]
    assert len(lines) == 1 and "superseded by COR-9, which is about drum/bolt" in lines[0], lines


def test_figures_taken_from_one_another_are_a_finding_and_no_traceback():
    lines = [f.line() for f in findings(PROCEDURE.replace("    is: 55 lbf·ft\n", "    from: bolt.target\n"))]
    assert len(lines) == 1 and ":29:11: " in lines[0] and "rests on it in the end" in lines[0], lines
    chain = "".join(f"  c{i}:\n    label: a\n    kind: length\n    source: shop\n    from: c{i + 1}.target\n" for i in range(3000))
    assert any(f.rule == "loop" and "more than 40 figures" in f.message for f in findings(PROCEDURE.replace("steps:\n", chain + "steps:\n")))


def test_one_figure_of_a_spec_may_rest_on_another_of_it_through_a_result():
    assert findings(PROCEDURE.replace("steps:\n", JOURNAL + "steps:\n")) == []
    loop = JOURNAL.replace("target, is: 2.750 in", "target, from: ground.cleaned up")
    assert "loop" in {f.rule for f in findings(PROCEDURE.replace("steps:\n", loop + "steps:\n"))}


def runs_of(derived, owner: str) -> list:
    return [run for each in derived.values() for ran in each.worked.values() for run in ran if run.owner == owner]


@pytest.mark.parametrize("written, says", [
    ("drm/journal", "there is no procedure or machine 'drm', did you mean 'drum'?"),
    ("drum/jornal", "there is no figure 'jornal', did you mean 'journal'?"),
    ("drum/journal.tagret", "there is no role 'tagret', did you mean 'target'?"),
    ("journal.floor", "there is no figure in 'journal' with the role 'floor'"),
    ("hoist/laod", "did you mean 'load'?"),
    ("press.last mark on P20 mian", "'P20 mian' is no press and gauge among the needs there, did you mean 'P20 main'?"),
    ("bolt.last mark on P20 main", "there is no role 'last mark on P20 main'"),
    ("drum/ground", "'drum/ground' names a computed result but not which number of it"),
])
def test_an_input_that_names_what_is_not_there(written, says):
    book = PROCEDURE.replace("steps:\n", JOURNAL + "steps:\n")
    assert findings(book) == []
    lines = [f.line() for f in findings(book.replace("standard size: drum/journal", f"standard size: {written}")) if f.rule == "unknown-input"]
    assert len(lines) == 1 and lines[0].startswith("procedures/hoist/drum.yaml:") and says in lines[0], lines


def test_the_last_mark_of_a_press_card_is_an_input_and_follows_the_target():
    """By hand: 5 in² and 100 psi a division; 8 short tons are 3200 psi, 10 are 4000; 8.13 are 3252, whose last mark is 3200."""
    held = SHAFT.format("press.last mark on P20 main")
    for early, reached in (("8 short ton", "8.00 short ton"), ("8.13 short ton", "8.00 short ton"), ("9 short ton", "9.00 short ton")):
        book, found = load_book(sources(PROCEDURE.replace("8 short ton", early).replace("steps:\n", held + "steps:\n")))
        derived, more = derive_book(book)
        assert [*found, *more] == []
        assert [run.inputs["force"] for run in runs_of(derived, "shaft")] == [reached, "10.00 short ton"]


def test_a_figure_beside_the_limits_may_rest_on_the_last_mark_of_its_own_card():
    shaft = SHAFT.format("press.last mark on P20 main")
    found = "      - {role: found, from: shaft.push-off force, source: shop}\n"
    text = PROCEDURE.replace("      - {role: ceiling, is: 14", found + "      - {role: ceiling, is: 14").replace("steps:\n", shaft + "steps:\n")
    assert text.count(found) == 1 and findings(text) == []


def test_where_the_card_is_refused_nothing_rests_on_its_mark():
    held = "computed:\n  shaft:\n    working: taper-advance\n    force: press.last mark on P20 main\n    taper: 1:12\n"
    book, _ = load_book(sources(PROCEDURE.replace("14 short ton", "8.1 short ton").replace("steps:\n", held + "steps:\n")))
    assert all(run.outcome.refusals and "force" not in run.inputs for run in runs_of(derive_book(book)[0], "shaft"))


def test_a_thread_is_no_reference_though_it_is_spelled_like_one():
    held = "computed:\n  held:\n    working: thread-engagement\n    thread: M14x1.5\n    grade: 8.8\n    tapped ultimate: 25 ksi\n"
    book, found = load_book(sources(PROCEDURE.replace("steps:\n", held + "steps:\n")))
    derived, more = derive_book(book)
    assert [*found, *more] == []
    runs = runs_of(derived, "held")
    assert runs and all(run.inputs["thread"] == "M14x1.5" and not run.outcome.refusals for run in runs)


def test_a_step_for_serials_the_procedure_is_not_for():
    text = PROCEDURE.replace("people: 2", "applies to: [late]\npeople: 2").replace("  - id: press\n", "  - id: press\n    only: up to 499\n")
    lines = [f.line() for f in findings(text) if f.rule == "step-for-nobody"]
    assert len(lines) == 1 and ":34:11: " in lines[0] and "no variant of this procedure" in lines[0], lines
