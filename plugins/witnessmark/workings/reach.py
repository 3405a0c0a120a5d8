"""Numbers beyond any machine: they are refused before a formula overflows on them."""
from __future__ import annotations

from collections.abc import Mapping

from ..core.working import Given, Refusal

#: In SI units. No wire, load, modulus or time of a shop comes near either end.
_SMALLEST, _LARGEST = 1e-12, 1e15


def beyond_reach(given: Mapping[str, Given]) -> Refusal | None:
    """The first input that is no size of anything; zero is a size."""
    for name, each in given.items():
        if each.quantity is not None and any(end and not _SMALLEST <= abs(end) <= _LARGEST for end in (each.low, each.high)):
            return Refusal(f"{name} {each.text} is no size of any machine", f"check {name} and its unit")
    return None
