"""A figure struck through names the record that tells why, and that record must be about this figure.

right:
    flycrank-press-on.yaml:  press-force: ... kept for the record: CF-1
    conflicts.yaml:          CF-1: about: flycrank-press-on/press-force
wrong:
    flycrank-press-on.yaml:  nut: ... kept for the record: CF-1
    conflicts.yaml:          CF-1: about: flycrank-press-on/press-force
"""

from typing import Iterable, Iterator

from ..core.book import Book
from ..core.figure import Spec
from ..core.finding import Finding

ID = "record-about-another"


def check(book: Book, derived) -> Iterator[Finding]:
    for machine in book.machines.values():
        yield from _specs(book, machine.id, machine.figures.values())
    for procedure in book.procedures.values():
        yield from _specs(book, procedure.id, procedure.specs.values())


def _specs(book: Book, owner: str, specs: Iterable[Spec]) -> Iterator[Finding]:
    for spec in specs:
        for figure in spec.figures:
            conflict = book.conflicts.get(figure.kept_for_record or "")
            correction = book.corrections.get(figure.superseded_by or "")
            for record, about, word in ((conflict, (conflict.about,) if conflict else (), "kept for the record by"),
                                        (correction, correction.about if correction else (), "superseded by")):
                if record and (owner, spec.id) not in {(each.owner, each.name) for each in about}:
                    yield Finding(figure.place, ID, f"the {figure.role} of '{spec.id}' is {word} {record.id}, which is about "
                                                    f"{', '.join(map(str, about)) or 'nothing'}",
                                  f"name the record that is about {owner}/{spec.id}, or add this to what {record.id} is about")
