"""A range of serials takes whole variants. One that takes part of a variant would be left out for all of it, and its
figure dropped in silence. Where serials within a variant differ, they are a variant of their own.

right:
    is: {up to 1389: 18 long ton, from 1390: 22 long ton}      # 24-A is serials 1001 to 1389
wrong:
    is: {up to 1389: 18 long ton, from 1300: 22 long ton}
"""

from typing import Iterable, Iterator

from ..core.book import Book
from ..core.figure import Spec
from ..core.finding import Finding
from ..core.machine import Machine
from ..core.variation import Selector, Serials, Varies

ID = "serials-cut-a-variant"


def check(book: Book, derived) -> Iterator[Finding]:
    seen = set()
    for machine in book.machines.values():
        yield from _selectors(machine, _of_specs(machine.figures.values()), seen)
    for procedure in book.procedures.values():
        machine = book.machines[procedure.machine]
        yield from _selectors(machine, _of_specs(procedure.specs.values()), seen)
        for computed in procedure.computed.values():
            yield from _selectors(machine, _of(computed.inputs.values()), seen)
        yield from _selectors(machine, ((machine.main.id, one) for step in procedure.steps for one in step.only), seen)


def _of_specs(specs: Iterable[Spec]) -> Iterator[tuple[str, Selector]]:
    for spec in specs:
        yield from _of((spec.thread, spec.grade, spec.surface, spec.checked_against))
        for figure in spec.figures:
            yield from _of((figure.worth, figure.comes_from))


def _of(values: Iterable[Varies | None]) -> Iterator[tuple[str, Selector]]:
    """Each selector with the carrier it speaks of."""
    return ((carrier, selector) for varies in values if varies and varies.by
            for case in varies.cases for carrier, selector in zip(varies.by, case.when))


def _selectors(machine: Machine, selectors: Iterable[tuple[str, Selector]], seen: set) -> Iterator[Finding]:
    for carrier, selector in selectors:
        if selector.serials is None or carrier not in machine.carriers or selector.place in seen:
            continue
        seen.add(selector.place)
        variants = [each for each in machine.carriers[carrier].variants.values() if each.serials]
        cut = next((each for each in variants if _common(selector.serials, each.serials)
                    and not selector.serials.covers(each.serials)), None)
        if cut:
            yield Finding(selector.place, ID, f"'{selector.text}' takes only part of {cut.id}, which is serials "
                                               f"{cut.serials}",
                          "let the range end where a variant ends, or make those serials a variant of their own")
        elif not any(selector.serials.covers(each.serials) for each in variants):
            known = ", ".join(f"{each.id} ({each.serials})" for each in variants) or "no serials at all"
            yield Finding(selector.place, ID, f"'{selector.text}' holds for no {machine.carriers[carrier].title}",
                          f"the machine has {known}")


def _common(one: Serials, other: Serials) -> bool:
    """True where some serial is in both."""
    return (one.first is None or other.last is None or one.first <= other.last) and \
        (one.last is None or other.first is None or other.first <= one.last)
