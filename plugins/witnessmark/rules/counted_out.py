"""What is counted out on to a job is counted in again, all of it, by the hand-over at the latest.

right:
    # hang.yaml
    tools:
      - {tool: Jack bolts, count: 4, counted: out}
    # lower.yaml, which comes after hang
    tools:
      - {tool: Jack bolts, count: 4, counted: in}
wrong:
    # hang.yaml
    tools:
      - {tool: Jack bolts, count: 4, counted: out}      # and nobody asks for them again
"""

from typing import Iterator

from ..core.book import Book
from ..core.finding import Finding
from ..core.loose_ends import Ledger
from ..core.procedure import Need, Procedure

ID = "counted-out"

Counted = list[tuple[Procedure, Need]]


def check(book: Book, derived) -> Iterator[Finding]:
    for ledger in book.ledgers.values():
        if not ledger.order.loops:
            yield from _machine(ledger)


def _machine(ledger: Ledger) -> Iterator[Finding]:
    out: dict[tuple[str, str], Counted] = {}
    back: dict[tuple[str, str], Counted] = {}
    for procedure in ledger.order.row:
        for need in (*procedure.needs.tools, *procedure.needs.supplies, *procedure.needs.parts):
            if need.counted and need.count is None:
                yield Finding(need.place, ID, f"'{need.name}' is counted, but not how many there are", "write 'count:' and the number")
            if need.counted in ("out", "in"):
                (out if need.counted == "out" else back).setdefault((need.sort, need.name), []).append((procedure, need))
    for key, taken in out.items():
        for procedure, need in taken:
            yield from _comes_back(ledger, procedure, need, back.get(key, []))
    for key, returned in back.items():
        for procedure, need in returned:
            if not any(ledger.order.comes_after(procedure.id, earlier.id) for earlier, _ in out.get(key, ())):
                yield Finding(need.place, ID, f"'{need.name}' is counted in, but no procedure before this one counts it out",
                              "write 'counted: out' with it where it goes out")


def _comes_back(ledger: Ledger, procedure: Procedure, need: Need, back: Counted) -> Iterator[Finding]:
    after = [(there, other) for there, other in back
             if ledger.order.comes_after(there.id, procedure.id) and ledger.in_time(there)]
    missing = [variant for variant in procedure.variants if not any(variant in there.variants for there, _ in after)]
    if missing:
        on = "" if len(missing) == len(procedure.variants) else f" on {' and '.join(missing)}"
        yield Finding(need.place, ID, f"'{need.name}' is counted out and never counted in again{on}",
                      "write 'counted: in' with it in the needs of the procedure that brings it back, which comes after this one")
    for there, other in after:
        if other.count and need.count and other.count != need.count:
            yield Finding(other.place, ID, f"{other.count} of '{need.name}' are counted in here, but {need.count} were counted out in {procedure.id}",
                          "write the same count at both")
