"""What is left loose is tied up by a named later step, for each variant and place, before or in the machine's hand-over.

right:
    # build.yaml
    leaves:
      - id: tab-flat
        each: side
        ...
    # prove.yaml, which comes after build
    - id: bend-tab
      each: side
      closes: [build/tab-flat]
wrong:
    # prove.yaml
    - id: bend-tab
      at: left                    # the right tab stays flat
      closes: [build/tab-flat]
"""

from typing import Iterator

from ..core.book import Book
from ..core.finding import Finding, nearest
from ..core.loose_ends import Ledger, Left

ID = "loose-end-open"


def check(book: Book, derived) -> Iterator[Finding]:
    for machine, ledger in book.ledgers.items():
        if ledger.order.loops:
            continue                                # order-loop first: until then nothing comes surely before anything
        if ledger.left and book.machines[machine].hand_over is None:
            yield Finding(book.machines[machine].place, ID, "no procedure ends the work on this machine, so that nothing says by when its loose ends are tied up",
                          "write 'hand-over:' and the procedure that ends it")
        for left in ledger.left.values():
            yield from _left(ledger, left)


def _left(ledger: Ledger, left: Left) -> Iterator[Finding]:
    ties = ledger.ties[left.name]
    closes_in = left.end.closes_in
    if closes_in and closes_in not in ledger.order.procedures:
        yield Finding(left.end.place, ID, f"'{left.end.id}' says that it is closed in '{closes_in}', and there is no such procedure",
                      nearest(closes_in, ledger.order.procedures))
    if ties and closes_in in ledger.order.procedures and not any(tie.procedure.id == closes_in for tie in ties):
        yield Finding(left.end.place, ID, f"'{left.end.id}' says that it is closed in {closes_in}, but no step there closes it",
                      f"write 'closes: [{left.name}]' at that step, or name the procedure that does it under 'closes in:'")
    for name in left.end.again:
        other = ledger.named(left.procedure, name)
        if other and not _shut_by_then(ledger, other, left):
            yield Finding(left.end.place, ID, f"'{left.end.id}' opens '{other.name}' again, but it is not surely left and shut by then",
                          "take it out of 'opens again:', or let this procedure come after the one that shuts it")
    too_soon = [tie for tie in ties if not ledger.follows(tie, left)]
    for tie in too_soon:
        place = tie.step.key_places.get("closes", tie.step.place)
        if tie.procedure is left.procedure:
            yield Finding(place, ID, f"'{tie.step.id}' closes '{left.end.id}' before it is left", "move the step that leaves it to before this one")
        else:
            yield Finding(place, ID, f"'{tie.step.id}' closes '{left.name}', but nothing says that {tie.procedure.id} comes after {left.procedure.id}",
                          f"write {left.procedure.id} under 'after:'")
    never = {variant: places for variant in ledger.variants(left) if (places := ledger.never_closed(left, variant))}
    if not never or too_soon:
        return
    where = ledger.where(left, never)
    late = sorted({tie.procedure.id for variant in never for tie in ledger.ties_after(left, variant) if not ledger.in_time(tie.procedure)})
    if late:
        yield Finding(left.end.place, ID, f"'{left.end.id}' is tied up only in {', '.join(late)}, which need not be done before the hand-over{where}",
                      f"let {ledger.machine.hand_over} come after it")
    else:
        yield Finding(left.end.place, ID, f"nothing ties up '{left.end.id}' after it is left{where}",
                      f"write 'closes: [{left.name}]' at the step that does it")


def _shut_by_then(ledger: Ledger, other: Left, left: Left) -> bool:
    if other.procedure is left.procedure:
        begun = other.at < left.at
    else:
        begun = ledger.order.comes_after(left.procedure.id, other.procedure.id)
    return begun and not any(ledger.open_places(other, variant, left.procedure, left.at) for variant in ledger.variants(left)
                             if variant in ledger.variants(other))
