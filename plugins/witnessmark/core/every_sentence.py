"""Every sentence of a book with the place it came from, for rules about words."""
from __future__ import annotations

from typing import TYPE_CHECKING, Iterable, Iterator

from .figure import Spec
from .machine import Machine
from .procedure import Procedure, Step
from .sentence import Sentence

if TYPE_CHECKING:
    from .book import Book


def sentences_but_of_procedures(book: Book) -> Iterator[Sentence]:
    """Those of machines and of the shop's own records, in the order of the records."""
    for machine in book.machines.values():
        yield from sentences_of_machine(machine)
    for caution in book.cautions.values():
        yield from (caution.hazard, caution.consequence, *caution.avoid)
    for conflict in book.conflicts.values():
        yield from (conflict.printed, conflict.why, *(side.says for side in conflict.sides))
    for correction in book.corrections.values():
        yield from _there((correction.old, correction.new, correction.reason, correction.evidence, correction.touches))
    yield from _there(source.weight for source in book.sources.values())


def sentences_of_machine(machine: Machine) -> Iterator[Sentence]:
    yield from _there((machine.summary, machine.viewpoint, machine.serial_plate, *machine.defer))
    for carrier in machine.carriers.values():
        yield from _there(variant.summary for variant in carrier.variants.values())
    for spec in machine.figures.values():
        yield from sentences_of_spec(spec)


def sentences_of_procedure(procedure: Procedure) -> Iterator[Sentence]:
    yield from _there((procedure.summary, procedure.skill, *procedure.conditions))
    for need in (*procedure.needs.tools, *procedure.needs.supplies, *procedure.needs.parts):
        yield from _there((need.note,))
    for spec in procedure.specs.values():
        yield from sentences_of_spec(spec)
    for step in procedure.steps:
        yield from sentences_of_step(step)
    for note in procedure.notes:
        yield from (note.says, *note.causes)


def sentences_of_spec(spec: Spec) -> Iterator[Sentence]:
    yield from _there((spec.limited_by, spec.note))
    for figure in spec.figures:
        yield from _there((figure.because, figure.in_doubt, figure.to_be_found_by))


def sentences_of_step(step: Step) -> Iterator[Sentence]:
    yield from step.sentences()
    for record in step.records:
        if record.if_outside:
            yield from _there((record.if_outside.above, record.if_outside.below))
    for end in step.leaves:
        yield from (end.state, end.because, end.if_forgotten)


def _there(sentences: Iterable[Sentence | None]) -> Iterator[Sentence]:
    return (sentence for sentence in sentences if sentence is not None)
