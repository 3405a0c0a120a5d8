"""An order for one pair of hands: of all that is free, what ties up most; then what the longest chain waits for; then by name."""

from collections import defaultdict
from heapq import heappop, heappush
from typing import NamedTuple

from .loose_ends import Ledger
from .procedure import Procedure

#: Why a procedure stands where it does: nothing else was free, it ties up what is loose, the longest chain waits for it, or by name.
ONLY, TIES, CHAIN, NAME = "only", "ties", "chain", "name"


class Turn(NamedTuple):
    """One procedure in the order. `ties` names the loose ends it closes then."""

    procedure: Procedure
    why: str
    ties: tuple[str, ...]


def lone_order(ledger: Ledger) -> list[Turn]:
    """Every procedure of the machine once, each after all it waits for. The same book gives the same order."""
    order = ledger.order
    closes: dict[str, set[str]] = defaultdict(set)                  # procedure -> what is open now that it closes
    closers = {name: {tie.procedure.id for tie in ties if tie.procedure is not ledger.left[name].procedure}
               for name, ties in ledger.ties.items()}
    leaves: dict[str, list[str]] = defaultdict(list)
    for left in ledger.left.values():
        leaves[left.procedure.id].append(left.name)
    waiting = {name: len(before) for name, before in order.waits.items()}
    heap: list[tuple[int, int, str]] = []
    free: set[str] = set()
    turns: list[Turn] = []

    def offer(name: str) -> None:
        heappush(heap, (-len(closes[name]), -order.chain[name], name))

    for name, count in waiting.items():
        if not count:
            free.add(name)
            offer(name)
    while heap:
        ties, chain, name = heappop(heap)
        if name not in free or -ties != len(closes[name]):
            continue                                                # taken, or offered again since with another count
        free.discard(name)
        turns.append(Turn(order.procedures[name], _why(name, closes, order.chain, free), tuple(sorted(closes[name]))))
        changed: set[str] = set()
        for end in tuple(closes[name]):
            for other in closers[end]:
                closes[other].discard(end)
                changed.add(other)
        for end in leaves[name]:
            for other in closers.get(end, ()):
                closes[other].add(end)
                changed.add(other)
        for other in order.followers(name):
            if name in order.waits[other]:
                waiting[other] -= 1
                if not waiting[other]:
                    free.add(other)
                    changed.add(other)
        for other in changed & free:
            offer(other)
    return turns


def _why(name: str, closes: dict[str, set[str]], chain: dict[str, int], others: set[str]) -> str:
    if not others:
        return ONLY
    most = max(len(closes[other]) for other in others)
    if len(closes[name]) > most:
        return TIES
    alike = [other for other in others if len(closes[other]) == len(closes[name])]
    return CHAIN if all(chain[name] > chain[other] for other in alike) else NAME
