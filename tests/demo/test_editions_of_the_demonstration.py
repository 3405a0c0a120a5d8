"""The demonstration's editions: old paper of 24-A is superseded by COR-1, and what the other corrections touched by them."""

import json

import pytest

from witnessmark.prove import check

from demo.conftest import BOOK

FIRST = "2022-10-15"


@pytest.fixture(scope="module")
def entries(site):
    return {code: entry for path, text in site.files.items() if path.startswith("assets/witnessmark/editions/") and len(path.rpartition("/")[2]) == 7
            for code, entry in json.loads(text)["codes"].items()}


def first(entries, procedure: str, variant: str) -> dict:
    [entry] = [entry for entry in entries.values() if (entry["procedure"], entry["variant"], entry["on"]) == (procedure, variant, FIRST)]
    return entry


def test_the_editions_are_whole():
    checked = check(BOOK)
    assert len(checked.book.editions) == 21 and not [each for each in checked.findings if each.rule.startswith("edition")]


@pytest.mark.parametrize("procedure, variant, name, what, old", [
    ("flycrank-press-on", "24-A", "COR-1", "Fly-crank press force, ceiling", "20 long ton"),
    ("flycrank-press-on", "24-A", "COR-1", "Fly-crank press force, target", "16.5 long ton"),
    ("flycrank-press-on", "24-A", "COR-1", "Fly-crank nut, target", "400 lbf·ft"),
    ("final-drive-build", "24-B", "COR-2", "Bevel backlash as the dial reads it, window", "0.0095 to 0.0160 in"),
    ("fill-and-engine-test", "24-A", "COR-3", "Sump oil, target, level", "6.62 litres"),
])
def test_a_sheet_of_the_first_edition_tells_what_was_corrected(entries, procedure, variant, name, what, old):
    entry = first(entries, procedure, variant)
    assert entry["state"] == "superseded" and name in [each["id"] for each in entry["corrections"]] and entry["already done"] == "inspect"
    assert (old, [name]) in [(change["old"], change["why"]) for change in entry["changes"] if change["what"] == what]


def test_the_marks_and_the_setting_of_the_wrench_are_told(entries):
    changes = first(entries, "flycrank-press-on", "24-A")["changes"]
    assert ("1600 psi, 2500 psi, 3000 psi, 3300 psi, never pass 3900 psi", "1500 psi, 2200 psi, 2700 psi, 3000 psi, never pass 3500 psi") in [
        (change["old"], change["new"]) for change in changes if change["sort"] == "mark"]
    assert ("370 lbf·ft", "330 lbf·ft") in [(change["old"], change["new"]) for change in changes if change["sort"] == "setting"]


def test_cor_3_leaves_the_fill_sheet_of_a_24_c_true(entries):
    assert not any(change["what"].startswith("Sump oil") for change in first(entries, "fill-and-engine-test", "24-C")["changes"])
