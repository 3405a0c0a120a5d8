"""The order of a machine's procedures, from what each says must be done first.

Sets of procedures are whole numbers with one bit for each, at its place in `Order.row`: a machine of a thousand
procedures has a million pairs, and each question about them is then one operation.
"""

from heapq import heapify, heappop, heappush
from typing import Iterable

from .procedure import Procedure


class Order:
    """`row` holds every procedure after those it waits for, by id where either may come first.

    `loops` are the procedures that wait for one another; one wish of each loop is dropped so that the rest has an order.
    """

    def __init__(self, procedures: Iterable[Procedure]):
        self.procedures = dict(sorted((procedure.id, procedure) for procedure in procedures))
        self.loops: list[tuple[str, ...]] = []
        #: Procedure -> those named under its `after` that there are, each once.
        self.direct = {name: tuple(dict.fromkeys(other for other in one.after if other in self.procedures))
                       for name, one in self.procedures.items()}
        #: The same without the wishes that loops cost.
        self.waits = {name: set(before) for name, before in self.direct.items()}
        self._followers: dict[str, list[str]] = {name: [] for name in self.procedures}
        for name, before in self.direct.items():
            for other in before:
                self._followers[other].append(name)
        self.row = [self.procedures[name] for name in self._rows()]
        self.place = {procedure.id: number for number, procedure in enumerate(self.row)}
        self._masks()

    def _rows(self) -> list[str]:
        left = {name: len(before) for name, before in self.waits.items()}
        free = [name for name, count in left.items() if not count]
        heapify(free)
        done: list[str] = []
        while len(done) < len(left):
            if not free:
                free.append(self._cut_a_loop({name for name, count in left.items() if count}, left))
            name = heappop(free)
            done.append(name)
            for other in self._followers[name]:
                if name in self.waits[other]:
                    left[other] -= 1
                    if not left[other]:
                        heappush(free, other)
        return done

    def _cut_a_loop(self, stuck: set[str], left: dict[str, int]) -> str:
        """Walks back from the first procedure that cannot begin until one comes twice, and frees the first of that loop."""
        walk: list[str] = []
        name = min(stuck)
        while name not in walk:
            walk.append(name)
            name = min(other for other in self.waits[name] if other in stuck)
        loop = walk[walk.index(name):]
        first = min(loop)
        loop = loop[loop.index(first):] + loop[:loop.index(first)]
        self.loops.append(tuple(loop))
        self.waits[first] -= stuck
        left[first] = 0
        return first

    def _masks(self) -> None:
        #: Procedure -> all that must be done before it, directly or through others; and all that come after it.
        self.before: dict[str, int] = {}
        self.behind: dict[str, int] = dict.fromkeys(self.procedures, 0)
        #: How many stand in the longest chain that begins with it.
        self.chain: dict[str, int] = dict.fromkeys(self.procedures, 1)
        self.stage: dict[str, int] = {}
        for procedure in self.row:
            mask, stage = 0, 0
            for other in self.waits[procedure.id]:
                mask |= self.before[other] | 1 << self.place[other]
                stage = max(stage, self.stage[other] + 1)
            self.before[procedure.id], self.stage[procedure.id] = mask, stage
        for procedure in reversed(self.row):
            bit = 1 << self.place[procedure.id] | self.behind[procedure.id]
            for other in self.waits[procedure.id]:
                self.behind[other] |= bit
                self.chain[other] = max(self.chain[other], self.chain[procedure.id] + 1)

    def comes_after(self, later: str, earlier: str) -> bool:
        """True where `later` waits for `earlier`, directly or through others."""
        return bool(self.before[later] >> self.place[earlier] & 1)

    def bit(self, name: str) -> int:
        return 1 << self.place[name]

    def of(self, mask: int) -> list[Procedure]:
        """The procedures of a set, in the order of the row."""
        found = []
        while mask:
            low = mask & -mask
            found.append(self.row[low.bit_length() - 1])
            mask ^= low
        return found

    def beside(self, name: str) -> int:
        """The set of those that may be under way at the same time: neither waits for the other."""
        return ((1 << len(self.row)) - 1) & ~(self.before[name] | self.behind[name] | self.bit(name))

    def followers(self, name: str) -> list[str]:
        """Those that name it under `after`, by id."""
        return self._followers[name]

    def nearest(self, name: str) -> tuple[str, ...]:
        """Those it waits for that no other of them waits for already: enough to draw."""
        through = 0
        for other in self.direct[name]:
            through |= self.before[other]
        return tuple(other for other in self.direct[name] if not through >> self.place[other] & 1)

    def stages(self) -> list[list[Procedure]]:
        """Groups that may go side by side: each once all groups before it are done."""
        found: list[list[Procedure]] = [[] for _ in range(max(self.stage.values(), default=-1) + 1)]
        for procedure in self.row:
            found[self.stage[procedure.id]].append(procedure)
        return found
