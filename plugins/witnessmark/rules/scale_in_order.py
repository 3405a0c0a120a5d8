"""What an instrument shows begins under its end, in steps smaller than that: a comma or point out of place turns it round.

right:
    full scale: 10,000 psi
    division: 100 psi
wrong:
    full scale: 10.000 psi      # ten, and the division a hundred
    division: 100 psi
"""

from typing import Iterator

from ..core.book import Book
from ..core.finding import Finding
from ..core.place import Place
from ..core.quantity import Quantity

ID = "scale-in-order"


def check(book: Book, derived) -> Iterator[Finding]:
    for press in book.presses.values():
        for gauge in press.gauges.values():
            yield from _in_order(gauge.place, "division", gauge.division, "full scale", gauge.full_scale)
    for wrench in book.wrenches.values():
        yield from _in_order(wrench.place, "graduation", wrench.graduation, "highest setting", wrench.highest)
        yield from _in_order(wrench.place, "lowest setting", wrench.lowest, "highest setting", wrench.highest)
    for scale in book.scales.values():
        yield from _in_order(scale.place, "division", scale.division, "highest reading", scale.highest)


def _in_order(place: Place, small: str, less: Quantity, large: str, more: Quantity) -> Iterator[Finding]:
    if less.si_low >= more.si_low:
        yield Finding(place, ID, f"the {small} ({less.typed()}) is not smaller than the {large} ({more.typed()})",
                      "read both off the instrument again; a point makes decimals, and 10.000 is ten")
