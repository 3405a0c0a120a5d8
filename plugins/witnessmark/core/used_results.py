"""Which computed results of a procedure a variant's reader meets: two cylinder heads of one engine have two orders of tightening."""

from collections.abc import Iterator

from .procedure import Procedure, Step
from .sentence import Reference, read_reference
from .variation import Serials


def of_others(procedure: Procedure, variant: str, serials: Serials | None) -> frozenset[str]:
    """Results that steps of other variants alone name, and on which no figure and no other result of the procedure rests.

    What no step names at all is kept for everyone: the author means it to be read."""
    here, there = set(), set()
    for step in procedure.steps:
        (here if step.done_on(variant, serials) else there).update(reference.name for reference in _named(step) if reference.owner is None)
    there -= here
    return frozenset(name for name in procedure.computed if name in there and name not in set(_rested_on(procedure)))


def _named(step: Step) -> Iterator[Reference]:
    yield from step.specs
    yield from (record.spec for record in step.records if record.spec)
    sentences = [*step.sentences(), *(end.state for end in step.leaves)]
    for record in step.records:
        if record.if_outside:
            sentences += [sentence for sentence in (record.if_outside.above, record.if_outside.below) if sentence]
    for sentence in sentences:
        yield from sentence.references()


def _rested_on(procedure: Procedure) -> Iterator[str]:
    for spec in procedure.specs.values():
        if spec.must_not_outpull:
            yield spec.must_not_outpull.name
        for figure in spec.figures:
            yield from (reference.name for reference in figure.comes_from.values()) if figure.comes_from else ()
    for computed in procedure.computed.values():
        for varies in computed.inputs.values():
            yield from (reference.name for text in varies.values() if (reference := read_reference(text, computed.place)))
