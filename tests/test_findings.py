"""One wrong line a case: what is changed in the smallest book, and the finding it must give, at its place.

A case is (rule, words that stand in the book, what stands there instead, line:column, part of the message and mend)."""

import pytest
from small_book import PROCEDURE, SITE_DATA, sources

from witnessmark.loading.source_files import SourceFile
from witnessmark.loading.load_book import load_book
from witnessmark.rules.table import check_book
from witnessmark.workings.derive import derive_book

GRIP = """\
computed:
  grip:
    working: taper-grip
    torque to carry: 400 lbf·ft
    taper: 1:12
    mean diameter: 3.000 in
    length: 3.50 in
    friction: 0.12 / 0.15 / 0.20
"""

CASES = [
    ("unknown-key", "people: 2", "poeple: 2", "4:1", "did you mean 'people'?"),
    ("missing-key", "people: 2\n", "", "1:1", "lacks 'people'"),
    ("missing-key", "    label: Cap bolt\n", "", "23:5", "lacks 'label'"),
    ("duplicate-key", "people: 2", "people: 2\npeople: 3", "5:1", "'people' stands twice"),
    ("wrong-shape", "tried: desk", "tried: [desk]", "5:8", "a list stands here, write desk"),
    ("wrong-shape", "people: 2", "people: [2]", "4:9", "a list stands here, write a whole number"),
    ("wrong-shape", "  supplies: none", "  supplies: oil can", "9:13", "write a list"),
    ("empty-value", "people: 2", "people:", "4:8", "nothing stands here"),
    ("empty-list", "after: none", "after: []", "3:8", "write 'none'"),
    ("bad-number", "people: 2", "people: 0", "4:9", "write a whole number from 1 to 20"),
    ("bad-number", "people: 2", "people: two", "4:9", "write a whole number"),
    ("unknown-word", "kind: torque", "kind: torqe", "24:11", "did you mean 'torque'?"),
    ("unknown-word", "role: floor", "role: flor", "18:16", "did you mean 'floor'?"),
    ("quantity", "55 lbf·ft", "55 psi", "29:9", "psi"),
    ("quantity", "6 short ton", "6 ton", "18:27", "ton"),
    ("quantity", "55 lbf·ft", "55", "29:9", "the unit is missing"),
    ("quantity", "55 lbf·ft", "60 to 55 lbf·ft", "29:9", "backwards"),
    ("thread", "1/2-13 UNC", "1/2-14 UNC", "25:13", "1/2"),
        ("bad-id", "  - id: bolt\n", "  - id: bolt it\n", "35:9", "'bolt it' cannot be a name"),
    ("duplicate-id", "  bolt:\n    label", "  press:\n    label", "22:3", "'press' is defined twice"),
    ("unknown-reference", "{press.target}", "{pres.target}", "33:9", "did you mean 'press'?"),
    ("unknown-reference", "{press.target}", "{press.stop}", "33:9", "'stop'"),
    ("unknown-reference", "cautions: [HZ-1]", "cautions: [HZ-2]", "34:5", "there is no caution 'HZ-2', did you mean 'HZ-1'?"),
    ("unknown-reference", "after: none", "after: [dismantle]", "3:1", "there is no procedure 'dismantle'"),
    ("unknown-reference", "press: P20", "press: P2O", "7:13", "there is no press 'P2O'"),
    ("unknown-reference", "{early: 8", "{erly: 8", "19:29", "did you mean 'early'?"),
    ("unknown-reference", "source: shop p. 3", "source: shopp p. 3", "30:13", "there is no source 'shopp'"),
    ("no-figure", "early: 8 short ton, ", "", "19:28", "no figure for hoist early"),
    ("figure-without-source", "    source: shop p. 3\n", "", "23:5", "names no source"),
    ("torque-without-surface", "    surface: oiled\n", "", "23:5", "names no surface"),
    ("torque-without-surface", "    grade: 5\n", "", "23:5", "names no grade"),
    ("press-force-without-ceiling", "      - {role: ceiling, is: 14 short ton, source: shop p. 2}\n", "", "14:5", "no ceiling"),
    ("limits-in-order", "is: 14 short ton", "is: 9 short ton", "20:9", "over its ceiling (9 short ton) for hoist late"),
    ("limits-in-order", "is: 6 short ton", "is: 9 short ton", "19:9", "over its target (8 short ton) for hoist early"),
    ("torque-refused", "grade: 5", "grade: 10.9", "23:5", "10.9"),
    ("torque-refused", "55 lbf·ft", "200 lbf·ft", "23:5", "outside its range"),
    ("yaml", "    do: Tighten", "    do: *Tighten", "36:9", "put quotes around"),
    ("yaml", "    do: Tighten", "    do: Note: tighten", "36:13", "put quotes around"),
    ("yaml", "people: 2", "people: !!python/object:os.system 2", "4:9", "is a tag"),
    ("yaml", "people: 2", "people: &p 2", "4:9", "for copying"),
    ("measure-of-two-sizes", "Tighten the bolts to {bolt}.", "Press to 18 tons.", "36:9", "write long ton (2,240 lb), short ton (2,000 lb) or tonne"),
    ("measure-of-two-sizes", "Tighten the bolts to {bolt}.", "Pour in 2 US quarts and 3 Fl oz of oil.", "36:9", "imperial fl oz, US fl oz or mL"),
    ("reference-without-braces", "{press.target}", "(press.target)", "33:9", "write it in braces: {press.target}"),
    ("reference-without-braces", "read {press}.", "read [press].", "33:9", "'press' is printed here as a word"),
    ("sources-in-one", "source: shop p. 3\n", "source: shop p. 3, chart p. 1\n", "30:13", "write several sources in brackets with commas: [shop p. 3, chart p. 1]"),
    ("bad-reference", "{press.target}", "{{press.target}}", "33:9", "braces stand here one in the other"),
    ("bad-reference", "{press.target}", "{press target!}", "33:9", "names no figure"),
]


