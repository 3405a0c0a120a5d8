"""Who points at what in a book, walked once: each page then finds its own in one look."""

from functools import cached_property
from typing import NamedTuple

from ..core.about import owners
from ..core.authority import Correction
from ..core.book import Book
from ..core.dependency import Dependency, Users, dependencies, resting_of, users_of
from ..core.figure import Citation, Spec
from ..core.lone_order import lone_order
from ..core.part_figures import PartFigures
from ..core.procedure import Procedure, Step
from .address import CAUTIONS_URL, caution_anchor, machine_url, press_url, procedure_url, spec_anchor


class Rest(NamedTuple):
    """Something that rests on a source: what it is, of which procedure or machine, where in the source, and its address."""

    what: str
    of: str
    where: str
    url: str


class BookIndex:
    def __init__(self, book: Book):
        self._book = book
        self.turns = {machine: lone_order(ledger) for machine, ledger in book.ledgers.items()}
        self.order = {machine: [turn.procedure for turn in turns] for machine, turns in self.turns.items()}
        self._places = {(machine, procedure.id): number for machine, procedures in self.order.items()
                        for number, procedure in enumerate(procedures)}
        self.measured: dict[tuple[str, str], list[tuple[Procedure, int, Step]]] = {}      # who finds out a part's variant
        self.part_figures = PartFigures(book)
        self.corrections: dict[str, list[Correction]] = {}
        self.conflicts: dict[tuple[str, str], list[str]] = {}
        for conflict in book.conflicts.values():
            self.conflicts.setdefault((conflict.about.owner or "", conflict.about.name), []).append(conflict.id)
        self.rests: dict[str, list[Rest]] = {source: [] for source in book.sources}
        self.press_users: dict[str, list[Procedure]] = {}
        self._moved: dict[str, tuple[str, ...]] = {}
        for machine, procedures in self.order.items():
            for spec in book.machines[machine].figures.values():
                self._spec(spec, book.machines[machine].title, machine_url(machine))
            for procedure in procedures:
                self._procedure(procedure)
        for correction in sorted(book.corrections.values(), key=lambda correction: (correction.on, correction.id), reverse=True):
            for owner in dict.fromkeys(owner for reference in correction.about for owner in owners(book, reference, self._edges)):
                self.corrections.setdefault(owner, []).append(correction)
            for citation in correction.sources:
                self._rest(citation, correction.id, "", "")
        for caution in book.cautions.values():
            self._rest(caution.source, caution.id, "", f"{CAUTIONS_URL}#{caution_anchor(caution.id)}")
        for press in book.presses.values():
            self._rest(press.source, press.title, "", press_url(press.id))

    @cached_property
    def _edges(self) -> tuple[Dependency, ...]:
        return dependencies(self._book)

    @cached_property
    def resting(self) -> Users:
        """What rests on each figure, tool and material of the book."""
        return users_of(self._edges)

    @cached_property
    def rests_on(self) -> dict[str, list[str]]:
        """What each figure and result rests on directly, by the addresses of core/dependency.py."""
        found: dict[str, list[str]] = {}
        for edge in self._edges:
            if edge.on not in found.setdefault(edge.of, []):
                found[edge.of].append(edge.on)
        return found

    def corrections_of(self, machine: str) -> tuple[Correction, ...]:
        """Those that concern the machine or one of its procedures, the newest first."""
        names = (machine, *self._book.procedure_ids[machine])
        found = {correction.id: correction for name in names for correction in self.corrections.get(name, ())}
        return tuple(sorted(found.values(), key=lambda correction: (correction.on, correction.id), reverse=True))

    def moved_by(self, name: str) -> tuple[str, ...]:
        """The addresses of all that rests on the figure at `name`, directly or through others."""
        if name not in self._moved:
            self._moved[name] = tuple(resting_of(self.resting, name))
        return self._moved[name]

    def neighbours(self, procedure: Procedure) -> tuple[Procedure | None, Procedure | None]:
        """The procedures before and after this one in the order of the machine."""
        row, number = self.order[procedure.machine], self._places[procedure.machine, procedure.id]
        return (row[number - 1] if number else None), (row[number + 1] if number + 1 < len(row) else None)

    def _procedure(self, procedure: Procedure) -> None:
        url = procedure_url(procedure.machine, procedure.id)
        for spec in procedure.specs.values():
            self._spec(spec, procedure.title, url)
        for need in procedure.needs.presses or ():
            users = self.press_users.setdefault(need.press, [])
            if procedure not in users[-1:]:
                users.append(procedure)
        for at, step in enumerate(procedure.steps):
            for carrier in step.measures:
                self.measured.setdefault((procedure.machine, carrier), []).append((procedure, at, step))

    def _spec(self, spec: Spec, of: str, url: str) -> None:
        for figure in spec.figures:
            for citation in figure.sources:
                self._rest(citation, spec.label, of, f"{url}#{spec_anchor(spec.id)}")

    def _rest(self, citation: Citation | None, what: str, of: str, url: str) -> None:
        if citation is None:
            return
        held = self.rests.setdefault(citation.source, [])
        rest = Rest(what, of, citation.where, url)
        if rest not in held[-3:]:
            held.append(rest)
