"""Which findings rest on what could not be read: the slip itself is told, and its users are not blamed for it.

A ceiling whose unit is wrong is no missing ceiling, and a source whose title is misspelt is no unknown source.
"""

import re

from typing import Iterable

from .book import Book
from .finding import Finding
from .procedure import Procedure

_QUOTED = re.compile(r"(?<!\w)'([^']+)'")


#: Rules that look at a machine as a whole: with a line unread in any of its files they would blame the others.
OF_THE_PLAN = frozenset({"order-loop", "loose-end-open", "not-shut", "act-while-open", "part-not-measured", "counted-out"})


class Resting:
    """Asked of each finding of a rule or working. `book.not_whole` has names of records and paths of files; `slips` is what could not be read."""

    def __init__(self, book: Book, slips: Iterable[Finding]):
        self._names = set(book.not_whole)
        self._unread = {_machine_of(slip.place.path) for slip in slips}
        for procedure in book.procedures.values() if self._names else ():
            self._names.update(self._results(procedure))
            self._names.update(self._specs(procedure))

    def __call__(self, finding: Finding) -> bool:
        if finding.rule in OF_THE_PLAN and _machine_of(finding.place.path) in self._unread:
            return True
        return bool(self._names) and (finding.place.path in self._names
                                      or any(name in self._names for name in _QUOTED.findall(finding.message)))

    def _results(self, procedure: Procedure):
        for computed in procedure.computed.values():
            if any(value in self._names for varies in computed.inputs.values() for value in varies.values()):
                yield computed.id

    def _specs(self, procedure: Procedure):
        presses = {need.press for need in procedure.needs.presses}
        for spec in procedure.specs.values():
            tools = presses if spec.kind == "press force" else {spec.wrench, spec.adapter}
            surfaces = set(spec.surface.values()) if spec.surface else set()
            results = {reference.name for figure in spec.figures if figure.comes_from for reference in figure.comes_from.values()}
            if self._names & (tools | surfaces | results):
                yield spec.id


def _machine_of(path: str) -> str:
    """`type-24` for each of its procedures and for the machine's own file; '' for what is no machine's."""
    room, folder, *rest = [*path.split("/"), ""]
    if room == "procedures":
        return folder
    return rest[0].rpartition(".")[0] if folder == "machines" and rest else ""