def findings(procedure: str = PROCEDURE, **changed: str):
    book, found = load_book(sources(procedure, **changed))
    derived, more = derive_book(book)
    return sorted({*found, *more, *check_book(book, derived)})


@pytest.mark.parametrize("rule, stands, wrong, at, says", CASES, ids=[f"{case[0]}: {case[2][:30]!r}" for case in CASES])
def test_a_slip_is_one_finding_at_its_place(rule, stands, wrong, at, says):
    assert PROCEDURE.count(stands) == 1, "the case must change exactly one place"
    found = [finding for finding in findings(PROCEDURE.replace(stands, wrong)) if finding.rule == rule]
    lines = [finding.line() for finding in found]
    assert any(line.startswith(f"procedures/hoist/drum.yaml:{at}: ") and says in line and line.endswith(f"[{rule}]")
               for line in lines), lines or [f.line() for f in findings(PROCEDURE.replace(stands, wrong))]


def test_the_smallest_book_has_no_finding():
    assert findings() == []


def test_findings_come_in_the_order_of_places_and_once():
    broken = PROCEDURE.replace("people: 2", "people: two").replace("55 lbf·ft", "55 psi")
    found = [finding for finding in findings(broken)]
    assert found == sorted(set(found))
    assert {finding.rule for finding in found} >= {"bad-number", "quantity"}


def test_a_press_without_area_is_said_and_its_users_are_not_guessed():
    found = findings(presses="P20:\n  title: Bench press\n  gauges: none\n")
    assert any(finding.rule == "missing-key" and "neither area nor bore" in finding.message for finding in found)


@pytest.mark.parametrize("shelf, right, wrong", [
    ("presses", "full scale: 10000 psi", "full scale: 10.000 psi"), ("wrenches", "highest: 150 lbf·ft", "highest: 15 lbf·ft"),
    ("wrenches", "graduation: 5 lbf·ft", "graduation: 500 lbf·ft")])
def test_an_instrument_that_ends_before_it_begins_is_told_at_its_place(shelf, right, wrong):
    """Ten typed for ten thousand: a comma taken for a point."""
    text = SITE_DATA[f"site_data/{shelf}.yaml"]
    assert right in text
    found = [finding for finding in findings(**{shelf: text.replace(right, wrong)}) if finding.rule == "scale-in-order"]
    assert [finding.place.path for finding in found] == [f"site_data/{shelf}.yaml"]
    assert "is not smaller than" in found[0].message


@pytest.mark.parametrize("right", ["Press to 18 long tons.", "Pour in 2 US quarts and 3 imperial pints.", "Lift it with the 5-ton hoist.", "Turn it 2 tongue widths."])
def test_a_measure_that_says_its_size_stands(right):
    assert [finding for finding in findings(PROCEDURE.replace("Tighten the bolts to {bolt}.", right)) if finding.rule == "measure-of-two-sizes"] == []


@pytest.mark.parametrize("right", ["Press (gently) to {press.target} and read {press}.", "Press as on sheet [3] and read the bolt. Then wait.",
                                   "Press to {press.target}, as press.Then and bolt.it say."])
def test_words_that_name_no_figure_stand(right):
    procedure = PROCEDURE.replace("Press to {press.target} and read {press}.", right)
    assert [finding for finding in findings(procedure) if finding.rule == "reference-without-braces"] == []


@pytest.mark.parametrize("text", ["", "[" * 20000, "\0", "a: *b", "a: &x [*x]", "- 1\n---\n- 2", "title: [", "\t- x",
                                  "{", "'", '"', ">", "? [a]: b", "a: !!binary xx", "%YAML 9.9\n---\na"])
def test_hostile_text_is_a_finding_and_no_traceback(text):
    assert findings(text)


def test_a_name_that_would_hit_the_sites_own_pages_is_refused():
    book, found = load_book([SourceFile("procedures/hoist/sheet.yaml", PROCEDURE), *sources()])
    assert [finding.rule for finding in found] == ["reserved-id"]
