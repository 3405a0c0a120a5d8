"""What on each procedure's page is acted on otherwise than in the edition before: where a bar stands in the margin.

A sheet that is in no edition yet is laid beside the last one; a sheet that is, beside the one it took the place of. Words alone make no bar.
"""

from collections.abc import Iterator, Mapping
from typing import NamedTuple

from ..core.acted import BROKEN, Key, acted
from ..core.book import Book
from ..core.procedure import Procedure
from .change import differing
from .renamed import in_todays_names, names_since

_FIGURES = ("figure", "mark", "setting", "result", "spec")
_STEPS = ("step", "loose end", "caution")


class Bars(NamedTuple):
    """`since` is the day of the edition it is laid beside; specs, results and steps by their ids."""

    since: str
    figures: frozenset[str]
    steps: frozenset[str]


def bars(book: Book, records: Mapping[tuple[str, str, str], dict],
         codes: Mapping[tuple[str, str, str], str]) -> dict[tuple[str, str], Bars]:
    """By machine and procedure; a procedure of which nothing changed, or of which no edition is kept, is not in it."""
    found = {}
    for key, editions in book.editions.items():
        if procedure := book.procedures.get(key):
            sheets = [sheet for variant in procedure.variants if (sheet := (*key, variant)) in records]
            told = [one for sheet in sheets for one in _of_sheet(
                book, procedure, [each for each in editions if each.variant == sheet[2] and each.kept], records[sheet], codes[sheet])]
            names = {sorts: frozenset(name for _, each in told for name in [each.name] if each.sort in sorts) for sorts in (_FIGURES, _STEPS)}
            if names[_FIGURES] or names[_STEPS]:
                found[key] = Bars(max(on for on, _ in told), names[_FIGURES], names[_STEPS])
    return found


def _of_sheet(book: Book, procedure: Procedure, editions: list, record: dict, code: str) -> Iterator[tuple[str, Key]]:
    """What differs on one sheet, with the day of the edition that it is laid beside."""
    before = next((each for each in reversed(editions) if each.code != code), None)
    if before is None:
        return
    try:
        then = acted(in_todays_names(before.kept.record, names_since(book, procedure.machine)))
    except BROKEN:
        return
    for each in differing(then, acted(record)):
        yield before.on, each.key
