"""How far corrections reach: which figures, results and sheets a correction accounts for."""

from collections import defaultdict
from collections.abc import Iterable

from ..core.about import shop_addresses, shop_ids
from ..core.acted import Key
from ..core.book import Book
from ..core.dependency import Dependency, dependencies, resting_on
from ..core.procedure import Procedure
from ..core.sentence import Reference

_FOLLOWS = ("figure", "mark", "setting", "result")


class Reach:
    """By address, `machine/procedure/name` or `machine/name`: the corrections that are about it, or about what it rests on."""

    def __init__(self, book: Book):
        self.book = book
        self._by_address: dict[str, list[str]] = defaultdict(list)
        self._about: dict[str, list[str]] = defaultdict(list)
        self._whole: dict[str, list[str]] = defaultdict(list)
        edges = dependencies(book) if book.corrections else ()
        for correction in book.corrections.values():
            for reference in correction.about:
                if not reference.owner:
                    self._whole[reference.name].append(correction.id)
                for address in _addresses(book, reference, edges):
                    self._about[address].append(correction.id)
                    for reached in (address, *resting_on(edges, address)):
                        self._by_address[reached].append(correction.id)

    def about(self, machine: str, procedure: str, name: str) -> tuple[str, ...]:
        """The corrections that name this figure itself."""
        return tuple(dict.fromkeys(self._about.get(_address(machine, procedure, name), ())))

    def of(self, machine: str, procedure: str, name: str) -> tuple[str, ...]:
        """The corrections that name this figure, or one that it rests on."""
        return tuple(dict.fromkeys(self._by_address.get(_address(machine, procedure, name), ())))

    def whole(self, *names: str) -> tuple[str, ...]:
        """The corrections that name one of these procedures, machines or things of the shop as a whole."""
        return tuple(dict.fromkeys(each for name in names for each in self._whole.get(name, ())))

    def of_fact(self, machine: str, procedure: str, key: Key) -> tuple[str, ...]:
        """The corrections that account for a fact: of a figure those that reach it, of its condition, fastener and source those that
        name it, of all else those about the whole."""
        if key.sort in _FOLLOWS:
            return self.of(machine, procedure, key.name)
        if key.sort in ("spec", "source"):
            return self.about(machine, procedure, key.name)
        thing = {"caution": key.part, "need": key.name}.get(key.sort, "")
        return self.whole(procedure, machine, thing)

    def sheet(self, procedure: Procedure) -> tuple[str, ...]:
        """The corrections that reach anything on the procedure's sheets, sorted."""
        shown = {(procedure.id, name) for name in (*procedure.specs, *procedure.computed)}
        for step in procedure.steps:
            spoken = [reference for sentence in step.sentences() for reference in sentence.references()]
            shown |= {(reference.owner, reference.name) for reference in (*step.specs, *spoken) if reference.owner}
        whole = self.whole(procedure.id, procedure.machine, *shop_ids(procedure))
        return tuple(sorted({*whole, *(each for owner, name in shown for each in self.of(procedure.machine, owner, name))}))


def _address(machine: str, procedure: str, name: str) -> str:
    """`name` may be a reference, `procedure/name.role` or `machine/name`."""
    owner, slash, bare = name.rpartition("/")
    owner, bare = (owner if slash else procedure), bare.partition(".")[0]
    return f"{machine}/{bare}" if owner in ("", machine) else f"{machine}/{owner}/{bare}"


def _addresses(book: Book, reference: Reference, edges: Iterable[Dependency]) -> list[str]:
    """Of a figure its own; of a thing of the shop each under which something rests on it."""
    if not reference.owner:
        found = shop_addresses(book, reference.name)
        return sorted({edge.on for edge in edges if edge.on in found or edge.on.startswith(tuple(f"{address}/" for address in found))}) if found else []
    if reference.owner in book.machines:
        return [f"{reference.owner}/{reference.name}"]
    return [f"{machine}/{reference.owner}/{reference.name}" for machine in book.machines if (machine, reference.owner) in book.procedures]
