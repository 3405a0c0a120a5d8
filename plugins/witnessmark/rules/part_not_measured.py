"""A part that can be swapped is measured before a figure that goes by it is used: a donor does not say which variant it is.

right:
    - id: measure-hub
      do: Measure the hub outside diameter.
      measures: fly-crank
    - id: press
      do: Press to {press.target}.          # by: fly-crank
wrong:
    - id: press
      do: Press to {press.target}.          # by: fly-crank, and no step before has measured it
"""

from typing import Iterator

from ..core.book import Book
from ..core.finding import Finding
from ..core.loose_ends import Ledger
from ..core.part_figures import PartFigures
from ..core.procedure import Procedure, Step

ID = "part-not-measured"


def check(book: Book, derived) -> Iterator[Finding]:
    figures = PartFigures(book)
    for machine, ledger in book.ledgers.items():
        carriers = book.machines[machine].carriers
        if len(carriers) == 1 or ledger.order.loops:
            continue
        known = _Known(ledger)
        for procedure in ledger.order.row:
            told: set[str] = set()
            for at, step in enumerate(procedure.steps):
                for carrier, reference in figures.of_step(procedure, step).items():
                    if carrier not in carriers or carrier in told:
                        continue
                    variants = [variant for variant in procedure.variants if variant in ledger.machine.main.variants
                                and ledger.done_on(procedure, step, variant) and not known(carrier, procedure, at, variant)]
                    if variants:
                        told.add(carrier)
                        yield _finding(ledger, procedure, step, carrier, str(reference), variants, known.measured.get(carrier, {}))


class _Known:
    """Asked whether a step that is surely done by then, or the step itself, tells which variant a part is.

    `measured` holds carrier -> the procedures that tell."""

    def __init__(self, ledger: Ledger):
        self.order = ledger.order
        self.measured: dict[str, dict[str, None]] = {}
        self._after: dict[tuple[str, str], int] = {}
        self._first: dict[tuple[str, str, str], int] = {}
        for procedure in ledger.order.row:
            for at, step in enumerate(procedure.steps):
                for carrier in step.measures:
                    self.measured.setdefault(carrier, {})[procedure.id] = None
                    for variant in ledger.machine.main.variants:
                        if ledger.done_on(procedure, step, variant):
                            self._after[carrier, variant] = self._after.get((carrier, variant), 0) | self.order.behind[procedure.id]
                            self._first.setdefault((carrier, variant, procedure.id), at)

    def __call__(self, carrier: str, procedure: Procedure, at: int, variant: str) -> bool:
        first = self._first.get((carrier, variant, procedure.id))
        return bool(self._after.get((carrier, variant), 0) & self.order.bit(procedure.id)) or (first is not None and first <= at)


def _finding(ledger: Ledger, procedure: Procedure, step: Step, carrier: str, figure: str, variants: list[str], measured) -> Finding:
    title = ledger.machine.carriers[carrier].title
    on = "" if len(variants) == len(procedure.variants) else f" on {' and '.join(variants)}"
    place = step.key_places.get("specs", step.place)
    elsewhere = sorted(name for name in measured if name != procedure.id and not ledger.order.comes_after(procedure.id, name))
    mend = f"write {' or '.join(elsewhere)} under 'after:'" if elsewhere else f"write 'measures: {carrier}' at the step that does it"
    return Finding(place, ID, f"'{step.id}' works to '{figure}', which goes by the {title}, before a step that measures the {title}{on}", mend)
