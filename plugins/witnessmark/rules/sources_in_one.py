"""Each source of a figure is one entry, so that its page lists all that rests on it.

right:
    source: [shop-practice p. 35, formulas]
wrong:
    source: shop-practice p. 35, formulas
    source: [shop-practice p. 35; formulas]
"""

import re
from typing import Iterator

from ..core.book import Book
from ..core.finding import Finding

ID = "sources-in-one"
_NEXT = re.compile(r"(?:[,;&+]|\band) *([\w-]+)")


def check(book: Book, derived) -> Iterator[Finding]:
    homes = (*(machine.figures for machine in book.machines.values()), *(procedure.specs for procedure in book.procedures.values()))
    for citation in (citation for specs in homes for spec in specs.values() for figure in spec.figures for citation in figure.sources):
        second = next((match for match in _NEXT.finditer(citation.where) if match[1] in book.sources), None)
        if second:
            whole = f"{citation.where[:second.start()].strip()}, {citation.where[second.start(1):].strip()}"
            yield Finding(citation.place, ID, f"'{second[1]}' is read as a place in '{citation.source}'",
                          f"write several sources in brackets with commas: [{citation.source} {whole}]".replace(" ,", ","))
