"""What is open when a procedure starts and when it stops, in whatever order the work is taken."""

from typing import NamedTuple

from .loose_ends import Left, Ledger, Tie
from .procedure import Procedure

_POWER = ("run", "turn by power")
#: So many of those that may be open are named on a page; the rest stand in the machine's ledger.
NAMED = 12


class Open(NamedTuple):
    """A loose end and where it is open, variant by variant. `unless` are procedures that may have tied it up already."""

    left: Left
    where: dict[str, list[str]]
    unless: tuple[str, ...]


class Proof(NamedTuple):
    """A loose end that must be found shut, and where, variant by variant; `at` is the step (from 0) before which, None for the end."""

    left: Left
    where: dict[str, list[str]]
    at: int | None


class OpenEnds:
    """Asked for each procedure of a machine. `sure` were left by what is done before it, `maybe` by what may go beside it."""

    def __init__(self, ledger: Ledger):
        self.ledger, order = ledger, ledger.order
        self._sure: dict[str, list[Left]] = {name: [] for name in order.procedures}
        self._maybe: dict[str, list[Left]] = {name: [] for name in order.procedures}
        self.more = 0                           # the set of procedures at which more may be open than is named
        full = 0
        on = {variant: sum(order.bit(one.id) for one in order.row if variant in one.variants) for variant in ledger.machine.main.variants}
        for left in ledger.left.values():
            mask = 0
            for variant in ledger.variants(left):
                shut = ~0
                for closed in ledger.shut(left, variant).values():
                    shut &= closed
                mask |= on[variant] & ~shut
            opener = left.procedure.id
            after = order.behind[opener]
            for procedure in order.of(mask & after):
                self._sure[procedure.id].append(left)
            beside = mask & order.beside(opener)
            self.more |= beside & full
            for procedure in order.of(beside & ~full):
                self._maybe[procedure.id].append(left)
                if len(self._maybe[procedure.id]) == NAMED:
                    full |= order.bit(procedure.id)

    def at_start(self, procedure: Procedure, variants: tuple[str, ...]) -> list[Open]:
        return self._open(self._sure[procedure.id], procedure, variants, 0)

    def maybe_at_start(self, procedure: Procedure, variants: tuple[str, ...]) -> list[Open]:
        return self._open(self._maybe[procedure.id], procedure, variants, 0)

    def at_stop(self, procedure: Procedure, variants: tuple[str, ...]) -> list[Open]:
        """What was open for sure and is not closed here, and what this procedure leaves itself."""
        own = [left for step in procedure.steps for end in step.leaves if (left := self.ledger.left.get(f"{procedure.id}/{end.id}"))]
        return self._open([*own, *self._sure[procedure.id]], procedure, variants, len(procedure.steps))

    def _open(self, ends: list[Left], procedure: Procedure, variants: tuple[str, ...], at: int) -> list[Open]:
        found = []
        for left in ends:
            where = {variant: places for variant in self.ledger.variants(left) if variant in variants
                     and (places := self.ledger.open_places(left, variant, procedure, at))}
            if where:
                beside = self.ledger.order.beside(procedure.id)
                ties = dict.fromkeys(tie.procedure.id for variant in where for tie in self.ledger.ties_after(left, variant)
                                     if beside & self.ledger.order.bit(tie.procedure.id))
                found.append(Open(left, where, tuple(ties)))
        return found

    def to_prove(self, procedure: Procedure, variants: tuple[str, ...]) -> list[Proof]:
        """Of the procedure that ends the work: all that is not named under its `must be shut`, before it is signed. Of one that runs
        the machine: what forbids it and is surely left before; that it is shut by then is a rule's to prove. Else nothing."""
        ledger = self.ledger
        if procedure.id == ledger.machine.hand_over:
            named = {left.name for name in procedure.must_be_shut if (left := ledger.named(procedure, name))}
            steps: dict[str, int | None] = dict.fromkeys(name for name in ledger.left if name not in named)
        else:
            steps = dict(sorted(self._before_power(procedure, variants).items(), key=lambda pair: pair[1]))
        found = []
        for name, at in steps.items():
            left = ledger.left[name]
            where = {variant: list(ledger.places(left, variant)) for variant in ledger.variants(left) if variant in variants}
            if where:
                found.append(Proof(left, where, at))
        return found

    def _before_power(self, procedure: Procedure, variants: tuple[str, ...]) -> dict[str, int]:
        """Loose end -> the first step, on any of these variants, that does by power what it forbids."""
        found: dict[str, int] = {}
        for verb in _POWER:
            first = next((at for at, step in enumerate(procedure.steps) if any(act.verb == verb for act in step.acts)
                          and any(self.ledger.done_on(procedure, step, variant) for variant in variants)), None)
            for left in self.ledger.left.values() if first is not None else ():
                begun = left.at < first if left.procedure is procedure else self.ledger.order.comes_after(procedure.id, left.procedure.id)
                if begun and any(act.verb == verb for act in left.end.never_while_open):
                    found[left.name] = min(first, found.get(left.name, first))
        return found

    def closers(self, left: Left) -> list[Tie]:
        """The steps that close it, on any variant, after it was left."""
        return [tie for tie in self.ledger.ties[left.name] if self.ledger.follows(tie, left)]
