"""What a result is worked out from is there: a figure of this procedure, of another, of the machine, or a result.

right:
    working: undersize
    standard size: measure/big-end.target
wrong:
    standard size: measur/big-end.target      # no such procedure
    standard size: measure/big-end.tagret     # no such role
"""

from typing import Iterator

from ..core.book import Book
from ..core.finding import Finding
from ..core.moved import told_where
from ..core.sentence import read_input_reference
from .unknown_reference import of_reference

ID = "unknown-input"


def check(book: Book, derived) -> Iterator[Finding]:
    return told_where(book, _unknown(book))


def _unknown(book: Book) -> Iterator[Finding]:
    for procedure in book.procedures.values():
        machine = book.machines[procedure.machine]
        for computed in procedure.computed.values():
            for case in (case for varies in computed.inputs.values() for case in varies.cases):
                reference = read_input_reference(case.value, case.place)
                for found in of_reference(book, machine, procedure, reference) if reference else ():
                    yield Finding(found.place, ID, found.message, found.mend)
