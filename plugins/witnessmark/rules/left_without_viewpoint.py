"""Left and right mean something only when the book says from where they are named.

right:
    viewpoint: Left and right are named facing forward from the driver's seat.
wrong:
    viewpoint: The chimney is in front.
    do: Measure the gap on the left side.
"""

import re
from typing import Iterator

from ..core.book import Book
from ..core.every_sentence import sentences_of_step
from ..core.finding import WARNING, Finding
from ..core.machine import Machine

ID = "left-without-viewpoint"
_NAMED = re.compile(r"\b(?:left|right)\b", re.IGNORECASE)
#: A side, and not 'a right angle', 'left-hand thread', 'no shims left'.
_SIDE = re.compile(r"\b(?:on|from|to|at) the (?:left|right)\b(?! (?:angle|way|order|size|one))"
                   r"|\b(?:left|right)(?:-hand| hand)? (?:side|end|front|rear|wheel|crank|pin|box|rail)\b", re.IGNORECASE)


def check(book: Book, derived) -> Iterator[Finding]:
    for machine in book.machines.values():
        if _NAMED.search(machine.viewpoint.text):
            continue
        group = next((name for name, places in machine.places.items() if any(map(_NAMED.search, places))), None)
        if group:
            yield Finding(machine.viewpoint.place, ID, f"places of '{group}' are called left or right, but not from where",
                          "write it here, such as 'left and right are named facing forward from the seat'", WARNING)
        yield from _steps(book, machine)


def _steps(book: Book, machine: Machine) -> Iterator[Finding]:
    for name in book.procedure_ids[machine.id]:
        procedure = book.procedures[machine.id, name]
        if any(spec.viewpoint for spec in procedure.specs.values()):
            continue
        for step in procedure.steps:
            for sentence in sentences_of_step(step):
                if side := _SIDE.search(sentence.text):
                    yield Finding(sentence.place, ID, f"'{side[0]}' is said, but the viewpoint of the {machine.title} does "
                                                      "not tell from where",
                                  "say in the machine's 'viewpoint:' from where left and right are named", WARNING)
