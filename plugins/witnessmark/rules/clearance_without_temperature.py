"""A clearance and a fit change with heat: say whether cold or hot, or what else they are measured under.

right:
    kind: clearance
    condition: cold
wrong:
    label: Valve gap
    kind: clearance
"""

import re
from typing import Iterator

from ..core.book import Book
from ..core.figure import Spec
from ..core.finding import Finding

ID = "clearance-without-temperature"
_HEAT = re.compile(r"\b(?:cold|cool|hot|warm|room|temperature|\d+ ?°?[FC])\b|°", re.IGNORECASE)
#: Parts that run warm: here another condition, such as 'oiled', is not enough.
_RUNS_WARM = re.compile(r"\b(?:valve|tappet|piston|ring|bearing|float|backlash|bush|main)s?\b", re.IGNORECASE)


def check(book: Book, derived) -> Iterator[Finding]:
    for record in (*book.machines.values(), *book.procedures.values()):
        specs = record.figures if hasattr(record, "figures") else record.specs
        for spec in specs.values():
            if spec.kind in ("clearance", "interference") and spec.figures and not _said(spec):
                yield Finding(spec.place, ID, f"the {spec.kind} '{spec.id}' does not say whether cold or hot",
                              "write 'condition: cold', or the heat it is measured at")


def _said(spec: Spec) -> bool:
    warm = _RUNS_WARM.search(spec.label) or spec.kind == "interference"
    for figure in spec.figures:
        words = " ".join(filter(None, (spec.condition, figure.condition, figure.when)))
        if not (_HEAT.search(words) if warm else words):
            return False
    return True
