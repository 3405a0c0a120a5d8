"""Two books compared on meaning: what is grave, what is only words, what follows, which paper no longer holds."""

import json
from pathlib import Path

import jsonschema
import pytest
from compared_books import comparison, proved_book, replaced
from small_book import PROCEDURE, SITE_DATA, sources

from witnessmark.build import compared
from witnessmark.prove import proved
from witnessmark.changes.data import as_data
from witnessmark.changes.lines import as_lines
from witnessmark.changes.markdown import MOST_BYTES, as_markdown, code
from witnessmark.core.picture import PictureFile
from witnessmark.loading.source_files import SourceFile

SCHEMA = json.loads((Path(__file__).parents[2] / "plugins/witnessmark/pages/static/compare.schema.json").read_text(encoding="utf-8"))
CORRECTION = {"site_data/corrections.yaml": """\
COR-1:
  on: 2024-02-03
  about: drum/press
  old: It was another.
  new: It is this.
  reason: A hub split.
  if already done: inspect
"""}


def told(found):
    return {(change.what, change.case): change for change in (*found.changes, *found.consequences)}


def test_the_same_book_has_no_change():
    found = comparison()
    assert (found.verdict, found.changes, found.consequences, found.sheets, found.findings) == ("same", (), (), (), ())


SAME_MEANING = [
    ("title: Press the drum\nmachine: hoist\n", "machine: hoist\ntitle: Press the drum\n"),
    ("people: 2\n", "\n\n# two of you\npeople: 2   # never one\n"),
    ("cautions: [HZ-1]", "cautions:\n      - HZ-1"),
    ("    do: Tighten the bolts to {bolt}.", "    do: >\n      Tighten the bolts\n      to {bolt}."),
    ("is: {early: 8 short ton, late: 10 short ton}", "is: {late: 10 short ton, early: 8 short ton}"),
    ("is: {early: 8 short ton, late: 10 short ton}", "is: {up to 499: 8 short ton, from 500: 10 short ton}"),
]


@pytest.mark.parametrize("old, new", SAME_MEANING)
def test_order_of_keys_comments_and_line_breaks_never_show(old, new):
    found = comparison(replaced(old, new))
    assert (found.verdict, found.changes, found.sheets) == ("same", (), ())


WORDS = [("title: Press the drum", "title: Pressing the drum", "title"), ("label: Cap bolt", "label: Bolt of the cap", "Bolt of the cap, label"),
         ("do: Tighten the bolts to {bolt}.", "do: Pull the bolts up to {bolt}.", "step “Pull the bolts up to {bolt}.”, do"),
         ("if forgotten: The bolt backs out.", "if forgotten: The bolt comes out.", "step “Tighten the bolts to {bolt}.”, left loose plate: if forgotten")]


@pytest.mark.parametrize("old, new, what", WORDS)
def test_words_are_told_as_words_and_leave_the_paper_true(old, new, what):
    found = comparison(replaced(old, new))
    assert found.verdict == "wording" and not found.sheets and not found.findings
    assert what in {change.what for change in found.changes}


STOPS = [("is: 14 short ton", "is: 15 short ton", "a ceiling is raised"), ("is: 6 short ton", "is: 5 short ton", "a floor is lowered"),
         ("      - {role: ceiling, is: 14 short ton, source: shop p. 2}\n", "", "a ceiling is gone"),
         ("is: 14 short ton, source: shop p. 2", "is: 12.5 long ton, source: shop p. 2", "another unit"),
         ("    thread: 1/2-13 UNC", "    thread: 1/2-20 UNF", "another thread, grade or surface"),
         ("    grade: 5", "    grade: 8", "another thread, grade or surface"),
         ("    condition: dry", "    condition: oiled", "another surface condition"),
         ("    kind: press force\n", "    kind: force\n", "another kind of figure"),
         ("    cautions: [HZ-1]\n", "    cautions: none\n", "a caution is gone"),
         ("people: 2", "people: 1", "the second person is gone"),
         ("is: 55 lbf·ft", "is: 62 lbf·ft", "a torque moved over 10 %"),
         ("{early: 8 short ton, late: 10 short ton}", "{early: 8 short ton, late: none}", "it is for other machines"),
         ("after: none\n", "after: none\napplies to: [late]\n", "it is for other machines"),
         ("is: 14 short ton, source: shop p. 2", "is: 14 short ton", "a source is gone")]


@pytest.mark.parametrize("old, new, reason", STOPS)
def test_what_makes_work_less_safe_is_a_stop(old, new, reason):
    found = comparison(replaced(old, new))
    assert found.verdict == "stop"
    assert reason in {each for change in (*found.changes, *found.consequences) for each in change.reasons}


