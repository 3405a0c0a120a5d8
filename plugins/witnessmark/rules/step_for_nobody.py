"""A step for some machines only must name variants that the procedure is for: else it is on no checklist.

right:
    applies to: [24-A, 24-B]
    only: [24-A]
wrong:
    applies to: [24-A, 24-B]
    only: [24-C]
"""

from typing import Iterator

from ..core.book import Book
from ..core.finding import Finding, nearest
from ..core.machine import Machine
from ..core.variation import Selector

ID = "step-for-nobody"


def check(book: Book, derived) -> Iterator[Finding]:
    for procedure in book.procedures.values():
        machine = book.machines[procedure.machine]
        for step in procedure.steps:
            for selector in step.only:
                if not _meets(selector, machine, procedure.variants) and _right_elsewhere(selector, machine):
                    yield Finding(selector.place, ID, f"the step '{step.id}' is only for '{selector.text}', which is no variant "
                                                      "of this procedure", nearest(selector.text, procedure.variants))


def _meets(selector: Selector, machine: Machine, variants) -> bool:
    known = [machine.main.variants[name] for name in variants if name in machine.main.variants]
    if selector.serials is None:
        return any(variant.id == selector.text for variant in known)
    return any(variant.serials and selector.serials.covers(variant.serials) for variant in known)


def _right_elsewhere(selector: Selector, machine: Machine) -> bool:
    """A range that no variant of the machine has at all is another rule's finding."""
    return selector.serials is None or _meets(selector, machine, machine.main.variants)
