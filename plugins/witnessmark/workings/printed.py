"""A result with its band as text: one unit, one step, one side, and the other system beside it.

Texts are made when they are asked for: proving a book needs the numbers only."""
from __future__ import annotations

from fractions import Fraction
from functools import lru_cache, partial
from math import floor, log10

from ..core.display import five_forces as in_five_units
from ..core.display import shown
from ..core.rounding import round_to
from ..core.units import Unit, counterpart, find_unit
from ..core.working import Given, Value

Band = tuple[float, float, float]

# A press force is never known better than this, so it is not printed finer.
FORCE_STEPS = {"long ton": "0.01", "short ton": "0.01", "tonne": "0.01", "kN": "0.1", "lbf": "1", "N": "10", "kgf": "1"}


def ten_step(size: float) -> Fraction:
    """The largest power of ten not over `size`."""
    return _ten_to(floor(log10(size) + 1e-9))


@lru_cache(maxsize=256)
def _ten_to(power: int) -> Fraction:
    return Fraction(10) ** power


def _step(step: Fraction | str) -> Fraction:
    return _typed_step(step) if isinstance(step, str) else step


@lru_cache(maxsize=256)
def _typed_step(step: str) -> Fraction:
    return Fraction(step)


def in_unit(si: float, kind: str, unit: Unit | str, step: Fraction | str, side: str = "nearest") -> str:
    """'3600 psi': an SI value in `unit`, rounded to `step` of that unit."""
    return shown(si, kind, unit, step=_step(step), side=side)


def banded(si: Band, kind: str, unit: Unit | str, step: Fraction | str) -> str:
    """'11.0 long ton (9.3 to 13.1)'. A band is shown to the nearest step; judging uses it unrounded."""
    low, likely, high = (in_unit(end, kind, unit, step) for end in si)
    symbol = unit if isinstance(unit, str) else unit.symbol
    bare = [text.removesuffix(symbol).strip() for text in (low, high)]
    return f"{likely} ({bare[0]} to {bare[1]})"


def value(name: str, kind: str, si: float | Band, unit: Unit | str, step: Fraction | str, side: str = "nearest") -> Value:
    """A Value with both texts; `si` is one number or (low, likely, high).

    A number with a side is worth what is printed, so that a mark or floor used further on is the one read.
    The conversion keeps three figures and is otherwise no finer than `step`."""
    unit = find_unit(unit, kind) if isinstance(unit, str) else unit
    step = _step(step)
    if not isinstance(si, tuple) and side != "nearest":
        factor, offset = unit.doubles
        si = float(unit.to_si(round_to((si - offset) / factor, step, side)))
    band = si if isinstance(si, tuple) else (si, si, si)
    return Value(name, kind, *band, side, unit, partial(_texts, si, kind, unit, step, side))


def words(name: str, text: str) -> Value:
    """A result in words: a direction, an order, a verdict."""
    return Value(name, "none", 0.0, 0.0, 0.0, "nearest", None, lambda: (text, ""))


def _texts(si: float | Band, kind: str, unit: Unit, step: Fraction, side: str) -> tuple[str, str]:
    likely = si[1] if isinstance(si, tuple) else si
    texts = []
    for other in (unit, *counterpart(unit, kind)):
        there = step if other is unit else _converted_step(likely, _step_there(step, unit, other), other)
        texts.append(banded(si, kind, other, there) if isinstance(si, tuple) else in_unit(si, kind, other, there, side))
    return texts[0], ", ".join(texts[1:])


@lru_cache(maxsize=1024)
def _step_there(step: Fraction, unit: Unit, other: Unit) -> Fraction:
    """The largest power of ten not over `step` converted."""
    return ten_step(float(step * unit.factor / other.factor))


def _converted_step(si: float, step: Fraction, unit: Unit) -> Fraction:
    factor, offset = unit.doubles
    worth = abs((si - offset) / factor)
    return min(step, _ten_to(floor(log10(worth) + 1e-9) - 2)) if worth else step


def force(si: float, unit: Unit) -> str:
    """A press force to the step usual for its unit."""
    return in_unit(si, "press force", unit, FORCE_STEPS[unit.symbol])


def five_forces(si: float) -> str:
    """One force in the five units a press may be marked in, so that no 'ton' is left to guess."""
    return " = ".join(in_five_units(si, "nearest"))


def unit_of(given: Given) -> Unit:
    return given.quantity.unit


def in_system(given: Given, inch: tuple[str, str], metric: tuple[str, str]) -> tuple[str, str]:
    """Unit and step for a result, after the system in which an input was given."""
    return metric if unit_of(given).system == "metric" else inch


def three_figures(si: float, kind: str, unit: str, step: str) -> Fraction:
    """`step`, or a finer one where fewer than three figures would be left."""
    return _converted_step(si, Fraction(step), find_unit(unit, kind))


def spread(low: float, likely: float, high: float) -> float | Band:
    """A band, or one number when the ends are the same."""
    return likely if low == high else (low, likely, high)


def window(name: str, kind: str, low: float, high: float, unit: Unit | str, step: Fraction | str) -> Value | None:
    """'0.0180 to 0.0260 in': an accept band rounded inward to what the tool shows; None when nothing is left of it."""
    unit, step = find_unit(unit, kind) if isinstance(unit, str) else unit, Fraction(step)
    ends = (round_to(unit.from_si(low), step, "up"), round_to(unit.from_si(high), step, "down"))
    if ends[0] >= ends[1]:
        return None
    low, high = (float(unit.to_si(end)) for end in ends)
    return Value(name, kind, low, (low + high) / 2, high, "inward", unit, partial(_window_texts, low, high, kind, unit, step))


def span(name: str, kind: str, low: float, high: float, unit: Unit | str, step: Fraction | str) -> Value:
    """'7.2 to 11.2 lbf': a window as it comes out, to the nearest step; one figure where its ends are the same."""
    if high - low <= 1e-9 * abs(high):
        return value(name, kind, low, unit, step)
    unit = find_unit(unit, kind) if isinstance(unit, str) else unit
    step = min(Fraction(step), ten_step((high - low) / float(unit.factor) / 2.1))
    return Value(name, kind, low, (low + high) / 2, high, "nearest", unit, partial(_window_texts, low, high, kind, unit, step, ("nearest", "nearest")))


def _window_texts(low: float, high: float, kind: str, unit: Unit, step: Fraction, sides: tuple[str, str] = ("up", "down")) -> tuple[str, str]:
    texts = []
    for other in (unit, *counterpart(unit, kind)):
        there = step if other is unit else min(_step_there(step, unit, other), ten_step((high - low) / float(other.factor) / 2.1))
        first, last = in_unit(low, kind, other, there, sides[0]), in_unit(high, kind, other, there, sides[1])
        texts.append(f"{first.removesuffix(other.symbol).strip()} to {last}")
    return texts[0], ", ".join(texts[1:])
