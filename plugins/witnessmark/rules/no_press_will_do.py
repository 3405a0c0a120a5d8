"""Where every press in the needs refuses a machine's own parts, the procedure cannot be done as written.

right:
    presses: [{press: BP50, gauge: main}]       # the card is accepted
wrong:
    presses: [{press: FP100, gauge: gauge-600}] # too coarse between floor and ceiling
    presses: none                               # and a step presses to {press-force.target}
"""

from typing import Iterable, Iterator

from ..core.book import Book
from ..core.figure import Figure, NotKnown
from ..core.finding import WARNING, Finding
from ..core.procedure import Computed, Procedure, Step
from ..core.sentence import Reference, read_reference

ID = "no-press-will-do"
_OUT_OF_ORDER = ("the target of", "the floor of", "the division is not smaller")        # limits-in-order and scale-in-order tell these


def check(book: Book, derived) -> Iterator[Finding]:
    for procedure in book.procedures.values():
        if not procedure.needs.presses:
            yield from _none_named(procedure)
    for (machine, procedure), result in derived.items():
        for variant, combinations in result.combinations.items():
            own = combinations[0]
            for (combination, owner), runs in result.worked.items():
                cards = [run for run in runs if run.working == "press-card"]
                if combination != own or not cards or not all(card.outcome.refusals for card in cards):
                    continue
                home = book.procedures[machine, procedure]
                spec = home.specs[owner]
                refusal = cards[0].outcome.refusals[0]
                if not _told_elsewhere(book, home, result.resolved.get((combination, owner), ()), refusal):
                    yield Finding(spec.place, ID, f"no press in the needs can do '{owner}' on a {variant}: {refusal.message}",
                                  refusal.instead, WARNING)


def _none_named(procedure: Procedure) -> Iterator[Finding]:
    """A force that a step presses to, and no press to make a card for: the marks would be missing in silence."""
    for spec in procedure.specs.values():
        if spec.kind == "press force" and any(figure.role in ("target", "window") and figure.in_force() for figure in spec.figures) \
                and any(_uses(step, spec.id) for step in procedure.steps):
            yield Finding(spec.place, ID, f"'{spec.id}' is a force to press to, but no press is among the needs",
                          "write {press: ..., gauge: ...} under 'presses', so that its marks can be worked out", WARNING)


def _uses(step: Step, spec: str) -> bool:
    named = (*step.specs, *(reference for sentence in step.sentences() for reference in sentence.references()))
    return any(reference.owner is None and reference.name == spec for reference in named)


def _told_elsewhere(book: Book, home: Procedure, resolved, refusal) -> bool:
    """A figure without its case, a target over its ceiling and a figure that its author withdrew are told where they stand."""
    standing = [each for each in resolved if each.figure.standing()]
    return refusal.message.startswith(_OUT_OF_ORDER) or any(
        isinstance(each.worth, NotKnown) or (each.worth is None and not _worked_out(book, home, each.figure)) for each in standing) \
        or _withdrawn(book, home, [each.figure for each in standing], set())


def _worked_out(book: Book, home: Procedure, figure: Figure) -> bool:
    return figure.comes_from is not None and any(isinstance(book.target(reference, home), Computed) for reference in figure.comes_from.values())


def _withdrawn(book: Book, home: Procedure, figures: Iterable[Figure], seen: set[str]) -> bool:
    """A figure that its author withdrew, at any depth below these, refuses every press: that is said already, on the page."""
    return any(figure.in_doubt is not None or any(_rests_on_withdrawn(book, home, case.value, seen)
                                                  for case in (figure.comes_from.cases if figure.comes_from else ()))
               for figure in figures if figure.standing())


def _rests_on_withdrawn(book: Book, home: Procedure, reference: Reference, seen: set[str]) -> bool:
    target = book.target(reference, home)
    owner = book.procedures.get((home.machine, reference.owner or ""), home)
    if target is None or f"{owner.id}/{reference}" in seen:
        return False
    seen.add(f"{owner.id}/{reference}")
    if isinstance(target, Computed):
        inputs = (read_reference(case.value, target.place) for varies in target.inputs.values() for case in varies.cases)
        return any(_rests_on_withdrawn(book, owner, each, seen) for each in inputs if each)
    meant = target.meant(reference.part)
    unknown = meant and meant.worth and any(isinstance(worth, NotKnown) for worth in meant.worth.values())
    return bool(unknown) or _withdrawn(book, owner, (meant,) if meant else (), seen)
