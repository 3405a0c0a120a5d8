"""A figure says whose it is. One that nobody answers for cannot be corrected.

right:
    is: 55 lbf·ft
    source: shop-practice p. 31
wrong:
    is: 55 lbf·ft
"""

from typing import Iterator

from ..core.book import Book
from ..core.figure import NotKnown
from ..core.finding import Finding

ID = "figure-without-source"


def check(book: Book, derived) -> Iterator[Finding]:
    specs = [*(spec for machine in book.machines.values() for spec in machine.figures.values()),
             *(spec for procedure in book.procedures.values() for spec in procedure.specs.values())]
    for spec in specs:
        for figure in spec.figures:
            known = figure.worth is not None and not all(isinstance(worth, NotKnown) for worth in figure.worth.values())
            if known and not figure.sources:
                yield Finding(figure.place, ID, f"the {figure.role} of '{spec.id}' names no source",
                              "write 'source:' and the source's id with the page")