@pytest.mark.parametrize("old, new", [("is: 14 short ton", "is: 13 short ton"), ("is: 6 short ton", "is: 6.5 short ton"), ("is: 55 lbf·ft", "is: 56 lbf·ft"),
                                      ("people: 2", "people: 3"), ("source: shop p. 2", "source: shop p. 9")])
def test_what_makes_it_no_less_safe_is_to_be_looked_at(old, new):
    found = comparison(replaced(old, new))
    assert {change.severity for change in found.changes} == {"look"}


def test_a_figure_under_another_condition_is_one_change_of_that():
    before = replaced("{role: ceiling, is: 14 short ton, source: shop p. 2}", "{role: ceiling, is: 14 short ton, condition: cold, source: shop p. 2}")
    found = comparison(before.replace("condition: cold", "condition: on blocks"), before.replace("condition: cold", "condition: level"))
    assert [(change.what, change.old, change.new, change.severity) for change in found.changes] == [
        ("Drum press force, condition, ceiling", "level", "on blocks", "look")]
    both = comparison(before.replace("14 short ton, condition: cold", "15 short ton, condition: oiled"), before)
    assert {(change.what, change.reasons) for change in both.changes} == {
        ("Drum press force, ceiling, oiled", ("a ceiling is raised",)), ("Drum press force, condition, ceiling", ("another surface condition",))}


HELD = replaced("    do: Press to {press.target} and read {press}.\n",
                "    do: Press to {press.target} and read {press}.\n    hold point: Look along the hub.\n    second person: yes\n")


@pytest.mark.parametrize("gone, reason", [("    hold point: Look along the hub.\n", "a hold point is gone"), ("    second person: yes\n", "a second person is gone")])
def test_a_hold_point_or_second_person_gone_is_a_stop(gone, reason):
    found = comparison(replaced(gone, "", HELD), HELD)
    assert [change.reasons for change in found.changes if change.severity == "stop"] == [(reason,)]


@pytest.mark.parametrize("shelf, old, new, reason", [
    ("cautions", "word: WARNING", "word: CAUTION", "a signal word is lowered"),
    ("presses", "area: 5.00 in²", "area: 6.00 in²", "press or gauge data changed"),
    ("presses", "division: 100 psi", "division: 200 psi", "press or gauge data changed"),
    ("surfaces", "low: 0.13", "low: 0.12", "a surface changed"),
    ("machines/hoist", "early: {serials: up to 499}\n      late: {serials: from 500}", "early: {serials: up to 599}\n      late: {serials: from 600}", "it is for other machines"),
])
def test_the_shop_s_own_data_is_a_stop_and_moves_what_rests_on_it(shelf, old, new, reason):
    found = comparison(**{shelf: replaced(old, new, SITE_DATA[f"site_data/{shelf}.yaml"])})
    assert reason in {each for change in found.changes for each in change.reasons} and found.sheets


@pytest.mark.parametrize("old, new, verdict, what", [
    ("is: 2000 lbf", "is: 1950 lbf", "look", "Rated load, found"), ("is: 2000 lbf", "is: 2400 lbf", "stop", "Rated load, found"),
    (", source: chart p. 1", "", "stop", "Rated load, found: source"), ("source: chart p. 1", "source: shop p. 4", "look", "Rated load, found: source"),
    ("kind: force, role: found", "kind: force, condition: level, role: found", "look", "Rated load, condition; Rated load, condition, found"),
    ("label: Rated load", "label: Load of the hoist", "wording", "load, label")])
def test_the_figures_of_a_machine_are_compared_like_any_other(old, new, verdict, what):
    found = comparison(**{"machines/hoist": replaced(old, new, SITE_DATA["site_data/machines/hoist.yaml"])})
    assert (found.verdict, [change.what for change in found.changes]) == (verdict, what.split("; "))


def test_a_caution_that_loses_its_source_is_a_stop():
    with_source = SITE_DATA["site_data/cautions.yaml"] + "  source: chart p. 9\n"
    found = compared(("old", proved_book(cautions=with_source)), ("new", proved_book()))
    assert [(change.what, change.reasons) for change in found.changes] == [("caution HZ-1: source", ("a source is gone",))]


def test_a_signal_word_raised_is_no_stop():
    found = comparison(cautions=replaced("word: WARNING", "word: DANGER", SITE_DATA["site_data/cautions.yaml"]))
    assert {change.severity for change in found.changes} == {"look"} and found.sheets


