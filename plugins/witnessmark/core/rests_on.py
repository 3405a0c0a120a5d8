"""What figures, sheet codes and pages rest on, procedure by procedure: where that is the same, what was made of it holds."""

from functools import partial
from typing import Any

from .book import Book
from .memory import FORGETFUL, Memory
from .outline import Naming, outline

Key = tuple[str, str]


class RestsOn:
    """`shop` is all that stands in no machine's own sources. No page looks at another machine; one that does must be added here first."""

    def __init__(self, book: Book, shop: Any, memory: Memory):
        self._book, self._memory, self._naming = book, memory, Naming(book, memory)
        self._shop = memory.same("shop", shop)
        self._machines = {name: memory.same(("machine", name), machine) for name, machine in book.machines.items()}
        self._outlines: dict[str, tuple] = {}

    def machine(self, name: str) -> tuple:
        """Of what is told of a machine as a whole."""
        return self._shop, self._machines[name], [self._book.procedures[name, each] for each in self._book.procedure_ids[name]]

    def figures(self, key: Key) -> tuple:
        """Of what is worked out for one procedure."""
        procedure = self._book.procedures[key]
        return self._shop, self._machines[procedure.machine], (procedure, *self._naming.named(procedure))

    def pages(self, key: Key) -> tuple:
        """Of its sheet codes and pages, which show the other procedures in outline."""
        return *self.figures(key), self._outlined(key[0])

    def _outlined(self, machine: str) -> tuple:
        if machine not in self._outlines:
            made = tuple(self._memory.of(("outline", machine, name), procedure, partial(outline, procedure))
                         for name in self._book.procedure_ids[machine] for procedure in (self._book.procedures[machine, name],))
            self._outlines[machine] = self._memory.same(("outlines", machine), made)
        return self._outlines[machine]


class _Anything(RestsOn):
    """For a memory that holds nothing, nothing need be known."""

    def __init__(self) -> None:
        pass

    def machine(self, name: str) -> tuple:
        return ()

    def figures(self, key: Key) -> tuple:
        return ()

    def pages(self, key: Key) -> tuple:
        return ()


ANYTHING = _Anything()


def rests_on(book: Book, shop: Any, memory: Memory) -> RestsOn:
    """`shop` is compared by ==."""
    return ANYTHING if memory is FORGETFUL else RestsOn(book, shop, memory)
