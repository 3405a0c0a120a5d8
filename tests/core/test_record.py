"""The sheet code changes with all that is acted on, and with nothing else."""

import pytest
from small_book import PROCEDURE, SITE_DATA, sources

from witnessmark.core.record import fingerprint, sheet_record, step_meanings
from witnessmark.loading.load_book import load_book
from witnessmark.workings.derive import derive_book


def code(procedure: str = PROCEDURE, variant: str = "late", formulas: dict | None = None, **changed: str) -> str:
    book, found = load_book(sources(procedure, **changed))
    assert not found
    derived, found = derive_book(book)
    assert not found
    key = ("hoist", "drum")
    return fingerprint(sheet_record(book, book.procedures[key], derived, variant, formulas or {}))


WORDING = [("Tighten the bolts to", "Pull the bolts up to"), ("label: Cap bolt", "label: Bolt of the cap"),
           ("title: Press the drum", "title: Pressing the drum"), ("people: 2\n", "people: 2   # two of you\n"),
           ("because: The drum may come off again.", "because: It may have to come off.")]
ACTED_ON = [("55 lbf·ft", "50 lbf·ft"), ("is: 14 short ton", "is: 13 short ton"), ("late: 10 short ton", "late: 9 short ton"),
            ("grade: 5", "grade: 8"), ("surface: oiled\n", "surface: oiled\n    condition: warm\n"),
            ("cautions: [HZ-1]", "cautions: none"), ("people: 2", "people: 3"), ("never while open: [run]", "never while open: [turn by power]"),
            ("to {bolt}.", "to {bolt}, 3 times."), ("    cautions: [HZ-1]\n", "    cautions: [HZ-1]\n    hold point: Look along the hub.\n"),
            ("kept for the record: CF-9", "superseded by: COR-9")]


@pytest.mark.parametrize("old, new", WORDING)
def test_a_wording_fix_keeps_the_code(old, new):
    assert PROCEDURE.count(old) == 1
    assert code(PROCEDURE.replace(old, new)) == code()


@pytest.mark.parametrize("old, new", ACTED_ON)
def test_a_change_of_what_is_acted_on_changes_the_code(old, new):
    assert PROCEDURE.count(old) == 1
    assert code(PROCEDURE.replace(old, new)) != code()


def test_another_division_of_the_gauge_changes_the_code():
    coarse = SITE_DATA["site_data/presses.yaml"].replace("division: 100 psi", "division: 200 psi")
    assert "200 psi" in coarse and code(presses=coarse) != code()


def test_a_number_in_a_note_of_the_gauge_in_use_changes_the_code():
    def noted(note: str, gauge: str = "main") -> str:
        text = SITE_DATA["site_data/presses.yaml"] + "    spare: {full scale: 10000 psi, division: 100 psi, accuracy: 1.0 %}\n"
        at = f"    {gauge}: {{"
        assert text.count(at) == 1
        return code(presses=text.replace(at, f"{at}notes: {note}, "))
    assert noted("Close the cock above 150 bar.") != noted("Close the cock above 140 bar.") != code()
    assert noted("Close the cock above 150 bar.") == noted("Shut the cock above 150 bar.")
    assert noted("Close the cock above 150 bar.", "spare") == code()


def test_a_change_to_one_variant_leaves_the_other_sheet_true():
    changed = PROCEDURE.replace("late: 10 short ton", "late: 9 short ton")
    assert code(changed, "early") == code(variant="early")
    assert code(changed, "late") != code(variant="late")


def test_the_code_is_short_and_free_of_look_alikes():
    assert len(code()) == 9 and not set(code()) & set("ILOU")


def meanings(procedure: str = PROCEDURE, variant: str = "late") -> dict[str, str]:
    book, found = load_book(sources(procedure))
    derived, more = derive_book(book)
    assert not found + more
    return step_meanings(book, book.procedures["hoist", "drum"], derived["hoist", "drum"], variant)


@pytest.mark.parametrize("old, new", WORDING)
def test_a_wording_fix_keeps_the_meaning_of_every_step(old, new):
    assert meanings(PROCEDURE.replace(old, new)) == meanings()


CHANGED = [("is: 55 lbf·ft", "is: 50 lbf·ft", {"bolt"}), ("is: 14 short ton", "is: 13 short ton", {"press"}), ("grade: 5", "grade: 8", {"bolt"}),
           ("    cautions: [HZ-1]\n", "    cautions: none\n", {"press"}), ("never while open: [run]", "never while open: [turn by power]", {"bolt"}),
           ("to {bolt}.", "to {bolt}, 3 times.", {"bolt"}), ("people: 2", "people: 3", set())]


@pytest.mark.parametrize("old, new, steps", CHANGED)
def test_a_change_reaches_the_steps_that_act_on_it_and_no_other(old, new, steps):
    assert PROCEDURE.count(old) == 1
    before, after = meanings(), meanings(PROCEDURE.replace(old, new))
    assert {step for step in before if before[step] != after[step]} == steps


def test_a_step_keeps_its_meaning_on_the_variant_whose_figure_stays():
    changed = PROCEDURE.replace("late: 10 short ton", "late: 9 short ton")
    assert meanings(changed, "early") == meanings(variant="early")
    assert meanings(changed)["press"] != meanings()["press"]
