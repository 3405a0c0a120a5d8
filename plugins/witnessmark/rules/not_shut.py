"""What must be shut before a procedure starts is closed by something that is surely done before it.

right:
    # try.yaml
    after: [build]                # build closes strip/pawl-wedged
    must be shut: [strip/pawl-wedged]
wrong:
    # try.yaml
    after: [strip]                # build may still be to come
    must be shut: [strip/pawl-wedged]
"""

from typing import Iterator

from ..core.book import Book
from ..core.finding import Finding

ID = "not-shut"


def check(book: Book, derived) -> Iterator[Finding]:
    for (machine, _), procedure in book.procedures.items():
        ledger = book.ledgers[machine]
        place = procedure.key_places.get("must be shut", procedure.place)
        for name in procedure.must_be_shut:
            left = ledger.named(procedure, name)
            if left is None or ledger.order.loops:
                continue                            # unknown-reference or order-loop says so
            if left.procedure is procedure:
                yield Finding(place, ID, f"'{left.end.id}' is left by this procedure itself, so that it cannot be shut before it starts",
                              "name it under 'closes:' of the step that ties it up")
                continue
            still = {variant: places for variant in ledger.variants(left)
                     if variant in procedure.variants and (places := ledger.open_places(left, variant, procedure))}
            if still:
                closers = sorted({tie.procedure.id for variant in still for tie in ledger.ties_after(left, variant)
                                  if ledger.order.beside(procedure.id) & ledger.order.bit(tie.procedure.id)})
                yield Finding(place, ID, f"'{left.name}' must be shut before this starts, but nothing that is surely done by then closes it{ledger.where(left, still)}",
                              f"write {' or '.join(closers)} under 'after:'" if closers else "close it in a procedure that comes before this one")
