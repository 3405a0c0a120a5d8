"""A nut that must not out-pull its press is judged against the force the press really reaches; without one it is not judged.

right:
    must not out-pull: press-force.target       # and a press with its gauge among the needs
wrong:
    must not out-pull: press-force.target       # and 'presses: none', or a target in doubt
"""

from typing import Iterator

from ..core.book import Book
from ..core.figure import Spec
from ..core.finding import Finding

ID = "out-pulls-press"


def check(book: Book, derived) -> Iterator[Finding]:
    for (machine, name), result in derived.items():
        if not name:
            continue
        procedure = book.procedures[machine, name]
        for spec in procedure.specs.values():
            pressed = spec.must_not_outpull
            if pressed is None or spec.kind != "torque":
                continue
            place = spec.key_places.get("must not out-pull", spec.place)
            target = book.target(pressed, procedure)
            if pressed.owner is not None:
                yield Finding(place, ID, f"'{spec.id}' is measured against a press force of another procedure, {pressed}",
                              "write the nut beside its press force, in one procedure")
            elif isinstance(target, Spec) and target.kind != "press force":
                yield Finding(place, ID, f"'{pressed}' is a {target.kind}, no press force", "name the press force that the nut holds")
            elif isinstance(target, Spec) and not procedure.needs.presses:
                yield Finding(place, ID, f"'{spec.id}' must not out-pull '{pressed}', and no press is among the needs",
                              "add the press and its gauge, so that the force it reaches is known")
