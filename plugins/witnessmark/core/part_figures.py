"""Which swappable parts decide the figures of a step: a hub from a donor brings its own variant with it."""

from typing import Iterator

from .book import Book
from .figure import Figure, Spec
from .procedure import Computed, Procedure, Step
from .sentence import Reference, read_reference


def used_by(step: Step) -> Iterator[Reference]:
    """The figures that are worked to in a step: named by it, written in what is done or checked, or held against a reading."""
    yield from step.specs
    for sentence in (step.do, step.check, step.hold_point):
        yield from sentence.references() if sentence else ()
    yield from (record.spec for record in step.records if record.spec)


class PartFigures:
    """Asked for each step of a book; what a reference rests on is followed once."""

    def __init__(self, book: Book):
        self.book = book
        self._known: dict[tuple, tuple[str, ...]] = {}

    def of_step(self, home: Procedure, step: Step) -> dict[str, Reference]:
        """Carrier -> the first figure of the step that goes by it. The machine itself is no part; a figure that only informs does not count."""
        main = self.book.machines[home.machine].main.id
        found: dict[str, Reference] = {}
        for reference in used_by(step):
            key = home.machine, reference.owner or home.id, reference.name, reference.part
            if key not in self._known:
                self._known[key] = tuple(dict.fromkeys(self._of(home, reference, set())))
            for carrier in self._known[key]:
                if carrier != main:
                    found.setdefault(carrier, reference)
        return found

    def _of(self, home: Procedure, reference: Reference, seen: set) -> Iterator[str]:
        target = self.book.target(reference, home)
        if target is None or (id(target), reference.part) in seen:
            return
        seen.add((id(target), reference.part))
        there = self.book.procedures.get((home.machine, reference.owner), home) if reference.owner else home
        if isinstance(target, Computed):
            yield from self._inputs(there, target, seen)
            return
        for figure in target.figures:
            if figure.in_force() and figure.role != "found" and reference.part in (None, figure.role):
                yield from self._figure(there, figure, seen)

    def _figure(self, home: Procedure, figure: Figure, seen: set) -> Iterator[str]:
        if figure.worth is not None:
            yield from figure.worth.by
        if figure.comes_from is not None:
            yield from figure.comes_from.by
            for reference in dict.fromkeys(figure.comes_from.values()):
                yield from self._of(home, reference, seen)

    def _inputs(self, home: Procedure, computed: Computed, seen: set) -> Iterator[str]:
        for varies in computed.inputs.values():
            yield from varies.by
            for text in varies.values():
                reference = read_reference(text, computed.place)
                target = self.book.target(reference, home) if reference else None
                if isinstance(target, Spec) and (figure := target.meant(reference.part)):
                    yield from self._figure(home, figure, seen)
                elif isinstance(target, Computed):
                    yield from self._of(home, reference, seen)
