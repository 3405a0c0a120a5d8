"""An old name leads to the thing that carries it now: it must not be another thing's name, old or present.

right:
    nut:
      was: [FC-NUT]
wrong:
    nut:
      was: [press-force]      # press-force is still there
"""

from typing import Iterable, Iterator

from ..core.book import Book
from ..core.finding import Finding
from ..core.place import Place
from ..core.procedure import Procedure

ID = "was-taken"
#: What it is, its present name, its old ones, where it stands.
Named = tuple[str, str, tuple[str, ...], Place]


def check(book: Book, derived) -> Iterator[Finding]:
    yield from _taken(("machine", each.id, each.was, each.place) for each in book.machines.values())
    for machine in book.machines.values():
        yield from _taken(_specs(machine.figures.values()))
        procedures = (book.procedures[machine.id, name] for name in book.procedure_ids[machine.id])
        yield from _taken(("procedure", each.id, each.was, each.key_places.get("was", each.place)) for each in procedures)
    for procedure in book.procedures.values():
        if not _any_was(procedure):                   # nearly always, and there are thousands of steps
            continue
        computed = (("computed result", each.id, each.was, each.place) for each in procedure.computed.values())
        yield from _taken((*_specs(procedure.specs.values()), *computed))
        yield from _taken(("step", step.id, step.was, step.key_places.get("was", step.place)) for step in procedure.steps)
        yield from _taken(("loose end", end.id, end.was, end.place) for step in procedure.steps for end in step.leaves)


def _any_was(procedure: Procedure) -> bool:
    named = (*procedure.specs.values(), *procedure.computed.values(), *procedure.steps,
             *(figure for spec in procedure.specs.values() for figure in spec.figures), *(end for step in procedure.steps for end in step.leaves))
    return any([each.was for each in named])


def _specs(specs) -> Iterator[Named]:
    for spec in specs:
        figures = (name for figure in spec.figures if figure.place != spec.place for name in figure.was)
        yield "spec", spec.id, (*spec.was, *figures), spec.key_places.get("was", spec.place)


def _taken(named: Iterable[Named]) -> Iterator[Finding]:
    things = tuple(named)
    if not any(was for _, _, was, _ in things):
        return
    present = {name for _, name, _, _ in things}
    old: dict[str, str] = {}
    for what, name, was, place in things:
        for former in was:
            if former in present:
                whose = "is its name still" if former == name else f"is the name of another {what}"
                yield Finding(place, ID, f"'{former}', an old name of '{name}', {whose}", "take it out of 'was'")
            elif former in old:
                yield Finding(place, ID, f"'{former}' is an old name of '{old[former]}' and of '{name}'", "leave it at one of the two")
            old.setdefault(former, name)
