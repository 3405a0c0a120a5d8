"""A name that went elsewhere: the finding says where, in another procedure of the machine too."""

import pytest
from small_book import PROCEDURE, sources

from witnessmark.loading.load_book import load_book
from witnessmark.loading.source_files import SourceFile
from witnessmark.rules.table import check_book
from witnessmark.workings.derive import derive_book

OTHER = PROCEDURE.replace("after: none", "after: [drum]").replace("    grade: 5\n", "    grade: 5\n    was: [CAP]\n").replace(
    "  - id: bolt\n", "  - id: bolt\n    was: [tighten]\n").replace("      - id: plate\n", "      - id: plate-2\n        was: [tag-1]\n").replace("closes: [plate]", "closes: [plate-2]").replace(
    "  press:\n    label", "  seat:\n    label").replace("{press.target} and read {press}", "{seat.target}").replace(
    "      - {role: target, is: 30 short ton, source: chart p. 3, kept for the record: CF-9}\n", "").replace("title:", "was: [old-cap]\ntitle:")


def said(drum: str, other: str = OTHER) -> list[str]:
    book, found = load_book([*sources(drum), SourceFile("procedures/hoist/cap.yaml", other)])
    derived, more = derive_book(book)
    return [finding.line() for finding in (*found, *more, *check_book(book, derived))]


def test_the_book_of_these_cases_misses_no_name():
    assert not any("there is no" in line for line in said(PROCEDURE))


@pytest.mark.parametrize("stands, wrong, says", [
    ("to {bolt}.", "to {CAP}.", "there is no figure 'CAP', it is cap/bolt now"),
    ("to {bolt}.", "to {seat.floor}.", "there is no figure 'seat', it stands in 'cap': write cap/seat"),
    ("to {bolt}.", "to {cap/CAP}.", "there is no figure 'CAP', it is cap/bolt now"),
    ("    leaves:", "    go to: tighten\n    leaves:", "there is no step 'tighten', it is cap#bolt now"),
    ("closes: [plate]", "closes: [plate, tag-1]", "there is no loose end 'tag-1', it is cap/plate-2 now"),
    ("after: none", "after: [old-cap]", "there is no procedure 'old-cap', it is cap now"),
    ("to {bolt}.", "to {nowhere}.", "there is no figure 'nowhere', use one of: bolt, press"),
])
def test_the_finding_says_where_the_name_went(stands, wrong, says):
    assert PROCEDURE.count(stands) == 1
    lines = said(PROCEDURE.replace(stands, wrong))
    assert any(says in line for line in lines), lines
