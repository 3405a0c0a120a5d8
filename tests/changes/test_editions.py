"""Editions: appended, small, read back, proved; and what an old sheet code is told."""

import json
from pathlib import Path
from random import Random

import jsonschema
import pytest
from compared_books import proved_book, replaced
from small_book import PROCEDURE, SITE_DATA

from witnessmark.build import codes, compared, missing_editions, new_editions, records, render
from witnessmark.changes.issue import issue
from witnessmark.changes.since import since_files
from witnessmark.core import edition as editions
from witnessmark.core.canonical import canonical
from witnessmark.core.record import fingerprint
from witnessmark.loading.read_editions import read_editions
from witnessmark.loading.report import Report
from witnessmark.pages.address import procedure_url, sheet_url

PATH = "site_data/editions/hoist/drum.jsonl"
SCHEMA = json.loads((Path(__file__).parents[2] / "plugins/witnessmark/pages/static/editions.schema.json").read_text(encoding="utf-8"))
CORRECTIONS = "site_data/corrections.yaml"


def correction(name: str = "COR-1", about: str = "drum/press", done: str = "redo", on: str = "2024-02-03") -> str:
    return f"{name}:\n  on: {on}\n  about: {about}\n  old: It was another.\n  new: It is this.\n  reason: A hub split.\n  if already done: {done}\n"


def issued(procedure: str = PROCEDURE, before: dict[str, str] | None = None, on: str = "2024-01-02", **changed: str) -> dict[str, str]:
    """The files of the book with `before` already there, after an edition on a day."""
    checked = proved_book(procedure, before, **changed)
    assert not [finding for finding in checked.findings if finding.rule.startswith("edition")]
    return {**(before or {}), **new_editions(checked, on)}


def told(checked, code: str) -> dict:
    files = since_files(checked.book, records(checked), codes(checked), procedure_url, sheet_url)
    return json.loads(files[f"assets/witnessmark/editions/{code[:2]}.json"])["codes"][code]


def code(procedure: str = PROCEDURE, variant: str = "late", **changed: str) -> str:
    return codes(proved_book(procedure, **changed))["hoist", "drum", variant]


def test_every_sheet_is_issued_once_with_its_day():
    first = issued()
    lines = [json.loads(line) for line in first[PATH].splitlines()]
    assert [(line["sheet"], line["code"], line["on"]) for line in lines] == [(variant, code(variant=variant), "2024-01-02") for variant in ("early", "late")]
    assert issued(before=first, on="2025-05-05") == first and issued() == first


def test_what_was_written_is_read_back_as_it_was():
    first = issued()
    checked = proved_book(extra=first)
    read = checked.book.editions["hoist", "drum"]
    assert {each.sheet: canonical(each.kept.record) for each in read} == {sheet: canonical(record) for sheet, record in records(checked).items()}
    assert not checked.findings and editions.edition_lines(read) == first[PATH]


def test_later_editions_are_appended_and_hold_what_changed_only():
    first = issued()
    second = issued(replaced("is: 55 lbf·ft", "is: 56 lbf·ft"), first, "2024-03-04")
    assert second[PATH].startswith(first[PATH])
    added = second[PATH][len(first[PATH]):].splitlines()
    assert len(added) == 2 and all(len(line) < 900 < len(first[PATH].splitlines()[0]) for line in added)


def test_a_sheet_whose_words_only_changed_is_in_an_edition_already():
    first = issued()
    assert issued(replaced("Tighten the bolts", "Pull the bolts"), first, "2024-03-04") == first


def test_a_file_lets_go_of_the_oldest_sheets_and_keeps_their_codes(monkeypatch):
    files = issued()
    monkeypatch.setattr(editions, "LARGEST", len(files[PATH]) + 3000)
    for torque in range(56, 76):
        files = issued(replaced("is: 55 lbf·ft", f"is: {torque} lbf·ft"), files, f"2024-03-{torque - 50:02}")
    lines = [json.loads(line) for line in files[PATH].splitlines()]
    assert len(lines) == 42 and len(files[PATH]) <= editions.LARGEST
    assert set(lines[0]) == {"sheet", "code", "on"} and "but" in lines[-1]
    checked = proved_book(replaced("is: 55 lbf·ft", "is: 75 lbf·ft"), files)
    assert not [finding for finding in checked.findings if finding.rule.startswith("edition")]
    entry = told(checked, lines[1]["code"])
    assert (entry["state"], entry["changes"], entry["left out"], entry["already done"]) == ("superseded", [], None, "inspect")


BROKEN = [("\"on\":\"2024-01-02\"", "\"on\":\"2024-13-02\""), ("55 lbf", "65 lbf"), ("{\"sheet\":\"early\"", "{\"sheet\":\"late\""), ("\"record\":1", "\"record\":2"),
          ("\"like\":\"", "\"like\":\"0"), ("{\"sheet\"", "{\"sheet"), ("{\"sheet\":\"early\"", "{\"sheet\":{}"), ("\"people\":2", "\"people\":[2]")]


