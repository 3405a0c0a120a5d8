"""What a result is worked out from is there: a figure of this procedure, of another, of the machine, or a result.

right:
    working: undersize
    standard size: measure/big-end.target
    force: press-force.last mark on BP50 main       # what the needle means there
wrong:
    standard size: measur/big-end.target      # no such procedure
    standard size: measure/big-end.tagret     # no such role
"""

from typing import Iterator

from ..core.book import Book
from ..core.figure import Spec
from ..core.finding import Finding, nearest
from ..core.last_mark import read_last_mark
from ..core.moved import told_where
from ..core.procedure import Procedure
from ..core.sentence import Reference, read_input_reference
from .unknown_reference import of_reference

ID = "unknown-input"


def check(book: Book, derived) -> Iterator[Finding]:
    return told_where(book, _unknown(book))


def _unknown(book: Book) -> Iterator[Finding]:
    for procedure in book.procedures.values():
        for computed in procedure.computed.values():
            for case in (case for varies in computed.inputs.values() for case in varies.cases):
                if reference := read_input_reference(case.value, case.place):
                    yield from _of(book, procedure, reference)


def _of(book: Book, procedure: Procedure, reference: Reference) -> Iterator[Finding]:
    target, mark = book.target(reference, procedure), read_last_mark(reference.part)
    if mark and isinstance(target, Spec) and target.kind == "press force":
        home = book.procedures.get((procedure.machine, reference.owner or procedure.id))
        cards = [(need.press, need.gauge) for need in home.needs.presses] if home else []
        if mark not in cards:
            yield Finding(reference.place, ID, f"'{' '.join(mark)}' is no press and gauge among the needs there",
                          nearest(" ".join(mark), [" ".join(card) for card in cards]))
        return
    for found in of_reference(book, book.machines[procedure.machine], procedure, reference):
        yield Finding(found.place, ID, found.message, found.mend)
