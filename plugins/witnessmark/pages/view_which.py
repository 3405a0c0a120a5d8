"""Which figures are yours, and why: the parts a procedure's figures go by, and how each part is told."""

from typing import NamedTuple

from . import words
from .address import procedure_url, step_anchor
from .lookup import Lookup
from .view_step import Target


class PartView(NamedTuple):
    """A part that may come from a donor. `choices` are (variant, what it measures), `measured` the steps that find it out."""

    title: str
    told_by: str
    choices: tuple[tuple[str, str], ...]
    measured: tuple[Target, ...]
    places: tuple[str, ...]


def part_views(lookup: Lookup, root: str, variant: str | None) -> tuple[PartView, ...]:
    """The parts that decide a figure worked to here, in the machine's order; on a sheet, of its variant's own steps."""
    machine, procedure = lookup.machine, lookup.procedure
    if len(machine.carriers) == 1:
        return ()
    ledger = lookup.book.ledgers[machine.id]
    counting = {carrier for step in procedure.steps if variant is None or ledger.done_on(procedure, step, variant)
                for carrier in lookup.index.part_figures.of_step(procedure, step)}
    return tuple(PartView(carrier.title, carrier.told_by,
                          tuple((one.id, one.measure.typed() if one.measure else f"{words.SERIALS} {one.serials}" if one.serials else "")
                                for one in carrier.variants.values()),
                          _measured(lookup, carrier.id, root), machine.places_on(procedure.each, variant))
                 for carrier in machine.carriers.values() if carrier.id in counting)


def _measured(lookup: Lookup, carrier: str, root: str) -> tuple[Target, ...]:
    found = []
    for procedure, at, step in lookup.index.measured.get((lookup.machine.id, carrier), ()):
        here = procedure is lookup.procedure
        url = "" if here else root + procedure_url(procedure.machine, procedure.id)
        text = f"{words.STEP} {at + 1}" if here else f"{procedure.title}, {words.STEP} {at + 1}"
        found.append(Target(text, f"{url}#{step_anchor(step.id)}"))
    return tuple(found)
