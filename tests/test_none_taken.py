"""A figure taken from a result for some variants, and deliberately none for the others."""

from small_book import PROCEDURE, sources

from witnessmark.loading.load_book import load_book
from witnessmark.rules.table import check_book
from witnessmark.workings.derive import derive_book

TAKEN = """\
  rated:
    label: Rated load again
    kind: force
    role: found
    from: {early: none, late: hoist/load}
    source: shop
"""


def derived_with(extra: str):
    book, found = load_book(sources(PROCEDURE.replace("steps:\n", extra + "steps:\n")))
    derived, more = derive_book(book)
    worths = {dict(key)["hoist"]: each[0].worth for (key, spec), each in derived["hoist", "drum"].resolved.items() if spec == "rated"}
    return worths, [finding.line() for finding in (*found, *more, *check_book(book, derived))]


def test_none_is_no_figure_and_the_others_are_taken():
    worths, lines = derived_with(TAKEN)
    assert lines == []
    assert type(worths["early"]).__name__ == "NoFigure" and worths["late"].typed() == "2000 lbf"


def test_a_variant_left_out_is_still_a_gap():
    worths, lines = derived_with(TAKEN.replace("early: none, ", ""))
    assert worths["early"] is None
    assert len(lines) == 1 and "no figure for" in lines[0] and "write 'early: none'" in lines[0]


def test_a_name_that_is_no_reference_is_still_told():
    _, lines = derived_with(TAKEN.replace("none", "nothing"))
    assert any("'nothing'" in line for line in lines), lines
