"""A pull on a cord and a movement on a dial mean nothing without the radius they are read at, and a radius taken for a
diameter halves the figure.

right:
    label: Pull on the cord of the pinion drum
    kind: force
    at radius: 1.25 in
    do: Measure the drag by cord on the drum of 1.25 in radius.
wrong:
    label: Pull on the cord of the pinion drum
    kind: force
    do: Measure the drag by cord on the drum of 1.25 in.
"""

import re
from typing import Iterator

from ..core.book import Book
from ..core.every_sentence import sentences_of_step
from ..core.figure import Spec
from ..core.finding import Finding
from ..core.procedure import Procedure

ID = "radius-not-named"
_DRAWN = ("cord", "drum", "string")
_CORD = re.compile(rf"\b(?:{'|'.join(_DRAWN)})\b", re.IGNORECASE)
#: What a dial reads differs with the radius it stands at; a run-out along the axis of a face does, one across does not.
_BY_RADIUS = {"force": _CORD, "clearance": re.compile(r"\bbacklash\b", re.IGNORECASE),
              "length": re.compile(r"\bbacklash\b|\bface run-?out\b", re.IGNORECASE)}
_BARE_DRUM = re.compile(r"\bdrum (?:of |, )?\d[\d./-]* ?(?:in|mm)\b(?! (?:in |of )?(?:radius|diameter|wide|width|long|length))",
                        re.IGNORECASE)
_MEND = "write 'at radius:' and the radius it is read at"


def check(book: Book, derived) -> Iterator[Finding]:
    for machine in book.machines.values():
        yield from _specs(machine.figures.values())
    for key, procedure in book.procedures.items():
        yield from _specs(procedure.specs.values())
        if any([word in book.words[key] for word in _DRAWN]):
            yield from _steps(procedure)


def _specs(specs) -> Iterator[Finding]:
    for spec in specs:
        if spec.at_radius is None and spec.kind in _BY_RADIUS and _BY_RADIUS[spec.kind].search(spec.label):
            yield Finding(spec.place, ID, f"'{spec.id}' does not say at which radius it is read", _MEND)


def _steps(procedure: Procedure) -> Iterator[Finding]:
    drums = any(_CORD.search(need.name) for need in procedure.needs.tools) or any(
        spec.kind in ("force", "rolling drag") for spec in procedure.specs.values())
    for step in procedure.steps if drums else ():
        for sentence in sentences_of_step(step):
            if "drum" in sentence.text and (bare := _BARE_DRUM.search(sentence.text)):
                yield Finding(sentence.place, ID, f"'{bare[0]}' may be a radius or a diameter", "write which of the two it is")
        if not _CORD.search(step.do.text):
            continue
        used = [procedure.specs[name] for name in dict.fromkeys(
            reference.name for reference in (*step.specs, *(r for s in step.sentences() for r in s.references()))
            if reference.owner is None) if name in procedure.specs]
        for spec in used:
            if spec.kind == "rolling drag" and spec.at_radius is None and not _radius_beside(used):
                yield Finding(spec.place, ID, f"'{spec.id}' is read by a cord in '{step.id}' but does not say at which radius", _MEND)


def _radius_beside(specs: list[Spec]) -> bool:
    return any(spec.at_radius is not None for spec in specs)
