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
from ..core.procedure import Need

ID = "counted-out"

#: Procedure -> the needs in which one thing is counted.
Counted = dict[str, list[Need]]


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
                counted = (out if need.counted == "out" else back).setdefault((need.sort, need.name), {})
                counted.setdefault(procedure.id, []).append(need)
    for key, taken in out.items():
        yield from _comes_back(ledger, taken, back.get(key, {}))
    for key, returned in back.items():
        taken = sum(map(ledger.order.bit, out.get(key, ())))
        for name, needs in returned.items():
            if not ledger.order.before[name] & taken:
                yield Finding(needs[0].place, ID, f"'{needs[0].name}' is counted in, but no procedure before this one counts it out",
                              "write 'counted: out' with it where it goes out")


def _comes_back(ledger: Ledger, taken: Counted, back: Counted) -> Iterator[Finding]:
    order = ledger.order
    in_time = sum(order.bit(name) for name in back if ledger.in_time(order.procedures[name]))
    for name, needs in taken.items():
        procedure, need = order.procedures[name], needs[0]
        after = order.of(order.behind[name] & in_time)
        missing = [variant for variant in procedure.variants if not any(variant in there.variants for there in after)]
        if missing:
            on = "" if len(missing) == len(procedure.variants) else f" on {' and '.join(missing)}"
            yield Finding(need.place, ID, f"'{need.name}' is counted out and never counted in again{on}",
                          "write 'counted: in' with it in the needs of the procedure that brings it back, which comes after this one")
        for there in after:
            other = back[there.id][0]
            if other.count and need.count and other.count != need.count:
                yield Finding(other.place, ID, f"{other.count} of '{need.name}' are counted in here, but {need.count} were counted out in {name}",
                              "write the same count at both")
