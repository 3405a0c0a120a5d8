"""Which findings rest on what could not be read: the slip itself is told, and its users are not blamed for it.

A ceiling whose unit is wrong is no missing ceiling, and a source whose title is misspelt is no unknown source.
"""

import re

from .book import Book
from .finding import Finding
from .procedure import Procedure

_QUOTED = re.compile(r"(?<!\w)'([^']+)'")


class Resting:
    """Asked of each finding of a rule or working. `book.not_whole` has names of records and paths of files."""

    def __init__(self, book: Book):
        self._names = set(book.not_whole)
        for procedure in book.procedures.values() if self._names else ():
            self._names.update(self._results(procedure))
            self._names.update(self._specs(procedure))

    def __call__(self, finding: Finding) -> bool:
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
