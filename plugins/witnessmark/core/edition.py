"""Editions: every sheet code that was ever issued, and what stood on that sheet.

One file a procedure, one line a code, written in the order of issue. The first line holds a sheet whole, each later one
what differs from the sheet it is `like`, so that a thousand small corrections stay small.
"""

import json
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace

from .difference import difference
from .place import Place

#: Where a site tells what old sheets are worth; a page from a stick takes it from there too.
TOLD_IN = "assets/witnessmark/editions"
#: A file that grew over this lets go of what stood on its oldest sheets, and keeps their codes.
LARGEST = 500_000
#: No file holds more codes than this.
MOST = 2_000


@dataclass(frozen=True, slots=True)
class Kept:
    """What stood on a sheet. `names` are the words that tell what its ids mean, for those that are gone since; `given` the
    digest of what its workings were given; `corrections` the ids of those that had already been made."""

    record: dict
    names: dict[str, str]
    given: str
    corrections: tuple[str, ...]

    def plain(self) -> dict:
        return {"record": self.record, "names": self.names, "given": self.given, "corrections": list(self.corrections)}


@dataclass(frozen=True, slots=True)
class Edition:
    """One code of one sheet, issued on a day. `kept` is None where what stood on it was let go of."""

    machine: str
    procedure: str
    variant: str
    code: str
    on: str
    kept: Kept | None
    place: Place = Place("")

    @property
    def sheet(self) -> tuple[str, str, str]:
        return self.machine, self.procedure, self.variant


def editions_path(machine: str, procedure: str) -> str:
    """Where the editions of a procedure stand, from the book's folder."""
    return f"site_data/editions/{machine}/{procedure}.jsonl"


def base_of(edition: Edition, before: list[Edition]) -> Edition | None:
    """The edition it is told by its difference to: the last kept one of its sheet, else the first kept one of its procedure."""
    kept = [other for other in before if other.kept]
    own = [other for other in kept if other.variant == edition.variant]
    return own[-1] if own else kept[0] if kept else None


def edition_lines(editions: Iterable[Edition]) -> str:
    """The text of a procedure's file; the same editions always give the same text."""
    editions = list(editions)
    texts = list(_lines(editions))
    while sum(map(len, texts)) > LARGEST and (oldest := _to_let_go(editions)) is not None:
        editions[oldest] = replace(editions[oldest], kept=None)
        texts = list(_lines(editions))
    return "".join(texts)


def _to_let_go(editions: list[Edition]) -> int | None:
    """The oldest kept edition that is not the last of its sheet."""
    last = {edition.variant: at for at, edition in enumerate(editions)}
    return next((at for at, edition in enumerate(editions) if edition.kept and last[edition.variant] != at), None)


def _lines(editions: list[Edition]) -> Iterator[str]:
    for at, edition in enumerate(editions):
        line: dict = {"sheet": edition.variant, "code": edition.code, "on": edition.on}
        if edition.kept:
            base = base_of(edition, editions[:at])
            line |= {"like": base.code, "but": difference(base.kept.plain(), edition.kept.plain())} if base else {"holds": edition.kept.plain()}
        yield json.dumps(line, ensure_ascii=False, separators=(",", ":")) + "\n"
