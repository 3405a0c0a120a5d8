"""Twenty slips that a mechanic makes in the demonstration's own sources, and the one sentence that each is answered with.

Each is one slip at one place, and the answer is the whole answer: nothing else in the book is blamed for it."""

import shutil
from pathlib import Path

import pytest

from witnessmark.prove import check
from witnessmark.loading.load_book import FOLDERS

ROOT = Path(__file__).parent.parent
CRANK = "procedures/type-24/flycrank-press-on.yaml"
CHECK = "    check: The rag stays white. The fit is dry."
SET_KEY = "do: Set the key with a gap over its top."

# What stands in the source, what the mechanic wrote, and the answer: `line of what is written: column: finding`.
SLIPS = {
    "the unit left off": ("is: 0.006 to 0.012 in", "is: 0.006 to 0.012", 9,
        "error: the unit is missing (clearance), write in, mm, thou, µm, cm or m after the number [quantity]"),
    "a ton, as everyone says": ("24-A: 18 long ton, 24-B: 22", "24-A: 18 ton, 24-B: 22", 20,
        "error: “ton” could be more than one unit, write long ton (2,240 lb), short ton (2,000 lb) or tonne (1,000 kg) [quantity]"),
    "a dash for a range": ("is: 0.006 to 0.012 in", "is: 0.006-0.012 in", 9,
        "error: “0.006-0.012 in”: a dash between two figures can be read as a minus or a fraction, write “to” between the figures, such as 0.018 to 0.030 in [quantity]"),
    "the range backwards": ("is: 0.006 to 0.012 in", "is: 0.012 to 0.006 in", 9,
        "error: “0.012 to 0.006 in”: the range runs backwards, write the smaller figure first [quantity]"),
    "a force where a torque belongs": ("24-A: {24-A: 360 lbf·ft,", "24-A: {24-A: 360 lbf,", 24,
        "error: “lbf” measures press force, not torque, write lbf·ft, lbf·in, N·m or kgf·m [quantity]"),
    "one inch and a half with a space": ("is: at least 1.50 in", "is: at least 1 1/2 in", 9,
        "error: “at least 1 1/2 in”: a whole number and a fraction with a space between, join them with a dash, such as 1-1/2 [quantity]"),
    "the wrong pitch": ("thread: 1-1/2-12 UNF", "thread: 1-1/2-13 UNF", 13,
        "error: “1-1/2-13 UNF”: UNF at this size has 12 threads per inch, write 1-1/2-12 UNF or 1-1/2-13 UNS [thread]"),
    "one hub forgotten": ("{24-A: 18 long ton, 24-B: 22 long ton, 24-C: 26 long ton}", "{24-A: 18 long ton, 24-B: 22 long ton}", 13,
        "error: 'press-force' (ceiling) has no figure for Fly-crank 24-C, add one, or write '24-C: none' where there is deliberately none [no-figure]"),
    "the source's line deleted": ("        source: former-fitter leaf 11\n", "", None,
        "error: the ceiling of 'press-force' names no source, write 'source:' and the source's id with the page [figure-without-source]"),
    "max for ceiling": ("- role: ceiling\n        by: fly-crank", "- role: max\n        by: fly-crank", 15,
        "error: 'max' is not known here, use one of: ceiling, floor, found, reject, stop, target, ... [unknown-word]"),
    "a caution in small letters": ("cautions: [HZ-07]", "cautions: [hz-07]", 5,
        "error: there is no caution 'hz-07', did you mean 'HZ-07'? [unknown-reference]"),
    "two cautions without brackets": ("cautions: [HZ-07]", "cautions: HZ-07, HZ-02", 15,
        "error: 'HZ-07, HZ-02' is read as one name, write several in brackets: [HZ-07, HZ-02] [wrong-shape]"),
    "a number sign": ("do: Degrease taper and bore and", "do: Degrease taper #1 and", 24,
        "error: '#1 and wipe with white rag.' is left out: a space and a # begin a note that nobody sees, "
        "put quotes around the whole text, or put the note on a line of its own [text-lost]"),
    "Note: in the text": ("do: Degrease taper and bore and", "do: Degrease taper. Note: bore and", 29,
        "error: a colon inside the text cuts it in two, put quotes around the whole text [yaml]"),
    "no space after the colon": (CHECK, CHECK.replace("check: The", "check:The"), None,
        "error: no space stands after 'check:', put a space after the colon [yaml]"),
    "a tab": (CHECK, "\t" + CHECK.strip(), 1, "error: the line is indented with a tab, use spaces [yaml]"),
    "a dash forgotten before a step": ("  - id: set-key\n", "    id: set-key\n", 5,
        "error: 'id' stands twice, keep one of them, or write '- id:' where a new entry begins [duplicate-key]"),
    "a brace not closed": ("{key-gap.window}", "{key-gap.window", 12,
        "error: a '{' stands here without its other half, write both, as in {spec} or {spec.role}, or none [bad-reference]"),
    "tight by feel": (SET_KEY, "do: Tap the key in until it is snug.", 9,
        "error: 'snug' is no figure, write the spec in braces, such as {cover-bolts}, or a number with its unit [tight-without-figure]"),
    "the day written as at home": ("tried: desk", "tried: {serial: 1604, on: 11/05/2024}", 27,
        "error: '11/05/2024' is not a date, write a date such as 2024-05-11 [bad-date]"),
}


@pytest.fixture(scope="module")
def book(tmp_path_factory):
    folder = tmp_path_factory.mktemp("book")
    for name in FOLDERS:
        shutil.copytree(ROOT / name, folder / name)
    return folder


def test_there_are_twenty():
    assert len(SLIPS) == 20


@pytest.mark.parametrize("name", SLIPS)
def test_a_slip_is_answered_once_and_in_words(book, name):
    stands, wrote, column, answer = SLIPS[name]
    text = (ROOT / CRANK).read_text(encoding="utf-8")
    assert stands in text
    wrong = text.replace(stands, wrote, 1)
    (book / CRANK).write_text(wrong, encoding="utf-8")
    try:
        [finding] = check(book).findings
    finally:
        (book / CRANK).write_text(text, encoding="utf-8")
    assert finding.line().partition(": ")[2] == answer
    assert finding.place.path == CRANK
    if column is not None:
        line = wrong.count("\n", 0, wrong.index(wrote)) + 1
        assert (finding.place.line, finding.place.column) == (line, column)
