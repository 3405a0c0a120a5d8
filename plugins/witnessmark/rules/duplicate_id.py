"""A name stands for one thing. Two steps, loose ends or notes of one name cannot be told apart by a tag or a link.

right:
    - id: bolt-cover
    - id: bolt-cover-again
wrong:
    - id: bolt-cover
    - id: bolt-cover
"""

from typing import Iterable, Iterator

from ..core.book import Book
from ..core.finding import Finding
from ..core.place import Place

ID = "duplicate-id"


def check(book: Book, derived) -> Iterator[Finding]:
    for procedure in book.procedures.values():
        if len({step.id for step in procedure.steps}) < len(procedure.steps):
            yield from _twice("step", ((step.id, step.key_places.get("id", step.place)) for step in procedure.steps))
        yield from _twice("loose end", ((end.id, end.place) for step in procedure.steps for end in step.leaves))
        yield from _twice("note", ((note.id, note.place) for note in procedure.notes))
        for name, computed in procedure.computed.items():
            if name in procedure.specs:
                yield Finding(computed.place, ID, f"'{name}' is a spec and a computed result", "give one of them another name")


def _twice(what: str, named: Iterable[tuple[str, Place]]) -> Iterator[Finding]:
    seen: dict[str, Place] = {}
    for name, place in named:
        if name in seen:
            yield Finding(place, ID, f"the {what} '{name}' is there already, in line {seen[name].line}", "give one of them another name")
        else:
            seen[name] = place
