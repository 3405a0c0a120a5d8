"""A force to press to needs a force never to pass: without it nobody can say where to stop.

right:
    figures:
      - {role: target, is: 18 long ton, source: shop-practice}
      - {role: ceiling, is: 22 long ton, source: former-fitter}
wrong:
    figures:
      - {role: target, is: 18 long ton, source: shop-practice}
"""

from typing import Iterator

from ..core.book import Book
from ..core.finding import Finding

ID = "press-force-without-ceiling"


def check(book: Book, derived) -> Iterator[Finding]:
    for procedure in book.procedures.values():
        for spec in procedure.specs.values():
            in_force = {figure.role for figure in spec.figures if figure.in_force()}
            if any(figure.role == "ceiling" and figure.in_doubt for figure in spec.figures):
                continue                                        # withdrawn on purpose: the card refuses
            asked = "a target" if "target" in in_force else "an accept band" if "window" in in_force else None
            if spec.kind == "press force" and asked and "ceiling" not in in_force:
                yield Finding(spec.place, ID, f"'{spec.id}' has {asked} and no ceiling to rely on",
                              "add a figure with 'role: ceiling' and its source, from which the never-pass mark is worked out")
