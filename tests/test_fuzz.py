"""A short run of the fuzzer, and the proof that it would see what it looks for. `make fuzz` is the long one."""

import fuzz
import pytest

from witnessmark.core import quantity
from witnessmark.loading import load_book, slips
from witnessmark.loading.source_files import SourceFile

PATH = "site_data/wrenches.yaml"


@pytest.mark.parametrize("numbers", [range(start, start + 30) for start in range(0, 120, 30)], ids=str)
def test_no_mutation_raises_or_changes_a_number_in_silence(numbers):
    ran = [fuzz.run(0, number) for number in numbers]
    assert [wrong for _, _, wrongs in ran for wrong in wrongs] == []
    assert sum(files for files, _, _ in ran) >= 90 and sum(silent for _, silent, _ in ran) > 5


def test_the_same_seed_spoils_the_same():
    assert fuzz.spoilt(fuzz.Random("0-7")) == fuzz.spoilt(fuzz.Random("0-7")) != fuzz.spoilt(fuzz.Random("0-8"))


def differing(text: str) -> list[str]:
    file = SourceFile(PATH, text)
    return fuzz.differing(load_book.load_book([file])[0], file)


WRENCH = "TW9: {title: Long wrench, lowest: 20 lbf·ft, highest: 150 lbf·ft, graduation: 5 lbf·ft, accuracy: 4 %}\n"


def test_a_book_read_as_written_does_not_differ():
    assert differing(WRENCH) == []


def test_a_number_read_as_another_is_seen(monkeypatch):
    quantity.read_quantity.cache_clear()
    right = quantity._number
    monkeypatch.setattr(quantity, "_number", lambda typed, kind: 2 * right(typed, kind))
    assert any("was read as" in said for said in differing(WRENCH))
    quantity.read_quantity.cache_clear()


def test_a_run_that_raises_is_told(monkeypatch):
    monkeypatch.setattr(fuzz, "derive_book", lambda book: 1 / 0)
    assert "ZeroDivisionError" in fuzz.run(0, 1)[2][0]


def test_words_lost_behind_a_sign_are_seen_when_no_finding_tells(monkeypatch):
    monkeypatch.setattr(slips, "may_hold_notes", lambda text: False)
    said = differing("TW9:\n  title: Long wrench\n  lowest: 20 lbf·ft\n  highest: 150 lbf·ft\n  graduation: 5 lbf·ft\n  accuracy: 4 % #3\n")
    assert said == ["written and not read: {'3': 1}"]
