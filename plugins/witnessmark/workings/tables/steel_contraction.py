"""How carbon steel grows and shrinks from 70 °F: less and less for each degree the colder it gets.

Source: thermal expansion of carbon and low-alloy steel, inches in 100 feet from 70 °F, the table of ASME B31 as
reprinted by a maker of expansion joints (steel column, -325 to 200 °F). Between its rows straight lines are drawn,
which is within half of the last figure printed.
"""
from __future__ import annotations

from bisect import bisect_right

# °F, inches in 100 feet
_ROWS = ((-325, -2.37), (-300, -2.24), (-250, -1.98), (-200, -1.71), (-150, -1.45), (-100, -1.15), (-50, -0.84), (0, -0.49),
         (50, -0.14), (70, 0.0), (100, 0.23), (150, 0.61), (200, 0.99))
_AT = tuple(row[0] for row in _ROWS)


def kelvin(fahrenheit: float) -> float:
    return (fahrenheit + 459.67) / 1.8


COLDEST, WARMEST = kelvin(_AT[0]), kelvin(_AT[-1])
"""K; the table ends here."""


def steel_growth(temperature: float) -> float:
    """Growth since 70 °F as a share of the size, at a temperature in K inside the table (held at its ends outside)."""
    fahrenheit = min(max(temperature * 1.8 - 459.67, _AT[0]), _AT[-1])
    upper = min(max(bisect_right(_AT, fahrenheit), 1), len(_ROWS) - 1)
    (cold, less), (warm, more) = _ROWS[upper - 1], _ROWS[upper]
    return (less + (more - less) * (fahrenheit - cold) / (warm - cold)) / 1200