@pytest.mark.parametrize("old, new", BROKEN)
def test_a_line_that_is_not_what_was_written_is_a_finding(old, new):
    text = issued()[PATH]
    assert old in text
    found = [finding for finding in proved_book(extra={PATH: text.replace(old, new, 1)}).findings if finding.rule == "edition-broken"]
    assert found and found[0].place.path == PATH and "witnessmark edition" in found[0].mend


@pytest.mark.parametrize("text", ["", "null\n", "[]\n", "[" * 100_000 + "\n", "{}\n", "\0\n", "\u202e\n", '{"sheet":"late","code":"0000-0000","on":"2024-01-02","holds":' + '{"a":' * 5000 + "1" + "}" * 5000 + "}\n"])
def test_a_file_that_is_no_edition_is_a_finding_and_nothing_else(text):
    checked = proved_book(extra={PATH: text})
    assert {finding.rule for finding in checked.findings} <= {"edition-broken", "deceiving-sign"} and checked.findings
    assert checked.book.editions.get(("hoist", "drum"), ()) == ()


def test_one_code_in_two_lines_is_a_finding():
    text = issued()[PATH]
    [finding] = proved_book(extra={PATH: text + text.splitlines()[0] + "\n"}).findings
    assert (finding.rule, finding.place.line) == ("edition-twice", 3)


def test_the_sheets_of_another_procedure_cannot_stand_in_a_file():
    found = proved_book(extra={"site_data/editions/hoist/other.jsonl": issued()[PATH]}).findings
    assert found and {finding.rule for finding in found} == {"edition-broken"}


def test_a_sheet_in_no_edition_is_missed_before_a_release_only():
    changed = replaced("late: 10 short ton", "late: 9 short ton")
    checked = proved_book(changed, issued())
    assert not checked.findings
    [finding] = missing_editions(checked)
    assert finding.rule == "edition-missing" and "the sheet for late has the code" in finding.message
    assert not missing_editions(proved_book(changed, issued(changed, issued())))


def test_an_old_code_is_told_what_changed_why_and_what_to_do_about_work_done():
    changed = replaced("is: 14 short ton", "is: 13 short ton")
    checked = proved_book(changed, {**issued(changed, issued(), "2024-02-03"), CORRECTIONS: correction()})
    entry = told(checked, code())
    assert (entry["state"], entry["on"], entry["now"], entry["now on"]) == ("superseded", "2024-01-02", code(changed), "2024-02-03")
    assert (entry["page"], entry["sheet"], entry["title"]) == ("hoist/drum/", "hoist/drum/sheet/late/", "Press the drum")
    [ceiling] = [change for change in entry["changes"] if change["sort"] == "figure"]
    assert (ceiling["what"], ceiling["old"], ceiling["old also"], ceiling["new"], ceiling["why"]) == (
        "Drum press force, ceiling", "14 short ton", "124 kN", "13 short ton", ["COR-1"])
    assert [each["id"] for each in entry["corrections"]] == ["COR-1"] and entry["already done"] == "redo"


@pytest.mark.parametrize("done, other, said", [("fine", False, "fine"), ("inspect", False, "inspect"), ("fine", True, "inspect"), ("redo", True, "redo")])
def test_what_no_correction_accounts_for_is_at_least_to_be_inspected(done, other, said):
    changed = replaced("is: 14 short ton", "is: 13 short ton")
    changed = replaced("people: 2", "people: 3", changed) if other else changed
    assert told(proved_book(changed, {**issued(), CORRECTIONS: correction(done=done)}), code())["already done"] == said


def test_a_correction_made_before_the_sheet_was_printed_says_nothing_of_what_changed_after():
    first = issued(before={CORRECTIONS: correction()})
    changed = replaced("is: 14 short ton", "is: 13 short ton")
    entry = told(proved_book(changed, {**first, CORRECTIONS: correction() + correction("COR-2", done="fine", on="2024-04-05")}), code())
    assert [each["id"] for each in entry["corrections"]] == ["COR-2"]


def test_what_is_gone_is_told_by_the_words_it_had():
    gone = PROCEDURE[:PROCEDURE.index("  - id: lock\n")]
    entry = told(proved_book(gone, issued()), code())
    assert {(change["what"], change["new"]) for change in entry["changes"] if change["sort"] == "step"} == {("step “Bend the plate over.”", None)}


def test_a_code_that_holds_again_is_the_same_and_one_that_was_only_renamed_too():
    back = issued(PROCEDURE, issued(replaced("is: 55 lbf·ft", "is: 56 lbf·ft"), issued(), "2024-02-03"), "2024-03-04")
    assert told(proved_book(extra=back), code())["state"] == "same"
    renamed = replaced("  bolt:\n    label", "  cap-bolt:\n    was: [bolt]\n    label").replace("{bolt}", "{cap-bolt}")
    entry = told(proved_book(renamed, issued()), code())
    assert (entry["state"], entry["now"] == code()) == ("same", False)


