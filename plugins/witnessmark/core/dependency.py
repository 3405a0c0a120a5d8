"""What rests on what in a book: the graph that says which results move when one figure, tool or material is corrected.

A name is an address: `machine/procedure/spec`, `machine/figure`, or a thing of the shop such as `wrench/TW3`.
"""

from collections import defaultdict
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from .book import Book
from .machine import Machine
from .procedure import Computed, Procedure
from .figure import Spec
from .sentence import Reference, read_input_reference
from .variation import Varies
from .working import SHELF


@dataclass(frozen=True, slots=True, order=True)
class Dependency:
    """`of` rests on `on`; `when` names the cases of a varying value in which it does, empty where in all."""

    of: str
    on: str
    when: tuple[str, ...] = ()


def dependencies(book: Book) -> tuple[Dependency, ...]:
    """Every edge of the graph, sorted; what a book does not hold is a rule's finding and no edge."""
    found: set[Dependency] = set()
    for machine in book.machines.values():
        for spec in machine.figures.values():
            found.update(_of_spec(book, machine, None, spec))
    for procedure in book.procedures.values():
        machine = book.machines[procedure.machine]
        for spec in procedure.specs.values():
            found.update(_of_spec(book, machine, procedure, spec))
        for computed in procedure.computed.values():
            found.update(_of_computed(book, machine, procedure, computed))
    return tuple(sorted(found))


Users = dict[str, list[str]]


def users_of(edges: Iterable[Dependency]) -> Users:
    """What rests directly on each name: made once, asked often."""
    users: Users = defaultdict(list)
    for edge in edges:
        users[edge.on].append(edge.of)
    return users


def resting_of(users: Users, name: str) -> list[str]:
    """Everything that rests on `name`, directly or through others, sorted."""
    found: set[str] = set()
    waiting = [name]
    while waiting:
        for user in users.get(waiting.pop(), ()):
            if user not in found:
                found.add(user)
                waiting.append(user)
    return sorted(found - {name})


def resting_on(edges: tuple[Dependency, ...], name: str) -> frozenset[str]:
    """The same for a single question."""
    return frozenset(resting_of(users_of(edges), name))


def _of_spec(book: Book, machine: Machine, procedure: Procedure | None, spec: Spec) -> Iterator[Dependency]:
    of = _address(machine, procedure, spec.id)
    for figure in spec.figures:
        if figure.comes_from:
            yield from _varying(of, figure.comes_from, lambda reference: _named(book, machine, procedure, reference))
    if spec.must_not_outpull and (on := _named(book, machine, procedure, spec.must_not_outpull)):
        yield Dependency(of, on)
    if spec.kind == "torque" and spec.surface:
        yield from _varying(of, spec.surface, lambda surface: f"surface/{surface}" if surface in book.surfaces else None)
    for sort, name, shelf in (("wrench", spec.wrench, book.wrenches), ("adapter", spec.adapter, book.adapters)):
        if name in shelf:
            yield Dependency(of, f"{sort}/{name}")
    if spec.kind == "press force" and procedure:
        for need in procedure.needs.presses or ():
            if need.press in book.presses and need.gauge in book.presses[need.press].gauges:
                yield Dependency(of, f"press/{need.press}/{need.gauge}")


def _of_computed(book: Book, machine: Machine, procedure: Procedure, computed: Computed) -> Iterator[Dependency]:
    of = _address(machine, procedure, computed.id)
    shelves = {"material": book.materials, "wrench": book.wrenches, "adapter": book.adapters, "scale": book.scales, "stock": book.shim_stocks}
    for name, varies in computed.inputs.items():
        sort = name.rpartition(" ")[2]

        def on(text: str, sort: str = sort) -> str | None:
            if text in book.surfaces:
                return f"surface/{text}"
            if sort in SHELF and text in shelves[sort]:
                return f"{sort}/{text}"
            reference = read_input_reference(text, varies.place)
            return _named(book, machine, procedure, reference) if reference else None

        yield from _varying(of, varies, on)


def _varying(of: str, varies: Varies, on) -> Iterator[Dependency]:
    for case in varies.cases:
        if name := on(case.value):
            yield Dependency(of, name, tuple(selector.text for selector in case.when))


def _named(book: Book, machine: Machine, procedure: Procedure | None, reference: Reference) -> str | None:
    """The address of what a reference points at; None where it points at nothing."""
    if reference.owner == machine.id or procedure is None:
        return f"{machine.id}/{reference.name}" if reference.name in machine.figures else None
    home = book.procedures.get((machine.id, reference.owner)) if reference.owner else procedure
    return _address(machine, home, reference.name) if home and book.target(reference, procedure) else None


def _address(machine: Machine, procedure: Procedure | None, name: str) -> str:
    return "/".join((machine.id, *([procedure.id] if procedure else ()), name))
