"""COR-1 put back and made again: what changes without an editor touching it (question 13 of the demonstration)."""

import pytest

from demo import history
from witnessmark.build import compared
from witnessmark.prove import check

BEFORE = (*history.FORCE, *history.FOLLOWED, *history.DIAL, *history.SUMP)
AFTER = (*history.FOLLOWED, *history.DIAL, *history.SUMP)
OWN = "locomotive 24-A"


@pytest.fixture(scope="module")
def books(tmp_path_factory):
    old, new = tmp_path_factory.mktemp("old"), tmp_path_factory.mktemp("new")
    return (check(history.as_it_stood(old, BEFORE, ("COR-1", "COR-2", "COR-3"))), check(history.as_it_stood(new, AFTER, ("COR-2", "COR-3"))))


@pytest.fixture(scope="module")
def found(books):
    return compared(("before", books[0]), ("after", books[1]))


def test_the_book_before_the_correction_was_whole(books):
    assert books[0].findings == ()


def test_only_force_and_ceiling_were_written(found):
    assert {(change.what, change.procedure) for change in found.changes} == {
        ("Fly-crank press force, ceiling", "flycrank-press-on"), ("Fly-crank press force, target", "flycrank-press-on")}
    [ceiling] = [change for change in found.changes if change.part == "ceiling"]
    assert (ceiling.old, ceiling.new, ceiling.case, ceiling.per_cent) == ("20 long ton", "18 long ton", "fly-crank 24-A", -10.0)
    assert {change.corrections for change in found.changes} == {("COR-1",)}


def test_the_marks_of_a_24_a_follow(found):
    [marks] = [change for change in found.consequences if change.what == "Fly-crank press force, BP50 main, marks"
               and OWN in change.case and "fly-crank 24-A" in change.case]
    assert marks.old == "1600 psi, 2500 psi, 3000 psi, 3300 psi, never pass 3900 psi"
    assert marks.new == "1500 psi, 2200 psi, 2700 psi, 3000 psi, never pass 3500 psi"
    assert marks.severity == "stop" and marks.corrections == ("COR-1",)


def test_the_nut_turns_to_re_check_by_itself_and_the_build_says_by_how_much(found):
    [nut] = [change for change in found.consequences if change.procedure == "flycrank-press-on" and change.what == "Fly-crank nut, target" and change.case == OWN]
    assert (nut.old, nut.new) == ("400 lbf·ft", "RE-CHECK: 400 lbf·ft (was checked against 16.5 long ton, the target is now 15 long ton)")
    assert any("81.4 % of the press force" in finding.message for finding in found.findings)
    assert not any(finding.rule == "correction-missing" for finding in found.findings)


def test_a_24_b_and_a_24_c_with_their_own_hub_keep_every_figure_and_mark(books):
    old, new = (book.derived["type-24", "flycrank-press-on"] for book in books)
    for variant in ("24-B", "24-C"):
        key = new.combinations[variant][0]
        assert set(dict(key).values()) == {variant} and key == old.combinations[variant][0]
        assert old.worked[key, "press-force"] == new.worked[key, "press-force"]
        assert old.worked[key, "nut"] == new.worked[key, "nut"]


def test_every_sheet_that_shows_a_mark_or_the_nut_of_a_24_a_is_superseded_and_no_other(found):
    stale = {(sheet.procedure, sheet.variant) for sheet in found.sheets}
    assert {procedure for procedure, _ in stale} == {"flycrank-press-on", "quartering-check", "strip-and-as-found"}
    assert ("flycrank-press-on", "24-A") in stale and all(sheet.old and sheet.new for sheet in found.sheets)