def test_a_sheet_that_is_no_more_is_gone_and_one_never_issued_is_known():
    alone = replaced("after: none\n", "after: none\napplies to: [late]\n")
    entry = told(proved_book(alone, issued()), code(variant="early"))
    assert (entry["state"], entry["now"], entry["sheet"], entry["already done"]) == ("gone", None, None, "inspect")
    fresh = told(proved_book(), code())
    assert (fresh["state"], fresh["on"], fresh["now on"], fresh["changes"]) == ("same", None, None, [])


def test_a_change_to_one_variant_leaves_the_other_s_sheet_true():
    changed = replaced("late: 10 short ton", "late: 9 short ton")
    checked = proved_book(changed, issued())
    assert told(checked, code(variant="early"))["state"] == "same" and told(checked, code())["state"] == "superseded"


def test_the_files_keep_their_schema_and_the_index_names_them():
    changed = replaced("is: 14 short ton", "is: 13 short ton")
    files = render(proved_book(changed, {**issued(), CORRECTIONS: correction()}), "t", "t", None).files
    mine = {path: text for path, text in files.items() if path.startswith("assets/witnessmark/editions/")}
    assert json.loads(mine.pop("assets/witnessmark/editions/editions.schema.json")) == SCHEMA
    jsonschema.Draft202012Validator.check_schema(SCHEMA)
    for text in mine.values():
        jsonschema.validate(json.loads(text), SCHEMA)
    index = json.loads(mine.pop("assets/witnessmark/editions/index.json"))
    assert index["newest"] == "2024-01-02" and {f"assets/witnessmark/editions/{prefix}.json" for prefix in index["prefixes"]} == set(mine)
    with pytest.raises(jsonschema.ValidationError):
        jsonschema.validate({**index, "newest": "soon"}, SCHEMA)


def test_a_result_moved_by_the_tool_alone_is_told_as_such():
    """An edition whose marks are others than this tool works out from the same figures, as one issued by another version would be."""
    checked = proved_book()
    old = {sheet: json.loads(json.dumps(record).replace('"mark at 100 %", "4000 psi"', '"mark at 100 %", "4100 psi"')) for sheet, record in records(checked).items()}
    then = proved_book(extra=issue(checked.book, checked.derived, old, "2023-01-01"))
    found = compared(("then", then), ("now", then))
    assert found.verdict == "stop" and not found.changes
    assert {(change.what, change.severity, change.reasons) for change in found.by_tool} == {
        ("Drum press force, P20 main, marks", "stop", ("moved by this version of the tool",))}
    assert not compared(("then", checked), ("now", checked)).by_tool


def test_a_source_that_changed_is_not_laid_at_the_tool_s_door():
    first = issued()
    then = proved_book(replaced("is: 55 lbf·ft", "is: 56 lbf·ft"), first, presses=replaced("area: 5.00 in²", "area: 6.00 in²", SITE_DATA["site_data/presses.yaml"]))
    assert not compared(("then", then), ("now", then)).by_tool


JUNK = (None, True, -1, "", "x", "{", "<b>", [], [[]], ["x"], [["x", "x"]], {}, {"x": "x"}, [{}], "9" * 400, [None] * 9)


def leaves(data, path=()):
    """The path of everything in plain data, of maps and lists themselves too."""
    yield path
    for key, below in (data.items() if isinstance(data, dict) else enumerate(data) if isinstance(data, list) else ()):
        yield from leaves(below, (*path, key))


def with_junk(data, path, junk):
    if not path:
        return junk
    copy = dict(data) if isinstance(data, dict) else list(data)
    copy[path[0]] = with_junk(data[path[0]], path[1:], junk)
    return copy


def test_a_record_forged_with_its_own_code_is_a_finding_or_is_told_and_nothing_is_raised():
    """Whoever sends a change can give any record the code that belongs to it."""
    kept = json.loads(issued()[PATH].splitlines()[0])["holds"]
    checked = proved_book()
    sheets, random = records(checked), Random(7)
    paths = [path for path in leaves(kept["record"]) if path and path[0] not in ("machine", "procedure", "variant")]
    told_of = 0
    for path in random.choices(paths, k=150):
        record = with_junk(kept["record"], path, random.choice(JUNK))
        line = {"sheet": "early", "code": fingerprint(record), "on": "2024-01-02", "holds": {**kept, "record": record}}
        report = Report()
        read = read_editions("hoist", "drum", PATH, json.dumps(line) + "\n", report)
        checked.book.editions["hoist", "drum"] = tuple(read)
        assert len(read) == 1 or [finding.rule for finding in report.findings] == ["edition-broken"]
        files = since_files(checked.book, sheets, codes(checked), procedure_url, sheet_url)
        jsonschema.validate(json.loads(files[f"assets/witnessmark/editions/{line['code'][:2]}.json"] if read else files["assets/witnessmark/editions/index.json"]), SCHEMA)
        told_of += len(read)
    assert told_of > 50
