"""One of the two books that are compared, and what need not be compared."""

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field

from ..core.book import Book
from ..core.derived import Derived
from ..core.finding import Finding

Sheet = tuple[str, str, str]
_OWNER = re.compile(r"([A-Za-z0-9][\w-]*)[/#]")
#: Files of site_data by which no sheet is changed.
_TOLD_ONLY = ("site_data/corrections.yaml", "site_data/conflicts.yaml", "site_data/sources.yaml", "site_data/editions/")


@dataclass(frozen=True)
class Side:
    """`name` as the reader gave it. `texts` are the sources by path, pictures as digests among them; `record` makes the
    record of a sheet, `given` tells what its workings were given."""

    name: str
    book: Book
    derived: Mapping[tuple[str, str], Derived]
    findings: tuple[Finding, ...]
    texts: Mapping[str, str]
    record: Callable[[Sheet], dict]
    kept: dict[Sheet, dict] = field(default_factory=dict)

    def record_of(self, sheet: Sheet) -> dict:
        if sheet not in self.kept:
            self.kept[sheet] = self.record(sheet)
        return self.kept[sheet]

    def variants(self, machine: str, procedure: str) -> tuple[str, ...]:
        return tuple(self.derived[machine, procedure].combinations) if (machine, procedure) in self.book.procedures else ()


def touched(old: Side, new: Side) -> set[tuple[str, str]]:
    """The procedures, of either book, that may differ: their own source does, or that of one they rest on, or the shop's."""
    everything = {*old.book.procedures, *new.book.procedures}
    paths = {*old.texts, *new.texts}
    differing = {path for path in paths if old.texts.get(path) != new.texts.get(path)}
    if any(not path.startswith(("procedures/", *_TOLD_ONLY)) for path in differing):
        return everything
    found = {key for key in everything if _path(old, key) in differing or _path(new, key) in differing}
    users: dict[tuple[str, str], set[tuple[str, str]]] = {}
    for side in (old, new):
        for key, procedure in side.book.procedures.items():
            for owner in {*_OWNER.findall(side.texts.get(procedure.place.path, "")), *procedure.after}:
                users.setdefault((key[0], owner), set()).add(key)
    waiting = list(found)
    while waiting:
        for user in users.get(waiting.pop(), ()):
            if user not in found:
                found.add(user)
                waiting.append(user)
    return found


def _path(side: Side, key: tuple[str, str]) -> str:
    procedure = side.book.procedures.get(key)
    return procedure.place.path if procedure else ""
