"""What a correction may be about: a figure or result, `procedure/spec` or `machine/figure`; or by its bare id a whole procedure (its steps,
cautions and needs), a machine (its versions, and what is no longer there), or a thing of the shop."""

from collections.abc import Collection, Iterable, Iterator

from .book import Book
from .dependency import Dependency
from .procedure import Procedure
from .sentence import Reference

#: How a thing of the shop is called in the graph of dependency.py.
_SHOP = {"presses": "press", "wrenches": "wrench", "adapters": "adapter", "scales": "scale", "surfaces": "surface", "materials": "material",
         "shim_stocks": "stock", "made_tools": "made", "cautions": "caution"}


def shop_addresses(book: Book, name: str) -> tuple[str, ...]:
    """`press/BP50` for each thing of the shop that has this id."""
    return tuple(f"{sort}/{name}" for shelf, sort in _SHOP.items() if name in getattr(book, shelf))


def looked_up(book: Book, reference: Reference, whole: bool) -> tuple[str, Collection[str], str]:
    """The id that decides whether there is such a thing, the ids it may be, and what it is called; with `whole` a bare id will do."""
    if reference.owner in book.machines:
        return reference.name, book.machines[reference.owner].figures, "figure of the machine"
    homes = [procedure for procedure in book.procedures.values() if procedure.id == reference.owner]
    if homes:
        return reference.name, {name for home in homes for name in (*home.specs, *home.computed)}, f"figure in '{reference.owner}' that is called"
    procedures = {name for _, name in book.procedures}
    if whole and not reference.owner:
        return reference.name, {*procedures, *book.machines, *(name for shelf in _SHOP for name in getattr(book, shelf))}, "procedure, machine or thing of the shop"
    return reference.owner or reference.name, procedures, "procedure"


def owners(book: Book, reference: Reference, edges: Iterable[Dependency]) -> Iterator[str]:
    """Ids of the procedures and machines on whose pages a correction about this is listed; one may come twice."""
    if reference.owner:
        yield reference.owner
        return
    name = reference.name
    if name in book.machines or any(name == procedure for _, procedure in book.procedures):
        yield name
    addresses = shop_addresses(book, name)
    for edge in edges if addresses else ():
        if edge.on in addresses or edge.on.startswith(tuple(f"{address}/" for address in addresses)):
            yield edge.of.split("/")[-2]
    for procedure in book.procedures.values() if addresses else ():
        if name in shop_ids(procedure):
            yield procedure.id


def shop_ids(procedure: Procedure) -> set[str]:
    """Ids of the presses, tools and cautions that a procedure names outside its figures."""
    cautions = (*procedure.cautions, *(caution for step in procedure.steps for caution in step.cautions))
    return {*cautions, *(need.press for need in procedure.needs.presses), *(need.name for need in procedure.needs.tools if need.name)}
