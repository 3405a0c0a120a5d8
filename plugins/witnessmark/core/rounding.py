"""The one rounding function. The browser's copy does the same three lines:
q = value / step; n = Math.round(q); |q - n| <= 1e-9 ? n : floor or ceil of q; times step.
(Division by the step is exact here and a double there: they agree while q stays under a million.)"""

from fractions import Fraction
from math import ceil, floor

TOLERANCE = Fraction(1, 10**9)
"""Of a step. A value this close under a graduation counts as on it: 0.3/0.1 is 3 steps, though doubles make it 2.99…"""

_TO_SIDE = {"down": floor, "up": ceil}


def exact(number: float | int | Fraction | str) -> Fraction:
    """A number as its shortest decimal says it: 0.1 is one tenth. ValueError for NaN and infinity."""
    if type(number) is Fraction:
        return number
    return Fraction(repr(float(number))) if isinstance(number, float) else Fraction(number)


def round_to(value: float | Fraction, step: float | Fraction | str, side: str) -> Fraction:
    """`value` brought to a whole number of `step`s, in the unit of both.

    side: 'down' (a ceiling, a press mark), 'up' (a floor), 'nearest' (halves upward).
    Going down, the result exceeds the value by at most TOLERANCE of a step. ValueError for a step not over zero."""
    step = exact(step)
    if step.numerator <= 0:
        raise ValueError(f"a rounding step must be over zero, not {step}")
    return step * whole_steps(value, step, side)


def whole_steps(value: float | Fraction, step: Fraction, side: str) -> int:
    """How many steps `round_to` brings `value` to.

    A double is counted as a double where its last digits cannot matter, a hundred times faster; else exactly."""
    if isinstance(value, float) and abs(steps := value / float(step)) < 1e5:
        near = floor(steps + 0.5)
        off = abs(steps - near)
        if off < 5e-10:
            return near
        if 2e-9 < off < 0.5 - 2e-9:
            return near if side == "nearest" else _TO_SIDE[side](steps)
    steps = exact(value) / step
    near = floor(steps + Fraction(1, 2))
    return near if side == "nearest" or abs(steps - near) <= TOLERANCE else _TO_SIDE[side](steps)
