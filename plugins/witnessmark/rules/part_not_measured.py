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
from ..core.part_figures import parts_counting
from ..core.procedure import Procedure, Step

ID = "part-not-measured"


def check(book: Book, derived) -> Iterator[Finding]:
    for machine, ledger in book.ledgers.items():
        carriers = book.machines[machine].carriers
        if len(carriers) == 1 or ledger.order.loops:
            continue
        measured: dict[str, list[tuple[Procedure, int, Step]]] = {carrier: [] for carrier in carriers}
        for procedure in ledger.order.row:
            for at, step in enumerate(procedure.steps):
                for carrier in step.measures:
                    measured.setdefault(carrier, []).append((procedure, at, step))
        for procedure in ledger.order.row:
            told: set[str] = set()
            for at, step in enumerate(procedure.steps):
                for carrier, reference in parts_counting(book, procedure, step).items():
                    variants = [variant for variant in procedure.variants if variant in ledger.machine.main.variants and ledger.done_on(procedure, step, variant)
                                and not _known(ledger, measured.get(carrier, ()), procedure, at, variant)]
                    if variants and carrier in carriers and carrier not in told:
                        told.add(carrier)
                        yield _finding(ledger, procedure, step, carrier, str(reference), variants, measured[carrier])


def _known(ledger: Ledger, measured, procedure: Procedure, at: int, variant: str) -> bool:
    """True where a step that is surely done by then, or this step itself, tells which variant the part is."""
    return any(ledger.done_on(there, step, variant) and (there is procedure and number <= at or there is not procedure
               and ledger.order.comes_after(procedure.id, there.id)) for there, number, step in measured)


def _finding(ledger: Ledger, procedure: Procedure, step: Step, carrier: str, figure: str, variants: list[str], measured) -> Finding:
    title = ledger.machine.carriers[carrier].title
    on = "" if len(variants) == len(procedure.variants) else f" on {' and '.join(variants)}"
    place = step.key_places.get("specs", step.place)
    elsewhere = sorted({there.id for there, _, _ in measured if there is not procedure and not ledger.order.comes_after(procedure.id, there.id)})
    mend = f"write {' or '.join(elsewhere)} under 'after:'" if elsewhere else f"write 'measures: {carrier}' at the step that does it"
    return Finding(place, ID, f"'{step.id}' works to '{figure}', which goes by the {title}, before a step that measures the {title}{on}", mend)
