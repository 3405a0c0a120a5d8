"""What one procedure shows of itself to the others of its machine: an outline to all, the whole to those that name it.

A page that shows more of another procedure than this must name it, or an edit over there would not reach it while serving.
"""

from collections.abc import Iterable, Iterator
from dataclasses import replace

from .book import Book
from .every_sentence import sentences_of_machine, sentences_of_procedure
from .figure import Spec
from .memory import FORGETFUL, Memory
from .place import Place
from .procedure import Computed, LooseEnd, Needs, Procedure, Step, Tried
from .sentence import Reference, Sentence, read_reference

_NOWHERE = Place("")
_SILENT = Sentence("", (), _NOWHERE)


def outline(procedure: Procedure) -> Procedure:
    """Its title and variants, the labels of its figures and results, its place in the order, and of its steps their ids, acts and loose ends.

    Lines in the source count for nothing: a remark above moves them all."""
    return replace(procedure, summary=None, people=0, skill=None, time=None, tried=Tried(), conditions=(), cautions=(), needs=Needs((), (), (), ()),
                   specs={name: Spec(name, spec.label, spec.kind, None, (), _NOWHERE) for name, spec in procedure.specs.items()},
                   computed={name: Computed(name, computed.label, "", {}, _NOWHERE) for name, computed in procedure.computed.items()},
                   steps=tuple(map(_step, procedure.steps)), notes=(), place=Place(procedure.place.path), key_places={})


def _step(step: Step) -> Step:
    return replace(step, do=_SILENT, check=None, if_outside=None, go_to=(), cautions=(), specs=(), opens_up=(), records=(), picture=None,
                   hold_point=None, second_person=False, note=None, place=_NOWHERE, key_places={},
                   only=tuple(replace(selector, place=_NOWHERE) for selector in step.only), acts=_nowhere(step.acts),
                   leaves=tuple(map(_end, step.leaves)))


def _end(end: LooseEnd) -> LooseEnd:
    state = replace(end.state, place=_NOWHERE, parts=tuple(replace(part, place=_NOWHERE) if isinstance(part, Reference) else part for part in end.state.parts))
    return replace(end, state=state, because=_SILENT, if_forgotten=_SILENT, never_while_open=_nowhere(end.never_while_open), tag=None, place=_NOWHERE)


def _nowhere(acts: tuple) -> tuple:
    return tuple(replace(act, place=_NOWHERE) for act in acts)


class Naming:
    """Asked for each procedure of a book: which others of its machine it names, directly or through those it names."""

    def __init__(self, book: Book, memory: Memory = FORGETFUL):
        self._book, self._memory = book, memory
        shop = [sentence for conflict in book.conflicts.values() for sentence in (conflict.printed, conflict.why, *(side.says for side in conflict.sides))]
        everywhere, self._corrected = set(_owners(shop)), {}
        for one in book.corrections.values():                      # one about a thing of the shop is told wherever that is used
            told = set(_owners(sentence for sentence in (one.old, one.new, one.reason, one.evidence, one.touches) if sentence))
            for reference in one.about:
                (self._corrected.setdefault(reference.owner, set()) if reference.owner else everywhere).update(told)
        self._on_machine = {name: {*everywhere, *_owners(sentences_of_machine(machine))} for name, machine in book.machines.items()}
        for procedure in book.procedures.values():                 # a loose end is told in the words of who left it, on any page
            states = [end.state for step in procedure.steps for end in step.leaves if end.state.references()]
            self._on_machine[procedure.machine].update([procedure.id, *_owners(states)] if states else ())
        self._direct: dict[tuple[str, str], set[str]] = {}

    def named(self, procedure: Procedure) -> tuple[Procedure, ...]:
        """In the order of their ids, the procedure itself left out."""
        found: set[str] = set()
        waiting = [procedure.id]
        while waiting:
            name = waiting.pop()
            if name not in found and (one := self._book.procedures.get((procedure.machine, name))):
                found.add(name)
                waiting += self._by(one)
        return tuple(self._book.procedures[procedure.machine, name] for name in sorted(found - {procedure.id}))

    def _by(self, procedure: Procedure) -> set[str]:
        key = procedure.machine, procedure.id
        if key not in self._direct:
            own = self._memory.of(("names", key), procedure, lambda: frozenset(_named_in(procedure)))
            self._direct[key] = {*own, *self._on_machine.get(procedure.machine, ()), *self._corrected.get(procedure.id, ())}
        return self._direct[key]


def _named_in(procedure: Procedure) -> Iterator[str]:
    yield from _owners(sentences_of_procedure(procedure))
    for spec in procedure.specs.values():
        references = [reference for figure in spec.figures if figure.comes_from for reference in figure.comes_from.values()]
        yield from (reference.owner for reference in (*references, spec.must_not_outpull) if reference and reference.owner)
    for computed in procedure.computed.values():
        for varies in computed.inputs.values():
            read = (read_reference(text, computed.place) for text in varies.values() if "/" in text)
            yield from (reference.owner for reference in read if reference and reference.owner)
    for step in procedure.steps:
        yield from (reference.owner for reference in (*step.specs, *(record.spec for record in step.records)) if reference and reference.owner)


def _owners(sentences: Iterable[Sentence]) -> Iterator[str]:
    return (reference.owner for sentence in sentences for reference in sentence.references() if reference.owner)
