"""What keeps a sheet code and what changes it, over every sentence, figure and formula there is to change."""

import re

from compared_books import proved_book
from hypothesis import given, strategies as st
from small_book import PROCEDURE, SITE_DATA

from witnessmark.build import records
from witnessmark.core.record import fingerprint, sheet_record
from witnessmark.workings.registry import WORKINGS

MARKS = ("title: ", "label: ", "do: ", "state: ", "because: ", "if forgotten: ")
WORDS = [match.span() for match in re.finditer("(?<=" + ")[A-Z][a-z]+|(?<=".join(MARKS) + ")[A-Z][a-z]+", PROCEDURE)]
FIGURES = [match.span() for match in re.finditer(r"(?<=[ :])\d+(?= short ton| lbf·ft)", PROCEDURE)]
PLAIN = st.text("abcdefghijklmnopqrstuvwxyz", min_size=2, max_size=12).filter(lambda word: word not in ("none", "yes", "no"))


def codes(procedure: str = PROCEDURE, **changed: str) -> dict[str, str]:
    checked = proved_book(procedure, **changed)
    assert not [finding for finding in checked.findings if finding.severity == "error"], checked.findings
    return {sheet[2]: fingerprint(record) for sheet, record in records(checked).items()}


def test_there_is_something_to_change():
    assert len(WORDS) >= 8 and len(FIGURES) >= 5


@given(st.sampled_from(WORDS), PLAIN)
def test_any_other_word_keeps_the_code(span, word):
    assert codes(PROCEDURE[:span[0]] + word.capitalize() + PROCEDURE[span[1]:]) == codes()


@given(st.sampled_from(FIGURES), st.integers(1, 9))
def test_any_other_figure_changes_the_code_of_the_sheets_that_show_it(span, tenth):
    """A tenth more, too small to be refused: what is shown as written counts as written."""
    old = PROCEDURE[span[0]:span[1]]
    now = codes(PROCEDURE[:span[1]] + f".{tenth}" + PROCEDURE[span[1]:])
    line = PROCEDURE[PROCEDURE.rindex("\n", 0, span[0]):PROCEDURE.index("\n", span[1])]
    shown_on = {"early", "late"}
    if "early: " in line:
        shown_on = {"early"} if PROCEDURE[:span[0]].endswith("early: ") else {"late"}
    assert {variant for variant in now if now[variant] != codes()[variant]} == shown_on, (old, line)


@given(st.sampled_from(["area: 5.00", "rated pressure: 10000", "division: 100", "accuracy: 1.0 %"]), st.sampled_from(["0.13", "0.15", "0.17"]))
def test_what_a_mark_rests_on_changes_the_code(press, factor):
    text = SITE_DATA["site_data/presses.yaml"]
    value = {"area: 5.00": "area: 5.50", "rated pressure: 10000": "rated pressure: 12000", "division: 100": "division: 200", "accuracy: 1.0 %": "accuracy: 1.5 %"}[press]
    now = codes(presses=text.replace(press, value, 1))
    assert press == "rated pressure: 10000" or all(now[variant] != codes()[variant] for variant in now)
    surfaces = SITE_DATA["site_data/surfaces.yaml"]
    now = codes(surfaces=surfaces.replace(factor, f"{factor}5", 1))
    assert all(now[variant] != codes()[variant] for variant in now)


def test_another_formula_behind_a_sheet_changes_its_code_and_one_behind_none_does_not():
    checked = proved_book()
    key = ("hoist", "drum")

    def with_formulas(**digests):
        return fingerprint(sheet_record(checked.book, checked.book.procedures[key], checked.derived, "late", digests))

    used = {run.working for runs in checked.derived[key].worked.values() for run in runs}
    assert used == {"press-card", "tightening-torque"}
    for working in WORKINGS:
        assert (with_formulas(**{working: "new"}) != with_formulas()) == (working in used)
