"""A machine that is called otherwise: `was` makes it a rename for comparing, for old sheets, for a correction sent by its old name."""

import json

import pytest
from compared_books import proved_book
from small_book import PROCEDURE, SITE_DATA, sources

from witnessmark.build import codes, compared, new_editions, records, render
from witnessmark.changes.from_text import answer_to
from witnessmark.changes.since import since_files
from witnessmark.core.correction_text import read_correction
from witnessmark.core.picture import PictureFile
from witnessmark.loading.source_files import SourceFile
from witnessmark.pages.address import procedure_url, sheet_url
from witnessmark.prove import proved

MACHINE = SITE_DATA["site_data/machines/hoist.yaml"]
LOADED = PROCEDURE.replace("read {press}.", "read {press}, under {hoist/load}.")


def renamed(procedure: str = LOADED, was: str = "was: hoist\n", extra: dict[str, str] | None = None):
    """The smallest book with its machine called yard-hoist."""
    files = [each for each in sources() if "hoist" not in each.path]
    files += [SourceFile("site_data/machines/yard-hoist.yaml", was + MACHINE),
              SourceFile("procedures/yard-hoist/drum.yaml", procedure.replace("machine: hoist", "machine: yard-hoist").replace("{hoist/load}", "{yard-hoist/load}"))]
    files += [SourceFile(path, text) for path, text in (extra or {}).items()]
    return proved(sorted(files, key=lambda file: file.path), ([], []), lambda path: PictureFile())


def test_it_is_a_rename_and_nothing_else():
    found = compared(("old", proved_book(LOADED)), ("new", renamed()))
    assert renamed().findings == () and found.verdict == "wording" and not found.consequences and not found.findings
    assert {(change.what, change.old, change.new) for change in found.changes} == {("called otherwise", "hoist", "yard-hoist")}
    assert {(sheet.machine, sheet.variant, bool(sheet.old), bool(sheet.new)) for sheet in found.sheets} == {
        ("yard-hoist", "early", True, True), ("yard-hoist", "late", True, True)}      # the id is part of the address on paper


def test_without_was_one_machine_is_gone_and_one_is_new():
    found = compared(("old", proved_book(LOADED)), ("new", renamed(was="")))
    assert found.verdict == "stop" and {(sheet.machine, sheet.old is None, sheet.new is None) for sheet in found.sheets} == {
        ("hoist", False, True), ("yard-hoist", True, False)}


def test_what_changed_with_it_is_told_all_the_same():
    found = compared(("old", proved_book(LOADED)), ("new", renamed(LOADED.replace("is: 14 short ton", "is: 15 short ton"))))
    assert [change.reasons for change in found.changes if change.severity == "stop"] == [("a ceiling is raised",)]


def test_a_sheet_printed_under_the_old_id_is_still_known():
    first = new_editions(proved_book(LOADED), "2024-01-02")
    old = codes(proved_book(LOADED))["hoist", "drum", "late"]

    def told(checked):
        files = since_files(checked.book, records(checked), codes(checked), procedure_url, sheet_url)
        return json.loads(files[f"assets/witnessmark/editions/{old[:2]}.json"])["codes"][old]

    same = told(renamed(extra=first))
    assert (same["state"], same["machine"], same["page"]) == ("same", "yard-hoist", "yard-hoist/drum/") and same["now"] != old
    harder = told(renamed(LOADED.replace("is: 14 short ton", "is: 13 short ton"), extra=first))
    assert (harder["state"], [change["what"] for change in harder["changes"] if change["sort"] == "figure"]) == ("superseded", ["Drum press force, ceiling"])
    assert told(renamed(was="", extra=first))["state"] == "gone"


def test_a_correction_sent_from_an_old_page_finds_the_figure():
    checked = renamed()
    text = "Procedure: hoist/drum\nSpec: press\nRole: ceiling\nPrinted figure: 14 short ton\nNew figure and unit: 13 short ton\n"
    assert answer_to(read_correction(text), checked.book, checked.texts).sure


@pytest.mark.parametrize("was, says", [("was: yard-hoist\n", "'yard-hoist', an old name of 'yard-hoist', is its name still"),
                                       ("was: [hoist, hoist]\n", "'hoist' is an old name of 'yard-hoist' and of 'yard-hoist'")])
def test_an_old_name_that_is_another_s_is_a_finding(was, says):
    [line] = [finding.line() for finding in renamed(was=was).findings if finding.rule == "was-taken"]
    assert says in line


def test_who_still_writes_the_old_name_is_told_the_new_one():
    stale = [SourceFile("procedures/yard-hoist/drum.yaml", PROCEDURE), SourceFile("site_data/machines/yard-hoist.yaml", "was: hoist\n" + MACHINE)]
    found = proved([*(each for each in sources() if "hoist" not in each.path), *stale], ([], []), lambda path: PictureFile()).findings
    assert any("there is no machine 'hoist', it is yard-hoist now" in finding.line() for finding in found)
    sentence = [finding.line() for finding in renamed(LOADED.replace("{hoist/load}", "{hoist/weight}")).findings]
    assert [line for line in sentence if "there is no procedure or machine 'hoist', it is yard-hoist now" in line]


def test_its_old_name_stands_in_the_data():
    [machine] = json.loads(render(renamed(), "t", "t", None).files["book.json"])["machines"]
    assert machine["was"] == ["hoist"]
