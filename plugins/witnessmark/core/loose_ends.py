"""The loose ends of a machine: who leaves each, who ties it up, and when it is surely shut."""

from collections import defaultdict
from functools import cached_property
from typing import Iterable, NamedTuple

from .machine import Machine
from .order import Order
from .procedure import Act, LooseEnd, Procedure, Step

#: The place of a loose end that has no places.
WHOLE = ("",)


class Left(NamedTuple):
    """A loose end with the procedure and the step (`at`, counted from 0) that leave it."""

    procedure: Procedure
    at: int
    step: Step
    end: LooseEnd

    @property
    def name(self) -> str:
        return f"{self.procedure.id}/{self.end.id}"


class Tie(NamedTuple):
    """A step that closes a loose end."""

    procedure: Procedure
    at: int
    step: Step


def left_by(procedure: Procedure) -> list[Left]:
    """All that the procedure leaves loose, in the order of its steps."""
    return [Left(procedure, at, step, end) for at, step in enumerate(procedure.steps) for end in step.leaves]


class Ledger:
    """What a machine has left loose. All is judged for one variant at a time: tie-ups may exclude each other."""

    def __init__(self, machine: Machine, order: Order):
        self.machine, self.order = machine, order
        self.left = {left.name: left for procedure in order.row for left in left_by(procedure)}
        self.tells_figures = any(left.end.state.references() for left in self.left.values())
        self._bare: dict[str, list[Left]] = defaultdict(list)
        for left in self.left.values():
            self._bare[left.end.id].append(left)
        self.ties: dict[str, list[Tie]] = defaultdict(list)
        for procedure in order.row:
            for at, step in enumerate(procedure.steps):
                for name in step.closes:
                    if left := self.named(procedure, name):
                        self.ties[left.name].append(Tie(procedure, at, step))
        self._shut: dict[tuple[str, str], dict[str, int]] = {}
        self._after: dict[tuple[str, str], list[Tie]] = {}

    def named(self, home: Procedure, name: str) -> Left | None:
        """What `procedure/end` means in `home`; a bare `end` is its own, or else the only one of that name on the machine."""
        owner, _, end = name.rpartition("/")
        if owner:
            return self.left.get(name)
        only = self._bare.get(end, ())
        return self.left.get(f"{home.id}/{end}") or (only[0] if len(only) == 1 else None)

    def is_left(self, home: Procedure, name: str, variant: str | None) -> bool:
        """False where what `name` means in `home` is known, and never left on this variant: nobody with one has it to tie up."""
        left = self.named(home, name)
        return left is None or variant is None or self.done_on(left.procedure, left.step, variant)

    def done_on(self, procedure: Procedure, step: Step, variant: str) -> bool:
        return variant in procedure.variants and step.done_on(variant, self.machine.main.variants[variant].serials)

    def variants(self, left: Left) -> list[str]:
        """The variants on which it is left."""
        return [variant for variant in self.machine.main.variants if self.done_on(left.procedure, left.step, variant)]

    def ties_after(self, left: Left, variant: str) -> list[Tie]:
        """The steps that close it on this variant, and come after it was left in whatever order work is taken."""
        key = left.name, variant
        if key not in self._after:
            self._after[key] = [tie for tie in self.ties[left.name] if self.done_on(tie.procedure, tie.step, variant) and self.follows(tie, left)]
        return self._after[key]

    def follows(self, tie: Tie, left: Left) -> bool:
        if tie.procedure is left.procedure:
            return tie.at > left.at
        return self.order.comes_after(tie.procedure.id, left.procedure.id)

    def in_time(self, procedure: Procedure) -> bool:
        """True where it is done before the hand-over or is it (or no hand-over is named)."""
        final = self.machine.hand_over
        return final not in self.order.procedures or procedure.id == final or self.order.comes_after(final, procedure.id)

    def places(self, left: Left, variant: str | None = None) -> tuple[str, ...]:
        """Where it is left: at each place of its group (that the variant has), or of its step's; at the step's one place; or as a whole."""
        group = left.end.each or (None if left.step.at else left.step.each)
        return self.machine.places_on(group, variant) or ((left.step.at,) if left.step.at else WHOLE)

    def to_close(self, left: Left, ties: Iterable[Tie], variant: str) -> tuple[str, ...]:
        """The places that must be closed: its own; or, left as a whole and closed side by side, every side."""
        mine = self.places(left, variant)
        if mine == WHOLE:
            for tie in ties:
                sides = self.machine.places_on(tie.procedure.each, variant)
                if tie.step.at in sides:
                    return sides
        return mine

    def shut(self, left: Left, variant: str) -> dict[str, int]:
        """Place -> the set of procedures before whose start it is surely tied up there."""
        key = left.name, variant
        if key not in self._shut:
            ties = self.ties_after(left, variant)
            self._shut[key] = {}
            for place in self.to_close(left, ties, variant):
                mask = 0
                for tie in ties:
                    if covers(tie, place):
                        mask |= self.order.behind[tie.procedure.id]
                self._shut[key][place] = mask
        return self._shut[key]

    def open_places(self, left: Left, variant: str, procedure: Procedure, at: int = 0) -> list[str]:
        """Where, once left, no step that is surely done before step `at` of a procedure closes it."""
        here = [tie for tie in self.ties_after(left, variant) if tie.procedure is procedure and tie.at < at]
        bit = self.order.bit(procedure.id)
        return [place for place, mask in self.shut(left, variant).items()
                if not mask & bit and not any(covers(tie, place) for tie in here)]

    def never_closed(self, left: Left, variant: str) -> list[str]:
        """The places where no step after it, and before or in the machine's hand-over, ties it up."""
        ties = [tie for tie in self.ties_after(left, variant) if self.in_time(tie.procedure)]
        return [place for place in self.to_close(left, ties, variant) if not any(covers(tie, place) for tie in ties)]

    def where(self, left: Left, found: dict[str, list[str]]) -> str:
        """Variants and places for the end of a sentence, such as ` (24-B, right)`; nothing where it is so everywhere."""
        alike: dict[str, list[str]] = {}
        for variant, places in found.items():
            alike.setdefault(" and ".join(filter(None, places)), []).append(variant)
        every = len(found) == len(self.variants(left))
        if every and list(alike) == [" and ".join(filter(None, self.places(left)))]:
            return ""
        told = [", ".join([*([] if every and len(alike) == 1 else variants), *filter(None, [places])]) for places, variants in alike.items()]
        return f" ({'; '.join(told)})"

    @cached_property
    def acting(self) -> dict[tuple[str, str | None], dict[str, list[tuple[int, Step]]]]:
        """(verb, thing) -> procedure -> its steps that do it, in their order."""
        found: dict[tuple[str, str | None], dict[str, list]] = defaultdict(lambda: defaultdict(list))
        for procedure in self.order.row:
            for at, step in enumerate(procedure.steps):
                for act in step.acts:
                    found[act.verb, act.thing][procedure.id].append((at, step))
        return {act: dict(steps) for act, steps in found.items()}

    def first_while_open(self, left: Left, act: Act) -> dict[str, tuple[Step, dict[str, list[str]]]]:
        """Procedure -> its first step that does `act` while the loose end may be open, and where it may be, variant by variant.

        What is open at a later step was open at the first one already, so that one is enough."""
        steps = self.acting.get((act.verb, act.thing), {})
        mask = sum(map(self.order.bit, steps)) & ~self.order.before[left.procedure.id]
        found: dict[str, tuple[int, Step, dict[str, list[str]]]] = {}
        for variant in self.variants(left):
            shut = ~0
            for closed in self.shut(left, variant).values():
                shut &= closed
            for procedure in self.order.of(mask & ~shut):
                from_here = left.at + 1 if procedure is left.procedure else 0
                first = next(((at, step) for at, step in steps[procedure.id] if at >= from_here and self.done_on(procedure, step, variant)), None)
                if first and (places := self.open_places(left, variant, procedure, first[0])):
                    at, step, where = found.setdefault(procedure.id, (*first, {}))
                    if at == first[0]:
                        where[variant] = places
        return {name: (step, where) for name, (_, step, where) in found.items()}


def covers(tie: Tie, place: str) -> bool:
    """A step done at one place closes it there only; any other closes it wherever it was left."""
    return tie.step.at in (None, place) or place == ""
