"""What was made before, held while all it rests on is the same: `mkdocs serve` then redoes only what an edit touches."""

from collections.abc import Callable, Hashable
from typing import Any


class Memory:
    """Asked by name. A maker must use nothing that may change and is not in `rests_on`; whoever gets the value must not change it.

    `rests_on` is compared by ==, which stops at once where it is the very same object.
    """

    def __init__(self) -> None:
        self._held: dict[Hashable, tuple[Any, Any]] = {}

    def of(self, name: Hashable, rests_on: Any, make: Callable[[], Any]) -> Any:
        """The value held under `name` if it rests on the same as now, else a new one."""
        held = self._held.get(name)
        if held is None or held[0] != rests_on:
            held = self._held[name] = rests_on, make()
        return held[1]

    def same(self, name: Hashable, value: Any) -> Any:
        """The value held under `name` where it equals this one, so that comparing it again stops at once."""
        return self.of(("same", name), value, lambda: value)


class _Forgetful(Memory):
    """A build that ends with its site has no use for what it made."""

    def of(self, name: Hashable, rests_on: Any, make: Callable[[], Any]) -> Any:
        return make()


FORGETFUL = _Forgetful()