def test_a_changed_figure_is_told_in_both_systems_and_in_per_cent():
    found = told(comparison(replaced("is: 14 short ton", "is: 13 short ton")))
    change = found["Drum press force, ceiling", ""]
    assert (change.old, change.old_also, change.new, change.new_also) == ("14 short ton", "124 kN", "13 short ton", "115 kN")
    assert change.per_cent == -7.1 and change.place.startswith("procedures/hoist/drum.yaml:")


def test_marks_that_follow_are_told_as_consequences_for_the_case_they_are_of():
    found = comparison(replaced("late: 10 short ton", "late: 9 short ton"))
    [marks] = [change for change in found.consequences if change.sort == "mark"]
    assert marks.case == "hoist late" and marks.what == "Drum press force, P20 main, marks"
    assert marks.old.startswith("2000 psi, 3000 psi, 3600 psi, 4000 psi") and marks.new.startswith("1800 psi, 2700 psi, 3200 psi, 3600 psi")
    assert [(sheet.variant, bool(sheet.old), bool(sheet.new)) for sheet in found.sheets] == [("late", True, True)]


OTHER = """\
title: Check the drum
machine: hoist
after: [drum]
people: 1
tried: desk
needs: {presses: none, tools: none, supplies: none, parts: none}
steps:
  - id: look
    do: See that the bolts are at {drum/bolt}.
"""


def test_a_figure_of_another_procedure_moves_the_sheets_that_show_it():
    path = "procedures/hoist/look.yaml"
    old, new = proved_book(extra={path: OTHER}), proved_book(replaced("is: 55 lbf·ft", "is: 56 lbf·ft"), {path: OTHER})
    found = compared(("old", old), ("new", new))
    assert {(sheet.procedure, sheet.variant) for sheet in found.sheets} == {(name, variant) for name in ("drum", "look") for variant in ("early", "late")}
    [shown] = [change for change in found.consequences if change.procedure == "look"]
    assert (shown.what, shown.old, shown.new) == ("Cap bolt, target", "55 lbf·ft", "56 lbf·ft")


def test_an_order_of_steps_is_told():
    bolt = PROCEDURE[PROCEDURE.index("  - id: bolt\n"):PROCEDURE.index("  - id: lock\n")]
    swapped = PROCEDURE.replace(bolt, "").replace("steps:\n", f"steps:\n{bolt}")
    [change] = comparison(swapped).changes
    assert (change.what, change.old, change.new, change.severity) == ("order of the steps", "press, bolt, lock", "bolt, press, lock", "look")


def test_a_rename_with_was_is_a_rename_and_nothing_else():
    renamed = replaced("  bolt:\n    label", "  cap-bolt:\n    was: [bolt]\n    label").replace("{bolt}", "{cap-bolt}")
    renamed = replaced("  - id: bolt\n", "  - id: pull\n    was: [bolt]\n", renamed)
    renamed = replaced("      - id: plate\n", "      - id: lock-plate\n        was: [plate]\n", renamed)
    renamed = replaced("closes: [plate]", "closes: [lock-plate]", renamed)
    found = comparison(renamed)
    assert {(change.severity, change.what) for change in found.changes} == {("wording", "called otherwise")}
    assert {(change.old, change.new) for change in found.changes} == {("bolt", "cap-bolt"), ("bolt", "pull"), ("plate", "lock-plate")}
    assert not found.consequences and not found.findings


def test_a_rename_without_was_is_something_gone_and_something_new():
    renamed = replaced("  bolt:\n    label", "  cap-bolt:\n    label").replace("{bolt}", "{cap-bolt}")
    assert {(change.old is None, change.new is None) for change in comparison(renamed).changes if change.sort == "figure"} == {(True, False), (False, True)}


def _shop():
    return [each for each in sources() if "drum" not in each.path]


def test_a_renamed_procedure_is_followed():
    old = proved_book()
    renamed = SourceFile("procedures/hoist/drum-press.yaml", replaced("after: none\n", "after: none\nwas: [drum]\n"))
    shop = [SourceFile(each.path, each.text.replace("hand-over: drum\n", "hand-over: drum-press\n")) for each in _shop()]
    new = proved([*shop, renamed], ([], []), lambda path: PictureFile())
    found = compared(("old", old), ("new", new))
    assert {(change.what, change.old, change.new) for change in found.changes} == {
        ("called otherwise", "drum", "drum-press"), ("machine hoist: hand over", "drum", "drum-press")}


def test_a_procedure_gone_takes_its_cautions_with_it():
    old = proved_book(extra={"procedures/hoist/look.yaml": OTHER})
    alone = SourceFile("procedures/hoist/look.yaml", OTHER.replace("after: [drum]", "after: none").replace("{drum/bolt}", "55"))
    new = proved([*_shop(), alone], ([], []), lambda path: PictureFile())
    found = compared(("old", old), ("new", new))
    assert ("a caution is gone",) in {change.reasons for change in found.changes}
    assert {sheet.new for sheet in found.sheets if sheet.procedure == "drum"} == {None}


