"""How much of one thing several procedures need together: counts added as numbers, quantities in their own units, words kept."""

import re
from fractions import Fraction
from typing import Iterable, NamedTuple

from .machine import Machine
from .procedure import Need, Procedure
from .quantity import Quantity, read_quantity

_WORDS = {word: number for number, word in enumerate("one two three four five six seven eight nine ten eleven twelve".split(), 1)}
_WORDS |= {"a pair": 2, "one pair": 2}
_PER = re.compile(r"(?P<much>.+?) (?:per|each|for each) (?P<group>.+)")
_KINDS = ("volume", "mass", "length")


class Amount(NamedTuple):
    """`number` of `unit` ('' where things are counted), to so many `decimals`."""

    number: Fraction
    unit: str
    decimals: int


def amount(text: str, machine: Machine, variant: str) -> Amount | None:
    """What a count says: `4`, `nine`, `a pair`, `0.25 litre`, `1 per side`; None where it says no number."""
    per = _PER.fullmatch(text.strip())
    if per and (places := len(machine.places_on(_group(machine, per["group"]), variant))):
        one = amount(per["much"], machine, variant)
        return one and one._replace(number=one.number * places)
    plain = text.strip().lower()
    if plain in _WORDS or re.fullmatch(r"[0-9]{1,6}", plain):
        return Amount(Fraction(_WORDS.get(plain) or int(plain)), "", 0)
    for kind in _KINDS:
        quantity = read_quantity(text.strip(), kind)
        if isinstance(quantity, Quantity) and quantity.form == "exact":
            return Amount(quantity.low, quantity.unit.symbol, quantity.decimals)
    return None


def _group(machine: Machine, name: str) -> str | None:
    """The group of places meant: by its whole name, or the only one that ends in this word."""
    ending = [group for group in machine.places if group.split()[-1] == name]
    return name if name in machine.places else ending[0] if len(ending) == 1 else None


def total(needs: Iterable[tuple[Procedure, Need]], machine: Machine, variant: str) -> str:
    """The sum for one variant, such as `8`, `5.68 litre + 2 imperial pint`, `4 + as needed`; '' where nobody says how much."""
    sums: dict[str, Amount] = {}
    words: dict[str, None] = {}
    unsaid = False
    for procedure, need in needs:
        if variant not in procedure.variants:
            continue
        if need.count is None:
            unsaid = True
        elif one := amount(need.count, machine, variant):
            old = sums.get(one.unit, Amount(Fraction(0), one.unit, 0))
            sums[one.unit] = Amount(old.number + one.number, one.unit, max(old.decimals, one.decimals))
        else:
            words[need.count] = None
    parts = [*map(_text, sums.values()), *words]
    return " + ".join([*parts, *(["as needed"] if unsaid and parts else [])])


def _text(sum_of: Amount) -> str:
    number = sum_of.number
    decimals = next((places for places in range(sum_of.decimals, 4) if (number * 10 ** places).denominator == 1), None)
    if decimals is None:
        whole, part = divmod(number, 1)
        text = f"{whole}-{part}" if whole else f"{part}"
    else:
        whole, part = divmod(number * 10 ** decimals, 10 ** decimals)
        text = f"{whole}.{int(part):0{decimals}d}" if decimals else f"{whole}"
    return f"{text} {sum_of.unit}".strip()
