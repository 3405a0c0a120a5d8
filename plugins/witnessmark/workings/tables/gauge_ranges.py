"""Pressure gauges one can buy, for saying which would do when the one in hand will not.

Ranges: EN 837-1 preferred scale ranges, in bar. Scale intervals: EN 837-1 asks for 1, 2 or
5 x 10^n and a least number of divisions by class; the intervals below are the usual dials of
100 and 160 mm that follow from it (read in an extract of its table 14, not in the standard;
the class 1.6 column is common practice, no source).
"""
from __future__ import annotations

from collections.abc import Iterator

RANGES_BAR = (25, 40, 60, 100, 160, 250, 400, 600, 1000, 1600)

# Divisions on the dial for a range starting with these figures, by class in per cent.
_DIVISIONS = {"1.6": {25: 25, 40: 40, 60: 30, 10: 20, 16: 32},
              "1.0": {25: 50, 40: 80, 60: 60, 10: 50, 16: 80}}


def standard_gauges() -> Iterator[tuple[int, str, float]]:
    """Yields (full scale in bar, class in % of full scale, division in bar), the coarser class first."""
    for full_scale in RANGES_BAR:
        for accuracy, divisions in _DIVISIONS.items():
            leading = int(str(full_scale)[:2])
            yield full_scale, accuracy, full_scale / divisions[leading]