def test_a_changed_figure_without_a_correction_is_a_finding_and_with_one_is_none():
    changed = replaced("is: 14 short ton", "is: 13 short ton")
    [finding] = comparison(changed).findings
    assert finding.rule == "correction-missing" and "about: drum/press" in finding.mend and finding.place.line == 20
    told_why = comparison(changed, extra=CORRECTION)
    assert not told_why.findings and [each.id for each in told_why.corrections] == ["COR-1"]
    assert told(told_why)["Drum press force, ceiling", ""].corrections == ("COR-1",)


def test_a_correction_of_old_does_not_account_for_a_new_change():
    old = proved_book(extra=CORRECTION)
    new = proved_book(replaced("is: 14 short ton", "is: 13 short ton"), CORRECTION)
    assert [finding.rule for finding in compared(("old", old), ("new", new)).findings] == ["correction-missing"]


def test_a_figure_withdrawn_needs_no_correction_yet():
    found = comparison(replaced("is: 55 lbf·ft", "is: 55 lbf·ft\n    in doubt: A bolt broke at it."))
    assert "correction-missing" not in {finding.rule for finding in found.findings}
    assert any(change.new and change.new.startswith("DO NOT USE") for change in found.changes)


def test_a_finding_of_the_new_book_only_is_told():
    found = comparison(replaced("cautions: [HZ-1]", "cautions: [HZ-7]"))
    assert [finding.rule for finding in found.findings] == ["unknown-reference"]


def test_a_loose_end_orphaned_is_a_stop():
    found = comparison(replaced("    closes: [plate]\n", ""))
    [orphan] = [change for change in found.changes if change.reasons == ("a loose end is orphaned",) and change.case == "late"]
    assert orphan.severity == "stop" and orphan.new == "no step ties it up"


def test_json_keeps_its_schema_and_says_all_of_it():
    jsonschema.Draft202012Validator.check_schema(SCHEMA)
    for new in (PROCEDURE, *(replaced(old, new) for old, new, _ in (*WORDS, *STOPS))):
        data = json.loads(as_data(comparison(new)))
        jsonschema.validate(data, SCHEMA)
    data["changes"][0]["severity"] = "grave"
    with pytest.raises(jsonschema.ValidationError):
        jsonschema.validate(data, SCHEMA)


HOSTILE = "<img src=x onerror=alert(1)> [a](javascript:alert(1)) `x` | ``y`` @someone #12 https://evil.example"


def test_markdown_holds_the_book_s_words_in_code_spans_only():
    found = as_markdown(comparison(replaced("label: Cap bolt", f"label: '{HOSTILE}'").replace("is: 55 lbf·ft", "is: 56 lbf·ft")))
    [line] = [line for line in found.splitlines() if "56 lbf·ft (" in line and "target" in line]
    cell = line.split(" | ")[1]
    assert "```<img src=x onerror=alert(1)> [a](javascript:alert(1)) `x` \\| ``y`` @someone #12 https://evil.example, target```" == cell


@pytest.mark.parametrize("text, shown", [("plain", "`plain`"), ("a`b", "``a`b``"), ("`", "`` ` ``"), ("a|b", "`a\\|b`"), ("a\nb\u202ec\x1b[31m", "`a?b?c?[31m`"), ("", "")])
def test_a_code_span_ends_where_its_text_ends(text, shown):
    assert code(text) == shown


def test_markdown_never_outgrows_a_job_summary():
    step = "  - id: s{0}\n    do: Measure the gap number {0} and write it down, then {1}.\n"
    long = "".join(step.format(number, "look " * 60 + "1") for number in range(6000))
    longer = long.replace("look 1.", "look 2.")
    text = as_markdown(comparison(PROCEDURE + longer, PROCEDURE + long))
    assert 900_000 < len(text.encode()) <= MOST_BYTES + 200 and "more, not listed here" in text.splitlines()[-1]


def test_a_terminal_is_told_nothing_it_would_obey():
    assert "\x1b" not in as_lines(comparison(replaced("label: Cap bolt", 'label: "Cap \\x1b[31mbolt"')))


def test_text_ends_with_how_grave_it_is():
    assert as_lines(comparison(replaced("is: 14 short ton", "is: 15 short ton"))).splitlines()[-1] == "Stop and look before anyone works by this"
    assert as_lines(comparison()).splitlines()[-1] == "Nothing has changed. Every printed sheet still holds."
