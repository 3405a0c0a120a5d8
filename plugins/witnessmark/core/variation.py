"""Values that differ by variant or serial, and the combination of carriers that picks one."""

import re
from dataclasses import dataclass
from typing import Any, Callable, Generic, Iterator, Mapping, TypeVar

from .place import Place

T = TypeVar("T")

#: carrier id -> variant id: which version each swappable carrier of the machine in hand is.
Combination = Mapping[str, str]


@dataclass(frozen=True, slots=True)
class Serials:
    """A range of serial numbers, both ends included; None is an open end."""

    first: int | None
    last: int | None

    def covers(self, other: "Serials") -> bool:
        low = self.first is None or (other.first is not None and other.first >= self.first)
        high = self.last is None or (other.last is not None and other.last <= self.last)
        return low and high

    def __str__(self) -> str:
        if self.first is None:
            return f"up to {self.last}"
        return f"from {self.first}" if self.last is None else f"{self.first} to {self.last}"


_SERIAL = "(0|[1-9][0-9]{0,8})"            # a needless 0 in front is refused: 0499 and 499 may be two plates
_SERIALS = re.compile(f"(?:serials? )?(?:{_SERIAL} to {_SERIAL}|from {_SERIAL}|up to {_SERIAL})")


def read_serials(text: str) -> Serials | None:
    """`serials 1390 to 2215`, `from 2750`, `up to 1389`; None when `text` is none of them."""
    match = _SERIALS.fullmatch(text.strip())
    if not match:
        return None
    low, high, only_low, only_high = (int(group) if group else None for group in match.groups())
    return Serials(low if low is not None else only_low, high if high is not None else only_high)


@dataclass(frozen=True, slots=True)
class Selector:
    """One key of a varying value: a variant by name, or a range of serials."""

    text: str
    serials: Serials | None
    place: Place

    def holds(self, variant: str, serials: Serials | None) -> bool:
        """True for this variant, whose serials (None where it has none) a range must cover whole."""
        if self.serials is None:
            return self.text == variant
        return serials is not None and self.serials.covers(serials)


@dataclass(frozen=True, slots=True)
class Case(Generic[T]):
    """A value that holds where every selector does, one for each carrier in `Varies.by`."""

    when: tuple[Selector, ...]
    value: T
    place: Place


@dataclass(frozen=True, slots=True)
class Varies(Generic[T]):
    """One value (`by` empty, a single case) or one for each case of the carriers named in `by`."""

    by: tuple[str, ...]
    cases: tuple[Case[T], ...]
    place: Place

    def matching(self, combination: Combination, serials: Mapping[tuple[str, str], Serials | None]) -> list[Case[T]]:
        """The cases that hold for this combination; more or fewer than one is the caller's to report.

        `serials` gives the serial range of each (carrier, variant): a range selector holds where it covers it.
        """
        return [case for case in self.cases if all(
            selector.holds(combination.get(carrier, ""), serials.get((carrier, combination.get(carrier, ""))))
            for carrier, selector in zip(self.by, case.when))]

    def values(self) -> Iterator[T]:
        return (case.value for case in self.cases)

    def map(self, change: Callable[[T, Place], Any]) -> "Varies[Any]":
        """The same cases with each value changed; `change` also gets the value's place."""
        return Varies(self.by, tuple(Case(case.when, change(case.value, case.place), case.place)
                                     for case in self.cases), self.place)


def always(value: T, place: Place) -> Varies[T]:
    """A value that never differs."""
    return Varies((), (Case((), value, place),), place)
