"""Standard tolerances and fundamental deviations of ISO 286-1 to 250 mm, in µm.

Source: ISO 286-1:2010, tables 1 to 5, as printed in handbooks of machine elements (the standard itself was not seen).
Every row is for sizes over the one above it up to and including its own. Letters j and J, and those beyond u, are left out.
"""
from __future__ import annotations

from bisect import bisect_left
from collections.abc import Sequence
from fractions import Fraction

LARGEST = 250
"""mm"""
GRADES = range(4, 14)

_STEPS = (3, 6, 10, 18, 30, 50, 80, 120, 180, 250)
_IT = {
    3: ("2", "2.5", "2.5", "3", "4", "4", "5", "6", "8", "10"),
    4: ("3", "4", "4", "5", "6", "7", "8", "10", "12", "14"),
    5: ("4", "5", "6", "8", "9", "11", "13", "15", "18", "20"),
    6: ("6", "8", "9", "11", "13", "16", "19", "22", "25", "29"),
    7: ("10", "12", "15", "18", "21", "25", "30", "35", "40", "46"),
    8: ("14", "18", "22", "27", "33", "39", "46", "54", "63", "72"),
    9: ("25", "30", "36", "43", "52", "62", "74", "87", "100", "115"),
    10: ("40", "48", "58", "70", "84", "100", "120", "140", "160", "185"),
    11: ("60", "75", "90", "110", "130", "160", "190", "220", "250", "290"),
    12: ("100", "120", "150", "180", "210", "250", "300", "350", "400", "460"),
    13: ("140", "180", "220", "270", "330", "390", "460", "540", "630", "720"),
}
# Distance of the shaft's zone from the size: above it for d to h (upper deviation, minus), below it for k to p (lower, plus).
_OFF = {
    "d": (20, 30, 40, 50, 65, 80, 100, 120, 145, 170), "e": (14, 20, 25, 32, 40, 50, 60, 72, 85, 100),
    "f": (6, 10, 13, 16, 20, 25, 30, 36, 43, 50), "g": (2, 4, 5, 6, 7, 9, 10, 12, 14, 15), "h": (0,) * 10,
    "k": (0, 1, 1, 1, 2, 2, 2, 3, 3, 4), "m": (2, 4, 6, 7, 8, 9, 11, 13, 15, 17), "n": (4, 8, 10, 12, 15, 17, 20, 23, 27, 31),
    "p": (6, 12, 15, 18, 22, 26, 32, 37, 43, 50),
}
# These change within the steps above.
_FINE_STEPS = (3, 6, 10, 14, 18, 24, 30, 40, 50, 65, 80, 100, 120, 140, 160, 180, 200, 225, 250)
_FINE = {
    "c": (60, 70, 80, 95, 95, 110, 110, 120, 130, 140, 150, 170, 180, 200, 210, 230, 240, 260, 280),
    "r": (10, 15, 19, 23, 23, 28, 28, 34, 34, 41, 43, 51, 54, 63, 65, 68, 77, 80, 84),
    "s": (14, 19, 23, 28, 28, 35, 35, 43, 43, 53, 59, 71, 79, 92, 100, 108, 122, 130, 140),
    "t": (None, None, None, None, None, None, 41, 48, 54, 66, 75, 91, 104, 122, 134, 146, 166, 180, 196),
    "u": (18, 23, 28, 33, 33, 41, 48, 60, 70, 87, 102, 124, 144, 170, 190, 210, 236, 258, 284),
}
LETTERS = (*"cdefgh", "js", *"kmnprstu")
_CLEAR = tuple("cdefgh")


def tolerance(size: Fraction, grade: int) -> Fraction:
    """IT of a grade for a size in mm."""
    return Fraction(_row(_STEPS, _IT[grade], size))


def shaft_limits(size: Fraction, letter: str, grade: int) -> tuple[Fraction, Fraction] | None:
    """Lower and upper deviation; None where the standard has none."""
    width = tolerance(size, grade)
    if letter == "js":
        return -width / 2, width / 2
    off = _distance(size, letter)
    if off is None:
        return None
    if letter in _CLEAR:
        return -off - width, -off
    if letter == "k" and not 4 <= grade <= 7:
        off = Fraction(0)
    return off, off + width


def hole_limits(size: Fraction, letter: str, grade: int) -> tuple[Fraction, Fraction] | None:
    """Lower and upper deviation of a hole, its letter written small; None where the standard has none.

    C to H mirror the shaft. K to N to grade 8 and P to U to grade 7 are lifted by the step between the grade and the
    one finer, so that H7/p6 and P7/h6 fit alike; coarser ones mirror the shaft, and N then ends at the size."""
    width = tolerance(size, grade)
    if letter == "js":
        return -width / 2, width / 2
    off = _distance(size, letter)
    if off is None:
        return None
    if letter in _CLEAR:
        return off, off + width
    lifted = grade <= (8 if letter in "kmn" else 7)
    if letter == "k" and not lifted:
        return None
    if letter == "n" and not lifted and size > 3:
        return -width, Fraction(0)
    lift = width - tolerance(size, grade - 1) if lifted and size > 3 else 0
    return -off + lift - width, -off + lift


def _distance(size: Fraction, letter: str) -> Fraction | None:
    found = _row(_STEPS, _OFF[letter], size) if letter in _OFF else _row(_FINE_STEPS, _FINE[letter], size)
    return None if found is None else Fraction(found)


def _row(steps: Sequence[int], values: Sequence, size: Fraction):
    """(over, up to and including]: a size of 50 mm stands in the row that ends with 50."""
    return values[bisect_left(steps, size)]
