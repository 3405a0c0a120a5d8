"""Procedures that wait for one another can none of them be begun.

right:
    # build.yaml
    after: [strip]
wrong:
    # build.yaml
    after: [strip]
    # strip.yaml
    after: [build]                # each waits for the other
"""

from typing import Iterator

from ..core.book import Book
from ..core.finding import Finding

ID = "order-loop"


def check(book: Book, derived) -> Iterator[Finding]:
    for order in book.orders.values():
        for loop in order.loops:
            first = order.procedures[loop[0]]
            place = first.key_places.get("after", first.place)
            if len(loop) == 1:
                yield Finding(place, ID, f"'{first.id}' is to be done after itself", "take it out of its own 'after:'")
                continue
            round_trip = ", and ".join(f"'{name}' after '{before}'" for name, before in zip(loop, loop[1:] + loop[:1]))
            yield Finding(place, ID, f"{round_trip}, so that none of them can be begun", "take one of them out of an 'after:'")
