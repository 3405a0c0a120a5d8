"""The wrench and adapter that a torque names lie ready before the work begins: they stand among the tools.

right:
    needs: {tools: [{wrench: TW3, adapter: crowfoot-3}], ...}
    wrench: TW3
    adapter: crowfoot-3
wrong:
    needs: {tools: [{wrench: TW3}], ...}        # the crowfoot is not fetched, and TW3 set for it turns too little
"""

from typing import Iterator

from ..core.book import Book
from ..core.figure import Spec
from ..core.finding import Finding
from ..core.place import Place
from ..core.procedure import Procedure

ID = "tool-not-in-needs"


def check(book: Book, derived) -> Iterator[Finding]:
    for procedure in book.procedures.values():
        for spec in procedure.specs.values():
            if spec.kind == "torque":
                yield from _lacks(book, procedure, spec, spec.key_places.get("wrench", spec.place))
        for step in procedure.steps:
            for reference in step.specs:          # another procedure's torque, tightened here
                spec = book.target(reference, procedure) if reference.owner else None
                if isinstance(spec, Spec) and spec.kind == "torque":
                    yield from _lacks(book, procedure, spec, step.key_places.get("specs", step.place))


def _lacks(book: Book, procedure: Procedure, spec: Spec, place: Place) -> Iterator[Finding]:
    if spec.wrench not in book.wrenches or (spec.adapter and spec.adapter not in book.adapters):
        return                                        # an unknown one is another rule's finding
    ready = [need.adapter for need in procedure.needs.tools if need.sort == "wrench" and need.name == spec.wrench]
    both = f"{{wrench: {spec.wrench}, adapter: {spec.adapter}}}" if spec.adapter else f"{{wrench: {spec.wrench}}}"
    if not ready:
        yield Finding(place, ID, f"'{spec.id}' is tightened with the wrench {spec.wrench}, which is not among the tools",
                      f"add {both} to the tools of the needs")
    elif spec.adapter and spec.adapter not in ready:
        yield Finding(place, ID, f"'{spec.id}' is tightened through the adapter {spec.adapter}, which is not among the tools",
                      f"write {both} in the tools of the needs")
