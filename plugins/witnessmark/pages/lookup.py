"""What a figure is worth in each case, found once for a page and its sheets."""

from typing import Iterable, NamedTuple

from ..core.book import Book
from ..core.derived import CombinationKey, Derived, Worked, key_of
from ..core.display import converted
from ..core.figure import Figure, NoFigure, NotKnown, Plain, Spec, Worth
from ..core.machine import Machine
from ..core.procedure import Computed, Procedure
from ..core.sentence import Reference
from ..core.variation import Varies
from ..core.working import Outcome, Value
from .address import result_anchor, spec_anchor
from .book_index import BookIndex
from .cases import Told, told_apart
from . import words

_CONVERTED: dict[tuple[str, str, str], str] = {}


class Shown(NamedTuple):
    """`printed` as in the source, `converted` to the other system; `state` is '', 'words', 'unknown', 'doubt', 'recheck', 'none' or 'refused'."""

    printed: str
    converted: str
    state: str


class FigureView(NamedTuple):
    """A figure ready to print: whose it is (`spec`, `role`), old names, where it is explained, its cases."""

    spec: str
    role: str
    was: str
    href: str
    cases: tuple[Told, ...]


def shown(worth: Worth | None, role: str) -> Shown:
    if worth is None or isinstance(worth, NotKnown):
        return Shown(words.NOT_KNOWN, "", "unknown")
    if isinstance(worth, NoFigure):
        return Shown(words.NO_FIGURE, "", "none")
    if isinstance(worth, Plain):
        return Shown(worth.text, "", "words")
    key = (worth.text, worth.kind, role)
    if (other := _CONVERTED.get(key)) is None:
        other = _CONVERTED[key] = converted(worth, role)
    return Shown(worth.typed(), other, "")


