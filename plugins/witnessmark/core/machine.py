"""A machine family: what carries a serial or can be swapped, its versions, its places."""

from dataclasses import dataclass, field
from functools import cached_property
from itertools import product
from typing import Iterable, Iterator

from .figure import Spec
from .place import Place
from .quantity import Quantity
from .sentence import Sentence
from .variation import Combination, Serials


@dataclass(frozen=True, slots=True)
class Variant:
    """A version, known by its serials or by a dimension that tells."""

    id: str
    title: str
    serials: Serials | None
    measure: Quantity | None
    summary: Sentence | None
    place: Place


@dataclass(frozen=True, slots=True)
class Carrier:
    """Something that carries its own variant: the machine itself, a hub from a donor, an engine."""

    id: str
    title: str
    told_by: str
    variants: dict[str, Variant]
    place: Place


@dataclass(frozen=True)
class Machine:
    """`carriers` in order, the machine itself first; `places` maps a group ("side") to its names in order, and `only` one
    of these, as (group, name), to the variants that have it where not all do."""

    id: str
    title: str
    summary: Sentence | None
    viewpoint: Sentence
    serial_plate: Sentence | None
    carriers: dict[str, Carrier]
    places: dict[str, tuple[str, ...]]
    figures: dict[str, Spec]
    hand_over: str | None
    defer: tuple[Sentence, ...]
    place: Place
    only: dict[tuple[str, str], tuple[str, ...]] = field(default_factory=dict)
    was: tuple[str, ...] = ()               # ids of old: editions and corrections may still name them

    @cached_property
    def main(self) -> Carrier:
        return next(iter(self.carriers.values()))

    @cached_property
    def serial_ranges(self) -> dict[tuple[str, str], Serials | None]:
        return {(carrier.id, variant.id): variant.serials
                for carrier in self.carriers.values() for variant in carrier.variants.values()}

    def places_on(self, group: str | None, variant: str | None) -> tuple[str, ...]:
        """The places of a group that this variant has; with no variant all of them. Empty where there is no such group."""
        names = self.places.get(group or "", ())
        return names if variant is None else tuple(name for name in names if variant in self.only.get((group, name), (variant,)))

    def own(self, variant: str) -> dict[str, str]:
        """The combination of a machine none of whose carriers was ever swapped."""
        return {carrier.id: variant for carrier in self.carriers.values() if variant in carrier.variants}

    def combinations(self, variant: str, by: Iterable[str]) -> Iterator[Combination]:
        """Every combination of the carriers in `by` with the main carrier at `variant`, its own first."""
        own = self.own(variant)
        swapped = [carrier for carrier in self.carriers if carrier in set(by) and carrier != self.main.id]
        yield own
        for pick in product(*(self.carriers[carrier].variants for carrier in swapped)):
            combination = {**own, **dict(zip(swapped, pick))}
            if combination != own:
                yield combination
