"""What a machine has left loose, by name: who leaves it and who ties it up."""

from typing import NamedTuple

from .book import Book
from .procedure import LooseEnd, Procedure, Step


class Left(NamedTuple):
    """A loose end with the step and procedure that leave it."""

    procedure: Procedure
    step: Step
    end: LooseEnd

    @property
    def name(self) -> str:
        return f"{self.procedure.id}/{self.end.id}"


def left_by(procedure: Procedure) -> list[Left]:
    """All that the procedure leaves loose, in the order of its steps."""
    return [Left(procedure, step, end) for step in procedure.steps for end in step.leaves]


def named(book: Book, home: Procedure, name: str) -> Left | None:
    """The loose end that `procedure/end` means in `home`; a bare `end` is its own, or else the only one of that name on the machine."""
    owner, _, end = name.rpartition("/")
    if owner or any(left.end.id == end for left in left_by(home)):
        there = book.procedures.get((home.machine, owner)) if owner else home
        return next((left for left in left_by(there) if left.end.id == end), None) if there else None
    found = [left for other in book.procedure_ids[home.machine] for left in left_by(book.procedures[home.machine, other])
             if left.end.id == end]
    return found[0] if len(found) == 1 else None
