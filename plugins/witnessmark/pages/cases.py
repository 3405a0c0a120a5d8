"""Which variant a value holds for, in as few words as tell the values apart."""

from itertools import combinations
from typing import Any, NamedTuple, Sequence

from ..core.machine import Machine
from ..core.variation import Combination
from . import words


class Told(NamedTuple):
    """A value with the case it holds for. `label` is empty where there is but one value.

    `variants` are the main carrier's variants among its cases, joined by spaces; `case` is for machines: each case
    that another carrier decides, as `hub:24-A` or `locomotive:24-B,hub:24-A`, joined by spaces."""

    label: str
    variants: str
    case: str
    value: Any


def told_apart(machine: Machine, values: Sequence[tuple[Combination, Any]], always: tuple[str, ...] = ()) -> tuple[Told, ...]:
    """Equal values merged; each labelled by the fewest carriers that tell them all apart, `always` among them."""
    if not values:
        return ()
    first = values[0][1]
    if not always and all(value == first for _, value in values):
        return (Told("", _variants(machine, [c for c, _ in values]), "", first),)
    carriers = [carrier for carrier in machine.carriers if any(carrier in combination for combination, _ in values)]
    for size in range(1, len(carriers) + 1):
        for chosen in combinations(carriers, size):
            if not set(always) - set(chosen) and (groups := _grouped(values, chosen)) is not None:
                return tuple(_told(machine, chosen, keys, held, value) for keys, held, value in groups)
    return tuple(_told(machine, tuple(carriers), [tuple(c.get(x, "") for x in carriers)], [c], value) for c, value in values)


def _grouped(values, chosen) -> list | None:
    """[keys, combinations, value] for each distinct value; None where `chosen` does not tell them apart."""
    by_key: dict[tuple[str, ...], Any] = {}
    groups: list = []
    for combination, value in values:
        key = tuple(combination.get(carrier, "") for carrier in chosen)
        if key in by_key:
            if by_key[key] != value:
                return None
        else:
            by_key[key] = value
        group = next((group for group in groups if group[2] == value), None)
        if group is None:
            groups.append(group := ([], [], value))
        if key not in group[0]:
            group[0].append(key)
        group[1].append(combination)
    return groups


def _told(machine: Machine, chosen, keys, held, value) -> Told:
    main = machine.main.id
    case = "" if chosen == (main,) else " ".join(",".join(map(":".join, zip(chosen, key))) for key in keys)
    return Told(_label(machine, chosen, keys), _variants(machine, held), case, value)


def _label(machine: Machine, chosen, keys) -> str:
    """`24-A, 24-B`, `fly-crank 24-A`, or `24-A with fly-crank 24-B or 24-C`; keys that share all but the last are joined."""
    main = machine.main.id
    by_head: dict[tuple, list[str]] = {}
    for key in keys:
        by_head.setdefault(key[:-1], []).append(key[-1])
    if chosen == (main,):
        return ", ".join(by_head[()])
    labels = []
    for head, last in by_head.items():
        own = [variant for carrier, variant in zip(chosen, head) if carrier == main]
        others = [f"{machine.carriers[carrier].title.lower()} {variant}" for carrier, variant in zip(chosen, head) if carrier != main]
        others.append(f"{machine.carriers[chosen[-1]].title.lower()} {words.either(last)}")
        labels.append(" with ".join(filter(None, [" ".join(own), " and ".join(others)])))
    return "; ".join(labels)


def _variants(machine: Machine, held) -> str:
    main = machine.main.id
    return " ".join(dict.fromkeys(combination[main] for combination in held if main in combination))
