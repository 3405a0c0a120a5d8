"""How far corrections reach: which figures, results and sheets a correction accounts for."""

from collections import defaultdict

from ..core.book import Book
from ..core.dependency import dependencies, resting_on
from ..core.procedure import Procedure


class Reach:
    """By address, `machine/procedure/name` or `machine/name`: the corrections that are about it, or about what it rests on."""

    def __init__(self, book: Book):
        self.book = book
        self._by_address: dict[str, list[str]] = defaultdict(list)
        self._about: dict[str, list[str]] = defaultdict(list)
        edges = dependencies(book) if book.corrections else ()
        for correction in book.corrections.values():
            for reference in correction.about:
                for address in _addresses(book, reference):
                    self._about[address].append(correction.id)
                    for reached in (address, *resting_on(edges, address)):
                        self._by_address[reached].append(correction.id)

    def about(self, machine: str, procedure: str, name: str) -> tuple[str, ...]:
        """The corrections that name this figure itself."""
        return tuple(dict.fromkeys(self._about.get(_address(machine, procedure, name), ())))

    def of(self, machine: str, procedure: str, name: str) -> tuple[str, ...]:
        """The corrections that name this figure, or one that it rests on."""
        return tuple(dict.fromkeys(self._by_address.get(_address(machine, procedure, name), ())))

    def sheet(self, procedure: Procedure) -> tuple[str, ...]:
        """The corrections that reach anything on the procedure's sheets, sorted."""
        shown = {(procedure.id, name) for name in (*procedure.specs, *procedure.computed)}
        for step in procedure.steps:
            spoken = [reference for sentence in step.sentences() for reference in sentence.references()]
            shown |= {(reference.owner, reference.name) for reference in (*step.specs, *spoken) if reference.owner}
        return tuple(sorted({each for owner, name in shown for each in self.of(procedure.machine, owner, name)}))


def _address(machine: str, procedure: str, name: str) -> str:
    """`name` may be a reference, `procedure/name.role` or `machine/name`."""
    owner, slash, bare = name.rpartition("/")
    owner, bare = (owner if slash else procedure), bare.partition(".")[0]
    return f"{machine}/{bare}" if owner in ("", machine) else f"{machine}/{owner}/{bare}"


def _addresses(book: Book, reference) -> list[str]:
    if reference.owner in book.machines:
        return [f"{reference.owner}/{reference.name}"]
    return [f"{machine}/{reference.owner}/{reference.name}" for machine in book.machines if (machine, reference.owner) in book.procedures]
