"""Where every press in the needs refuses a machine's own parts, the procedure cannot be done as written.

right:
    presses: [{press: BP50, gauge: main}]       # the card is accepted
wrong:
    presses: [{press: FP100, gauge: gauge-600}] # too coarse between floor and ceiling
    presses: none                               # and a step presses to {press-force.target}
"""

from typing import Iterator

from ..core.book import Book
from ..core.figure import NotKnown
from ..core.finding import WARNING, Finding
from ..core.procedure import Procedure, Step

ID = "no-press-will-do"


def check(book: Book, derived) -> Iterator[Finding]:
    for procedure in book.procedures.values():
        if not procedure.needs.presses:
            yield from _none_named(procedure)
    for (machine, procedure), result in derived.items():
        for variant, combinations in result.combinations.items():
            own = combinations[0]
            for (combination, owner), runs in result.worked.items():
                cards = [run for run in runs if run.working == "press-card"]
                if combination == own and cards and all(card.outcome.refusals for card in cards) \
                        and not _withdrawn(result.resolved.get((combination, owner), ())):
                    refusal = cards[0].outcome.refusals[0]
                    spec = book.procedures[machine, procedure].specs[owner]
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


def _withdrawn(resolved) -> bool:
    """A figure that its author withdrew or does not know yet refuses every press: that is said already, on the page."""
    return any(each.figure.in_doubt is not None or isinstance(each.worth, NotKnown) for each in resolved
               if each.figure.kept_for_record is None and each.figure.superseded_by is None)
