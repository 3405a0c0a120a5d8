"""What a part may bear goes by that part, not by the machine it came on: where a part that may be swapped has versions
of the same names, a limit of force, torque or stress says which of the two decides.

right:
    - role: ceiling
      by: fly-crank                                     # the hub splits, whatever it is pressed on
      is: {24-A: 18 long ton, 24-B: 22 long ton}
wrong:
    - role: ceiling
      is: {24-A: 18 long ton, 24-B: 22 long ton}        # a 24-A hub on a 24-B would be given 22
"""

from typing import Iterator

from ..core.book import Book
from ..core.figure import Spec
from ..core.finding import Finding
from ..core.machine import Machine

ID = "limit-by-whom"
_KINDS = ("press force", "force", "torque", "stress")
_ROLES = ("ceiling", "stop", "reject")


def check(book: Book, derived) -> Iterator[Finding]:
    for machine in book.machines.values():
        for spec in machine.figures.values():
            yield from _unsaid(machine, spec)
    for procedure in book.procedures.values():
        for spec in procedure.specs.values():
            yield from _unsaid(book.machines[procedure.machine], spec)


def _unsaid(machine: Machine, spec: Spec) -> Iterator[Finding]:
    for figure in spec.figures if spec.kind in _KINDS else ():
        named = {selector.text for varies in (figure.worth, figure.comes_from) if varies for case in varies.cases for selector in case.when}
        alike = [carrier.id for carrier in machine.carriers.values() if carrier is not machine.main and named & carrier.variants.keys()]
        if figure.role in _ROLES and not figure.by_said and alike:
            yield Finding(figure.place, ID, f"nothing says which part the {figure.role} of '{spec.id}' goes by, and {' and '.join(alike)} "
                          "can be swapped and has versions of these names", f"write 'by: {alike[0]}', or 'by: {machine.main.id}' where the part makes no difference")
