"""What is carried through the working out of a book, and how one case is picked from a value that varies."""

from dataclasses import dataclass, field
from functools import cached_property

from ..core.book import Book
from ..core.finding import Finding
from ..core.machine import Machine
from ..core.place import Place
from ..core.procedure import Procedure
from ..core.variation import Combination, Varies
from .shelf import Shelf, shelf_of


@dataclass
class Evaluation:
    """Carries what was already worked out, and the findings. `busy` holds what is being worked out: a loop shows there."""

    book: Book
    findings: dict[Finding, None] = field(default_factory=dict)
    figures: dict = field(default_factory=dict)
    runs: dict = field(default_factory=dict)
    cards: dict = field(default_factory=dict)
    busy: list = field(default_factory=list)

    @cached_property
    def shelf(self) -> Shelf:
        return shelf_of(self.book)

    def error(self, place: Place, rule: str, message: str, mend: str) -> None:
        self.findings[Finding(place, rule, message, mend)] = None


def carriers_that_matter(machine: Machine, procedure: Procedure) -> tuple[str, ...]:
    """Every carrier by which some value of the procedure differs."""
    found: dict[str, None] = {}
    for spec in procedure.specs.values():
        for figure in spec.figures:
            for varies in (figure.worth, figure.comes_from):
                found.update(dict.fromkeys(varies.by if varies else ()))
        for varies in (spec.thread, spec.grade, spec.surface, spec.checked_against):
            found.update(dict.fromkeys(varies.by if varies else ()))
    for computed in procedure.computed.values():
        for varies in computed.inputs.values():
            found.update(dict.fromkeys(varies.by))
    return tuple(carrier for carrier in machine.carriers if carrier in found)


def pick(work: Evaluation, machine: Machine, varies: Varies, combination: Combination, what: str):
    """The one case that holds, or None with a finding: a gap or an overlap is never filled by a guess."""
    cases = varies.matching(combination, machine.serial_ranges)
    if len(cases) == 1:
        return cases[0].value
    here = " with ".join(f"{machine.carriers[c].title} {combination.get(c, '?')}" if c in machine.carriers else c
                         for c in varies.by)
    if cases:
        work.error(varies.place, "two-figures", f"{what} has {len(cases)} figures for {here}",
                   "let one range begin where the other ends")
    else:
        variant = combination.get(varies.by[-1], "it") if varies.by else "it"
        work.error(varies.place, "no-figure", f"{what} has no figure for {here}",
                   f"add one, or write '{variant}: none' where there is deliberately none")
    return None
