"""Quantities in words of the page: as typed, and in the other system of units, rounded to the safe side.

Whatever is printed here read_quantity reads back to the digits shown."""

from fractions import Fraction
from functools import lru_cache
from math import floor, log10
from typing import NamedTuple

from .quantity import Quantity
from .rounding import exact, round_to, whole_steps
from .units import Unit, counterpart, find_unit

_REJECTS = ("reject", "reject-max", "reject-min", "stop")


class Forces(NamedTuple):
    """One force in each unit a press may be marked in."""

    short_ton: str
    long_ton: str
    tonne: str
    kilonewton: str
    pound: str


def shown(si: float | Fraction, kind: str, unit: Unit | str, *, step: float | Fraction | str | None = None,
          digits: int = 3, side: str = "nearest") -> str:
    """An SI value as text in `unit`: to a multiple of `step` (in that unit), or to `digits` significant digits."""
    unit = find_unit(unit, kind) if isinstance(unit, str) else unit
    if isinstance(si, float):
        factor, offset = unit.doubles
        value = (si - offset) / factor
    else:
        value = unit.from_si(si)
    step = _digit_step(exact(value), digits) if step is None else exact(step)
    if 10**60 % step.denominator:              # thirds have no last decimal: from a third to a millionth, to the same side
        value, step = round_to(value, step, side), Fraction(1, 10**6)
    return _with_unit(_steps_in_decimals(whole_steps(value, step, side), step), unit)


def converted(quantity: Quantity, role: str) -> str:
    """The quantity in the other system of units, on the side that is safe for its role; '' where there is none.

    A ceiling, stop or reject limit rounds down, a floor or least value up, a window inward; a target or found reading to
    the nearest. Two units, joined by a comma, where one word names two sizes (quart, ton)."""
    return ", ".join(_in_unit(quantity, role, unit) for unit in counterpart(quantity.unit, quantity.kind))


def five_forces(si_newton: float | Fraction, side: str) -> Forces:
    """A force in short tons, long tons, tonnes, kN and lbf, four significant digits, rounded to `side`."""
    return Forces(*(shown(si_newton, "press force", symbol, digits=4, side=side)
                    for symbol in ("short ton", "long ton", "tonne", "kN", "lbf")))


def _in_unit(quantity: Quantity, role: str, unit: Unit) -> str:
    ends = [end for end in (quantity.low, quantity.high) if end is not None]
    values = [unit.from_si(quantity.unit.to_si(end)) for end in ends]
    step = min(_converted_step(quantity, end, value, unit) for end, value in zip(ends, values, strict=True))
    if len(ends) == 1 or quantity.low == quantity.high:
        number = _decimal(round_to(values[0], step, _side(quantity.form, role)), step)
        word = quantity.form + " " if len(ends) == 1 else ""
        return word + _with_unit(number, unit)
    sides = ("nearest", "nearest") if role == "found" else ("up", "down")
    low, high = (round_to(value, step, side) for value, side in zip(values, sides, strict=True))
    while low >= high:                         # a window narrower than a step has no room inside: show more digits
        step /= 10
        low, high = (round_to(value, step, side) for value, side in zip(values, sides, strict=True))
    return f"{_decimal(low, step)} to {_with_unit(_decimal(high, step), unit)}"


def _side(form: str, role: str) -> str:
    """The side to which a single limit goes. "Over" is where a part is refused, or what it must exceed, by its role."""
    if role == "found":
        return "nearest"
    refuses = role in _REJECTS
    if form in ("at least", "at most"):
        return "up" if form == "at least" else "down"
    if form in ("over", "under"):
        return "down" if (form == "over") == refuses else "up"
    if role in ("floor", "reject-min"):
        return "up"
    return "down" if refuses or role == "ceiling" else "nearest"


def _converted_step(quantity: Quantity, typed: Fraction, value: Fraction, unit: Unit) -> Fraction:
    """The largest power of ten not over one of the last typed digit, converted. Closing zeros of a whole number are no
    digits; but whole numbers and fractions get three significant digits. A thermometer's zero is arbitrary, so there
    never finer than the last typed digit."""
    scale = quantity.unit.factor / unit.factor
    last = _power_of_ten(Fraction(1, 10**quantity.decimals) * scale)
    if not quantity.whole:
        return last
    significant = _digit_step(value, 3)
    if unit.offset:
        return max(last, significant)
    zeros = len(str(typed)) - len(str(typed).rstrip("0")) if typed and typed.denominator == 1 else 0
    return min(_power_of_ten(10**zeros * scale), significant)


def _digit_step(value: Fraction, digits: int) -> Fraction:
    return _power_of_ten(abs(value) / 10**(digits - 1)) if value else Fraction(1)


def _power_of_ten(number: Fraction) -> Fraction:
    """The largest power of ten not over a number above zero."""
    power = Fraction(10) ** floor(log10(number))
    return power * 10 if power * 10 <= number else power if power <= number else power / 10


def _decimal(value: Fraction, step: Fraction) -> str:
    """A multiple of `step` in plain decimals, as many as the step has; commas from 10,000 on."""
    return _steps_in_decimals(int(value / step), step)


@lru_cache(maxsize=1024)
def _places(numerator: int, denominator: int) -> tuple[int, int]:
    """How many decimals a step has, and the step in units of the last. Two numbers: a fraction takes long to look up."""
    step = Fraction(numerator, denominator)
    places = next(n for n in range(400) if (step * 10**n).denominator == 1)
    return places, int(step * 10**places)


def _steps_in_decimals(steps: int, step: Fraction) -> str:
    places, last = _places(step.numerator, step.denominator)
    digits = f"{abs(steps * last):0{places + 1}d}"
    whole, decimals = (digits[:-places], "." + digits[-places:]) if places else (digits, "")
    return ("-" if steps < 0 else "") + (f"{int(whole):,}" if int(whole) >= 10000 else whole) + decimals


def _with_unit(number: str, unit: Unit) -> str:
    return f"{number}°" if unit.symbol == "°" else f"{number} {unit.symbol}".rstrip()
