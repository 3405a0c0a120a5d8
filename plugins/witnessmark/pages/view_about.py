"""What a correction is about, with the place on the site where it is told."""

from ..core.authority import Correction
from ..core.procedure import Computed
from ..core.sentence import Reference
from .address import CAUTIONS_URL, caution_anchor, machine_url, press_url, procedure_url, result_anchor, spec_anchor
from .lookup import Lookup
from .view_step import Target


def about_targets(lookup: Lookup, correction: Correction, root: str) -> tuple[Target, ...]:
    """A figure by its label; a procedure, machine or thing of the shop by its title. Of a thing without a page the machine's."""
    return tuple(_figure(lookup, each, root) if each.owner else _whole(lookup, each.name, root) for each in correction.about)


def _figure(lookup: Lookup, reference: Reference, root: str) -> Target:
    of_machine = reference.owner == lookup.machine.id
    home = lookup.machine if of_machine else lookup.book.procedures.get((lookup.machine.id, reference.owner))
    specs = {} if home is None else home.figures if of_machine else {**home.computed, **home.specs}
    spec = specs.get(reference.name)
    anchor = result_anchor(reference.name) if isinstance(spec, Computed) else spec_anchor(reference.name)
    url = machine_url(reference.owner) if of_machine else procedure_url(lookup.machine.id, reference.owner)
    return Target(spec.label if spec else str(reference), f"{root}{url}#{anchor}")


def _whole(lookup: Lookup, name: str, root: str) -> Target:
    book, machine = lookup.book, lookup.machine
    if procedure := book.procedures.get((machine.id, name)):
        return Target(procedure.title, root + procedure_url(machine.id, name))
    if name in book.machines:
        return Target(book.machines[name].title, root + machine_url(name))
    if name in book.presses:
        return Target(book.presses[name].title, root + press_url(name))
    if caution := book.cautions.get(name):
        return Target(f"{name}: {caution.hazard.text}", f"{root}{CAUTIONS_URL}#{caution_anchor(name)}")
    shelves = (book.surfaces, book.wrenches, book.adapters, book.scales, book.materials, book.shim_stocks, book.made_tools)
    thing = next((shelf[name] for shelf in shelves if name in shelf), None)
    return Target(thing.title if thing else name, root + machine_url(machine.id))
