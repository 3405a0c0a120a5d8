"""The serials of a carrier's variants touch without gap and without overlap: each machine has exactly one card.

right:
    24-A: {serials: 1001 to 1389}
    24-B: {serials: 1390 to 2215}
wrong:
    24-A: {serials: 1001 to 1389}
    24-B: {serials: 1380 to 2215}
"""

from typing import Iterator

from ..core.book import Book
from ..core.finding import WARNING, Finding
from ..core.machine import Carrier, Variant

ID = "serials-in-order"


def check(book: Book, derived) -> Iterator[Finding]:
    for machine in book.machines.values():
        for carrier in machine.carriers.values():
            yield from _carrier(carrier)


def _carrier(carrier: Carrier) -> Iterator[Finding]:
    with_serials = [variant for variant in carrier.variants.values() if variant.serials]
    if carrier.told_by.strip() == "serial":
        for variant in carrier.variants.values():
            if not variant.serials:
                yield Finding(variant.place, ID, f"the {carrier.title} is told by its serial, but '{variant.id}' has no serials",
                              "write 'serials:' such as 1390 to 2215")
    ordered = sorted(with_serials, key=lambda variant: variant.serials.first or 0)
    for before, after in zip(ordered, ordered[1:]):
        yield from _pair(before, after)


def _pair(before: Variant, after: Variant) -> Iterator[Finding]:
    last, first = before.serials.last, after.serials.first
    if last is None or first is None or first <= last:
        yield Finding(after.place, ID, f"the serials of {after.id} ({after.serials}) overlap those of {before.id} ({before.serials})",
                      "let one range begin where the other ends")
    elif first > last + 1:
        lost = f"serial {last + 1} belongs" if first == last + 2 else f"serials {last + 1} to {first - 1} belong"
        yield Finding(after.place, ID, f"{lost} to no variant, between {before.id} and {after.id}",
                      "close the gap, or add the variant that is missing", WARNING)