class Lookup:
    """The figures of one procedure, or (with no procedure) of the machine itself."""

    def __init__(self, book: Book, index: BookIndex, derived: dict[tuple[str, str], Derived], machine: Machine,
                 procedure: Procedure | None = None):
        self.book, self.index, self.machine, self.procedure, self._every_derived = book, index, machine, procedure, derived
        self.derived = derived.get((machine.id, procedure.id if procedure else "")) or Derived()
        self.variants = procedure.variants if procedure else tuple(machine.main.variants)
        self.combinations: dict[str, list[tuple[CombinationKey, dict]]] = {
            variant: [(key, dict(key)) for key in self.derived.combinations.get(variant) or (key_of(machine.own(variant)),)]
            for variant in self.variants}
        self.plain_steps: dict = {}
        self._others: dict[str, Lookup] = {}

    def every(self, variant: str | None = None) -> list[tuple[CombinationKey, dict]]:
        """All combinations of one variant, its own first, or of all."""
        return self.combinations.get(variant, []) if variant else [pair for pairs in self.combinations.values() for pair in pairs]

    def own(self, variant: str | None = None) -> list[tuple[CombinationKey, dict]]:
        return [self.combinations[v][0] for v in ([variant] if variant else self.variants) if self.combinations.get(v)]

    def swapped(self) -> set[str]:
        """The carriers that may come from another machine: those that are not the same in all cases of one variant."""
        return {carrier for pairs in self.combinations.values() for _, combination in pairs
                for carrier, variant in combination.items() if variant != pairs[0][1].get(carrier)}

    def cases(self, spec: Spec, figure: Figure, variant: str | None = None) -> tuple[Told, ...]:
        """The figure as Shown in each case; one case where it never differs."""
        if figure.in_doubt is not None:
            return (Told("", variant or " ".join(self.variants), "", Shown(words.DO_NOT_USE, "", "doubt")),)
        if figure.worth is not None and not figure.worth.by and spec.checked_against is None:
            return (Told("", variant or " ".join(self.variants), "", shown(figure.worth.cases[0].value, figure.role)),)
        typed = figure.worth is not None and figure.comes_from is None and spec.checked_against is None
        by = set(figure.worth.by if typed else self.machine.carriers)
        combinations = self.own(variant) if by <= {self.machine.main.id} else self.every(variant)
        return told_apart(self.machine, [(combination, self._shown(spec, figure, key, combination)) for key, combination in combinations])

    def _shown(self, spec: Spec, figure: Figure, key: CombinationKey, combination: dict) -> Shown:
        if spec.checked_against is not None and self.recheck(spec, key, figure):
            return Shown(words.RECHECK, "", "recheck")
        return shown(self.worth(spec, figure, key, combination), figure.role)

    def recheck(self, spec: Spec, key: CombinationKey, figure: Figure | None = None) -> str | None:
        """Why a figure of the spec (any, where none is given) must be checked anew in this case."""
        return next((each.recheck for each in self.derived.resolved.get((key, spec.id), ())
                     if each.recheck and figure in (None, each.figure)), None)

    def worth(self, spec: Spec, figure: Figure, key: CombinationKey, combination: dict) -> Worth | None:
        """The figure in one case; None where none is written for it."""
        for resolved in self.derived.resolved.get((key, spec.id), ()):
            if resolved.figure is figure or resolved.figure == figure:
                return resolved.worth
        if figure.worth is None:
            return None
        matching = figure.worth.matching(combination, self.machine.serial_ranges)
        return matching[0].value if len(matching) == 1 else None

    def told(self, varies: Varies | None, variant: str | None = None, text=str) -> tuple[Told, ...]:
        """A varying value that is no figure (a thread, a grade, a surface), as text in each case."""
        if varies is None:
            return ()
        if not varies.by:
            return (Told("", variant or " ".join(self.variants), "", text(varies.cases[0].value)),)
        found = []
        for _, combination in self.every(variant):
            matching = varies.matching(combination, self.machine.serial_ranges)
            found.append((combination, text(matching[0].value) if matching else words.NO_FIGURE))
        return told_apart(self.machine, found)

    def worked(self, owner: str, variant: str | None = None, own: bool | None = None) -> Iterable[tuple[dict, Worked]]:
        """Every run of a working for a spec or computed result; `own` True or False keeps unswapped or swapped machines."""
        for one in [variant] if variant else self.variants:
            for number, (key, combination) in enumerate(self.combinations.get(one, ())):
                if own is None or own == (number == 0):
                    for run in self.derived.worked.get((key, owner), ()):
                        yield combination, run

    def of(self, owner: str | None) -> "Lookup":
        """The lookup of another procedure of the machine, or of the machine."""
        if owner is None or (self.procedure and owner == self.procedure.id):
            return self
        if owner not in self._others:
            other = self.book.procedures.get((self.machine.id, owner))
            self._others[owner] = Lookup(self.book, self.index, self._every_derived, self.machine, other)
        return self._others[owner]

    def reference(self, reference: Reference, variant: str | None = None) -> FigureView | None:
        """What a reference in a sentence prints; None when it points at nothing."""
        home = self.procedure or next((p for (m, _), p in self.book.procedures.items() if m == self.machine.id), None)
        if home is None:
            return None
        target, there = self.book.target(reference, home), self.of(reference.owner)
        variant = variant if variant in there.variants else None
        name = f"{reference.owner}/{reference.name}" if reference.owner else reference.name
        up = "../" if self.procedure else ""                    # procedures lie below their machine
        page = "" if there is self else up if there.procedure is None else f"{up}{there.procedure.id}/"
        if isinstance(target, Computed) or (target is not None and reference.part and reference.part not in words.ROLE):
            return there._output(name, reference, page, variant)
        if target is None:
            return None
        figure = target.meant(reference.part)
        if figure is None:                                      # every figure of it is struck through
            cases = (Told("", "", "", Shown(words.DO_NOT_USE, "", "doubt")),)
            return FigureView(name, reference.part or "", "", f"{page}#{spec_anchor(target.id)}", cases)
        return FigureView(name, figure.role, " ".join(figure.was + target.was), f"{page}#{spec_anchor(target.id)}",
                          there.cases(target, figure, variant))

    def _output(self, name: str, reference: Reference, page: str, variant: str | None) -> FigureView:
        found = []
        for combination, run in self.worked(reference.name, variant):
            outcome, part = run.outcome, reference.part
            value = outcome.values[0] if outcome.values and not part else outcome.value(part) if outcome.has(part or "") else None
            if not any(combination is seen for seen, _ in found):
                found.append((combination, _shown(value, run.outcome)))
        cases = told_apart(self.machine, found) or (Told("", "", "", Shown(words.NOT_KNOWN, "", "unknown")),)
        return FigureView(name, reference.part or "", "", f"{page}#{result_anchor(reference.name)}", cases)


def _shown(value: Value | None, outcome: Outcome) -> Shown:
    if value:
        return Shown(value.printed, value.converted, "" if value.unit else "words")
    return Shown(f"{words.READ_FIRST}: {', '.join(outcome.waits)}", "", "words") if outcome.waits else Shown(words.REFUSED, "", "refused")
